//! Every row of the plan format is laid out and done to its end.

use barwright_domain::catalogue::Catalogue;
use barwright_domain::plan::Plan;
use barwright_domain::prescribe;
use barwright_domain::quantity::Reserve;
use barwright_domain::session::{
    Command, Reading, RecordedSet, Refusal, Sheet, Stamped, State, decide,
};

use crate::desk::{Table, kg};

const PAGE: &str = include_str!("../../../../docs/plan-format.md");

/// The page's examples, those of exercises in a plan of four weeks.
fn examples() -> Vec<(usize, Plan)> {
    let mut found = Vec::new();
    let mut lines = PAGE.lines().enumerate();
    while let Some((at, line)) = lines.next() {
        let Some(kind) = line.strip_prefix("```toml ") else { continue };
        let body: Vec<_> =
            lines.by_ref().map(|(_, line)| line).take_while(|line| *line != "```").collect();
        let body = body.join("\n");
        let text = if kind == "plan" {
            body
        } else {
            format!("name = \"Example\"\nweeks = 4\n[[session]]\nname = \"One\"\n{body}")
        };
        found.push((at + 1, Plan::read(&text, &Catalogue::builtin()).unwrap().plan));
    }
    found
}

struct Floor {
    state: State,
    now: Reading,
    seq: u64,
}

impl Floor {
    fn tap(&mut self, command: &Command) -> Result<(), Refusal> {
        let events = decide(&self.state, command, &self.now)?;
        let tap = self.seq;
        for event in events {
            self.state.apply(Stamped { seq: self.seq, tap, at: self.now.clone(), event });
            self.seq += 1;
        }
        self.now.wall_ms += 30_000;
        Ok(())
    }
}

/// Taps until nothing is left; the lifter says a load where they must, and calls each set hard.
fn done_to_the_end(table: &Table, sheet: Sheet) -> usize {
    let now =
        Reading { wall_ms: 1_795_000_000_000, offset_minutes: 60, boot_ms: None, boot_id: None };
    let mut floor = Floor { state: State::default(), now, seq: 1 };
    let body_mass = table.lifter.desk.body_mass.map(|(mass, _)| mass);
    let equipment = table.gym.clone();
    floor.tap(&Command::Begin { sheet, equipment, body_mass, paper: None }).unwrap();
    let mut taps = 0;
    while floor.state.run().unwrap().cursor().is_some() {
        let set = RecordedSet { left: Reserve::from_halves(2), ..RecordedSet::default() };
        match floor.tap(&Command::Record(set.clone())) {
            Ok(()) => {}
            Err(Refusal::LoadNeeded) => {
                floor.tap(&Command::Record(RecordedSet { load: Some(kg("20")), ..set })).unwrap();
            }
            Err(other) => panic!("{other}"),
        }
        taps += 1;
        assert!(taps < 1_000, "it never ends");
    }
    floor.tap(&Command::Finish).unwrap();
    taps
}

fn all_sessions(at: &str, table: &Table) {
    for week in 0..table.plan.weeks.len() {
        for index in 0..table.plan.sessions_of(week).len() {
            let sheet = prescribe::sheet(table.source(week, index), &table.lifter).unwrap().sheet;
            assert!(sheet.entries().next().is_some(), "{at}: week {week} has nothing");
            let minutes = prescribe::duration(&sheet).total() / 60;
            assert!((1..=300).contains(&minutes), "{at}: {minutes} min");
            let called: usize = sheet.entries().map(|entry| entry.calls.len()).sum();
            assert!(done_to_the_end(table, sheet) >= called, "{at}");
        }
    }
}

fn known(plan: Plan) -> Table {
    let lifts: Vec<String> =
        Catalogue::builtin().iter().map(|exercise| exercise.slug.to_string()).collect();
    let table = Table::new(plan).weighs("82.4");
    lifts.iter().fold(table, |table, lift| table.max(lift, "120"))
}

#[test]
fn every_example_of_the_page_with_nothing_known() {
    for (line, plan) in examples() {
        all_sessions(&format!("line {line}"), &Table::new(plan));
    }
}

#[test]
fn every_example_of_the_page_with_all_that_is_needed() {
    for (line, plan) in examples() {
        let table = known(plan);
        for week in 0..table.plan.weeks.len() {
            for index in 0..table.plan.sessions_of(week).len() {
                let needs = prescribe::sheet(table.source(week, index), &table.lifter);
                let own = table.plan.exercises.iter().map(|exercise| exercise.slug.to_string());
                let own: Vec<String> = own.collect();
                let missing = needs.unwrap().needs.into_iter().filter(
                    |need| !matches!(need, prescribe::Need::Max(lift) if own.contains(lift)),
                );
                assert_eq!(missing.count(), 0, "line {line}");
            }
        }
        all_sessions(&format!("line {line}"), &table);
    }
}
