//! Bodies of the log, a line each: what is read is written and read again as the same, and folding it
//! in any order ends.
#![no_main]

use barwright_domain::desk::Desk;
use barwright_domain::session::{Event, Stamped, State};
use barwright_log::{
    VERSION, decode_account, decode_desk, decode_draft, decode_session, decode_standing_desk,
    encode_account, encode_desk, encode_draft, encode_session, encode_standing_desk,
};
use libfuzzer_sys::fuzz_target;

const WALL_MS: i64 = 1_795_500_000_000;

fuzz_target!(|bytes: &[u8]| {
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    let (mut desk, mut log) = (Desk::default(), Vec::new());
    for (seq, line) in (1_u64..).zip(text.lines().take(64)) {
        if let Ok((at, event)) = decode_session(VERSION, line, WALL_MS, 60) {
            let again = decode_session(VERSION, &encode_session(&at, &event), WALL_MS, 60);
            assert_eq!(again.ok().as_ref(), Some(&(at.clone(), event.clone())));
            log.push(Stamped { seq, tap: seq, at, event });
        }
        if let Ok((at, event)) = decode_desk(VERSION, line, WALL_MS, 60) {
            let again = decode_desk(VERSION, &encode_desk(&at, &event), WALL_MS, 60);
            assert_eq!(again.ok().as_ref(), Some(&(at, event.clone())));
            desk.apply(seq, &event);
        }
        if let Ok(desk) = decode_standing_desk(line) {
            assert_eq!(decode_standing_desk(&encode_standing_desk(&desk)).ok(), Some(desk));
        }
        if let Ok(account) = decode_account(line) {
            let _ = account.state();
            assert_eq!(decode_account(&encode_account(&account)).ok(), Some(account));
        }
        if let Ok(draft) = decode_draft(line) {
            assert_eq!(decode_draft(&encode_draft(&draft)).ok(), Some(draft));
        }
    }
    // One session, folded tap by tap and read back whole, is the same.
    let begins = |stamped: &Stamped| matches!(stamped.event, Event::Began { .. });
    let one = log.first().is_some_and(begins) && !log.iter().skip(1).any(begins);
    let again = State::replay(log.clone());
    let mut state = State::default();
    for stamped in log {
        state.apply(stamped);
    }
    if one {
        assert_eq!(state.run(), again.run());
    }
});
