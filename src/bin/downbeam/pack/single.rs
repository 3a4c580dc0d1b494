//! The whole page as one HTML file, which also runs from `file://`, where browsers load no modules and fetch nothing.
//!
//! Modules become functions of one classic script, called when first needed (`super::module`); the engine and the lessons are base64 in
//! it, and `fetch` answers with them. Script and style are allowed by their digests in the content security policy, and nothing else is.

use super::files::Files;
use super::head::{ENTRY, ENTRY_TAG, NEEDED, PAGE, delivered_by};
use super::{module, specifiers};
use crate::player_page;
use crate::replaced::replaced;
use anyhow::Context;
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use downbeam::lesson::file::Lesson;
use sha2::{Digest, Sha256};

const NEEDED_TAG: &str = "<script src=\"page/needed.js\" defer></script>";

/// The page with all lessons; with `lesson`, the page that opens this one.
pub(super) fn page(www: &Files, lesson: Option<&Lesson>) -> anyhow::Result<String> {
    let mut www = www.clone();
    www.put(PAGE, player_page::without_other_pages(&www.text(PAGE)?));
    let mut files = www.needed_by(PAGE)?;
    for (path, bytes) in www.iter().filter(|(path, _)| path.starts_with("lessons/")) {
        files.put(path, bytes);
    }
    let mut html = files.text(PAGE)?;
    if let Some(lesson) = lesson {
        files.put("lesson.json", lesson.to_json());
        html = delivered_by(&html, "page")?;
    }
    let style = style(&html, &files)?;
    let needed = format!("\n{}", files.text(NEEDED)?);
    files.remove(NEEDED);
    let script = script(&files)?;
    let policy = format!(
        "default-src 'none'; script-src 'sha256-{}' 'sha256-{}' 'wasm-unsafe-eval'; style-src 'sha256-{}'; img-src data: blob:; base-uri 'none'; \
         form-action 'none'",
        digest(&needed),
        digest(&script),
        digest(&style)
    );
    html = replaced(&html, policy_of(&html)?, &policy)?;
    html = replaced(&html, NEEDED_TAG, &format!("<script>{needed}</script>"))?;
    html = replaced(&html, ENTRY_TAG, "")?;
    html = without_links(&html);
    for image in ["href=\"mark.svg\"", "src=\"mark.svg\""] {
        let (attribute, _) = image.split_once('=').unwrap_or_default();
        let data = format!("{attribute}=\"{}\"", data_url("mark.svg", files.text("mark.svg")?.as_bytes()));
        html = replaced(&html, image, &data)?;
    }
    html = replaced(&html, "</head>", &format!("  <style>{style}</style>\n</head>"))?;
    // Last in the body: a module would wait for the document too.
    replaced(&html, "</body>", &format!("<script>{script}</script>\n</body>"))
}

/// The value of the page's content security policy.
fn policy_of(html: &str) -> anyhow::Result<&str> {
    let (_, rest) = html
        .split_once("\"Content-Security-Policy\" content=\"")
        .context("the page has no content security policy")?;
    Ok(rest.split('"').next().unwrap_or_default())
}

/// Without the links to what is inside now.
fn without_links(html: &str) -> String {
    let gone = ["rel=\"stylesheet\"", "rel=\"preload\"", "rel=\"modulepreload\""];
    html.lines()
        .filter(|line| !gone.iter().any(|mark| line.contains(mark)))
        .flat_map(|line| [line, "\n"])
        .collect()
}

/// All style sheets in the page's order, with their pictures.
fn style(html: &str, files: &Files) -> anyhow::Result<String> {
    let mut style = String::from("\n");
    for path in specifiers::named(PAGE, html).iter().filter(|name| name.ends_with(".css")) {
        let mut sheet = files.text(path)?;
        for name in specifiers::named(path, &sheet) {
            let target = specifiers::resolved(path, &name)?;
            sheet = sheet.replace(&name, &data_url(&target, files.text(&target)?.as_bytes()));
        }
        style += &sheet;
    }
    Ok(style)
}

/// Modules and data with what brings them together.
fn script(files: &Files) -> anyhow::Result<String> {
    let mut script = String::from("\n(() => {\n'use strict';\nconst files = {\n");
    for (path, bytes) in files.iter().filter(|(path, _)| path.ends_with(".wasm") || path.ends_with(".json")) {
        script += &format!("'{path}': ['{}', '{}'],\n", media_type(path), STANDARD.encode(bytes));
    }
    script += "};\nconst modules = {\n";
    let mut needs = Vec::new();
    let modules = files.iter().map(|(path, _)| path).filter(|path| path.ends_with(".js"));
    let modules: Vec<(String, String)> =
        modules.map(|path| Ok((path.to_owned(), files.text(path)?))).collect::<anyhow::Result<_>>()?;
    script += &module::functions(modules, &mut needs)?;
    module::no_circle(&needs)?;
    script += "};\n";
    script += RUNTIME;
    script += &format!("need('{ENTRY}');\n}})();\n");
    // Neither may end or hide the script's own element; both are the same to JavaScript in text.
    Ok(script.replace("</script", "<\\/script").replace("<!--", "<\\!--"))
}

/// Calls modules and answers requests for what is inside.
const RUNTIME: &str = r"
const base = new URL('.', document.baseURI).href;
const made = {};
const path = (from, name) => new URL(name.split(/[?#]/)[0], `https://inside.invalid/${from}`).pathname.slice(1);
function need(name) {
  if (!made[name]) {
    made[name] = {};
    const near = (other) => path(name, other);
    modules[name](made[name], (other) => need(near(other)), async (other) => need(near(other)), base + name);
  }
  return made[name];
}
const outside = globalThis.fetch?.bind(globalThis);
globalThis.fetch = async (what, options) => {
  const address = new URL(what instanceof Request ? what.url : what, document.baseURI).href.split(/[?#]/)[0];
  const name = address.startsWith(base) ? address.slice(base.length) : '';
  if (!Object.hasOwn(files, name)) return outside(what, options);
  const [type, code] = files[name];
  const bytes = Uint8Array.from(atob(code), (c) => c.charCodeAt(0));
  return new Response(bytes, { headers: { 'Content-Type': type, 'Content-Length': String(bytes.length) } });
};
";

fn media_type(path: &str) -> &'static str {
    match path.rsplit('.').next() {
        Some("wasm") => "application/wasm",
        Some("svg") => "image/svg+xml",
        _ => "application/json",
    }
}

fn data_url(path: &str, bytes: &[u8]) -> String {
    format!("data:{};base64,{}", media_type(path), STANDARD.encode(bytes))
}

/// As a content security policy names a script or style: SHA-256 in base64 (CSP level 3, 2.3.1).
fn digest(text: &str) -> String {
    STANDARD.encode(Sha256::digest(text.as_bytes()))
}
