"""What linings and work are made of."""

from __future__ import annotations

from typing import Any, Mapping, Sequence

from . import _native
from ._arrays import answer

_SOURCES = dict(_native.materials()) | dict(_native.substances())
_Points = float | Mapping[float, float] | Sequence[tuple[float, float]]


def _points(points: _Points) -> list[tuple[float, float]]:
    """Points of a property: one number, or temperatures (K) and values."""
    if isinstance(points, (int, float)):
        return [(300.0, float(points))]
    pairs = points.items() if isinstance(points, Mapping) else points
    return [(float(kelvin), float(value)) for kelvin, value in pairs]


class _Matter:
    """What a material and a substance share: a key or points of one's own, and properties over temperature."""

    __slots__ = ("_native", "_made")

    _native: Any
    _made: tuple[Any, ...]

    def __setattr__(self, name: str, value: Any) -> None:
        raise AttributeError(f"a {type(self).__name__} does not change; make another")

    def _put(self, native: Any, made: tuple[Any, ...]) -> None:
        object.__setattr__(self, "_native", native)
        object.__setattr__(self, "_made", made)

    @property
    def name(self) -> str | None:
        """Its key, none for one's own."""
        return self._made[0] if isinstance(self._made[0], str) else None

    @property
    def source(self) -> str:
        """Where its numbers are from."""
        return _SOURCES[self.name] if self.name is not None else "your own points"

    @property
    def density(self) -> float:
        """kg/m3."""
        return float(self._native.density)

    def conductivity(self, temperature: Any, invalid: str = "raise") -> Any:
        """Conductivity (W/(m K)) at each temperature (K), straight between the points and level beyond them."""
        return answer(lambda *args: self._native.at(*args), {"temperature": temperature}, invalid, 2)[0]

    def specific_heat(self, temperature: Any, invalid: str = "raise") -> Any:
        """Specific heat (J/(kg K)) at each temperature (K)."""
        return answer(lambda *args: self._native.at(*args), {"temperature": temperature}, invalid, 2)[1]

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Matter) and type(self) is type(other) and self._made == other._made

    def __hash__(self) -> int:
        return hash(repr(self._made))

    def _rows(self) -> list[tuple[str, str]]:
        return [("density", f"{self.density:g} kg/m3")]

    def __repr__(self) -> str:
        rows = "; ".join(f"{name} {text}" for name, text in self._rows())
        return f"{type(self).__name__}({self.name or 'own'!r}: {rows})"

    def _repr_html_(self) -> str:
        rows = "".join(f"<tr><td>{name}</td><td>{text}</td></tr>" for name, text in self._rows())
        return f"<table><tr><th colspan=2>{self.name or 'own'}</th></tr>{rows}<tr><td>source</td><td>{self.source}</td></tr></table>"


class Material(_Matter):
    """A lining material: a class by its key, or one's own by points.

    Parameters
    ----------
    name : str, optional
        One of :func:`materials`.
    density : float
        kg/m3, of one's own; with it
    conductivity, specific_heat : float, mapping or pairs
        W/(m K) and J/(kg K): a number, or up to 8 temperatures (K, rising) with their values.
    limit : float
        Maximum service temperature, K.

    Examples
    --------
    >>> import jetwright as jw
    >>> round(jw.Material("insulating brick 26").conductivity(900 + 273.15), 3)  # between 0.32 at 800 and 0.34 at 1000 C
    0.33
    >>> jw.Material(density=2000, conductivity=1.4, specific_heat=1000, limit=1900).conductivity(700.0)
    1.4
    """

    __slots__ = ()

    def __init__(
        self,
        name: str | None = None,
        *,
        density: float | None = None,
        conductivity: _Points | None = None,
        specific_heat: _Points | None = None,
        limit: float | None = None,
    ) -> None:
        if name is not None:
            if not (density is conductivity is specific_heat is limit is None):
                raise ValueError("a material is a name, or density, conductivity, specific_heat and limit of your own")
            if not isinstance(name, str):
                raise TypeError(f"material must be a name, not {type(name).__name__}")
            self._put(_native.Material(name), (name, 1.0))
            return
        if density is None or conductivity is None or specific_heat is None or limit is None:
            raise ValueError("a material of your own needs density, conductivity, specific_heat and limit")
        own = (float(density), tuple(_points(conductivity)), tuple(_points(specific_heat)), float(limit))
        self._put(_native.Material.by_points(own[0], list(own[1]), list(own[2]), own[3]), (own, 1.0))

    @property
    def limit(self) -> float:
        """Maximum service temperature, K."""
        return float(self._native.limit)

    @property
    def spread(self) -> float:
        """How far the conductivity of one maker's product lies from this, as a share (k = 2)."""
        return float(self._native.spread)

    def scaled(self, factor: float) -> Material:
        """The same with its conductivity multiplied: what a worse or a better lining does."""
        return _material(self._made[0], self._made[1] * float(factor))

    def _rows(self) -> list[tuple[str, str]]:
        scaled = [] if self._made[1] == 1.0 else [("conductivity times", f"{self._made[1]:g}")]
        rows = [("rated for", f"{self.limit - 273.15:.0f} C"), ("spread of conductivity", f"{self.spread:.0%}")]
        return super()._rows() + rows + scaled

    def __reduce__(self) -> Any:
        return (_material, self._made)


def _material(made: Any, factor: float) -> Material:
    if isinstance(made, str):
        material = Material(made)
    else:
        material = Material(density=made[0], conductivity=made[1], specific_heat=made[2], limit=made[3])
    if factor != 1.0:
        material._put(material._native.scaled(factor), (made, factor))
    return material


class Substance(_Matter):
    """What is heated: a substance by its key, or a solid of one's own by points.

    Parameters
    ----------
    name : str, optional
        One of :func:`substances`.
    density, conductivity, specific_heat : as in :class:`Material`
        Of one's own.
    limit : float
        Where it begins to melt, K.
    emissivity : float
        As it lies in a fire.

    Examples
    --------
    >>> import jetwright as jw
    >>> round(jw.Substance("steel").heat(293.15, 1373.15) / 1e3)  # EN 1993-1-2, integrated: 762 kJ/kg
    762
    """

    __slots__ = ()

    def __init__(
        self,
        name: str | None = None,
        *,
        density: float | None = None,
        conductivity: _Points | None = None,
        specific_heat: _Points | None = None,
        limit: float | None = None,
        emissivity: float = 0.8,
    ) -> None:
        if name is not None:
            if not (density is conductivity is specific_heat is limit is None):
                raise ValueError("a substance is a name, or density, conductivity, specific_heat and limit of your own")
            if not isinstance(name, str):
                raise TypeError(f"substance must be a name, not {type(name).__name__}")
            self._put(_native.Substance(name), (name,))
            return
        if density is None or conductivity is None or specific_heat is None or limit is None:
            raise ValueError("a substance of your own needs density, conductivity, specific_heat and limit")
        own = (float(density), tuple(_points(conductivity)), tuple(_points(specific_heat)), float(limit), float(emissivity))
        self._put(_native.Substance.by_points(own[0], list(own[1]), list(own[2]), own[3], own[4]), (own,))

    @property
    def solidus(self) -> float:
        """Where it begins to melt, K."""
        return float(self._native.solidus)

    @property
    def liquidus(self) -> float:
        """Where it is all melted, K."""
        return float(self._native.liquidus)

    @property
    def emissivity(self) -> float:
        """As it lies in a fire."""
        return float(self._native.emissivity)

    def heat(self, start: Any, target: Any, invalid: str = "raise") -> Any:
        """Heat (J/kg) from one temperature to another (K), melting included."""
        return answer(lambda *args: self._native.heat(*args), {"start": start, "target": target}, invalid, 1)[0]

    def _rows(self) -> list[tuple[str, str]]:
        melting = f"{self.solidus - 273.15:.0f} to {self.liquidus - 273.15:.0f} C"
        return super()._rows() + [("melts", melting), ("emissivity", f"{self.emissivity:g}")]

    def __reduce__(self) -> Any:
        return (_substance, self._made)


def _substance(made: Any) -> Substance:
    if isinstance(made, str):
        return Substance(made)
    return Substance(density=made[0], conductivity=made[1], specific_heat=made[2], limit=made[3], emissivity=made[4])


def as_material(value: Material | str) -> Material:
    """A material, made of its name where it is one."""
    return value if isinstance(value, Material) else Material(value)


def as_substance(value: Substance | str) -> Substance:
    """A substance, made of its name where it is one."""
    return value if isinstance(value, Substance) else Substance(value)


def materials() -> dict[str, Material]:
    """Every class of lining material by its key: generic classes, no brands, each with its source and its spread.

    >>> import jetwright as jw
    >>> "fiber blanket" in jw.materials()
    True
    """
    return {key: Material(key) for key, _ in _native.materials()}


def substances() -> dict[str, Substance]:
    """Every substance by its key, each with its source."""
    return {key: Substance(key) for key, _ in _native.substances()}


def steels() -> dict[str, float]:
    """Grades of steel inside a wall and the temperature (K) above which they scale away (from memory)."""
    return dict(_native.steels())
