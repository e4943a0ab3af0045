// All sequences are sought at once, in one walk along a word and one back: Aho and Corasick, "Efficient
// string matching: an aid to bibliographic search", Communications of the ACM 18(6), 1975. Where no letter
// leads on, a node's failure link leads to the longest other start that has just been read.

#include "puzzle/inner_words.hpp"

#include <algorithm>
#include <limits>
#include <numeric>
#include <vector>

namespace lode {
namespace {

using Index = std::uint32_t;
constexpr Index none = std::numeric_limits<Index>::max();

// Room that is taken at once; long lists share their first letters and may need far less than they have.
constexpr std::size_t usual_nodes = 1024;

class Automaton {
  public:
    explicit Automaton(std::span<const Letters> sought);

    // Calls ends(sequence) for each sequence that ends with the letter just read. Returns the next node.
    template <class Ends>
    Index read(Index node, Letter letter, Ends&& ends) const {
        node = next(node, letter);
        for (Index at = nodes_[node].ends > 0 ? node : nodes_[node].ending; at != none;
             at = nodes_[at].ending)
            for (Index end = 0; end < nodes_[at].ends; ++end) ends(order_[nodes_[at].first_end + end]);
        return node;
    }

  private:
    struct Node {
        Letter letter = 0;
        Index child = none;    // the first of them
        Index sibling = none;  // the next one
        Index failure = 0;
        Index ending = none;  // the nearest node along the failures at which a sequence ends
        Index first_end = 0;  // the sequences that end here: a run in order_
        Index ends = 0;
    };
    Index add_child(Index node, Index last_child, Letter letter);
    [[nodiscard]] Index child(Index node, Letter letter) const;
    [[nodiscard]] Index next(Index node, Letter letter) const;
    void link_failures();

    std::vector<Node> nodes_;
    std::vector<Index> roots_;  // the root's children by letter: they are asked for most
    std::vector<Index> order_;  // sequences in the order of their letters
};

// In order of their letters, sequences pass each node once, and a new child is always the last.
Automaton::Automaton(std::span<const Letters> sought) : nodes_(1), order_(sought.size()) {
    std::iota(order_.begin(), order_.end(), Index{0});
    std::stable_sort(order_.begin(), order_.end(), [&](Index a, Index b) { return sought[a] < sought[b]; });
    std::vector<Index> path{0};  // the nodes of the sequence before
    std::size_t all_letters = 0;
    for (const Letters& letters : sought) all_letters += letters.size();
    nodes_.reserve(std::min(all_letters + 1, usual_nodes));
    const Letters* before = nullptr;
    for (Index at = 0; at < order_.size(); ++at) {
        const Letters& letters = sought[order_[at]];
        if (letters.empty()) continue;
        std::size_t shared = 0;
        if (before)
            shared = static_cast<std::size_t>(
                std::mismatch(before->begin(), before->end(), letters.begin(), letters.end()).first -
                before->begin());
        const Index last_child = before && shared + 1 < path.size() ? path[shared + 1] : none;
        path.resize(shared + 1);
        for (std::size_t index = shared; index < letters.size(); ++index)
            path.push_back(add_child(path.back(), index == shared ? last_child : none, letters[index]));
        Node& end = nodes_[path.back()];
        if (end.ends++ == 0) end.first_end = at;
        before = &letters;
    }
    for (Index node = nodes_[0].child; node != none; node = nodes_[node].sibling) {
        if (roots_.size() <= nodes_[node].letter) roots_.resize(nodes_[node].letter + std::size_t{1}, none);
        roots_[nodes_[node].letter] = node;
    }
    link_failures();
}

Index Automaton::add_child(Index node, Index last_child, Letter letter) {
    const auto added = static_cast<Index>(nodes_.size());
    nodes_.emplace_back();
    nodes_.back().letter = letter;
    (last_child == none ? nodes_[node].child : nodes_[last_child].sibling) = added;
    return added;
}

Index Automaton::child(Index node, Letter letter) const {
    if (node == 0) return letter < roots_.size() ? roots_[letter] : none;
    Index at = nodes_[node].child;
    while (at != none && nodes_[at].letter < letter) at = nodes_[at].sibling;
    return at != none && nodes_[at].letter == letter ? at : none;
}

Index Automaton::next(Index node, Letter letter) const {
    for (;;) {
        const Index there = child(node, letter);
        if (there != none) return there;
        if (node == 0) return 0;
        node = nodes_[node].failure;
    }
}

// Level by level: a node's failure is nearer to the root than the node.
void Automaton::link_failures() {
    std::vector<Index> queue;
    queue.reserve(nodes_.size());
    queue.push_back(0);
    for (std::size_t at = 0; at < queue.size(); ++at) {
        const Index parent = queue[at];
        for (Index node = nodes_[parent].child; node != none; node = nodes_[node].sibling) {
            queue.push_back(node);
            const Index failure = parent == 0 ? 0 : next(nodes_[parent].failure, nodes_[node].letter);
            nodes_[node].failure = failure;
            nodes_[node].ending = nodes_[failure].ends > 0 ? failure : nodes_[failure].ending;
        }
    }
}

}  // namespace

struct InnerWords::State {
    Automaton automaton;
    std::vector<std::size_t> lengths;  // of the sequences
};

InnerWords::InnerWords(std::span<const Letters> sought) {
    std::vector<std::size_t> lengths;
    lengths.reserve(sought.size());
    for (const Letters& letters : sought) lengths.push_back(letters.size());
    state_ = std::make_unique<const State>(State{Automaton(sought), std::move(lengths)});
}
InnerWords::InnerWords(InnerWords&&) noexcept = default;
InnerWords& InnerWords::operator=(InnerWords&&) noexcept = default;
InnerWords::~InnerWords() = default;

void InnerWords::find(std::span<const Letters> words, const Found& found) const {
    struct Seen {
        std::size_t start = 0;
        bool seen = false;
        bool several = false;
    };
    std::vector<Seen> seen(state_->lengths.size());
    std::vector<Index> met;  // in this word
    for (std::size_t outer = 0; outer < words.size(); ++outer) {
        const Letters& word = words[outer];
        const auto note = [&](Index inner, std::size_t start) {
            Seen& copies = seen[inner];
            if (!copies.seen) {
                copies = {start, true, false};
                met.push_back(inner);
            } else if (copies.start != start) {
                copies.several = true;
            }
        };
        Index node = 0;
        for (std::size_t at = 0; at < word.size(); ++at)
            node = state_->automaton.read(node, word[at],
                                          [&](Index inner) { note(inner, at + 1 - state_->lengths[inner]); });
        node = 0;
        for (std::size_t at = word.size(); at-- > 0;)
            node = state_->automaton.read(node, word[at], [&](Index inner) { note(inner, at); });

        std::sort(met.begin(), met.end());
        for (const Index inner : met)
            if (!found(inner, outer, seen[inner].several ? InnerCopies::several : InnerCopies::one)) return;
        for (const Index inner : met) seen[inner] = {};
        met.clear();
    }
}

void find_inner_words(std::span<const Letters> sought, std::span<const Letters> words,
                      const InnerWords::Found& found) {
    InnerWords(sought).find(words, found);
}

}  // namespace lode
