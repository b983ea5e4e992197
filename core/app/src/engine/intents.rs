//! From a tap to what it appends: session intents become commands, desk intents become facts.

use barwright_domain::call::{Amount, HowMany};
use barwright_domain::desk::{Arrangement, At, DeskEvent, MOST_GYMS, MaxFact, MaxOrigin};
use barwright_domain::equipment::{self, Equipment, Plate, Rig};
use barwright_domain::plan::Plan;
use barwright_domain::quantity::{
    Distance, Mass, MassUnit, Numerals, Reps, Reserve, Seconds, bounds,
};
use barwright_domain::session::{
    Command, Cursor, Ending, EntryId, Guard, Kit, Reading, RecordedSet, Refusal, SetId, SwapCause,
};

use super::codec;
use super::core::{Core, Facts};
use crate::contract::{
    Arrange, EngineError, GuardChoice, HowEnded, Intent, KitChoice, RefusalCode, SwapReason,
};
use crate::phrase::en;
use crate::today;

/// What a tap appends.
pub(super) fn facts(core: &Core, intent: Intent, at: &Reading) -> Result<Facts, EngineError> {
    let refused = |refusal: Refusal| en::refusal::of(&refusal, core);
    let command = match intent {
        Intent::Begin { session, minutes } => {
            if core.state.running().is_some() {
                return Err(refused(Refusal::SessionRunning));
            }
            today::begin(core, session.as_deref(), minutes, at)?
        }
        Intent::Start => Command::Start,
        Intent::TapRep { part } => {
            let cursor = core.state.running().and_then(barwright_domain::session::Run::cursor);
            if cursor.is_some_and(|cursor| part != part_name(&cursor)) {
                return Err(en::refusal::coded(RefusalCode::Stale));
            }
            Command::TapRep
        }
        Intent::Record { part, amount, left_halves, ended, helped, last } => {
            let run = core.state.running().ok_or_else(|| refused(Refusal::NoSession))?;
            let cursor = run.cursor().ok_or_else(|| refused(Refusal::NothingLeft))?;
            if part.is_some_and(|part| part != part_name(&cursor)) {
                return Err(en::refusal::coded(RefusalCode::Stale));
            }
            let asked = run.how_many_at(&cursor).ok_or_else(|| refused(Refusal::NoSuchPart))?;
            Command::Record(RecordedSet {
                amount: amount.map(|amount| amount_of(&asked, amount, core)).transpose()?,
                load: None,
                left: left_halves.map(|halves| reserve(halves, core)).transpose()?,
                ending: ending(ended),
                helped: reps(helped, core)?,
                last,
            })
        }
        Intent::Correct { part, amount, load, left_halves, ended, helped } => {
            let cursor = cursor_of(&part).ok_or_else(|| refused(Refusal::NoSuchPart))?;
            let run = core.state.run().ok_or_else(|| refused(Refusal::NoSession))?;
            let was = run
                .set(cursor.set)
                .and_then(|set| set.parts.get(usize::from(cursor.part)))
                .ok_or_else(|| refused(Refusal::NoSuchPart))?;
            let amount = amount
                .map(|amount| match was.done.amount {
                    Amount::Reps(_) => reps(amount, core).map(Amount::Reps),
                    Amount::Seconds(_) => seconds(amount, core).map(Amount::Seconds),
                    Amount::Metres(_) => distance(amount, core).map(Amount::Metres),
                })
                .transpose()?;
            Command::Correct {
                set: cursor.set,
                part: cursor.part,
                to: RecordedSet {
                    amount,
                    load: load.map(|load| mass(&load, core)).transpose()?,
                    left: left_halves.map(|halves| reserve(halves, core)).transpose()?,
                    ending: ending(ended),
                    helped: reps(helped, core)?,
                    last: false,
                },
            }
        }
        Intent::SkipSet => Command::SkipSet,
        Intent::SkipExercise { entry } => Command::SkipEntry(entry_id(entry, core)?),
        Intent::Swap { entry, exercise, why } => {
            let entry = entry_id(entry, core)?;
            let to = today::substitute(core, entry, &exercise, at)?;
            let cause = match why {
                SwapReason::Lacking => SwapCause::Lacking,
                SwapReason::Taken => SwapCause::Taken,
                SwapReason::Pain => SwapCause::Pain,
                SwapReason::Wish => SwapCause::Wish,
            };
            Command::Swap { entry, to, cause }
        }
        Intent::Postpone { entry } => Command::Postpone(entry_id(entry, core)?),
        Intent::TakeUp { entry } => Command::Return(entry_id(entry, core)?),
        Intent::AddSet { entry } => Command::AddSet(entry_id(entry, core)?),
        Intent::ChangeLoad { entry, load, only_next, sure } => Command::ChangeLoad {
            entry: entry_id(entry, core)?,
            load: mass(&load, core)?,
            only_next,
            sure,
        },
        Intent::BarHolds { side } => Command::BarHolds(rig_of(core, &side)?),
        Intent::RestBy { seconds } => Command::RestBy(seconds),
        Intent::GuardedBy { entry, guard } => Command::GuardedBy {
            entry: entry_id(entry, core)?,
            guard: match guard {
                GuardChoice::Pins => Guard::Pins,
                GuardChoice::Spotter => Guard::Spotter,
                GuardChoice::Neither => Guard::Neither,
            },
        },
        Intent::UseKit { entry, kit } => Command::UseKit {
            entry: entry_id(entry, core)?,
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
        Intent::Write { field, text, sure } => return write(core, &field, &text, sure, at),
        Intent::Pause => Command::Pause,
        Intent::Resume => Command::Resume,
        Intent::Finish => Command::Finish,
        Intent::HoldBack { exercise, held } => Command::HoldBack { exercise, held },
        Intent::Undo => Command::Undo,
        Intent::Redo => Command::Redo,
        Intent::Wake => Command::Wake,
        Intent::AdoptPlan { text } => return adopt(core, text, at),
        Intent::Arrange { session, how } => return arrange(core, &session, &how, at),
        Intent::TakeUpPlan { plan } => return take_up(core, &plan, at),
        Intent::AddGym { text } => return add_gym(core, &text),
        Intent::ChooseGym { name } => {
            let known =
                core.desk.gyms.iter().chain(&equipment::builtin()).any(|gym| gym.name == name);
            if !known {
                return Err(en::refusal::coded(RefusalCode::NotHere));
            }
            return Ok(Facts::Desk(vec![DeskEvent::GymChosen { name }]));
        }
    };
    core.decide(&command, at)
}

/// The name of a part, as the floor names it.
pub(crate) fn part_name(cursor: &Cursor) -> String {
    format!("{}.{}.{}", cursor.set.entry.0, cursor.set.set, cursor.part)
}

/// The part of a name.
pub(crate) fn cursor_of(name: &str) -> Option<Cursor> {
    let mut numbers = name.split('.').map(|number| number.parse::<u16>().ok());
    let (entry, set, part) = (numbers.next()??, numbers.next()??, numbers.next()??);
    let set = SetId { entry: EntryId(entry), set };
    numbers.next().is_none().then_some(Cursor { set, part })
}

/// What is written into a field.
fn write(
    core: &Core,
    field: &str,
    text: &str,
    sure: bool,
    at: &Reading,
) -> Result<Facts, EngineError> {
    let (name, of) = field.split_once(':').unwrap_or((field, ""));
    let day = at.local_day();
    match name {
        "note" => {
            let entry = match of {
                "" => None,
                of => Some(entry_named(of, core)?),
            };
            core.decide(&Command::Note { entry, text: text.to_owned() }, at)
        }
        "set-up" => {
            let set_up = text.split([';', '\n']).map(|line| line.trim().to_owned());
            let set_up = set_up.filter(|line| !line.is_empty()).collect();
            core.decide(&Command::NoteSetUp { entry: entry_named(of, core)?, set_up }, at)
        }
        "load" => {
            let (entry, load) = (entry_named(of, core)?, typed_mass(text, core.load_unit(), core)?);
            let command = Command::ChangeLoad { entry, load, only_next: false, sure };
            core.decide(&command, at)
        }
        "pin" => {
            let command =
                Command::ChoosePin { entry: entry_named(of, core)?, pin: text.to_owned() };
            core.decide(&command, at)
        }
        "body-mass" => {
            let mass = typed_mass(text, core.locale.unit, core)?;
            let (least, greatest) =
                (Mass::whole(20, MassUnit::Kilogram), Mass::whole(400, MassUnit::Kilogram));
            if mass < least || mass > greatest {
                return Err(en::refusal::of(&Refusal::OutOfRange, core));
            }
            Ok(Facts::Desk(vec![DeskEvent::BodyMassKept { mass, day }]))
        }
        "max" => {
            let exercise = core
                .catalogue
                .find(of)
                .ok_or_else(|| en::refusal::coded(RefusalCode::NotHere))?
                .slug
                .to_string();
            let mass = typed_mass(text, core.load_unit(), core)?;
            if mass <= Mass::ZERO {
                return Err(en::refusal::of(&Refusal::OutOfRange, core));
            }
            let fact = MaxFact { mass, day, origin: MaxOrigin::Entered };
            Ok(Facts::Desk(vec![DeskEvent::MaxKept { exercise, fact }]))
        }
        _ => Err(en::refusal::coded(RefusalCode::NotHere)),
    }
}

fn adopt(core: &Core, text: String, at: &Reading) -> Result<Facts, EngineError> {
    let file = Plan::read(&text, &barwright_domain::catalogue::Catalogue::builtin());
    match file {
        Ok(_) if core.state.running().is_some() => {
            Err(en::refusal::of(&Refusal::SessionRunning, core))
        }
        Ok(_) => Ok(Facts::Desk(vec![DeskEvent::PlanAdopted { text, day: at.local_day() }])),
        Err(faults) => Err(en::faults::refused(faults.len())),
    }
}

/// The most weeks away at once.
const MOST_AWAY: u32 = 8;
/// Days around today that a session can be moved to.
const NEAR_DAYS: i32 = 366;

fn arrange(core: &Core, session: &str, how: &Arrange, at: &Reading) -> Result<Facts, EngineError> {
    let adopted = core.desk.plan.as_ref().map(|plan| plan.seq);
    let plan = adopted.ok_or_else(|| en::refusal::coded(RefusalCode::NothingToGoBy))?;
    let place = |name: &str| {
        let place = today::place(core, Some(name))?;
        place.at().ok_or_else(|| en::refusal::coded(RefusalCode::NotHere))
    };
    let here = place(session)?;
    let today = at.local_day();
    let what = match how {
        Arrange::Enter => Arrangement::Entered { at: here, day: today },
        Arrange::LeaveOut { left_out } => Arrangement::LeftOut { at: here, left_out: *left_out },
        Arrange::Move { day: Some(day) } if day.abs_diff(today) > NEAR_DAYS.unsigned_abs() => {
            return Err(en::refusal::of(&Refusal::OutOfRange, core));
        }
        Arrange::Move { day } => Arrangement::Moved { at: here, day: *day },
        Arrange::Join { with } => {
            let other = with.as_deref().map(place).transpose()?;
            let arranged = core.desk.arranged();
            // A session that is itself joined to one takes no other, nor itself.
            let chained = |other: At| {
                other == here || arranged.with.iter().any(|(at, to, _)| *at == other || *to == here)
            };
            if other.is_some_and(chained) {
                return Err(en::refusal::coded(RefusalCode::NotHere));
            }
            Arrangement::With { at: here, other }
        }
        Arrange::Again { again } => Arrangement::Again { at: here, again: *again },
        Arrange::Travel { weeks } => {
            let weeks = u16::try_from((*weeks).min(MOST_AWAY)).unwrap_or(0);
            Arrangement::Travel { week: here.week, weeks }
        }
    };
    Ok(Facts::Desk(vec![DeskEvent::Arranged { plan, what }]))
}

/// A plan that was kept goes on where it stood, its dates from today.
fn take_up(core: &Core, plan: &str, at: &Reading) -> Result<Facts, EngineError> {
    if core.state.running().is_some() {
        return Err(en::refusal::of(&Refusal::SessionRunning, core));
    }
    let not_here = || en::refusal::coded(RefusalCode::NotHere);
    let seq: u64 = plan.parse().map_err(|_| not_here())?;
    core.desk.kept.iter().find(|kept| kept.seq == seq).ok_or_else(not_here)?;
    let row = core.store.borrow().event(seq).map_err(|error| en::storage::error(&error))?;
    let event = codec::desk(&row.ok_or_else(not_here)?);
    let event = event.map_err(|_| en::storage::unreadable_event(seq))?;
    let DeskEvent::PlanAdopted { text, day } = event else { return Err(not_here()) };
    let file = Plan::read(&text, &barwright_domain::catalogue::Catalogue::builtin())
        .map_err(|faults| en::faults::refused(faults.len()))?;
    let next = today::calendar_of(core, seq, day, &file.plan)?.next;
    let mut events = vec![DeskEvent::PlanTakenUp { plan: seq, text, day }];
    events.extend(next.map(|next| DeskEvent::Arranged {
        plan: seq,
        what: Arrangement::Entered { at: next, day: at.local_day() },
    }));
    Ok(Facts::Desk(events))
}

fn add_gym(core: &Core, text: &str) -> Result<Facts, EngineError> {
    let equipment = Equipment::read(text).map_err(|faults| en::faults::refused(faults.len()))?;
    if core.desk.gyms.len() >= MOST_GYMS
        && core.desk.gyms.iter().all(|gym| gym.name != equipment.name)
    {
        return Err(en::refusal::of(&Refusal::TooMany, core));
    }
    Ok(Facts::Desk(vec![DeskEvent::GymKept { equipment }]))
}

fn amount_of(asked: &HowMany, amount: u32, core: &Core) -> Result<Amount, EngineError> {
    match asked {
        HowMany::Reps(_) | HowMany::Open { .. } => reps(amount, core).map(Amount::Reps),
        HowMany::Seconds(_) => seconds(amount, core).map(Amount::Seconds),
        HowMany::Metres(_) => distance(amount, core).map(Amount::Metres),
    }
}

fn reps(amount: u32, core: &Core) -> Result<Reps, EngineError> {
    Reps::try_from(amount)
        .ok()
        .filter(|reps| bounds::REPS.holds(i128::from(*reps)))
        .ok_or_else(|| en::refusal::of(&Refusal::OutOfRange, core))
}

fn seconds(amount: u32, core: &Core) -> Result<Seconds, EngineError> {
    if bounds::SECONDS.holds(i128::from(amount)) {
        Ok(Seconds::new(amount))
    } else {
        Err(en::refusal::of(&Refusal::OutOfRange, core))
    }
}

fn distance(amount: u32, core: &Core) -> Result<Distance, EngineError> {
    if bounds::DISTANCE.holds(i128::from(amount)) {
        Ok(Distance::from_millimetres(amount))
    } else {
        Err(en::refusal::of(&Refusal::OutOfRange, core))
    }
}

fn reserve(halves: u8, core: &Core) -> Result<Reserve, EngineError> {
    Reserve::from_halves(halves).ok_or_else(|| en::refusal::of(&Refusal::OutOfRange, core))
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

fn entry_id(entry: u32, core: &Core) -> Result<EntryId, EngineError> {
    u16::try_from(entry).map(EntryId).map_err(|_| en::refusal::of(&Refusal::NoSuchEntry, core))
}

fn entry_named(name: &str, core: &Core) -> Result<EntryId, EngineError> {
    name.parse().map(EntryId).map_err(|_| en::refusal::of(&Refusal::NoSuchEntry, core))
}

/// A figure in exact kilograms, as keys carry it, or with its unit, as people write it.
fn mass(text: &str, core: &Core) -> Result<Mass, EngineError> {
    let bare = text.trim_start_matches('-').chars().all(|c| c.is_ascii_digit() || c == '.');
    let read = if bare {
        Mass::read(&format!("{text} kg"), Numerals::Point)
    } else {
        Mass::read(text, core.locale.numerals)
    };
    read.map_err(|unreadable| en::refusal::unreadable(&unreadable))
}

/// A mass that a person typed: without a unit it is in the one that is shown.
fn typed_mass(text: &str, unit: MassUnit, core: &Core) -> Result<Mass, EngineError> {
    let bare = !text.is_empty() && !text.chars().any(char::is_alphabetic);
    let read = if bare {
        Mass::read(&format!("{} {}", text.trim(), unit.symbol()), core.locale.numerals)
    } else {
        Mass::read(text, core.locale.numerals)
    };
    read.map_err(|unreadable| en::refusal::unreadable(&unreadable))
}

/// The rig of plates by their labels, on what the current exercise is loaded with.
fn rig_of(core: &Core, side: &[String]) -> Result<Rig, EngineError> {
    let refused = |refusal: Refusal| en::refusal::of(&refusal, core);
    let run = core.state.running().ok_or_else(|| refused(Refusal::NoSession))?;
    let cursor = run.cursor().ok_or_else(|| refused(Refusal::NothingLeft))?;
    let called = run
        .load_at(&cursor)
        .map(|load| load.rig.clone())
        .or_else(|| run.on.clone())
        .ok_or_else(|| refused(Refusal::LoadNeeded))?;
    if side.len() > 40 {
        return Err(refused(Refusal::TooMany));
    }
    let plates = side
        .iter()
        .map(|label| {
            run.equipment
                .plates
                .iter()
                .find(|stock| stock.label == *label)
                .map(|stock| Plate { label: stock.label.clone(), mass: stock.mass })
                .ok_or_else(|| en::refusal::coded(RefusalCode::NotHere))
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
            Err(refused(Refusal::WrongKind))
        }
    }
}
