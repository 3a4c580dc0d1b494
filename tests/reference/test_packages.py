"""Tables of contents of packages against the published schemas: SCORM's through libxml2 (lxml). cmi5's schema is in no package registry;
its rules for what we write are held here, from AICC, cmi5 (2016), section 13 and the annex with the schema."""

import io
import json
import zipfile

import pytest
from conftest import PROJECT, run
from lxml import etree
from schemas import schema

LESSONS = PROJECT / "www" / "lessons"
SCHEMAS = {
    "scorm12": ("scorm12edition", "imscp_rootv1p1p2.xsd", "adlcp_rootv1p2.xsd"),
    "scorm2004": ("scorm20044thedition", "imscp_v1p1.xsd", "adlcp_v1p3.xsd", "imsss_v1p0.xsd"),
}
NAMES = {"c": "https://w3id.org/xapi/profiles/cmi5/v1/CourseStructure.xsd"}
MARKUP = "<b>A & B</b> \"quoted\" 'single' ]]> é 日本"


@pytest.fixture(scope="module")
def lessons(tmp_path_factory):
    """A shipped lesson, and one whose texts look like markup and come in two languages."""
    plain = json.loads((LESSONS / "few-pictures.json").read_text())
    odd = plain | {"id": "odd", "title": {"en": MARKUP, "de-CH": MARKUP}, "intro": {"en": MARKUP + "\n" + MARKUP}, "pass_mark": 100}
    folder = tmp_path_factory.mktemp("lessons")
    found = {}
    for lesson in (plain, odd):
        path = folder / f"{lesson['id']}.json"
        path.write_text(json.dumps(lesson))
        found[lesson["id"]] = (path, lesson)
    return found


def packed(form, path, folder):
    out = folder / f"{path.stem}-{form}.zip"
    run("pack", f"--{form}", "--no-build", "--lesson", str(path), "--out", str(out))
    return zipfile.ZipFile(io.BytesIO(out.read_bytes()))


@pytest.fixture(scope="module")
def valid():
    return {form: schema(*files) for form, files in SCHEMAS.items()}


@pytest.mark.parametrize("name", ["few-pictures", "odd"])
@pytest.mark.parametrize("form", SCHEMAS)
def test_a_manifest_keeps_to_its_schemas(form, name, lessons, valid, tmp_path):
    path, lesson = lessons[name]
    archive = packed(form, path, tmp_path)
    assert archive.testzip() is None
    root = etree.fromstring(archive.read("imsmanifest.xml"))
    valid[form].assertValid(root)
    assert root.findtext(".//{*}organization/{*}item/{*}title") == lesson["title"]["en"]
    listed = {file.get("href") for file in root.iter("{*}file")}
    assert listed == set(archive.namelist()) - {"imsmanifest.xml"}
    assert root.find(".//{*}resource").get("href") in listed


@pytest.mark.parametrize("form", SCHEMAS)
def test_the_schemas_refuse_a_broken_manifest(form, lessons, valid, tmp_path):
    root = etree.fromstring(packed(form, lessons["odd"][0], tmp_path).read("imsmanifest.xml"))
    root.find("{*}resources").remove(root.find(".//{*}resource"))
    root.remove(root.find("{*}organizations"))
    assert not valid[form].validate(root)


@pytest.mark.parametrize("name", ["few-pictures", "odd"])
def test_a_course_structure_keeps_to_the_specification(name, lessons, tmp_path):
    path, lesson = lessons[name]
    archive = packed("cmi5", path, tmp_path)
    root = etree.fromstring(archive.read("cmi5.xml"))
    assert root.tag == f"{{{NAMES['c']}}}courseStructure"
    # The sequences of the schema.
    assert [etree.QName(e).localname for e in root] == ["course", "au"]
    course, au = root
    assert [etree.QName(e).localname for e in course] == ["title", "description"]
    assert [etree.QName(e).localname for e in au] == ["title", "description", "url"]
    assert course.get("id") != au.get("id")
    assert set(au.attrib) <= {"id", "moveOn", "masteryScore", "launchMethod", "activityType"}
    assert au.get("moveOn") in ("NotApplicable", "Passed", "Completed", "CompletedAndPassed", "CompletedOrPassed")
    assert float(au.get("masteryScore")) == lesson["pass_mark"] / 100
    assert au.get("launchMethod") in ("AnyWindow", "OwnWindow")
    assert au.findtext("c:url", namespaces=NAMES) in archive.namelist()
    for key, tag in (("title", "title"), ("intro", "description")):
        for holder in (course, au):
            strings = holder.findall(f"c:{tag}/c:langstring", namespaces=NAMES)
            assert {s.get("lang"): s.text for s in strings} == lesson[key]


@pytest.fixture(scope="module")
def course(lessons, tmp_path_factory):
    """Both lessons in one package of each form."""
    folder = tmp_path_factory.mktemp("course")
    found = {}
    for form in (*SCHEMAS, "cmi5"):
        out = folder / f"{form}.zip"
        chosen = [word for path, _ in lessons.values() for word in ("--lesson", str(path))]
        run("pack", f"--{form}", "--no-build", *chosen, "--title", MARKUP, "--out", str(out))
        found[form] = zipfile.ZipFile(io.BytesIO(out.read_bytes()))
    return found


@pytest.mark.parametrize("form", SCHEMAS)
def test_the_manifest_of_a_course_keeps_to_its_schemas(form, course, lessons, valid):
    archive = course[form]
    root = etree.fromstring(archive.read("imsmanifest.xml"))
    valid[form].assertValid(root)
    assert root.findtext(".//{*}organization/{*}title") == MARKUP
    items = root.findall(".//{*}organization/{*}item")
    assert [i.findtext("{*}title") for i in items] == [lesson["title"]["en"] for _, lesson in lessons.values()]
    resources = {r.get("identifier"): r for r in root.iter("{*}resource")}
    pages = [resources[i.get("identifierref")] for i in items]
    assert len({p.get("href") for p in pages}) == len(lessons)
    # What is in the package is listed, and each page leads to all that is not its own.
    listed = {file.get("href") for file in root.iter("{*}file")}
    assert listed == set(archive.namelist()) - {"imsmanifest.xml"}
    shared = {d.get("identifierref") for p in pages for d in p.iter("{*}dependency")}
    assert len(shared) == 1 and len(resources[shared.pop()]) > 20


def test_the_course_structure_of_a_course_keeps_to_the_specification(course, lessons):
    archive = course["cmi5"]
    root = etree.fromstring(archive.read("cmi5.xml"))
    assert [etree.QName(e).localname for e in root] == ["course", "block"]
    block = root[1]
    assert [etree.QName(e).localname for e in block] == ["title", "description", "au", "au"]
    # Ids of a course structure are all different (13.1.4).
    ids = [e.get("id") for e in (root[0], block, *block.findall("c:au", namespaces=NAMES))]
    assert len(set(ids)) == len(ids) == 4
    for au, (_, lesson) in zip(block.findall("c:au", namespaces=NAMES), lessons.values()):
        assert float(au.get("masteryScore")) == lesson["pass_mark"] / 100
        assert au.findtext("c:url", namespaces=NAMES) in archive.namelist()
        assert {s.get("lang"): s.text for s in au.findall("c:description/c:langstring", namespaces=NAMES)} == lesson["intro"]
    assert [s.text for s in root[0].findall("c:title/c:langstring", namespaces=NAMES)] == [MARKUP]
