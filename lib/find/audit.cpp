#include <algorithm>
#include <numeric>

#include <letterlode/find.hpp>

#include "find/avoided_list.hpp"
#include "find/by_chance.hpp"
#include "find/covered_lines.hpp"
#include "find/other_reading.hpp"

namespace lode {
namespace {

// Letters by the grid's own numbers; nothing where the grid lacks one of them.
std::optional<Letters> numbered(const std::vector<std::string>& letters, const Alphabet& alphabet) {
    Letters numbers;
    numbers.reserve(letters.size());
    for (const auto& letter : letters) {
        const auto number = alphabet.find(letter);
        if (!number) return std::nullopt;
        numbers.push_back(*number);
    }
    return numbers;
}

bool holds(const Copy& outer, const Copy& inner) {
    const auto on = [&](Cell cell) {
        for (int at = 0; at < outer.length; ++at)
            if (moved(outer.first, outer.direction, at) == cell) return true;
        return false;
    };
    const bool in_line = inner.direction == outer.direction || inner.direction == opposite(outer.direction);
    return in_line && on(inner.first) && on(inner.last());
}

// So many pairs of copies are looked at to name the words that copies stand inside: far more than any puzzle
// has.
constexpr std::size_t most_pairs_looked_at = 10'000'000;

void name_outer_words(std::span<const AuditedWord> words,
                      std::span<const std::optional<Placement>> placements, std::size_t word,
                      std::size_t& pairs_left, std::vector<WordFinding>& findings) {
    WordFinding& finding = findings[word];
    if (words[word].outer.empty()) return;
    finding.inside.assign(finding.copies.size(), {});
    const auto own = placements.empty() || finding.expected < 2 ? std::nullopt : placements[word];
    for (std::size_t at = 0; at < finding.copies.size(); ++at) {
        const Copy& copy = finding.copies[at];
        if (own && same_cells(*own, {copy.first, copy.direction}, copy.length)) continue;
        for (const std::size_t outer : words[word].outer) {
            const auto& around = findings[outer].copies;
            if (around.size() > pairs_left) return;
            pairs_left -= around.size();
            if (std::none_of(around.begin(), around.end(),
                             [&](const Copy& holder) { return holds(holder, copy); }))
                continue;
            finding.inside[at] = words[outer].shown;
            break;
        }
    }
}

void list_strays(std::span<const AuditedWord> words, std::span<const std::optional<Placement>> placements,
                 std::size_t word, WordFinding& finding) {
    const auto expected = static_cast<std::size_t>(finding.expected);
    const auto& copies = finding.copies;
    const auto stands_inside = [&](std::size_t at) {
        return !finding.inside.empty() && !finding.inside[at].empty();
    };
    if (const auto placed = placements.empty() ? std::nullopt : placements[word]) {
        const auto is_placed_inside = [&](const Copy& copy) {
            return std::any_of(words[word].outer.begin(), words[word].outer.end(), [&](std::size_t outer) {
                const auto& around = placements[outer];
                return around && holds({around->first, around->direction,
                                        static_cast<int>(words[outer].letters.size())},
                                       copy);
            });
        };
        for (const Copy& copy : copies)
            if (!same_cells(*placed, {copy.first, copy.direction}, copy.length) &&
                (expected < 2 || !is_placed_inside(copy)))
                finding.stray.push_back(copy);
        return;
    }
    if (copies.size() <= expected) return;
    std::vector<std::size_t> order(copies.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_partition(order.begin(), order.end(), stands_inside);
    std::sort(order.begin() + static_cast<std::ptrdiff_t>(expected), order.end());
    for (std::size_t at = expected; at < order.size(); ++at) finding.stray.push_back(copies[order[at]]);
}

}  // namespace

struct Judge::Rules {
    std::vector<AuditedWord> words;
    std::vector<std::size_t> word_of;  // by the matcher's numbers
    std::optional<Matcher> matcher;
    std::shared_ptr<const AvoidedList> avoided;  // none where the rules have none
    std::vector<std::size_t> avoided_of;         // by their numbers in the reading
    std::optional<OtherReading> avoided_reading;
    std::optional<ByChance> by_chance;
    std::size_t most = 1;

    void read_words(const Alphabet& alphabet);
    void read_avoided(const Alphabet& alphabet);
    void judge_words(const Grid& grid, std::span<const std::optional<Placement>> placed,
                     const SearchControl& control, Audit& audit) const;
    void judge_avoided(const Grid& grid, const SearchControl& control, Audit& audit) const;
    void tell_chance(const Grid& grid, const SearchControl& control, Audit& audit) const;
};

// A word with a letter that the alphabet lacks can stand in no grid.
void Judge::Rules::read_words(const Alphabet& alphabet) {
    std::vector<Letters> sought;
    sought.reserve(words.size());
    word_of.reserve(words.size());
    for (std::size_t word = 0; word < words.size(); ++word) {
        if (words[word].letters.empty()) continue;
        if (auto letters = numbered(words[word].letters, alphabet)) {
            sought.push_back(std::move(*letters));
            word_of.push_back(word);
        }
    }
    if (!sought.empty()) matcher.emplace(sought);
}

void Judge::Rules::read_avoided(const Alphabet& alphabet) {
    if (!avoided) return;
    avoided_reading.emplace(alphabet, [](const std::string& letter) { return folded(letter); });
    const Letters numbers = avoided_reading->numbers_of(avoided->letters());
    for (std::size_t word = 0; word < avoided->words().size(); ++word)
        if (avoided_reading->add(avoided->words()[word].letters, numbers)) avoided_of.push_back(word);
    avoided_reading->build();
}

void Judge::Rules::judge_words(const Grid& grid, std::span<const std::optional<Placement>> placed,
                               const SearchControl& control, Audit& audit) const {
    audit.words.reserve(words.size());
    for (const AuditedWord& word : words) audit.words.push_back({word.shown, word.expected, {}, {}, {}});
    const auto note = [&](std::size_t which, const Copy& copy) {
        auto& copies = audit.words[word_of[which]].copies;
        if (copies.size() < most)
            copies.push_back(copy);
        else
            audit.cut_short = true;
        return true;
    };
    SearchRules rules;
    rules.control = control;
    if (matcher) audit.cancelled |= !matcher->search(grid, note, rules);

    std::size_t pairs_left = most_pairs_looked_at;
    for (std::size_t word = 0; word < words.size(); ++word) {
        WordFinding& finding = audit.words[word];
        name_outer_words(words, placed, word, pairs_left, audit.words);
        list_strays(words, placed, word, finding);
        if (finding.copies.size() < static_cast<std::size_t>(std::max(1, finding.expected)))
            audit.missing.push_back(finding.shown);
    }
}

void Judge::Rules::judge_avoided(const Grid& grid, const SearchControl& control, Audit& audit) const {
    if (!avoided_reading) return;
    const auto note = [&](std::size_t which, const Copy& copy) {
        const AvoidedList::Word& word = avoided->words()[avoided_of[which]];
        auto& list = word.is_allowed ? audit.allowed : audit.avoided;
        if (list.size() < most)
            list.push_back({word.name, copy});
        else
            audit.cut_short = true;
        return true;
    };
    SearchRules rules;
    rules.control = control;
    audit.cancelled |= !avoided_reading->search(grid, note, rules);
}

// A part of a listed word ("AMS" in DAMSON) stands there by no chance.
void Judge::Rules::tell_chance(const Grid& grid, const SearchControl& control, Audit& audit) const {
    if (!by_chance) return;
    std::vector<Copy> listed;
    for (const WordFinding& finding : audit.words)
        listed.insert(listed.end(), finding.copies.begin(), finding.copies.end());
    if (!by_chance->find(grid, CoveredLines(std::move(listed)), most, control, audit.chance)) {
        const bool stopped = control.cancel && control.cancel->load(std::memory_order_relaxed);
        (stopped ? audit.cancelled : audit.cut_short) = true;
    }
}

Judge::Judge(const Alphabet& alphabet, std::vector<AuditedWord> words,
             std::shared_ptr<const AvoidedList> avoided)
    : rules_(std::make_unique<Rules>()) {
    rules_->words = std::move(words);
    rules_->most = AuditRules().most;
    rules_->avoided = std::move(avoided);
    rules_->read_words(alphabet);
    rules_->read_avoided(alphabet);
}
Judge::Judge(const Alphabet& alphabet, std::span<const AuditedWord> words, const AuditRules& rules,
             const Segmenter& segmenter)
    : Judge(alphabet, std::vector<AuditedWord>(words.begin(), words.end()),
            rules.avoid.empty() ? nullptr : std::make_shared<const AvoidedList>(rules, segmenter)) {
    rules_->most = std::max(rules.most, std::size_t{1});
    if (!rules.dictionary.empty())
        rules_->by_chance.emplace(alphabet, rules.dictionary, rules.shortest_by_chance, segmenter);
}
Judge::Judge(Judge&&) noexcept = default;
Judge& Judge::operator=(Judge&&) noexcept = default;
Judge::~Judge() = default;

Audit Judge::audit(const Grid& grid, std::span<const std::optional<Placement>> placed,
                   const SearchControl& control) const {
    // One count of rows over all searches.
    const long long rows = grid.size().rows;
    const long long searches = 1 + (rules_->avoided_reading ? 1 : 0) + (rules_->by_chance ? 1 : 0);
    SearchControl part = control;
    long long searched = 0;
    if (control.progress)
        part.progress = [&](long long done, long long) {
            control.progress(searched + done, searches * rows);
        };

    Audit audit;
    audit.avoided_words = rules_->avoided ? rules_->avoided->named() : 0;
    rules_->judge_words(grid, placed, part, audit);
    const bool every_copy_is_listed = !audit.cut_short;
    searched += rows;
    if (!audit.cancelled) rules_->judge_avoided(grid, part, audit);
    if (rules_->avoided_reading) searched += rows;
    if (!audit.cancelled) rules_->tell_chance(grid, part, audit);
    audit.certified = every_copy_is_listed && !audit.cancelled && audit.missing.empty() &&
                      audit.avoided.empty() &&
                      std::all_of(audit.words.begin(), audit.words.end(), [](const WordFinding& finding) {
                          return finding.stray.empty() &&
                                 finding.copies.size() == static_cast<std::size_t>(finding.expected);
                      });
    return audit;
}

Audit audit(const LetteredGrid& grid, std::span<const AuditedWord> words, const AuditRules& rules,
            const Segmenter& segmenter, const SearchControl& control) {
    std::vector<std::optional<Placement>> placed;
    for (const AuditedWord& word : words) placed.push_back(word.placed);
    return Judge(grid.alphabet, words, rules, segmenter).audit(grid.grid, placed, control);
}

}  // namespace lode
