#pragma once
// How the parts of the finder are put together, and what tests may choose that users cannot.

#include <letterlode/find.hpp>

#include "find/giver.hpp"
#include "find/sieve.hpp"
#include "find/sweep.hpp"
#include "find/window_filter.hpp"

namespace lode {

// For tests and benchmarks: the answers are the same.
struct SearchMeans {
    bool by_sieve = true;              // false: by the Sweep from the first row on
    const FindLoops* loops = nullptr;  // none: the best for the machine
    int block_rows = 0;                // rows that the Sieve takes at a time; 0: chosen by the grid's size
};

// Rows that the Sieve takes at a time.
[[nodiscard]] int usual_block_rows(Size size);

enum class SieveEnd { done, stopped, given_up };

// Gives the copies that begin in rows `row` and below, block of rows by block, and leaves in `row` the first
// whose copies were not given. Blocks may be scanned by several threads; the copies are given by the calling
// one, in order.
SieveEnd sieve_rows(const Sieve& sieve, const SoughtWords& words, const FindLoops& loops, const Grid& grid,
                    const Wanted& wanted, const SearchMeans& means, unsigned threads, Giver& giver, int& row);

}  // namespace lode
