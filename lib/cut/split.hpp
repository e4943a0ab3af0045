#pragma once
// Artwork that is larger than a bed, in parts that are not.

#include <string>
#include <vector>

#include <letterlode/plan.hpp>

namespace lode {

struct PartSize {
    double width_mm = 0;
    double height_mm = 0;
};

// Parts no larger than one of the sizes, marks included, in as few rows and columns as were found; none where
// what lies between two lines that could part it is larger. Lines cross no box of a contour, so no letter
// whose contours lie apart from others'.
[[nodiscard]] std::vector<SplitPart> split(std::size_t number, const ToCut& piece,
                                           const std::vector<PartSize>& sizes);

}  // namespace lode
