#include <algorithm>
#include <memory>
#include <new>

#include <unicode/normalizer2.h>
#include <unicode/uchar.h>
#include <letterlode/text.hpp>

#include "text/clusters.hpp"
#include "text/exemplars.hpp"
#include "text/final_forms.hpp"
#include "text/joined_letters.hpp"
#include "text/locale.hpp"
#include "text/main_letters.hpp"
#include "text/marks.hpp"
#include "text/plain_ascii.hpp"
#include "text/readings.hpp"
#include "text/utf8.hpp"

namespace lode {
namespace {

constexpr char16_t small_sharp_s = 0xDF;
constexpr char16_t capital_sharp_s = 0x1E9E;

// What a bar is while a word is cased: invisible, so that no rule of casing sees it (a sigma before it is no
// final one), and a cluster of its own. A word's own ones, which nobody sees, are left out before.
constexpr char16_t bar_in_text = 0x2060;

// The characters that Unicode has for two letters in one: of Dutch and of Croatian.
bool is_two_letters(UChar32 character) {
    return (character >= 0x132 && character <= 0x133) || (character >= 0x1C4 && character <= 0x1CC) ||
           (character >= 0x1F1 && character <= 0x1F3);
}

icu::UnicodeString taken_apart(UChar32 character) {
    UErrorCode status = U_ZERO_ERROR;
    const icu::Normalizer2* form = icu::Normalizer2::getNFKCInstance(status);
    check(status, "ICU has no data for normalisation");
    icu::UnicodeString apart = form->normalize(icu::UnicodeString(character), status);
    check(status, "ICU could not normalise a text");
    check(apart);
    return apart;
}

icu::UnicodeString with_bars(const icu::UnicodeString& text) {
    icu::UnicodeString result;
    for (std::int32_t at = 0; at < text.length(); ++at) {
        const char16_t unit = text.charAt(at);
        if (unit == letter_bar)
            result.append(bar_in_text);
        else if (unit != bar_in_text)
            result.append(unit);
    }
    check(result);
    return result;
}

// A part of a word that joins with others or stands alone. What parts letters has no key and is no letter.
struct Part {
    std::string text;
    std::string key;
    bool is_letter = false;
};

}  // namespace

bool keeps_sharp_s(const TextRules& rules) {
    return rules.sharp_s ? *rules.sharp_s == SharpS::keep : rules.letters != LetterCase::upper;
}

struct Segmenter::State {
    TextRules rules;
    icu::Locale locale;  // never the default one, which is read from the environment
    ClusterWalk walk;
    PlainAscii plain;
    icu::UnicodeSet exemplars;  // CLDR's main ones
    JoinedLetters of_language;  // what can be joined by the rules or not
    JoinedLetters joined;       // what is

    State(const TextRules& given, const icu::Locale& its)
        : rules(given), locale(its), walk(its), plain(its, given.letters) {
        if (locale.isBogus()) throw std::bad_alloc();
        read_main_exemplars(its, exemplars);
        of_language = JoinedLetters(exemplars, walk, [&](const icu::UnicodeString& cluster) {
            return without_what_is_stripped(cluster);
        });
        if (rules.digraphs == Digraphs::join) joined = of_language;
    }

    [[nodiscard]] icu::UnicodeString without_what_is_stripped(const icu::UnicodeString& cluster) const {
        return rules.marks == Marks::strip ? without_marks(cluster, locale) : cluster;
    }

    // A doubled sharp s follows the case that is wanted; where letters keep theirs, its own.
    [[nodiscard]] icu::UnicodeString with_sharp_s(const icu::UnicodeString& text) const {
        if (text.indexOf(small_sharp_s) < 0 && text.indexOf(capital_sharp_s) < 0) return text;
        const bool keeps = keeps_sharp_s(rules);
        icu::UnicodeString result;
        for (std::int32_t at = 0; at < text.length(); ++at) {
            const char16_t unit = text.charAt(at);
            if (unit != small_sharp_s && unit != capital_sharp_s)
                result.append(unit);
            else if (!keeps)
                result.append(unit == small_sharp_s ? u"ss" : u"SS", 2);
            else
                result.append(rules.letters == LetterCase::upper ? capital_sharp_s : unit);
        }
        check(result);
        return result;
    }

    [[nodiscard]] icu::UnicodeString cased(const icu::UnicodeString& text) const {
        icu::UnicodeString characters = with_sharp_s(composed(text));
        if (rules.letters == LetterCase::upper) characters.toUpper(locale);
        if (rules.letters == LetterCase::lower) characters.toLower(locale);
        check(characters);
        if (rules.letters != LetterCase::keep) characters = composed(characters);
        if (rules.finals == Finals::keep) return characters;
        for (std::int32_t at = 0; at < characters.length(); ++at)
            characters.setCharAt(at, static_cast<char16_t>(without_final_form(characters.charAt(at))));
        check(characters);
        return characters;
    }

    // Sought in the text as it was written: another case may have more letters.
    void find_unusable(std::string_view text, Spelling& spelling) const {
        int position = 0;
        walk.each(composed(to_icu(text)), [&](const icu::UnicodeString& cluster) {
            ++position;
            if (!spelling.bad.empty()) return;
            const bool is_bar = cluster.length() == 1 && cluster.charAt(0) == letter_bar;
            const icu::UnicodeString seen = without_invisible(cluster);
            if (is_bar || seen.isEmpty() || role_of(seen) != Role::unusable) return;
            spelling.bad = to_utf8(cluster);
            spelling.bad_position = position;
        });
    }

    // The letters that a cluster is: two where it is one character for a letter of two that the language has.
    [[nodiscard]] std::vector<icu::UnicodeString> letters_in(const icu::UnicodeString& cluster) const {
        const UChar32 first = cluster.char32At(0);
        if (is_two_letters(first)) {
            const icu::UnicodeString both = taken_apart(first);
            const icu::UnicodeString one(both, 0, 1);
            icu::UnicodeString other(both, 1);
            other.append(cluster, U16_LENGTH(first), cluster.length());
            check(one);
            check(other);
            const std::vector letters{without_what_is_stripped(one),
                                      without_what_is_stripped(composed(other))};
            if (of_language.has({join_key(letters[0]), join_key(letters[1])})) return letters;
        }
        return {without_what_is_stripped(cluster)};
    }

    void add_parts(const icu::UnicodeString& cluster, std::vector<Part>& parts) const {
        const icu::UnicodeString seen = without_invisible(cluster);
        if (seen.isEmpty()) return;
        const Role role = role_of(seen);
        if (role != Role::letter && role != Role::apostrophe) return parts.push_back({});
        const bool joins = !joined.all().empty();
        if (role == Role::apostrophe) return parts.push_back({{}, joins ? join_key(seen) : "", false});
        for (const auto& letter : letters_in(seen))
            parts.push_back({to_utf8(letter), joins ? join_key(letter) : "", true});
    }

    [[nodiscard]] std::vector<Part> parts_of(std::string_view text) const {
        std::vector<Part> parts;
        icu::UnicodeString characters = to_icu(text);
        // Where there are no bars, a word joiner is the text's own.
        const bool has_bars = text.find(letter_bar) != std::string_view::npos;
        if (has_bars) characters = with_bars(characters);
        walk.each(cased(characters), [&](const icu::UnicodeString& cluster) {
            if (has_bars && cluster.charAt(0) == bar_in_text)
                parts.push_back({});
            else
                add_parts(cluster, parts);
        });
        return parts;
    }

    [[nodiscard]] std::vector<Part> plain_parts_of(std::string_view text) const {
        std::vector<Part> parts;
        parts.reserve(text.size());
        for (const char character : text) {
            const Role role = plain.role(character);
            Part& part = parts.emplace_back();
            if (role == Role::apostrophe) part.key = "'";
            if (role != Role::letter) continue;
            const char cased_letter = plain.cased(character);
            const bool is_capital = cased_letter >= 'A' && cased_letter <= 'Z';
            part.text = cased_letter;
            part.key = is_capital ? static_cast<char>(cased_letter + ('a' - 'A')) : cased_letter;
            part.is_letter = true;
        }
        return parts;
    }

    [[nodiscard]] std::vector<std::string> join(const std::vector<Part>& parts) const {
        const auto key = [&](std::size_t at) {
            return at < parts.size() ? std::string_view(parts[at].key) : std::string_view();
        };
        std::vector<std::string> letters;
        for (std::size_t at = 0; at < parts.size();) {
            const JoinedLetter* one = joined.longest_at(at, key);
            if (!one) {
                if (parts[at].is_letter) letters.push_back(parts[at].text);
                ++at;
                continue;
            }
            std::string& letter = letters.emplace_back();
            // Of all apostrophes the alphabet's own is written.
            for (const auto& its : one->parts) {
                letter += parts[at].is_letter ? parts[at].text : its;
                ++at;
            }
        }
        return letters;
    }

    [[nodiscard]] std::vector<std::string> plain_letters(std::string_view text) const {
        if (!joined.all().empty()) return join(plain_parts_of(text));
        std::vector<std::string> letters;
        letters.reserve(text.size());
        for (const char character : text)
            if (plain.role(character) == Role::letter) letters.emplace_back(1, plain.cased(character));
        return letters;
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
    return Segmenter(std::make_unique<State>(rules, *locale));
}

Segmenter::Segmenter(std::unique_ptr<State> state) : state_(std::move(state)) {}
Segmenter::Segmenter(Segmenter&&) noexcept = default;
Segmenter& Segmenter::operator=(Segmenter&&) noexcept = default;
Segmenter::~Segmenter() = default;

bool Segmenter::joins_letters() const {
    return !state_->joined.all().empty();
}

const TextRules& Segmenter::rules() const {
    return state_->rules;
}

Segmenter::Spelling Segmenter::spell(std::string_view text) const {
    Spelling spelling;
    if (state_->plain.spells(text)) {
        spelling.letters = state_->plain_letters(text);
        return spelling;
    }
    state_->find_unusable(text, spelling);
    if (spelling.bad.empty()) spelling.letters = state_->join(state_->parts_of(text));
    return spelling;
}

std::vector<std::string> Segmenter::readings(std::string_view word, std::size_t at_most) const {
    const bool keeps = keeps_sharp_s(state_->rules);
    if (state_->joined.all().empty() && !keeps) return {std::string(word)};
    std::vector<std::string> letters;
    for (auto& part : state_->plain.spells(word) ? state_->plain_parts_of(word) : state_->parts_of(word))
        if (part.is_letter) letters.push_back(std::move(part.text));
    return readings_of(word, letters, {state_->joined, keeps}, at_most);
}

std::vector<std::string> Segmenter::main_letters() const {
    return letters_of(state_->exemplars, *this);
}

std::vector<std::string> Segmenter::clusters(std::string_view text) const {
    std::vector<std::string> all;
    state_->walk.each(state_->cased(to_icu(text)), [&](const icu::UnicodeString& cluster) {
        std::string& letter = all.emplace_back();
        for (const auto& part : state_->letters_in(cluster)) letter += to_utf8(part);
    });
    return all;
}

std::string without_bars(std::string_view word) {
    std::string shown(word);
    shown.erase(std::remove(shown.begin(), shown.end(), letter_bar), shown.end());
    return shown;
}

}  // namespace lode
