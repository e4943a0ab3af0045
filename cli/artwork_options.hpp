#pragma once
// The options of the artwork: make, cut and rate share them.

#include <optional>

#include <boost/program_options/options_description.hpp>
#include <letterlode/art.hpp>
#include <letterlode/outcome.hpp>

#include "options.hpp"

namespace lode::cli {

// From --blank to --registration: what is drawn.
void add_artwork_options(po::options_description& options);

// `surface` is taken where none is given: for what is the same on both. Refused as unusable: no blank, no
// surface, a surface that is none, a colour that is none, a length that is none.
[[nodiscard]] Outcome<ArtworkOptions> artwork_options(const Values& values,
                                                      std::optional<Surface> surface = std::nullopt);

// Refused as unusable: options of an artwork that is not asked for, since they would be passed over in
// silence.
[[nodiscard]] std::optional<Refusal> artwork_without_blank(const Values& values);

}  // namespace lode::cli
