#pragma once
// The version of the library that is loaded, as opposed to the one that was compiled against (LODE_VERSION in
// letterlode.h).

#include <string_view>

#include <letterlode/export.hpp>

namespace lode {

/// Major, minor and patch version: "0.1.0".
[[nodiscard]] LODE_API std::string_view version();

}  // namespace lode
