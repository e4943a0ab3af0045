// The audit of a finished grid: planted faults are found, wherever they stand.

#include <algorithm>
#include <catch2/catch.hpp>

#include <letterlode/puzzle.hpp>

#include "random/random.hpp"
#include "support/grids.hpp"
#include "support/judge.hpp"
#include "support/naive.hpp"
#include "support/recipes.hpp"

using namespace lode;
using namespace lode::test;
using Catch::Matchers::Contains;

namespace {

const std::vector<std::string> beds{"CARROT", "PARSNIP", "LEEK", "KALE", "RADISH"};

// A puzzle with room for faults.
Puzzle roomy(std::uint64_t seed, Shape shape = Shape::rectangle) {
    Recipe recipe = recipe_of(beds, Size{14, 14}, seed);
    recipe.shape = shape;
    recipe.default_avoid_list = true;
    auto puzzle = make(recipe);
    REQUIRE(puzzle);
    REQUIRE(puzzle->audit.certified);
    return std::move(puzzle).value();
}

std::set<std::pair<int, int>> cells_of_words(const Puzzle& puzzle) {
    std::set<std::pair<int, int>> cells;
    for (const auto& word : puzzle.words)
        for (const auto& cell : cells_from(puzzle.grid.grid.size(), word.placed.first, word.placed.direction,
                                           static_cast<int>(word.letters.size())))
            cells.insert(cell);
    return cells;
}

void write(Puzzle& puzzle, const std::vector<std::pair<int, int>>& cells,
           const std::vector<std::string>& letters) {
    for (std::size_t at = 0; at < cells.size(); ++at)
        puzzle.grid.grid[{cells[at].first, cells[at].second}] = puzzle.grid.alphabet.add(letters[at]);
}

Audit judged(const Puzzle& puzzle) {
    return audit(puzzle).value();
}

// Every place for a word of this length that touches no word and no closed cell.
template <class Visit>
void each_free_place(const Puzzle& puzzle, int length, Visit visit) {
    const Size size = puzzle.grid.grid.size();
    const auto taken = cells_of_words(puzzle);
    for (int row = 0; row < size.rows; ++row)
        for (int column = 0; column < size.columns; ++column)
            for (const Direction direction : all_directions) {
                const auto cells = cells_from(size, {row, column}, direction, length);
                if (cells.empty()) continue;
                if (std::any_of(cells.begin(), cells.end(), [&](const auto& cell) {
                        return taken.count(cell) > 0 ||
                               puzzle.grid.grid[{cell.first, cell.second}] == closed_cell;
                    }))
                    continue;
                visit(Placement{{row, column}, direction}, cells);
            }
}

bool lists(const std::vector<Copy>& copies, const Placement& place, int length) {
    return std::any_of(copies.begin(), copies.end(), [&](const Copy& copy) {
        return copy.length == length && same_cells(place, {copy.first, copy.direction}, length);
    });
}

}  // namespace

TEST_CASE(
    "a stray copy is found at every free place of a puzzle, borders and corners too, in every direction") {
    long planted = 0;
    std::set<Direction> directions;
    bool at_border[4]{};
    for (std::uint64_t seed = 1; seed <= 3; ++seed) {
        const Puzzle puzzle = roomy(seed);
        each_free_place(puzzle, 4, [&](const Placement& place, const auto& cells) {
            Puzzle faulty = puzzle;
            write(faulty, cells, {"L", "E", "E", "K"});
            const Audit found = judged(faulty);
            CAPTURE(seed, place.first.row, place.first.column, name(place.direction));
            REQUIRE_FALSE(found.certified);
            REQUIRE(lists(found.words[2].stray, place, 4));
            REQUIRE(found.words[2].copies.size() == found.words[2].stray.size() + 1);
            REQUIRE(found.missing.empty());
            ++planted;
            directions.insert(place.direction);
            for (const auto& [row, column] : cells) {
                at_border[0] = at_border[0] || row == 0;
                at_border[1] = at_border[1] || row == 13;
                at_border[2] = at_border[2] || column == 0;
                at_border[3] = at_border[3] || column == 13;
            }
        });
    }
    CHECK(planted > 500);
    CHECK(directions.size() == 8);
    CHECK((at_border[0] && at_border[1] && at_border[2] && at_border[3]));
}

TEST_CASE("a stray copy is found inside every shape") {
    for (const Shape shape : all_shapes) {
        const Puzzle puzzle = roomy(5, shape);
        long planted = 0;
        each_free_place(puzzle, 4, [&](const Placement& place, const auto& cells) {
            Puzzle faulty = puzzle;
            write(faulty, cells, {"K", "A", "L", "E"});
            const Audit found = judged(faulty);
            CAPTURE(name(shape), place.first.row, place.first.column, name(place.direction));
            REQUIRE_FALSE(found.certified);
            REQUIRE(lists(found.words[3].stray, place, 4));
            ++planted;
        });
        CHECK(planted > 0);
    }
}

TEST_CASE("a changed, deleted or closed letter of any word is found") {
    const Puzzle puzzle = roomy(2);
    for (std::size_t word = 0; word < puzzle.words.size(); ++word) {
        const auto cells =
            cells_from({14, 14}, puzzle.words[word].placed.first, puzzle.words[word].placed.direction,
                       static_cast<int>(puzzle.words[word].letters.size()));
        for (const auto& [row, column] : cells) {
            const Letter right = puzzle.grid.grid[{row, column}];
            for (const Letter wrong :
                 {static_cast<Letter>((right + 1) % puzzle.grid.alphabet.size()), closed_cell, empty_cell}) {
                Puzzle faulty = puzzle;
                faulty.grid.grid[{row, column}] = wrong;
                const Audit found = judged(faulty);
                CAPTURE(puzzle.words[word].shown, row, column, wrong);
                CHECK_FALSE(found.certified);
                CHECK(found.words[word].copies.empty());
                CHECK(std::count(found.missing.begin(), found.missing.end(), puzzle.words[word].shown) == 1);
            }
        }
    }
}

TEST_CASE("a placement that is not where the word stands is found, however near") {
    const Puzzle puzzle = roomy(3);
    for (std::size_t word = 0; word < puzzle.words.size(); ++word) {
        const Placement right = puzzle.words[word].placed;
        const int length = static_cast<int>(puzzle.words[word].letters.size());
        for (const Direction direction : all_directions)
            for (const Direction shift : all_directions) {
                const Placement wrong{moved(right.first, shift, 1), direction};
                if (cells_from({14, 14}, wrong.first, wrong.direction, length).empty()) continue;
                Puzzle faulty = puzzle;
                faulty.words[word].placed = wrong;
                const Audit found = judged(faulty);
                CAPTURE(puzzle.words[word].shown, name(direction), name(shift));
                CHECK_FALSE(found.certified);
                REQUIRE(found.words[word].stray.size() == 1);
                CHECK(lists(found.words[word].stray, right, length));
                CHECK(found.missing.empty());
            }
        // A direction alone, the first cell being right.
        for (const Direction direction : all_directions) {
            if (direction == right.direction) continue;
            Puzzle faulty = puzzle;
            faulty.words[word].placed.direction = direction;
            CHECK_FALSE(judged(faulty).certified);
        }
        // A word is not read from its other end: only a palindrome may be placed so.
        Puzzle turned = puzzle;
        turned.words[word].placed = {moved(right.first, right.direction, length - 1),
                                     opposite(right.direction)};
        CHECK(judged(turned).certified);
    }
}

TEST_CASE("an avoided word is found at every free place of a puzzle") {
    Puzzle puzzle = roomy(4);
    puzzle.recipe.default_avoid_list = false;
    puzzle.recipe.avoid = {"Gr\u00FCb"};
    REQUIRE(judged(puzzle).certified);
    long planted = 0;
    each_free_place(puzzle, 4, [&](const Placement& place, const auto& cells) {
        Puzzle faulty = puzzle;
        // Without its marks, and with other ones.
        write(faulty, cells,
              planted % 2 == 0 ? std::vector<std::string>{"G", "R", "U", "B"}
                               : std::vector<std::string>{"G", "\u0158", "U", "B"});
        const Audit found = judged(faulty);
        CAPTURE(place.first.row, place.first.column, name(place.direction));
        REQUIRE_FALSE(found.certified);
        REQUIRE(std::any_of(found.avoided.begin(), found.avoided.end(), [&](const AvoidedFinding& avoided) {
            return avoided.word == "Gr\u00FCb" && lists({avoided.copy}, place, 4);
        }));
        ++planted;

        faulty.recipe.allow = {"GRUB"};
        const Audit allowed = judged(faulty);
        REQUIRE(allowed.certified);
        REQUIRE(allowed.avoided.empty());
        REQUIRE(allowed.allowed.size() == found.avoided.size());
    });
    CHECK(planted > 100);
}

TEST_CASE("no word and no avoided word is read across a closed cell") {
    Recipe recipe = recipe_of({"RAKE", "HOE"});
    recipe.avoid = {"WEED"};
    const auto found_in = [&](const std::vector<std::string>& rows) {
        return audit(lettered(rows), recipe).value();
    };
    CHECK(found_in({"RAKE", "HOEW"}).certified);
    CHECK(found_in({"RA.KE", "HOEWX"}).missing == std::vector<std::string>{"RAKE"});
    CHECK(found_in({"RAKE.", "HOEWE", "E.EXD"}).certified);
    CHECK(found_in({"RAKEX", "HOEXX", "WE.ED"}).certified);
    CHECK_FALSE(found_in({"RAKEX", "HOEXX", "WEEDX"}).certified);
    // Nor from one row's end to the next row's start.
    CHECK(found_in({"HOERA", "KEXXX"}).missing == std::vector<std::string>{"RAKE"});
}

TEST_CASE("where placements are not known, the copies beyond the expected one are strays in reading order") {
    const Audit found = audit(lettered({"HOEX", "XXOX", "XXHX", "HOEX"}), recipe_of({"HOE"})).value();
    CHECK_FALSE(found.certified);
    REQUIRE(found.words.size() == 1);
    CHECK(found.words[0].expected == 1);
    CHECK(found.words[0].copies.size() == 3);
    REQUIRE(found.words[0].stray.size() == 2);
    CHECK(found.words[0].stray[0] == found.words[0].copies[1]);
    CHECK(found.words[0].copies[0].first == Cell{0, 0});
}

TEST_CASE("a word inside one other counts where it stands there, and more than that is refused") {
    // DESIGN: ANN in ANNE is expected once; ANN in ANNA, ANA in ANANAS, and ANN in ANNE and JOANN are
    // unusable.
    const auto certified = [](const std::vector<std::string>& rows, const std::vector<std::string>& words) {
        return audit(lettered(rows), recipe_of(words)).value().certified;
    };
    CHECK(certified({"ANNE"}, {"ANNE", "ANN"}));
    CHECK(certified({"ENNA"}, {"ANNE", "ANN"}));
    CHECK_FALSE(certified({"ANNEX", "XXXXX", "XANNX"}, {"ANNE", "ANN"}));
    CHECK(certified({"STAR"}, {"STAR", "RATS"}));
    CHECK(certified({"ANNEXX"}, {"AN", "ANN", "ANNE"}));
    CHECK(certified({"XSTARX"}, {"STAR", "RATS", "TA"}));

    for (const auto& words : std::vector<std::vector<std::string>>{
             {"ANNA", "ANN"}, {"ANANAS", "ANA"}, {"ANNE", "JOANN", "ANN"}}) {
        const auto refused = audit(lettered({"ANNA"}), recipe_of(words));
        REQUIRE_FALSE(refused);
        CHECK(refused.refusal().reason == Refusal::Reason::unusable);
        CHECK(refused.refusal().words.size() == words.size());
        CHECK_THAT(refused.refusal().message, Contains("beds.txt:" + std::to_string(words.size()) + ": "));
    }
}

TEST_CASE("an audit that is cut short is never certified on that account") {
    const Segmenter segmenter = segmenter_of();
    const LetteredGrid grid = lettered({"HOEHOEHOE"});
    const std::vector<AuditedWord> hoe{{"HOE", {"H", "O", "E"}, {}}};
    for (std::size_t most = 0; most < 5; ++most) {
        const Audit found = audit(grid, hoe, {{}, {}, most}, segmenter);
        CAPTURE(most);
        CHECK_FALSE(found.certified);
        CHECK(found.missing.empty());
        CHECK(found.words[0].copies.size() == std::min<std::size_t>(std::max<std::size_t>(most, 1), 3));
        CHECK(found.cut_short == (most < 3));

        const Audit avoided = audit(grid, {}, {{"hoe"}, {}, most}, segmenter);
        CHECK_FALSE(avoided.certified);
        CHECK(avoided.avoided.size() == std::min<std::size_t>(std::max<std::size_t>(most, 1), 3));
        const Audit allowed = audit(grid, {}, {{"hoe"}, {"HOE"}, most}, segmenter);
        CHECK(allowed.certified);
    }
}

TEST_CASE("an avoided word that no grid can hold, or every grid, is refused and named") {
    for (const std::string word : {"x", "", "-", "we\u20ACd"}) {
        Recipe recipe = recipe_of({"RAKE", "HOE"}, Size{5, 5});
        recipe.avoid = {"weed", word};
        CAPTURE(word);
        for (const auto& refusal :
             {make(recipe).refusal(), audit(lettered({"RAKE", "HOEW"}), recipe).refusal()}) {
            CHECK(refusal.reason == Refusal::Reason::unusable);
            CHECK_THAT(refusal.message, Contains("'" + word + "'") && Contains("avoid"));
        }
        recipe.avoid = {};
        recipe.allow = {word};
        CHECK_FALSE(make(recipe));
    }
}

TEST_CASE("a grid of other letters, or of none, lacks every word") {
    const Audit found = audit(lettered({"XYZ", "ZYX"}), recipe_of(beds)).value();
    CHECK(found.missing == beds);
    CHECK_FALSE(found.certified);
    CHECK(audit(LetteredGrid(), recipe_of(beds)).value().missing == beds);
    CHECK(audit(LetteredGrid{{}, Grid({3, 3}, closed_cell)}, recipe_of(beds)).value().missing == beds);
}
