#include <memory>
#include <new>

#include <unicode/brkiter.h>
#include <unicode/uchar.h>
#include <unicode/ulocdata.h>
#include <unicode/uniset.h>
#include <unicode/ures.h>
#include <unicode/usetiter.h>
#include <letterlode/text.hpp>

#include "text/locale.hpp"
#include "text/utf8.hpp"

namespace lode {
namespace {

struct CloseLocaleData {
    void operator()(ULocaleData* data) const { ulocdata_close(data); }
};

struct CloseBundle {
    void operator()(UResourceBundle* bundle) const { ures_close(bundle); }
};

// Asked for a language that it has no data for, ICU answers with the language of the environment.
bool has_data(const icu::Locale& locale) {
    UErrorCode status = U_ZERO_ERROR;
    const std::unique_ptr<UResourceBundle, CloseBundle> bundle(ures_open(nullptr, locale.getName(), &status));
    check(status, "ICU has no data of languages");
    return status != U_USING_DEFAULT_WARNING;
}

icu::UnicodeSet main_exemplars(const icu::Locale& locale) {
    if (!has_data(locale)) return {};
    UErrorCode status = U_ZERO_ERROR;
    const std::unique_ptr<ULocaleData, CloseLocaleData> data(ulocdata_open(locale.getName(), &status));
    check(status, "ICU has no data for the letters of languages");
    icu::UnicodeSet set;
    ulocdata_getExemplarSet(data.get(), set.toUSet(), 0, ULOCDATA_ES_STANDARD, &status);
    // CLDR's sets are well-formed: where ICU had no memory for one, it may say otherwise, or say nothing.
    if (status == U_MALFORMED_SET || set.isBogus()) throw std::bad_alloc();
    check(status, "ICU has no data for the letters of a language");
    return set;
}

}  // namespace

// CLDR's main sets are in lower case, and Arabic and Indic ones hold marks, which are no letters by
// themselves: the segmenter sorts both out. A string of the set that is several letters here (a digraph) is
// left to those letters.
std::vector<std::string> main_letters(const TextRules& rules) {
    const auto locale = locale_of(rules.locale);
    if (!locale || *locale->getName() == '\0') return {};
    const auto segmenter = Segmenter::open(rules);
    if (!segmenter) return {};

    const icu::UnicodeSet set = main_exemplars(*locale);
    std::vector<std::string> letters;
    Alphabet seen;
    icu::UnicodeSetIterator each(set);
    while (each.next()) {
        // Of a single character it would have to make a string, and does not say where it could not.
        const auto spelling = segmenter->spell(
            to_utf8(each.isString() ? each.getString() : icu::UnicodeString(each.getCodepoint())));
        if (!spelling.bad.empty() || spelling.letters.size() != 1) continue;
        if (seen.find(spelling.letters.front())) continue;
        seen.add(spelling.letters.front());
        letters.push_back(spelling.letters.front());
    }
    return letters;
}

}  // namespace lode
