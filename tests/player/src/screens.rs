//! A screen as the one that a test expects, and the looks that show them.

use barwright_app::contract::{
    CareScreen, Draft, EquipmentScreen, FloorScreen, FormScreen, LiftScreen, Look, PlanScreen,
    Screen, TallyScreen, TodayScreen, WeeksScreen,
};

macro_rules! expected {
    ($($name:ident: $variant:ident -> $screen:ident;)*) => {
        $(
            #[doc = concat!("A screen that has to be ", stringify!($variant), ".\n\n# Panics\nWith the screen, where it is another.")]
            #[must_use]
            pub fn $name(screen: Screen) -> $screen {
                match screen {
                    Screen::$variant { $name } => $name,
                    other => panic!("{} was expected: {other:#?}", stringify!($variant)),
                }
            }
        )*
    };
}

expected! {
    care: Care -> CareScreen;
    equipment: Equipment -> EquipmentScreen;
    floor: Floor -> FloorScreen;
    form: Form -> FormScreen;
    lift: Lift -> LiftScreen;
    plan: Plan -> PlanScreen;
    tally: Tally -> TallyScreen;
    today: Today -> TodayScreen;
    weeks: Weeks -> WeeksScreen;
}

/// A look at the sheet of the session that is on.
#[must_use]
pub fn at_today() -> Look {
    Look::Today { session: None, minutes: None }
}

/// A look at the floor with nothing entered; with a panel open where one is named.
#[must_use]
pub fn at_floor(panel: Option<&str>) -> Look {
    Look::Floor { draft: Draft { panel: panel.map(str::to_owned), ..Draft::default() } }
}

/// A look at the first page of a lift.
#[must_use]
pub fn at_lift(exercise: &str) -> Look {
    Look::Lift { exercise: exercise.into(), page: 0, all: false }
}
