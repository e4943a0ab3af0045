#include "print/grid_picture.hpp"

#include <algorithm>

#include "print/key_marks.hpp"

namespace lode {

namespace {

constexpr double usual_share = 0.62;     // of a cell: about as much white as black from letter to letter
constexpr double widest_share = 0.92;    // what a letter may take of its cell's width
constexpr double cap_middle_em = 0.365;  // of a capital, above its baseline
constexpr Colour light_line{0xb4, 0xb4, 0xb4};
constexpr Colour full_line{0x20, 0x20, 0x20};
constexpr Colour paper_white{0xff, 0xff, 0xff};
constexpr Colour ring_grey{0x40, 0x40, 0x40};
constexpr Colour line_grey{0xc2, 0xc2, 0xc2};
constexpr Colour faded{0xa6, 0xa6, 0xa6};  // letters that belong to no word
constexpr Colour number_grey{0x5c, 0x5c, 0x5c};

// So light that letters on it are read with ease: WCAG 2.2, 1.4.6, asks for a contrast of 7.
Colour tint(Colour colour) {
    constexpr double enhanced_contrast = 7;
    const auto lighter = [](std::uint8_t part) {
        return static_cast<std::uint8_t>(part + (255 - part + 7) / 8);
    };
    while (contrast_ratio(colour, ink) < enhanced_contrast)
        colour = {lighter(colour.red), lighter(colour.green), lighter(colour.blue)};
    return colour;
}

class GridPainter {
  public:
    GridPainter(PdfDocument& document, const GridPicture& picture)
        : document_(document), picture_(picture), grid_(picture.puzzle.grid.grid) {}

    void paint() {
        // Lines between cells lie above the marks, whose margins would break them.
        if (picture_.key && *picture_.key != KeyMarks::greyed) draw_marks();
        draw_lines();
        draw_table();
    }

  private:
    [[nodiscard]] bool is_open(Cell cell) const {
        return grid_.inside(cell) && grid_[cell] < picture_.puzzle.grid.alphabet.size();
    }
    [[nodiscard]] Point corner_of(Cell cell) const {
        return {picture_.corner.x + cell.column * picture_.cell_mm,
                picture_.corner.y + cell.row * picture_.cell_mm};
    }
    [[nodiscard]] Point middle_of(Cell cell) const {
        const Point corner = corner_of(cell);
        return {corner.x + picture_.cell_mm / 2, corner.y + picture_.cell_mm / 2};
    }

    // Between two cells of which one is open; runs of them as one line.
    void draw_lines() {
        if (picture_.lines == GridLines::none) return;
        const LineStyle style = picture_.lines == GridLines::light ? LineStyle{0.18, light_line, {}}
                                                                   : LineStyle{0.35, full_line, {}};
        const Size size = grid_.size();
        for (int row = 0; row <= size.rows; ++row)
            draw_runs(size.columns, style, [&](int column) {
                return std::pair(is_open({row - 1, column}) || is_open({row, column}),
                                 corner_of({row, column}));
            });
        for (int column = 0; column <= size.columns; ++column)
            draw_runs(size.rows, style, [&](int row) {
                return std::pair(is_open({row, column - 1}) || is_open({row, column}),
                                 corner_of({row, column}));
            });
    }
    template <class At>
    void draw_runs(int count, const LineStyle& style, At at) {
        for (int from = 0; from < count; ++from) {
            if (!at(from).first) continue;
            int to = from;
            while (to < count && at(to).first) ++to;
            document_.line(at(from).second, at(to).second, style);
            from = to;
        }
    }

    void draw_marks() {
        const std::vector<KeyMark> marks = key_marks(picture_.puzzle, picture_.corner, picture_.cell_mm);
        const bool rings = *picture_.key == KeyMarks::rings;
        const double width = std::clamp(0.06 * picture_.cell_mm, 0.25, 0.6);
        for (std::size_t i = 0; i < marks.size(); ++i) {
            const KeyMark& mark = marks[i];
            if (rings) {
                const Path ring = capsule(mark.first, mark.last, mark.radius);
                document_.stroke(ring, {width + 2 * margin_of(width), paper_white, {}});
                document_.stroke(ring, {width, colour_of(mark.word, ring_grey), {}});
            } else {
                const double radius = 0.5 * mark.radius;
                document_.fill(capsule(mark.first, mark.last, radius + margin_of(width)), paper_white);
                document_.fill(capsule(mark.first, mark.last, radius), tint(colour_of(mark.word, line_grey)));
            }
        }
    }
    static double margin_of(double width) { return std::max(0.8 * width, 0.3); }
    [[nodiscard]] Colour colour_of(std::size_t word, Colour otherwise) const {
        return picture_.colours.empty() ? otherwise : picture_.colours[word % picture_.colours.size()];
    }

    void draw_table() {
        const auto table = document_.tag(Role::table);
        const std::vector<bool> in_words =
            picture_.key == KeyMarks::greyed ? word_cells(picture_.puzzle) : std::vector<bool>();
        if (picture_.numbered) draw_column_numbers();
        for (int row = 0; row < grid_.size().rows; ++row) {
            const auto tagged_row = document_.tag(Role::table_row);
            if (picture_.numbered) draw_number(Role::row_header, row + 1, middle_of({row, -1}));
            for (int column = 0; column < grid_.size().columns; ++column) {
                const Cell cell{row, column};
                const auto tagged_cell = document_.tag(Role::table_cell);
                if (!is_open(cell)) continue;
                const bool is_faded = !in_words.empty() && !in_words[grid_.index(cell)];
                const bool is_bold = !in_words.empty() && !is_faded;
                const TextStyle style{picture_.letter_pt, is_bold, is_faded ? faded : ink};
                const Point middle = middle_of(cell);
                document_.text(picture_.puzzle.grid.alphabet.text(grid_[cell]),
                               {middle.x, middle.y + cap_middle_em * style.size_pt / points_a_mm}, style,
                               Align::centre, picture_.cell_mm);
            }
        }
    }
    void draw_column_numbers() {
        const auto tagged_row = document_.tag(Role::table_row);
        { const auto empty_corner = document_.tag(Role::table_cell); }
        for (int column = 0; column < grid_.size().columns; ++column)
            draw_number(Role::column_header, column + 1, middle_of({-1, column}));
    }
    void draw_number(Role role, int number, Point middle) {
        const auto tagged = document_.tag(role);
        const TextStyle style{std::clamp(0.42 * picture_.cell_mm * points_a_mm, 4.0, 10.0), false,
                              number_grey};
        document_.text(std::to_string(number),
                       {middle.x, middle.y + cap_middle_em * style.size_pt / points_a_mm}, style,
                       Align::centre);
    }

    PdfDocument& document_;
    const GridPicture& picture_;
    const Grid& grid_;
};

}  // namespace

void draw(PdfDocument& document, const GridPicture& picture) {
    GridPainter(document, picture).paint();
}

double letter_share(const PdfDocument& document, const LetteredGrid& grid) {
    double widest = 0;
    for (std::size_t letter = 0; letter < grid.alphabet.size(); ++letter)
        widest = std::max(widest, document.width_of(grid.alphabet.text(static_cast<Letter>(letter)),
                                                    {points_a_mm, true, ink}));
    return widest <= 0 ? usual_share : std::min(usual_share, widest_share / widest);
}

}  // namespace lode
