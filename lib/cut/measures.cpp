// What a layer asks of film, hand and machine, and where it is too thin.

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include <letterlode/cut.hpp>

#include "cut/measures.hpp"
#include "cut/thin_features.hpp"

namespace lode {

namespace {

constexpr std::size_t most_places_a_shape = 4;
// What is asked for and what is measured are the same to a tenth of a micrometre.
constexpr double slack_mm = 1e-4;

// Pieces of one shape are measured once: outlines are compared from their first point on, to a
// hundred-thousandth of a millimetre, which is far below what any of this can tell.
using ShapeKey = std::vector<long long>;

ShapeKey key_of(const Path& path) {
    ShapeKey key;
    if (path.empty()) return key;
    const Point origin = path.contours.front().start;
    const auto add = [&](Point p) {
        key.push_back(std::llround((p.x - origin.x) * 1e5));
        key.push_back(std::llround((p.y - origin.y) * 1e5));
    };
    for (const Contour& contour : path.contours) {
        add(contour.start);
        for (const Segment& s : contour.segments) {
            if (s.curved) {
                add(s.control1);
                add(s.control2);
            }
            key.push_back(s.curved);
            add(s.to);
        }
        key.push_back(-1);
    }
    return key;
}

double length_between(Point a, Point b) {
    return std::sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y));
}

// By Gauss and Legendre's rule of five points on each half of the curve.
double length_of(Point from, const Segment& s) {
    if (!s.curved) return length_between(from, s.to);
    constexpr std::array<double, 3> at{0, 0.5384693101056831, 0.9061798459386640};
    constexpr std::array<double, 3> weight{0.5688888888888889, 0.4786286704993665, 0.2369268850561891};
    const auto speed = [&](double t) {
        const double u = 1 - t;
        const double a = 3 * u * u, b = 6 * u * t, c = 3 * t * t;
        const double x =
            a * (s.control1.x - from.x) + b * (s.control2.x - s.control1.x) + c * (s.to.x - s.control2.x);
        const double y =
            a * (s.control1.y - from.y) + b * (s.control2.y - s.control1.y) + c * (s.to.y - s.control2.y);
        return std::sqrt(x * x + y * y);
    };
    double sum = 0;
    for (const double middle : {0.25, 0.75})
        for (std::size_t i = 0; i < at.size(); ++i) {
            sum += weight[i] * speed(middle + at[i] / 4);
            if (i > 0) sum += weight[i] * speed(middle - at[i] / 4);
        }
    return sum / 4;
}

double length_of(const Path& path) {
    double sum = 0;
    for (const Contour& contour : path.contours) {
        Point from = contour.start;
        for (const Segment& s : contour.segments) {
            sum += length_of(from, s);
            from = s.to;
        }
    }
    return sum;
}

struct Shape {
    Narrowest narrowest;
    std::vector<NarrowPlace> strokes;  // places of the first piece of this shape
    std::vector<NarrowPlace> gaps;
    std::size_t first = 0;
    std::size_t count = 0;
};

class LayerMeasurer {
  public:
    LayerMeasurer(const Layer& layer, double least_stroke, double least_gap)
        : layer_(layer), least_stroke_(least_stroke - slack_mm), least_gap_(least_gap - slack_mm) {}

    // `go_on` is asked before each piece; none where it said no.
    [[nodiscard]] std::optional<LayerMeasures> measured(std::vector<ThinFinding>& thin,
                                                        const std::function<bool()>& go_on) {
        LayerMeasures all;
        all.layer = layer_.name;
        all.colour = layer_.colour;
        for (std::size_t i = 0; i < layer_.pieces.size(); ++i) {
            if (!go_on()) return std::nullopt;
            add(i, all);
        }
        for (const auto& [key, shape] : shapes_) note_narrowest(shape, all);
        const std::size_t before = thin.size();
        for (const auto& [key, shape] : shapes_) add_findings(shape, thin);
        add_neighbours(thin);
        std::stable_sort(thin.begin() + static_cast<std::ptrdiff_t>(before), thin.end(),
                         [](const ThinFinding& a, const ThinFinding& b) { return a.width_mm < b.width_mm; });
        return all;
    }

  private:
    void add(std::size_t piece, LayerMeasures& all) {
        const Path& path = layer_.pieces[piece].path;
        for (const Contour& contour : path.contours) ++(signed_area(contour) > 0 ? all.pieces : all.counters);
        all.cut_mm += length_of(path);
        all.area_mm2 += signed_area(path);
        const Box box = bounds(path);
        all.box = piece == 0 ? box
                             : Box{std::min(all.box.left, box.left), std::min(all.box.top, box.top),
                                   std::max(all.box.right, box.right), std::max(all.box.bottom, box.bottom)};
        auto [known, is_new] = shapes_.try_emplace(key_of(path));
        Shape& shape = known->second;
        ++shape.count;
        if (!is_new) return;
        shape.first = piece;
        shape.narrowest = narrowest(path);
        if (shape.narrowest.stroke && shape.narrowest.stroke->width < least_stroke_)
            shape.strokes = narrow_strokes(path, least_stroke_, most_places_a_shape);
        if (shape.narrowest.gap && shape.narrowest.gap->width < least_gap_)
            shape.gaps = narrow_gaps(path, least_gap_, most_places_a_shape);
    }

    void note_narrowest(const Shape& shape, LayerMeasures& all) const {
        const std::string& name = layer_.pieces[shape.first].name;
        const auto take = [&](const std::optional<NarrowPlace>& place, std::optional<double>& least,
                              std::string& at) {
            if (!place || (least && *least < place->width) || (least && *least == place->width && at <= name))
                return;
            least = place->width;
            at = name;
        };
        take(shape.narrowest.stroke, all.narrowest_stroke_mm, all.narrowest_stroke_at);
        take(shape.narrowest.gap, all.narrowest_gap_mm, all.narrowest_gap_at);
    }

    void add_findings(const Shape& shape, std::vector<ThinFinding>& thin) const {
        const auto add = [&](ThinFinding::Kind kind, const NarrowPlace& place) {
            thin.push_back({kind,
                            layer_.name,
                            layer_.pieces[shape.first].name,
                            {},
                            place.width,
                            place.middle,
                            shape.count,
                            layer_.pieces[shape.first].cell});
        };
        for (const NarrowPlace& place : shape.strokes) add(ThinFinding::Kind::stroke, place);
        for (const NarrowPlace& place : shape.gaps) add(ThinFinding::Kind::gap, place);
    }

    void add_neighbours(std::vector<ThinFinding>& thin) const {
        std::vector<Path> paths;
        for (const Piece& piece : layer_.pieces) paths.push_back(piece.path);
        for (const NearPieces& near : near_pieces(paths, least_gap_)) {
            const Piece& one = layer_.pieces[near.one];
            const Piece& other = layer_.pieces[near.other];
            thin.push_back({ThinFinding::Kind::between_pieces, layer_.name, one.name, other.name,
                            near.place.width, near.place.middle, 1, one.cell, other.cell});
        }
    }

    const Layer& layer_;
    double least_stroke_;
    double least_gap_;
    std::map<ShapeKey, Shape> shapes_;
};

}  // namespace

std::optional<Measures> measured(const Artwork& artwork, double least_stroke_mm, double least_gap_mm,
                                 const CutControl& control) {
    Measures measures;
    measures.least_stroke_mm = least_stroke_mm;
    measures.least_gap_mm = least_gap_mm;
    std::uint64_t pieces = 0, done = 0;
    for (const Layer& layer : artwork.layers) pieces += layer.pieces.size();
    const auto go_on = [&] {
        if (control.is_cancelled()) return false;
        if (control.progress) control.progress(done, pieces);
        ++done;
        return true;
    };
    for (const Layer& layer : artwork.layers) {
        auto one = LayerMeasurer(layer, least_stroke_mm, least_gap_mm).measured(measures.thin, go_on);
        if (!one) return std::nullopt;
        measures.layers.push_back(*std::move(one));
    }
    return measures;
}

Measures measure(const Artwork& artwork, double least_stroke_mm, double least_gap_mm) {
    return measured(artwork, least_stroke_mm, least_gap_mm, {}).value();
}

}  // namespace lode
