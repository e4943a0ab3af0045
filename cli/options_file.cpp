#include "options_file.hpp"

#include <algorithm>
#include <sstream>

namespace lode::cli {
namespace {

// Stands for '#' while Boost reads: no text file holds this character.
constexpr char stand_in = '\x01';

std::string with_stand_ins(const std::string& text) {
    std::string safe;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        if (line.ends_with('\r')) line.pop_back();
        const auto first = line.find_first_not_of(" \t");
        const bool comment = first != std::string::npos && line[first] == '#';
        if (!comment) std::replace(line.begin(), line.end(), '#', stand_in);
        safe += line + "\n";
    }
    return safe;
}

}  // namespace

po::parsed_options parse_options_file(const std::string& text, const po::options_description& options) {
    if (text.find(stand_in) != std::string::npos) throw po::error("the file holds a control character");
    std::istringstream safe(with_stand_ins(text));
    po::parsed_options parsed = po::parse_config_file(safe, options);
    for (auto& option : parsed.options)
        for (auto* values : {&option.value, &option.original_tokens})
            for (auto& value : *values) std::replace(value.begin(), value.end(), stand_in, '#');
    return parsed;
}

}  // namespace lode::cli
