#include <algorithm>

#include <letterlode/puzzle.hpp>

#include "puzzle/json_writer.hpp"

namespace lode {
namespace {

using Layout = JsonWriter::Layout;

// A list of objects or arrays.
template <class Name, class List, class Write>
void write_each(JsonWriter& json, const Name& name, Layout layout, const List& list, const Write& write) {
    json.name(name);
    json.begin_array(layout);
    for (const auto& element : list) write(json, element);
    json.end_array();
}

template <class Name>
void write_strings(JsonWriter& json, const Name& name, const std::vector<std::string>& texts) {
    json.name(name);
    json.strings(texts);
}

void write_cell(JsonWriter& json, Cell cell) {
    json.member("row", cell.row + 1);
    json.member("column", cell.column + 1);
}

void write_placement(JsonWriter& json, const Placement& placement) {
    write_cell(json, placement.first);
    json.member("direction", name(placement.direction));
}

void write_copy(JsonWriter& json, const Copy& copy) {
    write_placement(json, {copy.first, copy.direction});
    json.name("last");
    json.begin_object();
    write_cell(json, copy.last());
    json.end_object();
}

template <class Name>
void write_copies(JsonWriter& json, const Name& name, const std::vector<Copy>& copies,
                  const std::vector<std::string>& inside = {}) {
    json.name(name);
    json.begin_array();
    for (std::size_t at = 0; at < copies.size(); ++at) {
        json.begin_object();
        write_copy(json, copies[at]);
        if (at < inside.size() && !inside[at].empty()) json.member("inside", inside[at]);
        json.end_object();
    }
    json.end_array();
}

void write_finding(JsonWriter& json, const WordFinding& finding) {
    json.begin_object();
    json.member("shown", finding.shown);
    json.member("expected", finding.expected);
    write_copies(json, "copies", finding.copies, finding.inside);
    write_copies(json, "stray", finding.stray);
    json.end_object();
}

void write_avoided(JsonWriter& json, const AvoidedFinding& finding) {
    json.begin_object();
    json.member("word", finding.word);
    write_copy(json, finding.copy);
    json.end_object();
}

void write_members(JsonWriter& json, const Audit& audit, Layout layout) {
    json.member("format", "letterlode-audit");
    json.member("version", 1);
    json.member("certified", audit.certified);
    if (audit.cut_short) json.member("cut_short", true);
    write_each(json, "words", layout, audit.words, write_finding);
    write_strings(json, "missing", audit.missing);
    write_each(json, "avoided", layout, audit.avoided, write_avoided);
    write_each(json, "allowed", layout, audit.allowed, write_avoided);
    write_each(json, "chance", layout, audit.chance, write_avoided);
}

void write_mask(JsonWriter& json, const Mask& mask, Layout layout) {
    json.name("mask");
    json.begin_array(layout);
    for (int row = 0; row < mask.size().rows; ++row) {
        std::string line;
        for (int column = 0; column < mask.size().columns; ++column)
            line += mask.open({row, column}) ? 'O' : '.';
        json.string(line);
    }
    json.end_array();
}

void write_directions(JsonWriter& json, Directions directions) {
    json.name("directions");
    json.begin_array();
    for (const Direction direction : all_directions)
        if (directions.contains(direction)) json.string(name(direction));
    json.end_array();
}

void write_pin(JsonWriter& json, const Pin& pin) {
    json.begin_object();
    json.member("word", pin.word);
    write_placement(json, pin.placed);
    json.end_object();
}

void write_crossings(JsonWriter& json, const Crossings& crossings) {
    json.name("crossings");
    json.begin_object();
    if (crossings.least > 0) json.member("least", crossings.least);
    if (crossings.most) json.member("most", *crossings.most);
    json.end_object();
}

void write_weights(JsonWriter& json, const DirectionWeights& weights) {
    json.name("shares");
    json.begin_object();
    for (const Direction direction : all_directions)
        if (const auto weight = weights[static_cast<unsigned>(direction)]; weight > 0)
            json.member(name(direction), weight);
    json.end_object();
}

void write_earlier(JsonWriter& json, const Earlier& earlier, Layout layout) {
    json.name("earlier");
    json.begin_object();
    write_each(json, "words", layout, earlier.words, write_pin);
    if (!earlier.filler.empty()) write_strings(json, "filler", earlier.filler);
    json.end_object();
}

void write_letter_counts(JsonWriter& json, const std::vector<LetterCount>& counts) {
    json.name("letter_counts");
    json.begin_object();
    for (const auto& [letter, count] : counts) json.member(letter, count);
    json.end_object();
}

// Where a word has a band of its own.
void write_bands(JsonWriter& json, const WordLines& words, Layout layout) {
    const auto has_band = [](const ListedWord& word) { return !word.band.empty(); };
    if (std::none_of(words.words.begin(), words.words.end(), has_band)) return;
    json.name("bands");
    json.begin_array(layout);
    for (const auto& word : words.words) {
        if (!has_band(word)) continue;
        json.begin_object();
        json.member("word", word.shown);
        json.member("band", word.band);
        json.end_object();
    }
    json.end_array();
}

// Only rules that are not the common ones are written.
void write_text_rules(JsonWriter& json, const TextRules& text) {
    if (text.digraphs != Digraphs::join) json.member("digraphs", name(text.digraphs));
    if (text.sharp_s) json.member("sharp_s", name(*text.sharp_s));
    if (text.marks != Marks::keep) json.member("marks", name(text.marks));
    if (text.finals != Finals::keep) json.member("finals", name(text.finals));
}

// Only what is demanded is written.
void write_demands(JsonWriter& json, const Recipe& recipe, Layout layout) {
    if (recipe.nested != Nested::inside) json.member("nested", name(recipe.nested));
    if (recipe.crossings.least > 0 || recipe.crossings.most) write_crossings(json, recipe.crossings);
    if (recipe.spacing > 0) json.member("spacing", recipe.spacing);
    if (recipe.leftover) json.member("leftover", *recipe.leftover);
    if (!recipe.message.empty()) json.member("message", recipe.message);
    if (recipe.filler_after_message) json.member("message_then", "filler");
    if (recipe.filler != FillerWay::words) json.member("filler", name(recipe.filler));
    if (!recipe.letter_counts.empty()) write_letter_counts(json, recipe.letter_counts);
    if (recipe.longest_run != default_longest_run) json.member("longest_run", recipe.longest_run);
    if (recipe.look_alikes_apart) json.member("look_alikes", "apart");
    if (!recipe.pins.empty()) write_each(json, "pins", layout, recipe.pins, write_pin);
    if (recipe.equal_shares) json.member("shares", "equal");
    if (recipe.weights) write_weights(json, *recipe.weights);
    if (recipe.most_backward) json.member("backward", *recipe.most_backward);
    if (recipe.choices != 1) json.member("choices", recipe.choices);
    if (recipe.earlier) write_earlier(json, *recipe.earlier, layout);
}

void write_grid(JsonWriter& json, const Recipe& recipe, Layout layout) {
    if (recipe.size) {
        const auto [rows, columns] = *recipe.size;
        json.member("grid", std::to_string(columns) + "x" + std::to_string(rows));
    } else {
        json.member("grid", recipe.tight ? "tight" : "auto");
        json.name("aspect");
        json.json(json_number(recipe.aspect));
    }
    if (recipe.mask)
        write_mask(json, *recipe.mask, layout);
    else
        json.member("shape", name(recipe.shape));
    if (recipe.directions) write_directions(json, *recipe.directions);
}

void write_members(JsonWriter& json, const Recipe& recipe, Layout layout) {
    json.name("words");
    json.begin_array();
    for (const auto& word : recipe.words.words) json.string(word.shown);
    json.end_array();
    json.member("locale", recipe.text.locale);
    json.member("letters", name(recipe.text.letters));
    write_bands(json, recipe.words, layout);
    write_text_rules(json, recipe.text);
    write_grid(json, recipe, layout);
    json.member("seed", recipe.seed);
    json.member("default_avoid_list", recipe.default_avoid_list);
    write_strings(json, "avoid", recipe.avoid);
    write_strings(json, "allow", recipe.allow);
    write_demands(json, recipe, layout);
    json.member("effort", recipe.effort);
}

void write_cells(JsonWriter& json, const LetteredGrid& grid, Layout layout) {
    json.name("cells");
    json.begin_array(layout);
    for (int row = 0; row < grid.grid.size().rows; ++row) {
        json.begin_array();
        for (int column = 0; column < grid.grid.size().columns; ++column) {
            const Letter letter = grid.grid[{row, column}];
            if (letter == closed_cell)
                json.json("null");
            else
                json.string(grid.alphabet.text(letter));
        }
        json.end_array();
    }
    json.end_array();
}

void write_word(JsonWriter& json, const PlacedWord& word) {
    json.begin_object();
    json.member("shown", word.shown);
    write_strings(json, "letters", word.letters);
    json.name("placed");
    json.begin_object();
    write_placement(json, word.placed);
    json.end_object();
    if (!word.inside.empty()) json.member("inside", word.inside);
    json.end_object();
}

void write_members(JsonWriter& json, const Puzzle& puzzle, Layout layout) {
    json.member("format", "letterlode-puzzle");
    json.member("version", 1);
    json.name("recipe");
    json.begin_object();
    write_members(json, puzzle.recipe, Layout::one_line);
    json.end_object();
    json.member("rows", puzzle.grid.grid.size().rows);
    json.member("columns", puzzle.grid.grid.size().columns);
    write_cells(json, puzzle.grid, layout);
    write_each(json, "words", layout, puzzle.words, write_word);
    json.name("audit");
    json.begin_object();
    write_members(json, puzzle.audit, Layout::one_line);
    json.end_object();
}

// So many bytes are about what a puzzle takes: more cost time alone.
std::size_t room_for(const Puzzle& puzzle) {
    return 1'000 + 4 * puzzle.grid.grid.size().cells() + 300 * puzzle.words.size();
}

template <class Value>
std::string document(const Value& value, std::size_t room) {
    JsonWriter json(room);
    json.begin_object(Layout::lines);
    write_members(json, value, Layout::lines);
    json.end_object();
    return json.take();
}

}  // namespace

std::string to_json(const Puzzle& puzzle) {
    return document(puzzle, room_for(puzzle));
}

std::string to_json(std::span<const Puzzle> choices) {
    JsonWriter json(choices.empty() ? 0 : choices.size() * room_for(choices.front()));
    json.begin_object(Layout::lines);
    json.member("format", "letterlode-choices");
    json.member("version", 1);
    write_each(json, "puzzles", Layout::lines, choices, [](JsonWriter& into, const Puzzle& puzzle) {
        into.begin_object();
        write_members(into, puzzle, Layout::one_line);
        into.end_object();
    });
    json.end_object();
    return json.take();
}

std::string to_json(const Audit& audit) {
    return document(audit, 0);
}

std::string to_json(const Recipe& recipe) {
    return document(recipe, 0);
}

std::string to_json(const Refusal& refusal) {
    const std::string_view reason = refusal.reason == Refusal::Reason::impossible   ? "impossible"
                                    : refusal.reason == Refusal::Reason::unfinished ? "unfinished"
                                                                                    : "unusable";
    JsonWriter json(0);
    json.begin_object(Layout::lines);
    json.member("format", "letterlode-refusal");
    json.member("version", 1);
    json.member("reason", reason);
    json.member("message", refusal.message);
    write_strings(json, "words", refusal.words);
    write_each(json, "advice", Layout::lines, refusal.advice,
               [](JsonWriter& into, const std::string& advice) { into.string(advice); });
    if (!refusal.source.empty()) json.member("source", refusal.source);
    if (refusal.line > 0) json.member("line", refusal.line);
    if (refusal.position > 0) json.member("position", refusal.position);
    json.end_object();
    return json.take();
}

}  // namespace lode
