"""Makes the GeoTIFF files of this folder, all of one ground, with an independent writer (rasterio, which is GDAL):

    pip install rasterio numpy && python make.py

Height at row r, column c: 100 + c/4 - r/8, whole eighths, so that every form holds it exactly; -9999 at row 2, column 3.
"""

import numpy as np
import rasterio
from rasterio.transform import Affine, from_origin

ROWS, COLUMNS = 40, 50
r, c = np.mgrid[0:ROWS, 0:COLUMNS]
ground = (100 + c / 4 - r / 8).astype("float64")
ground[2, 3] = -9999
corner = from_origin(500000, 4600000, 0.5, 0.5)


def write(name, dtype="float32", data=ground, scales=None, unit=None, **how):
    form = {"crs": "EPSG:32618", "transform": corner, "nodata": -9999, "count": 1, **how}
    with rasterio.open(name + ".tif", "w", driver="GTiff", width=COLUMNS, height=ROWS, dtype=dtype, **form) as file:
        for band in range(1, form["count"] + 1):
            file.write((data + (band - 1) * 1000).astype(dtype), band)
        if scales:
            file.scales, file.offsets = (scales[0],), (scales[1],)
        if unit:
            file.units = (unit,)


tiled = {"tiled": True, "blockxsize": 16, "blockysize": 16}
write("strips")
write("lzw-predictor-2-int32", "int32", data=np.where(ground == -9999, -9999, ground * 8), compress="lzw", predictor=2,
      scales=(0.125, 0))
write("tiles-deflate-predictor-3", compress="deflate", predictor=3, **tiled)
write("tiles-lzw-predictor-3", compress="lzw", predictor=3, **tiled)
write("tiles-float64-deflate", "float64", compress="deflate", **tiled)
write("packbits", compress="packbits")
write("zstandard", compress="zstd")
write("big-endian-tiles", ENDIANNESS="BIG", compress="deflate", **tiled)
write("bigtiff", BIGTIFF="YES", compress="deflate")
write("three-bands", count=3, compress="deflate", interleave="pixel")
write("scaled", "int16", data=np.where(ground == -9999, -9999, ground * 8 - 400), scales=(0.125, 50), compress="deflate")
write("heights-in-us-feet", crs="EPSG:32618+6360", compress="deflate")
write("heights-in-feet-by-band", unit="ft", compress="deflate")
write("big-endian-predictor-3", ENDIANNESS="BIG", compress="deflate", predictor=3)
write("float64-predictor-2", "float64", compress="deflate", predictor=2)
write("turned", transform=Affine(0.5, 0.1, 0, 0.1, -0.5, 0), compress="deflate")
write("coloured", "uint8", data=np.clip(ground, 0, 99), count=3, nodata=None, photometric="RGB", compress="deflate")
print(rasterio.__version__, rasterio.__gdal_version__)
