#pragma once
// Judges a cutting plan by the outlines themselves, not by their boxes.

#include <letterlode/plan.hpp>

#include <span>
#include <string>
#include <vector>

namespace lode::test {

// What the plan breaks of its promises: a sentence each. Outlines are compared on a lattice of micrometres.
std::vector<std::string> faults_of(std::span<const ToCut> pieces, const PlanOptions& options,
                                   const Plan& plan);

// A load as an SVG picture, for the eye.
std::string picture_of(std::span<const ToCut> pieces, const PlanOptions& options, const Plan& plan,
                       std::size_t load);

}  // namespace lode::test
