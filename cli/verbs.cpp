#include "verbs.hpp"

namespace lode::cli {

Verb VerbEntry::describe() const {
    Verb verb = described();
    verb.name = name;
    return verb;
}

const std::array<VerbEntry, 6>& all_verbs() {
    static constexpr std::array entries{
        VerbEntry{"make", make_verb, make},           VerbEntry{"check", check_verb, check},
        VerbEntry{"rate", rate_verb, rate},           VerbEntry{"cut", cut_verb, cut},
        VerbEntry{"print", print_verb, print_sheets}, VerbEntry{"batch", batch_verb, batch},
    };
    return entries;
}

}  // namespace lode::cli
