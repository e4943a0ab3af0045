#include "art/bands.hpp"

#include <algorithm>
#include <map>
#include <stdexcept>
#include <tuple>

#include "art/band_outline.hpp"
#include "art/clipping.hpp"

namespace lode {

namespace {

// Bands that lie along one line and share a cell become one: the same union, and no more capsules than the
// grid has lines and gaps, however many words there are.
std::vector<Band> joined_along_lines(std::span<const Band> bands) {
    struct Ends {
        int from;
        int to;
    };
    // By step and by where the line meets column 0, or row 0 where it is upright.
    std::map<std::tuple<int, int, int>, std::vector<Ends>> lines;
    for (const Band& band : bands) {
        Cell by = step_of(band);
        const bool upright = by.column == 0 && by.row != 0;
        if (by.column < 0 || (upright && by.row < 0)) by = {-by.row, -by.column};
        const auto along = [&](Cell cell) { return upright ? cell.row : cell.column; };
        const int place = upright ? band.first.column : band.first.row - by.row * band.first.column;
        const auto [from, to] = std::minmax({along(band.first), along(band.last)});
        lines[{by.row, upright ? 0 : 1, place}].push_back({from, to});
    }
    std::vector<Band> joined;
    for (auto& [line, stretches] : lines) {
        const auto [rise, run, place] = line;
        const auto cell = [&, r = rise, c = run, p = place](int along) {
            return c == 0 ? Cell{along, p} : Cell{p + r * along, along};
        };
        std::sort(stretches.begin(), stretches.end(), [](Ends a, Ends b) { return a.from < b.from; });
        Ends reach = stretches.front();
        for (const Ends& next : stretches) {
            if (next.from > reach.to) {
                joined.push_back({cell(reach.from), cell(reach.to)});
                reach = next;
            }
            reach.to = std::max(reach.to, next.to);
        }
        joined.push_back({cell(reach.from), cell(reach.to)});
    }
    return joined;
}

// Whether a point lies in a contour of the union, and where not even its box does, at the cost of a look.
class Region {
  public:
    explicit Region(const ClipperLib::Path& contour) : contour_(contour) {
        const auto [left, right] = std::minmax_element(
            contour.begin(), contour.end(), [](const auto& a, const auto& b) { return a.X < b.X; });
        const auto [top, bottom] = std::minmax_element(
            contour.begin(), contour.end(), [](const auto& a, const auto& b) { return a.Y < b.Y; });
        least_ = {left->X, top->Y};
        most_ = {right->X, bottom->Y};
    }
    [[nodiscard]] bool holds(const ClipperLib::IntPoint& p) const {
        return p.X >= least_.X && p.X <= most_.X && p.Y >= least_.Y && p.Y <= most_.Y &&
               ClipperLib::PointInPolygon(p, contour_) == 1;
    }

  private:
    const ClipperLib::Path& contour_;
    ClipperLib::IntPoint least_;
    ClipperLib::IntPoint most_;
};

std::vector<std::size_t> bands_in(const ClipperLib::PolyNode& node, std::span<const Band> bands) {
    const Region outer(node.Contour);
    std::vector<Region> holes;
    for (const ClipperLib::PolyNode* hole : node.Childs) holes.emplace_back(hole->Contour);
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < bands.size(); ++i) {
        const ClipperLib::IntPoint centre = lattice(bands[i].first);
        if (outer.holds(centre) &&
            std::none_of(holes.begin(), holes.end(), [&](const Region& hole) { return hole.holds(centre); }))
            found.push_back(i);
    }
    return found;
}

}  // namespace

std::vector<BandPiece> unite_bands(std::span<const Band> bands, double radius, double least_hole,
                                   std::span<const Waist> waists) {
    if (!(radius > 0 && radius < 0.5))
        throw std::invalid_argument("a band's radius lies between 0 and half a cell");
    const BandOutline outline(joined_along_lines(bands), radius, waists);
    ClipperLib::Clipper clipper;
    clipper.AddPaths(outline.polygons(), ClipperLib::ptSubject, true);
    ClipperLib::PolyTree tree;
    need_done(clipper,
              clipper.Execute(ClipperLib::ctUnion, tree, ClipperLib::pftNonZero, ClipperLib::pftNonZero));

    std::vector<BandPiece> pieces;
    constexpr double unit = static_cast<double>(lattice_unit);
    for (const ClipperLib::PolyNode* node = tree.GetFirst(); node; node = node->GetNext()) {
        if (node->IsHole()) continue;
        BandPiece piece{bands_in(*node, bands), {}};
        piece.path.contours.push_back(outline.curved(node->Contour));
        for (const ClipperLib::PolyNode* hole : node->Childs)
            if (std::abs(ClipperLib::Area(hole->Contour)) >= least_hole * unit * unit)
                piece.path.contours.push_back(outline.curved(hole->Contour));
        piece.path = transformed(piece.path, 1 / unit, {});
        pieces.push_back(std::move(piece));
    }
    std::sort(pieces.begin(), pieces.end(),
              [](const BandPiece& a, const BandPiece& b) { return a.bands < b.bands; });
    return pieces;
}

}  // namespace lode
