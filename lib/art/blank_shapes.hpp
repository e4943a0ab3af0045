#pragma once
// The outlines that a blank may have by name.

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include <letterlode/blank.hpp>

namespace lode {

struct BlankShape {
    std::string_view name;
    // Height over width of the undistorted shape; 0 where any box will do.
    double proportion;
};
[[nodiscard]] std::optional<BlankShape> blank_shape_named(std::string_view name);
// "rectangle, rounded, ..."
[[nodiscard]] std::string blank_shape_names();

}  // namespace lode
