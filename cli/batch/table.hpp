#pragma once
// A table of text, read row by row: RFC 4180, with commas, semicolons or tabs between fields, whichever its
// header has.

#include <optional>
#include <string>
#include <vector>

#include "batch/input.hpp"

namespace lode::cli {

class Table {
  public:
    using Row = std::vector<std::string>;

    // Reads the header, without a byte order mark. Refused as unusable: no header, a name that stands there
    // twice, whatever its case, text that is no table or no UTF-8.
    [[nodiscard]] static Outcome<Table> open(const std::string& path);

    [[nodiscard]] const Row& header() const { return header_; }
    // By its name, whatever its case.
    [[nodiscard]] std::optional<std::size_t> column(const std::string& name) const;

    // The next row, as many fields as it has, but no more than there are columns; nothing at the end. Blank
    // rows are passed over. Refused as unusable: a field behind the last column, text that is no UTF-8; and,
    // where nothing follows after it, a row of more than max_order_bytes, quotes that are not closed.
    [[nodiscard]] std::optional<Outcome<Row>> row();

    // The line at which the last row began.
    [[nodiscard]] int row_line() const { return row_line_; }

    [[nodiscard]] const Input& input() const { return input_; }

  private:
    explicit Table(Input input) : input_(std::move(input)) {}
    [[nodiscard]] Refusal unusable_at(int line, const std::string& fault, const std::string& advice) const;
    [[nodiscard]] Refusal unusable(const std::string& fault, const std::string& advice) const;
    [[nodiscard]] std::optional<Refusal> fault_of(Row& row) const;
    [[nodiscard]] Outcome<Row> read_row();

    Input input_;
    Row header_;
    char separator_ = ',';
    int line_ = 1;
    int row_line_ = 0;
    bool is_at_end_ = false;
};

}  // namespace lode::cli
