//! From a tap to what it appends: session intents become commands, desk intents become facts.

use barwright_domain::call::{Amount, HowMany};
use barwright_domain::desk::{
    Arrangement, At, DeskEvent, DraftOf, ForOnce, MOST_FOR_ONCE, MOST_GYMS, Shared,
};
use barwright_domain::equipment::{self, Equipment, Liked, Plate, Rig};
use barwright_domain::owners::{Change, MaxOrigin, Outcome, Owner, Question, TrackId};
use barwright_domain::plan::{Plan, SetUp};
use barwright_domain::quantity::{
    Distance, Mass, MassUnit, Numerals, Reps, Reserve, Seconds, bounds,
};
use barwright_domain::session::{
    self, Command, Cursor, Ending, EntryId, Event, Guard, Kit, Reading, RecordedSet, Refusal, Run,
    SetRun, SwapCause,
};
use barwright_domain::shown::plain;
use barwright_store::Store;

use super::taken::Taking;
use super::{by_hand, codec};
use crate::contract::{
    Arrange, Edit, FormOf, GuardChoice, HowEnded, Intent, KitChoice, LayAnew, SessionChange,
    SwapReason,
};
use crate::facts::form::{BODY_MASS, FormField};
use crate::facts::{Held, LikedOf, adopted, fitted, mended, part, place};
use crate::fault::{Fault, Refused};
use crate::gather;

/// What a tap appends.
pub(super) enum Appends {
    /// Of the session.
    Session(Vec<Event>),
    /// Of the desk.
    Desk(Vec<DeskEvent>),
}

/// A tap that may be asked about, said again as meant.
pub(super) fn all_the_same(intent: &Intent) -> Option<Intent> {
    let mut again = match intent {
        Intent::ChangeLoad { .. }
        | Intent::Write { .. }
        | Intent::Correct { .. }
        | Intent::Begin { .. } => intent.clone(),
        _ => return None,
    };
    if let Intent::ChangeLoad { sure, .. }
    | Intent::Write { sure, .. }
    | Intent::Correct { sure, .. }
    | Intent::Begin { sure, .. } = &mut again
    {
        *sure = true;
    }
    Some(again)
}

/// What a tap appends.
pub(super) fn appends(
    store: &Store,
    held: &Held,
    intent: Intent,
    at: &Reading,
) -> Result<Appends, Fault> {
    Deciding { store, held, at }.appends(intent)
}

/// The command that begins a session.
pub(super) fn begin(
    store: &Store,
    held: &Held,
    session: Option<&str>,
    minutes: Option<u32>,
    at: &Reading,
) -> Result<Command, Fault> {
    let ended = held.when_next_begins(at);
    let held = ended.as_ref().unwrap_or(held);
    let place = gather::place(store, held, session)?;
    let laid_out = gather::laid_out(store, held, place, minutes, at)?;
    Ok(Command::Begin {
        sheet: laid_out.sheet,
        equipment: held.gym(),
        body_mass: held.desk.body_mass.map(|(mass, _)| mass),
        paper: None,
    })
}

/// The most weeks away at once.
const MOST_AWAY: u32 = 8;
/// Days around today that a session can be moved to.
const NEAR_DAYS: i32 = 366;
const DAY_MS: i64 = 86_400_000;
/// Days after the last session from which the clock is asked about: longer than the plan's usual
/// table of lay-offs goes. A day before it is a change of zone.
const FAR_AHEAD: i32 = 56;

/// The clock, where it is far from what the last session knew.
pub(crate) fn clock_far(held: &Held, at: &Reading) -> Option<Refused> {
    let last = held.state.run()?.day.max(held.state.run()?.seen.local_day());
    let now = at.local_day();
    let ahead = now.saturating_sub(last);
    (!(-1..=FAR_AHEAD).contains(&ahead)).then_some(Refused::ClockFar { last, now })
}

/// What a decision is made from.
struct Deciding<'a> {
    store: &'a Store,
    held: &'a Held,
    at: &'a Reading,
}

impl Deciding<'_> {
    fn refused(&self, refusal: Refusal) -> Refused {
        Refused::BySession(refusal, self.held.load_unit())
    }

    /// The decision on a command.
    fn decide(&self, command: &Command) -> Result<Appends, Fault> {
        session::decide(&self.held.state, command, self.at)
            .map(Appends::Session)
            .map_err(|refusal| self.refused(refusal).into())
    }

    /// The session and the part that is to be done now, where a name is of it.
    fn current(&self, named: Option<&str>) -> Result<(&Run, Cursor), Fault> {
        let run = self.running()?;
        let cursor = run.cursor().ok_or_else(|| self.refused(Refusal::NothingLeft))?;
        match named {
            None => Ok((run, cursor)),
            Some(name) => {
                let (part, session) = part::named(name).ok_or(Refused::Stale)?;
                let own = part == cursor && session.is_none_or(|of| of == run.session);
                if own { Ok((run, cursor)) } else { Err(Refused::Stale.into()) }
            }
        }
    }

    fn running(&self) -> Result<&Run, Fault> {
        Ok(self.held.state.running().ok_or_else(|| self.refused(Refusal::NoSession))?)
    }

    fn appends(&self, intent: Intent) -> Result<Appends, Fault> {
        let command = match intent {
            Intent::Begin { session, minutes, sure } => {
                self.none_runs()?;
                if let Some(asks) = clock_far(self.held, self.at).filter(|_| !sure) {
                    return Err(asks.into());
                }
                begin(self.store, self.held, session.as_deref(), minutes, self.at)?
            }
            Intent::EnterPaper { session, day } => {
                self.none_runs()?;
                // Laid out as it would have been on its day.
                let back = i64::from(self.at.local_day().saturating_sub(day));
                let wall_ms = self.at.wall_ms.saturating_sub(back.saturating_mul(DAY_MS));
                let then = Reading { wall_ms, ..self.at.clone() };
                let began = begin(self.store, self.held, session.as_deref(), None, &then)?;
                match began {
                    Command::Begin { sheet, equipment, body_mass, .. } => {
                        Command::Begin { sheet, equipment, body_mass, paper: Some(day) }
                    }
                    other => other,
                }
            }
            Intent::AllAsCalled { entry } => {
                Command::RecordAll(entry.map(|entry| self.entry_id(entry)).transpose()?)
            }
            Intent::DateSession { session, day } => return self.date_session(session, day),
            Intent::LayAnew { how } => return self.lay_anew(how),
            Intent::Start => Command::Start,
            Intent::TapRep { part } => {
                self.current(Some(&part))?;
                Command::TapRep
            }
            Intent::Record { part, amount, left_halves, ended, helped, last } => {
                let (run, cursor) = self.current(part.as_deref())?;
                let asked =
                    run.how_many_at(&cursor).ok_or_else(|| self.refused(Refusal::NoSuchPart))?;
                Command::Record(RecordedSet {
                    amount: amount.map(|amount| self.amount_of(&asked, amount)).transpose()?,
                    load: None,
                    left: left_halves.map(|halves| self.reserve(halves)).transpose()?,
                    ending: ending(ended),
                    helped: self.reps(helped)?,
                    last,
                })
            }
            Intent::Correct { part, amount, load, sure, left_halves, ended, helped } => {
                let no_part = || self.refused(Refusal::NoSuchPart);
                let (cursor, session) = part::named(&part).ok_or_else(no_part)?;
                let run = self.held.state.run().ok_or_else(|| self.refused(Refusal::NoSession))?;
                if session.is_some_and(|of| of != run.session) {
                    return Err(Refused::StaleSession.into());
                }
                let was = run
                    .set(cursor.set)
                    .and_then(|set| set.parts.get(usize::from(cursor.part)))
                    .ok_or_else(no_part)?;
                let amount = amount
                    .map(|amount| match was.done.amount {
                        Amount::Reps(_) => self.reps(amount).map(Amount::Reps),
                        Amount::Seconds(_) => self.seconds(amount).map(Amount::Seconds),
                        Amount::Metres(_) => self.distance(amount).map(Amount::Metres),
                    })
                    .transpose()?;
                Command::Correct {
                    set: cursor.set,
                    part: cursor.part,
                    sure,
                    to: RecordedSet {
                        amount,
                        load: load.map(|load| self.mass(&load)).transpose()?,
                        left: left_halves.map(|halves| self.reserve(halves)).transpose()?,
                        ending: ending(ended),
                        helped: self.reps(helped)?,
                        last: false,
                    },
                }
            }
            Intent::SkipSet => Command::SkipSet,
            Intent::SkipExercise { entry } => Command::SkipEntry(self.entry_id(entry)?),
            Intent::Swap { entry, exercise, why } => {
                let entry = self.entry_id(entry)?;
                let to =
                    gather::substitute(self.store, self.held, Some(entry), &exercise, self.at)?;
                let cause = match why {
                    SwapReason::Lacking => SwapCause::Lacking,
                    SwapReason::Taken => SwapCause::Taken,
                    SwapReason::Pain => SwapCause::Pain,
                    SwapReason::Wish => SwapCause::Wish,
                };
                Command::Swap { entry, to, cause }
            }
            Intent::AddExercise { exercise } => {
                let entry = gather::substitute(self.store, self.held, None, &exercise, self.at)?;
                Command::AddEntry(entry)
            }
            Intent::Postpone { entry } => Command::Postpone(self.entry_id(entry)?),
            Intent::TakeUp { entry } => Command::Return(self.entry_id(entry)?),
            Intent::AddSet { entry } => Command::AddSet(self.entry_id(entry)?),
            Intent::ChangeLoad { entry, load, only_next, sure } => Command::ChangeLoad {
                entry: self.entry_id(entry)?,
                load: self.mass(&load)?,
                only_next,
                sure,
            },
            Intent::BarHolds { side } => Command::BarHolds(self.rig_of(&side)?),
            Intent::RestBy { seconds } => Command::RestBy(seconds),
            Intent::GuardedBy { entry, guard } => Command::GuardedBy {
                entry: self.entry_id(entry)?,
                guard: match guard {
                    GuardChoice::Pins => Guard::Pins,
                    GuardChoice::Spotter => Guard::Spotter,
                    GuardChoice::Neither => Guard::Neither,
                },
            },
            Intent::UseKit { entry, kit } => Command::UseKit {
                entry: self.entry_id(entry)?,
                kit: kit
                    .into_iter()
                    .map(|kit| match kit {
                        KitChoice::Belt => Kit::Belt,
                        KitChoice::Wraps => Kit::Wraps,
                        KitChoice::Straps => Kit::Straps,
                        KitChoice::Sleeves => Kit::Sleeves,
                    })
                    .collect(),
            },
            Intent::Write { field, text, sure } => return self.write(&field, &text, sure),
            Intent::Pause => Command::Pause,
            Intent::Resume => Command::Resume,
            Intent::Finish => Command::Finish,
            Intent::HoldBack { owner, held } => {
                let owner = Owner::of_name(&owner).ok_or(Refused::NotHere)?;
                Command::HoldBack { owner, held }
            }
            Intent::Accept { owner } => return self.accept(&owner),
            Intent::AnswerPain { exercise, free } => Command::AnswerPain { exercise, free },
            Intent::PainOfJoint { exercise, of_joint } => {
                Command::PainOfJoint { exercise, of_joint }
            }
            Intent::WasIll => {
                return Ok(Appends::Desk(vec![DeskEvent::WasIll { day: self.at.local_day() }]));
            }
            Intent::Minor { under_18, coached } => {
                let coached = (under_18 && coached).then(|| self.at.local_day());
                return Ok(Appends::Desk(vec![DeskEvent::Minor { under_18, coached }]));
            }
            Intent::Undo => Command::Undo,
            Intent::Redo => Command::Redo,
            Intent::Wake => Command::Wake,
            Intent::AdoptPlan { text, from, as_new, all_rows } => {
                return self.adopt(text, from.as_deref(), as_new, all_rows);
            }
            Intent::Arrange { session, how } => return self.arrange(&session, &how),
            Intent::TakeUpPlan { plan } => return self.take_up(&plan),
            Intent::AddGym { text } => return self.add_gym(text),
            Intent::Edit { of: FormOf::Liked, place, edit, .. } => {
                return self.like(&place, &edit);
            }
            Intent::Edit { of: FormOf::Changes, place, edit: Edit::Put { text }, .. } => {
                return self.take_sent(&text, &place);
            }
            // The engine turns to another store; what is here has nothing to decide.
            Intent::Demo { .. } => return Err(Refused::NotHere.into()),
            Intent::Edit { of, place, edit, step } => {
                let events = by_hand::edited(self.held, of, &place, &edit, step)?;
                return Ok(Appends::Desk(events));
            }
            Intent::ChooseGym { name } => {
                let mut gyms = self.held.desk.gyms.iter().chain(equipment::builtin());
                if !gyms.any(|gym| gym.name == name) {
                    return Err(Refused::NotHere.into());
                }
                return Ok(Appends::Desk(vec![DeskEvent::GymChosen { name }]));
            }
        };
        self.decide(&command)
    }

    /// What is written into a field.
    fn write(&self, field: &str, text: &str, sure: bool) -> Result<Appends, Fault> {
        if let Some(field) = FormField::named(field) {
            if field.place == BODY_MASS {
                return self.write(BODY_MASS, text, sure);
            }
            return Ok(Appends::Desk(by_hand::write(self.held, &field, text)?));
        }
        let (name, session) = part::of_session(field);
        if session.is_some() && session != self.held.state.run().map(|run| run.session) {
            return Err(Refused::StaleSession.into());
        }
        let (name, of) = name.split_once(':').unwrap_or((name, ""));
        let day = self.at.local_day();
        match name {
            // What is looked for shows, and records nothing.
            "find-swap" | "find-swap-pain" | "find-add" => {
                self.running()?;
                Ok(Appends::Session(Vec::new()))
            }
            "note" => {
                let entry = match of {
                    "" => None,
                    of => Some(self.entry_named(of)?),
                };
                self.decide(&Command::Note { entry, text: plain(text) })
            }
            "set-up" => {
                let set_up = text.split([';', '\n']).map(|line| self.kept(&plain(line.trim())));
                let set_up = set_up.filter(|line| !line.is_empty()).collect();
                self.decide(&Command::NoteSetUp { entry: self.entry_named(of)?, set_up })
            }
            "load" => {
                let load = self.typed_mass(text, self.held.load_unit())?;
                let entry = self.entry_named(of)?;
                self.decide(&Command::ChangeLoad { entry, load, only_next: false, sure })
            }
            // More than the body, typed as all that is moved.
            "all" => {
                let all = self.typed_mass(text, self.held.load_unit())?;
                let entry = self.entry_named(of)?;
                let run = self.running()?;
                let loads = run.entries.get(&entry).into_iter().flat_map(|entry| &entry.sets);
                let body = loads
                    .filter_map(SetRun::first_load)
                    .find_map(|load| load.moved()?.checked_sub(load.figure?));
                let load = body.and_then(|body| all.checked_sub(body)).ok_or(Refused::NotHere)?;
                self.decide(&Command::ChangeLoad { entry, load, only_next: false, sure })
            }
            "pin" => {
                let pin = text.to_owned();
                self.decide(&Command::ChoosePin { entry: self.entry_named(of)?, pin })
            }
            BODY_MASS => {
                let mass = self.typed_mass(text, self.held.locale.unit)?;
                let (least, greatest) =
                    (Mass::whole(20, MassUnit::Kilogram), Mass::whole(400, MassUnit::Kilogram));
                if mass < least || mass > greatest {
                    return Err(self.refused(Refusal::OutOfRange).into());
                }
                Ok(Appends::Desk(vec![DeskEvent::BodyMassKept { mass, day }]))
            }
            "max" => {
                let found = self.held.catalogue.find(of).ok_or(Refused::NotHere)?;
                let mass = self.typed_mass(text, self.held.load_unit())?;
                if mass <= Mass::ZERO {
                    return Err(self.refused(Refusal::OutOfRange).into());
                }
                let owner = Owner::Max(found.slug.to_string());
                let changes = vec![Change::Max { mass, origin: MaxOrigin::Entered }];
                Ok(Appends::Desk(vec![DeskEvent::Said { owner, changes, day }]))
            }
            "working" => {
                let owner = Owner::of_name(of).ok_or(Refused::NotHere)?;
                let load = self.typed_mass(text, self.held.load_unit())?;
                Ok(Appends::Desk(vec![self.carries(owner, load)?]))
            }
            _ => Err(Refused::NotHere.into()),
        }
    }

    /// A track carries this from now on, said by a person.
    fn carries(&self, owner: Owner, load: Mass) -> Result<DeskEvent, Fault> {
        let track = self.held.desk.owners.track(&owner);
        let (counting, asked) = track.counting.zip(track.asked).ok_or(Refused::NotHere)?;
        let changes = vec![Change::Load { load, counting, asked }];
        Ok(DeskEvent::Said { owner, changes, day: self.at.local_day() })
    }

    /// Yes to what the last session asks of an owner.
    fn accept(&self, owner: &str) -> Result<Appends, Fault> {
        let (held, day) = (self.held, self.at.local_day());
        let owner = Owner::of_name(owner).ok_or(Refused::NotHere)?;
        let run = held.state.run().ok_or_else(|| self.refused(Refusal::NoSession))?;
        let word = held.desk.owners.account(&owner).and_then(|account| account.words().last());
        let word = word.filter(|word| word.session == Some(run.session)).ok_or(Refused::NotHere)?;
        let Outcome { proposal: Some(proposal), held: false, .. } = &word.outcome else {
            return Err(Refused::NotHere.into());
        };
        let track = held.desk.owners.track(&owner);
        let event = match (proposal.question, proposal.to) {
            (Question::Test, Some(mass)) => {
                let changes = vec![Change::Max { mass, origin: MaxOrigin::Tested }];
                DeskEvent::Said { owner, changes, day }
            }
            (Question::OwnTrack(row), to) => {
                let load = to.or(track.load);
                let load = load.zip(track.counting).zip(track.asked);
                let load =
                    load.map(|((load, counting), asked)| Change::Load { load, counting, asked });
                let changes = std::iter::once(Change::Fresh).chain(load).collect();
                let track = TrackId(held.desk.next_track.saturating_add(1));
                DeskEvent::TrackParted { row, track, changes, day }
            }
            (Question::Jump | Question::WellOff | Question::Missed, Some(load)) => {
                self.carries(owner, load)?
            }
            (Question::Jump | Question::WellOff | Question::Missed | Question::Test, None) => {
                return Err(Refused::NotHere.into());
            }
        };
        Ok(Appends::Desk(vec![event]))
    }

    /// A plan read from a file: the one that is on, mended, where it has its name.
    fn adopt(
        &self,
        text: String,
        from: Option<&str>,
        as_new: bool,
        all_rows: bool,
    ) -> Result<Appends, Fault> {
        let plan = Plan::read(&text, &self.held.known)
            .map_err(|faults| Refused::Faults(faults.len()))?
            .plan;
        if self.held.state.running().is_some() {
            return Err(self.refused(Refusal::SessionRunning).into());
        }
        let made = text.clone();
        let day = self.at.local_day();
        let from = from.map(|row| place::named(row).ok_or(Refused::NotHere)).transpose()?;
        if from.is_some_and(|at| !place::is_in(&plan, at)) {
            return Err(Refused::NotHere.into());
        }
        let shared = if all_rows { Shared::All } else { Shared::ThisOne };
        let before = mended(self.held, &plan, as_new);
        let found = adopted(self.held, &plan, before, shared);
        let (rows, said) = (found.rows, found.said);
        let (seq, event) = match (before, &self.held.desk.plan) {
            (Some(_), Some(on)) => {
                let plan = on.seq;
                (plan, DeskEvent::PlanMended { plan, text, day, rows, said })
            }
            _ => {
                let name = plan.name.clone();
                (self.store.next_seq(), DeskEvent::PlanAdopted { text, name, day, rows, said })
            }
        };
        let entered = from.map(|at| {
            let what = Arrangement::Entered { at, day };
            DeskEvent::Arranged { plan: seq, what }
        });
        // What was made by hand is taken up with it.
        let of = DraftOf::Plan;
        let made = self.held.desk.drafts.get(&of).is_some_and(|draft| draft.text == made);
        let dropped = made.then_some(DeskEvent::DraftDropped { of });
        Ok(Appends::Desk(std::iter::once(event).chain(entered).chain(dropped).collect()))
    }

    /// What a coach sent: all that fit, or the one that is named.
    fn take_sent(&self, text: &str, which: &str) -> Result<Appends, Fault> {
        let file = gather::sent_file(self.store, self.held, text)?;
        let file = file.map_err(|faults| Refused::Faults(faults.len()))?;
        if self.held.state.running().is_some() {
            return Err(self.refused(Refusal::SessionRunning).into());
        }
        let taking = Taking { held: self.held, file: &file, day: self.at.local_day() };
        let chosen = taking.chosen(which)?;
        let mut events = match taking.plan(&chosen)? {
            Some(text) => match self.adopt(text, None, false, false)? {
                Appends::Desk(events) => events,
                session @ Appends::Session(_) => return Ok(session),
            },
            None => Vec::new(),
        };
        events.extend(taking.events(&chosen)?);
        Ok(Appends::Desk(events))
    }

    fn arrange(&self, session: &str, how: &Arrange) -> Result<Appends, Fault> {
        let adopted = self.held.desk.plan.as_ref().map(|plan| plan.seq);
        let plan = adopted.ok_or(Refused::NothingToGoBy)?;
        let place_of = |name: &str| gather::place(self.store, self.held, Some(name));
        let here = place_of(session)?;
        let today = self.at.local_day();
        let what = match how {
            Arrange::Enter => Arrangement::Entered { at: here, day: today },
            Arrange::LeaveOut { left_out } => {
                Arrangement::LeftOut { at: here, left_out: *left_out }
            }
            Arrange::Move { day: Some(day) } if day.abs_diff(today) > NEAR_DAYS.unsigned_abs() => {
                return Err(self.refused(Refusal::OutOfRange).into());
            }
            Arrange::Move { day } => Arrangement::Moved { at: here, day: *day },
            Arrange::Join { with } => {
                let other = with.as_deref().map(place_of).transpose()?;
                let arranged = self.held.desk.arranged();
                // A session that is itself joined to one takes no other, nor itself.
                let chained = |other: At| {
                    other == here
                        || arranged.with.iter().any(|(at, to, _)| *at == other || *to == here)
                };
                if other.is_some_and(chained) {
                    return Err(Refused::NotHere.into());
                }
                Arrangement::With { at: here, other }
            }
            Arrange::Again { again } => Arrangement::Again { at: here, again: *again },
            Arrange::Change { change } => {
                let changes = self.changed_for_once(here, change)?;
                Arrangement::ForOnce { at: here, changes }
            }
            Arrange::Travel { weeks } => {
                let few = u16::try_from(*weeks).ok().filter(|_| *weeks <= MOST_AWAY);
                let weeks = few.ok_or_else(|| self.refused(Refusal::OutOfRange))?;
                Arrangement::Travel { week: here.week, weeks }
            }
        };
        Ok(Appends::Desk(vec![DeskEvent::Arranged { plan, what }]))
    }

    /// Which loads are liked: "gym:Boathouse/step".
    fn like(&self, place: &str, edit: &Edit) -> Result<Appends, Fault> {
        let (of, what) = place.rsplit_once('/').ok_or(Refused::NotHere)?;
        let (of, Edit::Put { text }) = (LikedOf::named(of).ok_or(Refused::NotHere)?, edit) else {
            return Err(Refused::NotHere.into());
        };
        let mass = if text.is_empty() { None } else { Some(self.mass(text)?) };
        if mass.is_some_and(|mass| mass <= Mass::ZERO) {
            return Err(self.refused(Refusal::OutOfRange).into());
        }
        let stands = of.stands(self.held);
        let liked = match what {
            "step" => Liked { step: mass, ..stands },
            "smallest" => Liked { smallest: mass, ..stands },
            _ => return Err(Refused::NotHere.into()),
        };
        let (lift, gym) = match of {
            LikedOf::Gym(name) => (None, Some(name)),
            LikedOf::Lift(slug) => (Some(slug), None),
        };
        Ok(Appends::Desk(vec![DeskEvent::LoadsLiked { lift, gym, liked }]))
    }

    /// A line of what is set up as it is kept: by the key that a plan file has for it.
    fn kept(&self, line: &str) -> String {
        let words = self.held.locale.words().words();
        let same = |key: &&str| {
            let word = line.split(' ').next().unwrap_or_default();
            words.part_set_up(key).is_some_and(|said| said.to_lowercase() == word.to_lowercase())
        };
        match (SetUp::KEYS.into_iter().find(same), line.split_once(' ')) {
            (Some(key), Some((_, how))) => format!("{key} {how}"),
            _ => line.to_owned(),
        }
    }

    /// Nothing runs, or what runs was left open.
    fn none_runs(&self) -> Result<(), Fault> {
        let running = self.held.state.running();
        if running.is_some_and(|run| session::abandoned(run, self.at).is_none()) {
            return Err(self.refused(Refusal::SessionRunning).into());
        }
        Ok(())
    }

    /// A session is of another date. The last one says so itself, and can be undone.
    fn date_session(&self, session: Option<u64>, day: i32) -> Result<Appends, Fault> {
        let last = self.held.state.run().map(|run| run.session);
        let Some(session) = session.filter(|session| last != Some(*session)) else {
            return self.decide(&Command::Date(day));
        };
        let row = self.store.history()?.session(session)?.ok_or(Refused::NotHere)?;
        if row.day == day {
            return Err(self.refused(Refusal::AlreadySo).into());
        }
        if !(0..=2 * NEAR_DAYS).contains(&self.at.local_day().saturating_sub(day)) {
            return Err(self.refused(Refusal::OutOfRange).into());
        }
        Ok(Appends::Desk(vec![DeskEvent::SessionDated { session, day }]))
    }

    /// The rest of the plan laid anew, or as it was before that.
    fn lay_anew(&self, how: Option<LayAnew>) -> Result<Appends, Fault> {
        let on = self.held.desk.plan.as_ref().ok_or(Refused::NothingToGoBy)?;
        let arranged = self.held.desk.arranged();
        let to = match how {
            Some(how) => gather::anew(self.store, self.held, how, self.at)?.dates,
            None => arranged.back.clone(),
        };
        if to.is_empty() {
            return Err(self.refused(Refusal::AlreadySo).into());
        }
        let back = how.map(|_| arranged.standing(&to)).unwrap_or_default();
        let what = Arrangement::LaidAnew { to, back };
        Ok(Appends::Desk(vec![DeskEvent::Arranged { plan: on.seq, what }]))
    }

    /// What is changed in a session for once, with this.
    fn changed_for_once(&self, at: At, change: &SessionChange) -> Result<Vec<ForOnce>, Fault> {
        let mut changes = self.held.desk.arranged().changes_of(at).to_vec();
        let known = |slug: &String| {
            let found = self.held.catalogue.get(slug).map(|found| found.slug.to_string());
            found.ok_or(Refused::NotHere)
        };
        match change {
            SessionChange::Instead { of, exercise } => {
                changes.push(ForOnce::Instead { of: of.clone(), exercise: known(exercise)? });
            }
            SessionChange::Add { exercise } => {
                changes.push(ForOnce::Added { exercise: known(exercise)? });
            }
            SessionChange::Leave { exercise } => {
                changes.push(ForOnce::LeftOut { exercise: exercise.clone() });
            }
            SessionChange::Earlier { exercise } => {
                changes.push(ForOnce::Earlier { exercise: exercise.clone() });
            }
            SessionChange::Fit => {
                let laid_out = gather::laid_out(self.store, self.held, at, None, self.at)?;
                changes.extend(fitted(self.held, &laid_out.sheet));
            }
            SessionChange::Back => {
                changes.pop();
            }
            SessionChange::AsPlanned => changes.clear(),
        }
        if changes.len() > MOST_FOR_ONCE {
            return Err(self.refused(Refusal::TooMany).into());
        }
        Ok(changes)
    }

    /// A plan that was kept goes on where it stood, its dates from today.
    fn take_up(&self, plan: &str) -> Result<Appends, Fault> {
        let Self { store, held, at } = self;
        if held.state.running().is_some() {
            return Err(self.refused(Refusal::SessionRunning).into());
        }
        let seq: u64 = plan.parse().map_err(|_| Refused::NotHere)?;
        let kept = held.desk.kept.iter().find(|kept| kept.seq == seq).ok_or(Refused::NotHere)?;
        let event = codec::desk(&store.event(kept.text_seq)?.ok_or(Refused::NotHere)?);
        let event = event.map_err(|_| Fault::UnreadableEvent(kept.text_seq))?;
        let (DeskEvent::PlanAdopted { text, .. } | DeskEvent::PlanMended { text, .. }) = event
        else {
            return Err(Refused::NotHere.into());
        };
        let (name, day) = (kept.name.clone(), kept.day);
        let file =
            Plan::read(&text, &held.known).map_err(|faults| Refused::Faults(faults.len()))?;
        let next = gather::calendar_of(store, held, seq, day, &file.plan)?.next;
        let mut events = vec![DeskEvent::PlanTakenUp { plan: seq, text, name, day }];
        events.extend(next.map(|next| DeskEvent::Arranged {
            plan: seq,
            what: Arrangement::Entered { at: next, day: at.local_day() },
        }));
        Ok(Appends::Desk(events))
    }

    fn add_gym(&self, text: String) -> Result<Appends, Fault> {
        let equipment = Equipment::read(&text).map_err(|faults| Refused::Faults(faults.len()))?;
        if self.held.desk.gyms.len() >= MOST_GYMS
            && self.held.desk.gyms.iter().all(|gym| gym.name != equipment.name)
        {
            return Err(self.refused(Refusal::TooMany).into());
        }
        Ok(Appends::Desk(vec![DeskEvent::GymKept { equipment, text }]))
    }

    fn amount_of(&self, asked: &HowMany, amount: u32) -> Result<Amount, Fault> {
        match asked {
            HowMany::Reps(_) | HowMany::Open { .. } => self.reps(amount).map(Amount::Reps),
            HowMany::Seconds(_) => self.seconds(amount).map(Amount::Seconds),
            HowMany::Metres(_) => self.distance(amount).map(Amount::Metres),
        }
    }

    fn reps(&self, amount: u32) -> Result<Reps, Fault> {
        Reps::try_from(amount)
            .ok()
            .filter(|reps| bounds::REPS.holds(i128::from(*reps)))
            .ok_or_else(|| self.refused(Refusal::OutOfRange).into())
    }

    fn seconds(&self, amount: u32) -> Result<Seconds, Fault> {
        if bounds::SECONDS.holds(i128::from(amount)) {
            Ok(Seconds::new(amount))
        } else {
            Err(self.refused(Refusal::OutOfRange).into())
        }
    }

    fn distance(&self, amount: u32) -> Result<Distance, Fault> {
        if bounds::DISTANCE.holds(i128::from(amount)) {
            Ok(Distance::from_millimetres(amount))
        } else {
            Err(self.refused(Refusal::OutOfRange).into())
        }
    }

    fn reserve(&self, halves: u8) -> Result<Reserve, Fault> {
        Reserve::from_halves(halves).ok_or_else(|| self.refused(Refusal::OutOfRange).into())
    }

    fn entry_id(&self, entry: u32) -> Result<EntryId, Fault> {
        u16::try_from(entry).map(EntryId).map_err(|_| self.refused(Refusal::NoSuchEntry).into())
    }

    fn entry_named(&self, name: &str) -> Result<EntryId, Fault> {
        name.parse().map(EntryId).map_err(|_| self.refused(Refusal::NoSuchEntry).into())
    }

    /// A figure in exact kilograms, as keys carry it, or with its unit, as people write it.
    fn mass(&self, text: &str) -> Result<Mass, Fault> {
        let bare = text.trim_start_matches('-').chars().all(|c| c.is_ascii_digit() || c == '.');
        let read = if bare {
            Mass::read(&format!("{text} kg"), Numerals::Point)
        } else {
            Mass::read(text, self.held.locale.numerals)
        };
        read.map_err(|unreadable| Refused::Unreadable(unreadable).into())
    }

    /// A mass that a person typed: without a unit it is in the one that is shown.
    fn typed_mass(&self, text: &str, unit: MassUnit) -> Result<Mass, Fault> {
        let read = self.held.locale.typed_mass(text, unit);
        read.map(|(mass, _)| mass).map_err(|unreadable| Refused::Unreadable(unreadable).into())
    }

    /// The rig of plates by their labels, on what the current exercise is loaded with.
    fn rig_of(&self, side: &[String]) -> Result<Rig, Fault> {
        let refused = |refusal: Refusal| self.refused(refusal);
        let (run, cursor) = self.current(None)?;
        let called = run
            .load_at(&cursor)
            .map(|load| load.rig.clone())
            .or_else(|| run.on.clone())
            .ok_or_else(|| refused(Refusal::LoadNeeded))?;
        if side.len() > 40 {
            return Err(refused(Refusal::TooMany).into());
        }
        let plates = side
            .iter()
            .map(|label| {
                run.equipment
                    .plates
                    .iter()
                    .find(|stock| stock.label == *label)
                    .map(|stock| Plate { label: stock.label.clone(), mass: stock.mass })
                    .ok_or(Refused::NotHere)
            })
            .collect::<Result<Vec<_>, _>>()?;
        match called {
            Rig::Bar { bar, bar_mass, collars, .. } => {
                Ok(Rig::Bar { bar, bar_mass, collars, side: plates })
            }
            Rig::Posts { machine, start, posts, .. } => {
                Ok(Rig::Posts { machine, start, posts, plates })
            }
            Rig::Hung { .. } => Ok(Rig::Hung { plates }),
            Rig::Dumbbells { .. } | Rig::Stack { .. } | Rig::Said | Rig::Body => {
                Err(refused(Refusal::WrongKind).into())
            }
        }
    }
}

fn ending(ended: HowEnded) -> Ending {
    match ended {
        HowEnded::AsCalled => Ending::AsCalled,
        HowEnded::Failed => Ending::Failed,
        HowEnded::Form => Ending::Form,
        HowEnded::Pain => Ending::Pain,
        HowEnded::Interrupted => Ending::Interrupted,
        HowEnded::Equipment => Ending::Equipment,
    }
}
