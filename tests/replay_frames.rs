//! `replay`: the frames of an attempt and of a receipt are what `view` draws from where the C-arm stood, evenly spaced in time, and no file is
//! lost.

mod common;
#[path = "common/tool.rs"]
mod tool;

use common::learner::{receipt, shipped};
use std::fs;
use std::path::Path;
use tool::{downbeam, folder, path};

/// Two views and a needle, 4.5 s with their pauses cut, on the average patient.
const ATTEMPT: &str = r#"{"patient": "average", "case": {"target": {"level": "L4", "side": "left"}},
    "log": ["10 orient 120 -40", "20 keep true_ap", "30 orient 238 -20", "40 keep oblique", "50 mark -1540 -560",
            "60 place 22 127", "70 advance 300 0", "2000 finish"]}"#;

fn frames_in(folder: &Path) -> usize {
    fs::read_dir(folder)
        .unwrap()
        .filter(|f| f.as_ref().unwrap().file_name().to_string_lossy().ends_with(".png"))
        .count()
}

fn pixels(file: &Path) -> (u32, Vec<u8>) {
    let mut reader =
        png::Decoder::new(std::io::BufReader::new(fs::File::open(file).unwrap())).read_info().unwrap();
    let mut bytes = vec![0; reader.output_buffer_size().unwrap()];
    let info = reader.next_frame(&mut bytes).unwrap();
    assert_eq!(info.color_type, png::ColorType::Grayscale);
    (info.width, bytes)
}

#[test]
fn frames_are_the_films_of_where_the_c_arm_stood() {
    let folder = folder("replayed");
    let (file, out) = (path(&folder, "attempt.json"), path(&folder, "frames"));
    fs::write(&file, ATTEMPT).unwrap();
    let arguments = ["replay", &file, "--out", &out, "--rate", "2", "--pixels", "256"];
    let run = downbeam(&arguments);
    assert!(run.status.success(), "{}", String::from_utf8_lossy(&run.stderr));
    let out = Path::new(&out);
    // 3.5 s to the last push, 2 s of the long pause, a second at the end, two frames a second.
    assert_eq!(frames_in(out), 13);
    let table = fs::read_to_string(out.join("frames.csv")).unwrap();
    let rows: Vec<&str> = table.lines().collect();
    assert_eq!(rows.len(), 14);
    assert_eq!(rows[0], "frame,seconds,oblique_deg,tilt_deg,depth_mm,done");
    assert_eq!(rows[2], "2,0.50,12.0,-4.0,,10 orient 120 -40");
    assert!(rows[8].starts_with("8,3.50,23.8,-2.0,30.0,70 advance 300 0"), "{}", rows[8]);
    assert!(rows[13].ends_with(','), "{}", rows[13]);
    // Without a needle a frame is the film that `view` draws there.
    let seen = path(&folder, "seen.png");
    let view = [
        "view",
        "--level",
        "L4",
        "--side",
        "left",
        "--oblique",
        "12",
        "--tilt",
        "-4",
        "--png",
        &seen,
        "--pixels",
        "256",
    ];
    assert!(downbeam(&view).status.success());
    let (width, film) = pixels(Path::new(&seen));
    assert_eq!(width, 256);
    assert_eq!(pixels(&out.join("frame-0002.png")), (256, film.clone()));
    assert_ne!(pixels(&out.join("frame-0005.png")).1, film);
    // The needle shows.
    assert_ne!(pixels(&out.join("frame-0008.png")).1, pixels(&out.join("frame-0006.png")).1);

    // What is there stays, unless one says so; the attempt itself always does.
    let again = downbeam(&arguments);
    let said = String::from_utf8(again.stderr).unwrap();
    assert_eq!((again.status.code(), said.lines().count()), (Some(1), 1), "{said}");
    assert!(said.contains("frame-0001.png is there already"), "{said}");
    assert!(downbeam(&[&arguments[..], &["--force"]].concat()).status.success());
    let named = path(&folder, "frame-0001.png");
    fs::write(&named, ATTEMPT).unwrap();
    let over = downbeam(&["replay", &named, "--out", folder.to_str().unwrap(), "--force"]);
    assert!(String::from_utf8_lossy(&over.stderr).contains("would write over"));
    assert_eq!(fs::read_to_string(&named).unwrap(), ATTEMPT);
}

#[test]
fn a_receipt_is_replayed_on_its_own_patient() {
    let folder = folder("receipt-replayed");
    let (file, out) = (path(&folder, "anna.json"), path(&folder, "frames"));
    let handed = receipt(&shipped("curved-assessment"), "anna");
    fs::write(&file, handed.to_json()).unwrap();
    let run = downbeam(&["replay", &file, "--out", &out, "--rate", "1", "--pixels", "128", "--outlines"]);
    assert!(run.status.success(), "{}", String::from_utf8_lossy(&run.stderr));
    let table = fs::read_to_string(Path::new(&out).join("frames.csv")).unwrap();
    // Every action of the log stands in the table, once.
    let done: Vec<&str> = table
        .lines()
        .skip(1)
        .flat_map(|row| row.splitn(6, ',').nth(5).unwrap().split("; "))
        .filter(|d| !d.is_empty())
        .collect();
    assert_eq!(done, handed.log.iter().map(String::as_str).collect::<Vec<_>>());
}

#[test]
fn what_cannot_be_replayed_is_one_sentence_and_writes_nothing() {
    let folder = folder("not-replayed");
    let out = path(&folder, "frames");
    for (text, said) in [
        ("{}", "is neither an attempt nor a receipt"),
        ("[1, 2", "is neither an attempt nor a receipt"),
        (&ATTEMPT.replace("average", "nobody"), "names a patient that there is not: 'nobody'"),
        (&ATTEMPT.replace("\"60 place 22 127\", ", ""), "cannot be replayed: there is no needle yet"),
        (&ATTEMPT.replace("keep", "hold"), "is no attempt"),
    ] {
        let file = path(&folder, "given.json");
        fs::write(&file, text).unwrap();
        let run = downbeam(&["replay", &file, "--out", &out]);
        let sentence = String::from_utf8(run.stderr).unwrap();
        assert!(sentence.contains(said) && sentence.lines().count() == 1, "{sentence}");
        assert_eq!(run.status.code(), Some(1), "{sentence}");
        assert!(!Path::new(&out).exists());
    }
    for (arguments, said) in [
        (vec!["replay"], "replay wants an attempt or a receipt"),
        (vec!["replay", "a.json"], "--out"),
        (vec!["replay", "a.json", "--out", "b", "--rate", "0"], "--rate wants 1 to 25, not '0'"),
        (
            vec!["replay", "a.json", "--out", "b", "--pixels", "500"],
            "--pixels wants 128 to 1024 in steps of 32, not '500'",
        ),
    ] {
        let run = downbeam(&arguments);
        let sentence = String::from_utf8(run.stderr).unwrap();
        assert!(sentence.contains(said) && sentence.lines().count() == 1, "{sentence}");
        assert_eq!(run.status.code(), Some(2), "{sentence}");
    }
}

/// What a longer run left is refused without `--force`, removed with it, and nothing else in the folder is touched.
#[test]
fn frames_of_a_longer_run_do_not_stay_behind() {
    let folder = folder("shorter-run");
    let (file, out) = (path(&folder, "attempt.json"), path(&folder, "frames"));
    fs::write(&file, ATTEMPT).unwrap();
    let at = |rate: &str, more: &[&str]| {
        let arguments = ["replay", &file, "--out", &out, "--rate", rate, "--pixels", "128"];
        downbeam(&[&arguments[..], more].concat())
    };
    assert!(at("2", &[]).status.success());
    assert_eq!(frames_in(Path::new(&out)), 13);
    for own in ["frame-1.png", "frame-00099.png", "frames.png", "notes.txt"] {
        fs::write(Path::new(&out).join(own), "mine").unwrap();
    }
    assert!(!at("1", &[]).status.success());
    let run = at("1", &["--force"]);
    let said = String::from_utf8(run.stdout).unwrap();
    assert!(run.status.success() && said.contains("frames of a longer run removed"), "{said}");
    let rows = fs::read_to_string(Path::new(&out).join("frames.csv")).unwrap().lines().count() - 1;
    assert!(rows < 13 && Path::new(&out).join(format!("frame-{rows:04}.png")).exists());
    assert!(!Path::new(&out).join(format!("frame-{:04}.png", rows + 1)).exists());
    for own in ["frame-1.png", "frame-00099.png", "frames.png", "notes.txt"] {
        assert_eq!(fs::read_to_string(Path::new(&out).join(own)).unwrap(), "mine");
    }
}
