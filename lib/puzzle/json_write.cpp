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

std::string copies_json(const std::vector<Copy>& copies, const std::vector<std::string>& inside = {}) {
    std::vector<std::string> all;
    for (std::size_t at = 0; at < copies.size(); ++at) {
        JsonMembers members = copy_members(copies[at]);
        if (at < inside.size() && !inside[at].empty()) members.push_back({"inside", json_string(inside[at])});
        all.push_back(json_object(members));
    }
    return json_array(all);
}

std::string finding_json(const WordFinding& finding) {
    return json_object({{"shown", json_string(finding.shown)},
                        {"expected", std::to_string(finding.expected)},
                        {"copies", copies_json(finding.copies, finding.inside)},
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

std::string pin_json(const Pin& pin) {
    JsonMembers members{{"word", json_string(pin.word)}};
    for (auto& member : placement_members(pin.placed)) members.push_back(std::move(member));
    return json_object(members);
}

std::string crossings_json(const Crossings& crossings) {
    JsonMembers members;
    if (crossings.least > 0) members.push_back({"least", std::to_string(crossings.least)});
    if (crossings.most) members.push_back({"most", std::to_string(*crossings.most)});
    return json_object(members);
}

std::string weights_json(const DirectionWeights& weights) {
    JsonMembers members;
    for (const Direction direction : all_directions)
        if (const auto weight = weights[static_cast<unsigned>(direction)]; weight > 0)
            members.push_back({name(direction), std::to_string(weight)});
    return json_object(members);
}

std::string earlier_json(const Earlier& earlier, JsonArray array) {
    JsonMembers members{{"words", array(each(earlier.words, pin_json))}};
    if (!earlier.filler.empty()) members.push_back({"filler", json_strings(earlier.filler)});
    return json_object(members);
}

std::string counts_json(const std::vector<LetterCount>& counts) {
    JsonMembers members;
    for (const auto& [letter, count] : counts) members.push_back({letter, std::to_string(count)});
    return json_object(members);
}

std::vector<std::string> bands_json(const WordLines& words) {
    std::vector<std::string> bands;
    for (const auto& word : words.words)
        if (!word.band.empty())
            bands.push_back(
                json_object({{"word", json_string(word.shown)}, {"band", json_string(word.band)}}));
    return bands;
}

// Only what is demanded is written.
void add_demands(const Recipe& recipe, JsonArray array, JsonMembers& members) {
    if (recipe.nested != Nested::inside) members.push_back({"nested", json_string(name(recipe.nested))});
    if (recipe.crossings.least > 0 || recipe.crossings.most)
        members.push_back({"crossings", crossings_json(recipe.crossings)});
    if (recipe.spacing > 0) members.push_back({"spacing", std::to_string(recipe.spacing)});
    if (recipe.leftover) members.push_back({"leftover", std::to_string(*recipe.leftover)});
    if (!recipe.message.empty()) members.push_back({"message", json_string(recipe.message)});
    if (recipe.filler_after_message) members.push_back({"message_then", json_string("filler")});
    if (recipe.filler != FillerWay::words) members.push_back({"filler", json_string(name(recipe.filler))});
    if (!recipe.letter_counts.empty())
        members.push_back({"letter_counts", counts_json(recipe.letter_counts)});
    if (recipe.longest_run != default_longest_run)
        members.push_back({"longest_run", std::to_string(recipe.longest_run)});
    if (recipe.look_alikes_apart) members.push_back({"look_alikes", json_string("apart")});
    if (!recipe.pins.empty()) members.push_back({"pins", array(each(recipe.pins, pin_json))});
    if (recipe.equal_shares) members.push_back({"shares", json_string("equal")});
    if (recipe.weights) members.push_back({"shares", weights_json(*recipe.weights)});
    if (recipe.most_backward) members.push_back({"backward", std::to_string(*recipe.most_backward)});
    if (recipe.choices != 1) members.push_back({"choices", std::to_string(recipe.choices)});
    if (recipe.earlier) members.push_back({"earlier", earlier_json(*recipe.earlier, array)});
}

JsonMembers recipe_members(const Recipe& recipe, JsonArray array) {
    const auto shown = [](const ListedWord& word) { return json_string(word.shown); };
    JsonMembers members{{"words", json_array(each(recipe.words.words, shown))},
                        {"locale", json_string(recipe.text.locale)},
                        {"letters", json_string(name(recipe.text.letters))}};
    if (const auto bands = bands_json(recipe.words); !bands.empty())
        members.push_back({"bands", array(bands)});
    // Only rules that are not the common ones are written.
    const TextRules& text = recipe.text;
    if (text.digraphs != Digraphs::join) members.push_back({"digraphs", json_string(name(text.digraphs))});
    if (text.sharp_s) members.push_back({"sharp_s", json_string(name(*text.sharp_s))});
    if (text.marks != Marks::keep) members.push_back({"marks", json_string(name(text.marks))});
    if (text.finals != Finals::keep) members.push_back({"finals", json_string(name(text.finals))});
    if (recipe.size) {
        const auto [rows, columns] = *recipe.size;
        members.push_back({"grid", json_string(std::to_string(columns) + "x" + std::to_string(rows))});
    } else {
        members.push_back({"grid", json_string(recipe.tight ? "tight" : "auto")});
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
    add_demands(recipe, array, members);
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
    JsonMembers members{{"shown", json_string(word.shown)},
                        {"letters", json_strings(word.letters)},
                        {"placed", json_object(placement_members(word.placed))}};
    if (!word.inside.empty()) members.push_back({"inside", json_string(word.inside)});
    return json_object(members);
}

JsonMembers puzzle_members(const Puzzle& puzzle, JsonArray array) {
    return {{"format", json_string("letterlode-puzzle")},
            {"version", "1"},
            {"recipe", json_object(recipe_members(puzzle.recipe, json_array))},
            {"rows", std::to_string(puzzle.grid.grid.size().rows)},
            {"columns", std::to_string(puzzle.grid.grid.size().columns)},
            {"cells", array(cell_rows(puzzle.grid))},
            {"words", array(each(puzzle.words, word_json))},
            {"audit", json_object(audit_members(puzzle.audit, json_array))}};
}

}  // namespace

std::string to_json(const Puzzle& puzzle) {
    return json_document(puzzle_members(puzzle, json_array_in_lines));
}

std::string to_json(std::span<const Puzzle> choices) {
    return json_document({{"format", json_string("letterlode-choices")},
                          {"version", "1"},
                          {"puzzles", json_array_in_lines(each(choices, [](const Puzzle& puzzle) {
                               return json_object(puzzle_members(puzzle, json_array));
                           }))}});
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
    if (refusal.position > 0) members.push_back({"position", std::to_string(refusal.position)});
    return json_document(members);
}

}  // namespace lode
