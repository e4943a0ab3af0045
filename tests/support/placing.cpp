#include "support/placing.hpp"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <numeric>

#include "support/grids.hpp"
#include "support/naive.hpp"

namespace lode::test {
namespace {

Letters a_to_z_as_itself() {
    Letters same(26);
    std::iota(same.begin(), same.end(), Letter{0});
    return same;
}

using Cells = std::vector<std::pair<int, int>>;

CellSet as_set(const Cells& cells) {
    return {cells.begin(), cells.end()};
}

// One finished grid and what is said about it, rule by rule.
class Judge {
  public:
    Judge(const Task& task, const PlaceResult& result) : task_(task), result_(result), grid_(task.mask) {}

    std::string fault() {
        if (result_.placements.size() != task_.words.size()) return "not every word has a placement";
        for (std::size_t word = 0; word < task_.words.size(); ++word)
            if (auto fault = write(word); !fault.empty()) return fault;
        if (!write_message()) return "the leftover cells are not as many as the message has letters";
        if (rows_of(grid_) != rows_of(result_.grid))
            return "the grid does not hold the letters that it should";
        if (auto fault = fault_in_copies(); !fault.empty()) return fault;
        return fault_in_demands();
    }

  private:
    std::string write(std::size_t word) {
        const auto [first, direction] = result_.placements[word];
        if (!task_.directions.contains(direction)) return "a direction that was not asked for";
        const Letters& letters = task_.words[word];
        cells_.push_back(cells_from(task_.mask.size(), first, direction, static_cast<int>(letters.size())));
        if (cells_.back().empty()) return "a placement leads out of the grid";
        for (std::size_t at = 0; at < letters.size(); ++at) {
            const Cell cell{cells_.back()[at].first, cells_.back()[at].second};
            if (!task_.mask.open(cell)) return "a placement covers a closed cell";
            if (grid_[cell] != empty_cell && grid_[cell] != letters[at]) return "letters that clash";
            grid_[cell] = letters[at];
            ++cover_[cells_.back()[at]];
        }
        return {};
    }

    bool write_message() {
        std::vector<Cell> left;
        for (int row = 0; row < grid_.size().rows; ++row) {
            std::vector<Cell> in_row;
            for (int column = 0; column < grid_.size().columns; ++column)
                if (grid_[{row, column}] == empty_cell) in_row.push_back({row, column});
            if (task_.demands.message_from_right) std::reverse(in_row.begin(), in_row.end());
            left.insert(left.end(), in_row.begin(), in_row.end());
        }
        leftover_ = left.size();
        const Letters& message = task_.demands.message;
        if (message.empty()) return true;
        if (message.size() > left.size()) return false;
        if (message.size() < left.size() && !task_.demands.filler_follows) return false;
        for (std::size_t at = 0; at < message.size(); ++at) grid_[left[at]] = message[at];
        return true;
    }

    std::string fault_in_copies() const {
        const auto listed = task_.listed();
        for (std::size_t word = 0; word < listed.size(); ++word) {
            std::vector<CellSet> expected;
            if (word < cells_.size()) expected.push_back(as_set(cells_[word]));
            for (std::size_t outer = 0; outer < cells_.size(); ++outer) {
                if (outer == word) continue;
                for (const auto start : places_inside(listed[word], listed[outer])) {
                    const auto first = cells_[outer].begin() + static_cast<std::ptrdiff_t>(start);
                    expected.emplace_back(first, first + static_cast<std::ptrdiff_t>(listed[word].size()));
                }
            }
            const std::set<CellSet> different(expected.begin(), expected.end());
            if (different.size() != expected.size()) return "two copies of a word that are one";
            if (naive_copies(grid_, listed[word]) != different) return "a word can be read elsewhere as well";
        }
        for (const auto& word : task_.avoided)
            if (!naive_copies(grid_, word).empty()) return "an avoided word can be read";
        return {};
    }

    [[nodiscard]] bool stands_as(std::size_t word, const Placement& placement) const {
        return same_letters_there(task_, word, result_.placements[word], placement);
    }

    std::string fault_in_demands() const {
        const Demands& demands = task_.demands;
        for (std::size_t word = 0; word < demands.pins.size(); ++word)
            if (demands.pins[word] && !stands_as(word, *demands.pins[word]))
                return "a pinned word stands elsewhere";
        const auto crossings =
            std::count_if(cover_.begin(), cover_.end(), [](const auto& cell) { return cell.second >= 2; });
        if (!demands.crossings.contains(static_cast<std::size_t>(crossings)))
            return "too many crossings or too few";
        if (demands.leftover && leftover_ != *demands.leftover) return "too many cells left over or too few";
        if (demands.spacing > 0 && !are_apart()) return "words that stand too near to each other";
        for (const Share& share : demands.shares) {
            const auto words = std::count_if(
                result_.placements.begin(), result_.placements.end(),
                [&](const Placement& placement) { return share.directions.contains(placement.direction); });
            if (!share.words.contains(static_cast<std::size_t>(words)))
                return "too many words in some directions or too few";
        }
        std::size_t moved = 0;
        for (std::size_t word = 0; word < demands.before.size(); ++word)
            if (demands.before[word] && !stands_as(word, *demands.before[word])) ++moved;
        return moved > demands.most_moved ? "too many words that do not stand as before" : "";
    }

    // As a king walks, from a cell of one word to one of another.
    [[nodiscard]] bool are_apart() const {
        for (std::size_t a = 0; a < cells_.size(); ++a)
            for (std::size_t b = a + 1; b < cells_.size(); ++b)
                for (const auto& [row, column] : cells_[a])
                    for (const auto& [other_row, other_column] : cells_[b])
                        if (std::max(std::abs(row - other_row), std::abs(column - other_column)) <=
                            task_.demands.spacing)
                            return false;
        return true;
    }

    const Task& task_;
    const PlaceResult& result_;
    Grid grid_;
    std::vector<Cells> cells_;  // by word
    std::map<std::pair<int, int>, int> cover_;
    std::size_t leftover_ = 0;
};

std::string described(const Placement& placement) {
    return std::to_string(placement.first.row) + "," + std::to_string(placement.first.column) + "," +
           std::string(name(placement.direction));
}

std::string described(Directions directions) {
    std::string text;
    for (const Direction direction : all_directions)
        if (directions.contains(direction)) text += " " + std::string(name(direction));
    return text;
}

std::string described(const Range& range) {
    const bool open = range.most == Range().most;
    return std::to_string(range.least) + " to " + (open ? "any" : std::to_string(range.most));
}

std::string described(const Demands& demands) {
    std::string text;
    for (std::size_t word = 0; word < demands.pins.size(); ++word)
        if (demands.pins[word])
            text += "; pin " + std::to_string(word) + " " + described(*demands.pins[word]);
    text += "; crossings " + described(demands.crossings) + "; spacing " + std::to_string(demands.spacing);
    if (demands.leftover) text += "; leftover " + std::to_string(*demands.leftover);
    for (const Share& share : demands.shares)
        text += "; share" + described(share.directions) + ": " + described(share.words);
    if (!demands.message.empty())
        text += "; message " + text_of(demands.message) + (demands.message_from_right ? " from right" : "") +
                (demands.filler_follows ? " and filler" : "");
    for (std::size_t word = 0; word < demands.before.size(); ++word)
        if (demands.before[word])
            text += "; before " + std::to_string(word) + " " + described(*demands.before[word]);
    if (!demands.before.empty()) text += "; moved " + std::to_string(demands.most_moved);
    return text;
}

}  // namespace

std::vector<Letters> Task::listed() const {
    auto all = words;
    all.insert(all.end(), inner.begin(), inner.end());
    return all;
}

std::vector<std::size_t> places_inside(const Letters& inner, const Letters& outer) {
    std::vector<std::size_t> starts;
    const Letters turned(inner.rbegin(), inner.rend());
    for (std::size_t start = 0; start + inner.size() <= outer.size(); ++start) {
        const auto first = outer.begin() + static_cast<std::ptrdiff_t>(start);
        const Letters piece(first, first + static_cast<std::ptrdiff_t>(inner.size()));
        if (piece == inner || piece == turned) starts.push_back(start);
    }
    return starts;
}

std::vector<InnerCopy> nested_in(const Task& task) {
    std::vector<InnerCopy> nested;
    const auto listed = task.listed();
    for (std::uint32_t inner = 0; inner < listed.size(); ++inner)
        for (std::uint32_t outer = 0; outer < task.words.size(); ++outer) {
            if (inner == outer) continue;
            for (const auto start : places_inside(listed[inner], listed[outer])) {
                // Read against the outer word it begins with the piece's last letter.
                const bool turned = !std::equal(listed[inner].begin(), listed[inner].end(),
                                                listed[outer].begin() + static_cast<std::ptrdiff_t>(start));
                const std::size_t first = turned ? start + listed[inner].size() - 1 : start;
                nested.push_back({inner, outer, static_cast<int>(first), turned});
            }
        }
    return nested;
}

bool same_letters_there(const Task& task, std::size_t word, const Placement& a, const Placement& b) {
    const Letters& letters = task.words[word];
    const auto on_cells = [&](const Placement& placement) {
        const Cells cells = cells_from(task.mask.size(), placement.first, placement.direction,
                                       static_cast<int>(letters.size()));
        std::map<std::pair<int, int>, Letter> there;
        for (std::size_t at = 0; at < cells.size(); ++at) there[cells[at]] = letters[at];
        return there;
    };
    return on_cells(a) == on_cells(b);
}

TaskHolder::TaskHolder(const Task& task)
    : words_(task.listed(), a_to_z_as_itself()),
      avoided_(task.avoided, a_to_z_as_itself()),
      task_{task.mask,   task.directions, task.words,  words_,       avoided_,
            task.effort, task.progress,   task.cancel, task.demands, nested_in(task)} {}

std::string fault_in(const Task& task, const PlaceResult& result) {
    return Judge(task, result).fault();
}

std::string text_of(const Task& task) {
    std::string text = "mask";
    for (const auto& row : rows_of(Grid(task.mask))) text += " " + row;
    text += "; directions" + described(task.directions) + "; words";
    for (const auto& word : task.words) text += " " + text_of(word);
    text += "; inner";
    for (const auto& word : task.inner) text += " " + text_of(word);
    text += "; avoided";
    for (const auto& word : task.avoided) text += " " + text_of(word);
    return text + described(task.demands);
}

}  // namespace lode::test
