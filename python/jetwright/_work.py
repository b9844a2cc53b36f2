"""The work, the lining's quantities, and the room's air."""

from __future__ import annotations

from functools import partial
from typing import Any, Mapping, NamedTuple, Sequence

from . import _native
from ._arrays import answer
from ._hazards import Warned, disjoint_base, hazards_of
from ._material import Substance, as_substance
from ._results import Columns
from ._site import Site, as_site


class _Work(NamedTuple):
    heat: Any
    heat_per_mass: Any
    average_heat: Any
    volume: Any
    melt_time: Any
    melting_begins: Any
    melted: Any
    mean_heat: Any
    first_heat: Any
    piece_time: Any
    piece_surface: Any
    biot_number: Any
    lumped: Any


class Work(Columns, _Work):
    """Heat and time of the work; arrays like the arguments, ``None`` where not asked.

    ``heat`` J of charge and crucible; ``heat_per_mass`` J/kg of the substance; ``average_heat`` W of so many pieces an hour;
    ``volume`` m3 when dense (loose scrap fills several times as much). In a crucible in a chamber: ``melt_time``,
    ``melting_begins`` and ``melted`` s, ``mean_heat`` and ``first_heat`` W. A plate or a bar: ``piece_time`` s until its
    middle is there, ``piece_surface`` K then, ``biot_number``, and ``lumped``, whether it counts as warm all through at once.
    """

    __slots__ = ()
    UNITS = {"heat": "J", "heat_per_mass": "J/kg", "average_heat": "W", "volume": "m3", "piece_surface": "K"} | {
        "melt_time": "s", "melting_begins": "s", "melted": "s", "mean_heat": "W", "first_heat": "W", "piece_time": "s",
    }  # fmt: skip


def work(
    *,
    substance: Substance | str,
    target: Any,
    mass: Any = 1.0,
    start: Any = 293.15,
    pieces_an_hour: Any = None,
    crucible_mass: Any = None,
    crucible_wall: Any = None,
    crucible_area: Any = None,
    crucible: Substance | str = "clay graphite",
    chamber_temperature: Any = None,
    plate: Any = None,
    bar: Any = None,
    film_coefficient: Any = 30.0,
    invalid: str = "raise",
) -> Work:
    """Heat and time to bring a piece, a charge or a loaded crucible to a temperature.

    Heat: mass times the integral of specific heat and melting, the crucible's added. Time in a crucible: radiation and
    convection to its outside, conduction through its wall, a charge of one temperature inside; so the melting shows. Time of
    a plate or bar: radiation and convection outside, conduction inside, lumped where the Biot number is below 0.1.

    Parameters
    ----------
    substance : Substance or str
        What is heated.
    mass : array_like
        kg.
    start, target : array_like
        K.
    pieces_an_hour : array_like, optional
        For the average heat.
    crucible_mass, crucible_wall, crucible_area : array_like, optional
        kg, m, and m2 that the fire sees; all three or none.
    crucible : Substance or str
        What it is made of.
    chamber_temperature : array_like, optional
        K: asks the time. Hotter than the target.
    plate, bar : array_like, optional
        Thickness of a plate heated from both sides, or diameter of a round bar, m.
    film_coefficient : array_like
        Convection of the fire's gases, W/(m2 K): 20 to 50 in a small furnace, common practice, no source.
    invalid : str
        ``"raise"`` or ``"nan"``.

    Notes
    -----
    Steel by EN 1993-1-2, 3.4.1.2, to 1200 degC; others as their ``source`` says. Times: Incropera et al., 6th ed., sections
    5.1 to 5.6, within 0.1 % of its series solutions.

    Examples
    --------
    >>> import jetwright as jw
    >>> round(jw.work(substance="steel", mass=2.0, start=293.15, target=1373.15).heat / 1e6, 3)  # 2 kg of 762 kJ/kg
    1.524
    """
    shape = [(code, name, size) for code, name, size in ((1, "plate", plate), (2, "bar", bar)) if size is not None]
    if len(shape) > 1:
        raise ValueError("give plate or bar, one of the two")
    crucible_parts = (crucible_mass, crucible_wall, crucible_area)
    has_crucible = any(part is not None for part in crucible_parts)
    if has_crucible and any(part is None for part in crucible_parts):
        raise ValueError("a crucible needs crucible_mass, crucible_wall and crucible_area together")
    if shape and chamber_temperature is None:
        raise ValueError(f"a {shape[0][1]} needs the chamber_temperature it is put into")
    code, name, size = shape[0] if shape else (0, "_size", 0.0)
    values = {
        "mass": mass,
        "start": start,
        "target": target,
        "pieces_an_hour": 0.0 if pieces_an_hour is None else pieces_an_hour,
        "crucible_mass": crucible_mass if has_crucible else 0.0,
        "crucible_wall": crucible_wall if has_crucible else 0.0,
        "crucible_area": crucible_area if has_crucible else 0.0,
        "chamber_temperature": 0.0 if chamber_temperature is None else chamber_temperature,
        "film_coefficient": film_coefficient,
        name: size,
    }
    holder = as_substance(crucible)._native if has_crucible else None
    matter = as_substance(substance)._native
    flags = (chamber_temperature is not None, code)
    native = lambda *args: _native.work(matter, holder, flags, *args)  # noqa: E731
    rows = answer(native, values, invalid, len(Work._fields), {"pieces_an_hour": True})
    if pieces_an_hour is None:
        rows[2] = None
    if not has_crucible or chamber_temperature is None:
        rows[4:9] = [None] * 5
    if not shape:
        rows[9:] = [None] * 4
    else:
        rows[12] = rows[12] == 1.0
    return Work(*rows)


#: Kinds of panels and their measures, in the order of the compiled loop.
_PANELS = {
    "cylinder": (0, ("diameter", "length", "thickness")),
    "half round": (1, ("diameter", "length", "thickness")),
    "box": (2, ("width", "height", "depth", "thickness")),
    "flat": (3, ("area", "thickness")),
    "door": (3, ("area", "thickness")),
    "courses": (4, ("width", "course", "count", "thickness")),
    "opening": (5, ("area",)),
}
_PANEL_CAP = 16
_MEASURES = 4


class _Lining(NamedTuple):
    hot_area: Any
    opening_area: Any
    chamber_volume: Any
    lining_volume: Any
    to_close: Any
    closing: Any
    dry_mass: Any
    bags: Any
    water: Any
    drying_heat: Any
    anchors: Any
    sling_pull: Any


@disjoint_base
class Lining(Warned, Columns, _Lining):
    """What the panels of a chamber add up to; arrays like the arguments, ``None`` where not asked.

    ``hot_area`` m2 lined, openings not counted; ``opening_area`` m2; ``chamber_volume`` and ``lining_volume`` m3;
    ``to_close`` m2 that ends and fronts leave open and ``closing`` m2 of what closes them. Of a castable: ``dry_mass`` kg
    without the margin, ``bags``, ``water`` kg, ``drying_heat`` J that drives it off. ``anchors`` on a square grid;
    ``sling_pull`` N in each of two legs that lift the dry mass: ask a rigger before you lift.
    """

    _ask: Any = None
    UNITS = {"hot_area": "m2", "opening_area": "m2", "chamber_volume": "m3", "lining_volume": "m3", "to_close": "m2"} | {
        "closing": "m2", "dry_mass": "kg", "water": "kg", "drying_heat": "J", "sling_pull": "N",
    }  # fmt: skip


def lining(
    *,
    panels: Sequence[Mapping[str, Any]],
    dry_density: Any = None,
    bag: Any = 25.0,
    water: Any = None,
    margin: Any = 0.1,
    anchor_spacing: Any = None,
    sling_leg: Any = None,
    sling_spread: Any = None,
    invalid: str = "raise",
) -> Lining:
    """The panels of a chamber added up: areas, volumes, bags and water, anchors, and the pull in a sling.

    Parameters
    ----------
    panels : sequence of mappings
        1 to 16, each with its ``kind`` and its inside measures in m and m2: ``cylinder`` and ``half round`` (``diameter``,
        ``length``, ``thickness``), ``box``, open in front (``width``, ``height``, ``depth``, ``thickness``), ``flat`` and
        ``door`` (``area``, ``thickness``), ``courses`` of loose brick (``width``, ``course``, ``count``, ``thickness``),
        ``opening`` (``area``). What ends leave open must be closed within 2 %.
    dry_density, water : array_like, optional
        kg of dry castable for a cubic meter of lining and water over dry, by the maker's sheet; both or none.
    bag, margin : array_like
        kg in a bag, and what is bought above what is needed, as a share.
    anchor_spacing : array_like, optional
        m.
    sling_leg, sling_spread : array_like, optional
        Of two legs from one hook, m.
    invalid : str
        ``"raise"`` or ``"nan"``.

    Raises
    ------
    RangeError
        Where the panels do not close, with the area missing or, below zero, too much.

    Examples
    --------
    >>> import jetwright as jw
    >>> end = 0.070686  # m2, a circle of 300 mm
    >>> shell = {"kind": "cylinder", "diameter": 0.3, "length": 0.4, "thickness": 0.075}
    >>> ends = [{"kind": "flat", "area": end, "thickness": 0.075}, {"kind": "flat", "area": end, "thickness": 0.075}]
    >>> round(jw.lining(panels=[shell, *ends]).hot_area, 4)  # pi 0.3 0.4 + 2 * 0.0707
    0.5184
    """
    codes, values = _panels(panels)
    rows = answer(lambda *args: _native.lining(codes, *args), values, invalid, 6)
    rows += [None] * 6
    if (dry_density is None) != (water is None):
        raise ValueError("a castable needs dry_density and water together")
    if dry_density is not None:
        mix = {"volume": rows[3], "dry_density": dry_density, "bag": bag, "water": water, "margin": margin}
        rows[6:10] = answer(lambda *args: _native.castable(*args), mix, invalid, 4)
    if anchor_spacing is not None:
        values = {"area": rows[0], "spacing": anchor_spacing}
        rows[10] = answer(lambda *args: _native.anchor_count(*args), values, invalid, 1)[0]
    if (sling_leg is None) != (sling_spread is None) or (sling_leg is not None and rows[6] is None):
        raise ValueError("a sling needs sling_leg, sling_spread, and the castable it lifts")
    if sling_leg is not None:
        values = {"mass": rows[6], "leg": sling_leg, "spread": sling_spread}
        rows[11] = answer(lambda *args: _native.sling_pull(*args), values, invalid, 1)[0]
    found = Lining(*rows)
    if dry_density is not None:
        found._ask = partial(hazards_of, _native.castable_hazards, {"dry_mass": rows[6], "water": rows[8]}, "nan")
    return found


def _panels(panels: Sequence[Mapping[str, Any]]) -> tuple[list[int], dict[str, Any]]:
    """Kinds and measures, every panel with four of them."""
    if isinstance(panels, Mapping) or not 1 <= len(panels) <= _PANEL_CAP:
        raise ValueError(f"a lining is a list of 1 to {_PANEL_CAP} panels")
    codes: list[int] = []
    values: dict[str, Any] = {}
    for number, panel in enumerate(panels):
        kind = panel.get("kind")
        if kind not in _PANELS:
            raise ValueError(f"panels[{number}]: kind is one of {', '.join(_PANELS)}, not {kind!r}")
        code, names = _PANELS[kind]
        if {*panel} != {"kind", *names}:
            raise ValueError(f"panels[{number}]: a panel of kind {kind!r} has {', '.join(names)}")
        codes.append(code)
        values |= {f"panels[{number}].{name}": panel[name] for name in names}
        values |= {f"_{number}_{spare}": 0.0 for spare in range(_MEASURES - len(names))}
    values |= {f"_{number}_{spare}": 0.0 for number in range(len(codes), _PANEL_CAP) for spare in range(_MEASURES)}
    return codes, values


class DryingStep(NamedTuple):
    """A step of drying out: up to a temperature (K), at a rate (K an hour, zero where held), for a time (s)."""

    up_to: float
    rate_per_hour: float
    time: float


def drying_steps(*, thickness: float, work: float, room: float = 293.15) -> list[DryingStep]:
    """Steps that dry out a castable of a thickness (m) from the room's to the work's temperature (K).

    Common practice, no source; the maker's sheet overrides. Steam bursts a lining that is hurried.

    >>> import jetwright as jw
    >>> steps = jw.drying_steps(thickness=0.075, work=1473.15)
    >>> round(steps[1].up_to - 273.15), round(steps[1].time / jw.hour, 6)  # 1.2 h for every 25 mm
    (110, 3.6)
    """
    return [DryingStep(*step) for step in _native.drying_steps(float(thickness), float(room), float(work))]


def carbon_monoxide_limits() -> dict[str, float]:
    """Published limits of carbon monoxide in air, as volume fractions, the strictest first."""
    return {key: fraction for key, fraction, _ in _native.carbon_monoxide_limits()}


def fresh_air(*, leak: Any, limit: Any = "workplace 25 ppm", outdoor: Any = 0.0, invalid: str = "raise") -> Any:
    """Fresh air (m3/s) that keeps a leak of carbon monoxide (m3/s of it) at a limit: leak / (limit - outdoor).

    ``limit`` is a volume fraction or a key of :func:`carbon_monoxide_limits`. The room is taken as stirred.

    >>> import jetwright as jw
    >>> round(jw.fresh_air(leak=1e-5, limit=25e-6), 6)  # 10 mL/s over 25 ppm
    0.4
    """
    if isinstance(limit, str):
        known = carbon_monoxide_limits()
        if limit not in known:
            raise ValueError(f"limit is {limit!r}, accepted are {', '.join(known)}, or a volume fraction")
        limit = known[limit]
    values = {"leak": leak, "limit": limit, "outdoor": outdoor}
    return answer(lambda *args: _native.fresh_air(*args), values, invalid, 1)[0]


class Draft(NamedTuple):
    """Draft of a hot chamber: Pa, and what it drives through an opening, kg/s."""

    pressure: Any
    mass_flow: Any


def draft(
    *,
    chamber_temperature: Any,
    height: Any,
    area: Any,
    passing_temperature: Any = None,
    site: Site | None = None,
    invalid: str = "raise",
) -> Draft:
    """Draft of a hot column, p g H / R (1/T_air - 1/T), and what it drives through an opening such as a stopped burner.

    0.6 A sqrt(2 density dp), at the temperature of what passes (that of the chamber unless given).

    >>> import jetwright as jw
    >>> site = jw.Site(station_pressure=83500.0, air_temperature=293.15)
    >>> round(jw.draft(chamber_temperature=1573.15, height=0.5, area=1e-3, site=site).pressure, 2)  # 4 Pa by hand
    3.96
    """
    site = as_site(site)
    values = {
        "ambient_pressure": site.ambient_pressure,
        "air_temperature": site.air_temperature,
        "chamber_temperature": chamber_temperature,
        "height": height,
        "area": area,
        "passing_temperature": chamber_temperature if passing_temperature is None else passing_temperature,
    }
    return Draft(*answer(lambda *args: _native.draft(*args), values, invalid, 2))
