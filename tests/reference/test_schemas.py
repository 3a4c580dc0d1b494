"""Receipts, report rows and `view --json` against their JSON Schemas, as jsonschema reads them: what we write keeps to them, and what is
broken does not."""

import json
import subprocess

import jsonschema
import pytest
from conftest import PROJECT, run, view

FOLDER = PROJECT / "www" / "lessons"
LESSONS = ["lateral-view", "few-pictures", "name-the-parts"]


def validator(name):
    schema = json.loads((FOLDER / f"{name}.schema.json").read_text())
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


@pytest.fixture(scope="module")
def lines():
    make = ["cargo", "run", "--locked", "--quiet", "--example", "class", "--", "60", *LESSONS]
    return subprocess.run(make, cwd=PROJECT, check=True, capture_output=True, text=True).stdout.splitlines()


@pytest.fixture(scope="module")
def rows(lines, tmp_path_factory):
    folder = tmp_path_factory.mktemp("schemas")
    (folder / "class.ndjson").write_text("\n".join([*lines, "no receipt"]) + "\n")
    run("grade", str(folder / "class.ndjson"), "--ndjson", str(folder / "rows.ndjson"))
    return [json.loads(line) for line in (folder / "rows.ndjson").read_text().splitlines()]


@pytest.fixture(scope="module")
def receipts(lines, rows):
    """Those that Downbeam itself reads."""
    read = [json.loads(line) for line, row in zip(lines, rows) if row["status"] != "unreadable"]
    assert len(read) > 30
    return read


def without(one, key):
    return {k: v for k, v in one.items() if k != key}


def test_what_a_learner_hands_in_keeps_to_the_schema(receipts):
    check = validator("receipt")
    for receipt in receipts:
        # The class has some whose claim was written over on purpose.
        if 0 <= receipt["claim"]["total"] <= 1:
            check.validate(receipt)


BAD_RECEIPTS = {
    "unknown key": lambda r: r | {"name": "Anna"},
    "format": lambda r: r | {"format": 2},
    "no engine": lambda r: without(r, "engine"),
    "hash": lambda r: r | {"lesson": r["lesson"] | {"sha256": "abc"}},
    "long code": lambda r: r | {"learner": "x" * 65},
    "level": lambda r: r | {"drawn": r["drawn"] | {"level": "L6"}},
    "seed": lambda r: r | {"drawn": r["drawn"] | {"seed": -1}},
    "log as text": lambda r: r | {"log": "0 finish"},
    "unknown action": lambda r: r | {"log": ["0 fly 1 2"]},
    "a value too few": lambda r: r | {"log": ["0 orient 1"]},
    "a value too many": lambda r: r | {"log": ["0 finish 1"]},
    "total": lambda r: r | {"claim": r["claim"] | {"total": 1.5}},
    "passed": lambda r: r | {"claim": r["claim"] | {"passed": "yes"}},
    "unknown step": lambda r: r | {"claim": r["claim"] | {"steps": {"flight": 1}}},
    "unknown gate": lambda r: r | {"claim": r["claim"] | {"gates": {"luck": True}}},
}


@pytest.mark.parametrize("name", BAD_RECEIPTS)
def test_the_schema_refuses_a_receipt(name, receipts):
    check = validator("receipt")
    good = next(r for r in receipts if check.is_valid(r))
    assert not check.is_valid(BAD_RECEIPTS[name](good))


def test_every_row_keeps_to_the_schema(rows):
    check = validator("report-row")
    for row in rows:
        check.validate(row)
    assert {"verified", "altered", "unreadable"} <= {row["status"] for row in rows}


BAD_ROWS = {
    "unknown column": lambda r: r | {"grade": 1},
    "a column too few": lambda r: without(r, "beam_s"),
    "status": lambda r: r | {"status": "good"},
    "a verified one without marks": lambda r: r | {"total": None},
    "a share in percent": lambda r: r | {"total": 93},
    "row": lambda r: r | {"row": 1.5},
    "passed": lambda r: r | {"passed": 1},
}


@pytest.mark.parametrize("name", BAD_ROWS)
def test_the_schema_refuses_a_row(name, rows):
    check = validator("report-row")
    good = next(r for r in rows if r["status"] == "verified")
    assert check.is_valid(good)
    assert not check.is_valid(BAD_ROWS[name](good))


VIEWS = {
    "L4": {},
    "S1": {"level": "S1", "side": "right", "oblique": 10.0, "tilt": 20.0},
    "turned away": {"level": "L1", "oblique": -60.0, "tilt": 30.0, "rotation": 20.0},
    "spot": {"extra": ("--spot",)},
    "fluoroscopy": {"extra": ("--fluoro", "9", "--low-dose")},
    "steep": {"level": "L5", "extra": ()},
}


@pytest.mark.parametrize("name", VIEWS)
def test_a_view_keeps_to_the_schema(name):
    validator("view").validate(view(**VIEWS[name]))


def test_a_view_with_a_needle_keeps_to_the_schema(tmp_path):
    needle = tmp_path / "needle.json"
    needle.write_text(json.dumps({"entry": {"area_centre": {}}, "moves": [{"advance": {"mm": 70}}, {"inject_ml": 0.5}]}))
    told = json.loads(run("view", "--level", "L4", "--side", "left", "--best", "--json", "--needle", str(needle)))
    assert told["needle"]["depth_mm"] > 10
    validator("view").validate(told)


BAD_VIEWS = {
    "no criteria": lambda v: without(v, "criteria"),
    "side": lambda v: v | {"side": "both"},
    "a score in percent": lambda v: v | {"views": [v["views"][0] | {"score": "100 %"}]},
    "a point of two": lambda v: v | {"landmarks": [v["landmarks"][0] | {"patient_mm": [1, 2]}]},
    "finding": lambda v: v | {"criteria": [v["criteria"][0] | {"finding": "lucky"}]},
}


@pytest.mark.parametrize("name", BAD_VIEWS)
def test_the_schema_refuses_a_view(name):
    check, good = validator("view"), view()
    assert check.is_valid(good)
    assert not check.is_valid(BAD_VIEWS[name](good))
