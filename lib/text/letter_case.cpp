#include <array>

#include <letterlode/text.hpp>

namespace lode {
namespace {

constexpr std::array<std::string_view, 3> names{"upper", "lower", "keep"};

}  // namespace

std::string_view name(LetterCase letters) {
    return names[static_cast<unsigned>(letters)];
}

std::optional<LetterCase> letter_case_named(std::string_view wanted) {
    for (const LetterCase letters : {LetterCase::upper, LetterCase::lower, LetterCase::keep})
        if (name(letters) == wanted) return letters;
    return std::nullopt;
}

}  // namespace lode
