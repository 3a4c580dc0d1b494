//! What a learner can do, as whole numbers, so that a log replays to the same bits anywhere.

use crate::anatomy::foramen::Approach;
use crate::anatomy::names::{Level, Part, Side};
use crate::needle::compartment::Pattern;
use crate::needle::device::Gauge;
use crate::view::best_view::ViewKind;
use serde::{Deserialize, Serialize, de};
use serde_json::{Map, Value};

/// Ticks a second of an attempt's clock.
pub const TICKS_PER_S: u32 = 20;

/// Seconds of a tick.
pub fn seconds(tick: u32) -> f64 {
    f64::from(tick) / f64::from(TICKS_PER_S)
}

/// One action. Angles in tenths of a degree, lengths in tenths of a millimetre unless their name says otherwise. Serde has the name around the
/// fields; a page writes them in one object ([`Action::from_object`]), as the declarations say.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, strum::IntoStaticStr, strum::VariantNames,
)]
#[cfg_attr(feature = "cli", derive(ts_rs::TS), ts(tag = "do"))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
#[strum(serialize_all = "snake_case")]
pub enum Action {
    /// The C-arm goes to an orientation.
    Orient {
        /// > 0 receptor to the patient's left.
        #[serde(rename = "oblique")]
        oblique_tenths: i32,
        /// > 0 cephalad.
        #[serde(rename = "tilt")]
        tilt_tenths: i32,
    },
    /// The picture is turned, clockwise.
    RotateImage {
        /// From upright.
        #[serde(rename = "by")]
        deg_tenths: i32,
    },
    /// The table stands moved, patient to its own left and headwards and up.
    MoveTable {
        /// To the patient's left.
        #[serde(rename = "left")]
        left_mm_tenths: i32,
        /// To the patient's back.
        #[serde(rename = "back")]
        back_mm_tenths: i32,
        /// To the head.
        #[serde(rename = "head")]
        head_mm_tenths: i32,
    },
    /// A spot picture.
    Spot,
    /// Pulses of fluoroscopy.
    Fluoroscopy {
        /// How many.
        pulses: u32,
        /// A second.
        #[serde(rename = "rate")]
        pulses_per_s: u32,
    },
    /// "This is the view": it is remembered and counts.
    Keep {
        /// Which.
        view: ViewKind,
    },
    /// The C-arm goes to a kept view.
    Recall {
        /// Which.
        view: ViewKind,
    },
    /// The target is marked on the detector, hundredths of a millimetre.
    Mark {
        /// To the right.
        #[serde(rename = "u")]
        u_mm_hundredths: i32,
        /// Up.
        #[serde(rename = "v")]
        v_mm_hundredths: i32,
    },
    /// Another way into the foramen (where the lesson leaves it open).
    Choose {
        /// Which.
        approach: Approach,
    },
    /// A needle is set on the skin over the mark, upright against the table.
    Place {
        /// Gauge.
        gauge: Gauge,
        /// Length, whole millimetres.
        length_mm: u32,
    },
    /// The hub is moved on the screen, turning the needle about the skin.
    Angle {
        /// To the screen's right.
        #[serde(rename = "right")]
        right_deg_tenths: i32,
        /// Up the screen.
        #[serde(rename = "up")]
        up_deg_tenths: i32,
    },
    /// The hub is turned, clockwise from above.
    Roll {
        /// By.
        #[serde(rename = "by")]
        deg_tenths: i32,
    },
    /// The needle is pushed.
    Advance {
        /// By.
        #[serde(rename = "by")]
        mm_tenths: u32,
        /// Share of the way spent spinning, percent.
        #[serde(rename = "spin")]
        spin_percent: u8,
    },
    /// The needle is drawn back along its path.
    Withdraw {
        /// By.
        #[serde(rename = "by")]
        mm_tenths: u32,
    },
    /// The needle is taken out.
    Remove,
    /// Suction on the syringe.
    Aspirate,
    /// Contrast goes in, hundredths of a millilitre.
    Inject {
        /// How much.
        #[serde(rename = "volume")]
        ml_hundredths: u32,
    },
    /// The pattern of spread is named.
    Name {
        /// As what.
        pattern: Pattern,
    },
    /// A part is pointed at, as the answer to the one that is asked for.
    Point {
        /// Its bone.
        level: Level,
        /// The part.
        part: Part,
        /// Its side; none in the midline.
        side: Option<Side>,
    },
    /// The learner has finished.
    Finish,
}

impl Action {
    /// From one object: the name under `do`, the fields beside it.
    ///
    /// # Errors
    /// When it is no action: a name or field that there is none of, or a value out of its type.
    pub fn from_object(mut object: Value) -> Result<Self, serde_json::Error> {
        let name = object.as_object_mut().and_then(|fields| fields.remove("do"));
        let Some(Value::String(name)) = name else { return Err(de::Error::missing_field("do")) };
        Self::of(name, object)
    }

    /// Of a name and an object of its fields.
    pub(super) fn of(name: String, fields: Value) -> Result<Self, serde_json::Error> {
        let bare = fields.as_object().is_some_and(Map::is_empty);
        // An action that has no fields is its name alone; of one whose fields are missing, the first is told.
        if bare && let Ok(action) = Self::deserialize(Value::from(name.as_str())) {
            return Ok(action);
        }
        Self::deserialize(Value::Object(Map::from_iter([(name, fields)])))
    }
}

/// An action and when it was done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Event(pub u32, pub Action);

/// Why an action could not be done.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[allow(missing_docs, reason = "the messages are the documentation")]
pub enum ActionError {
    #[error("{0}")]
    Orientation(#[from] crate::imaging::c_arm::OrientationError),
    #[error("{0}")]
    Length(#[from] crate::needle::device::LengthError),
    #[error("there is no needle yet: mark the target, then place one")]
    NoNeedle,
    #[error("there is no mark yet: mark the target on the oblique picture first")]
    NoMark,
    #[error("the mark's ray does not leave the patient's back: mark a place on the patient")]
    OffPatient,
    #[error("no {0} view has been kept yet: set it up and keep it first")]
    NotKept(&'static str),
    #[error("the tip is still at the skin: advance it first")]
    AtSkin,
    #[error("nothing has been injected yet: inject contrast first")]
    NothingInjected,
    #[error("{what} of {found} is not possible: allowed are {low} to {high} {unit}")]
    OutOfRange { what: &'static str, found: i64, low: i64, high: i64, unit: &'static str },
    #[error("time runs backwards: tick {found} after tick {last}")]
    Backwards { found: u32, last: u32 },
    #[error("the attempt is finished: undo or start again")]
    Finished,
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn objects_of_a_page_are_read_and_what_is_wrong_is_told() {
        let read = |object| Action::from_object(object).map_err(|error| error.to_string());
        assert_eq!(read(json!({ "do": "spot" })), Ok(Action::Spot));
        let turned = Action::Orient { oblique_tenths: -250, tilt_tenths: 57 };
        assert_eq!(read(json!({ "do": "orient", "oblique": -250, "tilt": 57 })), Ok(turned));
        for (object, said) in [
            (json!({ "do": "orient" }), "missing field `oblique`"),
            (json!({ "do": "orient", "oblique": 1, "tilt": 2, "roll": 3 }), "unknown field `roll`"),
            (json!({ "do": "fly" }), "unknown variant `fly`"),
            (json!({ "oblique": 1 }), "missing field `do`"),
            (json!(null), "missing field `do`"),
        ] {
            let error = read(object).unwrap_err();
            assert!(error.contains(said), "{error}");
        }
    }
}
