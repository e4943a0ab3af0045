// What a recipe demands, against the mask, the list and each other. Whatever can be seen to be out of reach
// by counting is said here, before any search.

#include <algorithm>
#include <map>
#include <numeric>

#include "place/same_copy.hpp"
#include "puzzle/placing.hpp"
#include "puzzle/sizes.hpp"
#include "text/quoted.hpp"

namespace lode {
namespace {

Refusal contradiction(const std::string& message, const std::string& advice,
                      std::vector<std::string> words = {}) {
    return {Refusal::Reason::unusable, message, std::move(words), {advice}, {}, 0};
}

Refusal out_of_reach(const std::string& message, const std::string& advice) {
    return {Refusal::Reason::impossible, message, {}, {advice}, {}, 0};
}

std::string number(std::size_t count) {
    return std::to_string(count);
}

std::string cells(std::size_t count) {
    return number(count) + (count == 1 ? " cell" : " cells");
}

std::string place_text(Cell cell) {
    return "row " + std::to_string(cell.row + 1) + ", column " + std::to_string(cell.column + 1);
}

class DemandsOn {
  public:
    DemandsOn(const Mask& mask, const Recipe& recipe, const Job& job, const Placing& placing)
        : mask_(mask), recipe_(recipe), job_(job), placing_(placing) {
        for (const auto& word : placing.words) letters_ += word.size();
    }

    Outcome<Demands> run() {
        using Step = std::optional<Refusal> (DemandsOn::*)();
        for (const Step step : {&DemandsOn::set_spacing, &DemandsOn::set_leftover, &DemandsOn::set_crossings,
                                &DemandsOn::set_shares, &DemandsOn::set_pins, &DemandsOn::set_before})
            if (auto refusal = (this->*step)()) return std::move(*refusal);
        return std::move(demands_);
    }

  private:
    std::optional<Refusal> set_spacing() {
        if (recipe_.spacing > max_spacing)
            return contradiction("A spacing of " + number(recipe_.spacing) + " cells is too wide.",
                                 "At most " + number(max_spacing) + ".");
        demands_.spacing = static_cast<int>(recipe_.spacing);
        return std::nullopt;
    }

    std::optional<Refusal> set_leftover() {
        demands_.leftover = recipe_.leftover;
        if (!recipe_.message.empty()) demands_.message = job_.message;
        demands_.message_from_right = is_right_to_left(recipe_.message);
        const std::size_t spelt = demands_.message.size();
        demands_.filler_follows = spelt > 0 && recipe_.filler_after_message;
        if (demands_.filler_follows)
            if (auto refusal = message_without_room()) return refusal;
        if (spelt > 0 && !demands_.filler_follows && recipe_.leftover && *recipe_.leftover != spelt)
            return contradiction("The message " + quoted(recipe_.message) + " has " + number(spelt) +
                                     " letters, and " + number(*recipe_.leftover) +
                                     " cells are to be left over.",
                                 "Leave --leftover out: the message says how many.");
        if (spelt > 0 && !demands_.filler_follows) demands_.leftover = spelt;
        if (!demands_.leftover) return std::nullopt;

        const std::size_t open = mask_.open_count();
        const std::size_t left = *demands_.leftover;
        if (left >= open)
            return contradiction(number(left) + " cells cannot be left over in a grid of " + number(open) +
                                     " open cells that holds words.",
                                 "Take a larger grid, or leave fewer cells over.");
        const std::size_t to_cover = open - left;
        if (letters_ < to_cover) {
            auto refusal =
                out_of_reach("The words have " + number(letters_) + " letters, and cannot cover " +
                                 number(to_cover) + " cells so that " + number(left) +
                                 " are left over: the grid has " + cells(to_cover - letters_) + " too many.",
                             "Leave " + number(open - letters_) +
                                 " cells over or more, take a smaller grid, or add words.");
            advise_sizes(refusal);
            if (spelt > 0 && !demands_.filler_follows)
                refusal.advice.push_back("With --message-then filler what the message leaves is filled.");
            return refusal;
        }
        // Words can lie on each other, but not within the cells of another.
        const auto longest =
            std::max_element(placing_.words.begin(), placing_.words.end(),
                             [](const auto& a, const auto& b) { return a.size() < b.size(); });
        if (longest->size() > to_cover) {
            const auto& shown =
                job_.list.words[placing_.listed[static_cast<std::size_t>(longest - placing_.words.begin())]]
                    .shown;
            auto refusal = out_of_reach(quoted(shown) + " alone covers " + number(longest->size()) +
                                            " cells, more than the " + number(to_cover) +
                                            " that are not left over: the grid has " +
                                            cells(longest->size() - to_cover) + " too few.",
                                        "Take a larger grid, or leave fewer cells over.");
            advise_sizes(refusal);
            return refusal;
        }
        return std::nullopt;
    }

    // A message that filler follows needs no more than room.
    std::optional<Refusal> message_without_room() {
        const std::size_t spelt = demands_.message.size();
        if (recipe_.leftover && *recipe_.leftover < spelt)
            return contradiction("The message " + quoted(recipe_.message) + " has " + number(spelt) +
                                     " letters, " + number(spelt - *recipe_.leftover) + " more than the " +
                                     cells(*recipe_.leftover) + " that are to be left over.",
                                 "Leave " + number(spelt) + " cells over or more, or shorten the message.");
        // The words cover the longest at the least, and where they may not cross all their letters.
        std::size_t covered = letters_;
        if (recipe_.spacing == 0 && recipe_.crossings.most != std::size_t{0}) {
            covered = 0;
            for (const auto& word : placing_.words) covered = std::max(covered, word.size());
        }
        const std::size_t open = mask_.open_count();
        if (covered + spelt <= open) return std::nullopt;
        return out_of_reach("The message " + quoted(recipe_.message) + " has " + number(spelt) +
                                " letters, the words cover " + cells(covered) +
                                " at the least, and the grid has " + number(open) + ": " +
                                cells(covered + spelt - open) + " too few.",
                            "Take a larger grid, or shorten the message.");
    }

    // Sizes of the shape that the words can cover, by the number of cells.
    void advise_sizes(Refusal& refusal) const {
        if (recipe_.mask) return;
        const auto sizes = exact_sizes(recipe_, job_, *demands_.leftover, mask_.size());
        if (sizes.empty()) return;
        std::string names;
        for (const Size size : sizes)
            names += (names.empty()          ? ""
                      : size == sizes.back() ? " or "
                                             : ", ") +
                     number(static_cast<std::size_t>(size.columns)) + "x" +
                     number(static_cast<std::size_t>(size.rows));
        refusal.advice.insert(refusal.advice.begin(), "By their cells these sizes would fit: --grid " +
                                                          names + "; --grid auto tries them.");
    }

    std::optional<Refusal> set_crossings() {
        const auto& wanted = recipe_.crossings;
        demands_.crossings.least = wanted.least;
        if (wanted.most) demands_.crossings.most = *wanted.most;
        if (wanted.most && *wanted.most < wanted.least)
            return contradiction("At least " + number(wanted.least) +
                                     " crossings are asked for, and at most " + number(*wanted.most) + ".",
                                 "Ask for one of the two.");
        if (wanted.least > 0 && recipe_.spacing > 0)
            return contradiction("Words that are kept apart cannot cross, and crossings are asked for.",
                                 "Leave --spacing or --crossings out.");
        if (wanted.least > 0)
            if (const std::size_t most = most_crossings(); wanted.least > most)
                return most == 0
                           ? out_of_reach(
                                 "No two of the words have a letter in common: none can cross another.",
                                 "Leave --crossings out, or add words that share letters.")
                           : out_of_reach("By their letters the words can cross in " + cells(most) +
                                              " at the most, and not in " + number(wanted.least) + ".",
                                          "Ask for " + number(most) +
                                              " crossings at the most, or add words that share letters.");
        if (!demands_.leftover) return std::nullopt;
        // Every letter beyond the cells to cover lies on another.
        const std::size_t shared = letters_ - (mask_.open_count() - *demands_.leftover);
        if (!demands_.may_cross() && shared > 0)
            return out_of_reach("The words have " + number(letters_) + " letters, " + number(shared) +
                                    " more than the cells that are not left over, and may not cross.",
                                "Let words cross, or leave fewer cells over.");
        if (wanted.least > shared)
            return out_of_reach("With so many cells left over only " + number(shared) +
                                    " letters can lie on others, and " + number(wanted.least) +
                                    " crossings are asked for.",
                                "Leave more cells over, or ask for fewer crossings.");
        // Nothing shared is a tiling, which the searches do better at when they know.
        if (shared == 0) demands_.crossings.most = 0;
        return std::nullopt;
    }

    // In a crossing two words have the same letter, and a word has each of its letters in a cell of its own.
    [[nodiscard]] std::size_t most_crossings() const {
        struct Letters {
            std::size_t all = 0, most_of_a_word = 0;
        };
        std::map<Letter, Letters> letters;
        for (const auto& word : placing_.words) {
            std::map<Letter, std::size_t> of_word;
            for (const Letter letter : word) ++of_word[letter];
            for (const auto& [letter, count] : of_word) {
                letters[letter].all += count;
                letters[letter].most_of_a_word = std::max(letters[letter].most_of_a_word, count);
            }
        }
        std::size_t most = 0;
        for (const auto& [letter, count] : letters)
            most += std::min(count.all / 2, count.all - count.most_of_a_word);
        return most;
    }

    [[nodiscard]] Directions backward() const {
        const Directions forward = Directions::forward(job_.right_to_left);
        Directions others;
        for (const Direction direction : all_directions)
            if (!forward.contains(direction)) others.insert(direction);
        return others;
    }

    std::optional<Refusal> set_shares() {
        DirectionWeights equal{};
        for (const Direction direction : all_directions)
            if (job_.directions.contains(direction)) equal[static_cast<unsigned>(direction)] = 1;
        if (recipe_.weights || recipe_.equal_shares)
            if (auto refusal = set_weights(recipe_.weights.value_or(equal))) return refusal;
        if (!recipe_.most_backward) return std::nullopt;
        const Directions others = backward();
        std::size_t most_forward = 0;
        std::size_t least_backward = 0;
        const auto words = placing_.words.size();
        for (const Direction direction : all_directions) {
            if (!job_.directions.contains(direction)) continue;
            Range range{0, words};
            for (const Share& share : demands_.shares)
                if (share.directions.contains(direction)) range = share.words;
            (others.contains(direction) ? least_backward : most_forward) +=
                others.contains(direction) ? range.least : range.most;
        }
        least_backward = std::max(least_backward, words > most_forward ? words - most_forward : 0);
        if (least_backward > *recipe_.most_backward)
            return contradiction("By their directions " + number(least_backward) +
                                     " words at least read backward, and at most " +
                                     number(*recipe_.most_backward) + " may.",
                                 "Add forward directions, or allow more words backward.");
        demands_.shares.push_back({others, {0, *recipe_.most_backward}});
        return std::nullopt;
    }

    std::optional<Refusal> set_weights(const DirectionWeights& weights) {
        std::uint64_t all = 0;
        for (const Direction direction : all_directions) {
            const std::uint64_t weight = weights[static_cast<unsigned>(direction)];
            all += weight;
            if (weight > 0 && !job_.directions.contains(direction))
                return contradiction("A share is asked for of the direction " + std::string(name(direction)) +
                                         ", which is none of the grid's.",
                                     "Name it in --directions, or leave it out of --shares.");
        }
        if (all == 0) return contradiction("No direction has a share.", "Give one a weight of 1 or more.");
        for (const Direction direction : all_directions) {
            if (!job_.directions.contains(direction)) continue;
            const std::uint64_t part =
                placing_.words.size() * std::uint64_t{weights[static_cast<unsigned>(direction)]};
            Directions alone;
            alone.insert(direction);
            demands_.shares.push_back({alone, {part / all, (part + all - 1) / all}});
        }
        return std::nullopt;
    }

    // The word's number in the guard, by its letters.
    [[nodiscard]] std::optional<std::uint32_t> guarded(const std::string& shown) {
        if (numbers_.empty())
            for (std::uint32_t word = 0; word < placing_.listed.size(); ++word)
                numbers_.emplace(job_.list.words[placing_.listed[word]].letters, word);
        const auto found = numbers_.find(job_.segmenter().spell(shown).letters);
        if (found == numbers_.end()) return std::nullopt;
        return found->second;
    }

    // A place for a word that another brings with it is one for that other.
    [[nodiscard]] std::pair<std::uint32_t, Placement> of_placed_word(std::uint32_t word,
                                                                     const Placement& placement) const {
        if (word < placing_.words.size()) return {word, placement};
        const auto copy = std::find_if(placing_.nested.begin(), placing_.nested.end(),
                                       [&](const InnerCopy& inner) { return inner.inner == word; });
        const Direction along = copy->turned ? opposite(placement.direction) : placement.direction;
        return {copy->outer, {moved(placement.first, along, -copy->first), along}};
    }

    std::optional<Refusal> set_pins() {
        if (recipe_.pins.empty()) return std::nullopt;
        demands_.pins.resize(placing_.words.size());
        for (const Pin& pin : recipe_.pins)
            if (auto refusal = set_pin(pin)) return refusal;
        if (auto refusal = pins_that_clash()) return refusal;
        for (const Share& share : demands_.shares) {
            const auto pinned = static_cast<std::size_t>(std::count_if(
                demands_.pins.begin(), demands_.pins.end(),
                [&](const auto& pin) { return pin && share.directions.contains(pin->direction); }));
            if (pinned > share.words.most)
                return contradiction(number(pinned) + " words are pinned in directions that at most " +
                                         number(share.words.most) + " may read in.",
                                     "Pin fewer of them, or change --shares and --backward.");
        }
        return std::nullopt;
    }

    // A pin of the earlier puzzle whose word is gone from the list goes with it.
    [[nodiscard]] bool stood_before(const Pin& pin) const {
        return recipe_.earlier && std::any_of(recipe_.earlier->words.begin(), recipe_.earlier->words.end(),
                                              [&](const Pin& word) {
                                                  return job_.segmenter().spell(word.word).letters ==
                                                         job_.segmenter().spell(pin.word).letters;
                                              });
    }

    std::optional<Refusal> set_pin(const Pin& pin) {
        const auto named = guarded(pin.word);
        if (!named && stood_before(pin)) return std::nullopt;
        if (!named)
            return contradiction("The pinned word " + quoted(pin.word) + " is none of the list's.",
                                 "Pin a word of the list.", {pin.word});
        auto [word, placement] = of_placed_word(*named, pin.placed);
        const Letters& letters = placing_.words[word];
        const int last = static_cast<int>(letters.size()) - 1;
        for (int at = 0; at <= last; ++at) {
            const Cell cell = moved(placement.first, placement.direction, at);
            if (mask_.open(cell)) continue;
            return contradiction("The pinned word " + quoted(pin.word) + " would stand on " +
                                     place_text(cell) +
                                     (mask_.inside(cell) ? ", a closed cell." : ", outside the grid."),
                                 "Pin it where all its letters have an open cell.", {pin.word});
        }
        // A palindrome is the same from its other end.
        if (is_palindrome(letters) && !job_.directions.contains(placement.direction))
            placement = {moved(placement.first, placement.direction, last), opposite(placement.direction)};
        if (!job_.directions.contains(placement.direction))
            return contradiction(
                "The word " + quoted(pin.word) + " is pinned to read " +
                    std::string(name(placement.direction)) + ", which is none of the grid's directions.",
                "Name the direction in --directions, or pin the word another way.", {pin.word});
        auto& known = demands_.pins[word];
        if (known && !same_copy(letters, *known, placement))
            return contradiction("The word " + quoted(pin.word) + " is pinned in two places.", "Pin it once.",
                                 {pin.word});
        known = placement;
        return std::nullopt;
    }

    [[nodiscard]] const std::string& shown(std::uint32_t word) const {
        return job_.list.words[placing_.listed[word]].shown;
    }

    std::optional<Refusal> pins_that_clash() const {
        struct Written {
            std::uint32_t word;
            Letter letter;
        };
        std::map<std::pair<int, int>, Written> cells;
        for (std::uint32_t word = 0; word < demands_.pins.size(); ++word) {
            if (!demands_.pins[word]) continue;
            const Letters& letters = placing_.words[word];
            for (int at = 0; at < static_cast<int>(letters.size()); ++at) {
                const Cell cell = moved(demands_.pins[word]->first, demands_.pins[word]->direction, at);
                const Letter letter = letters[static_cast<std::size_t>(at)];
                for (int row = cell.row - demands_.spacing; row <= cell.row + demands_.spacing; ++row) {
                    const auto from = cells.lower_bound({row, cell.column - demands_.spacing});
                    for (auto near = from; near != cells.end() && near->first.first == row &&
                                           near->first.second <= cell.column + demands_.spacing;
                         ++near) {
                        const auto& [other, there] = near->second;
                        if (other == word) continue;
                        if (demands_.may_cross() && there == letter) continue;
                        return contradiction(
                            "The pinned words " + quoted(shown(other)) + " and " + quoted(shown(word)) +
                                (there != letter && near->first == std::pair(cell.row, cell.column)
                                     ? " have different letters on "
                                 : demands_.spacing > 0 ? " stand too near to each other on "
                                                        : " cross, which they may not, on ") +
                                place_text(cell) + ".",
                            "Pin one of the two elsewhere.", {shown(other), shown(word)});
                    }
                }
                cells.emplace(std::pair(cell.row, cell.column), Written{word, letter});
            }
        }
        return std::nullopt;
    }

    // Places of words that are gone, or that the grid no longer has, are passed over: they need not be kept.
    std::optional<Refusal> set_before() {
        if (!recipe_.earlier) return std::nullopt;
        demands_.before.resize(placing_.words.size());
        for (const Pin& stood : recipe_.earlier->words) {
            const auto word = guarded(stood.word);
            if (!word || *word >= placing_.words.size()) continue;
            const auto length = static_cast<int>(placing_.words[*word].size());
            bool open = job_.directions.contains(stood.placed.direction);
            for (int at = 0; at < length && open; ++at)
                open = mask_.open(moved(stood.placed.first, stood.placed.direction, at));
            if (open) demands_.before[*word] = stood.placed;
        }
        return std::nullopt;
    }

    const Mask& mask_;
    const Recipe& recipe_;
    const Job& job_;
    const Placing& placing_;
    std::size_t letters_ = 0;
    std::map<std::vector<std::string>, std::uint32_t> numbers_;
    Demands demands_;
};

}  // namespace

Outcome<Demands> demands_on(const Mask& mask, const Recipe& recipe, const Job& job, const Placing& placing) {
    return DemandsOn(mask, recipe, job, placing).run();
}

}  // namespace lode
