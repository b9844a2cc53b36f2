//! `jetwright jet`.

use jetwright::Error;
use jetwright::orifice::{Bore, Drill, Jet, JetFlow, bore_for_heat, pressure_for_heat};
use jetwright::plant::hazards::{Flowing, of_jets};
use jetwright::prose::advice;
use jetwright::quantity::{GaugePressure, HeatRate};
use jetwright::report::rows::csv_of;
use jetwright::report::{Shop, table};
use serde_json::{Map, Value, json};

use crate::arguments::{Format, JetArguments, Units};
use crate::command_error::CommandError;
use crate::output;
use crate::warned::Warned;

/// A size next to the wanted bore.
struct Near {
    bore: Bore,
    drill: Drill,
    flow: JetFlow,
    heat_error: f64,
    gauge: Option<GaugePressure>,
}

/// The bore for a heat at a gauge pressure, and the sizes next to it.
pub fn run(arguments: &JetArguments) -> Result<String, CommandError> {
    let shared = &arguments.shared;
    let (site, gas, shape) = (shared.site()?, shared.gas()?, arguments.shape.shape()?);
    let supply = shared.supply(&site, arguments.gauge, arguments.shape.back_pressure);
    let (count, coefficient) = (f64::from(arguments.shape.jets), arguments.shape.coefficient());
    let bore =
        bore_for_heat(&shape, count, coefficient, &gas, &supply, arguments.heat).map_err(|error| match error {
            Error::NoSolution { .. } => CommandError::option("heat", advice(&error)).beside("gauge", 0).into(),
            _ => shared.refuse_gauge(0, &error),
        })?;
    let (below, above) = arguments.drills.list().neighbors(bore);
    let mut nearest = Vec::new();
    for drill in [below, above].into_iter().flatten() {
        // A neighbor that the tube before it does not admit is no choice.
        let Ok(bore) = shape.with_diameter(drill.diameter()) else { continue };
        let jet = Jet { bore, count, coefficient };
        let flow = jet.flow(&gas, &supply).map_err(|error| shared.refuse_gauge(0, &error))?;
        let heat_error = match arguments.heat {
            HeatRate::Gross(heat) => flow.heat_gross.watts() / heat.watts() - 1.0,
            HeatRate::Net(heat) => flow.heat_net.watts() / heat.watts() - 1.0,
        };
        let gauge = pressure_for_heat(&jet, &gas, &supply, arguments.heat).ok();
        nearest.push(Near { bore, drill, flow, heat_error, gauge });
    }
    let rows: Vec<_> = nearest.iter().map(row).collect();
    let saturation_ratio =
        gas.mixture().saturation_ratio(arguments.gauge.to_absolute(supply.ambient), supply.temperature);
    let flowing = nearest.iter().map(|near| Flowing {
        bore: &near.bore,
        drill: Some(near.drill),
        flow: &near.flow,
        saturation_ratio,
    });
    let names = nearest.iter().map(|near| near.drill.to_string()).collect();
    let warned = Warned::named(of_jets(&gas, flowing), names);
    let shop = Shop { inch: shared.answer.units == Units::Inch };
    Ok(match shared.answer.format {
        Format::Json => output::pretty(&json!({
            "ambient_pressure_pa": site.ambient_pressure().pascals(),
            "gauge_pressure_pa": arguments.gauge.pascals(),
            "bore_m": bore.meters(),
            "nearest": rows.into_iter().map(Value::Object).collect::<Vec<_>>(),
            "warnings": warned.json(),
        })),
        Format::Csv => {
            warned.beside(&shop);
            csv_of(&rows).map_err(CommandError::table)?
        }
        Format::Text => {
            format!(
                "The bore for it is {} at {}.\n{}",
                shop.bore(bore),
                shop.gauge(arguments.gauge),
                text(&nearest, shop)
            ) + &warned.text(&shop)
        }
    })
}

fn row(near: &Near) -> Map<String, Value> {
    let mut row = Map::new();
    row.insert("name".into(), json!(near.drill.to_string()));
    row.insert("bore_m".into(), json!(near.drill.diameter().meters()));
    row.insert("heat_gross_w".into(), json!(near.flow.heat_gross.watts()));
    row.insert("heat_net_w".into(), json!(near.flow.heat_net.watts()));
    row.insert("heat_error".into(), json!(near.heat_error));
    row.insert("exact_gauge_pressure_pa".into(), json!(near.gauge.map(|gauge| gauge.pascals())));
    row
}

fn text(nearest: &[Near], shop: Shop) -> String {
    let fire = format!("fire {}", shop.heat_unit());
    let titles = ["size", "bore", &fire, "off by", "exact at"];
    let rows: Vec<Vec<String>> = nearest
        .iter()
        .map(|near| {
            vec![
                near.drill.to_string(),
                shop.bore(near.drill.diameter()),
                shop.heat_number(near.flow.heat_gross, near.flow.heat_net),
                Shop::off_by(near.heat_error),
                near.gauge.map_or("out of reach".into(), |gauge| shop.gauge(gauge)),
            ]
        })
        .collect();
    table(&titles, &[1], &rows)
}
