#pragma once
// Judges a puzzle by its JSON alone, with a plain search that shares nothing with the library.

#include <string>
#include <vector>

namespace lode::bench {

// What is wrong with a result: nothing, or a sentence. The order is the line that it was made of, whose words
// and grid it must have.
[[nodiscard]] std::string fault_in(const std::string& order, const std::string& result);

}  // namespace lode::bench
