#include "place/tally.hpp"

#include <algorithm>

#include "place/same_copy.hpp"

namespace lode {
namespace {

std::size_t beyond(std::size_t number, std::size_t limit) {
    return number > limit ? number - limit : 0;
}

}  // namespace

Tally::Tally(const PlaceTask& task)
    : task_(task),
      idle_(!task.demands.count_anything()),
      words_to_come_(task.words.size()),
      shares_(task.demands.shares.size(), 0) {
    if (idle_) return;
    open_cells_ = task.mask.open_count();
    for (const auto& word : task.words) letters_to_come_ += word.size();
    cover_.assign(task.mask.size().cells(), 0);
    if (task.demands.spacing > 0) near_.assign(task.mask.size().cells(), 0);
}

bool Tally::is_moved(std::uint32_t word, const Placement& placement) const {
    const auto& before = task_.demands.before;
    return !before.empty() && before[word] && !same_copy(task_.words[word], *before[word], placement);
}

template <class Change>
void Tally::change_near(std::span<const std::uint32_t> cells, Change change) {
    const int spacing = task_.demands.spacing;
    const Size size = task_.mask.size();
    for (const std::uint32_t cell : cells) {
        const int row = static_cast<int>(cell) / size.columns;
        const int column = static_cast<int>(cell) % size.columns;
        for (int by_row = std::max(0, row - spacing); by_row <= std::min(size.rows - 1, row + spacing);
             ++by_row)
            for (int by_column = std::max(0, column - spacing);
                 by_column <= std::min(size.columns - 1, column + spacing); ++by_column)
                change(near_[static_cast<std::size_t>(by_row) * static_cast<std::size_t>(size.columns) +
                             static_cast<std::size_t>(by_column)]);
    }
}

void Tally::add(std::uint32_t word, const Placement& placement, std::span<const std::uint32_t> cells) {
    if (idle_) return;
    --words_to_come_;
    letters_to_come_ -= cells.size();
    for (const std::uint32_t cell : cells) {
        const auto covers = ++cover_[cell];
        covered_ += covers == 1 ? 1 : 0;
        crossings_ += covers == 2 ? 1 : 0;
    }
    for (std::size_t share = 0; share < shares_.size(); ++share)
        if (task_.demands.shares[share].directions.contains(placement.direction)) ++shares_[share];
    if (is_moved(word, placement)) ++moved_;
    if (!near_.empty()) change_near(cells, [](std::uint32_t& near) { ++near; });
}

void Tally::remove(std::uint32_t word, const Placement& placement, std::span<const std::uint32_t> cells) {
    if (idle_) return;
    ++words_to_come_;
    letters_to_come_ += cells.size();
    for (const std::uint32_t cell : cells) {
        const auto covers = --cover_[cell];
        covered_ -= covers == 0 ? 1 : 0;
        crossings_ -= covers == 1 ? 1 : 0;
    }
    for (std::size_t share = 0; share < shares_.size(); ++share)
        if (task_.demands.shares[share].directions.contains(placement.direction)) --shares_[share];
    if (is_moved(word, placement)) --moved_;
    if (!near_.empty()) change_near(cells, [](std::uint32_t& near) { --near; });
}

bool Tally::keeps_apart(std::span<const std::uint32_t> cells) const {
    if (idle_) return true;
    const auto& counts = near_.empty() ? cover_ : near_;
    return task_.demands.may_cross() ||
           std::all_of(cells.begin(), cells.end(), [&](auto cell) { return counts[cell] == 0; });
}

bool Tally::can_leave(std::size_t cells) const {
    if (cells > open_cells_) return false;
    const std::size_t to_cover = open_cells_ - cells;
    return covered_ <= to_cover && to_cover <= covered_ + letters_to_come_;
}

bool Tally::can_spell() const {
    const std::size_t letters = task_.demands.message.size();
    return task_.demands.filler_follows ? covered_ + letters <= open_cells_ : can_leave(letters);
}

bool Tally::is_within_reach() const {
    if (idle_) return true;
    const Demands& demands = task_.demands;
    if (crossings_ > demands.crossings.most || crossings_ + letters_to_come_ < demands.crossings.least)
        return false;
    if (moved_ > demands.most_moved) return false;
    if (demands.leftover && !can_leave(*demands.leftover)) return false;
    if (!demands.message.empty() && !can_spell()) return false;
    std::size_t wanted = 0;
    for (std::size_t share = 0; share < shares_.size(); ++share) {
        const Range& words = demands.shares[share].words;
        if (shares_[share] > words.most) return false;
        wanted += beyond(words.least, shares_[share]);
    }
    return wanted <= words_to_come_;
}

Directions Tally::full_directions() const {
    Directions full;
    for (std::size_t share = 0; share < shares_.size(); ++share)
        if (shares_[share] >= task_.demands.shares[share].words.most)
            for (const Direction direction : all_directions)
                if (task_.demands.shares[share].directions.contains(direction)) full.insert(direction);
    return full;
}

}  // namespace lode
