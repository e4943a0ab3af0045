#pragma once
// Tasks for the placing searches, and judges of what comes of them that share no code with the searches.

#include <atomic>
#include <functional>
#include <string>
#include <vector>

#include "place/place.hpp"

namespace lode::test {

constexpr std::uint64_t plenty = 5'000'000;

struct Task {
    Mask mask;
    Directions directions = Directions::all();
    std::vector<Letters> words = {};
    std::vector<Letters> avoided = {};
    std::uint64_t effort = plenty;
    const std::atomic<bool>* cancel = nullptr;
    std::function<void(std::uint64_t)> progress = {};
};

// Holds what a PlaceTask refers to.
class TaskHolder {
  public:
    explicit TaskHolder(const Task& task);
    [[nodiscard]] const PlaceTask& task() const { return task_; }

  private:
    CopyGuard words_;
    CopyGuard avoided_;
    PlaceTask task_;
};

// What is wrong with a result, or an empty text.
std::string fault_in(const Task& task, const PlaceResult& result);

// Requires that the result, of a search with plenty of effort, is what brute force says; returns whether
// there is a placement.
bool agrees_with_brute_force(const Task& task, const PlaceResult& result);

// A word over the first so many letters, of two letters to `most`.
Letters random_word(Random& random, std::uint32_t letters, std::uint32_t most);

// Masks of up to three rows and four columns, a few words and avoided words over two to four letters, any
// directions.
Task random_small_task(Random& random);

}  // namespace lode::test
