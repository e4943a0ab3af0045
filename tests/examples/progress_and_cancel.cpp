// Tells how far the work is, and stops it.
// Prints:
//     made
//     Interrupted after an effort of 0 steps.
#include <atomic>
#include <iostream>

#include <letterlode/puzzle.hpp>

int main() {
    lode::Recipe recipe;
    for (const char* word : {"Beetroot", "Radish", "Lettuce", "Spinach", "Parsnip", "Courgette"})
        recipe.words.words.push_back({word});
    recipe.size = lode::Size{12, 12};

    std::atomic<bool> cancel = false;  // another thread, or a signal handler, may set it at any time
    lode::MakeControl control;
    control.cancel = &cancel;
    control.progress = [&](std::uint64_t spent, std::uint64_t all) {
        if (spent > all / 2) cancel = true;  // long enough
    };

    const auto puzzle = lode::make(recipe, control);
    std::cout << (puzzle ? "made" : "not made") << '\n';

    cancel = true;
    const auto stopped = lode::make(recipe, control);
    if (!stopped && stopped.refusal().reason == lode::Refusal::Reason::unfinished)
        std::cout << stopped.refusal().message << '\n';
}
