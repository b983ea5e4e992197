//! Screens as plain text, for a pipe.

use std::fmt::Write;

use barwright_app::contract::{
    BalanceScreen, Field, FileFault, FormScreen, LiftScreen, PlanScreen, Row, Screen, TodayScreen,
    WeeksScreen,
};
use ratatui::text::Line;

use super::{balance, chart};
use crate::palette::{Colours, Palette};
use crate::words::Own;

/// How wide a drawing is on a pipe.
const WIDE: u16 = 80;
/// On a pipe nothing is coloured.
const PLAIN: Palette = Palette::new(Colours::None, false);

/// A screen as lines of text without colours: sheets whole, drawings made of characters; any other
/// as it is read aloud.
pub(crate) fn text(screen: &Screen, own: Own) -> String {
    let mut out = String::new();
    match screen {
        Screen::Today { today } => today_text(today, own, &mut out),
        Screen::Plan { plan } => plan_text(plan, own, &mut out),
        Screen::Floor { floor } => line(&floor.aloud, &mut out),
        Screen::Tally { tally } => line(&tally.aloud, &mut out),
        Screen::Weeks { weeks } => weeks_text(weeks, own, &mut out),
        Screen::Lift { lift } => lift_text(lift, own, &mut out),
        Screen::Balance { balance } => balance_text(balance, own, &mut out),
        Screen::Equipment { equipment } => line(&equipment.aloud, &mut out),
        Screen::Form { form } => form_text(form, own, &mut out),
        Screen::Care { care } => {
            line(&care.title, &mut out);
            line(&care.subtitle, &mut out);
            for row in &care.rows {
                let lead = if row.depth == 0 { "\n" } else { "  " };
                line(&format!("{lead}{}", row.text), &mut out);
            }
        }
        Screen::NotShown { not_shown } => line(&not_shown.aloud, &mut out),
    }
    out
}

fn line(text: &str, out: &mut String) {
    if !text.is_empty() {
        out.push_str(text);
        out.push('\n');
    }
}

fn today_text(today: &TodayScreen, own: Own, out: &mut String) {
    line(&today.title, out);
    line(&today.subtitle, out);
    line(&today.duration, out);
    for caution in &today.cautions {
        line(&format!("{}: {caution}", own.take_care), out);
    }
    rows(&today.rows, own, out);
    if !today.left_out.is_empty() {
        line(&format!("\n{}:", own.skipped), out);
        today.left_out.iter().for_each(|text| line(&format!("  {text}"), out));
    }
    fields(&today.needs, own, out);
}

fn plan_text(plan: &PlanScreen, own: Own, out: &mut String) {
    line(&plan.title, out);
    line(&plan.subtitle, out);
    for fault in &plan.faults {
        let FileFault { line: at, column, label, problem, .. } = fault;
        line(&format!("\n{}", (own.fault)(*at, *column, label, problem)), out);
        line(&format!("    {}", fault.text), out);
        line(&format!("    {}", fault.underline), out);
        line(&format!("  {}", fault.advice), out);
    }
    rows(&plan.rows, own, out);
}

fn weeks_text(weeks: &WeeksScreen, own: Own, out: &mut String) {
    line(&weeks.title, out);
    line(&weeks.subtitle, out);
    for week in &weeks.weeks {
        let here = if week.current { format!(" ({})", own.this_week) } else { String::new() };
        list(&format!("{}{here}", week.title), &week.rows, own, out);
    }
}

fn lift_text(lift: &LiftScreen, own: Own, out: &mut String) {
    line(&lift.title, out);
    line(&lift.subtitle, out);
    if let Some(chart) = &lift.chart {
        out.push('\n');
        drawing(&chart::drawing(chart, WIDE, PLAIN), out);
    }
    list(own.records, &lift.records, own, out);
    list(own.sessions, &lift.sessions, own, out);
    if lift.sessions.is_empty() {
        line(&format!("\n{}", own.no_session), out);
    }
}

fn form_text(form: &FormScreen, own: Own, out: &mut String) {
    line(&form.title, out);
    line(&form.subtitle, out);
    for row in &form.rows {
        if row.depth == 0 {
            out.push('\n');
        }
        let indent = "  ".repeat(usize::from(row.depth));
        let look = if row.warns { format!("({}) ", own.look) } else { String::new() };
        let value = if row.value.is_empty() { String::new() } else { format!(": {}", row.value) };
        line(&format!("{indent}{look}{}{value}", row.text), out);
        let below = [&row.detail].into_iter().chain(&row.faults).chain(&row.remarks);
        for text in below.filter(|text| !text.is_empty()) {
            line(&format!("{indent}  {text}"), out);
        }
    }
    if !form.notes.is_empty() {
        out.push('\n');
        form.notes.iter().for_each(|note| line(note, out));
    }
    if let Some(chart) = &form.chart {
        out.push('\n');
        drawing(&chart::drawing(chart, WIDE, PLAIN), out);
    }
}

fn balance_text(balance: &BalanceScreen, own: Own, out: &mut String) {
    line(&balance.title, out);
    line(&balance.subtitle, out);
    out.push('\n');
    drawing(&balance::drawn(balance, WIDE, PLAIN, own), out);
    list(own.behind, &balance.sentences, own, out);
    list(own.by_kind, &balance.kinds, own, out);
}

fn drawing(lines: &[Line<'_>], out: &mut String) {
    for drawn in lines {
        let text: String = drawn.spans.iter().map(|span| span.content.as_ref()).collect();
        out.push_str(text.trim_end());
        out.push('\n');
    }
}

/// Rows one below the other under a heading; nothing where there are none.
fn list(heading: &str, rows: &[Row], own: Own, out: &mut String) {
    if rows.is_empty() {
        return;
    }
    line(&format!("\n{heading}"), out);
    // Rows of the first depth stand under the heading, or under headings among them.
    let within = usize::from(rows.iter().any(|row| row.depth == 0));
    for row in rows {
        let indent = "  ".repeat((usize::from(row.depth) + within).max(1));
        let _ = writeln!(out, "{indent}{}{}{}", mark(row), row.text, done(row, own));
        if !row.detail.is_empty() {
            let _ = writeln!(out, "{indent}  {}", row.detail);
        }
    }
}

/// The words of a warning stand in the text; the mark helps to find it.
fn mark(row: &Row) -> &'static str {
    if row.warns { "! " } else { "" }
}

fn done(row: &Row, own: Own) -> String {
    if row.done { format!(" ({})", own.is_done) } else { String::new() }
}

fn rows(rows: &[Row], own: Own, out: &mut String) {
    for row in rows {
        if row.depth < 2 {
            out.push('\n');
        }
        let indent = "  ".repeat(usize::from(row.depth));
        let _ = writeln!(out, "{indent}{}{}{}", mark(row), row.text, done(row, own));
        if !row.detail.is_empty() {
            let _ = writeln!(out, "{indent}  {}", row.detail);
        }
    }
}

fn fields(fields: &[Field], own: Own, out: &mut String) {
    let missing: Vec<&Field> = fields.iter().filter(|field| field.value.is_empty()).collect();
    if !missing.is_empty() {
        line(&format!("\n{}:", own.still_needed), out);
        for field in missing {
            line(&format!("  {} ({})", field.label, (own.such_as)(&field.hint)), out);
        }
    }
}
