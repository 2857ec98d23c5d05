#!/usr/bin/env python3
"""Runs the yardstick and our own benchmark by turns within the same minute and
prints the ratio of the medians. Run it from anywhere in the repository.

usage: compare.py [rounds]      the interpreter needs numpy and scipy
"""
import datetime
import json
import os
import pathlib
import re
import statistics
import subprocess
import sys
import tempfile

here = pathlib.Path(__file__).resolve().parent
root = here.parent.parent
rounds = int(sys.argv[1]) if len(sys.argv) > 1 else 5


def output(*command):
    return subprocess.run(command, cwd=root, check=True, capture_output=True, text=True).stdout


def benchmarks(binary):
    """Milliseconds by name, one run of each."""
    text = output(binary, "-test.run=^$", "-test.bench=SetA|Ensemble", "-test.benchtime=300ms")
    return {name: float(ns) / 1e6 for name, ns in re.findall(r"Benchmark(\S+?)(?:-\d+)?\s+\d+\s+([\d.]+) ns/op", text)}


with tempfile.TemporaryDirectory() as scratch:
    binary = os.path.join(scratch, "heat.test")
    output("go", "test", "-c", "-o", binary, "./physics/heat")
    theirs, ours = [], {}
    began = datetime.datetime.now()
    for _ in range(rounds):
        run = json.loads(output(sys.executable, str(here / "cure1d.py"), "1"))
        theirs += [1e3 * s for s in run["seconds"]]
        for name, ms in benchmarks(binary).items():
            ours.setdefault(name, []).append(ms)
    took = (datetime.datetime.now() - began).total_seconds()


def row(name, ms):
    print(f"{name:28s} median {statistics.median(ms):8.2f} ms   {min(ms):8.2f} to {max(ms):8.2f}")


print(f"{rounds} rounds by turns within {took:.0f} s; load {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores")
print(f"yardstick: peak {run['peakC']:.3f} C at {run['peakTime']:.0f} s in {run['steps']} steps")
row("scipy BDF, rtol 1e-6", theirs)
for name, ms in ours.items():
    row(name, ms)
for name, ms in ours.items():
    if name.startswith("SetA"):
        print(f"scipy / {name}: {statistics.median(theirs) / statistics.median(ms):.1f}")
