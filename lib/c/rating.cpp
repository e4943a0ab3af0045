#include "c/handles.hpp"

using namespace lode::c;

namespace {

const lode::RatingPart* part_of(const lode_rating* rating, std::int32_t about, std::size_t part) {
    if (!rating) return nullptr;
    if (about == LODE_READABILITY) return at(rating->rating.readability, part);
    if (about == LODE_DIFFICULTY) return at(rating->rating.difficulty.parts, part);
    return nullptr;
}

const lode::WordDifficulty* word_of(const lode_rating* rating, std::size_t word) {
    return rating ? at(rating->rating.difficulty.words, word) : nullptr;
}

}  // namespace

std::int32_t lode_rate_puzzle(lode_rating** rating, const lode_puzzle* puzzle, lode_error** error) {
    clear(rating);
    return guarded(__func__, error, [&] {
        auto& result = need(rating, "rating");
        result = new lode_rating{taken(lode::rate(need(puzzle, "puzzle").puzzle)), {}, {}};
        return LODE_OK;
    });
}

std::int32_t lode_rate_puzzle_as_seen(lode_rating** rating, const lode_puzzle* puzzle, const lode_seen* seen,
                                      lode_error** error) {
    clear(rating);
    return guarded(__func__, error, [&] {
        auto& result = need(rating, "rating");
        const lode::Puzzle& rated = need(puzzle, "puzzle").puzzle;
        result = new lode_rating{taken(lode::rate(rated, {{}, need(seen, "seen").seen})), {}, {}};
        return LODE_OK;
    });
}

std::int32_t lode_rate_grid_text(lode_rating** rating, const char* grid, const char* source,
                                 const lode_recipe* recipe, lode_error** error) {
    clear(rating);
    return guarded(__func__, error, [&] {
        auto& result = need(rating, "rating");
        const std::string_view drawn = text(grid, "grid");
        const lode::Recipe& rules = need(recipe, "recipe").recipe;
        const auto segmenter = taken(lode::Segmenter::open(rules.text));
        const auto lettered = taken(lode::read_grid(drawn, source_name(source), segmenter));
        result = new lode_rating{taken(lode::rate(lettered, rules)), {}, {}};
        return LODE_OK;
    });
}

double lode_rating_fixations(const lode_rating* rating) {
    return rating ? rating->rating.difficulty.fixations : 0;
}

const char* lode_rating_level(const lode_rating* rating) {
    return rating ? lode::name(rating->rating.difficulty.level).data() : nullptr;
}

std::size_t lode_rating_word_count(const lode_rating* rating) {
    return rating ? rating->rating.difficulty.words.size() : 0;
}

const char* lode_rating_word(const lode_rating* rating, std::size_t word) {
    const auto* rated = word_of(rating, word);
    return rated ? rated->shown.c_str() : nullptr;
}

double lode_rating_word_fixations(const lode_rating* rating, std::size_t word) {
    const auto* rated = word_of(rating, word);
    return rated ? rated->fixations : 0;
}

std::int32_t lode_rating_word_is_found(const lode_rating* rating, std::size_t word) {
    const auto* rated = word_of(rating, word);
    return rated && rated->is_found ? 1 : 0;
}

std::size_t lode_rating_part_count(const lode_rating* rating, std::int32_t about) {
    if (!rating) return 0;
    if (about == LODE_READABILITY) return rating->rating.readability.size();
    return about == LODE_DIFFICULTY ? rating->rating.difficulty.parts.size() : 0;
}

const char* lode_rating_part(const lode_rating* rating, std::int32_t about, std::size_t part) {
    const auto* rated = part_of(rating, about, part);
    return rated ? rated->part.c_str() : nullptr;
}

double lode_rating_part_value(const lode_rating* rating, std::int32_t about, std::size_t part) {
    const auto* rated = part_of(rating, about, part);
    return rated ? rated->value : 0;
}

const char* lode_rating_part_unit(const lode_rating* rating, std::int32_t about, std::size_t part) {
    const auto* rated = part_of(rating, about, part);
    return rated ? rated->unit.c_str() : nullptr;
}

const char* lode_rating_part_bound(const lode_rating* rating, std::int32_t about, std::size_t part) {
    const auto* rated = part_of(rating, about, part);
    if (!rated || !rated->threshold) return nullptr;
    return rated->is_most ? "most" : "least";
}

double lode_rating_part_threshold(const lode_rating* rating, std::int32_t about, std::size_t part) {
    const auto* rated = part_of(rating, about, part);
    return rated ? rated->threshold.value_or(0) : 0;
}

std::int32_t lode_rating_part_is_met(const lode_rating* rating, std::int32_t about, std::size_t part) {
    const auto* rated = part_of(rating, about, part);
    return rated && rated->is_met() ? 1 : 0;
}

const char* lode_rating_part_source(const lode_rating* rating, std::int32_t about, std::size_t part) {
    const auto* rated = part_of(rating, about, part);
    return rated ? rated->source.c_str() : nullptr;
}

const char* lode_rating_part_note(const lode_rating* rating, std::int32_t about, std::size_t part) {
    const auto* rated = part_of(rating, about, part);
    return rated ? rated->note.c_str() : nullptr;
}

std::int32_t lode_rating_json(const char** json, const lode_rating* rating, lode_error** error) {
    return give_kept(__func__, json, "json", rating, "rating", &lode_rating::json, error,
                     [](const lode_rating& its) { return lode::to_json(its.rating); });
}

std::int32_t lode_rating_text(const char** text, const lode_rating* rating, lode_error** error) {
    return give_kept(__func__, text, "text", rating, "rating", &lode_rating::text, error,
                     [](const lode_rating& its) { return lode::rating_text(its.rating); });
}

void lode_rating_free(lode_rating* rating) {
    delete rating;
}
