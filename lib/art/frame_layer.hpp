#pragma once
// Border and ornaments as a layer.

#include <letterlode/art.hpp>

#include "art/layout.hpp"

namespace lode {

// How far from the blank's edge the border begins and ends, in mm; both where there is none: the rebate.
struct BorderBand {
    double from = 0;
    double to = 0;
};
[[nodiscard]] BorderBand border_band(const ArtworkOptions& options, double margin_mm);

// The box about the ornament between heading and grid, with some air, in mm; empty where there is none.
[[nodiscard]] Box divider_box(const ArtworkOptions& options);

// Empty where nothing is asked for. `others` are the layers that flourishes in the corners keep clear of:
// where they do not, they are left out, with a note.
[[nodiscard]] Layer frame_layer(const ArtworkOptions& options, const Layout& layout, double margin_mm,
                                const std::vector<Layer>& others, std::vector<std::string>& notes);

}  // namespace lode
