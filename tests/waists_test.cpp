// Bands that give way to the letters beside them, against circles about cells, membership by formula, and
// polyclipping.

#include "art/waists.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "support/path_measures.hpp"

using namespace lode;

namespace {

constexpr double radius = 0.42;
constexpr double gap = 0.08;
constexpr int side = 9;
constexpr double pi = 3.14159265358979323846;

bool in_grid(Cell cell) {
    return cell.row >= 0 && cell.row < side && cell.column >= 0 && cell.column < side;
}
Point middle_of(Cell cell) {
    return {cell.column + 0.5, cell.row + 0.5};
}

std::vector<Cell> cells_of(const Band& band) {
    const int rows = band.last.row - band.first.row, columns = band.last.column - band.first.column;
    const int steps = std::max(std::abs(rows), std::abs(columns));
    std::vector<Cell> cells;
    for (int i = 0; i <= steps; ++i)
        cells.push_back({band.first.row + (steps ? rows / steps : 0) * i,
                         band.first.column + (steps ? columns / steps : 0) * i});
    return cells;
}

// Cells in common, or two diagonals that cross between cells.
bool meet(const Band& a, const Band& b) {
    for (const Cell& p : cells_of(a))
        for (const Cell& q : cells_of(b))
            if (p == q) return true;
    const auto one = cells_of(a), other = cells_of(b);
    for (std::size_t i = 0; i + 1 < one.size(); ++i)
        for (std::size_t j = 0; j + 1 < other.size(); ++j)
            if (one[i].row + one[i + 1].row == other[j].row + other[j + 1].row &&
                one[i].column + one[i + 1].column == other[j].column + other[j + 1].column)
                return true;
    return false;
}

std::vector<Band> random_bands(std::mt19937& random, int count) {
    std::vector<Band> bands;
    while (static_cast<int>(bands.size()) < count) {
        const Cell first{static_cast<int>(random() % side), static_cast<int>(random() % side)};
        const Cell last = moved(first, all_directions[random() % 8], static_cast<int>(random() % 6));
        if (in_grid(last)) bands.push_back({first, last});
    }
    return bands;
}

std::vector<BandPiece> narrowed(const std::vector<Band>& own, const std::vector<Band>& all) {
    return unite_bands(own, radius, 0, waists_of(own, all, in_grid, radius, gap));
}

ClipperLib::Paths polygons(const std::vector<BandPiece>& pieces) {
    Path all;
    for (const BandPiece& piece : pieces)
        all.contours.insert(all.contours.end(), piece.path.contours.begin(), piece.path.contours.end());
    return measures::polygons(all);
}
ClipperLib::Paths circles(const std::vector<Cell>& cells, double r) {
    Path all;
    for (const Cell& cell : cells)
        all.contours.push_back(capsule(middle_of(cell), middle_of(cell), r).contours[0]);
    return all.empty() ? ClipperLib::Paths{} : measures::polygons(all);
}
double common_area(const ClipperLib::Paths& a, const ClipperLib::Paths& b) {
    return measures::area(a) - measures::area(measures::less(a, b));
}

}  // namespace

TEST_CASE("bands cover the circles of their letters and keep out of those of all others") {
    std::mt19937 random(5);
    for (int round = 0; round < 120; ++round) {
        const auto all = random_bands(random, 2 + static_cast<int>(random() % 8));
        std::vector<Band> own(all.begin(), all.begin() + static_cast<std::ptrdiff_t>((all.size() + 1) / 2));
        const auto film = polygons(narrowed(own, all));
        std::vector<Cell> covered, left;
        for (const Band& band : own)
            for (const Cell& cell : cells_of(band)) covered.push_back(cell);
        for (int row = 0; row < side; ++row)
            for (int column = 0; column < side; ++column)
                if (std::find(covered.begin(), covered.end(), Cell{row, column}) == covered.end())
                    left.push_back({row, column});
        CAPTURE(round);
        CHECK(measures::area(measures::less(circles(covered, radius - 1e-3), film)) < 1e-6);
        CHECK(common_area(circles(left, radius - 1e-3), film) < 1e-6);
        CHECK(measures::overlap({[&] {
                  Path path;
                  for (const BandPiece& piece : narrowed(own, all))
                      path.contours.insert(path.contours.end(), piece.path.contours.begin(),
                                           piece.path.contours.end());
                  return path.contours;
              }()}) < 1e-6);
    }
}

TEST_CASE("bands that do not meet stay a gap apart, of one colour or of two") {
    std::mt19937 random(6);
    int close = 0;
    for (int round = 0; round < 600; ++round) {
        const auto bands = random_bands(random, 2);
        if (meet(bands[0], bands[1])) continue;
        const auto together = narrowed(bands, bands);
        CAPTURE(round);
        CHECK(together.size() == 2);
        const auto one = polygons(narrowed({bands[0]}, bands)), other = polygons(narrowed({bands[1]}, bands));
        CHECK(common_area(measures::grown(one, gap / 2 - 1e-3), measures::grown(other, gap / 2 - 1e-3)) <
              1e-6);
        close +=
            common_area(measures::grown(one, gap / 2 + 5e-3), measures::grown(other, gap / 2 + 5e-3)) > 1e-6;
        // Of the neck between two letters that are both kept clear of, this much is left.
        Path all;
        for (const BandPiece& piece : together)
            all.contours.insert(all.contours.end(), piece.path.contours.begin(), piece.path.contours.end());
        const double neck = 2 * (std::sqrt(0.5) - radius - gap);
        CHECK(measures::thin_strokes(all, neck - 1e-2) < 1e-3);
    }
    CHECK(close > 10);  // the bound is met, not undercut by far
}

TEST_CASE("the side of a waist follows both circles and the lines that touch them") {
    for (const double beside : {0.3, 0.42, 0.5}) {
        const auto& c = waist_side(radius, beside).corners;
        const double half = std::sqrt(0.5);
        const Point centre{half, half};
        CHECK(std::hypot(c[0].x, c[0].y) == Approx(radius));
        CHECK(std::hypot(c[3].x - 2 * half, c[3].y) == Approx(radius));
        if (radius + beside <= half) continue;
        CHECK(std::hypot(c[1].x - centre.x, c[1].y - centre.y) == Approx(beside));
        CHECK(std::hypot(c[2].x - centre.x, c[2].y - centre.y) == Approx(beside));
        // A tangent stands at right angles on both radii.
        const Point line{c[1].x - c[0].x, c[1].y - c[0].y};
        CHECK(line.x * c[0].x + line.y * c[0].y == Approx(0).margin(1e-12));
        CHECK(line.x * (c[1].x - centre.x) + line.y * (c[1].y - centre.y) == Approx(0).margin(1e-12));
    }
}

TEST_CASE("what a waist takes leaves the band that is drawn with it, and little more") {
    for (const Direction direction : all_directions) {
        if (step(direction).row == 0 || step(direction).column == 0) continue;
        const std::vector<Band> band{{{4, 4}, moved({4, 4}, direction, 3)}};
        const auto waists = waists_of(band, band, in_grid, radius, gap);
        CHECK(waists.size() == 6);
        const Path whole = unite_bands(band, radius, 0)[0].path;
        auto cut = measures::polygons(whole);
        for (const Waist& waist : waists)
            cut = measures::less(cut, measures::polygons(taken_by(waist, radius, radius + 0.1)));
        const Path drawn = unite_bands(band, radius, 0, waists)[0].path;
        // Over a letter between two waists the lines meet, and the drawn side goes round below them; the chords of the
        // arcs measured here lie up to 2e-5 off.
        CHECK(measures::area(measures::less(measures::polygons(drawn), cut)) < 5e-4);
        CHECK(measures::area(cut) - signed_area(drawn) < 1e-3);
        CHECK(signed_area(drawn) < 2 * radius * 3 * std::sqrt(2) + pi * radius * radius - 0.2);
        CHECK(drawn.contours.size() == 1);
        CHECK(drawn.contours[0].segments.size() <= 60);
    }
}

TEST_CASE("waists of radii that leave no room are a broken call") {
    const std::vector<Band> band{{{0, 0}, {3, 3}}};
    const std::vector<Waist> wide{{{0, 0}, {1, 1}, {0, 1}, 0.6}};
    CHECK_THROWS_AS(unite_bands(band, radius, 0, wide), std::invalid_argument);
    const std::vector<Waist> three{{{0, 0}, {1, 1}, {0, 1}, 0.5}, {{1, 1}, {2, 2}, {1, 2}, 0.45}};
    CHECK_THROWS_AS(unite_bands(band, radius, 0, three), std::invalid_argument);
}
