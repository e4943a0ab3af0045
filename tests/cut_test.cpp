#include <letterlode/cut.hpp>

#include <catch2/catch.hpp>

#include "oracles/picture.hpp"
#include "panels.hpp"

using namespace lode;

namespace {

Outcome<std::vector<NamedFile>> files_of(Surface surface, const CutOptions& cutting = {}) {
    const Puzzle puzzle = panels::garden();
    return cut_files(puzzle, draw_and_measure(puzzle, panels::options(surface)).value(), cutting);
}

std::vector<std::string> names_in(const std::vector<NamedFile>& files) {
    std::vector<std::string> names;
    for (const NamedFile& file : files) names.push_back(file.path);
    return names;
}

const NamedFile& file_named(const std::vector<NamedFile>& files, const std::string& name) {
    for (const NamedFile& file : files)
        if (file.path == name) return file;
    throw std::runtime_error("no file " + name);
}

// The path data of a drawing, in order.
std::vector<std::string> paths(const std::string& svg) {
    std::vector<std::string> found;
    for (std::size_t at = svg.find(" d=\""); at != std::string::npos; at = svg.find(" d=\"", at)) {
        const std::size_t end = svg.find('"', at += 4);
        found.push_back(svg.substr(at, end - at));
    }
    return found;
}

}  // namespace

TEST_CASE("files are numbered in order of application, with one for all layers, pages and a picture") {
    using Names = std::vector<std::string>;
    CHECK(names_in(files_of(Surface::first).value()) ==
          Names{"layers/1-bands.svg", "layers/1-bands.pdf", "layers/2-letters.svg", "layers/2-letters.pdf",
                "layers/3-heading.svg", "layers/3-heading.pdf", "artwork.svg", "artwork.pdf", "job-sheet.pdf",
                "proof.html", "preview.png"});
    CutOptions all;
    all.dxf = true;
    all.guide = true;
    all.plan = PlanOptions{};
    all.plan->bed = {304.8, 304.8, 0};
    CHECK(names_in(files_of(Surface::second, all).value()) ==
          Names{"layers/1-heading.svg", "layers/1-heading.pdf", "layers/1-heading.dxf",
                "layers/2-letters.svg", "layers/2-letters.pdf", "layers/2-letters.dxf", "layers/3-bands.svg",
                "layers/3-bands.pdf", "layers/3-bands.dxf", "artwork.svg", "artwork.pdf", "artwork.dxf",
                "loads/load-1.svg", "loads/load-1.pdf", "loads/load-1.dxf", "job-sheet.pdf", "guide.pdf",
                "proof.html", "preview.png"});
}

TEST_CASE("the layers together are the artwork, piece by piece, and each is one group") {
    for (const Surface surface : {Surface::first, Surface::second}) {
        const auto files = files_of(surface).value();
        std::vector<std::string> parts;
        for (const NamedFile& file : files) {
            if (!file.path.starts_with("layers/") || !file.path.ends_with(".svg")) continue;
            const std::string& svg = file.bytes;
            CHECK(judge::is_well_formed(svg));
            CHECK(svg.find("<g ") == svg.rfind("<g "));
            const auto own = paths(svg);
            CHECK(!own.empty());
            parts.insert(parts.end(), own.begin(), own.end());
        }
        auto whole = paths(file_named(files, "artwork.svg").bytes);
        std::sort(parts.begin(), parts.end());
        std::sort(whole.begin(), whole.end());
        CHECK(parts == whole);
        CHECK(whole.size() > 63);
    }
}

TEST_CASE("weeding lines are drawn in layers and loads, where they are asked for") {
    CutOptions lines;
    lines.weeding_lines = true;
    const auto letters = "layers/2-letters.svg";
    const std::string with = file_named(files_of(Surface::first, lines).value(), letters).bytes;
    const std::string without = file_named(files_of(Surface::first).value(), letters).bytes;
    CHECK(without.find("stroke-width") == std::string::npos);
    // A frame of four, and a cut between each two of the seven rows.
    std::size_t count = 0;
    for (std::size_t at = with.find("stroke-width"); at != std::string::npos;
         at = with.find("stroke-width", at + 1))
        ++count;
    CHECK(count == 4 + 6);
}

TEST_CASE("the picture has the size that is asked for") {
    CutOptions small;
    small.preview_px = 500;
    CHECK(judge::read_png(files_of(Surface::second, small).value().back().bytes).height == 500);
    CHECK(judge::read_png(files_of(Surface::second).value().back().bytes).height == 1600);
}

TEST_CASE("a bed that is too small for any letter is refused, and no file is made") {
    CutOptions tiny;
    tiny.plan = PlanOptions{};
    tiny.plan->bed = {12, 12, 0};
    const auto files = files_of(Surface::first, tiny);
    REQUIRE_FALSE(files);
    CHECK_FALSE(files.refusal().message.empty());
}

TEST_CASE("the same artwork gives the same files") {
    CutOptions all;
    all.dxf = true;
    all.guide = true;
    all.plan = PlanOptions{};
    all.plan->bed = {304.8, 304.8, 0};
    const auto first = files_of(Surface::second, all).value();
    const auto again = files_of(Surface::second, all).value();
    REQUIRE(first.size() == again.size());
    for (std::size_t i = 0; i < first.size(); ++i) {
        CAPTURE(first[i].path);
        CHECK(first[i].path == again[i].path);
        CHECK(first[i].bytes == again[i].bytes);
    }
}
