// United bands against an integration that shares nothing with them: each scan line is cut with every capsule
// by formula, and the cuts are joined.

#include "art/bands.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <numeric>
#include <random>

using namespace lode;

namespace {

constexpr double pi = 3.14159265358979323846;

Point centre(Cell cell) {
    return {cell.column + 0.5, cell.row + 0.5};
}

double distance_to(Point p, const Band& band) {
    const Point a = centre(band.first);
    const Point b = centre(band.last);
    const double length = (b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y);
    double t = length > 0 ? ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / length : 0;
    t = std::clamp(t, 0.0, 1.0);
    return std::hypot(p.x - a.x - t * (b.x - a.x), p.y - a.y - t * (b.y - a.y));
}

// Where a horizontal line at y runs through the capsule: a convex shape, so one stretch. Found by halving.
bool cut(double y, const Band& band, double radius, double& left, double& right) {
    const Point a = centre(band.first);
    const Point b = centre(band.last);
    if (y <= std::min(a.y, b.y) - radius || y >= std::max(a.y, b.y) + radius) return false;
    // The point of the band's own line that is nearest to this height lies inside, or nothing does.
    const double t = a.y == b.y ? 0 : std::clamp((y - a.y) / (b.y - a.y), 0.0, 1.0);
    const double inside = a.x + t * (b.x - a.x);
    if (distance_to({inside, y}, band) >= radius) return false;
    const auto edge = [&](double outside) {
        double in = inside;
        double out = outside;
        for (int i = 0; i < 36; ++i) {
            const double middle = (in + out) / 2;
            (distance_to({middle, y}, band) < radius ? in : out) = middle;
        }
        return in;
    };
    left = edge(std::min(a.x, b.x) - radius - 1);
    right = edge(std::max(a.x, b.x) + radius + 1);
    return true;
}

double integrated_area(const std::vector<Band>& bands, double radius, int rows, int lines_a_cell) {
    double sum = 0;
    for (int i = -lines_a_cell; i < (rows + 1) * lines_a_cell; ++i) {
        const double y = (i + 0.5) / lines_a_cell;
        std::vector<std::pair<double, double>> cuts;
        for (const Band& band : bands) {
            double left = 0;
            double right = 0;
            if (cut(y, band, radius, left, right)) cuts.emplace_back(left, right);
        }
        std::sort(cuts.begin(), cuts.end());
        double reached = -1e300;
        for (const auto& [left, right] : cuts) {
            sum += std::max(0.0, right - std::max(left, reached));
            reached = std::max(reached, right);
        }
    }
    return sum / lines_a_cell;
}

double area(const std::vector<BandPiece>& pieces) {
    return std::accumulate(pieces.begin(), pieces.end(), 0.0,
                           [](double sum, const BandPiece& piece) { return sum + signed_area(piece.path); });
}

double apart(const Band& a, const Band& b) {
    const auto turn = [](Point p, Point q, Point r) {
        return (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
    };
    const Point p = centre(a.first), q = centre(a.last), r = centre(b.first), s = centre(b.last);
    if (turn(p, q, r) * turn(p, q, s) < 0 && turn(r, s, p) * turn(r, s, q) < 0) return 0;
    return std::min({distance_to(p, b), distance_to(q, b), distance_to(r, a), distance_to(s, a)});
}

std::size_t groups(const std::vector<Band>& bands, double radius) {
    std::vector<std::size_t> root(bands.size());
    std::iota(root.begin(), root.end(), 0u);
    const auto find = [&](std::size_t i) {
        while (root[i] != i) i = root[i];
        return i;
    };
    for (std::size_t i = 0; i < bands.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            if (apart(bands[i], bands[j]) < 2 * radius) root[find(i)] = find(j);
    std::size_t count = 0;
    for (std::size_t i = 0; i < bands.size(); ++i) count += root[i] == i;
    return count;
}

std::vector<Band> random_bands(std::mt19937& random, int count, int side) {
    std::vector<Band> bands;
    while (static_cast<int>(bands.size()) < count) {
        const Cell first{static_cast<int>(random() % static_cast<unsigned>(side)),
                         static_cast<int>(random() % static_cast<unsigned>(side))};
        const Direction direction = all_directions[random() % 8];
        const Cell last = moved(first, direction, static_cast<int>(1 + random() % 8));
        if (last.row >= 0 && last.row < side && last.column >= 0 && last.column < side)
            bands.push_back({first, last});
    }
    return bands;
}

}  // namespace

TEST_CASE("a band in each of the eight directions has the area of a stadium and no more than ten segments") {
    for (const Direction direction : all_directions) {
        const Band band{{7, 7}, moved({7, 7}, direction, 5)};
        const auto pieces = unite_bands({&band, 1}, 0.31, 0);
        REQUIRE(pieces.size() == 1);
        const double straight = 5 * std::hypot(step(direction).row, step(direction).column);
        CHECK(signed_area(pieces[0].path) == Approx(2 * 0.31 * straight + pi * 0.31 * 0.31).epsilon(3e-6));
        CHECK(pieces[0].path.contours.size() == 1);
        CHECK(pieces[0].path.contours[0].segments.size() == 10);
    }
}

TEST_CASE("a band of one cell is a circle") {
    const Band band{{2, 3}, {2, 3}};
    const auto pieces = unite_bands({&band, 1}, 0.4, 0);
    REQUIRE(pieces.size() == 1);
    CHECK(signed_area(pieces[0].path) == Approx(pi * 0.16).epsilon(5e-6));
    CHECK(pieces[0].path.contours[0].segments.size() == 8);
}

TEST_CASE("two bands that cross are one piece with the area that integration gives") {
    for (const double radius : {0.2, 0.31, 0.42}) {
        const std::vector<Band> plus{{{3, 0}, {3, 6}}, {{0, 3}, {6, 3}}};
        // By formula: two stadiums less the square that they share.
        const double stadium = 2 * radius * 6 + pi * radius * radius;
        const auto pieces = unite_bands(plus, radius, 0);
        REQUIRE(pieces.size() == 1);
        CHECK(area(pieces) == Approx(2 * stadium - 4 * radius * radius).epsilon(3e-6));

        const std::vector<Band> slanted{{{3, 0}, {3, 6}}, {{0, 0}, {6, 6}}};
        const auto others = unite_bands(slanted, radius, 0);
        REQUIRE(others.size() == 1);
        CHECK(area(others) == Approx(integrated_area(slanted, radius, 7, 4000)).epsilon(1e-5));
        // Two rounded bars of ten segments each, cut four times: no slivers.
        CHECK(others[0].path.contours.size() == 1);
        CHECK(others[0].path.contours[0].segments.size() <= 28);
    }
}

TEST_CASE("words along one line and words from one cell leave no slivers between them") {
    const std::vector<Band> overlapping{{{2, 0}, {2, 5}}, {{2, 3}, {2, 8}}, {{2, 6}, {2, 1}}};
    auto pieces = unite_bands(overlapping, 0.4, 0);
    REQUIRE(pieces.size() == 1);
    CHECK(pieces[0].bands == std::vector<std::size_t>{0, 1, 2});
    CHECK(pieces[0].path.contours.size() == 1);
    CHECK(pieces[0].path.contours[0].segments.size() == 10);
    CHECK(area(pieces) == Approx(2 * 0.4 * 8 + pi * 0.16).epsilon(3e-6));

    std::vector<Band> star;
    for (const Direction direction : all_directions) star.push_back({{5, 5}, moved({5, 5}, direction, 4)});
    pieces = unite_bands(star, 0.31, 0);
    REQUIRE(pieces.size() == 1);
    CHECK(pieces[0].path.contours.size() == 1);
    CHECK(area(pieces) == Approx(integrated_area(star, 0.31, 11, 4000)).epsilon(1e-5));
}

TEST_CASE("random bands: area, pieces, orientation, and every edge on a true line or circle") {
    std::mt19937 random(7);
    for (int round = 0; round < 80; ++round) {
        const int side = 6 + static_cast<int>(random() % 12);
        const std::vector<Band> bands = random_bands(random, 1 + static_cast<int>(random() % 24), side);
        const double radius = round % 2 ? 0.31 : 0.42;
        const auto pieces = unite_bands(bands, radius, 0);
        CAPTURE(round, radius, bands.size());
        CHECK(area(pieces) == Approx(integrated_area(bands, radius, side, 300)).epsilon(3e-4));
        CHECK(pieces.size() == groups(bands, radius));

        std::size_t named = 0;
        for (const BandPiece& piece : pieces) {
            named += piece.bands.size();
            CHECK(std::is_sorted(piece.bands.begin(), piece.bands.end()));
            for (std::size_t i = 0; i < piece.path.contours.size(); ++i) {
                const Contour& contour = piece.path.contours[i];
                CHECK((signed_area(contour) > 0) == (i == 0));
                CHECK(contour.segments.back().to == contour.start);
                Point from = contour.start;
                for (const Segment& s : contour.segments) {
                    // Nowhere inside any band, and on the rim of the nearest.
                    const Point middle =
                        s.curved ? Point{(from.x + 3 * s.control1.x + 3 * s.control2.x + s.to.x) / 8,
                                         (from.y + 3 * s.control1.y + 3 * s.control2.y + s.to.y) / 8}
                                 : Point{(from.x + s.to.x) / 2, (from.y + s.to.y) / 2};
                    for (const Point p : {from, middle, s.to}) {
                        double nearest = 1e300;
                        for (const Band& band : bands) nearest = std::min(nearest, distance_to(p, band));
                        CHECK(std::abs(nearest - radius) < 5e-6);
                    }
                    CHECK(std::hypot(s.to.x - from.x, s.to.y - from.y) > 1e-3);
                    from = s.to;
                }
            }
        }
        CHECK(named == bands.size());
    }
}

TEST_CASE("holes too small to be weeded are filled and larger ones are kept") {
    // A triangle of bands with legs of two cells, and one of four.
    const auto triangle = [](int leg) {
        return std::vector<Band>{{{0, 0}, {0, leg}}, {{0, leg}, {leg, leg}}, {{0, 0}, {leg, leg}}};
    };
    const auto contours = [&](int leg, double least_hole) {
        const auto pieces = unite_bands(triangle(leg), 0.4, least_hole);
        REQUIRE(pieces.size() == 1);
        return pieces[0].path.contours.size();
    };
    CHECK(contours(2, 0) == 2);
    CHECK(contours(2, 0.5) == 1);
    CHECK(contours(4, 0.5) == 2);
}

TEST_CASE("a radius out of bounds or a crooked band is a broken call") {
    const Band straight{{0, 0}, {0, 3}};
    CHECK_THROWS_AS(unite_bands({&straight, 1}, 0.5, 0), std::invalid_argument);
    CHECK_THROWS_AS(unite_bands({&straight, 1}, 0, 0), std::invalid_argument);
    const Band crooked{{0, 0}, {1, 3}};
    CHECK_THROWS_AS(unite_bands({&crooked, 1}, 0.3, 0), std::invalid_argument);
    CHECK(unite_bands({}, 0.3, 0).empty());
}
