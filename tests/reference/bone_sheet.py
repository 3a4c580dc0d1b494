#!/usr/bin/env python3
"""A sheet of films, ours beside other meshes of the same bones: AP, 25 degrees oblique to both sides and lateral, same beam, same cortex.

usage: bone_sheet.py --out SHEET.png NAME:LEVEL=MESH[+MESH...] ...
  such as  'a man:L5=man-L5.ply' 'a man:S1=man-sacrum.ply+man-pelvis.ply'
For every LEVEL that is named, ours (the average patient's) is drawn first, then the others in the order given. Each film shows the
meshes named alone, with nothing around. Ours is turned and shifted onto the first of the others, not scaled, so that all are seen in
that one's own axes: mm, x left, y posterior, z cranial, origin within 60 mm of the bone.

A film is the attenuation along the rays of a cone beam: path length in the mesh as marrow, and the difference to the same mesh drawn in
by the cortex's thickness as cortex. By hand only: wants Pillow beside requirements.txt.
"""

import argparse
import tempfile
from pathlib import Path

import numpy as np
import trimesh
from bone_distance import aligned
from conftest import run
from PIL import Image, ImageDraw, ImageFont

SOURCE_MM = 700.0  # From the source to the middle of the picture.
PIXELS = 150
CORTEX_MM = 0.9
MARROW_PER_MM, CORTEX_PER_MM = 0.012, 0.062  # Above soft tissue's, about 75 kVp; only their ratio shows.
VIEWS = [("AP", 0.0), ("25 left", 25.0), ("25 right", -25.0), ("lateral", 90.0)]
HALF_FIELD_MM = {"S1": 80.0}
GREYS = 48  # Fewer make the file smaller; more cannot be told apart here.


def path_length(mesh, degrees, half_mm):
    """Length of the rays within a closed mesh, mm: signed distances from the source, summed over the faces that a ray meets."""
    angle = np.radians(degrees)
    right = np.array([np.cos(angle), -np.sin(angle), 0.0])
    # The beam comes from in front; the detector stands behind the patient who lies on the belly.
    forward = np.array([np.sin(angle), np.cos(angle), 0.0])
    depth = SOURCE_MM + mesh.vertices @ forward
    u = mesh.vertices @ right / depth * SOURCE_MM
    v = mesh.vertices[:, 2] / depth * SOURCE_MM
    scale = PIXELS / (2.0 * half_mm)
    # A fraction of a pixel off, so that no pixel's middle lies on an edge.
    at = np.stack([u * scale + PIXELS / 2 + 1.3e-4, PIXELS / 2 - v * scale + 2.1e-4], axis=1)
    corners, inverse = at[mesh.faces], (1.0 / depth)[mesh.faces]
    low = np.floor(corners.min(axis=1)).astype(int)
    size = np.ceil(corners.max(axis=1)).astype(int) - low + 1
    a, b, c = corners[:, 0], corners[:, 1], corners[:, 2]
    area = cross(b - a, c - a)
    total = np.zeros(PIXELS * PIXELS)
    for edge in (4, 8, 16, 32, 64):
        group = (size.max(axis=1) <= edge) & (size.max(axis=1) > (edge // 2 if edge > 4 else 0)) & (abs(area) > 1e-12)
        if not group.any():
            continue
        j, i = np.mgrid[0:edge, 0:edge]
        p = low[group][:, None] + np.stack([i.ravel(), j.ravel()], axis=1)[None]
        corner = [x[group][:, None] for x in (a, b, c)]
        weight = [cross(corner[(n + 2) % 3] - corner[(n + 1) % 3], p - corner[(n + 1) % 3]) for n in range(3)]
        sign = np.sign(area[group])[:, None]
        inside = np.all([w * sign > 0.0 for w in weight], axis=0)
        inside &= np.all((p >= 0) & (p < PIXELS), axis=2)
        inverse_depth = sum(w * inverse[group][:, [n]] for n, w in enumerate(weight)) / area[group][:, None]
        q = p[inside]
        slant = np.hypot(1.0, np.hypot(*((q - PIXELS / 2) / scale).T) / SOURCE_MM)
        length = np.broadcast_to(sign, inside.shape)[inside] / inverse_depth[inside] * slant
        np.add.at(total, q[:, 1] * PIXELS + q[:, 0], length)
    assert (size.max(axis=1) <= 64).all(), "a face is larger than 64 pixels"
    total = total.reshape(PIXELS, PIXELS)
    return total if total.sum() > 0.0 else -total


def cross(p, q):
    return p[..., 0] * q[..., 1] - p[..., 1] * q[..., 0]


def film(meshes, degrees, half_mm):
    bright = np.zeros((PIXELS, PIXELS))
    for mesh in meshes:
        inner = mesh.copy()
        inner.vertices = mesh.vertices - mesh.vertex_normals * CORTEX_MM
        whole, marrow = (path_length(m, degrees, half_mm) for m in (mesh, inner))
        bright += CORTEX_PER_MM * (whole - marrow) + MARROW_PER_MM * marrow
    return bright


def ours(level, onto, folder):
    """Our bones of a level, moved onto the first of the others: the axial bone leads, the rest goes with it."""
    names = ["--level", level], *([["--level", level, "--part", "iliac_wing"]] if level == "S1" else [])
    paths = [folder / f"{level}-{i}.stl" for i in range(len(names))]
    for path, name in zip(paths, names):
        run("mesh", *name, "--out", str(path))
    bones = [trimesh.load(path, force="mesh") for path in paths]
    upper = np.array([[-1e9, 1e9], [-1e9, 1e9], [onto.bounds[1][2] - 75.0, 1e9]])
    moved, _ = aligned(bones[0], onto, box=upper, scaled=False)
    motion, *_ = trimesh.registration.procrustes(bones[0].vertices, moved.vertices, reflection=False, scale=False)
    return [bone.apply_transform(motion) for bone in bones]


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--out", required=True, type=Path)
    parser.add_argument("others", nargs="+", metavar="NAME:LEVEL=MESH[+MESH...]")
    args = parser.parse_args()
    levels = {}
    for text in args.others:
        head, paths = text.split("=", 1)
        name, level = head.rsplit(":", 1)
        meshes = [trimesh.load(path, force="mesh") for path in paths.split("+")]
        levels.setdefault(level, []).append((name, meshes))
    rows = []
    with tempfile.TemporaryDirectory() as folder:
        for level, found in levels.items():
            mine = ours(level, found[0][1][0], Path(folder))
            middle = found[0][1][0].bounds.mean(axis=0)
            if level == "S1":
                middle = found[0][1][0].bounds[1] * [0, 0, 1] + [0, 0, -35.0]
            row = []
            for name, meshes in [("ours", mine), *found]:
                here = [mesh.copy().apply_translation(-middle) for mesh in meshes]
                row.append((f"{level}, {name}", [film(here, d, HALF_FIELD_MM.get(level, 52.0)) for _, d in VIEWS]))
            rows.append(row)
    sheet(rows).save(args.out, optimize=True)


def sheet(rows):
    """Blocks of a level, two beside each other; within a block one line of four views a bone."""
    font = ImageFont.load_default(12)
    heights = [len(row) * (PIXELS + 16) + 8 for row in rows]
    half = (len(rows) + 1) // 2
    wide = len(VIEWS) * PIXELS
    size = (2 * wide + 24, max(sum(heights[:half]), sum(heights[half:])))
    picture = Image.new("L", size, 0)
    draw = ImageDraw.Draw(picture)
    for column, part in enumerate((rows[:half], rows[half:])):
        x, y = column * (wide + 24), 0
        for row in part:
            brightest = np.quantile(np.concatenate([f.ravel() for _, films in row for f in films]), 0.998)
            for name, films in row:
                for i, ((view, _), shades) in enumerate(zip(VIEWS, films)):
                    grey = 255.0 * (np.clip(shades / brightest, 0.0, 1.0) ** 0.8)
                    grey = np.round(grey / 255.0 * (GREYS - 1)) * (255.0 / (GREYS - 1))
                    picture.paste(Image.fromarray(grey.astype(np.uint8)), (x + i * PIXELS, y + 16))
                    draw.text((x + i * PIXELS + 3, y + 1), f"{name}, {view}" if i == 0 else view, fill=220, font=font)
                y += PIXELS + 16
            y += 8
    return picture


if __name__ == "__main__":
    main()
