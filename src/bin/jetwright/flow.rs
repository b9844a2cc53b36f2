//! `jetwright flow`.

use jetwright::combustion::AirNeed;
use jetwright::orifice::{Jet, JetFlow};
use jetwright::plant::hazards::{Flowing, of_gauges};
use jetwright::prose::refusals::reason_words;
use jetwright::quantity::GaugePressure;
use jetwright::report::rows::{csv_of, flow_row};
use jetwright::report::{Shop, table};
use serde_json::{Value, json};

use crate::arguments::{FlowArguments, Format, Units};
use crate::command_error::CommandError;
use crate::output;
use crate::warned::Warned;

/// Gas flow and heat at each gauge pressure, in the order asked.
pub fn run(arguments: &FlowArguments) -> Result<String, CommandError> {
    let shared = &arguments.shared;
    let (site, gas) = (shared.site()?, shared.gas()?);
    let (diameter, drill) =
        arguments.size()?.diameter().map_err(|why| CommandError::option("drill", reason_words(&why)))?;
    let bore = arguments.shape.bore(diameter)?;
    let jet = Jet { bore, count: f64::from(arguments.shape.jets), coefficient: arguments.shape.coefficient() };
    let need = AirNeed::new(&gas, &site);
    let mut flows = Vec::new();
    for (index, &gauge) in arguments.gauge.iter().enumerate() {
        let supply = shared.supply(&site, gauge, arguments.shape.back_pressure);
        let flow = jet.flow(&gas, &supply).map_err(|error| shared.refuse_gauge(index, &error))?;
        let saturation = gas.mixture().saturation_ratio(gauge.to_absolute(supply.ambient), supply.temperature);
        flows.push((gauge, flow, saturation));
    }
    let rows: Vec<_> =
        flows.iter().map(|(gauge, flow, saturation)| flow_row(*gauge, flow, 1.0, &need, *saturation)).collect();
    let shop = Shop { inch: shared.answer.units == Units::Inch };
    let flowing =
        flows.iter().map(|(_, flow, saturation)| Flowing { bore: &bore, drill, flow, saturation_ratio: *saturation });
    let names = flows.iter().map(|(gauge, ..)| shop.gauge(*gauge)).collect();
    let warned = Warned::named(of_gauges(&gas, flowing), names);
    Ok(match shared.answer.format {
        Format::Text => text(&flows, &need, shop) + &warned.text(&shop),
        Format::Csv => {
            warned.beside(&shop);
            csv_of(&rows).map_err(CommandError::table)?
        }
        Format::Json => output::pretty(&json!({
            "ambient_pressure_pa": site.ambient_pressure().pascals(),
            "rows": rows.into_iter().map(Value::Object).collect::<Vec<_>>(),
            "warnings": warned.json(),
        })),
    })
}

fn text(flows: &[(GaugePressure, JetFlow, f64)], need: &AirNeed, shop: Shop) -> String {
    let gauge = format!("gauge {}", shop.gauge_unit());
    let (fire, gas) = (format!("fire {}", shop.heat_unit()), format!("gas {}", shop.gas_unit()));
    let air = format!("air needed {}", shop.gas_unit());
    let titles = [&gauge, fire.as_str(), &gas, &air, "coefficient", "sure within", "speed of sound", ""];
    let rows: Vec<Vec<String>> = flows
        .iter()
        .map(|(gauge, flow, saturation)| {
            vec![
                shop.gauge_number(*gauge),
                shop.heat_number(flow.heat_gross, flow.heat_net),
                shop.gas_number(flow.mass_flow),
                shop.gas_number(flow.mass_flow * need.mass_ratio),
                format!("{:.3}", flow.discharge_coefficient),
                Shop::share(flow.coefficient_uncertainty),
                if flow.choked { "reached" } else { "-" }.into(),
                if *saturation > 1.0 {
                    "would be partly liquid".into()
                } else if *saturation > jetwright::gas::NEAR_CONDENSING {
                    "close to condensing".into()
                } else {
                    String::new()
                },
            ]
        })
        .collect();
    table(&titles, &[7], &rows)
}
