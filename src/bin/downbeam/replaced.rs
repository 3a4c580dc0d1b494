//! A piece of a text that is replaced, and has to be there.

use anyhow::Context;

/// `text` with the first `old` replaced; an error where it has none.
pub(crate) fn replaced(text: &str, old: &str, new: &str) -> anyhow::Result<String> {
    text.contains(old).then_some(()).with_context(|| format!("the text to change has no {old}"))?;
    Ok(text.replacen(old, new, 1))
}
