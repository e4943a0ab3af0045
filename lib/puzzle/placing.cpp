#include "puzzle/placing.hpp"

#include <algorithm>

namespace lode {
namespace {

Placing arranged(const Job& job, const NestedWords& nested, std::span<const std::uint32_t> which) {
    Placing placing;
    std::vector<std::uint32_t> number(which.size());  // in the guard, by place in `which`
    std::vector<Letters> guarded;
    guarded.reserve(which.size());
    placing.listed.reserve(which.size());
    for (const auto* some : {&nested.placed, &nested.brought})
        for (const std::uint32_t word : *some) {
            number[word] = static_cast<std::uint32_t>(placing.listed.size());
            placing.listed.push_back(which[word]);
            guarded.push_back(job.words[which[word]]);
        }
    placing.words.assign(guarded.begin(),
                         guarded.begin() + static_cast<std::ptrdiff_t>(nested.placed.size()));
    placing.guard = exact_guard(guarded, job.alphabet.size());
    placing.nested = nested.copies;
    for (InnerCopy& copy : placing.nested) {
        copy.inner = number[copy.inner];
        copy.outer = number[copy.outer];
    }
    return placing;
}

}  // namespace

Outcome<Placing> placing_of(const Job& job, Nested rule, std::span<const std::uint32_t> which) {
    WordList list{job.list.source, {}};
    std::vector<Letters> words;
    for (const std::uint32_t word : which) {
        list.words.push_back(job.list.words[word]);
        words.push_back(job.words[word]);
    }
    const auto nested = nest(list, words, rule);
    if (!nested) return nested.refusal();
    return arranged(job, *nested, which);
}

Placing placing_of(const Job& job) {
    std::vector<std::uint32_t> all(job.words.size());
    for (std::uint32_t word = 0; word < all.size(); ++word) all[word] = word;
    return arranged(job, job.nested, all);
}

std::vector<Placement> all_placements(const Placing& placing, const std::vector<Placement>& placed) {
    std::vector<Placement> all(placing.listed.size());
    for (std::size_t word = 0; word < placed.size(); ++word) all[placing.listed[word]] = placed[word];
    for (const InnerCopy& copy : placing.nested)
        if (copy.inner >= placed.size()) all[placing.listed[copy.inner]] = copy.in(placed[copy.outer]);
    return all;
}

}  // namespace lode
