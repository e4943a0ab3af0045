// What the film holds, what was changed, how the work is done and what to take care of: two columns of short
// paragraphs.

#include <algorithm>

#include "art/number.hpp"
#include "cut/job_sheet_page.hpp"

namespace lode {

namespace {

constexpr double gutter = 6;
constexpr double indent = 3;
constexpr double between = 0.5;  // paragraphs
constexpr double before_heading = 2;
constexpr std::size_t most_findings = 8;
constexpr std::size_t most_sentences = 10;  // of a kind
constexpr std::size_t most_lines = 6;       // of a paragraph
constexpr std::size_t most_bytes = 600;
constexpr std::size_t most_name_bytes = 120;  // of a piece

struct Paragraph {
    std::string text;
    bool heading = false;
    bool loud = false;
};

std::string sentence(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return clipped(text, most_bytes);
}

// Both narrowest ones, of all layers.
std::string narrowest_text(const Measures& measures) {
    std::optional<double> stroke;
    std::optional<double> gap;
    std::string stroke_at;
    std::string gap_at;
    for (const LayerMeasures& layer : measures.layers) {
        if (layer.narrowest_stroke_mm && (!stroke || *layer.narrowest_stroke_mm < *stroke)) {
            stroke = layer.narrowest_stroke_mm;
            stroke_at = layer.narrowest_stroke_at;
        }
        if (layer.narrowest_gap_mm && (!gap || *layer.narrowest_gap_mm < *gap)) {
            gap = layer.narrowest_gap_mm;
            gap_at = layer.narrowest_gap_at;
        }
    }
    const auto at = [](const std::string& piece) {
        return piece.empty() ? "" : " (" + clipped(piece, most_name_bytes) + ")";
    };
    std::string text;
    if (stroke) text += "narrowest stroke " + both_units(*stroke) + at(stroke_at);
    if (gap) text += (text.empty() ? "" : ", ") + ("narrowest gap " + both_units(*gap)) + at(gap_at);
    return text;
}

void append_sentences(std::vector<Paragraph>& paragraphs, const std::string& heading,
                      const std::vector<std::string>& sentences) {
    if (sentences.empty()) return;
    if (!heading.empty()) paragraphs.push_back({heading, true});
    for (std::size_t i = 0; i < std::min(sentences.size(), most_sentences); ++i)
        paragraphs.push_back({clipped(sentences[i], most_bytes)});
    if (sentences.size() > most_sentences)
        paragraphs.push_back({"And " + std::to_string(sentences.size() - most_sentences) + " more."});
}

void append_findings(std::vector<Paragraph>& paragraphs, const JobSheet& sheet) {
    const Measures& measures = sheet.measures;
    const std::string asked = "Asked for: strokes of " + both_units(measures.least_stroke_mm) +
                              " and gaps of " + both_units(measures.least_gap_mm) + " at the least.";
    paragraphs.push_back({"What the film holds", true});
    const std::string narrowest = narrowest_text(measures);
    if (measures.holds()) {
        paragraphs.push_back({"Everything holds" + (narrowest.empty() ? "." : ": " + narrowest + ".")});
        paragraphs.push_back({asked});
        return;
    }
    std::size_t pieces = 0;
    pieces = measures.thin.size();
    paragraphs.push_back(
        {std::to_string(pieces) + (pieces == 1 ? " place is" : " places are") + " too thin. " + asked, false,
         true});
    for (std::size_t i = 0; i < std::min(measures.thin.size(), most_findings); ++i)
        paragraphs.push_back({sentence(finding_text(measures.thin[i]))});
    if (measures.thin.size() > most_findings)
        paragraphs.push_back(
            {"And " + std::to_string(measures.thin.size() - most_findings) + " more places."});
    append_sentences(paragraphs, "Ways out", sheet.ways_out);
}

// Common practice, no source.
std::vector<std::string> hints(const JobSheet& sheet) {
    const bool second = sheet.artwork.surface == Surface::second;
    std::vector<std::string> list;
    list.emplace_back(
        "Try a small shape in the waste first: the blade should part the film and only mark its liner.");
    list.emplace_back(
        "Weed in good light. Lift counters one by one; hold thin limbs down, or they come up with the "
        "waste.");
    list.emplace_back("Lay transfer tape over the weeded film and rub it down with a squeegee.");
    list.emplace_back(
        "Pull the liner away from the film, slowly and at a slant, not the film from the liner.");
    list.emplace_back(
        second ? "Clean the back of the blank. With the guide below it, showing through, lay each layer by "
                 "it, in the "
                 "order of application."
               : "Clean the front of the blank. Lay each layer by the guide, in the order of application.");
    list.emplace_back("Rub down from the middle outwards, then pull the tape off flat over itself, slowly.");
    if (!sheet.artwork.registration.empty())
        list.emplace_back(
            "Marks beside the blank lie in the same place in every layer: lay them one over the other, and "
            "lift "
            "them off at the end.");
    return list;
}

std::vector<std::string> cautions() {
    return {
        "Blades and weeding hooks cut: work away from your hand and body, keep blades sharp, and put them "
        "away.",
        "Film that contains PVC must never go into a laser or a hot-wire cutter: heated, it gives off "
        "hydrogen chloride.",
        "Isopropyl alcohol can craze acrylic that is under stress: try it on a corner first.",
        "Loose letters are small parts: keep them, and the waste, from children under three.",
        "Hang the piece with fixings that are rated for its weight.",
        "What the makers of machine, film and blank say, and local rules, come before anything on this "
        "sheet."};
}

std::vector<Paragraph> paragraphs_of(const JobSheet& sheet) {
    std::vector<Paragraph> paragraphs;
    append_findings(paragraphs, sheet);
    append_sentences(paragraphs, "Changed, so that it holds", sheet.changed);
    std::vector<std::string> notes = sheet.artwork.notes;
    if (sheet.plan) notes.insert(notes.end(), sheet.plan->plan.notes.begin(), sheet.plan->plan.notes.end());
    append_sentences(paragraphs, "Notes", notes);
    append_sentences(paragraphs, "Weeding and laying (common practice)", hints(sheet));
    append_sentences(paragraphs, "Take care", cautions());
    return paragraphs;
}

// Sets paragraphs from the first on into a column, as many as it holds; gives the one after the last, and how
// much of the column was used.
struct Filled {
    std::size_t next = 0;
    double used = 0;
};

class Columns {
  public:
    Columns(SheetPages& pages, std::vector<Paragraph> paragraphs, double width)
        : pages_(pages), paragraphs_(std::move(paragraphs)), width_(width) {
        for (const Paragraph& one : paragraphs_) {
            const std::size_t lines =
                std::min(pages_.document().wrapped(one.text, text_width(one), style(one)).size(), most_lines);
            heights_.push_back(static_cast<double>(lines) * PdfDocument::line_pitch(style(one)));
        }
    }

    [[nodiscard]] std::size_t count() const { return paragraphs_.size(); }

    [[nodiscard]] Filled fill(std::size_t first, double height) const {
        Filled filled{first, 0};
        for (; filled.next < count(); ++filled.next) {
            const double more = space_before(first, filled.next) + heights_[filled.next];
            // A heading stays with what it heads.
            const double with = paragraphs_[filled.next].heading && filled.next + 1 < count()
                                    ? between + heights_[filled.next + 1]
                                    : 0;
            if (filled.next > first && filled.used + more + with > height) break;
            filled.used += more;
        }
        return filled;
    }

    void set(std::size_t first, std::size_t end, Point corner) const {
        for (std::size_t i = first; i < end; ++i) {
            const Paragraph& one = paragraphs_[i];
            corner.y += space_before(first, i);
            if (!one.heading && pages_.drawing())
                pages_.document().fill(capsule({corner.x + 0.9, corner.y + 0.6 * one_line()},
                                               {corner.x + 0.9, corner.y + 0.6 * one_line()}, 0.35),
                                       one.loud ? alert : quiet);
            pages_.paragraph(one.text, {corner.x + width_ - text_width(one), corner.y}, text_width(one),
                             style(one), most_lines);
            corner.y += heights_[i];
        }
    }

  private:
    [[nodiscard]] double one_line() const { return PdfDocument::line_pitch(pages_.body()); }
    [[nodiscard]] double text_width(const Paragraph& one) const {
        return one.heading ? width_ : width_ - indent;
    }
    [[nodiscard]] TextStyle style(const Paragraph& one) const {
        if (one.heading) return {pages_.look().body_pt + 0.5, true, ink};
        return one.loud ? TextStyle{pages_.look().body_pt, true, alert} : pages_.body();
    }
    [[nodiscard]] double space_before(std::size_t first, std::size_t i) const {
        if (i == first) return 0;
        return paragraphs_[i].heading ? before_heading : between;
    }

    SheetPages& pages_;
    std::vector<Paragraph> paragraphs_;
    double width_;
    std::vector<double> heights_;
};

}  // namespace

void set_advice(SheetPages& pages, const JobSheet& sheet) {
    const double width = (pages.width() - gutter) / 2;
    const Columns columns(pages, paragraphs_of(sheet), width);
    constexpr double fewest = 26;
    constexpr double above = 4;
    pages.need(above + fewest);
    pages.y += above;
    if (pages.drawing())
        pages.document().line({pages.left(), pages.y - above / 2},
                              {pages.left() + pages.width(), pages.y - above / 2}, {0.35, ink, {}});
    std::size_t first = 0;
    while (first < columns.count()) {
        // The lowest columns that hold all that is left, or else all the room there is.
        double height = std::min(10.0, pages.room());
        const auto end = [&] { return columns.fill(columns.fill(first, height).next, height).next; };
        while (end() < columns.count() && height < pages.room()) height = std::min(height + 1, pages.room());
        const Filled left = columns.fill(first, height);
        const Filled right = columns.fill(left.next, height);
        columns.set(first, left.next, {pages.left(), pages.y});
        columns.set(left.next, right.next, {pages.left() + width + gutter, pages.y});
        pages.y += std::max(left.used, right.used);
        first = right.next;
        if (first < columns.count()) pages.new_page();
    }
}

}  // namespace lode
