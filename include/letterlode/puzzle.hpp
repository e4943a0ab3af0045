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
#include <letterlode/score.hpp>
#include <letterlode/text.hpp>

namespace lode {

/// What becomes of a word that can be read inside another of the list: it counts where it stands there, or
/// gets a place of its own besides.
enum class Nested { inside, separate };
[[nodiscard]] LODE_API std::string_view name(Nested rule);
[[nodiscard]] LODE_API std::optional<Nested> nested_named(std::string_view name);

/// A word as it is shown in the list, and where it is to stand.
struct Pin {
    std::string word;  ///< as the list has it
    Placement placed;  ///< where it must stand
    friend bool operator==(const Pin&, const Pin&) = default;
};

/// How many crossings there may be: cells that two or more words share.
struct Crossings {
    std::size_t least = 0;            ///< at the least
    std::optional<std::size_t> most;  ///< none: as many as come
};

/// By direction, in what proportion the words read in it. Each gets its share rounded down or up to whole
/// words.
using DirectionWeights = std::array<std::uint32_t, 8>;
inline constexpr std::uint32_t max_weight = 1'000'000;  ///< of a direction

/// An earlier puzzle that the new one keeps as much of as it can.
struct Earlier {
    std::vector<Pin> words;  ///< where they stood
    /// Of each cell in reading order the filler's letter, which stays where it can; an empty text where there
    /// was none. Empty where filler is drawn anew.
    std::vector<std::string> filler;
};

/// How often each letter comes in the filler.
enum class FillerWay {
    words,        ///< as often as in the words, and every letter of the language now and then
    language,     ///< as often as in the language; where nobody counted it, as with `words`
    only_words,   ///< as often as in the words, and no others
    easy_weeding  ///< as with `language`, but letters that enclose a counter are rare
};
/// Every way, in the order of its number.
inline constexpr std::array all_filler_ways{FillerWay::words, FillerWay::language, FillerWay::only_words,
                                            FillerWay::easy_weeding};
/// "words", "language", "only-words", "easy-weeding"
[[nodiscard]] LODE_API std::string_view name(FillerWay way);
[[nodiscard]] LODE_API std::optional<FillerWay> filler_way_named(std::string_view name);

/// Whether there is a table of how often the letters of the locale's language come. English has one.
[[nodiscard]] LODE_API bool has_letter_table(std::string_view locale);

/// A letter, and how often it comes.
struct LetterCount {
    std::string letter;       ///< as it stands in a cell
    std::uint64_t count = 0;  ///< in the text that was counted
    friend bool operator==(const LetterCount&, const LetterCount&) = default;
};
inline constexpr std::uint64_t max_letter_count = 1'000'000'000;  ///< of one letter
/// How often each letter comes in a text; what can stand in no cell is passed over.
[[nodiscard]] LODE_API std::vector<LetterCount> count_letters(std::string_view text,
                                                              const Segmenter& segmenter);

inline constexpr std::uint32_t default_longest_run = 3;  ///< of equal letters

/// Everything that a puzzle is made from. The same recipe gives the same puzzle everywhere, by any compiler.
struct Recipe {
    WordLines words;                 ///< to be hidden; at least one
    TextRules text;                  ///< by which words become letters
    std::optional<Size> size;        ///< none: chosen, at the aspect
    bool tight = false;              ///< chosen as small as can be found, not as small as is comfortable
    double aspect = 1.0;             ///< columns over rows, where the size is not given
    Shape shape = Shape::rectangle;  ///< drawn as large as the grid
    std::optional<Mask> mask;        ///< instead of shape and size
    std::optional<Directions> directions;    ///< none: the four forward ones of the words' script
    std::uint64_t seed = 1;                  ///< another seed gives another puzzle
    bool default_avoid_list = true;          ///< the avoid list of the locale's language, where there is one
    std::vector<std::string> avoid;          ///< avoided words besides
    std::vector<std::string> allow;          ///< avoided words that may stand all the same
    Nested nested = Nested::inside;          ///< words that can be read inside others
    Crossings crossings;                     ///< cells shared by words
    std::uint32_t spacing = 0;               ///< cells between two words, in every direction, at the least
    std::optional<std::size_t> leftover;     ///< exactly so many open cells outside all words
    std::string message;                     ///< what those cells spell in reading order; empty: filler
    bool filler_after_message = false;       ///< and what is left after the message is filler
    FillerWay filler = FillerWay::words;     ///< which letters stand about the words
    std::vector<LetterCount> letter_counts;  ///< of the language, from a text; empty: from its table
    /// Equal letters in a row at the most, where one of them is filler; 0: any number.
    std::uint32_t longest_run = default_longest_run;
    bool look_alikes_apart = false;  ///< no filler letter is the neighbour of one that it is easily taken for
    std::vector<Pin> pins;           ///< words that must stand at a place
    bool equal_shares = false;       ///< of the directions; or
    std::optional<DirectionWeights> weights;   ///< shares by these
    std::optional<std::size_t> most_backward;  ///< words that read backward, at the most
    std::optional<Earlier> earlier;            ///< a puzzle to stay close to
    std::size_t choices = 1;                   ///< puzzles wanted, from seeds that follow each other
    std::uint64_t effort = 50'000'000;         ///< steps at the most: placements and letters tried
};

inline constexpr std::size_t max_made_cells = 16'000'000;  ///< of a grid that is made; more can be judged
inline constexpr std::uint32_t max_spacing = 20;           ///< cells

/// Refused as unusable: a grid that is not between 0.01 and 100 times as wide as it is high.
[[nodiscard]] LODE_API Outcome<double> checked_aspect(double columns_over_rows);

/// A word of a puzzle, and where it stands.
struct PlacedWord {
    std::string shown;                 ///< as the list has it, without bars
    std::vector<std::string> letters;  ///< one a cell
    Placement placed;                  ///< of its first letter
    std::string inside = {};  ///< the longest word of the list that it can be read inside, as shown; or empty
    friend bool operator==(const PlacedWord&, const PlacedWord&) = default;
};

/// A grid with its words, and with what the independent search found in it.
struct Puzzle {
    Recipe recipe;                  ///< with size and directions as they were chosen
    LetteredGrid grid;              ///< without an empty cell
    std::vector<PlacedWord> words;  ///< in the list's order
    Audit audit;                    ///< of this grid
};

/// What a caller may do while a puzzle is made. Both may be left out.
struct MakeControl {
    std::function<void(std::uint64_t effort_spent, std::uint64_t effort)>
        progress;                               ///< called now and then, on the calling thread
    const std::atomic<bool>* cancel = nullptr;  ///< once true, make stops soon and refuses as unfinished
    unsigned threads = 1;  ///< how many processors to use at the most; the result is the same
};

/// Thrown where the audit contradicts the engine: a fault of ours, never of the recipe.
struct LODE_API AuditContradiction : std::logic_error {
    using std::logic_error::logic_error;
};

/// What a recipe's rules of text and its avoided words come to, whatever its words are. It never changes:
/// copies are cheap and share it, and several threads may use it at once.
class LODE_API Groundwork {
  public:
    /// In which nothing is worked out.
    Groundwork() = default;

  private:
    friend class CheckedRecipe;
    struct State;
    std::shared_ptr<const State> state_;
};

/// A recipe checked once, from which puzzles are made seed by seed. Const calls may run on several threads at
/// once, each with a control of its own.
class LODE_API CheckedRecipe {
  public:
    /// Refused as unusable.
    [[nodiscard]] static Outcome<CheckedRecipe> open(Recipe recipe);
    /// The same puzzles, by what was worked out for another recipe as far as this one has it in common. Of
    /// many recipes that differ in their words each is so checked in a fraction of the time.
    [[nodiscard]] static Outcome<CheckedRecipe> open(Recipe recipe, const Groundwork& groundwork);
    CheckedRecipe(CheckedRecipe&&) noexcept;
    CheckedRecipe& operator=(CheckedRecipe&&) noexcept;
    ~CheckedRecipe();

    /// The puzzle of the recipe with this seed, as `make` below gives it.
    [[nodiscard]] Outcome<Puzzle> make(std::uint64_t seed, const MakeControl& control = {}) const;
    /// The puzzle of the recipe with the recipe's own seed.
    [[nodiscard]] Outcome<Puzzle> make(const MakeControl& control = {}) const;

    /// For recipes that differ in their words.
    [[nodiscard]] Groundwork groundwork() const;

  private:
    struct State;
    explicit CheckedRecipe(std::unique_ptr<State> state);
    std::unique_ptr<State> state_;
};

inline constexpr std::size_t max_choices = 1'000;  ///< puzzles of one call
inline constexpr std::size_t max_threads =
    1'024;  ///< that the program takes; the library sets no bound of its own

/// Up to so many different puzzles, from seeds that follow each other, in their order; each can be made again
/// by its seed alone. Fewer where many seeds give none, or the same; refused where none gives one. The result
/// does not depend on the number of threads; a cancelled call gives what was finished.
[[nodiscard]] LODE_API Outcome<std::vector<Puzzle>> make_choices(const CheckedRecipe& checked,
                                                                 std::uint64_t first_seed, std::size_t count,
                                                                 const MakeControl& control = {});

/// Places the words, fills the grid, audits it; a puzzle is given only if it is certified.
/// Refused: impossible, unfinished or unusable, with advice.
[[nodiscard]] LODE_API Outcome<Puzzle> make(const Recipe& recipe, const MakeControl& control = {});

/// What a new puzzle may keep of this one.
[[nodiscard]] LODE_API Earlier earlier_of(const Puzzle& puzzle, bool keep_filler);

/// The built-in avoid list of a language ("en"), one word an entry; empty where there is none.
[[nodiscard]] LODE_API std::vector<std::string> avoid_list(std::string_view locale);
/// Whether there is one.
[[nodiscard]] LODE_API bool has_avoid_list(std::string_view locale);

/// What a finished grid is asked besides, and how.
struct CheckRules {
    std::vector<std::string> dictionary = {};  ///< words that may stand by chance and are told
    std::size_t shortest_by_chance = 4;        ///< letters that such a word has at the least
    SearchControl control = {};                ///< threads, cancellation and progress
};

/// Judges the puzzle's grid again, by its own words, placements and recipe.
[[nodiscard]] LODE_API Outcome<Audit> audit(const Puzzle& puzzle, const CheckRules& rules = {});

/// Judges any grid by a recipe's words and rules, with the placements that are known, if any. Refused as
/// unusable: bad words, and under Nested::inside a word that stands more than once inside others, so that no
/// grid can hold each once. Refused as unfinished: a search that was cancelled.
[[nodiscard]] LODE_API Outcome<Audit> audit(const LetteredGrid& grid, const Recipe& recipe,
                                            std::span<const PlacedWord> placed = {},
                                            const CheckRules& rules = {});

/// A grid made elsewhere as a puzzle, to be printed or drawn: each word where it is known to stand or, where
/// that is not known, where the audit finds it first in reading order; words that are missing are left out.
/// The puzzle's audit says whether it is certified. Refused as the audit is.
[[nodiscard]] LODE_API Outcome<Puzzle> puzzle_of(LetteredGrid grid, Recipe recipe,
                                                 std::span<const PlacedWord> placed = {},
                                                 const SearchControl& control = {});

/// How a finished grid is to be rated.
struct RatingRules {
    std::optional<LetterLooks> looks = {};  ///< none: built_in_looks
    LettersSeen seen = {};  ///< how the letters hang on a wall; empty: what needs it is left out
};

/// What a reader meets in the puzzle. Refused as unusable: a grid that is too large.
[[nodiscard]] LODE_API Outcome<Rating> rate(const Puzzle& puzzle, const RatingRules& rules = {});
/// What a reader meets in any grid, by a recipe's words; where placements are not known, each word is taken
/// to stand where it is met first in reading order. The reader's direction is that of the words' script.
/// Refused besides as `audit` is.
[[nodiscard]] LODE_API Outcome<Rating> rate(const LetteredGrid& grid, const Recipe& recipe,
                                            std::span<const PlacedWord> placed = {},
                                            const RatingRules& rules = {});

/// A recipe's words and rules checked once, by which many grids are judged. The search is built at the first
/// grid and kept; it is built again where a grid brings letters that none before it had, which ends soon.
/// Const calls may run on several threads at once.
class LODE_API GridJudge {
  public:
    /// Refused as unusable, as `audit` is. Of the rules the control is not used.
    [[nodiscard]] static Outcome<GridJudge> open(Recipe recipe, const CheckRules& rules = {});
    GridJudge(GridJudge&&) noexcept;
    GridJudge& operator=(GridJudge&&) noexcept;
    ~GridJudge();

    /// By whose rules the grids are to be read: read_grid and read_cells take it.
    [[nodiscard]] const Segmenter& segmenter() const;

    /// As `audit` above. Refused as unfinished: a search that was cancelled.
    [[nodiscard]] Outcome<Audit> audit(const LetteredGrid& grid, std::span<const PlacedWord> placed = {},
                                       const SearchControl& control = {}) const;
    /// As `puzzle_of` above. Refused as unfinished: a search that was cancelled.
    [[nodiscard]] Outcome<Puzzle> puzzle_of(LetteredGrid grid, std::span<const PlacedWord> placed = {},
                                            const SearchControl& control = {}) const;
    /// As `rate` above. Refused as unusable: a grid that is too large.
    [[nodiscard]] Outcome<Rating> rate(const LetteredGrid& grid, std::span<const PlacedWord> placed = {},
                                       const RatingRules& rules = {}) const;

  private:
    struct State;
    explicit GridJudge(std::unique_ptr<State> state);
    std::unique_ptr<State> state_;
};

/// How difficult a puzzle is to be, by the fixations of the simulated reader of score.hpp.
struct Aim {
    /// What is aimed at: as easy or as hard as can be found, or a number.
    enum class Kind { easier, harder, fixations };
    Kind kind = Kind::easier;  ///< what is aimed at
    double fixations = 0;      ///< for all words
    bool vary_filler = true;   ///< false: the recipe's way to fill is the maker's
};
inline constexpr double max_aim = 1e12;  ///< fixations
/// Reads "easier", "harder" or a number of fixations. Refused as unusable.
[[nodiscard]] LODE_API Outcome<Aim> read_aim(std::string_view text);

/// The puzzle that came nearest to an aim.
struct AimedPuzzle {
    Puzzle puzzle;          ///< its recipe makes it again, without an aim
    Rating rating;          ///< of this puzzle
    std::size_t tried = 0;  ///< puzzles
};
/// The puzzle nearest to the aim of some tens that are tried: from seeds that follow the recipe's, with the
/// recipe's directions or, where it names none, with two, four and all eight, and with each way to fill that
/// changes the difficulty. Each try has its share of the effort; where none succeeds the recipe is made as it
/// is, with all of it. Refused as make is. A cancelled call gives the best that was finished.
[[nodiscard]] LODE_API Outcome<AimedPuzzle> make_aimed(const Recipe& recipe, const Aim& aim,
                                                       const MakeControl& control = {});

/// A puzzle's place among others.
struct RankedPuzzle {
    std::size_t puzzle = 0;  ///< its place in what was ranked
    double score = 0;        ///< less is better
    std::string reason;      ///< what the score is made from
};
/// Best first: nearest to the aim; without one the calmest to read, which is the least sum of look-alike
/// neighbours and unevenness, both in percent (judgement). Equal ones keep their order. Refused as rate is.
[[nodiscard]] LODE_API Outcome<std::vector<RankedPuzzle>> rank_puzzles(std::span<const Puzzle> puzzles,
                                                                       const std::optional<Aim>& aim = {});

/// Puzzles of one recipe for neighbours in a class: by different seeds, alike in difficulty.
struct Versions {
    std::vector<Puzzle> puzzles;    ///< in the order of their seeds
    std::vector<double> fixations;  ///< of each, for all words, by the simulated reader of score.hpp
    std::size_t tried = 0;          ///< puzzles
    std::size_t shared_places = 0;  ///< pairs of versions times words that stand at the same place in both
};
inline constexpr std::size_t max_versions = 26;  ///< they are marked by the letters A to Z
/// The hardest version asks for at most so many times the fixations of the easiest.
inline constexpr double version_spread = 1.1;
/// The first of the puzzles from seeds that follow each other that lie so near, with no word at the same
/// place in two of them; where some tens a version do not suffice for that, with as few such words as a plain
/// choice finds. Refused as unfinished where too few lie near each other, and as make is. The result does not
/// depend on the number of threads. Throws std::invalid_argument for no version or more than max_versions.
[[nodiscard]] LODE_API Outcome<Versions> make_versions(const CheckedRecipe& checked, std::uint64_t first_seed,
                                                       std::size_t count, const MakeControl& control = {});

/// A puzzle with its recipe and audit, by data/schema/puzzle.schema.json. As in all of the JSON, numbers of
/// rows and columns count from 1, and fields are added, never renamed.
[[nodiscard]] LODE_API std::string to_json(const Puzzle& puzzle);
/// Several puzzles, by data/schema/choices.schema.json.
[[nodiscard]] LODE_API std::string to_json(std::span<const Puzzle> choices);
/// What was found, by data/schema/audit.schema.json.
[[nodiscard]] LODE_API std::string to_json(const Audit& audit);
/// What a reader meets, by data/schema/rating.schema.json.
[[nodiscard]] LODE_API std::string to_json(const Rating& rating);
/// Why there is no puzzle, by data/schema/refusal.schema.json.
[[nodiscard]] LODE_API std::string to_json(const Refusal& refusal);
/// What a puzzle is made from, by data/schema/recipe.schema.json.
[[nodiscard]] LODE_API std::string to_json(const Recipe& recipe);
/// Reads what to_json wrote of a puzzle. Its audit is not believed: the grid is judged again. Refused as
/// unusable, naming what is wrong and where; `source` names the text in messages.
[[nodiscard]] LODE_API Outcome<Puzzle> puzzle_from_json(std::string_view json, std::string_view source);
/// Reads a recipe; a field that is not there has its default. Refused as puzzle_from_json is.
[[nodiscard]] LODE_API Outcome<Recipe> recipe_from_json(std::string_view json, std::string_view source);

/// For people: the grid and the word list.
[[nodiscard]] LODE_API std::string puzzle_text(const Puzzle& puzzle);
/// For people: where each word stands.
[[nodiscard]] LODE_API std::string key_text(const Puzzle& puzzle);
/// For people: what the audit found, a line a finding, and the verdict.
[[nodiscard]] LODE_API std::string audit_text(const Audit& audit);
/// For people: the difficulty, and what was measured of the letters.
[[nodiscard]] LODE_API std::string rating_text(const Rating& rating);
/// The last line of an audit's text alone.
[[nodiscard]] LODE_API std::string verdict_text(const Audit& audit);

/// How letters of findings are marked: by brackets, or by the colours of a terminal (ECMA-48).
enum class Marking { brackets, colours };

/// The grid with its rows and columns numbered at the edges, and the letters of stray copies and avoided
/// words marked. Of a grid that is too large to be looked at whole, the parts around the first findings.
/// Empty where such a grid has no finding.
[[nodiscard]] LODE_API std::string marked_grid_text(const LetteredGrid& grid, const Audit& audit,
                                                    Marking marking);

}  // namespace lode
