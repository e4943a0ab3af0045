#pragma once
// What an audit is told of a list and a recipe.

#include <vector>

#include <letterlode/find.hpp>
#include <letterlode/puzzle.hpp>

#include "puzzle/avoided_words.hpp"
#include "puzzle/nested_words.hpp"

namespace lode {

[[nodiscard]] std::vector<AuditedWord> judged_words(const WordList& list, const NestedWords& nested);
[[nodiscard]] AuditRules audit_rules(const Recipe& recipe, const std::vector<AvoidedReading>& avoided,
                                     const Segmenter& segmenter);

}  // namespace lode
