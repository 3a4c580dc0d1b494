//! Files that a command writes: never one that it reads, and another that is there already only with `--force`.

use crate::command::UsageError;
use anyhow::{Context, bail};
use std::fs;
use std::path::{Path, PathBuf};

/// Looks at all files that a command is to write, before it does anything: `outputs` are options and their files, `inputs` what the
/// command reads; of a folder among them every file that may be read from it counts.
///
/// # Errors
/// One sentence for the first that must not be written.
pub(crate) fn may_write(outputs: &[(&str, &Path)], inputs: &[PathBuf], force: bool) -> anyhow::Result<()> {
    for (i, &(option, path)) in outputs.iter().enumerate() {
        if path.as_os_str() == "-" {
            let sentence = format!("{option} wants a file's name, and '-' is none: give one, or /dev/stdout");
            return Err(UsageError(sentence).into());
        }
        if let Some((other, _)) = outputs[..i].iter().find(|(_, other)| same(other, path)) {
            let sentence = format!("{other} and {option} name the same file, {}", path.display());
            return Err(UsageError(sentence).into());
        }
        if path.is_dir() {
            bail!("{} is a folder: {option} writes a file", path.display());
        }
        if let Some(input) = inputs.iter().find(|input| reads(input, path)) {
            bail!(
                "{option} would write over {}, which is read as {}: give another name",
                path.display(),
                if input.is_dir() { format!("a file of {}", input.display()) } else { "input".to_owned() }
            );
        }
        // A pipe or device holds nothing that could be lost.
        if path.is_file() && !force {
            bail!("{} is there already: give another name, or --force to write over it", path.display());
        }
    }
    Ok(())
}

/// Writes a file into a folder that is there: a mistyped folder is an error and is not made.
pub(crate) fn write(path: &Path, bytes: &[u8]) -> anyhow::Result<()> {
    fs::write(path, bytes).with_context(|| format!("cannot write {}", path.display()))
}

/// Writes a file, and the folders above it.
pub(crate) fn write_below(path: &Path, bytes: &[u8]) -> anyhow::Result<()> {
    let cannot = || format!("cannot write {}", path.display());
    if let Some(parent) = path.parent().filter(|p| !p.as_os_str().is_empty()) {
        fs::create_dir_all(parent).with_context(cannot)?;
    }
    write(path, bytes)
}

/// Endings of what is read out of a folder.
const READ: [&str; 4] = ["json", "ndjson", "jsonl", "txt"];

/// Whether a command that reads `input` reads the file `path`.
fn reads(input: &Path, path: &Path) -> bool {
    if !input.is_dir() {
        return same(input, path);
    }
    let ending = path.extension().unwrap_or_default().to_string_lossy().to_ascii_lowercase();
    path.exists()
        && READ.contains(&&*ending)
        && matches!((input.canonicalize(), path.canonicalize()), (Ok(folder), Ok(file)) if file.starts_with(&folder))
}

/// Whether two paths are one file, through links too.
fn same(a: &Path, b: &Path) -> bool {
    if let (Ok(a), Ok(b)) = (whole(a), whole(b))
        && a == b
    {
        return true;
    }
    #[cfg(unix)]
    {
        use std::os::unix::fs::MetadataExt;
        if let (Ok(a), Ok(b)) = (fs::metadata(a), fs::metadata(b)) {
            return a.is_file() && a.dev() == b.dev() && a.ino() == b.ino();
        }
    }
    false
}

/// A path without links or detours; of a file that is not there yet, its folder's.
fn whole(path: &Path) -> std::io::Result<PathBuf> {
    path.canonicalize().or_else(|_| {
        let folder = path.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or(Path::new("."));
        Ok(folder.canonicalize()?.join(path.file_name().unwrap_or_default()))
    })
}
