// Outcomes: a value or a refusal, and never the other by mistake.

#include <catch2/catch.hpp>
#include <memory>

#include <letterlode/outcome.hpp>

using lode::Outcome;
using lode::Refusal;

namespace {

Outcome<std::vector<int>> three() {
    return std::vector{1, 2, 3};
}

Refusal no_thing() {
    Refusal refusal;
    refusal.message = "no";
    return refusal;
}

}  // namespace

TEST_CASE("an outcome holds a value or a refusal, and reading the other is a broken call") {
    const Outcome<int> value(4);
    CHECK(value);
    CHECK(*value == 4);
    CHECK_THROWS_AS(value.refusal(), std::logic_error);

    const Outcome<int> refusal(no_thing());
    CHECK_FALSE(refusal);
    CHECK(refusal.refusal().message == "no");
    CHECK_THROWS_AS(refusal.value(), std::logic_error);
    CHECK_THROWS_AS(*refusal, std::logic_error);
}

TEST_CASE("a value may be moved out, changed in place, and walked over while its outcome is a temporary") {
    Outcome<std::unique_ptr<int>> owner(std::make_unique<int>(7));
    const std::unique_ptr<int> taken = std::move(owner).value();
    CHECK(*taken == 7);

    auto list = three();
    list->push_back(4);
    (*list)[0] = 9;
    CHECK(*list == std::vector{9, 2, 3, 4});

    int sum = 0;
    for (const int number : three().value()) sum += number;
    for (const int number : *three()) sum += number;
    CHECK(sum == 12);
}
