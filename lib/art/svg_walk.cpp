// What an SVG document draws, element by element: coordinate systems (SVG 1.1, chapter 7), uses (5.6) and the
// basic shapes (9).

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>

#include "art/affine.hpp"
#include "art/svg_outline.hpp"
#include "art/svg_style.hpp"
#include "art/svg_text.hpp"

namespace lode {

namespace {

constexpr std::size_t most_elements = 200'000;
constexpr int most_uses = 16;  // one in another
constexpr double mm_per_unit = 25.4 / 96;

std::string_view text_of(const pugi::xml_node& node, const char* name) {
    return node.attribute(name).value();
}

// Its size in user units, where it is known.
struct Viewport {
    std::optional<double> width;
    std::optional<double> height;
};

struct ViewBox {
    double left, top, width, height;
};
std::optional<ViewBox> view_box_of(const pugi::xml_node& node) {
    const auto v = svg_numbers(text_of(node, "viewBox"));
    if (!v || v->size() != 4 || !((*v)[2] > 0) || !((*v)[3] > 0)) return std::nullopt;
    return ViewBox{(*v)[0], (*v)[1], (*v)[2], (*v)[3]};
}

// Lays the view box into a place, by preserveAspectRatio.
Affine laid(const ViewBox& box, const Box& place, std::string_view rule) {
    SvgText read(rule);
    read.skip_blanks();
    std::string_view align = read.letters();
    read.skip_blanks();
    if (align == "defer") {
        align = read.letters();
        read.skip_blanks();
    }
    const bool slice = read.letters() == "slice";
    double sx = place.width() / box.width, sy = place.height() / box.height;
    if (align == "none") return {sx, 0, 0, sy, place.left - sx * box.left, place.top - sy * box.top};
    sx = sy = slice ? std::max(sx, sy) : std::min(sx, sy);
    const auto share = [&](std::string_view least, std::string_view most) {
        if (align.find(least) != std::string_view::npos) return 0.0;
        return align.find(most) != std::string_view::npos ? 1.0 : 0.5;
    };
    const double spare_x = place.width() - sx * box.width, spare_y = place.height() - sy * box.height;
    return {sx,
            0,
            0,
            sy,
            place.left + spare_x * share("xMin", "xMax") - sx * box.left,
            place.top + spare_y * share("YMin", "YMax") - sy * box.top};
}

class Walk {
  public:
    explicit Walk(const pugi::xml_document& document) : document_(document) {}

    std::variant<FoundShape, SvgFault> run() {
        const pugi::xml_node root = document_.document_element();
        const std::string_view name = root.name();
        const std::size_t colon = name.find(':');
        prefix_ = colon == std::string_view::npos ? "" : name.substr(0, colon + 1);
        const std::string declared = "xmlns" + (prefix_.empty() ? "" : ":" + std::string(prefix_, 0, colon));
        const std::string_view space = text_of(root, declared.c_str());
        if (kind_of(root) != "svg" || (!space.empty() && space != "http://www.w3.org/2000/svg"))
            return SvgFault{"is no SVG", root.offset_debug()};
        prepare(root);
        if (!fault_) draw_root(root);
        if (fault_) return std::move(*fault_);
        if (area_ == 0) return SvgFault{"draws no closed outline", root.offset_debug()};
        return std::move(found_);
    }

  private:
    struct State {
        Affine map;  // to mm
        Inherited style;
        Viewport viewport;  // user units; percentages are of it
        bool clipped = false;
        int depth = 0;
        int uses = 0;
    };

    // Without the document's prefix; empty for an element of another kind of document.
    [[nodiscard]] std::string_view kind_of(const pugi::xml_node& node) const {
        const std::string_view name = node.name();
        if (node.type() != pugi::node_element || !name.starts_with(prefix_)) return {};
        const std::string_view kind = name.substr(prefix_.size());
        return kind.find(':') == std::string_view::npos ? kind : std::string_view{};
    }

    void fail(const pugi::xml_node& node, const std::string& what) {
        if (!fault_) fault_ = SvgFault{what, node.offset_debug()};
    }

    // Ids and style sheets. Depth is bounded by then.
    void prepare(const pugi::xml_node& node) {
        if (const std::string_view id = text_of(node, "id"); !id.empty()) ids_.emplace(id, node);
        if (kind_of(node) == "style") {
            const std::string_view type = text_of(node, "type");
            std::string sheet;
            for (const pugi::xml_node& part : node.children()) sheet += part.value();
            if (type.empty() || type == "text/css")
                if (const auto unread = sheet_.add(sheet))
                    return fail(node, "has a rule of style that is not read here, for '" + *unread + "'");
        }
        for (const pugi::xml_node& child : node.children())
            if (child.type() == pugi::node_element && !fault_) prepare(child);
    }

    // Nothing where the attribute is absent, or "auto".
    std::optional<double> length(const pugi::xml_node& node, const char* name, std::optional<double> whole) {
        const std::string_view text = text_of(node, name);
        if (text.empty() || text == "auto") return std::nullopt;
        const auto value = svg_length(text, whole);
        if (!value)
            fail(node, std::string("has a length that is not read here: ") + name + " \"" +
                           std::string(text.substr(0, 40)) + "\"");
        return value;
    }
    double x(const pugi::xml_node& node, const char* name, const State& in) {
        return length(node, name, in.viewport.width).value_or(0);
    }
    double y(const pugi::xml_node& node, const char* name, const State& in) {
        return length(node, name, in.viewport.height).value_or(0);
    }
    std::optional<double> radius(const pugi::xml_node& node, const char* name, std::optional<double> whole) {
        const auto value = length(node, name, whole);
        return value && *value >= 0 ? value : std::nullopt;
    }

    void draw_root(const pugi::xml_node& root) {
        // A width or height in percent is one of a page that is not known here.
        const auto side = [&](const char* name) -> std::optional<double> {
            if (text_of(root, name).ends_with('%')) return std::nullopt;
            const auto value = length(root, name, {});
            if (value && !(*value > 0)) fail(root, std::string("has no ") + name);
            return value;
        };
        auto width = side("width"), height = side("height");
        if (fault_) return;
        State state;
        state.map = {mm_per_unit, 0, 0, mm_per_unit, 0, 0};
        state.viewport = {width, height};
        if (const auto box = view_box_of(root)) {
            if (!width && !height) width = box->width;
            if (!width) width = *height * box->width / box->height;
            if (!height) height = *width * box->height / box->width;
            state.map = state.map * laid(*box, {0, 0, *width, *height}, text_of(root, "preserveAspectRatio"));
            state.viewport = {box->width, box->height};
        }
        const auto style = styled(root, state);
        if (!style) return;
        // Of the document itself, style says how large it is shown on a page.
        enter(root, state, *style);
    }

    std::optional<ElementStyle> styled(const pugi::xml_node& node, const State& state) {
        StyledElement element{
            kind_of(node), text_of(node, "id"), text_of(node, "class"), text_of(node, "style"), {}};
        for (const pugi::xml_attribute& attribute : node.attributes())
            element.attributes.emplace_back(attribute.name(), attribute.value());
        auto style = sheet_.style_of(element, state.style);
        if (!style.displayed) return std::nullopt;
        return style;
    }

    void enter(const pugi::xml_node& node, State state, const ElementStyle& style) {
        state.style = style.inherited;
        state.clipped = state.clipped || style.clipped;
        ++state.depth;
        for (const pugi::xml_node& child : node.children()) {
            if (fault_) return;
            const std::string_view kind = kind_of(child);
            if (kind.empty()) continue;
            const bool chosen = text_of(child, "requiredExtensions").empty();
            if (kind_of(node) != "switch" || chosen) draw(child, kind, state);
            if (kind_of(node) == "switch" && chosen) return;
        }
    }

    void draw(const pugi::xml_node& node, std::string_view kind, State state) {
        const bool group = kind == "g" || kind == "a" || kind == "switch";
        const bool shape = kind == "path" || kind == "rect" || kind == "circle" || kind == "ellipse" ||
                           kind == "polygon" || kind == "polyline";
        if (!group && !shape && kind != "svg" && kind != "use") return;
        if (++elements_ > most_elements || state.depth > 2 * max_svg_depth)
            return fail(node, "draws more elements than an outline needs");
        const auto style = styled(node, state);
        if (!style) return;
        if (!style->reshaped_by.empty())
            return fail(node, "sets " + style->reshaped_by + " by style, which is not read here");
        if (const std::string_view text = text_of(node, "transform"); !text.empty()) {
            const auto own = svg_transform(text);
            if (!own)
                return fail(node, "has a transform that is not read here: \"" +
                                      std::string(text.substr(0, 40)) + "\"");
            state.map = state.map * *own;
        }
        if (group)
            enter(node, state, *style);
        else if (kind == "svg")
            draw_nested(node, state, *style, {});
        else if (kind == "use")
            draw_use(node, state, *style);
        else if (style->inherited.visible && (style->inherited.filled || style->inherited.stroked))
            draw_shape(node, kind, state, *style);
    }

    // A document in the document, or a symbol: a viewport of its own. A use may give its size.
    void draw_nested(const pugi::xml_node& node, State state, const ElementStyle& style,
                     const Viewport& given) {
        const double left = x(node, "x", state), top = y(node, "y", state);
        auto width = given.width ? given.width : length(node, "width", state.viewport.width);
        auto height = given.height ? given.height : length(node, "height", state.viewport.height);
        if (!width) width = state.viewport.width;
        if (!height) height = state.viewport.height;
        if (fault_ || (width && *width == 0) || (height && *height == 0)) return;
        const auto box = view_box_of(node);
        if (box && width && height) {
            state.map = state.map * laid(*box, {left, top, left + *width, top + *height},
                                         text_of(node, "preserveAspectRatio"));
            state.viewport = {box->width, box->height};
        } else if (box) {
            return fail(node, "has a viewBox without a size");
        } else {
            state.map = state.map * Affine{1, 0, 0, 1, left, top};
            state.viewport = {width, height};
        }
        enter(node, state, style);
    }

    void draw_use(const pugi::xml_node& node, State state, const ElementStyle& style) {
        std::string_view target = text_of(node, "href");
        for (const pugi::xml_attribute& attribute : node.attributes())
            if (target.empty() && std::string_view(attribute.name()).ends_with(":href"))
                target = attribute.value();
        if (target.empty()) return;
        const auto found = ids_.find(target.substr(1));
        if (found == ids_.end()) return;
        if (++state.uses > most_uses) return fail(node, "uses elements that use one another without end");
        state.map = state.map * Affine{1, 0, 0, 1, x(node, "x", state), y(node, "y", state)};
        state.style = style.inherited;
        state.clipped = state.clipped || style.clipped;
        ++state.depth;
        const pugi::xml_node used = found->second;
        const std::string_view kind = kind_of(used);
        if (kind != "symbol" && kind != "svg") return draw(used, kind, state);
        const Viewport given{length(node, "width", state.viewport.width),
                             length(node, "height", state.viewport.height)};
        const auto own = styled(used, state);
        if (own && !fault_) draw_nested(used, state, *own, given);
    }

    void draw_shape(const pugi::xml_node& node, std::string_view kind, const State& state,
                    const ElementStyle& style) {
        DrawnShape shape{outline(node, kind, state), style.inherited.filled, style.inherited.evenodd};
        for (Subpath& subpath : shape.subpaths) {
            subpath.contour = mapped(subpath.contour, state.map);
            segments_ += subpath.contour.segments.size();
            if (!within_reach(subpath.contour)) return fail(node, "has coordinates far beyond any blank");
        }
        if (segments_ > max_outline_segments)
            return fail(node,
                        "draws more than " + std::to_string(max_outline_segments) + " lines and curves");
        if (fault_) return;
        const double area = largest_area(shape);
        if (area <= area_) return;
        area_ = area;
        found_ = {std::move(shape), node.offset_debug(), state.clipped || style.clipped};
    }

    static bool within_reach(const Contour& contour) {
        const auto near = [](Point p) { return std::abs(p.x) < 1e7 && std::abs(p.y) < 1e7; };  // 10 km
        return near(contour.start) &&
               std::all_of(contour.segments.begin(), contour.segments.end(), [&](const Segment& s) {
                   return near(s.to) && (!s.curved || (near(s.control1) && near(s.control2)));
               });
    }

    std::vector<Subpath> outline(const pugi::xml_node& node, std::string_view kind, const State& state) {
        if (kind == "path") return path(node);
        if (kind == "polygon" || kind == "polyline") return polygon(node, kind == "polygon");
        if (kind == "rect") {
            const double left = x(node, "x", state), top = y(node, "y", state);
            const double width = x(node, "width", state), height = y(node, "height", state);
            auto rx = radius(node, "rx", state.viewport.width),
                 ry = radius(node, "ry", state.viewport.height);
            if (!(width > 0 && height > 0)) return {};
            if (!rx) rx = ry;
            if (!ry) ry = rx;
            return {
                rectangle_outline({left, top, left + width, top + height}, rx.value_or(0), ry.value_or(0))};
        }
        const Point centre{x(node, "cx", state), y(node, "cy", state)};
        std::optional<double> rx, ry;
        if (kind == "circle") {
            std::optional<double> diagonal;
            if (state.viewport.width && state.viewport.height)
                diagonal = std::sqrt((*state.viewport.width * *state.viewport.width +
                                      *state.viewport.height * *state.viewport.height) /
                                     2);
            rx = ry = radius(node, "r", diagonal);
        } else {
            rx = radius(node, "rx", state.viewport.width);
            ry = radius(node, "ry", state.viewport.height);
            if (!rx) rx = ry;
            if (!ry) ry = rx;
        }
        if (!rx || !(*rx > 0 && *ry > 0)) return {};
        return {ellipse_outline(centre, *rx, *ry)};
    }

    std::vector<Subpath> path(const pugi::xml_node& node) {
        const std::string_view data = text_of(node, "d");
        if (data == "none") return {};
        PathData read = read_path_data(data, max_outline_segments);
        if (read.fault) {
            const std::string where(data.substr(*read.fault, 20));
            fail(node, "has path data that cannot be read from byte " + std::to_string(*read.fault + 1) +
                           (where.empty() ? ", its end" : ": \"" + where + "\""));
        }
        return std::move(read.subpaths);
    }

    std::vector<Subpath> polygon(const pugi::xml_node& node, bool closed) {
        const auto numbers = svg_numbers(text_of(node, "points"));
        if (!numbers || numbers->size() % 2 != 0) {
            fail(node, "has points that are no pairs of numbers");
            return {};
        }
        if (numbers->size() < 4) return {};
        Subpath subpath{{{(*numbers)[0], (*numbers)[1]}, {}}, false};
        for (std::size_t i = 2; i + 1 < numbers->size(); i += 2)
            subpath.contour.segments.push_back(Segment::line({(*numbers)[i], (*numbers)[i + 1]}));
        if (closed) close(subpath);
        return {std::move(subpath)};
    }

    const pugi::xml_document& document_;
    std::string_view prefix_;
    std::map<std::string_view, pugi::xml_node> ids_;
    StyleSheet sheet_;
    std::optional<SvgFault> fault_;
    std::size_t elements_ = 0;
    std::size_t segments_ = 0;
    double area_ = 0;
    FoundShape found_;
};

}  // namespace

std::variant<FoundShape, SvgFault> largest_shape(const pugi::xml_document& document) {
    return Walk(document).run();
}

}  // namespace lode
