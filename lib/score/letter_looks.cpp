// The looks of letters without a font: a table of the font that is used where none is named.

#include <algorithm>
#include <charconv>
#include <map>
#include <stdexcept>
#include <utility>

#include <letterlode/score.hpp>

#include "score/letter_looks_table.hpp"
#include "text/marks.hpp"
#include "text/utf8.hpp"

namespace lode {
namespace {

struct Table {
    std::string font;
    std::map<std::string, double, std::less<>> ink;
    std::map<std::pair<std::string, std::string>, double> likeness;
};

std::string_view take_line(std::string_view& text) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    return line;
}

double number_in(std::string_view text) {
    double value = 0;
    const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
    if (read.ec != std::errc{}) throw std::logic_error("data/letter_looks.csv holds what is no number");
    return value;
}

// A comment names the font; "A,0.31" is a letter's ink, "A,B,0.62" the likeness of two.
Table read_table() {
    Table table;
    std::string_view text = letter_looks_table();
    while (!text.empty()) {
        const std::string_view line = take_line(text);
        if (line.starts_with("# font: ")) table.font = line.substr(8);
        if (line.empty() || line.front() == '#') continue;
        const std::size_t first = line.find(',');
        const std::size_t last = line.rfind(',');
        const std::string letter(line.substr(0, first));
        const double value = number_in(line.substr(last + 1));
        if (first == last)
            table.ink[letter] = value;
        else
            table.likeness[{letter, std::string(line.substr(first + 1, last - first - 1))}] = value;
    }
    return table;
}

}  // namespace

LetterLooks built_in_looks(const Alphabet& alphabet) {
    static const Table table = read_table();
    const std::size_t count = alphabet.size();
    LetterLooks looks{table.font, std::vector<double>(count, -1), {}};
    const icu::Locale no_language("");
    std::vector<std::string> bases;
    for (std::size_t letter = 0; letter < count; ++letter) {
        bases.push_back(
            to_utf8(without_marks(to_icu(alphabet.text(static_cast<Letter>(letter))), no_language)));
        if (const auto ink = table.ink.find(bases.back()); ink != table.ink.end())
            looks.ink[letter] = ink->second;
    }
    if (count > max_letters_compared) return looks;
    looks.likeness.assign(count * count, 0);
    for (std::size_t one = 0; one < count; ++one)
        for (std::size_t other = 0; other < count; ++other) {
            if (one == other) continue;
            // A letter and the same with a mark differ by the mark alone.
            const bool same = bases[one] == bases[other];
            const auto found = table.likeness.find(std::minmax(bases[one], bases[other]));
            looks.likeness[one * count + other] = same                            ? 1
                                                  : found == table.likeness.end() ? 0
                                                                                  : found->second;
        }
    return looks;
}

}  // namespace lode
