//! A made-up fuel in the table of species: it burns by its row alone, and each hole in the row is told by name.

extern crate std;

use std::string::ToString;
use std::vec::Vec;

use crate::air::{AirPath, Blower, Duct};
use crate::burner::{AirSetting, Burner, Conditions, Glow, Head, ignition_delay};
use crate::combustion::{
    LimitStandard, Product, Reactants, autoignition, burning_range, burning_velocity, expected_reading,
    flames_measured, leanest_air_ratio,
};
use crate::error::{Error, Result};
use crate::fuel::Cylinder;
use crate::gas::{CombustionReference, Gas, Mixture, Property, Species};
use crate::orifice::{BoreShape, Jet};
use crate::quantity::{
    AbsolutePressure, ActualVolumeFlow, Density, GaugePressure, Length, Mass, PressureDifference, ReferenceState,
    Temperature, Volume,
};
use crate::scalar::Scalar;
use crate::site::Site;
use crate::species::stand_in::{made_up, stand_in, without};

use Property::{Autoignition, BurningLimits, Flame, Liquid, Thermochemistry};

/// What the burner asks of a gas before it tells of lighting.
const ALL_OF_A_FIRE: &[Property] = &[Thermochemistry, BurningLimits, Autoignition, Flame];

/// One question to a gas, the properties it needs, and what it answers.
struct Asked {
    question: &'static str,
    needs: &'static [Property],
    answer: Result<f64>,
}

/// An invented burner.
fn burner<S: Scalar>() -> Burner<S> {
    let meters = |value: f64| Length::from_meters(S::c(value));
    let density = Density::from_kilograms_per_cubic_meter(S::c(1.2));
    let bore = BoreShape::default().with_diameter(meters(1.8e-3)).unwrap();
    let duct = Duct::new(meters(60e-3), meters(1.0), meters(0.05e-3), S::c(1.5)).unwrap();
    let (shut_off, free_delivery) = (1500.0, 0.015);
    Burner {
        jet: Jet::new(bore),
        head: Head::with_ports(S::c(40.0), meters(5e-3), meters(10e-3), S::c(0.2)).unwrap(),
        head_count: S::one(),
        blower: Blower::from_two_numbers(
            PressureDifference::from_pascals(S::c(shut_off)),
            ActualVolumeFlow::from_cubic_meters_per_second(S::c(free_delivery)),
            density,
        )
        .unwrap(),
        path: AirPath::new(&[duct], None).unwrap(),
        mixing_tube: None,
        exhaust: None,
    }
}

/// Every question that reads a property of a species, to a pure gas of it.
fn every_question<S: Scalar>(species: Species) -> Vec<Asked> {
    let mut asked = Vec::new();
    let mut ask = |question, needs, answer: Result<S>| {
        asked.push(Asked { question, needs, answer: answer.map(Scalar::to_f64) });
    };
    let kelvin = |value: f64| Temperature::from_kelvin(S::c(value));
    let bar = AbsolutePressure::from_pascals(S::c(1e5));
    let (room, mild) = (kelvin(298.15), kelvin(288.15));
    let (mixture, gas) = (Mixture::<S>::pure(species), Gas::<S>::from(species));
    let site = Site::at_altitude(Length::from_meters(S::c(300.0)), room, S::c(0.4)).unwrap();

    let values = mixture.calorific_values(CombustionReference::Celsius25, ReferenceState::Celsius0);
    ask("gross heat", &[], Ok(values.gross_volume));
    ask("density", &[], gas.density(bar, room).map(|density| density.kilograms_per_cubic_meter()));
    ask("entropy", &[], gas.entropy(bar, room));
    ask("viscosity", &[], Ok(gas.viscosity(room)));
    ask("saturation", &[], Ok(mixture.saturation_ratio(bar, kelvin(250.0))));
    ask("analyzer", &[], expected_reading(&gas, &site, S::c(1.2)).map(|reading| reading.carbon_dioxide_dry));

    let liquid = mixture.saturated(mild);
    ask("pressure of the cylinder", &[Liquid], liquid.map(|liquid| liquid.pressure.pascals()));
    ask("latent heat", &[Liquid], liquid.map(|liquid| liquid.latent_heat));
    ask("boiling point", &[Liquid], mixture.boiling_temperature(bar).map(|found| found.kelvin()));
    let cylinder = Cylinder::new(
        Length::from_meters(S::c(0.37)),
        Mass::from_kilograms(S::c(45.0)),
        Some(Mass::from_kilograms(S::c(30.0))),
        S::one(),
    );
    let draw = cylinder.unwrap().steady_draw(&gas, Mass::from_kilograms(S::c(20.0)), room, bar);
    ask("draw of a cylinder", &[Liquid], draw.map(|draw| draw.kilograms_per_second()));

    for standard in [LimitStandard::Nfpa497, LimitStandard::Iec60079] {
        let range = burning_range(&gas, &site, room, standard);
        ask("lower limit", &[BurningLimits, Autoignition], range.map(|range| range.lower_limit));
        ask("richest mixture", &[BurningLimits, Autoignition], range.map(|range| range.richest_air_ratio));
    }
    ask("leanest mixture", &[BurningLimits], leanest_air_ratio(&gas, &site));
    let lights = autoignition(&mixture);
    ask("autoignition", &[Autoignition], lights.map(|found| found.map_or(S::zero(), |found| found.kelvin())));
    ask("kind of flame", &[Flame], flames_measured(&gas).map(|()| S::zero()));
    let velocity = burning_velocity(&gas, &site, S::c(1.05), room);
    ask(
        "burning velocity",
        &[BurningLimits, Autoignition, Flame],
        velocity.map(|velocity| velocity.meters_per_second()),
    );
    ask("delay", &[Flame], ignition_delay(&mixture, kelvin(1100.0)).map(|delay| delay.seconds()));

    let reactants = Reactants::new(&gas, &site, S::c(1.05), room);
    let flame = reactants.and_then(|reactants| reactants.flame());
    ask("flame", &[Thermochemistry], flame.map(|flame| flame.temperature.kelvin()));
    ask("carbon monoxide", &[Thermochemistry], flame.map(|flame| flame.products.wet(Product::CarbonMonoxide)));
    let available = reactants.and_then(|reactants| reactants.available_heat(kelvin(1300.0)));
    ask("available heat", &[Thermochemistry], available);

    let conditions =
        Conditions { site, gas, gas_temperature: room, mixture_temperature: room, chamber_temperature: kelvin(1500.0) };
    let (burner, gauge, air) = (burner(), GaugePressure::from_pascals(S::c(20e3)), AirSetting::Ratio(S::c(1.05)));
    let chamber = Glow { volume: Some(Volume::from_liters(S::c(20.0))), loss: None };
    let lighting = burner.lighting(&conditions, gauge, air, Some(S::c(30.0)), &chamber);
    ask("walls that light", ALL_OF_A_FIRE, lighting.map(|told| told.walls.map_or(S::zero(), |walls| walls.kelvin())));
    ask("pull at the ports", ALL_OF_A_FIRE, lighting.map(|told| told.pull.unwrap_or(S::zero())));
    let range = burner.lighting_range(&conditions, air, Some(S::c(30.0)), &chamber);
    ask(
        "gauges that light",
        ALL_OF_A_FIRE,
        range.map(|range| range.cold.map_or(S::zero(), |span| span.high.pascals())),
    );
    // Seen to light or not, the answer is a number or an error that is the same for the same numbers.
    let constant = burner.head_constant(&conditions, gauge, AirSetting::Opening(S::one()));
    ask("constant of the head", ALL_OF_A_FIRE, constant);
    let running = burner.run(&conditions, gauge, S::one());
    let ports = running.and_then(|running| burner.port_state(&conditions, &running));
    ask("ports", ALL_OF_A_FIRE, ports.map(|ports| ports.flame.map_or(S::zero(), |flame| flame.flashback)));
    asked
}

/// Asks the species whose row stands in for another's.
fn asked_of<S: Scalar>(place: Species, like: Species, hole: Option<Property>) -> Vec<Asked> {
    let row = made_up(like);
    stand_in(place, hole.map_or(row, |hole| without(row, hole)), || every_question::<S>(place))
}

fn the_row_alone_decides<S: Scalar>() {
    // Each in the place of one unlike it that is not of the air, so that a formula which looks at the species and not at its row is found.
    for (like, place) in [
        (Species::Propane, Species::Hydrogen),
        (Species::Methane, Species::Propylene),
        (Species::Ethylene, Species::Methane),
        (Species::CarbonMonoxide, Species::NormalButane),
        (Species::NormalPentane, Species::Ethane),
    ] {
        for (real, made_up) in every_question::<S>(like).iter().zip(asked_of::<S>(place, like, None)) {
            assert_eq!(real.answer, made_up.answer, "{} of {}", real.question, like.name());
        }
    }
}

#[test]
fn a_made_up_fuel_with_a_full_row_burns_like_the_one_whose_numbers_it_has() {
    the_row_alone_decides::<f64>();
    the_row_alone_decides::<f32>();
    let flame = every_question::<f64>(Species::Propane).into_iter().find(|asked| asked.question == "flame").unwrap();
    // Propane in air at an air ratio of 1.05: some 2 200 K.
    assert!((flame.answer.unwrap() - 2200.0).abs() < 60.0);
}

#[test]
fn each_hole_in_the_row_of_a_made_up_fuel_is_named_by_whatever_needs_it() {
    let place = Species::Propylene;
    let full = asked_of::<f64>(place, Species::Propane, None);
    for hole in Property::ALL {
        let mut told = 0;
        let holed = asked_of::<f64>(place, Species::Propane, Some(hole));
        for (whole, holed) in full.iter().zip(&holed) {
            if whole.needs.contains(&hole) {
                let missing = Error::MissingProperty { species: place, property: hole };
                assert_eq!(holed.answer, Err(missing), "{} without {hole}", whole.question);
                told += 1;
            } else {
                assert_eq!(holed.answer, whole.answer, "{} without {hole}", whole.question);
            }
        }
        assert!(told > 0, "nothing needs {hole}");
    }
}

#[test]
fn every_question_has_an_answer_while_the_row_is_full() {
    for asked in every_question::<f64>(Species::Propane) {
        let answered = asked.answer.unwrap_or_else(|error| panic!("{}: {error}", asked.question));
        assert!(
            asked.question == "kind of flame" || answered > 0.0 || asked.question == "entropy",
            "{}",
            asked.question
        );
    }
}

#[test]
fn a_hole_in_the_air_is_named_too() {
    let place = Species::Nitrogen;
    let told = stand_in(place, without(made_up(place), Thermochemistry), || every_question::<f64>(Species::Propane));
    let flame = told.iter().find(|asked| asked.question == "flame").unwrap();
    assert_eq!(flame.answer, Err(Error::MissingProperty { species: place, property: Thermochemistry }));
}

#[test]
fn a_trace_without_its_enthalpy_is_told_of_a_blend() {
    let blend = Mixture::new(&[(Species::Propane, 0.999_f64), (Species::Ethane, 0.001)]).unwrap();
    let row = without(made_up(Species::Ethane), Thermochemistry);
    let missing = Error::MissingProperty { species: Species::Ethane, property: Thermochemistry };
    assert_eq!(stand_in(Species::Ethane, row, || blend.known_to_burn()), Err(missing));
    assert_eq!(blend.known_to_burn(), Ok(()));
}

#[test]
fn the_error_says_what_of_which_gas() {
    let told = stand_in(Species::Ethane, made_up(Species::Ethane), || {
        Error::MissingProperty { species: Species::Ethane, property: BurningLimits }.to_string()
    });
    assert_eq!(told, "made-up fuel has no limits of burning in the table of species, and the answer needs it");
}
