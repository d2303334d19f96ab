"""
Heights and contours of an open data set as SciPy and Matplotlib work them out, for tests/published/terrain.test.ts.

Run once; its output is kept with the versions that made it:

    npm pack vega-datasets@3.2.1 && tar xzf vega-datasets-3.2.1.tgz package/data/volcano.json
    python3 -m pip install --target PACKAGES scipy==1.17.1 matplotlib==3.11.2
    PYTHONPATH=PACKAGES python3 tests/support/python/terrain_reference.py package/data/volcano.json \
        > tests/published/data/terrain.json

A lattice has many triangulations that are equally good, so places are moved off it at random; the heights stay. What
is asked for lies off the lattice's lines.
"""
import json
import sys

import matplotlib
import numpy as np
import scipy
from matplotlib import _tri
from matplotlib.tri import Triangulation
from scipy.interpolate import LinearNDInterpolator
from scipy.spatial import Delaunay

SPACING = 10.0
POINTS = 600
QUERIES = 160
LEVELS = 12


def length(line):
    return float(np.hypot(*np.diff(line, axis=0).T).sum())


def main(path):
    with open(path, encoding="utf-8") as file:
        volcano = json.load(file)
    columns, rows = volcano["width"], volcano["height"]
    random = np.random.default_rng(20260101)
    cells = np.sort(random.choice(columns * rows, POINTS, replace=False))
    shift = random.uniform(-3, 3, (POINTS, 2))
    x = np.round(SPACING * (cells % columns) + shift[:, 0], 3)
    y = np.round(SPACING * (rows - 1 - cells // columns) + shift[:, 1], 3)
    z = np.array(volcano["values"], dtype=float)[cells]
    surface = Delaunay(np.c_[x, y])
    heights = LinearNDInterpolator(surface, z)
    at = np.round(np.c_[random.uniform(-20, 10 * columns, QUERIES), random.uniform(-20, 10 * rows, QUERIES)], 3)
    found = heights(at)
    levels = [float(v) for v in np.round(np.linspace(z.min(), z.max(), LEVELS + 2)[1:-1], 2) + 0.123]
    tracer = _tri.TriContourGenerator(Triangulation(x, y, surface.simplices).get_cpp_triangulation(), z)
    contours = []
    for level in levels:
        traced = tracer.create_contour(level)
        # Matplotlib 3.8 and later give (lines, kinds).
        lines = traced[0] if isinstance(traced, tuple) else traced
        contours.append({"level": level, "lines": len(lines), "length": sum(map(length, lines))})
    json.dump(
        {
            "madeWith": {
                "python": sys.version.split()[0],
                "numpy": np.__version__,
                "scipy": scipy.__version__,
                "matplotlib": matplotlib.__version__,
                "data": "volcano.json of vega-datasets 3.2.1 (BSD-3-Clause)",
            },
            "triangles": len(surface.simplices),
            "x": x.tolist(),
            "y": y.tolist(),
            "z": z.tolist(),
            "heights": [[*map(float, place), None if np.isnan(h) else float(h)] for place, h in zip(at, found)],
            "contours": contours,
        },
        sys.stdout,
        separators=(",", ":"),
    )
    print()


main(sys.argv[1])
