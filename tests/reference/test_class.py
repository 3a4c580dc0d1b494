"""The tables of `grade` read back by DuckDB, and the queries of docs/teachers.md run on them."""

import csv
import json
import math
import re
import subprocess

import duckdb
import pytest
from conftest import PROJECT, run

RECEIPTS = 120
LESSONS = ["views-homework", "true-ap", "mark-and-hold"]
STEPS = ["true_ap", "oblique", "target", "down_the_beam"]


@pytest.fixture(scope="module")
def tables(tmp_path_factory):
    """rows.csv and rows.ndjson of a class that never was, some of its receipts bad (examples/class.rs)."""
    folder = tmp_path_factory.mktemp("class")
    make = ["cargo", "run", "--locked", "--quiet", "--example", "class", "--", str(RECEIPTS), *LESSONS]
    lines = subprocess.run(make, cwd=PROJECT, check=True, capture_output=True, text=True).stdout
    (folder / "class.ndjson").write_text(lines)
    run("grade", str(folder / "class.ndjson"), "--csv", str(folder / "rows.csv"), "--ndjson", str(folder / "rows.ndjson"))
    return folder


@pytest.fixture(scope="module")
def rows(tables):
    return [json.loads(line) for line in (tables / "rows.ndjson").read_text().splitlines()]


def test_every_receipt_has_its_row(rows):
    assert len(rows) == RECEIPTS
    assert [r["row"] for r in rows] == list(range(1, RECEIPTS + 1))
    found = {r["status"] for r in rows}
    assert found == {"verified", "altered", "unknown_engine", "unreadable"}
    assert any(r["same_log_as"] for r in rows)


def test_duckdb_reads_the_same_numbers_from_both(tables, rows):
    with (tables / "rows.csv").open(newline="") as file:
        plain = list(csv.DictReader(file))
    for column in ["total", "claimed", "beam_s", "pictures", "actions", *STEPS]:
        sums = [
            duckdb.sql(f"select fsum(cast({column} as double)) from {read}('{tables / name}')").fetchall()[0][0]
            for read, name in [("read_csv", "rows.csv"), ("read_json", "rows.ndjson")]
        ]
        assert sums[0] == sums[1]
        wanted = math.fsum(r[column] for r in rows if r[column] is not None)
        assert math.isclose(sums[0], wanted, rel_tol=1e-12)
        assert [float(r[column]) if r[column] else None for r in plain] == [r[column] for r in rows]


def test_scores_are_the_replays_and_not_the_claims(rows):
    altered = [r for r in rows if r["status"] == "altered" and r["total"] is not None]
    assert altered and all(r["claimed"] != r["total"] for r in altered)
    assert all(r["claimed"] == r["total"] for r in rows if r["status"] == "verified")


def queries():
    text = (PROJECT / "docs/teachers.md").read_text()
    return re.findall(r"```sql\n(.*?)```", text, re.S)


def answer(tables, query):
    return duckdb.sql(query.replace("'rows.ndjson'", f"'{tables / 'rows.ndjson'}'")).fetchall()


def test_the_docs_have_three_queries():
    assert len(queries()) == 3


def test_which_step_fails_most(tables, rows):
    found = answer(tables, queries()[0])
    good = [r for r in rows if r["status"] == "verified"]
    wanted = {}
    for row in good:
        for step in STEPS:
            if row[step] is not None:
                wanted.setdefault((row["lesson"], step), []).append(row[step])
    assert {(lesson, step): n for lesson, step, n, _, _ in found} == {k: len(v) for k, v in wanted.items()}
    for lesson, step, n, mean, below in found:
        marks = wanted[lesson, step]
        assert mean == pytest.approx(100 * math.fsum(marks) / n, abs=0.05 + 1e-9)
        assert below == sum(m < 0.5 for m in marks)
    assert [r[3] for r in found] == sorted(r[3] for r in found)


def test_who_has_not_passed_yet(tables, rows):
    found = answer(tables, queries()[1])
    best = {}
    for row in rows:
        if row["status"] == "verified":
            key = (row["lesson"], row["learner"])
            best[key] = max(best.get(key, (False, 0.0)), (row["passed"], row["total"]))
    assert {(r[0], r[1]) for r in found} == {key for key, (passed, _) in best.items() if not passed}


def test_which_logs_are_alike(tables, rows):
    found = answer(tables, queries()[2])
    assert {r[0] for r in found} == {r["row"] for r in rows if r["same_log_as"]}
    assert found


@pytest.mark.parametrize("separator", ["comma", "semicolon", "tab"])
def test_duckdb_reads_a_gradebook_however_it_is_written(tables, rows, separator):
    names = ["Müller; Anna", 'Ek, "Bo"', "=1+1", "Łuczak"]
    learners = sorted({r["learner"] for r in rows if r["learner"]})[: len(names)]
    with (tables / "class.csv").open("w", newline="") as file:
        csv.writer(file).writerows([["code", "name"], *zip(learners, names)])
    book = tables / f"book-{separator}.csv"
    book.unlink(missing_ok=True)
    run("grade", str(tables / "class.ndjson"), "--class", str(tables / "class.csv"), "--gradebook", str(book), "--separator", separator, "--bom")
    sign, decimal = {"comma": (",", "."), "semicolon": (";", ","), "tab": ("\t", ".")}[separator]
    read = f"read_csv('{book}', delim = '{sign}', decimal_separator = '{decimal}', header = true)"
    lesson = LESSONS[0]
    found = duckdb.sql(f'select code, name, "{lesson} percent"::double, "{lesson} passed" from {read}').fetchall()
    best = {}
    for r in rows:
        if r["status"] == "verified" and r["lesson"] == lesson:
            key = (r["passed"], r["total"])
            best[r["learner"]] = max(best.get(r["learner"], key), key)
    told = {code: (percent, passed) for code, _, percent, passed in found}
    assert set(told) == {r["learner"] for r in rows if r["learner"]}
    for code, (percent, passed) in told.items():
        if code not in best:
            assert percent is None
            continue
        # To a tenth, downwards.
        assert percent == pytest.approx(math.floor(best[code][1] * 1000 + 1e-6) / 10, abs=1e-9)
        assert passed in (best[code][0], "yes" if best[code][0] else "no")
    # A text that a spreadsheet would take for a formula has an apostrophe in front; else names are as they were given.
    assert [name for _, name, _, _ in found[: len(names)]] == [n if not n.startswith("=") else f"'{n}" for n in names]
