#include "puzzle/letter_table.hpp"

#include <letterlode/puzzle.hpp>

#include "text/locale.hpp"

namespace lode {
namespace {

// Norvig, "English Letter Frequency Counts: Mayzner Revisited or ETAOIN SRHLDCU", norvig.com/mayzner.html:
// the letters of the words in scanned English books, in tenths of a billion.
const std::vector<TabledLetter> english{
    {U'a', 2865}, {U'b', 529},  {U'c', 1192}, {U'd', 1360}, {U'e', 4452}, {U'f', 856},  {U'g', 666},
    {U'h', 1801}, {U'i', 2697}, {U'j', 57},   {U'k', 193},  {U'l', 1450}, {U'm', 895},  {U'n', 2578},
    {U'o', 2723}, {U'p', 761},  {U'q', 43},   {U'r', 2238}, {U's', 2321}, {U't', 3305}, {U'u', 973},
    {U'v', 375},  {U'w', 597},  {U'x', 84},   {U'y', 593},  {U'z', 32}};
const std::vector<TabledLetter> none;

}  // namespace

const std::vector<TabledLetter>& letter_table(std::string_view tag) {
    const auto locale = locale_of(tag);
    return locale && std::string_view(locale->getLanguage()) == "en" ? english : none;
}

bool has_letter_table(std::string_view locale) {
    return !letter_table(locale).empty();
}

}  // namespace lode
