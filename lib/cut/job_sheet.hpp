#pragma once
// The maker's working paper: what to cut from what, in which load, in which order to apply it, where each
// word stands, what is too thin, and what to take care of. One or two pages; more only where the loads do not
// fit.

#include <optional>
#include <string>
#include <vector>

#include <letterlode/art.hpp>
#include <letterlode/cut.hpp>
#include <letterlode/paper.hpp>
#include <letterlode/plan.hpp>
#include <letterlode/puzzle.hpp>

namespace lode {

// What is referred to must live as long as the call.
struct JobSheet {
    const Puzzle& puzzle;
    const Artwork& artwork;
    const Measures& measures;
    const CutPlan* plan = nullptr;              // none: no loads
    const PlanOptions* plan_options = nullptr;  // given with the plan
    std::vector<std::string> changed;           // so that the film holds, a sentence each
    std::vector<std::string> ways_out;          // of what it does not hold, a sentence each
    Paper paper = Paper::a4;
    std::optional<double> speed_mm_s;  // of the cutter; none: lengths without times
    std::string order = {};            // what the piece is called in a shop; empty: nothing
};

// A PDF with text that can be searched. The same sheet gives the same bytes. Pictures shrink, and then type,
// until two pages hold all. Throws std::invalid_argument for a plan without its options, std::runtime_error
// where no font for text is installed.
[[nodiscard]] std::string job_sheet_pdf(const JobSheet& sheet);

}  // namespace lode
