#pragma once
// Recipes and puzzles: the way from words to a certified grid, and the project's one file format.

#include <atomic>
#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <letterlode/export.hpp>
#include <letterlode/find.hpp>
#include <letterlode/grid.hpp>
#include <letterlode/outcome.hpp>
#include <letterlode/text.hpp>

namespace lode {

// Everything that a puzzle is made from. The same recipe gives the same puzzle on every machine and compiler.
struct Recipe {
    WordLines words;
    TextRules text;
    std::optional<Size> size;  // none: the smallest grid of the aspect that holds the words comfortably
    double aspect = 1.0;       // columns over rows, where the size is not given
    Shape shape = Shape::rectangle;
    std::optional<Mask> mask;              // instead of shape and size
    std::optional<Directions> directions;  // none: the four forward ones of the words' script
    std::uint64_t seed = 1;
    bool default_avoid_list = true;     // the avoid list of the locale's language, where there is one
    std::vector<std::string> avoid;     // avoided words besides
    std::vector<std::string> allow;     // avoided words that may stand all the same
    std::uint64_t effort = 50'000'000;  // steps at the most: placements and letters tried
};

inline constexpr std::size_t max_made_cells = 16'000'000;

// Refused as unusable: a grid that is not between 0.01 and 100 times as wide as it is high.
[[nodiscard]] LODE_API Outcome<double> checked_aspect(double columns_over_rows);

struct PlacedWord {
    std::string shown;
    std::vector<std::string> letters;
    Placement placed;
    friend bool operator==(const PlacedWord&, const PlacedWord&) = default;
};

struct Puzzle {
    Recipe recipe;  // with size and directions as they were chosen
    LetteredGrid grid;
    std::vector<PlacedWord> words;  // in the list's order
    Audit audit;
};

// What a caller may do while a puzzle is made. Both may be left out.
struct MakeControl {
    std::function<void(std::uint64_t effort_spent, std::uint64_t effort)>
        progress;                               // called now and then, on the calling thread
    const std::atomic<bool>* cancel = nullptr;  // once true, make stops soon and refuses as unfinished
};

// Thrown where the audit contradicts the engine: a fault of ours, never of the recipe.
struct LODE_API AuditContradiction : std::logic_error {
    using std::logic_error::logic_error;
};

// Places the words, fills the grid, audits it; a puzzle is given only if it is certified.
// Refused: impossible, unfinished or unusable, with advice.
[[nodiscard]] LODE_API Outcome<Puzzle> make(const Recipe& recipe, const MakeControl& control = {});

// The built-in avoid list of a language ("en"), one word an entry; empty where there is none.
[[nodiscard]] LODE_API std::vector<std::string> avoid_list(std::string_view locale);

// Judges the puzzle's grid again, by its own words, placements and recipe.
[[nodiscard]] LODE_API Outcome<Audit> audit(const Puzzle& puzzle);

// Judges any grid by a recipe's words and rules, with the placements that are known, if any. Refused as
// unusable: bad words, and a word that stands more than once inside others, so that no grid can hold each
// once.
[[nodiscard]] LODE_API Outcome<Audit> audit(const LetteredGrid& grid, const Recipe& recipe,
                                            std::span<const PlacedWord> placed = {});

// JSON, described by the schemas in data/schema. Numbers of rows and columns count from 1.
[[nodiscard]] LODE_API std::string to_json(const Puzzle& puzzle);
[[nodiscard]] LODE_API std::string to_json(const Audit& audit);
[[nodiscard]] LODE_API std::string to_json(const Refusal& refusal);
[[nodiscard]] LODE_API std::string to_json(const Recipe& recipe);
// Refused as unusable, naming what is wrong and where.
[[nodiscard]] LODE_API Outcome<Puzzle> puzzle_from_json(std::string_view json, std::string_view source);
[[nodiscard]] LODE_API Outcome<Recipe> recipe_from_json(std::string_view json, std::string_view source);

// For people: the grid and the word list; where each word stands; what the audit found.
[[nodiscard]] LODE_API std::string puzzle_text(const Puzzle& puzzle);
[[nodiscard]] LODE_API std::string key_text(const Puzzle& puzzle);
[[nodiscard]] LODE_API std::string audit_text(const Audit& audit);
// The last line of it alone.
[[nodiscard]] LODE_API std::string verdict_text(const Audit& audit);

}  // namespace lode
