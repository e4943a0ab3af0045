#include "support/brute_force.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <map>
#include <stdexcept>

#include "support/naive.hpp"

namespace lode::test {
namespace {

using Bits = std::uint64_t;  // a set of cells

// A line of cells in which something may be read.
struct Line {
    Placement placement;
    std::vector<int> cells;  // as indices, in the order of reading
    Bits bits = 0;
};

bool is_palindrome(const Letters& word) {
    return std::equal(word.begin(), word.end(), word.rbegin());
}

// Nothing where it leads out of the grid.
Line line_of(Size size, const Placement& placement, std::size_t length) {
    Line line{placement, {}, 0};
    for (const auto& [row, column] :
         cells_from(size, placement.first, placement.direction, static_cast<int>(length))) {
        line.cells.push_back(row * size.columns + column);
        line.bits |= Bits{1} << line.cells.back();
    }
    return line;
}

class BruteForce {
  public:
    BruteForce(const Task& task, const std::function<bool(const std::vector<Placement>&)>& visit)
        : task_(task),
          visit_(visit),
          listed_(task.listed()),
          cells_(static_cast<int>(task.mask.size().cells())) {
        letters_.fill(-1);
        if (cells_ > 64) throw std::invalid_argument("too many cells for brute force");
        for (const auto& word : listed_) list_lines(word.size());
        for (const auto& word : task.avoided) list_lines(word.size());
        for (std::size_t word = 0; word < task.words.size(); ++word) list_choices(word);
        for (int row = 0; row < task.mask.size().rows; ++row)
            for (int column = 0; column < task.mask.size().columns; ++column)
                if (task.mask.open({row, column})) open_ |= bit({row, column});
    }

    void run() { (void)place_from(0); }

  private:
    [[nodiscard]] int index(Cell cell) const { return cell.row * task_.mask.size().columns + cell.column; }
    [[nodiscard]] Bits bit(Cell cell) const { return Bits{1} << index(cell); }
    // A palindrome may be read from its other end.
    [[nodiscard]] bool are_one(const Letters& word, const Placement& placement, const Line& line) const {
        return placement == line.placement ||
               (is_palindrome(word) && line_of(task_.mask.size(), placement, word.size()).bits == line.bits);
    }

    void list_lines(std::size_t length) {
        auto& lines = lines_[length];
        if (!lines.empty()) return;
        for (int row = 0; row < task_.mask.size().rows; ++row)
            for (int column = 0; column < task_.mask.size().columns; ++column)
                for (const Direction direction : all_directions) {
                    const auto cells =
                        cells_from(task_.mask.size(), {row, column}, direction, static_cast<int>(length));
                    if (!cells.empty() && std::all_of(cells.begin(), cells.end(), [&](const auto& cell) {
                            return task_.mask.open({cell.first, cell.second});
                        }))
                        lines.push_back(line_of(task_.mask.size(), {{row, column}, direction}, length));
                }
    }

    void list_choices(std::size_t word) {
        const auto& pins = task_.demands.pins;
        auto& choices = choices_.emplace_back();
        for (const Line& line : lines_[task_.words[word].size()])
            if (task_.directions.contains(line.placement.direction) &&
                (pins.empty() || !pins[word] || are_one(task_.words[word], *pins[word], line)))
                choices.push_back(&line);
    }

    // False where visit wants no more.
    bool place_from(std::size_t word) {
        if (word == choices_.size()) return !is_solution() || tell();
        const Letters& letters = task_.words[word];
        for (const Line* choice : choices_[word]) {
            const auto before = letters_;
            bool fits = true;
            for (std::size_t at = 0; at < letters.size() && fits; ++at) {
                int& there = letters_[static_cast<std::size_t>(choice->cells[at])];
                fits = there == -1 || there == letters[at];
                there = letters[at];
            }
            placed_.push_back(choice);
            const bool more = !fits || place_from(word + 1);
            placed_.pop_back();
            letters_ = before;
            if (!more) return false;
        }
        return true;
    }

    bool tell() {
        std::vector<Placement> placements;
        for (const Line* line : placed_) placements.push_back(line->placement);
        return visit_(placements);
    }

    bool is_solution() {
        Bits once = 0;
        Bits twice = 0;
        for (const Line* line : placed_) {
            twice |= once & line->bits;
            once |= line->bits;
        }
        const Demands& demands = task_.demands;
        const auto crossings = static_cast<std::size_t>(std::popcount(twice));
        if (crossings < demands.crossings.least || crossings > demands.crossings.most) return false;
        const auto left = static_cast<std::size_t>(std::popcount(open_ & ~once));
        if (demands.leftover && left != *demands.leftover) return false;
        if (demands.filler_follows ? left < demands.message.size()
                                   : !demands.message.empty() && left != demands.message.size())
            return false;
        if (!shares_are_right() || !enough_stayed() || !are_apart()) return false;

        const auto before = letters_;
        spell_message(once);
        const bool right = copies_are_right();
        letters_ = before;
        return right;
    }

    [[nodiscard]] bool shares_are_right() const {
        for (const Share& share : task_.demands.shares) {
            std::size_t words = 0;
            for (const Line* line : placed_) words += share.directions.contains(line->placement.direction);
            if (words < share.words.least || words > share.words.most) return false;
        }
        return true;
    }

    [[nodiscard]] bool enough_stayed() const {
        const auto& before = task_.demands.before;
        std::size_t moved = 0;
        for (std::size_t word = 0; word < before.size(); ++word)
            moved += before[word] && !are_one(task_.words[word], *before[word], *placed_[word]);
        return before.empty() || moved <= task_.demands.most_moved;
    }

    // A word's cells, and all that lie within the spacing of them, hold nothing of another.
    [[nodiscard]] bool are_apart() const {
        const int spacing = task_.demands.spacing;
        if (spacing == 0) return true;
        for (std::size_t word = 0; word < placed_.size(); ++word) {
            Bits around = 0;
            const int columns = task_.mask.size().columns;
            for (const int cell : placed_[word]->cells)
                for (int down = -spacing; down <= spacing; ++down)
                    for (int across = -spacing; across <= spacing; ++across) {
                        const Cell near{cell / columns + down, cell % columns + across};
                        if (task_.mask.inside(near)) around |= bit(near);
                    }
            for (std::size_t other = 0; other < placed_.size(); ++other)
                if (other != word && (placed_[other]->bits & around) != 0) return false;
        }
        return true;
    }

    void spell_message(Bits covered) {
        const Size size = task_.mask.size();
        std::size_t next = 0;
        for (int at = 0; at < cells_ && next < task_.demands.message.size(); ++at) {
            const int row = at / size.columns;
            const int column =
                task_.demands.message_from_right ? size.columns - 1 - at % size.columns : at % size.columns;
            if ((open_ & ~covered & bit({row, column})) == 0) continue;
            letters_[static_cast<std::size_t>(index({row, column}))] = task_.demands.message[next++];
        }
    }

    [[nodiscard]] bool reads(const Line& line, const Letters& word) const {
        for (std::size_t at = 0; at < word.size(); ++at)
            if (letters_[static_cast<std::size_t>(line.cells[at])] != word[at]) return false;
        return true;
    }

    bool copies_are_right() {
        for (const auto& word : task_.avoided)
            for (const Line& line : lines_[word.size()])
                if (reads(line, word)) return false;
        for (std::size_t word = 0; word < listed_.size(); ++word) {
            std::vector<Bits> copies;
            for (const Line& line : lines_[listed_[word].size()])
                if (reads(line, listed_[word])) copies.push_back(line.bits);
            std::sort(copies.begin(), copies.end());
            copies.erase(std::unique(copies.begin(), copies.end()), copies.end());
            std::vector<Bits> expected = expected_of(word);
            std::sort(expected.begin(), expected.end());
            // Two that are one do not count as two.
            if (copies != expected) return false;
        }
        return true;
    }

    std::vector<Bits> expected_of(std::size_t word) const {
        std::vector<Bits> expected;
        if (word < placed_.size()) expected.push_back(placed_[word]->bits);
        for (std::size_t outer = 0; outer < placed_.size(); ++outer) {
            if (outer == word) continue;
            for (const std::size_t start : places_inside(listed_[word], listed_[outer])) {
                Bits bits = 0;
                for (std::size_t at = start; at < start + listed_[word].size(); ++at)
                    bits |= Bits{1} << placed_[outer]->cells[at];
                expected.push_back(bits);
            }
        }
        return expected;
    }

    const Task& task_;
    const std::function<bool(const std::vector<Placement>&)>& visit_;
    std::vector<Letters> listed_;
    int cells_;
    std::map<std::size_t, std::vector<Line>> lines_;  // by length: on open cells, in all eight directions
    std::vector<std::vector<const Line*>> choices_;   // by word
    std::vector<const Line*> placed_;                 // by word
    std::array<int, 64> letters_;                     // by cell; -1 where none is
    Bits open_ = 0;
};

}  // namespace

void every_solution(const Task& task, const std::function<bool(const std::vector<Placement>&)>& visit) {
    BruteForce(task, visit).run();
}

bool has_solution(const Task& task) {
    bool found = false;
    every_solution(task, [&](const auto&) {
        found = true;
        return false;
    });
    return found;
}

SolutionKey key_of(const Task& task, const std::vector<Placement>& placements) {
    SolutionKey key;
    for (std::size_t word = 0; word < placements.size(); ++word) {
        const bool either = is_palindrome(task.words[word]) && task.demands.shares.empty();
        key.emplace_back(line_of(task.mask.size(), placements[word], task.words[word].size()).bits,
                         either ? -1 : static_cast<int>(placements[word].direction));
    }
    return key;
}

std::set<SolutionKey> all_solutions(const Task& task) {
    std::set<SolutionKey> all;
    every_solution(task, [&](const auto& placements) {
        all.insert(key_of(task, placements));
        return true;
    });
    return all;
}

bool naive_can_place(const Mask& mask, Directions directions, const std::vector<Letters>& words,
                     const std::vector<Letters>& avoided) {
    return has_solution(Task{mask, directions, words, avoided});
}

}  // namespace lode::test
