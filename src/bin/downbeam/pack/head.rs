//! Changes to the head of a page.

use crate::replaced::replaced;

/// The page, the module that it begins with, and the tag that does so.
pub(super) const PAGE: &str = "index.html";
pub(super) const ENTRY: &str = "page/begin.js";
pub(super) const ENTRY_TAG: &str = "<script type=\"module\" src=\"page/begin.js\"></script>";
/// Runs before all else and speaks to browsers that read no modules: says what they lack.
pub(super) const NEEDED: &str = "page/needed.js";

/// Says in the page how it is delivered (`www/delivery/choose.js`).
pub(super) fn delivered_by(html: &str, how: &str) -> anyhow::Result<String> {
    with_meta(html, "downbeam-delivery", how)
}

/// Says in the page which lesson file is its own, where there are several.
pub(super) fn with_lesson(html: &str, file: &str) -> anyhow::Result<String> {
    with_meta(html, "downbeam-lesson", file)
}

/// Says in the page that there is a service worker that knows this site (`www/page/offline.js`).
pub(super) fn working_offline(html: &str) -> anyhow::Result<String> {
    with_meta(html, "downbeam-offline", "yes")
}

fn with_meta(html: &str, name: &str, content: &str) -> anyhow::Result<String> {
    let charset = "<meta charset=\"utf-8\">";
    replaced(html, charset, &format!("{charset}\n  <meta name=\"{name}\" content=\"{content}\">"))
}

/// Lets the page connect to these places: the value of `connect-src` in its content security policy.
pub(super) fn allowing_connections(html: &str, places: &str) -> anyhow::Result<String> {
    replaced(html, "connect-src 'self'", &format!("connect-src {places}"))
}
