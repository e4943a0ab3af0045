#include "art/shaping.hpp"

#include <hb-ot.h>
#include <unicode/ubidi.h>
#include <unicode/uchar.h>

#include <algorithm>
#include <new>
#include <utility>

#include <letterlode/files.hpp>

namespace lode {

namespace {

// Far above any font that was drawn by hand, far below what would hurt.
constexpr std::size_t most_font_bytes = 128u << 20;

// Appends the runs of a stretch that has one direction, from left to right.
void append_runs(const icu::UnicodeString& text, const TextRun& stretch, const FontChoice& choose,
                 std::vector<TextRun>& runs) {
    hb_unicode_funcs_t* const unicode = hb_unicode_funcs_get_default();
    std::vector<TextRun> pieces;
    const int end = stretch.start + stretch.length;
    for (int i = stretch.start; i < end;) {
        const UChar32 character = text.char32At(i);
        const int next = std::min(text.moveIndex32(i, 1), end);
        const hb_script_t script = hb_unicode_script(unicode, static_cast<hb_codepoint_t>(character));
        const bool strong =
            script != HB_SCRIPT_COMMON && script != HB_SCRIPT_INHERITED && script != HB_SCRIPT_UNKNOWN;
        const TextRun* const last = pieces.empty() ? nullptr : &pieces.back();
        const bool ignorable = u_hasBinaryProperty(character, UCHAR_DEFAULT_IGNORABLE_CODE_POINT);
        const bool stays = last && !strong && (ignorable || last->font->has(character));
        const ShapingFont* const font = stays ? last->font : &choose(character);
        const bool same_script =
            last && (!strong || last->script == script || last->script == HB_SCRIPT_COMMON);
        if (!same_script || last->font != font)
            pieces.push_back({i, 0, stretch.right_to_left, HB_SCRIPT_COMMON, font});
        if (strong) pieces.back().script = script;
        pieces.back().length = next - pieces.back().start;
        i = next;
    }
    if (stretch.right_to_left) std::reverse(pieces.begin(), pieces.end());
    runs.insert(runs.end(), pieces.begin(), pieces.end());
}

}  // namespace

Refusal font_refusal(const FontFile& file, const std::string& fault) {
    Refusal refusal;
    refusal.message = "font \"" + file.asked.substr(0, 100) + "\": " + fault;
    refusal.advice = {"Name another font."};
    return refusal;
}

Outcome<std::unique_ptr<ShapingFont>> ShapingFont::open(const FontFile& file) {
    auto bytes = read_file(file.path, most_font_bytes);
    if (!bytes) return font_refusal(file, bytes.refusal().message);
    std::unique_ptr<ShapingFont> opened(new ShapingFont);
    opened->bytes_ = *std::move(bytes);
    const HeldShaping<hb_blob_t> blob(hb_blob_create(opened->bytes_.data(),
                                                     static_cast<unsigned>(opened->bytes_.size()),
                                                     HB_MEMORY_MODE_READONLY, nullptr, nullptr));
    const unsigned index = static_cast<unsigned>(file.index);
    const HeldShaping<hb_face_t> face(hb_face_create(blob.get(), index & 0xFFFF));
    opened->font_.reset(hb_font_create(face.get()));
    // Where memory runs out HarfBuzz hands out what is empty.
    if ((!opened->bytes_.empty() && blob.get() == hb_blob_get_empty()) || face.get() == hb_face_get_empty() ||
        opened->font_.get() == hb_font_get_empty())
        throw std::bad_alloc();
    hb_ot_font_set_funcs(opened->font_.get());
    hb_font_set_scale(opened->font_.get(), opened->units_an_em(), opened->units_an_em());
    if (const unsigned instance = index >> 16; instance > 0)
        hb_font_set_var_named_instance(opened->font_.get(), instance - 1);
    return opened;
}

bool ShapingFont::empty() const {
    return hb_face_get_glyph_count(hb_font_get_face(font_.get())) == 0;
}

int ShapingFont::units_an_em() const {
    return static_cast<int>(hb_face_get_upem(hb_font_get_face(font_.get())));
}

bool ShapingFont::has(UChar32 character) const {
    hb_codepoint_t glyph = 0;
    return hb_font_get_nominal_glyph(font_.get(), static_cast<hb_codepoint_t>(character), &glyph) != 0;
}

std::vector<TextRun> runs_of(const icu::UnicodeString& text, const FontChoice& choose) {
    struct Close {
        void operator()(UBiDi* order) const { ubidi_close(order); }
    };
    const std::unique_ptr<UBiDi, Close> order(ubidi_open());
    if (!order) throw std::bad_alloc();
    UErrorCode error = U_ZERO_ERROR;
    ubidi_setPara(order.get(), text.getBuffer(), text.length(), UBIDI_DEFAULT_LTR, nullptr, &error);
    const int count = ubidi_countRuns(order.get(), &error);
    if (U_FAILURE(error)) throw std::bad_alloc();  // ICU states no other fault for a text that is there
    std::vector<TextRun> runs;
    for (int i = 0; i < count; ++i) {
        TextRun stretch;
        stretch.right_to_left =
            ubidi_getVisualRun(order.get(), i, &stretch.start, &stretch.length) == UBIDI_RTL;
        append_runs(text, stretch, choose, runs);
    }
    return runs;
}

RunGlyphs shaped(const icu::UnicodeString& text, const TextRun& run) {
    HeldShaping<hb_buffer_t> buffer(hb_buffer_create());
    hb_buffer_add_utf16(buffer.get(), reinterpret_cast<const std::uint16_t*>(text.getBuffer()), text.length(),
                        static_cast<unsigned>(run.start), run.length);
    hb_buffer_set_direction(buffer.get(), run.right_to_left ? HB_DIRECTION_RTL : HB_DIRECTION_LTR);
    hb_buffer_set_script(buffer.get(), run.script);
    hb_buffer_set_language(buffer.get(), hb_language_from_string("und", -1));
    hb_shape(run.font->font(), buffer.get(), nullptr, 0);
    if (!hb_buffer_allocation_successful(buffer.get())) return {};
    unsigned count = 0;
    const hb_glyph_info_t* const glyphs = hb_buffer_get_glyph_infos(buffer.get(), &count);
    const hb_glyph_position_t* const positions = hb_buffer_get_glyph_positions(buffer.get(), nullptr);
    return {std::move(buffer), {glyphs, count}, {positions, count}};
}

}  // namespace lode
