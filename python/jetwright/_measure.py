"""How sure a jet's flow is, and what a weighing says of it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Mapping, NamedTuple

import numpy as np

from . import _native
from ._arrays import answer
from ._flow import _ROUGHNESS, _inputs, _named
from ._gas import Gas, as_gas
from ._site import Site

#: Inputs of a jet that are known only so well, in the order of the shares.
SOURCES = tuple(_native.uncertainty_sources())
#: Expanded uncertainties at k = 2 unless given, engineering judgement: a bore gauged with pins, a 0-15 psi gauge of class 3-2-3.
_BORE = 0.01e-3
_EDGE = 0.01
_SPAN = 15 * 6894.757293168361
_KELVIN = 8.0
_COMPOSITION = 0.01
_AMBIENT = 1500.0
#: The model's own expanded uncertainty of the coefficient; the dial's of the gauge.
_OWN = float("inf")


class FlowUncertainty(NamedTuple):
    """A jet's flow with expanded uncertainties at k = 2 (95 times in 100), each shaped like the broadcast arguments.

    ``straight`` is false where a limit or a bend lies within the spread, so that the expanded uncertainty is only the least it is.
    ``shares`` has the share of each input in the variance of the flow (and of the heat), by name.
    """

    mass_flow: Any
    heat_gross: Any
    heat_net: Any
    discharge_coefficient: Any
    mass_flow_expanded: Any
    heat_gross_expanded: Any
    heat_net_expanded: Any
    discharge_coefficient_expanded: Any
    straight: Any
    shares: dict[str, Any]

    @property
    def largest_uncertainty(self) -> Any:
        """The name of the input with the largest share."""
        names = np.array(SOURCES)[np.argmax(np.stack([np.asarray(self.shares[name]) for name in SOURCES]), axis=0)]
        return str(names) if names.ndim == 0 else names


@dataclass(frozen=True)
class Weighing:
    """A jet measured by the gas it passed; expanded uncertainties are shares at k = 2.

    ``measured`` is gas passed over what the model says of the bore, ``factor`` the same joined with the model by inverse
    variance, ``weight`` that of the weighing in it; ``discharge_coefficient`` and ``effective_bore`` (m) follow.
    ``deviations`` and ``odds`` say how far the two lie apart and how often chance alone makes so much; ``trust`` is
    ``"agrees"``, or ``"doubtful"`` and ``"beyond belief"``, where they are not averaged.
    """

    measured: float
    measured_expanded: float
    measured_expanded_without_gauge: float
    factor: float
    expanded: float
    expanded_without_gauge: float
    weight: float
    discharge_coefficient: float
    effective_bore: float
    deviations: float
    odds: float
    supply: tuple[float, float, float, float]
    trust: str
    trend: tuple[float, float, float] | None

    def _tie(self, same_gauge: bool) -> list[float]:
        weight, expanded = (self.weight, self.expanded_without_gauge) if same_gauge else (0.0, self.expanded)
        return [*self.supply, self.factor, weight, expanded]


class Comparison(NamedTuple):
    """A weighing against an earlier one of the same jet."""

    change: float
    expanded: float
    odds: float
    finding: str


class WeighingPlan(NamedTuple):
    """How long to weigh: s before which it says nothing, s after which it is hardly surer, kg lost then, share then."""

    least: float
    enough: float
    mass: float
    expanded: float


def _widths(
    bore: Any,
    bore_expanded: Any,
    edge_rounding: Any,
    coefficient: Any,
    gauge: Any,
    span: Any,
    kelvin: Any,
    composition: Any,
    ambient: Any,
) -> dict[str, Any]:
    return {
        "bore_expanded": bore_expanded,
        "edge_rounding": _EDGE * bore if edge_rounding is None else edge_rounding,
        "coefficient_expanded": _OWN if coefficient is None else coefficient,
        "gauge_expanded": _OWN if gauge is None else gauge,
        "gauge_span": span,
        "gas_temperature_expanded": kelvin,
        "composition_expanded": composition,
        "ambient_pressure_expanded": ambient,
    }


def flow_uncertainty(
    *,
    gas: Gas | str | Mapping[str, float],
    gauge_pressure: Any,
    bore: Any,
    bore_length: Any = None,
    edge: str = "square",
    chamfer_depth: Any = None,
    chamfer_angle: Any = None,
    edge_radius: Any = None,
    roughness: Any = _ROUGHNESS,
    approach_diameter: Any = None,
    back_pressure: Any = 0.0,
    gas_temperature: Any = None,
    discharge_coefficient: Any = None,
    jets: Any = 1.0,
    site: Site | None = None,
    bore_expanded: Any = _BORE,
    edge_rounding: Any = None,
    coefficient_expanded: Any = None,
    gauge_expanded: Any = None,
    gauge_span: Any = _SPAN,
    gas_temperature_expanded: Any = _KELVIN,
    composition_expanded: Any = _COMPOSITION,
    ambient_pressure_expanded: Any = _AMBIENT,
    weighing: Weighing | None = None,
    same_gauge: bool = True,
    invalid: str = "raise",
) -> FlowUncertainty:
    """Gas flow and heat of a jet with expanded uncertainties at k = 2, by exact derivatives; arguments as in :func:`flow`.

    Every expanded uncertainty broadcasts too: ``bore_expanded`` and ``edge_rounding`` (m; a hundredth of the bore unless given),
    ``coefficient_expanded`` (a share; the model's own unless given), ``gauge_expanded`` (Pa; that of a dial of class
    3-2-3 and of ``gauge_span`` unless given), ``gas_temperature_expanded`` (K), ``composition_expanded`` (a share of
    the flow), ``ambient_pressure_expanded`` (Pa). With a ``weighing`` of the jet its factor and its expanded uncertainty count, and
    an error of the gauge drops out as far as the ``same_gauge`` is read.

    Examples
    --------
    >>> import jetwright as jw
    >>> sure = jw.flow_uncertainty(gas="propane", bore=1.5 * jw.mm, bore_length=10 * jw.mm, gauge_pressure=[2 * jw.psi, 6 * jw.psi])
    >>> (sure.heat_net_expanded / sure.heat_net).round(2).tolist()
    [0.13, 0.06]
    >>> sure.largest_uncertainty.tolist()
    ['gauge', 'hole']
    """
    code, measures, inputs = _inputs(
        site, gas_temperature, bore, bore_length, edge, chamfer_depth, chamfer_angle, edge_radius, roughness,
        approach_diameter, discharge_coefficient, jets, gauge_pressure, back_pressure,
    )  # fmt: skip
    widths = _widths(
        bore, bore_expanded, edge_rounding, coefficient_expanded, gauge_expanded, gauge_span,
        gas_temperature_expanded, composition_expanded, ambient_pressure_expanded,
    )  # fmt: skip
    native = as_gas(gas)._native
    tie = None if weighing is None else weighing._tie(same_gauge)
    rows = answer(
        lambda *args: _native.flow_uncertainty(native, code, tie, *args),
        _named(measures, inputs) | widths,
        invalid,
        7 + len(SOURCES),
    )
    mass_flow, gross, net, coefficient, share, width, straight = rows[:7]
    return FlowUncertainty(
        mass_flow,
        gross,
        net,
        coefficient,
        mass_flow * share,
        gross * share,
        net * share,
        width,
        straight == 1.0,
        dict(zip(SOURCES, rows[7:])),
    )


def _scalars(values: Mapping[str, Any], names: tuple[str, ...]) -> list[float]:
    for name in names:
        if np.ndim(values[name]) != 0:
            raise ValueError(f"{name} is one number here")
    return [float(values[name]) for name in names]


def weigh(
    *,
    gas: Gas | str | Mapping[str, float],
    mass_lost: Any,
    duration: Any,
    gauge_pressure: Any,
    scale_step: float,
    bore: float,
    clock: float = 2.0,
    bore_expanded: float = _BORE,
    edge_rounding: float | None = None,
    coefficient_expanded: float | None = None,
    gauge_expanded: float | None = None,
    gauge_span: float = _SPAN,
    gas_temperature_expanded: float = _KELVIN,
    composition_expanded: float = _COMPOSITION,
    ambient_pressure_expanded: float = _AMBIENT,
    **shape: Any,
) -> Weighing:
    """What one weighing of the cylinder, or several, say of a jet.

    ``mass_lost`` (kg), ``duration`` (s) and ``gauge_pressure`` (Pa) are numbers, or sequences with a value a run;
    ``scale_step`` (kg) is the least the scale shows, ``clock`` (s) how well the time is known. The rest is as in
    :func:`flow_uncertainty`, scalars only.

    Raises
    ------
    ValueError
        When nothing was lost, the scale cannot resolve so little (it says how long to weigh), or runs contradict each
        other.

    Examples
    --------
    >>> import jetwright as jw
    >>> jet = dict(gas="propane", bore=1.5 * jw.mm, bore_length=10 * jw.mm)
    >>> found = jw.weigh(mass_lost=[1.00, 1.01], duration=30 * jw.minute, gauge_pressure=6 * jw.psi, scale_step=0.01, **jet)
    >>> found.trust, bool(found.expanded < 0.04)
    ('agrees', True)
    """
    native, code, numbers, widths = _jet(
        gas, bore, gauge_pressure, shape, bore_expanded, edge_rounding, coefficient_expanded, gauge_expanded,
        gauge_span, gas_temperature_expanded, composition_expanded, ambient_pressure_expanded,
    )  # fmt: skip
    lost, time, gauge = np.broadcast_arrays(*(np.atleast_1d(np.asarray(v, float)) for v in (mass_lost, duration, gauge_pressure)))
    runs = list(zip(lost.tolist(), time.tolist(), gauge.tolist()))
    found, trust, trend = _native.weigh(native, code, numbers, widths, runs, float(scale_step), float(clock))
    supply = (found[11], found[12], found[13], found[14])
    everything: Any = (*found[:11], supply, trust, trend)
    return Weighing(*everything)


def plan_weighing(
    *,
    gas: Gas | str | Mapping[str, float],
    gauge_pressure: float,
    scale_step: float,
    bore: float,
    clock: float = 2.0,
    bore_expanded: float = _BORE,
    edge_rounding: float | None = None,
    coefficient_expanded: float | None = None,
    gauge_expanded: float | None = None,
    gauge_span: float = _SPAN,
    gas_temperature_expanded: float = _KELVIN,
    composition_expanded: float = _COMPOSITION,
    ambient_pressure_expanded: float = _AMBIENT,
    **shape: Any,
) -> WeighingPlan:
    """How long to weigh on a scale to learn something; arguments as in :func:`weigh`.

    >>> import jetwright as jw
    >>> plan = jw.plan_weighing(gas="propane", bore=1.5 * jw.mm, gauge_pressure=6 * jw.psi, scale_step=0.02)
    >>> bool(20 < plan.enough / jw.minute < 60)
    True
    """
    native, code, numbers, widths = _jet(
        gas, bore, gauge_pressure, shape, bore_expanded, edge_rounding, coefficient_expanded, gauge_expanded,
        gauge_span, gas_temperature_expanded, composition_expanded, ambient_pressure_expanded,
    )  # fmt: skip
    return WeighingPlan(*_native.plan_weighing(native, code, numbers, widths, float(scale_step), float(clock)))


def _jet(
    gas: Any, bore: float, gauge: Any, shape: dict[str, Any], *expanded: Any
) -> tuple[Any, int, list[float], list[float]]:
    """The compiled functions' arguments of one jet."""
    known = {
        "bore_length", "chamfer_depth", "chamfer_angle", "edge_radius", "approach_diameter", "back_pressure",
        "gas_temperature", "site", "edge", "roughness", "jets",
    }  # fmt: skip
    unknown = sorted(set(shape) - known)
    if unknown:
        raise TypeError(f"unexpected argument {unknown[0]!r}")
    code, measures, inputs = _inputs(
        shape.get("site"), shape.get("gas_temperature"), bore, shape.get("bore_length"), shape.get("edge", "square"),
        shape.get("chamfer_depth"), shape.get("chamfer_angle"), shape.get("edge_radius"), shape.get("roughness", _ROUGHNESS),
        shape.get("approach_diameter"), None, shape.get("jets", 1.0), float(np.mean(gauge)), shape.get("back_pressure", 0.0),
    )  # fmt: skip
    named = _named(measures, inputs)
    widths = _widths(bore, *expanded)
    return as_gas(gas)._native, code, _scalars(named, tuple(named)), _scalars(widths, tuple(widths))


def compare_weighings(earlier: Weighing, now: Weighing, *, same_gauge: bool = True) -> Comparison:
    """A weighing against an earlier one: ``"worn"``, ``"dirty"``, ``"drooping"`` or ``"no real difference"``.

    >>> import jetwright as jw
    >>> jet = dict(gas="propane", bore=1.5 * jw.mm, gauge_pressure=6 * jw.psi, duration=40 * jw.minute, scale_step=0.005)
    >>> jw.compare_weighings(jw.weigh(mass_lost=1.30, **jet), jw.weigh(mass_lost=1.40, **jet)).finding
    'worn'
    """

    def of(found: Weighing) -> Any:
        return found.measured, found.measured_expanded, found.measured_expanded_without_gauge, found.trend

    return Comparison(*_native.compare(of(earlier), of(now), same_gauge))
