//! `jetwright jet`.

use clap::Args;
use jetwright::Error;
use jetwright::orifice::{Jet, bore_for_heat, pressure_for_heat};
use jetwright::plant::description::asked::JetAsked;
use jetwright::plant::hazards::{Flowing, of_jets};
use jetwright::prose::advice;
use jetwright::quantity::HeatRate;
use jetwright::report::answers::jet::{JetAnswer, Near, tree};
use jetwright::report::warnings::Warned;

use crate::command_error::CommandError;
use crate::common::{ShapeArguments, SharedArguments};
use crate::options::{Asked, needed, offer, part, there};
use crate::output;

part! {
    /// The heat at a gauge.
    Wanted: JetAsked, |description| Some(&description.asked.jet), None, [needed("gauge"), needed("heat"), offer("drills")]
}

#[derive(Debug, Args)]
pub struct JetArguments {
    #[command(flatten)]
    pub wanted: Asked<Wanted>,
    #[command(flatten)]
    pub shape: ShapeArguments,
    #[command(flatten)]
    pub shared: SharedArguments,
}

/// The bore for a heat at a gauge pressure, and the sizes next to it.
pub fn run(arguments: &JetArguments) -> Result<String, CommandError> {
    let shared = &arguments.shared;
    let (site, gas, shape) = (shared.site()?, shared.gas()?, arguments.shape.shape()?);
    let wanted = arguments.wanted.given();
    let (heat_written, gauge_written) = (there(wanted.heat, "heat")?, there(wanted.gauge, "gauge")?);
    let (heat, gauge) = (heat_written.quantity, gauge_written.quantity);
    let supply = shared.supply(&site, gauge, arguments.shape.back_pressure());
    let (count, coefficient) = (arguments.shape.count(), arguments.shape.coefficient());
    let bore = bore_for_heat(&shape, count, coefficient, &gas, &supply, heat).map_err(|error| match error {
        Error::NoSolution { .. } => CommandError::option("heat", advice(&error)).beside("gauge", 0).into(),
        _ => shared.refuse_gauge(0, &error),
    })?;
    let (below, above) = there(wanted.drills, "drills")?.neighbors(bore);
    let mut nearest = Vec::new();
    for drill in [below, above].into_iter().flatten() {
        // A neighbor that the tube before it does not admit is no choice.
        let Ok(bore) = shape.with_diameter(drill.diameter()) else { continue };
        let jet = Jet { bore, count, coefficient };
        let flow = jet.flow(&gas, &supply).map_err(|error| shared.refuse_gauge(0, &error))?;
        let heat_error = match heat {
            HeatRate::Gross(asked) => flow.heat_gross.watts() / asked.watts() - 1.0,
            HeatRate::Net(asked) => flow.heat_net.watts() / asked.watts() - 1.0,
        };
        let gauge = pressure_for_heat(&jet, &gas, &supply, heat).ok();
        nearest.push(Near { bore, drill, flow, heat_error, gauge });
    }
    let saturation_ratio = gas.mixture().saturation_ratio(gauge.to_absolute(supply.ambient), supply.temperature);
    let flowing = nearest.iter().map(|near| Flowing {
        bore: &near.bore,
        drill: Some(near.drill),
        flow: &near.flow,
        saturation_ratio,
    });
    let names = nearest.iter().map(|near| near.drill.to_string()).collect();
    let warned = Warned::named(of_jets(&gas, flowing), names);
    let answer = JetAnswer { ambient: site.ambient_pressure(), gauge, bore, nearest };
    let shop = output::shop_with_gauge(&shared.answer, heat_written.unit, gauge_written.unit);
    output::print_in(&tree(&answer, &shop).warned(&warned, &shop), "The bore for a heat", &shop, &shared.answer)
}
