//! Where a class list comes from: a file that a spreadsheet has written.

use anyhow::Context;
use std::path::Path;

/// A list's text. Spreadsheets write another coding unless they are told not to.
pub(crate) fn text(file: &Path) -> anyhow::Result<String> {
    let bytes = std::fs::read(file).with_context(|| format!("cannot read {}", file.display()))?;
    String::from_utf8(bytes).map_err(|_| {
        let name = file.display();
        anyhow::anyhow!("{name} is not UTF-8 text: save it from the spreadsheet as 'CSV UTF-8'")
    })
}
