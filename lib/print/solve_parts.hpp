#pragma once
// The page to solve a puzzle on as it is written in lib/print/solve, compiled in.

#include <string_view>

namespace lode {

struct SolveParts {
    std::string_view page;  // with names of what goes where in double braces
    std::string_view style;
    std::string_view script;
    // SHA-256 of both, in base64, as a Content Security Policy names what may run (CSP level 3, 2.3.1).
    std::string_view style_hash;
    std::string_view script_hash;
};
const SolveParts& solve_parts();

}  // namespace lode
