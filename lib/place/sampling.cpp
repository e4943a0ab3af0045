// A complete backtracking search: words in an order that puts the troublesome ones first, each word's
// placements in a random order that is never written down, seeded restarts by Luby's lengths. A word that
// could not be placed weighs more in the next run (Boussemart, Hemery, Lecoutre, Sais, "Boosting systematic
// search by weighting constraints", ECAI 2004: here the weight is a word's, not a constraint's). A run that
// ends without meeting its limit has tried everything: that is the proof of `impossible`. Placements are
// numbered, not listed, so that memory stays near the grid's own. Judged by tests/place_test.cpp and by
// tests/oracles.

#include "place/sampling.hpp"

#include <algorithm>
#include <numeric>

#include "random/luby.hpp"
#include "place/same_copy.hpp"

namespace lode {
namespace {

constexpr std::uint64_t least_run = 20'000;
constexpr std::uint64_t run_per_word = 200;

}  // namespace

SamplingSearch::SamplingSearch(const PlaceTask& task, Random& random, Effort& effort)
    : task_(task),
      random_(random),
      effort_(effort),
      mask_cells_(task.mask.size().cells()),
      weight_(task.words.size(), 0),
      grid_(task.mask),
      placed_(task.words.size()),
      foretold_(task.words.size()),
      nesting_(task),
      tally_(task) {
    for (const Direction direction : all_directions)
        if (task.directions.contains(direction)) choices_.push_back(direction);
    for (const auto& word : task.words) palindrome_.push_back(is_palindrome(word) ? 1 : 0);
}

// Long words first, since they have the fewest places; before them those that failed, and before all those
// that are pinned. Chance decides the rest.
void SamplingSearch::start_run() {
    std::vector<std::uint32_t> order(task_.words.size());
    std::iota(order.begin(), order.end(), 0u);
    random_.shuffle(order);
    std::stable_sort(order.begin(), order.end(), [&](std::uint32_t a, std::uint32_t b) {
        if (is_pinned(a) != is_pinned(b)) return is_pinned(a);
        if (weight_[a] != weight_[b]) return weight_[a] > weight_[b];
        return task_.words[a].size() > task_.words[b].size();
    });
    levels_.assign(order.size(), {});
    for (std::size_t depth = 0; depth < order.size(); ++depth) levels_[depth].word = order[depth];
}

// Placements are walked as start, start + stride, ...: with a stride that shares no divisor with their
// number, every one is met once, and nothing has to be shuffled.
void SamplingSearch::enter(std::size_t depth) {
    Level& level = levels_[depth];
    const std::uint64_t count = candidates(level.word);
    level.start = random_.below(static_cast<std::uint32_t>(count));
    do level.stride = 1 + random_.below(static_cast<std::uint32_t>(count));
    while (std::gcd(level.stride, count) != 1);
    level.tried = 0;
    level.written = written_.size();
    level.foretold = foretold_trail_.size();
    level.open = open_.size();
}

// As the pin has it, and from the other end, which is the same for a palindrome alone.
std::optional<Placement> SamplingSearch::pinned(std::uint32_t word, std::uint64_t number) const {
    const Placement pin = *task_.demands.pins[word];
    const Cell last = moved(pin.first, pin.direction, static_cast<int>(task_.words[word].size()) - 1);
    if (!grid_.inside(pin.first) || !grid_.inside(last)) return std::nullopt;
    const Placement placement = number == 0 ? pin : Placement{last, opposite(pin.direction)};
    if (!task_.directions.contains(placement.direction) || (number == 1 && !palindrome_[word]))
        return std::nullopt;
    return placement;
}

std::optional<Placement> SamplingSearch::candidate(std::uint32_t word, std::uint64_t number) const {
    if (is_pinned(word)) return pinned(word, number);
    const auto columns = static_cast<std::uint64_t>(grid_.size().columns);
    const std::uint64_t cell = number / choices_.size();
    const Placement placement{{static_cast<int>(cell / columns), static_cast<int>(cell % columns)},
                              choices_[number % choices_.size()]};
    // A palindrome turned round covers the same cells: one of the two is enough, unless directions count.
    if (palindrome_[word] && task_.demands.shares.empty() &&
        static_cast<unsigned>(placement.direction) >= 4 &&
        task_.directions.contains(opposite(placement.direction)))
        return std::nullopt;
    if (!grid_.inside(
            moved(placement.first, placement.direction, static_cast<int>(task_.words[word].size()) - 1)))
        return std::nullopt;
    return placement;
}

bool SamplingSearch::try_next(Level& level) {
    const std::uint64_t count = candidates(level.word);
    while (level.tried < count && effort_.spent() < run_stop_ && effort_.spend(1)) {
        const std::uint64_t number = (level.start + level.tried * level.stride) % count;
        ++level.tried;
        const auto placement = candidate(level.word, number);
        if (!placement || !write(level.word, *placement)) continue;
        if (&level != &levels_.back() || is_complete()) return true;
        undo(level);
    }
    return false;
}

bool SamplingSearch::write(std::uint32_t word, const Placement& placement) {
    const Letters& letters = task_.words[word];
    if (foretold_[word] && !same_cells(*foretold_[word], placement, static_cast<int>(letters.size())))
        return false;
    for (int at = 0; at < static_cast<int>(letters.size()); ++at) {
        const Letter there = grid_[moved(placement.first, placement.direction, at)];
        if (there != empty_cell && there != letters[static_cast<std::size_t>(at)]) return false;
    }
    list_cells(word, placement);
    if (!tally_.keeps_apart(cells_)) return false;
    Level before;
    before.word = word;
    before.written = written_.size();
    before.foretold = foretold_trail_.size();
    before.open = open_.size();
    for (int at = 0; at < static_cast<int>(letters.size()); ++at) {
        const Cell cell = moved(placement.first, placement.direction, at);
        if (grid_[cell] != empty_cell) continue;
        grid_[cell] = letters[static_cast<std::size_t>(at)];
        written_.push_back(cell);
    }
    placed_[word] = placement;
    tally_.add(word, placement, cells_);
    const auto at = [&](std::uint32_t other) { return placed_[other]; };
    if (tally_.is_within_reach() && nesting_.copies_differ(word, at) && copies_are_right(before.written))
        return true;
    undo(before);
    return false;
}

// Each copy that the new letters complete must be explained by a word in place, or be the only one of a word
// that is still to come. What may yet be explained in several ways is put off until all words are in place.
bool SamplingSearch::copies_are_right(std::size_t written_before) {
    const auto listed = [&](std::size_t other, const Placement& copy) {
        const auto verdict = nesting_.judge(other, copy, [&](std::uint32_t word) { return placed_[word]; });
        if (verdict != Nesting::Verdict::open) return verdict == Nesting::Verdict::explained;
        if (!nesting_.is_plain(other)) {
            open_.emplace_back(other, copy);
            return true;
        }
        if (foretold_[other]) return same_cells(*foretold_[other], copy, task_.words_guard.length(other));
        foretold_[other] = copy;
        foretold_trail_.push_back(static_cast<std::uint32_t>(other));
        return true;
    };
    const auto avoided = [](std::size_t, const Placement&) { return false; };
    for (std::size_t at = written_before; at < written_.size(); ++at)
        if (!task_.avoided_guard.through(grid_, written_[at], avoided) ||
            !task_.words_guard.through(grid_, written_[at], listed))
            return false;
    return true;
}

// With every word in place: what was put off, and what the message spells.
bool SamplingSearch::is_complete() const {
    const auto explained = [&](std::size_t word, const Placement& copy) {
        return nesting_.judge(word, copy, [&](std::uint32_t other) { return placed_[other]; }) ==
               Nesting::Verdict::explained;
    };
    if (!std::all_of(open_.begin(), open_.end(),
                     [&](const auto& copy) { return explained(copy.first, copy.second); }))
        return false;
    if (task_.demands.message.empty()) return true;
    const auto avoided = [](std::size_t, const Placement&) { return false; };
    const Grid grid = finished_grid();
    for (int row = 0; row < grid.size().rows; ++row)
        for (int column = 0; column < grid.size().columns; ++column)
            if (grid_[{row, column}] == empty_cell && grid[{row, column}] != empty_cell &&
                (!task_.words_guard.through(grid, {row, column}, explained) ||
                 !task_.avoided_guard.through(grid, {row, column}, avoided)))
                return false;
    return true;
}

void SamplingSearch::list_cells(std::uint32_t word, const Placement& placement) {
    if (tally_.is_idle()) return;
    cells_.clear();
    for (int at = 0; at < static_cast<int>(task_.words[word].size()); ++at)
        cells_.push_back(
            static_cast<std::uint32_t>(grid_.index(moved(placement.first, placement.direction, at))));
}

void SamplingSearch::undo(const Level& level) {
    list_cells(level.word, *placed_[level.word]);
    tally_.remove(level.word, *placed_[level.word], cells_);
    open_.resize(level.open);
    placed_[level.word].reset();
    while (written_.size() > level.written) {
        grid_[written_.back()] = empty_cell;
        written_.pop_back();
    }
    while (foretold_trail_.size() > level.foretold) {
        foretold_[foretold_trail_.back()].reset();
        foretold_trail_.pop_back();
    }
}

SearchEnd SamplingSearch::run() {
    start_run();
    if (levels_.empty())
        return tally_.is_within_reach() && is_complete() ? SearchEnd::placed : SearchEnd::exhausted;
    std::size_t depth = 0;
    enter(0);
    while (depth < levels_.size()) {
        Level& level = levels_[depth];
        if (try_next(level)) {
            if (++depth < levels_.size()) enter(depth);
            continue;
        }
        if (level.tried < candidates(level.word)) return SearchEnd::limit;
        ++weight_[level.word];
        if (depth == 0) return SearchEnd::exhausted;
        undo(levels_[--depth]);
    }
    return SearchEnd::placed;
}

void SamplingSearch::clear() {
    for (auto level = levels_.rbegin(); level != levels_.rend(); ++level)
        if (placed_[level->word]) undo(*level);
}

SearchEnd SamplingSearch::search(std::uint64_t most_steps) {
    const std::uint64_t unit = std::max(least_run, run_per_word * task_.words.size());
    stop_ = effort_.spent() + most_steps;
    SearchEnd end = SearchEnd::limit;
    while (end == SearchEnd::limit && effort_.spent() < stop_ && !effort_.is_spent()) {
        clear();
        run_stop_ = std::min(stop_, effort_.spent() + unit * luby(++run_number_));
        end = run();
    }
    return end;
}

}  // namespace lode
