//! From an event to its text and back nothing is lost, whatever the event.

use barwright_domain::desk::{Desk, DeskEvent, Draft};
use barwright_domain::equipment::Rig;
use barwright_domain::owners::{Account, Change, Why};
use barwright_domain::session::{Because, Entry, Event, Reading};
use barwright_log::v1;
use barwright_log::{
    Mirror, VERSION, decode_account, decode_desk, decode_draft, decode_session,
    decode_standing_desk, encode_account, encode_desk, encode_draft, encode_session,
    encode_standing_desk,
};
use proptest::prelude::*;
use serde::Serialize;
use serde::de::DeserializeOwned;

use crate::any::{Any, Every, Tape};

fn tape() -> impl Strategy<Value = Vec<u8>> {
    prop_oneof![
        3 => prop::collection::vec(any::<u8>(), 0..64),
        1 => prop::collection::vec(any::<u8>(), 0..1024),
    ]
}

/// There and back through the text of a type of its own.
fn again<T>(it: &T::Of) -> T::Of
where
    T: Mirror + Serialize + DeserializeOwned,
{
    let text = serde_json::to_string(&T::of(it)).expect("it is plain data");
    let read: T = serde_json::from_str(&text).expect("it is what was written");
    read.back().expect("it was one of the domain's")
}

fn same<T>(bytes: &[u8])
where
    T: Mirror + Serialize + DeserializeOwned,
    T::Of: Any + PartialEq + std::fmt::Debug,
{
    let it = T::Of::any(&mut Tape::new(bytes));
    assert_eq!(again::<T>(&it), it);
}

/// Every variant, each with the same bytes behind it.
fn every<T>(bytes: &[u8])
where
    T: Mirror + Serialize + DeserializeOwned,
    T::Of: Every + PartialEq + std::fmt::Debug,
{
    for make in T::Of::MAKES {
        let it = make(&mut Tape::new(bytes));
        assert_eq!(again::<T>(&it), it);
    }
}

proptest! {
    #[test]
    fn leaves_come_back(bytes in tape()) {
        same::<v1::load::Load>(&bytes);
        same::<v1::sheet::Call>(&bytes);
        same::<v1::sheet::Entry>(&bytes);
        same::<v1::terms::Terms>(&bytes);
        same::<v1::outcome::Outcome>(&bytes);
        same::<v1::rest::Rest>(&bytes);
        same::<v1::equipment::Equipment>(&bytes);
    }

    #[test]
    fn every_variant_of_a_leaf_comes_back(bytes in tape()) {
        every::<v1::rig::Rig>(&bytes);
        every::<v1::change::Change>(&bytes);
        every::<v1::why::Why>(&bytes);
        every::<v1::because::Because>(&bytes);
        every::<v1::because::SingleRule>(&bytes);
        every::<v1::terms::Cutting>(&bytes);
        every::<v1::terms::Owner>(&bytes);
        every::<v1::flow::Flow>(&bytes);
        every::<v1::structure::Structure>(&bytes);
        every::<v1::how_many::HowMany>(&bytes);
        every::<v1::load_call::LoadCall>(&bytes);
        every::<v1::arranged::Arrangement>(&bytes);
        every::<v1::account::State>(&bytes);
    }

    #[test]
    fn a_session_event_comes_back(at in tape(), bytes in tape()) {
        let at = Reading::any(&mut Tape::new(&at));
        for make in Event::MAKES {
            let event = make(&mut Tape::new(&bytes));
            let body = encode_session(&at, &event);
            let read = decode_session(VERSION, &body, at.wall_ms, at.offset_minutes).unwrap();
            prop_assert_eq!(read, (at.clone(), event));
        }
    }

    #[test]
    fn an_event_between_sessions_comes_back(at in tape(), bytes in tape()) {
        let at = Reading::any(&mut Tape::new(&at));
        for make in DeskEvent::MAKES {
            let event = make(&mut Tape::new(&bytes));
            let body = encode_desk(&at, &event);
            let read = decode_desk(VERSION, &body, at.wall_ms, at.offset_minutes).unwrap();
            prop_assert_eq!(read, (at.clone(), event));
        }
    }

    #[test]
    fn standing_facts_come_back(bytes in tape()) {
        let desk = Desk::any(&mut Tape::new(&bytes));
        prop_assert_eq!(&decode_standing_desk(&encode_standing_desk(&desk)).unwrap(), &desk);
        let account = Account::any(&mut Tape::new(&bytes));
        prop_assert_eq!(&decode_account(&encode_account(&account)).unwrap(), &account);
        let draft = Draft::any(&mut Tape::new(&bytes));
        prop_assert_eq!(&decode_draft(&encode_draft(&draft)).unwrap(), &draft);
    }
}

/// A generator that gave the same again and again would prove nothing.
#[test]
fn tapes_give_many_shapes() {
    let bytes: Vec<u8> =
        (0..4096_u32).map(|nth| (nth.wrapping_mul(2_654_435_761) >> 24) as u8).collect();
    let many = |names: Vec<&str>, all: usize| {
        let seen: std::collections::BTreeSet<&str> = names.into_iter().collect();
        assert!(seen.len() * 4 > all * 3, "{seen:?}");
    };
    let starts = || (0..bytes.len() - 512).step_by(7);
    let tape = |start: usize| Tape::new(&bytes[start..]);
    many(starts().map(|at| Change::any(&mut tape(at)).name()).collect(), Change::MAKES.len());
    many(starts().map(|at| Why::any(&mut tape(at)).name()).collect(), Why::MAKES.len());
    many(starts().map(|at| Because::any(&mut tape(at)).name()).collect(), Because::MAKES.len());
    many(starts().map(|at| Rig::any(&mut tape(at)).name()).collect(), Rig::MAKES.len());
    let entries: Vec<Entry> = starts().map(|at| Any::any(&mut tape(at))).collect();
    assert!(entries.iter().any(|entry| entry.terms.iter().any(|terms| !terms.rules.is_empty())));
    assert!(entries.iter().any(|entry| entry.calls.iter().any(|call| !call.part_loads.is_empty())));
}
