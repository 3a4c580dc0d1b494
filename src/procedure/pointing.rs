//! What can be pointed at on a picture: the parts of a bone that are drawn with an outline of their own.

use crate::anatomy::names::{Label, Level, Part};

/// Whether the bone of a level has a part with an outline of its own.
pub fn has_part(level: Level, part: Part) -> bool {
    match part {
        Part::Body | Part::Lamina | Part::SuperiorArticularProcess => true,
        Part::Pedicle
        | Part::Pars
        | Part::InferiorArticularProcess
        | Part::TransverseProcess
        | Part::SpinousProcess => level != Level::S1,
        Part::Ala | Part::MedianCrest => level == Level::S1,
        _ => false,
    }
}

/// What a line is called when it is pointed at: an end plate's rim is the body's.
pub fn bone_part(label: Label) -> Label {
    match label.part {
        Part::UpperEndPlate | Part::LowerEndPlate => Label { part: Part::Body, ..label },
        _ => label,
    }
}
