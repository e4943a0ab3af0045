#include <algorithm>

#include "c/art/handles.hpp"
#include "c/art/values.hpp"
#include "cut/plan.hpp"

using namespace lode::c;

namespace {

// Options on a bed that bounds nothing: what is wrong with one that is set in them is its own fault.
lode::PlanOptions sound_options() {
    lode::PlanOptions options;
    options.bed.width_mm = options.bed.height_mm = lode::most_bed_mm;
    return options;
}

// Sets a field by plan's own judgement of its value.
template <class Set>
std::int32_t set_judged(const char* function, lode_cut_options* options, const char* option,
                        lode_error** error, const Set& set) {
    return changed(function, options, error, [&](lode_cut_options& its) {
        lode::PlanOptions alone = sound_options();
        set(alone);
        if (auto fault = lode::fault_in(alone)) throw Unusable{std::move(*fault)};
        set(its.plan);
        if (!its.waits) its.waits = option;
    });
}

}  // namespace

std::int32_t lode_cut_options_create(lode_cut_options** options, lode_error** error) {
    return give_new(__func__, options, "options", error);
}

std::int32_t lode_cut_options_copy(lode_cut_options** copy, const lode_cut_options* options,
                                   lode_error** error) {
    return give_copy(__func__, copy, options, error);
}

std::int32_t lode_cut_options_set_bed(lode_cut_options* options, double width_mm, double height_mm,
                                      lode_error** error) {
    return changed(__func__, options, error, [&](lode_cut_options& its) {
        lode::PlanOptions alone;
        alone.bed.width_mm = width_mm;
        alone.bed.height_mm = height_mm;
        if (auto fault = lode::fault_in(alone)) throw Unusable{std::move(*fault)};
        its.plan.bed.width_mm = width_mm;
        its.plan.bed.height_mm = height_mm;
    });
}

std::int32_t lode_cut_options_set_bed_edge(lode_cut_options* options, double mm, lode_error** error) {
    return set_judged(__func__, options, "--bed-edge", error,
                      [&](lode::PlanOptions& its) { its.bed.edge_mm = mm; });
}

std::int32_t lode_cut_options_set_longest_load(lode_cut_options* options, double mm, lode_error** error) {
    return changed(__func__, options, error, [&](lode_cut_options& its) {
        its.plan.bed.longest_mm = within(mm, lode::least_bed_mm, lode::most_bed_mm, "longest-load", "mm");
    });
}

std::int32_t lode_cut_options_add_film(lode_cut_options* options, const char* colour, double width_mm,
                                       double height_mm, std::int32_t sheets, lode_error** error) {
    return changed(__func__, options, error, [&](lode_cut_options& its) {
        const lode::FilmStock film{taken(lode::read_colour(word(colour, "colour"))), width_mm, height_mm,
                                   sheets};
        lode::PlanOptions alone = sound_options();
        alone.films = {film};
        if (auto fault = lode::fault_in(alone)) throw Unusable{std::move(*fault)};
        its.plan.films.push_back(film);
        if (!its.waits) its.waits = "--film";
    });
}

std::int32_t lode_cut_options_set_gap(lode_cut_options* options, double mm, lode_error** error) {
    return set_judged(__func__, options, "--gap", error, [&](lode::PlanOptions& its) { its.gap_mm = mm; });
}

std::int32_t lode_cut_options_set_film_margin(lode_cut_options* options, double mm, lode_error** error) {
    return set_judged(__func__, options, "--film-margin", error,
                      [&](lode::PlanOptions& its) { its.film_margin_mm = mm; });
}

std::int32_t lode_cut_options_set_may_turn(lode_cut_options* options, std::int32_t on, lode_error** error) {
    return changed(__func__, options, error, [&](lode_cut_options& its) { its.plan.may_turn = on != 0; });
}

std::int32_t lode_cut_options_set_effort(lode_cut_options* options, std::uint64_t steps, lode_error** error) {
    return changed(__func__, options, error, [&](lode_cut_options& its) { its.plan.effort = steps; });
}

std::int32_t lode_cut_options_set_speed(lode_cut_options* options, double mm_a_second, lode_error** error) {
    return changed(__func__, options, error, [&](lode_cut_options& its) {
        its.options.speed_mm_s = within(mm_a_second, 0.1, 5'000, "speed", "mm a second");
    });
}

std::int32_t lode_cut_options_set_weeding_lines(lode_cut_options* options, std::int32_t on,
                                                lode_error** error) {
    return changed(__func__, options, error,
                   [&](lode_cut_options& its) { its.options.weeding_lines = on != 0; });
}

std::int32_t lode_cut_options_set_dxf(lode_cut_options* options, std::int32_t on, lode_error** error) {
    return changed(__func__, options, error, [&](lode_cut_options& its) { its.options.dxf = on != 0; });
}

std::int32_t lode_cut_options_set_guide(lode_cut_options* options, std::int32_t on, lode_error** error) {
    return changed(__func__, options, error, [&](lode_cut_options& its) { its.options.guide = on != 0; });
}

std::int32_t lode_cut_options_set_paper(lode_cut_options* options, const char* name, lode_error** error) {
    return changed(__func__, options, error, [&](lode_cut_options& its) {
        its.options.paper = chosen(name, "paper", lode::paper_named);
    });
}

std::int32_t lode_cut_options_set_order(lode_cut_options* options, const char* order, lode_error** error) {
    return changed(__func__, options, error,
                   [&](lode_cut_options& its) { its.options.order = page_text(order, "order"); });
}

std::int32_t lode_cut_options_set_preview(lode_cut_options* options, std::int32_t long_side_px,
                                          lode_error** error) {
    return changed(__func__, options, error, [&](lode_cut_options& its) {
        static_cast<void>(
            within(long_side_px, lode::least_preview_px, lode::most_preview_px, "preview", "pixels"));
        its.options.preview_px = long_side_px;
    });
}

void lode_cut_options_free(lode_cut_options* options) {
    delete options;
}
