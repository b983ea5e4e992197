//! What each step of a year does.

use barwright_app::contract::{
    Action, EngineError, FloorScreen, Intent, Look, RefusalCode, Screen,
};
use barwright_faults::{Call, Fault};
use barwright_player::intents::begin;
use barwright_player::screens::{at_floor, at_today};
use serde_json::Value;

use super::device::{Device, Disks, Wrong, is_stale};
use super::intents;
use super::plans;
use super::step::{Step, What};
use crate::chance::Chance;

const MINUTE: i64 = 60_000;
const DAY: i64 = 1_440 * MINUTE;

/// A device and what a hand at it remembers.
pub(super) struct Lifter {
    device: Device,
    /// Keys that were kept from earlier.
    kept: Vec<Action>,
}

impl Lifter {
    pub(super) fn new(seed: u64) -> Result<Self, Wrong> {
        // One in four has no clock that counts from the start, as a browser has none.
        let device = Device::new(!seed.is_multiple_of(4))?;
        Ok(Self { device, kept: Vec::new() })
    }

    pub(super) fn end(mut self) -> Result<(), Wrong> {
        self.device.check()
    }

    pub(super) fn step(&mut self, step: Step) -> Result<(), Wrong> {
        let chance = &mut Chance::of(step.seed, 6);
        match step.what {
            What::Begin => self.begin(chance),
            What::Lift => self.lift(chance),
            What::End => self.finish(chance),
            What::Look => self.device.look(intents::look(chance)).map(drop),
            What::Press => self.press(chance),
            What::Stale => self.stale(chance),
            What::Absurd => self.device.tries(intents::any(chance)),
            What::Write => self.write(chance),
            What::Plan => self.plan(chance),
            What::SetClock => self.set_clock(chance),
            What::Zone => {
                let offsets = [0, 60, 120, -300, 330, 720, -660];
                self.device.clock.offset = offsets[chance.below(7) as usize];
                self.device.tries(Intent::Wake)
            }
            What::Reboot => {
                let files = self.device.disk.files();
                self.device.clock.reboot();
                self.device.comes_back(&files)?;
                self.device.tries(Intent::Wake)?;
                self.device.hold(false)
            }
            What::Suspend => {
                let suspended = self.device.engine().suspend();
                suspended.map_err(|error| format!("not suspended: {error:?}"))?;
                self.device.clock.wait(chance.below(30) as i64 * MINUTE);
                self.device.look(at_floor(None)).map(drop)
            }
            What::Kill => self.cut(false, chance),
            What::PowerCut => self.cut(true, chance),
            What::Fault => self.fault(chance),
            What::Full => self.full(chance),
            What::ReadOnly => self.read_only(chance),
            What::Swap => self.swap(chance),
            What::Backup => self.device.backs_up(chance.below(2) == 0),
            What::Check => self.device.check(),
        }
    }

    /// Days pass; the session that is next begins, and is the one that the plan has next.
    fn begin(&mut self, chance: &mut Chance) -> Result<(), Wrong> {
        self.device
            .clock
            .wait((1 + chance.below(3) as i64) * DAY + chance.below(300) as i64 * MINUTE);
        self.device.look(at_today())?;
        let minutes = (chance.below(5) == 0).then_some(30);
        let intent = Intent::Begin { session: None, minutes, sure: false };
        let before = self.device.entries;
        match self.yes(Action::Do { intent, session: None, then: None })? {
            Ok(()) => {}
            Err(RefusalCode::SessionRunning) => {
                return self.device.tries(Intent::Finish);
            }
            // It is over, or there is none: the next one.
            Err(RefusalCode::NothingToGoBy | RefusalCode::NothingLeft) => return self.plan(chance),
            Err(_) => return Ok(()),
        }
        if self.device.entries == before {
            return Ok(());
        }
        self.device.hold(false)?;
        let (next, place) = (self.device.model.was_next(), self.device.model.place());
        match (next, place) {
            (Some((on, Some(next))), Some((plan, place))) if (on, next) != (plan, place) => {
                Err(format!("{next:?} of plan {on} is next, and {place:?} of {plan} began"))
            }
            (Some((_, None)), Some((_, place))) => {
                Err(format!("the plan is over, and {place:?} began"))
            }
            _ => Ok(()),
        }
    }

    /// Does it, and says yes where it is asked.
    fn yes(&mut self, action: Action) -> Result<Result<(), RefusalCode>, Wrong> {
        match self.device.tap(action)? {
            Ok(_) => Ok(Ok(())),
            Err(EngineError::Refused { ask: Some(yes), .. }) => match self.device.tap(yes)? {
                Ok(_) => Ok(Ok(())),
                Err(EngineError::Refused { code, .. }) => Ok(Err(code)),
                Err(other) => Err(format!("{other:?}")),
            },
            Err(EngineError::Refused { code, .. }) => Ok(Err(code)),
            Err(other) => Err(format!("{other:?}")),
        }
    }

    fn floor(&mut self) -> Result<Option<FloorScreen>, Wrong> {
        let answer = self.device.look(at_floor(None))?;
        Ok(answer.and_then(|answer| match answer.screen {
            Screen::Floor { floor } => Some(floor),
            _ => None,
        }))
    }

    /// The key that goes on.
    fn usual(&mut self, chance: &mut Chance) -> Result<Action, Wrong> {
        let key = self.floor()?.and_then(|floor| {
            let effort = floor.thumb.effort;
            let some = chance.below(effort.len() as u64) as usize;
            let effort = effort.get(some).map(|effort| effort.key.clone());
            effort.or(floor.thumb.main)
        });
        let begins = Action::Do { intent: begin(), session: None, then: None };
        Ok(key.map_or(begins, |key| key.action))
    }

    fn lift(&mut self, chance: &mut Chance) -> Result<(), Wrong> {
        let Some(floor) = self.floor()? else { return Ok(()) };
        let rest = floor.rest.as_ref().map_or(0, |rest| rest.left_ms.max(0));
        self.device.clock.wait(rest / 2 + chance.below(120_000) as i64);
        let action = self.usual(chance)?;
        if chance.below(4) == 0 {
            self.kept.push(action.clone());
        }
        match self.yes(action)? {
            Err(RefusalCode::LoadNeeded) => {
                let entry = floor.part.unwrap_or_default();
                let field = format!("load:{}", entry.split('.').next().unwrap_or_default());
                let text = ["20 kg", "21 kg", "80 kg"][chance.below(3) as usize].to_owned();
                let write = Intent::Write { field, text, sure: false };
                if self.yes(Action::Do { intent: write, session: None, then: None })?.is_err() {
                    self.device.tries(Intent::SkipSet)?;
                }
                Ok(())
            }
            Err(_) => self.device.tries(Intent::SkipSet),
            Ok(()) => Ok(()),
        }
    }

    fn finish(&mut self, chance: &mut Chance) -> Result<(), Wrong> {
        match chance.below(12) {
            // Nobody ends it.
            0 => Ok(()),
            1 => {
                self.device.tries(Intent::AllAsCalled { entry: None })?;
                self.device.tries(Intent::Finish)?;
                self.device.tries(Intent::Undo)?;
                self.device.tries(Intent::Redo)
            }
            _ => {
                self.device.tries(Intent::Finish)?;
                self.device.look(Look::Tally).map(drop)
            }
        }
    }

    /// A key of any screen, found as a shell finds it: by its action.
    fn press(&mut self, chance: &mut Chance) -> Result<(), Wrong> {
        let mut look = intents::look(chance);
        // What a key shows may have keys of its own.
        for _ in 0..3 {
            let Some(answer) = self.device.look(look.clone())? else { return Ok(()) };
            let screen = serde_json::to_value(&answer.screen).map_err(|error| error.to_string())?;
            let mut keys = Vec::new();
            find_keys(&screen, &mut keys);
            if keys.is_empty() {
                return Ok(());
            }
            let action = keys.swap_remove(chance.below(keys.len() as u64) as usize);
            if chance.below(4) == 0 {
                self.kept.push(action.clone());
            }
            match action {
                Action::Show { look: next } => look = next,
                Action::Do { intent: Intent::Demo { .. }, .. } => return Ok(()),
                action => return self.yes(action).map(drop),
            }
        }
        Ok(())
    }

    /// A key that was kept, which may be of an earlier session.
    fn stale(&mut self, chance: &mut Chance) -> Result<(), Wrong> {
        if self.kept.is_empty() {
            return Ok(());
        }
        let action = self.kept.swap_remove(chance.below(self.kept.len() as u64) as usize);
        self.device.hold(false)?;
        let now = self.device.model.session();
        let of_other = match &action {
            Action::Do { intent: Intent::Demo { .. }, .. } => return Ok(()),
            Action::Do { session, .. } => session.is_some() && *session != now,
            Action::Show { .. } => false,
        };
        let answer = self.device.tap(action.clone())?;
        if of_other && !is_stale(&answer) {
            return Err(format!(
                "{action:?} was taken, of another session than {now:?}: {answer:?}"
            ));
        }
        Ok(())
    }

    fn write(&mut self, chance: &mut Chance) -> Result<(), Wrong> {
        let field = match self.device.look(intents::look(chance))? {
            Some(answer) if chance.below(3) > 0 => {
                let screen = serde_json::to_value(&answer.screen);
                let mut fields = Vec::new();
                find_fields(&screen.map_err(|error| error.to_string())?, &mut fields);
                let some = chance.below(fields.len() as u64) as usize;
                fields.get(some).cloned()
            }
            _ => None,
        };
        let field = field.unwrap_or_else(|| intents::field(chance));
        let (text, sure) = (intents::written(chance), chance.below(2) == 0);
        self.device.tries(Intent::Write { field, text, sure })
    }

    fn plan(&mut self, chance: &mut Chance) -> Result<(), Wrong> {
        let text = plans::text(chance);
        let as_new = chance.below(3) == 0;
        let all_rows = chance.below(2) == 0;
        self.device.tries(Intent::AdoptPlan { text, from: None, as_new, all_rows })?;
        for (field, text) in
            [("body-mass", "81 kg"), ("max:back-squat", "140 kg"), ("max:deadlift", "170 kg")]
        {
            let (field, text) = (field.to_owned(), text.to_owned());
            self.device.tries(Intent::Write { field, text, sure: true })?;
        }
        Ok(())
    }

    fn set_clock(&mut self, chance: &mut Chance) -> Result<(), Wrong> {
        let was = self.device.clock.ahead;
        let by =
            [-DAY, -60 * MINUTE, -MINUTE, 90_000, 60 * MINUTE, 3 * DAY, -400 * DAY, 30_000 * DAY];
        self.device.clock.ahead += by[chance.below(by.len() as u64) as usize];
        self.device.look(at_floor(None))?;
        let action = self.usual(chance)?;
        self.device.tap(action)?.map(drop).or_else(only_refused)?;
        // Somebody sets it right, more or less.
        self.device.clock.ahead = if chance.below(2) == 0 { 0 } else { was };
        self.device.look(at_floor(None))?;
        self.device.tries(Intent::Wake)
    }

    /// A tap as they come: mostly the one that goes on.
    fn some_tap(&mut self, chance: &mut Chance) -> Result<Action, Wrong> {
        if chance.below(3) > 0 {
            return self.usual(chance);
        }
        let intent = intents::any(chance);
        Ok(Action::Do { intent, session: None, then: None })
    }

    fn cut(&mut self, power: bool, chance: &mut Chance) -> Result<(), Wrong> {
        let action = self.some_tap(chance)?;
        if power {
            // What a power cut leaves is met after the device has started again.
            self.device.cut(action, true, chance)?;
            self.device.clock.reboot();
            return self.device.tries(Intent::Wake);
        }
        self.device.cut(action, false, chance)
    }

    fn fault(&mut self, chance: &mut Chance) -> Result<(), Wrong> {
        let action = self.some_tap(chance)?;
        let calls = [Call::Open, Call::Read, Call::Write, Call::Truncate, Call::Sync, Call::Delete];
        let call = calls[chance.below(6) as usize];
        if chance.below(4) == 0 {
            let _ = self.device.engine().suspend();
        }
        let (after, times) = (chance.below(8), 1 + chance.below(3));
        self.device.disk.fail(Some(Fault { call, after, times }));
        let acted = self.device.act(action, Disks::Ill);
        self.device.disk.fail(None);
        acted?.map(drop).or_else(only_refused)?;
        self.device.is_well_again()?;
        self.device.look(at_floor(None)).map(drop)
    }

    fn full(&mut self, chance: &mut Chance) -> Result<(), Wrong> {
        let action = self.some_tap(chance)?;
        let room = chance.below(40_000) as usize;
        self.device.disk.set_capacity(Some(self.device.disk.used() + room));
        let acted = self.device.act(action, Disks::Ill);
        let looked = self.device.engine().view(at_floor(None), self.device.now());
        self.device.disk.set_capacity(None);
        acted?.map(drop).or_else(only_refused)?;
        if let Err(error @ EngineError::Storage { .. }) = looked {
            return Err(format!("a full disk is looked at: {error:?}"));
        }
        self.device.is_well_again()
    }

    fn read_only(&mut self, chance: &mut Chance) -> Result<(), Wrong> {
        let action = self.some_tap(chance)?;
        let suspended = self.device.engine().suspend();
        suspended.map_err(|error| format!("not suspended: {error:?}"))?;
        let folder = chance.below(2) == 0;
        self.device.disk.set_file_read_only(!folder);
        self.device.disk.set_folder_read_only(folder);
        let acted = self.device.act(action, Disks::Ill);
        let looked = self.device.engine().view(at_floor(None), self.device.now());
        let _ = self.device.engine().suspend();
        self.device.disk.set_file_read_only(false);
        self.device.disk.set_folder_read_only(false);
        acted?.map(drop).or_else(only_refused)?;
        if let Err(error @ EngineError::Storage { .. }) = looked {
            return Err(format!("what can't be written is looked at: {error:?}"));
        }
        self.device.is_well_again()
    }

    /// Another file of the same bytes takes the place of the open one: no tap goes into either, and
    /// all is there when it is brought back.
    fn swap(&mut self, chance: &mut Chance) -> Result<(), Wrong> {
        let action = self.some_tap(chance)?;
        // It is open.
        self.device.look(at_floor(None))?;
        let before = self.device.entries;
        let files = self.device.disk.file_system().files;
        let (own, away) = ("store".as_ref(), "away".as_ref());
        let swapped = files.rename(own, away).and_then(|()| files.copy(away, own));
        swapped.map_err(|error| error.to_string())?;
        let acted = self.device.act(action, Disks::Ill)?;
        // Where nothing was to be recorded, it may not have been noticed yet.
        let _ = self.device.engine().suspend();
        let back = files.remove(own).and_then(|()| files.rename(away, own));
        back.map_err(|error| error.to_string())?;
        acted.map(drop).or_else(only_refused)?;
        self.device.is_well_again()?;
        if self.device.entries != before {
            return Err(format!("{before} became {} in a swapped file", self.device.entries));
        }
        Ok(())
    }
}

/// What an ill disk may answer.
fn only_refused(error: EngineError) -> Result<(), Wrong> {
    match error {
        EngineError::Refused { .. } | EngineError::Storage { .. } => Ok(()),
        other => Err(format!("{other:?}")),
    }
}

/// All enabled keys of a screen.
fn find_keys(value: &Value, keys: &mut Vec<Action>) {
    match value {
        Value::Object(fields) => {
            let enabled = fields.get("enabled").and_then(Value::as_bool) == Some(true);
            if let Some(action) = fields.get("action").filter(|_| enabled) {
                keys.extend(serde_json::from_value::<Action>(action.clone()));
                return;
            }
            fields.values().for_each(|value| find_keys(value, keys));
        }
        Value::Array(values) => values.iter().for_each(|value| find_keys(value, keys)),
        _ => {}
    }
}

/// The names of all fields of a screen.
fn find_fields(value: &Value, fields: &mut Vec<String>) {
    match value {
        Value::Object(object) => {
            if object.contains_key("hint") && object.contains_key("numeric") {
                fields.extend(object.get("id").and_then(Value::as_str).map(str::to_owned));
            }
            object.values().for_each(|value| find_fields(value, fields));
        }
        Value::Array(values) => values.iter().for_each(|value| find_fields(value, fields)),
        _ => {}
    }
}
