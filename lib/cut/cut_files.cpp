#include <stdexcept>

#include <letterlode/cut.hpp>

#include "cut/guide.hpp"
#include "cut/job_sheet.hpp"
#include "cut/proof_page.hpp"
#include "cut/weeding.hpp"

namespace lode {

namespace {

// One drawing in every format that is asked for.
void append_drawing(std::vector<NamedFile>& files, const std::string& path, const Drawing& drawing,
                    bool dxf) {
    files.push_back({path + ".svg", to_svg(drawing)});
    files.push_back({path + ".pdf", to_pdf(drawing)});
    if (dxf) files.push_back({path + ".dxf", to_dxf(drawing)});
}

Drawing with_weeding_lines(Drawing drawing) {
    constexpr double frame_mm = 2;
    for (DrawnGroup& group : drawing.groups) group.lines = weeding_lines(group.pieces, frame_mm);
    return drawing;
}

Refusal interrupted() {
    return {Refusal::Reason::unfinished, "Writing the files was interrupted before its end.", {}, {}, {}, 0};
}

}  // namespace

Outcome<std::vector<NamedFile>> cut_files(const Puzzle& puzzle, const HeldArtwork& held,
                                          const CutOptions& options, const CutControl& control) {
    const Artwork& artwork = held.artwork;
    if (options.planned && !options.plan)
        throw std::invalid_argument("planned loads without options of a plan");
    const CutPlan* plan = options.planned;
    std::optional<CutPlan> own;
    if (options.plan && !plan) {
        auto planned = plan_loads(artwork, *options.plan, control);
        if (!planned) return planned.refusal();
        plan = &own.emplace(*std::move(planned));
    }
    std::vector<NamedFile> files;
    for (std::size_t i = 0; i < artwork.layers.size(); ++i) {
        if (control.is_cancelled()) return interrupted();
        const Drawing drawing = layer_drawing(artwork, i);
        append_drawing(files, "layers/" + std::to_string(i + 1) + "-" + artwork.layers[i].name,
                       options.weeding_lines ? with_weeding_lines(drawing) : drawing, options.dxf);
    }
    append_drawing(files, "artwork", artwork_drawing(artwork), options.dxf);
    for (std::size_t i = 0; plan && i < plan->plan.loads.size(); ++i) {
        if (control.is_cancelled()) return interrupted();
        append_drawing(files, "loads/load-" + std::to_string(i + 1),
                       load_drawing(artwork, *plan, *options.plan, i, options.weeding_lines), options.dxf);
    }
    if (control.is_cancelled()) return interrupted();
    files.push_back(
        {"job-sheet.pdf",
         job_sheet_pdf({puzzle, artwork, held.measures, plan, options.plan ? &*options.plan : nullptr,
                        held.changed, ways_out(held), options.paper, options.speed_mm_s, options.order})});
    if (control.is_cancelled()) return interrupted();
    if (options.guide) {
        auto guide = guide_pdf(artwork, options.paper);
        if (!guide) return guide.refusal();
        files.push_back({"guide.pdf", *std::move(guide)});
    }
    if (control.is_cancelled()) return interrupted();
    files.push_back({"proof.html", proof_html(artwork, puzzle)});
    files.push_back({"preview.png", preview_png(artwork, options.preview_px)});
    return files;
}

}  // namespace lode
