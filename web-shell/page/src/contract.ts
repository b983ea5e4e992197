// Made from the contract's JSON Schema by tools/contract.mjs, which the check runs and compares.

/** What a tap does, as [`crate::Engine::act`] takes it. */
export type Action = 
    /** Dispatch this. */
    | {
        do: {
            /** The intent. */
            intent: Intent;
            /**
             * The session it belongs to, by its number: a key kept from an earlier one is refused. None
             * belongs to no session.
             */
            session?: number | null;
            /** What is shown when it is recorded; none is wherever it leads. */
            then?: 
                | Look
                | null;
        };
    }
    /** Show this. */
    | {
        show: {
            /** The screen to look at. */
            look: Look;
        };
    };

/** What a call to the engine comes to: a whole screen, what it is of, and what the device is to do. */
export interface Answer {
    /** What to carry out, in order; nothing where nothing was tapped. */
    effects: readonly (Effect)[];
    /**
     * What is shown: the look that shows it again. Where a look has nothing to show, as the floor
     * without a session, it is the one that is shown in its place.
     */
    look: Look;
    /** The screen to show. */
    screen: Screen;
    /**
     * When to look again, as wall time in milliseconds: the screen changes by itself then. None
     * where it stands until something is tapped.
     */
    wakes_at: number | null;
}

/** How a session of the plan is arranged otherwise than it says. */
export type Arrange = 
    /** The plan goes on from here, from today. */
    | "enter"
    /** It is left out, or no longer. */
    | {
        leave_out: {
            /** Whether it is. */
            left_out: boolean;
        };
    }
    /** It is moved to another day, or back to its own. */
    | {
        move: {
            /** Local date, in days since 1970-01-01; none is its own. */
            day: number | null;
        };
    }
    /** Its work is done with another session's, or apart again. */
    | {
        join: {
            /** The row of the other; none is apart. */
            with: string | null;
        };
    }
    /** It is done once more, or not. */
    | {
        again: {
            /** Whether it is. */
            again: boolean;
        };
    }
    /** So many weeks away before its week; none takes it back. */
    | {
        travel: {
            /** Weeks, 8 at the most. */
            weeks: number;
        };
    }
    /** It is changed for once. */
    | {
        change: {
            /** What. */
            change: SessionChange;
        };
    };

/** Hard sets a muscle, planned against done. */
export interface BalanceScreen {
    /** The whole screen read aloud. */
    aloud: string;
    /** The muscles. */
    bars: readonly (MuscleBar)[];
    /** The length that fills the width, in half sets. */
    full_halves: number;
    /** Other spans. */
    keys: readonly (Key)[];
    /** A week of each kind on average, its muscles below it; empty where all weeks are of one kind. */
    kinds: readonly (Row)[];
    /** What falls behind, and where a set could go. */
    sentences: readonly (Row)[];
    /** Which weeks. */
    subtitle: string;
    /** Its title. */
    title: string;
}

/** The bar, or what stands for it. */
export interface BarZone {
    /** The bar's name and mass. */
    bar: string;
    /** What to do to what is on now: "take off 10 · put on 5, 2.5 each side"; empty for nothing. */
    change: string;
    /** A collar is drawn. */
    collar: boolean;
    /** What the figure counts: "each side", "each hand"; empty where it is plain. */
    counts: string;
    /** A bar is drawn; otherwise `line` stands in large type. */
    drawn: boolean;
    /** "The bar holds…". */
    holds: 
        | Key
        | null;
    /** Dumbbells, stack or machine in a line; empty with a drawing. */
    line: string;
    /** The plates of one side from the inside out. */
    plates: readonly (PlateDrawing)[];
    /** The load in the largest type: "110 kg"; empty where there is none. */
    total: string;
}

/** One beat of a repetition's tempo, for a metronome. */
export interface Beat {
    /** Milliseconds it takes; 0 is as fast as possible, and waits for the next repetition. */
    ms: number;
    /** What is said: "lower", "pause", "lift". */
    says: string;
}

/** The call. */
export interface CallZone {
    /** Cautions, where they matter. */
    cautions: readonly (string)[];
    /** Cues. */
    cues: readonly (string)[];
    /** The exercise. */
    exercise: string;
    /** Last time's line; empty for none. */
    last: string;
    /** Tempo, technique, range: a line each. */
    manner: readonly (string)[];
    /** One sentence: "Set 2 of 4: 5 reps, 1–2 in reserve." */
    sentence: string;
    /** Set-up, at the exercise's first set. */
    set_up: readonly (string)[];
    /** How many sets and minutes are left. */
    to_go: string;
    /** Why this load: the derivation in words, a line a step. */
    why: readonly (string)[];
}

/**
 * What every lifter should know, whoever asks and whenever: who asks a clinician first, how to try a
 * max, what guards a lifter, when to stop; and whether the lifter is under 18. Its place in a shell is
 * beside the help.
 */
export interface CareScreen {
    /** The whole screen read aloud. */
    aloud: string;
    /** What can be tapped: under 18, a coach is there today. */
    keys: readonly (Key)[];
    /** The cautions, under headings. */
    rows: readonly (Row)[];
    /** Who decides. */
    subtitle: string;
    /** Its title. */
    title: string;
}

/** A chart as data: each shell draws it. */
export interface Chart {
    /** The first axis: days since 1970-01-01. */
    across: ChartAxis;
    /** The chart in a sentence, to be read aloud. */
    aloud: string;
    /** Its series, those behind first. */
    series: readonly (ChartSeries)[];
    /** Its title. */
    title: string;
    /**
     * The second, in the unit of its label: grams for a load in kilograms or pounds, else
     * repetitions, seconds or metres as they are counted.
     */
    up: ChartAxis;
}

/** An axis with round ticks. */
export interface ChartAxis {
    /** Where it begins. */
    from: number;
    /** What it shows. */
    label: string;
    /** Its ticks. */
    ticks: readonly (ChartTick)[];
    /** Where it ends. */
    to: number;
}

/** A point; a band has a low and a high end, a line has both the same. */
export interface ChartPoint {
    /** High end along the second. */
    high: number;
    /** The point in words. */
    label: string;
    /** Low end along the second. */
    low: number;
    /** Along the first axis. */
    x: number;
}

/** A series. */
export interface ChartSeries {
    /** How it is drawn. */
    kind: SeriesKind;
    /** What it is. */
    label: string;
    /** Its points, in order of x. */
    points: readonly (ChartPoint)[];
}

/** A mark on an axis. */
export interface ChartTick {
    /** Where, in the unit of the axis. */
    at: number;
    /** Its label. */
    label: string;
}

/**
 * What is being entered on the floor and is not said yet. The shell keeps it and hands it back;
 * the core steps it.
 */
export interface Draft {
    /** The amount shown in the big figure, in the unit of the call; none is as called. */
    amount: number | null;
    /** The earlier part that is corrected; none records the current one. */
    correct: string | null;
    /** Repetitions with help. */
    helped: number;
    /** The load's figure in exact kilograms, for a correction. */
    load: string | null;
    /** The panel that is open. */
    panel: string | null;
}

/**
 * How something that is made by hand is changed. What is changed is a draft: each step of it is on
 * disk before it is shown, and nothing goes by it until it is taken up.
 */
export type Edit = 
    /** A draft is begun; the place says from what. */
    | "open"
    /** The place says this. */
    | {
        put: {
            /** What, as it is written. */
            text: string;
        };
    }
    /** One more in the list at the place. */
    | {
        add: {
            /** Of what, where there are kinds; empty for the usual. */
            what: string;
        };
    }
    /** What is at the place goes. */
    | "remove"
    /** What is at the place goes so many places down its list; negative is up. */
    | {
        move: {
            /** Places. */
            by: number;
        };
    }
    /** The last step is taken back. */
    | "undo"
    /** What was taken back comes again. */
    | "redo"
    /** The draft is dropped. */
    | "drop"
    /** What it says holds from now on. */
    | "take_up";

/** Something for the device to carry out. There are few, and they are data. */
export type Effect = 
    /**
     * Ring once at a deadline; replaces the ring asked for before. Three short marks before it,
     * one at it.
     */
    | {
        ring_at: {
            /** The deadline on the boot clock, where there is one: it rules while the device runs. */
            boot_ms: number | null;
            /** What comes next: a notification's second line, and the voice's. */
            next: string;
            /** What a notification says, and a voice for those who want it aloud. */
            text: string;
            /** The deadline as wall time, in milliseconds. */
            wall_ms: number;
        };
    }
    /** No ring is wanted any more. */
    | "cancel_ring"
    /** A mark to be felt. */
    | {
        haptic: {
            /** Which. */
            kind: HapticKind;
        };
    }
    /** Keep the screen on, or no longer. */
    | {
        keep_awake: {
            /** On. */
            on: boolean;
        };
    };

/** A recording key that is the effort. */
export interface EffortKey {
    /** Held: half a repetition more. */
    half: 
        | Key
        | null;
    /** Tapped. */
    key: Key;
}

/** The engine's answer when it did not do what was asked. */
export type EngineError = 
    /** Nothing changed: say it, and stay where you are. */
    | {
        refused: {
            /** The reason asks, and this is the yes to it; none where it does not ask. */
            ask?: 
                | Action
                | null;
            /** For programs. */
            code: RefusalCode;
            /** What is wrong, what was kept, what to do, in words. */
            reason: string;
        };
    }
    /**
     * The file could not be read or written. The tap was not recorded; everything before it is
     * kept.
     */
    | {
        storage: {
            /** Where what was kept lies; empty where there is no file. */
            kept_at: string;
            /** What is wrong, what was kept and where, in words. */
            reason: string;
        };
    }
    /** The file was written by a newer release: it is left untouched. */
    | {
        newer_file: {
            /** In words. */
            reason: string;
        };
    }
    /** The engine was shut down. */
    | {
        closed: {
            /** In words. */
            reason: string;
        };
    }
    /** A defect. The state was rebuilt from the log and the next call works. */
    | {
        broken: {
            /** In words. */
            reason: string;
            /** What to send the makers; nothing personal is in it. */
            report: string;
        };
    };

/** Bars, plates, dumbbells, stacks and machines of one gym. */
export interface EquipmentScreen {
    /** The whole screen read aloud. */
    aloud: string;
    /** The gym as a file, to be saved or handed on. */
    file: 
        | FormFile
        | null;
    /** Gyms to choose from. */
    gyms: readonly (Key)[];
    /** What can be tapped. */
    keys: readonly (Key)[];
    /** What it has. */
    rows: readonly (Row)[];
    /** Its unit, and what it comes to in short. */
    subtitle: string;
    /** The gym. */
    title: string;
}

/**
 * Something to write, sent as [`Intent::Write`]. What is looked for is written too: it shows, and
 * records nothing.
 */
export interface Field {
    /** An example of what would do. */
    hint: string;
    /** Its name. */
    id: string;
    /** What it asks for. */
    label: string;
    /** Digits are wanted, with a unit. */
    numeric: boolean;
    /** What stands in it. */
    value: string;
}

/** The big figure of what was done. */
export interface Figure {
    /** One step down. */
    down: Key;
    /** A tap on it: what is far from the call is typed. */
    pad: Key;
    /** It changes by itself: a hold is running. */
    runs: boolean;
    /** As shown. */
    text: string;
    /** Its unit: "reps", "s", "m". */
    unit: string;
    /** One step up. */
    up: Key;
}

/** Something wrong with a file, in its place. */
export interface FileFault {
    /** What to write instead. */
    advice: string;
    /** It only advises: the plan can be adopted all the same. */
    advises: boolean;
    /** The check that advises, as the file can accept it; empty for a fault. */
    check: string;
    /** Column in characters, from 1. */
    column: number;
    /** What it is, in words: a fault, or what a coach would change or look at. */
    label: string;
    /** Line, from 1. */
    line: number;
    /** What is wrong. */
    problem: string;
    /** The line's text. */
    text: string;
    /** Spaces and carets that underline the place in it. */
    underline: string;
}

/** What goes on the bar now, the call, and one thumb zone to record it. */
export interface FloorScreen {
    /** The whole screen read aloud. */
    aloud: string;
    /** Zone one. */
    bar: BarZone;
    /** The beats of one repetition, where the set has a tempo: a shell that is asked to ticks at each. */
    beats: readonly (Beat)[];
    /** Zone two. */
    call: CallZone;
    /** Lines that a lifter must see now: the device restarted, the session is paused. */
    notices: readonly (string)[];
    /** The list that is open over the thumb zone. */
    panel: 
        | Panel
        | null;
    /** The part to be done now, by name; none when nothing is left. */
    part: string | null;
    /** The running rest; it takes the large type. */
    rest: 
        | RunningRest
        | null;
    /** Zone three. */
    thumb: ThumbZone;
    /** The session's title. */
    title: string;
}

/** What a form says as a file, to be saved or handed on. */
export interface FormFile {
    /** A name for it: `boathouse.toml`. */
    name: string;
    /** Its text. */
    text: string;
}

/** What a form is of. */
export type FormOf = 
    /** How to begin: the demo, a new plan, a plan file. */
    | "start"
    /** A gym that is being made or mended. */
    | "gym"
    /** Maxes, working loads and body mass. */
    | "maxes"
    /** The exercises there are, and those of one's own. */
    | "exercises"
    /** A plan that is being made or mended. */
    | "plan"
    /** A session of the plan, changed for once before it begins. */
    | "session"
    /** Which loads a lifter likes, in a gym or for a lift. */
    | "liked"
    /**
     * Changes that a coach sent: the look's text is the file's. They are taken by putting that text:
     * all that fit, or the one whose id is the place.
     */
    | "changes"
    /**
     * The records as a file to be handed on: all of them, or what a coach gets; and a file of them
     * that was opened, before it is taken. A shell opens one as it opens a plan, and is answered
     * this.
     */
    | "records";

/** A line of a form. */
export interface FormRow {
    /** How deep it stands: 0 a heading. */
    depth: number;
    /** A second, quieter line: what follows from it. Empty for none. */
    detail: string;
    /** One step down; none where it has no steps. */
    down: 
        | Key
        | null;
    /** What is wrong here, a sentence each, with what to do. */
    faults: readonly (string)[];
    /** Its value typed; none where it can't be. */
    field: 
        | Field
        | null;
    /** Stable name within the form. */
    id: string;
    /** What else can be done with it; the first opens it, where it opens. */
    keys: readonly (Key)[];
    /** What a coach would look at here, a sentence each. */
    remarks: readonly (string)[];
    /** What it is. */
    text: string;
    /** One step up. */
    up: 
        | Key
        | null;
    /** What it says now, as it stands between down and up; empty where it says nothing. */
    value: string;
    /** Something is missing or wrong here; the text, a fault or a remark says it too. */
    warns: boolean;
}

/** What is made and mended by hand. */
export interface FormScreen {
    /** The whole form read aloud. */
    aloud: string;
    /** What it was over time; none where that says nothing. */
    chart: 
        | Chart
        | null;
    /** It as a file; none where it is none. */
    file: 
        | FormFile
        | null;
    /** Take up, drop, undo, add, and back. */
    keys: readonly (Key)[];
    /**
     * What follows from it as a whole: what can be made and what can't, what is wrong nowhere in
     * particular.
     */
    notes: readonly (string)[];
    /** A file is a way on from here: the shell opens one, and shows its text as a plan's. */
    plan_file: boolean;
    /** Its lines. */
    rows: readonly (FormRow)[];
    /** How it stands. */
    subtitle: string;
    /** What it is of. */
    title: string;
}

/** What guards a lifter under a bar. */
export type GuardChoice = 
    /** Safety pins or arms. */
    | "pins"
    /** A spotter. */
    | "spotter"
    /** Neither. */
    | "neither";

/** A short mark to be felt. */
export type HapticKind = 
    /** Recorded. */
    | "recorded"
    /** Refused or taken back. */
    | "changed";

/** How a set ended. */
export type HowEnded = 
    /** As called. */
    | "as_called"
    /** A repetition was tried and failed. */
    | "failed"
    /** Form went. */
    | "form"
    /** Pain. */
    | "pain"
    /** Interrupted. */
    | "interrupted"
    /** The equipment. */
    | "equipment";

/**
 * A tap. Most come ready-made with a [`super::Key`]; a shell makes none up but `Wake`, `AdoptPlan`,
 * `AddGym` and `Write`.
 *
 * Amounts are in the unit of the call: repetitions, seconds, or millimetres. Parts are named as
 * the floor names them: exercise, set and part, joined by points (`"0.2.1"`).
 */
export type Intent = 
    /** Begin a session. */
    | {
        begin: {
            /** Minutes there are; what has to be left out for it is. */
            minutes: number | null;
            /** The row of a session as Today or Weeks names it; none is the one that is on. */
            session: string | null;
            /** The clock was asked about, and is right. */
            sure: boolean;
        };
    }
    /** Begin to enter a session that was done without the tool. */
    | {
        enter_paper: {
            /** The local date that it was done on, in days since 1970-01-01. */
            day: number;
            /** The row of a session as Weeks names it; none is the one that is on. */
            session: string | null;
        };
    }
    /** Of a session from paper: what is left was done as called. */
    | {
        all_as_called: {
            /** An exercise of the session, with what is done back to back with it; none is all. */
            entry: number | null;
        };
    }
    /** A recorded session is of this local date, whatever the clock said. */
    | {
        date_session: {
            /** In days since 1970-01-01. */
            day: number;
            /** Its number, as its key gives it; none is the last. */
            session: number | null;
        };
    }
    /** Lay the rest of the plan anew, or take that back. */
    | {
        lay_anew: {
            /** How; none takes it back. */
            how: 
                | LayAnew
                | null;
        };
    }
    /** The work of the current set begins now: a hold, a clock-driven series. */
    | "start"
    /**
     * A partner taps: the first repetition of the current part begins, or one is over. Never the
     * lifter under a bar.
     */
    | {
        tap_rep: {
            /** The part it is meant for. */
            part: string;
        };
    }
    /** The current part is over. */
    | {
        record: {
            /** How much; none is as called. */
            amount: number | null;
            /** How it ended. */
            ended: HowEnded;
            /** Repetitions with a spotter's help, beyond the amount. */
            helped: number;
            /** The set ends with this part. */
            last: boolean;
            /** Half repetitions left in the lifter's judgement; none is not called. */
            left_halves: number | null;
            /**
             * The part it is meant for: a tap that comes late or twice is refused, not recorded on the
             * next one. None is the current one.
             */
            part: string | null;
        };
    }
    /** An earlier part is corrected. */
    | {
        correct: {
            /** How much; none stays. */
            amount: number | null;
            /** How it ended. */
            ended: HowEnded;
            /** Repetitions with a spotter's help. */
            helped: number;
            /** Half repetitions left; none is not called. */
            left_halves: number | null;
            /** The load's figure in exact kilograms; none stays. */
            load: string | null;
            /** The part. */
            part: string;
            /** A load far from the recorded one is meant: without it the engine asks first. */
            sure: boolean;
        };
    }
    /** Leave the current set out, or what is left of its parts. */
    | "skip_set"
    /** Leave out what is left of an exercise. */
    | {
        skip_exercise: {
            /** The exercise of the session. */
            entry: number;
        };
    }
    /** Do another exercise instead. */
    | {
        swap: {
            /** The exercise of the session. */
            entry: number;
            /** What is done instead, by its slug. */
            exercise: string;
            /** Why. */
            why: SwapReason;
        };
    }
    /** One more exercise, at the end. */
    | {
        add_exercise: {
            /** It, by its slug. */
            exercise: string;
        };
    }
    /** Put off what is left of an exercise to the end. */
    | {
        postpone: {
            /** The exercise of the session. */
            entry: number;
        };
    }
    /** Take up an exercise now. */
    | {
        take_up: {
            /** The exercise of the session. */
            entry: number;
        };
    }
    /** One more set like the last. */
    | {
        add_set: {
            /** The exercise of the session. */
            entry: number;
        };
    }
    /** Change the load. */
    | {
        change_load: {
            /** The exercise of the session. */
            entry: number;
            /** The figure with its unit, or exact kilograms without. */
            load: string;
            /** Only of the next set, not of those after it. */
            only_next: boolean;
            /** It was asked and is meant all the same. */
            sure: boolean;
        };
    }
    /** The bar holds these plates on each side, from the inside out, as the equipment writes them. */
    | {
        bar_holds: {
            /** The plates. */
            side: readonly (string)[];
        };
    }
    /** Make the running rest longer, or shorter. */
    | {
        rest_by: {
            /** Seconds; negative is shorter. */
            seconds: number;
        };
    }
    /** Pins, a spotter, or neither. */
    | {
        guarded_by: {
            /** The exercise of the session. */
            entry: number;
            /** Which. */
            guard: GuardChoice;
        };
    }
    /** What is worn for an exercise from here on: all of it. */
    | {
        use_kit: {
            /** The exercise of the session. */
            entry: number;
            /** The kit. */
            kit: readonly (KitChoice)[];
        };
    }
    /** The text of a [`super::Field`]. */
    | {
        write: {
            /** The field's id. */
            field: string;
            /** It was asked and is meant all the same. */
            sure: boolean;
            /** What was written. */
            text: string;
        };
    }
    /** Pause. */
    | "pause"
    /** Go on. */
    | "resume"
    /** The session is over. */
    | "finish"
    /** Hold back what the session comes to for an owner of loads, or let it go. */
    | {
        hold_back: {
            /** Held. */
            held: boolean;
            /** The owner, as the tally names it. */
            owner: string;
        };
    }
    /** Yes to what the tally asks of an owner of loads. */
    | {
        accept: {
            /** The owner, as the tally names it. */
            owner: string;
        };
    }
    /** An exercise on which pain stands was done without it, or not. */
    | {
        answer_pain: {
            /** The exercise, by its slug. */
            exercise: string;
            /** Without pain. */
            free: boolean;
        };
    }
    /** What hurt is the joint: exercises that move the same one are to be careful too, or not. */
    | {
        pain_of_joint: {
            /** The exercise that hurt, by its slug. */
            exercise: string;
            /** Whether it is. */
            of_joint: boolean;
        };
    }
    /** An illness is over: the next session is an ease-in. */
    | "was_ill"
    /**
     * Whether the lifter is under 18, and whether a coach is there today: no max of a minor is
     * tested without.
     */
    | {
        minor: {
            /** A coach is there today. */
            coached: boolean;
            /** Under 18. */
            under_18: boolean;
        };
    }
    /** Take back the last tap. */
    | "undo"
    /** Bring back what was last taken back. */
    | "redo"
    /**
     * The device started, its clocks were changed, or the program came back to the front. Answers
     * with every effect that stands: a running rest's ring, the screen kept on.
     */
    | "wake"
    /**
     * Adopt a plan. One of the name of the plan that is on is that plan mended: week, dates, loads
     * and misses stay.
     */
    | {
        adopt_plan: {
            /**
             * Where a number was changed in one of several rows that share a load: all of them start at
             * the new one, not it alone.
             */
            all_rows: boolean;
            /** A new plan, whatever its name. */
            as_new: boolean;
            /**
             * Where it is entered, as a row of Weeks: "3.1"; none is the first session, or where the
             * mended plan stands.
             */
            from: string | null;
            /** The file's text. */
            text: string;
        };
    }
    /** Arrange a session of the plan otherwise than it says. */
    | {
        arrange: {
            /** How. */
            how: Arrange;
            /** Its row, as Weeks names it. */
            session: string;
        };
    }
    /** Go back to a plan that was on before. */
    | {
        take_up_plan: {
            /** Its name, as the key gives it. */
            plan: string;
        };
    }
    /** Add a gym, or put one of the same name right. */
    | {
        add_gym: {
            /** The file's text. */
            text: string;
        };
    }
    /**
     * Show the demo in the place of the records, or the records again: all of it is invented, in a file
     * of its own, and the records stay as they are.
     */
    | {
        demo: {
            /** The demo. */
            on: boolean;
        };
    }
    /** Change what is being made by hand. */
    | {
        edit: {
            /** How. */
            edit: Edit;
            /** What it is. */
            of: FormOf;
            /** Where, as its keys name the place. */
            place: string;
            /**
             * The step of the draft that it was meant for: a tap that comes late or twice is refused.
             * None is the last.
             */
            step: number | null;
        };
    }
    /** Train in this gym from now on. */
    | {
        choose_gym: {
            /** Its name. */
            name: string;
        };
    };

/** Something to tap. */
export interface Key {
    /** What it does. */
    action: Action;
    /** It is the state that holds already: a chosen gym, kit that is worn. */
    chosen: boolean;
    /** Whether it can be tapped now. */
    enabled: boolean;
    /** Stable name within the screen. */
    id: string;
    /** What stands on it. */
    label: string;
    /** What it does, to be read aloud. */
    says: string;
}

/** What is worn or used. */
export type KitChoice = 
    /** A belt. */
    | "belt"
    /** Wraps. */
    | "wraps"
    /** Straps. */
    | "straps"
    /** Sleeves. */
    | "sleeves";

/** How the rest of a plan is laid anew after an absence. */
export type LayAnew = 
    /** All of it comes whole weeks later. */
    | "push_back"
    /** What lies behind is left out. */
    | "drop"
    /** What lies behind comes on free days, no lift heavy on neighbouring ones. */
    | "squeeze"
    /** The same, whatever is heavy on neighbouring days. */
    | "squeeze_close";

/** One exercise over time. */
export interface LiftScreen {
    /** The whole screen read aloud. */
    aloud: string;
    /** Loads and estimates; none with too little history. */
    chart: 
        | Chart
        | null;
    /** What can be written: its max, the working load of its rows in the plan. */
    fields: readonly (Field)[];
    /** Pages and other exercises. */
    keys: readonly (Key)[];
    /** Records. */
    records: readonly (Row)[];
    /** Its sessions, latest first, a page of them. */
    sessions: readonly (Row)[];
    /** Its reference max and how it came about. */
    subtitle: string;
    /** The exercise. */
    title: string;
}

/** A screen to look at. Looking changes nothing. */
export type Look = 
    /** Today's sheet. */
    | {
        today: {
            /** Minutes there are. */
            minutes: number | null;
            /** The row of a session; none is the one that is on. */
            session: string | null;
        };
    }
    /** The floor. */
    | {
        floor: {
            /** What is being entered. */
            draft: Draft;
        };
    }
    /** The tally of the last session. */
    | "tally"
    /** The plan's weeks. */
    | "weeks"
    /** The plan's weeks as they would be with the rest laid anew. */
    | {
        anew: {
            /** How. */
            how: LayAnew;
        };
    }
    /** One exercise over time. */
    | {
        lift: {
            /** All its sessions on one page, as paper has them. */
            all?: boolean;
            /** The exercise, by its slug or name; empty is the one on the floor, else the one done last. */
            exercise: string;
            /** The page of its sessions, from 0. */
            page: number;
        };
    }
    /** Balance. */
    | {
        balance: {
            /** Over so many weeks, 1 to 52; none is this week. */
            weeks: number | null;
        };
    }
    /** What this gym has. */
    | "equipment"
    /** The general cautions, and what is said of the lifter's age. */
    | "care"
    /** A plan. */
    | {
        plan: {
            /** The text of a file to read; none is the plan that is on. */
            text: string | null;
            /** The week to lay out, from 1; none is the whole plan in short. */
            week: number | null;
        };
    }
    /** What is made and mended by hand. */
    | {
        form: {
            /** The part of it that is open, as its keys name it; empty is the whole. */
            at: string;
            /** What it is of. */
            of: FormOf;
            /** What is looked for or being entered there, as it was typed. */
            text: string;
        };
    };

/**
 * A load of a later session, moved by a max that changed: what a row of [`TallyScreen::changes`]
 * says in words, as data.
 */
export interface MovedLoadData {
    /** And as it is now. */
    after: string;
    /** Nothing of the plan is left to move: this is the plan done again. */
    again: boolean;
    /** The first work load as it was, in exact kilograms. */
    before: string;
    /** The exercise, by its slug. */
    exercise: string;
    /** The row that says it. */
    row: string;
    /** The week, from 1. */
    week: number;
}

/** One muscle's bar. Lengths are in half sets. */
export interface MuscleBar {
    /** It falls behind; the text says it too. */
    behind: boolean;
    /** A second, quieter line: the other counts; empty where nothing was done. */
    detail: string;
    /** Hard sets done that train it directly; on the side that has less, as the next two. */
    direct: number;
    /** Hard sets done. */
    done_halves: number;
    /** Of those done, on the left; none where sides don't matter. */
    left_halves: number | null;
    /** The muscle. */
    muscle: string;
    /** Hard sets planned. */
    planned_halves: number;
    /** Of those done, on the right. */
    right_halves: number | null;
    /** The bar in words. */
    text: string;
    /** Hard sets done that train it directly or not. */
    total: number;
    /** Of those done, sets under six repetitions. */
    under_six_halves: number;
}

/** The tap is recorded, with everything before it; only its screen is missing. */
export interface NotShownScreen {
    /** The whole screen read aloud. */
    aloud: string;
    /** Where to go from here. */
    keys: readonly (Key)[];
    /** What failed, what was kept, what to do. */
    reason: string;
    /** What to send the makers, where it is a defect; empty otherwise. */
    report: string;
    /** That it is recorded. */
    title: string;
}

/** A list that opens over the thumb zone: what is seldom needed. */
export interface Panel {
    /** Closes it. */
    close: Key;
    /** What can be written. */
    fields: readonly (Field)[];
    /** Its name. */
    id: string;
    /** What can be tapped. */
    keys: readonly (Key)[];
    /** Lines in it. */
    rows: readonly (Row)[];
    /** Its title. */
    title: string;
}

/** A plan: what it says, or what is wrong with it and where. */
export interface PlanScreen {
    /** The whole screen read aloud. */
    aloud: string;
    /** What is wrong. */
    faults: readonly (FileFault)[];
    /** Adopt, other weeks. */
    keys: readonly (Key)[];
    /** What it says. */
    rows: readonly (Row)[];
    /** Weeks and sessions in short. */
    subtitle: string;
    /** The plan's name, or what the matter is. */
    title: string;
}

/** A plate to draw. */
export interface PlateDrawing {
    /** Colour as `#RRGGBB`, from the equipment; empty for neutral. */
    colour: string;
    /** Diameter in thousandths of the largest plate's. */
    height: number;
    /** Colour of its number on it. */
    ink: string;
    /** Its number. */
    label: string;
    /** Thickness in thousandths of the sleeve's length. */
    width: number;
}

/** A reading of the clocks, taken at the tap. */
export interface Reading {
    /** Tells one start of the device from another, 1 to 64 bytes. Leave it out where there is none. */
    boot_id: string | null;
    /** Milliseconds since the device started, counting sleep. Leave it out where there is none. */
    boot_ms: number | null;
    /** Minutes that local time is ahead of UTC, -1439 to 1439. */
    offset_minutes: number;
    /** Milliseconds of wall time since 1970-01-01T00:00Z; the years 2000 to 2199. */
    wall_ms: number;
}

/** Why an intent was refused, for programs; [`EngineError::Refused`] has the words. */
export type RefusalCode = 
    /** The reading is outside what a clock can show. */
    | "bad_reading"
    /** There is no session, or none is running. */
    | "no_session"
    /** A session is running already. */
    | "session_running"
    /** Nothing is left to do, of the session or the exercise. */
    | "nothing_left"
    /** There is no such exercise, set, part, field or row here. */
    | "not_here"
    /** The tap was meant for another part than the current one, or for another session. */
    | "stale"
    /** The amount, load or text is out of range, of another kind, or can't be read. */
    | "bad_value"
    /** The load can't be made here. */
    | "cannot_make"
    /** The load has to be said first. */
    | "load_needed"
    /** It is more than the last weeks support, or the clock is far from what was recorded: [`EngineError::Refused`] asks, and carries the yes. */
    | "ask"
    /** There are as many as there can be. */
    | "too_many"
    /** It is so already. */
    | "already_so"
    /** There is nothing to take back, or nothing to bring back. */
    | "nothing_to_undo"
    /** There is no plan, gym or max to go by. */
    | "nothing_to_go_by"
    /** The file has faults; the Plan screen shows them in place. */
    | "faults";

/** A line of a sheet. */
export interface Row {
    /** How deep it stands: 0 a heading, 1 an exercise, 2 its sets. */
    depth: number;
    /** A second, quieter line; empty for none. */
    detail: string;
    /** It is done. */
    done: boolean;
    /** Stable name within the screen. */
    id: string;
    /** What can be done with it. */
    keys: readonly (Key)[];
    /** Its text. */
    text: string;
    /** Something is missing, missed or wrong here; the text says it too. */
    warns: boolean;
    /** Why: the derivation in words, a line a step; empty where there is none. */
    why: readonly (string)[];
}

/** A rest. */
export interface RunningRest {
    /** The deadline on the boot clock, where it holds. */
    deadline_boot_ms: number | null;
    /** The deadline as wall time. */
    deadline_wall_ms: number;
    /** What it is: "Rest", "Pause in the set", "Next start". */
    label: string;
    /** Milliseconds left at the reading; negative when over. */
    left_ms: number;
    /** Longer. */
    longer: Key;
    /** It is over. */
    over: boolean;
    /** Shorter. */
    shorter: Key;
    /** The figures: "1:23", or "+0:12" when over. */
    text: string;
}

/** A whole screen. */
export type Screen = 
    /** What is on, with what loads, how long, what this gym lacks. */
    | {
        today: {
            /** Its content. */
            today: TodayScreen;
        };
    }
    /** What goes on the bar now, the call, one thumb zone to record it. */
    | {
        floor: {
            /** Its content. */
            floor: FloorScreen;
        };
    }
    /** What was done, what changes next time and why. */
    | {
        tally: {
            /** Its content. */
            tally: TallyScreen;
        };
    }
    /** The plan as weeks and sessions. */
    | {
        weeks: {
            /** Its content. */
            weeks: WeeksScreen;
        };
    }
    /** One exercise over time. */
    | {
        lift: {
            /** Its content. */
            lift: LiftScreen;
        };
    }
    /** Each muscle and side, planned and done. */
    | {
        balance: {
            /** Its content. */
            balance: BalanceScreen;
        };
    }
    /** What this gym has. */
    | {
        equipment: {
            /** Its content. */
            equipment: EquipmentScreen;
        };
    }
    /** The general cautions, which can be opened at any time. */
    | {
        care: {
            /** Its content. */
            care: CareScreen;
        };
    }
    /** A plan file read: what it says, or what is wrong with it and where. */
    | {
        plan: {
            /** Its content. */
            plan: PlanScreen;
        };
    }
    /** Something that is made or mended by hand. */
    | {
        form: {
            /** Its content. */
            form: FormScreen;
        };
    }
    /** A tap was recorded, and the screen that should follow it could not be made. */
    | {
        not_shown: {
            /** Its content. */
            not_shown: NotShownScreen;
        };
    };

/** How a series is drawn. */
export type SeriesKind = 
    /** A line through its points. */
    | "line"
    /** Marks. */
    | "marks"
    /** A band between low and high. */
    | "band"
    /** Crosses, of what failed. */
    | "failed";

/** What is changed in a session that is still to come, for once. Exercises go by their slugs. */
export type SessionChange = 
    /** Another exercise in the place of one. */
    | {
        instead: {
            /** The one that is. */
            exercise: string;
            /** The one that is not done. */
            of: string;
        };
    }
    /** One more, at the end. */
    | {
        add: {
            /** It. */
            exercise: string;
        };
    }
    /** One is left out. */
    | {
        leave: {
            /** It. */
            exercise: string;
        };
    }
    /** One comes a place earlier, with what is done back to back with it. */
    | {
        earlier: {
            /** It. */
            exercise: string;
        };
    }
    /** What this gym has not is done with what it has, or left out. */
    | "fit"
    /** The last change is taken back. */
    | "back"
    /** All of them are. */
    | "as_planned";

/** Why an exercise is swapped. */
export type SwapReason = 
    /** The gym lacks the equipment. */
    | "lacking"
    /** It is taken. */
    | "taken"
    /** Pain. */
    | "pain"
    /** The lifter's wish. */
    | "wish";

/** What was done, and what changes next time and why. */
export interface TallyScreen {
    /** The whole screen read aloud. */
    aloud: string;
    /** Cautions for the days after. */
    cautions: readonly (string)[];
    /** What changes next time and why. */
    changes: readonly (Row)[];
    /** What was done. */
    done: readonly (Row)[];
    /** What can be written. */
    fields: readonly (Field)[];
    /** What can be tapped. */
    keys: readonly (Key)[];
    /** Loads to come that a changed max moves, as data; the rows say them too. */
    moved: readonly (MovedLoadData)[];
    /** Notes. */
    notes: readonly (string)[];
    /** When, how long, how many sets. */
    subtitle: string;
    /** The session's title. */
    title: string;
}

/** Everything that records. */
export interface ThumbZone {
    /** Beside it: "short", "without a call". */
    beside: readonly (Key)[];
    /** The effort keys, fewest left first; empty where the call asks for none. */
    effort: readonly (EffortKey)[];
    /** "Set cut short". */
    ended: 
        | Key
        | null;
    /** What was done, already at what was called; none where there is nothing to count. */
    figure: 
        | Figure
        | null;
    /** The wide key that says what it does; none where the effort keys record. */
    main: 
        | Key
        | null;
    /** Opens what is seldom needed. */
    more: 
        | Key
        | null;
    /** "Racked, in reserve", over the effort keys; empty without them. */
    prompt: string;
    /** Redo, saying what it brings back. */
    redo: 
        | Key
        | null;
    /** Undo, saying what it takes back. */
    undo: 
        | Key
        | null;
}

/** What is on, with what loads, how long, what this gym lacks and what to do instead. */
export interface TodayScreen {
    /** The whole screen read aloud. */
    aloud: string;
    /** Cautions. */
    cautions: readonly (string)[];
    /** How long it takes. */
    duration: string;
    /** Begin, go on, other times. */
    keys: readonly (Key)[];
    /** What to leave out for the minutes there are; empty for nothing. */
    left_out: readonly (string)[];
    /** What the sheet still needs: body mass, a max. */
    needs: readonly (Field)[];
    /** The sheet. */
    rows: readonly (Row)[];
    /** The plan, the week and the gym. */
    subtitle: string;
    /** The session's title. */
    title: string;
}

/** A week. */
export interface WeekOfPlan {
    /** It is the week we are in. */
    current: boolean;
    /** Its sessions. */
    rows: readonly (Row)[];
    /** "Week 3: ordinary". */
    title: string;
}

/** The plan as weeks and sessions: where we are, what was missed. */
export interface WeeksScreen {
    /** The whole screen read aloud. */
    aloud: string;
    /** What can be tapped. */
    keys: readonly (Key)[];
    /** Where we are. */
    subtitle: string;
    /** The plan's name. */
    title: string;
    /** The weeks. */
    weeks: readonly (WeekOfPlan)[];
}
