// A walk down a trie of all words from every cell in every direction. Most walks end at the first or second
// letter, so a small grid costs little more than reading it, and nothing is copied out of the grid.

#include <algorithm>
#include <limits>
#include <stdexcept>

#include <letterlode/find.hpp>

namespace lode {
namespace {

using Node = std::uint32_t;
constexpr Node none = std::numeric_limits<Node>::max();

bool is_palindrome(const Letters& word) {
    return std::equal(word.begin(), word.begin() + static_cast<std::ptrdiff_t>(word.size() / 2),
                      word.rbegin());
}

// How many cells lie ahead of the cell in the direction, itself included.
int cells_ahead(Size size, Cell cell, Direction direction) {
    const Cell by = step(direction);
    int ahead = std::numeric_limits<int>::max();
    if (by.row > 0) ahead = std::min(ahead, size.rows - cell.row);
    if (by.row < 0) ahead = std::min(ahead, cell.row + 1);
    if (by.column > 0) ahead = std::min(ahead, size.columns - cell.column);
    if (by.column < 0) ahead = std::min(ahead, cell.column + 1);
    return ahead;
}

}  // namespace

// Nodes lie one after another; the children of a node are a run in `edges`, the words that end at it a run in
// `ends`. The root's children stand in a table of their own, since every cell of the grid asks for them.
struct Matcher::Trie {
    struct Edge {
        Letter letter;
        Node to;
    };
    struct Run {
        std::uint32_t first = 0;
        std::uint32_t count = 0;
    };
    std::vector<Node> roots;  // by letter
    std::vector<Edge> edges;
    std::vector<Run> children;  // by node
    std::vector<std::uint32_t> ends;
    std::vector<Run> ending;               // by node
    std::vector<std::uint8_t> palindrome;  // by word

    [[nodiscard]] Node child(Node node, Letter letter) const {
        const Run run = children[node];
        for (std::uint32_t at = run.first; at < run.first + run.count; ++at)
            if (edges[at].letter == letter) return edges[at].to;
        return none;
    }
};

Matcher::Matcher(std::span<const Letters> words) : trie_(std::make_unique<Trie>()) {
    // Words in order stand as the trie's paths do, so that each node's children and words come out as one
    // run.
    std::vector<std::uint32_t> order(words.size());
    for (std::uint32_t word = 0; word < order.size(); ++word) {
        if (words[word].empty()) throw std::invalid_argument("a Matcher was given an empty word");
        order[word] = word;
        trie_->palindrome.push_back(is_palindrome(words[word]) ? 1 : 0);
    }
    std::stable_sort(order.begin(), order.end(), [&](auto a, auto b) { return words[a] < words[b]; });

    std::vector<std::vector<Trie::Edge>> children_of(1);
    std::vector<std::vector<std::uint32_t>> ends_of(1);
    for (const auto word : order) {
        Node node = 0;
        for (const Letter letter : words[word]) {
            auto& edges = children_of[node];
            if (edges.empty() || edges.back().letter != letter) {
                const auto next = static_cast<Node>(children_of.size());
                edges.push_back({letter, next});
                children_of.emplace_back();
                ends_of.emplace_back();
                node = next;
            } else {
                node = edges.back().to;
            }
        }
        ends_of[node].push_back(word);
    }

    for (const auto& edge : children_of[0]) {
        if (trie_->roots.size() <= edge.letter) trie_->roots.resize(edge.letter + std::size_t{1}, none);
        trie_->roots[edge.letter] = edge.to;
    }
    for (std::size_t node = 0; node < children_of.size(); ++node) {
        trie_->children.push_back({static_cast<std::uint32_t>(trie_->edges.size()),
                                   static_cast<std::uint32_t>(children_of[node].size())});
        trie_->edges.insert(trie_->edges.end(), children_of[node].begin(), children_of[node].end());
        trie_->ending.push_back({static_cast<std::uint32_t>(trie_->ends.size()),
                                 static_cast<std::uint32_t>(ends_of[node].size())});
        trie_->ends.insert(trie_->ends.end(), ends_of[node].begin(), ends_of[node].end());
    }
}

Matcher::Matcher(Matcher&&) noexcept = default;
Matcher& Matcher::operator=(Matcher&&) noexcept = default;
Matcher::~Matcher() = default;

bool Matcher::search(const Grid& grid, const Found& found) const {
    const Trie& trie = *trie_;
    const Size size = grid.size();
    const Letter* const letters = grid.letters().data();

    const auto report = [&](Node node, Cell first, Direction direction, int length) {
        const auto run = trie.ending[node];
        for (std::uint32_t at = run.first; at < run.first + run.count; ++at) {
            const auto word = trie.ends[at];
            // A palindrome's copy is met from both its ends, a single letter's in all directions.
            const bool met_again = length == 1
                                       ? direction != Direction::right
                                       : trie.palindrome[word] && static_cast<unsigned>(direction) >= 4;
            if (!met_again && !found(word, Copy{first, direction, length})) return false;
        }
        return true;
    };

    for (int row = 0; row < size.rows; ++row)
        for (int column = 0; column < size.columns; ++column) {
            const Cell first{row, column};
            const Letter* const start = letters + grid.index(first);
            if (*start >= trie.roots.size() || trie.roots[*start] == none) continue;
            for (const Direction direction : all_directions) {
                const Cell by = step(direction);
                const std::ptrdiff_t stride = std::ptrdiff_t{by.row} * size.columns + by.column;
                const int ahead = cells_ahead(size, first, direction);
                Node node = trie.roots[*start];
                const Letter* letter = start;
                for (int length = 1;; ++length) {
                    if (trie.ending[node].count > 0 && !report(node, first, direction, length)) return false;
                    if (length == ahead) break;
                    letter += stride;
                    node = trie.child(node, *letter);
                    if (node == none) break;
                }
            }
        }
    return true;
}

}  // namespace lode
