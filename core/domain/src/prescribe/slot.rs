//! One exercise of the plan, with what is known of it today.

use super::here::Here;
use super::lifter::{Lifter, Past};
use super::meant::For;
use super::past;
use super::session::Source;
use crate::call::{Flow, Side};
use crate::catalogue::Exercise;
use crate::plan::{Block, Entry, Sides, WeekSession};
use crate::progress::test_day::REST_BETWEEN_TRIES;
use crate::quantity::{Mass, Seconds};
use crate::session::BodyPart;

/// One exercise of the plan, with what is known of it today.
#[derive(Debug, Clone, Copy)]
pub(super) struct Slot<'a> {
    pub(super) source: Source<'a>,
    pub(super) lifter: &'a Lifter,
    pub(super) session: &'a WeekSession,
    pub(super) entry: &'a Entry,
    pub(super) exercise: &'a Exercise,
    pub(super) here: Here<'a>,
    pub(super) body: Option<BodyPart>,
}

impl<'a> Slot<'a> {
    pub(super) fn new(
        source: Source<'a>,
        lifter: &'a Lifter,
        session: &'a WeekSession,
        entry: &'a Entry,
        exercise: &'a Exercise,
    ) -> Self {
        let here = Here::new(source.equipment, exercise, entry.counting);
        let share = exercise.body_share;
        let mass = lifter.desk.body_mass.filter(|_| share.hundredths() > 0);
        let body = mass.map(|(mass, _)| BodyPart { mass, share });
        Self { source, lifter, session, entry, exercise, here, body }
    }

    /// Past sessions of the exercise, the latest first.
    pub(super) fn past(&self) -> &'a [Past] {
        self.lifter.past(&self.exercise.slug)
    }

    /// Of several of the same exercise in the session, which one this is, from 0.
    pub(super) fn occurrence(&self) -> usize {
        let before = self.session.exercises.iter().take_while(|one| one.slot < self.entry.slot);
        before.filter(|one| one.exercise == self.entry.exercise).count()
    }

    /// The exercise today, for what the plan's number comes to.
    pub(super) fn today(&self) -> For<'a> {
        let body = self.body.and_then(|body| body.share.of(body.mass));
        For { here: self.here, day: self.lifter.today, past: false, body }
    }

    /// The body's part of what is moved; nothing where there is none or it is not known.
    pub(super) fn body_mass(&self) -> Mass {
        self.today().body.unwrap_or_default()
    }

    /// Each turn at a set: both sides at once, or one and then the other.
    pub(super) fn turns(&self) -> Vec<Option<Side>> {
        let first = match (self.entry.sides, self.exercise.one_sided) {
            (Some(Sides::Together), _) | (None, false) => return vec![None],
            (Some(Sides::LeftFirst), _) => Side::Left,
            (Some(Sides::RightFirst), _) => Side::Right,
            (Some(Sides::WeakerFirst), _) | (None, true) => {
                past::weaker(self.past()).unwrap_or(Side::Left)
            }
        };
        vec![Some(first), Some(first.other())]
    }

    /// Rest after a work set of a row.
    pub(super) fn rest_after(&self, block: &Block) -> Seconds {
        let said = block.sets.first().and_then(|set| set.rest.after_set);
        said.unwrap_or_else(|| match block.flow {
            Flow::Test { .. } => REST_BETWEEN_TRIES,
            _ => self.entry.goal.rest(self.exercise.is_compound()),
        })
    }
}
