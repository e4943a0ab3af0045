#include <memory>
#include <mutex>
#include <new>
#include <stdexcept>

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

// What has no look of its own (joiners, direction marks, variation selectors) makes no other letter. In the
// cells of a grid nothing joins, so it is left out: a word may hold U+200C and still be read.
icu::UnicodeString without_invisible(const icu::UnicodeString& cluster) {
    icu::UnicodeString seen;
    for (std::int32_t at = 0; at < cluster.length();) {
        const UChar32 character = cluster.char32At(at);
        if (!u_hasBinaryProperty(character, UCHAR_DEFAULT_IGNORABLE_CODE_POINT)) seen.append(character);
        at += U16_LENGTH(character);
    }
    check(seen);
    return seen;
}

// U+02BC and its like are letters to Unicode; between letters a maker means an apostrophe.
bool is_apostrophe_letter(UChar32 character) {
    return character == 0x2BC || character == 0x2B9 || character == 0x2BB;
}

}  // namespace

struct Segmenter::State {
    TextRules rules;
    icu::Locale locale{""};  // never the default one, which is read from the environment
    // A break iterator holds the text that it walks, so that one call at a time uses it. A clone for each
    // would take longer, and ICU 72 falls over one that it has no memory for.
    std::unique_ptr<icu::BreakIterator> breaks;
    mutable icu::UnicodeString walked;
    mutable std::mutex walking;

    [[nodiscard]] icu::UnicodeString cased(std::string_view text) const {
        icu::UnicodeString characters = composed(to_icu(text));
        if (rules.letters == LetterCase::upper) characters.toUpper(locale);
        if (rules.letters == LetterCase::lower) characters.toLower(locale);
        return rules.letters == LetterCase::keep ? characters : composed(characters);
    }

    template <class Visit>
    void each_cluster(const icu::UnicodeString& characters, Visit visit) const {
        const std::lock_guard lock(walking);
        walked = characters;
        check(walked);
        breaks->setText(walked);
        std::int32_t start = breaks->first();
        for (std::int32_t end = breaks->next(); end != icu::BreakIterator::DONE;
             start = end, end = breaks->next())
            visit(walked.tempSubStringBetween(start, end));
        if (start != walked.length()) throw std::runtime_error("ICU stopped before the end of a text");
    }

    // Sought in the text as it was written: another case may have more letters.
    void find_unusable(std::string_view text, Spelling& spelling) const {
        int position = 0;
        each_cluster(composed(to_icu(text)), [&](const icu::UnicodeString& cluster) {
            ++position;
            if (!spelling.bad.empty()) return;
            const icu::UnicodeString seen = without_invisible(cluster);
            if (seen.isEmpty() || role_of(seen) != Role::unusable) return;
            spelling.bad = to_utf8(cluster);
            spelling.bad_position = position;
        });
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
    state_->find_unusable(text, spelling);
    if (!spelling.bad.empty()) return spelling;
    state_->each_cluster(state_->cased(text), [&](const icu::UnicodeString& cluster) {
        const icu::UnicodeString seen = without_invisible(cluster);
        if (seen.isEmpty() || is_apostrophe_letter(seen.char32At(0)) || role_of(seen) != Role::letter) return;
        spelling.letters.push_back(to_utf8(seen));
    });
    return spelling;
}

std::vector<std::string> Segmenter::clusters(std::string_view text) const {
    std::vector<std::string> all;
    state_->each_cluster(state_->cased(text),
                         [&](const icu::UnicodeString& cluster) { all.push_back(to_utf8(cluster)); });
    return all;
}

}  // namespace lode
