#include "text/main_letters.hpp"

#include <unicode/usetiter.h>

#include "text/joined_letters.hpp"
#include "text/utf8.hpp"

namespace lode {

// CLDR's main sets are in lower case, and Arabic and Indic ones hold marks, which are no letters by
// themselves: the segmenter sorts both out. What it makes several letters of, or none (a digraph that is to
// be split, a sharp s that is doubled, an apostrophe), is left to those letters.
std::vector<std::string> letters_of(const icu::UnicodeSet& exemplars, const Segmenter& segmenter) {
    std::vector<std::string> letters;
    Alphabet seen;
    icu::UnicodeSetIterator each(exemplars);
    while (each.next()) {
        if (each.isString() && is_long_form(each.getString(), exemplars)) continue;
        // Of a single character it would have to make a string, and does not say where it could not.
        const auto spelling = segmenter.spell(
            to_utf8(each.isString() ? each.getString() : icu::UnicodeString(each.getCodepoint())));
        if (!spelling.bad.empty() || spelling.letters.size() != 1) continue;
        if (seen.find(spelling.letters.front())) continue;
        seen.add(spelling.letters.front());
        letters.push_back(spelling.letters.front());
    }
    return letters;
}

std::vector<std::string> main_letters(const TextRules& rules) {
    const auto segmenter = Segmenter::open(rules);
    return segmenter ? segmenter->main_letters() : std::vector<std::string>();
}

}  // namespace lode
