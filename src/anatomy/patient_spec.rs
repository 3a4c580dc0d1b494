//! What makes a patient: the named variants of the average. Every test over [`PatientSpec::all`] covers all of them; what can be
//! changed about one, and how far, is in [`super::patient_field`].

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
    /// Forward slip of L4 on L5 with its arch whole (degenerative spondylolisthesis), percent of the depth of L5's upper plate; grade I
    /// ends at 25 (Meyerding 1932: memory).
    pub slip_percent: f64,
    /// Top of the iliac crests above the middle of the L4-5 disc, mm.
    pub crest_above_disc_mm: f64,
    /// How far L5 is made like a part of the sacrum: 0 not at all, 1 with broad transverse processes that meet the sacrum's wings in
    /// joints of their own.
    pub transition: f64,
    /// How much of the population's spread this patient's own dimensions have, drawn by the seed: 0 none of it (the build exactly), 1
    /// all (see [`super::variation`]).
    pub variation: f64,
    /// Decides what differs from one patient to the next of the same build: the small vessels, and the dimensions as far as
    /// `variation` goes.
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
    slip_percent: 0.0,
    crest_above_disc_mm: 2.0,
    transition: 0.0,
    variation: 0.0,
    // One whose vessels are out of the way of a careful needle at every level: the first to learn on.
    seed: 16,
};

/// The patients that can be asked for by name.
const NAMED: [PatientSpec; 11] = [
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
        name: "slipped",
        description: "L4 slipped forwards on L5 by a sixth of its depth, worn joints, arch whole",
        slip_percent: 16.0,
        facet_swelling_mm: 0.6,
        ..AVERAGE
    },
    PatientSpec {
        name: "high-crest",
        description: "Iliac crests that reach up to the middle of L4",
        crest_above_disc_mm: 20.0,
        ..AVERAGE
    },
    PatientSpec {
        name: "transitional",
        description: "L5 half joined to the sacrum: broad transverse processes that meet its wings, a low disc",
        transition: 1.0,
        crest_above_disc_mm: 6.0,
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
    ///
    /// # Errors
    /// When there is none; the error names those that there are.
    pub fn named(name: &str) -> Result<Self, UnknownName> {
        NAMED.iter().find(|spec| spec.name.eq_ignore_ascii_case(name)).cloned().ok_or_else(|| UnknownName {
            kind: "patient",
            found: name.to_owned(),
            allowed: NAMED.each_ref().map(|spec| spec.name).join(", "),
        })
    }

    /// The named patient that this one was made from.
    pub(super) fn named_like(&self) -> &'static Self {
        NAMED.iter().find(|spec| spec.name == self.name).unwrap_or(&AVERAGE)
    }
}
