#include "choices.hpp"

namespace lode::cli {

std::string enumerated(const std::vector<std::string>& names) {
    std::string text;
    for (std::size_t at = 0; at < names.size(); ++at) {
        if (at > 0) text += at + 1 == names.size() ? " or " : ", ";
        text += names[at];
    }
    return text;
}

}  // namespace lode::cli
