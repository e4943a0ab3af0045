#include "place/position.hpp"

#include <algorithm>

namespace lode {
namespace {

// Words of up to so many letters arise by chance often enough to be looked for after every placement.
constexpr std::size_t few_letters = 3;

}  // namespace

Position::Position(const PlaceTask& task, const Candidates& candidates)
    : task_(task),
      candidates_(candidates),
      short_words_(task.words_guard.up_to(few_letters)),
      short_avoided_(task.avoided_guard.up_to(few_letters)),
      grid_(task.mask),
      cover_(task.mask.size().cells(), 0),
      at_(task.words.size()) {}

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
    if (copies_are_right()) return true;
    lift(word);
    return false;
}

void Position::lift(std::uint32_t word) {
    for (const std::uint32_t index : candidates_.cells(*at_[word]))
        if (--cover_[index] == 0) grid_[cell(index)] = empty_cell;
    at_[word].reset();
}

bool Position::is_own(std::size_t word, const Placement& copy) const {
    return at_[word] && same_cells(candidates_.placement(*at_[word]), copy, task_.words_guard.length(word));
}

bool Position::copies_are_right() {
    const auto avoided = [](std::size_t, const Placement&) { return false; };
    const auto listed = [&](std::size_t word, const Placement& copy) {
        if (at_[word]) return is_own(word, copy);
        const auto candidate = candidates_.that_covers(static_cast<std::uint32_t>(word), copy);
        if (!candidate) return false;
        if (std::find(foretold_.begin(), foretold_.end(), *candidate) == foretold_.end())
            foretold_.push_back(*candidate);
        return true;
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

std::optional<std::uint32_t> Position::word_on_wrong_copy() const {
    std::optional<Placement> wrong;
    const auto own = [&](std::size_t word, const Placement& copy) {
        if (!is_own(word, copy)) wrong = copy;
        return !wrong;
    };
    const auto avoided = [&](std::size_t, const Placement& copy) {
        wrong = copy;
        return false;
    };
    for (std::uint32_t index = 0; index < cover_.size() && !wrong; ++index) {
        if (!is_written(index)) continue;
        (void)(task_.words_guard.through(grid_, cell(index), own) &&
               task_.avoided_guard.through(grid_, cell(index), avoided));
        if (!wrong) continue;
        for (std::uint32_t word = 0; word < at_.size(); ++word)
            if (at_[word] && std::ranges::count(candidates_.cells(*at_[word]), index) > 0) return word;
    }
    return std::nullopt;
}

std::vector<Placement> Position::placements() const {
    std::vector<Placement> all;
    for (const auto& candidate : at_) all.push_back(candidates_.placement(*candidate));
    return all;
}

}  // namespace lode
