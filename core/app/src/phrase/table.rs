//! Every phrase there is, by subject: what it is given, and that it comes out as words. Each language
//! says it in a file of the same name as the subject; one that lacks a phrase does not compile.

use std::path::Path;

use barwright_domain::call::{Amount, EffortScale, EffortTarget, HowMany, Side, WeekKind};
use barwright_domain::catalogue::{Catalogue, Counting, Exercise, Muscle};
use barwright_domain::coach::Finding;
use barwright_domain::columns::{BadRow, NoColumn, Note};
use barwright_domain::desk::{At, Dated, Kept};
use barwright_domain::equipment::changes::Changes;
use barwright_domain::equipment::{
    Bar, CannotMake, Dumbbells, Machine, Made, Plate, PlateStock, Reach, Rig, Stack,
};
use barwright_domain::history::{DoneSet, MostAt, Record};
use barwright_domain::owners::{MaxOrigin, Outcome, Proposal};
use barwright_domain::plan::{Cut, Entry as PlanEntry, Plan, WeekSession, Weeks};
use barwright_domain::prescribe::{Candidate, LeftOut, MovedLoad, Need};
use barwright_domain::progress::estimate::{Estimate, NoEstimate};
use barwright_domain::progress::pace::{PaceEstimate, Slowing};
use barwright_domain::quantity::{
    Mass, MassUnit, Numerals, Reps, Reserve, Seconds, Tempo, Unreadable,
};
use barwright_domain::session::{
    Call, Cursor, Ending, Entry, EntryRun, Guard, Kit, LastTime, Load, PartRun, Reason, Refusal,
    RestKind, Run, SetRun, SwapCause,
};
use barwright_domain::text::Fault;
use barwright_domain::volume::{Behind, BehindSide};
use barwright_log::form::Wrong as WrongRecords;
use barwright_store::{Kept as KeptBackup, Salvage, StoreError};
use chrono::Weekday;

use super::*;
use crate::contract::{EngineError, FileFault, LayAnew};

phrases! {
    /// Words of the bar, or what stands for it.
    BarWords in bar {
        /// The load in large type.
        fn total(load: &Load, unit: MassUnit, numerals: Numerals) -> String;
        /// What the figure counts: "each side"; empty where it is plain. Whether it is a cable whose
        /// handle feels another load than the stack.
        fn counts(load: &Load, geared: bool) -> &'static str;
        /// Why a stack's pin says another number than the set, by what reaches the hand of what is
        /// on the stack.
        fn geared(
            load: &Load,
            ratio: (u8, u8),
            unit: MassUnit,
            numerals: Numerals,
        ) -> Option<String>;
        /// The bar's name and mass: "Long bar, 20 kg and collars 5 kg".
        fn name(rig: &Rig, unit: MassUnit, numerals: Numerals) -> String;
        /// "94.9 kg with bodyweight".
        fn in_all(moved: Mass, unit: MassUnit, numerals: Numerals) -> String;
        /// What stands in large type where no bar is drawn.
        fn line(load: &Load, unit: MassUnit, numerals: Numerals) -> String;
        /// What stands in the place of a load that the lifter is to find.
        fn your_choice() -> &'static str;
        /// The key that says what is really on.
        fn holds() -> (&'static str, &'static str);
        /// Labels of plates, without their unit where all share one.
        fn labels(plates: &[Plate], numerals: Numerals) -> String;
        /// The same labels, one for each.
        fn numbers(plates: &[Plate], numerals: Numerals) -> Vec<String>;
        /// What to do to what is on: "take off 10 · put on 5, 2.5 each side"; empty for nothing.
        fn change(
            off: &[Plate],
            on: &[Plate],
            each_side: bool,
            numerals: Numerals,
        ) -> String;
    }
}

phrases! {
    /// A plan that is made by hand.
    PlanFormWords in plan_form {
        /// The title.
        fn title(name: &str) -> String;
        /// A plan that is begun.
        fn new_plan() -> &'static str;
        /// A session that is begun, by how many there are.
        fn new_session(count: usize) -> &'static str;
        /// A key: what it comes to, before it is taken up.
        fn see() -> (&'static str, &'static str);
        /// A key.
        fn add_session() -> &'static str;
        /// A key of a session: another one like it.
        fn session_again() -> &'static str;
        /// A key.
        fn add_exercise() -> &'static str;
        /// A key.
        fn add_row() -> &'static str;
        /// A key of an exercise that was found.
        fn add_this() -> &'static str;
        /// A key.
        fn earlier() -> &'static str;
        /// A heading.
        fn weeks() -> &'static str;
        /// A heading.
        fn sessions() -> &'static str;
        /// A heading.
        fn exercises() -> &'static str;
        /// A week, from 1.
        fn week(week: usize) -> String;
        /// A week that the file writes together with others.
        fn with_others() -> &'static str;
        /// A session: its day, and how many exercises.
        fn of_session(day: &str, exercises: usize) -> String;
        /// So many rows of sets.
        fn of_rows(rows: usize) -> String;
        /// A row of sets, from 1.
        fn row(row: usize) -> String;
        /// A line that opens what else can be said.
        fn more() -> &'static str;
        /// What this form shows and does not change.
        fn kept() -> &'static str;
        /// So many of something that is kept.
        fn so_many(count: usize) -> String;
        /// What stands elsewhere in the plan.
        fn elsewhere(count: usize) -> String;
        /// A key: one for each week.
        fn week_by_week() -> &'static str;
        /// A key: the same in all weeks.
        fn all_weeks() -> &'static str;
        /// A line that is written week by week.
        fn by_week(label: &str) -> String;
        /// How weeks are typed.
        fn by_week_hint() -> &'static str;
        /// What a line is of, by its key in the file.
        fn key(key: &str) -> String;
        /// What would do at a key.
        fn example(key: &str) -> &'static str;
        /// What is written at a key, in an exercise's short line.
        fn said(key: &str, said: &str) -> String;
        /// A word of the file that is stepped to, as it is shown: a week's kind, a rule, a day.
        fn word(word: &str) -> String;
        /// A key: the plan that is being made.
        fn go_on() -> (&'static str, &'static str);
        /// A key.
        fn make() -> (&'static str, &'static str);
        /// A key.
        fn mend() -> (&'static str, &'static str);
        /// A key.
        fn copy() -> (&'static str, &'static str);
    }
}

phrases! {
    /// The loads that a lifter likes.
    LikedWords in liked {
        /// The title.
        fn title(of: &str) -> String;
        /// Under it.
        fn subtitle() -> &'static str;
        /// Every load.
        fn any() -> &'static str;
        /// A line: multiples of this.
        fn step() -> &'static str;
        /// A line: no smaller plate.
        fn smallest() -> &'static str;
        /// A load of the next session.
        fn next(name: &str, load: &str) -> String;
        /// A key of a gym or a lift.
        fn open() -> (&'static str, &'static str);
    }
}

phrases! {
    /// A session that is changed for once.
    ChangeWords in change {
        /// The title.
        fn title(session: &str) -> String;
        /// How many changes there are.
        fn subtitle(changes: usize) -> String;
        /// A key on Today.
        fn open() -> (&'static str, &'static str);
        /// A key, where this gym lacks something.
        fn fit() -> (&'static str, &'static str);
        /// A key.
        fn add() -> (&'static str, &'static str);
        /// A key: the last change is taken back.
        fn back() -> (&'static str, &'static str);
        /// A key: all changes are taken back.
        fn as_planned() -> (&'static str, &'static str);
        /// A key that shows the session laid out.
        fn to_session() -> &'static str;
        /// A key of an exercise.
        fn instead(name: &str) -> (&'static str, String);
        /// A key of an exercise.
        fn earlier(name: &str) -> (&'static str, String);
        /// A key of an exercise.
        fn leave_out(name: &str) -> (&'static str, String);
        /// The title of what could be done instead.
        fn swap_title(name: &str) -> String;
        /// Under it.
        fn swap_subtitle() -> &'static str;
        /// The title of what could be added.
        fn add_title() -> &'static str;
        /// Under it.
        fn add_subtitle() -> &'static str;
        /// A key: for this session alone.
        fn once(name: &str) -> (&'static str, String);
        /// A key: from now on; what that changes is shown first.
        fn always(name: &str) -> (&'static str, String);
        /// The field that looks for exercises, and an example.
        fn find() -> (&'static str, &'static str);
        /// Nothing has these words.
        fn none_found(text: &str) -> String;
        /// The title: a session that was done without the tool.
        fn paper_title(session: &str) -> String;
        /// Under it.
        fn paper_subtitle() -> &'static str;
        /// The title: a session whose date is wrong.
        fn date_title(session: &str) -> String;
        /// Under it.
        fn date_subtitle() -> &'static str;
        /// A key.
        fn on_day(date: &str) -> (&'static str, String);
        /// The field for any other day, and an example.
        fn other_day() -> (&'static str, &'static str);
        /// What was typed is no date.
        fn not_a_day() -> &'static str;
        /// A key of a session of the plan: it was done without the tool.
        fn from_paper() -> (&'static str, &'static str);
        /// A key of a session that was done.
        fn other_date() -> (&'static str, &'static str);
        /// While a session is entered from paper.
        fn paper(date: &str) -> String;
        /// A key: what is left of an exercise was done as called.
        fn as_called(name: &str) -> (String, String);
        /// A key: all that is left was.
        fn everything_as_called() -> (&'static str, &'static str);
        /// What an exercise is: its movement, its muscles.
        fn what(exercise: &Exercise) -> String;
        /// What this gym lacks for an exercise.
        fn lacks(lacks: &[String]) -> String;
        /// What an exercise is, in short.
        fn candidate(one: &Candidate<'_>) -> String;
    }
}

phrases! {
    /// What stands on every form, and what is being made.
    ByHandWords in by_hand {
        /// A key: what it says holds from now on.
        fn take_up() -> (&'static str, &'static str);
        /// A key.
        fn drop_it() -> (&'static str, &'static str);
        /// A key.
        fn undo() -> (&'static str, &'static str);
        /// A key.
        fn redo() -> (&'static str, &'static str);
        /// A key that shows the whole again.
        fn back() -> &'static str;
        /// A key that opens a line.
        fn open() -> &'static str;
        /// A key that takes a line away.
        fn remove() -> &'static str;
        /// A key, one step down or up of what a line says; as it is read aloud.
        fn step(up: bool, what: &str) -> (&'static str, String);
        /// A fault or remark in a sentence, with what to do.
        fn said(fault: &FileFault) -> String;
        /// How a draft stands: what is wrong with it, in how many places.
        fn stands(faults: usize) -> String;
        /// The name of a gym that is begun.
        fn new_gym() -> String;
        /// The name of a copy.
        fn copy_of(name: &str) -> String;
        /// The usual name of what a gym has, by its kind: "Long bar".
        fn usual_name(kind: &str) -> String;
    }
}

phrases! {
    /// How to begin, and the demo.
    StartWords in start {
        /// The title.
        fn title() -> &'static str;
        /// What is here yet.
        fn subtitle() -> &'static str;
        /// A key that shows the ways to begin; as it is read aloud.
        fn open() -> (&'static str, &'static str);
        /// A way to begin, and what it does.
        fn demo() -> (&'static str, &'static str);
        /// A way to begin, and what it does.
        fn plan_file() -> (&'static str, &'static str);
        /// A way to begin, and what it does.
        fn new_plan() -> (&'static str, &'static str);
        /// A way to begin, and what it does.
        fn gym() -> (&'static str, &'static str);
        /// A key that leads to the gym.
        fn to_gym() -> &'static str;
        /// The key that goes to the demo, or back from it; as it is read aloud.
        fn turn(on: bool) -> (&'static str, &'static str);
        /// What stands on the demo's sheets.
        fn invented() -> &'static str;
        /// A session runs: the demo waits.
        fn finish_first() -> &'static str;
        /// It is shown already, or is not.
        fn so_already(on: bool) -> &'static str;
    }
}

phrases! {
    /// The exercises there are, and one's own.
    ExercisesWords in exercises {
        /// The title of the list.
        fn title() -> &'static str;
        /// How many there are, or were found for what was looked for.
        fn found(count: usize, words: &str) -> String;
        /// Nothing has all the words: these may be meant.
        fn near(words: &str, any: bool) -> String;
        /// The field that looks for one.
        fn find() -> (&'static str, &'static str);
        /// A key that shows the list; as it is read aloud.
        fn open() -> (&'static str, &'static str);
        /// What it trains and needs, in a line: "Chest, triceps · barbell, rack".
        fn detail(exercise: &Exercise) -> String;
        /// A line of its page, by the key of the file.
        fn line(key: &str) -> &'static str;
        /// What is read of a line: its value in words.
        fn value(key: &str, exercise: &Exercise) -> String;
        /// A word of the file as it is said: a movement, a muscle, what it needs.
        fn word(word: &str) -> String;
        /// How a load is counted, or what a set is measured in, by its word in the file.
        fn counted(word: &str) -> String;
        /// Yes or no.
        fn flag(on: bool) -> &'static str;
        /// What would do in a field.
        fn hint(key: &str) -> &'static str;
        /// A key that shows its history.
        fn history() -> &'static str;
        /// A key that begins one like it; as it is read aloud.
        fn like(name: &str) -> (&'static str, String);
        /// A key that puts one's own right.
        fn mend(name: &str) -> (&'static str, String);
        /// A key that shows the one that is being made.
        fn go_on() -> (&'static str, &'static str);
        /// The name of one that is begun like another.
        fn own_name(like: &str) -> String;
        /// The title of one that is being made.
        fn making(name: &str) -> String;
    }
}

phrases! {
    /// Maxes, working loads and body mass on one page.
    MaxesWords in maxes {
        /// Its title.
        fn title() -> &'static str;
        /// What can be typed.
        fn subtitle() -> &'static str;
        /// A key that shows the page; as it is read aloud.
        fn open() -> (&'static str, &'static str);
        /// A heading.
        fn maxes() -> &'static str;
        /// A heading.
        fn tracks() -> &'static str;
        /// A line, and the title of its chart.
        fn body() -> &'static str;
        /// None yet.
        fn none() -> &'static str;
        /// How a max came to be known, and since when: "tested Mon 12 Oct".
        fn known(day: i32, origin: &MaxOrigin) -> String;
        /// Since when a load is carried, and why.
        fn since(day: i32, why: Option<&str>) -> String;
        /// A working load's line: the exercise and what it is asked for.
        fn track(exercise: &str, asked: &HowMany, numerals: Numerals) -> String;
        /// What a field takes: a load, or percent of what stands.
        fn field(name: &str, unit: MassUnit) -> (String, String);
        /// A key that changes by so many percent; as it is read aloud.
        fn by_percent(percent: i32, name: &str) -> (String, String);
        /// What is entered, beside what stands.
        fn entered(before: Option<Mass>, after: Mass, unit: MassUnit, numerals: Numerals) -> String;
        /// A heading of what it moves.
        fn moves() -> &'static str;
        /// It moves nothing.
        fn moves_nothing() -> &'static str;
        /// More moves than is listed.
        fn more_moves(count: usize) -> String;
        /// A key that takes it; as it is read aloud.
        fn take(after: Mass, unit: MassUnit, numerals: Numerals) -> (String, String);
        /// A key that lets it be.
        fn leave() -> (&'static str, &'static str);
        /// When the body was weighed.
        fn weighed(day: i32) -> String;
        /// The key that takes back what was said last.
        fn undo() -> (&'static str, &'static str);
        /// The key that says it again.
        fn redo() -> (&'static str, &'static str);
    }
}

phrases! {
    /// What stands on the form of a gym.
    GymFormWords in gym_form {
        /// Its title.
        fn title(name: &str) -> String;
        /// What a key of the file is called, and what would do there, in the gym's unit.
        fn field(key: &str, unit: MassUnit) -> (&'static str, String);
        /// A heading of what can be added to a list: "Add a bar".
        fn add_to(list: &str) -> &'static str;
        /// The line that takes one more of another kind or size, and what would do there.
        fn add_other(list: &str, unit: MassUnit) -> (&'static str, String);
        /// A key: a small set of plates; as it is read aloud.
        fn a_set() -> (&'static str, &'static str);
        /// A key: the first of its kind is the one that is taken.
        fn usual_one() -> (&'static str, &'static str);
        /// "3 pairs", "no pair".
        fn pairs(count: u32) -> String;
        /// Pairs of a plate, as a field asks for them.
        fn pairs_field(plate: &str) -> (String, &'static str);
        /// A plate that weighs otherwise than what stands on it.
        fn weighs(mass: Mass, unit: MassUnit, numerals: Numerals) -> String;
        /// From where to where, in which steps, and what can't be made.
        fn reach(reach: &Reach, unit: MassUnit, numerals: Numerals) -> String;
        /// More can be made than is listed.
        fn reach_unlisted() -> &'static str;
        /// A weight that goes on top of a stack.
        fn add_on(mass: &str) -> String;
        /// A stack whose pins say no load.
        fn pins(count: usize) -> String;
        /// A key that makes a stack one of pins, or of loads.
        fn by(pins: bool) -> &'static str;
        /// Yes or no, of what there is one or two of.
        fn flag(key: &str, on: bool) -> &'static str;
        /// A support that is here, or not; by its word in the file.
        fn support(slug: &str) -> String;
        /// A word of the file that a line is of, `barbell` at `kind`, as it is shown and typed.
        fn file_word(key: &str, word: &str) -> String;
        /// It is here, or not.
        fn here(here: bool) -> &'static str;
        /// A key that says it is, or is not.
        fn toggle(here: bool, what: &str) -> (&'static str, String);
    }
}

phrases! {
    /// Cautions, where they matter and in a place of their own. The tool advises; lifter, coach and
    /// clinician decide.
    CautionWords in cautions {
        /// On a first sheet, on test days, and after a lay-off.
        fn before_all() -> &'static [&'static str];
        /// All of them, a heading with its lines.
        fn all() -> Vec<(&'static str, Vec<&'static str>)>;
        /// The title of the place that has them all.
        fn title() -> &'static str;
        /// Below that title.
        fn who_decides() -> &'static str;
        /// A switch.
        fn under_18(on: bool) -> (&'static str, &'static str);
        /// A switch.
        fn coach_there(on: bool) -> (&'static str, &'static str);
        /// On every sheet of a minor.
        fn supervised() -> &'static str;
        /// Where a minor's test is left out.
        fn no_test(name: &str) -> String;
        /// Before each try of a max.
        fn max_try() -> &'static str;
        /// For the days after a session.
        fn after() -> &'static str;
        /// Asked before a hard set with a bar over the body.
        fn guarded() -> &'static str;
        /// After pain.
        fn pain() -> &'static str;
        /// Said where neither guards the lifter; on a bench or not.
        fn unguarded(bench: bool) -> String;
    }
}

phrases! {
    /// Words of charts.
    ChartWords in chart {
        /// The label of the axis of dates.
        fn dates() -> &'static str;
        /// A series.
        fn band() -> &'static str;
        /// A series.
        fn estimates() -> &'static str;
        /// A series: the heaviest work load, or all that was moved with it.
        fn heaviest(with_the_body: bool) -> &'static str;
        /// A series.
        fn most() -> &'static str;
        /// A point: "Mon 12 Oct: 120 kg".
        fn load(
            day: i32,
            today: Option<i32>,
            load: Mass,
            unit: MassUnit,
            numerals: Numerals,
        ) -> String;
        /// A series: tries that failed.
        fn failed() -> &'static str;
        /// A point: "Mon 12 Oct: 140 kg failed".
        fn failed_at(
            day: i32,
            today: Option<i32>,
            load: Mass,
            unit: MassUnit,
            numerals: Numerals,
        ) -> String;
        /// A point of a band: "Mon 12 Oct: 122 kg to 140 kg".
        fn range(
            day: i32,
            today: Option<i32>,
            estimate: &Estimate,
            unit: MassUnit,
            numerals: Numerals,
        ) -> String;
        /// A point: "Mon 12 Oct: estimate 131 kg".
        fn estimate(
            day: i32,
            today: Option<i32>,
            estimate: &Estimate,
            unit: MassUnit,
            numerals: Numerals,
        ) -> String;
        /// A point: "Mon 12 Oct: 12 reps"; the value is in the unit of the amount.
        fn amount(day: i32, today: Option<i32>, value: i64, of: &Amount) -> String;
        /// The chart in a sentence: how many sessions, and its first and last points.
        fn from_to(name: &str, sessions: usize, first: &str, last: &str) -> String;
    }
}

phrases! {
    /// What a coach would say of a plan: each finding, and what would mend it.
    CoachWords in coach {
        /// A finding in its place of the file's text. `catalogue` has the plan's own exercises, and
        /// `unit` is
        /// the gym's.
        fn in_place(
            finding: &Finding,
            file: &str,
            plan: &Plan,
            catalogue: &Catalogue,
            unit: MassUnit,
            numerals: Numerals,
        ) -> FileFault;
        /// What was accepted and why: "no-substitute, Sled push: The sled is ours." None for what
        /// was not.
        fn accepted(finding: &Finding, plan: &Plan, catalogue: &Catalogue) -> Option<String>;
    }
}

phrases! {
    /// Dates in words.
    DateWords in date {
        /// "Wed 25 Nov" for days since 1970-01-01, with its year where it is more than eleven months
        /// from today.
        fn dated(day: i32, today: Option<i32>) -> String;
        /// "Wed 25 Nov 2026".
        fn in_full(of: i32) -> String;
    }
}

phrases! {
    /// Loads and what to put on for them.
    EquipmentWords in equipment {
        /// Why a load can't be made, and what to do.
        fn cannot_make(why: &CannotMake, unit: MassUnit, numerals: Numerals) -> String;
        /// A slack that makes no sense.
        fn slack_below_nothing() -> String;
        /// A load, what it is made with, and by how much it misses.
        fn made(made: &Made, unit: MassUnit, numerals: Numerals) -> String;
        /// What to change before each set, and how much handling that is.
        fn changes(changes: &Changes, unit: MassUnit, numerals: Numerals) -> String;
    }
}

phrases! {
    /// Words of an estimated max, as the desk asks for one.
    EstimateWords in estimate {
        /// "Estimate 126.67 kg, 120 to 127.67 by the seven formulas", where it comes from, and what
        /// it is
        /// not.
        fn found(
            estimate: &Estimate,
            load: Mass,
            reps: Reps,
            left: Option<Reserve>,
            unit: MassUnit,
            numerals: Numerals,
        ) -> String;
        /// Why there is none, and what would do.
        fn none(why: NoEstimate) -> String;
    }
}

phrases! {
    /// What is wrong in a file, where, and what to write instead.
    FaultWords in faults {
        /// A file was refused for its faults.
        fn refused(count: usize) -> String;
        /// A fault in its place of the file's text.
        fn in_place(fault: &Fault, text: &str) -> FileFault;
        /// The lines of a fault as a command prints them; `name` is the file's.
        fn lines(fault: &FileFault, name: &str) -> String;
    }
}

phrases! {
    /// Words of the floor.
    FloorWords in floor {
        /// What a rest is, as its label.
        fn rest_label(kind: RestKind) -> &'static str;
        /// What a notification says when a rest is over.
        fn rest_over(kind: RestKind) -> String;
        /// What comes next, in a few words: "Back squat, set 2 of 4".
        fn next_in_short(run: &Run, name: impl Fn(&EntryRun) -> String) -> String;
        /// A tap on the figure: what is far from the call is typed.
        fn pad() -> (&'static str, &'static str);
        /// The title of the pad before a digit.
        fn type_it() -> &'static str;
        /// A key of the pad.
        fn rub_out() -> (&'static str, &'static str);
        /// A key of the pad: this is it.
        fn set_to(amount: &str) -> (&'static str, String);
        /// The call in one sentence: "Set 2 of 4: 5 reps, 1–2 in reserve."
        fn sentence(run: &Run, cursor: &Cursor, numerals: Numerals) -> String;
        /// What the wide key says; whether the bar goes back to a rack.
        fn main_key(
            set: &SetRun,
            part: u16,
            asked: &HowMany,
            next: Option<&str>,
            racks: bool,
        ) -> String;
        /// A key: a part of a drop is over, and nothing here is lighter.
        fn nothing_lighter() -> &'static str;
        /// Over the effort keys: "Racked, reps in reserve:", "Done, RPE:".
        fn prompt(racks: bool, scale: EffortScale) -> &'static str;
        /// An effort key read aloud: "Record 5 reps, 2 in reserve".
        fn effort_says(
            left: Reserve,
            scale: EffortScale,
            amount: &str,
            numerals: Numerals,
        ) -> String;
        /// The call's sentence when nothing is left.
        fn nothing_left() -> &'static str;
        /// A notice.
        fn paused() -> &'static str;
        /// A notice.
        fn restarted() -> &'static str;
        /// A notice.
        fn clock_went_back() -> &'static str;
        /// Tempo, technique and what is worn, a line each.
        fn manner(entry: &EntryRun, set: &SetRun) -> Vec<String>;
        /// "last time 107.5 kg: 5, 5, 4; 1 in reserve".
        fn last_time(
            last: &LastTime,
            scale: EffortScale,
            unit: MassUnit,
            numerals: Numerals,
        ) -> String;
        /// "9 sets left, about 34 min".
        fn to_go(run: &Run) -> String;
        /// What this gym lacks for the exercise that is on, and where what is done instead is
        /// found.
        fn lacking(lacks: &[String], instead: Option<&str>) -> String;
        /// A key: the session goes on after a pause.
        fn resume() -> &'static str;
        /// A key: the first set by the clock.
        fn start_clock() -> (&'static str, &'static str);
        /// A key: a hold is measured.
        fn start_hold() -> (&'static str, &'static str);
        /// A key: a part was short, and the set is over.
        fn short(amount: &str) -> (&'static str, String);
        /// A key: the set is recorded without a call.
        fn uncalled(amount: &str) -> (&'static str, String);
        /// The wide key read aloud.
        fn record(amount: &str) -> String;
        /// The label of an effort key: "2", "5+"; in RPE "8", "≤5".
        fn effort_label(
            left: Reserve,
            most: bool,
            scale: EffortScale,
            numerals: Numerals,
        ) -> String;
        /// A step of the figure read aloud.
        fn down_to(amount: &str) -> String;
        /// A step of the figure read aloud.
        fn up_to(amount: &str) -> String;
        /// A key.
        fn ended() -> &'static str;
        /// A key.
        fn more() -> &'static str;
        /// A key.
        fn finish() -> &'static str;
        /// A key.
        fn undo() -> (&'static str, &'static str);
        /// A key.
        fn redo() -> (&'static str, &'static str);
        /// The call's sentence while an earlier part is corrected: which set it is, and what it says.
        fn correcting(
            entry: &EntryRun,
            set: &SetRun,
            part: &PartRun,
            unit: MassUnit,
            numerals: Numerals,
        ) -> String;
        /// Over the effort keys of a part that is corrected.
        fn really_left(scale: EffortScale) -> &'static str;
        /// A key: an earlier part is corrected.
        fn put_right(amount: &str) -> (&'static str, String);
        /// A key.
        fn leave() -> &'static str;
        /// A key: a shorter rest.
        fn shorter(seconds: i32) -> (String, String);
        /// A key: a longer rest.
        fn longer(seconds: i32) -> (String, String);
        /// A rest read aloud: its label, and its figures; none where it is over.
        fn rest_aloud(label: &str, figures: Option<&str>) -> String;
        /// The exercise and its load read aloud.
        fn exercise_aloud(name: &str, load: &str) -> String;
    }
}

phrases! {
    /// Words of what a gym has.
    GymWords in gym {
        /// A gym that comes with the program, by its English name.
        fn built_in(name: &str) -> String;
        /// What loads are in.
        fn subtitle(unit: MassUnit) -> String;
        /// A heading.
        fn bars() -> &'static str;
        /// A heading.
        fn plates() -> &'static str;
        /// A heading.
        fn held() -> &'static str;
        /// A heading.
        fn stacks() -> &'static str;
        /// A heading.
        fn machines() -> &'static str;
        /// A heading.
        fn also() -> &'static str;
        /// "Long bar · 20 kg · collars 5 kg".
        fn bar(bar: &Bar, unit: MassUnit, numerals: Numerals) -> String;
        /// "25 kg · 4 pairs and 1 single".
        fn plate(plate: &PlateStock, numerals: Numerals) -> String;
        /// "Dumbbells · 2 kg to 40 kg · 20 loads".
        fn rack(rack: &Dumbbells, unit: MassUnit, numerals: Numerals) -> String;
        /// "Pulldown · pin 1 to 20".
        fn stack(stack: &Stack, numerals: Numerals) -> String;
        /// "Leg press · starts at 45 kg".
        fn machine(machine: &Machine, unit: MassUnit, numerals: Numerals) -> String;
        /// What else it has: "bench, rack".
        fn others(also: &[String]) -> String;
        /// A key that chooses a gym: its label, and as it is read aloud.
        fn choose(name: &str) -> (String, String);
        /// A key that shows the gym that is being made; as it is read aloud.
        fn go_on() -> (&'static str, &'static str);
        /// A key: this gym is put right.
        fn mend(name: &str) -> (String, String);
        /// A key: one like it.
        fn copy(name: &str) -> (String, String);
        /// A key: a gym that has what most have.
        fn usual(unit: MassUnit) -> (String, String);
        /// A key: a gym with nothing in it.
        fn empty(unit: MassUnit) -> (String, String);
    }
}

phrases! {
    /// Words of one exercise over time.
    LiftWords in lift {
        /// "Reference max 142.5 kg, entered Mon 12 Oct".
        fn max(
            max: Option<(Mass, i32, &MaxOrigin)>,
            today: Option<i32>,
            unit: MassUnit,
            numerals: Numerals,
        ) -> String;
        /// "Reference max of Back squat: 162.5 kg, tested; was 160 kg".
        fn max_moved(
            name: &str,
            before: Option<Mass>,
            after: (Mass, &MaxOrigin),
            unit: MassUnit,
            numerals: Numerals,
        ) -> String;
        /// A field: the working load of a row of the plan.
        fn working_load(asked: &HowMany, numerals: Numerals) -> (String, String);
        /// "Reference max of Back squat: 160 kg": it stays.
        fn max_of(name: &str, max: Option<Mass>, unit: MassUnit, numerals: Numerals) -> String;
        /// Under a max that moves nothing of the plan that is on.
        fn again(moves: bool) -> &'static str;
        /// "Week 7, Legs: Back squat 122.5 kg, was 120 kg".
        fn moved(load: &MovedLoad, name: &str, unit: MassUnit, numerals: Numerals) -> String;
        /// Sets at one load: "110 kg: 5, 5, 4", "14 kg: 8, 8 each side", "30, 45 s".
        fn sets_at_load(sets: &[&DoneSet], unit: MassUnit, numerals: Numerals) -> String;
        /// "5 reps: 120 kg, Mon 12 Oct, with belt"
        fn record(
            record: &Record,
            today: Option<i32>,
            unit: MassUnit,
            numerals: Numerals,
        ) -> String;
        /// "120 kg: 5 reps, Mon 12 Oct, with belt"
        fn most_at(
            most: &MostAt,
            today: Option<i32>,
            unit: MassUnit,
            numerals: Numerals,
        ) -> String;
        /// A heading.
        fn by_reps() -> &'static str;
        /// A heading.
        fn by_load() -> &'static str;
        /// A heading.
        fn most_reps() -> &'static str;
        /// A heading.
        fn longest() -> &'static str;
        /// A heading.
        fn farthest() -> &'static str;
        /// A key.
        fn newer() -> &'static str;
        /// A key.
        fn older() -> &'static str;
        /// A session: its day, and its sets at each load: "Mon 12 Oct · 110 kg: 5, 5, 4".
        fn session(day: i32, today: Option<i32>, loads: &[String]) -> String;
        /// The quieter line below a session: what was left at the end, how it ended, what was worn,
        /// and what
        /// it estimates.
        fn session_detail(
            work: &[&DoneSet],
            estimated: Option<&Estimate>,
            moved: bool,
            unit: MassUnit,
            numerals: Numerals,
        ) -> String;
    }
}

phrases! {
    /// Muscles by name, and sentences of balance.
    MuscleWords in muscle {
        /// The title.
        fn title() -> &'static str;
        /// The plan and its weeks, from 1: "Winter base, week 3 of 8".
        fn subtitle(plan: &str, first: u16, last: u16, weeks: usize) -> String;
        /// The whole screen read aloud.
        fn aloud(subtitle: &str, bars: &[&str], sentences: &str) -> String;
        /// "Front deltoid".
        fn name(muscle: Muscle) -> String;
        /// Tenths of sets: "3", "3.5", "2.7"; with a decimal comma where it is written so.
        fn tenths(tenths: u64, numerals: Numerals) -> String;
        /// A muscle's bar in words.
        fn bar(muscle: Muscle, planned: u32, done: u32, numerals: Numerals) -> String;
        /// What was done in the other counts: "8 direct · 11 with indirect · 4 under six reps".
        fn counts(
            done: u32, both: (u32, u32),
            under_six: u32,
            sides: Option<(u32, u32)>,
            weeks: usize,
            numerals: Numerals,
        ) -> String;
        /// "Full weeks: 3 weeks, average of one".
        fn week_kind(kind: WeekKind, weeks: usize) -> String;
        /// "Chest: 3.5 done, 5 planned".
        fn week_of_kind(
            muscle: Muscle,
            planned: u32,
            done: u32,
            weeks: usize,
            numerals: Numerals,
        ) -> String;
        /// What falls behind, and where a set could go.
        fn behind(behind: &Behind, places: &[String], numerals: Numerals) -> String;
        /// A side that falls behind, and where a set for it could go.
        fn behind_side(behind: &BehindSide, places: &[String], numerals: Numerals) -> String;
    }
}

phrases! {
    /// Words where a tap is recorded and its screen could not be made.
    NotShownWords in not_shown {
        /// The title.
        fn title() -> &'static str;
        /// What failed, and what was kept.
        fn reason(what: &str) -> String;
        /// A key.
        fn today() -> &'static str;
        /// A key.
        fn floor() -> &'static str;
    }
}

phrases! {
    /// Words of a partner's taps, and of tempo.
    PaceWords in pace {
        /// A key of the floor.
        fn open() -> &'static str;
        /// A panel's title.
        fn title() -> &'static str;
        /// Over the taps.
        fn who() -> &'static str;
        /// A key that takes the last tap back.
        fn undo() -> &'static str;
        /// How it is done.
        fn how() -> &'static str;
        /// Where a set stops by pace and has slowed so far.
        fn stop() -> &'static str;
        /// What the tap says next: "The first rep begins", "Rep 3 over".
        fn key(tapped: Option<Reps>) -> String;
        /// "3 reps tapped".
        fn count(reps: Reps) -> String;
        /// "The last two reps took 34 % longer than the first two."
        fn slowed(slowing: Slowing) -> String;
        /// What the lifter's own calls say of it; never a fact.
        fn estimate(estimate: Option<PaceEstimate>, sets: usize, numerals: Numerals) -> String;
        /// The beats of one repetition: what is said, and milliseconds; as fast as possible has
        /// none.
        fn beats(tempo: Tempo) -> Vec<(&'static str, u32)>;
    }
}

phrases! {
    /// Words of the floor's panels: what is seldom needed.
    PanelWords in panel {
        /// A key that closes a panel.
        fn back() -> &'static str;
        /// A title.
        fn more() -> &'static str;
        /// A key of More.
        fn open_guard() -> &'static str;
        /// A key of More.
        fn open_load() -> &'static str;
        /// A key of More.
        fn skip_set() -> &'static str;
        /// A key of More.
        fn add_set() -> &'static str;
        /// A key of More.
        fn open_swap() -> &'static str;
        /// A key of More.
        fn postpone() -> &'static str;
        /// A key of More.
        fn skip_exercise() -> &'static str;
        /// A key of More.
        fn open_helped() -> &'static str;
        /// A key of More.
        fn open_kit() -> &'static str;
        /// A key of More.
        fn open_order() -> &'static str;
        /// A key of More.
        fn open_earlier() -> &'static str;
        /// A key of More.
        fn open_notes() -> &'static str;
        /// A key of More.
        fn pause() -> &'static str;
        /// A key of More.
        fn finish_here() -> &'static str;
        /// A title.
        fn ended(after: &Amount, numerals: Numerals) -> String;
        /// A way that a set ended, with how much was done then.
        fn way(ending: Ending, done: &Amount, numerals: Numerals) -> (&'static str, String);
        /// A title.
        fn bar_holds() -> &'static str;
        /// What is on each side; none where nothing is.
        fn each_side(held: Option<&str>) -> String;
        /// A key.
        fn take_off(plate: &str, numerals: Numerals) -> String;
        /// A key.
        fn put_on(plate: &str, numerals: Numerals) -> String;
        /// A key.
        fn empty() -> &'static str;
        /// A key.
        fn as_called() -> &'static str;
        /// A title.
        fn load(name: &str) -> String;
        /// A field: its label, and an example.
        /// A field for a load in all, with the body: its label and what is typed.
        fn all_field(unit: MassUnit, numerals: Numerals) -> (&'static str, String);
        /// A field for another load: its label and what is typed.
        fn load_field(unit: MassUnit, numerals: Numerals) -> (&'static str, String);
        /// A key.
        fn pin(pin: &str, numerals: Numerals) -> String;
        /// A title.
        fn swap(name: &str) -> String;
        /// A key: why it is swapped, where some of it was done.
        fn it_hurts() -> (&'static str, &'static str);
        /// A substitute that can't be done here.
        fn not_here(name: &str) -> String;
        /// A title.
        fn order() -> &'static str;
        /// An exercise with sets left.
        fn sets_left(name: &str, sets: usize) -> String;
        /// A key.
        fn do_now() -> &'static str;
        /// A title.
        fn earlier() -> &'static str;
        /// A part that was done: "Back squat, set 2 of 4: 110 kg × 5 reps".
        fn part(
            name: &str,
            entry: &EntryRun,
            set: &SetRun,
            part: &PartRun,
            unit: MassUnit,
            numerals: Numerals,
        ) -> String;
        /// A key.
        fn put_right() -> &'static str;
        /// A title.
        fn notes() -> &'static str;
        /// A field: its label, and an example.
        fn session_note() -> (&'static str, &'static str);
        /// A field: its label, and an example.
        fn exercise_note(name: &str) -> (String, &'static str);
        /// A field: its label, and an example.
        fn set_up(name: &str) -> (String, &'static str);
        /// A title.
        fn worn(name: &str) -> String;
        /// A key that puts it on or takes it off.
        fn wear(kit: Kit, worn: bool) -> (String, String);
        /// A key.
        fn guard(guard: Guard) -> &'static str;
        /// A title.
        fn helped(own: &Amount, numerals: Numerals) -> String;
        /// A key: so many with help.
        fn with_help(help: &Amount, numerals: Numerals) -> (String, String);
        /// A key: none with help.
        fn no_help() -> &'static str;
        /// A key that opens the answers to pain.
        fn it_hurt() -> (&'static str, &'static str);
        /// Over the answers to pain.
        fn pain(name: &str) -> String;
        /// An answer to pain: the rest of the exercise is left out.
        fn stop() -> (&'static str, &'static str);
        /// A key: the sets left with a lighter load.
        fn lighter(load: &str) -> String;
        /// A key: two sets failed, and the rest of the exercise is left out.
        fn leave_rest() -> &'static str;
        /// An answer to pain.
        fn go_on() -> (&'static str, &'static str);
        /// A key: what hurts is the joint.
        fn of_joint() -> (&'static str, &'static str);
    }
}

phrases! {
    /// Words of a week on paper.
    PaperWords in paper {
        /// The tag of the language, for a reader of screens: "en".
        fn language() -> &'static str;
        /// On which day the loads stood so.
        fn as_of(day: i32) -> String;
        /// Over a column: which set.
        fn set() -> &'static str;
        /// Over a column: what is called.
        fn call() -> &'static str;
        /// Over a column: the rest after a set.
        fn rest() -> &'static str;
        /// Over a column: the load that was on.
        fn load() -> &'static str;
        /// Over a column: what was done.
        fn done() -> &'static str;
        /// Over a column: how hard it was.
        fn effort() -> &'static str;
        /// Beside a blank.
        fn date() -> &'static str;
        /// Beside a blank.
        fn body_mass() -> &'static str;
        /// Over empty lines.
        fn note() -> &'static str;
        /// What would let the loads be worked out, by the label of the field that takes it.
        fn missing(label: &str) -> String;
        /// Which set: "3", "3 left".
        fn set_name(round: u16, side: Option<Side>) -> String;
        /// What is called of a set, its number and its rest apart: "5 · 110 kg".
        fn set_call(call: &Call, unit: MassUnit, numerals: Numerals) -> String;
        /// What stands small in the box of each part; one empty text where there is one part.
        fn parts(call: &Call, numerals: Numerals) -> Vec<String>;
    }
}

phrases! {
    /// A plan in a coach's shorthand: what it says, before anything is worked out for a day.
    PlanWords in plan {
        /// The name of an exercise.
        fn name(catalogue: &Catalogue, slug: &str) -> String;
        /// The rows of sets of an exercise, a line for sets that are made alike: "4 × 5 · 77.5 % ·
        /// rest
        /// 2:30".
        fn lines(catalogue: &Catalogue, entry: &PlanEntry, numerals: Numerals) -> Vec<String>;
        /// What else the plan says of an exercise, in one line; empty where it says no more.
        fn detail(
            catalogue: &Catalogue,
            entry: &PlanEntry,
            superset: Option<&str>,
            numerals: Numerals,
        ) -> String;
        /// What a week takes off what is not written week by week.
        fn cut(catalogue: &Catalogue, cut: Cut, numerals: Numerals) -> String;
        /// The quieter line below a session: its day, its weeks, its minutes, its warm-up.
        fn session_detail(
            catalogue: &Catalogue,
            session: &WeekSession,
            day: Option<Weekday>,
            of: Option<&Weeks>,
            numerals: Numerals,
        ) -> String;
        /// "weeks 1–3, 5" of weeks from 1, rising.
        fn weeks(numbers: &[usize]) -> String;
        /// A line of a plan that only some weeks have: "weeks 1–3: 4 × 5".
        fn in_weeks(numbers: &[usize], line: &str) -> String;
        /// A week and how many there are: "Week 4: deload, of 8".
        fn one_of(title: &str, weeks: usize) -> String;
        /// The title of a plan with faults.
        fn has_faults(faults: usize) -> String;
        /// Below that title.
        fn nothing_changed() -> &'static str;
        /// A fault read aloud.
        fn fault_aloud(fault: &FileFault) -> String;
        /// A remark read aloud.
        fn remark_aloud(remark: &FileFault) -> String;
        /// The plan in short with how many remarks there are.
        fn with_remarks(in_short: &str, remarks: usize) -> String;
        /// A heading.
        fn accepted() -> &'static str;
        /// A key.
        fn adopt() -> &'static str;
        /// Over what a plan mended changes: rows that stay, and rows that start anew.
        fn mends(stay: usize, anew: usize) -> String;
        /// A row of a plan: "Legs: Back squat, row 2".
        fn row_of(session: &str, name: &str, line: usize) -> String;
        /// A row that starts anew.
        fn anew(of: &str) -> String;
        /// A row whose number was changed alone, of several that share a load.
        fn asks(of: &str) -> String;
        /// A key.
        fn mend() -> &'static str;
        /// A key: all rows that share a load start at the new number.
        fn mend_all() -> &'static str;
        /// A key.
        fn adopt_new() -> &'static str;
        /// A key.
        fn week_by_week() -> &'static str;
        /// A key.
        fn week_before() -> &'static str;
        /// A key.
        fn week_after() -> &'static str;
        /// A key.
        fn whole() -> &'static str;
        /// "8 weeks · 4 sessions · about 75 min each".
        fn in_short(plan: &Plan) -> String;
        /// "Week 4: deload", with its name where it has one.
        fn week(number: usize, kind: WeekKind, name: Option<&str>) -> String;
    }
}

phrases! {
    /// What is wrong with a figure that was typed, and what to write instead.
    QuantityWords in quantity {
        /// A refusal in a sentence: "142,5 kg", the place, the problem, what would do.
        fn unreadable(unreadable: &Unreadable) -> String;
        /// A refusal in a sentence, with the text underlined at the place, for a terminal.
        fn underlined(unreadable: &Unreadable) -> String;
    }
}

phrases! {
    /// Why a number is what it is: a derivation as lines of words.
    ReasonWords in reason {
        /// A derivation: the owner of the load, since when, each factor and what is made here in the
        /// first line, and how it came to that below it. `hurt`: the load that hurt, where the call
        /// is a tenth under it.
        fn lines(
            reason: &Reason,
            hurt: Option<Mass>,
            scale: EffortScale,
            today: Option<i32>,
            unit: MassUnit,
            numerals: Numerals,
        ) -> Vec<String>;
    }
}

phrases! {
    /// What a session came to for what owns a load.
    OutcomeWords in outcome {
        /// An outcome in a sentence; one that is kept back says so.
        fn sentence(
            outcome: &Outcome,
            scale: EffortScale,
            unit: MassUnit,
            numerals: Numerals,
        ) -> String;
        /// What is asked, and the key that says yes.
        fn proposal(
            proposal: &Proposal,
            unit: MassUnit,
            numerals: Numerals,
        ) -> (String, String);
        /// What is asked where pain stands and a session of it was done, and the key that says yes.
        fn no_pain() -> (&'static str, &'static str);
    }
}

phrases! {
    /// Refusals: what is wrong, what was kept, what to do.
    RefusalWords in refusal {
        /// A refusal of the session in words.
        fn of(refusal: &Refusal, unit: MassUnit, numerals: Numerals) -> String;
        /// No exercise has that name; those it may mean.
        fn no_exercise(name: &str, near: &[String]) -> String;
        /// The tap was meant for another part, or another session.
        fn stale() -> &'static str;
        /// Something is being made already.
        fn draft_open() -> &'static str;
        /// The tap was meant for another step of what is being made.
        fn stale_draft() -> &'static str;
        /// What is being made has no step to take back, or to bring again.
        fn no_step() -> &'static str;
        /// What is being made would be too large to be read.
        fn draft_too_large() -> &'static str;
        /// Nothing stands there yet to be more or less than.
        fn nothing_stands() -> &'static str;
        /// More than by half.
        fn too_many_percent() -> &'static str;
        /// The clock is far from the last session's date: is it right?
        fn clock_far(last: i32, now: i32) -> String;
        /// Another gym has this name.
        fn gym_there(name: &str) -> String;
        /// Another exercise has this name.
        fn exercise_there(name: &str) -> String;
        /// The tap was meant for a session that is past.
        fn stale_session() -> &'static str;
        /// There is no such thing.
        fn not_here() -> &'static str;
        /// There is no plan.
        fn nothing_to_go_by() -> &'static str;
        /// A figure that could not be read.
        fn unreadable(unreadable: &Unreadable) -> String;
        /// Every session of the plan is done.
        fn plan_is_over() -> &'static str;
    }
}

phrases! {
    /// Words of what many lifters send back.
    ReturnedWords in returned {
        /// Over the columns of a line a lifter.
        fn columns() -> Vec<&'static str>;
        /// "2 of 3".
        fn out_of(done: u32, planned: u32) -> String;
        /// What comes next, and when: "Legs: next, Wed 12 Nov, 2 days late".
        fn next(session: &str, state: &str) -> String;
        /// An exercise hurt.
        fn hurt(name: &str) -> String;
        /// A set came to less than asked.
        fn missed(name: &str, set: &DoneSet, unit: MassUnit, numerals: Numerals) -> String;
        /// An effort was called outside what was asked.
        fn effort_off(
            name: &str,
            left: Reserve,
            target: &EffortTarget,
            numerals: Numerals,
        ) -> String;
        /// What an exercise came to; the name may be empty.
        fn about(name: &str, what: &str) -> String;
        /// No lifter has that name; how many there are.
        fn lacks(name: &str, in_short: &str) -> String;
        /// What the keys do.
        fn keys() -> &'static str;
        /// How many lifters there are, and of how many files none can be read.
        fn in_short(lifters: usize, unread: usize) -> String;
    }
}

phrases! {
    /// Changes that a coach sent.
    SentWords in sent {
        /// Its title.
        fn title() -> &'static str;
        /// For whom, and when they were decided.
        fn decided(lifter: &str, day: i32) -> String;
        /// The file has faults.
        fn unreadable() -> &'static str;
        /// A max is changed.
        fn max(name: &str) -> String;
        /// A working load is changed.
        fn load(name: &str) -> String;
        /// What it was, and what it is to be; the same is held.
        fn from_to(was: Option<Mass>, to: Mass, unit: MassUnit, numerals: Numerals) -> String;
        /// An exercise is exchanged.
        fn swap(of: &str, with: &str) -> String;
        /// The plan is mended.
        fn plan() -> &'static str;
        /// A week is done once more.
        fn week(week: u16) -> String;
        /// It was taken.
        fn taken() -> &'static str;
        /// There is nothing that it could change.
        fn nothing() -> &'static str;
        /// The load is another one since.
        fn mass_apart(now: Option<Mass>, unit: MassUnit, numerals: Numerals) -> String;
        /// The plan is another one since.
        fn plan_apart() -> &'static str;
        /// Another session is next since; this one was.
        fn next_apart(next: Option<At>) -> String;
        /// A key that takes those that fit; as it is read aloud.
        fn take_up(count: usize) -> (String, String);
        /// A key that takes one that does not.
        fn take_all_the_same() -> (&'static str, &'static str);
        /// The file is for another lifter.
        fn of_other(lifter: &str) -> String;
        /// Nothing of it can be taken so.
        fn nothing_to_take() -> &'static str;
        /// A coach's words that are no change.
        fn unknown_change(said: &str) -> String;
        /// An exercise has no working load of its own.
        fn no_load(name: &str) -> String;
        /// An exercise has several working loads: their names.
        fn several_loads(name: &str, loads: &[String]) -> String;
        /// A plan of another name than the one that is on.
        fn other_plan(name: &str) -> String;
    }
}

phrases! {
    /// Lines of a sheet: the trade's own shorthand.
    SheetWords in sheet {
        /// Sets that stand alike on the sheet, as one line: "4 × 5 · 110 kg · rest 3:00".
        fn line(calls: &[&Call], unit: MassUnit, numerals: Numerals) -> String;
        /// The ramp in one line: "20 × 8, 40 × 4, 60 × 3, 80 × 2".
        fn ramp(entry: &Entry, unit: MassUnit, numerals: Numerals) -> Option<String>;
        /// What was left out for want of time.
        fn left_out(left_out: &LeftOut) -> String;
        /// What would let the sheet say more: the label of the field that takes it, and an example.
        fn need(need: &Need, name: &str, unit: MassUnit) -> (String, String);
    }
}

phrases! {
    /// When the file can't be read or written: what is wrong, what was kept and where, what to do.
    StorageWords in storage {
        /// An error of the store in words.
        fn error(error: &StoreError) -> EngineError;
        /// An event in the log that this release can't read.
        fn unreadable_event(seq: u64) -> EngineError;
        /// The engine was shut down.
        fn closed() -> EngineError;
        /// A defect of ours.
        fn broken(what: &str) -> EngineError;
        /// There is no file to recover.
        fn no_file(path: &str) -> String;
        /// Nothing is wrong with the file that was to be recovered.
        fn nothing_damaged(mended: u64) -> String;
        /// What was read back from a damaged file.
        fn recovered(aside: &str, read: &Salvage) -> String;
        /// A backup was put in the place of the records; what was there lies `aside`.
        fn restored(entries: u64, aside: Option<&str>) -> String;
        /// What a folder of backups has after one was kept there, or was not due.
        fn kept_backup(kept: &KeptBackup) -> String;
        /// What a whole file was looked at for.
        fn examined(entries: u64, derived: u64, mended: u64, sealed: u64) -> String;
        /// Nothing at all could be read of a damaged file, which was moved out of the way; `beyond`
        /// entries of it don't join on to anything.
        fn nothing_read(aside: &Path, beyond: u64) -> EngineError;
    }
}

phrases! {
    /// Words of records that go out as a file, and come in.
    RecordsWords in records {
        /// Why a file of records is not taken, or could not be written.
        fn wrong(wrong: &WrongRecords) -> String;
        /// A file has only a part of somebody's records.
        fn part_only() -> &'static str;
        /// A file has other records than those that are here.
        fn of_others() -> &'static str;
        /// The records here and those of a file went on differently after an entry.
        fn went_apart(after: u64) -> String;
        /// What a file of records came to: entries that were here, that are new, the sessions that
        /// begin in those, and whether they were taken.
        fn imported(same: u64, new: u64, sessions: u64, taken: bool) -> String;
        /// What history from elsewhere came to: sessions that are new, that are here already, that
        /// are not over there, and whether they were taken.
        fn joined(new: u64, same: u64, open: u64, taken: bool) -> String;
        /// A key that opens what is handed on.
        fn open() -> (&'static str, &'static str);
        /// Its title.
        fn title() -> &'static str;
        /// How much it is.
        fn handed(sessions: u64, bytes: usize) -> String;
        /// A line and its detail: what a coach gets, since a day.
        fn for_coach(since: i32) -> (String, &'static str);
        /// A line and its detail: with body mass.
        fn body_mass() -> (String, &'static str);
        /// A line and its detail: with notes.
        fn notes() -> (String, &'static str);
        /// A line and its detail: all of them.
        fn all() -> (String, &'static str);
        /// A key that chooses a line.
        fn choose() -> (&'static str, &'static str);
        /// A key that puts something in, or takes it out again.
        fn turn(is_in: bool) -> (&'static str, &'static str);
        /// It is too large to be handed on so.
        fn too_large() -> &'static str;
        /// A line and its detail: a file of another phone can be opened.
        fn from_file() -> (&'static str, &'static str);
        /// A key that asks for one.
        fn to_file() -> (&'static str, &'static str);
        /// A file that was opened is open no longer.
        fn closed() -> &'static str;
        /// A key that takes in what is new in a file.
        fn take_in() -> (&'static str, &'static str);
        /// A key that takes a file's sessions into the history.
        fn as_history() -> (&'static str, &'static str);
        /// A key that looks at so many loads that stand otherwise in a file.
        fn differing(count: u64) -> (String, String);
        /// A key that takes so many sessions out of the history that came into it last.
        fn withdraw(count: u64) -> (&'static str, String);
        /// So many sessions went out of the history again.
        fn withdrawn(count: u64) -> String;
        /// What the records are called that history came from, where a coach's file names a lifter.
        fn other_records() -> &'static str;
    }
}

phrases! {
    /// Words of old records in a table, and of the file that says what its columns are.
    ColumnsWords in columns {
        /// A table is larger than what is read.
        fn too_large() -> String;
        /// A table is no text, or none in UTF-8.
        fn not_text() -> &'static str;
        /// A table has no row.
        fn no_table() -> &'static str;
        /// A column that the table lacks.
        fn no_column(lacks: &NoColumn) -> String;
        /// The file of columns has so many faults.
        fn faults(number: usize) -> String;
        /// What a table has: sessions, their sets, and rows that are left out.
        fn read(found: usize, sets: usize, left_out: usize) -> String;
        /// A row that is left out, by its line.
        fn left_out(line: u64, why: &BadRow) -> String;
        /// So many more rows are left out.
        fn more_left_out(rows: usize) -> String;
        /// So many sessions came from the table before and stand otherwise in it now.
        fn changed(number: usize) -> String;
        /// On so many days of new sessions the history has another session already.
        fn shared_days(days: usize) -> String;
        /// What stands beside a line of a guess: lines of a comment.
        fn note(note: &Note) -> String;
    }
}

phrases! {
    /// Words of the end of a session.
    TallyWords in tally {
        /// "14 work sets, 52 min, over".
        fn subtitle(sets: usize, minutes: i64, over: bool) -> String;
        /// Of an exercise that was not done.
        fn not_begun(optional: bool) -> &'static str;
        /// Of an exercise that was swapped or stopped, and why.
        fn left_for(cause: Option<SwapCause>, to: Option<&str>) -> String;
        /// Of an exercise with sets left.
        fn sets_not_begun(sets: usize) -> String;
        /// A set that was done: "Set 1 of 3, left: 14 kg × 12", and the quieter line below it.
        fn set(
            entry: &EntryRun,
            set: &SetRun,
            unit: MassUnit,
            numerals: Numerals,
        ) -> (String, String);
        /// What an exercise will be next time: "Back squat: 4 × 5 · 112.5 kg".
        fn next_time(name: &str, line: &str) -> String;
        /// A key: a change for next time is held back, or let go.
        fn hold_back(held: bool) -> &'static str;
        /// A key.
        fn finish() -> &'static str;
        /// A key.
        fn what_is_next() -> &'static str;
    }
}

phrases! {
    /// Words of today's sheet.
    TodayWords in today {
        /// The title without a plan.
        fn nothing_on() -> &'static str;
        /// What to do without a plan.
        fn no_plan() -> &'static str;
        /// The plan, the week from 1, and the gym: "Winter base · week 3 of 8 (deload) · Cellar".
        fn subtitle(plan: &str, week: usize, weeks: usize, kind: WeekKind, gym: &str) -> String;
        /// A session was never ended: when the next begins, it is over as it stands.
        fn left_open() -> &'static str;
        /// A max is not tested while pain stands.
        fn pain_first(name: &str) -> String;
        /// "General warm-up · 8:00".
        fn warm_up(takes: Seconds) -> String;
        /// Over a superset.
        fn back_to_back(rest: Seconds) -> String;
        /// An exercise as a heading.
        fn exercise(name: &str, optional: bool) -> String;
        /// What this gym lacks for an exercise, and what can be done instead.
        fn lacks(lacks: &[String], instead: &[String]) -> String;
        /// A key.
        fn begin() -> (&'static str, &'static str);
        /// A key.
        fn back_to_floor() -> &'static str;
        /// A key: what to leave out for so many minutes.
        fn minutes(minutes: u32) -> (String, String);
        /// A key.
        fn all_of_it() -> &'static str;
        /// A key.
        fn another_session() -> &'static str;
        /// A key.
        fn weeks() -> &'static str;
        /// A key.
        fn gym(name: &str) -> (String, String);
        /// A key: train in this gym; as it is read aloud.
        fn in_gym(name: &str) -> (String, String);
    }
}

phrases! {
    /// Words of the plan's weeks.
    WeekWords in weeks {
        /// A key that shows the rest laid anew; as it is read aloud.
        fn anew(how: LayAnew) -> (&'static str, &'static str);
        /// What laying the rest anew comes to: how many move, how many are left out, what is heavy on
        /// neighbouring days.
        fn laid(how: LayAnew, moved: usize, left_out: usize, close: &[String]) -> String;
        /// A session whose date changes: "was Mon 23 Nov".
        fn was(day: i32) -> String;
        /// Two sessions with a lift heavy on neighbouring days.
        fn close(before: &str, after: &str, lift: &str) -> String;
        /// A key: it is laid so.
        fn lay_so() -> (&'static str, &'static str);
        /// A key: the dates as they were.
        fn take_back() -> (&'static str, &'static str);
        /// So many sessions lie behind.
        fn behind(count: usize) -> String;
        /// A key.
        fn enter() -> &'static str;
        /// A key.
        fn leave_out() -> &'static str;
        /// A key.
        fn bring_back() -> &'static str;
        /// A key.
        fn do_today() -> &'static str;
        /// A key.
        fn own_day() -> &'static str;
        /// A key.
        fn apart() -> &'static str;
        /// A key.
        fn again() -> &'static str;
        /// A key.
        fn make_up() -> &'static str;
        /// A key.
        fn not_again() -> &'static str;
        /// A key.
        fn no_travel() -> &'static str;
        /// "Move to Thu 12 Nov".
        fn to_day(day: i32) -> String;
        /// "Do it with Push (2.2)".
        fn join(name: &str, row: &str) -> String;
        /// A key.
        fn travel(away: u16) -> &'static str;
        /// "Week 3: deload, after 1 week away".
        fn title(week: u16, kind: WeekKind, away: u16) -> String;
        /// How a session stands: "next, Wed 12 Nov, 2 days late".
        fn state(dated: &Dated, today: i32, name: impl Fn(At) -> String) -> String;
        /// "week 3 of 12, next Legs, Wed 12 Nov, 2 days late".
        fn where_we_are(next: Option<(&Dated, &str)>, weeks: usize, today: i32) -> String;
        /// A key: its label, and as it is read aloud.
        fn back_to(kept: &Kept, today: Option<i32>) -> (String, String);
        /// The whole screen read aloud.
        fn aloud(plan: &str, subtitle: &str, rows: &str) -> String;
        /// A key.
        fn lay_out() -> &'static str;
    }
}

phrases! {
    /// Small words and figures that every screen uses.
    SmallWords in words {
        /// A thing that is set up, by its key in a plan file: "pins", "seat".
        fn part_set_up(key: &str) -> Option<&'static str>;
        /// A load that may be help, or nothing at all.
        fn or_help(load: Mass, unit: MassUnit, numerals: Numerals) -> String;
        /// A load's figure as it is counted: "100 kg", "+10 kg", "20 kg assistance",
        /// "bodyweight".
        fn load(figure: Mass, counting: Counting, unit: MassUnit, numerals: Numerals) -> String;
        /// "1 week", "4 weeks".
        fn weeks(number: usize) -> String;
        /// "1 session", "20 sessions".
        fn sessions(number: usize) -> String;
        /// Parts of a screen as they are read aloud, each a sentence.
        fn spoken(parts: &[&str]) -> String;
        /// Rows read aloud: each text with its detail.
        fn rows(rows: &[(&str, &str)]) -> String;
        /// An exercise by its name: the built-in ones are English, a plan's own are called as it
        /// says.
        fn exercise(exercise: &Exercise) -> String;
        /// "5 reps", "30 s", "40 m".
        fn amount(amount: &Amount, numerals: Numerals) -> String;
        /// The unit beside a figure: "reps", "s", "m".
        fn unit(amount: &Amount) -> &'static str;
        /// The figure alone: "5", "30", "40".
        fn figure(amount: &Amount, numerals: Numerals) -> String;
        /// How many, in the shorthand of a sheet: "5", "6–10", "30 s", "5+".
        fn how_many_short(asked: &HowMany, numerals: Numerals) -> String;
        /// What a week is for.
        fn week_kind(kind: WeekKind) -> &'static str;
        /// A countdown: "1:23", "0:05"; "+0:12" when over.
        fn countdown(left_ms: i64) -> String;
        /// A duration in minutes: "about 52 min".
        fn minutes(seconds: u64) -> String;
    }
}
