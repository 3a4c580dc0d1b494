//! The host tool loses no file: what it reads is never written over, what is there only with `--force`, and what it is asked wrongly
//! is one sentence.

mod common;
#[path = "common/tool.rs"]
mod tool;

use common::learner::{lessons_folder, receipt, shipped};
use std::fs;
use tool::{downbeam, folder, path};

/// What a run that must fail says, and its exit code.
fn refused(arguments: &[&str]) -> (String, i32) {
    let output = downbeam(arguments);
    let said = String::from_utf8(output.stderr).unwrap();
    assert!(!output.status.success(), "{arguments:?}");
    assert_eq!(said.lines().count(), 1, "{said}");
    (said, output.status.code().unwrap())
}

#[test]
fn what_is_read_is_never_written_over() {
    let folder = folder("inputs");
    let (lesson, handed, needle) =
        (path(&folder, "lesson.json"), path(&folder, "anna.json"), path(&folder, "needle.json"));
    fs::write(&lesson, shipped("true-ap").to_json()).unwrap();
    fs::write(&handed, receipt(&shipped("true-ap"), "anna").to_json()).unwrap();
    fs::write(&needle, "{\"entry\":{\"area_centre\":{}},\"moves\":[]}").unwrap();
    let before = [&lesson, &handed, &needle].map(|file| fs::read(file).unwrap());
    let inside = folder.to_str().unwrap();
    let detour = format!("{inside}/../inputs/anna.json");
    let view = ["view", "--level", "L4", "--side", "left", "--needle", &needle, "--force"];
    for arguments in [
        vec!["pack", "--scorm12", "--no-build", "--force", "--lesson", &lesson, "--out", &lesson],
        vec!["grade", &handed, "--force", "--csv", &handed],
        vec!["grade", &handed, "--force", "--ndjson", &detour],
        vec!["grade", inside, "--force", "--csv", &handed],
        vec!["grade", &handed, "--lesson", &lesson, "--force", "--csv", &lesson],
        [&view[..], &["--png", &needle]].concat(),
        [&view[..], &["--svg", &needle]].concat(),
    ] {
        let (said, code) = refused(&arguments);
        assert!(said.contains("would write over") && code == 1, "{said}");
    }
    #[cfg(unix)]
    {
        let link = path(&folder, "link.csv");
        fs::hard_link(&handed, &link).unwrap();
        assert!(refused(&["grade", &handed, "--force", "--csv", &link]).0.contains("would write over"));
    }
    assert_eq!(before, [&lesson, &handed, &needle].map(|file| fs::read(file).unwrap()));
}

#[test]
fn a_file_that_is_there_is_written_over_only_when_told_to() {
    let folder = folder("there");
    let (handed, table, mesh) = (path(&folder, "anna.json"), path(&folder, "a.csv"), path(&folder, "a.obj"));
    fs::write(&handed, receipt(&shipped("true-ap"), "anna").to_json()).unwrap();
    for (arguments, file) in [
        (vec!["grade", &handed, "--csv", &table], &table),
        (vec!["mesh", "--level", "L4", "--part", "pedicle", "--side", "left", "--out", &mesh], &mesh),
    ] {
        fs::write(file, "mine").unwrap();
        let (said, code) = refused(&arguments);
        assert!(said.contains("is there already: give another name, or --force") && code == 1, "{said}");
        assert_eq!(fs::read_to_string(file).unwrap(), "mine");
        assert!(downbeam(&[&arguments[..], &["--force"]].concat()).status.success());
        assert_ne!(fs::read_to_string(file).unwrap(), "mine");
    }
    let (said, code) = refused(&["grade", &handed, "--csv", "-"]);
    assert!(said.contains("'-' is none") && code == 2, "{said}");
    fs::write(&table, b"M\xfcller\n").unwrap();
    let (said, code) = refused(&["codes", &table]);
    assert!(
        said.contains("is not UTF-8 text: save it from the spreadsheet as 'CSV UTF-8'") && code == 1,
        "{said}"
    );
    for command in ["grade", "check", "codes", "replay"] {
        let (said, code) = refused(&[command, "-"]);
        assert!(said.contains("'-' is no file: write what is to be read into one") && code == 2, "{said}");
    }
    let (said, code) = refused(&["grade", &handed, "--csv", "x", "--ndjson", "x"]);
    assert!(said.contains("name the same file") && code == 2, "{said}");
    let (said, code) = refused(&["view", "--level", "L4", "--side", "left", "--level", "L5"]);
    assert!(said.contains("--level is given twice: give it once") && code == 2, "{said}");
}

#[test]
fn exit_codes_tell_a_missing_path_and_when_asked_an_altered_receipt() {
    let folder = folder("codes");
    let (good, bad, note) =
        (path(&folder, "anna.json"), path(&folder, "bert.json"), path(&folder, "mail.txt"));
    let own = receipt(&shipped("true-ap"), "anna");
    fs::write(&good, own.to_json()).unwrap();
    let mut altered = own.clone();
    altered.claim.total = 0.123;
    fs::write(&bad, altered.to_json()).unwrap();
    fs::write(&note, "Dear all,\n").unwrap();
    let code = |arguments: &[&str]| downbeam(arguments).status.code();
    assert_eq!(code(&["grade", &good, &bad]), Some(0));
    assert_eq!(code(&["grade", &good, "--strict"]), Some(0));
    let (said, strict) = refused(&["grade", &good, &bad, "--strict"]);
    assert!(said.contains("1 of 2 receipts are not verified") && strict == 3, "{said}");
    let gone = path(&folder, "gone.json");
    let output = downbeam(&["grade", &good, &gone]);
    assert_eq!(output.status.code(), Some(1));
    assert!(
        String::from_utf8(output.stdout).unwrap().contains("verified"),
        "the others are graded all the same"
    );
    assert!(String::from_utf8(output.stderr).unwrap().contains("gone.json"));
    // A lesson that is not among those given: the message itself says the way.
    let other = folder.join("lessons");
    fs::create_dir_all(&other).unwrap();
    fs::copy(lessons_folder().join("views-homework.json"), other.join("views.json")).unwrap();
    let said =
        String::from_utf8(downbeam(&["grade", &good, "--lesson", other.to_str().unwrap()]).stdout).unwrap();
    assert!(said.contains("given with --lesson FILE, FOLDER or LINK"), "{said}");
}

#[test]
fn text_files_and_what_platforms_give_out_are_read_and_a_letter_is_not() {
    let folder = folder("platform");
    let own = receipt(&shipped("true-ap"), "anna").to_json();
    let statement =
        serde_json::json!({"verb": {}, "result": {"extensions": {"urn:downbeam:receipt": own}}}).to_string();
    let one_line = serde_json::to_string(&serde_json::from_str::<serde_json::Value>(&own).unwrap()).unwrap();
    for (name, text) in [
        ("a.txt", own.clone()),
        ("b.json", format!("db1.0.811c9dc5. {one_line}")),
        ("c.ndjson", format!("{statement}\n{one_line}\n")),
        ("d.txt", format!("db1.0.811c9dc5. {one_line}\n{one_line}\n")),
        ("letter.txt", "Dear all,\n{}\n".to_owned()),
        ("table.csv", one_line.clone()),
    ] {
        fs::write(folder.join(name), text).unwrap();
    }
    let said = String::from_utf8(downbeam(&["grade", folder.to_str().unwrap()]).stdout).unwrap();
    assert!(said.contains("\n6 receipts: 6 verified;"), "{said}");
}
