#include "support/random_tasks.hpp"

#include <algorithm>
#include <functional>
#include <map>
#include <stdexcept>

#include "support/brute_force.hpp"
#include "support/naive.hpp"

namespace lode::test {
namespace {

std::uint32_t number_of(const auto& range) {
    return static_cast<std::uint32_t>(range.size());
}

bool one_in(std::uint32_t number, Random& random) {
    return random.below(number) == 0;
}

// A piece of one of the words, or all of it, in either order.
Letters random_piece(const std::vector<Letters>& words, Random& random) {
    const Letters& word = words[random.below(number_of(words))];
    const std::uint32_t length = 2 + random.below(number_of(word) - 1);
    const auto first = word.begin() + random.below(number_of(word) - length + 1);
    Letters piece(first, first + length);
    if (one_in(2, random)) std::reverse(piece.begin(), piece.end());
    return piece;
}

// Gives a task demands; where there is a model, such as it meets.
class Asker {
  public:
    Asker(Task& task, const std::vector<Placement>& model, Random& random)
        : task_(task), model_(model), random_(random) {}

    void ask(Rule rule) {
        Demands& demands = task_.demands;
        switch (rule) {
            case Rule::pins:
                demands.pins = some_placements();
                return;
            case Rule::crossings:
                demands.crossings = around(covered_at_least(2), 3);
                return;
            case Rule::spacing:
                demands.spacing = 1 + static_cast<int>(random_.below(2));
                return;
            case Rule::leftover:
                demands.leftover = left();
                return;
            case Rule::message:
                ask_for_message();
                return;
            case Rule::shares:
                ask_for_shares();
                return;
            case Rule::before:
                demands.before = some_placements();
                demands.most_moved = random_.below(number_of(task_.words));
                return;
            case Rule::inner:
            case Rule::nested:
                throw std::logic_error("no demand");
        }
    }

  private:
    // Inside the grid where there is such a place, on open cells more often than not.
    [[nodiscard]] std::optional<Placement> placement_of(const Letters& word) {
        std::vector<Placement> inside, open;
        for (int row = 0; row < task_.mask.size().rows; ++row)
            for (int column = 0; column < task_.mask.size().columns; ++column)
                for (const Direction direction : all_directions) {
                    const auto cells = cells_from(task_.mask.size(), {row, column}, direction,
                                                  static_cast<int>(word.size()));
                    if (cells.empty()) continue;
                    inside.push_back({{row, column}, direction});
                    if (task_.directions.contains(direction) &&
                        std::all_of(cells.begin(), cells.end(), [&](const auto& cell) {
                            return task_.mask.open({cell.first, cell.second});
                        }))
                        open.push_back(inside.back());
                }
        const auto& choices = open.empty() || one_in(8, random_) ? inside : open;
        if (choices.empty()) return std::nullopt;
        return choices[random_.below(number_of(choices))];
    }

    std::vector<std::optional<Placement>> some_placements() {
        std::vector<std::optional<Placement>> placements(task_.words.size());
        const std::uint32_t sure = random_.below(number_of(task_.words));
        for (std::uint32_t word = 0; word < task_.words.size(); ++word)
            if (word == sure || one_in(2, random_))
                placements[word] =
                    !model_.empty() && !one_in(8, random_) ? model_[word] : placement_of(task_.words[word]);
        return placements;
    }

    [[nodiscard]] std::size_t covered_at_least(int times) {
        if (model_.empty()) return random_.below(3);
        std::map<std::pair<int, int>, int> cover;
        for (std::size_t word = 0; word < model_.size(); ++word)
            for (const auto& cell : cells_from(task_.mask.size(), model_[word].first, model_[word].direction,
                                               static_cast<int>(task_.words[word].size())))
                ++cover[cell];
        return static_cast<std::size_t>(std::count_if(
            cover.begin(), cover.end(), [&](const auto& cell) { return cell.second >= times; }));
    }

    [[nodiscard]] std::size_t left() {
        const std::size_t open = task_.mask.open_count();
        if (model_.empty() || one_in(8, random_)) return random_.below(static_cast<std::uint32_t>(open) + 2);
        return open - covered_at_least(1);
    }

    [[nodiscard]] Range around(std::size_t number, std::uint32_t kinds) {
        switch (random_.below(kinds)) {
            case 0:
                return {number, Range().most};
            case 1:
                return {0, number};
            case 2:
                return {number, number};
            default:
                return {number > 0 ? number - 1 : 0, number + random_.below(2)};
        }
    }

    void ask_for_message() {
        // Letters of the words bring copies by chance.
        std::uint32_t letters = 1;
        for (const auto& word : task_.words)
            for (const Letter letter : word) letters = std::max<std::uint32_t>(letters, letter + 1u);
        task_.demands.message = Letters(std::max<std::size_t>(1, left()));
        for (Letter& letter : task_.demands.message)
            letter = static_cast<Letter>(random_.below(letters + random_.below(10)));
        task_.demands.message_from_right = one_in(2, random_);
        if (one_in(2, random_)) task_.demands.leftover = task_.demands.message.size();
        if (!one_in(3, random_)) return;
        task_.demands.filler_follows = true;
        task_.demands.message.resize(1 + random_.below(number_of(task_.demands.message)));
    }

    [[nodiscard]] std::size_t words_in(Directions directions) {
        if (model_.empty()) return random_.below(number_of(task_.words) + 1);
        return static_cast<std::size_t>(std::count_if(
            model_.begin(), model_.end(),
            [&](const Placement& placement) { return directions.contains(placement.direction); }));
    }

    // Shares with a least have no direction in common; those with a most alone may.
    void ask_for_shares() {
        auto& shares = task_.demands.shares;
        shares.resize(1 + random_.below(3));
        for (const Direction direction : all_directions) {
            const std::uint32_t share = random_.below(number_of(shares) + 1);
            if (share < shares.size()) shares[share].directions.insert(direction);
        }
        for (Share& share : shares) share.words = around(words_in(share.directions), 4);
        if (one_in(2, random_)) return;
        Directions capped;
        for (const Direction direction : all_directions)
            if (one_in(2, random_)) capped.insert(direction);
        shares.push_back({capped, {0, words_in(capped)}});
    }

    Task& task_;
    const std::vector<Placement>& model_;
    Random& random_;
};

}  // namespace

Letters random_word(Random& random, std::uint32_t letters, std::uint32_t most) {
    Letters word(2 + random.below(most - 1));
    for (Letter& letter : word) letter = static_cast<Letter>(random.below(letters));
    return word;
}

Mask random_mask(Size size, Random& random) {
    Mask mask(size);
    for (int row = 0; row < size.rows; ++row)
        for (int column = 0; column < size.columns; ++column) mask.set({row, column}, !one_in(6, random));
    return mask;
}

Task random_small_task(Random& random) {
    Task task{
        random_mask({1 + static_cast<int>(random.below(3)), 1 + static_cast<int>(random.below(4))}, random),
        Directions()};
    for (const Direction direction : all_directions)
        if (one_in(2, random)) task.directions.insert(direction);
    const auto letters = 2 + random.below(3);
    for (std::uint32_t word = 0, words = 1 + random.below(3); word < words; ++word)
        task.words.push_back(random_word(random, letters, 4));
    for (std::uint32_t word = 0, words = random.below(3); word < words; ++word)
        task.avoided.push_back(random_word(random, letters, 3));
    return task;
}

const char* name_of(Rule rule) {
    switch (rule) {
        case Rule::pins:
            return "pins";
        case Rule::crossings:
            return "crossings";
        case Rule::spacing:
            return "spacing";
        case Rule::leftover:
            return "leftover";
        case Rule::message:
            return "message";
        case Rule::shares:
            return "shares";
        case Rule::before:
            return "before";
        case Rule::inner:
            return "inner";
        case Rule::nested:
            return "nested";
    }
    throw std::logic_error("no rule");
}

std::vector<Rule> some_rules(Random& random, std::size_t most) {
    std::vector<Rule> rules(all_rules.begin(), all_rules.end());
    random.shuffle(rules);
    rules.resize(random.below(static_cast<std::uint32_t>(most) + 1));
    return rules;
}

void add_rules(Task& task, std::vector<Rule> rules, const Model& model, Random& random) {
    const auto take = [&](Rule rule) { return std::erase(rules, rule) > 0; };
    const std::uint32_t letters = 2 + random.below(4);
    if (take(Rule::nested)) task.words.push_back(random_piece(task.words, random));
    if (take(Rule::inner))
        task.inner.push_back(one_in(3, random) ? random_word(random, letters, 2)
                                               : random_piece(task.words, random));
    if (rules.empty()) return;
    const auto placements = one_in(4, random) ? std::vector<Placement>() : model(task);
    Asker asker(task, placements, random);
    for (const Rule rule : rules) asker.ask(rule);
}

Task random_task_with(const std::vector<Rule>& rules, const Mask& mask, std::uint32_t most_words,
                      Random& random) {
    Task task{mask, Directions()};
    for (const Direction direction : all_directions)
        if (!one_in(4, random)) task.directions.insert(direction);
    const auto letters = 2 + random.below(4);
    for (std::uint32_t word = 0, words = 1 + random.below(most_words); word < words; ++word)
        task.words.push_back(random_word(random, letters, one_in(4, random) ? 4 : 3));
    if (one_in(4, random)) task.avoided.push_back(random_word(random, letters, 3));
    // One of its first few solutions.
    const auto model = [&](const Task& free) {
        std::vector<Placement> chosen;
        std::uint32_t passed_over = random.below(40);
        every_solution(free, [&](const auto& placements) {
            chosen = placements;
            return passed_over-- > 0;
        });
        return chosen;
    };
    add_rules(task, rules, model, random);
    return task;
}

Task random_task_with(const std::vector<Rule>& rules, Random& random) {
    const Size size{1 + static_cast<int>(random.below(3)), 3 + static_cast<int>(random.below(2))};
    return random_task_with(rules, random_mask(size, random), 3, random);
}

Task without(Task task, Rule rule) {
    if (rule == Rule::inner)
        task.inner.clear();
    else if (rule == Rule::nested)
        task.words.pop_back();
    else
        task.demands = {};
    return task;
}

}  // namespace lode::test
