"""Median time in ms that SciPy's compiled interpolator takes for heights at a raster of places (file: see terrain-work.ts)."""
import statistics
import sys
import time

import numpy as np
from scipy.interpolate import LinearNDInterpolator

data = np.fromfile(sys.argv[1])
points, places = (int(count) for count in data[:2])
x, y, z, asked = np.split(data[2:], np.cumsum([points, points, points]))
heights = LinearNDInterpolator(np.column_stack((x, y)), z)
raster = asked.reshape(places, 2)
heights(raster[:1])
times = []
for _ in range(3):
    start = time.perf_counter()
    heights(raster)
    times.append(1000 * (time.perf_counter() - start))
print(statistics.median(times))
