//! Gyms' files.

/// Steps of 2.5 kg on the bar, 1.25 kg on the belt, 5 kg of assistance.
pub const CELLAR: &str = r#"
name = "Cellar"
unit = "kg"
also = ["rack", "bench", "pull-up-bar", "belt"]

[[bar]]
name = "Long bar"
mass = "20 kg"

[[plate]]
mass = "25 kg"
pairs = 4
diameter = "450 mm"

[[plate]]
mass = "20 kg"
pairs = 1
diameter = "450 mm"

[[plate]]
mass = "10 kg"
pairs = 2

[[plate]]
mass = "5 kg"
pairs = 1

[[plate]]
mass = "2.5 kg"
pairs = 1

[[plate]]
mass = "1.25 kg"
pairs = 1

[[stack]]
name = "Help"
kind = "assisted-pull-up"
from = "5 kg"
to = "60 kg"
step = "5 kg"
"#;

/// The name that a gym's file begins with.
///
/// # Panics
/// With the file, where it has none.
#[must_use]
pub fn name(gym: &str) -> &str {
    let name = gym.split_once("name = \"").and_then(|(_, rest)| rest.split_once('"'));
    name.unwrap_or_else(|| panic!("it has no name: {gym}")).0
}
