//! `barwright completions` and `barwright man`: what other programs of the command line read, made
//! from the same definitions as the help.

use std::io::Write;

use clap::Command;
use clap_complete::Shell;

use super::{Failure, say};

/// What the program ends with, for its help and its manual page.
pub(crate) const CODES: &str = "It ends with:
  0  done; what was asked for is on standard output
  1  something failed here, such as a file that can't be read
  2  what was asked can't be: a fault in a plan, a load that can't be made, a wrong option
  3  `plan check --hold-to`: the plan has such remarks
What is wrong is said on standard error. Colours only on a terminal, and none where NO_COLOR is set.";

/// How each shell takes its completions.
pub(crate) const HOW_TO_COMPLETE: &str = "Examples:
  barwright completions bash > ~/.local/share/bash-completion/completions/barwright
  barwright completions zsh > ~/.zfunc/_barwright
  barwright completions fish > ~/.config/fish/completions/barwright.fish";

/// Prints the completions of a shell.
pub(crate) fn completions(
    line: &mut Command,
    shell: Shell,
    out: &mut impl Write,
) -> Result<(), Failure> {
    // Into memory first: the generator panics where it can't write, and a pipe may be closed.
    let mut text = Vec::new();
    clap_complete::generate(shell, line, "barwright", &mut text);
    out.write_all(&text)?;
    Ok(out.flush()?)
}

/// Prints the manual page of the program, or of the command that `words` lead to.
pub(crate) fn manual(
    mut line: Command,
    words: &[String],
    out: &mut impl Write,
) -> Result<(), Failure> {
    line.build();
    let mut of = &line;
    for word in words {
        of = of.find_subcommand(word).ok_or_else(|| {
            let command = words.join(" ");
            Failure::asked(format!("There is no command “{command}”: see barwright --help"))
        })?;
    }
    let name = std::iter::once("barwright").chain(words.iter().map(String::as_str));
    let name = name.collect::<Vec<_>>().join("-");
    let mut page = Vec::new();
    clap_mangen::Man::new(of.clone()).title(name).render(&mut page)?;
    let page = String::from_utf8(page).map_err(|error| Failure::here(error.to_string()))?;
    say(out, &page)
}
