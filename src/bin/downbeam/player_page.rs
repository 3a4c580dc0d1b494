//! The page for frames, `www/player.html`: `index.html`, told to its styles to be without its surroundings. Made and not kept, so that
//! the two cannot differ.

use anyhow::{Context, bail};
use std::fs;
use std::path::Path;

const PAGE_TAG: &str = "<html lang=\"en\" data-theme=\"dark\">";
const PLAYER_TAG: &str = "<html lang=\"en\" data-theme=\"dark\" data-player>";

/// Writes it beside the page.
pub(crate) fn write(www: &Path) -> anyhow::Result<()> {
    let page = www.join("index.html");
    let html = fs::read_to_string(&page).with_context(|| format!("cannot read {}", page.display()))?;
    if !html.contains(PAGE_TAG) {
        bail!("{} has no {PAGE_TAG}", page.display());
    }
    let player = www.join("player.html");
    fs::write(&player, html.replacen(PAGE_TAG, PLAYER_TAG, 1))
        .with_context(|| format!("cannot write {}", player.display()))
}
