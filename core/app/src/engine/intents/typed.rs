//! What a hand typed or chose, as values that are sound.

use barwright_domain::call::{Amount, HowMany};
use barwright_domain::equipment::{Plate, Rig};
use barwright_domain::quantity::{
    Distance, Mass, MassUnit, Numerals, Reps, Reserve, Seconds, bounds,
};
use barwright_domain::session::{EntryId, Refusal};

use super::Deciding;
use crate::fault::{Fault, Refused};

impl Deciding<'_> {
    pub(super) fn amount_of(&self, asked: &HowMany, amount: u32) -> Result<Amount, Fault> {
        match asked {
            HowMany::Reps(_) | HowMany::Open { .. } => self.reps(amount).map(Amount::Reps),
            HowMany::Seconds(_) => self.seconds(amount).map(Amount::Seconds),
            HowMany::Metres(_) => self.distance(amount).map(Amount::Metres),
        }
    }

    pub(super) fn reps(&self, amount: u32) -> Result<Reps, Fault> {
        Reps::try_from(amount)
            .ok()
            .filter(|reps| bounds::REPS.holds(i128::from(*reps)))
            .ok_or_else(|| self.refused(Refusal::OutOfRange).into())
    }

    pub(super) fn seconds(&self, amount: u32) -> Result<Seconds, Fault> {
        if bounds::SECONDS.holds(i128::from(amount)) {
            Ok(Seconds::new(amount))
        } else {
            Err(self.refused(Refusal::OutOfRange).into())
        }
    }

    pub(super) fn distance(&self, amount: u32) -> Result<Distance, Fault> {
        if bounds::DISTANCE.holds(i128::from(amount)) {
            Ok(Distance::from_millimetres(amount))
        } else {
            Err(self.refused(Refusal::OutOfRange).into())
        }
    }

    pub(super) fn reserve(&self, halves: u8) -> Result<Reserve, Fault> {
        Reserve::from_halves(halves).ok_or_else(|| self.refused(Refusal::OutOfRange).into())
    }

    pub(super) fn entry_id(&self, entry: u32) -> Result<EntryId, Fault> {
        u16::try_from(entry).map(EntryId).map_err(|_| self.refused(Refusal::NoSuchEntry).into())
    }

    pub(super) fn entry_named(&self, name: &str) -> Result<EntryId, Fault> {
        name.parse().map(EntryId).map_err(|_| self.refused(Refusal::NoSuchEntry).into())
    }

    /// A figure in exact kilograms, as keys carry it, or with its unit, as people write it.
    pub(super) fn mass(&self, text: &str) -> Result<Mass, Fault> {
        let bare = text.trim_start_matches('-').chars().all(|c| c.is_ascii_digit() || c == '.');
        let read = if bare {
            Mass::read(&format!("{text} kg"), Numerals::Point)
        } else {
            Mass::read(text, self.held.locale.numerals)
        };
        read.map_err(|unreadable| Refused::Unreadable(unreadable).into())
    }

    /// A mass that a person typed: without a unit it is in the one that is shown.
    pub(super) fn typed_mass(&self, text: &str, unit: MassUnit) -> Result<Mass, Fault> {
        let read = self.held.locale.typed_mass(text, unit);
        read.map(|(mass, _)| mass).map_err(|unreadable| Refused::Unreadable(unreadable).into())
    }

    /// The rig of plates by their labels, on what the current exercise is loaded with.
    pub(super) fn rig_of(&self, side: &[String]) -> Result<Rig, Fault> {
        let refused = |refusal: Refusal| self.refused(refusal);
        let (run, cursor) = self.current(None)?;
        let called = run
            .load_at(&cursor)
            .map(|load| load.rig.clone())
            .or_else(|| run.on.clone())
            .ok_or_else(|| refused(Refusal::LoadNeeded))?;
        if side.len() > 40 {
            return Err(refused(Refusal::TooMany).into());
        }
        let plates = side
            .iter()
            .map(|label| {
                run.equipment
                    .plates
                    .iter()
                    .find(|stock| stock.label == *label)
                    .map(|stock| Plate { label: stock.label.clone(), mass: stock.mass })
                    .ok_or(Refused::NotHere)
            })
            .collect::<Result<Vec<_>, _>>()?;
        match called {
            Rig::Bar { bar, bar_mass, collars, .. } => {
                Ok(Rig::Bar { bar, bar_mass, collars, side: plates })
            }
            Rig::Posts { machine, start, posts, .. } => {
                Ok(Rig::Posts { machine, start, posts, plates })
            }
            Rig::Hung { .. } => Ok(Rig::Hung { plates }),
            Rig::Dumbbells { .. } | Rig::Stack { .. } | Rig::Said | Rig::Body => {
                Err(refused(Refusal::WrongKind).into())
            }
        }
    }
}
