"""Wall, chamber, warming up and cooling down.

Every function takes the same description of a furnace: write it once as a ``dict`` and pass it with ``**``.
"""

from __future__ import annotations

from typing import Any, Mapping, NamedTuple, Sequence

import numpy as np

from . import _native
from ._arrays import answer, check_invalid
from ._gas import Gas, as_gas
from ._material import Material, as_material
from ._results import Columns
from ._site import Site, as_site

#: Above this a chamber counts as re-igniting gas by itself, K: 1400 F (from memory of NFPA 86, bypass of supervision).
REIGNITES_ABOVE: float = _native.reignites_above()
_FACINGS = ("side", "up", "down")
_LAYER_CAP = 6
_OPENING_CAP = 6
_Layers = Sequence[tuple[Material | str, Any]]


class _Wall(NamedTuple):
    heat: Any
    heat_flux: Any
    faces: tuple[Any, ...]
    shell: Any
    too_hot: Any
    at_depth: Any


class Wall(Columns, _Wall):
    """A wall that has been steady state; arrays like the arguments.

    ``heat`` W through it; ``heat_flux`` W/m2 of the hot face; ``faces`` K from the hot face over the interfaces to the
    outside; ``shell`` K, the last of them; ``too_hot`` the first layer hotter on its inner face than its material's limit,
    counted from 0, -1 for none; ``at_depth`` K at the depth asked for, else ``None``.
    """

    __slots__ = ()
    UNITS = {"heat": "W", "heat_flux": "W/m2", "faces": "K", "shell": "K", "at_depth": "K"}


class _Balance(NamedTuple):
    chamber_temperature: Any
    fire: Any
    work: Any
    walls: Any
    openings: Any
    flue: Any
    available_heat: Any
    shell: Any
    too_hot: Any


class Balance(Columns, _Balance):
    """Where the heat of a fire goes; arrays like the arguments.

    ``chamber_temperature`` K; ``fire`` W net; of it into ``work``, ``walls``, ``openings`` and ``flue``, W;
    ``available_heat`` the share that stays in the chamber; ``shell`` K; ``too_hot`` as in :class:`Wall`.
    """

    __slots__ = ()
    UNITS = {name: "W" for name in ("fire", "work", "walls", "openings", "flue")} | {"chamber_temperature": "K", "shell": "K"}


class _Leg(NamedTuple):
    time: Any
    fire: Any
    flue: Any
    openings: Any
    work: Any
    air: Any
    stored: Any
    shell: Any
    hot_face: Any
    outside: Any
    mean_fire: Any
    last_fire: Any


class Leg(Columns, _Leg):
    """A part of a firing; arrays like the arguments.

    ``time`` s; ``fire`` J net of gas burnt, of which ``flue``, ``openings``, ``work`` took theirs, ``air`` was carried off by
    air purged, ``stored`` stays in the wall and ``shell`` left its outside, J; ``hot_face`` and ``outside`` K at its
    end; ``mean_fire`` and ``last_fire`` W net.
    """

    __slots__ = ()
    UNITS = {"time": "s", "hot_face": "K", "outside": "K", "mean_fire": "W", "last_fire": "W"} | {
        name: "J" for name in ("fire", "flue", "openings", "work", "air", "stored", "shell")
    }


def _body(area: Any, inner_radius: Any, length: Any) -> tuple[int, dict[str, Any]]:
    """The code of a body and its three measures by name."""
    if (area is None) == (inner_radius is None) or (inner_radius is None) != (length is None):
        raise ValueError("give the area of a flat wall, or inner_radius and length of a round one")
    if area is not None:
        return 0, {"area": area, "_second": 0.0, "_third": 0.0}
    return 1, {"inner_radius": inner_radius, "length": length, "_third": 0.0}


def _wall(
    layers: _Layers,
    area: Any,
    inner_radius: Any,
    length: Any,
    height: Any,
    emissivity: Any,
    facing: str,
    site: Site,
) -> tuple[list[Any], int, int, dict[str, Any]]:
    """Materials, codes and inputs of a wall, in the order of the compiled loops."""
    if isinstance(layers, (str, Material)):
        raise TypeError("layers are pairs of a material and a thickness, the hot one first")
    pairs = list(layers)
    if not 1 <= len(pairs) <= _LAYER_CAP:
        raise ValueError(f"a wall has 1 to {_LAYER_CAP} layers, not {len(pairs)}")
    if any(not isinstance(pair, (tuple, list)) or len(pair) != 2 for pair in pairs):
        raise TypeError("layers are pairs of a material and a thickness, the hot one first")
    if facing not in _FACINGS:
        raise ValueError(f"facing is one of {', '.join(_FACINGS)}, not {facing!r}")
    code, values = _body(area, inner_radius, length)
    values |= {"height": height, "emissivity": emissivity}
    materials = [as_material(material)._native for material, _ in pairs]
    thicknesses = [thickness for _, thickness in pairs] + [0.0] * (_LAYER_CAP - len(pairs))
    values |= {f"layers[{number}]": thickness for number, thickness in enumerate(thicknesses)}
    values |= site._values
    return materials, code, _FACINGS.index(facing), values


def _openings(openings: Sequence[Any], flue_excess: Any) -> tuple[int, dict[str, Any]]:
    holes = list(openings)
    if len(holes) > _OPENING_CAP:
        raise ValueError(f"a chamber has up to {_OPENING_CAP} openings, not {len(holes)}")
    areas = holes + [0.0] * (_OPENING_CAP - len(holes))
    values = {f"openings[{number}]": area for number, area in enumerate(areas)}
    return len(holes), values | {"flue_excess": flue_excess}


def _plain(rows: list[Any], names: Sequence[str]) -> list[Any]:
    """Rows with the layer that is too hot as a whole number."""
    place = names.index("too_hot")
    rows[place] = _whole(rows[place])
    return rows


def _whole(value: Any) -> Any:
    if isinstance(value, float):
        return -1 if np.isnan(value) else int(value)
    return value.where(value == value, -1).astype(int) if hasattr(value, "where") else np.where(value == value, value, -1).astype(int)


def wall(
    *,
    layers: _Layers,
    hot_face: Any,
    cold_face: Any = None,
    depth: Any = None,
    area: Any = None,
    inner_radius: Any = None,
    length: Any = None,
    height: Any = 0.5,
    emissivity: Any = 0.9,
    facing: str = "side",
    site: Site | None = None,
    invalid: str = "raise",
) -> Wall:
    """Temperatures through a wall that has been steady state, and the heat it loses.

    Heat by conduction, the integral of k dT over each layer's resistance (thickness/A, or ln(r2/r1)/(2 pi L)), equal to what
    the outside gives off: h (T - T_air) + emissivity sigma (T^4 - T_air^4).

    Parameters
    ----------
    layers : sequence of (Material or name, thickness m)
        1 to 6, the hot one first; thicknesses broadcast like every other number.
    hot_face, cold_face : array_like
        K. With ``cold_face`` the wall lies between two faces of known temperature, without it the room cools it.
    depth : array_like, optional
        Behind the hot face, m: the temperature there, of steel inside the wall.
    area : array_like
        Of a flat wall's hot face, m2; or
    inner_radius, length : array_like
        Of a round one, m.
    height : array_like
        Of the outside, for its free convection, m; of a lid or a floor its area over its rim.
    emissivity : array_like
        Of the outside: 0.9 painted or rusty.
    facing : str
        ``"side"``, ``"up"`` or ``"down"``.
    site : Site
        The room's air; sea level unless given.
    invalid : str
        ``"raise"`` or ``"nan"``.

    Notes
    -----
    Conductivities of one maker's product lie some 20 % from the class's (``Material.spread``): so does the heat.
    Free convection: Churchill and Chu 1975 (side), McAdams as in Incropera et al., 6th ed., equations 9.30 to 9.32.

    Examples
    --------
    Coulson and Richardson, Chemical Engineering vol. 1, example 9.3: 961 W/m2, 1063 K and 605 K.

    >>> import jetwright as jw
    >>> brick = lambda k: jw.Material(density=2000, conductivity=k, specific_heat=1000, limit=2000)
    >>> layers = [(brick(1.4), 0.20), (brick(0.21), 0.10), (brick(0.7), 0.20)]
    >>> w = jw.wall(layers=layers, area=1.0, hot_face=1200.0, cold_face=330.0)
    >>> round(w.heat_flux, 1), round(w.faces[1]), round(w.faces[2])
    (961.6, 1063, 605)
    """
    site = as_site(site)
    materials, body, facing_code, values = _wall(layers, area, inner_radius, length, height, emissivity, facing, site)
    values |= {
        "hot_face": hot_face,
        "cold_face": 0.0 if cold_face is None else cold_face,
        "depth": 0.0 if depth is None else depth,
    }
    flags = (cold_face is not None, depth is not None)
    native = lambda *args: _native.wall(materials, (body, facing_code, 0, site._kind), flags, *args)  # noqa: E731
    rows = answer(native, values, invalid, 11)
    faces = tuple(rows[2 : 3 + len(materials)])
    return Wall(rows[0], rows[1], faces, faces[-1], _whole(rows[9]), None if depth is None else rows[10])


def chamber(
    *,
    layers: _Layers,
    gas: Gas | str | Mapping[str, float],
    chamber_temperature: Any = None,
    fire: Any = None,
    work: Any = 0.0,
    air_ratio: Any = 1.05,
    openings: Sequence[Any] = (),
    flue_excess: Any = 50.0,
    area: Any = None,
    inner_radius: Any = None,
    length: Any = None,
    height: Any = 0.5,
    emissivity: Any = 0.9,
    facing: str = "side",
    site: Site | None = None,
    invalid: str = "raise",
) -> Balance:
    """The fire that keeps a temperature, or the temperature a fire keeps, when the walls have been steady state.

    fire times available heat = work + walls + openings. Give ``chamber_temperature`` (K) or ``fire`` (W net).

    Parameters
    ----------
    chamber_temperature, fire : array_like
        One of the two.
    work : array_like
        Heat the work takes, W.
    air_ratio : array_like
        0.6 to 4; gas and air come at the air's temperature.
    openings : sequence of array_like
        Areas, m2, up to 6; each a black body seen through a round passage as deep as the wall (Berman 1965).
    flue_excess : array_like
        How far above the chamber its gases leave, K: 0 stirred well, 50 to 150 in a small furnace (common practice, no
        source).
    layers, area, inner_radius, length, height, emissivity, facing, site, invalid
        As in :func:`wall`.

    Raises
    ------
    RangeError
        Where no heat is left at the temperature, or a fire is too small to warm the chamber at all.

    Examples
    --------
    >>> import jetwright as jw
    >>> furnace = {"layers": [("insulating brick 26", 0.075)], "area": 0.5, "gas": "propane", "openings": [0.006]}
    >>> b = jw.chamber(**furnace, chamber_temperature=1500.0)
    >>> abs(b.walls + b.openings + b.flue - b.fire) < 1e-6 * b.fire
    True
    >>> round(jw.chamber(**furnace, fire=b.fire).chamber_temperature, 6)
    1500.0
    """
    if (chamber_temperature is None) == (fire is None):
        raise ValueError("give chamber_temperature or fire, one of the two")
    site = as_site(site)
    materials, codes, values = _fired(
        layers, area, inner_radius, length, height, emissivity, facing, site, openings, flue_excess, air_ratio
    )
    values |= {"fire": fire} if chamber_temperature is None else {"chamber_temperature": chamber_temperature}
    values |= {"work": work}
    burning = as_gas(gas)._native
    native = lambda *args: _native.chamber(burning, materials, codes, chamber_temperature is None, *args)  # noqa: E731
    rows = answer(native, values, invalid, len(Balance._fields), {"work": True})
    return Balance(*_plain(rows, Balance._fields))


def _fired(
    layers: _Layers, area: Any, inner_radius: Any, length: Any, height: Any, emissivity: Any, facing: str, site: Site,
    openings: Sequence[Any], flue_excess: Any, air_ratio: Any,
) -> tuple[list[Any], tuple[int, int, int, int], dict[str, Any]]:  # fmt: skip
    """Materials, codes and inputs of a chamber with its fire."""
    materials, body, facing_code, values = _wall(layers, area, inner_radius, length, height, emissivity, facing, site)
    count, holes = _openings(openings, flue_excess)
    return materials, (body, facing_code, count, site._kind), values | holes | {"air_ratio": air_ratio}


def warm_up(
    *,
    layers: _Layers,
    gas: Gas | str | Mapping[str, float],
    fire: Any,
    chamber_temperature: Any,
    air_ratio: Any = 1.05,
    openings: Sequence[Any] = (),
    flue_excess: Any = 50.0,
    area: Any = None,
    inner_radius: Any = None,
    length: Any = None,
    height: Any = 0.5,
    emissivity: Any = 0.9,
    facing: str = "side",
    site: Site | None = None,
    invalid: str = "raise",
) -> Leg:
    """From cold to a temperature with a steady fire: how long it takes and where the heat goes.

    One wall in time: 48 cells, implicit in two stages (Alexander 1977), so that any step is stable and the energy closes to
    0.1 %. The chamber has the temperature of its hot face.

    Parameters
    ----------
    fire : array_like
        W net.
    chamber_temperature : array_like
        To be reached, K.
    layers, gas, air_ratio, openings, flue_excess, area, inner_radius, length, height, emissivity, facing, site, invalid
        As in :func:`chamber`.

    Raises
    ------
    RangeError
        Where the fire is too small, saying what it reaches in two days.

    Examples
    --------
    >>> import jetwright as jw
    >>> furnace = {"layers": [("insulating brick 26", 0.075)], "area": 0.5, "gas": "propane"}
    >>> leg = jw.warm_up(**furnace, fire=20e3, chamber_temperature=[1000.0, 1400.0])
    >>> bool(leg.time[0] < leg.time[1])
    True
    """
    site = as_site(site)
    materials, codes, values = _fired(
        layers, area, inner_radius, length, height, emissivity, facing, site, openings, flue_excess, air_ratio
    )
    values |= {"fire": fire, "chamber_temperature": chamber_temperature}
    burning = as_gas(gas)._native
    native = lambda *args: _native.warm_up(burning, materials, codes, *args)  # noqa: E731
    return Leg(*answer(native, values, invalid, len(Leg._fields)))


def cool_down(
    *,
    layers: _Layers,
    chamber_temperature: Any,
    held: Any,
    down_to: Any,
    air_flow: Any = 0.0,
    openings: Sequence[Any] = (),
    area: Any = None,
    inner_radius: Any = None,
    length: Any = None,
    height: Any = 0.5,
    emissivity: Any = 0.9,
    facing: str = "side",
    site: Site | None = None,
    invalid: str = "raise",
) -> Leg:
    """How long a chamber takes to cool with the gas off, after it was held at a temperature for a time.

    Down to 1033 K (760 degC) it re-ignites gas by itself; down to :func:`autoignition` it may.

    Parameters
    ----------
    chamber_temperature, held : array_like
        Held at, K, from cold, for how long, s.
    down_to : array_like
        K.
    air_flow : array_like
        Air blown or drawn through, kg/s; it leaves as warm as the hot face, the most it can carry.
    layers, openings, area, inner_radius, length, height, emissivity, facing, site, invalid
        As in :func:`chamber`.

    Raises
    ------
    RangeError
        Where it is not reached in two days.

    Examples
    --------
    >>> import jetwright as jw
    >>> furnace = {"layers": [("insulating brick 26", 0.075)], "area": 0.5, "openings": [0.006]}
    >>> leg = jw.cool_down(**furnace, chamber_temperature=1500.0, held=3600.0, down_to=1033.0)
    >>> 2 * jw.minute < leg.time < 60 * jw.minute
    True
    """
    site = as_site(site)
    materials, body, facing_code, values = _wall(layers, area, inner_radius, length, height, emissivity, facing, site)
    count, holes = _openings(openings, 0.0)
    values |= holes | {"chamber_temperature": chamber_temperature, "held": held, "down_to": down_to, "air_flow": air_flow}
    native = lambda *args: _native.cool_down(materials, (body, facing_code, count, site._kind), *args)  # noqa: E731
    return Leg(*answer(native, values, invalid, len(Leg._fields), {"air_flow": True}))


class Step(NamedTuple):
    """A step of a firing; make one with :meth:`warm_up`, :meth:`hold` or :meth:`cool_down`."""

    kind: str
    numbers: tuple[float, float, float]
    air_ratio: float | None

    @staticmethod
    def warm_up(*, fire: float, chamber_temperature: float, air_ratio: float | None = None) -> Step:
        """A steady fire (W net) until a temperature (K) is reached."""
        return Step("warm up", (float(fire), float(chamber_temperature), 0.0), air_ratio)

    @staticmethod
    def hold(*, chamber_temperature: float, time: float, work: float = 0.0, air_ratio: float | None = None) -> Step:
        """A temperature (K) held for a time (s) while work takes heat (W)."""
        return Step("hold", (float(chamber_temperature), float(time), float(work)), air_ratio)

    @staticmethod
    def cool_down(*, down_to: float, air_flow: float = 0.0) -> Step:
        """Gas off until a temperature (K) is reached, with air (kg/s) blown or drawn through."""
        return Step("cool down", (float(down_to), float(air_flow), 0.0), None)


class Firing:
    """One chamber through the steps of a firing.

    Attributes
    ----------
    legs : tuple of Leg
        One a step.
    starts : tuple of float
        When each began, s.
    time, hot_face, outside, stored : numpy.ndarray
        Its whole course: s, K, K and J stored in the wall.
    profiles : tuple of (depth, temperature)
        m behind the hot face and K, at the end of each step.
    """

    __slots__ = ("steps", "legs", "starts", "time", "hot_face", "outside", "stored", "profiles")

    steps: tuple[Step, ...]
    legs: tuple[Leg, ...]
    starts: tuple[float, ...]
    time: np.ndarray
    hot_face: np.ndarray
    outside: np.ndarray
    stored: np.ndarray
    profiles: tuple[tuple[np.ndarray, np.ndarray], ...]

    def __init__(self, steps: tuple[Step, ...], stands: Sequence[Any], course: Any) -> None:
        put = object.__setattr__
        put(self, "steps", steps)
        put(self, "legs", tuple(Leg(*numbers) for numbers, _, _ in stands))
        put(self, "starts", tuple(float(sum(leg.time for leg in self.legs[:number])) for number in range(len(stands))))
        for name, column in zip(("time", "hot_face", "outside", "stored"), np.array(course).T):
            put(self, name, column)
        put(self, "profiles", tuple((np.array(depth), np.array(kelvin)) for _, depth, kelvin in stands))

    def __setattr__(self, name: str, value: Any) -> None:
        raise AttributeError("a Firing does not change; make another")

    def to_pandas(self) -> Any:
        """A ``DataFrame`` with one row a step."""
        import pandas as pd

        rows = [{"step": step.kind, "start": start} | leg.to_dict() for step, start, leg in zip(self.steps, self.starts, self.legs)]
        return pd.DataFrame(rows)

    def __repr__(self) -> str:
        rows = [
            f"  {start / 60:6.1f} min  {step.kind:<9} {leg.time / 60:6.1f} min, {leg.fire / 1e6:6.2f} MJ net, to {leg.hot_face - 273.15:.0f} C"
            for step, start, leg in zip(self.steps, self.starts, self.legs)
        ]
        return "Firing(\n" + "\n".join(rows) + "\n)"

    def _repr_html_(self) -> str:
        rows = "".join(
            f"<tr><td>{start / 60:.1f}</td><td>{step.kind}</td><td>{leg.time / 60:.1f}</td><td>{leg.fire / 1e6:.2f}</td>"
            f"<td>{leg.mean_fire / 1e3:.2f}</td><td>{leg.hot_face - 273.15:.0f}</td></tr>"
            for step, start, leg in zip(self.steps, self.starts, self.legs)
        )
        titles = "<th>at, min</th><th>step</th><th>takes, min</th><th>fire, MJ net</th><th>mean, kW net</th><th>hot face, C</th>"
        return f"<table><tr>{titles}</tr>{rows}</table>"

    def __reduce__(self) -> Any:
        stands = [(tuple(leg), depth, kelvin) for leg, (depth, kelvin) in zip(self.legs, self.profiles)]
        course = np.array([self.time, self.hot_face, self.outside, self.stored]).T
        return (Firing, (self.steps, stands, course))


_KINDS = ("warm up", "hold", "cool down")


def firing(
    *,
    layers: _Layers,
    gas: Gas | str | Mapping[str, float],
    steps: Sequence[Step],
    air_ratio: float = 1.05,
    openings: Sequence[float] = (),
    flue_excess: float = 50.0,
    area: float | None = None,
    inner_radius: float | None = None,
    length: float | None = None,
    height: float = 0.5,
    emissivity: float = 0.9,
    facing: str = "side",
    site: Site | None = None,
) -> Firing:
    """One chamber, cold at first, through steps that follow each other; scalars only, arguments as in :func:`chamber`.

    Raises
    ------
    ValueError
        Naming the step that has no answer.

    Examples
    --------
    >>> import jetwright as jw
    >>> furnace = {"layers": [("insulating brick 26", 0.075)], "area": 0.5, "gas": "propane", "openings": [0.006]}
    >>> up = jw.Step.warm_up(fire=20e3, chamber_temperature=1500.0)
    >>> hold = jw.Step.hold(chamber_temperature=1500.0, time=40 * jw.minute, work=2000.0)
    >>> down = jw.Step.cool_down(down_to=1033.0)
    >>> e = jw.firing(**furnace, steps=[up, hold, down])
    >>> [step.kind for step in e.steps], bool(e.time[-1] == sum(leg.time for leg in e.legs))
    (['warm up', 'hold', 'cool down'], True)
    """
    site = as_site(site)
    materials, codes, values = _fired(
        layers, area, inner_radius, length, height, emissivity, facing, site, openings, flue_excess, air_ratio
    )
    kept = tuple(steps)
    if not kept or any(not isinstance(step, Step) or step.kind not in _KINDS for step in kept):
        raise TypeError("steps are made with jw.Step.warm_up, jw.Step.hold and jw.Step.cool_down")
    inputs = []
    for name, value in values.items():
        array = np.asarray(value)
        if array.ndim or array.dtype.kind not in "fiu":
            raise TypeError(f"{name} must be one real number here")
        inputs.append(float(array))
    told = []
    for number, step in enumerate(kept):
        if not np.isfinite(step.numbers).all() or min(step.numbers) < 0.0:
            raise ValueError(f"steps[{number}]: every number must be finite and not below zero, {step.numbers} was given")
        told.append((_KINDS.index(step.kind), step.numbers, inputs[-1] if step.air_ratio is None else float(step.air_ratio)))
    return Firing(kept, *_native.firing(as_gas(gas)._native, materials, codes, inputs, told))


def opening(
    *, area: Any, depth: Any, chamber_temperature: Any, site: Site | None = None, invalid: str = "raise"
) -> Any:
    """Heat (W) that an opening lets out: A F sigma (T^4 - T_air^4), F what a round passage of a depth (m) passes.

    Berman, J. Appl. Phys. 36 (1965) 3356, the sides giving back what falls on them.

    >>> import jetwright as jw
    >>> cold = jw.Site(air_temperature=293.15)
    >>> round(jw.opening(area=0.01, depth=0.0, chamber_temperature=1573.15, site=cold))  # 0.01 m2 of 346.8 kW/m2
    3469
    """
    site = as_site(site)
    values = {"area": area, "depth": depth, "chamber_temperature": chamber_temperature, "air_temperature": site.air_temperature}
    return answer(lambda *args: _native.opening(*args), values, invalid, 1)[0]


class ShellLoss(NamedTuple):
    """What a warm outside gives to a quiet room: W/(m2 K) of free convection, and W/m2 with the radiation."""

    convection: Any
    heat_flux: Any


def shell_loss(
    *, face: Any, height: Any = 0.5, emissivity: Any = 0.9, facing: str = "side", site: Site | None = None,
    invalid: str = "raise",
) -> ShellLoss:
    """Free convection and radiation of an outside at a temperature (K): h (T - T_air) + emissivity sigma (T^4 - T_air^4).

    Churchill and Chu 1975 (side), McAdams as in Incropera et al., 6th ed., equations 9.30 to 9.32 (up, down).

    >>> import jetwright as jw
    >>> loss = jw.shell_loss(face=373.15, height=1.0, site=jw.Site(air_temperature=293.15))
    >>> round(loss.convection, 1)  # 5.68 with the properties of a reference table
    5.7
    """
    if facing not in _FACINGS:
        raise ValueError(f"facing is one of {', '.join(_FACINGS)}, not {facing!r}")
    site = as_site(site)
    values = {"temperature": face, "height": height, "emissivity": emissivity, **site._values}
    codes = (0, _FACINGS.index(facing), 0, site._kind)
    return ShellLoss(*answer(lambda *args: _native.shell_loss(codes, *args), values, invalid, 2))


def box_shape_factor(*, width: Any, height: Any, depth: Any, thickness: Any, invalid: str = "raise") -> Any:
    """Shape factor (m) of a box with equal walls all round: A/t, 0.54 of every edge, 0.15 t for every corner.

    Heat is the factor times conductivity times difference. Langmuir, Adams and Meikle 1913, as in Holman, Heat Transfer,
    table 3-1; inside dimensions above a fifth of the wall.

    >>> import jetwright as jw
    >>> round(jw.box_shape_factor(width=0.5, height=0.5, depth=0.5, thickness=0.1) * 1.04 * 450)  # Holman, example 3-2: 8592 W
    8592
    """
    values = {"width": width, "height": height, "depth": depth, "thickness": thickness}
    return answer(lambda *args: _native.box_factor(*args), values, invalid, 1)[0]
