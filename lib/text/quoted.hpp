#pragma once
// Text from outside as a message may repeat it.

#include <string>
#include <string_view>

namespace lode {

// In quotes, cut to some sixty bytes between characters. A character that cannot be seen, or that a terminal
// would obey, is told by its code point: 'A<U+001B>B'.
[[nodiscard]] std::string quoted(std::string_view text);

}  // namespace lode
