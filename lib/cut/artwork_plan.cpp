// From an artwork to what lies in each load.

#include <algorithm>

#include <letterlode/cut.hpp>

#include "cut/weeding.hpp"
#include "cut/witness.hpp"

namespace lode {

namespace {

Path as_cut(const Artwork& artwork, const Path& path) {
    return artwork.surface == Surface::second ? mirrored(path, artwork.blank.width_mm) : path;
}

Refusal interrupted() {
    return {Refusal::Reason::unfinished, "Planning was interrupted before its end.", {}, {}, {}, 0};
}

enum class WithMarks : bool { no, yes };

// A layer as one piece, with its registration marks.
ToCut whole(const Artwork& artwork, const Layer& layer, WithMarks marks) {
    ToCut all{layer.name, layer.name, layer.colour, {}, true};
    const auto add = [&](const std::vector<Piece>& pieces) {
        for (const Piece& piece : pieces) {
            const Path path = as_cut(artwork, piece.path);
            all.path.contours.insert(all.path.contours.end(), path.contours.begin(), path.contours.end());
        }
    };
    add(layer.pieces);
    if (marks == WithMarks::yes) add(artwork.registration);
    return all;
}

std::vector<ToCut> to_cut(const Artwork& artwork, bool loose, WithMarks marks) {
    std::vector<ToCut> pieces;
    for (const Layer& layer : artwork.layers) {
        if (layer.carried_whole || !loose) {
            pieces.push_back(whole(artwork, layer, marks));
            continue;
        }
        for (const Piece& piece : layer.pieces)
            pieces.push_back({piece.name, layer.name, layer.colour, as_cut(artwork, piece.path)});
    }
    return pieces;
}

bool has_loose_pieces(const Artwork& artwork) {
    return std::any_of(artwork.layers.begin(), artwork.layers.end(),
                       [](const Layer& layer) { return !layer.carried_whole && layer.pieces.size() > 1; });
}

std::vector<Path> lying_in(const CutPlan& plan, const Load& load) {
    std::vector<Path> paths;
    for (const PlacedPiece& where : load.pieces) paths.push_back(placed(plan.pieces, plan.plan, where));
    return paths;
}

DrawnGroup& group_of(Drawing& drawing, const std::string& name, Colour colour) {
    for (DrawnGroup& group : drawing.groups)
        if (group.name == name) return group;
    return drawing.groups.emplace_back(DrawnGroup{name, colour, {}, {}});
}

// About what lies on each film. By contours: a layer that is carried whole is one piece of many letters.
void add_weeding_lines(Drawing& drawing, const Load& load) {
    constexpr double frame_mm = 2;
    for (const FilmRectangle& film : load.films) {
        std::vector<Piece> lying;
        DrawnGroup* first = nullptr;
        for (DrawnGroup& group : drawing.groups)
            for (const Piece& piece : group.pieces) {
                const Point middle = bounds(piece.path).centre();
                if (middle.x < film.box.left || middle.x > film.box.right || middle.y < film.box.top ||
                    middle.y > film.box.bottom)
                    continue;
                if (!first) first = &group;
                for (const Contour& contour : piece.path.contours) lying.push_back({{}, {{contour}}});
            }
        if (!first) continue;
        const auto lines = weeding_lines(lying, frame_mm);
        first->lines.insert(first->lines.end(), lines.begin(), lines.end());
    }
}

// Without witnesses yet.
Outcome<CutPlan> pieces_planned(const Artwork& artwork, const PlanOptions& options,
                                const CutControl& control) {
    CutPlan result;
    WithMarks marks = WithMarks::yes;
    result.pieces = to_cut(artwork, false, marks);
    auto planned = plan(result.pieces, options, control);
    // WithMarks that stand on another part than the letters, or make the artwork too large, are of no use.
    if (!control.is_cancelled() && !artwork.registration.empty() && (!planned || !planned->parts.empty())) {
        marks = WithMarks::no;
        result.pieces = to_cut(artwork, false, marks);
        planned = plan(result.pieces, options, control);
        result.left_out_marks = true;
    }
    // Bands laid one by one would have no registration marks.
    const bool is_registered = marks == WithMarks::yes && !artwork.registration.empty();
    const bool could_be_fewer =
        !planned || (!is_registered && (planned->loads.size() > 1 || !planned->parts.empty()));
    if (!control.is_cancelled() && could_be_fewer && has_loose_pieces(artwork)) {
        std::vector<ToCut> loose = to_cut(artwork, true, marks);
        auto other = plan(loose, options, control);
        if (other && (!planned || other->loads.size() < planned->loads.size())) {
            result.pieces = std::move(loose);
            result.bands_are_loose = true;
            planned = std::move(other);
        } else if (!other) {
            planned = other.refusal();  // of the one piece that fits nowhere, and not of its whole layer
        }
    }
    if (!planned) return planned.refusal();
    result.plan = *std::move(planned);
    if (result.left_out_marks)
        result.plan.notes.push_back(
            "With registration marks the artwork is larger than the bed: loads are without them, layer files "
            "have them.");
    return result;
}

// A load's number, from 1, that has no room for its witness; 0 where all have.
std::size_t set_witnesses(CutPlan& result, const Bed& bed, Surface surface) {
    std::size_t full = 0;
    for (Load& load : result.plan.loads) {
        result.witnesses.push_back(placed_witness(load, lying_in(result, load), bed, surface));
        if (!result.witnesses.back() && full == 0) full = result.witnesses.size();
    }
    return full;
}

}  // namespace

Outcome<CutPlan> plan_loads(const Artwork& artwork, const PlanOptions& options, const CutControl& control) {
    auto result = pieces_planned(artwork, options, control);
    if (!result) return result;
    if (control.is_cancelled()) return interrupted();
    const std::size_t full = set_witnesses(*result, options.bed, artwork.surface);
    if (full == 0) return result;
    // A load that is filled to its edges: a strip is kept free along one.
    constexpr double strip_mm = 12;
    PlanOptions lower = options;
    if (options.bed.height_mm > least_bed_mm + strip_mm) {
        lower.bed.height_mm -= strip_mm;
        auto again = pieces_planned(artwork, lower, control);
        if (control.is_cancelled()) return interrupted();
        if (again && set_witnesses(*again, options.bed, artwork.surface) == 0) return again;
    }
    result->plan.notes.push_back("Load " + std::to_string(full) +
                                 " is too full for a witness: look at its drawing before it is cut.");
    return result;
}

Drawing load_drawing(const Artwork& artwork, const CutPlan& plan, const PlanOptions& options,
                     std::size_t number, bool with_weeding_lines) {
    const Load& load = plan.plan.loads.at(number);
    const std::string place = std::to_string(number + 1) + " of " + std::to_string(plan.plan.loads.size());
    Drawing drawing{
        options.bed.width_mm,
        options.bed.height_mm > 0 ? options.bed.height_mm : load.length_mm,
        "Load " + place,
        "True size: " +
            both_units(BlankSize{options.bed.width_mm,
                                 options.bed.height_mm > 0 ? options.bed.height_mm : load.length_mm}) +
            (artwork.surface == Surface::second
                 ? ". For the second surface: already mirrored: do not mirror again."
                 : ". For the first surface: not mirrored."),
        {}};
    for (const PlacedPiece& where : load.pieces) {
        const ToCut& piece = plan.pieces[where.piece];
        Piece lying{where.part ? plan.plan.parts[*where.part].name : piece.name,
                    placed(plan.pieces, plan.plan, where)};
        group_of(drawing, piece.layer, piece.colour).pieces.push_back(std::move(lying));
    }
    if (const auto& witness = plan.witnesses[number])
        group_of(drawing, "witness", witness->colour)
            .pieces.push_back({"witness: reads right from the side that is seen", witness->path});
    if (with_weeding_lines) add_weeding_lines(drawing, load);
    return drawing;
}

}  // namespace lode
