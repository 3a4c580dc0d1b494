"""Runs the host tool for the checks. Everything outside is compared with its printed and written output only."""

import json
import os
import subprocess
from functools import lru_cache
from pathlib import Path

import pytest

PROJECT = Path(__file__).resolve().parents[2]


@lru_cache(maxsize=None)
def executable() -> str:
    """The host tool: the one named in DOWNBEAM, or the debug build, made up to date first."""
    if "DOWNBEAM" in os.environ:
        return os.environ["DOWNBEAM"]
    build = ["cargo", "build", "--locked", "--quiet", "--bin", "downbeam", "--message-format", "json"]
    messages = subprocess.run(build, cwd=PROJECT, check=True, capture_output=True, text=True).stdout
    found = [json.loads(line).get("executable") for line in messages.splitlines()]
    return [path for path in found if path][-1]


# Options that name a file to write: the checks write over their own of before.
WRITES = {"--out", "--png", "--svg", "--outline-json", "--path-length", "--attenuation"}


@lru_cache(maxsize=None)
def run(*arguments: str) -> str:
    force = ["--force"] if WRITES & set(arguments) and "--force" not in arguments else []
    done = subprocess.run([executable(), *arguments, *force], capture_output=True, text=True)
    assert done.returncode == 0, f"{arguments}: {done.stderr}"
    return done.stdout


def view(level="L4", side="left", oblique=0.0, tilt=0.0, rotation=0.0, patient="average", extra=()):
    """`view --json`, read."""
    arguments = ["view", "--level", level, "--side", side, "--patient", patient, "--json"]
    # `=` so that a negative number is no option.
    arguments += [f"--oblique={oblique!r}", f"--tilt={tilt!r}", f"--image-rotation={rotation!r}"]
    return json.loads(run(*arguments, *extra))


def parts(level, patient="average"):
    """Pairs (part, side or None) of a level."""
    lines = run("mesh", "--level", level, "--patient", patient, "--list").splitlines()
    return [tuple((line.split() + [None])[:2]) for line in lines]


@pytest.fixture(scope="session")
def folder(tmp_path_factory):
    return tmp_path_factory.mktemp("downbeam")


def mesh_file(folder, level, part=None, side=None, patient="average", end="obj"):
    """Writes a mesh and gives its path; once a session."""
    path = folder / f"{patient}-{level}-{part}-{side}.{end}"
    if not path.exists():
        arguments = ["mesh", "--level", level, "--patient", patient, "--out", str(path)]
        arguments += ["--part", part] if part else []
        arguments += ["--side", side] if side else []
        run(*arguments)
    return path
