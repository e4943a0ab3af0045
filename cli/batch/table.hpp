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
    // twice, text that is no table.
    [[nodiscard]] static Outcome<Table> open(const std::string& path);

    [[nodiscard]] const Row& header() const { return header_; }
    [[nodiscard]] std::optional<std::size_t> column(const std::string& name) const;

    // The next row, as many fields as it has; nothing at the end. Blank rows are passed over. Refused as
    // unusable: a row of more than max_order_bytes, quotes that are not closed; after it nothing follows.
    [[nodiscard]] std::optional<Outcome<Row>> row();

    [[nodiscard]] const Input& input() const { return input_; }

  private:
    explicit Table(Input input) : input_(std::move(input)) {}
    [[nodiscard]] Refusal unusable(const std::string& fault, const std::string& advice) const;
    [[nodiscard]] Outcome<Row> read_row();

    Input input_;
    Row header_;
    char separator_ = ',';
    int line_ = 1;
    bool is_at_end_ = false;
};

}  // namespace lode::cli
