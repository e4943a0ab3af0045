#include "art/constructed_typeface.hpp"

#include <unicode/brkiter.h>
#include <unicode/normalizer2.h>
#include <unicode/uchar.h>
#include <unicode/unistr.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>
#include <new>
#include <stdexcept>

#include "art/constructed_marks.hpp"

namespace lode {

namespace {

// The heights at which the sides of letters are looked at: from two cap heights above the baseline down.
constexpr double profile_top = -2;
constexpr double profile_step = 0.04;
constexpr int profile_rows = 65;
constexpr double nothing = 100;  // stands back beyond anything
// The rows from the cap height to the baseline, where evenness is judged.
constexpr int first_row = 25;
constexpr int last_row = 49;

// By eye, in cap heights: the mean room between two letters, how deep a hollow still counts, a blank, and how
// near two letters may come.
constexpr double mean_room = 0.25;
constexpr double deepest = 0.36;
constexpr double blank = 0.34;
constexpr double nearest_by_eye = 0.17;

icu::UnicodeString decomposed(std::string_view text) {
    UErrorCode status = U_ZERO_ERROR;
    const icu::Normalizer2* form = icu::Normalizer2::getNFDInstance(status);
    if (status == U_MEMORY_ALLOCATION_ERROR) throw std::bad_alloc();
    if (U_FAILURE(status)) throw std::runtime_error("ICU has no normalisation form D");
    const icu::UnicodeString given =
        icu::UnicodeString::fromUTF8({text.data(), static_cast<std::int32_t>(text.size())});
    icu::UnicodeString result = form->normalize(given, status);
    if (U_FAILURE(status) || result.isBogus()) throw std::bad_alloc();
    return result;
}

// A cluster as the shapes that make it: the letter, and its marks. No letter where there is none.
struct Composition {
    const LetterShape* letter = nullptr;
    std::vector<const MarkShape*> marks;
};

std::string utf8(UChar32 character) {
    std::string text;
    icu::UnicodeString(character).toUTF8String(text);
    return text;
}

const LetterShape* shape_of(const std::string& letter) {
    for (const auto* shapes :
         {&capital_shapes(), &small_shapes(), &figure_shapes(), &sign_shapes(), &other_letter_shapes()})
        for (const LetterShape& shape : *shapes)
            if (shape.letter == letter) return &shape;
    return nullptr;
}

bool is_invisible(UChar32 character) {
    return u_hasBinaryProperty(character, UCHAR_DEFAULT_IGNORABLE_CODE_POINT) != 0;
}

Composition composition_of(std::string_view cluster) {
    const icu::UnicodeString characters = decomposed(cluster);
    Composition result;
    std::string letter;
    for (int i = 0; i < characters.length(); i = characters.moveIndex32(i, 1)) {
        const UChar32 character = characters.char32At(i);
        if (is_invisible(character)) continue;
        if (letter.empty()) {
            letter = utf8(character);
            continue;
        }
        const MarkShape* mark = mark_shape(character);
        if (mark == nullptr) return {};
        result.marks.push_back(mark);
    }
    const bool loses_dot = std::any_of(result.marks.begin(), result.marks.end(),
                                       [](const MarkShape* m) { return m->place == MarkPlace::above; });
    if (loses_dot && letter == "i") letter = "ı";
    if (loses_dot && letter == "j") letter = "ȷ";
    result.letter = shape_of(letter);
    return result;
}

bool is_blank(std::string_view cluster) {
    const icu::UnicodeString characters =
        icu::UnicodeString::fromUTF8({cluster.data(), static_cast<std::int32_t>(cluster.size())});
    return u_isUWhiteSpace(characters.char32At(0)) != 0;
}

bool is_nothing(std::string_view cluster) {
    const icu::UnicodeString characters =
        icu::UnicodeString::fromUTF8({cluster.data(), static_cast<std::int32_t>(cluster.size())});
    for (int i = 0; i < characters.length(); i = characters.moveIndex32(i, 1))
        if (!is_invisible(characters.char32At(i))) return false;
    return true;
}

// The user-perceived letters of a text (UAX #29).
std::vector<std::string> clusters_of(std::string_view text) {
    UErrorCode status = U_ZERO_ERROR;
    const std::unique_ptr<icu::BreakIterator> breaks(
        icu::BreakIterator::createCharacterInstance(icu::Locale::getRoot(), status));
    if (status == U_MEMORY_ALLOCATION_ERROR) throw std::bad_alloc();
    if (U_FAILURE(status) || !breaks) throw std::runtime_error("ICU cannot take letters apart");
    const icu::UnicodeString characters =
        icu::UnicodeString::fromUTF8({text.data(), static_cast<std::int32_t>(text.size())});
    breaks->setText(characters);
    std::vector<std::string> clusters;
    std::int32_t start = breaks->first();
    for (std::int32_t end = breaks->next(); end != icu::BreakIterator::DONE;
         start = end, end = breaks->next())
        characters.tempSubStringBetween(start, end).toUTF8String(clusters.emplace_back());
    return clusters;
}

// Points along an outline, close enough for its profile.
template <class Visit>
void walk(const Path& path, Visit visit) {
    constexpr int steps = 24;
    for (const Contour& contour : path.contours) {
        Point from = contour.start;
        for (const Segment& s : contour.segments) {
            const Point c1 = s.curved ? s.control1 : from;
            const Point c2 = s.curved ? s.control2 : s.to;
            for (int i = 0; i < steps; ++i) {
                const double t = static_cast<double>(i) / steps;
                const double u = 1 - t;
                const double a = u * u * u;
                const double b = 3 * u * u * t;
                const double c = 3 * u * t * t;
                const double d = t * t * t;
                visit(Point{a * from.x + b * c1.x + c * c2.x + d * s.to.x,
                            a * from.y + b * c1.y + c * c2.y + d * s.to.y});
            }
            from = s.to;
        }
    }
}

}  // namespace

double largest_gap(double stroke) {
    if (!(stroke >= least_stroke && stroke <= most_stroke))
        throw std::invalid_argument("the stroke of the constructed alphabet is out of bounds");
    // A hair of the height is left for what is not level about the middle of an S.
    return std::min(most_least_gap, (0.96 - 3 * stroke) / 2);
}

ConstructedTypeface::ConstructedTypeface(ConstructedStyle style) : style_(style) {
    if (!(style.least_gap > 0 && style.least_gap <= largest_gap(style.stroke)))
        throw std::invalid_argument("the least gap of the constructed alphabet is out of bounds");
}

bool ConstructedTypeface::has(std::string_view letter) {
    return composition_of(letter).letter != nullptr;
}

std::vector<std::string> ConstructedTypeface::lacking(std::string_view text) {
    std::vector<std::string> lacking;
    for (std::string& cluster : clusters_of(text))
        if (!is_blank(cluster) && !is_nothing(cluster) && !has(cluster))
            lacking.push_back(std::move(cluster));
    return lacking;
}

const std::optional<ConstructedTypeface::Glyph>& ConstructedTypeface::glyph(const std::string& letter) {
    const auto known = glyphs_.find(letter);
    if (known != glyphs_.end()) return known->second;
    const Composition composition = composition_of(letter);
    std::optional<Glyph>& result = glyphs_[letter];
    if (composition.letter == nullptr) return result;

    const LetterMeasures measures(style_.stroke, style_.least_gap);
    const Path path = outline_with_marks(measures, *composition.letter, composition.marks);
    const Box box = bounds(path);
    result = Glyph{transformed(path, 1, {-box.left, 0}), box.width(),
                   std::vector<double>(profile_rows, nothing), std::vector<double>(profile_rows, nothing)};
    // A line is visited at its ends and between; the rows that it passes are all touched.
    Point last{};
    bool begun = false;
    walk(result->path, [&](Point p) {
        const auto row_of = [](double y) {
            return std::clamp(static_cast<int>((y - profile_top) / profile_step), 0, profile_rows - 1);
        };
        const auto touch = [&](int row, double x) {
            const auto at = static_cast<std::size_t>(row);
            result->left[at] = std::min(result->left[at], x);
            result->right[at] = std::min(result->right[at], box.width() - x);
        };
        touch(row_of(p.y), p.x);
        if (begun)
            for (int row = std::min(row_of(p.y), row_of(last.y)) + 1;
                 row < std::max(row_of(p.y), row_of(last.y)); ++row)
                touch(row, (p.x + last.x) / 2);
        last = p;
        begun = true;
    });
    return result;
}

// From the right side of one letter's box to the left side of the next one's.
double ConstructedTypeface::distance(const Glyph& before, const Glyph& after) const {
    // Nowhere nearer than the least gap, whatever the direction; nor so near that a P and a J are read as R
    // and I.
    const double clear = std::max(style_.least_gap, nearest_by_eye);
    double nearest = -nothing;
    for (int i = 0; i < profile_rows; ++i)
        for (int j = 0; j < profile_rows; ++j) {
            const double apart = std::max(0, std::abs(i - j) - 1) * profile_step;
            const double squared = clear * clear - apart * apart;
            if (squared <= 0) continue;
            nearest = std::max(nearest, std::sqrt(squared) - before.right[static_cast<std::size_t>(i)] -
                                            after.left[static_cast<std::size_t>(j)]);
        }
    // As much room on the mean of the heights that both have, hollows cut off.
    int first = last_row + 1;
    int last = first_row - 1;
    for (int i = first_row; i <= last_row; ++i) {
        const auto at = static_cast<std::size_t>(i);
        if (before.right[at] >= nothing || after.left[at] >= nothing) continue;
        first = std::min(first, i);
        last = std::max(last, i);
    }
    if (first > last) return std::max(nearest, clear);
    // Where only small letters meet, less will do.
    const double share = static_cast<double>(last - first + 1) / (last_row - first_row + 1);
    const double room = std::max(mean_room * (0.7 + 0.3 * share), style_.least_gap + 0.05);
    const auto roomy = [&](double d) {
        double sum = 0;
        for (int i = first; i <= last; ++i) {
            const auto at = static_cast<std::size_t>(i);
            sum += std::min(before.right[at] + after.left[at] + d, deepest);
        }
        return sum >= room * (last - first + 1);
    };
    return std::max(nearest, least(-1, 1, roomy));
}

Outcome<SetLine> ConstructedTypeface::set_line(std::string_view text) {
    SetLine line;
    double pen = 0;
    std::string before;
    int blanks = 0;
    for (const std::string& cluster : clusters_of(text)) {
        if (is_blank(cluster)) {
            ++blanks;
            continue;
        }
        if (is_nothing(cluster)) continue;
        if (!glyph(cluster)) {
            line.missing.push_back(cluster);
            continue;
        }
        const Glyph& next = *glyph(cluster);
        if (before.empty() || blanks > 0)
            pen += blanks * blank + (before.empty() ? 0 : style_.least_gap);
        else
            pen += distance(*glyph(before), next);
        line.letters.push_back({cluster, transformed(next.path, 1, {pen, 0})});
        pen += next.width;
        before = cluster;
        blanks = 0;
    }
    return line;
}

}  // namespace lode
