// What is cut, as JSON: the job sheet for another program.

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <letterlode/cut.hpp>

#include "art/number.hpp"
#include "cut/job_sheet_page.hpp"
#include "puzzle/json_text.hpp"

namespace lode {

std::string_view name(ThinFinding::Kind kind) {
    switch (kind) {
        case ThinFinding::Kind::stroke:
            return "stroke";
        case ThinFinding::Kind::gap:
            return "gap";
        case ThinFinding::Kind::between_pieces:
            return "between-pieces";
    }
    throw std::invalid_argument("no kind of finding");
}

namespace {

constexpr double mm_an_inch = 25.4;

// To a micrometre, and to as little in inches: finer than any blade.
std::string in_mm(double mm) {
    return decimal(mm, 3);
}
std::string in_inches(double mm) {
    return decimal(mm / mm_an_inch, 5);
}

// What is too little never reads as enough.
std::string cut_down_mm(double mm) {
    return in_mm(std::floor(mm * 1'000) / 1'000);
}

void append_size(JsonMembers& members, double width_mm, double height_mm) {
    members.push_back({"width_mm", in_mm(width_mm)});
    members.push_back({"height_mm", in_mm(height_mm)});
    members.push_back({"width_in", in_inches(width_mm)});
    members.push_back({"height_in", in_inches(height_mm)});
}

JsonMembers corner_members(Point corner) {
    return {{"left_mm", in_mm(corner.x)}, {"top_mm", in_mm(corner.y)}};
}

JsonMembers box_members(const Box& box) {
    JsonMembers members = corner_members({box.left, box.top});
    append_size(members, box.width(), box.height());
    return members;
}

void append_cell(JsonMembers& members, const std::optional<Cell>& cell) {
    if (!cell) return;
    members.push_back({"row", std::to_string(cell->row + 1)});
    members.push_back({"column", std::to_string(cell->column + 1)});
}

std::string blank_json(const Blank& blank) {
    JsonMembers members{{"shape", json_string(blank.shape)}};
    append_size(members, blank.width_mm, blank.height_mm);
    return json_object(members);
}

// All that is cut, marks beyond the blank among it.
Box box_of_all(const Artwork& artwork) {
    std::optional<Box> all;
    const auto add = [&](const std::vector<Piece>& pieces) {
        for (const Piece& piece : pieces) {
            if (piece.path.empty()) continue;
            const Box box = bounds(piece.path);
            all = all ? Box{std::min(all->left, box.left), std::min(all->top, box.top),
                            std::max(all->right, box.right), std::max(all->bottom, box.bottom)}
                      : box;
        }
    };
    for (const Layer& layer : artwork.layers) add(layer.pieces);
    add(artwork.registration);
    return all.value_or(Box{});
}

std::string seconds(double cut_mm, double speed_mm_s) {
    return decimal(cut_mm / speed_mm_s, 1);
}

std::string layer_json(const LayerMeasures& layer, const std::optional<double>& speed_mm_s) {
    JsonMembers members{
        {"name", json_string(layer.layer)},       {"colour", json_string(to_text(layer.colour))},
        {"pieces", std::to_string(layer.pieces)}, {"counters", std::to_string(layer.counters)},
        {"area_mm2", decimal(layer.area_mm2, 1)}, {"cut_mm", decimal(layer.cut_mm, 1)}};
    if (speed_mm_s) members.push_back({"seconds", seconds(layer.cut_mm, *speed_mm_s)});
    const auto add = [&](std::string_view name, const std::optional<double>& mm, const std::string& piece) {
        if (mm)
            members.push_back(
                {name, json_object({{"width_mm", cut_down_mm(*mm)}, {"piece", json_string(piece)}})});
    };
    add("narrowest_stroke", layer.narrowest_stroke_mm, layer.narrowest_stroke_at);
    add("narrowest_gap", layer.narrowest_gap_mm, layer.narrowest_gap_at);
    return json_object(members);
}

std::string finding_json(const ThinFinding& finding, const Measures& measures) {
    const bool is_stroke = finding.kind == ThinFinding::Kind::stroke;
    JsonMembers members{{"kind", json_string(name(finding.kind))},
                        {"layer", json_string(finding.layer)},
                        {"piece", json_string(finding.piece)}};
    append_cell(members, finding.cell);
    if (!finding.other.empty()) {
        JsonMembers other{{"piece", json_string(finding.other)}};
        append_cell(other, finding.other_cell);
        members.push_back({"other", json_object(other)});
    }
    members.push_back({"width_mm", cut_down_mm(finding.width_mm)});
    members.push_back({"asked_mm", in_mm(is_stroke ? measures.least_stroke_mm : measures.least_gap_mm)});
    members.push_back({"at", json_object(corner_members(finding.at))});
    members.push_back({"alike", std::to_string(finding.alike)});
    members.push_back({"message", json_string(finding_text(finding))});
    return json_object(members);
}

std::string film_json(const FilmRectangle& film, std::size_t number, const PlanOptions& options) {
    JsonMembers members{{"name", json_string(film_letter(number))},
                        {"colour", json_string(to_text(film.colour))}};
    for (JsonMember& member : box_members(film.box)) members.push_back(std::move(member));
    if (film.stock) {
        const FilmStock& stock = options.films.at(*film.stock);
        JsonMembers from{{"width_mm", in_mm(stock.width_mm)}};
        if (stock.height_mm > 0) from.push_back({"height_mm", in_mm(stock.height_mm)});
        from.push_back({"sheet", std::to_string(film.sheet + 1)});
        for (JsonMember& member : corner_members(film.corner)) from.push_back(std::move(member));
        from.push_back({"turned", json_bool(film.turned)});
        members.push_back({"from", json_object(from)});
    }
    return json_object(members);
}

std::string lying_json(const CutPlan& cut, const PlacedPiece& where) {
    const ToCut& piece = cut.pieces.at(where.piece);
    JsonMembers members{{"name", json_string(where.part ? cut.plan.parts.at(*where.part).name : piece.name)},
                        {"layer", json_string(piece.layer)},
                        {"turned_degrees", std::to_string(where.eighths * 45)}};
    for (JsonMember& member : box_members(bounds(placed(cut.pieces, cut.plan, where))))
        members.push_back(std::move(member));
    return json_object(members);
}

std::string load_json(const CutPlan& cut, std::size_t number, const PlanOptions& options) {
    const Load& load = cut.plan.loads[number];
    std::vector<std::string> films, pieces;
    for (std::size_t i = 0; i < load.films.size(); ++i) films.push_back(film_json(load.films[i], i, options));
    for (const PlacedPiece& where : load.pieces) pieces.push_back(lying_json(cut, where));
    return json_object({{"length_mm", in_mm(load.length_mm)},
                        {"films", json_array(films)},
                        {"pieces", json_array(pieces)},
                        {"witness", json_bool(number < cut.witnesses.size() && cut.witnesses[number])}});
}

// How much film of each colour the loads take.
std::string films_json(const Artwork& artwork, const Plan& plan) {
    std::vector<std::string> films;
    for (const Colour colour : colours_of(artwork)) {
        std::size_t rectangles = 0;
        double area_mm2 = 0;
        for (const Load& load : plan.loads)
            for (const FilmRectangle& film : load.films)
                if (film.colour == colour) {
                    ++rectangles;
                    area_mm2 += film.box.width() * film.box.height();
                }
        films.push_back(json_object({{"colour", json_string(to_text(colour))},
                                     {"rectangles", std::to_string(rectangles)},
                                     {"area_mm2", decimal(area_mm2, 1)}}));
    }
    return json_array(films);
}

std::string plan_json(const Artwork& artwork, const CutPlan& cut, const PlanOptions& options) {
    JsonMembers bed{{"width_mm", in_mm(options.bed.width_mm)}};
    if (options.bed.height_mm > 0) bed.push_back({"height_mm", in_mm(options.bed.height_mm)});
    bed.push_back({"edge_mm", in_mm(options.bed.edge_mm)});
    std::vector<std::string> loads;
    for (std::size_t i = 0; i < cut.plan.loads.size(); ++i) loads.push_back(load_json(cut, i, options));
    return json_object({{"bed", json_object(bed)},
                        {"least_loads", std::to_string(cut.plan.least_loads)},
                        {"proved", json_bool(cut.plan.proved)},
                        {"bands_are_loose", json_bool(cut.bands_are_loose)},
                        {"film", films_json(artwork, cut.plan)},
                        {"loads", json_array_in_lines(loads)},
                        {"notes", json_strings(cut.plan.notes)}});
}

}  // namespace

std::string to_json(const HeldArtwork& held, const CutOptions& options) {
    if (options.planned && !options.plan)
        throw std::invalid_argument("planned loads without options of a plan");
    const Artwork& artwork = held.artwork;
    std::vector<std::string> layers, findings;
    double cut_mm = 0;
    for (const LayerMeasures& layer : held.measures.layers) {
        layers.push_back(layer_json(layer, options.speed_mm_s));
        cut_mm += layer.cut_mm;
    }
    for (const ThinFinding& finding : held.measures.thin)
        findings.push_back(finding_json(finding, held.measures));
    JsonMembers members{{"format", json_string("letterlode-cut")},
                        {"version", "1"},
                        {"surface", json_string(name(artwork.surface))},
                        {"blank", blank_json(artwork.blank)},
                        {"artwork", json_object(box_members(box_of_all(artwork)))},
                        {"font", json_string(artwork.font)},
                        {"cell_mm", in_mm(artwork.cell_mm)},
                        {"cell_in", in_inches(artwork.cell_mm)},
                        {"cap_height_mm", in_mm(artwork.cap_height_mm)},
                        {"cap_height_in", in_inches(artwork.cap_height_mm)},
                        {"layers", json_array_in_lines(layers)},
                        {"cut_mm", decimal(cut_mm, 1)}};
    if (options.speed_mm_s) {
        members.push_back({"speed_mm_s", in_mm(*options.speed_mm_s)});
        members.push_back({"seconds", seconds(cut_mm, *options.speed_mm_s)});
    }
    members.push_back({"holds", json_bool(held.measures.holds())});
    members.push_back({"findings", json_array_in_lines(findings)});
    members.push_back({"ways_out", json_strings(ways_out(held))});
    members.push_back({"changed", json_strings(held.changed)});
    members.push_back({"notes", json_strings(artwork.notes)});
    if (options.planned) members.push_back({"plan", plan_json(artwork, *options.planned, *options.plan)});
    return json_document(members);
}

}  // namespace lode
