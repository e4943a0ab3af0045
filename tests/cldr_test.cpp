// Alphabets held to CLDR's own files (package unicode-cldr-core), read here without ICU: which letters a
// language has, and which of several characters are one.

#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>
#include <set>
#include <sstream>

#include <letterlode/text.hpp>

#include "support/grids.hpp"
#include "support/unicode_files.hpp"

using namespace lode;
using namespace lode::test;
using Set = std::set<std::string>;

namespace {

std::string main_file(const std::string& language) {
    const std::string path = LODE_CLDR "/main/" + language + ".xml";
    std::ifstream file(path);
    if (!file) throw std::runtime_error(path + " is missing: install the package unicode-cldr-core");
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

// The main exemplars as the file writes them: "[a b {ch} d-f \u0301]".
std::string main_set(const std::string& language) {
    const std::string text = main_file(language);
    const std::string before = "<exemplarCharacters>";
    const auto start = text.find(before);
    if (start == std::string::npos) throw std::runtime_error("no main exemplars of " + language);
    const auto end = text.find("</exemplarCharacters>", start);
    return text.substr(start + before.size(), end - start - before.size());
}

char32_t next_point(const std::string& text, std::size_t& at) {
    if (text[at] == '\\' && text[at + 1] == 'u') {
        const auto point = std::stoul(text.substr(at + 2, 4), nullptr, 16);
        at += 6;
        return static_cast<char32_t>(point);
    }
    if (text[at] == '\\') ++at;
    const auto first = static_cast<unsigned char>(text[at]);
    const std::size_t length = first < 0x80 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
    char32_t point = length == 1 ? first : first & (0x7Fu >> length);
    for (std::size_t more = 1; more < length; ++more)
        point = point << 6 | (static_cast<unsigned char>(text[at + more]) & 0x3Fu);
    at += length;
    return point;
}

Set parsed(const std::string& pattern) {
    Set members;
    std::size_t at = 1;
    char32_t last = 0;
    while (pattern.at(at) != ']') {
        if (pattern[at] == ' ') {
            ++at;
        } else if (pattern[at] == '{') {
            std::string member;
            for (++at; pattern.at(at) != '}';) member += utf8_of(next_point(pattern, at));
            ++at;
            members.insert(member);
        } else if (pattern[at] == '-') {
            ++at;
            for (const char32_t end = next_point(pattern, at); last < end;) members.insert(utf8_of(++last));
        } else {
            members.insert(utf8_of(last = next_point(pattern, at)));
        }
    }
    return members;
}

// Of several letters, by what ICU knows of clusters alone: marks and conjuncts make one.
bool joins(const std::string& member) {
    return segmenter_of("root", LetterCase::keep).clusters(member).size() > 1;
}

bool is_long_form(const std::string& member, const Set& all) {
    return member.size() > 2 && member[0] == member[1] && joins(member.substr(1)) &&
           all.count(member.substr(1)) > 0;
}

Set as_set(const std::vector<std::string>& letters) {
    return {letters.begin(), letters.end()};
}

}  // namespace

TEST_CASE("a pattern of CLDR is read as UTS #35 says") {
    CHECK(parsed("[a-c {ch} \\u0301 é \\-]") == Set{"a", "b", "c", "ch", "\u0301", "é", "-"});
}

TEST_CASE("the letters of a language are those of CLDR's file") {
    // Version 41 of the package beside the 42 of ICU 72.1: the same sets in these languages (42 gave Romanian
    // a q). A mark alone and an apostrophe are no letters.
    for (const char* language : {"en", "cy", "hu", "hr", "cs", "sk", "sq", "mt", "nl", "es", "fr", "it",
                                 "pt", "pl", "ru", "uk", "be", "vi", "ga", "sv", "da", "fi", "et", "lv",
                                 "lt", "el", "he", "ar", "fa", "hi", "bn", "ta", "ja", "br", "zu"}) {
        CAPTURE(language);
        const Set all = parsed(main_set(language));
        const auto keep = segmenter_of(language, LetterCase::keep);
        Set expected;
        for (const auto& member : all) {
            if (is_long_form(member, all)) continue;
            const auto spelling = segmenter_of("root", LetterCase::keep).spell(member);
            if (spelling.bad.empty() && !spelling.letters.empty())
                expected.insert(normalised(member).value());
        }
        CHECK(as_set(main_letters({language, LetterCase::keep})) == expected);
        for (const auto& member : all) {
            if (!joins(member)) continue;
            CAPTURE(member);
            CHECK(keep.spell(member).letters == std::vector{normalised(member).value()});
            TextRules split{language, LetterCase::keep, Digraphs::split};
            CHECK(Segmenter::open(split).value().spell(member).letters.size() > 1);
        }
    }
}

TEST_CASE("languages join what CLDR's files join, in capitals too, and others join nothing") {
    const std::vector<std::pair<std::string, long>> expected{
        {"cy", 8}, {"hu", 18}, {"hr", 3}, {"cs", 1}, {"sk", 3}, {"sq", 9}, {"mt", 1}, {"nl", 2},
        {"br", 2}, {"be", 2},  {"es", 0}, {"en", 0}, {"de", 0}, {"fr", 0}, {"pl", 0}, {"he", 0},
        {"ar", 0}, {"tr", 0},  {"da", 0}, {"fi", 0}, {"el", 0}, {"ru", 0}, {"uk", 0}};
    for (const auto& [language, count] : expected) {
        CAPTURE(language);
        const Set all = parsed(main_set(language));
        CHECK(std::count_if(all.begin(), all.end(), joins) == count);
        const auto capitals = segmenter_of(language);
        for (const auto& member : all)
            if (joins(member)) CHECK(capitals.spell(member).letters.size() == 1);
    }
}
