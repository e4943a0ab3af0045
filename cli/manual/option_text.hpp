#pragma once
// An option as a manual and a shell tell of it.

#include <string>
#include <vector>

#include "options.hpp"

namespace lode::cli {

struct OptionText {
    std::string name;        // "--grid"
    std::string short_name;  // "-h", or nothing
    std::string value;       // "CxR"; nothing where it takes none
    bool value_is_optional = false;
    bool may_be_given_again = false;
    std::string purpose;
    Offers offers;
};

// In the order of the help.
[[nodiscard]] std::vector<OptionText> option_texts(const Verb& verb);

}  // namespace lode::cli
