#include "batch/order_work.hpp"

#include <array>
#include <exception>
#include <filesystem>
#include <new>

#include <letterlode/art.hpp>
#include <nlohmann/json.hpp>

#include "art_library.hpp"
#include "artwork_options.hpp"
#include "cut_options.hpp"
#include "print_options.hpp"
#include "rating_rules.hpp"
#include "report.hpp"

namespace lode::cli {
namespace {

// Adds a document of one line a member, on one line: line ends stand only between its parts, never in its
// strings.
void append_on_one_line(std::string& line, std::string_view document) {
    for (std::size_t at = 0; at < document.size();) {
        const std::size_t end = std::min(document.find('\n', at), document.size());
        line.append(document, at, end - at);
        at = std::min(document.find_first_not_of(' ', end + 1), document.size());
    }
}

std::string quoted_json(const std::string& text) {
    return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

// What each result begins with: the order's number, and its text's checksum.
std::string beginning_of(const OrderLine& line) {
    constexpr std::array digits{'0', '1', '2', '3', '4', '5', '6', '7',
                                '8', '9', 'a', 'b', 'c', 'd', 'e', 'f'};
    std::string crc(8, '0');
    for (std::uint32_t left = crc_of(line.text), at = 8; at-- > 0; left >>= 4) crc[at] = digits[left & 15];
    return "{\"order\":" + std::to_string(line.number) + ",\"order_crc32\":\"" + crc + "\",";
}

// A result: its document, with the order's number and name before its members and more behind them.
class ResultLine {
  public:
    ResultLine(const OrderLine& order, const std::string& name, const std::string& document) {
        constexpr std::size_t order_and_end = 96;
        text_.reserve(document.size() + name.size() + order_and_end);
        text_ = beginning_of(order);
        if (!name.empty()) text_ += "\"name\":" + quoted_json(name) + ",";
        // More may follow the members: the object stays open.
        constexpr std::string_view begins = "{", ends = "}\n";
        append_on_one_line(text_, std::string_view(document).substr(
                                      begins.size(), document.size() - begins.size() - ends.size()));
    }
    void add(const char* name, const std::string& document) {
        text_ += std::string(",\"") + name + "\":";
        append_on_one_line(text_, document);
    }
    [[nodiscard]] std::string take() { return std::move(text_) + "}\n"; }

  private:
    std::string text_;
};

std::string strings_json(const std::vector<std::string>& texts) {
    std::string json;
    for (const auto& text : texts) json += (json.empty() ? "" : ",") + quoted_json(text);
    return "[" + json + "]";
}

// "000012-herb-bed"
std::string folder_name(const Order& order) {
    constexpr std::size_t digits = 6, longest_name = 60;
    std::string name = std::to_string(order.number);
    if (name.size() < digits) name.insert(0, digits - name.size(), '0');
    std::string words;
    for (const char c : order.name) {
        const bool is_plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        const bool is_capital = c >= 'A' && c <= 'Z';
        if (is_plain || is_capital)
            words += is_capital ? static_cast<char>(c - 'A' + 'a') : c;
        else if (!words.empty() && words.back() != '-')
            words += '-';
    }
    words.resize(std::min(words.size(), longest_name));
    while (words.ends_with('-')) words.pop_back();
    return words.empty() ? name : name + "-" + words;
}

// What write_folder had begun: ".000012-herb-bed.123.part", by "000012-herb-bed".
std::multimap<std::string, std::string> unfinished_in(const std::string& folder) {
    std::multimap<std::string, std::string> found;
    std::error_code unknown;
    for (const auto& entry : std::filesystem::directory_iterator(folder, unknown)) {
        const std::string name = entry.path().filename().string();
        if (name.starts_with('.') && name.ends_with(".part"))
            found.emplace(name.substr(1, name.find('.', 1) - 1), entry.path().string());
    }
    return found;
}

MakeControl control() {
    return {{}, &interrupt_flag(), 1};
}

// Versions of a worksheet.
Outcome<std::vector<Puzzle>> versions(const CheckedRecipe& recipe, std::uint64_t seed, std::size_t count) {
    auto made = make_versions(recipe, seed, count, control());
    if (!made) return made.refusal();
    return std::move(made->puzzles);
}

// What an order asks for besides its puzzle.
class Extras {
  public:
    Extras(const Order& order, const PuzzlesWanted& wanted, ResultLine& line)
        : order_(order), wanted_(wanted), line_(line) {}

    std::optional<Refusal> add_rating(const Puzzle& puzzle) {
        if (!order_.rate) return std::nullopt;
        const auto rules = rating_rules(puzzle, *order_.rate);
        if (!rules) return rules.refusal();
        const auto rating = lode::rate(puzzle, *rules);
        if (!rating) return rating.refusal();
        line_.add("rating", to_json(*rating));
        return std::nullopt;
    }

    // The order's folder.
    std::optional<Refusal> write(const std::vector<Puzzle>& puzzles, const std::string& folder, bool replace,
                                 const std::multimap<std::string, std::string>& unfinished) {
        std::optional<HeldArtwork> held;
        const auto its = files(puzzles, held);
        if (!its) return its.refusal();
        Disk disk;
        const std::string name = folder_name(order_);
        for (auto [left, end] = unfinished.equal_range(name); left != end; ++left)
            disk.remove_all(left->second);
        const auto written = write_folder(folder + "/" + name, *its, replace, disk);
        if (!written) return written.refusal();
        line_.add("folder", quoted_json(name));
        if (held && !wanted_.several)
            line_.add("cut", art_library().cut_json(*held, wanted_.artwork->cutting));
        return std::nullopt;
    }

  private:
    // Of one puzzle, of several in a folder each, or of versions.
    Outcome<std::vector<NamedFile>> files(const std::vector<Puzzle>& puzzles,
                                          std::optional<HeldArtwork>& held) const {
        auto pages = print_options(order_.print ? *order_.print : Values({}));
        if (!pages) return pages.refusal();
        if (order_.print)
            pages->contents = order_.print->text("booklet");
        else if (const auto paper = paper_named(order_.make.text("paper")))
            pages->page = *paper;
        // Sheets without a heading are told apart by what their order is called.
        const std::string title = order_.make.has("heading") ? page_title(order_.make) : order_.name;
        if (order_.versions > 0) return files_of_versions(puzzles, *pages, title);
        std::vector<NamedFile> all;
        for (const Puzzle& puzzle : puzzles) {
            const std::string inside =
                wanted_.several ? "seed-" + std::to_string(puzzle.recipe.seed) + "/" : std::string();
            auto some = files_of(puzzle, wanted_, *pages, inside, title, &held);
            if (!some) return some.refusal();
            for (auto& file : *some) all.push_back(std::move(file));
        }
        return all;
    }

    const Order& order_;
    const PuzzlesWanted& wanted_;
    ResultLine& line_;
};

std::string fault_line(const OrderLine& line, const char* what) {
    return beginning_of(line) + "\"format\":\"letterlode-fault\",\"version\":1,\"message\":" +
           quoted_json(std::string("A fault of letterlode: ") + what) + "}\n";
}

}  // namespace

OrderWork::OrderWork(OrderDefaults defaults, std::optional<std::string> folder, bool replace)
    : defaults_(std::move(defaults)),
      folder_(std::move(folder)),
      replace_(replace),
      unfinished_(folder_ && replace ? unfinished_in(*folder_) : std::multimap<std::string, std::string>()) {}

Outcome<CheckedRecipe> OrderWork::checked(const Recipe& recipe) const {
    constexpr std::size_t most_kept = 32;
    auto& kept = kept_.local().groundwork;
    auto checked = CheckedRecipe::open(recipe, kept[recipe.text.locale]);
    if (checked) kept[recipe.text.locale] = checked->groundwork();
    if (kept.size() > most_kept) kept.clear();
    return checked;
}

Outcome<const OrderWork::Prepared*> OrderWork::prepared(const OrderLine& line, std::uint64_t& seed) const {
    std::optional<Prepared>& last = kept_.local().last;
    auto seeded = seed_in(line.text);
    if (seeded && last && last->others == seeded->others) {
        if (last->checked && !*last->checked) return last->checked->refusal();
        last->order.number = line.number;
        last->order.recipe.seed = seed = seeded->seed;
        return &*last;
    }
    last.reset();
    auto order = read_order(line.text, line.number, defaults_);
    if (!order) return order.refusal();
    if (order->print && !folder_)
        return unusable_call("Pages are files, and the batch writes none.",
                             "Give letterlode batch --out DIR, or leave the options of print out.");
    auto wanted = puzzles_wanted(order->recipe, order->make);
    if (!wanted) return wanted.refusal();
    if (wanted->artwork) wanted->artwork->cutting.order = order->name;
    seed = order->recipe.seed;
    std::optional<Outcome<CheckedRecipe>> opened;
    if (!wanted->artwork) opened = checked(order->recipe);
    // A seed that an option brings, or a file, is not the one that stands there.
    const bool is_own_seed = seeded && seeded->seed == seed && !order->make.has("seed");
    last = Prepared{is_own_seed ? std::move(seeded->others) : std::string(), *std::move(order),
                    *std::move(wanted), std::move(opened)};
    if (last->checked && !*last->checked) return last->checked->refusal();
    return &*last;
}

Outcome<OrderResult> OrderWork::result_of(const OrderLine& line) const {
    std::vector<std::string> notes;
    const GatheredNotes gathered(notes);
    if (line.refused) return *line.refused;
    std::uint64_t seed = 0;
    const auto found = prepared(line, seed);
    if (!found) return found.refusal();
    const Prepared& it = **found;
    std::optional<CheckedRecipe> on_blank;
    std::optional<Recipe> changed;
    if (it.wanted.artwork) {
        auto recipe = recipe_for(it.order.recipe, it.wanted, control());
        if (!recipe) return recipe.refusal();
        auto opened = checked(*recipe);
        if (!opened) return opened.refusal();
        on_blank = std::move(*opened);
        changed = *std::move(recipe);
    }
    const CheckedRecipe& recipe = on_blank ? *on_blank : **it.checked;
    const auto puzzles = it.order.versions > 0 ? versions(recipe, seed, it.order.versions)
                                               : make_puzzles(recipe, changed ? *changed : it.order.recipe,
                                                              it.wanted, control());
    if (!puzzles) return puzzles.refusal();
    const bool several = it.wanted.several || it.order.versions > 0;
    ResultLine result(line, it.order.name,
                      several ? to_json(std::span(*puzzles)) : to_json(puzzles->front()));
    Extras extras(it.order, it.wanted, result);
    if (auto refusal = extras.add_rating(puzzles->front())) return *std::move(refusal);
    if (folder_) {
        if (auto refusal = extras.write(*puzzles, *folder_, replace_, unfinished_))
            return *std::move(refusal);
    } else if (it.wanted.artwork) {
        say("note: no artwork is written without --out DIR.");
    }
    if (!notes.empty()) result.add("notes", strings_json(notes));
    return OrderResult{line.number, OrderResult::End::done, result.take(), {}, !notes.empty()};
}

OrderResult OrderWork::refused(const OrderLine& line, Refusal refusal) const {
    if (refusal.source.empty()) refusal.source = defaults_.source;
    if (refusal.source == defaults_.source && refusal.line == 0)
        refusal.line =
            static_cast<int>(std::min<std::uint64_t>(line.line > 0 ? line.line : line.number, 2'000'000'000));
    const std::string name = name_in(line.text);
    std::string why = "order " + std::to_string(line.number) + (name.empty() ? "" : ", '" + name + "'") +
                      ": " + refusal.message;
    ResultLine result(line, name, to_json(refusal));
    return {line.number, OrderResult::End::refused, result.take(), std::move(why)};
}

OrderResult OrderWork::run(const OrderLine& line) const {
    try {
        auto result = result_of(line);
        if (result) return *std::move(result);
        if (interrupt_flag()) return {line.number, OrderResult::End::cancelled, {}, {}};
        return refused(line, result.refusal());
    } catch (const DiskFault&) {
        throw;
    } catch (const std::bad_alloc&) {
        return {line.number, OrderResult::End::faulty, fault_line(line, "memory ran out"), {}};
    } catch (const std::exception& fault) {
        return {line.number, OrderResult::End::faulty, fault_line(line, fault.what()), {}};
    }
}

}  // namespace lode::cli
