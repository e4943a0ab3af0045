#include "cut_options.hpp"

#include "art_library.hpp"
#include "choices.hpp"
#include "report.hpp"

namespace lode::cli {
namespace {

Outcome<Area> area_of(const char* option, const std::string& text) {
    const auto area = art_library().read_area(text);
    if (area) return *area;
    Refusal refusal = area.refusal();
    refusal.message = std::string("--") + option + ": " + refusal.message;
    return refusal;
}

// "red=6x9in"
std::optional<Refusal> add_film(PlanOptions& options, const std::string& value) {
    const auto equals = value.find('=');
    if (equals == std::string::npos)
        return unusable_value("film", value,
                              "Give a colour and what there is of it: red=6x9in, or gold=12in of a roll.");
    const auto colour = read_colour(value.substr(0, equals));
    if (!colour) return colour.refusal();
    const auto area = area_of("film", value.substr(equals + 1));
    if (!area) return area.refusal();
    for (FilmStock& film : options.films)
        if (film.colour == *colour && film.width_mm == area->width_mm && film.height_mm == area->height_mm) {
            ++film.count;
            return std::nullopt;
        }
    options.films.push_back({*colour, area->width_mm, area->height_mm, 1});
    return std::nullopt;
}

// "30mm" or "1.2in", each second.
Outcome<double> read_speed(const std::string& text) {
    const auto read = art_library().read_length(text, 0.1, 5'000);
    if (read) return *read;
    return unusable_value("speed", text, "Give how far the blade goes in a second: 30mm, 1.2in.");
}

Outcome<PlanOptions> plan_options(const Values& values) {
    PlanOptions options;
    const auto bed = area_of("bed", values.text("bed"));
    if (!bed) return bed.refusal();
    options.bed.width_mm = bed->width_mm;
    options.bed.height_mm = bed->height_mm;
    if (values.has("bed-edge")) {
        const auto edge = art_library().read_length(values.text("bed-edge"), 0, most_bed_mm);
        if (!edge) return edge.refusal();
        options.bed.edge_mm = *edge;
    }
    for (const auto& film : values.texts("film"))
        if (auto refusal = add_film(options, film)) return std::move(*refusal);
    return options;
}

CutControl control_of(Progress& progress) {
    return {[&](std::uint64_t done, std::uint64_t all) { progress.show(done, all); }, &interrupt_flag()};
}

constexpr std::size_t most_findings_said = 6;

// Film of a colour that nothing is cut from is a mistyped colour, or of no use.
std::optional<Refusal> idle_film(const Artwork& artwork, const CutOptions& options) {
    if (!options.plan) return std::nullopt;
    for (const FilmStock& film : options.plan->films) {
        std::string colours;
        bool used = false;
        for (const Layer& layer : artwork.layers) {
            used = used || layer.colour == film.colour;
            colours += (colours.empty() ? "" : ", ") + to_text(layer.colour) + " (" + layer.name + ")";
        }
        if (!used)
            return unusable_call("--film: no layer has the colour " + to_text(film.colour) + ".",
                                 "Name a colour that is cut: " + colours + "; or leave it out.");
    }
    return std::nullopt;
}

void say_findings(const HeldArtwork& held) {
    for (const auto& note : held.artwork.notes) say("note: " + note);
    for (const auto& change : held.changed) say("note: " + change);
    const auto& thin = held.measures.thin;
    for (std::size_t i = 0; i < std::min(thin.size(), most_findings_said); ++i)
        say("thin: " + art_library().finding_text(thin[i]));
    if (thin.size() > most_findings_said)
        say("thin: and " + std::to_string(thin.size() - most_findings_said) + " more places.");
    if (!thin.empty())
        for (const auto& way : art_library().ways_out(held)) say("  " + way);
}

}  // namespace

void add_cut_options(po::options_description& options) {
    using Text = std::string;
    using Texts = std::vector<std::string>;
    options.add_options()  //
        ("bed", po::value<Text>()->value_name("SIZE"),
         "what the cutter reaches, for a plan of loads: 12x12in; a roll by its width: 12in")  //
        ("bed-edge", po::value<Text>()->value_name("LENGTH"),
         "how much of the bed's edge it does not reach (default 0)")  //
        ("film", po::value<Texts>()->value_name("COLOUR=SIZE"),
         "what there is of a colour: red=6x9in. May be given again; colours that are not named are taken to "
         "be "
         "there")  //
        ("speed", po::value<Text>()->value_name("LENGTH"),
         "how far the blade goes in a second (30mm), for an estimate of the time")  //
        ("weeding-lines", po::bool_switch(),
         "frames, and cuts between rows, that part the waste into strips")                           //
        ("dxf", po::bool_switch(), "layers and loads as DXF too")                                    //
        ("guide", po::bool_switch(), "a true-size page to lay under or behind the blank, in tiles")  //
        ("paper", offered_value("NAME", {.words = names_of(papers)}),
         "of what is printed: a4 (default) or letter");
}

Outcome<CutOptions> cut_options(const Values& values) {
    CutOptions options;
    if (values.has("bed")) {
        auto plan = plan_options(values);
        if (!plan) return plan.refusal();
        options.plan = *std::move(plan);
    } else {
        for (const char* option : {"bed-edge", "film"})
            if (values.has(option))
                return unusable_call(
                    std::string("--") + option + " is of no use without the size of the bed.",
                    "Give --bed, such as --bed 12x12in.");
    }
    if (values.has("speed")) {
        const auto speed = read_speed(values.text("speed"));
        if (!speed) return speed.refusal();
        options.speed_mm_s = *speed;
    }
    options.weeding_lines = values.is_on("weeding-lines");
    options.dxf = values.is_on("dxf");
    options.guide = values.is_on("guide");
    if (auto refusal = set_choice(options.paper, values, "paper", papers)) return std::move(*refusal);
    return options;
}

std::optional<Refusal> cutting_without_folder(const Values& values) {
    if (values.has("out") && values.has("blank")) return std::nullopt;
    const auto refusal = [](const std::string& option) {
        return unusable_call("--" + option + " is of use only where artwork is written into a folder.",
                             "Give --blank and --out DIR as well, or leave it out.");
    };
    for (const char* option : {"bed", "bed-edge", "film", "speed"})
        if (values.has(option)) return refusal(option);
    // A worksheet is on paper too.
    if (values.has("paper") && !values.has("out")) return refusal("paper");
    for (const char* option : {"weeding-lines", "dxf", "guide"})
        if (values.is_on(option)) return refusal(option);
    return std::nullopt;
}

Outcome<HeldArtwork> drawn(const Puzzle& puzzle, const ArtworkOptions& options, bool fix) {
    auto held = [&] {
        Progress progress("drawing and measuring", fix ? "of what may have to be tried" : "of the pieces");
        const CutControl control = control_of(progress);
        const auto draw = fix ? art_library().draw_to_hold : art_library().draw_and_measure;
        return draw(puzzle, options, control);
    }();
    if (held) say_findings(*held);
    return held;
}

Outcome<std::optional<CutPlan>> planned_loads(const HeldArtwork& held, const CutOptions& options) {
    if (!options.plan) return std::optional<CutPlan>();
    if (auto refusal = idle_film(held.artwork, options)) return *std::move(refusal);
    Progress progress("planning loads", "of the effort spent");
    auto plan = art_library().plan_loads(held.artwork, *options.plan, control_of(progress));
    if (!plan) return plan.refusal();
    return std::optional<CutPlan>(*std::move(plan));
}

Outcome<std::vector<NamedFile>> files_to_cut(const Puzzle& puzzle, const HeldArtwork& held,
                                             const CutOptions& options) {
    if (auto refusal = idle_film(held.artwork, options)) return *std::move(refusal);
    Progress progress("planning loads", "of the effort spent");
    return art_library().cut_files(puzzle, held, options, control_of(progress));
}

}  // namespace lode::cli
