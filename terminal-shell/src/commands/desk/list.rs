//! The lines of all lifters on a terminal, of which one is opened.

use std::io;

use barwright_app::phrase::Words;
use ratatui::Frame;
use ratatui::crossterm::event::{self, Event, KeyCode, KeyEventKind};
use ratatui::layout::{Constraint, Layout};
use ratatui::text::{Line as TextLine, Text};
use ratatui::widgets::{Cell, Row, Table, TableState};
use unicode_width::UnicodeWidthStr;

use super::returns::{Line, Returns};
use crate::palette::Palette;
use crate::terminal;

/// The widest a column is, so that the figures of all lifters stand on the terminal.
const MOST_WIDE: usize = 16;

/// Shows them until one is opened; none where it is left. `at` is the one that is chosen.
pub(super) fn choose<'a>(
    found: &'a Returns,
    at: &mut usize,
    palette: Palette,
    words: Words,
) -> io::Result<Option<&'a Line>> {
    let last = found.lifters.len().saturating_sub(1);
    terminal::with(|terminal| {
        let mut state = TableState::new().with_selected(Some(*at));
        loop {
            terminal.draw(|frame| draw(frame, found, &mut state, palette, words))?;
            let Event::Key(key) = event::read()? else { continue };
            if key.kind == KeyEventKind::Release {
                continue;
            }
            match key.code {
                KeyCode::Down | KeyCode::Char('j') => *at = (*at + 1).min(last),
                KeyCode::Up | KeyCode::Char('k') => *at = at.saturating_sub(1),
                KeyCode::PageDown => *at = (*at + 10).min(last),
                KeyCode::PageUp => *at = at.saturating_sub(10),
                KeyCode::Enter => return Ok(found.lifters.get(*at)),
                KeyCode::Char('q') | KeyCode::Esc => return Ok(None),
                _ => {}
            }
            state.select(Some(*at));
        }
    })
}

fn draw(
    frame: &mut Frame<'_>,
    found: &Returns,
    state: &mut TableState,
    palette: Palette,
    words: Words,
) {
    let [top, main, below] =
        Layout::vertical([Constraint::Length(1), Constraint::Min(1), Constraint::Length(2)])
            .areas(frame.area());
    let columns = words.returned().columns();
    let lines: Vec<Vec<String>> = found.lifters.iter().map(|line| line.cells(words)).collect();
    let widths: Vec<Constraint> = columns
        .iter()
        .enumerate()
        .map(|(at, name)| {
            let cells = lines.iter().filter_map(|line| line.get(at)).map(|cell| cell.width());
            let wide = cells.chain([name.width()]).max().unwrap_or_default().min(MOST_WIDE);
            // What comes next has what is left, and stands below in full.
            match at + 1 == columns.len() {
                true => Constraint::Fill(1),
                false => Constraint::Length(u16::try_from(wide).unwrap_or(u16::MAX)),
            }
        })
        .collect();
    let rows = lines.iter().zip(&found.lifters).map(|(cells, line)| {
        let style = if line.week.pain > 0 { palette.warning() } else { palette.plain() };
        Row::new(cells.iter().map(|cell| Cell::from(cell.as_str()))).style(style)
    });
    let table = Table::new(rows, widths)
        .header(Row::new(columns).style(palette.quiet()))
        .column_spacing(1)
        .highlight_symbol(Text::from("> "))
        .row_highlight_style(palette.cap());
    frame.buffer_mut().set_style(top.union(main).union(below), palette.plain());
    frame.render_widget(TextLine::styled(found.in_short(words), palette.strong()), top);
    frame.render_stateful_widget(table, main, state);
    let chosen = state.selected().and_then(|at| found.lifters.get(at));
    let next = chosen.map(|line| line.week.next.as_str()).unwrap_or_default();
    let keys = TextLine::styled(words.returned().keys(), palette.quiet());
    frame.render_widget(Text::from(vec![TextLine::from(next), keys]), below);
}
