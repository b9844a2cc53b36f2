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
from ._furnace import (
    REIGNITES_ABOVE,
    Balance,
    Firing,
    Leg,
    ShellLoss,
    Step,
    Wall,
    box_shape_factor,
    chamber,
    cool_down,
    firing,
    opening,
    shell_loss,
    wall,
    warm_up,
)
from ._furnace_case import furnace_case
from ._gas import Expansion, Gas, Saturated
from ._material import Material, Substance, materials, steels, substances
from ._measure import (
    Comparison,
    FlowUncertainty,
    Weighing,
    WeighingPlan,
    compare_weighings,
    flow_uncertainty,
    plan_weighing,
    weigh,
)
from ._native import __version__
from ._parts import Duty, PerfectGas, damper_loss, duct_loss, duty, perfect_gas
from ._hazards import SEVERITIES
from ._sheet import Burner, Lighting, LightingRange, Sheet, sheet
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
from ._work import (
    Draft,
    DryingStep,
    Lining,
    Work,
    draft,
    drying_steps,
    fresh_air,
    lining,
    carbon_monoxide_limits,
    work,
)

__all__ = [
    "Balance",
    "Blower",
    "Burner",
    "BurnerRun",
    "BurningRange",
    "Comparison",
    "CylinderDraw",
    "Draft",
    "DryingStep",
    "Duty",
    "Firing",
    "Expansion",
    "ExpectedReading",
    "Flame",
    "FlowResult",
    "FlowUncertainty",
    "Gas",
    "Head",
    "JetSize",
    "Leg",
    "Lighting",
    "LightingRange",
    "LineFlow",
    "Lining",
    "Material",
    "OperatingPoint",
    "PerfectGas",
    "REIGNITES_ABOVE",
    "RangeError",
    "SEVERITIES",
    "Saturated",
    "Sheet",
    "ShellLoss",
    "Site",
    "Step",
    "Substance",
    "Wall",
    "Weighing",
    "WeighingPlan",
    "Work",
    "__version__",
    "air_needed",
    "air_ratio",
    "air_ratio_from_oxygen",
    "autoignition",
    "bar",
    "bore_for_heat",
    "box_shape_factor",
    "btu_per_hour",
    "burning_range",
    "burning_velocity",
    "cfm",
    "chamber",
    "cool_down",
    "compare_weighings",
    "cylinder",
    "damper_loss",
    "deg",
    "draft",
    "drills",
    "drying_steps",
    "duct_loss",
    "duty",
    "firing",
    "expected_reading",
    "fire_character",
    "flame",
    "flow",
    "flow_uncertainty",
    "foot",
    "fresh_air",
    "furnace_case",
    "gauge_for_heat",
    "hour",
    "inH2O",
    "inch",
    "kW",
    "lb",
    "lining",
    "low_pressure_line",
    "materials",
    "mbar",
    "minute",
    "mm",
    "carbon_monoxide_limits",
    "opening",
    "perfect_gas",
    "plan_weighing",
    "psi",
    "sheet",
    "shell_loss",
    "size_jet",
    "steels",
    "substances",
    "wall",
    "warm_up",
    "work",
    "weigh",
]
