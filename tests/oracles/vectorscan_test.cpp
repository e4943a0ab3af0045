// The finder beside Vectorscan, a general search for many strings at once (Debian's libvectorscan-dev, its
// interface for literals), and std::string::find: each is given the lines of the grid, forward and backward,
// and every means of the finder must find the same copies.

#include <hs.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <memory>
#include <set>
#include <stdexcept>
#include <string>

#include <letterlode/find.hpp>

#include "random/random.hpp"
#include "support/every_means.hpp"
#include "support/lines.hpp"
#include "support/naive.hpp"

using namespace lode;
using namespace lode::test;

namespace {

using FoundCopies = std::set<std::pair<std::size_t, CellSet>>;

// A byte a letter; 0 stays out.
std::string bytes_of(const Letters& letters) {
    std::string bytes;
    for (const Letter letter : letters) bytes += static_cast<char>(letter + 1);
    return bytes;
}

struct ByteLine {
    std::vector<std::pair<int, int>> cells;
    std::string bytes;
};

std::vector<ByteLine> byte_lines_of(const Grid& grid) {
    Alphabet alphabet;
    for (int letter = 0; letter < 254; ++letter) alphabet.add(std::to_string(letter));
    std::vector<ByteLine> lines;
    for (const Line& line : lines_of({alphabet, grid})) {
        ByteLine forward{line.cells, {}};
        for (const auto& [row, column] : line.cells)
            forward.bytes += static_cast<char>(grid[{row, column}] + 1);
        ByteLine backward{{line.cells.rbegin(), line.cells.rend()},
                          {forward.bytes.rbegin(), forward.bytes.rend()}};
        lines.push_back(std::move(forward));
        lines.push_back(std::move(backward));
    }
    return lines;
}

CellSet cells_of(const ByteLine& line, std::size_t first, std::size_t length) {
    const auto begin = line.cells.begin() + static_cast<std::ptrdiff_t>(first);
    return {begin, begin + static_cast<std::ptrdiff_t>(length)};
}

FoundCopies by_vectorscan(const std::vector<ByteLine>& lines, const std::vector<std::string>& words) {
    std::vector<const char*> texts;
    std::vector<std::size_t> lengths;
    std::vector<unsigned> numbers, flags(words.size(), 0);
    for (const auto& word : words) {
        texts.push_back(word.data());
        lengths.push_back(word.size());
        numbers.push_back(static_cast<unsigned>(numbers.size()));
    }
    hs_database_t* database = nullptr;
    hs_compile_error_t* error = nullptr;
    if (hs_compile_lit_multi(texts.data(), flags.data(), numbers.data(), lengths.data(),
                             static_cast<unsigned>(words.size()), HS_MODE_BLOCK, nullptr, &database,
                             &error) != HS_SUCCESS)
        throw std::runtime_error(error->message);
    const std::unique_ptr<hs_database_t, hs_error_t (*)(hs_database_t*)> held(database, hs_free_database);
    hs_scratch_t* scratch = nullptr;
    if (hs_alloc_scratch(database, &scratch) != HS_SUCCESS) throw std::runtime_error("no scratch space");
    const std::unique_ptr<hs_scratch_t, hs_error_t (*)(hs_scratch_t*)> held_scratch(scratch, hs_free_scratch);

    struct Context {
        const ByteLine* line;
        const std::vector<std::string>* words;
        FoundCopies found;
    } context{nullptr, &words, {}};
    const auto note = [](unsigned word, unsigned long long, unsigned long long end, unsigned, void* given) {
        auto& [line, list, found] = *static_cast<Context*>(given);
        const std::size_t length = (*list)[word].size();
        found.emplace(word, cells_of(*line, end - length, length));
        return 0;
    };
    for (const ByteLine& line : lines) {
        context.line = &line;
        if (hs_scan(database, line.bytes.data(), static_cast<unsigned>(line.bytes.size()), 0, scratch, note,
                    &context) != HS_SUCCESS)
            throw std::runtime_error("hs_scan failed");
    }
    return context.found;
}

FoundCopies by_string_find(const std::vector<ByteLine>& lines, const std::vector<std::string>& words) {
    FoundCopies found;
    for (std::size_t word = 0; word < words.size(); ++word)
        for (const ByteLine& line : lines)
            for (auto at = line.bytes.find(words[word]); at != std::string::npos;
                 at = line.bytes.find(words[word], at + 1))
                found.emplace(word, cells_of(line, at, words[word].size()));
    return found;
}

// Words that are there: read out of the grid; some then changed in a letter, and some drawn.
std::vector<Letters> words_for(const Grid& grid, std::size_t count, std::size_t longest,
                               std::uint32_t letters, Random& random) {
    std::set<Letters> words;
    while (words.size() < count) {
        Letters word;
        const Cell first{static_cast<int>(random.below(static_cast<std::uint32_t>(grid.size().rows))),
                         static_cast<int>(random.below(static_cast<std::uint32_t>(grid.size().columns)))};
        const Direction direction = all_directions[random.below(8)];
        const std::size_t length = 1 + random.below(static_cast<std::uint32_t>(longest));
        for (std::size_t at = 0; at < length; ++at) {
            const Cell cell = moved(first, direction, static_cast<int>(at));
            const bool is_read = grid.inside(cell) && grid[cell] < letters && random.below(40) != 0;
            word.push_back(is_read ? grid[cell] : static_cast<Letter>(random.below(letters)));
        }
        words.insert(word);
    }
    return {words.begin(), words.end()};
}

}  // namespace

TEST_CASE("every means of the finder, Vectorscan and std::string::find find the same copies") {
    Random random(515);
    std::size_t copies = 0;
    for (int round = 0; round < 60; ++round) {
        const Size size{1 + static_cast<int>(random.below(70)), 1 + static_cast<int>(random.below(140))};
        const std::uint32_t letters = 4 + random.below(round % 4 == 3 ? 200 : 23);
        Grid grid(size);
        for (int row = 0; row < size.rows; ++row)
            for (int column = 0; column < size.columns; ++column)
                grid[{row, column}] =
                    random.below(30) == 0 ? closed_cell : static_cast<Letter>(random.below(letters));
        const std::size_t most_words = round % 10 == 9 ? 1'500 : 100;
        const std::size_t count = 1 + random.below(static_cast<std::uint32_t>(most_words));
        const auto list = words_for(grid, count, 4 + random.below(36), letters, random);
        std::vector<std::string> words;
        for (const Letters& word : list) words.push_back(bytes_of(word));

        const auto lines = byte_lines_of(grid);
        const FoundCopies expected = by_string_find(lines, words);
        CAPTURE(round, size.rows, size.columns, letters, words.size());
        REQUIRE(by_vectorscan(lines, words) == expected);
        copies += expected.size();
        const Matcher matcher(list);
        for (const Means& means : every_means()) {
            FoundCopies found;
            std::size_t calls = 0;
            const auto note = [&](std::size_t word, const Copy& copy) {
                CellSet cells;
                for (int at = 0; at < copy.length; ++at) {
                    const Cell cell = moved(copy.first, copy.direction, at);
                    cells.emplace(cell.row, cell.column);
                }
                found.emplace(word, std::move(cells));
                ++calls;
                return true;
            };
            matcher.search_by(means.means, grid, note, {});
            CAPTURE(means.name);
            REQUIRE(found == expected);
            REQUIRE(calls == expected.size());
        }
    }
    CHECK(copies > 10'000);
}
