//! Makes the demo's file as of a given time, for the pictures and tests of a shell:
//! `cargo run -p barwright-app --example demo_at -- FILE LOCALE WALL_MS OFFSET_MINUTES`.

use std::path::Path;

use barwright_app::contract::Reading;
use barwright_app::demo;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let [file, locale, wall_ms, offset] = args.as_slice() else {
        return Err("FILE LOCALE WALL_MS OFFSET_MINUTES".into());
    };
    let now = Reading {
        wall_ms: wall_ms.parse()?,
        offset_minutes: offset.parse()?,
        boot_ms: None,
        boot_id: None,
    };
    demo::create(Path::new(file), locale, &now)?.shut_down()?;
    Ok(())
}
