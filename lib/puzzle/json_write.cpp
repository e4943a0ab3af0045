#include <algorithm>
#include <initializer_list>

#include <letterlode/puzzle.hpp>
#include <nlohmann/json.hpp>

namespace lode {
namespace {

using Json = nlohmann::ordered_json;

// Text that came from outside may be no UTF-8 (a file's name, say): what is not becomes U+FFFD.
std::string dumped(const Json& json) {
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

// One line a member, one line an element of the members named: a file that people can read and compare by
// lines.
std::string in_lines(const Json& json, std::initializer_list<std::string_view> spread) {
    std::string text = "{\n";
    bool first = true;
    for (const auto& [key, value] : json.items()) {
        if (!first) text += ",\n";
        first = false;
        text += " " + dumped(key) + ": ";
        if (std::find(spread.begin(), spread.end(), key) == spread.end() || value.empty()) {
            text += dumped(value);
            continue;
        }
        text += "[\n";
        for (std::size_t at = 0; at < value.size(); ++at)
            text += "  " + dumped(value[at]) + (at + 1 < value.size() ? ",\n" : "\n");
        text += " ]";
    }
    return text + "\n}\n";
}

Json cell_json(Cell cell) {
    return {{"row", cell.row + 1}, {"column", cell.column + 1}};
}

Json placement_json(const Placement& placement) {
    Json json = cell_json(placement.first);
    json["direction"] = name(placement.direction);
    return json;
}

Json copy_json(const Copy& copy) {
    Json json = placement_json({copy.first, copy.direction});
    json["last"] = cell_json(copy.last());
    return json;
}

Json copies_json(const std::vector<Copy>& copies) {
    Json json = Json::array();
    for (const auto& copy : copies) json.push_back(copy_json(copy));
    return json;
}

Json findings_json(const std::vector<AvoidedFinding>& findings) {
    Json json = Json::array();
    for (const auto& finding : findings) {
        Json one{{"word", finding.word}};
        one.update(copy_json(finding.copy));
        json.push_back(std::move(one));
    }
    return json;
}

Json audit_json(const Audit& audit) {
    Json words = Json::array();
    for (const auto& word : audit.words)
        words.push_back({{"shown", word.shown},
                         {"expected", word.expected},
                         {"copies", copies_json(word.copies)},
                         {"stray", copies_json(word.stray)}});
    Json json{{"format", "letterlode-audit"}, {"version", 1}, {"certified", audit.certified}};
    if (audit.cut_short) json["cut_short"] = true;
    json["words"] = std::move(words);
    json["missing"] = audit.missing;
    json["avoided"] = findings_json(audit.avoided);
    json["allowed"] = findings_json(audit.allowed);
    json["chance"] = findings_json(audit.chance);
    return json;
}

Json recipe_json(const Recipe& recipe) {
    Json words = Json::array();
    for (const auto& word : recipe.words.words) words.push_back(word.shown);
    Json json{
        {"words", std::move(words)}, {"locale", recipe.text.locale}, {"letters", name(recipe.text.letters)}};
    json["grid"] =
        recipe.size ? std::to_string(recipe.size->columns) + "x" + std::to_string(recipe.size->rows) : "auto";
    if (!recipe.size) json["aspect"] = recipe.aspect;
    if (recipe.mask) {
        Json rows = Json::array();
        for (int row = 0; row < recipe.mask->size().rows; ++row) {
            std::string line;
            for (int column = 0; column < recipe.mask->size().columns; ++column)
                line += recipe.mask->open({row, column}) ? 'O' : '.';
            rows.push_back(line);
        }
        json["mask"] = std::move(rows);
    } else {
        json["shape"] = name(recipe.shape);
    }
    if (recipe.directions) {
        Json directions = Json::array();
        for (const Direction direction : all_directions)
            if (recipe.directions->contains(direction)) directions.push_back(name(direction));
        json["directions"] = std::move(directions);
    }
    json["seed"] = recipe.seed;
    json["default_avoid_list"] = recipe.default_avoid_list;
    json["avoid"] = recipe.avoid;
    json["allow"] = recipe.allow;
    json["effort"] = recipe.effort;
    return json;
}

Json cells_json(const LetteredGrid& grid) {
    Json rows = Json::array();
    for (int row = 0; row < grid.grid.size().rows; ++row) {
        Json cells = Json::array();
        for (int column = 0; column < grid.grid.size().columns; ++column) {
            const Letter letter = grid.grid[{row, column}];
            if (letter == closed_cell)
                cells.push_back(nullptr);
            else
                cells.push_back(grid.alphabet.text(letter));
        }
        rows.push_back(std::move(cells));
    }
    return rows;
}

}  // namespace

std::string to_json(const Puzzle& puzzle) {
    Json words = Json::array();
    for (const auto& word : puzzle.words)
        words.push_back(
            {{"shown", word.shown}, {"letters", word.letters}, {"placed", placement_json(word.placed)}});
    const Json json{{"format", "letterlode-puzzle"},
                    {"version", 1},
                    {"recipe", recipe_json(puzzle.recipe)},
                    {"rows", puzzle.grid.grid.size().rows},
                    {"columns", puzzle.grid.grid.size().columns},
                    {"cells", cells_json(puzzle.grid)},
                    {"words", std::move(words)},
                    {"audit", audit_json(puzzle.audit)}};
    return in_lines(json, {"cells", "words"});
}

std::string to_json(const Audit& audit) {
    return in_lines(audit_json(audit), {"words", "avoided", "allowed", "chance"});
}

std::string to_json(const Recipe& recipe) {
    return in_lines(recipe_json(recipe), {"mask"});
}

std::string to_json(const Refusal& refusal) {
    const std::string_view reason = refusal.reason == Refusal::Reason::impossible   ? "impossible"
                                    : refusal.reason == Refusal::Reason::unfinished ? "unfinished"
                                                                                    : "unusable";
    Json json{{"format", "letterlode-refusal"}, {"version", 1},           {"reason", reason},
              {"message", refusal.message},     {"words", refusal.words}, {"advice", refusal.advice}};
    if (!refusal.source.empty()) json["source"] = refusal.source;
    if (refusal.line > 0) json["line"] = refusal.line;
    return in_lines(json, {"advice"});
}

}  // namespace lode
