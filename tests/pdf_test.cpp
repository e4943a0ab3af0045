// What outside readers of PDF make of our pages.

#include <letterlode/art.hpp>
#include <letterlode/drawing.hpp>
#include <letterlode/paper.hpp>

#include <catch2/catch.hpp>
#include <cmath>

#include "oracles/picture.hpp"
#include "panels.hpp"
#include "pdf_reader.hpp"
#include "print/pdf_document.hpp"

using namespace lode;
using namespace panels;

namespace {

PrintFonts fonts() {
    auto opened = PrintFonts::open();
    if (!opened) throw std::runtime_error(opened.refusal().message);
    return *std::move(opened);
}

PdfDocument a4(std::string_view title = "Beds") {
    return PdfDocument(size_of(Paper::a4), title, fonts());
}

// The columns of the picture that hold ink: the first and the last, in mm.
std::pair<double, double> inked(const judge::Picture& picture, double dots) {
    int first = picture.width;
    int last = -1;
    for (int y = 0; y < picture.height; ++y)
        for (int x = 0; x < picture.width; ++x)
            if (picture.darkness(x, y) > 60) {
                first = std::min(first, x);
                last = std::max(last, x);
            }
    return {first * mm_an_inch / dots, (last + 1) * mm_an_inch / dots};
}

}  // namespace

TEST_CASE("a drawing's PDF has its true size and the same shapes as its SVG") {
    const Drawing drawing = artwork_drawing(drawn(garden(), options(Surface::second)));
    const std::string pdf = to_pdf(drawing);
    const auto [width, height] = judge::size_in(pdf);
    CHECK(width == Approx(576).margin(0.01));   // 8 in
    CHECK(height == Approx(720).margin(0.01));  // 10 in
    const judge::Picture page = judge::page_picture(pdf, 150);
    const judge::Picture svg = judge::rendered(to_svg(drawing), 150);
    CHECK(judge::share_that_differs(page, svg) < 1e-3);
    CHECK(judge::share_that_differs(page.flipped(), svg) > 0.01);
}

TEST_CASE("single cuts are lines of a tenth of a millimetre in the PDF too") {
    const Drawing drawing{
        30, 20, "", "", {{"loads", {200, 0, 80}, {}, {{{5.01, 5}, {5.01, 18}}, {{8, 4}, {27, 16.5}}}}}};
    // So fine that no reader widens a line to a whole pixel.
    const judge::Picture page = judge::page_picture(to_pdf(drawing), 1270);
    CHECK(judge::share_that_differs(page, judge::rendered(to_svg(drawing), 1270)) < 1e-3);
    int wide = 0;
    for (int x = 200; x < 300; ++x) wide += page.darkness(x, 500) > 60;
    CHECK(wide == 5);
}

TEST_CASE("papers have the sizes of their standards") {
    CHECK(paper_named("a4") == Paper::a4);
    CHECK(paper_named("letter") == Paper::letter);
    CHECK_FALSE(paper_named("A4").has_value());
    for (const auto& [paper, width, height] :
         {std::tuple{Paper::a4, 595.2756, 841.8898}, std::tuple{Paper::letter, 612.0, 792.0}}) {
        CHECK(paper_named(name(paper)) == paper);
        const auto [w, h] = judge::size_in(PdfDocument(size_of(paper), "").bytes());
        CHECK(w == Approx(width).margin(0.01));
        CHECK(h == Approx(height).margin(0.01));
    }
}

TEST_CASE("text can be searched and copied, whatever its script") {
    PdfDocument pages = a4("Beds & <Borders>");
    pages.text(
        "Rhubarb and \xEF\xAC\x81"
        "eld",
        {20, 30}, {12, true});
    pages.text(
        "\xC3\x9C"
        "bertopf \xCE\xBB\xCE\xAC\xCF\x87\xCE\xB1\xCE\xBD\xCE\xBF",
        {20, 40}, {});
    pages.text("\xD7\x92\xD7\x96\xD7\xA8", {20, 50}, {});
    pages.add_page();
    pages.text("office waffle", {20, 30}, {});
    const std::string pdf = pages.bytes();
    const std::string text = judge::text_in(pdf);
    CHECK(has(text, "Rhubarb and"));
    CHECK(has(text,
              "\xC3\x9C"
              "bertopf \xCE\xBB\xCE\xAC\xCF\x87\xCE\xB1\xCE\xBD\xCE\xBF"));
    CHECK(has(text, "\xD7\x92\xD7\x96\xD7\xA8"));  // in reading order, though it is shown from the right
    CHECK(has(text, "office waffle"));
    CHECK(judge::told(pdf, "Title") == "Beds & <Borders>");
    CHECK(judge::told(pdf, "Pages") == "2");
    CHECK(has(judge::said({"pdffonts", "FILE"}, pdf), "DejaVuSans"));
}

TEST_CASE("a document has no date but the one that it is given") {
    const auto made = [](bool dated) {
        PdfDocument pages = a4();
        pages.text("Beans", {20, 30}, {12, true});
        pages.text("Peas", {20, 40}, {});
        if (dated) pages.set_date(1'700'000'000);
        return pages.bytes();
    };
    const std::string before = made(false);
    CHECK(judge::told(before, "CreationDate").empty());
    CHECK(made(false) == before);
    // date -u -d @1700000000
    CHECK(judge::told(made(true), "CreationDate") == "2023-11-14T22:13:20Z");
}

TEST_CASE("text stands where it is put, and is measured as it is printed") {
    constexpr int dots = 100;
    for (const auto& [align, left] :
         {std::pair{Align::left, 0.0}, std::pair{Align::centre, 0.5}, std::pair{Align::right, 1.0}}) {
        PdfDocument pages = a4();
        const double width = pages.width_of("HEDGEHOGH", {24, true});
        pages.text("HEDGEHOGH", {100, 50}, {24, true}, align);
        const auto [first, last] = inked(judge::page_picture(pages.bytes(), dots), dots);
        CHECK(first == Approx(100 - left * width).margin(1.2));  // side bearings
        CHECK(last == Approx(100 + (1 - left) * width).margin(1.2));
    }
}

TEST_CASE("long text is shortened or wrapped, and never leaves the page") {
    PdfDocument pages = a4();
    std::string words;
    for (int i = 0; i < 400; ++i) words += "cabbage ";
    const std::string one(3000, 'W');
    pages.text(words, {20, 20}, {});
    pages.text(one, {190, 30}, {}, Align::right);
    pages.text(words, {60, 40}, {}, Align::centre);
    const double height = pages.paragraph(words + one, {20, 60}, 50, {8}, Align::left, 40);
    CHECK(height == Approx(40 * PdfDocument::line_pitch({8})));
    const auto lines = pages.wrapped(words, 50, {8});
    std::string joined;
    for (const std::string& line : lines) {
        CHECK(pages.width_of(line, {8}) <= 50);
        joined += line + " ";
    }
    CHECK(joined.substr(0, words.size() - 1) == words.substr(0, words.size() - 1));
    std::string letters;
    for (const std::string& line : pages.wrapped(one, 50, {8})) letters += line;
    CHECK(letters == one);
    std::string endless;
    for (int i = 0; i < 5'000; ++i) endless += "\xC3\x9C";
    letters.clear();
    for (const std::string& line : pages.wrapped(endless, 50, {8})) letters += line;
    CHECK(letters == endless);
    CHECK(pages.wrapped("a\nb", 50, {8}) == std::vector<std::string>{"a", "b"});
    CHECK(pages.wrapped("WW", 0.1, {8}) == std::vector<std::string>{"W", "W"});
    CHECK(pages.shortened("short", 50, {8}) == "short");
    const std::string cut = pages.shortened(words, 50, {8});
    CHECK(cut.ends_with("\xE2\x80\xA6"));
    CHECK(pages.width_of(cut, {8}) <= 50);
    const auto [first, last] = inked(judge::page_picture(pages.bytes(), 100), 100);
    CHECK(first > 0);
    CHECK(last < 210);
}

TEST_CASE("bytes that are no text do no harm") {
    PdfDocument pages = a4("\xFF\x01\xC3");
    for (const std::string_view text :
         {"\xFF\xFE\x80", "\x01\x02\n\t", "", "\xED\xA0\x80", "\xF0\x9F\x8C\xB1"})
        pages.text(text, {20, 20}, {});
    CHECK(judge::told(pages.bytes(), "Pages") == "1");
}

TEST_CASE("rows of a table are as high as they say, and hold their cells") {
    PdfDocument pages = a4();
    const std::vector<TableColumn> columns{{30, Align::left}, {20, Align::right}};
    const std::vector<std::string> cells{"early potatoes for the long bed", "12"};
    const double height = pages.row_height(columns, cells, {});
    CHECK(height > 2 * PdfDocument::line_pitch({}));
    CHECK(pages.row({20, 20}, columns, cells, {}) == Approx(height));
    const auto [first, last] = inked(judge::page_picture(pages.bytes(), 100), 100);
    CHECK(first >= 19.9);
    CHECK(last <= 70.3);
}

TEST_CASE("shapes are clipped, moved and mirrored") {
    PdfDocument pages = a4();
    {
        const auto clipped = pages.clip({50, 50, 80, 80});
        const auto placed = pages.place({100, 50}, -1, 1);
        pages.fill(Box{0, 0, 35, 20}, ink);  // from 65 to 100 once mirrored, up to 80 once clipped
    }
    pages.fill(Box{120, 60, 121, 61}, ink);
    const auto [first, last] = inked(judge::page_picture(pages.bytes(), 127), 127);
    CHECK(first == Approx(65).margin(0.25));
    CHECK(last == Approx(121).margin(0.25));
    PdfDocument bare(size_of(Paper::letter), "");
    CHECK_THROWS_AS(bare.text("x", {10, 10}, {}), std::logic_error);
}
