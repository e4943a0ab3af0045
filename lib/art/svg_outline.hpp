#pragma once
// From an SVG document to the largest shape that it draws. The public face is svg_outline in blank.hpp.

#include <cstddef>
#include <optional>
#include <string>
#include <variant>

#include <pugixml.hpp>

#include "art/blank_outline.hpp"
#include "art/svg_guard.hpp"

namespace lode {

struct FoundShape {
    DrawnShape shape;
    std::ptrdiff_t offset = 0;  // of its element
    bool clipped = false;
};

// Walks what is drawn, through groups, links, switches, nested documents and uses of local ids, and keeps the
// element with the largest closed contour. Bounded whatever the uses multiply. The document must have passed
// refused_content.
[[nodiscard]] std::variant<FoundShape, SvgFault> largest_shape(const pugi::xml_document& document);

}  // namespace lode
