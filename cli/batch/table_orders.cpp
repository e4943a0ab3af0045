#include <nlohmann/json.hpp>

#include "batch/order.hpp"
#include "batch/order_lines.hpp"
#include "batch/order_options.hpp"
#include "batch/table.hpp"
#include "choices.hpp"
#include "report.hpp"

namespace lode::cli {
namespace {

using Json = nlohmann::ordered_json;

std::string as_line(const Json& order) {
    return order.dump(-1, ' ', false, Json::error_handler_t::replace);
}

// What stands between these separators, without blanks around it; what is empty is left out.
std::vector<std::string> parts_of(const std::string& cell, const char* separators) {
    std::vector<std::string> parts;
    for (std::size_t from = 0; from <= cell.size();) {
        const auto to = std::min(cell.find_first_of(separators, from), cell.size());
        const auto first = cell.find_first_not_of(" \t\r", from);
        if (first < to) {
            const auto last = cell.find_last_not_of(" \t\r", to - 1);
            parts.push_back(cell.substr(first, last - first + 1));
        }
        from = to + 1;
    }
    return parts;
}

// A cell's words: a line each; where it is one line, parted by semicolons, or else by commas.
std::vector<std::string> words_in(const std::string& cell) {
    return parts_of(cell, cell.find('\n') != std::string::npos  ? "\n"
                          : cell.find(';') != std::string::npos ? ";"
                                                                : ",");
}

class TableRows : public OrderLines {
  public:
    TableRows(Table table, std::size_t words) : table_(std::move(table)), words_(words) {
        constexpr std::size_t most_columns_named = 20;
        std::size_t passed_over = 0;
        std::string others;
        for (std::size_t at = 0; at < table_.header().size(); ++at) {
            const std::string& name = table_.header()[at];
            const std::string option = in_small_letters(name);
            if (at == words_ || name.empty()) continue;
            if (option != "words" && is_order_member(option))
                options_.push_back({at, option, may_be_given_again(option)});
            else if (++passed_over <= most_columns_named)
                others += (others.empty() ? "'" : ", '") + name + "'";
        }
        if (passed_over > 0)
            say("note: " + table_.input().name() +
                ": these columns name no option and are passed over: " + others +
                (passed_over > most_columns_named
                     ? " and " + std::to_string(passed_over - most_columns_named) + " more."
                     : "."));
    }

    std::optional<OrderLine> next() override {
        const auto row = table_.row();
        if (!row || interrupt_flag()) return std::nullopt;
        ++number_;
        const auto line = static_cast<std::uint64_t>(table_.row_line());
        if (!*row) return OrderLine{number_, {}, row->refusal(), line};
        const auto field = [&](std::size_t at) { return at < (*row)->size() ? (**row)[at] : std::string(); };
        Json order;
        order["words"] = words_in(field(words_));
        for (const auto& [at, option, several] : options_) {
            if (field(at).empty()) continue;
            if (several)
                order[option] = parts_of(field(at), ";\n");
            else
                order[option] = field(at);
        }
        return OrderLine{number_, as_line(order), std::nullopt, line};
    }
    std::uint64_t read() const override { return table_.input().read(); }
    std::uint64_t all() const override { return table_.input().all(); }

  private:
    // A column that is named like an option.
    struct Option {
        std::size_t column;
        std::string name;
        bool several;  // values, with semicolons or line ends between
    };

    Table table_;
    std::size_t words_;
    std::vector<Option> options_;
    std::uint64_t number_ = 0;
};

class Prepared : public OrderLines {
  public:
    explicit Prepared(std::vector<std::string> orders) : orders_(std::move(orders)) {}
    std::optional<OrderLine> next() override {
        if (at_ == orders_.size() || interrupt_flag()) return std::nullopt;
        ++at_;
        return OrderLine{at_, orders_[at_ - 1], std::nullopt, 1};
    }
    std::uint64_t read() const override { return at_; }
    std::uint64_t all() const override { return orders_.size(); }

  private:
    std::vector<std::string> orders_;
    std::size_t at_ = 0;
};

}  // namespace

Outcome<std::unique_ptr<OrderLines>> table_rows(const std::string& path, const std::string& words_column) {
    auto table = Table::open(path);
    if (!table) return table.refusal();
    const auto words = table->column(words_column);
    if (!words) {
        std::string names;
        for (const auto& name : table->header()) names += (names.empty() ? "'" : ", '") + name + "'";
        return unusable_value("words-column", words_column, "The table has the columns " + names + ".");
    }
    return std::unique_ptr<OrderLines>(new TableRows(std::move(*table), *words));
}

Outcome<std::unique_ptr<OrderLines>> table_columns(const std::string& path) {
    auto table = Table::open(path);
    if (!table) return table.refusal();
    std::vector<Json> orders(table->header().size());
    for (std::size_t at = 0; at < orders.size(); ++at) {
        orders[at]["name"] = table->header()[at];
        orders[at]["words"] = Json::array();
    }
    while (const auto row = table->row()) {
        if (!*row) return row->refusal();
        for (std::size_t at = 0; at < std::min((*row)->size(), orders.size()); ++at)
            for (const auto& word : words_in((**row)[at])) orders[at]["words"].push_back(word);
    }
    std::vector<std::string> lines;
    for (const auto& order : orders)
        if (order["name"] != "" || !order["words"].empty()) lines.push_back(as_line(order));
    return std::unique_ptr<OrderLines>(new Prepared(std::move(lines)));
}

}  // namespace lode::cli
