"""Results of several columns that read well in a notebook."""

from __future__ import annotations

from typing import Any, Mapping

import numpy as np


def short(value: Any) -> str:
    """A value in a few digits."""
    if isinstance(value, (bool, int)) or value is None:
        return "-" if value is None else str(value)
    if isinstance(value, float):
        return f"{value:.6g}"
    if isinstance(value, np.ndarray):
        return np.array2string(value, precision=4, threshold=6)
    if isinstance(value, (list, tuple)):
        return "[" + ", ".join(short(item) for item in value) + "]"
    return repr(value)


class Columns:
    """What results of several columns share; ``UNITS`` of the subclass holds the unit of every field."""

    __slots__ = ()

    UNITS: Mapping[str, str] = {}

    def to_dict(self) -> dict[str, Any]:
        """Every result by name."""
        names: tuple[str, ...] = getattr(self, "_fields")
        return {name: getattr(self, name) for name in names}

    def to_pandas(self) -> Any:
        """A ``DataFrame`` with one row an element (flattened) and one column a result; what was not asked is left out."""
        import pandas as pd

        data: dict[str, Any] = {}
        for name, value in self.to_dict().items():
            if isinstance(value, tuple):
                data |= {f"{name}[{number}]": column for number, column in enumerate(value)}
            elif value is not None:
                data[name] = value
        index = getattr(next(iter(data.values())), "index", None)
        return pd.DataFrame({name: np.ravel(np.asarray(value)) for name, value in data.items()}, index=index)

    def _rows(self) -> list[tuple[str, str, str]]:
        return [(name, short(value), self.UNITS.get(name, "")) for name, value in self.to_dict().items() if value is not None]

    def __repr__(self) -> str:
        lines = [f"{name} = {value} {unit}".rstrip() for name, value, unit in self._rows()]
        return f"{type(self).__name__}(\n  " + "\n  ".join(lines) + "\n)"

    def _repr_html_(self) -> str:
        rows = "".join(f"<tr><td>{name}</td><td>{value}</td><td>{unit}</td></tr>" for name, value, unit in self._rows())
        return f"<table><tr><th>result</th><th>value</th><th>unit</th></tr>{rows}</table>"
