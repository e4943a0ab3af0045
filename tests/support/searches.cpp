#include "support/searches.hpp"

#include <catch2/catch.hpp>

#include "place/chance.hpp"
#include "place/complete.hpp"
#include "place/cover.hpp"
#include "place/heat_bath.hpp"
#include "place/neighbourhood.hpp"
#include "place/sampling.hpp"
#include "support/brute_force.hpp"

namespace lode::test {
namespace {

using End = PlaceResult::End;

constexpr std::uint64_t many = 1'000'000;

// Of a search, or of the position that it came to.
template <class Found>
PlaceResult result_of(SearchEnd end, const Found& found) {
    if (end == SearchEnd::placed) return {End::placed, 0, found.placements(), found.finished_grid(), 0};
    return {end == SearchEnd::exhausted ? End::impossible : End::unfinished, 0, {}, {}, 0};
}

template <class Search>
std::optional<PlaceResult> found_by(const Task& task, std::uint64_t seed, std::uint64_t limit) {
    const TaskHolder holder(task);
    if (!Search::suits(holder.task())) return std::nullopt;
    Random random(seed);
    Effort effort(holder.task());
    Search search(holder.task(), random, effort);
    return result_of(search.search(limit), search);
}

void require_right(const Task& task, const PlaceResult& result, bool exists, const char* search) {
    const std::string fault = result.end == End::placed ? fault_in(task, result) : std::string();
    if (result.end == (exists ? End::placed : End::impossible) && fault.empty()) return;
    CAPTURE(text_of(task), search, static_cast<int>(result.end), exists, fault);
    REQUIRE(result.end == (exists ? End::placed : End::impossible));
    REQUIRE(fault == "");
}

}  // namespace

PlaceResult placed(const Task& task, std::uint64_t seed) {
    const TaskHolder holder(task);
    Random random(seed);
    return place(holder.task(), random);
}

PlaceResult by_sampling(const Task& task, std::uint64_t seed) {
    const TaskHolder holder(task);
    Random random(seed);
    Effort effort(holder.task());
    SamplingSearch search(holder.task(), random, effort);
    return result_of(search.search(many), search);
}

std::optional<PlaceResult> by_chance(const Task& task, std::uint64_t seed, std::uint64_t steps) {
    return found_by<ChanceSearch>(task, seed, steps);
}

std::optional<PlaceResult> by_heat_bath(const Task& task, std::uint64_t seed, std::uint64_t moves) {
    return found_by<HeatBathSearch>(task, seed, moves);
}

PlaceResult completely(const Task& task) {
    const TaskHolder holder(task);
    auto candidates = Candidates::list(holder.task());
    REQUIRE(candidates);
    Effort effort(holder.task());
    CompleteSearch search(holder.task(), *candidates, effort);
    return result_of(search.search(many), search.position());
}

std::optional<PlaceResult> by_cells(const Task& task, std::uint64_t seed) {
    const TaskHolder holder(task);
    if (!CoverSearch::suits(holder.task())) return std::nullopt;
    auto candidates = Candidates::list(holder.task());
    REQUIRE(candidates);
    Random random(seed);
    Effort effort(holder.task());
    CoverSearch search(holder.task(), *candidates, random, effort);
    return result_of(search.search(many), search.position());
}

PlaceResult by_neighbourhoods(const Task& task, std::uint64_t seed, std::uint64_t nodes) {
    const TaskHolder holder(task);
    auto candidates = Candidates::list(holder.task());
    REQUIRE(candidates);
    Random random(seed);
    Effort effort(holder.task());
    NeighbourhoodSearch search(holder.task(), *candidates, random, effort);
    return result_of(search.search(nodes), search.position());
}

bool agrees_with_brute_force(const Task& task, const PlaceResult& result) {
    const bool exists = has_solution(task);
    require_right(task, result, exists, "a search");
    return exists;
}

Agreement all_agree_with_brute_force(const Task& task, std::uint64_t seed) {
    Agreement agreement;
    agreement.exists = has_solution(task);
    require_right(task, placed(task, seed), agreement.exists, "all searches");
    const PlaceResult by_sampling = test::by_sampling(task, seed);
    agreement.sampling_decided = by_sampling.end != End::unfinished;
    if (agreement.sampling_decided) require_right(task, by_sampling, agreement.exists, "by sampling");
    require_right(task, completely(task), agreement.exists, "complete");
    if (const auto by_cells = test::by_cells(task, seed)) {
        agreement.is_cover = true;
        require_right(task, *by_cells, agreement.exists, "by cells");
    }
    // Not finding is no fault of it, but what it finds must be right.
    const PlaceResult found = by_neighbourhoods(task, seed, 500);
    agreement.neighbourhoods_found_it = found.end == End::placed;
    if (found.end != End::unfinished) require_right(task, found, agreement.exists, "by neighbourhoods");
    if (const auto by_chance = test::by_chance(task, seed, 2'000)) {
        agreement.suits_chance = true;
        agreement.chance_found_it = by_chance->end == End::placed;
        if (by_chance->end != End::unfinished) require_right(task, *by_chance, agreement.exists, "by chance");
    }
    if (const auto by_heat_bath = test::by_heat_bath(task, seed, 400)) {
        agreement.suits_heat_bath = true;
        agreement.heat_bath_found_it = by_heat_bath->end == End::placed;
        if (by_heat_bath->end != End::unfinished)
            require_right(task, *by_heat_bath, agreement.exists, "from the heat bath");
    }
    return agreement;
}

}  // namespace lode::test
