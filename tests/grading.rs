//! `check` and `grade` from outside: lessons and receipts as files, folders and lines, with bad ones among them.

mod common;
#[path = "common/tool.rs"]
mod tool;

use common::learner::{course, lessons_folder, receipt, shipped};
use downbeam::lesson::link;
use serde_json::Value;
use std::fs;
use std::path::PathBuf;
use tool::{downbeam, folder, path, printed};

fn text(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).unwrap()
}

#[test]
fn check_says_of_each_lesson_whether_it_can_be_used() {
    let shipped_folder = lessons_folder().to_str().unwrap().to_owned();
    let said = printed(&["check", &shipped_folder]);
    assert_eq!(said.lines().filter(|l| l.starts_with("good  ")).count(), course().len());

    let folder = folder("check");
    fs::write(folder.join("bad.json"), "{\"format\": 1, \"steps\": 7}").unwrap();
    let many = shipped("true-ap")
        .to_json()
        .replace("\"pass_mark\": 90", "\"pass_mark\": 0")
        .replace("true-ap", "True AP");
    fs::write(folder.join("many.json"), many).unwrap();
    fs::write(folder.join("good.json"), shipped("true-ap").to_json()).unwrap();
    fs::write(folder.join("binary.json"), [0xff, 0xfe]).unwrap();
    let folder = folder.to_str().unwrap();
    let output = downbeam(&["check", folder, "--json"]);
    assert_eq!(output.status.code(), Some(1));
    assert_eq!(text(&output.stderr), "downbeam: 3 of 4 lessons cannot be used\n");
    let all: Vec<Value> = text(&output.stdout).lines().map(|l| serde_json::from_str(l).unwrap()).collect();
    let problems: Vec<usize> = all.iter().map(|l| l["problems"].as_array().unwrap().len()).collect();
    // Of a lesson with many faults all are reported, and none that follows from another.
    assert!(problems[0] >= 6, "{all:?}");
    assert_eq!(problems[1..], [1, 0, 2], "{all:?}");
    assert_eq!(all[2]["sha256"], shipped("true-ap").hash());
    assert!(all[0]["problems"][0].as_str().unwrap().starts_with("steps: found integer '7'"));

    let missing = downbeam(&["check", "no such lesson.json"]);
    assert_eq!(missing.status.code(), Some(1));
    assert!(text(&missing.stdout).contains("cannot read no such lesson.json"));
    let none = downbeam(&["check"]);
    assert_eq!(none.status.code(), Some(2));
}

#[test]
fn check_makes_the_link_that_it_reads() {
    let file = path(&lessons_folder(), "true-ap.json");
    let said = printed(&["check", &file, "--link", "https://example.org/course/#old"]);
    let link = said.lines().last().unwrap().trim();
    assert!(link.starts_with("https://example.org/course/#lesson=") && link.len() < 2000, "{link}");
    assert!(printed(&["check", link]).starts_with("good  link"));
    let cut = downbeam(&["check", &link[..link.len() - 30]]);
    assert_eq!(cut.status.code(), Some(1));
    assert!(text(&cut.stdout).starts_with("wrong link"));
}

#[test]
fn the_schemas_that_ship_are_those_of_the_types() {
    for name in ["lesson", "receipt", "report-row", "view"] {
        let file = lessons_folder().join(format!("{name}.schema.json"));
        let shipped = fs::read_to_string(&file).unwrap_or_default();
        assert!(
            printed(&["schema", name]) == shipped,
            "types have changed: cargo run -- schema {name} > www/lessons/{name}.schema.json"
        );
    }
    for (wrong, said) in
        [(vec!["schema"], "schema wants a name"), (vec!["schema", "hat"], "unknown schema 'hat'")]
    {
        let done = downbeam(&wrong);
        assert_eq!(done.status.code(), Some(2));
        assert!(text(&done.stderr).contains(said), "{}", text(&done.stderr));
    }
}

/// A class in a folder as a learning platform gives it: a folder a learner, and a file of lines.
fn class(name: &str) -> PathBuf {
    let folder = folder(name);
    let lesson = shipped("lateral-view");
    for code in ["anna", "ben"] {
        fs::create_dir(folder.join(code)).unwrap();
        fs::write(folder.join(code).join("receipt.json"), receipt(&lesson, code).to_json()).unwrap();
    }
    let anna = receipt(&lesson, "anna");
    let mut altered = anna.clone();
    altered.claim.total = 0.5;
    let mut old = anna.clone();
    old.engine.scoring = "0123456789abcdef".to_owned();
    let line = |r| serde_json::to_string(r).unwrap();
    let whole = line(&anna);
    let lines = format!("{}\n\n{}\r\n{}\n{}", line(&altered), line(&old), &whole[..200], whole);
    fs::write(folder.join("more.ndjson"), lines).unwrap();
    fs::write(folder.join("notes.txt"), "not looked at").unwrap();
    fs::write(folder.join("z.json"), [0xff, 0xfe, 0x00]).unwrap();
    folder
}

#[test]
fn grade_gives_every_receipt_a_row_whatever_stands_beside_it() {
    let folder = class("class");
    let (csv, ndjson) = (path(&folder, "out.csv"), path(&folder, "rows.out"));
    let output = downbeam(&[
        "grade",
        folder.to_str().unwrap(),
        "no-such.json",
        "--csv",
        &csv,
        "--ndjson",
        &ndjson,
        "--summary",
    ]);
    // A missing path is reported at the end, and what is there has been graded all the same.
    assert_eq!(output.status.code(), Some(1));
    assert_eq!(text(&output.stderr), "downbeam: there is no no-such.json\n");
    let said = text(&output.stdout);
    let rows: Vec<Value> =
        fs::read_to_string(&ndjson).unwrap().lines().map(|l| serde_json::from_str(l).unwrap()).collect();
    let status: Vec<&str> = rows.iter().map(|r| r["status"].as_str().unwrap()).collect();
    assert_eq!(
        status,
        [
            "verified",
            "verified",
            "altered",
            "unknown_engine",
            "unreadable",
            "verified",
            "unreadable",
            "unreadable"
        ]
    );
    assert_eq!(rows[3]["line"], 3);
    assert!(rows[7]["note"].as_str().unwrap().starts_with("cannot be read"));
    // The same patient for everybody and the same careful hand: the same log under two codes.
    assert_eq!((&rows[0]["same_log_as"], &rows[1]["same_log_as"]), (&2.into(), &1.into()));
    assert_eq!(rows[5]["repeat_of"], 1);
    assert_eq!(fs::read_to_string(&csv).unwrap().matches("\r\n").count(), rows.len() + 1);
    for wanted in [
        "the total is claimed as 50.00 %, and the log gives 100.00 %",
        "same log as row 2, of another learner",
        "row 1 again",
        "The lateral that proves depth (lateral-view)",
        "8 receipts: 3 verified, 1 altered, 1 unknown engine, 3 unreadable; 5 with the same log as another learner's, 0 much like one.",
        "A receipt proves that its log gives its score, not who did it.",
    ] {
        assert!(said.contains(wanted), "wanted: {wanted}\n{said}");
    }
}

#[test]
fn grade_takes_lessons_from_files_and_links() {
    let folder = class("lessons");
    let receipts = path(&folder, "anna/receipt.json");
    let other = path(&lessons_folder(), "true-ap.json");
    assert!(printed(&["grade", &receipts, "--lesson", &other]).contains("unknown lesson"));
    let link = format!("https://example.org/#{}", link::fragment(&shipped("lateral-view")).unwrap());
    assert!(
        printed(&["grade", &receipts, "--lesson", &other, "--lesson", &link])
            .contains("1 receipts: 1 verified")
    );
}

#[test]
fn wrong_use_of_grade_is_one_sentence() {
    let folder = folder("empty");
    let empty = folder.to_str().unwrap();
    let receipts = class("wrong-use");
    let receipts = receipts.to_str().unwrap();
    for (arguments, code, said) in [
        (vec!["grade"], 2, "grade wants receipts, such as grade receipts/"),
        (vec!["grade", "--fast"], 2, "unknown option '--fast' of grade"),
        (vec!["grade", "x", "--csv"], 2, "--csv wants a value after it"),
        (vec!["grade", empty], 1, "there is no receipt in"),
        (vec!["grade", receipts, "--lesson", "none.json"], 1, "cannot read none.json"),
        (
            vec!["grade", receipts, "--lesson", "#lesson=e30"],
            1,
            "cannot use the link: missing field 'format'",
        ),
        (vec!["grade", receipts, "--lesson", empty], 1, "there is no lesson in"),
        (vec!["grade", receipts, "--csv", "no such folder/a.csv"], 1, "cannot write no such folder/a.csv"),
    ] {
        let output = downbeam(&arguments);
        let error = text(&output.stderr);
        assert_eq!(output.status.code(), Some(code), "{arguments:?}: {error}");
        assert!(error.contains(said), "wanted: {said}\nfound: {error}");
        assert_eq!(error.trim_end().lines().count(), 1, "{error}");
    }
}
