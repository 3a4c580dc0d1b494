//! A question: what is on the film, what can be answered, what is true, and by how much it is true.

use super::kind::Kind;
use crate::anatomy::names::{Level, Part};
use crate::anatomy::patient_spec::PatientSpec;
use crate::imaging::c_arm::CArm;
use crate::needle::compartment::Pattern;
use crate::needle::contrast::Bolus;
use crate::needle::shaft::Needle;
use crate::view::best_view::{Orientation, ViewKind};
use crate::view::criteria::Target;
use serde::Serialize;

/// A move of the receptor.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the trade's")]
pub enum Move {
    Left,
    Right,
    Cephalad,
    Caudad,
}

/// A direction on the picture, which stands head up and patient's left to the left.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the trade's")]
pub enum OnScreen {
    Head,
    PatientsRight,
    Feet,
    PatientsLeft,
}

impl OnScreen {
    /// Clockwise from the top.
    pub const ALL: [Self; 4] = [Self::Head, Self::PatientsRight, Self::Feet, Self::PatientsLeft];
}

/// What is found of a film that should be a true AP.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the trade's")]
pub enum ApFinding {
    TrueAp,
    SpinousToLeft,
    SpinousToRight,
    NotSquared,
}

/// What to do now.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "each says its own sentence")]
pub enum Decision {
    GoOn,
    StopMedial,
    StopVessel,
    StopSac,
}

/// One answer that is offered.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(tag = "is", rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum Choice {
    Turn {
        to: Move,
    },
    Degrees {
        about: u32,
    },
    Part {
        part: Part,
        level: Level,
    },
    View {
        view: ViewKind,
    },
    /// None of the views.
    NoView,
    Ap {
        ap: ApFinding,
    },
    Hour {
        hour: u32,
    },
    Screen {
        to: OnScreen,
    },
    Pattern {
        pattern: Pattern,
    },
    Decide {
        decision: Decision,
    },
}

/// What the sentence of a question needs beside its kind.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(tag = "asks", rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum Asked {
    /// Which way, for this view.
    Way {
        wanted: ViewKind,
    },
    /// By how much, that way, for this view.
    Amount {
        wanted: ViewKind,
        to: Move,
    },
    Part,
    Step,
    TrueAp,
    Clock,
    /// The notch stands so: which way does the tip go?
    NotchAhead {
        notch: OnScreen,
    },
    /// The tip must go there: where must the notch look?
    NotchWanted {
        to: OnScreen,
    },
    Spread,
    /// Whether contrast is on the film.
    Stop {
        contrast: bool,
    },
}

/// What is seen on a film, for who cannot see it, and for the reason. Lengths are at the patient.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(tag = "fact", rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names and units are the documentation")]
pub enum Fact {
    /// Off the middle of the pedicles over their spacing; > 0 to the patient's left.
    Spinous { percent: f64 },
    /// The front rim of the upper end plate over its back rim; > 0 to the head.
    Rims { mm: f64 },
    /// The outline of the process below against the pedicle's centre over its width; > 0 to the patient's left.
    Process { percent: f64 },
    /// The outline of the process below against the middle of its end plate, over half the plate; > 0 to the patient's left.
    MidPlate { percent: f64 },
    /// As [`Self::Rims`], of the level below.
    RimsBelow { mm: f64 },
    /// The front opening of the first sacral foramen from its back one; > 0 to the patient's left.
    Openings { mm: f64 },
    /// The two pedicles apart.
    Lateral { mm: f64 },
    /// The tip from the pedicle's centre.
    Tip { lateral_mm: f64, below_mm: f64 },
    /// The tip from the pedicle's 6 o'clock line; < 0 lateral.
    Medial { mm: f64 },
    /// As read.
    Hour { hour: f64 },
    /// Where the notch looks.
    Notch { looks: OnScreen },
    /// Where the tip went, at its own depth.
    Drifted { to: OnScreen, mm: f64 },
    /// What the contrast does.
    Contrast { pattern: Pattern },
    /// The move that puts it right.
    Needed { to: Move, degrees: f64 },
}

/// How clearly the truth is true.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
pub struct Margin {
    /// How far the nearest other answer is.
    pub has: f64,
    /// Nearer than this it is not asked.
    pub least: f64,
    /// Of both, such as `degrees`.
    pub unit: &'static str,
}

impl Margin {
    /// Whether it may be asked.
    pub fn holds(&self) -> bool {
        self.has >= self.least
    }
}

/// Contrast of a question and the two moments at which it is looked at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Injection {
    /// What was injected.
    pub bolus: Bolus,
    /// While it is injected, s.
    pub during_s: f64,
    /// Afterwards, s.
    pub later_s: f64,
}

/// One question.
#[derive(Clone, Debug)]
pub struct Question {
    /// What it asks.
    pub kind: Kind,
    /// Number of its stage ([`super::stage::STAGES`]).
    pub stage: u8,
    /// Who lies on the table.
    pub spec: PatientSpec,
    /// Level and side.
    pub target: Target,
    /// Where the C-arm stands.
    pub view: Orientation,
    /// What its sentence needs.
    pub asked: Asked,
    /// The needle on the film.
    pub needle: Option<Needle>,
    /// The needle after the answer, where it moves.
    pub needle_after: Option<Needle>,
    /// Contrast on the film.
    pub injection: Option<Injection>,
    /// What is pointed at, detector, mm.
    pub dot_mm: Option<[f64; 2]>,
    /// Answers, in the order shown.
    pub choices: Vec<Choice>,
    /// Which one is right.
    pub answer: usize,
    /// How clearly.
    pub margin: Margin,
    /// A description of the film before the answer, for who cannot see it; empty where only the eye can answer.
    pub seen: Vec<Fact>,
    /// The reason.
    pub reason: Vec<Fact>,
    /// Where the film moves to afterwards.
    pub truth: Orientation,
}

impl Question {
    /// The C-arm of the film.
    pub fn arm(&self) -> CArm {
        arm_at(self.view)
    }

    /// The right answer.
    pub fn right(&self) -> Choice {
        self.choices[self.answer]
    }
}

/// The usual machine at an orientation inside its ranges.
pub fn arm_at(at: Orientation) -> CArm {
    CArm { oblique_rad: at.oblique_deg.to_radians(), tilt_rad: at.tilt_deg.to_radians(), ..CArm::default() }
}

/// To the tenth of a degree, as the machine shows it.
pub fn tenths(at: Orientation) -> Orientation {
    let round = |value: f64| libm::round(value * 10.0) / 10.0;
    Orientation { oblique_deg: round(at.oblique_deg), tilt_deg: round(at.tilt_deg) }
}
