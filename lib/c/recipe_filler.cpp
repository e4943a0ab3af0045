// What stands between a recipe's words: a message, and filler.

#include "c/recipe_change.hpp"

using namespace lode::c;

std::int32_t lode_recipe_set_message(lode_recipe* recipe, const char* message, lode_error** error) {
    return changed(__func__, recipe, error,
                   [&](lode::Recipe& its) { its.message = word(message, "message"); });
}

std::int32_t lode_recipe_set_message_then(lode_recipe* recipe, const char* what, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.filler_after_message = one_of(what, "thing to follow a message", "filler", "nothing");
    });
}

std::int32_t lode_recipe_set_filler(lode_recipe* recipe, const char* way, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.filler = named(way, "way to choose filler", lode::filler_way_named, lode::all_filler_ways);
    });
}

std::int32_t lode_recipe_set_filler_text(lode_recipe* recipe, const char* given, const char* source,
                                         lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        const auto whole = lode::normalised(text(given, "text"));
        const auto segmenter = taken(lode::Segmenter::open(its.text));
        auto counts = lode::count_letters(whole.value_or(""), segmenter);
        if (counts.empty()) {
            const std::string name = source_name(source);
            const std::string fault = whole ? "there is no letter in it." : "this is no UTF-8 text.";
            throw Unusable{{lode::Refusal::Reason::unusable,
                            lode::place_in(name, 0) + fault,
                            {},
                            {"Give a text in the language of the words, as UTF-8."},
                            name,
                            0}};
        }
        its.letter_counts = std::move(counts);
    });
}

std::int32_t lode_recipe_set_letter_count(lode_recipe* recipe, const char* given, std::uint64_t count,
                                          lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        std::string letter = word(given, "letter");
        if (letter.empty()) refuse("The letter is an empty text.", "Name the letter that was counted.");
        in_range<std::uint64_t>(count, "letter count", 0, lode::max_letter_count);
        auto& counts = its.letter_counts;
        const auto known = std::find_if(counts.begin(), counts.end(),
                                        [&](const auto& counted) { return counted.letter == letter; });
        if (known != counts.end())
            known->count = count;
        else
            counts.push_back({std::move(letter), count});
    });
}

std::int32_t lode_recipe_clear_letter_counts(lode_recipe* recipe, lode_error** error) {
    return changed(__func__, recipe, error, [](lode::Recipe& its) { its.letter_counts.clear(); });
}

std::int32_t lode_recipe_set_longest_run(lode_recipe* recipe, std::int32_t letters, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.longest_run = static_cast<std::uint32_t>(in_range(letters, "longest run", 0, lode::max_side));
    });
}

std::int32_t lode_recipe_set_look_alikes(lode_recipe* recipe, const char* where, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.look_alikes_apart = one_of(where, "place for look-alikes", "apart", "anywhere");
    });
}
