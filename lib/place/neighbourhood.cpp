// Large neighbourhood search (Shaw, "Using constraint programming and local search methods to solve vehicle
// routing problems", CP 1998): a round lifts the words that stand about a random cell and looks, depth first
// and for a few dozen placements only, for another way to put them and the words that are out. Whatever
// leaves no more letters out than before is taken, so that the grid keeps changing without getting worse. In
// the small search the next word is the one with the fewest candidates for its weight, a word's weight being
// how often it was left with none, and its candidates go by how many letters they share with what stands:
// above a density of 1 room is won by sharing alone. On 12x12 at density 1.1 the random ejection of single
// words, restarts from scratch of the complete search, and annealing with clashes allowed solved a half to
// two thirds of the tasks within the effort in which this solves all but a few. Judged by
// tests/place_test.cpp.

#include "place/neighbourhood.hpp"

#include <algorithm>
#include <limits>
#include <numeric>

namespace lode {
namespace {

constexpr std::uint64_t nodes_per_start = 1'000;
constexpr std::uint64_t nodes_per_round = 50;
constexpr std::uint64_t rounds_until_restart = 1'000;
constexpr std::uint32_t least_near = 7;
constexpr std::uint32_t near_choices = 3;
// One round in so many may leave a few letters more out: a way out of a corner.
constexpr std::uint32_t rounds_per_slip = 50;
constexpr std::uint32_t slip_letters = 3;

}  // namespace

NeighbourhoodSearch::NeighbourhoodSearch(const PlaceTask& task, Candidates& candidates, Random& random,
                                         Effort& effort)
    : task_(task),
      candidates_(candidates),
      random_(random),
      effort_(effort),
      operations_(block_operations()),
      position_(task, candidates),
      weight_(task.words.size(), 1),
      failed_(task.words.size(), 0),
      before_(task.words.size()),
      sets_(task.words.size() + 1, std::vector<Block>(candidates.blocks())),
      counts_(task.words.size() + 1, std::vector<std::uint32_t>(task.words.size())) {}

std::size_t NeighbourhoodSearch::count_letters_out() const {
    std::size_t letters = 0;
    for (std::uint32_t word = 0; word < task_.words.size(); ++word)
        if (!position_.at(word)) letters += task_.words[word].size();
    return letters;
}

void NeighbourhoodSearch::restart() {
    for (std::uint32_t word = 0; word < task_.words.size(); ++word)
        if (position_.at(word)) position_.lift(word);
    std::fill(weight_.begin(), weight_.end(), 1);
    is_fresh_ = true;
    idle_ = 0;
    letters_out_ = count_letters_out();
}

void NeighbourhoodSearch::choose_all() {
    chosen_.resize(task_.words.size());
    std::iota(chosen_.begin(), chosen_.end(), 0u);
}

// The words that are out, and those that stand nearest to the cell, give or take some chance.
void NeighbourhoodSearch::choose_near(Cell centre) {
    constexpr int unit = 16;
    const int columns = task_.mask.size().columns;
    chosen_.clear();
    std::vector<std::pair<int, std::uint32_t>> near;
    for (std::uint32_t word = 0; word < task_.words.size(); ++word) {
        if (!position_.at(word)) {
            chosen_.push_back(word);
            continue;
        }
        int distance = std::numeric_limits<int>::max();
        for (const std::uint32_t index : candidates_.cells(*position_.at(word))) {
            const int cell = static_cast<int>(index);
            distance = std::min(distance, std::max(std::abs(cell / columns - centre.row),
                                                   std::abs(cell % columns - centre.column)));
        }
        near.emplace_back(distance * unit + static_cast<int>(random_.below(3 * unit)), word);
    }
    const std::size_t count = std::min<std::size_t>(near.size(), least_near + random_.below(near_choices));
    std::partial_sort(near.begin(), near.begin() + static_cast<std::ptrdiff_t>(count), near.end());
    for (std::size_t at = 0; at < count; ++at) chosen_.push_back(near[at].second);
}

void NeighbourhoodSearch::lift_chosen() {
    for (const std::uint32_t word : chosen_) {
        before_[word] = position_.at(word);
        if (position_.at(word)) position_.lift(word);
    }
}

// As they stood before the round.
void NeighbourhoodSearch::put_back() {
    for (const std::uint32_t word : chosen_)
        if (position_.at(word)) position_.lift(word);
    // They stood together before, so each finds its place again; one that did not would be out, as place
    // leaves it.
    for (const std::uint32_t word : chosen_)
        if (before_[word]) (void)position_.place(*before_[word]);
}

// What the words that stay leave of the candidates of those to come.
void NeighbourhoodSearch::start_sets() {
    Block* const set = sets_[0].data();
    for (const std::uint32_t word : to_come_) {
        const auto [first, count] = candidates_.runs()[word];
        std::copy_n(candidates_.all().begin() + first, count, set + first);
    }
    const auto cells = static_cast<std::uint32_t>(task_.mask.size().cells());
    for (std::uint32_t cell = 0; cell < cells; ++cell) {
        if (!position_.is_written(cell)) continue;
        const Block* left = candidates_.left_by(cell, position_.letter(cell));
        for (const std::uint32_t word : to_come_) {
            const auto [first, count] = candidates_.runs()[word];
            operations_.meet(set + first, set + first, left + first, count);
        }
    }
    rule(set);
}

void NeighbourhoodSearch::narrow(std::size_t depth) {
    const Block* const from = sets_[depth].data();
    Block* const to = sets_[depth + 1].data();
    for (const std::uint32_t word : to_come_) {
        const auto [first, count] = candidates_.runs()[word];
        const Block* set = from + first;
        if (position_.written().empty()) std::copy_n(set, count, to + first);
        for (const std::uint32_t cell : position_.written()) {
            operations_.meet(to + first, set, candidates_.left_by(cell, position_.letter(cell)) + first,
                             count);
            set = to + first;
        }
    }
    for (const Candidate candidate : position_.foretold()) keep_only(to, candidates_, candidate);
    rule(to);
}

void NeighbourhoodSearch::rule(Block* set) {
    position_.each_ruling([&](const Block* left) {
        for (const std::uint32_t word : to_come_) {
            const auto [first, count] = candidates_.runs()[word];
            operations_.meet(set + first, set + first, left + first, count);
        }
    });
}

NeighbourhoodSearch::Settled NeighbourhoodSearch::leave_out(std::size_t depth, std::size_t at,
                                                            std::size_t letters_out) {
    const std::uint32_t word = to_come_[at];
    ++weight_[word];
    ++failed_[word];
    letters_out += task_.words[word].size();
    if (letters_out > letters_allowed_) return Settled::no;
    std::swap(to_come_[at], to_come_.back());
    to_come_.pop_back();
    const Settled settled = settle(depth, letters_out);
    to_come_.push_back(word);
    std::swap(to_come_[at], to_come_.back());
    return settled;
}

NeighbourhoodSearch::Settled NeighbourhoodSearch::settle(std::size_t depth, std::size_t letters_out) {
    if (to_come_.empty()) return Settled::yes;
    if (nodes_ >= nodes_limit_) return Settled::limit;
    auto& counts = counts_[depth];
    operations_.count_runs(sets_[depth].data(), candidates_.runs().data(), to_come_, counts.data());
    std::size_t next = 0;
    for (std::size_t at = 0; at < to_come_.size(); ++at) {
        if (counts[at] == 0) return leave_out(depth, at, letters_out);
        if (counts[at] * weight_[to_come_[next]] < counts[next] * weight_[to_come_[at]]) next = at;
    }
    const std::uint32_t word = to_come_[next];
    std::swap(to_come_[next], to_come_.back());
    to_come_.pop_back();
    const Settled settled = try_candidates(depth, word, letters_out);
    to_come_.push_back(word);
    std::swap(to_come_[next], to_come_.back());
    return settled;
}

NeighbourhoodSearch::Settled NeighbourhoodSearch::try_candidates(std::size_t depth, std::uint32_t word,
                                                                 std::size_t letters_out) {
    constexpr std::uint64_t chances = 1 << 10;
    const std::size_t length = task_.words[word].size();
    std::vector<std::pair<std::uint64_t, Candidate>> choices;
    const bool is_plain = position_.is_plain(word);
    bool is_spelled = false;
    each_bit(sets_[depth].data(), candidates_.runs()[word], [&](Candidate candidate) {
        const std::size_t overlap = position_.overlap(candidate);
        // A word that others spell already must stand there: anywhere else it would stand a second time.
        // Unless others hold it: then the copy may be theirs.
        if (is_plain && overlap == length && !is_spelled) choices.clear();
        is_spelled = is_spelled || (is_plain && overlap == length);
        if (!is_spelled || overlap == length)
            choices.emplace_back(
                (length - overlap) * chances + random_.below(static_cast<std::uint32_t>(chances)), candidate);
    });
    std::sort(choices.begin(), choices.end());
    for (const auto& [key, candidate] : choices) {
        if (nodes_ >= nodes_limit_ || !effort_.spend(steps_per_node(candidates_))) return Settled::limit;
        ++nodes_;
        if (!position_.place(candidate)) continue;
        narrow(depth);
        const Settled settled = settle(depth + 1, letters_out);
        if (settled == Settled::yes) return settled;
        position_.lift(word);
        if (settled == Settled::limit) return settled;
    }
    return Settled::no;
}

SearchEnd NeighbourhoodSearch::search(std::uint64_t most_nodes) {
    const std::uint64_t stop = nodes_ + most_nodes;
    if (is_fresh_) letters_out_ = count_letters_out();
    while (nodes_ < stop) {
        if (!effort_.spend(3 * steps_per_node(candidates_))) return SearchEnd::limit;
        ++nodes_;  // a round costs something even where nothing can be placed
        const Size size = task_.mask.size();
        if (is_fresh_)
            choose_all();
        else
            choose_near({static_cast<int>(random_.below(static_cast<std::uint32_t>(size.rows))),
                         static_cast<int>(random_.below(static_cast<std::uint32_t>(size.columns)))});
        lift_chosen();
        to_come_ = chosen_;
        start_sets();
        letters_allowed_ = letters_out_;
        if (random_.below(rounds_per_slip) == 0) letters_allowed_ += random_.below(slip_letters);
        nodes_limit_ = nodes_ + (is_fresh_ ? nodes_per_start : nodes_per_round);
        if (settle(0, 0) != Settled::yes) put_back();
        is_fresh_ = false;

        std::size_t out = count_letters_out();
        if (out == 0) {
            const auto wrong = position_.word_on_wrong_copy();
            if (!wrong) return SearchEnd::placed;
            position_.lift(*wrong);
            out = count_letters_out();
        }
        idle_ = out < letters_out_ ? 0 : idle_ + 1;
        letters_out_ = out;
        if (idle_ > rounds_until_restart) restart();
    }
    return SearchEnd::limit;
}

}  // namespace lode
