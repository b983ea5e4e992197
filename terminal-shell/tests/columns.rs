//! `barwright records columns` and `import --columns` from outside: old sets out of any CSV.

#[path = "support/program.rs"]
mod program;

use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use program::{barwright, barwright_in, does, refuses, said};

/// A folder with a table, a place for the file of its columns and one for records.
struct Place {
    folder: tempfile::TempDir,
}

impl Place {
    fn with(table: impl AsRef<[u8]>) -> Self {
        let place = Self { folder: tempfile::tempdir().expect("a folder for the test") };
        place.put(table);
        place
    }

    fn put(&self, table: impl AsRef<[u8]>) {
        std::fs::write(self.folder.path().join("old.csv"), table).expect("it can be written");
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    fn text(&self, name: &str) -> String {
        self.path(name).to_str().expect("plain text").to_owned()
    }

    fn store(&self) -> PathBuf {
        self.path("lifter.db")
    }

    /// Guesses the columns into a file, and gives it as it stands.
    fn guess(&self) -> String {
        let _ = std::fs::remove_file(self.path("old.toml"));
        let told = does(
            &self.store(),
            &["records", "columns", &self.text("old.csv"), "--out", &self.text("old.toml")],
        );
        assert!(told.contains("records import") && told.contains("--dry-run"), "{told}");
        std::fs::read_to_string(self.path("old.toml")).expect("it was written")
    }

    fn columns(&self, text: &str) {
        std::fs::write(self.path("old.toml"), text).expect("it can be written");
    }

    fn import(&self, more: &[&str]) -> String {
        let (table, columns) = (self.text("old.csv"), self.text("old.toml"));
        let args = [&["records", "import", &table, "--columns", &columns], more].concat();
        does(&self.store(), &args)
    }
}

/// As a spreadsheet in Germany saves it: a mark at the beginning, semicolons, two characters at the
/// end of a line, a cell in quotes with a line's end in it.
const GERMAN: &str = "\u{feff}Datum;Training;Übung;Satz;Wdh.;Gewicht (kg);RPE;Notiz\r\n\
    27.10.2026;Beine;Kniebeuge;W;5;60;;\r\n\
    27.10.2026;Beine;Kniebeuge;1;5;102,5;8;\"gut;\r\nschnell\"\r\n\
    27.10.2026;Beine;Kniebeuge;2;5;102,5;8,5;\r\n\
    27.10.2026;Beine;Rudern am Seilzug eng;1;10;50;9;\r\n\
    \r\n\
    29.10.2026;Druck;Bankdrücken;1;5;80;8;\r\n\
    29.10.2026;Druck;Klimmzüge;1;8;0;9;\r\n\
    30.13.2026;Druck;Klimmzüge;1;8;0;9;\r\n";

#[test]
fn a_table_comes_in_by_the_columns_that_were_guessed_and_goes_out_again() {
    let place = Place::with(GERMAN);
    let guess = place.guess();
    for line in [
        "separator = \";\"",
        "decimals = \"comma\"",
        "dates = \"day first\"",
        "unit = \"kg\"",
        "date = \"Datum\"",
        "title = \"Training\"",
        "exercise = \"Übung\"",
        "set = \"Satz\"",
        "reps = \"Wdh.\"",
        "load = \"Gewicht (kg)\"",
        "rpe = \"RPE\"",
        "# is = \"Seated cable row\"",
    ] {
        assert!(guess.lines().any(|there| there == line), "{line} in {guess}");
    }
    assert!(!place.store().exists(), "a guess makes no records");

    let looked = place.import(&["--dry-run"]);
    assert!(looked.contains("In the table: 2 sessions, 5 sets; 2 rows are left out."), "{looked}");
    // The lines are those that an editor counts.
    assert!(looked.contains("line 6: no exercise is called “Rudern am Seilzug eng”"), "{looked}");
    assert!(looked.contains("line 10: “30.13.2026” can't be read as the date"), "{looked}");
    assert!(looked.contains("2 sessions") && looked.contains("Nothing was changed"), "{looked}");
    assert!(!place.store().exists(), "a look makes no records");

    let taken = place.import(&[]);
    assert!(taken.contains("Come into the history: 2 sessions"), "{taken}");
    let squat = does(&place.store(), &["lift", "back squat"]);
    assert!(squat.contains("5 reps: 102.5 kg") && squat.contains("1.5 in reserve"), "{squat}");
    let pull_up = does(&place.store(), &["lift", "pull-up"]);
    assert!(pull_up.contains("8 reps: bodyweight"), "{pull_up}");
    let checked = does(&place.store(), &["records", "check"]);
    assert!(checked.contains("all good"), "{checked}");

    // A second time nothing is new.
    let before = std::fs::read(place.store()).expect("it is there");
    let twice = place.import(&[]);
    assert!(twice.contains("Nothing is new: 2 sessions here already"), "{twice}");
    assert_eq!(std::fs::read(place.store()).expect("it is there"), before);

    let back = does(&place.store(), &["records", "import", "--take-back"]);
    assert!(back.contains("2 sessions went out"), "{back}");
    let squat = does(&place.store(), &["lift", "back squat"]);
    assert!(!squat.contains("102.5"), "{squat}");
}

#[test]
fn a_longer_table_brings_only_what_is_new() {
    let place = Place::with(GERMAN);
    place.guess();
    place.import(&[]);
    place.put(format!("{GERMAN}31.10.2026;Beine;Kniebeuge;1;5;105;8;\r\n"));
    let longer = place.import(&[]);
    assert!(longer.contains("Come into the history: 1 session. Here already: 2"), "{longer}");
    // A set was added to a day that came: that session is not there twice.
    place.put(
        GERMAN
            .replace("30.13.2026;Druck;Klimmzüge;1;8;0;9;", "29.10.2026;Druck;Klimmzüge;2;7;0;9;"),
    );
    let changed = place.import(&[]);
    assert!(changed.contains("Nothing is new: 1 session here already"), "{changed}");
    assert!(changed.contains("One session stands otherwise in the table now"), "{changed}");
    let sessions = does(&place.store(), &["lift", "pull-up"]);
    assert_eq!(sessions.matches("29 Oct · ").count(), 1, "{sessions}");
    // The same day from another table is told of.
    place.columns(&place.guess().replace("name = \"old\"", "name = \"another\""));
    let shared = place.import(&["--dry-run"]);
    assert!(shared.contains("On 2 days of the new sessions the history has another"), "{shared}");
}

#[test]
fn what_can_be_either_is_decided_by_a_person() {
    let place = Place::with(
        "date,exercise,reps,weight\n03/04/2026,back squat,5,225\n04/04/2026,back squat,5,235\n",
    );
    let guess = place.guess();
    assert!(guess.contains("“03/04/2026” could be read either way"), "{guess}");
    let (table, columns) = (place.text("old.csv"), place.text("old.toml"));
    let args = ["records", "import", &table, "--columns", &columns];
    let refused = refuses(&place.store(), &args);
    assert!(refused.contains("old.toml:") && refused.contains("“?” is not known"), "{refused}");
    assert!(refused.contains("2 faults") && !place.store().exists(), "{refused}");
    let decided = guess.replace("dates = \"?\"", "dates = \"month first\"");
    place.columns(&decided.replace("unit = \"?\"", "unit = \"lb\""));
    place.import(&[]);
    let folder = place.text("tables");
    does(&place.store(), &["records", "export", "--csv", &folder]);
    let sets = std::fs::read_to_string(place.path("tables").join("sets.csv")).expect("written");
    assert!(sets.contains("2026-03-04,back-squat") && sets.contains("102.05828325"), "{sets}");
}

#[test]
fn names_of_the_table_are_said_to_be_exercises() {
    let place = Place::with(
        "date,exercise,reps,kg\n2026-10-27,DB bench both,8,60\n2026-10-27,Low bar thing,5,100\n",
    );
    let guess = place.guess();
    let own = "\n[[exercise]]\nname = \"db bench both\"\nis = \"dumbbell bench press\"\n\
               counted = \"total\"\n[[exercise]]\nname = \"Low bar thing\"\nis = \"back-squat\"\n";
    place.columns(&format!("{guess}{own}"));
    let taken = place.import(&[]);
    assert!(taken.contains("2 sets; no row is left out"), "{taken}");
    let bench = does(&place.store(), &["lift", "dumbbell bench press"]);
    assert!(bench.contains("8 reps: 30 kg"), "{bench}");
    // A name that no exercise has is a fault of the file.
    place.columns(&format!("{guess}{own}").replace("\"back-squat\"", "\"back squad\""));
    let (table, columns) = (place.text("old.csv"), place.text("old.toml"));
    let refused = refuses(&place.store(), &["records", "import", &table, "--columns", &columns]);
    assert!(refused.contains("no exercise is called “back squad”"), "{refused}");
}

/// What goes out as a table of sets can come in where nothing else of it is left.
#[test]
fn our_own_table_of_sets_is_read_like_any_other() {
    let place = Place::with("");
    let demo = place.path("played.db");
    does(&demo, &["today", "--demo"]);
    let played = place.path("demo-played.db");
    let folder = place.text("tables");
    does(&played, &["records", "export", "--csv", &folder]);
    let sets = std::fs::read_to_string(place.path("tables").join("sets.csv")).expect("written");
    place.put(&sets);
    let guess = place.guess();
    for line in [
        "kind = \"kind\"",
        "load = \"load_kg\"",
        "unit = \"kg\"",
        "left = \"left\"",
        "dates = \"iso\"",
    ] {
        assert!(guess.lines().any(|there| there == line), "{line} in {guess}");
    }
    let taken = place.import(&[]);
    assert!(taken.contains("17 sessions") && taken.contains("no row is left out"), "{taken}");
    let best = |store: &Path| {
        let lift = does(store, &["lift", "bench press"]);
        let (_, records) = lift.split_once("Heaviest, by repetitions").expect("it has records");
        records.split("Most").next().unwrap_or_default().to_owned()
    };
    assert_eq!(best(&place.store()), best(&played));
}

#[test]
fn a_hostile_table_is_left_out_and_changes_nothing() {
    let rows = |row: &str, count: usize| format!("date,exercise,reps,kg\n{}", row.repeat(count));
    let good = rows("2026-10-27,back squat,5,100\n", 1);
    let place = Place::with(&good);
    place.guess();
    let wide = format!("{good}{}\n", "x,".repeat(100_000));
    let tall = rows("2026-10-27,back squat,5,100\n", 300_001);
    let (table, columns) = (place.text("old.csv"), place.text("old.toml"));
    let args = ["records", "import", &table, "--columns", &columns, "--dry-run"];
    let cases: [(&str, Vec<u8>, &str); 9] = [
        ("empty", Vec::new(), "no row in this table"),
        ("names in another encoding", b"\xdcbung,date\n1,2\n".to_vec(), "save it as CSV, in UTF-8"),
        ("other columns", b"a,b\n1,2\n".to_vec(), "no column “date”"),
        (
            "no text",
            [good.as_bytes(), b"2026-10-27,back squat,\xff,1\n"].concat(),
            "line 3: it is not UTF-8",
        ),
        (
            "in 16 bits",
            good.encode_utf16().flat_map(u16::to_le_bytes).collect(),
            "save it as CSV, in UTF-8",
        ),
        ("wide", wide.into_bytes(), "line 3: "),
        ("tall", tall.into_bytes(), "more than 300000 rows"),
        (
            "an open quote",
            format!("{good}\"{}", "x\n".repeat(100_000)).into_bytes(),
            "line 3: too long a text",
        ),
        (
            "heavy",
            format!("{good}2026-10-27,back squat,5,20001\n").into_bytes(),
            "line 3: “20001” can't be read as the load",
        ),
    ];
    for (what, hostile, why) in cases {
        place.put(hostile);
        let told = said(&barwright(&place.store(), &args));
        assert!(told.contains(why), "{what}: {told}");
        assert!(!place.store().exists(), "{what}");
    }
    // What is left out is named row by row, and what turns a terminal round is never printed.
    let mut spoiled = good;
    for at in 0..1_200 {
        let _ = writeln!(spoiled, "2026-10-27,\u{1b}[2J\u{202e}{at},5,100");
    }
    place.put(spoiled);
    let told = said(&barwright(&place.store(), &args));
    assert!(told.contains("1200 rows are left out") && told.contains("and 200 more"), "{told}");
    assert!(!told.contains(['\u{1b}', '\u{202e}']), "nothing hidden is printed");
}

#[test]
fn german_is_spoken_throughout() {
    let place = Place::with(GERMAN);
    let (table, columns) = (place.text("old.csv"), place.text("old.toml"));
    let german = |args: &[&str]| said(&barwright_in("de_DE.UTF-8", &place.store(), args));
    let guess = german(&["records", "columns", &table]);
    assert!(guess.contains("# In der ersten Zeile heißt sie „Wdh.“"), "{guess}");
    assert!(guess.contains("# is = \"Kabelrudern\""), "{guess}");
    place.columns(&guess);
    let looked = german(&["records", "import", &table, "--columns", &columns, "--dry-run"]);
    assert!(looked.contains("2 Einheiten, 5 Sätze; 2 Zeilen werden ausgelassen"), "{looked}");
    assert!(looked.contains("Zeile 6: keine Übung heißt „Rudern am Seilzug eng“"), "{looked}");
}
