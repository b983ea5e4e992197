//! A week of the plan, or one session, to be printed and written on: where no screen is wanted at the
//! bar, and for whoever trains without the tool.

use barwright_domain::call::Flow;
use barwright_domain::desk::Dated;
use barwright_domain::prescribe::{Need, duration};
use barwright_domain::quantity::MassUnit;
use barwright_domain::session::{Block, Call, Entry, SetKind};

use super::name;
use crate::facts::{Held, PrintedSession, PrintedWeek, place};
use crate::phrase::Words;

/// Sessions laid out for one lifter in one gym, as paper has them: finished texts, and how many boxes
/// each set has to be written into.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Paper {
    /// The language of the texts, as a tag: "en".
    pub language: &'static str,
    /// The plan's name.
    pub title: String,
    /// The week and the gym.
    pub subtitle: String,
    /// On which day the loads stood so.
    pub as_of: String,
    /// Over the columns of the sets.
    pub columns: PaperColumns,
    /// The sessions.
    pub sessions: Vec<PaperSession>,
    /// Who decides.
    pub foot: &'static str,
}

/// What stands over the columns of a table of sets.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PaperColumns {
    /// Which set.
    pub set: &'static str,
    /// What is called.
    pub call: &'static str,
    /// The rest after it.
    pub rest: &'static str,
    /// A box: the load that was on.
    pub load: &'static str,
    /// A box for each part: what was done.
    pub done: &'static str,
    /// A box: how hard it was.
    pub effort: &'static str,
}

/// A session on paper.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PaperSession {
    /// Its title.
    pub title: String,
    /// How it stands, and how long it takes.
    pub detail: String,
    /// The general warm-up; empty for none.
    pub warm_up: String,
    /// What is still missing for its loads.
    pub needs: Vec<String>,
    /// Blanks at its head: the date, body mass.
    pub blanks: Vec<&'static str>,
    /// Its exercises.
    pub entries: Vec<PaperEntry>,
    /// Over the lines for a note.
    pub note: &'static str,
}

/// An exercise on paper.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PaperEntry {
    /// Its name.
    pub title: String,
    /// Quieter lines below it: set-up, what the gym lacks, with what it is done back to back.
    pub details: Vec<String>,
    /// Cues.
    pub cues: Vec<String>,
    /// The warm-up sets in one line; empty for none.
    pub ramp: String,
    /// Its sets in order.
    pub sets: Vec<PaperSet>,
}

/// A set on paper.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PaperSet {
    /// Which one, and of which side.
    pub name: String,
    /// How many at which load, how hard, in what way. Empty for one that is done only where those
    /// before call for it.
    pub call: String,
    /// The rest after it; empty for none.
    pub rest: String,
    /// What stands in the box of each part: empty where a set has one part.
    pub parts: Vec<String>,
}

/// The sessions as paper.
pub(crate) fn paper(held: &Held, of: &PrintedWeek<'_>, today: i32, words: Words) -> Paper {
    let (words, gym) = (words.on(today), held.gym());
    let say = words.paper();
    let week = usize::from(of.week);
    let kind = of.plan.weeks.get(week.saturating_sub(1)).map(|week| week.kind).unwrap_or_default();
    let called = name::gym(held, &gym.name, words);
    let weeks = of.plan.weeks.len();
    let named = |at| place::called(of.plan, at).unwrap_or_default().to_owned();
    let sessions = of.sessions.iter();
    Paper {
        language: say.language(),
        title: of.plan.name.clone(),
        subtitle: words.today().subtitle(&of.plan.name, week, weeks, kind, &called),
        as_of: say.as_of(today),
        columns: PaperColumns {
            set: say.set(),
            call: say.call(),
            rest: say.rest(),
            load: say.load(),
            done: say.done(),
            effort: say.effort(),
        },
        sessions: sessions
            .map(|one| {
                let state =
                    one.dated.as_ref().map(|at: &Dated| words.weeks().state(at, today, named));
                session(held, one, state.unwrap_or_default(), words)
            })
            .collect(),
        foot: words.cautions().who_decides(),
    }
}

fn session(held: &Held, of: &PrintedSession, state: String, words: Words) -> PaperSession {
    let (sheet, unit) = (&of.laid_out.sheet, held.gym().unit);
    let say = words.paper();
    let time = words.words().minutes(duration(sheet).total());
    let detail: Vec<String> = [state, time].into_iter().filter(|one| !one.is_empty()).collect();
    let called = |slug: &str| name::exercise(held, slug, slug, words);
    let needs = of.laid_out.needs.iter().map(|need| match need {
        Need::NoPain(slug) => words.today().pain_first(&called(slug)),
        Need::Coach(slug) => words.cautions().no_test(&called(slug)),
        Need::BodyMass => say.missing(&words.sheet().need(need, "", unit).0),
        Need::Max(slug) => say.missing(&words.sheet().need(need, &called(slug), unit).0),
    });
    let warm_up = sheet.warm_up.filter(|seconds| seconds.count() > 0);
    PaperSession {
        title: sheet.title.clone(),
        detail: detail.join(" · "),
        warm_up: warm_up.map(|takes| words.today().warm_up(takes)).unwrap_or_default(),
        needs: needs.collect(),
        blanks: vec![say.date(), say.body_mass()],
        entries: sheet
            .blocks
            .iter()
            .flat_map(|block| block.entries.iter().map(move |one| (block, one)))
            .map(|(block, one)| entry(held, block, one, unit, words))
            .collect(),
        note: say.note(),
    }
}

fn entry(held: &Held, block: &Block, of: &Entry, unit: MassUnit, words: Words) -> PaperEntry {
    let mut details: Vec<String> = Vec::new();
    if block.entries.len() > 1 {
        details.push(words.today().back_to_back(block.rest_after_round));
    }
    if !of.lacks.is_empty() {
        let possible = of.instead.iter().filter(|one| one.possible);
        let instead: Vec<String> =
            possible.map(|one| name::exercise(held, &one.exercise, &one.name, words)).collect();
        details.push(words.today().lacks(&of.lacks, &instead));
    }
    if !of.set_up.is_empty() {
        details.push(name::set_up(&of.set_up, words).join(", "));
    }
    if let Some(last) = &of.last {
        let effort = of.calls.iter().find_map(|call| call.effort);
        let scale = effort.map(|effort| effort.scale).unwrap_or_default();
        details.push(words.floor().last_time(last, scale, unit, words.numerals));
    }
    // A cue that several sets have is said once.
    let mut cues: Vec<String> = Vec::new();
    for cue in of.calls.iter().flat_map(|call| &call.manner.cues) {
        if !cues.contains(cue) {
            cues.push(cue.clone());
        }
    }
    let name = name::exercise(held, &of.exercise, &of.name, words);
    PaperEntry {
        title: words.today().exercise(&name, of.optional),
        details,
        cues,
        ramp: words.sheet().ramp(of, unit, words.numerals).unwrap_or_default(),
        sets: of
            .calls
            .iter()
            .enumerate()
            .filter(|(_, call)| call.kind != SetKind::Ramp)
            .flat_map(|(at, call)| {
                // Below the last call of a row that may go on stand empty lines for the rest of it.
                let next = of.calls.get(at + 1);
                let last = next.is_none_or(|next| (next.row, next.kind) != (call.row, call.kind));
                let more = if last { more_sets(call) } else { 0 };
                let say = words.paper();
                let further = (1..=more).map(|nth| PaperSet {
                    name: say.set_name(call.round.saturating_add(nth), None),
                    call: String::new(),
                    rest: String::new(),
                    parts: say.parts(call, words.numerals),
                });
                std::iter::once(set(call, unit, words)).chain(further).collect::<Vec<_>>()
            })
            .collect(),
    }
}

/// How many sets may follow the last one that is called of its row.
fn more_sets(call: &Call) -> u16 {
    let most = match call.flow {
        Flow::Listed | Flow::Clock { .. } => return 0,
        Flow::Climb { most, .. }
        | Flow::Repeat { most, .. }
        | Flow::Total { most, .. }
        | Flow::Test { most, .. } => u16::from(most),
    };
    most.saturating_sub(call.round)
}

fn set(call: &Call, unit: MassUnit, words: Words) -> PaperSet {
    let say = words.paper();
    PaperSet {
        name: say.set_name(call.round, call.side),
        call: say.set_call(call, unit, words.numerals),
        rest: if call.rest.count() > 0 { call.rest.print() } else { String::new() },
        parts: say.parts(call, words.numerals),
    }
}
