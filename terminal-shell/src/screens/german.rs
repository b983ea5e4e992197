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
