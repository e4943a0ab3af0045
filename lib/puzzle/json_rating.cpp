// A rating as JSON.

#include <cmath>

#include <letterlode/puzzle.hpp>

#include "puzzle/json_text.hpp"

namespace lode {
namespace {

// To thousandths, which is more than any part is worth.
std::string number(double value) {
    return json_number(std::round(value * 1'000) / 1'000);
}

std::string part_json(const RatingPart& part) {
    JsonMembers members{
        {"part", json_string(part.part)}, {"value", number(part.value)}, {"unit", json_string(part.unit)}};
    if (part.threshold) {
        members.push_back({"threshold", number(*part.threshold)});
        members.push_back({"bound", json_string(part.is_most ? "most" : "least")});
    }
    members.push_back({"source", json_string(part.source)});
    if (!part.note.empty()) members.push_back({"note", json_string(part.note)});
    return json_object(members);
}

std::string parts_json(const std::vector<RatingPart>& parts) {
    std::vector<std::string> all;
    for (const auto& part : parts) all.push_back(part_json(part));
    return json_array_in_lines(all);
}

}  // namespace

std::string to_json(const Rating& rating) {
    std::vector<std::string> words;
    for (const auto& word : rating.difficulty.words)
        words.push_back(json_object({{"shown", json_string(word.shown)},
                                     {"fixations", number(word.fixations)},
                                     {"found", json_bool(word.is_found)}}));
    return json_document({{"format", json_string("letterlode-rating")},
                          {"version", "1"},
                          {"readability", parts_json(rating.readability)},
                          {"difficulty", json_object({{"fixations", number(rating.difficulty.fixations)},
                                                      {"level", json_string(name(rating.difficulty.level))},
                                                      {"words", json_array_in_lines(words)},
                                                      {"parts", parts_json(rating.difficulty.parts)}})}});
}

}  // namespace lode
