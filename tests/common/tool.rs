//! The host tool from outside, and folders for what it writes.

#![allow(dead_code, reason = "not every test uses all of it")]
#![allow(unreachable_pub, reason = "a module that several tests include")]

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// A run of it.
pub fn downbeam(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_downbeam")).args(arguments).output().unwrap()
}

/// Standard output of a run that must succeed.
pub fn printed(arguments: &[&str]) -> String {
    let output = downbeam(arguments);
    assert!(output.status.success(), "{arguments:?}: {}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout).unwrap()
}

/// An empty folder of its own for one test of a file.
pub fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(env!("CARGO_CRATE_NAME")).join(name);
    let _ = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).unwrap();
    folder
}

/// A file's path in a folder, as an argument.
pub fn path(folder: &Path, name: &str) -> String {
    folder.join(name).to_str().unwrap().to_owned()
}
