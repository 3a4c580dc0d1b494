//! What an exposure costs, against the same exposure taken in another way.

use downbeam::anatomy::names::Level;
use downbeam::anatomy::patient::{Patient, PatientSpec};
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::dose::{DoseLog, Habit, Irradiation};
use downbeam::imaging::exposure::{BeamSettings, ExposureKind};
use downbeam::imaging::projection::Projection;
use downbeam::imaging::radiograph::{Look, Radiograph, Scene};

const DIRECTIONS_DEG: [(f64, f64); 3] = [(0.0, 0.0), (25.0, -2.0), (90.0, 1.0)];

fn irradiation(patient: &Patient, direction_deg: (f64, f64), settings: &BeamSettings) -> Irradiation {
    let arm = CArm::default().turned_to(direction_deg.0, direction_deg.1).unwrap();
    let view = Projection::new(&arm, patient.level(Level::L4).centre);
    Radiograph::new(&arm).expose(Scene::of(patient), &view, &Look::default(), settings, 1, 7).irradiation
}

/// The share stated is what the narrower exposure, really taken, saves: whoever the patient and whatever was open. Automatic brightness
/// follows, so it is less than the half of the area: shutters drawn in to the spine leave it less of the thin flanks.
#[test]
fn half_the_field_saves_what_is_said() {
    for name in ["average", "large", "curved"] {
        let patient = Patient::new(&PatientSpec::named(name).unwrap());
        for direction in DIRECTIONS_DEG {
            for (kind, open) in [
                (ExposureKind::Spot, [1.0, 1.0]),
                (ExposureKind::Spot, [0.7, 0.9]),
                (ExposureKind::Fluoroscopy, [1.0, 1.0]),
            ] {
                let settings = BeamSettings { kind, open, ..BeamSettings::default() };
                let wide = irradiation(&patient, direction, &settings);
                let narrow = irradiation(&patient, direction, &settings.half_field());
                assert!((narrow.open_share - 0.5).abs() < 1e-9);
                let stated = wide.kap_half_field_mgy_cm2 / wide.kap_mgy_cm2;
                let measured = narrow.kap_mgy_cm2 / wide.kap_mgy_cm2;
                assert!(
                    (stated - measured).abs() < 1e-9,
                    "{name} {direction:?} {open:?}: {stated} {measured}"
                );
            }
        }
    }
}

#[test]
fn saving_is_what_half_the_field_would_have_spared() {
    let patient = Patient::new(&PatientSpec::named("average").unwrap());
    let spot = BeamSettings { kind: ExposureKind::Spot, ..BeamSettings::default() };
    for direction in DIRECTIONS_DEG {
        let one = irradiation(&patient, direction, &spot);
        let mut log = DoseLog::default();
        log.record(one);
        let percent = 100.0 * (1.0 - one.kap_half_field_mgy_cm2 / one.kap_mgy_cm2);
        let saving = log.totals().saving.unwrap();
        assert_eq!(saving.habit, Habit::HalfField);
        assert!((saving.percent - percent).abs() < 1e-9, "{saving:?} against {percent} %");
    }
}

#[test]
fn nothing_is_said_of_a_field_that_was_narrow_already() {
    let patient = Patient::new(&PatientSpec::named("average").unwrap());
    let spot = BeamSettings { kind: ExposureKind::Spot, open: [0.5, 0.9], ..BeamSettings::default() };
    let one = irradiation(&patient, (0.0, 0.0), &spot);
    assert_eq!(one.kap_half_field_mgy_cm2, one.kap_mgy_cm2);
    let mut log = DoseLog::default();
    log.record(one);
    assert_eq!(log.totals().saving, None);
}
