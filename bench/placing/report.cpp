#include "report.hpp"

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <ostream>

#include "engines.hpp"
#include "verdict.hpp"

namespace lode::bench {

double processor_seconds() {
    timespec time{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
    return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_nsec) * 1e-9;
}

namespace {

// What is over within this is run again, from other seeds, and the mean is taken.
constexpr double least_seconds = 0.01;
constexpr int most_runs = 200;
// Above so many words times cells the verdict leaves stray copies to the engine's own judge.
constexpr std::size_t most_looks = 50'000'000;

struct Row {
    const Engine* engine = nullptr;
    int solved = 0, proved = 0, unfinished = 0;
    std::vector<double> seconds = {};  // by instance, those that were left open too
    std::vector<double> setting_up = {};
};

// What is known of an instance once some engines have answered.
struct Known {
    bool solution = false;               // there is one
    bool solution_reading_once = false;  // and without stray copies
    bool no_solution = false;            // proved, stray copies allowed
    bool no_solution_reading_once = false;

    void compare() const {
        if ((solution && no_solution) || (solution_reading_once && (no_solution || no_solution_reading_once)))
            throw WrongAnswer("what one engine proves impossible, there is a solution of");
    }
};

void judge(const Engine& engine, const Instance& instance, const Answer& answer, Known& known) {
    if (answer.end == Answer::End::proved)
        (answer.forbids_stray_copies ? known.no_solution_reading_once : known.no_solution) = true;
    if (answer.end != Answer::End::solved) return known.compare();
    if (const auto fault = fault_in(instance, answer); !fault.empty())
        throw WrongAnswer(engine.name + ": " + fault);
    known.solution = true;
    if (instance.words.size() * instance.size.cells() <= most_looks) {
        const bool reads_once = reads_each_word_once(instance, answer);
        if (answer.forbids_stray_copies && !reads_once)
            throw WrongAnswer(engine.name + ": a word can be read twice");
        known.solution_reading_once |= reads_once;
    }
    known.compare();
}

void run(Row& row, const Instance& instance, double limit, Known& known) {
    const Engine& engine = *row.engine;
    if (instance.words.size() * instance.size.cells() > engine.most_words_times_cells) return;
    const auto answer_to = engine.prepare(instance);
    double seconds = 0, setting_up = 0;
    int runs = 0;
    Answer::End end{};
    while (runs == 0 || (seconds < least_seconds && runs < most_runs && end != Answer::End::unfinished)) {
        const double start = processor_seconds();
        const Answer answer = answer_to(Deadline(limit), static_cast<std::uint64_t>(++runs));
        seconds += processor_seconds() - start;
        setting_up += answer.setting_up;
        end = answer.end;
        judge(engine, instance, answer, known);
    }
    row.seconds.push_back(seconds / runs);
    row.setting_up.push_back(setting_up / runs);
    ++(end == Answer::End::solved ? row.solved : end == Answer::End::proved ? row.proved : row.unfinished);
}

double median(std::vector<double> values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

// A median that was not finished: a lower bound.
bool is_bound(const Row& row) {
    return row.unfinished * 2 > static_cast<int>(row.seconds.size());
}

// How many times ours; nothing to compare with where most of ours were left open, or were not run.
std::string ratio_of(const Row& row, const Row& ours) {
    if (ours.seconds.empty() || is_bound(ours)) return "-";
    char text[32];
    std::snprintf(text, sizeof text, "%s%.2f", is_bound(row) ? ">" : "",
                  median(row.seconds) / median(ours.seconds));
    return text;
}

std::string text_of(const Row& row, const Row& ours) {
    char line[160];
    if (row.seconds.empty()) {
        std::snprintf(line, sizeof line, "  %-28s not asked: too many places to list",
                      row.engine->name.c_str());
        return line;
    }
    std::snprintf(line, sizeof line, "  %-28s %6d %6d %6d %s%11.3f %11.3f %10s", row.engine->name.c_str(),
                  row.solved, row.proved, row.unfinished, is_bound(row) ? ">" : " ",
                  median(row.seconds) * 1000, median(row.setting_up) * 1000, ratio_of(row, ours).c_str());
    return line;
}

void add_peers(const Family& family, std::vector<Engine>& engines) {
    engines.push_back(random_retry());
    if (family.name == "everyday") engines.push_back(random_retry_filled());
    engines.push_back(sat_solver());
    for (auto& solver : constraint_solvers()) engines.push_back(std::move(solver));
}

std::vector<Engine> engines_for(const Family& family, const Options& options) {
    std::vector<Engine> engines{placing_alone()};
    if (family.name == "everyday")
        for (const Making making : {Making::unaudited, Making::certified, Making::certified_with_avoid_list})
            engines.push_back(whole_puzzle(making));
    if (options.peers) add_peers(family, engines);
    std::erase_if(
        engines, [&](const Engine& engine) { return engine.name.find(options.engine) == std::string::npos; });
    return engines;
}

}  // namespace

void report(const Family& family, const Options& options, std::ostream& out) {
    const auto engines = engines_for(family, options);
    out << family.name << ": " << family.what << "\n";
    for (const Set& set : family.sets(options.seed, options.count)) {
        if (set.name.find(options.set) == std::string::npos) continue;
        char heading[160];
        std::snprintf(heading, sizeof heading, "  %-28s %6s %6s %6s %12s %11s %10s\n", set.name.c_str(),
                      "solved", "proved", "open", "median ms", "setting up", "to ours");
        out << heading << std::flush;
        std::vector<Known> known(set.instances.size());
        for (Known& each : known) each.solution = each.solution_reading_once = set.is_feasible;
        Row ours;
        for (const Engine& engine : engines) {
            Row row;
            row.engine = &engine;
            for (std::size_t at = 0; at < set.instances.size(); ++at)
                run(row, set.instances[at], options.limit, known[at]);
            if (engine.name == placing_alone().name) ours = row;
            out << text_of(row, ours) << "\n" << std::flush;
        }
    }
    out << "\n";
}

}  // namespace lode::bench
