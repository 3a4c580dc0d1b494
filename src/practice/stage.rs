//! How hard a question is: six stages, each a row of a table. Which order teaches best: a choice, no source; that the difficulty should
//! follow the learner: common practice.

use crate::anatomy::patient_spec::PatientSpec;
use crate::anatomy::seeded::Numbers;

/// One stage.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stage {
    /// Whether the outlines of the parts are drawn.
    pub outlines: bool,
    /// Whether the film is a pulse of fluoroscopy with its noise, in the low-dose mode.
    pub noise: bool,
    /// How far off a view stands that is to be put right, degrees, least and most.
    pub off_deg: [f64; 2],
    /// Turn of the patient on the table, most, degrees.
    pub turned_deg: f64,
    /// Sideways curve, most, degrees.
    pub curve_deg: f64,
    /// Thickness of the trunk, most.
    pub girth: f64,
    /// Density of the marrow's bone, least.
    pub bone_density: f64,
}

/// The easiest to the hardest. A patient's own turn, curve, girth and density are drawn from the harder half of what a stage adds.
pub const STAGES: [Stage; 6] = [
    EASIEST,
    Stage { outlines: false, off_deg: [11.0, 18.0], ..EASIEST },
    Stage { outlines: false, off_deg: [10.0, 16.0], turned_deg: 10.0, ..EASIEST },
    Stage { outlines: false, off_deg: [9.0, 14.0], turned_deg: 8.0, curve_deg: 11.0, ..EASIEST },
    Stage {
        outlines: false,
        off_deg: [8.0, 13.0],
        turned_deg: 8.0,
        curve_deg: 8.0,
        girth: 1.35,
        bone_density: 0.5,
        ..EASIEST
    },
    Stage {
        outlines: false,
        noise: true,
        off_deg: [7.0, 12.0],
        turned_deg: 10.0,
        curve_deg: 10.0,
        girth: 1.4,
        bone_density: 0.45,
    },
];

const EASIEST: Stage = Stage {
    outlines: true,
    noise: false,
    off_deg: [13.0, 20.0],
    turned_deg: 0.0,
    curve_deg: 0.0,
    girth: 1.0,
    bone_density: 1.0,
};

/// The stage of a number; past the last it is the last.
pub fn stage(number: u8) -> &'static Stage {
    &STAGES[usize::from(number).min(STAGES.len() - 1)]
}

/// A patient of a stage, with the population's own spread.
pub(super) fn patient(stage: &Stage, numbers: &mut Numbers) -> PatientSpec {
    let mut harder = |neutral: f64, most: f64, either_side: bool| {
        let value = neutral + (most - neutral) * (0.5 + 0.5 * numbers.unit());
        // Drawn always, so that one field does not move the others.
        let other_side = numbers.unit() < 0.5;
        if either_side && other_side { -value } else { value }
    };
    let average = PatientSpec::all()[0].clone();
    let drawn = PatientSpec {
        variation: 1.0,
        turned_deg: tenths(harder(0.0, stage.turned_deg, true)),
        curve_deg: tenths(harder(0.0, stage.curve_deg, true)),
        girth: hundredths(harder(1.0, stage.girth, false)),
        bone_density: hundredths(harder(1.0, stage.bone_density, false)),
        ..average
    };
    PatientSpec { seed: (numbers.unit() * f64::from(u32::MAX)) as u64, ..drawn }
}

fn tenths(value: f64) -> f64 {
    libm::round(value * 10.0) / 10.0 + 0.0
}

fn hundredths(value: f64) -> f64 {
    libm::round(value * 100.0) / 100.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::patient_field::field;

    /// Whether a patient of a stage is one that can be asked for by its fields.
    fn within_fields(spec: &PatientSpec) -> bool {
        spec.differences().iter().all(|(name, value)| field(name).is_ok_and(|f| f.check(*value).is_ok()))
    }

    #[test]
    fn patients_of_all_stages_are_within_the_fields_ranges() {
        for (number, stage) in STAGES.iter().enumerate() {
            for seed in 0..500 {
                let spec = patient(stage, &mut Numbers::stream(seed, number as u64));
                assert!(within_fields(&spec), "{}", spec.title());
                assert!(spec.turned_deg.abs() <= stage.turned_deg && spec.girth <= stage.girth);
                if stage.turned_deg > 0.0 {
                    assert!(spec.turned_deg.abs() >= stage.turned_deg / 2.0 - 0.05);
                }
            }
        }
    }
}
