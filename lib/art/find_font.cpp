#include <fontconfig/fontconfig.h>

#include <algorithm>
#include <memory>
#include <new>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "art/font.hpp"

namespace lode {

namespace {

struct Destroy {
    void operator()(FcPattern* pattern) const { FcPatternDestroy(pattern); }
    void operator()(FcFontSet* fonts) const { FcFontSetDestroy(fonts); }
    void operator()(FcObjectSet* objects) const { FcObjectSetDestroy(objects); }
    void operator()(FcCharSet* characters) const { FcCharSetDestroy(characters); }
};
template <class T>
using Held = std::unique_ptr<T, Destroy>;

std::string text_of(FcPattern* pattern, const char* object, int number) {
    FcChar8* text = nullptr;
    if (FcPatternGetString(pattern, object, number, &text) != FcResultMatch) return {};
    return reinterpret_cast<const char*>(text);
}

// fontconfig compares families without case and blanks; so must we.
std::string plain(const std::string& family) {
    std::string result;
    for (const char c : family) {
        if (c == ' ') continue;
        result += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return result;
}

std::set<std::string> families(FcPattern* pattern) {
    std::set<std::string> found;
    const Held<FcObjectSet> wanted(FcObjectSetBuild(FC_FAMILY, nullptr));
    const Held<FcFontSet> fonts(wanted ? FcFontList(nullptr, pattern, wanted.get()) : nullptr);
    for (int i = 0; fonts && i < fonts->nfont; ++i) {
        std::string family = text_of(fonts->fonts[i], FC_FAMILY, 0);
        if (!family.empty()) found.insert(std::move(family));
    }
    return found;
}

Held<FcPattern> outlines_only() {
    Held<FcPattern> pattern(FcPatternCreate());
    if (pattern) FcPatternAddBool(pattern.get(), FC_OUTLINE, FcTrue);
    return pattern;
}

// Levenshtein's distance: changes of one character that turn one text into the other.
std::size_t distance(const std::string& a, const std::string& b) {
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = std::exchange(row[0], i);
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t change = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
            diagonal = std::exchange(row[j], std::min({row[j] + 1, row[j - 1] + 1, change}));
        }
    }
    return row.back();
}

std::string like_names(const std::string& family) {
    const Held<FcPattern> every = outlines_only();
    std::vector<std::pair<std::size_t, std::string>> ranked;
    for (const std::string& installed : every ? families(every.get()) : std::set<std::string>{})
        ranked.emplace_back(distance(plain(family.substr(0, 100)), plain(installed.substr(0, 100))),
                            installed);
    std::sort(ranked.begin(), ranked.end());
    std::string names;
    for (std::size_t i = 0; i < std::min<std::size_t>(5, ranked.size()); ++i)
        names += (i ? ", " : "") + ranked[i].second;
    return names;
}

Refusal no_font(const std::string& asked, const std::string& fault) {
    Refusal refusal;
    refusal.message = "font \"" + asked.substr(0, 100) + "\": " + fault;
    return refusal;
}

bool names_a_file(const std::string& asked) {
    if (asked.find('/') != std::string::npos) return true;
    const std::string low = plain(asked);
    return low.ends_with(".ttf") || low.ends_with(".otf") || low.ends_with(".ttc");
}

// Weight and slant that were asked for and that no face of the family has. Where fontconfig would smear or
// slant another face for want of one, it says so in the match; outlines are left as they are.
void note_differences(FcPattern* asked, FcPattern* found, FontFile& file) {
    const auto number = [](FcPattern* pattern, const char* object) {
        int value = 0;
        const bool there = FcPatternGetInteger(pattern, object, 0, &value) == FcResultMatch;
        return there ? std::optional<int>(value) : std::nullopt;
    };
    const std::string used = text_of(found, FC_FAMILY, 0) + " " + text_of(found, FC_STYLE, 0) + " is used";
    const auto missing = [&](const std::string& what, const std::string& result) {
        file.notes.push_back("The " + what + " asked for by \"" + file.asked + "\" is not installed; " +
                             result);
    };
    const auto is_bold = [](int weight) { return weight >= FC_WEIGHT_DEMIBOLD; };
    FcBool smeared = FcFalse;
    FcPatternGetBool(found, FC_EMBOLDEN, 0, &smeared);
    const auto weight = number(asked, FC_WEIGHT);
    const bool given_bold = !smeared && is_bold(number(found, FC_WEIGHT).value_or(FC_WEIGHT_REGULAR));
    if (weight && is_bold(*weight) != given_bold)
        missing("weight", used + ", whose strokes are " + (given_bold ? "thicker." : "thinner."));

    FcMatrix* slanted = nullptr;
    FcPatternGetMatrix(found, FC_MATRIX, 0, &slanted);
    const auto slant = number(asked, FC_SLANT);
    const bool given_upright = slanted || number(found, FC_SLANT).value_or(FC_SLANT_ROMAN) == FC_SLANT_ROMAN;
    if (slant && (*slant == FC_SLANT_ROMAN) != given_upright) missing("slant", used + ".");
}

}  // namespace

Outcome<FontFile> find_font(const std::string& asked) {
    if (names_a_file(asked)) return FontFile{asked, 0, asked, {}};
    if (!FcInit()) return no_font(asked, "the list of installed fonts (fontconfig) cannot be read");

    const Held<FcPattern> pattern(FcNameParse(reinterpret_cast<const FcChar8*>(asked.c_str())));
    if (!pattern) return no_font(asked, "this is no font name that can be read");
    const std::string family = text_of(pattern.get(), FC_FAMILY, 0);
    if (family.empty()) {
        Refusal refusal = no_font(asked, "this names no family");
        refusal.advice = {"Write a family, and after a colon its style: \"DejaVu Sans:bold\"."};
        return refusal;
    }

    const Held<FcPattern> query(FcPatternDuplicate(pattern.get()));
    if (!query || !FcConfigSubstitute(nullptr, query.get(), FcMatchPattern)) throw std::bad_alloc();
    FcDefaultSubstitute(query.get());
    FcResult result = FcResultNoMatch;
    const Held<FcPattern> match(FcFontMatch(nullptr, query.get(), &result));
    if (result == FcResultOutOfMemory) throw std::bad_alloc();

    bool same_family = false;
    for (int i = 0; match && !same_family; ++i) {
        const std::string found = text_of(match.get(), FC_FAMILY, i);
        if (found.empty()) break;
        same_family = plain(found) == plain(family);
    }
    if (!same_family) {
        Refusal refusal = no_font(asked, "no font of the family \"" + family.substr(0, 100) +
                                             "\" is installed, and no other is put in its place");
        const std::string names = like_names(family);
        refusal.advice = {names.empty() ? "Install a font, or name a font file."
                                        : "Installed are, nearest in name first: " + names + "."};
        return refusal;
    }

    FontFile file{text_of(match.get(), FC_FILE, 0), 0, asked, {}};
    FcPatternGetInteger(match.get(), FC_INDEX, 0, &file.index);
    if (file.path.empty()) return no_font(asked, "fontconfig names no file for it");
    note_differences(pattern.get(), match.get(), file);
    return file;
}

std::vector<std::string> families_with(const std::string& text) {
    if (!FcInit()) return {};
    const Held<FcCharSet> characters(FcCharSetCreate());
    const Held<FcPattern> pattern = outlines_only();
    if (!characters || !pattern) return {};
    const auto* rest = reinterpret_cast<const FcChar8*>(text.data());
    for (int left = static_cast<int>(std::min<std::size_t>(text.size(), 256)); left > 0;) {
        FcChar32 character = 0;
        const int used = FcUtf8ToUcs4(rest, &character, left);
        if (used <= 0) return {};
        FcCharSetAddChar(characters.get(), character);
        rest += used;
        left -= used;
    }
    FcPatternAddCharSet(pattern.get(), FC_CHARSET, characters.get());
    const std::set<std::string> found = families(pattern.get());
    std::vector<std::string> names(found.begin(), found.end());
    if (names.size() > 3) names.resize(3);
    return names;
}

}  // namespace lode
