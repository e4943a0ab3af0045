// The loads: where the film lies on the bed, and what is cut from it.

#include <algorithm>

#include "art/number.hpp"
#include "cut/job_sheet_page.hpp"

namespace lode {

namespace {

constexpr double gap = 6;
constexpr double tag_pt = 5.5;
constexpr double tint = 0.16;  // of film about its pieces
constexpr Colour unreached{0xdd, 0xdf, 0xdc};
constexpr std::size_t most_name_lines = 3;  // of what a load holds
constexpr double small_on_paper = 2;        // how high letters may be
constexpr double roll_share = 1.6;          // of the height that a bed's picture may have, for a long strip

struct Line {
    std::optional<Colour> swatch;
    std::string text;
};

struct LoadCell {
    const Load* load = nullptr;
    const CutPlan::Witness* witness = nullptr;  // none: there was no room
    std::size_t number = 0;                     // from 0
    std::vector<Line> lines;
};

// "letters", or "letters, part 2 of 4" where it was split; pieces that lie one by one are told by their
// layer.
std::string contents(const CutPlan& cut, const Load& load) {
    std::vector<std::string> names;
    for (const PlacedPiece& placed : load.pieces) {
        const std::string& name =
            placed.part ? cut.plan.parts.at(*placed.part).name : cut.pieces.at(placed.piece).layer;
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
    std::string list;
    for (const std::string& name : names) list += (list.empty() ? "" : "; ") + name;
    return list;
}

std::string film_text(const FilmRectangle& film, std::size_t index, const PlanOptions& options) {
    std::string text = film_letter(index) + " " + rule_text(film.box.width(), film.box.height()) + ", " +
                       decimal(film.box.left, 1) + " mm right, " + decimal(film.box.top, 1) + " mm down (" +
                       decimal(film.box.left / 25.4, 2) + ", " + decimal(film.box.top / 25.4, 2) + " in)";
    if (!film.stock || *film.stock >= options.films.size()) return text;
    const FilmStock& stock = options.films[*film.stock];
    text += stock.height_mm > 0 ? "; from your sheet of " + rule_text(stock.width_mm, stock.height_mm)
                                : "; from your roll, " + rule_text(stock.width_mm) + " wide";
    if (stock.count > 1) text += ", no. " + std::to_string(film.sheet + 1);
    text += ", taken " + decimal(film.corner.x, 1) + " mm right, " + decimal(film.corner.y, 1) + " mm down";
    if (film.turned) text += ", turned a quarter";
    return text;
}

LoadCell cell_of(const JobSheet& sheet, std::size_t number) {
    const CutPlan& cut = *sheet.plan;
    const Load& load = cut.plan.loads[number];
    LoadCell cell{&load, nullptr, number, {}};
    if (number < cut.witnesses.size() && cut.witnesses[number] && !cut.witnesses[number]->path.empty())
        cell.witness = &*cut.witnesses[number];
    for (std::size_t i = 0; i < load.films.size(); ++i)
        cell.lines.push_back({load.films[i].colour, film_text(load.films[i], i, *sheet.plan_options)});
    if (sheet.plan_options->bed.height_mm <= 0)
        cell.lines.push_back({std::nullopt, "Length on the roll: " + rule_text(load.length_mm)});
    cell.lines.push_back({std::nullopt, cell.witness ? "Witness, enlarged" : "No room for a witness."});
    return cell;
}

double bed_height(const PlanOptions& options, const Load& load) {
    return options.bed.height_mm > 0 ? options.bed.height_mm : load.length_mm;
}

class LoadPicture {
  public:
    LoadPicture(SheetPages& pages, const JobSheet& sheet, double scale)
        : pages_(pages), cut_(*sheet.plan), plan_(cut_.plan), options_(*sheet.plan_options), scale_(scale) {
        for (SplitPart& part : plan_.parts)
            if (is_small(part.path)) part.marks = {};
    }

    void draw(const LoadCell& cell, Point corner) const {
        draw_bed(cell, corner);
        for (std::size_t i = 0; i < cell.load->films.size(); ++i) draw_tag(cell.load->films[i], i, corner);
        // The bed's own corner, from which all is measured.
        pages_.document().fill(capsule(corner, corner, 0.9), alert);
    }

  private:
    void draw_bed(const LoadCell& cell, Point corner) const {
        PdfDocument& document = pages_.document();
        const double edge = options_.bed.edge_mm;
        const double width = options_.bed.width_mm;
        const double height = bed_height(options_, *cell.load);
        const auto kept = document.place(corner, scale_, scale_);
        document.fill(Box{0, 0, width, height}, unreached);
        document.fill(Box{edge, edge, width - edge, height - edge}, {0xff, 0xff, 0xff});
        document.stroke(Box{0, 0, width, height}, {0.25 / scale_, quiet, {}});
        for (const FilmRectangle& film : cell.load->films) {
            document.fill(film.box, {0xff, 0xff, 0xff});
            document.fill(film.box, film.colour, tint);
            document.stroke(film.box, {0.2 / scale_, quiet, {}});
        }
        for (const PlacedPiece& placed_piece : cell.load->pieces) {
            const Path path = placed(cut_.pieces, plan_, placed_piece);
            const Colour colour = cut_.pieces.at(placed_piece.piece).colour;
            document.fill(path, colour);
            if (is_pale(colour)) document.stroke(path, {0.08 / scale_, quiet, {}});
        }
        if (cell.witness) draw_witness(*cell.witness);
    }

    // Whether all that is cut there is small on paper, so that marks beside it were mere specks.
    [[nodiscard]] bool is_small(const Path& path) const {
        return std::all_of(path.contours.begin(), path.contours.end(), [&](const Contour& contour) {
            const Box box = bounds({{contour}});
            return std::max(box.width(), box.height()) * scale_ < small_on_paper;
        });
    }

    void draw_witness(const CutPlan::Witness& witness) const {
        PdfDocument& document = pages_.document();
        document.fill(witness.path, witness.colour);
        const Box box = bounds(witness.path);
        const double radius = std::max(0.75 * std::max(box.width(), box.height()), 2 / scale_);
        document.stroke(capsule(box.centre(), box.centre(), radius), {0.45 / scale_, alert, {}});
    }

    // On the film's lower left corner, where its margin is: a witness is more likely to stand in the upper
    // one. At the bed's edge, where nothing else lies, beside the film but for that margin.
    void draw_tag(const FilmRectangle& film, std::size_t index, Point corner) const {
        const TextStyle style{tag_pt, true, ink};
        const std::string name = film_letter(index);
        const double width = pages_.document().width_of(name, style) + 1;
        constexpr double height = 2.4;
        constexpr double least_outside = 0.9;
        const bool at_edge = film.box.left <= options_.bed.edge_mm;
        const double outside =
            at_edge ? std::max(least_outside, width - options_.film_margin_mm * scale_) : least_outside;
        const Point at{corner.x + film.box.left * scale_ - outside,
                       corner.y + film.box.bottom * scale_ - height};
        const Box box{at.x, at.y, at.x + width, at.y + height};
        pages_.document().fill(box, {0xff, 0xff, 0xff});
        pages_.document().stroke(box, {0.15, quiet, {}});
        pages_.document().text(name, {at.x + width / 2, at.y + 1.95}, style, Align::centre);
    }

    SheetPages& pages_;
    const CutPlan& cut_;
    Plan plan_;  // without the marks of parts that are drawn small
    const PlanOptions& options_;
    double scale_;
};

// As it lies in its load, as large as a line of text.
void set_witness(SheetPages& pages, const CutPlan::Witness& witness, Point corner) {
    const Box box = bounds(witness.path);
    const double scale = 2.8 / std::max(box.width(), box.height());
    const auto kept =
        pages.document().place({corner.x - box.left * scale, corner.y - box.top * scale}, scale, scale);
    pages.document().fill(witness.path, alert);
}

double set_caption(SheetPages& pages, const JobSheet& sheet, const LoadCell& cell, Point at, double width) {
    const double top = at.y;
    at.y +=
        pages.paragraph("Load " + std::to_string(cell.number + 1) + ": " + contents(*sheet.plan, *cell.load),
                        at, width, pages.bold(), most_name_lines);
    TextStyle style = pages.small();
    style.colour = ink;
    for (const Line& line : cell.lines) {
        constexpr double indent = 3.6;
        if (line.swatch) set_swatch(pages, {at.x, at.y + 0.5}, 2.4, *line.swatch);
        const bool last = &line == &cell.lines.back();
        if (last && cell.witness && pages.drawing()) set_witness(pages, *cell.witness, {at.x, at.y + 0.3});
        at.y += pages.paragraph(line.text, {at.x + indent, at.y}, width - indent, style);
    }
    return at.y - top;
}

// Of each piece that no bed holds, how its parts lie together.
void set_joins(SheetPages& pages, const CutPlan& cut) {
    std::vector<std::vector<std::size_t>> parts(cut.pieces.size());
    for (std::size_t i = 0; i < cut.plan.parts.size(); ++i)
        if (!cut.plan.parts[i].path.empty()) parts.at(cut.plan.parts[i].piece).push_back(i);
    double x = pages.left();
    constexpr double side = 34;
    const double cell_height = side + 5;
    bool first = true;
    for (std::size_t piece = 0; piece < parts.size(); ++piece) {
        if (parts[piece].empty()) continue;
        if (first) {
            pages.section("Joins",
                          "What the bed does not hold is split. Halves of small diamonds are cut at the "
                          "split line: where "
                          "two parts lie right, the diamonds are whole. Lift them off afterwards.",
                          cell_height);
            first = false;
        } else if (x + side > pages.left() + pages.width()) {
            x = pages.left();
            pages.y += cell_height;
            pages.need(cell_height);
        }
        const ToCut& whole = cut.pieces[piece];
        if (pages.drawing()) {
            const Box box = bounds(whole.path);
            const double scale = side / std::max(box.width(), box.height());
            const Point corner{x - box.left * scale, pages.y - box.top * scale};
            PdfDocument& document = pages.document();
            {
                const auto kept = document.place(corner, scale, scale);
                document.fill(whole.path, whole.colour, 0.45);
                for (const std::size_t part : parts[piece])
                    document.stroke(bounds(cut.plan.parts[part].path),
                                    {0.25 / scale, ink, {1.2 / scale, 0.8 / scale}});
            }
            for (std::size_t i = 0; i < parts[piece].size(); ++i) {
                const Point centre = bounds(cut.plan.parts[parts[piece][i]].path).centre();
                const Point at{corner.x + centre.x * scale, corner.y + centre.y * scale};
                document.fill(capsule(at, at, 2.2), {0xff, 0xff, 0xff});
                document.text(std::to_string(i + 1), {at.x, at.y + 1.1}, pages.bold(), Align::centre);
            }
        }
        pages.paragraph(whole.name, {x, pages.y + side + 0.5}, side, pages.small(), 1);
        x += side + gap;
    }
    if (!first) pages.y += cell_height;
}

std::string explanation(const JobSheet& sheet) {
    const CutPlan& cut = *sheet.plan;
    const Bed& bed = sheet.plan_options->bed;
    std::string text = bed.height_mm > 0 ? "Bed " + rule_text(bed.width_mm, bed.height_mm)
                                         : "Roll " + rule_text(bed.width_mm) + " wide";
    if (bed.edge_mm > 0) text += ", grey edge of " + rule_text(bed.edge_mm) + " not reached";
    text +=
        ". Each film: its size, then where its upper left corner lies, measured from the bed's upper left "
        "corner (dot). ";
    text += sheet.artwork.surface == Surface::second
                ? "The ringed letter is the witness: it lies backwards on the bed, as all of the load does, "
                  "and reads right "
                  "from the film's back. If it reads right on the bed, the load was mirrored once more on "
                  "its way: stop, and "
                  "turn that off."
                : "The ringed letter is the witness: it reads right on the bed. If it lies backwards, the "
                  "load was mirrored "
                  "on its way: stop, and turn that off.";
    if (cut.bands_are_loose) text += " Bands are cut one by one, which saves loads; lay them by the guide.";
    if (cut.plan.proved && cut.plan.loads.size() > 1)
        text += " No fewer loads would do for pieces kept apart by their boxes.";
    return text;
}

}  // namespace

void set_loads(SheetPages& pages, const JobSheet& sheet) {
    const std::vector<Load>& loads = sheet.plan->plan.loads;
    if (loads.empty()) return;
    double highest = 0;
    for (const Load& load : loads) highest = std::max(highest, bed_height(*sheet.plan_options, load));
    // A single load has its words beside it.
    const bool alone = loads.size() == 1;
    const std::size_t a_row =
        alone ? 2 : std::max<std::size_t>(2, std::min(pages.look().loads_a_row, loads.size()));
    const double cell_width =
        (pages.width() - static_cast<double>(a_row - 1) * gap) / static_cast<double>(a_row);
    double most_height = pages.look().load_height * (sheet.plan_options->bed.height_mm > 0 ? 1 : roll_share);
    if (alone)  // no lower than the words beside it
        most_height = std::max(most_height, static_cast<double>(loads.front().films.size()) *
                                                PdfDocument::line_pitch(pages.small()));
    const double scale = std::min(cell_width / sheet.plan_options->bed.width_mm, most_height / highest);
    const LoadPicture picture(pages, sheet, scale);

    for (std::size_t first = 0; first < loads.size(); first += a_row) {
        const std::size_t last = std::min(first + a_row, loads.size());
        std::vector<LoadCell> cells;
        double high = 0;
        for (std::size_t i = first; i < last; ++i) {
            cells.push_back(cell_of(sheet, i));
            high = std::max(high, bed_height(*sheet.plan_options, loads[i]) * scale);
        }
        // How high the captions are is known once they are set; here by their lines.
        double captions = 0;
        TextStyle style = pages.small();
        for (const LoadCell& cell : cells) {
            double height = PdfDocument::line_pitch(pages.bold()) * most_name_lines;
            for (const Line& line : cell.lines)
                height +=
                    static_cast<double>(pages.document().wrapped(line.text, cell_width - 3.6, style).size()) *
                    PdfDocument::line_pitch(style);
            captions = std::max(captions, height);
        }
        const double needed = alone ? std::max(high, captions) : high + 1.5 + captions;
        if (first == 0)
            pages.section(loads.size() == 1 ? "One load" : std::to_string(loads.size()) + " loads",
                          explanation(sheet), needed);
        else
            pages.need(needed);
        double used = 0;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            const double x = pages.left() + static_cast<double>(i) * (cell_width + gap);
            if (pages.drawing()) picture.draw(cells[i], {x, pages.y});
            if (alone) {
                const double beside = sheet.plan_options->bed.width_mm * scale + gap;
                used = set_caption(pages, sheet, cells[i], {x + beside, pages.y}, pages.width() - beside);
            } else {
                used = std::max(used,
                                set_caption(pages, sheet, cells[i], {x, pages.y + high + 1.5}, cell_width));
            }
        }
        pages.y += (alone ? std::max(high, used) : high + 1.5 + used) + 2;
    }
    set_joins(pages, *sheet.plan);
}

}  // namespace lode
