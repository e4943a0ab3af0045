#include "support/placing.hpp"

#include <catch2/catch.hpp>

#include "support/grids.hpp"
#include "support/naive.hpp"

namespace lode::test {
namespace {

Letters a_to_z_as_itself() {
    Letters same(26);
    for (std::size_t letter = 0; letter < same.size(); ++letter) same[letter] = static_cast<Letter>(letter);
    return same;
}

}  // namespace

TaskHolder::TaskHolder(const Task& task)
    : words_(task.words, a_to_z_as_itself()),
      avoided_(task.avoided, a_to_z_as_itself()),
      task_{task.mask, task.directions, task.words,    words_,
            avoided_,  task.effort,     task.progress, task.cancel} {}

std::string fault_in(const Task& task, const PlaceResult& result) {
    if (result.placements.size() != task.words.size()) return "not every word has a placement";
    Grid written(task.mask);
    for (std::size_t word = 0; word < task.words.size(); ++word) {
        const auto [first, direction] = result.placements[word];
        if (!task.directions.contains(direction)) return "a direction that was not asked for";
        const auto cells =
            cells_from(task.mask.size(), first, direction, static_cast<int>(task.words[word].size()));
        if (cells.empty()) return "a placement leads out of the grid";
        for (std::size_t at = 0; at < cells.size(); ++at) {
            const Cell cell{cells[at].first, cells[at].second};
            if (!task.mask.open(cell)) return "a placement covers a closed cell";
            if (written[cell] != empty_cell && written[cell] != task.words[word][at])
                return "letters that clash";
            written[cell] = task.words[word][at];
        }
    }
    if (rows_of(written) != rows_of(result.grid)) return "the grid does not hold the placements' letters";
    for (std::size_t word = 0; word < task.words.size(); ++word) {
        const auto cells =
            cells_from(task.mask.size(), result.placements[word].first, result.placements[word].direction,
                       static_cast<int>(task.words[word].size()));
        if (naive_copies(written, task.words[word]) != std::set<CellSet>{{cells.begin(), cells.end()}})
            return "a word can be read elsewhere as well";
    }
    for (const auto& word : task.avoided)
        if (!naive_copies(written, word).empty()) return "an avoided word can be read";
    return {};
}

bool agrees_with_brute_force(const Task& task, const PlaceResult& result) {
    using End = PlaceResult::End;
    const bool exists = naive_can_place(task.mask, task.directions, task.words, task.avoided);
    const std::string fault = result.end == End::placed ? fault_in(task, result) : std::string();
    if (result.end != (exists ? End::placed : End::impossible) || !fault.empty()) {
        std::vector<std::string> words, avoided;
        for (const auto& word : task.words) words.push_back(text_of(word));
        for (const auto& word : task.avoided) avoided.push_back(text_of(word));
        CAPTURE(rows_of(Grid(task.mask)), words, avoided, static_cast<int>(result.end), exists, fault);
        REQUIRE(result.end == (exists ? End::placed : End::impossible));
        REQUIRE(fault.empty());
    }
    return exists;
}

Letters random_word(Random& random, std::uint32_t letters, std::uint32_t most) {
    Letters word(2 + random.below(most - 1));
    for (Letter& letter : word) letter = static_cast<Letter>(random.below(letters));
    return word;
}

Task random_small_task(Random& random) {
    Task task{Mask({1 + static_cast<int>(random.below(3)), 1 + static_cast<int>(random.below(4))})};
    for (int row = 0; row < task.mask.size().rows; ++row)
        for (int column = 0; column < task.mask.size().columns; ++column)
            task.mask.set({row, column}, random.below(6) != 0);
    task.directions = Directions();
    for (const Direction direction : all_directions)
        if (random.below(2) == 0) task.directions.insert(direction);
    const auto letters = 2 + random.below(3);
    for (std::uint32_t word = 0, words = 1 + random.below(3); word < words; ++word)
        task.words.push_back(random_word(random, letters, 4));
    for (std::uint32_t word = 0, words = random.below(3); word < words; ++word)
        task.avoided.push_back(random_word(random, letters, 3));
    return task;
}

}  // namespace lode::test
