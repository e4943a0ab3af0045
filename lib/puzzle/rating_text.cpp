// A rating as people read it.

#include <algorithm>

#include <letterlode/puzzle.hpp>

#include "text/display_width.hpp"
#include "text/fixed_decimals.hpp"

namespace lode {
namespace {

// Whole numbers without decimals, others with two.
std::string plain(double value) {
    std::string text = fixed_decimals(value, 2);
    if (text.ends_with(".00")) text.resize(text.size() - 3);
    return text;
}

std::string table_of(const std::vector<RatingPart>& parts) {
    std::size_t part_width = 0, value_width = 0;
    for (const RatingPart& part : parts) {
        part_width = std::max(part_width, display_width(part.part));
        value_width = std::max(value_width, plain(part.value).size());
    }
    std::string text;
    for (const RatingPart& part : parts) {
        text += "  " + padded(part.part, part_width) + "  " + padded_before(plain(part.value), value_width) +
                " " + part.unit;
        if (part.threshold)
            text += std::string(part.is_most ? ", at most " : ", at least ") + plain(*part.threshold) +
                    " is asked for: " + (part.is_met() ? "met" : "NOT MET");
        text += "\n";
        if (!part.note.empty()) text += "      " + part.note + "\n";
        text += "      Ground: " + part.source + ".\n";
    }
    return text;
}

}  // namespace

std::string rating_text(const Rating& rating) {
    const Difficulty& difficulty = rating.difficulty;
    std::size_t across = 4;
    for (const auto& word : difficulty.words) across = std::max(across, display_width(word.shown));
    std::string text = padded("word", across) + "  fixations\n";
    for (const auto& word : difficulty.words)
        text += padded(word.shown, across) + "  " + padded_before(fixed_decimals(word.fixations, 1), 9) +
                (word.is_found ? "\n" : "  NOT IN THE GRID: all of it is searched\n");
    text += "\nReadability\n" + table_of(rating.readability);
    text += "\nDifficulty\n" + table_of(difficulty.parts);
    const double mean =
        difficulty.words.empty() ? 0 : difficulty.fixations / static_cast<double>(difficulty.words.size());
    return text + "\nLevel: " + std::string(name(difficulty.level)) + ". A simulated reader needs " +
           fixed_decimals(difficulty.fixations, 1) + " fixations for all words, " + fixed_decimals(mean, 1) +
           " a word.\n";
}

}  // namespace lode
