// The parts of a document, for those who do not see its pages: what may stand in what, and what is written of
// it. Poppler and qpdf read it; oracles/tagged_pdf_test.py walks what the program prints.

#include <letterlode/paper.hpp>

#include <algorithm>
#include <catch2/catch.hpp>
#include <sstream>
#include <stdexcept>

#include "oracles/picture.hpp"
#include "pdf_reader.hpp"
#include "print/pdf_document.hpp"
#include "print/pdf_tags.hpp"

using namespace lode;

namespace {

constexpr Role all_roles[] = {Role::section,   Role::heading,       Role::subheading,   Role::paragraph,
                              Role::list,      Role::list_item,     Role::label,        Role::table,
                              Role::table_row, Role::column_header, Role::row_header,   Role::table_cell,
                              Role::figure,    Role::contents,      Role::contents_item};

PdfDocument a4(std::string_view title = "Beds") {
    auto fonts = PrintFonts::open();
    if (!fonts) throw std::runtime_error(fonts.refusal().message);
    return PdfDocument(size_of(Paper::a4), title, *std::move(fonts));
}

// The tree as Poppler sees it: types by their depth, and text in quotes; without attributes.
std::string tree(const std::string& pdf) {
    std::string lines;
    const std::string told = judge::said({"pdfinfo", "-struct-text", "FILE"}, pdf);
    for (std::size_t at = 0; at < told.size();) {
        const std::size_t end = std::min(told.find('\n', at), told.size());
        std::string line = told.substr(at, end - at);
        at = end + 1;
        const std::size_t first = line.find_first_not_of(' ');
        if (first == std::string::npos || line[first] == '/') continue;
        if (line[first] != '"') line = line.substr(0, line.find_first_of(" (:", first));
        lines += line + "\n";
    }
    return lines;
}

bool has(std::string_view text, std::string_view part) {
    return text.find(part) != std::string_view::npos;
}

std::size_t count(std::string_view text, std::string_view part) {
    std::size_t found = 0;
    for (std::size_t at = text.find(part); at != std::string_view::npos; at = text.find(part, at + 1))
        ++found;
    return found;
}

// Objects and content as text.
std::string plain(const std::string& pdf) {
    return judge::said({"qpdf", "--qdf", "--object-streams=disable", "--no-original-object-ids", "FILE", "-"},
                       pdf);
}

void open_path(PdfTags& tags, const std::vector<Role>& path) {
    for (const Role role : path) tags.begin(role, role == Role::figure ? "a spade" : "", "");
}

bool may_stand(const std::vector<Role>& path, Role role) {
    PdfTags tags;
    open_path(tags, path);
    try {
        open_path(tags, {role});
        return true;
    } catch (const std::logic_error&) {
        return false;
    }
}

}  // namespace

// ISO 32000-1, 14.8.4 (from memory): tables 333 to 340.
TEST_CASE("parts stand where their types may") {
    const std::vector<Role> blocks{Role::section, Role::heading, Role::subheading, Role::paragraph,
                                   Role::list,    Role::table,   Role::figure,     Role::contents};
    const std::pair<std::vector<Role>, std::vector<Role>> allowed[] = {
        {{}, blocks},
        {{Role::section}, blocks},
        {{Role::heading}, {Role::figure}},
        {{Role::subheading}, {Role::figure}},
        {{Role::paragraph}, {Role::figure}},
        {{Role::figure}, {}},
        {{Role::list}, {Role::list_item}},
        {{Role::list, Role::list_item, Role::label}, {Role::figure}},
        {{Role::table}, {Role::table_row}},
        {{Role::table, Role::table_row}, {Role::column_header, Role::row_header, Role::table_cell}},
        {{Role::table, Role::table_row, Role::table_cell}, blocks},
        {{Role::contents}, {Role::contents_item, Role::contents}},
    };
    for (const auto& [path, roles] : allowed)
        for (const Role role : all_roles) {
            CAPTURE(path.size(), path.empty() ? -1 : static_cast<int>(path.back()), static_cast<int>(role));
            CHECK(may_stand(path, role) == (std::find(roles.begin(), roles.end(), role) != roles.end()));
        }
    // An item holds its label, and in its body all that a section may.
    std::vector<Role> in_item = blocks;
    in_item.push_back(Role::label);
    for (const Role role : all_roles)
        CHECK(may_stand({Role::list, Role::list_item}, role) ==
              (std::find(in_item.begin(), in_item.end(), role) != in_item.end()));
    for (const Role role : all_roles) CHECK_FALSE(may_stand({Role::decoration}, role));
}

TEST_CASE("a part that is refused leaves the document as it was") {
    const auto made = [](bool refused) {
        PdfDocument pages = a4();
        const auto section = pages.tag(Role::section);
        if (refused) {
            CHECK_THROWS_AS(pages.tag(Role::table_cell), std::logic_error);
            CHECK_THROWS_AS(pages.tag(Role::figure), std::logic_error);
            CHECK_THROWS_AS(pages.tag(Role::list_item), std::logic_error);
        }
        const auto paragraph = pages.tag(Role::paragraph);
        if (refused) CHECK_THROWS_AS(pages.tag(Role::paragraph), std::logic_error);
        pages.text("Leeks", {20, 20}, {});
        return pages.bytes();
    };
    CHECK(made(true) == made(false));
}

TEST_CASE("places are set once, and links and bookmarks lead to them") {
    PdfDocument pages = a4();
    pages.set_place("shed", {10, 10});
    CHECK_THROWS_AS(pages.set_place("shed", {20, 20}), std::logic_error);

    PdfDocument linked = a4();
    {
        const auto paragraph = linked.tag(Role::paragraph);
        const auto link = linked.link("shed");
        linked.text("Shed", {20, 20}, {});
    }
    CHECK_THROWS_AS(linked.bytes(), std::logic_error);

    PdfDocument marked = a4();
    marked.bookmark("Shed", "shed");
    CHECK_THROWS_AS(marked.bytes(), std::logic_error);
}

TEST_CASE("a place is where it is drawn, on its page") {
    PdfDocument pages = a4();
    {
        const auto paragraph = pages.tag(Role::paragraph);
        const auto link = pages.link("shed", "to the shed");
        pages.text("See there", {20, 20}, {});
    }
    pages.add_page();
    {
        const auto moved = pages.place({30, 40});
        pages.set_place("shed", {10, 7});
    }
    pages.bookmark("Shed", "shed");
    const std::string pdf = pages.bytes();
    // 40 and 47 mm from the upper left corner of a page that is 297 mm high, in points.
    const std::string dests = judge::said({"pdfinfo", "-dests", "FILE"}, pdf);
    CHECK(has(dests, "   2 [ XYZ  113  709 null "));
    CHECK(has(plain(pdf), "(to the shed)"));
}

TEST_CASE("the same calls give the same bytes") {
    const auto made = [] {
        PdfDocument pages = a4();
        pages.set_language("cy");
        pages.set_place("top", {0, 0});
        pages.bookmark("Top", "top");
        const auto section = pages.tag(Role::section);
        const auto figure = pages.tag(Role::figure, "a spade");
        pages.fill(Box{20, 20, 30, 30}, ink);
        return pages.bytes();
    };
    CHECK(made() == made());
}

// Cairo's own file comes out, as it would without this machinery.
TEST_CASE("a document without parts is not rewritten") {
    const auto made = [](bool decorated) {
        PdfDocument pages = a4();
        const auto decoration = decorated ? std::optional(pages.tag(Role::decoration)) : std::nullopt;
        pages.text("Beans", {20, 20}, {});
        pages.text("Peas", {40, 20}, {});
        pages.paragraph("Marigolds for the long bed beside the water butt", {20, 40}, 30, {});
        pages.fill(Box{20, 60, 30, 70}, ink);
        return pages.bytes();
    };
    const std::string pdf = made(false);
    CHECK(made(true) == pdf);
    CHECK(judge::told(pdf, "Tagged") == "no");
    CHECK(judge::told(pdf, "PDF version") == "1.5");
    const std::string objects = plain(pdf);
    for (const char* mark : {"/StructTreeRoot", "BDC", "BMC", "/Lang"}) CHECK_FALSE(has(objects, mark));
}

TEST_CASE("parts look as they would without tags") {
    const auto made = [](bool tagged) {
        PdfDocument pages = a4();
        std::vector<PdfDocument::Tagged> open;
        if (tagged) {
            open.push_back(pages.tag(Role::section));
            open.push_back(pages.tag(Role::paragraph));
        }
        const auto clipped = pages.clip({10, 10, 100, 100});
        pages.text("Early", {20, 20}, {24, true});
        pages.text("\xD7\x92\xD7\x96\xD7\xA8 12", {180, 20}, {24}, Align::right);
        pages.paragraph("Marigolds for the long bed beside the water butt", {20, 40}, 50, {18}, Align::right);
        pages.fill(Box{90, 90, 120, 120}, ink, 0.5);
        pages.stroke(Box{60, 80, 70, 90}, {1, ink, {2, 1}});
        return judge::page_picture(pages.bytes(), 100);
    };
    CHECK(judge::share_that_differs(made(true), made(false)) == 0);
}

TEST_CASE("a part goes on over pages, and what stands at their edges does not") {
    PdfDocument pages = a4();
    {
        const auto list = pages.tag(Role::list);
        for (const char* word : {"Leeks", "Kale"}) {
            const auto item = pages.tag(Role::list_item);
            pages.text(word, {20, 20}, {});
        }
        pages.text("1", {100, 290}, {});
        {
            const auto item = pages.tag(Role::list_item);
            pages.text("Runner", {20, 280}, {});
            pages.add_page();
            pages.text("bean", {20, 20}, {});
        }
        pages.text("2", {100, 290}, {});
    }
    const std::string pdf = pages.bytes();
    CHECK(tree(pdf) ==
          "Document\n"
          "  L\n"
          "    LI\n      LBody\n        \"Leeks\"\n"
          "    LI\n      LBody\n        \"Kale\"\n"
          "    LI\n      LBody\n        \"Runner\"\n        \" bean\"\n");
    const std::string objects = plain(pdf);
    CHECK(count(objects, "/Type /MCR") == 1);  // the second page's share of the one body
    CHECK(count(objects, "/Artifact BMC") == 2);
}

TEST_CASE("what is drawn beside a table's cells is decoration") {
    PdfDocument pages = a4();
    {
        const auto table = pages.tag(Role::table, "Where words stand");
        pages.stroke(Box{10, 10, 100, 40}, {});
        const auto row = pages.tag(Role::table_row);
        pages.text("decoration", {10, 50}, {});
        {
            const auto head = pages.tag(Role::row_header);
            pages.text("Leek", {20, 20}, {});
        }
        const auto cell = pages.tag(Role::table_cell);
        const auto decoration = pages.tag(Role::decoration);
        pages.text("more of it", {60, 20}, {});
    }
    const std::string pdf = pages.bytes();
    CHECK(tree(pdf) == "Document\n  Table\n    TR\n      TH\n        \"Leek\"\n      TD\n");
    const std::string objects = plain(pdf);
    CHECK(has(objects, "/Scope /Row"));
    CHECK(has(objects, "/Summary (Where words stand)"));
}

TEST_CASE("a figure's box is where it is seen: mirrored, moved and clipped") {
    PdfDocument pages = a4();
    {
        const auto figure = pages.tag(Role::figure, "two beds");
        const auto clipped = pages.clip({50, 50, 80, 65});
        const auto placed = pages.place({100, 50}, -1, 2);
        pages.fill(Box{0, 0, 35, 20},
                   ink);  // from 65 to 100 once mirrored, up to 80 and down to 65 once clipped
    }
    // ISO 32000-1, 14.8.5.4.3: left, bottom, right, top in points from the lower left corner; 297 mm are
    // 841.89.
    const std::string objects = plain(pages.bytes());
    CHECK(has(objects, "/Alt (two beds)"));
    const std::size_t at = objects.find("/BBox [");
    REQUIRE(at != std::string::npos);
    std::istringstream numbers(objects.substr(at + 7));
    for (const double expected :
         {65 * points_a_mm, (297 - 65) * points_a_mm, 80 * points_a_mm, (297 - 50) * points_a_mm}) {
        double number = 0;
        numbers >> number;
        CHECK(number == Approx(expected).margin(1));  // Cairo tells a clip in whole points, rounded outwards
    }
}

TEST_CASE("text that is mirrored is read as it was given") {
    PdfDocument pages = a4();
    {
        const auto paragraph = pages.tag(Role::paragraph);
        const auto placed = pages.place({150, 50}, -1, 1);
        pages.text("Tool shed", {0, 0}, {20});
        pages.text("\xD7\x92\xD7\x96\xD7\xA8 12", {20, 20}, {20});
    }
    const std::string pdf = pages.bytes();
    CHECK(has(tree(pdf), "\"Tool shed\""));
    CHECK(judge::told(pdf, "Tagged") == "yes");
    const judge::Picture picture = judge::page_picture(pdf, 100);
    int right = 0;
    for (int y = 0; y < picture.height; ++y)
        for (int x = 0; x < picture.width; ++x)
            if (picture.darkness(x, y) > 60) right = std::max(right, x);
    CHECK(right <= 150 * 100 / 25.4);  // all lies left of the place
}

// ISO 32000-1, 14.8.2.5: readers take words apart at blanks alone.
TEST_CASE("texts of one part are words apart") {
    PdfDocument pages = a4();
    {
        // Large and at the page's edge, where Cairo leaves out a blank that is alone.
        const auto heading = pages.tag(Role::heading);
        pages.text("Beds", {105, 20}, {24, true}, Align::centre);
        pages.text("A", {200, 20}, {24, true}, Align::right);
    }
    {
        const auto paragraph = pages.tag(Role::paragraph);
        pages.paragraph("Marigolds for the long bed beside the water butt", {5, 40}, 60, {24});
        pages.text("and leeks", {5, 100}, {});
        pages.paragraph("\nand kale", {5, 105}, 60, {});
    }
    {
        const auto paragraph = pages.tag(Role::paragraph);
        pages.paragraph(std::string(40, 'W'), {5, 120}, 60, {24});  // broken within
    }
    for (const char* word : {"Kale", "Leek"}) {
        const auto paragraph = pages.tag(Role::paragraph);
        pages.text(word, {5, 250}, {});
    }
    const std::string told = tree(pages.bytes());
    CHECK(has(told, "\"Beds A\""));
    CHECK(has(told, "\"Marigolds for the long bed beside the water butt and leeks and kale\""));
    CHECK(has(told, "\"" + std::string(40, 'W') + "\""));
    CHECK(has(told, "\"Kale\"\n"));
    CHECK(has(told, "\"Leek\"\n"));
}

TEST_CASE("a link tells the text that it has, or its description") {
    PdfDocument pages = a4();
    pages.set_place("beds", {0, 0});
    {
        const auto contents = pages.tag(Role::contents);
        {
            const auto item = pages.tag(Role::contents_item);
            const auto link = pages.link("beds");
            pages.text("Beds", {20, 20}, {});
            pages.text("7", {180, 20}, {}, Align::right);
        }
        const auto item = pages.tag(Role::contents_item);
        const auto link = pages.link("beds", "back to the beds");
        pages.text("Back", {20, 40}, {});
    }
    const std::string pdf = pages.bytes();
    const std::string told = tree(pdf);
    CHECK(has(told, "TOCI\n      Reference\n        Link\n"));
    CHECK(has(told, "\"Beds 7\""));
    const std::string objects = plain(pdf);
    CHECK(has(objects, "/Contents (Beds 7)"));
    CHECK(has(objects, "/Contents (back to the beds)"));
    CHECK_FALSE(has(objects, "/Contents (Back)"));
}

TEST_CASE("a language of a part is its own") {
    PdfDocument pages = a4();
    pages.set_language("en");
    {
        const auto paragraph = pages.tag(Role::paragraph, "", "cy");
        pages.text("rhosyn", {20, 20}, {});
    }
    const std::string objects = plain(pages.bytes());
    CHECK(has(objects, "/Lang (en)"));
    CHECK(has(objects, "/Lang (cy)"));
}

// Unicode, 23.7: U+FDD0 to U+FDEF, and the last two of each plane, are no characters; Cairo fails at them.
TEST_CASE("noncharacters are replaced, wherever text is told") {
    for (const std::string_view none : {"\xEF\xBF\xBF", "\xEF\xBF\xBE", "\xEF\xB7\x90", "\xF0\x9F\xBF\xBF"}) {
        const std::string given = "Beds " + std::string(none) + ".";
        PdfDocument pages = a4(given);
        pages.set_place("beds", {0, 0});
        pages.bookmark(given, "beds");
        {
            const auto paragraph = pages.tag(Role::paragraph);
            pages.text(given, {20, 20}, {});
            pages.paragraph(given, {20, 30}, 50, {});
        }
        {
            const auto figure = pages.tag(Role::figure, given);
            pages.fill(Box{20, 50, 30, 60}, ink);
        }
        const std::string pdf = pages.bytes();
        CHECK(judge::told(pdf, "Title") == "Beds \xEF\xBF\xBD.");
        CHECK(has(tree(pdf), "\"Beds \xEF\xBF\xBD. Beds \xEF\xBF\xBD.\""));
        CHECK(has(judge::said({"pdfinfo", "-meta", "FILE"}, pdf), "Beds \xEF\xBF\xBD.<"));
    }
}
