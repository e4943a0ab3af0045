#include <letterlode/version.hpp>

namespace lode {

// The build hands the version in: it stands in CMakeLists.txt alone.
std::string_view version() {
    return LODE_PROJECT_VERSION;
}

}  // namespace lode
