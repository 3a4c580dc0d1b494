#!/usr/bin/env python3
"""Points on and around a real bone with their signed distance to it: what examples/fit_bone.rs moves the rows towards.

usage: bone_samples.py MESH SCALE > SAMPLES
  MESH   a vertebra, mm; x left, y posterior with 0 at the middle of the posterior wall, z cranial
  SCALE  times this, to the average's size
Half of the points lie on the surface, half in a band of 3 mm inside to 5 mm outside; x is made positive, since left and right are
mirror images. Needs numpy, trimesh, libigl.
"""
import sys

import igl
import numpy as np
import trimesh

POINTS = 5_000


def main() -> None:
    np.random.seed(1)
    rng = np.random.default_rng(1)
    mesh = trimesh.load(sys.argv[1], force="mesh")
    mesh.apply_scale(float(sys.argv[2]))
    points, faces = trimesh.sample.sample_surface(mesh, 2 * POINTS)
    on, off, normals = points[:POINTS], points[POINTS:], mesh.face_normals[faces[POINTS:]]
    off = off + normals * rng.uniform(-3.0, 5.0, (POINTS, 1)) + rng.normal(0, 0.5, (POINTS, 3))
    near = igl.signed_distance(off, np.asarray(mesh.vertices), np.asarray(mesh.faces))[0]
    rows = np.column_stack([np.vstack([on, off]), np.concatenate([np.zeros(POINTS), np.asarray(near)])])
    rows[:, 0] = np.abs(rows[:, 0])
    np.savetxt(sys.stdout, rows, fmt="%.4f")


if __name__ == "__main__":
    main()
