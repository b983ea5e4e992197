//! The same questions put to a general solver of integer programs (microlp, by good_lp), to check
//! our answers against and to compare the cost.
//!
//! A solver counts in floats, so it answers with counts of plates; their masses are added up
//! exactly here.

use barwright_domain::equipment::changes::Wanted;
use barwright_domain::equipment::{Equipment, PlateStock};
use barwright_domain::quantity::Mass;
use good_lp::{
    Constraint, Expression, ProblemVariables, Solution, SolverModel, Variable, constraint, microlp,
    variable,
};

/// What counts as equal in the solver's floats, in kilograms.
const NEAR: f64 = 1e-6;

/// What a gym's first bar can be loaded with, as an integer program sees it.
#[derive(Debug)]
pub struct Bar<'a> {
    base: Mass,
    /// Heaviest first.
    plates: Vec<&'a PlateStock>,
}

/// Counts of plates on one end, heaviest first.
pub type Counts = Vec<u8>;

impl<'a> Bar<'a> {
    /// The gym's first bar with its collars; `None` where there is none.
    pub fn of(gym: &'a Equipment) -> Option<Self> {
        let bar = gym.bars.first()?;
        let base = bar.mass.checked_add(bar.collars)?;
        let mut plates: Vec<_> = gym.plates.iter().filter(|stock| stock.pairs > 0).collect();
        plates.sort_by_key(|stock| std::cmp::Reverse(stock.mass));
        Some(Self { base, plates })
    }

    /// What so many plates come to, exactly.
    pub fn load(&self, counts: &[u8]) -> Mass {
        let side = self
            .plates
            .iter()
            .zip(counts)
            .fold(0, |sum, (stock, count)| sum + stock.mass.nanograms() * i64::from(*count));
        Mass::from_nanograms(self.base.nanograms() + 2 * side)
    }

    /// A side with the smallest miss.
    pub fn nearest(&self, asked: Mass) -> Option<Counts> {
        let mut program = Program::default();
        let counts = program.side(self);
        let miss = program.variables.add(variable().min(0));
        let total = self.total(&counts);
        program.must(constraint!(miss >= total.clone() - kilograms(asked)));
        program.must(constraint!(miss >= kilograms(asked) - total));
        program.solve(miss.into()).map(|found| read(&found, &counts))
    }

    /// The lightest side that misses by no more than `miss`.
    pub fn lightest(&self, asked: Mass, miss: Mass) -> Option<Counts> {
        let mut program = Program::default();
        let counts = program.side(self);
        let total = self.total(&counts);
        program.must(constraint!(total.clone() >= kilograms(asked) - kilograms(miss) - NEAR));
        program.must(constraint!(total.clone() <= kilograms(asked) + kilograms(miss) + NEAR));
        program.solve(total).map(|found| read(&found, &counts))
    }

    /// A side of the fewest plates for a load that can be made.
    pub fn fewest(&self, load: Mass) -> Option<Counts> {
        let mut program = Program::default();
        let counts = program.side(self);
        let total = self.total(&counts);
        program.must(constraint!(total.clone() >= kilograms(load) - NEAR));
        program.must(constraint!(total <= kilograms(load) + NEAR));
        program.solve(counts.iter().sum()).map(|found| read(&found, &counts))
    }

    /// The fewest moves of a ramp from the empty bar, where each firm load is made as it is
    /// written and each other within `slack`.
    ///
    /// What two steps share is what they have in common from the inside out: the plates of a size
    /// can stay on only where all heavier ones stay, and as many of them as before.
    pub fn moves(&self, sets: &[Wanted], slack: Mass) -> Option<usize> {
        let mut program = Program::default();
        let mut before: Vec<Expression> = self.plates.iter().map(|_| Expression::from(0)).collect();
        let mut moves = Expression::from(0);
        for wanted in sets {
            let counts = program.side(self);
            let slack = if wanted.firm { 0.0 } else { kilograms(slack) };
            let total = self.total(&counts);
            program.must(constraint!(total.clone() >= kilograms(wanted.load) - slack - NEAR));
            program.must(constraint!(total <= kilograms(wanted.load) + slack + NEAR));
            // Whether all heavier sizes are as they were.
            let mut same: Option<Variable> = None;
            for ((stock, now), before) in self.plates.iter().zip(&counts).zip(&mut before) {
                let most = f64::from(stock.pairs);
                let kept = program.variables.add(variable().integer().min(0).max(most));
                program.must(constraint!(kept <= *now));
                program.must(constraint!(kept <= before.clone()));
                if let Some(same) = same {
                    program.must(constraint!(kept <= most * same));
                }
                let still = program.variables.add(variable().binary());
                program.must(constraint!(before.clone() - *now <= most * (1 - still)));
                program.must(constraint!(*now - before.clone() <= most * (1 - still)));
                if let Some(same) = same {
                    program.must(constraint!(still <= same));
                }
                same = Some(still);
                moves += before.clone() + *now - 2 * kept;
                *before = (*now).into();
            }
        }
        let found = program.solve(moves.clone())?;
        let moves = found.eval(moves).round();
        (0.0..1e6).contains(&moves).then_some(moves as usize)
    }

    fn total(&self, counts: &[Variable]) -> Expression {
        let side: Expression =
            self.plates.iter().zip(counts).map(|(stock, n)| 2.0 * kilograms(stock.mass) * *n).sum();
        side + kilograms(self.base)
    }
}

#[derive(Default)]
struct Program {
    variables: ProblemVariables,
    constraints: Vec<Constraint>,
}

impl Program {
    fn side(&mut self, bar: &Bar<'_>) -> Vec<Variable> {
        let count = |stock: &&PlateStock| variable().integer().min(0).max(f64::from(stock.pairs));
        bar.plates.iter().map(|stock| self.variables.add(count(stock))).collect()
    }

    fn must(&mut self, constraint: Constraint) {
        self.constraints.push(constraint);
    }

    fn solve(self, least: Expression) -> Option<impl Solution> {
        let model = self.variables.minimise(least).using(microlp);
        self.constraints.into_iter().fold(model, SolverModel::with).solve().ok()
    }
}

fn read(found: &impl Solution, counts: &[Variable]) -> Counts {
    counts.iter().map(|count| found.value(*count).round() as u8).collect()
}

fn kilograms(mass: Mass) -> f64 {
    mass.nanograms() as f64 / 1e12
}
