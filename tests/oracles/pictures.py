"""Pictures of drawings, as librsvg, Chromium and Poppler make them, and what their pixels say. PNG (PNG, third edition, 2025,
sections 7 to 10: 8 bits, not interlaced) and binary PPM are read here, with nothing but zlib."""
import base64
import itertools
import pathlib
import re
import struct
import subprocess
import tempfile
import zlib


class Picture:
    """Rows of bytes, three a pixel."""

    def __init__(self, width, height, rows):
        self.width, self.height, self.rows = width, height, rows

    def flipped(self):
        def turn(row):
            turned = bytearray(len(row))
            for channel in range(3):
                turned[channel::3] = row[channel::3][::-1]
            return bytes(turned)

        return Picture(self.width, self.height, [turn(row) for row in self.rows])

    def halved(self):
        """Half as wide and high, each pixel the mean of four."""
        rows = []
        for upper, lower in zip(self.rows[::2], self.rows[1::2]):
            both = mean_of(upper, lower)
            left, right = bytearray(3 * (self.width // 2)), bytearray(3 * (self.width // 2))
            for channel in range(3):
                left[channel::3] = both[channel:6 * (self.width // 2):6]
                right[channel::3] = both[channel + 3:6 * (self.width // 2):6]
            rows.append(mean_of(left, right))
        return Picture(self.width // 2, self.height // 2, rows)

    def channel(self, which):
        return [row[which::3] for row in self.rows]

    def darkest(self, left, top, right, bottom):
        """The least value of any channel in a rectangle of pixels."""
        return min(min(row[3 * left:3 * right]) for row in self.rows[top:bottom])


def sum_of(a, b):
    """Byte by byte, without carries: the low seven bits of all bytes in one addition, the high ones by exclusive or."""
    x, y = int.from_bytes(a, "little"), int.from_bytes(b, "little")
    low, high = (int.from_bytes(bytes([bits]) * len(a), "little") for bits in (0x7F, 0x80))
    return (((x & low) + (y & low)) ^ ((x ^ y) & high)).to_bytes(len(a), "little")


def mean_of(a, b):
    """Byte by byte, rounded down."""
    x, y = int.from_bytes(a, "little"), int.from_bytes(b, "little")
    even = int.from_bytes(b"\xFE" * len(a), "little")
    return ((x & y) + (((x ^ y) & even) >> 1)).to_bytes(len(a), "little")


def restored(kind, row, above, size):
    """A row of a PNG as it was before its filter (section 9.2)."""
    if kind == 0:
        return row
    if kind == 1:
        out = bytearray(len(row))
        for channel in range(size):
            out[channel::size] = bytes(itertools.accumulate(row[channel::size], lambda a, b: (a + b) & 255))
        return bytes(out)
    if kind == 2:
        return sum_of(row, above)
    out = bytearray(size) + row
    for i in range(size, len(out)):
        left, up = out[i - size], above[i - size]
        if kind == 3:
            out[i] = (out[i] + (left + up) // 2) & 255
        else:
            corner = above[i - 2 * size] if i >= 2 * size else 0
            to_left, to_up, to_corner = abs(up - corner), abs(left - corner), abs(left + up - 2 * corner)
            nearest = left if to_left <= to_up and to_left <= to_corner else up if to_up <= to_corner else corner
            out[i] = (out[i] + nearest) & 255
    return bytes(out[size:])


def read_png(data):
    if data[:8] != b"\x89PNG\r\n\x1a\n":
        raise ValueError("this is no PNG")
    where, packed = 8, b""
    while where < len(data):
        length, kind = struct.unpack(">I4s", data[where:where + 8])
        body = data[where + 8:where + 8 + length]
        if zlib.crc32(kind + body) != struct.unpack(">I", data[where + 8 + length:where + 12 + length])[0]:
            raise ValueError(f"the checksum of a PNG's {kind} is wrong")
        if kind == b"IHDR":
            width, height, depth, colours, _, _, interlaced = struct.unpack(">IIBBBBB", body)
            if depth != 8 or colours not in (2, 6) or interlaced:
                raise ValueError("a kind of PNG that is not read here")
            size = 3 if colours == 2 else 4
        elif kind == b"IDAT":
            packed += body
        where += 12 + length
    plain = zlib.decompress(packed)
    stride = size * width + 1
    rows, above = [], bytes(size * width)
    for y in range(height):
        line = plain[y * stride:(y + 1) * stride]
        above = restored(line[0], line[1:], above, size)
        rows.append(above)
    if size == 4:
        opaque = b"\xff" * width
        for y, row in enumerate(rows):
            if row[3::4] != opaque:
                raise ValueError("a PNG that can be seen through: give it a ground")
            out = bytearray(3 * width)
            for channel in range(3):
                out[channel::3] = row[channel::4]
            rows[y] = bytes(out)
    return Picture(width, height, rows)


def read_ppm(data):
    width, height = map(int, re.match(rb"P6\s(\d+)\s(\d+)\s255\s", data).groups())
    body = data[-3 * width * height:]
    return Picture(width, height, [body[3 * width * y:3 * width * (y + 1)] for y in range(height)])


def by_librsvg(svg, dots=96):
    """A drawing, a file or its text, on white, with so many dots an inch."""
    given = svg.encode() if isinstance(svg, str) else pathlib.Path(svg).read_bytes()
    command = ["rsvg-convert", "--dpi-x", str(dots), "--dpi-y", str(dots), "--background-color", "white", "--unlimited"]
    return read_png(subprocess.run(command, input=given, stdout=subprocess.PIPE, check=True).stdout)


def by_poppler(pdf, dots=96, page=1):
    with tempfile.TemporaryDirectory() as folder:
        to = pathlib.Path(folder, "page")
        subprocess.run(["pdftoppm", "-r", str(dots), "-f", str(page), "-l", str(page), "-singlefile", pdf, to], check=True)
        return read_ppm(to.with_suffix(".ppm").read_bytes())


def by_chromium(browser, svg, width, height, dots=96):
    """A drawing of so many CSS pixels (96 an inch) in a page of a browser (browser.py)."""
    browser.call("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=dots / 96, mobile=False)
    text = svg if isinstance(svg, str) else pathlib.Path(svg).read_text()
    show(browser, re.sub(r"^<\?xml[^>]*>\s*", "", text))
    return read_png(base64.b64decode(browser.call("Page.captureScreenshot", format="png", optimizeForSpeed=True)["data"]))


def by_both(browser, svg, width, height, dots):
    """The same drawing by librsvg and by Chromium. At its edges Chromium counts four lines a pixel, and so may be an eighth off by
    itself: both draw twice as dense, and four pixels are averaged."""
    return by_librsvg(svg, 2 * dots).halved(), by_chromium(browser, svg, width, height, 2 * dots).halved()


def show(browser, markup):
    """Puts SVG into the body of a blank page: the browser's own HTML parser reads it."""
    frame = browser.call("Page.getFrameTree")["frameTree"]["frame"]["id"]
    browser.call("Page.setDocumentContent", frameId=frame,
                 html="<!doctype html><style>body { margin: 0 } svg { display: block }</style><body>" + markup)


def differing(a, b, by=25):
    """The share of pixels that differ by more than so much (of 255) in any channel."""
    if (a.width, a.height) != (b.width, b.height):
        raise ValueError(f"pictures of {a.width} x {a.height} and of {b.width} x {b.height} pixels")
    count = 0
    for one, other in zip(a.rows, b.rows):
        for i in range(0, len(one), 96):  # most are the same
            if one[i:i + 96] != other[i:i + 96]:
                far = [abs(x - y) > by for x, y in zip(one[i:i + 96], other[i:i + 96])]
                count += sum(map(max, far[::3], far[1::3], far[2::3]))
    return count / (a.width * a.height)
