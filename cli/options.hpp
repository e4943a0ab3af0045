#pragma once
// Command-line options, shared by the verbs. The command line wins over --options FILE, which wins over
// --recipe FILE.

#include <optional>
#include <string>
#include <vector>

#include <boost/program_options/options_description.hpp>
#include <boost/program_options/variables_map.hpp>
#include <letterlode/outcome.hpp>

namespace lode::cli {

namespace po = boost::program_options;

// What a verb takes: its options, and the one file that it reads ("WORDS"), or several where it says so.
struct Verb {
    std::string name = {};     // see VerbEntry
    std::string file = {};     // the positional argument's name
    std::string purpose = {};  // one line
    std::string details = {};  // the rest of the help, with examples
    po::options_description options = {};
    bool takes_several_files = false;
    bool needs_file = true;
};

// What a shell may offer where an option's value is typed.
struct Offers {
    std::vector<std::string> words =
        {};                // names of choices; one that ends in '=' is the beginning of a value
    bool several = false;  // of these, with commas between
    bool files = false;
    bool folders = false;
};

// The value of an option that is given once, or that may be given again: a text, as po::value gives it, with
// its name in the help and with what is offered for it.
[[nodiscard]] po::value_semantic* offered_value(const char* name, Offers offers);
[[nodiscard]] po::value_semantic* offered_values(const char* name, Offers offers);

// What is offered for an option's value: nothing, where it was described by other means.
[[nodiscard]] Offers offers_of(const po::option_description& option);

// All options of a verb: its own, and those that every verb has.
[[nodiscard]] po::options_description all_options(const Verb& verb);

class Values {
  public:
    explicit Values(po::variables_map values) : values_(std::move(values)) {}

    [[nodiscard]] bool has(const char* option) const { return values_.count(option) > 0; }
    [[nodiscard]] bool is_on(const char* option) const { return has(option) && values_[option].as<bool>(); }
    [[nodiscard]] std::string text(const char* option) const {
        return has(option) ? values_[option].as<std::string>() : "";
    }
    [[nodiscard]] std::vector<std::string> texts(const char* option) const {
        return has(option) ? values_[option].as<std::vector<std::string>>() : std::vector<std::string>();
    }

    [[nodiscard]] const po::variables_map& all() const { return values_; }

  private:
    po::variables_map values_;
};

// Reads the arguments after the verb. Refused as unusable, naming the option. `help` comes back as the option
// "help".
[[nodiscard]] Outcome<Values> read_options(const Verb& verb, const std::vector<std::string>& arguments);

[[nodiscard]] std::string help_text(const Verb& verb);

// The arguments with an option and a value of two words ("--crossings at-least 5") put together.
[[nodiscard]] std::vector<std::string> with_joined_values(std::vector<std::string> arguments);

// What is said of options that do not go together, or of one that is missing.
[[nodiscard]] Refusal unusable_call(const std::string& fault, const std::string& advice);

// What is said of a value that an option cannot take.
[[nodiscard]] Refusal unusable_value(const std::string& option, const std::string& value,
                                     const std::string& advice);

// A whole number of 0 or more. Refused as unusable.
[[nodiscard]] Outcome<std::uint64_t> whole_number(const std::string& option, const std::string& text);

// A number from 1 to `most`, or `otherwise` where the option is not given. Refused as unusable.
[[nodiscard]] Outcome<std::size_t> count_value(const Values& values, const char* option, std::size_t most,
                                               std::size_t otherwise);

}  // namespace lode::cli
