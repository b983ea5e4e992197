//! German names of the built-in exercises, and German words that they are looked for by: as a
//! German-speaking coach says them, which is common practice. Where the trade says the English word
//! in German, it stands.

use super::{Movement, Muscle};

/// The German names of a built-in exercise, the first as it is shown. One without any does not
/// compile.
#[expect(
    clippy::indexing_slicing,
    clippy::panic,
    reason = "worked out by the compiler: what would panic does not compile"
)]
pub(super) const fn names(slug: &str) -> &'static [&'static str] {
    let mut at = 0;
    while at < NAMES.len() {
        if same(NAMES[at].0, slug) {
            return NAMES[at].1;
        }
        at += 1;
    }
    panic!("a built-in exercise has no German name")
}

/// Whether two slugs are the same: text is not compared by `==` at compile time.
#[expect(clippy::indexing_slicing, reason = "worked out by the compiler, as above")]
const fn same(one: &str, other: &str) -> bool {
    let (one, other) = (one.as_bytes(), other.as_bytes());
    if one.len() != other.len() {
        return false;
    }
    let mut at = 0;
    while at < one.len() {
        if one[at] != other[at] {
            return false;
        }
        at += 1;
    }
    true
}

#[rustfmt::skip]
const NAMES: &[(&str, &[&str])] = &[
    // Squats and leg presses
    ("back-squat", &["Kniebeuge", "Kniebeugen", "Kniebeuge hinten", "Nackenkniebeuge", "Langhantelkniebeuge"]),
    ("front-squat", &["Frontkniebeuge", "Frontkniebeugen", "Kniebeuge vorn"]),
    ("box-squat", &["Box-Kniebeuge", "Kastenkniebeuge"]),
    ("overhead-squat", &["Überkopfkniebeuge", "Reißkniebeuge"]),
    ("landmine-squat", &["Landmine-Kniebeuge"]),
    ("goblet-squat", &["Goblet Squat", "Goblet-Kniebeuge"]),
    ("double-kettlebell-squat", &["Frontkniebeuge mit zwei Kettlebells", "Kettlebell-Frontkniebeuge"]),
    ("leg-press", &["Beinpresse", "Beinpressen"]),
    ("one-leg-press", &["Einbeinige Beinpresse", "Beinpresse einbeinig"]),
    ("hack-squat", &["Hack Squat", "Hack-Kniebeuge"]),
    ("bodyweight-squat", &["Kniebeuge ohne Gewicht", "Kniebeugen ohne Gewicht", "Kniebeuge mit Körpergewicht"]),
    ("pistol-squat", &["Einbeinige Kniebeuge", "Kniebeuge einbeinig"]),
    ("wall-sit", &["Wandsitzen", "Wandsitz"]),

    // Hinges and pulls from the floor
    ("deadlift", &["Kreuzheben", "Konventionelles Kreuzheben", "Kreuzheben konventionell"]),
    ("sumo-deadlift", &["Sumo-Kreuzheben", "Kreuzheben Sumo"]),
    ("romanian-deadlift", &["Rumänisches Kreuzheben", "Kreuzheben rumänisch"]),
    ("deficit-deadlift", &["Defizit-Kreuzheben", "Kreuzheben mit erhöhtem Stand"]),
    ("rack-pull", &["Rack Pull", "Kreuzheben aus dem Rack", "Teilkreuzheben"]),
    ("good-morning", &["Good Morning", "Good Mornings", "Rumpfbeuge mit der Langhantel"]),
    ("trap-bar-deadlift", &["Trap-Bar-Kreuzheben", "Kreuzheben mit der Trap-Bar", "Hexbar-Kreuzheben"]),
    ("dumbbell-romanian-deadlift", &["Rumänisches Kreuzheben mit Kurzhanteln", "KH-Kreuzheben rumänisch"]),
    ("one-leg-romanian-deadlift", &["Einbeiniges rumänisches Kreuzheben", "Einbeiniges Kreuzheben", "Kreuzheben einbeinig"]),
    ("kettlebell-deadlift", &["Kettlebell-Kreuzheben", "Kreuzheben mit der Kettlebell"]),
    ("cable-pull-through", &["Pull-through am Kabelzug", "Durchziehen am Kabelzug"]),

    // One leg or a split stance
    ("barbell-split-squat", &["Split-Kniebeuge mit der Langhantel", "Ausfallkniebeuge mit der Langhantel"]),
    ("barbell-lunge", &["Ausfallschritt mit der Langhantel", "Ausfallschritte mit der Langhantel", "Langhantel-Ausfallschritt"]),
    ("split-squat", &["Split-Kniebeuge", "Ausfallkniebeuge", "Split-Kniebeuge mit Kurzhanteln"]),
    ("rear-foot-raised-split-squat", &["Bulgarische Split-Kniebeuge", "Bulgarische Kniebeuge", "Bulgarian Split Squat"]),
    ("walking-lunge", &["Ausfallschritt im Gehen", "Ausfallschritte im Gehen", "Ausfallschritt", "Ausfallschritte"]),
    ("reverse-lunge", &["Ausfallschritt rückwärts", "Ausfallschritte rückwärts", "Ausfallschritt nach hinten"]),
    ("step-up", &["Step-up", "Step-ups", "Aufsteiger", "Aufsteigen auf den Kasten"]),
    ("side-lunge", &["Ausfallschritt zur Seite", "Seitlicher Ausfallschritt", "Ausfallschritt seitlich"]),

    // Bridges
    ("hip-thrust", &["Hip Thrust", "Hip Thrusts", "Hüftstoß"]),
    ("glute-bridge", &["Beckenheben", "Beckenheben mit der Langhantel", "Hüftbrücke"]),
    ("one-leg-bridge", &["Einbeiniges Beckenheben", "Beckenheben einbeinig", "Einbeinige Hüftbrücke"]),

    // Presses from the chest
    ("bench-press", &["Bankdrücken", "Flachbankdrücken", "Langhantel-Bankdrücken", "Bankdrücken mit der Langhantel", "LH-Bankdrücken"]),
    ("close-grip-bench-press", &["Enges Bankdrücken", "Bankdrücken eng", "Bankdrücken mit engem Griff"]),
    ("incline-bench-press", &["Schrägbankdrücken", "Schrägbankdrücken mit der Langhantel", "LH-Schrägbankdrücken"]),
    ("floor-press", &["Bodendrücken", "Bankdrücken am Boden"]),
    ("dumbbell-bench-press", &["Kurzhantel-Bankdrücken", "Bankdrücken mit Kurzhanteln", "KH-Bankdrücken"]),
    ("dumbbell-incline-press", &["Kurzhantel-Schrägbankdrücken", "Schrägbankdrücken mit Kurzhanteln", "KH-Schrägbankdrücken"]),
    ("dumbbell-floor-press", &["Bodendrücken mit Kurzhanteln", "Kurzhantel-Bodendrücken"]),
    ("chest-press", &["Brustpresse", "Brustdrücken an der Maschine"]),
    ("cable-chest-press", &["Brustdrücken am Kabelzug", "Brustpresse am Kabelzug"]),
    ("push-up", &["Liegestütz", "Liegestütze", "Liegestützen"]),
    ("ring-push-up", &["Liegestütz an Ringen", "Liegestütze an Ringen", "Ring-Liegestütz"]),

    // Presses overhead, and dips
    ("overhead-press", &["Schulterdrücken", "Überkopfdrücken", "Schulterdrücken mit der Langhantel", "Langhantel-Schulterdrücken", "LH-Schulterdrücken"]),
    ("push-press", &["Push Press", "Schwungdrücken"]),
    ("landmine-press", &["Landmine Press", "Landmine-Drücken"]),
    ("dumbbell-shoulder-press", &["Kurzhantel-Schulterdrücken", "Schulterdrücken mit Kurzhanteln", "KH-Schulterdrücken", "Überkopfdrücken mit Kurzhanteln"]),
    ("one-arm-dumbbell-press", &["Einarmiges Schulterdrücken", "Schulterdrücken einarmig", "Einarmiges Kurzhanteldrücken"]),
    ("kettlebell-press", &["Kettlebell-Drücken", "Schulterdrücken mit der Kettlebell", "Kettlebell-Schulterdrücken"]),
    ("machine-shoulder-press", &["Schulterpresse", "Schulterdrücken an der Maschine"]),
    ("dip", &["Dips", "Dips am Barren", "Barren-Dips", "Barrenstütz", "Beugestütz"]),
    ("ring-dip", &["Dips an Ringen", "Ring-Dips"]),
    ("handstand-push-up", &["Handstand-Liegestütz", "Liegestütz im Handstand", "Handstanddrücken"]),

    // Rows
    ("barbell-row", &["Rudern vorgebeugt", "Vorgebeugtes Rudern", "Langhantelrudern", "LH-Rudern", "Rudern mit der Langhantel"]),
    ("prone-row", &["Bankziehen", "Rudern in Bauchlage"]),
    ("landmine-row", &["Landmine-Rudern", "T-Bar-Rudern", "T-Hantel-Rudern"]),
    ("dumbbell-row", &["Kurzhantelrudern", "Kurzhantelrudern einarmig", "Einarmiges Kurzhantelrudern", "KH-Rudern", "Einarmiges Rudern"]),
    ("chest-supported-row", &["Kurzhantelrudern auf der Schrägbank", "Rudern auf der Schrägbank"]),
    ("seated-cable-row", &["Kabelrudern", "Kabelrudern sitzend", "Rudern am Kabelzug", "Rudern sitzend"]),
    ("one-arm-cable-row", &["Einarmiges Kabelrudern", "Kabelrudern einarmig"]),
    ("low-row", &["Tiefes Rudern", "Rudern am tiefen Zug"]),
    ("machine-row", &["Rudern an der Maschine", "Maschinenrudern"]),
    ("inverted-row", &["Umgekehrtes Rudern", "Rudern im Liegehang", "Australischer Klimmzug", "Australische Klimmzüge"]),
    ("ring-row", &["Rudern an Ringen", "Ringrudern"]),

    // Pull-ups and pulldowns
    ("pull-up", &["Klimmzug", "Klimmzüge", "Klimmzug im Obergriff", "Klimmzüge im Obergriff"]),
    ("chin-up", &["Klimmzug im Untergriff", "Klimmzüge im Untergriff"]),
    ("neutral-grip-pull-up", &["Klimmzug im Neutralgriff", "Klimmzüge im Neutralgriff", "Klimmzug im Parallelgriff", "Klimmzug im Hammergriff"]),
    ("assisted-pull-up", &["Klimmzug mit Unterstützung", "Klimmzüge mit Unterstützung", "Klimmzug an der Maschine"]),
    ("band-assisted-pull-up", &["Klimmzug mit Band", "Klimmzüge mit Band"]),
    ("pulldown", &["Latzug", "Latziehen", "Latzug zur Brust"]),
    ("close-grip-pulldown", &["Latzug eng", "Enger Latzug", "Latziehen eng"]),
    ("one-arm-pulldown", &["Einarmiger Latzug", "Latzug einarmig"]),

    // Quick lifts
    ("power-clean", &["Standumsetzen", "Umsetzen in den Stand"]),
    ("hang-power-clean", &["Standumsetzen aus dem Hang", "Umsetzen aus dem Hang"]),
    ("clean", &["Umsetzen", "Umsetzen in die Hocke"]),
    ("clean-pull", &["Zug eng", "Umsetzzug"]),
    ("power-snatch", &["Standreißen", "Reißen in den Stand"]),
    ("jerk", &["Ausstoßen", "Ausstoß"]),
    ("kettlebell-swing", &["Kettlebell-Swing", "Kettlebell-Swings", "Kettlebell-Schwingen"]),

    // Carries and sleds
    ("farmer-carry", &["Farmer's Walk", "Farmer's Walks", "Koffertragen", "Kofferlaufen"]),
    ("trap-bar-carry", &["Tragen mit der Trap-Bar", "Trap-Bar-Tragen", "Farmer's Walk mit der Trap-Bar"]),
    ("suitcase-carry", &["Einseitiges Koffertragen", "Koffertragen einseitig", "Koffertragen einarmig"]),
    ("front-rack-carry", &["Tragen im Front-Rack", "Front-Rack-Tragen"]),
    ("overhead-carry", &["Überkopftragen", "Tragen über Kopf"]),
    ("sled-push", &["Schlittenschieben", "Gewichtsschlitten schieben"]),
    ("sled-drag", &["Schlittenziehen rückwärts", "Schlittenziehen"]),

    // Jumps and throws
    ("box-jump", &["Kastensprung", "Kastensprünge", "Sprung auf den Kasten"]),
    ("broad-jump", &["Standweitsprung", "Weitsprung aus dem Stand"]),
    ("loaded-jump", &["Sprungkniebeuge mit Gewicht", "Kniebeugesprung mit Gewicht"]),
    ("chest-throw", &["Brustwurf mit dem Medizinball", "Medizinball-Brustwurf"]),
    ("rotational-throw", &["Rotationswurf mit dem Medizinball", "Medizinball-Rotationswurf", "Medizinball-Drehwurf"]),
    ("overhead-throw", &["Überkopfwurf mit dem Medizinball", "Medizinball-Überkopfwurf"]),

    // Trunk
    ("plank", &["Unterarmstütz", "Planke"]),
    ("ab-wheel-rollout", &["Rollout mit dem Bauchroller", "Bauchroller", "Bauchrad"]),
    ("dead-bug", &["Dead Bug", "Käfer"]),
    ("side-plank", &["Seitstütz", "Seitlicher Unterarmstütz", "Unterarmstütz seitlich"]),
    ("side-bend", &["Seitbeuge", "Seitbeugen", "Seitbeuge mit der Kurzhantel"]),
    ("cable-press-out", &["Press-out am Kabelzug", "Antirotation am Kabelzug"]),
    ("cable-chop", &["Holzhacker am Kabelzug", "Holzhacker"]),
    ("cable-crunch", &["Crunch am Kabelzug", "Crunches am Kabelzug"]),
    ("crunch", &["Crunch", "Crunches"]),
    ("hanging-leg-raise", &["Beinheben im Hang", "Hängendes Beinheben", "Beinheben hängend"]),
    ("back-extension", &["Rückenstrecken", "Rückenstrecker", "Hyperextension", "Hyperextensions"]),

    // Hip, knee and ankle alone
    ("leg-extension", &["Beinstrecken", "Beinstrecker"]),
    ("one-leg-extension", &["Einbeiniges Beinstrecken", "Beinstrecken einbeinig", "Beinstrecker einbeinig"]),
    ("leg-curl", &["Beinbeugen", "Beinbeuger"]),
    ("one-leg-curl", &["Einbeiniges Beinbeugen", "Beinbeugen einbeinig", "Beinbeuger einbeinig"]),
    ("nordic-curl", &["Nordic Curl", "Nordic Curls", "Nordische Beinbeuge"]),
    ("cable-kickback", &["Hüftstrecken am Kabelzug", "Kickback am Kabelzug", "Kickbacks am Kabelzug"]),
    ("cable-hip-flexion", &["Hüftbeugen am Kabelzug"]),
    ("hip-abduction", &["Abduktorenmaschine", "Abduktion an der Maschine", "Hüftabduktion", "Abduktoren"]),
    ("band-walk", &["Seitgehen mit Band", "Seitschritte mit Band"]),
    ("hip-adduction", &["Adduktorenmaschine", "Adduktion an der Maschine", "Hüftadduktion", "Adduktoren"]),
    ("adductor-plank", &["Adduktoren-Seitstütz", "Seitstütz für die Adduktoren"]),
    ("standing-calf-raise", &["Wadenheben stehend", "Wadenheben", "Stehendes Wadenheben", "Wadenheben im Stehen"]),
    ("seated-calf-raise", &["Wadenheben sitzend", "Sitzendes Wadenheben", "Wadenheben im Sitzen"]),
    ("one-leg-calf-raise", &["Einbeiniges Wadenheben", "Wadenheben einbeinig"]),
    ("toe-raise", &["Zehenheben", "Zehenheben mit Band", "Fußheben"]),

    // Elbow and wrist
    ("barbell-curl", &["Langhantel-Curl", "Langhantelcurls", "Bizepscurl mit der Langhantel", "LH-Curl", "LH-Curls"]),
    ("ez-bar-curl", &["SZ-Curl", "SZ-Curls", "Bizepscurl mit der SZ-Stange"]),
    ("dumbbell-curl", &["Kurzhantel-Curl", "Kurzhantelcurls", "Bizepscurl mit Kurzhanteln", "KH-Curl", "KH-Curls"]),
    ("hammer-curl", &["Hammercurl", "Hammercurls"]),
    ("incline-curl", &["Schrägbank-Curl", "Schrägbankcurls", "Kurzhantel-Curl auf der Schrägbank"]),
    ("cable-curl", &["Curl am Kabelzug", "Curls am Kabelzug", "Bizepscurl am Kabelzug"]),
    ("lying-triceps-extension", &["Trizepsstrecken liegend", "Liegendes Trizepsstrecken", "Stirndrücken", "French Press"]),
    ("overhead-triceps-extension", &["Trizepsstrecken über Kopf", "Überkopf-Trizepsstrecken"]),
    ("triceps-pushdown", &["Trizepsdrücken", "Trizepsdrücken am Kabelzug"]),
    ("wrist-curl", &["Handgelenkcurl", "Handgelenkcurls", "Unterarmcurl", "Unterarmcurls"]),
    ("dead-hang", &["Aushängen", "Hängen an der Stange"]),

    // Shoulder and neck alone
    ("lateral-raise", &["Seitheben", "Seitheben mit Kurzhanteln", "KH-Seitheben"]),
    ("cable-lateral-raise", &["Seitheben am Kabelzug", "Kabel-Seitheben"]),
    ("plate-front-raise", &["Frontheben mit der Scheibe", "Frontheben"]),
    ("straight-arm-pulldown", &["Überzug am Kabelzug", "Kabelüberzug", "Latziehen mit gestreckten Armen"]),
    ("pullover", &["Überzug", "Überzüge", "Überzug mit der Kurzhantel"]),
    ("dumbbell-fly", &["Fliegende", "Fliegende mit Kurzhanteln", "Kurzhantel-Fliegende"]),
    ("cable-fly", &["Fliegende am Kabelzug", "Kabelziehen über Kreuz"]),
    ("pec-deck", &["Butterfly", "Butterfly an der Maschine", "Fliegende an der Maschine"]),
    ("rear-deltoid-raise", &["Seitheben vorgebeugt", "Vorgebeugtes Seitheben"]),
    ("face-pull", &["Face Pull", "Face Pulls"]),
    ("reverse-fly", &["Butterfly Reverse", "Reverse Butterfly"]),
    ("external-rotation", &["Außenrotation am Kabelzug", "Außenrotation"]),
    ("barbell-shrug", &["Langhantel-Shrug", "Langhantel-Shrugs", "Schulterheben mit der Langhantel"]),
    ("dumbbell-shrug", &["Kurzhantel-Shrug", "Kurzhantel-Shrugs", "Schulterheben mit Kurzhanteln"]),
    ("neck-flexion", &["Nackenbeugen", "Nackenbeuge"]),
    ("neck-extension", &["Nackenstrecken", "Nackenstrecke"]),
];

/// Words for a muscle, in small letters.
pub(super) const fn muscle(muscle: Muscle) -> &'static str {
    match muscle {
        Muscle::Chest => "brust brustmuskel",
        Muscle::FrontDeltoid => "vordere schulter deltamuskel",
        Muscle::SideDeltoid => "seitliche schulter deltamuskel",
        Muscle::RearDeltoid => "hintere schulter deltamuskel",
        Muscle::RotatorCuff => "rotatorenmanschette",
        Muscle::Serratus => "sägemuskel",
        Muscle::Lats => "latissimus rücken",
        Muscle::UpperBack => "oberer rücken",
        Muscle::UpperTrapezius => "oberer trapezmuskel nacken",
        Muscle::Biceps => "bizeps",
        Muscle::Triceps => "trizeps",
        Muscle::Forearms => "unterarm griffkraft",
        Muscle::Abdominals => "bauch bauchmuskeln",
        Muscle::Obliques => "schräge bauchmuskeln",
        Muscle::SpinalErectors => "rückenstrecker unterer rücken",
        Muscle::Glutes => "gesäß po",
        Muscle::HipAbductors => "hüftabduktoren abduktoren",
        Muscle::Adductors => "adduktoren",
        Muscle::HipFlexors => "hüftbeuger",
        Muscle::Quadriceps => "quadrizeps beinstrecker",
        Muscle::Hamstrings => "beinbeuger",
        Muscle::Calves => "waden",
        Muscle::Shins => "schienbein",
        Muscle::Neck => "hals nacken",
    }
}

/// Words for a movement, in small letters.
pub(super) const fn movement(movement: Movement) -> &'static str {
    match movement {
        Movement::Squat => "kniebeuge",
        Movement::Hinge => "hüftbeuge kreuzheben",
        Movement::Lunge => "ausfallschritt",
        Movement::Bridge => "brücke",
        Movement::HorizontalPush => "horizontales drücken",
        Movement::HorizontalPull => "horizontales ziehen rudern",
        Movement::VerticalPush => "vertikales drücken",
        Movement::VerticalPull => "vertikales ziehen",
        Movement::QuickLift => "schnellkraft gewichtheben",
        Movement::Carry => "tragen",
        Movement::Sled => "schlitten",
        Movement::Jump => "sprung springen",
        Movement::Throw => "wurf werfen",
        Movement::TrunkBrace => "rumpf stabilisieren",
        Movement::TrunkFlexion => "rumpf beugen",
        Movement::TrunkExtension => "rumpf strecken",
        Movement::TrunkSide => "rumpf seitlich",
        Movement::TrunkRotation => "rumpf drehen rotation",
        Movement::KneeExtension => "knie strecken",
        Movement::KneeFlexion => "knie beugen",
        Movement::HipExtension => "hüfte strecken",
        Movement::HipFlexion => "hüfte beugen",
        Movement::HipAbduction => "hüfte abspreizen abduktion",
        Movement::HipAdduction => "hüfte heranziehen adduktion",
        Movement::CalfRaise => "wadenheben",
        Movement::ToeRaise => "zehenheben",
        Movement::ElbowFlexion => "ellbogen ellenbogen beugen",
        Movement::ElbowExtension => "ellbogen ellenbogen strecken",
        Movement::Wrist => "handgelenk griff",
        Movement::ShoulderAbduction => "schulter seitheben",
        Movement::ShoulderFlexion => "schulter frontheben",
        Movement::ShoulderExtension => "schulter strecken überzug",
        Movement::ChestFly => "fliegende",
        Movement::RearFly => "fliegende rückwärts",
        Movement::ShoulderRotation => "schulter rotation",
        Movement::Shrug => "schulterheben",
        Movement::Neck => "hals nacken",
    }
}

/// Words for what an exercise is loaded with or needs, in small letters; none for what a gym or a
/// plan calls by a word of its own.
pub(super) fn thing(slug: &str) -> &'static str {
    match slug {
        "barbell" => "langhantel",
        "trap-bar" => "hexbar",
        "ez-bar" => "sz-stange",
        "dumbbell" => "kurzhantel",
        "plate" => "hantelscheibe scheibe",
        "medicine-ball" => "medizinball",
        "sled" => "schlitten gewichtsschlitten",
        "ab-wheel" => "bauchroller bauchrad",
        "band" => "widerstandsband",
        "bodyweight" => "körpergewicht",
        "cable" => "kabelzug kabel",
        "pulldown" => "latzug maschine",
        "low-row" => "ruderzug kabelzug",
        "leg-press" => "beinpresse maschine",
        "leg-extension" => "beinstrecker maschine",
        "leg-curl" => "beinbeuger maschine",
        "calf-machine" => "wadenmaschine maschine",
        "hip-adduction" => "adduktorenmaschine maschine",
        "hip-abduction" => "abduktorenmaschine maschine",
        "chest-press" => "brustpresse maschine",
        "shoulder-press" => "schulterpresse maschine",
        "hack-squat" | "row-machine" | "assisted-pull-up" => "maschine",
        "pec-deck" => "butterfly maschine",
        "bench" => "bank flachbank",
        "incline-bench" => "schrägbank",
        "pull-up-bar" => "klimmzugstange",
        "dip-bars" => "barren",
        "rings" => "ringe",
        "box" => "kasten",
        "back-extension-bench" => "rückenstrecker",
        _ => "",
    }
}
