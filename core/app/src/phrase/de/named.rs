//! Names of what a file writes in English: muscles, movements, and what an exercise is done with.

use barwright_domain::catalogue::{Catalogue, Movement, Muscle};

use super::{muscle, words};

/// What an exercise is lifted with or needs, by its word in the file; a word of the file's own
/// stays.
pub(super) fn thing(slug: &str) -> String {
    match slug {
        "barbell" => "Langhantel",
        "trap-bar" => "Trap-Bar",
        "ez-bar" => "SZ-Stange",
        "safety-bar" => "Safety-Stange",
        "swiss-bar" => "Multigriffstange",
        "dumbbell" => "Kurzhantel",
        "kettlebell" => "Kettlebell",
        "plate" => "Scheibe",
        "landmine" => "Landmine",
        "medicine-ball" => "Medizinball",
        "sled" => "Schlitten",
        "ab-wheel" => "Bauchroller",
        "band" => "Band",
        "bodyweight" => "Körpergewicht",
        "cable" => "Kabelzug",
        "pulldown" => "Latzug",
        "low-row" => "Ruderzug",
        "leg-press" => "Beinpresse",
        "hack-squat" => "Hackenschmidt-Maschine",
        "leg-extension" => "Beinstreckmaschine",
        "leg-curl" => "Beinbeugemaschine",
        "calf-machine" => "Wadenmaschine",
        "hip-adduction" => "Adduktorenmaschine",
        "hip-abduction" => "Abduktorenmaschine",
        "chest-press" => "Brustpresse",
        "shoulder-press" => "Schulterpresse",
        "row-machine" => "Rudermaschine",
        "pec-deck" => "Butterfly-Maschine",
        "assisted-pull-up" => "Klimmzughilfe",
        "rack" => "Rack",
        "bench" => "Bank",
        "incline-bench" => "Schrägbank",
        "pull-up-bar" => "Klimmzugstange",
        "dip-bars" => "Barren",
        "rings" => "Ringe",
        "box" => "Kasten",
        "back-extension-bench" => "Rückenstreckerbank",
        "slant-board" => "Keilbrett",
        "belt" => "Gürtel",
        "sandbag" => "Sandsack",
        "vest" => "Gewichtsweste",
        own => return own.replace('-', " "),
    }
    .to_owned()
}

/// Several, with commas.
pub(super) fn things(slugs: &[String]) -> String {
    slugs.iter().map(|slug| thing(slug)).collect::<Vec<_>>().join(", ")
}

/// A movement, by its word in the file.
pub(super) fn movement(slug: &str) -> String {
    match slug {
        "squat" => "Kniebeuge",
        "hinge" => "Heben aus der Hüfte",
        "lunge" => "Ausfallschritt",
        "bridge" => "Hüftheben",
        "horizontal-push" => "Drücken nach vorn",
        "horizontal-pull" => "Rudern",
        "vertical-push" => "Drücken über Kopf",
        "vertical-pull" => "Ziehen von oben",
        "quick-lift" => "Schnellkraftheben",
        "carry" => "Tragen",
        "sled" => "Schlitten",
        "jump" => "Springen",
        "throw" => "Werfen",
        "trunk-brace" => "Rumpf halten",
        "trunk-flexion" => "Rumpfbeugen",
        "trunk-extension" => "Rumpfstrecken",
        "trunk-side" => "Rumpfseitbeugen",
        "trunk-rotation" => "Rumpfdrehen",
        "knee-extension" => "Beinstrecken",
        "knee-flexion" => "Beinbeugen",
        "hip-extension" => "Hüftstrecken",
        "hip-flexion" => "Hüftbeugen",
        "hip-abduction" => "Bein abspreizen",
        "hip-adduction" => "Bein heranführen",
        "calf-raise" => "Wadenheben",
        "toe-raise" => "Zehenheben",
        "elbow-flexion" => "Armbeugen",
        "elbow-extension" => "Armstrecken",
        "wrist" => "Handgelenk",
        "shoulder-abduction" => "Seitheben",
        "shoulder-flexion" => "Frontheben",
        "shoulder-extension" => "Überzug",
        "chest-fly" => "Fliegende",
        "rear-fly" => "Fliegende rückwärts",
        "shoulder-rotation" => "Schulterrotation",
        "shrug" => "Schulterheben",
        "neck" => "Nacken",
        own => return own.replace('-', " "),
    }
    .to_owned()
}

/// Any such word, where it is not known of what: a movement goes first.
pub(super) fn any(slug: &str) -> String {
    if Movement::read(slug).is_some() {
        return movement(slug);
    }
    match Muscle::read(slug) {
        Some(of) => muscle::in_line(of).to_owned(),
        None => thing(slug),
    }
}

/// An exercise that a set goes over to, by its slug.
pub(super) fn exercise(slug: &str) -> String {
    Catalogue::builtin().get(slug).map_or_else(|| slug.replace('-', " "), words::exercise)
}

/// What a gym has, by its own name: what comes with the program is named in English there.
pub(super) fn gear(name: &str) -> &str {
    match name {
        "Kilogram gym" => "Kraftraum in Kilogramm",
        "Pound gym" => "Kraftraum in Pfund",
        "Long bar" => "Langhantelstange",
        "Short bar" => "Kurze Stange",
        "Competition bar" => "Wettkampfstange",
        "Hex bar" => "Trap-Bar",
        "Curl bar" => "SZ-Stange",
        "Dumbbells" => "Kurzhanteln",
        "Light dumbbells" => "Leichte Kurzhanteln",
        "Medicine balls" => "Medizinbälle",
        "Cable column" => "Kabelzug",
        "Pulldown" => "Latzug",
        "Low row" => "Ruderzug",
        "Leg extension" => "Beinstreckmaschine",
        "Leg curl" => "Beinbeugemaschine",
        "Assisted pull-up" => "Klimmzughilfe",
        "Leg press" => "Beinpresse",
        "Sled" => "Schlitten",
        own => own,
    }
}
