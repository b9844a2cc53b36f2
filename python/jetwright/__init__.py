"""Jet, air and burner head of a forced-air gas furnace.

SI base units in and out, by keyword; multiply by the factors of this module to enter shop units::

    >>> import jetwright as jw
    >>> site = jw.Site(altitude=1600, air_temperature=293.15)
    >>> r = jw.flow(gas="propane", gauge_pressure=5 * jw.psi, bore=1.8 * jw.mm, bore_length=12 * jw.mm, site=site)
    >>> round(r.heat_net / jw.kW, 1)
    29.2

Arrays in, arrays out: every numeric argument broadcasts. Process control only, never a flame safeguard.
"""

from ._air import Blower, BurnerRun, Head, OperatingPoint, air_needed, air_ratio
from ._arrays import RangeError
from ._burning import (
    BurningRange,
    ExpectedReading,
    air_ratio_from_oxygen,
    autoignition,
    burning_range,
    burning_velocity,
    expected_reading,
    fire_character,
)
from ._flame import Flame, flame
from ._flow import FlowResult, JetSize, bore_for_heat, drills, flow, gauge_for_heat, size_jet
from ._gas import Expansion, Gas, Saturated
from ._native import __version__
from ._sheet import Burner, Sheet, sheet
from ._site import Site
from ._supply import CylinderDraw, LineFlow, cylinder, low_pressure_line
from ._units import (
    bar,
    btu_per_hour,
    cfm,
    deg,
    foot,
    hour,
    inch,
    inH2O,
    kW,
    lb,
    mbar,
    minute,
    mm,
    psi,
)

__all__ = [
    "Blower",
    "Burner",
    "BurnerRun",
    "BurningRange",
    "CylinderDraw",
    "Expansion",
    "ExpectedReading",
    "Flame",
    "FlowResult",
    "Gas",
    "Head",
    "JetSize",
    "LineFlow",
    "OperatingPoint",
    "RangeError",
    "Saturated",
    "Sheet",
    "Site",
    "__version__",
    "air_needed",
    "air_ratio",
    "air_ratio_from_oxygen",
    "autoignition",
    "bar",
    "bore_for_heat",
    "btu_per_hour",
    "burning_range",
    "burning_velocity",
    "cfm",
    "cylinder",
    "deg",
    "drills",
    "expected_reading",
    "fire_character",
    "flame",
    "flow",
    "foot",
    "gauge_for_heat",
    "hour",
    "inH2O",
    "inch",
    "kW",
    "lb",
    "low_pressure_line",
    "mbar",
    "minute",
    "mm",
    "psi",
    "sheet",
    "size_jet",
]
