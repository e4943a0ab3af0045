#include "puzzle/recipe_judge.hpp"

#include <map>

#include "puzzle/judged_words.hpp"
#include "puzzle/nested_words.hpp"

namespace lode {
namespace {

// Whether a letter has the same number in both, so that a grid in one is a grid in the other.
bool begins_with(const Alphabet& longer, const Alphabet& shorter) {
    if (shorter.size() > longer.size()) return false;
    for (std::size_t letter = 0; letter < shorter.size(); ++letter)
        if (longer.text(static_cast<Letter>(letter)) != shorter.text(static_cast<Letter>(letter)))
            return false;
    return true;
}

bool has_all(const Alphabet& longer, const Alphabet& shorter) {
    for (std::size_t letter = 0; letter < shorter.size(); ++letter)
        if (!longer.find(shorter.text(static_cast<Letter>(letter)))) return false;
    return true;
}

void add_all(Alphabet& to, const Alphabet& letters) {
    for (std::size_t letter = 0; letter < letters.size(); ++letter)
        to.add(letters.text(static_cast<Letter>(letter)));
}

// The grid in the numbers of an alphabet that has all its letters.
Grid renumbered(const LetteredGrid& grid, const Alphabet& alphabet) {
    Letters numbers;
    for (std::size_t letter = 0; letter < grid.alphabet.size(); ++letter)
        numbers.push_back(alphabet.find(grid.alphabet.text(static_cast<Letter>(letter))).value());
    Grid in_numbers(grid.grid.size());
    for (int row = 0; row < grid.grid.size().rows; ++row)
        for (int column = 0; column < grid.grid.size().columns; ++column) {
            const Letter letter = grid.grid[{row, column}];
            in_numbers[{row, column}] = letter < numbers.size() ? numbers[letter] : letter;
        }
    return in_numbers;
}

}  // namespace

Outcome<std::unique_ptr<RecipeJudge>> RecipeJudge::open(const Recipe& recipe, const CheckRules& rules) {
    auto segmenter = Segmenter::open(recipe.text);
    if (!segmenter) return segmenter.refusal();
    auto list = spell(recipe.words, *segmenter);
    if (!list) return list.refusal();
    if (auto refusal = bad_avoided_word(recipe, *segmenter)) return std::move(*refusal);
    Alphabet alphabet;
    std::vector<Letters> letters;
    for (const auto& word : list->words) letters.push_back(alphabet.add_all(word.letters));
    const auto nested = nest(*list, letters, recipe.nested);
    if (!nested) return nested.refusal();

    std::unique_ptr<RecipeJudge> judge(new RecipeJudge(std::move(*segmenter), std::move(*list)));
    judge->words_ = judged_words(judge->list_, *nested);
    judge->avoided_ = avoided_readings(recipe, judge->segmenter_);
    judge->rules_ = audit_rules(recipe, judge->avoided_, judge->segmenter_);
    judge->rules_.dictionary = rules.dictionary;
    judge->rules_.shortest_by_chance = rules.shortest_by_chance;
    return judge;
}

std::shared_ptr<const RecipeJudge::Search> RecipeJudge::built(Alphabet alphabet) const {
    Judge judge(alphabet, words_, rules_, segmenter_);
    return std::make_shared<const Search>(Search{std::move(alphabet), std::move(judge)});
}

// Filler may be any letter of the language: with all of them, few grids bring another.
Alphabet RecipeJudge::with_all_letters(const Alphabet& known, const Alphabet& of_grid) const {
    Alphabet all = known;
    add_all(all, of_grid);
    for (const Word& word : list_.words) all.add_all(word.letters);
    all.add_all(segmenter_.main_letters());
    return all;
}

// For one grid the search is built in its own letters, as fast as it can be; for a second one in all that are
// known. Several threads wait for the one that builds.
std::shared_ptr<const RecipeJudge::Search> RecipeJudge::search_for(const Alphabet& of_grid) const {
    const std::lock_guard lock(mutex_);
    if (!search_)
        search_ = built(of_grid);
    else if (!has_all(search_->alphabet, of_grid))
        try {
            search_ = built(with_all_letters(search_->alphabet, of_grid));
        } catch (const std::length_error&) {
            search_ = built(of_grid);  // more letters than an alphabet has room for: these alone
        }
    return search_;
}

std::vector<std::optional<Placement>> RecipeJudge::places_of(std::span<const PlacedWord> placed) const {
    std::vector<std::optional<Placement>> places(words_.size());
    if (placed.empty()) return places;
    // A puzzle has them in the list's order.
    std::size_t in_order = 0;
    while (in_order < placed.size() && in_order < words_.size() &&
           placed[in_order].letters == words_[in_order].letters)
        places[in_order] = placed[in_order].placed, ++in_order;
    if (in_order == placed.size()) return places;
    std::map<std::vector<std::string>, Placement> known;
    for (const auto& word : placed) known.emplace(word.letters, word.placed);
    for (std::size_t word = 0; word < words_.size(); ++word)
        if (const auto found = known.find(words_[word].letters); found != known.end())
            places[word] = found->second;
    return places;
}

Outcome<Audit> RecipeJudge::audit(const LetteredGrid& grid, std::span<const PlacedWord> placed,
                                  const SearchControl& control) const {
    const auto search = search_for(grid.alphabet);
    const auto places = places_of(placed);
    auto found = begins_with(search->alphabet, grid.alphabet)
                     ? search->judge.audit(grid.grid, places, control)
                     : search->judge.audit(renumbered(grid, search->alphabet), places, control);
    if (found.cancelled)
        return Refusal{
            Refusal::Reason::unfinished, "The check was interrupted before its end.", {}, {}, {}, 0};
    return named_as_listed(std::move(found), avoided_);
}

}  // namespace lode
