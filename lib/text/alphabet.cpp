#include <letterlode/text.hpp>

namespace lode {
namespace {

bool is_plain_byte(std::string_view letter) {
    return letter.size() == 1 && static_cast<unsigned char>(letter.front()) < 0x80;
}

}  // namespace

Letter Alphabet::add(std::string_view letter) {
    if (const auto known = find(letter)) return *known;
    if (texts_.size() >= max_letters) throw std::length_error("an alphabet of more than 65,520 letters");
    const auto number = static_cast<Letter>(texts_.size());
    texts_.emplace_back(letter);
    if (is_plain_byte(letter))
        bytes_[static_cast<unsigned char>(letter.front())] = number;
    else
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
    if (is_plain_byte(letter)) {
        const Letter number = bytes_[static_cast<unsigned char>(letter.front())];
        if (number == closed_cell) return std::nullopt;
        return number;
    }
    if (numbers_.empty()) return std::nullopt;
    const auto at = numbers_.find(std::string(letter));
    if (at == numbers_.end()) return std::nullopt;
    return at->second;
}

}  // namespace lode
