#pragma once
// The C API's handles in the hands of C++ tests: freed by themselves, and made in a line.

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include <letterlode/letterlode.h>
#include <catch2/catch.hpp>
#include <letterlode/puzzle.hpp>

namespace lode::test::c_api {

struct Free {
    void operator()(lode_recipe* recipe) const { lode_recipe_free(recipe); }
    void operator()(lode_control* control) const { lode_control_free(control); }
    void operator()(lode_puzzle* puzzle) const { lode_puzzle_free(puzzle); }
    void operator()(lode_maker* maker) const { lode_maker_free(maker); }
    void operator()(lode_puzzles* puzzles) const { lode_puzzles_free(puzzles); }
    void operator()(lode_refusal* refusal) const { lode_refusal_free(refusal); }
    void operator()(lode_grid* grid) const { lode_grid_free(grid); }
    void operator()(lode_judge* judge) const { lode_judge_free(judge); }
    void operator()(lode_audit* audit) const { lode_audit_free(audit); }
    void operator()(lode_seen* seen) const { lode_seen_free(seen); }
    void operator()(lode_rating* rating) const { lode_rating_free(rating); }
    void operator()(lode_error* error) const { lode_error_free(error); }
};
template <class T>
using Held = std::unique_ptr<T, Free>;

// An out parameter that frees what it was given.
template <class T, class Freeing = Free>
class Out {
  public:
    operator T**() { return &given_; }
    [[nodiscard]] T* get() const { return given_; }
    ~Out() { Freeing()(given_); }
    Out() = default;
    Out(const Out&) = delete;
    Out& operator=(const Out&) = delete;

  private:
    T* given_ = nullptr;
};

using Error = lode_error**;

// What a call returned, with the error that it left.
struct Failure {
    std::int32_t status = LODE_OK;
    std::int32_t code = LODE_OK;
    std::string message;
    std::string source;
    std::int32_t line = 0;
    std::int32_t position = 0;
    std::vector<std::string> words;
    std::vector<std::string> advice;
};

template <class Call>
Failure failure_of(const Call& call) {
    Out<lode_error> error;
    Failure failure;
    failure.status = call(static_cast<Error>(error));
    if (!error.get()) return failure;
    failure.code = lode_error_code(error.get());
    failure.message = lode_error_message(error.get());
    failure.source = lode_error_source(error.get());
    failure.line = lode_error_line(error.get());
    failure.position = lode_error_position(error.get());
    for (std::size_t at = 0; at < lode_error_word_count(error.get()); ++at)
        failure.words.emplace_back(lode_error_word(error.get(), at));
    for (std::size_t at = 0; at < lode_error_advice_count(error.get()); ++at)
        failure.advice.emplace_back(lode_error_advice(error.get(), at));
    return failure;
}

inline bool contains(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

// The call is broken, and the message names what is NULL; it is no less so where nobody wants the error.
template <class Call>
void broken(const std::string& name, const Call& call) {
    const Failure failure = failure_of(call);
    INFO(name << ": " << failure.message);
    CHECK(failure.status == LODE_BROKEN_CALL);
    CHECK(failure.code == LODE_BROKEN_CALL);
    CHECK(contains(failure.message, name + " is NULL"));
    CHECK(call(static_cast<Error>(nullptr)) == LODE_BROKEN_CALL);
}

inline constexpr const char* garden =
    "Broad Beans\nLeek\nSquash  # by the fence\nKüchenkraut\nO'Neill's pear\n";

inline Held<lode_recipe> recipe_of(const char* words, std::int32_t columns, std::int32_t rows) {
    lode_recipe* recipe = nullptr;
    REQUIRE(lode_recipe_create(&recipe, nullptr) == LODE_OK);
    Held<lode_recipe> held(recipe);
    REQUIRE(lode_recipe_set_words_text(recipe, words, "garden.txt", nullptr) == LODE_OK);
    REQUIRE(lode_recipe_set_grid(recipe, columns, rows, nullptr) == LODE_OK);
    return held;
}

inline Held<lode_recipe> garden_recipe() {
    return recipe_of(garden, 14, 12);
}

inline lode::Recipe garden_in_cpp() {
    lode::Recipe recipe;
    recipe.words = lode::read_word_lines(garden, "garden.txt").value();
    recipe.size = lode::checked_size(14, 12).value();
    return recipe;
}

// Twelve rows take two of the words each, since none of them can begin in another: there are twenty-nine, and
// no end of ways to fail.
inline Held<lode_recipe> endless_recipe() {
    std::string words;
    for (int word = 0; word < 29; ++word) {
        const auto letter = [](char first, int by) { return static_cast<char>(first + by % 13); };
        words += {letter('a', word),     letter('a', word + 4 * (word / 13)),
                  letter('a', 5 * word), letter('n', word),
                  letter('n', 3 * word), '\n'};
    }
    auto recipe = recipe_of(words.c_str(), 12, 12);
    REQUIRE(lode_recipe_set_directions(recipe.get(), "right", nullptr) == LODE_OK);
    REQUIRE(lode_recipe_set_effort(recipe.get(), UINT64_MAX, nullptr) == LODE_OK);
    REQUIRE(lode_recipe_set_default_avoid_list(recipe.get(), 0, nullptr) == LODE_OK);
    return recipe;
}

inline Held<lode_puzzle> made(const lode_recipe* recipe) {
    lode_puzzle* puzzle = nullptr;
    Out<lode_refusal> refusal;
    REQUIRE(lode_make(&puzzle, refusal, recipe, nullptr, nullptr) == LODE_OK);
    REQUIRE(puzzle);
    REQUIRE(refusal.get() == nullptr);
    return Held<lode_puzzle>(puzzle);
}

inline Held<lode_maker> maker_of(const lode_recipe* recipe) {
    lode_maker* maker = nullptr;
    Out<lode_refusal> refusal;
    REQUIRE(lode_maker_create(&maker, refusal, recipe, nullptr) == LODE_OK);
    return Held<lode_maker>(maker);
}

inline Held<lode_refusal> refused(const lode_recipe* recipe, const lode_control* control = nullptr) {
    Out<lode_puzzle> puzzle;
    lode_refusal* refusal = nullptr;
    Out<lode_error> error;
    REQUIRE(lode_make(puzzle, &refusal, recipe, control, error) == LODE_REFUSED);
    REQUIRE(puzzle.get() == nullptr);
    REQUIRE(error.get() == nullptr);
    REQUIRE(refusal);
    return Held<lode_refusal>(refusal);
}

inline std::string json_of(const lode_puzzle* puzzle) {
    const char* json = nullptr;
    REQUIRE(lode_puzzle_json(&json, puzzle, nullptr) == LODE_OK);
    return json;
}

inline std::string json_of(const lode_puzzles* puzzles) {
    const char* json = nullptr;
    REQUIRE(lode_puzzles_json(&json, puzzles, nullptr) == LODE_OK);
    return json;
}

inline std::string json_of(const lode_recipe* recipe) {
    const char* json = nullptr;
    REQUIRE(lode_recipe_json(&json, recipe, nullptr) == LODE_OK);
    return json;
}

}  // namespace lode::test::c_api
