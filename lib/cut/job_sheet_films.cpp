// What to cut from what: a row for each colour of film.

#include <algorithm>

#include "art/number.hpp"
#include "cut/job_sheet_page.hpp"

namespace lode {

namespace {

constexpr double mm2_a_cm2 = 100;
constexpr double mm2_an_in2 = 25.4 * 25.4;
constexpr double mm_a_foot = 304.8;

struct FilmRow {
    Colour colour;
    std::string layers;
    std::string films;
    double area_mm2 = 0;
    std::size_t pieces = 0;
    std::size_t counters = 0;
    double cut_mm = 0;
};

std::string area_text(double mm2) {
    const double inches = mm2 / mm2_an_in2;
    return decimal(mm2 / mm2_a_cm2, 0) + " cm² (" + decimal(inches, inches < 100 ? 1 : 0) + " in²)";
}

std::string length_text(double mm) {
    return decimal(mm / 1000, 1) + " m (" + decimal(mm / mm_a_foot, 1) + " ft)";
}

std::string time_text(double seconds) {
    if (seconds < 60) return decimal(seconds, 0) + " s";
    const double minutes = seconds / 60;
    return decimal(minutes, minutes < 10 ? 1 : 0) + " min";
}

void append(std::string& list, const std::string& one, const char* between) {
    if (!list.empty()) list += between;
    list += one;
}

// The rectangles that the plan takes, those of the same size together; without a plan what each layer needs
// at the least.
void add_films(FilmRow& row, const JobSheet& sheet) {
    struct Alike {
        std::string names;
        std::string size;
    };
    std::vector<Alike> sizes;
    const auto add = [&](const std::string& name, const Box& box) {
        const std::string size = rule_text(box.width(), box.height());
        row.area_mm2 += box.width() * box.height();
        const auto alike =
            std::find_if(sizes.begin(), sizes.end(), [&](const Alike& one) { return one.size == size; });
        if (alike == sizes.end())
            sizes.push_back({name, size});
        else
            alike->names += ", " + name;
    };
    if (sheet.plan) {
        const std::vector<Load>& loads = sheet.plan->plan.loads;
        for (std::size_t load = 0; load < loads.size(); ++load)
            for (std::size_t film = 0; film < loads[load].films.size(); ++film)
                if (loads[load].films[film].colour == row.colour)
                    add(std::to_string(load + 1) + film_letter(film), loads[load].films[film].box);
    } else {
        for (const LayerMeasures& layer : sheet.measures.layers)
            if (layer.colour == row.colour) add(layer.layer, layer.box);
    }
    for (const Alike& alike : sizes)
        append(row.films, (alike.names == row.layers ? "" : alike.names + ": ") + alike.size, "\n");
}

std::vector<FilmRow> rows_of(const JobSheet& sheet) {
    std::vector<FilmRow> rows;
    for (const Colour colour : colours_of(sheet.artwork)) {
        FilmRow row;
        row.colour = colour;
        for (const LayerMeasures& layer : sheet.measures.layers) {
            if (!(layer.colour == colour)) continue;
            append(row.layers, layer.layer, ", ");
            row.pieces += layer.pieces;
            row.counters += layer.counters;
            row.cut_mm += layer.cut_mm;
        }
        add_films(row, sheet);
        rows.push_back(std::move(row));
    }
    return rows;
}

std::string explanation(const JobSheet& sheet, double cut_mm) {
    std::string text =
        sheet.plan ? "Film as small as its pieces allow, its margins counted in; 1A is film A of load 1."
                   : "The least film that each layer's shapes need; leave some more on each side.";
    if (sheet.speed_mm_s)
        text += " Time at " + decimal(*sheet.speed_mm_s, 1) + " mm/s; corners and lifts come on top.";
    else if (cut_mm > 0)
        text += " Length divided by the cutter's speed is its time: all of it takes " +
                time_text(cut_mm / 50) + " at 50 mm/s; corners and lifts come on top.";
    return text;
}

}  // namespace

void set_films(SheetPages& pages, const JobSheet& sheet) {
    const std::vector<FilmRow> rows = rows_of(sheet);
    FilmRow all;
    for (const FilmRow& row : rows) {
        all.area_mm2 += row.area_mm2;
        all.pieces += row.pieces;
        all.counters += row.counters;
        all.cut_mm += row.cut_mm;
    }
    const bool timed = sheet.speed_mm_s && *sheet.speed_mm_s > 0;

    std::vector<TableColumn> columns{
        {7}, {0}, {0}, {32}, {13, Align::right}, {17, Align::right}, {28, Align::right}};
    double rest = pages.width();
    for (const TableColumn& column : columns) rest -= column.width_mm;
    columns[1].width_mm = 0.34 * rest;
    columns[2].width_mm = 0.66 * rest;
    const std::vector<std::string> names{
        "", "Film", "Sizes", "Area of film", "Pieces", "Counters", timed ? "Cut, time" : "Length of cut"};

    const auto set_row = [&](const std::vector<std::string>& cells, const TextStyle& style) {
        const double height = pages.document().row_height(columns, cells, style);
        pages.need(height);
        if (pages.drawing()) pages.document().row({pages.left(), pages.y}, columns, cells, style);
        pages.y += height;
        return height;
    };
    const auto cells_of = [&](const FilmRow& row, const std::string& name) {
        return std::vector<std::string>{
            "",
            name,
            row.films,
            area_text(row.area_mm2),
            std::to_string(row.pieces),
            std::to_string(row.counters),
            length_text(row.cut_mm) + (timed ? "\n" + time_text(row.cut_mm / *sheet.speed_mm_s) : "")};
    };
    pages.section("What to cut from what", explanation(sheet, all.cut_mm), 20);
    set_row(names, {pages.look().body_pt - 1, true, quiet});
    const TextStyle style{pages.look().body_pt - 0.5, false, ink};
    for (const FilmRow& row : rows) {
        const double height = set_row(cells_of(row, to_text(row.colour) + " " + row.layers), style);
        set_swatch(pages, {pages.left() + 1, pages.y - height + 1.1}, 4, row.colour);
    }
    if (rows.size() > 1) set_row(cells_of(all, "All"), {style.size_pt, true, ink});
}

}  // namespace lode
