//! What the tests from outside share: a plan with every way a set is made of parts.

/// One session: a cluster, a drop set, a rest-pause set, sides, a hold, and straight sets.
pub(crate) const PLAN: &str = r#"
name = "Boathouse trial"
weeks = 2
rest_step = "15 s"

[[session]]
name = "All kinds"

[[session.exercise]]
name = "Deadlift"
ramp = "none"
sets = 2
load = "100 kg"
cluster = { blocks = [2, 2, 1], pause = "20 s" }
rest = "3:00"

[[session.exercise]]
name = "Bench press"
ramp = "none"
sets = 1
reps = 8
load = "60 kg"
left = 0
drop = ["20 %", "25 %"]
rest = "2:00"

[[session.exercise]]
name = "Goblet squat"
ramp = "none"
sets = 1
reps = "8-10"
load = "20 kg"
left = 0
rest_pause = { pause = "15 s", each = 3, total = 15, most_parts = 4 }
rest = "2:00"

[[session.exercise]]
name = "Plank"
sets = 1
seconds = 30
rest = "1:00"

[[session.exercise]]
name = "Back squat"
ramp = "none"
sets = 2
reps = 5
load = "80 kg"
left = "1-2"
rest = "2 s"
"#;
