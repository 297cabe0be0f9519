"""Reads a DXF file from standard input; writes header, entities and the reader's complaints as JSON, as read-dxf.cjs does."""
import io
import json
import sys

import ezdxf


def point(vector):
    return {"x": vector[0], "y": vector[1]}


def described(entity):
    kind = entity.dxftype()
    described = {"type": kind, "layer": entity.dxf.layer}
    if kind == "LINE":
        described["vertices"] = [point(entity.dxf.start), point(entity.dxf.end)]
    elif kind == "LWPOLYLINE":
        described["vertices"] = [point(vertex) for vertex in entity.get_points("xy")]
        described["shape"] = entity.closed
    elif kind == "TEXT":
        described["text"] = entity.plain_text()
        described["startPoint"] = point(entity.dxf.insert)
    return described


document = ezdxf.read(io.StringIO(sys.stdin.buffer.read().decode("ascii"), newline=None))
auditor = document.audit()
json.dump(
    {
        "header": {"$INSUNITS": document.header["$INSUNITS"]},
        "entities": [described(entity) for entity in document.modelspace()],
        "layers": [layer.dxf.name for layer in document.layers],
        "errors": [error.message for error in auditor.errors + auditor.fixes],
    },
    sys.stdout,
)
