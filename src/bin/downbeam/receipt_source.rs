//! Where receipts come from on the command line: files with one receipt, NDJSON files with one a line, and folders of both.
//! What cannot be read is handed on as such and stops nothing.

use downbeam::class::receipt::MOST_BYTES;
use downbeam::class::receipt_text::{GLANCE_BYTES, Kind, is_lines, may_hold};
use std::fs::{self, File};
use std::io::{BufRead, BufReader, Read};
use std::path::{Path, PathBuf};

/// A receipt's text, or why there is none.
pub(crate) struct Found {
    pub(crate) source: String,
    pub(crate) line: Option<u64>,
    pub(crate) text: Result<String, String>,
}

/// Calls `take` with every receipt of an argument, in the order of the files' names; a folder with all below it.
pub(crate) fn each(argument: &Path, take: &mut dyn FnMut(Found)) {
    if argument.is_dir() {
        for file in below(argument, take) {
            each_of_file(&file, take);
        }
    } else {
        each_of_file(argument, take);
    }
}

/// The files below a folder that may hold receipts. Symbolic links are not followed.
fn below(folder: &Path, take: &mut dyn FnMut(Found)) -> Vec<PathBuf> {
    let mut files = Vec::new();
    let mut folders = vec![folder.to_owned()];
    while let Some(folder) = folders.pop() {
        let entries = match fs::read_dir(&folder) {
            Ok(entries) => entries,
            Err(error) => {
                take(failed(&folder, None, &error));
                continue;
            }
        };
        for entry in entries.flatten() {
            let path = entry.path();
            match entry.file_type() {
                Ok(kind) if kind.is_dir() => folders.push(path),
                Ok(kind) if kind.is_file() && is_taken(&path) => files.push(path),
                _ => {}
            }
        }
    }
    files.sort();
    files
}

/// Whether a file of a folder may hold receipts; one that cannot be opened is taken, so that it gets a row that says so.
fn is_taken(path: &Path) -> bool {
    let name = path.to_string_lossy();
    if Kind::of(&name) != Kind::Text {
        return may_hold(&name, &[]);
    }
    let mut beginning = Vec::new();
    let read = File::open(path).and_then(|f| f.take(GLANCE_BYTES as u64).read_to_end(&mut beginning));
    read.is_err() || may_hold(&name, &beginning)
}

fn failed(path: &Path, line: Option<u64>, error: &std::io::Error) -> Found {
    let source = path.display().to_string();
    Found { source, line, text: Err(format!("cannot be read: {error}")) }
}

fn each_of_file(path: &Path, take: &mut dyn FnMut(Found)) {
    let file = match File::open(path).and_then(|f| f.metadata().map(|m| (f, m))) {
        // A pipe or device would block for ever.
        Ok((file, about)) if about.is_file() => file,
        Ok(_) => {
            let source = path.display().to_string();
            return take(Found { source, line: None, text: Err("is no file".to_owned()) });
        }
        Err(error) => return take(failed(path, None, &error)),
    };
    let mut reader = BufReader::new(file);
    let source = || path.display().to_string();
    let lines = match has_lines(path) {
        Ok(lines) => lines,
        Err(error) => return take(failed(path, None, &error)),
    };
    if !lines {
        let mut bytes = Vec::new();
        return match reader.take(MOST_BYTES as u64 + 1).read_to_end(&mut bytes) {
            Ok(_) => take(Found { source: source(), line: None, text: as_text(bytes) }),
            Err(error) => take(failed(path, None, &error)),
        };
    }
    for number in 1.. {
        match next_line(&mut reader) {
            Ok(Some(bytes)) if bytes.iter().all(u8::is_ascii_whitespace) => {}
            Ok(Some(bytes)) => take(Found { source: source(), line: Some(number), text: as_text(bytes) }),
            Ok(None) => break,
            Err(error) => return take(failed(path, Some(number), &error)),
        }
    }
}

fn as_text(bytes: Vec<u8>) -> Result<String, String> {
    String::from_utf8(bytes).map_err(|_| "is not UTF-8 text".to_owned())
}

/// Whether a file holds a receipt a line.
fn has_lines(path: &Path) -> std::io::Result<bool> {
    let name = path.to_string_lossy();
    if Kind::of(&name) != Kind::Text {
        return Ok(is_lines(&name, &[]));
    }
    let mut reader = BufReader::new(File::open(path)?);
    while let Some(line) = next_line(&mut reader)? {
        if !line.iter().all(u8::is_ascii_whitespace) {
            return Ok(is_lines(&name, &line));
        }
    }
    Ok(false)
}

/// The next line, cut a byte past the longest receipt; `None` at the end.
fn next_line(reader: &mut impl BufRead) -> std::io::Result<Option<Vec<u8>>> {
    let mut line = Vec::new();
    if reader.by_ref().take(MOST_BYTES as u64 + 1).read_until(b'\n', &mut line)? == 0 {
        return Ok(None);
    }
    if line.last() != Some(&b'\n') && line.len() > MOST_BYTES {
        reader.skip_until(b'\n')?;
    }
    Ok(Some(line))
}
