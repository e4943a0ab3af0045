// Drawing a puzzle's artwork on a panel of 8 x 10 in, and writing its layers; the picture apart.

#include <benchmark/benchmark.h>
#include <letterlode/art.hpp>
#include <letterlode/cut.hpp>

#include "gardens.hpp"

namespace {

using namespace lode;
using namespace lode::bench;

const Puzzle& panel_puzzle() {
    static const Puzzle puzzle = make(recipe_of(invented_words(24, 4, 9, 3), {15, 15})).value();
    return puzzle;
}

ArtworkOptions panel() {
    ArtworkOptions options;
    options.blank = read_blank("8x10in").value();
    options.surface = Surface::second;
    options.heading = "What grows here";
    return options;
}

Artwork drawn() {
    return draw(panel_puzzle(), panel()).value();
}

void draw_15x15_with_24_words(benchmark::State& state) {
    for (auto _ : state) benchmark::DoNotOptimize(drawn());
}
BENCHMARK(draw_15x15_with_24_words)->Unit(benchmark::kMillisecond);

void write_layers_of_15x15(benchmark::State& state) {
    const Artwork artwork = drawn();
    for (auto _ : state) {
        benchmark::DoNotOptimize(to_svg(artwork_drawing(artwork)));
        for (std::size_t layer = 0; layer < artwork.layers.size(); ++layer)
            benchmark::DoNotOptimize(to_svg(layer_drawing(artwork, layer)));
    }
}
BENCHMARK(write_layers_of_15x15)->Unit(benchmark::kMillisecond);

// A layer as every format but SVG, the whole artwork besides.
void write_pdf_and_dxf_of_15x15(benchmark::State& state) {
    const Artwork artwork = drawn();
    for (auto _ : state) {
        const auto write = [](const Drawing& drawing) {
            benchmark::DoNotOptimize(to_pdf(drawing));
            benchmark::DoNotOptimize(to_dxf(drawing));
        };
        write(artwork_drawing(artwork));
        for (std::size_t layer = 0; layer < artwork.layers.size(); ++layer)
            write(layer_drawing(artwork, layer));
    }
}
BENCHMARK(write_pdf_and_dxf_of_15x15)->Unit(benchmark::kMillisecond);

void measure_15x15(benchmark::State& state) {
    const Artwork artwork = drawn();
    for (auto _ : state) benchmark::DoNotOptimize(measure(artwork, 1, 1));
}
BENCHMARK(measure_15x15)->Unit(benchmark::kMillisecond);

void plan_loads_of_15x15(benchmark::State& state) {
    const Artwork artwork = drawn();
    PlanOptions bed;
    bed.bed = {304.8, 304.8, 0};
    for (auto _ : state) benchmark::DoNotOptimize(plan_loads(artwork, bed));
}
BENCHMARK(plan_loads_of_15x15)->Unit(benchmark::kMillisecond);

void picture_of_15x15(benchmark::State& state) {
    const Artwork artwork = drawn();
    for (auto _ : state) benchmark::DoNotOptimize(preview_png(artwork, 1'600));
}
BENCHMARK(picture_of_15x15)->Unit(benchmark::kMillisecond);

}  // namespace
