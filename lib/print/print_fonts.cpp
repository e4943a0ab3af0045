#include "print/print_fonts.hpp"

#include <cairo-ft.h>
#include <fontconfig/fontconfig.h>
#include <hb-ot.h>
#include <hb.h>
#include <unicode/ubidi.h>
#include <unicode/uchar.h>
#include <unicode/unistr.h>

#include <algorithm>
#include <new>
#include <set>
#include <utility>

#include <letterlode/files.hpp>

#include "art/font.hpp"

namespace lode {

namespace {

constexpr std::size_t most_font_bytes = 128u << 20;
constexpr std::size_t most_faces = 12;  // the family's own and those that lend it letters

struct Destroy {
    void operator()(FcPattern* pattern) const { FcPatternDestroy(pattern); }
    void operator()(cairo_font_face_t* face) const { cairo_font_face_destroy(face); }
    void operator()(hb_blob_t* blob) const { hb_blob_destroy(blob); }
    void operator()(hb_face_t* face) const { hb_face_destroy(face); }
    void operator()(hb_font_t* font) const { hb_font_destroy(font); }
    void operator()(hb_buffer_t* buffer) const { hb_buffer_destroy(buffer); }
    void operator()(UBiDi* order) const { ubidi_close(order); }
};
template <class T>
using Held = std::unique_ptr<T, Destroy>;

// One font file twice: as HarfBuzz shapes with it, and as Cairo, which opens the file by itself and shares it
// between documents, writes it into a page.
struct Face {
    std::string bytes;  // HarfBuzz looks into them
    Held<hb_font_t> shaping;
    Held<cairo_font_face_t> drawing;
    double units = 1000;  // an em

    [[nodiscard]] bool has(UChar32 character) const {
        hb_codepoint_t glyph = 0;
        return hb_font_get_nominal_glyph(shaping.get(), static_cast<hb_codepoint_t>(character), &glyph) != 0;
    }
};

Outcome<std::unique_ptr<Face>> open_face(const std::string& asked) {
    const auto found = find_font(asked);
    if (!found) return found.refusal();
    const auto broken = [&](const std::string& fault) {
        Refusal refusal;
        refusal.message = "font \"" + asked.substr(0, 100) + "\": " + fault;
        return refusal;
    };
    auto bytes = read_file(found->path, most_font_bytes);
    if (!bytes) return broken(bytes.refusal().message);
    auto face = std::make_unique<Face>();
    face->bytes = *std::move(bytes);

    const Held<hb_blob_t> blob(hb_blob_create(face->bytes.data(), static_cast<unsigned>(face->bytes.size()),
                                              HB_MEMORY_MODE_READONLY, nullptr, nullptr));
    const unsigned index = static_cast<unsigned>(found->index);
    const Held<hb_face_t> shaping(hb_face_create(blob.get(), index & 0xFFFF));
    if (hb_face_get_glyph_count(shaping.get()) == 0) return broken("it holds no glyphs");
    face->shaping.reset(hb_font_create(shaping.get()));
    hb_ot_font_set_funcs(face->shaping.get());
    const unsigned units = hb_face_get_upem(shaping.get());
    hb_font_set_scale(face->shaping.get(), static_cast<int>(units), static_cast<int>(units));
    if (const unsigned instance = index >> 16; instance > 0)
        hb_font_set_var_named_instance(face->shaping.get(), instance - 1);
    face->units = units;

    const Held<FcPattern> pattern(FcPatternCreate());
    if (!pattern ||
        !FcPatternAddString(pattern.get(), FC_FILE, reinterpret_cast<const FcChar8*>(found->path.c_str())) ||
        !FcPatternAddInteger(pattern.get(), FC_INDEX, found->index))
        throw std::bad_alloc();
    face->drawing.reset(cairo_ft_font_face_create_for_pattern(pattern.get()));
    if (cairo_font_face_status(face->drawing.get()) != CAIRO_STATUS_SUCCESS)
        return broken("Cairo cannot open it");
    return face;
}

// A stretch of text in one direction, one script and one face.
struct Run {
    int start = 0;
    int length = 0;
    hb_script_t script = HB_SCRIPT_COMMON;
    const Face* face = nullptr;
};

icu::UnicodeString printable(std::string_view utf8) {
    const auto size = static_cast<std::int32_t>(std::min(utf8.size(), PrintFonts::most_line_bytes));
    auto text = icu::UnicodeString::fromUTF8(icu::StringPiece(utf8.data(), size));
    for (std::int32_t i = 0; i < text.length(); ++i)
        if (u_iscntrl(text.charAt(i)) && !u_hasBinaryProperty(text.charAt(i), UCHAR_BIDI_CONTROL))
            text.setCharAt(i, u' ');
    return text;
}

// Appends the glyphs of a shaped buffer, and advances the line.
void append_glyphs(hb_buffer_t* buffer, ShapedRun& run, double units, ShapedLine& line) {
    unsigned count = 0;
    const hb_glyph_info_t* const infos = hb_buffer_get_glyph_infos(buffer, &count);
    const hb_glyph_position_t* const positions = hb_buffer_get_glyph_positions(buffer, &count);
    for (unsigned i = 0; i < count; ++i) {
        run.glyphs.push_back(
            {infos[i].codepoint, line.width + positions[i].x_offset / units, -positions[i].y_offset / units});
        line.width += positions[i].x_advance / units;
    }
    // Clusters follow the text; of right-to-left text Cairo counts their glyphs from the end.
    const auto cluster = [&](unsigned i) { return infos[run.right_to_left ? count - 1 - i : i].cluster; };
    for (unsigned i = 0; i < count;) {
        unsigned end = i + 1;
        while (end < count && cluster(end) == cluster(i)) ++end;
        const std::size_t next = end < count ? cluster(end) : run.utf8.size();
        run.clusters.push_back({static_cast<int>(next - cluster(i)), static_cast<int>(end - i)});
        i = end;
    }
}

}  // namespace

struct PrintFonts::State {
    std::unique_ptr<Face> regular;
    std::unique_ptr<Face> bold;
    std::vector<std::unique_ptr<Face>> others;
    std::set<UChar32> nowhere;

    const Face& face_for(UChar32 character, const Face& own);
    void append_runs(const icu::UnicodeString& text, int start, int length, const Face& own,
                     std::vector<Run>& runs);
    void append_run(const icu::UnicodeString& text, const Run& run, bool right_to_left,
                    ShapedLine& line) const;
};

const Face& PrintFonts::State::face_for(UChar32 character, const Face& own) {
    if (own.has(character) || nowhere.contains(character)) return own;
    for (const auto& other : others)
        if (other->has(character)) return *other;
    std::string utf8;
    icu::UnicodeString(character).toUTF8String(utf8);
    if (others.size() < most_faces)
        for (const std::string& family : families_with(utf8))
            if (auto face = open_face(family); face && (*face)->has(character)) {
                others.push_back(*std::move(face));
                return *others.back();
            }
    nowhere.insert(character);
    return own;
}

// Marks and punctuation stay with what they follow, as far as its face has them.
void PrintFonts::State::append_runs(const icu::UnicodeString& text, int start, int length, const Face& own,
                                    std::vector<Run>& runs) {
    hb_unicode_funcs_t* const unicode = hb_unicode_funcs_get_default();
    const std::size_t first = runs.size();
    const int end = start + length;
    for (int i = start; i < end;) {
        const UChar32 character = text.char32At(i);
        const int next = std::min(text.moveIndex32(i, 1), end);
        const hb_script_t script = hb_unicode_script(unicode, static_cast<hb_codepoint_t>(character));
        const bool strong =
            script != HB_SCRIPT_COMMON && script != HB_SCRIPT_INHERITED && script != HB_SCRIPT_UNKNOWN;
        Run* const last = runs.size() > first ? &runs.back() : nullptr;
        const bool ignorable = u_hasBinaryProperty(character, UCHAR_DEFAULT_IGNORABLE_CODE_POINT);
        const Face* const face = last && !strong && (ignorable || last->face->has(character))
                                     ? last->face
                                     : &face_for(character, own);
        const bool same_script =
            last && (!strong || last->script == script || last->script == HB_SCRIPT_COMMON);
        if (!last || !same_script || last->face != face) {
            runs.push_back({i, 0, HB_SCRIPT_COMMON, face});
        }
        if (strong) runs.back().script = script;
        runs.back().length += next - i;
        i = next;
    }
}

void PrintFonts::State::append_run(const icu::UnicodeString& text, const Run& run, bool right_to_left,
                                   ShapedLine& line) const {
    ShapedRun shaped;
    shaped.face = run.face->drawing.get();
    shaped.right_to_left = right_to_left;
    text.tempSubString(run.start, run.length).toUTF8String(shaped.utf8);
    const Held<hb_buffer_t> buffer(hb_buffer_create());
    hb_buffer_add_utf8(buffer.get(), shaped.utf8.data(), static_cast<int>(shaped.utf8.size()), 0, -1);
    hb_buffer_set_direction(buffer.get(), right_to_left ? HB_DIRECTION_RTL : HB_DIRECTION_LTR);
    hb_buffer_set_script(buffer.get(), run.script);
    hb_buffer_set_language(buffer.get(), hb_language_from_string("und", -1));
    hb_shape(run.face->shaping.get(), buffer.get(), nullptr, 0);
    if (!hb_buffer_allocation_successful(buffer.get())) throw std::bad_alloc();
    append_glyphs(buffer.get(), shaped, run.face->units, line);
    if (!shaped.glyphs.empty()) line.runs.push_back(std::move(shaped));
}

Outcome<PrintFonts> PrintFonts::open(const std::string& family) {
    auto regular = open_face(family);
    if (!regular) return regular.refusal();
    auto bold = open_face(family + ":bold");
    if (!bold) return bold.refusal();
    auto state = std::make_unique<State>();
    state->regular = *std::move(regular);
    state->bold = *std::move(bold);
    return PrintFonts(std::move(state));
}

ShapedLine PrintFonts::shape(std::string_view utf8, bool bold) const {
    const icu::UnicodeString text = printable(utf8);
    ShapedLine line;
    if (text.isEmpty()) return line;
    UErrorCode error = U_ZERO_ERROR;
    const Held<UBiDi> order(ubidi_open());
    if (!order) throw std::bad_alloc();
    ubidi_setPara(order.get(), text.getBuffer(), text.length(), UBIDI_DEFAULT_LTR, nullptr, &error);
    const int count = ubidi_countRuns(order.get(), &error);
    if (U_FAILURE(error)) throw std::bad_alloc();
    for (int i = 0; i < count; ++i) {
        int start = 0;
        int length = 0;
        const bool right_to_left = ubidi_getVisualRun(order.get(), i, &start, &length) == UBIDI_RTL;
        std::vector<Run> runs;
        state_->append_runs(text, start, length, bold ? *state_->bold : *state_->regular, runs);
        if (right_to_left) std::reverse(runs.begin(), runs.end());
        for (const Run& run : runs) state_->append_run(text, run, right_to_left, line);
    }
    return line;
}

PrintFonts::PrintFonts(std::unique_ptr<State> state) : state_(std::move(state)) {}
PrintFonts::PrintFonts(PrintFonts&&) noexcept = default;
PrintFonts& PrintFonts::operator=(PrintFonts&&) noexcept = default;
PrintFonts::~PrintFonts() = default;

}  // namespace lode
