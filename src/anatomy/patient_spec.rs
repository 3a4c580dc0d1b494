//! What makes a patient: the named variants of the average. Every test over [`PatientSpec::all`] covers all of them.

use super::column::Posture;
use super::names::UnknownName;

/// What makes a patient.
#[derive(Clone, Debug, PartialEq)]
pub struct PatientSpec {
    /// Name in the list, such as `average`.
    pub name: &'static str,
    /// One sentence for the learner.
    pub description: &'static str,
    /// How the column is held.
    pub posture: Posture,
    /// Size against the average, 1 = average.
    pub size: f64,
    /// How far the patient lies turned on the table about the long axis, degrees, > 0 front towards the right.
    pub turned_deg: f64,
    /// Density of the marrow's bone against the average, 1 = average; cortices thin along with its square root.
    pub bone_density: f64,
    /// Sideways curve: lean of the top lumbar level to the left, degrees; the levels turn along with it.
    pub curve_deg: f64,
    /// Factor on the heights of the two lowest discs.
    pub low_disc_height: f64,
    /// Growth of the two lowest pairs of facet joints, mm.
    pub facet_swelling_mm: f64,
    /// Thickness of the trunk against the average.
    pub girth: f64,
    /// Decides what differs from one patient to the next of the same build: the small vessels.
    pub seed: u64,
}

/// The average patient, prone.
const AVERAGE: PatientSpec = PatientSpec {
    name: "average",
    description: "Average adult, lying straight and prone",
    posture: Posture::Prone,
    size: 1.0,
    turned_deg: 0.0,
    bone_density: 1.0,
    curve_deg: 0.0,
    low_disc_height: 1.0,
    facet_swelling_mm: 0.0,
    girth: 1.0,
    seed: 0,
};

/// The patients that can be asked for by name.
const NAMED: [PatientSpec; 8] = [
    AVERAGE,
    PatientSpec {
        name: "turned",
        description: "Average adult, lying a little turned on the table",
        turned_deg: 6.0,
        ..AVERAGE
    },
    PatientSpec { name: "small", description: "Small, slender adult", size: 0.90, girth: 0.82, ..AVERAGE },
    PatientSpec { name: "large", description: "Large, heavy adult", size: 1.07, girth: 1.28, ..AVERAGE },
    PatientSpec {
        name: "thin-bones",
        description: "Older adult with little bone mineral",
        bone_density: 0.45,
        size: 0.95,
        ..AVERAGE
    },
    PatientSpec {
        name: "worn",
        description: "Low discs at the two lowest levels, thickened facet joints",
        low_disc_height: 0.62,
        facet_swelling_mm: 1.3,
        ..AVERAGE
    },
    PatientSpec {
        name: "curved",
        description: "Column bent to the side and turned with the bend",
        curve_deg: 12.0,
        ..AVERAGE
    },
    PatientSpec {
        name: "standing",
        description: "Average adult, upright, for comparison",
        posture: Posture::Standing,
        ..AVERAGE
    },
];

impl PatientSpec {
    /// All named patients.
    pub fn all() -> &'static [Self] {
        &NAMED
    }

    /// The patient of that name.
    pub fn named(name: &str) -> Result<Self, UnknownName> {
        NAMED.iter().find(|spec| spec.name.eq_ignore_ascii_case(name)).cloned().ok_or_else(|| UnknownName {
            kind: "patient",
            found: name.to_owned(),
            allowed: NAMED.each_ref().map(|spec| spec.name).join(", "),
        })
    }
}
