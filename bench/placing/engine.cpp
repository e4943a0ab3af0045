// The engine itself, with the effort that `make` gives it. It is the only one that is asked for everything.

#include <atomic>
#include <memory>
#include <numeric>
#include <stdexcept>

#include <letterlode/puzzle.hpp>

#include "engines.hpp"
#include "place/place.hpp"
#include "puzzle/attempt.hpp"

namespace lode::bench {
namespace {

Letters every_letter() {
    Letters itself(26);
    std::iota(itself.begin(), itself.end(), Letter{0});
    return itself;
}

Answer place_alone(const Instance& instance, const Deadline& deadline, std::uint64_t seed) {
    const double start = processor_seconds();
    const CopyGuard guard(instance.words, every_letter());
    const CopyGuard avoided({}, every_letter());
    const Mask mask(instance.size);
    std::atomic<bool> cancel = false;
    PlaceTask task{mask, Directions::all(), instance.words, guard, avoided, Recipe().effort, {}, &cancel};
    task.progress = [&](std::uint64_t) { cancel = deadline.has_passed(); };
    if (!instance.may_cross) task.demands.crossings.most = 0;
    task.demands.leftover = instance.leftover;
    const double set_up = processor_seconds() - start;
    Random random(seed);
    PlaceResult result = place(task, random);
    Answer answer;
    answer.forbids_stray_copies = true;
    answer.setting_up = set_up;
    if (result.end == PlaceResult::End::impossible) answer.end = Answer::End::proved;
    if (result.end == PlaceResult::End::placed) {
        answer.end = Answer::End::solved;
        answer.placements = std::move(result.placements);
    }
    return answer;
}

Recipe recipe_of(const Instance& instance, bool avoid_list) {
    Recipe recipe;
    for (const Letters& word : instance.words) {
        std::string text;
        for (const Letter letter : word) text += static_cast<char>('A' + letter);
        recipe.words.words.push_back({text, 0});
    }
    recipe.size = instance.size;
    recipe.directions = Directions::all();
    recipe.default_avoid_list = avoid_list;
    return recipe;
}

template <class Value>
Value checked(Outcome<Value>&& outcome) {
    if (!outcome) throw std::runtime_error("refused: " + outcome.refusal().message);
    return std::move(outcome).value();
}

Answer answer_of(const Puzzle& puzzle) {
    Answer answer{Answer::End::solved};
    answer.forbids_stray_copies = true;
    for (const PlacedWord& word : puzzle.words) answer.placements.push_back(word.placed);
    for (const Letter letter : puzzle.grid.grid.letters())
        answer.filled.push_back(static_cast<Letter>(puzzle.grid.alphabet.text(letter).front() - 'A'));
    return answer;
}

// What is prepared once for an instance, before the clock starts.
class Unaudited {
  public:
    explicit Unaudited(const Instance& instance)
        : recipe_(recipe_of(instance, false)), job_(check(recipe_)), placing_(placing_of(*job_)) {}
    [[nodiscard]] Outcome<Puzzle> make(std::uint64_t seed) const {
        const Mask mask(*recipe_.size);
        const MakeControl control;
        return Attempt(recipe_, *job_, placing_, mask, control, recipe_.effort, 0).run(seed);
    }

  private:
    Recipe recipe_;
    Outcome<Job> job_;
    Placing placing_;
};

}  // namespace

Engine placing_alone() {
    return {"letterlode, place", SIZE_MAX, unprepared(place_alone)};
}

Engine whole_puzzle(Making making) {
    if (making == Making::unaudited)
        return {"letterlode, place and fill", SIZE_MAX, [](const Instance& instance) -> Engine::Run {
                    return [prepared = std::make_shared<Unaudited>(instance)](const Deadline&,
                                                                              std::uint64_t seed) {
                        return answer_of(checked(prepared->make(seed)));
                    };
                }};
    const bool avoid_list = making == Making::certified_with_avoid_list;
    return {avoid_list ? "letterlode, make, avoid list" : "letterlode, make", SIZE_MAX,
            [avoid_list](const Instance& instance) -> Engine::Run {
                return [prepared = std::make_shared<CheckedRecipe>(checked(CheckedRecipe::open(
                            recipe_of(instance, avoid_list))))](const Deadline&, std::uint64_t seed) {
                    return answer_of(checked(prepared->make(seed)));
                };
            }};
}

}  // namespace lode::bench
