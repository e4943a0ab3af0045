#pragma once
// Some words in place: the letters they write, and what those letters spell. The tight searches change it one
// candidate at a time, in any order.

#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

#include "place/candidates.hpp"
#include "place/nesting.hpp"
#include "place/tally.hpp"

namespace lode {

class Position {
  public:
    Position(const PlaceTask& task, Candidates& candidates);

    [[nodiscard]] const Grid& grid() const { return grid_; }
    [[nodiscard]] const std::optional<Candidate>& at(std::uint32_t word) const { return at_[word]; }
    [[nodiscard]] bool is_written(std::uint32_t cell) const { return cover_[cell] > 0; }
    [[nodiscard]] Letter letter(std::uint32_t cell) const { return grid_.letters()[cell]; }
    // Whether the word can stand nowhere but where it is placed: no other brings a copy of it.
    [[nodiscard]] bool is_plain(std::uint32_t word) const { return nesting_.is_plain(word); }
    // How many of the candidate's cells hold letters already.
    [[nodiscard]] std::size_t overlap(Candidate candidate) const;

    // Places a candidate whose letters agree with those that stand. False, and nothing is changed, where the
    // demands cannot be met any more, or a letter completes a copy of a short word that is not its own: an
    // avoided word, a second copy of a placed word, or a copy of a word to come where that one has no
    // candidate. Copies of longer words are so rare that they are looked for in the end, by is_solution.
    // After it, written() are the cells that got a letter, and foretold() the copies that words to come must
    // take.
    [[nodiscard]] bool place(Candidate candidate);
    [[nodiscard]] const std::vector<std::uint32_t>& written() const { return written_; }
    [[nodiscard]] const std::vector<Candidate>& foretold() const { return foretold_; }

    void lift(std::uint32_t word);

    // What the demands leave of the candidates of all words to come, besides what the letters leave: sets to
    // meet with.
    void each_ruling(const std::function<void(const Block*)>& visit);

    // Every word in place, each copy explained by a placement, nothing avoided, and the demands met.
    [[nodiscard]] bool is_solution() const {
        return is_full() && tally_.is_within_reach() && !word_on_wrong_copy().has_value();
    }
    [[nodiscard]] bool is_full() const;
    // A word that stands on a copy which no placement explains, or on an avoided word, or near to one that
    // letters of the message make; nothing where there is none.
    [[nodiscard]] std::optional<std::uint32_t> word_on_wrong_copy() const;
    [[nodiscard]] std::vector<Placement> placements() const;
    // The letters of the words, and those of the message in the cells that are left.
    [[nodiscard]] Grid finished_grid() const;

  private:
    [[nodiscard]] Cell cell(std::uint32_t index) const {
        const auto columns = static_cast<std::uint32_t>(grid_.size().columns);
        return {static_cast<int>(index / columns), static_cast<int>(index % columns)};
    }
    [[nodiscard]] bool copies_are_right();
    [[nodiscard]] Nesting::Verdict judge(std::size_t word, const Placement& copy) const;
    [[nodiscard]] bool foretell(std::uint32_t word, const Placement& copy);
    [[nodiscard]] std::optional<Placement> placement_of(std::uint32_t word) const;
    [[nodiscard]] std::uint32_t nearest_word(Cell to) const;

    const PlaceTask& task_;
    Candidates& candidates_;
    Nesting nesting_;
    Tally tally_;
    CopyGuard short_words_;
    CopyGuard short_avoided_;
    Grid grid_;
    std::vector<std::uint16_t> cover_;  // how many words stand on each cell
    std::vector<std::optional<Candidate>> at_;
    std::vector<std::uint32_t> written_;
    std::vector<Candidate> foretold_;
};

}  // namespace lode
