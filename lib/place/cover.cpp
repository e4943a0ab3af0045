// Where the number of cells to cover is given, a cell that must be covered is as good a place to branch as a word:
// the next is whichever has the fewest candidates for its weight, as in exact cover (Knuth, "Dancing links", 2000).
// Letters beyond the cells to cover must fall on letters: that budget, and the cells that may stay uncovered, rule out
// candidates that overlap too much or leave too many holes. Restarts by Luby's lengths, weights of what failed.
// Judged by tests/demands_test.cpp against brute force.

#include "place/cover.hpp"

#include <algorithm>
#include <bit>
#include <limits>
#include <numeric>

#include "random/luby.hpp"
#include "place/symmetry.hpp"

namespace lode {
namespace {

// Steps of the shortest run, in candidates tried. 100 and 1,000 took longer on tasks of 8x8 and 10x10.
constexpr std::uint64_t tries_per_run = 300;
constexpr double most_bytes = 64.0 * 1024 * 1024;

std::size_t count_letters(const PlaceTask& task) {
    std::size_t letters = 0;
    for (const Letters& word : task.words) letters += word.size();
    return letters;
}

// Where words may not cross, each letter has a cell of its own.
std::size_t cells_to_cover(const PlaceTask& task) {
    return task.demands.leftover ? task.mask.open_count() - *task.demands.leftover : count_letters(task);
}

// How many bits of the set each word, or each cell, has. The bodies stand once and are compiled for two kinds
// of machine, as in blocks.cpp.
[[gnu::always_inline]] inline std::uint32_t count_common(const Block* a, const Block* b, std::size_t count) {
    int bits = 0;
    for (std::size_t at = 0; at < count; ++at) bits += std::popcount(a[at] & b[at]);
    return static_cast<std::uint32_t>(bits);
}
[[gnu::always_inline]] inline void count_words_body(const CoverTables& tables, const Block* set,
                                                    std::span<const std::uint32_t> words,
                                                    std::uint32_t* counts) {
    for (std::size_t at = 0; at < words.size(); ++at)
        counts[at] = count_common(set, tables.of_word(words[at]), tables.blocks());
}
[[gnu::always_inline]] inline void count_cells_body(const CoverTables& tables, const Block* set,
                                                    std::span<const std::uint32_t> cells,
                                                    std::uint32_t* counts) {
    for (std::size_t at = 0; at < cells.size(); ++at) {
        std::uint32_t count = 0;
        for (const auto& part : tables.parts(cells[at]))
            count += count_common(set + part.first, tables.covering(part), part.count);
        counts[at] = count;
    }
}

struct Counting {
    using Count = void (*)(const CoverTables&, const Block*, std::span<const std::uint32_t>, std::uint32_t*);
    Count words;
    Count cells;
};
void count_words(const CoverTables& tables, const Block* set, std::span<const std::uint32_t> words,
                 std::uint32_t* counts) {
    count_words_body(tables, set, words, counts);
}
void count_cells(const CoverTables& tables, const Block* set, std::span<const std::uint32_t> cells,
                 std::uint32_t* counts) {
    count_cells_body(tables, set, cells, counts);
}
#if defined(__x86_64__)
[[gnu::target("avx2,popcnt")]] void count_words_avx2(const CoverTables& tables, const Block* set,
                                                     std::span<const std::uint32_t> words,
                                                     std::uint32_t* counts) {
    count_words_body(tables, set, words, counts);
}
[[gnu::target("avx2,popcnt")]] void count_cells_avx2(const CoverTables& tables, const Block* set,
                                                     std::span<const std::uint32_t> cells,
                                                     std::uint32_t* counts) {
    count_cells_body(tables, set, cells, counts);
}
#endif
Counting counting() {
#if defined(__x86_64__)
    if (__builtin_cpu_supports("avx2") && __builtin_cpu_supports("popcnt"))
        return {count_words_avx2, count_cells_avx2};
#endif
    return {count_words, count_cells};
}

}  // namespace

bool CoverSearch::suits(const PlaceTask& task) {
    const Demands& demands = task.demands;
    if (demands.spacing > 0 || (!demands.leftover && demands.may_cross())) return false;
    if (demands.leftover && *demands.leftover > task.mask.open_count()) return false;
    const auto levels = static_cast<double>((task.words.size() + 1) * (most_overlap + 1));
    const double blocks = static_cast<double>(task.mask.size().cells() * task.words.size()) / 8 + 64;
    return CoverTables::bytes_needed(task) + levels * blocks * sizeof(Block) <= most_bytes;
}

CoverSearch::CoverSearch(const PlaceTask& task, Candidates& candidates, Random& random, Effort& effort)
    : task_(task),
      candidates_(candidates),
      random_(random),
      effort_(effort),
      to_cover_(cells_to_cover(task)),
      letters_(count_letters(task)),
      may_share_(task.demands.may_cross() && letters_ > to_cover_),
      tables_(task, candidates, may_share_),
      position_(task, candidates),
      steps_per_try_(2 + task.words.size() * tables_.blocks() / 256),
      spare_(task.mask.open_count() - std::min(to_cover_, task.mask.open_count())),
      levels_(task.words.size() + 1),
      counts_(std::max(task.words.size(), task.mask.size().cells())),
      word_weight_(task.words.size(), 1),
      cell_weight_(task.mask.size().cells(), 1) {
    const std::size_t overlaps = may_share_ ? std::min(most_overlap, letters_ - to_cover_ + 1) : 0;
    for (Level& level : levels_) {
        level.set.resize(tables_.blocks());
        level.overlaps.assign(overlaps, std::vector<Block>(tables_.blocks()));
    }
    const Size size = task.mask.size();
    for (int row = 0; row < size.rows; ++row)
        for (int column = 0; column < size.columns; ++column)
            if (task.mask.open({row, column}))
                open_cells_.push_back(static_cast<std::uint32_t>(row * size.columns + column));
}

void CoverSearch::Fewest::look_at(std::size_t which, std::uint64_t count_there, std::uint64_t weight_there) {
    if (weight != 0 && count_there * weight >= count * weight_there) return;
    at = which;
    count = count_there;
    weight = weight_there;
}

bool CoverSearch::Fewest::is_before(const Fewest& other) const {
    return weight != 0 && count * other.weight <= other.count * weight;
}

std::vector<Block> CoverSearch::start() const {
    std::vector<Block> set = tables_.all();
    if (!task_.demands.are_symmetric()) return set;
    const auto longest = std::max_element(task_.words.begin(), task_.words.end(),
                                          [](const auto& a, const auto& b) { return a.size() < b.size(); });
    const auto word = static_cast<std::uint32_t>(longest - task_.words.begin());
    for (std::size_t block = 0; block < set.size(); ++block) set[block] &= ~tables_.of_word(word)[block];
    for (const Candidate candidate : one_of_each_class(task_, candidates_, word)) {
        const std::uint32_t number = tables_.number(candidate);
        set[number / 64] |= Block{1} << (number % 64);
    }
    return set;
}

SearchEnd CoverSearch::search(std::uint64_t most_nodes) {
    if (letters_ < to_cover_ || to_cover_ > open_cells_.size()) return SearchEnd::exhausted;
    if (!task_.demands.may_cross() && letters_ != to_cover_) return SearchEnd::exhausted;
    if (task_.words.empty()) return position_.is_solution() ? SearchEnd::placed : SearchEnd::exhausted;
    constexpr std::uint64_t most = std::numeric_limits<std::uint64_t>::max();
    std::uint64_t left = most_nodes > most / steps_per_try_ ? most : most_nodes * steps_per_try_;
    // One half in short runs, which find; the other in one that may be long enough to prove.
    const std::uint64_t for_proof = left / 2;
    levels_[0].set = start();
    const std::vector<Block> first_set = levels_[0].set;
    for (auto& overlaps : levels_[0].overlaps) std::fill(overlaps.begin(), overlaps.end(), Block{0});
    while (left > 0) {
        const std::uint64_t short_run = luby(++runs_) * tries_per_run * steps_per_try_;
        const std::uint64_t steps = left > for_proof ? std::min(short_run, left - for_proof) : left;
        levels_[0].set = first_set;
        const SearchEnd end = run(steps);
        if (end != SearchEnd::limit || effort_.is_spent()) return end;
        left -= steps;
    }
    return SearchEnd::limit;
}

SearchEnd CoverSearch::run(std::uint64_t most_steps) {
    for (std::uint32_t word = 0; word < task_.words.size(); ++word)
        if (position_.at(word)) position_.lift(word);
    order_.resize(task_.words.size());
    std::iota(order_.begin(), order_.end(), 0u);
    cells_left_ = to_cover_;
    overlaps_left_ = letters_ - to_cover_;
    steps_left_ = most_steps;
    return descend(0);
}

// Takes out what covers more written cells than there are overlaps left, and what covers more new ones than
// there are cells to cover.
bool CoverSearch::keep_what_fits(Level& level) {
    const std::size_t blocks = level.set.size();
    if (overlaps_left_ < level.overlaps.size()) {
        const auto& too_many = level.overlaps[overlaps_left_];
        for (std::size_t block = 0; block < blocks; ++block) level.set[block] &= ~too_many[block];
    }
    for (const std::uint32_t word : order_) {
        const std::size_t length = task_.words[word].size();
        if (length <= cells_left_) continue;
        const std::size_t least = length - cells_left_;
        if (level.overlaps.empty()) return false;
        const auto& enough = level.overlaps[std::min(least, level.overlaps.size()) - 1];
        const Block* const own = tables_.of_word(word);
        for (std::size_t block = 0; block < blocks; ++block) level.set[block] &= ~own[block] | enough[block];
    }
    return true;
}

// Whether the words to come, each where it covers the fewest written cells, do not need more overlaps than
// are left.
bool CoverSearch::overlap_enough(const Level& level) {
    std::size_t needed = 0;
    for (const std::uint32_t word : order_) {
        const Block* const own = tables_.of_word(word);
        for (const auto& more : level.overlaps) {
            bool is_any = false;
            for (std::size_t block = 0; block < more.size() && !is_any; ++block)
                is_any = (level.set[block] & own[block] & ~more[block]) != 0;
            if (is_any) break;
            ++needed;
        }
        if (needed > overlaps_left_) {
            ++word_weight_[word];
            return false;
        }
    }
    return true;
}

std::optional<CoverSearch::Fewest> CoverSearch::fewest_of_words(const Level& level) {
    counting().words(tables_, level.set.data(), order_, counts_.data());
    Fewest fewest;
    for (std::size_t at = 0; at < order_.size(); ++at) {
        if (counts_[at] == 0) {
            ++word_weight_[order_[at]];
            return std::nullopt;
        }
        fewest.look_at(at, counts_[at], word_weight_[order_[at]]);
    }
    return fewest;
}

// Of the cells that must be covered; none as long as cells may be spared. False where more cells are out of
// reach than may be spared.
bool CoverSearch::look_at_cells(const Level& level, Fewest& fewest) {
    uncovered_.clear();
    for (const std::uint32_t cell : open_cells_)
        if (!position_.is_written(cell)) uncovered_.push_back(cell);
    counting().cells(tables_, level.set.data(), uncovered_, counts_.data());
    std::size_t spared = 0;
    for (std::size_t at = 0; at < uncovered_.size(); ++at) {
        const std::uint32_t cell = uncovered_[at];
        if (counts_[at] > 0) {
            fewest.look_at(cell, counts_[at], cell_weight_[cell]);
        } else if (++spared > spare_) {
            ++cell_weight_[cell];
            return false;
        }
    }
    if (spared < spare_) fewest = {};
    return true;
}

// Where words overlap most, most room is left; and long words are hard to place later.
void CoverSearch::add_choice(Level& level, std::uint32_t number) {
    constexpr std::int64_t unit = 10;
    const Candidate candidate = tables_.candidate(number);
    const auto overlap = static_cast<std::int64_t>(position_.overlap(candidate));
    const auto length = static_cast<std::int64_t>(candidates_.cells(candidate).size());
    level.choices.push_back({random_.below(unit) - overlap * unit - length * unit / 5, number});
}

void CoverSearch::list_choices(Level& level, const Fewest& word, const Fewest& cell) {
    level.choices.clear();
    const auto add_all = [&](std::uint32_t first, const Block* mask, std::uint32_t count) {
        for (std::uint32_t block = 0; block < count; ++block)
            for (Block rest = level.set[first + block] & mask[block]; rest != 0; rest &= rest - 1)
                add_choice(level, (first + block) * 64 + static_cast<std::uint32_t>(std::countr_zero(rest)));
    };
    if (cell.is_before(word))
        for (const auto& part : tables_.parts(static_cast<std::uint32_t>(cell.at)))
            add_all(part.first, tables_.covering(part), part.count);
    else
        add_all(0, tables_.of_word(order_[word.at]), tables_.blocks());
    std::sort(level.choices.begin(), level.choices.end(), [](const Choice& a, const Choice& b) {
        return a.key != b.key ? a.key < b.key : a.number < b.number;
    });
}

SearchEnd CoverSearch::descend(std::size_t depth) {
    if (order_.empty())
        return cells_left_ == 0 && position_.is_solution() ? SearchEnd::placed : SearchEnd::exhausted;
    Level& level = levels_[depth];
    if (!keep_what_fits(level)) return SearchEnd::exhausted;
    const auto word = fewest_of_words(level);
    if (!word || !overlap_enough(level)) return SearchEnd::exhausted;
    Fewest cell;
    if (!look_at_cells(level, cell)) return SearchEnd::exhausted;
    list_choices(level, *word, cell);
    for (const Choice& choice : level.choices) {
        const SearchEnd end = try_choice(depth, choice.number);
        if (end != SearchEnd::exhausted) return end;
        level.set[choice.number / 64] &= ~(Block{1} << (choice.number % 64));
    }
    return SearchEnd::exhausted;
}

SearchEnd CoverSearch::try_choice(std::size_t depth, std::uint32_t number) {
    if (steps_left_ < steps_per_try_ || !effort_.spend(steps_per_try_)) return SearchEnd::limit;
    steps_left_ -= steps_per_try_;
    const Candidate candidate = tables_.candidate(number);
    const std::uint32_t word = candidates_.word(candidate);
    if (!position_.place(candidate)) return SearchEnd::exhausted;
    const std::size_t written = position_.written().size();
    const std::size_t overlap = task_.words[word].size() - written;
    if (written > cells_left_ || overlap > overlaps_left_) {
        position_.lift(word);
        return SearchEnd::exhausted;
    }
    narrow(depth, word);
    cells_left_ -= written;
    overlaps_left_ -= overlap;
    const auto at = static_cast<std::size_t>(std::find(order_.begin(), order_.end(), word) - order_.begin());
    std::swap(order_[at], order_.back());
    order_.pop_back();
    const SearchEnd end = descend(depth + 1);
    if (end == SearchEnd::placed) return end;
    order_.push_back(word);
    std::swap(order_[at], order_.back());
    cells_left_ += written;
    overlaps_left_ += overlap;
    position_.lift(word);
    return end;
}

// What placing the word leaves of the sets at a depth, one deeper.
void CoverSearch::narrow(std::size_t depth, std::uint32_t word) {
    const Level& from = levels_[depth];
    Level& to = levels_[depth + 1];
    const Block* const own = tables_.of_word(word);
    for (std::size_t block = 0; block < to.set.size(); ++block) to.set[block] = from.set[block] & ~own[block];
    for (std::size_t more = 0; more < to.overlaps.size(); ++more)
        std::copy(from.overlaps[more].begin(), from.overlaps[more].end(), to.overlaps[more].begin());
    for (const std::uint32_t cell : position_.written()) {
        const Letter letter = position_.letter(cell);
        for (const auto& part : tables_.parts(cell)) {
            const Block* const covering = tables_.covering(part);
            const Block* const sharing = tables_.sharing(part, letter);
            for (std::uint32_t at = 0; at < part.count; ++at) {
                const std::uint32_t block = part.first + at;
                to.set[block] &= ~covering[at] | sharing[at];
                for (std::size_t more = to.overlaps.size(); more-- > 1;)
                    to.overlaps[more][block] |= to.overlaps[more - 1][block] & covering[at];
                if (!to.overlaps.empty()) to.overlaps[0][block] |= covering[at];
            }
        }
    }
    for (const Candidate candidate : position_.foretold()) {
        const std::uint32_t number = tables_.number(candidate);
        const Block* const others = tables_.of_word(candidates_.word(candidate));
        const Block kept = to.set[number / 64] & (Block{1} << (number % 64));
        for (std::size_t block = 0; block < to.set.size(); ++block) to.set[block] &= ~others[block];
        to.set[number / 64] |= kept;
    }
}

}  // namespace lode
