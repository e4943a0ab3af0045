// Two searches with the same answers in the same order: the Sieve, which is fast where grids are like those
// that people make, and the Sweep, which takes over from it where they are not.

#include <algorithm>
#include <memory>
#include <mutex>

#include <letterlode/find.hpp>

#include "find/search.hpp"

namespace lode {

struct Matcher::Index {
    SoughtWords words;
    Sieve sieve;
    mutable std::once_flag sweep_is_built;
    mutable std::unique_ptr<const Sweep> sweep_if_built;

    explicit Index(std::span<const Letters> list) : words(list), sieve(words) {}

    // Most lists never need it.
    [[nodiscard]] const Sweep& sweep() const {
        std::call_once(sweep_is_built, [&] { sweep_if_built = std::make_unique<const Sweep>(words); });
        return *sweep_if_built;
    }
};

Matcher::Matcher(std::span<const Letters> words) : index_(std::make_unique<Index>(words)) {}
Matcher::Matcher(Matcher&&) noexcept = default;
Matcher& Matcher::operator=(Matcher&&) noexcept = default;
Matcher::~Matcher() = default;

bool Matcher::search(const Grid& grid, const Found& found, const SearchRules& rules) const {
    return search_by(SearchMeans{}, grid, found, rules);
}

bool Matcher::search_by(const SearchMeans& means, const Grid& grid, const Found& found,
                        const SearchRules& rules) const {
    const Wanted wanted(rules.directions);
    if (index_->words.size() == 0 || grid.size().cells() == 0 || wanted.nothing()) return true;
    const Size size = grid.size();
    Giver giver(found, rules, size.rows);
    // Where the Sieve gives up, a Sweep goes on for so many rows that the block which the Sieve tried in vain
    // weighs little; then it is the Sieve's turn again.
    const long long longest =
        static_cast<long long>(std::min(index_->words.longest(), static_cast<std::size_t>(size.rows)));
    const long long swept_rows =
        8 * std::max<long long>(means.block_rows > 0 ? means.block_rows : usual_block_rows(size), longest);
    for (int row = 0;;) {
        if (means.by_sieve) {
            const FindLoops& loops = means.loops ? *means.loops : find_loops();
            switch (sieve_rows(index_->sieve, index_->words, loops, grid, wanted, means,
                               rules.control.threads, giver, row)) {
                case SieveEnd::done:
                    return true;
                case SieveEnd::stopped:
                    return false;
                case SieveEnd::given_up:
                    break;
            }
        }
        const int last_row =
            means.by_sieve ? static_cast<int>(std::min<long long>(size.rows, row + swept_rows)) : size.rows;
        if (!index_->sweep().run(grid, row, last_row, wanted, giver)) return false;
        row = last_row;
        if (row == size.rows) return giver.arrive_at(row);
    }
}

}  // namespace lode
