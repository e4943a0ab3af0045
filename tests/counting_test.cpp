// What counting lines rules out, against brute force: it may rule out nothing that is in a placement.

#include <set>

#include <catch2/catch.hpp>

#include "place/complete.hpp"
#include "place/counting.hpp"
#include "support/grids.hpp"
#include "support/placing.hpp"
#include "support/slowed.hpp"

using namespace lode;
using namespace lode::test;
using Verdict = LineCounting::Verdict;

namespace {

// The candidates of a set that are in some choice of one for each word so that letters agree: found by trying
// every choice.
class InPlacements {
  public:
    InPlacements(const Task& task, const Candidates& candidates, const std::vector<Block>& set)
        : task_(task), candidates_(candidates), grid_(task.mask.size().cells(), empty_cell) {
        for (std::uint32_t word = 0; word < task.words.size(); ++word)
            each_bit(set.data(), candidates.runs()[word], [&](Candidate candidate) {
                const auto cells = candidates.cells(candidate);
                choices_.resize(task.words.size());
                choices_[word].push_back({candidate, {cells.begin(), cells.end()}});
            });
        choices_.resize(task.words.size());
        for (const auto& of_word : choices_)
            for (const Choice& choice : of_word)
                if (!found_.contains(choice.candidate)) look_for(choice);
    }
    [[nodiscard]] const std::set<Candidate>& found() const { return found_; }

  private:
    struct Choice {
        Candidate candidate;
        std::vector<std::uint32_t> cells;
    };

    void look_for(const Choice& wanted) {
        wanted_ = candidates_.word(wanted.candidate);
        chosen_.clear();
        const auto before = grid_;
        if (write(wanted)) (void)choose_from(0);
        grid_ = before;
    }

    bool write(const Choice& choice) {
        const Letters& letters = task_.words[candidates_.word(choice.candidate)];
        for (std::size_t at = 0; at < letters.size(); ++at) {
            Letter& there = grid_[choice.cells[at]];
            if (there != empty_cell && there != letters[at]) return false;
            there = letters[at];
        }
        chosen_.push_back(choice.candidate);
        return true;
    }

    bool choose_from(std::uint32_t word) {
        if (word == task_.words.size()) {
            found_.insert(chosen_.begin(), chosen_.end());
            return true;
        }
        if (word == wanted_) return choose_from(word + 1);
        for (const Choice& choice : choices_[word]) {
            const auto grid_before = grid_;
            const auto chosen_before = chosen_;
            if (write(choice) && choose_from(word + 1)) return true;
            grid_ = grid_before;
            chosen_ = chosen_before;
        }
        return false;
    }

    const Task& task_;
    const Candidates& candidates_;
    std::vector<Letter> grid_;
    std::vector<std::vector<Choice>> choices_;
    std::uint32_t wanted_ = 0;
    std::vector<Candidate> chosen_;
    std::set<Candidate> found_;
};

std::vector<std::uint32_t> all_words(const Task& task) {
    std::vector<std::uint32_t> words(task.words.size());
    for (std::uint32_t word = 0; word < words.size(); ++word) words[word] = word;
    return words;
}

std::set<Candidate> members(const Candidates& candidates, const std::vector<Block>& set) {
    std::set<Candidate> all;
    for (const BlockRun run : candidates.runs())
        each_bit(set.data(), run, [&](Candidate candidate) { all.insert(candidate); });
    return all;
}

// Words about as long as the lines of a small grid, sets with some candidates missing.
struct Trial {
    Task task;
    std::uint32_t keep_one_in;
};
Trial random_trial(Random& random) {
    const int rows = 2 + static_cast<int>(random.below(3));
    const int columns = 2 + static_cast<int>(random.below(3));
    Trial trial{{Mask({rows, columns})}, 1 + random.below(3)};
    Task& task = trial.task;
    for (int row = 0; row < rows; ++row)
        for (int column = 0; column < columns; ++column)
            if (random.below(12) == 0) task.mask.set({row, column}, false);
    task.directions = Directions();
    for (const Direction direction : all_directions)
        if (random.below(3) != 0) task.directions.insert(direction);
    const std::uint32_t different = 2 + random.below(6);
    for (std::uint32_t count = 2 + random.below(5); count > 0; --count) {
        Letters word(2 + random.below(3));
        for (Letter& letter : word) letter = static_cast<Letter>(random.below(different));
        task.words.push_back(std::move(word));
    }
    return trial;
}

Verdict verdict_on(const Task& task) {
    const TaskHolder holder(task);
    const auto candidates = Candidates::list(holder.task());
    REQUIRE(candidates);
    LineCounting counting(holder.task(), *candidates);
    std::vector<Block> set = candidates->all();
    Verdict verdict = Verdict::unchanged;
    for (Verdict next = Verdict::narrowed; next == Verdict::narrowed;) {
        next = counting.narrow(set.data(), all_words(task));
        if (next != Verdict::unchanged) verdict = next;
    }
    return verdict;
}

}  // namespace

TEST_CASE("counting lines rules out no candidate that brute force finds in a placement") {
    Random random(31);
    std::size_t ruled_out = 0;
    std::size_t right = 0;
    int impossible = 0;
    int possible = 0;
    for (int round = 0; round < 20'000 / slowed; ++round) {
        CAPTURE(round);
        const Trial trial = random_trial(random);
        const Task& task = trial.task;
        const TaskHolder holder(task);
        const auto candidates = Candidates::list(holder.task());
        REQUIRE(candidates);
        std::vector<Block> set = candidates->all();
        for (const Candidate candidate : members(*candidates, set))
            if (random.below(trial.keep_one_in) != 0) set[candidate / 64] &= ~(Block{1} << (candidate % 64));
        const std::set<Candidate> before = members(*candidates, set);
        const std::set<Candidate> needed = InPlacements(task, *candidates, set).found();
        LineCounting counting(holder.task(), *candidates);
        const Verdict verdict = counting.narrow(set.data(), all_words(task));
        if (verdict == Verdict::impossible) {
            ++impossible;
            REQUIRE(needed.empty());
            continue;
        }
        ++possible;
        const std::set<Candidate> after = members(*candidates, set);
        REQUIRE((after == before) == (verdict == Verdict::unchanged));
        REQUIRE(std::includes(before.begin(), before.end(), after.begin(), after.end()));
        REQUIRE(std::includes(after.begin(), after.end(), needed.begin(), needed.end()));
        ruled_out += before.size() - after.size();
        right += before.size() - needed.size();
    }
    CAPTURE(impossible, possible, ruled_out, right);
    CHECK(impossible > 2000 / slowed);
    CHECK(possible > 2000 / slowed);
    CHECK(ruled_out > 1000 / slowed);
}

TEST_CASE("more long words than rows are too many where they read along rows alone") {
    Task task{Mask({3, 4}),
              directions_of({Direction::right, Direction::left}),
              {word_of("ABC"), word_of("DEF"), word_of("GHI")}};
    CHECK(verdict_on(task) == Verdict::unchanged);
    task.words.push_back(word_of("JKL"));
    CHECK(verdict_on(task) == Verdict::impossible);
    // Two letters in common, at the ends, save the room that a fourth word needs.
    task.words.back() = word_of("BCJ");
    CHECK(verdict_on(task) == Verdict::unchanged);
    task.words.back() = word_of("JCB");
    CHECK(verdict_on(task) == Verdict::unchanged);
    // A row of two words is no row of long words.
    task.mask = Mask({3, 6});
    task.words.back() = word_of("JKL");
    CHECK(verdict_on(task) == Verdict::unchanged);
}

TEST_CASE("a word across needs the letters of the words that fill the rows") {
    using enum Direction;
    Task task{Mask({4, 4}),
              directions_of({right, down}),
              {word_of("ABCD"), word_of("EFGH"), word_of("IJKL"), word_of("MNOP")}};
    CHECK(verdict_on(task) == Verdict::unchanged);
    // Across four rows: the letters stand one above another where the rows are in the right order.
    task.words.push_back(word_of("AEIM"));
    CHECK(verdict_on(task) != Verdict::impossible);
    task.words.back() = word_of("MAIE");
    CHECK(verdict_on(task) != Verdict::impossible);
    // No order of the rows has those letters in one column, nor of the columns in one row.
    task.words.back() = word_of("AFKA");
    CHECK(verdict_on(task) == Verdict::impossible);
}

TEST_CASE("counting says nothing about words that lines have room for") {
    Task task{Mask({8, 8}), Directions::all(), {word_of("ABC"), word_of("DEF"), word_of("GHI")}};
    CHECK(verdict_on(task) == Verdict::unchanged);
    task.words = {word_of("ABCDEFGH")};
    CHECK(verdict_on(task) == Verdict::unchanged);
    task.words = {};
    CHECK(verdict_on(task) == Verdict::unchanged);
}

TEST_CASE("a grid with more lines than a set has room for leaves out the shorter of the long words") {
    // Words of 11 letters have 78 lines that they could stand on, of 15 letters 62.
    Task task{Mask({20, 20}), Directions::all(), {}};
    for (Letter first = 0; first < 8; ++first) {
        Letters word(11 + first);
        for (std::size_t at = 0; at < word.size(); ++at)
            word[at] = static_cast<Letter>((first + at * (first + 1)) % 26);
        task.words.push_back(std::move(word));
    }
    CHECK(verdict_on(task) == Verdict::unchanged);
}

TEST_CASE("nine words that fill rows of eight cannot be read in a square of eight, whatever their letters") {
    Task task{Mask({8, 8}), Directions::all(), {}};
    // Nine words of eight letters that have none in common, each with all its letters different.
    for (Letter first = 0; first < 9; ++first) {
        Letters word(8);
        for (Letter at = 0; at < 8; ++at) word[at] = static_cast<Letter>(first * 8 + at);
        task.words.push_back(std::move(word));
    }
    Letters itself(72);
    for (Letter letter = 0; letter < 72; ++letter) itself[letter] = letter;
    const CopyGuard guard(task.words, itself);
    const CopyGuard avoided({}, itself);
    const PlaceTask place_task{task.mask, task.directions, task.words, guard, avoided, 10'000, {}, nullptr};
    auto candidates = Candidates::list(place_task);
    REQUIRE(candidates);
    Effort effort(place_task);
    CompleteSearch search(place_task, *candidates, effort);
    CHECK(search.search(10'000) == SearchEnd::exhausted);
}
