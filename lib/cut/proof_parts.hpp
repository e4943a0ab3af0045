#pragma once
// The proof page as it is written in lib/cut/proof, compiled in.

#include <string_view>

namespace lode {

struct ProofParts {
    std::string_view page;  // with names of what goes where in double braces
    std::string_view style;
    std::string_view script;
};
const ProofParts& proof_parts();

}  // namespace lode
