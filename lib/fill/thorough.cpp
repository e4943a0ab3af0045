// Cell by cell in reading order, a letter drawn by its weight. A letter that completes a copy, or breaks a
// rule with those before it, is put aside; where all are, the search jumps back to the latest filler cell
// that had a part in any of that, and takes its reasons along (Prosser, "Hybrid algorithms for the constraint
// satisfaction problem", Computational Intelligence 9(3), 1993: conflict-directed backjumping). Words' own
// letters have no part in it: they stay. A run that is unlucky in its first rows may never come out of them:
// it starts anew after a while. With its reasons a cell keeps the words and rules behind them: where no cell
// is left to jump back to, they are all that the proof needs. Judged by tests/fill_test.cpp.

#include "fill/thorough.hpp"

#include <algorithm>
#include <map>
#include <numeric>

#include "random/luby.hpp"

namespace lode {
namespace {

template <class Values>
void sort_out(Values& values) {
    std::sort(values.begin(), values.end());
    values.erase(std::unique(values.begin(), values.end()), values.end());
}

// Runs are so many letters a cell long, times Luby's lengths.
constexpr std::uint64_t run_per_cell = 64;
constexpr std::uint32_t not_filler = UINT32_MAX;

class Filler {
  public:
    Filler(const Grid& placed, const FillTask& task, const LetterDraw& draw, Random& random);
    FillResult run();

  private:
    void start_run();
    bool try_letters(std::uint32_t at);
    bool clashes(std::uint32_t at);
    bool jump_back(std::uint32_t& at);
    // A cell at which a letter failed: what is left to try, and the earlier cells to blame.
    struct Trouble {
        bool listed = false;
        Letters untried;
        std::vector<std::uint32_t> blamed;
        std::vector<FillCause> causes;
    };
    void list_untried(std::uint32_t at, Trouble& trouble);
    void blame(std::uint32_t at, FillCause cause, const Placement& line, int length);

    const FillTask& task_;
    const LetterDraw& draw_;
    Random& random_;
    Grid grid_;
    std::vector<Cell> cells_;           // the filler cells in reading order
    std::vector<std::uint32_t> order_;  // of every cell of the grid: its place in cells_, or not_filler
    std::map<std::uint32_t, Trouble> trouble_;  // hardly any cell has some
    std::uint64_t effort_ = 0;
    std::uint64_t run_number_ = 0;
    std::uint64_t run_stop_ = 0;  // the effort at which a run ends
};

Filler::Filler(const Grid& placed, const FillTask& task, const LetterDraw& draw, Random& random)
    : task_(task), draw_(draw), random_(random), grid_(placed), order_(placed.size().cells(), not_filler) {
    for (int row = 0; row < grid_.size().rows; ++row)
        for (int column = 0; column < grid_.size().columns; ++column)
            if (grid_[{row, column}] == empty_cell) {
                order_[grid_.index({row, column})] = static_cast<std::uint32_t>(cells_.size());
                cells_.push_back({row, column});
            }
}

// The letters other than the one that just failed, drawn without putting back; the last is tried first.
void Filler::list_untried(std::uint32_t at, Trouble& trouble) {
    Letters& letters = trouble.untried;
    auto weights = task_.weights;
    weights[grid_[cells_[at]]] = 0;
    auto left = std::accumulate(weights.begin(), weights.end(), 0u);
    while (left > 0) {
        std::uint32_t mark = random_.below(left);
        std::size_t letter = 0;
        while (mark >= weights[letter]) mark -= weights[letter++];
        letters.push_back(static_cast<Letter>(letter));
        left -= weights[letter];
        weights[letter] = 0;
    }
    std::reverse(letters.begin(), letters.end());
    trouble.listed = true;
}

// The earlier filler cells of the line.
void Filler::blame(std::uint32_t at, FillCause cause, const Placement& line, int length) {
    Trouble& trouble = trouble_[at];
    trouble.causes.push_back(cause);
    for (int index = 0; index < length; ++index) {
        const std::uint32_t other = order_[grid_.index(moved(line.first, line.direction, index))];
        if (other < at) trouble.blamed.push_back(other);
    }
}

// Whether the letter at a filler cell breaks a rule or completes a copy; if so, that is blamed.
bool Filler::clashes(std::uint32_t at) {
    using Kind = FillCause::Kind;
    if (const auto broken = broken_rule(grid_, task_.rules, cells_[at])) {
        const bool run = broken->rule == RuleBreak::Rule::longest_run;
        blame(at, {run ? Kind::longest_run : Kind::look_alikes}, {broken->first, broken->direction},
              broken->length);
        return true;
    }
    const auto check = [&](const CopyGuard& guard, Kind kind) {
        return !guard.through(grid_, cells_[at], [&](std::size_t word, const Placement& copy) {
            blame(at, {kind, static_cast<std::uint32_t>(word)}, copy, guard.length(word));
            return false;
        });
    };
    return check(task_.words_guard, Kind::listed_word) || check(task_.avoided_guard, Kind::avoided_word);
}

// Gives the cell the next letter that clashes with nothing; false where none is left.
bool Filler::try_letters(std::uint32_t at) {
    Letter& letter = grid_[cells_[at]];
    if (letter == empty_cell) {
        letter = first_letter(task_, draw_, cells_[at], random_);
        ++effort_;
        if (!clashes(at)) return true;
    }
    Trouble& trouble = trouble_[at];
    if (!trouble.listed) list_untried(at, trouble);
    while (!trouble.untried.empty()) {
        letter = trouble.untried.back();
        trouble.untried.pop_back();
        ++effort_;
        if (!clashes(at)) return true;
    }
    return false;
}

// Goes back to the latest cell to blame, and clears all after it. False where there is none: no letters will
// do.
bool Filler::jump_back(std::uint32_t& at) {
    auto& [listed, untried, reasons, causes] = trouble_[at];
    sort_out(reasons);
    sort_out(causes);
    if (reasons.empty()) return false;
    const std::uint32_t back = reasons.back();
    reasons.pop_back();
    Trouble& earlier = trouble_[back];
    earlier.blamed.insert(earlier.blamed.end(), reasons.begin(), reasons.end());
    earlier.causes.insert(earlier.causes.end(), causes.begin(), causes.end());
    sort_out(earlier.causes);
    for (std::uint32_t clear = back + 1; clear <= at; ++clear) grid_[cells_[clear]] = empty_cell;
    trouble_.erase(trouble_.upper_bound(back), trouble_.upper_bound(at));
    at = back;
    return true;
}

void Filler::start_run() {
    for (const Cell cell : cells_) grid_[cell] = empty_cell;
    trouble_.clear();
    run_stop_ = std::min(task_.effort, effort_ + run_per_cell * cells_.size() * luby(++run_number_));
}

FillResult Filler::run() {
    FillResult result;
    std::uint64_t next_look = letters_between_looks;
    start_run();
    for (std::uint32_t at = 0; at < cells_.size();) {
        if (effort_ >= task_.effort) return result;
        if (effort_ >= run_stop_) {
            start_run();
            at = 0;
        }
        const bool found = try_letters(at);
        result.effort_spent = effort_;
        if (effort_ >= next_look) {
            next_look = effort_ + letters_between_looks;
            if (task_.cancel && task_.cancel->load(std::memory_order_relaxed)) {
                result.end = FillResult::End::cancelled;
                return result;
            }
        }
        if (found) {
            ++at;
            continue;
        }
        if (!jump_back(at)) {
            result.end = FillResult::End::impossible;
            result.causes = std::move(trouble_[at].causes);
            return result;
        }
    }
    result.end = FillResult::End::filled;
    result.grid = std::move(grid_);
    return result;
}

}  // namespace

FillResult fill_thoroughly(const Grid& placed, const FillTask& task, const LetterDraw& draw, Random& random) {
    return Filler(placed, task, draw, random).run();
}

}  // namespace lode
