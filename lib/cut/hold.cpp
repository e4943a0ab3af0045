// The way out of artwork that is too thin: what would help, and the least change that does.

#include <algorithm>
#include <cmath>

#include <letterlode/cut.hpp>

#include "art/number.hpp"

namespace lode {

namespace {

bool is_type(const std::string& layer) {
    return layer == "letters" || layer == "text" || layer == "heading";
}

// How much the worst of the layers that are set in type lacks, in mm; 0 where none does.
double lacking(const Measures& measures, ThinFinding::Kind kind) {
    const double least = kind == ThinFinding::Kind::stroke ? measures.least_stroke_mm : measures.least_gap_mm;
    double most = 0;
    for (const ThinFinding& finding : measures.thin)
        if (finding.kind == kind && is_type(finding.layer)) most = std::max(most, least - finding.width_mm);
    return most;
}

// Up to a hundredth of a millimetre.
double rounded_up(double mm) {
    return std::ceil(mm * 100) / 100;
}

// What is too little never reads as enough.
double cut_down(double mm) {
    return std::floor(mm * 100) / 100;
}

struct Tried {
    Artwork artwork;
    Measures measures;
    ArtworkOptions options;
};

Outcome<Tried> tried(const Puzzle& puzzle, const ArtworkOptions& options) {
    auto artwork = draw(puzzle, options);
    if (!artwork) return artwork.refusal();
    Tried result{*std::move(artwork), {}, options};
    result.measures = measure(result.artwork, options.least_stroke_mm, options.least_gap_mm);
    return result;
}

// Strokes as much wider as the thinnest lacks, or more where that was not enough; and then as little wider as
// still holds, to a hundredth of a millimetre. Nothing where none of that holds.
std::optional<Tried> made_bolder(const Puzzle& puzzle, const Tried& thin) {
    constexpr int most_rounds = 3;
    const auto with = [&](long hundredths) {
        ArtworkOptions options = thin.options;
        options.embolden_mm = static_cast<double>(hundredths) / 100;
        auto result = tried(puzzle, options);
        return result ? std::optional<Tried>(*std::move(result)) : std::nullopt;
    };
    const auto in_hundredths = [](double mm) { return static_cast<long>(std::ceil(mm * 100)); };
    long too_little = in_hundredths(thin.options.embolden_mm);
    long enough = too_little;
    double missing = lacking(thin.measures, ThinFinding::Kind::stroke);
    std::optional<Tried> holds;
    for (int round = 0; round < most_rounds && missing > 0 && !holds; ++round) {
        enough += std::max(1L, in_hundredths(missing));
        if (enough > in_hundredths(most_embolden_mm)) return std::nullopt;
        auto bolder = with(enough);
        if (!bolder) return std::nullopt;
        missing = lacking(bolder->measures, ThinFinding::Kind::stroke);
        if (bolder->measures.holds())
            holds = std::move(bolder);
        else
            too_little = enough;
    }
    while (holds && enough - too_little > 1) {
        const long middle = (too_little + enough) / 2;
        auto bolder = with(middle);
        if (bolder && bolder->measures.holds()) {
            holds = std::move(bolder);
            enough = middle;
        } else {
            too_little = middle;
        }
    }
    return holds;
}

HeldArtwork held(Tried result, std::vector<std::string> changed) {
    return {std::move(result.artwork), std::move(result.measures), std::move(result.options),
            std::move(changed), false};
}

}  // namespace

std::vector<std::string> ways_out(const HeldArtwork& held) {
    const Measures& measures = held.measures;
    std::vector<std::string> ways;
    if (measures.holds()) return ways;
    const double stroke = lacking(measures, ThinFinding::Kind::stroke);
    const double gap = std::max(lacking(measures, ThinFinding::Kind::gap),
                                lacking(measures, ThinFinding::Kind::between_pieces));
    // Wider strokes narrow gaps.
    if (stroke > 0 && gap <= 0 && !held.tried_to_hold)
        ways.push_back("Make strokes wider: --embolden " + decimal(rounded_up(stroke), 2) + "mm.");
    double worst = 1;  // by what all would have to grow
    for (const ThinFinding& finding : measures.thin)
        worst = std::max(worst, (finding.kind == ThinFinding::Kind::stroke ? measures.least_stroke_mm
                                                                           : measures.least_gap_mm) /
                                    std::max(finding.width_mm, 1e-3));
    if (worst < 4)
        ways.push_back("Make cells larger, by a larger blank or fewer rows and columns: " +
                       both_units(std::ceil(held.artwork.cell_mm * worst * 10) / 10) + " instead of " +
                       both_units(held.artwork.cell_mm) + " would do.");
    const bool in_fonts = !held.options.font.empty() && held.options.font != constructed_alphabet;
    if ((stroke > 0 || gap > 0) && in_fonts)
        ways.push_back("Take the constructed alphabet, which keeps strokes and gaps: --font " +
                       std::string(constructed_alphabet) + "; or a bolder font.");
    bool in_bands = false, in_border = false;
    for (const ThinFinding& finding : measures.thin) {
        in_bands = in_bands || finding.layer.starts_with("bands");
        in_border = in_border || finding.layer == "border";
    }
    if (in_bands) ways.push_back("Choose another --band or --inlay, or words that keep apart (--spacing 1).");
    if (in_border) ways.push_back("Choose another --border or --ornament, or a wider --margin.");
    if (held.tried_to_hold)
        ways.push_back("No change of strokes or alphabet was found that holds everything.");
    else if (stroke > 0 || gap > 0)
        ways.push_back("Or let the program find the least change that holds: --fix.");
    return ways;
}

std::string finding_text(const ThinFinding& finding) {
    std::string text;
    if (finding.kind == ThinFinding::Kind::between_pieces)
        text = "Between " + finding.piece + " and " + finding.other + " (" + finding.layer + ") there are " +
               both_units(cut_down(finding.width_mm));
    else
        text = std::string(finding.kind == ThinFinding::Kind::stroke ? "The stroke of " : "A gap in ") +
               finding.piece + " (" + finding.layer + ") is " + both_units(cut_down(finding.width_mm)) +
               " wide";
    if (finding.alike > 1) text += "; " + std::to_string(finding.alike) + " pieces are alike";
    return text + ".";
}

Outcome<HeldArtwork> draw_and_measure(const Puzzle& puzzle, const ArtworkOptions& options) {
    auto first = tried(puzzle, options);
    if (!first) return first.refusal();
    return held(*std::move(first), {});
}

Outcome<HeldArtwork> draw_to_hold(const Puzzle& puzzle, const ArtworkOptions& options) {
    auto first = tried(puzzle, options);
    if (!first) return first.refusal();
    if (first->measures.holds()) return held(*std::move(first), {});

    auto bolder = made_bolder(puzzle, *first);
    if (bolder) {
        const double wider = bolder->options.embolden_mm - options.embolden_mm;
        return held(*std::move(bolder), {"Strokes of letters, heading and text were made " +
                                         both_units(wider) + " wider, the least that holds."});
    }
    ArtworkOptions constructed = options;
    constructed.font = constructed_alphabet;
    constructed.heading_font.clear();
    auto other = tried(puzzle, constructed);
    if (other && other->measures.holds())
        return held(*std::move(other),
                    {"Letters, heading and text were set in the constructed alphabet: making strokes "
                     "of the font wider would have closed gaps."});
    HeldArtwork result = held(*std::move(first), {});
    result.tried_to_hold = true;
    return result;
}

}  // namespace lode
