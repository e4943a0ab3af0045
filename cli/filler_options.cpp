#include "filler_options.hpp"

#include <algorithm>

#include <letterlode/files.hpp>

#include "choices.hpp"
#include "report.hpp"

namespace lode::cli {
namespace {

bool goes_by_language(FillerWay way) {
    return way == FillerWay::language || way == FillerWay::easy_weeding;
}

std::optional<Refusal> take_text(Recipe& recipe, const std::string& file) {
    const auto text = read_file(file);
    if (!text) return text.refusal();
    const auto whole = normalised(*text);
    const auto segmenter = Segmenter::open(recipe.text);
    if (!segmenter) return segmenter.refusal();
    recipe.letter_counts = count_letters(whole.value_or(""), *segmenter);
    if (recipe.letter_counts.empty())
        return unusable_value("filler-text", file,
                              whole ? "It holds no letter: give a text in the language of the words."
                                    : "It is no text in UTF-8.");
    return std::nullopt;
}

}  // namespace

void add_filler_options(po::options_description& options) {
    using Text = std::string;
    options.add_options()  //
        ("filler", offered_value("WAY", {.words = names_of(all_filler_ways)}),
         ("how often each letter comes between the words: " + enumerated(names_of(all_filler_ways)) +
          " (default words: as in the words, and every letter of the language now and then)")
             .c_str())  //
        ("filler-text", offered_value("FILE", {.files = true}),
         "a text to count the language's letters in; with --filler language, which it stands for, or "
         "easy-weeding")  //
        ("longest-run", po::value<Text>()->value_name("N"),
         "equal letters in a row at the most, in any direction, where one of them is filler (default 3); 0: "
         "any "
         "number")  //
        ("look-alikes", offered_value("WHERE", {.words = {"apart", "anywhere"}}),
         "apart: no filler letter beside one that it is easily taken for (O and Q, M and N); anywhere "
         "(default)");
}

Outcome<Recipe> with_filler_options(Recipe recipe, const Values& values) {
    if (values.has("filler")) {
        if (auto refusal = set_choice(recipe.filler, values, "filler", all_filler_ways))
            return std::move(*refusal);
        if (!goes_by_language(recipe.filler)) recipe.letter_counts.clear();
    }
    if (values.has("filler-text")) {
        if (!values.has("filler") && !goes_by_language(recipe.filler)) recipe.filler = FillerWay::language;
        if (!goes_by_language(recipe.filler))
            return unusable_value("filler-text", values.text("filler-text"),
                                  "Leave it out, or take --filler language: '" +
                                      std::string(name(recipe.filler)) + "' goes by the words alone.");
        if (auto refusal = take_text(recipe, values.text("filler-text"))) return std::move(*refusal);
    }
    if (values.has("longest-run")) {
        const auto run = whole_number("longest-run", values.text("longest-run"));
        if (!run) return run.refusal();
        recipe.longest_run = static_cast<std::uint32_t>(std::min<std::uint64_t>(*run, max_side));
    }
    if (values.has("look-alikes")) {
        const std::string where = values.text("look-alikes");
        if (where != "apart" && where != "anywhere")
            return unusable_value("look-alikes", where, "Give apart or anywhere.");
        recipe.look_alikes_apart = where == "apart";
    }
    return recipe;
}

void note_missing_letter_table(const Recipe& recipe) {
    if (goes_by_language(recipe.filler) && recipe.letter_counts.empty() &&
        !has_letter_table(recipe.text.locale) && recipe.text.locale != "root")
        say("note: there is no table of how often letters come in '" + recipe.text.locale +
            "': the filler goes by the words. --filler-text FILE counts a text.");
}

}  // namespace lode::cli
