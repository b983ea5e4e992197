//! A usual evening: squats on a bar, the desk before and after, one of every event.

use barwright_domain::call::{
    Amount, EffortTarget, Ending, EntryId, Flow, HowMany, Manner, SetId, SetKind, Side, Structure,
    WeekKind,
};
use barwright_domain::catalogue::{Counting, Muscle, Region};
use barwright_domain::desk::{Arrangement, At, Desk, DeskEvent, Draft, DraftOf, Splice};
use barwright_domain::equipment::{Liked, Plate, Rig, builtin_in};
use barwright_domain::history::{
    self, Brought, DonePart, DoneSet, MuscleTally, SessionRow, SetKey,
};
use barwright_domain::owners::{
    Account, Change, Max, MaxOrigin, Outcome, Owner, Proposal, Question, RowId, RowOwner, State,
    Terms, TrackId, Why, Word,
};
use barwright_domain::plan::{Miss, RaiseMax, Rule, RuleKind, Step};
use barwright_domain::progress::pace::Slowing;
use barwright_domain::quantity::{Mass, MassUnit, Percent, Range, Reserve, Seconds};
use barwright_domain::session::{
    Because, Block, BodyPart, Call, CallLoad, Done, Entry, Event, Expected, Guard, Kit, LastTime,
    Load, LoadForSet, PartDone, PlanPlace, Reading, Reason, Rest, RestKind, Sheet, SwapCause,
};
use barwright_domain::volume::{Count, Sides, Tally};

/// 2026-03-02, 18:05 in a zone an hour ahead.
const EVENING_MS: i64 = 1_772_471_100_000;
/// Its local date.
const TODAY: i32 = 20_514;
const SQUAT: EntryId = EntryId(0);

pub(crate) fn reading() -> Reading {
    Reading {
        wall_ms: EVENING_MS,
        offset_minutes: 60,
        boot_ms: Some(86_512_345),
        boot_id: Some("5f0c8a52-6d1e-4b0f-9a57-2f6f0c1d7e11".into()),
    }
}

fn kg(tenths: i64) -> Mass {
    Mass::from_grams(tenths * 100).expect("a mass of a gym")
}

fn plate(label: &str, grams: i64) -> Plate {
    Plate { label: label.into(), mass: Mass::from_grams(grams).expect("a plate of a gym") }
}

/// 142.5 kg.
pub(crate) fn bar() -> Rig {
    Rig::Bar {
        bar: "Olympic bar".into(),
        bar_mass: kg(200),
        collars: Mass::ZERO,
        side: vec![
            plate("25 kg", 25_000),
            plate("25 kg", 25_000),
            plate("10 kg", 10_000),
            plate("1.25 kg", 1_250),
        ],
    }
}

fn load() -> Load {
    Load {
        meant: Some(kg(1426)),
        figure: Some(kg(1425)),
        counting: Counting::Total,
        rig: bar(),
        body: Some(BodyPart { mass: kg(824), share: Percent::whole(70) }),
        set_up: None,
    }
}

fn reason() -> Reason {
    Reason(vec![
        Because::ShareOfMax {
            share: Percent::from_hundredths(7_750),
            max: kg(1840),
            day: TODAY - 40,
            of: None,
            gives: kg(1426),
        },
        Because::Made { asked: kg(1426), made: kg(1425) },
    ])
}

fn two_left() -> EffortTarget {
    let left = Reserve::from_halves(4).expect("two left");
    EffortTarget::left(left, left)
}

fn call(kind: SetKind, round: u16) -> Call {
    Call {
        kind,
        row: 0,
        round,
        flow: Flow::Listed,
        side: None,
        load: CallLoad::Known(load()),
        part_loads: Vec::new(),
        how_many: HowMany::Reps(Range { from: 5, to: 5 }),
        aim: None,
        effort: Some(two_left()),
        structure: Structure::Straight,
        manner: Manner { cues: vec!["Brace first".into()], ..Manner::default() },
        rest: Seconds::new(180),
        reason: reason(),
    }
}

fn entry() -> Entry {
    Entry {
        id: SQUAT,
        exercise: "back-squat".into(),
        name: "Back squat".into(),
        implement: "barbell".into(),
        optional: false,
        main: true,
        keep: false,
        instead: Vec::new(),
        wear: vec![Kit::Belt],
        set_up: vec!["Pins at 7".into()],
        lacks: Vec::new(),
        rest_between_sides: Seconds::default(),
        calls: vec![call(SetKind::Ramp, 0), call(SetKind::Work, 1), call(SetKind::Work, 2)],
        last: Some(LastTime {
            day: TODAY - 3,
            figure: Some(kg(1400)),
            amounts: vec![Amount::Reps(5), Amount::Reps(5)],
            left_halves: Some(4),
        }),
        over_body: true,
        supported: Some(kg(1475)),
        liked: Liked::default(),
        stands_in_for: None,
        terms: vec![Terms {
            row: 0,
            id: Some(RowId(3)),
            load: Owner::Max("back-squat".into()),
            track: Owner::Track(TrackId(2)),
            own: Some(kg(1840)),
            cut: None,
            asked: HowMany::Reps(Range { from: 5, to: 5 }),
            target: Some(two_left()),
            counting: Counting::Total,
            sets: 2,
            each_side: false,
            all_parts: false,
            top_only: false,
            rules: vec![Rule {
                kind: RuleKind::AddWhenMade,
                up: true,
                step: Some(Step::Mass(kg(25))),
            }],
            misses: vec![Miss::Repeat, Miss::Less(Percent::whole(10))],
            raise: RaiseMax::Estimates,
            by_week: true,
            speed: false,
        }],
        pain: None,
        test: Some(Expected { max: Some(kg(1840)), region: Region::Lower }),
    }
}

fn sheet() -> Sheet {
    Sheet {
        title: "Lower body".into(),
        place: Some(PlanPlace { plan: 1, week: 2, session: 1 }),
        week_kind: WeekKind::Ordinary,
        warm_up: Some(Seconds::new(300)),
        rest_step: Seconds::new(30),
        seconds_a_rep: 4,
        again_after: None,
        blocks: vec![Block {
            entries: vec![entry()],
            rest_within: Seconds::default(),
            rest_after_round: Seconds::default(),
        }],
    }
}

fn set(set: u16) -> SetId {
    SetId { entry: SQUAT, set }
}

fn done() -> Done {
    Done {
        amount: Amount::Reps(5),
        load: load(),
        left: Reserve::from_halves(3),
        ending: Ending::AsCalled,
        helped: 0,
    }
}

/// A set of five with a bar, and the load of nothing after it.
pub(crate) fn part_done() -> Event {
    Event::PartDone(PartDone { set: set(1), part: 0, done: done(), closes: true, next_load: None })
}

fn rest() -> Rest {
    Rest { kind: RestKind::Set, began: reading(), length_ms: 180_000, passed_ms: 0 }
}

/// One of every event of a session.
pub(crate) fn session() -> Vec<Event> {
    let gym = builtin_in(MassUnit::Kilogram);
    let failed = Done { ending: Ending::Failed, amount: Amount::Reps(4), helped: 1, ..done() };
    let easier = Load { figure: Some(kg(1300)), ..load() };
    vec![
        Event::Began { sheet: sheet(), equipment: gym, body_mass: Some(kg(824)) },
        Event::SetStarted { set: set(0) },
        Event::RepTapped { set: set(0), part: 0 },
        part_done(),
        Event::Corrected { set: set(1), part: 0, done: failed },
        Event::SetLeft { set: set(1) },
        Event::SetSkipped { set: set(2) },
        Event::EntrySkipped { entry: SQUAT, pain: true },
        Event::Swapped { entry: SQUAT, to: entry(), cause: SwapCause::Taken },
        Event::EntryAdded { entry: entry() },
        Event::Postponed { entry: SQUAT },
        Event::Returned { entry: SQUAT },
        Event::SetAdded { set: set(3), call: call(SetKind::Work, 3) },
        Event::LoadsSet {
            loads: vec![LoadForSet {
                set: set(2),
                load: easier.clone(),
                part_loads: vec![easier],
                reason: Reason(vec![Because::LifterChose(kg(1300))]),
            }],
        },
        Event::BarHolds { rig: bar() },
        Event::RestBegan { rest: rest() },
        Event::RestSet { rest: Rest { length_ms: 210_000, ..rest() } },
        Event::RestRebased { was: rest(), rest: Rest { passed_ms: 42_000, ..rest() } },
        Event::Guarded { entry: SQUAT, guard: Guard::Pins },
        Event::KitUsed { entry: SQUAT, kit: vec![Kit::Belt, Kit::Sleeves] },
        Event::SetUpNoted { entry: SQUAT, set_up: vec!["Pins at 8".into()] },
        Event::Noted { entry: Some(SQUAT), text: "Left heel lifts.".into() },
        Event::Paused,
        Event::Resumed,
        Event::Dated { day: TODAY - 1, paper: true },
        Event::Finished { as_of: Some(reading()) },
        Event::PainAnswered { exercise: "back-squat".into(), free: true },
        Event::PainOfJoint { exercise: "back-squat".into(), of_joint: true },
        Event::HeldBack { owner: Owner::Track(TrackId(2)), held: true },
        Event::Undone { tap: 1_204 },
    ]
}

fn row() -> RowOwner {
    RowOwner { session: 0, slot: 0, line: 0, row: RowId(3), track: TrackId(2) }
}

fn outcome() -> Outcome {
    Outcome {
        owner: Owner::Track(TrackId(2)),
        changes: vec![Change::Missed { at: RowId(3), load: Some(kg(1426)), then: Miss::Repeat }],
        why: Why::Missed { times: 2, then: Miss::Repeat },
        sets: vec![set(1), set(2)],
        silent: false,
        held: false,
        proposal: Some(Proposal { question: Question::OwnTrack(RowId(3)), to: None }),
    }
}

/// One of every event between sessions.
pub(crate) fn desk() -> Vec<DeskEvent> {
    let text = "name = \"Two lifts\"\n".to_owned();
    let name = "Two lifts".to_owned();
    let start = Change::Load {
        load: kg(1000),
        counting: Counting::Total,
        asked: HowMany::Reps(Range { from: 5, to: 8 }),
    };
    let said = vec![(TrackId(2), vec![Change::Fresh, start.clone()])];
    let max = Change::Max { mass: kg(1840), origin: MaxOrigin::Entered };
    vec![
        DeskEvent::PlanAdopted {
            text: text.clone(),
            name: name.clone(),
            day: TODAY,
            rows: vec![row()],
            said: said.clone(),
        },
        DeskEvent::PlanMended { plan: 1, text: text.clone(), day: TODAY, rows: vec![row()], said },
        DeskEvent::PlanTakenUp { plan: 1, text, name, day: TODAY },
        DeskEvent::Arranged {
            plan: 1,
            what: Arrangement::Moved { at: At { week: 2, session: 1 }, day: Some(TODAY + 1) },
        },
        DeskEvent::DraftBegun { of: DraftOf::Gym, from: "Cellar".into(), text: CELLAR.into() },
        DeskEvent::DraftChanged { of: DraftOf::Gym, splice: two_pairs() },
        DeskEvent::DraftTurned { of: DraftOf::Gym, back: true },
        DeskEvent::GymKept { equipment: builtin_in(MassUnit::Pound), text: CELLAR.into() },
        DeskEvent::DraftDropped { of: DraftOf::Gym },
        DeskEvent::DraftDropped { of: DraftOf::Plan },
        DeskEvent::DraftDropped { of: DraftOf::Exercise },
        DeskEvent::ExerciseKept {
            slug: "жим-лёжа-с-паузой".into(),
            text: "name = \"Жим лёжа с паузой\"\nlike = \"Bench press\"\n".into(),
        },
        DeskEvent::GymGone { name: "Boathouse".into() },
        DeskEvent::GymChosen { name: "Cellar".into() },
        DeskEvent::Said { owner: Owner::Max("back-squat".into()), changes: vec![max], day: TODAY },
        DeskEvent::TrackParted {
            row: RowId(3),
            track: TrackId(9),
            changes: vec![start],
            day: TODAY,
        },
        DeskEvent::Decided { session: 1_180, day: TODAY, outcomes: vec![outcome()] },
        DeskEvent::LoadsLiked {
            lift: None,
            gym: Some("Boathouse".into()),
            liked: Liked { smallest: Some(kg(25)), step: Some(kg(50)) },
        },
        DeskEvent::ChangesTaken { file: "autumn-2".to_owned(), ids: vec!["1".to_owned()] },
        DeskEvent::SessionBrought(Box::new(brought())),
        DeskEvent::SessionsWithdrawn { tap: 1_195 },
        DeskEvent::SessionDated { session: 3, day: TODAY - 8 },
        DeskEvent::WasIll { day: TODAY },
        DeskEvent::Minor { under_18: true, coached: Some(TODAY) },
        DeskEvent::TakenBack { seq: 12 },
        DeskEvent::BroughtBack { seq: 12 },
        DeskEvent::BodyMassKept { mass: kg(824), day: TODAY },
    ]
}

/// An evening of a phone that is no more: squats, a drop set of rows, each side for itself.
fn brought() -> Brought {
    let two = || Reserve::from_halves(4).expect("two left");
    let set = |entry, number, exercise: &str, side, figure, parts: &[(u16, i64)]| DoneSet {
        key: SetKey { session: 412, set: SetId { entry: EntryId(entry), set: number } },
        day: TODAY - 30,
        exercise: exercise.into(),
        kind: SetKind::Work,
        row: 0,
        round: number + 1,
        side,
        asked: HowMany::Reps(Range { from: 5, to: 8 }),
        target: Some(EffortTarget::left(Reserve::NONE, two())),
        meant: Some(kg(figure)),
        figure: Some(kg(figure)),
        counting: Counting::Total,
        moved: Some(kg(figure)),
        bands: None,
        technique: None,
        set_up: vec!["pins 7".into()],
        kit: vec![Kit::Belt],
        parts: parts
            .iter()
            .map(|&(reps, figure)| DonePart {
                amount: Amount::Reps(reps),
                figure: Some(kg(figure)),
                slowing: side.is_none().then_some(Slowing(180)),
            })
            .collect(),
        left: Some(two()),
        helped: 0,
        ending: Ending::AsCalled,
    };
    let side = |direct, indirect| Count { direct, indirect };
    let both = |direct| Sides { left: side(direct, 1), right: side(direct, 1) };
    let tally = Tally { sets: both(2), under_six: Sides::default() };
    Brought {
        from: "0f8fad5b-d9cb-469f-a165-70867728950e".into(),
        sum: 307_360_733,
        row: SessionRow {
            session: 412,
            day: TODAY - 30,
            title: "Legs and push".into(),
            place: Some(PlanPlace { plan: 12, week: 3, session: 1 }),
            week_kind: WeekKind::Ordinary,
            outcome: Some(history::Outcome {
                seconds: 3_480,
                owed: 6,
                done: 2,
                volume: vec![MuscleTally { muscle: Muscle::Quadriceps, tally }],
            }),
        },
        sets: vec![
            set(0, 0, "back-squat", None, 1_425, &[(5, 1_425)]),
            set(1, 0, "dumbbell-row", Some(Side::Left), 400, &[(8, 400), (6, 300)]),
        ],
    }
}

const CELLAR: &str = "name = \"Cellar\"\n\n[[plate]]\nmass = \"20 kg\"\npairs = 1\n";

/// One pair more of the cellar's plates.
fn two_pairs() -> Splice {
    Splice { at: 50, gone: 1, put: "2".into() }
}

/// A gym as it is being mended.
pub(crate) fn draft() -> Draft {
    let mut draft = Draft::begun(1_190, "Cellar".into(), CELLAR.into());
    draft.change(1_191, &two_pairs());
    draft.change(1_192, &Splice { at: 8, gone: 6, put: "Vault".into() });
    draft.turn(1_193, true);
    draft
}

/// The desk as these events leave it.
pub(crate) fn standing_desk() -> Desk {
    let mut standing = Desk::default();
    for (seq, event) in (1..).zip(desk()) {
        standing.apply(seq, &event);
    }
    standing
}

/// The account of a max that was entered and missed since.
pub(crate) fn account() -> Account {
    let max = Max { now: Some((kg(1840), TODAY - 40, MaxOrigin::Entered)), above: Some(kg(1875)) };
    let word = Word { session: Some(1_180), day: TODAY, outcome: outcome() };
    Account::restored(State::Max(max), vec![word])
}
