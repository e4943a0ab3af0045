#pragma once
// The texts of data/avoid, by language.

#include <string_view>
#include <vector>

namespace lode {

struct AvoidListText {
    std::string_view language;  // "en"
    std::string_view text;      // a word a line, with comments
};

[[nodiscard]] const std::vector<AvoidListText>& avoid_list_texts();

}  // namespace lode
