#pragma once
// An order: what a line of the batch asks for.
//
// A JSON object. "words" are inline or a file's name; every other member is a member of a recipe, as
// data/schema describes it, or an option of make by its name on the command line, without the dashes.
// Options of rate and of print stand there too, or in objects of their own, "rate" and "print", which may
// also be true: so they can be told from those of make that have the same names.

#include <cstdint>
#include <optional>
#include <string>

#include <letterlode/puzzle.hpp>

#include "options.hpp"

namespace lode::cli {

struct Order {
    std::uint64_t number = 0;     // of its line
    std::string name = {};        // for people, and for its folder
    Recipe recipe = {};           // with what the options say of it
    Values make = Values({});     // those that are given, here or for all orders
    std::optional<Values> rate;   // likewise, where a rating is asked for
    std::optional<Values> print;  // likewise, where pages are
    std::size_t versions = 0;     // of the worksheet; 0: it is one puzzle's
};

// What holds for all orders that do not say otherwise.
struct OrderDefaults {
    po::variables_map options;  // of the batch's own command line
    std::string source;         // what the orders are called in messages
};

// Refused as unusable: what is no JSON object, no words, a member that is neither of a recipe nor an option,
// a value that cannot be used.
[[nodiscard]] Outcome<Order> read_order(const std::string& text, std::uint64_t number,
                                        const OrderDefaults& defaults);

// The name of an order that cannot be used otherwise; nothing where it has none that can be read.
[[nodiscard]] std::string name_in(const std::string& text);

// CRC-32 (ISO 3309) of an order's text: whether it is the one that an earlier run had.
[[nodiscard]] std::uint32_t crc_of(const std::string& text);

// Whether an order can have a member of this name.
[[nodiscard]] bool is_order_member(const std::string& name);

// The text without the value of its outermost member "seed", and that value: orders that differ in it alone
// are made from one checked recipe. Nothing where there is no such member, or no whole number, or it stands
// there twice.
struct SeedInOrder {
    std::string others;
    std::uint64_t seed = 0;
};
[[nodiscard]] std::optional<SeedInOrder> seed_in(const std::string& text);

}  // namespace lode::cli
