// Fuzzing (libFuzzer) of font files that a maker names. Whatever the bytes, there is a refusal that says why,
// or a font that sets lines: outlines in places that are numbers, contours closed, and letters of the text.

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>

#include "art/font.hpp"
#include "support/scratch_folder.hpp"

using namespace lode;

namespace {

void demand(bool holds, const char* what) {
    if (holds) return;
    std::fprintf(stderr, "%s\n", what);
    std::abort();
}

void judge(const Refusal& refusal) {
    demand(refusal.reason == Refusal::Reason::unusable && !refusal.message.empty(),
           "a refusal without a message");
}

void judge(const Path& path) {
    for (const Contour& contour : path.contours) {
        demand(!contour.segments.empty(), "a contour without segments");
        demand(contour.segments.back().to == contour.start, "a contour that is not closed");
    }
    const Box box = bounds(path);
    demand(std::isfinite(box.width()) && std::isfinite(box.height()), "an outline that is nowhere");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const test::ScratchFolder folder;
    const std::string path = folder / "seed.ttf";
    std::ofstream(path, std::ios::binary)
        .write(reinterpret_cast<const char*>(data), static_cast<std::streamsize>(size));
    // The first named instance of a font that varies, and the font as it stands.
    for (const int index : {0x10000, 0}) {
        auto font = Font::open({path, index, path, {}});
        if (!font) {
            judge(font.refusal());
            continue;
        }
        demand(std::isfinite(font->cap_height()) && font->cap_height() >= 0, "a cap height below nothing");
        for (const char* const text : {"HAfi", "A\u0301\u00c1", "\u0644\u0627 H"}) {
            const auto line = font->set_line(text);
            if (!line) {
                judge(line.refusal());
                continue;
            }
            for (const SetLetter& letter : line->letters) {
                demand(!letter.text.empty(), "a letter of no text");
                demand(!letter.path.empty(), "a letter without an outline");
                judge(letter.path);
            }
        }
    }
    return 0;
}
