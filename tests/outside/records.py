"""Reads the records as they are exported, with pandas and DuckDB, by the types that the page says.

`checks(folder, page)` gives for each check its name, what is not as documented, and how many things
were looked at. `folder` has `records.jsonl` and the folder `tables`; `page` is docs/records-format.md.
"""

import re
from pathlib import Path

import duckdb
import pandas as pd

# What pandas calls the documented types; masses and halves stay texts, so that they stay exact.
IN_PANDAS = {"BIGINT": "Int64", "INTEGER": "Int64", "VARCHAR": "string", "DATE": "string"}
# Columns of an event's line; a head's are apart.
LINE = {
    "seq": "BIGINT",
    "tap": "BIGINT",
    "kind": "VARCHAR",
    "version": "INTEGER",
    "wall_ms": "BIGINT",
    "offset_min": "INTEGER",
    "checksum": "BIGINT",
    "body": "JSON",
    "events": "BIGINT",
}


def documented(page):
    """The columns of each table with their types, from its chapter."""
    tables = {}
    for chapter in page.split("\n### ")[1:]:
        name = re.match(r"`([a-z-]+\.csv)`", chapter)
        if name:
            rows = re.findall(r"^\| `(\w+)` \| ([A-Z0-9(),]+) \|", chapter, re.MULTILINE)
            tables[name.group(1)] = dict(rows)
    return tables


def quoted(path):
    return "'" + str(path).replace("'", "''") + "'"


def checks(folder, page):
    folder, page = Path(folder), Path(page).read_text(encoding="utf-8")
    connection = duckdb.connect()
    for name, types in documented(page).items():
        path = folder / "tables" / name
        wrong = []
        columns = ", ".join(f"'{column}': '{kind}'" for column, kind in types.items())
        read = f"read_csv({quoted(path)}, header = true, columns = {{{columns}}})"
        found = connection.execute(f"SELECT * FROM {read}").fetchall()
        kinds = {column: IN_PANDAS.get(kind, "string") for column, kind in types.items()}
        frame = pd.read_csv(path, dtype=kinds, keep_default_na=False, na_values=[""])
        if list(frame.columns) != list(types):
            wrong.append(f"columns {list(frame.columns)}")
        if len(frame) != len(found):
            wrong.append(f"pandas has {len(frame)} rows, DuckDB {len(found)}")
        parquet = folder / (name + ".parquet")
        connection.execute(f"COPY (SELECT * FROM {read}) TO {quoted(parquet)} (FORMAT parquet)")
        again = connection.execute(f"SELECT * FROM read_parquet({quoted(parquet)})").fetchall()
        if again != found:
            wrong.append("Parquet has other rows")
        yield f"{name} by pandas and DuckDB, as documented", wrong, len(found)

    # The command of the page, as it stands there, beside the tables.
    command = re.search(r"```sql\n(.*?)\n```", page, re.DOTALL).group(1)
    for name in ["sets.csv", "sets.parquet"]:
        place = folder / ("tables" if name.endswith(".csv") else ".") / name
        command = command.replace(f"'{name}'", quoted(place))
    connection.execute(command)
    count = "SELECT count(*) FROM "
    made = connection.execute(count + f"read_parquet({quoted(folder / 'sets.parquet')})").fetchone()[0]
    rows = len(pd.read_csv(folder / "tables" / "sets.csv"))
    wrong = [] if made == rows else [f"{made} rows, not {rows}"]
    yield "the page's command makes Parquet by DuckDB", wrong, rows

    path = folder / "records.jsonl"
    columns = ", ".join(f"'{column}': '{kind}'" for column, kind in LINE.items())
    read = f"read_json({quoted(path)}, format = 'newline_delimited', columns = {{{columns}}})"
    events = connection.execute(
        f"SELECT seq, kind, json_extract_string(body, '$.event.body_mass_kept.mass') FROM {read} "
        "WHERE seq IS NOT NULL ORDER BY seq"
    ).fetchall()
    frame = pd.read_json(path, lines=True, dtype=False)
    said = int(frame["events"].dropna().iloc[0])
    ours = frame.dropna(subset=["seq"])
    wrong = []
    if [row[0] for row in events] != list(range(1, said + 1)):
        wrong.append(f"DuckDB has {len(events)} events, the head says {said}")
    if len(ours) != said:
        wrong.append(f"pandas has {len(ours)} events, the head says {said}")
    yield "JSON Lines by pandas and DuckDB, as documented", wrong, said

    masses = [row[2] for row in events if row[2] is not None]
    types = {"date": "string", "mass_kg": "string"}
    table = list(pd.read_csv(folder / "tables" / "body-mass.csv", dtype=types)["mass_kg"])
    wrong = [] if masses == table else [f"{masses} and {table}"]
    yield "body mass is the same in JSON Lines and in its table", wrong, len(masses)
