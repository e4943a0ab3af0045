#include "find/other_reading.hpp"

namespace lode {

OtherReading::OtherReading(const Alphabet& alphabet,
                           const std::function<std::string(const std::string&)>& read_as) {
    for (std::size_t letter = 0; letter < alphabet.size(); ++letter) {
        read_as_.push_back(read_.add(read_as(alphabet.text(static_cast<Letter>(letter)))));
        is_itself_ &= read_as_.back() == letter;
    }
}

bool OtherReading::add(const std::vector<std::string>& letters) {
    Letters numbers;
    numbers.reserve(letters.size());
    for (const auto& letter : letters) {
        const auto number = read_.find(letter);
        if (!number) return false;
        numbers.push_back(*number);
    }
    words_.push_back(std::move(numbers));
    return true;
}

Letters OtherReading::numbers_of(const std::vector<std::string>& letters) const {
    Letters numbers;
    numbers.reserve(letters.size());
    for (const auto& letter : letters) numbers.push_back(read_.find(letter).value_or(closed_cell));
    return numbers;
}

bool OtherReading::add(const std::vector<std::uint32_t>& word, const Letters& numbers) {
    Letters renumbered;
    renumbered.reserve(word.size());
    for (const std::uint32_t letter : word) {
        if (numbers[letter] == closed_cell) return false;
        renumbered.push_back(numbers[letter]);
    }
    words_.push_back(std::move(renumbered));
    return true;
}

void OtherReading::build() {
    if (!words_.empty()) matcher_.emplace(words_);
    words_ = {};
}

bool OtherReading::search(const Grid& grid, const Matcher::Found& found, const SearchRules& rules) const {
    if (!matcher_) return true;
    if (is_itself_) return matcher_->search(grid, found, rules);
    Grid read(grid.size());
    for (int row = 0; row < grid.size().rows; ++row)
        for (int column = 0; column < grid.size().columns; ++column) {
            const Letter letter = grid[{row, column}];
            read[{row, column}] = letter < read_as_.size() ? read_as_[letter] : letter;
        }
    return matcher_->search(read, found, rules);
}

}  // namespace lode
