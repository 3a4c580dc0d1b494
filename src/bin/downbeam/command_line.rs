//! The command line as data, read from the help texts, which are its only definition: what completions and the man page are made from.
//!
//! An option is a line that begins with `--name`, perhaps one blank and what its value is called, then two blanks or more (or one behind
//! a value) and what it does; a line that begins with blanks goes on with it. All other lines are prose.

use crate::COMMANDS;
use crate::command::Command;
use clap::{Arg, ArgAction};

/// An option as a help text has it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct CommandOption {
    /// Without the dashes.
    pub(crate) name: &'static str,
    /// What its value is called, such as `FILE`; none of a switch.
    pub(crate) value: Option<&'static str>,
    /// What it does.
    pub(crate) help: String,
}

/// A help text taken apart.
#[derive(Debug, Default)]
pub(crate) struct Usage {
    /// The rest of the line that begins with `Usage: `.
    pub(crate) line: &'static str,
    /// In the order of the text.
    pub(crate) options: Vec<CommandOption>,
    /// Everything else, a paragraph an entry.
    pub(crate) prose: Vec<String>,
}

/// Takes a help text apart.
pub(crate) fn read(text: &'static str) -> Usage {
    let mut usage = Usage::default();
    let mut in_option = false;
    let mut paragraph = Vec::new();
    for line in text.lines().chain([""]) {
        if let Some(rest) = line.strip_prefix("Usage: ") {
            usage.line = rest;
        } else if let Some(option) = option(line) {
            usage.options.push(option);
            in_option = true;
        } else if in_option && line.starts_with(' ') {
            if let Some(last) = usage.options.last_mut() {
                last.help = format!("{} {}", last.help, line.trim());
            }
        } else if line.is_empty() {
            in_option = false;
            if !paragraph.is_empty() {
                usage.prose.push(std::mem::take(&mut paragraph).join("\n"));
            }
        } else {
            in_option = false;
            paragraph.push(line);
        }
    }
    usage
}

fn option(line: &'static str) -> Option<CommandOption> {
    let rest = line.strip_prefix("--")?;
    let (name, rest) = rest.split_once(' ')?;
    let (value, help) = match rest.strip_prefix(' ') {
        Some(help) => (None, help),
        None => rest.split_once(' ').map(|(value, help)| (Some(value), help))?,
    };
    Some(CommandOption { name, value, help: help.trim().to_owned() })
}

/// The whole command line as `clap` describes one. Reading it is left to each command.
pub(crate) fn definition() -> clap::Command {
    let whole = clap::Command::new("downbeam")
        .version(env!("CARGO_PKG_VERSION"))
        .about("What a C-arm shows of a lumbar spine, and how good the view is")
        .after_help("A teaching model: not for planning or guiding a procedure. Follow local policy, supervised training and licensed practice.");
    COMMANDS.into_iter().fold(whole, |whole, command| whole.subcommand(described(command)))
}

fn described(command: &Command) -> clap::Command {
    let usage = read(command.usage);
    let described = clap::Command::new(command.name).about(command.summary).long_about(format!(
        "{}\n\n{}",
        command.summary,
        usage.prose.join("\n\n")
    ));
    // What is given without a name are files, except where the list of names is short.
    let operands = match command.name {
        "check" | "grade" | "codes" => {
            Some(Arg::new("files").value_hint(clap::ValueHint::AnyPath).num_args(0..))
        }
        "schema" => Some(Arg::new("name").value_parser(crate::schema::SCHEMAS.map(|(name, _)| name))),
        "completions" => Some(Arg::new("shell").value_parser(clap::value_parser!(clap_complete::Shell))),
        _ => None,
    };
    let options = usage.options.into_iter().map(|CommandOption { name, value, help }| {
        let arg = Arg::new(name).long(name).help(help);
        match value {
            None => arg.action(ArgAction::SetTrue),
            Some(value) => {
                let file = matches!(value, "FILE" | "OUT" | "FOLDER" | "L");
                let hint = if file { clap::ValueHint::AnyPath } else { clap::ValueHint::Other };
                arg.value_name(value).value_hint(hint)
            }
        }
    });
    described.args(options.chain(operands))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_help_text_is_taken_apart() {
        let usage = read(
            "Usage: downbeam hum [OPTIONS]\n\nHums.\nLoudly.\n\n--pitch HZ  How high,\n            or low\n--force     Over others\n\nAlways.\n",
        );
        let option = |name, value, help: &str| CommandOption { name, value, help: help.to_owned() };
        assert_eq!(usage.line, "downbeam hum [OPTIONS]");
        assert_eq!(
            usage.options,
            [option("pitch", Some("HZ"), "How high, or low"), option("force", None, "Over others")]
        );
        assert_eq!(usage.prose, ["Hums.\nLoudly.", "Always."]);
    }

    /// What is found in a help text is an option that the command reads.
    #[test]
    fn options_of_help_texts_are_read() {
        for command in COMMANDS {
            for found in read(command.usage).options {
                let given: Vec<std::ffi::OsString> = match found.value {
                    Some(_) => vec![format!("--{}=\u{1}", found.name).into()],
                    None => vec![format!("--{}", found.name).into()],
                };
                // An option that is known fails later, at its value or at what else is missing, or is a switch.
                let mut parser = lexopt::Parser::from_args(given.iter().chain([&"--no-such-option".into()]));
                let error = (command.run)(&mut parser).unwrap_err().to_string();
                let own = format!("unknown option '--{}'", found.name);
                assert!(!error.contains(&own), "{}: {error}", command.name);
            }
        }
    }

    #[test]
    fn the_definition_is_one_that_clap_takes() {
        definition().debug_assert();
    }
}
