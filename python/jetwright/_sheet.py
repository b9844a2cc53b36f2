"""The burner file, its sheet, and the burner it describes.

``json`` and ``html`` are imported where they are used: they would take a tenth of the time of ``import jetwright``.
"""

from __future__ import annotations

import os
from typing import Any, Mapping

import numpy as np

from . import _native
from ._air import BurnerRun
from ._arrays import answer


def _read(source: str | os.PathLike[str] | Mapping[str, Any]) -> tuple[str, bool, str]:
    """The text of a burner file, whether it is JSON, and its name."""
    if isinstance(source, Mapping):
        import json

        return json.dumps(_plain(source), allow_nan=False), True, "the burner"
    path = os.fspath(source)
    with open(path, encoding="utf-8") as file:
        return file.read(), False, path


def _plain(value: Any) -> Any:
    """Mappings and lists without ``None``, numbers as JSON knows them."""
    if isinstance(value, Mapping):
        return {str(key): _plain(item) for key, item in value.items() if item is not None}
    if isinstance(value, (list, tuple)):
        return [_plain(item) for item in value]
    return value.item() if isinstance(value, np.generic) else value


class Sheet(Mapping[str, Any]):
    """A shop sheet: its JSON as a mapping, its text when printed.

    The keys are those of the command's JSON answer.
    """

    __slots__ = ("_data", "_metric", "_inch")

    def __init__(self, data: str, metric: str, inch: str) -> None:
        import json

        self._data = json.loads(data)
        self._metric = metric
        self._inch = inch

    def __getitem__(self, key: str) -> Any:
        return self._data[key]

    def __iter__(self) -> Any:
        return iter(self._data)

    def __len__(self) -> int:
        return len(self._data)

    def text(self, units: str = "metric") -> str:
        """The printed page, in ``"metric"`` or ``"inch"`` units."""
        if units not in ("metric", "inch"):
            raise ValueError(f'units must be "metric" or "inch", not {units!r}')
        return self._metric if units == "metric" else self._inch

    def to_pandas(self) -> Any:
        """The settings as a ``DataFrame``, a row a setting."""
        import pandas as pd

        return pd.DataFrame(self._data["settings"]).set_index("name")

    def __str__(self) -> str:
        return self._metric

    def __repr__(self) -> str:
        return self._metric

    def _repr_html_(self) -> str:
        import html

        return f"<pre>{html.escape(self._metric)}</pre>"

    def __reduce__(self) -> Any:
        import json

        return (Sheet, (json.dumps(self._data), self._metric, self._inch))


def sheet(source: str | os.PathLike[str] | Mapping[str, Any]) -> Sheet:
    """The shop sheet of a burner file (a path) or of the same keys as a mapping.

    Raises
    ------
    ValueError
        With the command's one message: file, line, field, what was given, what is accepted.
    """
    return Sheet(*_native.sheet_from_text(*_read(source)))


class Burner:
    """The burner of a file (a path) or a mapping, run over arrays of settings.

    Examples
    --------
    >>> import jetwright as jw
    >>> burner = jw.Burner("examples/bell-foundry.toml")  # doctest: +SKIP
    >>> burner.run(gauge_pressure=[2 * jw.psi, 6 * jw.psi], air_ratio=1.05).damper  # doctest: +SKIP
    """

    __slots__ = ("_native",)

    def __init__(self, source: str | os.PathLike[str] | Mapping[str, Any]) -> None:
        self._native = _native.Burner(*_read(source))

    def run(
        self,
        *,
        gauge_pressure: Any,
        damper: Any = None,
        air_ratio: Any = None,
        chamber_temperature: Any = None,
        invalid: str = "raise",
    ) -> BurnerRun:
        """The settings table: jet, air, head and chamber solved together.

        Give the ``damper`` opening (0.1 to 1), or the ``air_ratio`` for which to find it. Where the blower cannot give
        the air ratio the element has no answer: use ``invalid="nan"``.
        """
        if (damper is None) == (air_ratio is None):
            raise ValueError("give damper or air_ratio, one of the two")
        aim = ("damper", damper) if air_ratio is None else ("air_ratio", air_ratio)
        values = {
            "gauge_pressure": gauge_pressure,
            aim[0]: aim[1],
            "chamber_temperature": 0.0 if chamber_temperature is None else chamber_temperature,
        }
        flags = (air_ratio is not None, chamber_temperature is not None)
        rows = answer(lambda *args: self._native.run(*flags, *args), values, invalid, len(BurnerRun._fields))
        rows[-1] = rows[-1] == 1.0
        return BurnerRun(*rows)

    def blower_curve(self, points: int = 50) -> tuple[np.ndarray, np.ndarray]:
        """Flows (m3/s) and static pressures (Pa) of the blower in the site's air."""
        flow, pressure = self._native.blower_curve(int(points))
        return np.asarray(flow), np.asarray(pressure)

    def system_curve(
        self, *, gauge_pressure: float, damper: float = 1.0, points: int = 60
    ) -> tuple[np.ndarray, np.ndarray]:
        """Flows (m3/s) and the static pressures (Pa) the burner asks of a blower there, gas on, damper left alone.

        Jet, ducts, head and chamber solved together, with the wheel from a fifth to twice its speed.
        """
        flow, pressure = self._native.system_curve(float(gauge_pressure), float(damper), int(points))
        return np.asarray(flow), np.asarray(pressure)

    def __repr__(self) -> str:
        return f"Burner({self._native.name!r})"

    def __reduce__(self) -> Any:
        return (_unpickle, (self._native,))


def _unpickle(native: Any) -> Burner:
    burner = Burner.__new__(Burner)
    burner._native = native
    return burner
