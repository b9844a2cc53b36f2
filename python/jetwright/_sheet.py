"""The burner file, its sheet, and the burner it describes.

``json`` is imported where it is used: it would take a tenth of the time of ``import jetwright``.
"""

from __future__ import annotations

import os
from functools import partial
from typing import Any, Mapping, NamedTuple, Sequence

import numpy as np

from . import _native
from ._air import BurnerRun
from ._arrays import answer
from ._hazards import Warned, disjoint_base, hazards_of


def _read(source: str | os.PathLike[str] | Mapping[str, Any]) -> tuple[str | dict[str, Any], str]:
    """The text of a burner file, or a mapping in plain types, and its name."""
    if isinstance(source, Mapping):
        return _plain(source), "the burner"
    path = os.fspath(source)
    with open(path, encoding="utf-8") as file:
        return file.read(), path


def _plain(value: Any) -> Any:
    """Dictionaries and lists without ``None``, numbers as Python knows them."""
    if isinstance(value, Mapping):
        return {str(key): _plain(item) for key, item in value.items() if item is not None}
    if isinstance(value, (list, tuple)):
        return [_plain(item) for item in value]
    return value.item() if isinstance(value, np.generic) else value


class Sheet(Mapping[str, Any]):
    """A shop sheet: its JSON as a mapping, its text when printed, HTML in a notebook.

    The keys are those of the command's JSON answer.
    """

    __slots__ = ("_data", "_pages")

    def __init__(self, data: str, metric: Sequence[str], inch: Sequence[str]) -> None:
        import json

        self._data = json.loads(data)
        self._pages = {"metric": tuple(metric), "inch": tuple(inch)}

    def __getitem__(self, key: str) -> Any:
        return self._data[key]

    def __iter__(self) -> Any:
        return iter(self._data)

    def __len__(self) -> int:
        return len(self._data)

    def text(self, units: str = "metric") -> str:
        """The printed page, in ``"metric"`` or ``"inch"`` units."""
        return self._page(units)[0]

    def to_html(self, units: str = "metric") -> str:
        """The page as HTML that needs nothing beside it, in ``"metric"`` or ``"inch"`` units."""
        return self._page(units)[1]

    def card(self, units: str = "metric") -> str:
        """The card that hangs beside the furnace, as HTML of one page, in ``"metric"`` or ``"inch"`` units.

        Its gauge keeps to the unit that the file writes where that is one of these units.
        """
        return self._page(units)[2]

    def _page(self, units: str) -> tuple[str, ...]:
        if units not in self._pages:
            raise ValueError(f'units must be "metric" or "inch", not {units!r}')
        return self._pages[units]

    @property
    def hazards(self) -> list[dict[str, Any]]:
        """What the numbers warn of, the worst first: kind, severity, setting, number, limit and text of each."""
        return list(self._data["warnings"])

    def to_pandas(self) -> Any:
        """The settings as a ``DataFrame``, a row a setting."""
        import pandas as pd

        return pd.DataFrame(self._data["settings"]).set_index("name")

    def __str__(self) -> str:
        return self.text()

    def __repr__(self) -> str:
        return self.text()

    def _repr_html_(self) -> str:
        # Without the page's own style, which would restyle the notebook.
        return self.to_html().partition("<body>")[2].partition("</body>")[0]

    def __reduce__(self) -> Any:
        import json

        return (Sheet, (json.dumps(self._data), self._pages["metric"], self._pages["inch"]))


def sheet(source: str | os.PathLike[str] | Mapping[str, Any]) -> Sheet:
    """The shop sheet of a burner file (a path) or of the same keys as a mapping.

    Raises
    ------
    ValueError
        With the command's one message: file, line, field, what was given, what is accepted.
    """
    return Sheet(*_native.sheet_of(*_read(source)))


_LIGHTS = ("cold", "glowing", "never")
_GOES_OUT = ("lights", "too_lean", "too_rich", "blow_off", "no_flow")


class _Lighting(NamedTuple):
    """What settings do; arrays like the arguments.

    ``lights`` is ``"cold"``, ``"glowing"`` (only in a glowing chamber) or ``"never"``, empty where there is no answer;
    ``goes_out`` says why not cold; ``pull`` is the ports' wall gradient over what a plain port's flame withstands;
    ``glow_needed`` (K) is how hot walls must be, NaN where the fire keeps none so hot.
    """

    lights: Any
    goes_out: Any
    air_ratio: Any
    pull: Any
    glow_needed: Any


@disjoint_base
class Lighting(Warned, _Lighting):
    __doc__ = _Lighting.__doc__ or ""

    _ask: Any = None


class LightingRange(NamedTuple):
    """Ends (Pa) of the gauge pressures; arrays like the argument.

    0 or infinity where the stretch has no end, NaN where there is none. ``cold_low`` and ``cold_high`` are NaN until the
    file's ``[lighting]`` says where the head was seen to light.
    """

    within_limits_low: Any
    within_limits_high: Any
    cold_low: Any
    cold_high: Any
    glowing_low: Any
    glowing_high: Any


def _aim(damper: Any, air_ratio: Any) -> tuple[bool, tuple[str, Any]]:
    """Whether the air is set by its ratio, and the argument that sets it."""
    if (damper is None) == (air_ratio is None):
        raise ValueError("give damper or air_ratio, one of the two")
    return air_ratio is not None, ("damper", damper) if air_ratio is None else ("air_ratio", air_ratio)


def _words(codes: Any, words: tuple[str, ...]) -> Any:
    """The word of each code; empty for no answer."""
    places = np.asarray(codes, dtype=float)
    found = np.array((*words, ""))[np.where(np.isnan(places), len(words), places).astype(int)]
    return found if found.ndim else str(found)


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
        by_ratio, aim = _aim(damper, air_ratio)
        values = {
            "gauge_pressure": gauge_pressure,
            aim[0]: aim[1],
            "chamber_temperature": 0.0 if chamber_temperature is None else chamber_temperature,
        }
        flags = (by_ratio, chamber_temperature is not None)
        rows = answer(lambda *args: self._native.run(*flags, *args), values, invalid, len(BurnerRun._fields))
        rows[-1] = rows[-1] == 1.0
        found = BurnerRun(*rows)
        found._ask = partial(hazards_of, partial(_native.run_hazards, self._native, *flags), values, "nan")
        return found

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

    def lighting(
        self, *, gauge_pressure: Any, damper: Any = None, air_ratio: Any = None, invalid: str = "raise"
    ) -> Lighting:
        """What settings do in a cold chamber and in a glowing one, with what the file's ``[lighting]`` tells.

        Give the ``damper`` opening (0.1 to 1), or the ``air_ratio`` the air is turned down to. All but the limits of
        burning is indicative, and without a lighting setting in the file ``"cold"`` means that it may light.
        """
        by_ratio, aim = _aim(damper, air_ratio)
        known = _native.lighting_known(self._native)
        values = {"gauge_pressure": gauge_pressure, aim[0]: aim[1]}
        native = lambda *args: _native.lighting(self._native, by_ratio, known, *args)  # noqa: E731
        lights, goes_out, ratio, pull, walls = answer(native, values, invalid, 5)
        found = Lighting(_words(lights, _LIGHTS), _words(goes_out, _GOES_OUT), ratio, pull, walls)
        ask = partial(_native.lighting_hazards, self._native, by_ratio, known)
        found._ask = partial(hazards_of, ask, values, "nan")
        return found

    def lighting_range(self, *, damper: Any = None, air_ratio: Any = None) -> LightingRange:
        """The gauge pressures that light a cold chamber and that keep a glowing one, for damper openings or air ratios.

        Examples
        --------
        >>> import jetwright as jw
        >>> burner = jw.Burner("examples/bell-foundry.toml")  # doctest: +SKIP
        >>> burner.lighting_range(damper=[0.3, 0.4, 0.5]).cold_low / jw.psi  # doctest: +SKIP
        """
        by_ratio, (_, aim) = _aim(damper, air_ratio)
        known = _native.lighting_known(self._native)
        aims = np.asarray(aim, dtype=float)
        ends = [_native.lighting_range(self._native, by_ratio, known, float(one)) for one in aims.ravel()]
        columns = np.asarray(ends, dtype=float).reshape(*aims.shape, 6)
        return LightingRange(*(columns[..., place] for place in range(6)))

    def __repr__(self) -> str:
        return f"Burner({self._native.name!r})"

    def __reduce__(self) -> Any:
        return (_unpickle, (self._native,))


def _unpickle(native: Any) -> Burner:
    burner = Burner.__new__(Burner)
    burner._native = native
    return burner
