#pragma once
// How a list wants its words marked in artwork.

#include <optional>

#include <letterlode/colour.hpp>
#include <letterlode/outcome.hpp>
#include <letterlode/text.hpp>

namespace lode {

// Refused as unusable, naming file, line and word: a band that is neither a colour nor "none".
[[nodiscard]] std::optional<Refusal> fault_in_bands(const WordLines& words);

}  // namespace lode
