// What most programs for the job do at heart: words in an order, longest first, each at the first random
// place where its letters agree, and all over again where a few hundred places were none. It is asked for
// less than the engine: it does not look for stray copies, and it proves nothing. It cannot aim at an exact
// number of cells left over: it keeps trying until chance meets it.

#include <algorithm>
#include <numeric>

#include "engines.hpp"
#include "random/random.hpp"

namespace lode::bench {
namespace {

constexpr int places_tried = 400;

class Retry {
  public:
    Retry(const Instance& instance, std::uint64_t seed)
        : instance_(instance), random_(seed), grid_(instance.size), order_(instance.words.size()) {
        std::iota(order_.begin(), order_.end(), std::size_t{0});
        std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
            return instance_.words[a].size() > instance_.words[b].size();
        });
        placements_.resize(order_.size());
    }

    [[nodiscard]] Answer answer(const Deadline& deadline) {
        do {
            if (place_all()) return {Answer::End::solved, placements_};
        } while (!deadline.has_passed());
        return {};
    }

    [[nodiscard]] std::vector<Letter> filled() {
        auto letters = grid_.letters();
        for (Letter& letter : letters)
            if (letter == empty_cell) letter = static_cast<Letter>(random_.below(26));
        return letters;
    }

  private:
    bool place_all() {
        grid_ = Grid(instance_.size);
        covered_ = 0;
        if (!std::all_of(order_.begin(), order_.end(), [&](std::size_t word) { return place(word); }))
            return false;
        return !instance_.leftover || covered_ + *instance_.leftover == instance_.size.cells();
    }

    bool place(std::size_t word) {
        const Letters& letters = instance_.words[word];
        const int last = static_cast<int>(letters.size()) - 1;
        const auto rows = static_cast<std::uint32_t>(instance_.size.rows);
        const auto columns = static_cast<std::uint32_t>(instance_.size.columns);
        for (int tried = 0; tried < places_tried; ++tried) {
            const Cell first{static_cast<int>(random_.below(rows)), static_cast<int>(random_.below(columns))};
            const Direction direction = all_directions[random_.below(8)];
            if (!grid_.inside(moved(first, direction, last)) || !agrees(letters, first, direction)) continue;
            for (int at = 0; at <= last; ++at) {
                Letter& cell = grid_[moved(first, direction, at)];
                if (cell == empty_cell) ++covered_;
                cell = letters[static_cast<std::size_t>(at)];
            }
            placements_[word] = {first, direction};
            return true;
        }
        return false;
    }

    [[nodiscard]] bool agrees(const Letters& letters, Cell first, Direction direction) const {
        for (std::size_t at = 0; at < letters.size(); ++at) {
            const Letter there = grid_[moved(first, direction, static_cast<int>(at))];
            if (there != empty_cell && (there != letters[at] || !instance_.may_cross)) return false;
        }
        return true;
    }

    const Instance& instance_;
    Random random_;
    Grid grid_;
    std::vector<std::size_t> order_;
    std::vector<Placement> placements_;
    std::size_t covered_ = 0;
};

}  // namespace

Engine random_retry() {
    return {"random retry", SIZE_MAX,
            unprepared([](const Instance& instance, const Deadline& deadline, std::uint64_t seed) {
                return Retry(instance, seed).answer(deadline);
            })};
}

Engine random_retry_filled() {
    return {"random retry, filled", SIZE_MAX,
            unprepared([](const Instance& instance, const Deadline& deadline, std::uint64_t seed) {
                Retry retry(instance, seed);
                Answer answer = retry.answer(deadline);
                if (answer.end == Answer::End::solved) answer.filled = retry.filled();
                return answer;
            })};
}

}  // namespace lode::bench
