"""Runs the SQL of docs/many-lifters.md over a folder of sets, and works the answers out again
without SQL: FOLDER is what `barwright rehearse --sets` wrote. Prints what differs, how long each
query took and the most memory that was held; its last line says "N passed, M failed"."""

import collections
import csv
import decimal
import glob
import os
import re
import resource
import sys
import time

import duckdb

DOC, FOLDER = os.path.abspath(sys.argv[1]), sys.argv[2]
# With many lifters the second way takes longer than the first is worth: it can be left out.
COMPARE = "--no-compare" not in sys.argv

# Nobody is hurt in a rehearsal, and all of it lies in one year.
BY_HAND = [
    {"lifter": "hand-1", "part": "3", "plan": "By hand", "week": "1", "session": "1",
     "day": "2025-01-06", "exercise": "back-squat", "rule": "", "kind": "work", "row": "0",
     "round": "1", "side": "", "load_kg": "100", "moved_kg": "100", "reps": "3", "left": "",
     "ending": "pain", "missed": "false", "hard": "false", "estimate_kg": ""},
    {"lifter": "hand-1", "part": "3", "plan": "By hand", "week": "1", "session": "1",
     "day": "2025-01-06", "exercise": "bench-press", "rule": "two_for_two", "kind": "work",
     "row": "0", "round": "1", "side": "", "load_kg": "62.5", "moved_kg": "62.5", "reps": "5",
     "left": "1", "ending": "as_called", "missed": "true", "hard": "true", "estimate_kg": "75"},
]


def blocks():
    with open(DOC, encoding="utf-8") as file:
        return dict(re.findall(r"```sql ([a-z-]+)\n(.*?)```", file.read(), re.S))


def rows():
    for name in sorted(glob.glob("sets-*.csv")):
        with open(name, newline="", encoding="utf-8") as file:
            yield from csv.DictReader(file)


def expected():
    """The same answers, a row at a time."""
    shares = collections.defaultdict(list)
    with open("muscles.csv", newline="", encoding="utf-8") as file:
        for row in csv.DictReader(file):
            shares[row["exercise"]].append((row["muscle"], float(row["sets"])))
    lifters, hard = collections.defaultdict(set), collections.Counter()
    best, misses, pain = {}, {}, {}
    for row in rows():
        week, exercise, lifter = int(row["week"]), row["exercise"], row["lifter"]
        lifters[week].add(lifter)
        if row["hard"] == "true":
            for muscle, sets in shares[exercise]:
                hard[week, muscle] += sets
        if row["estimate_kg"]:
            key = (exercise, week, lifter)
            best[key] = max(best.get(key, 0), decimal.Decimal(row["estimate_kg"]))
        if row["rule"]:
            sets, missed = misses.get(row["rule"], (0, 0))
            misses[row["rule"]] = (sets + 1, missed + (row["missed"] == "true"))
        sets, hurt, who = pain.get(exercise, (0, 0, frozenset()))
        if row["ending"] == "pain":
            hurt, who = hurt + 1, who | {lifter}
        pain[exercise] = (sets + 1, hurt, who)
    spread = collections.defaultdict(list)
    for (exercise, week, _), kg in best.items():
        spread[exercise, week].append(kg)
    def rank(of, percent):
        return sorted(of)[-(-len(of) * percent // 100) - 1]
    return {
        "hard-sets": sorted((week, muscle, sets / len(lifters[week]))
                            for (week, muscle), sets in hard.items()),
        "estimates": sorted((*key, len(of), rank(of, 10), rank(of, 50), rank(of, 90))
                            for key, of in spread.items()),
        "misses": sorted((rule, sets, missed, missed / sets)
                         for rule, (sets, missed) in misses.items()),
        "pain": sorted((exercise, sets, hurt, len(who))
                       for exercise, (sets, hurt, who) in pain.items() if hurt),
    }


def same(one, other):
    return len(one) == len(other) and all(
        abs(float(a) - float(b)) < 1e-6 if not isinstance(a, str) else a == b
        for left, right in zip(one, other) for a, b in zip(left, right, strict=True))


def main():
    sql = blocks()
    queries = ["hard-sets", "estimates", "misses", "pain"]
    assert set(sql) == {"load", "reader", *queries}, sorted(sql)
    os.chdir(FOLDER)
    with open("sets-by-hand.csv", "w", newline="", encoding="utf-8") as file:
        writer = csv.DictWriter(file, BY_HAND[0].keys())
        writer.writeheader()
        writer.writerows(BY_HAND)
    database = duckdb.connect()
    def run(name):
        begun = time.perf_counter()
        found = database.execute(sql[name]).fetchall()
        print(f"{name}: {time.perf_counter() - begun:.2f} s, {len(found)} rows")
        return found
    run("load")
    run("reader")
    count, lifters = database.execute("SELECT count(*), count(DISTINCT lifter) FROM sets").fetchone()
    print(f"{count} sets of {lifters} lifters")
    found = {name: run(name) for name in queries}
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"at the most {peak:.0f} MB held")
    passed = failed = 0
    partitions = sorted(os.listdir("sets"))
    checks = {"partitions": (partitions, ["year=2024", "year=2025"])}
    if COMPARE:
        checks.update({name: (found[name], answer) for name, answer in expected().items()})
    for name, (ours, answer) in checks.items():
        right = ours == answer if name == "partitions" else bool(ours) and same(ours, answer)
        passed, failed = passed + right, failed + (not right)
        if not right:
            print(f"{name} differs: {ours[:3]} … and not {answer[:3]} …")
    print(f"{passed} passed, {failed} failed")
    sys.exit(failed > 0)


main()
