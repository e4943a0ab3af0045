#include "artwork_options.hpp"

namespace lode::cli {
namespace {

// "bands=#e8b04a"
std::optional<Refusal> set_colour(ArtworkOptions& options, const std::string& value) {
    const auto equals = value.find('=');
    const std::string layer = value.substr(0, equals);
    Colour* colour = nullptr;
    if (layer == "letters") colour = &options.letters;
    if (layer == "bands") colour = &options.bands;
    if (layer == "heading") colour = &options.heading_colour;
    if (!colour || equals == std::string::npos)
        return unusable_call(
            "'" + value + "' cannot be used for --colour.",
            "Give a layer and its colour, such as letters=#243f3a; layers are letters, heading and bands.");
    const auto read = read_colour(value.substr(equals + 1));
    if (!read) return read.refusal();
    *colour = *read;
    return std::nullopt;
}

// A '\n' as people type it in a shell ends a line.
std::string with_line_ends(std::string text) {
    for (auto at = text.find("\\n"); at != std::string::npos; at = text.find("\\n", at + 1))
        text.replace(at, 2, "\n");
    return text;
}

}  // namespace

void add_artwork_options(po::options_description& options) {
    using Text = std::string;
    options.add_options()  //
        ("blank", po::value<Text>()->value_name("WxH"),
         "size of the object to decorate: 8x10in, 203x254mm, 20.3x25.4cm")  //
        ("surface", po::value<Text>()->value_name("SIDE"),
         "first: artwork on the front; second: on the back of a clear blank, cut mirrored. No default: the "
         "wrong one ruins film")  //
        ("font", po::value<Text>()->value_name("NAME|FILE"),
         "font of the letters, by family or file (default: DejaVu Sans:bold)")                            //
        ("heading", po::value<Text>()->value_name("TEXT"), "text above the grid; \\n begins a new line")  //
        ("band", po::value<Text>()->value_name("KIND"),
         "what marks the words: capsule (default), or none for a piece that is still to be solved")  //
        ("colour", po::value<std::vector<Text>>()->value_name("LAYER=#RRGGBB"),
         "colour of a layer: letters, heading or bands. May be given again");
}

Outcome<ArtworkOptions> artwork_options(const Values& values, std::optional<Surface> surface) {
    ArtworkOptions options;
    if (!values.has("blank"))
        return unusable_call("The size of the blank is not given.", "Give --blank, such as --blank 8x10in.");
    const auto blank = read_blank(values.text("blank"));
    if (!blank) return blank.refusal();
    options.blank = *blank;
    const std::string advice =
        "Give --surface first for artwork on the front, or --surface second for the back of a clear blank, "
        "which is cut mirrored.";
    if (!values.has("surface") && !surface)
        return unusable_call("The surface is not given, and the wrong one ruins film.", advice);
    options.surface = values.has("surface") ? surface_named(values.text("surface")) : surface;
    if (!options.surface) return unusable_call("'" + values.text("surface") + "' is no surface.", advice);
    if (values.has("font")) options.font = values.text("font");
    options.heading = with_line_ends(values.text("heading"));
    if (values.has("band")) {
        const std::string band = values.text("band");
        if (band != "capsule" && band != "none")
            return unusable_call("'" + band + "' cannot be used for --band.", "Give capsule or none.");
        options.draw_bands = band == "capsule";
    }
    for (const auto& value : values.texts("colour"))
        if (auto refusal = set_colour(options, value)) return std::move(*refusal);
    return options;
}

std::optional<Refusal> artwork_without_blank(const Values& values) {
    if (values.has("blank")) return std::nullopt;
    for (const char* option : {"surface", "font", "heading", "band", "colour"})
        if (values.has(option))
            return unusable_call(std::string("--") + option + " is of no use without the size of the blank.",
                                 "Give --blank, such as --blank 8x10in, or leave it out.");
    return std::nullopt;
}

}  // namespace lode::cli
