// Random retry, which is what places an everyday puzzle: nothing is checked while words are laid but that
// letters agree. Copies that nobody meant are rare, and one pass over the grid finds them all; a word that
// has a part in one is laid anew, its new letters looked at one by one. So a run costs about as much as
// writing and reading the grid once. Judged by tests/place_test.cpp; what it cannot place is for other
// searches.

#include "place/chance.hpp"

#include <algorithm>
#include <array>
#include <numeric>

namespace lode {
namespace {

// A word that finds no place in so many is left to another run.
constexpr int tries_per_word = 200;
// Beyond so many strays, and one for so many words more, another run is the better way.
constexpr std::size_t few_strays = 4;
constexpr std::size_t words_per_stray = 4;

// How many placements of a length lie inside a grid, in each of some directions, and which is which.
class Placements {
  public:
    Placements(Size size, int length, const std::vector<Direction>& choices) {
        const int shift = length - 1;
        for (const Direction direction : choices) {
            const Cell by = step(direction);
            const int rows = std::max(0, by.row == 0 ? size.rows : size.rows - shift);
            const int columns = std::max(0, by.column == 0 ? size.columns : size.columns - shift);
            ways_[count_of_ways_++] = {count_,
                                       static_cast<std::uint32_t>(columns),
                                       {by.row < 0 ? shift : 0, by.column < 0 ? shift : 0},
                                       direction};
            count_ += static_cast<std::uint32_t>(rows) * static_cast<std::uint32_t>(columns);
        }
    }
    [[nodiscard]] std::uint32_t count() const { return count_; }
    [[nodiscard]] Placement operator[](std::uint32_t number) const {
        // Numbers come by chance: a branch that hangs on which direction it is would be guessed wrong.
        std::size_t which = 0;
        for (std::size_t way = 1; way < count_of_ways_; ++way)
            which += number >= ways_[way].first_number ? 1 : 0;
        const Way& way = ways_[which];
        number -= way.first_number;
        return {{static_cast<int>(number / way.columns) + way.first.row,
                 static_cast<int>(number % way.columns) + way.first.column},
                way.direction};
    }

  private:
    struct Way {
        std::uint32_t first_number;  // as many as there are in the directions before
        std::uint32_t columns;       // in which placements begin; not 0 where there is one
        Cell first;                  // where the first begins
        Direction direction;
    };
    std::array<Way, 8> ways_;
    std::size_t count_of_ways_ = 0;
    std::uint32_t count_ = 0;
};

}  // namespace

ChanceSearch::ChanceSearch(const PlaceTask& task, Random& random, Effort& effort)
    : task_(task),
      random_(random),
      effort_(effort),
      nesting_(task),
      order_(task.words.size()),
      failed_(task.words.size(), 0),
      placed_(task.words.size()) {
    for (const Direction direction : all_directions)
        if (task.directions.contains(direction)) choices_.push_back(direction);
    std::iota(order_.begin(), order_.end(), 0u);
    std::stable_sort(order_.begin(), order_.end(),
                     [&](auto a, auto b) { return task_.words[a].size() > task_.words[b].size(); });
}

bool ChanceSearch::agrees(std::uint32_t word, const Placement& placement) const {
    const Cell by = step(placement.direction);
    const std::ptrdiff_t stride = std::ptrdiff_t{by.row} * grid_.size().columns + by.column;
    const Letter* there = grid_.letters().data() + grid_.index(placement.first);
    for (const Letter letter : task_.words[word]) {
        if (*there != empty_cell && *there != letter) return false;
        there += stride;
    }
    return true;
}

void ChanceSearch::write(std::uint32_t word, const Placement& placement) {
    Cell cell = placement.first;
    for (const Letter letter : task_.words[word]) {
        grid_[cell] = letter;
        if (!cover_.empty()) {
            ++cover_[grid_.index(cell)];
            last_on_[grid_.index(cell)] = word;
        }
        cell = moved(cell, placement.direction, 1);
    }
    placed_[word] = placement;
}

void ChanceSearch::lift(std::uint32_t word) {
    Cell cell = placed_[word]->first;
    for (std::size_t at = 0; at < task_.words[word].size(); ++at) {
        if (--cover_[grid_.index(cell)] == 0) grid_[cell] = empty_cell;
        cell = moved(cell, placed_[word]->direction, 1);
    }
    placed_[word].reset();
}

// At the first of some random places where the letters agree and which is accepted once it is written.
template <class Accept>
bool ChanceSearch::place(std::uint32_t word, Accept&& accept) {
    const Placements all(grid_.size(), static_cast<int>(task_.words[word].size()), choices_);
    if (all.count() == 0) return false;
    for (int tried = 0; tried < tries_per_word && effort_.spend(1); ++tried) {
        const Placement placement = all[random_.below(all.count())];
        if (!agrees(word, placement)) continue;
        write(word, placement);
        if (accept()) return true;
        lift(word);
    }
    ++failed_[word];
    return false;
}

bool ChanceSearch::is_explained(std::size_t word, const Placement& copy) const {
    return nesting_.judge(word, copy, [&](std::uint32_t other) { return placed_[other]; }) ==
           Nesting::Verdict::explained;
}

bool ChanceSearch::has_only_explained_copies_of(std::uint32_t word) const {
    return nesting_.copies_differ(word, [&](std::uint32_t other) { return placed_[other]; });
}

void ChanceSearch::note_words_on_cells() {
    cover_.assign(grid_.size().cells(), 0);
    last_on_.assign(grid_.size().cells(), 0);
    for (std::uint32_t word = 0; word < placed_.size(); ++word)
        for (int at = 0; at < static_cast<int>(task_.words[word].size()); ++at) {
            const std::size_t cell = grid_.index(moved(placed_[word]->first, placed_[word]->direction, at));
            ++cover_[cell];
            last_on_[cell] = word;
        }
}

// Strays are only ever taken away: a word that is laid anew completes no copy but its own, and leaves none
// behind that it explained.
bool ChanceSearch::place_elsewhere(std::uint32_t word) {
    const Placement before = *placed_[word];
    lift(word);
    return place(word, [&] {
        return has_only_explained_copies_of(word) && are_explained_along(word, before) &&
               are_explained_along(word, *placed_[word]);
    });
}

// The copies through the cells that the placement covers and that hold letters.
bool ChanceSearch::are_explained_along(std::uint32_t word, const Placement& placement) const {
    const auto explained = [&](std::size_t other, const Placement& copy) {
        return is_explained(other, copy);
    };
    const auto avoided = [](std::size_t, const Placement&) { return false; };
    for (int at = 0; at < static_cast<int>(task_.words[word].size()); ++at) {
        const Cell cell = moved(placement.first, placement.direction, at);
        if (grid_[cell] != empty_cell && (!task_.words_guard.through(grid_, cell, explained) ||
                                          !task_.avoided_guard.through(grid_, cell, avoided)))
            return false;
    }
    return true;
}

bool ChanceSearch::stands_on(std::uint32_t word, Cell cell) const {
    if (!placed_[word]) return false;
    for (int at = 0; at < static_cast<int>(task_.words[word].size()); ++at)
        if (moved(placed_[word]->first, placed_[word]->direction, at) == cell) return true;
    return false;
}

// One of the words whose letters the stray is made of.
std::uint32_t ChanceSearch::word_on(const SeenCopy& stray) {
    const auto length = static_cast<std::uint32_t>(stray.guard->length(stray.word));
    const Cell cell = moved(stray.copy.first, stray.copy.direction, static_cast<int>(random_.below(length)));
    const std::uint32_t last = last_on_[grid_.index(cell)];
    if (stands_on(last, cell)) return last;
    // That was lifted since: another that was laid before it still stands there.
    std::uint32_t word = 0;
    while (!stands_on(word, cell)) ++word;
    return word;
}

bool ChanceSearch::mend() {
    const std::size_t most = few_strays + placed_.size() / words_per_stray;
    std::vector<SeenCopy> strays;
    const auto note = [&](const CopyGuard& guard) {
        return guard.everywhere(grid_, [&](std::size_t word, const Placement& copy) {
            if (&guard == &task_.words_guard && is_explained(word, copy)) return true;
            strays.push_back({&guard, word, copy});
            return strays.size() <= most;
        });
    };
    if (!note(task_.words_guard) || !note(task_.avoided_guard)) return false;
    const auto is_right = [&](std::uint32_t word) { return has_only_explained_copies_of(word); };
    if (strays.empty() && std::all_of(order_.begin(), order_.end(), is_right)) return true;
    note_words_on_cells();
    for (const std::uint32_t word : order_)
        if (!is_right(word) && !place_elsewhere(word)) return false;
    return std::all_of(strays.begin(), strays.end(), [&](const SeenCopy& stray) {
        return !stray.stands(grid_) || place_elsewhere(word_on(stray));
    });
}

bool ChanceSearch::run() {
    grid_ = Grid(task_.mask);
    cover_.clear();
    return std::all_of(order_.begin(), order_.end(),
                       [&](std::uint32_t word) { return place(word, [] { return true; }); }) &&
           mend();
}

SearchEnd ChanceSearch::search(std::uint64_t most_steps) {
    const std::uint64_t stop = effort_.spent() + most_steps;
    while (effort_.spent() < stop && !effort_.is_spent()) {
        const std::uint64_t before = effort_.spent();
        if (run()) return SearchEnd::placed;
        // Where a word has no place at all, nothing is spent any more.
        if (effort_.spent() == before) break;
    }
    return SearchEnd::limit;
}

}  // namespace lode
