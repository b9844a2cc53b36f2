"""Air needed, blower and head."""

from __future__ import annotations

from typing import Any, Mapping, NamedTuple, Sequence

import numpy as np

from . import _native
from ._arrays import answer
from ._gas import Gas, as_gas
from ._hazards import Warned, disjoint_base
from ._site import Site, as_site


def air_needed(
    *,
    gas: Gas | str | Mapping[str, float],
    mass_flow: Any,
    air_ratio: Any = 1.0,
    site: Site | None = None,
    invalid: str = "raise",
) -> Any:
    """Moist air (kg/s) for a gas flow (kg/s) at an air ratio, 1 = just enough.

    >>> import jetwright as jw
    >>> round(float(jw.air_needed(gas="propane", mass_flow=1.0)), 2)
    15.68
    """
    gas, site = as_gas(gas), as_site(site)
    values = {"mass_flow": mass_flow, "air_ratio": air_ratio, **site._values}
    native = lambda *args: _native.air_needed(gas._native, site._kind, *args)  # noqa: E731
    return answer(native, values, invalid, 1, {"mass_flow": True})[0]


def air_ratio(
    *,
    gas: Gas | str | Mapping[str, float],
    mass_flow: Any,
    air_flow: Any,
    site: Site | None = None,
    invalid: str = "raise",
) -> Any:
    """Air supplied over air needed, of gas and moist air flows in kg/s."""
    gas, site = as_gas(gas), as_site(site)
    values = {"mass_flow": mass_flow, "air_flow": air_flow, **site._values}
    native = lambda *args: _native.air_ratio(gas._native, site._kind, *args)  # noqa: E731
    return answer(native, values, invalid, 1, {"mass_flow": False, "air_flow": True})[0]


class OperatingPoint(NamedTuple):
    """Where blower and resistance agree: m3/s, Pa, and whether it is left of the blower's highest point."""

    flow: Any
    static_pressure: Any
    left_of_peak: Any


class _Columns(NamedTuple):
    """A burner at settings, arrays like the arguments: kg/s, W, shares and Pa."""

    gas: Any
    heat_gross: Any
    heat_net: Any
    air: Any
    air_ratio: Any
    damper: Any
    back_pressure: Any
    blower_pressure: Any
    head_pressure: Any
    left_of_peak: Any


@disjoint_base
class BurnerRun(Warned, _Columns):
    __doc__ = _Columns.__doc__ or ""

    _ask: Any = None

    def to_pandas(self) -> Any:
        """A ``DataFrame`` with one row a setting."""
        import pandas as pd

        return pd.DataFrame({name: np.ravel(value) for name, value in self._asdict().items()})


class Blower:
    """A blower's curve.

    Parameters
    ----------
    points : sequence of (flow m3/s, static pressure Pa[, shaft power W])
        2 to 16, flow rising.
    density : float
        Of the air the curve was taken in, kg/m3.

    Examples
    --------
    >>> import jetwright as jw
    >>> blower = jw.Blower([(0.0, 800.0), (0.02, 600.0), (0.03, 0.0)])
    >>> float(blower.static_pressure(0.02))
    600.0
    """

    __slots__ = ("_native", "_made")

    def __init__(self, points: Sequence[Sequence[float]], density: float = 1.2) -> None:
        rows = [(float(row[0]), float(row[1]), float(row[2]) if len(row) > 2 else None) for row in points]
        self._native = _native.Blower(rows, float(density))
        self._made: tuple[Any, ...] = (_blower, (rows, float(density), ()))

    @staticmethod
    def from_ends(shut_off: float, free_delivery: float, density: float = 1.2) -> Blower:
        """A parabola through the two ends of a curve that is not printed: Pa and m3/s."""
        return _blower((float(shut_off), float(free_delivery)), float(density), ())

    def scaled(self, *, density: float | None = None, speed_ratio: float = 1.0, size_ratio: float = 1.0) -> Blower:
        """The same blower in other air, at another speed, of another size, by the fan laws."""
        step = (float(self.density if density is None else density), float(speed_ratio), float(size_ratio))
        rows, first, steps = self._made[1]
        return _blower(rows, first, (*steps, step))

    @property
    def density(self) -> float:
        """kg/m3."""
        return float(self._native.density)

    @property
    def free_delivery(self) -> float:
        """m3/s at no static pressure."""
        return float(self._native.free_delivery)

    @property
    def peak(self) -> tuple[float, float]:
        """The highest point: m3/s and Pa."""
        flow, pressure = self._native.peak
        return float(flow), float(pressure)

    def static_pressure(self, flow: Any, invalid: str = "raise") -> Any:
        """Static pressure (Pa) at each flow (m3/s)."""
        return answer(lambda *args: self._native.static_pressure(*args), {"flow": flow}, invalid, 1)[0]

    def operating_point(self, resistance: Any, invalid: str = "raise") -> OperatingPoint:
        """Where each resistance k of dp = k Q^2 (Pa s2/m6) holds the blower."""
        native = lambda *args: self._native.operating_point(*args)  # noqa: E731
        flow, pressure, left = answer(native, {"resistance": resistance}, invalid, 3, {"resistance": True})
        return OperatingPoint(flow, pressure, left == 1.0)

    def __repr__(self) -> str:
        return f"Blower(free delivery {self.free_delivery:.4g} m3/s, highest {self.peak[1]:.4g} Pa, {self.density:.4g} kg/m3)"

    def __reduce__(self) -> Any:
        return self._made


def _blower(made: Any, density: float, steps: tuple[tuple[float, float, float], ...]) -> Blower:
    blower = Blower.__new__(Blower)
    if isinstance(made, tuple):
        shut_off, free_delivery = made
        native = _native.Blower.from_ends(shut_off, free_delivery, density)
    else:
        native = _native.Blower(made, density)
    for step in steps:
        native = native.scaled(*step)
    blower._native = native
    blower._made = (_blower, (made, density, steps))
    return blower


class Head:
    """A burner head: round ports, or one slot.

    Give ``ports``, ``port_diameter`` and ``open_fraction``, or ``slot_width`` and ``slot_length``; lengths in m.
    """

    __slots__ = ("_native", "_given")

    def __init__(
        self,
        *,
        port_length: float,
        ports: float | None = None,
        port_diameter: float | None = None,
        open_fraction: float = 0.0,
        slot_width: float | None = None,
        slot_length: float | None = None,
    ) -> None:
        self._given = {
            "port_length": port_length,
            "ports": ports,
            "port_diameter": port_diameter,
            "open_fraction": open_fraction,
            "slot_width": slot_width,
            "slot_length": slot_length,
        }
        if ports is not None and port_diameter is not None and slot_width is None and slot_length is None:
            self._native = _native.Head.ports(float(ports), float(port_diameter), float(port_length), float(open_fraction))
        elif slot_width is not None and slot_length is not None and ports is None and port_diameter is None:
            self._native = _native.Head.slot(float(slot_width), float(slot_length), float(port_length))
        else:
            raise ValueError("give ports and port_diameter, or slot_width and slot_length")

    @property
    def area(self) -> float:
        """Open area, m2."""
        return float(self._native.area)

    def pressure(self, *, mass_flow: Any, density: Any, viscosity: Any, invalid: str = "raise") -> Any:
        """Pressure (Pa) a mixture's mass flow (kg/s) takes, at its density (kg/m3) and viscosity (Pa s)."""
        values = {"mass_flow": mass_flow, "density": density, "viscosity": viscosity}
        signs = {"mass_flow": True, "density": False, "viscosity": False}
        return answer(lambda *args: self._native.flow(*args), values, invalid, 3, signs)[0]

    def loss_coefficient(self, friction_factor: Any, invalid: str = "raise") -> Any:
        """Dynamic heads lost on the ports' speed, at each friction factor (Darcy's) of their walls (Idelchik)."""
        native = lambda *args: self._native.loss_coefficient(*args)  # noqa: E731
        return answer(native, {"friction_factor": friction_factor}, invalid, 1, {"friction_factor": True})[0]

    def __repr__(self) -> str:
        return f"Head({', '.join(f'{name}={value!r}' for name, value in self._given.items() if value is not None)})"

    def __reduce__(self) -> Any:
        return (_head, (self._given,))


def _head(given: dict[str, Any]) -> Head:
    return Head(**given)
