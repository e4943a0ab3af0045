#include "puzzle_work.hpp"

#include <cmath>

#include "art_library.hpp"
#include "artwork_options.hpp"
#include "choices.hpp"
#include "cut_options.hpp"
#include "demand_options.hpp"
#include "filler_options.hpp"
#include "recipe_options.hpp"
#include "report.hpp"

namespace lode::cli {
namespace {

// What --aim asks for; a way to fill that was chosen by its option stays.
Outcome<std::optional<Aim>> aim_of(const Values& values) {
    if (!values.has("aim")) return std::optional<Aim>();
    auto aim = read_aim(values.text("aim"));
    if (!aim) return aim.refusal();
    aim->vary_filler = !values.has("filler");
    return std::optional(*aim);
}

// The best first, with a word on why.
Outcome<std::vector<Puzzle>> ranked(std::vector<Puzzle> puzzles, const std::optional<Aim>& aim) {
    if (puzzles.size() < 2) return puzzles;
    const auto order = rank_puzzles(puzzles, aim);
    if (!order) return order.refusal();
    std::vector<Puzzle> sorted;
    for (const RankedPuzzle& one : *order) sorted.push_back(std::move(puzzles[one.puzzle]));
    say("note: seed " + std::to_string(sorted.front().recipe.seed) +
        " comes first: " + order->front().reason + (aim ? ", nearest to the aim." : ", together the least."));
    return sorted;
}

// The one that is nearest to the aim.
Outcome<Puzzle> aimed(const Recipe& recipe, const Aim& aim, const MakeControl& control) {
    auto aimed = make_aimed(recipe, aim, control);
    if (!aimed) return aimed.refusal();
    const double reached = aimed->rating.difficulty.fixations;
    const auto fixations = std::llround(reached);
    const bool is_missed =
        aim.kind == Aim::Kind::fixations && std::abs(reached - aim.fixations) > aim.fixations / 10;
    say("note: of " + std::to_string(aimed->tried) + " puzzles this is the nearest to the aim" +
        (is_missed ? ", and misses it by " +
                         std::to_string(std::llabs(fixations - std::llround(aim.fixations))) + " fixations"
                   : std::string()) +
        ": a simulated reader needs " + std::to_string(fixations) + " for all words, level " +
        std::string(name(aimed->rating.difficulty.level)) + "." +
        (is_missed ? " Another --grid or other words change more." : ""));
    return std::move(aimed->puzzle);
}

Outcome<std::vector<Puzzle>> made(const CheckedRecipe& checked, const Recipe& recipe,
                                  const PuzzlesWanted& wanted, const MakeControl& control) {
    if (wanted.several) {
        auto choices = make_choices(checked, recipe.seed, wanted.count, control);
        if (!choices) return choices.refusal();
        return ranked(std::move(*choices), wanted.aim);
    }
    auto puzzle = wanted.aim ? aimed(recipe, *wanted.aim, control) : checked.make(recipe.seed, control);
    if (!puzzle) return puzzle.refusal();
    std::vector<Puzzle> alone;
    alone.push_back(std::move(*puzzle));
    return alone;
}

constexpr std::size_t most_cells_on_a_screen = 10'000;

// The puzzle itself, for other programs and as text.
void append_puzzle(std::vector<NamedFile>& files, const Puzzle& puzzle, const std::string& folder) {
    files.push_back({folder + "puzzle.json", to_json(puzzle)});
    files.push_back({folder + "puzzle.txt", puzzle_text(puzzle)});
    files.push_back({folder + "key.txt", key_text(puzzle)});
}

// On paper, as text and, if it is one, for a screen. A grid that no page holds, or a machine without a font,
// is no reason to give nothing.
void append_pages(std::vector<NamedFile>& files, const std::vector<Worksheet>& worksheets,
                  const PrintOptions& options, const std::string& folder) {
    const auto pages = art_library().print_worksheets(worksheets, options);
    if (pages)
        files.push_back({folder + "worksheet.pdf", pages->pdf});
    else
        say("note: no worksheet.pdf: " + pages.refusal().message);
    std::string text;
    for (const Worksheet& worksheet : worksheets)
        text += (text.empty() ? "" : "\f") + art_library().worksheet_text(worksheet, options);
    files.push_back({folder + "worksheet.txt", std::move(text)});
    const bool fits_a_screen = worksheets.front().puzzle.grid.grid.size().cells() <= most_cells_on_a_screen;
    if (worksheets.size() == 1 && fits_a_screen)
        files.push_back({folder + "solve.html", art_library().solve_page(worksheets.front(), options)});
}

}  // namespace

Outcome<std::optional<Recipe>> recipe_from_files(const Values& values) {
    std::optional<Recipe> recipe;
    if (values.has("from")) {
        auto earlier = recipe_from_earlier(values);
        if (!earlier) return earlier.refusal();
        recipe = std::move(*earlier);
    } else if (values.has("keep")) {
        return unusable_call("--keep says what of an earlier puzzle stays, and none is given.",
                             "Name it with --from PUZZLE.");
    }
    if (values.has("recipe")) {
        const std::string name = values.text("recipe");
        const auto json = read_file(name);
        if (!json) return json.refusal();
        auto read = recipe_from_json(*json, name);
        if (!read) return read.refusal();
        recipe = std::move(*read);
    }
    return recipe;
}

Outcome<Recipe> with_recipe_options(Recipe recipe, const Values& values) {
    auto with_text = with_text_options(std::move(recipe), values);
    if (!with_text) return with_text;
    auto with_filler = with_filler_options(std::move(*with_text), values);
    if (!with_filler) return with_filler;
    auto with_grid = with_grid_options(std::move(*with_filler), values);
    if (!with_grid) return with_grid;
    return with_demand_options(std::move(*with_grid), values);
}

Outcome<PuzzlesWanted> puzzles_wanted(const Recipe& recipe, const Values& values) {
    if (auto refusal = artwork_without_blank(values)) return *std::move(refusal);
    if (auto refusal = cutting_without_folder(values)) return *std::move(refusal);
    Paper paper{};
    if (auto refusal = set_choice(paper, values, "paper", papers)) return *std::move(refusal);
    PuzzlesWanted wanted;
    if (values.has("blank")) {
        auto options = artwork_options(values);
        if (!options) return options.refusal();
        auto cutting = cut_options(values);
        if (!cutting) return cutting.refusal();
        wanted.artwork = ArtworkWanted{*std::move(options), *std::move(cutting), values.is_on("fix")};
    }
    const auto count = count_value(values, "choices", max_choices, recipe.choices);
    if (!count) return count.refusal();
    wanted.count = *count;
    wanted.several = values.has("choices") || recipe.choices > 1;
    auto aim = aim_of(values);
    if (!aim) return aim.refusal();
    wanted.aim = *aim;
    return wanted;
}

Outcome<Recipe> recipe_for(Recipe recipe, const PuzzlesWanted& wanted, const MakeControl& control) {
    if (!wanted.artwork) return recipe;
    return art_library().recipe_on_blank(std::move(recipe), wanted.artwork->artwork, control);
}

Outcome<std::vector<Puzzle>> make_puzzles(const CheckedRecipe& checked, const Recipe& recipe,
                                          const PuzzlesWanted& wanted, const MakeControl& control) {
    auto puzzles = made(checked, recipe, wanted, control);
    if (!puzzles) return puzzles;
    note_missing_avoid_list(recipe);
    note_missing_letter_table(recipe);
    if (puzzles->size() < wanted.count)
        say("note: " + std::to_string(puzzles->size()) + " different puzzles were found, not " +
            std::to_string(wanted.count) + ".");
    if (const auto moved = moved_words(puzzles->front()); !moved.empty()) say(moved);
    return puzzles;
}

std::string page_title(const Values& values) {
    std::string title = values.text("heading");
    for (auto at = title.find("\\n"); at != std::string::npos; at = title.find("\\n"))
        title.replace(at, 2, " ");
    return title;
}

Outcome<std::vector<NamedFile>> files_of(const Puzzle& puzzle, const PuzzlesWanted& wanted,
                                         const PrintOptions& pages, const std::string& folder,
                                         const std::string& title, std::optional<HeldArtwork>* held) {
    std::vector<NamedFile> files;
    append_puzzle(files, puzzle, folder);
    append_pages(files, {{puzzle, title}}, pages, folder);
    if (!wanted.artwork) return files;
    auto artwork = drawn(puzzle, wanted.artwork->artwork, wanted.artwork->fix);
    if (!artwork) return artwork.refusal();
    auto cut = files_to_cut(puzzle, *artwork, wanted.artwork->cutting);
    if (!cut) return cut.refusal();
    for (auto& file : *cut) files.push_back({folder + file.path, std::move(file.bytes)});
    if (held) *held = *std::move(artwork);
    return files;
}

std::vector<NamedFile> files_of_versions(const std::vector<Puzzle>& versions, const PrintOptions& pages,
                                         const std::string& title) {
    std::vector<NamedFile> files;
    std::vector<Worksheet> worksheets;
    for (std::size_t at = 0; at < versions.size(); ++at) {
        append_puzzle(files, versions[at], std::string("version-") + static_cast<char>('a' + at) + "/");
        worksheets.push_back({versions[at], title, std::string(1, static_cast<char>('A' + at))});
    }
    append_pages(files, worksheets, pages, "");
    return files;
}

}  // namespace lode::cli
