"""Our bones beside those of another source: the lumbar column and sacrum that PyPI's myo_sim carries (Apache-2.0; the bones of a
musculoskeletal model of an adult, some 400 faces each, in metres, x forwards, y up, z to the right).

Such meshes are coarse, so they hold ours only to a few millimetres; each bound stands some 15 percent over what was measured, with that
beside it. Sizes of people differ, hence one uniform scale a bone."""

import importlib.util
from functools import lru_cache
from pathlib import Path

import numpy as np
import pytest
import trimesh
from bone_distance import aligned, distances
from conftest import mesh_file

# Found without being imported, which would want its simulator.
MESHES = Path(importlib.util.find_spec("myo_sim").origin).parent / "models" / "meshes"


@lru_cache(maxsize=None)
def theirs(name):
    """In millimetres and patient axes, x left, y posterior, z cranial."""
    mesh = trimesh.load(MESHES / f"{name}.stl", force="mesh")
    forwards, up, right = mesh.vertices.T * 1000.0
    mesh.vertices = np.stack([-right, -forwards, up], axis=1)
    if mesh.volume < 0.0:
        mesh.invert()
    return mesh


def both(folder, level, name, box):
    other = theirs(name)
    moved, scale = aligned(trimesh.load(mesh_file(folder, level, end="stl"), force="mesh"), other, box)
    return moved, other, np.concatenate(distances(moved, other, box)), scale


EVERYWHERE = np.array([[-1e3, 1e3]] * 3)


@pytest.mark.parametrize(
    "level, mean_mm, most_mm",
    # Measured: MEASURED.
    [("L1", 1.8, 5.0), ("L2", 1.6, 4.4), ("L3", 1.8, 4.9), ("L4", 1.9, 5.3), ("L5", 2.0, 5.8)],
)
def test_vertebrae_lie_on_those_of_another_source(folder, level, mean_mm, most_mm):
    moved, other, distance, _ = both(folder, level, f"lumbar{level[1]}", EVERYWHERE)
    assert distance.mean() < mean_mm
    assert np.quantile(distance, 0.95) < most_mm
    # Width over the transverse processes, depth from the front wall to the spinous process, height of the arch.
    assert moved.extents == pytest.approx(other.extents, rel=0.15)


def test_sacrum_lies_on_that_of_another_source(folder):
    other = theirs("sacrum")
    top = other.bounds[1][2]
    # Down to the second foramina: what a lumbar film shows.
    box = np.array([[-1e3, 1e3], [-1e3, 1e3], [top - 65.0, 1e3]])
    _, _, distance, scale = both(folder, "S1", "sacrum", box)
    assert distance.mean() < 4.0  # Measured: MEASURED.
    assert np.quantile(distance, 0.95) < 10.0
    assert scale == pytest.approx(1.0, abs=0.25)
