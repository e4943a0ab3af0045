#pragma once
// data/letter_looks.csv, compiled in.

#include <string_view>

namespace lode {

[[nodiscard]] std::string_view letter_looks_table();

}  // namespace lode
