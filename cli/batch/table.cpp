#include "batch/table.hpp"

#include <algorithm>
#include <set>
#include <utility>

#include <nlohmann/json.hpp>

#include "batch/order_lines.hpp"
#include "choices.hpp"

namespace lode::cli {
namespace {

std::string trimmed(const std::string& text) {
    const auto first = text.find_first_not_of(" \t");
    if (first == std::string::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

// The character that parts a header's fields: the one that comes most often outside quotes.
char separator_of(const std::string& line) {
    std::size_t counts[3] = {};
    constexpr char separators[3] = {',', ';', '\t'};
    bool quoted = false;
    for (const char c : line) {
        if (c == '"') quoted = !quoted;
        for (std::size_t at = 0; at < 3; ++at)
            if (!quoted && c == separators[at]) ++counts[at];
    }
    return separators[std::max_element(counts, counts + 3) - counts];
}

bool is_utf8(const std::string& text) {
    try {
        return !nlohmann::json(text).dump().empty();
    } catch (const nlohmann::json::type_error&) {
        return false;
    }
}

const char* const save_as_text = "Save it as CSV in UTF-8.";

}  // namespace

Refusal Table::unusable_at(int line, const std::string& fault, const std::string& advice) const {
    return {Refusal::Reason::unusable,
            input_.name() + ":" + std::to_string(line) + ": " + fault,
            {},
            {advice},
            input_.name(),
            line};
}

Refusal Table::unusable(const std::string& fault, const std::string& advice) const {
    return unusable_at(line_, fault, advice);
}

Outcome<Table> Table::open(const std::string& path) {
    auto input = Input::open(path);
    if (!input) return input.refusal();
    Table table(std::move(*input));
    auto first = table.input_.line(max_order_bytes);
    const std::string advice = "A table begins with a row of names, such as 'names,seed,heading'.";
    // A spreadsheet may say first what parts its fields: the header shows that as well.
    if (first && first->text.starts_with("sep=") &&
        first->text.size() <= std::string_view("sep=;\r").size()) {
        first = table.input_.line(max_order_bytes);
        ++table.line_;
    }
    if (!first || first->is_too_long) return table.unusable("here is no header.", advice);
    std::string& line = first->text;
    if (line.find('\0') != std::string::npos || line.starts_with("PK\x03\x04"))
        return table.unusable("this is no text: a spreadsheet's own file, perhaps.", save_as_text);
    if (!is_utf8(line)) return table.unusable("this is no UTF-8 text.", save_as_text);
    if (line.starts_with("\xEF\xBB\xBF")) line.erase(0, 3);
    if (line.ends_with('\r')) line.pop_back();
    if (line.find('\r') != std::string::npos)
        return table.unusable("its lines end with CR alone.",
                              "Save it as CSV with the line ends of this machine.");
    table.separator_ = separator_of(line);
    std::string field;
    bool quoted = false;
    for (const char c : line + table.separator_) {
        if (c == '"')
            quoted = !quoted;
        else if (c != table.separator_ || quoted)
            field += c;
        else
            table.header_.push_back(trimmed(std::exchange(field, {})));
    }
    if (quoted) return table.unusable("a quote in the header is not closed.", advice);
    std::set<std::string> names;
    for (const auto& name : table.header_)
        if (!name.empty() && !names.insert(in_small_letters(name)).second)
            return table.unusable("two columns are called '" + name + "'.", "Give each a name of its own.");
    if (names.empty()) return table.unusable("here is no header.", advice);
    ++table.line_;
    return table;
}

std::optional<std::size_t> Table::column(const std::string& name) const {
    const auto found = std::find_if(header_.begin(), header_.end(), [&](const auto& column) {
        return in_small_letters(column) == in_small_letters(name);
    });
    if (found == header_.end()) return std::nullopt;
    return static_cast<std::size_t>(found - header_.begin());
}

std::optional<Outcome<Table::Row>> Table::row() {
    while (!is_at_end_) {
        row_line_ = line_;
        Outcome<Row> row = read_row();
        if (!row) {
            is_at_end_ = true;
            return row;
        }
        const bool is_blank =
            std::all_of(row->begin(), row->end(), [](const auto& field) { return trimmed(field).empty(); });
        if (is_blank) continue;
        if (auto refusal = fault_of(*row)) return *std::move(refusal);
        return row;
    }
    return std::nullopt;
}

// Cuts off the empty fields that spreadsheets write behind the last column.
std::optional<Refusal> Table::fault_of(Row& row) const {
    const auto refuse = [&](const std::string& fault, const std::string& advice) {
        return unusable_at(row_line_, fault, advice);
    };
    for (std::size_t at = header_.size(); at < row.size(); ++at)
        if (!trimmed(row[at]).empty())
            return refuse("'" + row[at] + "' stands behind the last column.",
                          "Write a field that holds '" + std::string(1, separator_) +
                              "' in quotes, or give its column a name.");
    row.resize(std::min(row.size(), header_.size()));
    for (const auto& field : row)
        if (!is_utf8(field)) return refuse("this row is no UTF-8 text.", save_as_text);
    return std::nullopt;
}

Outcome<Table::Row> Table::read_row() {
    Row row(1);
    std::size_t size = 0;
    bool quoted = false, was_quoted = false;
    while (auto c = input_.byte()) {
        if (++size > max_order_bytes) {
            return unusable_at(row_line_,
                               "the row is longer than " + std::to_string(max_order_bytes) + " bytes.",
                               "See whether a quote is missing.");
        }
        if (*c == '\n') ++line_;
        if (quoted) {
            if (*c == '"') {
                quoted = false;
                was_quoted = true;
            } else {
                row.back() += *c;
            }
        } else if (*c == '"' && was_quoted) {
            // Two in a row stand for one.
            row.back() += '"';
            quoted = true;
            was_quoted = false;
        } else if (*c == '"' && row.back().empty()) {
            quoted = true;
        } else if (*c == '\n') {
            if (row.back().ends_with('\r')) row.back().pop_back();
            return row;
        } else if (*c == separator_) {
            row.emplace_back();
            was_quoted = false;
        } else {
            row.back() += *c;
        }
    }
    is_at_end_ = true;
    if (quoted) {
        return unusable_at(row_line_, "a quote is not closed: this row, and all behind it, cannot be read.",
                           "Close it where the field ends; double it inside.");
    }
    if (row.back().ends_with('\r')) row.back().pop_back();
    return row;
}

}  // namespace lode::cli
