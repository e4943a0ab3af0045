#include "art/font.hpp"

#include <ft2build.h>
#include FT_FREETYPE_H
#include FT_OUTLINE_H

#include <hb-ot.h>
#include <hb.h>
#include <unicode/ubidi.h>
#include <unicode/unistr.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>
#include <unordered_map>
#include <utility>

#include <letterlode/files.hpp>

#include "art/combine.hpp"

namespace lode {

namespace {

// Far above any font that was drawn by hand, far below what would hurt.
constexpr std::size_t most_font_bytes = 128u << 20;
constexpr int most_glyph_points = 10'000;
constexpr unsigned most_line_glyphs = 4'000;

struct Destroy {
    void operator()(FT_Library library) const { FT_Done_FreeType(library); }
    void operator()(FT_Face face) const { FT_Done_Face(face); }
    void operator()(hb_blob_t* blob) const { hb_blob_destroy(blob); }
    void operator()(hb_face_t* face) const { hb_face_destroy(face); }
    void operator()(hb_font_t* font) const { hb_font_destroy(font); }
    void operator()(hb_buffer_t* buffer) const { hb_buffer_destroy(buffer); }
    void operator()(UBiDi* order) const { ubidi_close(order); }
};
template <class T>
using Held = std::unique_ptr<T, Destroy>;

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

Refusal broken(const FontFile& file, const std::string& fault) {
    Refusal refusal;
    refusal.message = "font \"" + file.asked.substr(0, 100) + "\": " + fault;
    refusal.advice = {"Name another font."};
    return refusal;
}

// A stretch of text in one direction and one script.
struct Run {
    int start = 0;
    int length = 0;
    bool right_to_left = false;
    hb_script_t script = HB_SCRIPT_COMMON;
};

// Punctuation and marks belong to the script that they follow, and at the start to the one that they precede.
void append_scripts(const icu::UnicodeString& text, Run run, std::vector<Run>& runs) {
    hb_unicode_funcs_t* const unicode = hb_unicode_funcs_get_default();
    std::vector<Run> pieces;
    const int end = run.start + run.length;
    for (int i = run.start; i < end; i = text.moveIndex32(i, 1)) {
        const hb_script_t script = hb_unicode_script(unicode, static_cast<hb_codepoint_t>(text.char32At(i)));
        const bool strong =
            script != HB_SCRIPT_COMMON && script != HB_SCRIPT_INHERITED && script != HB_SCRIPT_UNKNOWN;
        const int next = std::min(text.moveIndex32(i, 1), end);
        if (pieces.empty())
            pieces.push_back({i, 0, run.right_to_left, strong ? script : HB_SCRIPT_COMMON});
        else if (strong && pieces.back().script == HB_SCRIPT_COMMON)
            pieces.back().script = script;
        else if (strong && pieces.back().script != script)
            pieces.push_back({i, 0, run.right_to_left, script});
        pieces.back().length = next - pieces.back().start;
    }
    if (run.right_to_left) std::reverse(pieces.begin(), pieces.end());
    runs.insert(runs.end(), pieces.begin(), pieces.end());
}

// The runs of a line from left to right, by the Unicode bidirectional algorithm; empty where ICU fails.
std::vector<Run> runs_of(const icu::UnicodeString& text) {
    UErrorCode error = U_ZERO_ERROR;
    const Held<UBiDi> order(ubidi_open());
    if (!order) return {};
    ubidi_setPara(order.get(), text.getBuffer(), text.length(), UBIDI_DEFAULT_LTR, nullptr, &error);
    const int count = ubidi_countRuns(order.get(), &error);
    if (U_FAILURE(error)) return {};
    std::vector<Run> runs;
    for (int i = 0; i < count; ++i) {
        Run run;
        run.right_to_left = ubidi_getVisualRun(order.get(), i, &run.start, &run.length) == UBIDI_RTL;
        append_scripts(text, run, runs);
    }
    return runs;
}

}  // namespace

struct Font::State {
    FontFile file;
    std::string bytes;
    Held<std::remove_pointer_t<FT_Library>> library;
    Held<std::remove_pointer_t<FT_Face>> face;
    Held<hb_font_t> font;
    std::string name;
    double cap_height = 0;
    std::unordered_map<hb_codepoint_t, Path> outlines;

    Outcome<const Path*> outline(hb_codepoint_t glyph);
    Outcome<bool> append_run(const icu::UnicodeString& text, const Run& run, Point& pen, SetLine& line);
    void measure_cap_height();
};

Outcome<const Path*> Font::State::outline(hb_codepoint_t glyph) {
    if (const auto known = outlines.find(glyph); known != outlines.end()) return &known->second;
    const std::string which = "glyph " + std::to_string(glyph);
    if (FT_Load_Glyph(face.get(), glyph, FT_LOAD_NO_SCALE) != 0)
        return broken(file, which + " cannot be read");
    const FT_GlyphSlot slot = face->glyph;
    if (slot->format != FT_GLYPH_FORMAT_OUTLINE) return broken(file, which + " is a picture and no outline");
    if (slot->outline.n_points > most_glyph_points)
        return broken(file, which + " has more points than any letter needs");
    FT_Outline_Funcs funcs{};
    funcs.move_to = Pen::move;
    funcs.line_to = Pen::line;
    funcs.conic_to = Pen::conic;
    funcs.cubic_to = Pen::cubic;
    Pen pen;
    if (FT_Outline_Decompose(&slot->outline, &funcs, &pen) != 0)
        return broken(file, which + " has a broken outline");
    try {
        return &outlines.emplace(glyph, tidied(pen.path)).first->second;
    } catch (const std::logic_error& fault) {
        return broken(file, which + ": " + fault.what());
    }
}

// Shapes one run, and appends its letters from the pen on, which it moves.
Outcome<bool> Font::State::append_run(const icu::UnicodeString& text, const Run& run, Point& pen,
                                      SetLine& line) {
    const Held<hb_buffer_t> buffer(hb_buffer_create());
    hb_buffer_add_utf16(buffer.get(), reinterpret_cast<const std::uint16_t*>(text.getBuffer()), text.length(),
                        static_cast<unsigned>(run.start), run.length);
    hb_buffer_set_direction(buffer.get(), run.right_to_left ? HB_DIRECTION_RTL : HB_DIRECTION_LTR);
    hb_buffer_set_script(buffer.get(), run.script);
    hb_buffer_set_language(buffer.get(), hb_language_from_string("und", -1));
    hb_shape(font.get(), buffer.get(), nullptr, 0);
    if (!hb_buffer_allocation_successful(buffer.get()))
        return broken(file, "the text cannot be shaped with it");

    unsigned count = 0;
    const hb_glyph_info_t* const infos = hb_buffer_get_glyph_infos(buffer.get(), &count);
    const hb_glyph_position_t* const positions = hb_buffer_get_glyph_positions(buffer.get(), nullptr);
    if (count > most_line_glyphs)
        return broken(file, "it turns a line into more glyphs than a line can hold");

    const auto cluster_text = [&](unsigned cluster) {
        unsigned end = static_cast<unsigned>(run.start + run.length);
        for (unsigned i = 0; i < count; ++i)
            if (infos[i].cluster > cluster) end = std::min(end, infos[i].cluster);
        std::string utf8;
        text.tempSubStringBetween(static_cast<int>(cluster), static_cast<int>(end)).toUTF8String(utf8);
        return utf8;
    };
    bool open_letter = false;
    for (unsigned i = 0; i < count; ++i) {
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
                return broken(file, "letter " + line.letters.back().text + ": " + fault.what());
            }
        }
        pen.x += positions[i].x_advance;
        pen.y -= positions[i].y_advance;
    }
    return true;
}

void Font::State::measure_cap_height() {
    hb_codepoint_t glyph = 0;
    if (hb_font_get_nominal_glyph(font.get(), 'H', &glyph))
        if (const auto drawn = outline(glyph); drawn && !(*drawn)->empty()) {
            cap_height = bounds(**drawn).height();
            return;
        }
    hb_position_t stated = 0;
    if (hb_ot_metrics_get_position(font.get(), HB_OT_METRICS_TAG_CAP_HEIGHT, &stated) && stated > 0)
        cap_height = stated;
}

Outcome<Font> Font::open(FontFile file) {
    auto bytes = read_file(file.path, most_font_bytes);
    if (!bytes) return broken(file, bytes.refusal().message);
    auto state = std::make_unique<State>();
    state->file = std::move(file);
    state->bytes = *std::move(bytes);

    FT_Library library = nullptr;
    if (FT_Init_FreeType(&library) != 0) return broken(state->file, "FreeType cannot be started");
    state->library.reset(library);
    FT_Face face = nullptr;
    if (FT_New_Memory_Face(library, reinterpret_cast<const FT_Byte*>(state->bytes.data()),
                           static_cast<FT_Long>(state->bytes.size()), state->file.index, &face) != 0)
        return broken(state->file, "this is no font file, or a broken one");
    state->face.reset(face);
    if (!FT_IS_SCALABLE(face)) return broken(state->file, "it holds pictures of letters and no outlines");
    if (!FT_IS_SFNT(face)) return broken(state->file, "it is no OpenType or TrueType font");

    const Held<hb_blob_t> blob(hb_blob_create(state->bytes.data(), static_cast<unsigned>(state->bytes.size()),
                                              HB_MEMORY_MODE_READONLY, nullptr, nullptr));
    const unsigned index = static_cast<unsigned>(state->file.index);
    const Held<hb_face_t> shaping(hb_face_create(blob.get(), index & 0xFFFF));
    if (hb_face_get_glyph_count(shaping.get()) == 0) return broken(state->file, "it holds no glyphs");
    state->font.reset(hb_font_create(shaping.get()));
    hb_ot_font_set_funcs(state->font.get());
    const int units = static_cast<int>(hb_face_get_upem(shaping.get()));
    hb_font_set_scale(state->font.get(), units, units);
    if (const unsigned instance = index >> 16; instance > 0)
        hb_font_set_var_named_instance(state->font.get(), instance - 1);

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
    for (const Run& run : runs_of(text)) {
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
