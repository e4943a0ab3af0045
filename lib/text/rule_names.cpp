#include <array>

#include <letterlode/text.hpp>

namespace lode {
namespace {

constexpr std::array<std::string_view, 3> case_names{"upper", "lower", "keep"};
constexpr std::array<std::string_view, 2> digraphs_names{"join", "split"};
constexpr std::array<std::string_view, 2> sharp_s_names{"double", "keep"};
constexpr std::array<std::string_view, 2> marks_names{"keep", "strip"};
constexpr std::array<std::string_view, 2> finals_names{"keep", "fold"};

// A rule's enumerators are its names' places.
template <class Rule, std::size_t count>
std::optional<Rule> named(const std::array<std::string_view, count>& names, std::string_view wanted) {
    for (std::size_t at = 0; at < count; ++at)
        if (names[at] == wanted) return static_cast<Rule>(at);
    return std::nullopt;
}

}  // namespace

std::string_view name(LetterCase letters) {
    return case_names[static_cast<unsigned>(letters)];
}

std::optional<LetterCase> letter_case_named(std::string_view wanted) {
    return named<LetterCase>(case_names, wanted);
}

std::string_view name(Digraphs rule) {
    return digraphs_names[static_cast<unsigned>(rule)];
}

std::optional<Digraphs> digraphs_named(std::string_view wanted) {
    return named<Digraphs>(digraphs_names, wanted);
}

std::string_view name(SharpS rule) {
    return sharp_s_names[static_cast<unsigned>(rule)];
}

std::optional<SharpS> sharp_s_named(std::string_view wanted) {
    return named<SharpS>(sharp_s_names, wanted);
}

std::string_view name(Marks rule) {
    return marks_names[static_cast<unsigned>(rule)];
}

std::optional<Marks> marks_named(std::string_view wanted) {
    return named<Marks>(marks_names, wanted);
}

std::string_view name(Finals rule) {
    return finals_names[static_cast<unsigned>(rule)];
}

std::optional<Finals> finals_named(std::string_view wanted) {
    return named<Finals>(finals_names, wanted);
}

}  // namespace lode
