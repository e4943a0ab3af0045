// The answer key, as the viewer sees the piece: never mirrored.

#include <algorithm>

#include "cut/job_sheet_page.hpp"
#include "text/direction.hpp"

namespace lode {

namespace {

constexpr int largest_drawn = 30;  // rows or columns: in a larger grid no letter could be read
constexpr double gutter = 6;
constexpr double list_gutter = 4;  // between columns of the list
constexpr double numbers_mm = 4;   // at the grid's edge
constexpr double number_em = 2.3;  // a column of the list
constexpr double direction_em = 5.5;
constexpr double room_for_section = 20;
constexpr Colour mark{0xe9, 0xd8, 0xa6};
constexpr Colour mark_edge{0x9a, 0x6a, 0x12};

class KeyPicture {
  public:
    KeyPicture(PdfDocument& document, const Puzzle& puzzle, Point corner, double cell)
        : document_(document), puzzle_(puzzle), corner_(corner), cell_(cell) {}

    void draw() const {
        for (const PlacedWord& word : puzzle_.words) document_.fill(outline(word), mark, 0.55);
        for (const PlacedWord& word : puzzle_.words) document_.stroke(outline(word), {0.18, mark_edge, {}});
        draw_letters();
        draw_numbers();
    }

  private:
    [[nodiscard]] Point centre(Cell at) const {
        return {corner_.x + (at.column + 0.5) * cell_, corner_.y + (at.row + 0.5) * cell_};
    }
    [[nodiscard]] Path outline(const PlacedWord& word) const {
        const auto steps = static_cast<int>(word.letters.size()) - 1;
        return capsule(centre(word.placed.first),
                       centre(moved(word.placed.first, word.placed.direction, std::max(steps, 0))),
                       0.4 * cell_);
    }
    void draw_letters() const {
        const Grid& grid = puzzle_.grid.grid;
        const double size_pt = std::min(10.0, 0.55 * cell_ * points_a_mm);
        for (int row = 0; row < grid.size().rows; ++row)
            for (int column = 0; column < grid.size().columns; ++column) {
                const Letter letter = grid[{row, column}];
                if (letter >= puzzle_.grid.alphabet.size()) continue;  // closed, or not filled
                const Point at = centre({row, column});
                document_.text(puzzle_.grid.alphabet.text(letter),
                               {at.x, at.y + 0.36 * size_pt / points_a_mm}, {size_pt, false, ink},
                               Align::centre, cell_);
            }
    }
    void draw_numbers() const {
        const Size size = puzzle_.grid.grid.size();
        const TextStyle style{std::clamp(0.4 * cell_ * points_a_mm, 3.5, 6.5), false, quiet};
        const int every = cell_ < 3 ? 5 : 1;
        const auto shown = [&](int i) { return every == 1 || i == 0 || (i + 1) % every == 0; };
        for (int column = 0; column < size.columns; ++column)
            if (shown(column))
                document_.text(std::to_string(column + 1), {centre({0, column}).x, corner_.y - 1}, style,
                               Align::centre);
        for (int row = 0; row < size.rows; ++row)
            if (shown(row))
                document_.text(std::to_string(row + 1),
                               {corner_.x - 1, centre({row, 0}).y + 0.36 * style.size_pt / points_a_mm},
                               style, Align::right);
    }

    PdfDocument& document_;
    const Puzzle& puzzle_;
    Point corner_;
    double cell_;
};

// A column of the list, and how many words it holds.
struct ListColumn {
    Point corner;
    double width = 0;
    std::size_t words = 0;
};

// The list stands left of the picture and goes on below it.
struct KeyShape {
    double picture_share = 0.5;  // of the width
    std::size_t beside = 1;      // columns of the list
    std::size_t below = 1;
    double page_share = 0.6;  // that the list may take
};
constexpr KeyShape usual_shape{};
constexpr KeyShape large_grid_shape{0.56, 1, 2, 0.9};  // more room for the picture
constexpr KeyShape many_words_shape{0.36, 2, 1, 1};
constexpr int large_grid = 20;  // rows or columns beyond which letters come out small

struct KeyLayout {
    double left = 0;                  // width of what stands left of the picture
    double right = 0;                 // width of the picture's column
    double height = 0;                // of the list's longest column, head included
    std::size_t listed = 0;           // words
    std::vector<ListColumn> columns;  // from the section's upper left corner
};

void set_list_column(SheetPages& pages, const Puzzle& puzzle, const ListColumn& column, std::size_t first) {
    const TextStyle style = pages.body();
    const double pitch = PdfDocument::line_pitch(style);
    const double em = style.size_pt / points_a_mm;
    const double direction_x = column.corner.x + column.width - direction_em * em;
    const double column_x = direction_x - 0.6 * em;
    const double row_x = column_x - number_em * em;
    const double word_width = row_x - number_em * em - column.corner.x;
    double y = column.corner.y + em;
    const LineStyle leader{0.12, hairline, {0.12, 0.9}};
    const TextStyle head{style.size_pt - 1, true, quiet};
    pages.text("Word", {column.corner.x, y}, head, Align::left, word_width);
    pages.text("Row", {row_x, y}, head, Align::right);
    pages.text("Col.", {column_x, y}, head, Align::right);
    pages.text("Direction", {direction_x, y}, head);
    for (std::size_t i = first; i < first + column.words; ++i) {
        y += pitch;
        const PlacedWord& word = puzzle.words[i];
        pages.text(word.shown, {column.corner.x, y}, style, Align::left, word_width);
        const double word_end =
            column.corner.x + pages.document().width_of(clipped(word.shown, 200), style) + 1.5;
        if (word_end < row_x - number_em * em && pages.drawing())
            pages.document().line({word_end, y}, {row_x - number_em * em, y}, leader);
        pages.text(std::to_string(word.placed.first.row + 1), {row_x, y}, style, Align::right);
        pages.text(std::to_string(word.placed.first.column + 1), {column_x, y}, style, Align::right);
        pages.text(name(word.placed.direction), {direction_x, y}, style, Align::left, direction_em * em);
    }
}

// How many words a column of this height holds below its head.
std::size_t words_in(double height, double pitch) {
    return height < 2 * pitch ? 0 : static_cast<std::size_t>(height / pitch) - 1;
}

double picture_height(Size size, double cell) {
    return cell * size.rows + numbers_mm + 2;
}

// Cells as large as the picture's column and the look allow.
double cell_of(const SheetPages& pages, Size size, double column) {
    const int side = std::max({size.rows, size.columns, 8});
    const double most = side > large_grid ? 1.2 * pages.look().key : pages.look().key;
    return std::min(most, column - numbers_mm) / side;
}

KeyLayout layout_of(const SheetPages& pages, const Puzzle& puzzle, bool drawn, const KeyShape& shape) {
    const Size size = puzzle.grid.grid.size();
    const std::size_t words = puzzle.words.size();
    KeyLayout layout;
    layout.right = shape.picture_share * (pages.width() - gutter);
    layout.left = pages.width() - gutter - layout.right;
    const double picture = drawn ? picture_height(size, cell_of(pages, size, layout.right)) + 2 : 0;
    const double pitch = PdfDocument::line_pitch(pages.body());
    const double most = shape.page_share * (pages.whole_room() - room_for_section);
    const auto held = [&](double height) {
        return shape.beside * words_in(height, pitch) + shape.below * words_in(height - picture, pitch);
    };
    std::size_t lines = 2;
    const auto height_of = [&](std::size_t so_many) { return static_cast<double>(so_many) * pitch + 0.01; };
    while (held(height_of(lines)) < words && height_of(lines + 1) <= most) ++lines;
    layout.height = height_of(lines);
    const auto add = [&](Point corner, double width, std::size_t columns, double height) {
        const double one =
            (width - static_cast<double>(columns - 1) * list_gutter) / static_cast<double>(columns);
        for (std::size_t i = 0; i < columns; ++i) {
            const std::size_t here = std::min(words - layout.listed, words_in(height, pitch));
            if (here == 0) return;
            layout.columns.push_back(
                {{corner.x + static_cast<double>(i) * (one + list_gutter), corner.y}, one, here});
            layout.listed += here;
        }
    };
    add({0, 0}, layout.left, shape.beside, layout.height);
    add({layout.left + gutter, picture}, layout.right, shape.below, layout.height - picture);
    return layout;
}

KeyLayout best_layout(const SheetPages& pages, const Puzzle& puzzle, bool drawn) {
    const Size size = puzzle.grid.grid.size();
    const bool large = drawn && std::max(size.rows, size.columns) > large_grid;
    const KeyLayout layout = layout_of(pages, puzzle, drawn, large ? large_grid_shape : usual_shape);
    if (layout.listed == puzzle.words.size()) return layout;
    return layout_of(pages, puzzle, drawn, many_words_shape);
}

}  // namespace

void set_key(SheetPages& pages, const JobSheet& sheet) {
    const Puzzle& puzzle = sheet.puzzle;
    const Size size = puzzle.grid.grid.size();
    const bool drawn = std::max(size.rows, size.columns) <= largest_drawn;
    const KeyLayout layout = best_layout(pages, puzzle, drawn);
    std::string explanation =
        "As the viewer sees it, not mirrored. Rows from the top, columns from the left.";
    if (layout.listed < puzzle.words.size())
        explanation += " Only the first " + std::to_string(layout.listed) + " of " +
                       std::to_string(puzzle.words.size()) + " words find room here.";
    if (!drawn) explanation += " The grid is too large to be drawn at this size.";
    if (!puzzle.recipe.message.empty())
        explanation +=
            " The other cells spell, row by row: " + isolated(clipped(puzzle.recipe.message, 160)) +
            (puzzle.recipe.filler_after_message ? ", then filler." : ".");
    const double cell = cell_of(pages, size, layout.right);
    const double height = std::max(drawn ? picture_height(size, cell) : 0, layout.height);
    pages.section("Answer key", explanation, height);
    std::size_t first = 0;
    for (ListColumn column : layout.columns) {
        column.corner = {pages.left() + column.corner.x, pages.y + column.corner.y};
        set_list_column(pages, puzzle, column, first);
        first += column.words;
    }
    if (drawn && pages.drawing()) {
        const double spare = std::max(0.0, layout.right - numbers_mm - cell * size.columns);
        const double left = pages.left() + layout.left + gutter + numbers_mm + spare / 2;
        KeyPicture(pages.document(), puzzle, {left, pages.y + numbers_mm - 1}, cell).draw();
    }
    pages.y += height + 1;
}

}  // namespace lode
