// From pieces to loads in two storeys: pieces of a colour are grouped, each group shares a rectangle of film
// that can have several sizes (film_shapes), and these rectangles are laid into the loads.
//
// One group a colour is best where it does, and where more than a load is needed, a group for each load that
// the colour would fill by itself. What then finds no place is broken into smaller groups, a little further
// each time, down to single pieces, which mix freely; at last groups are joined again as far as the loads
// still hold them. Few loads come first, then few rectangles, then little film. Whether given groups do, and
// where they come to lie, is told by film_arrange.

#include "cut/pack_films.hpp"

#include <algorithm>
#include <numeric>

#include "cut/film_arrange.hpp"
#include "cut/film_exact.hpp"
#include "cut/film_shapes.hpp"
#include "random/luby.hpp"

namespace lode::packing {

namespace {

class Planner {
  public:
    Planner(const std::vector<Cutting>& pieces, const Rules& rules, Steps& steps)
        : pieces_(pieces),
          rules_(rules),
          steps_(steps),
          shapes_(pieces, rules),
          arranger_(pieces, rules, shapes_, random_, steps) {}

    FilmOutcome run() {
        Group all(pieces_.size());
        std::iota(all.begin(), all.end(), std::size_t{0});
        const std::vector<Item> items = shapes_.items(all);
        const Size room = shapes_.inside(rules_.bed);
        FilmPlan plan;
        plan.least_loads = least_rooms(items, room);

        std::vector<Group> groups;
        for (std::size_t colour = 0; colour < rules_.sheets.size(); ++colour)
            if (!split_by_rooms(colour, groups)) return {std::nullopt, {colour}};
        auto best = arranger_.arranged(groups, groups.size(), rules_.bed);
        if (!best) {
            // Each group was found on a sheet and within a load, but not all of them on the sheets together.
            return {std::nullopt, {arranger_.blamed_colour()}};
        }
        std::optional<Layout> hint;
        if (items.size() <= most_exact_items) hint = raise_bound(plan, items, room, best->loads);
        while (best->loads > plan.least_loads && steps_.left() > 0) {
            std::optional<Arrangement> fewer;
            if (hint) fewer = arranger_.arranged(grouped(*hint), best->loads - 1, rules_.bed);
            Steps slice = steps_.part(steps_.left() / 2);
            if (!fewer) fewer = search(groups, best->loads - 1, slice);
            steps_.give_back(slice);
            if (!fewer) break;
            best = std::move(fewer);
        }
        if (items.size() <= most_exact_items) settle(plan, *best);
        join_groups(*best);
        if (rules_.roll) shorten(*best);
        spare_film(*best);
        plan.loads = best->loads;
        plan.films = laid(*best, pieces_);
        return {std::move(plan), {}};
    }

  private:
    // Groups for one colour: as few as its sheets, or loads of its own, allow.
    bool split_by_rooms(std::size_t colour, std::vector<Group>& groups) {
        Group all;
        for (std::size_t i = 0; i < pieces_.size(); ++i)
            if (pieces_[i].colour == colour) all.push_back(i);
        if (all.empty()) return true;
        const std::vector<Item> items = shapes_.items(all);
        std::vector<Size> rooms;
        if (rules_.sheets[colour]) {
            for (const Sheet& sheet : *rules_.sheets[colour]) {
                const Size film = largest_film(sheet.size);
                const Size room = shapes_.inside(film);
                if (room.width <= 0 || room.height <= 0) continue;
                rooms.insert(rooms.end(), std::min(times_on(sheet.size, film), all.size()), room);
            }
            std::stable_sort(rooms.begin(), rooms.end(),
                             [](const Size& a, const Size& b) { return a.area() > b.area(); });
        } else {
            rooms.assign(all.size(), shapes_.inside(rules_.bed));
        }
        const auto layout = into_few(items, rooms);
        if (!layout) return false;
        std::vector<Group> by_room(rooms.size());
        std::vector<Layout> layouts(rooms.size());
        for (std::size_t i = 0; i < all.size(); ++i) {
            const auto room = static_cast<std::size_t>((*layout)[i].room);
            by_room[room].push_back(all[i]);
            layouts[room].push_back((*layout)[i]);
        }
        for (std::size_t room = 0; room < rooms.size(); ++room) {
            if (by_room[room].empty()) continue;
            shapes_.learn(by_room[room], layouts[room]);
            groups.push_back(std::move(by_room[room]));
        }
        return true;
    }

    // As the bed holds it.
    [[nodiscard]] Size largest_film(Size sheet) const {
        const Size& bed = rules_.bed;
        const Size upright{std::min(sheet.width, bed.width), std::min(sheet.height, bed.height)};
        const Size turned{std::min(sheet.height, bed.width), std::min(sheet.width, bed.height)};
        return shapes_.inside(turned).area() > shapes_.inside(upright).area() ? turned : upright;
    }
    // How many such films a sheet gives, cut in rows: a roll, and a sheet larger than the bed, serve several
    // loads.
    [[nodiscard]] static std::size_t times_on(Size sheet, Size film) {
        const Length upright = (sheet.width / film.width) * (sheet.height / film.height);
        const Length turned = (sheet.height / film.width) * (sheet.width / film.height);
        return static_cast<std::size_t>(std::max(upright, turned));
    }

    // Into as few of the rooms, from the first on, as are found to do.
    std::optional<Layout> into_few(const std::vector<Item>& items, const std::vector<Size>& rooms) {
        std::optional<Layout> best;
        if (Layout layout = lay_in_rows(items, rooms); is_whole(layout)) best = std::move(layout);
        if (items.size() > most_by_niches) {
            const std::vector<std::uint32_t> plain(items.size(), 1024);
            for (const Taste& taste : {Taste{16, 4, 0, 8, 0}, Taste{8, 8, 0, 16, 0}}) {
                Layout layout = lay(items, rooms, plain, taste, random_, steps_);
                if (is_whole(layout) && (!best || rooms_used(layout) < rooms_used(*best)))
                    best = std::move(layout);
            }
            return best;
        }
        const bool alike =
            std::all_of(rooms.begin(), rooms.end(), [&](const Size& r) { return r == rooms[0]; });
        const std::size_t least = alike && !rooms.empty() ? least_rooms(items, rooms[0]) : 1;
        std::size_t most = rooms.size();
        {
            Steps slice = steps_.part(alike ? items.size() * items.size() * 40 + 1'000 : steps_.left() / 4);
            Layout layout = lay_in_turns(items, rooms, random_, slice);
            steps_.give_back(slice);
            if (is_whole(layout) && (!best || rooms_used(layout) <= rooms_used(*best)))
                best = std::move(layout);
        }
        if (best) most = rooms_used(*best);
        for (std::size_t count = best ? most - 1 : most; count >= least && count > 0; --count) {
            const std::span<const Size> few(rooms.data(), count);
            Steps slice = steps_.part(steps_.left() / (rules_.sheets.size() == 1 ? 2 : 8));
            std::optional<Layout> found;
            Steps turns = slice.part(slice.left() / 8);
            Layout layout = lay_in_turns(items, few, random_, turns);
            slice.give_back(turns);
            if (is_whole(layout)) found = std::move(layout);
            if (!found && alike && items.size() <= most_exact_items)
                if (Verdict verdict = fits_rooms(items, rooms[0], count, slice);
                    verdict.answer == Answer::yes)
                    found = std::move(verdict.layout);
            if (!found && is_tight(items, few)) found = lay_tightly(items, few, random_, slice);
            steps_.give_back(slice);
            if (!found) break;
            best = std::move(found);
        }
        return best;
    }

    // Whether no more than a seventh of the rooms may stay empty.
    static bool is_tight(std::span<const Item> items, std::span<const Size> rooms) {
        constexpr std::size_t most_tightly = 300;
        if (items.size() > most_tightly) return false;
        Length needed = 0, there = 0;
        for (const Item& item : items) needed += item.least_area();
        for (const Size& room : rooms) there += room.area();
        return (there - needed) < there / 7;
    }

    static std::size_t rooms_used(const Layout& layout) {
        int last = -1;
        for (const Spot& spot : layout) last = std::max(last, spot.room);
        return static_cast<std::size_t>(last + 1);
    }

    // Proves, as far as the steps go, how many loads there must be if pieces need be no more than a gap
    // apart; and gives a layout that would do with one less than were found, where there is one.
    std::optional<Layout> raise_bound(FilmPlan& plan, const std::vector<Item>& items, Size room,
                                      std::size_t found) {
        plan.searched_all = true;
        for (; plan.least_loads < found; ++plan.least_loads) {
            Steps slice = steps_.part(steps_.left() / 2);
            const Verdict verdict = fits_rooms(items, room, plan.least_loads, slice);
            steps_.give_back(slice);
            if (verdict.answer == Answer::no) continue;
            if (verdict.answer == Answer::yes) return verdict.layout;
            plan.searched_all = false;
            break;
        }
        return std::nullopt;
    }

    // What the search left open, exactly: fewer loads, or the proof that there are none.
    void settle(FilmPlan& plan, Arrangement& best) {
        while (plan.searched_all && plan.least_loads < best.loads) {
            Steps slice = steps_.part(steps_.left() - steps_.left() / 8);
            FilmVerdict verdict = fits_loads(pieces_, rules_, shapes_, plan.least_loads, slice);
            steps_.give_back(slice);
            if (verdict.answer == Answer::no) {
                ++plan.least_loads;
                continue;
            }
            plan.searched_all = verdict.answer == Answer::yes;
            if (verdict.answer != Answer::yes) return;
            Arrangement fewer;
            fewer.loads = plan.least_loads;
            for (LoadedFilm& film : verdict.films) {
                fewer.groups.push_back(std::move(film.group));
                fewer.layout.push_back({static_cast<int>(film.load), film.left, film.top, 0});
                fewer.shapes.push_back(std::move(film.shape));
            }
            // It may ask for film that there is not.
            if (!arranger_.take_from_sheets(fewer)) return;
            best = std::move(fewer);
        }
    }

    // By room and colour.
    [[nodiscard]] std::vector<Group> grouped(const Layout& layout) const {
        std::map<std::pair<int, std::size_t>, Group> groups;
        for (std::size_t i = 0; i < pieces_.size(); ++i)
            groups[{layout[i].room, pieces_[i].colour}].push_back(i);
        std::vector<Group> result;
        for (auto& [key, group] : groups) result.push_back(std::move(group));
        return result;
    }

    // Breaks groups that were left out, a little further each time.
    std::optional<Arrangement> search(const std::vector<Group>& base, std::size_t loads, Steps& allowed) {
        std::swap(steps_, allowed);
        std::optional<Arrangement> found;
        constexpr std::uint64_t most_walks = 2'000;
        for (std::uint64_t walk = 1; !found && walk <= most_walks && steps_.left() > 0; ++walk) {
            std::vector<Group> groups = base;
            const std::uint64_t depth = 2 * luby(walk) + 1;
            for (std::uint64_t step = 0; step <= depth && steps_.left() > 0; ++step) {
                found = arranger_.arranged(groups, loads, rules_.bed);
                if (found || !break_one(groups)) break;
            }
            constexpr std::uint64_t first_walks = 30;
            if (!found && walk == first_walks) found = singly(loads);
        }
        std::swap(steps_, allowed);
        return found;
    }

    // Each piece on film of its own.
    std::optional<Arrangement> singly(std::size_t loads) {
        std::vector<Group> groups;
        for (std::size_t i = 0; i < pieces_.size(); ++i) groups.push_back({i});
        return arranger_.arranged(groups, loads, rules_.bed);
    }

    bool break_one(std::vector<Group>& groups) {
        constexpr std::size_t most_broken = 150;
        const auto can = [&](std::size_t g) {
            return groups[g].size() > 1 && groups[g].size() <= most_broken;
        };
        std::vector<std::size_t> candidates;
        if (random_.below(3) > 0)
            std::copy_if(arranger_.left_out().begin(), arranger_.left_out().end(),
                         std::back_inserter(candidates), can);
        if (candidates.empty())
            for (std::size_t g = 0; g < groups.size(); ++g)
                if (can(g)) candidates.push_back(g);
        if (candidates.empty()) return false;
        const std::size_t g = candidates[random_.below(static_cast<std::uint32_t>(candidates.size()))];
        // Many pieces lie the denser for being left as they lie.
        constexpr std::size_t many = 16;
        if (random_.below(4) < (groups[g].size() > many ? 3 : 1))
            if (auto halves = shapes_.cut(groups[g], random_, steps_)) {
                groups[g] = std::move(halves->first);
                groups.push_back(std::move(halves->second));
                return true;
            }
        Group all = groups[g];
        if (random_.below(2))
            random_.shuffle(all);
        else
            std::stable_sort(all.begin(), all.end(),
                             [&](std::size_t a, std::size_t b) { return longest(a) > longest(b); });
        const std::size_t cut = 1 + random_.below(static_cast<std::uint32_t>(all.size() - 1));
        Group one(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(cut));
        Group other(all.begin() + static_cast<std::ptrdiff_t>(cut), all.end());
        std::sort(one.begin(), one.end());
        std::sort(other.begin(), other.end());
        groups[g] = std::move(one);
        groups.push_back(std::move(other));
        return true;
    }
    [[nodiscard]] Length longest(std::size_t piece) const {
        const Size& size = pieces_[piece].turns.front().size;
        return std::max(size.width, size.height);
    }

    // Groups of a colour, two at a time, as long as the loads still hold them.
    void join_groups(Arrangement& best) {
        constexpr std::size_t most_groups_joined = 150;
        if (best.groups.size() > most_groups_joined) return;
        Steps slice = steps_.part(steps_.left() / 2);
        std::swap(steps_, slice);
        for (bool again = true; again && steps_.left() > 0;) {
            again = false;
            std::vector<std::pair<std::size_t, std::size_t>> pairs;
            for (std::size_t a = 0; a < best.groups.size(); ++a)
                for (std::size_t b = a + 1; b < best.groups.size(); ++b)
                    if (pieces_[best.groups[a][0]].colour == pieces_[best.groups[b][0]].colour)
                        pairs.emplace_back(a, b);
            random_.shuffle(pairs);
            for (const auto& [a, b] : pairs) {
                std::vector<Group> groups = best.groups;
                groups[a].insert(groups[a].end(), groups[b].begin(), groups[b].end());
                std::sort(groups[a].begin(), groups[a].end());
                groups.erase(groups.begin() + static_cast<std::ptrdiff_t>(b));
                auto joined = arranger_.arranged(groups, best.loads, rules_.bed);
                if (!joined) continue;
                best = std::move(*joined);
                again = true;
                break;
            }
        }
        std::swap(steps_, slice);
        steps_.give_back(slice);
    }

    static Length taken(const Arrangement& arrangement) {
        Length most = 0;
        for (std::size_t g = 0; g < arrangement.groups.size(); ++g)
            most = std::max(most, arrangement.layout[g].top + arrangement.shapes[g].size.height);
        return most;
    }

    // Halves, again and again, what a roll's loads may still be shorter by.
    void shorten(Arrangement& best) {
        Length low = 0, high = taken(best);
        for (int round = 0; round < 12 && high - low > 500; ++round) {
            const Length middle = low + (high - low) / 2;
            auto shorter = arranger_.arranged(best.groups, best.loads, {rules_.bed.width, middle});
            if (shorter) {
                best = std::move(*shorter);
                high = taken(best);
            } else {
                low = middle;
            }
        }
    }

    // The same groups from smaller film.
    void spare_film(Arrangement& best) {
        const Size bed{rules_.bed.width, rules_.roll ? taken(best) : rules_.bed.height};
        for (const Length limit : {64, 66, 68, 72, 78, 86, 96, 112, 144}) {
            for (int round = 0; round < 3; ++round) {
                auto smaller = arranger_.arranged(best.groups, best.loads, bed, limit);
                if (!smaller || smaller->film_area() >= best.film_area()) continue;
                best = std::move(*smaller);
                return;
            }
        }
    }

    const std::vector<Cutting>& pieces_;
    const Rules& rules_;
    Steps& steps_;
    FilmShapes shapes_;
    Random random_{1};
    FilmArranger arranger_;
};

}  // namespace

FilmOutcome plan_films(const std::vector<Cutting>& pieces, const Rules& rules, Steps& steps) {
    return Planner(pieces, rules, steps).run();
}

}  // namespace lode::packing
