#pragma once
// All the ways in which the finder can search on this machine.

#include <string>
#include <vector>

#include "find/search.hpp"

namespace lode::test {

struct Means {
    std::string name = "as users search";
    SearchMeans means;
};

// The Sieve with each kind of loops, in one block of rows and in blocks of one; the Sweep.
inline std::vector<Means> every_means() {
    std::vector<Means> every;
    for (const FindLoops* const loops : every_find_loops()) {
        every.push_back({std::string(loops->name), {true, loops, 0}});
        every.push_back({std::string(loops->name) + ", a row at a time", {true, loops, 1}});
    }
    every.push_back({"sweep", {false, nullptr, 0}});
    return every;
}

}  // namespace lode::test
