//! Sessions and the time there is for them.

use super::laid;
use super::{About, Check, Finding, Level, Look};
use crate::call::WeekKind;
use crate::desk::{At, DeskEvent};
use crate::owners::{Change, MaxOrigin, Owner};
use crate::plan::WeekSession;
use crate::prescribe::{self, Lifter, Source};
use crate::quantity::{Mass, MassUnit};

/// Percent of its time that a session may take: what it takes is reckoned, and a tenth over is no
/// news; a quarter over is never made up. Common practice.
const SOME_OVER: u64 = 110;
const FAR_OVER: u64 = 125;

/// Sessions that take longer than their minutes, in the week with the most sets: an ordinary one,
/// where there is any.
pub(super) fn too_long(look: Look<'_>) -> Vec<Finding> {
    let lifter = someone(look);
    let mut found = Vec::new();
    for (session, written) in look.plan.sessions.iter().enumerate() {
        let Some(minutes) = written.minutes.or(look.plan.minutes) else { continue };
        let Some((week, index)) = fullest(look, session) else { continue };
        let Some(at) = At::of_nth(week, index) else { continue };
        let source = Source {
            plan: look.plan,
            adopted: None,
            at,
            catalogue: look.catalogue,
            equipment: look.equipment,
        };
        let Some(made) = prescribe::sheet(source, &lifter) else { continue };
        let seconds = prescribe::duration(&made.sheet).total();
        let over = |percent: u64| seconds * 100 > u64::from(minutes) * 60 * percent;
        if over(SOME_OVER) {
            let own = look.file.places.session(session);
            let plan = look.file.places.plan();
            found.push(Finding {
                check: Check::TooLong,
                level: if over(FAR_OVER) { Level::Change } else { Level::LookAt },
                session: Some(session),
                exercise: None,
                span: own.unwrap_or(plan).at(&["minutes"]),
                about: About::TooLong { week: week + 1, seconds, minutes },
                accepted: None,
            });
        }
    }
    found
}

/// The week in which a session has the most sets, and its place there.
fn fullest(look: Look<'_>, session: usize) -> Option<(usize, usize)> {
    let sets = |of: &WeekSession| -> u32 {
        let blocks = of.exercises.iter().flat_map(|entry| &entry.blocks);
        blocks.map(laid::sets).fold(0, u32::saturating_add)
    };
    look.laid
        .weeks()
        .filter_map(|(week, kind, sessions)| {
            let index = sessions.iter().position(|of| of.session == session)?;
            let ordinary = kind == WeekKind::Ordinary;
            Some(((ordinary, sets(sessions.get(index)?)), (week, index)))
        })
        // Of equals the first.
        .fold(None, |best: Option<((bool, u32), (usize, usize))>, next| match best {
            Some(best) if best.0 >= next.0 => Some(best),
            _ => Some(next),
        })
        .map(|(_, place)| place)
}

/// Somebody for whom there are ramps and plates to reckon with: 100 kg in every lift, 80 kg of body
/// mass.
fn someone(look: Look<'_>) -> Lifter {
    let mut lifter = Lifter::default();
    let mass = Mass::whole(100, MassUnit::Kilogram);
    for exercise in look.catalogue.iter().filter(|exercise| exercise.main_lift) {
        let owner = Owner::Max(exercise.slug.to_string());
        let changes = vec![Change::Max { mass, origin: MaxOrigin::Entered }];
        let event = DeskEvent::Said { owner, changes, day: 0 };
        lifter.desk.apply(0, &event);
    }
    let mass = Mass::whole(80, MassUnit::Kilogram);
    lifter.desk.apply(0, &DeskEvent::BodyMassKept { mass, day: 0 });
    lifter
}
