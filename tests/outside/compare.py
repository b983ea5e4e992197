"""Works out again, with general libraries, what the program worked out, and compares.

One line a check; the last says how many passed and failed. Ends with 1 where any failed.

- numpy, pandas: hard sets of each muscle, side and week from the rows of ten invented years,
  against the sums that the store keeps. The rules are those of core/domain/src/volume: a set counts
  1 for a muscle trained directly and apart for one trained indirectly (Pelland et al. 2024); sets
  under six repetitions stand apart (Baz-Valle et al. 2021); a call decides what is hard (common
  practice: four or fewer left).
- scipy: theilslopes with method="joint", and the median absolute deviation, against the fit of
  calls to slowing.
- numpy: the seven published formulas of a one-rep max, and the percentages between the rows of the
  textbook's table (NSCA Essentials, 4th ed., Table 17.7).
- pandas, DuckDB: the demo's records as they are exported, read by the documented types.
"""

import json
import sys
import time
from pathlib import Path

import numpy as np
import pandas as pd
import records
from scipy import stats

folder = Path(sys.argv[1])
passed = failed = 0


def check(name, differences, count):
    """`differences`: what is not the same, in words; of `count` that were compared."""
    global passed, failed
    if count == 0:
        differences = ["nothing was compared"]
    if differences:
        failed += 1
        print(f"FAILED {name}: {len(differences)} of {count} differ")
        for line in differences[:5]:
            print(f"    {line}")
    else:
        passed += 1
        print(f"passed {name} ({count} compared)")


def lines(name):
    with open(folder / name, encoding="utf-8") as file:
        return [json.loads(line) for line in file]


def whole(name):
    return json.loads((folder / name).read_text(encoding="utf-8"))


# --- weekly sums -------------------------------------------------------------------------------

sets = pd.DataFrame(lines("sets.jsonl"))
exercises = whole("exercises.json")
trained = pd.DataFrame(
    [
        {"exercise": one["slug"], "muscle": muscle, "role": role}
        for one in exercises
        for role in ("direct", "indirect")
        for muscle in one[role]
    ]
)
speed = {one["slug"] for one in exercises if one["speed"]}
EASIEST = 8  # half repetitions: four left


def weekly(sets):
    """Counts by week, muscle, side, bucket and role."""
    called = sets["left_halves"].notna()
    failed_rep = sets["ending"].isin(["failed", "form"])
    planned = (sets["ending"] == "as_called") & (
        sets["target_halves"].isna() | (sets["target_halves"] <= EASIEST)
    )
    hard = np.where(called, sets["left_halves"] <= EASIEST, failed_rep | planned)
    counted = sets[
        hard & (sets["kind"] != "ramp") & ~sets["exercise"].isin(speed) & (sets["reps"] != 0)
    ]
    rows = counted[["week", "exercise", "side"]].assign(under_six=counted["reps"] < 6)
    both = rows["side"].isna()
    left = rows[both | (rows["side"] == "left")].assign(side="left")
    right = rows[both | (rows["side"] == "right")].assign(side="right")
    merged = pd.concat([left, right]).merge(trained, on="exercise")
    return merged.groupby(["week", "muscle", "side", "under_six", "role"]).size()


seconds = []
for _ in range(5):
    begun = time.perf_counter()
    theirs = weekly(sets)
    seconds.append(time.perf_counter() - begun)

ours = {}
for week in whole("volume.json"):
    for row in week["muscles"]:
        for bucket, under_six in (("sets", False), ("under_six", True)):
            for side in ("left", "right"):
                for role in ("direct", "indirect"):
                    count = row["tally"][bucket][side][role]
                    if count:
                        ours[(week["week"], row["muscle"], side, under_six, role)] = count
theirs = {key: int(count) for key, count in theirs.items()}
check(
    "hard sets of each muscle a week, against pandas",
    [
        f"{key}: ours {ours.get(key)}, pandas {theirs.get(key)}"
        for key in sorted(ours.keys() | theirs.keys())
        if ours.get(key) != theirs.get(key)
    ],
    len(theirs),
)

# --- fits --------------------------------------------------------------------------------------

differences, count, none = [], 0, 0
for fit in lines("fits.jsonl"):
    x, y = np.array(fit["x"], dtype=float), np.array(fit["y"], dtype=float)
    if np.unique(x).size < 2:
        continue
    theirs = stats.theilslopes(y, x, method="joint")
    count += 1
    if fit["fit"] is None:
        none += 1
        # Nothing is said where slowing does not go with fewer left.
        if theirs.slope < 0:
            differences.append(f"scipy's slope is {theirs.slope}, and we give none")
        continue
    mine = fit["fit"]
    for key, value in (("slope", theirs.slope), ("intercept", theirs.intercept)):
        if not np.isclose(mine[key], value, rtol=1e-12, atol=1e-12):
            differences.append(f"{key}: ours {mine[key]!r}, scipy {value!r}")
    spread = stats.median_abs_deviation(y - theirs.slope * x - theirs.intercept)
    tenths = np.clip(np.rint(5 * (theirs.intercept + theirs.slope * fit["at"])), 0, 200)
    off = max(np.rint(5 * 2.44 * spread), 5)
    if (mine["left_tenths"], mine["off_tenths"]) != (tenths, off):
        differences.append(f"estimate: ours {mine}, scipy {tenths} off by {off}")
check("fits of calls to slowing, against scipy", differences, count)
check("fits that say something", [] if none < count // 2 else [f"{none} say nothing"], count)

# --- estimates ---------------------------------------------------------------------------------

FORMULAS = {
    "epley": lambda w, r: w * (1 + r / 30),
    "brzycki": lambda w, r: 36 * w / (37 - r),
    "lander": lambda w, r: 100 * w / (101.3 - 2.67123 * r),
    "lombardi": lambda w, r: w * r**0.10,
    "mayhew": lambda w, r: 100 * w / (52.2 + 41.9 * np.exp(-0.055 * r)),
    "oconner": lambda w, r: w * (1 + 0.025 * r),
    "wathan": lambda w, r: 100 * w / (48.8 + 53.8 * np.exp(-0.075 * r)),
}
differences, rows = [], lines("estimates.jsonl")
for row in rows:
    value = FORMULAS[row["formula"]](float(row["load"]), float(row["reps"]))
    # Ours is rounded to a microgram.
    if abs(float(row["max"]) - value) > 2e-9:
        differences.append(f"{row}: numpy {value}")
check("one-rep max by seven formulas, against numpy", differences, len(rows))

# --- percentages -------------------------------------------------------------------------------

# Rows of the table that copies agree on.
REPS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 15]
PERCENT = [100, 95, 93, 90, 87, 85, 83, 80, 77, 75, 65]
differences, rows = [], whole("percents.json")
for row in rows:
    value = 100 * np.interp(row["halves"] / 2, REPS, PERCENT)
    if abs(row["hundredths"] - value) > 1e-6:
        differences.append(f"{row}: numpy {value}")
check("percentages between the rows of the table, against numpy", differences, len(rows))

# --- records as files --------------------------------------------------------------------------

page = Path(__file__).parents[2] / "docs" / "records-format.md"
for name, differences, count in records.checks(folder / "records", page):
    check(name, differences, count)

# --- a measure, not a check --------------------------------------------------------------------

timing = whole("timing.json")
mine, pandas = min(timing["seconds"]), min(seconds)
print(
    f"measure: weekly balance over ten years ({len(sets)} sets), read from the projections "
    f"({timing['profile']} build): {mine * 1e3:.2f} ms; pandas on the same rows, already in memory: "
    f"{pandas * 1e3:.1f} ms; ratio {pandas / mine:.1f} (held to 10)"
)
print(f"{passed} passed, {failed} failed")
sys.exit(1 if failed else 0)
