"""A tagged PDF as one who cannot see it meets it: walks the tree of its parts and the content of its pages with pikepdf, and says
what is wrong. Nothing here links the project.

Clauses without a name are those of ISO 32000-1 (PDF 1.7); UA stands for ISO 14289-1. Both are quoted from memory."""
import re

import pikepdf

# 14.8.4: which types may stand in which. P, headings and labels hold what stands in a line (14.8.4.4).
BLOCKS = {"Sect", "P", "H1", "H2", "H3", "H4", "H5", "H6", "L", "Table", "Figure", "TOC", "Link", "Span"}
IN_LINE = {"Link", "Span", "Figure"}
MAY_HOLD = {
    "Document": BLOCKS, "Sect": BLOCKS, "LBody": BLOCKS, "TD": BLOCKS, "TH": BLOCKS,
    "L": {"LI"}, "LI": {"Lbl", "LBody"},
    "Table": {"TR"}, "TR": {"TH", "TD"},
    "TOC": {"TOCI", "TOC"}, "TOCI": {"Lbl", "Reference", "P", "TOC"}, "Reference": IN_LINE,
    "P": IN_LINE, "Lbl": IN_LINE, **{f"H{level}": IN_LINE for level in range(1, 7)},
    "Link": {"Span", "Figure"}, "Figure": {"Span"}, "Span": set(),
}
HOLD_NO_CONTENT = {"Document", "Sect", "L", "LI", "Table", "TR", "TOC"}
MAY_BE_EMPTY = {"TD"}
PATHS = {"m", "l", "c", "v", "y", "h", "re"}
PATHS_END = {"f", "F", "f*", "B", "B*", "b", "b*", "S", "s", "n"}
TEXTS = {"Tj", "TJ", "'", '"'}
PAINTS = PATHS_END - {"n"} | TEXTS | {"sh", "INLINE IMAGE"}


def key_of(thing):
    return thing.objgen


def all_of(thing):
    """One, several or none, where an array may stand for several."""
    return [] if thing is None else list(thing) if isinstance(thing, pikepdf.Array) else [thing]


def in_number_tree(node):
    """7.9.7: pairs of a number and a value, in rising order."""
    numbers = list(node.get("/Nums", []))
    pairs = [(int(numbers[at]), numbers[at + 1]) for at in range(0, len(numbers), 2)]
    return pairs + [pair for kid in node.get("/Kids", []) for pair in in_number_tree(kid)]


def in_name_tree(node):
    """7.9.6: the same of names."""
    names = list(node.get("/Names", []))
    pairs = [(bytes(names[at]), names[at + 1]) for at in range(0, len(names), 2)]
    return pairs + [pair for kid in node.get("/Kids", []) for pair in in_name_tree(kid)]


class Letters:
    """What a font's codes stand for, by its ToUnicode (9.10.3)."""

    def __init__(self, font):
        self.size = 2 if font.Subtype == "/Type0" else 1  # bytes of a code; Identity-H has two
        self.meaning = {}
        self.known = "/ToUnicode" in font
        if not self.known:
            return
        text = bytes(font.ToUnicode.read_bytes()).decode("latin-1")

        def unicode_of(digits):
            return bytes.fromhex(digits).decode("utf-16-be")

        for block in re.findall(r"beginbfchar(.*?)endbfchar", text, re.S):
            for code, to in re.findall(r"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>", block):
                self.meaning[int(code, 16)] = unicode_of(to)
        for block in re.findall(r"beginbfrange(.*?)endbfrange", text, re.S):
            ranges = r"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>\s*(?:\[(.*?)\]|<([0-9A-Fa-f]+)>)"
            for first, last, several, one in re.findall(ranges, block, re.S):
                each = re.findall(r"<([0-9A-Fa-f]+)>", several)
                for at, code in enumerate(range(int(first, 16), int(last, 16) + 1)):
                    to = unicode_of(each[at] if several else one)
                    self.meaning[code] = to if several else to[:-1] + chr(ord(to[-1]) + at)

    def text(self, codes):
        each = [int.from_bytes(codes[at:at + self.size], "big") for at in range(0, len(codes), self.size)]
        return "".join(self.meaning.get(code, "\ufffd") for code in each)


class Part:
    def __init__(self, type_, element):
        self.type = type_
        self.element = element
        self.parts = []
        self.text = ""  # all of it, in reading order

    def all(self):
        yield self
        for part in self.parts:
            yield from part.all()

    def each(self, *types):
        return [part for part in self.all() if part.type in types]


class TaggedPdf:
    """What is wrong stands in `faults`; `root` is the tree, with its text."""

    def __init__(self, path):
        self.pdf = pikepdf.open(path)
        self.faults = []
        self.root = None
        self.artifacts = []  # by page, the text of what is passed over
        self.texts = {}  # by page and marked content id
        self.met = {}  # the same: the element that holds it
        self.met_annotations = {}
        self.pages = {key_of(page.obj): number for number, page in enumerate(self.pdf.pages)}
        self.judge_document()
        for number, page in enumerate(self.pdf.pages):
            self.read_page(number, page)
        tree = self.pdf.Root.get("/StructTreeRoot")
        if tree is None:
            self.fault("14.7.2: there is no tree of parts")
            return
        tops = all_of(tree.get("/K"))
        if len(tops) != 1 or str(tops[0].S) != "/Document":
            self.fault("14.8.4.2: the tree's one root is no Document")
        self.root = self.read_part(tops[0], tree, None)
        self.judge_content()
        self.judge_parents(tree)
        self.judge_headings()
        for table in self.root.each("Table"):
            self.judge_table(table)
        self.judge_links()

    def fault(self, *what):
        self.faults.append(" ".join(map(str, what)))

    def judge_document(self):
        root = self.pdf.Root
        self.language = str(root.get("/Lang", ""))
        if not re.fullmatch(r"[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*", self.language):
            self.fault("14.9.2, UA 7.2: the document's language is", repr(self.language))
        self.title = str(self.pdf.docinfo.get("/Title", ""))
        with self.pdf.open_metadata() as metadata:
            told = metadata.get("dc:title", "")
        if not self.title or told != self.title:
            self.fault("UA 7.1: the titles are", repr(self.title), "and", repr(told))
        if root.get("/ViewerPreferences", {}).get("/DisplayDocTitle") is not True:
            self.fault("12.2, UA 7.1: the title is not displayed")
        marking = root.get("/MarkInfo", {})
        if marking.get("/Marked") is not True or marking.get("/Suspects", False):
            self.fault("14.7.1, UA 6.2: the document is not marked as tagged")

    # Pages: what is painted, and under which mark.

    def read_page(self, number, page):
        if page.obj.get("/Tabs") != "/S":
            self.fault("12.5, UA 7.18.3: the order of tabs on page", number + 1, "is not that of the tree")
        self.artifacts.append("")
        self.marks = []
        self.read_content(number, page.obj, page.obj.Resources, {})
        if self.marks:
            self.fault("14.6.1: marks are open where page", number + 1, "ends")

    def read_content(self, number, stream, resources, fonts):
        font, saved, in_text, in_path = None, [], False, False
        for operands, operator in [(one.operands, str(one.operator)) for one in pikepdf.parse_content_stream(stream)]:
            if operator in ("BDC", "BMC", "EMC"):
                if in_path:
                    self.fault("14.6.1: a mark stands within a path on page", number + 1)
                self.mark(number, operator, operands, in_text, resources)
            elif operator in ("BT", "ET"):
                in_text = operator == "BT"
                if operator == "ET" and any(mark["in text"] for mark in self.marks):
                    self.fault("14.6.1: a mark begins in a text object and ends outside on page", number + 1)
            elif operator == "q":
                saved.append(font)
            elif operator == "Q":
                font = saved.pop()
            elif operator == "Tf":
                own = resources.Font[operands[0]]
                font = fonts.setdefault(str(operands[0]), Letters(own))
                if not font.known:
                    self.fault("9.10.3, UA 7.21.7: a font has no ToUnicode")
            elif operator in PATHS or operator in PATHS_END:
                in_path = operator in PATHS
            if operator in PAINTS or operator == "Do":
                self.paint(number, operator)
            if operator in TEXTS:
                shown = operands[-1] if operator == "TJ" else [operands[-1]]
                self.show(number, "".join(font.text(bytes(piece)) for piece in shown if isinstance(piece, pikepdf.String)))
            if operator == "Do":
                form = resources.XObject[operands[0]]
                if form.Subtype == "/Form":
                    self.read_content(number, form, form.get("/Resources", resources), {})

    def mark(self, number, operator, operands, in_text, resources):
        if operator == "EMC":
            if not self.marks:
                return self.fault("14.6.1: a mark ends that never began on page", number + 1)
            mark = self.marks.pop()
            if mark["in text"] != in_text:
                self.fault("14.6.1: a mark and a text object overlap on page", number + 1)
            return None
        properties = operands[1] if operator == "BDC" else {}
        if isinstance(properties, pikepdf.Name):
            properties = resources.Properties[properties]
        mark = {"in text": in_text, "artifact": operands[0] == "/Artifact", "id": properties.get("/MCID"), "said": None}
        if mark["id"] is not None:
            if (number, mark["id"]) in self.texts:
                self.fault("14.7.4.2: marked content", mark["id"], "is twice on page", number + 1)
            self.texts[number, mark["id"]] = ""
        if "/ActualText" in properties:  # 14.9.4: once, in the place of all that it holds
            self.show(number, str(properties.ActualText))
            mark["said"] = True
        kinds = [one["artifact"] for one in self.marks if one["artifact"] or one["id"] is not None]
        if (mark["artifact"] or mark["id"] is not None) and kinds:
            self.fault("UA 7.1: marked content and artifacts hold one another on page", number + 1)
        self.marks.append(mark)
        return None

    def paint(self, number, operator):
        if not any(mark["artifact"] or mark["id"] is not None for mark in self.marks):
            self.fault("14.8.2.2, UA 7.1:", operator, "on page", number + 1, "is neither in a part nor an artifact")

    def show(self, number, text):
        if any(mark["said"] for mark in self.marks):
            return
        if "\ufffd" in text:
            self.fault("9.10, UA 7.21.7: a glyph on page", number + 1, "stands for no letter")
        ids = [mark["id"] for mark in self.marks if mark["id"] is not None]
        if ids:
            self.texts[number, ids[-1]] += text
        else:
            self.artifacts[number] += text

    # The tree.

    def read_part(self, element, parent, parent_type):
        part = Part(str(element.S)[1:], element)
        if key_of(element.P) != key_of(parent):
            self.fault("14.7.2: a", part.type, "names another parent")
        if part.type not in MAY_HOLD:
            self.fault("14.8.4:", part.type, "is no standard type")
        elif parent_type and part.type not in MAY_HOLD.get(parent_type, set()):
            self.fault("14.8.4: a", part.type, "stands in a", parent_type)
        if part.type == "Figure" and not str(element.get("/Alt", "")):
            self.fault("14.9.3, UA 7.3: a Figure has no Alt")
        if part.type == "TH" and self.attribute(element, "/Table", "/Scope") not in ("/Row", "/Column", "/Both"):
            self.fault("14.8.5.7, UA 7.5: a TH has no Scope")
        for kid in all_of(element.get("/K")):
            self.read_kid(part, kid)
        if "/ActualText" in element:
            part.text = str(element.ActualText)
        if not part.text and not part.parts and part.type not in MAY_BE_EMPTY:
            self.fault("a", part.type, "says nothing (common practice)")
        box = self.attribute(element, "/Layout", "/BBox")
        if box is not None and not self.on_paper(box):
            self.fault("14.8.5.4.3: the box of a", part.type, "leaves the page")
        return part

    def read_kid(self, part, kid):
        if not isinstance(kid, pikepdf.Dictionary):
            return self.meet(part, part.element.get("/Pg"), int(kid))
        kind = kid.get("/Type")
        if kind == "/MCR":
            return self.meet(part, kid.get("/Pg", part.element.get("/Pg")), int(kid.MCID))
        if kind == "/OBJR":
            if part.type != "Link":
                self.fault("14.8.4.4.2, UA 7.18.5: an annotation stands in a", part.type)
            annotation = kid.Obj
            if key_of(annotation) in self.met_annotations:
                self.fault("14.7.4.3: an annotation is twice in the tree")
            self.met_annotations[key_of(annotation)] = part.element
            page = kid.get("/Pg", part.element.get("/Pg"))
            if page is None or key_of(annotation) not in [key_of(one) for one in page.get("/Annots", [])]:
                self.fault("14.7.4.3: an annotation is not on the page that the tree names")
            return None
        inner = self.read_part(kid, part.element, part.type)
        part.parts.append(inner)
        part.text += inner.text
        return None

    def meet(self, part, page, mark):
        number = self.pages.get(key_of(page)) if page is not None else None
        place = (number, mark)
        if place not in self.texts:
            return self.fault("14.7.4.2: marked content", mark, "of a", part.type, "is not on its page")
        if place in self.met:
            self.fault("14.7.4.2: marked content", mark, "of page", number + 1, "is twice in the tree")
        if part.type in HOLD_NO_CONTENT:
            self.fault("14.8.4: a", part.type, "has content of its own")
        self.met[place] = part.element
        part.text += self.texts[place]
        return None

    @staticmethod
    def attribute(element, owner, name):
        for one in all_of(element.get("/A")):
            if isinstance(one, pikepdf.Dictionary) and one.get("/O") == owner and name in one:
                return str(one[name]) if isinstance(one[name], pikepdf.Name) else one[name]
        return None

    def on_paper(self, box):
        left, bottom, right, top = map(float, box)
        _, _, width, height = map(float, self.pdf.pages[0].mediabox)
        return 0 <= left < right <= width and 0 <= bottom < top <= height

    # What the two say of each other.

    def judge_content(self):
        for number, mark in sorted(self.texts.keys() - self.met.keys()):
            self.fault("14.7.4.2: marked content", mark, "of page", number + 1, "is not in the tree")

    def judge_parents(self, tree):
        """14.7.4.4: from content back to its part."""
        pairs = in_number_tree(tree.get("/ParentTree", {}))
        keys = [key for key, _ in pairs]
        if keys != sorted(set(keys)) or keys and int(tree.get("/ParentTreeNextKey", -1)) <= keys[-1]:
            self.fault("7.9.7, 14.7.2: the keys of ParentTree are", keys)
        by_key = dict(pairs)
        used = set()
        for number, page in enumerate(self.pdf.pages):
            marks = sorted(mark for on, mark in self.texts if on == number)
            if marks:
                used.add(int(page.obj.get("/StructParents", -1)))
                parents = by_key.get(int(page.obj.get("/StructParents", -1)), [])
                if len(parents) != marks[-1] + 1:
                    self.fault("14.7.4.4: ParentTree has", len(parents), "parts for page", number + 1, "with marks up to", marks[-1])
                for mark, parent in enumerate(parents):
                    element = self.met.get((number, mark))
                    if element is None or key_of(element) != key_of(parent):
                        self.fault("14.7.4.4: ParentTree and tree do not agree on content", mark, "of page", number + 1)
            for annotation in page.obj.get("/Annots", []):
                key = int(annotation.get("/StructParent", -1))
                used.add(key)
                element = self.met_annotations.get(key_of(annotation))
                if key not in by_key or element is None or key_of(by_key[key]) != key_of(element):
                    self.fault("14.7.4.4: ParentTree and tree do not agree on an annotation of page", number + 1)
        if used - {-1} != set(keys):
            self.fault("14.7.4.4: ParentTree has keys that nothing has")

    def judge_headings(self):
        """UA 7.4.2: the first is an H1, and none is more than one level below the one before."""
        level = 0
        for part in self.root.all():
            if re.fullmatch("H[1-6]", part.type):
                if int(part.type[1]) > level + 1:
                    self.fault("UA 7.4.2: heading level", part.type[1], "follows level", level)
                level = int(part.type[1])

    def judge_table(self, table):
        """UA 7.5 and 14.8.4.3.4: rows are equally wide. None here has cells that span several."""
        for part in table.each("TH", "TD"):
            if any(int(self.attribute(part.element, "/Table", span) or 1) != 1 for span in ("/RowSpan", "/ColSpan")):
                self.fault("a cell spans several: the judge does not know such tables")
        widths = {len(row.parts) for row in table.parts}
        if len(widths) != 1 or 0 in widths:
            self.fault("UA 7.5: rows of a table have", sorted(widths), "cells")

    def page_of(self, destination):
        """12.3.2: the page that a destination lies on."""
        if isinstance(destination, pikepdf.String):
            destination = dict(in_name_tree(self.pdf.Root.get("/Names", {}).get("/Dests", {}))).get(bytes(destination))
        if destination is None or len(destination) < 2:
            return None
        return self.pages.get(key_of(destination[0]))

    def judge_links(self):
        names = [name for name, _ in in_name_tree(self.pdf.Root.get("/Names", {}).get("/Dests", {}))]
        if names != sorted(set(names)):
            self.fault("7.9.6: destinations are not in the order of their names")
        for number, page in enumerate(self.pdf.pages):
            for annotation in page.obj.get("/Annots", []):
                if key_of(annotation) not in self.met_annotations:
                    self.fault("UA 7.18.5: a link of page", number + 1, "is not in the tree")
                if not str(annotation.get("/Contents", "")):
                    self.fault("UA 7.18.5: a link of page", number + 1, "has no description")
                if self.page_of(annotation.get("/Dest")) is None:
                    self.fault("12.3.2: a link of page", number + 1, "leads nowhere")
        for link in self.root.each("Link"):
            if not any(key_of(link.element) == key_of(element) for element in self.met_annotations.values()):
                self.fault("UA 7.18.5: a Link has no annotation")
        for item, _ in self.outline():
            if self.page_of(item.get("/Dest")) is None:
                self.fault("12.3.3: a bookmark leads nowhere")

    def outline(self):
        """Each bookmark and its level."""
        def below(item, level):
            while item is not None:
                yield item, level
                yield from below(item.get("/First"), level + 1)
                item = item.get("/Next")
        yield from below(self.pdf.Root.get("/Outlines", {}).get("/First"), 0)
