#include "print/list_columns.hpp"

#include <algorithm>
#include <sstream>

namespace lode {

namespace {

constexpr double gap_em = 1.6;
constexpr std::size_t columns_at_most = 12;  // more are hard to follow

double em_mm(double size_pt) {
    return size_pt / points_a_mm;
}

double pitch_mm(double size_pt) {
    return PdfDocument::line_pitch({size_pt, false, ink});
}

double equal_width(double width_mm, std::size_t columns, double size_pt) {
    const auto count = static_cast<double>(columns);
    return (width_mm - (count - 1) * gap_em * em_mm(size_pt)) / count;
}

// Entries, by their numbers of lines, in columns of so many lines, as far as the columns go.
std::vector<ListColumn> filled(const std::vector<std::size_t>& lines, std::size_t first,
                               std::size_t most_columns, std::size_t most_lines) {
    std::vector<ListColumn> columns;
    std::size_t used = most_lines;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        if (used + lines[i] > most_lines) {
            if (columns.size() == most_columns) break;
            columns.push_back({first + i, 0});
            used = 0;
        }
        ++columns.back().count;
        used += lines[i];
    }
    return columns;
}

std::size_t entries_in(const std::vector<ListColumn>& columns) {
    std::size_t count = 0;
    for (const ListColumn& column : columns) count += column.count;
    return count;
}

std::size_t highest(const std::vector<ListColumn>& columns, const std::vector<std::size_t>& lines,
                    std::size_t first) {
    std::size_t most = 0;
    for (const ListColumn& column : columns) {
        std::size_t sum = 0;
        for (std::size_t i = column.first; i < column.first + column.count; ++i) sum += lines[i - first];
        most = std::max(most, sum);
    }
    return most;
}

}  // namespace

ListFlow::ListFlow(const PdfDocument& document, std::vector<std::string> entries, double fixed_em,
                   double head_lines)
    : document_(document), entries_(std::move(entries)), fixed_em_(fixed_em), head_lines_(head_lines) {
    const TextStyle one_em{points_a_mm, false, ink};
    for (const std::string& entry : entries_) {
        widths_em_.push_back(document_.width_of(entry, one_em));
        widest_em_ = std::max(widest_em_, widths_em_.back());
        std::istringstream pieces(entry.substr(0, PrintFonts::most_line_bytes));
        for (std::string piece; pieces >> piece;)
            widest_piece_em_ = std::max(widest_piece_em_, document_.width_of(piece, one_em));
    }
}

// A row of a table must not be drawn out so far that the eye loses it.
double ListFlow::column_width(double width_mm, std::size_t columns, double size_pt) const {
    const double equal = equal_width(width_mm, columns, size_pt);
    return fixed_em_ > 0 ? std::min(equal, (widest_em_ + fixed_em_ + 2) * em_mm(size_pt)) : equal;
}

double ListFlow::text_width(double column_mm, double size_pt) const {
    return column_mm - fixed_em_ * em_mm(size_pt);
}

std::size_t ListFlow::most_columns(double width_mm, double size_pt) const {
    std::size_t columns = std::min(columns_at_most, std::max<std::size_t>(entries_.size(), 1));
    while (columns > 1 && text_width(column_width(width_mm, columns, size_pt), size_pt) <
                              std::max(widest_piece_em_, 1.0) * em_mm(size_pt))
        --columns;
    return columns;
}

std::vector<std::size_t> ListFlow::line_counts(std::size_t first, double column_mm, double size_pt) const {
    std::vector<std::size_t> counts;
    const double width = text_width(column_mm, size_pt);
    for (std::size_t i = first; i < entries_.size(); ++i)
        counts.push_back(widths_em_[i] * em_mm(size_pt) <= width
                             ? 1
                             : document_.wrapped(entries_[i], width, {size_pt, false, ink}).size());
    return counts;
}

ListColumns ListFlow::lowest(std::size_t first, double width_mm, double size_pt) const {
    ListColumns best;
    const std::size_t most = most_columns(width_mm, size_pt);
    for (std::size_t columns = 1; columns <= most; ++columns) {
        const double width = column_width(width_mm, columns, size_pt);
        const std::vector<std::size_t> lines = line_counts(first, width, size_pt);
        std::size_t all = 0;
        std::size_t highest_entry = 1;
        for (const std::size_t count : lines) {
            all += count;
            highest_entry = std::max(highest_entry, count);
        }
        std::size_t height = std::max(highest_entry, (all + columns - 1) / columns);
        while (entries_in(filled(lines, first, columns, height)) < lines.size()) ++height;
        const double height_mm = (static_cast<double>(height) + head_lines_) * pitch_mm(size_pt);
        if (best.columns.empty() || height_mm < best.height_mm)
            best = {size_pt, width, gap_em * em_mm(size_pt), height_mm,
                    filled(lines, first, columns, height)};
    }
    return best;
}

ListColumns ListFlow::narrowest(double height_mm, double size_pt) const {
    const double held = height_mm / pitch_mm(size_pt) - head_lines_;
    const std::size_t most_lines = held < 1 ? 1 : static_cast<std::size_t>(held);
    const std::size_t columns = std::max<std::size_t>((entries_.size() + most_lines - 1) / most_lines, 1);
    // Even columns, not full ones and a rest.
    const std::size_t lines = (entries_.size() + columns - 1) / columns;
    const std::vector<std::size_t> ones(entries_.size(), 1);
    return {size_pt, (std::max(widest_em_, 1.0) + fixed_em_) * em_mm(size_pt), gap_em * em_mm(size_pt),
            (static_cast<double>(lines) + head_lines_) * pitch_mm(size_pt), filled(ones, 0, columns, lines)};
}

ListColumns ListFlow::as_many(std::size_t first, double width_mm, double height_mm, double size_pt) const {
    ListColumns whole = lowest(first, width_mm, size_pt);
    if (whole.height_mm <= height_mm) return whole;
    const double held = height_mm / pitch_mm(size_pt) - head_lines_;
    const std::size_t most_lines = held < 1 ? 1 : static_cast<std::size_t>(held);
    ListColumns best;
    for (std::size_t columns = 1; columns <= most_columns(width_mm, size_pt); ++columns) {
        const double width = column_width(width_mm, columns, size_pt);
        const std::vector<std::size_t> lines = line_counts(first, width, size_pt);
        // An entry that is higher than the page is cut where it is set.
        std::vector<std::size_t> cut = lines;
        for (std::size_t& count : cut) count = std::min(count, most_lines);
        std::vector<ListColumn> some = filled(cut, first, columns, most_lines);
        if (best.columns.empty() || entries_in(some) > best.entries()) {
            const std::size_t height = highest(some, cut, first);
            best = {size_pt, width, gap_em * em_mm(size_pt),
                    (static_cast<double>(height) + head_lines_) * pitch_mm(size_pt), std::move(some)};
        }
    }
    return best;
}

std::vector<std::string> ListFlow::lines(std::size_t entry, const ListColumns& in) const {
    const double width = text_width(in.column_mm, in.size_pt);
    // A hair of room, so that what was measured in em is not broken by a rounding.
    if (widths_em_[entry] * em_mm(in.size_pt) <= width + 1e-6) return {entries_[entry]};
    return document_.wrapped(entries_[entry], width, {in.size_pt, false, ink});
}

}  // namespace lode
