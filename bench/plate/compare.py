#!/usr/bin/env python3
"""Runs a general finite-element program and our own benchmark on the same panel by turns, and prints the ratios of the
medians. Run it from anywhere in the repository.

usage: compare.py [rounds]      needs ccx (Debian: calculix-ccx) and go
"""
import os
import pathlib
import re
import statistics
import subprocess
import sys
import tempfile
import time

here = pathlib.Path(__file__).resolve().parent
root = here.parent.parent
sys.path.insert(0, str(here))
from deck import deck  # noqa: E402

rounds = int(sys.argv[1]) if len(sys.argv) > 1 else 3
CASES = [("linear", False, (6, 4, 15)), ("large", True, (4, 2, 8))]


def theirs(name, folder):
    began = time.perf_counter()
    subprocess.run(["ccx", "-i", name], cwd=folder, check=True, capture_output=True, timeout=300)
    took = time.perf_counter() - began
    lines = [x.split() for x in open(os.path.join(folder, name + ".dat")) if x.strip() and x.split()[0].isdigit()]
    return 1e3 * took, 1e3 * abs(float(lines[-1][3]))


def ours(binary):
    text = subprocess.run([binary, "-test.run=^$", "-test.bench=^Benchmark(Linear|Large)Overlay", "-test.benchtime=5x"],
                          cwd=root, check=True, capture_output=True, text=True).stdout
    return {k: float(ns) / 1e6 for k, ns in re.findall(r"Benchmark(\w+?)(?:-\d+)?\s+\d+\s+([\d.]+) ns/op", text)}


with tempfile.TemporaryDirectory() as scratch:
    binary = os.path.join(scratch, "panel.test")
    subprocess.run(["go", "test", "-c", "-o", binary, "./physics/panel"], cwd=root, check=True)
    size, middle = {}, {}
    for name, large, (n, inner, outer) in CASES:
        text, size[name] = deck(n, inner, outer, large)
        pathlib.Path(scratch, name + ".inp").write_text(text)
    his, mine = {}, {}
    began = time.time()
    for _ in range(rounds):
        for name, _, _ in CASES:
            ms, middle[name] = theirs(name, scratch)
            his.setdefault(name, []).append(ms)
        for name, ms in ours(binary).items():
            mine.setdefault(name, []).append(ms)
    print(f"{rounds} rounds by turns within {time.time() - began:.0f} s; load {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores")


def row(name, ms, note=""):
    print(f"{name:34s} median {statistics.median(ms):8.1f} ms   {min(ms):8.1f} to {max(ms):8.1f}   {note}")


for name, ms in his.items():
    row(f"ccx, {name}, {size[name]} elements", ms, f"{middle[name]:.4f} mm in the middle")
for name, ms in mine.items():
    row(name, ms)
for name, ms in mine.items():
    kind = "linear" if name.startswith("Linear") else "large"
    print(f"ccx / {name}: {statistics.median(his[kind]) / statistics.median(ms):.1f}")
