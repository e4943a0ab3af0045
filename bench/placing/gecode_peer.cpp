// Gecode (package libgecode-dev) on two models. It is asked for less than the engine: nothing keeps words
// from being read a second time, since that would need a constraint for each word and place. Whatever it
// proves impossible is therefore so for the engine too.
//
// Both have a variable for each word's place and one for each cell's letter. In the first, `by letters`, an
// element constraint for each letter of each word picks the cell's variable directly by the place. In the
// second, `by cells`, the place first picks the cell (an element constraint over numbers), and the cell its
// letter: constraints are weaker and cheaper. Cells that are left over are counted by a global cardinality
// constraint over the cells of all letters; words that must not cross have all those cells distinct.
//
// The search is the strong general one: the place with the fewest values per accumulated failure (dom/wdeg;
// Boussemart, Hemery, Lecoutre, Sais, "Boosting systematic search by weighting constraints", ECAI 2004), the
// value that shares most letters with those that stand, chance among equals, restarts by Luby's sequence with
// no-goods. A geometric sequence placed fewer.

#include <gecode/int.hh>
#include <gecode/minimodel.hh>
#include <gecode/search.hh>
#include <memory>

#include "engines.hpp"
#include "places.hpp"

namespace lode::bench {
namespace {

enum class Model { by_letters, by_cells };

class Places : public Gecode::Space {
  public:
    Places(const Instance& instance, const std::vector<std::vector<Place>>& places, Model model,
           std::uint64_t seed)
        : places_(&places),
          words_(&instance.words),
          chance_(static_cast<unsigned>(seed)),
          letter_(*this, static_cast<int>(instance.size.cells()), 0, 25) {
        using namespace Gecode;
        place_ = IntVarArray(*this, static_cast<int>(places.size()));
        IntVarArgs cells;
        for (std::size_t word = 0; word < places.size(); ++word) {
            const int last = static_cast<int>(places[word].size()) - 1;
            if (last < 0) {
                fail();
                return;
            }
            const IntVar place = place_[static_cast<int>(word)] = IntVar(*this, 0, last);
            for (std::size_t at = 0; at < instance.words[word].size(); ++at) {
                const IntVar letter(*this, instance.words[word][at], instance.words[word][at]);
                const bool by_cells = model == Model::by_cells;
                if (by_cells || instance.leftover || !instance.may_cross) {
                    IntArgs numbers(last + 1);
                    for (int value = 0; value <= last; ++value)
                        numbers[value] = places[word][static_cast<std::size_t>(value)].cells[at];
                    cells << IntVar(*this, 0, letter_.size() - 1);
                    element(*this, numbers, place, cells[cells.size() - 1], IPL_DOM);
                }
                if (by_cells) {
                    element(*this, letter_, cells[cells.size() - 1], letter, IPL_DOM);
                } else {
                    IntVarArgs letters(last + 1);
                    for (int value = 0; value <= last; ++value)
                        letters[value] = letter_[places[word][static_cast<std::size_t>(value)].cells[at]];
                    element(*this, letters, place, letter, IPL_DOM);
                }
            }
        }
        if (!instance.may_cross) distinct(*this, cells, IPL_DOM);
        if (instance.leftover)
            count_leftover(cells, static_cast<int>(*instance.leftover), instance.may_cross);
        branch(*this, place_, INT_VAR_AFC_SIZE_MAX(0.99), INT_VAL(&most_shared));
    }
    Places(Places& other)
        : Space(other), places_(other.places_), words_(other.words_), chance_(other.chance_) {
        place_.update(*this, other.place_);
        letter_.update(*this, other.letter_);
    }
    Gecode::Space* copy() override { return new Places(*this); }

    [[nodiscard]] std::vector<Placement> placements() const {
        std::vector<Placement> found;
        for (std::size_t word = 0; word < places_->size(); ++word)
            found.push_back(at(word, place_[static_cast<int>(word)].val()).placement);
        return found;
    }

  private:
    [[nodiscard]] const Place& at(std::size_t word, int value) const {
        return (*places_)[word][static_cast<std::size_t>(value)];
    }

    void count_leftover(const Gecode::IntVarArgs& cells, int leftover, bool may_cross) {
        using namespace Gecode;
        if (!may_cross) {
            if (letter_.size() - cells.size() != leftover) fail();
            return;
        }
        IntVarArgs times(*this, letter_.size(), leftover == 0 ? 1 : 0, static_cast<int>(words_->size()));
        count(*this, cells, times, IPL_BND);
        if (leftover > 0) count(*this, times, 0, IRT_EQ, leftover);
    }

    static int most_shared(const Gecode::Space& home, Gecode::IntVar place, int word) {
        const auto& self = static_cast<const Places&>(home);
        const Letters& letters = (*self.words_)[static_cast<std::size_t>(word)];
        int best = place.min(), most = -1;
        unsigned equals = 0;
        for (Gecode::IntVarValues values(place); values(); ++values) {
            int shared = 0;
            const Place& there = self.at(static_cast<std::size_t>(word), values.val());
            for (std::size_t at = 0; at < letters.size(); ++at)
                if (self.letter_[there.cells[at]].assigned()) ++shared;
            if (shared > most) equals = 0;
            if (shared < most) continue;
            most = shared;
            if (self.chance_(++equals) == 0) best = values.val();
        }
        return best;
    }

    const std::vector<std::vector<Place>>* places_;
    const std::vector<Letters>* words_;
    mutable Gecode::Rnd chance_;
    Gecode::IntVarArray place_;
    Gecode::IntVarArray letter_;
};

class AtDeadline : public Gecode::Search::Stop {
  public:
    explicit AtDeadline(const Deadline& deadline) : deadline_(deadline) {}
    bool stop(const Gecode::Search::Statistics&, const Gecode::Search::Options&) override {
        return deadline_.has_passed();
    }

  private:
    const Deadline& deadline_;
};

Answer solve(Model model, const Instance& instance, const Deadline& deadline, std::uint64_t seed) {
    const double start = processor_seconds();
    const auto places = places_without_images(instance);
    auto root = std::make_unique<Places>(instance, places, model, seed);
    const double modelled = processor_seconds();
    AtDeadline stop(deadline);
    Gecode::Search::Options options;
    options.threads = 1;
    options.stop = &stop;
    // Of the cutoffs tried, those that served each model best.
    options.cutoff = Gecode::Search::Cutoff::luby(model == Model::by_letters ? 250 : 60);
    options.nogoods_limit = 128;
    Gecode::RBS<Places, Gecode::DFS> search(root.get(), options);
    const std::unique_ptr<Places> found(search.next());
    Answer answer;
    answer.setting_up = modelled - start;
    if (found) {
        answer.end = Answer::End::solved;
        answer.placements = found->placements();
    } else if (!search.stopped()) {
        answer.end = Answer::End::proved;
    }
    return answer;
}

Engine named(const char* name, Model model) {
    return {name, 200'000,
            unprepared([model](const Instance& instance, const Deadline& deadline, std::uint64_t seed) {
                return solve(model, instance, deadline, seed);
            })};
}

}  // namespace

std::vector<Engine> constraint_solvers() {
    return {named("Gecode, by letters", Model::by_letters), named("Gecode, by cells", Model::by_cells)};
}

}  // namespace lode::bench
