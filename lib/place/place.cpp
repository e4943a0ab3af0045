// A complete backtracking search: words in an order that puts the troublesome ones first, each word's
// placements in a random order that is never written down, seeded restarts by Luby's lengths. A word that
// could not be placed weighs more in the next run (Boussemart, Hemery, Lecoutre, Sais, "Boosting systematic
// search by weighting constraints", ECAI 2004: here the weight is a word's, not a constraint's). A run that
// ends without meeting its limit has tried everything: that is the proof of `impossible`. Placements are
// numbered, not listed, so that memory stays near the grid's own. Judged by tests/place_test.cpp and by
// tests/oracles.

#include "place/place.hpp"

#include <algorithm>
#include <array>
#include <numeric>
#include <optional>

#include "place/luby.hpp"

namespace lode {
namespace {

// Tries between two looks at the clock of the caller: progress and cancellation.
constexpr std::uint64_t tries_between_looks = 1 << 14;
constexpr std::uint64_t least_run = 20'000;
constexpr std::uint64_t run_per_word = 200;

bool is_palindrome(const Letters& word) {
    return std::equal(word.begin(), word.end(), word.rbegin());
}

class Search {
  public:
    Search(const PlaceTask& task, Random& random);
    PlaceResult run();

  private:
    enum class RunEnd { placed, exhausted, limit, cancelled };

    // One word's place in the order of a run, and how far its placements have been tried.
    struct Level {
        std::uint32_t word = 0;
        std::uint64_t start = 0;
        std::uint64_t stride = 1;
        std::uint64_t tried = 0;
        std::size_t written = 0;   // how many cells had been written before this word
        std::size_t foretold = 0;  // how many copies had been foretold before this word
    };

    void start_run();
    RunEnd search_run(std::uint64_t limit);
    void enter(std::size_t depth);
    bool try_next(Level& level);
    void undo(const Level& level);
    void clear();
    bool write(std::uint32_t word, const Placement& placement);
    bool copies_are_right(std::uint32_t word, const Placement& placement, std::size_t written_before);
    bool look_up();

    [[nodiscard]] std::uint64_t candidates() const { return mask_cells_ * choices_.size(); }
    [[nodiscard]] std::optional<Placement> candidate(std::uint32_t word, std::uint64_t number) const;

    const PlaceTask& task_;
    Random& random_;
    std::uint64_t mask_cells_;
    std::vector<Direction> choices_;
    std::vector<std::uint8_t> palindrome_;
    std::vector<std::uint32_t> weight_;

    Grid grid_;
    std::vector<Level> levels_;
    std::vector<Cell> written_;
    std::vector<std::optional<Placement>> placed_;
    // A copy of a word that others spelled before the word was placed: the word must stand there and nowhere
    // else.
    std::vector<std::optional<Placement>> foretold_;
    std::vector<std::uint32_t> foretold_trail_;

    std::uint64_t effort_ = 0;
    std::uint64_t next_look_ = tries_between_looks;
    std::uint64_t pause_ = 0;  // the effort at which a level stops trying: to look up, or for good
};

Search::Search(const PlaceTask& task, Random& random)
    : task_(task),
      random_(random),
      mask_cells_(task.mask.size().cells()),
      weight_(task.words.size(), 0),
      grid_(task.mask),
      placed_(task.words.size()),
      foretold_(task.words.size()) {
    for (const Direction direction : all_directions)
        if (task.directions.contains(direction)) choices_.push_back(direction);
    for (const auto& word : task.words) palindrome_.push_back(is_palindrome(word) ? 1 : 0);
}

// Long words first, since they have the fewest places; before them those that failed. Chance decides the
// rest.
void Search::start_run() {
    std::vector<std::uint32_t> order(task_.words.size());
    std::iota(order.begin(), order.end(), 0u);
    random_.shuffle(order);
    std::stable_sort(order.begin(), order.end(), [&](std::uint32_t a, std::uint32_t b) {
        if (weight_[a] != weight_[b]) return weight_[a] > weight_[b];
        return task_.words[a].size() > task_.words[b].size();
    });
    levels_.assign(order.size(), {});
    for (std::size_t depth = 0; depth < order.size(); ++depth) levels_[depth].word = order[depth];
}

// Placements are walked as start, start + stride, ...: with a stride that shares no divisor with their
// number, every one is met once, and nothing has to be shuffled.
void Search::enter(std::size_t depth) {
    Level& level = levels_[depth];
    const std::uint64_t count = candidates();
    level.start = random_.below(static_cast<std::uint32_t>(count));
    do level.stride = 1 + random_.below(static_cast<std::uint32_t>(count));
    while (std::gcd(level.stride, count) != 1);
    level.tried = 0;
    level.written = written_.size();
    level.foretold = foretold_trail_.size();
}

std::optional<Placement> Search::candidate(std::uint32_t word, std::uint64_t number) const {
    const auto columns = static_cast<std::uint64_t>(grid_.size().columns);
    const std::uint64_t cell = number / choices_.size();
    const Placement placement{{static_cast<int>(cell / columns), static_cast<int>(cell % columns)},
                              choices_[number % choices_.size()]};
    // A palindrome turned round covers the same cells: one of the two is enough.
    if (palindrome_[word] && static_cast<unsigned>(placement.direction) >= 4 &&
        task_.directions.contains(opposite(placement.direction)))
        return std::nullopt;
    if (!grid_.inside(
            moved(placement.first, placement.direction, static_cast<int>(task_.words[word].size()) - 1)))
        return std::nullopt;
    return placement;
}

bool Search::try_next(Level& level) {
    const std::uint64_t count = candidates();
    while (level.tried < count && effort_ < pause_) {
        const std::uint64_t number = (level.start + level.tried * level.stride) % count;
        ++level.tried;
        ++effort_;
        const auto placement = candidate(level.word, number);
        if (placement && write(level.word, *placement)) return true;
    }
    return false;
}

bool Search::write(std::uint32_t word, const Placement& placement) {
    const Letters& letters = task_.words[word];
    if (foretold_[word] && !same_cells(*foretold_[word], placement, static_cast<int>(letters.size())))
        return false;
    for (int at = 0; at < static_cast<int>(letters.size()); ++at) {
        const Letter there = grid_[moved(placement.first, placement.direction, at)];
        if (there != empty_cell && there != letters[static_cast<std::size_t>(at)]) return false;
    }
    const std::size_t written_before = written_.size();
    const std::size_t foretold_before = foretold_trail_.size();
    for (int at = 0; at < static_cast<int>(letters.size()); ++at) {
        const Cell cell = moved(placement.first, placement.direction, at);
        if (grid_[cell] != empty_cell) continue;
        grid_[cell] = letters[static_cast<std::size_t>(at)];
        written_.push_back(cell);
    }
    placed_[word] = placement;
    if (copies_are_right(word, placement, written_before)) return true;
    Level before;
    before.word = word;
    before.written = written_before;
    before.foretold = foretold_before;
    undo(before);
    return false;
}

// Each copy that the new letters complete must be a placed word's own, or the only one of a word that is
// still to come.
bool Search::copies_are_right(std::uint32_t word, const Placement& placement, std::size_t written_before) {
    const auto listed = [&](std::size_t other, const Placement& copy) {
        const int length = task_.words_guard.length(other);
        if (other == word) return same_cells(placement, copy, length);
        if (placed_[other]) return same_cells(*placed_[other], copy, length);
        if (foretold_[other]) return same_cells(*foretold_[other], copy, length);
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

void Search::undo(const Level& level) {
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

// Returns false where the caller has cancelled.
bool Search::look_up() {
    next_look_ = effort_ + tries_between_looks;
    if (task_.progress) task_.progress(effort_);
    return !(task_.cancel && task_.cancel->load(std::memory_order_relaxed));
}

Search::RunEnd Search::search_run(std::uint64_t limit) {
    const std::uint64_t stop = std::min(task_.effort, effort_ + limit);
    start_run();
    std::size_t depth = 0;
    if (!levels_.empty()) enter(0);
    while (depth < levels_.size()) {
        if (effort_ >= next_look_ && !look_up()) return RunEnd::cancelled;
        pause_ = std::min(next_look_, stop);
        Level& level = levels_[depth];
        if (try_next(level)) {
            if (++depth < levels_.size()) enter(depth);
            continue;
        }
        if (level.tried < candidates()) {
            if (effort_ >= stop) return RunEnd::limit;
            continue;  // it only paused to look up
        }
        ++weight_[level.word];
        if (depth == 0) return RunEnd::exhausted;
        if (effort_ >= stop) return RunEnd::limit;
        undo(levels_[--depth]);
    }
    return RunEnd::placed;
}

void Search::clear() {
    for (auto level = levels_.rbegin(); level != levels_.rend(); ++level)
        if (placed_[level->word]) undo(*level);
}

PlaceResult Search::run() {
    using End = PlaceResult::End;
    const std::uint64_t unit = std::max(least_run, run_per_word * task_.words.size());
    RunEnd end = RunEnd::limit;
    for (std::uint64_t number = 1; end == RunEnd::limit && effort_ < task_.effort; ++number) {
        clear();
        end = search_run(unit * luby(number));
    }

    PlaceResult result;
    result.effort_spent = effort_;
    switch (end) {
        case RunEnd::placed:
            result.end = End::placed;
            break;
        case RunEnd::exhausted:
            result.end = End::impossible;
            break;
        case RunEnd::cancelled:
            result.end = End::cancelled;
            break;
        case RunEnd::limit:
            result.end = End::unfinished;
            break;
    }
    if (end == RunEnd::placed) {
        for (const auto& placement : placed_) result.placements.push_back(*placement);
        result.grid = std::move(grid_);
    } else {
        result.hardest =
            static_cast<std::size_t>(std::max_element(weight_.begin(), weight_.end()) - weight_.begin());
    }
    return result;
}

}  // namespace

PlaceResult place(const PlaceTask& task, Random& random) {
    return Search(task, random).run();
}

}  // namespace lode
