#include "find/covered_lines.hpp"

#include <algorithm>
#include <tuple>

namespace lode {

CoveredLines::Span CoveredLines::span_of(const Copy& copy) {
    const int axis = static_cast<int>(copy.direction) % 4;
    const Cell first = copy.first;
    const Cell last = copy.last();
    const auto span = [axis](int line, int one, int other) {
        return Span{axis, line, std::min(one, other), std::max(one, other)};
    };
    switch (static_cast<Direction>(axis)) {
        case Direction::right:
            return span(first.row, first.column, last.column);
        case Direction::down:
            return span(first.column, first.row, last.row);
        case Direction::down_right:
            return span(first.column - first.row, first.row, last.row);
        default:
            return span(first.column + first.row, first.row, last.row);
    }
}

CoveredLines::CoveredLines(std::vector<Copy> copies) {
    spans_.reserve(copies.size());
    // A copy of one letter lies in a line of every axis.
    for (Copy copy : copies) {
        const bool any_axis = copy.length == 1;
        for (int axis = 0; axis < (any_axis ? 4 : 1); ++axis) {
            if (any_axis) copy.direction = static_cast<Direction>(axis);
            spans_.push_back(span_of(copy));
        }
    }
    std::sort(spans_.begin(), spans_.end(), [](const Span& a, const Span& b) {
        return std::tie(a.axis, a.line, a.start) < std::tie(b.axis, b.line, b.start);
    });
    for (std::size_t at = 1; at < spans_.size(); ++at)
        if (spans_[at].axis == spans_[at - 1].axis && spans_[at].line == spans_[at - 1].line)
            spans_[at].end = std::max(spans_[at].end, spans_[at - 1].end);
}

bool CoveredLines::holds(const Copy& copy) const {
    const Span sought = span_of(copy);
    // The last span of the line that begins no later knows how far any of them reaches.
    const auto after =
        std::upper_bound(spans_.begin(), spans_.end(), sought, [](const Span& a, const Span& b) {
            return std::tie(a.axis, a.line, a.start) < std::tie(b.axis, b.line, b.start);
        });
    if (after == spans_.begin()) return false;
    const Span& before = *std::prev(after);
    return before.axis == sought.axis && before.line == sought.line && before.end >= sought.end;
}

}  // namespace lode
