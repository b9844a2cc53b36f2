"""Checks that every file of rows is well formed. Python standard library alone; exit code 1 and a list when not."""

import csv
import math
import pathlib
import re
import sys

DIRECTORY = pathlib.Path(__file__).resolve().parent.parent
HEADER = ["quantity", "inputs", "value", "unit", "tolerance", "source"]
TAG = re.compile(r"\[(found|found in code|computed from the formula|from memory|computed with \S+ \d\S*)\]$")
SPECIES = re.compile(r"[A-Za-z0-9]+=[0-9.]+(\|[A-Za-z0-9]+=[0-9.]+)*$")


def number(text):
    value = float(text)
    return value if math.isfinite(value) else math.nan


def faults(fields):
    """What is wrong with one row."""
    if len(fields) != len(HEADER):
        return [f"{len(fields)} fields"]
    quantity, inputs, value, _, tolerance, source = fields
    found = []
    if not re.fullmatch(r"[a-z][a-z0-9_]*", quantity):
        found.append(f"quantity {quantity!r}")
    names = [part.split("=", 1)[0] for part in inputs.split(";")]
    if len(set(names)) != len(names) or not all(re.fullmatch(r"[a-z][a-z0-9_]*", n) for n in names):
        found.append(f"inputs {inputs!r}")
    for name, given in (part.split("=", 1) for part in inputs.split(";") if "=" in part):
        if name == "name":
            continue
        if name == "composition" or (name == "gas" and "=" in given):
            total = sum(number(part.split("=")[1]) for part in given.split("|"))
            if not SPECIES.match(given) or not abs(total - 1) < 1e-4:
                found.append(f"composition {given!r} adds to {total}")
        elif name != "gas" and number(given) != number(given):
            found.append(f"{name} {given!r}")
    try:
        if not math.isfinite(float(value)):
            found.append(f"value {value!r}")
        if not 0 < float(tolerance.removesuffix(" abs")) < (1e9 if tolerance.endswith(" abs") else 0.2):
            found.append(f"tolerance {tolerance!r}")
    except ValueError:
        found.append(f"value {value!r} or tolerance {tolerance!r}")
    if not TAG.search(source) or len(source) < 20:
        found.append(f"source {source!r}")
    return found


def main():
    bad, seen = 0, 0
    for path in sorted(DIRECTORY.glob("*.csv")):
        with open(path, newline="") as file:
            rows = list(csv.reader(file))
        if rows[0] != HEADER:
            print(f"{path.name}: header {rows[0]}")
            bad += 1
        met = set()
        for line, fields in enumerate(rows[1:], 2):
            wrong = faults(fields)
            if tuple(fields) in met:
                wrong.append("the same row twice")
            met.add(tuple(fields))
            for fault in wrong:
                print(f"{path.name}:{line}: {fault}")
            bad += bool(wrong)
            seen += 1
    print(f"{seen} rows, {bad} faulty")
    return bad > 0 or seen == 0


if __name__ == "__main__":
    sys.exit(main())
