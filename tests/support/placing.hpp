#pragma once
// Tasks for the placing searches, and a judge of what comes of them that shares no code with the searches.

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
    Demands demands = {};
    std::vector<Letters> inner = {};  // listed words that have no place of their own, since others hold them

    // The words that are placed, and after them the inner ones.
    [[nodiscard]] std::vector<Letters> listed() const;
};

// The letters of `outer` at which `inner` begins, read in the order of `outer` or against it: each set of
// letters once.
std::vector<std::size_t> places_inside(const Letters& inner, const Letters& outer);

// For every listed word, every copy that a placement of another brings with it.
std::vector<InnerCopy> nested_in(const Task& task);

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

// The task in words, for messages of tests.
std::string text_of(const Task& task);

}  // namespace lode::test
