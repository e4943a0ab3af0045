#include "print/pdf_document.hpp"

#include <cairo-pdf.h>
#include <unicode/brkiter.h>
#include <unicode/unistr.h>
#include <unicode/utf.h>

#include <algorithm>
#include <chrono>
#include <new>
#include <stdexcept>

#include "art/cairo_path.hpp"
#include "print/pdf_structure.hpp"

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

// What Cairo takes for text: valid UTF-8 without noncharacters, of which there are some in every plane; one
// line.
std::string clean(std::string_view utf8) {
    const auto text =
        icu::UnicodeString::fromUTF8(icu::StringPiece(utf8.data(), static_cast<std::int32_t>(utf8.size())));
    icu::UnicodeString cleaned;
    for (std::int32_t i = 0; i < text.length(); i = text.moveIndex32(i, 1)) {
        const UChar32 character = text.char32At(i);
        if (character < 0x20 || character == 0x7F)
            cleaned.append(u' ');
        else
            cleaned.append(U_IS_UNICODE_NONCHAR(character) ? UChar32{0xFFFD} : character);
    }
    std::string result;
    return cleaned.toUTF8String(result);
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

// Sets a blank before or after a line, as it is read, that runs one way alone; false where the line's face
// has none. It is shown in one with the letters beside it: a blank alone, without any ink, Cairo leaves out
// where a page's edge is near.
bool add_blank(ShapedLine& line, const ShapedLine& blank, bool is_before) {
    const bool at_left = is_before != line.runs.front().right_to_left;
    ShapedRun& run = at_left ? line.runs.front() : line.runs.back();
    if (blank.runs.size() != 1 || blank.runs.front().face != run.face) return false;
    ShapedRun added = blank.runs.front();
    for (cairo_glyph_t& glyph : added.glyphs) glyph.x += at_left ? -blank.width : line.width;
    run.glyphs.insert(at_left ? run.glyphs.begin() : run.glyphs.end(), added.glyphs.begin(),
                      added.glyphs.end());
    run.clusters.insert(is_before ? run.clusters.begin() : run.clusters.end(), added.clusters.begin(),
                        added.clusters.end());
    run.utf8.insert(is_before ? 0 : run.utf8.size(), added.utf8);
    return true;
}

constexpr double cell_margin_mm = 1.2;
// What Cairo calls a stretch of a page that shows a part; which part, the tree of parts says.
constexpr const char* content_mark = "Span";

}  // namespace

PdfDocument::PdfDocument(PageSize page, std::string_view title, std::optional<PrintFonts> fonts)
    : page_(page),
      fonts_(std::move(fonts)),
      bytes_(std::make_unique<std::string>()),
      title_(clean(title)),
      tags_(std::make_unique<PdfTags>()) {
    surface_.reset(cairo_pdf_surface_create_for_stream(append, bytes_.get(), page.width_mm * points_a_mm,
                                                       page.height_mm * points_a_mm));
    cairo_pdf_surface_restrict_to_version(surface_.get(), CAIRO_PDF_VERSION_1_5);
    cairo_pdf_surface_set_metadata(surface_.get(), CAIRO_PDF_METADATA_TITLE, title_.c_str());
    // Otherwise Cairo writes the time of day.
    cairo_pdf_surface_set_metadata(surface_.get(), CAIRO_PDF_METADATA_CREATE_DATE, "");
    context_.reset(cairo_create(surface_.get()));
    if (cairo_status(context_.get()) != CAIRO_STATUS_SUCCESS) throw std::bad_alloc();
    cairo_scale(context_.get(), points_a_mm, points_a_mm);
}

void PdfDocument::add_page() {
    end_mark();
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
    date_ = text;
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
    mark();
    trace(context_.get(), path);
    set_colour(colour, opacity);
    note_path();
    cairo_fill(context_.get());
}

void PdfDocument::fill(const Box& box, Colour colour, double opacity) {
    mark();
    trace(context_.get(), box);
    set_colour(colour, opacity);
    note_path();
    cairo_fill(context_.get());
}

void PdfDocument::stroke(const Path& path, const LineStyle& style) {
    mark();
    trace(context_.get(), path);
    set_line(style);
    note_stroke();
    cairo_stroke(context_.get());
}

void PdfDocument::stroke(const Box& box, const LineStyle& style) {
    mark();
    trace(context_.get(), box);
    set_line(style);
    note_stroke();
    cairo_stroke(context_.get());
}

void PdfDocument::line(Point from, Point to, const LineStyle& style) {
    mark();
    cairo_new_path(context_.get());
    cairo_move_to(context_.get(), from.x, from.y);
    cairo_line_to(context_.get(), to.x, to.y);
    set_line(style);
    note_stroke();
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
    show({std::string(text)}, baseline, style, align, most_width_mm);
}

void PdfDocument::show_glyphs(const ShapedRun& run, double left, double baseline, double em) {
    std::vector<cairo_glyph_t> glyphs = run.glyphs;
    for (cairo_glyph_t& glyph : glyphs) {
        glyph.x = left + glyph.x * em;
        glyph.y = baseline + glyph.y * em;
    }
    cairo_set_font_face(context_.get(), run.face);
    cairo_set_font_size(context_.get(), em);
    cairo_show_text_glyphs(
        context_.get(), run.utf8.data(), static_cast<int>(run.utf8.size()), glyphs.data(),
        static_cast<int>(glyphs.size()), run.clusters.data(), static_cast<int>(run.clusters.size()),
        run.right_to_left ? CAIRO_TEXT_CLUSTER_FLAG_BACKWARD : static_cast<cairo_text_cluster_flags_t>(0));
}

void PdfDocument::show(const Line& given, Point baseline, const TextStyle& style, Align align,
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
    const std::string text = shortened(given.text, most_width_mm.value_or(room), style);
    ShapedLine line = shaped(text, style);
    const double em = style.size_pt / points_a_mm;
    const double share = align == Align::left ? 0 : align == Align::centre ? 0.5 : 1;
    const double left = baseline.x - share * line.width * em;
    const bool right_to_left = std::any_of(line.runs.begin(), line.runs.end(),
                                           [](const ShapedRun& run) { return run.right_to_left; });
    if (line.runs.empty()) return;
    // Words are told apart by blanks, not by where lines end or texts stand (ISO 32000-1, 14.8.2.5).
    const std::optional<std::size_t> block = tags_->block();
    const bool blank_before = block && block == shown_in_ && !given.continues;
    const bool blank_after = block && given.blank_after;
    shown_in_ = block;
    const std::string said = (blank_before ? " " : "") + text + (blank_after ? " " : "");
    // Runs stand from left to right. Where one is read from the right, that is not the order to read them in.
    const bool reordered = right_to_left && line.runs.size() > 1;
    const bool spelled = !reordered && (!blank_before || add_blank(line, shaped(" ", style), true)) &&
                         (!blank_after || add_blank(line, shaped(" ", style), false));
    const bool spanned = block && !spelled;
    if (spanned) tags_->begin_span(said);
    mark();
    set_colour(style.colour, 1);
    for (const ShapedRun& run : line.runs) show_glyphs(run, left, baseline.y, em);
    if (marked_) {
        tags_->add_text(*marked_, said);
        constexpr double ascent = 0.93;  // of an em, as DejaVu Sans has them
        constexpr double descent = 0.24;
        note_extent({left, baseline.y - ascent * em, left + line.width * em, baseline.y + descent * em});
    }
    if (spanned) {
        end_mark();
        tags_->end();
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
    this->lines(text, lines, {corner.x + share * width_mm, corner.y + style.size_pt / points_a_mm}, style,
                align, width_mm);
    return static_cast<double>(lines.size()) * line_pitch(style);
}

void PdfDocument::lines(std::string_view text, std::span<const std::string> lines, Point baseline,
                        const TextStyle& style, Align align, double width_mm) {
    const std::string whole = clean(text);
    std::size_t read = 0;
    for (const std::string& line : lines) {
        const bool continues = read > 0;
        const std::size_t found = whole.find(line, read);
        if (found != std::string::npos) read = found + line.size();
        const bool blank_after = &line != &lines.back() && read < whole.size() && whole[read] == ' ';
        show({line, continues, blank_after}, baseline, style, align, width_mm);
        baseline.y += line_pitch(style);
    }
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

void PdfDocument::mark() {
    const std::optional<std::size_t> part = tags_->holder();
    if (part == marked_) return;
    end_mark();
    if (!part) return;
    tags_->add_content(*part, pages_ - 1);
    // Of what is clipped away Cairo passes over tags as well, and then misses them.
    cairo_save(context_.get());
    cairo_reset_clip(context_.get());
    cairo_tag_begin(context_.get(), content_mark, nullptr);
    cairo_restore(context_.get());
    marked_ = part;
}

void PdfDocument::end_mark() {
    if (!marked_) return;
    cairo_save(context_.get());
    cairo_reset_clip(context_.get());
    cairo_tag_end(context_.get(), content_mark);
    cairo_restore(context_.get());
    marked_.reset();
}

void PdfDocument::note_extent(Box box) {
    if (!marked_) return;
    Box shown;
    cairo_clip_extents(context_.get(), &shown.left, &shown.top, &shown.right, &shown.bottom);
    box = {std::max(box.left, shown.left), std::max(box.top, shown.top), std::min(box.right, shown.right),
           std::min(box.bottom, shown.bottom)};
    if (box.left > box.right || box.top > box.bottom) return;
    cairo_user_to_device(context_.get(), &box.left, &box.top);
    cairo_user_to_device(context_.get(), &box.right, &box.bottom);
    tags_->add_extent(*marked_, pages_ - 1,
                      {std::min(box.left, box.right), std::min(box.top, box.bottom),
                       std::max(box.left, box.right), std::max(box.top, box.bottom)});
}

void PdfDocument::note_path() {
    if (!marked_) return;
    Box box;
    cairo_fill_extents(context_.get(), &box.left, &box.top, &box.right, &box.bottom);
    note_extent(box);
}

void PdfDocument::note_stroke() {
    if (!marked_) return;
    Box box;
    cairo_stroke_extents(context_.get(), &box.left, &box.top, &box.right, &box.bottom);
    note_extent(box);
}

PdfDocument::Tagged PdfDocument::tag(Role role, std::string_view description, std::string_view language) {
    tags_->begin(role, clean(description), clean(language));
    return Tagged(tags_.get());
}

void PdfDocument::set_language(std::string_view language) {
    language_ = clean(language);
}

void PdfDocument::set_place(std::string_view name, Point at) {
    cairo_user_to_device(context_.get(), &at.x, &at.y);
    tags_->set_place(name, {pages_ - 1, at});
}

PdfDocument::Tagged PdfDocument::link(std::string_view place, std::string_view description) {
    tags_->begin_link(place, clean(description));
    return Tagged(tags_.get());
}

void PdfDocument::bookmark(std::string_view title, std::string_view place, int level) {
    tags_->add_bookmark({clean(title), std::string(place), level});
}

std::string PdfDocument::bytes() {
    end_mark();
    cairo_show_page(context_.get());
    cairo_surface_finish(surface_.get());
    if (cairo_status(context_.get()) != CAIRO_STATUS_SUCCESS ||
        cairo_surface_status(surface_.get()) != CAIRO_STATUS_SUCCESS)
        throw std::bad_alloc();
    context_.reset();
    if (!tags_->any_part() && language_.empty() && tags_->places().empty() && tags_->bookmarks().empty())
        return *bytes_;
    return with_structure(*bytes_, *tags_, {title_, language_, date_, page_.height_mm * points_a_mm});
}

}  // namespace lode
