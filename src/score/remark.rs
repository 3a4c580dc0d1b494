//! What the engine says of an attempt: why a step has its marks, and what to do next. Each remark is a name with its values; the words
//! stand in `texts/LANGUAGE/remark.ftl`, and nowhere here.

use crate::anatomy::foramen::Approach;
use crate::anatomy::names::{Label, Level, Side};
use crate::imaging::clearance::TableWay;
use crate::needle::contact::ContactKind;
use crate::view::best_view::ViewKind;
use crate::view::criteria::CriterionId;
use crate::view::feedback::Advice;
use crate::view::report::Finding;
use glam::DVec2;
use serde::Serialize;

/// Lengths in mm, angles in degrees, times in s, all without sign: a word says the direction.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(tag = "id", rename_all = "snake_case")]
#[cfg_attr(test, derive(strum::VariantNames), strum(serialize_all = "snake_case"))]
#[allow(missing_docs, reason = "the names and values are the documentation; the sentences are in texts")]
pub enum Remark {
    // Not done yet.
    NameParts,
    CentreTarget,
    KeepView { view: ViewKind },
    MarkOnOblique,
    BeamNotYet,
    SteerNotYet,
    DepthNotYet,
    NothingMetYet,
    ContrastNotYet,
    NoExposure,
    PicturesFree,

    // The table.
    TargetCentred,
    MoveTable { mm: f64, way: TableWay },

    // Kept views.
    ViewRight { view: ViewKind },
    ViewOff { criterion: CriterionId, finding: Finding, advice: Option<Advice> },
    KeptLate,

    // The mark.
    MarkAlongPlane,
    MarkInside { area: Area },
    MarkOutside { mm: f64, area: Area, along: Along, across: Across },
    MarkMedial { mm: f64 },
    MarkBehindBone { level: Option<Level> },

    // The needle's way.
    BeamHeld { deg: f64 },
    BeamOff { deg: f64 },
    Steered { mm: f64 },
    Strayed { mm: f64 },
    TurnedBlind { blind: usize, all: usize },

    // The depth.
    ApMedial { mm: f64 },
    ApShort { mm: f64 },
    ApAt { hour: f64 },
    SideDeep { mm: f64 },
    SideShallow { mm: f64 },
    SideOff { mm: f64, along: Along },
    SideInside,
    SacralUpper,
    SacralLow { mm: f64 },
    SacralDeep { mm: f64 },
    SacralInside,
    SacralOutside,
    Unproven { view: ViewKind },

    // What was met.
    NothingMet,
    Harm { kind: ContactKind, level: Option<Level>, mm: f64, pushed_mm: Option<f64> },

    // Contrast.
    AspirateFirst,
    InjectLive,
    WrongPlace,
    NamePattern,
    NamedWrongly,
    ContrastGood,
    ContrastInRoot,

    // Radiation.
    Spent { pictures: u32, beam_s: f64, par_pictures: u32, par_beam_s: u32 },
    EconomyScaled { percent: f64 },

    // Gates.
    GateHeld,
    StepsLeft { left: usize, all: usize },
    ViewMissed { view: ViewKind },
    OtherTarget { level: Level, side: Side, wanted_level: Level, wanted_side: Side },
    PainIgnored { mm: f64 },
    MedialBeforeContrast { mm: f64 },
    InjectedOnBlood,
    NeedlesUsed { needles: u32 },

    // Parts named.
    PartsFound { all: usize },
    PartsMissed { missed: Vec<Label> },
    PartsLeft { left: usize, all: usize },
    PartsLeftMissed { left: usize, all: usize, missed: Vec<Label> },

    // The next thing to do.
    MarkArea { area: Area },
    PlaceNeedle,
    HubOff { off: Way, to: Way, deg: f64 },
    NameSpread,
    SpreadGood,
    SpreadWrong,
    OnBone,
    TipStrayed { mm: f64, way: Way, hour: f64 },
    Advance,
    AdvanceBy { mm: f64 },
    DrawBackBy { mm: f64 },
    LookIn { view: ViewKind },
    AspirateNow,
    InjectNow,
    BloodAnswer,
    PainAnswer,
    ClearFluidAnswer,
}

/// What is aimed at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the trade's")]
pub enum Area {
    SacralForamen,
    UnderPedicle,
    UnderRoot,
}

impl Area {
    /// Of a way in at a level.
    pub fn of(level: Level, approach: Approach) -> Self {
        match (level, approach) {
            (Level::S1, _) => Self::SacralForamen,
            (_, Approach::Subpedicular) => Self::UnderPedicle,
            (_, Approach::Infraneural) => Self::UnderRoot,
        }
    }
}

/// Along the spine, where that is worth saying.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum Along {
    None,
    High,
    Low,
}

/// Across the spine, where that is worth saying.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum Across {
    None,
    Medial,
    Lateral,
}

/// A direction on the screen, to an eighth of a turn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[cfg_attr(test, derive(strum::VariantNames), strum(serialize_all = "snake_case"))]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum Way {
    Up,
    UpRight,
    Right,
    DownRight,
    Down,
    DownLeft,
    Left,
    UpLeft,
}

impl Way {
    /// The nearest to `direction`, [right, up].
    pub fn nearest(direction: DVec2) -> Self {
        const CLOCKWISE: [Way; 8] = [
            Way::Up,
            Way::UpRight,
            Way::Right,
            Way::DownRight,
            Way::Down,
            Way::DownLeft,
            Way::Left,
            Way::UpLeft,
        ];
        CLOCKWISE[(libm::round(crate::needle::reading::hour(direction) / 1.5) as usize) % 8]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::needle::compartment::Pattern;
    use crate::procedure::case::Caution;
    use crate::score::gate::GateId;
    use strum::VariantNames;

    /// The names as they stand in JSON.
    fn names<T: Serialize>(all: &[T]) -> Vec<String> {
        all.iter().map(|one| serde_json::to_value(one).unwrap().as_str().unwrap().to_owned()).collect()
    }

    /// English is complete, and the build holds the other languages to it (`src/bin/downbeam/texts.rs`).
    #[test]
    fn whatever_can_be_said_has_a_message() {
        let english = include_str!("../../texts/en/remark.ftl");
        let messages: Vec<&str> = english.lines().filter_map(|line| Some(line.split_once(" =")?.0)).collect();
        let (kinds, patterns, cautions) =
            (names(&ContactKind::ALL), names(Pattern::ALL), names(Caution::ALL));
        let wanted = Remark::VARIANTS
            .iter()
            .map(|name| (*name).to_owned())
            .chain(Way::VARIANTS.iter().flat_map(|way| [format!("to-{way}"), format!("of-{way}")]))
            .chain(kinds.iter().flat_map(|kind| [format!("kind-{kind}"), format!("sign-{kind}")]))
            .chain(patterns.iter().map(|pattern| format!("pattern-{pattern}")))
            .chain(cautions.iter().map(|caution| format!("caution-{caution}")))
            .chain(GateId::ALL.iter().map(|gate| format!("gate-{}", gate.id())));
        for name in wanted {
            assert!(messages.contains(&name.as_str()), "texts/en/remark.ftl has no message {name}");
        }
    }

    #[test]
    fn ways_go_round_the_clock() {
        for (direction, way) in [
            ([0.0, 1.0], Way::Up),
            ([1.0, 0.9], Way::UpRight),
            ([1.0, 0.1], Way::Right),
            ([0.1, -1.0], Way::Down),
            ([-1.0, -0.2], Way::Left),
            ([-1.0, 1.1], Way::UpLeft),
        ] {
            assert_eq!(Way::nearest(DVec2::from_array(direction)), way, "{direction:?}");
        }
    }
}
