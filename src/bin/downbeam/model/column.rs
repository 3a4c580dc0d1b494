//! The column: tilt of each end plate and heights of the discs, measured on the landmarks of a prone and a standing patient.

use super::round;
use downbeam::anatomy::column::tilt_of_normal;
use downbeam::anatomy::dimensions;
use downbeam::anatomy::interior::Interior;
use downbeam::anatomy::landmarks::LevelLandmarks;
use downbeam::anatomy::names::Level;
use downbeam::anatomy::patient::PatientSpec;
use serde_json::{Value, json};

pub(super) fn numbers() -> Value {
    json!({ "prone": posture("average"), "standing": posture("standing") })
}

fn posture(name: &str) -> Value {
    let Ok(spec) = PatientSpec::named(name) else { unreachable!("a patient of our own: {name}") };
    let interior = &Interior::of(&spec);
    let upper = |level: Level| tilt_of_normal(interior.level(level).upper_plate.normal).to_degrees();
    let lower = |l: &LevelLandmarks| l.lower_plate.map(|p| tilt_of_normal(p.normal).to_degrees());
    let levels: Vec<Value> = Level::TARGETS
        .iter()
        .map(|&level| {
            let l = interior.level(level);
            let disc = l.lower_plate.zip(level.below()).map(|(plate, below)| {
                round(plate.centre.distance(interior.level(below).upper_plate.centre), 1)
            });
            json!({
                "level": level,
                "upper_tilt_deg": round(upper(level), 1),
                "lower_tilt_deg": lower(l).map(|t| round(t, 1)),
                "mid_tilt_deg": lower(l).map(|t| round(f64::midpoint(t, upper(level)), 1)),
                "disc_below_mm": disc,
            })
        })
        .collect();
    json!({
        "levels": levels,
        "sacral_slope_deg": round(upper(Level::S1), 1),
        "lordosis_l1_s1_deg": round(upper(Level::S1) - upper(Level::L1), 1),
        "lordosis_l4_s1_deg": round(upper(Level::S1) - upper(Level::L4), 1),
        "asked_disc_mm": &dimensions::DISC_HEIGHT_MM[1..],
    })
}
