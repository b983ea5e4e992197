//! A figure as an exercise counts it, made by a gym.

use std::cmp::Ordering;

use super::sheet::Load;
use crate::catalogue::Counting;
use crate::equipment::{Ask, BELT, BODYWEIGHT, CannotMake, Equipment, Fit, Liked, Rig};
use crate::quantity::{Mass, Percent};

/// The nearest that this gym makes of a figure counted so, and what it is made with. Help is a
/// negative figure, made with the stack that gives it.
///
/// # Errors
/// [`CannotMake`] with the reason.
pub fn made(
    equipment: &Equipment,
    implement: &str,
    counting: Counting,
    figure: Mass,
) -> Result<(Mass, Rig), CannotMake> {
    make(equipment, implement, counting, figure, Fit::Nearest, false)
}

/// As [`made`], by any fit, and where the bar's height matters only with full-size plates on.
pub(crate) fn make(
    equipment: &Equipment,
    implement: &str,
    counting: Counting,
    figure: Mass,
    fit: Fit,
    full_size: bool,
) -> Result<(Mass, Rig), CannotMake> {
    if counting == Counting::Added {
        return added(equipment, implement, figure, fit);
    }
    let one_side = counting == Counting::EachSide;
    let made = equipment.make_as(implement, Ask { load: figure, fit, full_size, one_side })?;
    let rig = match (made.rig, counting) {
        (Rig::Dumbbells { count: 1, .. }, Counting::EachHand) => {
            return Err(CannotMake::NotHere { implement: implement.to_owned() });
        }
        (Rig::Dumbbells { rack, each, .. }, Counting::One) => {
            Rig::Dumbbells { rack, each, count: 1 }
        }
        (rig, _) => rig,
    };
    Ok((made.made, rig))
}

/// How far from what was asked a multiple of a liked step is looked for, in steps.
const STEPS: i64 = 4;

/// As [`make`], of the multiples of a step alone where one near is made.
pub(crate) fn make_in_steps(
    equipment: &Equipment,
    (implement, counting): (&str, Counting),
    figure: Mass,
    (fit, full_size): (Fit, bool),
    step: Option<Mass>,
) -> Result<(Mass, Rig), CannotMake> {
    let plain = || make(equipment, implement, counting, figure, fit, full_size);
    let (Some(step), true) = (step.filter(|step| *step > Mass::ZERO), figure > Mass::ZERO) else {
        return plain();
    };
    let (asked, by) = (figure.nanograms(), step.nanograms());
    let under = asked.div_euclid(by);
    let over = if asked.rem_euclid(by) == 0 { under } else { under.saturating_add(1) };
    let nearer_under = asked.saturating_sub(under.saturating_mul(by))
        <= over.saturating_mul(by).saturating_sub(asked);
    let counts: Vec<i64> = match fit {
        Fit::Under => (0..=STEPS).map(|off| under.saturating_sub(off)).collect(),
        Fit::Over => (0..=STEPS).map(|off| over.saturating_add(off)).collect(),
        Fit::Nearest => (0..=STEPS)
            .flat_map(|off| {
                let (low, high) = (under.saturating_sub(off), over.saturating_add(off));
                if nearer_under { [low, high] } else { [high, low] }
            })
            .collect(),
    };
    let liked = counts.into_iter().filter(|count| *count > 0).find_map(|count| {
        let wanted = Mass::from_nanograms(by.checked_mul(count)?);
        let made = make(equipment, implement, counting, wanted, Fit::Nearest, full_size).ok()?;
        (made.0 == wanted).then_some(made)
    });
    liked.map_or_else(plain, Ok)
}

/// More on the body, or help for it. The body alone can always be had; a belt never helps, and
/// nothing hangs on a machine that does.
fn added(
    equipment: &Equipment,
    implement: &str,
    figure: Mass,
    fit: Fit,
) -> Result<(Mass, Rig), CannotMake> {
    let bare = (Mass::ZERO, Rig::Body);
    let hangs = implement == BODYWEIGHT || implement == BELT;
    match figure.cmp(&Mass::ZERO) {
        Ordering::Equal => Ok(bare),
        Ordering::Greater if hangs => match equipment.make(implement, figure, fit) {
            Ok(made) if fit == Fit::Nearest && figure <= made.made.distance(figure) => Ok(bare),
            Ok(made) => Ok((made.made, made.rig)),
            Err(_) if fit == Fit::Under => Ok(bare),
            Err(why) => Err(why),
        },
        Ordering::Less if !hangs => {
            // More help is a smaller figure: what is at most asked of it is at least of the stack.
            let fit = match fit {
                Fit::Under => Fit::Over,
                Fit::Over => Fit::Under,
                Fit::Nearest => Fit::Nearest,
            };
            match equipment.make(implement, figure.distance(Mass::ZERO), fit) {
                Ok(made) => Ok((Mass::ZERO.checked_sub(made.made).unwrap_or_default(), made.rig)),
                Err(CannotMake::TooLight { .. }) => Ok(bare),
                Err(why) => Err(why),
            }
        }
        Ordering::Greater | Ordering::Less => Err(CannotMake::NotALoad),
    }
}

/// A gym, and which of the loads that it makes the lifter likes.
#[derive(Debug, Clone, Copy)]
pub struct Rack<'a> {
    /// The gym, with every plate.
    pub equipment: &'a Equipment,
    /// What is liked of it.
    pub liked: Liked,
}

impl Rack<'_> {
    /// What is made of a figure and is less than `on`: of the loads that are liked; of all there are
    /// where none of those is.
    pub(crate) fn lighter(
        &self,
        of: (&str, Counting),
        (figure, on): (Mass, Mass),
        fit: Fit,
    ) -> Option<(Mass, Rig)> {
        let made = |liked: Liked| {
            let gym = liked.of(self.equipment);
            let made = make_in_steps(&gym, of, figure, (fit, false), liked.step).ok();
            made.filter(|(made, _)| *made < on)
        };
        made(self.liked).or_else(|| made(Liked::default()).filter(|_| !self.liked.any()))
    }
}

/// The load after a share is taken off what was meant: the nearest that is made, the next lighter one
/// where that is none, and the same again where nothing here is lighter. None without a figure.
pub fn dropped(rack: Rack<'_>, implement: &str, from: &Load, off: Percent) -> Option<Load> {
    let on = from.figure?;
    let meant = off.left_of_whole().of(from.meant.unwrap_or(on))?;
    let of = (implement, from.counting);
    let near = rack.lighter(of, (meant, on), Fit::Nearest);
    let next = || {
        let under = on.checked_sub(Mass::from_nanograms(1))?;
        rack.lighter(of, (under, on), Fit::Under)
    };
    let (figure, rig) = near.or_else(next).unwrap_or_else(|| (on, from.rig.clone()));
    Some(Load { meant: Some(meant), figure: Some(figure), rig, ..from.clone() })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Numerals;

    fn kg(text: &str) -> Mass {
        Mass::read(&format!("{text} kg"), Numerals::Point).unwrap()
    }

    /// A rack of 10, 20 and 30: 20 % off 30 is 24, made 20; 20 % off 24 is 19.2, and the nearest is the
    /// same again, so the next lighter; under 10 there is none, and the part keeps its load.
    #[test]
    fn a_drop_takes_the_next_lighter_that_is_made_from_what_was_meant() {
        let text = "name = \"Cellar\"\nunit = \"kg\"\n[[dumbbells]]\nname = \"Rack\"\nfrom = \"10 \
                    kg\"\nto = \"30 kg\"\nstep = \"10 kg\"\n";
        let gym = Equipment::read(text).unwrap();
        let (figure, rig) = made(&gym, "dumbbell", Counting::EachHand, kg("30")).unwrap();
        let mut load = Load {
            meant: None,
            figure: Some(figure),
            counting: Counting::EachHand,
            rig,
            body: None,
            set_up: None,
        };
        let rack = Rack { equipment: &gym, liked: Liked::default() };
        let drops: Vec<_> = (0..3)
            .map(|_| {
                load = dropped(rack, "dumbbell", &load, Percent::whole(20)).unwrap();
                (load.meant.unwrap(), load.figure.unwrap())
            })
            .collect();
        assert_eq!(drops, [(kg("24"), kg("20")), (kg("19.2"), kg("10")), (kg("15.36"), kg("10"))]);
    }

    /// A lifter who likes steps of 5 kg: 20 % off 100 is 80, off that 64 is made 65; without a liked
    /// load that is lighter, any that is.
    #[test]
    fn a_drop_goes_to_a_load_that_is_liked() {
        let gym = crate::equipment::builtin_in(crate::quantity::MassUnit::Kilogram);
        let liked = Liked { smallest: None, step: Some(kg("5")) };
        let rack = Rack { equipment: &gym, liked };
        let (figure, rig) = made(&gym, "barbell", Counting::Total, kg("100")).unwrap();
        let counting = Counting::Total;
        let from =
            Load { meant: None, figure: Some(figure), counting, rig, body: None, set_up: None };
        let first = dropped(rack, "barbell", &from, Percent::whole(20)).unwrap();
        let second = dropped(rack, "barbell", &first, Percent::whole(20)).unwrap();
        assert_eq!([first.figure, second.figure], [Some(kg("80")), Some(kg("65"))]);
        let whole = Rack { liked: Liked { step: Some(kg("50")), ..liked }, ..rack };
        let light = Load { figure: Some(kg("40")), ..from };
        let under = dropped(whole, "barbell", &light, Percent::whole(20)).unwrap();
        assert_eq!(under.figure, Some(kg("32")));
    }
}
