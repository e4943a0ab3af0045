#include "verbs.hpp"

namespace lode::cli {

const std::array<VerbEntry, 6>& all_verbs() {
    static constexpr std::array entries{VerbEntry{make_verb, make}, VerbEntry{check_verb, check},
                                        VerbEntry{rate_verb, rate}, VerbEntry{cut_verb, cut},
                                        VerbEntry{print_verb, print_sheets}, VerbEntry{batch_verb, batch}};
    return entries;
}

}  // namespace lode::cli
