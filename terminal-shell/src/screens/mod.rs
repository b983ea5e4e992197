//! One module for each screen: from the contract's value to a frame, and nothing else.

mod balance;
mod bar;
mod care;
mod chart;
mod equipment;
mod floor;
mod form;
mod help;
mod keys_line;
mod large;
mod lift;
mod not_shown;
mod pen;
mod plain;
mod plan;
mod sheet;
mod tally;
mod today;
mod weeks;

use std::collections::BTreeSet;

use barwright_app::contract::Screen;
use ratatui::buffer::Buffer;
use ratatui::layout::Rect;
use ratatui::text::{Line, Span};

use crate::editor::Editor;
use crate::keys::{self, Bound, Chosen};
use crate::palette::{Colours, Palette, WARNS};
use crate::words::Own;
use sheet::Sheet;

pub(crate) use help::place;
pub(crate) use plain::text;
pub(crate) use sheet::Selectable;

/// What the shell keeps beside the screen: nothing of it is ever recorded.
#[derive(Debug, Default)]
pub(crate) struct Ui {
    /// Which of what can be selected is.
    pub(crate) selected: Option<usize>,
    /// The line at the top of what scrolls.
    pub(crate) top: usize,
    /// Rows whose "why" is open.
    pub(crate) open: BTreeSet<String>,
    /// A point was pressed: the next figure is a half.
    pub(crate) half: bool,
    /// What lies over the screen.
    pub(crate) over: Over,
    /// What is being written.
    pub(crate) editor: Option<Editor>,
    /// What has to be said now.
    pub(crate) notice: Option<Notice>,
    /// The notice asks, and `y` means it all the same.
    pub(crate) asks: bool,
    /// What these records are, where they are not the lifter's own.
    pub(crate) mark: Option<&'static str>,
    /// The terminal's own words.
    pub(crate) own: Own,
}

/// What lies over the screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) enum Over {
    /// Nothing.
    #[default]
    Nothing,
    /// The keys.
    Help,
    /// The call in full, and why this load.
    Call,
}

/// A line that has to be said now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Notice {
    /// What.
    pub(crate) text: String,
    /// Something did not happen.
    pub(crate) warns: bool,
}

impl Ui {
    /// What has to be said now, and how to answer it.
    fn notice_lines(&self, palette: Palette, width: u16) -> Vec<Line<'static>> {
        let mut lines =
            self.notice.as_ref().map(|notice| notice.lines(palette, width)).unwrap_or_default();
        if self.asks {
            lines.push(Line::from(keys_line::named("y", self.own.yes, palette)));
        }
        lines
    }
}

impl Notice {
    fn lines(&self, palette: Palette, width: u16) -> Vec<Line<'static>> {
        let (lead, style) = if self.warns {
            (format!("{WARNS} "), palette.warning())
        } else {
            (String::new(), palette.now())
        };
        sheet::wrapped(&self.text, width, &lead, style)
    }
}

/// A screen as a sheet; the floor is none, but what lies over it is.
fn as_sheet(
    screen: &Screen,
    over: Over,
    width: u16,
    palette: Palette,
    own: Own,
) -> Option<Sheet<'_>> {
    match (over, screen) {
        (Over::Help, _) => Some(help::sheet(screen, own)),
        (Over::Call, Screen::Floor { floor }) => Some(floor::call_sheet(floor, own)),
        (_, Screen::Floor { .. }) => None,
        (_, Screen::Today { today }) => Some(today::sheet(today, own)),
        (_, Screen::Tally { tally }) => Some(tally::sheet(tally, own)),
        (_, Screen::Weeks { weeks }) => Some(weeks::sheet(weeks)),
        (_, Screen::Lift { lift }) => Some(lift::sheet(lift, width, palette, own)),
        (_, Screen::Balance { balance }) => Some(balance::sheet(balance, width, palette, own)),
        (_, Screen::Equipment { equipment }) => Some(equipment::sheet(equipment, own)),
        (_, Screen::Care { care }) => Some(care::sheet(care)),
        (_, Screen::Plan { plan }) => Some(plan::sheet(plan, own)),
        (_, Screen::Form { form }) => Some(form::sheet(form, width, palette, own)),
        (_, Screen::NotShown { not_shown }) => Some(not_shown::sheet(not_shown)),
    }
}

/// What can be selected on a screen, in order.
pub(crate) fn selectable(screen: &Screen, over: Over) -> Vec<Selectable<'_>> {
    // What can be selected does not depend on how wide, in what colours or words it is drawn.
    let palette = Palette::new(Colours::None, false);
    match (as_sheet(screen, over, 80, palette, Own::default()), screen) {
        (Some(sheet), _) => sheet::selectable(&sheet.items),
        (None, Screen::Floor { floor }) => floor::selectable(floor),
        (None, _) => Vec::new(),
    }
}

/// The keys of a screen with their presses.
pub(crate) fn bound<'a>(screen: &'a Screen, ui: &Ui) -> Vec<Bound<'a>> {
    let chosen = match ui.selected.and_then(|at| selectable(screen, ui.over).get(at).copied()) {
        Some(Selectable::Row(row)) => Chosen::Row(&row.keys),
        Some(Selectable::Form(row)) => Chosen::Form(row),
        Some(Selectable::Field(_)) => Chosen::Field,
        Some(Selectable::Key(key)) => Chosen::Row(std::slice::from_ref(key)),
        None => Chosen::Nothing,
    };
    let palette = Palette::new(Colours::None, false);
    match (as_sheet(screen, ui.over, 80, palette, ui.own), screen) {
        (Some(sheet), _) => keys::sheet(&sheet.keys, chosen),
        (None, Screen::Floor { floor }) => floor::bound(floor, chosen),
        (None, _) => Vec::new(),
    }
}

/// The letters that lead to the screens, in their order, and which is shown.
pub(crate) fn letters(screen: &Screen) -> Vec<(char, bool)> {
    help::places(screen).to_vec()
}

/// A whole frame. Answers the line that stands at the top of what scrolls, for the next time.
pub(crate) fn draw(
    screen: &Screen,
    ui: &Ui,
    palette: Palette,
    area: Rect,
    buf: &mut Buffer,
) -> usize {
    buf.set_style(area, palette.plain());
    let bound = bound(screen, ui);
    let (main, nav) = sheet::split(area, area.height.saturating_sub(1));
    let top = match (as_sheet(screen, ui.over, area.width, palette, ui.own), screen) {
        (Some(sheet), _) => sheet::draw(&sheet, &bound, ui, palette, main, buf),
        (None, Screen::Floor { floor }) => floor::draw(floor, &bound, ui, palette, main, buf),
        (None, _) => 0,
    };
    if let Some(mark) = ui.mark {
        let line = Line::from(Span::styled(format!(" {mark} "), palette.cap()));
        let wide = u16::try_from(line.width()).unwrap_or(0).min(main.width);
        pen::line(buf, main.right().saturating_sub(wide), main.y, &line, wide);
    }
    let mut places: Vec<Span<'static>> = Vec::new();
    for ((letter, here), name) in help::places(screen).into_iter().zip(ui.own.places) {
        let style = if here && ui.over == Over::Nothing { palette.cap() } else { palette.quiet() };
        places.push(Span::styled(capital(name, letter), style));
        places.push(Span::styled("  ", palette.quiet()));
    }
    places.push(Span::styled(ui.own.help_and_leave, palette.quiet()));
    pen::line(buf, nav.x, nav.y, &Line::from(places), nav.width);
    top
}

/// A name with the letter that leads there as its one capital.
fn capital(name: &str, letter: char) -> String {
    name.to_lowercase().replacen(letter.to_ascii_lowercase(), &letter.to_string(), 1)
}

#[cfg(all(test, feature = "german"))]
mod german;
#[cfg(test)]
mod pictures;
#[cfg(test)]
mod tests;
