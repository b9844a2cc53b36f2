"""The site: how much air there is."""

from __future__ import annotations

from typing import Any

import numpy as np

from . import _native
from ._arrays import answer

_FIELDS = ("ambient_pressure", "air_density", "oxygen_fraction", "water_fraction", "air_molar_mass")


class Site:
    """Where the furnace stands and what the weather is.

    Give an altitude, or a barometer's ``station_pressure``, or a forecast's ``sea_level_pressure`` with the altitude.

    Parameters
    ----------
    altitude : array_like, optional
        Height, m. Sea level when nothing is given.
    station_pressure : array_like, optional
        What a barometer on the site reads, Pa.
    sea_level_pressure : array_like, optional
        A forecast's pressure, Pa; needs the altitude.
    air_temperature : array_like
        K.
    humidity : array_like
        Relative humidity, 0 to 1.

    Examples
    --------
    >>> import jetwright as jw
    >>> round(jw.Site(altitude=1000).ambient_pressure)  # ISO 2533
    89876
    """

    __slots__ = ("_given", "_kind", "_values", *_FIELDS, "air_temperature", "humidity")

    _given: dict[str, Any]
    _kind: int
    _values: dict[str, Any]
    air_temperature: Any
    humidity: Any
    ambient_pressure: Any
    air_density: Any
    oxygen_fraction: Any
    water_fraction: Any
    air_molar_mass: Any

    def __init__(
        self,
        *,
        altitude: Any = None,
        station_pressure: Any = None,
        sea_level_pressure: Any = None,
        air_temperature: Any = 288.15,
        humidity: Any = 0.0,
    ) -> None:
        given = {
            "altitude": altitude,
            "station_pressure": station_pressure,
            "sea_level_pressure": sea_level_pressure,
            "air_temperature": air_temperature,
            "humidity": humidity,
        }
        if station_pressure is not None and (altitude is not None or sea_level_pressure is not None):
            raise ValueError("station_pressure stands alone, without altitude or sea_level_pressure")
        if sea_level_pressure is not None and altitude is None:
            raise ValueError("sea_level_pressure needs the altitude beside it")
        if station_pressure is not None:
            kind, values = 1, {"station_pressure": station_pressure, "unused": 0.0}
        elif sea_level_pressure is not None:
            kind, values = 2, {"sea_level_pressure": sea_level_pressure, "altitude": altitude}
        else:
            kind, values = 0, {"altitude": 0.0 if altitude is None else altitude, "unused": 0.0}
        values |= {"air_temperature": air_temperature, "humidity": humidity}
        columns = answer(lambda *args: _native.site(kind, *args), values, "raise", len(_FIELDS))
        put = object.__setattr__
        put(self, "_given", given)
        put(self, "_kind", kind)
        put(self, "_values", values)
        put(self, "air_temperature", air_temperature)
        put(self, "humidity", humidity)
        for name, column in zip(_FIELDS, columns):
            put(self, name, column)

    def __setattr__(self, name: str, value: Any) -> None:
        raise AttributeError("a Site does not change; make another")

    def __repr__(self) -> str:
        given = ", ".join(f"{name}={value!r}" for name, value in self._given.items() if value is not None)
        return f"Site({given})"

    def __reduce__(self) -> Any:
        return (_make, (self._given,))

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Site):
            return NotImplemented
        if self._kind != other._kind:
            return False
        pairs = zip(self._values.values(), other._values.values())
        return all(np.array_equal(np.asarray(mine), np.asarray(theirs)) for mine, theirs in pairs)

    def __hash__(self) -> int:
        # Numbers that compare equal hash alike, whatever holds them.
        return hash((self._kind, *((np.asarray(value, dtype=np.float64) + 0.0).tobytes() for value in self._values.values())))


def _make(given: dict[str, Any]) -> Site:
    return Site(**given)


SEA_LEVEL = Site()


def as_site(site: Site | None) -> Site:
    """The site; sea level unless given."""
    return SEA_LEVEL if site is None else site


def at_station(site: Site) -> dict[str, Any]:
    """The site's inputs to functions that take it by its ambient pressure."""
    return {"station_pressure": site.ambient_pressure, "air_temperature": site.air_temperature, "humidity": site.humidity}
