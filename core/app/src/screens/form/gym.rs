//! A gym that is being made.

use barwright_domain::desk::Draft;
use barwright_domain::equipment::by_hand::{SUPPORTS, mass_text, usual_plates};
use barwright_domain::equipment::{Equipment, Reach, bounds};
use barwright_domain::quantity::{Mass, MassUnit, Numerals};
use barwright_domain::text::edit::Written;

use super::{Form, beside, file_name, form_row, form_screen};
use crate::contract::{Edit, FormFile, FormOf, FormRow, FormScreen, Key};
use crate::facts::Held;
use crate::facts::form::{BY, MORE, SET, written_unit};
use crate::phrase::Words;

/// Kinds that are added by a key; any other is typed.
const BARS: &[&str] = &["barbell", "trap-bar", "ez-bar"];
const HELD: &[&str] = &["dumbbell", "kettlebell", "medicine-ball", "sandbag", "vest"];
const STACKS: &[&str] = &[
    "cable",
    "pulldown",
    "low-row",
    "leg-extension",
    "leg-curl",
    "chest-press",
    "shoulder-press",
    "row-machine",
    "pec-deck",
    "hip-adduction",
    "hip-abduction",
    "calf-machine",
    "assisted-pull-up",
];
const MACHINES: &[&str] = &["leg-press", "hack-squat", "landmine", "sled", "chest-press"];

/// The gym, or the part of it that is open.
pub(in crate::screens) fn screen(held: &Held, draft: &Draft, at: &str, words: Words) -> FormScreen {
    let read = Equipment::read(&draft.text);
    let faults = read.as_ref().err().map(Vec::as_slice).unwrap_or_default();
    let written = Written::of(&draft.text);
    let name = written.as_ref().and_then(|gym| gym.said("name")).unwrap_or_default();
    let unit = written_unit(&draft.text).unwrap_or(held.locale.unit);
    // A part that went is no part to be open.
    let there = written.as_ref().is_some_and(|gym| is_there(gym, at));
    let at = if there { at } else { "" };
    let form = Form::of_draft(FormOf::Gym, draft, at, words);
    let made = read.as_ref().ok();
    let mut rows = match &written {
        Some(written) => {
            let say = Say { form, written, unit, made };
            if at.is_empty() { say.whole() } else { say.part(at) }
        }
        None => Vec::new(),
    };
    let notes = beside(&mut rows, &draft.text, faults, words);
    let (title, subtitle) = (words.gym_form().title(&name), words.by_hand().stands(faults.len()));
    let file = FormFile { name: file_name(&name, "gym"), text: draft.text.clone() };
    let keys = form.keys(draft, faults.is_empty());
    FormScreen { notes, file: Some(file), ..form_screen(title, subtitle, rows, keys, words) }
}

fn is_there(gym: &Written, at: &str) -> bool {
    let Some((list, nth)) = at.split_once('.') else { return false };
    nth.parse::<usize>().is_ok_and(|nth| nth < gym.count(list))
}

/// What the rows are made from.
struct Say<'a> {
    form: Form<'a>,
    written: &'a Written,
    unit: MassUnit,
    /// The gym as it reads; none while something is wrong.
    made: Option<&'a Equipment>,
}

impl Say<'_> {
    fn said(&self, place: &str) -> String {
        self.written.said(place).unwrap_or_default()
    }

    /// A mass of the file, and the unit it is written in.
    fn mass(&self, place: &str) -> Option<(Mass, MassUnit)> {
        Mass::read_as_written(&self.said(place), Numerals::Point).ok()
    }

    /// A mass of the file as it is shown; what can't be read as it was typed.
    fn shown(&self, place: &str) -> String {
        match self.mass(place) {
            Some((mass, unit)) => mass.print(unit, self.form.words.numerals),
            None => self.said(place),
        }
    }

    fn whole(&self) -> Vec<FormRow> {
        let say = self.form.words.gym_form();
        let gym = self.form.words.gym();
        let mut rows = vec![self.text("name", "name"), self.unit_row()];
        rows.push(form_row("bars", 0, gym.bars()));
        rows.extend(self.each("bar", |say, at| {
            let value = say.shown(&format!("bar.{at}.mass"));
            (value, say.reach(say.made.and_then(|gym| gym.reach_of_bar(gym.bars.get(at)?))))
        }));
        rows.push(self.add("bar", BARS));
        rows.push(form_row("plates", 0, gym.plates()));
        rows.extend((0..self.written.count("plate")).map(|at| self.plate(at)));
        rows.push(self.add_plate());
        rows.push(form_row("held", 0, gym.held()));
        rows.extend(self.each("dumbbells", |say, at| {
            (String::new(), say.reach(say.made.and_then(|gym| gym.dumbbells.get(at)?.reach())))
        }));
        rows.push(self.add("dumbbells", HELD));
        rows.push(form_row("stacks", 0, gym.stacks()));
        rows.extend(self.each("stack", |say, at| {
            let stack = say.made.and_then(|gym| gym.stacks.get(at));
            let unnumbered = stack.filter(|stack| !stack.is_numbered());
            let detail = match unnumbered {
                Some(stack) => say.form.words.gym_form().pins(stack.pins.len()),
                None => say.reach(stack.and_then(|stack| stack.reach())),
            };
            (String::new(), detail)
        }));
        rows.push(self.add("stack", STACKS));
        rows.push(form_row("machines", 0, gym.machines()));
        rows.extend(self.each("machine", |say, at| {
            let reach = say.made.and_then(|gym| gym.reach_of_machine(gym.machines.get(at)?));
            (String::new(), say.reach(reach))
        }));
        rows.push(self.add("machine", MACHINES));
        rows.push(form_row("supports", 0, gym.also()));
        rows.extend(self.supports());
        let (label, hint) = say.add_other("also", self.unit);
        let place = format!("also.{MORE}");
        let field = self.form.field(&place, (label, hint), "", false);
        rows.push(form_row("also-other", 1, label).field(field));
        rows
    }

    fn reach(&self, reach: Option<Reach>) -> String {
        let say = self.form.words.gym_form();
        match reach {
            Some(reach) => say.reach(&reach, self.unit, self.form.words.numerals),
            None if self.made.is_some() => say.reach_unlisted().to_owned(),
            None => String::new(),
        }
    }

    /// A line each of a list: its name, what it says and makes; it opens.
    fn each(&self, list: &str, of: impl Fn(&Self, usize) -> (String, String)) -> Vec<FormRow> {
        let count = self.written.count(list);
        (0..count)
            .map(|at| {
                let id = format!("{list}.{at}");
                let (value, detail) = of(self, at);
                form_row(&id, 1, self.said(&format!("{id}.name")))
                    .value(value)
                    .detail(detail)
                    .keys(vec![self.form.opens(&id), self.remove(&id)])
            })
            .collect()
    }

    fn remove(&self, place: &str) -> Key {
        let say = self.form.words.by_hand();
        self.form.edits("remove", say.remove(), place, Edit::Remove)
    }

    fn plate(&self, at: usize) -> FormRow {
        let (say, numerals) = (self.form.words.gym_form(), self.form.words.numerals);
        let id = format!("plate.{at}");
        let place = format!("{id}.pairs");
        let stamped = self.shown(&format!("{id}.mass"));
        let weighed = self.mass(&format!("{id}.weighs"));
        let row = self
            .count(&id, &place, &stamped, (0, u32::from(bounds::PAIRS)), |count| say.pairs(count));
        let field = self.form.field(&place, say.pairs_field(&stamped), self.said(&place), true);
        row.detail(weighed.map(|(mass, unit)| say.weighs(mass, unit, numerals)).unwrap_or_default())
            .field(field)
            .keys(vec![self.form.opens(&id), self.remove(&id)])
    }

    /// A line that counts: one down, one up.
    fn count(
        &self,
        id: &str,
        place: &str,
        text: &str,
        (least, most): (u32, u32),
        shown: impl Fn(u32) -> String,
    ) -> FormRow {
        let said = self.said(place);
        let count: Option<u32> = said.parse().ok();
        let now = count.unwrap_or(least);
        let down = now.checked_sub(1).filter(|count| count.clamp(&least, &most) == count);
        let up = now.saturating_add(1);
        let up = (up <= most).then_some(up);
        let value = if said.is_empty() || count.is_some() { shown(now) } else { said };
        form_row(id, 1, text).value(value).steps(self.form.steps(
            place,
            text,
            down.map(|n| n.to_string()),
            up.map(|n| n.to_string()),
        ))
    }

    fn add(&self, list: &str, kinds: &[&str]) -> FormRow {
        let (say, by_hand) = (self.form.words.gym_form(), self.form.words.by_hand());
        let keys = kinds.iter().map(|kind| {
            let edit = Edit::Add { what: (*kind).to_owned() };
            self.form.edits(format!("add-{kind}"), by_hand.usual_name(kind), list, edit)
        });
        let keys = keys.collect();
        let field = say.add_other(list, self.unit);
        let field = self.form.field(&format!("{list}.{MORE}"), field, "", false);
        form_row(format!("add-{list}"), 1, say.add_to(list)).keys(keys).field(field)
    }

    fn add_plate(&self) -> FormRow {
        let say = self.form.words.gym_form();
        let here: Vec<Mass> = (0..self.written.count("plate"))
            .filter_map(|at| Some(self.mass(&format!("plate.{at}.mass"))?.0))
            .collect();
        let lacks = usual_plates(self.unit).iter().filter(|(mass, _)| {
            Mass::read(mass, Numerals::Point).is_ok_and(|mass| !here.contains(&mass))
        });
        let set = Edit::Add { what: SET.to_owned() };
        let mut keys = Vec::new();
        if usual_plates(self.unit).len() > here.len() {
            keys.push(self.form.edits("add-set", say.a_set(), "plate", set));
        }
        keys.extend(lacks.map(|(mass, _)| {
            let edit = Edit::Add { what: (*mass).to_owned() };
            self.form.edits(format!("add-{mass}"), self.written_mass(mass), "plate", edit)
        }));
        let field = say.add_other("plate", self.unit);
        let field = self.form.field(&format!("plate.{MORE}"), field, "", true);
        form_row("add-plate", 1, say.add_to("plate")).keys(keys).field(field)
    }

    /// A mass of a file as this lifter writes it.
    fn written_mass(&self, text: &str) -> String {
        match Mass::read_as_written(text, Numerals::Point) {
            Ok((mass, unit)) => mass.print(unit, self.form.words.numerals),
            Err(_) => text.to_owned(),
        }
    }

    fn supports(&self) -> Vec<FormRow> {
        let say = self.form.words.gym_form();
        let here: Vec<String> =
            (0..self.written.count("also")).map(|at| self.said(&format!("also.{at}"))).collect();
        let usual = SUPPORTS.iter().map(|slug| (*slug).to_owned());
        let own = here.iter().filter(|slug| !SUPPORTS.contains(&slug.as_str())).cloned();
        usual
            .chain(own)
            .map(|slug| {
                let at = here.iter().position(|known| *known == slug);
                let name = say.support(&slug);
                let said = say.toggle(at.is_some(), &name);
                let key = match at {
                    Some(at) => {
                        self.form.edits("toggle", said, &format!("also.{at}"), Edit::Remove)
                    }
                    None => {
                        self.form.edits("toggle", said, "also", Edit::Add { what: slug.clone() })
                    }
                };
                let id = at.map_or(format!("support-{slug}"), |at| format!("also.{at}"));
                let key = key.chosen(at.is_some());
                form_row(id, 1, name).value(say.here(at.is_some())).keys(vec![key])
            })
            .collect()
    }

    fn unit_row(&self) -> FormRow {
        let (label, _) = self.form.words.gym_form().field("unit", self.unit);
        let keys = [MassUnit::Kilogram, MassUnit::Pound].map(|unit| {
            let text = unit.symbol().to_owned();
            let key = self.form.edits(unit.symbol(), unit.symbol(), "unit", Edit::Put { text });
            key.chosen(unit == self.unit).enabled(unit != self.unit)
        });
        form_row("unit", 1, label).value(self.unit.symbol()).keys(keys.into())
    }

    /// A line that is typed.
    fn text(&self, place: &str, key: &str) -> FormRow {
        let (label, hint) = self.form.words.gym_form().field(key, self.unit);
        let said = self.form.words.gym_form().file_word(key, &self.said(place));
        let field = self.form.field(place, (label, hint), said.clone(), false);
        form_row(place, 1, label).value(said).field(field)
    }

    /// A mass: typed, or in steps of tenths of its unit.
    fn mass_row(&self, place: &str, key: &str, (kilograms, pounds): (i64, i64)) -> FormRow {
        let (label, hint) = self.form.words.gym_form().field(key, self.unit);
        let shown = self.shown(place);
        let (mass, unit) = self.mass(place).unwrap_or((Mass::ZERO, self.unit));
        let tenths = match unit {
            MassUnit::Kilogram => kilograms,
            MassUnit::Pound => pounds,
        };
        let step = Mass::from_nanograms(unit.nanograms() / 10 * tenths);
        let to = |mass: Option<Mass>| {
            mass.filter(|mass| *mass >= Mass::ZERO).map(|mass| mass_text(mass, unit))
        };
        let steps = (to(mass.checked_sub(step)), to(mass.checked_add(step)));
        form_row(place, 1, label)
            .value(shown.clone())
            .steps(self.form.steps(place, label, steps.0, steps.1))
            .field(self.form.field(place, (label, hint), shown, true))
    }

    /// What is open, key by key.
    fn part(&self, at: &str) -> Vec<FormRow> {
        let place = |key: &str| format!("{at}.{key}");
        let (list, nth) = at.split_once('.').unwrap_or((at, ""));
        let nth: usize = nth.parse().unwrap_or_default();
        let kind = self.said(&place("kind"));
        let kind =
            self.text(&place("kind"), "kind").value(self.form.words.by_hand().usual_name(&kind));
        let head = || vec![self.text(&place("name"), "name"), kind.clone()];
        let mut rows = match list {
            "bar" => {
                let mut rows = head();
                rows.push(self.mass_row(&place("mass"), "mass", (10, 10)));
                rows.push(self.mass_row(&place("collars"), "collars", (5, 10)));
                rows.push(self.text(&place("sleeve"), "sleeve"));
                rows
            }
            "plate" => {
                let shown = self.form.words.gym_form().field("pairs", self.unit);
                let pairs = (0, u32::from(bounds::PAIRS));
                let (single, _) = self.form.words.gym_form().field("single", self.unit);
                let mut rows = vec![
                    self.mass_row(&place("mass"), "mass", (5, 10)),
                    self.count(&place("pairs"), &place("pairs"), shown.0, pairs, |n| n.to_string()),
                    self.count(&place("single"), &place("single"), single, (0, 1), |n| {
                        n.to_string()
                    }),
                    self.weighs_row(at),
                ];
                rows.extend(
                    ["thickness", "diameter", "colour"].map(|key| self.text(&place(key), key)),
                );
                rows
            }
            "dumbbells" => {
                let mut rows = head();
                rows.push(self.pairs_row(at));
                rows.extend(self.loads(at));
                rows
            }
            "stack" => {
                let mut rows = head();
                rows.extend(self.stack(at));
                rows
            }
            _ => {
                let mut rows = head();
                rows.push(self.mass_row(&place("start"), "start", (50, 100)));
                let (posts, _) = self.form.words.gym_form().field("posts", self.unit);
                let id = place("posts");
                let count = self.written.said(&id).map_or("2".to_owned(), |said| said);
                let row = self.count(&id, &id, posts, (1, 2), |_| count.clone());
                rows.push(row);
                rows.push(self.text(&place("sleeve"), "sleeve"));
                rows
            }
        };
        let reach = match list {
            "bar" => self.made.and_then(|gym| gym.reach_of_bar(gym.bars.get(nth)?)),
            "dumbbells" => self.made.and_then(|gym| gym.dumbbells.get(nth)?.reach()),
            "stack" => self.made.and_then(|gym| gym.stacks.get(nth)?.reach()),
            "machine" => self.made.and_then(|gym| gym.reach_of_machine(gym.machines.get(nth)?)),
            _ => None,
        };
        if let Some(reach) = reach {
            rows.insert(0, form_row("reach", 1, self.reach(Some(reach))));
        }
        if list != "plate" && nth > 0 {
            let say = self.form.words.gym_form();
            let by = i32::try_from(nth).map_or(0, |nth| -nth);
            let first = self.form.edits("first", say.usual_one(), at, Edit::Move { by });
            rows.push(
                form_row("order", 1, say.usual_one().0)
                    .keys(vec![first.then(self.form.look(&format!("{list}.0")))]),
            );
        }
        rows
    }

    /// What one really weighs; without it, what stands on it.
    fn weighs_row(&self, at: &str) -> FormRow {
        let place = format!("{at}.weighs");
        if self.written.said(&place).is_some() {
            return self.mass_row(&place, "weighs", (1, 1)).keys(vec![self.remove(&place)]);
        }
        let (label, hint) = self.form.words.gym_form().field("weighs", self.unit);
        let shown = self.shown(&format!("{at}.mass"));
        let (mass, unit) = self.mass(&format!("{at}.mass")).unwrap_or((Mass::ZERO, self.unit));
        let step = Mass::from_nanograms(unit.nanograms() / 10);
        let to = |mass: Option<Mass>| mass.map(|mass| mass_text(mass, unit));
        let steps = (to(mass.checked_sub(step)), to(mass.checked_add(step)));
        form_row(&place, 1, label)
            .value(shown.clone())
            .steps(self.form.steps(&place, label, steps.0, steps.1))
            .field(self.form.field(&place, (label, hint), shown, true))
    }

    /// One or two of each.
    fn pairs_row(&self, at: &str) -> FormRow {
        let say = self.form.words.gym_form();
        let place = format!("{at}.pairs");
        let on = self.said(&place) != "false";
        let keys = [true, false].map(|is| {
            let edit = Edit::Put { text: is.to_string() };
            let key = self.form.edits(is.to_string(), say.flag("pairs", is), &place, edit);
            key.chosen(is == on).enabled(is != on)
        });
        form_row(&place, 1, say.flag("pairs", on)).keys(keys.into())
    }

    /// The loads of a rack or a stack: as a range, and one by one, so that one that is missing can go.
    fn loads(&self, at: &str) -> Vec<FormRow> {
        let mut rows = Vec::new();
        let listed = self.written.count(&format!("{at}.loads"));
        if listed == 0 {
            let step = self.mass(&format!("{at}.step"));
            // In whole tenths of the unit: what a range goes in.
            let tenths = step.map_or((10, 50), |(step, unit)| {
                let tenths = step.nanograms() / (unit.nanograms() / 10).max(1);
                (tenths.max(1), tenths.max(1))
            });
            rows.push(self.mass_row(&format!("{at}.from"), "from", tenths));
            rows.push(self.mass_row(&format!("{at}.to"), "to", tenths));
            rows.push(self.mass_row(&format!("{at}.step"), "step", (5, 5)));
        }
        let labels: Vec<String> = if listed > 0 {
            (0..listed).map(|nth| self.shown(&format!("{at}.loads.{nth}"))).collect()
        } else {
            self.ranged(at)
        };
        rows.extend(labels.into_iter().enumerate().map(|(nth, label)| {
            let place = format!("{at}.loads.{nth}");
            form_row(&place, 2, label).keys(vec![self.remove(&place)])
        }));
        rows.push(self.one_more(&format!("{at}.loads"), "loads"));
        rows
    }

    /// The loads of a range.
    fn ranged(&self, at: &str) -> Vec<String> {
        let (unit, numerals) = (self.unit, self.form.words.numerals);
        let (list, nth) = at.split_once('.').unwrap_or((at, ""));
        let nth: usize = nth.parse().unwrap_or_default();
        let Some(gym) = self.made else { return Vec::new() };
        let loads: Vec<Mass> = match list {
            "dumbbells" => {
                gym.dumbbells.get(nth).map(|rack| rack.loads.clone()).unwrap_or_default()
            }
            _ => {
                let pins = gym.stacks.get(nth).map(|stack| stack.pins.as_slice());
                pins.unwrap_or_default().iter().filter_map(|pin| pin.load).collect()
            }
        };
        loads.into_iter().map(|load| load.print(unit, numerals)).collect()
    }

    fn one_more(&self, list: &str, key: &str) -> FormRow {
        let said = self.form.words.gym_form().add_other(key, self.unit);
        let (label, place) = (said.0, format!("{list}.{MORE}"));
        form_row(format!("{list}-more"), 2, label).field(self.form.field(&place, said, "", true))
    }

    fn stack(&self, at: &str) -> Vec<FormRow> {
        let say = self.form.words.gym_form();
        let pins = format!("{at}.pins");
        let by_pins = self.written.said(&pins).is_some();
        let by = format!("{at}.{BY}");
        let keys = [true, false].map(|is| {
            let text = if is { "pins" } else { "loads" };
            let edit = Edit::Put { text: text.to_owned() };
            let key = self.form.edits(text, say.by(is), &by, edit);
            key.chosen(is == by_pins).enabled(is != by_pins)
        });
        let mut rows = vec![form_row(by, 1, say.by(by_pins)).keys(keys.into())];
        if by_pins {
            let (label, hint) = say.field("pins", self.unit);
            let most = u32::try_from(bounds::STEPS).unwrap_or(u32::MAX);
            let named = self.written.count(&pins);
            let row = if named > 0 {
                form_row(&pins, 1, label).value(self.said(&pins))
            } else {
                self.count(&pins, &pins, label, (1, most), |count| count.to_string())
            };
            let field = self.form.field(&pins, (label, hint), self.said(&pins), named == 0);
            rows.push(row.field(field));
            return rows;
        }
        rows.extend(self.loads(at));
        let tops = self.written.count(&format!("{at}.add_ons"));
        rows.extend((0..tops).map(|nth| {
            let place = format!("{at}.add_ons.{nth}");
            let keys = vec![self.remove(&place)];
            form_row(&place, 2, say.add_on(&self.shown(&place))).keys(keys)
        }));
        rows.push(self.one_more(&format!("{at}.add_ons"), "add_ons"));
        let ratio = format!("{at}.ratio");
        let now = self.written.said(&ratio).unwrap_or_else(|| "1:1".to_owned());
        let (label, _) = say.field("ratio", self.unit);
        let keys = ["1:1", "1:2", "1:3", "1:4", "2:1"].map(|text| {
            let edit = Edit::Put { text: text.to_owned() };
            self.form.edits(text, text, &ratio, edit).chosen(text == now).enabled(text != now)
        });
        rows.push(form_row(&ratio, 1, label).value(now.clone()).keys(keys.into()));
        rows
    }
}
