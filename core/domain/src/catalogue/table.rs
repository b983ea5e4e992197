//! The built-in exercises. Anatomy, supports and shares of body mass are common practice, but for
//! the push-up's share: 65–75 % of body mass (Mier et al. 2014, Int J Exerc Sci
//! 7(2):161–168, abstract); two thirds is taken.
//!
//! A line reads: implement, slug, English name, movement; what it needs; muscles direct and indirect.

use std::borrow::Cow;

use super::Muscle::{self, *};
use super::german;
use super::{Counting, Exercise, Measure, Movement, Names};
use crate::quantity::Percent;

/// A line of the table.
#[derive(Clone, Copy)]
struct Row {
    slug: &'static str,
    name: &'static str,
    also: &'static [&'static str],
    movement: Movement,
    implement: &'static str,
    needs: &'static [&'static str],
    direct: &'static [Muscle],
    indirect: &'static [Muscle],
    one_sided: bool,
    body_share: Percent,
    counting: Counting,
    measure: Measure,
    main_lift: bool,
    from_floor: bool,
    over_body: bool,
}

impl Row {
    const fn also(self, also: &'static [&'static str]) -> Self {
        Self { also, ..self }
    }
    const fn needs(self, needs: &'static [&'static str]) -> Self {
        Self { needs, ..self }
    }
    const fn trains(self, direct: &'static [Muscle], indirect: &'static [Muscle]) -> Self {
        Self { direct, indirect, ..self }
    }
    /// One side at a time.
    const fn by_side(self) -> Self {
        Self { one_sided: true, ..self }
    }
    /// Share of body mass moved, in whole percent.
    const fn body(self, percent: i16) -> Self {
        Self { body_share: Percent::whole(percent), ..self }
    }
    const fn counted(self, counting: Counting) -> Self {
        Self { counting, ..self }
    }
    const fn held(self) -> Self {
        Self { measure: Measure::Seconds, ..self }
    }
    const fn walked(self) -> Self {
        Self { measure: Measure::Metres, ..self }
    }
    /// A barbell main lift.
    const fn main(self) -> Self {
        Self { main_lift: true, ..self }
    }
    const fn on_floor(self) -> Self {
        Self { from_floor: true, ..self }
    }
    const fn over_body(self) -> Self {
        Self { over_body: true, ..self }
    }

    const fn exercise(self) -> Exercise {
        Exercise {
            slug: Cow::Borrowed(self.slug),
            name: Cow::Borrowed(self.name),
            also: Names::Fixed(self.also),
            german: Names::Fixed(german::names(self.slug)),
            movement: self.movement,
            implement: Cow::Borrowed(self.implement),
            needs: Names::Fixed(self.needs),
            direct: Cow::Borrowed(self.direct),
            indirect: Cow::Borrowed(self.indirect),
            one_sided: self.one_sided,
            body_share: self.body_share,
            counting: self.counting,
            measure: self.measure,
            main_lift: self.main_lift,
            from_floor: self.from_floor,
            over_body: self.over_body,
        }
    }
}

const fn row(
    implement: &'static str,
    counting: Counting,
    slug: &'static str,
    name: &'static str,
    movement: Movement,
) -> Row {
    Row {
        slug,
        name,
        also: &[],
        movement,
        implement,
        needs: &[],
        direct: &[],
        indirect: &[],
        one_sided: false,
        body_share: Percent::whole(0),
        counting,
        measure: Measure::Reps,
        main_lift: false,
        from_floor: false,
        over_body: false,
    }
}

const fn barbell(slug: &'static str, name: &'static str, movement: Movement) -> Row {
    row("barbell", Counting::Total, slug, name, movement)
}

/// A dumbbell in each hand.
const fn dumbbells(slug: &'static str, name: &'static str, movement: Movement) -> Row {
    row("dumbbell", Counting::EachHand, slug, name, movement)
}

/// One dumbbell.
const fn dumbbell(slug: &'static str, name: &'static str, movement: Movement) -> Row {
    row("dumbbell", Counting::One, slug, name, movement)
}

const fn kettlebell(slug: &'static str, name: &'static str, movement: Movement) -> Row {
    row("kettlebell", Counting::One, slug, name, movement)
}

const fn cable(slug: &'static str, name: &'static str, movement: Movement) -> Row {
    row("cable", Counting::Stack, slug, name, movement)
}

/// A machine with a stack.
const fn machine(
    implement: &'static str,
    slug: &'static str,
    name: &'static str,
    movement: Movement,
) -> Row {
    row(implement, Counting::Stack, slug, name, movement)
}

/// The body, with a load hung on or taken off.
const fn body(slug: &'static str, name: &'static str, movement: Movement) -> Row {
    row("bodyweight", Counting::Added, slug, name, movement)
}

use Movement as M;

/// Rows as exercises, made by the compiler.
macro_rules! exercises {
    ($($row:expr),* $(,)?) => { &[$($row.exercise()),*] };
}

#[rustfmt::skip]
pub(super) static BUILTIN: &[Exercise] = exercises![
    // Squats and leg presses
    barbell("back-squat", "Back squat", M::Squat).also(&["squat"]).needs(&["rack"]).main().over_body()
        .trains(&[Quadriceps, Glutes], &[Adductors, SpinalErectors]),
    barbell("front-squat", "Front squat", M::Squat).needs(&["rack"]).main().over_body()
        .trains(&[Quadriceps, Glutes], &[Adductors, SpinalErectors, UpperBack]),
    barbell("box-squat", "Box squat", M::Squat).needs(&["rack", "box"]).main().over_body()
        .trains(&[Quadriceps, Glutes], &[Adductors, Hamstrings, SpinalErectors]),
    barbell("overhead-squat", "Overhead squat", M::Squat).needs(&["rack"]).over_body()
        .trains(&[Quadriceps, Glutes], &[Adductors, SpinalErectors, UpperBack, SideDeltoid]),
    row("landmine", Counting::Total, "landmine-squat", "Landmine squat", M::Squat)
        .trains(&[Quadriceps, Glutes], &[Adductors, Abdominals]),
    dumbbell("goblet-squat", "Goblet squat", M::Squat)
        .trains(&[Quadriceps, Glutes], &[Adductors, UpperBack]),
    kettlebell("double-kettlebell-squat", "Double kettlebell front squat", M::Squat).counted(Counting::EachHand)
        .trains(&[Quadriceps, Glutes], &[Adductors, Abdominals, UpperBack]),
    machine("leg-press", "leg-press", "Leg press", M::Squat).counted(Counting::Total)
        .trains(&[Quadriceps, Glutes], &[Adductors]),
    machine("leg-press", "one-leg-press", "One-leg press", M::Squat).counted(Counting::Total).by_side()
        .trains(&[Quadriceps, Glutes], &[Adductors]),
    machine("hack-squat", "hack-squat", "Hack squat", M::Squat).counted(Counting::Total)
        .trains(&[Quadriceps], &[Glutes, Adductors]),
    body("bodyweight-squat", "Bodyweight squat", M::Squat).also(&["air squat"])
        .trains(&[Quadriceps, Glutes], &[Adductors]),
    body("pistol-squat", "One-leg squat", M::Squat).by_side().also(&["pistol squat"])
        .trains(&[Quadriceps, Glutes], &[Adductors, HipAbductors]),
    body("wall-sit", "Wall sit", M::Squat).held()
        .trains(&[Quadriceps], &[Glutes]),

    // Hinges and pulls from the floor
    barbell("deadlift", "Deadlift", M::Hinge).main().on_floor()
        .trains(&[Glutes, Hamstrings, SpinalErectors], &[Quadriceps, Adductors, UpperTrapezius, UpperBack, Forearms]),
    barbell("sumo-deadlift", "Sumo deadlift", M::Hinge).main().on_floor()
        .trains(&[Glutes, Adductors, Quadriceps], &[Hamstrings, SpinalErectors, UpperTrapezius, Forearms]),
    barbell("romanian-deadlift", "Romanian deadlift", M::Hinge)
        .trains(&[Hamstrings, Glutes], &[SpinalErectors, Adductors, Forearms]),
    barbell("deficit-deadlift", "Deficit deadlift", M::Hinge).needs(&["box"]).on_floor()
        .trains(&[Glutes, Hamstrings, SpinalErectors], &[Quadriceps, Adductors, UpperBack, Forearms]),
    barbell("rack-pull", "Rack pull", M::Hinge).needs(&["rack"])
        .trains(&[Glutes, SpinalErectors, UpperTrapezius], &[Hamstrings, UpperBack, Forearms]),
    barbell("good-morning", "Good morning", M::Hinge).needs(&["rack"]).over_body()
        .trains(&[Hamstrings, SpinalErectors], &[Glutes, Adductors]),
    row("trap-bar", Counting::Total, "trap-bar-deadlift", "Trap-bar deadlift", M::Hinge).main().on_floor()
        .trains(&[Quadriceps, Glutes], &[Hamstrings, SpinalErectors, UpperTrapezius, Forearms]),
    dumbbells("dumbbell-romanian-deadlift", "Dumbbell Romanian deadlift", M::Hinge)
        .trains(&[Hamstrings, Glutes], &[SpinalErectors, Adductors, Forearms]),
    dumbbell("one-leg-romanian-deadlift", "One-leg Romanian deadlift", M::Hinge).by_side()
        .trains(&[Hamstrings, Glutes], &[HipAbductors, SpinalErectors]),
    kettlebell("kettlebell-deadlift", "Kettlebell deadlift", M::Hinge)
        .trains(&[Glutes, Hamstrings], &[Quadriceps, SpinalErectors, Forearms]),
    cable("cable-pull-through", "Cable pull-through", M::Hinge)
        .trains(&[Glutes, Hamstrings], &[SpinalErectors]),

    // One leg or a split stance
    barbell("barbell-split-squat", "Barbell split squat", M::Lunge).needs(&["rack"]).by_side().over_body()
        .trains(&[Quadriceps, Glutes], &[Adductors, HipAbductors]),
    barbell("barbell-lunge", "Barbell lunge", M::Lunge).needs(&["rack"]).by_side().over_body()
        .trains(&[Quadriceps, Glutes], &[Adductors, HipAbductors, Hamstrings]),
    dumbbells("split-squat", "Split squat", M::Lunge).by_side()
        .trains(&[Quadriceps, Glutes], &[Adductors, HipAbductors]),
    dumbbells("rear-foot-raised-split-squat", "Rear-foot-raised split squat", M::Lunge)
        .needs(&["bench"]).by_side().also(&["rear foot elevated split squat"])
        .trains(&[Quadriceps, Glutes], &[Adductors, HipAbductors]),
    dumbbells("walking-lunge", "Walking lunge", M::Lunge).by_side()
        .trains(&[Quadriceps, Glutes], &[Adductors, HipAbductors, Hamstrings]),
    dumbbells("reverse-lunge", "Reverse lunge", M::Lunge).by_side()
        .trains(&[Quadriceps, Glutes], &[Adductors, HipAbductors, Hamstrings]),
    dumbbells("step-up", "Step-up", M::Lunge).needs(&["box"]).by_side()
        .trains(&[Quadriceps, Glutes], &[HipAbductors, Hamstrings]),
    dumbbell("side-lunge", "Side lunge", M::Lunge).by_side().also(&["lateral lunge"])
        .trains(&[Quadriceps, Adductors], &[Glutes, HipAbductors]),

    // Bridges
    barbell("hip-thrust", "Hip thrust", M::Bridge).needs(&["bench"])
        .trains(&[Glutes], &[Hamstrings, Quadriceps]),
    barbell("glute-bridge", "Glute bridge", M::Bridge)
        .trains(&[Glutes], &[Hamstrings]),
    body("one-leg-bridge", "One-leg bridge", M::Bridge).by_side()
        .trains(&[Glutes], &[Hamstrings, HipAbductors]),

    // Presses from the chest
    barbell("bench-press", "Bench press", M::HorizontalPush).needs(&["rack", "bench"]).main().over_body()
        .trains(&[Chest, Triceps], &[FrontDeltoid]),
    barbell("close-grip-bench-press", "Close-grip bench press", M::HorizontalPush)
        .needs(&["rack", "bench"]).main().over_body()
        .trains(&[Triceps, Chest], &[FrontDeltoid]),
    barbell("incline-bench-press", "Incline bench press", M::HorizontalPush)
        .needs(&["rack", "incline-bench"]).main().over_body()
        .trains(&[Chest, FrontDeltoid], &[Triceps]),
    barbell("floor-press", "Floor press", M::HorizontalPush).needs(&["rack"]).main().over_body()
        .trains(&[Chest, Triceps], &[FrontDeltoid]),
    dumbbells("dumbbell-bench-press", "Dumbbell bench press", M::HorizontalPush).needs(&["bench"]).over_body()
        .trains(&[Chest, Triceps], &[FrontDeltoid]),
    dumbbells("dumbbell-incline-press", "Dumbbell incline press", M::HorizontalPush)
        .needs(&["incline-bench"]).over_body()
        .trains(&[Chest, FrontDeltoid], &[Triceps]),
    dumbbells("dumbbell-floor-press", "Dumbbell floor press", M::HorizontalPush).over_body()
        .trains(&[Chest, Triceps], &[FrontDeltoid]),
    machine("chest-press", "chest-press", "Machine chest press", M::HorizontalPush)
        .trains(&[Chest, Triceps], &[FrontDeltoid]),
    cable("cable-chest-press", "Cable chest press", M::HorizontalPush)
        .trains(&[Chest, Triceps], &[FrontDeltoid, Serratus]),
    body("push-up", "Push-up", M::HorizontalPush).also(&["press-up"]).body(67)
        .trains(&[Chest, Triceps], &[FrontDeltoid, Serratus, Abdominals]),
    body("ring-push-up", "Ring push-up", M::HorizontalPush).needs(&["rings"]).body(67)
        .trains(&[Chest, Triceps], &[FrontDeltoid, Serratus, Abdominals]),

    // Presses overhead, and dips
    barbell("overhead-press", "Overhead press", M::VerticalPush).also(&["press", "military press"])
        .needs(&["rack"]).main().over_body()
        .trains(&[FrontDeltoid, Triceps], &[SideDeltoid, UpperTrapezius, Serratus]),
    barbell("push-press", "Push press", M::VerticalPush).needs(&["rack"]).over_body()
        .trains(&[FrontDeltoid, Triceps], &[SideDeltoid, UpperTrapezius, Quadriceps]),
    row("landmine", Counting::Total, "landmine-press", "Landmine press", M::VerticalPush).by_side()
        .trains(&[FrontDeltoid], &[Chest, Triceps, Serratus]),
    dumbbells("dumbbell-shoulder-press", "Dumbbell shoulder press", M::VerticalPush).over_body()
        .also(&["dumbbell overhead press"])
        .trains(&[FrontDeltoid, Triceps], &[SideDeltoid, UpperTrapezius]),
    dumbbell("one-arm-dumbbell-press", "One-arm dumbbell press", M::VerticalPush).by_side().over_body()
        .trains(&[FrontDeltoid, Triceps], &[SideDeltoid, Obliques]),
    kettlebell("kettlebell-press", "Kettlebell press", M::VerticalPush).by_side().over_body()
        .trains(&[FrontDeltoid, Triceps], &[SideDeltoid, Obliques]),
    machine("shoulder-press", "machine-shoulder-press", "Machine shoulder press", M::VerticalPush)
        .trains(&[FrontDeltoid, Triceps], &[SideDeltoid]),
    body("dip", "Dip", M::VerticalPush).needs(&["dip-bars"]).body(100)
        .trains(&[Chest, Triceps], &[FrontDeltoid]),
    body("ring-dip", "Ring dip", M::VerticalPush).needs(&["rings"]).body(100)
        .trains(&[Chest, Triceps], &[FrontDeltoid]),
    body("handstand-push-up", "Handstand push-up", M::VerticalPush).body(100)
        .trains(&[FrontDeltoid, Triceps], &[SideDeltoid, UpperTrapezius, Serratus]),

    // Rows
    barbell("barbell-row", "Barbell row", M::HorizontalPull).also(&["bent-over row"]).on_floor()
        .trains(&[UpperBack, Lats], &[RearDeltoid, Biceps, SpinalErectors, Forearms]),
    barbell("prone-row", "Prone barbell row", M::HorizontalPull).needs(&["bench"]).also(&["bench pull"])
        .trains(&[UpperBack, Lats], &[RearDeltoid, Biceps]),
    row("landmine", Counting::Total, "landmine-row", "Landmine row", M::HorizontalPull)
        .trains(&[UpperBack, Lats], &[RearDeltoid, Biceps, SpinalErectors]),
    dumbbell("dumbbell-row", "One-arm dumbbell row", M::HorizontalPull).needs(&["bench"]).by_side()
        .trains(&[Lats, UpperBack], &[RearDeltoid, Biceps, Forearms]),
    dumbbells("chest-supported-row", "Chest-supported dumbbell row", M::HorizontalPull).needs(&["incline-bench"])
        .trains(&[UpperBack, Lats], &[RearDeltoid, Biceps]),
    machine("low-row", "seated-cable-row", "Seated cable row", M::HorizontalPull)
        .trains(&[UpperBack, Lats], &[RearDeltoid, Biceps]),
    cable("one-arm-cable-row", "One-arm cable row", M::HorizontalPull).by_side()
        .trains(&[Lats, UpperBack], &[RearDeltoid, Biceps]),
    machine("low-row", "low-row", "Low row", M::HorizontalPull)
        .trains(&[UpperBack, Lats], &[RearDeltoid, Biceps]),
    machine("row-machine", "machine-row", "Machine row", M::HorizontalPull)
        .trains(&[UpperBack, Lats], &[RearDeltoid, Biceps]),
    body("inverted-row", "Inverted row", M::HorizontalPull).needs(&["rack"]).body(60)
        .trains(&[UpperBack, Lats], &[RearDeltoid, Biceps, Forearms]),
    body("ring-row", "Ring row", M::HorizontalPull).needs(&["rings"]).body(60)
        .trains(&[UpperBack, Lats], &[RearDeltoid, Biceps, Forearms]),

    // Pull-ups and pulldowns
    body("pull-up", "Pull-up", M::VerticalPull).needs(&["pull-up-bar"]).body(100)
        .trains(&[Lats, UpperBack], &[Biceps, RearDeltoid, Forearms]),
    body("chin-up", "Chin-up", M::VerticalPull).needs(&["pull-up-bar"]).body(100)
        .trains(&[Lats, Biceps], &[UpperBack, RearDeltoid, Forearms]),
    body("neutral-grip-pull-up", "Neutral-grip pull-up", M::VerticalPull).needs(&["pull-up-bar"]).body(100)
        .trains(&[Lats, Biceps], &[UpperBack, RearDeltoid, Forearms]),
    row("assisted-pull-up", Counting::Added, "assisted-pull-up", "Assisted pull-up", M::VerticalPull).body(100)
        .trains(&[Lats, UpperBack], &[Biceps, RearDeltoid, Forearms]),
    row("band", Counting::Unnumbered, "band-assisted-pull-up", "Band-assisted pull-up", M::VerticalPull)
        .needs(&["pull-up-bar"])
        .trains(&[Lats, UpperBack], &[Biceps, RearDeltoid, Forearms]),
    machine("pulldown", "pulldown", "Pulldown", M::VerticalPull).also(&["lat pulldown"])
        .trains(&[Lats], &[UpperBack, Biceps, RearDeltoid]),
    machine("pulldown", "close-grip-pulldown", "Close-grip pulldown", M::VerticalPull)
        .trains(&[Lats, Biceps], &[UpperBack, RearDeltoid]),
    cable("one-arm-pulldown", "One-arm pulldown", M::VerticalPull).by_side()
        .trains(&[Lats], &[UpperBack, Biceps]),

    // Quick lifts
    barbell("power-clean", "Power clean", M::QuickLift).on_floor()
        .trains(&[Glutes, Quadriceps, UpperTrapezius], &[Hamstrings, SpinalErectors, UpperBack, Calves]),
    barbell("hang-power-clean", "Hang power clean", M::QuickLift)
        .trains(&[Glutes, Quadriceps, UpperTrapezius], &[Hamstrings, SpinalErectors, UpperBack, Calves]),
    barbell("clean", "Clean", M::QuickLift).on_floor()
        .trains(&[Glutes, Quadriceps, UpperTrapezius], &[Hamstrings, SpinalErectors, UpperBack, Adductors]),
    barbell("clean-pull", "Clean pull", M::QuickLift).on_floor()
        .trains(&[Glutes, Hamstrings, UpperTrapezius], &[Quadriceps, SpinalErectors, UpperBack, Forearms]),
    barbell("power-snatch", "Power snatch", M::QuickLift).on_floor().over_body()
        .trains(&[Glutes, Quadriceps, UpperTrapezius], &[Hamstrings, SpinalErectors, UpperBack, SideDeltoid]),
    barbell("jerk", "Jerk", M::QuickLift).needs(&["rack"]).over_body()
        .trains(&[Quadriceps, FrontDeltoid], &[Glutes, Triceps, SideDeltoid]),
    kettlebell("kettlebell-swing", "Kettlebell swing", M::QuickLift)
        .trains(&[Glutes, Hamstrings], &[SpinalErectors, Forearms]),

    // Carries and sleds
    dumbbells("farmer-carry", "Farmer's carry", M::Carry).also(&["farmer's walk"]).walked()
        .trains(&[Forearms, UpperTrapezius], &[Obliques, Glutes, Calves]),
    row("trap-bar", Counting::Total, "trap-bar-carry", "Trap-bar carry", M::Carry).walked().on_floor()
        .trains(&[Forearms, UpperTrapezius], &[Obliques, Glutes, Calves]),
    kettlebell("suitcase-carry", "Suitcase carry", M::Carry).by_side().walked()
        .trains(&[Obliques, Forearms], &[UpperTrapezius, HipAbductors]),
    kettlebell("front-rack-carry", "Front-rack carry", M::Carry).counted(Counting::EachHand).walked()
        .trains(&[Abdominals, UpperBack], &[Obliques, Glutes]),
    dumbbell("overhead-carry", "Overhead carry", M::Carry).by_side().walked().over_body()
        .trains(&[Serratus, Obliques], &[UpperTrapezius, SideDeltoid]),
    row("sled", Counting::Total, "sled-push", "Sled push", M::Sled).walked()
        .trains(&[Quadriceps, Glutes], &[Calves]),
    row("sled", Counting::Total, "sled-drag", "Backward sled drag", M::Sled).walked()
        .trains(&[Quadriceps], &[Glutes, Calves]),

    // Jumps and throws
    body("box-jump", "Box jump", M::Jump).needs(&["box"])
        .trains(&[Quadriceps, Glutes], &[Calves]),
    body("broad-jump", "Broad jump", M::Jump)
        .trains(&[Glutes, Quadriceps], &[Hamstrings, Calves]),
    dumbbells("loaded-jump", "Loaded squat jump", M::Jump)
        .trains(&[Quadriceps, Glutes], &[Calves]),
    row("medicine-ball", Counting::One, "chest-throw", "Medicine-ball chest throw", M::Throw)
        .trains(&[Chest, Triceps], &[FrontDeltoid]),
    row("medicine-ball", Counting::One, "rotational-throw", "Medicine-ball rotational throw", M::Throw).by_side()
        .trains(&[Obliques], &[Abdominals, Glutes]),
    row("medicine-ball", Counting::One, "overhead-throw", "Medicine-ball overhead throw", M::Throw)
        .trains(&[Lats, Abdominals], &[Triceps, Glutes]),

    // Trunk
    body("plank", "Plank", M::TrunkBrace).held()
        .trains(&[Abdominals], &[Obliques, Serratus]),
    row("ab-wheel", Counting::Added, "ab-wheel-rollout", "Ab-wheel rollout", M::TrunkBrace)
        .trains(&[Abdominals], &[Lats, Obliques, Serratus]),
    body("dead-bug", "Dead bug", M::TrunkBrace)
        .trains(&[Abdominals], &[HipFlexors]),
    body("side-plank", "Side plank", M::TrunkSide).by_side().held()
        .trains(&[Obliques], &[HipAbductors, Abdominals]),
    dumbbell("side-bend", "Side bend", M::TrunkSide).by_side()
        .trains(&[Obliques], &[SpinalErectors, Forearms]),
    cable("cable-press-out", "Cable press-out", M::TrunkRotation).by_side()
        .trains(&[Obliques], &[Abdominals]),
    cable("cable-chop", "Cable chop", M::TrunkRotation).by_side()
        .trains(&[Obliques], &[Abdominals, Serratus]),
    cable("cable-crunch", "Cable crunch", M::TrunkFlexion)
        .trains(&[Abdominals], &[Obliques]),
    body("crunch", "Crunch", M::TrunkFlexion)
        .trains(&[Abdominals], &[Obliques]),
    body("hanging-leg-raise", "Hanging leg raise", M::TrunkFlexion).needs(&["pull-up-bar"])
        .trains(&[Abdominals, HipFlexors], &[Obliques, Forearms]),
    body("back-extension", "Back extension", M::TrunkExtension).needs(&["back-extension-bench"])
        .trains(&[SpinalErectors, Glutes], &[Hamstrings]),

    // Hip, knee and ankle alone
    machine("leg-extension", "leg-extension", "Leg extension", M::KneeExtension)
        .trains(&[Quadriceps], &[]),
    machine("leg-extension", "one-leg-extension", "One-leg extension", M::KneeExtension).by_side()
        .trains(&[Quadriceps], &[]),
    machine("leg-curl", "leg-curl", "Leg curl", M::KneeFlexion)
        .trains(&[Hamstrings], &[Calves]),
    machine("leg-curl", "one-leg-curl", "One-leg curl", M::KneeFlexion).by_side()
        .trains(&[Hamstrings], &[Calves]),
    body("nordic-curl", "Nordic curl", M::KneeFlexion)
        .trains(&[Hamstrings], &[Glutes, Calves]),
    cable("cable-kickback", "Cable hip extension", M::HipExtension).by_side().also(&["glute kickback"])
        .trains(&[Glutes], &[Hamstrings]),
    cable("cable-hip-flexion", "Cable hip flexion", M::HipFlexion).by_side()
        .trains(&[HipFlexors], &[Abdominals]),
    machine("hip-abduction", "hip-abduction", "Hip abduction", M::HipAbduction)
        .trains(&[HipAbductors], &[Glutes]),
    row("band", Counting::Unnumbered, "band-walk", "Band side walk", M::HipAbduction)
        .trains(&[HipAbductors], &[Glutes]),
    machine("hip-adduction", "hip-adduction", "Hip adduction", M::HipAdduction)
        .trains(&[Adductors], &[]),
    body("adductor-plank", "Adductor side plank", M::HipAdduction).needs(&["bench"]).by_side().held()
        .trains(&[Adductors], &[Obliques]),
    machine("calf-machine", "standing-calf-raise", "Standing calf raise", M::CalfRaise)
        .trains(&[Calves], &[]),
    machine("calf-machine", "seated-calf-raise", "Seated calf raise", M::CalfRaise).counted(Counting::Total)
        .trains(&[Calves], &[]),
    dumbbell("one-leg-calf-raise", "One-leg calf raise", M::CalfRaise).by_side()
        .trains(&[Calves], &[]),
    row("band", Counting::Unnumbered, "toe-raise", "Toe raise", M::ToeRaise)
        .trains(&[Shins], &[]),

    // Elbow and wrist
    barbell("barbell-curl", "Barbell curl", M::ElbowFlexion)
        .trains(&[Biceps], &[Forearms]),
    row("ez-bar", Counting::Total, "ez-bar-curl", "EZ-bar curl", M::ElbowFlexion)
        .trains(&[Biceps], &[Forearms]),
    dumbbells("dumbbell-curl", "Dumbbell curl", M::ElbowFlexion)
        .trains(&[Biceps], &[Forearms]),
    dumbbells("hammer-curl", "Hammer curl", M::ElbowFlexion)
        .trains(&[Biceps, Forearms], &[]),
    dumbbells("incline-curl", "Incline dumbbell curl", M::ElbowFlexion).needs(&["incline-bench"])
        .trains(&[Biceps], &[Forearms]),
    cable("cable-curl", "Cable curl", M::ElbowFlexion)
        .trains(&[Biceps], &[Forearms]),
    row("ez-bar", Counting::Total, "lying-triceps-extension", "Lying triceps extension", M::ElbowExtension)
        .needs(&["bench"]).over_body()
        .trains(&[Triceps], &[]),
    dumbbell("overhead-triceps-extension", "Overhead triceps extension", M::ElbowExtension).over_body()
        .trains(&[Triceps], &[]),
    cable("triceps-pushdown", "Triceps pushdown", M::ElbowExtension)
        .trains(&[Triceps], &[]),
    dumbbells("wrist-curl", "Wrist curl", M::Wrist)
        .trains(&[Forearms], &[]),
    body("dead-hang", "Dead hang", M::Wrist).needs(&["pull-up-bar"]).body(100).held()
        .trains(&[Forearms], &[Lats]),

    // Shoulder and neck alone
    dumbbells("lateral-raise", "Lateral raise", M::ShoulderAbduction)
        .trains(&[SideDeltoid], &[UpperTrapezius]),
    cable("cable-lateral-raise", "Cable lateral raise", M::ShoulderAbduction).by_side()
        .trains(&[SideDeltoid], &[UpperTrapezius]),
    row("plate", Counting::One, "plate-front-raise", "Plate front raise", M::ShoulderFlexion)
        .trains(&[FrontDeltoid], &[SideDeltoid, Serratus]),
    cable("straight-arm-pulldown", "Straight-arm pulldown", M::ShoulderExtension)
        .trains(&[Lats], &[Triceps, RearDeltoid]),
    dumbbell("pullover", "Dumbbell pullover", M::ShoulderExtension).needs(&["bench"]).over_body()
        .trains(&[Lats, Chest], &[Triceps, Serratus]),
    dumbbells("dumbbell-fly", "Dumbbell fly", M::ChestFly).needs(&["bench"]).over_body()
        .trains(&[Chest], &[FrontDeltoid]),
    cable("cable-fly", "Cable fly", M::ChestFly)
        .trains(&[Chest], &[FrontDeltoid]),
    machine("pec-deck", "pec-deck", "Machine fly", M::ChestFly).also(&["pec deck"])
        .trains(&[Chest], &[FrontDeltoid]),
    dumbbells("rear-deltoid-raise", "Rear-deltoid raise", M::RearFly)
        .trains(&[RearDeltoid], &[UpperBack]),
    cable("face-pull", "Face pull", M::RearFly)
        .trains(&[RearDeltoid, UpperBack], &[RotatorCuff, Biceps]),
    machine("pec-deck", "reverse-fly", "Machine reverse fly", M::RearFly)
        .trains(&[RearDeltoid], &[UpperBack]),
    cable("external-rotation", "Cable external rotation", M::ShoulderRotation).by_side()
        .trains(&[RotatorCuff], &[RearDeltoid]),
    barbell("barbell-shrug", "Barbell shrug", M::Shrug).needs(&["rack"])
        .trains(&[UpperTrapezius], &[Forearms]),
    dumbbells("dumbbell-shrug", "Dumbbell shrug", M::Shrug)
        .trains(&[UpperTrapezius], &[Forearms]),
    row("plate", Counting::One, "neck-flexion", "Neck flexion", M::Neck).needs(&["bench"])
        .trains(&[Neck], &[]),
    row("plate", Counting::One, "neck-extension", "Neck extension", M::Neck).needs(&["bench"])
        .trains(&[Neck], &[UpperTrapezius]),
];

#[cfg(test)]
mod tests {
    use std::collections::{HashMap, HashSet};

    use super::super::{IMPLEMENTS, SUPPORTS, Tongue, find};
    use super::*;

    #[test]
    fn names_and_slugs_are_unique_and_plain() {
        let mut seen = HashMap::new();
        for exercise in BUILTIN {
            let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
            assert!(exercise.slug.chars().all(plain), "{}", exercise.slug);
            for name in exercise.names() {
                // As names are compared; in another language it may go by the same one.
                let other = seen.insert(find::key(name), exercise.slug.as_ref());
                assert!(other.is_none_or(|other| other == exercise.slug), "{name}, {other:?}");
                assert!(name.chars().count() <= find::LONGEST, "{name} is too long to compare");
            }
        }
        assert!(BUILTIN.len() >= 120, "{}", BUILTIN.len());
    }

    #[test]
    fn a_name_is_not_written_twice() {
        for exercise in BUILTIN {
            for tongue in [Tongue::English, Tongue::German] {
                let mut own = HashSet::new();
                for name in [exercise.name_in(tongue)].into_iter().chain(exercise.also_in(tongue)) {
                    assert!(own.insert(find::key(name)), "{name} stands twice");
                    assert_eq!(name.trim(), name);
                }
            }
        }
    }

    #[test]
    fn a_bar_comes_down_on_nobody_who_can_let_go_of_it() {
        let of = |holds: fn(&Exercise) -> bool| -> HashSet<&str> {
            BUILTIN.iter().filter(|one| holds(one)).map(|one| one.slug.as_ref()).collect()
        };
        let over = of(Exercise::bar_over);
        for slug in ["back-squat", "bench-press", "overhead-press", "barbell-lunge", "good-morning"]
        {
            assert!(over.contains(slug), "{slug}");
        }
        // Let go to the side, dropped, on the floor, and a machine with stops of its own.
        for slug in ["dumbbell-bench-press", "kettlebell-press", "jerk", "deadlift", "hack-squat"] {
            assert!(!over.contains(slug), "{slug}");
        }
        let benched = of(Exercise::is_bench_press);
        let presses = ["bench-press", "close-grip-bench-press", "incline-bench-press"];
        assert_eq!(benched, HashSet::from(presses));
        let racked = of(Exercise::is_racked);
        for slug in ["back-squat", "bench-press", "overhead-press"] {
            assert!(racked.contains(slug), "{slug}");
        }
        for slug in ["deadlift", "barbell-row", "pull-up", "inverted-row", "dumbbell-row", "curl"] {
            assert!(!racked.contains(slug), "{slug}");
        }
    }

    #[test]
    fn every_exercise_trains_something_once() {
        for exercise in BUILTIN {
            assert!(!exercise.direct.is_empty(), "{}", exercise.slug);
            let all: Vec<_> = exercise.direct.iter().chain(exercise.indirect.iter()).collect();
            let distinct: HashSet<_> = all.iter().collect();
            assert_eq!(all.len(), distinct.len(), "{}", exercise.slug);
        }
        for muscle in Muscle::ALL {
            assert!(BUILTIN.iter().any(|e| e.direct.contains(&muscle)), "{muscle:?}");
        }
        for movement in Movement::ALL {
            assert!(BUILTIN.iter().any(|e| e.movement == movement), "{movement:?}");
        }
    }

    #[test]
    fn implements_and_supports_are_the_listed_ones() {
        for exercise in BUILTIN {
            assert!(IMPLEMENTS.contains(&exercise.implement.as_ref()), "{}", exercise.slug);
            assert!(
                exercise.needs.iter().all(|need| SUPPORTS.contains(&need)),
                "{}",
                exercise.slug
            );
        }
        for implement in IMPLEMENTS {
            assert!(BUILTIN.iter().any(|e| e.implement == *implement), "{implement}");
        }
        for support in SUPPORTS {
            assert!(BUILTIN.iter().any(|e| e.needs.contains(support)), "{support}");
        }
    }

    #[test]
    fn flags_agree_with_each_other() {
        for exercise in BUILTIN {
            let on_a_bar = matches!(exercise.implement.as_ref(), "barbell" | "trap-bar");
            if exercise.main_lift {
                assert!(on_a_bar && exercise.is_compound(), "{}", exercise.slug);
                assert_eq!(exercise.measure, Measure::Reps, "{}", exercise.slug);
            }
            if exercise.from_floor {
                assert!(on_a_bar && exercise.counting == Counting::Total, "{}", exercise.slug);
            }
            if exercise.body_share != Percent::default() {
                assert_eq!(exercise.counting, Counting::Added, "{}", exercise.slug);
            }
        }
    }
}
