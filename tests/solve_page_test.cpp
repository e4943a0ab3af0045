// The page to solve a puzzle on as text. What a browser makes of it is judged in oracles/.

#include <letterlode/print.hpp>

#include <catch2/catch.hpp>

#include "panels.hpp"
#include "print/html_text.hpp"
#include "print/solve_page.hpp"

using namespace lode;
using namespace panels;

namespace {

std::string page_of(const Puzzle& puzzle, const PrintOptions& options = {}) {
    return solve_page({puzzle, "Herb bed", ""}, options);
}

PrintOptions without_key() {
    PrintOptions options;
    options.key = false;
    return options;
}

}  // namespace

TEST_CASE("the page to solve a puzzle on needs nothing besides itself") {
    const std::string page = page_of(garden());
    CHECK(has(page, "default-src 'none'"));
    CHECK(!has(page, "unsafe"));
    // Names of namespaces are no addresses.
    CHECK(times(page, "://") == times(page, "http://www.w3.org/2000/svg"));
    CHECK(!has(page, "url("));
    CHECK(!has(page, "@import"));
    CHECK(!has(page, "{{"));
    // A policy by digests lets no style in an attribute through.
    CHECK(!has(page, " style="));
    CHECK(times(page, "<script") == 1);
    CHECK(times(page, "<style") == 1);
    CHECK(times(page, "<h1") == 1);
    CHECK(page == page_of(garden()));
}

TEST_CASE("words, letters, titles and languages are shown as text, whatever they hold") {
    Puzzle puzzle = of_cells({{"<b>", "\""}, {"&", "."}}, {{"AB", 0, 0, Direction::right}});
    puzzle.words[0].shown = "<script>alert('&')</script>";
    puzzle.words[0].letters = {"<b>", "\""};
    puzzle.recipe.text.locale = "cy\" onload=\"";
    puzzle.recipe.message = "</section><i>";
    PrintOptions options;
    options.order = ListOrder::given;  // no language could sort by such a locale
    const std::string page =
        solve_page({puzzle, "</title><b>\nBeds\xE2\x80\xAE{{words}}", "<A>\xFF"}, options);
    CHECK(times(page, "<script") == 1);
    CHECK(has(page,
              "<li data-letters=\"&lt;b&gt; "
              "&quot;\"><bdi>&lt;script&gt;alert(&#39;&amp;&#39;)&lt;/script&gt;</bdi>"));
    CHECK(has(page,
              "<tr><td class=\"more\">&lt;b&gt;<td>&quot;</tr>\n<tr><td>&amp;<td class=\"closed\"></tr>"));
    CHECK(has(page, ">&lt;/title&gt;&lt;b&gt; Beds{{words}}</h1>"));
    CHECK(has(page, "<bdi>&lt;A&gt;\xEF\xBF\xBD</bdi>"));
    CHECK(has(page, "lang=\"cy&quot; onload=&quot;\""));
    CHECK(has(page, "<bdi>&lt;/section&gt;&lt;i&gt;</bdi>"));
    CHECK(!has(page, "<b>"));
    CHECK(!has(page, "\xE2\x80\xAE"));
}

TEST_CASE("text for a page has no control characters and turns nothing round") {
    // UAX #9, section 2: the marks, embeddings, overrides and isolates, in their order.
    for (const std::string mark :
         {"\xD8\x9C", "\xE2\x80\x8E", "\xE2\x80\x8F", "\xE2\x80\xAA", "\xE2\x80\xAB", "\xE2\x80\xAC",
          "\xE2\x80\xAD", "\xE2\x80\xAE", "\xE2\x81\xA6", "\xE2\x81\xA7", "\xE2\x81\xA8", "\xE2\x81\xA9"})
        CHECK(html_text("a" + mark + "b") == "ab");
    CHECK(html_text("a\tb\nc\x7F\xC2\x85") == "a b c  ");
    CHECK(html_text("\xF0\x9F\x8C\xB1\xE2\x80\x8D'") == "\xF0\x9F\x8C\xB1\xE2\x80\x8D&#39;");
    CHECK(html_text("\xED\xA0\x80").find("\xEF\xBF\xBD") == 0);
    CHECK(html_text("").empty());
}

TEST_CASE("places stand in the page only where it has a key") {
    const std::string with = page_of(garden());
    CHECK(has(with,
              "<tr data-ends=\"1 2 1 5\"><th scope=\"row\" "
              "lang=\"\"><bdi>BEAN</bdi></th><td>2</td><td>3</td><td>right</td>"));
    CHECK(has(with, "id=\"show-key\""));
    const std::string without = page_of(garden(), without_key());
    CHECK(!has(without, "data-ends=\""));
    CHECK(!has(without, "id=\"show-key\""));
    CHECK(!has(without, "<section id=\"key\""));
    // Nothing in it depends on where the words were placed.
    Puzzle moved_about = garden();
    for (PlacedWord& word : moved_about.words) word.placed = {{6, 8}, Direction::up_left};
    CHECK(page_of(moved_about, without_key()) == without);
    CHECK(page_of(moved_about) != with);
}

TEST_CASE("what the leftover letters spell stands in the key alone") {
    Puzzle puzzle = garden();
    puzzle.recipe.message = "WATER ME";
    CHECK(has(page_of(puzzle), "WATER ME"));
    CHECK(!has(page_of(puzzle, without_key()), "WATER ME"));
}

TEST_CASE("the page lists words in the order that is asked for, and in their direction") {
    PrintOptions options;
    for (const ListOrder order : {ListOrder::alphabetical, ListOrder::given, ListOrder::length}) {
        options.order = order;
        const std::string page = page_of(garden(), options);
        std::size_t at = 0;
        for (const PlacedWord& word : listed(garden(), order)) {
            at = page.find("<li data-letters=", at + 1);
            REQUIRE(at != std::string::npos);
            CHECK(page.find("<bdi>" + word.shown + "</bdi>", at) < page.find("</li>", at));
        }
        CHECK(!has(page, "dir=\"rtl\""));
    }
    Puzzle hebrew = of_cells({{"\xD7\x92", "\xD7\x96", "\xD7\xA8"}});
    hebrew.words.push_back(
        {"\xD7\x92\xD7\x96\xD7\xA8", {"\xD7\x92", "\xD7\x96", "\xD7\xA8"}, {{0, 2}, Direction::left}});
    hebrew.recipe.text.locale = "he";
    const std::string page = page_of(hebrew);
    CHECK(has(page, "<ul id=\"words\" translate=\"no\" dir=\"rtl\" lang=\"he\">"));
    // Column 1 is leftmost in every script.
    CHECK(has(page, "role=\"grid\" dir=\"ltr\""));
}

TEST_CASE("letters of several signs are set smaller, and clusters of one sign are not") {
    const std::string page = page_of(of_cells(
        {{"LL", "L", "DZS"},
         {"\xE0\xA4\xB8\xE0\xA5\x8D\xE0\xA4\xA4\xE0\xA5\x8D\xE0\xA4\xB0\xE0\xA4\xBF", "E\xCC\x81", "."}}));
    CHECK(has(page, "<tr><td class=\"two\">LL<td>L<td class=\"more\">DZS</tr>"));
    CHECK(has(page,
              "<tr><td>\xE0\xA4\xB8\xE0\xA5\x8D\xE0\xA4\xA4\xE0\xA5\x8D\xE0\xA4\xB0\xE0\xA4\xBF<td>E\xCC\x81<"
              "td class=\"closed\"></tr>"));
}

TEST_CASE("words are ringed in the colours asked for, as far as they are seen") {
    const Colour black{0, 0, 0}, white{255, 255, 255}, yellow{0xFF, 0xE0, 0x00}, red{0xE3, 0x00, 0x20};
    CHECK(seen_on(solve_ground, std::vector{black, white, yellow}) == std::vector{black});
    CHECK(seen_on(solve_ground_dark, std::vector{black, white, yellow}) == std::vector{white, yellow});
    for (const Colour ground : {solve_ground, solve_ground_dark}) {
        const auto own = seen_on(ground, std::vector{ground});
        CHECK(own.size() >= 6);
        CHECK(own == seen_on(ground, {}));
        for (const Colour colour : own) CHECK(contrast_ratio(colour, ground) >= 3);
    }
    PrintOptions options;
    options.colours = {red, black, yellow};
    CHECK(has(page_of(garden(), options), "data-light=\"#e30020 #000000\" data-dark=\"#e30020 #ffe000\""));
    // The grounds are those of the style.
    const std::string page = page_of(garden());
    CHECK(page.find("--card: " + to_text(solve_ground) + ";") <
          page.find("--card: " + to_text(solve_ground_dark) + ";"));
    CHECK(has(page, "--card: " + to_text(solve_ground_dark) + ";"));
}

TEST_CASE("a puzzle is known again by its letters and its words") {
    const auto known_by = [](const Puzzle& puzzle) {
        const std::string page = page_of(puzzle);
        return page.substr(page.find("data-puzzle=\""), 30);
    };
    Puzzle other = garden();
    other.recipe.seed = 7;
    CHECK(known_by(other) == known_by(garden()));
    other.words.pop_back();
    CHECK(known_by(other) != known_by(garden()));
    CHECK(known_by(of_rows({"ABC", "DEF"})) != known_by(of_rows({"AB", "CD", "EF"})));
    CHECK(known_by(of_cells({{"LL", "A"}})) != known_by(of_cells({{"L", "LA"}})));
}
