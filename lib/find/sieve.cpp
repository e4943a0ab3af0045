#include "find/sieve.hpp"

#include <hwy/cache_control.h>

#include <algorithm>
#include <array>
#include <bit>

namespace lode {
namespace {

// So many comparisons a cell are made before a block of rows is given up: some ten times what the longest
// lists bring in grids of random letters. A copy counts as several, so that a block has not too many.
constexpr std::uint64_t comparisons_a_cell = 64;
constexpr std::uint64_t comparisons_a_copy = 8;
constexpr std::uint64_t comparisons_at_least = 16'384;

struct Axis {
    Direction onward;
    Direction backward;
    std::ptrdiff_t step;
};

}  // namespace

Sieve::Sieve(const SoughtWords& words)
    : words_(words),
      short_(words, 3),
      long_(words, 4),
      reach_(static_cast<int>(std::clamp<std::size_t>(words.longest(), 4, key_length)) - 1) {
    for (std::size_t word = 0; word < words.size(); ++word) {
        if (words.length(word) != 1) continue;
        single_letters_.push_back({words.letters(word)[0], static_cast<std::uint32_t>(word)});
        single_codes_ |= std::uint32_t{1} << words.codes(word)[0];
    }
    std::stable_sort(single_letters_.begin(), single_letters_.end(),
                     [](const auto& a, const auto& b) { return a.letter < b.letter; });
}

struct Sieve::Scan {
    const Sieve& sieve;
    const Grid& grid;
    const LineBand& band;
    const Wanted& wanted;
    std::vector<Finding>& found;
    const LetterCode* first_cell;  // of the rows that are scanned
    int first_row;
    std::uint64_t comparisons_left;

    const LetterCode* chunk = nullptr;  // cells that are picked from, of which the first is
    Cell chunk_cell = {};

    // Grid cell of a place in the chunk. In a wide grid that takes no division.
    [[nodiscard]] Cell cell_at(const LetterCode* place) const {
        const auto stride = static_cast<std::uint32_t>(band.stride());
        auto column =
            static_cast<std::uint32_t>(chunk_cell.column) + static_cast<std::uint32_t>(place - chunk);
        if (column < stride) return {chunk_cell.row, static_cast<int>(column)};
        const std::uint32_t rows = column / stride;
        return {chunk_cell.row + static_cast<int>(rows), static_cast<int>(column - rows * stride)};
    }

    // By the letters themselves, where codes do not say enough.
    [[nodiscard]] bool stands_in_grid(std::size_t word, Cell first, Direction direction) {
        const auto letters = sieve.words_.letters(word);
        if (!grid.inside(moved(first, direction, static_cast<int>(letters.size()) - 1))) return false;
        for (std::size_t at = 0; at < letters.size(); ++at)
            if (grid[moved(first, direction, static_cast<int>(at))] != letters[at]) {
                spend(at);
                return false;
            }
        spend(letters.size());
        return true;
    }
    void spend(std::uint64_t comparisons) { comparisons_left -= std::min(comparisons_left, comparisons); }

    // Whether the word's key stands where its first letter would be. From the window outward, so that the
    // border of the grid is not overstepped.
    [[nodiscard]] bool is_key(const WindowedWord& word, const LetterCode* start, std::ptrdiff_t step) {
        const LetterCode* const codes = sieve.words_.codes(word.word);
        const std::ptrdiff_t window = word.window, length = word.length;
        for (std::ptrdiff_t at = window; at < length; ++at)
            if (start[at * step] != codes[at]) return spend(static_cast<std::uint64_t>(at - window)), false;
        for (std::ptrdiff_t at = window; at-- > 0;)
            if (start[at * step] != codes[at]) return spend(static_cast<std::uint64_t>(length - at)), false;
        return spend(word.length), true;
    }

    void compare(const WindowedWord& word, const LetterCode* place, const Axis& axis, std::size_t width) {
        const bool is_reversed = word.is(WindowedWord::reversed);
        const std::ptrdiff_t step = is_reversed ? -axis.step : axis.step;
        // The letter of the word that stands at the place: the window's first, or, met backward, its last.
        const int letter =
            word.window + (is_reversed ? std::min(static_cast<int>(width), int{word.length}) - 1 : 0);
        if (!word.is(WindowedWord::decided) && !is_key(word, place - letter * step, step)) return;

        const Direction direction = is_reversed ? axis.backward : axis.onward;
        const bool is_palindrome = word.is(WindowedWord::palindrome);
        if (!is_palindrome && !wanted.direction(direction)) return;
        const Cell first = moved(cell_at(place), direction, -letter);
        std::size_t length = word.length;
        if (word.is(WindowedWord::unsure)) {
            if (!stands_in_grid(word.word, first, direction)) return;
            length = sieve.words_.length(word.word);
        }
        if (!is_palindrome || wanted.palindrome(direction))
            note(word.word, first, direction, length);
        else if (wanted.palindrome(opposite(direction)))
            note(word.word, moved(first, direction, static_cast<int>(length) - 1), opposite(direction),
                 length);
    }
    void note(std::uint32_t word, Cell first, Direction direction, std::size_t length) {
        found.push_back({packed_place(grid.index(first), direction, length), word});
        spend(comparisons_a_copy);
    }

    // In two rounds, each of which calls what it will need from memory before it needs it.
    bool compare_picked(const WindowIndex& index, const Picked& picked, const Axis& axis) {
        struct Candidate {
            const LetterCode* place;
            std::uint32_t first;
            std::uint32_t last;
        };
        constexpr std::size_t ahead = 8;
        const std::ptrdiff_t behind = static_cast<std::ptrdiff_t>(index.width()) * axis.step;
        std::array<Candidate, picked_cells + 1> candidates;
        std::size_t count = 0;
        for (std::size_t at = 0; at < picked.count; ++at) {
            hwy::Prefetch(&index.slot(picked.rank[std::min(at + ahead, picked.count - 1)]));
            const LetterCode* const place = chunk + picked.place[at];
            const auto& slot = index.slot(picked.rank[at]);
            candidates[count] = {place, slot.first, (&slot)[1].first};
            count += slot.following >> place[behind] & slot.preceding >> place[-axis.step] & 1;
        }
        for (std::size_t which = 0; which < count; ++which) {
            const Candidate& candidate = candidates[which];
            const std::uint32_t later = candidates[std::min(which + ahead, count - 1)].first;
            hwy::Prefetch(&index.word(later));
            hwy::Prefetch(&index.word(later + WindowIndex::words_behind));
            spend(candidate.last - candidate.first);
            const std::uint32_t beside =
                codes_beside(candidate.place, static_cast<std::ptrdiff_t>(index.width()), axis.step);
            for (std::uint32_t at = candidate.first; at < candidate.last; ++at)
                if (const WindowedWord& word = index.word(at); word.fits(beside))
                    compare(word, candidate.place, axis, index.width());
            if (comparisons_left == 0) return false;
        }
        return true;
    }

    bool run(const WindowIndex& index, std::span<const Axis> axes, std::size_t cells) {
        std::array<std::ptrdiff_t, 4> steps;
        std::transform(axes.begin(), axes.end(), steps.begin(), [](const Axis& axis) { return axis.step; });
        std::array<Picked, 4> picked;
        const auto stride = static_cast<std::size_t>(band.stride());
        for (std::size_t at = 0; at < cells; at += picked_cells) {
            chunk = first_cell + at;
            chunk_cell = {first_row + static_cast<int>(at / stride), static_cast<int>(at % stride)};
            loops().pick(chunk, std::min(picked_cells, cells - at), std::span(steps).first(axes.size()),
                         index.filter(), index.bits(), picked.data());
            for (std::size_t axis = 0; axis < axes.size(); ++axis)
                if (!compare_picked(index, picked[axis], axes[axis])) return false;
        }
        return true;
    }
    [[nodiscard]] const FindLoops& loops() const { return band.loops(); }

    void find_single_letters(int first, int last) {
        for (int row = first; row < last; ++row) {
            const LetterCode* const codes = band.row(row);
            for (int column = 0; column < grid.size().columns; ++column) {
                if ((sieve.single_codes_ >> codes[column] & 1) == 0) continue;
                const std::size_t cell = grid.index({row, column});
                const Letter letter = grid.letters()[cell];
                auto single =
                    std::lower_bound(sieve.single_letters_.begin(), sieve.single_letters_.end(), letter,
                                     [](const SingleLetter& a, Letter b) { return a.letter < b; });
                for (; single != sieve.single_letters_.end() && single->letter == letter; ++single) {
                    found.push_back({packed_place(cell, wanted.letter(), 1), single->word});
                    spend(comparisons_a_copy);
                }
                if (comparisons_left == 0) return;
            }
        }
    }
};

bool Sieve::scan(const Grid& grid, const LineBand& band, int first, int last, const Wanted& wanted,
                 std::vector<Finding>& found) const {
    using enum Direction;
    const std::ptrdiff_t stride = band.stride();
    std::array<Axis, 4> axes;
    std::size_t count = 0;
    for (const Axis& axis : {Axis{right, left, 1}, Axis{down, up, stride},
                             Axis{down_right, up_left, stride + 1}, Axis{down_left, up_right, stride - 1}})
        if (wanted.direction(axis.onward) || wanted.direction(axis.backward)) axes[count++] = axis;

    const std::size_t cells = static_cast<std::size_t>(last - first) * static_cast<std::size_t>(stride);
    Scan scan{*this, grid,
              band,  wanted,
              found, band.row(first),
              first, std::max(cells * comparisons_a_cell, comparisons_at_least)};
    if (!single_letters_.empty()) scan.find_single_letters(first, last);
    const auto along = std::span(axes).first(count);
    return (short_.empty() || scan.run(short_, along, cells)) &&
           (long_.empty() || scan.run(long_, along, cells)) && scan.comparisons_left > 0;
}

}  // namespace lode
