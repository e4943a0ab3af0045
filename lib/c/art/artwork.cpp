#include "c/art/handles.hpp"
#include "c/art/values.hpp"

using namespace lode::c;

namespace {

// Said of what has no default, before anything is drawn.
std::optional<lode::Refusal> missing_in(const lode::ArtworkOptions& options) {
    lode::Refusal refusal;
    if (options.blank.outline.empty()) {
        refusal.message = "The size of the blank is not given.";
        refusal.advice = {"Give a --blank, such as 8x10in."};
        return refusal;
    }
    if (!options.surface) {
        refusal.message = "The surface is not given, and the wrong one ruins film.";
        refusal.advice = {
            "Give --surface first for artwork on the front, or second for the back of a clear blank, which "
            "is cut mirrored."};
        return refusal;
    }
    return std::nullopt;
}

// With all that is said of it, once and for all.
std::shared_ptr<const Drawn> drawn(const lode::Puzzle& puzzle, lode::HeldArtwork held, bool is_measured) {
    auto drawn = std::make_shared<Drawn>(Drawn{puzzle, std::move(held), is_measured, {}, {}, {}});
    for (const lode::Layer& layer : drawn->held.artwork.layers)
        drawn->colours.push_back(lode::to_text(layer.colour));
    for (const lode::ThinFinding& finding : drawn->held.measures.thin)
        drawn->findings.push_back(lode::finding_text(finding));
    if (!drawn->findings.empty()) drawn->ways_out = lode::ways_out(drawn->held);
    return drawn;
}

using Draw = lode::Outcome<lode::HeldArtwork> (*)(const lode::Puzzle&, const lode::ArtworkOptions&,
                                                  const lode::CutControl&);

std::int32_t give_measured(const char* function, Draw draw, lode_artwork** artwork, lode_refusal** refusal,
                           const lode_puzzle* puzzle, const lode_artwork_options* options,
                           const lode_control* control, lode_error** error) {
    clear(artwork);
    clear(refusal);
    return guarded(function, error, [&]() -> std::int32_t {
        auto& made = need(artwork, "artwork");
        auto& refused = need(refusal, "refusal");
        const lode::Puzzle& given = puzzle_in(need(puzzle, "puzzle"));
        const auto& wanted = need(options, "options").options;
        const auto held = [&]() -> lode::Outcome<lode::HeldArtwork> {
            if (auto missing = missing_in(wanted)) return std::move(*missing);
            return draw(given, wanted, cut_control_of(control));
        };
        return give_outcome(held(), refused, [&](lode::HeldArtwork its) {
            made = new lode_artwork{drawn(given, std::move(its), true)};
        });
    });
}

const lode::Artwork* artwork_of(const lode_artwork* artwork) {
    return artwork ? &artwork->drawn->held.artwork : nullptr;
}

double measure_of(const lode_artwork* artwork, double lode::Artwork::*field) {
    const auto* its = artwork_of(artwork);
    return its ? its->*field : 0;
}

const lode::Layer* layer_of(const lode_artwork* artwork, std::size_t layer) {
    const auto* its = artwork_of(artwork);
    return its ? at(its->layers, layer) : nullptr;
}

const lode::ThinFinding* finding_of(const lode_artwork* artwork, std::size_t index) {
    return artwork ? at(artwork->drawn->held.measures.thin, index) : nullptr;
}

const char* finding_text_of(const lode_artwork* artwork, std::size_t index,
                            std::string lode::ThinFinding::*field) {
    const auto* finding = finding_of(artwork, index);
    return finding ? (finding->*field).c_str() : nullptr;
}

}  // namespace

std::int32_t lode_recipe_on_blank(lode_recipe** result, lode_refusal** refusal, const lode_recipe* recipe,
                                  const lode_artwork_options* options, const lode_control* control,
                                  lode_error** error) {
    clear(result);
    clear(refusal);
    return guarded(__func__, error, [&]() -> std::int32_t {
        auto& made = need(result, "result");
        auto& refused = need(refusal, "refusal");
        const lode::Recipe& given = recipe_in(need(recipe, "recipe"));
        const auto& wanted = need(options, "options").options;
        const auto on_blank = [&]() -> lode::Outcome<lode::Recipe> {
            if (auto missing = missing_in(wanted)) return std::move(*missing);
            return lode::recipe_on_blank(given, wanted, control_of(control));
        };
        return give_outcome(on_blank(), refused,
                            [&](lode::Recipe its) { made = new_handle(std::move(its)); });
    });
}

std::int32_t lode_draw(lode_artwork** artwork, const lode_puzzle* puzzle, const lode_artwork_options* options,
                       lode_error** error) {
    clear(artwork);
    return guarded(__func__, error, [&] {
        auto& result = need(artwork, "artwork");
        const lode::Puzzle& given = puzzle_in(need(puzzle, "puzzle"));
        const auto& wanted = need(options, "options").options;
        if (auto missing = missing_in(wanted)) throw Unusable{std::move(*missing)};
        lode::HeldArtwork held;
        held.artwork = taken(lode::draw(given, wanted));
        held.options = wanted;
        result = new lode_artwork{drawn(given, std::move(held), false)};
        return LODE_OK;
    });
}

std::int32_t lode_draw_and_measure(lode_artwork** artwork, lode_refusal** refusal, const lode_puzzle* puzzle,
                                   const lode_artwork_options* options, const lode_control* control,
                                   lode_error** error) {
    return give_measured(__func__, lode::draw_and_measure, artwork, refusal, puzzle, options, control, error);
}

std::int32_t lode_draw_to_hold(lode_artwork** artwork, lode_refusal** refusal, const lode_puzzle* puzzle,
                               const lode_artwork_options* options, const lode_control* control,
                               lode_error** error) {
    return give_measured(__func__, lode::draw_to_hold, artwork, refusal, puzzle, options, control, error);
}

double lode_artwork_width_mm(const lode_artwork* artwork) {
    const auto* its = artwork_of(artwork);
    return its ? its->blank.width_mm : 0;
}

double lode_artwork_height_mm(const lode_artwork* artwork) {
    const auto* its = artwork_of(artwork);
    return its ? its->blank.height_mm : 0;
}

double lode_artwork_cell_mm(const lode_artwork* artwork) {
    return measure_of(artwork, &lode::Artwork::cell_mm);
}

std::int32_t lode_artwork_grid_corner(double* x_mm, double* y_mm, const lode_artwork* artwork,
                                      lode_error** error) {
    clear(x_mm);
    clear(y_mm);
    return guarded(__func__, error, [&] {
        need(x_mm, "x_mm");
        need(y_mm, "y_mm");
        const lode::Point corner = need(artwork, "artwork").drawn->held.artwork.grid_corner;
        *x_mm = corner.x;
        *y_mm = corner.y;
        return LODE_OK;
    });
}

double lode_artwork_cap_height_mm(const lode_artwork* artwork) {
    return measure_of(artwork, &lode::Artwork::cap_height_mm);
}

double lode_artwork_heading_cap_mm(const lode_artwork* artwork) {
    return measure_of(artwork, &lode::Artwork::heading_cap_mm);
}

double lode_artwork_text_cap_mm(const lode_artwork* artwork) {
    return measure_of(artwork, &lode::Artwork::text_cap_mm);
}

const char* lode_artwork_font(const lode_artwork* artwork) {
    const auto* its = artwork_of(artwork);
    return its ? its->font.c_str() : nullptr;
}

const char* lode_artwork_heading_font(const lode_artwork* artwork) {
    const auto* its = artwork_of(artwork);
    return its ? its->heading_font.c_str() : nullptr;
}

std::size_t lode_artwork_layer_count(const lode_artwork* artwork) {
    const auto* its = artwork_of(artwork);
    return its ? its->layers.size() : 0;
}

const char* lode_artwork_layer_name(const lode_artwork* artwork, std::size_t layer) {
    const auto* its = layer_of(artwork, layer);
    return its ? its->name.c_str() : nullptr;
}

const char* lode_artwork_layer_colour(const lode_artwork* artwork, std::size_t layer) {
    return artwork ? entry(artwork->drawn->colours, layer) : nullptr;
}

std::size_t lode_artwork_layer_pieces(const lode_artwork* artwork, std::size_t layer) {
    const auto* its = layer_of(artwork, layer);
    return its ? its->pieces.size() : 0;
}

std::size_t lode_artwork_note_count(const lode_artwork* artwork) {
    const auto* its = artwork_of(artwork);
    return its ? its->notes.size() : 0;
}

const char* lode_artwork_note(const lode_artwork* artwork, std::size_t index) {
    const auto* its = artwork_of(artwork);
    return its ? entry(its->notes, index) : nullptr;
}

std::size_t lode_artwork_change_count(const lode_artwork* artwork) {
    return artwork ? artwork->drawn->held.changed.size() : 0;
}

const char* lode_artwork_change(const lode_artwork* artwork, std::size_t index) {
    return artwork ? entry(artwork->drawn->held.changed, index) : nullptr;
}

std::int32_t lode_artwork_drawing(lode_bytes** bytes, const lode_artwork* artwork, const char* format,
                                  lode_error** error) {
    return give_bytes(__func__, bytes, "bytes", error, [&] {
        const auto& its = need(artwork, "artwork").drawn->held.artwork;
        const auto written = format_named(format);
        return written(lode::artwork_drawing(its));
    });
}

std::int32_t lode_artwork_layer(lode_bytes** bytes, const lode_artwork* artwork, std::size_t layer,
                                const char* format, lode_error** error) {
    return give_bytes(__func__, bytes, "bytes", error, [&] {
        const auto& its = need(artwork, "artwork").drawn->held.artwork;
        need_at(its.layers, layer, "layer");
        const auto written = format_named(format);
        return written(lode::layer_drawing(its, layer));
    });
}

std::int32_t lode_artwork_preview(lode_bytes** png, const lode_artwork* artwork, std::int32_t long_side_px,
                                  lode_error** error) {
    return give_bytes(__func__, png, "png", error, [&] {
        const auto& its = need(artwork, "artwork").drawn->held.artwork;
        static_cast<void>(
            within(long_side_px, lode::least_preview_px, lode::most_preview_px, "preview", "pixels"));
        return lode::preview_png(its, long_side_px);
    });
}

std::int32_t lode_rate_artwork(lode_rating** rating, const lode_artwork* artwork, double viewing_mm,
                               lode_error** error) {
    clear(rating);
    return guarded(__func__, error, [&] {
        auto& result = need(rating, "rating");
        const auto& drawn = *need(artwork, "artwork").drawn;
        const lode::Puzzle& puzzle = drawn.puzzle;
        const lode::HeldArtwork& held = drawn.held;
        if (viewing_mm != 0)
            static_cast<void>(
                within(viewing_mm, lode::least_viewing_mm, lode::most_viewing_mm, "viewing", "mm"));
        lode::RatingRules rules;
        if (!held.options.font.empty())
            rules.looks = taken(lode::letter_looks(puzzle.grid.alphabet, held.options.font));
        rules.seen = taken(lode::letters_seen(puzzle, held.artwork, held.options, viewing_mm));
        result = new_handle(taken(lode::rate(puzzle, rules)));
        return LODE_OK;
    });
}

void lode_artwork_free(lode_artwork* artwork) {
    delete artwork;
}

std::int32_t lode_artwork_is_measured(const lode_artwork* artwork) {
    return artwork && artwork->drawn->is_measured ? 1 : 0;
}

std::size_t lode_artwork_finding_count(const lode_artwork* artwork) {
    return artwork ? artwork->drawn->findings.size() : 0;
}

const char* lode_artwork_finding(const lode_artwork* artwork, std::size_t index) {
    return artwork ? entry(artwork->drawn->findings, index) : nullptr;
}

const char* lode_artwork_finding_kind(const lode_artwork* artwork, std::size_t index) {
    const auto* finding = finding_of(artwork, index);
    return finding ? lode::name(finding->kind).data() : nullptr;
}

const char* lode_artwork_finding_layer(const lode_artwork* artwork, std::size_t index) {
    return finding_text_of(artwork, index, &lode::ThinFinding::layer);
}

const char* lode_artwork_finding_piece(const lode_artwork* artwork, std::size_t index) {
    return finding_text_of(artwork, index, &lode::ThinFinding::piece);
}

const char* lode_artwork_finding_other(const lode_artwork* artwork, std::size_t index) {
    return finding_text_of(artwork, index, &lode::ThinFinding::other);
}

double lode_artwork_finding_width_mm(const lode_artwork* artwork, std::size_t index) {
    const auto* finding = finding_of(artwork, index);
    return finding ? finding->width_mm : 0;
}

std::size_t lode_artwork_finding_alike(const lode_artwork* artwork, std::size_t index) {
    const auto* finding = finding_of(artwork, index);
    return finding ? finding->alike : 0;
}

std::int32_t lode_artwork_finding_place(double* x_mm, double* y_mm, const lode_artwork* artwork,
                                        std::size_t index, lode_error** error) {
    clear(x_mm);
    clear(y_mm);
    return guarded(__func__, error, [&] {
        need(x_mm, "x_mm");
        need(y_mm, "y_mm");
        const auto& findings = need(artwork, "artwork").drawn->held.measures.thin;
        const lode::Point place = need_at(findings, index, "finding").at;
        *x_mm = place.x;
        *y_mm = place.y;
        return LODE_OK;
    });
}

std::size_t lode_artwork_way_out_count(const lode_artwork* artwork) {
    return artwork ? artwork->drawn->ways_out.size() : 0;
}

const char* lode_artwork_way_out(const lode_artwork* artwork, std::size_t index) {
    return artwork ? entry(artwork->drawn->ways_out, index) : nullptr;
}
