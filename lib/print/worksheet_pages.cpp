#include "print/worksheet_pages.hpp"

#include <algorithm>
#include <array>

#include "print/grid_picture.hpp"
#include "text/direction.hpp"
#include "text/fixed_decimals.hpp"

namespace lode {

namespace {

constexpr double title_pt = 24;
constexpr double least_title_pt = 16;
constexpr std::size_t most_title_lines = 3;
constexpr double fields_mm = 13;  // for the lines on which pupils write
constexpr double field_pt = 12;
constexpr double after_title_mm = 5;
constexpr double most_cell_mm = 15;   // larger letters are no easier to read on a table
constexpr double usual_list_pt = 12;  // clear print
constexpr double most_list_pt = 16;
constexpr double most_large_list_pt = 24;
constexpr double key_title_pt = 16;
constexpr double key_list_pt = 9;
constexpr double table_number_em = 3.4;  // "Row", "Col."
constexpr double table_direction_em = 6.4;
constexpr double table_gap_em = 0.8;
constexpr double table_fixed_em = 2 * table_number_em + table_direction_em + 2 * table_gap_em;
constexpr Colour rule_grey{0x80, 0x80, 0x80};
constexpr Colour head_grey{0x5c, 0x5c, 0x5c};

double em_mm(double size_pt) {
    return size_pt / points_a_mm;
}

// A title on its lines, and how large.
struct TitleLines {
    std::vector<std::string> lines;
    TextStyle style;
    bool is_cut = false;
};

TitleLines title_lines(const PdfDocument& document, const std::string& title, double width_mm, double size_pt,
                       double least_pt) {
    TitleLines set{{}, {size_pt, true, ink}, false};
    if (title.empty()) return set;
    const double width = document.width_of(title, set.style);
    if (width > width_mm) set.style.size_pt = std::max(least_pt, size_pt * width_mm / width * 0.999);
    set.lines = document.wrapped(title, width_mm, set.style);
    if (set.lines.size() > most_title_lines) {
        set.lines.resize(most_title_lines);
        set.is_cut = true;
        set.lines.back() =
            document.shortened(set.lines.back() + std::string(200, ' ') + ".", width_mm, set.style);
    }
    return set;
}

// The head of a page: fields to write on, the title, and the version's letter in the corner.
class SheetHead {
  public:
    SheetHead(const PdfDocument& document, const PageFrame& frame, const Worksheet& worksheet, bool is_key,
              const PrintOptions& options)
        : frame_(frame), worksheet_(worksheet), is_key_(is_key), options_(options) {
        const double version =
            worksheet.version.empty() ? 0 : document.width_of(worksheet.version, {title_pt, true, ink}) + 8;
        title_ = title_lines(document, worksheet.title, frame.room().width() - 2 * version,
                             is_key ? key_title_pt : title_pt,
                             frame.large_print ? large_print_pt
                             : is_key          ? 12
                                               : least_title_pt);
        if (frame.large_print && is_key)
            title_.style.size_pt = std::max(title_.style.size_pt, large_print_pt);
        const Recipe& recipe = worksheet.puzzle.recipe;
        if (is_key && !recipe.message.empty())
            message_ = document.wrapped("The other cells spell, row by row: " + isolated(recipe.message) +
                                            (recipe.filler_after_message ? ", then filler." : "."),
                                        frame.room().width(), message_style());
    }

    [[nodiscard]] double height() const {
        double height = has_fields() ? fields_mm : 0;
        const double lines = static_cast<double>(title_.lines.size());
        height += lines * PdfDocument::line_pitch(title_.style);
        if (is_key_)
            height += PdfDocument::line_pitch(subtitle()) +
                      static_cast<double>(message_.size()) * PdfDocument::line_pitch(message_style());
        if (lines == 0 && !worksheet_.version.empty()) height += PdfDocument::line_pitch(title_.style);
        return height + after_title_mm;
    }

    void draw(PdfDocument& document) const {
        const Box room = frame_.room();
        double y = room.top;
        if (has_fields()) {
            draw_fields(document, y + em_mm(field_pt));
            y += fields_mm;
        }
        if (has_heading()) {
            const auto heading = document.tag(Role::heading);
            double baseline = y + em_mm(title_.style.size_pt);
            for (const std::string& line : title_.lines) {
                document.text(line, {room.centre().x, baseline}, title_.style, Align::centre, room.width());
                baseline += PdfDocument::line_pitch(title_.style);
            }
            if (!worksheet_.version.empty())
                document.text(worksheet_.version, {room.right, y + em_mm(title_.style.size_pt)}, title_.style,
                              Align::right);
            y += static_cast<double>(std::max<std::size_t>(title_.lines.size(), 1)) *
                 PdfDocument::line_pitch(title_.style);
        }
        if (is_key_) {
            const auto heading = document.tag(has_heading() ? Role::subheading : Role::heading);
            document.text("Answer key", {room.centre().x, y + em_mm(subtitle().size_pt)}, subtitle(),
                          Align::centre);
            y += PdfDocument::line_pitch(subtitle());
        }
        if (message_.empty()) return;
        const auto paragraph = document.tag(Role::paragraph);
        for (const std::string& line : message_) {
            document.text(line, {room.centre().x, y + em_mm(message_style().size_pt)}, message_style(),
                          Align::centre);
            y += PdfDocument::line_pitch(message_style());
        }
    }

    [[nodiscard]] bool is_cut() const { return title_.is_cut; }

  private:
    [[nodiscard]] bool has_heading() const { return !title_.lines.empty() || !worksheet_.version.empty(); }
    [[nodiscard]] bool has_fields() const {
        return !is_key_ && (!options_.name_line.empty() || !options_.date_line.empty());
    }
    [[nodiscard]] TextStyle message_style() const {
        return {frame_.large_print ? large_print_pt : 10, false, ink};
    }
    [[nodiscard]] TextStyle subtitle() const {
        return {frame_.large_print ? large_print_pt : 11, false, head_grey};
    }

    void draw_fields(PdfDocument& document, double baseline) const {
        const Box room = frame_.room();
        const TextStyle style{frame_.large_print ? large_print_pt : field_pt, false, ink};
        std::vector<std::string> labels;
        for (const std::string& label : {options_.name_line, options_.date_line})
            if (!label.empty()) labels.push_back(label);
        const bool both = labels.size() == 2;
        // A name needs more room than a date; in a script that runs from the right they stand the other way
        // round.
        const bool turned = is_right_to_left(labels.front());
        const double split = 0.6 * room.width();
        for (std::size_t i = 0; i < labels.size(); ++i) {
            const double from = i == 0 ? 0 : split + 6;
            const double to = both && i == 0 ? split : room.width();
            const auto label = document.tag(Role::paragraph);
            const double width = std::min(document.width_of(labels[i], style), 0.6 * (to - from));
            const LineStyle rule{0.25, rule_grey, {}};
            const double below = baseline + 0.8;
            if (turned) {
                document.text(labels[i], {room.right - from, baseline}, style, Align::right, width);
                document.line({room.right - to, below}, {room.right - from - width - 2, below}, rule);
            } else {
                document.text(labels[i], {room.left + from, baseline}, style, Align::left, width);
                document.line({room.left + from + width + 2, below}, {room.left + to, below}, rule);
            }
        }
    }

    const PageFrame& frame_;
    const Worksheet& worksheet_;
    bool is_key_;
    const PrintOptions& options_;
    TitleLines title_;
    std::vector<std::string> message_;  // what is left over spells it
};

Box below(const Box& room, double height) {
    return {room.left, room.top + height, room.right, room.bottom};
}

bool runs_from_the_right(const Puzzle& puzzle) {
    return !puzzle.words.empty() && is_right_to_left(puzzle.words.front().shown);
}

std::vector<std::string> list_entries(const std::vector<PlacedWord>& words) {
    std::vector<std::string> entries;
    for (const PlacedWord& word : words) entries.push_back(word.shown);
    return entries;
}

// What the list has on pages of its own, from `first` on.
std::vector<ListColumns> on_more_pages(const ListFlow& list, std::size_t first, const Box& room,
                                       double size_pt) {
    std::vector<ListColumns> pages;
    while (first < list.entries().size()) {
        pages.push_back(list.as_many(first, room.width(), room.height(), size_pt));
        first += pages.back().entries();
    }
    return pages;
}

Refusal too_small(const Worksheet& worksheet, double largest_pt, const SheetNeeds& needs, const Box& room,
                  const PrintOptions& options) {
    const auto fitting = [&](double side) {
        return std::to_string(
            static_cast<int>(side * needs.letter_share * points_a_mm / needs.least_letter_pt));
    };
    Refusal refusal;
    refusal.reason = Refusal::Reason::unusable;
    const std::string size = std::to_string(needs.grid.columns) + "x" + std::to_string(needs.grid.rows);
    refusal.message = (worksheet.title.empty() ? std::string() : worksheet.title + ": ") + "a grid of " +
                      size + " is too large for this page: its letters would be of " +
                      fixed_decimals(largest_pt, 1) + " pt, and under " +
                      std::to_string(static_cast<int>(least_letter_pt)) + " pt nothing is printed.";
    refusal.advice = {"At the most " + fitting(room.width()) + "x" + fitting(room.height()) +
                      " cells fit on the page" +
                      (options.landscape ? "" : "; with --landscape more columns and fewer rows") +
                      ". letterlode make --grid makes a smaller puzzle."};
    return refusal;
}

// The table of positions, a row a word; its words may have several lines.
void draw_table_entry(PdfDocument& document, const LaidOutSheet& sheet, std::size_t entry,
                      const ListColumns& in, double left, double baseline) {
    const TextStyle style{in.size_pt, false, ink};
    const double em = em_mm(in.size_pt);
    const PlacedWord& word = sheet.words[entry];
    const auto row = document.tag(Role::table_row);
    const double numbers = left + in.column_mm - table_fixed_em * em;
    {
        const auto cell = document.tag(Role::row_header);
        document.lines(word.shown, sheet.list.lines(entry, in), {left, baseline}, style, Align::left,
                       in.column_mm - table_fixed_em * em + 1);
    }
    const auto number = [&](int value, double right) {
        const auto cell = document.tag(Role::table_cell);
        document.text(std::to_string(value), {right, baseline}, style, Align::right);
    };
    number(word.placed.first.row + 1, numbers + table_number_em * em);
    number(word.placed.first.column + 1, numbers + 2 * table_number_em * em);
    const auto cell = document.tag(Role::table_cell);
    document.text(name(word.placed.direction),
                  {numbers + (2 * table_number_em + table_gap_em) * em, baseline}, style);
}

struct TableHead {
    const char* text;
    double x;
    Align align;
};

std::array<TableHead, 4> table_heads(const ListColumns& in, double left) {
    const double em = em_mm(in.size_pt);
    const double numbers = left + in.column_mm - table_fixed_em * em;
    return {{{"Word", left, Align::left},
             {"Row", numbers + table_number_em * em, Align::right},
             {"Col.", numbers + 2 * table_number_em * em, Align::right},
             {"Direction", numbers + (2 * table_number_em + table_gap_em) * em, Align::left}}};
}

// Above each column; those who hear the table meet it once.
void draw_table_head(PdfDocument& document, const ListColumns& in, double left, double baseline,
                     bool is_first) {
    const TextStyle style{in.size_pt, true, head_grey};
    const auto heads = table_heads(in, left);
    if (!is_first) {
        for (const TableHead& head : heads) document.text(head.text, {head.x, baseline}, style, head.align);
        return;
    }
    const auto row = document.tag(Role::table_row);
    for (const TableHead& head : heads) {
        const auto cell = document.tag(Role::column_header);
        document.text(head.text, {head.x, baseline}, style, head.align);
    }
}

void draw_list_entry(PdfDocument& document, const LaidOutSheet& sheet, std::size_t entry,
                     const ListColumns& in, double left, double baseline) {
    const TextStyle style{in.size_pt, false, ink};
    const auto item = document.tag(Role::list_item);
    document.lines(sheet.words[entry].shown, sheet.list.lines(entry, in),
                   {sheet.is_right_to_left ? left + in.column_mm : left, baseline}, style,
                   sheet.is_right_to_left ? Align::right : Align::left, in.column_mm + 0.1);
}

// Columns of a script that runs from the right begin at the right.
void draw_columns(PdfDocument& document, const LaidOutSheet& sheet, const ListColumns& in, Point corner,
                  bool is_first) {
    const double pitch = PdfDocument::line_pitch({in.size_pt, false, ink});
    for (std::size_t i = 0; i < in.columns.size(); ++i) {
        const bool turned = sheet.is_right_to_left && !sheet.is_key;
        const auto place = static_cast<double>(turned ? in.columns.size() - 1 - i : i);
        const double left = corner.x + place * (in.column_mm + in.gap_mm);
        double baseline = corner.y + em_mm(in.size_pt);
        if (sheet.is_key) {
            draw_table_head(document, in, left, baseline, is_first && i == 0);
            baseline += sheet.list.head_lines() * pitch;
        }
        for (std::size_t entry = in.columns[i].first; entry < in.columns[i].first + in.columns[i].count;
             ++entry) {
            if (sheet.is_key)
                draw_table_entry(document, sheet, entry, in, left, baseline);
            else
                draw_list_entry(document, sheet, entry, in, left, baseline);
            baseline += static_cast<double>(sheet.list.lines(entry, in).size()) * pitch;
        }
    }
}

}  // namespace

std::string heading_text(const Worksheet& worksheet) {
    if (worksheet.version.empty()) return worksheet.title;
    return worksheet.title + (worksheet.title.empty() ? "" : ", ") + worksheet.version;
}

Outcome<LaidOutSheet> lay_out_worksheet(const PdfDocument& document, const PageFrame& frame,
                                        const Worksheet& worksheet, const PrintOptions& options) {
    const SheetHead head(document, frame, worksheet, false, options);
    const Box room = below(frame.room(), head.height());
    SheetNeeds needs;
    needs.grid = worksheet.puzzle.grid.grid.size();
    needs.letter_share = letter_share(document, worksheet.puzzle.grid);
    needs.least_letter_pt = least_letter_pt;
    needs.most_cell_mm = most_cell_mm;
    needs.least_list_pt = least_list_pt;
    needs.usual_list_pt = frame.large_print ? large_print_pt : usual_list_pt;
    needs.most_list_pt = frame.large_print ? most_large_list_pt : most_list_pt;
    needs.right_to_left = runs_from_the_right(worksheet.puzzle);
    // Before the list is looked at: of a grid that is far too large it may have a million words.
    const double largest =
        needs.letter_pt(std::min(room.width() / needs.grid.columns, room.height() / needs.grid.rows));
    if (largest < least_letter_pt) return too_small(worksheet, largest, needs, room, options);
    std::vector<PlacedWord> words = listed(worksheet.puzzle, options.order);
    LaidOutSheet sheet{worksheet,    false,
                       words,        ListFlow(document, list_entries(words)),
                       {},           needs.letter_share,
                       {},           needs.right_to_left,
                       head.is_cut()};
    sheet.layout = share_page(needs, sheet.list, room, frame.large_print ? large_print_pt : 0);
    if (sheet.layout.is_list_apart)
        sheet.more_pages = on_more_pages(sheet.list, 0, room, sheet.layout.list_pt);
    return sheet;
}

LaidOutSheet lay_out_key(const PdfDocument& document, const PageFrame& frame, const Worksheet& worksheet,
                         const PrintOptions& options) {
    std::vector<PlacedWord> words = listed(worksheet.puzzle, options.order);
    LaidOutSheet sheet{worksheet, true, words, ListFlow(document, list_entries(words), table_fixed_em, 1.2),
                       {},        0,    {},    false};
    const SheetHead head(document, frame, worksheet, true, options);
    const Box room = below(frame.room(), head.height());
    SheetNeeds needs;
    needs.grid = worksheet.puzzle.grid.grid.size();
    ++needs.grid.rows;  // numbers
    ++needs.grid.columns;
    needs.letter_share = letter_share(document, worksheet.puzzle.grid);
    needs.least_letter_pt = least_key_letter_pt;
    needs.most_cell_mm = 0.7 * most_cell_mm;
    needs.least_list_pt = frame.large_print ? large_print_pt : key_list_pt;
    needs.usual_list_pt = needs.least_list_pt;
    needs.most_list_pt = frame.large_print ? large_print_pt : 11;
    sheet.letter_share = needs.letter_share;
    sheet.layout = share_page(needs, sheet.list, room, 0);
    if (sheet.layout.is_list_apart)
        sheet.more_pages = on_more_pages(sheet.list, 0, room, sheet.layout.list_pt);
    return sheet;
}

void draw_foot(PdfDocument& document, const PageFrame& frame, int page) {
    if (frame.foot_mm <= 0) return;
    document.text(std::to_string(page), {frame.paper.width_mm / 2, frame.paper.height_mm - frame.margin_mm},
                  {10, false, head_grey}, Align::centre);
}

void draw(PdfDocument& document, const PageFrame& frame, const LaidOutSheet& sheet,
          const PrintOptions& options, const std::string& place, int first_page) {
    const auto section = document.tag(Role::section);
    document.set_place(place, {frame.margin_mm, frame.margin_mm});
    const SheetHead head(document, frame, sheet.worksheet, sheet.is_key, options);
    head.draw(document);
    const double cell = sheet.layout.cell_mm;
    const Point shift = sheet.is_key ? Point{cell, cell} : Point{0, 0};
    draw(document, GridPicture{sheet.worksheet.puzzle,
                               {sheet.layout.grid.left + shift.x, sheet.layout.grid.top + shift.y},
                               cell,
                               sheet.layout.letter_pt,
                               options.grid_lines,
                               sheet.is_key,
                               sheet.is_key ? std::optional(options.key_marks) : std::nullopt,
                               options.colours});
    draw_foot(document, frame, first_page);
    const auto list = document.tag(sheet.is_key ? Role::table : Role::list);
    if (!sheet.layout.is_list_apart)
        draw_columns(document, sheet, sheet.layout.list, sheet.layout.list_corner, true);
    const Box room = below(frame.room(), head.height());
    for (std::size_t i = 0; i < sheet.more_pages.size(); ++i) {
        document.add_page();
        draw_foot(document, frame, first_page + 1 + static_cast<int>(i));
        const TextStyle style{frame.large_print ? large_print_pt : 11, true, ink};
        // What stands at the head of such a page is there for those who turn it; the list itself goes on.
        const std::string heading = heading_text(sheet.worksheet);
        document.text(sheet.is_key ? heading + (heading.empty() ? "Answer key" : ": answer key") : heading,
                      {room.centre().x, frame.margin_mm + em_mm(style.size_pt)}, style, Align::centre,
                      room.width());
        draw_columns(document, sheet, sheet.more_pages[i], {room.left, room.top}, i == 0);
    }
}

}  // namespace lode
