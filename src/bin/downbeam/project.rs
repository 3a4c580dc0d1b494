//! Where the project's folder is: Cargo says so at run time; a binary started by hand remembers where it was built.

use anyhow::bail;
use std::path::PathBuf;

/// The folder that holds `needed` (a path inside it, such as `www`).
pub(crate) fn folder(needed: &str) -> anyhow::Result<PathBuf> {
    let folder = std::env::var_os("CARGO_MANIFEST_DIR")
        .map_or_else(|| PathBuf::from(env!("CARGO_MANIFEST_DIR")), PathBuf::from);
    if !folder.join(needed).exists() {
        bail!(
            "there is no '{needed}' in the project's folder {}: run 'cargo run --release' inside a checkout of the \
             project",
            folder.display()
        );
    }
    Ok(folder)
}
