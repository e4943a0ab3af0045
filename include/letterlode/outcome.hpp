#pragma once
// Outcomes are values: what was asked for, or a Refusal that says why there is none. Exceptions are kept
// for broken calls (std::invalid_argument, std::logic_error) and for memory that ran out.

#include <stdexcept>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace lode {

struct Refusal {
    enum class Reason {
        impossible,  // proved: there is no such puzzle
        unfinished,  // the effort ran out, or the caller cancelled, before either was known
        unusable,    // the input does not describe a puzzle
    };
    Reason reason = Reason::unusable;
    std::string message;  // a sentence or more; names file, line, word and position where there are any
    std::vector<std::string> words;   // the words to blame, as shown
    std::vector<std::string> advice;  // ways out, a sentence each
    std::string source;               // the file that holds the fault, or empty
    int line = 0;                     // its line, from 1, or 0
    // Where in the word to blame, or else in the line: the character (a user-perceived one) or the column,
    // from 1, or 0 where none is known.
    int position = 0;
};

// A T or a Refusal. Reading the one that is not there throws std::logic_error.
template <class T>
class [[nodiscard]] Outcome {
  public:
    Outcome(T value) : held_(std::move(value)) {}
    Outcome(Refusal refusal) : held_(std::move(refusal)) {}

    explicit operator bool() const { return std::holds_alternative<T>(held_); }

    const T& value() const& { return checked<T>(held_); }
    T& value() & { return checked<T>(held_); }
    // By value: `for (auto& word : read(...).value().words)` would else walk over what is gone.
    T value() && { return std::move(checked<T>(held_)); }
    const T& operator*() const& { return value(); }
    T& operator*() & { return value(); }
    T operator*() && { return std::move(*this).value(); }
    const T* operator->() const { return &value(); }
    T* operator->() { return &value(); }

    const Refusal& refusal() const { return checked<Refusal>(held_); }

  private:
    template <class U, class Held>
    static auto& checked(Held& held) {
        auto* there = std::get_if<U>(&held);
        if (!there) throw std::logic_error("an Outcome was read as what it does not hold");
        return *there;
    }
    std::variant<T, Refusal> held_;
};

}  // namespace lode
