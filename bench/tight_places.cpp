// Placing words ever more tightly: the engine beside a plain random retry on the same tasks in the same run.
//   tight_places [SEED] [TASKS]
// Density is the letters of all words over the cells. Words are real ones of 4 to 10 letters (package
// wamerican). Another seed gives fresh tasks: figures are worth something only on tasks that nothing was
// tuned on.

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <numeric>
#include <string>
#include <vector>

#include "place/place.hpp"

namespace {

using namespace lode;

constexpr int side = 12;
constexpr std::uint64_t effort = 50'000'000;

std::vector<std::string> dictionary() {
    std::ifstream list(LODE_ENGLISH_WORDS);
    std::vector<std::string> words;
    for (std::string word; std::getline(list, word);)
        if (word.size() >= 4 && word.size() <= 10 &&
            word.find_first_not_of("abcdefghijklmnopqrstuvwxyz") == std::string::npos)
            words.push_back(word);
    return words;
}

bool is_inside(const std::string& inner, const std::string& outer) {
    const std::string turned(outer.rbegin(), outer.rend());
    return outer.find(inner) != std::string::npos || turned.find(inner) != std::string::npos;
}

std::vector<Letters> task_of(const std::vector<std::string>& words, double density, Random& random) {
    std::vector<std::string> chosen;
    const auto wanted = static_cast<std::size_t>(density * side * side + 0.5);
    std::size_t letters = 0;
    while (letters + 4 <= wanted) {
        const auto& word = words[random.below(static_cast<std::uint32_t>(words.size()))];
        const bool nested = std::any_of(chosen.begin(), chosen.end(), [&](const auto& other) {
            return is_inside(word, other) || is_inside(other, word);
        });
        if (nested || letters + word.size() > wanted) continue;
        chosen.push_back(word);
        letters += word.size();
    }
    std::vector<Letters> task;
    for (const auto& word : chosen) {
        task.emplace_back();
        for (const char letter : word) task.back().push_back(static_cast<Letter>(letter - 'a'));
    }
    return task;
}

bool by_engine(const std::vector<Letters>& words) {
    Letters itself(26);
    std::iota(itself.begin(), itself.end(), Letter{0});
    const CopyGuard guard(words, itself);
    const CopyGuard avoided({}, itself);
    Random random(1);
    const Mask mask({side, side});
    return place({mask, Directions::all(), words, guard, avoided, effort, {}, nullptr}, random).end ==
           PlaceResult::End::placed;
}

// The peer: long words first, each at the first of a few hundred random places where its letters agree; all
// over again where one finds none. It does not look for stray copies at all.
bool by_random_retry(const std::vector<Letters>& words) {
    constexpr int places_tried = 400;
    constexpr std::uint64_t most_tries = effort;
    Random random(1);
    std::vector<Letters> order = words;
    std::stable_sort(order.begin(), order.end(),
                     [](const auto& a, const auto& b) { return a.size() > b.size(); });
    std::uint64_t tries = 0;
    const auto put = [&](Grid& grid, const Letters& word) {
        const int last = static_cast<int>(word.size()) - 1;
        for (int place = 0; place < places_tried; ++place, ++tries) {
            const Cell first{static_cast<int>(random.below(side)), static_cast<int>(random.below(side))};
            const Direction direction = all_directions[random.below(8)];
            if (!grid.inside(moved(first, direction, last))) continue;
            bool agrees = true;
            for (int at = 0; at <= last && agrees; ++at) {
                const Letter there = grid[moved(first, direction, at)];
                agrees = there == empty_cell || there == word[static_cast<std::size_t>(at)];
            }
            if (!agrees) continue;
            for (int at = 0; at <= last; ++at)
                grid[moved(first, direction, at)] = word[static_cast<std::size_t>(at)];
            return true;
        }
        return false;
    };
    while (tries < most_tries) {
        Grid grid({side, side});
        if (std::all_of(order.begin(), order.end(), [&](const auto& word) { return put(grid, word); }))
            return true;
    }
    return false;
}

struct Figures {
    int placed = 0;
    std::vector<double> milliseconds;  // of the tasks that were placed

    template <class Search>
    void measure(const Search& search, const std::vector<Letters>& words) {
        const auto start = std::chrono::steady_clock::now();
        const bool found = search(words);
        const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
        if (!found) return;
        ++placed;
        milliseconds.push_back(took.count());
    }
    [[nodiscard]] std::string text() {
        if (placed == 0) return "   0           -           -";
        std::sort(milliseconds.begin(), milliseconds.end());
        char line[64];
        std::snprintf(line, sizeof line, "%4d %8.3f ms %8.2f ms", placed,
                      milliseconds[milliseconds.size() / 2], milliseconds.back());
        return line;
    }
};

}  // namespace

int main(int count, char** arguments) {
    const std::uint64_t seed = count > 1 ? std::strtoull(arguments[1], nullptr, 10) : 1;
    const int tasks = count > 2 ? std::atoi(arguments[2]) : 20;
    const auto words = dictionary();
    if (words.size() < 1000 || tasks < 1) {
        std::fprintf(stderr, "tight_places [SEED] [TASKS]: needs the word list %s\n", LODE_ENGLISH_WORDS);
        return 2;
    }
    std::printf("12x12, %d tasks a density, seed %llu: placed, median, slowest\n", tasks,
                static_cast<unsigned long long>(seed));
    std::printf("density  engine                        random retry\n");
    for (const double density : {0.5, 0.7, 0.8, 0.9, 1.0, 1.1}) {
        Random random(seed * 1000 + static_cast<std::uint64_t>(density * 100));
        Figures engine, retry;
        for (int task = 0; task < tasks; ++task) {
            const auto list = task_of(words, density, random);
            engine.measure(by_engine, list);
            retry.measure(by_random_retry, list);
        }
        std::printf("%.1f    %s    %s\n", density, engine.text().c_str(), retry.text().c_str());
        std::fflush(stdout);
    }
    return 0;
}
