//! What a file of the page names: other files, relative to its own place.
//!
//! No parser: the page's own sources are all written in one way (quotes around a literal path, statements at the beginning of a line),
//! and a name that leads nowhere stops the packing.

use anyhow::bail;

/// The service worker: it names the files that it keeps, but needs none of them.
pub(super) const WORKER: &str = "service-worker.js";

/// Names of other files in a file, as they stand there. Addresses of elsewhere and fragments are left out.
pub(super) fn named(path: &str, text: &str) -> Vec<String> {
    let end = path.rsplit('.').next().unwrap_or_default();
    let found: Vec<&str> = match end {
        "html" => ["href=\"", "src=\""].into_iter().flat_map(|mark| after(text, mark, "\"")).collect(),
        "js" => in_module(text),
        "css" => after(text, "url(", ")").chain(after(text, "@import \"", "\"")).collect(),
        _ => Vec::new(),
    };
    found
        .into_iter()
        .map(|name| name.trim_matches(['"', '\'']))
        .filter(|name| !name.is_empty() && !name.starts_with('#') && !name.contains(':'))
        .map(str::to_owned)
        .collect()
}

/// Literal paths in `from '…'`, `import '…'`, `import('…')` and `new URL('…', import.meta.url)`.
fn in_module(text: &str) -> Vec<&str> {
    let marks = ["from '", "import '", "import('", "from \"", "import \""];
    let mut found: Vec<&str> = code_lines(text)
        .flat_map(|line| marks.into_iter().flat_map(move |mark| after(line, mark, &mark[mark.len() - 1..])))
        .filter(|name| is_near(name))
        .collect();
    for piece in after(text, "new URL('", ")") {
        if let Some((name, rest)) = piece.split_once('\'')
            && rest.contains("import.meta.url")
            && !name.ends_with(WORKER)
        {
            found.push(name);
        }
    }
    found
}

/// Paths of modules, engines and styles that stand in a module as texts, and may be brought in later by way of a name; or they may be something
/// else.
pub(super) fn mentioned(path: &str, text: &str) -> Vec<String> {
    if !path.ends_with(".js") {
        return Vec::new();
    }
    code_lines(text)
        .flat_map(|line| between(line, '\'').chain(between(line, '"')))
        .filter(|name| is_near(name) && [".js", ".wasm", ".css"].iter().any(|end| name.ends_with(end)))
        .filter(|name| !name.ends_with(WORKER))
        .map(str::to_owned)
        .collect()
}

fn code_lines(text: &str) -> impl Iterator<Item = &str> {
    text.lines().filter(|line| !line.trim_start().starts_with(['/', '*']))
}

fn is_near(name: &str) -> bool {
    name.starts_with("./") || name.starts_with("../")
}

/// The texts between one quote and the next.
fn between(line: &str, quote: char) -> impl Iterator<Item = &str> {
    let quotes = line.matches(quote).count();
    line.split(quote).skip(1).take(quotes.saturating_sub(1))
}

/// The texts between a mark and the next end.
fn after<'a>(text: &'a str, mark: &'static str, end: &'static str) -> impl Iterator<Item = &'a str> {
    text.split(mark).skip(1).filter_map(move |rest| Some(rest.split_once(end)?.0))
}

/// The path that a name stands for in the file at `from`: `resolved("a/b.js", "../c.js")` is `c.js`.
///
/// # Errors
/// When it leads out of the page's folder.
pub(super) fn resolved(from: &str, name: &str) -> anyhow::Result<String> {
    let name_only = name.split(['?', '#']).next().unwrap_or_default();
    let mut parts: Vec<&str> = from.split('/').collect();
    parts.pop();
    for part in name_only.split('/') {
        match part {
            "" | "." => {}
            ".." => {
                if parts.pop().is_none() {
                    bail!("{from} names {name}, which is outside of www");
                }
            }
            part => parts.push(part),
        }
    }
    Ok(parts.join("/"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_found_where_the_page_puts_them() {
        let html =
            r##"<a href="#x"></a><link href="a.css"><script src="m.js"></script><a href="https://x.org/">"##;
        assert_eq!(named("p.html", html), ["a.css", "m.js"]);
        let module = "import { a } from './a.js';\n// from './no.js'\nimport './b.js';\nawait import('../c.js');\n\
                      const u = new URL('d.wasm', import.meta.url);\nnew URL('lesson.json', document.baseURI);\nconst g = './e.js';\n";
        assert_eq!(named("m.js", module), ["./a.js", "./b.js", "../c.js", "d.wasm"]);
        assert!(mentioned("m.js", module).contains(&"./e.js".to_owned()));
        assert_eq!(
            named("s.css", "x { background: url(\"m.svg\") } y { mask: url(n.svg) }"),
            ["m.svg", "n.svg"]
        );
    }

    #[test]
    fn names_are_relative_to_their_file() {
        assert_eq!(resolved("a/b.js", "../c.js").unwrap(), "c.js");
        assert_eq!(resolved("b.js", "./x/c.js?retry=1").unwrap(), "x/c.js");
        assert!(resolved("b.js", "../c.js").is_err());
    }
}
