//! `completions`: the command line for a shell that fills in commands and options.

use crate::command::{Command, print, word};
use crate::command_line;
use clap_complete::Shell;
use downbeam::anatomy::names::UnknownName;
use lexopt::Parser;
use std::str::FromStr;

pub(crate) const COMMAND: Command = Command {
    name: "completions",
    summary: "What a shell needs to fill in commands and options",
    usage: "Usage: downbeam completions SHELL\n\n\
            Prints a script for SHELL: bash, zsh, fish, elvish or powershell. Where it belongs:\n\n\
            bash  downbeam completions bash > ~/.local/share/bash-completion/completions/downbeam\n\
            zsh   downbeam completions zsh > a file _downbeam in a folder of $fpath\n\
            fish  downbeam completions fish > ~/.config/fish/completions/downbeam.fish\n",
    run,
};

const SHELLS: &str = "bash, zsh, fish, elvish, powershell";

fn run(parser: &mut Parser) -> anyhow::Result<()> {
    let asked = word(&COMMAND, parser, "shell", SHELLS)?;
    let shell = Shell::from_str(&asked).map_err(|_| UnknownName {
        kind: "shell",
        found: asked,
        allowed: SHELLS.to_owned(),
    })?;
    let mut script = Vec::new();
    clap_complete::generate(shell, &mut command_line::definition(), "downbeam", &mut script);
    print(&String::from_utf8_lossy(&script))
}
