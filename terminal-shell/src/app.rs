//! What a press of the keyboard does: it shows, it dispatches, or it moves within the screen.

use std::path::Path;
use std::sync::Arc;

use barwright_app::Engine;
use barwright_app::contract::{
    Action, Draft, Effect, EngineError, Intent, Look, Reading, RefusalCode, Screen, Update,
};
use ratatui::crossterm::event::{KeyCode, KeyEvent, KeyModifiers};

use crate::editor::Editor;
use crate::keys::Press;
use crate::metronome::Metronome;
use crate::screens::{self, Notice, Over, Selectable, Ui};
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
    /// What is looked at; asked for again when time has passed.
    look: Look,
    screen: Screen,
    /// When the screen was made.
    seen: Reading,
    ui: Ui,
    writing: Option<Writing>,
    ring: Option<Ring>,
    /// Counts the tempo of the set that is on.
    metronome: Option<Metronome>,
    /// What is carried out all the same if it is said now.
    asked: Option<Intent>,
    /// The exercise whose lift was last looked at.
    lift: String,
}

impl App {
    /// Wakes the engine and shows what is on.
    pub(crate) fn start(
        engine: Arc<Engine>,
        mark: Option<&'static str>,
        now: Reading,
    ) -> Result<Self, EngineError> {
        let Update { screen, effects } = engine.dispatch(Intent::Wake, now.clone())?;
        let mut app = Self {
            engine,
            look: usual(&screen),
            screen,
            seen: now,
            ui: Ui { mark, ..Ui::default() },
            writing: None,
            ring: None,
            metronome: None,
            asked: None,
            lift: String::new(),
        };
        app.carry_out(effects);
        if !matches!(app.screen, Screen::Floor { .. }) {
            let now = app.seen.clone();
            app.show(Look::Today { session: None, minutes: None }, now);
        }
        Ok(app)
    }

    pub(crate) fn screen(&self) -> &Screen {
        &self.screen
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
        let change = self.next_change_ms().map(|after| {
            let boot = self.seen.boot_ms.map(|ms| ms.saturating_add(after));
            clock::until(now, self.seen.wall_ms.saturating_add(after), boot)
        });
        let ring = self.ring.as_ref().map(|ring| clock::until(now, ring.wall_ms, ring.boot_ms));
        let beat = self.metronome.as_ref().map(|metronome| metronome.until(now));
        [change, ring, beat].into_iter().flatten().min().map(|ms| ms.max(0))
    }

    fn next_change_ms(&self) -> Option<i64> {
        match &self.screen {
            Screen::Floor { floor } => {
                let rest = floor.rest.as_ref().map(|rest| rest.next_change_ms);
                let hold = floor.thumb.figure.as_ref().and_then(|figure| figure.next_change_ms);
                [rest, hold].into_iter().flatten().min().map(|ms| ms.max(1))
            }
            _ => None,
        }
    }

    /// Time has passed. Answers whether the bell rings.
    pub(crate) fn tick(&mut self, now: Reading) -> bool {
        let due = |ring: &Ring| clock::until(&now, ring.wall_ms, ring.boot_ms) <= 0;
        let rings = self.ring.take_if(|ring| due(ring));
        let beat = self.metronome.as_mut().and_then(|metronome| metronome.beat(&now));
        if self.next_change_ms().is_some() {
            self.show(self.look.clone(), now);
        }
        let said = rings.map(|ring| ring.text).or(beat);
        let heard = said.is_some();
        said.into_iter().for_each(|text| self.say(text));
        heard
    }

    /// Starts to count the tempo of the set that is on, or stops.
    fn count(&mut self, now: &Reading) {
        let Screen::Floor { floor } = &self.screen else { return };
        self.metronome = match self.metronome {
            Some(_) => None,
            None => Metronome::start(&floor.beats, now),
        };
        if self.metronome.is_some() {
            self.say("get set".to_owned());
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
            self.dispatch(meant, now);
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
            KeyCode::Right if self.on_floor() => Press::Char('+'),
            KeyCode::Left if self.on_floor() => Press::Char('-'),
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
        matches!(&self.screen, Screen::Floor { floor } if floor.panel.is_none())
            && self.ui.over == Over::Nothing
    }

    fn bound(&self, press: Press) -> Option<Action> {
        screens::bound(&self.screen, &self.ui)
            .into_iter()
            .find(|bound| bound.press == press)
            .map(|bound| bound.key.action.clone())
    }

    fn act(&mut self, action: Action, now: Reading) {
        match action {
            Action::Do { intent } => self.dispatch(intent, now),
            Action::Show { look } => self.show(look, now),
        }
    }

    fn dispatch(&mut self, intent: Intent, now: Reading) {
        // What is being entered is about the part, not the rest before it; and plates come and go
        // one by one.
        let keeps = matches!(
            intent,
            Intent::RestBy { .. } | Intent::BarHolds { .. } | Intent::UseKit { .. }
        );
        let meant = all_the_same(&intent);
        match self.engine.dispatch(intent, now.clone()) {
            Ok(Update { screen, effects }) => {
                self.carry_out(effects);
                if keeps
                    && matches!((&self.screen, &screen), (
                    Screen::Floor { floor: was },
                    Screen::Floor { floor: is },
                ) if was.part == is.part)
                {
                    self.show(self.look.clone(), now);
                    return;
                }
                let look = usual(&screen);
                self.put(look, screen, now);
            }
            Err(error) => {
                self.refused(&error);
                if let EngineError::Refused { code: RefusalCode::Ask, .. } = error {
                    self.asked = meant;
                    self.ui.asks = self.asked.is_some();
                }
            }
        }
    }

    fn show(&mut self, look: Look, now: Reading) {
        match self.engine.view(look.clone(), now.clone()) {
            Ok(screen) => self.put(look, screen, now),
            Err(error) => self.refused(&error),
        }
    }

    /// Shows a screen; what was selected and scrolled stays where it is the same one again.
    fn put(&mut self, look: Look, screen: Screen, now: Reading) {
        if let Look::Lift { exercise, .. } = &look {
            self.lift.clone_from(exercise);
        }
        let again = same_place(&self.screen, &screen);
        if !again {
            self.ui.selected = None;
            self.ui.top = 0;
            self.ui.open.clear();
            self.ui.over = Over::Nothing;
        }
        // A metronome belongs to the set it was started for.
        if part(&self.screen) != part(&screen) {
            self.metronome = None;
        }
        self.look = look;
        self.screen = screen;
        self.seen = now;
        let count = screens::selectable(&self.screen, self.ui.over).len();
        self.ui.selected = match self.ui.selected {
            Some(at) if count > 0 => Some(at.min(count - 1)),
            // A list that opened wants something chosen from it; the weeks begin where we are.
            None if count > 0 && self.in_panel() => Some(0),
            None if count > 0 && !again => self.this_week(),
            _ => None,
        };
    }

    /// The first session of the current week that is not done.
    fn this_week(&self) -> Option<usize> {
        let Screen::Weeks { weeks } = &self.screen else { return None };
        let current = weeks.weeks.iter().filter(|week| week.current);
        let next = current.flat_map(|week| &week.rows).find(|row| !row.done)?;
        let chosen = screens::selectable(&self.screen, self.ui.over);
        chosen.iter().position(|one| matches!(one, Selectable::Row(row) if row.id == next.id))
    }

    fn in_panel(&self) -> bool {
        matches!(&self.screen, Screen::Floor { floor } if floor.panel.is_some())
    }

    fn carry_out(&mut self, effects: Vec<Effect>) {
        for effect in effects {
            match effect {
                Effect::RingAt { wall_ms, boot_ms, text, next } => {
                    let text = format!("{text} {next}").trim().to_owned();
                    self.ring = Some(Ring { wall_ms, boot_ms, text });
                }
                Effect::CancelRing => self.ring = None,
                Effect::ShareFile { path, .. } => self.say(path),
                // A terminal is not felt, does not speak, and does not sleep.
                Effect::Haptic { .. } | Effect::Speak { .. } | Effect::KeepAwake { .. } => {}
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
            Some(Look::Lift { .. }) => Look::Lift { exercise: self.lift.clone(), page: 0, all: false },
            Some(look) => look,
            None => return,
        };
        self.ui.over = Over::Nothing;
        self.show(look, now);
    }

    /// Keys that move.
    fn step(&mut self, code: KeyCode, now: Reading) {
        let count = screens::selectable(&self.screen, self.ui.over).len();
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
        let letters = screens::letters(&self.screen);
        let count = letters.len();
        let here = letters.iter().position(|(_, here)| *here).unwrap_or(0);
        for by in 1..count {
            let at = if forward { here + by } else { here + count - by } % count;
            let Some((letter, _)) = letters.get(at) else { continue };
            self.ui.notice = None;
            let before = letters.get(here).map(|(letter, _)| *letter);
            self.go(*letter, now.clone());
            let now_here = screens::letters(&self.screen);
            let moved = now_here.iter().find(|(_, here)| *here).map(|(letter, _)| *letter);
            if moved != before {
                self.ui.notice = None;
                return;
            }
        }
    }

    /// Enter on a field writes it. Answers whether one is selected.
    fn write(&mut self) -> bool {
        let chosen = screens::selectable(&self.screen, self.ui.over);
        let field = match self.ui.selected.and_then(|at| chosen.get(at)) {
            Some(Selectable::Field(field)) => field,
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
        let chosen = screens::selectable(&self.screen, self.ui.over);
        if let Some(Selectable::Row(row)) = self.ui.selected.and_then(|at| chosen.get(at)) {
            let id = row.id.clone();
            if !self.ui.open.remove(&id) {
                self.ui.open.insert(id);
            }
        }
    }

    fn open_file(&mut self) {
        let (label, hint, writing) = match &self.screen {
            Screen::Plan { .. } => ("Plan file", "plans/spring.toml", Writing::PlanFile),
            Screen::Equipment { .. } => ("Gym file", "gyms/boathouse.toml", Writing::GymFile),
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
        let read = |path: &str| files::read(Path::new(path.trim()));
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
            None => {}
        }
    }
}

/// A tap that may be asked about, said again as meant.
fn all_the_same(intent: &Intent) -> Option<Intent> {
    let mut again = intent.clone();
    match &mut again {
        Intent::ChangeLoad { sure, .. } | Intent::Write { sure, .. } => *sure = true,
        _ => return None,
    }
    Some(again)
}

/// The part that the floor is at; none on other screens.
fn part(screen: &Screen) -> Option<&str> {
    match screen {
        Screen::Floor { floor } => floor.part.as_deref(),
        _ => None,
    }
}

/// The look that shows a screen again.
fn usual(screen: &Screen) -> Look {
    match screen {
        Screen::Today { .. } => Look::Today { session: None, minutes: None },
        Screen::Floor { .. } => Look::Floor { draft: Draft::default() },
        Screen::Tally { .. } => Look::Tally,
        Screen::Weeks { .. } => Look::Weeks,
        Screen::Lift { lift } => Look::Lift { exercise: lift.title.clone(), page: 0, all: false },
        Screen::Balance { .. } => Look::Balance { weeks: None },
        Screen::Equipment { .. } => Look::Equipment,
        Screen::Plan { .. } => Look::Plan { text: None, week: None },
    }
}

/// Whether two screens are the same place, so that what is selected stays.
fn same_place(one: &Screen, other: &Screen) -> bool {
    match (one, other) {
        (Screen::Floor { floor: one }, Screen::Floor { floor: other }) => {
            let name = |panel: &Option<barwright_app::contract::Panel>| {
                panel.as_ref().map(|panel| panel.id.clone())
            };
            one.part == other.part && name(&one.panel) == name(&other.panel)
        }
        (Screen::Today { today: one }, Screen::Today { today: other }) => one.title == other.title,
        (Screen::Lift { lift: one }, Screen::Lift { lift: other }) => one.title == other.title,
        (Screen::Plan { plan: one }, Screen::Plan { plan: other }) => one.title == other.title,
        _ => std::mem::discriminant(one) == std::mem::discriminant(other),
    }
}
