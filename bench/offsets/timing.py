#!/usr/bin/python3
"""Times 12 offsets of a 200-vertex outline in shapely and in physics/geom, in turn.

    /usr/bin/python3 bench/offsets/timing.py

Both run one after the other, several rounds in the same minute, each on one
core; what is compared is the least time of each, which other load on the
machine disturbs least. Needs python3-shapely and go.
"""
import math, os, re, subprocess, sys, tempfile, time
import shapely
from shapely.geometry import Polygon

ROUNDS, RUNS = 7, 60


def blob():
    """The outline of BenchmarkTwelveOffsets."""
    out = []
    for i in range(200):
        a = 2 * math.pi * i / 200
        r = 150 + 35 * math.sin(3 * a + 0.4) + 14 * math.sin(7 * a + 1.1) + 5 * math.sin(19 * a)
        out.append((1.35 * r * math.cos(a), r * math.sin(a)))
    return Polygon(out)


def in_shapely(poly, offsets):
    """Least and median ms for all offsets; 16 steps a quarter turn is its default."""
    ts = []
    for _ in range(RUNS):
        t = time.perf_counter()
        for d in offsets:
            poly.buffer(d, 16)
        ts.append((time.perf_counter() - t) * 1e3)
    return ts


def main():
    poly = blob()
    root = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
    with tempfile.TemporaryDirectory() as tmp:
        test = os.path.join(tmp, "geom.test")
        subprocess.run(["go", "test", "-c", "-o", test, "./physics/geom"], cwd=root, check=True)
        times = {}
        for _ in range(ROUNDS):
            times.setdefault("shapely out", []).extend(in_shapely(poly, [12 * k for k in range(1, 13)]))
            times.setdefault("shapely in", []).extend(in_shapely(poly, [-4 * k for k in range(1, 13)]))
            run = subprocess.run(
                [test, "-test.run=NONE", "-test.bench=TwelveOffsets/", "-test.benchtime=20x", "-test.count=4"],
                cwd=tmp, check=True, capture_output=True, text=True, env=dict(os.environ, GOMAXPROCS="1"))
            for name, ns in re.findall(r"^BenchmarkTwelveOffsets/(\S+)\s+\d+\s+(\d+) ns/op", run.stdout, re.M):
                times.setdefault("geom " + name, []).append(float(ns) / 1e6)
    for name, ts in times.items():
        ts.sort()
        print("%-20s least %.3f ms, median %.3f ms for 12" % (name, ts[0], ts[len(ts) // 2]))
    for way in ("out", "in"):
        s, g = times["shapely " + way], times["geom blob_" + way]
        print("%s: shapely / geom = %.2f (least), %.2f (median)" % (way, s[0] / g[0], s[len(s) // 2] / g[len(g) // 2]))
    print("shapely", shapely.__version__, "geos", shapely.geos.geos_version_string)


main()
