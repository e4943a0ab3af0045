#include "c/art/handles.hpp"
#include "c/art/values.hpp"

using namespace lode::c;

namespace {

// Without its measures it would seem to hold.
const lode_artwork& measured(const lode_artwork* artwork) {
    const lode_artwork& its = need(artwork, "artwork");
    if (!its.drawn->is_measured)
        throw BrokenCall("artwork is not measured: draw it by lode_draw_and_measure or lode_draw_to_hold");
    return its;
}

bool has_bed(const lode_cut_options& options) {
    return options.plan.bed.width_mm > 0;
}

std::optional<lode::Refusal> without_bed(const std::string& what) {
    lode::Refusal refusal;
    refusal.message = what + " without the size of the bed.";
    refusal.advice = {"Give a --bed, such as 12x12in."};
    return refusal;
}

// Options of a call as the library takes them, with those of a plan where there is one to be made, or made.
lode::Outcome<lode::CutOptions> cut_options(const lode_artwork& artwork, const lode_plan* plan,
                                            const lode_cut_options* given) {
    if (plan && plan->drawn != artwork.drawn) throw BrokenCall("plan is of another artwork");
    lode::CutOptions options = given ? given->options : lode::CutOptions();
    if (plan) {
        options.plan = plan->options;
        options.planned = &plan->plan;
    } else if (given && has_bed(*given)) {
        options.plan = given->plan;
    } else if (given && given->waits) {
        return *without_bed(std::string(given->waits) + " is of no use");
    }
    return options;
}

}  // namespace

std::int32_t lode_plan_loads(lode_plan** plan, lode_refusal** refusal, const lode_artwork* artwork,
                             const lode_cut_options* options, const lode_control* control,
                             lode_error** error) {
    clear(plan);
    clear(refusal);
    return guarded(__func__, error, [&]() -> std::int32_t {
        auto& made = need(plan, "plan");
        auto& refused = need(refusal, "refusal");
        const lode_artwork& its = need(artwork, "artwork");
        const lode_cut_options& wanted = need(options, "options");
        const auto planned = [&]() -> lode::Outcome<lode::CutPlan> {
            if (!has_bed(wanted)) return *without_bed("No loads are planned");
            return lode::plan_loads(its.drawn->held.artwork, wanted.plan, cut_control_of(control));
        };
        return give_outcome(planned(), refused, [&](lode::CutPlan loads) {
            made = new lode_plan{its.drawn, wanted.plan, std::move(loads), wanted.options.weeding_lines};
        });
    });
}

std::size_t lode_plan_load_count(const lode_plan* plan) {
    return plan ? plan->plan.plan.loads.size() : 0;
}

std::size_t lode_plan_least_loads(const lode_plan* plan) {
    return plan ? plan->plan.plan.least_loads : 0;
}

std::int32_t lode_plan_is_proved(const lode_plan* plan) {
    return plan && plan->plan.plan.proved ? 1 : 0;
}

std::int32_t lode_plan_bands_are_loose(const lode_plan* plan) {
    return plan && plan->plan.bands_are_loose ? 1 : 0;
}

std::int32_t lode_plan_left_out_marks(const lode_plan* plan) {
    return plan && plan->plan.left_out_marks ? 1 : 0;
}

double lode_plan_load_length_mm(const lode_plan* plan, std::size_t load) {
    const auto* its = plan ? at(plan->plan.plan.loads, load) : nullptr;
    return its ? its->length_mm : 0;
}

std::size_t lode_plan_note_count(const lode_plan* plan) {
    return plan ? plan->plan.plan.notes.size() : 0;
}

const char* lode_plan_note(const lode_plan* plan, std::size_t index) {
    return plan ? entry(plan->plan.plan.notes, index) : nullptr;
}

std::int32_t lode_plan_load(lode_bytes** bytes, const lode_plan* plan, std::size_t load, const char* format,
                            lode_error** error) {
    return give_bytes(__func__, bytes, "bytes", error, [&] {
        const lode_plan& its = need(plan, "plan");
        need_at(its.plan.plan.loads, load, "load");
        const auto written = format_named(format);
        return written(
            lode::load_drawing(its.drawn->held.artwork, its.plan, its.options, load, its.weeding_lines));
    });
}

void lode_plan_free(lode_plan* plan) {
    delete plan;
}

std::int32_t lode_cut_files(lode_files** files, lode_refusal** refusal, const lode_artwork* artwork,
                            const lode_plan* plan, const lode_cut_options* options,
                            const lode_control* control, lode_error** error) {
    clear(files);
    clear(refusal);
    return guarded(__func__, error, [&]() -> std::int32_t {
        auto& made = need(files, "files");
        auto& refused = need(refusal, "refusal");
        const lode_artwork& its = measured(artwork);
        const auto written = [&]() -> lode::Outcome<std::vector<lode::NamedFile>> {
            const auto wanted = cut_options(its, plan, options);
            if (!wanted) return wanted.refusal();
            return lode::cut_files(its.drawn->puzzle, its.drawn->held, *wanted, cut_control_of(control));
        };
        return give_outcome(written(), refused,
                            [&](std::vector<lode::NamedFile> all) { made = new lode_files{std::move(all)}; });
    });
}

std::int32_t lode_cut_json(lode_bytes** json, const lode_artwork* artwork, const lode_plan* plan,
                           const lode_cut_options* options, lode_error** error) {
    return give_bytes(__func__, json, "json", error, [&] {
        const lode_artwork& its = measured(artwork);
        return lode::to_json(its.drawn->held, taken(cut_options(its, plan, options)));
    });
}
