#include "puzzle/sizes.hpp"

#include <algorithm>
#include <cmath>

#include "text/quoted.hpp"

namespace lode {
namespace {

// Of the open cells, how many the words' letters take up at the most where the size is left to us: this
// project's judgement of what looks neither crammed nor empty.
constexpr double comfortable_density = 0.6;
// How many sizes are tried, comfortable ones each a tenth larger than the last.
constexpr int sizes_tried = 12;
// A tight grid is sought downwards from this density, which nearly every list reaches, until so many sizes in
// a row gave none.
constexpr double easy_density = 0.8;
constexpr int failures_in_a_row = 3;
constexpr double most_overlap = 0.35;   // of the words' letters, how many may lie on others
constexpr double ready_overlap = 0.06;  // about so many do without being made to
// Exact and tight sizes are chosen among all of them, up to so many cells.
constexpr double most_cells_chosen = 40'000;
// Near an aspect is what differs from it by no more than this factor; further away where there is nothing.
constexpr double near_aspect = 1.2;
// A maker is told of so many.
constexpr std::size_t exact_sizes_told = 3;

// A shape that leaves its outer rows or columns closed has lost its tips, as a star on an even number of
// columns does.
bool fills_its_frame(const Mask& mask) {
    const Size size = mask.size();
    const auto open_in_row = [&](int row) {
        for (int column = 0; column < size.columns; ++column)
            if (mask.open({row, column})) return true;
        return false;
    };
    const auto open_in_column = [&](int column) {
        for (int row = 0; row < size.rows; ++row)
            if (mask.open({row, column})) return true;
        return false;
    };
    return open_in_row(0) && open_in_row(size.rows - 1) && open_in_column(0) &&
           open_in_column(size.columns - 1);
}

std::optional<Refusal> too_large(Size size) {
    if (size.cells() <= max_made_cells) return std::nullopt;
    return Refusal{Refusal::Reason::unusable,
                   "A puzzle of " + std::to_string(size.cells()) + " cells is too large.",
                   {},
                   {"At most " + std::to_string(max_made_cells) + " cells."},
                   {},
                   0};
}

Refusal too_large_to_choose() {
    return {Refusal::Reason::unusable,
            "The words are too many for their size to be chosen: it would have more than " +
                std::to_string(static_cast<int>(most_cells_chosen)) + " cells.",
            {},
            {"Name a size with --grid."},
            {},
            0};
}

std::size_t count_letters(const Job& job) {
    std::size_t letters = 0;
    for (const std::uint32_t word : job.nested.placed) letters += job.words[word].size();
    return letters;
}

std::size_t longest_of(const Job& job) {
    std::size_t longest = 0;
    for (const auto& word : job.words) longest = std::max(longest, word.size());
    return longest;
}

}  // namespace

std::optional<Refusal> too_long_for(const Mask& mask, const Job& job) {
    const auto longest = static_cast<std::size_t>(longest_run(mask, job.directions));
    for (const auto& word : job.list.words) {
        if (word.letters.size() <= longest) continue;
        return Refusal{Refusal::Reason::unusable,
                       place_in(job.list.source, word.line) + quoted(word.shown) + " has " +
                           std::to_string(word.letters.size()) + " letters, and a grid of " +
                           std::to_string(mask.size().columns) + "x" + std::to_string(mask.size().rows) +
                           " takes words of at most " + std::to_string(longest) +
                           " in these directions and this shape.",
                       {word.shown},
                       {"Take a larger grid, more directions or a shorter word; --grid auto finds a size."},
                       job.list.source,
                       word.line};
    }
    return std::nullopt;
}

Outcome<Sizes> Sizes::open(const Recipe& recipe, const Job& job) {
    Sizes sizes(recipe, job);
    if (auto refusal = sizes.start()) return std::move(*refusal);
    return sizes;
}

std::uint64_t Sizes::effort_for_one() const {
    return way_ == Way::given ? recipe_->effort : recipe_->effort / sizes_tried;
}

std::optional<Refusal> Sizes::start() {
    if (recipe_->mask || recipe_->size) return start_given();
    const bool message_ends = !recipe_->message.empty() && !recipe_->filler_after_message;
    if (recipe_->leftover || message_ends) return start_exact();
    way_ = Way::comfortable;
    if (recipe_->tight)
        if (auto refusal = start_tight()) return refusal;
    if (way_ == Way::tight) return std::nullopt;
    if (grow(room_wanted())) return std::nullopt;
    return Refusal{Refusal::Reason::unusable,
                   "No grid of at most " + std::to_string(max_made_cells) +
                       " cells holds these words in these directions.",
                   {},
                   {"Give fewer or shorter words, more directions, or an aspect nearer to 1."},
                   {},
                   0};
}

std::optional<Refusal> Sizes::start_given() {
    if (recipe_->mask) {
        if (auto refusal = too_large(recipe_->mask->size())) return refusal;
        mask_ = *recipe_->mask;
    } else {
        const auto size = checked_size(recipe_->size->columns, recipe_->size->rows);
        if (!size) return size.refusal();
        if (auto refusal = too_large(*size)) return refusal;
        mask_ = shape_mask(recipe_->shape, *size);
    }
    return too_long_for(mask_, *job_);
}

// Cells that the words take up with what lies between them.
std::size_t Sizes::room_wanted() const {
    std::size_t room = 0;
    for (const std::uint32_t word : job_->nested.placed)
        room += (job_->words[word].size() + recipe_->spacing) * (1 + recipe_->spacing);
    const auto comfortable =
        static_cast<std::size_t>(std::ceil(static_cast<double>(room) / comfortable_density));
    return std::max(comfortable, room + job_->message.size());
}

// The smallest grid of the aspect with so many open cells that takes the longest word.
bool Sizes::grow(std::size_t wanted) {
    const auto longest = static_cast<double>(longest_of(*job_));
    for (double cells = std::max(4.0, static_cast<double>(wanted));
         cells <= static_cast<double>(max_made_cells); cells *= 1.03) {
        const double columns = std::max(1.0, std::round(std::sqrt(cells * recipe_->aspect)));
        const double rows = std::max(1.0, std::ceil(cells / columns));
        const auto size = checked_size(static_cast<long long>(columns), static_cast<long long>(rows));
        if (!size) break;
        if (std::max(columns, rows) < longest) continue;
        Mask mask = shape_mask(recipe_->shape, *size);
        if (mask.open_count() < wanted || !fills_its_frame(mask) || too_long_for(mask, *job_)) continue;
        mask_ = std::move(mask);
        return true;
    }
    return false;
}

// All sizes near the aspect with so many open cells, the smaller ones first; those furthest from the aspect
// only where there are no others.
std::vector<Sizes::Choice> Sizes::choices_near(double least, double most) const {
    for (double tolerance = near_aspect; tolerance <= 128; tolerance *= tolerance) {
        std::vector<Choice> choices;
        // A shape opens a third of its frame at the least.
        const double most_cells = recipe_->shape == Shape::rectangle ? most : 3 * most + 16;
        for (int rows = 1; rows <= most_cells; ++rows) {
            const double middle = rows * recipe_->aspect;
            const int first =
                std::max(1, static_cast<int>(std::ceil(std::max(middle / tolerance, middle - 4))));
            const int last =
                static_cast<int>(std::floor(std::min({middle * tolerance, middle + 4, most_cells / rows})));
            for (int columns = first; columns <= last; ++columns) {
                if (rows * columns < least) continue;
                const Mask mask = shape_mask(recipe_->shape, {rows, columns});
                const auto open = static_cast<double>(mask.open_count());
                if (open >= least && open <= most && fills_its_frame(mask) && !too_long_for(mask, *job_))
                    choices.push_back({mask.size(), open});
            }
        }
        std::stable_sort(choices.begin(), choices.end(),
                         [](const Choice& a, const Choice& b) { return a.open < b.open; });
        if (!choices.empty()) return choices;
    }
    return {};
}

void Sizes::take(std::size_t choice) {
    at_ = choice;
    mask_ = shape_mask(recipe_->shape, choices_[choice].size);
}

// Those that the words can cover but for so many cells, the ones with little overlap first.
std::vector<Sizes::Choice> Sizes::exact_choices(double left) const {
    const auto letters = static_cast<double>(count_letters(*job_));
    const bool apart = recipe_->spacing > 0 || recipe_->crossings.most == std::size_t{0};
    auto choices = choices_near(letters * (apart ? 1 : 1 - most_overlap) + left, letters + left);
    const auto farness = [&](const Choice& choice) {
        const double overlap = (letters + left - choice.open) / letters;
        const double aspect = double{1} * choice.size.columns / choice.size.rows / recipe_->aspect;
        return std::abs(overlap - (apart ? 0 : ready_overlap)) + std::abs(std::log(aspect)) / 4;
    };
    std::stable_sort(choices.begin(), choices.end(),
                     [&](const Choice& a, const Choice& b) { return farness(a) < farness(b); });
    return choices;
}

std::vector<Size> exact_sizes(const Recipe& recipe, const Job& job, std::size_t leftover, Size like) {
    if (static_cast<double>(count_letters(job) + leftover) > most_cells_chosen) return {};
    Recipe its = recipe;
    its.aspect = double{1} * like.columns / like.rows;
    std::vector<Size> sizes;
    for (const auto& choice : Sizes(its, job).exact_choices(static_cast<double>(leftover)))
        if (sizes.size() < exact_sizes_told) sizes.push_back(choice.size);
    return sizes;
}

std::optional<Refusal> Sizes::start_exact() {
    way_ = Way::exact;
    const auto left = static_cast<double>(recipe_->leftover ? *recipe_->leftover : job_->message.size());
    if (static_cast<double>(count_letters(*job_)) + left > most_cells_chosen) return too_large_to_choose();
    choices_ = exact_choices(left);
    if (choices_.size() > sizes_tried) choices_.resize(sizes_tried);
    if (choices_.empty())
        return Refusal{
            Refusal::Reason::unusable,
            "No grid near this aspect can be covered by these words so that exactly " +
                std::to_string(static_cast<std::size_t>(left)) + " cells are left over.",
            {},
            {job_->message.empty()
                 ? "Leave another number of cells over, let words cross, or name a size with --grid."
                 : "Name a size with --grid, or let filler follow the message: --message-then filler."},
            {},
            0};
    take(0);
    return std::nullopt;
}

std::optional<Refusal> Sizes::start_tight() {
    way_ = Way::tight;
    const auto letters = static_cast<double>(count_letters(*job_));
    const double easy = static_cast<double>(room_wanted()) * comfortable_density / easy_density;
    if (easy > most_cells_chosen) return too_large_to_choose();
    choices_ = choices_near(letters * (1 - most_overlap), 1.5 * easy + 16);
    if (choices_.empty()) {
        way_ = Way::comfortable;
        return std::nullopt;
    }
    std::size_t choice = 0;
    while (choice + 1 < choices_.size() && choices_[choice].open < easy) ++choice;
    take(choice);
    return std::nullopt;
}

bool Sizes::go_on(bool made) {
    switch (way_) {
        case Way::given:
            return false;
        case Way::comfortable:
            return !made && tried_++ < sizes_tried && grow(mask_.open_count() + 1 + mask_.open_count() / 10);
        case Way::exact:
            if (made || at_ + 1 == choices_.size()) return false;
            take(at_ + 1);
            return true;
        case Way::tight:
            break;
    }
    // Upwards until one is found; otherwise downwards, and past a size that gave nothing.
    if (!made && (went_up_ || !found_) && at_ + 1 < choices_.size()) {
        went_up_ = true;
        take(at_ + 1);
        return true;
    }
    found_ = found_ || made;
    failed_ = made ? 0 : failed_ + 1;
    if (went_up_ || failed_ == failures_in_a_row || at_ == 0) return false;
    take(at_ - 1);
    return true;
}

}  // namespace lode
