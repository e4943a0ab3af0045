// What was printed, as JSON.

#include <cmath>

#include <letterlode/print.hpp>

#include "puzzle/json_text.hpp"

namespace lode {

std::string to_json(const PrintedPages& pages, std::span<const Worksheet> worksheets) {
    const auto tenths = [](double size) { return json_number(std::floor(size * 10) / 10); };
    std::vector<std::string> sheets;
    for (const Worksheet& worksheet : worksheets) {
        const Size size = worksheet.puzzle.grid.grid.size();
        JsonMembers members{{"title", json_string(worksheet.title)}};
        if (!worksheet.version.empty()) members.push_back({"version", json_string(worksheet.version)});
        members.push_back({"seed", std::to_string(worksheet.puzzle.recipe.seed)});
        members.push_back({"rows", std::to_string(size.rows)});
        members.push_back({"columns", std::to_string(size.columns)});
        members.push_back({"words", std::to_string(worksheet.puzzle.words.size())});
        sheets.push_back(json_object(members));
    }
    return json_document({{"format", json_string("letterlode-print")},
                          {"version", "1"},
                          {"pages", std::to_string(pages.pages)},
                          {"letter_pt", tenths(pages.letter_pt)},
                          {"list_pt", tenths(pages.list_pt)},
                          {"large_enough", json_bool(pages.is_large_enough)},
                          {"notes", json_strings(pages.notes)},
                          {"worksheets", json_array_in_lines(sheets)}});
}

}  // namespace lode
