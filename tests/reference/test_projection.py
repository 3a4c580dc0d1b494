"""Projection and positioner angles against scipy's Rotation, resection, and DICOM (tags by pydicom, PS3.3 C.8.7.5.1.2)."""

import numpy as np
import pytest
from camera import SID_MM, SOD_MM, Camera
from conftest import view
from pydicom import datadict

GRID = [(o, t, 0.0) for o in (-110.0, -47.3, -8.0, 0.0, 25.0, 90.0, 110.0) for t in (-50.0, -13.7, 0.0, 22.5, 50.0)]
TURNED = [(25.0, -10.0, 90.0), (-33.0, 18.0, -37.5), (90.0, 4.0, 180.0)]


def points(shown):
    patient = np.array([mark["patient_mm"] for mark in shown["landmarks"]])
    detector = np.array([mark["detector_mm"] for mark in shown["landmarks"]])
    return patient, detector


@pytest.mark.parametrize("oblique, tilt, rotation", GRID + TURNED)
def test_every_landmark_falls_where_scipy_puts_it(oblique, tilt, rotation):
    shown = view(oblique=oblique, tilt=tilt, rotation=rotation)
    patient, detector = points(shown)
    assert len(patient) > 80
    # From the angles that were asked for, not from those that were printed.
    expected = Camera(180.0 - oblique, tilt, rotation).project(patient)
    assert np.abs(detector - expected).max() < 1e-6


@pytest.mark.parametrize("level, side", [("L1", "right"), ("L5", "left"), ("S1", "right")])
def test_the_isocentre_follows_the_level(level, side):
    shown = view(level=level, side=side, oblique=-20.0, tilt=7.0)
    patient, detector = points(shown)
    assert np.abs(detector - Camera.of(shown).project(patient)).max() < 1e-6
    centre = next(m for m in shown["landmarks"] if m["level"] == level and m["name"] == "body_centre")
    assert np.abs(centre["detector_mm"]).max() < 1e-9


# PS3.3 C.8.7.5.1.2, worked for a prone patient: oblique, tilt; primary, secondary; direction of the receptor.
ROWS = [
    (0.0, 0.0, 180.0, 0.0, (0.0, 1.0, 0.0)),
    (-25.0, 0.0, -155.0, 0.0, (-0.422618, 0.906308, 0.0)),
    (25.0, 0.0, 155.0, 0.0, (0.422618, 0.906308, 0.0)),
    (0.0, 15.0, 180.0, 15.0, (0.0, 0.965926, 0.258819)),
    (90.0, 0.0, 90.0, 0.0, (1.0, 0.0, 0.0)),
    (-90.0, 0.0, -90.0, 0.0, (-1.0, 0.0, 0.0)),
]


@pytest.mark.parametrize("oblique, tilt, primary, secondary, direction", ROWS)
def test_positioner_angles_of_the_standard(oblique, tilt, primary, secondary, direction):
    shown = view(oblique=oblique, tilt=tilt)
    assert shown["dicom"]["primary"] == pytest.approx(primary, abs=1e-9)
    assert shown["dicom"]["secondary"] == pytest.approx(secondary, abs=1e-9)
    # The focal spot, found from the landmarks alone, lies opposite the receptor.
    source = resected_source(*points(shown))
    assert source / np.linalg.norm(source) == pytest.approx(-np.array(direction), abs=1e-5)
    assert np.linalg.norm(source) == pytest.approx(SOD_MM, abs=1e-3)


def test_positioner_angles_invert():
    """primary = atan2(dx, -dy), secondary = asin(dz) of the receptor's direction."""
    for oblique, tilt, _ in GRID:
        angles = view(oblique=oblique, tilt=tilt)["dicom"]
        assert -180.0 < angles["primary"] <= 180.0 and -90.0 <= angles["secondary"] <= 90.0
        d = Camera(angles["primary"], angles["secondary"]).d
        back = np.degrees(np.arctan2(d[0], -d[1])), np.degrees(np.arcsin(d[2]))
        assert abs((back[0] - angles["primary"] + 180.0) % 360.0 - 180.0) < 1e-9
        assert back[1] == pytest.approx(angles["secondary"], abs=1e-9)


def test_dicom_has_the_attributes_that_the_angles_are_named_for():
    for tag, keyword in [
        (0x00181510, "PositionerPrimaryAngle"),
        (0x00181511, "PositionerSecondaryAngle"),
        (0x00181110, "DistanceSourceToDetector"),
        (0x00189402, "DistanceSourceToIsocenter"),
        (0x00181114, "EstimatedRadiographicMagnificationFactor"),
    ]:
        assert datadict.keyword_for_tag(tag) == keyword
    for keyword in ["PositionerPrimaryAngle", "PositionerSecondaryAngle"]:
        assert datadict.dictionary_VR(keyword) == "DS"


def test_magnification_is_the_ratio_of_the_distances():
    """(0018,1114) = SID / SOD; an object's own is SID over its distance along the central ray."""
    shown = view()
    assert shown["measures"]["magnification"] == pytest.approx(SID_MM / SOD_MM, abs=1e-12)
    marks = {m["side"]: m for m in shown["landmarks"] if m["level"] == "L4" and m["name"] == "pedicle_centre"}
    left, right = (marks[s] for s in ("left", "right"))
    apart = left["patient_mm"][0] - right["patient_mm"][0]
    behind = left["patient_mm"][1]
    shadow = right["detector_mm"][0] - left["detector_mm"][0]
    assert apart > 15.0 and shadow / apart == pytest.approx(SID_MM / (SOD_MM + behind), abs=1e-9)


def resected_source(patient, detector):
    """Camera centre by the direct linear transform (Abdel-Aziz and Karara 1971): the null vector of the 3 x 4 matrix."""
    scale = np.abs(patient).max(), np.abs(detector).max()
    p = np.column_stack([patient / scale[0], np.ones(len(patient))])
    u, v = (detector / scale[1]).T
    zero = np.zeros_like(p)
    rows = np.vstack([np.hstack([p, zero, -u[:, None] * p]), np.hstack([zero, p, -v[:, None] * p])])
    matrix = np.linalg.svd(rows)[2][-1].reshape(3, 4)
    centre = np.linalg.svd(matrix)[2][-1]
    return centre[:3] / centre[3] * scale[0]
