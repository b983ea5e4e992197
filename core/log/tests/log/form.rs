//! The page that specifies the form shows lines that its reader takes.

use barwright_log::form::{EventLine, FactLine, Line, NoHead, Reader, Wrong};
use barwright_log::{decode_account, decode_desk};

const PAGE: &str = include_str!("../../../../docs/records-format.md");

fn examples() -> Vec<&'static str> {
    PAGE.split("```json\n").skip(1).filter_map(|rest| rest.split("\n```").next()).collect()
}

#[test]
fn every_example_of_the_page_is_a_line_of_the_form() {
    let [head, event, fact] = examples()[..] else { panic!("{:?}", examples()) };
    assert!(Reader::new(head.as_bytes()).expect("it is a head").head().is_whole());
    let event: EventLine = serde_json::from_str(event).expect("it is an event");
    decode_desk(event.version, event.body.get(), event.wall_ms, event.offset_min)
        .expect("its body is one");
    let fact: FactLine = serde_json::from_str(fact).expect("it is a fact");
    decode_account(fact.body.get()).expect("its body is one");
}

#[test]
fn a_part_of_a_log_is_read_as_it_is_written_and_its_order_is_held() {
    let [_, event, fact] = examples()[..] else { panic!("{:?}", examples()) };
    let head = |events: u64| {
        format!(
            "{{\"barwright_records\":1,\"store\":\"0f8fad5b\",\"events\":{events},\"facts\":1,\
             \"last\":9,\"since\":20738}}"
        )
    };
    let read = |text: String| Reader::new(text.as_bytes())?.collect::<Result<Vec<Line>, Wrong>>();
    let lines = read(format!("{}\n{event}\n{fact}\n", head(1))).expect("it is in order");
    let [Line::Event(first), Line::Fact(last)] = &lines[..] else { panic!("{lines:?}") };
    assert_eq!((first.seq, last.key.as_str()), (4, "owner:max:back-squat"));

    let twice = read(format!("{}\n{event}\n{event}\n{fact}\n", head(2)));
    assert!(matches!(twice, Err(Wrong::Line { line: 3, .. })), "{twice:?}");
    let more = read(format!("{}\n{event}\n", head(1)));
    assert!(matches!(more, Err(Wrong::Cut { said: 2, found: 1 })), "{more:?}");
    let version = |form: &str| read(head(0).replace("records\":1", &format!("records\":{form}")));
    let (none, later) = (version("0"), version("2"));
    assert!(matches!(none, Err(Wrong::NoHead(NoHead::NotOurs))), "{none:?}");
    assert!(matches!(later, Err(Wrong::Newer { found: 2 })), "{later:?}");
}
