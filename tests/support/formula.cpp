#include "support/formula.hpp"

#include <algorithm>
#include <cstdlib>

namespace lode::test {

Formula::Formula(const Task& task) : task_(task), listed_(task.listed()) {
    true_ = variable();
    add({true_});
    for (const auto& word : listed_) letters_.insert(word.begin(), word.end());
    letters_.insert(task.demands.message.begin(), task.demands.message.end());
    one_letter_a_cell();
    for (std::size_t word = 0; word < task.words.size(); ++word) one_placement(word);
    for (std::size_t word = 0; word < listed_.size(); ++word) copies(word);
    for (const auto& word : task.avoided) no_copy(word);
    pins();
    cover();
    spacing();
    Clause crossed;
    for (const auto& [cell, literal] : crossed_) crossed.push_back(literal);
    keep_within(crossed, task.demands.crossings);
    if (task.demands.leftover) leftover(*task.demands.leftover);
    if (!task.demands.message.empty()) message();
    shares();
    before();
}

std::string Formula::dimacs() const {
    std::string text = "p cnf " + std::to_string(variables_) + " " + std::to_string(clauses_.size()) + "\n";
    for (const auto& clause : clauses_) {
        for (const int literal : clause) text += std::to_string(literal) + " ";
        text += "0\n";
    }
    return text;
}

int Formula::holds(std::pair<int, int> cell, Letter letter) {
    int& found = holds_[{cell, letter}];
    if (found == 0) found = variable();
    return found;
}

int Formula::any_of(const Clause& literals) {
    const int any = variable();
    Clause some = literals;
    some.push_back(-any);
    add(some);
    for (const int literal : literals) add({-literal, any});
    return any;
}

// The sequential counter of Sinz, "Towards an optimal CNF encoding of Boolean cardinality constraints", CP
// 2005, LNCS 3709; in both directions, since least and exact numbers are asked for as well.
Formula::Counts Formula::count(const Clause& literals, std::size_t most) {
    Counts counts{{true_}};
    counts[0].resize(most + 1, -true_);
    for (const int literal : literals) {
        const auto last = counts.back();
        auto& next = counts.emplace_back();
        next.push_back(true_);
        for (std::size_t number = 1; number <= most; ++number) {
            const int reached = variable();
            add({-last[number], reached});
            add({-literal, -last[number - 1], reached});
            add({-reached, last[number], literal});
            add({-reached, last[number], last[number - 1]});
            next.push_back(reached);
        }
    }
    return counts;
}

void Formula::keep_within(const Clause& literals, const Range& range) {
    if (range.least > literals.size()) {
        add({-true_});
        return;
    }
    const bool is_capped = range.most < literals.size();
    if (range.least == 0 && !is_capped) return;
    const auto counts = count(literals, is_capped ? std::max(range.least, range.most + 1) : range.least);
    add({counts.back()[range.least]});
    if (is_capped) add({-counts.back()[range.most + 1]});
}

// Every place on open cells in which something of this length could be read, in any direction.
std::vector<std::pair<Placement, Formula::Cells>> Formula::everywhere(std::size_t length) const {
    std::vector<std::pair<Placement, Cells>> all;
    for (const auto& [row, column] : open_cells(false))
        for (const Direction direction : all_directions) {
            Cells cells = cells_from(task_.mask.size(), {row, column}, direction, static_cast<int>(length));
            if (!cells.empty() && std::all_of(cells.begin(), cells.end(), [&](const auto& cell) {
                    return task_.mask.open({cell.first, cell.second});
                }))
                all.emplace_back(Placement{{row, column}, direction}, std::move(cells));
        }
    return all;
}

Formula::Cells Formula::open_cells(bool from_right) const {
    Cells cells;
    for (int row = 0; row < task_.mask.size().rows; ++row)
        for (int step = 0; step < task_.mask.size().columns; ++step) {
            const int column = from_right ? task_.mask.size().columns - 1 - step : step;
            if (task_.mask.open({row, column})) cells.emplace_back(row, column);
        }
    return cells;
}

void Formula::one_letter_a_cell() {
    for (const auto& cell : open_cells(false))
        for (auto a = letters_.begin(); a != letters_.end(); ++a)
            for (auto b = std::next(a); b != letters_.end(); ++b) add({-holds(cell, *a), -holds(cell, *b)});
}

void Formula::one_placement(std::size_t word) {
    const Letters& letters = task_.words[word];
    auto& choices = choices_.emplace_back();
    Clause some;
    for (auto& [placement, cells] : everywhere(letters.size())) {
        if (!task_.directions.contains(placement.direction)) continue;
        some.push_back(variable());
        for (std::size_t at = 0; at < cells.size(); ++at) add({-some.back(), holds(cells[at], letters[at])});
        choices.push_back({some.back(), placement, std::move(cells)});
    }
    add(some);
    keep_within(some, {0, 1});
}

// Where all letters of a listed word can be read, its own placement covers those cells or another word's
// placement brings them; and of those that might, one alone does.
void Formula::copies(std::size_t listed) {
    struct Cause {
        std::size_t word;
        int variable;
    };
    std::map<CellSet, std::vector<Cause>> causes;
    for (std::size_t outer = 0; outer < choices_.size(); ++outer) {
        const std::vector<std::size_t> starts =
            outer == listed ? std::vector<std::size_t>{0} : places_inside(listed_[listed], listed_[outer]);
        for (const Choice& choice : choices_[outer])
            for (const auto start : starts) {
                const auto first = choice.cells.begin() + static_cast<std::ptrdiff_t>(start);
                const CellSet cells(first, first + static_cast<std::ptrdiff_t>(listed_[listed].size()));
                causes[cells].push_back({outer, choice.variable});
            }
    }
    for (const auto& [cells, some] : causes)
        for (std::size_t a = 0; a < some.size(); ++a)
            for (std::size_t b = a + 1; b < some.size(); ++b)
                if (some[a].word != some[b].word) add({-some[a].variable, -some[b].variable});
    for (const auto& [placement, cells] : everywhere(listed_[listed].size())) {
        Clause clause;
        for (std::size_t at = 0; at < cells.size(); ++at)
            clause.push_back(-holds(cells[at], listed_[listed][at]));
        const auto own = causes.find(CellSet(cells.begin(), cells.end()));
        if (own != causes.end())
            for (const Cause& cause : own->second) clause.push_back(cause.variable);
        add(clause);
    }
}

void Formula::no_copy(const Letters& word) {
    for (const auto& [placement, cells] : everywhere(word.size())) {
        Clause clause;
        for (std::size_t at = 0; at < cells.size(); ++at) clause.push_back(-holds(cells[at], word[at]));
        add(clause);
    }
}

// Which cells are covered by each word, by any, and by two or more.
void Formula::cover() {
    const auto cells = open_cells(false);
    for (const auto& choices : choices_) {
        auto& covers = covers_.emplace_back();
        std::map<std::pair<int, int>, Clause> by;
        for (const Choice& choice : choices)
            for (const auto& cell : choice.cells) by[cell].push_back(choice.variable);
        for (const auto& cell : cells) covers[cell] = any_of(by[cell]);
    }
    for (const auto& cell : cells) {
        Clause words;
        for (const auto& covers : covers_) words.push_back(covers.at(cell));
        const auto counts = count(words, 2);
        covered_[cell] = counts.back()[1];
        crossed_[cell] = counts.back()[2];
    }
}

// The placement itself; of a palindrome also the one that reads it from its other end.
void Formula::pins() {
    const auto& pins = task_.demands.pins;
    for (std::size_t word = 0; word < pins.size(); ++word) {
        if (!pins[word]) continue;
        for (const Choice& choice : choices_[word])
            if (!same_letters_there(task_, word, *pins[word], choice.placement)) add({-choice.variable});
    }
}

void Formula::spacing() {
    const int spacing = task_.demands.spacing;
    if (spacing == 0) return;
    for (std::size_t a = 0; a < covers_.size(); ++a)
        for (std::size_t b = 0; b < covers_.size(); ++b) {
            if (a == b) continue;
            for (const auto& [cell, covers] : covers_[a])
                for (const auto& [other, covers_other] : covers_[b])
                    if (std::abs(cell.first - other.first) <= spacing &&
                        std::abs(cell.second - other.second) <= spacing)
                        add({-covers, -covers_other});
        }
}

void Formula::leftover(std::size_t cells) {
    Clause left;
    for (const auto& [cell, covered] : covered_) left.push_back(-covered);
    keep_within(left, {cells, cells});
}

// A cell that is the n-th of those left over holds the n-th letter; there are as many cells as letters, or more
// where filler follows.
void Formula::message() {
    const Letters& letters = task_.demands.message;
    const auto cells = open_cells(task_.demands.message_from_right);
    Clause left;
    for (const auto& cell : cells) left.push_back(-covered_.at(cell));
    keep_within(left, {letters.size(), task_.demands.filler_follows ? left.size() : letters.size()});
    const auto counts = count(left, letters.size());
    for (std::size_t at = 0; at < cells.size(); ++at)
        for (std::size_t number = 0; number < letters.size(); ++number)
            add({-left[at], -counts[at][number], counts[at][number + 1], holds(cells[at], letters[number])});
}

void Formula::shares() {
    for (const Share& share : task_.demands.shares) {
        Clause words;
        for (const auto& choices : choices_) {
            Clause in;
            for (const Choice& choice : choices)
                if (share.directions.contains(choice.placement.direction)) in.push_back(choice.variable);
            words.push_back(any_of(in));
        }
        keep_within(words, share.words);
    }
}

void Formula::before() {
    const auto& before = task_.demands.before;
    Clause moved;
    for (std::size_t word = 0; word < before.size(); ++word) {
        if (!before[word]) continue;
        Clause elsewhere;
        for (const Choice& choice : choices_[word])
            if (!same_letters_there(task_, word, *before[word], choice.placement))
                elsewhere.push_back(choice.variable);
        moved.push_back(any_of(elsewhere));
    }
    if (!before.empty()) keep_within(moved, {0, task_.demands.most_moved});
}

}  // namespace lode::test
