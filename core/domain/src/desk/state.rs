//! The desk as it stands: a fold of its facts.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::arranged::Arranged;
use super::draft::{Draft, DraftOf};
use super::event::DeskEvent;
use super::said::{MOST_SAID, MOST_WEIGHED, Said, SaidOf};
use super::sent::{MOST_CHANGES, MOST_SENT};
use crate::catalogue::{Catalogue, Exercise};
use crate::equipment::{Equipment, Liked};
use crate::owners::{Change, Owner, Owners, RowOwner, TrackId, Why};
use crate::plan::read_exercise;
use crate::quantity::Mass;
use crate::session::Run;

/// An adopted plan.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Adopted {
    /// The log's number of its adoption: its name.
    pub seq: u64,
    /// The log's number of the event that has its text.
    pub text_seq: u64,
    /// The file's text.
    pub text: String,
    /// What it calls itself.
    pub name: String,
    /// Local date of adoption.
    pub day: i32,
    /// Each row with its track.
    pub rows: Vec<RowOwner>,
}

/// A plan that was on before, to go back to; its text stands in the log.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Kept {
    /// The log's number of its adoption: its name.
    pub seq: u64,
    /// The log's number of the event that has its text.
    pub text_seq: u64,
    /// What it calls itself.
    pub name: String,
    /// Local date of adoption.
    pub day: i32,
    /// Each row with its track.
    pub rows: Vec<RowOwner>,
}

/// An exercise of the lifter's own.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct OwnExercise {
    /// Its slug, for ever.
    pub slug: String,
    /// Its text.
    pub text: String,
}

/// What stands between sessions.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Desk {
    /// The plan that is on; those before it stand in the log.
    pub plan: Option<Adopted>,
    /// Plans that were on before, the latest last, [`MOST_KEPT`] at the most.
    #[serde(default)]
    pub kept: Vec<Kept>,
    /// What was arranged otherwise, by plan.
    #[serde(default)]
    pub arranged: BTreeMap<u64, Arranged>,
    /// Gyms of the lifter's own, beside the built-in ones.
    #[serde(default)]
    pub gyms: Vec<Equipment>,
    /// Their files' texts, by name, where they came with one.
    #[serde(default)]
    pub gym_files: BTreeMap<String, String>,
    /// The gym that is trained in, by name; none is the built-in one of the lifter's unit.
    #[serde(default)]
    pub gym: Option<String>,
    /// What owns the loads. Each owner is kept in a row of its own.
    #[serde(skip)]
    pub owners: Owners,
    /// Exercises of the lifter's own, in the order they were made.
    #[serde(default)]
    pub exercises: Vec<OwnExercise>,
    /// The last name given to a track.
    #[serde(default)]
    pub next_track: u32,
    /// The last name given to a row.
    #[serde(default)]
    pub next_row: u32,
    /// The last body mass, and its local date.
    #[serde(default)]
    pub body_mass: Option<(Mass, i32)>,
    /// Body masses before it, oldest first, [`MOST_WEIGHED`] at the most.
    #[serde(default)]
    pub weighed: Vec<(Mass, i32)>,
    /// What a person said and may take back, the last one last, [`MOST_SAID`] at the most.
    #[serde(default)]
    pub said: Vec<Said>,
    /// What was taken back and may be said again, the next one last.
    #[serde(default)]
    pub unsaid: Vec<Said>,
    /// Set-up of each exercise as it was noted last.
    #[serde(default)]
    pub set_ups: BTreeMap<String, Vec<String>>,
    /// What is being made by hand. Each is kept in a row of its own.
    #[serde(skip)]
    pub drafts: BTreeMap<DraftOf, Draft>,
    /// Those that were dropped or taken up last, to be gone on with.
    #[serde(skip)]
    pub dropped: BTreeMap<DraftOf, Draft>,
    /// Which loads are liked, by gym.
    #[serde(default)]
    pub liked_in: BTreeMap<String, Liked>,
    /// And by lift, by its slug.
    #[serde(default)]
    pub liked_of: BTreeMap<String, Liked>,
    /// An illness was over on this local date, and no session was decided since.
    #[serde(default)]
    pub was_ill: Option<i32>,
    /// The lifter is under 18: supervised, and no max is tested without a coach there.
    #[serde(default)]
    pub under_18: bool,
    /// The local date on which a coach is there, in days since 1970-01-01.
    #[serde(default)]
    pub coached: Option<i32>,
    /// Changes that a coach sent and that were taken: files by id, the last one last, each with the
    /// ids of its changes; [`MOST_SENT`] files at the most.
    #[serde(default)]
    pub taken: Vec<(String, Vec<String>)>,
}

/// The most plans to go back to.
pub const MOST_KEPT: usize = 20;
/// The most exercises of the lifter's own.
pub const MOST_EXERCISES: usize = 200;
/// The most gyms of the lifter's own.
pub const MOST_GYMS: usize = 50;

impl Desk {
    /// Whether a max may be tested on a local date: by a minor only with a coach there (Lloyd,
    /// Faigenbaum, Stone et al. 2014, "Position statement on youth resistance training: the 2014
    /// International Consensus", Br J Sports Med 48(7):498–505, seen in its abstract; Faigenbaum,
    /// Kraemer, Blimkie et al. 2009, "Youth resistance training: updated position statement paper",
    /// J Strength Cond Res 23(5 Suppl):S60–S79, likewise).
    pub fn tests_on(&self, day: i32) -> bool {
        !self.under_18 || self.coached == Some(day)
    }

    /// Folds a fact in; `seq` is its number in the log.
    pub fn apply(&mut self, seq: u64, event: &DeskEvent) {
        match event {
            DeskEvent::PlanAdopted { text, name, day, rows, said } => {
                self.take_up(Adopted {
                    seq,
                    text_seq: seq,
                    text: text.clone(),
                    name: name.clone(),
                    day: *day,
                    rows: rows.clone(),
                });
                self.say(*day, rows, said);
            }
            DeskEvent::PlanMended { plan, text, day, rows, said } => {
                if let Some(on) = self.plan.as_mut().filter(|on| on.seq == *plan) {
                    on.text.clone_from(text);
                    on.text_seq = seq;
                    on.rows.clone_from(rows);
                }
                self.say(*day, rows, said);
            }
            DeskEvent::PlanTakenUp { plan, text, name, day } => {
                let kept = self.kept.iter().find(|kept| kept.seq == *plan);
                let (text_seq, rows) =
                    kept.map(|kept| (kept.text_seq, kept.rows.clone())).unwrap_or_default();
                self.take_up(Adopted {
                    seq: *plan,
                    text_seq,
                    text: text.clone(),
                    name: name.clone(),
                    day: *day,
                    rows,
                });
            }
            DeskEvent::Arranged { plan, what } => {
                self.arranged.entry(*plan).or_default().apply(seq, what);
            }
            DeskEvent::GymKept { equipment, text } => {
                match self.gyms.iter_mut().find(|gym| gym.name == equipment.name) {
                    Some(gym) => gym.clone_from(equipment),
                    None => self.gyms.push(equipment.clone()),
                }
                self.gym_files.remove(&equipment.name);
                if !text.is_empty() {
                    self.gym_files.insert(equipment.name.clone(), text.clone());
                }
            }
            DeskEvent::GymGone { name } => {
                self.gyms.retain(|gym| gym.name != *name);
                self.gym_files.remove(name);
                if self.gym.as_ref() == Some(name) {
                    self.gym = None;
                }
            }
            DeskEvent::ExerciseKept { slug, text } => {
                match self.exercises.iter_mut().find(|own| own.slug == *slug) {
                    Some(own) => own.text.clone_from(text),
                    None => {
                        let (slug, text) = (slug.clone(), text.clone());
                        self.exercises.push(OwnExercise { slug, text });
                    }
                }
            }
            DeskEvent::DraftBegun { of, from, text } => {
                self.dropped.remove(of);
                self.drafts.insert(*of, Draft::begun(seq, from.clone(), text.clone()));
            }
            DeskEvent::DraftChanged { of, splice } => {
                if let Some(draft) = self.drafts.get_mut(of) {
                    draft.change(seq, splice);
                }
            }
            DeskEvent::DraftTurned { of, back } => match self.drafts.get_mut(of) {
                Some(draft) => draft.turn(seq, *back),
                None => {
                    let again = self.dropped.remove(of);
                    self.drafts.extend(again.map(|draft| (*of, Draft { step: seq, ..draft })));
                }
            },
            DeskEvent::DraftDropped { of } => {
                self.dropped.extend(self.drafts.remove(of).map(|draft| (*of, draft)));
            }
            DeskEvent::GymChosen { name } => self.gym = Some(name.clone()),
            DeskEvent::Said { owner, changes, day } => {
                self.owners.said(owner, *day, Why::Entered, changes.clone());
                let (owner, changes) = (owner.clone(), changes.clone());
                self.hears(Said { seq, day: *day, what: SaidOf::Owner { owner, changes } });
            }
            DeskEvent::TakenBack { seq } => {
                if let Some(said) = self.said.pop_if(|said| said.seq == *seq) {
                    self.take_back(&said);
                    self.unsaid.push(said);
                }
            }
            DeskEvent::BroughtBack { seq } => {
                if let Some(said) = self.unsaid.pop_if(|said| said.seq == *seq) {
                    match &said.what {
                        SaidOf::Owner { owner, changes } => {
                            self.owners.said(owner, said.day, Why::Entered, changes.clone());
                        }
                        SaidOf::BodyMass(mass) => self.weigh(*mass, said.day),
                    }
                    self.said.push(said);
                }
            }
            DeskEvent::TrackParted { row, track, changes, day } => {
                let plan = self.plan.as_mut();
                let own = plan.and_then(|plan| plan.rows.iter_mut().find(|one| one.row == *row));
                if let Some(own) = own {
                    own.track = *track;
                }
                self.next_track = self.next_track.max(track.0);
                self.owners.said(&Owner::Track(*track), *day, Why::Entered, changes.clone());
            }
            DeskEvent::Decided { session, day, outcomes } => {
                self.owners.decided(*session, *day, outcomes);
                if self.was_ill.is_some_and(|ill| ill <= *day) && !outcomes.is_empty() {
                    self.was_ill = None;
                }
            }
            DeskEvent::LoadsLiked { lift, gym, liked } => {
                let set = |all: &mut BTreeMap<String, Liked>, name: &Option<String>| {
                    let Some(name) = name else { return };
                    all.remove(name);
                    if !liked.any() {
                        all.insert(name.clone(), *liked);
                    }
                };
                set(&mut self.liked_in, gym);
                set(&mut self.liked_of, lift);
            }
            DeskEvent::ChangesTaken { file, ids } => self.take(file, ids),
            // History, of which the desk keeps nothing.
            DeskEvent::SessionBrought(_) | DeskEvent::SessionsWithdrawn { .. } => {}
            DeskEvent::SessionDated { session, day } => self.owners.dated(*session, *day),
            DeskEvent::WasIll { day } => self.was_ill = Some(*day),
            DeskEvent::Minor { under_18, coached } => {
                (self.under_18, self.coached) = (*under_18, *coached);
            }
            DeskEvent::BodyMassKept { mass, day } => {
                self.weigh(*mass, *day);
                self.hears(Said { seq, day: *day, what: SaidOf::BodyMass(*mass) });
            }
        }
    }

    /// Keeps what a person said, to be taken back.
    fn hears(&mut self, said: Said) {
        self.unsaid.clear();
        self.said.push(said);
        if self.said.len() > MOST_SAID {
            self.said.remove(0);
        }
    }

    /// Remembers what was taken of a file, so that it is taken once.
    fn take(&mut self, file: &str, ids: &[String]) {
        let at = self.taken.iter().position(|(known, _)| known == file);
        let (file, mut all) =
            at.map_or_else(|| (file.to_owned(), Vec::new()), |at| self.taken.remove(at));
        for id in ids {
            if !all.contains(id) && all.len() < MOST_CHANGES {
                all.push(id.clone());
            }
        }
        self.taken.push((file, all));
        if self.taken.len() > MOST_SENT {
            self.taken.remove(0);
        }
    }

    /// Whether a change of a file was taken.
    pub fn has_taken(&self, file: &str, id: &str) -> bool {
        let of = self.taken.iter().find(|(known, _)| known == file);
        of.is_some_and(|(_, ids)| ids.iter().any(|known| known == id))
    }

    fn weigh(&mut self, mass: Mass, day: i32) {
        self.weighed.extend(self.body_mass.replace((mass, day)));
        if self.weighed.len() > MOST_WEIGHED {
            self.weighed.remove(0);
        }
    }

    fn take_back(&mut self, said: &Said) {
        match &said.what {
            SaidOf::Owner { owner, changes } => self.owners.unsaid(owner, said.day, changes),
            SaidOf::BodyMass(mass) if self.body_mass == Some((*mass, said.day)) => {
                self.body_mass = self.weighed.pop();
            }
            SaidOf::BodyMass(_) => {}
        }
    }

    /// The built-in exercises and the lifter's own. One that this release can't read is left out: what
    /// was done of it stands in the log.
    pub fn catalogue(&self) -> Catalogue {
        let mut own: Vec<Exercise> = Vec::new();
        for kept in &self.exercises {
            let known = Catalogue::builtin().with_own(own.iter().cloned());
            if let Ok(read) = read_exercise(&kept.text, &known) {
                own.push(Exercise { slug: kept.slug.clone().into(), ..read });
            }
        }
        Catalogue::builtin().with_own(own)
    }

    /// What a person said last and may take back: not what is so long ago that it can't be told apart
    /// from what came after it.
    pub fn to_take_back(&self) -> Option<&Said> {
        self.said.last().filter(|said| match &said.what {
            SaidOf::Owner { owner, changes } => self.owners.heard(owner, said.day, changes),
            SaidOf::BodyMass(mass) => self.body_mass == Some((*mass, said.day)),
        })
    }

    /// What a plan says to tracks, and the names it gave.
    fn say(&mut self, day: i32, rows: &[RowOwner], said: &[(TrackId, Vec<Change>)]) {
        for row in rows {
            self.next_track = self.next_track.max(row.track.0);
            self.next_row = self.next_row.max(row.row.0);
        }
        for (track, changes) in said {
            self.owners.said(&Owner::Track(*track), day, Why::PlanSays, changes.clone());
        }
    }

    /// Puts a plan on and keeps the one before.
    fn take_up(&mut self, plan: Adopted) {
        self.kept.retain(|kept| kept.seq != plan.seq);
        if let Some(before) = self.plan.replace(plan) {
            self.kept.push(Kept {
                seq: before.seq,
                text_seq: before.text_seq,
                name: before.name,
                day: before.day,
                rows: before.rows,
            });
            let over = self.kept.len().saturating_sub(MOST_KEPT);
            if over > 0 {
                for gone in self.kept.drain(..over) {
                    self.arranged.remove(&gone.seq);
                }
                let on = self.plan.iter().flat_map(|plan| &plan.rows);
                let all: Vec<TrackId> = self
                    .kept
                    .iter()
                    .flat_map(|kept| &kept.rows)
                    .chain(on)
                    .map(|row| row.track)
                    .collect();
                self.owners.keep_tracks(|id| all.contains(&id));
            }
        }
    }

    /// The owner of a row of the plan that is on.
    pub fn row(&self, session: usize, slot: usize, line: usize) -> Option<RowOwner> {
        let rows = self.plan.as_ref().map(|plan| plan.rows.as_slice()).unwrap_or_default();
        let here = |row: &&RowOwner| {
            (usize::from(row.session), usize::from(row.slot), usize::from(row.line))
                == (session, slot, line)
        };
        rows.iter().find(here).copied()
    }

    /// Which loads are liked for a lift in a gym, both by name: what is said of the lift goes first.
    pub fn liked(&self, gym: &str, lift: &str) -> Liked {
        let of = |all: &BTreeMap<String, Liked>, name| all.get(name).copied().unwrap_or_default();
        of(&self.liked_of, lift).or(of(&self.liked_in, gym))
    }

    /// What was arranged of the plan that is on.
    pub fn arranged(&self) -> Arranged {
        let on = self.plan.as_ref().and_then(|plan| self.arranged.get(&plan.seq));
        on.cloned().unwrap_or_default()
    }

    /// Takes over what a session that is past leaves behind: set-ups.
    ///
    /// A session's own events can be undone until the next one begins; only then is it settled.
    pub fn settle(&mut self, run: &Run) {
        for entry in run.entries.values() {
            if entry.set_up != entry.entry.set_up {
                self.set_ups.insert(entry.entry.exercise.clone(), entry.set_up.clone());
            }
        }
    }
}
