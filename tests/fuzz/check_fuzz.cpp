// Fuzzing (libFuzzer) of what reads a stranger's grid and of the finder: a line of words, then a grid.
// Whatever the bytes, the reader gives a grid or a refusal that says why, and every means of the finder gives
// the copies that a plain look at every place gives.

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <string_view>

#include <letterlode/find.hpp>

#include "support/every_means.hpp"

using namespace lode;
using namespace lode::test;

namespace {

void demand(bool holds, const char* what) {
    if (holds) return;
    std::fprintf(stderr, "%s\n", what);
    std::abort();
}

using Given = std::tuple<int, int, Direction, int, std::size_t>;  // row, column, direction, length, word

std::vector<Given> plain_look(const Grid& grid, const std::vector<Letters>& words) {
    std::vector<Given> seen;
    for (std::size_t number = 0; number < words.size(); ++number) {
        const Letters& word = words[number];
        const auto length = static_cast<int>(word.size());
        const bool is_palindrome = std::equal(word.begin(), word.end(), word.rbegin());
        for (int row = 0; row < grid.size().rows; ++row)
            for (int column = 0; column < grid.size().columns; ++column)
                for (unsigned way = 0; way < (length == 1 ? 1u : is_palindrome ? 4u : 8u); ++way) {
                    const Direction direction = all_directions[way];
                    int at = 0;
                    for (; at < length; ++at) {
                        const Cell cell = moved({row, column}, direction, at);
                        if (!grid.inside(cell) || grid[cell] != word[static_cast<std::size_t>(at)]) break;
                    }
                    if (at == length) seen.emplace_back(row, column, direction, length, number);
                }
    }
    std::sort(seen.begin(), seen.end());
    return seen;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const Segmenter segmenter = std::move(Segmenter::open({})).value();
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    const std::size_t line_end = std::min(text.find('\n'), text.size());
    // The same bytes with a list under the grid: what is read as a list can be spelled or refused.
    if (const auto both = read_grid_with_list(text, "page", segmenter))
        demand(!both->grid.grid.letters().empty(), "a grid with a list and without cells");
    else
        demand(!both.refusal().message.empty(), "a refusal without a message");
    const auto read = read_grid(text.substr(std::min(line_end + 1, text.size())), "grid", segmenter);
    if (!read) {
        demand(!read.refusal().message.empty(), "a refusal without a message");
        return 0;
    }
    const Grid& grid = read->grid;
    demand(grid.letters().size() == grid.size().cells() && !grid.letters().empty(),
           "a grid without its cells");
    for (const Letter letter : grid.letters())
        demand(letter == closed_cell || letter < read->alphabet.size(), "a letter that the alphabet lacks");
    if (grid.size().cells() > 4'096) return 0;
    const std::string written = grid_text(grid, read->alphabet);
    const auto again = read_grid(written, "again", segmenter);
    demand(again && grid_text(again->grid, again->alphabet) == written,
           "a grid that is not read as it was written");

    std::vector<Letters> words;
    std::string_view left = text.substr(0, line_end);
    while (!left.empty() && words.size() < 60) {
        const std::size_t end = std::min(left.find(' '), left.size());
        Letters word;
        for (const auto& letter : segmenter.spell(left.substr(0, end)).letters)
            word.push_back(read->alphabet.find(letter).value_or(static_cast<Letter>(read->alphabet.size())));
        if (!word.empty() && word.size() <= 200) words.push_back(word);
        left.remove_prefix(std::min(end + 1, left.size()));
    }
    const auto expected = plain_look(grid, words);
    const Matcher matcher(words);
    for (const Means& means : every_means()) {
        std::vector<Given> given;
        const auto note = [&](std::size_t word, const Copy& copy) {
            given.emplace_back(copy.first.row, copy.first.column, copy.direction, copy.length, word);
            return true;
        };
        demand(matcher.search_by(means.means, grid, note, {}), "a search that did not come to its end");
        demand(given == expected, means.name.c_str());
    }
    return 0;
}
