"""Path lengths through a bone against rays cast by Embree (through trimesh) into the same mesh.

Embree gives the triangles that a ray meets; the length is the sum of the distances to those it leaves by less those it
enters by. A ray that Embree sends through an edge (an odd number of hits) tells nothing and is left out.
"""

import numpy as np
import pytest
import trimesh
from camera import SID_MM, Camera
from conftest import mesh_file, view

PIXELS, PIXEL_MM, EVERY = 512, 0.4, 3


def told(folder, level, oblique, tilt):
    file = folder / f"{level}{oblique}{tilt}.npy"
    shown = view(level=level, oblique=oblique, tilt=tilt, extra=("--path-length", str(file)))
    return Camera.of(shown), np.load(file)


def cast(mesh, camera, rows, columns):
    """Lengths, mm, and which of them count."""
    u, v = (columns + 0.5) * PIXEL_MM - PIXELS * PIXEL_MM / 2, PIXELS * PIXEL_MM / 2 - (rows + 0.5) * PIXEL_MM
    rays = SID_MM * camera.d + u[:, None] * camera.right + v[:, None] * camera.up
    rays /= np.linalg.norm(rays, axis=1)[:, None]
    # Embree counts in 32 bits: start near the mesh instead of at the focal spot.
    start = camera.source + 550.0 * rays
    hits, ray, place = mesh.ray.intersects_id(start, rays, multiple_hits=True, return_locations=True)
    along = np.einsum("ij,ij->i", place - start[ray], rays[ray])
    leaving = np.sign(np.einsum("ij,ij->i", mesh.face_normals[hits], rays[ray]))
    count = np.bincount(ray, minlength=len(rays))
    balance = np.bincount(ray, weights=leaving, minlength=len(rays))
    return np.bincount(ray, weights=leaving * along, minlength=len(rays)), (count % 2 == 0) & (balance == 0)


@pytest.mark.parametrize("oblique, tilt", [(0.0, 0.0), (24.0, -2.0), (90.0, 1.0)])
@pytest.mark.parametrize("level", ["L1", "L4", "S1"])
def test_path_length_is_what_embree_finds(folder, level, oblique, tilt):
    camera, picture = told(folder, level, oblique, tilt)
    mesh = trimesh.load_mesh(mesh_file(folder, level))
    assert "embree" in type(mesh.ray).__module__
    rows, columns = (a.ravel() for a in np.mgrid[0:PIXELS:EVERY, 0:PIXELS:EVERY])
    exact, counts = cast(mesh, camera, rows, columns)
    assert counts.mean() > 0.99
    ours, exact = picture[rows, columns][counts], exact[counts]
    assert exact.max() > 30.0 and (exact > 0.0).mean() > 0.1
    wrong = np.abs(ours - exact)
    # The mean that the design asks for; measured 4e-4. The picture's sums are 32-bit.
    assert wrong[exact > 0.0].mean() < 1e-3
    assert np.percentile(wrong, 99.9) < 5e-3
    assert wrong.max() < 0.05
