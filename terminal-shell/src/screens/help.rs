//! The screens there are, and the keys that are the same everywhere.

use barwright_app::contract::{Draft, Look, Screen};

use super::sheet::{Item, Sheet, Tone};
use crate::words::Own;

/// The screens in their order: the letter that leads there, and whether it is shown.
pub(super) fn places(screen: &Screen) -> [(char, bool); 9] {
    [
        ('T', matches!(screen, Screen::Today { .. })),
        ('F', matches!(screen, Screen::Floor { .. })),
        ('A', matches!(screen, Screen::Tally { .. })),
        ('W', matches!(screen, Screen::Weeks { .. })),
        ('L', matches!(screen, Screen::Lift { .. })),
        ('B', matches!(screen, Screen::Balance { .. })),
        ('E', matches!(screen, Screen::Equipment { .. })),
        ('P', matches!(screen, Screen::Plan { .. })),
        ('C', matches!(screen, Screen::Care { .. })),
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

pub(super) fn sheet(screen: &Screen, own: Own) -> Sheet<'static> {
    let mut sheet = Sheet::new(own.keys, "");
    let on_floor = matches!(screen, Screen::Floor { .. }).then_some(own.on_the_floor);
    for (heading, texts) in on_floor.into_iter().chain([own.everywhere, own.files]) {
        sheet.items.push(Item::Text(heading, Tone::Heading));
        sheet.items.extend(texts.iter().map(|text| Item::Text(text, Tone::Plain)));
        sheet.items.push(Item::Gap);
    }
    sheet
}
