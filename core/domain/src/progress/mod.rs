//! What can be worked out from a set: estimates of a max, percentages for repetitions, the test of a
//! max, slowing from repetition to repetition. What follows from it for the next session is
//! [`crate::settle`]'s.

pub mod estimate;
pub mod makes;
pub mod pace;
pub mod percent;
pub mod test_day;
