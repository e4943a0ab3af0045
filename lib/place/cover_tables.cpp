#include "place/cover_tables.hpp"

#include <algorithm>
#include <limits>

namespace lode {
namespace {

constexpr std::size_t axes = 4;
constexpr std::uint32_t none = std::numeric_limits<std::uint32_t>::max();

std::size_t axis_of(const Candidates& candidates, Candidate candidate) {
    return static_cast<unsigned>(candidates.placement(candidate).direction) % axes;
}

template <class Visit>
void each_candidate(const Candidates& candidates, Visit&& visit) {
    for (std::uint32_t word = 0; word < candidates.words(); ++word)
        each_bit(candidates.all().data(), candidates.runs()[word],
                 [&](Candidate candidate) { visit(word, candidate); });
}

// For each letter that a word has, its number; for others none.
std::vector<std::uint32_t> numbers_of_letters(const std::vector<Letters>& words) {
    std::vector<std::uint32_t> numbers;
    for (const Letters& word : words)
        for (const Letter letter : word) {
            if (letter >= numbers.size()) numbers.resize(letter + std::size_t{1}, none);
            numbers[letter] = 0;
        }
    std::uint32_t next = 0;
    for (std::uint32_t& number : numbers)
        if (number != none) number = next++;
    return numbers;
}

std::size_t count_numbers(const std::vector<std::uint32_t>& numbers) {
    return numbers.size() - static_cast<std::size_t>(std::count(numbers.begin(), numbers.end(), none));
}

}  // namespace

double CoverTables::bytes_needed(const PlaceTask& task) {
    const auto cells = static_cast<double>(task.mask.size().cells());
    const auto words = static_cast<double>(task.words.size());
    const auto longest = static_cast<double>(std::max(task.mask.size().rows, task.mask.size().columns));
    const auto letters = static_cast<double>(count_numbers(numbers_of_letters(task.words)));
    // A line has at most two candidates of a word for each of its cells, a set eight for each cell.
    const double blocks_of_line = longest * words * 2 / 64 + 1;
    const double blocks = cells * words * 8 / 64 + 6 * longest;
    return 8 * (cells * axes * blocks_of_line * (letters + 1) + words * blocks);
}

CoverTables::CoverTables(const PlaceTask& task, const Candidates& candidates, bool may_share_cells)
    : number_of_(numbers_of_letters(task.words)) {
    letters_ = count_numbers(number_of_);
    number_lines(task, candidates);
    list_parts(task);
    fill(task, candidates, may_share_cells);
}

// The line of a cell along an axis is named by its first open cell.
void CoverTables::number_lines(const PlaceTask& task, const Candidates& candidates) {
    const Size size = task.mask.size();
    line_at_.assign(size.cells() * axes, none);
    for (std::size_t axis = 0; axis < axes; ++axis) {
        const Direction direction = all_directions[axis];
        for (int row = 0; row < size.rows; ++row)
            for (int column = 0; column < size.columns; ++column) {
                if (task.mask.open(moved({row, column}, direction, -1))) continue;
                for (Cell cell{row, column}; task.mask.open(cell); cell = moved(cell, direction, 1)) {
                    const auto index = static_cast<std::size_t>(cell.row * size.columns + cell.column);
                    line_at_[index * axes + axis] = static_cast<std::uint32_t>(lines_.size());
                }
                lines_.emplace_back();
            }
    }
    const auto line_of = [&](Candidate candidate) -> Line& {
        return lines_[line_at_[candidates.cells(candidate)[0] * axes + axis_of(candidates, candidate)]];
    };
    each_candidate(candidates, [&](std::uint32_t, Candidate candidate) { ++line_of(candidate).count; });
    std::uint32_t blocks = 0;
    std::vector<std::uint32_t> next;
    for (Line& line : lines_) {
        line.first = blocks;
        next.push_back(blocks * 64);
        line.count = (line.count + 63) / 64;
        blocks += line.count;
    }
    numbers_.assign(candidates.blocks() * 64, none);
    candidates_.assign(std::size_t{blocks} * 64, none);
    each_candidate(candidates, [&](std::uint32_t, Candidate candidate) {
        const auto line = static_cast<std::size_t>(&line_of(candidate) - lines_.data());
        numbers_[candidate] = next[line]++;
        candidates_[numbers_[candidate]] = candidate;
    });
    all_.assign(blocks, 0);
    of_word_.assign(std::size_t{blocks} * candidates.words(), 0);
}

void CoverTables::list_parts(const PlaceTask& task) {
    const std::size_t cells = task.mask.size().cells();
    part_at_.assign(cells * axes, none);
    std::uint32_t at = 0;
    for (std::size_t cell = 0; cell < cells; ++cell) {
        first_part_.push_back(static_cast<std::uint32_t>(parts_.size()));
        for (std::size_t axis = 0; axis < axes; ++axis) {
            const std::uint32_t line = line_at_[cell * axes + axis];
            if (line == none || lines_[line].count == 0) continue;
            part_at_[cell * axes + axis] = static_cast<std::uint32_t>(parts_.size());
            parts_.push_back({lines_[line].first, lines_[line].count, at});
            at += lines_[line].count;
        }
    }
    first_part_.push_back(static_cast<std::uint32_t>(parts_.size()));
    covering_.assign(at, 0);
    sharing_.assign(std::size_t{at} * letters_, 0);
}

void CoverTables::fill(const PlaceTask& task, const Candidates& candidates, bool may_share_cells) {
    each_candidate(candidates, [&](std::uint32_t word, Candidate candidate) {
        const std::uint32_t block = numbers_[candidate] / 64;
        const Block bit = Block{1} << (numbers_[candidate] % 64);
        all_[block] |= bit;
        of_word_[std::size_t{word} * blocks() + block] |= bit;
        const auto cells = candidates.cells(candidate);
        const std::size_t axis = axis_of(candidates, candidate);
        for (std::size_t index = 0; index < cells.size(); ++index) {
            const Part& part = parts_[part_at_[cells[index] * axes + axis]];
            covering_[part.at + block - part.first] |= bit;
            if (!may_share_cells) continue;
            const std::size_t letter = number_of_[task.words[word][index]];
            sharing_[part.at * letters_ + letter * part.count + block - part.first] |= bit;
        }
    });
}

}  // namespace lode
