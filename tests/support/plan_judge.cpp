#include "support/plan_judge.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>

#include "art/outline_polygons.hpp"

namespace lode::test {

namespace {

constexpr double scale = 1'000;     // micrometres
constexpr double tolerance = 0.01;  // mm: curves are judged as chords

bool overlap(const Box& a, const Box& b, double apart) {
    return a.left < b.right + apart && b.left < a.right + apart && a.top < b.bottom + apart &&
           b.top < a.bottom + apart;
}

bool within(const Box& inner, const Box& outer, double margin) {
    return inner.left >= outer.left + margin && inner.right <= outer.right - margin &&
           inner.top >= outer.top + margin && inner.bottom <= outer.bottom - margin;
}

ClipperLib::Paths grown(const ClipperLib::Paths& polygons, double mm) {
    ClipperLib::ClipperOffset offset(2, 5);
    offset.AddPaths(polygons, ClipperLib::jtRound, ClipperLib::etClosedPolygon);
    ClipperLib::Paths result;
    offset.Execute(result, mm * scale);
    return result;
}

void judge_load(std::span<const ToCut> pieces, const PlanOptions& options, const Plan& plan,
                std::size_t number, std::vector<std::string>& faults) {
    const Load& load = plan.loads[number];
    const std::string here = "load " + std::to_string(number + 1) + ": ";
    const Bed& bed = options.bed;
    const double height = bed.height_mm == 0 ? load.length_mm : bed.height_mm;
    if (bed.height_mm == 0 && load.length_mm > bed.longest_mm + 1e-6) faults.push_back(here + "too long");
    const Box reached{bed.edge_mm, bed.edge_mm, bed.width_mm - bed.edge_mm, height - bed.edge_mm};
    for (std::size_t i = 0; i < load.films.size(); ++i) {
        if (!within(load.films[i].box, reached, -1e-6)) faults.push_back(here + "film beyond the reach");
        for (std::size_t j = 0; j < i; ++j)
            if (overlap(load.films[i].box, load.films[j].box, -1e-6)) faults.push_back(here + "film on film");
    }
    std::vector<ClipperLib::Paths> outlines;
    std::vector<Box> boxes;
    std::vector<Box> used(load.films.size(), {1e9, 1e9, -1e9, -1e9});
    for (const PlacedPiece& where : load.pieces) {
        const ToCut& piece = pieces[where.piece];
        const Path path = placed(pieces, plan, where);
        const Box box = bounds(path);
        boxes.push_back(box);
        outlines.push_back(grown(outline_polygons(path, scale), (options.gap_mm - tolerance) / 2));
        bool on_film = false;
        for (std::size_t f = 0; f < load.films.size(); ++f) {
            if (load.films[f].colour != piece.colour ||
                !within(box, load.films[f].box, options.film_margin_mm - 1e-5))
                continue;
            on_film = true;
            used[f] = {std::min(used[f].left, box.left), std::min(used[f].top, box.top),
                       std::max(used[f].right, box.right), std::max(used[f].bottom, box.bottom)};
        }
        if (!on_film) faults.push_back(here + piece.name + " is not on its film");
    }
    for (std::size_t f = 0; f < load.films.size(); ++f)
        if (!within(load.films[f].box, used[f], -options.film_margin_mm - 0.005))
            faults.push_back(here + "film larger than its pieces ask for");
    for (std::size_t i = 0; i < boxes.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            if (overlap(boxes[i], boxes[j], options.gap_mm) && shared_area(outlines[i], outlines[j]) > 100)
                faults.push_back(here + pieces[load.pieces[i].piece].name + " is too near to " +
                                 pieces[load.pieces[j].piece].name);
}

void judge_stock(const PlanOptions& options, const Plan& plan, std::vector<std::string>& faults) {
    struct Taken {
        std::size_t stock;
        int sheet;
        Box box;
    };
    std::vector<Taken> all;
    for (const Load& load : plan.loads)
        for (const FilmRectangle& film : load.films) {
            const bool named =
                std::any_of(options.films.begin(), options.films.end(),
                            [&](const FilmStock& stock) { return stock.colour == film.colour; });
            if (named != film.stock.has_value()) faults.push_back("film from no stock");
            if (!film.stock) continue;
            const FilmStock& stock = options.films[*film.stock];
            if (stock.colour != film.colour) faults.push_back("film of another colour's stock");
            if (film.sheet < 0 || film.sheet >= stock.count) faults.push_back("a sheet that there is not");
            double width = film.box.width(), height = film.box.height();
            if (film.turned) std::swap(width, height);
            const Box box{film.corner.x, film.corner.y, film.corner.x + width, film.corner.y + height};
            const Box sheet{0, 0, stock.width_mm, stock.height_mm == 0 ? 1e9 : stock.height_mm};
            if (!within(box, sheet, -0.002)) faults.push_back("film beyond its sheet");
            for (const Taken& other : all)
                if (other.stock == *film.stock && other.sheet == film.sheet && overlap(box, other.box, -1e-6))
                    faults.push_back("film taken twice");
            all.push_back({*film.stock, film.sheet, box});
        }
}

}  // namespace

std::vector<std::string> faults_of(std::span<const ToCut> pieces, const PlanOptions& options,
                                   const Plan& plan) {
    std::vector<std::string> faults;
    std::vector<std::size_t> contours(pieces.size(), 0);
    std::vector<int> times(pieces.size(), 0);
    std::vector<int> times_of_part(plan.parts.size(), 0);
    for (const Load& load : plan.loads)
        for (const PlacedPiece& where : load.pieces) {
            if (where.part) {
                ++times_of_part[*where.part];
                contours[where.piece] += plan.parts[*where.part].path.contours.size();
                if (plan.parts[*where.part].piece != where.piece) faults.push_back("a part of another piece");
            } else {
                ++times[where.piece];
                contours[where.piece] += pieces[where.piece].path.contours.size();
            }
            if (!options.may_turn && where.eighths != 0) faults.push_back("turned");
        }
    for (std::size_t i = 0; i < pieces.size(); ++i)
        if (times[i] > 1 || contours[i] != pieces[i].path.contours.size())
            faults.push_back(pieces[i].name + " is not cut exactly once");
    for (const int n : times_of_part)
        if (n != 1) faults.push_back("a part is not cut exactly once");
    if (plan.least_loads > plan.loads.size() || plan.proved != (plan.least_loads == plan.loads.size()))
        faults.push_back("the bound contradicts the loads");
    if (!plan.proved && plan.notes.empty()) faults.push_back("no word about why it is not proved");
    for (std::size_t load = 0; load < plan.loads.size(); ++load) {
        if (plan.loads[load].pieces.empty()) faults.push_back("an empty load");
        judge_load(pieces, options, plan, load, faults);
    }
    judge_stock(options, plan, faults);
    return faults;
}

std::string picture_of(std::span<const ToCut> pieces, const PlanOptions& options, const Plan& plan,
                       std::size_t number) {
    const Load& load = plan.loads[number];
    const double width = options.bed.width_mm, edge = options.bed.edge_mm;
    std::ostringstream svg;
    svg << "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" << width << "mm\" height=\"" << load.length_mm
        << "mm\" viewBox=\"0 0 " << width << ' ' << load.length_mm
        << "\"><rect width=\"100%\" height=\"100%\" "
        << "fill=\"#ddd\"/><rect x=\"" << edge << "\" y=\"" << edge << "\" width=\"" << width - 2 * edge
        << "\" height=\"" << load.length_mm - 2 * edge << "\" fill=\"#fff\"/>\n";
    for (const FilmRectangle& film : load.films)
        svg << "<rect x=\"" << film.box.left << "\" y=\"" << film.box.top << "\" width=\"" << film.box.width()
            << "\" height=\"" << film.box.height() << "\" fill=\"" << to_text(film.colour)
            << "\" fill-opacity=\"0.35\" stroke=\"#000\" stroke-width=\"0.3\"/>\n";
    for (const PlacedPiece& where : load.pieces) {
        svg << "<path fill=\"" << to_text(pieces[where.piece].colour)
            << "\" stroke=\"#000\" stroke-width=\"0.2\" d=\"";
        for (const auto& polygon : outline_polygons(placed(pieces, plan, where), scale)) {
            for (std::size_t i = 0; i < polygon.size(); ++i)
                svg << (i ? 'L' : 'M') << static_cast<double>(polygon[i].X) / scale << ' '
                    << static_cast<double>(polygon[i].Y) / scale;
            svg << 'Z';
        }
        svg << "\"/>\n";
    }
    svg << "</svg>\n";
    return svg.str();
}

}  // namespace lode::test
