#include "batch/judge.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include <nlohmann/json.hpp>

namespace lode::bench {
namespace {

using Json = nlohmann::json;
using Cell = std::pair<int, int>;

const std::map<std::string, Cell>& steps() {
    static const std::map<std::string, Cell> all{
        {"right", {0, 1}},      {"left", {0, -1}},     {"down", {1, 0}},      {"up", {-1, 0}},
        {"down-right", {1, 1}}, {"up-left", {-1, -1}}, {"up-right", {-1, 1}}, {"down-left", {1, -1}}};
    return all;
}

using Rows = std::vector<std::string>;

bool is_inside(const Rows& rows, Cell cell) {
    return cell.first >= 0 && cell.first < static_cast<int>(rows.size()) && cell.second >= 0 &&
           cell.second < static_cast<int>(rows[0].size());
}

// The cells of every copy of a word: from each cell, in each direction, letter by letter.
std::set<std::vector<Cell>> copies(const Rows& rows, const std::string& word) {
    std::set<std::vector<Cell>> found;
    for (int row = 0; row < static_cast<int>(rows.size()); ++row)
        for (int column = 0; column < static_cast<int>(rows[0].size()); ++column) {
            if (rows[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)] != word[0]) continue;
            for (const auto& [name, step] : steps()) {
                std::vector<Cell> cells;
                Cell at{row, column};
                for (const char letter : word) {
                    if (!is_inside(rows, at) ||
                        rows[static_cast<std::size_t>(at.first)][static_cast<std::size_t>(at.second)] !=
                            letter)
                        break;
                    cells.push_back(at);
                    at = {at.first + step.first, at.second + step.second};
                }
                if (cells.size() != word.size()) continue;
                std::sort(cells.begin(), cells.end());
                found.insert(std::move(cells));
            }
        }
    return found;
}

std::string fault_of_word(const Rows& rows, const std::string& word, const Json& placed) {
    const auto found = copies(rows, word);
    if (found.size() != 1) return word + " stands " + std::to_string(found.size()) + " times";
    const Cell step = steps().at(placed["direction"]);
    std::vector<Cell> cells;
    for (int at = 0; at < static_cast<int>(word.size()); ++at)
        cells.emplace_back(placed["row"].get<int>() - 1 + at * step.first,
                           placed["column"].get<int>() - 1 + at * step.second);
    std::sort(cells.begin(), cells.end());
    return cells == *found.begin() ? "" : word + " stands elsewhere than the puzzle says";
}

}  // namespace

std::string fault_in(const std::string& order, const std::string& result) {
    const Json asked = Json::parse(order), got = Json::parse(result);
    if (got["format"] != "letterlode-puzzle") return "no puzzle: " + got.value("message", "");
    if (got["audit"]["certified"] != true) return "not certified";
    if (got["recipe"]["seed"] != asked["seed"]) return "another order's seed";
    Rows rows;
    for (const auto& row : got["cells"]) {
        rows.emplace_back();
        for (const auto& cell : row) {
            const std::string letter = cell;
            if (letter.size() != 1 || letter[0] < 'A' || letter[0] > 'Z') return "a cell without a letter";
            rows.back() += letter;
        }
    }
    const std::string size = std::to_string(rows.at(0).size()) + "x" + std::to_string(rows.size());
    if (asked["grid"] != size) return "a grid of " + size;
    if (got["words"].size() != asked["words"].size()) return "other words";
    for (std::size_t at = 0; at < asked["words"].size(); ++at) {
        std::string word = asked["words"][at];
        if (got["words"][at]["shown"] != word) return "another word than " + word;
        std::transform(word.begin(), word.end(), word.begin(),
                       [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; });
        if (const auto fault = fault_of_word(rows, word, got["words"][at]["placed"]); !fault.empty())
            return fault;
    }
    return {};
}

}  // namespace lode::bench
