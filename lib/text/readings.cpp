#include "text/readings.hpp"

#include <algorithm>

#include <letterlode/text.hpp>

namespace lode {
namespace {

// A text that is one letter, and what it is without case and marks, letter by letter of the split word.
struct Unit {
    std::string text;
    std::vector<std::string> plain;
};

std::vector<Unit> units_that_join(const Joining& joining) {
    std::vector<Unit> units;
    for (const auto& letter : joining.letters.all()) {
        Unit& unit = units.emplace_back();
        for (std::size_t at = 0; at < letter.parts.size(); ++at) {
            unit.text += letter.parts[at];
            // Apostrophes are no letters of a split word.
            if (letter.keys[at] != "'") unit.plain.push_back(folded(letter.parts[at]));
        }
    }
    if (joining.keeps_sharp_s) units.push_back({"ß", {"s", "s"}});
    return units;
}

// Where each unit of a reading begins, and which of those that join it is; the number after the last of them
// is the letter that stands there alone.
struct Step {
    std::size_t at;
    std::size_t unit;
};

class Readings {
  public:
    Readings(std::vector<Unit> split, std::vector<Unit> joined)
        : split_(std::move(split)), joined_(std::move(joined)) {}

    [[nodiscard]] bool any_joins() const {
        for (std::size_t at = 0; at < split_.size(); ++at)
            if (next_choice(at, 0) < joined_.size()) return true;
        return false;
    }

    [[nodiscard]] std::string split() const {
        std::vector<Step> steps;
        for (std::size_t at = 0; at < split_.size(); ++at) steps.push_back({at, joined_.size()});
        return text_of(steps);
    }

    // Depth first, by steps that are taken back: the ways that join most come early. Words may be long: no
    // recursion.
    [[nodiscard]] std::vector<std::string> first_ones(std::size_t at_most) const {
        std::vector<std::string> found;
        std::vector<Step> steps;
        std::size_t at = 0;
        while (found.size() < at_most) {
            for (; at < split_.size(); at = after(steps.back())) steps.push_back({at, next_choice(at, 0)});
            found.push_back(text_of(steps));
            while (!steps.empty() && steps.back().unit == joined_.size()) steps.pop_back();
            if (steps.empty()) break;
            steps.back().unit = next_choice(steps.back().at, steps.back().unit + 1);
            at = after(steps.back());
        }
        return found;
    }

  private:
    [[nodiscard]] bool stands_at(const Unit& unit, std::size_t at) const {
        if (unit.plain.size() > split_.size() - at) return false;
        for (std::size_t part = 0; part < unit.plain.size(); ++part)
            if (split_[at + part].plain.front() != unit.plain[part]) return false;
        return true;
    }
    [[nodiscard]] std::size_t next_choice(std::size_t at, std::size_t from) const {
        while (from < joined_.size() && !stands_at(joined_[from], at)) ++from;
        return from;
    }
    [[nodiscard]] std::size_t after(const Step& step) const {
        return step.at + (step.unit < joined_.size() ? joined_[step.unit].plain.size() : 1);
    }
    [[nodiscard]] std::string text_of(const std::vector<Step>& steps) const {
        std::string text;
        for (const Step& step : steps) {
            if (!text.empty()) text += letter_bar;
            text += step.unit < joined_.size() ? joined_[step.unit].text : split_[step.at].text;
        }
        return text;
    }

    std::vector<Unit> split_;  // a letter each
    std::vector<Unit> joined_;
};

}  // namespace

std::vector<std::string> readings_of(std::string_view word, const std::vector<std::string>& letters,
                                     const Joining& joining, std::size_t at_most) {
    std::vector<Unit> split;
    for (const auto& letter : letters) {
        const std::string plain = folded(letter);
        if (plain != "ss") {
            split.push_back({letter, {plain}});
            continue;
        }
        // A sharp s, which may stand for two.
        split.push_back({"s", {"s"}});
        split.push_back({"s", {"s"}});
    }
    std::vector<std::string> all{std::string(word)};
    const Readings readings(std::move(split), units_that_join(joining));
    if (!readings.any_joins()) return all;
    for (auto& reading : readings.first_ones(at_most)) all.push_back(std::move(reading));
    all.push_back(readings.split());
    return all;
}

}  // namespace lode
