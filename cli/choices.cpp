#include "choices.hpp"

namespace lode::cli {

std::string in_small_letters(std::string text) {
    for (char& c : text)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return text;
}

std::string enumerated(const std::vector<std::string>& names) {
    std::string text;
    for (std::size_t at = 0; at < names.size(); ++at) {
        if (at > 0) text += at + 1 == names.size() ? " or " : ", ";
        text += names[at];
    }
    return text;
}

}  // namespace lode::cli
