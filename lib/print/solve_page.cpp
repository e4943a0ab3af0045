#include <letterlode/print.hpp>
namespace lode {
std::string solve_page(const Worksheet&, const PrintOptions&) {
    return "";
}
}  // namespace lode
