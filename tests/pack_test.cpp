// Laying rectangles into rooms, against brute force, against rooms cut apart, and against the literature.

#include "cut/pack.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace lode;
using namespace lode::packing;

namespace {

void require_sound(std::span<const Item> items, std::span<const Size> rooms, const Layout& layout) {
    REQUIRE(layout.size() == items.size());
    for (std::size_t i = 0; i < layout.size(); ++i) {
        const Spot& a = layout[i];
        if (a.room < 0) continue;
        REQUIRE(static_cast<std::size_t>(a.room) < rooms.size());
        REQUIRE(a.shape < items[i].shapes.size());
        const Size size = items[i].shapes[a.shape];
        const Size room = rooms[static_cast<std::size_t>(a.room)];
        REQUIRE((a.left >= 0 && a.top >= 0 && a.left + size.width <= room.width &&
                 a.top + size.height <= room.height));
        for (std::size_t j = 0; j < i; ++j) {
            const Spot& b = layout[j];
            if (b.room != a.room) continue;
            const Size other = items[j].shapes[b.shape];
            REQUIRE((a.left + size.width <= b.left || b.left + other.width <= a.left ||
                     a.top + size.height <= b.top || b.top + other.height <= a.top));
        }
    }
}

Item turning(Length width, Length height) {
    return {{{width, height}, {height, width}}};
}

// All positions on a small lattice, one item after the other.
bool fits_by_force(const std::vector<Item>& items, Size room, std::size_t rooms) {
    std::vector<std::vector<std::uint64_t>> taken(
        rooms, std::vector<std::uint64_t>(static_cast<std::size_t>(room.height)));
    const auto place = [&](auto& self, std::size_t i) -> bool {
        if (i == items.size()) return true;
        for (std::size_t r = 0; r < rooms; ++r)
            for (const Size& shape : items[i].shapes)
                for (Length y = 0; y + shape.height <= room.height; ++y)
                    for (Length x = 0; x + shape.width <= room.width; ++x) {
                        const std::uint64_t row = ((std::uint64_t{1} << shape.width) - 1) << x;
                        const auto rows = std::span(taken[r]).subspan(static_cast<std::size_t>(y),
                                                                      static_cast<std::size_t>(shape.height));
                        if (std::any_of(rows.begin(), rows.end(), [&](std::uint64_t t) { return t & row; }))
                            continue;
                        for (auto& t : rows) t |= row;
                        if (self(self, i + 1)) return true;
                        for (auto& t : rows) t &= ~row;
                    }
        return false;
    };
    return place(place, 0);
}

// Rooms cut apart from side to side, again and again, in steps of so many micrometres.
std::vector<Item> cut_apart(Size room, std::size_t rooms, std::size_t pieces, Length step, Random& random) {
    std::vector<Item> items;
    for (std::size_t r = 0; r < rooms; ++r) {
        std::vector<Size> parts{room};
        while (parts.size() < pieces) {
            // The largest of three is cut, mostly across its longer side.
            std::size_t chosen = 0;
            for (int look = 0; look < 3; ++look) {
                const std::size_t other = random.below(static_cast<std::uint32_t>(parts.size()));
                if (look == 0 || parts[other].area() > parts[chosen].area()) chosen = other;
            }
            Size& part = parts[chosen];
            const bool across = (part.width >= part.height) != (random.below(4) == 0);
            const Length steps = (across ? part.width : part.height) / step;
            if (steps * step < room.width / 10) continue;
            const Length cut =
                step * (steps / 5 + 1 + random.below(static_cast<std::uint32_t>(steps * 3 / 5)));
            Size rest = part;
            (across ? part.width : part.height) = cut;
            (across ? rest.width : rest.height) -= cut;
            parts.push_back(rest);
        }
        for (const Size& part : parts) items.push_back(turning(part.width, part.height));
    }
    random.shuffle(items);
    return items;
}

}  // namespace

TEST_CASE("The exact search agrees with brute force over all places of up to six small rectangles") {
    Random random(11);
    int fitting = 0;
    for (int round = 0; round < 400; ++round) {
        const Size room{4 + random.below(3), 4 + random.below(3)};
        const std::size_t rooms = 1 + random.below(2);
        std::vector<Item> items;
        Length area = 0;
        while (items.size() < 6 && area < room.area() * static_cast<Length>(rooms) * 3 / 4) {
            const Length width = 1 + random.below(4), height = 1 + random.below(4);
            // Some turn, some do not, and some have a third shape of their own.
            Item item = random.below(2) ? turning(width, height) : Item{{{width, height}}};
            if (random.below(4) == 0) item.shapes.push_back({1 + random.below(4), 1 + random.below(4)});
            area += item.least_area();
            items.push_back(std::move(item));
        }
        Steps steps(100'000'000);
        const Verdict verdict = fits_rooms(items, room, rooms, steps);
        const bool fits = fits_by_force(items, room, rooms);
        CAPTURE(round, items.size());
        REQUIRE(verdict.answer == (fits ? Answer::yes : Answer::no));
        if (fits) {
            require_sound(items, std::vector<Size>(rooms, room), verdict.layout);
            REQUIRE(is_whole(verdict.layout));
            REQUIRE(least_rooms(items, room) <= rooms);
        }
        fitting += fits;
    }
    // Both answers were put to the test.
    REQUIRE(fitting > 100);
    REQUIRE(fitting < 350);
}

TEST_CASE("Nine different squares fill a rectangle of 33 by 32, and none a hair smaller") {
    // Z. Moron, "O rozkladach prostokatow na kwadraty", Przeglad matematyczno-fizyczny 3, 1925 (from memory).
    std::vector<Item> items;
    for (const Length side : {18, 15, 14, 10, 9, 8, 7, 4, 1})
        items.push_back({{{side * 1'000, side * 1'000}}});
    Steps steps(100'000'000);
    const Size room{33'000, 32'000};
    const Verdict verdict = fits_one_room(items, room, steps);
    REQUIRE(verdict.answer == Answer::yes);
    require_sound(items, std::span(&room, 1), verdict.layout);
    Random random(1);
    const auto tight = lay_tightly(items, std::span(&room, 1), random, steps);
    REQUIRE(tight);
    require_sound(items, std::span(&room, 1), *tight);
    REQUIRE(fits_one_room(items, {33'000, 31'999}, steps).answer == Answer::no);
    // As large, but no sides that nine such squares could make.
    REQUIRE(fits_one_room(items, {44'000, 24'000}, steps).answer == Answer::no);
}

TEST_CASE("Five squares of three by three fit no room of six by seven and a half, though their area does") {
    // 5 x 9 = 45 = 6 x 7.5; only two columns of two fit, a closed form.
    const std::vector<Item> items(5, Item{{{3'000, 3'000}}});
    Steps steps(100'000'000);
    REQUIRE(fits_one_room(items, {6'000, 7'500}, steps).answer == Answer::no);
    REQUIRE(least_rooms(items, {6'000, 7'500}) <= 2);
    REQUIRE(fits_one_room(items, {6'000, 9'000}, steps).answer == Answer::yes);
    // Squares over half the room's side share no room.
    const std::vector<Item> large(7, Item{{{5'001, 5'001}}});
    REQUIRE(least_rooms(large, {10'000, 10'000}) == 7);
}

TEST_CASE("Rooms cut apart are put together again") {
    // Sheets of one foot, a dozen pieces each, cut at whole millimetres and anywhere.
    for (const Length step : {1'000, 1})
        for (std::size_t rooms = 1; rooms <= 3; ++rooms) {
            int whole = 0;
            constexpr int rounds = 6;
            for (std::uint64_t seed = 0; seed < rounds; ++seed) {
                Random random(seed * 100 + rooms);
                const Size room{305'000, 305'000};
                const auto items = cut_apart(room, rooms, 12, step, random);
                const std::vector<Size> all(rooms, room);
                REQUIRE(least_rooms(items, room) == rooms);
                Steps steps(50'000'000);
                const auto layout = lay_tightly(items, all, random, steps);
                if (!layout) continue;
                require_sound(items, all, *layout);
                ++whole;
            }
            CAPTURE(step, rooms, whole);
            REQUIRE(whole >= (rooms == 1 || step == 1 ? 6 : rooms == 2 ? 5 : 3));
        }
}

TEST_CASE("Each way of laying leaves out what does not fit and overlaps nothing") {
    Random random(5);
    for (int round = 0; round < 60; ++round) {
        std::vector<Item> items;
        const std::size_t count = 1 + random.below(40);
        for (std::size_t i = 0; i < count; ++i)
            items.push_back(turning(1 + random.below(60), 1 + random.below(60)));
        std::vector<Size> rooms;
        for (std::uint32_t r = 0; r <= random.below(3); ++r)
            rooms.push_back({50 + random.below(50), 50 + random.below(50)});
        Steps steps(200'000);
        require_sound(items, rooms, lay_in_turns(items, rooms, random, steps));
        require_sound(items, rooms, lay_in_rows(items, rooms));
    }
}
