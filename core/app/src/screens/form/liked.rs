//! Which loads a lifter likes: in whole steps, without the smallest plates. Each step holds at once, and
//! shows the next session with it; its way back is the step back.

use barwright_domain::quantity::Mass;
use barwright_domain::session::{CallLoad, SetKind};

use super::super::key::shows;
use super::super::name;
use super::{Form, form_row, form_screen};
use crate::contract::{Edit, FormOf, FormScreen, Key, Look};
use crate::facts::{Held, LikedForm, LikedOf, liked_plates, liked_steps};
use crate::phrase::Words;

pub(in crate::screens) fn screen(held: &Held, of: &LikedForm, words: Words) -> FormScreen {
    let (say, unit, numerals) = (words.liked(), held.gym().unit, words.numerals);
    let at = of.of.name();
    let form = Form::of_what_stands(FormOf::Liked, &at, words);
    let stands = of.of.stands(held);
    let row = |id: &str, text: &str, now: Option<Mass>, all: &[Option<Mass>]| {
        let place = format!("{at}/{id}");
        let written = |mass: &Option<Mass>| mass.map(Mass::kilograms).unwrap_or_default();
        let here = all.iter().position(|one| *one == now);
        let beside = |back: bool| {
            let here = here?;
            let next = if back { here.checked_sub(1)? } else { here + 1 };
            all.get(next).map(written)
        };
        let key = |id: &str, up: bool, to: Option<String>| -> Key {
            let enabled = to.is_some();
            let edit = Edit::Put { text: to.unwrap_or_default() };
            form.puts(id, words.by_hand().step(up, text), &place, edit).enabled(enabled)
        };
        let said = now.map(|mass| mass.print(unit, numerals));
        form_row(id, 1, text)
            .value(said.unwrap_or_else(|| say.any().to_owned()))
            .steps((Some(key("down", false, beside(true))), Some(key("up", true, beside(false)))))
    };
    let rows = vec![
        row("step", say.step(), stands.step, &liked_steps(unit)),
        row("smallest", say.smallest(), stands.smallest, &liked_plates(held)),
    ];
    let title = match &of.of {
        LikedOf::Gym(name) => say.title(&name::gym(held, name, words)),
        LikedOf::Lift(slug) => say.title(&name::exercise(held, slug, slug, words)),
    };
    let subtitle = say.subtitle().to_owned();
    let loads = of.next.iter().flat_map(|next| next.sheet.entries()).filter_map(|entry| {
        let name = name::exercise(held, &entry.exercise, &entry.name, words);
        let work = entry.calls.iter().filter(|call| call.kind != SetKind::Ramp);
        let load = work.into_iter().find_map(|call| match &call.load {
            // The body alone is no load that could be liked.
            CallLoad::Known(load) => {
                load.figure.filter(|figure| *figure != Mass::ZERO).map(|figure| (figure, load))
            }
            CallLoad::AfterTop { .. } | CallLoad::Chosen { .. } => None,
        });
        load.map(|(figure, load)| {
            say.next(&name, &words.words().load(figure, load.counting, unit, numerals))
        })
    });
    let back = match &of.of {
        LikedOf::Gym(_) => Look::Equipment,
        LikedOf::Lift(slug) => Look::Lift { exercise: slug.clone(), page: 0, all: false },
    };
    let keys = vec![shows("leave", words.by_hand().back(), back)];
    FormScreen { notes: loads.collect(), ..form_screen(title, subtitle, rows, keys, words) }
}
