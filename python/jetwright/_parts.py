"""Dampers, ducts, a blower's duty, and the perfect gas of textbooks."""

from __future__ import annotations

from typing import Any, NamedTuple

from . import _native
from ._arrays import answer

_DAMPERS = {"blast gate": 0, "butterfly": 1, "ball valve": 2, "gate valve": 3}


def damper_loss(*, kind: str, opening: Any, gap: Any = 0.02, invalid: str = "raise") -> Any:
    """Loss coefficient of a damper, 0.1 to 1 open.

    ``"blast gate"`` (open height over diameter, measured by the US Army Waterways Experiment Station), ``"butterfly"``
    (1 - angle/90, a disc that leaves ``gap`` of its duct open when shut), ``"ball valve"`` (1 - angle/90) or
    ``"gate valve"`` (threaded, the share of its stem's way).

    >>> import jetwright as jw
    >>> round(jw.damper_loss(kind="blast gate", opening=0.5), 2)
    2.1
    """
    if kind not in _DAMPERS:
        raise ValueError(f"kind is one of {', '.join(_DAMPERS)}, not {kind!r}")
    native = lambda *args: _native.damper_loss(_DAMPERS[kind], *args)  # noqa: E731
    return answer(native, {"opening": opening, "gap": gap}, invalid, 1)[0]


def duct_loss(*, flow: Any, diameter: Any, loss_coefficient: Any = 1.0, density: Any = 1.2, invalid: str = "raise") -> Any:
    """Pressure (Pa) that a flow (m3/s) loses in a duct (m) by a coefficient: K density/2 speed^2.

    >>> import jetwright as jw
    >>> round(jw.duct_loss(flow=0.0078540, diameter=0.1), 3)  # 1 m/s at 1.2 kg/m3
    0.6
    """
    values = {"flow": flow, "loss_coefficient": loss_coefficient, "diameter": diameter, "density": density}
    return answer(lambda *args: _native.duct_loss(*args), values, invalid, 1)[0]


class Duty(NamedTuple):
    """What a blower is to do: W of the air and of the shaft, and what to read in a catalog printed for 1.2 kg/m3."""

    air_power: Any
    shaft_power: Any
    catalog_static_pressure: Any
    catalog_shaft_power: Any


def duty(*, flow: Any, static_pressure: Any, density: Any = 1.2, efficiency: Any = 0.5, invalid: str = "raise") -> Duty:
    """Power of a flow (m3/s) at a static pressure (Pa), and the same duty in air of 1.2 kg/m3 (AMCA Publication 201).

    >>> import jetwright as jw
    >>> d = jw.duty(flow=0.04, static_pressure=500.0, density=0.96, efficiency=0.4)
    >>> [round(value, 6) for value in d]
    [20.0, 50.0, 625.0, 62.5]
    """
    values = {"flow": flow, "static_pressure": static_pressure, "density": density, "efficiency": efficiency}
    return Duty(*answer(lambda *args: _native.duty(*args), values, invalid, 4))


class PerfectGas(NamedTuple):
    """A perfect gas leaving a supply: pressure ratio where it is fastest; flux over p0/sqrt(R T), lossless; what a bore
    passes of it; whether the bore is choked."""

    pressure_ratio: Any
    flux: Any
    coefficient: Any
    choked: Any


def perfect_gas(
    *, exponent: Any, pressure_ratio: Any, entry_loss: Any = 0.0, friction_length: Any = 0.0, invalid: str = "raise"
) -> PerfectGas:
    """The nozzle and the bore of textbooks, for comparison: :func:`flow` carries the real gas.

    Parameters
    ----------
    exponent : array_like
        Isentropic, 1.02 to 1.67.
    pressure_ratio : array_like
        Pressure ahead over the supply's, absolute.
    entry_loss, friction_length : array_like
        K of the mouth (0 to 1) and f L/D of the bore (Darcy's factor, 0 to 60).

    Notes
    -----
    NACA report 1135 (1953); Shapiro, The Dynamics and Thermodynamics of Compressible Fluid Flow (1953), chapter 6.

    Examples
    --------
    >>> import jetwright as jw
    >>> round(jw.perfect_gas(exponent=1.4, pressure_ratio=0.2).pressure_ratio, 4)  # 0.5283 is critical in air
    0.5283
    """
    values = {"exponent": exponent, "pressure_ratio": pressure_ratio, "entry_loss": entry_loss, "friction_length": friction_length}
    bounds = {"exponent": (1.02, 1.67), "pressure_ratio": (0.01, 1.0), "entry_loss": (0.0, 1.0), "friction_length": (0.0, 60.0)}
    rows = answer(lambda *args: _native.perfect_gas(*args), values, invalid, 4, bounds)
    return PerfectGas(rows[0], rows[1], rows[2], rows[3] == 1.0)
