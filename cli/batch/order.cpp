#include "batch/order.hpp"

#include <algorithm>
#include <array>
#include <charconv>

#include <sys/stat.h>
#include <unistd.h>
#include <boost/crc.hpp>
#include <boost/program_options/value_semantic.hpp>
#include <nlohmann/json.hpp>

#include "batch/order_options.hpp"
#include "choices.hpp"
#include "demand_options.hpp"
#include "puzzle_work.hpp"
#include "recipe_options.hpp"
#include "report.hpp"

namespace lode::cli {
namespace {

using Json = nlohmann::ordered_json;

// The members of data/schema/recipe.schema.json.
constexpr std::array<std::string_view, 33> recipe_members{
    "words",       "bands",    "locale",       "letters",   "digraphs",      "sharp_s",
    "marks",       "finals",   "grid",         "aspect",    "mask",          "shape",
    "directions",  "seed",     "avoid",        "allow",     "effort",        "default_avoid_list",
    "nested",      "message",  "message_then", "filler",    "letter_counts", "longest_run",
    "look_alikes", "leftover", "pins",         "crossings", "spacing",       "shares",
    "backward",    "choices",  "earlier"};

bool is_recipe_member(const std::string& name) {
    return std::find(recipe_members.begin(), recipe_members.end(), name) != recipe_members.end();
}

// What is wrong with an order.
struct Fault {
    Refusal refusal;
};

[[noreturn]] void fail(const std::string& fault, const std::string& advice,
                       std::vector<std::string> words = {}) {
    throw Fault{{Refusal::Reason::unusable, fault, std::move(words), {advice}, {}, 0}};
}

// A table has only texts, and a spreadsheet writes TRUE.
std::optional<bool> truth_of(const Json& value) {
    if (value.is_boolean()) return value.get<bool>();
    if (!value.is_string()) return std::nullopt;
    const std::string text = in_small_letters(value.get<std::string>());
    if (text == "true" || text == "yes" || text == "1") return true;
    if (text == "false" || text == "no" || text == "0") return false;
    return std::nullopt;
}

std::string text_of(const std::string& name, const Json& value) {
    if (value.is_string()) return value.get<std::string>();
    if (value.is_number()) return value.dump();
    fail("\"" + name + "\" is neither a text nor a number.",
         "Write its value as on the command line, in quotes.");
}

// As the command line would have it.
void add_option(po::variables_map& values, const po::option_description& option, const std::string& name,
                const Json& value) {
    const auto put = [&](boost::any held) {
        values.erase(name);
        values.insert({name, po::variable_value(std::move(held), false)});
    };
    switch (kind_of(option)) {
        case OptionKind::turned_on:
            if (const auto truth = truth_of(value)) return put(*truth);
            fail("\"" + name + "\" is neither true nor false.", "Give it one of them.");
        case OptionKind::text:
            // As --name-line, without a value.
            if (value == true && option.semantic()->min_tokens() == 0) {
                boost::any implied;
                option.semantic()->parse(implied, {}, true);
                return put(std::move(implied));
            }
            return put(text_of(name, value));
        case OptionKind::texts: {
            std::vector<std::string> texts;
            if (value.is_array())
                for (const auto& element : value) texts.push_back(text_of(name, element));
            else
                texts.push_back(text_of(name, value));
            return put(std::move(texts));
        }
    }
}

void check_name(const std::string& name) {
    if (name.empty()) fail("A member of the order has an empty name.", "Leave it out.");
}

void add_options(po::variables_map& values, const po::options_description& known, const std::string& verb,
                 const Json& members) {
    for (const auto& [name, value] : members.items()) {
        check_name(name);
        const auto* option = known.find_nothrow(name, false);
        if (!option || !can_be_ordered(name))
            fail("\"" + verb + "\" has a member \"" + name + "\", and letterlode " + verb +
                     " no such option for an order.",
                 "letterlode " + verb + " --help lists them; leave the dashes out.");
        add_option(values, *option, name, value);
    }
}

// Standard input may be where the orders come from, and is read by one of them at the most.
void check_file(const std::string& name, const std::string& file) {
    struct stat input {
    }, named{};
    const bool is_input = ::fstat(STDIN_FILENO, &input) == 0 && !S_ISREG(input.st_mode) &&
                          ::stat(file.c_str(), &named) == 0 && input.st_dev == named.st_dev &&
                          input.st_ino == named.st_ino;
    if (file == "-" || is_input)
        fail("\"" + name + "\" is standard input, which an order cannot read.", "Name a file.");
}

void check_files(const po::variables_map& values) {
    const Values given(values);
    for (const char* option : {"recipe", "from", "shape", "filler-text"})
        check_file(option, given.text(option));
    for (const auto& file : given.texts("avoid")) check_file("avoid", file);
}

// The members of an order, sorted by who reads them.
struct Members {
    std::string name;
    Json recipe = Json::object();
    std::optional<std::string> words_file;
    po::variables_map make;
    po::variables_map rate;     // besides make's
    po::variables_map print;    // likewise
    bool wants_rating = false;  // by an option of it
    bool wants_pages = false;
    std::optional<bool> says_rating = {};  // by its own "rate"
    std::optional<bool> says_pages = {};
};

// "print": true, or an object of options.
bool add_verb(po::variables_map& values, const po::options_description& known, const std::string& verb,
              const Json& value) {
    if (const auto truth = truth_of(value)) return *truth;
    if (!value.is_object())
        fail("\"" + verb + "\" is neither true nor an object of options.",
             "Write \"" + verb + "\": true, or {\"option\": value, ...}.");
    add_options(values, known, verb, value);
    return true;
}

void sort_member(const std::string& name, const Json& value, Members& members) {
    const OrderOptions& known = order_options();
    check_name(name);
    if (name == "name") {
        members.name = text_of(name, value);
    } else if (name == "words" && value.is_string()) {
        members.words_file = value.get<std::string>();
        check_file(name, *members.words_file);
    } else if (name == "rate") {
        members.says_rating = add_verb(members.rate, known.rate, name, value);
    } else if (name == "print") {
        members.says_pages = add_verb(members.print, known.print, name, value);
    } else if (name == "cut") {
        add_verb(members.make, known.make, name, value);
    } else if (const auto* option = known.make.find_nothrow(name, false);
               option && can_be_ordered(name) && (value.is_string() || !is_recipe_member(name))) {
        add_option(members.make, *option, name, value);
    } else if (is_recipe_member(name)) {
        members.recipe[name] = value;
    } else if (const auto* of_rate = known.rate.find_nothrow(name, false); of_rate && can_be_ordered(name)) {
        add_option(members.rate, *of_rate, name, value);
        members.wants_rating = true;
    } else if (const auto* of_print = known.print.find_nothrow(name, false);
               of_print && can_be_ordered(name)) {
        add_option(members.print, *of_print, name, value);
        members.wants_pages = true;
    } else {
        fail("An order has no member \"" + name + "\".",
             "Members are those of a recipe, and the options of letterlode make, rate, cut and print by "
             "their names; letterlode make --help lists most of them.");
    }
}

// What the command line of the batch says of all orders, where the order says nothing.
void add_defaults(Members& members, const po::variables_map& defaults) {
    const OrderOptions& known = order_options();
    for (const auto& [name, value] : defaults) {
        if (!is_shared_option(name) || value.defaulted()) continue;
        if (known.make.find_nothrow(name, false)) {
            if (!members.recipe.contains(name)) members.make.insert({name, value});
        } else if (known.rate.find_nothrow(name, false)) {
            members.rate.insert({name, value});
            members.wants_rating = true;
        } else if (known.print.find_nothrow(name, false)) {
            members.print.insert({name, value});
            members.wants_pages = true;
        }
    }
    // With a folder, options that are of use in one alone may stand in an order.
    if (const auto folder = defaults.find("out"); folder != defaults.end()) members.make.insert(*folder);
    const auto is_on = [&](const char* name) {
        return defaults.count(name) > 0 && defaults[name].as<bool>();
    };
    members.wants_rating = members.says_rating.value_or(members.wants_rating || is_on("rate"));
    members.wants_pages = members.says_pages.value_or(members.wants_pages || is_on("print"));
}

template <class T>
T taken(Outcome<T> outcome) {
    if (!outcome) throw Fault{outcome.refusal()};
    return std::move(outcome).value();
}

// The recipe by files that options name, then by the order's own members, then by its other options.
Recipe recipe_of(Members& members, const Values& make, const std::string& source) {
    Json whole = Json::object();
    if (const auto base = taken(recipe_from_files(make))) whole = Json::parse(to_json(*base));
    whole.update(members.recipe);
    if (members.words_file || !whole.contains("words")) whole["words"] = Json::array();
    Recipe recipe =
        taken(recipe_from_json(whole.dump(-1, ' ', false, Json::error_handler_t::replace), source));
    if (members.words_file) {
        auto words = read_list(*members.words_file);
        if (!words) {
            Refusal refusal = words.refusal();
            refusal.advice.push_back(
                "\"words\" in quotes is a file's name; a list stands in brackets: "
                "[\"Thyme\", \"Sage\"].");
            throw Fault{refusal};
        }
        recipe.words = *std::move(words);
    }
    return taken(with_recipe_options(std::move(recipe), make));
}

// Versions are pages of one list; what else is made several times, or cut, is another matter.
std::size_t versions_of(const Members& members) {
    const std::size_t count = taken(count_value(Values(members.print), "versions", max_versions, 1));
    if (count < 2)
        fail("\"versions\" are 2 to " + std::to_string(max_versions) + ".",
             "Leave it out for one worksheet.");
    for (const char* other : {"blank", "choices", "aim"})
        if (members.make.count(other) || members.recipe.contains(other))
            fail(
                "\"versions\" are worksheets of one list, and do not go with \"" + std::string(other) + "\".",
                "Leave one of them out.");
    return count;
}

constexpr int deepest = 64;

// As much as what reads and writes it by recursion stands. Throws Json::parse_error where it is no JSON.
Json parsed(const std::string& text) {
    // The parser takes a NUL for the end.
    if (text.find('\0') != std::string::npos)
        fail("The line holds a NUL character, and is no JSON.", "Write text.");
    return Json::parse(text, [](int depth, Json::parse_event_t, Json&) {
        if (depth > deepest)
            fail("The line is nested more than " + std::to_string(deepest) + " levels deep.",
                 "An order has lists and objects in it, and these hold no others.");
        return true;
    });
}

Order order_from(const std::string& text, std::uint64_t number, const OrderDefaults& defaults) {
    const Json json = parsed(text);
    if (!json.is_object()) fail("The line is no JSON object.", "Write an order as {\"words\": [...], ...}.");
    Members members;
    for (const auto& [name, value] : json.items()) sort_member(name, value, members);
    add_defaults(members, defaults.options);
    check_files(members.make);
    Order order;
    order.number = number;
    order.name = members.name;
    order.make = Values(members.make);
    if (members.wants_rating) {
        // A panel's letters are rated as they will hang.
        members.rate.insert(members.make.begin(), members.make.end());
        order.rate = Values(members.rate);
    }
    if (members.wants_pages) order.print = Values(members.print);
    if (members.wants_pages && members.print.count("versions")) order.versions = versions_of(members);
    order.recipe = recipe_of(members, order.make, defaults.source);
    return order;
}

Refusal no_json(const std::string& why) {
    return {Refusal::Reason::unusable,
            "The line is no JSON: " + why + ".",
            {},
            {"Write an order a line, as {\"words\": [\"Thyme\", \"Sage\"], \"grid\": \"12x12\"}.",
             "A table of orders is read by --from TABLE."},
            {},
            0};
}

}  // namespace

Outcome<Order> read_order(const std::string& text, std::uint64_t number, const OrderDefaults& defaults) {
    try {
        return order_from(text, number, defaults);
    } catch (const Fault& fault) {
        return fault.refusal;
    } catch (const Json::parse_error& error) {
        return no_json("near its byte " + std::to_string(error.byte));
    } catch (const Json::out_of_range&) {
        return no_json("it holds a number beyond all bounds");
    }
}

std::string name_in(const std::string& text) {
    try {
        const Json json = parsed(text);
        if (!json.is_object()) return {};
        const auto name = json.find("name");
        return name != json.end() && name->is_string() ? name->get<std::string>() : std::string();
    } catch (const Fault&) {
        return {};
    } catch (const Json::exception&) {
        return {};
    }
}

std::uint32_t crc_of(const std::string& text) {
    boost::crc_32_type crc;
    crc.process_bytes(text.data(), text.size());
    return crc.checksum();
}

bool is_order_member(const std::string& name) {
    const OrderOptions& known = order_options();
    const auto is_of = [&](const po::options_description& options) {
        return can_be_ordered(name) && options.find_nothrow(name, false);
    };
    return name == "name" || name == "rate" || name == "print" || name == "cut" || is_recipe_member(name) ||
           is_of(known.make) || is_of(known.rate) || is_of(known.print);
}

std::optional<SeedInOrder> seed_in(const std::string& text) {
    constexpr std::string_view wanted = "\"seed\"";
    const auto skip_blanks = [&](std::size_t at) {
        while (at < text.size() && (text[at] == ' ' || text[at] == '\t')) ++at;
        return at;
    };
    std::optional<SeedInOrder> found;
    int depth = 0;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char c = text[at];
        if (c == '{' || c == '[') ++depth;
        if (c == '}' || c == ']') --depth;
        if (c != '"') continue;
        const std::size_t from = at;
        for (++at; at < text.size() && text[at] != '"'; ++at)
            if (text[at] == '\\') ++at;
        if (at >= text.size()) return std::nullopt;
        const std::string_view member = std::string_view(text).substr(from, at + 1 - from);
        // Who knows what such a name is.
        const std::size_t next = skip_blanks(at + 1);
        const bool is_name = depth == 1 && next < text.size() && text[next] == ':';
        if (is_name && member.find('\\') != std::string_view::npos) return std::nullopt;
        if (depth != 1 || member != wanted) continue;
        if (!is_name) continue;
        const std::size_t digits = skip_blanks(next + 1);
        SeedInOrder seed;
        const char* const first = text.data() + digits;
        const auto [end, error] = std::from_chars(first, text.data() + text.size(), seed.seed);
        const bool has_leading_zero = digits + 1 < text.size() && text[digits] == '0' && end != first + 1;
        const std::size_t behind = skip_blanks(static_cast<std::size_t>(end - text.data()));
        const bool is_whole = behind < text.size() && (text[behind] == ',' || text[behind] == '}');
        if (found || error != std::errc() || has_leading_zero || !is_whole) return std::nullopt;
        seed.others = text.substr(0, digits) + text.substr(static_cast<std::size_t>(end - text.data()));
        found = std::move(seed);
        at = behind - 1;
    }
    return found;
}

}  // namespace lode::cli
