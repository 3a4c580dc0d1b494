//! The rules of the source tree, read from the source itself.
//!
//! - A module uses only layers before it in `LAYERS`: no path `crate::<layer>` (or `super::…::<layer>`) points to a later one.
//! - Only `web` names the JavaScript bindings.
//! - On the page, where results go (`www/delivery`) and the shared pieces (`www/base`) know nothing of the other features.
//! - Only `bin` names files, sockets, processes, the environment or the clock: scores must replay to the same bits anywhere.

use std::fs;
use std::path::{Path, PathBuf};

/// First to last: a layer may use itself and those before it.
const LAYERS: [&str; 11] = [
    "geometry",
    "anatomy",
    "imaging",
    "view",
    "needle",
    "procedure",
    "score",
    "lesson",
    "class",
    "practice",
    "web",
];
/// Crates that only `web` may name.
const BINDINGS: [&str; 4] = ["wasm_bindgen", "web_sys", "js_sys", "serde_wasm_bindgen"];
/// Modules of `std` that only `bin` may name.
const OUTSIDE_WORLD: [&str; 5] = ["fs", "net", "process", "env", "time"];

#[test]
fn source_keeps_to_its_layers() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let files = rust_files(&root);
    for layer in &LAYERS {
        let seen = files.iter().any(|f| layer_of(f.strip_prefix(&root).unwrap()).as_deref() == Some(layer));
        assert!(seen, "no file of {layer} was read");
    }
    let wrong: Vec<String> = files
        .iter()
        .flat_map(|file| {
            let text = fs::read_to_string(file).unwrap();
            violations(file.strip_prefix(&root).unwrap(), &text)
        })
        .collect();
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

fn rust_files(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(rust_files(&path));
        } else if path.extension().is_some_and(|e| e == "rs") {
            found.push(path);
        }
    }
    found
}

/// `imaging` for `imaging.rs` and `imaging/outline.rs`; `lib` and `bin` are no layers but get their names.
fn layer_of(path: &Path) -> Option<String> {
    let first = path.components().next()?.as_os_str().to_str()?;
    Some(first.trim_end_matches(".rs").to_owned())
}

/// What a file (path below `src`) breaks, one sentence each.
fn violations(path: &Path, text: &str) -> Vec<String> {
    let layer = layer_of(path).unwrap_or_default();
    let rank = |name: &str| LAYERS.iter().position(|l| *l == name);
    let mut wrong = Vec::new();
    let words = words(text);
    if layer != "bin" && layer != "lib" && rank(&layer).is_none() {
        wrong.push(format!("{}: '{layer}' is in no layer", path.display()));
    }
    for used in paths(&words) {
        let (root, name) = (used[0].as_str(), used[1].as_str());
        let broken = match root {
            "crate" | "super" if name == "*" && root == "crate" => Some("the whole crate".to_owned()),
            "crate" | "super" => match (rank(&layer), rank(name)) {
                (Some(own), Some(other)) if other > own => Some(format!("the later layer {name}")),
                _ => None,
            },
            "std" | "core" if layer != "bin" && OUTSIDE_WORLD.contains(&name) => {
                Some(format!("std::{name}, which only bin may"))
            }
            _ => None,
        };
        wrong.extend(broken.map(|what| format!("{}: {layer} uses {what}", path.display())));
    }
    if layer != "web" {
        let named = BINDINGS.iter().filter(|b| words.iter().any(|w| w == *b));
        wrong.extend(named.map(|b| format!("{}: {layer} names {b}, which only web may", path.display())));
    }
    wrong
}

/// Pairs `[root, name]` of all paths that start at the crate, a parent module or the standard library, `use` trees opened.
fn paths(words: &[String]) -> Vec<[String; 2]> {
    let mut found = Vec::new();
    let mut i = 0;
    while i < words.len() {
        let root = words[i].as_str();
        let starts = ["crate", "super", "std", "core"].contains(&root) && (i == 0 || words[i - 1] != "::");
        i += 1;
        if !starts {
            continue;
        }
        // A chain of `super` counts as one.
        while words.get(i).is_some_and(|w| w == "::") && words.get(i + 1).is_some_and(|w| w == "super") {
            i += 2;
        }
        if words.get(i).is_none_or(|w| w != "::") {
            continue;
        }
        i += 1;
        if words.get(i).is_some_and(|w| w == "{") {
            let mut depth = 0;
            while let Some(word) = words.get(i) {
                match word.as_str() {
                    "{" => depth += 1,
                    "}" => depth -= 1,
                    name if depth == 1 && (words[i - 1] == "{" || words[i - 1] == ",") => {
                        found.push([root.to_owned(), name.to_owned()]);
                    }
                    _ => {}
                }
                i += 1;
                if depth == 0 {
                    break;
                }
            }
        } else if let Some(name) = words.get(i) {
            found.push([root.to_owned(), name.clone()]);
        }
    }
    found
}

/// Identifiers, `::` and single marks, without comments and the insides of string literals.
fn words(text: &str) -> Vec<String> {
    let chars: Vec<char> = text.chars().collect();
    let at = |i: usize| chars.get(i).copied().unwrap_or('\0');
    let mut words = Vec::new();
    let mut i = 0;
    while i < chars.len() {
        match (at(i), at(i + 1)) {
            ('/', '/') => i += chars[i..].iter().take_while(|c| **c != '\n').count(),
            ('/', '*') => {
                let mut depth = 0;
                while i < chars.len() {
                    match (at(i), at(i + 1)) {
                        ('/', '*') => (depth, i) = (depth + 1, i + 2),
                        ('*', '/') => (depth, i) = (depth - 1, i + 2),
                        _ => i += 1,
                    }
                    if depth == 0 {
                        break;
                    }
                }
            }
            ('r', '"' | '#') if raw_string_end(&chars, i).is_some() => {
                i = raw_string_end(&chars, i).unwrap_or(chars.len());
            }
            ('"', _) => {
                i += 1;
                while i < chars.len() && at(i) != '"' {
                    i += if at(i) == '\\' { 2 } else { 1 };
                }
                i += 1;
            }
            // A character literal, not a lifetime.
            ('\'', '\\') => {
                i += 3 + chars[(i + 3).min(chars.len())..].iter().take_while(|c| **c != '\'').count() + 1
            }
            ('\'', _) if at(i + 2) == '\'' => i += 3,
            (':', ':') => {
                words.push("::".to_owned());
                i += 2;
            }
            (c, _) if c.is_alphanumeric() || c == '_' => {
                let word: String =
                    chars[i..].iter().take_while(|c| c.is_alphanumeric() || **c == '_').collect();
                i += word.chars().count();
                words.push(word);
            }
            (c, _) => {
                if !c.is_whitespace() {
                    words.push(c.to_string());
                }
                i += 1;
            }
        }
    }
    words
}

/// Where the raw string that starts at `start` ends, if one starts there.
fn raw_string_end(chars: &[char], start: usize) -> Option<usize> {
    let hashes = chars[start + 1..].iter().take_while(|c| **c == '#').count();
    if chars.get(start + 1 + hashes) != Some(&'"') {
        return None;
    }
    let mut i = start + 2 + hashes;
    while i < chars.len() {
        let closes =
            chars[i] == '"' && chars[i + 1..].iter().take(hashes).filter(|c| **c == '#').count() == hashes;
        if closes {
            return Some(i + 1 + hashes);
        }
        i += 1;
    }
    None
}

/// The checker itself must be able to fail.
#[test]
fn upward_uses_are_found() {
    for (path, bad) in [
        ("geometry/mesh.rs", "use crate::imaging::projection::Projection;"),
        ("geometry.rs", "fn f() -> crate::view::Target { todo!() }"),
        ("anatomy/place.rs", "use crate::{geometry::sdf, view::{self, report}};"),
        ("anatomy/place.rs", "use crate::\n    web::Handle;"),
        ("procedure/state.rs", "use crate::score::remark::Remark;"),
        ("score/rubric.rs", "use crate::lesson::file::Lesson;"),
        ("lesson/marks.rs", "use crate::class::receipt::Receipt;"),
        ("geometry/sdf/drum.rs", "use super::super::super::anatomy::names;"),
        ("imaging/c_arm.rs", "use crate::*;"),
        ("view/report.rs", "use wasm_bindgen::prelude::*;"),
        ("lib.rs", "fn f(c: web_sys::Path2d) {}"),
        ("anatomy/patient.rs", "use std::{fmt, fs::File};"),
        ("view.rs", "let t = std::time::Instant::now();"),
        ("lib.rs", "std::process::exit(1)"),
        ("scores/par.rs", "fn f() {}"),
        ("geometry.rs", "const QUOTE: char = '\"'; use crate::web::x; const B: char = '\\'';"),
    ] {
        assert_eq!(violations(Path::new(path), bad).len(), 1, "{path}: {bad}");
    }
}

#[test]
fn what_is_allowed_is_left_alone() {
    for (path, good) in [
        (
            "view/report.rs",
            "use crate::{anatomy::names::Level, imaging::c_arm::CArm}; use super::tolerance::Tolerance;",
        ),
        (
            "geometry/mesh.rs",
            "//! See `crate::imaging`.\n/* use crate::web; /* nested */ std::fs */ fn f() {}",
        ),
        (
            "geometry/mesh.rs",
            r##"const S: &str = "crate::web \" std::fs"; const R: &str = r#"use crate::view;"#;"##,
        ),
        ("web/handle.rs", "use wasm_bindgen::prelude::*; use crate::view::report;"),
        ("bin/downbeam/serve.rs", "use std::net::TcpListener; use crate::build; use std::{fs, process};"),
        ("anatomy/names.rs", "use std::fmt; impl<'a> X<'a> { fn view(self) {} }"),
        ("lib.rs", "pub mod anatomy; #[cfg(target_arch = \"wasm32\")] mod web;"),
    ] {
        assert_eq!(violations(Path::new(path), good), Vec::<String>::new(), "{path}: {good}");
    }
}

/// Folders of the page and what their modules may import from.
const MAY_IMPORT: [(&str, &[&str]); 2] =
    [("delivery", &["delivery", "base", "words"]), ("base", &["base", "words"])];

#[test]
fn deliveries_know_no_other_feature() {
    let www = Path::new(env!("CARGO_MANIFEST_DIR")).join("www");
    let mut read = 0;
    for (folder, allowed) in MAY_IMPORT {
        for entry in fs::read_dir(www.join(folder)).unwrap() {
            let path = entry.unwrap().path();
            if path.extension().is_none_or(|e| e != "js") {
                continue;
            }
            let text = fs::read_to_string(&path).unwrap();
            // `from '../words/x.js'` and `import('../base/x.js')`: the folder after `../`, or the module's own.
            for from in text.split(['\'', '"']).filter(|t| t.ends_with(".js") && t.starts_with('.')) {
                let place = from.strip_prefix("../").and_then(|t| t.split('/').next()).unwrap_or(folder);
                assert!(allowed.contains(&place), "{} imports {from}", path.display());
                read += 1;
            }
        }
    }
    assert!(read > 40, "{read} imports were read");
}
