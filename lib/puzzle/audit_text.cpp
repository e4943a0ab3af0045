// What an audit found, as a table for people.

#include <algorithm>

#include <letterlode/puzzle.hpp>

#include "puzzle/place_text.hpp"
#include "text/direction.hpp"
#include "text/display_width.hpp"

namespace lode {
namespace {

constexpr std::string_view gap = "  ";

std::string plural(std::size_t count, const std::string& one, const std::string& many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

// A line for each word, and one more for each copy after the first.
std::string word_table(const std::vector<WordFinding>& words) {
    constexpr std::string_view expected = "expected";
    constexpr std::string_view found = "found";
    std::size_t across = 4;
    for (const auto& word : words) across = std::max(across, display_width(word.shown));
    const std::string indent(across + gap.size() + expected.size() + gap.size() + found.size() + gap.size(),
                             ' ');

    std::string text = padded("word", across);
    ((((text += gap) += expected) += gap) += found) += gap;
    text += "where\n";
    for (const auto& word : words) {
        (text += from_the_left(padded(isolated(word.shown), across))) += gap;
        (text += padded_before(std::to_string(word.expected), expected.size())) += gap;
        (text += padded_before(std::to_string(word.copies.size()), found.size())) += gap;
        if (word.copies.empty()) text += "MISSING\n";
        for (std::size_t at = 0; at < word.copies.size(); ++at) {
            const Copy& copy = word.copies[at];
            if (at > 0) text += indent;
            text += copy_text(copy);
            if (at < word.inside.size() && !word.inside[at].empty())
                text += ", inside " + isolated(word.inside[at]);
            if (std::find(word.stray.begin(), word.stray.end(), copy) != word.stray.end()) text += "  STRAY";
            text += "\n";
        }
        // Where there are some, but fewer than should be.
        if (!word.copies.empty() && word.copies.size() < static_cast<std::size_t>(std::max(word.expected, 1)))
            text += indent + "MISSING\n";
    }
    return text;
}

std::string table_of(const std::string& title, const std::vector<AvoidedFinding>& findings) {
    if (findings.empty()) return {};
    std::size_t across = 0;
    for (const auto& finding : findings) across = std::max(across, display_width(finding.word));
    std::string text = "\n" + title + "\n";
    for (const auto& finding : findings) {
        (text += from_the_left(padded(isolated(finding.word), across))) += gap;
        text += copy_text(finding.copy) + "\n";
    }
    return text;
}

}  // namespace

std::string audit_text(const Audit& audit) {
    std::string text = word_table(audit.words);
    text += table_of("AVOIDED words:", audit.avoided);
    text += table_of("Avoided words that were allowed:", audit.allowed);
    text += table_of("Real words that stand there by chance, which is no finding:", audit.chance);
    if (audit.cut_short) text += "\nThere is more of some of these than is listed here.\n";
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
               " in the grid " + (once ? "once" : "as often as it should") + " and nowhere else" +
               (audit.avoided_words > 0 ? ", and no avoided word stands in it.\n"
                                        : "; no words to avoid were looked for.\n");
    }
    std::size_t strays = 0;
    for (const auto& word : audit.words) strays += word.stray.size();
    return "Not certified: " + std::to_string(audit.missing.size()) + " missing, " +
           plural(strays, "stray copy", "stray copies") + ", " +
           plural(audit.avoided.size(), "avoided word", "avoided words") + ".\n";
}

}  // namespace lode
