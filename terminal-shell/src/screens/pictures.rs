//! The pictures of the README: real screens of the demo, drawn by the real code. They are held to
//! what the screens show now; `BARWRIGHT_WRITE_PICTURES=1 cargo test -p barwright` draws them anew.

use std::fmt::Write;
use std::path::Path;

use barwright_app::contract::{EffortKey, Reading};
use barwright_app::demo;
use barwright_player::Player;
use barwright_player::clock::{pass, wall};
use barwright_player::screens::{at_floor, at_lift, at_today};
use ratatui::buffer::{Buffer, Cell};
use ratatui::layout::Rect;
use ratatui::style::{Color, Modifier};

use super::{Colours, Palette, Screen, Ui, draw};

/// The size of a cell.
const WIDE: u16 = 10;
const HIGH: u16 = 20;

fn hex(colour: Color) -> String {
    match colour {
        Color::Rgb(red, green, blue) => format!("#{red:02X}{green:02X}{blue:02X}"),
        other => panic!("a picture has its own colours: {other}"),
    }
}

/// A frame as an SVG. Blocks are drawn as what they are, so that no font leaves gaps in them.
fn svg(buf: &Buffer) -> String {
    let (width, height) = (buf.area.width * WIDE, buf.area.height * HIGH);
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" \
         font-family=\"ui-monospace, 'DejaVu Sans Mono', Menlo, Consolas, monospace\" \
         font-size=\"16\">\n"
    );
    let rect = |out: &mut String, x: u16, y: u16, width: u16, height: u16, fill: &str| {
        let _ = writeln!(
            out,
            "<rect x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\" fill=\"{fill}\" \
             shape-rendering=\"crispEdges\"/>"
        );
    };
    let ground = hex(buf[(0, 0)].bg);
    rect(&mut out, 0, 0, width, height, &ground);
    for y in 0..buf.area.height {
        let row: Vec<&Cell> = (0..buf.area.width).map(|x| &buf[(x, y)]).collect();
        let mut from = 0;
        while from < row.len() {
            let like = |one: &&Cell| {
                let kind = |cell: &Cell| (cell.fg, cell.bg, cell.modifier, block(cell.symbol()));
                kind(one) == kind(row[from])
            };
            let count = row[from..].iter().take_while(|one| like(one)).count();
            let run = &row[from..from + count];
            let at = |cells: usize| u16::try_from(cells).expect("a row is short") * WIDE;
            let (x, wide, top) = (at(from), at(count), y * HIGH);
            let (ink, back) = (hex(run[0].fg), hex(run[0].bg));
            if back != ground {
                rect(&mut out, x, top, wide, HIGH, &back);
            }
            match block(run[0].symbol()) {
                // Whole columns run on into each other; others stand each in its cell.
                Some((0, above, 8, high)) => {
                    rect(&mut out, x, top + HIGH * above / 8, wide, (HIGH * high / 8).max(1), &ink);
                }
                Some((left, above, width, high)) => {
                    for cell in 0..count {
                        let (x, y) = (x + at(cell) + WIDE * left / 8, top + HIGH * above / 8);
                        rect(&mut out, x, y, WIDE * width / 8, HIGH * high / 8, &ink);
                    }
                }
                None => {
                    let bold = run[0].modifier.contains(Modifier::BOLD);
                    let weight = if bold { " font-weight=\"bold\"" } else { "" };
                    // Word by word, so that each stands in its column whatever the font.
                    let mut begins = from;
                    for word in run.split(|cell| cell.symbol() == " ") {
                        let (x, wide) = (at(begins), at(word.len()));
                        begins += word.len() + 1;
                        if word.is_empty() {
                            continue;
                        }
                        let text: String = word.iter().map(|cell| cell.symbol()).collect();
                        let text = text.replace('&', "&amp;").replace('<', "&lt;");
                        let _ = writeln!(
                            out,
                            "<text x=\"{x}\" y=\"{}\" fill=\"{ink}\"{weight} \
                             textLength=\"{wide}\">{text}</text>",
                            top + 15
                        );
                    }
                }
            }
            from += count;
        }
    }
    out.push_str("</svg>\n");
    out
}

/// Left, top, width and height of a block, in eighths of its cell.
fn block(symbol: &str) -> Option<(u16, u16, u16, u16)> {
    Some(match symbol {
        "█" => (0, 0, 8, 8),
        "▀" => (0, 0, 8, 4),
        "▄" => (0, 4, 8, 4),
        "▌" => (0, 0, 4, 8),
        "▐" => (4, 0, 4, 8),
        "━" => (0, 4, 8, 1),
        _ => return None,
    })
}

/// Records the current part: by the wide key, else with two left.
fn record(evening: &mut Player) {
    let thumb = evening.see_floor(None).thumb;
    let effort = |keys: Vec<EffortKey>| keys.into_iter().nth(2).map(|effort| effort.key);
    let key = thumb.main.or_else(|| effort(thumb.effort)).expect("one records");
    evening.press(&key);
}

/// Today, a lift, and a rest before a work set of the back squat, in an evening of the demo. What the
/// lift and its first work set are called in the locale.
pub(super) fn evening(locale: &str, lift: &str, first: &str) -> [(&'static str, Screen); 3] {
    // A Tuesday at noon.
    let boot = (Some(500_000), Some("one".into()));
    let now = Reading { boot_ms: boot.0, boot_id: boot.1, ..wall(1_795_510_800_000, 60) };
    let mut evening = Player::on(demo::play(locale, &now).expect("the demo plays"), now);
    let (today, over_time) = (evening.see(at_today()), evening.see(at_lift("back-squat")));
    evening.begin();
    while evening.see_floor(None).call.exercise != lift {
        record(&mut evening);
    }
    // The warm-up, and the first of the work sets.
    while !evening.see_floor(None).call.sentence.starts_with(first) {
        record(&mut evening);
    }
    pass(&mut evening.now, 36_400);
    [("today", today), ("lift", over_time), ("rest", evening.see(at_floor(None)))]
}

#[test]
fn the_pictures_are_what_the_screens_show() {
    let screens = evening("en-GB", "Back squat", "Set 1");
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../docs/pictures");
    for (name, screen) in &screens {
        let area = Rect::new(0, 0, 80, 24);
        let mut buf = Buffer::empty(area);
        draw(screen, &Ui::default(), Palette::new(Colours::All, false), area, &mut buf);
        let drawn = svg(&buf);
        let path = folder.join(name).with_extension("svg");
        if std::env::var_os("BARWRIGHT_WRITE_PICTURES").is_some() {
            std::fs::create_dir_all(&folder).expect("it can be made");
            std::fs::write(&path, &drawn).expect("it can be written");
        }
        let kept = std::fs::read_to_string(&path).expect("it is in the checkout");
        assert!(
            kept == drawn,
            "docs/pictures/{name}.svg is not what the screen shows now: see the top of pictures.rs"
        );
    }
}
