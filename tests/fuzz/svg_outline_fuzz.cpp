// Fuzzing (libFuzzer) of drawings that strangers give for the outline of a blank. Whatever the bytes, there
// is a refusal that says where and why, or a blank that keeps what blank.hpp promises of it; and its outline,
// written as a drawing of ours, is read as a blank of the same size.

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <string_view>

#include <letterlode/blank.hpp>
#include <letterlode/drawing.hpp>

using namespace lode;

namespace {

void demand(bool holds, const char* what) {
    if (holds) return;
    std::fprintf(stderr, "%s\n", what);
    std::abort();
}

bool is_near(double one, double other, double by) {
    return std::abs(one - other) <= by;  // false of what is no number
}

void judge(const Blank& blank) {
    const auto& contours = blank.outline.contours;
    demand(!contours.empty(), "a blank without an outline");
    for (const Contour& contour : contours) {
        demand(!contour.segments.empty(), "a contour without segments");
        const double area = signed_area(contour);
        demand(&contour == &contours.front() ? area > 0 : area < 0, "not one outer contour, and holes");
        const Point end = contour.segments.back().to;
        demand(end == contour.start, "a contour that is not closed");
        for (const Segment& segment : contour.segments) {
            demand(std::isfinite(segment.to.x) && std::isfinite(segment.to.y), "a point that is nowhere");
            if (segment.curved)
                demand(std::isfinite(segment.control1.x) && std::isfinite(segment.control1.y) &&
                           std::isfinite(segment.control2.x) && std::isfinite(segment.control2.y),
                       "a control that is nowhere");
        }
    }
    const Box box = bounds(blank.outline);
    demand(is_near(box.left, 0, 1e-6) && is_near(box.top, 0, 1e-6), "an outline that does not begin at 0,0");
    demand(is_near(box.width(), blank.width_mm, 1e-6) && is_near(box.height(), blank.height_mm, 1e-6),
           "a size that is not the outline's");
    for (const double side : {blank.width_mm, blank.height_mm})
        demand(side >= least_blank_mm && side <= most_blank_mm, "a size that no blank has");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto blank = svg_outline({reinterpret_cast<const char*>(data), size}, "sign.svg");
    if (!blank) {
        const Refusal& refusal = blank.refusal();
        demand(refusal.reason == Refusal::Reason::unusable && refusal.source == "sign.svg",
               "a refusal of something else");
        demand(refusal.line >= 1 && refusal.message.starts_with("sign.svg, line "),
               "a refusal that does not say where");
        return 0;
    }
    judge(*blank);
    Drawing drawing{
        blank->width_mm, blank->height_mm, "sign", "", {{"sign", {}, {{"sign", blank->outline}}, {}}}};
    // Rounded, an outline may touch itself or be too small.
    if (const auto again = svg_outline(to_svg(drawing), "again.svg"))
        demand(is_near(again->width_mm, blank->width_mm, 0.01) &&
                   is_near(again->height_mm, blank->height_mm, 0.01),
               "a drawing of another size");
    return 0;
}
