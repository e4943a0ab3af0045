// Letters are first drawn for all cells, whatever they spell. In an everyday grid they spell a listed or an
// avoided word hardly ever: one pass finds where, and a letter of each such copy is drawn again until it
// completes none. What the filler's rules ask of neighbours is seen while letters are drawn: one that breaks
// a rule with those that stand is drawn again. Where all that is not soon done, the thorough search starts
// from the beginning. Judged by tests/fill_test.cpp.

#include "fill/fill.hpp"

#include <algorithm>
#include <optional>
#include <stdexcept>

#include "fill/letter_draw.hpp"
#include "fill/thorough.hpp"

namespace lode {
namespace {

// Beyond so many copies, and one for so many cells more, letters are too few for chance.
constexpr std::size_t few_strays = 16;
constexpr std::size_t cells_per_stray = 4;
// How often a letter is drawn again in one cell before another cell of the copy has its turn.
constexpr int draws_per_cell = 8;
// How many letters may break a rule before all that would keep it are listed.
constexpr int draws_by_chance = 8;

class Sprinkler {
  public:
    Sprinkler(const Grid& placed, const FillTask& task, const LetterDraw& draw, Random& random)
        : placed_(placed), task_(task), draw_(draw), random_(random), grid_(placed) {}

    // The filled grid, the end of the effort or of the caller's patience, or nothing where it is not for
    // chance.
    std::optional<FillResult> run() {
        const Drawn drawn = draw_all();
        if (drawn == Drawn::not_all)
            return FillResult{
                is_cancelled() ? FillResult::End::cancelled : FillResult::End::unfinished, effort_, {}, {}};
        if (drawn == Drawn::none_left || !find_strays() ||
            !std::all_of(strays_.begin(), strays_.end(), [&](const SeenCopy& stray) { return mend(stray); }))
            return std::nullopt;
        return FillResult{FillResult::End::filled, effort_, std::move(grid_), {}};
    }
    [[nodiscard]] std::uint64_t effort_spent() const { return effort_; }

  private:
    // All cells have a letter; or effort or patience ended before; or rules leave a cell none.
    enum class Drawn { all, not_all, none_left };
    Drawn draw_all();
    bool draw_by_rules(Cell cell);
    template <class Holds>
    bool draw_among(Cell cell, const Holds& holds);
    [[nodiscard]] bool keeps_rules(Cell cell) const { return !broken_rule(grid_, task_.rules, cell); }
    bool find_strays();
    bool mend(const SeenCopy& stray);
    [[nodiscard]] bool is_filler(Cell cell) const { return placed_[cell] == empty_cell; }
    [[nodiscard]] std::vector<Cell> filler_of(const CopyGuard& guard, std::size_t word,
                                              const Placement& copy) const;
    [[nodiscard]] bool completes_nothing(Cell cell) const;
    [[nodiscard]] bool is_cancelled() const {
        return task_.cancel && task_.cancel->load(std::memory_order_relaxed);
    }

    const Grid& placed_;
    const FillTask& task_;
    const LetterDraw& draw_;
    Random& random_;
    Grid grid_;
    std::vector<SeenCopy> strays_;  // with a letter of the filler
    std::uint64_t effort_ = 0;
};

Sprinkler::Drawn Sprinkler::draw_all() {
    const bool by_rules = !task_.rules.ask_nothing();
    for (int row = 0; row < grid_.size().rows; ++row)
        for (int column = 0; column < grid_.size().columns; ++column) {
            const Cell cell{row, column};
            Letter& letter = grid_[cell];
            if (letter != empty_cell) continue;
            if (effort_ >= task_.effort) return Drawn::not_all;
            if (++effort_ % letters_between_looks == 0 && is_cancelled()) return Drawn::not_all;
            letter = first_letter(task_, draw_, cell, random_);
            if (by_rules && !keeps_rules(cell) && !draw_by_rules(cell))
                return effort_ < task_.effort ? Drawn::none_left : Drawn::not_all;
        }
    return Drawn::all;
}

// Another letter that keeps the rules with those in place, by the weights of all that do. False where there
// is none, or effort for none.
bool Sprinkler::draw_by_rules(Cell cell) {
    Letter& letter = grid_[cell];
    for (int draws = 0; draws < draws_by_chance; ++draws) {
        if (effort_ >= task_.effort) return false;
        ++effort_;
        letter = draw_.draw(random_);
        if (keeps_rules(cell)) return true;
    }
    return draw_among(cell, [&] { return keeps_rules(cell); });
}

// A letter by the weights of all for which it holds; the cell is left as it was where there is none, or
// effort for none.
template <class Holds>
bool Sprinkler::draw_among(Cell cell, const Holds& holds) {
    Letter& letter = grid_[cell];
    const Letter before = letter;
    auto weights = task_.weights;
    for (std::size_t other = 0; other < weights.size(); ++other) {
        if (weights[other] == 0) continue;
        if (effort_ < task_.effort) {
            ++effort_;
            letter = static_cast<Letter>(other);
            if (holds()) continue;
        }
        weights[other] = 0;
    }
    const LetterDraw kept(weights);
    letter = kept.can_draw() ? kept.draw(random_) : before;
    return kept.can_draw();
}

std::vector<Cell> Sprinkler::filler_of(const CopyGuard& guard, std::size_t word,
                                       const Placement& copy) const {
    std::vector<Cell> cells;
    for (int at = 0; at < guard.length(word); ++at)
        if (const Cell cell = moved(copy.first, copy.direction, at); is_filler(cell)) cells.push_back(cell);
    return cells;
}

bool Sprinkler::find_strays() {
    const std::size_t most = few_strays + grid_.size().cells() / cells_per_stray;
    const auto note = [&](const CopyGuard& guard) {
        return guard.everywhere(grid_, [&](std::size_t word, const Placement& copy) {
            for (int at = 0; at < guard.length(word); ++at)
                if (is_filler(moved(copy.first, copy.direction, at))) {
                    strays_.push_back({&guard, word, copy});
                    break;
                }
            return strays_.size() <= most;
        });
    };
    return note(task_.words_guard) && note(task_.avoided_guard);
}

bool Sprinkler::completes_nothing(Cell cell) const {
    const auto found = [](std::size_t, const Placement&) { return false; };
    return task_.words_guard.through(grid_, cell, found) && task_.avoided_guard.through(grid_, cell, found);
}

// Another letter for one of its cells, at random, that takes it away and brings no other.
bool Sprinkler::mend(const SeenCopy& stray) {
    auto cells = filler_of(*stray.guard, stray.word, stray.copy);
    if (!stray.stands(grid_)) return true;
    random_.shuffle(cells);
    const auto suits = [&](Cell cell) { return keeps_rules(cell) && completes_nothing(cell); };
    for (const Cell cell : cells) {
        const Letter before = grid_[cell];
        for (int draws = 0; draws < draws_per_cell && effort_ < task_.effort; ++draws) {
            ++effort_;
            grid_[cell] = draw_.draw(random_);
            if (suits(cell)) return true;
        }
        grid_[cell] = before;
    }
    // In a large grid what hardly ever happens does.
    return std::any_of(cells.begin(), cells.end(),
                       [&](Cell cell) { return draw_among(cell, [&] { return suits(cell); }); });
}

}  // namespace

FillResult fill(const Grid& placed, const FillTask& task, Random& random) {
    const LetterDraw draw(task.weights);
    const auto& letters = placed.letters();
    if (!draw.can_draw() && std::find(letters.begin(), letters.end(), empty_cell) != letters.end())
        throw std::invalid_argument("a grid is to be filled and no letter is allowed");

    Sprinkler sprinkler(placed, task, draw, random);
    if (auto result = sprinkler.run()) return std::move(*result);
    FillTask rest = task;
    rest.effort -= sprinkler.effort_spent();
    FillResult result = fill_thoroughly(placed, rest, draw, random);
    result.effort_spent += sprinkler.effort_spent();
    return result;
}

}  // namespace lode
