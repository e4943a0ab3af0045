// Words of eleven languages, from Debian's dictionaries: every one is taken apart into letters of its
// alphabet, gives the word again, and a puzzle of twenty is made and certified in each language.

#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>
#include <set>

#include <unicode/locid.h>
#include <unicode/uchar.h>
#include <unicode/ulocdata.h>
#include <unicode/uniset.h>
#include <unicode/usetiter.h>
#include <letterlode/puzzle.hpp>

#include "support/recipes.hpp"

using namespace lode;
using namespace lode::test;

namespace {

struct Language {
    const char* locale;
    std::string file;
    const char* encoding;
    const char* package;
    int letters_of_several;  // that a few thousand words have at the least
};

const std::string dict = LODE_WORD_LISTS "/dict/";
const std::string hunspell = LODE_WORD_LISTS "/hunspell/";

const std::vector<Language> languages{{"en", dict + "american-english", "UTF-8", "wamerican", 0},
                                      {"de", dict + "ngerman", "UTF-8", "wngerman", 0},
                                      {"fr", dict + "french", "UTF-8", "wfrench", 0},
                                      {"es", dict + "spanish", "UTF-8", "wspanish", 0},
                                      {"it", dict + "italian", "UTF-8", "witalian", 0},
                                      {"nl", dict + "dutch", "UTF-8", "wdutch", 1},
                                      {"cy", LODE_WELSH_WORDS, "ISO-8859-14", "aspell-cy", 8},
                                      {"hr", hunspell + "hr_HR.dic", "UTF-8", "hunspell-hr", 3},
                                      {"hu", hunspell + "hu_HU.dic", "UTF-8", "hunspell-hu", 12},
                                      {"sk", hunspell + "sk_SK.dic", "ISO-8859-2", "myspell-sk", 2},
                                      {"hi", hunspell + "hi_IN.dic", "UTF-8", "hunspell-hi", 0}};

std::string utf8(const icu::UnicodeString& text) {
    std::string bytes;
    text.toUTF8String(bytes);
    return bytes;
}

// Some five thousand, from all of the list. What stands behind a '/', a tab or a blank is none of a word.
std::vector<std::string> words_of(const Language& language) {
    std::ifstream file(language.file);
    if (!file)
        throw std::runtime_error(language.file + " is missing: install the package " + language.package);
    std::vector<std::string> all;
    for (std::string line; std::getline(file, line);) {
        line = line.substr(0, line.find_first_of("/\t \r"));
        const bool is_number = !line.empty() && line.front() >= '0' && line.front() <= '9';
        if (!line.empty() && !is_number)
            all.push_back(utf8(
                icu::UnicodeString(line.data(), static_cast<std::int32_t>(line.size()), language.encoding)));
    }
    CHECK(all.size() > 10'000);
    std::vector<std::string> some;
    for (std::size_t at = 0; at < all.size(); at += all.size() / 5'000)
        some.push_back(normalised(all[at]).value());
    return some;
}

// In capitals by ICU, without what is no letter, no mark on one and no digit, and without joiners.
std::string capitals(const std::string& word, const char* locale) {
    icu::UnicodeString all = icu::UnicodeString::fromUTF8(word).toUpper(icu::Locale(locale));
    icu::UnicodeString letters;
    for (std::int32_t at = 0; at < all.length(); at += U16_LENGTH(all.char32At(at))) {
        const UChar32 character = all.char32At(at);
        if (U_GET_GC_MASK(character) & (U_GC_L_MASK | U_GC_M_MASK | U_GC_ND_MASK)) letters.append(character);
    }
    return normalised(utf8(letters)).value();
}

void add_exemplars(const char* locale, ULocaleDataExemplarSetType type, std::set<std::string>& letters) {
    UErrorCode status = U_ZERO_ERROR;
    ULocaleData* data = ulocdata_open(locale, &status);
    icu::UnicodeSet set;
    ulocdata_getExemplarSet(data, set.toUSet(), 0, type, &status);
    ulocdata_close(data);
    REQUIRE(U_SUCCESS(status));
    icu::UnicodeSetIterator each(set);
    while (each.next()) {
        icu::UnicodeString member = each.getString();
        letters.insert(normalised(utf8(member.toUpper(icu::Locale(locale)))).value());
    }
}

bool is_of_several(const std::string& letter) {
    static const Segmenter plain = Segmenter::open({}).value();
    return plain.clusters(letter).size() > 1;
}

}  // namespace

TEST_CASE("every word gives letters that give the word again") {
    for (const auto& language : languages) {
        const auto segmenter = Segmenter::open({language.locale}).value();
        std::set<std::string> exemplars;
        add_exemplars(language.locale, ULOCDATA_ES_STANDARD, exemplars);
        std::set<std::string> known = exemplars;
        add_exemplars(language.locale, ULOCDATA_ES_AUXILIARY, known);
        // Indic letters carry signs: their alphabet has the parts.
        const bool has_signs = std::string(language.locale) == "hi";
        std::set<std::string> of_several;
        long words = 0, unusable = 0, foreign = 0, letters = 0;
        for (const auto& word : words_of(language)) {
            const auto spelling = segmenter.spell(word);
            ++words;
            if (!spelling.bad.empty()) {
                ++unusable;
                continue;
            }
            std::string all;
            for (const auto& letter : spelling.letters) {
                all += letter;
                ++letters;
                if (is_of_several(letter)) {
                    of_several.insert(letter);
                    if (exemplars.count(letter) == 0) CHECK(letter == "one of the alphabet");
                } else if (!has_signs && known.count(letter) == 0) {
                    ++foreign;
                }
            }
            if (all != capitals(word, language.locale)) {
                CAPTURE(language.locale, word);
                CHECK(all == capitals(word, language.locale));
            }
        }
        CAPTURE(language.locale, words, unusable, letters, foreign, of_several);
        CHECK(words > 5'000 - 1);
        CHECK(unusable * 1'000 < words);
        CHECK(foreign * 1'000 < letters);
        CHECK(static_cast<int>(of_several.size()) >= language.letters_of_several);
        if (language.letters_of_several == 0) CHECK(of_several.empty());
    }
}

TEST_CASE("a puzzle of twenty words is made and certified in every language") {
    for (const auto& language : languages) {
        const auto segmenter = Segmenter::open({language.locale}).value();
        Recipe recipe;
        recipe.text.locale = language.locale;
        recipe.default_avoid_list = false;
        recipe.nested = Nested::separate;
        const auto words = words_of(language);
        std::set<std::vector<std::string>> taken;
        for (std::size_t at = 100; at < words.size() && taken.size() < 20; at += words.size() / 90) {
            const auto letters = segmenter.spell(words[at]).letters;
            if (letters.size() >= 3 && letters.size() <= 10 && taken.insert(letters).second)
                recipe.words.words.push_back({words[at], 0});
        }
        CAPTURE(language.locale);
        REQUIRE(taken.size() == 20);
        const auto puzzle = make(recipe);
        REQUIRE(puzzle);
        CHECK(puzzle->audit.certified);
        CHECK(puzzle->words.size() == 20);
        const auto read = read_grid(grid_text(puzzle->grid.grid, puzzle->grid.alphabet), "", segmenter);
        REQUIRE(read);
        CHECK(audit(*read, recipe).value().certified);
        CHECK(puzzle_from_json(to_json(*puzzle), "").value().audit.certified);
    }
}
