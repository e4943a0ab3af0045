// Each move takes a word, one that is out or any at all, and draws a place for it from all there are, a place
// that costs more being the less likely by Boltzmann's law (the heat bath: Creutz, "Monte Carlo study of
// quantized SU(2) gauge theory", Physical Review D 21, 1980; rejection-free, as Bortz, Kalos, Lebowitz, "A
// new algorithm for Monte Carlo simulation of Ising spin systems", Journal of Computational Physics 17,
// 1975). A cell that is newly covered costs something, one that is shared nothing; a cell with another letter
// costs the letters of the words there, which are pushed out (ejection: Glover, "Ejection chains, reference
// structures and alternating path methods", Discrete Applied Mathematics 65, 1996). So words gather where
// they share letters, and room is won above a density of 1. That words in place move too, and not only those
// that are out, is what makes it work: without, it placed hardly any task at 1.1. Failure weights, cooling
// and other powers of a word's length did not help. At densities of 1.0 and 1.1 on 12x12 it places in a fifth
// of the time that the neighbourhood search takes. Where exactly so many cells are to be left over, cells
// that stay uncovered although all words are in place pull more and more (breakout: Morris, "The breakout
// method for escaping from local minima", AAAI 1993): with half the pull, covers of 8x8 and 10x10 with
// nothing left over took four times as long. Copies that nobody meant are looked for when all words are in
// place, and a word on each is lifted again. Judged by tests/tight_test.cpp and tests/demands_test.cpp.

#include "place/heat_bath.hpp"

#include <algorithm>
#include <bit>

namespace lode {
namespace {

constexpr std::size_t most_cells = 10'000;
constexpr std::size_t most_costs = 4'000'000;

constexpr int shared_cell = 4;  // so that what pulls never brings a cost below nothing
constexpr int new_cell = shared_cell + 2;
// With cells to spare, words are to share more of theirs.
constexpr int new_cell_to_spare = shared_cell + 4;
constexpr std::uint32_t per_letter_out = 1;
constexpr std::uint32_t most_value = 48;  // with shared_cell under out_of_grid / most_letters_in_word
constexpr std::uint32_t pinned_value = 1 << 20;
constexpr std::uint8_t most_pull = 4;
// All pulls wear off once in so many times that there is reason for more.
constexpr std::uint32_t rarely = 8;
// Any word, rather than one that is out, in so many moves of so many.
constexpr std::uint32_t any_word = 3;
constexpr std::uint32_t of_moves = 5;

// exp(-cost / 0.7) in units of 1 / 4096.
constexpr std::array<std::uint32_t, CostPlanes::levels> likely{4096, 982, 235, 56, 14, 3};

int longest(const PlaceTask& task) {
    std::size_t most = 1;
    for (const Letters& word : task.words) most = std::max(most, word.size());
    return static_cast<int>(most);
}

// Pinned words are laid once and for all: whether they can be is for the searches that prove.
bool pins_fit(const PlaceTask& task) {
    Grid grid(task.mask);
    for (std::uint32_t word = 0; word < task.demands.pins.size(); ++word) {
        const auto& pin = task.demands.pins[word];
        if (!pin) continue;
        if (!task.directions.contains(pin->direction)) return false;
        Cell cell = pin->first;
        for (const Letter letter : task.words[word]) {
            if (!task.mask.open(cell)) return false;
            if (grid[cell] != empty_cell && (grid[cell] != letter || !task.demands.may_cross())) return false;
            grid[cell] = letter;
            cell = moved(cell, pin->direction, 1);
        }
    }
    return true;
}

// A move costs about as much as so many looks of the sampling search.
std::uint64_t steps_for(const PlaceTask& task) {
    constexpr std::size_t sums_per_step = 640;
    return 8 + task.mask.size().cells() * all_directions.size() * static_cast<std::size_t>(longest(task)) /
                   sums_per_step;
}

}  // namespace

bool HeatBathSearch::suits(const PlaceTask& task) {
    const std::size_t cells = task.mask.size().cells();
    Demands rest = task.demands;
    rest.leftover.reset();
    if (!rest.may_cross()) rest.crossings = {};
    return !task.words.empty() && cells > 0 && !task.directions.empty() && !rest.count_anything() &&
           longest(task) <= CostPlanes::most_letters_in_word && cells <= most_cells &&
           cells * letter_bound(task.words) <= most_costs && pins_fit(task);
}

HeatBathSearch::HeatBathSearch(const PlaceTask& task, Random& random, Effort& effort)
    : task_(task),
      random_(random),
      effort_(effort),
      nesting_(task),
      planes_(task.mask.size(), letter_bound(task.words), longest(task), task.directions),
      steps_per_move_(steps_for(task)),
      grid_(task.mask),
      placed_(task.words.size()),
      failed_(task.words.size(), 0),
      blocks_((task.words.size() + 63) / 64),
      owners_(grid_.size().cells() * blocks_, 0),
      cover_(grid_.size().cells(), 0),
      value_(grid_.size().cells(), 0),
      new_cell_(task.demands.leftover.value_or(0) > 0 ? new_cell_to_spare : new_cell),
      pull_(grid_.size().cells(), 0),
      marked_(blocks_, 0) {
    for (int row = 0; row < grid_.size().rows; ++row)
        for (int column = 0; column < grid_.size().columns; ++column)
            if (task.mask.open({row, column})) set_costs({row, column});
    for (std::uint32_t word = 0; word < task.words.size(); ++word)
        if (!is_pinned(word)) movable_.push_back(word);
    out_ = movable_;
    place_pinned();
}

template <class Visit>
void HeatBathSearch::each_cell(std::uint32_t word, const Placement& placement, Visit&& visit) const {
    Cell cell = placement.first;
    for (const Letter letter : task_.words[word]) {
        visit(cell, letter);
        cell = moved(cell, placement.direction, 1);
    }
}

void HeatBathSearch::place_pinned() {
    for (std::uint32_t word = 0; word < placed_.size(); ++word)
        if (is_pinned(word)) place(word, *task_.demands.pins[word]);
}

Cost HeatBathSearch::cost_of_covering(std::size_t cell) const {
    if (cover_[cell] == 0) return static_cast<Cost>(new_cell_ - pull_[cell]);
    if (value_[cell] >= pinned_value) return CostPlanes::out_of_grid;
    return static_cast<Cost>(shared_cell + static_cast<int>(std::min(value_[cell], most_value)));
}

void HeatBathSearch::set_costs(Cell cell) {
    const std::size_t at = grid_.index(cell);
    planes_.set_all(cell, cost_of_covering(at));
    if (cover_[at] > 0 && task_.demands.may_cross()) planes_.set(cell, grid_[cell], shared_cell);
}

bool HeatBathSearch::leaves_what_is_asked() const {
    return !task_.demands.leftover || covered_ + *task_.demands.leftover == task_.mask.open_count();
}

// Cells that stay uncovered though too few are.
void HeatBathSearch::pull() {
    const bool too_few = covered_ + *task_.demands.leftover < task_.mask.open_count();
    const bool wears_off = random_.below(rarely) == 0;
    for (int row = 0; row < grid_.size().rows; ++row)
        for (int column = 0; column < grid_.size().columns; ++column) {
            const std::size_t at = grid_.index({row, column});
            if (!task_.mask.open({row, column})) continue;
            if (too_few && cover_[at] == 0 && pull_[at] < most_pull) ++pull_[at];
            if (wears_off && pull_[at] > 0) --pull_[at];
            if (cover_[at] == 0) set_costs({row, column});
        }
}

void HeatBathSearch::place(std::uint32_t word, const Placement& placement) {
    const auto letters = static_cast<std::uint32_t>(task_.words[word].size());
    const std::uint32_t value = is_pinned(word) ? pinned_value : per_letter_out * letters;
    each_cell(word, placement, [&](Cell cell, Letter letter) {
        const std::size_t at = grid_.index(cell);
        if (cover_[at]++ == 0) ++covered_;
        value_[at] += value;
        owners(cell)[word / 64] |= Block{1} << (word % 64);
        grid_[cell] = letter;
        set_costs(cell);
    });
    placed_[word] = placement;
}

void HeatBathSearch::lift(std::uint32_t word) {
    const auto letters = static_cast<std::uint32_t>(task_.words[word].size());
    each_cell(word, *placed_[word], [&](Cell cell, Letter) {
        const std::size_t at = grid_.index(cell);
        value_[at] -= per_letter_out * letters;
        owners(cell)[word / 64] &= ~(Block{1} << (word % 64));
        if (--cover_[at] == 0) {
            --covered_;
            grid_[cell] = empty_cell;
        }
        set_costs(cell);
    });
    placed_[word].reset();
    out_.push_back(word);
}

void HeatBathSearch::mark_owners(Cell cell) {
    for (std::size_t block = 0; block < blocks_; ++block) marked_[block] |= owners(cell)[block];
}

void HeatBathSearch::lift_marked() {
    for (std::size_t block = 0; block < blocks_; ++block)
        for (; marked_[block] != 0; marked_[block] &= marked_[block] - 1)
            lift(static_cast<std::uint32_t>(block * 64) +
                 static_cast<std::uint32_t>(std::countr_zero(marked_[block])));
}

void HeatBathSearch::push_out(std::uint32_t word, const Placement& placement) {
    bool any = false;
    each_cell(word, placement, [&](Cell cell, Letter letter) {
        if (grid_[cell] == empty_cell || (grid_[cell] == letter && task_.demands.may_cross())) return;
        mark_owners(cell);
        any = true;
    });
    if (!any) return;
    ++failed_[word];
    lift_marked();
}

// It is out then, and not among those that are listed as such.
std::uint32_t HeatBathSearch::choose_word() {
    if (random_.below(of_moves) < any_word) {
        const std::uint32_t word = movable_[random_.below(static_cast<std::uint32_t>(movable_.size()))];
        if (placed_[word]) lift(word);
        std::swap(*std::find(out_.begin(), out_.end(), word), out_.back());
    } else {
        std::swap(out_[random_.below(static_cast<std::uint32_t>(out_.size()))], out_.back());
    }
    const std::uint32_t word = out_.back();
    out_.pop_back();
    return word;
}

// Nothing where the word fits nowhere.
std::optional<Placement> HeatBathSearch::draw_place(std::uint32_t word) {
    const Cost least = planes_.sum(task_.words[word]);
    if (least >= CostPlanes::out_of_grid) return std::nullopt;
    const auto counts = planes_.count_levels(least);
    std::uint32_t all = 0;
    for (std::size_t level = 0; level < counts.size(); ++level) all += counts[level] * likely[level];
    std::uint32_t drawn = random_.below(all);
    std::size_t level = 0;
    for (; drawn >= counts[level] * likely[level]; ++level) drawn -= counts[level] * likely[level];
    return planes_.with_cost(static_cast<Cost>(least + level), drawn / likely[level]);
}

bool HeatBathSearch::is_spelled(std::uint32_t word, const Placement& placement) const {
    bool spelled = true;
    each_cell(word, placement, [&](Cell cell, Letter letter) { spelled = spelled && grid_[cell] == letter; });
    return spelled;
}

// A word that others hold is drawn to where they spell it already, which is no place of its own: those places
// are barred one after another.
std::optional<Placement> HeatBathSearch::draw_own_place(std::uint32_t word) {
    auto placement = draw_place(word);
    std::vector<Cell> barred;
    while (placement && nesting_.is_inner(word) && is_spelled(word, *placement)) {
        barred.push_back(placement->first);
        planes_.set(placement->first, task_.words[word].front(), CostPlanes::out_of_grid);
        placement = draw_place(word);
    }
    for (const Cell cell : barred) set_costs(cell);
    return placement;
}

void HeatBathSearch::move(std::uint32_t word) {
    const auto placement = draw_own_place(word);
    if (!placement) {
        ++failed_[word];
        out_.push_back(word);
        return;
    }
    push_out(word, *placement);
    place(word, *placement);
}

// Lifts one of the words whose letters the copy is made of, unless all are pinned.
void HeatBathSearch::lift_one_of(const CopyGuard& guard, std::size_t word, const Placement& copy) {
    for (int at = 0; at < guard.length(word); ++at) mark_owners(moved(copy.first, copy.direction, at));
    std::vector<std::uint32_t> on;
    for (const std::uint32_t other : movable_)
        if ((marked_[other / 64] >> (other % 64) & 1) != 0) on.push_back(other);
    std::fill(marked_.begin(), marked_.end(), 0);
    if (!on.empty()) lift(on[random_.below(static_cast<std::uint32_t>(on.size()))]);
}

// With every word in place. Where there are others, a word that is not pinned is lifted, if there is one.
bool HeatBathSearch::has_only_explained_copies() {
    const auto at = [&](std::uint32_t other) { return placed_[other]; };
    const auto find_stray = [&](const CopyGuard& guard) {
        std::optional<std::pair<std::size_t, Placement>> stray;
        guard.everywhere(grid_, [&](std::size_t word, const Placement& copy) {
            if (&guard == &task_.words_guard && nesting_.judge(word, copy, at) == Nesting::Verdict::explained)
                return true;
            stray.emplace(word, copy);
            return false;
        });
        return stray;
    };
    for (const CopyGuard* guard : {&task_.words_guard, &task_.avoided_guard})
        if (const auto stray = find_stray(*guard)) {
            lift_one_of(*guard, stray->first, stray->second);
            return false;
        }
    const auto is_wrong = [&](std::uint32_t word) { return !nesting_.copies_differ(word, at); };
    const auto wrong = std::find_if(movable_.begin(), movable_.end(), is_wrong);
    if (wrong != movable_.end()) {
        lift(*wrong);
        return false;
    }
    for (std::uint32_t word = 0; word < placed_.size(); ++word)
        if (is_pinned(word) && is_wrong(word)) return false;
    return true;
}

SearchEnd HeatBathSearch::search(std::uint64_t most_moves) {
    for (std::uint64_t moves = 0; moves < most_moves; ++moves) {
        if (!effort_.spend(steps_per_move_)) return SearchEnd::limit;
        if (out_.empty() && !leaves_what_is_asked()) {
            pull();
            if (movable_.empty()) return SearchEnd::limit;
            lift(movable_[random_.below(static_cast<std::uint32_t>(movable_.size()))]);
        } else if (out_.empty()) {
            if (has_only_explained_copies()) return SearchEnd::placed;
            if (out_.empty()) return SearchEnd::limit;  // what is wrong is pinned
        }
        move(choose_word());
    }
    return SearchEnd::limit;
}

}  // namespace lode
