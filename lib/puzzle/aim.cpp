// Puzzles of a wanted difficulty: seeds, sets of directions and ways to fill are tried, first a few of each
// and then more of those that come near. All by counts, so that the outcome is the same everywhere.

#include <algorithm>
#include <charconv>
#include <cmath>

#include <letterlode/puzzle.hpp>

#include "text/fixed_decimals.hpp"

namespace lode {
namespace {

constexpr std::size_t tries_of_each = 2;  // of every set of directions and way to fill
constexpr std::size_t tries_near = 40;    // of the two that came nearest

Directions of_two(Direction one, Direction other) {
    Directions both;
    both.insert(one);
    both.insert(other);
    return both;
}

// From few to many; only the recipe's own where it says which.
std::vector<std::optional<Directions>> direction_sets(const Recipe& recipe, bool right_to_left) {
    if (recipe.directions) return {recipe.directions};
    return {of_two(right_to_left ? Direction::left : Direction::right, Direction::down),
            Directions::forward(right_to_left), Directions::all()};
}

// Less is nearer.
double distance_to(const Aim& aim, double fixations) {
    switch (aim.kind) {
        case Aim::Kind::easier:
            return fixations;
        case Aim::Kind::harder:
            return -fixations;
        case Aim::Kind::fixations:
            return std::abs(fixations - aim.fixations);
    }
    return 0;
}

// One way to make the puzzle, and the best that came of it.
struct Variant {
    CheckedRecipe checked;
    std::uint64_t next_seed;
    double distance = HUGE_VAL;  // of the best
};

class AimedSearch {
  public:
    AimedSearch(const Recipe& recipe, const Aim& aim, const MakeControl& control)
        : recipe_(recipe), aim_(aim), control_(control) {}

    Outcome<AimedPuzzle> run() {
        std::vector<Variant> variants;
        if (auto refusal = open(variants)) return std::move(*refusal);
        const std::size_t all = variants.size() * tries_of_each + tries_near;
        for (Variant& variant : variants)
            for (std::size_t count = 0; count < tries_of_each; ++count) try_one(variant, all);
        std::stable_sort(variants.begin(), variants.end(),
                         [](const Variant& a, const Variant& b) { return a.distance < b.distance; });
        const std::size_t near = std::min<std::size_t>(variants.size(), 2);
        for (std::size_t count = 0; count < tries_near; ++count) try_one(variants[count % near], all);
        if (best_) return AimedPuzzle{std::move(*best_), std::move(*best_rating_), tried_};
        // What cannot be made in a part of the effort may be made in all of it, or is refused with its
        // reason.
        auto puzzle = make(recipe_, control_);
        if (!puzzle) return puzzle.refusal();
        auto rating = rate(*puzzle);
        if (!rating) return rating.refusal();
        return AimedPuzzle{std::move(*puzzle), std::move(*rating), tried_ + 1};
    }

  private:
    std::optional<Refusal> open(std::vector<Variant>& variants) {
        const auto base = CheckedRecipe::open(recipe_);
        if (!base) return base.refusal();
        const bool right_to_left =
            !recipe_.words.words.empty() && is_right_to_left(recipe_.words.words.front().shown);
        std::vector<FillerWay> ways{recipe_.filler};
        if (aim_.vary_filler) ways = {FillerWay::language, FillerWay::words, FillerWay::only_words};
        const auto sets = direction_sets(recipe_, right_to_left);
        const std::size_t tries = sets.size() * ways.size() * tries_of_each + tries_near;
        std::optional<Refusal> refusal;
        for (const auto& directions : sets)
            for (const FillerWay way : ways) {
                Recipe recipe = recipe_;
                recipe.directions = directions;
                recipe.filler = way;
                recipe.effort = std::max<std::uint64_t>(recipe_.effort / tries, 1);
                auto checked = CheckedRecipe::open(std::move(recipe));
                if (checked)
                    variants.push_back({std::move(*checked), recipe_.seed});
                else if (!refusal)
                    refusal = checked.refusal();
            }
        return variants.empty() ? refusal : std::nullopt;
    }

    [[nodiscard]] bool is_cancelled() const {
        return control_.cancel && control_.cancel->load(std::memory_order_relaxed);
    }

    void try_one(Variant& variant, std::size_t all) {
        if (is_cancelled()) return;
        if (control_.progress) control_.progress(recipe_.effort / all * tried_, recipe_.effort);
        ++tried_;
        MakeControl control;
        control.cancel = control_.cancel;
        auto puzzle = variant.checked.make(variant.next_seed++, control);
        if (!puzzle) return;
        auto rating = rate(*puzzle);
        if (!rating) return;
        const double distance = distance_to(aim_, rating->difficulty.fixations);
        variant.distance = std::min(variant.distance, distance);
        if (best_ && distance >= best_distance_) return;
        puzzle->recipe.effort = recipe_.effort;
        best_ = std::move(*puzzle);
        best_rating_ = std::move(*rating);
        best_distance_ = distance;
    }

    const Recipe& recipe_;
    const Aim& aim_;
    const MakeControl& control_;
    std::optional<Puzzle> best_;
    std::optional<Rating> best_rating_;
    double best_distance_ = HUGE_VAL;
    std::size_t tried_ = 0;
};

// In whole numbers, so that nothing hangs on the last bit of a sum: thousandths.
std::int64_t thousandths(double value) {
    return std::llround(value * 1'000);
}

double value_of(const Rating& rating, std::string_view wanted) {
    for (const RatingPart& part : rating.readability)
        if (part.part == wanted) return part.value;
    return 0;
}

}  // namespace

Outcome<Aim> read_aim(std::string_view text) {
    Aim aim;
    if (text == "easier" || text == "harder") {
        aim.kind = text == "easier" ? Aim::Kind::easier : Aim::Kind::harder;
        return aim;
    }
    const auto read =
        std::from_chars(text.data(), text.data() + text.size(), aim.fixations, std::chars_format::fixed);
    if (read.ec == std::errc{} && read.ptr == text.data() + text.size() && aim.fixations > 0 &&
        aim.fixations <= max_aim) {
        aim.kind = Aim::Kind::fixations;
        return aim;
    }
    return Refusal{Refusal::Reason::unusable,
                   "'" + std::string(text.substr(0, 60)) + "' is no aim.",
                   {},
                   {"Give easier, harder, or a number of fixations such as 400 (letterlode rate tells those "
                    "of a puzzle)."},
                   {},
                   0};
}

Outcome<AimedPuzzle> make_aimed(const Recipe& recipe, const Aim& aim, const MakeControl& control) {
    return AimedSearch(recipe, aim, control).run();
}

Outcome<std::vector<RankedPuzzle>> rank_puzzles(std::span<const Puzzle> puzzles,
                                                const std::optional<Aim>& aim) {
    std::vector<RankedPuzzle> ranked;
    for (std::size_t at = 0; at < puzzles.size(); ++at) {
        auto rating = rate(puzzles[at]);
        if (!rating) return rating.refusal();
        RankedPuzzle one{at, 0, {}};
        const double fixations = rating->difficulty.fixations;
        if (!aim) {
            const double look_alikes = value_of(*rating, "look-alike neighbours");
            const double uneven = value_of(*rating, "evenness");
            one.score = look_alikes + uneven;
            one.reason = fixed_decimals(look_alikes, 1) +
                         " percent of neighbours look alike, and the grey varies by " +
                         fixed_decimals(uneven, 1) + " percent";
        } else {
            one.score = distance_to(*aim, fixations);
            one.reason = fixed_decimals(fixations, 1) + " fixations";
        }
        ranked.push_back(std::move(one));
    }
    std::stable_sort(ranked.begin(), ranked.end(), [](const RankedPuzzle& a, const RankedPuzzle& b) {
        return thousandths(a.score) < thousandths(b.score);
    });
    return ranked;
}

}  // namespace lode
