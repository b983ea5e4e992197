//! What the device is to do, from how the session stood and how it stands.

use barwright_domain::session::{Reading, Rest, Run};

use crate::contract::{Effect, HapticKind};
use crate::facts::Held;
use crate::phrase::Words;
use crate::screens::name;

/// The part of a session that effects follow.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(super) struct Watched {
    session: Option<u64>,
    rest: Option<Rest>,
    awake: bool,
    parts: usize,
}

impl Watched {
    pub(super) fn of(run: Option<&Run>) -> Self {
        let Some(run) = run else { return Self::default() };
        let running = run.finished.is_none() && run.paused.is_none();
        Self {
            session: Some(run.session),
            rest: run.rest.clone().filter(|_| running),
            awake: running,
            parts: run
                .entries
                .values()
                .flat_map(|entry| &entry.sets)
                .map(|set| set.parts.len())
                .sum(),
        }
    }

    /// The same session on a device that carries nothing out for it any more.
    pub(super) fn lost(self) -> Self {
        Self { rest: None, awake: false, ..self }
    }
}

/// The effects of a tap, in order.
pub(super) fn between(before: &Watched, held: &Held, now: &Reading, words: Words) -> Vec<Effect> {
    let run = held.state.run();
    let after = Watched::of(run);
    let mut effects = Vec::new();
    if after.awake != before.awake {
        effects.push(Effect::KeepAwake { on: after.awake });
    }
    if after.session != before.session {
        // Another session's sets were neither recorded nor taken back by this tap.
    } else if after.parts > before.parts {
        effects.push(Effect::Haptic { kind: HapticKind::Recorded });
    } else if after.parts < before.parts {
        effects.push(Effect::Haptic { kind: HapticKind::Changed });
    }
    if after.rest != before.rest {
        match (&after.rest, run) {
            (Some(rest), Some(run)) => {
                let left = rest.standing(Some(&run.seen), now).left_ms;
                if left > 0 {
                    let same_boot =
                        rest.began.boot_id.is_some() && rest.began.boot_id == now.boot_id;
                    effects.push(Effect::RingAt {
                        wall_ms: now.wall_ms.saturating_add(left),
                        boot_ms: rest.deadline_boot_ms().filter(|_| same_boot),
                        text: words.floor().rest_over(rest.kind),
                        next: name::next_in_short(held, run, words),
                    });
                } else if before.rest.is_some() {
                    effects.push(Effect::CancelRing);
                }
            }
            _ => effects.push(Effect::CancelRing),
        }
    }
    effects
}
