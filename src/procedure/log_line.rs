//! An event as a line of text: `tick name values`, such as `120 orient -250 57` or `840 point L4 pedicle left`.
//!
//! Values stand in the order of the action's fields (`super::action::Action`), names as in its JSON, `-` for none. The text is the
//! form that receipts carry: an eighth of the JSON, and a person can read it.

use super::action::{Action, Event};
use crate::anatomy::names::shown;
use serde_json::{Map, Value};

/// Each action and the fields after its name. The table is the form of receipts in the wild, so it is written out and does not follow
/// the types; a test holds the two together.
const FORMS: [(&str, &[&str]); 20] = [
    ("orient", &["oblique", "tilt"]),
    ("rotate_image", &["by"]),
    ("move_table", &["left", "back", "head"]),
    ("spot", &[]),
    ("fluoroscopy", &["pulses", "rate"]),
    ("keep", &["view"]),
    ("recall", &["view"]),
    ("mark", &["u", "v"]),
    ("choose", &["approach"]),
    ("place", &["gauge", "length_mm"]),
    ("angle", &["right", "up"]),
    ("roll", &["by"]),
    ("advance", &["by", "spin"]),
    ("withdraw", &["by"]),
    ("remove", &[]),
    ("aspirate", &[]),
    ("inject", &["volume"]),
    ("name", &["pattern"]),
    ("point", &["level", "part", "side"]),
    ("finish", &[]),
];

/// Fields whose value is a text even where it looks like a number.
const TEXTS: [&str; 7] = ["view", "approach", "gauge", "pattern", "level", "part", "side"];

/// Longest line that is read, bytes.
const LONGEST: usize = 120;

impl Action {
    /// Its name in a log, such as `move_table`.
    pub fn name(&self) -> &'static str {
        self.into()
    }
}

/// What a line looks like, as a regular expression for the schema of receipts: the values by number only.
#[cfg(feature = "cli")]
pub(crate) fn pattern() -> String {
    let forms: Vec<String> = FORMS
        .iter()
        .map(|(name, fields)| match fields.len() {
            0 => (*name).to_owned(),
            n => format!("{name}( [^ ]+){{{n}}}"),
        })
        .collect();
    format!("^[0-9]+ ({})$", forms.join("|"))
}

/// Writes an event.
pub fn write(event: &Event) -> String {
    let Event(tick, action) = event;
    let mut line = format!("{tick} {}", action.name());
    let values = &serde_json::to_value(action).unwrap_or_default()[action.name()];
    for field in fields_of(action.name()).unwrap_or_default() {
        line.push(' ');
        match &values[*field] {
            Value::Null => line.push('-'),
            Value::String(text) => line.push_str(text),
            number => line.push_str(&number.to_string()),
        }
    }
    line
}

fn fields_of(name: &str) -> Option<&'static [&'static str]> {
    FORMS.iter().find(|(known, _)| *known == name).map(|(_, fields)| *fields)
}

/// A line that is no action; the text is one sentence.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{0}")]
pub struct LineError(String);

/// Reads an event.
///
/// # Errors
/// When the line is none: what is wrong and what is allowed.
pub fn read(line: &str) -> Result<Event, LineError> {
    parsed(line).map_err(LineError)
}

fn parsed(line: &str) -> Result<Event, String> {
    if line.len() > LONGEST {
        return Err(format!("a line of {} bytes is too long: allowed are {LONGEST}", line.len()));
    }
    let mut words = line.split(' ');
    let tick = words.next().unwrap_or_default();
    let tick: u32 =
        tick.parse().map_err(|_| format!("'{}' is no tick: allowed are 0 to {}", shown(tick), u32::MAX))?;
    let name = words.next().unwrap_or_default();
    let fields = fields_of(name).ok_or_else(|| {
        let known: Vec<&str> = FORMS.iter().map(|(name, _)| *name).collect();
        format!("unknown action '{}': allowed are {}", shown(name), known.join(", "))
    })?;
    let mut map = Map::new();
    for field in fields {
        let word = words.next().ok_or_else(|| format!("'{name}' wants {}", fields.join(", ")))?;
        let value = if word == "-" {
            Value::Null
        } else if TEXTS.contains(field) {
            Value::from(word)
        } else {
            let number: i64 =
                word.parse().map_err(|_| format!("'{}' is no whole number ({field})", shown(word)))?;
            Value::from(number)
        };
        map.insert((*field).to_owned(), value);
    }
    if let Some(more) = words.next() {
        return Err(format!("'{}' after '{name}' is too much", shown(more)));
    }
    let action =
        Action::of(name.to_owned(), Value::Object(map)).map_err(|e| format!("{e} in '{}'", shown(line)))?;
    Ok(Event(tick, action))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::foramen::Approach;
    use crate::anatomy::names::{Level, Part, Side};
    use crate::needle::compartment::Pattern;
    use crate::needle::device::Gauge;
    use crate::view::best_view::ViewKind;
    use strum::VariantNames;

    #[test]
    fn every_action_reads_back_as_it_was_written() {
        let all = [
            (Action::Orient { oblique_tenths: -250, tilt_tenths: 57 }, "orient -250 57"),
            (Action::RotateImage { deg_tenths: -900 }, "rotate_image -900"),
            (
                Action::MoveTable { left_mm_tenths: 1, back_mm_tenths: -2, head_mm_tenths: 300 },
                "move_table 1 -2 300",
            ),
            (Action::Spot, "spot"),
            (Action::Fluoroscopy { pulses: 16, pulses_per_s: 8 }, "fluoroscopy 16 8"),
            (Action::Keep { view: ViewKind::TrueAp }, "keep true_ap"),
            (Action::Recall { view: ViewKind::Oblique }, "recall oblique"),
            (Action::Mark { u_mm_hundredths: -1234, v_mm_hundredths: 5 }, "mark -1234 5"),
            (Action::Choose { approach: Approach::Infraneural }, "choose infraneural"),
            (Action::Place { gauge: Gauge::G22, length_mm: 127 }, "place 22 127"),
            (Action::Angle { right_deg_tenths: 3, up_deg_tenths: -4 }, "angle 3 -4"),
            (Action::Roll { deg_tenths: 1800 }, "roll 1800"),
            (Action::Advance { mm_tenths: 30, spin_percent: 100 }, "advance 30 100"),
            (Action::Withdraw { mm_tenths: 30 }, "withdraw 30"),
            (Action::Remove, "remove"),
            (Action::Aspirate, "aspirate"),
            (Action::Inject { ml_hundredths: 80 }, "inject 80"),
            (Action::Name { pattern: Pattern::Perineural }, "name perineural"),
            (
                Action::Point { level: Level::L4, part: Part::Pedicle, side: Some(Side::Left) },
                "point L4 pedicle left",
            ),
            (
                Action::Point { level: Level::S1, part: Part::MedianCrest, side: None },
                "point S1 median_crest -",
            ),
            (Action::Finish, "finish"),
        ];
        for (action, text) in all {
            let line = write(&Event(120, action));
            assert_eq!(line, format!("120 {text}"));
            assert_eq!(read(&line), Ok(Event(120, action)));
        }
        let named: std::collections::BTreeSet<&str> = all.iter().map(|(a, _)| a.name()).collect();
        assert_eq!(named.len(), FORMS.len());
        assert_eq!(FORMS.map(|form| form.0), Action::VARIANTS);
        // Every field of the JSON is in the line.
        for (action, _) in all {
            let json = serde_json::to_value(action).unwrap();
            let keys = json[action.name()].as_object().map_or(0, serde_json::Map::len);
            assert_eq!(Some(keys), fields_of(action.name()).map(<[&str]>::len), "{}", action.name());
        }
    }

    #[test]
    fn bad_lines_are_told_apart() {
        for (line, said) in [
            ("", "'' is no tick"),
            ("-1 spot", "'-1' is no tick"),
            ("5 fly", "unknown action 'fly': allowed are orient"),
            ("5 orient 3", "'orient' wants oblique, tilt"),
            ("5 orient 3 x", "'x' is no whole number (tilt)"),
            ("5 orient 3 99999999999", "invalid value"),
            ("5 orient 3 4 5", "'5' after 'orient' is too much"),
            ("5  spot", "unknown action ''"),
            ("5 keep sideways", "unknown variant `sideways`"),
            ("5 advance - 0", "invalid type: null"),
        ] {
            let error = read(line).unwrap_err().to_string();
            assert!(error.contains(said), "{line}: {error}");
        }
    }
}
