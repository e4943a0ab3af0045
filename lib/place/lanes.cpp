#include "place/lanes.hpp"

#include <atomic>
#include <exception>
#include <functional>
#include <limits>
#include <optional>
#include <thread>

#include "place/complete.hpp"
#include "place/cover.hpp"
#include "place/heat_bath.hpp"
#include "place/neighbourhood.hpp"

namespace lode {

class Lanes::Lane {
  public:
    explicit Lane(const PlaceTask& task) : task_(task), effort_(task_, &stop_) {
        if (task.progress)
            task_.progress = [this, &tell = task.progress](std::uint64_t spent) {
                tell(spent_elsewhere_ + spent);
            };
    }
    virtual ~Lane() = default;
    Lane(const Lane&) = delete;
    Lane& operator=(const Lane&) = delete;

    virtual SearchEnd search(std::uint64_t nodes) = 0;
    // Where that ended with `placed`.
    [[nodiscard]] virtual Found found() const = 0;

    // What was spent before counts in what the caller is told.
    void run(std::uint64_t nodes, std::uint64_t spent_before) {
        spent_elsewhere_ = spent_before - effort_.spent();
        const std::uint64_t before = effort_.spent();
        end_ = search(nodes);
        spent_in_turn_ = effort_.spent() - before;
    }
    [[nodiscard]] SearchEnd end() const { return end_; }
    [[nodiscard]] std::uint64_t spent_in_turn() const { return spent_in_turn_; }
    [[nodiscard]] Effort& effort() { return effort_; }
    // Ends its turn soon: another has decided.
    void stop() { stop_ = true; }
    void keep_quiet() { task_.progress = nullptr; }

  private:
    std::atomic<bool> stop_ = false;

  protected:
    PlaceTask task_;
    Effort effort_;

  private:
    SearchEnd end_ = SearchEnd::limit;
    std::uint64_t spent_in_turn_ = 0;
    std::uint64_t spent_elsewhere_ = 0;
};

namespace {

// The nodes of some searches cost less than a candidate placed, and so they have more of them.
constexpr std::uint64_t complete_nodes = 2;
constexpr std::uint64_t heat_bath_moves = 8;

// A search over candidates: its own where none are given.
class CandidatesLane : public Lanes::Lane {
  public:
    CandidatesLane(const PlaceTask& task, Candidates* shared)
        : Lane(task),
          own_(shared ? std::nullopt : Candidates::list(task_)),
          candidates_(shared ? *shared : *own_) {}

  protected:
    [[nodiscard]] static Lanes::Found found_at(const Position& position) {
        return {position.placements(), position.finished_grid()};
    }

  private:
    std::optional<Candidates> own_;

  protected:
    Candidates& candidates_;
};

// One with chance of its own.
template <class Search>
class ChanceLane : public CandidatesLane {
  public:
    ChanceLane(const PlaceTask& task, Candidates* shared, Random random)
        : CandidatesLane(task, shared), random_(random), search_(task_, candidates_, random_, effort_) {}
    SearchEnd search(std::uint64_t nodes) override { return search_.search(nodes); }
    [[nodiscard]] Lanes::Found found() const override { return found_at(search_.position()); }
    [[nodiscard]] std::uint32_t hardest() const { return search_.hardest(); }

  private:
    Random random_;
    Search search_;
};

using NeighbourhoodLane = ChanceLane<NeighbourhoodSearch>;
using CoverLane = ChanceLane<CoverSearch>;

class CompleteLane : public CandidatesLane {
  public:
    CompleteLane(const PlaceTask& task, Candidates* shared)
        : CandidatesLane(task, shared), search_(task_, candidates_, effort_) {}
    SearchEnd search(std::uint64_t nodes) override { return search_.search(complete_nodes * nodes); }
    [[nodiscard]] Lanes::Found found() const override { return found_at(search_.position()); }

  private:
    CompleteSearch search_;
};

class HeatBathLane : public Lanes::Lane {
  public:
    HeatBathLane(const PlaceTask& task, Random random)
        : Lane(task), random_(random), search_(task_, random_, effort_) {}
    SearchEnd search(std::uint64_t nodes) override { return search_.search(heat_bath_moves * nodes); }
    [[nodiscard]] Lanes::Found found() const override {
        return {search_.placements(), search_.finished_grid()};
    }

  private:
    Random random_;
    HeatBathSearch search_;
};

}  // namespace

Lanes::Lanes(const PlaceTask& task, Candidates& candidates, Random& random) : task_(task) {
    Candidates* const others = task.threads > 1 ? nullptr : &candidates;
    lanes_.push_back(std::make_unique<NeighbourhoodLane>(task, &candidates, random.split()));
    if (CoverSearch::suits(task)) lanes_.push_back(std::make_unique<CoverLane>(task, others, random.split()));
    lanes_.push_back(std::make_unique<CompleteLane>(task, others));
    if (HeatBathSearch::suits(task))
        lanes_.push_back(std::make_unique<HeatBathLane>(task, random.split()));
    else
        lanes_.push_back(std::make_unique<NeighbourhoodLane>(task, others, random.split()));
    // Progress is told on the calling thread, which is the first lane's.
    if (task.threads > 1)
        for (std::size_t lane = 1; lane < lanes_.size(); ++lane) lanes_[lane]->keep_quiet();
}

Lanes::~Lanes() = default;

std::uint32_t Lanes::hardest() const {
    return static_cast<const NeighbourhoodLane&>(*lanes_.front()).hardest();
}

bool Lanes::is_cancelled() const {
    return task_.cancel && task_.cancel->load(std::memory_order_relaxed);
}

// Lanes are handed out in order; one that decides stops those behind it, whose outcome no longer counts.
void Lanes::run_together(std::uint64_t nodes, std::uint64_t spent) {
    std::atomic<std::size_t> next = 1;
    std::vector<std::exception_ptr> thrown(lanes_.size());
    const auto run = [&](std::size_t lane) {
        try {
            lanes_[lane]->run(nodes, spent);
            if (lanes_[lane]->end() == SearchEnd::limit) return;
        } catch (...) {
            thrown[lane] = std::current_exception();
        }
        for (std::size_t behind = lane + 1; behind < lanes_.size(); ++behind) lanes_[behind]->stop();
    };
    const auto work = [&] {
        for (std::size_t lane = next++; lane < lanes_.size(); lane = next++) run(lane);
    };
    {
        std::vector<std::jthread> helpers;
        for (unsigned thread = 1; thread < task_.threads && thread < lanes_.size(); ++thread)
            helpers.emplace_back(work);
        run(0);
        work();
    }
    for (const auto& exception : thrown)
        if (exception) std::rethrow_exception(exception);
}

Lanes::Outcome Lanes::take_turns(std::uint64_t nodes, std::uint64_t spent, std::uint64_t left) {
    for (const auto& lane : lanes_) lane->effort().allow(left / lanes_.size());
    if (task_.threads > 1) run_together(nodes, spent);
    Outcome outcome;
    for (const auto& lane : lanes_) {
        if (task_.threads <= 1) lane->run(nodes, spent + outcome.effort_spent);
        outcome.effort_spent += lane->spent_in_turn();
        outcome.end = lane->end();
        if (outcome.end == SearchEnd::placed) outcome.found = lane->found();
        if (outcome.end != SearchEnd::limit || is_cancelled()) break;
    }
    return outcome;
}

}  // namespace lode
