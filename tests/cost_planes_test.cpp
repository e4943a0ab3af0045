// The sums of all placements at once, against each placement's own cells added up.

#include <catch2/catch.hpp>
#include <map>
#include <set>

#include "place/cost_planes.hpp"
#include "random/random.hpp"

using namespace lode;

TEST_CASE("every placement costs the sum of its cells, and each is counted and found once") {
    Random random(77);
    for (int round = 0; round < 200; ++round) {
        CAPTURE(round);
        const Size size{1 + static_cast<int>(random.below(14)), 1 + static_cast<int>(random.below(40))};
        constexpr std::size_t letters = 5;
        Directions directions;
        for (const Direction direction : all_directions)
            if (random.below(3) > 0) directions.insert(direction);
        if (directions.empty()) directions.insert(Direction::up_left);
        CostPlanes planes(size, letters, 9, directions);
        std::map<std::tuple<int, int, Letter>, Cost> costs;
        for (int row = 0; row < size.rows; ++row)
            for (int column = 0; column < size.columns; ++column) {
                const auto all = static_cast<Cost>(random.below(6));
                const auto one = static_cast<Letter>(random.below(letters));
                if (random.below(10) == 0) continue;  // out of the grid
                planes.set_all({row, column}, all);
                planes.set({row, column}, one, 0);
                for (Letter letter = 0; letter < letters; ++letter)
                    costs[{row, column, letter}] = letter == one ? Cost{0} : all;
            }
        for (std::size_t length = 1; length <= 9; ++length) {
            Letters word(length);
            for (Letter& letter : word) letter = static_cast<Letter>(random.below(letters));
            std::map<int, std::set<std::tuple<int, int, Direction>>> by_cost;
            for (int row = 0; row < size.rows; ++row)
                for (int column = 0; column < size.columns; ++column)
                    for (const Direction direction : all_directions) {
                        int sum = directions.contains(direction) ? 0 : -1;
                        for (std::size_t at = 0; at < length && sum >= 0; ++at) {
                            const Cell cell = moved({row, column}, direction, static_cast<int>(at));
                            const auto known = costs.find({cell.row, cell.column, word[at]});
                            sum = known == costs.end() ? -1 : sum + known->second;
                        }
                        if (sum >= 0) by_cost[sum].emplace(row, column, direction);
                    }
            const Cost least = planes.sum(word);
            if (by_cost.empty()) {
                REQUIRE(least >= CostPlanes::out_of_grid);
                continue;
            }
            REQUIRE(int{least} == by_cost.begin()->first);
            const auto counts = planes.count_levels(least);
            for (int level = 0; level < CostPlanes::levels; ++level) {
                const auto& expected = by_cost[least + level];
                REQUIRE(counts[static_cast<std::size_t>(level)] == expected.size());
                std::set<std::tuple<int, int, Direction>> found;
                for (std::uint32_t number = 0; number < expected.size(); ++number) {
                    const Placement placement = planes.with_cost(static_cast<Cost>(least + level), number);
                    found.emplace(placement.first.row, placement.first.column, placement.direction);
                }
                REQUIRE(found == expected);
            }
        }
    }
}
