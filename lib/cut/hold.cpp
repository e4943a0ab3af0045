// The way out of artwork that is too thin: what would help, and the least change that does.

#include <algorithm>
#include <cmath>

#include <letterlode/cut.hpp>

#include "art/number.hpp"
#include "cut/measures.hpp"

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

Refusal interrupted() {
    return {Refusal::Reason::unfinished, "Drawing was interrupted before its end.", {}, {}, {}, 0};
}

// Drawings one after the other, each measured.
class Trials {
  public:
    Trials(const Puzzle& puzzle, const CutControl& control, std::uint64_t most_drawings)
        : puzzle_(puzzle), control_(control), most_drawings_(most_drawings) {}

    Outcome<Tried> tried(const ArtworkOptions& options) {
        if (control_.is_cancelled()) return interrupted();
        auto artwork = draw(puzzle_, options);
        if (!artwork) return artwork.refusal();
        auto measures = measured(*artwork, options.least_stroke_mm, options.least_gap_mm, within_drawing());
        if (!measures) return interrupted();
        ++drawings_;
        return Tried{*std::move(artwork), *std::move(measures), options};
    }

    // Strokes as much wider as the thinnest lacks, or more where that was not enough; and then as little
    // wider as still holds, to a hundredth of a millimetre. Nothing where none of that holds.
    std::optional<Tried> made_bolder(const Tried& thin) {
        const auto with = [&](long hundredths) {
            ArtworkOptions options = thin.options;
            options.embolden_mm = static_cast<double>(hundredths) / 100;
            auto result = tried(options);
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
        while (holds && enough - too_little > 1 && !control_.is_cancelled()) {
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

  private:
    static constexpr int most_rounds = 3;
    // The first, these rounds, halves of most_embolden_mm down to a hundredth, the constructed alphabet.
    static_assert(1 + most_rounds + 10 + 1 == most_drawings_to_hold && most_embolden_mm * 100 < 1 << 10);

    // Pieces of this drawing as thousandths of all drawings.
    [[nodiscard]] CutControl within_drawing() const {
        CutControl control{{}, control_.cancel};
        if (control_.progress)
            control.progress = [this](std::uint64_t done, std::uint64_t pieces) {
                control_.progress(1'000 * drawings_ + 1'000 * done / std::max<std::uint64_t>(pieces, 1),
                                  1'000 * most_drawings_);
            };
        return control;
    }

    const Puzzle& puzzle_;
    const CutControl& control_;
    std::uint64_t most_drawings_;
    std::uint64_t drawings_ = 0;
};

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

Outcome<HeldArtwork> draw_and_measure(const Puzzle& puzzle, const ArtworkOptions& options,
                                      const CutControl& control) {
    auto first = Trials(puzzle, control, 1).tried(options);
    if (!first) return first.refusal();
    return held(*std::move(first), {});
}

Outcome<HeldArtwork> draw_to_hold(const Puzzle& puzzle, const ArtworkOptions& options,
                                  const CutControl& control) {
    Trials trials(puzzle, control, most_drawings_to_hold);
    auto first = trials.tried(options);
    if (!first) return first.refusal();
    if (first->measures.holds()) return held(*std::move(first), {});

    auto bolder = trials.made_bolder(*first);
    if (control.is_cancelled()) return interrupted();
    if (bolder) {
        const double wider = bolder->options.embolden_mm - options.embolden_mm;
        return held(*std::move(bolder), {"Strokes of letters, heading and text were made " +
                                         both_units(wider) + " wider, the least that holds."});
    }
    ArtworkOptions constructed = options;
    constructed.font = constructed_alphabet;
    constructed.heading_font.clear();
    auto other = trials.tried(constructed);
    if (control.is_cancelled()) return interrupted();
    if (other && other->measures.holds())
        return held(*std::move(other),
                    {"Letters, heading and text were set in the constructed alphabet: making strokes "
                     "of the font wider would have closed gaps."});
    HeldArtwork result = held(*std::move(first), {});
    result.tried_to_hold = true;
    return result;
}

}  // namespace lode
