//! Where receipts stand in what a teacher is given: a file with one, a file with one a line, and what learning platforms give out. One
//! reader for the command line and the teacher's page, so that the same files give the same rows.
//!
//! A platform's field of text may hold an attempt under way before the receipt (`www/delivery/suspended.js`), and a record store gives
//! out statements, which hold the receipt as a text in their result (`www/delivery/statement.js`).

use serde_json::Value;
use std::borrow::Cow;

/// The extension of an xAPI statement's result that holds a receipt.
const EXTENSION: &str = "urn:downbeam:receipt";
/// How much of a plain text is looked at to see whether it may hold receipts, bytes.
pub const GLANCE_BYTES: usize = 256;

/// What a file's name says of what is in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// One receipt.
    One,
    /// A receipt a line.
    Lines,
    /// Plain text: one of both, or something else.
    Text,
    /// No receipts.
    Other,
}

impl Kind {
    /// Of a name or path.
    pub fn of(name: &str) -> Self {
        match name.rsplit_once('.').map(|(_, ending)| ending.to_ascii_lowercase()).as_deref() {
            Some("json") => Self::One,
            Some("ndjson" | "jsonl") => Self::Lines,
            Some("txt") => Self::Text,
            _ => Self::Other,
        }
    }
}

/// Whether a file of a folder may hold receipts: by its name, and of plain text by how it begins (the first [`GLANCE_BYTES`], cut anywhere).
pub fn may_hold(name: &str, beginning: &[u8]) -> bool {
    match Kind::of(name) {
        Kind::One | Kind::Lines => true,
        Kind::Text => {
            let text = String::from_utf8_lossy(beginning);
            let text = text.trim_start_matches('\u{feff}').trim_start();
            text.starts_with('{') || text.starts_with("db1.")
        }
        Kind::Other => false,
    }
}

/// Whether a file is a receipt a line: by its name, and of plain text by its first line that is not blank, which must be a whole object with
/// a line's end after it. Given by itself, whatever its name, a file is one receipt else.
pub fn is_lines(name: &str, first_line: &[u8]) -> bool {
    match Kind::of(name) {
        Kind::Lines => true,
        Kind::Text => first_line
            .strip_suffix(b"\n")
            .and_then(|line| std::str::from_utf8(line).ok())
            .is_some_and(|line| matches!(serde_json::from_str(bare(line)), Ok(Value::Object(_)))),
        Kind::One | Kind::Other => false,
    }
}

/// A text without a byte order mark and without an attempt under way in front.
fn bare(text: &str) -> &str {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text).trim_start();
    match text.find('{') {
        Some(at) if text.starts_with("db1.") => &text[at..],
        _ => text,
    }
}

/// The receipt in a text: the text itself, what stands behind an attempt under way, or the receipt of a statement.
pub fn receipt_in(text: &str) -> Cow<'_, str> {
    let text = bare(text);
    // Most texts are receipts, and those are not parsed twice.
    if !text.contains(EXTENSION) {
        return Cow::Borrowed(text);
    }
    let found = serde_json::from_str::<Value>(text).ok().and_then(|value| {
        let result = value.get("result").or_else(|| value.get("statement")?.get("result"))?;
        Some(result.get("extensions")?.get(EXTENSION)?.as_str()?.to_owned())
    });
    found.map_or(Cow::Borrowed(text), Cow::Owned)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_receipt_is_found_where_platforms_put_it() {
        assert_eq!(receipt_in("db1.2.5f577828.AQMBAw== {\"format\":1}"), "{\"format\":1}");
        assert_eq!(receipt_in("\u{feff} db1.0.811c9dc5. {\"format\":1}"), "{\"format\":1}");
        let statement = r#"{"verb":{},"result":{"extensions":{"urn:downbeam:receipt":"{\"format\":1}"}}}"#;
        assert_eq!(receipt_in(statement), "{\"format\":1}");
        assert_eq!(receipt_in(&format!("{{\"statement\":{statement}}}")), "{\"format\":1}");
        for other in [
            "{\"format\":1}",
            "db1.2.5f577828.AQMBAw==",
            "x {",
            "",
            "{\"urn:downbeam:receipt\":",
            "{\"result\":{\"extensions\":{\"urn:downbeam:receipt\":7}}}",
        ] {
            assert_eq!(receipt_in(other), other);
        }
    }

    #[test]
    fn files_are_told_by_name_and_beginning() {
        assert!(
            may_hold("a.JSON", b"")
                && may_hold("b.ndjson", b"\xff")
                && may_hold("c.txt", b"\xef\xbb\xbf\n{\"a")
                && may_hold("c.txt", b"db1.3")
        );
        assert!(!may_hold("c.txt", b"Dear all") && !may_hold("d.csv", b"{") && !may_hold("json", b"{"));
        assert!(
            is_lines("a.jsonl", b"")
                && is_lines("a.txt", b"{\"a\":1}\r\n")
                && is_lines("a.txt", b"db1.1.a.b {\"a\":1}\n")
        );
        assert!(
            !is_lines("a.txt", b"{\"a\":1}")
                && !is_lines("a.txt", b"{\n")
                && !is_lines("a.json", b"{}\n")
                && !is_lines("a", b"{}\n")
        );
    }
}
