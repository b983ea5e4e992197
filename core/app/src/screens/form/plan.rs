//! A plan that is being made: its weeks, its sessions, an exercise with its rows of sets. Row ids are the
//! places in the file, so that each fault and each remark stands beside what it is about.

use barwright_domain::coach;
use barwright_domain::desk::Draft;
use barwright_domain::plan::{Plan, PlanFile, by_hand};
use barwright_domain::text::edit::Written;
use barwright_domain::text::place_at;

use super::super::key::shows;
use super::plan_words::{beside_word, by_week, is_word, listed, stepped};
use super::{Form, beside, file_name, form_row, form_screen};
use crate::contract::{Action, Edit, FormFile, FormOf, FormRow, FormScreen, Key, Look};
use crate::facts::form::FIND;
use crate::facts::{Held, catalogue_of};
use crate::phrase::Words;

/// The most exercises that are listed at once.
const MOST_SHOWN: usize = 12;

/// The plan, or the part of it that is open.
pub(in crate::screens) fn screen(
    held: &Held,
    draft: &Draft,
    (at, text): (&str, &str),
    words: Words,
) -> FormScreen {
    let form = Form::of_draft(FormOf::Plan, draft, at, words);
    let say = words.plan_form();
    let read = Plan::read(&draft.text, &held.known);
    let faults = read.as_ref().err().map(Vec::as_slice).unwrap_or_default();
    let written = Written::of(&draft.text);
    let name = written.as_ref().and_then(|plan| plan.said("name")).unwrap_or_default();
    let mut rows = match &written {
        Some(written) => Shown { held, form, written, at, text, words }.rows(),
        None => Vec::new(),
    };
    let mut notes = beside(&mut rows, &draft.text, faults, words);
    if let Ok(file) = &read {
        notes.extend(remarks(held, &mut rows, file, &draft.text, words));
    }
    // In a part of it what stands elsewhere is counted, not said again.
    if !at.is_empty() && !notes.is_empty() {
        notes = vec![say.elsewhere(notes.len())];
    }
    let (title, subtitle) = (say.title(&name), words.by_hand().stands(faults.len()));
    let file = FormFile { name: file_name(&name, "plan"), text: draft.text.clone() };
    let keys = keys(&form, draft, at, faults.is_empty(), words);
    FormScreen { notes, file: Some(file), ..form_screen(title, subtitle, rows, keys, words) }
}

/// See it first, drop it, steps back and forth; of a part, what is added to it and the way out.
fn keys(form: &Form<'_>, draft: &Draft, at: &str, sound: bool, words: Words) -> Vec<Key> {
    let say = words.plan_form();
    let mut keys = form.keys(draft, sound);
    let adds = |said: &'static str, place: &str| {
        form.edits("add", said, place, Edit::Add { what: String::new() })
    };
    match part(at) {
        Part::Whole => {
            let look = Look::Plan { text: Some(draft.text.clone()), week: None };
            if let Some(first) = keys.first_mut() {
                *first = shows("see", say.see(), look).enabled(sound);
            }
            keys.insert(1, adds(say.add_session(), "session"));
        }
        Part::Session(session) => {
            let look = form.look(&format!("{session}:add"));
            keys.insert(1, shows("add", say.add_exercise(), look));
            leave(form, &mut keys, "");
        }
        Part::Find(session) => leave(form, &mut keys, session),
        Part::Rows { owner, outer, row, more } => {
            if !row && !more {
                keys.insert(1, adds(say.add_row(), &format!("{owner}.set")));
            }
            leave(form, &mut keys, if more { owner } else { outer });
        }
    }
    keys
}

/// The way out of a part leads to the one around it.
fn leave(form: &Form<'_>, keys: &mut [Key], outer: &str) {
    if let Some(key) = keys.iter_mut().find(|key| key.id == "leave") {
        key.action = Action::Show { look: form.look(outer) };
    }
}

/// What a coach would look at, beside its row; what has none is answered.
fn remarks(
    held: &Held,
    rows: &mut [FormRow],
    file: &PlanFile,
    text: &str,
    words: Words,
) -> Vec<String> {
    let gym = held.gym();
    let catalogue = catalogue_of(Some(&file.plan), &held.known);
    let mut others = Vec::new();
    let found = coach::look_over(file, &held.known, &gym);
    for finding in found.iter().filter(|finding| finding.accepted.is_none()) {
        let (unit, numerals) = (gym.unit, words.numerals);
        let said = words.coach().in_place(finding, text, &file.plan, &catalogue, unit, numerals);
        let said = words.by_hand().said(&said);
        let place = place_at(text, finding.span.start);
        let holds = |id: &str| {
            place.strip_prefix(id).is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
        };
        match rows.iter_mut().filter(|row| holds(&row.id)).max_by_key(|row| row.id.len()) {
            Some(row) => row.remarks.push(said),
            None => others.push(said),
        }
    }
    others
}

/// What of a plan is open.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Part<'a> {
    Whole,
    /// A session, by its place.
    Session(&'a str),
    /// Exercises to add to it.
    Find(&'a str),
    /// An exercise, or one of its rows of sets; or what else it can say.
    Rows {
        owner: &'a str,
        outer: &'a str,
        row: bool,
        more: bool,
    },
}

fn part(at: &str) -> Part<'_> {
    if let Some(session) = at.strip_suffix(":add") {
        return Part::Find(session);
    }
    let (owner, more) = match at.strip_suffix(":more") {
        Some(owner) => (owner, true),
        None => (at, false),
    };
    let steps: Vec<&str> = owner.split('.').collect();
    let outer = owner.rsplit_once('.').and_then(|(rest, _)| rest.rsplit_once('.'));
    let outer = outer.map_or("", |(outer, _)| outer);
    match steps.as_slice() {
        ["session", _] => Part::Session(owner),
        ["session", _, "exercise", _] => Part::Rows { owner, outer, row: false, more },
        ["session", _, "exercise", _, "set", _] => Part::Rows { owner, outer, row: true, more },
        _ => Part::Whole,
    }
}

/// What is written most of a row, beside what it counts.
const USUAL: [&str; 4] = ["sets", "load", "left", "rest"];
/// What a row can count.
const WORK: [&str; 3] = ["reps", "seconds", "metres"];
/// What is written of an exercise alone.
const OF_EXERCISE: [&str; 5] = ["next", "superset", "optional", "substitutes", "keep"];
/// What else a row can say.
const MORE: [&str; 20] = [
    "tempo",
    "technique",
    "cues",
    "rpe",
    "every",
    "on_sets",
    "drop",
    "cluster.blocks",
    "cluster.pause",
    "rest_pause.each",
    "rest_pause.pause",
    "rest_pause.total",
    "climb.step",
    "climb.most_sets",
    "repeat.most_sets",
    "total.reps",
    "test.step",
    "speed",
    "weeks",
    "side",
];
/// And an exercise.
const MORE_OF_EXERCISE: [&str; 12] = [
    "goal",
    "track",
    "sides",
    "counted",
    "percent_of",
    "ramp",
    "wear",
    "misses",
    "set_up.pins",
    "set_up.seat",
    "set_up.attachment",
    "set_up.bench",
];
/// Tables that the lines above write into.
const TABLES: [&str; 7] = ["cluster", "rest_pause", "climb", "repeat", "total", "test", "set_up"];
/// What of a session has a line.
const OF_SESSION: [&str; 5] = ["name", "day", "minutes", "weeks", "rest"];
/// What of a plan has one.
const OF_PLAN: [&str; 5] = ["name", "weeks", "goal", "minutes", "rest"];
/// What may be written week by week.
const VARIED: [&str; 7] = ["sets", "reps", "seconds", "metres", "load", "left", "rpe"];

struct Shown<'a> {
    held: &'a Held,
    form: Form<'a>,
    written: &'a Written,
    at: &'a str,
    text: &'a str,
    words: Words,
}

impl Shown<'_> {
    fn rows(&self) -> Vec<FormRow> {
        match part(self.at) {
            Part::Whole => self.whole(),
            Part::Session(session) => self.session(session),
            Part::Find(session) => self.find(session),
            Part::Rows { owner, row, more: true, .. } => self.more(owner, row),
            Part::Rows { owner, row, more: false, .. } => self.owner(owner, row),
        }
    }

    fn said(&self, place: &str) -> String {
        self.written.said(place).unwrap_or_default()
    }

    /// Whether something stands at a place: a value or a table.
    fn has(&self, place: &str) -> bool {
        self.written.said(place).is_some() || !self.written.keys(place).is_empty()
    }

    /// A line that says what stands at a place: stepped where it is a number or one of some words,
    /// typed, and by week where it is written so.
    fn line(&self, owner: &str, key: &str) -> FormRow {
        let place = join(owner, key);
        let say = self.words.plan_form();
        let label = say.key(key);
        let weeks = format!("{place}.by_week");
        if let Some(said) = self.written.said(&weeks) {
            let shown = by_week(&said);
            let asks = (say.by_week(&label), say.by_week_hint());
            let field = self.form.field(&weeks, asks, shown.clone(), false);
            let same = shown.split([';', ',']).next().unwrap_or_default().trim().to_owned();
            let edit = Edit::Put { text: same };
            let key = self.form.edits("all-weeks", say.all_weeks(), &place, edit);
            return form_row(place, 1, label).value(shown).field(field).keys(vec![key]);
        }
        let said = listed(&self.said(&place));
        let field = self.form.field(&place, (label.clone(), say.example(key)), said.clone(), false);
        let steps = stepped(key, &said);
        let shown = if is_word(key) { say.word(&said) } else { said.clone() };
        let mut row = form_row(place.clone(), 1, label.clone()).value(shown).field(field);
        if let Some((down, up)) = steps {
            row = row.steps(self.form.steps(&place, &label, down, up));
        }
        if VARIED.contains(&key) && !said.is_empty() && !owner.is_empty() {
            let edit = Edit::Put { text: said };
            row = row.keys(vec![self.form.edits("by-week", say.week_by_week(), &weeks, edit)]);
        }
        row
    }

    fn whole(&self) -> Vec<FormRow> {
        let say = self.words.plan_form();
        let mut rows: Vec<FormRow> = OF_PLAN.iter().map(|key| self.line("", key)).collect();
        rows.push(form_row("weeks-of", 0, say.weeks()));
        let weeks: usize = self.said("weeks").parse().unwrap_or(0);
        rows.extend((1..=weeks.min(by_hand::WEEKS)).map(|week| self.week(week)));
        rows.push(form_row("sessions", 0, say.sessions()));
        let count = self.written.count("session");
        rows.extend((0..count).map(|at| {
            let place = format!("session.{at}");
            let name = self.said(&format!("{place}.name"));
            let day = self.said(&format!("{place}.day"));
            let exercises = self.written.count(&format!("{place}.exercise"));
            let mut keys = self.of_list(&place, at, count > 1);
            let edit = Edit::Add { what: place.clone() };
            keys.push(self.form.edits("again", say.session_again(), "session", edit));
            form_row(place, 1, name).detail(say.of_session(&say.word(&day), exercises)).keys(keys)
        }));
        rows.extend(self.kept("", &[&OF_PLAN, &["week", "session"]]));
        rows
    }

    /// The keys of one of a list: it is opened, moved up, taken away.
    fn of_list(&self, place: &str, at: usize, goes: bool) -> Vec<Key> {
        let (form, say) = (&self.form, self.words.plan_form());
        vec![
            form.opens(place),
            form.edits("earlier", say.earlier(), place, Edit::Move { by: -1 }).enabled(at > 0),
            form.edits("remove", self.words.by_hand().remove(), place, Edit::Remove).enabled(goes),
        ]
    }

    /// A week with its kind. One that the file writes together with others is kept as it is.
    fn week(&self, week: usize) -> FormRow {
        let say = self.words.plan_form();
        let number = week.to_string();
        let numbers = |at: usize| self.said(&format!("week.{at}.number"));
        let own = (0..self.written.count("week")).find(|at| numbers(*at) == number);
        let shared = (0..self.written.count("week")).any(|at| {
            let said = numbers(at);
            let all = said.strip_prefix('[').and_then(|said| said.strip_suffix(']'));
            all.is_some_and(|all| all.split(',').any(|one| one.trim() == number))
        });
        let kind = own.map(|at| self.said(&format!("week.{at}.kind"))).unwrap_or_default();
        let usual = by_hand::KINDS.first().copied().unwrap_or_default();
        let kind = if kind.is_empty() { usual.to_owned() } else { kind };
        let id = own.map_or_else(|| format!("week-{week}"), |at| format!("week.{at}"));
        let row = form_row(id, 1, say.week(week));
        if shared {
            return row.detail(say.with_others());
        }
        let (down, up) = beside_word(by_hand::KINDS, &kind, false).unwrap_or_default();
        let place = format!("kind:{week}");
        row.value(say.word(&kind)).steps(self.form.steps(&place, &say.week(week), down, up))
    }

    fn session(&self, session: &str) -> Vec<FormRow> {
        let say = self.words.plan_form();
        let mut rows: Vec<FormRow> = OF_SESSION.iter().map(|key| self.line(session, key)).collect();
        rows.push(form_row("exercises", 0, say.exercises()));
        rows.extend((0..self.written.count(&format!("{session}.exercise"))).map(|at| {
            let place = format!("{session}.exercise.{at}");
            let name = self.said(&format!("{place}.name"));
            let keys = self.of_list(&place, at, true);
            form_row(place.clone(), 1, name).detail(self.short(&place)).keys(keys)
        }));
        rows.extend(self.kept(session, &[&OF_SESSION, &["exercise"]]));
        rows
    }

    /// An exercise or a row of it in short, as it is written.
    fn short(&self, owner: &str) -> String {
        let rows = self.written.count(&format!("{owner}.set"));
        let keys = ["sets", "reps", "seconds", "metres", "load", "left", "rpe"];
        let said = keys.iter().filter_map(|key| {
            let place = format!("{owner}.{key}");
            let weeks = self.written.said(&format!("{place}.by_week")).map(|said| by_week(&said));
            let said = weeks.or_else(|| self.written.said(&place).map(|said| listed(&said)))?;
            Some(self.words.plan_form().said(key, &said))
        });
        let rows = (rows > 0).then(|| self.words.plan_form().of_rows(rows));
        said.chain(rows).collect::<Vec<_>>().join(" · ")
    }

    fn owner(&self, owner: &str, row: bool) -> Vec<FormRow> {
        let (say, form) = (self.words.plan_form(), &self.form);
        let said = |key: &str| self.has(&join(owner, key));
        let sets = self.written.count(&format!("{owner}.set"));
        let work = WORK.into_iter().find(|key| said(key)).unwrap_or("reps");
        let effort = if said("rpe") { "rpe" } else { "left" };
        let mut keys: Vec<&str> = if row { Vec::new() } else { vec!["name"] };
        keys.extend((sets == 0).then_some("sets"));
        keys.extend([work, "load", effort, "rest"]);
        if !row {
            keys.extend(OF_EXERCISE);
        }
        // What else it says is shown; what it could say is a press away.
        let of_exercise = if row { [].as_slice() } else { MORE_OF_EXERCISE.as_slice() };
        for key in WORK.iter().chain(&MORE).chain(of_exercise) {
            if said(key) && !keys.contains(key) {
                keys.push(key);
            }
        }
        let mut rows: Vec<FormRow> = keys.iter().map(|key| self.line(owner, key)).collect();
        rows.extend((0..sets).map(|at| {
            let place = format!("{owner}.set.{at}");
            let keys = self.of_list(&place, at, true);
            form_row(place.clone(), 1, say.row(at + 1)).detail(self.short(&place)).keys(keys)
        }));
        let all: [&[&str]; 7] = [
            &["name", "set", "rpe"],
            &USUAL,
            &WORK,
            &OF_EXERCISE,
            &MORE,
            &MORE_OF_EXERCISE,
            &TABLES,
        ];
        rows.extend(self.kept(owner, &all));
        let open = form.look(&format!("{owner}:more"));
        let key = shows("open", self.words.by_hand().open(), open);
        rows.push(form_row("more", 1, say.more()).keys(vec![key]));
        rows
    }

    /// Everything else that a row, or an exercise, can say.
    fn more(&self, owner: &str, row: bool) -> Vec<FormRow> {
        let of_exercise = if row { [].as_slice() } else { MORE_OF_EXERCISE.as_slice() };
        let of_row = |key: &&&str| row || !["weeks", "side"].contains(*key);
        let all = WORK.iter().chain(MORE.iter().filter(of_row)).chain(of_exercise);
        all.map(|key| self.line(owner, key)).collect()
    }

    /// What the file says that no line here writes: seen, and kept.
    fn kept(&self, owner: &str, known: &[&[&str]]) -> Vec<FormRow> {
        let say = self.words.plan_form();
        let own = self.written.keys(owner).into_iter();
        let own = own.filter(|key| !known.iter().any(|all| all.contains(&key.as_str())));
        own.map(|key| {
            let place = join(owner, &key);
            let said = self.said(&place);
            let value =
                if said.is_empty() { say.so_many(self.written.count(&place).max(1)) } else { said };
            form_row(place, 1, key).value(value).detail(say.kept())
        })
        .collect()
    }

    /// Exercises to add, by what was looked for.
    fn find(&self, session: &str) -> Vec<FormRow> {
        let (change, say) = (self.words.change(), self.words.plan_form());
        let field = self.form.field(FIND, change.find(), self.text, false);
        let mut rows = vec![form_row("find", 1, change.find().0).value(self.text).field(field)];
        let found = self.held.catalogue.search(self.text).exercises;
        if found.is_empty() {
            rows.push(form_row("none", 1, change.none_found(self.text)));
        }
        rows.extend(found.iter().take(MOST_SHOWN).map(|exercise| {
            let (what, place) = (exercise.slug.to_string(), format!("{session}.exercise"));
            let key = self.form.edits("add", say.add_this(), &place, Edit::Add { what });
            form_row(exercise.slug.to_string(), 1, self.words.words().exercise(exercise))
                .detail(change.what(exercise))
                .keys(vec![key.then(self.form.look(session))])
        }));
        rows
    }
}

fn join(owner: &str, key: &str) -> String {
    if owner.is_empty() { key.to_owned() } else { format!("{owner}.{key}") }
}
