#!/usr/bin/env python3
"""From which oblique an iliac wing hides what lies under L5's left pedicle: ours, and that of a man.

usage: wing_hides.py OUR_L5 OUR_WING MAN_L5 MAN_PELVIS [X Y Z]
  OUR_L5, OUR_WING  as `downbeam mesh --level L5` and `mesh --level S1 --part iliac_wing` write them (mm)
  MAN_L5, MAN_PELVIS  in one frame: x left, y posterior with 0 at the posterior wall, z cranial, square to L5's plates
  X Y Z  the underside of the man's left pedicle there, mm; default 25 3 -2
Our L5 is laid on the man's (turn, shift, one scale) and our wing moves with it; the wing stands where `downbeam view` says that S1 is. Rays are
parallel and square to the man's L5. Prints the oblique in whole degrees from which a point 8 mm and 16 mm under the pedicle is behind the wing.
"""

import json
import subprocess
import sys

import numpy as np
import trimesh
from bone_distance import aligned


def hidden_from(wing, point):
    for degrees in range(90):
        ray = [np.sin(np.radians(degrees)), np.cos(np.radians(degrees)), 0.0]
        if wing.ray.intersects_any([point], [ray])[0]:
            return degrees
    return None


def main():
    ours, wing, man, pelvis = (trimesh.load(path) for path in sys.argv[1:5])
    underside = np.array([float(v) for v in sys.argv[5:8]] or [25.0, 3.0, -2.0])
    view = ["cargo", "run", "--quiet", "--release", "--", "view", "--level", "L5", "--side", "left", "--json"]
    marks = json.loads(subprocess.run(view, check=True, capture_output=True).stdout)["landmarks"]
    centre = {m["level"]: np.array(m["patient_mm"]) for m in marks if m["name"] == "body_centre"}
    wing.apply_translation(centre["S1"] - centre["L5"])
    laid, scale = aligned(ours, man)
    # The same motion for the wing: the bone's vertices before and after say it.
    turn, _, _ = trimesh.registration.procrustes(ours.vertices, laid.vertices, reflection=False, scale=True)
    wing.apply_transform(turn)
    for under in (8.0, 16.0):
        point = underside - [0.0, 0.0, under]
        print(f"{under:.0f} mm under: ours {hidden_from(wing, point)}, the man's {hidden_from(pelvis, point)} degrees (scale {scale:.2f})")


if __name__ == "__main__":
    main()
