#!/usr/bin/env python3
"""How far one of our bones is from another mesh of the same bone, after the best turn, shift and one uniform scale.

usage: bone_distance.py OURS OTHER [--box X0 X1 Y0 Y1 Z0 Z1]
  OURS   as `downbeam mesh --level S1 --out S1.stl` writes it (mm; x left, y posterior, z cranial)
  OTHER  a mesh in the same axes, in any frame that is turned by less than 45 degrees in the sagittal plane
  --box  measure only what lies in this box of OTHER's frame, mm: what a lumbar film shows of a sacrum or an iliac wing
Prints mm: mean, 95th percentile and worst of the two-way surface distance, the same one way each, and the scale that was needed.
"""

import argparse

import numpy as np
import trimesh
from scipy.spatial import cKDTree

POINTS = 20_000  # Samples a surface; the spread of the mean between seeds is 0.01 mm.
EVERYWHERE = np.array([[-1e9, 1e9]] * 3)


def within(points, box):
    return np.all((points >= box[:, 0]) & (points <= box[:, 1]), axis=1)


def cropped(mesh, box):
    return mesh.submesh([np.flatnonzero(within(mesh.triangles_center, box))], append=True)


def turned(degrees):
    return trimesh.transformations.rotation_matrix(np.radians(degrees), [1, 0, 0])


def closest(ours, other, box, rounds, scaled, start, seed):
    """Iterated closest points from `start`, both ways, so that a scale cannot shrink the one into a corner of the other; the worst tenth
    of the pairs is left out. Gives the motion, and the mean distance of the pairs that were kept."""
    points, target = ours.sample(6_000, seed=seed), other.sample(30_000, seed=seed)
    held = target[within(target, box)]
    held = held[:: max(1, len(held) // 3_000)]
    tree, total, mean = cKDTree(target), start, np.inf
    for _ in range(rounds):
        moved = trimesh.transform_points(points, total)
        mine = moved[within(moved, box)]
        there, near = tree.query(mine)
        back, own = cKDTree(moved).query(held)
        pairs = np.concatenate([mine, moved[own]]), np.concatenate([target[near], held])
        distance = np.concatenate([there, back])
        kept = distance <= np.quantile(distance, 0.9)
        mean = distance[kept].mean()
        step, _, _ = trimesh.registration.procrustes(pairs[0][kept], pairs[1][kept], reflection=False, scale=scaled)
        total = step @ total
    return total, mean


def aligned(ours, other, box=EVERYWHERE, scaled=True, seed=0):
    """Our mesh moved onto the other one, so that what lies in the box fits best; and the scale."""
    starts = []
    for degrees in (-30.0, 0.0, 30.0):
        start = turned(degrees)
        bounds = ours.copy().apply_transform(start).bounds, other.bounds
        # The middles above each other, the tops level: below, the one may reach further than the other.
        here, there = (np.append(b.mean(axis=0)[:2], b[1][2]) for b in bounds)
        start[:3, 3] += there - here
        starts.append(closest(ours, other, box, 20, False, start, seed))
    total, _ = min(starts, key=lambda found: found[1])
    total, _ = closest(ours, other, box, 40, scaled, total, seed)
    return ours.copy().apply_transform(total), float(np.cbrt(np.linalg.det(total[:3, :3])))


def distances(ours, other, box=EVERYWHERE, seed=0):
    """Distances of ours to the other surface and of the other to ours, of samples within the box, mm."""
    points = [cropped(mesh, box).sample(POINTS, seed=seed) for mesh in (ours, other)]
    surface = [cKDTree(mesh.sample(8 * POINTS, seed=seed + 1)) for mesh in (ours, other)]
    return surface[1].query(points[0])[0], surface[0].query(points[1])[0]


def figures(distance):
    return f"mean {distance.mean():.2f}  95th {np.quantile(distance, 0.95):.2f}  worst {distance.max():.2f}"


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("ours")
    parser.add_argument("other")
    parser.add_argument("--box", type=float, nargs=6)
    args = parser.parse_args()
    box = np.array(args.box).reshape(3, 2) if args.box else EVERYWHERE
    ours, other = (trimesh.load(path, force="mesh") for path in (args.ours, args.other))
    moved, scale = aligned(ours, other, box)
    there, back = distances(moved, other, box)
    print(f"both    {figures(np.concatenate([there, back]))}")
    print(f"ours    {figures(there)}")
    print(f"other   {figures(back)}")
    print(f"scale   {scale:.3f}")


if __name__ == "__main__":
    main()
