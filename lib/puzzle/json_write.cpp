#include <letterlode/puzzle.hpp>

#include "puzzle/json_text.hpp"

namespace lode {
namespace {

// The JSON of each element of a list.
template <class List, class Write>
std::vector<std::string> each(const List& list, const Write& write) {
    std::vector<std::string> all;
    all.reserve(list.size());
    for (const auto& element : list) all.push_back(write(element));
    return all;
}

JsonMembers cell_members(Cell cell) {
    return {{"row", std::to_string(cell.row + 1)}, {"column", std::to_string(cell.column + 1)}};
}

JsonMembers placement_members(const Placement& placement) {
    JsonMembers members = cell_members(placement.first);
    members.push_back({"direction", json_string(name(placement.direction))});
    return members;
}

JsonMembers copy_members(const Copy& copy) {
    JsonMembers members = placement_members({copy.first, copy.direction});
    members.push_back({"last", json_object(cell_members(copy.last()))});
    return members;
}

std::string copies_json(const std::vector<Copy>& copies) {
    return json_array(each(copies, [](const Copy& copy) { return json_object(copy_members(copy)); }));
}

std::string finding_json(const WordFinding& finding) {
    return json_object({{"shown", json_string(finding.shown)},
                        {"expected", std::to_string(finding.expected)},
                        {"copies", copies_json(finding.copies)},
                        {"stray", copies_json(finding.stray)}});
}

std::string avoided_json(const AvoidedFinding& finding) {
    JsonMembers members{{"word", json_string(finding.word)}};
    for (auto& member : copy_members(finding.copy)) members.push_back(std::move(member));
    return json_object(members);
}

JsonMembers audit_members(const Audit& audit, JsonArray array) {
    JsonMembers members{{"format", json_string("letterlode-audit")},
                        {"version", "1"},
                        {"certified", json_bool(audit.certified)}};
    if (audit.cut_short) members.push_back({"cut_short", json_bool(true)});
    members.push_back({"words", array(each(audit.words, finding_json))});
    members.push_back({"missing", json_strings(audit.missing)});
    members.push_back({"avoided", array(each(audit.avoided, avoided_json))});
    members.push_back({"allowed", array(each(audit.allowed, avoided_json))});
    members.push_back({"chance", array(each(audit.chance, avoided_json))});
    return members;
}

std::vector<std::string> mask_rows(const Mask& mask) {
    std::vector<std::string> rows;
    for (int row = 0; row < mask.size().rows; ++row) {
        std::string line;
        for (int column = 0; column < mask.size().columns; ++column)
            line += mask.open({row, column}) ? 'O' : '.';
        rows.push_back(json_string(line));
    }
    return rows;
}

std::string directions_json(Directions directions) {
    std::vector<std::string> names;
    for (const Direction direction : all_directions)
        if (directions.contains(direction)) names.push_back(json_string(name(direction)));
    return json_array(names);
}

JsonMembers recipe_members(const Recipe& recipe, JsonArray array) {
    const auto shown = [](const ListedWord& word) { return json_string(word.shown); };
    JsonMembers members{{"words", json_array(each(recipe.words.words, shown))},
                        {"locale", json_string(recipe.text.locale)},
                        {"letters", json_string(name(recipe.text.letters))}};
    if (recipe.size) {
        const auto [rows, columns] = *recipe.size;
        members.push_back({"grid", json_string(std::to_string(columns) + "x" + std::to_string(rows))});
    } else {
        members.push_back({"grid", json_string("auto")});
        members.push_back({"aspect", json_number(recipe.aspect)});
    }
    if (recipe.mask)
        members.push_back({"mask", array(mask_rows(*recipe.mask))});
    else
        members.push_back({"shape", json_string(name(recipe.shape))});
    if (recipe.directions) members.push_back({"directions", directions_json(*recipe.directions)});
    members.push_back({"seed", std::to_string(recipe.seed)});
    members.push_back({"default_avoid_list", json_bool(recipe.default_avoid_list)});
    members.push_back({"avoid", json_strings(recipe.avoid)});
    members.push_back({"allow", json_strings(recipe.allow)});
    members.push_back({"effort", std::to_string(recipe.effort)});
    return members;
}

std::vector<std::string> cell_rows(const LetteredGrid& grid) {
    std::vector<std::string> letters;
    for (std::size_t letter = 0; letter < grid.alphabet.size(); ++letter)
        letters.push_back(json_string(grid.alphabet.text(static_cast<Letter>(letter))));
    std::vector<std::string> rows;
    for (int row = 0; row < grid.grid.size().rows; ++row) {
        std::vector<std::string> cells;
        for (int column = 0; column < grid.grid.size().columns; ++column) {
            const Letter letter = grid.grid[{row, column}];
            cells.push_back(letter == closed_cell ? "null" : letters.at(letter));
        }
        rows.push_back(json_array(cells));
    }
    return rows;
}

std::string word_json(const PlacedWord& word) {
    return json_object({{"shown", json_string(word.shown)},
                        {"letters", json_strings(word.letters)},
                        {"placed", json_object(placement_members(word.placed))}});
}

}  // namespace

std::string to_json(const Puzzle& puzzle) {
    return json_document({{"format", json_string("letterlode-puzzle")},
                          {"version", "1"},
                          {"recipe", json_object(recipe_members(puzzle.recipe, json_array))},
                          {"rows", std::to_string(puzzle.grid.grid.size().rows)},
                          {"columns", std::to_string(puzzle.grid.grid.size().columns)},
                          {"cells", json_array_in_lines(cell_rows(puzzle.grid))},
                          {"words", json_array_in_lines(each(puzzle.words, word_json))},
                          {"audit", json_object(audit_members(puzzle.audit, json_array))}});
}

std::string to_json(const Audit& audit) {
    return json_document(audit_members(audit, json_array_in_lines));
}

std::string to_json(const Recipe& recipe) {
    return json_document(recipe_members(recipe, json_array_in_lines));
}

std::string to_json(const Refusal& refusal) {
    const std::string_view reason = refusal.reason == Refusal::Reason::impossible   ? "impossible"
                                    : refusal.reason == Refusal::Reason::unfinished ? "unfinished"
                                                                                    : "unusable";
    JsonMembers members{{"format", json_string("letterlode-refusal")},
                        {"version", "1"},
                        {"reason", json_string(reason)},
                        {"message", json_string(refusal.message)},
                        {"words", json_strings(refusal.words)},
                        {"advice", json_array_in_lines(each(
                                       refusal.advice, [](const auto& text) { return json_string(text); }))}};
    if (!refusal.source.empty()) members.push_back({"source", json_string(refusal.source)});
    if (refusal.line > 0) members.push_back({"line", std::to_string(refusal.line)});
    return json_document(members);
}

}  // namespace lode
