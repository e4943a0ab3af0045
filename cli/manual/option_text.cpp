#include "option_text.hpp"

#include <boost/program_options/cmdline.hpp>
#include <boost/program_options/value_semantic.hpp>

namespace lode::cli {
namespace {

// Boost tells a value as "TEXT", and one that can be left out as "[=TEXT(=Name)]".
void set_value(OptionText& text, const po::value_semantic& semantic) {
    if (semantic.max_tokens() == 0) return;
    text.value = semantic.name();
    text.value_is_optional = text.value.starts_with("[=");
    if (text.value_is_optional) text.value = text.value.substr(2, text.value.find_first_of("(]") - 2);
}

}  // namespace

std::vector<OptionText> option_texts(const Verb& verb) {
    std::vector<OptionText> texts;
    const po::options_description all = all_options(verb);
    for (const auto& option : all.options()) {
        OptionText text;
        text.name = option->canonical_display_name(po::command_line_style::allow_long);
        const std::string short_name =
            option->canonical_display_name(po::command_line_style::allow_dash_for_short);
        if (short_name.starts_with('-')) text.short_name = short_name;
        set_value(text, *option->semantic());
        text.purpose = option->description();
        text.offers = offers_of(*option);
        text.may_be_given_again = dynamic_cast<const po::typed_value<std::vector<std::string>>*>(
                                      option->semantic().get()) != nullptr;
        texts.push_back(std::move(text));
    }
    return texts;
}

}  // namespace lode::cli
