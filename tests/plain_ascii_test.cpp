// The short way for plain ASCII words against the long one through ICU: a zero width space, which is left
// out, sends a text the long way.

#include <catch2/catch.hpp>
#include <set>

#include <unicode/locid.h>
#include <letterlode/text.hpp>

#include "random/random.hpp"
#include "support/grids.hpp"

using namespace lode;
using namespace lode::test;

namespace {

constexpr LetterCase cases[] = {LetterCase::upper, LetterCase::lower, LetterCase::keep};

// Both ways; on a failure, what was spelled.
void compare(const Segmenter& segmenter, const std::string& text) {
    const auto quick = segmenter.spell(text);
    const auto whole = segmenter.spell(text + "\u200B");
    if (quick.letters == whole.letters && quick.bad == whole.bad && quick.bad_position == whole.bad_position)
        return;
    CAPTURE(segmenter.rules().locale, name(segmenter.rules().letters), text);
    CHECK(quick.letters == whole.letters);
    CHECK(quick.bad == whole.bad);
    CHECK(quick.bad_position == whole.bad_position);
}

std::set<std::string> every_locale() {
    std::int32_t count = 0;
    const icu::Locale* locales = icu::Locale::getAvailableLocales(count);
    std::set<std::string> tags{"root"};
    for (std::int32_t at = 0; at < count; ++at) {
        UErrorCode status = U_ZERO_ERROR;
        tags.insert(locales[at].toLanguageTag<std::string>(status));
    }
    return tags;
}

}  // namespace

TEST_CASE("plain ASCII is spelled as ICU would, in every locale that ICU knows") {
    const auto tags = every_locale();
    CHECK(tags.size() > 700);
    Random random(4);
    long compared = 0;
    for (const auto& tag : tags) {
        for (const LetterCase letters : cases) {
            const auto segmenter = Segmenter::open({tag, letters}).value();
            for (int character = 0; character < 0x80; ++character)
                compare(segmenter, std::string(1, static_cast<char>(character)));
            for (int round = 0; round < 10; ++round) {
                std::string text;
                // Mostly letters, so that a text is not soon unusable.
                for (auto length = 1 + random.below(20); length > 0; --length)
                    text += static_cast<char>(random.below(8) == 0
                                                  ? random.below(0x80)
                                                  : 'a' - 32 * random.below(2) + random.below(26));
                compare(segmenter, text);
            }
            compared += 0x80 + 10;
        }
    }
    CHECK(compared > 250'000);
}

TEST_CASE("every ASCII text of two characters is spelled as ICU would, where casing and joining have rules") {
    for (const char* locale : {"root", "tr", "az", "lt", "el", "nl", "hu", "uz"})
        for (const LetterCase letters : {LetterCase::upper, LetterCase::lower}) {
            const auto segmenter = Segmenter::open({locale, letters}).value();
            for (int first = 0; first < 0x80; ++first)
                for (int second = 0; second < 0x80; ++second)
                    compare(segmenter, {static_cast<char>(first), static_cast<char>(second)});
        }
}

TEST_CASE("every text of up to four of the letters that join is spelled as ICU would") {
    for (const char* locale : {"hu", "cy", "uz", "nl", "zu"}) {
        const auto segmenter = segmenter_of(locale);
        const std::string some = "dDzsglhiN|'j";
        for (std::size_t number = 0; number < some.size() * some.size() * some.size() * some.size();
             ++number) {
            std::string text;
            for (std::size_t rest = number + 1; rest > 0; rest /= some.size())
                text += some[rest % some.size()];
            compare(segmenter, text);
        }
    }
}
