"""Arguments into contiguous arrays, and answers back into what the caller works with."""

from __future__ import annotations

import sys
from typing import Any, Callable, Mapping

import numpy as np

_OPENINGS = tuple(f"openings[{number}]" for number in range(6))
_LAYERS = tuple(f"layers[{number}]" for number in range(6))
#: The arguments that fill an input of the core, by its key, where that is not the argument's name in the core's spelling.
NAMES: dict[str, str | tuple[str, ...]] = {
    "SupplyPressure": "pressure",
    "ApproachRatio": "approach_diameter",
    "JetCount": "jets",
    "HeatRate": ("heat", "fire"),
    "AirTemperature": ("air_temperature", "start", "room"),
    "FlameAirRatio": "air_ratio",
    "ProductTemperature": "chamber_temperature",
    "AirFlow": ("flow", "leak"),
    "DamperOpening": ("damper", "opening"),
    "BlowerPressure": "static_pressure",
    "BlowerEfficiency": "efficiency",
    "AirDensity": "density",
    "DuctDiameter": "diameter",
    "ChamberTemperature": ("down_to", "chamber_temperature", "hot_face", "cold_face", "passing_temperature", "temperature"),
    "FittingLoss": ("resistance", "loss_coefficient"),
    "LayerThickness": (*_LAYERS, "depth", "crucible_wall", "thickness"),
    "WallArea": ("area", *_OPENINGS, "crucible_area"),
    "PanelSize": ("inner_radius", "length", "height", "width", "depth", "spacing", "leg", "spread"),
    "PanelArea": "panels",
    "AvailableHeat": "chamber_temperature",
    "Duration": ("held", "duration"),
    "WorkMass": ("mass", "crucible_mass", "bag"),
    "WorkSize": ("plate", "bar"),
    "WorkTemperature": ("target", "start", "temperature"),
    "MaterialDensity": "dry_density",
    "Fraction": ("water", "margin"),
    "DraftHeight": "height",
    "ExhaustArea": "area",
    "RoomFraction": "limit",
    "ScaleTemperature": "chamber_temperature",
    "LeanAirRatio": "air_ratio",
    "OxygenReading": "oxygen",
    "CarbonMonoxideReading": "carbon_monoxide",
    "CylinderHolds": "left",
    "CylinderDiameter": "diameter",
    "CylinderTare": "empty_mass",
    "CylinderCount": "count",
    "GasDraw": "draw",
    "InletPressure": "needs",
    "PipeDiameter": "diameter",
    "PipeLength": "length",
    "PipeDrop": "pressure_drop",
}


def _plain_name(key: str) -> str:
    """``GaugePressure`` as an argument is spelled: ``gauge_pressure``."""
    return "".join(f"_{letter.lower()}" if letter.isupper() else letter for letter in key).lstrip("_")


class RangeError(ValueError):
    """An element that has no answer.

    Attributes
    ----------
    argument : str or None
        Name of the argument.
    value : float
        Its value there, SI.
    index : tuple of int
        Its place in the broadcast shape; empty for a scalar.
    """

    def __init__(self, argument: str | None, value: float, index: tuple[int, ...], message: str) -> None:
        super().__init__(argument, value, index, message)
        self.argument = argument
        self.value = value
        self.index = index
        self.message = message

    def __str__(self) -> str:
        where = f" at index {self.index}" if self.index else ""
        name = f"{self.argument}{where}: " if self.argument else (where[1:] + ": " if where else "")
        return f"{name}{self.message}"


def as_float64(name: str, value: Any) -> np.ndarray:
    """A contiguous native ``float64`` array, the caller's own if it is one already."""
    array = np.asarray(value)
    if array.dtype.kind not in "fiu":
        raise TypeError(f"{name} must be real numbers, not {array.dtype}")
    if np.ma.isMaskedArray(value):
        # What is masked has no number: it is refused, or marked, like any NaN.
        array = np.ma.filled(value.astype(np.float64), np.nan)
    return np.ascontiguousarray(array, dtype=np.float64).reshape(array.shape)


def operands(values: dict[str, Any]) -> tuple[list[tuple[np.ndarray, list[int]]], tuple[int, ...]]:
    """Flat data and steps of every argument against their common shape."""
    arrays = {name: as_float64(name, value) for name, value in values.items()}
    try:
        shape = np.broadcast_shapes(*(array.shape for array in arrays.values()))
    except ValueError:
        shapes = ", ".join(f"{name} {array.shape}" for name, array in arrays.items() if array.ndim)
        raise ValueError(f"arguments do not broadcast against each other: {shapes}") from None
    prepared = []
    for array in arrays.values():
        steps = [0] * len(shape)
        step = 1
        for axis in range(1, array.ndim + 1):
            size = array.shape[-axis]
            steps[-axis] = step if size != 1 else 0
            step *= size
        prepared.append((array.reshape(-1), steps))
    return prepared, shape


def check_invalid(invalid: str) -> None:
    """Refuses anything but the two policies."""
    if invalid not in ("raise", "nan"):
        raise ValueError(f'invalid must be "raise" or "nan", not {invalid!r}')


def _argument(name: str, given: float, flat: int, shape: tuple[int, ...], values: dict[str, Any]) -> str:
    """The argument behind a key of the core: of those that can fill it, the one that holds the value given."""
    names = NAMES.get(name) or _plain_name(name)
    if isinstance(names, str):
        return names
    there = [candidate for candidate in values if candidate in names or candidate.startswith("panels[")]
    there.sort(key=lambda candidate: names.index(candidate) if candidate in names else len(names))
    for candidate in there:
        held = np.broadcast_to(np.asarray(values[candidate], dtype=np.float64), shape).ravel()[flat]
        if np.float32(held) == np.float32(given) or (np.isnan(given) and not np.isfinite(held)):
            return candidate
    return there[0] if there else names[0]


def refuse(told: tuple[int, str | None, float, str], shape: tuple[int, ...], values: dict[str, Any]) -> RangeError:
    """The error of the first element without an answer."""
    flat, name, value, message = told
    argument = _argument(name, value, flat, shape, values) if name else None
    if argument is None and not name:
        argument = next((n for n in ("gauge_pressure", "pressure") if n in values), None)
    if argument not in values and "heat" in values:
        argument = "heat"
    if argument not in values and "temperature" in values:
        argument = "temperature"
    index = tuple(int(place) for place in np.unravel_index(flat, shape)) if shape else ()
    if argument in values:
        given = np.broadcast_to(np.asarray(values[argument], dtype=np.float64), shape)
        value = float(given[index])
    return RangeError(argument, value, index, message)


def evaluate(
    native: Callable[..., Any], values: dict[str, Any], invalid: str, rows: int, signs: Mapping[str, bool | tuple[float, float]] = {}
) -> tuple[np.ndarray, tuple[int, ...]]:
    """Calls a native loop; gives ``(rows, *shape)`` and the shape.

    ``signs`` names the arguments the core holds to no range of their own: they are to be finite and above zero, or
    not below it where the name's value is true, or within the two values there.
    """
    check_invalid(invalid)
    prepared, shape = operands(values)
    marked = np.zeros((), dtype=bool)
    for name, sign in signs.items():
        array = as_float64(name, values[name])
        if isinstance(sign, tuple):
            good, accepted = (array >= sign[0]) & (array <= sign[1]), f"within {sign[0]:g} and {sign[1]:g}"
        else:
            good, accepted = (array >= 0.0) if sign else (array > 0.0), f"{'not below' if sign else 'above'} zero"
        bad = ~(np.isfinite(array) & good)
        if bad.any() and 0 not in shape:
            if invalid == "raise":
                place = int(np.broadcast_to(bad, shape).argmax())
                raise refuse((place, name, float("nan"), f"must be a finite number {accepted}"), shape, values)
            marked = marked | bad
    columns, told = native(prepared, list(shape))
    if told is not None and invalid == "raise":
        raise refuse(told, shape, values)
    columns = columns.reshape((rows, *shape))
    if marked.any():
        columns[:, np.broadcast_to(marked, shape)] = np.nan
    return columns, shape


def answer(
    native: Callable[..., Any], values: dict[str, Any], invalid: str, rows: int, signs: Mapping[str, bool | tuple[float, float]] = {}
) -> list[Any]:
    """The rows of a native loop: floats for scalars, arrays for arrays, labeled where an argument is."""
    check_invalid(invalid)

    def compute(plain: dict[str, Any]) -> np.ndarray:
        return evaluate(native, plain, invalid, rows, signs)[0]

    labeled = through_labels(compute, values, rows)
    if labeled is not None:
        return labeled[0]
    columns = compute(values)
    return list(columns) if columns.ndim > 1 else list(columns.tolist())


def through_labels(
    compute: Callable[[dict[str, Any]], np.ndarray], values: dict[str, Any], rows: int
) -> tuple[list[Any], bool] | None:
    """Runs ``compute`` under the labels of pandas, xarray or Dask arguments; ``None`` when there are none.

    ``compute`` gives ``(rows, *shape)`` for plain arguments. The answer is one labeled object a row.
    """
    loaded = sys.modules
    if "xarray" in loaded:
        import xarray as xr

        if any(isinstance(value, xr.DataArray) for value in values.values()):
            return _through_xarray(compute, values, rows), True
    if "dask.array" in loaded:
        import dask.array as da

        if any(isinstance(value, da.Array) for value in values.values()):
            return _through_dask(compute, values, rows), True
    if "pandas" in loaded:
        import pandas as pd

        labeled = [value for value in values.values() if isinstance(value, pd.Series)]
        if labeled:
            index = labeled[0].index
            if any(not series.index.equals(index) for series in labeled):
                raise ValueError("the Series have different indexes; align them first")
            plain = {
                name: value.to_numpy() if isinstance(value, pd.Series) else value for name, value in values.items()
            }
            columns = compute(plain)
            return [pd.Series(column, index=index) for column in columns], True
    return None


def _through_dask(compute: Callable[[dict[str, Any]], np.ndarray], values: dict[str, Any], rows: int) -> list[Any]:
    import dask.array as da

    names = list(values)
    blocks = da.broadcast_arrays(*(da.asarray(value) for value in values.values()))
    blocks = [block.rechunk(blocks[0].chunks) for block in blocks]

    def run(*chunks: np.ndarray) -> np.ndarray:
        return compute(dict(zip(names, chunks)))

    chunks = ((rows,), *blocks[0].chunks)
    meta = np.empty((0,) * (blocks[0].ndim + 1))
    whole = da.map_blocks(run, *blocks, dtype=np.float64, new_axis=0, chunks=chunks, meta=meta)
    return [whole[row] for row in range(rows)]


def _through_xarray(compute: Callable[[dict[str, Any]], np.ndarray], values: dict[str, Any], rows: int) -> list[Any]:
    import xarray as xr

    names = list(values)
    wrapped = [value if isinstance(value, xr.DataArray) else xr.DataArray(value) for value in values.values()]
    spread = xr.broadcast(*wrapped)
    data = [array.data for array in spread]
    inner = through_labels(compute, dict(zip(names, data)), rows)
    columns = inner[0] if inner is not None else list(compute(dict(zip(names, data))))
    return [xr.DataArray(column, coords=spread[0].coords, dims=spread[0].dims) for column in columns]
