//! From a tap to what it appends: session intents become commands, desk intents become facts.

mod gym;
mod plan;
mod typed;
mod write;

use barwright_domain::call::Amount;
use barwright_domain::desk::DeskEvent;
use barwright_domain::equipment::{self};
use barwright_domain::owners::Owner;
use barwright_domain::session::{
    self, Command, Cursor, Ending, Event, Guard, Kit, Reading, RecordedSet, Refusal, Run, SwapCause,
};
use barwright_store::Store;

use super::by_hand;
use crate::contract::{Edit, FormOf, GuardChoice, HowEnded, Intent, KitChoice, SwapReason};
use crate::facts::{Held, part};
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
