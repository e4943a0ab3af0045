// The proof page as text. What a browser makes of it is judged in oracles/.

#include <letterlode/art.hpp>

#include <catch2/catch.hpp>

#include "cut/proof_page.hpp"
#include "panels.hpp"

using namespace lode;
using namespace panels;

TEST_CASE("the proof page needs nothing besides itself") {
    const std::string page = proof_html(drawn(garden(), options()), garden());
    CHECK(has(page, "default-src 'none'"));
    // Names of namespaces are no addresses.
    CHECK(times(page, "://") == times(page, "http://www.w3.org/2000/svg"));
    CHECK(!has(page, "url("));
    CHECK(!has(page, "@import"));
    CHECK(!has(page, "{{"));
    CHECK(times(page, "<script") == 1);
    CHECK(page == proof_html(drawn(garden(), options()), garden()));
}

TEST_CASE("words and headings are shown as text, whatever they hold") {
    Puzzle puzzle = garden();
    puzzle.words[0].shown = "<script>alert('&')</script>";
    puzzle.words[1].shown = "{{script}}\" onclick=\"\xFF\x01";
    const std::string page = proof_html(drawn(puzzle, options(Surface::second, "</title><b>\nBeds")), puzzle);
    CHECK(times(page, "<script") == 1);
    CHECK(has(page, "<bdi>&lt;script&gt;alert(&#39;&amp;&#39;)&lt;/script&gt;</bdi>"));
    CHECK(has(page, "<bdi>{{script}}&quot; onclick=&quot;\xEF\xBF\xBD </bdi>"));
    CHECK(has(page, "<h1 dir=\"auto\">&lt;/title&gt;&lt;b&gt; Beds</h1>"));
    CHECK(!has(page, "<b>"));
}

TEST_CASE("the proof page says which side is worked on") {
    CHECK(has(proof_html(drawn(garden(), options(Surface::second)), garden()),
              "Back, mirrored: the side that you work on"));
    CHECK(has(proof_html(drawn(garden(), options(Surface::first)), garden()),
              "Front, as the viewer sees it: the side that you work on"));
}
