//! One row of a file of published values.

use jetwright::Scalar;
use jetwright::gas::{Gas, Mixture, Species};
use jetwright::quantity::{AbsolutePressure, GaugePressure, Temperature};
use std::fmt;
use std::path::PathBuf;

/// One published or independently computed value.
#[derive(Clone, Debug)]
pub struct Row {
    /// What it is, with its unit in the name.
    pub quantity: String,
    /// `name=value;name=value`.
    pub inputs: String,
    /// As printed.
    pub printed: String,
    /// As a number.
    pub value: f64,
    /// Its unit, empty for a plain number.
    pub unit: String,
    /// Relative, unless it ends with ` abs`.
    pub tolerance: String,
    /// Where it is from.
    pub source: String,
}

/// Where the files of rows are.
pub fn directory() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/reference")
}

/// The rows of one topic.
pub fn rows(topic: &str) -> Vec<Row> {
    let path = directory().join(topic).with_extension("csv");
    let mut reader = csv::Reader::from_path(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    assert_eq!(
        reader.headers().unwrap(),
        vec!["quantity", "inputs", "value", "unit", "tolerance", "source"],
        "{topic}"
    );
    reader
        .records()
        .map(|record| {
            let record = record.unwrap_or_else(|error| panic!("{}: {error}", path.display()));
            let field = |index: usize| record[index].to_owned();
            let value = field(2).parse().unwrap_or_else(|_| panic!("{}: value {}", path.display(), field(2)));
            Row {
                quantity: field(0),
                inputs: field(1),
                printed: field(2),
                value,
                unit: field(3),
                tolerance: field(4),
                source: field(5),
            }
        })
        .collect()
}

impl Row {
    /// The text of an input, if it is given.
    pub fn optional(&self, name: &str) -> Option<&str> {
        self.inputs.split(';').filter_map(|part| part.split_once('=')).find(|(key, _)| *key == name).map(|part| part.1)
    }

    /// The text of an input.
    pub fn text(&self, name: &str) -> &str {
        self.optional(name).unwrap_or_else(|| panic!("no {name} in {self}"))
    }

    /// The number of an input.
    pub fn number(&self, name: &str) -> f64 {
        self.text(name).parse().unwrap_or_else(|_| panic!("{name} is no number in {self}"))
    }

    /// The number of an input, in the number type.
    pub fn get<S: Scalar>(&self, name: &str) -> S {
        S::c(self.number(name))
    }

    /// The composition under `gas` or `composition`: a name, or `C3H8=0.95|C2H6=0.05`.
    pub fn mixture<S: Scalar>(&self) -> Mixture<S> {
        let text = self.optional("gas").unwrap_or_else(|| self.text("composition"));
        let species = |text: &str| Species::find(text).unwrap_or_else(|| panic!("{text} is no species in {self}"));
        if !text.contains('=') {
            return Mixture::pure(species(text));
        }
        let part = |part: &str| {
            let (symbol, fraction) = part.split_once('=').unwrap();
            (species(symbol), S::c(fraction.parse().unwrap()))
        };
        Mixture::new(&text.split('|').map(part).collect::<Vec<_>>()).unwrap()
    }

    /// The gas worked out.
    pub fn gas<S: Scalar>(&self) -> Gas<S> {
        Gas::new(self.mixture())
    }

    /// `gas_temperature_k`.
    pub fn gas_temperature<S: Scalar>(&self) -> Temperature<S> {
        Temperature::from_kelvin(self.get("gas_temperature_k"))
    }

    /// Supply pressure: given absolute, or gauge and ambient.
    pub fn supply<S: Scalar>(&self) -> AbsolutePressure<S> {
        match self.optional("absolute_pressure_pa") {
            Some(_) => AbsolutePressure::from_pascals(self.get("absolute_pressure_pa")),
            None => GaugePressure::from_pascals(self.get("gauge_pressure_pa"))
                .to_absolute(AbsolutePressure::from_pascals(self.get("ambient_pressure_pa"))),
        }
    }
}

impl fmt::Display for Row {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} ({}) = {} {} within {}", self.quantity, self.inputs, self.printed, self.unit, self.tolerance)
    }
}
