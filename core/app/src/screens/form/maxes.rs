//! Maxes, working loads and body mass on one page, and what one that is entered moves.

use barwright_domain::call::EffortScale;
use barwright_domain::owners::Owner;
use barwright_domain::quantity::{Mass, MassUnit, Rounding};

use super::super::chart;
use super::super::key::{does, shows};
use super::super::name;
use super::{Form, form_row, form_screen};
use crate::contract::{Edit, FormOf, FormRow, FormScreen, Intent, Key, Look};
use crate::facts::form::BODY_MASS;
use crate::facts::{Entered, Held, Maxes};
use crate::phrase::Words;

/// Moved loads that are listed: some two weeks of a lift.
const LISTED: usize = 8;
/// Percent that are a press each.
const BY: [i32; 2] = [-5, 5];

/// The look at the page, at a place of it.
pub(in crate::screens) fn look(at: &str) -> Look {
    Look::Form { of: FormOf::Maxes, at: at.to_owned(), text: String::new() }
}

/// The page.
pub(in crate::screens) fn screen(held: &Held, maxes: &Maxes, words: Words) -> FormScreen {
    let say = words.maxes();
    let page = Page { held, maxes, words, unit: held.load_unit() };
    let rows = page.rows();
    let (title, subtitle) = (say.title(), say.subtitle());
    let body = held.desk.weighed.iter().chain(&held.desk.body_mass);
    let body: Vec<(Mass, i32)> = body.copied().collect();
    FormScreen {
        chart: chart::of_body_mass(say.body(), &body, held.locale.unit, words),
        ..form_screen(title, subtitle, rows, page.keys(), words)
    }
}

struct Page<'a> {
    held: &'a Held,
    maxes: &'a Maxes,
    words: Words,
    unit: MassUnit,
}

impl Page<'_> {
    fn name(&self, slug: &str) -> String {
        name::exercise(self.held, slug, slug, self.words)
    }

    fn rows(&self) -> Vec<FormRow> {
        let (say, words) = (self.words.maxes(), self.words);
        let mut rows = vec![form_row("maxes", 0, say.maxes())];
        for max in &self.maxes.maxes {
            let place = Owner::Max(max.exercise.clone()).name();
            let now = max.now.as_ref();
            let detail = now.map(|(_, day, origin)| say.known(*day, origin));
            let name = self.name(&max.exercise);
            let mass = now.map(|(mass, ..)| *mass);
            rows.extend(self.line(&place, &name, mass, detail.unwrap_or_default()));
        }
        if !self.maxes.tracks.is_empty() {
            rows.push(form_row("tracks", 0, say.tracks()));
        }
        for track in &self.maxes.tracks {
            let place = format!("working:{}", track.owner.name());
            let text = say.track(&self.name(&track.exercise), &track.asked, words.numerals);
            let why = track.why.as_ref();
            let why = why.map(|why| {
                words.outcome().sentence(why, EffortScale::default(), self.unit, words.numerals)
            });
            let detail = say.since(track.since, why.as_deref());
            rows.extend(self.line(&place, &text, Some(track.load), detail));
        }
        rows.push(self.body_mass());
        rows
    }

    /// What stands, with what is entered for it and what that moves below it.
    fn line(&self, place: &str, name: &str, mass: Option<Mass>, detail: String) -> Vec<FormRow> {
        let (say, numerals) = (self.words.maxes(), self.words.numerals);
        let form = Form::of_what_stands(FormOf::Maxes, place, self.words);
        let entered = self.maxes.entered.as_ref().filter(|entered| entered.place == place);
        let shown = entered.map(|entered| entered.after).or(mass);
        let value = shown.map(|mass| self.words.words().or_help(mass, self.unit, numerals));
        let typed = shown.map(|mass| mass.print(self.unit, numerals)).unwrap_or_default();
        let mut row = form_row(place, 1, name)
            .value(value.unwrap_or_else(|| say.none().to_owned()))
            .detail(detail)
            .field(form.field(place, say.field(name, self.unit), typed, true));
        if let Some(mass) = shown {
            let step = Mass::from_nanograms(self.unit.nanograms() / 2 * 5);
            let to = |mass: Option<Mass>| mass.filter(|to| *to > Mass::ZERO);
            row = row.steps((
                self.step(place, name, false, to(mass.checked_sub(step))),
                self.step(place, name, true, to(mass.checked_add(step))),
            ));
        }
        // Percent of what stands, one press each; of help, and of nothing, there is none.
        if let Some(mass) = mass.filter(|mass| *mass > Mass::ZERO && entered.is_none()) {
            let keys = BY.map(|percent| {
                let half = Mass::from_nanograms(self.unit.nanograms() / 2);
                let half =
                    if self.unit == MassUnit::Pound { half.checked_mul(2) } else { Some(half) };
                let share = 100 + i64::from(percent);
                let to = mass.ratio(share, 100, Rounding::HalfEven);
                let to =
                    to.zip(half).and_then(|(to, half)| to.to_multiple(half, Rounding::HalfEven));
                let look = self.entering(place, to.unwrap_or(mass));
                shows(format!("by{percent}"), say.by_percent(percent, name), look)
            });
            row = row.keys(keys.into());
        }
        let mut rows = vec![row];
        rows.extend(entered.into_iter().flat_map(|entered| self.moves(entered)));
        rows
    }

    /// The look with a mass entered.
    fn entering(&self, place: &str, mass: Mass) -> Look {
        let text = mass.print(self.unit, self.words.numerals);
        Look::Form { of: FormOf::Maxes, at: place.to_owned(), text }
    }

    fn step(&self, place: &str, name: &str, up: bool, to: Option<Mass>) -> Option<Key> {
        let said = self.words.by_hand().step(up, name);
        let look = to.map_or_else(|| look(place), |to| self.entering(place, to));
        Some(shows(if up { "up" } else { "down" }, said, look).enabled(to.is_some()))
    }

    /// What is entered, the key that takes it, and what it moves.
    fn moves(&self, entered: &Entered) -> Vec<FormRow> {
        let (say, numerals) = (self.words.maxes(), self.words.numerals);
        let Entered { place, before, after, loads } = entered;
        let text = after.print(self.unit, numerals);
        let take = Intent::Write { field: place.clone(), text, sure: false };
        let take = does("take", say.take(*after, self.unit, numerals), take).then(look(""));
        let leave = shows("let-be", say.leave(), look(""));
        let text = say.entered(*before, *after, self.unit, numerals);
        let mut rows = vec![form_row("entered", 2, text).keys(vec![take, leave])];
        if loads.is_empty() {
            rows.push(form_row("moves", 2, say.moves_nothing()));
        } else {
            rows.push(form_row("moves", 2, say.moves()));
        }
        rows.extend(loads.iter().take(LISTED).enumerate().map(|(at, load)| {
            let name = name::exercise(self.held, &load.exercise, &load.name, self.words);
            let text = self.words.lift().moved(load, &name, self.unit, numerals);
            form_row(format!("moved-{at}"), 3, text)
        }));
        let more = loads.len().saturating_sub(LISTED);
        if more > 0 {
            rows.push(form_row("moved-more", 3, say.more_moves(more)));
        }
        rows
    }

    fn body_mass(&self) -> FormRow {
        let (say, unit) = (self.words.maxes(), self.held.locale.unit);
        let now = self.held.desk.body_mass;
        let value = now.map(|(mass, _)| mass.print(unit, self.words.numerals));
        let hint = Mass::whole(if unit == MassUnit::Pound { 180 } else { 80 }, unit);
        let form = Form::of_what_stands(FormOf::Maxes, "", self.words);
        let said = (say.body(), hint.print(unit, self.words.numerals));
        let field = form.field(BODY_MASS, said, value.clone().unwrap_or_default(), true);
        form_row(BODY_MASS, 1, say.body())
            .value(value.unwrap_or_else(|| say.none().to_owned()))
            .detail(now.map(|(_, day)| say.weighed(day)).unwrap_or_default())
            .field(field)
    }

    fn keys(&self) -> Vec<Key> {
        let (say, desk) = (self.words.maxes(), &self.held.desk);
        let turns = |id: &str, said, edit: Edit, seq: Option<u64>| {
            let (of, place) = (FormOf::Maxes, String::new());
            let enabled = seq.is_some();
            does(id, said, Intent::Edit { of, place, edit, step: seq }).enabled(enabled)
        };
        let back = desk.to_take_back().map(|said| said.seq);
        let again = desk.unsaid.last().map(|said| said.seq);
        let mut keys = Vec::new();
        if self.maxes.entered.is_some() {
            keys.push(shows("leave", self.words.by_hand().back(), look("")));
        }
        keys.push(turns("undo", say.undo(), Edit::Undo, back));
        keys.push(turns("redo", say.redo(), Edit::Redo, again));
        keys
    }
}
