//! The files of a package: path, with `/`, to bytes, in the order of the paths.

use super::specifiers;
use crate::out_file;
use anyhow::{Context, bail};
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// What is on the page only for its makers.
const WORKBENCH: [&str; 3] = ["bench.html", "page/bench.js", "style/bench.css"];

/// Files.
#[derive(Clone, Debug, Default)]
pub(super) struct Files(BTreeMap<String, Vec<u8>>);

impl Files {
    /// Everything in the page's folder, type declarations and what an editor left behind excepted.
    pub(super) fn of_www(www: &Path) -> anyhow::Result<Self> {
        let mut files = Self::default();
        files.take_in(www, "")?;
        for built in ["pkg/downbeam_bg.wasm", "pkg/downbeam_rest.wasm", "player.html"] {
            if !files.0.contains_key(built) {
                bail!("{} has not been built: leave out --no-build", www.join(built).display());
            }
        }
        Ok(files)
    }

    fn take_in(&mut self, folder: &Path, prefix: &str) -> anyhow::Result<()> {
        let cannot = || format!("cannot read {}", folder.display());
        for entry in fs::read_dir(folder).with_context(cannot)? {
            let path = entry.with_context(cannot)?.path();
            let Some(name) = path.file_name().and_then(|n| n.to_str()).filter(|n| !n.starts_with('.')) else {
                continue;
            };
            if path.is_dir() {
                self.take_in(&path, &format!("{prefix}{name}/"))?;
            } else if path.is_file() {
                let bytes = fs::read(&path).with_context(|| format!("cannot read {}", path.display()))?;
                self.0.insert(format!("{prefix}{name}"), bytes);
            }
        }
        Ok(())
    }

    /// The two licences, which go wherever the page goes.
    pub(super) fn licences(project: &Path) -> anyhow::Result<Self> {
        let mut files = Self::default();
        for name in ["LICENSE-APACHE", "LICENSE-MIT"] {
            let path = project.join(name);
            let bytes = fs::read(&path).with_context(|| format!("cannot read {}", path.display()))?;
            files.0.insert(name.to_owned(), bytes);
        }
        Ok(files)
    }

    /// What to read about the page, with its pictures.
    pub(super) fn add_documents(&mut self, project: &Path) -> anyhow::Result<()> {
        for name in ["README.md", "CHANGELOG.md", "docs/page.png", "docs/moving.webp", "docs/views.png"] {
            let path = project.join(name);
            let bytes = fs::read(&path).with_context(|| format!("cannot read {}", path.display()))?;
            self.0.insert(name.to_owned(), bytes);
        }
        Ok(())
    }

    /// Without the benchmark and type declarations.
    pub(super) fn without_workbench(mut self) -> Self {
        self.0.retain(|path, _| !WORKBENCH.contains(&path.as_str()) && !path.ends_with(".d.ts"));
        self
    }

    /// A file and all that it names, and what that names: by links and sources in HTML, by imports in modules, by `url()` in styles.
    pub(super) fn needed_by(&self, start: &str) -> anyhow::Result<Self> {
        self.needed_by_without(start, &[])
    }

    /// The same, without some files and what only they name.
    pub(super) fn needed_by_without(&self, start: &str, without: &[&str]) -> anyhow::Result<Self> {
        let mut needed = Self::default();
        let mut waiting = vec![(start.to_owned(), start.to_owned())];
        while let Some((path, from)) = waiting.pop() {
            if needed.0.contains_key(&path) || without.contains(&path.as_str()) {
                continue;
            }
            let Some(bytes) = self.0.get(&path) else { bail!("{from} names {path}, which is not there") };
            if let Ok(text) = std::str::from_utf8(bytes) {
                for name in specifiers::named(&path, text) {
                    waiting.push((specifiers::resolved(&path, &name)?, path.clone()));
                }
                for name in specifiers::mentioned(&path, text) {
                    let target = specifiers::resolved(&path, &name)?;
                    if self.0.contains_key(&target) {
                        waiting.push((target, path.clone()));
                    }
                }
            }
            needed.0.insert(path, bytes.clone());
        }
        Ok(needed)
    }

    /// A file's text.
    pub(super) fn text(&self, path: &str) -> anyhow::Result<String> {
        let bytes = self.0.get(path).with_context(|| format!("there is no {path} in www"))?;
        String::from_utf8(bytes.clone()).map_err(|_| anyhow::anyhow!("{path} is not UTF-8 text"))
    }

    pub(super) fn put(&mut self, path: &str, bytes: impl Into<Vec<u8>>) {
        self.0.insert(path.to_owned(), bytes.into());
    }

    pub(super) fn remove(&mut self, path: &str) {
        self.0.remove(path);
    }

    pub(super) fn add(&mut self, others: Self) {
        self.0.extend(others.0);
    }

    pub(super) fn iter(&self) -> impl Iterator<Item = (&str, &[u8])> {
        self.0.iter().map(|(path, bytes)| (path.as_str(), bytes.as_slice()))
    }

    /// Writes all of them below a folder.
    pub(super) fn write(&self, folder: &Path) -> anyhow::Result<()> {
        self.iter().try_for_each(|(path, bytes)| out_file::write_below(&folder.join(path), bytes))
    }

    pub(super) fn summary(&self) -> String {
        format!("{} files, {}", self.0.len(), size(self.0.values().map(Vec::len).sum()))
    }
}

/// A size for people.
pub(super) fn size(bytes: usize) -> String {
    format!("{} kB", bytes.div_ceil(1000))
}
