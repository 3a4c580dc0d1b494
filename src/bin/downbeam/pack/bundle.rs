//! The page in few files: what its first picture needs as one script and one style sheet, and what comes after it as another script.
//!
//! A browser that fetches sixty small modules waits for each of them and packs each by itself. Modules become functions, called when first
//! needed (`super::module`), so that each is made once whichever script brings it. The modules themselves stay where another page of
//! the site, or the element, needs them.

use super::files::Files;
use super::head::{ENTRY, ENTRY_TAG, NEEDED, PAGE};
use super::{module, specifiers};
use crate::replaced::replaced;
use anyhow::{Context, bail};
use std::collections::BTreeSet;

const FIRST: &str = "first.js";
const LATER: &str = "later.js";
const STYLE: &str = "style/first.css";
/// English is in the scripts; another language is fetched by those who speak it.
const TEXTS: [&str; 2] = ["pkg/texts/", "pkg/texts/en/"];

/// Bundles the page of all `pages` (they differ in their HTML only), and takes out what nothing else in `files` needs.
pub(super) fn bundled(files: &mut Files, pages: &[&str]) -> anyhow::Result<()> {
    let page = *pages.first().context("no page to bundle")?;
    let html = files.text(page)?;
    let first: BTreeSet<String> = specifiers::named(page, &html)
        .into_iter()
        .filter(|name| name.ends_with(".js") && name != NEEDED)
        .collect();
    // A page that this one links to has modules of its own.
    let linked: Vec<&str> =
        files.iter().map(|(path, _)| path).filter(|path| path.ends_with(".html") && *path != page).collect();
    let reached = files.needed_by_without(page, &linked)?;
    let later: BTreeSet<String> = reached
        .iter()
        .map(|(path, _)| path)
        .filter(|path| path.ends_with(".js") && *path != NEEDED && !first.contains(*path))
        .filter(|path| !path.starts_with(TEXTS[0]) || path.starts_with(TEXTS[1]))
        .map(str::to_owned)
        .collect();
    let sheets = sheets(&html);

    let mut needs = Vec::new();
    let functions = |paths: &BTreeSet<String>, needs: &mut module::Needs| -> anyhow::Result<String> {
        let lean = |path: &String| Ok((path.clone(), lean(&files.text(path)?)));
        module::functions(paths.iter().map(lean).collect::<anyhow::Result<Vec<_>>>()?, needs)
    };
    let first_script = functions(&first, &mut needs)?;
    for (path, wanted) in &needs {
        if let Some(missing) = wanted.iter().find(|name| !first.contains(*name)) {
            bail!(
                "{path} is needed for the first picture and needs {missing}, which has no modulepreload in {page}"
            );
        }
    }
    let later_script = functions(&later, &mut needs)?;
    module::no_circle(&needs)?;
    let list: String = later.iter().map(|path| format!("  '{path}',\n")).collect();
    let script = RUNTIME.replace("/* later */", &list);
    let mut style = String::new();
    for sheet in &sheets {
        if !sheet.starts_with("style/") {
            bail!("{page} has the style sheet {sheet}, which is not in style/");
        }
        style += &files.text(sheet)?;
    }

    for page in pages {
        let html = in_few_files(&files.text(page)?)?;
        files.put(page, html);
    }
    files.put(FIRST, format!("{script}add({{\n{first_script}}});\nneed('{ENTRY}');\n"));
    files.put(LATER, format!("import {{ add }} from './{FIRST}';\n\nadd({{\n{later_script}}});\n"));
    files.put(STYLE, style);
    let others = needed_by_others(files, pages)?;
    for path in first.iter().chain(&later).chain(&sheets).filter(|path| !others.contains(*path)) {
        files.remove(path);
    }
    Ok(())
}

/// What other pages of the site and those who use the element need.
fn needed_by_others(files: &Files, pages: &[&str]) -> anyhow::Result<BTreeSet<String>> {
    let starts = files
        .iter()
        .map(|(path, _)| path)
        .filter(|path| (path.ends_with(".html") && !pages.contains(path)) || path.starts_with("element/"));
    let mut needed = BTreeSet::new();
    for start in starts {
        needed.extend(files.needed_by_without(start, pages)?.iter().map(|(path, _)| path.to_owned()));
    }
    Ok(needed)
}

/// The style sheets that are there from the beginning, in their order.
fn sheets(html: &str) -> Vec<String> {
    html.lines()
        .filter_map(|line| line.trim().strip_prefix("<link rel=\"stylesheet\" href=\"")?.split('"').next())
        .map(str::to_owned)
        .collect()
}

/// The page's HTML with one script and one style sheet in the places of the first of them.
fn in_few_files(html: &str) -> anyhow::Result<String> {
    let mut out = String::with_capacity(html.len());
    let mut styled = false;
    for line in html.split_inclusive('\n') {
        if line.contains("<link rel=\"modulepreload\"") {
            continue;
        }
        if line.contains("<link rel=\"stylesheet\" href=\"") {
            if !styled {
                out += &format!("  <link rel=\"stylesheet\" href=\"{STYLE}\">\n");
            }
            styled = true;
            continue;
        }
        out += line;
    }
    replaced(&out, ENTRY_TAG, &format!("<script type=\"module\" src=\"{FIRST}\"></script>"))
        .with_context(|| format!("{PAGE} does not begin with {ENTRY}"))
}

/// A module without its comments, which are a line or lines of their own or types, and without indentation except in texts of several
/// lines. (In such a text a line that looks like a comment would go, too; only the programs for the graphics processor have any, where
/// they are comments as well.)
fn lean(source: &str) -> String {
    let mut inside = false;
    let mut in_text = false;
    let mut lean = String::with_capacity(source.len());
    for line in source.split_inclusive('\n') {
        let words = line.trim();
        inside |= words.starts_with("/**");
        if !inside && !words.starts_with("//") && !words.is_empty() {
            lean += &without_types(if in_text { line } else { line.trim_start() });
            in_text ^= line.matches('`').count() % 2 == 1;
        }
        inside &= !words.ends_with("*/");
    }
    lean
}

/// A line of code without the types in it, such as `/** @type {Element} */ `, which no browser reads.
fn without_types(line: &str) -> String {
    let mut rest = line;
    let mut out = String::with_capacity(line.len());
    while let Some((before, after)) = rest.split_once("/** @") {
        let Some((_, code)) = after.split_once("*/") else { break };
        out += before;
        rest = code.strip_prefix(' ').unwrap_or(code);
    }
    out + rest
}

/// Calls modules when they are first needed; of what comes after the first picture the script is fetched first.
const RUNTIME: &str = r"const base = new URL('.', import.meta.url).href;
const modules = {};
const made = {};
const LATER = new Set([
/* later */]);
const inside = (from, name) => new URL(name, base + from).href.slice(base.length).split(/[?#]/)[0];
export const add = (more) => Object.assign(modules, more);
function need(name) {
  if (made[name]) return made[name];
  const exports = {};
  modules[name](exports, (other) => need(inside(name, other)), (other) => bring(name, other), base + name);
  return (made[name] = exports);
}
async function bring(from, name) {
  const path = inside(from, name);
  const address = new URL(name, base + from);
  if (!modules[path] && !LATER.has(path)) return import(address.href);
  if (!modules[path]) await import(`${base}later.js${address.search}`);
  return need(path);
}
";

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn comments_leave_a_module_and_nothing_else_does() {
        let source = "// One.\nimport './a.js';\n\n/** Two. */\nexport const b = 'http://x'; // three\n/**\n * Four.\n */\nb();\n";
        assert_eq!(lean(source), "import './a.js';\nexport const b = 'http://x'; // three\nb();\n");
        let typed = "const a = /** @type {[string, number][]} */ (b).map((/** @type {string} */ c) => c);\n";
        assert_eq!(lean(typed), "const a = (b).map((c) => c);\n");
        let text = "  if (a) {\n    b = `one\n  two`;\n  }\n";
        assert_eq!(lean(text), "if (a) {\nb = `one\n  two`;\n}\n");
    }

    #[test]
    fn a_page_has_one_script_and_one_style_sheet() {
        let html = "<head>\n  <link rel=\"stylesheet\" href=\"style/a.css\">\n  <link rel=\"stylesheet\" href=\"style/b.css\">\n  \
                    <link rel=\"stylesheet\" data-href=\"style/c.css\">\n  <script type=\"module\" src=\"page/begin.js\"></script>\n  \
                    <link rel=\"modulepreload\" href=\"x.js\">\n</head>\n";
        assert_eq!(sheets(html), ["style/a.css", "style/b.css"]);
        assert_eq!(
            in_few_files(html).unwrap(),
            "<head>\n  <link rel=\"stylesheet\" href=\"style/first.css\">\n  <link rel=\"stylesheet\" data-href=\"style/c.css\">\n  \
             <script type=\"module\" src=\"first.js\"></script>\n</head>\n"
        );
    }
}
