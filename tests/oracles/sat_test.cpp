// What can be placed and what cannot, by a SAT solver (CaDiCaL, package cadical) that knows nothing of the
// searches. The rules are encoded here once more, from their wording: every word has one placement, letters
// agree, a word can be read in the cells of its placement and nowhere else in any of the eight directions, an
// avoided word nowhere.

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <map>

#include <catch2/catch.hpp>

#include "support/grids.hpp"
#include "support/naive.hpp"
#include "support/placing.hpp"
#include "support/scratch_folder.hpp"

using namespace lode;
using namespace lode::test;
using End = PlaceResult::End;

namespace {

using Cells = std::vector<std::pair<int, int>>;

class Formula {
  public:
    explicit Formula(const Task& task) : task_(task) {
        for (const auto& word : task.words) letters_.insert(word.begin(), word.end());
        one_letter_a_cell();
        for (std::size_t word = 0; word < task.words.size(); ++word) one_placement(word);
        for (std::size_t word = 0; word < task.words.size(); ++word) no_other_copy(word);
        for (const auto& word : task.avoided)
            for (const auto& cells : everywhere(word)) clauses_.push_back(not_all(word, cells));
    }

    [[nodiscard]] std::string dimacs() const {
        std::string text =
            "p cnf " + std::to_string(variables_) + " " + std::to_string(clauses_.size()) + "\n";
        for (const auto& clause : clauses_) {
            for (const int literal : clause) text += std::to_string(literal) + " ";
            text += "0\n";
        }
        return text;
    }

  private:
    int holds(std::pair<int, int> cell, Letter letter) {
        int& variable = holds_[{cell, letter}];
        if (variable == 0) variable = ++variables_;
        return variable;
    }

    // The cells of every place in the grid in which a word could be read, in any direction.
    [[nodiscard]] std::vector<Cells> everywhere(const Letters& word) const {
        std::vector<Cells> all;
        const Size size = task_.mask.size();
        for (int row = 0; row < size.rows; ++row)
            for (int column = 0; column < size.columns; ++column)
                for (const Direction direction : all_directions) {
                    Cells cells = cells_from(size, {row, column}, direction, static_cast<int>(word.size()));
                    bool open = !cells.empty();
                    for (const auto& [at_row, at_column] : cells)
                        open = open && task_.mask.open({at_row, at_column});
                    if (open) all.push_back(std::move(cells));
                }
        return all;
    }

    [[nodiscard]] std::vector<int> not_all(const Letters& word, const Cells& cells) {
        std::vector<int> clause;
        for (std::size_t at = 0; at < cells.size(); ++at) clause.push_back(-holds(cells[at], word[at]));
        return clause;
    }

    void one_letter_a_cell() {
        const Size size = task_.mask.size();
        for (int row = 0; row < size.rows; ++row)
            for (int column = 0; column < size.columns; ++column)
                for (auto a = letters_.begin(); a != letters_.end(); ++a)
                    for (auto b = std::next(a); b != letters_.end(); ++b)
                        clauses_.push_back({-holds({row, column}, *a), -holds({row, column}, *b)});
    }

    void one_placement(std::size_t word) {
        std::vector<int> some;
        for (int row = 0; row < task_.mask.size().rows; ++row)
            for (int column = 0; column < task_.mask.size().columns; ++column)
                for (const Direction direction : all_directions) {
                    if (!task_.directions.contains(direction)) continue;
                    const Cells cells = cells_from(task_.mask.size(), {row, column}, direction,
                                                   static_cast<int>(task_.words[word].size()));
                    bool open = !cells.empty();
                    for (const auto& [at_row, at_column] : cells)
                        open = open && task_.mask.open({at_row, at_column});
                    if (!open) continue;
                    const int placed = ++variables_;
                    some.push_back(placed);
                    placed_on_[{word, CellSet(cells.begin(), cells.end())}].push_back(placed);
                    for (std::size_t at = 0; at < cells.size(); ++at)
                        clauses_.push_back({-placed, holds(cells[at], task_.words[word][at])});
                }
        clauses_.push_back(some);
    }

    // Where all letters of a word can be read, a placement of it covers those cells; and no two placements
    // cover different ones.
    void no_other_copy(std::size_t word) {
        std::vector<std::vector<int>> sets;
        for (const auto& [key, placed] : placed_on_)
            if (key.first == word) sets.push_back(placed);
        for (std::size_t a = 0; a < sets.size(); ++a)
            for (std::size_t b = a + 1; b < sets.size(); ++b)
                for (const int one : sets[a])
                    for (const int other : sets[b]) clauses_.push_back({-one, -other});
        for (const auto& cells : everywhere(task_.words[word])) {
            std::vector<int> clause = not_all(task_.words[word], cells);
            const auto own = placed_on_.find({word, CellSet(cells.begin(), cells.end())});
            if (own != placed_on_.end()) clause.insert(clause.end(), own->second.begin(), own->second.end());
            clauses_.push_back(clause);
        }
    }

    const Task& task_;
    std::set<Letter> letters_;
    std::map<std::pair<std::pair<int, int>, Letter>, int> holds_;
    std::map<std::pair<std::size_t, CellSet>, std::vector<int>> placed_on_;
    std::vector<std::vector<int>> clauses_;
    int variables_ = 0;
};

bool solver_finds_a_placement(const Task& task, const std::string& file) {
    std::ofstream(file) << Formula(task).dimacs();
    const int status = std::system(("cadical -q -n '" + file + "' > /dev/null").c_str());
    const int code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    // The exit codes of the SAT competitions: 10 satisfiable, 20 unsatisfiable. A missing solver is a
    // failure, not an answer.
    REQUIRE((code == 10 || code == 20));
    return code == 10;
}

PlaceResult placed(const Task& task) {
    const TaskHolder holder(task);
    Random random(1);
    return place(holder.task(), random);
}

struct Tally {
    int possible = 0;
    int impossible = 0;
    int undecided = 0;

    void count(const Task& task, const std::string& file) {
        const PlaceResult result = placed(task);
        if (result.end == End::unfinished) {
            ++undecided;
            return;
        }
        std::vector<std::string> words;
        for (const auto& word : task.words) words.push_back(text_of(word));
        CAPTURE(rows_of(Grid(task.mask)), words);
        REQUIRE(solver_finds_a_placement(task, file) == (result.end == End::placed));
        if (result.end == End::placed) REQUIRE(fault_in(task, result) == "");
        ++(result.end == End::placed ? possible : impossible);
    }
};

}  // namespace

TEST_CASE("random tasks near the edge of what is possible are decided as a SAT solver decides them") {
    const ScratchFolder folder;
    Random random(606);
    Tally tally;
    constexpr int rounds = 600;
    for (int round = 0; round < rounds; ++round) {
        CAPTURE(round);
        // A square of four or five with words that have about as many letters as it has cells: a little more
        // where words share many letters. Few different letters bring copies by chance; a closed cell and
        // fewer directions bring the rest.
        const int side = 4 + static_cast<int>(random.below(2));
        Task task{Mask({side, side})};
        task.effort = 3'000'000;
        if (random.below(3) == 0)
            task.mask.set({static_cast<int>(random.below(4)), static_cast<int>(random.below(4))}, false);
        if (random.below(3) == 0) task.directions = Directions::forward();
        const std::uint32_t different = 3 + random.below(10);
        const std::size_t wanted = static_cast<std::size_t>(side * side) * (95 + random.below(60)) / 100;
        for (std::size_t letters = 0; letters < wanted;) {
            Letters word(3 + random.below(static_cast<std::uint32_t>(side) - 2));
            for (Letter& letter : word) letter = static_cast<Letter>(random.below(different));
            letters += word.size();
            task.words.push_back(std::move(word));
        }
        for (std::uint32_t count = random.below(3); count > 0; --count)
            task.avoided.push_back({static_cast<Letter>(random.below(different)),
                                    static_cast<Letter>(random.below(different)),
                                    static_cast<Letter>(random.below(different))});
        tally.count(task, folder / "task.cnf");
    }
    CAPTURE(tally.possible, tally.impossible, tally.undecided);
    CHECK(tally.undecided * 50 <= rounds);
    CHECK(tally.possible > 60);
    CHECK(tally.impossible > 60);
}

TEST_CASE("English words in a square of five are decided as a SAT solver decides them") {
    const ScratchFolder folder;
    std::ifstream list(LODE_ENGLISH_WORDS);
    std::vector<std::string> words;
    for (std::string word; std::getline(list, word);)
        if (word.size() >= 4 && word.size() <= 5 &&
            word.find_first_not_of("abcdefghijklmnopqrstuvwxyz") == std::string::npos)
            words.push_back(word);
    REQUIRE(words.size() > 1000);
    Random random(77);
    Tally tally;
    for (int round = 0; round < 40; ++round) {
        CAPTURE(round);
        Task task{Mask({5, 5})};
        task.effort = 20'000'000;
        for (std::uint32_t count = 5 + random.below(4); count > 0; --count) {
            std::string word = words[random.below(static_cast<std::uint32_t>(words.size()))];
            for (char& letter : word) letter = static_cast<char>(letter - 'a' + 'A');
            task.words.push_back(word_of(word));
        }
        tally.count(task, folder / "task.cnf");
    }
    CAPTURE(tally.possible, tally.impossible, tally.undecided);
    CHECK(tally.undecided == 0);
    CHECK(tally.possible > 5);
    CHECK(tally.impossible > 5);
}
