#include "rating_rules.hpp"

#include <letterlode/art.hpp>

#include "art_library.hpp"
#include "artwork_options.hpp"

namespace lode::cli {

Outcome<RatingRules> rating_rules(const Puzzle& puzzle, const Values& values) {
    RatingRules rules;
    if (values.has("viewing") && !values.has("blank"))
        return unusable_call("--viewing is the distance to a panel, and its size is not given.",
                             "Give --blank, such as --blank 8x10in.");
    double viewing = 0;
    if (values.has("viewing")) {
        const auto distance = art_library().read_distance(values.text("viewing"));
        if (!distance) return distance.refusal();
        viewing = *distance;
    }
    if (values.has("font")) {
        auto looks = art_library().letter_looks(puzzle.grid.alphabet, values.text("font"));
        if (!looks) return looks.refusal();
        rules.looks = std::move(*looks);
    }
    if (!values.has("blank")) return rules;
    // On either surface its viewer sees the same.
    auto options = artwork_options(values, Surface::first);
    if (!options) return options.refusal();
    if (puzzle.words.empty()) options->band = BandKind::none;
    const auto artwork = art_library().draw(puzzle, *options);
    if (!artwork) return artwork.refusal();
    auto seen = art_library().letters_seen(puzzle, *artwork, *options, viewing);
    if (!seen) return seen.refusal();
    rules.seen = std::move(*seen);
    return rules;
}

}  // namespace lode::cli
