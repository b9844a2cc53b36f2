//! `jetwright flow`.

use clap::Args;
use jetwright::Input;
use jetwright::combustion::AirNeed;
use jetwright::orifice::Jet;
use jetwright::plant::description::JetHole;
use jetwright::plant::entries::JetSize;
use jetwright::plant::hazards::{Flowing, of_gauges};
use jetwright::prose::refusals::reason_words;
use jetwright::quantity::GaugePressure;
use jetwright::report::answers::flow;
use jetwright::report::flow::FlowRow;
use jetwright::report::warnings::Warned;

use crate::command_error::CommandError;
use crate::common::{ShapeArguments, SharedArguments, within};
use crate::options::{Asked, offer, part};
use crate::output;

part! {
    /// Size of the jet.
    Hole: JetHole, |description| description.jet.as_ref(), None, [offer("bore"), offer("drill")]
}

#[derive(Debug, Args)]
pub struct FlowArguments {
    /// Gauge pressure before the jet, such as "5 psi"; repeat it for more rows.
    #[arg(long, required = true, allow_hyphen_values = true, value_parser = within::<GaugePressure>(Input::GaugePressure))]
    pub gauge: Vec<GaugePressure>,
    #[command(flatten)]
    pub hole: Asked<Hole>,
    #[command(flatten)]
    pub shape: ShapeArguments,
    #[command(flatten)]
    pub shared: SharedArguments,
}

impl FlowArguments {
    /// The size of the jet.
    pub fn size(&self) -> Result<JetSize, CommandError> {
        Ok(self.hole.checked()?.size()?)
    }
}

/// Gas flow and heat at each gauge pressure, in the order asked.
pub fn run(arguments: &FlowArguments) -> Result<String, CommandError> {
    let shared = &arguments.shared;
    let (site, gas) = (shared.site()?, shared.gas()?);
    let (diameter, drill) =
        arguments.size()?.diameter().map_err(|why| CommandError::option("drill", reason_words(&why)))?;
    let bore = arguments.shape.bore(diameter)?;
    let jet = Jet { bore, count: arguments.shape.count(), coefficient: arguments.shape.coefficient() };
    let need = AirNeed::new(&gas, &site);
    let mut flows = Vec::new();
    for (index, &gauge) in arguments.gauge.iter().enumerate() {
        let supply = shared.supply(&site, gauge, arguments.shape.back_pressure);
        let flow = jet.flow(&gas, &supply).map_err(|error| shared.refuse_gauge(index, &error))?;
        let saturation = gas.mixture().saturation_ratio(gauge.to_absolute(supply.ambient), supply.temperature);
        flows.push((gauge, flow, saturation));
    }
    let rows = flows.iter().map(|(gauge, jet, saturation_ratio)| FlowRow {
        gauge: *gauge,
        jet,
        heads: 1.0,
        need: &need,
        saturation_ratio: *saturation_ratio,
        sure: None,
    });
    let rows: Vec<_> = rows.collect();
    let shop = output::shop(&shared.answer);
    let flowing =
        flows.iter().map(|(_, flow, saturation)| Flowing { bore: &bore, drill, flow, saturation_ratio: *saturation });
    let names = flows.iter().map(|(gauge, ..)| shop.gauge(*gauge)).collect();
    let tree =
        flow::tree(site.ambient_pressure(), &rows).warned(&Warned::named(of_gauges(&gas, flowing), names), &shop);
    output::print(&tree, "Gas flow and heat", &shared.answer)
}
