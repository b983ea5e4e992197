//! English.

use super::OwnWords;

pub(super) const WORDS: OwnWords = OwnWords {
    places: ["Today", "Floor", "Tally", "Weeks", "Lift", "Balance", "Equipment", "Plan", "Care"],
    help_and_leave: "? help  q quit",
    yes: "Yes, all the same",
    why: "Why",
    write: "Write",
    invented: "demo: invented",
    looked_at: "a return: nothing is kept",

    keys: "Keys",
    on_the_floor: (
        "On the floor",
        &[
            "enter or space records what was done, where one wide key does.",
            "Where the call asks for effort, a digit records the set with so many reps in reserve, \
             or at that RPE (0 is ten); a point first makes it a half: .2 is two and a half.",
            "- and + correct the figure before it is recorded, # types what is far from it (x rubs \
             a digit out, enter takes the number), u undoes the last tap.",
            "[ and ] make the rest shorter and longer. Nothing has to be started: recording the \
             next set ends the rest.",
            "c counts a tempo aloud, with a bell at each beat, until the set is recorded or c again.",
            "b corrects what is on the bar, e says why a set was cut short, m opens the rest.",
        ],
    ),
    everywhere: (
        "Everywhere",
        &[
            "Every key that works is shown where it works, and does what stands beside it.",
            "A capital letter in the bottom line leads to that screen: T today, F floor, A tally, W \
             weeks, L lift, B balance, E equipment, P plan, C what to take care of. Tab goes to the \
             next.",
            "Up and down choose a line, page up and page down scroll; enter writes a field; w says \
             why.",
            "esc closes what lies over a screen; q leaves the program. What was recorded is kept, a \
             session that runs goes on when you come back.",
        ],
    ),
    files: ("Files", &["o opens a file: a plan on Plan, a gym on Equipment."]),

    add_gym: "Add a gym from a file",
    read_plan: "Read a plan file",
    open_plan: "Open a file",
    save: "Save it as a file",

    plan_file: "File",
    plan_path: "plans/spring.toml",
    gym_file: "Gym file",
    gym_path: "gyms/boathouse.toml",
    save_as: "Save as",
    such_as: |what| format!("such as {what}"),
    none_taken: "Nothing was taken yet. --yes takes all that fit, --take ID one of them.",
    taken_or_left: "enter: that is it   esc: keep it as it was",

    get_set: "get set",
    count_tempo: "Count the tempo",
    why_this_load: "Why this load",
    take_care: "Take care",
    how: "How",
    set_up: "Set-up",
    cues: "Cues",

    still_needed: "Still needed",
    left_out: "Left out for the time there is",
    skipped: "Skipped for the time there is",
    next_time: "Next time",
    done: "Done",
    is_done: "done",
    notes: "Notes",
    to_write: "To write",
    by_hand: "By hand",
    records: "Records",
    sessions: "Sessions",
    no_session: "No session yet.",
    other_exercises: "Other exercises",
    behind: "Behind",
    by_kind: "By kind of week",
    bar_done: "done",
    bar_short: "of it under six reps",
    bar_planned: "planned",
    bar_sides: "below it: ▀ left  ▄ right",
    this_week: "this week",
    look: "look",
    fault: |line, column, label, problem| {
        format!("line {line}, column {column}, {label}: {problem}")
    },

    not_read: |path, error| format!("The file {path} can't be read: {error}."),
    too_large: |path, most| format!("The file {path} is larger than {most} MB."),
    no_text: |path, byte| {
        format!("The file {path} is not plain text (UTF-8): byte {byte} is something else.")
    },
    saved: |path| format!("Saved in {path}."),
    there_already: |path| {
        format!("There is a file {path} already; it was left as it is. Name another.")
    },
    name_another: |path| format!("{path} is there already; name another."),
    not_written: |path, error| format!("The file {path} can't be written: {error}."),
    no_folder: |path, error| format!("The folder {path} can't be made: {error}."),
    folder_not_read: |path, error| format!("{path} can't be read: {error}."),
    reading_stopped: "A defect stopped the reading at one of the files. Nothing was changed.",
    many_returns: |path, most| format!("{path} has more than {most} returns; read them in parts."),
    path_no_text: |path| format!("The path {path} is not plain text (UTF-8)."),
    no_home: |variable| {
        format!(
            "This user has no home folder. Say where to keep the records with --store or \
             {variable}."
        )
    },

    nothing_yet: |path| {
        format!(
            "No records yet: there is no file {path}.\n\
             barwright --demo              look at the demo, invented records in a file of their own\n\
             barwright plan adopt FILE     begin with a plan\n\
             barwright                     on a terminal: the screens"
        )
    },
    demo_sheet: "The demo's sheet, all of it invented:",
    first: |path| {
        format!(
            "Barwright. No records yet: there is no file {path}.\n\n\
             d  look at the demo: invented records, in a file of their own\n\
             p  begin with a plan file: it is shown with all that is wrong in it first\n\
             n  begin with nothing: a plan, a gym and maxes are made here, key by key\n\
             q  leave; nothing is made\n"
        )
    },
    d_p_n_q: "d, p, n or q: ",
    ask_plan: "Plan file: ",

    no_fault: |name| format!("{name}: no fault."),
    trained_in: "trained in",
    trains_in: |name| format!("Trained in from now on: {name}."),
    no_gym: |name, names| format!("No gym is called \u{201c}{name}\u{201d}. There are: {names}."),
    accepted: "accepted:",
    plan_no_fault: |title, length| format!("{title}: {length}, no fault"),
    adopted: |title, length| format!("Adopted: {title}\n{length}"),
    copied: |path, entries| format!("{path}: {entries} entries, a whole copy"),
    exported: |path, entries, sessions| format!("{path}: {entries} entries, {sessions} sessions"),
    rows: |path, rows| format!("{path}: {rows} rows"),
    way_back: |path| {
        format!("As they were before: {path}\nTo go back: barwright records restore {path}")
    },
    loads_differ: |loads| match loads {
        1 => "One load stands otherwise there; it stays as it is here.".to_owned(),
        _ => format!("{loads} loads stand otherwise there; they stay as they are here."),
    },
    loads_written: |path| {
        format!("To look at them, and take those you want: barwright records changes {path}")
    },
    look_at_columns: |table, columns| {
        format!(
            "Look at it and put it right, then: barwright records import {table} --columns {columns} \
             --dry-run"
        )
    },
    way_out: "To take it out again: barwright records import --take-back",
    taken_back: |sessions| match sessions {
        0 => "Nothing came into the history from elsewhere.".to_owned(),
        1 => "1 session went out of the history again.".to_owned(),
        _ => format!("{sessions} sessions went out of the history again."),
    },
};
