//! `jetwright jet`.

use clap::{Args, ValueEnum};
use jetwright::orifice::{DrillList, Jet, bore_for_heat, pressure_for_heat};
use jetwright::plant::hazards::{Flowing, of_jets};
use jetwright::prose::advice;
use jetwright::quantity::{GaugePressure, HeatRate, Written};
use jetwright::report::answers::jet::{JetAnswer, Near, tree};
use jetwright::report::warnings::Warned;
use jetwright::{Error, Input};

use crate::command_error::CommandError;
use crate::common::{ShapeArguments, SharedArguments, written};
use crate::output;

#[derive(Debug, Args)]
pub struct JetArguments {
    /// Gauge pressure before the jet, such as "5 psi".
    #[arg(long, allow_hyphen_values = true, value_parser = written::<GaugePressure>(Input::GaugePressure))]
    pub gauge: Written<GaugePressure>,
    /// Heat wanted, gross or net, such as "26 kW net".
    #[arg(long, allow_hyphen_values = true, value_parser = written::<HeatRate>(Input::HeatRate))]
    pub heat: Written<HeatRate>,
    /// The list the nearest sizes are taken from.
    #[arg(long, value_enum, default_value = "number")]
    pub drills: DrillWord,
    #[command(flatten)]
    pub shape: ShapeArguments,
    #[command(flatten)]
    pub shared: SharedArguments,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum DrillWord {
    /// Number drills, 80 to 1.
    Number,
    /// Letter drills, A to Z.
    Letter,
    /// Drills by sixty-fourths of an inch.
    Fractional,
    /// Metric drills.
    Metric,
    /// Contact tips of welding guns by their marked size; they wear.
    Tips,
}

impl DrillWord {
    /// The list it names.
    pub fn list(self) -> DrillList {
        match self {
            DrillWord::Number => DrillList::Number,
            DrillWord::Letter => DrillList::Letter,
            DrillWord::Fractional => DrillList::Fractional,
            DrillWord::Metric => DrillList::Metric,
            DrillWord::Tips => DrillList::Tips,
        }
    }
}

/// The bore for a heat at a gauge pressure, and the sizes next to it.
pub fn run(arguments: &JetArguments) -> Result<String, CommandError> {
    let shared = &arguments.shared;
    let (site, gas, shape) = (shared.site()?, shared.gas()?, arguments.shape.shape()?);
    let (heat, gauge) = (arguments.heat.quantity, arguments.gauge.quantity);
    let supply = shared.supply(&site, gauge, arguments.shape.back_pressure);
    let (count, coefficient) = (arguments.shape.count(), arguments.shape.coefficient());
    let bore = bore_for_heat(&shape, count, coefficient, &gas, &supply, heat).map_err(|error| match error {
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
    let shop = output::shop_with_gauge(&shared.answer, arguments.heat.unit, arguments.gauge.unit);
    output::print_in(&tree(&answer, &shop).warned(&warned, &shop), "The bore for a heat", &shop, &shared.answer)
}
