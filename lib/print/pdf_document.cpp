#include "print/pdf_document.hpp"

#include <cairo-pdf.h>
#include <unicode/brkiter.h>
#include <unicode/unistr.h>

#include <algorithm>
#include <chrono>
#include <new>
#include <stdexcept>

#include "art/cairo_path.hpp"

namespace lode {

namespace {

cairo_status_t append(void* to, const unsigned char* data, unsigned size) {
    try {
        static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(data), size);
    } catch (...) {  // Cairo is C: nothing may fly through it
        return CAIRO_STATUS_NO_MEMORY;
    }
    return CAIRO_STATUS_SUCCESS;
}

// What Cairo takes for text: valid UTF-8, one line.
std::string clean(std::string_view utf8) {
    auto text =
        icu::UnicodeString::fromUTF8(icu::StringPiece(utf8.data(), static_cast<std::int32_t>(utf8.size())));
    for (std::int32_t i = 0; i < text.length(); ++i)
        if (text.charAt(i) < 0x20 || text.charAt(i) == 0x7F) text.setCharAt(i, u' ');
    std::string result;
    return text.toUTF8String(result);
}

// Where letters, with their marks, end in a text: byte offsets, the last one its size.
std::vector<std::size_t> letter_ends(const std::string& utf8) {
    UErrorCode error = U_ZERO_ERROR;
    const std::unique_ptr<icu::BreakIterator> breaks(
        icu::BreakIterator::createCharacterInstance(icu::Locale::getRoot(), error));
    if (U_FAILURE(error)) throw std::bad_alloc();
    const auto text = icu::UnicodeString::fromUTF8(utf8);
    breaks->setText(text);
    std::vector<std::size_t> ends;
    std::size_t at = 0;
    for (std::int32_t from = 0, to = breaks->next(); to != icu::BreakIterator::DONE;
         from = to, to = breaks->next()) {
        std::string letter;
        text.tempSubStringBetween(from, to).toUTF8String(letter);
        at += letter.size();
        ends.push_back(at);
    }
    return ends;
}

// How many of the first pieces fit, given that each more takes more room: the largest count for which fits is
// true, or 0.
template <class Fits>
std::size_t most_that_fit(std::size_t count, Fits fits) {
    std::size_t good = 0;
    std::size_t bad = count + 1;
    while (bad - good > 1) {
        const std::size_t middle = good + (bad - good) / 2;
        (fits(middle) ? good : bad) = middle;
    }
    return good;
}

// As much of a text as is shaped at once, whole characters.
std::string_view front(std::string_view utf8) {
    if (utf8.size() <= PrintFonts::most_line_bytes) return utf8;
    std::size_t end = PrintFonts::most_line_bytes;
    while (end > 0 && (static_cast<unsigned char>(utf8[end]) & 0xC0) == 0x80) --end;
    return utf8.substr(0, end);
}

std::vector<std::string> split(std::string_view text, char at) {
    std::vector<std::string> parts;
    while (true) {
        const std::size_t end = text.find(at);
        parts.emplace_back(text.substr(0, end));
        if (end == std::string_view::npos) return parts;
        text.remove_prefix(end + 1);
    }
}

constexpr double cell_margin_mm = 1.2;

}  // namespace

PdfDocument::PdfDocument(PageSize page, std::string_view title, std::optional<PrintFonts> fonts)
    : page_(page), fonts_(std::move(fonts)), bytes_(std::make_unique<std::string>()) {
    surface_.reset(cairo_pdf_surface_create_for_stream(append, bytes_.get(), page.width_mm * points_a_mm,
                                                       page.height_mm * points_a_mm));
    cairo_pdf_surface_restrict_to_version(surface_.get(), CAIRO_PDF_VERSION_1_5);
    cairo_pdf_surface_set_metadata(surface_.get(), CAIRO_PDF_METADATA_TITLE, clean(title).c_str());
    // Otherwise Cairo writes the time of day.
    cairo_pdf_surface_set_metadata(surface_.get(), CAIRO_PDF_METADATA_CREATE_DATE, "");
    context_.reset(cairo_create(surface_.get()));
    if (cairo_status(context_.get()) != CAIRO_STATUS_SUCCESS) throw std::bad_alloc();
    cairo_scale(context_.get(), points_a_mm, points_a_mm);
}

void PdfDocument::add_page() {
    cairo_show_page(context_.get());
    ++pages_;
}

void PdfDocument::set_date(std::int64_t seconds) {
    using namespace std::chrono;
    const sys_seconds time{std::chrono::seconds(seconds)};
    const auto day = floor<days>(time);
    const year_month_day date{day};
    const hh_mm_ss clock{time - day};
    char text[64];
    std::snprintf(text, sizeof text, "%04d-%02u-%02uT%02d:%02d:%02dZ", static_cast<int>(date.year()),
                  static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()),
                  static_cast<int>(clock.hours().count()), static_cast<int>(clock.minutes().count()),
                  static_cast<int>(clock.seconds().count()));
    cairo_pdf_surface_set_metadata(surface_.get(), CAIRO_PDF_METADATA_CREATE_DATE, text);
}

namespace {

void trace(cairo_t* context, const Box& box) {
    cairo_new_path(context);
    cairo_rectangle(context, box.left, box.top, box.width(), box.height());
}

}  // namespace

void PdfDocument::set_colour(Colour colour, double opacity) {
    cairo_set_source_rgba(context_.get(), colour.red / 255.0, colour.green / 255.0, colour.blue / 255.0,
                          opacity);
}

void PdfDocument::set_line(const LineStyle& style) {
    set_colour(style.colour, 1);
    cairo_set_line_width(context_.get(), style.width_mm);
    cairo_set_line_join(context_.get(), CAIRO_LINE_JOIN_ROUND);
    cairo_set_dash(context_.get(), style.dashes_mm.data(), static_cast<int>(style.dashes_mm.size()), 0);
}

void PdfDocument::fill(const Path& path, Colour colour, double opacity) {
    trace(context_.get(), path);
    set_colour(colour, opacity);
    cairo_fill(context_.get());
}

void PdfDocument::fill(const Box& box, Colour colour, double opacity) {
    trace(context_.get(), box);
    set_colour(colour, opacity);
    cairo_fill(context_.get());
}

void PdfDocument::stroke(const Path& path, const LineStyle& style) {
    trace(context_.get(), path);
    set_line(style);
    cairo_stroke(context_.get());
}

void PdfDocument::stroke(const Box& box, const LineStyle& style) {
    trace(context_.get(), box);
    set_line(style);
    cairo_stroke(context_.get());
}

void PdfDocument::line(Point from, Point to, const LineStyle& style) {
    cairo_new_path(context_.get());
    cairo_move_to(context_.get(), from.x, from.y);
    cairo_line_to(context_.get(), to.x, to.y);
    set_line(style);
    cairo_stroke(context_.get());
}

PdfDocument::Kept PdfDocument::clip(const Box& box) {
    cairo_save(context_.get());
    trace(context_.get(), box);
    cairo_clip(context_.get());
    return Kept(context_.get());
}

PdfDocument::Kept PdfDocument::place(Point at, double scale_x, double scale_y) {
    cairo_save(context_.get());
    cairo_translate(context_.get(), at.x, at.y);
    cairo_scale(context_.get(), scale_x, scale_y);
    return Kept(context_.get());
}

ShapedLine PdfDocument::shaped(std::string_view text, const TextStyle& style) const {
    if (!fonts_) throw std::logic_error("a document without fonts is asked for text");
    return fonts_->shape(text, style.bold);
}

double PdfDocument::width_of(std::string_view text, const TextStyle& style) const {
    return shaped(text, style).width * style.size_pt / points_a_mm;
}

std::string PdfDocument::shortened(std::string_view text, double width_mm, const TextStyle& style) const {
    constexpr const char* ellipsis = "\xE2\x80\xA6";
    std::string whole = clean(text.substr(0, PrintFonts::most_line_bytes));
    if (width_of(whole, style) <= width_mm && text.size() <= PrintFonts::most_line_bytes) return whole;
    const std::vector<std::size_t> ends = letter_ends(whole);
    const auto first = [&](std::size_t letters) {
        std::string part = whole.substr(0, letters ? ends[letters - 1] : 0);
        while (part.ends_with(' ')) part.pop_back();
        return part + ellipsis;
    };
    return first(
        most_that_fit(ends.size(), [&](std::size_t n) { return width_of(first(n), style) <= width_mm; }));
}

std::vector<std::string> PdfDocument::wrapped(std::string_view text, double width_mm,
                                              const TextStyle& style) const {
    std::vector<std::string> lines;
    const auto fits = [&](const std::string& line) { return width_of(line, style) <= width_mm; };
    for (const std::string& given : split(text, '\n')) {
        lines.emplace_back();
        for (const std::string& word : split(clean(given), ' ')) {
            const std::string longer = lines.back().empty() ? word : lines.back() + " " + word;
            if (fits(longer)) {
                lines.back() = longer;
                continue;
            }
            if (!lines.back().empty()) lines.emplace_back();
            std::string_view rest = word;
            while (!fits(std::string(front(rest)))) {
                const std::string part(front(rest));
                const std::vector<std::size_t> ends = letter_ends(part);
                if (ends.size() < 2) break;  // one letter that is wider than the column
                const std::size_t letters = most_that_fit(
                    ends.size(), [&](std::size_t n) { return fits(part.substr(0, ends[n - 1])); });
                const std::size_t cut = ends[std::clamp<std::size_t>(letters, 1, ends.size() - 1) - 1];
                lines.back() = part.substr(0, cut);
                lines.emplace_back();
                rest.remove_prefix(cut);
            }
            lines.back() = rest;
        }
    }
    return lines;
}

void PdfDocument::text(std::string_view text, Point baseline, const TextStyle& style, Align align,
                       std::optional<double> most_width_mm) {
    double room = 0;
    switch (align) {
        case Align::left:
            room = page_.width_mm - baseline.x;
            break;
        case Align::centre:
            room = 2 * std::min(baseline.x, page_.width_mm - baseline.x);
            break;
        case Align::right:
            room = baseline.x;
            break;
    }
    const ShapedLine line = shaped(shortened(text, most_width_mm.value_or(room), style), style);
    const double em = style.size_pt / points_a_mm;
    const double share = align == Align::left ? 0 : align == Align::centre ? 0.5 : 1;
    const double left = baseline.x - share * line.width * em;
    set_colour(style.colour, 1);
    for (const ShapedRun& run : line.runs) {
        std::vector<cairo_glyph_t> glyphs = run.glyphs;
        for (cairo_glyph_t& glyph : glyphs) {
            glyph.x = left + glyph.x * em;
            glyph.y = baseline.y + glyph.y * em;
        }
        cairo_set_font_face(context_.get(), run.face);
        cairo_set_font_size(context_.get(), em);
        cairo_show_text_glyphs(context_.get(), run.utf8.data(), static_cast<int>(run.utf8.size()),
                               glyphs.data(), static_cast<int>(glyphs.size()), run.clusters.data(),
                               static_cast<int>(run.clusters.size()),
                               run.right_to_left ? CAIRO_TEXT_CLUSTER_FLAG_BACKWARD
                                                 : static_cast<cairo_text_cluster_flags_t>(0));
    }
}

double PdfDocument::paragraph(std::string_view text, Point corner, double width_mm, const TextStyle& style,
                              Align align, std::size_t most_lines) {
    std::vector<std::string> lines = wrapped(text, width_mm, style);
    if (lines.size() > most_lines) {
        lines.resize(most_lines);
        if (!lines.empty())
            // One blank more than fits, so that the ellipsis is always set.
            lines.back() = shortened(lines.back() + std::string(200, ' ') + ".", width_mm, style);
    }
    const double share = align == Align::left ? 0 : align == Align::centre ? 0.5 : 1;
    double baseline = corner.y + style.size_pt / points_a_mm;
    for (const std::string& line : lines) {
        this->text(line, {corner.x + share * width_mm, baseline}, style, align, width_mm);
        baseline += line_pitch(style);
    }
    return static_cast<double>(lines.size()) * line_pitch(style);
}

double PdfDocument::row_height(std::span<const TableColumn> columns, std::span<const std::string> cells,
                               const TextStyle& style) const {
    std::size_t lines = 1;
    for (std::size_t i = 0; i < std::min(columns.size(), cells.size()); ++i)
        lines = std::max(lines, wrapped(cells[i], columns[i].width_mm - 2 * cell_margin_mm, style).size());
    return static_cast<double>(lines) * line_pitch(style) + 2 * cell_margin_mm;
}

double PdfDocument::row(Point corner, std::span<const TableColumn> columns,
                        std::span<const std::string> cells, const TextStyle& style) {
    const double height = row_height(columns, cells, style);
    double x = corner.x;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        if (i < cells.size())
            paragraph(cells[i], {x + cell_margin_mm, corner.y + cell_margin_mm},
                      columns[i].width_mm - 2 * cell_margin_mm, style, columns[i].align);
        x += columns[i].width_mm;
    }
    line({corner.x, corner.y + height}, {x, corner.y + height}, {0.15, {0xb8, 0xbc, 0xbf}, {}});
    return height;
}

namespace {

const char* structure_type(Role role) {
    switch (role) {
        case Role::section:
            return "Sect";
        case Role::heading:
            return "H1";
        case Role::subheading:
            return "H2";
        case Role::paragraph:
            return "P";
        case Role::list:
            return "L";
        case Role::list_item:
            return "LI";
        case Role::table:
            return "Table";
        case Role::table_row:
            return "TR";
        case Role::column_header:
        case Role::row_header:
            return "TH";
        case Role::table_cell:
            return "TD";
        case Role::figure:
            return "Figure";
        case Role::contents:
            return "TOC";
        case Role::contents_item:
            return "TOCI";
    }
    throw std::logic_error("no such role");
}

// A name inside an attribute string of Cairo.
std::string quoted(std::string_view name) {
    std::string text = "'";
    for (const char c : name) {
        if (c == '\'' || c == '\\') text += '\\';
        text += c;
    }
    return text + "'";
}

}  // namespace

PdfDocument::Tagged PdfDocument::tag(Role role, std::string_view) {
    open_tags_.emplace_back(structure_type(role));
    cairo_tag_begin(context_.get(), open_tags_.back().c_str(), nullptr);
    return Tagged(this);
}

void PdfDocument::end_tag() {
    cairo_tag_end(context_.get(), open_tags_.back().c_str());
    open_tags_.pop_back();
}

void PdfDocument::set_language(std::string_view) {}

void PdfDocument::set_place(std::string_view name, Point at) {
    const std::string attributes = "name=" + quoted(name) + " x=" + std::to_string(at.x * points_a_mm) +
                                   " y=" + std::to_string(at.y * points_a_mm);
    cairo_tag_begin(context_.get(), CAIRO_TAG_DEST, attributes.c_str());
    cairo_tag_end(context_.get(), CAIRO_TAG_DEST);
}

PdfDocument::Tagged PdfDocument::link(std::string_view place) {
    open_tags_.emplace_back(CAIRO_TAG_LINK);
    cairo_tag_begin(context_.get(), CAIRO_TAG_LINK, ("dest=" + quoted(place)).c_str());
    return Tagged(this);
}

void PdfDocument::bookmark(std::string_view title, std::string_view place, int level) {
    const auto depth = static_cast<std::size_t>(std::max(level, 0));
    bookmark_levels_.resize(std::min(bookmark_levels_.size(), depth));
    const int parent = bookmark_levels_.empty() ? CAIRO_PDF_OUTLINE_ROOT : bookmark_levels_.back();
    bookmark_levels_.push_back(cairo_pdf_surface_add_outline(surface_.get(), parent, clean(title).c_str(),
                                                             ("dest=" + quoted(place)).c_str(),
                                                             static_cast<cairo_pdf_outline_flags_t>(0)));
}

std::string PdfDocument::bytes() {
    cairo_show_page(context_.get());
    cairo_surface_finish(surface_.get());
    if (cairo_status(context_.get()) != CAIRO_STATUS_SUCCESS ||
        cairo_surface_status(surface_.get()) != CAIRO_STATUS_SUCCESS)
        throw std::bad_alloc();
    context_.reset();
    return *bytes_;
}

}  // namespace lode
