//! A session of the plan, changed for once before it begins: exercises swapped, added, left out and
//! put in another order.

use barwright_domain::prescribe::Candidate;
use barwright_domain::session::{Call, Entry, SetKind, Sheet};

use super::super::key::{arranges, does, shows};
use super::super::name;
use super::{Form, form_row, form_screen};
use crate::contract::{Arrange, FormOf, FormRow, FormScreen, Intent, Key, Look, SessionChange};
use crate::facts::form::FIND;
use crate::facts::{Days, Held, SessionForm, SessionPart, candidates, place};
use crate::phrase::Words;

/// The most exercises that are offered at once.
const MOST_SHOWN: usize = 12;

/// The session, or the list of exercises that is open.
pub(in crate::screens) fn screen(
    held: &Held,
    of: &SessionForm,
    at: &str,
    text: &str,
    words: Words,
) -> FormScreen {
    let form = Form::of_what_stands(FormOf::Session, at, words);
    let shown = Shown { held, of, form, text, words };
    let (title, subtitle, rows, keys) = match &of.part {
        SessionPart::Whole => shown.whole(),
        SessionPart::Instead(slug) => shown.instead(slug),
        SessionPart::Add => shown.add(),
        SessionPart::Paper(days) => shown.days(days, None),
        SessionPart::Date(session, days) => shown.days(days, Some(*session)),
    };
    form_screen(title, subtitle, rows, keys, words)
}

struct Shown<'a> {
    held: &'a Held,
    of: &'a SessionForm,
    form: Form<'a>,
    text: &'a str,
    words: Words,
}

type Parts = (String, String, Vec<FormRow>, Vec<Key>);

impl Shown<'_> {
    fn sheet(&self) -> Option<&Sheet> {
        self.of.laid_out.as_ref().map(|laid_out| &laid_out.sheet)
    }

    /// The days on which it was done: without the tool, or where the clock was wrong.
    fn days(&self, days: &Days, session: Option<u64>) -> Parts {
        let Self { held, of, words, text, .. } = *self;
        let say = words.change();
        let plan = held.plan.as_deref();
        let name = plan.and_then(|plan| place::called(plan, of.place)).unwrap_or_default();
        let (label, hint) = say.other_day();
        let field = self.form.field(FIND, (label, hint), text, false);
        let mut typed = form_row("other", 1, label).value(text).field(field);
        if days.unreadable {
            typed.warns = true;
            typed.faults.push(say.not_a_day().to_owned());
        }
        let last = held.state.run().map(|run| run.session);
        let rows = days.days.iter().map(|day| {
            let intent = match session {
                None => Intent::EnterPaper { session: Some(place::name(of.place)), day: *day },
                Some(session) => {
                    let session = Some(session).filter(|session| last != Some(*session));
                    Intent::DateSession { session, day: *day }
                }
            };
            let own = session.is_some() && days.own == Some(*day);
            let date = words.date().in_full(*day);
            let key = does("day", say.on_day(&date), intent).chosen(own);
            form_row(format!("day-{day}"), 1, date).keys(vec![key.enabled(!own)])
        });
        let rows: Vec<FormRow> = rows.chain([typed]).collect();
        let (title, subtitle) = match session {
            None => (say.paper_title(name), say.paper_subtitle()),
            Some(_) => (say.date_title(name), say.date_subtitle()),
        };
        let back = if session.is_some() && last == session { Look::Tally } else { Look::Weeks };
        (title, subtitle.to_owned(), rows, vec![shows("leave", words.by_hand().back(), back)])
    }

    fn whole(&self) -> Parts {
        let Self { held, of, words, .. } = *self;
        let say = words.change();
        let Some(sheet) = self.sheet() else { return Parts::default() };
        let changes = held.desk.arranged().changes_of(of.place).len();
        let free = held.state.running().is_none();
        let rows = sheet.entries().map(|entry| self.entry(entry, free));
        let mut keys = Vec::new();
        if sheet.entries().any(|entry| !entry.lacks.is_empty()) {
            keys.push(self.changes("fit", say.fit(), SessionChange::Fit).enabled(free));
        }
        let add = self.form.look(&format!("{}:add", place::name(of.place)));
        keys.push(shows("add", say.add(), add).enabled(free));
        if changes > 0 {
            keys.push(self.changes("back", say.back(), SessionChange::Back).enabled(free));
            let as_planned = self.changes("as-planned", say.as_planned(), SessionChange::AsPlanned);
            keys.push(as_planned.enabled(free));
        }
        let session = Some(place::name(of.place));
        keys.push(shows("today", say.to_session(), Look::Today { session, minutes: None }));
        (say.title(&sheet.title), say.subtitle(changes), rows.collect(), keys)
    }

    /// An exercise, with what can be done about it.
    fn entry(&self, entry: &Entry, free: bool) -> FormRow {
        let Self { held, of, words, .. } = *self;
        let say = words.change();
        let name = name::exercise(held, &entry.exercise, &entry.name, words);
        let open = self.form.look(&format!("{}:swap:{}", place::name(of.place), entry.exercise));
        let own = || entry.exercise.clone();
        let keys = vec![
            shows("instead", say.instead(&name), open).enabled(free),
            self.changes("earlier", say.earlier(&name), SessionChange::Earlier { exercise: own() })
                .enabled(free),
            self.changes(
                "leave-out",
                say.leave_out(&name),
                SessionChange::Leave { exercise: own() },
            )
            .enabled(free),
        ];
        let unit = held.gym().unit;
        let work: Vec<&Call> =
            entry.calls.iter().filter(|call| call.kind != SetKind::Ramp).collect();
        let first = work.first().map(|call| call.row);
        let row: Vec<&Call> = work.into_iter().filter(|call| Some(call.row) == first).collect();
        let line = words.sheet().line(&row, unit, words.numerals);
        let mut shown = form_row(format!("entry-{}", entry.id.0), 1, name).keys(keys);
        shown.detail = line;
        if !entry.lacks.is_empty() {
            shown.warns = true;
            shown.faults.push(say.lacks(&entry.lacks));
        }
        shown
    }

    fn instead(&self, slug: &str) -> Parts {
        let Self { held, words, .. } = *self;
        let say = words.change();
        let of_slug = |entry: &&Entry| entry.exercise == slug;
        let entry = self.sheet().and_then(|sheet| sheet.entries().find(of_slug));
        let kept = entry.map_or(slug, |entry| entry.name.as_str());
        let name = name::exercise(held, slug, kept, words);
        let rows = self.found(entry, |candidate| {
            let (of, exercise) = (slug.to_owned(), candidate.exercise.slug.to_string());
            let called = words.words().exercise(candidate.exercise);
            let always = format!("{}:always:{slug}:{exercise}", place::name(self.of.place));
            let once = SessionChange::Instead { of, exercise };
            vec![
                self.leads_back("once", say.once(&called), once),
                shows("always", say.always(&called), self.form.look(&always)),
            ]
        });
        (say.swap_title(&name), say.swap_subtitle().to_owned(), rows, vec![self.leave()])
    }

    fn add(&self) -> Parts {
        let Self { words, .. } = *self;
        let say = words.change();
        let rows = self.found(None, |candidate| {
            let called = words.words().exercise(candidate.exercise);
            let exercise = candidate.exercise.slug.to_string();
            vec![self.leads_back("once", say.once(&called), SessionChange::Add { exercise })]
        });
        (say.add_title().to_owned(), say.add_subtitle().to_owned(), rows, vec![self.leave()])
    }

    /// The field that looks, and what it finds: of no words, what would do the best.
    fn found(
        &self,
        entry: Option<&Entry>,
        keys: impl Fn(&Candidate<'_>) -> Vec<Key>,
    ) -> Vec<FormRow> {
        let Self { held, words, text, .. } = *self;
        let say = words.change();
        let entries = self.sheet().into_iter().flat_map(Sheet::entries);
        let here: Vec<String> = entries.map(|entry| entry.exercise.clone()).collect();
        let gym = held.gym();
        let mut all = candidates(held, &gym, entry, &here);
        if !text.is_empty() {
            let found = held.catalogue.search(text).exercises;
            all.retain(|one| found.iter().any(|found| found.slug == one.exercise.slug));
        }
        let field = self.form.field(FIND, say.find(), text, false);
        let mut rows = vec![form_row("find", 1, say.find().0).value(text).field(field)];
        if all.is_empty() {
            rows.push(form_row("none", 1, say.none_found(text)));
        }
        rows.extend(all.iter().take(MOST_SHOWN).map(|one| {
            let slug = one.exercise.slug.to_string();
            let mut row = form_row(slug, 1, words.words().exercise(one.exercise)).keys(keys(one));
            row.detail = say.candidate(one);
            if !one.possible() {
                row.warns = true;
                row.faults.push(say.lacks(&one.lacks));
            }
            row
        }));
        rows
    }

    fn leave(&self) -> Key {
        let whole = self.form.look(&place::name(self.of.place));
        shows("leave", self.words.by_hand().back(), whole)
    }

    fn changes(
        &self,
        id: &str,
        said: impl Into<super::super::key::Said>,
        change: SessionChange,
    ) -> Key {
        let at = self.of.place;
        arranges(id, said, at, Arrange::Change { change }).then(self.form.look(&place::name(at)))
    }

    /// As [`Shown::changes`], from a list that is open.
    fn leads_back(
        &self,
        id: &str,
        said: impl Into<super::super::key::Said>,
        change: SessionChange,
    ) -> Key {
        self.changes(id, said, change).enabled(self.held.state.running().is_none())
    }
}
