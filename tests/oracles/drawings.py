"""What stands in the drawings that the program wrote: sizes, groups, pieces, and the exact extent and area of their curves.

    drawing = read_svg(folder / "artwork.svg")
    drawing.groups["letters"].pieces[0].path.area
"""
import dataclasses
import functools
import math
import re
import xml.etree.ElementTree as xml

SVG = "{http://www.w3.org/2000/svg}"
TOKEN = re.compile(r"[A-Za-z]|-?[0-9.]+")


@dataclasses.dataclass(frozen=True)
class Box:
    left: float
    top: float
    right: float
    bottom: float

    width = property(lambda self: self.right - self.left)
    height = property(lambda self: self.bottom - self.top)

    def distance(self, other):
        """The greatest difference of a side."""
        return max(abs(a - b) for a, b in zip(dataclasses.astuple(self), dataclasses.astuple(other)))


def around(boxes):
    lefts, tops, rights, bottoms = zip(*map(dataclasses.astuple, boxes))
    return Box(min(lefts), min(tops), max(rights), max(bottoms))


def turns(a, b, c, d):
    """Where a coordinate of a cubic curve stands still, within the curve: roots of its derivative."""
    p, q, r = 3 * (d - 3 * c + 3 * b - a), 6 * (a - 2 * b + c), 3 * (b - a)
    if abs(p) < 1e-12:
        roots = [-r / q] if abs(q) > 1e-12 else []
    else:
        square = q * q - 4 * p * r
        roots = [(-q + sign * math.sqrt(square)) / (2 * p) for sign in (1, -1)] if square >= 0 else []
    return [t for t in roots if 0 < t < 1]


def at(curve, t):
    a, b, c, d = curve
    u = 1 - t
    return u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d


def curve_area(p0, p1, p2, p3):
    """The integral of (x dy - y dx) / 2 along a cubic curve, from its Bernstein form."""
    cross = lambda a, b: a[0] * b[1] - a[1] * b[0]
    return (6 * cross(p0, p1) + 3 * cross(p0, p2) + cross(p0, p3) + 3 * cross(p1, p2) + 3 * cross(p1, p3) + 6 * cross(p2, p3)) / 20


def contour_area(contour):
    return sum(curve_area(*s) if len(s) == 4 else (s[0][0] * s[1][1] - s[0][1] * s[1][0]) / 2 for s in contour)


class Path:
    """Path data of absolute M, L, C and Z, which is all that the program writes."""

    def __init__(self, data):
        self.data = data
        self.contours = []  # each a list of segments: (from, to) or (from, control, control, to)
        self.closed = []
        tokens = TOKEN.findall(data)
        where = 0
        command = ""

        def point():
            nonlocal where
            where += 2
            return float(tokens[where - 2]), float(tokens[where - 1])

        start = pen = None
        while where < len(tokens):
            if tokens[where].isalpha():
                command = tokens[where]
                where += 1
            if command == "M":
                start = pen = point()
                self.contours.append([])
                self.closed.append(False)
            elif command == "L":
                self.contours[-1].append((pen, pen := point()))
            elif command == "C":
                self.contours[-1].append((pen, point(), point(), pen := point()))
            elif command == "Z":
                if pen != start:
                    self.contours[-1].append((pen, start))
                self.closed[-1] = True
                pen = start
            else:
                raise ValueError(f"the command {command!r} is none that the program writes")

    @functools.cached_property
    def box(self):
        sides = []
        for axis in (0, 1):
            values = []
            for contour in self.contours:
                for segment in contour:
                    curve = [p[axis] for p in segment]
                    values += [curve[0], curve[-1]]
                    if len(curve) == 4:
                        values += [at(curve, t) for t in turns(*curve)]
            sides.append((min(values), max(values)))
        return Box(sides[0][0], sides[1][0], sides[0][1], sides[1][1])

    @functools.cached_property
    def area(self):
        return sum(self.areas)

    @functools.cached_property
    def areas(self):
        """Of each contour, with its sign: outer contours positive, holes negative."""
        return [contour_area(contour) for contour in self.contours]

    @functools.cached_property
    def length(self):
        """Of all contours; curves by chords of a 32nd."""
        total = 0
        for contour in self.contours:
            for segment in contour:
                if len(segment) == 2:
                    total += math.dist(*segment)
                else:
                    xs, ys = zip(*segment)
                    walk = [(at(xs, t / 32), at(ys, t / 32)) for t in range(33)]
                    total += sum(map(math.dist, walk, walk[1:]))
        return total


@dataclasses.dataclass
class Piece:
    name: str
    path: Path


@dataclasses.dataclass
class Group:
    name: str
    colour: str
    pieces: list
    lines: list  # single cuts

    @property
    def area(self):
        return sum(piece.path.area for piece in self.pieces)

    @property
    def box(self):
        return around(piece.path.box for piece in self.pieces)


@dataclasses.dataclass
class Drawing:
    file: object
    width: float  # mm
    height: float
    title: str
    description: str
    groups: dict


def read_svg(file):
    root = xml.parse(file).getroot()
    sides = [re.fullmatch(r"([0-9.]+)mm", root.get(side)) for side in ("width", "height")]
    if not all(sides):
        raise ValueError(f"{file}: width and height are {root.get('width')} and {root.get('height')}, not millimetres")
    width, height = (float(side[1]) for side in sides)
    if [float(part) for part in root.get("viewBox").split()] != [0, 0, width, height]:
        raise ValueError(f"{file}: the viewBox {root.get('viewBox')} is not its size in mm, so it is not true")
    groups = {}
    for group in root.findall(SVG + "g"):
        pieces, lines = [], []
        for element in group:
            path = Path(element.get("d"))
            if element.get("fill") == "none":
                lines.append(path)
            else:
                pieces.append(Piece(element.findtext(SVG + "title"), path))
        if group.get("id") in groups:
            raise ValueError(f"{file}: two groups are called {group.get('id')}")
        groups[group.get("id")] = Group(group.get("id"), group.get("fill"), pieces, lines)
    return Drawing(file, width, height, root.findtext(SVG + "title"), root.findtext(SVG + "desc"), groups)


def svg_of(width, height, body, view=None):
    """A drawing of our own in millimetres, to be rendered: what it holds is given as markup."""
    x, y, wide, high = view or (0, 0, width, height)
    return (f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" '
            f'viewBox="{x} {y} {wide} {high}">{body}</svg>')
