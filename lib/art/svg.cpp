// A drawing as SVG 1.1: nothing but groups and paths, so that every program reads the same shapes at the same
// size.

#include <letterlode/drawing.hpp>

#include "art/number.hpp"

namespace lode {

namespace {

constexpr int decimals = 4;  // 0.1 micrometres

// How many bytes the UTF-8 character at the front has, or 0 where it is none that XML 1.0 allows.
std::size_t allowed(std::string_view text) {
    const auto byte = [&](std::size_t i) {
        return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u;
    };
    const unsigned lead = byte(0);
    if (lead < 0x80) return lead >= 0x20 || lead == '\t' || lead == '\n' || lead == '\r' ? 1 : 0;
    const std::size_t size = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
    if (lead < 0xC2 || lead > 0xF4) return 0;
    unsigned long character = lead & (0xFFu >> (size + 1));
    for (std::size_t i = 1; i < size; ++i) {
        if ((byte(i) & 0xC0) != 0x80) return 0;
        character = character << 6 | (byte(i) & 0x3F);
    }
    constexpr unsigned long least[] = {0, 0, 0x80, 0x800, 0x10000};
    const bool surrogate = character >= 0xD800 && character <= 0xDFFF;
    if (character < least[size] || character > 0x10FFFF || surrogate) return 0;
    return character == 0xFFFE || character == 0xFFFF ? 0 : size;
}

void append_escaped(std::string& svg, std::string_view text) {
    while (!text.empty()) {
        const std::size_t size = allowed(text);
        if (size == 1 && text[0] == '&')
            svg += "&amp;";
        else if (size == 1 && text[0] == '<')
            svg += "&lt;";
        else if (size == 1 && text[0] == '>')
            svg += "&gt;";
        else if (size == 1 && text[0] == '"')
            svg += "&quot;";
        else
            svg += text.substr(0, size);
        text.remove_prefix(size ? size : 1);
    }
}

void append_element(std::string& svg, std::string_view element, std::string_view text) {
    svg += '<';
    svg += element;
    svg += '>';
    append_escaped(svg, text);
    svg += "</";
    svg += element;
    svg += ">\n";
}

void append_point(std::string& svg, Point p) {
    append_decimal(svg, p.x, decimals);
    svg += ' ';
    append_decimal(svg, p.y, decimals);
}

void append_path(std::string& svg, const Path& path) {
    for (const Contour& contour : path.contours) {
        svg += 'M';
        append_point(svg, contour.start);
        for (std::size_t i = 0; i < contour.segments.size(); ++i) {
            const Segment& s = contour.segments[i];
            if (s.curved) {
                svg += 'C';
                append_point(svg, s.control1);
                svg += ' ';
                append_point(svg, s.control2);
                svg += ' ';
                append_point(svg, s.to);
            } else if (i + 1 < contour.segments.size()) {  // Z draws the last line
                svg += 'L';
                append_point(svg, s.to);
            }
        }
        svg += 'Z';
    }
}

// For viewers only: a cut has no width.
constexpr const char* line_width = "0.1";

void append_group(std::string& svg, const DrawnGroup& group) {
    svg += "<g id=\"" + group.name + "\" fill=\"" + to_text(group.colour) +
           "\" fill-rule=\"nonzero\" stroke=\"none\">\n";
    for (const Piece& piece : group.pieces) {
        svg += "<path d=\"";
        append_path(svg, piece.path);
        svg += "\"><title>";
        append_escaped(svg, piece.name);
        svg += "</title></path>\n";
    }
    for (const CutLine& line : group.lines) {
        svg += "<path d=\"M";
        append_point(svg, line.from);
        svg += 'L';
        append_point(svg, line.to);
        svg += "\" fill=\"none\" stroke=\"" + to_text(group.colour) + "\" stroke-width=\"" + line_width +
               "\"/>\n";
    }
    svg += "</g>\n";
}

}  // namespace

std::string to_svg(const Drawing& drawing) {
    const std::string width = decimal(drawing.width_mm, decimals);
    const std::string height = decimal(drawing.height_mm, decimals);
    std::string svg = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
    svg += "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"" + width + "mm\" height=\"" +
           height + "mm\" viewBox=\"0 0 " + width + ' ' + height + "\">\n";
    append_element(svg, "title", drawing.title);
    append_element(svg, "desc", drawing.description);
    for (const DrawnGroup& group : drawing.groups) append_group(svg, group);
    return svg + "</svg>\n";
}

}  // namespace lode
