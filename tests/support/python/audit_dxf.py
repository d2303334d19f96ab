"""Reads a DXF file with ezdxf, an independent reader, and prints what its audit and its model space hold as JSON."""
import json
import sys

import ezdxf

drawing = ezdxf.readfile(sys.argv[1])
audit = drawing.audit()
space = drawing.modelspace()
json.dump(
    {
        "errors": [error.message for error in audit.errors],
        "fixes": [fix.message for fix in audit.fixes],
        "version": drawing.dxfversion,
        "units": drawing.header["$INSUNITS"],
        "points": [
            [p.get_xdata("DRYSILL")[0].value, *p.dxf.location] for p in space.query("POINT")
        ],
        "faces": [[list(f.dxf.vtx0), list(f.dxf.vtx1), list(f.dxf.vtx2)] for f in space.query("3DFACE")],
        "polylines": [
            {"layer": p.dxf.layer, "closed": p.is_closed, "corners": [list(v.dxf.location) for v in p.vertices]}
            for p in space.query("POLYLINE")
        ],
        "contours": [
            {"height": p.dxf.elevation, "closed": p.closed, "corners": [[v[0], v[1]] for v in p.get_points()]}
            for p in space.query("LWPOLYLINE")
        ],
    },
    sys.stdout,
)
