//! Images that are damaged, or whose checksum is right and whose contents are not, are refused. Every number is invented.

use jetwright::control::{
    ImageError, ImageHazard, InterpolationBound, MadeFor, Setpoint, SetpointImage, SetpointTable,
};
use jetwright::quantity::{GaugePressure, NetHeatRate, PressureDifference};

type Table = SetpointTable<3, f32>;

fn image() -> Vec<u8> {
    let made_for = MadeFor { air_ratio: 1.05, burner: 7 };
    let bound = InterpolationBound { gauge: PressureDifference::from_pascals(1.0), air: 0.001 };
    let rows =
        [1, 2, 3].map(|row| Setpoint { gauge: GaugePressure::from_pascals(1e4 * row as f32), air: 0.3 * row as f32 });
    let table = SetpointTable::stored(made_for, NetHeatRate::from_watts(1e4), 1e4, rows, bound);
    let hazard = ImageHazard { kind: 1, severity: 2, row: 1, number: 0.5 };
    let told = SetpointImage { table, hazards: Some(core::iter::once(hazard).collect()) };
    let mut image = vec![0; told.bytes()];
    told.write(&mut image).unwrap();
    image
}

/// The image with its checksum put right: CRC-32 of IEEE 802.3, of all but the four bytes it stands in.
fn sealed(mut image: Vec<u8>) -> Vec<u8> {
    let covered = image[..12].iter().chain(&image[16..]);
    let sum = covered.fold(!0_u32, |sum, &byte| {
        (0..8).fold(sum ^ u32::from(byte), |sum, _| (sum >> 1) ^ (0xEDB8_8320 & (sum & 1).wrapping_neg()))
    });
    image[12..16].copy_from_slice(&(!sum).to_le_bytes());
    image
}

/// Both readers of an image agree, but for the hazards, which one of them passes over.
fn read(image: &[u8]) -> Result<(), ImageError> {
    let whole = SetpointImage::<3>::read(image).map(|_| ());
    let table = Table::read_image(image).map(|_| ());
    assert!(whole == table || table.is_ok());
    whole
}

#[test]
fn a_sound_image_is_read_and_sealed_alike() {
    assert_eq!(read(&image()), Ok(()));
    assert_eq!(sealed(image()), image());
}

#[test]
fn a_bit_that_has_changed_or_a_byte_that_is_gone_is_seen() {
    for place in 0..image().len() {
        for bit in 0..8 {
            let mut damaged = image();
            damaged[place] ^= 1 << bit;
            assert!(Table::read_image(&damaged).is_err(), "bit {bit} of byte {place}");
        }
        assert!(read(&image()[..place]).is_err(), "{place}");
        assert!(read(&sealed_or_not(image()[..place].to_vec())).is_err(), "{place}");
    }
    assert_eq!(read(&[image(), vec![0]].concat()), Err(ImageError::Length { needed: image().len() }));
}

fn sealed_or_not(image: Vec<u8>) -> Vec<u8> {
    if image.len() < 16 { image } else { sealed(image) }
}

#[test]
fn an_image_with_a_right_checksum_and_wrong_contents_is_refused_word_by_word() {
    // Behind header and section header: air ratio, lowest heat, step, two bounds, and a pair a row.
    for word in 0..5 + 2 * 3 {
        // The first row's air may be as low as it likes.
        let beyond = if word == 6 { 1e6 } else { -1e6 };
        for wrong in [f32::NAN, f32::INFINITY, f32::NEG_INFINITY, beyond] {
            let mut image = image();
            image[24 + 4 * word..28 + 4 * word].copy_from_slice(&wrong.to_le_bytes());
            assert_eq!(read(&sealed(image)), Err(ImageError::Content), "word {word}: {wrong}");
        }
    }
    let hazards = 24 + 4 * 11;
    // Kind, version and length of the second section, then its row and its number.
    for (place, bytes, found) in [
        (hazards + 8 + 3, vec![3], ImageError::Content),
        (hazards + 8 + 4, f32::NAN.to_le_bytes().to_vec(), ImageError::Content),
        (hazards + 4, vec![7], ImageError::Content),
        (hazards + 4, vec![255, 255, 255, 255], ImageError::Content),
        (hazards, vec![99, 0, 1, 1], ImageError::Section { kind: 99 }),
        (16, vec![1, 0, 2, 1], ImageError::Section { kind: 1 }),
        (16, vec![1, 0, 2, 0], ImageError::Content),
        (4, vec![9], ImageError::Version { found: 9 }),
        (0, vec![b'X'], ImageError::NotATable),
    ] {
        let mut image = image();
        image[place..place + bytes.len()].copy_from_slice(&bytes);
        assert_eq!(read(&sealed(image)), Err(found), "{place}");
    }
    assert!(matches!(SetpointTable::<4, f32>::read_image(&image()), Err(ImageError::Rows { found: 3 })));
}
