//! Screens as plain text, for a pipe.

use std::fmt::Write;

use barwright_app::contract::{
    BalanceScreen, Field, FileFault, FormScreen, LiftScreen, PlanScreen, Row, Screen, TodayScreen,
    WeeksScreen,
};
use ratatui::text::Line;

use super::{balance, lift};
use crate::palette::{Colours, Palette};

/// How wide a drawing is on a pipe.
const WIDE: u16 = 80;
/// On a pipe nothing is coloured.
const PLAIN: Palette = Palette::new(Colours::None, false);

/// A screen as lines of text without colours: sheets whole, drawings made of characters; any other
/// as it is read aloud.
pub(crate) fn text(screen: &Screen) -> String {
    let mut out = String::new();
    match screen {
        Screen::Today { today } => today_text(today, &mut out),
        Screen::Plan { plan } => plan_text(plan, &mut out),
        Screen::Floor { floor } => line(&floor.aloud, &mut out),
        Screen::Tally { tally } => line(&tally.aloud, &mut out),
        Screen::Weeks { weeks } => weeks_text(weeks, &mut out),
        Screen::Lift { lift } => lift_text(lift, &mut out),
        Screen::Balance { balance } => balance_text(balance, &mut out),
        Screen::Equipment { equipment } => line(&equipment.aloud, &mut out),
        Screen::Form { form } => form_text(form, &mut out),
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

fn today_text(today: &TodayScreen, out: &mut String) {
    line(&today.title, out);
    line(&today.subtitle, out);
    line(&today.duration, out);
    for caution in &today.cautions {
        line(&format!("Take care: {caution}"), out);
    }
    rows(&today.rows, out);
    if !today.left_out.is_empty() {
        line("\nSkipped for the time there is:", out);
        today.left_out.iter().for_each(|text| line(&format!("  {text}"), out));
    }
    fields(&today.needs, out);
}

fn plan_text(plan: &PlanScreen, out: &mut String) {
    line(&plan.title, out);
    line(&plan.subtitle, out);
    for fault in &plan.faults {
        let FileFault { line: at, column, label, problem, .. } = fault;
        line(&format!("\nline {at}, column {column}, {label}: {problem}"), out);
        line(&format!("    {}", fault.text), out);
        line(&format!("    {}", fault.underline), out);
        line(&format!("  {}", fault.advice), out);
    }
    rows(&plan.rows, out);
}

fn weeks_text(weeks: &WeeksScreen, out: &mut String) {
    line(&weeks.title, out);
    line(&weeks.subtitle, out);
    for week in &weeks.weeks {
        let here = if week.current { " (this week)" } else { "" };
        list(&format!("{}{here}", week.title), &week.rows, out);
    }
}

fn lift_text(lift: &LiftScreen, out: &mut String) {
    line(&lift.title, out);
    line(&lift.subtitle, out);
    if let Some(chart) = &lift.chart {
        out.push('\n');
        drawing(&lift::drawing(chart, WIDE, PLAIN), out);
    }
    list("Records", &lift.records, out);
    list("Sessions", &lift.sessions, out);
    if lift.sessions.is_empty() {
        line("\nNo session yet.", out);
    }
}

fn form_text(form: &FormScreen, out: &mut String) {
    line(&form.title, out);
    line(&form.subtitle, out);
    for row in &form.rows {
        if row.depth == 0 {
            out.push('\n');
        }
        let indent = "  ".repeat(usize::from(row.depth));
        let look = if row.warns { "(look) " } else { "" };
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
        drawing(&lift::drawing(chart, WIDE, PLAIN), out);
    }
}

fn balance_text(balance: &BalanceScreen, out: &mut String) {
    line(&balance.title, out);
    line(&balance.subtitle, out);
    out.push('\n');
    drawing(&balance::drawn(balance, WIDE, PLAIN), out);
    list("Behind", &balance.sentences, out);
    list("By kind of week", &balance.kinds, out);
}

fn drawing(lines: &[Line<'_>], out: &mut String) {
    for drawn in lines {
        let text: String = drawn.spans.iter().map(|span| span.content.as_ref()).collect();
        out.push_str(text.trim_end());
        out.push('\n');
    }
}

/// Rows one below the other under a heading; nothing where there are none.
fn list(heading: &str, rows: &[Row], out: &mut String) {
    if rows.is_empty() {
        return;
    }
    line(&format!("\n{heading}"), out);
    // Rows of the first depth stand under the heading, or under headings among them.
    let within = usize::from(rows.iter().any(|row| row.depth == 0));
    for row in rows {
        let indent = "  ".repeat((usize::from(row.depth) + within).max(1));
        let _ = writeln!(out, "{indent}{}{}{}", mark(row), row.text, done(row));
        if !row.detail.is_empty() {
            let _ = writeln!(out, "{indent}  {}", row.detail);
        }
    }
}

/// The words of a warning stand in the text; the mark helps to find it.
fn mark(row: &Row) -> &'static str {
    if row.warns { "! " } else { "" }
}

fn done(row: &Row) -> &'static str {
    if row.done { " (done)" } else { "" }
}

fn rows(rows: &[Row], out: &mut String) {
    for row in rows {
        if row.depth < 2 {
            out.push('\n');
        }
        let indent = "  ".repeat(usize::from(row.depth));
        let _ = writeln!(out, "{indent}{}{}{}", mark(row), row.text, done(row));
        if !row.detail.is_empty() {
            let _ = writeln!(out, "{indent}  {}", row.detail);
        }
    }
}

fn fields(fields: &[Field], out: &mut String) {
    let missing: Vec<&Field> = fields.iter().filter(|field| field.value.is_empty()).collect();
    if !missing.is_empty() {
        line("\nStill needed:", out);
        for field in missing {
            line(&format!("  {} (such as {})", field.label, field.hint), out);
        }
    }
}
