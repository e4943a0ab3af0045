#pragma once
// What a reader meets: how much search a puzzle asks for, and how easily its letters are read. Every part has
// a value, a unit and a ground; what is this project's own judgement says so.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <letterlode/colour.hpp>
#include <letterlode/export.hpp>
#include <letterlode/grid.hpp>
#include <letterlode/outcome.hpp>
#include <letterlode/text.hpp>

namespace lode {

/// One thing that is measured.
struct RatingPart {
    std::string part;                 ///< "backward words"
    double value = 0;                 ///< in the unit
    std::string unit;                 ///< "percent"
    std::optional<double> threshold;  ///< what the source asks for, where it asks for something
    bool is_most = false;             ///< the threshold is the most, not the least
    std::string source;               ///< published ground, "definition", "common practice" or "judgement"
    std::string note;                 ///< a plain sentence; may be empty

    /// Where a threshold is asked for, whether the value keeps to it.
    [[nodiscard]] bool is_met() const {
        return !threshold || (is_most ? value <= *threshold : value >= *threshold);
    }
};

/// A simulated reader, and the costs of what they do, in thousandths of a fixation: how often the eye comes
/// to rest. They look for one word at a time, from the list:
///   - They begin at the start of a row, each row that has letters being as likely as the others, and scan
///     row after row in reading order, from the last on to the first. Scanning costs `scan` an open cell.
///   - At each cell with the word's first letter they stop, `stop`, and see its eight neighbours with it.
///   - From there they try the directions in an order of their own, forward before backward. Where the
///     neighbour is the word's second letter they go on, letter by letter, at `compare` times the effort of
///     the direction, until a letter differs, the letters end, or the word is complete. Then it is found.
/// The expectation is over the rows that they may begin in; a word that is not in the grid costs a scan of
/// all of it. A word that stands more than once is found where they meet it first.
struct Reader {
    bool right_to_left = false;  ///< reads rows from the right, and the mirrored directions first

    /// Eight letters a fixation: about the length of a saccade in reading (Rayner 1998, Psychological
    /// Bulletin 124(3):372-422, seven to nine letters; from memory).
    std::int64_t scan = 125;
    std::int64_t stop = 1000;    ///< judgement
    std::int64_t compare = 250;  ///< judgement: unrelated letters are compared by halves of such a span
    /// In hundredths. Horizontal text is read 139 percent faster than letters stacked upright (Yu, Park,
    /// Gerold, Legge 2010, Journal of Vision 10(2):21). That diagonals cost as much is judgement, since
    /// nothing published was found.
    std::int64_t stacked = 239;
    std::int64_t backward =
        150;  ///< in hundredths, for letters read against the script's direction: judgement
};

/// A word as it is looked for, and where it stands, if that is known.
struct SoughtWord {
    std::string shown;                     ///< as the list has it
    Letters letters;                       ///< two or more
    std::optional<Placement> placed = {};  ///< none: where it is met first
    bool is_nested = false;                ///< stands inside another word: it counts for no crossing
};

/// Plain names for how much search a word asks for, by the mean fixations a word. The bounds are judgement.
enum class Level : std::uint8_t {
    glance,    ///< under 10: a small grid; young readers find each word in a few seconds
    stroll,    ///< under 25: a page that a class can do in a lesson
    search,    ///< under 60: for readers who like to look for a while
    patience,  ///< from there on: large grids, many directions, many false starts
};
[[nodiscard]] LODE_API std::string_view name(Level level);
/// The level of a mean of so many fixations a word.
[[nodiscard]] LODE_API Level level_of(double fixations_a_word);

/// What one word asks for.
struct WordDifficulty {
    std::string shown;     ///< as the list has it
    double fixations = 0;  ///< until it is found
    bool is_found = true;  ///< false: it is not in the grid, and all of it was searched
};

/// What all words ask for.
struct Difficulty {
    double fixations = 0;               ///< of all words, one after the other
    Level level = Level::glance;        ///< by the mean of a word
    std::vector<WordDifficulty> words;  ///< in the list's order
    /// What explains it: letters in the grid, words, letters a word, directions used, percent of words that
    /// read backward and of those not in a row, cells that two or more words share (nesting is none), false
    /// starts a word by how many letters agree before one does not, and the Kullback-Leibler divergence of
    /// the filler's letters from the words', sum of p log2(p / q), each letter counted once more in q.
    std::vector<RatingPart> parts;
};

inline constexpr std::size_t max_rated_cells = 4'000'000;       ///< of a grid
inline constexpr std::int64_t max_rated_steps = 1'000'000'000;  ///< letters compared

/// Refused as unusable: a grid of more than max_rated_cells cells, or of so few different letters that more
/// than max_rated_steps letters would have to be compared. The grid's letters are numbers of the alphabet.
/// Throws std::invalid_argument for a word of fewer than two letters. Linear in the cells, and for each word
/// in the rows and in the places where its first two letters stand.
[[nodiscard]] LODE_API Outcome<Difficulty> rate_difficulty(const LetteredGrid& grid,
                                                           std::span<const SoughtWord> words,
                                                           const Reader& reader = {});

/// The angle under which something of a height is seen from a distance, in minutes of arc: 2 atan(h / 2 D).
/// ISO 9241-3 (1992), kept in ISO 9241-303: characters are 16 at the least, 20 to 22 preferred.
[[nodiscard]] LODE_API double angle_as_seen(double height_mm, double distance_mm);
inline constexpr double least_angle = 16;      ///< minutes of arc
inline constexpr double preferred_angle = 20;  ///< minutes of arc

/// The least height of visual characters, in mm, by table 703.5.5 of the 2010 ADA Standards for Accessible
/// Design: by the height of their baseline above the floor and the distance from which they are viewed, which
/// beyond the table's limits adds 1/8 inch a foot. Nothing where the baseline is lower than its 40 inches.
[[nodiscard]] LODE_API std::optional<double> least_height_on_signs(double baseline_mm, double distance_mm);

/// How the letters of an alphabet look in a font, by their numbers.
struct LetterLooks {
    std::string font;         ///< family and style
    std::vector<double> ink;  ///< area over the square of the cap height; below 0 where it is not known
    /// By pair, first times letters and second: the area that two letters share over the area that they cover
    /// together, standing on one line with their middles aligned. From 0 to 1; 0 where it is not known.
    std::vector<double> likeness;
};
/// Letters are taken for alike from here on. Judgement: in the built-in font O and Q, E and F, H and N, D and
/// O, G and O, B and P lie above it, and most pairs below.
inline constexpr double alike = 0.65;
inline constexpr std::size_t max_letters_compared = 400;  ///< of an alphabet; pairs grow with its square

/// From a table of the font that is used where none is named, without reading any font: A to Z, a to z, 0 to
/// 9; letters with marks are taken for the letters under them.
[[nodiscard]] LODE_API LetterLooks built_in_looks(const Alphabet& alphabet);

/// Letters as they hang on a wall; lengths in mm. Left out, where 0 or nothing: what depends on it.
struct LettersSeen {
    double cap_height = 0;               ///< of the I
    double viewing = 0;                  ///< from the eye to the letters
    double baseline = 1'500;             ///< of the letters above the floor
    double stroke = 0;                   ///< the limb of the I
    double o_width = 0;                  ///< of the O
    double letter_gap = 0;               ///< the least between neighbours of a row
    double line_pitch = 0;               ///< from baseline to baseline
    std::optional<Colour> letters = {};  ///< of the film
    std::optional<Colour> bands = {};    ///< of the film under them
    std::optional<Colour> blank = {};    ///< of what all lies on
};

/// How easily the grid is read, part by part:
///   - letter height as seen: angle_as_seen(cap height, viewing), minutes of arc; ISO 9241
///   - letter height: mm; against least_height_on_signs (2010 ADA Standards, table 703.5.5)
///   - stroke, gap between letters, line spacing, width of the O: 100 length / cap height, percent; 703.5.7,
///     703.5.8, 703.5.9, 703.5.4
///   - contrast of letters: contrast_ratio with the blank and the bands; WCAG 2.2, 1.4.3
///   - difference of bands and blank: colour_difference, the least of all_visions; 10 is asked for by
///   judgement
///   - longest run of one letter: letters, in any of the eight directions
///   - look-alike neighbours: 100 times the pairs of neighbouring cells, in eight directions, whose letters
///     differ and are `alike`, over all pairs of neighbours
///   - evenness: 100 times the standard deviation of the ink of blocks of three by three open cells, over
///   their
///     mean; judgement
///
/// Looks may be those of another alphabet's length: letters beyond it are not known. Linear in the cells.
[[nodiscard]] LODE_API std::vector<RatingPart> rate_readability(const LetteredGrid& grid,
                                                                const LetterLooks& looks,
                                                                const LettersSeen& seen = {});

/// What a reader meets.
struct Rating {
    std::vector<RatingPart> readability;  ///< how easily letters are read
    Difficulty difficulty;                ///< how much search it takes
};

}  // namespace lode
