// Words inside words, against brute force and against a published automaton.

#include <catch2/catch.hpp>
#include <map>
#include <set>

#include "puzzle/inner_words.hpp"
#include "random/random.hpp"
#include "support/grids.hpp"
#include "support/naive.hpp"

using namespace lode;
using namespace lode::test;

namespace {

using Pairs = std::map<std::pair<std::size_t, std::size_t>, InnerCopies>;

Pairs found_in(const std::vector<Letters>& sought, const std::vector<Letters>& words) {
    Pairs pairs;
    std::size_t last_outer = 0;
    find_inner_words(sought, words, [&](std::size_t inner, std::size_t outer, InnerCopies copies) {
        CHECK(pairs.emplace(std::pair{inner, outer}, copies).second);
        CHECK(outer >= last_outer);
        last_outer = outer;
        return true;
    });
    return pairs;
}

// A word is a grid of one row.
Pairs naive_pairs(const std::vector<Letters>& sought, const std::vector<Letters>& words) {
    Pairs pairs;
    for (std::size_t outer = 0; outer < words.size(); ++outer) {
        Grid row({1, static_cast<int>(words[outer].size())});
        for (std::size_t at = 0; at < words[outer].size(); ++at)
            row[{0, static_cast<int>(at)}] = words[outer][at];
        for (std::size_t inner = 0; inner < sought.size(); ++inner) {
            const std::size_t copies = sought[inner].empty() ? 0 : naive_copies(row, sought[inner]).size();
            if (copies > 0) pairs[{inner, outer}] = copies == 1 ? InnerCopies::one : InnerCopies::several;
        }
    }
    return pairs;
}

}  // namespace

TEST_CASE("all words of up to three letters are found inside all of up to five, as by brute force") {
    const auto sought = every_word(2, 1, 3);
    const auto words = every_word(2, 1, 5);
    CHECK(found_in(sought, words) == naive_pairs(sought, words));
}

TEST_CASE("random words are found inside random words, as by brute force") {
    Random random(12);
    for (int round = 0; round < 200; ++round) {
        const auto letters = 1 + random.below(4);
        std::vector<Letters> sought, words;
        for (auto* list : {&sought, &words})
            for (std::uint32_t word = 0, count = random.below(30); word < count; ++word) {
                list->emplace_back(random.below(list == &sought ? 5 : 12));
                for (Letter& letter : list->back()) letter = static_cast<Letter>(7 * random.below(letters));
            }
        CAPTURE(round);
        REQUIRE(found_in(sought, words) == naive_pairs(sought, words));
    }
}

TEST_CASE("she, he and hers are found in ushers, and in srehsu") {
    // Aho and Corasick 1975, whose example it is.
    const std::vector<Letters> sought{word_of("HE"), word_of("SHE"), word_of("HIS"), word_of("HERS")};
    const Pairs expected{{{0, 0}, InnerCopies::one}, {{1, 0}, InnerCopies::one}, {{3, 0}, InnerCopies::one}};
    CHECK(found_in(sought, {word_of("USHERS")}) == expected);
    CHECK(found_in(sought, {word_of("SREHSU")}) == expected);
}

TEST_CASE("ANN stands in ANNE once and in ANNA twice, ANA in ANANAS twice, and a palindrome in itself once") {
    const auto copies = [](const char* inner, const char* outer) {
        return found_in({word_of(inner)}, {word_of(outer)}).at({0, 0});
    };
    CHECK(copies("ANN", "ANNE") == InnerCopies::one);
    CHECK(copies("ANN", "ANNA") == InnerCopies::several);
    CHECK(copies("ANA", "ANANAS") == InnerCopies::several);
    CHECK(copies("LEVEL", "LEVEL") == InnerCopies::one);
    CHECK(copies("STAR", "RATS") == InnerCopies::one);
}

TEST_CASE("words of a hundred thousand letters are compared in one walk") {
    // By pieces this would be 10^10 comparisons of 10^4 letters each.
    std::vector<Letters> words;
    for (Letter word = 1; word <= 20; ++word) {
        words.emplace_back(100'000, Letter{0});
        words.back()[5000] = word;
    }
    Pairs themselves;
    for (std::size_t word = 0; word < words.size(); ++word) themselves[{word, word}] = InnerCopies::one;
    CHECK(found_in(words, words) == themselves);
}

TEST_CASE("words that are sought are made ready once for any words that come later") {
    const auto sought = every_word(2, 1, 3);
    const InnerWords inside(sought);
    for (const int length : {2, 5, 4}) {
        const auto words = every_word(2, length, length);
        Pairs pairs;
        inside.find(words, [&](std::size_t inner, std::size_t outer, InnerCopies copies) {
            pairs.emplace(std::pair{inner, outer}, copies);
            return true;
        });
        CHECK(pairs == naive_pairs(sought, words));
    }
}

TEST_CASE("the search for inner words stops where its caller has seen enough") {
    int calls = 0;
    find_inner_words(every_word(2, 1, 2), every_word(2, 2, 4),
                     [&](std::size_t, std::size_t, InnerCopies) { return ++calls < 3; });
    CHECK(calls == 3);
}
