#pragma once
// Rectangles into rooms: what every part of the cutting plan comes down to. Lengths are whole micrometres, so
// that decisions are exact. Gaps are no matter of this module: a caller widens items and rooms by them.

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include <letterlode/plan.hpp>

#include "random/random.hpp"

namespace lode::packing {

using Length = std::int64_t;

struct Size {
    Length width = 0;
    Length height = 0;
    [[nodiscard]] Length area() const { return width * height; }
    friend bool operator==(const Size&, const Size&) = default;
};

// What must be laid in one of its shapes.
struct Item {
    std::vector<Size> shapes;
    [[nodiscard]] Length least_area() const;
};

struct Spot {
    int room = -1;  // -1: not laid
    Length left = 0;
    Length top = 0;
    std::size_t shape = 0;
    friend bool operator==(const Spot&, const Spot&) = default;
};

// A spot for each item.
using Layout = std::vector<Spot>;
[[nodiscard]] bool is_whole(const Layout& layout);

// Tells a caller how much was spent, and whether to go on. One for all parts of what may be spent.
class Watch {
  public:
    // Both must outlive it.
    Watch(const CutControl& control, std::uint64_t effort) : control_(control), effort_(effort) {}
    void note(std::uint64_t steps) {
        constexpr std::uint64_t a_report = 20'000;
        spent_ += steps;
        if (spent_ < next_report_) return;
        next_report_ = spent_ + a_report;
        if (control_.progress) control_.progress(spent_, effort_);
    }
    [[nodiscard]] bool is_cancelled() const { return control_.is_cancelled(); }

  private:
    const CutControl& control_;
    std::uint64_t effort_;
    std::uint64_t spent_ = 0;
    std::uint64_t next_report_ = 0;
};

// What may be spent, in places looked at. Nothing is left once the watch says that the caller has cancelled,
// so that whatever ends when its steps are spent ends then too.
class Steps {
  public:
    explicit Steps(std::uint64_t limit, Watch* watch = nullptr) : left_(limit), watch_(watch) {}
    // Whether there was so much left; otherwise nothing is left.
    bool spend(std::uint64_t steps) {
        if (watch_) {
            if (watch_->is_cancelled()) left_ = 0;
            watch_->note(steps < left_ ? steps : left_);
        }
        if (steps > left_) {
            left_ = 0;
            return false;
        }
        left_ -= steps;
        return true;
    }
    [[nodiscard]] std::uint64_t left() const { return is_cancelled() ? 0 : left_; }
    [[nodiscard]] bool is_cancelled() const { return watch_ && watch_->is_cancelled(); }
    // Takes up to so many out, to be spent apart.
    [[nodiscard]] Steps part(std::uint64_t steps) {
        const std::uint64_t taken = steps < left_ ? steps : left_;
        left_ -= taken;
        return Steps(taken, watch_);
    }
    void give_back(const Steps& part) { left_ += part.left_; }

  private:
    std::uint64_t left_ = 0;
    Watch* watch_ = nullptr;
};

// How one pass chooses what to lay into a niche. Parts of a whole, 0 to 16.
struct Taste {
    std::uint32_t width = 0;
    std::uint32_t height = 0;
    std::uint32_t area = 0;
    std::uint32_t flush = 0;
    std::uint32_t noise = 0;
};

// One pass over the rooms in order: what fits the lowest niche best is laid into it. Weights (1024 is plain)
// say how much an item is to be preferred. Items that find no place are left out.
[[nodiscard]] Layout lay(std::span<const Item> items, std::span<const Size> rooms,
                         std::span<const std::uint32_t> weights, const Taste& taste, Random& random,
                         Steps& steps);

// Passes with changing tastes, in which what was left out weighs more the next time, until all is laid or the
// steps are spent: then the best, which leaves the least area out.
[[nodiscard]] Layout lay_in_turns(std::span<const Item> items, std::span<const Size> rooms, Random& random,
                                  Steps& steps);

// For thousands: rows of falling height, first fit, which is quick. Leaves out what fits no room.
[[nodiscard]] Layout lay_in_rows(std::span<const Item> items, std::span<const Size> rooms);

// A layout that wastes next to nothing, where there is one: see pack_tight.cpp.
[[nodiscard]] std::optional<Layout> lay_tightly(std::span<const Item> items, std::span<const Size> rooms,
                                                Random& random, Steps& steps);

// No packing into rooms of this size has fewer rooms.
[[nodiscard]] std::size_t least_rooms(std::span<const Item> items, Size room);

// Exact, by exhausting what can be: see pack_exact.cpp.
enum class Answer : std::uint8_t { no, yes, unknown };
struct Verdict {
    Answer answer = Answer::unknown;
    Layout layout;  // where yes
};
[[nodiscard]] Verdict fits_one_room(std::span<const Item> items, Size room, Steps& steps);
inline constexpr std::size_t most_exact_items = 12;
// Whether so many rooms do. At most most_exact_items items.
[[nodiscard]] Verdict fits_rooms(std::span<const Item> items, Size room, std::size_t rooms, Steps& steps);

struct BoxedLayout {
    Size size;
    Layout layout;
};
// All boxes that hold the items and lie within the room, but those that are as wide and as high as another;
// by growing width. None where the steps ran out. For a handful: up to some six items.
[[nodiscard]] std::optional<std::vector<BoxedLayout>> least_boxes(std::span<const Item> items, Size room,
                                                                  Steps& steps);

}  // namespace lode::packing
