#pragma once
// Orders as they come in: a line of JSON each, read one by one, whatever there is of them.

#include <cstdint>
#include <memory>
#include <optional>
#include <string>

#include <letterlode/outcome.hpp>

namespace lode::cli {

// An order beyond this is no order of a person.
inline constexpr std::size_t max_order_bytes = 4u << 20;

struct OrderLine {
    std::uint64_t number = 0;        // from 1; blank lines count, and give no order
    std::string text;                // a JSON object
    std::optional<Refusal> refused;  // instead of a text that can be an order
    std::uint64_t line = 0;          // where it begins in its source; 0: at the line of its number
};

// Where orders come from. One thread at a time.
class OrderLines {
  public:
    virtual ~OrderLines() = default;
    // The next, or nothing at the end and after an interrupt. Throws DiskFault where the input cannot be
    // read.
    [[nodiscard]] virtual std::optional<OrderLine> next() = 0;
    // How much was read, of all, in bytes; 0 of 0 where nobody knows.
    [[nodiscard]] virtual std::uint64_t read() const = 0;
    [[nodiscard]] virtual std::uint64_t all() const = 0;
};

// JSON Lines; "-" is standard input. Refused as unusable where it cannot be opened.
[[nodiscard]] Outcome<std::unique_ptr<OrderLines>> json_lines(const std::string& path);

// A table with a header, as shops export it: fields with commas, semicolons or tabs between, in quotes where
// they hold one (RFC 4180). A row is an order: its words stand in one column, parted by line ends, semicolons
// or commas, and what stands under an option's name is that option's value; a line's number is that of its
// row, without the header. Refused as unusable: no such column.
[[nodiscard]] Outcome<std::unique_ptr<OrderLines>> table_rows(const std::string& path,
                                                              const std::string& words_column);

// A table whose every column is an order: under its name, a word a row. Such a table is small: it is read
// whole.
[[nodiscard]] Outcome<std::unique_ptr<OrderLines>> table_columns(const std::string& path);

}  // namespace lode::cli
