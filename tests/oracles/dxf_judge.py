"""What ezdxf reads in DXF files, held against the SVG of the same drawing. Usage: dxf_judge.py FOLDER: each NAME.dxf there has
its NAME.svg. Says what is wrong and ends with 1, or ends with 0.

The SVG is read here by nothing but its path data, and its curves are sampled, so that nothing is shared with what wrote the DXF."""
import math
import pathlib
import re
import sys
import xml.etree.ElementTree as xml

import ezdxf
import ezdxf.colors

TOLERANCE = 0.01  # mm, from a curve to its chords
ROUNDING = 0.0002  # of two coordinates with four decimals
SVG = "{http://www.w3.org/2000/svg}"
faults = []


def check(good, *what):
    if not good:
        faults.append(" ".join(map(str, what)))


def contours_of(data):
    """Each contour as its points, a list of curve samples, and whether it is closed."""
    contours = []
    tokens = re.findall(r"[MLCZ]|-?[0-9.]+", data)
    at = 0

    def point():
        nonlocal at
        at += 2
        return float(tokens[at - 2]), float(tokens[at - 1])

    command = ""
    while at < len(tokens):
        if tokens[at].isalpha():
            command = tokens[at]
            at += 1
        if command == "M":
            contours.append({"points": [point()], "corners": [], "closed": False})
            contours[-1]["corners"].append(contours[-1]["points"][0])
        elif command == "L":
            contours[-1]["points"].append(point())
            contours[-1]["corners"].append(contours[-1]["points"][-1])
        elif command == "C":
            a, b, c, d = contours[-1]["points"][-1], point(), point(), point()
            for i in range(1, 33):
                t = i / 32
                u = 1 - t
                contours[-1]["points"].append(tuple(u**3 * a[k] + 3 * u * u * t * b[k] + 3 * u * t * t * c[k] + t**3 * d[k]
                                                    for k in (0, 1)))
            contours[-1]["corners"].append(d)
        else:
            contours[-1]["closed"] = True
    return contours


def area(points):
    return sum(a[0] * b[1] - a[1] * b[0] for a, b in zip(points, points[1:] + points[:1])) / 2


def length(points):
    return sum(math.dist(a, b) for a, b in zip(points, points[1:] + points[:1]))


def distance(p, points):
    """From a point to the nearest side of a polygon."""
    nearest = math.inf
    for a, b in zip(points, points[1:] + points[:1]):
        dx, dy = b[0] - a[0], b[1] - a[1]
        square = dx * dx + dy * dy
        t = max(0, min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square)) if square else 0
        nearest = min(nearest, math.dist(p, (a[0] + t * dx, a[1] + t * dy)))
    return nearest


def box(points):
    xs, ys = zip(*points)
    return min(xs), min(ys), max(xs), max(ys)


def judge_group(name, height, group, entities):
    """A group of the SVG against what stands on a layer, in the same order."""
    polylines = [e for e in entities if e.dxftype() == "LWPOLYLINE"]
    lines = [e for e in entities if e.dxftype() == "LINE"]
    check(len(polylines) + len(lines) == len(entities), name, "holds other things than polylines and lines")
    drawn = [c for path in group.iter(SVG + "path") for c in contours_of(path.get("d"))]
    outlines = [c for c in drawn if c["closed"]]
    cuts = [c for c in drawn if not c["closed"]]
    check(len(outlines) == len(polylines), name, len(outlines), "contours,", len(polylines), "polylines")
    check(len(cuts) == len(lines), name, len(cuts), "cuts,", len(lines), "lines")
    for number, (outline, polyline) in enumerate(zip(outlines, polylines)):
        where = f"{name}, contour {number}:"
        check(polyline.closed, where, "not closed")
        polygon = [(x, height - y) for x, y in polyline.get_points("xy")]
        check(all(math.dist(a, b) > 0 for a, b in zip(polygon, polygon[1:] + polygon[:1])), where, "a point stands twice")
        # Chords lie within the tolerance of the curve, so the areas differ by no more than a strip of that width.
        allowed = TOLERANCE * length(outline["points"])
        check(abs(area(outline["points"]) - area(polygon)) <= allowed, where, "area", area(outline["points"]), area(polygon))
        for a, b in zip(box(outline["points"]), box(polygon)):
            check(abs(a - b) <= 0.002, where, "extent", a, b)
        for corner in outline["corners"]:
            check(min(math.dist(corner, p) for p in polygon) <= ROUNDING, where, "lacks the corner", corner)
        for p in outline["points"][3::7]:
            check(distance(p, polygon) <= TOLERANCE + ROUNDING, where, "leaves the curve by", distance(p, polygon))
    for cut, line in zip(cuts, lines):
        for p, end in zip(cut["points"], (line.dxf.start, line.dxf.end)):
            check(math.dist(p, (end.x, height - end.y)) <= ROUNDING, name, "a cut is displaced", p, end)
            check(end.z == 0, name, "a cut leaves the plane")


def judge(dxf, svg):
    raw = dxf.read_bytes()
    check(raw.isascii(), dxf.name, "is not ASCII")
    document = ezdxf.readfile(dxf)
    audit = document.audit()
    for fault in audit.errors + audit.fixes:
        check(False, dxf.name, fault.message)
    check(document.header.get("$INSUNITS") == 4, "not in millimetres")
    root = xml.parse(svg).getroot()
    width, height = (float(root.get(side).removesuffix("mm")) for side in ("width", "height"))
    check(tuple(document.header["$EXTMIN"])[:2] == (0, 0), "the page does not begin at 0")
    check(math.dist(tuple(document.header["$EXTMAX"])[:2], (width, height)) <= ROUNDING, "the page's size differs")
    space = document.modelspace()
    groups = root.findall(SVG + "g")
    # "0" is the format's own layer; Defpoints is ezdxf's, which adds it on reading.
    layers = [layer for layer in document.layers if layer.dxf.name.lower() not in ("0", "defpoints")]
    check([g.get("id") for g in groups] == [layer.dxf.name for layer in layers], "layers are not the groups")
    for group, layer in zip(groups, layers):
        judge_group(layer.dxf.name, height, group, [e for e in space if e.dxf.layer == layer.dxf.name])
        wanted = tuple(int(group.get("fill")[i:i + 2], 16) for i in (1, 3, 5))
        nearest = min(math.dist(wanted, ezdxf.colors.aci2rgb(i)) for i in range(1, 250))
        if layer.color != 7:
            check(math.dist(wanted, ezdxf.colors.aci2rgb(layer.color)) <= nearest, layer.dxf.name, "has colour", layer.color)
    check(all(e.dxf.layer in [layer.dxf.name for layer in layers] for e in space), "something is on no group's layer")


folder = pathlib.Path(sys.argv[1])
found = sorted(folder.glob("*.dxf"))
check(found, "no DXF in", folder)
for one in found:
    judge(one, one.with_suffix(".svg"))
print("\n".join(faults[:20]), file=sys.stderr)
sys.exit(1 if faults else 0)
