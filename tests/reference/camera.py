"""The C-arm once more, from DICOM's words and scipy's rotations alone.

PS3.3 C.8.7.5.1.2: the positioner angles tell where the receptor is, with respect to the patient: primary 0 in front,
+90 at the patient's left; secondary +90 cranial. In LPS axes the receptor stands from the isocentre in the direction
Rz(primary) Rx(-secondary) (0, -1, 0). The same rotation takes the patient's x and z axes to the picture's right and up.
"""

import numpy as np
from scipy.spatial.transform import Rotation

SOD_MM = 700.0  # source to isocentre, the tool's default
SID_MM = 1100.0  # source to detector


class Camera:
    def __init__(self, primary_deg, secondary_deg, image_rotation_deg=0.0):
        turn = Rotation.from_euler("ZX", [primary_deg, -secondary_deg], degrees=True)
        self.d = turn.apply([0.0, -1.0, 0.0])
        # A picture turned clockwise, seen from the receptor, turns about the axis that points into the screen.
        picture = Rotation.from_rotvec(image_rotation_deg * self.d, degrees=True)
        # The screen's axes turn the other way; about -d (into the screen) clockwise is positive, hence +d for the axes.
        self.right, self.up = picture.apply(turn.apply([[1.0, 0.0, 0.0], [0.0, 0.0, 1.0]]))
        self.source = -SOD_MM * self.d

    @classmethod
    def of(cls, view):
        """The camera of a `view --json`."""
        angles = view["dicom"]
        return cls(angles["primary"], angles["secondary"], view["orientation"]["image_rotation"])

    def project(self, points):
        """Patient frame, mm (n, 3), to detector, mm (n, 2)."""
        rays = np.asarray(points, dtype=float) - self.source
        depth = rays @ self.d
        return SID_MM * np.column_stack([rays @ self.right, rays @ self.up]) / depth[:, None]
