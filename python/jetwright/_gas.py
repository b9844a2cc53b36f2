"""The gas."""

from __future__ import annotations

from typing import Any, Mapping, NamedTuple

from . import _native
from ._arrays import answer

_STATE = ("density", "viscosity", "enthalpy", "entropy", "saturation_ratio")


class Expansion(NamedTuple):
    """A lossless expansion where it is fastest; arrays like the arguments.

    Flux in kg/(s m2), speed in m/s, temperature in K, ratios to the supply, choked as bool.
    """

    mass_flux: Any
    speed: Any
    temperature: Any
    pressure_ratio: Any
    density_ratio: Any
    choked: Any


class Saturated(NamedTuple):
    """A boiling liquid, arrays like the temperature: Pa absolute, J/kg, kg/m3, J/(kg K)."""

    pressure: Any
    latent_heat: Any
    density: Any
    heat_capacity: Any


class Gas:
    """A fuel gas: a name of the trade, or mole fractions.

    Parameters
    ----------
    composition : str or mapping
        ``"propane"``, ``"natural-gas"`` and the like, ``"C3H8=0.95,C2H6=0.05"``, or ``{"C3H8": 0.95, "C2H6": 0.05}``.

    Examples
    --------
    >>> import jetwright as jw
    >>> gas = jw.Gas("propane")
    >>> round(gas.heating_value_gross / 1e6, 2)  # MJ/kg, ISO 6976
    50.37
    >>> round(gas.density(pressure=101325, temperature=288.7), 2)  # kg/m3
    1.9
    """

    __slots__ = ("_native",)

    _native: Any

    def __init__(self, composition: str | Mapping[str, float]) -> None:
        if isinstance(composition, Mapping):
            composition = ",".join(f"{symbol}={float(share)!r}" for symbol, share in composition.items())
        if not isinstance(composition, str):
            raise TypeError(f"a gas is a name or mole fractions, not {type(composition).__name__}")
        object.__setattr__(self, "_native", _native.Gas(composition))

    def __setattr__(self, name: str, value: Any) -> None:
        raise AttributeError("a Gas does not change; make another")

    @property
    def fractions(self) -> dict[str, float]:
        """Mole fractions by symbol."""
        return dict(self._native.fractions)

    @property
    def molar_mass(self) -> float:
        """kg/kmol."""
        return float(self._native.molar_mass)

    @property
    def heating_value_gross(self) -> float:
        """J/kg at 15 degC."""
        return float(self._native.heating_value_gross)

    @property
    def heating_value_net(self) -> float:
        """J/kg at 15 degC."""
        return float(self._native.heating_value_net)

    @property
    def oxygen_to_burn(self) -> float:
        """Oxygen molecules to burn one of the mixture."""
        return float(self._native.oxygen_to_burn)

    def calorific_values(self, combustion: float = 15.0, metering: float = 15.0) -> dict[str, float]:
        """ISO 6976 values at a combustion and a metering temperature in degC, SI units by name."""
        return dict(self._native.calorific_values(float(combustion), float(metering)))

    def _state(self, row: int, pressure: Any, temperature: Any, invalid: str) -> Any:
        values = {"pressure": pressure, "gas_temperature": temperature}
        return answer(lambda *args: self._native.state(*args), values, invalid, len(_STATE))[row]

    def density(self, *, pressure: Any, temperature: Any, invalid: str = "raise") -> Any:
        """Density of the real gas, kg/m3, at absolute pressure (Pa) and temperature (K)."""
        return self._state(0, pressure, temperature, invalid)

    def viscosity(self, *, temperature: Any, invalid: str = "raise") -> Any:
        """Dynamic viscosity at low pressure, Pa s."""
        return self._state(1, 1e5, temperature, invalid)

    def enthalpy(self, *, pressure: Any, temperature: Any, invalid: str = "raise") -> Any:
        """Enthalpy above the ideal gas at 298.15 K, J/kg."""
        return self._state(2, pressure, temperature, invalid)

    def entropy(self, *, pressure: Any, temperature: Any, invalid: str = "raise") -> Any:
        """Entropy above the ideal gas at 298.15 K and one atmosphere, J/(kg K)."""
        return self._state(3, pressure, temperature, invalid)

    def saturation_ratio(self, *, pressure: Any, temperature: Any, invalid: str = "raise") -> Any:
        """Pressure over the dew-point pressure; above one some of the gas would be liquid."""
        return self._state(4, pressure, temperature, invalid)

    def saturated(self, *, temperature: Any, invalid: str = "raise") -> Saturated:
        """The liquid in a cylinder of it, and the pressure it makes, at each temperature (K)."""
        return Saturated(*answer(lambda *args: self._native.saturated(*args), {"gas_temperature": temperature}, invalid, 4))

    def expand(self, *, pressure: Any, ahead: Any, temperature: Any, invalid: str = "raise") -> Expansion:
        """Lossless expansion from rest at ``pressure`` into ``ahead`` (both absolute, Pa)."""
        values = {"pressure": pressure, "ahead": ahead, "gas_temperature": temperature}
        rows = answer(lambda *args: self._native.expand(*args), values, invalid, 6)
        flux, speed, kelvin, ratio, density, choked = rows
        return Expansion(flux, speed, kelvin, ratio, density, choked == 1.0)

    def __repr__(self) -> str:
        return f"Gas({self._native.text!r})"

    def _repr_html_(self) -> str:
        rows = "".join(f"<tr><td>{symbol}</td><td>{share:.4f}</td></tr>" for symbol, share in self.fractions.items())
        return f"<table><tr><th>{self._native.text}</th><th>mole fraction</th></tr>{rows}</table>"

    def __reduce__(self) -> Any:
        return (Gas, (self._native.text,))

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Gas) and self.fractions == other.fractions

    def __hash__(self) -> int:
        return hash(self._native.text)


_known: dict[str, Gas] = {}


def as_gas(gas: Gas | str | Mapping[str, float]) -> Gas:
    """The gas itself, or the one of a name, which is kept."""
    if isinstance(gas, Gas):
        return gas
    if not isinstance(gas, str):
        return Gas(gas)
    known = _known.get(gas)
    if known is None:
        if len(_known) >= 64:
            _known.clear()
        known = _known[gas] = Gas(gas)
    return known
