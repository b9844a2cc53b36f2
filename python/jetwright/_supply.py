"""Cylinder under draw and low-pressure gas line."""

from __future__ import annotations

from functools import partial
from typing import Any, Mapping, NamedTuple

import numpy as np

from . import _native
from ._arrays import answer
from ._gas import Gas, as_gas
from ._hazards import Warned, disjoint_base, hazards_in, hazards_of
from ._site import Site, as_site


class _CylinderDraw(NamedTuple):
    """Cylinders under draw, arrays like the arguments: kg/s, s, kg, K and gauge Pa.

    ``steady_draw`` is what they hold at the level they are at; ``too_cold_after`` and ``empty_after`` are infinite
    when that does not come within the duration; ``left`` is in all of them; the last four are for the end, but
    ``first_pressure``, which is before anything is drawn.
    """

    steady_draw: Any
    keeps_up: Any
    too_cold_after: Any
    empty_after: Any
    left: Any
    liquid_temperature: Any
    pressure: Any
    first_pressure: Any


@disjoint_base
class CylinderDraw(Warned, _CylinderDraw):
    __doc__ = _CylinderDraw.__doc__ or ""

    _ask: Any = None

    def to_pandas(self) -> Any:
        """A ``DataFrame`` with one row an element."""
        import pandas as pd

        return pd.DataFrame({name: np.ravel(value) for name, value in self._asdict().items()})


class _LineFlow(NamedTuple):
    """What a gas line passes, arrays like the arguments: m3/s at 60 degF and 30 inHg, kg/s, W."""

    volume_flow: Any
    mass_flow: Any
    heat_gross: Any
    heat_net: Any


@disjoint_base
class LineFlow(Warned, _LineFlow):
    __doc__ = _LineFlow.__doc__ or ""

    _ask: Any = None


def cylinder(
    *,
    gas: Gas | str | Mapping[str, float],
    draw: Any,
    capacity: Any,
    diameter: Any,
    needs: Any,
    left: Any = None,
    empty_mass: Any = None,
    count: Any = 1.0,
    duration: Any = 3600.0,
    site: Site | None = None,
    invalid: str = "raise",
) -> CylinderDraw:
    """Whether upright cylinders of liquefied gas keep up with a draw.

    Parameters
    ----------
    draw : array_like
        Gas drawn from all of them, kg/s.
    capacity, diameter : array_like
        Gas one holds when full, kg, and its outside diameter, m.
    needs : array_like
        Gauge pressure the regulator needs before it, Pa.
    left, empty_mass : array_like, optional
        Gas left in each (full) and empty mass of one (three quarters of what it holds), kg.
    count : array_like
        How many stand on one manifold.
    duration : array_like
        How long the gas is drawn, s.
    site : Site
        Air they stand in; the liquid begins at its temperature.

    Examples
    --------
    >>> import jetwright as jw
    >>> yard = jw.Site(altitude=1600, air_temperature=283.15)
    >>> r = jw.cylinder(gas="propane", draw=[1.8 / 3600, 9 / 3600], capacity=45.0, diameter=0.375, left=20.0, needs=1 * jw.bar,
    ...                 duration=2 * jw.hour, site=yard)
    >>> r.keeps_up.tolist()
    [True, False]
    """
    gas, site = as_gas(gas), as_site(site)
    values = {
        "draw": draw,
        "capacity": capacity,
        "diameter": diameter,
        "left": capacity if left is None else left,
        "empty_mass": np.multiply(0.75, capacity) if empty_mass is None else empty_mass,
        "count": count,
        "needs": needs,
        "duration": duration,
        **site._values,
    }
    native = lambda *args: _native.cylinder(gas._native, site._kind, *args)  # noqa: E731
    rows = answer(native, values, invalid, 8, {"left": False, "capacity": False})
    steady, keeps_up, *rest = rows
    found = CylinderDraw(steady, keeps_up == 1.0, *rest)
    found._ask = partial(hazards_of, partial(_native.cylinder_hazards, gas._native, site._kind), values, "nan")
    return found


def low_pressure_line(
    *,
    gas: Gas | str | Mapping[str, float],
    diameter: Any,
    length: Any,
    pressure_drop: Any,
    invalid: str = "raise",
) -> LineFlow:
    """What a gas line under 1.5 psi passes, by the low-pressure formula of the fuel-gas codes.

    ``diameter`` (inside) and ``length`` in m, ``pressure_drop`` in Pa. Local codes and a licensed gas fitter decide.

    >>> import jetwright as jw
    >>> r = jw.low_pressure_line(gas="natural-gas", diameter=1.049 * jw.inch, length=50 * jw.foot, pressure_drop=3 * jw.inH2O)
    >>> round(r.volume_flow * 3600 / 0.3048**3)  # 748 ft3/h in the code's table
    758
    """
    gas = as_gas(gas)
    values = {"diameter": diameter, "length": length, "pressure_drop": pressure_drop}
    native = lambda *args: _native.low_pressure_line(gas._native, *args)  # noqa: E731
    volume, mass = answer(native, values, invalid, 2, {"length": False, "pressure_drop": True})
    found = LineFlow(volume, mass, mass * gas.heating_value_gross, mass * gas.heating_value_net)
    found._ask = partial(_line_hazards, gas._native)
    return found


def _line_hazards(native: Any) -> dict[str, Any]:
    return hazards_in(_native.gas_hazards(native))
