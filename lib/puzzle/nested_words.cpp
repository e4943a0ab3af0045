#include "puzzle/nested_words.hpp"

#include <algorithm>
#include <numeric>

#include "puzzle/inner_words.hpp"
#include "text/quoted.hpp"

namespace lode {
namespace {

constexpr std::size_t faults_told = 10;
// Bounds for lists that no maker writes: pairs of which one word holds the other, and letters compared to
// find where.
constexpr std::size_t most_pairs = 100'000;
constexpr std::uint64_t most_comparisons = 100'000'000;

struct Pair {
    std::uint32_t inner;
    std::uint32_t outer;
};

// Nothing where there are too many.
std::optional<std::vector<Pair>> pairs_of(const std::vector<Letters>& words) {
    std::vector<Pair> pairs;
    find_inner_words(words, words, [&](std::size_t inner, std::size_t outer, InnerCopies) {
        if (inner != outer)
            pairs.push_back({static_cast<std::uint32_t>(inner), static_cast<std::uint32_t>(outer)});
        return pairs.size() <= most_pairs;
    });
    if (pairs.size() > most_pairs) return std::nullopt;
    return pairs;
}

// Where the inner word can be read in the outer one; each set of cells once.
bool list_copies(const Pair& pair, const std::vector<Letters>& words, std::uint64_t& comparisons,
                 std::vector<InnerCopy>& copies) {
    const Letters& inner = words[pair.inner];
    const Letters& outer = words[pair.outer];
    const auto reads = [&](auto begin, auto end, std::size_t at) {
        const auto [mismatch, there] =
            std::mismatch(begin, end, outer.begin() + static_cast<std::ptrdiff_t>(at));
        comparisons += static_cast<std::uint64_t>(mismatch - begin) + 1;
        return mismatch == end;
    };
    for (std::size_t at = 0; at + inner.size() <= outer.size(); ++at) {
        if (comparisons > most_comparisons) return false;
        if (reads(inner.begin(), inner.end(), at))
            copies.push_back({pair.inner, pair.outer, static_cast<int>(at), false});
        else if (reads(inner.rbegin(), inner.rend(), at))
            copies.push_back({pair.inner, pair.outer, static_cast<int>(at + inner.size()) - 1, true});
    }
    return true;
}

Refusal too_much_nesting(const WordList& list) {
    return {Refusal::Reason::unusable,
            place_in(list.source, 0) + "Too many of the words stand inside others.",
            {},
            {"Give fewer words that hold each other."},
            list.source,
            0};
}

// What keeps a word that has no place of its own from standing once; empty where nothing does.
std::string fault_of(std::uint32_t word, const WordList& list, const std::vector<InnerCopy>& copies) {
    const InnerCopy* first = nullptr;
    for (const InnerCopy& copy : copies) {
        if (copy.inner != word) continue;
        if (!first) {
            first = &copy;
            continue;
        }
        const std::string shown = quoted(list.words[word].shown);
        const std::string outer = quoted(list.words[first->outer].shown);
        if (copy.outer == first->outer) return shown + " stands more than once inside " + outer + ".";
        return shown + " stands inside " + outer + " and inside " + quoted(list.words[copy.outer].shown) +
               ".";
    }
    return {};
}

// Every word without a place of its own that cannot stand once.
std::optional<Refusal> not_once(const WordList& list, const NestedWords& nested,
                                const std::vector<std::uint32_t>& count) {
    std::optional<Refusal> refusal;
    std::size_t told = 0;
    for (const std::uint32_t word : nested.brought) {
        if (count[word] == 1) continue;
        if (++told > faults_told) break;
        const std::string fault =
            place_in(list.source, list.words[word].line) + fault_of(word, list, nested.copies);
        if (!refusal)
            refusal = Refusal{Refusal::Reason::unusable,
                              fault,
                              {},
                              {"Take one of the words out, or give each a place of its own with --nested "
                               "separate."},
                              list.source,
                              list.words[word].line};
        else
            refusal->message += "\n" + fault;
        const auto name = [&](std::uint32_t named) {
            const std::string& shown = list.words[named].shown;
            if (std::find(refusal->words.begin(), refusal->words.end(), shown) == refusal->words.end())
                refusal->words.push_back(shown);
        };
        name(word);
        for (const InnerCopy& copy : nested.copies)
            if (copy.inner == word) name(copy.outer);
    }
    return refusal;
}

}  // namespace

Outcome<NestedWords> nest(const WordList& list, const std::vector<Letters>& words, Nested rule) {
    const auto pairs = pairs_of(words);
    if (!pairs) return too_much_nesting(list);
    NestedWords nested;
    nested.expected.assign(words.size(), 1);
    nested.outer.resize(words.size());

    // Of two words that are each other backward, the later one stands inside the earlier.
    std::vector<bool> is_brought(words.size(), false);
    for (const auto& [inner, outer] : *pairs) {
        const bool turned = words[inner].size() == words[outer].size();
        if (rule == Nested::inside && (!turned || outer < inner)) is_brought[inner] = true;
        auto& longest = nested.outer[inner];
        if (!longest || words[outer].size() > words[*longest].size()) longest = outer;
    }
    for (std::uint32_t word = 0; word < words.size(); ++word)
        (is_brought[word] ? nested.brought : nested.placed).push_back(word);

    std::uint64_t comparisons = 0;
    for (const Pair& pair : *pairs)
        if (!is_brought[pair.outer] && !list_copies(pair, words, comparisons, nested.copies))
            return too_much_nesting(list);
    std::vector<std::uint32_t> count(words.size(), 0);
    for (const InnerCopy& copy : nested.copies) ++count[copy.inner];
    if (auto refusal = not_once(list, nested, count)) return std::move(*refusal);
    if (rule == Nested::separate)
        for (std::uint32_t word = 0; word < words.size(); ++word)
            nested.expected[word] += static_cast<int>(count[word]);
    // A word that has its own place has no outer one to be shown in.
    if (rule == Nested::inside)
        for (const std::uint32_t word : nested.placed) nested.outer[word].reset();
    return nested;
}

}  // namespace lode
