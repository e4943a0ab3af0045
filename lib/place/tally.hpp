#pragma once
// Counts what the demands are about, word by word, and says whether they are met, and whether they still can
// be.

#include <cstdint>
#include <span>
#include <vector>

#include "place/place.hpp"

namespace lode {

class Tally {
  public:
    explicit Tally(const PlaceTask& task);

    // Nothing is demanded that would have to be counted: all is within reach and met.
    [[nodiscard]] bool is_idle() const { return idle_; }

    // The cells of the word's letters, as indices into the grid.
    void add(std::uint32_t word, const Placement& placement, std::span<const std::uint32_t> cells);
    void remove(std::uint32_t word, const Placement& placement, std::span<const std::uint32_t> cells);

    // Whether a word may cover these cells beside the words in place.
    [[nodiscard]] bool keeps_apart(std::span<const std::uint32_t> cells) const;
    // False where the words to come cannot meet the demands any more; where none are to come, whether they
    // are met. What is within reach stays so when a word is lifted.
    [[nodiscard]] bool is_within_reach() const;

    // The directions of shares that are full.
    [[nodiscard]] Directions full_directions() const;
    // Whether no word may leave the place where it stood before.
    [[nodiscard]] bool none_may_move() const { return moved_ >= task_.demands.most_moved; }

  private:
    [[nodiscard]] bool is_moved(std::uint32_t word, const Placement& placement) const;
    // Whether exactly so many open cells may be left outside all words in the end.
    [[nodiscard]] bool can_leave(std::size_t cells) const;
    // Whether the message may have its cells in the end.
    [[nodiscard]] bool can_spell() const;
    template <class Change>
    void change_near(std::span<const std::uint32_t> cells, Change change);

    const PlaceTask& task_;
    bool idle_;
    std::size_t open_cells_ = 0;
    std::size_t words_to_come_;
    std::size_t letters_to_come_ = 0;
    std::size_t covered_ = 0;
    std::size_t crossings_ = 0;
    std::size_t moved_ = 0;
    std::vector<std::size_t> shares_;   // of each share, the words in place
    std::vector<std::uint32_t> cover_;  // by cell: how many words
    std::vector<std::uint32_t> near_;   // by cell: how many letters of words stand too near for another word
};

}  // namespace lode
