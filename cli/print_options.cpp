#include "print_options.hpp"

#include <charconv>
#include <cstdlib>

#include <letterlode/blank.hpp>

#include "art_library.hpp"
#include "choices.hpp"

namespace lode::cli {
namespace {

const std::vector<std::string> or_no_key{"none"};

std::optional<Refusal> set_key(PrintOptions& options, const Values& values) {
    if (values.text("key") == or_no_key.front()) {
        options.key = false;
        return std::nullopt;
    }
    return set_choice(options.key_marks, values, "key", key_mark_kinds, or_no_key);
}

std::optional<Refusal> set_colours(PrintOptions& options, const Values& values) {
    if (!values.has("colours")) return std::nullopt;
    const std::string text = values.text("colours");
    if (text == "own") {
        options.colours.assign(key_colours.begin(), key_colours.end());
        return std::nullopt;
    }
    for (std::size_t from = 0; from <= text.size();) {
        const auto comma = std::min(text.find(',', from), text.size());
        const auto colour = read_colour(text.substr(from, comma - from));
        if (!colour) return colour.refusal();
        options.colours.push_back(*colour);
        from = comma + 1;
    }
    return std::nullopt;
}

std::optional<Refusal> set_margin(PrintOptions& options, const Values& values) {
    if (!values.has("margin")) return std::nullopt;
    const auto margin =
        art_library().read_length(values.text("margin"), least_print_margin_mm, most_print_margin_mm);
    if (!margin) return margin.refusal();
    options.margin_mm = *margin;
    return std::nullopt;
}

// reproducible-builds.org, SOURCE_DATE_EPOCH: without it a document has no date.
std::optional<Refusal> set_date(PrintOptions& options) {
    const char* text = std::getenv("SOURCE_DATE_EPOCH");
    if (!text || !*text) return std::nullopt;
    const std::string seconds = text;
    std::int64_t date = 0;
    const auto [end, error] = std::from_chars(seconds.data(), seconds.data() + seconds.size(), date);
    constexpr std::int64_t year_9999 = 253'402'300'799;
    if (error != std::errc{} || end != seconds.data() + seconds.size() || date < 0 || date > year_9999)
        return unusable_call("SOURCE_DATE_EPOCH is no date: '" + seconds.substr(0, 60) + "'.",
                             "It counts seconds since 1970; leave it out for a document without a date.");
    options.date = date;
    return std::nullopt;
}

}  // namespace

void add_print_options(po::options_description& options) {
    using Text = std::string;
    options.add_options()                                                                       //
        ("page", offered_value("NAME", {.words = names_of(papers)}), "a4 (default) or letter")  //
        ("landscape", po::bool_switch(), "pages lie on their longer side")                      //
        ("margin", po::value<Text>()->value_name("LENGTH"),
         "what stays white at every edge (default 12.7mm)")                                              //
        ("font", po::value<Text>()->value_name("NAME"), "of all text, by family (default DejaVu Sans)")  //
        ("list", offered_value("ORDER", {.words = names_of(list_orders)}),
         "alphabetical (default, by the rules of --locale), given, or length: the shortest words first")  //
        ("grid-lines", offered_value("KIND", {.words = names_of(grid_line_kinds)}),
         "between cells: none (default), light or full")  //
        ("name-line", po::value<Text>()->value_name("TEXT")->implicit_value("Name"),
         "a line on which to write a name; --name-line=TEXT for another word than 'Name'")  //
        ("date-line", po::value<Text>()->value_name("TEXT")->implicit_value("Date"),
         "the same for a date")  //
        ("large-print", po::bool_switch(),
         "letters and words of 18 pt and more; says where a grid cannot")  //
        ("key", offered_value("KIND", {.words = names_of(key_mark_kinds, or_no_key)}),
         "how the answer key marks words: rings (default), lines, greyed (all other letters); none for no "
         "key")  //
        ("colours", offered_value("LIST", {.words = {"own"}}),
         "marks of the key in colours, in turn: gold,seagreen,#a34a2c, or own for some that go together "
         "(default: greys, for copiers)");
}

Outcome<PrintOptions> print_options(const Values& values) {
    PrintOptions options;
    options.landscape = values.is_on("landscape");
    options.large_print = values.is_on("large-print");
    options.font = values.text("font");
    options.name_line = values.text("name-line");
    options.date_line = values.text("date-line");
    for (auto refusal :
         {set_choice(options.page, values, "page", papers),
          set_choice(options.order, values, "list", list_orders),
          set_choice(options.grid_lines, values, "grid-lines", grid_line_kinds), set_key(options, values),
          set_colours(options, values), set_margin(options, values), set_date(options)})
        if (refusal) return std::move(*refusal);
    return options;
}

}  // namespace lode::cli
