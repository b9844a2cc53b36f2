//! Any gas, site and mixture of the accepted ranges: an answer that is sound, or a cause.

use crate::tolerance::{FLAME_BALANCE, HEAT_CLOSES};
use jetwright::combustion::{
    Basis, FlueReading, LimitStandard, Product, Reactants, air_ratio_from_oxygen, burning_range, burning_velocity,
    expected_reading,
};
use jetwright::gas::{Gas, Mixture, Species};
use jetwright::quantity::{AbsolutePressure, Temperature};
use jetwright::{Error, Input, Site};
use proptest::prelude::*;

fn within(input: Input) -> std::ops::RangeInclusive<f64> {
    input.range().min..=input.range().max
}

/// Any mixture of up to four species; of a share of them nothing burns.
fn any_gas() -> impl Strategy<Value = Gas> {
    prop::collection::vec((0..Species::COUNT, 0.01..1.0_f64), 1..5).prop_map(|parts| {
        let total: f64 = parts.iter().map(|(_, share)| share).sum();
        let species: Vec<Species> = Species::all().collect();
        let mut shares: Vec<(Species, f64)> = Vec::new();
        for (index, share) in parts {
            match shares.iter_mut().find(|(known, _)| *known == species[index]) {
                Some((_, sum)) => *sum += share / total,
                None => shares.push((species[index], share / total)),
            }
        }
        // Equal parts may add to a rounding over one.
        let shares: Vec<_> = shares.into_iter().map(|(species, share)| (species, share.min(1.0))).collect();
        Gas::new(Mixture::new(&shares).unwrap())
    })
}

fn any_site() -> impl Strategy<Value = Site> {
    (within(Input::StationPressure), within(Input::AirTemperature), within(Input::Humidity)).prop_map(
        |(pascals, kelvin, humidity)| {
            let pressure = AbsolutePressure::from_pascals(pascals);
            Site::at_station_pressure(pressure, Temperature::from_kelvin(kelvin), humidity).unwrap()
        },
    )
}

/// Whether it is told that no air makes the gas burn.
fn has_cause(error: Error) -> bool {
    matches!(error, Error::CannotBurn | Error::TooDilute { .. })
}

proptest! {
    #[test]
    fn any_fire_closes_its_balance(
        gas in any_gas(),
        site in any_site(),
        ratio in within(Input::FlameAirRatio),
        mixture in within(Input::MixtureTemperature),
        chamber in within(Input::ProductTemperature),
    ) {
        let made = Reactants::new(&gas, &site, ratio, Temperature::from_kelvin(mixture));
        if gas.mixture().oxygen_to_burn() <= 0.0 {
            prop_assert_eq!(made, Err(Error::CannotBurn));
            return Ok(());
        }
        let reactants = made.unwrap();
        let leaving = reactants.leaving(Temperature::from_kelvin(chamber)).unwrap();
        let loss = leaving.loss;
        // A gas that is nearly all inert carries many times its own heat.
        let scale = 1.0 + loss.sensible.abs() + loss.preheat.abs();
        let sum = leaving.available_heat + loss.sensible + loss.unburnt - loss.preheat;
        prop_assert!((sum - 1.0).abs() < HEAT_CLOSES * scale, "{}", sum);
        let shares: f64 = Product::ALL.iter().map(|&product| leaving.products.wet(product)).sum();
        prop_assert!((shares - 1.0).abs() < FLAME_BALANCE);
        if let Some(dew) = leaving.products.dew_point(site.ambient_pressure()) {
            prop_assert!(dew.celsius() > -61.0 && dew.celsius() < 103.0);
        }
        match reactants.flame() {
            Ok(flame) => {
                prop_assert!(flame.temperature.kelvin() > mixture - 1e-6 || flame.temperature.kelvin() >= 600.0);
                let left = reactants.available_heat(flame.temperature).unwrap();
                prop_assert!(left.abs() < 1e-9 * scale, "{} is left", left);
            }
            // So dilute that it would not reach the least temperature products are worked out at, or mixed with so
            // much oxygen beforehand that it is hotter than the highest.
            Err(error) => {
                let at = |kelvin| reactants.available_heat(Temperature::from_kelvin(kelvin)).unwrap();
                let beyond = at(mixture.max(600.0)) < 0.0 || at(2900.0) > 0.0;
                prop_assert!(beyond && matches!(error, Error::NoSolution { .. }), "{error:?}");
            }
        }
    }

    #[test]
    fn any_mixture_has_limits_or_a_cause(
        gas in any_gas(),
        site in any_site(),
        ratio in within(Input::AirRatio),
        kelvin in within(Input::MixtureTemperature),
        wider in any::<bool>(),
    ) {
        let standard = if wider { LimitStandard::Iec60079 } else { LimitStandard::Nfpa497 };
        let temperature = Temperature::from_kelvin(kelvin);
        match burning_range(&gas, &site, temperature, standard) {
            Ok(range) => {
                prop_assert!(range.richest_air_ratio >= 0.0 && range.leanest_air_ratio.is_finite());
                prop_assert!(range.lights_itself || range.richest_air_ratio < range.leanest_air_ratio);
                prop_assert!(0.0 < range.lower_limit && range.lower_limit <= range.upper_limit);
                prop_assert!(range.upper_limit <= 1.0);
            }
            Err(error) => prop_assert!(has_cause(error), "{error:?}"),
        }
        match burning_velocity(&gas, &site, ratio, temperature) {
            Ok(speed) => prop_assert!((0.0..6.0).contains(&speed.meters_per_second())),
            Err(error) => prop_assert!(has_cause(error) || matches!(error, Error::NotMeasured { .. }), "{error:?}"),
        }
    }

    #[test]
    fn any_reading_goes_back(gas in any_gas(), site in any_site(), ratio in 1.0..50.0_f64, wet in any::<bool>()) {
        let Ok(reading) = expected_reading(&gas, &site, ratio) else { return Ok(()) };
        prop_assert!((0.0..0.21).contains(&reading.oxygen_dry) && (0.0..=1.0).contains(&reading.carbon_dioxide_dry));
        let (oxygen, basis) =
            if wet { (reading.oxygen_wet, Basis::Wet) } else { (reading.oxygen_dry, Basis::Dry) };
        if let Ok(back) = air_ratio_from_oxygen(&gas, &site, FlueReading { oxygen, carbon_monoxide: 0.0, basis }) {
            prop_assert!((back / ratio - 1.0).abs() < 1e-7, "{}", back);
        }
    }
}
