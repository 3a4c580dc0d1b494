//! The best views: of every named patient, and how far they differ among patients of the average build.

use super::round;
use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::names::{Level, Side};
use downbeam::anatomy::patient::PatientSpec;
use downbeam::anatomy::variation::SPREADS;
use downbeam::imaging::c_arm::CArm;
use downbeam::view::best_view::{ViewKind, best_view};
use downbeam::view::criteria::Target;
use serde_json::{Value, json};

/// How many patients the spread is taken over.
const PATIENTS: u64 = 300;
const KINDS: [ViewKind; 4] = [ViewKind::TrueAp, ViewKind::Oblique, ViewKind::Lateral, ViewKind::SteepOblique];

/// A view from a side, oblique said towards that side.
fn best(interior: &Interior, level: Level, side: Side, kind: ViewKind) -> [f64; 2] {
    let best = best_view(interior, Target { level, side }, kind, &CArm::default()).orientation;
    [best.oblique_deg * side.sign(), best.tilt_deg]
}

/// For each patient, level and side: [oblique towards the side, tilt cephalad], degrees.
pub(super) fn numbers() -> Value {
    PatientSpec::all().iter().flat_map(of_patient).collect()
}

fn of_patient(spec: &PatientSpec) -> Vec<Value> {
    let interior = &Interior::of(spec);
    let places = Level::TARGETS.into_iter().flat_map(|level| Side::BOTH.map(|side| (level, side)));
    places
        .map(|(level, side)| {
            let mut entry = json!({ "patient": spec.name, "level": level, "side": side });
            for kind in KINDS.into_iter().filter(|&k| k != ViewKind::SteepOblique || level != Level::S1) {
                entry[kind.name()] = best(interior, level, side, kind).map(|deg| round(deg, 1)).into();
            }
            entry
        })
        .collect()
}

/// Least, 5th percentile, median, 95th and most of the best oblique and its tilt on the left, over patients of the average build with all of
/// the population's spread.
pub(super) fn spread() -> Value {
    let mut found = vec![(Vec::new(), Vec::new()); Level::TARGETS.len()];
    for seed in 0..PATIENTS {
        let spec = PatientSpec { variation: 1.0, seed, ..PatientSpec::all()[0].clone() };
        let interior = Interior::of(&spec);
        for (level, (obliques, tilts)) in Level::TARGETS.into_iter().zip(&mut found) {
            let [oblique_deg, tilt_deg] = best(&interior, level, Side::Left, ViewKind::Oblique);
            obliques.push(oblique_deg);
            tilts.push(tilt_deg);
        }
    }
    let levels: Vec<Value> = Level::TARGETS
        .into_iter()
        .zip(found)
        .map(|(level, (obliques, tilts))| {
            json!({ "level": level, "oblique_deg": five(obliques), "tilt_deg": five(tilts) })
        })
        .collect();
    let sds: Vec<Value> = SPREADS.iter().map(|s| json!({ "name": s.name, "sd": s.sd })).collect();
    json!({ "patients": PATIENTS, "levels": levels, "sds": sds })
}

fn five(mut values: Vec<f64>) -> [f64; 5] {
    values.sort_by(f64::total_cmp);
    [0.0, 0.05, 0.5, 0.95, 1.0].map(|share| {
        let at = libm::round(share * (values.len() - 1) as f64) as usize;
        round(values[at], 1)
    })
}
