//! A plan read: what it says, or what is wrong with it and where.

use barwright_domain::catalogue::Catalogue;
use barwright_domain::coach::{self, Finding, Level};
use barwright_domain::desk::Shared;
use barwright_domain::equipment::{self, Equipment};
use barwright_domain::owners::RowOwner;
use barwright_domain::plan::{Entry, Plan, PlanFile, WeekSession, Weeks};

use super::key::{does, shows};
use super::row::{aloud, row};
use crate::contract::{Intent, Key, Look, PlanScreen, Row};
use crate::facts::{Held, adopted, catalogue_of, mended};
use crate::locale::Locale;
use crate::phrase::Words;

/// A plan file as the Plan screen shows it, with no store and nothing adopted: the whole of it, or
/// one week, from 1.
pub fn plan_in_file(bytes: &[u8], week: Option<u32>, locale: &Locale) -> PlanScreen {
    let gym = equipment::builtin_in(locale.unit);
    plan_checked(bytes, week, locale, &gym).0
}

/// As [`plan_in_file`], looked over for a gym; with how much the weightiest remark matters that the
/// file does not accept.
pub fn plan_checked(
    bytes: &[u8],
    week: Option<u32>,
    locale: &Locale,
    gym: &Equipment,
) -> (PlanScreen, Option<Level>) {
    let known = Catalogue::builtin().speaking(locale.words().tongue());
    checked(bytes, week, locale.words(), (gym, &known))
}

fn checked(
    bytes: &[u8],
    week: Option<u32>,
    words: Words,
    (gym, known): (&Equipment, &Catalogue),
) -> (PlanScreen, Option<Level>) {
    let say = words.plan();
    let text = String::from_utf8_lossy(bytes);
    match Plan::read_bytes(bytes, known) {
        Ok(file) => {
            let mut screen = plan(&file.plan, known, (week, Some(&text)), words);
            let worst = match week {
                None => remarks(&mut screen, (&file, &text), words, (gym, known)),
                Some(_) => None,
            };
            screen.keys.push(does("adopt", say.adopt(), Intent::adopt(text)));
            (screen, worst)
        }
        Err(faults) => {
            let faults: Vec<_> =
                faults.iter().map(|fault| words.faults().in_place(fault, &text)).collect();
            let title = say.has_faults(faults.len());
            let spoken: Vec<_> = faults.iter().map(|fault| say.fault_aloud(fault)).collect();
            let screen = PlanScreen {
                aloud: words.words().spoken(&[&title, &spoken.join(" ")]),
                title,
                subtitle: say.nothing_changed().to_owned(),
                rows: Vec::new(),
                faults,
                keys: Vec::new(),
            };
            (screen, None)
        }
    }
}

/// Adds what a coach would say of the plan, and what the file accepts of it.
fn remarks(
    screen: &mut PlanScreen,
    (file, text): (&PlanFile, &str),
    words: Words,
    (gym, known): (&Equipment, &Catalogue),
) -> Option<Level> {
    let (say, plan) = (words.coach(), &file.plan);
    let found = coach::look_over(file, known, gym);
    let catalogue = catalogue_of(Some(plan), known);
    let open: Vec<&Finding> = found.iter().filter(|one| one.accepted.is_none()).collect();
    screen.faults = open
        .iter()
        .map(|one| say.in_place(one, text, plan, &catalogue, gym.unit, words.numerals))
        .collect();
    if !open.is_empty() {
        screen.subtitle = words.plan().with_remarks(&screen.subtitle, open.len());
        let remarks = screen.faults.iter().map(|one| words.plan().remark_aloud(one));
        let spoken: Vec<String> = remarks.collect();
        screen.aloud = format!("{} {}", screen.aloud, spoken.join(" "));
    }
    let accepted = found.iter().filter_map(|one| say.accepted(one, plan, &catalogue));
    let accepted: Vec<String> = accepted.collect();
    if !accepted.is_empty() {
        screen.rows.push(row("accepted", 0, words.plan().accepted()));
        let each = accepted.into_iter().enumerate();
        screen.rows.extend(each.map(|(at, text)| row(format!("accepted.{at}"), 1, text)));
    }
    open.iter().map(|finding| finding.level).max()
}

/// The plan in a text that a lifter holds in hand, looked over for the gym that is trained in.
pub(super) fn in_hand(held: &Held, text: &str, week: Option<u32>, words: Words) -> PlanScreen {
    let (mut screen, _) = checked(text.as_bytes(), week, words, (&held.gym(), &held.known));
    if let Ok(file) = Plan::read(text, &held.known) {
        mending(held, &file.plan, text, &mut screen, words);
    }
    let running = held.state.running().is_some();
    for key in screen.keys.iter_mut().filter(|key| key.id.starts_with("adopt")) {
        key.enabled = !running;
    }
    screen
}

/// What adopting it does to a plan of that name that is on: what stays, and what starts anew.
fn mending(held: &Held, plan: &Plan, text: &str, screen: &mut PlanScreen, words: Words) {
    let Some(before) = mended(held, plan, false) else { return };
    let say = words.plan();
    let found = adopted(held, plan, Some(before), Shared::ThisOne);
    let stays = found.rows.len().saturating_sub(found.anew.len());
    let catalogue = catalogue_of(Some(plan), &held.known);
    let named = |owner: &RowOwner| {
        let session = plan.sessions.get(usize::from(owner.session))?;
        let slot = session.exercises.get(usize::from(owner.slot))?;
        let name = say.name(&catalogue, &slot.exercise);
        Some(say.row_of(&session.name, &name, usize::from(owner.line) + 1))
    };
    let mut rows = vec![row("mends", 0, say.mends(stays, found.anew.len()))];
    let anew = found.anew.iter().filter_map(named).enumerate();
    rows.extend(anew.map(|(at, text)| row(format!("anew-{at}"), 1, say.anew(&text))));
    let asks = found.asks.iter().filter_map(named).enumerate();
    rows.extend(asks.map(|(at, text)| row(format!("asks-{at}"), 1, say.asks(&text)).warns(true)));
    rows.append(&mut screen.rows);
    screen.rows = rows;
    let adopt = |all_rows, as_new| {
        let text = text.to_owned();
        Intent::AdoptPlan { text, from: None, as_new, all_rows }
    };
    for key in screen.keys.iter_mut().filter(|key| key.id == "adopt") {
        *key = does("adopt", say.mend(), adopt(false, false));
    }
    if !found.asks.is_empty() {
        screen.keys.push(does("adopt-all", say.mend_all(), adopt(true, false)));
    }
    screen.keys.push(does("adopt-new", say.adopt_new(), adopt(false, true)));
}

/// A plan laid out; `text` is its file's, where it is not the one that is on.
pub(super) fn plan(
    plan: &Plan,
    known: &Catalogue,
    (week, text): (Option<u32>, Option<&str>),
    words: Words,
) -> PlanScreen {
    let catalogue = catalogue_of(Some(plan), known);
    let lay = Lay { plan, catalogue: &catalogue, words };
    let last = plan.weeks.len();
    // A week that the plan doesn't have is the nearest one that it has.
    let week =
        week.and_then(|week| usize::try_from(week).ok()).map(|week| week.clamp(1, last.max(1)));
    let (subtitle, rows) = match week {
        Some(week) => lay.one_week(week),
        None => (words.plan().in_short(plan), lay.whole()),
    };
    PlanScreen {
        title: plan.name.clone(),
        aloud: words.words().spoken(&[&plan.name, &subtitle, &aloud(&rows, words)]),
        subtitle,
        rows,
        faults: Vec::new(),
        keys: keys(week, last, text, words),
    }
}

fn keys(week: Option<usize>, last: usize, text: Option<&str>, words: Words) -> Vec<Key> {
    let say = words.plan();
    let look = |week: Option<usize>| Look::Plan {
        text: text.map(str::to_owned),
        week: week.and_then(|week| u32::try_from(week).ok()),
    };
    match week {
        None => vec![shows("week", say.week_by_week(), look(Some(1)))],
        Some(week) => vec![
            shows("before", say.week_before(), look(Some(week.saturating_sub(1))))
                .enabled(week > 1),
            shows("after", say.week_after(), look(Some(week + 1))).enabled(week < last),
            shows("whole", say.whole(), look(None)),
        ],
    }
}

/// A plan to lay out.
struct Lay<'a> {
    plan: &'a Plan,
    catalogue: &'a Catalogue,
    words: Words,
}

impl Lay<'_> {
    /// One week, counted from 1: its sessions with its own numbers.
    fn one_week(&self, week: usize) -> (String, Vec<Row>) {
        let (plan, say) = (self.plan, self.words.plan());
        let at = week.saturating_sub(1);
        let mut rows = Vec::new();
        for index in 0..plan.sessions_of(at).len() {
            let Some(session) = plan.session(at, index) else { continue };
            let place = session.session;
            rows.push(self.session_row(&session, place, None));
            for entry in &session.exercises {
                let id = format!("{place}.{}", entry.slot);
                rows.push(self.exercise_row(entry, place, &id));
                let lines = self.lines(entry).into_iter().enumerate();
                rows.extend(lines.map(|(line, text)| row(format!("{id}.{line}"), 2, text)));
            }
        }
        let of = plan.weeks.get(at);
        let title = of.map_or_else(String::new, |of| say.week(week, of.kind, of.name.as_deref()));
        (say.one_of(&title, plan.weeks.len()), rows)
    }

    /// The whole plan: weeks of their own kind, then each session once, with what weeks change beside
    /// it.
    fn whole(&self) -> Vec<Row> {
        let (plan, say) = (self.plan, self.words.plan());
        let mut rows = Vec::new();
        for (at, week) in plan.weeks.iter().enumerate() {
            if *week != barwright_domain::plan::Week::default() {
                let text = say.week(at + 1, week.kind, week.name.as_deref());
                let cut = say.cut(self.catalogue, plan.cut(at), self.words.numerals);
                rows.push(row(format!("week {}", at + 1), 0, text).detail(cut));
            }
        }
        for (place, session) in plan.sessions.iter().enumerate() {
            let weeks: Vec<(usize, WeekSession)> = (0..plan.weeks.len())
                .filter_map(|week| {
                    let index = plan.sessions_of(week).iter().position(|at| *at == place)?;
                    Some((week + 1, plan.session(week, index)?))
                })
                .collect();
            let Some((_, first)) = weeks.first() else { continue };
            rows.push(self.session_row(first, place, Some(&session.weeks)));
            for slot in 0..session.exercises.len() {
                let entry_in = |session: &WeekSession| -> Option<Entry> {
                    session.exercises.iter().find(|entry| entry.slot == slot).cloned()
                };
                let Some(entry) = weeks.iter().find_map(|(_, session)| entry_in(session)) else {
                    continue;
                };
                let id = format!("{place}.{slot}");
                rows.push(self.exercise_row(&entry, place, &id));
                // Weeks that say the same stand together.
                let mut groups: Vec<(Vec<usize>, Vec<String>)> = Vec::new();
                for (week, session) in &weeks {
                    let Some(entry) = entry_in(session) else { continue };
                    let lines = self.lines(&entry);
                    match groups.iter_mut().find(|(_, known)| *known == lines) {
                        Some((numbers, _)) => numbers.push(*week),
                        None => groups.push((vec![*week], lines)),
                    }
                }
                let alone =
                    groups.len() == 1 && groups.iter().all(|(on, _)| on.len() == weeks.len());
                for (numbers, lines) in groups {
                    for (line, text) in lines.into_iter().enumerate() {
                        let first = numbers.first().copied().unwrap_or_default();
                        let text = if alone { text } else { say.in_weeks(&numbers, &text) };
                        rows.push(row(format!("{id}.{first}.{line}"), 2, text));
                    }
                }
            }
        }
        rows
    }

    fn session_row(&self, session: &WeekSession, place: usize, weeks: Option<&Weeks>) -> Row {
        let day = self.plan.sessions.get(place).and_then(|own| own.day);
        let (say, numerals) = (self.words.plan(), self.words.numerals);
        let detail = say.session_detail(self.catalogue, session, day, weeks, numerals);
        row(place.to_string(), 0, session.name.clone()).detail(detail)
    }

    fn exercise_row(&self, entry: &Entry, place: usize, id: &str) -> Row {
        let (say, numerals) = (self.words.plan(), self.words.numerals);
        let slot =
            self.plan.sessions.get(place).and_then(|session| session.exercises.get(entry.slot));
        let superset = slot.and_then(|slot| slot.superset.as_deref());
        let detail = say.detail(self.catalogue, entry, superset, numerals);
        row(id, 1, say.name(self.catalogue, &entry.exercise)).detail(detail)
    }

    fn lines(&self, entry: &Entry) -> Vec<String> {
        self.words.plan().lines(self.catalogue, entry, self.words.numerals)
    }
}
