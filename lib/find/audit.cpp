#include <algorithm>
#include <set>

#include <letterlode/find.hpp>

namespace lode {
namespace {

// A grid seen without case and marks, for avoided words.
LetteredGrid folded_grid(const LetteredGrid& grid) {
    LetteredGrid plain;
    Letters plain_of;
    plain_of.reserve(grid.alphabet.size());
    for (std::size_t letter = 0; letter < grid.alphabet.size(); ++letter)
        plain_of.push_back(plain.alphabet.add(folded(grid.alphabet.text(static_cast<Letter>(letter)))));

    const Size size = grid.grid.size();
    plain.grid = Grid(size);
    for (int row = 0; row < size.rows; ++row)
        for (int column = 0; column < size.columns; ++column) {
            const Letter letter = grid.grid[{row, column}];
            plain.grid[{row, column}] = letter < plain_of.size() ? plain_of[letter] : letter;
        }
    return plain;
}

std::vector<std::string> folded_letters(std::string_view word, const Segmenter& segmenter) {
    auto letters = segmenter.spell(word).letters;
    for (auto& letter : letters) letter = folded(letter);
    return letters;
}

// Letters by the grid's own numbers; nothing where the grid lacks one of them.
std::optional<Letters> numbered(const std::vector<std::string>& letters, const Alphabet& alphabet) {
    Letters numbers;
    for (const auto& letter : letters) {
        const auto number = alphabet.find(letter);
        if (!number) return std::nullopt;
        numbers.push_back(*number);
    }
    return numbers;
}

void judge_words(const LetteredGrid& grid, std::span<const AuditedWord> words, const AuditRules& rules,
                 Audit& audit) {
    std::vector<Letters> sought;
    std::vector<std::size_t> word_of;
    for (std::size_t word = 0; word < words.size(); ++word) {
        audit.words.push_back({words[word].shown, 1, {}, {}});
        if (words[word].letters.empty()) continue;
        if (auto letters = numbered(words[word].letters, grid.alphabet)) {
            sought.push_back(std::move(*letters));
            word_of.push_back(word);
        }
    }
    const std::size_t most = std::max(rules.most, std::size_t{1});
    Matcher(sought).search(grid.grid, [&](std::size_t which, const Copy& copy) {
        auto& copies = audit.words[word_of[which]].copies;
        if (copies.size() < most)
            copies.push_back(copy);
        else
            audit.cut_short = true;
        return true;
    });

    for (std::size_t word = 0; word < words.size(); ++word) {
        WordFinding& finding = audit.words[word];
        if (finding.copies.empty()) audit.missing.push_back(finding.shown);
        if (const auto& placed = words[word].placed) {
            for (const Copy& copy : finding.copies)
                if (!same_cells(*placed, {copy.first, copy.direction}, copy.length))
                    finding.stray.push_back(copy);
        } else if (finding.copies.size() > static_cast<std::size_t>(finding.expected)) {
            finding.stray.assign(finding.copies.begin() + finding.expected, finding.copies.end());
        }
    }
}

void judge_avoided(const LetteredGrid& grid, const AuditRules& rules, const Segmenter& segmenter,
                   Audit& audit) {
    if (rules.avoid.empty()) return;
    const LetteredGrid plain = folded_grid(grid);
    std::set<std::vector<std::string>> allowed;
    for (const auto& word : rules.allowed) allowed.insert(folded_letters(word, segmenter));

    std::vector<Letters> sought;
    std::vector<std::string> names;
    std::vector<bool> is_allowed;
    std::set<std::vector<std::string>> known;  // "cafe" and "café" are one avoided word
    for (const auto& word : rules.avoid) {
        const auto letters = folded_letters(word, segmenter);
        if (letters.size() < 2 || !known.insert(letters).second) continue;
        if (auto numbers = numbered(letters, plain.alphabet)) {
            sought.push_back(std::move(*numbers));
            names.push_back(word);
            is_allowed.push_back(allowed.contains(letters));
        }
    }
    const std::size_t most = std::max(rules.most, std::size_t{1});
    Matcher(sought).search(plain.grid, [&](std::size_t which, const Copy& copy) {
        auto& list = is_allowed[which] ? audit.allowed : audit.avoided;
        if (list.size() < most)
            list.push_back({names[which], copy});
        else
            audit.cut_short = true;
        return true;
    });
}

}  // namespace

Audit audit(const LetteredGrid& grid, std::span<const AuditedWord> words, const AuditRules& rules,
            const Segmenter& segmenter) {
    Audit audit;
    judge_words(grid, words, rules, audit);
    const bool every_copy_is_listed = !audit.cut_short;
    judge_avoided(grid, rules, segmenter, audit);
    audit.certified = every_copy_is_listed && audit.missing.empty() && audit.avoided.empty() &&
                      std::all_of(audit.words.begin(), audit.words.end(), [](const WordFinding& finding) {
                          return finding.stray.empty() &&
                                 finding.copies.size() == static_cast<std::size_t>(finding.expected);
                      });
    return audit;
}

}  // namespace lode
