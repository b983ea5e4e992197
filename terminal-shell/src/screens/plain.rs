//! Screens as plain text, for a pipe.

use std::fmt::Write;

use barwright_app::contract::{Field, PlanScreen, Row, Screen, TodayScreen};

/// A screen as lines of text: the sheets that a pipe is given whole, any other as it is read aloud.
pub(crate) fn text(screen: &Screen) -> String {
    let mut out = String::new();
    match screen {
        Screen::Today { today } => today_text(today, &mut out),
        Screen::Plan { plan } => plan_text(plan, &mut out),
        Screen::Floor { floor } => line(&floor.aloud, &mut out),
        Screen::Tally { tally } => line(&tally.aloud, &mut out),
        Screen::Weeks { weeks } => line(&weeks.aloud, &mut out),
        Screen::Lift { lift } => line(&lift.aloud, &mut out),
        Screen::Balance { balance } => line(&balance.aloud, &mut out),
        Screen::Equipment { equipment } => line(&equipment.aloud, &mut out),
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
        line("\nLeft out for the time there is:", out);
        today.left_out.iter().for_each(|text| line(&format!("  {text}"), out));
    }
    fields(&today.needs, out);
}

fn plan_text(plan: &PlanScreen, out: &mut String) {
    line(&plan.title, out);
    line(&plan.subtitle, out);
    for fault in &plan.faults {
        let kind = if fault.advises { "advice" } else { "fault" };
        let (at, column) = (fault.line, fault.column);
        line(&format!("\nline {at}, column {column}, {kind}: {}", fault.problem), out);
        line(&format!("    {}", fault.text), out);
        line(&format!("    {}", fault.underline), out);
        line(&format!("  {}", fault.advice), out);
    }
    rows(&plan.rows, out);
}

fn rows(rows: &[Row], out: &mut String) {
    for row in rows {
        if row.depth < 2 {
            out.push('\n');
        }
        let indent = "  ".repeat(usize::from(row.depth));
        // The words of a warning stand in the text; the mark helps to find it.
        let mark = if row.warns { "(look) " } else { "" };
        let done = if row.done { " (done)" } else { "" };
        let _ = writeln!(out, "{indent}{mark}{}{done}", row.text);
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
