//! A lesson in a link: its JSON in base64url (RFC 4648, section 5, without padding) behind `#lesson=`. A fragment is not sent to a
//! server (RFC 9110, section 7.1).

use super::file::Lesson;
use super::read_error::ReadError;
use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;

/// The key in the fragment.
pub const KEY: &str = "lesson";

/// Longest lesson that goes into a link, bytes of JSON. Browsers take far longer addresses; mail programs and learning platforms
/// begin to cut them (common practice, no source).
pub const MOST_BYTES: usize = 6 * 1024;

/// The fragment of a lesson, `lesson=…`, without `#`.
///
/// # Errors
/// When the lesson is too long for a link.
pub fn fragment(lesson: &Lesson) -> Result<String, ReadError> {
    let lesson = Lesson { schema: None, ..lesson.clone() };
    let json = serde_json::to_string(&lesson).unwrap_or_default();
    if json.len() > MOST_BYTES {
        let problem = format!(
            "the lesson has {} bytes and a link holds {MOST_BYTES}: hand out the file, or shorten its texts",
            json.len()
        );
        return Err(ReadError::at("", problem));
    }
    Ok(format!("{KEY}={}", URL_SAFE_NO_PAD.encode(json)))
}

/// The lesson of a link: a whole address, a fragment with or without `#`, or the code alone.
///
/// # Errors
/// Why there is none in it, in one sentence.
pub fn lesson(link: &str) -> Result<Lesson, ReadError> {
    let fragment = link.rsplit('#').next().unwrap_or_default().trim();
    let code = fragment
        .split('&')
        .find_map(|pair| pair.strip_prefix(KEY)?.strip_prefix('='))
        .unwrap_or(if fragment.contains(['=', ':', '/']) { "" } else { fragment })
        .trim_end_matches('=');
    if code.is_empty() {
        return Err(ReadError::at(
            "",
            "there is no lesson in the link: allowed is an address that ends in #lesson=…",
        ));
    }
    // Four characters hold three bytes.
    if code.len() > MOST_BYTES * 4 / 3 + 4 {
        let problem =
            format!("the link has {} characters: a lesson of {MOST_BYTES} bytes fits in one", code.len());
        return Err(ReadError::at("", problem));
    }
    let broken =
        |_| ReadError::at("", "the link is broken: it must be copied whole, from #lesson= to its end");
    let bytes = URL_SAFE_NO_PAD.decode(code).map_err(broken)?;
    let json = String::from_utf8(bytes)
        .map_err(|_| ReadError::at("", "the link is broken: what it holds is no text"))?;
    Lesson::from_json(&json)
}
