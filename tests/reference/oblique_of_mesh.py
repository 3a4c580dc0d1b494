#!/usr/bin/env python3
"""The best oblique of a pair of real vertebrae, by our criterion, measured on their meshes.

usage: oblique_of_mesh.py DOWNBEAM UPPER=MESH.ply LOWER=MESH.ply [--own]     such as  L3=a.ply L4=b.ply

Run by hand: no mesh of a real bone is in the project. Each mesh (mm, x left, y posterior, z cranial) is laid on our bone of that level where our
prone average has it, by turn, shift and one scale (trimmed ICP); then, with the upper plate squared, the oblique is looked for at
which the superior process of the lower bone stands under the pedicle of the upper one: by the middle of its outline 3 mm
under its top, and by its highest point. The pedicle is measured where its section is smallest. --own does the same with our own meshes in
their place, which must give what `downbeam view --best` says.
"""
import argparse
import json
import subprocess
import tempfile

import numpy as np
import trimesh
from scipy.spatial import cKDTree

SOD, SID = 700.0, 1100.0
AXIAL = {"L1": 11, "L2": 13, "L3": 14, "L4": 17, "L5": 28}  # pedicle axes, degrees: as `anatomy::dimensions`


def run(program, *args):
    return subprocess.run([program, *args], check=True, capture_output=True, text=True).stdout


def posed(program, level, centre):
    """Our mesh of a level in the column."""
    with tempfile.NamedTemporaryFile(suffix=".stl") as file:
        run(program, "mesh", "--level", level, "--force", "--out", file.name)
        mesh = trimesh.load(file.name, force="mesh")
    mesh.apply_translation(centre)
    return mesh


def laid_on(real, ours, rounds=80):
    """The motion that lays the real mesh onto ours."""
    np.random.seed(0)
    a, b = real.sample(4_000), ours.sample(16_000)
    start = np.eye(4)
    start[:3, 3] = b.mean(axis=0) - a.mean(axis=0)
    a, total, tree = a + start[:3, 3], start, cKDTree(b)
    for _ in range(rounds):
        distance, index = tree.query(a)
        near = distance <= np.quantile(distance, 0.9)
        step, _, _ = trimesh.registration.procrustes(a[near], b[index[near]], reflection=False, scale=True)
        a, total = trimesh.transform_points(a, step), step @ total
    return total


class Marks:
    """Our landmarks in the frame of the upper level."""

    def __init__(self, program, level):
        self.list = json.loads(run(program, "view", "--level", level, "--side", "left", "--json"))["landmarks"]

    def __call__(self, name, level, side=None):
        return np.array(next(m["patient_mm"] for m in self.list if (m["name"], m["level"], m["side"]) == (name, level, side)))

    def frame(self, level):
        """Left, back, up of the upper plate."""
        back = self("upper_plate_back", level) - self("upper_plate_front", level)
        back /= np.linalg.norm(back)
        left = self("pedicle_centre", level, "left") - self("pedicle_centre", level, "right")
        left -= back * left.dot(back)
        left /= np.linalg.norm(left)
        return left, back, np.cross(left, back)


def around(mesh, origin, normal, x, z, rays=96):
    """Nearest wall of a section in every direction from `origin`, as points [x, z]."""
    lines = trimesh.intersections.mesh_plane(mesh, normal, origin) - origin
    a = np.stack([lines[:, 0] @ x, lines[:, 0] @ z], axis=1)
    ab = np.stack([lines[:, 1] @ x, lines[:, 1] @ z], axis=1) - a
    walls = []
    for angle in np.arange(rays) * 2 * np.pi / rays:
        ray = np.array([np.cos(angle), np.sin(angle)])
        cross = ray[0] * ab[:, 1] - ray[1] * ab[:, 0]
        with np.errstate(divide="ignore", invalid="ignore"):
            reach = (a[:, 0] * ab[:, 1] - a[:, 1] * ab[:, 0]) / cross
            share = (a[:, 0] * ray[1] - a[:, 1] * ray[0]) / cross
        hit = reach[(share >= 0) & (share <= 1) & (reach > 0)]
        walls.append(ray * (hit.min() if len(hit) else 99.0))
    return np.array(walls)


def isthmus(mesh, centre, frame, level):
    """Area, centre, half axis across and height of the pedicle where its section is smallest."""
    left, back, up = frame
    s, c = np.sin(np.radians(AXIAL[level])), np.cos(np.radians(AXIAL[level]))
    axis, across = left * s + back * c, left * c - back * s
    best = None
    for t in np.arange(-6, 6.1, 0.5):
        origin = centre + axis * t
        for _ in range(3):
            wall = around(mesh, origin, axis, across, up)
            low, high = wall.min(axis=0), wall.max(axis=0)
            origin = origin + across * (low + high)[0] / 2 + up * (low + high)[1] / 2
        turned = np.roll(wall, -1, axis=0)
        area = 0.5 * abs(np.sum(wall[:, 0] * turned[:, 1] - turned[:, 0] * wall[:, 1]))
        if best is None or area < best[0]:
            best = area, origin, across * (high - low)[0] / 2, (high - low)[1]
    return best


class Beam:
    """The cone beam, as `imaging::projection` describes it; isocentre at the origin."""

    def __init__(self, oblique, tilt):
        o, t = np.radians(oblique), np.radians(tilt)
        self.d = np.array([np.sin(o) * np.cos(t), np.cos(o) * np.cos(t), np.sin(t)])
        self.right = np.cross(-self.d, [0, 0, 1])
        self.right /= np.linalg.norm(self.right)
        self.up = np.cross(self.right, -self.d)

    def __call__(self, p):
        p = np.atleast_2d(p)
        return np.stack([p @ self.right, p @ self.up], axis=1) * (SID / (SOD + p @ self.d))[:, None]

    def ray(self, p):
        r = p + self.d * SOD
        return r / np.linalg.norm(r)


def squared_tilt(oblique, centre, normal):
    low, high = -50.0, 50.0
    for _ in range(50):
        mid = (low + high) / 2
        low, high = (mid, high) if Beam(oblique, mid).ray(centre).dot(normal) < 0 else (low, mid)
    return (low + high) / 2


def offset(oblique, plate, pedicle, process, by):
    """Percent of the pedicle's width, > 0 to the left, and the outline's width at the patient, mm."""
    centre, normal, left = plate
    beam = Beam(oblique, squared_tilt(oblique, centre, normal))
    l, r = beam(centre + left * 20)[0], beam(centre - left * 20)[0]
    l = (l - r) / np.linalg.norm(l - r)
    c = beam(centre + normal * 10)[0] - beam(centre)[0]
    c /= np.linalg.norm(c)
    axes = np.linalg.inv(np.stack([l, c], axis=1))
    middle, across = pedicle
    width = abs(axes @ (beam(middle + across)[0] - beam(middle - across)[0]))[0]
    at = (axes @ beam(process.vertices).T).T
    if by != "tip":
        line = at[:, 1].max() - 3.0 * SID / SOD
        ends = at[process.edges_unique]
        over = ends[:, :, 1] > line
        ends = ends[over[:, 0] != over[:, 1]]
        share = (line - ends[:, 0, 1]) / (ends[:, 1, 1] - ends[:, 0, 1])
        x = ends[:, 0, 0] + share * (ends[:, 1, 0] - ends[:, 0, 0])
        seen = (x.min() + x.max()) / 2 if by == "outline" else x.max()
        wide = (x.max() - x.min()) * SOD / SID
    else:
        tip = process.vertices[np.argmax(process.vertices @ normal)]
        seen, wide = (axes @ beam(tip)[0])[0], 0.0
    return 100 * (seen - (axes @ beam(middle)[0])[0]) / width, wide


def solve(f):
    angles = np.arange(-15.0, 61.0, 1.0)
    values = np.array([f(a)[0] for a in angles])
    i = np.flatnonzero((values[:-1] > 0) != (values[1:] > 0))
    if len(i) == 0:
        return float("nan")
    i = i[0]
    return angles[i] + values[i] / (values[i] - values[i + 1])


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("downbeam")
    parser.add_argument("bones", nargs=2)
    parser.add_argument("--own", action="store_true")
    args = parser.parse_args()
    (upper, upper_file), (lower, lower_file) = (bone.split("=") for bone in args.bones)
    marks = Marks(args.downbeam, upper)
    meshes, scales = {}, {}
    for level, file in ((upper, upper_file), (lower, lower_file)):
        ours = posed(args.downbeam, level, marks("body_centre", level))
        if args.own:
            meshes[level], scales[level] = ours, 1.0
            continue
        real = trimesh.load(file, force="mesh")
        # A sacrum comes in the frame of its own fifth lumbar vertebra and keeps its place under it.
        motion = motion if level == "S1" else laid_on(real, ours)
        meshes[level], scales[level] = real.apply_transform(motion), float(np.cbrt(np.linalg.det(motion[:3, :3])))
    left, back, up = frame = marks.frame(upper)
    plate = marks("upper_plate_centre", upper), up, left
    area, middle, across, tall = isthmus(meshes[upper], marks("pedicle_centre", upper, "left"), frame, upper)
    # Of the lower bone everything on the left that is behind its posterior wall and higher than a little under its upper plate: processes and no more.
    mesh = meshes[lower]
    l, b, u = marks.frame(lower)
    corner = marks("upper_plate_back", lower)
    r = mesh.vertices - corner
    behind = (r @ b > 3) & (r @ l > 4) & (r @ l < 36)
    floor = -4 if lower != "S1" else (r @ u)[behind].max() - 9
    keep = behind & (r @ u > floor)
    process = mesh.submesh([np.flatnonzero(keep[mesh.faces].all(axis=1))], append=True)
    rise = (process.vertices - corner) @ u
    print(
        f"{upper}: pedicle {2 * np.linalg.norm(across):.1f} x {tall:.1f}, process {rise.max():.1f} above the rim, "
        f"scales {scales[upper]:.2f} {scales[lower]:.2f}"
    )
    for by, name in (("outline", "the middle of its outline"), ("edge", "its outline's lateral edge"), ("tip", "its tip")):
        best = solve(lambda a: offset(a, plate, (middle, across), process, by))
        values = [(a, *offset(a, plate, (middle, across), process, by)) for a in (0, 10, 15, 20, 25, 30)]
        print(f"  by {name}: {best:.1f} degrees; at " + ", ".join(f"{a}: {v:.0f} % ({w:.1f} mm)" for a, v, w in values))


if __name__ == "__main__":
    main()
