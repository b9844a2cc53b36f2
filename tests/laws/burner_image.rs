//! A burner on its way to a chip.

use super::rig::Rig;
use jetwright::control::{ChipBurner, ChipSetting, ImageError, SetpointTable};
use jetwright::orifice::{BoreLength, BoreShape, Coefficient, Supply};
use jetwright::quantity::{GaugePressure, Length, NetHeatRate, Temperature};
use jetwright::site::Site;

fn carried(rig: &Rig) -> ChipBurner {
    let conditions = rig.conditions::<f64>();
    let mut burner = rig.burner::<f64>();
    // Every kind of coefficient takes the way.
    burner.jet.coefficient = match rig.gas % 3 {
        0 => Coefficient::Model,
        1 => Coefficient::Measured(0.8),
        _ => Coefficient::MeasuredAt {
            value: 0.8,
            supply: Supply {
                ambient: conditions.site.ambient_pressure(),
                gauge: GaugePressure::from_pascals(30e3),
                back: GaugePressure::from_pascals(0.0),
                temperature: conditions.gas_temperature,
            },
        },
    };
    let setting = ChipSetting {
        name: "hold".bytes().collect(),
        gauge: rig.gauge(),
        at_jet: rig.gauge(),
        gas_temperature: conditions.gas_temperature,
        opening: rig.opening,
        chamber_temperature: Temperature::from_kelvin(rig.chamber_kelvin),
    };
    ChipBurner { burner, conditions, settings: std::iter::once(setting).collect() }
}

fn image(chip: &ChipBurner) -> Vec<u8> {
    let mut image = vec![0; chip.image_bytes()];
    chip.write_image(&mut image).unwrap();
    image
}

#[test]
fn what_is_written_is_read() {
    for rig in Rig::cover(60) {
        let chip = carried(&rig);
        let image = image(&chip);
        let single = ChipBurner::<f32>::read_image(&image).unwrap();
        // Rounded once: what single precision writes is the same again, to the bit.
        let mut again = vec![0; single.image_bytes()];
        single.write_image(&mut again).unwrap();
        assert_eq!(again, image);
        let double = ChipBurner::<f64>::read_image(&image).unwrap();
        let gas = |chip: &ChipBurner| {
            chip.burner.run(&chip.conditions, rig.gauge(), rig.opening).map(|found| found.gas.kilograms_per_second())
        };
        match (gas(&chip), gas(&double)) {
            (Ok(gas), Ok(read)) => assert!((read - gas).abs() <= 1e-5 * gas + 1e-12, "{gas} {read} {rig:?}"),
            (gas, read) => assert_eq!(gas.is_err(), read.is_err(), "{rig:?}"),
        }
    }
}

#[test]
fn bytes_that_are_not_the_whole_of_a_burner_are_refused() {
    let image = image(&carried(&super::rig::BELL_FOUNDRY));
    let read = ChipBurner::<f32>::read_image;
    assert!(read(&image).is_ok());
    for at in 0..image.len() {
        for bit in 0..8 {
            let mut damaged = image.clone();
            damaged[at] ^= 1 << bit;
            assert!(read(&damaged).is_err(), "bit {bit} of byte {at}");
        }
        assert!(read(&image[..at]).is_err(), "cut off at {at}");
    }
    let mut longer = image.clone();
    longer.push(0);
    assert_eq!(read(&longer), Err(ImageError::Length { needed: image.len() }));
    let mut other = image.clone();
    other[4] = 9;
    assert_eq!(read(&other), Err(ImageError::Version { found: 9 }));
    assert_eq!(read(b"something else"), Err(ImageError::NotABurner));
    let mut damaged = image;
    damaged[100] ^= 4;
    assert_eq!(read(&damaged), Err(ImageError::Damaged));
}

#[test]
fn a_table_goes_with_its_own_burner_only() {
    let chip = carried(&super::rig::BELL_FOUNDRY);
    let kilowatts = NetHeatRate::from_kilowatts;
    let table = |chip: &ChipBurner, ratio| {
        let (burner, conditions) = (&chip.burner, &chip.conditions);
        SetpointTable::<5>::for_burner(burner, conditions, ratio, kilowatts(45.0), kilowatts(58.0), 1)
            .unwrap()
            .to_single()
    };
    let read = ChipBurner::<f32>::read_image(&image(&chip)).unwrap();
    let own = table(&chip, 1.05);
    assert_eq!(read.check_table(&own), Ok(()));
    assert_eq!(own.made_for().air_ratio, 1.05);
    // Another bore, another site: the settings are others.
    let mut others = [chip.clone(), chip.clone()];
    let bore = BoreShape::drilled(BoreLength::Fixed(Length::from_millimeters(10.0)));
    others[0].burner.jet.bore = bore.with_diameter(Length::from_millimeters(2.61)).unwrap();
    let air = Temperature::from_celsius(20.0);
    others[1].conditions.site = Site::at_altitude(Length::from_meters(40.0), air, 0.3).unwrap();
    for other in &others {
        let other = ChipBurner::<f32>::read_image(&image(other)).unwrap();
        assert_eq!(other.check_table(&own), Err(ImageError::OtherBurner));
    }
    // Both images show the mark in the same place, after kind, version and count.
    let mut bytes = [0; SetpointTable::<5, f32>::IMAGE_BYTES];
    own.write_image(&mut bytes).unwrap();
    assert_eq!(bytes[8..12], image(&chip)[8..12]);
    assert_eq!(bytes[8..12], chip.burner_id().to_le_bytes());
}
