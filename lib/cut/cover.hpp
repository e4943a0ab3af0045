#pragma once
// Few things into few rooms, exactly: each room gets a set of them that it is known to hold.

#include <algorithm>
#include <cstdint>
#include <functional>
#include <vector>

#include "cut/pack.hpp"

namespace lode::packing {

// A set of up to most_exact_items things, a bit each.
using Set = std::uint32_t;

class Cover {
  public:
    // Whether a room holds the set. What holds a set must hold its subsets.
    using Holds = std::function<Answer(Set)>;

    // By falling area, so that the first thing left has the fewest companions.
    Cover(std::vector<Length> areas, Length room_area, Holds holds)
        : areas_(std::move(areas)),
          room_area_(room_area),
          holds_(std::move(holds)),
          asked_(std::size_t{1} << areas_.size()),
          answers_(asked_.size()) {}

    // Sets that so many rooms hold, one a room, go into `sets`; where yes.
    Answer cover(Set left, std::size_t rooms, std::vector<Set>& sets) {
        if (left == 0) return Answer::yes;
        if (rooms == 0 || area_of(left) > static_cast<Length>(rooms) * room_area_) return Answer::no;
        if (rooms == 1) {
            const Answer answer = holds(left);
            if (answer == Answer::yes) sets.push_back(left);
            return answer;
        }
        const Set first = left & (~left + 1);
        const Set others = left & ~first;
        Answer answer = Answer::no;
        for (Set subset = others;; subset = (subset - 1) & others) {
            const Set set = subset | first;
            if (area_of(left & ~set) <= static_cast<Length>(rooms - 1) * room_area_) {
                const Answer here = holds(set);
                if (here == Answer::unknown) answer = Answer::unknown;
                if (here == Answer::yes) {
                    sets.push_back(set);
                    const Answer rest = cover(left & ~set, rooms - 1, sets);
                    if (rest == Answer::yes) return rest;
                    if (rest == Answer::unknown) answer = rest;
                    sets.pop_back();
                }
            }
            if (subset == 0) return answer;
        }
    }

  private:
    Answer holds(Set set) {
        if (asked_[set]) return answers_[set];
        asked_[set] = true;
        Answer& answer = answers_[set];
        if (area_of(set) > room_area_ || any_of(hopeless_, [&](Set h) { return (set & h) == h; }))
            return answer = Answer::no;
        if (any_of(held_, [&](Set h) { return (set & h) == set; })) return answer = Answer::yes;
        answer = holds_(set);
        if (answer == Answer::no) hopeless_.push_back(set);
        if (answer == Answer::yes) held_.push_back(set);
        return answer;
    }
    template <class Is>
    static bool any_of(const std::vector<Set>& sets, Is is) {
        return std::any_of(sets.begin(), sets.end(), is);
    }
    [[nodiscard]] Length area_of(Set set) const {
        Length area = 0;
        for (std::size_t i = 0; i < areas_.size(); ++i)
            if (set >> i & 1u) area += areas_[i];
        return area;
    }

    std::vector<Length> areas_;
    Length room_area_;
    Holds holds_;
    std::vector<bool> asked_;
    std::vector<Answer> answers_;
    std::vector<Set> hopeless_;
    std::vector<Set> held_;
};

// The numbers of the items from the largest to the smallest, by least area.
[[nodiscard]] std::vector<std::size_t> by_area(std::span<const Item> items);

}  // namespace lode::packing
