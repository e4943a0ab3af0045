#pragma once
// Recipes and puzzles: the way from words to a certified grid, and the project's one file format.

#include <array>
#include <atomic>
#include <cstdint>
#include <functional>
#include <memory>
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

// What becomes of a word that can be read inside another of the list: it counts where it stands there, or
// gets a place of its own besides.
enum class Nested { inside, separate };
[[nodiscard]] LODE_API std::string_view name(Nested rule);
[[nodiscard]] LODE_API std::optional<Nested> nested_named(std::string_view name);

// A word as it is shown in the list, and where it is to stand.
struct Pin {
    std::string word;
    Placement placed;
    friend bool operator==(const Pin&, const Pin&) = default;
};

// How many crossings there may be: cells that two or more words share.
struct Crossings {
    std::size_t least = 0;
    std::optional<std::size_t> most;  // none: as many as come
};

// By direction, in what proportion the words read in it. Each gets its share rounded down or up to whole
// words.
using DirectionWeights = std::array<std::uint32_t, 8>;
inline constexpr std::uint32_t max_weight = 1'000'000;

// An earlier puzzle that the new one keeps as much of as it can.
struct Earlier {
    std::vector<Pin> words;  // where they stood
    // Of each cell in reading order the filler's letter, which stays where it can; an empty text where there
    // was none. Empty where filler is drawn anew.
    std::vector<std::string> filler;
};

// Everything that a puzzle is made from. The same recipe gives the same puzzle on every machine and compiler.
struct Recipe {
    WordLines words;
    TextRules text;
    std::optional<Size> size;  // none: chosen, at the aspect
    bool tight = false;        // chosen as small as can be found, not as small as is comfortable
    double aspect = 1.0;       // columns over rows, where the size is not given
    Shape shape = Shape::rectangle;
    std::optional<Mask> mask;              // instead of shape and size
    std::optional<Directions> directions;  // none: the four forward ones of the words' script
    std::uint64_t seed = 1;
    bool default_avoid_list = true;  // the avoid list of the locale's language, where there is one
    std::vector<std::string> avoid;  // avoided words besides
    std::vector<std::string> allow;  // avoided words that may stand all the same
    Nested nested = Nested::inside;
    Crossings crossings;
    std::uint32_t spacing = 0;            // cells between two words, in every direction, at the least
    std::optional<std::size_t> leftover;  // exactly so many open cells outside all words
    std::string message;                  // what those cells spell in reading order; empty: filler
    std::vector<Pin> pins;
    bool equal_shares = false;                 // of the directions; or
    std::optional<DirectionWeights> weights;   // shares by these
    std::optional<std::size_t> most_backward;  // words that read backward, at the most
    std::optional<Earlier> earlier;
    std::size_t choices = 1;            // puzzles wanted, from seeds that follow each other
    std::uint64_t effort = 50'000'000;  // steps at the most: placements and letters tried
};

inline constexpr std::size_t max_made_cells = 16'000'000;
inline constexpr std::uint32_t max_spacing = 20;

// Refused as unusable: a grid that is not between 0.01 and 100 times as wide as it is high.
[[nodiscard]] LODE_API Outcome<double> checked_aspect(double columns_over_rows);

struct PlacedWord {
    std::string shown;
    std::vector<std::string> letters;
    Placement placed;
    std::string inside = {};  // the longest word of the list that it can be read inside, as shown; or empty
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
    unsigned threads = 1;  // how many processors to use at the most; the result is the same
};

// Thrown where the audit contradicts the engine: a fault of ours, never of the recipe.
struct LODE_API AuditContradiction : std::logic_error {
    using std::logic_error::logic_error;
};

// A recipe checked once, from which puzzles are made seed by seed. Const calls may run on several threads at
// once, each with a control of its own.
class LODE_API CheckedRecipe {
  public:
    // Refused as unusable.
    [[nodiscard]] static Outcome<CheckedRecipe> open(Recipe recipe);
    CheckedRecipe(CheckedRecipe&&) noexcept;
    CheckedRecipe& operator=(CheckedRecipe&&) noexcept;
    ~CheckedRecipe();

    // The puzzle of the recipe with this seed, as `make` below gives it.
    [[nodiscard]] Outcome<Puzzle> make(std::uint64_t seed, const MakeControl& control = {}) const;
    // With the recipe's own seed.
    [[nodiscard]] Outcome<Puzzle> make(const MakeControl& control = {}) const;

  private:
    struct State;
    explicit CheckedRecipe(std::unique_ptr<State> state);
    std::unique_ptr<State> state_;
};

// Up to so many different puzzles, from seeds that follow each other, in their order; each can be made again
// by its seed alone. Fewer where many seeds give none, or the same; refused where none gives one. The result
// does not depend on the number of threads; a cancelled call gives what was finished.
[[nodiscard]] LODE_API Outcome<std::vector<Puzzle>> make_choices(const CheckedRecipe& checked,
                                                                 std::uint64_t first_seed, std::size_t count,
                                                                 const MakeControl& control = {});
inline constexpr std::size_t max_choices = 1'000;
inline constexpr std::size_t max_threads = 1'024;

// Places the words, fills the grid, audits it; a puzzle is given only if it is certified.
// Refused: impossible, unfinished or unusable, with advice.
[[nodiscard]] LODE_API Outcome<Puzzle> make(const Recipe& recipe, const MakeControl& control = {});

// What a new puzzle may keep of this one.
[[nodiscard]] LODE_API Earlier earlier_of(const Puzzle& puzzle, bool keep_filler);

// The built-in avoid list of a language ("en"), one word an entry; empty where there is none.
[[nodiscard]] LODE_API std::vector<std::string> avoid_list(std::string_view locale);

// What a finished grid is asked besides, and how.
struct CheckRules {
    std::vector<std::string> dictionary = {};  // words that may stand by chance and are told
    std::size_t shortest_by_chance = 4;        // letters that such a word has at the least
    SearchControl control = {};
};

// Judges the puzzle's grid again, by its own words, placements and recipe.
[[nodiscard]] LODE_API Outcome<Audit> audit(const Puzzle& puzzle, const CheckRules& rules = {});

// Judges any grid by a recipe's words and rules, with the placements that are known, if any. Refused as
// unusable: bad words, and under Nested::inside a word that stands more than once inside others, so that no
// grid can hold each once. Refused as unfinished: a search that was cancelled.
[[nodiscard]] LODE_API Outcome<Audit> audit(const LetteredGrid& grid, const Recipe& recipe,
                                            std::span<const PlacedWord> placed = {},
                                            const CheckRules& rules = {});

// JSON, described by the schemas in data/schema. Numbers of rows and columns count from 1.
[[nodiscard]] LODE_API std::string to_json(const Puzzle& puzzle);
[[nodiscard]] LODE_API std::string to_json(std::span<const Puzzle> choices);
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

// The grid with its rows and columns numbered at the edges, and the letters of stray copies and avoided words
// marked: by brackets, or by the colours of a terminal (ECMA-48). Of a grid that is too large to be looked at
// whole, the parts around the first findings. Empty where such a grid has no finding.
enum class Marking { brackets, colours };
[[nodiscard]] LODE_API std::string marked_grid_text(const LetteredGrid& grid, const Audit& audit,
                                                    Marking marking);

}  // namespace lode
