#pragma once
// Which options an order can have, and of what kind they are.

#include "options.hpp"

namespace lode::cli {

struct OrderOptions {
    po::options_description make;
    po::options_description rate;
    po::options_description print;
};
[[nodiscard]] const OrderOptions& order_options();

// False for those that belong to the command line: where results go, on how many processors.
[[nodiscard]] bool can_be_ordered(const std::string& option);
// Whether the batch's command line can have it for all orders, where --from is a table of orders.
[[nodiscard]] bool is_shared_option(const std::string& option);

// Whether an order may give several values for it, as the command line gives the option several times.
[[nodiscard]] bool may_be_given_again(const std::string& option);

enum class OptionKind { turned_on, text, texts };
[[nodiscard]] OptionKind kind_of(const po::option_description& option);

}  // namespace lode::cli
