//! How well the inputs are known: expanded uncertainties at k = 2, all optional.

use crate::measure::DialClass;
use crate::quantity::{GaugePressure, Length, PressureDifference, TemperatureDifference};

/// How well the inputs are known, as far as it is said.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct UncertaintyEntry {
    /// Of the bore.
    pub bore: Option<Length>,
    /// Rounding or burr of the mouth.
    pub edge_rounding: Option<Length>,
    /// Of the coefficient by the model, as a share.
    pub coefficient: Option<f64>,
    /// Full scale of the gauge.
    pub gauge_span: Option<GaugePressure>,
    /// Its class.
    pub gauge_class: Option<DialClass>,
    /// Its error, instead of the class.
    pub gauge_error: Option<GaugePressure>,
    /// Whether the gauge is not the one that was read at a weighing.
    pub is_other_gauge: bool,
    /// Of the gas before the jet.
    pub gas_temperature: Option<TemperatureDifference>,
    /// Of the flow for the composition, as a share.
    pub composition: Option<f64>,
    /// Of the air around.
    pub air_pressure: Option<PressureDifference>,
    /// Of that air.
    pub air_temperature: Option<TemperatureDifference>,
    /// Of the damper's mark.
    pub damper: Option<f64>,
    /// Of the blower's pressure.
    pub blower: Option<f64>,
    /// Of the head's open area.
    pub head: Option<f64>,
    /// Of the mixture in the ports.
    pub mixture_temperature: Option<TemperatureDifference>,
    /// Of what each layer of the wall conducts, as a share.
    pub walls: Option<f64>,
}
