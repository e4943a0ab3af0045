#pragma once
// The work on an order, from its line to the line of its result.

#include <map>
#include <optional>
#include <string>

#include <oneapi/tbb/enumerable_thread_specific.h>

#include "batch/order.hpp"
#include "batch/order_lines.hpp"
#include "puzzle_work.hpp"

namespace lode::cli {

struct OrderResult {
    enum class End {
        done,
        refused,
        faulty,     // ours: the line says so
        cancelled,  // by an interrupt: there is no line
    };
    std::uint64_t number = 0;
    End end = End::done;
    std::string line;  // JSON, with its line end
    std::string why;   // a refused order's name and fault, for people
    bool has_notes = false;
};

// What is made of each order. Const calls may run on several threads at once; the result of an order does not
// depend on those before it.
class OrderWork {
  public:
    // With a folder, each order has one of its own in it, which appears whole; `replace` takes the place of
    // one that an earlier run left.
    OrderWork(OrderDefaults defaults, std::optional<std::string> folder, bool replace);

    // Throws DiskFault where a folder cannot be written.
    [[nodiscard]] OrderResult run(const OrderLine& line) const;

  private:
    // An order as it was read, and its recipe as it was checked; the next one often differs in its seed
    // alone.
    struct Prepared {
        std::string others;  // as seed_in gives it
        Order order;
        PuzzlesWanted wanted;
        // Where the recipe is not that of a blank. Why it is refused does not depend on its seed either.
        std::optional<Outcome<CheckedRecipe>> checked;
    };
    struct Kept {
        std::optional<Prepared> last;
        // Of orders before, by their locale: another often differs in its words alone.
        std::map<std::string, Groundwork> groundwork;
    };

    [[nodiscard]] Outcome<CheckedRecipe> checked(const Recipe& recipe) const;
    [[nodiscard]] Outcome<const Prepared*> prepared(const OrderLine& line, std::uint64_t& seed) const;
    [[nodiscard]] Outcome<OrderResult> result_of(const OrderLine& line) const;
    [[nodiscard]] OrderResult refused(const OrderLine& line, Refusal refusal) const;

    OrderDefaults defaults_;
    std::optional<std::string> folder_;
    bool replace_;
    std::multimap<std::string, std::string>
        unfinished_;  // folders that a run which was killed left, by their orders'
    mutable oneapi::tbb::enumerable_thread_specific<Kept> kept_;
};

}  // namespace lode::cli
