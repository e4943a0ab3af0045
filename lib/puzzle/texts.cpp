#include <algorithm>

#include <letterlode/puzzle.hpp>

#include "text/direction.hpp"

namespace lode {
namespace {

std::string place_text(Cell cell) {
    return "row " + std::to_string(cell.row + 1) + ", column " + std::to_string(cell.column + 1);
}

std::string copy_text(const Copy& copy) {
    return place_text(copy.first) + ", " + std::string(name(copy.direction)) + " to " +
           place_text(copy.last());
}

// Code points stand for columns here: good enough to line up a list, wrong for wide characters.
std::size_t width(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char byte) {
        return (static_cast<unsigned char>(byte) & 0xC0) != 0x80;
    }));
}

std::string padded(const std::string& text, std::size_t to) {
    const std::size_t have = width(text);
    return have < to ? text + std::string(to - have, ' ') : text;
}

template <class Words>
std::size_t widest(const Words& words) {
    std::size_t most = 0;
    for (const auto& word : words) most = std::max(most, width(word.shown));
    return most;
}

std::string plural(std::size_t count, const std::string& one, const std::string& many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

}  // namespace

std::string puzzle_text(const Puzzle& puzzle) {
    std::string text = grid_text(puzzle.grid.grid, puzzle.grid.alphabet) + "\n";
    for (const auto& word : puzzle.words) text += isolated(word.shown) + "\n";
    return text;
}

std::string key_text(const Puzzle& puzzle) {
    const std::size_t across = widest(puzzle.words);
    std::string text;
    for (const auto& word : puzzle.words)
        text += from_the_left(isolated(word.shown) + std::string(across + 2 - width(word.shown), ' ') +
                              place_text(word.placed.first) + ", " + std::string(name(word.placed.direction)) +
                              (word.inside.empty() ? "" : ", inside " + isolated(word.inside))) +
                "\n";
    return text;
}

std::string audit_text(const Audit& audit) {
    std::string text;
    const std::size_t across = widest(audit.words);
    for (const auto& word : audit.words) {
        text += padded(word.shown, across + 2) + "expected " + std::to_string(word.expected) + ", found " +
                std::to_string(word.copies.size());
        for (const auto& copy : word.copies) {
            const bool stray = std::find(word.stray.begin(), word.stray.end(), copy) != word.stray.end();
            const auto at = static_cast<std::size_t>(&copy - word.copies.data());
            const bool inside = at < word.inside.size() && !word.inside[at].empty();
            text += (word.copies.size() == 1 ? ": " : "\n    ") + copy_text(copy) +
                    (inside ? ", inside " + word.inside[at] : "") + (stray ? "  STRAY" : "");
        }
        if (word.copies.empty()) text += ": MISSING";
        text += "\n";
    }
    for (const auto& finding : audit.avoided)
        text += "avoided word '" + finding.word + "': " + copy_text(finding.copy) + "\n";
    for (const auto& finding : audit.allowed)
        text += "allowed word '" + finding.word + "': " + copy_text(finding.copy) + "\n";
    for (const auto& finding : audit.chance)
        text += "by chance '" + finding.word + "': " + copy_text(finding.copy) + "\n";
    if (audit.cut_short) text += "There are more copies than are listed here.\n";

    return text + "\n" + verdict_text(audit);
}

std::string verdict_text(const Audit& audit) {
    if (audit.certified) {
        const bool once = std::all_of(audit.words.begin(), audit.words.end(),
                                      [](const WordFinding& word) { return word.expected == 1; });
        return "Certified: " +
               (audit.words.size() == 1
                    ? std::string("the word stands")
                    : "each of the " + std::to_string(audit.words.size()) + " words stands") +
               " in the grid " + (once ? "once" : "as often as it should") +
               " and nowhere else, and no avoided word stands in it.\n";
    }
    std::size_t strays = 0;
    for (const auto& word : audit.words) strays += word.stray.size();
    return "Not certified: " + std::to_string(audit.missing.size()) + " missing, " +
           plural(strays, "stray copy", "stray copies") + ", " +
           plural(audit.avoided.size(), "avoided word", "avoided words") + ".\n";
}

}  // namespace lode
