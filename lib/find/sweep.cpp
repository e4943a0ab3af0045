#include "find/sweep.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace lode {
namespace {

// 64 MB.
constexpr std::size_t most_states_in_table = std::size_t{1} << 19;

}  // namespace

Sweep::Sweep(const SoughtWords& words) : words_(words) {
    add_words();
    link();
}

// Words in order, each backward, so that a word shares its first states with the one before it.
void Sweep::add_words() {
    std::vector<std::uint32_t> order(words_.size());
    std::iota(order.begin(), order.end(), 0u);
    std::stable_sort(order.begin(), order.end(), [&](auto a, auto b) {
        const auto one = words_.letters(a), other = words_.letters(b);
        return std::lexicographical_compare(one.rbegin(), one.rend(), other.rbegin(), other.rend());
    });

    struct Made {
        State parent;
        Letter letter;
    };
    std::vector<Made> made{{start, 0}};
    std::vector<State> end_of(order.size());
    std::vector<State> path{start};
    std::span<const Letter> before;
    for (std::size_t at = 0; at < order.size(); ++at) {
        const auto word = words_.letters(order[at]);
        const auto shared = std::mismatch(word.rbegin(), word.rend(), before.rbegin(), before.rend()).first;
        path.resize(static_cast<std::size_t>(shared - word.rbegin()) + 1);
        for (auto letter = shared; letter != word.rend(); ++letter) {
            made.push_back({path.back(), *letter});
            path.push_back(static_cast<State>(made.size() - 1));
        }
        end_of[at] = path.back();
        before = word;
    }

    // Both lists by counting: what comes first in `made` and in `order` stays first.
    const std::size_t states = made.size();
    first_edge_.assign(states + 1, 0);
    for (State state = 1; state < states; ++state) ++first_edge_[made[state].parent + 1];
    std::partial_sum(first_edge_.begin(), first_edge_.end(), first_edge_.begin());
    edges_.resize(states - 1);
    auto next_edge = first_edge_;
    for (State state = 1; state < states; ++state)
        edges_[next_edge[made[state].parent]++] = {made[state].letter, state};

    first_ending_.assign(states + 1, 0);
    for (const State state : end_of) ++first_ending_[state + 1];
    std::partial_sum(first_ending_.begin(), first_ending_.end(), first_ending_.begin());
    ending_.resize(order.size());
    auto next_ending = first_ending_;
    for (std::size_t at = 0; at < order.size(); ++at) ending_[next_ending[end_of[at]]++] = order[at];
}

void Sweep::link() {
    const std::size_t states = first_edge_.size() - 1;
    for (std::uint32_t at = 0; at < first_edge_[1]; ++at) {
        if (roots_.size() <= edges_[at].letter) roots_.resize(edges_[at].letter + std::size_t{1}, start);
        roots_[edges_[at].letter] = edges_[at].to;
    }
    shorter_.assign(states, start);
    speaking_.assign(states, start);
    std::vector<State> by_length{start};
    by_length.reserve(states);
    for (std::size_t at = 0; at < by_length.size(); ++at) {
        const State state = by_length[at];
        for (std::uint32_t edge = first_edge_[state]; edge < first_edge_[state + 1]; ++edge) {
            const auto [letter, to] = edges_[edge];
            if (state != start) shorter_[to] = next(shorter_[state], letter);
            speaking_[to] = first_ending_[to] < first_ending_[to + 1] ? to : speaking_[shorter_[to]];
            by_length.push_back(to);
        }
    }
    if (words_.is_exact() && states <= most_states_in_table) tabulate(by_length);
}

// A state has the transitions of the shorter one, but for its own.
void Sweep::tabulate(std::span<const State> by_length) {
    std::vector<State> table(by_length.size() * code_count, start);
    for (const State state : by_length) {
        State* const row = table.data() + state * code_count;
        if (state != start) std::copy_n(table.data() + shorter_[state] * code_count, code_count, row);
        for (std::uint32_t edge = first_edge_[state]; edge < first_edge_[state + 1]; ++edge)
            row[words_.code_of()[edges_[edge].letter]] = edges_[edge].to;
    }
    table_ = std::move(table);
}

// The start where there is none.
Sweep::State Sweep::child(State state, Letter letter) const {
    if (state == start) return letter < roots_.size() ? roots_[letter] : start;
    auto first = edges_.begin() + first_edge_[state];
    auto last = edges_.begin() + first_edge_[state + 1];
    if (last - first > 8)
        first = std::lower_bound(first, last, letter,
                                 [](const Edge& edge, Letter sought) { return edge.letter < sought; });
    for (; first != last && first->letter <= letter; ++first)
        if (first->letter == letter) return first->to;
    return start;
}

Sweep::State Sweep::next(State state, Letter letter) const {
    if (!table_.empty()) {
        const auto code_of = words_.code_of();
        return table_[state * code_count + (letter < code_of.size() ? code_of[letter] : 0)];
    }
    for (;; state = shorter_[state])
        if (const State to = child(state, letter); to != start || state == start) return to;
}

void Sweep::cross(const Grid& grid, int row, Direction direction, const Row& after, Row& here) const {
    const int columns = grid.size().columns;
    const int across = step(direction).column;
    const Letter* const letters = grid.letters().data() + grid.index({row, 0});
    for (int column = 0; column < columns; ++column) {
        const int from = column + across;
        const State state = from < 0 || from >= columns ? start : after[static_cast<std::size_t>(from)];
        here[static_cast<std::size_t>(column)] = next(state, letters[column]);
    }
}

void Sweep::run_along(const Grid& grid, int row, Direction direction, Row& here) const {
    const int columns = grid.size().columns;
    const Letter* const letters = grid.letters().data() + grid.index({row, 0});
    State state = start;
    for (int read = 0; read < columns; ++read) {
        const int column = direction == Direction::left ? read : columns - 1 - read;
        here[static_cast<std::size_t>(column)] = state = next(state, letters[column]);
    }
}

// The words of a state get shorter from one speaking state to the next; they are given the other way round.
bool Sweep::give(State state, Cell first, Direction direction, const Wanted& wanted, Giver& giver) const {
    std::vector<State> speaking;
    for (State at = speaking_[state]; at != start; at = speaking_[shorter_[at]]) speaking.push_back(at);
    while (!speaking.empty()) {
        const State at = speaking.back();
        speaking.pop_back();
        for (std::uint32_t ending = first_ending_[at]; ending < first_ending_[at + 1]; ++ending) {
            const std::uint32_t word = ending_[ending];
            const std::size_t length = words_.length(word);
            const bool is_given = length == 1                  ? direction == wanted.letter()
                                  : words_.is_palindrome(word) ? wanted.palindrome(direction)
                                                               : true;
            if (is_given && !giver.give(word, {first, direction, static_cast<int>(length)})) return false;
        }
    }
    return true;
}

bool Sweep::run(const Grid& grid, int first_row, int last_row, const Wanted& wanted, Giver& giver) const {
    const auto [rows, columns] = grid.size();
    const auto width = static_cast<std::size_t>(columns);
    // A state says nothing of letters farther away than the longest word reaches.
    const auto reach = static_cast<int>(std::min(words_.longest(), static_cast<std::size_t>(rows))) - 1;
    const int block = std::max(16, static_cast<int>(std::sqrt(last_row - first_row)));
    const auto blocks = static_cast<std::size_t>((last_row - first_row + block - 1) / block);
    const auto first_of = [&](std::size_t which) { return first_row + static_cast<int>(which) * block; };

    // By direction: the states that are kept, of the first row behind each block, and those of the block at
    // hand.
    std::array<std::vector<Row>, 8> behind, of_block;
    std::array<Row, 8> here, before;
    for (const Direction direction : all_directions) {
        if (!wanted.direction(direction)) continue;
        const auto at = static_cast<std::size_t>(direction);
        here[at].assign(width, start);
        before[at].assign(width, start);
        if (step(direction).row <= 0) continue;
        behind[at].resize(blocks);
        of_block[at].assign(static_cast<std::size_t>(block), Row(width, start));
        Row above(width, start), below(width, start);
        std::size_t next_block = blocks;
        for (int row = std::min(rows, last_row + reach); row > first_row; --row) {
            // `below` holds the states of `row`.
            if (next_block > 0 && row == std::min(last_row, first_of(next_block)))
                behind[at][--next_block] = below;
            if (giver.is_cancelled()) return false;
            cross(grid, row - 1, direction, below, above);
            above.swap(below);
        }
    }
    for (int row = std::max(0, first_row - reach); row < last_row; ++row) {
        if (row >= first_row && !giver.arrive_at(row)) return false;
        const auto this_block = static_cast<std::size_t>(std::max(0, row - first_row) / block);
        const auto in_block = [&](int of_row) {
            return static_cast<std::size_t>(of_row - first_of(this_block));
        };
        for (const Direction direction : all_directions) {
            if (!wanted.direction(direction)) continue;
            const auto at = static_cast<std::size_t>(direction);
            const Cell by = step(direction);
            if (by.row < 0) {
                before[at].swap(here[at]);
                cross(grid, row, direction, before[at], here[at]);
            } else if (row < first_row) {
                continue;
            } else if (by.row == 0) {
                run_along(grid, row, direction, here[at]);
            } else {
                if (row == first_of(this_block)) {
                    const Row* below = &behind[at][this_block];
                    for (int made = std::min(last_row, row + block) - 1; made >= row; --made) {
                        Row& onto = of_block[at][in_block(made)];
                        cross(grid, made, direction, *below, onto);
                        below = &onto;
                    }
                }
                here[at].swap(of_block[at][in_block(row)]);
            }
        }
        if (row < first_row) continue;
        for (int column = 0; column < columns; ++column)
            for (const Direction direction : all_directions) {
                if (!wanted.direction(direction)) continue;
                const State state =
                    here[static_cast<std::size_t>(direction)][static_cast<std::size_t>(column)];
                if (speaking_[state] != start && !give(state, {row, column}, direction, wanted, giver))
                    return false;
            }
    }
    return true;
}

}  // namespace lode
