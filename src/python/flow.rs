//! The jet.

use std::prelude::rust_2024::*;
use std::string::ToString;

use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;

use super::gas::Gas;
use super::operands::{Answer, Kept, Operand, map, tell};
use crate::error::Result as CheckedResult;
use crate::orifice::{
    BoreLength, BoreShape, Coefficient, DrillList, Edge, Jet, JetFlow, Supply, bore_for_heat, pressure_for_heat,
};
use crate::plant::description::{Description, JetHole, Rule};
use crate::plant::entries::{EdgeWord, usual_bore_length};
use crate::quantity::{
    AbsolutePressure, Angle, GaugePressure, GrossHeatRate, HeatRate, Length, NetHeatRate, Temperature,
};
use crate::report::flow::FLOW;

/// Names the inputs of a jet in the order of the arrays; Python asks for it, and nothing else states it.
macro_rules! jet_inputs {
    ($($(#[doc = $help:literal])+ $name:ident),+ $(,)?) => {
        /// The inputs of one jet.
        #[derive(Clone, Copy)]
        pub struct JetInputs {
            $($(#[doc = $help])+ pub $name: f64),+
        }

        impl JetInputs {
            /// Their names in order.
            pub const NAMES: &'static [&'static str] = &[$(stringify!($name)),+];
        }

        impl From<&[f64; INPUTS]> for JetInputs {
            fn from(inputs: &[f64; INPUTS]) -> Self {
                let [$($name),+] = *inputs;
                Self { $($name),+ }
            }
        }
    };
}

jet_inputs! {
    /// Diameter of the bore.
    bore,
    /// Its straight length.
    bore_length,
    /// First measure of the edge.
    edge_first,
    /// Second measure of the edge.
    edge_second,
    /// Roughness of the bore.
    roughness,
    /// Diameter of the tube before it, infinite for none.
    approach_diameter,
    /// A measured coefficient, used where `MEASURED` is added to the edge's code.
    discharge_coefficient,
    /// Equal jets.
    jets,
    /// Gauge pressure before the jet.
    gauge_pressure,
    /// Gauge pressure behind it.
    back_pressure,
    /// Temperature of the gas.
    gas_temperature,
    /// Pressure of the air.
    ambient_pressure,
}

/// How many inputs a jet has.
pub const INPUTS: usize = JetInputs::NAMES.len();
/// Added to the code of the edge, its place among [`EdgeWord::WORDS`], where the coefficient is a measured one.
const MEASURED: u8 = 4;
const _: () = assert!(EdgeWord::WORDS.len() <= MEASURED as usize, "a code of an edge says that it was measured");

impl JetInputs {
    /// What a bore depends on.
    const fn of_bore(&self) -> [f64; 6] {
        [self.bore, self.bore_length, self.edge_first, self.edge_second, self.roughness, self.approach_diameter]
    }

    /// The shape of the bore.
    pub fn shape(&self, edge: u8) -> BoreShape {
        let word = EdgeWord::WORDS.get(usize::from(edge % MEASURED)).map_or(EdgeWord::Square, |(_, word)| *word);
        let (first, second) = (self.edge_first, self.edge_second);
        BoreShape {
            length: BoreLength::Fixed(Length::from_meters(self.bore_length)),
            edge: match word {
                EdgeWord::Sharp => Edge::Sharp,
                EdgeWord::Square => Edge::Square,
                EdgeWord::Chamfered => {
                    Edge::Chamfered { depth: Length::from_meters(first), angle: Angle::from_radians(second) }
                }
                EdgeWord::Rounded => Edge::Rounded { radius: Length::from_meters(first) },
            },
            roughness: Length::from_meters(self.roughness),
            approach: (self.approach_diameter != f64::INFINITY).then(|| Length::from_meters(self.approach_diameter)),
        }
    }

    /// The gas before the jet, and what it blows into.
    pub fn supply(&self) -> CheckedResult<Supply> {
        crate::limits::check(crate::Input::StationPressure, self.ambient_pressure)?;
        Ok(Supply {
            ambient: AbsolutePressure::from_pascals(self.ambient_pressure),
            gauge: GaugePressure::from_pascals(self.gauge_pressure),
            back: GaugePressure::from_pascals(self.back_pressure),
            temperature: Temperature::from_kelvin(self.gas_temperature),
        })
    }

    /// Where the coefficient comes from.
    pub const fn coefficient(&self, edge: u8) -> Coefficient {
        if edge < MEASURED { Coefficient::Model } else { Coefficient::Measured(self.discharge_coefficient) }
    }

    /// The jets.
    pub fn jet(&self, edge: u8) -> CheckedResult<Jet> {
        let bore = self.shape(edge).with_diameter(Length::from_meters(self.bore))?;
        Ok(Jet { bore, count: self.jets, coefficient: self.coefficient(edge) })
    }
}

fn heat(gross: bool, watts: f64) -> HeatRate {
    if gross {
        HeatRate::Gross(GrossHeatRate::from_watts(watts))
    } else {
        HeatRate::Net(NetHeatRate::from_watts(watts))
    }
}

/// Names the results by their columns of the report, in the order of the arrays.
macro_rules! jet_results {
    ($flow:ident, $saturation_ratio:ident: $($key:ident => $value:expr),+ $(,)?) => {
        const RESULTS: &[&str] = &[$(stringify!($key)),+];

        fn answers($flow: &JetFlow, $saturation_ratio: f64) -> [f64; RESULTS.len()] {
            [$($value),+]
        }
    };
}

jet_results! { flow, saturation_ratio:
    mass_flow_kg_per_s => flow.mass_flow.kilograms_per_second(),
    standard_volume_flow_m3_per_s => flow.standard_volume_flow.cubic_meters_per_second(),
    actual_volume_flow_m3_per_s => flow.actual_volume_flow.cubic_meters_per_second(),
    heat_gross_w => flow.heat_gross.watts(),
    heat_net_w => flow.heat_net.watts(),
    discharge_coefficient => flow.discharge_coefficient,
    discharge_coefficient_uncertainty => flow.coefficient_uncertainty,
    choked => f64::from(u8::from(flow.choked)),
    mass_flux_kg_per_m2_s => flow.mass_flux,
    exit_speed_m_per_s => flow.exit_speed.meters_per_second(),
    thrust_n => flow.thrust.newtons(),
    reynolds_number => flow.reynolds_number,
    supply_density_kg_per_m3 => flow.supply_density.kilograms_per_cubic_meter(),
    saturation_ratio => saturation_ratio,
}

const OUTPUTS: usize = RESULTS.len();

/// The names of a jet's inputs, in the order of the arrays.
#[pyfunction]
pub fn jet_inputs() -> Vec<&'static str> {
    JetInputs::NAMES.to_vec()
}

/// The names and SI units of a jet's results, in the order of the arrays.
#[pyfunction]
pub fn jet_results() -> PyResult<Vec<(&'static str, &'static str)>> {
    let told = |key: &&'static str| {
        let column = FLOW.iter().find(|column| column.key == *key);
        let column = column.ok_or_else(|| PyValueError::new_err("a result of the jet is no column of the report"))?;
        let (suffix, unit) = column.kind.si();
        Ok((key.strip_suffix(suffix).unwrap_or(key), if unit == "1" { "" } else { unit }))
    };
    RESULTS.iter().map(told).collect()
}

/// The edges of a bore by their codes: the word, how long the bore usually is, and the keys of its measures.
#[pyfunction]
pub fn jet_edges() -> Vec<(&'static str, f64, Vec<&'static str>)> {
    let by_word = JetHole::SECTION.rules.iter().find_map(|rule| match *rule {
        Rule::ByWord("edge", words) => Some(words),
        _ => None,
    });
    let measures = |word: &str| {
        let found = by_word.unwrap_or_default().iter().find(|(known, _)| *known == word);
        found.map_or_else(Vec::new, |(_, keys)| keys.to_vec())
    };
    let edges = EdgeWord::WORDS.iter();
    edges.map(|(word, edge)| (*word, usual_bore_length(*edge).meters(), measures(word))).collect()
}

/// What is added to the code of an edge where the coefficient is a measured one.
#[pyfunction]
pub const fn jet_measured() -> u8 {
    MEASURED
}

/// Roughness of a bore unless given, by the table of inputs.
#[pyfunction]
pub fn jet_roughness() -> Option<f64> {
    let mut said = Description { jet: Some(JetHole::default()), ..Description::default() };
    said.take_defaults();
    said.jet?.roughness.map(Length::meters)
}

fn one(gas: &Gas, edge: u8, inputs: &JetInputs, jet: Option<Jet>) -> CheckedResult<(Jet, [f64; OUTPUTS])> {
    let supply = inputs.supply()?;
    let jet = match jet {
        Some(jet) => Jet { count: inputs.jets, coefficient: inputs.coefficient(edge), ..jet },
        None => inputs.jet(edge)?,
    };
    let flow = jet.flow(&gas.core, &supply)?;
    let pressure = supply.gauge.to_absolute(supply.ambient);
    let saturation_ratio = gas.core.mixture().saturation_ratio(pressure, supply.temperature);
    Ok((jet, answers(&flow, saturation_ratio)))
}

/// Every result of a jet for every element.
#[pyfunction]
pub fn flow<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    edge: u8,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let gas = &*gas;
    map::<INPUTS, OUTPUTS, _, _>(py, &operands, &shape, |inputs, kept: &mut Kept<Jet>| {
        let inputs = JetInputs::from(inputs);
        let known = kept.get(&inputs.of_bore());
        let (jet, answers) = one(gas, edge, &inputs, known)?;
        kept.put(&inputs.of_bore(), jet);
        Ok(answers)
    })
}

/// Every result of one jet.
#[pyfunction]
pub fn flow_one(gas: PyRef<'_, Gas>, edge: u8, inputs: [f64; INPUTS]) -> Result<[f64; OUTPUTS], PyErr> {
    let found = one(&gas, edge, &JetInputs::from(&inputs), None);
    found.map(|(_, answers)| answers).map_err(|error| PyValueError::new_err(tell(0, error)))
}

/// The gauge pressure, or the bore, with which each jet makes a heat, gross or net, which stands in its place among the
/// inputs.
#[pyfunction]
pub fn for_heat<'py>(
    py: Python<'py>,
    gas: PyRef<'py, Gas>,
    edge: u8,
    gross: bool,
    bore: bool,
    operands: Vec<Operand<'py>>,
    shape: Vec<usize>,
) -> Answer<'py> {
    let gas = &gas.core;
    map::<INPUTS, 1, _, _>(py, &operands, &shape, |inputs, _: &mut Kept<()>| {
        let inputs = JetInputs::from(inputs);
        let supply = inputs.supply()?;
        if bore {
            let (shape, coefficient) = (inputs.shape(edge), inputs.coefficient(edge));
            let heat = heat(gross, inputs.bore);
            return Ok([bore_for_heat(&shape, inputs.jets, coefficient, gas, &supply, heat)?.meters()]);
        }
        Ok([pressure_for_heat(&inputs.jet(edge)?, gas, &supply, heat(gross, inputs.gauge_pressure))?.pascals()])
    })
}

/// Names and bores of a list of sizes, rising.
#[pyfunction]
pub fn drills(list: &str) -> PyResult<Vec<(String, f64)>> {
    let list = match list {
        "number" => DrillList::Number,
        "letter" => DrillList::Letter,
        "fractional" => DrillList::Fractional,
        "metric" => DrillList::Metric,
        "tips" => DrillList::Tips,
        _ => return Err(PyValueError::new_err("drills is number, letter, fractional, metric or tips")),
    };
    Ok(list.drills().map(|drill| (drill.to_string(), drill.diameter().meters())).collect())
}
