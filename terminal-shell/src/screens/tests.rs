//! Each screen drawn from a value made by hand, in the sizes it is meant for.

use barwright_app::contract::{
    Action, BalanceScreen, BarZone, CallZone, Chart, ChartAxis, ChartPoint, ChartSeries, ChartTick,
    EffortKey, Field, Figure, FileFault, FloorScreen, Key, LiftScreen, Look, MuscleBar, Panel,
    PlanScreen, PlateDrawing, Row, RunningRest, Screen, SeriesKind, ThumbZone, TodayScreen,
};
use ratatui::Terminal;
use ratatui::backend::TestBackend;
use ratatui::style::Color;

use super::*;

fn key(id: &str, label: &str) -> Key {
    Key {
        id: id.into(),
        label: label.into(),
        says: label.into(),
        enabled: true,
        chosen: false,
        action: Action::Show { look: Look::Weeks },
    }
}

fn row(id: &str, depth: u8, text: &str) -> Row {
    Row {
        id: id.into(),
        depth,
        text: text.into(),
        detail: String::new(),
        why: Vec::new(),
        keys: Vec::new(),
        warns: false,
        done: false,
    }
}

fn plate(label: &str, colour: &str, ink: &str, height: u32, width: u32) -> PlateDrawing {
    PlateDrawing { label: label.into(), colour: colour.into(), ink: ink.into(), height, width }
}

fn words(texts: &[&str]) -> Vec<String> {
    texts.iter().map(|text| (*text).to_owned()).collect()
}

fn floor() -> FloorScreen {
    FloorScreen {
        beats: Vec::new(),
        title: "Strength 1".into(),
        part: Some("0.4.0".into()),
        bar: BarZone {
            total: "142.5 kg".into(),
            change: "take off 10 · put on 5, 2.5, 1.25 each side".into(),
            counts: "each side".into(),
            drawn: true,
            line: String::new(),
            bar: "Bar, 20 kg".into(),
            plates: vec![
                plate("25", "#B8342C", "#F3F1E7", 1000, 101),
                plate("25", "#B8342C", "#F3F1E7", 1000, 101),
                plate("5", "#EDEBE3", "#12181B", 511, 53),
                plate("2.5", "#B8342C", "#F3F1E7", 422, 43),
                plate("1.25", "", "#12181B", 355, 36),
            ],
            collar: true,
            holds: Some(key("holds", "The bar holds…")),
        },
        call: CallZone {
            exercise: "Back squat".into(),
            sentence: "Set 2 of 4: 5 reps, 1–2 in reserve.".into(),
            last: "last time 140: 5, 5, 4; 1 in reserve".into(),
            manner: words(&["3-0-1-0: 3 s down, 1 s up"]),
            set_up: Vec::new(),
            cues: words(&["Brace first", "Knees out"]),
            cautions: Vec::new(),
            why: words(&[
                "82.5 % of 172.5 kg, your max of 3 November, is 142.3 kg",
                "142.5 kg is the nearest here",
            ]),
            to_go: "9 sets, about 34 min".into(),
        },
        thumb: ThumbZone {
            figure: Some(Figure {
                text: "5".into(),
                unit: "reps".into(),
                down: key("down", "−"),
                up: key("up", "+"),
                pad: key("pad", "Type"),
                runs: false,
            }),
            prompt: "Racked, reps in reserve:".into(),
            effort: (0..=5)
                .map(|left| EffortKey {
                    key: key(
                        &format!("left-{left}"),
                        &if left == 5 { "5+".to_owned() } else { left.to_string() },
                    ),
                    half: (left < 5)
                        .then(|| key(&format!("left-{left}-half"), &format!("{left}.5"))),
                })
                .collect(),
            main: None,
            beside: vec![key("uncalled", "No effort called")],
            ended: Some(key("ended", "Set cut short…")),
            undo: Some(key("undo", "Undo")),
            redo: None,
            more: Some(key("more", "More…")),
        },
        rest: None,
        panel: None,
        notices: Vec::new(),
        aloud: "Back squat, 142.5 kg. Set 2 of 4: 5 reps, 1–2 in reserve.".into(),
    }
}

fn resting() -> FloorScreen {
    let rest = RunningRest {
        label: "Rest".into(),
        left_ms: 83_000,
        text: "1:23".into(),
        over: false,
        deadline_wall_ms: 0,
        deadline_boot_ms: None,
        shorter: key("shorter", "−20 s"),
        longer: key("longer", "+20 s"),
    };
    FloorScreen { rest: Some(rest), ..floor() }
}

fn plain_key() -> FloorScreen {
    let mut floor = floor();
    floor.bar = BarZone {
        total: "24 kg".into(),
        change: String::new(),
        counts: "each hand".into(),
        drawn: false,
        line: "Dumbbells: 2 × 24 kg".into(),
        bar: "Dumbbells".into(),
        plates: Vec::new(),
        collar: false,
        holds: None,
    };
    floor.call.exercise = "Dumbbell bench press".into();
    floor.call.sentence = "Set 1 of 3, mini-set 2 (14 of 24 done): 3 reps.".into();
    floor.call.cautions = words(&["Neither pins nor a spotter: keep two in reserve."]);
    floor.thumb.effort.clear();
    floor.thumb.prompt.clear();
    floor.thumb.main = Some(key("record", "Racked: next 3"));
    floor.thumb.beside = vec![key("short", "Short: set over")];
    floor
}

fn panel() -> FloorScreen {
    let mut floor = floor();
    floor.panel = Some(Panel {
        id: "more".into(),
        title: "Back squat".into(),
        rows: vec![
            Row {
                keys: vec![key("up", "Do it now")],
                ..row("entry-1", 1, "Romanian deadlift: 3 sets")
            },
            Row { keys: vec![key("up", "Do it now")], ..row("entry-2", 1, "Calf raise: 2 sets") },
        ],
        keys: vec![key("skip", "Skip this set"), key("pause", "Pause")],
        fields: vec![Field {
            id: "note:0".into(),
            label: "Note".into(),
            value: String::new(),
            hint: "left knee warm".into(),
            numeric: false,
        }],
        close: key("close", "Close"),
    });
    floor
}

fn today() -> TodayScreen {
    let why = words(&["77.5 % of 142.5 kg is 110.4 kg", "110 kg is the nearest here"]);
    TodayScreen {
        title: "Strength 1".into(),
        subtitle: "Boathouse winter, week 3 of 6 at the boathouse".into(),
        duration: "about 64 min".into(),
        rows: vec![
            Row { done: true, ..row("0", 1, "Back squat") },
            Row {
                why,
                keys: vec![key("lift", "Over time"), key("swap", "Something else…")],
                ..row("0.0", 2, "4 × 5 · 77.5 % · 110 kg · rest 2:30")
            },
            Row {
                detail: "Instead: one-arm dumbbell row".into(),
                warns: true,
                ..row("1", 1, "Seal row: this gym lacks the bench")
            },
            row("1.0", 2, "3 × 8–10 · 24 kg each hand · 2 in reserve · rest 2:00"),
        ],
        left_out: Vec::new(),
        cautions: words(&["A brief brace is usual on heavy loads; breathe between reps."]),
        needs: vec![Field {
            id: "body-mass".into(),
            label: "Body mass".into(),
            value: String::new(),
            hint: "82.5 kg".into(),
            numeric: true,
        }],
        keys: vec![key("begin", "Begin"), key("m45", "45 min"), key("m30", "30 min")],
        aloud: String::new(),
    }
}

fn lift() -> LiftScreen {
    let at = |x: i64, low: i64, high: i64| ChartPoint { x, low, high, label: String::new() };
    let tick = |at: i64, label: &str| ChartTick { at, label: label.into() };
    let series = |label: &str, kind, points| ChartSeries { label: label.into(), kind, points };
    LiftScreen {
        title: "Back squat".into(),
        subtitle: "172.5 kg, tested on 3 November".into(),
        chart: Some(Chart {
            title: "Loads and estimates".into(),
            across: ChartAxis {
                label: "day".into(),
                from: 0,
                to: 42,
                ticks: vec![
                    tick(0, "1 Oct"),
                    tick(14, "15 Oct"),
                    tick(28, "29 Oct"),
                    tick(42, "12 Nov"),
                ],
            },
            up: ChartAxis {
                label: "kg".into(),
                from: 100_000,
                to: 180_000,
                ticks: vec![tick(100_000, "100"), tick(140_000, "140"), tick(180_000, "180")],
            },
            series: vec![
                series(
                    "estimate with its range",
                    SeriesKind::Band,
                    vec![
                        at(2, 155_000, 170_000),
                        at(20, 160_000, 172_000),
                        at(40, 166_000, 178_000),
                    ],
                ),
                series(
                    "load",
                    SeriesKind::Line,
                    vec![
                        at(2, 120_000, 120_000),
                        at(9, 125_000, 125_000),
                        at(16, 130_000, 130_000),
                        at(23, 115_000, 115_000),
                        at(30, 135_000, 135_000),
                        at(40, 142_500, 142_500),
                    ],
                ),
                series("record", SeriesKind::Marks, vec![at(40, 142_500, 142_500)]),
            ],
            aloud: "From 120 kg on 3 October to 142.5 kg on 10 November.".into(),
        }),
        records: vec![row("r5", 1, "5 reps: 142.5 kg, 10 November")],
        sessions: vec![row("s1", 1, "10 November: 142.5 kg × 5, 5, 4")],
        fields: Vec::new(),
        keys: vec![key("older", "Older")],
        aloud: String::new(),
    }
}

fn balance() -> BalanceScreen {
    let bar =
        |muscle: &str, planned, done, sides: Option<(u32, u32)>, text: &str, behind| MuscleBar {
            muscle: muscle.into(),
            planned_halves: planned,
            done_halves: done,
            left_halves: sides.map(|(left, _)| left),
            right_halves: sides.map(|(_, right)| right),
            direct: done / 2,
            total: done,
            under_six_halves: 6.min(done),
            text: text.into(),
            detail: if done > 0 {
                format!("direct {} · total {done}", done / 2)
            } else {
                "".into()
            },
            behind,
        };
    BalanceScreen {
        title: "Balance".into(),
        subtitle: "this week".into(),
        full_halves: 32,
        bars: vec![
            bar("Quadriceps", 24, 18, None, "Quadriceps: 9 of 12 planned", false),
            bar("Glutes", 20, 26, None, "Glutes: 13 of 10 planned", false),
            bar(
                "Upper back",
                24,
                11,
                Some((6, 5)),
                "Upper back: 5.5 of 12, left 3, right 2.5",
                true,
            ),
            bar("Calves", 8, 0, None, "Calves: 0 of 4 planned: behind", true),
        ],
        sentences: vec![row("s", 1, "Upper back falls behind: 6.5 sets are missing.")],
        kinds: vec![row("k", 1, "Deload, 1 week"), row("k-q", 2, "Quadriceps: 6 of 7")],
        keys: vec![key("4w", "4 weeks")],
        aloud: String::new(),
    }
}

fn plan_faults() -> PlanScreen {
    PlanScreen {
        title: "This plan has 2 faults".into(),
        subtitle: String::new(),
        rows: Vec::new(),
        faults: vec![
            FileFault {
                line: 12,
                column: 1,
                text: "exercize = \"back squat\"".into(),
                underline: "^^^^^^^^".into(),
                problem: "there is no key exercize here".into(),
                advice: "Did you mean exercise?".into(),
                advises: false,
                label: "fault".into(),
                check: String::new(),
            },
            FileFault {
                line: 14,
                column: 8,
                text: "reps = \"5-3\"".into(),
                underline: "       ^^^^^".into(),
                problem: "the range runs backwards".into(),
                advice: "Write 3-5.".into(),
                advises: true,
                label: "look at".into(),
                check: "load-jump".into(),
            },
        ],
        keys: Vec::new(),
        aloud: String::new(),
    }
}

fn drawn(screen: &Screen, ui: &Ui, palette: Palette, width: u16, height: u16) -> TestBackend {
    let mut terminal = Terminal::new(TestBackend::new(width, height)).expect("it can't fail");
    terminal
        .draw(|frame| {
            let area = frame.area();
            draw(screen, ui, palette, area, frame.buffer_mut());
        })
        .expect("it can't fail");
    terminal.backend().clone()
}

const NONE: Palette = Palette::new(Colours::None, false);

fn plain(screen: &Screen, ui: &Ui, width: u16, height: u16) -> TestBackend {
    let backend = drawn(screen, ui, NONE, width, height);
    for cell in backend.buffer().content() {
        assert!(cell.fg == Color::Reset && cell.bg == Color::Reset, "no colour was asked for");
    }
    backend
}

/// What is not seen is not written either: a name can't command the terminal, nor turn a line round.
#[test]
fn nothing_hidden_reaches_the_terminal() {
    let mut hostile = floor();
    let bad = "\u{1b}]0;owned\u{7}a\u{202e}b\u{9b}31m\u{2066}c\u{200f}";
    for text in [
        &mut hostile.title,
        &mut hostile.bar.total,
        &mut hostile.bar.change,
        &mut hostile.call.exercise,
        &mut hostile.call.sentence,
        &mut hostile.call.last,
    ] {
        *text = bad.to_owned();
    }
    let seen = drawn(&Screen::Floor { floor: hostile }, &Ui::default(), NONE, 80, 24);
    let cells = seen.buffer().content();
    assert!(cells.iter().any(|cell| cell.symbol() == "b"));
    let hidden = |cell: &&ratatui::buffer::Cell| {
        cell.symbol().chars().any(barwright_domain::shown::is_hidden)
    };
    assert_eq!(cells.iter().find(hidden), None);
}

#[test]
fn the_floor_in_80_by_24() {
    let ui = Ui::default();
    insta::assert_snapshot!(plain(&Screen::Floor { floor: floor() }, &ui, 80, 24));
}

#[test]
fn the_floor_while_resting() {
    let ui = Ui::default();
    insta::assert_snapshot!(plain(&Screen::Floor { floor: resting() }, &ui, 80, 24));
}

#[test]
fn the_floor_in_120_by_40() {
    let ui = Ui::default();
    insta::assert_snapshot!(plain(&Screen::Floor { floor: floor() }, &ui, 120, 40));
}

#[test]
fn the_floor_while_resting_in_120_by_40() {
    let ui = Ui::default();
    insta::assert_snapshot!(plain(&Screen::Floor { floor: resting() }, &ui, 120, 40));
}

#[test]
fn the_floor_without_a_bar_and_with_one_wide_key() {
    let ui = Ui::default();
    insta::assert_snapshot!(plain(&Screen::Floor { floor: plain_key() }, &ui, 80, 24));
}

#[test]
fn the_floor_with_a_list_open() {
    let ui = Ui { selected: Some(1), ..Ui::default() };
    insta::assert_snapshot!(plain(&Screen::Floor { floor: panel() }, &ui, 80, 24));
}

#[test]
fn the_floor_in_a_small_window() {
    let ui = Ui::default();
    insta::assert_snapshot!(plain(&Screen::Floor { floor: resting() }, &ui, 60, 20));
}

#[test]
fn the_floor_with_a_refusal() {
    let notice = Notice {
        text: "That is 12 % over what the last four weeks support. Load it all the same?".into(),
        warns: true,
    };
    let ui = Ui {
        notice: Some(notice),
        half: true,
        mark: Some("demo: all of it invented"),
        ..Ui::default()
    };
    insta::assert_snapshot!(plain(&Screen::Floor { floor: floor() }, &ui, 80, 24));
}

#[test]
fn the_call_in_full() {
    let ui = Ui { over: Over::Call, ..Ui::default() };
    insta::assert_snapshot!(plain(&Screen::Floor { floor: floor() }, &ui, 80, 24));
}

#[test]
fn today_with_a_line_chosen_and_its_reason() {
    let open = ["0.0".to_owned()].into();
    let ui = Ui { selected: Some(1), open, ..Ui::default() };
    insta::assert_snapshot!(plain(&Screen::Today { today: today() }, &ui, 80, 24));
}

#[test]
fn today_while_a_field_is_written() {
    let editor = Some(Editor::new("Body mass", "82.5 kg", "83"));
    let ui = Ui { selected: Some(0), editor, ..Ui::default() };
    insta::assert_snapshot!(plain(&Screen::Today { today: today() }, &ui, 80, 24));
}

#[test]
fn today_on_a_pipe() {
    insta::assert_snapshot!(text(&Screen::Today { today: today() }, Own::default()));
}

#[test]
fn a_lift_is_a_drawing_first() {
    let ui = Ui::default();
    insta::assert_snapshot!(plain(&Screen::Lift { lift: lift() }, &ui, 80, 30));
}

#[test]
fn balance_is_a_drawing_first() {
    let ui = Ui::default();
    insta::assert_snapshot!(plain(&Screen::Balance { balance: balance() }, &ui, 80, 24));
}

#[test]
fn faults_of_a_plan_in_their_places() {
    let ui = Ui::default();
    insta::assert_snapshot!(plain(&Screen::Plan { plan: plan_faults() }, &ui, 80, 24));
}

#[test]
fn every_key_that_works_is_shown() {
    for floor in [floor(), resting(), plain_key(), panel()] {
        for selected in [None, Some(0)] {
            let screen = Screen::Floor { floor: floor.clone() };
            let ui = Ui { selected, ..Ui::default() };
            for (width, height) in [(80, 24), (120, 40)] {
                let frame = plain(&screen, &ui, width, height).to_string();
                for bound in bound(&screen, &ui) {
                    let shown = frame.contains(&bound.key.label)
                        || frame.contains(&format!(" {} ", bound.press.cap()));
                    assert!(shown, "{:?} {} in {width} × {height}", bound.press, bound.key.id);
                }
            }
        }
    }
}

#[test]
fn no_size_stops_it() {
    let screens = [
        Screen::Floor { floor: floor() },
        Screen::Floor { floor: resting() },
        Screen::Floor { floor: panel() },
        Screen::Today { today: today() },
        Screen::Lift { lift: lift() },
        Screen::Balance { balance: balance() },
        Screen::Plan { plan: plan_faults() },
    ];
    let sizes = [0, 1, 2, 3, 7, 12, 21, 22, 23, 35, 36, 72, 109, 110, 200];
    for screen in &screens {
        for width in sizes {
            for height in sizes.into_iter().filter(|height| *height < 60) {
                let ui = Ui { selected: Some(0), ..Ui::default() };
                drawn(screen, &ui, Palette::new(Colours::All, true), width, height);
            }
        }
    }
}

#[test]
fn with_colours_the_whole_ground_is_ours() {
    for light in [false, true] {
        let palette = Palette::new(Colours::All, light);
        let screen = Screen::Floor { floor: resting() };
        let backend = drawn(&screen, &Ui::default(), palette, 80, 24);
        for cell in backend.buffer().content() {
            assert!(matches!((cell.fg, cell.bg), (Color::Rgb(..), Color::Rgb(..))), "{cell:?}");
        }
    }
}
