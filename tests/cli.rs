//! The host tool from outside: output, files, exit codes, and the server.

#[path = "common/tool.rs"]
mod tool;

use serde_json::Value;
use std::fs;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::Duration;
use tool::{downbeam, folder, printed};

fn json(arguments: &[&str]) -> Value {
    serde_json::from_str(&printed(arguments)).unwrap()
}

#[test]
fn patients_and_their_fields_are_listed_and_can_be_asked_for() {
    let listed = json(&["patients", "--json"]);
    let names: Vec<&str> =
        listed["patients"].as_array().unwrap().iter().map(|p| p["name"].as_str().unwrap()).collect();
    assert!(names.contains(&"average") && names.contains(&"slipped"), "{names:?}");
    let text = printed(&["patients"]);
    for field in listed["fields"].as_array().unwrap() {
        assert!(text.contains(field["name"].as_str().unwrap()), "{field}");
    }
    let view = ["view", "--level", "L4", "--side", "left", "--json"];
    let unchanged = json(&view);
    let ask = |more: &[&'static str]| json(&[&view[..], more].concat());
    let slipped = ask(&["--with", "slip_percent=20", "--with", "size=0.9"]);
    assert_eq!(slipped["patient"], "average with size 0.9, slip_percent 20");
    assert_ne!(slipped["best"], unchanged["best"]);
    assert_ne!(ask(&["--with", "variation=1", "--patient-seed", "3"])["best"], unchanged["best"]);
    assert_eq!(ask(&["--patient-seed", "3"])["best"], unchanged["best"]);
}

#[test]
fn wrong_use_is_one_sentence_and_exit_code_2() {
    let view = ["view", "--level", "L4", "--side", "left"];
    let with = |more: &[&'static str]| [&view[..], more].concat();
    for (arguments, said) in [
        (vec!["view", "--side", "left"], "view wants --level"),
        (vec!["view", "--level", "L4"], "view wants --side"),
        (vec!["view", "--level", "L7", "--side", "left"], "unknown level 'L7': allowed are L1, L2"),
        (vec!["view", "--level", "L4", "--side", "up"], "unknown side 'up': allowed are left, right"),
        (with(&["--patient", "nobody"]), "unknown patient 'nobody': allowed are average"),
        (with(&["--with", "curve_deg"]), "--with wants FIELD=NUMBER, such as curve_deg=9, not 'curve_deg'"),
        (with(&["--with", "curve_deg=40"]), "curve_deg of 40 degrees is not possible: allowed are -12 to 12"),
        (with(&["--with", "height=1"]), "unknown field 'height' of a patient: allowed are size, turned_deg,"),
        (
            with(&["--patient-seed", "-1"]),
            "--patient-seed wants a whole number from 0 to 4294967295, not '-1'",
        ),
        (with(&["--oblique", "NaN"]), "oblique of NaN degrees is not possible"),
        (with(&["--oblique", "111"]), "oblique of 111 degrees is not possible: allowed are -110 to 110"),
        (with(&["--tilt", "-50.5"]), "tilt of -50.5 degrees is not possible: allowed are -50 to 50"),
        (with(&["--tilt", "inf"]), "tilt of inf degrees is not possible"),
        (with(&["--image-rotation", "181"]), "image rotation of 181 degrees is not possible"),
        (with(&["--tilt", "steep"]), "--tilt wants a number of degrees, not 'steep'"),
        (with(&["--tilt"]), "--tilt wants a value after it"),
        (with(&["--tilt", "--json"]), "--tilt wants a value after it"),
        (with(&["--turbo"]), "unknown option '--turbo' of view"),
        (with(&["L5"]), "unknown argument 'L5' of view"),
        (with(&["--best", "--tilt", "3"]), "--best finds the orientation itself"),
        (with(&["--best", "--view", "sunrise"]), "unknown view 'sunrise': allowed are ap, oblique, lateral"),
        (with(&["--view", "ap"]), "give --best too"),
        (with(&["--labels"]), "give --svg FILE too"),
        (with(&["--bone-white"]), "give --png FILE too"),
        (with(&["--spot", "--fluoro", "3"]), "--spot is one picture and --fluoro a run of pulses"),
        (with(&["--spot", "--low-dose"]), "--pulse-rate and --low-dose are for fluoroscopy"),
        (with(&["--pulse-rate", "8"]), "give --fluoro N too"),
        (with(&["--seed", "3"]), "give --spot or --fluoro N too"),
        (with(&["--spot", "--seed", "-3"]), "--seed wants a whole number, not '-3'"),
        (with(&["--fluoro", "0"]), "--fluoro wants a number of pulses from 1 to 18000, not '0'"),
        (
            with(&["--fluoro", "3", "--pulse-rate", "7"]),
            "pulse rate of 7 is not possible: allowed are 1, 2, 4",
        ),
        (with(&["--spot", "--open", "0.5"]), "--open wants two shares of the field as W,H"),
        (with(&["--spot", "--open", "0.1,1"]), "collimation of 0.1 is not possible: allowed are 0.2 to 1"),
        (with(&["--spot", "--open", "1,NaN"]), "collimation of NaN is not possible"),
        (
            with(&["--spot", "--magnification", "3"]),
            "magnification of 3 is not possible: allowed are 1, 1.4, 2",
        ),
        (vec!["mesh", "--level", "L4"], "mesh wants --out"),
        (vec!["mesh", "--level", "L4", "--out", "L4.ply"], "must end in .obj or .stl"),
        (vec!["mesh", "--level", "L4", "--part", "wing", "--out", "a.obj"], "unknown part 'wing'"),
        (
            vec!["mesh", "--level", "L4", "--part", "rib", "--out", "a.obj"],
            "L4 has no part 'rib': allowed are body",
        ),
        (vec!["mesh", "--level", "L4", "--side", "left", "--out", "a.obj"], "give --part or --tissue too"),
        (vec!["serve", "--port", "70000"], "--port wants a number from 0 to 65535, not '70000'"),
        (vec!["--prot", "8080"], "unknown option '--prot' of serve"),
        (vec!["build", "fast"], "unknown argument 'fast' of build"),
        (
            vec!["launch"],
            "unknown command 'launch': allowed are serve, build, pack, view, mesh, patients, check, grade, codes, replay, schema, model, texts, completions, man, help",
        ),
        (vec!["help", "launch"], "unknown command 'launch'"),
        (vec!["completions"], "completions wants a shell: allowed are bash, zsh, fish, elvish, powershell"),
        (vec!["completions", "sh"], "unknown shell 'sh': allowed are bash"),
        (vec!["man", "grade"], "unknown argument 'grade' of man"),
    ] {
        let output = downbeam(&arguments);
        let error = String::from_utf8_lossy(&output.stderr);
        assert_eq!(output.status.code(), Some(2), "{arguments:?}: {error}");
        assert!(error.starts_with("downbeam: ") && error.contains(said), "{arguments:?}: {error}");
        assert_eq!(error.trim_end().lines().count(), 1, "{arguments:?}: {error}");
        assert!(output.stdout.is_empty(), "{arguments:?}");
    }
}

#[test]
fn unwritable_files_are_one_sentence_and_exit_code_1() {
    let file = folder("unwritable").join("no such folder").join("x");
    for (command, option, end) in [
        ("view", "--png", "png"),
        ("view", "--svg", "svg"),
        ("view", "--outline-json", "json"),
        ("view", "--path-length", "npy"),
        ("view", "--attenuation", "npy"),
        ("mesh", "--out", "obj"),
    ] {
        let path = file.with_extension(end);
        let path = path.to_str().unwrap();
        let mut arguments = vec![command, "--level", "L4", option, path];
        if command == "view" {
            arguments.extend(["--side", "left"]);
        }
        let output = downbeam(&arguments);
        let error = String::from_utf8_lossy(&output.stderr);
        assert_eq!(output.status.code(), Some(1), "{error}");
        assert!(error.contains(&format!("cannot write {path}")), "{error}");
        assert_eq!(error.trim_end().lines().count(), 1, "{error}");
    }
}

#[test]
fn completions_and_manual_page_name_what_help_names() {
    for shell in ["bash", "zsh", "fish", "elvish", "powershell"] {
        let script = printed(&["completions", shell]);
        assert!(script.contains("outline-json") && script.contains("scorm2004"), "{shell}");
    }
    let page = printed(&["man"]);
    assert!(page.starts_with(".ie") || page.contains(".TH downbeam 1"), "{}", &page[..80]);
    for section in ["COMMANDS", "EXIT STATUS"] {
        assert!(page.contains(section), "{section}");
    }
}

#[test]
fn help_and_version() {
    let overview = printed(&["help"]);
    assert_eq!(overview, printed(&["--help"]));
    for command in ["serve", "build", "view", "mesh", "check", "grade"] {
        assert!(overview.contains(&format!("\n  {command} ")));
        let usage = printed(&["help", command]);
        assert!(usage.starts_with("Usage: downbeam "));
        assert_eq!(usage, printed(&[command, "--help"]));
    }
    assert!(overview.contains("not for planning or guiding a procedure"));
    assert_eq!(printed(&["--version"]), format!("downbeam {}\n", env!("CARGO_PKG_VERSION")));
}

#[test]
fn view_as_json_has_its_shape() {
    let view =
        json(&["view", "--level", "l4", "--side", "left", "--oblique", "25", "--tilt", "-5", "--json"]);
    let near = |value: &Value, expected: f64| (value.as_f64().unwrap() - expected).abs() < 1e-9;
    assert!(near(&view["orientation"]["oblique"], 25.0) && near(&view["orientation"]["tilt"], -5.0));
    assert!(near(&view["dicom"]["primary"], 155.0) && near(&view["dicom"]["secondary"], -5.0));
    assert_eq!((&view["level"], &view["side"]), (&Value::from("L4"), &Value::from("left")));
    assert!(view["best"]["oblique"].is_f64() && view["best"]["tilt"].is_f64());
    let criteria = view["criteria"].as_array().unwrap();
    assert!(criteria.len() >= 4);
    for c in criteria {
        assert!(c["name"].is_string() && c["unit"].is_string() && c["tolerance"].is_object(), "{c}");
        assert!(c["value"].is_f64() || c["value"].is_null(), "{c}");
        assert!((0.0..=1.0).contains(&c["score"].as_f64().unwrap()), "{c}");
        let advice = &c["advice"];
        assert!(advice.is_null() || advice["amount_deg"].as_f64().unwrap() > 0.0, "{c}");
    }
    let landmarks = view["landmarks"].as_array().unwrap();
    let centre = landmarks.iter().find(|l| l["name"] == "body_centre" && l["level"] == "L4").unwrap();
    assert_eq!(centre["patient_mm"], serde_json::json!([0.0, 0.0, 0.0]));
    assert!(centre["side"].is_null());
    let detector = centre["detector_mm"].as_array().unwrap();
    assert!(detector.len() == 2 && detector.iter().all(|v| v.as_f64().unwrap().abs() < 1e-9));
    for side in ["left", "right"] {
        assert!(
            landmarks
                .iter()
                .any(|l| l["name"] == "pedicle_centre" && l["level"] == "L5" && l["side"] == side)
        );
    }
}

#[test]
fn best_view_scores_full_marks_where_the_json_said_it_would() {
    let view = ["view", "--level", "L3", "--side", "right", "--json"];
    for (kind, name) in [("ap", "true_ap"), ("oblique", "oblique"), ("lateral", "lateral")] {
        let there = json(&[&view[..], &["--best", "--view", kind]].concat());
        let score = there["views"].as_array().unwrap().iter().find(|v| v["view"] == name).unwrap();
        assert_eq!(score["score"], 1.0, "{kind}");
        for control in ["oblique", "tilt"] {
            let (at, best) = (&there["orientation"][control], &score["best"][control]);
            assert!((at.as_f64().unwrap() - best.as_f64().unwrap()).abs() < 1e-6, "{kind} {control}");
        }
    }
}

#[test]
fn view_in_words_names_criteria_and_caution() {
    let text = printed(&["view", "--level", "S1", "--side", "right"]);
    assert!(text.starts_with("S1 right, patient 'average'\n"), "{text}");
    assert!(text.contains("Sacral foramina over each other"), "{text}");
    assert!(text.contains("not for planning or guiding a procedure"), "{text}");
}

fn read_png(file: &Path) -> (png::Info<'static>, Vec<u8>) {
    let mut reader = png::Decoder::new(BufReader::new(fs::File::open(file).unwrap())).read_info().unwrap();
    let mut pixels = vec![0; reader.output_buffer_size().unwrap()];
    reader.next_frame(&mut pixels).unwrap();
    (reader.info().clone(), pixels)
}

#[test]
fn radiograph_is_a_png_at_the_detectors_scale() {
    let file = folder("png").join("view.png");
    let path = file.to_str().unwrap();
    let view = ["view", "--level", "L4", "--side", "left", "--force", "--png", path];
    let read = || read_png(&file);
    printed(&view);
    let (info, dark) = read();
    assert_eq!((info.width, info.height, info.color_type), (512, 512, png::ColorType::Grayscale));
    let pitch = info.pixel_dims.unwrap();
    assert_eq!((pitch.xppu, pitch.unit), (2500, png::Unit::Meter));
    printed(&[&view[..], &["--bone-white"]].concat());
    let (_, white) = read();
    // The two are each other's negative, up to rounding.
    assert!(dark.iter().zip(&white).all(|(a, b)| (i32::from(*a) + i32::from(*b) - 255).abs() <= 1));
    assert!(dark.iter().max().unwrap() - dark.iter().min().unwrap() > 150, "the picture has no contrast");
    printed(&[&view[..], &["--outlines"]].concat());
    let (info, drawn) = read();
    assert_eq!(info.color_type, png::ColorType::Rgb);
    let coloured = drawn.chunks(3).filter(|p| p[0].abs_diff(p[2]) > 40).count();
    assert!((500..60_000).contains(&coloured), "{coloured} coloured pixels");
}

/// The picture of an exposure at the best view of L4 left, and what was printed with `--json`.
fn exposed(folder: &Path, options: &str) -> (Vec<u8>, Value) {
    let file = folder.join("exposed.png");
    let mut arguments = vec!["view", "--level", "L4", "--side", "left", "--json", "--force", "--png"];
    arguments.push(file.to_str().unwrap());
    arguments.extend(options.split(' '));
    let printed = json(&arguments);
    (read_png(&file).1, printed)
}

/// Pixels along an edge: the detector's own of a spot picture, two by two together in fluoroscopy.
fn side(picture: &[u8]) -> usize {
    let side = picture.len().isqrt();
    assert!(side == 512 || side == 1024);
    side
}

/// Root mean square difference of the middle of two pictures, grey values.
fn apart(a: &[u8], b: &[u8]) -> f64 {
    let side = side(a);
    let inner = side * 2 / 5..side * 3 / 5;
    let middle = |i: &usize| inner.contains(&(i % side)) && inner.contains(&(i / side));
    let differences: Vec<f64> = (0..a.len()).filter(middle).map(|i| f64::from(a[i].abs_diff(b[i]))).collect();
    (differences.iter().map(|d| d * d).sum::<f64>() / differences.len() as f64).sqrt()
}

#[test]
fn exposures_are_noisy_collimated_and_repeatable() {
    let folder = folder("exposure");
    let picture = |options: &str| exposed(&folder, options).0;
    let spot = picture("--spot");
    assert_eq!(spot, picture("--spot --seed 0"));
    let spot_noise = apart(&spot, &picture("--spot --seed 1"));
    assert!(spot_noise > 0.5, "{spot_noise}");
    // Counts of a pulse are a twentieth to a thirtieth of a spot picture's; the run averages its last pulses.
    let pulse_noise = apart(&picture("--fluoro 1"), &picture("--fluoro 1 --seed 1"));
    let run_noise = apart(&picture("--fluoro 20"), &picture("--fluoro 20 --seed 1"));
    assert!(pulse_noise > 2.0 * spot_noise, "{pulse_noise} {spot_noise}");
    assert!(run_noise < 0.75 * pulse_noise && run_noise > spot_noise, "{run_noise} {pulse_noise}");
    let open = picture("--spot --open 0.5,0.25");
    for (i, grey) in open.iter().enumerate() {
        let (x, y) = (i % 1024, i / 1024);
        assert!(*grey == 0 || ((256..768).contains(&x) && (384..640).contains(&y)), "{x} {y}");
    }
    assert!(open.iter().filter(|grey| **grey > 0).count() > 512 * 256 * 9 / 10);
}

#[test]
fn exposures_tell_their_technique_and_dose() {
    let folder = folder("dose");
    let exposed_as = |options: &str| exposed(&folder, options).1;
    let number = |value: &Value| value.as_f64().unwrap_or_else(|| panic!("no number: {value}"));
    let run = exposed_as("--fluoro 20 --pulse-rate 4");
    let (technique, event) = (&run["exposure"]["technique"], &run["exposure"]["irradiation"]);
    assert!((60.0..=110.0).contains(&number(&technique["kvp"])) && number(&technique["mas"]) > 0.0);
    assert_eq!((&event["kind"], number(&event["pulses"])), (&Value::from("fluoroscopy"), 20.0));
    assert!((number(&event["beam_s"]) - 5.0).abs() < 1e-12);
    let kerma = number(&event["kerma_mgy"]);
    assert!((kerma / number(&technique["reference_kerma_mgy"]) - 20.0).abs() < 1e-9);
    // P_KA = K_ref · A_det · (550 / 1100)², a detector of 20.48 cm.
    let kap = number(&run["dose"]["kap_mgy_cm2"]);
    assert!((kap / (kerma * 20.48 * 20.48 / 4.0) - 1.0).abs() < 1e-9);
    assert!(run["dose"]["label"].as_str().unwrap().contains("not skin dose"));
    let item = |code: &str| {
        let found = run["dicom_dose"].as_array().unwrap().iter().find(|i| i["code"] == code).unwrap();
        (number(&found["value"]), found["unit"].as_str().unwrap().to_owned())
    };
    let (total, unit) = item("113725");
    assert!((total * 1e3 / kerma - 1.0).abs() < 1e-9 && unit == "Gy");
    assert_eq!(item("113730"), (5.0, "s".to_owned()));
    // A smaller field lowers the product and not the kerma; a magnification mode raises the kerma.
    let open = exposed_as("--fluoro 20 --pulse-rate 4 --open 0.5,0.5");
    assert!(number(&open["dose"]["kap_mgy_cm2"]) < 0.35 * kap);
    // At a high rate, where the generator's limit is far.
    let [kerma, magnified_kerma] = ["", " --magnification 2"]
        .map(|more| number(&exposed_as(&format!("--fluoro 20 --pulse-rate 30{more}"))["dose"]["kerma_mgy"]));
    assert!(magnified_kerma > 1.5 * kerma, "{magnified_kerma} {kerma}");
    // The field shrinks, what is measured stays.
    let magnified = exposed_as("--spot --magnification 2");
    assert_eq!(magnified["criteria"], run["criteria"]);
    assert!(json(&["view", "--level", "L4", "--side", "left", "--json"]).get("exposure").is_none());
    let text = printed(&["view", "--level", "L4", "--side", "left", "--spot"]);
    assert!(text.contains("spot picture") && text.contains("not skin dose"), "{text}");
}

#[test]
fn attenuation_is_an_array_of_the_picture_before_the_receptor() {
    let folder = folder("attenuation");
    let write = |name: &str, options: &[&str]| {
        let file = folder.join(name);
        let view = ["view", "--level", "L4", "--side", "left", "--attenuation", file.to_str().unwrap()];
        printed(&[&view[..], options].concat());
        fs::read(file).unwrap()
    };
    let free = write("free.npy", &[]);
    assert!(free == write("pulse.npy", &["--fluoro", "1"]), "a pulse has the free picture's pixels");
    assert!(write("fine.npy", &["--pixels", "1024"]) == write("spot.npy", &["--spot"]), "a spot has its own");
    let header = 10 + usize::from(u16::from_le_bytes([free[8], free[9]]));
    assert_eq!(free.len(), header + 4 * 512 * 512);
    let values: Vec<f32> =
        free[header..].chunks(4).map(|b| f32::from_le_bytes(b.try_into().unwrap())).collect();
    // 15 to 40 cm of tissue at about 0.02 a millimetre.
    let mean = values.iter().sum::<f32>() / values.len() as f32;
    assert!((3.0..8.0).contains(&mean), "{mean}");
}

#[test]
fn svg_and_outline_json_tell_the_same_lines() {
    let folder = folder("svg");
    let (svg, lines) = (folder.join("view.svg"), folder.join("view.json"));
    let (svg_path, lines_path) = (svg.to_str().unwrap(), lines.to_str().unwrap());
    let view = [
        "view",
        "--level",
        "L4",
        "--side",
        "left",
        "--best",
        "--svg",
        svg_path,
        "--outline-json",
        lines_path,
        "--force",
    ];
    printed(&view);
    let drawing = fs::read_to_string(&svg).unwrap();
    assert!(drawing.contains("<title>L4 left pedicle</title>") && !drawing.contains("<circle"));
    printed(&[&view[..], &["--labels"]].concat());
    let labelled = fs::read_to_string(&svg).unwrap();
    assert!(labelled.contains(">L5 superior articular process</text>"));
    let file: Value = serde_json::from_str(&fs::read_to_string(&lines).unwrap()).unwrap();
    let outlines = file["outlines"].as_array().unwrap();
    // Each line starts with one move of the pen.
    assert_eq!(drawing.matches('M').count(), outlines.len());
    let half = file["half_field"].as_f64().unwrap();
    for outline in outlines {
        for point in outline["points"].as_array().unwrap() {
            assert!(point.as_array().unwrap().iter().all(|x| x.as_f64().unwrap().abs() <= half + 1e-3));
        }
    }
    let pedicle = file["silhouettes"]
        .as_array()
        .unwrap()
        .iter()
        .find(|s| s["part"] == "pedicle" && s["side"] == "left")
        .unwrap();
    // Its shadow is one ring, up to specks, around the pedicle's centre: a few hundred mm² on the detector.
    let areas = pedicle["rings"].as_array().unwrap().iter().map(ring_area_mm2).collect::<Vec<_>>();
    assert_eq!(areas.iter().filter(|a| **a > 1.0).count(), 1, "{areas:?}");
    assert!((200.0..1500.0).contains(&areas.iter().sum::<f64>()), "{areas:?}");
}

fn ring_area_mm2(ring: &Value) -> f64 {
    let at = |p: &Value| [p[0].as_f64().unwrap(), p[1].as_f64().unwrap()];
    let points: Vec<[f64; 2]> = ring.as_array().unwrap().iter().map(at).collect();
    let next = points.iter().cycle().skip(1);
    points.iter().zip(next).map(|(a, b)| (a[0] * b[1] - b[0] * a[1]) / 2.0).sum::<f64>().abs()
}

#[test]
fn meshes_read_back_the_same_from_both_formats() {
    let folder = folder("mesh");
    let (obj, stl) = (folder.join("pedicle.obj"), folder.join("pedicle.stl"));
    for file in [&obj, &stl] {
        let out = file.to_str().unwrap();
        printed(&["mesh", "--level", "L4", "--part", "pedicle", "--side", "left", "--out", out]);
    }
    let text = fs::read_to_string(&obj).unwrap();
    let numbers = |kind: &str| -> Vec<Vec<String>> {
        let rows = text.lines().filter(|line| line.split(' ').next() == Some(kind));
        rows.map(|line| line.split(' ').skip(1).map(str::to_owned).collect()).collect()
    };
    let vertices: Vec<Vec<f32>> =
        numbers("v").iter().map(|row| row.iter().map(|x| x.parse().unwrap()).collect()).collect();
    let faces: Vec<Vec<usize>> = numbers("f")
        .iter()
        .map(|row| {
            row.iter().map(|corner| corner.split('/').next().unwrap().parse::<usize>().unwrap() - 1).collect()
        })
        .collect();
    // A closed surface of one piece without a hole: V - E + F = 2 with E = 3 F / 2.
    assert_eq!(2 * vertices.len(), faces.len() + 4);
    let bytes = fs::read(&stl).unwrap();
    assert_eq!(u32::from_le_bytes(bytes[80..84].try_into().unwrap()) as usize, faces.len());
    assert_eq!(bytes.len(), 84 + 50 * faces.len());
    for (face, record) in faces.iter().zip(bytes[84..].chunks(50)) {
        let values: Vec<f32> =
            record[12..48].chunks(4).map(|b| f32::from_le_bytes(b.try_into().unwrap())).collect();
        let corners: Vec<f32> = face.iter().flat_map(|&i| vertices[i].clone()).collect();
        assert_eq!(values, corners);
    }
    // The left pedicle lies on the patient's left.
    assert!(vertices.iter().map(|v| v[0]).sum::<f32>() > 0.0);
}

#[test]
fn all_parts_that_are_listed_can_be_written() {
    let file = folder("parts").join("part.stl");
    for level in ["T12", "S1"] {
        let list = printed(&["mesh", "--level", level, "--list"]);
        assert!(list.lines().count() >= 8, "{list}");
        for line in list.lines() {
            let mut words = line.split(' ');
            let mut arguments = vec!["mesh", "--level", level, "--part", words.next().unwrap()];
            if let Some(side) = words.next() {
                arguments.extend(["--side", side]);
            }
            arguments.extend(["--force", "--out", file.to_str().unwrap()]);
            printed(&arguments);
        }
    }
}

/// A server on a made-up site, stopped when dropped.
struct Served {
    child: Child,
    address: String,
}

impl Drop for Served {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

fn serve(project: &Path, port: &[&str]) -> Served {
    let mut child = Command::new(env!("CARGO_BIN_EXE_downbeam"))
        .args(["serve", "--no-build"])
        .args(port)
        .env("CARGO_MANIFEST_DIR", project)
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let mut line = String::new();
    BufReader::new(child.stdout.take().unwrap()).read_line(&mut line).unwrap();
    let address = line
        .strip_prefix("Downbeam is at http://")
        .and_then(|rest| rest.strip_suffix("/\n"))
        .unwrap_or_else(|| panic!("unexpected line: {line}"))
        .to_owned();
    Served { child, address }
}

/// Sends bytes and reads the answer to its end; the head and the body.
fn ask(served: &Served, request: &str) -> (String, String) {
    let mut stream = TcpStream::connect(&served.address).unwrap();
    stream.write_all(request.as_bytes()).unwrap();
    let mut answer = Vec::new();
    let _ = stream.read_to_end(&mut answer);
    let answer = String::from_utf8_lossy(&answer).into_owned();
    let (head, body) = answer.split_once("\r\n\r\n").unwrap_or((&answer, ""));
    (head.to_owned(), body.to_owned())
}

fn get(served: &Served, method: &str, path: &str) -> (String, String) {
    ask(served, &format!("{method} {path} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"))
}

fn site(name: &str) -> PathBuf {
    let project = folder(name);
    let www = project.join("www");
    fs::create_dir_all(www.join("pkg")).unwrap();
    fs::create_dir_all(www.join("lessons")).unwrap();
    fs::write(www.join("index.html"), "<!doctype html><title>page</title>").unwrap();
    fs::write(www.join("pkg/downbeam_bg.wasm"), "\0asm").unwrap();
    fs::write(www.join("pkg/downbeam.js"), "export {};").unwrap();
    fs::write(www.join("lessons/index.html"), "lessons").unwrap();
    fs::write(project.join("secret.txt"), "secret").unwrap();
    #[cfg(unix)]
    std::os::unix::fs::symlink(project.join("secret.txt"), www.join("link.txt")).unwrap();
    project
}

#[test]
fn server_answers_well_and_survives_nonsense() {
    let served = serve(&site("site"), &["--port", "0"]);
    assert!(served.address.starts_with("127.0.0.1:"));
    let (head, body) = get(&served, "GET", "/?lesson=1");
    assert!(head.starts_with("HTTP/1.1 200") && body.contains("<title>page"), "{head}");
    assert!(head.contains("Content-Type: text/html; charset=utf-8"), "{head}");
    assert!(head.contains("Cache-Control: no-store"), "{head}");
    assert!(get(&served, "GET", "/pkg/downbeam_bg.wasm").0.contains("Content-Type: application/wasm"));
    assert!(get(&served, "GET", "/pkg/downbeam.js").0.contains("Content-Type: text/javascript"));
    let (head, body) = get(&served, "HEAD", "/pkg/downbeam.js");
    assert!(
        head.starts_with("HTTP/1.1 200") && head.contains("Content-Length: 10") && body.is_empty(),
        "{head}"
    );
    let (head, _) = get(&served, "GET", "/lessons");
    assert!(head.starts_with("HTTP/1.1 301") && head.contains("Location: /lessons/"), "{head}");
    assert_eq!(get(&served, "GET", "/lessons/").1, "lessons");
    let (head, _) = get(&served, "POST", "/");
    assert!(head.starts_with("HTTP/1.1 405") && head.contains("Allow: GET, HEAD"), "{head}");

    for path in [
        "/../secret.txt",
        "/%2e%2e/secret.txt",
        "/lessons/..%2f..%2fsecret.txt",
        "/link.txt",
        "/pkg",
        "//secret.txt",
        "/..\\secret.txt",
        "/none",
        "/pkg/",
        "/%00",
        "/%f",
    ] {
        let (head, body) = get(&served, "GET", path);
        assert!(!body.contains("secret"), "{path}");
        assert!(
            ["HTTP/1.1 400", "HTTP/1.1 404", "HTTP/1.1 301"].iter().any(|s| head.starts_with(s)),
            "{path}: {head}"
        );
    }
    for nonsense in [
        "\r\n\r\n",
        "GET\r\n\r\n",
        "GET / HTTP/9.9\r\n\r\n",
        "\u{0}\u{1}\u{2}\r\n\r\n",
        "GET / HTTP/1.1\r\nHost",
    ] {
        let mut stream = TcpStream::connect(&served.address).unwrap();
        let _ = stream.write_all(nonsense.as_bytes());
    }
    let (head, _) = get(&served, "GET", "/");
    assert!(head.starts_with("HTTP/1.1 200"), "{head}");
}

/// Another name is sent away; connections that say nothing take no more threads than there are places; a head that drips ends at the deadline
/// for the whole of it; and whoever waited behind them all is answered.
#[test]
fn server_keeps_to_its_name_and_lets_nobody_hold_it() {
    let served = serve(&site("held"), &["--port", "0"]);
    for host in ["Host: example.org\r\n", "Host: localhost.example.org\r\n", ""] {
        let (head, body) = ask(&served, &format!("GET / HTTP/1.1\r\n{host}\r\n"));
        assert!(head.starts_with("HTTP/1.1 421") && !body.contains("<title>"), "{host}: {head}");
    }
    let connect = || TcpStream::connect(&served.address).unwrap();
    let silent: Vec<TcpStream> = (0..100).map(|_| connect()).collect();
    let mut drips = connect();
    drips.write_all(b"GET / HTTP/1.1\r\nHost: localhost\r\nX: ").unwrap();
    std::thread::sleep(Duration::from_secs(1));
    if let Ok(status) = fs::read_to_string(format!("/proc/{}/status", served.child.id())) {
        let threads = status.lines().find_map(|line| line.strip_prefix("Threads:")).unwrap();
        let threads: usize = threads.trim().parse().unwrap();
        assert!((60..=66).contains(&threads), "{threads} threads for {} connections", silent.len());
    }
    // A byte now and then for a minute at most: a deadline for each byte would let it go on.
    let ended = (0..600).any(|_| {
        std::thread::sleep(Duration::from_millis(100));
        drips.write_all(b"a").is_err()
    });
    assert!(ended, "a head that drips was waited for");
    assert!(get(&served, "GET", "/").0.starts_with("HTTP/1.1 200"));
}

#[test]
fn server_says_when_its_port_or_folder_is_not_there() {
    let occupied = std::net::TcpListener::bind(("127.0.0.1", 0)).unwrap();
    let port = occupied.local_addr().unwrap().port().to_string();
    let output = Command::new(env!("CARGO_BIN_EXE_downbeam"))
        .args(["serve", "--no-build", "--port", &port])
        .env("CARGO_MANIFEST_DIR", site("occupied"))
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(1));
    assert!(String::from_utf8_lossy(&output.stderr).contains(&format!("cannot serve on port {port}")));
    let output = Command::new(env!("CARGO_BIN_EXE_downbeam"))
        .args(["serve", "--no-build"])
        .env("CARGO_MANIFEST_DIR", folder("empty"))
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(1));
    assert!(String::from_utf8_lossy(&output.stderr).contains("there is no 'www' in the project's folder"));
}
