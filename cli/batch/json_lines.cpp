#include "batch/input.hpp"
#include "batch/order_lines.hpp"

namespace lode::cli {
namespace {

bool is_blank(const std::string& text) {
    return text.find_first_not_of(" \t\r") == std::string::npos;
}

class JsonLines : public OrderLines {
  public:
    explicit JsonLines(Input input) : input_(std::move(input)) {}

    std::optional<OrderLine> next() override {
        while (auto line = input_.line(max_order_bytes)) {
            ++number_;
            if (line->is_too_long)
                return OrderLine{number_,
                                 {},
                                 Refusal{Refusal::Reason::unusable,
                                         "The line is longer than " + std::to_string(max_order_bytes) +
                                             " bytes, and no order.",
                                         {},
                                         {"Write an order a line, and a long list of words into a file of "
                                          "its own, which \"words\" names."},
                                         input_.name(),
                                         0}};
            if (number_ == 1 && line->text.starts_with("\xEF\xBB\xBF")) line->text.erase(0, 3);
            if (!is_blank(line->text)) return OrderLine{number_, std::move(line->text), std::nullopt};
        }
        return std::nullopt;
    }
    std::uint64_t read() const override { return input_.read(); }
    std::uint64_t all() const override { return input_.all(); }

  private:
    Input input_;
    std::uint64_t number_ = 0;
};

}  // namespace

Outcome<std::unique_ptr<OrderLines>> json_lines(const std::string& path) {
    auto input = Input::open(path);
    if (!input) return input.refusal();
    return std::unique_ptr<OrderLines>(new JsonLines(std::move(*input)));
}

}  // namespace lode::cli
