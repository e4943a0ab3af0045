#!/usr/bin/python3
"""Many orders: a line in, a line out, on any number of processors."""
import json
import re
import subprocess
import unittest
import zlib

from batch_orders import HERBS, order, page_size, results_of, schema_test, text_of
from program import InFolder, ROOT, run


class TakesOrders(InFolder):
    def batch(self, text, *arguments, code=0):
        result = run("batch", *arguments, stdin=text.encode(), cwd=self.folder)
        self.assertEqual(result.returncode, code, result.stderr.decode())
        return results_of(result.stdout)

    def test_an_order_gives_what_make_gives(self):
        words = self.write("herbs.txt", "\n".join(HERBS) + "\n")
        made = run("make", words, "--grid", "9x9", "--seed", "5", "--directions", "all", "--crossings", "at-least 2",
                   "--json", cwd=self.folder)
        expected = json.loads(made.stdout)
        for line in (order(seed=5, directions="all", crossings="at-least 2"),
                     json.dumps({"words": "herbs.txt", "grid": "9x9", "seed": "5", "directions": "all", "crossings": "at-least 2"}),
                     json.dumps({**expected["recipe"]}),
                     json.dumps({"recipe": "recipe.json", "seed": 5})):
            self.write("recipe.json", json.dumps({**expected["recipe"], "seed": 6}))
            got, = self.batch(line + "\n")
            self.assertEqual(got.pop("order"), 1)
            self.assertEqual(got.pop("order_crc32"), f"{zlib.crc32(line.encode()):08x}")
            self.assertEqual(got, expected)

    def test_options_of_the_command_line_hold_where_an_order_says_nothing(self):
        first, second = self.batch(json.dumps({"words": HERBS}) + "\n" + order() + "\n", "--grid", "12x10", "--seed", "3")
        self.assertEqual((first["rows"], first["columns"], second["rows"], second["columns"]), (10, 12, 9, 9))
        self.assertEqual((first["recipe"]["seed"], second["recipe"]["seed"]), (3, 3))

    def test_lines_keep_their_order_and_a_bad_one_stops_none(self):
        lines = [order(seed=1), "", "no JSON", order(grid="2x2"), order(grd="9x9"), "[]", json.dumps({"grid": "9x9"}),
                 order(seed=-1), json.dumps({"words": "nowhere.txt"}), order(seed=2, name="Herb bed")]
        results = self.batch("\n".join(lines), code=1)
        self.assertEqual([result["order"] for result in results], [1, 3, 4, 5, 6, 7, 8, 9, 10])
        kinds = [result["format"] for result in results]
        self.assertEqual(kinds, ["letterlode-puzzle"] + ["letterlode-refusal"] * 7 + ["letterlode-puzzle"])
        self.assertEqual(results[-1]["name"], "Herb bed")
        for result in results[1:-1]:
            self.assertTrue(result["advice"], result)
            self.assertTrue(result["message"])
        self.assertIn("grd", results[3]["message"])
        self.assertEqual((results[1]["source"], results[1]["line"]), ("standard input", 3))

    def test_what_no_order_can_ask_is_refused(self):
        lines = [order(words="-"), order(recipe="-"), order(avoid=["-"]), order(avoid="-"), order(**{"from": "-"}), order(shape="-"),
                 '{"words":["Thyme"],"seed":1e999}', '{"words":["Th\\ud800yme"]}', "[" * 100_000, '{"words":' + "[" * 100_000,
                 order(heading=7.5), order(choices=10**30), order(rate=[1]), order(print={"pgae": "a4"}), order(words=[["Thyme"]]),
                 order(out="elsewhere"), order(threads=4), order(colour=[["bands=gold"]]), order(seed=None)]
        results = self.batch("\n".join(lines) + "\n" + order(), code=1)
        self.assertEqual([result["format"] for result in results], ["letterlode-refusal"] * len(lines) + ["letterlode-puzzle"])
        self.assertEqual({result["reason"] for result in results[:-1]}, {"unusable"})

    def test_the_bytes_are_the_same_on_any_number_of_processors(self):
        text = "".join(order(seed=seed, grid=f"{9 + seed % 3}x9") + "\n" for seed in range(300)) + "oops\n"
        alone = run("batch", "--threads", "1", stdin=text.encode()).stdout
        for threads in ("2", "7"):
            self.assertEqual(run("batch", "--threads", threads, stdin=text.encode()).stdout, alone)
        mixed = run("batch", "--threads", "3", "--unordered", stdin=text.encode()).stdout
        self.assertEqual(sorted(mixed.splitlines()), sorted(alone.splitlines()))

    def test_parts_of_a_file_give_together_what_the_file_gives(self):
        lines = [order(seed=seed) for seed in range(20)] + ["", "oops", order(seed=20, name="Herb bed"), order(grid="2x2"), order(seed=21)]
        text = "".join(line + "\n" for line in lines)
        whole = run("batch", stdin=text.encode()).stdout
        for size in (1, 7, 22, 100):
            parts = [run("batch", "--first", at + 1, stdin="".join(line + "\n" for line in lines[at:at + size]).encode()).stdout
                     for at in range(0, len(lines), size)]
            self.assertEqual(b"".join(parts), whole, size)
        # Going on knows the numbers of the part.
        part = self.write("part.jsonl", "".join(line + "\n" for line in lines[7:14]))
        self.write("results.jsonl", b"".join(whole.splitlines(keepends=True)[7:10]))
        result = run("batch", part, "--first", "8", "--results", "results.jsonl", "--resume", cwd=self.folder)
        self.assertEqual((result.returncode, b"4 orders done; 3 before" in result.stderr), (0, True), result.stderr.decode())
        self.assertEqual((self.folder / "results.jsonl").read_bytes(), b"".join(whole.splitlines(keepends=True)[7:14]))
        # A table's rows are numbered likewise.
        self.write("orders.csv", "names\nIvo\nUna\n")
        rows = run("batch", "--from", "orders.csv", "--words-column", "names", "--first", "5", cwd=self.folder)
        self.assertEqual([result["order"] for result in results_of(rows.stdout)], [5, 6], rows.stderr.decode())

    def test_a_seed_is_found_wherever_it_stands(self):
        # Orders that differ in their seed alone share what was checked: each must be what it is by itself.
        lines = ['{"seed":1,"words":["Thyme","Sage"],"grid":"6x6"}', '{"seed":2,"words":["Thyme","Sage"],"grid":"6x6"}',
                 '{"words":["Thyme","seed\\":9","Sage"],"seed" : 3 ,"grid":"6x6"}',
                 '{"words":["Thyme","seed\\":9","Sage"],"seed" : 4 ,"grid":"6x6"}',
                 '{"words":["Thyme","Sage"],"seed":5,"grid":"6x6","seed":6}', '{"words":["Thyme","Sage"],"seed":7,"grid":"6x6","seed":6}',
                 '{"words":["Thyme","Sage"],"seed":"8","grid":"6x6"}', '{"words":["Thyme","Sage"],"seed":1e1,"grid":"6x6"}',
                 '{"words":["Thyme","Sage"],"seed":11,"grid":"6x6","name":"one"}', '{"words":["Thyme","Sage"],"seed":12,"grid":"6x6","name":"one"}',
                 # Refused for what the seed has nothing to do with, and the same words without that.
                 '{"words":["Thyme","Sage"],"avoid":["hyme"],"seed":13,"grid":"6x6"}',
                 '{"words":["Thyme","Sage"],"avoid":["hyme"],"seed":14,"grid":"6x6"}',
                 '{"words":["Thyme","Sage"],"seed":14,"grid":"6x6"}', '{"words":["Thyme","Sage"],"avoid":["hyme"],"seed":15,"grid":"6x6"}',
                 '{"words":["Teim","Rhosyn"],"locale":"cy","seed":16,"grid":"6x6"}', '{"words":["Mint","Leek"],"seed":17,"grid":"6x6"}',
                 '{"words":["Llwyn","Rhosyn"],"locale":"cy","seed":18,"grid":"6x6"}']
        together = self.batch("\n".join(lines), "--threads", "1", code=1)
        for number, line in enumerate(lines, 1):
            single = run("batch", stdin=line.encode())
            alone, = results_of(single.stdout)
            alone["order"] = number
            if "line" in alone:
                alone["line"] = number
            self.assertEqual(together[number - 1], alone, line)
        self.assertEqual([result["recipe"]["seed"] for result in together if "recipe" in result][:2], [1, 2])
        self.assertEqual(["recipe" in result for result in together[10:14]], [False, False, True, False])

    def test_each_puzzle_is_rated_where_that_is_asked(self):
        plain, rated, hung = self.batch("\n".join([order(), order(rate=True), order(blank="8x10in", surface="first", viewing="1.5m")]))
        self.assertNotIn("rating", plain)
        self.assertEqual(rated["rating"]["format"], "letterlode-rating")
        self.assertIn("arcmin", json.dumps(hung["rating"]) + "arcmin")
        self.assertGreater(len(hung["rating"]["readability"]), len(rated["rating"]["readability"]))
        self.assertIn("no artwork is written without --out DIR.", " ".join(hung["notes"]))

    def test_a_folder_an_order_holds_what_make_writes(self):
        panel = {"blank": "8x10in", "surface": "second", "heading": "Herb bed"}
        lines = [order(name="Herb bed 1", seed=4, **panel), order(seed=4, **panel), order(seed=5, print={"page": "letter", "key": "none"}), order(grid="2x2")]
        results = self.batch("\n".join(lines), "--out", "orders", code=1)
        self.assertEqual([result.get("folder") for result in results], ["000001-herb-bed-1", "000002", "000003", None])
        self.assertEqual(sorted(path.name for path in (self.folder / "orders").iterdir()), ["000001-herb-bed-1", "000002", "000003"])
        words = self.write("herbs.txt", "\n".join(HERBS) + "\n")
        made = run("make", words, "--grid", "9x9", "--seed", "4", "--blank", "8x10in", "--surface", "second", "--heading", "Herb bed",
                   "--out", "alone", cwd=self.folder)
        self.assertEqual(made.returncode, 0, made.stderr.decode())
        files = lambda folder: {str(path.relative_to(folder)): path.read_bytes() for path in sorted(folder.rglob("*")) if path.is_file()}
        alone = files(self.folder / "alone")
        for name, others in (("000002", []), ("000001-herb-bed-1", ["job-sheet.pdf"])):
            its = files(self.folder / "orders" / name)
            self.assertEqual(its.keys(), alone.keys())
            self.assertEqual([path for path in its if its[path] != alone[path]], others)
        self.assertEqual(results[0]["cut"]["format"], "letterlode-cut")
        pages = subprocess.run(["pdfinfo", self.folder / "orders/000003/worksheet.pdf"], capture_output=True, text=True, check=True).stdout
        self.assertRegex(pages, r"Pages:\s+1\n")
        self.assertRegex(pages, r"letter")
        self.refused(2, "batch", "--out", "orders", stdin=b"", says=["exists already", "move it away"])
        self.refused(2, "batch", "--out", "orders", "--results", "results.jsonl", stdin=b"", says=["exists already", "--resume"])

    def test_options_that_do_not_go_together_are_refused(self):
        for arguments, says in ((["--resume"], "--results"), (["--words-column", "names"], "--from"), (["nowhere.jsonl"], "nowhere.jsonl"),
                                (["--from", "nowhere.csv", "--by-column"], "nowhere.csv"), (["--threads", "0"], "threads"), (["--first", "0"], "first"),
                                (["a.jsonl", "--from", "b.csv"], "twice"), (["--from", "b.csv"], "--words-column"),
                                (["--results", "no/such/folder.jsonl"], "cannot be written"), (["--grd", "9x9"], "grd")):
            with self.subTest(arguments=arguments):
                self.refused(2, "batch", *arguments, says=[says])


    def test_what_is_no_order_stops_none_of_the_others(self):
        deep = 100_000
        lines = ['{"words":["Mint"],"mask":' + "[" * deep + "]" * deep + "}", '{"words":["Mint"],"":1}', '{"words":["Mint"],"print":{"":1}}',
                 '{"words":["Mint"]}\0{"words":["Sage"]}', '{"words":"/dev/stdin"}', '{"words":["Mint"],"avoid":"/proc/self/fd/0"}']
        results = self.batch("".join(line + "\n" + order() + "\n" for line in lines), code=1)
        self.assertEqual([result["format"] for result in results], ["letterlode-refusal", "letterlode-puzzle"] * len(lines))
        for result, says in zip(results[::2], ("64 levels", "empty name", "empty name", "NUL", "standard input", "standard input")):
            self.assertIn(says, result["message"])
        # A name may be written with escapes: RFC 8259, 7.
        one, two = ('{"words":["Mint"],"grid":"6x6","seed":1,"\\u0073eed":%d}\n' % seed for seed in (1, 5))
        self.assertEqual(self.batch(one + two, "--threads", "1")[1]["recipe"], self.batch(two)[0]["recipe"])

    def test_an_order_says_no_to_what_the_command_line_asks_for(self):
        first, second = self.batch(order(rate=False) + "\n" + order() + "\n", "--rate")
        self.assertEqual(("rating" in first, "rating" in second), (False, True))

    def test_refusals_have_names_and_say_where_they_stand(self):
        bad = {"words": [], "name": "Plot 4"}, {"words": ["Artichoke"], "grid": "3x3", "name": "Plot 5"}, {"words": ["Ivo"], "size": 3}
        results = self.batch("".join(json.dumps(one) + "\n" for one in bad), code=1)
        self.assertEqual([result.get("name") for result in results], ["Plot 4", "Plot 5", None])
        self.assertEqual([result["line"] for result in results], [1, 2, 3])
        self.assertIn("brackets", " ".join(self.batch('{"words":"Ivo, Una"}\n', code=1)[0]["advice"]))
        self.assertIn("--from", " ".join(self.batch("Ivo, Una\n", code=1)[0]["advice"]))

    def test_the_end_tells_what_was_refused_and_what_has_notes(self):
        lines = [order(name="Plot 4", grid="2x2"), order(), *[order(grid="1x1")] * 11]
        orders = self.write("orders.jsonl", "".join(line + "\n" for line in lines))
        said = run("batch", orders, "--results", "results.jsonl", cwd=self.folder).stderr.decode().splitlines()
        self.assertEqual(said[0], "13 orders done: 1 made, 12 refused.")
        self.assertRegex(said[1], "^refused: order 1, 'Plot 4': .*at most 2")
        self.assertEqual((len(said), said[11]), (12, "refused: and 2 more, which results.jsonl tells."))
        said = run("batch", "--locale", "is", stdin=(order() + "\n").encode()).stderr.decode()
        self.assertIn('1 result has "notes"', said)

    def test_versions_and_a_booklet(self):
        result, = self.batch(order(name="Herbs, class 4", print={"versions": 3, "booklet": "Wrenbarrow school"}) + "\n", "--out", "sheets")
        self.assertEqual(len(result["puzzles"]), 3)
        folder = self.folder / "sheets/000001-herbs-class-4"
        text = text_of(folder / "worksheet.pdf")
        self.assertEqual(text.count("\f"), 7)  # contents, three sheets, three keys
        for part in ("Wrenbarrow school", "Herbs, class 4", "A", "B", "C"):
            self.assertIn(part, text)
        for at, version in enumerate("abc"):
            puzzle = json.loads((folder / f"version-{version}/puzzle.json").read_text())
            self.assertEqual(puzzle["cells"], result["puzzles"][at]["cells"])
        for members in ({"versions": 1}, {"versions": 27}, {"versions": 2, "choices": 2}, {"versions": 2, "blank": "8x10in", "surface": "first"}):
            refusal, = self.batch(order(**members) + "\n", "--out", "others", "--grid", "9x9", code=1)
            self.assertIn("versions", refusal["message"])

    def test_a_panels_job_sheet_bears_the_name_of_its_order(self):
        self.batch(order(name="W-101 a", heading="Herbs") + "\n" + order(heading="Herbs") + "\n", "--out", "panels",
                   "--blank", "8x10in", "--surface", "first")
        named, unnamed = (text_of(self.folder / "panels" / name / "job-sheet.pdf") for name in ("000001-w-101-a", "000002"))
        self.assertRegex(named, r"Order +W-101 a")
        self.assertNotIn("Order  ", unnamed)

    def test_sheets_without_a_heading_bear_the_name_of_their_order(self):
        self.batch(order(name="Class 4") + "\n" + order(name="Class 5", heading="Herbs") + "\n" + order(**{"name-line": True}) + "\n",
                   "--out", "sheets")
        sheets = [text_of(self.folder / "sheets" / name / "worksheet.pdf") for name in ("000001-class-4", "000002-class-5", "000003")]
        self.assertIn("Class 4", sheets[0])
        self.assertIn("Herbs", sheets[1])
        self.assertNotIn("Class 5", sheets[1])
        self.assertIn("Name", sheets[2])


class ReadsTables(InFolder):
    def batch(self, *arguments, code=0):
        result = run("batch", *arguments, cwd=self.folder)
        self.assertEqual(result.returncode, code, result.stderr.decode())
        return results_of(result.stdout), result.stderr.decode()

    def shown(self, result):
        return [word["shown"] for word in result["words"]]

    def test_a_row_is_an_order(self):
        # RFC 4180: quotes around fields that hold separators, quotes or line ends; quotes doubled inside; CRLF.
        self.write("orders.csv", 'buyer,names,seed,letters\r\n17,"Ivo; Una; Sage, the ""old"" one",4,lower\r\n'
                                 '18,"Bo\r\nLovage, wild",,\r\n19,"Dill, Mint",x,\r\n20,"Rue, Tansy",9,\r\n')
        results, said = self.batch("--from", "orders.csv", "--words-column", "names", code=1)
        self.assertIn("'buyer'", said)
        self.assertEqual(self.shown(results[0]), ["Ivo", "Una", 'Sage, the "old" one'])
        self.assertEqual(self.shown(results[1]), ["Bo", "Lovage, wild"])
        self.assertEqual(results[2]["format"], "letterlode-refusal")
        self.assertEqual(self.shown(results[3]), ["Rue", "Tansy"])
        self.assertEqual([result["recipe"]["seed"] for result in results if "recipe" in result], [4, 1, 9])
        self.assertEqual(results[0]["recipe"]["letters"], "lower")

    def test_separators_of_other_countries_and_a_byte_order_mark(self):
        for separator in (";", "\t"):
            self.write("orders.csv", "\ufeffnames;seed\n\"Ivo; Una\";3\nDill, Mint;4\n".replace(";seed", separator + "seed")
                       .replace("\";3", "\"" + separator + "3").replace("Mint;4", "Mint" + separator + "4"))
            results, _ = self.batch("--from", "orders.csv", "--words-column", "names")
            self.assertEqual([self.shown(result) for result in results], [["Ivo", "Una"], ["Dill", "Mint"]])

    def test_names_of_columns_may_have_capitals_and_values_those_of_a_spreadsheet(self):
        self.write("orders.csv", "Name,Words,Landscape,PIN\nW-1,\"Ivo,Una\",TRUE,\"Ivo@1,1,right; Una@2,1,right\"\n")
        (result,), said = self.batch("--from", "orders.csv", "--words-column", "words", "--grid", "6x6", "--out", "panels")
        self.assertEqual((result["name"], said), ("W-1", "1 order done.\n"))
        self.assertEqual([word["placed"]["row"] for word in result["words"]], [1, 2])
        width, height = page_size(self.folder / "panels/000001-w-1/worksheet.pdf")
        self.assertGreater(width, height)

    def test_a_field_behind_the_last_column_is_no_order(self):
        self.write("orders.csv", "names,heading\nIvo,Una\nIvo,\"Una\",Sage\nDill,,,\n")
        results, _ = self.batch("--from", "orders.csv", "--words-column", "names", "--out", "panels", code=1)
        self.assertEqual([result["format"] for result in results], ["letterlode-puzzle", "letterlode-refusal", "letterlode-puzzle"])
        self.assertIn("'Sage' stands behind the last column", results[1]["message"])
        self.assertEqual(results[1]["line"], 3)

    def test_what_is_no_utf8_or_no_text_at_all(self):
        self.write("orders.csv", "names,heading\nIvo,Zo\u00eb\nUna,Plot 4\n".encode("latin-1"))
        results, _ = self.batch("--from", "orders.csv", "--words-column", "names", "--out", "panels", code=1)
        self.assertIn("no UTF-8", results[0]["message"])
        self.assertEqual(self.shown(results[1]), ["Una"])
        for header in ("n\u00e4mes\nIvo\n".encode("latin-1"), b"PK\x03\x04names\n", b"names\0\nIvo\n", b"names\rIvo\rUna\r"):
            self.write("orders.csv", header)
            self.refused(2, "batch", "--from", "orders.csv", "--words-column", "names", says=["orders.csv:1", "CSV"])

    def test_a_column_of_words_beside_that_of_the_words(self):
        self.write("orders.csv", "names,words\n\"Ivo, Una\",\"Mint, Basil\"\n")
        (result,), said = self.batch("--from", "orders.csv", "--words-column", "names")
        self.assertEqual(self.shown(result), ["Ivo", "Una"])
        self.assertIn("passed over: 'words'", said)

    def test_a_spreadsheet_says_its_separator_and_has_more_columns_than_one_names(self):
        self.write("orders.csv", "sep=;\r\n" + ";".join(["names", *(f"c{at}" for at in range(25))]) + "\r\n\"Ivo;Una\";x\r\n")
        (result,), said = self.batch("--from", "orders.csv", "--words-column", "names")
        self.assertEqual(self.shown(result), ["Ivo", "Una"])
        self.assertIn("'c19' and 5 more.", said)

    def test_a_column_is_an_order(self):
        self.write("beds.csv", "Herb bed,Shed\nThyme,Rake\nSage,Spade\n,Hoe\n")
        results, _ = self.batch("--from", "beds.csv", "--by-column")
        self.assertEqual([(result["name"], self.shown(result)) for result in results],
                         [("Herb bed", ["Thyme", "Sage"]), ("Shed", ["Rake", "Spade", "Hoe"])])

    def test_what_is_no_table_is_refused(self):
        for text in ("", "\n", "names,names\nIvo,Una\n"):
            self.write("orders.csv", text)
            self.refused(2, "batch", "--from", "orders.csv", "--words-column", "names", says=["orders.csv:1"])
        self.write("orders.csv", "name\nIvo\n")
        self.refused(2, "batch", "--from", "orders.csv", "--words-column", "names", says=["words-column", "'name'"])
        self.write("orders.csv", 'names\nIvo; Una\n"Dill; Mint\n')
        results, _ = self.batch("--from", "orders.csv", "--words-column", "names", code=1)
        self.assertEqual(results[1]["line"], 3)
        self.assertIn("quote", results[1]["message"])


class KeepsItsWord(InFolder):
    def test_the_sample_orders_are_made(self):
        for arguments in (["orders.jsonl"], ["--from", "orders.csv", "--words-column", "names", "--out", self.folder / "panels"]):
            result = run("batch", *arguments, cwd=ROOT / "data/samples")
            self.assertEqual(result.returncode, 0, result.stderr.decode())
            self.assertEqual([line["format"] for line in results_of(result.stdout)], ["letterlode-puzzle"] * 3)
        for line in (ROOT / "data/samples/orders.jsonl").read_text().splitlines():
            self.assertEqual(schema_test.faults("order", json.loads(line)), [])


class AgreesWithItsSchema(unittest.TestCase):
    def test_every_member_of_a_recipe_can_be_ordered(self):
        source = (ROOT / "cli/batch/order.cpp").read_text()
        listed = set(re.findall(r'"(\w+)"', source[source.index("recipe_members{"):source.index("};", source.index("recipe_members{"))]))
        schema = json.loads((ROOT / "data/schema/recipe.schema.json").read_text())
        self.assertEqual(listed, set(schema["properties"]))


if __name__ == "__main__":
    unittest.main()
