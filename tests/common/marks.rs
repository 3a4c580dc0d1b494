//! Where the parts of a vertebra's arch are marked.

use downbeam::anatomy::landmarks::LevelLandmarks;
use downbeam::anatomy::names::{Part, Side};
use glam::DVec3;

/// A landmark of each part that has one on this side, and whether it lies on the bone's surface (else on an axis inside it).
pub(crate) fn of_parts(level: &LevelLandmarks, side: Side) -> [(Part, DVec3, bool); 6] {
    let marks = level.side(side);
    [
        (Part::Pars, marks.pars.unwrap(), false),
        (Part::Lamina, marks.lamina.unwrap(), false),
        (Part::TransverseProcess, marks.transverse_tip.unwrap(), true),
        (Part::InferiorArticularProcess, marks.inferior_process_tip.unwrap(), true),
        (Part::SuperiorArticularProcess, marks.superior_process_tip, true),
        (Part::SpinousProcess, level.spinous_tip, true),
    ]
}
