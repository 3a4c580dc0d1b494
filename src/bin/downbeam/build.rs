//! `build`: compiles the library to WebAssembly and writes it with its JavaScript glue to `www/pkg`.
//!
//! Cargo does the compiling (profile `wasm`), `wasm-bindgen-cli-support` the glue, so that there is no tool to install. The page's engine is
//! then cut in two (`wasm_parts`): `downbeam_bg.wasm` is enough for the first picture, `downbeam_rest.wasm` is added when it has come.
//! The target's standard library is added through rustup when it is missing.

use crate::command::{Command, print, unknown};
use crate::player_page;
use crate::project;
use crate::replaced::replaced;
use crate::texts;
use crate::wasm_parts;
use anyhow::{Context, bail};
use lexopt::Parser;
use serde_json::Value;
use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::{Command as Process, Stdio};
use wasm_bindgen_cli_support::Bindgen;

pub(crate) const COMMAND: Command = Command {
    name: "build",
    summary: "Build the WebAssembly and its glue into www/pkg",
    usage: "Usage: downbeam build\n\n\
            Compiles the library for wasm32-unknown-unknown (added through rustup when missing) and writes\n\
            downbeam_bg.wasm and downbeam_rest.wasm (picture and needle), lessons_bg.wasm (lessons and receipts),\n\
            practice_bg.wasm (rounds of questions), their glue and their type declarations to www/pkg, with the\n\
            sentences of texts/ as modules, and www/player.html, the page for frames, made of index.html.\n",
    run,
};

const TARGET: &str = "wasm32-unknown-unknown";

fn run(parser: &mut Parser) -> anyhow::Result<()> {
    if let Some(argument) = parser.next()? {
        return Err(unknown(&COMMAND, &argument).into());
    }
    let written = into_www(&project::folder("Cargo.toml")?)?;
    print(&format!("Built {}\n", written.display()))
}

/// A module of the page: the feature that chooses its handles, the profile that suits it, and the name of its files.
struct Module {
    feature: &'static str,
    profile: &'static str,
    name: &'static str,
    /// Whether cargo's progress is shown: one of those that run side by side is enough.
    shown: bool,
}

const MODULES: [Module; 3] = [
    Module { feature: "room", profile: "wasm", name: "downbeam", shown: true },
    Module { feature: "lessons", profile: "wasm-small", name: "lessons", shown: false },
    Module { feature: "practice", profile: "wasm-practice", name: "practice", shown: false },
];

/// The module whose engine is cut in two.
const PAGE: &str = "downbeam";

/// What no first picture needs: the needle and its attempt, exposures, pictures at rest, the graphics processor's and the drawings' data.
const LATER: [&str; 32] = [
    "teachingroom_act",
    "teachingroom_aimPoint",
    "teachingroom_attemptLog",
    "teachingroom_attemptTrace",
    "teachingroom_beginCase",
    "teachingroom_beginReplay",
    "teachingroom_beginStill",
    "teachingroom_doseDicom",
    "teachingroom_drawHeldOutlines",
    "teachingroom_expose",
    "teachingroom_filmInclusions",
    "teachingroom_filmMeshes",
    "teachingroom_filmSums",
    "teachingroom_filmTexture",
    "teachingroom_filmView",
    "teachingroom_filmWindow",
    "teachingroom_loadAttempt",
    "teachingroom_newAttempt",
    "teachingroom_partAt",
    "teachingroom_partsFrom",
    "teachingroom_partsShown",
    "teachingroom_procedure",
    "teachingroom_redo",
    "teachingroom_resumeLog",
    "teachingroom_score",
    "teachingroom_settle",
    "teachingroom_showHeld",
    "teachingroom_showNeedleAt",
    "teachingroom_showStill",
    "teachingroom_standAfter",
    "teachingroom_stepStill",
    "teachingroom_undo",
];

/// How the glue of wasm-bindgen ends, and what stands there instead: its `init` brings the first part (`initFirst`), `addRest` the other,
/// and the usual one both.
const GLUE_END: &str = "export { initSync, __wbg_init as default };\n";
const GLUE_OF_TWO_PARTS: &str = include_str!("build/two_parts.js");
const TYPES_END: &str = "export default function __wbg_init (module_or_path?: { module_or_path: InitInput | Promise<InitInput> } | InitInput | Promise<InitInput>): Promise<InitOutput>;\n";
const TYPES_OF_TWO_PARTS: &str = include_str!("build/two_parts.d.ts");

/// Vector arithmetic, in every browser since 2023, in loops only (elsewhere it cost size and no time); each lane rounds as a single number
/// does, so that scores keep their bits. And inlining as for small code: 24 kB gzip less before the first picture, loops as fast.
const RUSTFLAGS: [&str; 3] =
    ["-C target-feature=+simd128", "-C no-vectorize-slp", "-C llvm-args=--inline-threshold=20"];

/// Builds the project in `folder`; the path of the folder written.
pub(crate) fn into_www(folder: &Path) -> anyhow::Result<PathBuf> {
    add_target(folder)?;
    eprintln!("Building the WebAssembly; the first time takes about a minute.");
    let package = folder.join("www").join("pkg");
    // Side by side: each ends in one long link on one core. They have profiles, and so folders and locks, of their own.
    let compiled = std::thread::scope(|scope| {
        let running: Vec<_> = MODULES.iter().map(|module| scope.spawn(|| compile(folder, module))).collect();
        running
            .into_iter()
            .map(|one| one.join().unwrap_or_else(|_| bail!("the build of a module broke off")))
            .collect::<Vec<_>>()
    });
    for (module, raw) in MODULES.iter().zip(compiled) {
        Bindgen::new()
            .input_path(raw?)
            .out_name(module.name)
            .web(true)?
            .typescript(true)
            .remove_name_section(true)
            // The library leaves the path out unless told: a bare `init()` would then fail in the browser.
            .omit_default_module_path(false)
            .generate(&package)
            .with_context(|| format!("cannot write the glue to {}", package.display()))?;
        let glue = package.join(module.name).with_extension("js");
        rewrite(&glue, |text| Ok(without_doc_comments(text)))?;
        if module.name == PAGE {
            let whole = package.join(format!("{PAGE}_bg.wasm"));
            let parts = wasm_parts::cut(&read(&whole)?, &LATER)?;
            write(&whole, &parts.first)?;
            write(&package.join(format!("{PAGE}_rest.wasm")), &parts.rest)?;
            rewrite(&glue, |text| replaced(text, GLUE_END, GLUE_OF_TWO_PARTS))?;
            rewrite(&package.join(format!("{PAGE}.d.ts")), |text| {
                replaced(text, TYPES_END, TYPES_OF_TWO_PARTS)
            })?;
        }
    }
    std::fs::write(package.join("values.d.ts"), downbeam::web::declarations::declarations())
        .context("cannot write the declarations of the engine's values")?;
    texts::write(&folder.join("texts"), &package).context("the page's sentences (texts)")?;
    player_page::write(&folder.join("www"))?;
    Ok(package)
}

fn read(path: &Path) -> anyhow::Result<Vec<u8>> {
    std::fs::read(path).with_context(|| format!("cannot read {}", path.display()))
}

fn write(path: &Path, bytes: &[u8]) -> anyhow::Result<()> {
    std::fs::write(path, bytes).with_context(|| format!("cannot write {}", path.display()))
}

fn rewrite(path: &Path, change: impl FnOnce(&str) -> anyhow::Result<String>) -> anyhow::Result<()> {
    let text = String::from_utf8(read(path)?).with_context(|| format!("{} is no text", path.display()))?;
    write(path, change(&text)?.as_bytes())
}

fn tool(variable: &str, name: &str) -> OsString {
    std::env::var_os(variable).unwrap_or_else(|| name.into())
}

/// Adds the target's standard library when it is not there.
fn add_target(folder: &Path) -> anyhow::Result<()> {
    let asked = Process::new(tool("RUSTC", "rustc"))
        .args(["--print", "target-libdir", "--target", TARGET])
        .current_dir(folder)
        .output()
        .context("cannot run rustc")?;
    let library = String::from_utf8_lossy(&asked.stdout).trim().to_owned();
    if asked.status.success() && Path::new(&library).is_dir() {
        return Ok(());
    }
    eprintln!("Adding the Rust target {TARGET}.");
    let added = Process::new("rustup")
        .args(["target", "add", TARGET])
        .current_dir(folder)
        .stdout(Stdio::null())
        .status()
        .with_context(|| format!("the Rust target {TARGET} is missing and rustup cannot be run to add it"))?;
    if !added.success() {
        bail!("rustup could not add the Rust target {TARGET}: see its message above");
    }
    Ok(())
}

/// Compiles a module; the path of cargo's wasm file.
fn compile(folder: &Path, module: &Module) -> anyhow::Result<PathBuf> {
    let cargo = Process::new(tool("CARGO", "cargo"))
        .args([
            "build",
            "--profile",
            module.profile,
            "--lib",
            "--no-default-features",
            "--features",
            module.feature,
            "--target",
            TARGET,
            "--locked",
        ])
        .args(["--message-format", "json-render-diagnostics"])
        .args((!module.shown).then_some("--quiet"))
        .env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS", RUSTFLAGS.join(" "))
        .current_dir(folder)
        .stderr(Stdio::inherit())
        .output()
        .context("cannot run cargo")?;
    if !cargo.status.success() {
        bail!("the WebAssembly did not build: see cargo's message above");
    }
    wasm_in(&String::from_utf8_lossy(&cargo.stdout)).context("cargo built no .wasm file")
}

/// The glue without its doc comments, a third of it: the type declarations beside it have them too, and no browser reads those.
fn without_doc_comments(glue: &str) -> String {
    let mut inside = false;
    let mut lean = String::with_capacity(glue.len());
    for line in glue.split_inclusive('\n') {
        let words = line.trim();
        inside |= words.starts_with("/**");
        if !inside {
            lean.push_str(line);
        }
        inside &= !words.ends_with("*/");
    }
    lean
}

/// The wasm file that cargo's messages (a JSON object a line) name last.
fn wasm_in(messages: &str) -> Option<PathBuf> {
    messages
        .lines()
        .filter_map(|line| serde_json::from_str::<Value>(line).ok())
        .filter(|message| message["reason"] == "compiler-artifact")
        .filter_map(|message| {
            let names = message["filenames"].as_array()?;
            names.iter().filter_map(Value::as_str).find(|name| name.ends_with(".wasm")).map(PathBuf::from)
        })
        .next_back()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn doc_comments_leave_the_glue_and_nothing_else_does() {
        let glue = "/* @ts-self-types=\"./a.d.ts\" */\n/** One. */\nclass A {\n    /**\n     * Two.\n     */\n    b() {}\n}\n";
        assert_eq!(
            without_doc_comments(glue),
            "/* @ts-self-types=\"./a.d.ts\" */\nclass A {\n    b() {}\n}\n"
        );
    }

    #[test]
    fn the_last_wasm_of_cargos_messages_is_taken() {
        let messages = r#"{"reason":"compiler-artifact","filenames":["/a/libglam.rlib"]}
not JSON
{"reason":"compiler-artifact","filenames":["/a/libdownbeam.rlib","/a/downbeam.wasm"]}
{"reason":"build-finished","success":true}"#;
        assert_eq!(wasm_in(messages), Some(PathBuf::from("/a/downbeam.wasm")));
        assert_eq!(wasm_in("{}"), None);
    }
}
