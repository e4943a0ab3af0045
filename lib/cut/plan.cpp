#include <letterlode/plan.hpp>

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "art/number.hpp"
#include "cut/pack_films.hpp"
#include "cut/plan.hpp"
#include "cut/split.hpp"

namespace lode {

namespace {

using packing::Length;
using packing::Size;

// Micrometres. A thousandth of one is forgiven: 304.8 mm is no whole number of anything in binary.
constexpr double forgiven = 1e-3;
Length up(double mm) {
    return static_cast<Length>(std::ceil(mm * 1'000 - forgiven));
}
Length down(double mm) {
    return static_cast<Length>(std::floor(mm * 1'000 + forgiven));
}
double in_mm(Length length) {
    return static_cast<double>(length) / 1'000;
}

std::string size_text(double width_mm, double height_mm) {
    return decimal(width_mm, 1) + " x " + decimal(height_mm, 1) + " mm (" + decimal(width_mm / 25.4, 2) +
           " x " + decimal(height_mm / 25.4, 2) + " in)";
}

Refusal refusal(Refusal::Reason reason, std::string message, std::vector<std::string> advice = {}) {
    Refusal result;
    result.reason = reason;
    result.message = std::move(message);
    result.advice = std::move(advice);
    return result;
}
Refusal unusable(std::string message, std::vector<std::string> advice = {}) {
    return refusal(Refusal::Reason::unusable, std::move(message), std::move(advice));
}

// Film that comes from a roll, and colours without stock, are as good as endless.
constexpr double endless_mm = 10 * most_bed_mm;

bool is_length(double mm) {
    return mm >= least_bed_mm && mm <= most_bed_mm;
}

}  // namespace

std::optional<Refusal> fault_in(const PlanOptions& options) {
    const Bed& bed = options.bed;
    const std::string bounds_text = " mm; it must be " + decimal(least_bed_mm, 0) + " to " +
                                    decimal(most_bed_mm, 0) + " mm (" + decimal(least_bed_mm / 25.4, 2) +
                                    " to " + decimal(most_bed_mm / 25.4, 0) + " in)";
    const auto shown = [](double mm) {
        return std::isfinite(mm) ? decimal(mm, 1) : std::string("no number of");
    };
    if (!is_length(bed.width_mm))
        return unusable("the bed's width is " + shown(bed.width_mm) + bounds_text,
                        {"Give the bed as width x height, in mm or in."});
    if (bed.height_mm != 0 && !is_length(bed.height_mm))
        return unusable("the bed's height is " + shown(bed.height_mm) + bounds_text,
                        {"Give the bed as width x height; a height of 0 stands for a roll."});
    if (bed.height_mm == 0 && !is_length(bed.longest_mm))
        return unusable("the longest load on a roll is " + shown(bed.longest_mm) + bounds_text);
    const double shorter = std::min(bed.width_mm, bed.height_mm == 0 ? bed.longest_mm : bed.height_mm);
    if (!(bed.edge_mm >= 0) || !(2 * bed.edge_mm < shorter))
        return unusable("the edge of " + shown(bed.edge_mm) +
                            " mm on every side leaves nothing of a bed of " +
                            size_text(bed.width_mm, bed.height_mm == 0 ? bed.longest_mm : bed.height_mm),
                        {"Give the width of the strip that the cutter does not reach: often 3 to 10 mm."});
    if (!(options.gap_mm >= 0 && options.gap_mm <= most_bed_mm))
        return unusable("the gap between pieces is " + shown(options.gap_mm) +
                        " mm, less than none or too much");
    if (!(options.film_margin_mm >= 0 && options.film_margin_mm <= most_bed_mm))
        return unusable("the margin of film is " + shown(options.film_margin_mm) +
                        " mm, less than none or too much");
    for (const FilmStock& film : options.films) {
        if (!(film.width_mm > 0 && film.width_mm <= endless_mm) ||
            !(film.height_mm >= 0 && film.height_mm <= endless_mm))
            return unusable("film of colour " + to_text(film.colour) + " is " + shown(film.width_mm) + " x " +
                                shown(film.height_mm) + " mm, which is no size",
                            {"Give its width and height; a height of 0 stands for a roll."});
        if (film.count < 0)
            return unusable("there are " + std::to_string(film.count) + " sheets of film of colour " +
                            to_text(film.colour));
    }
    return std::nullopt;
}

namespace {

std::optional<Refusal> fault_in(const ToCut& piece) {
    constexpr double farthest = 1e6;
    for (const Contour& contour : piece.path.contours)
        for (const Segment& s : contour.segments)
            for (const Point& p :
                 {contour.start, s.to, s.curved ? s.control1 : s.to, s.curved ? s.control2 : s.to})
                if (!(std::fabs(p.x) <= farthest && std::fabs(p.y) <= farthest))
                    return unusable("piece \"" + piece.name + "\" has a point that lies nowhere near a bed");
    const bool drawn = std::any_of(piece.path.contours.begin(), piece.path.contours.end(),
                                   [](const Contour& contour) { return !contour.segments.empty(); });
    if (!drawn)
        return unusable("piece \"" + piece.name + "\" has no outline to cut", {"Leave it out of the plan."});
    return std::nullopt;
}

Path joined(const Path& one, const Path& other) {
    Path path = one;
    path.contours.insert(path.contours.end(), other.contours.begin(), other.contours.end());
    return path;
}

// One thing to be placed: a piece, or a part of one.
struct Unit {
    std::size_t piece = 0;
    std::optional<std::size_t> part;
    Path path;
};

Size size_of(const Path& path) {
    const Box box = bounds(path);
    return {std::max<Length>(1, up(box.width())), std::max<Length>(1, up(box.height()))};
}

std::vector<packing::Turn> turns_of(const Path& path, bool may_turn, bool upright) {
    const Size lying = size_of(path);
    std::vector<packing::Turn> turns{{lying, 0}};
    if (!may_turn) return turns;
    turns.push_back({{lying.height, lying.width}, 2});
    if (upright) return turns;
    const Size diagonal = size_of(turned(path, 1));
    // Only where it is smaller in some direction: else whatever holds it holds the upright piece.
    const auto covers = [&](const Size& a) {
        return a.width <= diagonal.width && a.height <= diagonal.height;
    };
    if (covers(turns[0].size) || covers(turns[1].size)) return turns;
    turns.push_back({diagonal, 1});
    turns.push_back({{diagonal.height, diagonal.width}, 3});
    return turns;
}

bool holds(Size outer, Size inner, Length margin) {
    return inner.width + 2 * margin <= outer.width && inner.height + 2 * margin <= outer.height;
}

class Making {
  public:
    Making(std::span<const ToCut> pieces, const PlanOptions& options, const CutControl& control)
        : pieces_(pieces),
          options_(options),
          control_(control),
          watch_(control, options.effort),
          steps_(options.effort, &watch_) {
        const Bed& bed = options.bed;
        const double height = bed.height_mm == 0 ? bed.longest_mm : bed.height_mm;
        rules_.roll = bed.height_mm == 0;
        rules_.bed = {down(bed.width_mm - 2 * bed.edge_mm), down(height - 2 * bed.edge_mm)};
        rules_.gap = up(options.gap_mm);
        rules_.margin = up(options.film_margin_mm);
    }

    Outcome<Plan> run() {
        if (pieces_.empty()) return Plan{{}, {}, 0, true, {}};
        list_colours();
        for (std::size_t i = 0; i < pieces_.size(); ++i) {
            if (control_.is_cancelled()) return interrupted();
            if (auto fault = add(i)) return *fault;
        }
        if (units_.size() > max_pieces_planned)
            return unusable("the pieces come to " + std::to_string(units_.size()) +
                            " when the large ones are split; at most " + std::to_string(max_pieces_planned) +
                            " are planned");
        if (auto fault = film_fault()) return *fault;
        const auto outcome = packing::plan_films(cuttings_, rules_, steps_);
        if (control_.is_cancelled()) return interrupted();
        if (!outcome.plan) return no_way_found(outcome.fault.colour);
        finish(*outcome.plan);
        return std::move(plan_);
    }

  private:
    static Refusal interrupted() {
        return refusal(Refusal::Reason::unfinished, "Planning was interrupted before its end.");
    }

    void list_colours() {
        for (const ToCut& piece : pieces_) {
            const auto at = std::find(colours_.begin(), colours_.end(), piece.colour);
            colour_of_.push_back(static_cast<std::size_t>(at - colours_.begin()));
            if (at == colours_.end()) colours_.push_back(piece.colour);
        }
        for (const Colour& colour : colours_) {
            std::optional<std::vector<packing::Sheet>> sheets;
            for (std::size_t f = 0; f < options_.films.size(); ++f) {
                const FilmStock& film = options_.films[f];
                if (film.colour != colour) continue;
                if (!sheets) sheets.emplace();
                const Size size{down(film.width_mm), down(film.height_mm == 0 ? endless_mm : film.height_mm)};
                // No more sheets than pieces are ever taken from.
                const int count = std::min(film.count, static_cast<int>(max_pieces_planned));
                for (int n = 0; n < count && sheets->size() < 2 * max_pieces_planned; ++n)
                    sheets->push_back({f, n, size});
            }
            // Small ones first, so that scraps are used up.
            if (sheets)
                std::stable_sort(sheets->begin(), sheets->end(),
                                 [](const auto& a, const auto& b) { return a.size.area() < b.size.area(); });
            rules_.sheets.push_back(std::move(sheets));
        }
    }

    [[nodiscard]] bool bed_holds(const packing::Turn& turn) const {
        return holds(rules_.bed, turn.size, rules_.margin);
    }
    [[nodiscard]] bool film_holds(const packing::Turn& turn, std::size_t colour) const {
        if (!rules_.sheets[colour]) return true;
        const Size& size = turn.size;
        return std::any_of(rules_.sheets[colour]->begin(), rules_.sheets[colour]->end(),
                           [&](const auto& sheet) {
                               return holds(sheet.size, size, rules_.margin) ||
                                      holds(sheet.size, {size.height, size.width}, rules_.margin);
                           });
    }

    std::optional<Refusal> add(std::size_t number) {
        const ToCut& piece = pieces_[number];
        const std::size_t colour = colour_of_[number];
        auto turns = turns_of(piece.path, options_.may_turn, piece.upright);
        const bool bed_is_enough =
            std::any_of(turns.begin(), turns.end(), [&](const auto& turn) { return bed_holds(turn); });
        std::erase_if(turns, [&](const auto& turn) { return !bed_holds(turn) || !film_holds(turn, colour); });
        if (!turns.empty()) {
            units_.push_back({number, std::nullopt, piece.path});
            cuttings_.push_back({colour, std::move(turns)});
            return std::nullopt;
        }
        auto parts = split(number, piece, part_sizes(colour));
        if (parts.empty()) return bed_is_enough ? no_film_for(number) : too_large(number);
        plan_.notes.push_back("\"" + piece.name + "\" is larger than " +
                              (bed_is_enough ? "the film of its colour" : "the bed") +
                              " and was split into " + std::to_string(parts.size()) +
                              " parts: lay them so that the diamonds along their edges are whole, then lift "
                              "the diamonds off.");
        for (SplitPart& part : parts) {
            Path path = joined(part.path, part.marks);
            auto of_part = turns_of(path, options_.may_turn, piece.upright);
            std::erase_if(of_part,
                          [&](const auto& turn) { return !bed_holds(turn) || !film_holds(turn, colour); });
            if (of_part.empty()) return bed_is_enough ? no_film_for(number) : too_large(number);
            units_.push_back({number, plan_.parts.size(), std::move(path)});
            cuttings_.push_back({colour, std::move(of_part)});
            plan_.parts.push_back(std::move(part));
        }
        return std::nullopt;
    }

    // How large a part may be, each way round.
    [[nodiscard]] std::vector<PartSize> part_sizes(std::size_t colour) const {
        std::vector<Size> sizes;
        const auto take = [&](Length width, Length height) {
            const Size size{std::min(width, rules_.bed.width) - 2 * rules_.margin,
                            std::min(height, rules_.bed.height) - 2 * rules_.margin};
            if (size.width > 0 && size.height > 0 &&
                std::find(sizes.begin(), sizes.end(), size) == sizes.end())
                sizes.push_back(size);
        };
        if (!rules_.sheets[colour]) {
            take(rules_.bed.width, rules_.bed.height);
        } else {
            for (const auto& sheet : *rules_.sheets[colour]) {
                take(sheet.size.width, sheet.size.height);
                take(sheet.size.height, sheet.size.width);
                constexpr std::size_t most_sizes = 16;
                if (sizes.size() > most_sizes) break;
            }
        }
        std::vector<PartSize> result;
        for (const Size& size : sizes) {
            result.push_back({in_mm(size.width), in_mm(size.height)});
            if (options_.may_turn && size.width != size.height)
                result.push_back({in_mm(size.height), in_mm(size.width)});
        }
        return result;
    }

    [[nodiscard]] std::string named(std::size_t number) const {
        const ToCut& piece = pieces_[number];
        const Box box = bounds(piece.path);
        return "piece \"" + piece.name + "\" of colour " + to_text(piece.colour) + " is " +
               size_text(box.width(), box.height());
    }

    [[nodiscard]] Refusal too_large(std::size_t number) const {
        const Length margins = 2 * rules_.margin;
        return refusal(
            Refusal::Reason::impossible,
            named(number) + ", more than the bed holds however it is turned: " +
                size_text(in_mm(rules_.bed.width - margins), in_mm(rules_.bed.height - margins)) +
                " within its edge and the margin of film; and there is no gap in it along which to split it",
            {"Make the artwork smaller.", "Give a larger bed, a smaller edge or a smaller margin of film.",
             "Break the piece into pieces that are cut apart."});
    }

    [[nodiscard]] std::string stock_text(std::size_t colour) const {
        std::string text;
        for (const FilmStock& film : options_.films) {
            if (film.colour != colours_[colour]) continue;
            if (!text.empty()) text += ", ";
            text += std::to_string(film.count) + " of ";
            text += film.height_mm == 0 ? "a roll " + decimal(film.width_mm, 1) + " mm (" +
                                              decimal(film.width_mm / 25.4, 2) + " in) wide"
                                        : size_text(film.width_mm, film.height_mm);
        }
        return text;
    }

    [[nodiscard]] Refusal no_film_for(std::size_t number) const {
        return refusal(Refusal::Reason::impossible,
                       named(number) + ", and no film of that colour holds it with " +
                           decimal(options_.film_margin_mm, 1) + " mm (" +
                           decimal(options_.film_margin_mm / 25.4, 2) +
                           " in) to spare on each side; there is " + stock_text(colour_of_[number]),
                       {"Give larger film of colour " + to_text(pieces_[number].colour) + ".",
                        "Cut it from another colour.", "Make the artwork smaller, or the margin of film."});
    }

    // Film that is less in area than its pieces.
    [[nodiscard]] std::optional<Refusal> film_fault() const {
        for (std::size_t colour = 0; colour < colours_.size(); ++colour) {
            if (!rules_.sheets[colour]) continue;
            double film = 0, needed = 0;  // mm2
            for (const auto& sheet : *rules_.sheets[colour])
                film += in_mm(sheet.size.width) * in_mm(sheet.size.height);
            for (const auto& cutting : cuttings_) {
                if (cutting.colour != colour) continue;
                double least = 1e300;
                for (const auto& turn : cutting.turns)
                    least = std::min(least, in_mm(turn.size.width) * in_mm(turn.size.height));
                needed += least;
            }
            // A millionth for the rounding of sums.
            if (needed <= film * 1.000001) continue;
            return refusal(Refusal::Reason::impossible,
                           "the pieces of colour " + to_text(colours_[colour]) + " need " +
                               decimal(needed / 100, 1) + " cm2 (" + decimal(needed / 645.16, 1) +
                               " square inches) of film by their boxes alone, and there are " +
                               decimal(film / 100, 1) + " cm2 (" + decimal(film / 645.16, 1) +
                               " square inches): " + stock_text(colour),
                           {"Give more film of colour " + to_text(colours_[colour]) + ".",
                            "Cut some of the pieces from another colour, or make the artwork smaller."});
        }
        return std::nullopt;
    }

    [[nodiscard]] Refusal no_way_found(std::size_t colour) const {
        return refusal(Refusal::Reason::unfinished,
                       "no way was found to take all pieces of colour " + to_text(colours_[colour]) +
                           " from the film that there is: " + stock_text(colour),
                       {"Give more film of colour " + to_text(colours_[colour]) + ".",
                        "Allow more effort, a smaller gap or a smaller margin of film."});
    }

    void finish(const packing::FilmPlan& found) {
        const double edge = options_.bed.edge_mm;
        plan_.loads.resize(found.loads);
        for (const packing::LaidFilm& film : found.films) {
            Load& load = plan_.loads[film.load];
            FilmRectangle rectangle;
            rectangle.colour = colours_[film.colour];
            rectangle.box = {edge + in_mm(film.left), edge + in_mm(film.top),
                             edge + in_mm(film.left + film.size.width),
                             edge + in_mm(film.top + film.size.height)};
            if (film.sheet) {
                rectangle.stock = film.sheet->stock;
                rectangle.sheet = film.sheet->number;
                rectangle.corner = {in_mm(film.sheet_left), in_mm(film.sheet_top)};
                rectangle.turned = film.turned;
            }
            load.films.push_back(rectangle);
            load.length_mm = std::max(load.length_mm, rectangle.box.bottom + edge);
            for (const packing::LaidPiece& piece : film.pieces) {
                const Unit& unit = units_[piece.piece];
                const int eighths = cuttings_[piece.piece].turns[piece.turn].eighths;
                const Box box = bounds(turned(unit.path, eighths));
                load.pieces.push_back(
                    {unit.piece,
                     unit.part,
                     eighths,
                     {edge + in_mm(piece.left) - box.left, edge + in_mm(piece.top) - box.top}});
            }
        }
        if (!rules_.roll)
            for (Load& load : plan_.loads) load.length_mm = options_.bed.height_mm;
        plan_.least_loads = found.least_loads;
        plan_.proved = found.loads == found.least_loads;
        if (plan_.proved) return;
        plan_.notes.push_back(std::to_string(found.loads) + " loads were found, and no plan has fewer than " +
                              std::to_string(found.least_loads) + "; whether " +
                              std::to_string(found.loads - 1) +
                              (found.loads == 2 ? " load does" : " loads do") + " is not known: " +
                              (cuttings_.size() > packing::most_exact_items
                                   ? "more than " + std::to_string(packing::most_exact_items) +
                                         " pieces are not searched to the end."
                               : found.searched_all ? "it would do with film of other sizes than there are."
                                                    : "the effort ran out before it was."));
    }

    std::span<const ToCut> pieces_;
    const PlanOptions& options_;
    const CutControl& control_;
    packing::Watch watch_;
    packing::Steps steps_;
    packing::Rules rules_;
    std::vector<Colour> colours_;
    std::vector<std::size_t> colour_of_;  // of each piece
    std::vector<Unit> units_;
    std::vector<packing::Cutting> cuttings_;  // of each unit
    Plan plan_;
};

}  // namespace

Path turned(const Path& path, int eighths) {
    static const double diagonal = std::sqrt(0.5);
    const double cosines[8] = {1, diagonal, 0, -diagonal, -1, -diagonal, 0, diagonal};
    const int turn = (eighths % 8 + 8) % 8;
    const double c = cosines[turn], s = cosines[(turn + 6) % 8];
    // With y down, this turns clockwise to the eye.
    const auto map = [c, s](Point p) { return Point{c * p.x - s * p.y, s * p.x + c * p.y}; };
    Path result;
    result.contours.reserve(path.contours.size());
    for (const Contour& contour : path.contours) {
        Contour moved{map(contour.start), {}};
        for (const Segment& segment : contour.segments)
            moved.segments.push_back(
                {segment.curved, map(segment.control1), map(segment.control2), map(segment.to)});
        result.contours.push_back(std::move(moved));
    }
    return result;
}

Path placed(std::span<const ToCut> pieces, const Plan& plan, const PlacedPiece& where) {
    if (where.piece >= pieces.size() || (where.part && *where.part >= plan.parts.size()))
        throw std::invalid_argument("a plan of other pieces");
    const Path path = where.part ? joined(plan.parts[*where.part].path, plan.parts[*where.part].marks)
                                 : pieces[where.piece].path;
    return transformed(turned(path, where.eighths), 1, where.shift);
}

Outcome<Plan> plan(std::span<const ToCut> pieces, const PlanOptions& options, const CutControl& control) {
    if (auto fault = fault_in(options)) return *fault;
    if (pieces.size() > max_pieces_planned)
        return unusable(std::to_string(pieces.size()) + " pieces; at most " +
                        std::to_string(max_pieces_planned) + " are planned");
    for (const ToCut& piece : pieces)
        if (auto fault = fault_in(piece)) return *fault;
    return Making(pieces, options, control).run();
}

}  // namespace lode
