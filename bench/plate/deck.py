"""Writes the benchmark panel as an input deck for a general finite-element program (CalculiX): layered shells of 8
nodes on a mesh whose edges lie on the patch's outline.

The panel: 900 x 450 mm, 20 kPa, clamped, six plies of mat and roving, an overlay of four more on the inner face inside
an ellipse of 300 x 200 mm. Units N, m, Pa.
"""
import math

LX, LY, A, B, Q = 0.9, 0.45, 0.15, 0.10, 20e3
MAT = ("MAT", 7.2e9, 7.2e9, 0.33, 7.2e9 / 2.66, 2.2e9, 1.10e-3)
ROVING = ("ROVING", 14.5e9, 14.0e9, 0.15, 3.0e9, 2.2e9, 0.95e-3)
BASE = [MAT, ROVING] * 3
OVERLAY = BASE + [ROVING, MAT] * 2


def mesh(n, inner, outer):
    """Nodes {(block, i, j): (x, y)} at half-element spacing merged by place, and elements [(zone, 8 nodes)]."""
    at, places = [], {}

    def node(x, y):
        key = (round(x * 1e9), round(y * 1e9))
        if key not in places:
            places[key] = len(at)
            at.append((x, y))
        return places[key]

    def perimeter(k):  # of the square |s| <= 1, k from 0 to 8n, corner first
        side, t = divmod(k, 2 * n)
        u = -1 + t / n
        return [(u, -1), (1, u), (-u, 1), (-1, -u)][side % 4]

    core = 0.5

    def box(k):
        s = perimeter(k)
        return core * A * s[0], core * B * s[1]

    def rim(k):
        s = perimeter(k)
        angle = math.atan2(s[1], s[0])
        return A * math.cos(angle), B * math.sin(angle)

    def edge(k):
        s = perimeter(k)
        return LX / 2 * s[0], LY / 2 * s[1]

    def grid(rows, columns, place, zone, elements):
        for i in range(rows):
            for j in range(columns):
                at8 = [(0, 0), (2, 0), (2, 2), (0, 2), (1, 0), (2, 1), (1, 2), (0, 1)]
                nodes = [node(*place(2 * i + a, 2 * j + b)) for a, b in at8]
                p, q, r = (at[nodes[m]] for m in (0, 1, 3))
                if (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]) < 0:
                    nodes = [nodes[m] for m in (0, 3, 2, 1, 7, 6, 5, 4)]
                elements.append((zone, nodes))

    def between(f, g, rows, grading=1.0):
        def place(i, k):
            t = (i / (2 * rows)) ** grading
            a, b = f(k % (8 * n)), g(k % (8 * n))
            return a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])
        return place

    elements = []
    grid(n, n, lambda i, j: (core * A * (-1 + i / n), core * B * (-1 + j / n)), 1, elements)
    grid(inner, 4 * n, between(box, rim, inner), 1, elements)
    grid(outer, 4 * n, between(rim, edge, outer, 1.2), 0, elements)
    return at, elements


def deck(n, inner, outer, large):
    at, elements = mesh(n, inner, outer)
    out = ["*NODE, NSET=ALL"]
    out += ["%d, %.12g, %.12g, 0." % (i + 1, x, y) for i, (x, y) in enumerate(at)]
    number = 0
    for zone in (0, 1):
        out.append("*ELEMENT, TYPE=S8R, ELSET=ZONE%d" % zone)
        for z, nodes in elements:
            if z == zone:
                number += 1
                out.append("%d, %s" % (number, ", ".join(str(i + 1) for i in nodes)))
    out.append("*ORIENTATION, NAME=ALONG\n1., 0., 0., 0., 1., 0.")
    for name, E1, E2, nu, G12, G13, _ in (MAT, ROVING):
        out.append("*MATERIAL, NAME=%s\n*ELASTIC, TYPE=ENGINEERING CONSTANTS" % name)
        out.append("%g, %g, 7e9, %g, 0.001, 0.001, %.10g, %g\n%g, 293." % (E1, E2, nu, G12, G13, G13))
    middle = sum(p[-1] for p in BASE) / 2  # the reference plane, from the outer face
    for zone, stack in ((0, BASE), (1, OVERLAY)):
        thick = sum(p[-1] for p in stack)
        out.append("*SHELL SECTION, ELSET=ZONE%d, COMPOSITE, OFFSET=%.10g" % (zone, (middle - thick / 2) / thick))
        out += ["%.6g, , %s, ALONG" % (p[-1], p[0]) for p in stack]
    edge = [i + 1 for i, (x, y) in enumerate(at) if abs(abs(x) - LX / 2) < 1e-9 or abs(abs(y) - LY / 2) < 1e-9]
    centre = 1 + min(range(len(at)), key=lambda i: at[i][0] ** 2 + at[i][1] ** 2)
    out.append("*NSET, NSET=EDGE\n" + "\n".join("%d," % i for i in edge))
    out.append("*NSET, NSET=CENTRE\n%d," % centre)
    out.append("*BOUNDARY\nEDGE, 1, 6")
    out.append("*STEP%s\n*STATIC%s" % (", NLGEOM" if large else "", "\n0.25, 1." if large else ""))
    out.append("*DLOAD\nZONE0, P, %g\nZONE1, P, %g" % (Q, Q))
    out.append("*NODE PRINT, NSET=CENTRE\nU\n*END STEP\n")
    return "\n".join(out), len(elements)
