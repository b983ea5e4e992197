//! One exercise of the plan, with what is known of it today.

use std::borrow::Cow;

use super::lifter::{Lifter, Past};
use super::source::Source;
use crate::call::Flow;
use crate::catalogue::Exercise;
use crate::equipment::Equipment;
use crate::owners::{Care, Owner, Pain, RowOwner};
use crate::plan::{Block, Entry, WeekSession};
use crate::progress::test_day::REST_BETWEEN_TRIES;
use crate::quantity::{Mass, Seconds};
use crate::session::BodyPart;
use crate::session::here::Here;

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
    /// The gym as it is, with the plates that are not liked.
    pub(super) gym: &'a Equipment,
    /// It stands in no row of the plan: it is done instead of one that does.
    pub(super) stands_in: bool,
}

/// The gym with the plates that the lifter likes for an exercise.
pub(super) fn liked_gym<'a>(
    source: Source<'a>,
    lifter: &Lifter,
    exercise: &Exercise,
) -> Cow<'a, Equipment> {
    lifter.desk.liked(&source.equipment.name, &exercise.slug).of(source.equipment)
}

impl<'a> Slot<'a> {
    pub(super) fn new(
        source: Source<'a>,
        lifter: &'a Lifter,
        session: &'a WeekSession,
        entry: &'a Entry,
        exercise: &'a Exercise,
    ) -> Self {
        let liked = lifter.desk.liked(&source.equipment.name, &exercise.slug);
        let plain = Here::new(source.equipment, exercise, entry.counting);
        let here = Here { step: liked.step, ..plain };
        let share = exercise.body_share;
        let mass = lifter.desk.body_mass.filter(|_| share.hundredths() > 0);
        let body = mass.map(|(mass, _)| BodyPart { mass, share });
        Self {
            source,
            lifter,
            session,
            entry,
            exercise,
            here,
            body,
            gym: source.equipment,
            stands_in: false,
        }
    }

    /// Past sessions of the exercise, the latest first.
    pub(super) fn past(&self) -> &'a [Past] {
        self.lifter.past(&self.exercise.slug)
    }

    /// The row's name and track, where the plan is the one that is on.
    pub(super) fn row(&self, block: &Block) -> Option<RowOwner> {
        self.source.adopted.filter(|_| !self.stands_in)?;
        self.lifter.desk.row(self.session.session, self.entry.slot, block.line)
    }

    /// What carries the row's aim, its misses, and its load unless a max does.
    pub(super) fn track(&self, block: &Block) -> Owner {
        match self.row(block) {
            Some(row) => Owner::Track(row.track),
            None => Owner::Loose(self.exercise.slug.to_string()),
        }
    }

    /// What is careful of the exercise, or of its joint.
    pub(super) fn care(&self) -> Care {
        let owners = &self.lifter.desk.owners;
        let own = owners.care(&self.exercise.slug);
        // Of a joint: what hurt in another exercise says nothing of the load in this one.
        let of_joint = || {
            let pain = owners.care(self.exercise.movement.joint().key()).pain?;
            Some(Pain { at: None, ..pain })
        };
        let pain = own.pain.or_else(of_joint);
        Care { pain, ..own }
    }

    /// The body's part of what is moved, where there is one and it is known.
    pub(super) fn body_part(&self) -> Option<Mass> {
        self.body.and_then(|body| body.share.of(body.mass))
    }

    /// The body's part of what is moved; nothing where there is none or it is not known.
    pub(super) fn body_mass(&self) -> Mass {
        self.body_part().unwrap_or_default()
    }

    pub(super) fn moves_body(&self) -> bool {
        self.exercise.body_share.hundredths() > 0
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
