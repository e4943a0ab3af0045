// A picture of the finished piece: a clear plate that stands off a plain wall, lit from the upper left.

#include <cairo.h>

#include <algorithm>
#include <array>
#include <memory>
#include <new>
#include <stdexcept>

#include <letterlode/art.hpp>

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
constexpr double corner_share = 0.018;  // the plate's rounded corners
constexpr double shadow_share = 0.030;  // how far its shadow fades out
constexpr double fixing_radius_share = 0.013;

class Picture {
  public:
    Picture(const Artwork& artwork, int long_side_px) : artwork_(artwork) {
        const double longer = std::max(artwork.blank.width_mm, artwork.blank.height_mm);
        longer_ = longer;
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
        paint_plate();
        if (room_for_fixings()) paint_fixings();
        paint_film();
        paint_rim();
        return png();
    }

  private:
    void paint_wall();
    void paint_shadow();
    void paint_plate();
    void paint_film();
    void paint_rim();
    void paint_fixings();
    [[nodiscard]] bool room_for_fixings() const;
    [[nodiscard]] std::string png() const;

    void trace(const Path& path);
    void trace_rounded(double left, double top, double right, double bottom, double radius);
    void trace_plate(double grown) {
        trace_rounded(-grown, -grown, artwork_.blank.width_mm + grown, artwork_.blank.height_mm + grown,
                      std::max(0.0, corner() + grown));
    }
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

// Many faint plates, each a little larger, add up to a soft edge.
void Picture::paint_shadow() {
    constexpr int rings = 24;
    const double fade = shadow_share * longer_;
    cairo_save(context_.get());
    cairo_translate(context_.get(), 0.45 * fade, 0.7 * fade);
    for (int i = 0; i < rings; ++i) {
        const double out = fade * (1 - 2.0 * i / (rings - 1));
        trace_plate(out);
        cairo_set_source_rgba(context_.get(), 0.20, 0.17, 0.14, 0.0165);
        cairo_fill(context_.get());
    }
    cairo_restore(context_.get());
}

void Picture::paint_plate() {
    trace_plate(0);
    const Held<cairo_pattern_t> sheen(
        cairo_pattern_create_linear(0, 0, artwork_.blank.width_mm, artwork_.blank.height_mm));
    add_stop(sheen.get(), 0.0, 0.995, 0.995, 0.990, 0.94);
    add_stop(sheen.get(), 1.0, 0.970, 0.968, 0.958, 0.94);
    cairo_set_source(context_.get(), sheen.get());
    cairo_fill(context_.get());
}

void Picture::paint_layer(const Layer& layer) {
    cairo_set_source_rgb(context_.get(), layer.colour.red / 255.0, layer.colour.green / 255.0,
                         layer.colour.blue / 255.0);
    for (const Piece& piece : layer.pieces) {
        trace(piece.path);
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
    trace_plate(-line / 2);
    const Held<cairo_pattern_t> edge(
        cairo_pattern_create_linear(0, 0, artwork_.blank.width_mm, artwork_.blank.height_mm));
    add_stop(edge.get(), 0.0, 1.00, 1.00, 1.00, 0.95);
    add_stop(edge.get(), 0.45, 0.86, 0.88, 0.87, 0.95);
    add_stop(edge.get(), 1.0, 0.66, 0.70, 0.69, 0.95);
    cairo_set_source(context_.get(), edge.get());
    cairo_set_line_width(context_.get(), line);
    cairo_stroke(context_.get());
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
    const double radius = fixing_radius();
    const auto disc = [&](Point at, double r) {
        cairo_new_path(context_.get());
        cairo_arc(context_.get(), at.x, at.y, r, 0, 6.283185307179586);
    };
    for (const Point at : fixings()) {
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
}

void Picture::trace(const Path& path) {
    cairo_new_path(context_.get());
    for (const Contour& contour : path.contours) {
        cairo_move_to(context_.get(), contour.start.x, contour.start.y);
        for (const Segment& s : contour.segments)
            if (s.curved)
                cairo_curve_to(context_.get(), s.control1.x, s.control1.y, s.control2.x, s.control2.y, s.to.x,
                               s.to.y);
            else
                cairo_line_to(context_.get(), s.to.x, s.to.y);
        cairo_close_path(context_.get());
    }
}

void Picture::trace_rounded(double left, double top, double right, double bottom, double radius) {
    const double r = std::min({radius, (right - left) / 2, (bottom - top) / 2});
    cairo_new_path(context_.get());
    if (!(r > 0)) {
        cairo_rectangle(context_.get(), left, top, right - left, bottom - top);
        return;
    }
    constexpr double quarter = 1.5707963267948966;
    cairo_arc(context_.get(), right - r, top + r, r, -quarter, 0);
    cairo_arc(context_.get(), right - r, bottom - r, r, 0, quarter);
    cairo_arc(context_.get(), left + r, bottom - r, r, quarter, 2 * quarter);
    cairo_arc(context_.get(), left + r, top + r, r, 2 * quarter, 3 * quarter);
    cairo_close_path(context_.get());
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

std::string preview_png(const Artwork& artwork, int long_side_px) {
    if (long_side_px < least_preview_px || long_side_px > most_preview_px)
        throw std::invalid_argument("a preview's longer side measures " + std::to_string(least_preview_px) +
                                    " to " + std::to_string(most_preview_px) + " pixels");
    return Picture(artwork, long_side_px).painted();
}

}  // namespace lode
