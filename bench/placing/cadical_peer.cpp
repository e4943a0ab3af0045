// CaDiCaL (package libcadical-dev) on the direct encoding: a variable for each place of each word and for
// each letter in each cell. It is asked for all that the engine is asked for: a word stands in one place, and
// wherever all its letters can be read it stands, so that there are no stray copies. Words that must not
// cross need no letters: there a variable for each word in each cell does, and nothing forbids stray copies.
// Cells left over are counted by the sequential counter of Sinz, "Towards an optimal CNF encoding of Boolean
// cardinality constraints", CP 2005, LNCS 3709; one place a word by the product of Chen, "A new SAT encoding
// of the at-most-one constraint", ModRef 2010, which here does far better than Sinz's counter: 0.02 s, not
// 0.6 s, for a square of twelve at a density of 0.9.
//
// Clauses go into the solver directly, which saves it the way through a file, and it is configured for
// formulas that can be met. Building the formula counts, and is shown apart.

#include <cadical.hpp>
#include <map>

#include "engines.hpp"
#include "places.hpp"

namespace lode::bench {
namespace {

class UntilDeadline : public CaDiCaL::Terminator {
  public:
    explicit UntilDeadline(const Deadline& deadline) : deadline_(deadline) {}
    bool terminate() override { return (++calls_ & 63u) == 0 && deadline_.has_passed(); }

  private:
    const Deadline& deadline_;
    unsigned calls_ = 0;
};

class Encoding {
  public:
    explicit Encoding(const Instance& instance)
        : instance_(instance), places_(places_without_images(instance)) {
        solver_.set("quiet", 1);
        solver_.configure("sat");
        choose_places();
        if (instance.may_cross) {
            write_letters();
            read_once();
            one_letter_a_cell();
        }
        if (!instance.may_cross || instance.leftover) cover();
    }

    [[nodiscard]] Answer answer(const Deadline& deadline) {
        UntilDeadline until(deadline);
        solver_.connect_terminator(&until);
        const int code = solver_.solve();
        solver_.disconnect_terminator();
        if (code == 20) return {Answer::End::proved};
        if (code != 10) return {};
        Answer answer{Answer::End::solved};
        for (std::size_t word = 0; word < places_.size(); ++word)
            for (std::size_t place = 0; place < places_[word].size(); ++place)
                if (solver_.val(variables_[word][place]) > 0) {
                    answer.placements.push_back(places_[word][place].placement);
                    break;
                }
        return answer;
    }

  private:
    int variable() { return ++variables_count_; }
    template <class Literals>
    void add(const Literals& literals) {
        for (const int literal : literals) solver_.add(literal);
        solver_.add(0);
    }
    void add(std::initializer_list<int> literals) { add<std::initializer_list<int>>(literals); }

    int holds(int cell, Letter letter) {
        int& found = holds_[static_cast<std::size_t>(cell) * 26 + letter];
        if (found == 0) found = variable();
        return found;
    }

    void choose_places() {
        for (const auto& places : places_) {
            auto& some = variables_.emplace_back();
            while (some.size() < places.size()) some.push_back(variable());
            add(some);
            at_most_one(some);
        }
    }

    void write_letters() {
        holds_.resize(instance_.size.cells() * 26);
        for (std::size_t word = 0; word < places_.size(); ++word)
            for (std::size_t place = 0; place < places_[word].size(); ++place)
                for (std::size_t at = 0; at < instance_.words[word].size(); ++at)
                    add({-variables_[word][place],
                         holds(places_[word][place].cells[at], instance_.words[word][at])});
    }

    // Where all letters of a word can be read, it stands: also where symmetry leaves it no place.
    void read_once() {
        for (std::size_t word = 0; word < places_.size(); ++word) {
            const Letters& letters = instance_.words[word];
            std::map<std::vector<int>, int> standing;
            for (std::size_t place = 0; place < places_[word].size(); ++place)
                standing[places_[word][place].cells] = variables_[word][place];
            for (const Place& place : places_of(letters, instance_.size)) {
                const auto found = standing.find(place.cells);
                if (found != standing.end()) solver_.add(found->second);
                for (std::size_t at = 0; at < letters.size(); ++at)
                    solver_.add(-holds(place.cells[at], letters[at]));
                solver_.add(0);
            }
        }
    }

    void one_letter_a_cell() {
        for (std::size_t cell = 0; cell < instance_.size.cells(); ++cell) {
            std::vector<int> letters;
            for (std::size_t letter = 0; letter < 26; ++letter)
                if (holds_[cell * 26 + letter] != 0) letters.push_back(holds_[cell * 26 + letter]);
            for (std::size_t a = 0; a < letters.size(); ++a)
                for (std::size_t b = a + 1; b < letters.size(); ++b) add({-letters[a], -letters[b]});
        }
    }

    // Which words cover a cell. With it words that must not cross need no letters at all.
    void cover() {
        std::vector<std::vector<int>> covers(instance_.size.cells());
        for (std::size_t word = 0; word < places_.size(); ++word) {
            std::map<int, std::vector<int>> by;
            for (std::size_t place = 0; place < places_[word].size(); ++place)
                for (const int cell : places_[word][place].cells) by[cell].push_back(variables_[word][place]);
            for (auto& [cell, some] : by) {
                const int covered = variable();
                for (const int place : some) add({-place, covered});
                some.push_back(-covered);
                add(some);
                covers[static_cast<std::size_t>(cell)].push_back(covered);
            }
        }
        if (!instance_.may_cross)
            for (const auto& words : covers)
                for (std::size_t a = 0; a < words.size(); ++a)
                    for (std::size_t b = a + 1; b < words.size(); ++b) add({-words[a], -words[b]});
        if (instance_.leftover) count_leftover(covers, *instance_.leftover);
    }

    void at_most_one(const std::vector<int>& literals) {
        if (literals.size() <= 6) {
            for (std::size_t a = 0; a < literals.size(); ++a)
                for (std::size_t b = a + 1; b < literals.size(); ++b) add({-literals[a], -literals[b]});
            return;
        }
        std::size_t side = 1;
        while (side * side < literals.size()) ++side;
        std::vector<int> rows, columns;
        while (rows.size() * side < literals.size()) rows.push_back(variable());
        while (columns.size() < side) columns.push_back(variable());
        for (std::size_t at = 0; at < literals.size(); ++at) {
            add({-literals[at], rows[at / side]});
            add({-literals[at], columns[at % side]});
        }
        at_most_one(rows);
        at_most_one(columns);
    }

    void count_leftover(std::vector<std::vector<int>>& covers, std::size_t wanted) {
        std::vector<int> left;
        for (auto& words : covers) {
            if (wanted > 0) {
                left.push_back(variable());
                for (const int word : words) add({-word, -left.back()});
                words.push_back(left.back());
            }
            add(words);
        }
        if (wanted > 0) exactly(left, wanted);
    }

    // After each literal, for each number: whether so many of those up to it are true.
    void exactly(const std::vector<int>& literals, std::size_t wanted) {
        std::vector<int> last;  // reached 1, 2, ... so far
        for (const int literal : literals) {
            std::vector<int> next(std::min(last.size() + 1, wanted + 1));
            for (std::size_t number = 0; number < next.size(); ++number) {
                next[number] = variable();
                const bool was_possible = number < last.size();
                if (was_possible) add({-last[number], next[number]});
                if (number == 0) {
                    add({-literal, next[0]});
                    if (was_possible)
                        add({-next[0], last[0], literal});
                    else
                        add({-next[0], literal});
                } else {
                    add({-literal, -last[number - 1], next[number]});
                    add({-next[number], last[number - 1]});
                    if (was_possible)
                        add({-next[number], last[number], literal});
                    else
                        add({-next[number], literal});
                }
            }
            last = std::move(next);
        }
        add({last[wanted - 1]});
        if (wanted < last.size()) add({-last[wanted]});
    }

    const Instance& instance_;
    std::vector<std::vector<Place>> places_;
    std::vector<std::vector<int>> variables_;  // by word and place
    std::vector<int> holds_;                   // by cell and letter, 0 where there is none
    int variables_count_ = 0;
    CaDiCaL::Solver solver_;
};

}  // namespace

Engine sat_solver() {
    return {"CaDiCaL", 200'000,
            unprepared([](const Instance& instance, const Deadline& deadline, std::uint64_t) {
                const double start = processor_seconds();
                Encoding encoding(instance);
                const double encoded = processor_seconds();
                Answer answer = encoding.answer(deadline);
                answer.setting_up = encoded - start;
                answer.forbids_stray_copies = instance.may_cross;
                return answer;
            })};
}

}  // namespace lode::bench
