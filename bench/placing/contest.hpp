#pragma once
// What the engine and its peers are asked, and what they answer. All of them read the same instance, in the
// same program, one after another, and are timed by the processor time that the program spends.

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include <letterlode/grid.hpp>

namespace lode::bench {

// Words to be placed on a rectangle in eight directions so that letters agree where words cross.
struct Instance {
    Size size;
    std::vector<Letters> words = {};                     // A is letter 0, Z is letter 25
    bool may_cross = true;                               // whether two words may share a cell
    std::optional<std::size_t> leftover = std::nullopt;  // exactly so many cells outside all words
};

// Processor time of the whole program, in seconds.
[[nodiscard]] double processor_seconds();

// What an engine may spend on one instance.
class Deadline {
  public:
    explicit Deadline(double seconds) : end_(processor_seconds() + seconds) {}
    [[nodiscard]] bool has_passed() const { return processor_seconds() >= end_; }

  private:
    double end_;
};

struct Answer {
    enum class End { solved, proved, unfinished };  // proved: that there is no placement
    End end = End::unfinished;
    std::vector<Placement> placements = {};  // by word, where solved
    std::vector<Letter> filled = {};         // the whole grid in row order, where the engine fills it
    // Whether the engine saw to it that every word can be read once and no more. One that does not has less
    // to do, and what it proves impossible is so the more.
    bool forbids_stray_copies = false;
    double setting_up = 0;  // seconds that went into the model or formula, of the whole
};

struct Engine {
    using Run = std::function<Answer(const Deadline&, std::uint64_t seed)>;

    std::string name;
    // What it holds in memory grows with words times cells: above this it is not asked.
    std::size_t most_words_times_cells = SIZE_MAX;
    // What comes before the clock starts; the instance outlives what it gives.
    std::function<Run(const Instance&)> prepare;
};

// For engines that prepare nothing.
template <class Function>
[[nodiscard]] auto unprepared(Function answer) {
    return [answer](const Instance& instance) -> Engine::Run {
        return [answer, &instance](const Deadline& deadline, std::uint64_t seed) {
            return answer(instance, deadline, seed);
        };
    };
}

}  // namespace lode::bench
