#include <letterlode/cut.hpp>

#include <catch2/catch.hpp>

#include "oracles/picture.hpp"
#include "panels.hpp"

using namespace lode;

namespace {

Artwork artwork(Surface surface) {
    ArtworkOptions options;
    options.blank = {203.2, 254};
    options.surface = surface;
    options.heading = "The Tool Shed";
    return draw(panels::garden(), options).value();
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

TEST_CASE("files are numbered in order of application, with one for all layers and a picture") {
    const auto names = [](Surface surface) {
        std::vector<std::string> all;
        for (const NamedFile& file : cut_files(artwork(surface))) all.push_back(file.path);
        return all;
    };
    CHECK(names(Surface::first) == std::vector<std::string>{"layers/1-bands.svg", "layers/2-letters.svg",
                                                            "layers/3-heading.svg", "artwork.svg",
                                                            "preview.png"});
    CHECK(names(Surface::second) == std::vector<std::string>{"layers/1-heading.svg", "layers/2-letters.svg",
                                                             "layers/3-bands.svg", "artwork.svg",
                                                             "preview.png"});
}

TEST_CASE("the layers together are the artwork, piece by piece, and each is one group") {
    for (const Surface surface : {Surface::first, Surface::second}) {
        const auto files = cut_files(artwork(surface));
        std::vector<std::string> parts;
        for (std::size_t i = 0; i < 3; ++i) {
            const std::string& svg = files[i].bytes;
            CHECK(judge::is_well_formed(svg));
            CHECK(svg.find("<g ") == svg.rfind("<g "));
            const auto own = paths(svg);
            CHECK(!own.empty());
            parts.insert(parts.end(), own.begin(), own.end());
        }
        auto whole = paths(files[3].bytes);
        std::sort(parts.begin(), parts.end());
        std::sort(whole.begin(), whole.end());
        CHECK(parts == whole);
        CHECK(whole.size() > 63);
    }
}

TEST_CASE("the picture has the size that is asked for") {
    const auto files = cut_files(artwork(Surface::second), {500});
    CHECK(judge::read_png(files.back().bytes).height == 500);
    CHECK(judge::read_png(cut_files(artwork(Surface::second)).back().bytes).height == 1600);
}

TEST_CASE("the same artwork gives the same files") {
    const auto first = cut_files(artwork(Surface::second));
    const auto again = cut_files(artwork(Surface::second));
    REQUIRE(first.size() == again.size());
    for (std::size_t i = 0; i < first.size(); ++i) {
        CHECK(first[i].path == again[i].path);
        CHECK(first[i].bytes == again[i].bytes);
    }
}
