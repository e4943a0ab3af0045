// Placing words: the engine beside its peers, on fresh instances, in one run.
//   placing_bench [--seed N] [--count N] [--family NAME] [--limit SECONDS] [--no-peers]
//   [--set TEXT] [--engine TEXT]
// A table for each set of instances: how many of them each engine solved, proved impossible and left open,
// its median processor time, the part of it that went into a model or formula, and how many times ours that
// is; `>` where most instances were left open, so that the figure is a lower bound. Sets and engines may be
// chosen by a part of their names. What each peer is asked stands at the top of its file. Ends with 1 where
// an answer is wrong.

#include <cstdlib>
#include <exception>
#include <iostream>
#include <string_view>

#include "engines.hpp"
#include "report.hpp"

namespace {

using namespace lode::bench;

constexpr const char* usage =
    "placing_bench [--seed N] [--count N] [--family NAME] [--limit SECONDS] [--no-peers]\n"
    "    [--set TEXT] [--engine TEXT]\nfamilies:";

int run(const Options& options, std::string_view wanted) {
    if (options.peers && constraint_solvers().empty())
        std::cout << "Built without Gecode, which is left out (package libgecode-dev).\n";
    std::cout << "seed " << options.seed << ", " << options.count << " instances a set, " << options.limit
              << " s of processor time for each at the most\n\n";
    for (const Family& family : families())
        if (wanted.empty() || family.name == wanted) report(family, options, std::cout);
    return 0;
}

int refuse() {
    std::cerr << usage;
    for (const Family& family : families()) std::cerr << " " << family.name;
    std::cerr << "\n";
    return 2;
}

}  // namespace

int main(int count, char** arguments) {
    Options options;
    std::string_view wanted;
    for (int at = 1; at < count; ++at) {
        const std::string_view name = arguments[at];
        if (name == "--no-peers") {
            options.peers = false;
            continue;
        }
        if (at + 1 == count) return refuse();
        const char* value = arguments[++at];
        if (name == "--seed")
            options.seed = std::strtoull(value, nullptr, 10);
        else if (name == "--count")
            options.count = std::atoi(value);
        else if (name == "--limit")
            options.limit = std::atof(value);
        else if (name == "--family")
            wanted = value;
        else if (name == "--set")
            options.set = value;
        else if (name == "--engine")
            options.engine = value;
        else
            return refuse();
    }
    bool is_known = wanted.empty();
    for (const Family& family : families()) is_known |= family.name == wanted;
    if (!is_known || options.count < 1 || !(options.limit > 0)) return refuse();
    try {
        return run(options, wanted);
    } catch (const WrongAnswer& wrong) {
        std::cerr << "wrong: " << wrong.what() << "\n";
        return 1;
    } catch (const std::exception& fault) {
        std::cerr << "placing_bench: " << fault.what() << "\n";
        return 3;
    }
}
