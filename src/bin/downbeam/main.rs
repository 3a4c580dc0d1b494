//! The host tool: the only code that knows files, processes and sockets.
//!
//! Exit codes: 0 done; 1 it could not be done (a file, a port, a build); 2 it was asked for wrongly; 3 `grade --strict` found a
//! receipt that is not verified. In all cases but 0 one sentence on standard error says what was wrong and what is allowed. Results go to standard output, everything
//! else to standard error.

mod all_processors;
mod asked_patient;
mod build;
mod check;
mod codes;
mod command;
mod command_line;
mod completions;
mod exposure;
mod grade;
mod lesson_source;
mod list_source;
mod man;
mod mesh;
mod mesh_file;
mod model;
mod needle_file;
mod npy_file;
mod out_file;
mod outline_file;
mod pack;
mod patients;
mod player_page;
mod png_file;
mod practice_receipts;
mod project;
mod receipt_source;
mod replaced;
mod replay;
mod schema;
mod serve;
mod shown;
mod site;
mod svg_file;
mod texts;
mod view;
mod wasm_parts;

use command::{Command, UsageError};
use downbeam::anatomy::names::UnknownName;
use downbeam::anatomy::patient_field::PatientError;
use downbeam::imaging::c_arm::OrientationError;
use downbeam::imaging::exposure::SettingError;
use std::ffi::OsString;
use std::io::Write;
use std::process::ExitCode;

const COMMANDS: [&Command; 15] = [
    &serve::COMMAND,
    &build::COMMAND,
    &pack::COMMAND,
    &view::COMMAND,
    &mesh::COMMAND,
    &patients::COMMAND,
    &check::COMMAND,
    &grade::COMMAND,
    &codes::COMMAND,
    &replay::COMMAND,
    &schema::COMMAND,
    &model::COMMAND,
    &texts::COMMAND,
    &completions::COMMAND,
    &man::COMMAND,
];

fn main() -> ExitCode {
    let Err(error) = run(std::env::args_os().skip(1).collect()) else {
        return ExitCode::SUCCESS;
    };
    if is_closed_pipe(&error) {
        return ExitCode::SUCCESS;
    }
    // A closed standard error is no reason to panic.
    let _ = writeln!(std::io::stderr(), "downbeam: {error:#}");
    ExitCode::from(match () {
        () if error.is::<command::NotVerified>() => 3,
        () if is_wrong_use(&error) => 2,
        () => 1,
    })
}

/// The first argument names the command; without one, `serve`.
fn run(mut arguments: Vec<OsString>) -> anyhow::Result<()> {
    let first = arguments.first().map(|a| a.to_string_lossy().into_owned()).unwrap_or_default();
    match first.as_str() {
        "help" | "--help" | "-h" => help(arguments.get(1..).unwrap_or_default()),
        "--version" | "-V" => command::print(concat!("downbeam ", env!("CARGO_PKG_VERSION"), "\n")),
        option if option.is_empty() || option.starts_with('-') => command::start(&serve::COMMAND, arguments),
        name => {
            let command = named(name)?;
            arguments.remove(0);
            command::start(command, arguments)
        }
    }
}

fn named(name: &str) -> Result<&'static Command, UnknownName> {
    COMMANDS.into_iter().find(|c| c.name == name).ok_or_else(|| UnknownName {
        kind: "command",
        found: name.to_owned(),
        allowed: COMMANDS.map(|c| c.name).join(", ") + ", help",
    })
}

fn help(of: &[OsString]) -> anyhow::Result<()> {
    if let Some(name) = of.first() {
        return command::print(named(&name.to_string_lossy())?.usage);
    }
    let mut text = String::from(
        "downbeam: what a C-arm shows of a lumbar spine, and how good the view is\n\n\
         Usage: downbeam [COMMAND] [OPTIONS]\n\nCommands:\n",
    );
    for command in COMMANDS {
        text += &format!("  {:<11} {}\n", command.name, command.summary);
    }
    text += "  help        What a command takes: downbeam help COMMAND\n\n\
             --version prints the version. Without a command: serve.\n\
             Exit code 0: done; 1: it could not be done; 2: it was asked for wrongly; 3: see grade --strict.\n\n\
             A teaching model: not for planning or guiding a procedure. Follow local policy, supervised training \
             and licensed practice.\n";
    command::print(&text)
}

fn is_wrong_use(error: &anyhow::Error) -> bool {
    error.is::<UsageError>()
        || error.is::<lexopt::Error>()
        || error.is::<UnknownName>()
        || error.is::<PatientError>()
        || error.is::<OrientationError>()
        || error.is::<SettingError>()
}

/// Whether the reader of our output has gone, as in `downbeam view ... | head`.
fn is_closed_pipe(error: &anyhow::Error) -> bool {
    error.downcast_ref::<std::io::Error>().is_some_and(|e| e.kind() == std::io::ErrorKind::BrokenPipe)
}
