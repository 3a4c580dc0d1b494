"""The tables of `grade` opened by a spreadsheet, LibreOffice Calc, in a German and in an English place: no cell is a formula, every number is the one written.

    apt-get install --no-install-recommends libreoffice-calc-nogui libreoffice-l10n-de
    tests/.venv/bin/python tests/reference/spreadsheet.py

Not a check of tests/run: LibreOffice is some 500 MB. Needs no display. What is opened: the rows and the gradebook of a class whose learners write
formulas as their names, codes and file names, with each separator, also read with a separator that the file was not written with. Cells are
read in LibreOffice's own flat XML, where a formula has `table:formula` and a number `office:value`. A file with a bare formula goes through first:
if LibreOffice did not run that, nothing of this would say anything.
"""

import csv
import json
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree
from pathlib import Path

from conftest import PROJECT, run

LESSONS = ["views-homework", "true-ap"]
NAMES = ["=1+1", "+1+1", "-1+1", "@SUM(1;1)", "x;=1+1", "x,=1+1", "x\t=1+1", 'y";=1+1;"', "\t=1+1", "＝1+1", "Müller; Anna", 'Ek, "Bo"', "Łuczak", "1/2", "007"]
SEPARATORS = {"comma": ",", "semicolon": ";", "tab": "\t"}
TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"


def profile(folder, language):
    """A user of LibreOffice whose system is of a place: what numbers look like follows from it."""
    user = folder / language / "user"
    user.mkdir(parents=True)
    (user / "registrymodifications.xcu").write_text(
        f"""<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema">
<item oor:path="/org.openoffice.Setup/L10N"><prop oor:name="ooSetupSystemLocale" oor:op="fuse"><value>{language}</value></prop></item>
</oor:items>
"""
    )
    return folder / language


def opened(user, file, separator, folder):
    """The cells of a file as LibreOffice has them: rows of (kind, value), kind `formula`, `number` or `text`."""
    # Separator, quote, UTF-8, from line 1, no formats, the place's language, quoted cells are not made text by that, numbers of every form are looked for.
    options = f"CSV:{ord(separator)},34,76,1,,0,false,true"
    command = ["soffice", "--headless", "--norestore", f"-env:UserInstallation=file://{user}", f"--infilter={options}"]
    done = subprocess.run([*command, "--convert-to", "fods", "--outdir", str(folder), str(file)], capture_output=True, text=True, timeout=180)
    written = folder / f"{file.stem}.fods"
    assert written.exists(), f"LibreOffice wrote nothing: {done.stdout}{done.stderr}"
    sheet = ElementTree.parse(written).getroot().find(f".//{TABLE}table")
    written.unlink()
    rows = []
    for row in sheet.iter(f"{TABLE}table-row"):
        cells = []
        for cell in row.iter(f"{TABLE}table-cell"):
            text = "\n".join("".join(p.itertext()) for p in cell.iter(f"{TEXT}p"))
            kind = cell.get(f"{OFFICE}value-type")
            if cell.get(f"{TABLE}formula"):
                found = ("formula", cell.get(f"{TABLE}formula"))
            elif kind in ("float", "percentage", "currency"):
                found = ("number", float(cell.get(f"{OFFICE}value")))
            else:
                found = ("text" if kind in (None, "string") else kind, text)
            cells += [found] * min(int(cell.get(f"{TABLE}number-columns-repeated", "1")), 200)
        while cells and cells[-1] == ("text", ""):
            cells.pop()
        if cells:
            rows.append(cells)
    return rows


def formulas(rows):
    return [value for row in rows for kind, value in row if kind == "formula"]


def same_numbers(rows, written, sign, decimal):
    """Every cell against the file's own, read by Python: bare numbers are numbers, quoted cells keep their text. Returns how many numbers."""
    text = written.read_text(encoding="utf-8-sig")
    numbers = 0
    plain = list(csv.reader(text.splitlines(keepends=True), delimiter=sign))
    assert len(plain) == len(rows), (written.name, len(plain), len(rows))
    for wanted, found in zip(plain, rows):
        found = found + [("text", "")] * (len(wanted) - len(found))
        assert len(found) == len(wanted), (written.name, wanted, found)
        for cell, (kind, value) in zip(wanted, found):
            try:
                number = float(cell.replace(decimal, ".")) if cell[:1].isdigit() or cell[:1] == "-" else None
            except ValueError:
                number = None
            if kind == "number":
                assert number is not None and abs(number - value) <= 1e-12 * max(1.0, abs(number)), (written.name, cell, value)
                numbers += 1
            else:
                assert kind in ("text", "boolean", "date"), (written.name, cell, kind)
                # A number that was written bare must not have become a text or a date.
                assert number is None or f'"{cell}"' in text, (written.name, cell, kind, value)
                # Blanks are elements of their own in flat XML.
                assert kind != "text" or "".join(value.split()) == "".join(cell.split()), (written.name, cell, value)
    return numbers


def tables(folder):
    """A class of thirty whose learners write formulas, as rows and gradebook with each separator."""
    make = ["cargo", "run", "--locked", "--quiet", "--example", "class", "--", "30", *LESSONS]
    receipts = subprocess.run(make, cwd=PROJECT, check=True, capture_output=True, text=True).stdout.splitlines()
    given = folder / "given"
    given.mkdir()
    codes = []
    for i, line in enumerate(receipts):
        receipt = json.loads(line)
        codes.append(receipt["learner"])
        if i < len(NAMES):
            # A file whose name is a formula, and the same receipt again whose learner is one.
            name = NAMES[i].replace("/", "_").replace("\t", "_")
            (given / f"{name}-{i}.json").write_text(line)
            (given / f"again-{i}.json").write_text(json.dumps({**receipt, "learner": NAMES[i]}))
        else:
            (given / f"plain-{i}.json").write_text(line)
    with (folder / "class.csv").open("w", newline="") as file:
        csv.writer(file).writerows([["code", "name"], *zip(sorted(set(codes)), NAMES)])
    made = {}
    for name, sign in SEPARATORS.items():
        rows, book = folder / f"rows-{name}.csv", folder / f"book-{name}.csv"
        arguments = ["--csv", str(rows), "--gradebook", str(book), "--class", str(folder / "class.csv"), "--separator", name]
        run("grade", str(given), *arguments, *(["--bom"] if name != "comma" else []))
        made[name] = (rows, book)
    return made


def main():
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        users = {language: profile(folder, language) for language in ("de-DE", "en-US")}
        bare = folder / "bare.csv"
        bare.write_text('a;b\n=1+1;"=2+2"\n1,5;2.5\n')
        found = opened(users["de-DE"], bare, ";", folder)
        assert formulas(found), "LibreOffice ran no bare formula: this would say nothing"
        assert found[2][0] == ("number", 1.5), f"not a German place: {found[2]}"
        made = tables(folder)
        off = folder / "off.csv"
        off.write_text('"a"\r\n2,5\r\n')
        rows = opened(users["de-DE"], off, ";", folder)
        off.write_text('"a"\r\n2,6\r\n')
        try:
            same_numbers(rows, off, ";", ",")
        except AssertionError:
            pass
        else:
            raise AssertionError("a wrong number was not noticed: this would say nothing")
        opened_files = numbers = 0
        for language, own in [("de-DE", {"semicolon": ","}), ("en-US", {"comma": ".", "tab": "."})]:
            for written, files in made.items():
                for file in files:
                    for sign in SEPARATORS.values():
                        rows = opened(users[language], file, sign, folder)
                        opened_files += 1
                        assert not formulas(rows), (language, file.name, sign, formulas(rows))
                        if written in own and sign == SEPARATORS[written]:
                            here = same_numbers(rows, file, sign, own[written])
                            assert here > 20, (file.name, here)
                            numbers += here
        version = subprocess.run(["soffice", "--version"], capture_output=True, text=True).stdout.strip()
        print(f"{version}: {opened_files} openings, no formula; {numbers} numbers as written")
    return 0


if __name__ == "__main__":
    sys.exit(main())
