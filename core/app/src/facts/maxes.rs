//! Maxes, working loads and body mass: where each came from, and what is entered for one.

use barwright_domain::owners::{Change, MaxOrigin, Outcome, Owner};
use barwright_domain::prescribe::MovedLoad;
use barwright_domain::quantity::{Mass, MassUnit, Percent, Rounding};

use super::Held;
use crate::fault::Refused;

/// Everything that carries loads, for one page.
pub(crate) struct Maxes {
    pub(crate) maxes: Vec<MaxOf>,
    pub(crate) tracks: Vec<TrackOf>,
    /// What is entered for one of them, and what that moves; none where nothing is.
    pub(crate) entered: Option<Entered>,
}

/// A reference max.
pub(crate) struct MaxOf {
    pub(crate) exercise: String,
    pub(crate) now: Option<(Mass, i32, MaxOrigin)>,
}

/// A working load.
pub(crate) struct TrackOf {
    pub(crate) owner: Owner,
    pub(crate) exercise: String,
    pub(crate) load: Mass,
    pub(crate) since: i32,
    pub(crate) asked: barwright_domain::call::HowMany,
    /// What was said to it last that changed anything.
    pub(crate) why: Option<Outcome>,
}

/// What is entered.
pub(crate) struct Entered {
    /// The place: `max:back-squat`, `working:track:12`.
    pub(crate) place: String,
    pub(crate) before: Option<Mass>,
    pub(crate) after: Mass,
    /// The loads that it moves in the sessions to come.
    pub(crate) loads: Vec<MovedLoad>,
}

/// The owner of a place of the page; none for body mass.
pub(crate) fn owner_at(place: &str) -> Option<Owner> {
    let owner = place.strip_prefix("working:").unwrap_or(place);
    Owner::of_name(owner).filter(|owner| matches!(owner, Owner::Max(_) | Owner::Track(_)))
}

/// What stands at a place.
pub(crate) fn standing(held: &Held, place: &str) -> Option<Mass> {
    let desk = held.desk_now();
    match owner_at(place)? {
        Owner::Max(slug) => desk.owners.max(&slug).now.map(|(mass, ..)| mass),
        owner => desk.owners.track(&owner).load,
    }
}

/// What a person says at a place: the changes of its owner.
pub(crate) fn says(held: &Held, place: &str, mass: Mass) -> Option<(Owner, Vec<Change>)> {
    let owner = owner_at(place)?;
    let change = match &owner {
        Owner::Max(_) => Change::Max { mass, origin: MaxOrigin::Entered },
        _ => {
            let track = held.desk_now().owners.track(&owner);
            let (counting, asked) = track.counting.zip(track.asked)?;
            Change::Load { load: mass, counting, asked }
        }
    };
    Some((owner, vec![change]))
}

/// What was typed for a place: a mass, or so many percent more or less than what stands there, to
/// half a kilogram or a pound.
pub(crate) fn entered(held: &Held, place: &str, text: &str) -> Result<Mass, Refused> {
    let unit = held.load_unit();
    let text = text.trim().replace(['\u{2212}', '\u{2013}'], "-");
    let Some(percent) = text.strip_suffix('%') else {
        let read = held.locale.typed_mass(&text, unit);
        return read.map(|(mass, _)| mass).map_err(Refused::Unreadable);
    };
    let less = percent.trim_start().starts_with('-');
    let figure = percent.trim_start().trim_start_matches(['-', '+']).trim();
    let share =
        Percent::read(&format!("{figure} %"), held.locale.numerals).map_err(Refused::Unreadable)?;
    let by = i64::from(share.hundredths()) * if less { -1 } else { 1 };
    let stands = standing(held, place).ok_or(Refused::NothingStands)?;
    // More than by half is no change of a max but another one: it is typed.
    if by.abs() > 5_000 {
        return Err(Refused::TooManyPercent);
    }
    let exact = stands.ratio(10_000 + by, 10_000, Rounding::HalfEven);
    let step = match unit {
        MassUnit::Kilogram => Mass::from_nanograms(unit.nanograms() / 2),
        MassUnit::Pound => Mass::from_nanograms(unit.nanograms()),
    };
    let rounded = exact.and_then(|exact| exact.to_multiple(step, Rounding::HalfEven));
    rounded.ok_or(Refused::TooManyPercent)
}
