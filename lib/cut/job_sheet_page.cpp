#include "cut/job_sheet_page.hpp"

#include <algorithm>
#include <utility>

#include "art/number.hpp"

namespace lode {

SheetPages::SheetPages(PdfDocument& document, const SheetLook& look, std::string running,
                       std::optional<int> of_pages)
    : document_(document), look_(look), running_(std::move(running)), of_pages_(of_pages) {}

void SheetPages::finish() {
    if (!drawing()) return;
    const PageSize page = document_.page();
    const TextStyle style{7, false, quiet};
    const double baseline = page.height_mm - margin;
    const std::string number = "page " + std::to_string(pages_) + " of " + std::to_string(*of_pages_);
    const double taken = document_.width_of(number, style) + 6;
    document_.line({left(), baseline - 4}, {left() + width(), baseline - 4}, {0.15, hairline, {}});
    document_.text(running_, {left(), baseline}, style, Align::left, width() - taken);
    document_.text(number, {left() + width(), baseline}, style, Align::right);
}

void SheetPages::new_page() {
    finish();
    if (drawing()) document_.add_page();
    blank_ += std::max(0.0, room());
    ++pages_;
    y = margin;
}

void SheetPages::need(double height) {
    if (height > room() && y > margin) new_page();
}

void SheetPages::section(std::string_view name, std::string_view explanation, double then) {
    constexpr double above = 3;
    const TextStyle title{look_.body_pt + 2.5, true, ink};
    const double taken = document_.width_of(name, title) + 4;
    const auto lines = document_.wrapped(explanation, width() - taken, small());
    const double height =
        std::max(PdfDocument::line_pitch(title),
                 static_cast<double>(lines.size()) * PdfDocument::line_pitch(small()) + 0.8);
    need(above + height + 2 + then);
    if (y > margin) y += above;
    if (drawing()) {
        document_.line({left(), y}, {left() + width(), y}, {0.35, ink, {}});
        document_.text(name, {left(), y + 1.2 + title.size_pt / points_a_mm}, title);
        document_.paragraph(explanation, {left() + taken, y + 1.6}, width() - taken, small());
    }
    y += height + 2.6;
}

double SheetPages::paragraph(std::string_view text, Point corner, double width, const TextStyle& style,
                             std::size_t most_lines) {
    if (drawing()) return document_.paragraph(text, corner, width, style, Align::left, most_lines);
    const std::size_t lines = std::min(document_.wrapped(text, width, style).size(), most_lines);
    return static_cast<double>(lines) * PdfDocument::line_pitch(style);
}

void SheetPages::text(std::string_view text, Point baseline, const TextStyle& style, Align align,
                      std::optional<double> most_width) {
    if (drawing()) document_.text(text, baseline, style, align, most_width);
}

std::string rule_text(double mm) {
    return decimal(mm, 1) + " mm (" + decimal(mm / 25.4, 2) + " in)";
}

std::string rule_text(double width_mm, double height_mm) {
    return decimal(width_mm, 1) + " x " + decimal(height_mm, 1) + " mm (" + decimal(width_mm / 25.4, 2) +
           " x " + decimal(height_mm / 25.4, 2) + " in)";
}

void set_swatch(SheetPages& pages, Point corner, double side, Colour colour) {
    if (!pages.drawing()) return;
    const Box box{corner.x, corner.y, corner.x + side, corner.y + side};
    pages.document().fill(box, colour);
    pages.document().stroke(box, {0.15, quiet, {}});
}

std::string clipped(const std::string& text, std::size_t most_bytes) {
    if (text.size() <= most_bytes) return text;
    std::size_t end = most_bytes;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;  // within a character
    return text.substr(0, end) + "\xE2\x80\xA6";
}

bool is_pale(Colour colour) {
    return relative_luminance(colour) > 0.75;
}

std::vector<Colour> colours_of(const Artwork& artwork) {
    std::vector<Colour> colours;
    for (const Layer& layer : artwork.layers)
        if (std::find(colours.begin(), colours.end(), layer.colour) == colours.end())
            colours.push_back(layer.colour);
    return colours;
}

std::string film_letter(std::size_t film) {
    return film < 26 ? std::string(1, static_cast<char>('A' + film)) : std::to_string(film + 1);
}

}  // namespace lode
