//! Exercises that the plan adds to the catalogue.

use std::borrow::Cow;

use super::super::bounds;
use super::super::shapes;
use super::{Names, all, word};
use crate::catalogue::{Catalogue, Counting, Exercise, Measure, Movement, Muscle};
use crate::quantity::Percent;
use crate::text::{Item, Problem, Table, slug};

const MEASURES: [Measure; 3] = [Measure::Reps, Measure::Seconds, Measure::Metres];

/// Reads them; each may be like one of the catalogue or one before it.
pub(super) fn exercises(root: &Table<'_>, catalogue: &Catalogue) -> Vec<Exercise> {
    let list =
        root.get("exercise").and_then(|item| item.list(bounds::OWN_EXERCISES)).unwrap_or_default();
    let mut made: Vec<(Exercise, usize)> = Vec::new();
    for item in list {
        let read = item.table(&shapes::OWN_EXERCISE, |table| {
            let known = catalogue.clone().with_own(made.iter().map(|(own, _)| own.clone()));
            let exercise = exercise(table, &Names::of(&known))?;
            if let Some((_, first_line)) = made.iter().find(|(own, _)| own.slug == exercise.slug) {
                table.fault_at("name", Problem::Repeated { first_line: *first_line });
                return None;
            }
            Some(exercise)
        });
        made.extend(read.map(|exercise| (exercise, item.line())));
    }
    made.into_iter().map(|(exercise, _)| exercise).collect()
}

pub(super) fn exercise(table: &Table<'_>, names: &Names<'_>) -> Option<Exercise> {
    let name = super::name(table);
    let slug = name.as_deref().map(slug);
    if slug.as_deref() == Some("") {
        table.fault_at("name", Problem::Empty);
    }
    let like = table.get("like").map(|item| names.exercise(&item));
    // What `like` could not be found for is not asked for twice.
    let needed = like.is_none();
    let like = like.flatten();
    let get = |key: &'static str| {
        if needed && !table.has(key) { table.need(key) } else { table.get(key) }
    };
    let movement = get("movement")
        .and_then(|item| item.word(shapes::MOVEMENTS))
        .and_then(|at| Movement::ALL.get(at).copied())
        .or(like.map(|like| like.movement));
    let implement = get("implement")
        .and_then(|item| item.text(bounds::NAME))
        .map(|text| Cow::Owned(text.to_string()))
        .or(like.map(|like| like.implement.clone()));
    let direct =
        get("direct").and_then(|item| muscles(&item)).or(like.map(|like| like.direct.clone()));
    let indirect = table
        .get("indirect")
        .and_then(|item| muscles(&item))
        .or(like.map(|like| like.indirect.clone()));
    let list = |key: &'static str| {
        let list: Option<Vec<Item<'_>>> = table.get(key).and_then(|item| item.list(bounds::NAMES));
        let texts = list?.into_iter().filter_map(|item| item.text(bounds::NAME));
        Some(crate::catalogue::Names::Own(texts.map(str::to_string).collect()))
    };
    let none = crate::catalogue::Names::NONE;
    let flag = |key: &'static str, like: Option<bool>| {
        table.get(key).and_then(|item| item.flag()).or(like).unwrap_or_default()
    };
    let also = list("also").unwrap_or(none.clone());
    let needs = list("needs").or(like.map(|like| like.needs.clone())).unwrap_or(none);
    let one_sided = flag("one_sided", like.map(|like| like.one_sided));
    let body_share = table
        .get("body_share")
        .and_then(|item| super::share_off(&item))
        .or(like.map(|like| like.body_share))
        .unwrap_or(Percent::whole(0));
    let counting = word(table, "counted", shapes::COUNTINGS, &Counting::ALL)
        .or(like.map(|like| like.counting))
        .unwrap_or(Counting::Total);
    let measure = word(table, "measured_in", shapes::MEASURES, &MEASURES)
        .or(like.map(|like| like.measure))
        .unwrap_or(Measure::Reps);
    let main_lift = flag("main_lift", like.map(|like| like.main_lift));
    let from_floor = flag("from_floor", like.map(|like| like.from_floor));
    let over_body = flag("over_body", like.map(|like| like.over_body));
    Some(Exercise {
        slug: Cow::Owned(slug.filter(|slug| !slug.is_empty())?),
        name: Cow::Owned(name?),
        also,
        german: crate::catalogue::Names::NONE,
        movement: movement?,
        implement: implement?,
        needs,
        direct: direct?,
        indirect: indirect.unwrap_or(Cow::Borrowed(&[])),
        one_sided,
        body_share,
        counting,
        measure,
        main_lift,
        from_floor,
        over_body,
    })
}

fn muscles(item: &Item<'_>) -> Option<Cow<'static, [Muscle]>> {
    let list = item.list(bounds::NAMES)?;
    let muscle =
        |item: &Item<'_>| item.word(shapes::MUSCLES).and_then(|at| Muscle::ALL.get(at).copied());
    all(list.iter().map(muscle)).map(Cow::Owned)
}
