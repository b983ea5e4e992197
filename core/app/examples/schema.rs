//! The contract's JSON Schema, as it is written, for a shell whose types are made from it:
//! `cargo run -p barwright-app --features schema --example schema`.

use barwright_app::contract::{Action, Answer, EngineError, Intent, Look, Reading};
use schemars::generate::SchemaSettings;

/// All that crosses.
#[derive(schemars::JsonSchema)]
#[allow(dead_code)]
struct Contract {
    reading: Reading,
    intent: Intent,
    action: Action,
    look: Look,
    answer: Answer,
    error: EngineError,
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let settings = SchemaSettings::default().for_serialize();
    let schema = settings.into_generator().into_root_schema_for::<Contract>();
    serde_json::to_writer_pretty(std::io::stdout(), &schema)?;
    Ok(())
}
