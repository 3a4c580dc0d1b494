"""Every bone and part as trimesh reads it: closed, consistently oriented, outward, of the volume that the tool prints; and VTK's
distance of the landmarks from them."""

import re

import pytest
import trimesh
from conftest import mesh_file, parts, run, view
from vtkmodules.vtkFiltersCore import vtkImplicitPolyDataDistance
from vtkmodules.vtkIOGeometry import vtkOBJReader

LEVELS = ["T12", "L1", "L2", "L3", "L4", "L5", "S1"]
PATIENTS = ["average", "turned", "small", "large", "thin-bones", "worn", "curved", "standing"]


def check(mesh):
    assert mesh.is_watertight
    assert mesh.is_winding_consistent
    assert mesh.volume > 0.0


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("patient", PATIENTS)
def test_bones_are_closed(folder, level, patient):
    mesh = trimesh.load_mesh(mesh_file(folder, level, patient=patient))
    check(mesh)
    assert mesh.body_count == 1


@pytest.mark.parametrize("level", LEVELS)
def test_parts_are_closed(folder, level):
    listed = parts(level)
    assert len(listed) >= 10
    for part, side in listed:
        mesh = trimesh.load_mesh(mesh_file(folder, level, part, side))
        check(mesh)
        if side:
            # On its own side of the patient, who lies straight.
            assert (mesh.center_mass[0] > 0.0) == (side == "left"), f"{level} {part} {side}"


@pytest.mark.parametrize("level", LEVELS)
def test_both_formats_hold_the_same_volume(folder, level):
    obj, stl = (trimesh.load_mesh(mesh_file(folder, level, end=end)) for end in ("obj", "stl"))
    assert stl.is_watertight
    assert stl.volume == pytest.approx(obj.volume, rel=1e-6)
    said = run("mesh", "--level", level, "--out", str(folder / "again.obj"))
    assert float(re.search(r"(\d+) mm3", said)[1]) == pytest.approx(obj.volume, abs=1.0)


@pytest.mark.parametrize("level", LEVELS[1:6])
def test_landmarks_lie_on_or_in_their_bone(folder, level):
    """Tips near the surface, centres inside: a frame or a side gone wrong would show here."""
    reader = vtkOBJReader()
    reader.SetFileName(str(mesh_file(folder, level)))
    reader.Update()
    surface = vtkImplicitPolyDataDistance()  # Negative inside.
    surface.SetInput(reader.GetOutput())
    marks = [m for m in view(level=level)["landmarks"] if m["level"] == level]
    tips = 0
    for mark in marks:
        outside_mm = surface.EvaluateFunction(mark["patient_mm"])
        if mark["name"] in ("body_centre", "pedicle_centre"):
            assert outside_mm < -2.0, mark
        elif mark["name"].endswith("_tip"):
            tips += 1
            assert abs(outside_mm) < 2.5, mark
    assert tips == 7
