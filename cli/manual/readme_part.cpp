#include "readme_part.hpp"

#include <sstream>
#include <stdexcept>

namespace lode::cli {

std::vector<std::string> lines_below(const std::string& readme, const std::string& heading) {
    std::vector<std::string> lines;
    std::istringstream text(readme);
    bool is_below = false;
    for (std::string line; std::getline(text, line);) {
        if (is_below && line.starts_with("#")) break;
        if (is_below && !line.empty()) lines.push_back(line);
        if (line == heading) is_below = true;
    }
    if (lines.empty()) throw std::runtime_error("the README has nothing below '" + heading + "'");
    return lines;
}

std::vector<std::string> points_of(const std::vector<std::string>& lines) {
    std::vector<std::string> points;
    for (const std::string& line : lines) {
        const bool goes_on = line.starts_with("  ");
        if (goes_on && !points.empty())
            points.back() += line.substr(1);
        else
            points.push_back(line.starts_with("- ") ? line.substr(2) : line);
    }
    return points;
}

std::vector<std::pair<std::string, std::string>> rows_of(const std::vector<std::string>& lines) {
    std::vector<std::pair<std::string, std::string>> rows;
    bool is_in_body = false;
    for (const std::string& line : lines) {
        const auto middle = line.find(" | ");
        if (line.starts_with("| ---"))
            is_in_body = true;
        else if (is_in_body && line.starts_with("| ") && line.ends_with(" |") && middle != std::string::npos)
            rows.emplace_back(line.substr(2, middle - 2),
                              line.substr(middle + 3, line.size() - middle - 3 - 2));
    }
    if (rows.empty()) throw std::runtime_error("the README has no table where one is expected");
    return rows;
}

}  // namespace lode::cli
