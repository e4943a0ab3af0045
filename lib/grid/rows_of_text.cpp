#include "grid/rows_of_text.hpp"

#include <algorithm>

#include <letterlode/text.hpp>

#include "text/utf8.hpp"

namespace lode {
namespace {

bool is_blank_line(std::string_view line) {
    return line.find_first_not_of(" \t") == std::string_view::npos;
}

}  // namespace

Outcome<RowsOfText> rows_of_text(std::string_view text, std::string_view source) {
    text = without_byte_order_mark(text);
    RowsOfText found;
    for (int line = 1; !text.empty(); ++line) {
        const auto end = std::min(text.find('\n'), text.size());
        std::string_view row = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        if (row.ends_with('\r')) row.remove_suffix(1);
        if (!is_utf8(row))
            return Refusal{Refusal::Reason::unusable,
                           place_in(source, line) + "this line is no UTF-8 text.",
                           {},
                           {"Save the file as UTF-8."},
                           std::string(source),
                           line};
        if (found.rows.empty()) {
            if (is_blank_line(row)) continue;
            found.first_line = line;
        }
        found.rows.push_back(row);
    }
    while (!found.rows.empty() && is_blank_line(found.rows.back())) found.rows.pop_back();
    if (found.rows.empty())
        return Refusal{Refusal::Reason::unusable,
                       place_in(source, 0) + "there is nothing in it.",
                       {},
                       {"Write a line a row."},
                       std::string(source),
                       0};
    return found;
}

}  // namespace lode
