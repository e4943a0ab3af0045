// The C API on several threads: cancellation, progress, sharing.

#include <atomic>
#include <condition_variable>
#include <mutex>
#include <thread>

#include "support/c_handles.hpp"

using namespace lode::test::c_api;

namespace {

// Lets another thread wait until the work has begun.
struct Beginning {
    std::mutex mutex;
    std::condition_variable begun;
    bool has_begun = false;

    static void note(void* user, std::uint64_t, std::uint64_t) {
        auto* self = static_cast<Beginning*>(user);
        const std::lock_guard lock(self->mutex);
        self->has_begun = true;
        self->begun.notify_all();
    }
    void wait() {
        std::unique_lock lock(mutex);
        begun.wait(lock, [this] { return has_begun; });
    }
};

}  // namespace

TEST_CASE("another thread can cancel a search that would not end", "[c]") {
    const auto recipe = endless_recipe();
    lode_control* made_control = nullptr;
    REQUIRE(lode_control_create(&made_control, nullptr) == LODE_OK);
    const Held<lode_control> control(made_control);
    Beginning beginning;
    REQUIRE(lode_control_set_progress(control.get(), Beginning::note, &beginning, nullptr) == LODE_OK);
    std::thread canceller([&] {
        beginning.wait();
        lode_control_cancel(control.get());
    });
    const auto refusal = refused(recipe.get(), control.get());
    canceller.join();
    CHECK(lode_refusal_reason(refusal.get()) == LODE_REASON_UNFINISHED);

    // Cancelled it stays, until it is reset.
    CHECK(lode_refusal_reason(refused(recipe.get(), control.get()).get()) == LODE_REASON_UNFINISHED);
    lode_control_reset(control.get());
    Out<lode_puzzle> puzzle;
    Out<lode_refusal> none;
    CHECK(lode_make(puzzle, none, garden_recipe().get(), control.get(), nullptr) == LODE_OK);
}

TEST_CASE("progress is told in steps, on the thread that makes the puzzle", "[c]") {
    struct Seen {
        std::thread::id thread;
        std::uint64_t last = 0;
        std::uint64_t effort = 0;
        int calls = 0;
        bool in_order = true;
    } seen;
    const auto recipe = endless_recipe();
    REQUIRE(lode_recipe_set_effort(recipe.get(), 200'000, nullptr) == LODE_OK);
    Out<lode_control> control;
    REQUIRE(lode_control_create(control, nullptr) == LODE_OK);
    const lode_progress look = [](void* user, std::uint64_t spent, std::uint64_t effort) {
        auto& here = *static_cast<Seen*>(user);
        here.in_order = here.in_order && spent >= here.last && spent <= effort;
        here.thread = std::this_thread::get_id();
        here.last = spent;
        here.effort = effort;
        ++here.calls;
    };
    REQUIRE(lode_control_set_progress(control.get(), look, &seen, nullptr) == LODE_OK);
    const auto refusal = refused(recipe.get(), control.get());
    CHECK(seen.calls > 1);
    CHECK(seen.in_order);
    CHECK(seen.effort == 200'000);
    CHECK(seen.thread == std::this_thread::get_id());

    REQUIRE(lode_control_set_progress(control.get(), nullptr, nullptr, nullptr) == LODE_OK);
    const int calls = seen.calls;
    CHECK(refused(recipe.get(), control.get()));
    CHECK(seen.calls == calls);
}

TEST_CASE("a progress function may cancel, and one that throws is a broken call", "[c]") {
    const auto recipe = endless_recipe();
    Out<lode_control> control;
    REQUIRE(lode_control_create(control, nullptr) == LODE_OK);
    const lode_progress cancel = [](void* user, std::uint64_t, std::uint64_t) {
        lode_control_cancel(static_cast<lode_control*>(user));
    };
    REQUIRE(lode_control_set_progress(control.get(), cancel, control.get(), nullptr) == LODE_OK);
    CHECK(lode_refusal_reason(refused(recipe.get(), control.get()).get()) == LODE_REASON_UNFINISHED);

    lode_control_reset(control.get());
    const lode_progress thrower = [](void*, std::uint64_t, std::uint64_t) { throw 42; };
    REQUIRE(lode_control_set_progress(control.get(), thrower, nullptr, nullptr) == LODE_OK);
    Out<lode_puzzle> puzzle;
    Out<lode_refusal> refusal;
    const auto failure = failure_of(
        [&](Error error) { return lode_make(puzzle, refusal, recipe.get(), control.get(), error); });
    CHECK(failure.status == LODE_BROKEN_CALL);
    CHECK(contains(failure.message, "lode_make: the progress function threw"));
    CHECK(puzzle.get() == nullptr);
    CHECK(refusal.get() == nullptr);
}

TEST_CASE("sixteen threads make the puzzles that one makes, and share one puzzle", "[c]") {
    constexpr std::size_t threads = 16;
    constexpr std::uint64_t seeds = 8;
    const auto shared_recipe = garden_recipe();
    const auto shared_puzzle = made(shared_recipe.get());
    std::vector<std::string> alone;
    for (std::uint64_t seed = 0; seed < seeds; ++seed) {
        lode::Recipe recipe = garden_in_cpp();
        recipe.seed = seed;
        alone.push_back(lode::to_json(lode::make(recipe).value()));
    }
    const std::string shared_json = lode::to_json(lode::make(garden_in_cpp()).value());

    // Catch's assertions are for one thread: the others count.
    std::atomic<int> wrong{0};
    const auto work = [&] {
        for (std::uint64_t seed = 0; seed < seeds; ++seed) {
            Out<lode_recipe> recipe;
            Out<lode_puzzle> puzzle;
            Out<lode_refusal> refusal;
            Out<lode_audit> audit;
            const char* json = nullptr;
            const bool right =
                lode_recipe_copy(recipe, shared_recipe.get(), nullptr) == LODE_OK &&
                lode_recipe_set_seed(recipe.get(), seed, nullptr) == LODE_OK &&
                lode_make(puzzle, refusal, recipe.get(), nullptr, nullptr) == LODE_OK &&
                lode_puzzle_json(&json, puzzle.get(), nullptr) == LODE_OK && alone[seed] == json &&
                lode_puzzle_json(&json, shared_puzzle.get(), nullptr) == LODE_OK && shared_json == json &&
                lode_audit_puzzle(audit, shared_puzzle.get(), nullptr) == LODE_OK &&
                lode_audit_is_certified(audit.get()) == 1 &&
                lode_recipe_json(&json, shared_recipe.get(), nullptr) == LODE_OK;
            if (!right) ++wrong;
        }
    };
    std::vector<std::thread> all;
    for (std::size_t at = 0; at < threads; ++at) all.emplace_back(work);
    for (auto& thread : all) thread.join();
    CHECK(wrong == 0);
}
