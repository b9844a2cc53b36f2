"""The jet: flow, and the questions turned round."""

from __future__ import annotations

from functools import partial
from operator import itemgetter
from typing import Any, Mapping, NamedTuple

import numpy as np

from . import _native
from ._arrays import RangeError, answer, check_invalid, evaluate, refuse, through_labels
from ._gas import Gas, as_gas
from ._hazards import Warned, hazards_of
from ._site import SEA_LEVEL, Site

#: Results of a jet and their units, in the order of the compiled loop.
FIELDS, UNITS = zip(*_native.jet_results())
#: Inputs of a jet, in the order of the compiled loop.
INPUTS = tuple(_native.jet_inputs())
#: The same as `_inputs` writes them, and what puts them in the loop's order where that is another one.
_WRITTEN = (
    "bore",
    "bore_length",
    "edge_first",
    "edge_second",
    "roughness",
    "approach_diameter",
    "discharge_coefficient",
    "jets",
    "gauge_pressure",
    "back_pressure",
    "gas_temperature",
    "ambient_pressure",
)
_in_order = None if INPUTS == _WRITTEN else itemgetter(*map(_WRITTEN.index, INPUTS))
#: The compiled loop's code of each edge, how long its bore usually is, and what its measures are called.
_EDGES = {
    word: (code, length, dict(zip(("edge_first", "edge_second"), measures)))
    for code, (word, length, measures) in enumerate(_native.jet_edges())
}
_ROUGHNESS = _native.jet_roughness()
#: Added to the code of the edge where the coefficient is a measured one.
_MEASURED = _native.jet_measured()
#: The approach of a jet without a tube before it.
_WIDE = float("inf")
_FLOATS = [float] * len(INPUTS)


class FlowResult(Warned):
    """What a jet passes, each result an attribute shaped like the broadcast arguments.

    ``mass_flow`` kg/s, ``standard_volume_flow`` m3/s at 15 degC and 101.325 kPa, ``actual_volume_flow`` m3/s before the
    jet, ``heat_gross`` and ``heat_net`` W, ``discharge_coefficient``, ``discharge_coefficient_uncertainty`` (two standard
    deviations, as a share), ``choked``, ``mass_flux`` (lossless, kg/(m2 s)), ``exit_speed`` m/s, ``thrust`` N,
    ``reynolds_number``, ``supply_density`` kg/m3, ``saturation_ratio`` (supply pressure over its dew-point pressure: above
    one some of the gas would be liquid, and the numbers are those of a vapor that has not condensed yet).
    """

    __slots__ = ("_ask", "_columns")

    mass_flow: Any
    standard_volume_flow: Any
    actual_volume_flow: Any
    heat_gross: Any
    heat_net: Any
    discharge_coefficient: Any
    discharge_coefficient_uncertainty: Any
    choked: Any
    mass_flux: Any
    exit_speed: Any
    thrust: Any
    reynolds_number: Any
    supply_density: Any
    saturation_ratio: Any

    def __init__(self, columns: Any, ask: Any = None) -> None:
        self._columns = columns
        self._ask = ask

    def __getattr__(self, name: str) -> Any:
        try:
            row = FIELDS.index(name)
        except ValueError:
            raise AttributeError(name) from None
        column = self._columns[row]
        if name != "choked":
            return column
        return bool(column) if isinstance(column, float) else column == 1.0

    def to_dict(self) -> dict[str, Any]:
        """Every result by name."""
        return {name: getattr(self, name) for name in FIELDS}

    def to_pandas(self) -> Any:
        """A ``DataFrame`` with one row an element (flattened) and one column a result."""
        import pandas as pd

        index = getattr(self._columns[0], "index", None)
        data = {name: np.ravel(np.asarray(value)) for name, value in self.to_dict().items()}
        return pd.DataFrame(data, index=index)

    def __repr__(self) -> str:
        lines = [f"{name} = {_short(getattr(self, name))} {unit}".rstrip() for name, unit in zip(FIELDS, UNITS)]
        return "FlowResult(\n  " + "\n  ".join(lines) + "\n)"

    def _repr_html_(self) -> str:
        rows = "".join(
            f"<tr><td>{name}</td><td>{_short(getattr(self, name))}</td><td>{unit}</td></tr>"
            for name, unit in zip(FIELDS, UNITS)
        )
        return f"<table><tr><th>result</th><th>value</th><th>unit</th></tr>{rows}</table>"

    def __reduce__(self) -> Any:
        return (FlowResult, (self._columns, self._ask))


def _short(value: Any) -> str:
    if isinstance(value, (bool, float)):
        return str(value) if isinstance(value, bool) else f"{value:.6g}"
    if isinstance(value, np.ndarray):
        return np.array2string(value, precision=4, threshold=6)
    return repr(value)


def _inputs(
    site: Site | None,
    gas_temperature: Any,
    bore: Any,
    bore_length: Any,
    edge: str,
    chamfer_depth: Any,
    chamfer_angle: Any,
    edge_radius: Any,
    roughness: Any,
    approach_diameter: Any,
    discharge_coefficient: Any,
    jets: Any,
    gauge_pressure: Any,
    back_pressure: Any,
) -> tuple[int, dict[str, str], tuple[Any, ...]]:
    """The edge's code, the names of its measures, and the compiled loop's inputs in its order."""
    try:
        code, usual_length, measures = _EDGES[edge]
    except (KeyError, TypeError):
        raise ValueError(f"edge is one of {', '.join(_EDGES)}, not {edge!r}") from None
    if chamfer_depth is None and chamfer_angle is None and edge_radius is None and not measures:
        first, second = 0.0, 0.0
    else:
        first, second = _measures(measures, chamfer_depth, chamfer_angle, edge_radius)
    if site is None:
        site = SEA_LEVEL
    if discharge_coefficient is not None:
        code += _MEASURED
    written = (
        bore,
        usual_length if bore_length is None else bore_length,
        first,
        second,
        roughness,
        _WIDE if approach_diameter is None else approach_diameter,
        0.0 if discharge_coefficient is None else discharge_coefficient,
        jets,
        gauge_pressure,
        back_pressure,
        site.air_temperature if gas_temperature is None else gas_temperature,
        site.ambient_pressure,
    )
    return code, measures, written if _in_order is None else _in_order(written)


def _measures(measures: dict[str, str], depth: Any, angle: Any, radius: Any) -> tuple[Any, Any]:
    given = {"chamfer_depth": depth, "chamfer_angle": angle, "edge_radius": radius}
    for name, value in given.items():
        if (value is not None) != (name in measures.values()):
            owner = "rounded" if name == "edge_radius" else "chamfered"
            raise ValueError(f"{name} goes with edge {owner!r} and no other")
    first, second = (measures.get(name, "") for name in ("edge_first", "edge_second"))
    return given.get(first, 0.0), given.get(second, 0.0)


def _named(measures: dict[str, str], inputs: tuple[Any, ...]) -> dict[str, Any]:
    """The inputs as a caller knows them, in the compiled loop's order."""
    return {measures.get(name, name): value for name, value in zip(INPUTS, inputs)}


def flow(
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
    invalid: str = "raise",
) -> FlowResult:
    """Gas flow and heat of a jet, real gas, subsonic and choked.

    Every numeric argument is a scalar or an array; they broadcast against each other and against the site's.

    Parameters
    ----------
    gas : Gas, str or mapping
        The gas.
    gauge_pressure, back_pressure : array_like
        Before the jet, and where it blows, above the air around, Pa.
    bore, bore_length : array_like
        Diameter and straight length, m; length 12 mm unless given, zero for a sharp edge.
    edge : str
        ``"sharp"``, ``"square"``, ``"chamfered"`` (with ``chamfer_depth`` m and full ``chamfer_angle`` rad) or
        ``"rounded"`` (with ``edge_radius`` m).
    roughness, approach_diameter : array_like
        Of the wall, and inside of the tube before the jet, m.
    gas_temperature : array_like
        K; that of the air unless given.
    discharge_coefficient : array_like
        A measured one instead of the model's.
    jets : array_like
        How many equal jets share the gas.
    site : Site
        Sea level unless given.
    invalid : str
        ``"raise"`` an error at the first element without an answer, or mark such elements ``"nan"``.

    Returns
    -------
    FlowResult

    Raises
    ------
    RangeError
        Naming the argument, the value and its index.

    Examples
    --------
    >>> import jetwright as jw
    >>> r = jw.flow(gas="propane", gauge_pressure=[5 * jw.psi, 0.3 * jw.bar], bore=1.8 * jw.mm, bore_length=12 * jw.mm)
    >>> (r.heat_net / jw.kW).round(1).tolist()
    [32.6, 30.4]
    """
    code, measures, inputs = _inputs(
        site,
        gas_temperature,
        bore,
        bore_length,
        edge,
        chamfer_depth,
        chamfer_angle,
        edge_radius,
        roughness,
        approach_diameter,
        discharge_coefficient,
        jets,
        gauge_pressure,
        back_pressure,
    )
    native = as_gas(gas)._native
    ask = partial(_hazards, native, code, measures, inputs)
    if [*map(type, inputs)] == _FLOATS:
        try:
            return FlowResult(_native.flow_one(native, code, inputs), ask)
        except ValueError as error:
            check_invalid(invalid)
            if invalid == "nan":
                return FlowResult([float("nan")] * len(FIELDS))
            raise _scalar_error(error, _named(measures, inputs)) from None
    check_invalid(invalid)
    values = _named(measures, inputs)

    def compute(plain: dict[str, Any]) -> np.ndarray:
        columns, _ = evaluate(lambda *args: _native.flow(native, code, *args), plain, invalid, len(FIELDS))
        return columns

    labeled = through_labels(compute, values, len(FIELDS))
    if labeled is not None:
        return FlowResult(labeled[0], ask)
    columns = compute(values)
    return FlowResult(columns if columns.ndim > 1 else columns.tolist(), ask)


def _hazards(native: Any, code: int, measures: dict[str, str], inputs: tuple[Any, ...]) -> dict[str, Any]:
    return hazards_of(partial(_native.flow_hazards, native, code), _named(measures, inputs), "nan")


def _scalar_error(error: ValueError, values: dict[str, Any]) -> RangeError:
    return refuse(error.args, (), values)


def _heat(heat_net: Any, heat_gross: Any) -> tuple[bool, Any]:
    """Whether the heat is gross, and the heat."""
    if (heat_net is None) == (heat_gross is None):
        raise ValueError("give heat_net or heat_gross, one of the two")
    return (True, heat_gross) if heat_net is None else (False, heat_net)


def gauge_for_heat(
    *,
    gas: Gas | str | Mapping[str, float],
    bore: Any,
    heat_net: Any = None,
    heat_gross: Any = None,
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
    invalid: str = "raise",
) -> Any:
    """Gauge pressure (Pa) at which a jet makes a heat (W, net or gross); arguments as in :func:`flow`.

    >>> import jetwright as jw
    >>> gauge = jw.gauge_for_heat(gas="propane", bore=1.8 * jw.mm, heat_net=26 * jw.kW)
    >>> back = jw.flow(gas="propane", bore=1.8 * jw.mm, gauge_pressure=gauge).heat_net
    >>> abs(back - 26000) < 1e-6
    True
    """
    gross, heat = _heat(heat_net, heat_gross)
    inputs = _inputs(
        site, gas_temperature, bore, bore_length, edge, chamfer_depth, chamfer_angle, edge_radius, roughness,
        approach_diameter, discharge_coefficient, jets, heat, back_pressure,
    )  # fmt: skip
    return _inverse("gauge_pressure", as_gas(gas), gross, inputs, invalid)


def bore_for_heat(
    *,
    gas: Gas | str | Mapping[str, float],
    gauge_pressure: Any,
    heat_net: Any = None,
    heat_gross: Any = None,
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
    invalid: str = "raise",
) -> Any:
    """Bore (m) with which a jet makes a heat (W, net or gross); arguments as in :func:`flow`."""
    gross, heat = _heat(heat_net, heat_gross)
    inputs = _inputs(
        site, gas_temperature, heat, bore_length, edge, chamfer_depth, chamfer_angle, edge_radius, roughness,
        approach_diameter, discharge_coefficient, jets, gauge_pressure, back_pressure,
    )  # fmt: skip
    return _inverse("bore", as_gas(gas), gross, inputs, invalid)


def _inverse(
    sought: str, gas: Gas, gross: bool, inputs: tuple[int, dict[str, str], tuple[Any, ...]], invalid: str
) -> Any:
    """The argument that makes a heat, which stands in its place among the inputs."""
    code, measures, plain = inputs
    values = {("heat" if name == sought else name): value for name, value in _named(measures, plain).items()}
    native = lambda *args: _native.for_heat(gas._native, code, gross, sought == "bore", *args)  # noqa: E731
    return answer(native, values, invalid, 1)[0]


class JetSize(NamedTuple):
    """A size of a list next to a wanted bore; arrays like the arguments.

    ``name`` and ``bore`` (m) of the size, its ``heat_net`` (W), its heat over the wanted one less 1, and the gauge pressure
    (Pa) that makes it exact. Where the list ends, the name is ``""`` and the numbers are NaN.
    """

    name: Any
    bore: Any
    heat_net: Any
    heat_error: Any
    exact_gauge_pressure: Any


def drills(list: str = "number") -> dict[str, float]:
    """Bores (m) of a list of sizes by name: ``"number"``, ``"letter"``, ``"fractional"``, ``"metric"``, ``"tips"``.

    >>> import jetwright as jw
    >>> round(jw.drills("number")["number 50"] / jw.inch, 4)
    0.07
    """
    return dict(_native.drills(list))


def size_jet(
    *,
    gas: Gas | str | Mapping[str, float],
    gauge_pressure: Any,
    heat_net: Any = None,
    heat_gross: Any = None,
    drills: str = "number",
    invalid: str = "raise",
    **shape: Any,
) -> tuple[Any, list[JetSize]]:
    """The bore (m) for a heat and the sizes of a list next to it, with the pressure that makes each exact.

    Every numeric argument broadcasts; further arguments as in :func:`flow`. With scalars a size beyond the list's end is
    left out; with arrays the list is always the size below and the size above.

    >>> import jetwright as jw
    >>> bore, nearest = jw.size_jet(gas="propane", gauge_pressure=5 * jw.psi, heat_net=26 * jw.kW)
    >>> [size.name for size in nearest]
    ['number 52', 'number 51']
    >>> bore, (below, above) = jw.size_jet(gas="propane", gauge_pressure=5 * jw.psi, heat_net=[20e3, 26e3])
    >>> below.name.tolist()
    ['number 54', 'number 52']
    """
    gas = as_gas(gas)
    gross, wanted = _heat(heat_net, heat_gross)
    given = {"gas": gas, "heat_net": heat_net, "heat_gross": heat_gross, **shape}
    bore = bore_for_heat(gauge_pressure=gauge_pressure, invalid=invalid, **given)
    sizes = _native.drills(drills)
    # A size as good as exact counts as the one below; what lies beyond an end has no name and no bore.
    names = np.array(["", *(name for name, _ in sizes), ""])
    bores = np.array([np.nan, *(size for _, size in sizes), np.nan])
    above = np.searchsorted(bores[1:-1], np.asarray(bore) * (1 + 1e-9), side="right") + 1
    nearest = []
    unknown = np.isnan(np.asarray(bore))
    for place in (np.where(unknown, 0, above - 1), np.where(unknown, 0, above)):
        diameter = _like(bore, bores[place])
        here = flow(gas=gas, gauge_pressure=gauge_pressure, bore=diameter, invalid="nan", **shape)
        exact = gauge_for_heat(bore=diameter, invalid="nan", **given)
        error = (here.heat_gross if gross else here.heat_net) / _aligned(wanted) - 1
        name = _like(bore, names[place])
        nearest.append(JetSize(name, diameter, here.heat_net, error, exact))
    if isinstance(bore, float):
        nearest = [size for size in nearest if size.name]
    return bore, nearest


def _aligned(wanted: Any) -> Any:
    return np.asarray(wanted) if isinstance(wanted, (list, tuple)) else wanted


def _like(model: Any, values: Any) -> Any:
    """Values under the labels of a bore."""
    if isinstance(model, float):
        return values.item()
    if hasattr(model, "coords"):
        return model.copy(data=values)
    return type(model)(values, index=model.index) if hasattr(model, "index") else values

