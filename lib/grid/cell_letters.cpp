#include "grid/cell_letters.hpp"

#include <algorithm>

#include "grid/rows_of_text.hpp"
#include "text/quoted.hpp"
#include "text/utf8.hpp"

namespace lode {
namespace {

// Of a cell that holds too many.
constexpr std::size_t letters_told = 8;

bool is_closed(std::string_view written) {
    if (written.empty()) return true;
    if (written.size() > 2) return false;
    const icu::UnicodeString text = to_icu(written);
    return text.countChar32() == 1 && is_closed_mark(text.char32At(0));
}

}  // namespace

CellLetters::CellLetters(const Segmenter& segmenter) : segmenter_(segmenter) {
    of_byte_.fill(unknown);
}

std::optional<Letter> CellLetters::letter(std::string_view written) {
    if (written.size() == 1) {
        Letter& known = of_byte_[static_cast<unsigned char>(written[0]) & 0x7F];
        if (known == unknown) {
            const auto found = spelled(written);
            if (!found) return std::nullopt;
            known = *found;
        }
        return known;
    }
    const std::string key(written);
    if (const auto known = of_text_.find(key); known != of_text_.end()) return known->second;
    const auto found = spelled(written);
    if (found) of_text_.emplace(key, *found);
    return found;
}

CellLetters::Fault CellLetters::fault(std::string_view written) const {
    const auto spelling = segmenter_.spell(written);
    if (!is_whole(written) || spelling.letters.empty())
        return {"holds " + quoted(written) + ", which is no letter.",
                "Letters and digits fill cells; draw a closed cell with '.', '#' or '·'."};
    if (spelling.letters.size() > 1) {
        std::string parts;
        for (std::size_t at = 0; at < spelling.letters.size() && at < letters_told; ++at)
            parts += (at == 0 ? "" : " ") + spelling.letters[at];
        if (spelling.letters.size() > letters_told) parts += " ...";
        return {"holds " + quoted(written) + ", which is " + std::to_string(spelling.letters.size()) +
                    " letters (" + parts + ").",
                "Put one letter into a cell. --locale says which characters together are one letter, "
                "--sharp-s "
                "keep that a sharp s is one."};
    }
    return {"brings more than " + std::to_string(max_letters) + " different letters.",
            "Give the grid in parts."};
}

bool CellLetters::is_one_letter(std::string_view written) const {
    return is_closed(written) || (is_whole(written) && segmenter_.spell(written).letters.size() == 1);
}

std::string CellLetters::joined_in(const RowText& row) const {
    std::string run;
    std::size_t characters = 0;
    const auto joined_in_run = [&] {
        const auto letters = segmenter_.spell(run).letters;
        const bool joins = letters.size() < characters;
        run.clear();
        characters = 0;
        for (const auto& letter : letters)
            if (joins && segmenter_.clusters(letter).size() > 1) return letter;
        return std::string();
    };
    for (const std::string_view character : row.characters) {
        if (is_one_letter(character) && !is_closed(character)) {
            run += character;
            ++characters;
        } else if (auto letter = joined_in_run(); !letter.empty()) {
            return letter;
        }
    }
    return joined_in_run();
}

bool CellLetters::is_whole(std::string_view written) const {
    const auto characters = segmenter_.clusters(written);
    const auto is_letter = [&](const auto& character) {
        return !segmenter_.spell(character).letters.empty();
    };
    if (std::all_of(characters.begin(), characters.end(), is_letter)) return true;
    std::string seen;
    std::string spelled;
    for (const auto& character : characters) seen += character;
    for (const auto& letter : segmenter_.spell(written).letters) spelled += letter;
    return seen == spelled;
}

std::optional<Letter> CellLetters::spelled(std::string_view written) {
    if (is_closed(written)) return closed_cell;
    if (!is_whole(written)) return std::nullopt;
    const auto spelling = segmenter_.spell(written);
    if (spelling.letters.size() != 1) return std::nullopt;
    const std::string& letter = spelling.letters.front();
    if (alphabet_.size() == max_letters && !alphabet_.find(letter)) return std::nullopt;
    return alphabet_.add(letter);
}

}  // namespace lode
