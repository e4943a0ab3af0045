#include "artwork_options.hpp"

#include <array>

#include "art_library.hpp"
#include "choices.hpp"

namespace lode::cli {
namespace {

// The layers that --colour names: bands, which can have several colours, and these.
struct OneColouredLayer {
    const char* name;
    void (*set)(ArtworkOptions&, Colour);
};
constexpr std::array<OneColouredLayer, 4> one_coloured_layers{{
    {"letters", [](ArtworkOptions& options, Colour colour) { options.letters = colour; }},
    {"heading", [](ArtworkOptions& options, Colour colour) { options.heading_colour = colour; }},
    {"text", [](ArtworkOptions& options, Colour colour) { options.text_colour = colour; }},
    {"border", [](ArtworkOptions& options, Colour colour) { options.border_colour = colour; }},
}};

std::vector<std::string> layer_names() {
    std::vector<std::string> names{"bands"};
    for (const auto& layer : one_coloured_layers) names.emplace_back(layer.name);
    return names;
}

std::vector<std::string> layer_beginnings() {
    auto beginnings = layer_names();
    for (auto& beginning : beginnings) beginning += '=';
    return beginnings;
}

// "bands=#e8b04a", or several colours with commas between: "bands=gold,seagreen,#a34a2c".
std::optional<Refusal> set_colour(ArtworkOptions& options, const std::string& value) {
    const auto equals = value.find('=');
    const std::string layer = value.substr(0, equals);
    const auto unusable = [&](const std::string& advice) {
        return unusable_call("'" + value + "' cannot be used for --colour.", advice);
    };
    if (equals == std::string::npos)
        return unusable("Give a layer and its colour, such as letters=#243f3a or bands=gold,seagreen.");
    std::vector<Colour> colours;
    for (std::size_t from = equals + 1; from <= value.size();) {
        const auto comma = std::min(value.find(',', from), value.size());
        const auto read = read_colour(value.substr(from, comma - from));
        if (!read) return read.refusal();
        colours.push_back(*read);
        from = comma + 1;
    }
    if (layer == "bands") {
        options.band_colours = std::move(colours);
        return std::nullopt;
    }
    if (colours.size() != 1) return unusable("Only bands can have several colours.");
    for (const auto& [its_name, set] : one_coloured_layers)
        if (layer == its_name) {
            set(options, colours.front());
            return std::nullopt;
        }
    return unusable("Name one of the layers " + enumerated(layer_names()) + ".");
}

// A '\n' as people type it in a shell ends a line.
std::string with_line_ends(std::string text) {
    for (auto at = text.find("\\n"); at != std::string::npos; at = text.find("\\n", at + 1))
        text.replace(at, 2, "\n");
    return text;
}

// "10mm,10mm,5mm": from the left, from the top, across.
std::optional<Refusal> add_hole(ArtworkOptions& options, const std::string& value) {
    std::array<double, 3> lengths{};
    std::size_t from = 0;
    for (std::size_t i = 0; i < lengths.size(); ++i) {
        const auto comma = value.find(',', from);
        if ((comma == std::string::npos) != (i + 1 == lengths.size()))
            return unusable_value(
                "hole", value,
                "Give its middle from the left and from the top, and its diameter: 12mm,12mm,5mm.");
        const auto read = art_library().read_length(value.substr(from, comma - from), 0, most_blank_mm);
        if (!read)
            return unusable_value(
                "hole", value,
                "Give its middle from the left and from the top, and its diameter: 12mm,12mm,5mm.");
        lengths[i] = *read;
        from = comma + 1;
    }
    options.holes.push_back({{lengths[0], lengths[1]}, lengths[2]});
    return std::nullopt;
}

std::optional<Refusal> set_length(double& field, const Values& values, const char* option, double least,
                                  double most) {
    if (!values.has(option)) return std::nullopt;
    const auto read = art_library().read_length(values.text(option), least, most);
    if (!read) {
        Refusal refusal = read.refusal();
        refusal.message = std::string("--") + option + ": " + refusal.message;
        return refusal;
    }
    field = *read;
    return std::nullopt;
}

std::optional<Refusal> set_length(std::optional<double>& field, const Values& values, const char* option,
                                  double least, double most) {
    double value = 0;
    auto refusal = set_length(value, values, option, least, most);
    if (!refusal && values.has(option)) field = value;
    return refusal;
}

// For border and ornament, "none" turns off what an options file turned on.
const std::vector<std::string> or_none{"none"};

template <class Field, class Choices>
std::optional<Refusal> set_choice_or_none(Field& field, const Values& values, const char* option,
                                          const Choices& choices) {
    if (values.text(option) == or_none.front()) return std::nullopt;
    return set_choice(field, values, option, choices, or_none);
}

std::optional<Refusal> set_blank(ArtworkOptions& options, const Values& values,
                                 std::optional<Surface> surface) {
    if (!values.has("blank"))
        return unusable_call("The size of the blank is not given.", "Give --blank, such as --blank 8x10in.");
    const auto blank = art_library().read_blank(values.text("blank"));
    if (!blank) return blank.refusal();
    options.blank = *blank;
    const std::string advice =
        "Give --surface first for artwork on the front, or --surface second for the back of a clear blank, "
        "which is cut mirrored.";
    if (!values.has("surface") && !surface)
        return unusable_call("The surface is not given, and the wrong one ruins film.", advice);
    options.surface = values.has("surface") ? choice_named(surfaces, values.text("surface")) : surface;
    if (!options.surface) return unusable_call("'" + values.text("surface") + "' is no surface.", advice);
    return std::nullopt;
}

std::optional<Refusal> set_lengths(ArtworkOptions& options, const Values& values) {
    for (auto refusal :
         {set_length(options.margin_mm, values, "margin", 0, most_blank_mm),
          set_length(options.rebate_mm, values, "rebate", 0, most_blank_mm),
          set_length(options.heading_area_mm, values, "heading-area", least_heading_area_mm, most_blank_mm),
          set_length(options.border_line_mm, values, "border-line", 0.1, 20),
          set_length(options.least_stroke_mm, values, "least-stroke", 0.01, 100),
          set_length(options.least_gap_mm, values, "least-gap", 0.01, 100),
          set_length(options.embolden_mm, values, "embolden", 0, most_embolden_mm)})
        if (refusal) return refusal;
    for (const auto& hole : values.texts("hole"))
        if (auto refusal = add_hole(options, hole)) return refusal;
    return std::nullopt;
}

// Options of a part that is not drawn, which would be passed over in silence.
std::optional<Refusal> without_its_part(const ArtworkOptions& options, const Values& values) {
    if (values.has("heading-font") && options.heading.empty())
        return unusable_call("--heading-font is of no use without a heading.",
                             "Give --heading TEXT as well, or leave it out.");
    if (values.has("border-line") && !values.has("border"))
        return unusable_call("--border-line is of no use without a border.",
                             "Give --border as well, such as --border line, or leave it out.");
    return std::nullopt;
}

}  // namespace

void add_artwork_options(po::options_description& options) {
    using Text = std::string;
    using Texts = std::vector<std::string>;
    options.add_options()  //
        ("blank", offered_value("BLANK", {.files = true}),
         "the object to decorate: a size (8x10in, 203x254mm), a shape with a size (heart 8x8in; rounded, "
         "circle, "
         "oval, star, hexagon), or an SVG file whose outline it is")  //
        ("surface", offered_value("SIDE", {.words = names_of(surfaces)}),
         "first: artwork on the front; second: on the back of a clear blank, cut mirrored. No default: the "
         "wrong one ruins film")  //
        ("margin", po::value<Text>()->value_name("LENGTH"),
         "rim of the blank that stays clear: 10mm, 0.5in")  //
        ("rebate", po::value<Text>()->value_name("LENGTH"),
         "how much of the edge a frame hides: nothing is set there")  //
        ("hole", po::value<Texts>()->value_name("X,Y,D"),
         "a hole to hang it by, kept clear: from the left, from the top, diameter (12mm,12mm,5mm). May be "
         "given "
         "again")  //
        ("font", offered_value("NAME|FILE", {.words = {std::string(constructed_alphabet)}, .files = true}),
         "font of the letters, by family or file; constructed (the default, where it has every letter): the "
         "built-in alphabet, which keeps strokes and gaps that film holds")                               //
        ("heading", po::value<Text>()->value_name("TEXT"), "text above the grid; \\n begins a new line")  //
        ("heading-font",
         offered_value("NAME|FILE", {.words = {std::string(constructed_alphabet)}, .files = true}),
         "font of the heading (default: the letters')")  //
        ("heading-area", po::value<Text>()->value_name("LENGTH"),
         "height that is kept for the heading, whether it fills it or not")  //
        ("foot", po::value<Text>()->value_name("TEXT"),
         "text below the grid: a date, a line; \\n begins a new line")    //
        ("word-list", po::bool_switch(), "set the words below the grid")  //
        ("band", offered_value("KIND", {.words = names_of(all_band_kinds)}),
         "what marks the words: capsule (default), brush, ring, or none for a piece that is still to be "
         "solved")  //
        ("inlay", offered_value("WHAT", {.words = names_of(all_inlays)}),
         "what is cut out so that film does not lie on film: none (default), bands (where colours cross), "
         "all "
         "(letters out of bands too)")  //
        ("colour", offered_values("LAYER=COLOUR", {.words = layer_beginnings()}),
         "colour of letters, bands, heading, text or border, as #rrggbb or by name; bands take several in "
         "turn "
         "(bands=gold,seagreen). A list with a header word,band says it word by word. May be given again")  //
        ("border", offered_value("STYLE", {.words = names_of(all_border_styles, or_none)}),
         "line, double, rounded, notched or dotted (default: none)")                                     //
        ("border-line", po::value<Text>()->value_name("LENGTH"), "breadth of its line (default 1.2mm)")  //
        ("ornament", offered_value("KIND", {.words = names_of(all_ornaments, or_none)}),
         "leaf, curl or diamond: below the heading, and in the corners where there is room (default: "
         "none)")  //
        ("least-stroke", po::value<Text>()->value_name("LENGTH"),
         "narrowest stroke that the film holds (default 1mm, common practice)")  //
        ("least-gap", po::value<Text>()->value_name("LENGTH"),
         "narrowest gap and counter that can be weeded (default 1mm, common practice)")                     //
        ("embolden", po::value<Text>()->value_name("LENGTH"), "make every stroke so much wider")            //
        ("fix", po::bool_switch(), "where film would not hold, make the least change after which it does")  //
        ("registration", po::bool_switch(),
         "marks beyond the blank's corners, on every layer in the same places, to lay one over the other");
}

Outcome<ArtworkOptions> artwork_options(const Values& values, std::optional<Surface> surface) {
    ArtworkOptions options;
    if (auto refusal = set_blank(options, values, surface)) return std::move(*refusal);
    if (auto refusal = set_lengths(options, values)) return std::move(*refusal);
    options.font = values.text("font");
    options.heading_font = values.text("heading-font");
    options.heading = with_line_ends(values.text("heading"));
    options.foot = with_line_ends(values.text("foot"));
    options.word_list = values.is_on("word-list");
    options.registration = values.is_on("registration");
    for (auto refusal : {set_choice(options.band, values, "band", all_band_kinds),
                         set_choice(options.inlay, values, "inlay", all_inlays),
                         set_choice_or_none(options.border, values, "border", all_border_styles),
                         set_choice_or_none(options.ornament, values, "ornament", all_ornaments)})
        if (refusal) return std::move(*refusal);
    for (const auto& value : values.texts("colour"))
        if (auto refusal = set_colour(options, value)) return std::move(*refusal);
    if (auto refusal = without_its_part(options, values)) return std::move(*refusal);
    return options;
}

std::optional<Refusal> artwork_without_blank(const Values& values) {
    if (values.has("blank")) return std::nullopt;
    // A worksheet has a heading too.
    if (values.has("heading") && !values.has("out"))
        return unusable_call(
            "--heading is of no use where nothing is drawn or printed.",
            "Give --out DIR for a worksheet, with --blank for artwork too, or leave it out.");
    for (const char* option :
         {"surface", "margin", "rebate", "hole", "font", "heading-font", "heading-area", "foot", "band",
          "inlay", "colour", "border", "border-line", "ornament", "least-stroke", "least-gap", "embolden"})
        if (values.has(option))
            return unusable_call(std::string("--") + option + " is of no use without the size of the blank.",
                                 "Give --blank, such as --blank 8x10in, or leave it out.");
    for (const char* option : {"word-list", "fix", "registration"})
        if (values.is_on(option))
            return unusable_call(std::string("--") + option + " is of no use without the size of the blank.",
                                 "Give --blank, such as --blank 8x10in, or leave it out.");
    return std::nullopt;
}

}  // namespace lode::cli
