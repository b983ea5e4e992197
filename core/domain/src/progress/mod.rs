//! What the sets done say: estimates of a max, percentages for repetitions, and what each lift
//! should be next time.

pub mod estimate;
pub mod percent;
