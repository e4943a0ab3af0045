#include "art/font.hpp"

#include <ft2build.h>
#include FT_FREETYPE_H
#include FT_OUTLINE_H

#include <hb-ot.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <new>
#include <stdexcept>
#include <unordered_map>
#include <utility>

#include "art/combine.hpp"
#include "art/shaping.hpp"

namespace lode {

namespace {

// Far above any font that was drawn by hand, far below what would hurt.
constexpr int most_glyph_points = 10'000;
constexpr unsigned most_line_glyphs = 4'000;

struct Destroy {
    void operator()(FT_Library library) const { FT_Done_FreeType(library); }
    void operator()(FT_Face face) const { FT_Done_Face(face); }
};
template <class T>
using Held = std::unique_ptr<T, Destroy>;

// FreeType tells a want of memory by a code of its own: it is no fault of the font.
bool is_done(FT_Error error) {
    if (error == FT_Err_Out_Of_Memory) throw std::bad_alloc();
    return error == FT_Err_Ok;
}

// What FT_Outline_Decompose draws into. y is turned over on the way.
struct Pen {
    Path path;

    static Point point(const FT_Vector* v) { return {static_cast<double>(v->x), -static_cast<double>(v->y)}; }
    [[nodiscard]] Point here() const {
        const Contour& last = path.contours.back();
        return last.segments.empty() ? last.start : last.segments.back().to;
    }
    static Pen& of(void* user) { return *static_cast<Pen*>(user); }

    static int move(const FT_Vector* to, void* user) {
        of(user).path.contours.push_back({point(to), {}});
        return 0;
    }
    static int line(const FT_Vector* to, void* user) {
        if (of(user).path.contours.empty()) return 1;
        if (point(to) != of(user).here())
            of(user).path.contours.back().segments.push_back(Segment::line(point(to)));
        return 0;
    }
    // A quadratic is a cubic whose controls lie two thirds of the way to its own.
    static int conic(const FT_Vector* control, const FT_Vector* to, void* user) {
        if (of(user).path.contours.empty()) return 1;
        const Point from = of(user).here();
        const Point middle = point(control);
        const Point end = point(to);
        const auto towards = [&](Point p) {
            return Point{(p.x + 2 * middle.x) / 3, (p.y + 2 * middle.y) / 3};
        };
        of(user).path.contours.back().segments.push_back(Segment::cubic(towards(from), towards(end), end));
        return 0;
    }
    static int cubic(const FT_Vector* one, const FT_Vector* two, const FT_Vector* to, void* user) {
        if (of(user).path.contours.empty()) return 1;
        of(user).path.contours.back().segments.push_back(Segment::cubic(point(one), point(two), point(to)));
        return 0;
    }
};

// What the glyph fills, by path.hpp's rules: TrueType and PostScript outlines run opposite ways, and some
// glyphs are drawn as strokes that overlap. Contours that enclose nothing are left out (fonts keep anchors as
// such). Throws what united throws.
Path tidied(const Path& path) {
    Path result = united(path);
    constexpr double least_area = 2;  // font units squared, some 1e-4 mm2 on a panel
    std::erase_if(result.contours, [](const Contour& c) { return std::abs(signed_area(c)) < least_area; });
    return result;
}

}  // namespace

struct Font::State {
    FontFile file;
    std::unique_ptr<ShapingFont> shaping;
    Held<std::remove_pointer_t<FT_Library>> library;
    Held<std::remove_pointer_t<FT_Face>> face;  // looks into the bytes that the shaping font holds
    std::string name;
    double cap_height = 0;
    std::unordered_map<hb_codepoint_t, Path> outlines;

    Outcome<const Path*> outline(hb_codepoint_t glyph);
    Outcome<bool> append_run(const icu::UnicodeString& text, const TextRun& run, Point& pen, SetLine& line);
    void measure_cap_height();
};

Outcome<const Path*> Font::State::outline(hb_codepoint_t glyph) {
    if (const auto known = outlines.find(glyph); known != outlines.end()) return &known->second;
    const std::string which = "glyph " + std::to_string(glyph);
    if (!is_done(FT_Load_Glyph(face.get(), glyph, FT_LOAD_NO_SCALE)))
        return font_refusal(file, which + " cannot be read");
    const FT_GlyphSlot slot = face->glyph;
    if (slot->format != FT_GLYPH_FORMAT_OUTLINE)
        return font_refusal(file, which + " is a picture and no outline");
    if (slot->outline.n_points > most_glyph_points)
        return font_refusal(file, which + " has more points than any letter needs");
    FT_Outline_Funcs funcs{};
    funcs.move_to = Pen::move;
    funcs.line_to = Pen::line;
    funcs.conic_to = Pen::conic;
    funcs.cubic_to = Pen::cubic;
    Pen pen;
    if (!is_done(FT_Outline_Decompose(&slot->outline, &funcs, &pen)))
        return font_refusal(file, which + " has a broken outline");
    try {
        return &outlines.emplace(glyph, tidied(pen.path)).first->second;
    } catch (const std::logic_error& fault) {
        return font_refusal(file, which + ": " + fault.what());
    }
}

// Shapes one run, and appends its letters from the pen on, which it moves.
Outcome<bool> Font::State::append_run(const icu::UnicodeString& text, const TextRun& run, Point& pen,
                                      SetLine& line) {
    const RunGlyphs set = shaped(text, run);
    if (!set.buffer) return font_refusal(file, "the text cannot be shaped with it");
    const auto infos = set.glyphs;
    const auto positions = set.positions;
    const std::size_t count = infos.size();
    if (count > most_line_glyphs)
        return font_refusal(file, "it turns a line into more glyphs than a line can hold");

    const auto cluster_text = [&](unsigned cluster) {
        unsigned end = static_cast<unsigned>(run.start + run.length);
        for (std::size_t i = 0; i < count; ++i)
            if (infos[i].cluster > cluster) end = std::min(end, infos[i].cluster);
        std::string utf8;
        text.tempSubStringBetween(static_cast<int>(cluster), static_cast<int>(end)).toUTF8String(utf8);
        return utf8;
    };
    bool open_letter = false;
    for (std::size_t i = 0; i < count; ++i) {
        if (i > 0 && infos[i].cluster != infos[i - 1].cluster) open_letter = false;
        if (infos[i].codepoint == 0) line.missing.push_back(cluster_text(infos[i].cluster));
        const auto drawn = outline(infos[i].codepoint);
        if (!drawn) return drawn.refusal();
        if (!(*drawn)->empty()) {
            if (!std::exchange(open_letter, true))
                line.letters.push_back({cluster_text(infos[i].cluster), {}});
            const Path placed =
                transformed(**drawn, 1, {pen.x + positions[i].x_offset, pen.y - positions[i].y_offset});
            // A mark that meets its letter becomes one with it: no blade shall cut between them.
            Path& letter = line.letters.back().path;
            try {
                letter = letter.empty() ? placed : united(std::array{letter, placed});
            } catch (const std::logic_error& fault) {
                return font_refusal(file, "letter " + line.letters.back().text + ": " + fault.what());
            }
        }
        pen.x += positions[i].x_advance;
        pen.y -= positions[i].y_advance;
    }
    return true;
}

void Font::State::measure_cap_height() {
    hb_codepoint_t glyph = 0;
    if (hb_font_get_nominal_glyph(shaping->font(), 'H', &glyph))
        if (const auto drawn = outline(glyph); drawn && !(*drawn)->empty()) {
            cap_height = bounds(**drawn).height();
            return;
        }
    hb_position_t stated = 0;
    if (hb_ot_metrics_get_position(shaping->font(), HB_OT_METRICS_TAG_CAP_HEIGHT, &stated) && stated > 0)
        cap_height = stated;
}

Outcome<Font> Font::open(FontFile file) {
    auto shaping = ShapingFont::open(file);
    if (!shaping) return shaping.refusal();
    auto state = std::make_unique<State>();
    state->file = std::move(file);
    state->shaping = *std::move(shaping);
    const std::string& bytes = state->shaping->bytes();

    FT_Library library = nullptr;
    if (FT_Init_FreeType(&library) != FT_Err_Ok) throw std::bad_alloc();  // it needs nothing but memory
    state->library.reset(library);
    FT_Face face = nullptr;
    if (!is_done(FT_New_Memory_Face(library, reinterpret_cast<const FT_Byte*>(bytes.data()),
                                    static_cast<FT_Long>(bytes.size()), state->file.index, &face)))
        return font_refusal(state->file, "this is no font file, or a broken one");
    state->face.reset(face);
    if (!FT_IS_SCALABLE(face))
        return font_refusal(state->file, "it holds pictures of letters and no outlines");
    if (!FT_IS_SFNT(face)) return font_refusal(state->file, "it is no OpenType or TrueType font");
    if (state->shaping->empty()) return font_refusal(state->file, "it holds no glyphs");

    state->name = face->family_name ? face->family_name : "a font without a name";
    if (face->style_name) state->name += std::string(" ") + face->style_name;
    state->measure_cap_height();
    return Font(std::move(state));
}

Outcome<SetLine> Font::set_line(std::string_view utf8) {
    const auto text =
        icu::UnicodeString::fromUTF8(icu::StringPiece(utf8.data(), static_cast<std::int32_t>(utf8.size())));
    SetLine line;
    Point pen;
    for (const TextRun& run :
         runs_of(text, [&](UChar32) -> const ShapingFont& { return *state_->shaping; })) {
        const auto done = state_->append_run(text, run, pen, line);
        if (!done) return done.refusal();
    }
    return line;
}

const std::string& Font::name() const {
    return state_->name;
}
double Font::cap_height() const {
    return state_->cap_height;
}

Font::Font(std::unique_ptr<State> state) : state_(std::move(state)) {}
Font::Font(Font&&) noexcept = default;
Font& Font::operator=(Font&&) noexcept = default;
Font::~Font() = default;

}  // namespace lode
