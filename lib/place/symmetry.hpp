#pragma once
// The ways to turn and mirror a mask onto itself. With them one word needs to be tried only in places that
// are no images of each other: up to an eighth of the work of a proof.

#include <vector>

#include "place/candidates.hpp"

namespace lode {

// Of a word's candidates, one for each class of images under the symmetries of mask and directions.
[[nodiscard]] std::vector<Candidate> one_of_each_class(const PlaceTask& task, const Candidates& candidates,
                                                       std::uint32_t word);

}  // namespace lode
