// The pieces of one load are parted into films in every way, fewest films first; each film has every least
// size that its pieces allow; and the films are laid into the load, all exactly. What pieces a gap apart
// cannot do, ever so much film about them, need not be looked at, and pieces of one colour need one film
// only.

#include "cut/film_exact.hpp"

#include <algorithm>
#include <map>

#include "cut/cover.hpp"

namespace lode::packing {

namespace {

class Loads {
  public:
    Loads(const std::vector<Cutting>& pieces, const Rules& rules, const FilmShapes& shapes, Steps& steps)
        : pieces_(pieces), rules_(rules), shapes_(shapes), steps_(steps) {
        for (std::size_t i = 0; i < pieces.size(); ++i) all_.push_back(i);
        const std::vector<Item> items = shapes.items(all_);
        order_ = by_area(items);
        for (const std::size_t i : order_) sorted_.push_back(items[i]);
        apart_ = std::max<Length>(0, rules.gap - 2 * rules.margin);
    }

    FilmVerdict run(std::size_t loads) {
        std::vector<Length> areas;
        for (const Item& item : sorted_) areas.push_back(item.least_area());
        const Size room = shapes_.inside(rules_.bed);
        std::vector<Set> sets;
        FilmVerdict verdict;
        verdict.answer = Cover(std::move(areas), room.area(), [&](Set set) {
                             return one_load(set);
                         }).cover((Set{1} << sorted_.size()) - 1, loads, sets);
        if (verdict.answer != Answer::yes) return verdict;
        for (std::size_t load = 0; load < sets.size(); ++load) {
            if (one_load(sets[load]) != Answer::yes) return {};  // the steps ran out
            for (LoadedFilm& film : films_) {
                film.load = load;
                verdict.films.push_back(std::move(film));
            }
        }
        return verdict;
    }

  private:
    // Where yes, films_ are its films.
    Answer one_load(Set set) {
        std::vector<Item> chosen;
        Group group;
        bool one_colour = true;
        for (std::size_t i = 0; i < order_.size(); ++i) {
            if (!(set >> i & 1u)) continue;
            chosen.push_back(sorted_[i]);
            group.push_back(order_[i]);
            one_colour = one_colour && pieces_[order_[i]].colour == pieces_[group[0]].colour;
        }
        const Verdict without_film = fits_one_room(chosen, shapes_.inside(rules_.bed), steps_);
        if (one_colour && without_film.answer == Answer::yes)
            films_ = {{0, group, shapes_.shape_of(group, without_film.layout), 0, 0}};
        if (one_colour || without_film.answer != Answer::yes) return without_film.answer;
        parts_.clear();
        return part(set, 0);
    }

    // Gives each piece from this on to a film of its colour, or to one of its own.
    Answer part(Set set, std::size_t from) {
        while (from < order_.size() && !(set >> from & 1u)) ++from;
        if (from == order_.size()) return lay_films();
        const std::size_t colour = pieces_[order_[from]].colour;
        const Set piece = Set{1} << from;
        Answer answer = Answer::no;
        for (std::size_t p = 0; p <= parts_.size(); ++p) {
            const bool own = p == parts_.size();
            if (own)
                parts_.push_back({piece, colour});
            else if (parts_[p].colour == colour)
                parts_[p].set |= piece;
            else
                continue;
            const Answer here = part(set, from + 1);
            if (here == Answer::yes) return here;
            if (here == Answer::unknown) answer = here;
            if (own) {
                parts_.pop_back();
                return answer;
            }
            parts_[p].set &= ~piece;
        }
        return answer;
    }

    Answer lay_films() {
        std::vector<Item> items;
        for (const Part& part : parts_) {
            const auto& boxes = boxes_of(part.set);
            if (!boxes) return Answer::unknown;
            Item item;
            for (const BoxedLayout& box : *boxes)
                item.shapes.push_back({box.size.width - rules_.gap + 2 * rules_.margin + apart_,
                                       box.size.height - rules_.gap + 2 * rules_.margin + apart_});
            if (item.shapes.empty()) return Answer::no;
            items.push_back(std::move(item));
        }
        const Size room{rules_.bed.width + apart_, rules_.bed.height + apart_};
        const Verdict verdict = fits_one_room(items, room, steps_);
        if (verdict.answer != Answer::yes) return verdict.answer;
        films_.clear();
        for (std::size_t p = 0; p < parts_.size(); ++p) {
            const Spot& spot = verdict.layout[p];
            const Group group = group_of(parts_[p].set);
            const auto& boxes = *boxes_of(parts_[p].set);
            films_.push_back(
                {0, group, shapes_.shape_of(group, boxes[spot.shape].layout), spot.left, spot.top});
        }
        return Answer::yes;
    }

    const std::optional<std::vector<BoxedLayout>>& boxes_of(Set set) {
        const auto known = boxes_.find(set);
        if (known != boxes_.end()) return known->second;
        const std::vector<Item> items = shapes_.items(group_of(set));
        return boxes_.emplace(set, least_boxes(items, shapes_.inside(rules_.bed), steps_)).first->second;
    }
    [[nodiscard]] Group group_of(Set set) const {
        Group group;
        for (std::size_t i = 0; i < order_.size(); ++i)
            if (set >> i & 1u) group.push_back(order_[i]);
        return group;
    }

    struct Part {
        Set set;
        std::size_t colour;
    };
    const std::vector<Cutting>& pieces_;
    const Rules& rules_;
    const FilmShapes& shapes_;
    Steps& steps_;
    Group all_;
    std::vector<std::size_t> order_;
    std::vector<Item> sorted_;
    Length apart_ = 0;
    std::vector<Part> parts_;
    std::vector<LoadedFilm> films_;
    std::map<Set, std::optional<std::vector<BoxedLayout>>> boxes_;
};

}  // namespace

FilmVerdict fits_loads(const std::vector<Cutting>& pieces, const Rules& rules, const FilmShapes& shapes,
                       std::size_t loads, Steps& steps) {
    if (pieces.size() > most_exact_items) return {};
    return Loads(pieces, rules, shapes, steps).run(loads);
}

}  // namespace lode::packing
