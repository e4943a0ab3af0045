#include "c/control.hpp"
#include "c/making.hpp"
#include "c/range.hpp"

using namespace lode::c;

namespace {

std::shared_ptr<const lode_puzzle> shared_puzzle(lode::Puzzle puzzle) {
    return std::shared_ptr<const lode_puzzle>(new_puzzle(std::move(puzzle)));
}

std::vector<std::shared_ptr<const lode_puzzle>> shared_puzzles(std::vector<lode::Puzzle> puzzles) {
    std::vector<std::shared_ptr<const lode_puzzle>> shared;
    for (auto& puzzle : puzzles) shared.push_back(shared_puzzle(std::move(puzzle)));
    return shared;
}

}  // namespace

std::int32_t lode_maker_create(lode_maker** maker, lode_refusal** refusal, const lode_recipe* recipe,
                               lode_error** error) {
    return made_or_refused(__func__, maker, "maker", refusal, error, [&] {
        return given(lode::CheckedRecipe::open(need(recipe, "recipe").recipe),
                     [](lode::CheckedRecipe checked) { return new lode_maker{std::move(checked)}; });
    });
}

std::int32_t lode_maker_make(lode_puzzle** puzzle, lode_refusal** refusal, const lode_maker* maker,
                             std::uint64_t seed, const lode_control* control, lode_error** error) {
    return made_or_refused(__func__, puzzle, "puzzle", refusal, error, [&] {
        return given(need(maker, "maker").checked.make(seed, make_control(control)), new_puzzle);
    });
}

std::int32_t lode_maker_choices(lode_puzzles** puzzles, lode_refusal** refusal, const lode_maker* maker,
                                std::uint64_t first_seed, std::size_t count, const lode_control* control,
                                lode_error** error) {
    return made_or_refused(__func__, puzzles, "puzzles", refusal, error, [&] {
        const auto& checked = need(maker, "maker").checked;
        in_range<std::uint64_t>(count, "number of choices", 1, lode::max_choices);
        return given(lode::make_choices(checked, first_seed, count, make_control(control)),
                     [](std::vector<lode::Puzzle> choices) {
                         return new lode_puzzles{shared_puzzles(std::move(choices)), {}, 0, 0, {}, {}};
                     });
    });
}

std::int32_t lode_maker_versions(lode_puzzles** puzzles, lode_refusal** refusal, const lode_maker* maker,
                                 std::uint64_t first_seed, std::size_t count, const lode_control* control,
                                 lode_error** error) {
    return made_or_refused(__func__, puzzles, "puzzles", refusal, error, [&] {
        const auto& checked = need(maker, "maker").checked;
        in_range<std::uint64_t>(count, "number of versions", 1, lode::max_versions);
        return given(lode::make_versions(checked, first_seed, count, make_control(control)),
                     [](lode::Versions versions) {
                         return new lode_puzzles{shared_puzzles(std::move(versions.puzzles)),
                                                 std::move(versions.fixations),
                                                 versions.tried,
                                                 versions.shared_places,
                                                 {},
                                                 {}};
                     });
    });
}

void lode_maker_free(lode_maker* maker) {
    delete maker;
}
