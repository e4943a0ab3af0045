#include <algorithm>
#include <condition_variable>
#include <exception>
#include <map>
#include <mutex>
#include <optional>
#include <system_error>
#include <thread>

#include "find/search.hpp"

namespace lode {
namespace {

// Copies that wait for their turn. Where there are more, a Sweep, which keeps none, takes over.
constexpr std::size_t most_waiting = 4'000'000;

// What was found in a block of rows, by window; nothing where the Sieve gave up.
using Block = std::optional<std::vector<Finding>>;

// A copy can begin some rows above its window, or below it, so it waits until no window can bring one that
// comes before it.
class Waiting {
  public:
    // For the copies that begin in rows `row` and below. In `row` it leaves the first whose copies were not
    // given.
    Waiting(Size size, Giver& giver, int& row) : size_(size), giver_(giver), row_(row) {}

    // Takes what was found and gives what begins before row `ready`.
    SieveEnd take(const std::vector<Finding>& found, int ready) {
        ready = std::max(ready, row_);
        const std::uint64_t begin = place_of_row(row_), end = place_of_row(ready);
        ready_.clear();
        std::size_t later = 0;
        for (const Finding& finding : waiting_)
            if (finding.place < end)
                ready_.push_back(finding);
            else
                waiting_[later++] = finding;
        waiting_.resize(later);
        for (const Finding& finding : found)
            if (finding.place >= begin) (finding.place < end ? ready_ : waiting_).push_back(finding);
        sort_findings(ready_, room_);
        for (const Finding& finding : ready_)
            if (!giver_.give(finding.word, unpacked_place(finding.place, size_))) return SieveEnd::stopped;
        row_ = ready;
        if (!giver_.arrive_at(ready)) return SieveEnd::stopped;
        return waiting_.size() > most_waiting ? SieveEnd::given_up : SieveEnd::done;
    }

  private:
    [[nodiscard]] std::uint64_t place_of_row(int row) const {
        return packed_place(static_cast<std::size_t>(row) * static_cast<std::size_t>(size_.columns),
                            Direction::right, 0);
    }
    Size size_;
    Giver& giver_;
    int& row_;
    std::vector<Finding> waiting_, ready_, room_;
};

// The blocks of rows, from the first window that can bring a copy beginning in row `row`.
class BlockOrder {
  public:
    BlockOrder(Size size, int block_rows, int reach, int row)
        : first_(std::max(0, row - reach)), rows_(size.rows), block_rows_(block_rows), reach_(reach) {}
    [[nodiscard]] int count() const { return (rows_ - first_ + block_rows_ - 1) / block_rows_; }
    [[nodiscard]] int first(int block) const { return first_ + block * block_rows_; }
    [[nodiscard]] int last(int block) const { return std::min(rows_, first(block + 1)); }
    // The copies that begin before this row are all known with the block.
    [[nodiscard]] int ready(int block) const { return last(block) == rows_ ? rows_ : last(block) - reach_; }

  private:
    int first_, rows_, block_rows_, reach_;
};

// Blocks are claimed in order, a few ahead of the one that is given next. Every block's findings are the same
// whoever scans it, so the copies that are given, and the block at which the Sieve gives up, do not depend on
// the threads.
class Workers {
  public:
    using ScanBlock = std::function<Block(LineBand& band, int block)>;
    using MakeBand = std::function<LineBand()>;
    Workers(unsigned threads, int blocks, MakeBand make_band, ScanBlock scan)
        : blocks_(blocks),
          ahead_(static_cast<int>(threads) * 2 + 1),
          make_band_(std::move(make_band)),
          scan_(std::move(scan)) {
        try {
            while (threads_.size() < threads) threads_.emplace_back([this] { work(); });
        } catch (const std::system_error&) {
            if (threads_.empty()) throw;  // else those that there are do
        }
    }
    ~Workers() {
        {
            const std::lock_guard lock(mutex_);
            blocks_ = 0;
        }
        changed_.notify_all();
    }
    Workers(const Workers&) = delete;
    Workers& operator=(const Workers&) = delete;

    // What was found in the next block. Throws what its scan threw.
    Block next() {
        std::unique_lock lock(mutex_);
        changed_.wait(lock, [&] { return failed_ || done_.contains(given_); });
        if (failed_) std::rethrow_exception(failed_);
        Block block = std::move(done_.at(given_));
        done_.erase(given_++);
        changed_.notify_all();
        return block;
    }

  private:
    void work() {
        std::unique_lock lock(mutex_);
        try {
            LineBand band = make_band_();
            for (;;) {
                changed_.wait(lock, [&] { return claimed_ >= blocks_ || claimed_ < given_ + ahead_; });
                if (claimed_ >= blocks_) return;
                const int block = claimed_++;
                lock.unlock();
                Block found = scan_(band, block);
                lock.lock();
                done_.emplace(block, std::move(found));
                changed_.notify_all();
            }
        } catch (...) {
            if (!lock.owns_lock()) lock.lock();
            failed_ = std::current_exception();
            changed_.notify_all();
        }
    }

    std::mutex mutex_;
    std::condition_variable changed_;
    int blocks_;
    int ahead_;
    int claimed_ = 0;
    int given_ = 0;
    std::map<int, Block> done_;
    std::exception_ptr failed_;
    MakeBand make_band_;
    ScanBlock scan_;
    std::vector<std::jthread> threads_;
};

}  // namespace

// The rows of a block and those in reach fit the second nearest memory of a processor.
int usual_block_rows(Size size) {
    return std::max(16, (1 << 18) / (size.columns + 1));
}

SieveEnd sieve_rows(const Sieve& sieve, const SoughtWords& words, const FindLoops& loops, const Grid& grid,
                    const Wanted& wanted, const SearchMeans& means, unsigned threads, Giver& giver,
                    int& row) {
    const Size size = grid.size();
    const int block_rows =
        std::min(means.block_rows > 0 ? means.block_rows : usual_block_rows(size), size.rows);
    const BlockOrder order(size, block_rows, sieve.reach(), row);
    Waiting waiting(size, giver, row);
    const auto make_band = [&] { return LineBand(grid, words, loops, block_rows, sieve.reach()); };
    const auto scan = [&](LineBand& band, int block, std::vector<Finding>& found) {
        band.move_to(order.first(block), order.last(block));
        return sieve.scan(grid, band, order.first(block), order.last(block), wanted, found);
    };

    if (threads < 2 || order.count() == 1) {
        LineBand band = make_band();
        std::vector<Finding> found;
        for (int block = 0; block < order.count(); ++block, found.clear()) {
            if (!scan(band, block, found)) return SieveEnd::given_up;
            if (const SieveEnd end = waiting.take(found, order.ready(block)); end != SieveEnd::done)
                return end;
        }
        return SieveEnd::done;
    }
    const auto scan_alone = [&](LineBand& band, int block) -> Block {
        std::vector<Finding> found;
        if (!scan(band, block, found)) return std::nullopt;
        return found;
    };
    Workers workers(std::min(threads, static_cast<unsigned>(order.count())), order.count(), make_band,
                    scan_alone);
    for (int block = 0; block < order.count(); ++block) {
        const Block found = workers.next();
        if (!found) return SieveEnd::given_up;
        if (const SieveEnd end = waiting.take(*found, order.ready(block)); end != SieveEnd::done) return end;
    }
    return SieveEnd::done;
}

}  // namespace lode
