#include "score/simulated_reader.hpp"

#include <algorithm>

namespace lode {
namespace {

// Forward before backward, as in all_directions; mirrored for a reader from the right.
std::array<Direction, 8> directions_in_order(bool right_to_left) {
    std::array<Direction, 8> order = all_directions;
    if (!right_to_left) return order;
    for (Direction& direction : order) {
        const Cell by = step(direction);
        direction = *std::find_if(all_directions.begin(), all_directions.end(), [&](Direction mirrored) {
            return step(mirrored) == Cell{by.row, -by.column};
        });
    }
    return order;
}

}  // namespace

SimulatedReader::SimulatedReader(const Grid& grid, std::size_t letters, const Reader& reader)
    : grid_(grid),
      letters_(letters),
      reader_(reader),
      order_of_directions_(directions_in_order(reader.right_to_left)),
      row_letters_(static_cast<std::size_t>(grid.size().rows)) {
    for (std::size_t rank = 0; rank < 8; ++rank) {
        const bool is_horizontal = step(order_of_directions_[rank]).row == 0;
        step_cost_[rank] = reader.compare * (is_horizontal ? 100 : reader.stacked) *
                           (rank < 4 ? 100 : reader.backward) / 10'000;
    }
    count_letters();
    find_starts();
}

// Letters sorted by their numbers, rows in order: linear.
void SimulatedReader::count_letters() {
    const auto& cells = grid_.letters();
    std::vector<std::size_t> place(letters_ + 1);
    for (const Letter letter : cells)
        if (letter < letters_) ++place[letter + std::size_t{1}];
    for (std::size_t letter = 1; letter <= letters_; ++letter) place[letter] += place[letter - 1];
    std::vector<std::uint32_t> row_of(place[letters_]);
    auto next = place;
    for (std::size_t cell = 0; cell < cells.size(); ++cell) {
        if (cells[cell] >= letters_) continue;
        const std::size_t row = cell / static_cast<std::size_t>(grid_.size().columns);
        row_of[next[cells[cell]]++] = static_cast<std::uint32_t>(row);
        ++row_letters_[row];
    }
    for (std::size_t letter = 0; letter < letters_; ++letter) {
        in_rows_of_.push_back(in_rows_.size());
        for (std::size_t at = place[letter]; at < place[letter + 1]; ++at)
            if (in_rows_.size() > in_rows_of_.back() && in_rows_.back().row == row_of[at])
                ++in_rows_.back().count;
            else
                in_rows_.push_back({row_of[at], 1});
    }
    in_rows_of_.push_back(in_rows_.size());
    beginnings_ =
        std::count_if(row_letters_.begin(), row_letters_.end(), [](std::int64_t count) { return count > 0; });
}

Letter SimulatedReader::second(const Start& start) const {
    return grid_[moved(cell_at(start.row, start.column), order_of_directions_[start.rank], 1)];
}

// Sorted by second letter and then by first, keeping the order: linear.
void SimulatedReader::find_starts() {
    for (int row = 0; row < grid_.size().rows; ++row)
        for (int column = 0; column < grid_.size().columns; ++column) {
            const Cell cell = cell_at(row, column);
            if (!is_letter(cell)) continue;
            for (std::uint8_t rank = 0; rank < 8; ++rank)
                if (is_letter(moved(cell, order_of_directions_[rank], 1)))
                    starts_.push_back(
                        {static_cast<std::uint16_t>(row), static_cast<std::uint16_t>(column), rank});
        }
    std::vector<Start> sorted(starts_.size());
    const auto sort_by = [&](const auto& letter_of) {
        std::vector<std::size_t> place(letters_ + 1);
        for (const Start& start : starts_) ++place[letter_of(start) + std::size_t{1}];
        for (std::size_t letter = 1; letter <= letters_; ++letter) place[letter] += place[letter - 1];
        for (const Start& start : starts_) sorted[place[letter_of(start)]++] = start;
        starts_.swap(sorted);
    };
    sort_by([this](const Start& start) { return second(start); });
    sort_by([this](const Start& start) { return grid_[cell_at(start.row, start.column)]; });
}

// All that is done at each cell from which the first two letters go on, up to where the word is complete.
void SimulatedReader::visit_starts(const Letters& word) {
    const auto pair_of = [this](const Start& start) {
        return std::pair(grid_[cell_at(start.row, start.column)], second(start));
    };
    const std::pair sought{word[0], word[1]};
    const auto from = std::lower_bound(starts_.begin(), starts_.end(), sought,
                                       [&](const Start& a, const auto& pair) { return pair_of(a) < pair; });
    const auto to = std::upper_bound(from, starts_.end(), sought,
                                     [&](const auto& pair, const Start& a) { return pair < pair_of(a); });
    for (auto start = from; start != to && steps_ <= max_rated_steps; ++start) {
        const Cell first = cell_at(start->row, start->column);
        std::size_t agreed = 2;
        std::int64_t compared = 0;
        for (; agreed < word.size(); ++agreed) {
            const Cell cell = moved(first, order_of_directions_[start->rank], static_cast<int>(agreed));
            if (!is_letter(cell)) break;
            ++compared;
            if (grid_[cell] != word[agreed]) break;
        }
        steps_ += 1 + compared;
        const bool finds = agreed == word.size();
        if (!finds) ++false_starts_[std::min<std::size_t>(agreed, 4) - 2];
        if (visits_.empty() || visits_.back().row != start->row || visits_.back().column != start->column)
            visits_.push_back({start->row, start->column, false, 0});
        Visit& visit = visits_.back();
        if (visit.finds) continue;  // the reader has found it in an earlier direction
        visit.cost += compared * step_cost_[start->rank];
        visit.finds = finds;
    }
}

ReadingCost SimulatedReader::look_for(const Letters& word) {
    const auto rows = static_cast<std::size_t>(grid_.size().rows);
    std::vector<std::int64_t> whole(rows);  // by row: what it costs to read it to its end
    for (std::size_t row = 0; row < rows; ++row) whole[row] = reader_.scan * row_letters_[row];
    visits_.clear();
    if (word[0] < letters_) {
        for (std::size_t at = in_rows_of_[word[0]]; at < in_rows_of_[word[0] + std::size_t{1}]; ++at)
            whole[in_rows_[at].row] += reader_.stop * in_rows_[at].count;
        visit_starts(word);
    }
    for (const Visit& visit : visits_) whole[visit.row] += visit.cost;

    // By row that has a find: what it costs to read it up to the first.
    std::vector<std::pair<std::size_t, std::int64_t>> finds;
    std::size_t at = 0;
    while (at < visits_.size()) {
        const int row = visits_[at].row;
        std::size_t end = at;
        while (end < visits_.size() && visits_[end].row == row) ++end;
        std::int64_t cost = 0;
        for (; at < end; ++at) {
            cost += visits_[at].cost;
            if (!visits_[at].finds) continue;
            for (int column = 0; column <= visits_[at].column; ++column) {
                const Cell cell = cell_at(row, column);
                if (is_letter(cell)) cost += reader_.scan + (grid_[cell] == word[0] ? reader_.stop : 0);
            }
            finds.emplace_back(static_cast<std::size_t>(row), cost);
            break;
        }
        at = end;
    }

    ReadingCost sum{0, !finds.empty()};
    if (finds.empty()) {
        for (const std::int64_t cost : whole) sum.cost += cost;
        sum.cost *= beginnings_;
        return sum;
    }
    // From the last row up: what is still to be read to the next find.
    std::int64_t to_find = finds.front().second;
    for (std::size_t row = 0; row < finds.front().first; ++row) to_find += whole[row];
    auto find = finds.rbegin();
    for (std::size_t row = rows; row-- > 0;) {
        if (find != finds.rend() && find->first == row) {
            to_find = find->second;
            ++find;
        } else {
            to_find += whole[row];
        }
        if (row_letters_[row] > 0) sum.cost += to_find;
    }
    return sum;
}

}  // namespace lode
