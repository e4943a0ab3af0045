// batch_bench orders COUNT SEED: so many orders of 15 x 15 with 20 words of 4 to 10 letters, a line each.
// Seeds are all different, and a thousand orders in a row have the same words. batch_bench judge ORDERS:
// judges the results that come in, of orders in their order; ends with 1 where one is faulty.

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <string>
#include <string_view>
#include <vector>

#include "batch/judge.hpp"
#include "gardens.hpp"

namespace {

using namespace lode::bench;

constexpr std::uint64_t orders_of_a_list = 1'000;

// A list in JSON of which a puzzle can be made: some invented words hold one that is to be avoided.
std::string usable_words(std::uint64_t seed) {
    const auto is_usable = [](const std::vector<std::string>& words) {
        lode::Recipe recipe = recipe_of(words, {15, 15});
        recipe.default_avoid_list = true;
        return static_cast<bool>(lode::make(recipe));
    };
    auto words = invented_words(20, 4, 10, seed);
    while (!is_usable(words)) words = invented_words(20, 4, 10, seed += 1'000'003);
    std::string json;
    for (const auto& word : words) json += (json.empty() ? "\"" : ",\"") + word + "\"";
    return json;
}

int write_orders(std::uint64_t count, std::uint64_t seed) {
    std::string words;
    for (std::uint64_t at = 0; at < count; ++at) {
        if (at % orders_of_a_list == 0) words = usable_words(seed + at);
        std::cout << "{\"words\":[" << words << "],\"grid\":\"15x15\",\"seed\":" << seed + at << "}\n";
    }
    return std::cout.flush() ? 0 : 1;
}

int judge(const char* file) {
    std::ifstream orders(file);
    std::uint64_t judged = 0, faults = 0;
    std::string order, result;
    for (; std::getline(std::cin, result); ++judged) {
        std::string fault = std::getline(orders, order) ? fault_in(order, result) : "no such order";
        if (fault.empty()) continue;
        if (++faults <= 10) std::cerr << "result " << judged + 1 << ": " << fault << "\n";
    }
    while (std::getline(orders, order)) ++faults;  // without a result
    std::cout << judged << " puzzles judged, " << faults << " faults\n";
    return faults == 0 && judged > 0 ? 0 : 1;
}

}  // namespace

int main(int count, char** arguments) {
    std::ios::sync_with_stdio(false);
    if (count == 4 && std::string_view(arguments[1]) == "orders")
        return write_orders(std::strtoull(arguments[2], nullptr, 10),
                            std::strtoull(arguments[3], nullptr, 10));
    if (count == 3 && std::string_view(arguments[1]) == "judge") return judge(arguments[2]);
    std::fputs("usage: batch_bench orders COUNT SEED | batch_bench judge ORDERS\n", stderr);
    return 2;
}
