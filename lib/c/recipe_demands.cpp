// How a recipe's words are to stand.

#include "c/recipe_change.hpp"

using namespace lode::c;

std::int32_t lode_recipe_pin(lode_recipe* recipe, const char* given, std::int32_t row, std::int32_t column,
                             std::int32_t direction, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        std::string pinned = word(given, "word");
        const lode::Cell first{in_range(row, "row", 0, lode::max_side - 1),
                               in_range(column, "column", 0, lode::max_side - 1)};
        its.pins.push_back({std::move(pinned), {first, need_direction(direction)}});
    });
}

std::int32_t lode_recipe_clear_pins(lode_recipe* recipe, lode_error** error) {
    return changed(__func__, recipe, error, [](lode::Recipe& its) { its.pins.clear(); });
}

std::int32_t lode_recipe_set_crossings(lode_recipe* recipe, std::uint64_t least, std::uint64_t most,
                                       lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.crossings = {number_or_any(least).value_or(std::numeric_limits<std::size_t>::max()),
                         number_or_any(most)};
    });
}

std::int32_t lode_recipe_set_spacing(lode_recipe* recipe, std::int32_t cells, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.spacing =
            static_cast<std::uint32_t>(in_range<std::int64_t>(cells, "spacing", 0, lode::max_spacing));
    });
}

std::int32_t lode_recipe_set_leftover(lode_recipe* recipe, std::uint64_t cells, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) { its.leftover = number_or_any(cells); });
}

std::int32_t lode_recipe_set_equal_shares(lode_recipe* recipe, lode_error** error) {
    return changed(__func__, recipe, error, [](lode::Recipe& its) {
        its.equal_shares = true;
        its.weights.reset();
    });
}

std::int32_t lode_recipe_set_share(lode_recipe* recipe, std::int32_t direction, std::int32_t weight,
                                   lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        const auto place = static_cast<std::size_t>(need_direction(direction));
        const auto share = in_range<std::int64_t>(weight, "weight", 0, lode::max_weight);
        lode::DirectionWeights weights = its.weights.value_or(lode::DirectionWeights{});
        weights[place] = static_cast<std::uint32_t>(share);
        its.weights = weights;
        its.equal_shares = false;
    });
}

std::int32_t lode_recipe_clear_shares(lode_recipe* recipe, lode_error** error) {
    return changed(__func__, recipe, error, [](lode::Recipe& its) {
        its.equal_shares = false;
        its.weights.reset();
    });
}

std::int32_t lode_recipe_set_backward(lode_recipe* recipe, std::uint64_t words, lode_error** error) {
    return changed(__func__, recipe, error,
                   [&](lode::Recipe& its) { its.most_backward = number_or_any(words); });
}

std::int32_t lode_recipe_set_earlier(lode_recipe* recipe, const lode_puzzle* puzzle, std::int32_t keep_filler,
                                     lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.earlier = lode::earlier_of(need(puzzle, "puzzle").puzzle, keep_filler != 0);
    });
}

std::int32_t lode_recipe_clear_earlier(lode_recipe* recipe, lode_error** error) {
    return changed(__func__, recipe, error, [](lode::Recipe& its) { its.earlier.reset(); });
}
