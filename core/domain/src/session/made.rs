//! A figure as an exercise counts it, made by a gym.

use super::sheet::Load;
use crate::catalogue::Counting;
use crate::equipment::{Ask, BELT, BODYWEIGHT, CannotMake, Equipment, Fit, Rig};
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
        if figure == Mass::ZERO {
            return Ok((figure, Rig::Body));
        }
        let hung = figure > Mass::ZERO && implement == BODYWEIGHT;
        let size = figure.distance(Mass::ZERO);
        // More help is a smaller figure: what is at most asked of it is at least of the stack.
        let fit = match fit {
            Fit::Under if figure < Mass::ZERO => Fit::Over,
            Fit::Over if figure < Mass::ZERO => Fit::Under,
            fit => fit,
        };
        let made = equipment.make(if hung { BELT } else { implement }, size, fit)?;
        let back = if figure < Mass::ZERO {
            Mass::ZERO.checked_sub(made.made).unwrap_or(Mass::ZERO)
        } else {
            made.made
        };
        return Ok((back, made.rig));
    }
    let one_side = counting == Counting::EachSide;
    let made = equipment.make_as(implement, Ask { load: figure, fit, full_size, one_side })?;
    Ok((made.made, made.rig))
}

/// The load after a share is taken off what was on: the nearest, and none where that is no
/// lighter.
pub fn dropped(equipment: &Equipment, implement: &str, from: &Load, off: Percent) -> Option<Load> {
    let keep = Percent::from_hundredths(10_000_i32.saturating_sub(off.hundredths()));
    let meant = keep.of(from.meant.or(from.figure)?)?;
    let (figure, rig) = made(equipment, implement, from.counting, meant).ok()?;
    (Some(figure) < from.figure).then(|| Load {
        meant: Some(meant),
        figure: Some(figure),
        rig,
        ..from.clone()
    })
}
