#include "batch/order_options.hpp"

#include <algorithm>
#include <array>

#include <boost/program_options/value_semantic.hpp>

#include "verbs.hpp"

namespace lode::cli {

const OrderOptions& order_options() {
    static const OrderOptions options{make_verb().options, rate_verb().options, print_verb().options};
    return options;
}

bool can_be_ordered(const std::string& option) {
    constexpr std::array<std::string_view, 8> of_the_command_line{"out",  "replace", "json", "threads",
                                                                  "text", "options", "help", "words"};
    return std::find(of_the_command_line.begin(), of_the_command_line.end(), option) ==
           of_the_command_line.end();
}

bool is_shared_option(const std::string& option) {
    return can_be_ordered(option) && option != "from" && option != "keep";
}

bool may_be_given_again(const std::string& option) {
    const OrderOptions& known = order_options();
    for (const auto* options : {&known.make, &known.rate, &known.print})
        if (const auto* found = options->find_nothrow(option, false))
            return kind_of(*found) == OptionKind::texts;
    return false;
}

OptionKind kind_of(const po::option_description& option) {
    const auto* const typed = dynamic_cast<const po::typed_value_base*>(option.semantic().get());
    if (typed && typed->value_type() == typeid(bool)) return OptionKind::turned_on;
    if (typed && typed->value_type() == typeid(std::vector<std::string>)) return OptionKind::texts;
    return OptionKind::text;
}

}  // namespace lode::cli
