//! Tube, attenuation, detector and dose: the tables, and exposures of the average patient's L4.

use super::round;
use downbeam::anatomy::names::{Level, Side};
use downbeam::anatomy::patient::{Patient, PatientSpec};
use downbeam::imaging::attenuation::{ENERGIES_KEV, Material, TRABECULAR_SHARE, marrow_per_mm, per_mm};
use downbeam::imaging::c_arm::CArm;
use downbeam::imaging::dose::{LABEL, LOW_DOSE_FACTOR, RATE_POWER, reference_distance_mm};
use downbeam::imaging::exposure::{BeamSettings, ExposureKind, PULSE_RATES_PER_S};
use downbeam::imaging::projection::Projection;
use downbeam::imaging::radiograph::{Look, Radiograph, Scene};
use downbeam::imaging::tube::output;
use downbeam::imaging::{detector, tube};
use downbeam::view::best_view::{ViewKind, best_view};
use downbeam::view::criteria::Target;
use serde_json::{Value, json};

const MATERIALS: [(&str, Material); 7] = [
    ("cortical_bone", Material::CorticalBone),
    ("soft_tissue", Material::SoftTissue),
    ("muscle", Material::Muscle),
    ("adipose", Material::Adipose),
    ("air", Material::Air),
    ("steel", Material::Steel),
    ("iohexol_300", Material::Iohexol300),
];
/// Two seconds at the usual eight pulses a second: sixteen pulses.
const SECONDS: u32 = 2;

pub(super) fn numbers(average: &Patient) -> Value {
    let arm = CArm::default();
    let (low, high) = tube::KVP_RANGE;
    let kvps = (0..).map(|i| low + 10.0 * f64::from(i)).take_while(|&kvp| kvp <= high);
    let tube: Vec<Value> = kvps
        .map(|kvp| {
            let o = output(kvp);
            json!({
                "kvp": kvp,
                "kerma_ugy_per_mas": o.kerma_ugy_per_mas,
                "energy_kev": o.energy_kev,
                "water_transmission": o.water_transmission,
                "photons_per_mm2_ugy": o.photons_per_mm2_ugy,
            })
        })
        .collect();
    let table = |of: &dyn Fn(f64) -> f64| ENERGIES_KEV.map(|energy| round(10.0 * of(energy), 5));
    let mut materials: Vec<Value> = MATERIALS
        .iter()
        .map(|(name, material)| json!({ "name": name, "per_cm": table(&|e| per_mm(*material, e)) }))
        .collect();
    materials.push(json!({ "name": "marrow", "per_cm": table(&|e| marrow_per_mm(1.0, e)) }));
    json!({
        "sod_mm": arm.sod_mm,
        "sid_mm": arm.sid_mm,
        "pixels": arm.pixels,
        "pixel_mm": arm.pixel_mm,
        "magnification": round(arm.magnification(), 3),
        "field_at_isocentre_mm": round(2.0 * arm.half_field_mm() / arm.magnification(), 1),
        "reference_mm": reference_distance_mm(&arm),
        "oblique_range_deg": CArm::OBLIQUE_RANGE_DEG,
        "tilt_range_deg": CArm::TILT_RANGE_DEG,
        "dqe": detector::DQE,
        "trabecular_share": TRABECULAR_SHARE,
        "rate_power": RATE_POWER,
        "low_dose_factor": LOW_DOSE_FACTOR,
        "label": LABEL,
        "tube": tube,
        "energies_kev": ENERGIES_KEV,
        "materials": materials,
        "seconds": SECONDS,
        "exposures": exposures(average),
    })
}

/// Settings that differ from the usual ones in one thing, by name.
fn settings() -> Vec<(String, BeamSettings)> {
    let usual = BeamSettings::default();
    let mut list = vec![("usual".to_owned(), usual)];
    for side in [0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3] {
        list.push((format!("open {side}"), BeamSettings { open: [side, side], ..usual }));
    }
    list.push(("half field".to_owned(), usual.half_field()));
    for pulses_per_s in PULSE_RATES_PER_S {
        list.push((format!("rate {pulses_per_s}"), BeamSettings { pulses_per_s, ..usual }));
    }
    list.push(("low dose".to_owned(), BeamSettings { low_dose: true, ..usual }));
    list.push(("magnification 1.4".to_owned(), BeamSettings { magnification: 1.4, ..usual }));
    list.push(("magnification 2".to_owned(), BeamSettings { magnification: 2.0, ..usual }));
    list.push(("spot".to_owned(), BeamSettings { kind: ExposureKind::Spot, ..usual }));
    list
}

fn exposures(average: &Patient) -> Vec<Value> {
    let mut list: Vec<Value> = settings()
        .iter()
        .map(|(name, settings)| exposed(average, ViewKind::TrueAp, "average", name, settings))
        .collect();
    let usual = BeamSettings::default();
    list.push(exposed(average, ViewKind::Oblique, "average", "usual", &usual));
    list.push(exposed(average, ViewKind::Lateral, "average", "usual", &usual));
    for name in ["small", "large"] {
        let Ok(spec) = PatientSpec::named(name) else { unreachable!("a patient of our own: {name}") };
        let patient = Patient::new(&spec);
        for kind in [ViewKind::TrueAp, ViewKind::Lateral] {
            list.push(exposed(&patient, kind, name, "usual", &usual));
        }
    }
    list
}

/// Two seconds of fluoroscopy, or one spot picture, of L4 in its best view from the left.
fn exposed(patient: &Patient, kind: ViewKind, who: &str, name: &str, settings: &BeamSettings) -> Value {
    let target = Target { level: Level::L4, side: Side::Left };
    let best = best_view(&patient.interior, target, kind, &CArm::default()).orientation;
    let arm = CArm::at_degrees(best.oblique_deg, best.tilt_deg).unwrap_or_default();
    let arm = settings.magnified(&arm);
    let view = Projection::new(&arm, patient.level(Level::L4).centre);
    let pulses = match settings.kind {
        ExposureKind::Spot => 1,
        ExposureKind::Fluoroscopy => SECONDS * settings.pulses_per_s,
    };
    let mut film = Radiograph::new(&arm);
    let e = film.expose(Scene::of(patient), &view, &Look::default(), settings, pulses, 0);
    json!({
        "patient": who,
        "view": kind.name(),
        "name": name,
        "open_share": round(settings.open_share(), 4),
        "pulses": pulses,
        "kvp": round(e.technique.kvp, 1),
        "mas": round(e.technique.mas, 4),
        "energy_kev": round(e.technique.energy_kev, 1),
        "photons_per_pixel": round(e.technique.photons_per_pixel, 0),
        "kerma_mgy": round(e.irradiation.kerma_mgy, 4),
        "kap_mgy_cm2": round(e.irradiation.kap_mgy_cm2, 3),
    })
}
