//! `jetwright flow`.

use clap::Args;
use jetwright::combustion::AirNeed;
use jetwright::orifice::Jet;
use jetwright::plant::description::JetHole;
use jetwright::plant::description::asked::JetAsked;
use jetwright::plant::entries::JetSize;
use jetwright::plant::hazards::{Flowing, of_gauges};
use jetwright::prose::refusals::reason_words;
use jetwright::report::answers::flow;
use jetwright::report::flow::FlowRow;
use jetwright::report::warnings::Warned;

use crate::command_error::CommandError;
use crate::common::{ShapeArguments, SharedArguments};
use crate::options::{Asked, needed, offer, part};
use crate::output;

part! {
    /// Size of the jet.
    Hole: JetHole, |description| description.jet.as_ref(), None, [offer("bore"), offer("drill")]
}

part! {
    /// The gauges, a row each.
    Gauges: JetAsked, |description| Some(&description.asked.jet), None, [needed("gauge").many()]
}

#[derive(Debug, Args)]
pub struct FlowArguments {
    #[command(flatten)]
    pub gauge: Asked<Gauges>,
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
    let gauges = arguments.gauge.every("gauge", |asked| asked.gauge);
    for (index, written) in gauges.iter().enumerate() {
        let gauge = written.quantity;
        let supply = shared.supply(&site, gauge, arguments.shape.back_pressure());
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
    let units = gauges.iter().map(|written| written.unit);
    let asked: Vec<_> = units.map(|unit| output::shop_with_gauge(&shared.answer, unit, unit)).collect();
    let shop = asked[0];
    let flowing =
        flows.iter().map(|(_, flow, saturation)| Flowing { bore: &bore, drill, flow, saturation_ratio: *saturation });
    let names = flows.iter().zip(&asked).map(|((gauge, ..), asked)| asked.gauge(*gauge)).collect();
    let tree = flow::tree(site.ambient_pressure(), &rows, &asked)
        .warned(&Warned::named(of_gauges(&gas, flowing), names), &shop);
    output::print_in(&tree, "Gas flow and heat", &shop, &shared.answer)
}
