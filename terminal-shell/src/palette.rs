//! Colours: slate and chalk, brass for the one thing to do now, clay for a warning; or none.
//!
//! Nothing is told by colour alone: what is to be done is bold or reversed too, a warning has its
//! mark.

use ratatui::style::{Color, Modifier, Style};

type Rgb = (u8, u8, u8);

const SLATE: Rgb = (0x12, 0x18, 0x1B);
const CHALK: Rgb = (0xF3, 0xF1, 0xE7);
const BRASS: Rgb = (0xE0, 0xA6, 0x3A);
const CLAY: Rgb = (0xD4, 0x67, 0x4A);
/// Brass and clay as type on chalk, where the plain ones are too pale to read.
const DARK_BRASS: Rgb = (0x69, 0x46, 0x00);
const DARK_CLAY: Rgb = (0x9C, 0x3A, 0x1E);
const QUIET_ON_SLATE: Rgb = (0xB4, 0xB8, 0xB2);
const QUIET_ON_CHALK: Rgb = (0x48, 0x52, 0x56);
/// A plate or bar without a colour of its own.
const STEEL_ON_SLATE: Rgb = (0x8C, 0x95, 0x96);
const STEEL_ON_CHALK: Rgb = (0x5E, 0x68, 0x6B);

/// The mark of a warning.
pub(crate) const WARNS: &str = "▲";

/// How many colours there are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Colours {
    /// None: bold and reversed only.
    None,
    /// The terminal's own sixteen, on its own background.
    Sixteen,
    /// The 256 of a fixed table.
    Table,
    /// Any.
    All,
}

/// How things are drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Palette {
    colours: Colours,
    /// Slate on chalk instead of chalk on slate.
    light: bool,
}

impl Palette {
    pub(crate) const fn new(colours: Colours, light: bool) -> Self {
        Self { colours, light }
    }

    /// What the environment says of the terminal; `get` reads one variable.
    pub(crate) fn of(get: impl Fn(&str) -> Option<String>) -> Self {
        let set = |name: &str| get(name).filter(|value| !value.is_empty());
        let term = set("TERM").unwrap_or_default();
        let colours = if set("NO_COLOR").is_some() || term.is_empty() || term == "dumb" {
            Colours::None
        } else if set("COLORTERM").is_some_and(|kind| kind == "truecolor" || kind == "24bit")
            || term.ends_with("-direct")
        {
            Colours::All
        } else if term.contains("256color") {
            Colours::Table
        } else if term.starts_with("vt1") || term.starts_with("vt2") {
            Colours::None
        } else {
            Colours::Sixteen
        };
        // "foreground;background" in the numbers of the sixteen colours.
        let light = set("COLORFGBG").is_some_and(|pair| {
            pair.rsplit(';').next().is_some_and(|back| back == "7" || back == "15")
        });
        Self { colours, light }
    }

    const fn ground(self) -> Rgb {
        if self.light { CHALK } else { SLATE }
    }

    const fn ink(self) -> Rgb {
        if self.light { SLATE } else { CHALK }
    }

    const fn of_ground<T: Copy>(self, on_chalk: T, on_slate: T) -> T {
        if self.light { on_chalk } else { on_slate }
    }

    fn own(self) -> bool {
        matches!(self.colours, Colours::Table | Colours::All)
    }

    fn colour(self, rgb: Rgb) -> Color {
        match self.colours {
            Colours::All => Color::Rgb(rgb.0, rgb.1, rgb.2),
            Colours::Table => Color::Indexed(table(rgb)),
            Colours::Sixteen | Colours::None => Color::Reset,
        }
    }

    fn type_in(self, rgb: Rgb) -> Style {
        Style::new().fg(self.colour(rgb)).bg(self.colour(self.ground()))
    }

    /// Plain type.
    pub(crate) fn plain(self) -> Style {
        if self.own() { self.type_in(self.ink()) } else { Style::new() }
    }

    /// What is read first.
    pub(crate) fn strong(self) -> Style {
        self.plain().add_modifier(Modifier::BOLD)
    }

    /// What is read last.
    pub(crate) fn quiet(self) -> Style {
        if self.own() {
            self.type_in(self.of_ground(QUIET_ON_CHALK, QUIET_ON_SLATE))
        } else {
            Style::new()
        }
    }

    /// The one thing to do now, as type.
    pub(crate) fn now(self) -> Style {
        let style =
            if self.own() { self.type_in(self.of_ground(DARK_BRASS, BRASS)) } else { Style::new() };
        style.add_modifier(Modifier::BOLD)
    }

    /// The one thing to do now, as a key.
    pub(crate) fn key(self) -> Style {
        let style = match self.colours {
            Colours::None => Style::new().add_modifier(Modifier::REVERSED),
            Colours::Sixteen => Style::new().fg(Color::Black).bg(Color::Yellow),
            _ => Style::new().fg(self.colour(SLATE)).bg(self.colour(BRASS)),
        };
        style.add_modifier(Modifier::BOLD)
    }

    /// The cap of any other key; what is selected.
    pub(crate) fn cap(self) -> Style {
        if self.own() {
            Style::new().fg(self.colour(self.ground())).bg(self.colour(self.ink()))
        } else {
            Style::new().add_modifier(Modifier::REVERSED)
        }
    }

    /// A warning. It stands behind [`WARNS`].
    pub(crate) fn warning(self) -> Style {
        let style = match self.colours {
            Colours::None => Style::new(),
            Colours::Sixteen => Style::new().fg(Color::Red),
            _ => self.type_in(self.of_ground(DARK_CLAY, CLAY)),
        };
        style.add_modifier(Modifier::BOLD)
    }

    /// The bar itself, its sleeve and collar; what is filled in a chart.
    pub(crate) fn steel(self) -> Style {
        if self.own() {
            self.type_in(self.of_ground(STEEL_ON_CHALK, STEEL_ON_SLATE))
        } else {
            Style::new()
        }
    }

    /// A plate: its body as type made of blocks, and its number on it. `colour` and `ink` are
    /// `#RRGGBB`, or empty for neutral.
    pub(crate) fn plate(self, colour: &str, ink: &str) -> (Style, Style) {
        let reversed = Style::new().add_modifier(Modifier::REVERSED | Modifier::BOLD);
        match (self.colours, rgb(colour).zip(rgb(ink))) {
            (Colours::None, _) | (Colours::Sixteen, None) => (Style::new(), reversed),
            (Colours::Sixteen, Some((colour, _))) => match sixteen(colour) {
                Some((body, ink)) => (Style::new().fg(body), Style::new().fg(ink).bg(body)),
                None => (Style::new(), reversed),
            },
            // A plate in the colour of the ground would not be seen.
            (_, Some((colour, ink))) if apart(colour, self.ground()) > 60 => (
                self.type_in(colour),
                Style::new()
                    .fg(self.colour(ink))
                    .bg(self.colour(colour))
                    .add_modifier(Modifier::BOLD),
            ),
            _ => {
                let steel = self.of_ground(STEEL_ON_CHALK, STEEL_ON_SLATE);
                let ink = self.of_ground(CHALK, SLATE);
                let number = Style::new().fg(self.colour(ink)).bg(self.colour(steel));
                (self.type_in(steel), number.add_modifier(Modifier::BOLD))
            }
        }
    }
}

/// `#RRGGBB`.
fn rgb(text: &str) -> Option<Rgb> {
    let number = u32::from_str_radix(text.strip_prefix('#').filter(|hex| hex.len() == 6)?, 16);
    let [_, red, green, blue] = number.ok()?.to_be_bytes();
    Some((red, green, blue))
}

/// How far two colours lie apart, by their furthest part.
fn apart(one: Rgb, other: Rgb) -> u8 {
    let (red, green, blue) =
        (one.0.abs_diff(other.0), one.1.abs_diff(other.1), one.2.abs_diff(other.2));
    red.max(green).max(blue)
}

/// The nearest of the table of 256: its cube of six steps, or its 24 greys.
fn table((red, green, blue): Rgb) -> u8 {
    const STEPS: [u8; 6] = [0, 95, 135, 175, 215, 255];
    let nearest = |part: u8| {
        (0..6_u8).min_by_key(|at| STEPS[usize::from(*at)].abs_diff(part)).unwrap_or_default()
    };
    let (r, g, b) = (nearest(red), nearest(green), nearest(blue));
    let cube = (STEPS[usize::from(r)], STEPS[usize::from(g)], STEPS[usize::from(b)]);
    let middle = (u16::from(red) + u16::from(green) + u16::from(blue)) / 3;
    let grey_at = u8::try_from(middle.saturating_sub(3) / 10).unwrap_or(23).min(23);
    let grey = 8 + grey_at * 10;
    if apart((grey, grey, grey), (red, green, blue)) < apart(cube, (red, green, blue)) {
        232 + grey_at
    } else {
        16 + 36 * r + 6 * g + b
    }
}

/// A plate's colour as one of the terminal's own, with an ink on it; none for a grey.
fn sixteen((red, green, blue): Rgb) -> Option<(Color, Color)> {
    let (most, least) = (red.max(green).max(blue), red.min(green).min(blue));
    if most - least < 40 {
        return None;
    }
    Some(if most == blue {
        (Color::Blue, Color::White)
    } else if most == green {
        (Color::Green, Color::Black)
    } else if green > most / 2 {
        (Color::Yellow, Color::Black)
    } else {
        (Color::Red, Color::White)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(pairs: &'static [(&str, &str)]) -> Palette {
        Palette::of(|name| {
            pairs.iter().find(|(key, _)| *key == name).map(|(_, value)| (*value).to_owned())
        })
    }

    #[test]
    fn reads_what_terminals_say_of_themselves() {
        assert_eq!(of(&[]).colours, Colours::None);
        assert_eq!(of(&[("TERM", "dumb")]).colours, Colours::None);
        assert_eq!(of(&[("TERM", "vt100")]).colours, Colours::None);
        assert_eq!(of(&[("TERM", "linux")]).colours, Colours::Sixteen);
        assert_eq!(of(&[("TERM", "screen")]).colours, Colours::Sixteen);
        assert_eq!(of(&[("TERM", "tmux-256color")]).colours, Colours::Table);
        let all = &[("TERM", "xterm-256color"), ("COLORTERM", "truecolor")];
        assert_eq!(of(all).colours, Colours::All);
        let off = &[("TERM", "xterm-256color"), ("COLORTERM", "truecolor"), ("NO_COLOR", "1")];
        assert_eq!(of(off).colours, Colours::None);
        assert!(of(&[("TERM", "xterm"), ("COLORFGBG", "0;15")]).light);
        assert!(!of(&[("TERM", "xterm"), ("COLORFGBG", "15;default;0")]).light);
    }

    #[test]
    fn without_colours_no_style_has_one() {
        for colours in [Colours::None, Colours::Sixteen] {
            let palette = Palette::new(colours, false);
            for style in
                [palette.plain(), palette.strong(), palette.quiet(), palette.now(), palette.cap()]
            {
                assert!(style.fg.is_none() && style.bg.is_none(), "{style:?}");
            }
        }
        let palette = Palette::new(Colours::None, true);
        let (body, number) = palette.plate("#B8342C", "#F3F1E7");
        for style in [palette.key(), palette.warning(), palette.steel(), body, number] {
            assert!(style.fg.is_none() && style.bg.is_none(), "{style:?}");
        }
    }

    #[test]
    fn what_is_read_at_a_distance_has_its_contrast() {
        // Relative luminance and contrast as WCAG 2.1 defines them: published.
        fn luminance((red, green, blue): Rgb) -> f64 {
            let part = |value: u8| {
                let part = f64::from(value) / 255.0;
                if part <= 0.04045 { part / 12.92 } else { ((part + 0.055) / 1.055).powf(2.4) }
            };
            0.2126 * part(red) + 0.7152 * part(green) + 0.0722 * part(blue)
        }
        fn contrast(one: Rgb, other: Rgb) -> f64 {
            let (one, other) = (luminance(one), luminance(other));
            (one.max(other) + 0.05) / (one.min(other) + 0.05)
        }
        for (ink, ground) in [(CHALK, SLATE), (BRASS, SLATE), (SLATE, BRASS), (DARK_BRASS, CHALK)] {
            assert!(contrast(ink, ground) >= 7.0, "{}", contrast(ink, ground));
        }
        for (ink, ground) in [
            (CLAY, SLATE),
            (DARK_CLAY, CHALK),
            (QUIET_ON_SLATE, SLATE),
            (QUIET_ON_CHALK, CHALK),
            (SLATE, STEEL_ON_SLATE),
            (CHALK, STEEL_ON_CHALK),
        ] {
            assert!(contrast(ink, ground) >= 4.5, "{}", contrast(ink, ground));
        }
    }

    #[test]
    fn plates_in_the_colour_of_the_ground_turn_neutral() {
        let dark = Palette::new(Colours::All, false);
        assert_eq!(dark.plate("#12181B", "#F3F1E7"), dark.plate("", ""));
        assert_ne!(dark.plate("#B8342C", "#F3F1E7"), dark.plate("", ""));
        let sixteen = Palette::new(Colours::Sixteen, false);
        assert_eq!(sixteen.plate("#B8342C", "#F3F1E7").0.fg, Some(Color::Red));
        assert_eq!(sixteen.plate("#D9B02E", "#12181B").0.fg, Some(Color::Yellow));
        assert_eq!(sixteen.plate("#2E5FA3", "#F3F1E7").0.fg, Some(Color::Blue));
        assert_eq!(sixteen.plate("#3B8150", "#F3F1E7").0.fg, Some(Color::Green));
        assert_eq!(sixteen.plate("#EDEBE3", "#12181B").0.fg, None);
    }

    #[test]
    fn the_table_has_the_nearest() {
        assert_eq!(table((0, 0, 0)), 16);
        assert_eq!(table((255, 255, 255)), 231);
        assert_eq!(table((0x12, 0x12, 0x12)), 233);
        assert_eq!(table(BRASS), 179);
    }
}
