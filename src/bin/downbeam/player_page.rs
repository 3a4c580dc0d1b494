//! The page for frames, `www/player.html`: `index.html` with a mark by which its styles leave out the surroundings. Made and not kept, so that
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
    fs::write(&player, without_other_pages(&html.replacen(PAGE_TAG, PLAYER_TAG, 1)))
        .with_context(|| format!("cannot write {}", player.display()))
}

/// Without the menu's lines that lead to other pages: those of teachers stay on the site, and a page that is on its own has none.
pub(crate) fn without_other_pages(html: &str) -> String {
    html.split_inclusive('\n')
        .filter(|line| !(line.trim_start().starts_with("<li><a href=\"") && line.contains(".html\"")))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_links_to_pages_go() {
        let html = "<ul>\n  <li><a href=\"model.html\">Model</a></li>\n  <li><a href=\"#picture\">Picture</a></li>\n</ul>\n";
        assert_eq!(without_other_pages(html), "<ul>\n  <li><a href=\"#picture\">Picture</a></li>\n</ul>\n");
    }
}
