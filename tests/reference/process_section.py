#!/usr/bin/env python3
"""How long and thick a vertebra's left superior articular process is, cut level 4 mm under its tip.

usage: process_section.py MESH...
  MESH  of a vertebra in mm; x left, y posterior, z cranial (`downbeam mesh --level L4 --out L4.stl` writes one)
Prints mm: length and thickness of the smallest rectangle around the cut, and how far the tip stands above the posterior rim of the plate.
"""

import sys

import numpy as np
import trimesh
from shapely.geometry import Point
from shapely.ops import polygonize

UNDER_TIP_MM = 4.0


def process_section(mesh):
    """`(length, thickness, tip above the rim)`, mm."""
    x, y, z = mesh.vertices.T
    # The canal's front is the body's posterior wall: the hindmost of the midline within a body's depth of the front.
    wall = y[(np.abs(x) < 3.0) & (y < y.min() + 45.0)].max()
    behind = mesh.vertices[(x > 9.0) & (x < 26.0) & (y > wall + 3.0)]
    tip = behind[np.argmax(behind[:, 2])]
    rim = z[(np.abs(x) < 15.0) & (y < wall + 1.0) & (y > wall - 6.0)].max()
    lines = trimesh.intersections.mesh_plane(mesh, [0.0, 0.0, 1.0], [0.0, 0.0, tip[2] - UNDER_TIP_MM])
    rings = list(polygonize(np.round(lines[:, :, :2], 5)))
    around = min(rings, key=lambda ring: ring.distance(Point(tip[:2]))).minimum_rotated_rectangle
    thickness, length = sorted(np.linalg.norm(np.diff(around.exterior.coords, axis=0), axis=1)[:2])
    return length, thickness, tip[2] - rim


if __name__ == "__main__":
    if len(sys.argv) < 2 or sys.argv[1].startswith("-"):
        sys.exit(__doc__)
    for name in sys.argv[1:]:
        length, thickness, above = process_section(trimesh.load(name, force="mesh"))
        print(f"{name}: {length:.1f} x {thickness:.1f} mm, tip {above:.1f} mm above the rim")
