#pragma once
// Marks of the constructed alphabet, and letters with them: clear of the letter above and below it, or joined
// to it as one contour.

#include <unicode/utypes.h>

#include <vector>

#include "art/constructed_letters.hpp"

namespace lode {

enum class MarkPlace { above, below, joined };

struct MarkShape {
    UChar32 mark;  // a combining character
    MarkPlace place;
    // About x = 0; where it is joined, y is the letter's baseline.
    Skeleton (*draw)(const LetterMeasures&);
};

// Null for a mark that the alphabet lacks.
[[nodiscard]] const MarkShape* mark_shape(UChar32 mark);

// The letter's rounded outline with its marks, those of one place stacked outwards.
[[nodiscard]] Path outline_with_marks(const LetterMeasures& m, const LetterShape& letter,
                                      const std::vector<const MarkShape*>& marks);

}  // namespace lode
