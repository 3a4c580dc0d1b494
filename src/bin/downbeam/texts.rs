//! The page's sentences: Fluent files (`texts/LANGUAGE/PART.ftl`) made into modules (`www/pkg/texts/LANGUAGE/PART.js`) when the page is
//! built, so that the browser fetches no parser and waits for no file.
//!
//! A module exports one table of message names to a text, or to a function of a formatter (`www/words/sentences.js`) and the message's values:
//!
//! ```text
//! tour-count = { $n } of { $all }        'tour-count': (f, $) => `${f.n($.n)} of ${f.n($.all)}`,
//! ```
//!
//! Syntax: Project Fluent's, read by its own parser. Taken are texts, literals, values, `NUMBER()` and selectors on a value; a message
//! that needs anything else, or that does not parse, stops the build with its place. Attributes are messages named `message.attribute`.
//!
//! English is complete; another language may lack messages, and the page then says them in English. `downbeam texts` lists them.

use crate::command::{Command, print, unknown};
use crate::project;
use anyhow::{Context, bail};
use fluent_syntax::ast::{
    CallArguments, Entry, Expression, InlineExpression, Pattern, PatternElement, VariantKey,
};
use fluent_syntax::parser::parse;
use fluent_syntax::unicode::unescape_unicode_to_string;
use lexopt::{Arg, Parser};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

pub(crate) const COMMAND: Command = Command {
    name: "texts",
    summary: "Which sentences of the page each language lacks",
    usage: "Usage: downbeam texts [--write]\n\n\
            Reads texts/LANGUAGE/PART.ftl and prints, for each language, how many messages it has and which it lacks; the\n\
            page says those in English. A file that cannot be read as Fluent, or that has a message or a value which English\n\
            has not, is an error.\n\n\
            --write  Also write them as modules to www/pkg/texts, as build does\n",
    run,
};

fn run(parser: &mut Parser) -> anyhow::Result<()> {
    let mut writing = false;
    while let Some(argument) = parser.next()? {
        match argument {
            Arg::Long("write") => writing = true,
            other => return Err(unknown(&COMMAND, &other).into()),
        }
    }
    let folder = project::folder("texts/en/view.ftl")?;
    if writing {
        write(&folder.join("texts"), &folder.join("www").join("pkg"))?;
    }
    let all = languages(&folder.join("texts"))?;
    refuse_unknown(&all)?;
    let complete = &all[COMPLETE];
    for (tag, language) in &all {
        let lacks = missing(complete, language);
        let has = language.values().map(BTreeMap::len).sum::<usize>();
        print(&format!("{tag}: {has} messages, {} missing\n", lacks.len()))?;
        for line in lacks {
            print(&format!("  {line}\n"))?;
        }
    }
    Ok(())
}

/// The language that the others fall back to.
const COMPLETE: &str = "en";
/// Parts that a page of their own fetches, and no other.
const APART: [&str; 1] = ["practice"];

/// A message as JavaScript, and what it is said of.
#[derive(Debug, PartialEq, Eq)]
struct Message {
    script: String,
    values: BTreeSet<String>,
}

/// The messages of a part, by name.
type Part = BTreeMap<String, Message>;

/// The parts of a language, by name.
type Language = BTreeMap<String, Part>;

/// Every language below `folder`, by its tag.
///
/// # Errors
/// A file that cannot be read or made into a module.
fn languages(folder: &Path) -> anyhow::Result<BTreeMap<String, Language>> {
    let mut all = BTreeMap::new();
    for (tag, path) in entries(folder)? {
        let mut language = Language::new();
        for (file, path) in entries(&path)? {
            let Some(part) = file.strip_suffix(".ftl") else { continue };
            let source =
                fs::read_to_string(&path).with_context(|| format!("cannot read {}", path.display()))?;
            let messages = messages(&source).with_context(|| path.display().to_string())?;
            language.insert(part.to_owned(), messages);
        }
        all.insert(tag, language);
    }
    Ok(all)
}

/// Names and paths in a folder, in the order of the names.
fn entries(folder: &Path) -> anyhow::Result<BTreeMap<String, std::path::PathBuf>> {
    let cannot = || format!("cannot read {}", folder.display());
    fs::read_dir(folder)
        .with_context(cannot)?
        .map(|entry| {
            let entry = entry.with_context(cannot)?;
            Ok((entry.file_name().to_string_lossy().into_owned(), entry.path()))
        })
        .collect()
}

/// Writes the modules of all languages in `texts` below `package`.
pub(crate) fn write(texts: &Path, package: &Path) -> anyhow::Result<()> {
    let all = languages(texts)?;
    refuse_unknown(&all)?;
    for (tag, language) in &all {
        let folder = package.join("texts").join(tag);
        fs::create_dir_all(&folder).with_context(|| format!("cannot write to {}", folder.display()))?;
        for (part, messages) in language {
            put(&folder.join(format!("{part}.js")), &module(part, messages))?;
        }
        // A language other than the complete one comes whole: the page needs no more than one request to know that it is there.
        if tag != COMPLETE {
            let parts = language.keys().filter(|part| !APART.contains(&part.as_str()));
            let lines: String =
                parts.map(|part| format!("export {{ {part} }} from './{part}.js';\n")).collect();
            put(&folder.join("all.js"), &lines)?;
        }
    }
    Ok(())
}

fn put(path: &Path, text: &str) -> anyhow::Result<()> {
    fs::write(path, text).with_context(|| format!("cannot write {}", path.display()))
}

fn module(part: &str, messages: &Part) -> String {
    let lines: String =
        messages.iter().map(|(name, message)| format!("  '{name}': {},\n", message.script)).collect();
    format!("export const {part} = {{\n{lines}}};\n")
}

fn refuse_unknown(all: &BTreeMap<String, Language>) -> anyhow::Result<()> {
    let wrong = against_complete(all);
    if !wrong.is_empty() {
        bail!("{}", wrong.join("; "));
    }
    Ok(())
}

/// What stands in another language and cannot be meant: messages and values that the complete one does not have.
fn against_complete(all: &BTreeMap<String, Language>) -> Vec<String> {
    let Some(complete) = all.get(COMPLETE) else { return vec![format!("there is no {COMPLETE}")] };
    let mut wrong = Vec::new();
    for (tag, language) in all {
        for (part, messages) in language {
            for (name, message) in messages {
                match complete.get(part).and_then(|p| p.get(name)) {
                    None => wrong
                        .push(format!("{tag}/{part}.ftl has {name}, which {COMPLETE}/{part}.ftl has not")),
                    Some(original) => {
                        wrong.extend(message.values.difference(&original.values).map(|value| {
                            format!(
                                "{tag}/{part}.ftl: {name} uses ${value}, which {COMPLETE}/{part}.ftl does not"
                            )
                        }))
                    }
                }
            }
        }
    }
    wrong
}

/// The messages that a language lacks, as `part.ftl: message`.
fn missing(complete: &Language, language: &Language) -> Vec<String> {
    let has = |part: &str, name: &str| language.get(part).is_some_and(|p| p.contains_key(name));
    complete
        .iter()
        .flat_map(|(part, messages)| messages.keys().map(move |name| (part, name)))
        .filter(|(part, name)| !has(part, name))
        .map(|(part, name)| format!("{part}.ftl: {name}"))
        .collect()
}

/// The messages of a Fluent file.
fn messages(source: &str) -> anyhow::Result<Part> {
    let resource = match parse(source) {
        Ok(resource) => resource,
        Err((_, errors)) => {
            let Some(first) = errors.first() else { bail!("it does not parse") };
            let line = source.get(..first.pos.start).unwrap_or_default().matches('\n').count() + 1;
            bail!("line {line}: {first}");
        }
    };
    let mut part = Part::new();
    for entry in &resource.body {
        let message = match entry {
            Entry::Message(message) => message,
            Entry::Comment(_) | Entry::GroupComment(_) | Entry::ResourceComment(_) => continue,
            Entry::Term(term) => bail!("-{}: terms are not taken here", term.id.name),
            Entry::Junk { content } => bail!("cannot read '{}'", content.lines().next().unwrap_or_default()),
        };
        let own = message.value.iter().map(|value| (message.id.name.to_owned(), value));
        let attributes =
            message.attributes.iter().map(|a| (format!("{}.{}", message.id.name, a.id.name), &a.value));
        for (name, pattern) in own.chain(attributes) {
            let mut values = BTreeSet::new();
            let text = template(pattern, &mut values).with_context(|| name.clone())?;
            let script = if values.is_empty() { text } else { format!("(f, $) => {text}") };
            if part.insert(name.clone(), Message { script, values }).is_some() {
                bail!("{name} is there twice");
            }
        }
    }
    Ok(part)
}

/// A pattern as a template literal.
fn template(pattern: &Pattern<&str>, values: &mut BTreeSet<String>) -> anyhow::Result<String> {
    let mut text = String::from("`");
    for element in &pattern.elements {
        text += &match element {
            PatternElement::TextElement { value } => escaped(value),
            PatternElement::Placeable { expression } => placed(expression, values)?,
        };
    }
    Ok(text + "`")
}

/// Text inside a template literal.
fn escaped(text: &str) -> String {
    text.replace('\\', "\\\\").replace('`', "\\`").replace('$', "\\$")
}

fn placed(expression: &Expression<&str>, values: &mut BTreeSet<String>) -> anyhow::Result<String> {
    let (selector, variants) = match expression {
        Expression::Inline(InlineExpression::StringLiteral { value }) => {
            return Ok(escaped(&unescape_unicode_to_string(value)));
        }
        Expression::Inline(InlineExpression::Placeable { expression }) => return placed(expression, values),
        Expression::Inline(inline) => return Ok(format!("${{{}}}", formatted(inline, values)?)),
        Expression::Select { selector, variants } => (selector, variants),
    };
    let InlineExpression::VariableReference { id } = selector else { bail!("a selector must be a value") };
    values.insert(id.name.to_owned());
    let mut fallback = "";
    let mut arms = String::new();
    for variant in variants {
        let (VariantKey::Identifier { name: key } | VariantKey::NumberLiteral { value: key }) = variant.key;
        if variant.default {
            fallback = key;
        }
        arms += &format!("'{key}': () => {}, ", template(&variant.value, values)?);
    }
    Ok(format!("${{f.pick($.{}, {{ {arms}}}, '{fallback}')}}", id.name))
}

/// A value as the formatter shows it.
fn formatted(inline: &InlineExpression<&str>, values: &mut BTreeSet<String>) -> anyhow::Result<String> {
    match inline {
        InlineExpression::VariableReference { id } => {
            values.insert(id.name.to_owned());
            Ok(format!("f.n($.{})", id.name))
        }
        InlineExpression::FunctionReference { id, arguments } if id.name == "NUMBER" => {
            number(arguments, values)
        }
        _ => bail!("only values, literals, selectors and NUMBER() are taken here"),
    }
}

/// `NUMBER($value, option: 1)`.
fn number(arguments: &CallArguments<&str>, values: &mut BTreeSet<String>) -> anyhow::Result<String> {
    let [InlineExpression::VariableReference { id }] = arguments.positional.as_slice() else {
        bail!("NUMBER() takes one value");
    };
    values.insert(id.name.to_owned());
    let mut options = String::new();
    for option in &arguments.named {
        let value = match &option.value {
            InlineExpression::NumberLiteral { value } => (*value).to_owned(),
            InlineExpression::StringLiteral { value } => format!("'{value}'"),
            _ => bail!("{} of NUMBER() wants a literal", option.name.name),
        };
        options += &format!("{}: {value}, ", option.name.name);
    }
    Ok(format!("f.n($.{}, {{ {options}}})", id.name))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn script(source: &str) -> String {
        messages(source).unwrap().into_values().next().unwrap().script
    }

    #[test]
    fn messages_become_texts_and_functions() {
        assert_eq!(script("a = It’s `so` \\ ${\"{\"}5\n"), r"`It’s \`so\` \\ \${5`");
        assert_eq!(
            script("a = { $n } of { NUMBER($all, minimumFractionDigits: 1) }\n"),
            "(f, $) => `${f.n($.n)} of ${f.n($.all, { minimumFractionDigits: 1, })}`"
        );
        assert_eq!(
            script("a = { $n ->\n    [one] { $n } check\n   *[other] { $n } checks\n  } used\n"),
            "(f, $) => `${f.pick($.n, { 'one': () => `${f.n($.n)} check`, 'other': () => `${f.n($.n)} checks`, }, 'other')} used`"
        );
        let part = messages("stop = One\n    .text = Two\n").unwrap();
        assert_eq!(part.keys().collect::<Vec<_>>(), ["stop", "stop.text"]);
    }

    #[test]
    fn what_is_not_taken_is_refused_with_its_place() {
        for (source, said) in [
            ("a = { b }\n", "a: only values"),
            ("-t = Term\n", "-t: terms"),
            ("a = { DATETIME($d) }\n", "a: only values"),
            ("a = fine\nb = { $n\n", "line "),
            ("a = 1\na = 2\n", "a is there twice"),
        ] {
            let error = format!("{:#}", messages(source).unwrap_err());
            assert!(error.contains(said), "{source:?} gave {error}");
        }
    }

    #[test]
    fn what_a_language_adds_and_what_it_lacks_is_told() {
        let language = |source: &str| Language::from([("view".to_owned(), messages(source).unwrap())]);
        let all = BTreeMap::from([
            ("de".to_owned(), language("a = { $m }\nc = C\n")),
            ("en".to_owned(), language("a = { $n }\nb = B\n")),
        ]);
        assert_eq!(
            against_complete(&all),
            [
                "de/view.ftl: a uses $m, which en/view.ftl does not",
                "de/view.ftl has c, which en/view.ftl has not"
            ]
        );
        assert_eq!(missing(&all["en"], &all["de"]), ["view.ftl: b"]);
    }
}
