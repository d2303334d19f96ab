"""Median time in ms that Matplotlib's compiled code takes for the contours of a surface (file: see terrain-work.ts)."""
import statistics
import sys
import time

import numpy as np
from matplotlib import _tri
from matplotlib.tri import Triangulation

data = np.fromfile(sys.argv[1])
points, triangles, levels = (int(count) for count in data[:3])
x, y, z, corners, asked = np.split(data[3:], np.cumsum([points, points, points, 3 * triangles]))
mesh = Triangulation(x, y, corners.astype(np.int32).reshape(-1, 3))
tracer = _tri.TriContourGenerator(mesh.get_cpp_triangulation(), z)
times = []
for _ in range(15):
    start = time.perf_counter()
    for level in asked:
        tracer.create_contour(level)
    times.append(1000 * (time.perf_counter() - start))
print(statistics.median(times))
