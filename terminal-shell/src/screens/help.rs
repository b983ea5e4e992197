//! The screens there are, and the keys that are the same everywhere.

use barwright_app::contract::{Draft, Look, Screen};

use super::sheet::{Item, Sheet, Tone};

/// The screens in their order: the letter that leads there, the name, and whether it is shown.
pub(super) fn places(screen: &Screen) -> [(char, &'static str, bool); 9] {
    [
        ('T', "Today", matches!(screen, Screen::Today { .. })),
        ('F', "Floor", matches!(screen, Screen::Floor { .. })),
        ('A', "Tally", matches!(screen, Screen::Tally { .. })),
        ('W', "Weeks", matches!(screen, Screen::Weeks { .. })),
        ('L', "Lift", matches!(screen, Screen::Lift { .. })),
        ('B', "Balance", matches!(screen, Screen::Balance { .. })),
        ('E', "Equipment", matches!(screen, Screen::Equipment { .. })),
        ('P', "Plan", matches!(screen, Screen::Plan { .. })),
        ('C', "Care", matches!(screen, Screen::Care { .. })),
    ]
}

/// What to look at where a letter leads to.
pub(crate) fn place(letter: char) -> Option<Look> {
    Some(match letter {
        'T' => Look::Today { session: None, minutes: None },
        'F' => Look::Floor { draft: Draft::default() },
        'A' => Look::Tally,
        'W' => Look::Weeks,
        'L' => Look::Lift { exercise: String::new(), page: 0, all: false },
        'B' => Look::Balance { weeks: None },
        'E' => Look::Equipment,
        'P' => Look::Plan { text: None, week: None },
        'C' => Look::Care,
        _ => return None,
    })
}

const EVERYWHERE: &[&str] = &[
    "Every key that works is shown where it works, and does what stands beside it.",
    "A capital letter in the bottom line leads to that screen: T today, F floor, A tally, W weeks, \
     L lift, B balance, E equipment, P plan, C what to take care of. Tab goes to the next.",
    "Up and down choose a line, page up and page down scroll; enter writes a field; w says why.",
    "esc closes what lies over a screen; q leaves the program. What was recorded is kept, a \
     session that runs goes on when you come back.",
];

const FLOOR: &[&str] = &[
    "enter or space records what was done, where one wide key does.",
    "Where the call asks for effort, a digit records the set with so many reps in reserve, or at \
     that RPE (0 is ten); a point first makes it a half: .2 is two and a half.",
    "- and + correct the figure before it is recorded, # types what is far from it (x rubs a digit \
     out, enter takes the number), u undoes the last tap.",
    "[ and ] make the rest shorter and longer. Nothing has to be started: recording the next set \
     ends the rest.",
    "c counts a tempo aloud, with a bell at each beat, until the set is recorded or c again.",
    "b corrects what is on the bar, e says why a set was cut short, m opens the rest.",
];

const FILES: &[&str] = &["o opens a file: a plan on Plan, a gym on Equipment."];

pub(super) fn sheet(screen: &Screen) -> Sheet<'static> {
    let mut sheet = Sheet::new("Keys", "");
    let lines = |texts: &'static [&'static str]| {
        texts.iter().map(|text| Item::Text(text, Tone::Plain)).chain([Item::Gap])
    };
    if matches!(screen, Screen::Floor { .. }) {
        sheet.items.push(Item::Text("On the floor", Tone::Heading));
        sheet.items.extend(lines(FLOOR));
    }
    sheet.items.push(Item::Text("Everywhere", Tone::Heading));
    sheet.items.extend(lines(EVERYWHERE));
    sheet.items.push(Item::Text("Files", Tone::Heading));
    sheet.items.extend(lines(FILES));
    sheet
}
