// letterlode batch [FILE]

#include <algorithm>
#include <array>
#include <filesystem>
#include <set>
#include <thread>

#include <oneapi/tbb/global_control.h>
#include <oneapi/tbb/parallel_pipeline.h>
#include <letterlode/files.hpp>

#include "batch/batch_progress.hpp"
#include "batch/order_lines.hpp"
#include "batch/order_options.hpp"
#include "batch/order_work.hpp"
#include "batch/results.hpp"
#include "verbs.hpp"

namespace lode::cli {
namespace {

namespace tbb = oneapi::tbb;

// So many orders for each processor are under way or wait for an earlier one, at the most: an order that
// takes long stops none of the others, and whatever the input's length, no more is held than these.
constexpr std::size_t orders_for_each_thread = 32;
// Numbers up to here are exact in the JSON of every language (2^53), and some are left for the lines that
// follow.
constexpr std::size_t most_first = 1'000'000'000'000'000;

struct Batch {
    OrderLines& lines;
    const OrderWork& work;
    Results& results;
    BatchProgress& progress;
    std::uint64_t first;  // number of the first line
};

constexpr std::size_t most_refusals_said = 10;

struct Tally {
    std::uint64_t done = 0, refused = 0, faulty = 0, with_notes = 0;
    std::vector<std::string> why;            // of the first that were refused
    std::optional<Refusal> of_other_orders;  // what ends the batch: its results are not those of these orders
};

// Results are written in the order of their lines, or as they come.
Tally run(const Batch& batch, std::size_t threads, bool in_order) {
    const tbb::global_control bound(tbb::global_control::max_allowed_parallelism, threads);
    Tally tally;
    bool is_broken_off = false;
    const auto read = [&](tbb::flow_control& flow) -> OrderLine {
        while (auto line = batch.lines.next()) {
            batch.progress.set_read(batch.lines.read());
            line->number += batch.first - 1;
            if (!batch.results.has(line->number)) return *std::move(line);
            tally.of_other_orders = batch.results.pass_over(line->number, crc_of(line->text));
            if (tally.of_other_orders) break;
        }
        if (!tally.of_other_orders && !interrupt_flag()) tally.of_other_orders = batch.results.end();
        flow.stop();
        return {};
    };
    const auto work = [&](const OrderLine& line) { return batch.work.run(line); };
    const auto write = [&](const OrderResult& result) {
        // What comes behind a gap is left for the next run, so that the order holds.
        is_broken_off = is_broken_off || (in_order && result.end == OrderResult::End::cancelled);
        if (is_broken_off || result.end == OrderResult::End::cancelled) return;
        batch.results.write(result.line);
        ++tally.done;
        if (result.end == OrderResult::End::refused) ++tally.refused;
        if (result.end == OrderResult::End::refused && tally.why.size() < most_refusals_said)
            tally.why.push_back(result.why);
        if (result.has_notes) ++tally.with_notes;
        if (result.end == OrderResult::End::faulty) ++tally.faulty;
        batch.progress.set_done(tally.done, tally.refused + tally.faulty);
    };
    tbb::parallel_pipeline(
        threads * orders_for_each_thread,
        tbb::make_filter<void, OrderLine>(tbb::filter_mode::serial_in_order, read) &
            tbb::make_filter<OrderLine, OrderResult>(tbb::filter_mode::parallel, work) &
            tbb::make_filter<OrderResult, void>(
                in_order ? tbb::filter_mode::serial_in_order : tbb::filter_mode::serial_out_of_order, write));
    return tally;
}

Outcome<std::unique_ptr<OrderLines>> lines_of(const Values& values) {
    const auto files = values.texts("file");
    if (!values.has("from")) {
        for (const char* option : {"words-column", "by-column"})
            if (values.has(option) && (std::string(option) != "by-column" || values.is_on(option)))
                return unusable_call(
                    "--" + std::string(option) + " tells how a table is read, and none is given.",
                    "Give --from FILE.csv.");
        return json_lines(files.empty() ? "-" : files.front());
    }
    if (!files.empty())
        return unusable_call("Orders are given twice: '" + files.front() + "' and --from.",
                             "Leave one of them out.");
    if (values.has("words-column") == values.is_on("by-column"))
        return unusable_call(
            "It is not said where the words of the table stand.",
            "Give --words-column NAME where a row is an order, or --by-column where a column is one.");
    return values.is_on("by-column") ? table_columns(values.text("from"))
                                     : table_rows(values.text("from"), values.text("words-column"));
}

bool is_taken(const std::string& folder) {
    std::error_code unknown;
    return Disk().exists(folder) && !std::filesystem::is_empty(folder, unknown);
}

// Refused as unusable: options that do not go together, and a folder that is in the way.
std::optional<Refusal> bad_call(const Values& values) {
    if (values.has("out") && values.text("out").empty())
        return unusable_call("--out has no name.", "Give --out a folder.");
    if (values.is_on("resume") && !values.has("results"))
        return unusable_call("--resume goes on with a file of results, and none is named.",
                             "Give --results FILE.");
    if (values.is_on("refused-again") && !values.is_on("resume"))
        return unusable_call("--refused-again is of no use where nothing was made before.",
                             "Give --resume as well, or leave it out.");
    if (values.has("out") && !values.is_on("resume") && is_taken(values.text("out")))
        return unusable_call("'" + values.text("out") + "' exists already, and is no empty folder.",
                             values.has("results")
                                 ? "Give --out another name, or go on with an earlier run by --resume."
                                 : "Give --out another name, or move it away.");
    return std::nullopt;
}

std::string counted(std::uint64_t count, const char* what) {
    return std::to_string(count) + " " + what + (count == 1 ? "" : "s");
}

void say_end(const Tally& tally, const Results& results, const Values& values) {
    std::string text = counted(tally.done, "order") + " done";
    if (tally.refused > 0)
        text += ": " + std::to_string(tally.done - tally.refused - tally.faulty) + " made, " +
                std::to_string(tally.refused) + " refused";
    if (results.earlier() > 0) text += "; " + std::to_string(results.earlier()) + " before";
    if (results.earlier_refused() > 0)
        text += ", " + std::to_string(results.earlier_refused()) + " of them refused";
    if (tally.faulty > 0) text += "; ended by a fault of this program: " + std::to_string(tally.faulty);
    say(text + ".");
    // On standard output they were seen.
    if (values.has("results")) {
        for (const auto& why : tally.why) say("refused: " + why);
        if (tally.refused > tally.why.size())
            say("refused: and " + std::to_string(tally.refused - tally.why.size()) + " more, which " +
                values.text("results") + " tells.");
    }
    if (tally.with_notes > 0)
        say("note: " + counted(tally.with_notes, "result") + (tally.with_notes == 1 ? " has" : " have") +
            " \"notes\" that should be read before anything is cut or printed.");
    if (interrupt_flag())
        say(values.has("results") ? "Interrupted. What is written is whole: --resume goes on from there."
                                  : "Interrupted. What is written is whole.");
}

// The options of make, rate and print that may stand on the command line for all orders.
void add_shared_options(po::options_description& options) {
    const OrderOptions& known = order_options();
    std::set<std::string> there;
    for (const auto& option : options.options()) there.insert(option->long_name());
    for (const auto* verb : {&known.make, &known.rate, &known.print})
        for (const auto& option : verb->options()) {
            const std::string& name = option->long_name();
            if (is_shared_option(name) && there.insert(name).second) options.add(option);
        }
}

}  // namespace

Verb batch_verb() {
    Verb verb{.file = "[FILE]",
              .purpose =
                  "Makes a puzzle, and all that goes with it, of each of many orders: a line in, a line out.",
              .needs_file = false};
    verb.options.add_options()  //
        ("from", offered_value("TABLE", {.files = true}),
         "orders from a table with a header (CSV, or with semicolons or tabs) instead of FILE")  //
        ("words-column", po::value<std::string>()->value_name("NAME"),
         "in a table whose rows are orders, the column that holds their words, with line ends, semicolons or "
         "commas between; columns that are called like an option give its value")  //
        ("by-column", po::bool_switch(),
         "in a table whose columns are orders, a word a row: each has its column's name")  //
        ("first", po::value<std::string>()->value_name("N"),
         "number of the first line, where the input is a part of a longer one (default: 1)")  //
        ("results", offered_value("FILE", {.files = true}),
         "where results go, a line each (default: standard output)")  //
        ("resume", po::bool_switch(),
         "go on with --results: orders whose result is whole there are passed over")  //
        ("refused-again", po::bool_switch(),
         "with --resume: orders that were refused are done again, as they are now")                      //
        ("unordered", po::bool_switch(), "write results as they come, not in the order of their lines")  //
        ("out", offered_value("DIR", {.folders = true}),
         "a new folder, and in it one for each order with all that make --out writes")  //
        ("rate", po::bool_switch(), "rate each puzzle")                                 //
        ("print", po::bool_switch(),
         "pages as the options of print say; they are written with --out in any case")  //
        ("threads", po::value<std::string>()->value_name("N"),
         "processors to use (default: all); the results are the same");
    add_shared_options(verb.options);
    verb.details =
        "FILE holds an order a line, as JSON; '-', or none, reads standard input. An order has \"words\", a "
        "list or "
        "a file's\n"
        "name, and may have \"name\", members of a recipe, and options of make, rate, cut and print by their "
        "names;\n"
        "\"rate\" and \"print\" may be objects with options of their own. What stands on this command line "
        "holds for "
        "orders\n"
        "that do not say otherwise. Each result is a puzzle in JSON, or a refusal, with its order's number "
        "as "
        "\"order\".\n\n"
        "Examples:\n"
        "  echo '{\"words\":[\"Thyme\",\"Sage\"],\"seed\":7}' | letterlode batch\n"
        "  letterlode batch orders.jsonl --results puzzles.jsonl\n"
        "  letterlode batch orders.jsonl --results puzzles.jsonl --resume\n"
        "  letterlode batch --from orders.csv --words-column names --blank 8x10in --surface second --out "
        "panels\n\n"
        "Exit codes: 0 all made; 1 some were refused; 2 unusable input or options; 3 the machine's fault or "
        "ours;\n"
        "130 interrupted.\n";
    return verb;
}

ExitCode batch(const Values& values) {
    if (const auto refusal = bad_call(values)) return report(*refusal, false);
    const std::size_t all_threads = std::max(1u, std::thread::hardware_concurrency());
    const auto threads = count_value(values, "threads", max_threads, all_threads);
    if (!threads) return report(threads.refusal(), false);
    const auto first = count_value(values, "first", most_first, 1);
    if (!first) return report(first.refusal(), false);
    const auto lines = lines_of(values);
    if (!lines) return report(lines.refusal(), false);
    using Begin = Results::Begin;
    const Begin begin = values.is_on("refused-again") ? Begin::go_on_but_refused
                        : values.is_on("resume")      ? Begin::go_on
                                                      : Begin::anew;
    auto results =
        values.has("results") ? Results::open(values.text("results"), begin) : Outcome<Results>(Results());
    if (!results) return report(results.refusal(), false);
    std::optional<std::string> folder;
    if (values.has("out")) {
        folder = values.text("out");
        Disk().make_folders(*folder);
    }
    const auto files = values.texts("file");
    const std::string source = values.has("from")                      ? values.text("from")
                               : files.empty() || files.front() == "-" ? "standard input"
                                                                       : files.front();
    const OrderWork work({values.all(), source}, folder, values.is_on("resume"));
    Tally tally;
    try {
        BatchProgress progress((*lines)->all());
        tally = run({**lines, work, *results, progress, *first}, *threads, !values.is_on("unordered"));
        results->finish();
    } catch (const DiskFault& fault) {
        if (!values.has("results")) throw;
        say(std::string("letterlode: ") + fault.what());
        say("  What is written is whole, but for its last line perhaps. Make room, and go on by --resume.");
        return our_fault;
    }
    say_end(tally, *results, values);
    if (tally.of_other_orders) return report(*tally.of_other_orders, false);
    if (interrupt_flag()) return interrupted;
    if (tally.faulty > 0) return our_fault;
    return tally.refused + results->earlier_refused() > 0 ? finding : done;
}

}  // namespace lode::cli
