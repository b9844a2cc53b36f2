"""A burner as a mapping, typed: the sections and keys of the burner file. Written by the table of inputs.

A quantity is a text of a number and a unit, such as ``"1.8 mm"``; a plain number may be a number.
"""

from __future__ import annotations

import sys
from typing import Literal, TypedDict

if sys.version_info >= (3, 11):
    from typing import Required


class RegulatorPoints(TypedDict, total=False):
    """What the regulator holds at a flow, the first with the valve shut; the pressure does not rise with the
    flow."""

    flow: Required[str]
    """Gas drawn."""
    gauge: Required[str]
    """What the gauge reads there."""


class BlowerPoints(TypedDict, total=False):
    """A point of the blower's curve; the flow rises from point to point."""

    flow: Required[str]
    """Flow of air."""
    pressure: Required[str]
    """Static pressure at that flow."""
    power: str
    """Power at the shaft, at every point or at none."""


class LayerConductivity(TypedDict, total=False):
    """Conductivity of a layer's own material, the temperature rising from point to point."""

    temperature: Required[str]
    """Temperature."""
    value: Required[float | str]
    """Conductivity there, W/(m K)."""


class LayerSpecificHeat(TypedDict, total=False):
    """Specific heat of a layer's own material, the temperature rising from point to point."""

    temperature: Required[str]
    """Temperature."""
    value: Required[float | str]
    """Specific heat there, J/(kg K)."""


class Site(TypedDict, total=False):
    """The site and its weather. The pressure of the air comes from the altitude, from a barometer on the
    spot, or from a forecast together with the altitude."""

    altitude: str
    """Height above sea level."""
    station_pressure: str
    """What a barometer on the site reads."""
    sea_level_pressure: str
    """A forecast's pressure, which is reduced to sea level and so wants the altitude beside it."""
    air_temperature: Required[str]
    """Temperature of the air."""
    humidity: float | str
    """Relative humidity of the air. Without it: 0 %."""


class Gas(TypedDict, total=False):
    """The gas. With a section [cylinder] and without a temperature, throttling decides how cold the gas
    comes."""

    kind: Required[str]
    """A named gas, or mole fractions that add to one, such as "C3H8=0.95,C2H6=0.05"."""
    temperature: str
    """Temperature of the gas before the jet. A cylinder under draw is colder than the room. Without it: that
    of site.air_temperature."""
    price: str
    """What the gas costs by weight."""
    currency: str
    """The money it is paid in. Without it: $."""


class Cylinder(TypedDict, total=False):
    """The cylinder, if the gas comes from one."""

    capacity: Required[str]
    """Gas that one cylinder holds when full."""
    diameter: Required[str]
    """Outside diameter of a cylinder."""
    tare: str
    """Empty mass of one. Without it: three quarters of its capacity."""
    count: int
    """How many stand on one manifold, all open. Without it: 1."""
    contents: str
    """Gas left in each, by the scale. Without it: that of cylinder.capacity."""
    temperature: str
    """Temperature of the air they stand in. Without it: that of site.air_temperature."""


class Regulator(TypedDict, total=False):
    """The regulator: what it needs before it, and what it was seen to hold at some flows."""

    points: list[RegulatorPoints]
    minimum_inlet_pressure: str
    """Gauge pressure it needs before it. Without it: half a bar over the gauge."""


class Line(TypedDict, total=False):
    """Hose or pipe, fittings and valve between the gauge and the jet."""

    diameter: Required[str]
    """Inside diameter."""
    length: Required[str]
    """Length."""
    roughness: str
    """Roughness of the wall. Without it: 0.002 mm."""
    fitting_loss: float | str
    """Sum of the loss coefficients of the fittings. Without it: 0."""
    valve_coefficient: float | str
    """Flow coefficient Kv of the valve, cubic meters of water an hour at one bar."""
    outside_diameter: str
    """Outside diameter; with it the air warms the gas on its way."""


class Jet(TypedDict, total=False):
    """The jet. How long its straight hole is matters as much as its edge."""

    drill: str
    """The drill that made the hole, such as "number 50", "letter A" or "1/16 in"."""
    bore: str
    """Diameter of the hole as measured."""
    bore_length: str
    """Length of the straight hole. Without it: 12 mm, and 0 mm for a sharp edge."""
    edge: Required[Literal["sharp", "square", "chamfered", "rounded"]]
    """Mouth of the hole: "sharp" (a thin plate), "square" (drilled and left so), "chamfered" or "rounded"."""
    chamfer_depth: str
    """Depth of a chamfered mouth."""
    chamfer_angle: str
    """Full cone angle of a chamfered mouth."""
    edge_radius: str
    """Radius of a rounded mouth."""
    roughness: str
    """Roughness of the hole's wall. Without it: 0.005 mm."""
    count: int
    """How many equal jets share the gas, those of all heads together. Without it: one to a head."""
    approach_diameter: str
    """Inside diameter of the tube before the jet, if it is narrow beside the jet."""
    measured_coefficient: float | str
    """A discharge coefficient of your own instead of the model's."""
    measured_gauge: str
    """The gauge pressure that coefficient was measured at."""
    measured: str
    """The file that `jetwright weigh` or `jetwright meter` wrote of this jet."""


class Blower(TypedDict, total=False):
    """The blower: points of its curve from the catalog, or the two ends of it, or as much as its nameplate
    says."""

    points: list[BlowerPoints]
    kind: Literal["forward curved", "backward curved", "radial"]
    """Kind of its impeller: "forward curved" (a drum of many narrow blades), "backward curved" (few blades
    that lean away from the turn) or "radial" (straight paddles). It counts only where an end of the curve is
    missing. Without it: any kind, with a larger spread."""
    motor_power: str
    """Power that the motor's nameplate says, where neither end of the curve is known."""
    impeller: str
    """Outside diameter of the impeller, where neither end of the curve is known."""
    shut_off: str
    """Static pressure with the outlet shut, where no more than the ends of the curve are known."""
    free_delivery: str
    """Flow with nothing in the way, where no more than the ends of the curve are known."""
    speed: str
    """Wheel speed the curve was taken at."""
    now_speed: str
    """Wheel speed now, if it is another one."""
    density: str
    """Air density the curve was taken at. Without it: 1.2 kg/m3."""
    efficiency: float | str
    """Shaft power to air power, where the points give no power."""


class Duct(TypedDict, total=False):
    """Duct between blower and burner; as many sections as it has sizes."""

    diameter: Required[str]
    """Inside diameter."""
    length: Required[str]
    """Length."""
    roughness: str
    """Roughness of the wall. Without it: 0.1 mm."""
    fitting_loss: float | str
    """Sum of the loss coefficients of bends and fittings. Without it: 0."""


class Damper(TypedDict, total=False):
    """The damper."""

    kind: Literal["blast gate", "butterfly", "ball valve", "gate valve"]
    """"blast gate" (a plate that slides), "butterfly" (a disc that turns), "ball valve" or "gate valve".
    Without it: any kind: the middle of the four, with a spread that spans them."""
    diameter: Required[str]
    """Inside diameter of the duct it stands in."""
    gap: float | str
    """Gap round a disc that is shut, as a share of the duct's area. Without it: 2 %, not measured."""
    correction: float | str
    """Its loss over that of its table, from one setting seen. Without it: 1."""


class Head(TypedDict, total=False):
    """The burner head: round ports, or one slot."""

    ports: int
    """How many round ports a head has."""
    port_diameter: str
    """Diameter of a port."""
    open_fraction: float | str
    """How much of the head's face the ports open."""
    slot_width: str
    """Gap of a slot."""
    slot_length: str
    """Length of a slot along the head."""
    port_length: Required[str]
    """Length of the holes through the head's wall."""
    count: int
    """How many equal heads hang on the one blower. Without it: 1."""
    chambers: int
    """How many equal chambers these heads share out over: the heads of one chamber share its volume, its
    exhaust opening and its unlit gas. Without it: 1."""
    mixture_temperature: str
    """Temperature of the mixture in the ports; a hot head warms it. Without it: that of site.air_temperature."""
    mixing_tube_diameter: str
    """Inside diameter of the mixing tube between jet and head."""


class Chamber(TypedDict, total=False):
    """The chamber."""

    exhaust_opening: Required[str]
    """The opening the burnt gas leaves by."""
    exhaust_loss: float | str
    """Loss coefficient of that opening. Without it: 1.5."""
    temperature: Required[str]
    """How hot the chamber is when at work."""


class Fire(TypedDict, total=False):
    """The fire."""

    air_ratio: float | str
    """Air ratio aimed at: 1 = just enough air, more is lean, less is rich. Without it: 1.05."""


class Lighting(TypedDict, total=False):
    """What was seen of the burner's lighting; take the marks away once you have seen it light."""

    lights_at: str
    """A gauge pressure at which the COLD burner lit and kept burning, any that did: never look for the
    lowest. Until it is given, only the limits of burning are known."""
    damper: float | str
    """How far the damper stood open then. Without it: that of the largest setting."""
    chamber_volume: str
    """Volume of the chamber, where no layers and panels tell it."""
    glow_loss: str
    """What the chamber loses when its walls just glow, where no layers and panels tell it."""


class Setting(TypedDict, total=False):
    """A setting, in the order they are used. Each has a gauge pressure or a heat, and a damper opening or an
    air ratio."""

    name: Required[str]
    """Its name, which no other setting has."""
    gauge: str
    """Gauge pressure before the jet."""
    heat: str
    """Heat wanted, gross or net."""
    damper: float | str
    """How far the damper stands open."""
    air_ratio: float | str
    """Air ratio wanted: 1 = just enough air, more is lean, less is rich. Without it: that of fire.air_ratio."""
    chamber_temperature: str
    """Temperature of the chamber at this setting. Without it: that of chamber.temperature."""
    minutes: str
    """How long it is used."""
    purpose: str
    """What it is for."""
    use: Literal["light", "work", "keep"]
    """Which of the three blocks of the card it fills, at most one setting each: "light", "work" or "keep".
    Without it: by the run plan, else by the settings' times."""


class Uncertainty(TypedDict, total=False):
    """How well each thing is known, 95 times in 100: expanded uncertainties. Every line may be left out, and
    usual values count."""

    bore: str
    """Of the bore. Without it: by how the size is known."""
    edge_rounding: str
    """How far the edge may be rounded or burred. Without it: a hundredth of the bore."""
    coefficient: float | str
    """Of the coefficient by the model. Without it: the model's own."""
    gauge_span: str
    """Full scale of the gauge. Without it: that of a gauge for the largest setting."""
    gauge_class: Literal["3-2-3", "2-1-2", "0.25", "0.6", "1", "1.6", "2.5", "4"]
    """Class of the gauge, as its dial says. Without it: 3-2-3."""
    gauge_error: str
    """Error of the gauge, where it is known."""
    gauge_at_weighing: Literal["same", "other"]
    """Whether the gauge is the "same" as when the jet was measured, or an "other" one. Without it: same."""
    gas_temperature: str
    """Of the gas before the jet. Without it: 8 K."""
    composition: float | str
    """Of the flow, for what is not known of the composition. Without it: 1 %, and 1.5 % where the gas is not
    sold by a grade."""
    air_pressure: str
    """Of the pressure of the air. Without it: 15 hPa by an altitude, 4 hPa by a forecast, 2 hPa by a
    barometer."""
    air_temperature: str
    """Of the temperature of the air. Without it: 3 K."""
    damper: float | str
    """Of the damper's mark, as a share of its way. Without it: 3 %."""
    blower: float | str
    """Of the blower's pressure. Without it: 10 %, 25 % by its two ends, and 55 % or 75 % by a nameplate."""
    head: float | str
    """Of the head's open area. Without it: 5 %."""
    mixture_temperature: str
    """Of the mixture in the ports. Without it: 10 K."""
    walls: float | str
    """Of what each layer of the wall conducts. Without it: the spread of makers' sheets."""


class Layer(TypedDict, total=False):
    """A layer of the wall, the hot one first. The furnace may be left out as a whole."""

    conductivity: list[LayerConductivity]
    specific_heat: list[LayerSpecificHeat]
    material: Required[str]
    """Its material: insulating brick 23, insulating brick 26, insulating brick 28, dense fireclay brick,
    high-duty fireclay brick, dense high-alumina brick, fiber blanket, insulating castable, dense castable,
    calcium silicate board, steel sheet; unknown light lining (hard to the nail, light as cork), unknown heavy
    lining (like stone), unknown soft lining (a blanket); or a name of your own with density, conductivity,
    specific_heat and limit."""
    thickness: Required[str]
    """Thickness."""
    density: str
    """Density of a material of your own."""
    limit: str
    """What a material of your own lasts at."""


class Panel(TypedDict, total=False):
    """A panel of the chamber. Flat panels, doors, courses and openings must close what the others leave open."""

    kind: Required[Literal["cylinder", "half round", "box", "flat", "door", "courses", "opening"]]
    """"cylinder" and "half round" (diameter, length), "box" open in front (width, height, depth), "flat" and
    "door" (area), "courses" of loose brick in a doorway (width, course, count), "opening" (area)."""
    diameter: str
    """Inner diameter."""
    length: str
    """Length along the axis."""
    width: str
    """Inner width."""
    height: str
    """Inner height."""
    depth: str
    """Inner depth."""
    course: str
    """Height of a course."""
    count: int
    """How many courses."""
    area: str
    """Area."""
    thickness: str
    """Thickness of its hot layer."""


class Castable(TypedDict, total=False):
    """The castable by its maker's sheet, if the panels are cast."""

    dry_density: Required[str]
    """Density when dry."""
    bag: Required[str]
    """Mass of a bag."""
    water: Required[float | str]
    """Water, as a share of the dry mass."""
    margin: float | str
    """What is bought over what is needed. Without it: 10 %."""
    anchor_spacing: str
    """Distance of the anchors, if there are any."""


class Steel(TypedDict, total=False):
    """Steel inside the wall."""

    grade: Required[Literal["carbon steel", "stainless 430", "stainless 304", "stainless 310"]]
    """Its grade."""
    depth: Required[str]
    """How deep it lies behind the hot face."""


class Work(TypedDict, total=False):
    """What is heated. The three lines of a crucible go together."""

    material: Required[Literal["steel", "copper", "bell bronze", "tin bronze", "brass", "aluminum", "silver", "glass", "stoneware", "clay graphite", "aluminium"]]
    """What it is made of."""
    mass: Required[str]
    """Mass of the charge, or of one piece."""
    temperature: Required[str]
    """Temperature it is brought to."""
    minutes: Required[str]
    """How long that may take."""
    crucible_mass: str
    """Mass of a clay-graphite crucible."""
    crucible_wall: str
    """Thickness of its wall."""
    crucible_area: str
    """Area of it that the fire sees."""


class Room(TypedDict, total=False):
    """What of the furnace's gases leaks into the room."""

    leak: Required[str]
    """Gases of the furnace that leak into it."""
    carbon_monoxide: Required[float | str]
    """Carbon monoxide in them."""
    limit: Required[Literal["outdoor 8 h", "workplace 20 ppm", "workplace 25 ppm", "workplace 35 ppm", "workplace 50 ppm", "ceiling 200 ppm"]]
    """What it is kept under."""


class Burner(TypedDict, total=False):
    """The burner."""

    name: Required[str]
    """Name of the burner."""
    note: str
    """What the next person must know."""
    site: Required[Site]
    gas: Required[Gas]
    cylinder: Cylinder
    regulator: Regulator
    line: Line
    jet: Required[Jet]
    blower: Blower
    duct: list[Duct]
    damper: Damper
    head: Head
    chamber: Chamber
    fire: Fire
    lighting: Lighting
    setting: Required[list[Setting]]
    uncertainty: Uncertainty
    layer: list[Layer]
    panel: list[Panel]
    castable: Castable
    steel: Steel
    work: Work
    room: Room
