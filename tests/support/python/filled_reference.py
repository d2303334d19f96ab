"""
Grids of heights with their hollows filled by scikit-image, for tests/published/water-flow.test.ts.

Run once; its output is kept with the versions that made it:

    python3 -m venv .cache/skimage && .cache/skimage/bin/pip install scikit-image==0.26.0
    .cache/skimage/bin/python tests/support/python/filled_reference.py > tests/published/data/filled.json

Water may leave over the edge: the seed is the ground there and the highest height elsewhere.
"""
import json
import sys

import numpy as np
import scipy
import skimage
from skimage.morphology import reconstruction


def filled(heights):
    seed = np.full_like(heights, heights.max())
    seed[0], seed[-1], seed[:, 0], seed[:, -1] = heights[0], heights[-1], heights[:, 0], heights[:, -1]
    return reconstruction(seed, heights, method="erosion", footprint=np.ones((3, 3)))


def fields():
    random = np.random.default_rng(20261126)
    rough = np.round(random.uniform(0, 5, (32, 41)), 3)
    steps = random.integers(0, 6, (37, 28)).astype(float)
    y, x = np.mgrid[0:40, 0:50] * 0.5
    hills = np.round(3 * np.sin(x / 3) + 2 * np.cos(y / 4) + 0.05 * x + random.uniform(0, 0.2, x.shape), 4)
    return {"rough": rough, "whole steps with many flats": steps, "hills with hollows": hills}


json.dump(
    {
        "madeWith": {
            "python": sys.version.split()[0],
            "numpy": np.__version__,
            "scipy": scipy.__version__,
            "scikit-image": skimage.__version__,
        },
        "fields": [
            {
                "name": name,
                "columns": heights.shape[1],
                "rows": heights.shape[0],
                "heights": heights.ravel().tolist(),
                "filled": filled(heights).ravel().tolist(),
            }
            for name, heights in fields().items()
        ],
    },
    sys.stdout,
)
