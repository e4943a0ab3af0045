// In which order the layers go on: the growing piece, as the maker sees it.

#include <algorithm>

#include "cut/job_sheet_page.hpp"

namespace lode {

namespace {

constexpr double gap = 4;
constexpr double least_cell = 27;  // narrower, a caption is hard to read
// Beyond so many steps only the first ones and the last are pictured.
constexpr std::size_t most_pictured = 24;
// A layer with more outlines than that in all pictures is drawn by the boxes of its pieces.
constexpr std::size_t most_outlines = 60'000;

struct Step {
    std::size_t layers = 0;  // that lie on the blank by then
    bool from_front = false;
    std::vector<std::string> caption;
};

std::string caption_of(const LayerMeasures& layer) {
    return std::to_string(layer.pieces) + (layer.pieces == 1 ? " piece, " : " pieces, ") +
           std::to_string(layer.counters) + (layer.counters == 1 ? " counter" : " counters");
}

std::vector<Step> steps_of(const JobSheet& sheet) {
    const std::size_t count = sheet.artwork.layers.size();
    std::vector<Step> steps;
    for (std::size_t i = 0; i < count; ++i) {
        if (count > most_pictured && i + 1 >= most_pictured && i + 1 < count) continue;
        Step step{i + 1, false, {std::to_string(i + 1) + "-" + sheet.artwork.layers[i].name}};
        if (i < sheet.measures.layers.size()) step.caption.push_back(caption_of(sheet.measures.layers[i]));
        steps.push_back(std::move(step));
    }
    if (sheet.artwork.surface == Surface::second && count > 0)
        steps.push_back({count, true, {"Done", "seen from the front"}});
    return steps;
}

class StepPicture {
  public:
    StepPicture(SheetPages& pages, const Artwork& artwork, double scale, std::size_t pictures)
        : pages_(pages), artwork_(artwork), scale_(scale), pictures_(pictures) {}

    void draw(const Step& step, Point corner) const {
        PdfDocument& document = pages_.document();
        const double width = artwork_.blank.width_mm;
        const bool mirror = artwork_.surface == Surface::second && !step.from_front;
        const auto kept = document.place({corner.x + (mirror ? width * scale_ : 0), corner.y},
                                         mirror ? -scale_ : scale_, scale_);
        document.fill(artwork_.blank.outline, ground);
        // What was laid first lies lowest where the maker works, and nearest to who looks from the other
        // side.
        for (std::size_t i = 0; i < step.layers; ++i)
            draw_layer(artwork_.layers[step.from_front ? step.layers - 1 - i : i]);
        document.stroke(artwork_.blank.outline, {0.2 / scale_, quiet, {}});
        for (const HangingHole& hole : artwork_.holes)
            document.stroke(capsule(hole.centre, hole.centre, hole.diameter_mm / 2),
                            {0.2 / scale_, quiet, {}});
    }

  private:
    void draw_layer(const Layer& layer) const {
        const bool outlines = layer.pieces.size() * pictures_ <= most_outlines;
        for (const Piece& piece : layer.pieces) {
            if (piece.path.empty()) continue;
            if (!outlines) {
                pages_.document().fill(bounds(piece.path), layer.colour, 0.5);
                continue;
            }
            pages_.document().fill(piece.path, layer.colour);
            if (is_pale(layer.colour)) pages_.document().stroke(piece.path, {0.06 / scale_, quiet, {}});
        }
    }

    SheetPages& pages_;
    const Artwork& artwork_;
    double scale_;
    std::size_t pictures_;
};

}  // namespace

void set_order(SheetPages& pages, const JobSheet& sheet) {
    const Artwork& artwork = sheet.artwork;
    const std::vector<Step> steps = steps_of(sheet);
    if (steps.empty()) return;
    const bool second = artwork.surface == Surface::second;
    const auto columns = static_cast<double>(std::clamp<std::size_t>(steps.size(), 4, 6));
    const double most_width = (pages.width() - (columns - 1) * gap) / columns;
    const double scale =
        std::min(pages.look().step_height / artwork.blank.height_mm, most_width / artwork.blank.width_mm);
    const double picture_width = artwork.blank.width_mm * scale;
    const double picture_height = artwork.blank.height_mm * scale;
    const double cell = std::max(picture_width, least_cell);
    const auto a_row = static_cast<std::size_t>((pages.width() + gap) / (cell + gap) + 1e-6);
    const double pitch = PdfDocument::line_pitch(pages.small());
    const double cell_height = picture_height + 1.5 + PdfDocument::line_pitch(pages.bold()) + pitch + 2;

    const StepPicture picture(pages, artwork, scale, steps.size());

    std::string explanation = second ? "You work from the back: what the viewer sees in front goes on first."
                                     : "You work from the front: what lies behind goes on first.";
    explanation += " Numbers are those of the layer files; counters are to be weeded.";
    if (artwork.layers.size() > most_pictured)
        explanation += " The steps between " + std::to_string(most_pictured - 1) + " and " +
                       std::to_string(artwork.layers.size()) + " go on likewise.";
    pages.section(
        second ? "Order of application, seen from the back" : "Order of application, seen from the front",
        explanation, cell_height);
    for (std::size_t first = 0; first < steps.size(); first += a_row) {
        pages.need(cell_height);
        for (std::size_t i = first; i < std::min(first + a_row, steps.size()); ++i) {
            const Step& step = steps[i];
            const double x = pages.left() + static_cast<double>(i - first) * (cell + gap);
            if (pages.drawing()) picture.draw(step, {x, pages.y});
            double below = pages.y + picture_height + 1.5;
            double indent = 0;
            if (!step.from_front) {
                const double side = 0.8 * pages.look().body_pt / points_a_mm;
                indent = side + 1.2;
                set_swatch(pages, {x, below + 0.2 * side}, side, artwork.layers[step.layers - 1].colour);
            }
            below += pages.paragraph(step.caption[0], {x + indent, below}, cell - indent, pages.bold(), 1);
            if (step.caption.size() > 1) pages.paragraph(step.caption[1], {x, below}, cell, pages.small(), 1);
        }
        pages.y += cell_height;
    }
}

}  // namespace lode
