//! Plans in general: printing and reading gives a plan back, and no file whatever stops the reader.

use std::ops::Range as Bytes;

use barwright_domain::call::{
    ContinuedPart, EffortScale, EffortTarget, HowMany, LoadCall, Manner, MaxOf, RangePart, Side,
    Stop, Structure, WeekKind,
};
use barwright_domain::catalogue::{Catalogue, Counting, Names};
use barwright_domain::coach::look_over;
use barwright_domain::equipment::builtin_in;
use barwright_domain::plan::{
    Accepted, Course, Cut, Gear, Goal, LayOff, Line, MaxRule, Miss, OnSets, Plan, PlanFile,
    RaiseMax, Ramp, RampStep, Rests, Rule, RuleKind, Session, SetUp, Sides, Slot, Step, Substitute,
    Varied, WarmUp, Week, Weeks,
};
use barwright_domain::quantity::{
    Distance, Mass, MassUnit, Percent, Phase, Range, RepRange, Reserve, Seconds, Tempo,
};
use barwright_domain::text::{Fault, bounds};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::{select, subsequence};

const PAGE: &str = include_str!("../../../docs/plan-format.md");

fn slug() -> impl Strategy<Value = String> {
    select(vec!["back-squat", "bench-press", "pull-up", "farmer-carry", "plank", "own-lift"])
        .prop_map(str::to_string)
}

fn text() -> impl Strategy<Value = String> + Clone {
    // Quotes, a tab, other scripts, and the words that loads are made of.
    "[a-zA-Z0-9é\"\\\\#%+-]([ a-z0-9'=\\[\\]{}.,\t日-]{0,18}[a-z0-9]| with %| of x)?"
}

fn percent() -> impl Strategy<Value = Percent> {
    (0..=600).prop_map(|halves| Percent::from_hundredths(halves * 50))
}

fn share_off() -> impl Strategy<Value = Percent> {
    (0..=200).prop_map(|halves| Percent::from_hundredths(halves * 50))
}

fn mass() -> impl Strategy<Value = Mass> {
    prop_oneof![
        (0..2_000_i64)
            .prop_map(|quarters| Mass::from_grams(quarters * 250).expect("500 kg at most")),
        (0..900_i32)
            .prop_map(|pounds| Mass::whole(pounds, barwright_domain::quantity::MassUnit::Pound)),
        (0..5_000_000_000_000_000_i64).prop_map(Mass::from_nanograms),
    ]
}

fn seconds() -> impl Strategy<Value = Seconds> {
    prop_oneof![0..300_u32, 0..=86_400_u32].prop_map(Seconds::new)
}

fn ordered<T: Copy + PartialOrd + std::fmt::Debug>(
    one: impl Strategy<Value = T> + Clone,
) -> impl Strategy<Value = Range<T>> {
    (one.clone(), one)
        .prop_map(|(a, b)| if a <= b { Range { from: a, to: b } } else { Range { from: b, to: a } })
}

fn reps() -> impl Strategy<Value = RepRange> {
    ordered(0..=1_000_u16)
}

fn reserve() -> impl Strategy<Value = Reserve> + Clone {
    (0..=40_u8).prop_map(|halves| Reserve::from_halves(halves).expect("20 at most"))
}

fn effort(scale: EffortScale) -> impl Strategy<Value = EffortTarget> {
    let most: u8 = if scale == EffortScale::Rpe { 18 } else { 40 };
    ordered((0..=most).prop_map(|halves: u8| Reserve::from_halves(halves).expect("20 at most")))
        .prop_map(move |left| EffortTarget { left, scale })
}

fn scale() -> impl Strategy<Value = EffortScale> {
    select(vec![EffortScale::Left, EffortScale::Rpe])
}

/// How many of one kind: the key that says it is the same for a whole row.
fn how_many(kind: u8) -> BoxedStrategy<HowMany> {
    match kind {
        0 => prop_oneof![
            reps().prop_map(HowMany::Reps),
            (0..=1_000_u16, stop()).prop_map(|(at_least, stop)| HowMany::Open { at_least, stop }),
        ]
        .boxed(),
        1 => ordered((0..=86_400_u32).prop_map(Seconds::new)).prop_map(HowMany::Seconds).boxed(),
        _ => ordered((0..=100_000_000_u32).prop_map(Distance::from_millimetres))
            .prop_map(HowMany::Metres)
            .boxed(),
    }
}

fn stop() -> impl Strategy<Value = Stop> {
    prop_oneof![
        reserve().prop_map(Stop::Reserve),
        Just(Stop::Form),
        Just(Stop::Pace),
        seconds().prop_map(Stop::Time),
    ]
}

/// Any load; names are as a text gives them, without spaces at their ends.
fn load() -> BoxedStrategy<LoadCall> {
    let name = text().prop_map(|text| text.trim().to_string());
    let of = prop_oneof![
        Just(MaxOf::Own),
        Just(MaxOf::Working),
        slug().prop_map(MaxOf::Lift),
        slug().prop_map(MaxOf::WorkingOf),
    ];
    let halves = (0..=600).prop_map(|halves| Percent::from_hundredths(halves * 50));
    prop_oneof![
        (ordered(halves), of).prop_map(|(share, of)| LoadCall::Percent { share, of }),
        mass().prop_map(LoadCall::Mass),
        Just(LoadCall::Body),
        mass().prop_map(LoadCall::Added),
        mass().prop_map(LoadCall::Assisted),
        percent().prop_map(LoadCall::OfTopSet),
        name.clone().prop_map(LoadCall::Pin),
        (name, option::of(mass())).prop_map(|(name, load)| LoadCall::SetUp { name, load }),
        Just(LoadCall::ByFeel),
    ]
    .boxed()
}

fn rests() -> impl Strategy<Value = Rests> {
    let one = || option::weighted(0.3, seconds());
    (one(), one(), one(), one(), one()).prop_map(
        |(after_set, in_set, between_sides, in_superset, after_superset)| Rests {
            after_set,
            in_set,
            between_sides,
            in_superset,
            after_superset,
        },
    )
}

fn weeks(count: usize) -> impl Strategy<Value = Weeks> {
    let numbers: Vec<u16> = (1..=u16::try_from(count).expect("6 at most")).collect();
    prop_oneof![
        3 => Just(Weeks::All),
        1 => subsequence(numbers, 1..=count).prop_map(Weeks::These),
    ]
}

fn tempo() -> impl Strategy<Value = Tempo> {
    let phase = prop_oneof![(0..=600_u16).prop_map(Phase::Tenths), Just(Phase::Fast)];
    [phase.clone(), phase.clone(), phase.clone(), phase].prop_map(
        |[lowering, low_pause, lifting, high_pause]| Tempo {
            lowering,
            low_pause,
            lifting,
            high_pause,
        },
    )
}

fn cues() -> impl Strategy<Value = Vec<String>> {
    vec(text(), 0..=3)
}

fn structure() -> impl Strategy<Value = Structure> {
    prop_oneof![
        3 => Just(Structure::Straight),
        1 => (vec(1..=30_u16, 1..=6), seconds())
            .prop_map(|(blocks, pause)| Structure::Cluster { blocks, pause }),
        1 => (seconds(), 1..=50_u16, option::of(1..=100_u16), 1..=20_u8)
            .prop_map(|(pause, each, total, most)| Structure::RestPause { pause, each, total, most }),
        1 => vec(percent(), 1..=4).prop_map(|off| Structure::Drop { off }),
        1 => vec((text(), reps()).prop_map(|(name, reps)| RangePart { name, reps }), 1..=3)
            .prop_map(|parts| Structure::Ranges { parts }),
        1 => vec(continued(), 1..=3).prop_map(|parts| Structure::Continued { parts }),
    ]
}

fn continued() -> impl Strategy<Value = ContinuedPart> {
    (slug(), load(), (0..3_u8).prop_flat_map(how_many), option::of(seconds())).prop_map(
        |(exercise, load, how_many, pause)| ContinuedPart { exercise, load, how_many, pause },
    )
}

fn on_sets() -> impl Strategy<Value = OnSets> {
    prop_oneof![
        Just(OnSets::All),
        Just(OnSets::Last),
        subsequence((1..=30_u8).collect::<Vec<_>>(), 1..4).prop_map(OnSets::These),
    ]
}

/// The same, or week by week as often as goes into the plan's weeks.
fn varied<T: Clone + std::fmt::Debug + 'static>(
    one: BoxedStrategy<T>,
    count: usize,
) -> BoxedStrategy<Varied<T>> {
    let lengths: Vec<usize> = (1..=count).filter(|length| count.is_multiple_of(*length)).collect();
    prop_oneof![
        2 => one.clone().prop_map(Varied::Same),
        1 => select(lengths)
            .prop_flat_map(move |length| vec(one.clone(), length))
            .prop_map(Varied::ByWeek),
    ]
    .boxed()
}

/// One for each set, as often as goes into the number of sets.
fn per_set<T: Clone + std::fmt::Debug + 'static>(
    one: BoxedStrategy<T>,
    sets: u8,
) -> BoxedStrategy<Vec<T>> {
    let lengths: Vec<usize> = (1..=usize::from(sets))
        .filter(|length| usize::from(sets).is_multiple_of(*length))
        .collect();
    select(lengths).prop_flat_map(move |length| vec(one.clone(), length)).boxed()
}

fn course() -> impl Strategy<Value = Course> {
    prop_oneof![
        4 => Just(Course::Listed),
        1 => seconds().prop_map(|every| Course::Clock { every }),
        1 => (percent(), 1..=30_u8).prop_map(|(step, most_sets)| Course::Climb { step, most_sets }),
        1 => (1..=30_u8).prop_map(|most_sets| Course::Repeat { most_sets }),
        1 => (1..=1_000_u16, 1..=30_u8)
            .prop_map(|(reps, most_sets)| Course::Total { reps, most_sets }),
        1 => (5..=10_i32, 3..=5_u8).prop_map(|(halves, most_tries)| Course::Test {
            step: Percent::from_hundredths(halves * 50),
            most_tries,
        }),
    ]
}

/// A max is tested with lifts of several joints alone: others are listed.
fn testable(exercise: &str, lines: Vec<Line>) -> Vec<Line> {
    let one_joint = Catalogue::builtin().get(exercise).is_some_and(|found| !found.is_compound());
    let listed = |line: Line| match line.course {
        Course::Test { .. } if one_joint => Line { course: Course::Listed, ..line },
        _ => line,
    };
    lines.into_iter().map(listed).collect()
}

fn line(count: usize) -> impl Strategy<Value = Line> {
    let sets = prop_oneof![
        // Lists by set need one number of sets; a number by week needs single values.
        (1..=12_u8).prop_map(|sets| (Varied::Same(sets), sets)),
        varied((0..=30_u8).boxed(), count).prop_map(|sets| (sets, 1)),
    ];
    (course(), sets, 0..3_u8, scale())
        .prop_flat_map(move |(course, (sets, each), kind, scale)| {
            let counted = matches!(course, Course::Listed | Course::Clock { .. });
            let (sets, each) = if counted { (sets, each) } else { (Varied::Same(1), 1) };
            (
                (Just(course), Just(sets), any::<bool>(), weeks(count)),
                varied(per_set(how_many(kind), each), count),
                varied(per_set(load(), each), count),
                varied(per_set(effort(scale).boxed(), each), count),
                (structure(), on_sets()),
                (option::of(tempo()), option::of(text()), vec(text(), 0..3), cues()),
                (rests(), any::<bool>(), option::of(select(vec![Side::Left, Side::Right]))),
            )
        })
        .prop_map(
            |(
                (course, sets, asks, weeks),
                how_many,
                load,
                effort,
                (structure, on_sets),
                (tempo, technique, part_techniques, cues),
                (rest, speed, side),
            )| {
                let needs = matches!(course, Course::Climb { .. } | Course::Repeat { .. });
                let effort = (asks || needs).then_some(effort);
                let on_sets = if structure == Structure::Straight { OnSets::All } else { on_sets };
                let how_many = match structure.opening() {
                    Some(opening) if on_sets == OnSets::All => Varied::Same(vec![opening]),
                    _ => how_many,
                };
                Line {
                    weeks,
                    side,
                    sets,
                    how_many,
                    load,
                    speed: speed && effort.is_none(),
                    effort,
                    course,
                    structure,
                    on_sets,
                    manner: Manner { tempo, technique, part_techniques, cues },
                    rest,
                }
            },
        )
}

fn substitute() -> impl Strategy<Value = Substitute> {
    (
        slug(),
        option::of(1..=30_u8),
        option::of((0..3_u8).prop_flat_map(how_many)),
        option::of(load()),
        option::of(scale().prop_flat_map(effort)),
    )
        .prop_map(|(exercise, sets, how_many, load, effort)| Substitute {
            exercise,
            sets,
            how_many,
            load,
            effort,
        })
}

fn rules() -> impl Strategy<Value = Vec<Rule>> {
    let kinds = vec![
        RuleKind::AsPlanned,
        RuleKind::DoubleProgression,
        RuleKind::TwoForTwo,
        RuleKind::AddWhenMade,
        RuleKind::ByEffort,
        RuleKind::LessAssistance,
        RuleKind::MoreAddedLoad,
    ];
    let step = prop_oneof![mass().prop_map(Step::Mass), percent().prop_map(Step::Share)];
    (subsequence(kinds, 0..=4), vec((option::of(step), any::<bool>()), 4)).prop_map(
        |(kinds, steps)| {
            kinds.into_iter().zip(steps).map(|(kind, (step, up))| Rule { kind, step, up }).collect()
        },
    )
}

/// The rules that rows may have: where a max or the plan's weeks own the load, none adds to it.
fn fitting(lines: &[Line], rules: Vec<Rule>) -> Vec<Rule> {
    let owned = |line: &Line| {
        let loads = || line.load.iter().flatten();
        loads().any(|load| matches!(load, LoadCall::Percent { .. }))
            || (line.load.by_week()
                && loads().any(|load| {
                    matches!(load, LoadCall::Mass(_) | LoadCall::Added(_) | LoadCall::Assisted(_))
                }))
    };
    let holds = |rule: &Rule| matches!(rule.kind, RuleKind::AsPlanned | RuleKind::ByEffort);
    let any = lines.iter().any(owned);
    rules.into_iter().filter(|rule| !any || holds(rule)).collect()
}

fn misses() -> impl Strategy<Value = Vec<Miss>> {
    let one = prop_oneof![Just(Miss::Repeat), Just(Miss::Hold), percent().prop_map(Miss::Less)];
    vec(one, 1..=4)
}

fn ramp() -> impl Strategy<Value = Ramp> {
    let step =
        (option::of(percent()), 1..=100_u16).prop_map(|(share, reps)| RampStep { share, reps });
    prop_oneof![
        Just(Ramp::None),
        Just(Ramp::Short),
        Just(Ramp::Usual),
        vec(step, 1..=5).prop_map(Ramp::Steps),
    ]
}

fn warm_up() -> impl Strategy<Value = WarmUp> {
    (option::of(1..=300_u16), option::of(ramp()), option::of(seconds()), option::of(percent()))
        .prop_map(|(minutes, ramp, again_after, slack)| WarmUp {
            minutes,
            ramp,
            again_after,
            slack,
        })
}

fn goal() -> impl Strategy<Value = Goal> {
    select(vec![Goal::Strength, Goal::Size])
}

fn slot(count: usize) -> impl Strategy<Value = Slot> {
    let sides =
        select(vec![Sides::Together, Sides::WeakerFirst, Sides::LeftFirst, Sides::RightFirst]);
    let counting = select(vec![
        Counting::Total,
        Counting::EachHand,
        Counting::One,
        Counting::Stack,
        Counting::EachSide,
        Counting::Added,
        Counting::Unnumbered,
    ]);
    let set_up = [option::of(text()), option::of(text()), option::of(text()), option::of(text())]
        .prop_map(|[pins, seat, attachment, bench]| SetUp { pins, seat, attachment, bench });
    let gear = subsequence(vec![Gear::Belt, Gear::Wraps, Gear::Straps, Gear::Sleeves], 0..=4);
    (
        (slug(), weeks(count), option::of(goal()), option::of(text()), any::<[bool; 2]>()),
        (option::of(sides), option::of(counting), option::of(ramp()), set_up, gear),
        (cues(), rests(), vec(substitute(), 0..3), rules(), option::of(misses())),
        (vec(line(count), 1..4), option::of(text())),
    )
        .prop_map(
            |(
                (exercise, weeks, goal, superset, [optional, keep]),
                (sides, counting, ramp, set_up, wear),
                (cues, rest, substitutes, next, misses),
                (lines, track),
            )| Slot {
                next: fitting(&lines, next),
                lines: testable(&exercise, lines),
                exercise,
                weeks,
                goal,
                superset,
                optional,
                keep,
                track,
                sides,
                counting,
                ramp,
                set_up,
                wear,
                cues,
                rest,
                substitutes,
                misses,
            },
        )
}

fn cut() -> impl Strategy<Value = Cut> {
    (share_off(), share_off(), 0..=10_u8).prop_map(|(sets_off, load_off, more_left)| Cut {
        sets_off,
        load_off,
        more_left,
    })
}

fn week() -> impl Strategy<Value = Week> {
    let kinds = vec![WeekKind::Ordinary, WeekKind::EaseIn, WeekKind::Deload, WeekKind::Test];
    (select(kinds), option::of(text()), option::of(cut())).prop_map(|(kind, name, cut)| Week {
        kind,
        name,
        cut,
    })
}

fn lay_off() -> impl Strategy<Value = Vec<LayOff>> {
    let step = (1..=1_000_u16, share_off(), share_off(), any::<bool>()).prop_map(
        |(over_days, load_off, sets_off, ease_in)| LayOff {
            over_days,
            load_off,
            sets_off,
            ease_in,
        },
    );
    vec(step, 1..=3).prop_map(|mut steps| {
        steps.sort_by_key(|step| step.over_days);
        steps
    })
}

fn raise() -> impl Strategy<Value = RaiseMax> {
    select(vec![RaiseMax::Never, RaiseMax::Tests, RaiseMax::Estimates])
}

fn plan() -> impl Strategy<Value = Plan> {
    (1..=6_usize).prop_flat_map(|count| {
        let sessions = vec((weeks(count), vec(slot(count), 1..4), warm_up(), rests()), 1..4);
        let max = (slug(), option::of(percent()), option::of(raise()))
            .prop_map(|(lift, working, raise)| MaxRule { lift, working, raise });
        let accepted = (text(), option::of(text()), option::of(slug()), text()).prop_map(
            |(check, session, exercise, because)| Accepted { check, session, exercise, because },
        );
        (
            (text(), option::of(text()), goal(), vec(week(), count), option::of(1..=300_u16)),
            (rests(), seconds(), warm_up(), percent(), raise(), vec(max, 0..3)),
            (misses(), lay_off(), cut(), cut(), reserve(), 1..=20_u8),
            (sessions, vec(accepted, 0..2)),
        )
            .prop_map(
                |(
                    (name, about, goal, weeks, minutes),
                    (rest, rest_step, warm_up, working_max, raise_max, maxes),
                    (misses, lay_off, deload, ease_in, hard_at_left, seconds_a_rep),
                    (sessions, accepted),
                )| {
                    let mut own =
                        Catalogue::builtin().get("front-squat").expect("it is built in").clone();
                    own.slug = "own-lift".into();
                    own.name = "Own lift".into();
                    own.german = Names::NONE;
                    let session = |(at, (weeks, exercises, warm_up, rest))| Session {
                        name: format!("Session {at}"),
                        day: [None, Some(chrono::Weekday::Mon), Some(chrono::Weekday::Sun)][at % 3],
                        weeks,
                        minutes,
                        warm_up,
                        rest,
                        exercises,
                    };
                    Plan {
                        name,
                        about,
                        goal,
                        weeks,
                        minutes,
                        rest,
                        rest_step,
                        warm_up,
                        working_max,
                        raise_max,
                        maxes,
                        misses,
                        lay_off,
                        deload,
                        ease_in,
                        hard_at_left,
                        seconds_a_rep,
                        exercises: vec![own],
                        sessions: sessions.into_iter().enumerate().map(session).collect(),
                        accepted,
                    }
                },
            )
    })
}

/// Places are within the text, on characters, on one line, and say the same twice.
fn check_places(faults: &[Fault], text: &str) {
    assert!(!faults.is_empty() && faults.len() <= bounds::FAULTS);
    let mut last = 0;
    for fault in faults {
        let Bytes { start, end } = fault.span;
        let underlined = text.get(start..end).unwrap_or_else(|| panic!("{fault:?} in {text:?}"));
        assert!(!underlined.contains('\n'), "{fault:?}");
        let before = &text[..start];
        assert_eq!(fault.line, before.matches('\n').count() + 1, "{fault:?}");
        let line = before.rsplit('\n').next().unwrap_or_default();
        assert_eq!(fault.column, line.chars().count() + 1, "{fault:?}");
        assert!(start >= last, "{faults:?}");
        last = start;
    }
}

/// Whatever a text holds: a plan whose sessions can be had and which survives printing, or faults
/// in their places.
fn check_any(text: &str) {
    match Plan::read(text, &Catalogue::builtin()) {
        Ok(file) => {
            look_over_any(&file, text);
            for week in 0..file.plan.weeks.len() {
                for index in 0..file.plan.sessions_of(week).len() {
                    let session = file.plan.session(week, index).expect("it is of this week");
                    let sets = session.exercises.iter().flat_map(|entry| &entry.blocks);
                    assert!(sets.into_iter().all(|block| !block.sets.is_empty()));
                }
            }
            let printed = file.plan.print(&Catalogue::builtin());
            let again = Plan::read(&printed, &Catalogue::builtin())
                .unwrap_or_else(|faults| panic!("{faults:#?}\n{printed}"));
            assert_eq!(again.plan, file.plan, "{printed}");
        }
        Err(faults) => check_places(&faults, text),
    }
}

/// Any plan can be looked over, and what is found has its place in the text.
fn look_over_any(file: &PlanFile, text: &str) {
    for finding in look_over(file, &Catalogue::builtin(), &builtin_in(MassUnit::Kilogram)) {
        let place = text.get(finding.span.clone()).unwrap_or_else(|| panic!("{finding:?}"));
        assert!(!place.is_empty(), "{finding:?}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn printing_and_reading_gives_a_plan_back(plan in plan()) {
        let printed = plan.print(&Catalogue::builtin());
        match Plan::read(&printed, &Catalogue::builtin()) {
            Ok(file) => {
                look_over_any(&file, &printed);
                prop_assert_eq!(file.plan, plan, "{}", printed);
            }
            Err(faults) => prop_assert!(false, "{:#?}\n{}", faults, printed),
        }
    }

    #[test]
    fn a_plan_survives_json(plan in plan()) {
        let json = serde_json::to_string(&plan).expect("a plan is plain data");
        prop_assert_eq!(serde_json::from_str::<Plan>(&json).expect("as it was written"), plan);
    }

    #[test]
    fn no_bytes_stop_the_reader(bytes in vec(any::<u8>(), 0..400)) {
        if let Err(faults) = Plan::read_bytes(&bytes, &Catalogue::builtin()) {
            prop_assert!(!faults.is_empty());
        }
    }

    #[test]
    fn no_text_stops_the_reader(text in "[\\[\\]{}=.,\"'#a-z0-9 \n\r\t\\\\é-]{0,300}") {
        check_any(&text);
    }

    #[test]
    fn no_damaged_plan_stops_the_reader(
        which in any::<proptest::sample::Index>(),
        damage in vec((any::<proptest::sample::Index>(), 0..40_usize, select(SNIPPETS)), 1..8),
    ) {
        let examples: Vec<&str> = PAGE
            .split("```toml ")
            .skip(1)
            .filter_map(|part| part.split("```").next())
            .filter_map(|part| part.split_once('\n').map(|(_, body)| body))
            .collect();
        let mut text = format!(
            "name = \"a\"\nweeks = 4\n[[session]]\nname = \"b\"\n{}",
            which.get(&examples)
        );
        for (place, length, snippet) in damage {
            let mut chars: Vec<char> = text.chars().collect();
            let start = place.index(chars.len() + 1);
            let end = (start + length).min(chars.len());
            chars.splice(start..end, snippet.chars());
            text = chars.into_iter().collect();
        }
        check_any(&text);
    }
}

/// What damaged files are patched with.
const SNIPPETS: &[&str] = &[
    "",
    "",
    "\"",
    "'''",
    "\"\"\"",
    "[",
    "]",
    "[[",
    "]]",
    "{",
    "}",
    "=",
    ".",
    ",",
    "#",
    "\n",
    "\r\n",
    "\t",
    "\\",
    "\\u0000",
    "é",
    "日本",
    "-1",
    "0",
    "99999999999999999999",
    "1e400",
    "nan",
    "true",
    "\n[[session]]\n",
    "\n[session]\n",
    "\n[[session.exercise.set]]\n",
    "\nload = \"body + \"\n",
    "\nreps = \" or more, stop at  left\"\n",
    "\nload = \"% of of top set\"\n",
    "\nsets = 0\n",
    "\nsets.by_week = []\n",
    "\nload = { by_week = [[], []] }\n",
    "\nweeks = \"1-2000\"\n",
    "\nname = \"\"\n",
    "a.b.c.d.e.f.g.h.i.j.k.l = 1\n",
    "2026-11-25",
    "\"–5 %\"",
    "\"1-2-3\"",
];
