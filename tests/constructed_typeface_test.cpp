// The constructed alphabet, measured from its outlines alone: they are flattened, and rays go out square from
// every piece into the ink and into the ground until they meet the other side. Overlaps are judged by
// polyclipping (Clipper).

#include <algorithm>
#include <catch2/catch.hpp>
#include <clipper.hpp>
#include <cmath>
#include <map>
#include <stdexcept>
#include <string>
#include <vector>

#include "art/constructed_typeface.hpp"

namespace {

using namespace lode;

const std::vector<std::string> capitals{"A", "B", "C", "D", "E", "F", "G", "H", "I", "J", "K", "L", "M",
                                        "N", "O", "P", "Q", "R", "S", "T", "U", "V", "W", "X", "Y", "Z"};
const std::vector<std::string> figures{"0", "1", "2", "3", "4", "5", "6", "7", "8", "9"};
const std::vector<std::string> small{"a", "b", "c", "d", "e", "f", "g", "h", "i", "j", "k", "l", "m",
                                     "n", "o", "p", "q", "r", "s", "t", "u", "v", "w", "x", "y", "z"};
const std::vector<std::string> signs{"&", "?", "!", ".", ",", ":", ";", "'", "\"", "-",
                                     "–", "—", "(", ")", "/", "+", "=", "#", "@",  "*",
                                     "%", "·", "•", "°", "‘", "’", "‚", "“", "”",  "„"};
const std::vector<std::string> marked{
    "À", "Á", "Â", "Ã", "Ä", "Å", "Ç", "È", "É", "Ê", "Ë", "Ì", "Í", "Î", "Ï", "Ñ", "Ò", "Ó", "Ô", "Õ", "Ö",
    "Ù", "Ú", "Û", "Ü", "Ý", "Č", "Š", "Ž", "Ř", "Ą", "Ę", "Į", "Ă", "Ğ", "Ī", "Ė", "İ", "Ő", "Ű", "Ș", "Ț",
    "Ş", "à", "á", "â", "ã", "ä", "å", "ç", "è", "é", "ê", "ë", "ì", "í", "î", "ï", "ñ", "ò", "ó", "ô", "õ",
    "ö", "ù", "ú", "û", "ü", "ý", "ÿ", "č", "š", "ž", "ř", "ą", "ę", "į", "ă", "ğ", "ī", "ė", "ő", "ű", "ș",
    "ț", "ş", "Ů", "ů", "Æ", "Ø", "Œ", "Ł", "Đ", "Ð", "Þ", "ẞ", "æ", "ø", "œ", "ł", "đ", "ð", "þ", "ß", "ı"};

std::vector<std::string> everything() {
    std::vector<std::string> all;
    for (const auto* part : {&capitals, &figures, &small, &signs, &marked})
        all.insert(all.end(), part->begin(), part->end());
    return all;
}

// Widths and gaps over what the header allows, and beside its bounds.
std::vector<ConstructedStyle> styles() {
    std::vector<ConstructedStyle> result;
    for (const double stroke : {least_stroke, 0.10, 0.14, 0.18, most_stroke})
        for (const double share : {0.3, 0.65, 1.0}) result.push_back({stroke, share * largest_gap(stroke)});
    return result;
}

Path drawn(ConstructedTypeface& face, const std::string& letter) {
    const auto line = face.set_line(letter);
    REQUIRE(line);
    REQUIRE(line->missing.empty());
    REQUIRE(line->letters.size() == 1);
    return line->letters[0].path;
}

using Ring = std::vector<Point>;

std::vector<Ring> flattened(const Path& path, int steps) {
    std::vector<Ring> rings;
    for (const Contour& contour : path.contours) {
        Ring& ring = rings.emplace_back();
        Point from = contour.start;
        for (const Segment& s : contour.segments) {
            const Point c1 =
                s.curved ? s.control1 : Point{from.x + (s.to.x - from.x) / 3, from.y + (s.to.y - from.y) / 3};
            const Point c2 =
                s.curved ? s.control2
                         : Point{from.x + 2 * (s.to.x - from.x) / 3, from.y + 2 * (s.to.y - from.y) / 3};
            for (int i = 0; i < steps; ++i) {
                const double t = static_cast<double>(i) / steps;
                const double u = 1 - t;
                const auto mix = [&](double a, double b, double c, double d) {
                    return u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d;
                };
                ring.push_back({mix(from.x, c1.x, c2.x, s.to.x), mix(from.y, c1.y, c2.y, s.to.y)});
            }
            from = s.to;
        }
    }
    return rings;
}

struct Piece {
    Point a;
    Point b;
    Point inward;  // into the ink, which lies to the right
};

std::vector<Piece> pieces_of(const std::vector<Ring>& rings) {
    std::vector<Piece> pieces;
    for (const Ring& ring : rings)
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point a = ring[i];
            const Point b = ring[(i + 1) % ring.size()];
            const double size = std::hypot(b.x - a.x, b.y - a.y);
            REQUIRE(size > 1e-7);
            pieces.push_back({a, b, {-(b.y - a.y) / size, (b.x - a.x) / size}});
        }
    return pieces;
}

struct Widths {
    double ink = 100;
    double ground = 100;
};

// Between sides that face each other to within 20 degrees: where strokes run together at a sharper angle, the
// ground between them ends in a point, whatever the style.
Widths measured(const std::vector<Piece>& pieces) {
    constexpr double facing = -0.94;
    Widths widths;
    for (const Piece& from : pieces) {
        const Point start{(from.a.x + from.b.x) / 2, (from.a.y + from.b.y) / 2};
        for (const double side : {1.0, -1.0}) {
            const Point d{side * from.inward.x, side * from.inward.y};
            double nearest = 100;
            const Piece* met = nullptr;
            for (const Piece& piece : pieces) {
                if (&piece == &from) continue;
                const double across = d.x * (piece.b.y - piece.a.y) - d.y * (piece.b.x - piece.a.x);
                if (across == 0) continue;
                const Point away{piece.a.x - start.x, piece.a.y - start.y};
                const double t =
                    (away.x * (piece.b.y - piece.a.y) - away.y * (piece.b.x - piece.a.x)) / across;
                const double u = (away.x * d.y - away.y * d.x) / across;
                if (t <= 1e-9 || t >= nearest || u < 0 || u > 1) continue;
                nearest = t;
                met = &piece;
            }
            if (met == nullptr) continue;
            if (met->inward.x * from.inward.x + met->inward.y * from.inward.y > facing) continue;
            (side > 0 ? widths.ink : widths.ground) =
                std::min(side > 0 ? widths.ink : widths.ground, nearest);
        }
    }
    return widths;
}

double to_piece(Point p, const Piece& piece) {
    const Point d{piece.b.x - piece.a.x, piece.b.y - piece.a.y};
    const double t =
        std::clamp(((p.x - piece.a.x) * d.x + (p.y - piece.a.y) * d.y) / (d.x * d.x + d.y * d.y), 0.0, 1.0);
    return std::hypot(p.x - piece.a.x - t * d.x, p.y - piece.a.y - t * d.y);
}

bool inside(const Ring& ring, Point p) {
    bool in = false;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i];
        const Point b = ring[(i + 1) % ring.size()];
        if ((a.y <= p.y) != (b.y <= p.y) && a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x) > p.x) in = !in;
    }
    return in;
}

// The widest circle within a counter: from the best point of a lattice, ever smaller steps.
double widest_circle(const Ring& ring) {
    const std::vector<Piece> pieces = pieces_of({ring});
    const auto room = [&](Point p) {
        if (!inside(ring, p)) return 0.0;
        double nearest = 100;
        for (const Piece& piece : pieces) nearest = std::min(nearest, to_piece(p, piece));
        return nearest;
    };
    double left = 100;
    double right = -100;
    double top = 100;
    double bottom = -100;
    for (const Point p : ring) {
        left = std::min(left, p.x);
        right = std::max(right, p.x);
        top = std::min(top, p.y);
        bottom = std::max(bottom, p.y);
    }
    Point best{};
    double most = 0;
    const auto look = [&](Point p) {
        const double r = room(p);
        if (r <= most) return;
        most = r;
        best = p;
    };
    // Distance within a counter has no other peaks near its highest: ever smaller lattices about the best.
    constexpr int steps = 12;
    double width = right - left;
    double height = bottom - top;
    Point middle{(left + right) / 2, (top + bottom) / 2};
    for (int round = 0; round < 7; ++round) {
        for (int i = 1; i < steps; ++i)
            for (int j = 1; j < steps; ++j)
                look({middle.x + width * (static_cast<double>(i) / steps - 0.5),
                      middle.y + height * (static_cast<double>(j) / steps - 0.5)});
        middle = best;
        width *= 0.35;
        height *= 0.35;
    }
    return 2 * most;
}

double nearest_contours(const std::vector<Ring>& rings) {
    double nearest = 100;
    for (std::size_t i = 0; i < rings.size(); ++i)
        for (std::size_t j = 0; j < rings.size(); ++j) {
            if (i == j) continue;
            const std::vector<Piece> other = pieces_of({rings[j]});
            for (const Point p : rings[i])
                for (const Piece& piece : other) nearest = std::min(nearest, to_piece(p, piece));
        }
    return nearest;
}

double united_area(const std::vector<Ring>& rings) {
    constexpr double scale = 1e8;
    ClipperLib::Clipper clipper;
    for (const Ring& ring : rings) {
        ClipperLib::Path points;
        for (const Point p : ring)
            points.emplace_back(static_cast<ClipperLib::cInt>(std::llround(p.x * scale)),
                                static_cast<ClipperLib::cInt>(std::llround(p.y * scale)));
        clipper.AddPath(points, ClipperLib::ptSubject, true);
    }
    ClipperLib::Paths united;
    clipper.Execute(ClipperLib::ctUnion, united, ClipperLib::pftNonZero);
    double area = 0;
    for (const ClipperLib::Path& path : united) area += ClipperLib::Area(path);
    return area / scale / scale;
}

double area_of(const Ring& ring) {
    double twice = 0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i];
        const Point b = ring[(i + 1) % ring.size()];
        twice += a.x * b.y - a.y * b.x;
    }
    return twice / 2;
}

}  // namespace

TEST_CASE("every letter of the constructed alphabet keeps the widths of its style", "[constructed]") {
    std::size_t number = 0;
    for (const ConstructedStyle style : styles()) {
        ConstructedTypeface face(style);
        // Marks take the most time, and differ the least: at every third style.
        std::vector<std::string> letters = number++ % 3 == 2 ? everything() : capitals;
        if (number % 3 == 1) letters.insert(letters.end(), small.begin(), small.end());
        if (number % 3 == 2) letters.insert(letters.end(), figures.begin(), figures.end());
        for (const std::string& letter : letters) {
            const std::vector<Ring> rings = flattened(drawn(face, letter), 6);
            const Widths widths = measured(pieces_of(rings));
            CAPTURE(style.stroke, style.least_gap, letter);
            // A flattened arc lies inside the true one by less than this; and near an end that is cut aslant,
            // a ray meets the rounding of its corners.
            constexpr double flat = 1e-3;
            CHECK(widths.ink >= 0.985 * style.stroke - flat);
            CHECK(widths.ground >= style.least_gap - flat);
            double sum = 0;
            std::vector<Ring> outer;
            for (const Ring& ring : rings) {
                const double area = area_of(ring);
                sum += area;
                if (area > 0)
                    outer.push_back(ring);
                else
                    CHECK(widest_circle(ring) >= style.least_gap - flat);
            }
            CHECK(nearest_contours(outer) >= style.least_gap - flat);
            CHECK(sum > 0);
            CHECK(std::abs(united_area(rings) - sum) < 1e-6);
        }
    }
}

TEST_CASE("a stroke of the constructed alphabet is as wide as its style says", "[constructed]") {
    for (const ConstructedStyle style : styles()) {
        ConstructedTypeface face(style);
        // The narrowest and the widest of an I across, and of an O's ring along rays square to it.
        const Box stem = bounds(drawn(face, "I"));
        CHECK(stem.width() == Approx(style.stroke).epsilon(1e-9));
        CHECK(stem.height() == Approx(1).epsilon(1e-9));
        CHECK(measured(pieces_of(flattened(drawn(face, "O"), 24))).ink == Approx(style.stroke).epsilon(2e-3));
        const double perimeter_times_stroke = [&] {
            // A ring of one width has the area of its middle line times the width, so that two widths tell
            // it.
            const std::vector<Ring> rings = flattened(drawn(face, "O"), 24);
            double length = 0;
            for (const Ring& ring : rings)
                for (std::size_t i = 0; i < ring.size(); ++i) {
                    const Point a = ring[i];
                    const Point b = ring[(i + 1) % ring.size()];
                    length += std::hypot(b.x - a.x, b.y - a.y) / 2;
                }
            return length * style.stroke;
        }();
        CHECK(signed_area(drawn(face, "O")) == Approx(perimeter_times_stroke).epsilon(1e-3));
    }
}

TEST_CASE("a capital of the constructed alphabet suits a cell", "[constructed]") {
    ConstructedTypeface face(ConstructedStyle{});
    CHECK(face.cap_height() == 1);
    for (const std::string& letter : capitals) {
        const Box box = bounds(drawn(face, letter));
        CAPTURE(letter);
        CHECK(box.width() <= 1.15);
        CHECK(box.height() >= 1 - 1e-9);
        if (letter != "Q") CHECK(box.bottom <= 0.0121);
        CHECK(box.top >= -1.0121);
    }
}

TEST_CASE("a line in the constructed alphabet runs to the right with room between letters", "[constructed]") {
    for (const ConstructedStyle style : styles()) {
        ConstructedTypeface face(style);
        for (const std::string text :
             {"Wrenbarrow Garden", "\u00C5se & Zo\u00EB 2031", "AVATAR LTL To. \u201CJ\u201D 11"}) {
            const auto line = face.set_line(text);
            REQUIRE(line);
            CHECK(line->missing.empty());
            for (std::size_t i = 1; i < line->letters.size(); ++i) {
                const SetLetter& before = line->letters[i - 1];
                const SetLetter& after = line->letters[i];
                CAPTURE(style.stroke, style.least_gap, before.text, after.text);
                CHECK(bounds(after.path).left > bounds(before.path).left);
                std::vector<Ring> both;
                for (const auto* letter : {&before, &after}) {
                    const std::vector<Ring> rings = flattened(letter->path, 4);
                    std::copy_if(rings.begin(), rings.end(), std::back_inserter(both),
                                 [](const Ring& ring) { return area_of(ring) > 0; });
                }
                CHECK(nearest_contours(both) >= style.least_gap - 0.012);
            }
        }
    }
}

TEST_CASE("the constructed alphabet says what it has and what it lacks", "[constructed]") {
    ConstructedTypeface face(ConstructedStyle{});
    CHECK(face.name() == "constructed alphabet");
    for (const std::string& letter : everything()) CHECK(face.has(letter));
    CHECK(face.has("A\u030A"));   // decomposed
    CHECK(!face.has("\u0416"));   // Cyrillic
    CHECK(!face.has("A\u0332"));  // a mark that it lacks
    CHECK(!face.has(""));
    CHECK(!face.has("AB"));
    const auto line = face.set_line("A \u0416\u200BB\u4E2D");
    REQUIRE(line);
    CHECK(line->missing == std::vector<std::string>{"\u0416", "\u4E2D"});
    REQUIRE(line->letters.size() == 2);
    CHECK(line->letters[0].text == "A");
    CHECK(line->letters[1].text == "B");
    REQUIRE(face.set_line(""));
    CHECK(face.set_line("").value().letters.empty());
    CHECK(drawn(face, "\u00C5") == drawn(face, "A\u030A"));
}

TEST_CASE("the constructed alphabet draws the same letters again", "[constructed]") {
    ConstructedTypeface face({0.14, 0.15});
    ConstructedTypeface other({0.14, 0.15});
    for (const std::string& letter : everything()) {
        const Path first = drawn(face, letter);
        CHECK(drawn(face, letter) == first);
        CHECK(drawn(other, letter) == first);
    }
}

TEST_CASE("the constructed alphabet refuses styles that it cannot keep", "[constructed]") {
    CHECK_THROWS_AS(ConstructedTypeface({0.059, 0.1}), std::invalid_argument);
    CHECK_THROWS_AS(ConstructedTypeface({0.221, 0.1}), std::invalid_argument);
    CHECK_THROWS_AS(ConstructedTypeface({0.14, 0}), std::invalid_argument);
    CHECK_THROWS_AS(ConstructedTypeface({std::nan(""), 0.1}), std::invalid_argument);
    CHECK_THROWS_AS(ConstructedTypeface({0.1, std::nan("")}), std::invalid_argument);
    CHECK_THROWS_AS(largest_gap(0.3), std::invalid_argument);
    for (const double stroke : {0.06, 0.14, 0.22}) {
        CHECK_NOTHROW(ConstructedTypeface({stroke, largest_gap(stroke)}));
        CHECK_THROWS_AS(ConstructedTypeface({stroke, largest_gap(stroke) + 0.001}), std::invalid_argument);
        CHECK(3 * stroke + 2 * largest_gap(stroke) <= 1);
    }
}
