// What stands on printed pages, told by the layout and by the text version; how the pages look to others is
// asked in oracles.

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>
#include <letterlode/print.hpp>

#include "print/key_marks.hpp"
#include "print/list_columns.hpp"
#include "print/sheet_layout.hpp"
#include "print/worksheet_pages.hpp"
#include "support/recipes.hpp"

using namespace lode;

namespace {

PdfDocument a4_document() {
    return PdfDocument(size_of(Paper::a4), "Test", PrintFonts::open().value());
}

Puzzle herb_bed() {
    Recipe recipe = test::recipe_of({"Thyme", "Basil", "Lamb's ear", "Sage", "Mint", "Bay leaf"});
    recipe.size = Size{10, 10};
    return make(recipe).value();
}

std::vector<std::string> numbered(std::size_t count) {
    std::vector<std::string> words;
    for (std::size_t i = 0; i < count; ++i) words.push_back("Entry " + std::to_string(i));
    return words;
}

// Every entry once, in order.
void check_whole(const ListColumns& columns, std::size_t first, std::size_t end) {
    std::size_t next = first;
    for (const ListColumn& column : columns.columns) {
        CHECK(column.first == next);
        next += column.count;
    }
    CHECK(next == end);
}

std::vector<std::string> shown(const std::vector<PlacedWord>& words) {
    std::vector<std::string> texts;
    for (const PlacedWord& word : words) texts.push_back(word.shown);
    return texts;
}

double distance(Point p, Point a, Point b) {
    const double along = (b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y);
    const double t =
        along == 0 ? 0
                   : std::clamp(((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / along, 0.0, 1.0);
    return std::hypot(p.x - a.x - t * (b.x - a.x), p.y - a.y - t * (b.y - a.y));
}

}  // namespace

TEST_CASE("a list in columns holds every entry once, in order, and is as low as columns allow") {
    const PdfDocument document = a4_document();
    for (const std::size_t count : {1u, 2u, 7u, 20u, 101u}) {
        const ListFlow flow(document, numbered(count));
        const ListColumns columns = flow.lowest(0, 180, 12);
        check_whole(columns, 0, count);
        CHECK(columns.width_mm() <= 180 + 1e-9);
        const auto highest =
            std::max_element(columns.columns.begin(), columns.columns.end(),
                             [](const ListColumn& a, const ListColumn& b) { return a.count < b.count; });
        CHECK(columns.height_mm ==
              Approx(static_cast<double>(highest->count) * PdfDocument::line_pitch({12, false, ink})));
        // So narrow that one column is all there is.
        CHECK(flow.lowest(0, 25, 12).columns.size() == 1);
    }
}

TEST_CASE("a list that goes on over pages loses nothing") {
    const PdfDocument document = a4_document();
    const ListFlow flow(document, numbered(500));
    std::size_t first = 0;
    std::size_t pages = 0;
    while (first < 500) {
        const ListColumns page = flow.as_many(first, 180, 100, 14);
        CHECK(page.height_mm <= 100);
        check_whole(page, first, first + page.entries());
        REQUIRE(page.entries() > 0);
        first += page.entries();
        ++pages;
    }
    CHECK(pages > 1);
}

TEST_CASE("an entry that is wider than its column is broken at blanks and stays whole") {
    const PdfDocument document = a4_document();
    const ListFlow flow(
        document, {"mint", "an entry of many words that no column of this width can hold in a single line"});
    const ListColumns columns = flow.lowest(0, 60, 14);
    const auto lines = flow.lines(1, columns);
    REQUIRE(lines.size() > 1);
    std::string joined;
    for (const std::string& line : lines) {
        CHECK(document.width_of(line, {14, false, ink}) <= 60 + 1e-6);
        joined += (joined.empty() ? "" : " ") + line;
    }
    CHECK(joined == flow.entries()[1]);
    CHECK(flow.lines(0, columns) == std::vector<std::string>{"mint"});
}

TEST_CASE("grid and list share a page without meeting, and neither is under its least") {
    const PdfDocument document = a4_document();
    const Box room{15, 30, 195, 280};
    for (const int side : {5, 10, 15, 20, 30})
        for (const std::size_t words : {3u, 20u, 60u, 100u}) {
            INFO(side << " cells, " << words << " words");
            const ListFlow flow(document, numbered(words));
            SheetNeeds needs;
            needs.grid = {side, side};
            needs.letter_share = 0.62;
            needs.least_letter_pt = 8;
            needs.most_cell_mm = 15;
            needs.least_list_pt = 8;
            needs.usual_list_pt = 12;
            needs.most_list_pt = 16;
            const SheetLayout layout = share_page(needs, flow, room, 0);
            CHECK(layout.letter_pt >= 8);
            CHECK(layout.list_pt >= 8);
            CHECK(layout.letter_pt == Approx(0.62 * layout.cell_mm * 72 / 25.4));
            CHECK(layout.grid.width() == Approx(side * layout.cell_mm));
            CHECK(layout.grid.left >= room.left - 1e-9);
            CHECK(layout.grid.right <= room.right + 1e-9);
            CHECK(layout.grid.bottom <= room.bottom + 1e-9);
            if (layout.is_list_apart) continue;
            check_whole(layout.list, 0, words);
            const bool is_below = layout.list_corner.y >= layout.grid.bottom;
            const bool is_beside = layout.list_corner.x >= layout.grid.right;
            CHECK((is_below || is_beside));
            CHECK(layout.list_corner.y + layout.list.height_mm <= room.bottom + 1e-9);
            CHECK(layout.list_corner.x + layout.list.width_mm() <= room.right + 1e-9);
        }
}

TEST_CASE("no better share of a page is found by trying them") {
    const PdfDocument document = a4_document();
    const Box room{15, 30, 195, 280};
    const ListFlow flow(document, numbered(40));
    SheetNeeds needs;
    needs.grid = {20, 16};
    needs.letter_share = 0.62;
    needs.most_cell_mm = 15;
    needs.least_list_pt = 8;
    needs.usual_list_pt = 12;
    needs.most_list_pt = 16;
    const SheetLayout layout = share_page(needs, flow, room, 0);
    const double reached = std::min(layout.letter_pt, layout.list_pt);
    for (double size = 8; size <= 16; size += 0.05) {
        const double below = flow.lowest(0, room.width(), size).height_mm + needs.gap_mm;
        const double cell = std::min({room.width() / 16, (room.height() - below) / 20, 15.0});
        CHECK(std::min(size, needs.letter_pt(cell)) <= reached + 0.25);
    }
}

TEST_CASE("words are listed in their language's order, as given, or by length") {
    Puzzle puzzle = herb_bed();
    CHECK(shown(listed(puzzle, ListOrder::given)) ==
          std::vector<std::string>{"Thyme", "Basil", "Lamb's ear", "Sage", "Mint", "Bay leaf"});
    CHECK(shown(listed(puzzle, ListOrder::alphabetical)) ==
          std::vector<std::string>{"Basil", "Bay leaf", "Lamb's ear", "Mint", "Sage", "Thyme"});
    CHECK(shown(listed(puzzle, ListOrder::length)) ==
          std::vector<std::string>{"Sage", "Mint", "Thyme", "Basil", "Bay leaf", "Lamb's ear"});
    // CLDR: in Welsh LL is a letter after L, in Swedish Ö stands at the end, in German with O.
    puzzle.words = {{"llwyn", {"LL", "W", "Y", "N"}, {}}, {"lwc", {"L", "W", "C"}, {}}};
    puzzle.recipe.text.locale = "cy";
    CHECK(shown(listed(puzzle, ListOrder::alphabetical)) == std::vector<std::string>{"lwc", "llwyn"});
    puzzle.words = {{"Öl", {"Ö", "L"}, {}}, {"Zaun", {"Z", "A", "U", "N"}, {}}, {"Ost", {"O", "S", "T"}, {}}};
    puzzle.recipe.text.locale = "sv";
    CHECK(shown(listed(puzzle, ListOrder::alphabetical)) == std::vector<std::string>{"Ost", "Zaun", "Öl"});
    puzzle.recipe.text.locale = "de";
    CHECK(shown(listed(puzzle, ListOrder::alphabetical)) == std::vector<std::string>{"Öl", "Ost", "Zaun"});
}

TEST_CASE("a key's rings hold their word's letters and no ring runs along another") {
    Recipe recipe = test::recipe_of({"Anne", "Ann", "Joanna", "Sage", "Sageleaf", "Mint"});
    recipe.nested = Nested::separate;
    recipe.size = Size{12, 12};
    recipe.directions = Directions::all();
    const Puzzle puzzle = make(recipe).value();
    constexpr double cell = 10;
    const auto marks = key_marks(puzzle, {0, 0}, cell);
    REQUIRE(marks.size() == puzzle.words.size());
    for (const KeyMark& mark : marks) {
        const PlacedWord& word = puzzle.words[mark.word];
        for (int at = 0; at < static_cast<int>(word.letters.size()); ++at) {
            const Cell in = moved(word.placed.first, word.placed.direction, at);
            CHECK(distance({(in.column + 0.5) * cell, (in.row + 0.5) * cell}, mark.first, mark.last) < 1e-9);
        }
        CHECK(mark.radius >= 0.2 * cell);
        CHECK(mark.radius < 0.5 * cell);
        // Two on one line that share cells, or that lie side by side, keep their outlines apart.
        for (const KeyMark& other : marks) {
            if (&other == &mark) continue;
            const double a = distance(other.first, mark.first, mark.last);
            const double b = distance(other.last, mark.first, mark.last);
            const bool on_one_line = a < 1e-9 && b < 1e-9;
            if (on_one_line) CHECK(mark.radius >= other.radius + 0.03 * cell);
        }
    }
}

TEST_CASE("rings of parallel neighbours do not touch, straight or diagonal") {
    Puzzle puzzle = herb_bed();
    const auto word_at = [](Cell first, Direction direction) {
        return PlacedWord{"ABCD", {"A", "B", "C", "D"}, {first, direction}};
    };
    puzzle.words = {word_at({0, 0}, Direction::right), word_at({1, 0}, Direction::right),
                    word_at({2, 0}, Direction::down_right), word_at({2, 1}, Direction::down_right)};
    const auto marks = key_marks(puzzle, {0, 0}, 10);
    CHECK(marks[0].radius + marks[1].radius < 10 - 1);
    CHECK(marks[2].radius + marks[3].radius < 10 / std::sqrt(2) - 0.7);
}

TEST_CASE("the text version has the grid row by row, the words, and the key on a page of its own") {
    const Puzzle puzzle = herb_bed();
    PrintOptions options;
    options.name_line = "Name";
    const std::string text = worksheet_text({puzzle, "Herb bed", "B"}, options);
    CHECK(text.starts_with("Name _"));
    CHECK(text.find("\nHerb bed, version B\n") != std::string::npos);
    CHECK(text.find("10 rows, 10 columns, 6 words.") != std::string::npos);
    for (int row = 0; row < 10; ++row) {
        std::string line = (row < 9 ? " " : "") + std::to_string(row + 1);
        for (int column = 0; column < 10; ++column)
            line += " " + puzzle.grid.alphabet.text(puzzle.grid.grid[{row, column}]);
        CHECK(text.find("\n" + line + "\n") != std::string::npos);
    }
    const auto key = text.find('\f');
    REQUIRE(key != std::string::npos);
    for (const PlacedWord& word : puzzle.words) {
        const auto place = word.shown + ": row " + std::to_string(word.placed.first.row + 1) + ", column " +
                           std::to_string(word.placed.first.column + 1) + ", " +
                           std::string(name(word.placed.direction)) + "\n";
        CHECK(text.find(place) > key);
        CHECK(text.find(place) != std::string::npos);
        CHECK(text.find("\n" + word.shown + "\n") < key);
    }
    std::size_t line_start = 0;
    for (std::size_t end = text.find('\n'); end != std::string::npos;
         line_start = end + 1, end = text.find('\n', line_start))
        CHECK(end - line_start <= 41);
    options.key = false;
    CHECK(worksheet_text({puzzle, "", ""}, options).find('\f') == std::string::npos);
}

TEST_CASE("letters stand close where a line of braille would be too short for blanks between them") {
    Recipe recipe = test::recipe_of({"Thyme", "Basil"});
    recipe.size = Size{4, 30};
    const Puzzle puzzle = make(recipe).value();
    const std::string text = worksheet_text({puzzle, "", ""}, {});
    std::string row = "1 ";
    for (int column = 0; column < 30; ++column)
        row += puzzle.grid.alphabet.text(puzzle.grid.grid[{0, column}]);
    CHECK(text.find("\n" + row + "\n") != std::string::npos);
}

TEST_CASE("what cannot be printed is refused with a way out") {
    const Puzzle puzzle = herb_bed();
    CHECK(print_worksheets({}, {}).refusal().reason == Refusal::Reason::unusable);
    PrintOptions options;
    options.margin_mm = 60;
    const std::vector<Worksheet> one{{puzzle, "Herbs"}};
    CHECK_FALSE(print_worksheets(one, options).refusal().advice.empty());
    options = {};
    options.font = "No such family of letters";
    CHECK_FALSE(print_worksheets(one, options));
    Recipe recipe = test::recipe_of({"Thyme", "Basil"});
    recipe.size = Size{60, 90};
    const std::vector<Worksheet> large{{make(recipe).value(), "Field"}};
    const auto refused = print_worksheets(large, {});
    REQUIRE_FALSE(refused);
    CHECK(refused.refusal().message.find("90x60") != std::string::npos);
    CHECK(refused.refusal().advice.front().find("cells fit") != std::string::npos);
}

TEST_CASE("large print says where a grid cannot reach it, and how many columns can") {
    Recipe recipe = test::recipe_of({"Thyme", "Basil"});
    recipe.size = Size{25, 25};
    PrintOptions options;
    options.large_print = true;
    const std::vector<Worksheet> wide{{make(recipe).value(), "Field"}};
    const auto pages = print_worksheets(wide, options);
    REQUIRE(pages);
    CHECK_FALSE(pages->is_large_enough);
    CHECK(pages->letter_pt < 18);
    CHECK(pages->list_pt >= 18);
    REQUIRE_FALSE(pages->notes.empty());
    // 184.6 mm between the margins; at 18 pt a cell is 18 / 72 * 25.4 / 0.62 = 10.24 mm.
    CHECK(pages->notes.back().find("up to 18 columns") != std::string::npos);
    recipe.size = Size{18, 18};
    const std::vector<Worksheet> fitting{{make(recipe).value(), "Field"}};
    const auto large = print_worksheets(fitting, options);
    REQUIRE(large);
    CHECK(large->is_large_enough);
    CHECK(large->letter_pt >= 18);
    CHECK(large->list_pt >= 18);
}

TEST_CASE("the same worksheets give the same bytes") {
    const std::vector<Worksheet> sheets{{herb_bed(), "Herbs", "A"}, {herb_bed(), "Herbs", "B"}};
    PrintOptions options;
    options.contents = "Our garden";
    const auto once = print_worksheets(sheets, options);
    const auto again = print_worksheets(sheets, options);
    REQUIRE(once);
    REQUIRE(again);
    CHECK(once->pages == 5);
    CHECK(once->pdf == again->pdf);
    CHECK(once->pdf.starts_with("%PDF-"));
}
