//! Large type, made of blocks: figures that are read from a distance.

/// A letter three dots wide and five high, or narrower; none is not in this type.
fn letter(letter: char) -> Option<[&'static str; 5]> {
    Some(match letter {
        '0' => ["###", "# #", "# #", "# #", "###"],
        '1' => [" # ", "## ", " # ", " # ", "###"],
        '2' => ["###", "  #", "###", "#  ", "###"],
        '3' => ["###", "  #", "###", "  #", "###"],
        '4' => ["# #", "# #", "###", "  #", "  #"],
        '5' => ["###", "#  ", "###", "  #", "###"],
        '6' => ["###", "#  ", "###", "# #", "###"],
        '7' => ["###", "  #", "  #", "  #", "  #"],
        '8' => ["###", "# #", "###", "# #", "###"],
        '9' => ["###", "# #", "###", "  #", "###"],
        '.' => [" ", " ", " ", " ", "#"],
        ',' => ["  ", "  ", "  ", " #", "# "],
        ':' => [" ", "#", " ", "#", " "],
        '+' => ["   ", " # ", "###", " # ", "   "],
        '-' | '−' | '–' => ["   ", "   ", "###", "   ", "   "],
        '×' => ["   ", "# #", " # ", "# #", "   "],
        ' ' | '\u{a0}' | '\u{202f}' => [" ", " ", " ", " ", " "],
        'k' => ["#  ", "# #", "## ", "# #", "# #"],
        'g' => ["   ", "###", "# #", "###", "## "],
        'l' => ["#", "#", "#", "#", "#"],
        'b' => ["#  ", "#  ", "###", "# #", "###"],
        'P' => ["###", "# #", "###", "#  ", "#  "],
        'i' => ["#", " ", "#", "#", "#"],
        'n' => ["   ", "   ", "###", "# #", "# #"],
        'B' => ["## ", "# #", "## ", "# #", "## "],
        'o' => ["   ", "   ", "###", "# #", "###"],
        'd' => ["  #", "  #", "###", "# #", "###"],
        'y' => ["   ", "# #", "###", "  #", "## "],
        'm' => ["     ", "     ", "#####", "# # #", "# # #"],
        's' => ["   ", " ##", "#  ", "  #", "## "],
        _ => return None,
    })
}

/// The five rows of a text, a dot `across` columns wide; none where a letter is not in this type.
pub(super) fn rows(text: &str, across: u16) -> Option<Vec<String>> {
    let across = usize::from(across);
    let mut rows = vec![String::new(); 5];
    for (at, one) in text.chars().enumerate() {
        let dots = letter(one)?;
        for (row, dots) in rows.iter_mut().zip(dots) {
            if at > 0 {
                row.extend(std::iter::repeat_n(' ', across.div_ceil(2)));
            }
            for dot in dots.chars() {
                let block = if dot == '#' { '█' } else { ' ' };
                row.extend(std::iter::repeat_n(block, across));
            }
        }
    }
    Some(rows)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_stand_as_drawn() {
        let rows = rows("−7:5", 2).expect("every letter is there");
        let drawn = rows.join("\n");
        insta::assert_snapshot!(drawn, @r"
               ██████    ██████
                   ██ ██ ██    
        ██████     ██    ██████
                   ██ ██     ██
                   ██    ██████
        ");
    }

    #[test]
    fn every_row_of_a_letter_is_as_wide_as_the_others() {
        for one in "0123456789.,:+-−×klbgPinBodyms ".chars() {
            let dots = letter(one).expect("it is in this type");
            assert!(dots.iter().all(|row| row.len() == dots[0].len()), "{one}");
        }
        assert_eq!(rows("Band", 2), None);
    }
}
