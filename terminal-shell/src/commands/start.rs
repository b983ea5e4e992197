//! `barwright` alone: the screens on a terminal, or today's sheet on a pipe.

use std::io::{self, BufRead, IsTerminal, Write};
use std::path::Path;

use barwright_app::contract::Look;
use barwright_app::demo;

use super::{Failure, Records, plan, say, screen};
use crate::app::App;
use crate::palette::Palette;
use crate::{clock, terminal};

/// What stands on every screen of the demo.
const INVENTED: &str = "demo: invented";

/// Runs the screens, or prints the sheet where there are none to run on.
pub(crate) fn run(mut records: Records) -> Result<(), Failure> {
    let dumb = std::env::var_os("TERM").is_none_or(|term| term == "dumb");
    let shows = io::stdout().is_terminal() && io::stdin().is_terminal() && !dumb;
    let path = records.path()?;
    let begun = path.exists() || records.demo;
    let mut out = io::stdout();
    if !shows {
        let today = Look::Today { session: None, minutes: None };
        if !begun {
            let said = nothing_yet(&path);
            say(&mut out, &format!("{said}\n\nThe demo's sheet, all of it invented:\n\n"))?;
            let shown = demo::play(&records.locale(), &clock::read())?;
            return screen::run(&shown, today, false, &mut out);
        }
        return screen::run(&*records.open()?, today, false, &mut out);
    }
    if !begun && !first(&mut records, &path, &mut io::stdin().lock(), &mut out)? {
        return Ok(());
    }
    let engine = records.open()?;
    let mark = records.demo.then_some(INVENTED);
    let mut app = App::start(engine.clone(), mark, clock::read())?;
    let palette = Palette::of(|name| std::env::var(name).ok());
    terminal::run(&mut app, palette)?;
    Ok(engine.shut_down()?)
}

pub(super) fn nothing_yet(path: &Path) -> String {
    format!(
        "No records yet: there is no file {}.\n\
         barwright --demo              look at the demo, invented records in a file of their own\n\
         barwright plan adopt FILE     begin with a plan\n\
         barwright                     on a terminal: the screens",
        path.display()
    )
}

/// The first start: says that nothing is here yet and asks how to begin. Answers whether to go on.
fn first(
    records: &mut Records,
    path: &Path,
    input: &mut impl BufRead,
    out: &mut impl Write,
) -> Result<bool, Failure> {
    say(
        out,
        &format!(
            "Barwright. No records yet: there is no file {}.\n\n\
             d  look at the demo: invented records, in a file of their own\n\
             p  begin with a plan file\n\
             n  begin without a plan\n\
             q  leave; nothing is made\n",
            path.display()
        ),
    )?;
    loop {
        let Some(answer) = ask("\nd, p, n or q: ", input, out)? else { return Ok(false) };
        match answer.as_str() {
            "d" => {
                records.demo = true;
                return Ok(true);
            }
            "p" => {
                let Some(file) = ask("Plan file: ", input, out)? else { return Ok(false) };
                let adopted = plan::read_first(Path::new(&file), records, out);
                match adopted {
                    Ok(()) => return Ok(true),
                    Err(failure) => say(out, &format!("{}\n", failure.text))?,
                }
            }
            "n" => return Ok(true),
            "q" => return Ok(false),
            _ => {}
        }
    }
}

/// One line of an answer; none at the end of the input.
fn ask(
    question: &str,
    input: &mut impl BufRead,
    out: &mut impl Write,
) -> Result<Option<String>, Failure> {
    say(out, question)?;
    let mut line = String::new();
    let read = input.read_line(&mut line)?;
    Ok((read > 0).then(|| line.trim().to_owned()))
}
