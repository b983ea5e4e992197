//! German screens of the demo as they stand on a terminal, and in a narrow window: longer words than
//! English, in the same room. The demo's own texts (plan, cues, notes) are in English.

use barwright_app::Locale;
use ratatui::Terminal;
use ratatui::backend::TestBackend;

use super::pictures::evening;
use super::{Colours, Over, Palette, Screen, Ui, draw};
use crate::words;

fn screen(name: &str) -> Screen {
    let screens = evening("de-DE", "Kniebeuge", "Satz 1");
    let found = screens.into_iter().find(|(one, _)| *one == name);
    found.expect("it is one of them").1
}

fn drawn(screen: &Screen, over: Over, width: u16, height: u16) -> TestBackend {
    let ui = Ui { own: words::of(&Locale::read("de-DE")), over, ..Ui::default() };
    let palette = Palette::new(Colours::None, false);
    let mut terminal = Terminal::new(TestBackend::new(width, height)).expect("it can't fail");
    terminal
        .draw(|frame| {
            let area = frame.area();
            draw(screen, &ui, palette, area, frame.buffer_mut());
        })
        .expect("it can't fail");
    terminal.backend().clone()
}

#[test]
fn a_rest_in_80_by_24() {
    insta::assert_snapshot!(drawn(&screen("rest"), Over::Nothing, 80, 24));
}

#[test]
fn a_rest_in_a_narrow_window() {
    insta::assert_snapshot!(drawn(&screen("rest"), Over::Nothing, 46, 30));
}

#[test]
fn today_in_80_by_24() {
    insta::assert_snapshot!(drawn(&screen("today"), Over::Nothing, 80, 24));
}

#[test]
fn today_in_a_narrow_window() {
    insta::assert_snapshot!(drawn(&screen("today"), Over::Nothing, 46, 30));
}

#[test]
fn a_lift_in_80_by_24() {
    insta::assert_snapshot!(drawn(&screen("lift"), Over::Nothing, 80, 24));
}

#[test]
fn a_lift_in_a_narrow_window() {
    insta::assert_snapshot!(drawn(&screen("lift"), Over::Nothing, 46, 30));
}

#[test]
fn the_keys_of_the_floor() {
    insta::assert_snapshot!(drawn(&screen("rest"), Over::Help, 80, 34));
}

/// A heavy load stands before the bar's name under a rest: a word that has no room is left out, not cut.
#[test]
fn beside_a_heavy_load_no_word_is_cut() {
    let mut rest = screen("rest");
    let Screen::Floor { floor } = &mut rest else { panic!("{rest:?}") };
    floor.bar.total = "142,5 kg".to_owned();
    floor.bar.bar = "Langhantelstange, 20 kg".to_owned();
    let (bar, counts) = (floor.bar.bar.clone(), floor.bar.counts.clone());
    let shown = drawn(&rest, Over::Nothing, 80, 24).to_string();
    assert!(shown.contains(&format!("142,5 kg  {bar}")), "{shown}");
    let cut = counts.split(' ').next().expect("it is counted each side");
    assert!(!shown.contains(&format!("{bar} · {cut}")), "{shown}");
}
