//! The terminal: taken, drawn on, and given back whatever happens.

use std::io::{self, Write};
use std::panic::{AssertUnwindSafe, catch_unwind, resume_unwind};
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::Duration;

use ratatui::DefaultTerminal;
use ratatui::crossterm::cursor::Show;
use ratatui::crossterm::event::{
    self, DisableBracketedPaste, EnableBracketedPaste, Event, KeyEventKind,
};
use ratatui::crossterm::execute;

use crate::app::{App, Flow};
use crate::clock;
use crate::palette::Palette;
use crate::screens;

/// Who writes to the terminal holds this: a signal gives it back only between two frames.
static OUTPUT: Mutex<()> = Mutex::new(());

fn output() -> MutexGuard<'static, ()> {
    OUTPUT.lock().unwrap_or_else(PoisonError::into_inner)
}

/// What a panic said, until the terminal can show it.
static SAID: Mutex<Option<String>> = Mutex::new(None);

/// Runs the program on this terminal until it is left.
pub(crate) fn run(app: &mut App, palette: Palette) -> io::Result<()> {
    with(|terminal| turn(terminal, app, palette))
}

/// Runs something on this terminal and gives it back.
pub(crate) fn with<T>(work: impl FnOnce(&mut DefaultTerminal) -> io::Result<T>) -> io::Result<T> {
    let mut terminal = ratatui::try_init()?;
    // The engine catches its own panics and goes on: what one says must not spoil the screen, and
    // the terminal is given back only where the program ends by it.
    std::panic::set_hook(Box::new(|panic| {
        *SAID.lock().unwrap_or_else(PoisonError::into_inner) = Some(panic.to_string());
    }));
    let _ = execute!(io::stdout(), EnableBracketedPaste);
    let answer = catch_unwind(AssertUnwindSafe(|| {
        signals::watch()?;
        // From here on a change of size is heard: one between the first frame and the first wait for
        // a key would leave the old size standing until a key comes.
        event::poll(Duration::ZERO)?;
        work(&mut terminal)
    }));
    give_back();
    let _ = std::panic::take_hook();
    answer.unwrap_or_else(|panic| {
        if let Some(said) = SAID.lock().unwrap_or_else(PoisonError::into_inner).take() {
            let _ = writeln!(io::stderr(), "{said}");
        }
        resume_unwind(panic)
    })
}

fn give_back() {
    let _ = execute!(io::stdout(), DisableBracketedPaste);
    // A terminal that is gone takes nothing back, and says so nowhere: `restore` would write its
    // complaint to the same dead place and panic there, before the program could end.
    let _ = ratatui::try_restore();
    let _ = execute!(io::stdout(), Show);
}

fn turn(terminal: &mut DefaultTerminal, app: &mut App, palette: Palette) -> io::Result<()> {
    loop {
        {
            let _held = output();
            let mut top = 0;
            terminal.draw(|frame| {
                let area = frame.area();
                top = screens::draw(app.screen(), app.ui(), palette, area, frame.buffer_mut());
            })?;
            app.scrolled(top);
        }
        // With nothing that changes by itself it waits for a key, however long.
        let comes = match app.sleeps(&clock::read()) {
            None => true,
            Some(ms) => event::poll(Duration::from_millis(ms.unsigned_abs()))?,
        };
        if !comes {
            if app.tick(clock::read()) {
                let _held = output();
                let mut out = io::stdout();
                out.write_all(b"\x07")?;
                out.flush()?;
            }
            continue;
        }
        let flow = match event::read()? {
            Event::Key(key) if key.kind != KeyEventKind::Release => app.press(key, clock::read()),
            Event::Paste(text) => {
                app.paste(&text);
                Flow::On
            }
            _ => Flow::On,
        };
        if flow == Flow::Leave {
            return Ok(());
        }
    }
}

/// A signal that ends the program gives the terminal back first. What was recorded is on disk
/// already: there is nothing else to save.
#[cfg(unix)]
mod signals {
    use std::io;
    use std::sync::Once;

    use signal_hook::consts::{SIGHUP, SIGINT, SIGTERM};
    use signal_hook::iterator::Signals;
    use signal_hook::low_level::emulate_default_handler;

    /// Who watches already.
    static WATCHED: Once = Once::new();

    pub(super) fn watch() -> io::Result<()> {
        if WATCHED.is_completed() {
            return Ok(());
        }
        let mut signals = Signals::new([SIGTERM, SIGINT, SIGHUP])?;
        // It sleeps until a signal comes, and costs nothing until then.
        std::thread::Builder::new().name("signals".to_owned()).spawn(move || {
            if let Some(signal) = signals.forever().next() {
                let _held = super::output();
                super::give_back();
                let _ = emulate_default_handler(signal);
            }
        })?;
        WATCHED.call_once(|| {});
        Ok(())
    }
}

#[cfg(not(unix))]
mod signals {
    pub(super) fn watch() -> std::io::Result<()> {
        Ok(())
    }
}
