"""Writes one file of reference rows. Used by every generator beside it.

    quantity,inputs,value,unit,tolerance,source

`inputs` is `name=value;name=value`, SI with the unit in the name; a composition is `C3H8=0.95|C2H6=0.05`.
`tolerance` is relative unless it ends with ` abs`. `source` ends with how the number came here.
"""

import csv
import pathlib

DIRECTORY = pathlib.Path(__file__).resolve().parent.parent
HEADER = ["quantity", "inputs", "value", "unit", "tolerance", "source"]

FOUND = "[found]"
FOUND_IN_CODE = "[found in code]"
FROM_FORMULA = "[computed from the formula]"
FROM_MEMORY = "[from memory]"


def computed_with(library):
    """The tag of a number a general-purpose library gave, with the version it gave it at."""
    import importlib.metadata

    return f"[computed with {library} {importlib.metadata.version(library)}]"


def digits(number, count=7):
    """A number in `count` significant digits; text is passed on as it was printed."""
    return number if isinstance(number, str) else f"{float(number):.{count}g}"


def row(quantity, inputs, value, unit, tolerance, source):
    """One row; `inputs` a dictionary. Text keeps the digits of the source."""
    given = ";".join(f"{name}={digits(v, 10)}" for name, v in inputs.items())
    return [quantity, given, digits(value), unit, digits(tolerance, 3), source]


def half_digit(printed):
    """Half a step of the last printed digit, as an absolute tolerance."""
    decimals = len(printed.split(".")[1]) if "." in printed else 0
    return f"{0.5 * 10.0**-decimals * (1 + 1e-6):.3g} abs"


def write(topic, rows):
    """Writes `topic`.csv."""
    with open(DIRECTORY / f"{topic}.csv", "w", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(HEADER)
        writer.writerows(rows)
    print(f"{topic}.csv: {len(rows)} rows")
