"""Where a mixture burns and how fast, and what an analyzer reads in the flue gas."""

from __future__ import annotations

from typing import Any, Mapping, NamedTuple

from . import _native
from ._arrays import answer
from ._gas import Gas, as_gas
from ._site import Site, as_site, at_station

#: Number of each set of limits.
_STANDARDS = {"nfpa497": 0, "iec60079": 1, "explosive": 2}


class BurningRange(NamedTuple):
    """Air ratios and gas shares at which a mixture burns; arrays like the arguments.

    ``lights_itself`` where the temperature is above autoignition, so that any mixture reacts.
    """

    leanest_air_ratio: Any
    richest_air_ratio: Any
    lower_limit: Any
    upper_limit: Any
    lights_itself: Any


class ExpectedReading(NamedTuple):
    """What an analyzer should read when all burns to the end, by volume; arrays like the arguments."""

    oxygen_dry: Any
    oxygen_wet: Any
    carbon_dioxide_dry: Any


def burning_range(
    *,
    gas: Gas | str | Mapping[str, float],
    temperature: Any = 298.15,
    standard: str = "nfpa497",
    site: Site | None = None,
    invalid: str = "raise",
) -> BurningRange:
    """The air ratios at which a gas burns with the site's air, where both have a temperature.

    Le Chatelier over the limits of ``standard``, ``"nfpa497"`` (2008) or ``"iec60079"`` (60079-20-1:2010, wider), moved by
    0.0721 % of their value a kelvin (Zabetakis 1965) until the gas lights by itself. ``"explosive"``, outside which a
    mixture is too lean or too rich to be dangerous, takes the wider of both and widens them by 0.12 %, to 760 degC.

    Parameters
    ----------
    gas : Gas, str or mapping
        The gas.
    temperature : array_like
        Of the mixture or the chamber, K.
    standard : str
        Whose limits.
    site : Site
        Sea level unless given.
    invalid : str
        ``"raise"`` or ``"nan"``.

    Examples
    --------
    >>> import jetwright as jw
    >>> range = jw.burning_range(gas="propane")
    >>> float(round(range.lower_limit, 4)), float(round(range.leanest_air_ratio, 2))  # 97.9 / 2.1 / 23.87
    (0.021, 1.95)
    """
    gas = as_gas(gas)
    if standard not in _STANDARDS:
        raise ValueError(f"standard is {standard!r}, accepted are {', '.join(map(repr, _STANDARDS))}")
    values = {"temperature": temperature, **at_station(as_site(site))}
    rows = answer(lambda *args: _native.burning_range(gas._native, _STANDARDS[standard], *args), values, invalid, 5)
    return BurningRange._make([*rows[:4], rows[4] == 1.0])


def burning_velocity(
    *,
    gas: Gas | str | Mapping[str, float],
    air_ratio: Any = 1.0,
    mixture_temperature: Any = None,
    fastest: bool = False,
    site: Site | None = None,
    invalid: str = "raise",
) -> Any:
    """Laminar burning velocity, m/s; zero outside the limits of burning.

    Guelder's formula (SAE 841000, 1984) for methane and propane, less what modern mechanisms take from rich flames and
    from hot methane; within 15 % of them.

    Parameters
    ----------
    gas : Gas, str or mapping
        The gas; of what burns at most 15 % ethylene, propylene, hydrogen or carbon monoxide.
    air_ratio : array_like
        Air supplied over air needed.
    mixture_temperature : array_like
        K; the air's unless given.
    fastest : bool
        The fastest flame published instead, for flashback.
    site : Site
        Sea level unless given.
    invalid : str
        ``"raise"`` or ``"nan"``.

    Examples
    --------
    >>> import jetwright as jw
    >>> round(jw.burning_velocity(gas="propane", mixture_temperature=300.0), 3)  # 0.446 exp(-4.95 * 0.075**2)
    0.434
    """
    gas = as_gas(gas)
    site = as_site(site)
    values = {
        "air_ratio": air_ratio,
        "mixture_temperature": site.air_temperature if mixture_temperature is None else mixture_temperature,
        **at_station(site),
    }
    return answer(lambda *args: _native.burning_velocity(gas._native, *args), values, invalid, 2)[int(fastest)]


def air_ratio_from_oxygen(
    *,
    gas: Gas | str | Mapping[str, float],
    oxygen: Any,
    carbon_monoxide: Any = 0.0,
    wet: bool = False,
    site: Site | None = None,
    invalid: str = "raise",
) -> Any:
    """The air ratio that an oxygen reading of the flue gas tells; 1 or less when it reads zero.

    Parameters
    ----------
    gas : Gas, str or mapping
        The gas.
    oxygen, carbon_monoxide : array_like
        Readings, shares by volume.
    wet : bool
        Whether the reading counts the water, as a hot probe in the flue does.
    site : Site
        Sea level unless given.
    invalid : str
        ``"raise"`` or ``"nan"``.

    Examples
    --------
    >>> import jetwright as jw
    >>> round(jw.air_ratio_from_oxygen(gas="methane", oxygen=0.03), 3)  # (2 - 0.03) / (2 - 0.03 * 9.548)
    1.15
    """
    gas = as_gas(gas)
    values = {"oxygen": oxygen, "carbon_monoxide": carbon_monoxide, **at_station(as_site(site))}
    return answer(lambda *args: _native.air_ratio_of_reading(gas._native, bool(wet), *args), values, invalid, 1)[0]


def expected_reading(
    *, gas: Gas | str | Mapping[str, float], air_ratio: Any, site: Site | None = None, invalid: str = "raise"
) -> ExpectedReading:
    """What an analyzer should read at an air ratio from 1 on; richer fires are told by ``jw.flame``.

    Parameters
    ----------
    gas : Gas, str or mapping
        The gas.
    air_ratio : array_like
        Air supplied over air needed.
    site : Site
        Sea level unless given.
    invalid : str
        ``"raise"`` or ``"nan"``.

    Examples
    --------
    >>> import jetwright as jw
    >>> round(jw.expected_reading(gas="propane", air_ratio=1.0).carbon_dioxide_dry, 3)  # 3 / 21.87
    0.138
    """
    gas = as_gas(gas)
    values = {"air_ratio": air_ratio, **at_station(as_site(site))}
    rows = answer(lambda *args: _native.expected_reading(gas._native, *args), values, invalid, 3)
    return ExpectedReading(*rows)


def autoignition(gas: Gas | str | Mapping[str, float]) -> float | None:
    """Temperature of a wall above which the gas lights by itself, K (IEC 60079-20-1:2010).

    Examples
    --------
    >>> import jetwright as jw
    >>> round(jw.autoignition("propane") - 273.15)
    450
    """
    return _native.autoignition(as_gas(gas)._native)


def fire_character(air_ratio: float) -> str:
    """What a fire is called by its air ratio, from ``"reducing"`` to ``"oxidizing"``.

    Examples
    --------
    >>> import jetwright as jw
    >>> jw.fire_character(0.9)
    'slightly reducing'
    """
    return _native.fire_character(float(air_ratio))
