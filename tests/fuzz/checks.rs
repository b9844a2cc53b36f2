// What must hold of any input; the fuzz targets and the test of the kept inputs both include this.

use jetwright::Input;
use jetwright::file::burner_file;
use jetwright::plant::entries::MOST_SETTINGS;
use jetwright::quantity::{
    self, AbsolutePressure, ActualVolumeFlow, Angle, Area, Density, Duration, GaugePressure, HeatRate, Length, Mass,
    MassFlow, Number, Power, PressureDifference, PricePerMass, Quantity, RotationalSpeed, Share, Temperature,
};

/// A file is a burner or one short message of one line.
#[allow(dead_code)]
pub fn burner_file(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else {
        return;
    };
    match burner_file::parse(text, "fuzz.toml") {
        Ok(burner) => {
            assert!((1..=MOST_SETTINGS).contains(&burner.entries.settings.len()));
            assert!(burner.refuse("gas.kind", "unknown").line.is_some());
        }
        Err(error) => one_line(&error.to_string(), 2000),
    }
}

/// A text is a finite quantity of every kind, or one short message of one line.
#[allow(dead_code)]
pub fn quantity(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else {
        return;
    };
    any::<AbsolutePressure>(text, Input::StationPressure);
    any::<ActualVolumeFlow>(text, Input::AirFlow);
    any::<Angle>(text, Input::ChamferAngle);
    any::<Area>(text, Input::ExhaustArea);
    any::<Density>(text, Input::AirDensity);
    any::<Duration>(text, Input::Duration);
    any::<GaugePressure>(text, Input::GaugePressure);
    any::<HeatRate>(text, Input::HeatRate);
    any::<Length>(text, Input::Bore);
    any::<Mass>(text, Input::Price);
    any::<MassFlow>(text, Input::AirFlow);
    any::<Number>(text, Input::AirRatio);
    any::<Power>(text, Input::ShaftPower);
    any::<PressureDifference>(text, Input::BlowerPressure);
    any::<PricePerMass>(text, Input::Price);
    any::<RotationalSpeed>(text, Input::WheelSpeed);
    any::<Share>(text, Input::Humidity);
    any::<Temperature>(text, Input::AirTemperature);
    if let Err(error) = quantity::parse_count(text, Input::JetCount) {
        one_line(&error.to_string(), 300);
    }
}

fn any<Q: Quantity>(text: &str, input: Input) {
    match quantity::parse::<Q>(text) {
        Ok(read) => assert!(read.si().is_finite(), "{} from {text:?}", Q::WHAT),
        Err(error) => one_line(&error.to_string(), 300),
    }
    match quantity::parse_within::<Q>(text, input) {
        Ok(read) => assert!((input.range().min..=input.range().max).contains(&read.si()), "{text:?}"),
        Err(error) => one_line(&error.to_string(), 300),
    }
}

fn one_line(message: &str, most: usize) {
    assert!(!message.is_empty() && message.chars().count() < most, "{message}");
    assert!(!message.chars().any(char::is_control), "{message:?}");
}
