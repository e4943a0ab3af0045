#pragma once
// A placing task as a formula for a SAT solver: it can be met exactly where there is a placement. The rules
// are encoded from their wording once more; nothing of the searches is used.

#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "support/naive.hpp"
#include "support/placing.hpp"

namespace lode::test {

class Formula {
  public:
    explicit Formula(const Task& task);
    // In the form that the SAT competitions' solvers read.
    [[nodiscard]] std::string dimacs() const;

  private:
    using Cells = std::vector<std::pair<int, int>>;
    using Clause = std::vector<int>;
    struct Choice {
        int variable;
        Placement placement;
        Cells cells;
    };
    // By i and j: whether at least j of the first i are true.
    using Counts = std::vector<std::vector<int>>;

    void add(Clause clause) { clauses_.push_back(std::move(clause)); }
    int variable() { return ++variables_; }
    int holds(std::pair<int, int> cell, Letter letter);
    int any_of(const Clause& literals);
    Counts count(const Clause& literals, std::size_t most);
    void keep_within(const Clause& literals, const Range& range);

    [[nodiscard]] std::vector<std::pair<Placement, Cells>> everywhere(std::size_t length) const;
    [[nodiscard]] Cells open_cells(bool from_right) const;

    void one_letter_a_cell();
    void one_placement(std::size_t word);
    void copies(std::size_t listed);
    void no_copy(const Letters& word);
    void cover();
    void pins();
    void spacing();
    void leftover(std::size_t cells);
    void message();
    void shares();
    void before();

    const Task& task_;
    std::vector<Letters> listed_;
    std::set<Letter> letters_;
    std::map<std::pair<std::pair<int, int>, Letter>, int> holds_;
    std::vector<std::vector<Choice>> choices_;                // by word
    std::vector<std::map<std::pair<int, int>, int>> covers_;  // by word and cell
    std::map<std::pair<int, int>, int> covered_, crossed_;    // by cell
    std::vector<Clause> clauses_;
    int variables_ = 0;
    int true_ = 0;
};

}  // namespace lode::test
