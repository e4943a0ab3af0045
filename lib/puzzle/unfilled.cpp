// What is said to be to blame is tried: without it, or with other letters, the same placements are filled
// again. Judged by tests/unfilled_test.cpp.

#include "puzzle/unfilled.hpp"

#include <algorithm>

#include "fill/conflict.hpp"
#include "text/quoted.hpp"

namespace lode {
namespace {

using Kind = FillCause::Kind;

// A trial of other letters or rules costs no more than this.
constexpr std::uint64_t effort_per_trial = 1'000'000;
constexpr std::size_t letters_told = 6;
constexpr std::size_t words_told = 12;

class Explanation {
  public:
    Explanation(const Recipe& recipe, const Job& job, const Placing& placing, const Unfilled& unfilled,
                std::uint64_t effort, const std::atomic<bool>* cancel)
        : recipe_(recipe),
          job_(job),
          placing_(placing),
          unfilled_(unfilled),
          effort_(effort),
          cancel_(cancel),
          random_(recipe.seed) {}

    Refusal run() {
        const FillConflict conflict = find_fill_conflict(
            unfilled_.placed, task(job_, std::min(effort_, 8 * effort_per_trial)), unfilled_.causes, random_);
        Refusal refusal;
        refusal.source = recipe_.words.source;
        refusal.reason = unfilled_.are_all_ways ? Refusal::Reason::impossible : Refusal::Reason::unfinished;
        refusal.message =
            unfilled_.are_all_ways
                ? "The words have their places, and the other cells cannot be filled. "
                : "The words could be placed, but in none of " + std::to_string(unfilled_.tried) +
                      " ways to place them can the other cells be filled. In the last of them: ";
        refusal.message += conflict.barred.empty() ? together(conflict) : at_one_cell(conflict);
        for (const FillCause& cause : conflict.causes)
            if (!is_rule(cause)) refusal.words.push_back(word(cause));
        advise(conflict, refusal);
        return refusal;
    }

  private:
    [[nodiscard]] FillTask task(const Job& job, std::uint64_t effort) const {
        return {placing_.guard,  job.avoided_guard, job.filler_weights,
                effort,          cancel_,           unfilled_.kept ? &*unfilled_.kept : nullptr,
                job.filler_rules};
    }
    [[nodiscard]] bool can_fill(const FillTask& task) {
        if (effort_ == 0) return false;
        const FillResult result = fill(unfilled_.placed, task, random_);
        effort_ -= std::min(effort_, result.effort_spent);
        return result.end == FillResult::End::filled;
    }
    [[nodiscard]] std::uint64_t trial() const { return std::min(effort_, effort_per_trial); }

    [[nodiscard]] static bool is_rule(const FillCause& cause) {
        return cause.kind == Kind::longest_run || cause.kind == Kind::look_alikes;
    }
    [[nodiscard]] bool has_only_letters_of_words() const {
        auto weights = job_.filler_weights;
        for (const Letters& word : job_.words)
            for (const Letter letter : word) weights[letter] = 0;
        return std::all_of(weights.begin(), weights.end(), [](std::uint32_t weight) { return weight == 0; });
    }
    [[nodiscard]] const std::string& word(const FillCause& cause) const {
        return cause.kind == Kind::listed_word ? job_.list.words[placing_.listed[cause.word]].shown
                                               : job_.avoided_word(cause.word);
    }
    [[nodiscard]] std::string run_text() const {
        return "more than " + std::to_string(recipe_.longest_run) + " equal letters in a row";
    }

    [[nodiscard]] std::string at_one_cell(const FillConflict& conflict) const {
        std::string text = "Row " + std::to_string(conflict.cell.row + 1) + ", column " +
                           std::to_string(conflict.cell.column + 1) + " can hold no letter: ";
        const std::size_t told = std::min(conflict.barred.size(), letters_told);
        for (std::size_t at = 0; at < told; ++at) {
            const auto& [letter, cause] = conflict.barred[at];
            text += (at > 0 ? "; " : "") + job_.alphabet.text(letter);
            switch (cause.kind) {
                case Kind::listed_word:
                    text += " would spell " + quoted(word(cause)) + " once more";
                    break;
                case Kind::avoided_word:
                    text += " would spell the avoided word " + quoted(word(cause));
                    break;
                case Kind::longest_run:
                    text += " would make " + run_text();
                    break;
                case Kind::look_alikes:
                    text += " would stand beside a letter that it is taken for";
                    break;
            }
        }
        if (told < conflict.barred.size())
            text += "; and so with " + std::to_string(conflict.barred.size() - told) + " more";
        return text + ".";
    }

    [[nodiscard]] std::string together(const FillConflict& conflict) const {
        std::vector<std::string> parts;
        std::size_t words = 0;
        for (const FillCause& cause : conflict.causes) {
            if (is_rule(cause) || ++words > words_told) continue;
            parts.push_back((cause.kind == Kind::avoided_word ? "the avoided word " : "") +
                            quoted(word(cause)) + (cause.kind == Kind::listed_word ? " once more" : ""));
        }
        if (words > words_told) parts.push_back(std::to_string(words - words_told) + " other words");
        for (const FillCause& cause : conflict.causes) {
            if (cause.kind == Kind::longest_run) parts.push_back(run_text());
            if (cause.kind == Kind::look_alikes) parts.push_back("look-alikes side by side");
        }
        std::string text;
        for (std::size_t at = 0; at < parts.size(); ++at)
            text += (at == 0 ? "" : at + 1 == parts.size() ? " or " : ", ") + parts[at];
        return "With the letters that are allowed, every filling holds " + text + "." +
               (conflict.irreducible && parts.size() > 1
                    ? " Any one of these allowed, there is one that holds none."
                    : "");
    }

    void advise(const FillConflict& conflict, Refusal& refusal) {
        const auto has = [&](Kind kind) {
            return std::any_of(conflict.causes.begin(), conflict.causes.end(),
                               [&](const FillCause& cause) { return cause.kind == kind; });
        };
        const auto without = [&](Kind kind, const std::string& how, const auto& leave_out) {
            if (!has(kind)) return;
            FillTask less = task(job_, trial());
            leave_out(less.rules);
            if (can_fill(less)) refusal.advice.push_back(how);
        };
        without(Kind::longest_run, "With --longest-run 0 they can be filled.",
                [](FillerRules& rules) { rules.longest_run = 0; });
        without(Kind::look_alikes, "With --look-alikes anywhere they can be filled.",
                [](FillerRules& rules) { rules.looks.clear(); });
        for (const FillerWay way : all_filler_ways) {
            if (way == recipe_.filler) continue;
            Recipe other = recipe_;
            other.filler = way;
            other.letter_counts.clear();
            const auto job = check(other);
            if (!job || job->filler_weights == job_.filler_weights || !can_fill(task(*job, trial())))
                continue;
            refusal.advice.push_back("With --filler " + std::string(name(way)) + " they can be filled.");
            break;
        }
        if (has(Kind::avoided_word))
            refusal.advice.push_back("Let an avoided word through with --allow, or avoid fewer words.");
        if (recipe_.filler != FillerWay::only_words && has_only_letters_of_words())
            refusal.advice.push_back("Name a language with --locale, so that its letters serve as filler.");
        if (refusal.advice.empty())
            refusal.advice.push_back("List words with more different letters, or leave one of these out.");
    }

    const Recipe& recipe_;
    const Job& job_;
    const Placing& placing_;
    const Unfilled& unfilled_;
    std::uint64_t effort_;
    const std::atomic<bool>* cancel_;
    Random random_;
};

}  // namespace

Refusal explain_unfilled(const Recipe& recipe, const Job& job, const Placing& placing,
                         const Unfilled& unfilled, std::uint64_t effort, const std::atomic<bool>* cancel) {
    return Explanation(recipe, job, placing, unfilled, effort, cancel).run();
}

}  // namespace lode
