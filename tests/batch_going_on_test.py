#!/usr/bin/python3
"""Many orders, interrupted, gone on, changed meanwhile: nothing that was done is lost, and nothing is done for another."""
import json
import pathlib
import re
import resource
import signal
import subprocess
import time
import unittest

from batch_orders import order, results_of
from program import InFolder, PROGRAM, run


class GoesOn(InFolder):
    def orders(self, count):
        return self.write("orders.jsonl", "".join(order(seed=seed) + ("\n\n" if seed % 50 == 0 else "\n") for seed in range(count)))

    def whole(self, orders):
        return run("batch", orders, cwd=self.folder).stdout

    def test_what_was_written_is_not_done_again(self):
        orders = self.orders(200)
        whole = self.whole(orders)
        lines = whole.splitlines(keepends=True)
        for kept in (b"", b"".join(lines[:7]), b"".join(lines[:7]) + lines[7][:40], b"".join(lines[:7]) + lines[7][:-1], whole):
            self.write("results.jsonl", kept)
            result = run("batch", orders, "--results", "results.jsonl", "--resume", cwd=self.folder)
            self.assertEqual(result.returncode, 0, result.stderr.decode())
            self.assertEqual((self.folder / "results.jsonl").read_bytes(), whole)
            self.assertEqual(b"torn" in result.stderr, not kept.endswith(b"\n") and kept != b"", result.stderr)
        # Results that came in any order are known by their numbers.
        self.write("results.jsonl", b"".join(lines[150:] + lines[:20]))
        self.assertEqual(run("batch", orders, "--results", "results.jsonl", "--resume", cwd=self.folder).returncode, 0)
        self.assertEqual(sorted((self.folder / "results.jsonl").read_bytes().splitlines(keepends=True)), sorted(lines))

    def test_a_file_of_anything_else_is_left_alone(self):
        orders = self.orders(3)
        self.write("results.jsonl", "my notes\n")
        self.refused(2, "batch", orders, "--results", "results.jsonl", says=["exists already", "--resume"])
        self.refused(2, "batch", orders, "--results", "results.jsonl", "--resume", says=["line 1", "no result"])
        self.assertEqual((self.folder / "results.jsonl").read_text(), "my notes\n")

    def test_other_orders_are_not_taken_for_those_that_are_done(self):
        orders = self.orders(300)
        whole = self.whole(orders)
        lines = orders.read_text().splitlines(keepends=True)
        for at, change in ((0, "new order"), (170, "mended"), (301, "mended")):
            changed = [order(seed=999) + "\n", *lines] if change == "new order" else \
                [*lines[:at], lines[at].replace("Sage", "Dill"), *lines[at + 1:]]
            self.assertNotEqual(changed, lines)
            self.write("changed.jsonl", "".join(changed))
            self.write("results.jsonl", whole)
            result = run("batch", "changed.jsonl", "--results", "results.jsonl", "--resume", cwd=self.folder)
            self.assertEqual(result.returncode, 2)
            self.assertIn(f"letterlode: order {at + 1} is another than the one whose result stands in 'results.jsonl'", result.stderr.decode())
            self.assertTrue((self.folder / "results.jsonl").read_bytes().startswith(whole))
        # Fewer orders than results, and others behind them, are none of that.
        self.write("results.jsonl", whole)
        self.write("fewer.jsonl", "".join(lines[:100]))
        self.assertEqual(run("batch", "fewer.jsonl", "--results", "results.jsonl", "--resume", cwd=self.folder).returncode, 0)
        self.write("more.jsonl", "".join(lines) + order(seed=7) + "\n")
        self.assertEqual(run("batch", "more.jsonl", "--results", "results.jsonl", "--resume", cwd=self.folder).returncode, 0)
        self.assertEqual((self.folder / "results.jsonl").read_bytes().count(b"\n"), 301)

    def test_refused_orders_are_made_once_they_are_mended(self):
        lines = [order(seed=1), order(grid="2x2", name="Plot 4"), order(seed=3), "nonsense"]
        orders = self.write("orders.jsonl", "\n".join(lines) + "\n")
        call = ["batch", orders, "--results", "results.jsonl"]
        self.assertEqual(run(*call, cwd=self.folder).returncode, 1)
        made = self.folder / "results.jsonl"
        kept = [line for line in made.read_bytes().splitlines(keepends=True) if b"refusal" not in line]
        orders.write_text("\n".join([lines[0], order(name="Plot 4"), lines[2], "nonsense"]) + "\n")
        gone_on = run(*call, "--resume", cwd=self.folder)
        self.assertEqual(gone_on.returncode, 2)
        self.assertRegex(gone_on.stderr.decode(), "order 2 is another[^\0]*--refused-again")
        self.refused(2, *call, "--refused-again", says=["--resume"])
        again = run(*call, "--resume", "--refused-again", cwd=self.folder)
        self.assertEqual(again.returncode, 1)
        self.assertIn("2 orders done: 1 made, 1 refused; 2 before.", again.stderr.decode())
        now = made.read_bytes().splitlines(keepends=True)
        self.assertEqual(now[:2], kept)
        self.assertEqual([json.loads(line)["order"] for line in now], [1, 3, 2, 4])
        self.assertEqual(self.names(), ["orders.jsonl", "results.jsonl"])

    def test_a_file_without_a_line_end_is_not_taken_for_a_torn_result(self):
        for text in ("Thyme, Sage, my only copy", order()):
            self.write("precious.txt", text)
            self.write("orders.jsonl", order() + "\n")
            self.refused(2, "batch", "orders.jsonl", "--results", "precious.txt", "--resume", says=["line 1", "no result"])
            self.assertEqual((self.folder / "precious.txt").read_text(), text)
        self.refused(2, "batch", "orders.jsonl", "--results", "/dev/full", "--resume", says=["/dev/full"])

    def test_a_fault_of_the_program_is_done_again(self):
        orders = self.write("orders.jsonl", order(seed=1) + "\n" + order(seed=2) + "\n")
        whole = self.whole(orders).splitlines(keepends=True)
        fault = re.sub(b'"format".*', b'"format":"letterlode-fault","version":1,"message":"A fault of letterlode: memory ran out"}', whole[0])
        self.write("results.jsonl", fault + whole[1])
        self.assertEqual(results_of(fault)[0]["format"], "letterlode-fault")
        self.assertEqual(run("batch", orders, "--results", "results.jsonl", "--resume", cwd=self.folder).returncode, 0)
        self.assertEqual((self.folder / "results.jsonl").read_bytes(), whole[1] + whole[0])

    def test_a_closed_terminal_is_an_interrupt_but_for_who_outlives_it(self):
        for outlives in (False, True):
            with subprocess.Popen((["nohup"] if outlives else []) + [PROGRAM, "batch"], stdin=subprocess.PIPE, stdout=subprocess.PIPE,
                                  stderr=subprocess.DEVNULL) as program:
                program.stdin.write((order() + "\n").encode())
                program.stdin.flush()
                self.assertTrue(program.stdout.readline())
                program.send_signal(signal.SIGHUP)
                if outlives:
                    program.stdin.write((order() + "\n").encode())
                    program.stdin.flush()
                    self.assertTrue(program.stdout.readline())
                    program.stdin.close()
                self.assertEqual(program.wait(), 0 if outlives else 130)

    def test_two_runs_do_not_write_to_one_file(self):
        with subprocess.Popen([PROGRAM, "batch", "--results", "results.jsonl"], cwd=self.folder, stdin=subprocess.PIPE,
                              stderr=subprocess.DEVNULL) as first:
            while not (self.folder / "results.jsonl").exists():
                time.sleep(0.001)
            first.stdin.write((order() + "\n").encode())
            first.stdin.flush()
            while not (self.folder / "results.jsonl").read_bytes():
                time.sleep(0.001)
            self.refused(2, "batch", "--results", "results.jsonl", "--resume", says=["another run"])
            first.stdin.close()
            self.assertEqual(first.wait(), 0)

    def test_a_file_that_cannot_grow_says_how_to_go_on(self):
        orders = self.orders(100)
        whole = self.whole(orders)
        call = ["batch", orders, "--results", "results.jsonl"]
        full = run(*call, cwd=self.folder, preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (20_000, 20_000)))
        self.assertEqual(full.returncode, 3)
        self.assertRegex(full.stderr.decode(), "cannot write to 'results.jsonl'[^\0]*--resume")
        self.assertTrue(whole.startswith((self.folder / "results.jsonl").read_bytes()))
        self.assertEqual(run(*call, "--resume", cwd=self.folder).returncode, 0)
        self.assertEqual((self.folder / "results.jsonl").read_bytes(), whole)

    def test_a_folder_without_a_name_leaves_nothing(self):
        self.refused(2, "batch", "--out", "", "--results", "results.jsonl", says=["--out"])
        self.assertEqual(self.names(), [])

    def test_an_empty_folder_is_as_good_as_none(self):
        (self.folder / "beds").mkdir()
        self.assertEqual(run("batch", "--out", "beds", stdin=(order() + "\n").encode(), cwd=self.folder).returncode, 0)
        self.assertEqual(len(list((self.folder / "beds").iterdir())), 1)

    def test_refusals_count_after_going_on_too(self):
        orders = self.write("orders.jsonl", order() + "\nnonsense\n" + order(seed=2) + "\n")
        self.assertEqual(run("batch", orders, "--results", "results.jsonl", cwd=self.folder).returncode, 1)
        self.assertEqual(run("batch", orders, "--results", "results.jsonl", "--resume", cwd=self.folder).returncode, 1)

    def test_killed_and_interrupted_it_goes_on_to_the_same_bytes(self):
        orders = self.orders(20_000)
        whole = self.whole(orders)
        results = self.folder / "results.jsonl"
        for how in (signal.SIGKILL, signal.SIGINT, signal.SIGTERM):
            begun = results.stat().st_size if results.exists() else 0
            program = subprocess.Popen([PROGRAM, "batch", orders, "--results", results, "--resume"], cwd=self.folder,
                                       stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
            while program.poll() is None and (results.stat().st_size if results.exists() else 0) < begun + 300_000:
                time.sleep(0.001)
            program.send_signal(how)
            said = program.communicate()[1].decode()
            self.assertEqual(program.returncode, -9 if how == signal.SIGKILL else 130, said)
            self.assertLess(results.stat().st_size, len(whole))
            if how != signal.SIGKILL:
                self.assertIn("--resume", said)
                self.assertTrue(whole.startswith(results.read_bytes()), "an interrupt tore a line")
        done = run("batch", orders, "--results", results, "--resume", cwd=self.folder)
        self.assertEqual(done.returncode, 0, done.stderr.decode())
        self.assertEqual(results.read_bytes(), whole)

    def test_folders_that_an_earlier_run_left_are_done_again(self):
        orders = self.write("orders.jsonl", order(seed=1) + "\n" + order(seed=2) + "\n")
        first = ["batch", orders, "--out", "beds", "--results", "results.jsonl"]
        self.assertEqual(run(*first, cwd=self.folder).returncode, 0)
        lines = (self.folder / "results.jsonl").read_bytes()
        # The program ended between a folder and its line.
        self.write("results.jsonl", lines.splitlines(keepends=True)[0])
        (self.folder / "beds/000002/puzzle.json").write_text("old")
        # Killed in the midst of one, it left a part of it; that of another order is another's.
        for part in (".000002.17.part", ".000003.17.part"):
            (self.folder / "beds" / part).mkdir()
            (self.folder / "beds" / part / "key.txt").write_text("old")
        again = run(*first, "--resume", cwd=self.folder)
        self.assertEqual(again.returncode, 0, again.stderr.decode())
        self.assertEqual((self.folder / "results.jsonl").read_bytes(), lines)
        self.assertNotEqual((self.folder / "beds/000002/puzzle.json").read_text(), "old")
        self.assertEqual(sorted(path.name for path in (self.folder / "beds").iterdir()), [".000003.17.part", "000001", "000002"])

    def test_an_order_that_comes_alone_is_answered_before_the_next(self):
        with subprocess.Popen([PROGRAM, "batch"], stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL) as program:
            for seed in (1, 2, 3):
                program.stdin.write((order(seed=seed) + "\n").encode())
                program.stdin.flush()
                self.assertEqual(json.loads(program.stdout.readline())["recipe"]["seed"], seed)
            program.send_signal(signal.SIGINT)
            self.assertEqual(program.wait(), 130)

    def test_memory_does_not_grow_with_the_input(self):
        def peak(count):
            with subprocess.Popen([PROGRAM, "batch", "--threads", "2"], stdin=subprocess.PIPE, stdout=subprocess.DEVNULL,
                                  stderr=subprocess.DEVNULL) as program:
                program.stdin.write("".join(order(seed=seed) + "\n" for seed in range(count)).encode())
                program.stdin.flush()
                status = pathlib.Path(f"/proc/{program.pid}/status").read_text()
                program.stdin.close()
                self.assertEqual(program.wait(), 0)
            return int(re.search(r"VmHWM:\s+(\d+) kB", status)[1])
        few, many = peak(2_000), peak(20_000)
        if "checked" not in PROGRAM:  # a sanitizer keeps what was freed
            self.assertLess(many, few * 1.25)
            self.assertLess(many, 100_000)


if __name__ == "__main__":
    unittest.main()
