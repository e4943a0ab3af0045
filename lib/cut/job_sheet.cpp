#include "cut/job_sheet.hpp"

#include <algorithm>
#include <array>
#include <stdexcept>

#include "art/number.hpp"
#include "cut/job_sheet_page.hpp"

namespace lode {

namespace {

// From roomy to tight: pictures shrink first, and then type.
constexpr std::array looks{
    SheetLook{9, 104, 2, 70, 96},  SheetLook{8.5, 96, 2, 60, 92}, SheetLook{8, 82, 2, 52, 88},
    SheetLook{8, 66, 3, 46, 82},   SheetLook{8, 54, 4, 40, 76},   SheetLook{8, 42, 5, 32, 66},
    SheetLook{7.5, 42, 5, 36, 74}, SheetLook{7, 40, 5, 32, 70},   SheetLook{6.5, 30, 6, 28, 64},
};
// Smaller type is taken only where two pages do not hold all otherwise.
constexpr double readable_pt = 8;
constexpr int wanted_pages = 2;
// So much of a page may stay blank at its foot before a tighter look is tried.
constexpr double tolerable_blank = 30;

std::string title_of(const Artwork& artwork) {
    std::string title = artwork.heading.empty() ? "Word grid" : artwork.heading;
    std::replace(title.begin(), title.end(), '\n', ' ');
    return title;
}

void set_all(SheetPages& pages, const JobSheet& sheet) {
    set_title(pages, sheet);
    set_films(pages, sheet);
    if (sheet.plan) set_loads(pages, sheet);
    set_order(pages, sheet);
    set_key(pages, sheet);
    set_advice(pages, sheet);
    pages.finish();
}

struct Fact {
    std::string name;
    std::string value;
};

std::vector<Fact> facts_of(const JobSheet& sheet) {
    const Artwork& artwork = sheet.artwork;
    const Size size = sheet.puzzle.grid.grid.size();
    std::vector<Fact> facts;
    if (!sheet.order.empty()) facts.push_back({"Order", sheet.order});
    const std::string shape =
        artwork.blank.shape.empty() || artwork.blank.is_rectangle() ? "" : ", " + artwork.blank.shape;
    facts.push_back({"Blank", both_units(artwork.blank) + shape});
    facts.push_back({"Grid", std::to_string(size.columns) + " x " + std::to_string(size.rows) +
                                 ", cells of " + both_units(artwork.cell_mm)});
    facts.push_back({"Seed", std::to_string(sheet.puzzle.recipe.seed)});
    facts.push_back({"Letters", both_units(artwork.cap_height_mm) + " high, " + artwork.font});
    if (artwork.heading_cap_mm > 0)
        facts.push_back({"Heading", both_units(artwork.heading_cap_mm) + " high" +
                                        (artwork.heading_font.empty() || artwork.heading_font == artwork.font
                                             ? ""
                                             : ", " + artwork.heading_font)});
    if (artwork.text_cap_mm > 0) facts.push_back({"Small text", both_units(artwork.text_cap_mm) + " high"});
    return facts;
}

}  // namespace

void set_title(SheetPages& pages, const JobSheet& sheet) {
    const TextStyle title{17, true, ink};
    pages.text("JOB SHEET", {pages.left(), pages.y + 2.2}, {7, true, quiet});
    pages.y += 3;
    pages.y += pages.paragraph(title_of(sheet.artwork), {pages.left(), pages.y}, pages.width(), title, 2) + 1;

    const bool second = sheet.artwork.surface == Surface::second;
    const TextStyle loud{pages.look().body_pt + 1.5, true, second ? alert : ink};
    const std::string surface = second
                                    ? "Second surface: cut mirrored. Already mirrored: do not mirror again."
                                    : "First surface: not mirrored. Cut the files as they are.";
    const std::string meaning = second
                                    ? "The film goes on the back of the clear blank and is seen through it."
                                    : "The film goes on the front of the blank.";
    const double inner = pages.width() - 6;
    const double top = pages.y;
    double height = 2.2;
    if (pages.drawing()) {
        const double used = PdfDocument::line_pitch(loud) + PdfDocument::line_pitch(pages.body());
        pages.document().fill(Box{pages.left(), top, pages.left() + pages.width(), top + used + 4}, ground);
    }
    height += pages.paragraph(surface, {pages.left() + 3, top + height}, inner, loud, 1);
    height += pages.paragraph(meaning, {pages.left() + 3, top + height}, inner, pages.body(), 1);
    pages.y += height + 4;

    // Two columns of facts.
    const double column = (pages.width() - 6) / 2;
    constexpr double names = 18;
    const std::vector<Fact> facts = facts_of(sheet);
    for (std::size_t i = 0; i < facts.size(); i += 2) {
        double high = 0;
        for (std::size_t side = 0; side < 2 && i + side < facts.size(); ++side) {
            const Point at{pages.left() + static_cast<double>(side) * (column + 6), pages.y};
            pages.paragraph(facts[i + side].name, at, names, {pages.look().body_pt, false, quiet}, 1);
            high = std::max(high, pages.paragraph(facts[i + side].value, {at.x + names, at.y}, column - names,
                                                  pages.body(), 2));
        }
        pages.y += high;
    }
    pages.y += 1;
}

std::string job_sheet_pdf(const JobSheet& sheet) {
    if (sheet.plan && !sheet.plan_options)
        throw std::invalid_argument("a job sheet with a plan needs the plan's options");
    auto fonts = PrintFonts::open();
    if (!fonts) throw std::runtime_error(fonts.refusal().message);
    const std::string title = title_of(sheet.artwork);
    PdfDocument document(size_of(sheet.paper), title + ": job sheet", *std::move(fonts));
    const std::string running = "Job sheet: " + title;
    // The first that fits without much blank paper, or else the fitting one with the least; where none fits,
    // the first with the fewest pages.
    const SheetLook* chosen = nullptr;
    int count = 0;
    double blank = 0;
    for (const SheetLook& look : looks) {
        const bool fitted = chosen && count <= wanted_pages;
        if (fitted && look.body_pt < readable_pt) break;
        SheetPages tried(document, look, running, std::nullopt);
        set_all(tried, sheet);
        const bool better = !chosen || (fitted ? tried.pages() <= wanted_pages && tried.blank() < blank
                                               : tried.pages() < count);
        if (!better) continue;
        chosen = &look;
        count = tried.pages();
        blank = tried.blank();
        if (count <= wanted_pages && blank <= tolerable_blank) break;
    }
    SheetPages pages(document, *chosen, running, count);
    set_all(pages, sheet);
    return document.bytes();
}

}  // namespace lode
