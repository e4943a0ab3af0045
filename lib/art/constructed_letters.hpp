#pragma once
// The constructed alphabet's letters as skeletons, and the measures that they share. Lengths are in cap
// heights, x from the letter's left side, y up from the baseline.
//
// No letter names a width alone: each says what it is by eye, and what it must be at least so that its
// strokes and its counters find room. Three strokes and two counters, one above the other, set the limit (E,
// B, S, 8).

#include <string_view>
#include <vector>

#include "art/skeleton.hpp"

namespace lode {

struct LetterMeasures {
    double stroke;
    double half;  // of the stroke
    double gap;   // the least
    double x_height;
    double ascender;
    double descender;  // how far below the baseline
    double overshoot;  // of rounds beyond cap height and baseline

    LetterMeasures(double stroke_width, double least_gap);

    // A width by eye for a middling stroke, grown with the stroke, and the least width it must have.
    [[nodiscard]] double width(double by_eye, double at_least = 0) const;
    // The skeleton's height where it runs along the cap height or the baseline.
    [[nodiscard]] double top() const { return 1 - half; }
    [[nodiscard]] double round_top() const { return 1 - half + overshoot; }
    [[nodiscard]] double bottom() const { return half; }
    [[nodiscard]] double round_bottom() const { return half - overshoot; }
    // A third of the height below the top, or above the bottom, at which a stroke has room and no more.
    [[nodiscard]] double highest_bar() const { return 1 - 1.5 * stroke - gap; }
    [[nodiscard]] double lowest_bar() const { return 1.5 * stroke + gap; }
};

struct LetterShape {
    std::string_view letter;  // UTF-8, one character
    Skeleton (*draw)(const LetterMeasures&);
};

[[nodiscard]] const std::vector<LetterShape>& capital_shapes();
[[nodiscard]] const std::vector<LetterShape>& small_shapes();
[[nodiscard]] const std::vector<LetterShape>& figure_shapes();
[[nodiscard]] const std::vector<LetterShape>& sign_shapes();
[[nodiscard]] const std::vector<LetterShape>& other_letter_shapes();  // Æ, ß, Þ and their like

// How far a skeleton's sharp corner stays inside the line that cuts its point off.
inline constexpr double inset = 0.015;

[[nodiscard]] Chain stem(double x, double low = 0, double high = 1);
[[nodiscard]] Chain bar(double y, double left, double right);

// Two legs with a flat apex between them, as wide as their edges leave it.
struct Legs {
    double width;
    double offset;  // of the skeleton at the foot
    double run;     // of a leg, over a rise of 1
};
[[nodiscard]] Legs legs(const LetterMeasures& m, double width, double height);

// What capitals and small letters share: C, S, V, W, X and Z of any width and height.
[[nodiscard]] Chain open_oval(const LetterMeasures& m, double width, double height);
[[nodiscard]] Chain ess(const LetterMeasures& m, double width, double height);
[[nodiscard]] Chain vee(const LetterMeasures& m, double width, double height);
// Wider where its hollows need it.
[[nodiscard]] Chain double_vee(const LetterMeasures& m, double width, double height);
[[nodiscard]] std::vector<Chain> crossed(const LetterMeasures& m, double width, double height);
[[nodiscard]] Chain zed(const LetterMeasures& m, double width, double height);

[[nodiscard]] Skeleton moved(Skeleton skeleton, double right, double up);

// The height nearest to `wanted`, on the way to `limit`, at which a stroke may start, or end, so that its
// corners keep the least gap to other strokes. The limit where there is none.
[[nodiscard]] double start_height(const LetterMeasures& m, const Pen& stroke, double wanted, double limit,
                                  const std::vector<Chain>& others);
[[nodiscard]] double end_height(const LetterMeasures& m, const Pen& stroke, double wanted, double limit,
                                const std::vector<Chain>& others);

// How far beside its middle a slanting stroke ends where it is cut level, for a run to the side over a rise
// of 1.
[[nodiscard]] double slant_offset(const LetterMeasures& m, double run);

}  // namespace lode
