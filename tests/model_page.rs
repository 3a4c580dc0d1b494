//! The numbers of the page about the model (`www/model.json`) are those that the engine gives now, and they are the engine's: some are
//! asked of the library here once more. To bring the file up to date: `cargo run -- model > www/model.json`.

use downbeam::anatomy::dimensions::vertebra;
use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::names::{Level, Side};
use downbeam::anatomy::patient::PatientSpec;
use downbeam::imaging::attenuation::{Material, per_mm};
use downbeam::imaging::c_arm::CArm;
use downbeam::needle::compartment::Pattern;
use downbeam::procedure::action::seconds;
use downbeam::procedure::attempt::Attempt;
use downbeam::procedure::case::Case;
use downbeam::procedure::log_line;
use downbeam::score::engine;
use downbeam::view::best_view::{ViewKind, best_view};
use downbeam::view::criteria::Target;
use downbeam::view::tolerance::Tolerances;
use serde_json::Value;
use std::path::Path;
use std::process::Command;
use std::sync::LazyLock;

static COMMITTED: LazyLock<String> = LazyLock::new(|| {
    std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("www/model.json")).unwrap()
});
static TOLD: LazyLock<Value> = LazyLock::new(|| serde_json::from_str(&COMMITTED).unwrap());

#[test]
fn the_file_is_what_the_engine_says_now() {
    let output = Command::new(env!("CARGO_BIN_EXE_downbeam")).arg("model").output().unwrap();
    assert!(output.status.success());
    let now = String::from_utf8(output.stdout).unwrap();
    for (kept, new) in COMMITTED.lines().zip(now.lines()) {
        let key = new.split(':').next().unwrap_or_default();
        assert!(kept == new, "{key} has changed: cargo run -- model > www/model.json");
    }
    assert_eq!(*COMMITTED, now);
}

#[test]
fn engine_views_and_limits_are_the_librarys() {
    assert_eq!(TOLD["engine"]["fingerprint"], engine::SCORING);
    assert_eq!(TOLD["engine"]["version"], engine::VERSION);
    assert_eq!(TOLD["marks"]["views"], serde_json::to_value(Tolerances::default()).unwrap());
    let mut seen = 0;
    for entry in
        TOLD["views"].as_array().unwrap().iter().filter(|e| e["level"] == "L5" && e["side"] == "right")
    {
        let spec = PatientSpec::named(entry["patient"].as_str().unwrap()).unwrap();
        let interior = Interior::of(&spec);
        let target = Target { level: Level::L5, side: Side::Right };
        let best = best_view(&interior, target, ViewKind::Oblique, &CArm::default()).orientation;
        let listed = |i: usize| entry["oblique"][i].as_f64().unwrap();
        assert!((listed(0) + best.oblique_deg).abs() < 0.051, "{}: {}", spec.name, best.oblique_deg);
        assert!((listed(1) - best.tilt_deg).abs() < 0.051, "{}: {}", spec.name, best.tilt_deg);
        seen += 1;
    }
    assert_eq!(seen, PatientSpec::all().len());
}

/// What is asked is the table's, and what is measured is near it: as near as `tests/dimensions.rs` has it, whose sections these are,
/// and, where a plate's depth is taken to the hollow of the back wall, 2.5 mm.
#[test]
fn bones_are_listed_as_asked_and_measured_near_it() {
    let bones = &TOLD["bones"];
    let row = |name: &str| bones["rows"].as_array().unwrap().iter().find(|r| r["name"] == name).unwrap();
    for (i, level) in [Level::L1, Level::L2, Level::L3, Level::L4, Level::L5].into_iter().enumerate() {
        assert_eq!(bones["levels"][i], level.name());
        let d = vertebra(level).unwrap();
        for (name, asked, within) in [
            ("upper_width", d.upper_width_mm, 1.6),
            ("lower_depth", d.lower_depth_mm, 2.5),
            ("posterior_height", d.posterior_height_mm, 0.5),
            ("anterior_height", d.anterior_height_mm, 0.5),
            ("pedicle_width", d.pedicle_width_mm, 0.6),
            ("pedicle_height", d.pedicle_height_mm, 0.5),
            ("interpedicular", d.interpedicular_mm, 2.4),
            ("transverse_span", d.transverse_span_mm, 1.5),
        ] {
            let listed = |of: &str| row(name)[of][i].as_f64().unwrap();
            assert!((listed("asked") - asked).abs() < 0.051, "{level} {name}");
            assert!((listed("measured") - asked).abs() < within, "{level} {name}: {}", listed("measured"));
        }
    }
}

#[test]
fn attenuation_is_the_tables_and_no_number_is_missing() {
    let materials = TOLD["beam"]["materials"].as_array().unwrap();
    let bone = materials.iter().find(|m| m["name"] == "cortical_bone").unwrap();
    let energies = TOLD["beam"]["energies_kev"].as_array().unwrap();
    let sixty = energies.iter().position(|e| e == 60.0).unwrap();
    let at_60 = bone["per_cm"][sixty].as_f64().unwrap();
    assert!((at_60 - 10.0 * per_mm(Material::CorticalBone, 60.0)).abs() < 1e-5);
    // NaN would have become null.
    for key in ["beam", "needle", "marks", "spread", "mesh"] {
        assert!(!TOLD[key].to_string().contains("null"), "{key}");
    }
    assert!(TOLD["nerves"].to_string().matches("null").count() == 0);
}

/// A log for every pattern that a learner may name, which the library replays to that pattern.
#[test]
fn injections_of_the_films_spread_as_they_are_called() {
    let shown = TOLD["contrast"].as_array().unwrap();
    for &pattern in Pattern::ALL {
        let of = |entry: &&Value| entry["pattern"] == serde_json::to_value(pattern).unwrap();
        let entry = shown.iter().find(of).unwrap_or_else(|| panic!("{pattern:?} is not shown"));
        let spec = PatientSpec::named(entry["patient"].as_str().unwrap()).unwrap();
        let interior = Interior::of(&spec);
        let events: Vec<_> = entry["log"]
            .as_array()
            .unwrap()
            .iter()
            .map(|l| log_line::read(l.as_str().unwrap()).unwrap())
            .collect();
        let case = Case::new(Target { level: Level::L4, side: Side::Left });
        let state = Attempt::replay(case, &interior, &events).unwrap().state;
        let bolus = state.injected.last().unwrap().bolus;
        assert_eq!(bolus.compartment.pattern(), pattern);
        let at_s = seconds(entry["tick"].as_u64().unwrap() as u32);
        assert!(!bolus.spread(&interior, at_s).is_empty(), "{pattern:?} is gone when its film is taken");
    }
    assert_eq!(shown.len(), Pattern::ALL.len());
}
