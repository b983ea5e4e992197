//! A week on paper as one page of HTML that needs nothing beside it: no script, no file, no network.
//!
//! It names no size of paper, so that a browser lays it out for whichever it prints on. Everything is
//! black on white; what is to be written into has a line round it.

use barwright_app::{Paper, PaperColumns, PaperEntry, PaperSession, PaperSet};
use maud::{DOCTYPE, Markup, PreEscaped, html};

/// Sizes are in points, and widths in shares of the page: A4 and Letter differ by 6 mm across.
const STYLE: &str = "
@page { margin: 12mm; }
* { box-sizing: border-box; }
html { color: #000; background: #fff; }
body { font: 9.5pt/1.3 sans-serif; margin: 0 auto; max-width: 190mm; overflow-wrap: anywhere; }
h1 { font-size: 15pt; margin: 0; }
h2 { font-size: 12.5pt; margin: 0; }
h3 { font-size: 10.5pt; margin: 0; }
p, ul { margin: 0; padding: 0; list-style: none; }
header, footer { margin-bottom: 3mm; }
footer { font-size: 8pt; margin-top: 3mm; }
section { border-top: 1.5pt solid #000; padding-top: 2mm; }
section + section { break-before: page; }
.head { display: flex; flex-wrap: wrap; gap: 1mm 5mm; align-items: baseline; }
.blank { flex: 1 0 30mm; display: flex; gap: 2mm; white-space: nowrap; }
.blank::after { content: ''; flex: 1; border-bottom: .75pt solid #000; }
.needs { border: 1pt dashed #000; padding: 1mm 2mm; margin-top: 2mm; }
article { margin-top: 3.5mm; }
h3, article > p, article > ul, thead { break-after: avoid; }
table { width: 100%; border-collapse: collapse; table-layout: fixed; margin-top: 1mm; }
th { font-size: 8pt; text-align: left; font-weight: normal; border-bottom: .75pt solid #000; }
td { border-bottom: .5pt solid #000; padding: 1mm 1mm 1mm 0; vertical-align: middle; }
tr { break-inside: avoid; }
.set { width: 9%; } .rest { width: 8%; } .load { width: 15%; } .done { width: 27%; }
.effort { width: 9%; }
.box { border: .75pt solid #000; min-height: 7.5mm; font-size: 7pt; padding: .2mm .8mm; }
.parts { display: flex; flex-wrap: wrap; gap: 1mm; }
.parts .box { flex: 1 0 11mm; }
.cue { font-style: italic; }
.note { margin-top: 4mm; break-inside: avoid; }
.note div { border-bottom: .5pt solid #000; height: 7mm; }
";

/// The whole page.
pub(crate) fn page(paper: &Paper) -> String {
    let page = html! {
        (DOCTYPE)
        html lang=(paper.language) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width";
                // Nothing is fetched and nothing runs, whatever stands in a name.
                meta http-equiv="Content-Security-Policy"
                    content="default-src 'none'; style-src 'unsafe-inline'";
                title { (paper.title) }
                style { (PreEscaped(STYLE)) }
            }
            body {
                header {
                    h1 { (paper.title) }
                    p { (paper.subtitle) }
                    p { (paper.as_of) }
                }
                @for session in &paper.sessions { (of_session(session, &paper.columns)) }
                footer { p { (paper.foot) } }
            }
        }
    };
    page.into_string()
}

fn of_session(session: &PaperSession, columns: &PaperColumns) -> Markup {
    html! {
        section {
            div class="head" {
                h2 { (session.title) }
                @for blank in &session.blanks { span class="blank" { (blank) } }
            }
            p { (session.detail) }
            @if !session.needs.is_empty() {
                ul class="needs" { @for need in &session.needs { li { (need) } } }
            }
            @if !session.warm_up.is_empty() { p { (session.warm_up) } }
            @for entry in &session.entries { (of_entry(entry, columns)) }
            div class="note" { p { (session.note) } div {} div {} div {} }
        }
    }
}

fn of_entry(entry: &PaperEntry, columns: &PaperColumns) -> Markup {
    html! {
        article {
            h3 { (entry.title) }
            @for detail in &entry.details { p { (detail) } }
            @if !entry.cues.is_empty() {
                ul { @for cue in &entry.cues { li class="cue" { (cue) } } }
            }
            @if !entry.ramp.is_empty() { p { (entry.ramp) } }
            table {
                thead {
                    tr {
                        th class="set" { (columns.set) }
                        th { (columns.call) }
                        th class="rest" { (columns.rest) }
                        th class="load" { (columns.load) }
                        th class="done" { (columns.done) }
                        th class="effort" { (columns.effort) }
                    }
                }
                tbody { @for set in &entry.sets { (of_set(set)) } }
            }
        }
    }
}

fn of_set(set: &PaperSet) -> Markup {
    html! {
        tr {
            td { (set.name) }
            td { (set.call) }
            td { (set.rest) }
            td { div class="box" {} }
            td { div class="parts" { @for part in &set.parts { div class="box" { (part) } } } }
            td { div class="box" {} }
        }
    }
}
