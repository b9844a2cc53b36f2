//! Walls, outside faces, openings, heating times, heats.

use super::row::Row;
use jetwright::combustion::Reactants;
use jetwright::furnace::{
    AvailableHeat, Body, Facing, Grid, Layer, Material, Matter, Opening, Piece, Shape, Soak, Substance, Surroundings,
    Wall, box_shape_factor, heating_time, passed_share,
};
use jetwright::gas::{Gas, Species};
use jetwright::quantity::{AbsolutePressure, Area, Density, Duration, Length, Temperature};
use jetwright::{Scalar, Site};

fn constant<S: Scalar>(density: f64, conductivity: S, specific_heat: f64) -> Material<S> {
    Material::by_points(
        Density::from_kilograms_per_cubic_meter(S::c(density)),
        &[(S::c(300.0), conductivity)],
        &[(S::c(300.0), S::c(specific_heat))],
        Temperature::from_kelvin(S::c(2000.0)),
    )
    .unwrap()
}

fn kelvin<S: Scalar>(row: &Row, name: &str) -> Temperature<S> {
    Temperature::from_kelvin(row.get(name))
}

fn square_meter<S: Scalar>() -> Body<S> {
    Body::Flat { area: Area::from_square_meters(S::one()) }
}

fn layers<S: Scalar>(row: &Row) -> Wall<S> {
    let mut layers = Vec::new();
    for index in 1..=3 {
        if row.optional(&format!("thickness_{index}_m")).is_some() {
            let material = constant(2000.0, row.get(&format!("conductivity_{index}")), 1000.0);
            layers.push(Layer { material, thickness: Length::from_meters(row.get(&format!("thickness_{index}_m"))) });
        }
    }
    Wall::new(&layers, square_meter()).unwrap()
}

fn room<S: Scalar>(row: &Row, height: S, facing: Facing) -> Surroundings<S> {
    let pressure = AbsolutePressure::from_pascals(S::c(101_325.0));
    Surroundings { facing, ..Surroundings::shell(kelvin(row, "air_k"), pressure, Length::from_meters(height)) }
}

fn time<S: Scalar>(row: &Row, shape: Shape<S>) -> S {
    let emissivity = row.optional("emissivity").map_or(S::zero(), |_| row.get("emissivity"));
    let substance = Substance::by_points(
        Density::from_kilograms_per_cubic_meter(row.get("density")),
        &[(S::c(300.0), row.get("conductivity"))],
        &[(S::c(300.0), row.get("specific_heat"))],
        Temperature::from_kelvin(S::c(2000.0)),
        emissivity,
    )
    .unwrap();
    let soak = Soak {
        chamber: kelvin(row, "chamber_k"),
        start: kelvin(row, "start_k"),
        target: kelvin(row, "target_k"),
        film_coefficient: row.get("film"),
        emissivity,
    };
    heating_time(&Piece { substance, shape }, &soak).unwrap().time.seconds()
}

/// A deep wall after `seconds`, and the depth and temperature of its cells.
fn deep<S: Scalar>(row: &Row, thickness: f64, hot: impl Fn(S) -> S) -> (S, Vec<(S, S)>) {
    let material = constant(790.0, S::c(0.34), 1000.0);
    let mut grid = Grid::new(core::iter::once((&material, S::c(thickness))), &square_meter(), S::c(300.0), S::c(1.08));
    let steps = 400;
    let dt = Duration::from_seconds(row.get::<S>("seconds") / S::c(f64::from(steps)));
    for _ in 0..steps {
        grid.step(dt, &hot, |_| S::zero());
    }
    (grid.hot_face(), grid.profile().collect())
}

/// The hot face of two layers under a steady fire, and the temperature 60 mm behind it.
fn layered<S: Scalar>(row: &Row) -> (S, S) {
    let (brick, fiber): (Material<S>, Material<S>) =
        (Material::named("insulating brick 26").unwrap(), Material::named("fiber blanket").unwrap());
    let layers = [(&brick, S::c(0.075)), (&fiber, S::c(0.05))];
    let room = S::c(293.15);
    let mut grid = Grid::new(layers.into_iter(), &square_meter(), room, S::c(1.08));
    let steps = 200;
    let dt = Duration::from_seconds(row.get::<S>("seconds") / S::c(f64::from(steps)));
    for _ in 0..steps {
        grid.step(dt, |_| row.get("flux_w_per_m2"), |face| row.get::<S>("film") * (face - room));
    }
    (grid.hot_face(), at_depth(&grid.profile().collect::<Vec<_>>(), S::c(0.06)))
}

/// Between the two cells around a depth.
fn at_depth<S: Scalar>(cells: &[(S, S)], depth: S) -> S {
    let next = cells.iter().position(|cell| cell.0 > depth).unwrap();
    let (low, high) = (cells[next - 1], cells[next]);
    low.1 + (high.1 - low.1) * (depth - low.0) / (high.0 - low.0)
}

/// Our value for a row of this topic.
pub fn ours<S: Scalar>(row: &Row) -> Option<S> {
    let (hot, cold) = (|| kelvin(row, "hot_k"), || kelvin(row, "cold_k"));
    Some(match row.quantity.as_str() {
        "wall_heat_w_per_m2" => layers(row).between(hot(), cold()).unwrap().heat.watts(),
        "wall_face_k" => layers(row).between(hot(), cold()).unwrap().faces[row.number("face") as usize].kelvin(),
        "fibre_wall_heat_w_per_m2" => {
            let material = Material::named("fiber blanket").unwrap();
            let layer = Layer { material, thickness: Length::from_meters(row.get("thickness_m")) };
            Wall::new(&[layer], square_meter()).unwrap().between(hot(), cold()).unwrap().heat.watts()
        }
        "round_wall_heat_w" => {
            let material = constant(2000.0, row.get("conductivity"), 1000.0);
            let layer = Layer { material, thickness: Length::from_meters(row.get("thickness_m")) };
            let (inner_radius, length) =
                (Length::from_meters(row.get("radius_m")), Length::from_meters(row.get("length_m")));
            let wall = Wall::new(&[layer], Body::Round { inner_radius, length }).unwrap();
            wall.between(hot(), cold()).unwrap().heat.watts()
        }
        "box_heat_w" => {
            let side: Length<S> = Length::from_meters(row.get("side_m"));
            let factor = box_shape_factor([side; 3], Length::from_meters(row.get("thickness_m"))).unwrap();
            factor * row.get("conductivity") * row.get("difference_k")
        }
        "convection_w_per_m2_k" => room(row, row.get("height_m"), Facing::Side).convection(kelvin(row, "face_k")),
        "plate_loss_w" => {
            let (height, width) = (row.get::<S>("height_m"), row.get::<S>("width_m"));
            let rise = row.get::<S>("face_k") - row.get("air_k");
            room(row, height, Facing::Side).convection(kelvin(row, "face_k")) * rise * height * width
        }
        "duct_loss_w_per_m" => {
            let (height, width) = (row.get::<S>("height_m"), row.get::<S>("width_m"));
            let of = |length, facing| room(row, length, facing).convection(kelvin(row, "face_k"));
            // A long strip's area over its rim is half its width.
            let half = S::c(0.5) * width;
            let sum =
                S::c(2.0) * height * of(height, Facing::Side) + width * (of(half, Facing::Up) + of(half, Facing::Down));
            sum * (row.get::<S>("face_k") - row.get("air_k"))
        }
        "radiation_w" => {
            let hole = Opening::new(Area::from_square_meters(row.get("area_m2")), Length::from_meters(S::zero()));
            hole.unwrap().heat(hot(), kelvin(row, "room_k")).watts()
        }
        "available_share" => {
            let cold = Temperature::from_kelvin(S::c(298.15));
            let site = Site::at_altitude(Length::from_meters(S::zero()), cold, S::zero()).unwrap();
            let gas = Gas::from(Species::Propane);
            let reactants = Reactants::new(&gas, &site, row.get("air_ratio"), cold).unwrap();
            AvailableHeat::new(&reactants).unwrap().share(kelvin(row, "flue_k"))
        }
        "passed_share" => passed_share(row.get("depth_over_radius")),
        "lumped_time_s" => {
            let thickness = Length::from_meters(S::c(2.0) * row.get::<S>("volume_over_area_m"));
            time(row, Shape::Slab { thickness })
        }
        "slab_time_s" => time(row, Shape::Slab { thickness: Length::from_meters(row.get("size_m")) }),
        "round_time_s" => time(row, Shape::Round { diameter: Length::from_meters(row.get("size_m")) }),
        "deep_wall_k" => {
            let (_, cells) = deep::<S>(row, 0.4, |face| S::c(1e5) * (S::c(1300.0) - face));
            at_depth(&cells, row.get("depth_m"))
        }
        "fired_face_rise_k" => deep::<S>(row, 0.25, |_| row.get("flux_w_per_m2")).0 - S::c(300.0),
        "layered_face_k" => layered(row).0,
        "layered_60_mm_k" => layered(row).1,
        "heat_j_per_kg" => Substance::named(row.text("name"))
            .unwrap()
            .heat(Temperature::from_celsius(row.get("from_c")), Temperature::from_celsius(row.get("to_c"))),
        "heat_of_melting_j_per_kg" => {
            let substance: Substance<S> = Substance::named(row.text("name")).unwrap();
            let (begin, end) = (substance.solidus().kelvin(), substance.liquidus().kelvin());
            substance.heat_between(begin, end) - substance.heat_between(end, end + (end - begin))
        }
        "melting_point_c" => {
            let substance: Substance<S> = Substance::named(row.text("name")).unwrap();
            S::c(0.5) * (substance.solidus().celsius() + substance.liquidus().celsius())
        }
        _ => return None,
    })
}
