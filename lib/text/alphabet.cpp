#include <letterlode/text.hpp>

namespace lode {

Letter Alphabet::add(std::string_view letter) {
    if (const auto known = find(letter)) return *known;
    if (texts_.size() >= max_letters) throw std::length_error("an alphabet of more than 65,520 letters");
    const auto number = static_cast<Letter>(texts_.size());
    texts_.emplace_back(letter);
    numbers_.emplace(letter, number);
    return number;
}

Letters Alphabet::add_all(const std::vector<std::string>& letters) {
    Letters numbers;
    numbers.reserve(letters.size());
    for (const auto& letter : letters) numbers.push_back(add(letter));
    return numbers;
}

std::optional<Letter> Alphabet::find(std::string_view letter) const {
    const auto at = numbers_.find(std::string(letter));
    if (at == numbers_.end()) return std::nullopt;
    return at->second;
}

}  // namespace lode
