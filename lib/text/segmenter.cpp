#include <memory>
#include <new>

#include <unicode/brkiter.h>
#include <unicode/uchar.h>
#include <letterlode/text.hpp>

#include "text/locale.hpp"
#include "text/utf8.hpp"

namespace lode {
namespace {

enum class Role { letter, left_out, unusable };

// A cluster is what its first character is: marks follow a letter, never lead it.
Role role_of(const icu::UnicodeString& cluster) {
    const UChar32 first = cluster.char32At(0);
    const auto category = U_GET_GC_MASK(first);
    if (category & (U_GC_L_MASK | U_GC_ND_MASK)) return Role::letter;
    if (category & (U_GC_Z_MASK | U_GC_P_MASK)) return Role::left_out;
    // An apostrophe that is typed as an accent or a modifier; a soft hyphen; a tab.
    if (first == 0x60 || first == 0xB4 || first == 0x2BC || first == 0xAD || first == '\t')
        return Role::left_out;
    return Role::unusable;
}

// U+02BC and its like are letters to Unicode; between letters a maker means an apostrophe.
bool is_apostrophe_letter(UChar32 character) {
    return character == 0x2BC || character == 0x2B9 || character == 0x2BB;
}

}  // namespace

struct Segmenter::State {
    TextRules rules;
    icu::Locale locale{""};  // never the default one, which is read from the environment
    // Break iterators hold the text that they walk: each call works on a clone.
    std::unique_ptr<icu::BreakIterator> breaks;

    [[nodiscard]] icu::UnicodeString cased(std::string_view text) const {
        icu::UnicodeString characters = composed(to_icu(text));
        if (rules.letters == LetterCase::upper) characters.toUpper(locale);
        if (rules.letters == LetterCase::lower) characters.toLower(locale);
        return rules.letters == LetterCase::keep ? characters : composed(characters);
    }

    template <class Visit>
    void each_cluster(std::string_view text, Visit visit) const {
        const icu::UnicodeString characters = cased(text);
        const std::unique_ptr<icu::BreakIterator> walk(breaks->clone());
        if (!walk) throw std::bad_alloc();
        walk->setText(characters);
        std::int32_t start = walk->first();
        for (std::int32_t end = walk->next(); end != icu::BreakIterator::DONE;
             start = end, end = walk->next())
            visit(characters.tempSubStringBetween(start, end));
    }
};

Outcome<Segmenter> Segmenter::open(const TextRules& rules) {
    const auto locale = locale_of(rules.locale);
    if (!locale)
        return Refusal{Refusal::Reason::unusable,
                       "'" + rules.locale + "' names no language.",
                       {},
                       {"Give a language tag such as en, de, cy or sr-Latn, or root for none in particular."},
                       {},
                       0};
    UErrorCode status = U_ZERO_ERROR;
    auto state = std::make_unique<State>();
    state->rules = rules;
    state->locale = *locale;
    state->breaks.reset(icu::BreakIterator::createCharacterInstance(*locale, status));
    check(status, "ICU has no data for grapheme clusters");
    if (!state->breaks || state->locale.isBogus()) throw std::bad_alloc();
    return Segmenter(std::move(state));
}

Segmenter::Segmenter(std::unique_ptr<State> state) : state_(std::move(state)) {}
Segmenter::Segmenter(Segmenter&&) noexcept = default;
Segmenter& Segmenter::operator=(Segmenter&&) noexcept = default;
Segmenter::~Segmenter() = default;

const TextRules& Segmenter::rules() const {
    return state_->rules;
}

Segmenter::Spelling Segmenter::spell(std::string_view text) const {
    Spelling spelling;
    int position = 0;
    state_->each_cluster(text, [&](const icu::UnicodeString& cluster) {
        ++position;
        if (!spelling.bad.empty() || is_apostrophe_letter(cluster.char32At(0))) return;
        switch (role_of(cluster)) {
            case Role::letter:
                spelling.letters.push_back(to_utf8(cluster));
                break;
            case Role::left_out:
                break;
            case Role::unusable:
                spelling.bad = to_utf8(cluster);
                spelling.bad_position = position;
                break;
        }
    });
    return spelling;
}

std::vector<std::string> Segmenter::clusters(std::string_view text) const {
    std::vector<std::string> all;
    state_->each_cluster(text, [&](const icu::UnicodeString& cluster) { all.push_back(to_utf8(cluster)); });
    return all;
}

}  // namespace lode
