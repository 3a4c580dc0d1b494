//! A module as the body of a function: its imports become constants, its exports properties that look the value up.
//!
//! For modules as the page writes them: statements of import and export begin a line, and what is exported is declared there by name.
//! Anything else is refused, so that nothing is packed wrongly.

use super::specifiers;
use anyhow::bail;

/// A module.
struct Wrapped {
    /// Body of a function of `exports`, `need` (a module by name), `bring` (the same, later) and `thisModule` (the module's address).
    body: String,
    /// The modules that it needs at once.
    needs: Vec<String>,
}

/// What each module needs, by its path.
pub(super) type Needs = Vec<(String, Vec<String>)>;

/// Modules, by path and text, as the properties of an object of functions; adds to `needs` what each needs at once.
pub(super) fn functions(
    modules: impl IntoIterator<Item = (String, String)>,
    needs: &mut Needs,
) -> anyhow::Result<String> {
    let mut script = String::new();
    for (path, source) in modules {
        let module = wrapped(&path, &source)?;
        script += &format!("'{path}'(exports, need, bring, thisModule) {{\n{}}},\n", module.body);
        needs.push((path, module.needs));
    }
    Ok(script)
}

fn wrapped(path: &str, source: &str) -> anyhow::Result<Wrapped> {
    let (mut needs, mut head, mut body, mut exports) = (Vec::new(), String::new(), String::new(), Vec::new());
    let mut lines = source.lines();
    while let Some(line) = lines.next() {
        if !begins(line, "import") && !begins(line, "export") {
            body += line;
            body.push('\n');
            continue;
        }
        if let Some(rest) = line.strip_prefix("export ").filter(|rest| !rest.starts_with(['{', '*'])) {
            let (declaration, name, exported) = declared(path, rest)?;
            exports.push((exported, name));
            body += &declaration;
            body.push('\n');
            continue;
        }
        // An import or a list of exports: until its semicolon.
        let mut statement = line.to_owned();
        while !statement.ends_with(';') {
            let Some(more) = lines.next() else { bail!("{path}: '{line}' does not end in a semicolon") };
            statement.push(' ');
            statement += more.trim();
        }
        let (what, from) = match statement.trim_end_matches(';').rsplit_once(['\'', '"']).map(|(s, _)| s) {
            Some(quoted) => match quoted.rsplit_once(['\'', '"']) {
                Some((what, from)) => (what.trim(), Some(from)),
                None => bail!("{path}: cannot pack '{statement}'"),
            },
            None => (statement.trim_end_matches(';'), None),
        };
        if let Some(from) = from {
            needs.push(specifiers::resolved(path, from)?);
        }
        match (what.strip_prefix("import"), what.strip_prefix("export"), from) {
            (Some(what), _, Some(from)) => {
                head += &imported(path, what.trim().trim_end_matches("from").trim(), from)?
            }
            (_, Some(list), from) => {
                let list = list.trim().trim_end_matches("from").trim();
                for (inner, outer) in names(path, list)? {
                    let value = from.map_or(inner.clone(), |from| format!("need('{from}').{inner}"));
                    exports.push((outer, value));
                }
            }
            _ => bail!("{path}: cannot pack '{statement}'"),
        }
    }
    let getters: String =
        exports.iter().map(|(outer, value)| format!("get {outer}() {{ return {value}; }}, ")).collect();
    let defined =
        format!("Object.defineProperties(exports, Object.getOwnPropertyDescriptors({{ {getters}}}));\n");
    let body = called(&called(&body, "import.meta.url", "thisModule"), "import(", "bring(");
    Ok(Wrapped { body: defined + &head + &body, needs })
}

fn begins(line: &str, word: &str) -> bool {
    line.strip_prefix(word).is_some_and(|rest| rest.starts_with([' ', '{', '\'', '"', '*']))
}

/// `function f…`, `class C…`, `const c…`, `default …` after `export`: declaration, its name, and the name outside.
fn declared(path: &str, rest: &str) -> anyhow::Result<(String, String, String)> {
    if let Some(value) = rest.strip_prefix("default ") {
        return match name_of(value) {
            Some(name) => Ok((value.to_owned(), name, "default".to_owned())),
            None => Ok((
                format!("const defaultExport = {value}"),
                "defaultExport".to_owned(),
                "default".to_owned(),
            )),
        };
    }
    let name = name_of(rest);
    match name {
        Some(name) => Ok((rest.to_owned(), name.clone(), name)),
        None => bail!("{path}: cannot pack 'export {rest}'"),
    }
}

/// The name that a declaration gives; `None` for patterns, and for `let`, whose value the importers would not see change.
fn name_of(declaration: &str) -> Option<String> {
    let rest = ["async function* ", "async function ", "function* ", "function ", "class ", "const "]
        .into_iter()
        .find_map(|keyword| declaration.strip_prefix(keyword))?;
    let name: String = rest.chars().take_while(|c| is_name(*c)).collect();
    (!name.is_empty()).then_some(name)
}

const fn is_name(c: char) -> bool {
    c.is_ascii_alphanumeric() || c == '_' || c == '$'
}

/// `{ a, b as c }` as pairs.
fn names(path: &str, list: &str) -> anyhow::Result<Vec<(String, String)>> {
    let Some(inside) = list.strip_prefix('{').and_then(|l| l.strip_suffix('}')) else {
        bail!("{path}: cannot pack '{list}'");
    };
    let pair = |item: &str| {
        let (inner, outer) = item.split_once(" as ").unwrap_or((item, item));
        (inner.trim().to_owned(), outer.trim().to_owned())
    };
    Ok(inside.split(',').map(str::trim).filter(|item| !item.is_empty()).map(pair).collect())
}

/// What stands between `import` and `from`, as constants.
fn imported(path: &str, what: &str, from: &str) -> anyhow::Result<String> {
    let need = format!("need('{from}')");
    if what.is_empty() {
        return Ok(format!("{need};\n"));
    }
    if let Some(name) = what.strip_prefix("* as ") {
        return Ok(format!("const {name} = {need};\n"));
    }
    let (default, list) = match what.split_once('{') {
        Some((before, list)) => (before.trim().trim_end_matches(','), format!("{{{list}")),
        None => (what, "{}".to_owned()),
    };
    let mut parts: Vec<String> =
        names(path, &list)?.into_iter().map(|(inner, outer)| format!("{inner}: {outer}")).collect();
    if !default.is_empty() {
        parts.push(format!("default: {default}"));
    }
    Ok(format!("const {{ {} }} = {need};\n", parts.join(", ")))
}

/// Replaces a word where it is not the end of a longer name.
fn called(text: &str, old: &str, new: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(at) = rest.find(old) {
        let longer = rest[..at].chars().next_back().is_some_and(|c| is_name(c) || c == '.');
        out += &rest[..at];
        out += if longer { old } else { new };
        rest = &rest[at + old.len()..];
    }
    out + rest
}

/// Modules that need each other in a circle cannot be packed: constants would be taken before they are there.
pub(super) fn no_circle(needs: &Needs) -> anyhow::Result<()> {
    let mut done: Vec<&str> = Vec::new();
    loop {
        let ready: Vec<&str> = needs
            .iter()
            .filter(|(path, _)| !done.contains(&path.as_str()))
            .filter(|(_, needs)| needs.iter().all(|n| done.contains(&n.as_str())))
            .map(|(path, _)| path.as_str())
            .collect();
        if ready.is_empty() {
            break;
        }
        done.extend(ready);
    }
    let left: Vec<&str> =
        needs.iter().map(|(path, _)| path.as_str()).filter(|path| !done.contains(path)).collect();
    if !left.is_empty() {
        bail!("these modules need each other in a circle, or one that is not there: {}", left.join(", "));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn imports_and_exports_become_constants_and_properties() {
        let source = "import { a, b as c } from './x.js';\nimport d, {\n  e,\n} from '../y.js';\nimport * as f from './z.js';\n\
                      import './w.js';\nexport const one = import.meta.url;\nexport async function two() {\n  await import('./v.js');\n  \
                      reimport(1);\n}\nexport { one as uno, c };\nexport { g } from './x.js';\n";
        let wrapped = wrapped("p/m.js", source).unwrap();
        assert_eq!(wrapped.needs, ["p/x.js", "y.js", "p/z.js", "p/w.js", "p/x.js"]);
        for part in [
            "const { a: a, b: c } = need('./x.js');",
            "const { e: e, default: d } = need('../y.js');",
            "const f = need('./z.js');",
            "\nneed('./w.js');",
            "\nconst one = thisModule;",
            "await bring('./v.js')",
            "reimport(1)",
            "get uno() { return one; }",
            "get c() { return c; }",
            "get g() { return need('./x.js').g; }",
            "get two() { return two; }",
        ] {
            assert!(wrapped.body.contains(part), "{part} is not in\n{}", wrapped.body);
        }
    }

    #[test]
    fn what_cannot_be_packed_is_refused() {
        for source in ["export let a = 1;", "export const { a } = b;", "export * from './x.js';", "import a"]
        {
            assert!(wrapped("m.js", source).is_err(), "{source}");
        }
        let circle = vec![("a".to_owned(), vec!["b".to_owned()]), ("b".to_owned(), vec!["a".to_owned()])];
        assert!(no_circle(&circle).is_err());
    }
}
