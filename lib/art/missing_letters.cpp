#include "art/missing_letters.hpp"

#include <algorithm>

#include "art/font.hpp"

namespace lode {

Refusal lacks(const Typeface& typeface, const std::vector<MissingLetter>& missing) {
    Refusal refusal;
    refusal.message = "font \"" + typeface.name() + "\" has no glyph for ";
    constexpr std::size_t most_named = 8;
    for (std::size_t i = 0; i < std::min(missing.size(), most_named); ++i) {
        refusal.message += (i ? ", " : "") + ("\"" + missing[i].text + "\" (" + missing[i].place + ")");
        refusal.words.push_back(missing[i].text);
    }
    if (missing.size() > most_named)
        refusal.message += " and " + std::to_string(missing.size() - most_named) + " more";
    std::string all;
    for (const MissingLetter& one : missing) all += one.text;
    std::string families;
    for (const std::string& family : families_with(all)) families += (families.empty() ? "" : ", ") + family;
    refusal.advice = {families.empty()
                          ? "No installed font has all of these; install one that does, or name its file."
                          : "Installed fonts that have them: " + families + "."};
    return refusal;
}

}  // namespace lode
