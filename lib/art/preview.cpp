// A picture of the finished piece: a pale plate of the blank's outline that stands off a plain wall, lit from
// the upper left. Holes are seen through; small round ones hold a screw.

#include <cairo.h>

#include <algorithm>
#include <array>
#include <cstring>
#include <memory>
#include <new>
#include <stdexcept>
#include <utility>
#include <vector>

#include <letterlode/art.hpp>

#include "art/cairo_path.hpp"
#include "art/preview.hpp"

namespace lode {

namespace {

struct Destroy {
    void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
    void operator()(cairo_t* context) const { cairo_destroy(context); }
    void operator()(cairo_pattern_t* pattern) const { cairo_pattern_destroy(pattern); }
};
template <class T>
using Held = std::unique_ptr<T, Destroy>;

// The wall about the plate, in shares of the plate's longer side.
constexpr double wall_share = 0.11;
constexpr double corner_share = 0.018;     // the plate's rounded corners
constexpr double thickness_share = 0.009;  // of the side that is seen below and to the right
constexpr double shadow_share = 0.030;     // how far its shadow fades out
constexpr double fixing_radius_share = 0.013;
// A hole no wider than this hangs the piece: in shares of the plate's shorter side.
constexpr double widest_hanging_hole = 0.12;

bool is_plain_rectangle(const Path& path) {
    if (path.contours.size() != 1 || path.contours[0].segments.size() != 4) return false;
    const Box box = bounds(path);
    const auto at_corner = [&](Point p) {
        return (p.x == box.left || p.x == box.right) && (p.y == box.top || p.y == box.bottom);
    };
    return std::all_of(path.contours[0].segments.begin(), path.contours[0].segments.end(),
                       [&](const Segment& s) { return !s.curved && at_corner(s.to); });
}

Path rounded(const Box& box, double radius) {
    Contour contour{{box.left + radius, box.top}, {}};
    const auto corner = [&](Point centre, Point from, Point to) {
        contour.segments.push_back(Segment::line(from));
        append_arc(contour, centre, to);
    };
    const double left = box.left + radius, right = box.right - radius;
    const double top = box.top + radius, bottom = box.bottom - radius;
    corner({right, top}, {right, box.top}, {box.right, top});
    corner({right, bottom}, {box.right, bottom}, {right, box.bottom});
    corner({left, bottom}, {left, box.bottom}, {box.left, bottom});
    corner({left, top}, {box.left, top}, {left, box.top});
    return {{contour}};
}

// Pixels of one colour, from 0 to 255, in rows.
struct Mask {
    int width = 0;
    int height = 0;
    std::vector<unsigned char> pixels;
};

// Each pixel the mean of those no further than the radius along one line; beyond the ends there is nothing.
void blur_line(unsigned char* first, int count, std::ptrdiff_t pitch, int radius,
               std::vector<unsigned char>& room) {
    room.resize(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) room[static_cast<std::size_t>(i)] = first[i * pitch];
    const auto at = [&](int i) { return i >= 0 && i < count ? int{room[static_cast<std::size_t>(i)]} : 0; };
    int sum = 0;
    for (int i = 0; i < radius; ++i) sum += at(i);
    for (int i = 0; i < count; ++i) {
        sum += at(i + radius) - at(i - radius - 1);
        first[i * pitch] = static_cast<unsigned char>(sum / (2 * radius + 1));
    }
}

// Three means in a row are near to a bell curve, and all in whole numbers.
void blur(Mask& mask, int radius) {
    std::vector<unsigned char> room;
    for (int pass = 0; pass < 3; ++pass) {
        for (int y = 0; y < mask.height; ++y)
            blur_line(mask.pixels.data() + std::ptrdiff_t{y} * mask.width, mask.width, 1, radius, room);
        for (int x = 0; x < mask.width; ++x)
            blur_line(mask.pixels.data() + x, mask.height, mask.width, radius, room);
    }
}

class Picture {
  public:
    Picture(const Artwork& artwork, Path edge, int long_side_px)
        : artwork_(artwork), plate_(std::move(edge)) {
        const double longer = std::max(artwork.blank.width_mm, artwork.blank.height_mm);
        longer_ = longer;
        if (is_plain_rectangle(plate_)) {
            plain_ = true;
            plate_ = rounded(bounds(plate_), corner());
        }
        const double wall = wall_share * longer;
        const double scale = long_side_px / (longer + 2 * wall);
        const auto pixels = [&](double mm) {
            return std::max(1, static_cast<int>((mm + 2 * wall) * scale + 0.5));
        };
        width_ = pixels(artwork.blank.width_mm);
        height_ = pixels(artwork.blank.height_mm);
        surface_.reset(cairo_image_surface_create(CAIRO_FORMAT_RGB24, width_, height_));
        context_.reset(cairo_create(surface_.get()));
        if (cairo_status(context_.get()) != CAIRO_STATUS_SUCCESS) throw std::bad_alloc();
        // From here on millimetres from the plate's upper left corner.
        cairo_scale(context_.get(), scale, scale);
        cairo_translate(context_.get(), wall, wall);
        cairo_set_tolerance(context_.get(), 0.05);
        wall_ = wall;
        pixel_ = 1 / scale;
    }

    std::string painted() {
        paint_wall();
        paint_shadow();
        paint_side();
        paint_plate();
        if (plain_ && room_for_fixings()) paint_fixings();
        paint_screws();
        paint_film();
        paint_rim();
        return png();
    }

  private:
    void paint_wall();
    void paint_shadow();
    void paint_side();
    void paint_plate();
    void paint_film();
    void paint_rim();
    void paint_fixings();
    void paint_screws();
    void paint_head(Point at, double radius);
    [[nodiscard]] bool room_for_fixings() const;
    [[nodiscard]] std::string png() const;

    void paint_layer(const Layer& layer);
    [[nodiscard]] double corner() const {
        return std::min(corner_share * longer_,
                        std::min(artwork_.blank.width_mm, artwork_.blank.height_mm) / 6);
    }
    [[nodiscard]] double fixing_radius() const {
        return std::min(fixing_radius_share * longer_,
                        std::min(artwork_.blank.width_mm, artwork_.blank.height_mm) / 30);
    }
    [[nodiscard]] std::array<Point, 4> fixings() const {
        const double in = 2.1 * fixing_radius();
        const double right = artwork_.blank.width_mm - in;
        const double bottom = artwork_.blank.height_mm - in;
        return {{{in, in}, {right, in}, {in, bottom}, {right, bottom}}};
    }

    const Artwork& artwork_;
    Path plate_;
    bool plain_ = false;  // a rectangle without holes, whose corners are rounded a little
    double longer_ = 0;
    double wall_ = 0;
    double pixel_ = 0;  // mm
    int width_ = 0;
    int height_ = 0;
    Held<cairo_surface_t> surface_;
    Held<cairo_t> context_;
};

void add_stop(cairo_pattern_t* pattern, double at, double red, double green, double blue,
              double opacity = 1) {
    cairo_pattern_add_color_stop_rgba(pattern, at, red, green, blue, opacity);
}

void Picture::paint_wall() {
    const double right = artwork_.blank.width_mm + wall_;
    const double bottom = artwork_.blank.height_mm + wall_;
    const Held<cairo_pattern_t> light(cairo_pattern_create_radial(
        0.2 * right, 0.1 * bottom, 0, 0.2 * right, 0.1 * bottom, 1.25 * std::max(right, bottom)));
    add_stop(light.get(), 0, 0.925, 0.910, 0.885);
    add_stop(light.get(), 1, 0.815, 0.795, 0.765);
    cairo_set_source(context_.get(), light.get());
    cairo_paint(context_.get());
}

// The plate's own shape, blurred: on a picture of its own, no finer than a soft edge needs.
void Picture::paint_shadow() {
    const double fade = shadow_share * longer_;
    constexpr int finest = 600;
    const int shrunk = std::max(1, std::max(width_, height_) / finest);
    const int width = (width_ + shrunk - 1) / shrunk;
    const int height = (height_ + shrunk - 1) / shrunk;
    const Held<cairo_surface_t> surface(cairo_image_surface_create(CAIRO_FORMAT_A8, width, height));
    const Held<cairo_t> context(cairo_create(surface.get()));
    if (cairo_status(context.get()) != CAIRO_STATUS_SUCCESS) throw std::bad_alloc();
    const double scale = 1 / (pixel_ * shrunk);
    cairo_scale(context.get(), scale, scale);
    cairo_translate(context.get(), wall_ + 0.6 * fade, wall_ + 0.95 * fade);
    trace(context.get(), plate_);
    cairo_fill(context.get());

    cairo_surface_flush(surface.get());
    const int pitch = cairo_image_surface_get_stride(surface.get());
    unsigned char* const data = cairo_image_surface_get_data(surface.get());
    Mask mask{width, height, {}};
    for (int y = 0; y < height; ++y)
        mask.pixels.insert(mask.pixels.end(), data + y * pitch, data + y * pitch + width);
    blur(mask, std::max(1, static_cast<int>(0.5 * fade * scale)));
    for (int y = 0; y < height; ++y)
        std::memcpy(data + y * pitch, mask.pixels.data() + std::ptrdiff_t{y} * width,
                    static_cast<std::size_t>(width));
    cairo_surface_mark_dirty(surface.get());

    cairo_save(context_.get());
    cairo_identity_matrix(context_.get());
    cairo_scale(context_.get(), shrunk, shrunk);
    cairo_set_source_rgba(context_.get(), 0.16, 0.13, 0.10, 0.42);
    cairo_mask_surface(context_.get(), surface.get(), 0, 0);
    cairo_restore(context_.get());
}

// The thickness of the plate, seen from a little below and from the right.
void Picture::paint_side() {
    const double deep = thickness_share * longer_;
    const int steps = std::max(2, static_cast<int>(2 * deep / pixel_));
    for (int i = steps; i > 0; --i) {
        const double share = static_cast<double>(i) / steps;
        cairo_save(context_.get());
        cairo_translate(context_.get(), 0.55 * share * deep, 0.85 * share * deep);
        trace(context_.get(), plate_);
        const double light = 0.80 - 0.16 * share;
        cairo_set_source_rgb(context_.get(), 0.97 * light, light, 0.985 * light);
        cairo_fill(context_.get());
        cairo_restore(context_.get());
    }
}

void Picture::paint_plate() {
    trace(context_.get(), plate_);
    const Held<cairo_pattern_t> sheen(
        cairo_pattern_create_linear(0, 0, artwork_.blank.width_mm, artwork_.blank.height_mm));
    add_stop(sheen.get(), 0.0, 0.995, 0.995, 0.990);
    add_stop(sheen.get(), 1.0, 0.962, 0.960, 0.950);
    cairo_set_source(context_.get(), sheen.get());
    cairo_fill(context_.get());
}

void Picture::paint_layer(const Layer& layer) {
    cairo_set_source_rgb(context_.get(), layer.colour.red / 255.0, layer.colour.green / 255.0,
                         layer.colour.blue / 255.0);
    for (const Piece& piece : layer.pieces) {
        trace(context_.get(), piece.path);
        cairo_fill(context_.get());
    }
}

void Picture::paint_film() {
    // The viewer's back comes first.
    if (artwork_.surface == Surface::second)
        std::for_each(artwork_.layers.rbegin(), artwork_.layers.rend(),
                      [&](const Layer& layer) { paint_layer(layer); });
    else
        std::for_each(artwork_.layers.begin(), artwork_.layers.end(),
                      [&](const Layer& layer) { paint_layer(layer); });
}

// A polished edge catches the light above and to the left, and is dark below.
void Picture::paint_rim() {
    const double line = std::max(pixel_, 0.0022 * longer_);
    cairo_save(context_.get());
    trace(context_.get(), plate_);
    cairo_clip_preserve(context_.get());  // so that the half of the line outside the plate is left out
    const Held<cairo_pattern_t> edge(
        cairo_pattern_create_linear(0, 0, artwork_.blank.width_mm, artwork_.blank.height_mm));
    add_stop(edge.get(), 0.0, 1.00, 1.00, 1.00, 0.95);
    add_stop(edge.get(), 0.45, 0.86, 0.88, 0.87, 0.95);
    add_stop(edge.get(), 1.0, 0.66, 0.70, 0.69, 0.95);
    cairo_set_source(context_.get(), edge.get());
    cairo_set_line_width(context_.get(), 2 * line);
    cairo_stroke(context_.get());
    cairo_restore(context_.get());
}

bool Picture::room_for_fixings() const {
    const double reach = 1.5 * fixing_radius();
    for (const Layer& layer : artwork_.layers)
        for (const Piece& piece : layer.pieces) {
            const Box box = bounds(piece.path);
            for (const Point at : fixings())
                if (at.x + reach > box.left && at.x - reach < box.right && at.y + reach > box.top &&
                    at.y - reach < box.bottom)
                    return false;
        }
    return true;
}

void Picture::paint_fixings() {
    for (const Point at : fixings()) paint_head(at, fixing_radius());
}

// In each hole that is small and round.
void Picture::paint_screws() {
    const double widest = widest_hanging_hole * std::min(artwork_.blank.width_mm, artwork_.blank.height_mm);
    for (const Contour& contour : plate_.contours) {
        const double area = -signed_area(contour);
        if (!(area > 0)) continue;
        const Box box = bounds(Path{{contour}});
        const bool small = box.width() <= widest && box.height() <= widest;
        const bool round = area >= 0.74 * box.width() * box.height() &&  // a circle: 0.785
                           box.width() <= 1.2 * box.height() && box.height() <= 1.2 * box.width();
        if (small && round) paint_head(box.centre(), 0.36 * std::min(box.width(), box.height()));
    }
}

void Picture::paint_head(Point at, double radius) {
    const auto disc = [&](Point centre, double r) {
        cairo_new_path(context_.get());
        cairo_arc(context_.get(), centre.x, centre.y, r, 0, 6.283185307179586);
    };
    for (int i = 0; i < 6; ++i) {
        disc({at.x + 0.18 * radius, at.y + 0.28 * radius}, radius * (1.30 - 0.08 * i));
        cairo_set_source_rgba(context_.get(), 0.20, 0.17, 0.14, 0.05);
        cairo_fill(context_.get());
    }
    disc(at, radius);
    const Held<cairo_pattern_t> metal(
        cairo_pattern_create_linear(at.x - radius, at.y - radius, at.x + radius, at.y + radius));
    add_stop(metal.get(), 0.0, 0.93, 0.93, 0.92);
    add_stop(metal.get(), 0.5, 0.78, 0.78, 0.77);
    add_stop(metal.get(), 1.0, 0.60, 0.60, 0.59);
    cairo_set_source(context_.get(), metal.get());
    cairo_fill(context_.get());
    disc(at, 0.80 * radius);
    cairo_set_source_rgba(context_.get(), 1, 1, 1, 0.28);
    cairo_fill(context_.get());
}

std::string Picture::png() const {
    std::string bytes;
    const auto append = [](void* to, const unsigned char* data, unsigned size) {
        try {
            static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(data), size);
        } catch (...) {  // Cairo is C: nothing may fly through it
            return CAIRO_STATUS_NO_MEMORY;
        }
        return CAIRO_STATUS_SUCCESS;
    };
    cairo_surface_flush(surface_.get());
    if (cairo_status(context_.get()) != CAIRO_STATUS_SUCCESS ||
        cairo_surface_write_to_png_stream(surface_.get(), append, &bytes) != CAIRO_STATUS_SUCCESS)
        throw std::bad_alloc();
    return bytes;
}

}  // namespace

std::string plate_png(const Artwork& artwork, Path edge, int long_side_px) {
    if (long_side_px < least_preview_px || long_side_px > most_preview_px)
        throw std::invalid_argument("a preview's longer side measures " + std::to_string(least_preview_px) +
                                    " to " + std::to_string(most_preview_px) + " pixels");
    return Picture(artwork, std::move(edge), long_side_px).painted();
}

std::string preview_png(const Artwork& artwork, int long_side_px) {
    return plate_png(artwork, artwork.blank.outline, long_side_px);
}

}  // namespace lode
