#pragma once
// --options FILE: an INI file of command-line options, "name = value" a line.

#include <string>

#include <boost/program_options/options_description.hpp>
#include <boost/program_options/parsers.hpp>

namespace lode::cli {

namespace po = boost::program_options;

// Boost.Program_options reads the file, but takes '#' for a comment wherever it stands; colours and headings
// hold it too. Here only a line that begins with '#' is a comment. Throws po::error where the text is no such
// file.
[[nodiscard]] po::parsed_options parse_options_file(const std::string& text,
                                                    const po::options_description& options);

}  // namespace lode::cli
