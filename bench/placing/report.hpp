#pragma once
// Runs engines on sets of instances, verifies what they answer, and prints tables.

#include <iosfwd>
#include <stdexcept>

#include "instances.hpp"

namespace lode::bench {

// An answer that is wrong: a place that is none, or a proof against a solution.
struct WrongAnswer : std::logic_error {
    using std::logic_error::logic_error;
};

struct Options {
    std::uint64_t seed = 1;
    int count = 5;      // instances a set
    double limit = 20;  // seconds that an engine may spend on one
    bool peers = true;
    std::string set;     // a part of the name of those that are wanted
    std::string engine;  // likewise
};

// Throws WrongAnswer.
void report(const Family& family, const Options& options, std::ostream& out);

}  // namespace lode::bench
