#include "place/candidates.hpp"

#include <algorithm>
#include <limits>

#include "place/by_word.hpp"
#include "place/same_copy.hpp"

namespace lode {
namespace {

constexpr Candidate none = std::numeric_limits<Candidate>::max();
constexpr double most_bytes = 256.0 * 1024 * 1024;

bool is_open(const Mask& mask, const Placement& placement, int length) {
    for (int at = 0; at < length; ++at)
        if (!mask.open(moved(placement.first, placement.direction, at))) return false;
    return true;
}

// From above: no placement is sought out for it.
double bytes_needed(const PlaceTask& task) {
    const auto cells = static_cast<double>(task.mask.size().cells());
    double candidates = 0;
    for (const auto& word : task.words) candidates += 8 * cells + 64 + static_cast<double>(word.size()) / 8;
    const double sets = cells * static_cast<double>(letter_bound(task.words)) * candidates / 8;
    const double depths = static_cast<double>(task.words.size() + 2) * candidates / 8;
    return sets + depths;
}

}  // namespace

std::optional<Candidates> Candidates::list(const PlaceTask& task) {
    if (bytes_needed(task) > most_bytes) return std::nullopt;
    return Candidates(task);
}

Candidates::Candidates(const PlaceTask& task)
    : task_(&task),
      columns_(task.mask.size().columns),
      letters_(letter_bound(task.words)),
      covering_(task.mask.size().cells()),
      left_by_(task.mask.size().cells() * letters_) {
    for (std::uint32_t word = 0; word < task.words.size(); ++word) number(word);
}

std::size_t Candidates::key(Cell first, Direction direction) const {
    return (static_cast<std::size_t>(first.row) * static_cast<std::size_t>(columns_) +
            static_cast<std::size_t>(first.column)) *
               8 +
           static_cast<unsigned>(direction);
}

void Candidates::number(std::uint32_t word) {
    const Letters& letters = task_->words[word];
    const int length = static_cast<int>(letters.size());
    const Size size = task_->mask.size();
    const bool palindrome = is_palindrome(letters);
    BlockRun run{static_cast<std::uint32_t>(all_.size()), 0};
    auto& numbers = number_of_.emplace_back(size.cells() * 8, none);

    for (const Direction direction : all_directions) {
        if (!task_->directions.contains(direction)) continue;
        // A palindrome turned round covers the same cells: one of the two is enough, unless directions count.
        if (palindrome && static_cast<unsigned>(direction) >= 4 && task_->demands.shares.empty() &&
            task_->directions.contains(opposite(direction)))
            continue;
        for (int row = 0; row < size.rows; ++row)
            for (int column = 0; column < size.columns; ++column) {
                const Placement placement{{row, column}, direction};
                if (!is_open(task_->mask, placement, length) || !is_wanted(word, placement)) continue;
                const auto candidate = static_cast<Candidate>(placements_.size());
                if (candidate % 64 == 0) {
                    all_.push_back(0);
                    word_of_.push_back(word);
                }
                all_.back() |= Block{1} << (candidate % 64);
                numbers[key(placement.first, direction)] = candidate;
                placements_.push_back(placement);
                first_cell_.push_back(static_cast<std::uint32_t>(cells_.size()));
                for (int at = 0; at < length; ++at) {
                    const Cell cell = moved(placement.first, direction, at);
                    cells_.push_back(static_cast<std::uint32_t>(key(cell, Direction::right) / 8));
                    covering_[cells_.back()].push_back(candidate);
                }
            }
    }
    placements_.resize(all_.size() * 64);
    first_cell_.resize(all_.size() * 64);
    run.count = static_cast<std::uint32_t>(all_.size()) - run.first;
    runs_.push_back(run);
}

bool Candidates::is_wanted(std::uint32_t word, const Placement& placement) const {
    const auto& pins = task_->demands.pins;
    return pins.empty() || !pins[word] || same_copy(task_->words[word], *pins[word], placement);
}

std::optional<Candidate> Candidates::that_covers(std::uint32_t word, const Placement& placement) const {
    const auto& numbers = number_of_[word];
    Candidate found = numbers[key(placement.first, placement.direction)];
    if (found == none && is_palindrome(task_->words[word])) {
        const int last = static_cast<int>(task_->words[word].size()) - 1;
        found =
            numbers[key(moved(placement.first, placement.direction, last), opposite(placement.direction))];
    }
    if (found == none) return std::nullopt;
    return found;
}

void Candidates::make_left_by(std::vector<Block>& set, std::uint32_t cell, Letter letter) const {
    set.assign(all_.size(), ~Block{0});
    if (!task_->demands.may_cross()) return take_away_near(set, cell);
    for (const Candidate candidate : covering_[cell]) {
        const auto covered = cells(candidate);
        const auto at =
            static_cast<std::size_t>(std::find(covered.begin(), covered.end(), cell) - covered.begin());
        if (task_->words[word(candidate)][at] != letter)
            set[candidate / 64] &= ~(Block{1} << (candidate % 64));
    }
}

void Candidates::take_away_near(std::vector<Block>& set, std::uint32_t cell) const {
    const int spacing = task_->demands.spacing;
    const Size size = task_->mask.size();
    const int row = static_cast<int>(cell) / size.columns;
    const int column = static_cast<int>(cell) % size.columns;
    for (int near_row = std::max(0, row - spacing); near_row <= std::min(size.rows - 1, row + spacing);
         ++near_row)
        for (int near_column = std::max(0, column - spacing);
             near_column <= std::min(size.columns - 1, column + spacing); ++near_column)
            for (const Candidate candidate : covering_[key({near_row, near_column}, Direction::right) / 8])
                set[candidate / 64] &= ~(Block{1} << (candidate % 64));
}

const Block* Candidates::not_in(Direction direction) {
    auto& set = not_in_[static_cast<unsigned>(direction)];
    if (set.empty()) {
        set = all_;
        for (std::uint32_t word = 0; word < words(); ++word)
            each_bit(all_.data(), runs_[word], [&](Candidate candidate) {
                if (placements_[candidate].direction == direction)
                    set[candidate / 64] &= ~(Block{1} << (candidate % 64));
            });
    }
    return set.data();
}

const Block* Candidates::at_home() {
    if (!at_home_.empty()) return at_home_.data();
    at_home_ = all_;
    const auto& before = task_->demands.before;
    for (std::uint32_t word = 0; word < words(); ++word) {
        if (before.empty() || !before[word]) continue;
        each_bit(all_.data(), runs_[word], [&](Candidate candidate) {
            if (!same_copy(task_->words[word], *before[word], placements_[candidate]))
                at_home_[candidate / 64] &= ~(Block{1} << (candidate % 64));
        });
    }
    return at_home_.data();
}

void keep_only(Block* set, const Candidates& candidates, Candidate candidate) {
    const BlockRun run = candidates.runs()[candidates.word(candidate)];
    const Block kept = set[candidate / 64] & (Block{1} << (candidate % 64));
    std::fill_n(set + run.first, run.count, Block{0});
    set[candidate / 64] = kept;
}

}  // namespace lode
