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

// A value in a pair of quotes, as it would stand on the command line, is what is between them.
void unquote(std::string& value) {
    if (value.size() < 2 || (value.front() != '"' && value.front() != '\'') || value.back() != value.front())
        return;
    value = value.substr(1, value.size() - 2);
}

// The first line that goes wrong by itself, as ", line 3", or nothing.
std::string line_of_fault(const std::string& safe, const po::options_description& options) {
    std::istringstream lines(safe);
    int number = 0;
    for (std::string line; std::getline(lines, line);) {
        ++number;
        try {
            std::istringstream alone(line);
            (void)po::parse_config_file(alone, options);
        } catch (const po::error&) {
            return "line " + std::to_string(number) + ": ";
        }
    }
    return {};
}

}  // namespace

po::parsed_options parse_options_file(const std::string& text, const po::options_description& options) {
    if (text.find(stand_in) != std::string::npos) throw po::error("the file holds a control character");
    const std::string safe = with_stand_ins(text);
    std::istringstream lines(safe);
    try {
        po::parsed_options parsed = po::parse_config_file(lines, options);
        for (auto& option : parsed.options) {
            for (auto* values : {&option.value, &option.original_tokens})
                for (auto& value : *values) std::replace(value.begin(), value.end(), stand_in, '#');
            for (auto& value : option.value) unquote(value);
        }
        return parsed;
    } catch (const po::error& error) {
        std::string what = error.what();
        std::replace(what.begin(), what.end(), stand_in, '#');
        throw po::error(line_of_fault(safe, options) + what);
    }
}

}  // namespace lode::cli
