//! What a gym has, which loads it can make, with which plates, and what to change from set to set.
//!
//! An **implement** is what an exercise is loaded with, named by a lowercase slug: `barbell`,
//! `trap-bar`, `dumbbell`, `kettlebell`, `cable`, `leg-press`, `belt`, `bodyweight`. The set is
//! open: an implement is on offer when a bar, rack, stack or machine of that kind is in the
//! equipment.

pub mod bounds;
mod builtin;
pub mod by_hand;
pub mod changes;
mod liked;
mod load;
mod model;
mod pool;
mod reach;
mod read;
mod rig;
mod shapes;
mod sums;
mod write;

pub use builtin::{builtin, builtin_in, builtin_text};
pub use liked::Liked;
pub use load::{Ask, CannotMake};
pub use model::{AddOn, Bar, Dumbbells, Equipment, Machine, Offer, Pin, PlateStock, Ratio, Stack};
pub use reach::Reach;
pub use rig::{Fit, Made, Plate, Rig};
pub use shapes::EQUIPMENT;
pub(crate) use write::exactly;

/// The implement of a movement that nothing is put on.
pub const BODYWEIGHT: &str = "bodyweight";
/// Plates hung from the lifter.
pub const BELT: &str = "belt";
/// A bar, unless the equipment says what kind.
pub const BARBELL: &str = "barbell";
/// A rack of loads held in the hand, unless the equipment says what kind.
pub const DUMBBELL: &str = "dumbbell";
/// A kettlebell.
pub const KETTLEBELL: &str = "kettlebell";
/// A stack, unless the equipment says what kind.
pub const CABLE: &str = "cable";
/// One plate held in the hands.
pub const PLATE: &str = "plate";
