#pragma once
// What an SVG document may not hold, whether it is drawn or not.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include <pugixml.hpp>

namespace lode {

struct SvgFault {
    std::string what;  // continues "The document ..."
    std::ptrdiff_t offset = 0;
};
inline constexpr int max_svg_depth = 100;

// Of the bytes, before they are parsed: more tags and attributes than an outline needs.
[[nodiscard]] std::optional<SvgFault> refused_bytes(std::string_view bytes);
// Scripts, handlers, references to what is not an id of the document, entities, style sheets of other files,
// and nesting beyond max_svg_depth. Linear, and without recursion.
[[nodiscard]] std::optional<SvgFault> refused_content(const pugi::xml_document& document);

}  // namespace lode
