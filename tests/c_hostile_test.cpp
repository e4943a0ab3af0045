// A caller who calls anything with anything, in any order: handles of every state, NULL, numbers beyond all
// bounds, bytes that are no text. Whatever comes of it, it is a status that the header knows, with an error
// where there should be one, and nothing in an out parameter where a call failed. Run under sanitizers it
// says more.

#include <algorithm>
#include <functional>
#include <iterator>

#include "support/careless.hpp"

using namespace lode::test::c_api;

namespace {

class Stranger {
  public:
    explicit Stranger(std::uint64_t seed) : random_(seed) {}

    void act() {
        using Act = void (Stranger::*)();
        static constexpr Act acts[] = {
            &Stranger::ask,    &Stranger::ask,       &Stranger::ask,        &Stranger::demand,
            &Stranger::demand, &Stranger::demand,    &Stranger::new_recipe, &Stranger::new_recipe,
            &Stranger::make,   &Stranger::make_many, &Stranger::draw,       &Stranger::judge,
            &Stranger::rate,   &Stranger::look,      &Stranger::read,       &Stranger::free_some};
        (this->*acts[random_.below(std::size(acts))])();
    }
    [[nodiscard]] long done() const { return done_; }
    [[nodiscard]] long refused() const { return refused_; }
    [[nodiscard]] long failed() const { return failed_; }

  private:
    const char* text() { return any_text(random_); }
    std::int32_t number() { return any_number(random_); }
    std::uint64_t large() { return any_large_number(random_); }
    double real() { return any_real(random_); }
    lode_recipe* recipe() { return recipes_.any(random_); }
    lode_puzzle* puzzle() { return puzzles_.any(random_); }

    // What must hold of every call.
    std::int32_t call(const std::function<std::int32_t(Error)>& function) {
        Out<lode_error> error;
        const std::int32_t status = random_.below(8) == 0 ? function(nullptr) : function(error);
        const bool is_failure = status != LODE_OK && status != LODE_REFUSED;
        if (status < LODE_OK || status > LODE_CANCELLED) FAIL("an unknown status");
        if (status == LODE_FAULT) FAIL(lode_error_message(error.get()));
        if (error.get()) {
            if (!is_failure || lode_error_code(error.get()) != status) FAIL("an error without a failure");
            if (!lode::normalised(lode_error_message(error.get()))) FAIL("a message that is no UTF-8");
            (is_failure ? failed_ : done_)++;
        } else {
            ++done_;
        }
        return status;
    }
    template <class T>
    void made(Pool<T>& pool, const std::function<std::int32_t(T**, Error)>& function) {
        T* result = nullptr;
        const auto status = call([&](Error e) { return function(&result, e); });
        if ((status == LODE_OK) != (result != nullptr)) FAIL("a result without success, or none with it");
        pool.take(result);
    }
    template <class T>
    void made_or_refused(Pool<T>& pool,
                         const std::function<std::int32_t(T**, lode_refusal**, Error)>& function) {
        T* result = nullptr;
        lode_refusal* refusal = nullptr;
        const auto status = call([&](Error e) { return function(&result, &refusal, e); });
        if ((status == LODE_OK) != (result != nullptr) || (status == LODE_REFUSED) != (refusal != nullptr))
            FAIL("a result without success, or none with it");
        if (refusal) ++refused_;
        pool.take(result);
        refusals_.take(refusal);
    }

    void new_recipe() {
        if (random_.below(3) == 0)
            return made<lode_recipe>(
                recipes_, [&](auto** r, Error e) { return lode_recipe_from_json(r, text(), text(), e); });
        if (random_.below(3) == 0)
            return made<lode_recipe>(recipes_,
                                     [&](auto** r, Error e) { return lode_recipe_copy(r, recipe(), e); });
        if (random_.below(3) == 0)
            return made<lode_recipe>(recipes_,
                                     [&](auto** r, Error e) { return lode_puzzle_recipe(r, puzzle(), e); });
        lode_recipe* made_recipe = nullptr;
        REQUIRE(lode_recipe_create(&made_recipe, nullptr) == LODE_OK);
        REQUIRE(lode_recipe_set_words_text(made_recipe, "leek\nkale\nbeet\n", nullptr, nullptr) == LODE_OK);
        recipes_.take(made_recipe);
    }
    void ask() {
        using Set = std::int32_t (*)(lode_recipe*, const char*, lode_error**);
        static constexpr Set sets[] = {lode_recipe_add_word,
                                       lode_recipe_set_words_source,
                                       lode_recipe_set_nested,
                                       lode_recipe_add_avoided,
                                       lode_recipe_allow,
                                       lode_recipe_set_locale,
                                       lode_recipe_set_letters,
                                       lode_recipe_set_digraphs,
                                       lode_recipe_set_sharp_s,
                                       lode_recipe_set_marks,
                                       lode_recipe_set_finals,
                                       lode_recipe_set_shape,
                                       lode_recipe_set_directions,
                                       lode_recipe_set_message,
                                       lode_recipe_set_message_then,
                                       lode_recipe_set_filler,
                                       lode_recipe_set_look_alikes};
        const Set set = sets[random_.below(std::size(sets))];
        call([&](Error e) { return set(recipe(), text(), e); });
        using Read = std::int32_t (*)(lode_recipe*, const char*, const char*, lode_error**);
        static constexpr Read reads[] = {lode_recipe_set_words_text, lode_recipe_set_mask_text,
                                         lode_recipe_set_filler_text};
        const Read read_text = reads[random_.below(std::size(reads))];
        if (random_.below(3) == 0) call([&](Error e) { return read_text(recipe(), text(), text(), e); });
        if (random_.below(3) == 0)
            call([&](Error e) { return lode_recipe_add_listed_word(recipe(), text(), number(), text(), e); });
    }
    void demand() {
        auto* const r = recipe();
        switch (random_.below(16)) {
            case 0:
                call([&](Error e) { return lode_recipe_set_grid(r, number(), number(), e); });
                break;
            case 1:
                call([&](Error e) { return lode_recipe_set_grid_auto(r, real(), e); });
                break;
            case 2:
                call([&](Error e) { return lode_recipe_set_grid_tight(r, real(), e); });
                break;
            case 3:
                call([&](Error e) { return lode_recipe_set_seed(r, large(), e); });
                break;
            case 4:
                call([&](Error e) { return lode_recipe_set_choices(r, number(), e); });
                break;
            case 5:
                call([&](Error e) { return lode_recipe_set_letter_count(r, text(), large(), e); });
                break;
            case 6:
                call([&](Error e) { return lode_recipe_set_longest_run(r, number(), e); });
                break;
            case 7:
                call([&](Error e) { return lode_recipe_pin(r, text(), number(), number(), number(), e); });
                break;
            case 8:
                call([&](Error e) { return lode_recipe_set_crossings(r, large(), large(), e); });
                break;
            case 9:
                call([&](Error e) { return lode_recipe_set_spacing(r, number(), e); });
                break;
            case 10:
                call([&](Error e) { return lode_recipe_set_leftover(r, large(), e); });
                break;
            case 11:
                call([&](Error e) { return lode_recipe_set_share(r, number(), number(), e); });
                break;
            case 12:
                call([&](Error e) { return lode_recipe_set_backward(r, large(), e); });
                break;
            case 13:
                call([&](Error e) { return lode_recipe_set_earlier(r, puzzle(), number(), e); });
                break;
            case 14:
                call([&](Error e) { return lode_recipe_set_equal_shares(r, e); });
                break;
            default:
                for (auto* const clear :
                     {lode_recipe_clear_words, lode_recipe_clear_avoided, lode_recipe_clear_allowed,
                      lode_recipe_clear_directions, lode_recipe_clear_letter_counts, lode_recipe_clear_pins,
                      lode_recipe_clear_shares, lode_recipe_clear_earlier})
                    if (random_.below(2) == 0) call([&](Error e) { return clear(r, e); });
        }
    }
    // Work is bounded, that it may be done often.
    lode_recipe* quick_recipe() {
        auto* const r = recipe();
        lode_recipe_set_effort(r, random_.below(4) == 0 ? 0 : 3'000, nullptr);
        if (random_.below(2) == 0) lode_recipe_set_grid(r, 7, 6, nullptr);
        return r;
    }
    lode_control* control() {
        auto* const c = controls_.any(random_);
        call([&](Error e) { return lode_control_set_threads(c, random_.below(2) == 0 ? 2 : 0, e); });
        call([&](Error e) { return lode_control_set_progress(c, nullptr, c, e); });
        random_.below(5) == 0 ? lode_control_cancel(c) : lode_control_reset(c);
        return c;
    }
    void make() {
        if (random_.below(8) == 0) made<lode_control>(controls_, lode_control_create);
        auto* const r = quick_recipe();
        made_or_refused<lode_puzzle>(
            puzzles_, [&](auto** p, auto** f, Error e) { return lode_make(p, f, r, control(), e); });
        made_or_refused<lode_maker>(
            makers_, [&](auto** m, auto** f, Error e) { return lode_maker_create(m, f, r, e); });
        made<lode_puzzle>(puzzles_, [&](auto** p, Error e) { return lode_puzzle_copy(p, puzzle(), e); });
        if (random_.below(20) != 0) return;
        std::size_t tried = 0;
        made_or_refused<lode_puzzle>(puzzles_, [&](auto** p, auto** f, Error e) {
            return lode_make_aimed(p, &tried, f, r, text(), number(), control(), e);
        });
    }
    void make_many() {
        const auto* const m = makers_.any(random_);
        const std::size_t counts[] = {0, 1, 3, SIZE_MAX};
        const std::size_t count = counts[random_.below(4)];
        made_or_refused<lode_puzzle>(puzzles_, [&](auto** p, auto** f, Error e) {
            return lode_maker_make(p, f, m, large(), control(), e);
        });
        made_or_refused<lode_puzzles>(lists_, [&](auto** l, auto** f, Error e) {
            return lode_maker_choices(l, f, m, large(), count, control(), e);
        });
        if (random_.below(12) == 0)
            made_or_refused<lode_puzzles>(lists_, [&](auto** l, auto** f, Error e) {
                return lode_maker_versions(l, f, m, large(), count, control(), e);
            });
        const auto* const list = lists_.any(random_);
        made<lode_puzzles>(lists_, [&](auto** l, Error e) { return lode_puzzles_rank(l, list, text(), e); });
        made<lode_puzzle>(puzzles_, [&](auto** p, Error e) {
            return lode_puzzle_copy(p, lode_puzzles_at(list, large()), e);
        });
    }
    void draw() {
        auto* const r = recipe();
        made<lode_grid>(grids_,
                        [&](auto** g, Error e) { return lode_grid_from_text(g, text(), text(), r, e); });
        made<lode_grid>(grids_,
                        [&](auto** g, Error e) { return lode_grid_from_page(g, r, text(), text(), e); });
        made<lode_grid>(grids_, [&](auto** g, Error e) { return lode_grid_from_puzzle(g, puzzle(), e); });
        const char* cells[6];
        for (const char*& cell : cells) cell = random_.below(3) == 0 ? text() : "K";
        // Never more cells than there are.
        const std::int32_t rows = random_.below(2) == 0 ? 2 : number() / -2;
        made<lode_grid>(grids_, [&](auto** g, Error e) {
            return lode_grid_from_cells(g, cells, std::min(rows, 2), 3, r, e);
        });
    }
    void judge() {
        made<lode_judge>(judges_, [&](auto** j, Error e) { return lode_judge_create(j, recipe(), e); });
        auto* const j = judges_.any(random_);
        const auto* const g = grids_.any(random_);
        if (random_.below(4) == 0)
            call([&](Error e) { return lode_judge_add_dictionary_text(j, text(), text(), e); });
        if (random_.below(4) == 0)
            call([&](Error e) { return lode_judge_set_chance_letters(j, number(), e); });
        made<lode_audit>(audits_, [&](auto** a, Error e) { return lode_judge_audit(a, j, g, control(), e); });
        made<lode_audit>(audits_, [&](auto** a, Error e) {
            return lode_judge_audit_puzzle(a, j, puzzle(), control(), e);
        });
        made<lode_puzzle>(puzzles_,
                          [&](auto** p, Error e) { return lode_judge_puzzle(p, j, g, control(), e); });
        made<lode_audit>(audits_, [&](auto** a, Error e) { return lode_audit_puzzle(a, puzzle(), e); });
        made<lode_audit>(
            audits_, [&](auto** a, Error e) { return lode_audit_grid_text(a, text(), text(), recipe(), e); });
    }
    void rate() {
        if (random_.below(4) == 0) made<lode_seen>(seen_, lode_seen_create);
        auto* const s = seen_.any(random_);
        for (auto* const set :
             {lode_seen_set_cap_height, lode_seen_set_viewing, lode_seen_set_baseline, lode_seen_set_stroke,
              lode_seen_set_o_width, lode_seen_set_letter_gap, lode_seen_set_line_pitch})
            call([&](Error e) { return set(s, real(), e); });
        call([&](Error e) { return lode_seen_set_colours(s, text(), text(), text(), e); });
        made<lode_rating>(ratings_, [&](auto** r, Error e) { return lode_rate_puzzle(r, puzzle(), e); });
        made<lode_rating>(ratings_,
                          [&](auto** r, Error e) { return lode_rate_puzzle_as_seen(r, puzzle(), s, e); });
        made<lode_rating>(ratings_, [&](auto** r, Error e) {
            return lode_judge_rate(r, judges_.any(random_), grids_.any(random_), s, e);
        });
        made<lode_rating>(
            ratings_, [&](auto** r, Error e) { return lode_rate_grid_text(r, text(), text(), recipe(), e); });
    }

    template <class T>
    void text_of(std::int32_t (*write)(const char**, const T*, lode_error**), const T* handle) {
        const char* written = nullptr;
        const auto status = call([&](Error e) { return write(&written, handle, e); });
        if ((status == LODE_OK) != (written != nullptr)) FAIL("a text without success, or none with it");
        if (written && !lode::normalised(written)) FAIL("a text that is no UTF-8");
    }
    // Getters have no status: they are asked of everything.
    void look() {
        std::int32_t n = 0;
        const std::size_t at = large();
        const std::size_t other = random_.below(3);
        const auto* const p = puzzle();
        text_of(lode_puzzle_json, p);
        text_of(lode_puzzle_text, p);
        text_of(lode_puzzle_key_text, p);
        lode_puzzle_cell(p, number(), number());
        lode_puzzle_word(p, at);
        lode_puzzle_word_length(p, at);
        lode_puzzle_word_letter(p, other, at);
        lode_puzzle_word_inside(p, other);
        call([&](Error e) { return lode_puzzle_placement(&n, &n, &n, p, at, e); });
        const char* const* cells = nullptr;
        call([&](Error e) { return lode_puzzle_cells(&cells, p, e); });
        text_of(lode_recipe_json, static_cast<const lode_recipe*>(recipe()));
        lode_recipe_word(recipe(), at);
        const auto* const list = lists_.any(random_);
        text_of(lode_puzzles_json, list);
        lode_puzzles_score(list, at);
        lode_puzzles_reason(list, other);
        lode_puzzles_fixations(list, other);
        const auto* const refusal = refusals_.any(random_);
        text_of(lode_refusal_json, refusal);
        lode_refusal_word(refusal, at);
        lode_refusal_advice(refusal, other);
        const auto* const grid = grids_.any(random_);
        text_of(lode_grid_text, grid);
        lode_grid_cell(grid, number(), number());
        call([&](Error e) { return lode_grid_cells(&cells, grid, e); });
        const auto* const audit = audits_.any(random_);
        text_of(lode_audit_json, audit);
        text_of(lode_audit_text, audit);
        lode_audit_word(audit, at);
        lode_audit_copy_inside(audit, other, at);
        lode_audit_chance(audit, other);
        call([&](Error e) { return lode_audit_copy(&n, &n, &n, &n, &n, audit, other, at, e); });
        call([&](Error e) { return lode_audit_avoided_copy(&n, &n, &n, &n, audit, at, e); });
        call([&](Error e) { return lode_audit_allowed_copy(&n, &n, &n, &n, audit, at, e); });
        call([&](Error e) { return lode_audit_chance_copy(&n, &n, &n, &n, audit, at, e); });
        const auto* const rating = ratings_.any(random_);
        text_of(lode_rating_json, rating);
        text_of(lode_rating_text, rating);
        lode_rating_part(rating, number(), at);
        lode_rating_part_note(rating, number(), other);
        lode_rating_word(rating, at);
        call([&](Error e) { return lode_direction_step(&n, &n, number(), e); });
        lode_direction_name(number());
        lode_status_text(number());
    }
    // What was written is read back, whole or cut short.
    void read() {
        const char* json = nullptr;
        if (lode_puzzle_json(&json, puzzle(), nullptr) != LODE_OK) return;
        std::string whole = json;
        if (random_.below(2) == 0) whole.resize(random_.below(static_cast<std::uint32_t>(whole.size())));
        made<lode_puzzle>(
            puzzles_, [&](auto** p, Error e) { return lode_puzzle_from_json(p, whole.c_str(), text(), e); });
        made<lode_recipe>(
            recipes_, [&](auto** r, Error e) { return lode_recipe_from_json(r, whole.c_str(), text(), e); });
        made<lode_puzzle>(puzzles_,
                          [&](auto** p, Error e) { return lode_puzzle_from_json(p, text(), text(), e); });
    }
    void free_some() {
        recipes_.drop_one(random_);
        puzzles_.drop_one(random_);
        makers_.drop_one(random_);
        lists_.drop_one(random_);
        grids_.drop_one(random_);
        judges_.drop_one(random_);
    }

    lode::Random random_;
    Pool<lode_recipe> recipes_;
    Pool<lode_puzzle> puzzles_;
    Pool<lode_maker> makers_;
    Pool<lode_puzzles> lists_;
    Pool<lode_grid> grids_;
    Pool<lode_judge> judges_;
    Pool<lode_audit> audits_;
    Pool<lode_rating> ratings_;
    Pool<lode_refusal> refusals_;
    Pool<lode_control> controls_;
    Pool<lode_seen> seen_;
    long done_ = 0;
    long refused_ = 0;
    long failed_ = 0;
};

}  // namespace

TEST_CASE("whatever is called in whatever order ends in a status that the header knows", "[c]") {
    for (std::uint64_t seed = 1; seed <= 4; ++seed) {
        INFO("seed " << seed);
        Stranger stranger(seed);
        for (int act = 0; act < 700; ++act) stranger.act();
        // It met all three.
        CHECK(stranger.done() > 1'000);
        CHECK(stranger.failed() > 500);
        CHECK(stranger.refused() > 20);
    }
}
