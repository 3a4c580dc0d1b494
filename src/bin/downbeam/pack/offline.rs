//! What makes a site work without a network: its service worker gets a list of its files and a version, the digest of them all, so that
//! another site's worth of files is another version, and the browser notices.

use super::files::Files;
use super::specifiers::WORKER;
use crate::replaced::replaced;
use downbeam::lesson::digest::sha256_hex;

/// Digits of the digest in the version.
const DIGITS: usize = 16;

/// Writes files and version into the worker. What is only to be read is not kept for offline use.
pub(super) fn stamp(files: &mut Files) -> anyhow::Result<()> {
    let kept: Vec<(&str, &[u8])> = files
        .iter()
        .filter(|(path, _)| {
            *path != WORKER
                && !path.ends_with(".md")
                && !path.starts_with("docs/")
                && !path.starts_with("LICENSE")
        })
        .collect();
    let mut list = String::new();
    let mut digests = String::new();
    for (path, bytes) in kept {
        list += &format!("  '{path}',\n");
        digests += &format!("{path} {}\n", sha256_hex(bytes));
    }
    let version = &sha256_hex(digests.as_bytes())[..DIGITS];
    let worker = files.text(WORKER)?;
    let worker = replaced(&worker, "const VERSION = '';", &format!("const VERSION = '{version}';"))?;
    let worker = replaced(&worker, "const FILES = [];", &format!("const FILES = [\n{list}];"))?;
    files.put(WORKER, worker);
    Ok(())
}
