//! `barwright` alone: the screens on a terminal, or today's sheet on a pipe.

use std::io::{self, BufRead, IsTerminal, Write};
use std::path::Path;

use barwright_app::contract::Look;
use barwright_app::demo;

use super::{Failure, Records, plan, say, screen};
use crate::app::App;
use crate::palette::Palette;
use crate::{clock, terminal};

/// Runs the screens, or prints the sheet where there are none to run on.
pub(crate) fn run(mut records: Records) -> Result<(), Failure> {
    let dumb = std::env::var_os("TERM").is_none_or(|term| term == "dumb");
    let shows = io::stdout().is_terminal() && io::stdin().is_terminal() && !dumb;
    let path = records.path()?;
    let begun = path.exists() || records.demo;
    let mut out = io::stdout();
    let own = records.own();
    if !shows {
        let today = Look::Today { session: None, minutes: None };
        if !begun {
            let said = (own.nothing_yet)(&path.display().to_string());
            say(&mut out, &format!("{said}\n\n{}\n\n", own.demo_sheet))?;
            let shown = demo::play(&records.locale(), &clock::read())?;
            return screen::run(&shown, today, false, own, &mut out);
        }
        return screen::run(&*records.open()?, today, false, own, &mut out);
    }
    if !begun && !first(&mut records, &path, &mut io::stdin().lock(), &mut out)? {
        return Ok(());
    }
    let engine = records.open()?;
    let mark = records.demo.then_some(own.invented);
    let mut app = App::start(engine.clone(), mark, own, clock::read())?;
    let palette = Palette::of(|name| std::env::var(name).ok());
    terminal::run(&mut app, palette)?;
    Ok(engine.shut_down()?)
}

/// The first start: says that nothing is here yet and asks how to begin. Answers whether to go on.
fn first(
    records: &mut Records,
    path: &Path,
    input: &mut impl BufRead,
    out: &mut impl Write,
) -> Result<bool, Failure> {
    let own = records.own();
    say(out, &(own.first)(&path.display().to_string()))?;
    loop {
        let Some(answer) = ask(&format!("\n{}", own.d_p_n_q), input, out)? else {
            return Ok(false);
        };
        match answer.as_str() {
            "d" => {
                records.demo = true;
                return Ok(true);
            }
            "p" => {
                let Some(file) = ask(own.ask_plan, input, out)? else { return Ok(false) };
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
