#include "cut/guide.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "art/number.hpp"
#include "print/pdf_document.hpp"

namespace lode {

namespace {

// A quarter of an inch less a hair: what most printers leave blank, and an 8 x 10 in panel still fits onto a
// letter page (common practice).
constexpr double margin_mm = 6;
constexpr double header_mm = 5.2;
constexpr double footer_mm = 8;
constexpr double overlap_mm = 12;

constexpr Colour soft{0x70, 0x78, 0x76};
const TextStyle note{6.5, false, ink};
const TextStyle strong{7, true, ink};
const TextStyle figures{5, false, ink};

GuideTiles tiles_on(const BlankSize& blank, PageSize page) {
    GuideTiles tiles;
    tiles.page = page;
    tiles.area = {margin_mm, margin_mm + header_mm, page.width_mm - margin_mm,
                  page.height_mm - margin_mm - footer_mm};
    const auto count = [](double length, double tile) {
        return length <= tile ? 1 : 1 + static_cast<int>(std::ceil((length - tile) / (tile - overlap_mm)));
    };
    tiles.columns = count(blank.width_mm, tiles.area.width());
    tiles.rows = count(blank.height_mm, tiles.area.height());
    tiles.overlap = overlap_mm;
    const auto before = [](double length, double tile, int tile_count) {
        return (length - tile - (tile_count - 1) * (tile - overlap_mm)) / 2;
    };
    tiles.first = {before(blank.width_mm, tiles.area.width(), tiles.columns),
                   before(blank.height_mm, tiles.area.height(), tiles.rows)};
    return tiles;
}

// Dark enough to be seen on paper, whatever the film.
Colour darker(Colour colour) {
    const auto part = [](std::uint8_t channel) { return static_cast<std::uint8_t>(channel * 3 / 5); };
    return {part(colour.red), part(colour.green), part(colour.blue)};
}

bool touch(const Box& a, const Box& b) {
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

Path as_worked(const Path& path, const Artwork& artwork) {
    return artwork.surface == Surface::second ? mirrored(path, artwork.blank.width_mm) : path;
}

// What a box takes of a line across which joints are sought.
struct Taken {
    double from;
    double to;
};

// From `start`, an overlap on: the place that cuts the fewest, then the one that has air on both sides of it,
// then the one nearest to the middle.
double best_joint(const std::vector<Taken>& letters, double start) {
    constexpr int steps = 16;  // to either side
    constexpr double step = 0.25;
    constexpr double air = 0.6;
    const auto cut_at = [&](double at, double around) {
        return std::count_if(letters.begin(), letters.end(), [&](const Taken& letter) {
            return letter.from - around < at && at < letter.to + around;
        });
    };
    const double middle = start + overlap_mm / 2;
    double best = middle;
    auto cost = std::pair{cut_at(middle, 0), cut_at(middle, air)};
    for (int i = 1; i <= steps; ++i)
        for (const double at : {middle - i * step, middle + i * step})
            if (const auto other = std::pair{cut_at(at, 0), cut_at(at, air)}; other < cost) {
                best = at;
                cost = other;
            }
    return best;
}

class Guide {
  public:
    Guide(const Artwork& artwork, const GuideTiles& tiles, PrintFonts fonts)
        : artwork_(artwork),
          tiles_(tiles),
          joints_(guide_joints(artwork, tiles)),
          mirrored_(artwork.surface == Surface::second),
          edge_(as_worked(artwork.blank.outline, artwork)),
          pages_(tiles.page, heading() + ": guide", std::move(fonts)) {
        for (const Layer& layer : artwork.layers)
            for (const Piece& piece : layer.pieces) {
                Path path = as_worked(piece.path, artwork);
                const Box box = bounds(path);
                pieces_.push_back({std::move(path), box, layer.colour});
            }
    }

    std::string drawn() {
        for (int row = 0; row < tiles_.rows; ++row)
            for (int column = 0; column < tiles_.columns; ++column) {
                if (row + column > 0) pages_.add_page();
                draw_tile(column, row);
                if (several()) draw_joints(column, row);
                draw_header(column, row);
                draw_footer();
            }
        return pages_.bytes();
    }

  private:
    struct TintedPiece {
        Path path;
        Box box;
        Colour colour;
    };

    [[nodiscard]] std::string heading() const {
        return artwork_.heading.empty() ? "Word grid" : artwork_.heading;
    }
    [[nodiscard]] bool several() const { return tiles_.columns * tiles_.rows > 1; }
    [[nodiscard]] std::string page_name(int column, int row) const {
        return "page " + std::to_string(row * tiles_.columns + column + 1);
    }
    void draw_tile(int column, int row);
    void draw_joints(int column, int row);
    void draw_cross(Point at);
    void draw_header(int column, int row);
    void draw_map(Point corner, int column, int row);
    void draw_footer();

    const Artwork& artwork_;
    const GuideTiles& tiles_;
    GuideJoints joints_;
    bool mirrored_;
    Path edge_;
    PdfDocument pages_;
    std::vector<TintedPiece> pieces_;
};

// Films lie on each other in the order of application, whichever side they are on: the maker always looks at
// the one that was applied last.
void Guide::draw_tile(int column, int row) {
    const Point corner = tiles_.corner(column, row);
    const Box window{corner.x, corner.y, corner.x + tiles_.area.width(), corner.y + tiles_.area.height()};
    const auto clipped = pages_.clip(tiles_.area);
    const auto placed = pages_.place({tiles_.area.left - corner.x, tiles_.area.top - corner.y});
    for (const TintedPiece& piece : pieces_) {
        if (!touch(piece.box, window)) continue;
        pages_.fill(piece.path, {255, 255, 255});
        pages_.fill(piece.path, piece.colour, 0.22);
    }
    // Outlines last: what is covered later must find its place first.
    for (const TintedPiece& piece : pieces_)
        if (touch(piece.box, window)) pages_.stroke(piece.path, {0.18, darker(piece.colour), {}});
    pages_.stroke(edge_, {0.35, ink, {}});
    constexpr double beyond = 4;
    const double width = artwork_.blank.width_mm;
    const double height = artwork_.blank.height_mm;
    const LineStyle centre{0.18, {0xb0, 0x12, 0x4e}, {8, 1.5, 1.5, 1.5}};
    pages_.line({width / 2, -beyond}, {width / 2, height + beyond}, centre);
    pages_.line({-beyond, height / 2}, {width + beyond, height / 2}, centre);
}

void Guide::draw_cross(Point at) {
    constexpr double arm = 3.5;
    pages_.line({at.x - arm, at.y}, {at.x + arm, at.y}, {0.25, ink, {}});
    pages_.line({at.x, at.y - arm}, {at.x, at.y + arm}, {0.25, ink, {}});
    pages_.stroke(capsule(at, at, 1.6), {0.25, ink, {}});
}

// The same line with the same crosses stands on both pages: dotted, since the blank's centre lines are
// dashed.
void Guide::draw_joints(int column, int row) {
    const Box& area = tiles_.area;
    const Point corner = tiles_.corner(column, row);
    const double in = tiles_.overlap / 2;
    const LineStyle cut{0.4, soft, {0.4, 1}};
    const auto upright = [&](double on_blank, double text_x, int other) {
        const double x = on_blank - corner.x + area.left;
        pages_.line({x, area.top}, {x, area.bottom}, cut);
        for (const double share : {0.12, 0.5, 0.88}) draw_cross({x, area.top + share * area.height()});
        pages_.text("joins " + page_name(other, row), {text_x, area.top + 0.3 * area.height()}, figures,
                    Align::centre, tiles_.overlap);
    };
    const auto level = [&](double on_blank, int other) {
        const double y = on_blank - corner.y + area.top;
        pages_.line({area.left, y}, {area.right, y}, cut);
        for (const double share : {0.12, 0.5, 0.88}) draw_cross({area.left + share * area.width(), y});
        pages_.text("joins " + page_name(column, other), {area.left + 0.3 * area.width(), y - 0.8}, figures,
                    Align::centre);
    };
    if (column > 0) upright(joints_.upright(column - 1, row), area.left + in, column - 1);
    if (column + 1 < tiles_.columns) upright(joints_.upright(column, row), area.right - in, column + 1);
    if (row > 0) level(joints_.level(column, row - 1), row - 1);
    if (row + 1 < tiles_.rows) level(joints_.level(column, row), row + 1);
}

void Guide::draw_map(Point corner, int column, int row) {
    const double side = std::min(4.4 / tiles_.rows, 30.0 / tiles_.columns);
    for (int i = 0; i < tiles_.rows; ++i)
        for (int j = 0; j < tiles_.columns; ++j) {
            const double right = corner.x - (tiles_.columns - 1 - j) * side;
            const Box box{right - side, corner.y + i * side, right, corner.y + (i + 1) * side};
            if (i == row && j == column) pages_.fill(box, ink);
            pages_.stroke(box, {0.12, ink, {}});
        }
}

void Guide::draw_header(int column, int row) {
    const Box& area = tiles_.area;
    const double baseline = margin_mm + 3.4;
    double right = area.right;
    if (several()) {
        draw_map({right, margin_mm - 0.2}, column, row);
        right -= std::min(4.4 / tiles_.rows, 30.0 / tiles_.columns) * tiles_.columns + 2;
        const std::string place = "Page " + std::to_string(row * tiles_.columns + column + 1) + " of " +
                                  std::to_string(tiles_.rows * tiles_.columns) + ": row " +
                                  std::to_string(row + 1) + ", column " + std::to_string(column + 1);
        pages_.text(place, {right, baseline}, note, Align::right);
        right -= pages_.width_of(place, note) + 3;
    }
    const std::string side =
        mirrored_
            ? "Guide, MIRRORED: the back of the blank, as you see it while you work. Lay it under the blank."
            : "Guide, as the viewer sees it: the front of the blank. Lay it under the blank or beside it.";
    const double most = right - area.left;
    const double side_width = std::min(pages_.width_of(side, note), 0.78 * most);
    const std::string title = pages_.shortened(heading(), most - side_width - 3, strong);
    pages_.text(title, {area.left, baseline}, strong);
    pages_.text(side, {area.left + pages_.width_of(title, strong) + 3, baseline}, note, Align::left,
                most - pages_.width_of(title, strong) - 3);
}

// Millimetres stand up from a line, inches hang down from it.
void Guide::draw_footer() {
    const double y = tiles_.page.height_mm - margin_mm - 3.6;
    const double left = tiles_.area.left + 0.5;
    const LineStyle fine{0.15, ink, {}};
    pages_.line({left, y}, {left + 101.6, y}, fine);
    for (int mm = 0; mm <= 100; ++mm)
        pages_.line({left + mm, y}, {left + mm, y - (mm % 10 == 0 ? 2.0 : mm % 5 == 0 ? 1.5 : 1.0)}, fine);
    for (int eighth = 0; eighth <= 32; ++eighth)
        pages_.line({left + eighth * 25.4 / 8, y},
                    {left + eighth * 25.4 / 8, y + (eighth % 8 == 0   ? 2.0
                                                    : eighth % 4 == 0 ? 1.5
                                                                      : 1.0)},
                    fine);
    for (int mm = 50; mm <= 100; mm += 50)
        pages_.text(std::to_string(mm) + (mm == 100 ? " mm" : ""), {left + mm, y - 2.3}, figures,
                    Align::centre);
    for (int inch = 2; inch <= 4; inch += 2)
        pages_.text(std::to_string(inch) + (inch == 4 ? " in" : ""), {left + inch * 25.4, y + 3.6}, figures,
                    Align::centre);
    const double text_left = left + 101.6 + 5;
    const std::string told = several() ? "Print at 100 percent, then measure the ruler. Cut one page on each "
                                         "dotted line, lay it on the other page's line, crosses on crosses."
                                       : "Print at 100 percent, not fitted to the page, then measure the "
                                         "ruler: 100 mm above, 4 in below.";
    pages_.paragraph(told, {text_left, y - 3.2}, tiles_.area.right - text_left, {6, false, ink}, Align::left,
                     3);
}

}  // namespace

GuideTiles guide_tiles(const BlankSize& blank, Paper paper) {
    const PageSize upright = size_of(paper);
    const GuideTiles one = tiles_on(blank, upright);
    const GuideTiles other = tiles_on(blank, {upright.height_mm, upright.width_mm});
    return other.columns * other.rows < one.columns * one.rows ? other : one;
}

GuideJoints guide_joints(const Artwork& artwork, const GuideTiles& tiles) {
    std::vector<Box> letters;
    for (const Layer& layer : artwork.layers)
        if (layer.name != "bands" && layer.name != "border")
            for (const Piece& piece : layer.pieces) letters.push_back(bounds(as_worked(piece.path, artwork)));

    GuideJoints joints;
    joints.columns = tiles.columns;
    for (int row = 0; row < tiles.rows; ++row)
        for (int column = 0; column + 1 < tiles.columns; ++column) {
            const Point corner = tiles.corner(column + 1, row);
            const Box shared{corner.x, corner.y, corner.x + tiles.overlap, corner.y + tiles.area.height()};
            std::vector<Taken> taken;
            for (const Box& box : letters)
                if (touch(box, shared)) taken.push_back({box.left, box.right});
            joints.uprights.push_back(best_joint(taken, corner.x));
        }
    for (int row = 0; row + 1 < tiles.rows; ++row)
        for (int column = 0; column < tiles.columns; ++column) {
            const Point corner = tiles.corner(column, row + 1);
            const Box shared{corner.x, corner.y, corner.x + tiles.area.width(), corner.y + tiles.overlap};
            std::vector<Taken> taken;
            for (const Box& box : letters)
                if (touch(box, shared)) taken.push_back({box.top, box.bottom});
            joints.levels.push_back(best_joint(taken, corner.y));
        }
    return joints;
}

Outcome<std::string> guide_pdf(const Artwork& artwork, Paper paper) {
    auto fonts = PrintFonts::open();
    if (!fonts) return fonts.refusal();
    const GuideTiles tiles = guide_tiles(artwork.blank, paper);
    return Guide(artwork, tiles, *std::move(fonts)).drawn();
}

}  // namespace lode
