//! Where lessons come from on the command line: a file, a folder, or a link that holds one.

use anyhow::Context;
use downbeam::lesson::file::Lesson;
use downbeam::lesson::link;
use std::fs;
use std::path::{Path, PathBuf};

/// Largest file that is looked into at all, bytes.
const MOST_BYTES: u64 = 1024 * 1024;

/// Whether an argument is a link and not a file.
pub(crate) fn is_link(argument: &str) -> bool {
    argument.contains(&format!("{}=", link::KEY)) && !Path::new(argument).exists()
}

/// The lesson files that an argument stands for: itself, or those of a folder (not its index, not the schema), by name.
pub(crate) fn files(argument: &Path) -> anyhow::Result<Vec<PathBuf>> {
    if !argument.is_dir() {
        return Ok(vec![argument.to_owned()]);
    }
    let cannot = || format!("cannot read {}", argument.display());
    let mut found = Vec::new();
    for entry in fs::read_dir(argument).with_context(cannot)? {
        let path = entry.with_context(cannot)?.path();
        let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
        if path.is_file()
            && name.ends_with(".json")
            && name != "index.json"
            && !name.ends_with(".schema.json")
        {
            found.push(path);
        }
    }
    found.sort();
    Ok(found)
}

/// A file's text.
pub(crate) fn text(path: &Path) -> anyhow::Result<String> {
    let cannot = || format!("cannot read {}", path.display());
    let size = fs::metadata(path).with_context(cannot)?.len();
    if size > MOST_BYTES {
        anyhow::bail!("{} has {size} bytes: a lesson has at most {MOST_BYTES}", path.display());
    }
    let bytes = fs::read(path).with_context(cannot)?;
    String::from_utf8(bytes).map_err(|_| anyhow::anyhow!("{} is not UTF-8 text", path.display()))
}

/// All lessons of an argument.
pub(crate) fn lessons(argument: &str) -> anyhow::Result<Vec<Lesson>> {
    if is_link(argument) {
        return Ok(vec![link::lesson(argument).context("cannot use the link")?]);
    }
    let files = files(Path::new(argument))?;
    if files.is_empty() {
        anyhow::bail!("there is no lesson in {argument}: allowed are files that end in .json");
    }
    let read = |path: &PathBuf| {
        let text = text(path)?;
        Lesson::from_json(&text).with_context(|| format!("cannot use {}", path.display()))
    };
    files.iter().map(read).collect()
}
