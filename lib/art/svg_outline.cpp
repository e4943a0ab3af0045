#include "art/svg_outline.hpp"

#include <algorithm>
#include <string_view>

#include <letterlode/blank.hpp>

namespace lode {

namespace {

Refusal refused(std::string_view svg, const std::string& source, const std::string& what,
                std::ptrdiff_t offset) {
    Refusal refusal;
    const std::size_t end =
        std::min(svg.size(), static_cast<std::size_t>(std::max<std::ptrdiff_t>(offset, 0)));
    const auto lines = std::count(svg.begin(), svg.begin() + static_cast<std::ptrdiff_t>(end), '\n');
    refusal.source = source;
    refusal.line = static_cast<int>(lines) + 1;
    refusal.message = source + ", line " + std::to_string(refusal.line) + ": the document " + what + ".";
    refusal.advice = {
        "Save the outline of the blank alone, as one closed path at its true size, without scripts, links "
        "and "
        "clipping."};
    return refusal;
}

std::string base_name(const std::string& source) {
    return source.substr(source.rfind('/') + 1);
}

}  // namespace

Outcome<Blank> svg_outline(std::string_view svg, const std::string& source) {
    if (svg.size() > max_outline_bytes)
        return refused(svg, source, "is larger than " + std::to_string(max_outline_bytes) + " bytes", 0);
    if (const auto fault = refused_bytes(svg)) return refused(svg, source, fault->what, fault->offset);
    pugi::xml_document document;
    const auto parsed = document.load_buffer(svg.data(), svg.size(),
                                             pugi::parse_default | pugi::parse_doctype | pugi::parse_pi);
    if (!parsed)
        return refused(svg, source, std::string("is no XML (") + parsed.description() + ")", parsed.offset);
    if (const auto fault = refused_content(document)) return refused(svg, source, fault->what, fault->offset);
    const auto found = largest_shape(document);
    if (const auto* fault = std::get_if<SvgFault>(&found))
        return refused(svg, source, fault->what, fault->offset);
    const auto& shape = std::get<FoundShape>(found);
    if (shape.clipped)
        return refused(svg, source, "clips or masks its largest outline, which is not read here",
                       shape.offset);
    auto outline = blank_outline(shape.shape);
    if (const auto* what = std::get_if<std::string>(&outline))
        return refused(svg, source, *what, shape.offset);
    Blank blank;
    blank.outline = std::move(std::get<Path>(outline));
    const Box box = bounds({{blank.outline.contours[0]}});
    blank.width_mm = box.width();
    blank.height_mm = box.height();
    blank.shape = base_name(source);
    return blank;
}

}  // namespace lode
