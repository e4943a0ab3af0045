#include "art/setting.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "art/combine.hpp"
#include "art/fit_inside.hpp"
#include "art/frame_layer.hpp"
#include "art/number.hpp"
#include "art/typefaces.hpp"

namespace lode {

namespace {

// By eye, and common practice for panels of this size: a rim that stays clear of frame, fixings and fingers.
constexpr double margin_share = 0.055;  // of the shorter side
constexpr double least_margin = 2;      // mm
constexpr double most_margin = 25;      // mm

// Between a letter and the edge of its band, in cells, by eye; and how much smaller letters become for it at
// the most.
constexpr double clear_of_edge = 0.02;
constexpr double least_shrinking = 0.7;

// Beyond a border content keeps this share of the margin, by eye.
constexpr double beyond_border = 0.55;

double edge_of(const ArtworkOptions& options) {
    const double margin = margin_of(options);
    const BorderBand band = border_band(options, margin);
    const double edge = options.border ? band.to + std::max(beyond_border * margin, 2 * options.least_gap_mm)
                                       : options.rebate_mm + margin;
    return edge + options.embolden_mm / 2;
}

Extent extent_of(const Grid& grid) {
    Cell first{grid.size().rows, grid.size().columns};
    Cell last{-1, -1};
    for (int row = 0; row < grid.size().rows; ++row)
        for (int column = 0; column < grid.size().columns; ++column) {
            if (grid[{row, column}] == closed_cell) continue;
            first = {std::min(first.row, row), std::min(first.column, column)};
            last = {std::max(last.row, row), std::max(last.column, column)};
        }
    return {first, {last.row - first.row + 1, last.column - first.column + 1}};
}

// Boxes, in cells, that hold the open cells: one for rows on end that are open between the same columns.
std::vector<Box> boxes_of(const Grid& grid) {
    std::vector<Box> boxes;
    for (int row = 0; row < grid.size().rows; ++row) {
        int first = 0;
        int end = grid.size().columns;
        while (first < end && grid[{row, first}] == closed_cell) ++first;
        while (end > first && grid[{row, end - 1}] == closed_cell) --end;
        if (first == end) continue;
        const Box box{static_cast<double>(first), static_cast<double>(row), static_cast<double>(end),
                      row + 1.0};
        if (!boxes.empty() && boxes.back().left == box.left && boxes.back().right == box.right &&
            boxes.back().bottom == box.top)
            boxes.back().bottom = box.bottom;
        else
            boxes.push_back(box);
    }
    return boxes;
}

// How far each letter reaches, on the words that it is on, from the middle line of its band, by letter number
// and in cells; 0 where it is on none. At the ends of bands, and at the waists of diagonal ones, all round
// counts.
std::vector<double> reach_in_bands(const Puzzle& puzzle, const std::vector<MarkedWord>& marked,
                                   const Lettering& lettering) {
    std::vector<Reach> whole;
    for (const Path& letter : lettering.letters) whole.push_back(reach_of(letter));
    std::vector<double> farthest(whole.size(), 0);
    for (const MarkedWord& mark : marked) {
        const PlacedWord& word = puzzle.words[mark.word];
        const Direction direction = word.placed.direction;
        const bool diagonal = step(direction).row != 0 && step(direction).column != 0;
        for (std::size_t i = 0; i < word.letters.size(); ++i) {
            const Letter letter = puzzle.grid.grid[moved(word.placed.first, direction, static_cast<int>(i))];
            if (letter == closed_cell) continue;
            const bool end = i == 0 || i + 1 == word.letters.size();
            farthest[letter] =
                std::max(farthest[letter],
                         diagonal || end ? whole[letter].all_round : whole[letter].across_line(direction));
        }
    }
    return farthest;
}

// What stands beside the grid, and in which font.
struct Wanted {
    std::vector<std::string> letters;
    std::vector<std::string> words;
    std::vector<std::string> around;  // heading
    std::vector<std::string> below;   // words and foot
};

class Setter {
  public:
    Setter(const Puzzle& puzzle, const ArtworkOptions& options, const std::vector<MarkedWord>& marked)
        : puzzle_(puzzle), options_(options), marked_(marked), room_(room_on(options)) {
        wanted_.letters = letters_of(puzzle.grid);
        for (const PlacedWord& word : puzzle.words) wanted_.words.push_back(word.shown);
        if (!options.word_list) wanted_.words.clear();
        // What cannot be read as text is told where it is set.
        const auto lines = [](const std::string& text) {
            const auto normal = normalised(text);
            return normal ? lines_of(*normal) : std::vector<std::string>();
        };
        wanted_.around = lines(options.heading);
        wanted_.below = lines(options.foot);
        wanted_.below.insert(wanted_.below.end(), wanted_.words.begin(), wanted_.words.end());
    }

    // Sets all in the styles that suit the last round's sizes, until those stay.
    Outcome<Setting> settled() {
        constexpr int most_rounds = 6;
        constexpr double same = 1e-3;
        Caps caps{8, 16, 5};
        for (int round = 1;; ++round) {
            auto setting = set_with(caps);
            if (!setting) return setting;
            const Layout& layout = setting->layout;
            const double cell_before = std::exchange(cell_, layout.cell);
            const std::vector<double> caps_before = std::exchange(caps_, setting->lettering.caps);
            for (double& cap : caps_) cap *= cell_;
            const Caps now{setting->lettering.cap_height * layout.cell, layout.heading.cap,
                           layout.words.cap > 0 ? layout.words.cap : layout.foot.cap};
            const bool stays =
                is_near(cell_, cell_before, same) &&
                (!constructed_ ||
                 (is_near(now.letters, caps.letters, same) && is_near(now.heading, caps.heading, same) &&
                  is_near(now.text, caps.text, same) && clusters_are_near(caps_before)));
            if (stays || round == most_rounds) return setting;
            caps = {now.letters, now.heading > 0 ? now.heading : caps.heading,
                    now.text > 0 ? now.text : caps.text};
        }
    }

  private:
    struct Caps {  // mm
        double letters;
        double heading;
        double text;
    };
    static bool is_near(double now, double before, double same) {
        return now == 0 || std::abs(now - before) <= same * before;
    }

    [[nodiscard]] bool clusters_are_near(const std::vector<double>& before) const {
        constexpr double alike = 1e-2;
        for (std::size_t i = 0; i < caps_.size(); ++i)
            if (!is_one_code_point(puzzle_.grid.alphabet.text(static_cast<Letter>(i))) &&
                !is_near(caps_[i], i < before.size() ? before[i] : 0, alike))
                return false;
        return true;
    }

    [[nodiscard]] ConstructedStyle style(double cap) const {
        return constructed_style(cap, options_.least_stroke_mm, options_.least_gap_mm);
    }

    Outcome<Setting> set_with(const Caps& caps) {
        Setting setting;
        const std::string heading_font =
            options_.heading_font.empty() ? options_.font : options_.heading_font;
        auto letters = open_typeface("The letters are", options_.font, wanted_.letters, style(caps.letters));
        if (!letters) return letters.refusal();
        auto heading = open_typeface("The heading is", heading_font, wanted_.around, style(caps.heading));
        if (!heading) return heading.refusal();
        const std::string_view below = wanted_.words.empty()   ? "The foot is"
                                       : options_.foot.empty() ? "The list is"
                                                               : "List and foot are";
        auto text = open_typeface(below, options_.font, wanted_.below, style(caps.text));
        if (!text) return text.refusal();
        constructed_ = letters->constructed || heading->constructed || text->constructed;
        setting.font = letters->typeface->name();
        for (const auto* opened : {&*letters, &*heading, &*text})
            for (const std::string& note : opened->notes)
                if (std::find(setting.notes.begin(), setting.notes.end(), note) == setting.notes.end())
                    setting.notes.push_back(note);

        auto lettering = set_letters(*letters->typeface, puzzle_.grid,
                                     (options_.least_gap_mm + options_.embolden_mm) / cell_,
                                     letters->constructed ? for_clusters() : OwnTypefaces());
        if (!lettering) return lettering.refusal();
        setting.lettering = *std::move(lettering);
        make_room_in_bands(setting);

        auto heading_block = set_lines(*heading->typeface, options_.heading, "heading");
        if (!heading_block) return heading_block.refusal();
        setting.heading = *std::move(heading_block);
        if (!setting.heading.empty()) setting.heading_font = heading->typeface->name();
        const Extent extent = extent_of(puzzle_.grid.grid);
        // How large the words come out is known from the round before.
        auto words = set_columns(*text->typeface, wanted_.words,
                                 room_for_words() / std::max(text_share * cell_, least_text_cap(options_)));
        if (!words) return words.refusal();
        setting.words = *std::move(words);
        auto foot = set_lines(*text->typeface, options_.foot, "foot");
        if (!foot) return foot.refusal();
        setting.foot = *std::move(foot);

        const auto laid_out = [&](const TextBlock& above) {
            const Stack stack{extent,
                              boxes_of(puzzle_.grid.grid),
                              setting.lettering.cap_height,
                              above,
                              setting.words,
                              setting.foot,
                              options_.heading_area_mm,
                              divider_box(options_),
                              least_text_cap(options_)};
            return room_.box ? fit(*room_.box, stack) : fit(room_.region, stack);
        };
        auto layout = laid_out(setting.heading);
        if (const auto broken = in_two_lines(setting.heading.text);
            broken && (!layout || is_long(*layout, setting))) {
            auto two = set_lines(*heading->typeface, *broken, "heading");
            if (!two) return two.refusal();
            const auto other = laid_out(*two);
            if (other && (!layout || other->heading.cap > layout->heading.cap)) {
                layout = other;
                setting.heading = *std::move(two);
            }
        }
        if (!layout) return too_small(extent);
        setting.layout = *layout;
        return setting;
    }

    // Letters of several characters are made smaller to fit, each as far as it needs, and drawn as strong as
    // their own cap heights ask. Those come from the round before. The first round takes the strongest style:
    // a stronger letter is a wider one and comes out smaller, so heights grow from round to round and strokes
    // are never narrower than the film holds.
    [[nodiscard]] OwnTypefaces for_clusters() const {
        constexpr double lowest_cap = 0.1;  // mm
        OwnTypefaces own;
        for (std::size_t i = 0; i < puzzle_.grid.alphabet.size(); ++i) {
            const auto letter = static_cast<Letter>(i);
            if (is_one_code_point(puzzle_.grid.alphabet.text(letter))) continue;
            const double cap = i < caps_.size() ? caps_[i] : 0;
            own[letter] = std::make_unique<ConstructedTypeface>(style(std::max(lowest_cap, cap)));
        }
        return own;
    }

    // A heading on one line is long where its capitals come out smaller than they should, and where it does
    // not fill an area of its own.
    [[nodiscard]] bool is_long(const Layout& layout, const Setting& setting) const {
        constexpr double hair = 1 - 1e-6;
        if (options_.heading_area_mm)
            return layout.heading.cap * setting.heading.height < hair * *options_.heading_area_mm;
        return layout.heading.cap < hair * least_over_letters * setting.lettering.cap_height * layout.cell;
    }

    // In an outline the words stand below its broadest place.
    [[nodiscard]] double room_for_words() const {
        constexpr double below_broadest = 0.6;
        return room_.box ? room_.box->width()
                         : below_broadest * (room_.region.empty() ? 0 : bounds(room_.region).width());
    }

    // Widens bands, then makes the letters smaller, all alike, until each keeps clear of its band's edge;
    // letters of several characters, which are smaller than the others anyway, each for itself.
    void make_room_in_bands(Setting& setting) const {
        if (marked_.empty()) return;
        const double grow = options_.embolden_mm / 2 / cell_;
        const double around = clear_of_edge + grow;
        const auto text = [&](std::size_t letter) {
            return puzzle_.grid.alphabet.text(static_cast<Letter>(letter));
        };
        std::vector<double> reach = reach_in_bands(puzzle_, marked_, setting.lettering);
        double farthest = 0;
        for (std::size_t i = 0; i < reach.size(); ++i)
            if (is_one_code_point(text(i))) farthest = std::max(farthest, reach[i]);
        const RadiusBounds bounds = radius_bounds(options_.band, cell_, options_);
        setting.band_radius = std::clamp(farthest + around, bounds.least, bounds.most);
        const double covered = covered_by(options_.band, setting.band_radius);
        const double inner = covered - around;
        double scale = 1;
        if (farthest > inner) {
            scale = std::clamp(inner / farthest, least_shrinking, 1.0);
            setting.lettering = scaled(std::move(setting.lettering), scale);
        }
        for (std::size_t i = 0; i < reach.size(); ++i) {
            double own = scale * reach[i];
            if (own > inner && !is_one_code_point(text(i))) {
                const double more = std::clamp(inner / own, least_shrinking, 1.0);
                shrink(setting.lettering, static_cast<Letter>(i), text(i), more);
                own *= more;
            }
            if (own + grow > covered) setting.sticking_out.push_back(text(i));
        }
    }

    [[nodiscard]] Refusal too_small(const Extent& extent) const {
        Refusal refusal;
        refusal.message = "a blank of " + both_units(options_.blank) + " is too small for " +
                          std::to_string(extent.size.columns) + " columns and " +
                          std::to_string(extent.size.rows) + " rows: cells would measure under " +
                          both_units(least_cell_mm);
        refusal.advice = {
            "Take a larger blank, fewer rows and columns, a shorter heading, or less margin and rebate."};
        return refusal;
    }

    const Puzzle& puzzle_;
    const ArtworkOptions& options_;
    const std::vector<MarkedWord>& marked_;
    FreeRoom room_;
    Wanted wanted_;
    bool constructed_ = false;
    double cell_ = 12;          // mm, of the last round
    std::vector<double> caps_;  // mm, of each letter in the last round
};

}  // namespace

double margin_of(const ArtworkOptions& options) {
    return options.margin_mm.value_or(std::clamp(
        margin_share * std::min(options.blank.width_mm, options.blank.height_mm), least_margin, most_margin));
}

double least_text_cap(const ArtworkOptions& options) {
    if (!may_be_constructed(options.font)) return 0;
    return 5.25 * std::max(options.least_stroke_mm, options.least_gap_mm);
}

FreeRoom room_on(const ArtworkOptions& options) {
    const double in = edge_of(options);
    FreeRoom room;
    if (options.blank.is_rectangle() && options.holes.empty()) {
        room.box = Box{in, in, options.blank.width_mm - in, options.blank.height_mm - in};
        return room;
    }
    Path kept_clear;
    for (const HangingHole& hole : options.holes) {
        const Path circle = capsule(hole.centre, hole.centre, hole.diameter_mm / 2);
        kept_clear.contours.insert(kept_clear.contours.end(), circle.contours.begin(), circle.contours.end());
    }
    room.region = room_inside(options.blank.outline, in, kept_clear);
    return room;
}

Outcome<Setting> set(const Puzzle& puzzle, const ArtworkOptions& options,
                     const std::vector<MarkedWord>& marked) {
    return Setter(puzzle, options, marked).settled();
}

}  // namespace lode
