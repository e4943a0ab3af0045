#include "instances.hpp"

#include <cstdio>

#include "dictionary.hpp"
#include "planting.hpp"

namespace lode::bench {
namespace {

// Each set has a chance of its own, so that it does not depend on which others are asked for.
template <class Make>
Set set_of(std::string name, bool is_feasible, std::uint64_t seed, std::uint64_t number, int count,
           const Make& make) {
    Random random(seed * 1000 + number);
    Set set{std::move(name), {}, is_feasible};
    for (int instance = 0; instance < count; ++instance) set.instances.push_back(make(random));
    return set;
}

std::string text_of(double density) {
    char text[16];
    std::snprintf(text, sizeof text, "%.1f", density);
    return text;
}

constexpr Size ladder_size{12, 12};

std::size_t letters_at(double density) {
    return static_cast<std::size_t>(density * static_cast<double>(ladder_size.cells()) + 0.5);
}

Instance drawn_letters(std::size_t wanted, Random& random) {
    WordsApart list;
    while (list.letters() + 4 <= wanted) {
        const Letters& word = drawn_word(4, 10, random);
        if (list.letters() + word.size() <= wanted) list.take(word);
    }
    return {ladder_size, list.words()};
}

Instance drawn_count(Size size, std::size_t count, std::size_t least, std::size_t most, Random& random) {
    WordsApart list;
    while (list.words().size() < count) list.take(drawn_word(least, most, random));
    return {size, list.words()};
}

std::vector<Set> ladder(std::uint64_t seed, int count) {
    std::vector<Set> sets;
    for (const double density : {0.5, 0.7, 0.8, 0.9, 1.0, 1.1, 1.2})
        sets.push_back(set_of("12x12 at " + text_of(density), false, seed,
                              static_cast<std::uint64_t>(density * 10 + 0.5), count,
                              [&](Random& random) { return drawn_letters(letters_at(density), random); }));
    return sets;
}

std::vector<Set> planted(std::uint64_t seed, int count) {
    std::vector<Set> sets;
    for (const double density : {1.0, 1.1, 1.2})
        sets.push_back(set_of(
            "12x12 at " + text_of(density) + ", planted", true, seed,
            static_cast<std::uint64_t>(100 + density * 10 + 0.5), count,
            [&](Random& random) { return planted_letters(ladder_size, letters_at(density), random); }));
    return sets;
}

std::vector<Set> covers(std::uint64_t seed, int count) {
    const auto cover = [&](const char* name, Size size, std::size_t leftover, std::uint64_t number) {
        return set_of(name, true, seed, number, count,
                      [&](Random& random) { return planted_cover(size, leftover, random); });
    };
    return {cover("8x8, 0 left over", {8, 8}, 0, 200), cover("8x8, 5 left over", {8, 8}, 5, 201),
            set_of("10x10 tiling", true, seed, 202, count, planted_tiling),
            cover("10x10, 0 left over", {10, 10}, 0, 203), cover("10x10, 8 left over", {10, 10}, 8, 204)};
}

// Words whose letters are at least a third more than the cells.
Instance crowded(int side, std::size_t count, Random& random) {
    const auto cells = static_cast<std::size_t>(side * side);
    while (true) {
        Instance instance = drawn_count({side, side}, count, 4, static_cast<std::size_t>(side), random);
        std::size_t letters = 0;
        for (const Letters& word : instance.words) letters += word.size();
        if (letters * 3 >= cells * 4) return instance;
    }
}

std::vector<Set> small(std::uint64_t seed, int count) {
    struct Square {
        int side;
        std::size_t words;
    };
    std::vector<Set> sets;
    for (const auto [side, words] : {Square{5, 7}, Square{6, 10}, Square{7, 12}, Square{8, 14}}) {
        const std::string across = std::to_string(side);
        sets.push_back(
            set_of(across + "x" + across + ", " + std::to_string(words) + " words", false, seed,
                   300 + static_cast<std::uint64_t>(side), count,
                   [side = side, words = words](Random& random) { return crowded(side, words, random); }));
    }
    return sets;
}

std::vector<Set> everyday(std::uint64_t seed, int count) {
    return {set_of("15x15, 20 words", false, seed, 400, count, [](Random& random) {
        return drawn_count({15, 15}, 20, 4, 10, random);
    })};
}

std::vector<Set> large(std::uint64_t seed, int count) {
    const auto drawn = [&](const char* name, Size size, std::size_t words, std::uint64_t number) {
        return set_of(name, false, seed, number, count,
                      [&](Random& random) { return drawn_count(size, words, 4, 10, random); });
    };
    return {drawn("300x300, 300 words", {300, 300}, 300, 500),
            drawn("300x300, 3,000 words", {300, 300}, 3'000, 501),
            drawn("1000x1000, 20,000 words", {1000, 1000}, 20'000, 502)};
}

}  // namespace

const std::vector<Family>& families() {
    static const std::vector<Family> all{
        {"ladder", "ever denser: letters of all words over cells", ladder},
        {"planted", "as dense, and known to have a solution", planted},
        {"covers", "exactly so many cells left over, with a known solution; the tiling without crossings",
         covers},
        {"small", "letters a third more than cells, most likely without a solution", small},
        {"everyday", "what most makers ask for: placed, or made whole", everyday},
        {"large", "large grids", large},
    };
    return all;
}

}  // namespace lode::bench
