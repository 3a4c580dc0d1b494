"""Lessons against their JSON Schema as jsonschema reads it, and their hash as rfc8785 and hashlib make it."""

import hashlib
import json

import jsonschema
import pytest
import rfc8785
from conftest import PROJECT, run

FOLDER = PROJECT / "www" / "lessons"
LESSONS = sorted(p for p in FOLDER.glob("*.json") if p.name != "index.json" and not p.name.endswith(".schema.json"))


@pytest.fixture(scope="module")
def validator():
    schema = json.loads((FOLDER / "lesson.schema.json").read_text())
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


@pytest.mark.parametrize("path", LESSONS, ids=lambda p: p.stem)
def test_a_shipped_lesson_keeps_to_the_schema(validator, path):
    validator.validate(json.loads(path.read_text()))


def test_the_course_is_not_small():
    assert len(LESSONS) >= 10


def without(lesson, key):
    return {k: v for k, v in lesson.items() if k != key}


# What the schema alone must refuse. The engine refuses all of it too: tests/lesson_files.rs.
BAD = {
    "unknown key": lambda l: l | {"colour": 1},
    "format": lambda l: l | {"format": 2},
    "id": lambda l: l | {"id": "True AP"},
    "no English": lambda l: l | {"title": {"de": "Echte a.-p. Aufnahme"}},
    "no language": lambda l: l | {"title": {"en": "A", "e n": "B"}},
    "mode": lambda l: l | {"mode": "exam"},
    "no step": lambda l: l | {"steps": []},
    "step twice": lambda l: l | {"steps": ["oblique", "oblique"]},
    "unknown step": lambda l: l | {"steps": ["flight"]},
    "no patient": lambda l: l | {"patient": {}},
    "two patients": lambda l: l | {"patient": {"name": "average", "any_of": ["small"]}},
    "two seeds": lambda l: l | {"patient": {"name": "average", "seed": 1, "seed_from": "learner"}},
    "level": lambda l: l | {"level": "T12"},
    "empty draw": lambda l: l | {"level": {"any_of": []}},
    "unknown part": lambda l: l | {"parts": [{"part": "tail"}]},
    "tolerance": lambda l: l | {"tolerances": {"squared_deg": {"full": 1}}},
    "par": lambda l: l | {"exposures": True, "par": {"exposures": 0}},
    "pass mark": lambda l: l | {"pass_mark": 101},
    "missing": lambda l: without(l, "pass_mark"),
}


@pytest.mark.parametrize("name", BAD)
def test_the_schema_refuses(validator, name):
    good = json.loads((FOLDER / "true-ap.json").read_text())
    assert validator.is_valid(good)
    assert not validator.is_valid(BAD[name](good))


def test_the_hash_is_that_of_the_canonical_form():
    said = {}
    for line in run("check", "--json", str(FOLDER)).splitlines():
        lesson = json.loads(line)
        said[lesson["id"]] = lesson["sha256"]
    assert len(said) == len(LESSONS)
    for path in LESSONS:
        lesson = json.loads(path.read_text())
        for text in ("$schema", "title", "intro"):
            lesson.pop(text)
        assert said[lesson["id"]] == hashlib.sha256(rfc8785.dumps(lesson)).hexdigest(), path.name
