//! The page that specifies the form shows lines that its reader takes.

use barwright_log::form::{BadLine, EventLine, FactLine, Line, NoHead, Reader, Wrong};
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

#[test]
fn a_text_is_held_to_its_bound_however_it_is_written() {
    let read = |body: &str| {
        let head =
            "{\"barwright_records\":1,\"store\":\"0f8fad5b\",\"events\":1,\"last\":1,\"since\":1}";
        let event = "{\"seq\":1,\"tap\":1,\"kind\":\"desk\",\"version\":1,\"wall_ms\":1795424400000,\
                     \"offset_min\":60,\"body\":";
        let text = format!("{head}\n{event}{body}}}\n");
        match Reader::new(text.as_bytes()).and_then(Iterator::collect::<Result<Vec<Line>, Wrong>>) {
            Ok(lines) => Ok(lines.len()),
            Err(Wrong::Line { line: 2, what }) => Err(what),
            Err(wrong) => panic!("{wrong}"),
        }
    };
    let named =
        |name: &str| read(&format!("{{\"event\":{{\"gym_gone\":{{\"name\":\"{name}\"}}}}}}"));
    let plan = |bytes: usize| {
        read(&format!(
            "{{\"event\":{{\"plan_adopted\":{{\"text\":\"{}\",\"name\":\"P\",\"day\":1}}}}}}",
            "p".repeat(bytes)
        ))
    };
    assert_eq!(named(&"a".repeat(16_384)), Ok(1));
    assert_eq!(named(&"a".repeat(16_385)), Err(BadLine::TextTooLong(16_385)));
    // Six bytes for one letter: longer than the bound only as it is written.
    assert_eq!(named(&"\\u0041".repeat(16_384)), Ok(1));
    assert_eq!(named(&"\\u0041".repeat(16_385)), Err(BadLine::TextTooLong(16_385)));
    // A quote within a text is not its end.
    assert_eq!(named(&"\\\"".repeat(16_385)), Err(BadLine::TextTooLong(16_385)));
    assert_eq!(named(&"\\\\\\\"".repeat(8_192)), Ok(1));
    // What looks deep within a text is not.
    assert_eq!(named(&"[{".repeat(100)), Ok(1));
    assert_eq!(read(&format!("{}1{}", "[".repeat(65), "]".repeat(65))), Err(BadLine::TooDeep));
    // A whole file's text is held to a bound of its own.
    assert_eq!(plan(1 << 20), Ok(1));
    assert_eq!(plan((1 << 20) + 1), Err(BadLine::TextTooLong((1 << 20) + 1)));
}
