#!/usr/bin/python3
"""Makes physics/geom/testdata/offsets.json: 200 random outlines and the areas of their offsets.

The areas are an independent computation: GEOS through python3-shapely, round
joins, arcs in 1024 steps a quarter turn (short by less than 1e-6 of an arc's
area). Debian package python3-shapely, so run it with /usr/bin/python3.

    /usr/bin/python3 bench/offsets/outlines.py > physics/geom/testdata/offsets.json

Another number of outlines and another seed may be given, for a longer check:

    /usr/bin/python3 bench/offsets/outlines.py 5000 7 > /tmp/more.json
    go test ./physics/geom -run Recorded -v -outlines /tmp/more.json
"""
import json, math, random, sys
import shapely
from shapely.geometry import Polygon

OFFSETS = [-40, -25, -12, -4, 4, 12, 35, 72, 150]
STEPS = 1024


def star(rnd, size):
    """Sharp corners in and out, 5 to 60 points."""
    n = rnd.randint(5, 60)
    turns = sorted(rnd.uniform(0, 2 * math.pi) for _ in range(n))
    return [(r * math.cos(a), r * math.sin(a)) for a in turns for r in [size / 2 * rnd.uniform(0.25, 1)]]


def blob(rnd, size):
    """A smooth bay-and-cape outline, as damage is traced."""
    n = rnd.randint(24, 110)
    waves = [(k, rnd.uniform(0, 0.3 / k), rnd.uniform(0, 2 * math.pi)) for k in (2, 3, 5, 7)]
    stretch = rnd.uniform(0.5, 1)
    out = []
    for i in range(n):
        a = 2 * math.pi * i / n
        r = size / 2 / 1.3 * (1 + sum(w * math.sin(k * a + f) for k, w, f in waves))
        out.append((r * math.cos(a), stretch * r * math.sin(a)))
    return out


def ell(rnd, size):
    """An L, turned: long straight edges, one inward corner."""
    w, h = size * rnd.uniform(0.4, 1), size * rnd.uniform(0.4, 1)
    x, y = w * rnd.uniform(0.15, 0.8), h * rnd.uniform(0.15, 0.8)
    return [(0, 0), (w, 0), (w, y), (x, y), (x, h), (0, h)]


def dumbbell(rnd, size):
    """Two discs and a neck: splits when shrunk, closes up when grown."""
    r1, r2 = size * rnd.uniform(0.12, 0.25), size * rnd.uniform(0.12, 0.25)
    neck = min(r1, r2) * rnd.uniform(0.1, 0.8)
    far = size - r1 - r2
    a1, a2 = math.asin(neck / r1), math.asin(neck / r2)
    n = rnd.randint(10, 30)
    left = [a1 + (2 * math.pi - 2 * a1) * i / n for i in range(n + 1)]
    right = [math.pi + a2 + (2 * math.pi - 2 * a2) * i / n for i in range(n + 1)]
    return [(r1 * math.cos(a), r1 * math.sin(a)) for a in left] + [(far + r2 * math.cos(a), r2 * math.sin(a)) for a in right]


def hook(rnd, size):
    """A C with a narrow mouth: makes a hole when grown."""
    r, thick, mouth = size / 2, size * rnd.uniform(0.1, 0.25), rnd.uniform(0.1, 0.8)
    n = rnd.randint(12, 40)
    turns = [mouth / 2 + (2 * math.pi - mouth) * i / n for i in range(n + 1)]
    return [(r * math.cos(a), r * math.sin(a)) for a in turns] + [((r - thick) * math.cos(a), (r - thick) * math.sin(a)) for a in reversed(turns)]


def parts(g):
    """The separate polygons of a result."""
    return list(getattr(g, "geoms", [g])) if not g.is_empty else []


def main():
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 200
    rnd = random.Random(int(sys.argv[2]) if len(sys.argv) > 2 else 20261125)
    makers = [star, blob, ell, dumbbell, hook]
    out = []
    while len(out) < count:
        make = makers[len(out) % len(makers)]
        turn = rnd.uniform(0, 2 * math.pi)
        c, s = math.cos(turn), math.sin(turn)
        ring = [(round(c * x - s * y, 2), round(s * x + c * y, 2)) for x, y in make(rnd, rnd.uniform(50, 600))]
        poly = Polygon(ring)
        if not poly.is_valid or poly.area < 100:
            continue
        results = [poly.buffer(d, STEPS) for d in OFFSETS]
        out.append({
            "kind": make.__name__,
            "ring": " ".join("%g,%g" % p for p in ring),
            "areas": [round(g.area, 2) for g in results],
            # Slivers of less than 1 mm2 are not counted: which of them is left
            # depends on how arcs are drawn.
            "parts": [sum(p.area >= 1 for p in parts(g)) for g in results],
            "holes": [sum(Polygon(h).area >= 1 for p in parts(g) for h in p.interiors) for g in results],
        })
    print('{"made_by":"bench/offsets/outlines.py","shapely":"%s","geos":"%s","offsets":%s,"outlines":[' % (shapely.__version__, shapely.geos.geos_version_string, json.dumps(OFFSETS)))
    print(",\n".join(json.dumps(o, separators=(",", ":")) for o in out))
    print("]}")


main()
