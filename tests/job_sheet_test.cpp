// What outside readers of PDF find on a job sheet.

#include "cut/job_sheet.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <regex>
#include <sstream>

#include "art/number.hpp"
#include "job_sheets.hpp"
#include "oracles/picture.hpp"

using namespace lode;
using namespace job_sheets;

namespace {

std::string said(const std::string& pdf, std::vector<std::string> command) {
    const judge::Folder folder;
    for (std::string& part : command)
        if (part == "FILE") part = folder.write("sheet.pdf", pdf);
    command.insert(command.begin(),
                   {"sh", "-c", "out=$1; shift; exec \"$@\" >\"$out\"", "sh", folder.name("out")});
    if (judge::run(command) != 0) throw std::runtime_error(command[5] + " refused the sheet");
    return judge::read(folder.name("out"));
}

// Blanks and ends of lines count as one blank: cells wrap.
std::string in_one_line(const std::string& text) {
    std::string line;
    for (const char c : text)
        if (c != ' ' && c != '\n' && c != '\f')
            line += c;
        else if (!line.empty() && line.back() != ' ')
            line += ' ';
    return line;
}

std::string text_in(const std::string& pdf) {
    return in_one_line(said(pdf, {"pdftotext", "FILE", "-"}));
}
std::string text_as_laid(const std::string& pdf) {
    return said(pdf, {"pdftotext", "-layout", "FILE", "-"});
}

struct Pages {
    int count = 0;
    double width_pt = 0;
    double height_pt = 0;
};
Pages pages_in(const std::string& pdf) {
    Pages pages;
    std::istringstream lines(said(pdf, {"pdfinfo", "FILE"}));
    for (std::string line; std::getline(lines, line);) {
        if (line.starts_with("Pages:")) pages.count = std::stoi(line.substr(6));
        if (line.starts_with("Page size:")) {
            std::istringstream numbers(line.substr(10));
            std::string by;
            numbers >> pages.width_pt >> by >> pages.height_pt;
        }
    }
    return pages;
}

judge::Picture picture_of(const std::string& pdf, int page, int dots) {
    const judge::Folder folder;
    const std::string number = std::to_string(page);
    if (judge::run({"pdftoppm", "-png", "-r", std::to_string(dots), "-f", number, "-l", number, "-singlefile",
                    folder.write("sheet.pdf", pdf), folder.name("page")}) != 0)
        throw std::runtime_error("pdftoppm refused the sheet");
    return judge::read_png(judge::read(folder.name("page.png")));
}

// Whether nothing comes nearer to the paper's edges than 10 mm.
bool keeps_margins(const std::string& pdf) {
    constexpr int dots = 40;
    const int margin = static_cast<int>(10 / 25.4 * dots);
    for (int page = 1; page <= pages_in(pdf).count; ++page) {
        const judge::Picture picture = picture_of(pdf, page, dots);
        for (int y = 0; y < picture.height; ++y)
            for (int x = 0; x < picture.width; ++x)
                if ((x < margin || y < margin || x >= picture.width - margin ||
                     y >= picture.height - margin) &&
                    picture.darkness(x, y) > 20)
                    return false;
    }
    return true;
}

std::string line_of(const PlacedWord& word) {
    return word.shown + " " + std::to_string(word.placed.first.row + 1) + " " +
           std::to_string(word.placed.first.column + 1) + " " + std::string(name(word.placed.direction));
}

}  // namespace

TEST_CASE("a panel's job sheet fits two pages of the paper that was asked for") {
    for (const Surface surface : {Surface::first, Surface::second}) {
        Job job = panel_with_loads(surface);
        REQUIRE(job.cut->plan.loads.size() == 2);
        REQUIRE(job.artwork.layers.size() == 4);
        for (const auto& [paper, width, height] :
             {std::tuple{Paper::a4, 595.2756, 841.8898}, std::tuple{Paper::letter, 612.0, 792.0}}) {
            job.paper = paper;
            const std::string pdf = paper == Paper::a4 ? panel_pdf(surface) : job.pdf();
            const Pages pages = pages_in(pdf);
            CHECK(pages.count <= 2);
            CHECK(pages.width_pt == Approx(width).margin(0.01));
            CHECK(pages.height_pt == Approx(height).margin(0.01));
            CHECK(keeps_margins(pdf));
        }
    }
}

TEST_CASE("a job sheet says what the piece is, and which way it is cut") {
    const std::string second = in_one_line(text_as_laid(panel_pdf(Surface::second)));
    for (const char* const part :
         {"THE TOOL SHED", "203.2 x 254 mm (8 x 10 in)", "Seed 1", "15 x 15, cells of",
          "Second surface: cut mirrored. Already mirrored: do not mirror again.",
          "Order of application, seen from the back", "not mirrored. Rows from the top"}) {
        INFO(part);
        CHECK(has(second, part));
    }
    const std::string first = in_one_line(text_as_laid(panel_pdf(Surface::first)));
    CHECK(has(first, "First surface: not mirrored."));
    CHECK(has(first, "Order of application, seen from the front"));
    CHECK_FALSE(has(first, "lready mirrored"));
    CHECK_FALSE(has(first, "seen from the back"));
}

TEST_CASE("a job sheet names each film with its size in both units, and what is cut from it") {
    const Job& job = panel_with_loads(Surface::second);
    const std::string text = text_in(panel_pdf(Surface::second));
    std::size_t films = 0;
    for (std::size_t load = 0; load < job.cut->plan.loads.size(); ++load)
        for (const FilmRectangle& film : job.cut->plan.loads[load].films) {
            ++films;
            const auto both = [](double w, double h, double unit, int decimals) {
                return decimal(w / unit, decimals) + " x " + decimal(h / unit, decimals);
            };
            const double w = film.box.width();
            const double h = film.box.height();
            const std::string size = both(w, h, 1, 1) + " mm (" + both(w, h, 25.4, 2) + " in)";
            CHECK(has(text, size));
            CHECK(has(text, size + ", " + decimal(film.box.left, 1) + " mm right, " +
                                decimal(film.box.top, 1) + " mm down"));
        }
    CHECK(films >= 4);
    for (const Layer& layer : job.artwork.layers) CHECK(has(text, to_text(layer.colour) + " " + layer.name));
    for (std::size_t i = 0; i < job.measures.layers.size(); ++i) {
        const LayerMeasures& layer = job.measures.layers[i];
        CHECK(has(text, std::to_string(i + 1) + "-" + layer.layer));
        CHECK(has(text,
                  std::to_string(layer.pieces) + " pieces, " + std::to_string(layer.counters) + " counters"));
    }
}

TEST_CASE("a cutter's speed gives its time, and without one a job sheet says how to reckon it") {
    Job job = garden(Surface::first);
    job.artwork.layers.resize(1);
    job.measures.layers.resize(1);
    job.measures.layers[0].cut_mm = 12'000;
    const std::string without = text_in(job.pdf());
    CHECK(has(without, "12 m (39.4 ft)"));
    CHECK(has(without, "Length divided by the cutter's speed is its time: all of it takes 4 min at 50 mm/s"));
    job.speed = 100;
    const std::string with = text_in(job.pdf());
    CHECK(has(with, "12 m (39.4 ft) 2 min"));
    CHECK(has(with, "Time at 100 mm/s"));
}

TEST_CASE("without a plan a job sheet still says how much film each layer needs") {
    const Job job = garden(Surface::second);
    const std::string text = text_in(job.pdf());
    for (const LayerMeasures& layer : job.measures.layers) {
        INFO(layer.layer);
        CHECK(has(text, decimal(layer.box.width(), 1) + " x " + decimal(layer.box.height(), 1) + " mm"));
    }
    CHECK(has(text, "leave some more on each side"));
    CHECK_FALSE(has(text, "Load 1"));
    CHECK_FALSE(has(text, "witness"));
}

TEST_CASE("a leftover message stands beside the answer key") {
    Job job = garden(Surface::first);
    job.puzzle.recipe.message = "THE GATE IS OPEN";
    CHECK(has(text_in(job.pdf()), "The other cells spell, row by row:"));
    CHECK(has(text_in(job.pdf()), "THE GATE IS OPEN"));
}

TEST_CASE("the answer key reads as the viewer sees it") {
    const Job& job = panel_with_loads(Surface::second);
    const std::string text = in_one_line(text_as_laid(panel_pdf(Surface::second)));
    for (const PlacedWord& word : job.puzzle.words) CHECK(has(text, line_of(word)));
    const Job small = garden(Surface::first);
    const std::string small_text = in_one_line(text_as_laid(small.pdf()));
    for (const PlacedWord& word : small.puzzle.words) {
        INFO(line_of(word));
        CHECK(has(small_text, line_of(word)));
    }
    const LetteredGrid& grid = job.puzzle.grid;
    for (int row = 0; row < grid.grid.size().rows; ++row) {
        std::string letters = std::to_string(row + 1);
        for (int column = 0; column < grid.grid.size().columns; ++column)
            letters += " " + grid.alphabet.text(grid.grid[{row, column}]);
        CHECK(has(text, letters));
    }
}

TEST_CASE("the order of application is pictured from the side where the maker works") {
    // One black square near the blank's left edge, and nothing else that is black and as large.
    Job job;
    job.puzzle = panels::garden();
    for (const Surface surface : {Surface::first, Surface::second}) {
        job.artwork = artwork_of(job.puzzle, shaped_blank("rectangle", {200, 200}), surface, "BEDS");
        Path square;
        square.contours.push_back({{20, 80},
                                   {Segment::line({60, 80}), Segment::line({60, 120}),
                                    Segment::line({20, 120}), Segment::line({20, 80})}});
        job.artwork.layers = {{"bands", Colour{255, 0, 255}, {{"square", square}}}};
        job.measures = measures_of(job.artwork);
        const std::string pdf = job.pdf();
        const judge::Picture page = picture_of(pdf, 1, 100);
        // The picture's left edge is the page's margin of 12 mm; its square is the largest thing of that
        // colour. Of each column the longest stretch of the colour, in pixels.
        std::vector<int> columns(static_cast<std::size_t>(page.width));
        for (int x = 0; x < page.width; ++x)
            for (int y = 0, stretch = 0; y < page.height; ++y) {
                const std::size_t at =
                    3 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(page.width) +
                         static_cast<std::size_t>(x));
                const bool coloured = page.rgb[at] > 240 && page.rgb[at + 1] < 20 && page.rgb[at + 2] > 240;
                stretch = coloured ? stretch + 1 : 0;
                columns[static_cast<std::size_t>(x)] =
                    std::max(columns[static_cast<std::size_t>(x)], stretch);
            }
        const int highest = *std::max_element(columns.begin(), columns.end());
        std::vector<double> tall;  // mm from the left margin
        for (std::size_t x = 0; x < columns.size(); ++x)
            if (columns[x] > 0.8 * highest) tall.push_back(static_cast<double>(x) / 100 * 25.4 - 12);
        const double square_width = static_cast<double>(highest) / 100 * 25.4;
        // 20 to 60 of 200 from the left, or from the right: half a square's width, or three and a half, from
        // the left.
        const double expected = surface == Surface::first ? square_width / 2 : 3.5 * square_width;
        CHECK(tall.front() == Approx(expected).margin(0.7));
    }
}

TEST_CASE("a job sheet tells what is too thin and the ways out, or how much there is to spare") {
    Job job = garden(Surface::first);
    const std::string good = text_in(job.pdf());
    CHECK(has(good,
              "Everything holds: narrowest stroke 1.25 mm (0.049 in) (A at row 1, column 2), narrowest gap "
              "1.5 mm"));
    job.measures.thin = {
        {ThinFinding::Kind::stroke, "letters", "W at row 5, column 6", "", 0.7, {}, 3},
        {ThinFinding::Kind::between_pieces, "heading", "T in the heading", "H in the heading", 0.4, {}, 1}};
    job.ways_out = {"Take a blank of 254 x 305 mm."};
    job.changed = {"Strokes were made wider by 0.2 mm."};
    job.artwork.notes = {"Capitals come out 5 mm high."};
    const std::string thin = text_in(job.pdf());
    for (const char* const part :
         {"2 places are too thin",
          "The stroke of W at row 5, column 6 (letters) is 0.7 mm (0.028 in) wide; 3 pieces are alike.",
          "Between T in the heading and H in the heading (heading) there are 0.4 mm (0.016 in).", "Ways out",
          "Take a blank of 254 x 305 mm.", "Strokes were made wider by 0.2 mm.",
          "Capitals come out 5 mm high."}) {
        INFO(part);
        CHECK(has(thin, part));
    }
    CHECK_FALSE(has(thin, "Everything holds"));
}

TEST_CASE("a job sheet warns of what can hurt or spoil") {
    const std::string text = text_in(panel_pdf(Surface::second));
    for (const char* const part :
         {"laser", "hot-wire", "PVC", "Isopropyl", "acrylic", "children under three", "rated for its weight",
          "local rules", "Blades and weeding hooks", "slant", "one by one", "squeegee", "transfer tape"}) {
        INFO(part);
        CHECK(has(text, part));
    }
}

TEST_CASE("loads without a witness say so, and the rule is told once") {
    Job job = panel_with_loads(Surface::second);
    const std::string with = text_in(panel_pdf(Surface::second));
    CHECK(has(with, "The ringed letter is the witness: it lies backwards on the bed"));
    CHECK(has(with, "If it reads right on the bed, the load was mirrored once more"));
    CHECK_FALSE(has(with, "No room for a witness"));
    const std::string unmirrored = text_in(panel_pdf(Surface::first));
    CHECK(has(unmirrored, "The ringed letter is the witness: it reads right on the bed"));
    CHECK(has(unmirrored, "If it lies backwards, the load was mirrored"));
    for (auto& witness : job.cut->witnesses) witness.reset();
    CHECK(has(text_in(job.pdf()), "No room for a witness"));
}

TEST_CASE("a dozen loads become small pictures on two pages") {
    Job job = garden(Surface::second);
    add_plan(job, with_bed(400, 215));
    const std::vector<Load> loads = job.cut->plan.loads;
    const auto witnesses = job.cut->witnesses;
    while (job.cut->plan.loads.size() < 12) {
        job.cut->plan.loads.insert(job.cut->plan.loads.end(), loads.begin(), loads.end());
        job.cut->witnesses.insert(job.cut->witnesses.end(), witnesses.begin(), witnesses.end());
    }
    const std::string pdf = job.pdf();
    CHECK(pages_in(pdf).count <= 2);
    CHECK(keeps_margins(pdf));
    const std::string text = text_in(pdf);
    for (int load = 1; load <= 12; ++load) CHECK(has(text, "Load " + std::to_string(load) + ":"));
}

TEST_CASE("pictures of loads leave out the marks of split parts where letters are small") {
    Job with = garden(Surface::first);
    add_plan(with, with_bed(150, 180));
    Job without = with;
    REQUIRE_FALSE(without.cut->plan.parts.empty());
    for (SplitPart& part : without.cut->plan.parts) {
        REQUIRE_FALSE(part.marks.empty());
        part.marks = {};
    }
    CHECK(with.pdf() != without.pdf());
    // The same loads on a larger bed's picture: its letters are a fraction of a millimetre high.
    for (Job* job : {&with, &without}) job->plan_options.bed = {4'000, 4'000, 6};
    CHECK(with.pdf() == without.pdf());
}

TEST_CASE("what is split shows how its parts join") {
    Job job = garden(Surface::second);
    add_plan(job, with_bed(150, 180));
    REQUIRE_FALSE(job.cut->plan.parts.empty());
    const std::string pdf = job.pdf();
    const std::string text = text_in(pdf);
    CHECK(has(text, "Joins"));
    CHECK(has(text, "diamonds"));
    CHECK(has(text, "letters, part 1 of"));
    CHECK(keeps_margins(pdf));
}

TEST_CASE("long, right-to-left and strange texts stay on the page") {
    Job job = garden(Surface::first);
    add_plan(job, with_bed(400, 215));
    std::string endless;
    for (int i = 0; i < 60; ++i) endless += "Wrenbarrow";
    job.artwork.heading = endless + "\nשלום גן " + endless;
    job.artwork.font = endless;
    job.puzzle.words[0].shown = endless;
    job.puzzle.words[1].shown = "ירקות בגינה";
    job.puzzle.words[2].shown = "a\tb\x01\xff c";
    job.artwork.notes = {endless, "חסה " + endless};
    job.ways_out = std::vector<std::string>(40, endless);
    job.changed = job.ways_out;
    for (int i = 0; i < 50; ++i)
        job.measures.thin.push_back(
            {ThinFinding::Kind::between_pieces, endless, endless, endless, 0.3, {}, 1});
    const std::string pdf = job.pdf();
    CHECK(keeps_margins(pdf));
    CHECK(has(text_in(pdf), "And 42 more places."));
}

TEST_CASE("a grid that is too large to be drawn is said to be") {
    std::vector<std::string> words;
    for (int i = 0; i < 300; ++i)
        words.push_back("W" + std::string(1, static_cast<char>('A' + i % 26)) + std::to_string(i));
    Job job;
    job.puzzle = panels::of_rows(std::vector<std::string>(31, std::string(31, 'A')));
    for (const std::string& word : words)
        job.puzzle.words.push_back({word, {"A", "A", "A"}, {{1, 1}, Direction::down}});
    job.artwork = artwork_of(job.puzzle, shaped_blank("rectangle", {400, 500}), Surface::first, "BEDS");
    job.artwork.layers.resize(1);
    job.measures = measures_of(job.artwork);
    const std::string text = text_in(job.pdf());
    CHECK(has(text, "The grid is too large to be drawn at this size."));
    std::smatch listed;
    REQUIRE(std::regex_search(text, listed, std::regex("Only the first (\\d+) of 300 words find room here")));
    const auto count = static_cast<std::size_t>(std::stoi(listed[1]));
    REQUIRE(count > 0);
    REQUIRE(count < words.size());
    CHECK(has(text, words[count - 1]));
    CHECK_FALSE(has(text, words[count] + " "));
}

TEST_CASE("the same job gives the same bytes") {
    CHECK(panel_with_loads(Surface::second).pdf() == panel_pdf(Surface::second));
}

TEST_CASE("a plan without its options is a broken call") {
    Job job = panel_with_loads(Surface::second);
    JobSheet sheet = job.sheet();
    sheet.plan_options = nullptr;
    CHECK_THROWS_AS(job_sheet_pdf(sheet), std::invalid_argument);
}
