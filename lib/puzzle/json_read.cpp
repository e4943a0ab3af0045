#include <algorithm>
#include <map>

#include <letterlode/puzzle.hpp>

#include "puzzle/json_value.hpp"

namespace lode {
namespace {

// What is wrong with a document, and where in it ("cells[3][4]"); the cause may name words.
struct Fault {
    std::string path;
    std::string what;
    Refusal cause = {};
};

[[noreturn]] void fail(const std::string& path, const std::string& what) {
    throw Fault{path, what};
}

std::string at_index(const std::string& path, std::size_t index) {
    return path + "[" + std::to_string(index + 1) + "]";
}

const JsonValue& member(const JsonValue& json, const std::string& path, const char* key) {
    if (!json.object()) fail(path, "is no object");
    const auto* found = json.find(key);
    if (!found) fail(path, std::string("lacks \"") + key + "\"");
    return *found;
}

const std::string& text(const JsonValue& json, const std::string& path) {
    if (!json.string()) fail(path, "is no string");
    return *json.string();
}

const JsonValue::Array& array(const JsonValue& json, const std::string& path) {
    if (!json.array()) fail(path, "is no array");
    return *json.array();
}

std::vector<std::string> texts(const JsonValue& json, const std::string& path) {
    const auto& elements = array(json, path);
    std::vector<std::string> all;
    for (std::size_t at = 0; at < elements.size(); ++at)
        all.push_back(text(elements[at], at_index(path, at)));
    return all;
}

std::uint64_t whole_number(const JsonValue& json, const std::string& path) {
    if (!json.whole_number()) fail(path, "is no whole number of 0 or more");
    return *json.whole_number();
}

int count(const JsonValue& json, const std::string& path) {
    const auto number = whole_number(json, path);
    if (number < 1 || number > static_cast<std::uint64_t>(max_side))
        fail(path, "is not between 1 and " + std::to_string(max_side));
    return static_cast<int>(number);
}

template <class T>
T checked(Outcome<T> outcome, const std::string& path) {
    if (!outcome) throw Fault{path, "cannot be used: " + outcome.refusal().message, outcome.refusal()};
    return std::move(outcome).value();
}

Direction direction(const JsonValue& json, const std::string& path) {
    const auto found = direction_named(text(json, path));
    if (!found) fail(path, "is no direction");
    return *found;
}

void check_format(const JsonValue& document, const char* format) {
    if (text(member(document, "the document", "format"), "format") != format)
        fail("format", std::string("is not \"") + format + "\"");
    if (whole_number(member(document, "the document", "version"), "version") != 1)
        fail("version", "is not 1, the only one that this program reads");
}

template <class Rule>
Rule rule(const JsonValue& value, const std::string& path, std::optional<Rule> (*named)(std::string_view),
          const char* fault) {
    const auto found = named(text(value, path));
    if (!found) fail(path, fault);
    return *found;
}

void read_text_rule(const std::string& key, const JsonValue& value, const std::string& at, TextRules& rules) {
    if (key == "locale") rules.locale = text(value, at);
    if (key == "letters") rules.letters = rule(value, at, letter_case_named, "is none of upper, lower, keep");
    if (key == "digraphs") rules.digraphs = rule(value, at, digraphs_named, "is neither join nor split");
    if (key == "sharp_s") rules.sharp_s = rule(value, at, sharp_s_named, "is neither double nor keep");
    if (key == "marks") rules.marks = rule(value, at, marks_named, "is neither keep nor strip");
    if (key == "finals") rules.finals = rule(value, at, finals_named, "is neither keep nor fold");
}

Mask mask(const JsonValue& json, const std::string& path) {
    std::string drawn;
    for (const auto& row : texts(json, path)) drawn += row + "\n";
    return checked(read_mask(drawn, ""), path);
}

void read_words(const JsonValue& json, const std::string& path, Recipe& recipe) {
    if (array(json, path).size() > max_list_words)
        fail(path, "holds more than " + std::to_string(max_list_words) + " words");
    for (const auto& word : texts(json, path)) recipe.words.words.push_back({word, 0});
}

// A colour, or "none", by the word as it is shown.
void read_bands(const JsonValue& json, const std::string& path, Recipe& recipe) {
    std::map<std::string_view, ListedWord*> listed;
    for (auto& word : recipe.words.words) listed.emplace(word.shown, &word);
    const auto& bands = array(json, path);
    for (std::size_t at = 0; at < bands.size(); ++at) {
        const std::string here = at_index(path, at);
        const auto found = listed.find(text(member(bands[at], here, "word"), here + ".word"));
        if (found == listed.end()) fail(here + ".word", "is not in the list");
        found->second->band = text(member(bands[at], here, "band"), here + ".band");
    }
}

// A placement in a grid of any size; whether it fits the recipe's own is for make to say.
Placement placement(const JsonValue& json, const std::string& path) {
    return {{count(member(json, path, "row"), path + ".row") - 1,
             count(member(json, path, "column"), path + ".column") - 1},
            direction(member(json, path, "direction"), path + ".direction")};
}

std::vector<Pin> pins(const JsonValue& json, const std::string& path) {
    const auto& elements = array(json, path);
    if (elements.size() > max_list_words)
        fail(path, "holds more than " + std::to_string(max_list_words) + " words");
    std::vector<Pin> all;
    for (std::size_t at = 0; at < elements.size(); ++at) {
        const std::string here = at_index(path, at);
        all.push_back(
            {text(member(elements[at], here, "word"), here + ".word"), placement(elements[at], here)});
    }
    return all;
}

Crossings crossings(const JsonValue& json, const std::string& path) {
    Crossings range;
    if (!json.object()) fail(path, "is no object");
    if (const auto* least = json.find("least")) range.least = whole_number(*least, path + ".least");
    if (const auto* most = json.find("most")) range.most = whole_number(*most, path + ".most");
    return range;
}

DirectionWeights weights(const JsonValue& json, const std::string& path) {
    if (!json.object()) fail(path, "is neither \"equal\" nor an object");
    DirectionWeights all{};
    for (const auto& [key, value] : *json.object()) {
        const auto named = direction_named(key);
        if (!named) fail(path + "." + key, "is no direction");
        const auto weight = whole_number(value, path + "." + key);
        if (weight > max_weight) fail(path + "." + key, "is more than " + std::to_string(max_weight));
        all[static_cast<unsigned>(*named)] = static_cast<std::uint32_t>(weight);
    }
    return all;
}

Earlier earlier(const JsonValue& json, const std::string& path) {
    Earlier read{pins(member(json, path, "words"), path + ".words"), {}};
    if (const auto* filler = json.find("filler")) read.filler = texts(*filler, path + ".filler");
    return read;
}

std::vector<LetterCount> letter_counts(const JsonValue& json, const std::string& path) {
    if (!json.object()) fail(path, "is no object");
    std::vector<LetterCount> counts;
    for (const auto& [letter, count] : *json.object())
        counts.push_back({letter, whole_number(count, path + "." + letter)});
    return counts;
}

// Which of two names it is: true for the first.
bool one_of(const JsonValue& json, const std::string& path, const std::string& yes, const std::string& no) {
    const std::string& name = text(json, path);
    if (name != yes && name != no) fail(path, "is neither " + yes + " nor " + no);
    return name == yes;
}

void read_filler(const std::string& key, const JsonValue& value, const std::string& at, Recipe& recipe) {
    if (key == "filler") {
        const auto way = filler_way_named(text(value, at));
        if (!way) fail(at, "is no way to choose filler");
        recipe.filler = *way;
    }
    if (key == "letter_counts") recipe.letter_counts = letter_counts(value, at);
    if (key == "longest_run") {
        const auto run = whole_number(value, at);
        recipe.longest_run = static_cast<std::uint32_t>(std::min<std::uint64_t>(run, max_side));
    }
    if (key == "look_alikes") recipe.look_alikes_apart = one_of(value, at, "apart", "anywhere");
}

void read_demand(const std::string& key, const JsonValue& value, const std::string& at, Recipe& recipe) {
    if (key == "nested") {
        const auto rule = nested_named(text(value, at));
        if (!rule) fail(at, "is neither inside nor separate");
        recipe.nested = *rule;
    }
    if (key == "crossings") recipe.crossings = crossings(value, at);
    if (key == "spacing") {
        const auto spacing = whole_number(value, at);
        if (spacing > max_spacing) fail(at, "is more than " + std::to_string(max_spacing));
        recipe.spacing = static_cast<std::uint32_t>(spacing);
    }
    if (key == "leftover") recipe.leftover = whole_number(value, at);
    if (key == "message") recipe.message = text(value, at);
    if (key == "message_then") recipe.filler_after_message = one_of(value, at, "filler", "nothing");
    if (key == "pins") recipe.pins = pins(value, at);
    if (key == "shares") {
        recipe.equal_shares = value.string() && *value.string() == "equal";
        if (!recipe.equal_shares) recipe.weights = weights(value, at);
    }
    if (key == "backward") recipe.most_backward = whole_number(value, at);
    if (key == "earlier") recipe.earlier = earlier(value, at);
    if (key == "choices") {
        recipe.choices = whole_number(value, at);
        if (recipe.choices < 1 || recipe.choices > max_choices)
            fail(at, "is not between 1 and " + std::to_string(max_choices));
    }
}

// Every member but the words may be left out, and unknown ones are passed over: later versions may add some.
Recipe read_recipe(const JsonValue& json, const std::string& path) {
    Recipe recipe;
    read_words(member(json, path, "words"), path + ".words", recipe);
    for (const auto& [key, value] : *json.object()) {
        const std::string at = path + "." + key;
        read_text_rule(key, value, at, recipe.text);
        if (key == "bands") read_bands(value, at, recipe);
        if (key == "grid") {
            recipe.tight = text(value, at) == "tight";
            if (!recipe.tight && text(value, at) != "auto")
                recipe.size = checked(read_size(text(value, at)), at);
        }
        if (key == "aspect") {
            if (!value.number()) fail(at, "is no number");
            recipe.aspect = checked(checked_aspect(*value.number()), at);
        }
        if (key == "shape") {
            const auto shape = shape_named(text(value, at));
            if (!shape) fail(at, "is no built-in shape");
            recipe.shape = *shape;
        }
        if (key == "mask") recipe.mask = mask(value, at);
        if (key == "directions") {
            Directions directions;
            const auto& names = array(value, at);
            for (std::size_t index = 0; index < names.size(); ++index)
                directions.insert(direction(names[index], at_index(at, index)));
            recipe.directions = directions;
        }
        if (key == "seed") recipe.seed = whole_number(value, at);
        if (key == "default_avoid_list") {
            if (!value.boolean()) fail(at, "is neither true nor false");
            recipe.default_avoid_list = *value.boolean();
        }
        if (key == "avoid") recipe.avoid = texts(value, at);
        if (key == "allow") recipe.allow = texts(value, at);
        if (key == "effort") recipe.effort = whole_number(value, at);
        read_demand(key, value, at, recipe);
        read_filler(key, value, at, recipe);
    }
    return recipe;
}

std::string letter(const std::string& written, const std::string& path, const Segmenter& segmenter) {
    const auto spelling = segmenter.spell(written);
    std::string joined;
    for (const auto& part : spelling.letters) joined += part;
    if (!spelling.bad.empty() || spelling.letters.size() != 1 || joined != written)
        fail(path, "is no single letter by the recipe's locale and case");
    return joined;
}

LetteredGrid read_cells(const JsonValue& document, const Segmenter& segmenter) {
    const int rows = count(member(document, "the document", "rows"), "rows");
    const int columns = count(member(document, "the document", "columns"), "columns");
    const Size size = checked(checked_size(columns, rows), "rows");
    const auto& cells = array(member(document, "the document", "cells"), "cells");
    if (cells.size() != static_cast<std::size_t>(rows))
        fail("cells", "is no array of as many rows as \"rows\" says");
    LetteredGrid grid{{}, Grid(size, closed_cell)};
    for (int row = 0; row < rows; ++row) {
        const std::string path = at_index("cells", static_cast<std::size_t>(row));
        const auto& line = array(cells[static_cast<std::size_t>(row)], path);
        if (line.size() != static_cast<std::size_t>(columns))
            fail(path, "is no array of as many cells as \"columns\" says");
        for (int column = 0; column < columns; ++column) {
            const JsonValue& cell = line[static_cast<std::size_t>(column)];
            if (cell.is_null()) continue;
            // A path is made only for a cell that needs one.
            const auto cell_path = [&] { return at_index(path, static_cast<std::size_t>(column)); };
            if (!cell.string()) fail(cell_path(), "is neither a string nor null");
            const std::string& written = *cell.string();
            auto known = grid.alphabet.find(written);
            if (!known && grid.alphabet.size() == max_letters) fail(cell_path(), "is one letter too many");
            if (!known) known = grid.alphabet.add(letter(written, cell_path(), segmenter));
            grid.grid[{row, column}] = *known;
        }
    }
    return grid;
}

PlacedWord read_word(const JsonValue& json, const std::string& path, const Grid& grid,
                     const Segmenter& segmenter) {
    PlacedWord word{};
    word.shown = text(member(json, path, "shown"), path + ".shown");
    word.letters = texts(member(json, path, "letters"), path + ".letters");
    if (word.letters.size() < 2) fail(path + ".letters", "has fewer than two letters");
    for (std::size_t at = 0; at < word.letters.size(); ++at)
        letter(word.letters[at], at_index(path + ".letters", at), segmenter);
    const JsonValue& placed = member(json, path, "placed");
    const std::string at = path + ".placed";
    word.placed.first.row = count(member(placed, at, "row"), at + ".row") - 1;
    word.placed.first.column = count(member(placed, at, "column"), at + ".column") - 1;
    word.placed.direction = direction(member(placed, at, "direction"), at + ".direction");
    if (const auto* inside = json.find("inside")) word.inside = text(*inside, path + ".inside");
    const auto steps = word.letters.size() - 1;
    if (!grid.inside(word.placed.first) || steps >= static_cast<std::size_t>(max_side) ||
        !grid.inside(moved(word.placed.first, word.placed.direction, static_cast<int>(steps))))
        fail(at, "leads out of the grid");
    return word;
}

// The recipe's words, in its order: an audit of others would certify what nobody asked for.
void read_placed_words(const JsonValue& json, const Segmenter& segmenter, Puzzle& puzzle) {
    const auto list = checked(spell(puzzle.recipe.words, segmenter), "recipe.words");
    const auto& words = array(json, "words");
    if (words.size() != list.words.size()) fail("words", "is no array of as many words as the recipe has");
    for (std::size_t at = 0; at < words.size(); ++at) {
        PlacedWord word = read_word(words[at], at_index("words", at), puzzle.grid.grid, segmenter);
        if (word.shown != list.words[at].shown || word.letters != list.words[at].letters)
            fail(at_index("words", at), "is not the recipe's word of that place");
        puzzle.words.push_back(std::move(word));
    }
}

Puzzle read_puzzle(const JsonValue& document, std::string_view source) {
    check_format(document, "letterlode-puzzle");
    Puzzle puzzle;
    puzzle.recipe = read_recipe(member(document, "the document", "recipe"), "recipe");
    const auto segmenter = checked(Segmenter::open(puzzle.recipe.text), "recipe.locale");
    puzzle.grid = read_cells(document, segmenter);
    read_placed_words(member(document, "the document", "words"), segmenter, puzzle);
    puzzle.recipe.words.source = source;
    // What a file says of itself is not believed: the grid is judged again.
    puzzle.audit = checked(audit(puzzle), "recipe");
    return puzzle;
}

template <class T, class Read>
Outcome<T> guarded(std::string_view json, std::string_view source, const char* kind, Read read) {
    try {
        return read(parse_json(json));
    } catch (const JsonFault& fault) {
        return Refusal{Refusal::Reason::unusable,
                       place_in(source, fault.line) + fault.what,
                       {},
                       {"Give JSON that letterlode wrote, such as puzzle.json."},
                       std::string(source),
                       fault.line,
                       fault.column};
    } catch (const Fault& fault) {
        Refusal refusal = fault.cause;
        refusal.reason = Refusal::Reason::unusable;
        refusal.message = place_in(source, 0) + fault.path + " " + fault.what + ".";
        refusal.advice.push_back(std::string("See the schema of the ") + kind + " in data/schema.");
        refusal.source = source;
        return refusal;
    }
}

}  // namespace

Outcome<Puzzle> puzzle_from_json(std::string_view json, std::string_view source) {
    return guarded<Puzzle>(json, source, "puzzle",
                           [&](const JsonValue& document) { return read_puzzle(document, source); });
}

Outcome<Recipe> recipe_from_json(std::string_view json, std::string_view source) {
    return guarded<Recipe>(json, source, "recipe", [&](const JsonValue& document) {
        // A puzzle's own recipe makes it again.
        const bool in_puzzle = document.find("format") != nullptr;
        if (in_puzzle) check_format(document, "letterlode-puzzle");
        const JsonValue& found = in_puzzle ? member(document, "the document", "recipe") : document;
        Recipe recipe = read_recipe(found, "recipe");
        recipe.words.source = source;
        return recipe;
    });
}

}  // namespace lode
