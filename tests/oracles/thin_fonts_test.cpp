// Thin features of whole alphabets against balls that shrink on the true curves (support/shrinking_ball.hpp),
// in every face of DejaVu and in whichever of some other families are installed.

#include <catch2/catch.hpp>
#include <cmath>
#include <iostream>

#include "art/font.hpp"
#include "cut/thin_features.hpp"
#include "support/shrinking_ball.hpp"

using namespace lode;

namespace {

const std::vector<std::string> always{"DejaVu Sans",      "DejaVu Sans:bold",      "DejaVu Sans:oblique",
                                      "DejaVu Sans Mono", "DejaVu Sans Mono:bold", "DejaVu Serif",
                                      "DejaVu Serif:bold"};
// Debian packages fonts-dejavu-extra, fonts-lato, fonts-noto-core, fonts-linuxlibertine,
// fonts-league-spartan.
const std::vector<std::string> if_installed{"DejaVu Serif:italic",
                                            "DejaVu Sans:extralight",
                                            "DejaVu Sans Condensed:bold",
                                            "Lato",
                                            "Lato:bold",
                                            "Lato:black",
                                            "Lato:light",
                                            "Noto Sans",
                                            "Noto Sans:bold",
                                            "Noto Serif",
                                            "Noto Serif:bold",
                                            "Noto Sans Display",
                                            "Noto Sans Hebrew",
                                            "Noto Serif Hebrew",
                                            "Noto Rashi Hebrew",
                                            "Linux Libertine O",
                                            "Linux Libertine O:bold",
                                            "Linux Biolinum O",
                                            "League Spartan:bold"};

// The greatest difference of a stroke and of a gap, in mm, over the letters that the face has, set with
// capitals of 8 mm.
void compare(const std::string& asked, const std::string& text) {
    auto font = Font::open(find_font(asked).value());
    REQUIRE(font);
    const auto line = font->set_line(text);
    REQUIRE(line);
    const auto lacks = [&](const SetLetter& letter) {
        return std::find(line->missing.begin(), line->missing.end(), letter.text) != line->missing.end();
    };
    double strokes = 0;
    double gaps = 0;
    int letters = 0;
    for (const SetLetter& letter : line->letters) {
        if (lacks(letter)) continue;
        CAPTURE(asked, letter.text);
        ++letters;
        const Path path = transformed(letter.path, 8 / font->cap_height(), {});
        const Narrowest found = narrowest(path);
        const judge::Widths judged = judge::narrowest_by_balls(path, 0.015);
        REQUIRE(found.stroke.has_value());
        REQUIRE(judged.stroke.has_value());
        // Some outlines fold back on themselves by a unit of the font. How narrow such a fold is depends on
        // what of it is seen, so it is told and not compared.
        const double fold = 0.015;
        if (std::min(found.stroke->width, *judged.stroke) < fold || (found.gap && found.gap->width < fold) ||
            (judged.gap && *judged.gap < fold)) {
            std::cout << font->name() << ": " << letter.text << " folds back on itself, not compared\n";
            CHECK(std::find(always.begin(), always.end(), asked) == always.end());
            continue;
        }
        strokes = std::max(strokes, std::abs(found.stroke->width - *judged.stroke));
        CHECK(std::abs(found.stroke->width - *judged.stroke) < 0.01);
        CHECK(found.gap.has_value() == judged.gap.has_value());
        if (!found.gap || !judged.gap) continue;
        gaps = std::max(gaps, std::abs(found.gap->width - *judged.gap));
        CHECK(std::abs(found.gap->width - *judged.gap) < 0.01);
    }
    if (letters > 0)
        std::cout << font->name() << ": " << letters << " letters, strokes within " << strokes
                  << " mm, gaps within " << gaps << " mm\n";
}

// Of which there are none where the family is not installed; that is said, since it leaves the face unjudged.
void compare_all(const std::string& text) {
    for (const std::string& asked : always) compare(asked, text);
    for (const std::string& asked : if_installed) {
        const auto file = find_font(asked);
        if (file && file->notes.empty())
            compare(asked, text);
        else
            std::cout << asked << " is not installed: not judged\n";
    }
}

}  // namespace

TEST_CASE("Latin capitals are as narrow as shrinking balls find them") {
    compare_all("ABCDEFGHIJKLMNOPQRSTUVWXYZÀÅÇÉÑÖØŠŽĞ");
}

TEST_CASE("Hebrew letters are as narrow as shrinking balls find them") {
    compare_all("אבגדהוזחטיךכלםמןנסעףפץצקרשת");
}
