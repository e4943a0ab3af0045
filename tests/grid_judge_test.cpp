// A judge that is kept, beside one that is built for each grid.

#include <algorithm>
#include <atomic>
#include <thread>

#include <catch2/catch.hpp>
#include <letterlode/puzzle.hpp>

#include "random/random.hpp"

using namespace lode;

namespace {

Recipe beds() {
    Recipe recipe;
    recipe.words = read_word_lines("Kale\nBeet\nCafé\nSorrel\nRocket\n", "beds.txt").value();
    recipe.text.locale = "en";
    recipe.avoid = {"slug", "blé"};
    recipe.allow = {"slug"};
    recipe.nested = Nested::separate;
    return recipe;
}

// Letters with marks and of another script come and go, so that alphabets differ from grid to grid.
std::string drawn(Random& random) {
    static const std::vector<std::string> usual{"K", "A", "L", "E", "B", "T", "C", "F", "S", "U", "G"};
    static const std::vector<std::string> rare{"É", "Ñ", "Ж", "Ǆ", "."};
    std::string text;
    for (int row = 0; row < 8; ++row) {
        for (int column = 0; column < 9; ++column) {
            const auto& from = random.below(6) == 0 ? rare : usual;
            text += from[random.below(static_cast<std::uint32_t>(from.size()))] + " ";
        }
        text += "\n";
    }
    return text + (random.below(2) == 0 ? "K A L E S L U G X\n" : "T E E B B L E C A\n") +
           "C A F É O X X X X\n";
}

}  // namespace

TEST_CASE("a judge that is kept finds what one that is new for each grid finds") {
    const CheckRules rules{{"eel", "gusts", "bat", "lat", "fak"}, 3, {}};
    const auto judge = GridJudge::open(beds(), rules);
    REQUIRE(judge);
    Random random(7);
    std::size_t copies = 0;
    std::size_t chances = 0;
    for (int round = 0; round < 150; ++round) {
        const auto grid = read_grid(drawn(random), "grid.txt", judge->segmenter());
        REQUIRE(grid);
        const auto expected = audit(*grid, beds(), {}, rules);
        const auto found = judge->audit(*grid);
        REQUIRE(expected);
        REQUIRE(found);
        CHECK(to_json(*found) == to_json(*expected));
        CHECK(to_json(*judge->rate(*grid)) == to_json(*rate(*grid, beds())));
        for (const auto& word : found->words) copies += word.copies.size();
        copies += found->avoided.size() + found->allowed.size();
        chances += found->chance.size();
    }
    CHECK(copies > 300);
    CHECK(chances > 50);
}

TEST_CASE("a judge that is kept goes by placements, in the list's order or in another") {
    Recipe recipe = beds();
    recipe.avoid.clear();
    recipe.allow.clear();
    recipe.size = Size{9, 9};
    const Puzzle puzzle = make(recipe).value();
    const auto judge = GridJudge::open(recipe);
    REQUIRE(judge);
    auto placed = puzzle.words;
    CHECK(to_json(judge->audit(puzzle.grid, placed).value()) == to_json(puzzle.audit));
    std::reverse(placed.begin(), placed.end());
    CHECK(to_json(judge->audit(puzzle.grid, placed).value()) == to_json(puzzle.audit));
    placed.back().placed.direction = Direction::up_left;
    const Audit moved = judge->audit(puzzle.grid, placed).value();
    CHECK_FALSE(moved.certified);
    CHECK(to_json(moved) == to_json(audit(puzzle.grid, recipe, placed).value()));
    CHECK(to_json(judge->puzzle_of(puzzle.grid).value()) == to_json(puzzle_of(puzzle.grid, recipe).value()));
    CHECK(to_json(judge->rate(puzzle.grid, puzzle.words).value()) == to_json(rate(puzzle).value()));
}

TEST_CASE("a judge is refused where an audit is") {
    Recipe recipe;
    recipe.words.words = {{"ANN", 1}, {"ANNA", 2}};
    CHECK(GridJudge::open(recipe).refusal().message ==
          audit(LetteredGrid{{}, Grid(Size{1, 1}, closed_cell)}, recipe).refusal().message);
    recipe.words.words = {{"A€", 1}};
    CHECK(GridJudge::open(recipe).refusal().position == 2);
}

TEST_CASE("a cancelled search of a kept judge is unfinished") {
    const auto judge = GridJudge::open(beds());
    const std::atomic<bool> cancel = true;
    const auto grid = read_grid("KALE\n", "", judge->segmenter());
    CHECK(judge->audit(*grid, {}, {1, &cancel, {}}).refusal().reason == Refusal::Reason::unfinished);
    CHECK(judge->audit(*grid));
}

TEST_CASE("many threads share a judge while its letters grow") {
    const auto judge = GridJudge::open(beds());
    REQUIRE(judge);
    std::vector<LetteredGrid> grids;
    std::vector<std::string> expected;
    Random random(11);
    for (int at = 0; at < 40; ++at) {
        grids.push_back(read_grid(drawn(random), "", judge->segmenter()).value());
        expected.push_back(to_json(audit(grids.back(), beds()).value()));
    }
    std::atomic<int> wrong = 0;
    {
        std::vector<std::jthread> threads;
        for (std::size_t thread = 0; thread < 8; ++thread)
            threads.emplace_back([&, thread] {
                for (std::size_t at = 0; at < grids.size(); ++at) {
                    const std::size_t which = (at + 5 * thread) % grids.size();
                    if (to_json(judge->audit(grids[which]).value()) != expected[which]) ++wrong;
                }
            });
    }
    CHECK(wrong == 0);
}

TEST_CASE("cells are read as a drawn grid is") {
    const Segmenter segmenter = Segmenter::open({}).value();
    using Cells = std::vector<std::optional<std::string_view>>;
    const Cells cells{"k", "A", "E\u0301", std::nullopt, "", "#"};
    const auto grid = read_cells(cells, {2, 3}, segmenter);
    REQUIRE(grid);
    CHECK(grid_text(grid->grid, grid->alphabet) == "K A É\n. . .\n");
    const auto fault = [&](const Cells& given, Size size) {
        return read_cells(given, size, segmenter).refusal();
    };
    const Refusal symbol = fault({"A", "B", "C", "€"}, {2, 2});
    CHECK(symbol.message == "row 2, column 2 holds '€', which is no letter.");
    CHECK(symbol.line == 2);
    CHECK(symbol.position == 2);
    CHECK(fault({"AB"}, {1, 1}).message == "row 1, column 1 holds 'AB', which is 2 letters (A B).");
    CHECK(fault({"A", "\xFF"}, {1, 2}).message == "row 1, column 2 holds no UTF-8 text.");
    CHECK(fault({}, {0, 5}).reason == Refusal::Reason::unusable);
    CHECK_THROWS_AS(read_cells(Cells{"A"}, {1, 2}, segmenter), std::invalid_argument);
}
