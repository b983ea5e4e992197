//! Records that are handed on as a file: all of them, or what a lifter sends to a coach. From here
//! those of another phone are opened, too.

use super::super::key::shows;
use super::coming::withdraws;
use super::{Form, form_row, form_screen};
use crate::contract::{FormFile, FormOf, FormScreen, Key, Look};
use crate::facts::{ComingPart, Handed, HandedPart, Held};
use crate::phrase::Words;

/// The look at what a coach gets.
pub(in crate::screens) fn look() -> Look {
    Look::Form { of: FormOf::Records, at: String::new(), text: String::new() }
}

/// What goes out, and the file.
pub(in crate::screens) fn screen(held: &Held, handed: &Handed, words: Words) -> FormScreen {
    let say = words.records();
    let form = Form::of_what_stands(FormOf::Records, "", words);
    let part = handed.part;
    let turns = |id: &str, to: HandedPart, said, chosen: bool| -> Key {
        shows(id, said, form.look(&to.name())).chosen(chosen)
    };
    let (all, of_coach) = (part == HandedPart::All, HandedPart::default());
    let row = |id: &str, depth, (text, detail): (String, &str), key| {
        form_row(id, depth, text).detail(detail).keys(vec![key])
    };
    let coach = turns("coach", of_coach, say.choose(), !all);
    let mut rows = vec![row("coach", 1, say.for_coach(handed.since), coach)];
    if let HandedPart::SinceADay { body_mass, notes } = part {
        let with = |body_mass, notes| HandedPart::SinceADay { body_mass, notes };
        let mass = turns("body-mass", with(!body_mass, notes), say.turn(body_mass), body_mass);
        rows.push(row("body-mass", 2, say.body_mass(), mass));
        let note = turns("notes", with(body_mass, !notes), say.turn(notes), notes);
        rows.push(row("notes", 2, say.notes(), note));
    }
    let whole = turns("all", HandedPart::All, say.choose(), all);
    rows.push(row("all", 1, say.all(), whole));
    let (from, detail) = say.from_file();
    let opens =
        shows("open", say.to_file(), form.look(&ComingPart::Ask.name())).enabled(!held.demo);
    rows.push(form_row("from-file", 1, from).detail(detail).keys(vec![opens]));
    let today = Look::Today { session: None, minutes: None };
    let leave = shows("leave", words.by_hand().back(), today);
    let keys = [leave].into_iter().chain(withdraws(held, handed.came, words)).collect();
    let subtitle = say.handed(handed.sessions, handed.bytes);
    let file = handed.text.as_ref().map(|text| {
        let name = if all { "records.jsonl" } else { "return.jsonl" };
        FormFile { name: name.to_owned(), text: text.clone() }
    });
    let notes = if file.is_none() { vec![say.too_large().to_owned()] } else { Vec::new() };
    let form = form_screen(say.title(), subtitle, rows, keys, words);
    FormScreen { file, notes, ..form }
}
