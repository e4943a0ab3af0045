#include "print/print_fonts.hpp"

#include <cairo-ft.h>
#include <fontconfig/fontconfig.h>
#include <unicode/uchar.h>
#include <unicode/unistr.h>

#include <algorithm>
#include <map>
#include <new>
#include <optional>
#include <set>
#include <utility>

#include "art/font.hpp"
#include "art/shaping.hpp"

namespace lode {

namespace {

constexpr std::size_t most_lenders = 12;  // fonts that lend letters to the family's own

struct DestroyFace {
    void operator()(FcPattern* pattern) const { FcPatternDestroy(pattern); }
    void operator()(cairo_font_face_t* face) const { cairo_font_face_destroy(face); }
};
template <class T>
using HeldFace = std::unique_ptr<T, DestroyFace>;

// The font as Cairo, which opens its file once more and shares it between documents, writes it into a page.
Outcome<HeldFace<cairo_font_face_t>> drawing_face(const FontFile& file) {
    const HeldFace<FcPattern> pattern(FcPatternCreate());
    if (!pattern ||
        !FcPatternAddString(pattern.get(), FC_FILE, reinterpret_cast<const FcChar8*>(file.path.c_str())) ||
        !FcPatternAddInteger(pattern.get(), FC_INDEX, file.index))
        throw std::bad_alloc();
    HeldFace<cairo_font_face_t> face(cairo_ft_font_face_create_for_pattern(pattern.get()));
    if (cairo_font_face_status(face.get()) == CAIRO_STATUS_NO_MEMORY) throw std::bad_alloc();
    if (cairo_font_face_status(face.get()) != CAIRO_STATUS_SUCCESS)
        return font_refusal(file, "Cairo cannot open it");
    return face;
}

icu::UnicodeString printable(std::string_view utf8) {
    const auto size = static_cast<std::int32_t>(std::min(utf8.size(), PrintFonts::most_line_bytes));
    auto text = icu::UnicodeString::fromUTF8(icu::StringPiece(utf8.data(), size));
    for (std::int32_t i = 0; i < text.length(); ++i)
        if (u_iscntrl(text.charAt(i)) && !u_hasBinaryProperty(text.charAt(i), UCHAR_BIDI_CONTROL))
            text.setCharAt(i, u' ');
    return text;
}

// The bytes, in UTF-8, of a part of a text.
std::string utf8_of(const icu::UnicodeString& text, int start, int end) {
    std::string utf8;
    text.tempSubStringBetween(start, end).toUTF8String(utf8);
    return utf8;
}

// Appends a run's glyphs to the line, and advances it.
void append_run(const icu::UnicodeString& text, const TextRun& run, cairo_font_face_t* face,
                ShapedLine& line) {
    const RunGlyphs set = shaped(text, run);
    if (!set.buffer) throw std::bad_alloc();
    if (set.glyphs.empty()) return;
    const double units = run.font->units_an_em();
    ShapedRun printed;
    printed.face = face;
    printed.right_to_left = run.right_to_left;
    printed.utf8 = utf8_of(text, run.start, run.start + run.length);
    const std::size_t count = set.glyphs.size();
    for (std::size_t i = 0; i < count; ++i) {
        const hb_glyph_position_t& position = set.positions[i];
        printed.glyphs.push_back(
            {set.glyphs[i].codepoint, line.width + position.x_offset / units, -position.y_offset / units});
        line.width += position.x_advance / units;
    }
    // Clusters follow the text; of right-to-left text Cairo counts their glyphs from the end.
    const auto cluster = [&](std::size_t i) {
        return i == count ? run.start + run.length
                          : static_cast<int>(set.glyphs[run.right_to_left ? count - 1 - i : i].cluster);
    };
    for (std::size_t i = 0; i < count;) {
        std::size_t end = i + 1;
        while (end < count && cluster(end) == cluster(i)) ++end;
        const std::size_t bytes = utf8_of(text, cluster(i), cluster(end)).size();
        printed.clusters.push_back({static_cast<int>(bytes), static_cast<int>(end - i)});
        i = end;
    }
    line.runs.push_back(std::move(printed));
}

}  // namespace

struct PrintFonts::State {
    const ShapingFont* regular = nullptr;
    const ShapingFont* bold = nullptr;
    std::vector<std::unique_ptr<ShapingFont>> fonts;  // regular, bold, and those that lend them letters
    std::map<const ShapingFont*, HeldFace<cairo_font_face_t>> drawing;
    std::set<UChar32> nowhere;

    // Refused where the font lacks the character that it is wanted for.
    Outcome<const ShapingFont*> add(const std::string& asked, std::optional<UChar32> wanted = {});
    const ShapingFont& font_for(UChar32 character, const ShapingFont& own);
};

Outcome<const ShapingFont*> PrintFonts::State::add(const std::string& asked, std::optional<UChar32> wanted) {
    const auto file = find_font(asked);
    if (!file) return file.refusal();
    auto font = ShapingFont::open(*file);
    if (!font) return font.refusal();
    if ((*font)->empty()) return font_refusal(*file, "it holds no glyphs");
    if (wanted && !(*font)->has(*wanted)) return font_refusal(*file, "it lacks a character");
    auto face = drawing_face(*file);
    if (!face) return face.refusal();
    fonts.push_back(*std::move(font));
    drawing.emplace(fonts.back().get(), *std::move(face));
    return fonts.back().get();
}

const ShapingFont& PrintFonts::State::font_for(UChar32 character, const ShapingFont& own) {
    if (own.has(character) || nowhere.contains(character)) return own;
    constexpr std::size_t of_the_family = 2;
    for (std::size_t i = of_the_family; i < fonts.size(); ++i)
        if (fonts[i]->has(character)) return *fonts[i];
    if (fonts.size() < of_the_family + most_lenders)
        for (const std::string& family : families_with(utf8_of(icu::UnicodeString(character), 0, 2)))
            if (const auto font = add(family, character)) return **font;
    nowhere.insert(character);
    return own;
}

Outcome<PrintFonts> PrintFonts::open(const std::string& family) {
    auto state = std::make_unique<State>();
    const auto regular = state->add(family);
    if (!regular) return regular.refusal();
    const auto bold = state->add(family + ":bold");
    if (!bold) return bold.refusal();
    state->regular = *regular;
    state->bold = *bold;
    return PrintFonts(std::move(state));
}

ShapedLine PrintFonts::shape(std::string_view utf8, bool bold) const {
    const icu::UnicodeString text = printable(utf8);
    const ShapingFont& own = bold ? *state_->bold : *state_->regular;
    const auto choose = [&](UChar32 character) -> const ShapingFont& {
        return state_->font_for(character, own);
    };
    ShapedLine line;
    for (const TextRun& run : runs_of(text, choose))
        append_run(text, run, state_->drawing.at(run.font).get(), line);
    return line;
}

PrintFonts::PrintFonts(std::unique_ptr<State> state) : state_(std::move(state)) {}
PrintFonts::PrintFonts(PrintFonts&&) noexcept = default;
PrintFonts& PrintFonts::operator=(PrintFonts&&) noexcept = default;
PrintFonts::~PrintFonts() = default;

}  // namespace lode
