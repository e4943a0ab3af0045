#pragma once
// Cells, directions, masks and grids. In code rows and columns count from 0 at the top left; in all that a
// person reads they count from 1. Left and right are what a person sees, in every script.

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <letterlode/export.hpp>
#include <letterlode/outcome.hpp>
#include <letterlode/text.hpp>

namespace lode {

/// A place in a grid. Any numbers may stand here; a Grid or a Mask says which cells it has.
struct Cell {
    int row = 0;     ///< from 0 at the top
    int column = 0;  ///< from 0 at the left
    friend bool operator==(const Cell&, const Cell&) = default;
};

/// The second four are the first four turned round, in the same order.
enum class Direction : std::uint8_t { right, down, down_right, up_right, left, up, up_left, down_left };

/// Every direction, in the order of its number.
inline constexpr std::array all_directions{Direction::right,    Direction::down,     Direction::down_right,
                                           Direction::up_right, Direction::left,     Direction::up,
                                           Direction::up_left,  Direction::down_left};

/// The direction turned round.
[[nodiscard]] constexpr Direction opposite(Direction direction) {
    return static_cast<Direction>((static_cast<unsigned>(direction) + 4) % 8);
}
/// The change of row and of column by one step in each direction, by its number.
inline constexpr std::array<Cell, 8> all_steps{
    {{0, 1}, {1, 0}, {1, 1}, {-1, 1}, {0, -1}, {-1, 0}, {-1, -1}, {1, -1}}};
/// The change of row and of column by one step in the direction.
[[nodiscard]] constexpr Cell step(Direction direction) {
    return all_steps[static_cast<unsigned>(direction)];
}
/// The cell so many steps away; with negative steps, behind it.
[[nodiscard]] constexpr Cell moved(Cell cell, Direction direction, int steps) {
    const Cell by = step(direction);
    return {cell.row + by.row * steps, cell.column + by.column * steps};
}
/// "down-right"
[[nodiscard]] LODE_API std::string_view name(Direction direction);
/// The direction of that name, or nothing.
[[nodiscard]] LODE_API std::optional<Direction> direction_named(std::string_view name);

/// A set of directions.
class Directions {
  public:
    constexpr Directions() = default;
    /// Adds a direction; no change where it is there.
    constexpr void insert(Direction direction) { bits_ |= bit(direction); }
    /// Whether the direction is in the set.
    [[nodiscard]] constexpr bool contains(Direction direction) const { return (bits_ & bit(direction)) != 0; }
    /// Whether there is no direction.
    [[nodiscard]] constexpr bool empty() const { return bits_ == 0; }
    friend constexpr bool operator==(Directions, Directions) = default;

    /// All eight.
    [[nodiscard]] static constexpr Directions all() {
        Directions every;
        every.bits_ = 0xFF;
        return every;
    }
    /// right, down, down-right, up-right; for a script that runs from right to left: left, down, down-left,
    /// up-left.
    [[nodiscard]] static LODE_API Directions forward(bool right_to_left = false);

  private:
    static constexpr std::uint8_t bit(Direction d) {
        return static_cast<std::uint8_t>(1u << static_cast<unsigned>(d));
    }
    std::uint8_t bits_ = 0;
};
/// Reads "all" or names with commas between ("right,down"). Refused as unusable, naming the part that is no
/// direction.
[[nodiscard]] LODE_API Outcome<Directions> read_directions(std::string_view text);

/// How large a grid is, in cells.
struct Size {
    int rows = 0;     ///< its height
    int columns = 0;  ///< its width
    friend bool operator==(const Size&, const Size&) = default;
    /// Rows times columns.
    [[nodiscard]] constexpr std::size_t cells() const {
        return static_cast<std::size_t>(rows) * static_cast<std::size_t>(columns);
    }
};
inline constexpr int max_side = 20'000;                ///< rows or columns
inline constexpr std::size_t max_cells = 100'000'000;  ///< of a grid or a mask
/// Refused as unusable: a side under 1 or over max_side, or more than max_cells cells.
[[nodiscard]] LODE_API Outcome<Size> checked_size(long long columns, long long rows);
/// Reads "15x12", columns by rows.
[[nodiscard]] LODE_API Outcome<Size> read_size(std::string_view text);

/// Which cells of a rectangle hold letters.
class LODE_API Mask {
  public:
    Mask() = default;
    /// All cells open, or all closed.
    explicit Mask(Size size, bool open = true);

    /// In cells, the closed ones among them.
    [[nodiscard]] Size size() const { return size_; }
    /// Whether there is such a cell, open or closed.
    [[nodiscard]] bool inside(Cell cell) const {
        return cell.row >= 0 && cell.row < size_.rows && cell.column >= 0 && cell.column < size_.columns;
    }
    /// Whether the cell holds a letter; false outside.
    [[nodiscard]] bool open(Cell cell) const { return inside(cell) && open_[index(cell)] != 0; }
    /// Opens or closes a cell, which must lie inside.
    void set(Cell cell, bool open) { open_.at(index(cell)) = open ? 1 : 0; }
    /// How many cells are open. Linear.
    [[nodiscard]] std::size_t open_count() const;

  private:
    [[nodiscard]] std::size_t index(Cell cell) const {
        return static_cast<std::size_t>(cell.row) * static_cast<std::size_t>(size_.columns) +
               static_cast<std::size_t>(cell.column);
    }
    Size size_;
    std::vector<std::uint8_t> open_;
};

/// The built-in shapes. A cell is open where its centre lies in the shape drawn as large as the grid.
enum class Shape { rectangle, ellipse, heart, diamond, star };
/// Every shape, in the order of its number.
inline constexpr std::array all_shapes{Shape::rectangle, Shape::ellipse, Shape::heart, Shape::diamond,
                                       Shape::star};
[[nodiscard]] LODE_API std::string_view name(Shape shape);
[[nodiscard]] LODE_API std::optional<Shape> shape_named(std::string_view name);
/// The cells of a shape. Linear in the cells of the size.
[[nodiscard]] LODE_API Mask shape_mask(Shape shape, Size size);

/// The length of the longest word that can stand on the mask's open cells. Linear in the cells.
[[nodiscard]] LODE_API int longest_run(const Mask& mask, Directions directions);

/// Reads a mask drawn as text: a line a row, '.', '#', '·' or a blank for a closed cell, a letter or a digit
/// for an open one. Short lines are closed at their end. Refused as unusable: no open cell, other characters.
[[nodiscard]] LODE_API Outcome<Mask> read_mask(std::string_view text, std::string_view source);

/// Letters in row order; closed_cell and empty_cell are the two values that are none.
class LODE_API Grid {
  public:
    Grid() = default;
    /// The same letter in every cell.
    explicit Grid(Size size, Letter letter = empty_cell) : size_(size), letters_(size.cells(), letter) {}
    /// Open cells are empty, the others closed.
    explicit Grid(const Mask& mask);

    /// In cells, the closed ones among them.
    [[nodiscard]] Size size() const { return size_; }
    /// Whether there is such a cell, open or closed.
    [[nodiscard]] bool inside(Cell cell) const {
        return cell.row >= 0 && cell.row < size_.rows && cell.column >= 0 && cell.column < size_.columns;
    }
    /// The cell's place in letters(). Unchecked.
    [[nodiscard]] std::size_t index(Cell cell) const {
        return static_cast<std::size_t>(cell.row) * static_cast<std::size_t>(size_.columns) +
               static_cast<std::size_t>(cell.column);
    }
    /// Unchecked: the cell must lie inside.
    [[nodiscard]] Letter operator[](Cell cell) const { return letters_[index(cell)]; }
    /// Likewise, to be written.
    [[nodiscard]] Letter& operator[](Cell cell) { return letters_[index(cell)]; }
    /// All cells in reading order: row by row, each from the left.
    [[nodiscard]] const std::vector<Letter>& letters() const { return letters_; }

  private:
    Size size_;
    std::vector<Letter> letters_;
};

/// Where a word of known length stands: the cell of its first letter and a direction.
struct Placement {
    Cell first;                              ///< of the word's first letter
    Direction direction = Direction::right;  ///< in which it reads
    friend bool operator==(const Placement&, const Placement&) = default;
};
/// True where both cover the same cells: equal, or one read from the other's end.
[[nodiscard]] LODE_API bool same_cells(const Placement& a, const Placement& b, int length);

/// A grid with the letters that its numbers mean.
struct LetteredGrid {
    Alphabet alphabet;  ///< what the numbers mean
    Grid grid;          ///< numbers of the alphabet
};

/// Reads a grid as text: a line a row, after a byte order mark and blank lines if there are any. Letters
/// stand one against the other, with blanks between, or as fields with tabs, semicolons or commas between; in
/// either case; a letter of several characters where the segmenter's locale has it. A closed cell is '.', '#'
/// or '·', an empty field, or a blank where the columns of all rows line up. Fields that are empty at the
/// start of every row are no cells (a table may begin in its sheet's second column). In a right-to-left
/// script the first letter of a line is its rightmost cell, unless U+202D says that the line stands in
/// columns, as grid_text has it; other marks of direction are passed over. Refused as unusable, naming line,
/// row and column: rows of different length, a symbol that is no letter, blanks that can be taken in two
/// ways, letters of both directions in a row, a blank line with more text after it. Linear in the text.
[[nodiscard]] LODE_API Outcome<LetteredGrid> read_grid(std::string_view text, std::string_view source,
                                                       const Segmenter& segmenter);

/// As read_grid, from cells in row order, each with what is written in it: a letter as above, or nothing, an
/// empty text or a mark for a closed cell. Refused as unusable, naming row and column: what is no letter, a
/// size that checked_size refuses. Throws std::invalid_argument where there are not rows times columns of
/// them.
[[nodiscard]] LODE_API Outcome<LetteredGrid> read_cells(
    std::span<const std::optional<std::string_view>> cells, Size size, const Segmenter& segmenter);

/// What a text holds in which a list of words stands under a grid.
struct GridWithList {
    LetteredGrid grid;  ///< above
    WordLines words;    ///< below, with the lines that they stand on
};
/// As read_grid, with a list of words under the grid, after a blank line: a word a line, or several with a
/// tab, a comma, a semicolon or two blanks between. Refused besides where there is no list.
[[nodiscard]] LODE_API Outcome<GridWithList> read_grid_with_list(std::string_view text,
                                                                 std::string_view source,
                                                                 const Segmenter& segmenter);

/// Rows as text, one blank between letters, or more where a letter before has fewer characters than the
/// widest (L beside LL), '.' for a closed cell, a line end after each row. A row that holds a right-to-left
/// character is written between U+200E U+202D and U+202C, so that its first column is shown leftmost.
[[nodiscard]] LODE_API std::string grid_text(const Grid& grid, const Alphabet& alphabet);

}  // namespace lode
