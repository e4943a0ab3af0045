#pragma once
// The handles of letterlode_art.h in the hands of C++ tests, and a small puzzle with artwork in both
// languages.

#include <functional>

#include <letterlode/letterlode_art.h>
#include <letterlode/cut.hpp>
#include <letterlode/print.hpp>

#include "support/c_handles.hpp"

namespace lode::test::c_api {

struct FreeArt : Free {
    using Free::operator();
    void operator()(lode_bytes* bytes) const { lode_bytes_free(bytes); }
    void operator()(lode_files* files) const { lode_files_free(files); }
    void operator()(lode_artwork_options* options) const { lode_artwork_options_free(options); }
    void operator()(lode_artwork* artwork) const { lode_artwork_free(artwork); }
    void operator()(lode_cut_options* options) const { lode_cut_options_free(options); }
    void operator()(lode_plan* plan) const { lode_plan_free(plan); }
    void operator()(lode_print_options* options) const { lode_print_options_free(options); }
    void operator()(lode_worksheets* worksheets) const { lode_worksheets_free(worksheets); }
    void operator()(lode_pages* pages) const { lode_pages_free(pages); }
};
template <class T>
using ArtOut = Out<T, FreeArt>;
template <class T>
using ArtHeld = std::unique_ptr<T, FreeArt>;

inline constexpr const char* herbs = "Pea\nFig\n";

inline Held<lode_puzzle> herb_puzzle() {
    return made(recipe_of(herbs, 5, 3).get());
}
inline lode::Puzzle herbs_in_cpp() {
    lode::Recipe recipe;
    recipe.words = lode::read_word_lines(herbs, "garden.txt").value();
    recipe.size = lode::checked_size(5, 3).value();
    return lode::make(recipe).value();
}

inline ArtHeld<lode_artwork_options> panel_options(const char* side = "second") {
    lode_artwork_options* options = nullptr;
    REQUIRE(lode_artwork_options_create(&options, nullptr) == LODE_OK);
    ArtHeld<lode_artwork_options> held(options);
    REQUIRE(lode_artwork_options_set_blank(options, "120x100mm", nullptr) == LODE_OK);
    REQUIRE(lode_artwork_options_set_surface(options, side, nullptr) == LODE_OK);
    return held;
}
inline lode::ArtworkOptions panel_options_in_cpp() {
    lode::ArtworkOptions options;
    options.blank = lode::read_blank("120x100mm").value();
    options.surface = lode::Surface::second;
    return options;
}

inline ArtHeld<lode_artwork> drawn_alone(const lode_puzzle* puzzle, const lode_artwork_options* options) {
    lode_artwork* artwork = nullptr;
    Out<lode_error> error;
    const auto status = lode_draw(&artwork, puzzle, options, error);
    INFO((error.get() ? lode_error_message(error.get()) : ""));
    REQUIRE(status == LODE_OK);
    REQUIRE(artwork);
    return ArtHeld<lode_artwork>(artwork);
}

// And measured.
inline ArtHeld<lode_artwork> drawn(const lode_puzzle* puzzle, const lode_artwork_options* options) {
    lode_artwork* artwork = nullptr;
    Out<lode_refusal> refusal;
    Out<lode_error> error;
    const auto status = lode_draw_and_measure(&artwork, refusal, puzzle, options, nullptr, error);
    INFO((refusal.get() ? lode_refusal_message(refusal.get())
          : error.get() ? lode_error_message(error.get())
                        : ""));
    REQUIRE(status == LODE_OK);
    REQUIRE(artwork);
    REQUIRE(refusal.get() == nullptr);
    return ArtHeld<lode_artwork>(artwork);
}

inline std::string bytes_of(const lode_bytes* bytes) {
    REQUIRE(bytes);
    const auto* data = static_cast<const char*>(lode_bytes_data(bytes));
    CHECK(data[lode_bytes_size(bytes)] == '\0');
    return {data, lode_bytes_size(bytes)};
}

// What a call writes into bytes of its own: bytes_from([&](auto out, auto error) { return lode_...; }).
template <class Call>
std::string bytes_from(const Call& call) {
    ArtOut<lode_bytes> bytes;
    Out<lode_error> error;
    const auto status = call(static_cast<lode_bytes**>(bytes), static_cast<Error>(error));
    INFO((error.get() ? lode_error_message(error.get()) : ""));
    REQUIRE(status == LODE_OK);
    return bytes_of(bytes.get());
}

// How a call ended that may be refused, with what the refusal says.
struct Refused {
    std::int32_t status = LODE_OK;
    std::int32_t reason = 0;
    std::string message;
    std::size_t advice = 0;
};
template <class Call>
Refused refused_by(const Call& call) {
    Out<lode_refusal> refusal;
    Out<lode_error> error;
    Refused result;
    result.status = call(static_cast<lode_refusal**>(refusal), static_cast<Error>(error));
    CHECK((refusal.get() != nullptr) == (result.status == LODE_REFUSED));
    CHECK((error.get() != nullptr) == (result.status != LODE_OK && result.status != LODE_REFUSED));
    if (!refusal.get()) return result;
    result.reason = lode_refusal_reason(refusal.get());
    result.message = lode_refusal_message(refusal.get());
    result.advice = lode_refusal_advice_count(refusal.get());
    return result;
}

inline std::string drawing_of(const lode_artwork* artwork, const char* format) {
    return bytes_from(
        [&](auto out, auto error) { return lode_artwork_drawing(out, artwork, format, error); });
}

inline std::string cut_json_of(const lode_artwork* artwork, const lode_plan* plan = nullptr,
                               const lode_cut_options* options = nullptr) {
    return bytes_from(
        [&](auto out, auto error) { return lode_cut_json(out, artwork, plan, options, error); });
}

inline ArtHeld<lode_cut_options> new_cut_options() {
    lode_cut_options* options = nullptr;
    REQUIRE(lode_cut_options_create(&options, nullptr) == LODE_OK);
    return ArtHeld<lode_cut_options>(options);
}

inline ArtHeld<lode_print_options> new_print_options() {
    lode_print_options* options = nullptr;
    REQUIRE(lode_print_options_create(&options, nullptr) == LODE_OK);
    return ArtHeld<lode_print_options>(options);
}

inline ArtHeld<lode_plan> planned(const lode_artwork* artwork, const lode_cut_options* options) {
    lode_plan* plan = nullptr;
    Out<lode_refusal> refusal;
    REQUIRE(lode_plan_loads(&plan, refusal, artwork, options, nullptr, nullptr) == LODE_OK);
    return ArtHeld<lode_plan>(plan);
}

inline ArtHeld<lode_worksheets> worksheets_of(const lode_puzzle* puzzle) {
    lode_worksheets* worksheets = nullptr;
    REQUIRE(lode_worksheets_create(&worksheets, nullptr) == LODE_OK);
    REQUIRE(lode_worksheets_add(worksheets, puzzle, "Herb bed", nullptr, nullptr) == LODE_OK);
    REQUIRE(lode_worksheets_add(worksheets, puzzle, "Herb bed", "B", nullptr) == LODE_OK);
    return ArtHeld<lode_worksheets>(worksheets);
}

// A setter of C and the same in C++.
template <class Handle, class Options>
struct Setting {
    const char* name;
    std::function<std::int32_t(Handle*)> in_c;
    std::function<void(Options&)> in_cpp;
};

}  // namespace lode::test::c_api
