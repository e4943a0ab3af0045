#include "place/position.hpp"

#include <algorithm>
#include <cstdlib>
#include <limits>

#include "place/message.hpp"

namespace lode {
namespace {

// Words of up to so many letters arise by chance often enough to be looked for after every placement.
constexpr std::size_t few_letters = 3;

}  // namespace

Position::Position(const PlaceTask& task, Candidates& candidates)
    : task_(task),
      candidates_(candidates),
      nesting_(task),
      tally_(task),
      short_words_(task.words_guard.up_to(few_letters)),
      short_avoided_(task.avoided_guard.up_to(few_letters)),
      grid_(task.mask),
      cover_(task.mask.size().cells(), 0),
      at_(task.words.size()) {}

std::optional<Placement> Position::placement_of(std::uint32_t word) const {
    if (!at_[word]) return std::nullopt;
    return candidates_.placement(*at_[word]);
}

std::size_t Position::overlap(Candidate candidate) const {
    const auto cells = candidates_.cells(candidate);
    return static_cast<std::size_t>(
        std::count_if(cells.begin(), cells.end(), [&](auto cell) { return is_written(cell); }));
}

bool Position::place(Candidate candidate) {
    const std::uint32_t word = candidates_.word(candidate);
    const Letters& letters = task_.words[word];
    const auto cells = candidates_.cells(candidate);
    written_.clear();
    foretold_.clear();
    for (std::size_t index = 0; index < cells.size(); ++index)
        if (cover_[cells[index]]++ == 0) {
            grid_[cell(cells[index])] = letters[index];
            written_.push_back(cells[index]);
        }
    at_[word] = candidate;
    tally_.add(word, candidates_.placement(candidate), cells);
    const auto at = [&](std::uint32_t other) { return placement_of(other); };
    if (tally_.is_within_reach() && nesting_.copies_differ(word, at) && copies_are_right()) return true;
    lift(word);
    return false;
}

void Position::lift(std::uint32_t word) {
    const auto cells = candidates_.cells(*at_[word]);
    for (const std::uint32_t index : cells)
        if (--cover_[index] == 0) grid_[cell(index)] = empty_cell;
    tally_.remove(word, candidates_.placement(*at_[word]), cells);
    at_[word].reset();
}

void Position::each_ruling(const std::function<void(const Block*)>& visit) {
    if (tally_.is_idle()) return;
    const Directions full = tally_.full_directions();
    for (const Direction direction : all_directions)
        if (full.contains(direction)) visit(candidates_.not_in(direction));
    if (tally_.none_may_move()) visit(candidates_.at_home());
}

Nesting::Verdict Position::judge(std::size_t word, const Placement& copy) const {
    return nesting_.judge(word, copy, [&](std::uint32_t other) { return placement_of(other); });
}

// A copy of a word to come is the one place that it can take. False where it has no candidate there.
bool Position::foretell(std::uint32_t word, const Placement& copy) {
    const auto candidate = candidates_.that_covers(word, copy);
    if (!candidate) return false;
    // Where directions count, a palindrome has a second candidate on the same cells.
    if (task_.demands.shares.empty() &&
        std::find(foretold_.begin(), foretold_.end(), *candidate) == foretold_.end())
        foretold_.push_back(*candidate);
    return true;
}

bool Position::copies_are_right() {
    const auto avoided = [](std::size_t, const Placement&) { return false; };
    const auto listed = [&](std::size_t word, const Placement& copy) {
        const auto verdict = judge(word, copy);
        if (verdict != Nesting::Verdict::open) return verdict == Nesting::Verdict::explained;
        return !nesting_.is_plain(word) || foretell(static_cast<std::uint32_t>(word), copy);
    };
    if (short_words_.finds_nothing() && short_avoided_.finds_nothing()) return true;
    return std::all_of(written_.begin(), written_.end(), [&](std::uint32_t index) {
        return short_avoided_.through(grid_, cell(index), avoided) &&
               short_words_.through(grid_, cell(index), listed);
    });
}

bool Position::is_full() const {
    return std::all_of(at_.begin(), at_.end(), [](const auto& candidate) { return candidate.has_value(); });
}

Grid Position::finished_grid() const {
    return with_message(grid_, task_.demands);
}

// Of the words, one that covers the cell nearest to this one.
std::uint32_t Position::nearest_word(Cell to) const {
    std::uint32_t nearest = 0;
    int least = std::numeric_limits<int>::max();
    for (std::uint32_t word = 0; word < at_.size(); ++word) {
        if (!at_[word]) continue;
        for (const std::uint32_t index : candidates_.cells(*at_[word])) {
            const Cell at = cell(index);
            const int distance = std::max(std::abs(at.row - to.row), std::abs(at.column - to.column));
            if (distance >= least) continue;
            least = distance;
            nearest = word;
        }
    }
    return nearest;
}

std::optional<std::uint32_t> Position::word_on_wrong_copy() const {
    const auto explained = [&](std::size_t word, const Placement& copy) {
        return judge(word, copy) == Nesting::Verdict::explained;
    };
    const auto avoided = [](std::size_t, const Placement&) { return false; };
    const Grid grid = finished_grid();
    for (std::uint32_t index = 0; index < cover_.size(); ++index) {
        const Letter letter = grid.letters()[index];
        if (letter == empty_cell || letter == closed_cell) continue;
        if (!task_.words_guard.through(grid, cell(index), explained) ||
            !task_.avoided_guard.through(grid, cell(index), avoided))
            return nearest_word(cell(index));
    }
    return std::nullopt;
}

std::vector<Placement> Position::placements() const {
    std::vector<Placement> all;
    for (const auto& candidate : at_) all.push_back(candidates_.placement(*candidate));
    return all;
}

}  // namespace lode
