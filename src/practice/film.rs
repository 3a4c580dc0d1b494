//! The film of a question: the same picture as everywhere else, with what the question put into the patient.

use super::question::{Question, arm_at};
use super::stage::stage;
use crate::anatomy::patient::Patient;
use crate::imaging::c_arm::CArm;
use crate::imaging::display::Look;
use crate::imaging::exposure::BeamSettings;
use crate::imaging::inclusion::Inclusion;
use crate::imaging::projection::Projection;
use crate::imaging::radiograph::{Radiograph, Scene};
use crate::needle::shape;
use crate::view::best_view::Orientation;

/// Which moment a film shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Moment {
    /// As asked; contrast while it is injected.
    Asked,
    /// Contrast some seconds after it was injected.
    Later,
    /// After the answer: the needle pushed on, contrast as asked.
    Answered,
}

/// Draws films of one size.
#[derive(Debug)]
pub struct Films {
    radiograph: Radiograph,
}

impl Films {
    /// Of so many pixels along an edge.
    pub fn new(pixels: usize) -> Self {
        Self { radiograph: Radiograph::new(&CArm::default().sampled(pixels)) }
    }

    /// Pixels along an edge.
    pub fn size(&self) -> usize {
        self.radiograph.size()
    }

    /// Grey values, row 0 at the top. The film that is asked about has the noise of its stage; one that only moves has none.
    pub fn draw(
        &mut self,
        patient: &Patient,
        question: &Question,
        at: Orientation,
        moment: Moment,
        bone_dark: bool,
    ) -> &[u8] {
        let view = Projection::new(&arm_at(at), patient.level(question.target.level).centre);
        let inclusions = inclusions(question, patient, moment);
        let scene = Scene { patient, inclusions: &inclusions };
        let look = Look { bone_dark, ..Look::default() };
        if stage(question.stage).noise && moment != Moment::Answered {
            let settings = BeamSettings { low_dose: true, ..BeamSettings::default() };
            self.radiograph.expose(scene, &view, &look, &settings, 1, question.spec.seed);
            self.radiograph.release();
            return self.radiograph.grey();
        }
        self.radiograph.render(scene, &view, &look)
    }
}

fn inclusions(question: &Question, patient: &Patient, moment: Moment) -> Vec<Inclusion> {
    let mut list = Vec::new();
    let needle = match (moment, &question.needle_after) {
        (Moment::Answered, Some(after)) => Some(after),
        _ => question.needle.as_ref(),
    };
    if let Some(needle) = needle {
        // The stylet is out where contrast goes in.
        list.extend(shape::needle(needle, question.injection.is_none()));
    }
    if let Some(injection) = &question.injection {
        let now = if moment == Moment::Later { injection.later_s } else { injection.during_s };
        list.extend(shape::contrast(injection.bolus.spread(&patient.interior, now)));
    }
    list
}
