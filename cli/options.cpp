#include "options.hpp"

#include <charconv>
#include <sstream>

#include <boost/program_options/parsers.hpp>
#include <boost/program_options/positional_options.hpp>
#include <letterlode/files.hpp>

#include "options_file.hpp"

namespace lode::cli {
namespace {

constexpr const char* positional = "file";

Refusal unusable_options(const std::string& fault, const Verb& verb) {
    return {Refusal::Reason::unusable, fault + ".", {}, {"See letterlode " + verb.name + " --help."}, {}, 0};
}

// A value that also knows what is offered for it.
class HasOffers {
  public:
    explicit HasOffers(Offers offers) : offers_(std::move(offers)) {}
    virtual ~HasOffers() = default;
    [[nodiscard]] const Offers& offers() const { return offers_; }

  private:
    Offers offers_;
};

template <class T>
class OfferedValue final : public po::typed_value<T>, public HasOffers {
  public:
    OfferedValue(const char* name, Offers offers)
        : po::typed_value<T>(nullptr), HasOffers(std::move(offers)) {
        this->value_name(name);
    }
};

// Boost's sentences speak of '--grid' and of positions; they are kept, but for one that explains nothing.
std::string sentence(const po::error& error) {
    const auto* syntax = dynamic_cast<const po::invalid_command_line_syntax*>(&error);
    if (syntax && syntax->kind() == po::invalid_syntax::empty_adjacent_parameter)
        return "'" + syntax->tokens() + "=' has nothing behind the '='";
    return error.what();
}

}  // namespace

po::value_semantic* offered_value(const char* name, Offers offers) {
    return new OfferedValue<std::string>(name, std::move(offers));  // Boost's descriptions own it
}

po::value_semantic* offered_values(const char* name, Offers offers) {
    return new OfferedValue<std::vector<std::string>>(name, std::move(offers));
}

Offers offers_of(const po::option_description& option) {
    const auto* value = dynamic_cast<const HasOffers*>(option.semantic().get());
    return value ? value->offers() : Offers{};
}

po::options_description all_options(const Verb& verb) {
    constexpr unsigned width = 100;
    po::options_description all(width);
    for (const auto& option : verb.options.options()) all.add(option);
    all.add_options()  //
        ("options", offered_value("FILE", {.files = true}),
         "options from a file, 'name = value' a line; the command line wins over it")  //
        ("help,h", po::bool_switch(), "this text");
    return all;
}

Outcome<Values> read_options(const Verb& verb, const std::vector<std::string>& arguments) {
    const po::options_description options = all_options(verb);
    po::options_description with_file;
    with_file.add(options);
    with_file.add_options()(positional, po::value<std::vector<std::string>>(), "");
    po::positional_options_description places;
    places.add(positional, -1);

    po::variables_map values;
    // A cut option name that is clear today may be unclear tomorrow: none is guessed.
    const int style = po::command_line_style::unix_style & ~po::command_line_style::allow_guessing;
    try {
        po::store(po::command_line_parser(with_joined_values(arguments))
                      .options(with_file)
                      .positional(places)
                      .style(style)
                      .run(),
                  values);
    } catch (const po::error& error) {
        return unusable_options(sentence(error), verb);
    }
    if (values["help"].as<bool>()) return Values(values);
    if (values.count("options")) {
        const std::string name = values["options"].as<std::string>();
        const auto text = read_file(name);
        if (!text) return text.refusal();
        try {
            // What is stored first wins.
            po::store(parse_options_file(*text, verb.options), values);
        } catch (const po::error& error) {
            Refusal refusal = unusable_options(name + ", " + sentence(error), verb);
            refusal.advice.insert(
                refusal.advice.begin(),
                "Write options as on the command line, without the dashes: 'seed = 7', one a line; a line "
                "that begins with '#' is a comment.");
            return refusal;
        }
    }
    const auto files = values.count(positional) ? values[positional].as<std::vector<std::string>>()
                                                : std::vector<std::string>();
    if (verb.needs_file && files.empty() && !values.count("recipe"))
        return unusable_options(
            "letterlode " + verb.name + " needs a file: " + verb.file + " ('-' reads standard input)", verb);
    if (files.size() > 1 && !verb.takes_several_files)
        return unusable_options(
            "letterlode " + verb.name + " takes one file, and '" + files[1] + "' is a second", verb);
    return Values(values);
}

std::vector<std::string> with_joined_values(std::vector<std::string> arguments) {
    for (std::size_t at = 0; at + 1 < arguments.size(); ++at)
        if (arguments[at] == "at-least" || arguments[at].ends_with("=at-least")) {
            arguments[at] += " " + arguments[at + 1];
            arguments.erase(arguments.begin() + static_cast<std::ptrdiff_t>(at) + 1);
        }
    return arguments;
}

std::string help_text(const Verb& verb) {
    std::ostringstream text;
    text << "letterlode " << verb.name << " " << verb.file << " [options]\n  " << verb.purpose << "\n\n"
         << all_options(verb) << "\n"
         << verb.details;
    return text.str();
}

Refusal unusable_call(const std::string& fault, const std::string& advice) {
    return {Refusal::Reason::unusable, fault, {}, {advice}, {}, 0};
}

Refusal unusable_value(const std::string& option, const std::string& value, const std::string& advice) {
    return {Refusal::Reason::unusable,
            "'" + value + "' cannot be used for --" + option + ".",
            {},
            {advice},
            {},
            0};
}

Outcome<std::uint64_t> whole_number(const std::string& option, const std::string& text) {
    std::uint64_t number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error != std::errc() || end != text.data() + text.size())
        return Refusal{Refusal::Reason::unusable,
                       "'" + text + "' is no number for --" + option + ".",
                       {},
                       {"Give a whole number from 0 to 18446744073709551615."},
                       {},
                       0};
    return number;
}

Outcome<std::size_t> count_value(const Values& values, const char* option, std::size_t most,
                                 std::size_t otherwise) {
    if (!values.has(option)) return otherwise;
    const auto count = whole_number(option, values.text(option));
    if (count && *count >= 1 && *count <= most) return static_cast<std::size_t>(*count);
    return unusable_value(option, values.text(option),
                          "Give a number from 1 to " + std::to_string(most) + ".");
}

}  // namespace lode::cli
