#include "cut/medial_axis.hpp"

#include <algorithm>
#include <boost/polygon/voronoi.hpp>
#include <numeric>

namespace lode {

namespace {

Point as_point(SidePoint p) {
    return {static_cast<double>(p.x), static_cast<double>(p.y)};
}

Site site_of(const boost::polygon::voronoi_cell<double>& cell) {
    Site site{static_cast<std::uint32_t>(cell.source_index()), Site::Kind::body};
    if (cell.contains_point())
        site.kind = cell.source_category() == boost::polygon::SOURCE_CATEGORY_SEGMENT_START_POINT
                        ? Site::Kind::from
                        : Site::Kind::to;
    return site;
}

// Joins the nodes that edges connect, corners aside, and numbers what hangs together.
void find_regions(const EdgeSides& sides, MedialAxis& axis) {
    std::vector<std::uint32_t> parent(axis.nodes.size());
    std::iota(parent.begin(), parent.end(), 0u);
    const auto root = [&](std::uint32_t node) {
        while (parent[node] != node) node = parent[node] = parent[parent[node]];
        return node;
    };
    const auto inner = [&](std::uint32_t node) {
        return node != AxisEdge::infinite && !axis.at_corner(node);
    };
    for (const AxisEdge& edge : axis.edges)
        if (inner(edge.nodes[0]) && inner(edge.nodes[1])) {
            const std::uint32_t a = root(edge.nodes[0]);
            const std::uint32_t b = root(edge.nodes[1]);
            parent[std::max(a, b)] = std::min(a, b);
        }
    for (std::uint32_t node = 0; node < axis.nodes.size(); ++node) {
        if (root(node) == node) {  // the lowest of its region, so met first
            axis.nodes[node].region = static_cast<std::uint32_t>(axis.regions.size());
            axis.regions.emplace_back();
        } else {
            axis.nodes[node].region = axis.nodes[root(node)].region;
        }
    }
    for (const AxisEdge& edge : axis.edges)
        for (std::size_t end = 0; end < 2; ++end) {
            if (!inner(edge.nodes[end])) continue;
            const AxisNode& node = axis.nodes[edge.nodes[end]];
            AxisRegion& region = axis.regions[node.region];
            if (edge.nodes[1 - end] == AxisEdge::infinite) region.bounded = false;
            for (const Site& site : edge.sites)
                if (site.kind == Site::Kind::body) {
                    const Point from = as_point(sides.sides[site.side].from);
                    const Point to = as_point(sides.sides[site.side].to);
                    region.filled = cross(to - from, node.centre - from) > 0;
                }
        }
}

void list_adjacent(MedialAxis& axis) {
    axis.first_adjacent.assign(axis.nodes.size() + 1, 0);
    for (const AxisEdge& edge : axis.edges)
        for (const std::uint32_t node : edge.nodes)
            if (node != AxisEdge::infinite) ++axis.first_adjacent[node + 1];
    std::partial_sum(axis.first_adjacent.begin(), axis.first_adjacent.end(), axis.first_adjacent.begin());
    axis.adjacent.resize(axis.first_adjacent.back());
    std::vector<std::uint32_t> next(axis.first_adjacent.begin(), axis.first_adjacent.end() - 1);
    for (std::uint32_t i = 0; i < axis.edges.size(); ++i)
        for (const std::uint32_t node : axis.edges[i].nodes)
            if (node != AxisEdge::infinite) axis.adjacent[next[node]++] = i;
}

}  // namespace

Point nearest_on(const EdgeSides& edges, const Site& site, Point to) {
    const Point a = as_point(edges.sides[site.side].from);
    const Point b = as_point(edges.sides[site.side].to);
    if (site.kind == Site::Kind::from) return a;
    if (site.kind == Site::Kind::to) return b;
    const Point along = b - a;
    return a + std::clamp(dot(to - a, along) / dot(along, along), 0.0, 1.0) * along;
}

MedialAxis medial_axis(const EdgeSides& edges) {
    boost::polygon::default_voronoi_builder builder;
    for (const Side& side : edges.sides)
        builder.insert_segment(side.from.x, side.from.y, side.to.x, side.to.y);
    boost::polygon::voronoi_diagram<double> diagram;
    builder.construct(&diagram);

    MedialAxis axis;
    const auto* const first_vertex = diagram.vertices().data();
    axis.nodes.resize(diagram.num_vertices());
    // An edge and its twin stand side by side.
    for (std::size_t i = 0; i + 1 < diagram.edges().size(); i += 2) {
        const auto& edge = diagram.edges()[i];
        AxisEdge found{{}, {site_of(*edge.cell()), site_of(*edge.twin()->cell())}, edge.is_linear()};
        const auto number = [&](const auto* vertex) {
            if (!vertex) return AxisEdge::infinite;
            const auto node = static_cast<std::uint32_t>(vertex - first_vertex);
            axis.nodes[node].centre = {vertex->x(), vertex->y()};
            axis.nodes[node].radius =
                length(axis.nodes[node].centre - nearest_on(edges, found.sites[0], axis.nodes[node].centre));
            return node;
        };
        found.nodes = {number(edge.vertex0()), number(edge.vertex1())};
        if (edge.is_primary()) axis.edges.push_back(found);
    }
    find_regions(edges, axis);
    list_adjacent(axis);
    return axis;
}

}  // namespace lode
