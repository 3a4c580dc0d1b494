//! The lesson file: JSON, one lesson a file, its schema made from these types (`www/lessons/lesson.schema.json`).
//!
//! Unknown keys are refused. What the types cannot say (ranges, what goes with what) is in `super::check`. Who the patient is and
//! where the needle goes may be left to the learner's code: see `super::draw`.

use super::changes::Changes;
use super::read_error::ReadError;
use crate::anatomy::names::{Level, Part, Side};
use crate::needle::device::Medium;
use crate::procedure::case::{Case, NeedleTolerances, Par};
use crate::procedure::step::StepId;
use crate::score::gate::GateId;
use crate::view::criteria::Target;
use crate::view::tolerance::{Tolerance, Tolerances};
use serde::de::{self, Deserialize, Deserializer, MapAccess, Visitor, value};
use serde::{Deserialize as Read, Serialize as Write};
use std::collections::BTreeMap;
use std::fmt;
use std::marker::PhantomData;

/// The format that is read and written.
pub const FORMAT: u32 = 1;

/// A lesson.
#[derive(Clone, Debug, PartialEq, Read, Write)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Lesson {
    /// Where the schema is, for editors. Says nothing about the lesson.
    #[serde(rename = "$schema", default, skip_serializing_if = "Option::is_none")]
    pub schema: Option<String>,
    /// Version of this format: 1.
    #[cfg_attr(feature = "cli", schemars(range(min = 1, max = 1)))]
    pub format: u32,
    /// Short name, such as `true-ap-l4`: small letters, digits and hyphens, at most 64.
    #[cfg_attr(feature = "cli", schemars(regex(pattern = "^[a-z][a-z0-9-]{0,63}$")))]
    pub id: String,
    /// What the lesson is called, by language.
    pub title: Texts,
    /// What the learner reads before it, by language.
    pub intro: Texts,
    /// How much help there is.
    pub mode: Mode,
    /// What is asked and scored, in the order of the procedure, each once.
    #[cfg_attr(feature = "cli", schemars(length(min = 1, max = 12), extend("uniqueItems" = true)))]
    pub steps: Vec<StepId>,
    /// Parts to name; wanted by the step `name_parts` and by no other.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "cli", schemars(length(max = 24)))]
    pub parts: Vec<AskedPart>,
    /// Who lies on the table.
    pub patient: PatientDraw,
    /// Level of the foramen, or levels to draw one from by the learner's code.
    pub level: Choice<LessonLevel>,
    /// Side that the needle comes from, or sides to draw one from by the learner's code.
    pub side: Choice<Side>,
    /// Way into the foramen; under the pedicle when left out. At S1 there is only that one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub approach: Option<LessonApproach>,
    /// What the needle bends as in; muscle when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub medium: Option<Medium>,
    /// Whether pictures come from exposures only; in an assessment always, else not when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub exposures: Option<bool>,
    /// Limits other than the usual.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tolerances: Option<LessonTolerances>,
    /// What a good hand needs; only with exposures.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub par: Option<LessonPar>,
    /// What fails an attempt whatever its marks, beyond what the steps bring with them: `aspirated`, `pattern_named`, `within_par`, `one_needle`.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "cli", schemars(length(max = 4), extend("uniqueItems" = true)))]
    pub gates: Vec<GateId>,
    /// Percent of all marks from which the lesson is passed.
    #[cfg_attr(feature = "cli", schemars(range(min = 1, max = 100)))]
    pub pass_mark: u32,
}

/// A text by language (BCP 47), English always.
#[derive(Clone, Debug, Default, PartialEq, Read, Write)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
#[cfg_attr(
    feature = "cli",
    schemars(extend(
        "required" = ["en"],
        "propertyNames" = { "pattern": "^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$" }
    ))
)]
#[serde(transparent)]
pub struct Texts(pub BTreeMap<String, String>);

impl Texts {
    /// In a language, else in that language without its region, else in English; empty when there is none.
    pub fn in_language(&self, tag: &str) -> &str {
        let language = tag.split('-').next().unwrap_or_default();
        let found = [tag, language, "en"].into_iter().find_map(|t| {
            self.0.iter().find(|(key, _)| key.eq_ignore_ascii_case(t)).map(|(_, text)| text.as_str())
        });
        found.unwrap_or_default()
    }
}

/// How much help a lesson gives.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Read, Write)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Mode {
    /// Hints all along, pictures live.
    Guided,
    /// Hints when they are asked for.
    Practice,
    /// No hints; nothing is seen without an exposure.
    Assessment,
}

/// A part to name.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Read, Write)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct AskedPart {
    /// Which.
    pub part: LessonPart,
    /// Of which bone.
    #[serde(default, skip_serializing_if = "is_usual")]
    pub bone: AskedBone,
    /// Of which side, where there are two.
    #[serde(default, skip_serializing_if = "is_usual")]
    pub side: AskedSide,
}

fn is_usual<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}

/// The bone that a part is asked of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Read, Write)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum AskedBone {
    /// That of the lesson's level.
    #[default]
    Target,
    /// The next one down.
    Below,
}

/// The side that a part is asked of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Read, Write)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum AskedSide {
    /// The needle's.
    #[default]
    Needle,
    /// The other one.
    Other,
}

/// Declares an enum of a lesson file as some of the variants of one of the model's.
macro_rules! some_of {
    ($(#[$doc:meta])* $name:ident of $whole:ident, $case:literal: $($variant:ident),*) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Read, Write, strum::VariantArray)]
        #[cfg_attr(feature = "cli", derive(schemars::JsonSchema, ts_rs::TS))]
        #[serde(rename_all = $case)]
        #[allow(missing_docs, reason = "the names are the documentation")]
        pub enum $name { $($variant),* }

        impl $name {
            /// All of them.
            pub const ALL: &'static [Self] = <Self as strum::VariantArray>::VARIANTS;
        }

        impl From<$name> for $whole {
            fn from(some: $name) -> Self {
                match some { $($name::$variant => Self::$variant),* }
            }
        }
    };
}

some_of! {
    /// A level that a needle can be aimed at.
    LessonLevel of Level, "UPPERCASE": L1, L2, L3, L4, L5, S1
}

some_of! {
    /// A part that is drawn with an outline of its own, so that it can be pointed at.
    LessonPart of Part, "snake_case":
    Body, Pedicle, Pars, Lamina, SuperiorArticularProcess, InferiorArticularProcess, TransverseProcess, SpinousProcess, Ala,
    MedianCrest
}

/// Who lies on the table: one patient or a draw from several, by name; and the seed, fixed or from the learner's code.
#[derive(Clone, Debug, Default, PartialEq, Read, Write)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
#[cfg_attr(
    feature = "cli",
    schemars(extend(
        "oneOf" = [{ "required": ["name"] }, { "required": ["any_of"] }],
        "not" = { "required": ["seed", "seed_from"] }
    ))
)]
#[serde(deny_unknown_fields)]
pub struct PatientDraw {
    /// One patient.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Several to draw one from by the learner's code.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "cli", schemars(length(min = 1, max = 64)))]
    pub any_of: Option<Vec<String>>,
    /// What differs between patients of the same build; 0 when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub seed: Option<u32>,
    /// Where else the seed comes from. From the learner's code, each learner's patient also differs in its dimensions (`variation` 1,
    /// unless `changed` says otherwise).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub seed_from: Option<SeedFrom>,
    /// Numbers that are not as the name says; of all patients drawn from.
    #[serde(default, skip_serializing_if = "Changes::is_empty")]
    pub changed: Changes,
}

impl PatientDraw {
    /// The names that can come out.
    pub fn names(&self) -> &[String] {
        self.any_of.as_deref().unwrap_or(self.name.as_slice())
    }
}

/// Where a seed comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Read, Write)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum SeedFrom {
    /// The learner's code.
    Learner,
}

/// One thing, or several to draw one from: `"L4"` or `{"any_of": ["L4", "L5"]}`.
#[derive(Clone, Debug, PartialEq, Write)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
#[serde(untagged)]
pub enum Choice<T> {
    /// This one.
    One(T),
    /// One of these.
    Several(Several<T>),
}

/// What a draw is from.
#[derive(Clone, Debug, PartialEq, Read, Write)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Several<T> {
    /// The things.
    #[cfg_attr(feature = "cli", schemars(length(min = 1, max = 64)))]
    pub any_of: Vec<T>,
}

impl<T> Choice<T> {
    /// All that can come out.
    pub fn all(&self) -> &[T] {
        match self {
            Self::One(one) => std::slice::from_ref(one),
            Self::Several(several) => &several.any_of,
        }
    }
}

/// Written out rather than derived, so that an error names what was wrong inside.
impl<'de, T: Deserialize<'de>> Deserialize<'de> for Choice<T> {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        struct OneOrSeveral<T>(PhantomData<T>);

        impl<'de, T: Deserialize<'de>> Visitor<'de> for OneOrSeveral<T> {
            type Value = Choice<T>;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a name or {\"any_of\": [names]}")
            }

            fn visit_str<E: de::Error>(self, text: &str) -> Result<Choice<T>, E> {
                T::deserialize(value::StrDeserializer::new(text)).map(Choice::One)
            }

            fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<Choice<T>, A::Error> {
                Several::deserialize(value::MapAccessDeserializer::new(map)).map(Choice::Several)
            }
        }
        from.deserialize_any(OneOrSeveral(PhantomData))
    }
}

/// The way into the foramen that a lesson wants.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Read, Write)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum LessonApproach {
    /// Under the pedicle, above the root.
    Subpedicular,
    /// Above the disc's lower plate, under the root.
    Infraneural,
    /// The learner may choose either; begins under the pedicle.
    Open,
}

/// Limits other than the usual: full marks up to one value, none from another.
#[derive(Clone, Copy, Debug, Default, PartialEq, Read, Write)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct LessonTolerances {
    /// Ray against end plate, degrees.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub squared_deg: Option<Tolerance>,
    /// Spinous tip off the middle of the pedicles, percent of their spacing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spinous_percent: Option<Tolerance>,
    /// Tip of the process below off the pedicle's middle, percent of the pedicle's width.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub facet_percent: Option<Tolerance>,
    /// Left and right pedicle apart in the lateral view, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lateral_mm: Option<Tolerance>,
    /// Tip of the process below off the middle of its end plate, percent of half the plate (the way under the root).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mid_plate_percent: Option<Tolerance>,
    /// Anterior and posterior sacral foramen apart, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub foramen_mm: Option<Tolerance>,
    /// Mark outside the area aimed at, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mark_mm: Option<Tolerance>,
    /// Shaft against beam, degrees.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub coaxial_deg: Option<Tolerance>,
    /// Tip off the mark at the end, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub off_mark_mm: Option<Tolerance>,
    /// Tip medial of the 6 o'clock line, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub medial_mm: Option<Tolerance>,
    /// Tip outside its part of the foramen, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub depth_mm: Option<Tolerance>,
}

impl LessonTolerances {
    /// Each with its name.
    pub fn list(&self) -> [(&'static str, Option<Tolerance>); 11] {
        [
            ("squared_deg", self.squared_deg),
            ("spinous_percent", self.spinous_percent),
            ("facet_percent", self.facet_percent),
            ("lateral_mm", self.lateral_mm),
            ("mid_plate_percent", self.mid_plate_percent),
            ("foramen_mm", self.foramen_mm),
            ("mark_mm", self.mark_mm),
            ("coaxial_deg", self.coaxial_deg),
            ("off_mark_mm", self.off_mark_mm),
            ("medial_mm", self.medial_mm),
            ("depth_mm", self.depth_mm),
        ]
    }
}

/// Pars other than the usual.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Read, Write)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct LessonPar {
    /// Spot pictures and runs of fluoroscopy.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "cli", schemars(range(min = 1, max = 500)))]
    pub exposures: Option<u32>,
    /// Seconds of beam in fluoroscopy.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "cli", schemars(range(min = 1, max = 500)))]
    pub beam_s: Option<u32>,
}

/// Longest lesson file, bytes.
pub const MOST_BYTES: usize = 32 * 1024;

impl Lesson {
    /// Reads a lesson as far as its types go; [`Self::from_json`] (in `super::check`) holds it to the rules too.
    ///
    /// # Errors
    /// The first thing that is wrong, in one sentence with its place.
    pub fn parsed(text: &str) -> Result<Self, ReadError> {
        super::read_error::read(text, "lesson", FORMAT, MOST_BYTES)
    }

    /// As a file, indented.
    pub fn to_json(&self) -> String {
        // Nothing in a lesson can fail to be written: its keys are texts.
        serde_json::to_string_pretty(self).unwrap_or_default() + "\n"
    }

    /// SHA-256 of what the lesson asks, hexadecimal: of its canonical form (RFC 8785) without `$schema`, `title` and `intro`, so that
    /// texts may be corrected and translated while a class is at work.
    pub fn hash(&self) -> String {
        let mut value = serde_json::to_value(self).unwrap_or_default();
        if let Some(object) = value.as_object_mut() {
            for text in ["$schema", "title", "intro"] {
                object.remove(text);
            }
        }
        super::digest::sha256_hex(&serde_json_canonicalizer::to_vec(&value).unwrap_or_default())
    }

    /// Whether what is drawn differs from one learner's code to the next.
    pub fn depends_on_code(&self) -> bool {
        let several =
            self.patient.names().len() > 1 || self.level.all().len() > 1 || self.side.all().len() > 1;
        several || self.patient.seed_from == Some(SeedFrom::Learner)
    }

    /// Whether pictures come from exposures only.
    pub fn exposes(&self) -> bool {
        self.exposures.unwrap_or(self.mode == Mode::Assessment)
    }

    /// What is set at a target.
    pub fn case(&self, target: Target) -> Case {
        let t = self.tolerances.unwrap_or_default();
        let (views, needle, usual) = (Tolerances::default(), NeedleTolerances::default(), Par::default());
        let par = self.par.unwrap_or_default();
        let usual_case = Case::new(target);
        Case {
            approach: match self.approach {
                Some(LessonApproach::Infraneural) => crate::anatomy::foramen::Approach::Infraneural,
                _ => usual_case.approach,
            },
            medium: self.medium.unwrap_or(usual_case.medium),
            exposures: self.exposes(),
            views: Tolerances {
                squared_deg: t.squared_deg.unwrap_or(views.squared_deg),
                spinous_percent: t.spinous_percent.unwrap_or(views.spinous_percent),
                facet_percent: t.facet_percent.unwrap_or(views.facet_percent),
                lateral_mm: t.lateral_mm.unwrap_or(views.lateral_mm),
                mid_plate_percent: t.mid_plate_percent.unwrap_or(views.mid_plate_percent),
                foramen_mm: t.foramen_mm.unwrap_or(views.foramen_mm),
            },
            needle: NeedleTolerances {
                mark_mm: t.mark_mm.unwrap_or(needle.mark_mm),
                coaxial_deg: t.coaxial_deg.unwrap_or(needle.coaxial_deg),
                off_mark_mm: t.off_mark_mm.unwrap_or(needle.off_mark_mm),
                medial_mm: t.medial_mm.unwrap_or(needle.medial_mm),
                depth_mm: t.depth_mm.unwrap_or(needle.depth_mm),
            },
            par: Par {
                exposures: par.exposures.unwrap_or(usual.exposures),
                beam_s: par.beam_s.unwrap_or(usual.beam_s),
            },
            ..usual_case
        }
    }
}
