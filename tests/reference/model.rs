//! The model: a list of taps, played from the start for every question.

/// A tap that can stand.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Tap {
    Begin,
    AsCalled,
    Reps(u16),
    Short(u16),
    SkipSet,
    SkipExercise(usize),
    Postpone(usize),
    TakeUp(usize),
    AddSet(usize),
    RestBy(i32),
    Pause,
    Resume,
    Finish,
}

/// The taps that stand, and those taken back, each with its second.
#[derive(Debug, Default)]
pub(crate) struct Model {
    taps: Vec<(Tap, i64)>,
    undone: Vec<(Tap, i64)>,
}

impl Model {
    /// Whether the tap is taken.
    pub(crate) fn tap(&mut self, tap: Tap, at: i64) -> bool {
        let mut day = self.play();
        if !day.tap(tap, at) {
            return false;
        }
        self.taps.push((tap, at));
        self.undone.clear();
        true
    }

    pub(crate) fn undo(&mut self) -> bool {
        self.taps.pop().map(|tap| self.undone.push(tap)).is_some()
    }

    pub(crate) fn redo(&mut self) -> bool {
        self.undone.pop().map(|tap| self.taps.push(tap)).is_some()
    }

    pub(crate) fn can_undo(&self) -> bool {
        !self.taps.is_empty()
    }

    pub(crate) fn can_redo(&self) -> bool {
        !self.undone.is_empty()
    }

    pub(crate) fn running(&self) -> bool {
        let day = self.play();
        day.begun && !day.finished
    }

    pub(crate) fn part(&self) -> Option<String> {
        let day = self.play();
        let (exercise, set) = day.current()?;
        let part = day.exercises[exercise].sets[set].parts.len();
        Some(format!("{exercise}.{set}.{part}"))
    }

    /// Whole seconds of rest left.
    pub(crate) fn rest_left(&self, now: i64) -> Option<i64> {
        let day = self.play();
        if day.paused {
            return None;
        }
        day.rest.map(|(began, length)| began + length - now)
    }

    /// Each set done, by the name of its row and what each part came to.
    pub(crate) fn done(&self) -> Vec<String> {
        let mut done: Vec<String> = self
            .play()
            .exercises
            .iter()
            .enumerate()
            .flat_map(|(exercise, of)| {
                of.sets.iter().enumerate().filter(|(_, set)| !set.parts.is_empty()).map(
                    move |(at, set)| {
                        let parts: Vec<String> = set.parts.iter().map(u16::to_string).collect();
                        format!("set-{exercise}-{at} {}", parts.join(" + "))
                    },
                )
            })
            .collect();
        done.sort();
        done
    }

    fn play(&self) -> Day {
        let mut day = Day::default();
        for (tap, at) in &self.taps {
            assert!(day.tap(*tap, *at), "{tap:?} was taken once");
        }
        day
    }
}

#[derive(Debug, Clone)]
struct Set {
    round: usize,
    /// 0 both, 1 left, 2 right.
    side: u8,
    called: Vec<u16>,
    parts: Vec<u16>,
    over: bool,
}

#[derive(Debug)]
struct Exercise {
    sets: Vec<Set>,
    rest: i64,
    left_out: bool,
}

/// A day of the reference plan.
#[derive(Debug, Default)]
struct Day {
    begun: bool,
    finished: bool,
    paused: bool,
    exercises: Vec<Exercise>,
    /// Which exercises go round together, in order.
    lanes: Vec<Vec<usize>>,
    /// When the rest began, and its length.
    rest: Option<(i64, i64)>,
}

impl Day {
    fn begin(&mut self) {
        let sets = |count: usize, called: &[u16], sides: bool| -> Vec<Set> {
            let set = |round, side| Set {
                round,
                side,
                called: called.to_vec(),
                parts: Vec::new(),
                over: false,
            };
            (1..=count)
                .flat_map(|round| {
                    if sides { vec![set(round, 1), set(round, 2)] } else { vec![set(round, 0)] }
                })
                .collect()
        };
        let exercise = |sets, rest| Exercise { sets, rest, left_out: false };
        self.exercises = vec![
            exercise(sets(2, &[5], false), 180),
            exercise(sets(2, &[2, 2, 1], false), 120),
            exercise(sets(2, &[8], false), 180),
            exercise(sets(3, &[5], false), 180),
            exercise(sets(2, &[8], true), 60),
        ];
        self.lanes = vec![vec![0], vec![1], vec![2, 3], vec![4]];
        self.begun = true;
    }

    fn left_of(&self, exercise: usize) -> bool {
        self.exercises
            .get(exercise)
            .is_some_and(|of| !of.left_out && of.sets.iter().any(|set| !set.over))
    }

    /// The set under way, or the first in order.
    fn current(&self) -> Option<(usize, usize)> {
        for (at, of) in self.exercises.iter().enumerate() {
            if of.left_out {
                continue;
            }
            if let Some(set) = of.sets.iter().position(|set| !set.over && !set.parts.is_empty()) {
                return Some((at, set));
            }
        }
        for lane in &self.lanes {
            let mut best: Option<(usize, usize, usize, usize)> = None;
            for (place, exercise) in lane.iter().enumerate() {
                let of = &self.exercises[*exercise];
                if of.left_out {
                    continue;
                }
                let mut order: Vec<usize> = (0..of.sets.len()).collect();
                order.sort_by_key(|set| (of.sets[*set].round, *set));
                let Some(set) = order.into_iter().find(|set| !of.sets[*set].over) else { continue };
                let candidate = (of.sets[set].round, place, *exercise, set);
                if best.is_none_or(|best| candidate < best) {
                    best = Some(candidate);
                }
            }
            if let Some((_, _, exercise, set)) = best {
                return Some((exercise, set));
            }
        }
        None
    }

    /// What the part to be done now is called with: no more than the first side did.
    fn called(&self, exercise: usize, set: usize) -> u16 {
        let of = &self.exercises[exercise].sets;
        let now = &of[set];
        let called = now.called[now.parts.len()];
        let first = of
            .iter()
            .find(|other| other.round == now.round && other.side != now.side)
            .filter(|other| other.over && !other.parts.is_empty());
        match first {
            Some(first) if now.side > 0 => called.min(first.parts[0]),
            _ => called,
        }
    }

    fn leave_open(&mut self, only: Option<usize>) {
        for (at, of) in self.exercises.iter_mut().enumerate() {
            if only.is_none_or(|only| only == at) && !of.left_out {
                for set in of.sets.iter_mut().filter(|set| !set.parts.is_empty()) {
                    set.over = true;
                }
            }
        }
    }

    fn record(&mut self, reps: Option<u16>, last: bool, at: i64) -> bool {
        let Some((exercise, set)) = self.current() else { return false };
        let called = self.called(exercise, set);
        let reps = reps.unwrap_or(called);
        if reps == 0 && !last {
            return false;
        }
        self.paused = false;
        let of = &mut self.exercises[exercise].sets[set];
        of.parts.push(reps);
        let clustered = of.called.len() > 1;
        let short = clustered && reps < called;
        of.over = last || short || of.parts.len() == of.called.len();
        let (over, round, side) = (of.over, of.round, of.side);
        self.rest = None;
        let length = if !over {
            20
        } else {
            match self.current() {
                None => return true,
                Some((next, next_set)) => {
                    let other = &self.exercises[next].sets[next_set];
                    let lane = self.lanes.iter().find(|lane| lane.contains(&exercise)).unwrap();
                    if next == exercise && side > 0 && other.side != side && other.round == round {
                        30
                    } else if lane.len() > 1 {
                        let within =
                            lane.contains(&next) && next != exercise && other.round == round;
                        if within { 15 } else { 90 }
                    } else {
                        self.exercises[exercise].rest
                    }
                }
            }
        };
        self.rest = Some((at, length));
        true
    }

    fn tap(&mut self, tap: Tap, at: i64) -> bool {
        if matches!(tap, Tap::Begin) {
            let free = !self.begun || self.finished;
            self.begin();
            return free;
        }
        if !self.begun || self.finished {
            return false;
        }
        match tap {
            Tap::Begin => false,
            Tap::AsCalled => self.record(None, false, at),
            Tap::Reps(reps) => self.record(Some(reps), false, at),
            Tap::Short(reps) => self.record(Some(reps), true, at),
            Tap::SkipSet => match self.current() {
                None => false,
                Some((exercise, set)) => {
                    self.exercises[exercise].sets[set].over = true;
                    true
                }
            },
            Tap::SkipExercise(exercise) => {
                let left = self.left_of(exercise);
                if left {
                    self.leave_open(Some(exercise));
                    self.exercises[exercise].left_out = true;
                }
                left
            }
            Tap::Postpone(exercise) => {
                let others =
                    (0..self.exercises.len()).any(|other| other != exercise && self.left_of(other));
                if !self.left_of(exercise) || !others {
                    return false;
                }
                self.leave_open(Some(exercise));
                for lane in &mut self.lanes {
                    lane.retain(|other| *other != exercise);
                }
                self.lanes.retain(|lane| !lane.is_empty());
                self.lanes.push(vec![exercise]);
                true
            }
            Tap::TakeUp(exercise) => {
                let now = self.current().map(|(exercise, _)| exercise);
                if !self.left_of(exercise) || now == Some(exercise) {
                    return false;
                }
                self.leave_open(None);
                let lane = self.lanes.iter().position(|lane| lane.contains(&exercise)).unwrap();
                let lane = self.lanes.remove(lane);
                self.lanes.insert(0, lane);
                true
            }
            Tap::AddSet(exercise) => {
                let Some(of) = self.exercises.get_mut(exercise) else { return false };
                if of.left_out {
                    return false;
                }
                let last = of.sets.iter().map(|set| set.round).max().unwrap();
                let more: Vec<Set> = of
                    .sets
                    .iter()
                    .filter(|set| set.round == last)
                    .map(|set| Set {
                        round: last + 1,
                        parts: Vec::new(),
                        over: false,
                        ..set.clone()
                    })
                    .collect();
                of.sets.extend(more);
                true
            }
            Tap::RestBy(seconds) => {
                let Some((began, length)) = self.rest else { return false };
                let passed = at - began;
                let to = (length + i64::from(seconds)).clamp(passed.min(3600), length.max(3600));
                self.rest = Some((began, to));
                to != length
            }
            Tap::Pause => !std::mem::replace(&mut self.paused, true),
            Tap::Resume => std::mem::replace(&mut self.paused, false),
            Tap::Finish => {
                self.leave_open(None);
                self.finished = true;
                self.rest = None;
                true
            }
        }
    }
}
