//! Any value of every type that is written, from a tape of bytes: an empty tape gives the first
//! variant of everything with nothing in its lists, so a failing tape shrinks to a small event.

use std::collections::BTreeMap;

use barwright_domain::progress::estimate::EstimatedReps;
use barwright_domain::quantity::{
    Distance, Length, Mass, Percent, Phase, Range, Reserve, Seconds, Tempo, bounds,
};
use barwright_domain::{
    call, catalogue, desk, equipment, history, owners, plan, progress, quantity, session, volume,
};

/// Bytes to choose by; nothing but zeros after its end.
pub(crate) struct Tape<'a>(std::slice::Iter<'a, u8>);

impl<'a> Tape<'a> {
    pub(crate) fn new(bytes: &'a [u8]) -> Self {
        Self(bytes.iter())
    }

    fn byte(&mut self) -> u8 {
        self.0.next().copied().unwrap_or(0)
    }

    fn number(&mut self) -> u64 {
        u64::from_be_bytes(std::array::from_fn(|_| self.byte()))
    }

    /// A number from 0 to below `count`.
    fn below(&mut self, count: usize) -> usize {
        let number = if count > 256 { self.number() } else { self.byte().into() };
        usize::try_from(number % count.max(1) as u64).expect("less than a usize")
    }

    /// A number within bounds.
    fn within(&mut self, bounds: bounds::Bounds) -> i64 {
        let span = bounds.greatest.abs_diff(bounds.least) + 1;
        let beyond = i64::try_from(self.number() % span).expect("the span of small bounds");
        bounds.least + beyond
    }
}

/// A type of which any value can be made.
pub(crate) trait Any: Sized {
    fn any(tape: &mut Tape<'_>) -> Self;
}

/// An enum: any value of each variant in turn, and a variant's name.
pub(crate) trait Every: Any + 'static {
    /// One for each variant.
    const MAKES: &'static [fn(&mut Tape<'_>) -> Self];

    fn names() -> Vec<&'static str>;
    fn name(&self) -> &'static str;
}

/// A struct of all its fields, an enum of all its variants: one more in the domain does not compile
/// here.
macro_rules! any {
    (struct $($of:ident)::+ { $($field:ident),* $(,)? }) => {
        impl Any for $($of)::+ {
            fn any(tape: &mut Tape<'_>) -> Self {
                $($of)::+ { $($field: Any::any(tape)),* }
            }
        }
    };
    (enum $($of:ident)::+ {
        $($variant:ident $(($it:ident))? $({ $($field:ident),* })?),* $(,)?
    }) => {
        impl Any for $($of)::+ {
            fn any(tape: &mut Tape<'_>) -> Self {
                let nth = tape.below(Self::MAKES.len());
                Self::MAKES[nth](tape)
            }
        }

        impl Every for $($of)::+ {
            const MAKES: &'static [fn(&mut Tape<'_>) -> Self] = {
                use $($of)::+ as Of;
                &[$(|_tape| {
                    $(let $it = Any::any(_tape);)?
                    $($(let $field = Any::any(_tape);)*)?
                    Of::$variant $(($it))? $({ $($field),* })?
                }),*]
            };

            fn names() -> Vec<&'static str> {
                vec![$(stringify!($variant)),*]
            }

            fn name(&self) -> &'static str {
                use $($of)::+ as Of;
                match self {
                    $(Of::$variant { .. } => stringify!($variant),)*
                }
            }
        }
    };
}

/// Whole numbers: small ones, and any at all.
macro_rules! whole {
    ($($whole:ty),*) => {$(
        impl Any for $whole {
            fn any(tape: &mut Tape<'_>) -> Self {
                match tape.byte() {
                    255 => Self::MAX,
                    254 => Self::MIN,
                    250..254 => tape.number() as $whole,
                    small => (small % 128) as $whole,
                }
            }
        }
    )*};
}

whole!(i16, i32, i64, u8, u16, u32, u64);

impl Any for bool {
    fn any(tape: &mut Tape<'_>) -> Self {
        tape.byte() % 2 == 1
    }
}

impl Any for String {
    fn any(tape: &mut Tape<'_>) -> Self {
        let texts = [
            "low-bar",
            "Olympic bar",
            "20 kg",
            "Belt on, \"brace\" first.\n\tThen 1/2 \\ 2",
            "",
            "Kniebeuge tief – Ferse am Boden",
            "深蹲 \u{1F3CB}\u{FE0F}",
            "\u{0}\u{1b}\u{7f}",
        ];
        texts[tape.below(texts.len())].to_owned()
    }
}

impl<T: Any> Any for Option<T> {
    fn any(tape: &mut Tape<'_>) -> Self {
        (tape.byte() % 2 == 1).then(|| T::any(tape))
    }
}

impl<T: Any> Any for Vec<T> {
    fn any(tape: &mut Tape<'_>) -> Self {
        let count = tape.below(4);
        (0..count).map(|_| T::any(tape)).collect()
    }
}

impl<K: Any + Ord, T: Any> Any for BTreeMap<K, T> {
    fn any(tape: &mut Tape<'_>) -> Self {
        Vec::<(K, T)>::any(tape).into_iter().collect()
    }
}

impl<A: Any, B: Any> Any for (A, B) {
    fn any(tape: &mut Tape<'_>) -> Self {
        (A::any(tape), B::any(tape))
    }
}

impl<A: Any, B: Any, C: Any> Any for (A, B, C) {
    fn any(tape: &mut Tape<'_>) -> Self {
        (A::any(tape), B::any(tape), C::any(tape))
    }
}

impl<T: Any> Any for [T; 2] {
    fn any(tape: &mut Tape<'_>) -> Self {
        [T::any(tape), T::any(tape)]
    }
}

impl Any for Mass {
    fn any(tape: &mut Tape<'_>) -> Self {
        let count = i32::try_from(tape.below(300)).expect("less than 300");
        match tape.below(5) {
            0 => Self::whole(count, quantity::MassUnit::Kilogram),
            1 => Self::whole(count, quantity::MassUnit::Pound),
            2 => Self::from_grams(i64::from(count) * 250).expect("75 kg at the most"),
            3 => Self::whole(-count, quantity::MassUnit::Kilogram),
            _ => Self::from_nanograms(i64::any(tape) % (4 * bounds::MASS.greatest)),
        }
    }
}

impl<T: Any> Any for Range<T> {
    fn any(tape: &mut Tape<'_>) -> Self {
        Self { from: T::any(tape), to: T::any(tape) }
    }
}

impl Any for Percent {
    fn any(tape: &mut Tape<'_>) -> Self {
        Self::from_hundredths(i32::any(tape))
    }
}

/// What lies within bounds.
macro_rules! bounded {
    ($($of:ty, $bounds:ident, $number:ty, $make:expr;)*) => {$(
        impl Any for $of {
            fn any(tape: &mut Tape<'_>) -> Self {
                let it = tape.within(bounds::$bounds);
                $make(<$number>::try_from(it).expect("within its bounds"))
            }
        }
    )*};
}

bounded! {
    Reserve, RESERVE, u8, |halves| Reserve::from_halves(halves).expect("within its bounds");
    Seconds, SECONDS, u32, Seconds::new;
    Distance, DISTANCE, u32, Distance::from_millimetres;
    Length, LENGTH, u16, Length::from_tenths;
}

impl Any for Phase {
    fn any(tape: &mut Tape<'_>) -> Self {
        match tape.below(4) {
            0 => Self::Fast,
            _ => {
                Self::Tenths(u16::try_from(tape.within(bounds::PHASE)).expect("within its bounds"))
            }
        }
    }
}

any!(struct Tempo { lowering, low_pause, lifting, high_pause });

impl Any for EstimatedReps {
    fn any(tape: &mut Tape<'_>) -> Self {
        serde_json::from_value(u16::any(tape).into()).expect("any number of hundredths")
    }
}

/// What is but a number by another name.
macro_rules! named {
    ($($($of:ident)::+),*) => {$(
        impl Any for $($of)::+ {
            fn any(tape: &mut Tape<'_>) -> Self {
                $($of)::+(Any::any(tape))
            }
        }
    )*};
}

named!(call::EntryId, progress::pace::Slowing, owners::TrackId, owners::RowId, session::Reason);

impl<T: Any> Any for Box<T> {
    fn any(tape: &mut Tape<'_>) -> Self {
        Self::new(Any::any(tape))
    }
}

impl Any for history::Brought {
    fn any(tape: &mut Tape<'_>) -> Self {
        let (from, sum) = (Any::any(tape), Any::any(tape));
        let (row, mut sets): (history::SessionRow, Vec<history::DoneSet>) =
            (Any::any(tape), Any::any(tape));
        // They are of its number and its date.
        for set in &mut sets {
            (set.key.session, set.day) = (row.session, row.day);
        }
        Self { from, sum, row, sets }
    }
}

impl Any for history::MuscleTally {
    fn any(tape: &mut Tape<'_>) -> Self {
        let muscles = catalogue::Muscle::ALL;
        Self { muscle: muscles[tape.below(muscles.len())], tally: Any::any(tape) }
    }
}

impl Any for owners::Account {
    fn any(tape: &mut Tape<'_>) -> Self {
        Self::restored(Any::any(tape), Any::any(tape))
    }
}

impl Any for desk::Desk {
    fn any(tape: &mut Tape<'_>) -> Self {
        Self {
            plan: Any::any(tape),
            kept: Any::any(tape),
            arranged: Any::any(tape),
            gyms: Any::any(tape),
            gym_files: Any::any(tape),
            gym: Any::any(tape),
            exercises: Any::any(tape),
            owners: owners::Owners::default(),
            next_track: Any::any(tape),
            next_row: Any::any(tape),
            body_mass: Any::any(tape),
            weighed: Any::any(tape),
            said: Any::any(tape),
            unsaid: Any::any(tape),
            set_ups: Any::any(tape),
            drafts: BTreeMap::new(),
            dropped: BTreeMap::new(),
            liked_in: Any::any(tape),
            liked_of: Any::any(tape),
            was_ill: Any::any(tape),
            under_18: Any::any(tape),
            coached: Any::any(tape),
            taken: Any::any(tape),
        }
    }
}

any!(struct owners::Word { session, day, outcome });
any!(enum owners::State {
    Max(it),
    Track(it),
    Care(it),
});
any!(struct owners::Max { now, above });
any!(struct owners::Track { load, since, counting, asked, places, aim, top, over, off, next, missed });
any!(struct owners::Missed { at, times, load, then });
any!(struct owners::Care { laid_off, pain });
any!(struct owners::LaidOff { keep });
any!(struct owners::Pain { since, at, running, back });
any!(struct desk::At { week, session });
any!(enum desk::Arrangement {
    Entered { at, day },
    LeftOut { at, left_out },
    Moved { at, day },
    With { at, other },
    Again { at, again },
    Travel { week, weeks },
    ForOnce { at, changes },
    LaidAnew { to, back },
});
any!(enum desk::ForOnce {
    Instead { of, exercise },
    Added { exercise },
    LeftOut { exercise },
    Earlier { exercise },
});
any!(struct desk::Arranged { entered, left_out, moved, with, again, travel, for_once, back });
any!(struct desk::Dates { moved, left_out, travel });
any!(enum session::Because {
    PlanSays(it),
    ShareOfMax { share, max, day, of, gives },
    ShareOfEstimate { share, max, day, gives },
    Single { rule, last, gives },
    WorkingMax { share, of, gives },
    UpTo { share, gives },
    LessBody { moved, body, gives },
    PercentForReps { reps, left, share, interpolated },
    RampShare { share, of, gives },
    RampSpread { step, of, from, to, gives },
    EmptyBar,
    FullSizePlates,
    BodyAlone,
    MovedWithinSlack { asked },
    ShareOfTop { share, top, gives },
    DropOff { off, gives },
    Liked { smallest, step, made },
    Made { asked, made },
    Carried { load, since },
    Said { day, why, by },
    FromFirst { first, gives },
    Cut { cut, gives },
    PlaceOfLast(it),
    Aim(it),
    Extended(it),
    LifterChose(it),
    LifterChosePin(it),
    ClimbStep { step, from },
    Unguarded,
    NothingToGoBy,
    AfterPause { pause },
});
any!(enum progress::test_day::Because {
    First(it),
    Lifted(it),
    Missed(it),
    Between { lifted, missed },
    Next { lifted },
});
any!(enum owners::Change {
    Max { mass, origin },
    AboveMax(it),
    Load { load, counting, asked },
    Fresh,
    Step(it),
    Place { gym, place },
    Aim(it),
    Extend(it),
    TwoOver { load, done },
    WellOff(it),
    Missed { at, load, then },
    Cleared(it),
    NextTime(it),
    LaidOff { keep },
    Back,
    Hurt { at },
    PainFree { keep },
    Whole,
});
any!(enum owners::MaxOrigin {
    Entered,
    Tested,
    Raised { formula },
});
any!(struct desk::Adopted { seq, text_seq, text, name, day, rows });
any!(struct desk::Kept { seq, text_seq, name, day, rows });
any!(enum desk::DeskEvent {
    PlanAdopted { text, name, day, rows, said },
    PlanMended { plan, text, day, rows, said },
    PlanTakenUp { plan, text, name, day },
    Arranged { plan, what },
    GymKept { equipment, text },
    GymGone { name },
    ExerciseKept { slug, text },
    DraftBegun { of, from, text },
    DraftChanged { of, splice },
    DraftTurned { of, back },
    DraftDropped { of },
    GymChosen { name },
    Said { owner, changes, day },
    TakenBack { seq },
    BroughtBack { seq },
    TrackParted { row, track, changes, day },
    Decided { session, day, outcomes },
    LoadsLiked { lift, gym, liked },
    ChangesTaken { file, ids },
    SessionBrought(it),
    SessionsWithdrawn { tap },
    SessionDated { session, day },
    WasIll { day },
    Minor { under_18, coached },
    BodyMassKept { mass, day },
});
any!(struct history::SessionRow { session, day, title, place, week_kind, outcome });
any!(struct history::Outcome { seconds, owed, done, volume });
any!(struct history::SetKey { session, set });
any!(struct history::DoneSet {
    key,
    day,
    exercise,
    kind,
    row,
    round,
    side,
    asked,
    target,
    meant,
    figure,
    counting,
    moved,
    bands,
    technique,
    set_up,
    kit,
    parts,
    left,
    helped,
    ending
});
any!(struct history::DonePart { amount, figure, slowing });
any!(struct volume::Tally { sets, under_six });
any!(struct volume::Sides { left, right });
any!(struct volume::Count { direct, indirect });
any!(struct desk::Said { seq, day, what });
any!(enum desk::SaidOf {
    Owner { owner, changes },
    BodyMass(it),
});
any!(struct desk::OwnExercise { slug, text });
any!(enum desk::DraftOf {
    Gym,
    Plan,
    Exercise,
});
any!(struct desk::Splice { at, gone, put });
any!(struct desk::Draft { from, text, step, back, forth });
any!(enum call::EffortScale {
    Left,
    Rpe,
});
any!(struct call::EffortTarget { left, scale });
any!(enum call::Ending {
    AsCalled,
    Failed,
    Form,
    Pain,
    Interrupted,
    Equipment,
});
any!(enum call::SetKind {
    Ramp,
    Work,
    Top,
    BackOff,
    Test,
    Speed,
});
any!(struct equipment::Equipment { name, unit, bars, plates, dumbbells, stacks, machines, also });
any!(struct equipment::Bar { name, kind, mass, collars, sleeve });
any!(struct equipment::PlateStock { label, mass, pairs, single, thickness, diameter, colour });
any!(struct equipment::Dumbbells { name, kind, loads, pairs });
any!(struct equipment::Stack { name, kind, pins, add_ons, ratio });
any!(struct equipment::Pin { label, load });
any!(struct equipment::AddOn { label, mass, count });
any!(struct equipment::Ratio { hand, stack });
any!(struct equipment::Machine { name, kind, start, posts, sleeve });
any!(enum session::Event {
    Began { sheet, equipment, body_mass },
    SetStarted { set },
    RepTapped { set, part },
    PartDone(it),
    Corrected { set, part, done },
    SetLeft { set },
    SetSkipped { set },
    EntrySkipped { pain, entry },
    Swapped { entry, to, cause },
    EntryAdded { entry },
    Postponed { entry },
    Returned { entry },
    SetAdded { set, call },
    SetCalled { set, call },
    LoadsSet { loads },
    BarHolds { rig },
    RestBegan { rest },
    RestSet { rest },
    RestRebased { was, rest },
    Guarded { entry, guard },
    KitUsed { entry, kit },
    SetUpNoted { entry, set_up },
    Noted { entry, text },
    Paused,
    Resumed,
    Dated { day, paper },
    Finished { as_of },
    PainAnswered { exercise, free },
    PainOfJoint { exercise, of_joint },
    HeldBack { owner, held },
    Undone { tap },
});
any!(enum session::Kit {
    Belt,
    Wraps,
    Straps,
    Sleeves,
});
any!(enum session::Guard {
    Pins,
    Spotter,
    Neither,
});
any!(enum session::SwapCause {
    Lacking,
    Taken,
    Pain,
    Wish,
});
any!(struct session::Done { amount, load, left, ending, helped });
any!(struct session::PartDone { set, part, done, closes, next_load });
any!(struct session::LoadForSet { set, load, part_loads, reason });
any!(enum call::Flow {
    Listed,
    Climb { to, step, most },
    Repeat { until, most },
    Total { reps, most },
    Clock { every },
    Test { step, most },
});
any!(enum call::Stop {
    Reserve(it),
    Form,
    Pace,
    Time(it),
});
any!(enum call::HowMany {
    Reps(it),
    Seconds(it),
    Metres(it),
    Open { at_least, stop },
});
any!(enum call::Amount {
    Reps(it),
    Seconds(it),
    Metres(it),
});
any!(enum catalogue::Counting {
    Total,
    EachHand,
    One,
    Stack,
    EachSide,
    Added,
    Unnumbered,
});
any!(struct session::BodyPart { mass, share });
any!(struct session::Load { meant, figure, counting, rig, body, set_up });
any!(enum session::CallLoad {
    Known(it),
    AfterTop { share },
    Chosen { counting, body },
});
any!(enum call::MaxOf {
    Own,
    Working,
    Lift(it),
    WorkingOf(it),
});
any!(enum call::LoadCall {
    Percent { share, of },
    Mass(it),
    Body,
    Added(it),
    Assisted(it),
    OfTopSet(it),
    Pin(it),
    SetUp { name, load },
    ByFeel,
});
any!(enum call::Side {
    Left,
    Right,
});
any!(struct call::Manner { tempo, technique, part_techniques, cues });
any!(enum call::WeekKind {
    Ordinary,
    EaseIn,
    Deload,
    Test,
});
any!(struct call::SetId { entry, set });
any!(struct owners::Outcome { owner, changes, why, sets, silent, held, proposal });
any!(struct owners::Proposal { question, to });
any!(enum owners::Question {
    Jump,
    WellOff,
    Missed,
    OwnTrack(it),
    Test,
});
any!(enum quantity::MassUnit { Kilogram, Pound });
any!(struct session::Reading { wall_ms, offset_minutes, boot_ms, boot_id });
any!(enum session::RestKind {
    Pause,
    Sides,
    Within,
    Round,
    Set,
    Clock,
});
any!(struct session::Rest { kind, began, length_ms, passed_ms });
any!(struct equipment::Plate { label, mass });
any!(enum equipment::Rig {
    Bar { bar, bar_mass, collars, side },
    Posts { machine, start, posts, plates },
    Dumbbells { rack, each, count },
    Stack { stack, pin, add_ons },
    Hung { plates },
    Said,
    Body,
});
any!(struct plan::Rule { kind, up, step });
any!(enum plan::RuleKind {
    AsPlanned,
    DoubleProgression,
    TwoForTwo,
    AddWhenMade,
    ByEffort,
    LessAssistance,
    MoreAddedLoad,
});
any!(enum plan::Step {
    Mass(it),
    Share(it),
});
any!(enum plan::Miss {
    Repeat,
    Less(it),
    Hold,
});
any!(enum plan::RaiseMax {
    Never,
    Tests,
    Estimates,
});
any!(struct session::Sheet { title, place, week_kind, warm_up, rest_step, seconds_a_rep, again_after, blocks });
any!(struct session::PlanPlace { plan, week, session });
any!(struct session::Block { entries, rest_within, rest_after_round });
any!(struct session::Entry { id, exercise, name, implement, optional, main, keep, instead, wear, set_up, lacks, rest_between_sides, calls, last, over_body, supported, liked, stands_in_for, terms, pain, test });
any!(struct equipment::Liked { smallest, step });
any!(struct session::Substitute { exercise, name, possible });
any!(struct session::LastTime { day, figure, amounts, left_halves });
any!(struct session::EntryPain { since, running, comes_back });
any!(struct session::Expected { max, region });
any!(struct session::Call { kind, row, round, flow, side, load, part_loads, how_many, aim, effort, structure, manner, rest, reason });
any!(enum catalogue::Region {
    Upper,
    Lower,
    Trunk,
});
any!(struct call::RangePart { name, reps });
any!(struct call::ContinuedPart { exercise, load, how_many, pause });
any!(enum call::Structure {
    Straight,
    Cluster { blocks, pause },
    RestPause { pause, each, total, most },
    Drop { off },
    Ranges { parts },
    Continued { parts },
});
any!(enum owners::Owner {
    Max(it),
    Track(it),
    Loose(it),
    Care(it),
});
any!(struct owners::RowOwner { session, slot, line, row, track });
any!(enum owners::Cutting {
    Deload,
    EaseIn,
    LayOff { days },
    Pain { since },
    BackFromPain,
    Missed { times, then },
    Effort,
});
any!(struct owners::Cut { keep, sets_off, why });
any!(struct owners::Terms { row, id, load, track, own, cut, asked, target, counting, sets, each_side, all_parts, top_only, rules, misses, raise, by_week, speed });
any!(enum owners::Why {
    Entered,
    PlanSays,
    Silent,
    TooFew { done, of },
    LessLoad,
    UnderCut,
    MoreLoad,
    Found,
    AsPlanned,
    NoRule,
    AllMade,
    TopReached { rule, top },
    BelowTop { rule, done, top },
    NoPlace { top },
    StepTooBig { step_to, expected, floor, formula },
    Rough { step_to },
    NothingHeavier,
    TwoForTwo { goal, done },
    NotYetTwo { goal, done, times },
    OffTarget { called, edge, change },
    OnTarget { called },
    NotCalled,
    Missed { times, then },
    MissMade,
    Tested,
    AboveOnce { estimate },
    AboveTwice { estimate },
    NotAbove { estimate },
    Pain,
    PainFree,
    Back,
    LaterWord,
});
any!(enum progress::estimate::Formula {
    Epley,
    Brzycki,
    Lander,
    Lombardi,
    Mayhew,
    Oconner,
    Wathan,
});
