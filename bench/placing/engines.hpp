#pragma once
// The engine and those that it is put beside.

#include <vector>

#include "contest.hpp"

namespace lode::bench {

// What `make` does before it fills and audits.
[[nodiscard]] Engine placing_alone();
// From words to a grid without blanks: placed and filled, not audited; the same audited, which is what
// `make` gives; and with the English avoid list. The recipe is checked before the clock starts, as it is
// where many puzzles are made from one.
enum class Making { unaudited, certified, certified_with_avoid_list };
[[nodiscard]] Engine whole_puzzle(Making making);

// Long words first, each at a random place where its letters agree; all over again where one finds none.
[[nodiscard]] Engine random_retry();
// The same, and random letters in all other cells.
[[nodiscard]] Engine random_retry_filled();
// CaDiCaL on a formula.
[[nodiscard]] Engine sat_solver();
// Gecode on a model of places, or on none where this program was built without it.
[[nodiscard]] std::vector<Engine> constraint_solvers();

}  // namespace lode::bench
