//! Thermochemistry of what burns and what is left: enthalpy and Gibbs energy of the ideal gases.

use crate::gas::Species;
use crate::scalar::Scalar;

/// Where one range of temperature ends and the other begins, K.
const MIDDLE: f64 = 1000.0;

/// A seven-coefficient fit in two ranges of temperature.
#[derive(Clone, Copy)]
struct Polynomial<F = f64> {
    low: [F; 7],
    high: [F; 7],
}

impl Polynomial {
    /// Rounded when this compiles: the formulas of a chip hold no double.
    const fn single(&self) -> Polynomial<f32> {
        let mut single = Polynomial { low: [0.0; 7], high: [0.0; 7] };
        let mut index = 0;
        while index < 7 {
            single.low[index] = self.low[index] as f32;
            single.high[index] = self.high[index] as f32;
            index += 1;
        }
        single
    }
}

/// One substance's fit, in both precisions.
#[derive(Clone, Copy)]
pub(super) struct Fit {
    double: &'static Polynomial,
    single: &'static Polynomial<f32>,
}

impl Fit {
    fn range<S: Scalar>(self, kelvin: S) -> [S; 7] {
        let (double, single) = if kelvin < S::c(MIDDLE) {
            (&self.double.low, &self.single.low)
        } else {
            (&self.double.high, &self.single.high)
        };
        core::array::from_fn(|index| S::either(double[index], single[index]))
    }

    /// h / RT, formation included.
    pub fn enthalpy<S: Scalar>(self, kelvin: S) -> S {
        let [a1, a2, a3, a4, a5, a6, _] = self.range(kelvin);
        let t = kelvin;
        a1 + t * (a2 * S::c(0.5) + t * (a3 * S::c(1.0 / 3.0) + t * (a4 * S::c(0.25) + t * a5 * S::c(0.2)))) + a6 / t
    }

    /// g / RT at one atmosphere, given ln T.
    pub fn gibbs<S: Scalar>(self, kelvin: S, log: S) -> S {
        let [a1, a2, a3, a4, a5, a6, a7] = self.range(kelvin);
        let t = kelvin;
        // h/RT - s/R, term by term.
        a1 * (S::one() - log)
            - t * (a2 * S::c(0.5) + t * (a3 * S::c(1.0 / 6.0) + t * (a4 * S::c(1.0 / 12.0) + t * a5 * S::c(0.05))))
            + a6 / t
            - a7
    }
}

/// What a flame leaves, in the order of every array of products.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Product {
    /// CO2
    CarbonDioxide,
    /// CO
    CarbonMonoxide,
    /// H2O
    Water,
    /// H2
    Hydrogen,
    /// O2
    Oxygen,
    /// N2
    Nitrogen,
    /// OH
    Hydroxyl,
    /// O
    OxygenAtom,
    /// H
    HydrogenAtom,
    /// NO
    NitricOxide,
    /// Ar
    Argon,
}

impl Product {
    /// How many there are.
    pub const COUNT: usize = 11;
    /// Every one, in order.
    pub const ALL: [Product; Self::COUNT] = [
        Product::CarbonDioxide,
        Product::CarbonMonoxide,
        Product::Water,
        Product::Hydrogen,
        Product::Oxygen,
        Product::Nitrogen,
        Product::Hydroxyl,
        Product::OxygenAtom,
        Product::HydrogenAtom,
        Product::NitricOxide,
        Product::Argon,
    ];

    /// Its formula.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Product::CarbonDioxide => "CO2",
            Product::CarbonMonoxide => "CO",
            Product::Water => "H2O",
            Product::Hydrogen => "H2",
            Product::Oxygen => "O2",
            Product::Nitrogen => "N2",
            Product::Hydroxyl => "OH",
            Product::OxygenAtom => "O",
            Product::HydrogenAtom => "H",
            Product::NitricOxide => "NO",
            Product::Argon => "Ar",
        }
    }

    pub(super) const fn fit(self) -> Fit {
        Fit { double: &PRODUCTS[self as usize], single: &PRODUCTS_SINGLE[self as usize] }
    }
}

/// h / RT of a species of the gas or the air.
pub(super) fn reactant_enthalpy<S: Scalar>(species: Species, kelvin: S) -> S {
    let product = match species {
        Species::CarbonDioxide => Product::CarbonDioxide,
        Species::CarbonMonoxide => Product::CarbonMonoxide,
        Species::Water => Product::Water,
        Species::Hydrogen => Product::Hydrogen,
        Species::Oxygen => Product::Oxygen,
        Species::Nitrogen => Product::Nitrogen,
        Species::Argon => Product::Argon,
        fuel => {
            let mut fits = FUELS.iter().zip(&FUELS_SINGLE);
            let found = fits.find(|((species, _), _)| *species == fuel);
            return found.map_or(S::zero(), |((_, double), single)| Fit { double, single }.enthalpy(kelvin));
        }
    };
    product.fit().enthalpy(kelvin)
}

static PRODUCTS_SINGLE: [Polynomial<f32>; Product::COUNT] = {
    let mut single = [PRODUCTS[0].single(); Product::COUNT];
    let mut index = 0;
    while index < Product::COUNT {
        single[index] = PRODUCTS[index].single();
        index += 1;
    }
    single
};

static FUELS_SINGLE: [Polynomial<f32>; FUELS.len()] = {
    let mut single = [FUELS[0].1.single(); FUELS.len()];
    let mut index = 0;
    while index < FUELS.len() {
        single[index] = FUELS[index].1.single();
        index += 1;
    }
    single
};

/// GRI-Mech 3.0 thermochemistry, as in the data file `gri30.yaml` of Cantera 3.2.0; reference pressure 101 325 Pa.
static PRODUCTS: [Polynomial; Product::COUNT] = [
    // CO2
    Polynomial {
        low: [2.35677352, 0.00898459677, -7.12356269e-06, 2.45919022e-09, -1.43699548e-13, -48371.9697, 9.90105222],
        high: [3.85746029, 0.00441437026, -2.21481404e-06, 5.23490188e-10, -4.72084164e-14, -48759.166, 2.27163806],
    },
    // CO
    Polynomial {
        low: [3.57953347, -0.00061035368, 1.01681433e-06, 9.07005884e-10, -9.04424499e-13, -14344.086, 3.50840928],
        high: [2.71518561, 0.00206252743, -9.98825771e-07, 2.30053008e-10, -2.03647716e-14, -14151.8724, 7.81868772],
    },
    // H2O
    Polynomial {
        low: [4.19864056, -0.0020364341, 6.52040211e-06, -5.48797062e-09, 1.77197817e-12, -30293.7267, -0.849032208],
        high: [3.03399249, 0.00217691804, -1.64072518e-07, -9.7041987e-11, 1.68200992e-14, -30004.2971, 4.9667701],
    },
    // H2
    Polynomial {
        low: [2.34433112, 0.00798052075, -1.9478151e-05, 2.01572094e-08, -7.37611761e-12, -917.935173, 0.683010238],
        high: [3.3372792, -4.94024731e-05, 4.99456778e-07, -1.79566394e-10, 2.00255376e-14, -950.158922, -3.20502331],
    },
    // O2
    Polynomial {
        low: [3.78245636, -0.00299673416, 9.84730201e-06, -9.68129509e-09, 3.24372837e-12, -1063.94356, 3.65767573],
        high: [3.28253784, 0.00148308754, -7.57966669e-07, 2.09470555e-10, -2.16717794e-14, -1088.45772, 5.45323129],
    },
    // N2
    Polynomial {
        low: [3.298677, 0.0014082404, -3.963222e-06, 5.641515e-09, -2.444854e-12, -1020.8999, 3.950372],
        high: [2.92664, 0.0014879768, -5.68476e-07, 1.0097038e-10, -6.753351e-15, -922.7977, 5.980528],
    },
    // OH
    Polynomial {
        low: [3.99201543, -0.00240131752, 4.61793841e-06, -3.88113333e-09, 1.3641147e-12, 3615.08056, -0.103925458],
        high: [3.09288767, 0.000548429716, 1.26505228e-07, -8.79461556e-11, 1.17412376e-14, 3858.657, 4.4766961],
    },
    // O
    Polynomial {
        low: [3.1682671, -0.00327931884, 6.64306396e-06, -6.12806624e-09, 2.11265971e-12, 29122.2592, 2.05193346],
        high: [2.56942078, -8.59741137e-05, 4.19484589e-08, -1.00177799e-11, 1.22833691e-15, 29217.5791, 4.78433864],
    },
    // H
    Polynomial {
        low: [2.5, 7.05332819e-13, -1.99591964e-15, 2.30081632e-18, -9.27732332e-22, 25473.6599, -0.446682853],
        high: [2.50000001, -2.30842973e-11, 1.61561948e-14, -4.73515235e-18, 4.98197357e-22, 25473.6599, -0.446682914],
    },
    // NO
    Polynomial {
        low: [4.2184763, -0.004638976, 1.1041022e-05, -9.3361354e-09, 2.803577e-12, 9844.623, 2.2808464],
        high: [3.2606056, 0.0011911043, -4.2917048e-07, 6.9457669e-11, -4.0336099e-15, 9920.9746, 6.3693027],
    },
    // AR
    Polynomial { low: [2.5, 0.0, 0.0, 0.0, 0.0, -745.375, 4.366], high: [2.5, 0.0, 0.0, 0.0, 0.0, -745.375, 4.366] },
];

/// GRI-Mech 3.0 where it has the species, else NASA's fits as in Cantera's `nasa_gas.yaml`.
static FUELS: [(Species, Polynomial); 9] = [
    (
        Species::Methane,
        Polynomial {
            low: [5.14987613, -0.0136709788, 4.91800599e-05, -4.84743026e-08, 1.66693956e-11, -10246.6476, -4.64130376],
            high: [0.074851495, 0.0133909467, -5.73285809e-06, 1.22292535e-09, -1.0181523e-13, -9468.34459, 18.437318],
        },
    ),
    (
        Species::Ethane,
        Polynomial {
            low: [4.29142492, -0.0055015427, 5.99438288e-05, -7.08466285e-08, 2.68685771e-11, -11522.2055, 2.66682316],
            high: [1.0718815, 0.0216852677, -1.00256067e-05, 2.21412001e-09, -1.9000289e-13, -11426.3932, 15.1156107],
        },
    ),
    (
        Species::Propane,
        Polynomial {
            low: [0.93355381, 0.026424579, 6.1059727e-06, -2.1977499e-08, 9.5149253e-12, -13958.52, 19.201691],
            high: [7.5341368, 0.018872239, -6.2718491e-06, 9.1475649e-10, -4.7838069e-14, -16467.516, -17.892349],
        },
    ),
    (
        Species::Ethylene,
        Polynomial {
            low: [3.95920148, -0.00757052247, 5.70990292e-05, -6.91588753e-08, 2.69884373e-11, 5089.77593, 4.09733096],
            high: [2.03611116, 0.0146454151, -6.71077915e-06, 1.47222923e-09, -1.25706061e-13, 4939.88614, 10.3053693],
        },
    ),
    (
        Species::NormalButane,
        Polynomial {
            low: [6.14746806, 0.000155947389, 9.67913517e-05, -1.2548391e-07, 4.97816555e-11, -17599.4402, -1.09409879],
            high: [
                9.44535834,
                0.0257858073,
                -9.23619122e-06,
                1.48632755e-09,
                -8.87897158e-14,
                -20138.2165,
                -26.3470076,
            ],
        },
    ),
    (
        Species::Isobutane,
        Polynomial {
            low: [4.45479276, 0.00826057985, 8.29886664e-05, -1.14647642e-07, 4.64570101e-11, -18459.3931, 4.92743175],
            high: [9.76991245, 0.025499721, -9.14142932e-06, 1.47328271e-09, -8.80800188e-14, -21405.2647, -30.0329101],
        },
    ),
    (
        Species::NormalPentane,
        Polynomial {
            low: [1.8983679, 0.041203037, 1.2312175e-05, -3.6589501e-08, 1.5042509e-11, -20091.5, 18.679082],
            high: [13.546998, 0.028421786, -9.4174648e-06, 1.3893589e-09, -7.4212609e-14, -24577.68, -47.021175],
        },
    ),
    (
        Species::Isopentane,
        Polynomial {
            low: [1.0832882, 0.044571076, 8.2389934e-06, -3.5258047e-08, 1.5785762e-11, -20807.535, 21.795155],
            high: [12.327787, 0.030613087, -9.8415785e-06, 1.3919776e-09, -7.0337345e-14, -25037.492, -41.133494],
        },
    ),
    (
        Species::Propylene,
        Polynomial {
            low: [3.83464524, 0.00329078405, 5.05228184e-05, -6.66251418e-08, 2.63707585e-11, 753.838295, 7.53410995],
            high: [
                6.03870499,
                0.0162963895,
                -5.82130624e-06,
                9.35936483e-10,
                -5.58602903e-14,
                -776.595092,
                -8.43824322,
            ],
        },
    ),
];
