#include "planting.hpp"

#include <algorithm>

#include "dictionary.hpp"
#include "verdict.hpp"

namespace lode::bench {
namespace {

class Planter {
  public:
    Planter(Size size, Random& random) : random_(random), grid_(size) {}

    [[nodiscard]] bool lay_letters(std::size_t wanted) {
        constexpr int most_tries = 20'000;
        for (int tried = 0; list_.letters() + 4 <= wanted; ++tried) {
            if (tried == most_tries) return false;
            const std::size_t length = drawn_word(4, 10, random_).size();
            const auto rows = static_cast<std::uint32_t>(grid_.size().rows);
            const auto columns = static_cast<std::uint32_t>(grid_.size().columns);
            const Placement there{
                {static_cast<int>(random_.below(rows)), static_cast<int>(random_.below(columns))},
                all_directions[random_.below(8)]};
            if (list_.letters() + length > wanted || !fits(there, length)) continue;
            const std::size_t shared = length - newly_covered(there, length);
            if (shared < length && (shared > 0 || list_.words().empty())) lay(there, length);
        }
        return true;
    }

    // Always through a cell that nothing covers yet.
    [[nodiscard]] bool lay_cover(std::size_t leftover) {
        while (true) {
            std::vector<Cell> free;
            for (int row = 0; row < grid_.size().rows; ++row)
                for (int column = 0; column < grid_.size().columns; ++column)
                    if (grid_[{row, column}] == empty_cell) free.push_back({row, column});
            if (free.size() <= leftover) return free.size() == leftover;
            if (!lay_through(free[random_.below(static_cast<std::uint32_t>(free.size()))],
                             free.size() - leftover))
                return false;
        }
    }

    [[nodiscard]] bool reads_right(const Instance& instance) const {
        return reads_each_word_once(instance, {Answer::End::solved, placements_});
    }
    [[nodiscard]] const std::vector<Letters>& words() const { return list_.words(); }
    [[nodiscard]] std::size_t letters() const { return list_.letters(); }

  private:
    struct Choice {
        Placement placement;
        std::size_t length;
        std::size_t covers;
    };

    bool lay_through(Cell cell, std::size_t most) {
        std::vector<Choice> choices;
        for (const Direction direction : all_directions)
            for (std::size_t length = 4; length <= 10; ++length)
                for (std::size_t at = 0; at < length; ++at) {
                    const Placement there{moved(cell, direction, -static_cast<int>(at)), direction};
                    if (!fits(there, length)) continue;
                    const std::size_t covers = newly_covered(there, length);
                    if (covers <= most) choices.push_back({there, length, covers});
                }
        random_.shuffle(choices);
        // Mostly those that cover much, so that words are not more than they need be.
        for (std::size_t first = 0; first < choices.size(); first += 8) {
            const auto begin = choices.begin() + static_cast<std::ptrdiff_t>(first);
            const auto end =
                choices.begin() + static_cast<std::ptrdiff_t>(std::min(first + 8, choices.size()));
            std::stable_sort(begin, end, [](const auto& a, const auto& b) { return a.covers > b.covers; });
            for (auto choice = begin; choice != end; ++choice)
                if (lay(choice->placement, choice->length)) return true;
        }
        return false;
    }

    [[nodiscard]] bool fits(const Placement& there, std::size_t length) const {
        return grid_.inside(there.first) &&
               grid_.inside(moved(there.first, there.direction, static_cast<int>(length) - 1));
    }
    [[nodiscard]] Letter letter(const Placement& there, std::size_t at) const {
        return grid_[moved(there.first, there.direction, static_cast<int>(at))];
    }
    [[nodiscard]] std::size_t newly_covered(const Placement& there, std::size_t length) const {
        std::size_t covers = 0;
        for (std::size_t at = 0; at < length; ++at)
            if (letter(there, at) == empty_cell) ++covers;
        return covers;
    }

    // A word by chance among those that agree with what stands there.
    bool lay(const Placement& there, std::size_t length) {
        const auto& words = words_by_length()[length];
        const std::size_t first = random_.below(static_cast<std::uint32_t>(words.size()));
        for (std::size_t step = 0; step < words.size(); ++step) {
            const Letters& word = words[(first + step) % words.size()];
            bool agrees = true;
            for (std::size_t at = 0; at < length && agrees; ++at)
                agrees = letter(there, at) == empty_cell || letter(there, at) == word[at];
            if (!agrees || !list_.take(word)) continue;
            for (std::size_t at = 0; at < length; ++at)
                grid_[moved(there.first, there.direction, static_cast<int>(at))] = word[at];
            placements_.push_back(there);
            return true;
        }
        return false;
    }

    Random& random_;
    Grid grid_;
    WordsApart list_;
    std::vector<Placement> placements_;
};

template <class Lay>
Instance planted(Instance instance, const Lay& lay, Random& random) {
    while (true) {
        Planter planter(instance.size, random);
        if (!lay(planter)) continue;
        instance.words = planter.words();
        if (!planter.reads_right(instance)) continue;
        random.shuffle(instance.words);
        return instance;
    }
}

}  // namespace

Instance planted_letters(Size size, std::size_t letters, Random& random) {
    return planted(
        {size}, [&](Planter& planter) { return planter.lay_letters(letters); }, random);
}

Instance planted_cover(Size size, std::size_t leftover, Random& random) {
    Instance instance{size};
    instance.leftover = leftover;
    // About one letter in twelve to one in six is shared: with none, words as long as the square would lie
    // side by side, which chance alone places soon.
    const std::size_t covered = size.cells() - leftover;
    const auto lay = [&](Planter& planter) {
        return planter.lay_cover(leftover) && planter.letters() * 100 >= covered * 108 &&
               planter.letters() * 100 <= covered * 120;
    };
    return planted(instance, lay, random);
}

Instance planted_tiling(Random& random) {
    constexpr std::size_t side = 10;
    WordsApart list;
    for (std::size_t row = 0; row < side; ++row) {
        // Four and six, five and five, six and four, or ten.
        const std::size_t first = 4 + random.below(4);
        if (first == 7) {
            while (!list.take(drawn_word(side, side, random))) {
            }
            continue;
        }
        for (const std::size_t length : {first, side - first})
            while (!list.take(drawn_word(length, length, random))) {
            }
    }
    Instance instance{{side, side}, list.words(), false, 0};
    random.shuffle(instance.words);
    return instance;
}

}  // namespace lode::bench
