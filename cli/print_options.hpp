#pragma once
// The options of what is printed.

#include <boost/program_options/options_description.hpp>
#include <letterlode/outcome.hpp>
#include <letterlode/print.hpp>

#include "options.hpp"

namespace lode::cli {

// From --page to --colours.
void add_print_options(po::options_description& options);

// Refused as unusable: a value that is none of its option's.
[[nodiscard]] Outcome<PrintOptions> print_options(const Values& values);

}  // namespace lode::cli
