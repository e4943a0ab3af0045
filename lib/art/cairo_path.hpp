#pragma once
// A path as Cairo takes it.

#include <cairo.h>

#include <letterlode/path.hpp>

namespace lode {

// Becomes the context's current path, its contours closed.
inline void trace(cairo_t* context, const Path& path) {
    cairo_new_path(context);
    for (const Contour& contour : path.contours) {
        cairo_move_to(context, contour.start.x, contour.start.y);
        for (const Segment& s : contour.segments)
            if (s.curved)
                cairo_curve_to(context, s.control1.x, s.control1.y, s.control2.x, s.control2.y, s.to.x,
                               s.to.y);
            else
                cairo_line_to(context, s.to.x, s.to.y);
        cairo_close_path(context);
    }
}

}  // namespace lode
