"""The flame."""

from __future__ import annotations

from functools import partial
from typing import Any, Mapping, NamedTuple

from . import _native
from ._arrays import answer
from ._gas import Gas, as_gas
from ._hazards import Warned, disjoint_base, hazards_of
from ._site import Site, as_site, at_station

_PRODUCTS = _native.products()
#: Columns before the products.
_FIRST = 9


class _Columns(NamedTuple):
    """A flame in equilibrium; arrays like the arguments.

    ``temperature`` K when nothing cools it; ``available_heat`` share of the net heat that stays in the chamber;
    ``chamber_carbon_monoxide``, ``chamber_oxygen`` and ``chamber_carbon_dioxide`` dry, by volume, at the chamber's temperature (real
    mixing leaves more carbon monoxide); ``flue_loss_sensible`` and ``flue_loss_unburnt`` shares of the net heat that leave; ``dew_point``
    K of those gases; ``scale_drive`` their CO2/CO over that of iron and its oxide, above 1 steel scales (not a number outside 850 to
    1700 K); ``products`` wet, by formula, in the flame.
    """

    temperature: Any
    available_heat: Any
    chamber_carbon_monoxide: Any
    chamber_oxygen: Any
    chamber_carbon_dioxide: Any
    flue_loss_sensible: Any
    flue_loss_unburnt: Any
    dew_point: Any
    scale_drive: Any
    products: dict[str, Any]


@disjoint_base
class Flame(Warned, _Columns):
    __doc__ = _Columns.__doc__ or ""

    _ask: Any = None

    def dry(self) -> dict[str, Any]:
        """Products without the water, as an analyzer reads."""
        rest = 1 - self.products["H2O"]
        return {symbol: share / rest for symbol, share in self.products.items() if symbol != "H2O"}


def flame(
    *,
    gas: Gas | str | Mapping[str, float],
    air_ratio: Any = 1.0,
    mixture_temperature: Any = None,
    chamber_temperature: Any = 1473.15,
    site: Site | None = None,
    invalid: str = "raise",
) -> Flame:
    """Flame temperature and products of a gas at an air ratio (0.6 to 4).

    Parameters
    ----------
    gas : Gas, str or mapping
        The gas.
    air_ratio : array_like
        Air supplied over air needed.
    mixture_temperature, chamber_temperature : array_like
        Of gas and air as they come to the flame (the air's unless given), and of the products as they leave, K.
    site : Site
        Sea level unless given.
    invalid : str
        ``"raise"`` or ``"nan"``.

    Examples
    --------
    >>> import jetwright as jw
    >>> round(jw.flame(gas="propane", mixture_temperature=298.15).temperature)  # Cantera 3.2.0, gri30: 2265.9
    2266
    """
    gas = as_gas(gas)
    site = as_site(site)
    values = {
        "air_ratio": air_ratio,
        "mixture_temperature": site.air_temperature if mixture_temperature is None else mixture_temperature,
        "chamber_temperature": chamber_temperature,
        **at_station(site),
    }
    rows = answer(lambda *args: _native.flame(gas._native, *args), values, invalid, _FIRST + len(_PRODUCTS))
    found = Flame._make([*rows[:_FIRST], dict(zip(_PRODUCTS, rows[_FIRST:]))])
    found._ask = partial(hazards_of, partial(_native.flame_hazards, gas._native), values, "nan")
    return found
