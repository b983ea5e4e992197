//! Rows of sets: what an exercise says for all of them, and what each says for itself.

use super::super::bounds;
use super::super::line::{Course, Line, OnSets, PerSet, Rests, Varied, Weeks};
use super::super::shapes;
use super::{Names, all, words};
use crate::call::{
    ContinuedPart, EffortTarget, HowMany, LoadCall, Manner, MaxOf, RangePart, Side, Stop, Structure,
};
use crate::catalogue::{Counting, Exercise};
use crate::quantity::{Numerals, Percent, Range, RepRange, Reserve, Rpe, Seconds, Tempo};
use crate::shown::excerpt;
use crate::text::{Expected, Found, Item, Problem, Shape, Table};

/// The pause between the parts of a set where the plan names none (common practice: 15–20 s).
const USUAL_PAUSE: Seconds = Seconds::new(20);
/// The most sets of a climb or a total where the plan names no other number.
const USUAL_MOST: u8 = 10;
/// Short parts of a rest-pause set where the plan names no other number.
const USUAL_PARTS: u8 = 5;

/// What all rows of an exercise share.
pub(super) struct Shared<'n, 'c> {
    /// Exercises by name.
    pub(super) names: &'n Names<'c>,
    /// The exercise the rows are of.
    pub(super) exercise: Option<&'n Exercise>,
    /// The max that a percentage is of where it names none.
    pub(super) percent_of: MaxOf,
    /// Weeks of the plan.
    pub(super) weeks: usize,
    /// Rests of the exercise, session and plan together, for pauses that are not written.
    pub(super) rest: Rests,
}

/// What a table says of a row; what it does not say is none.
#[derive(Clone, Default)]
pub(super) struct Written {
    sets: Option<Varied<u8>>,
    how_many: Option<Varied<PerSet<HowMany>>>,
    load: Option<Varied<PerSet<LoadCall>>>,
    effort: Option<Varied<PerSet<EffortTarget>>>,
    course: Option<Course>,
    structure: Option<Structure>,
    on_sets: Option<OnSets>,
    tempo: Option<Tempo>,
    technique: Option<String>,
    part_techniques: Option<Vec<String>>,
    speed: Option<bool>,
    /// Rests that the row itself says.
    pub(super) rest: Rests,
    /// Something was written that could not be read: what follows from its lack is no fault.
    broken: bool,
}

/// One of several keys that say the same kind of thing: the key, its table by week, its reader.
type Way<T> = (&'static str, &'static Shape, fn(&Item<'_>) -> Option<T>);

const WORK: &[&str] = &["reps", "seconds", "metres"];
const EFFORT: &[&str] = &["left", "rpe"];
const COURSES: &[&str] = &["climb", "repeat", "total", "every", "test"];
const STRUCTURES: &[&str] = &["cluster", "rest_pause", "drop", "ranges", "continued"];

/// Reads the keys that an exercise and a row share; `rest` is what the table says of rests.
pub(super) fn written(table: &Table<'_>, shared: &Shared<'_, '_>, rest: Rests) -> Written {
    for group in [WORK, EFFORT, COURSES, STRUCTURES] {
        for (at, key) in group.iter().enumerate() {
            table.clash(key, group.get(at + 1..).unwrap_or_default());
        }
    }
    table.clash("speed", EFFORT);
    table.clash("repeat", &["sets"]);
    table.clash("climb", &["sets"]);
    table.clash("total", &["sets"]);
    table.clash("test", &["sets"]);
    let mut broken = false;
    let weeks = shared.weeks;
    let sets = table.get("sets").and_then(|item| {
        noted(&mut broken, varied(&item, weeks, &shapes::SETS_BY_WEEK, set_count))
    });
    let work: [Way<HowMany>; 3] = [
        ("reps", &shapes::REPS_BY_WEEK, words::reps),
        ("seconds", &shapes::SECONDS_BY_WEEK, words::seconds),
        ("metres", &shapes::METRES_BY_WEEK, words::metres),
    ];
    let mut how_many = None;
    for (key, shape, read) in work {
        if let Some(item) = table.get(key) {
            let read = varied(&item, weeks, shape, |item| per_set(item, read));
            how_many = how_many.or(noted(&mut broken, read));
        }
    }
    let load = table.get("load").and_then(|item| {
        let one = |item: &Item<'_>| words::load(item, shared.names, &shared.percent_of);
        let read = varied(&item, weeks, &shapes::LOAD_BY_WEEK, |item| per_set(item, one));
        noted(&mut broken, read)
    });
    let mut effort = None;
    let efforts: [Way<EffortTarget>; 2] =
        [("left", &shapes::LEFT_BY_WEEK, left), ("rpe", &shapes::RPE_BY_WEEK, rpe)];
    for (key, shape, read) in efforts {
        if let Some(item) = table.get(key) {
            let read = varied(&item, weeks, shape, |item| per_set(item, read));
            effort = effort.or(noted(&mut broken, read));
        }
    }
    let pause = rest.or(shared.rest).in_set.unwrap_or(USUAL_PAUSE);
    let text = |item: Item<'_>| item.text(bounds::SHORT).map(str::to_string);
    Written {
        sets,
        how_many,
        load,
        effort,
        course: course(table, shared.exercise, &mut broken),
        structure: structure(table, shared, pause, &mut broken),
        on_sets: table.get("on_sets").and_then(|item| on_sets(&item)),
        tempo: table.get("tempo").and_then(|item| item.tempo()),
        technique: table.get("technique").and_then(text),
        part_techniques: table
            .get("part_techniques")
            .and_then(|item| item.list(bounds::PARTS))
            .map(|list| list.into_iter().filter_map(text).collect()),
        speed: table.get("speed").and_then(|item| item.flag()),
        rest,
        broken,
    }
}

impl Written {
    /// This row, and where it says nothing, what the exercise says. A row that says how many, how
    /// hard or what it is made of in one way takes nothing of the other ways.
    pub(super) fn or(self, exercise: &Self) -> Self {
        let exercise = exercise.clone();
        Self {
            sets: self.sets,
            how_many: self.how_many.or(exercise.how_many),
            load: self.load.or(exercise.load),
            effort: if self.speed == Some(true) {
                self.effort
            } else {
                self.effort.or(exercise.effort)
            },
            course: self.course.or(exercise.course),
            on_sets: if self.structure.is_some() {
                self.on_sets
            } else {
                self.on_sets.or(exercise.on_sets)
            },
            structure: self.structure.or(exercise.structure),
            tempo: self.tempo.or(exercise.tempo),
            technique: self.technique.or(exercise.technique),
            part_techniques: self.part_techniques.or(exercise.part_techniques),
            speed: self.speed.or(exercise.speed),
            rest: self.rest,
            broken: self.broken || exercise.broken,
        }
    }

    /// The row, with `own` of what only a row says. `table` is where faults are noted.
    pub(super) fn line(
        self,
        table: &Table<'_>,
        shared: &Shared<'_, '_>,
        own: (Weeks, Option<Side>, Vec<String>),
    ) -> Option<Line> {
        let (weeks, side, cues) = own;
        let broken = self.broken;
        let course = self.course.unwrap_or_default();
        let structure = self.structure.unwrap_or_default();
        let on_sets = self.on_sets.unwrap_or_default();
        if on_sets != OnSets::All && structure == Structure::Straight && !broken {
            table.fault_at("on_sets", Problem::MissingOneOf { keys: STRUCTURES });
        }
        if matches!(course, Course::Climb { .. } | Course::Repeat { .. })
            && self.effort.is_none()
            && !broken
        {
            let key = if matches!(course, Course::Climb { .. }) { "climb" } else { "repeat" };
            table.fault_at(key, Problem::MissingOneOf { keys: EFFORT });
        }
        let opening = structure.opening();
        let open = HowMany::Open { at_least: 1, stop: Stop::Form };
        let implied = match course {
            Course::Total { .. } => Some(open),
            Course::Test { .. } => Some(HowMany::Reps(RepRange::just(1))),
            _ => opening,
        };
        if on_sets == OnSets::All
            && let (Some(opening), Some(Varied::Same(written))) = (opening, &self.how_many)
            && written.iter().any(|how_many| *how_many != opening)
        {
            let with =
                if matches!(structure, Structure::Cluster { .. }) { "cluster" } else { "ranges" };
            table.fault_at("reps", Problem::Clash { key: "reps", with });
        }
        let how_many = self.how_many.or(implied.map(|how_many| Varied::Same(vec![how_many])));
        if how_many.is_none() && !broken {
            table.missing(Problem::MissingOneOf { keys: WORK });
        }
        let how_many = how_many?;
        let load = self.load.unwrap_or_else(|| {
            let body = shared.exercise.is_some_and(|own| own.counting == Counting::Added);
            Varied::Same(vec![if body { LoadCall::Body } else { LoadCall::ByFeel }])
        });
        let effort = self.effort;
        let sets =
            self.sets.unwrap_or_else(|| longest(&how_many, &load, effort.as_ref(), shared.weeks));
        check_lengths(table, &sets, ("reps", &how_many), shared.weeks);
        check_lengths(table, &sets, ("load", &load), shared.weeks);
        if let Some(effort) = &effort {
            check_lengths(table, &sets, ("left", effort), shared.weeks);
        }
        Some(Line {
            weeks,
            side,
            sets,
            how_many,
            load,
            effort,
            course,
            structure,
            on_sets,
            manner: Manner {
                tempo: self.tempo,
                technique: self.technique,
                part_techniques: self.part_techniques.unwrap_or_default(),
                cues,
            },
            speed: self.speed.unwrap_or_default(),
            rest: self.rest,
        })
    }
}

/// Remembers that what was written could not be read.
fn noted<T>(broken: &mut bool, read: Option<T>) -> Option<T> {
    *broken |= read.is_none();
    read
}

/// As many sets as the longest list names, week by week.
fn longest(
    how_many: &Varied<PerSet<HowMany>>,
    load: &Varied<PerSet<LoadCall>>,
    effort: Option<&Varied<PerSet<EffortTarget>>>,
    weeks: usize,
) -> Varied<u8> {
    let of = |week: usize| {
        let length = how_many.at(week).map_or(1, Vec::len);
        let length = length.max(load.at(week).map_or(1, Vec::len));
        let length = length.max(effort.and_then(|effort| effort.at(week)).map_or(1, Vec::len));
        u8::try_from(length).unwrap_or(u8::MAX)
    };
    let counts: Vec<u8> = (0..weeks).map(of).collect();
    let first = counts.first().copied().unwrap_or(1);
    if counts.iter().all(|count| *count == first) {
        Varied::Same(first)
    } else {
        Varied::ByWeek(counts)
    }
}

/// A list for each set must go into the number of sets without a rest.
fn check_lengths<T>(
    table: &Table<'_>,
    sets: &Varied<u8>,
    (key, lists): (&str, &Varied<PerSet<T>>),
    weeks: usize,
) {
    let uneven = (0..weeks).find_map(|week| {
        let count = usize::from(*sets.at(week)?);
        let length = lists.at(week)?.len();
        (count.checked_rem(length)? != 0).then_some((count, length))
    });
    if let Some((expected, found)) = uneven {
        let key = match key {
            "reps" => WORK.iter().find(|key| table.has(key)).unwrap_or(&"reps"),
            "left" => EFFORT.iter().find(|key| table.has(key)).unwrap_or(&"left"),
            other => other,
        };
        table.fault_at(key, Problem::WrongCount { expected, found });
    }
}

/// A value, or a table with one for each week.
fn varied<T>(
    item: &Item<'_>,
    weeks: usize,
    shape: &'static Shape,
    one: impl Fn(&Item<'_>) -> Option<T>,
) -> Option<Varied<T>> {
    if item.found() != Found::Table {
        return one(item).map(Varied::Same);
    }
    item.table(shape, |table| {
        let by_week = table.need("by_week")?;
        let list = by_week.list(bounds::WEEKS)?;
        // A shorter list starts again, so it must end where the plan does.
        if weeks.checked_rem(list.len()).is_some_and(|over| over != 0) {
            by_week.fault(Problem::WrongCount { expected: weeks, found: list.len() });
        }
        all(list.iter().map(one)).filter(|list| !list.is_empty()).map(Varied::ByWeek)
    })
}

/// A value, or a list with one for each set.
fn per_set<T>(item: &Item<'_>, one: impl Fn(&Item<'_>) -> Option<T>) -> Option<PerSet<T>> {
    if item.found() == Found::List {
        let list = item.list(bounds::SETS)?;
        all(list.iter().map(one)).filter(|list| !list.is_empty())
    } else {
        one(item).map(|one| vec![one])
    }
}

fn set_count(item: &Item<'_>) -> Option<u8> {
    small(item, 0, bounds::SETS)
}

fn small(item: &Item<'_>, least: i64, greatest: usize) -> Option<u8> {
    let greatest = i64::try_from(greatest).unwrap_or(i64::MAX);
    item.whole(least, greatest).and_then(|value| u8::try_from(value).ok())
}

/// Reads repetitions left.
pub(super) fn left(item: &Item<'_>) -> Option<EffortTarget> {
    item.reserve().map(|left: Range<Reserve>| EffortTarget::left(left.from, left.to))
}

/// Reads an RPE.
pub(super) fn rpe(item: &Item<'_>) -> Option<EffortTarget> {
    item.rpe().map(|rpe: Range<Rpe>| EffortTarget::rpe(rpe.from, rpe.to))
}

fn course(table: &Table<'_>, exercise: Option<&Exercise>, broken: &mut bool) -> Option<Course> {
    let climb = table.get("climb").and_then(|item| {
        let read = item.table(&shapes::CLIMB, |climb| {
            let step = climb.get("step").map_or(Some(Percent::whole(5)), |item| item.percent());
            let most_sets = most(climb, "most_sets", bounds::SETS, USUAL_MOST);
            Some(Course::Climb { step: step?, most_sets: most_sets? })
        });
        noted(broken, read)
    });
    let repeat = table.get("repeat").and_then(|item| {
        let read = item.table(&shapes::REPEAT, |repeat| {
            let most_sets = repeat.need("most_sets").and_then(|item| small(&item, 1, bounds::SETS));
            Some(Course::Repeat { most_sets: most_sets? })
        });
        noted(broken, read)
    });
    let total = table.get("total").and_then(|item| {
        let read = item.table(&shapes::TOTAL, |total| {
            let reps = total.need("reps").and_then(|item| words::count(&item, 1, 1_000));
            let most_sets = most(total, "most_sets", bounds::SETS, USUAL_MOST);
            Some(Course::Total { reps: reps?, most_sets: most_sets? })
        });
        noted(broken, read)
    });
    let every = table
        .get("every")
        .and_then(|item| noted(broken, item.seconds()).map(|every| Course::Clock { every }));
    let test = table.get("test").and_then(|item| {
        if exercise.is_some_and(|exercise| !exercise.is_compound()) {
            item.fault(Problem::OneJoint);
        }
        let read = item.table(&shapes::TEST, |test| {
            let step = test.get("step").map_or(Some(LEAST_TEST_STEP), |item| test_step(&item));
            let most_tries = test.get("most_tries").map_or(Some(5), |item| small(&item, 3, 5));
            Some(Course::Test { step: step?, most_tries: most_tries? })
        });
        noted(broken, read)
    });
    climb.or(repeat).or(total).or(every).or(test)
}

/// The last steps of a test: 2.5–5 %.
const LEAST_TEST_STEP: Percent = Percent::from_hundredths(250);
const GREATEST_TEST_STEP: Percent = Percent::whole(5);

fn test_step(item: &Item<'_>) -> Option<Percent> {
    use crate::quantity::{Kind, Problem, Unreadable};
    item.quantity(Expected::Percent, |text| {
        let step = Percent::read(text, Numerals::Point)?;
        let problem = if step < LEAST_TEST_STEP {
            Problem::TooSmall { least: LEAST_TEST_STEP.print(Numerals::Point) }
        } else if step > GREATEST_TEST_STEP {
            Problem::TooLarge { greatest: GREATEST_TEST_STEP.print(Numerals::Point) }
        } else {
            return Ok(step);
        };
        let text = excerpt(text);
        Err(Unreadable { kind: Kind::Percent, text, at: 0, problem })
    })
}

fn most(table: &Table<'_>, key: &'static str, greatest: usize, usual: u8) -> Option<u8> {
    table.get(key).map_or(Some(usual), |item| small(&item, 1, greatest))
}

fn structure(
    table: &Table<'_>,
    shared: &Shared<'_, '_>,
    usual_pause: Seconds,
    broken: &mut bool,
) -> Option<Structure> {
    let pause =
        |part: &Table<'_>| part.get("pause").map_or(Some(usual_pause), |item| item.seconds());
    let cluster = table.get("cluster").and_then(|item| {
        let read = item.table(&shapes::CLUSTER, |cluster| {
            let blocks = cluster.need("blocks").and_then(|item| item.list(bounds::PARTS));
            let blocks =
                blocks.and_then(|list| all(list.iter().map(|item| words::count(item, 1, 100))));
            let pause = pause(cluster);
            Some(Structure::Cluster { blocks: blocks?, pause: pause? })
        });
        noted(broken, read)
    });
    let rest_pause = table.get("rest_pause").and_then(|item| {
        let read = item.table(&shapes::REST_PAUSE, |rest_pause| {
            let each = rest_pause.need("each").and_then(|item| words::count(&item, 1, 100));
            let total = match rest_pause.get("total") {
                Some(item) => words::count(&item, 1, 1_000).map(Some),
                None => Some(None),
            };
            let most = most(rest_pause, "most_parts", bounds::PARTS, USUAL_PARTS);
            let pause = pause(rest_pause);
            Some(Structure::RestPause { pause: pause?, each: each?, total: total?, most: most? })
        });
        noted(broken, read)
    });
    let drop = table.get("drop").and_then(|item| {
        let list = item.list(bounds::PARTS);
        let off = list.and_then(|list| all(list.iter().map(|item| item.percent())));
        noted(broken, off.filter(|off| !off.is_empty())).map(|off| Structure::Drop { off })
    });
    let ranges = table.get("ranges").and_then(|item| {
        let part = |item: &Item<'_>| {
            item.table(&shapes::RANGE_PART, |part| {
                let name = part.need("name").and_then(|item| item.text(bounds::NAME));
                let reps = part.need("reps").and_then(|item| item.reps());
                Some(RangePart { name: name?.to_string(), reps: reps? })
            })
        };
        let parts = item.list(bounds::PARTS).and_then(|list| all(list.iter().map(part)));
        noted(broken, parts.filter(|parts| !parts.is_empty()))
            .map(|parts| Structure::Ranges { parts })
    });
    let continued = table.get("continued").and_then(|item| {
        let part = |item: &Item<'_>| {
            item.table(&shapes::CONTINUED_PART, |part| continued_part(part, shared))
        };
        let parts = item.list(bounds::PARTS).and_then(|list| all(list.iter().map(part)));
        noted(broken, parts.filter(|parts| !parts.is_empty()))
            .map(|parts| Structure::Continued { parts })
    });
    cluster.or(rest_pause).or(drop).or(ranges).or(continued)
}

fn continued_part(part: &Table<'_>, shared: &Shared<'_, '_>) -> Option<ContinuedPart> {
    let exercise = part.need("name").and_then(|item| shared.names.exercise(&item));
    let how_many = how_many(part);
    if how_many.is_none() && !WORK.iter().any(|key| part.has(key)) {
        part.missing(Problem::MissingOneOf { keys: WORK });
    }
    let load = match part.get("load") {
        Some(item) => words::load(&item, shared.names, &MaxOf::Own),
        None => Some(LoadCall::ByFeel),
    };
    let pause = match part.get("pause") {
        Some(item) => item.seconds().map(Some),
        None => Some(None),
    };
    Some(ContinuedPart {
        exercise: exercise?.slug.to_string(),
        load: load?,
        how_many: how_many?,
        pause: pause?,
    })
}

/// Reads reps, seconds or metres that don't vary.
pub(super) fn how_many(table: &Table<'_>) -> Option<HowMany> {
    for (at, key) in WORK.iter().enumerate() {
        table.clash(key, WORK.get(at + 1..).unwrap_or_default());
    }
    let reps = table.get("reps").and_then(|item| words::reps(&item));
    let seconds = table.get("seconds").and_then(|item| words::seconds(&item));
    let metres = table.get("metres").and_then(|item| words::metres(&item));
    reps.or(seconds).or(metres)
}

fn on_sets(item: &Item<'_>) -> Option<OnSets> {
    match item.found() {
        Found::Text => item.word(&["last"]).map(|_| OnSets::Last),
        Found::List => {
            let list = item.list(bounds::SETS)?;
            let mut sets = all(list.iter().map(|item| small(item, 1, bounds::SETS)))?;
            sets.sort_unstable();
            sets.dedup();
            Some(OnSets::These(sets))
        }
        _ => {
            item.wrong_type(Expected::Sets);
            None
        }
    }
}
