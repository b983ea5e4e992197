//! An owner's account: a state, and the last words said to it.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::change::{Change, Outcome, Why, Word};
use super::row::{Owner, TrackId};
use super::state::{Care, Max, State, Track};

/// Words of an owner that can still be taken back or replaced; those before are its base.
const MOST_WORDS: usize = 6;

/// What stands with one owner.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Account {
    /// The state before the words.
    base: State,
    /// The last words, in the log's order.
    words: Vec<Word>,
}

impl Account {
    fn new(owner: &Owner) -> Self {
        let base = match owner {
            Owner::Max(_) => State::Max(Max::default()),
            Owner::Track(_) | Owner::Loose(_) => State::Track(Track::default()),
            Owner::Care(_) => State::Care(Care::default()),
        };
        Self { base, words: Vec::new() }
    }

    /// The state: the base with the words that stand folded in.
    pub fn state(&self) -> State {
        let mut state = self.base.clone();
        for word in &self.words {
            state.take(word);
        }
        state
    }

    /// The state as it was before a session's word.
    fn before(&self, session: u64) -> State {
        let mut state = self.base.clone();
        for word in self.words.iter().take_while(|word| word.session != Some(session)) {
            state.take(word);
        }
        state
    }

    /// An account as it was kept: the state before the words, and the words, the newest last.
    pub fn restored(base: State, words: Vec<Word>) -> Self {
        Self { base, words }
    }

    /// The state before the words.
    pub fn base(&self) -> &State {
        &self.base
    }

    /// The last words, the newest last.
    pub fn words(&self) -> &[Word] {
        &self.words
    }

    /// A word of a session takes the place of the one that session said before.
    fn say(&mut self, word: Word) {
        let before = self
            .words
            .iter_mut()
            .find(|other| other.session.is_some() && other.session == word.session);
        match before {
            Some(before) => *before = word,
            None => self.words.push(word),
        }
        while self.words.len() > MOST_WORDS {
            let oldest = self.words.remove(0);
            self.base.take(&oldest);
        }
    }

    /// Where a person's word stands that says this, the last of them; none where it went into the base.
    fn word_of(&self, day: i32, changes: &[Change]) -> Option<usize> {
        self.words.iter().rposition(|word| {
            word.session.is_none()
                && word.day == day
                && word.outcome.why == Why::Entered
                && word.outcome.changes == changes
        })
    }

    fn unsay(&mut self, session: u64) {
        self.words.retain(|word| word.session != Some(session));
    }
}

/// Every owner.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Owners {
    accounts: BTreeMap<Owner, Arc<Account>>,
}

impl Owners {
    /// Each owner with its account.
    pub fn iter(&self) -> impl Iterator<Item = (&Owner, &Arc<Account>)> {
        self.accounts.iter()
    }

    /// Puts an account back as it was kept.
    pub fn put(&mut self, owner: Owner, account: Account) {
        self.accounts.insert(owner, Arc::new(account));
    }

    /// An owner's account.
    pub fn account(&self, owner: &Owner) -> Option<&Account> {
        self.accounts.get(owner).map(AsRef::as_ref)
    }

    /// The reference max of an exercise, by its slug.
    pub fn max(&self, exercise: &str) -> Max {
        match self.state(&Owner::Max(exercise.to_owned())) {
            Some(State::Max(max)) => max,
            _ => Max::default(),
        }
    }

    /// What a track carries.
    pub fn track(&self, owner: &Owner) -> Track {
        match self.state(owner) {
            Some(State::Track(track)) => track,
            _ => Track::default(),
        }
    }

    /// What is careful of an exercise, by its slug.
    pub fn care(&self, exercise: &str) -> Care {
        match self.state(&Owner::Care(exercise.to_owned())) {
            Some(State::Care(care)) => care,
            _ => Care::default(),
        }
    }

    fn state(&self, owner: &Owner) -> Option<State> {
        self.account(owner).map(Account::state)
    }

    /// What a session decided, in place of what it decided before; `day` is its local date.
    pub fn decided(&mut self, session: u64, day: i32, outcomes: &[Outcome]) {
        let gone: Vec<Owner> = self
            .accounts
            .iter()
            .filter(|(owner, account)| {
                account.words.iter().any(|word| word.session == Some(session))
                    && outcomes.iter().all(|outcome| outcome.owner != **owner)
            })
            .map(|(owner, _)| owner.clone())
            .collect();
        for owner in gone {
            self.with(&owner, |account| account.unsay(session));
        }
        for outcome in outcomes {
            let word = Word { session: Some(session), day, outcome: outcome.clone() };
            self.with(&outcome.owner, |account| account.say(word));
        }
    }

    /// What a session decided, it decided on this local date.
    pub fn dated(&mut self, session: u64, day: i32) {
        let of = |word: &Word| word.session == Some(session) && word.day != day;
        let own = self.accounts.values_mut().filter(|account| account.words.iter().any(of));
        for account in own {
            for word in Arc::make_mut(account).words.iter_mut().filter(|word| of(word)) {
                word.day = day;
            }
        }
    }

    /// What a person or a plan says on a local date.
    pub fn said(&mut self, owner: &Owner, day: i32, why: Why, changes: Vec<Change>) {
        let outcome = Outcome {
            owner: owner.clone(),
            changes,
            why,
            sets: Vec::new(),
            silent: false,
            held: false,
            proposal: None,
        };
        self.with(owner, |account| account.say(Word { session: None, day, outcome }));
    }

    /// A person takes back what they said on a local date.
    pub fn unsaid(&mut self, owner: &Owner, day: i32, changes: &[Change]) {
        self.with(owner, |account| {
            if let Some(at) = account.word_of(day, changes) {
                account.words.remove(at);
            }
        });
    }

    /// Whether what a person said can still be told apart from what came after it.
    pub fn heard(&self, owner: &Owner, day: i32, changes: &[Change]) -> bool {
        self.account(owner).is_some_and(|account| account.word_of(day, changes).is_some())
    }

    /// What a session decided, as it stands, by owner.
    pub fn decided_in(&self, session: u64) -> Vec<&Outcome> {
        let words = self.accounts.values().flat_map(|account| &account.words);
        words.filter(|word| word.session == Some(session)).map(|word| &word.outcome).collect()
    }

    /// The owners as they stood before a session decided anything, for deciding it again.
    #[must_use]
    pub fn before(&self, session: u64) -> Self {
        let accounts = self.accounts.iter().map(|(owner, account)| {
            if account.words.iter().any(|word| word.session == Some(session)) {
                let base = account.before(session);
                (owner.clone(), Arc::new(Account { base, words: Vec::new() }))
            } else {
                (owner.clone(), Arc::clone(account))
            }
        });
        Self { accounts: accounts.collect() }
    }

    /// Forgets tracks that no plan names any more.
    pub fn keep_tracks(&mut self, named: impl Fn(TrackId) -> bool) {
        self.accounts.retain(|owner, _| match owner {
            Owner::Track(id) => named(*id),
            Owner::Max(_) | Owner::Loose(_) | Owner::Care(_) => true,
        });
    }

    fn with(&mut self, owner: &Owner, change: impl FnOnce(&mut Account)) {
        let account =
            self.accounts.entry(owner.clone()).or_insert_with(|| Arc::new(Account::new(owner)));
        change(Arc::make_mut(account));
    }
}
