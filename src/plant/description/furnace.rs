//! What is around the fire and in it.

use super::burner::usual;
use super::checks;
use super::choices::{PanelWord, SubstanceWord};
use super::macros::{inputs, names, option, reach, stated};
use super::row::Example::{Offered, Used};
use super::row::Otherwise::{Needed, Nothing};
use super::row::{Presence, Rule};
use crate::furnace::room::AirLimit;
use crate::furnace::{LAYER_CAP, LINE_CAP, PANEL_CAP, SteelGrade};
use crate::limits::Input;
use crate::plant::entries::{NAME_CHARACTERS, Name};
use crate::quantity::{ActualVolumeFlow, Area, Density, Duration, Length, Mass, Number, Share, Temperature};

inputs! {
    /// A layer of the wall, the hot one first. The furnace may be left out as a whole.
    LayerGiven: (list layer), "layer", Presence::List { least: 0, most: LAYER_CAP, is_needed: false };
    lists {
        /// Conductivity of a material of your own.
        conductivity: ConductivityGiven, LINE_CAP;
        /// Specific heat of a material of your own.
        specific_heat: SpecificHeatGiven, LINE_CAP;
    }
    rules [
        Rule::NeedsSection("", "panel"),
        Rule::NeedsSection("", "chamber"),
        Rule::Together(&["density", "conductivity", "specific_heat", "limit"]),
        Rule::Check(checks::known_material),
    ]
    {
        /// Its material: insulating brick 23, insulating brick 26, insulating brick 28, dense fireclay brick, high-duty
        /// fireclay brick, dense high-alumina brick, fiber blanket, insulating castable, dense castable, calcium
        /// silicate board, steel sheet; unknown light lining (hard to the nail, light as cork), unknown heavy lining (like
        /// stone), unknown soft lining (a blanket); or a name of your own with density, conductivity, specific_heat and limit.
        material: Name[NAME_CHARACTERS], Needed, Used(&["insulating castable", "fiber blanket", "steel sheet"]);
        /// Thickness.
        thickness: Length[Input::LayerThickness], Needed, Used(&["60 mm", "50 mm", "1.5 mm"]);
        /// Density of a material of your own.
        density: Density[Input::MaterialDensity], Nothing, Offered("1100 kg/m3");
        /// What a material of your own lasts at.
        limit: Temperature[Input::ChamberTemperature], Nothing, Offered("1500 C");
    }
}

inputs! {
    /// Conductivity of a layer's own material, the temperature rising from point to point.
    ConductivityGiven: (in layer conductivity), ("layer" "conductivity"),
        Presence::List { least: 1, most: LINE_CAP, is_needed: false };
    lists {}
    rules [Rule::Check(checks::conductivity_rises)]
    {
        /// Temperature.
        temperature: Temperature[Input::ChamberTemperature], Needed, Offered("400 C");
        /// Conductivity there, W/(m K).
        value: Number[Input::Conductivity], Needed, Offered("0.4");
    }
}

inputs! {
    /// Specific heat of a layer's own material, the temperature rising from point to point.
    SpecificHeatGiven: (in layer specific_heat), ("layer" "specific_heat"),
        Presence::List { least: 1, most: LINE_CAP, is_needed: false };
    lists {}
    rules [Rule::Check(checks::specific_heat_rises)]
    {
        /// Temperature.
        temperature: Temperature[Input::ChamberTemperature], Needed, Offered("400 C");
        /// Specific heat there, J/(kg K).
        value: Number[Input::SpecificHeat], Needed, Offered("1000");
    }
}

inputs! {
    /// A panel of the chamber. Flat panels, doors, courses and openings must close what the others leave open.
    PanelGiven: (list panel), "panel", Presence::List { least: 0, most: PANEL_CAP, is_needed: false };
    lists {}
    rules [
        Rule::NeedsSection("", "layer"),
        Rule::ByWord("kind", &[
            ("cylinder", &["diameter", "length", "thickness"]),
            ("half round", &["diameter", "length", "thickness"]),
            ("box", &["width", "height", "depth", "thickness"]),
            ("flat", &["area", "thickness"]),
            ("door", &["area", "thickness"]),
            ("courses", &["width", "course", "count", "thickness"]),
            ("opening", &["area"]),
        ]),
    ]
    {
        /// "cylinder" and "half round" (diameter, length), "box" open in front (width, height, depth), "flat" and
        /// "door" (area), "courses" of loose brick in a doorway (width, course, count), "opening" (area).
        kind: PanelWord, Needed, Used(&["cylinder", "flat", "flat", "opening"]);
        /// Inner diameter.
        diameter: Length[Input::PanelSize], Nothing, Used(&["300 mm", "", "", ""]);
        /// Length along the axis.
        length: Length[Input::PanelSize], Nothing, Used(&["400 mm", "", "", ""]);
        /// Inner width.
        width: Length[Input::PanelSize], Nothing, Offered("300 mm");
        /// Inner height.
        height: Length[Input::PanelSize], Nothing, Offered("300 mm");
        /// Inner depth.
        depth: Length[Input::PanelSize], Nothing, Offered("400 mm");
        /// Height of a course.
        course: Length[Input::PanelSize], Nothing, Offered("76 mm");
        /// How many courses.
        count: u32[Input::PortCount], Nothing, Offered("4");
        /// Area.
        area: Area[Input::WallArea], Nothing, Used(&["", "707 cm2", "647 cm2", "60 cm2"]);
        /// Thickness of its hot layer.
        thickness: Length[Input::LayerThickness], Nothing, Used(&["60 mm", "60 mm", "60 mm", ""]);
    }
}

inputs! {
    /// The castable by its maker's sheet, if the panels are cast.
    CastableGiven: (one castable), "castable", Presence::Optional;
    lists {}
    rules [Rule::NeedsSection("", "layer")]
    {
        /// Density when dry.
        dry_density: Density[Input::MaterialDensity], Needed, Used(&["1050 kg/m3"]);
        /// Mass of a bag.
        bag: Mass[Input::WorkMass], Needed, Used(&["20 kg"]);
        /// Water, as a share of the dry mass.
        water: Share[Input::Fraction], Needed, Used(&["25 %"]);
        /// What is bought over what is needed.
        margin: Share[Input::Fraction], usual("10 %"), Used(&["10 %"]);
        /// Distance of the anchors, if there are any.
        anchor_spacing: Length[Input::PanelSize], Nothing, Used(&["150 mm"]);
    }
}

inputs! {
    /// Steel inside the wall.
    SteelGiven: (one steel), "steel", Presence::Optional;
    lists {}
    rules [Rule::NeedsSection("", "layer")]
    {
        /// Its grade.
        grade: &'static SteelGrade, Needed, Used(&["stainless 310"]);
        /// How deep it lies behind the hot face.
        depth: Length[Input::SteelDepth], Needed, Used(&["50 mm"]);
    }
}

inputs! {
    /// What is heated. The three lines of a crucible go together.
    WorkGiven: (one work), "work", Presence::Optional;
    lists {}
    rules [
        Rule::NeedsSection("", "layer"),
        Rule::Together(&["crucible_mass", "crucible_wall", "crucible_area"]),
    ]
    {
        /// What it is made of.
        material: SubstanceWord, Needed, Used(&["bell bronze"]);
        /// Mass of the charge, or of one piece.
        mass: Mass[Input::ChargeMass], Needed, Used(&["12 kg"]);
        /// Temperature it is brought to.
        temperature: Temperature[Input::WorkTemperature] as "to", Needed, Used(&["1100 C"]);
        /// How long that may take.
        minutes: Duration[Input::WorkTime], Needed, Used(&["60 min"]);
        /// Mass of a clay-graphite crucible.
        crucible_mass: Mass[Input::WorkMass], Nothing, Used(&["5 kg"]);
        /// Thickness of its wall.
        crucible_wall: Length[Input::LayerThickness], Nothing, Used(&["15 mm"]);
        /// Area of it that the fire sees.
        crucible_area: Area[Input::WallArea], Nothing, Used(&["1300 cm2"]);
    }
}

inputs! {
    /// What of the furnace's gases leaks into the room.
    RoomGiven: (one room), "room", Presence::Optional;
    lists {}
    rules [Rule::NeedsSection("", "layer")]
    {
        /// Gases of the furnace that leak into it.
        leak: ActualVolumeFlow[Input::AirFlow], Needed, Used(&["1 m3/h"]);
        /// Carbon monoxide in them.
        carbon_monoxide: Share[Input::Fraction], Needed, Used(&["0.5 %"]);
        /// What it is kept under.
        limit: &'static AirLimit, Needed, Used(&["workplace 25 ppm"]);
    }
}
