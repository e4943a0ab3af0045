// Lists of puzzles.

#include "c/handles.hpp"

using namespace lode::c;

namespace {

std::vector<lode::Puzzle> copies_of(const lode_puzzles& list) {
    std::vector<lode::Puzzle> puzzles;
    for (const auto& one : list.puzzles) puzzles.push_back(one->puzzle);
    return puzzles;
}

}  // namespace

std::size_t lode_puzzles_count(const lode_puzzles* puzzles) {
    return puzzles ? puzzles->puzzles.size() : 0;
}

const lode_puzzle* lode_puzzles_at(const lode_puzzles* puzzles, std::size_t index) {
    const auto* one = puzzles ? at(puzzles->puzzles, index) : nullptr;
    return one ? one->get() : nullptr;
}

double lode_puzzles_fixations(const lode_puzzles* puzzles, std::size_t index) {
    const auto* fixations = puzzles ? at(puzzles->fixations, index) : nullptr;
    return fixations ? *fixations : 0;
}

std::size_t lode_puzzles_tried(const lode_puzzles* puzzles) {
    return puzzles ? puzzles->tried : 0;
}

std::size_t lode_puzzles_shared_places(const lode_puzzles* puzzles) {
    return puzzles ? puzzles->shared_places : 0;
}

std::int32_t lode_puzzles_rank(lode_puzzles** ranked, const lode_puzzles* puzzles, const char* aim,
                               lode_error** error) {
    clear(ranked);
    return guarded(__func__, error, [&] {
        auto& result = need(ranked, "ranked");
        const lode_puzzles& all = need(puzzles, "puzzles");
        std::optional<lode::Aim> nearest;
        if (aim) nearest = taken(lode::read_aim(word(aim, "aim")));
        auto order = taken(lode::rank_puzzles(copies_of(all), nearest));
        auto list = std::make_unique<lode_puzzles>();
        list->tried = all.tried;
        list->shared_places = all.shared_places;
        for (const lode::RankedPuzzle& one : order) {
            list->puzzles.push_back(all.puzzles[one.puzzle]);
            if (!all.fixations.empty()) list->fixations.push_back(all.fixations[one.puzzle]);
        }
        list->ranked = std::move(order);
        result = list.release();
        return LODE_OK;
    });
}

double lode_puzzles_score(const lode_puzzles* puzzles, std::size_t index) {
    const auto* ranked = puzzles ? at(puzzles->ranked, index) : nullptr;
    return ranked ? ranked->score : 0;
}

const char* lode_puzzles_reason(const lode_puzzles* puzzles, std::size_t index) {
    const auto* ranked = puzzles ? at(puzzles->ranked, index) : nullptr;
    return ranked ? ranked->reason.c_str() : nullptr;
}

std::int32_t lode_puzzles_json(const char** json, const lode_puzzles* puzzles, lode_error** error) {
    return give_kept(__func__, json, "json", puzzles, "puzzles", &lode_puzzles::json, error,
                     [](const lode_puzzles& its) { return lode::to_json(copies_of(its)); });
}

void lode_puzzles_free(lode_puzzles* puzzles) {
    delete puzzles;
}
