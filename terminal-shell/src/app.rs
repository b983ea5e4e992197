//! What a press of the keyboard does: it shows, it dispatches, or it moves within the screen.

use std::path::Path;
use std::sync::Arc;

use barwright_app::Engine;
use barwright_app::contract::{Action, Answer, Effect, EngineError, Intent, Look, Reading, Screen};
use ratatui::crossterm::event::{KeyCode, KeyEvent, KeyModifiers};

use crate::editor::Editor;
use crate::keys::Press;
use crate::metronome::Metronome;
use crate::screens::{self, Notice, Over, Selectable, Ui};
use crate::words::Own;
use crate::{clock, files};

/// Whether the program goes on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Flow {
    /// It does.
    On,
    /// It was left.
    Leave,
}

/// What is being written in the editor.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Writing {
    /// A field of the core.
    Field(String),
    /// The path of a plan file.
    PlanFile,
    /// The path of a gym file.
    GymFile,
    /// The path of a file to save what is made by hand in: its text.
    SaveAs(String),
}

/// A ring that was asked for.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Ring {
    wall_ms: i64,
    boot_ms: Option<i64>,
    text: String,
}

/// The program on a terminal, without the terminal.
#[derive(Debug)]
pub(crate) struct App {
    engine: Arc<Engine>,
    /// What is shown, with the look that shows it again and when it changes by itself.
    shown: Answer,
    /// When it was made.
    seen: Reading,
    ui: Ui,
    writing: Option<Writing>,
    ring: Option<Ring>,
    /// Counts the tempo of the set that is on.
    metronome: Option<Metronome>,
    /// The yes to what is asked, if it is said now.
    asked: Option<Action>,
    /// The exercise whose lift was last looked at.
    lift: String,
}

impl App {
    /// Wakes the engine and shows what is on.
    pub(crate) fn start(
        engine: Arc<Engine>,
        mark: Option<&'static str>,
        own: Own,
        now: Reading,
    ) -> Result<Self, EngineError> {
        let shown = engine.dispatch(Intent::Wake, now.clone())?;
        let mut app = Self {
            engine,
            shown,
            seen: now,
            ui: Ui { mark, own, ..Ui::default() },
            writing: None,
            ring: None,
            metronome: None,
            asked: None,
            lift: String::new(),
        };
        app.carry_out();
        if !matches!(app.shown.screen, Screen::Floor { .. }) {
            let now = app.seen.clone();
            app.show(Look::Today { session: None, minutes: None }, now);
        }
        Ok(app)
    }

    pub(crate) fn screen(&self) -> &Screen {
        &self.shown.screen
    }

    pub(crate) fn ui(&self) -> &Ui {
        &self.ui
    }

    /// Keeps the line at the top of what scrolls, as it was drawn.
    pub(crate) fn scrolled(&mut self, top: usize) {
        self.ui.top = top;
    }

    /// Says something in the place of notices.
    pub(crate) fn say(&mut self, text: String) {
        self.ui.notice = Some(Notice { text, warns: false });
    }

    /// Milliseconds from `now` until something on the screen changes by itself or a ring is due;
    /// none for never.
    pub(crate) fn sleeps(&self, now: &Reading) -> Option<i64> {
        let change = self.shown.wakes_at.map(|at| self.until(at, now));
        let ring = self.ring.as_ref().map(|ring| clock::until(now, ring.wall_ms, ring.boot_ms));
        let beat = self.metronome.as_ref().map(|metronome| metronome.until(now));
        [change, ring, beat].into_iter().flatten().min().map(|ms| ms.max(0))
    }

    /// Milliseconds to a wall time, as it was reckoned when the screen was made.
    fn until(&self, wall_ms: i64, now: &Reading) -> i64 {
        let after = wall_ms.saturating_sub(self.seen.wall_ms);
        clock::until(now, wall_ms, self.seen.boot_ms.map(|ms| ms.saturating_add(after)))
    }

    /// Time has passed. Answers whether the bell rings.
    pub(crate) fn tick(&mut self, now: Reading) -> bool {
        let due = |ring: &Ring| clock::until(&now, ring.wall_ms, ring.boot_ms) <= 0;
        let rings = self.ring.take_if(|ring| due(ring));
        let beat = self.metronome.as_mut().and_then(|metronome| metronome.beat(&now));
        if self.shown.wakes_at.is_some_and(|at| self.until(at, &now) <= 0) {
            self.show(self.shown.look.clone(), now);
        }
        let said = rings.map(|ring| ring.text).or(beat);
        let heard = said.is_some();
        said.into_iter().for_each(|text| self.say(text));
        heard
    }

    /// Starts to count the tempo of the set that is on, or stops.
    fn count(&mut self, now: &Reading) {
        let Screen::Floor { floor } = &self.shown.screen else { return };
        self.metronome = match self.metronome {
            Some(_) => None,
            None => Metronome::start(&floor.beats, now),
        };
        if self.metronome.is_some() {
            self.say(self.ui.own.get_set.to_owned());
        }
    }

    /// A press of the keyboard.
    pub(crate) fn press(&mut self, key: KeyEvent, now: Reading) -> Flow {
        let control = key.modifiers.contains(KeyModifiers::CONTROL);
        if control && matches!(key.code, KeyCode::Char('c')) {
            return Flow::Leave;
        }
        if self.ui.editor.is_some() {
            self.edit(key, now);
            return Flow::On;
        }
        self.ui.notice = None;
        self.ui.asks = false;
        if let Some(meant) = self.asked.take()
            && key.code == KeyCode::Char('y')
        {
            self.act(meant, now);
            return Flow::On;
        }
        let half = std::mem::take(&mut self.ui.half);
        let press = match key.code {
            KeyCode::Char(digit @ '0'..='9') if half => Press::Half(digit),
            KeyCode::Char('.' | ',') if self.bound(Press::Half('0')).is_some() => {
                self.ui.half = true;
                return Flow::On;
            }
            KeyCode::Char(' ') if self.on_floor() => Press::Enter,
            KeyCode::Char('=') => Press::Char('+'),
            KeyCode::Char('_') => Press::Char('-'),
            KeyCode::Char(one) if !control => Press::Char(one),
            KeyCode::Right if self.on_floor() || self.on_form() => Press::Char('+'),
            KeyCode::Left if self.on_floor() || self.on_form() => Press::Char('-'),
            KeyCode::Enter => Press::Enter,
            KeyCode::Esc => Press::Escape,
            other => {
                self.step(other, now);
                return Flow::On;
            }
        };
        if press == Press::Escape && self.ui.over != Over::Nothing {
            self.over(Over::Nothing);
            return Flow::On;
        }
        if press == Press::Enter && self.write() {
            return Flow::On;
        }
        if let Some(action) = self.bound(press) {
            self.act(action, now);
            return Flow::On;
        }
        match press {
            Press::Char('q') => return Flow::Leave,
            Press::Char('?') => self.over(Over::Help),
            Press::Char('w') => self.why(),
            Press::Char('c') => self.count(&now),
            Press::Char('j') => self.step(KeyCode::Down, now),
            Press::Char('k') => self.step(KeyCode::Up, now),
            Press::Char('o') => self.open_file(),
            Press::Char(letter) => self.go(letter, now),
            Press::Escape => self.ui.selected = None,
            Press::Enter | Press::Half(_) => {}
        }
        Flow::On
    }

    /// Text from the terminal's clipboard.
    pub(crate) fn paste(&mut self, text: &str) {
        if let Some(editor) = &mut self.ui.editor {
            text.chars().for_each(|one| editor.insert(one));
        }
    }

    fn on_floor(&self) -> bool {
        matches!(&self.shown.screen, Screen::Floor { floor } if floor.panel.is_none())
            && self.ui.over == Over::Nothing
    }

    fn on_form(&self) -> bool {
        matches!(self.shown.screen, Screen::Form { .. }) && self.ui.over == Over::Nothing
    }

    fn bound(&self, press: Press) -> Option<Action> {
        screens::bound(&self.shown.screen, &self.ui)
            .into_iter()
            .find(|bound| bound.press == press)
            .map(|bound| bound.key.action.clone())
    }

    fn act(&mut self, action: Action, now: Reading) {
        match self.engine.act(action, now.clone()) {
            Ok(answer) => self.put(answer, now),
            Err(error) => {
                self.refused(&error);
                if let EngineError::Refused { ask, .. } = error {
                    self.ui.asks = ask.is_some();
                    self.asked = ask;
                }
            }
        }
    }

    fn dispatch(&mut self, intent: Intent, now: Reading) {
        self.act(Action::Do { intent, session: None, then: None }, now);
    }

    fn show(&mut self, look: Look, now: Reading) {
        self.act(Action::Show { look }, now);
    }

    /// Shows an answer; what was selected and scrolled stays where it is the same place again.
    fn put(&mut self, answer: Answer, now: Reading) {
        if let Look::Lift { exercise, .. } = &answer.look {
            self.lift.clone_from(exercise);
        }
        let again = same_place(&self.shown.look, &answer.look) && self.part() == part(&answer);
        if !again {
            self.ui.selected = None;
            self.ui.top = 0;
            self.ui.open.clear();
            self.ui.over = Over::Nothing;
        }
        // A metronome belongs to the set it was started for.
        if self.part() != part(&answer) {
            self.metronome = None;
        }
        self.shown = answer;
        self.seen = now;
        self.carry_out();
        let count = screens::selectable(&self.shown.screen, self.ui.over).len();
        self.ui.selected = match self.ui.selected {
            Some(at) if count > 0 => Some(at.min(count - 1)),
            // A list that opened wants something chosen from it; the weeks begin where we are.
            None if count > 0 && self.in_panel() => Some(0),
            None if count > 0 && !again => self.this_week(),
            _ => None,
        };
    }

    /// The part that the floor is at; none on other screens.
    fn part(&self) -> Option<&str> {
        part(&self.shown)
    }

    /// The first session of the current week that is not done.
    fn this_week(&self) -> Option<usize> {
        let Screen::Weeks { weeks } = &self.shown.screen else { return None };
        let current = weeks.weeks.iter().filter(|week| week.current);
        let next = current.flat_map(|week| &week.rows).find(|row| !row.done)?;
        let chosen = screens::selectable(&self.shown.screen, self.ui.over);
        chosen.iter().position(|one| matches!(one, Selectable::Row(row) if row.id == next.id))
    }

    fn in_panel(&self) -> bool {
        matches!(&self.shown.screen, Screen::Floor { floor } if floor.panel.is_some())
    }

    fn carry_out(&mut self) {
        for effect in std::mem::take(&mut self.shown.effects) {
            match effect {
                Effect::RingAt { wall_ms, boot_ms, text, next } => {
                    let text = format!("{text} {next}").trim().to_owned();
                    self.ring = Some(Ring { wall_ms, boot_ms, text });
                }
                Effect::CancelRing => self.ring = None,
                // A terminal is not felt, and does not sleep.
                Effect::Haptic { .. } | Effect::KeepAwake { .. } => {}
            }
        }
    }

    fn refused(&mut self, error: &EngineError) {
        self.ui.notice = Some(Notice { text: error.to_string(), warns: true });
    }

    fn over(&mut self, over: Over) {
        self.ui.over = if self.ui.over == over { Over::Nothing } else { over };
        self.ui.selected = None;
        self.ui.top = 0;
    }

    /// A capital letter leads to a screen.
    fn go(&mut self, letter: char, now: Reading) {
        let look = match screens::place(letter) {
            Some(Look::Lift { page, all, .. }) => {
                Look::Lift { exercise: self.lift.clone(), page, all }
            }
            Some(look) => look,
            None => return,
        };
        self.ui.over = Over::Nothing;
        self.show(look, now);
    }

    /// Keys that move.
    fn step(&mut self, code: KeyCode, now: Reading) {
        let count = screens::selectable(&self.shown.screen, self.ui.over).len();
        match code {
            KeyCode::Down if count > 0 => {
                self.ui.selected = Some(self.ui.selected.map_or(0, |at| (at + 1).min(count - 1)));
            }
            KeyCode::Up if count > 0 => {
                self.ui.selected = self.ui.selected.and_then(|at| at.checked_sub(1));
                if self.ui.selected.is_none() {
                    self.ui.top = 0;
                }
            }
            KeyCode::Down => self.ui.top = self.ui.top.saturating_add(1),
            KeyCode::Up => self.ui.top = self.ui.top.saturating_sub(1),
            KeyCode::PageDown => self.scroll(10),
            KeyCode::PageUp => self.scroll(-10),
            KeyCode::Home => self.scroll(isize::MIN),
            KeyCode::End => self.scroll(isize::MAX),
            KeyCode::Tab => self.next(true, now),
            KeyCode::BackTab => self.next(false, now),
            _ => {}
        }
    }

    fn scroll(&mut self, by: isize) {
        self.ui.selected = None;
        self.ui.top = self.ui.top.saturating_add_signed(by);
    }

    /// To the next screen, or the one before. One that has nothing to show is passed over.
    fn next(&mut self, forward: bool, now: Reading) {
        let letters = screens::letters(&self.shown.screen);
        let count = letters.len();
        let here = letters.iter().position(|(_, here)| *here).unwrap_or(0);
        for by in 1..count {
            let at = if forward { here + by } else { here + count - by } % count;
            let Some((letter, _)) = letters.get(at) else { continue };
            self.ui.notice = None;
            let before = letters.get(here).map(|(letter, _)| *letter);
            self.go(*letter, now.clone());
            let now_here = screens::letters(&self.shown.screen);
            let moved = now_here.iter().find(|(_, here)| *here).map(|(letter, _)| *letter);
            if moved != before {
                self.ui.notice = None;
                return;
            }
        }
    }

    /// Enter on a field writes it. Answers whether one is selected.
    fn write(&mut self) -> bool {
        let chosen = screens::selectable(&self.shown.screen, self.ui.over);
        let field = match self.ui.selected.and_then(|at| chosen.get(at)) {
            Some(Selectable::Field(field)) => field,
            Some(Selectable::Form(row)) => match &row.field {
                Some(field) => field,
                None => return false,
            },
            _ => return false,
        };
        self.writing = Some(Writing::Field(field.id.clone()));
        self.ui.editor = Some(Editor::new(&field.label, &field.hint, &field.value));
        true
    }

    fn why(&mut self) {
        if self.on_floor() || self.ui.over == Over::Call {
            self.over(Over::Call);
            return;
        }
        let chosen = screens::selectable(&self.shown.screen, self.ui.over);
        if let Some(Selectable::Row(row)) = self.ui.selected.and_then(|at| chosen.get(at)) {
            let id = row.id.clone();
            if !self.ui.open.remove(&id) {
                self.ui.open.insert(id);
            }
        }
    }

    fn open_file(&mut self) {
        let own = self.ui.own;
        if let Screen::Form { form } = &self.shown.screen {
            if form.plan_file {
                self.writing = Some(Writing::PlanFile);
                self.ui.editor = Some(Editor::new(own.plan_file, own.plan_path, ""));
                return;
            }
            let Some(file) = &form.file else { return };
            self.writing = Some(Writing::SaveAs(file.text.clone()));
            self.ui.editor = Some(Editor::new(own.save_as, &file.name, &file.name));
            return;
        }
        let (label, hint, writing) = match &self.shown.screen {
            Screen::Plan { .. } => (own.plan_file, own.plan_path, Writing::PlanFile),
            Screen::Equipment { .. } => (own.gym_file, own.gym_path, Writing::GymFile),
            _ => return,
        };
        self.writing = Some(writing);
        self.ui.editor = Some(Editor::new(label, hint, ""));
    }

    fn edit(&mut self, key: KeyEvent, now: Reading) {
        let Some(editor) = &mut self.ui.editor else { return };
        let control = key.modifiers.contains(KeyModifiers::CONTROL);
        match key.code {
            KeyCode::Esc => {
                self.ui.editor = None;
                self.writing = None;
            }
            KeyCode::Enter => {
                let text = editor.text();
                self.ui.editor = None;
                self.written(&text, now);
            }
            KeyCode::Char('u') if control => editor.clear(),
            KeyCode::Char('a') if control => editor.step(isize::MIN),
            KeyCode::Char('e') if control => editor.step(isize::MAX),
            KeyCode::Char(one) if !control => editor.insert(one),
            KeyCode::Backspace => editor.backspace(),
            KeyCode::Delete => editor.delete(),
            KeyCode::Left => editor.step(-1),
            KeyCode::Right => editor.step(1),
            KeyCode::Home => editor.step(isize::MIN),
            KeyCode::End => editor.step(isize::MAX),
            _ => {}
        }
    }

    fn written(&mut self, text: &str, now: Reading) {
        let own = self.ui.own;
        let read = |path: &str| files::read(Path::new(path.trim()), own);
        self.ui.notice = None;
        match self.writing.take() {
            Some(Writing::Field(field)) => {
                self.dispatch(Intent::Write { field, text: text.to_owned(), sure: false }, now);
            }
            Some(Writing::PlanFile) => match read(text) {
                Ok(text) => self.show(Look::Plan { text: Some(text), week: None }, now),
                Err(reason) => self.ui.notice = Some(Notice { text: reason, warns: true }),
            },
            Some(Writing::GymFile) => match read(text) {
                Ok(text) => self.dispatch(Intent::AddGym { text }, now),
                Err(reason) => self.ui.notice = Some(Notice { text: reason, warns: true }),
            },
            Some(Writing::SaveAs(contents)) => {
                let saved = files::save(Path::new(text.trim()), &contents, own);
                let warns = saved.is_err();
                let text = saved.unwrap_or_else(|reason| reason);
                self.ui.notice = Some(Notice { text, warns });
            }
            None => {}
        }
    }
}

/// The part that the floor is at; none on other screens.
fn part(answer: &Answer) -> Option<&str> {
    match &answer.screen {
        Screen::Floor { floor } => floor.part.as_deref(),
        _ => None,
    }
}

/// Whether two looks are the same place, so that what is selected stays.
fn same_place(one: &Look, other: &Look) -> bool {
    match (one, other) {
        (Look::Floor { draft: one }, Look::Floor { draft: other }) => one.panel == other.panel,
        (Look::Today { session: one, .. }, Look::Today { session: other, .. }) => one == other,
        (Look::Lift { exercise: one, .. }, Look::Lift { exercise: other, .. }) => one == other,
        (Look::Form { of: one, at: here, .. }, Look::Form { of: other, at: there, .. }) => {
            (one, here) == (other, there)
        }
        (Look::Plan { text: one, .. }, Look::Plan { text: other, .. }) => one == other,
        _ => std::mem::discriminant(one) == std::mem::discriminant(other),
    }
}
