//! The exercises there are: looked for, read, and one's own made.

use barwright_domain::catalogue::{Exercise, Movement, Muscle, Searched};
use barwright_domain::desk::{Draft, DraftOf};
use barwright_domain::plan::read_exercise;
use barwright_domain::text::edit::Written;

use super::super::key::{does, shows};
use super::{Form, beside, file_name, form_row, form_screen};
use crate::contract::{Edit, FormFile, FormOf, FormRow, FormScreen, Intent, Look};
use crate::facts::Held;
use crate::facts::form::FIND;
use crate::phrase::Words;

/// Exercises that are listed at once; of more, a word finds fewer.
const LISTED: usize = 200;
/// The part of the form where one is being made.
const DRAFT: &str = "draft";
/// What a page shows, in order.
const LINES: [&str; 12] = [
    "also",
    "movement",
    "implement",
    "needs",
    "direct",
    "indirect",
    "one_sided",
    "body_share",
    "counted",
    "measured_in",
    "from_floor",
    "over_body",
];
/// Words for how a load is counted and what a set is measured in, as the file writes them.
const COUNTED: [&str; 7] =
    ["total", "each hand", "one", "stack", "each side", "added", "unnumbered"];
const MEASURED: [&str; 3] = ["reps", "seconds", "metres"];

/// The look at the list, or at an exercise by its slug.
pub(in crate::screens) fn look(at: &str) -> Look {
    Look::Form { of: FormOf::Exercises, at: at.to_owned(), text: String::new() }
}

/// The list, a page, or the one that is being made.
pub(in crate::screens) fn screen(held: &Held, at: &str, text: &str, words: Words) -> FormScreen {
    let (open, part) = at.split_once('/').unwrap_or((at, ""));
    match (held.desk.drafts.get(&DraftOf::Exercise), held.catalogue.get(open)) {
        (Some(draft), _) if open == DRAFT => making(held, draft, (at, part), words),
        (_, Some(exercise)) => page(held, exercise, words),
        _ => list(held, text, words),
    }
}

fn list(held: &Held, text: &str, words: Words) -> FormScreen {
    let say = words.exercises();
    let Searched { exercises: found, near } = held.catalogue.search(text);
    let form = Form::of_what_stands(FormOf::Exercises, "", words);
    let field = form.field(FIND, say.find(), text, false);
    let mut rows = vec![form_row(FIND, 1, say.find().0).value(text).field(field)];
    rows.extend(found.iter().take(LISTED).map(|exercise| {
        let open = shows("open", words.by_hand().open(), look(&exercise.slug));
        form_row(exercise.slug.as_ref(), 1, words.words().exercise(exercise))
            .detail(say.detail(exercise))
            .keys(vec![open])
    }));
    let subtitle =
        if near { say.near(text, !found.is_empty()) } else { say.found(found.len(), text) };
    let mut keys = Vec::new();
    if !text.is_empty() {
        keys.push(shows("leave", words.by_hand().back(), look("")));
    }
    if held.desk.drafts.contains_key(&DraftOf::Exercise) {
        keys.push(shows("go-on", say.go_on(), look(DRAFT)));
    }
    form_screen(say.title().to_owned(), subtitle, rows, keys, words)
}

fn page(held: &Held, exercise: &Exercise, words: Words) -> FormScreen {
    let say = words.exercises();
    let rows = LINES
        .iter()
        .map(|key| (key, value(key, exercise, words)))
        .filter(|(_, value)| !value.is_empty())
        .map(|(key, value)| form_row(*key, 1, say.line(key)).value(value));
    let name = words.words().exercise(exercise);
    let begins = |id: &str, said: (&'static str, String), place: String| {
        let (of, edit) = (FormOf::Exercises, Edit::Open);
        does(id, said, Intent::Edit { of, place, edit, step: None }).then(look(DRAFT))
    };
    let slug = exercise.slug.to_string();
    let lift = Look::Lift { exercise: slug.clone(), page: 0, all: false };
    let mut keys = vec![shows("leave", words.by_hand().back(), look(""))];
    keys.push(shows("history", say.history(), lift));
    if held.desk.drafts.contains_key(&DraftOf::Exercise) {
        keys.push(shows("go-on", say.go_on(), look(DRAFT)));
    } else {
        if held.desk.exercises.iter().any(|own| own.slug == slug) {
            keys.push(begins("mend", say.mend(&name), format!("own:{slug}")));
        }
        if held.known.get(&slug).is_some() {
            keys.push(begins("like", say.like(&name), format!("like:{slug}")));
        }
    }
    form_screen(name, say.detail(exercise), rows.collect(), keys, words)
}

/// What a line of a page says.
fn value(key: &str, exercise: &Exercise, words: Words) -> String {
    let say = words.exercises();
    match key {
        "counted" => say.counted(counted(exercise)),
        "measured_in" => say.counted(measured(exercise)),
        "body_share" if exercise.body_share.hundredths() == 0 => String::new(),
        "body_share" => exercise.body_share.print(words.numerals),
        key => say.value(key, exercise),
    }
}

fn counted(exercise: &Exercise) -> &'static str {
    COUNTED.get(exercise.counting as usize).copied().unwrap_or("total")
}

fn measured(exercise: &Exercise) -> &'static str {
    MEASURED.get(exercise.measure as usize).copied().unwrap_or("reps")
}

/// The one that is being made: its whole, or a part of it that is open.
fn making(held: &Held, draft: &Draft, (at, part): (&str, &str), words: Words) -> FormScreen {
    let say = words.exercises();
    let read = read_exercise(&draft.text, &held.known);
    let faults = read.as_ref().err().map(Vec::as_slice).unwrap_or_default();
    let written = Written::of(&draft.text);
    let said = |key: &str| written.as_ref().and_then(|it| it.said(key)).unwrap_or_default();
    let form = Form::of_draft(FormOf::Exercises, draft, at, words);
    let make = Make { held, form, read: read.as_ref().ok(), said: &said };
    let mut rows = if part.is_empty() { make.whole() } else { make.part(part) };
    let notes = beside(&mut rows, &draft.text, faults, words);
    let name = said("name");
    let (title, subtitle) = (say.making(&name), words.by_hand().stands(faults.len()));
    let file = FormFile { name: file_name(&name, "exercise"), text: draft.text.clone() };
    let mut keys = form.keys(draft, faults.is_empty());
    for key in keys.iter_mut().filter(|key| key.id == "leave") {
        // The whole of it stands in its own part of the list's form.
        key.action = crate::contract::Action::Show {
            look: if part.is_empty() { look("") } else { look(DRAFT) },
        };
    }
    if part.is_empty() {
        let sound = faults.is_empty();
        let does = |id: &str, said, edit: Edit| {
            let (of, step) = (FormOf::Exercises, Some(draft.step));
            does(id, said, Intent::Edit { of, place: String::new(), edit, step })
        };
        let by_hand = words.by_hand();
        keys.push(does("take-up", by_hand.take_up(), Edit::TakeUp).then(look("")).enabled(sound));
        keys.push(does("drop", by_hand.drop_it(), Edit::Drop).then(look("")));
    }
    let screen = form_screen(title, subtitle, rows, keys, words);
    FormScreen { notes, file: Some(file), ..screen }
}

/// What the rows of one that is being made are made from.
struct Make<'a, F> {
    held: &'a Held,
    form: Form<'a>,
    /// It as it reads; none while something is wrong.
    read: Option<&'a Exercise>,
    said: &'a F,
}

impl<F: Fn(&str) -> String> Make<'_, F> {
    fn whole(&self) -> Vec<FormRow> {
        let say = self.form.words.exercises();
        let typed = |key: &str| {
            let said = (self.said)(key);
            let row = form_row(key, 1, say.line(key)).value(self.value(key));
            row.field(self.form.field(key, (say.line(key), say.hint(key)), said, false))
        };
        let opens = |key: &str| {
            let row = form_row(key, 1, say.line(key)).value(self.value(key));
            row.keys(vec![self.form.opens(&format!("{DRAFT}/{key}"))])
        };
        let mut rows = vec![typed("name"), typed("like")];
        rows.extend(["movement", "direct", "indirect"].map(opens));
        rows.extend(["implement", "needs", "also", "body_share"].map(typed));
        rows.extend(["counted", "measured_in"].map(opens));
        rows.extend(["one_sided", "main_lift", "from_floor", "over_body"].map(|key| {
            let on = self.read.is_some_and(|read| match key {
                "one_sided" => read.one_sided,
                "main_lift" => read.main_lift,
                "from_floor" => read.from_floor,
                _ => read.over_body,
            });
            let edit = Edit::Put { text: (!on).to_string() };
            let key_of = self.form.edits("toggle", say.flag(!on), key, edit);
            form_row(key, 1, say.line(key)).value(say.flag(on)).keys(vec![key_of])
        }));
        rows
    }

    fn value(&self, key: &str) -> String {
        let own = (self.said)(key);
        if key == "like"
            && let Some(like) = self.held.known.find(&own)
        {
            return self.form.words.words().exercise(like);
        }
        match self.read {
            Some(read) if !matches!(key, "like" | "name") => value(key, read, self.form.words),
            _ => own,
        }
    }

    /// The words that may stand at a key, each a press.
    fn part(&self, key: &str) -> Vec<FormRow> {
        let say = self.form.words.exercises();
        let words: Vec<(&str, String, bool)> = match key {
            "movement" => Movement::ALL
                .iter()
                .map(|one| {
                    let chosen = self.read.is_some_and(|read| read.movement == *one);
                    (one.slug(), say.word(one.slug()), chosen)
                })
                .collect(),
            "counted" => COUNTED
                .iter()
                .map(|one| (*one, say.counted(one), self.read.map(counted) == Some(one)))
                .collect(),
            "measured_in" => MEASURED
                .iter()
                .map(|one| (*one, say.counted(one), self.read.map(measured) == Some(one)))
                .collect(),
            "direct" | "indirect" => return self.muscles(key),
            _ => return Vec::new(),
        };
        let rows = words.into_iter().map(|(word, said, chosen)| {
            let edit = Edit::Put { text: word.to_owned() };
            let back = self.form.look(DRAFT);
            let press = self.form.edits("choose", said.clone(), key, edit).then(back);
            let value = if chosen { say.flag(true) } else { "" };
            form_row(word, 1, said).value(value).keys(vec![press.chosen(chosen).enabled(!chosen)])
        });
        std::iter::once(form_row(key, 0, say.line(key))).chain(rows).collect()
    }

    /// Every muscle, trained or not: a press puts it in or takes it out.
    fn muscles(&self, key: &str) -> Vec<FormRow> {
        let say = self.form.words.exercises();
        let of = |read: &Exercise| -> Vec<Muscle> {
            if key == "direct" { read.direct.to_vec() } else { read.indirect.to_vec() }
        };
        let now = self.read.map(of).unwrap_or_default();
        let rows = Muscle::ALL.iter().map(|muscle| {
            let on = now.contains(muscle);
            let mut next: Vec<Muscle> = now.iter().copied().filter(|one| one != muscle).collect();
            if !on {
                next.push(*muscle);
            }
            let text: Vec<&str> = next.iter().map(|one| one.slug()).collect();
            let edit = Edit::Put { text: text.join(", ") };
            let name = self.form.words.muscle().name(*muscle);
            let press = self.form.edits("toggle", say.flag(!on), key, edit);
            // With none left it would be that of the one it is like.
            let press = press.enabled(!next.is_empty());
            form_row(muscle.slug(), 1, name).value(say.flag(on)).keys(vec![press])
        });
        std::iter::once(form_row(key, 0, say.line(key))).chain(rows).collect()
    }
}
