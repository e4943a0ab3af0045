// A class's pages: contents, worksheets, keys.

#include <algorithm>
#include <cmath>

#include <letterlode/print.hpp>

#include "print/worksheet_pages.hpp"
#include "text/fixed_decimals.hpp"

namespace lode {

namespace {

constexpr double number_foot_mm = 8;
constexpr double contents_pt = 12;

Refusal unusable(std::string message, std::string advice) {
    return {Refusal::Reason::unusable, std::move(message), {}, {std::move(advice)}, {}, 0};
}

std::optional<Refusal> fault_of(std::span<const Worksheet> worksheets, const PrintOptions& options) {
    if (worksheets.empty()) return unusable("There is no worksheet to print.", "Give a puzzle.");
    if (worksheets.size() > most_worksheets)
        return unusable(std::to_string(worksheets.size()) + " worksheets are too many for one file.",
                        "Print at most " + std::to_string(most_worksheets) + " at once.");
    for (const Worksheet& worksheet : worksheets)
        for (const std::string* text :
             {&worksheet.title, &options.name_line, &options.date_line, &options.contents})
            if (text->size() > most_heading_bytes)
                return unusable(
                    "A heading of " + std::to_string(text->size()) + " bytes is too long for a page.",
                    "Write at most " + std::to_string(most_heading_bytes) + ".");
    if (!(options.margin_mm >= least_print_margin_mm && options.margin_mm <= most_print_margin_mm))
        return unusable("A margin of " + fixed_decimals(options.margin_mm, 1) + " mm cannot be printed.",
                        "Give one of " + fixed_decimals(least_print_margin_mm, 0) + " to " +
                            fixed_decimals(most_print_margin_mm, 0) +
                            " mm: most printers leave some 4 to 6 mm white.");
    return std::nullopt;
}

// What a reader shows above the pages.
std::string document_title(std::span<const Worksheet> worksheets, const PrintOptions& options) {
    if (!options.contents.empty()) return options.contents;
    const std::string title =
        worksheets.size() == 1 ? heading_text(worksheets.front()) : worksheets.front().title;
    return !title.empty() ? title : worksheets.size() == 1 ? "Worksheet" : "Worksheets";
}

std::string place_of(const char* kind, std::size_t worksheet) {
    return kind + std::to_string(worksheet + 1);
}

// A line of the contents: what, and on which page.
struct ContentsLine {
    std::string text;
    std::string place;
    int page = 0;
};

class Contents {
  public:
    Contents(const PageFrame& frame, std::string title, std::vector<ContentsLine> lines)
        : frame_(frame), title_(std::move(title)), lines_(std::move(lines)) {}

    [[nodiscard]] static int pages_for(const PageFrame& frame, std::size_t lines) {
        return static_cast<int>((lines + lines_a_page(frame) - 1) / lines_a_page(frame));
    }

    void draw(PdfDocument& document) const {
        const Box room = frame_.room();
        const TextStyle title{24, true, ink};
        const TextStyle style = line_style(frame_);
        const double pitch = line_pitch(frame_);
        const std::size_t most = lines_a_page(frame_);
        const auto section = document.tag(Role::section);
        {
            const auto heading = document.tag(Role::heading);
            document.text(title_, {room.centre().x, room.top + title.size_pt / points_a_mm}, title,
                          Align::centre, room.width());
        }
        const auto contents = document.tag(Role::contents);
        for (std::size_t i = 0; i < lines_.size(); ++i) {
            if (i > 0 && i % most == 0) document.add_page();
            if (i % most == 0) draw_foot(document, frame_, static_cast<int>(i / most) + 1);
            draw_line(document, lines_[i], room.top + head_mm + (static_cast<double>(i % most) + 1) * pitch,
                      style);
        }
    }

  private:
    static constexpr double head_mm = 22;
    static TextStyle line_style(const PageFrame& frame) {
        return {frame.large_print ? large_print_pt : contents_pt, false, ink};
    }
    static double line_pitch(const PageFrame& frame) {
        return 1.25 * PdfDocument::line_pitch(line_style(frame));
    }
    static std::size_t lines_a_page(const PageFrame& frame) {
        return static_cast<std::size_t>(std::max(1.0, (frame.room().height() - head_mm) / line_pitch(frame)));
    }

    void draw_line(PdfDocument& document, const ContentsLine& line, double baseline,
                   const TextStyle& style) const {
        const Box room = frame_.room();
        const double width = room.width() - 16;
        const double end = room.left + std::min(document.width_of(line.text, style), width) + 2;
        document.line({end, baseline - 0.3}, {room.right - 12, baseline - 0.3},
                      {0.2, {0x9a, 0x9a, 0x9a}, {0.2, 1.4}});
        const auto item = document.tag(Role::contents_item);
        const auto link = document.link(line.place);
        document.text(line.text, {room.left, baseline}, style, Align::left, width);
        document.text(std::to_string(line.page), {room.right, baseline}, style, Align::right);
    }

    const PageFrame& frame_;
    std::string title_;
    std::vector<ContentsLine> lines_;
};

class Printing {
  public:
    Printing(std::span<const Worksheet> worksheets, const PrintOptions& options, PrintFonts fonts)
        : worksheets_(worksheets),
          options_(options),
          frame_{paper_size(options), options.margin_mm, options.contents.empty() ? 0 : number_foot_mm,
                 options.large_print},
          document_(frame_.paper, document_title(worksheets, options), std::move(fonts)) {
        const std::string& locale = worksheets.front().puzzle.recipe.text.locale;
        document_.set_language(locale == "root" ? std::string("en") : locale);
        if (options.date) document_.set_date(*options.date);
    }

    Outcome<PrintedPages> run() {
        for (const Worksheet& worksheet : worksheets_) {
            auto sheet = lay_out_worksheet(document_, frame_, worksheet, options_);
            if (!sheet) return sheet.refusal();
            sheets_.push_back(*std::move(sheet));
        }
        if (options_.key)
            for (const Worksheet& worksheet : worksheets_)
                keys_.push_back(lay_out_key(document_, frame_, worksheet, options_));
        draw_contents();
        for (std::size_t i = 0; i < sheets_.size(); ++i) draw_sheet(sheets_[i], place_of("sheet-", i), 0);
        for (std::size_t i = 0; i < keys_.size(); ++i) {
            begin_page();
            if (i == 0) bookmark_keys();
            draw_sheet(keys_[i], place_of("key-", i), keys_.size() > 1 ? 1 : -1);
        }
        PrintedPages pages = result();
        pages.pages = document_.pages();
        pages.pdf = document_.bytes();
        return pages;
    }

  private:
    static PageSize paper_size(const PrintOptions& options) {
        const PageSize upright = size_of(options.page);
        return options.landscape ? PageSize{upright.height_mm, upright.width_mm} : upright;
    }

    void begin_page() {
        if (is_begun_) document_.add_page();
        is_begun_ = true;
    }

    void draw_contents() {
        if (options_.contents.empty()) return;
        std::vector<ContentsLine> lines;
        const std::size_t count = sheets_.size() + (keys_.empty() ? 0 : 1);
        int page = 1 + Contents::pages_for(frame_, count);
        for (std::size_t i = 0; i < sheets_.size(); ++i) {
            lines.push_back({heading_text(worksheets_[i]), place_of("sheet-", i), page});
            page += sheets_[i].pages();
        }
        if (!keys_.empty()) lines.push_back({"Answer keys", place_of("key-", 0), page});
        begin_page();
        Contents(frame_, options_.contents, std::move(lines)).draw(document_);
    }

    void bookmark_keys() {
        if (keys_.size() > 1) document_.bookmark("Answer keys", place_of("key-", 0), 0);
    }

    // level -1: a key alone, which is called so.
    void draw_sheet(const LaidOutSheet& sheet, const std::string& place, int level) {
        if (!sheet.is_key) begin_page();
        const std::string title = heading_text(sheet.worksheet);
        document_.bookmark(level < 0       ? "Answer key"
                           : title.empty() ? "Worksheet"
                                           : title,
                           place, std::max(level, 0));
        lode::draw(document_, frame_, sheet, options_, place, document_.pages());
    }

    [[nodiscard]] PrintedPages result() const {
        PrintedPages pages;
        pages.letter_pt = HUGE_VAL;
        pages.list_pt = HUGE_VAL;
        for (const LaidOutSheet& sheet : sheets_) {
            pages.letter_pt = std::min(pages.letter_pt, sheet.layout.letter_pt);
            pages.list_pt = std::min(pages.list_pt, sheet.layout.list_pt);
            if (sheet.has_cut_title)
                pages.notes.push_back(about(sheet) +
                                      "the heading is too long for its place, and ends in an ellipsis.");
            if (sheet.layout.is_list_apart)
                pages.notes.push_back(about(sheet) + "the list has " +
                                      (sheet.more_pages.size() == 1
                                           ? "a page of its own"
                                           : std::to_string(sheet.more_pages.size()) + " pages of its own") +
                                      ": beside the grid both would be too small.");
        }
        for (const LaidOutSheet& key : keys_)
            if (key.layout.letter_pt < least_key_letter_pt)
                pages.notes.push_back(
                    about(key) +
                    "the letters of the answer key are very small; its table tells where words stand.");
        if (options_.key && options_.key_marks == KeyMarks::rings) judge_colours(pages);
        if (options_.large_print) judge_large_print(pages);
        return pages;
    }
    // WCAG 2.2, 1.4.11, of graphics.
    void judge_colours(PrintedPages& pages) const {
        for (const Colour colour : options_.colours)
            if (contrast_ratio(colour, {255, 255, 255}) < least_contrast_of_large_text)
                pages.notes.push_back("rings in " + to_text(colour) + " are hard to see on white paper.");
    }
    void judge_large_print(PrintedPages& pages) const {
        for (const LaidOutSheet& sheet : sheets_) {
            if (sheet.layout.letter_pt >= large_print_pt) continue;
            pages.is_large_enough = false;
            const double cell = large_print_pt / points_a_mm / sheet.letter_share;
            pages.notes.push_back(
                about(sheet) + "its letters are of " + fixed_decimals(sheet.layout.letter_pt, 1) +
                " pt, under the " + fixed_decimals(large_print_pt, 0) +
                " pt of large print. On this page they reach it up to " +
                std::to_string(static_cast<int>(frame_.room().width() / cell)) + " columns.");
        }
    }
    [[nodiscard]] std::string about(const LaidOutSheet& sheet) const {
        const std::string heading = heading_text(sheet.worksheet);
        return sheets_.size() == 1 || heading.empty() ? std::string() : heading + ": ";
    }

    std::span<const Worksheet> worksheets_;
    const PrintOptions& options_;
    PageFrame frame_;
    PdfDocument document_;
    std::vector<LaidOutSheet> sheets_;
    std::vector<LaidOutSheet> keys_;
    bool is_begun_ = false;
};

}  // namespace

Outcome<PrintedPages> print_worksheets(std::span<const Worksheet> worksheets, const PrintOptions& options) {
    if (auto refusal = fault_of(worksheets, options)) return std::move(*refusal);
    auto fonts = options.font.empty() ? PrintFonts::open() : PrintFonts::open(options.font);
    if (!fonts) return fonts.refusal();
    return Printing(worksheets, options, *std::move(fonts)).run();
}

}  // namespace lode
