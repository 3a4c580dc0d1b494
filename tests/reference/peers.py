"""Path lengths, 512 x 512, of the same meshes under the same camera: ours, Embree's rays and gvxr's L-buffer (software OpenGL).

    tests/.venv/bin/python -m pip install --no-deps -r tests/reference/peers-requirements.txt
    tests/.venv/bin/python tests/reference/peers.py

Not a check: pytest does not collect it. One process pinned to one processor, one run after the other, medians; building a search tree or
handing a mesh to the renderer is not timed. What is missing is said and passed over.

- ours: `examples/peer_time.rs`, the raster alone.
- Embree, rays alone: its closest hit, shot again from just behind each hit for as long as there is one; only time spent in Embree. The
  walk around it is numpy's; with it: "and walk". Lengths are the signed sum of the hits, computed again in 64 bits on the triangles.
- gvxr: `computeLBuffer`, the result read back.

Differences: mean over the pixels where either has a length over 1e-3 mm. Rays that Embree sends through an edge (entries and exits do not balance)
tell nothing and are left out; their share is printed.
"""

import os

# Before anything starts threads or OpenGL.
os.sched_setaffinity(0, {max(os.sched_getaffinity(0))})
os.environ.update(LIBGL_ALWAYS_SOFTWARE="1", EGL_PLATFORM="surfaceless", LP_NUM_THREADS="1", OPENBLAS_NUM_THREADS="1")

import subprocess  # noqa: E402
import sys  # noqa: E402
import tempfile  # noqa: E402
import time  # noqa: E402
from importlib.metadata import version  # noqa: E402
from pathlib import Path  # noqa: E402

import numpy as np  # noqa: E402
import trimesh  # noqa: E402
from camera import SID_MM, Camera  # noqa: E402
from embreex import rtcore_scene  # noqa: E402
from embreex.mesh_construction import TriangleMesh  # noqa: E402

PROJECT = Path(__file__).resolve().parents[2]
OBLIQUE, TILT = 24.0, -2.0
PIXELS, PIXEL_MM, REPEATS = 512, 0.4, 11
SOME_MM = 1e-3  # Less is rounding.
BEHIND_MM = 1e-3  # A shot goes on this far behind the last hit.


def ours(folder):
    """{name: (triangles, ms, picture)}; writes the meshes."""
    run = ["cargo", "run", "--release", "--locked", "--quiet", "--example", "peer_time", "--"]
    lines = subprocess.run(
        [*run, str(folder), str(OBLIQUE), str(TILT)], cwd=PROJECT, check=True, capture_output=True, text=True
    ).stdout
    told = {}
    for name, triangles, ms in (line.split() for line in lines.splitlines()):
        picture = np.fromfile(folder / f"{name}.f32", "<f4").reshape(PIXELS, PIXELS).astype(float)
        told[name] = int(triangles), float(ms), picture
    return told


def embree(mesh, camera):
    """(ms in Embree, ms with the walk, picture, which rays count)."""
    rows, columns = np.mgrid[0:PIXELS, 0:PIXELS]
    u, v = (np.stack([columns, -rows]).reshape(2, -1) + np.array([[0.5 - PIXELS / 2], [PIXELS / 2 - 0.5]])) * PIXEL_MM
    rays = SID_MM * camera.d + u[:, None] * camera.right + v[:, None] * camera.up
    rays /= np.linalg.norm(rays, axis=1)[:, None]
    # Embree counts in 32 bits: start near the mesh instead of at the focal spot.
    start = camera.source + 550.0 * rays
    normals, corners = np.asarray(mesh.face_normals), np.asarray(mesh.triangles[:, 0])
    scene = rtcore_scene.EmbreeScene()
    TriangleMesh(scene, mesh.triangles.astype(np.float32))
    scene.run(start[:1].astype(np.float32), rays[:1].astype(np.float32))  # Builds the tree.

    def walk():
        inside, began = 0.0, time.perf_counter()
        lengths, balance = np.zeros(len(rays)), np.zeros(len(rays), dtype=int)
        live, at = np.arange(len(rays)), np.zeros(len(rays))
        origins, directions = start.astype(np.float32), rays.astype(np.float32)
        while len(live):
            shot = time.perf_counter()
            found = scene.run(origins, directions)
            inside += time.perf_counter() - shot
            hit = found >= 0
            live, triangle = live[hit], found[hit]
            if not len(live):
                break
            towards = np.einsum("ij,ij->i", normals[triangle], rays[live])
            along = np.einsum("ij,ij->i", normals[triangle], corners[triangle] - start[live]) / towards
            sign = np.sign(towards).astype(int)
            lengths[live] += sign * along
            balance[live] += sign
            # Never backwards, whatever a grazing plane says.
            at[live] = np.maximum(along, at[live]) + BEHIND_MM
            origins = (start[live] + at[live][:, None] * rays[live]).astype(np.float32)
            directions = directions[hit]
        return inside, time.perf_counter() - began, lengths, balance

    walks = [walk() for _ in range(REPEATS)]
    square = (PIXELS, PIXELS)
    lengths, balance = (a.reshape(square) for a in walks[0][2:])
    return 1e3 * np.median([w[0] for w in walks]), 1e3 * np.median([w[1] for w in walks]), lengths, balance == 0


def gvxr_window():
    """The module with a window, or the reason why there is none."""
    try:
        from gvxrPython3 import gvxr
    except ImportError as error:
        return None, f"gvxr cannot be loaded: {error}"
    gvxr.createWindow(-1, 0, "EGL", 4, 5)
    if "llvmpipe" not in (renderer := gvxr.getOpenGlRenderer()):
        print(f"gvxr draws with {renderer}, not with Mesa's software renderer.")
    return gvxr, ""


def gvxr_buffer(gvxr, name, mesh, camera):
    """(ms, picture)."""
    to_detector = (SID_MM * camera.d + camera.source).tolist()
    gvxr.setSourcePosition(*camera.source.tolist(), "mm")
    gvxr.usePointSource()
    gvxr.setMonoChromatic(60.0, "keV", 1)
    gvxr.setDetectorPosition(*to_detector, "mm")
    gvxr.setDetectorUpVector(*camera.up.tolist())
    gvxr.setDetectorNumberOfPixels(PIXELS, PIXELS)
    gvxr.setDetectorPixelSize(PIXEL_MM, PIXEL_MM, "mm")
    gvxr.removePolygonMeshesFromXRayRenderer()
    gvxr.makeTriangularMesh(name, mesh.vertices.ravel().tolist(), mesh.faces.ravel().tolist(), "mm")
    gvxr.addPolygonMeshAsInnerSurface(name)
    times = []
    for _ in range(REPEATS + 1):
        began = time.perf_counter()
        buffer = gvxr.computeLBuffer(name)
        times.append(time.perf_counter() - began)
    # The first draws while it still compiles. Centimetres; its rows and columns both run the other way.
    return 1e3 * np.median(times[1:]), 10.0 * np.asarray(buffer, dtype=float).reshape(PIXELS, PIXELS)[::-1, ::-1]


def difference(a, b, counts=True):
    return np.abs(a - b)[((a > SOME_MM) | (b > SOME_MM)) & counts].mean()


def main():
    camera = Camera(180.0 - OBLIQUE, TILT)
    rows = []
    with tempfile.TemporaryDirectory() as folder:
        folder = Path(folder)
        told = ours(folder)
        gvxr, why_not = gvxr_window()
        for name, (triangles, ms, picture) in told.items():
            mesh = trimesh.load_mesh(folder / f"{name}.obj", process=False)
            assert len(mesh.faces) == triangles
            rows.append((name, triangles, "ours", ms, 1.0, ""))
            rays_ms, walk_ms, lengths, counts = embree(mesh, camera)
            apart = f"{difference(picture, lengths, counts):.5f}"
            rows.append((name, triangles, "Embree, rays alone", rays_ms, rays_ms / ms, apart))
            rows.append((name, triangles, "Embree, and walk", walk_ms, walk_ms / ms, apart))
            print(f"{name}: {100.0 * (~counts).mean():.3f} % of the rays met an edge in Embree and are left out.")
            if gvxr:
                buffer_ms, buffer = gvxr_buffer(gvxr, name, mesh, camera)
                apart = f"{difference(picture, buffer):.5f}"
                rows.append((name, triangles, "gvxr, L-buffer", buffer_ms, buffer_ms / ms, apart))
                print(f"{name}: gvxr is {difference(buffer, lengths, counts):.5f} mm from Embree in the mean.")
    print(why_not or f"gvxr {version('gvxr')}", f"embreex {version('embreex')}", f"trimesh {version('trimesh')}", sep=", ")
    print("\n| mesh | triangles | what | ms | times ours | mean difference from ours, mm |\n|---|---|---|---|---|---|")
    for name, triangles, what, ms, ratio, apart in rows:
        print(f"| {name} | {triangles} | {what} | {ms:.2f} | {ratio:.1f} | {apart} |")


if __name__ == "__main__":
    sys.exit(main())
