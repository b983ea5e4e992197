//! Every number of the model, each with where it comes from: *published* (author, year), *from
//! memory* (nobody here has seen the page), or *assumed* (chosen here, for want of a figure; a
//! rehearsal shows what follows from it and proves nothing).

/// Mean repetitions to failure at 80 % of the max in the bench press. Published: Nuzzo et al. 2024,
/// Sports Med 54:303–321 (at second hand).
pub(crate) const REPS_AT_80: f64 = 8.8;

/// Standard deviation of them between people. Published: the same.
pub(crate) const REPS_AT_80_DEVIATION: f64 = 2.51;

/// Repetitions beyond the first for each whole that the max is above the load, with free weights:
/// 8.8 at 80 %, and 14.4 at 70 %, where the same source has 14.08.
pub(crate) const FREE_WEIGHTS: f64 = (REPS_AT_80 - 1.0) / 0.25;

/// The same on machines and cables, where the load is guided: between the 13.1 at 80 % and the
/// 18.96 at 70 % that the same source has for the leg press. That other machines are like it is
/// assumed.
pub(crate) const MACHINES: f64 = 44.0;

/// Standard deviation of a call from the truth at up to five left. Published: within about one
/// repetition (Hackett et al. 2017, JSCR 31(8):2162–2168); that this is a mean distance, and the
/// errors normal, is assumed.
pub(crate) const CALL_DEVIATION: f64 = 1.1;

/// The same from seven left on: more than two off (the same source).
pub(crate) const CALL_DEVIATION_FAR: f64 = 2.8;

/// The part of it that one lifter keeps from set to set. Assumed.
pub(crate) const CALL_BIAS_DEVIATION: f64 = 0.5;

/// How much of the error is left where nothing is left: a last repetition that crawls tells itself
/// apart. It is all there from two left on. Assumed.
pub(crate) const CALL_AT_NONE: f64 = 0.25;

/// Body mass, kilograms. Assumed: a rowing club's.
pub(crate) const BODY_MASS_KG: f64 = 78.0;
/// Its standard deviation. Assumed.
pub(crate) const BODY_MASS_DEVIATION_KG: f64 = 10.0;
/// The lightest and the heaviest. Assumed.
pub(crate) const LIGHTEST_KG: f64 = 48.0;
/// See [`LIGHTEST_KG`].
pub(crate) const HEAVIEST_KG: f64 = 120.0;

/// Standard deviation of strength between lifters of one mass, in all lifts together (of its
/// logarithm). Assumed.
pub(crate) const STRENGTH_DEVIATION: f64 = 0.18;

/// The same from lift to lift of one lifter. Assumed.
pub(crate) const LIFT_DEVIATION: f64 = 0.08;

/// How far a load that the plan writes in kilograms, or as a share of another lift, is from the one
/// that is right for the lifter (of its logarithm): a coach writes it for those who are to lift it.
/// Assumed.
pub(crate) const WRITTEN_DEVIATION: f64 = 0.04;

/// How far an entered max lies from the true one (of its logarithm): it was tested some weeks ago.
/// Assumed.
pub(crate) const ENTERED_DEVIATION: f64 = 0.03;

/// How far from day to day a lifter is from their own mean (of its logarithm). Assumed.
pub(crate) const DAY_DEVIATION: f64 = 0.02;

/// How far a load that is found by feel lies from the right one (of its logarithm). Assumed.
pub(crate) const FOUND_DEVIATION: f64 = 0.04;

/// Repetitions left in a set where neither plan nor range says so: a lifter stops before the rep
/// that might fail. Assumed.
pub(crate) const LEFT_UNASKED: f64 = 1.0;

/// Repetitions that a plan's written load leaves the typical lifter where the plan asks for no
/// effort. Assumed.
pub(crate) const LEFT_MEANT: f64 = 2.0;

/// Repetitions that a load is lighter by for each set after the first, up to [`MOST_LATER`] of them:
/// who writes or finds a load means it for all the sets. Assumed.
pub(crate) const LATER_SET: f64 = 0.4;
/// See [`LATER_SET`].
pub(crate) const MOST_LATER: usize = 5;

/// Days in which fitness falls to 37 %. From memory: the usual figure for the model with a fitness
/// and a fatigue that both decay (Banister, Calvert, Savage, Bach 1975, "A systems model of training
/// for athletic performance", Aust J Sports Med 7:57–61, from memory).
pub(crate) const FITNESS_DAYS: f64 = 42.0;

/// Days in which fatigue does. From memory: the same.
pub(crate) const FATIGUE_DAYS: f64 = 7.0;

/// What a hard set adds to the strength of the muscles it trains, as a share, at [`USUAL_WEEK`] hard
/// sets a week. Assumed, so that ten a week, where there were four, make some 9 % in twelve weeks.
pub(crate) const FITNESS_A_SET: f64 = 0.003;

/// Hard sets a week at which a set adds that. It adds more where there are few and less where there
/// are many: all together by the square root of their number. Assumed.
pub(crate) const USUAL_WEEK: f64 = 10.0;

/// What a set taken to failure takes off it while fatigue lasts: twice as much. From memory, the
/// usual ratio of that model; at ten sets a week a lifter is some 4 % below what they could do rested.
pub(crate) const FATIGUE_A_SET: f64 = 0.006;

/// A set with so many left or fewer trains in full; with more, half. Common practice, as the count of
/// hard sets has it.
pub(crate) const HARD_AT_LEFT: f64 = 4.0;

/// So many more left than was asked is far too light. Assumed.
pub(crate) const FAR_MORE_LEFT: f64 = 3.0;

/// Standard deviation of how much training does, between lifters (of its logarithm). Assumed.
pub(crate) const ANSWER_DEVIATION: f64 = 0.4;

/// Share of the plan's mean weekly volume that was trained before it. Assumed.
pub(crate) const BEFORE: f64 = 0.4;

/// What a set to failure takes off the strength of its muscles within the session. Assumed.
pub(crate) const TIRED_A_SET: f64 = 0.05;

/// Seconds of rest in which that falls to 37 %. Assumed.
pub(crate) const TIRED_SECONDS: f64 = 240.0;

/// Share of the repetitions spent that a long pause within a set gives back. Assumed.
pub(crate) const PAUSE_GIVES: f64 = 0.6;

/// Seconds of a pause that give 63 % of it. Assumed.
pub(crate) const PAUSE_SECONDS: f64 = 30.0;

/// Share of the sessions that are missed, in the mean; from lifter to lifter between none and twice
/// that. Assumed.
pub(crate) const MISSED_SHARE: f64 = 0.06;

/// Share of the weeks in which a lifter goes away, for one week or for two. Assumed.
pub(crate) const AWAY_SHARE: f64 = 0.015;

/// How often an optional exercise is done. Assumed.
pub(crate) const OPTIONAL_SHARE: f64 = 0.5;

/// Seconds to set an exercise up, as the minutes of a sheet are reckoned. Common practice.
pub(crate) const SETTING_UP: f64 = 60.0;

/// Metres walked in a second under load. Common practice.
pub(crate) const WALK: f64 = 1.0;
