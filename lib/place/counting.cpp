#include "place/counting.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <numeric>

namespace lode {
namespace {

constexpr std::size_t axis_of(Direction direction) {
    return static_cast<unsigned>(direction) % 4;
}

// The most letters that two words can share where they lie along one line, b beginning in a or where a does.
std::size_t most_shared(const Letters& a, const Letters& b) {
    for (std::size_t start = 0; start < a.size(); ++start) {
        const std::size_t shared = std::min(a.size() - start, b.size());
        if (std::equal(b.begin(), b.begin() + static_cast<std::ptrdiff_t>(shared),
                       a.begin() + static_cast<std::ptrdiff_t>(start)))
            return shared;
    }
    return 0;
}

// Whether the two cannot both lie along a line of so many cells, whichever way they are read.
bool exclude_each_other(const Letters& a, const Letters& b, std::size_t line) {
    const Letters turned(b.rbegin(), b.rend());
    std::size_t shared = 0;
    for (const Letters* other : {&b, &turned})
        shared = std::max({shared, most_shared(a, *other), most_shared(*other, a)});
    return a.size() + b.size() - shared > line;
}

template <class Visit>
void each_number(std::uint64_t set, Visit&& visit) {
    for (; set != 0; set &= set - 1) visit(static_cast<std::size_t>(std::countr_zero(set)));
}

}  // namespace

LineCounting::LineCounting(const PlaceTask& task, const Candidates& candidates)
    : candidates_(candidates), cells_(task.mask.size().cells()) {
    for (const Letters& word : task.words)
        for (const Letter letter : word) letters_ = std::max(letters_, letter + std::size_t{1});
    list_lines(task);
    choose_long_words(task);
    if (!is_useful()) return;
    note_uses(task);
    lines_of_.resize(long_words_.size());
    at_line_.resize(long_words_.size());
    words_on_.resize(lines_.size());
    word_at_.resize(lines_.size());
    allowed_.resize(lines_.size(), ~WordSet{0});
    left_.resize(cells_ * axes * letters_);
    breaks_.resize(cells_ * axes * letters_);
}

void LineCounting::list_lines(const PlaceTask& task) {
    const Size size = task.mask.size();
    for (std::uint32_t axis = 0; axis < axes; ++axis) {
        const Direction direction = all_directions[axis];
        if (!task.directions.contains(direction) && !task.directions.contains(opposite(direction))) continue;
        for (int row = 0; row < size.rows; ++row)
            for (int column = 0; column < size.columns; ++column) {
                if (task.mask.open(moved({row, column}, direction, -1))) continue;
                Line line;
                line.axis = axis;
                for (Cell cell{row, column}; task.mask.open(cell); cell = moved(cell, direction, 1))
                    line.cells.push_back(static_cast<std::uint32_t>(cell.row * size.columns + cell.column));
                if (line.cells.size() > 1) lines_.push_back(std::move(line));
            }
    }
}

// Long words first, each that excludes all that were chosen; and so many that there are not too many lines.
void LineCounting::choose_long_words(const PlaceTask& task) {
    std::size_t longest_line = 0;
    for (const Line& line : lines_) longest_line = std::max(longest_line, line.cells.size());
    std::vector<std::uint32_t> order(task.words.size());
    std::iota(order.begin(), order.end(), 0u);
    const auto length = [&](std::uint32_t word) { return task.words[word].size(); };
    std::stable_sort(order.begin(), order.end(), [&](auto a, auto b) { return length(a) > length(b); });
    for (const std::uint32_t word : order) {
        const bool fits = std::all_of(long_words_.begin(), long_words_.end(), [&](std::uint32_t other) {
            return exclude_each_other(task.words[word], task.words[other], longest_line);
        });
        if (fits && long_words_.size() < most_long_words) long_words_.push_back(word);
    }
    const auto is_used = [&](const Line& line) { return line.cells.size() >= length(long_words_.back()); };
    while (!long_words_.empty() &&
           static_cast<std::size_t>(std::count_if(lines_.begin(), lines_.end(), is_used)) > most_lines)
        long_words_.pop_back();
    if (!is_useful()) return;
    std::erase_if(lines_, [&](const Line& line) { return !is_used(line); });

    number_.assign(task.words.size(), none);
    excludes_.assign(task.words.size(), 0);
    for (std::size_t number = 0; number < long_words_.size(); ++number) {
        number_[long_words_[number]] = static_cast<std::uint8_t>(number);
        for (std::uint32_t word = 0; word < task.words.size(); ++word)
            if (word != long_words_[number] &&
                exclude_each_other(task.words[word], task.words[long_words_[number]], longest_line))
                excludes_[word] |= WordSet{1} << number;
    }
}

void LineCounting::note_uses(const PlaceTask& task) {
    line_at_.assign(cells_ * axes, none);
    place_on_line_.assign(cells_ * axes, 0);
    for (std::size_t line = 0; line < lines_.size(); ++line)
        for (std::size_t place = 0; place < lines_[line].cells.size(); ++place) {
            const std::size_t at = lines_[line].cells[place] * axes + lines_[line].axis;
            line_at_[at] = static_cast<std::uint8_t>(line);
            place_on_line_[at] = static_cast<std::uint16_t>(place);
        }
    first_use_.resize(candidates_.blocks() * 64);
    axis_of_.resize(candidates_.blocks() * 64);
    touched_by_.resize(candidates_.blocks() * 64);
    for (std::uint32_t word = 0; word < task.words.size(); ++word)
        each_bit(candidates_.all().data(), candidates_.runs()[word], [&](Candidate candidate) {
            axis_of_[candidate] =
                static_cast<std::uint8_t>(axis_of(candidates_.placement(candidate).direction));
            first_use_[candidate] = static_cast<std::uint32_t>(uses_.size());
            const auto cells = candidates_.cells(candidate);
            for (std::size_t at = 0; at < cells.size(); ++at) {
                uses_.push_back(static_cast<std::uint32_t>(cells[at] * letters_ + task.words[word][at]));
                for (std::size_t axis = 0; axis < axes; ++axis)
                    if (const std::uint8_t line = line_at_[cells[at] * axes + axis]; line != none)
                        touched_by_[candidate] |= LineSet{1} << line;
            }
        });
}

// Which lines the sets leave to each long word that is to come, and which of them a letter in a cell of a
// line leaves there: those with a candidate on it that has the letter in the cell or does not reach it.
void LineCounting::offer_lines(const Block* set, std::span<const std::uint32_t> to_come) {
    present_ = 0;
    std::fill(words_on_.begin(), words_on_.end(), WordSet{0});
    for (const Line& line : lines_)
        for (const std::uint32_t cell : line.cells)
            std::fill_n(left_.begin() + static_cast<std::ptrdiff_t>(row_of(cell, line.axis)), letters_,
                        WordSet{0});
    for (const std::uint32_t word : to_come) {
        if (number_[word] == none) continue;
        present_ |= WordSet{1} << number_[word];
        offer_lines_of(number_[word], set);
    }
}

void LineCounting::offer_lines_of(std::size_t number, const Block* set) {
    struct Reach {
        std::size_t first;  // the cells that all of its candidates on the line cover
        std::size_t end;
    };
    std::array<Reach, most_lines> reach;
    const WordSet bit = WordSet{1} << number;
    const std::uint32_t word = long_words_[number];
    LineSet lines = 0;
    each_bit(set, candidates_.runs()[word], [&](Candidate candidate) {
        ++looks_;
        const auto cells = candidates_.cells(candidate);
        const std::size_t axis = axis_of_[candidate];
        const std::size_t line = line_at_[cells[0] * axes + axis];
        const std::uint32_t* use = uses_.data() + first_use_[candidate];
        for (std::size_t at = 0; at < cells.size(); ++at, ++use)
            left_[row_of(cells[at], axis) + *use - cells[at] * letters_] |= bit;
        const std::size_t one_end = place_on_line_[cells[0] * axes + axis];
        const std::size_t other_end = place_on_line_[cells[cells.size() - 1] * axes + axis];
        const Reach own{std::min(one_end, other_end), std::max(one_end, other_end) + 1};
        const bool is_first = (lines >> line & 1) == 0;
        reach[line] = is_first
                          ? own
                          : Reach{std::max(reach[line].first, own.first), std::min(reach[line].end, own.end)};
        lines |= LineSet{1} << line;
    });
    lines_of_[number] = lines;
    each_number(lines, [&](std::size_t line) {
        words_on_[line] |= bit;
        const auto& cells = lines_[line].cells;
        for (std::size_t place = 0; place < cells.size(); ++place) {
            if (place >= reach[line].first && place < reach[line].end) continue;
            WordSet* const row = left_.data() + row_of(cells[place], lines_[line].axis);
            for (std::size_t letter = 0; letter < letters_; ++letter) row[letter] |= bit;
        }
    });
}

// Gives the word a line, moving others to other lines where that makes room.
bool LineCounting::augment(std::size_t number) {
    const WordSet bit = WordSet{1} << number;
    for (LineSet rest = lines_of_[number] & ~seen_; rest != 0; rest &= (rest - 1) & ~seen_) {
        const auto line = static_cast<std::size_t>(std::countr_zero(rest));
        if ((allowed_[line] & bit) == 0) continue;
        seen_ |= LineSet{1} << line;
        if (word_at_[line] != none && !augment(word_at_[line])) continue;
        word_at_[line] = static_cast<std::uint8_t>(number);
        return true;
    }
    return false;
}

bool LineCounting::match_all() {
    std::fill(word_at_.begin(), word_at_.end(), none);
    bool all = true;
    each_number(present_, [&](std::size_t number) {
        seen_ = 0;
        all = all && augment(number);
    });
    if (!all) return false;
    free_ = 0;
    for (std::size_t line = 0; line < lines_.size(); ++line)
        if (word_at_[line] == none)
            free_ |= LineSet{1} << line;
        else
            at_line_[word_at_[line]] = static_cast<std::uint8_t>(line);
    return true;
}

// Most candidates break nothing, and a look into this table for each of their letters says so.
void LineCounting::note_breaks() {
    std::fill(breaks_.begin(), breaks_.end(), WordSet{0});
    for (std::size_t line = 0; line < lines_.size(); ++line) {
        if (word_at_[line] == none) continue;
        const WordSet bit = WordSet{1} << word_at_[line];
        for (const std::uint32_t cell : lines_[line].cells) {
            const WordSet* const row = left_.data() + row_of(cell, lines_[line].axis);
            for (std::size_t own = 0; own < axes; ++own) {
                if (own == lines_[line].axis) continue;
                WordSet* const to = breaks_.data() + (own * cells_ + cell) * letters_;
                for (std::size_t letter = 0; letter < letters_; ++letter) to[letter] |= bit & ~row[letter];
            }
        }
    }
}

LineCounting::WordSet LineCounting::broken_by(Candidate candidate, std::uint32_t word) const {
    const auto cells = candidates_.cells(candidate);
    const std::size_t own = axis_of_[candidate];
    const WordSet* const table = breaks_.data() + own * cells_ * letters_;
    const std::uint32_t* const uses = uses_.data() + first_use_[candidate];
    WordSet broken = 0;
    for (std::size_t at = 0; at < cells.size(); ++at) broken |= table[uses[at]];
    const std::uint8_t line = line_at_[cells[0] * axes + own];
    if (line != none && word_at_[line] != none) broken |= WordSet{1} << word_at_[line] & excludes_[word];
    return number_[word] == none ? broken : broken & ~(WordSet{1} << number_[word]);
}

// The way that is tried first: a free line for each that the candidate has no part in.
bool LineCounting::find_free_lines(Candidate candidate, WordSet broken) const {
    LineSet free = free_ & ~touched_by_[candidate];
    for (; broken != 0; broken &= broken - 1) {
        const LineSet open = free & lines_of_[static_cast<std::size_t>(std::countr_zero(broken))];
        if (open == 0) return false;
        free &= ~(open & (~open + 1));
    }
    return true;
}

bool LineCounting::can_match_beside(Candidate candidate, std::uint32_t word, WordSet broken) {
    const auto cells = candidates_.cells(candidate);
    const std::size_t own = axis_of_[candidate];
    const std::uint32_t* const uses = uses_.data() + first_use_[candidate];
    LineSet touched = 0;
    const auto allow = [&](std::uint8_t line, WordSet words) {
        allowed_[line] = words;
        touched |= LineSet{1} << line;
    };
    for (std::size_t at = 0; at < cells.size(); ++at)
        for (std::size_t axis = 0; axis < axes; ++axis) {
            const std::uint8_t line = line_at_[cells[at] * axes + axis];
            if (line == none || axis == own) continue;
            allow(line, left_[row_of(cells[at], axis) + uses[at] - cells[at] * letters_]);
        }
    if (const std::uint8_t line = line_at_[cells[0] * axes + own]; line != none)
        allow(line, ~excludes_[word]);

    kept_word_at_ = word_at_;
    each_number(broken, [&](std::size_t number) { word_at_[at_line_[number]] = none; });
    if (number_[word] != none) word_at_[at_line_[number_[word]]] = none;
    bool all = true;
    each_number(broken, [&](std::size_t number) {
        seen_ = 0;
        all = all && augment(number);
    });
    word_at_.swap(kept_word_at_);
    each_number(touched, [&](std::size_t line) { allowed_[line] = ~WordSet{0}; });
    return all;
}

LineCounting::Verdict LineCounting::narrow_word(Block* set, std::uint32_t word) {
    bool changed = false;
    bool is_any_left = false;
    each_bit(set, candidates_.runs()[word], [&](Candidate candidate) {
        ++looks_;
        const WordSet broken = broken_by(candidate, word);
        if (broken == 0 || find_free_lines(candidate, broken) || can_match_beside(candidate, word, broken)) {
            is_any_left = true;
            return;
        }
        set[candidate / 64] &= ~(Block{1} << (candidate % 64));
        changed = true;
    });
    if (!is_any_left) return Verdict::impossible;
    return changed ? Verdict::narrowed : Verdict::unchanged;
}

LineCounting::Verdict LineCounting::narrow(Block* set, std::span<const std::uint32_t> to_come) {
    if (!is_useful()) return Verdict::unchanged;
    offer_lines(set, to_come);
    if (!match_all()) return Verdict::impossible;
    note_breaks();
    Verdict verdict = Verdict::unchanged;
    for (const std::uint32_t word : to_come) {
        const Verdict own = narrow_word(set, word);
        if (own == Verdict::impossible) return own;
        if (own == Verdict::narrowed) verdict = own;
    }
    return verdict;
}

}  // namespace lode
