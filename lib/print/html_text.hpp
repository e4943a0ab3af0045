#pragma once
// What pages of HTML are put together from.

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace lode {

// Text as HTML shows it, in an element or in a quoted attribute: no markup, a blank for each control
// character, a replacement character for what is no UTF-8, and no marks that turn what stands after it round
// (they are for text without markup; a page has elements and attributes for that).
[[nodiscard]] std::string html_text(std::string_view utf8);

// The template with each name in double braces replaced, in one pass: what is put in is not looked at again.
// A name that is not among the parts is replaced by nothing.
[[nodiscard]] std::string filled_in(std::string_view page,
                                    const std::vector<std::pair<std::string_view, std::string>>& parts);

}  // namespace lode
