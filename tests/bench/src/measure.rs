//! A measure, what it came to, and how that is printed.

use serde_json::json;

/// One measure.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Measure {
    /// Its name, as `--only` takes it.
    pub(crate) name: &'static str,
    /// What the value counts.
    pub(crate) unit: &'static str,
    /// What it is measured against.
    pub(crate) against: &'static str,
    /// The most it may be; `None` where it is only reported.
    pub(crate) bar: Option<f64>,
    /// Runs it.
    pub(crate) run: fn() -> Outcome,
}

/// What a measure came to.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Outcome {
    /// In the measure's unit.
    pub(crate) value: f64,
}

impl Outcome {
    /// Whether the bar is kept.
    pub(crate) fn is_kept(self, measure: &Measure) -> bool {
        measure.bar.is_none_or(|bar| self.value <= bar)
    }

    /// For scripts.
    pub(crate) fn json(self, measure: &Measure) -> String {
        json!({
            "measure": measure.name,
            "value": (self.value * 1e6).round() / 1e6,
            "unit": measure.unit,
            "against": measure.against,
            "bar": measure.bar,
        })
        .to_string()
    }

    /// For people.
    pub(crate) fn line(self, measure: &Measure) -> String {
        let bar = match measure.bar {
            Some(bar) if self.value <= bar => format!("at most {bar}"),
            Some(bar) => format!("OVER its bar of {bar}"),
            None => "reported".to_string(),
        };
        let Measure { name, unit, against, .. } = measure;
        format!("{name:<18} {:>12.4} {unit:<8} {bar:<22} {against}", self.value)
    }
}
