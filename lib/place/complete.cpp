// Depth first over words, the one with the fewest candidates left next. After each placement the sets of all
// other words are narrowed by the letters written (forward checking, Haralick and Elliott, "Increasing tree
// search efficiency for constraint satisfaction problems", Artificial Intelligence 14, 1980), and where a
// word has only a handful of candidates left, by what all of those rule out (arc consistency by bit sets, in
// the manner of Lecoutre and Vion, "Enforcing arc consistency using bitwise operations", Constraint
// Programming Letters 2, 2008; here only from words with few candidates, where it pays: on 7x7 with 12 words
// that do not fit, 5 times fewer nodes at twice the cost). The first word is tried in one place of each class
// of images under the symmetries of mask and directions. No restarts and no learnt weights: what is proved
// needs each case once. Judged by tests/place_test.cpp against brute force.

#include "place/complete.hpp"

#include <algorithm>
#include <limits>
#include <numeric>

#include "place/symmetry.hpp"

namespace lode {
namespace {

// Words with up to so many candidates narrow the others. Measured: 2 gives more nodes, 16 the same at a
// higher cost.
constexpr std::uint32_t few = 6;
// Where the sets of compatible candidates would take more than this, they are not made: making them again and
// again costs more than they save.
constexpr std::size_t most_compatible_bytes = 32u << 20;

}  // namespace

CompleteSearch::CompleteSearch(const PlaceTask& task, Candidates& candidates, Effort& effort)
    : task_(task),
      candidates_(candidates),
      effort_(effort),
      operations_(block_operations()),
      counting_(task, candidates),
      position_(task, candidates),
      sets_(task.words.size() + 1, std::vector<Block>(candidates.blocks())),
      counts_(task.words.size()),
      filtered_(task.words.size()),
      compatible_(candidates.blocks() * 64),
      joined_(candidates.blocks()),
      scratch_(candidates.blocks()),
      use_compatible_(candidates.blocks() * 64 * candidates.blocks() * sizeof(Block) <=
                      most_compatible_bytes) {}

std::vector<Block> CompleteSearch::start() const {
    std::vector<Block> set = candidates_.all();
    if (!task_.demands.are_symmetric()) return set;
    const auto longest = std::max_element(task_.words.begin(), task_.words.end(),
                                          [](const auto& a, const auto& b) { return a.size() < b.size(); });
    const auto word = static_cast<std::uint32_t>(longest - task_.words.begin());
    const BlockRun run = candidates_.runs()[word];
    std::fill_n(set.begin() + run.first, run.count, Block{0});
    for (const Candidate candidate : one_of_each_class(task_, candidates_, word))
        set[candidate / 64] |= Block{1} << (candidate % 64);
    return set;
}

SearchEnd CompleteSearch::search(std::uint64_t most_nodes) {
    if (task_.words.empty()) return judge_full();
    return search_in(start(), most_nodes);
}

bool CompleteSearch::visit_all(const std::function<void(const Position&)>& visit) {
    visit_ = visit;
    const SearchEnd end = search_in(candidates_.all(), std::numeric_limits<std::uint64_t>::max());
    visit_ = nullptr;
    return end == SearchEnd::exhausted;
}

SearchEnd CompleteSearch::search_in(std::vector<Block> set, std::uint64_t most_nodes) {
    for (std::uint32_t word = 0; word < task_.words.size(); ++word)
        if (position_.at(word)) position_.lift(word);
    constexpr std::uint64_t most_steps = std::numeric_limits<std::uint64_t>::max();
    const std::uint64_t per_node = steps_per_node(candidates_);
    steps_left_ = most_nodes > most_steps / per_node ? most_steps : most_nodes * per_node;
    order_.resize(task_.words.size());
    std::iota(order_.begin(), order_.end(), 0u);
    sets_[0] = std::move(set);
    rule(sets_[0]);
    return descend(0);
}

const Block* CompleteSearch::compatible_with(Candidate candidate) {
    auto& kept = compatible_[candidate];
    if (!kept.empty()) return kept.data();
    const Letters& letters = task_.words[candidates_.word(candidate)];
    const auto cells = candidates_.cells(candidate);
    const Block* first = candidates_.left_by(cells[0], letters[0]);
    std::copy_n(first, scratch_.size(), scratch_.begin());
    for (std::size_t at = 1; at < cells.size(); ++at)
        operations_.meet(scratch_.data(), scratch_.data(), candidates_.left_by(cells[at], letters[at]),
                         scratch_.size());
    kept = scratch_;
    return kept.data();
}

// Takes from all other words what no candidate of this word is compatible with.
void CompleteSearch::keep_compatible(Block* set, std::uint32_t word) {
    std::fill(joined_.begin(), joined_.end(), Block{0});
    const BlockRun own = candidates_.runs()[word];
    each_bit(set, own, [&](Candidate candidate) {
        operations_.join(joined_.data(), compatible_with(candidate), joined_.size());
    });
    // A word's candidates share cells with each other, and say nothing about themselves.
    std::fill_n(joined_.begin() + own.first, own.count, ~Block{0});
    operations_.meet(set, set, joined_.data(), joined_.size());
}

// Narrows until nothing changes; false where a word has no candidate left. Afterwards counts_ holds for
// order_.
bool CompleteSearch::filter(Block* set) {
    std::fill(filtered_.begin(), filtered_.end(), 0u);
    for (bool changed = true; changed;) {
        operations_.count_runs(set, candidates_.runs().data(), order_, counts_.data());
        changed = false;
        for (std::size_t at = 0; at < order_.size(); ++at) {
            if (counts_[at] == 0) return false;
            if (!use_compatible_ || counts_[at] > few || filtered_[order_[at]] == counts_[at]) continue;
            filtered_[order_[at]] = counts_[at];
            keep_compatible(set, order_[at]);
            changed = true;
        }
    }
    return true;
}

// The same and by counting, in turns until neither changes anything.
CompleteSearch::Filtered CompleteSearch::filter_and_count(std::size_t depth) {
    Block* const set = sets_[depth].data();
    for (;;) {
        if (!filter(set)) return Filtered::impossible;
        const std::uint64_t looks_before = counting_.looks();
        const auto verdict = counting_.narrow(set, order_);
        if (!spend(counting_.looks() - looks_before)) return Filtered::limit;
        if (verdict == LineCounting::Verdict::impossible) return Filtered::impossible;
        if (verdict == LineCounting::Verdict::unchanged) return Filtered::possible;
    }
}

bool CompleteSearch::spend(std::uint64_t steps) {
    if (steps > steps_left_ || !effort_.spend(steps)) return false;
    steps_left_ -= steps;
    return true;
}

// What the last placement leaves of the sets at a depth, one deeper.
void CompleteSearch::narrow(std::size_t depth) {
    const Block* from = sets_[depth].data();
    auto& to = sets_[depth + 1];
    if (position_.written().empty()) std::copy_n(from, to.size(), to.begin());
    for (const std::uint32_t cell : position_.written()) {
        operations_.meet(to.data(), from, candidates_.left_by(cell, position_.letter(cell)), to.size());
        from = to.data();
    }
    for (const Candidate candidate : position_.foretold()) keep_only(to.data(), candidates_, candidate);
    rule(to);
}

void CompleteSearch::rule(std::vector<Block>& set) {
    position_.each_ruling(
        [&](const Block* left) { operations_.meet(set.data(), set.data(), left, set.size()); });
}

SearchEnd CompleteSearch::try_candidate(std::size_t depth, Candidate candidate) {
    if (!spend(steps_per_node(candidates_))) return SearchEnd::limit;
    if (!position_.place(candidate)) return SearchEnd::exhausted;
    narrow(depth);
    const SearchEnd end = descend(depth + 1);
    if (end != SearchEnd::placed) position_.lift(candidates_.word(candidate));
    return end;
}

SearchEnd CompleteSearch::judge_full() {
    if (!position_.is_solution()) return SearchEnd::exhausted;
    if (!visit_) return SearchEnd::placed;
    visit_(position_);
    return SearchEnd::exhausted;
}

SearchEnd CompleteSearch::descend(std::size_t depth) {
    if (order_.empty()) return judge_full();
    const Filtered filtered = filter_and_count(depth);
    if (filtered != Filtered::possible)
        return filtered == Filtered::limit ? SearchEnd::limit : SearchEnd::exhausted;
    const auto least =
        std::min_element(counts_.begin(), counts_.begin() + static_cast<std::ptrdiff_t>(order_.size()));
    const auto at = static_cast<std::size_t>(least - counts_.begin());
    const std::uint32_t word = order_[at];
    std::swap(order_[at], order_.back());
    order_.pop_back();

    // Where words overlap most, most room is left.
    std::vector<std::pair<std::size_t, Candidate>> choices;
    each_bit(sets_[depth].data(), candidates_.runs()[word],
             [&](Candidate candidate) { choices.emplace_back(position_.overlap(candidate), candidate); });
    std::stable_sort(choices.begin(), choices.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    for (const auto& [overlap, candidate] : choices) {
        const SearchEnd end = try_candidate(depth, candidate);
        if (end != SearchEnd::exhausted) return end;
    }
    order_.push_back(word);
    std::swap(order_[at], order_.back());
    return SearchEnd::exhausted;
}

}  // namespace lode
