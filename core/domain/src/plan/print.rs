//! A plan back as text: what reading gives, printing keeps.

use super::line::{Course, Line, OnSets, PerSet, Rests, Varied, Weeks};
use super::model::{
    Gear, Goal, MaxRule, Plan, Ramp, Session, SetUp, Slot, Substitute, USUAL_WORKING_MAX, WarmUp,
    Week,
};
use super::rules::{Cut, LayOff, Miss, RaiseMax, Rule, Step, USUAL_LAY_OFF, USUAL_MISSES};
use super::shapes;
use crate::call::{
    EffortScale, EffortTarget, HowMany, LoadCall, MaxOf, Side, Stop, Structure, WeekKind,
};
use crate::catalogue::{Catalogue, Counting, Exercise, Measure};
use crate::quantity::{
    Distance, Mass, MassUnit, Numerals, Percent, Range, RepRange, Reserve, Seconds,
};
use crate::text::quoted;

impl Plan {
    /// The plan as TOML, with exercises named in the language of `catalogue`. Reading it gives this
    /// plan again, as long as it came from a text or keeps to what a text can say: bounds, halves of
    /// a percent, one scale of effort in a row.
    pub fn print(&self, catalogue: &Catalogue) -> String {
        let catalogue = catalogue.clone().with_own(self.exercises.iter().cloned());
        let mut page = Page { text: String::new(), catalogue };
        page.plan(self);
        page.text
    }
}

/// The text so far.
struct Page {
    text: String,
    catalogue: Catalogue,
}

impl Page {
    fn head(&mut self, head: &str) {
        self.text.push('\n');
        self.text.push_str(head);
        self.text.push('\n');
    }

    fn key(&mut self, key: &str, value: &str) {
        self.text.push_str(key);
        self.text.push_str(" = ");
        self.text.push_str(value);
        self.text.push('\n');
    }

    fn optional(&mut self, key: &str, value: Option<String>) {
        if let Some(value) = value {
            self.key(key, &value);
        }
    }

    fn plan(&mut self, plan: &Plan) {
        self.key("name", &quoted(&plan.name));
        self.optional("about", plan.about.as_deref().map(quoted));
        if plan.goal != Goal::default() {
            self.key("goal", &goal(plan.goal));
        }
        self.key("weeks", &plan.weeks.len().to_string());
        self.optional("minutes", plan.minutes.map(|minutes| minutes.to_string()));
        self.optional("rest", rests(&plan.rest));
        if plan.rest_step != Seconds::new(20) {
            self.key("rest_step", &seconds(plan.rest_step));
        }
        if plan.working_max != USUAL_WORKING_MAX {
            self.key("working_max", &percent(plan.working_max));
        }
        if plan.raise_max != RaiseMax::default() {
            self.key("raise_max", &raise(plan.raise_max));
        }
        if plan.misses != USUAL_MISSES {
            self.key("misses", &list(plan.misses.iter().map(miss)));
        }
        if plan.hard_at_left.halves() != 8 {
            self.key("hard_at_left", &plan.hard_at_left.print(Numerals::Point));
        }
        if plan.seconds_a_rep != 3 {
            self.key("seconds_a_rep", &plan.seconds_a_rep.to_string());
        }
        self.optional("warm_up", warm_up(&plan.warm_up));
        if plan.deload != Cut::DELOAD {
            self.key("deload", &inline(cut(plan.deload)));
        }
        if plan.ease_in != Cut::EASE_IN {
            self.key("ease_in", &inline(cut(plan.ease_in)));
        }
        if plan.lay_off != USUAL_LAY_OFF {
            self.key("lay_off", &list(plan.lay_off.iter().map(lay_off)));
        }
        for max in &plan.maxes {
            self.max(max);
        }
        for (at, week) in plan.weeks.iter().enumerate() {
            if *week != Week::default() {
                self.week(at + 1, week);
            }
        }
        for exercise in &plan.exercises {
            self.own_exercise(exercise);
        }
        for accepted in &plan.accepted {
            self.head("[[accept]]");
            self.key("check", &quoted(&accepted.check));
            self.optional("session", accepted.session.as_deref().map(quoted));
            let exercise = accepted.exercise.as_deref().map(|slug| quoted(self.name(slug)));
            self.optional("exercise", exercise);
            self.key("because", &quoted(&accepted.because));
        }
        for session in &plan.sessions {
            self.session(session);
        }
    }

    fn max(&mut self, max: &MaxRule) {
        self.head("[[max]]");
        self.key("lift", &quoted(self.name(&max.lift)));
        self.optional("working", max.working.map(percent));
        self.optional("raise", max.raise.map(raise));
    }

    fn week(&mut self, number: usize, week: &Week) {
        self.head("[[week]]");
        self.key("number", &number.to_string());
        if week.kind != WeekKind::Ordinary {
            self.key("kind", &one_of(shapes::KINDS, week.kind as usize));
        }
        self.optional("name", week.name.as_deref().map(quoted));
        for (key, value) in week.cut.map(cut).into_iter().flatten() {
            self.key(key, &value);
        }
    }

    fn own_exercise(&mut self, own: &Exercise) {
        self.head("[[exercise]]");
        self.key("name", &quoted(&own.name));
        if !own.also.is_empty() {
            self.key("also", &list(own.also.iter().map(quoted)));
        }
        self.key("movement", &quoted(own.movement.slug()));
        self.key("implement", &quoted(&own.implement));
        if !own.needs.is_empty() {
            self.key("needs", &list(own.needs.iter().map(quoted)));
        }
        self.key("direct", &list(own.direct.iter().map(|muscle| quoted(muscle.slug()))));
        if !own.indirect.is_empty() {
            self.key("indirect", &list(own.indirect.iter().map(|muscle| quoted(muscle.slug()))));
        }
        if own.body_share != Percent::whole(0) {
            self.key("body_share", &percent(own.body_share));
        }
        if own.counting != Counting::Total {
            self.key("counted", &one_of(shapes::COUNTINGS, own.counting as usize));
        }
        if own.measure != Measure::Reps {
            self.key("measured_in", &one_of(shapes::MEASURES, own.measure as usize));
        }
        for (key, flag) in [
            ("one_sided", own.one_sided),
            ("main_lift", own.main_lift),
            ("from_floor", own.from_floor),
            ("over_body", own.over_body),
        ] {
            if flag {
                self.key(key, "true");
            }
        }
    }

    fn session(&mut self, session: &Session) {
        self.head("[[session]]");
        self.key("name", &quoted(&session.name));
        let day = |day: chrono::Weekday| {
            one_of(shapes::DAYS, usize::try_from(day.num_days_from_monday()).unwrap_or_default())
        };
        self.optional("day", session.day.map(day));
        self.optional("weeks", weeks(&session.weeks));
        self.optional("minutes", session.minutes.map(|minutes| minutes.to_string()));
        self.optional("warm_up", warm_up(&session.warm_up));
        self.optional("rest", rests(&session.rest));
        for slot in &session.exercises {
            self.slot(slot);
        }
    }

    fn slot(&mut self, slot: &Slot) {
        self.head("[[session.exercise]]");
        self.key("name", &quoted(self.name(&slot.exercise)));
        self.optional("weeks", weeks(&slot.weeks));
        self.optional("goal", slot.goal.map(goal));
        self.optional("superset", slot.superset.as_deref().map(quoted));
        if slot.optional {
            self.key("optional", "true");
        }
        if slot.keep {
            self.key("keep", "true");
        }
        self.optional("track", slot.track.as_deref().map(quoted));
        self.optional("sides", slot.sides.map(|sides| one_of(shapes::SIDES, sides as usize)));
        let counted = slot.counting.map(|counting| one_of(shapes::COUNTINGS, counting as usize));
        self.optional("counted", counted);
        self.optional("ramp", slot.ramp.as_ref().map(ramp));
        self.optional("set_up", set_up(&slot.set_up));
        if !slot.wear.is_empty() {
            let gear = |gear: &Gear| one_of(shapes::GEAR, *gear as usize);
            self.key("wear", &list(slot.wear.iter().map(gear)));
        }
        if !slot.cues.is_empty() {
            self.key("cues", &list(slot.cues.iter().map(quoted)));
        }
        self.optional("rest", rests(&slot.rest));
        if !slot.substitutes.is_empty() {
            let all: Vec<_> = slot.substitutes.iter().map(|other| self.substitute(other)).collect();
            self.key("substitutes", &list(all));
        }
        match slot.next.as_slice() {
            [] => {}
            [only] => self.key("next", &rule(only)),
            several => self.key("next", &list(several.iter().map(rule))),
        }
        self.optional("misses", slot.misses.as_ref().map(|all| list(all.iter().map(miss))));
        match slot.lines.as_slice() {
            [only] if stands_with_its_exercise(only) => self.line(only),
            lines => {
                for line in lines {
                    self.head("[[session.exercise.set]]");
                    self.line(line);
                }
            }
        }
    }

    fn line(&mut self, line: &Line) {
        self.optional("weeks", weeks(&line.weeks));
        self.optional("side", line.side.map(side));
        if matches!(line.course, Course::Listed | Course::Clock { .. }) {
            self.varied("sets", &line.sets, u8::to_string);
        }
        self.varied(how_many_key(&line.how_many), &line.how_many, |all| per_set(all, how_many));
        let load = {
            let of = |load: &LoadCall| quoted(self.load(load));
            match &line.load {
                Varied::Same(all) => Varied::Same(per_set(all, of)),
                Varied::ByWeek(weeks) => {
                    Varied::ByWeek(weeks.iter().map(|all| per_set(all, of)).collect())
                }
            }
        };
        self.varied("load", &load, String::clone);
        if let Some(targets) = &line.effort {
            let scale = targets.iter().flatten().next().map(|target| target.scale);
            let key = if scale == Some(EffortScale::Rpe) { "rpe" } else { "left" };
            self.varied(key, targets, |all| per_set(all, effort));
        }
        let manner = &line.manner;
        self.optional("tempo", manner.tempo.map(|tempo| quoted(tempo.to_string())));
        self.optional("technique", manner.technique.as_deref().map(quoted));
        if !manner.part_techniques.is_empty() {
            self.key("part_techniques", &list(manner.part_techniques.iter().map(quoted)));
        }
        if !manner.cues.is_empty() {
            self.key("cues", &list(manner.cues.iter().map(quoted)));
        }
        if line.speed {
            self.key("speed", "true");
        }
        if let Some((key, value)) = course(&line.course) {
            self.key(key, &value);
        }
        self.structure(&line.structure);
        match &line.on_sets {
            OnSets::All => {}
            OnSets::Last => self.key("on_sets", "\"last\""),
            OnSets::These(sets) => self.key("on_sets", &list(sets.iter().map(u8::to_string))),
        }
        self.optional("rest", rests(&line.rest));
    }

    fn varied<T>(&mut self, key: &str, varied: &Varied<T>, print: impl Fn(&T) -> String) {
        match varied {
            Varied::Same(one) => self.key(key, &print(one)),
            Varied::ByWeek(weeks) => {
                self.key(&format!("{key}.by_week"), &list(weeks.iter().map(print)));
            }
        }
    }

    fn structure(&mut self, structure: &Structure) {
        match structure {
            Structure::Straight => {}
            Structure::Cluster { blocks, pause } => {
                let blocks = list(blocks.iter().map(u16::to_string));
                self.key("cluster", &inline([("blocks", blocks), ("pause", seconds(*pause))]));
            }
            Structure::RestPause { pause, each, total, most } => {
                let pairs = [
                    Some(("each", each.to_string())),
                    Some(("pause", seconds(*pause))),
                    total.map(|total| ("total", total.to_string())),
                    Some(("most_parts", most.to_string())),
                ];
                self.key("rest_pause", &inline(pairs.into_iter().flatten()));
            }
            Structure::Drop { off } => self.key("drop", &list(off.iter().copied().map(percent))),
            Structure::Ranges { parts } => {
                let part = |part: &crate::call::RangePart| {
                    inline([("name", quoted(&part.name)), ("reps", reps(part.reps))])
                };
                self.key("ranges", &list(parts.iter().map(part)));
            }
            Structure::Continued { parts } => {
                let parts: Vec<_> = parts
                    .iter()
                    .map(|part| {
                        let pairs = [
                            Some(("name", quoted(self.name(&part.exercise)))),
                            Some(("load", quoted(self.load(&part.load)))),
                            Some((work_key(&part.how_many), how_many(&part.how_many))),
                            part.pause.map(|pause| ("pause", seconds(pause))),
                        ];
                        inline(pairs.into_iter().flatten())
                    })
                    .collect();
                self.key("continued", &list(parts));
            }
        }
    }

    fn substitute(&self, other: &Substitute) -> String {
        let name = quoted(self.name(&other.exercise));
        let pairs = [
            Some(("name", name.clone())),
            other.sets.map(|sets| ("sets", sets.to_string())),
            other.how_many.as_ref().map(|many| (work_key(many), how_many(many))),
            other.load.as_ref().map(|load| ("load", quoted(self.load(load)))),
            other.effort.as_ref().map(|target| {
                let key = if target.scale == EffortScale::Rpe { "rpe" } else { "left" };
                (key, effort(target))
            }),
        ];
        if pairs.iter().flatten().count() == 1 { name } else { inline(pairs.into_iter().flatten()) }
    }

    /// The name of an exercise, or its slug where the name would be read as something else.
    fn name(&self, slug: &str) -> String {
        self.catalogue
            .get(slug)
            .map(|known| self.catalogue.written(known))
            .filter(|name| !name.ends_with("working max") && *name != "top set")
            .unwrap_or(slug)
            .to_owned()
    }

    fn load(&self, load: &LoadCall) -> String {
        match load {
            LoadCall::Percent { share, of } => {
                let share = range(share, |share| figure(*share), "%");
                match of {
                    MaxOf::Own => share,
                    MaxOf::Working => format!("{share} of working max"),
                    MaxOf::Lift(lift) => format!("{share} of {}", self.name(lift)),
                    MaxOf::WorkingOf(lift) => {
                        format!("{share} of {} working max", self.name(lift))
                    }
                }
            }
            LoadCall::Mass(load) => mass(*load),
            LoadCall::Body => "body".into(),
            LoadCall::Added(more) => format!("body + {}", mass(*more)),
            LoadCall::Assisted(less) => format!("body - {}", mass(*less)),
            LoadCall::OfTopSet(share) => {
                format!("{} of top set", share.print(Numerals::Point))
            }
            LoadCall::Pin(pin) => format!("pin {pin}"),
            LoadCall::SetUp { name, load: None } => format!("with {name}"),
            LoadCall::SetUp { name, load: Some(load) } => format!("{} with {name}", mass(*load)),
            LoadCall::ByFeel => "by feel".into(),
        }
    }
}

/// Whether a row says nothing that only a row can say.
fn stands_with_its_exercise(line: &Line) -> bool {
    line.weeks == Weeks::All
        && line.side.is_none()
        && line.manner.cues.is_empty()
        && line.rest == Rests::default()
}

fn one_of(words: &[&str], at: usize) -> String {
    quoted(words.get(at).copied().unwrap_or_default())
}

fn list(items: impl IntoIterator<Item = String>) -> String {
    format!("[{}]", items.into_iter().collect::<Vec<_>>().join(", "))
}

fn inline<'k>(pairs: impl IntoIterator<Item = (&'k str, String)>) -> String {
    let pairs: Vec<_> = pairs.into_iter().map(|(key, value)| format!("{key} = {value}")).collect();
    format!("{{ {} }}", pairs.join(", "))
}

fn range<T: Copy + PartialOrd>(
    range: &Range<T>,
    print: impl Fn(&T) -> String,
    unit: &str,
) -> String {
    if range.is_single() {
        format!("{} {unit}", print(&range.from))
    } else {
        format!("{}-{} {unit}", print(&range.from), print(&range.to))
    }
}

fn figure(share: Percent) -> String {
    share.print(Numerals::Point).trim_end_matches(" %").to_string()
}

fn percent(share: Percent) -> String {
    quoted(share.print(Numerals::Point))
}

fn seconds(seconds: Seconds) -> String {
    quoted(seconds.print())
}

/// A mass in the unit that it is a short number of; exact in any case.
fn mass(mass: Mass) -> String {
    match [MassUnit::Kilogram, MassUnit::Pound].into_iter().find(|unit| mass.prints_exactly(*unit))
    {
        Some(unit) => mass.print(unit, Numerals::Point),
        None => format!("{} kg", mass.kilograms()),
    }
}

fn reps(range: RepRange) -> String {
    if range.is_single() {
        range.from.to_string()
    } else {
        quoted(format!("{}-{}", range.from, range.to))
    }
}

fn work_key(how_many: &HowMany) -> &'static str {
    match how_many {
        HowMany::Reps(_) | HowMany::Open { .. } => "reps",
        HowMany::Seconds(_) => "seconds",
        HowMany::Metres(_) => "metres",
    }
}

fn how_many_key(varied: &Varied<PerSet<HowMany>>) -> &'static str {
    varied.iter().flatten().next().map_or("reps", work_key)
}

fn how_many(how_many: &HowMany) -> String {
    match how_many {
        HowMany::Reps(range) => reps(*range),
        HowMany::Seconds(seconds) => {
            quoted(range(seconds, |seconds: &Seconds| seconds.count().to_string(), "s"))
        }
        HowMany::Metres(metres) => {
            let print = |metres: &Distance| {
                metres.print(Numerals::Point).trim_end_matches(" m").to_string()
            };
            quoted(range(metres, print, "m"))
        }
        HowMany::Open { at_least, stop } => quoted(match stop {
            Stop::Form => format!("{at_least} or more"),
            Stop::Pace => format!("{at_least} or more, stop when the pace drops"),
            Stop::Reserve(left) => {
                format!("{at_least} or more, stop at {} left", left.print(Numerals::Point))
            }
            Stop::Time(time) => format!("{at_least} or more, stop after {}", time.print()),
        }),
    }
}

fn effort(target: &EffortTarget) -> String {
    let (from, to) = match target.scale {
        EffortScale::Left => {
            (target.left.from.print(Numerals::Point), target.left.to.print(Numerals::Point))
        }
        EffortScale::Rpe => {
            let rating = |left: Reserve| left.rpe().print(Numerals::Point);
            (rating(target.left.to), rating(target.left.from))
        }
    };
    if from == to { from } else { quoted(format!("{from}-{to}")) }
}

fn per_set<T>(all: &[T], print: impl Fn(&T) -> String) -> String {
    match all {
        [only] => print(only),
        several => list(several.iter().map(print)),
    }
}

fn course(course: &Course) -> Option<(&'static str, String)> {
    let pairs =
        |step: Percent, key, most: u8| inline([("step", percent(step)), (key, most.to_string())]);
    match *course {
        Course::Listed => None,
        Course::Climb { step, most_sets } => Some(("climb", pairs(step, "most_sets", most_sets))),
        Course::Repeat { most_sets } => {
            Some(("repeat", inline([("most_sets", most_sets.to_string())])))
        }
        Course::Total { reps, most_sets } => {
            let pairs = [("reps", reps.to_string()), ("most_sets", most_sets.to_string())];
            Some(("total", inline(pairs)))
        }
        Course::Clock { every } => Some(("every", seconds(every))),
        Course::Test { step, most_tries } => Some(("test", pairs(step, "most_tries", most_tries))),
    }
}

fn goal(goal: Goal) -> String {
    one_of(shapes::GOALS, goal as usize)
}

fn raise(raise: RaiseMax) -> String {
    one_of(shapes::RAISES, raise as usize)
}

fn side(side: Side) -> String {
    one_of(shapes::SIDE, side as usize)
}

fn weeks(weeks: &Weeks) -> Option<String> {
    match weeks {
        Weeks::All => None,
        Weeks::These(weeks) => Some(match weeks.as_slice() {
            [only] => only.to_string(),
            several => list(several.iter().map(u16::to_string)),
        }),
    }
}

fn rests(rests: &Rests) -> Option<String> {
    let kinds = [
        ("after_set", rests.after_set),
        ("in_set", rests.in_set),
        ("between_sides", rests.between_sides),
        ("in_superset", rests.in_superset),
        ("after_superset", rests.after_superset),
    ];
    let mut given: Vec<_> =
        kinds.into_iter().filter_map(|(key, rest)| Some((key, seconds(rest?)))).collect();
    match (given.as_slice(), rests.after_set) {
        ([], _) => None,
        ([_], Some(_)) => given.pop().map(|(_, rest)| rest),
        _ => Some(inline(given)),
    }
}

fn warm_up(warm_up: &WarmUp) -> Option<String> {
    let pairs: Vec<_> = [
        warm_up.minutes.map(|minutes| ("minutes", minutes.to_string())),
        warm_up.ramp.as_ref().map(|steps| ("ramp", ramp(steps))),
        warm_up.again_after.map(|after| ("again_after", seconds(after))),
        warm_up.slack.map(|slack| ("slack", percent(slack))),
    ]
    .into_iter()
    .flatten()
    .collect();
    (!pairs.is_empty()).then(|| inline(pairs))
}

fn ramp(ramp: &Ramp) -> String {
    match ramp {
        Ramp::None => one_of(shapes::RAMPS, 0),
        Ramp::Short => one_of(shapes::RAMPS, 1),
        Ramp::Usual => one_of(shapes::RAMPS, 2),
        Ramp::Steps(steps) => list(steps.iter().map(|step| {
            let load = step.share.map_or_else(|| quoted("bar"), percent);
            inline([("load", load), ("reps", step.reps.to_string())])
        })),
    }
}

fn set_up(set_up: &SetUp) -> Option<String> {
    let pairs: Vec<_> = set_up.parts().map(|(key, how)| (key, quoted(how))).collect();
    (!pairs.is_empty()).then(|| inline(pairs))
}

fn cut(cut: Cut) -> [(&'static str, String); 3] {
    [
        ("sets_off", percent(cut.sets_off)),
        ("load_off", percent(cut.load_off)),
        ("more_left", cut.more_left.to_string()),
    ]
}

fn lay_off(step: &LayOff) -> String {
    let mut pairs = vec![("over_days", step.over_days.to_string())];
    for (key, off) in [("load_off", step.load_off), ("sets_off", step.sets_off)] {
        if off != Percent::whole(0) {
            pairs.push((key, percent(off)));
        }
    }
    if step.ease_in {
        pairs.push(("ease_in", "true".into()));
    }
    inline(pairs)
}

fn miss(miss: &Miss) -> String {
    quoted(match miss {
        Miss::Repeat => "repeat".to_string(),
        Miss::Hold => "hold".to_string(),
        Miss::Less(share) => format!("{} less", share.print(Numerals::Point)),
    })
}

fn rule(rule: &Rule) -> String {
    let word = one_of(shapes::RULES_KNOWN, rule.kind as usize);
    let step = rule.step.map(|step| match step {
        Step::Mass(step) => quoted(mass(step)),
        Step::Share(step) => percent(step),
    });
    match (step, rule.up) {
        (None, false) => word,
        (Some(step), false) => inline([("rule", word), ("step", step)]),
        (None, true) => inline([("rule", word), ("up", "true".to_owned())]),
        (Some(step), true) => inline([("rule", word), ("step", step), ("up", "true".to_owned())]),
    }
}
