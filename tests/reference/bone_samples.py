#!/usr/bin/env python3
"""Points on and around a real bone with their signed distance to it: what examples/fit_bone.rs moves the rows towards.

usage: bone_samples.py MESH SCALE > SAMPLES
  MESH   a vertebra, mm; x left, y posterior with 0 at the middle of the posterior wall, z cranial
  SCALE  times this, to the average's size
Points lie on the surface, in a band of 3 mm inside to 5 mm outside, and up to 16 mm outside, where no bone of ours may be; x is made
positive, since left and right are mirror images. Needs numpy, trimesh, libigl.
"""
import sys

import igl
import numpy as np
import trimesh

POINTS, FAR = 5_000, 2_500


def main() -> None:
    np.random.seed(1)
    rng = np.random.default_rng(1)
    mesh = trimesh.load(sys.argv[1], force="mesh")
    mesh.apply_scale(float(sys.argv[2]))
    points, faces = trimesh.sample.sample_surface(mesh, 2 * POINTS + FAR)
    out = np.concatenate([np.zeros(POINTS), rng.uniform(-3.0, 5.0, POINTS), rng.uniform(4.0, 16.0, FAR)])
    rows = np.column_stack([points + mesh.face_normals[faces] * out[:, None], out])
    off = rows[POINTS:]
    off[:, :3] += rng.normal(0, 0.5, (len(off), 3))
    off[:, 3] = igl.signed_distance(off[:, :3], np.asarray(mesh.vertices), np.asarray(mesh.faces))[0]
    rows[:, 0] = np.abs(rows[:, 0])
    np.savetxt(sys.stdout, rows, fmt="%.4f")


if __name__ == "__main__":
    main()
