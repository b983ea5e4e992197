//! Units, bars, plates and collars, and loads solved elsewhere.

use barwright_domain::catalogue::Catalogue;
use barwright_domain::equipment::{Bar, Equipment, Fit, Plate, PlateStock, builtin_in};
use barwright_domain::quantity::{Length, Mass, MassUnit, Numerals, Percent, Rounding};

fn mass(text: &str) -> Mass {
    Mass::read(text, Numerals::Point).unwrap()
}

fn gym(bar: &str, collars: &str, plates: &[(&str, u8)]) -> Equipment {
    let bar = Bar {
        name: "Bar".into(),
        kind: "barbell".into(),
        mass: mass(bar),
        collars: mass(collars),
        sleeve: None,
    };
    let stock = |(label, pairs): &(&str, u8)| PlateStock {
        label: (*label).into(),
        mass: mass(label),
        pairs: *pairs,
        single: 0,
        thickness: None,
        diameter: None,
        colour: None,
    };
    let plates = plates.iter().map(stock).collect();
    Equipment { name: "Boathouse".into(), bars: vec![bar], plates, ..Equipment::default() }
}

/// The built-in gym of kilograms.
fn kilograms() -> Equipment {
    builtin_in(MassUnit::Kilogram)
}

fn side(gym: &Equipment, load: &str) -> (Mass, Vec<String>) {
    let made = gym.make("barbell", mass(load), Fit::Nearest).unwrap();
    let label = |plate: &Plate| plate.label.clone();
    (made.made, made.rig.side().iter().map(label).collect())
}

/// Published: Thompson & Taylor 2008, Guide for the Use of the International System of Units (NIST
/// SP 811), App. B.8 with its footnote, and NIST Handbook 44, App. C:
/// 1 lb = 0.453 592 37 kg exactly. The products are computed from it and exact.
#[test]
fn pounds_in_kilograms() {
    for (pounds, kilograms) in [
        ("1 lb", "0.45359237"),
        ("2.5 lb", "1.133980925"),
        ("5 lb", "2.26796185"),
        ("10 lb", "4.5359237"),
        ("25 lb", "11.33980925"),
        ("35 lb", "15.87573295"),
        ("45 lb", "20.41165665"),
        ("135 lb", "61.23496995"),
        ("225 lb", "102.05828325"),
        ("315 lb", "142.88159655"),
        ("405 lb", "183.70490985"),
    ] {
        assert_eq!(mass(pounds).kilograms(), kilograms, "{pounds}");
    }
}

/// Computed from the same definition, to six places; shown here to the two places we print.
#[test]
fn kilograms_in_pounds() {
    for (kilograms, pounds) in [
        ("1.25 kg", "2.76 lb"),  // 2.755778
        ("20 kg", "44.09 lb"),   // 44.092452
        ("25 kg", "55.12 lb"),   // 55.115566
        ("100 kg", "220.46 lb"), // 220.462262
        ("140 kg", "308.65 lb"), // 308.647167
    ] {
        assert_eq!(mass(kilograms).print(MassUnit::Pound, Numerals::Point), pounds);
    }
}

/// Published: NIST SP 811 (2008), App. B.7.1: exactly half goes to the even digit, above it up.
#[test]
fn halves_go_to_the_even_digit() {
    let step = mass("0.000001 kg");
    for (value, rounded) in [("6.9749515 kg", "6.974952"), ("6.9749505 kg", "6.97495")] {
        let made = mass(value).to_multiple(step, Rounding::HalfEven).unwrap();
        assert_eq!(made.kilograms(), rounded);
    }
}

/// Published: IWF Technical and Competition Rules & Regulations 3.3 (men's bar 20 kg, women's
/// 15 kg, collars 2.5 kg each and counted in the load) and IPF Technical Rules (bar and collars
/// 25 kg).
#[test]
fn the_empty_bar_with_collars() {
    let plates = [("25 kg", 1)];
    assert_eq!(side(&gym("20 kg", "5 kg", &plates), "0 kg"), (mass("25 kg"), vec![]));
    assert_eq!(side(&gym("15 kg", "5 kg", &plates), "0 kg"), (mass("20 kg"), vec![]));
}

/// Published: IWF 3.3.3 for the colours of 25, 20, 15 and 10 kg, 5 kg white, 2.5 kg red and 0.5 kg
/// white: the built-in gym of kilograms keeps to them.
#[test]
fn the_built_in_plates_have_the_rule_books_colours() {
    let gym = kilograms();
    for (label, colour) in [
        ("25 kg", "red"),
        ("20 kg", "blue"),
        ("15 kg", "yellow"),
        ("10 kg", "green"),
        ("5 kg", "white"),
        ("2.5 kg", "red"),
        ("0.5 kg", "white"),
    ] {
        let stock = gym.plates.iter().find(|stock| stock.label == label).unwrap();
        assert_eq!(stock.colour.as_deref(), Some(colour), "{label}");
    }
}

const KILOGRAMS: [(&str, u8); 7] = [
    ("25 kg", 8),
    ("20 kg", 8),
    ("15 kg", 8),
    ("10 kg", 8),
    ("5 kg", 8),
    ("2.5 kg", 8),
    ("1.25 kg", 8),
];

/// Computed with OR-Tools CP-SAT: bar and collars 25 kg, the fewest plates on one side.
#[test]
fn the_fewest_plates_for_a_competition_bar() {
    let gym = gym("20 kg", "5 kg", &KILOGRAMS);
    for (load, plates) in [
        ("60 kg", vec!["15 kg", "2.5 kg"]),
        ("100 kg", vec!["25 kg", "10 kg", "2.5 kg"]),
        ("142.5 kg", vec!["25 kg", "25 kg", "5 kg", "2.5 kg", "1.25 kg"]),
        ("227.5 kg", vec!["25 kg", "25 kg", "25 kg", "25 kg", "1.25 kg"]),
    ] {
        let (made, side) = side(&gym, load);
        assert_eq!(made, mass(load));
        assert_eq!(side, plates, "{load}");
    }
}

/// Computed with CP-SAT: one pair each of 25, 20 and 10, a side of 30: taking the largest that
/// fits ends at 25.
#[test]
fn the_largest_that_fits_is_not_always_right() {
    let gym = gym("20 kg", "0 kg", &[("25 kg", 1), ("20 kg", 1), ("10 kg", 1)]);
    assert_eq!(side(&gym, "80 kg").1, ["20 kg", "10 kg"]);
}

/// Computed by dynamic programming: pounds with 45, 35, 25, 10, 5 and 2.5, where taking the largest
/// first takes more plates than are needed for these side loads.
#[test]
fn the_largest_first_is_not_always_the_fewest_in_pounds() {
    let labels = ["45 lb", "35 lb", "25 lb", "10 lb", "5 lb", "2.5 lb"];
    let gym = gym("45 lb", "0 lb", &labels.map(|label| (label, 8)));
    assert_eq!(side(&gym, "165 lb").1, ["35 lb", "25 lb"]);
    let largest_first = |mut tenths: u32| {
        let plates = [450, 350, 250, 100, 50, 25].map(|plate| {
            let count = tenths / plate;
            tenths -= plate * count;
            count
        });
        plates.iter().sum::<u32>()
    };
    for tenths in [600, 625, 1050, 1075, 1500, 1525, 1950, 1975] {
        let load = format!("{}.{} lb", 45 + 2 * tenths / 10, 2 * tenths % 10);
        let (made, side) = side(&gym, &load);
        assert_eq!(made, mass(&load));
        assert!((side.len() as u32) < largest_first(tenths), "{load}");
    }
}

/// Computed: with plenty of 25/20/15/10/5/2.5/1.25 kg, and of 45/25/10/5/2.5 lb, the largest first
/// is the fewest for every side load to 200 in steps of 0.25 that can be made.
#[test]
fn with_plenty_of_usual_plates_the_largest_first_is_the_fewest() {
    let pounds = ["45 lb", "25 lb", "10 lb", "5 lb", "2.5 lb"].map(|label| (label, 8));
    let hundredths =
        [vec![2500, 2000, 1500, 1000, 500, 250, 125], vec![4500, 2500, 1000, 500, 250]];
    for (gym, plates) in
        [gym("20 kg", "0 kg", &KILOGRAMS), gym("20 lb", "0 lb", &pounds)].iter().zip(hundredths)
    {
        let unit = if plates.len() == 7 { "kg" } else { "lb" };
        for quarter in 0..=800_u32 {
            let mut rest = 25 * quarter;
            let fewest: u32 = plates
                .iter()
                .map(|plate| {
                    let count = rest / plate;
                    rest -= plate * count;
                    count
                })
                .sum();
            if rest > 0 {
                continue;
            }
            let load = format!("{}.{} {unit}", 20 + quarter / 2, 5 * (quarter % 2));
            let (made, side) = side(gym, &load);
            assert_eq!((made, side.len() as u32), (mass(&load), fewest), "{load}");
        }
    }
}

/// Computed with CP-SAT and HiGHS: a side's stock of 2 × 20, 15, 10, 5, 2.5 and 1.25 has 60 loads,
/// the heaviest 73.75.
#[test]
fn a_sides_stock_has_so_many_loads() {
    let stock =
        [("20 kg", 2), ("15 kg", 1), ("10 kg", 1), ("5 kg", 1), ("2.5 kg", 1), ("1.25 kg", 1)];
    let gym = gym("20 kg", "0 kg", &stock);
    let mut loads = vec![gym.make("barbell", Mass::ZERO, Fit::Nearest).unwrap().made];
    while let Some(next) = gym.step_above("barbell", *loads.last().unwrap()) {
        loads.push(next.made);
    }
    // With the empty bar.
    assert_eq!(loads.len(), 60);
    assert_eq!(loads.last(), Some(&mass("167.5 kg")));
    let mut down = vec![*loads.last().unwrap()];
    while let Some(next) = gym.step_below("barbell", *down.last().unwrap()) {
        down.push(next.made);
    }
    down.reverse();
    assert_eq!(down, loads);
}

/// International Weightlifting Federation, Technical and Competition Rules & Regulations, 3.3 "Sport
/// equipment" (so numbered in the editions of 2013 to 2020), published: bars of 2200 and 2010 mm with
/// 1310 mm between the sleeves leave 445 and 350 mm at each end. No sleeve of the built-in gym is
/// longer.
#[test]
fn no_sleeve_is_longer_than_a_bar_leaves() {
    let gym = kilograms();
    for (mass_of, at_most) in [("20 kg", "445 mm"), ("15 kg", "350 mm")] {
        let at_most = Length::read(at_most, Numerals::Point).unwrap();
        let bars = gym.bars.iter().filter(|bar| bar.mass == mass(mass_of));
        let sleeves: Vec<_> = bars.filter_map(|bar| bar.sleeve).collect();
        assert!(!sleeves.is_empty() && sleeves.iter().all(|one| *one <= at_most), "{mass_of}");
    }
}

/// The same and International Powerlifting Federation, Technical Rules Book, "Bars and discs" (so named
/// in the edition of 24 November 2014), published: bar and collars weigh 25 kg; the
/// lightest that the built-in competition bar makes is 25 kg, and what a meet's smallest plates then
/// add is 2.5 kg at a time.
#[test]
fn a_competition_bar_starts_at_25() {
    let gym = kilograms();
    let lightest = gym.make("competition-bar", Mass::ZERO, Fit::Over).unwrap().made;
    assert_eq!(lightest, mass("25 kg"));
    for step in 0..40 {
        let load = mass("25 kg").checked_add(mass("2.5 kg").checked_mul(step).unwrap()).unwrap();
        assert_eq!(gym.make("competition-bar", load, Fit::Nearest).unwrap().made, load);
    }
}

/// IWF, the same rules, 3.3.3, published: parts are made of 25, 20, 15, 10, 5, 2.5, 2, 1.5, 1 and 0.5 kg. Every plate
/// of the built-in gym is one of them but for the 1.25 kg, which is the IPF's (Technical Rules Book,
/// "Bars and discs", from memory).
#[test]
fn built_in_plates_are_the_rule_books() {
    let book = ["25", "20", "15", "10", "5", "2.5", "2", "1.5", "1", "0.5", "1.25"];
    let book = book.map(|kilograms| mass(&format!("{kilograms} kg")));
    assert!(kilograms().plates.iter().all(|stock| book.contains(&stock.mass)));
}

/// International Powerlifting Federation, Technical Rules Book, "Bars and discs" (so named in the
/// edition of 24 November 2014), published: a disc may be off by 0.25 % or 10 g, whichever
/// is more. So two of any size that the built-in gym has are off by less than the smallest step it
/// makes: what is called is what is on.
#[test]
fn a_pair_is_off_by_less_than_a_step() {
    let gym = kilograms();
    let empty = gym.make("barbell", mass("20 kg"), Fit::Nearest).unwrap().made;
    let step = gym.step_above("barbell", empty).unwrap().made.distance(empty);
    for stock in &gym.plates {
        let off = (stock.mass.nanograms() / 400).max(mass("0.01 kg").nanograms());
        assert!(2 * off < step.nanograms(), "{}", stock.label);
    }
}

/// Mier, Amasay, Capehart, Garner 2014, "Differences between men and women in percentage of body weight
/// supported during push-up exercise", Int J Exerc Sci 7(2):161–168 (abstract), published: held still
/// at the top or the bottom of a push-up the hands carry 65.1 to 74.6 % of the body.
#[test]
fn a_push_up_moves_two_thirds_of_the_body() {
    let catalogue = Catalogue::builtin();
    let share = catalogue.get("push-up").unwrap().body_share;
    assert!(Percent::whole(65) <= share && share <= Percent::whole(75));
}
