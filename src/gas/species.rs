//! The species table: every constant of a pure gas, once, with its source.

/// A pure gas the library knows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Species {
    /// CH4
    Methane,
    /// C2H6
    Ethane,
    /// C3H8
    Propane,
    /// n-C4H10
    NormalButane,
    /// i-C4H10
    Isobutane,
    /// n-C5H12
    NormalPentane,
    /// i-C5H12
    Isopentane,
    /// C2H4
    Ethylene,
    /// C3H6
    Propylene,
    /// H2
    Hydrogen,
    /// CO
    CarbonMonoxide,
    /// CO2
    CarbonDioxide,
    /// N2
    Nitrogen,
    /// O2
    Oxygen,
    /// H2O
    Water,
    /// Ar
    Argon,
}

impl Species {
    /// How many species there are.
    pub const COUNT: usize = 16;

    /// Every species, in the order of the table.
    pub fn all() -> impl Iterator<Item = Species> {
        TABLE.iter().map(|data| data.species)
    }

    /// The symbol it is written with in a composition, such as `C3H8` or `nC4`.
    #[must_use]
    pub fn symbol(self) -> &'static str {
        self.data().symbol
    }

    /// Its name in words.
    #[must_use]
    pub fn name(self) -> &'static str {
        self.data().name
    }

    /// The species with this symbol or name, without regard to case.
    ///
    /// ```
    /// use jetwright::gas::Species;
    /// assert_eq!(Species::find("c3h8"), Some(Species::Propane));
    /// assert_eq!(Species::find("n-butane"), Some(Species::NormalButane));
    /// assert_eq!(Species::find("unobtainium"), None);
    /// ```
    #[must_use]
    pub fn find(text: &str) -> Option<Species> {
        let matches =
            |data: &&SpeciesData| data.symbol.eq_ignore_ascii_case(text) || data.name.eq_ignore_ascii_case(text);
        TABLE.iter().find(matches).map(|data| data.species)
    }

    /// Atoms in its molecule.
    pub(crate) const fn atoms(self) -> Atoms {
        self.data().atoms
    }

    pub(super) const fn data(self) -> &'static SpeciesData {
        &TABLE[self as usize]
    }
}

/// Atoms in a molecule.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Atoms {
    pub carbon: u32,
    pub hydrogen: u32,
    pub oxygen: u32,
}

impl Atoms {
    /// Oxygen molecules to burn the molecule: carbon + hydrogen/4 - oxygen/2.
    pub const fn oxygen_to_burn(self) -> f64 {
        self.carbon as f64 + 0.25 * self.hydrogen as f64 - 0.5 * self.oxygen as f64
    }
}

/// Vapour pressure: ln(p/pc) = (a x + b x^1.5 + c x^3 + d x^6) / (1 - x), x = 1 - T/Tc.
#[derive(Clone, Copy, Debug)]
pub(super) struct VaporPressure {
    pub wagner: [f64; 4],
    /// Tc in K and pc in Pa of the fit, which differ a little from the critical point's below.
    pub reduced_by: [f64; 2],
}

/// One row of the table, SI unless said.
#[derive(Clone, Copy, Debug)]
pub(super) struct SpeciesData {
    pub species: Species,
    pub symbol: &'static str,
    pub name: &'static str,
    pub atoms: Atoms,
    /// kg/kmol.
    pub molar_mass: f64,
    /// Gross molar heating value, kJ/mol, burnt at 0, 15, 15.55, 20 and 25 degC.
    pub gross_molar: [f64; 5],
    /// Summation factor at 0, 15, 15.55 and 20 degC.
    pub summation: [f64; 4],
    /// cp/R of the ideal gas as a polynomial in T.
    pub heat_capacity: [f64; 5],
    pub critical_temperature: f64,
    pub critical_pressure: f64,
    /// m3/mol.
    pub critical_volume: f64,
    pub acentric_factor: f64,
    /// At 293.15 K and low pressure.
    pub viscosity: f64,
    /// d ln(viscosity) / d ln(T) between 250 and 330 K.
    pub viscosity_exponent: f64,
    pub vapor_pressure: VaporPressure,
}

/// Sources, column by column:
/// - molar mass, gross heating value, summation factor: ISO 6976:2016, tables A.1, 2 and 3;
/// - heat capacity: NASA seven-coefficient fits as in the data file `nasa_gas.yaml` of Cantera 3.2.0, valid from
///   200 K (n-pentane and isopentane from 298 K, carried below it for traces);
/// - critical constants and acentric factors: those of the reference equations, as in chemicals 1.5.2;
/// - viscosity: the reference correlations at zero density as in CoolProp 8.0.0, except ethylene and carbon
///   monoxide (from memory, 3 %);
/// - vapour pressure: McGarry, Ind. Eng. Chem. Process Des. Dev. 22 (1983) 313, as in chemicals 1.5.2.
static TABLE: [SpeciesData; Species::COUNT] = [
    SpeciesData {
        species: Species::Methane,
        symbol: "CH4",
        name: "methane",
        atoms: Atoms { carbon: 1, hydrogen: 4, oxygen: 0 },
        molar_mass: 16.04246,
        gross_molar: [892.92, 891.51, 891.46, 891.05, 890.58],
        summation: [0.04886, 0.04452, 0.04437, 0.04317],
        heat_capacity: [5.14987613, -0.0136709788, 4.91800599e-05, -4.84743026e-08, 1.66693956e-11],
        critical_temperature: 190.564,
        critical_pressure: 4599200.0,
        critical_volume: 9.862781e-05,
        acentric_factor: 0.01142,
        viscosity: 1.1025e-05,
        viscosity_exponent: 0.854,
        vapor_pressure: VaporPressure {
            wagner: [-6.00435, 1.1885, -0.834082, -1.22833],
            reduced_by: [190.53, 4596420.0],
        },
    },
    SpeciesData {
        species: Species::Ethane,
        symbol: "C2H6",
        name: "ethane",
        atoms: Atoms { carbon: 2, hydrogen: 6, oxygen: 0 },
        molar_mass: 30.06904,
        gross_molar: [1564.35, 1562.14, 1562.06, 1561.42, 1560.69],
        summation: [0.0997, 0.0919, 0.0916, 0.0895],
        heat_capacity: [4.29142492, -0.0055015427, 5.99438288e-05, -7.08466285e-08, 2.68685771e-11],
        critical_temperature: 305.322,
        critical_pressure: 4872200.0,
        critical_volume: 1.458388e-04,
        acentric_factor: 0.0995,
        viscosity: 9.1853e-06,
        viscosity_exponent: 0.943,
        vapor_pressure: VaporPressure {
            wagner: [-6.34307, 1.0163, -1.19116, -2.03539],
            reduced_by: [305.42, 4869710.0],
        },
    },
    SpeciesData {
        species: Species::Propane,
        symbol: "C3H8",
        name: "propane",
        atoms: Atoms { carbon: 3, hydrogen: 8, oxygen: 0 },
        molar_mass: 44.09562,
        gross_molar: [2224.03, 2221.1, 2220.99, 2220.13, 2219.17],
        summation: [0.1465, 0.1344, 0.134, 0.1308],
        heat_capacity: [4.2110262, 0.00171599803, 7.06183472e-05, -9.19594116e-08, 3.64421372e-11],
        critical_temperature: 369.89,
        critical_pressure: 4251200.0,
        critical_volume: 2.000000e-04,
        acentric_factor: 0.1521,
        viscosity: 8.0217e-06,
        viscosity_exponent: 0.970,
        vapor_pressure: VaporPressure {
            wagner: [-6.67833, 1.15437, -1.64984, -2.70017],
            reduced_by: [369.82, 4255760.0],
        },
    },
    SpeciesData {
        species: Species::NormalButane,
        symbol: "nC4",
        name: "n-butane",
        atoms: Atoms { carbon: 4, hydrogen: 10, oxygen: 0 },
        molar_mass: 58.1222,
        gross_molar: [2883.35, 2879.76, 2879.63, 2878.58, 2877.4],
        summation: [0.2022, 0.184, 0.1834, 0.1785],
        heat_capacity: [6.14746806, 0.000155947389, 9.67913517e-05, -1.2548391e-07, 4.97816555e-11],
        critical_temperature: 425.125,
        critical_pressure: 3796000.0,
        critical_volume: 2.549219e-04,
        acentric_factor: 0.201,
        viscosity: 7.3048e-06,
        viscosity_exponent: 0.987,
        vapor_pressure: VaporPressure {
            wagner: [-6.88709, 1.15157, -1.99873, -3.13003],
            reduced_by: [425.18, 3790620.0],
        },
    },
    SpeciesData {
        species: Species::Isobutane,
        symbol: "iC4",
        name: "isobutane",
        atoms: Atoms { carbon: 4, hydrogen: 10, oxygen: 0 },
        molar_mass: 58.1222,
        gross_molar: [2874.21, 2870.58, 2870.45, 2869.39, 2868.2],
        summation: [0.1885, 0.1722, 0.1717, 0.1673],
        heat_capacity: [4.45479276, 0.00826057985, 8.29886664e-05, -1.14647642e-07, 4.64570101e-11],
        critical_temperature: 407.81,
        critical_pressure: 3629000.0,
        critical_volume: 2.577481e-04,
        acentric_factor: 0.184,
        viscosity: 7.3979e-06,
        viscosity_exponent: 0.963,
        vapor_pressure: VaporPressure {
            wagner: [-6.95579, 1.5009, -2.52717, -1.49776],
            reduced_by: [408.14, 3658010.0],
        },
    },
    SpeciesData {
        species: Species::NormalPentane,
        symbol: "nC5",
        name: "n-pentane",
        atoms: Atoms { carbon: 5, hydrogen: 12, oxygen: 0 },
        molar_mass: 72.14878,
        gross_molar: [3542.91, 3538.6, 3538.45, 3537.19, 3535.77],
        summation: [0.2586, 0.2361, 0.2354, 0.2295],
        heat_capacity: [1.8983679, 0.041203037, 1.2312175e-05, -3.6589501e-08, 1.5042509e-11],
        critical_temperature: 469.7,
        critical_pressure: 3367500.0,
        critical_volume: 3.115265e-04,
        acentric_factor: 0.251,
        viscosity: 6.6651e-06,
        viscosity_exponent: 1.031,
        vapor_pressure: VaporPressure {
            wagner: [-7.28936, 1.53679, -3.08367, -1.02456],
            reduced_by: [469.74, 3378620.0],
        },
    },
    SpeciesData {
        species: Species::Isopentane,
        symbol: "iC5",
        name: "isopentane",
        atoms: Atoms { carbon: 5, hydrogen: 12, oxygen: 0 },
        molar_mass: 72.14878,
        gross_molar: [3536.01, 3531.68, 3531.52, 3530.25, 3528.83],
        summation: [0.2458, 0.2251, 0.2244, 0.2189],
        heat_capacity: [1.0832882, 0.044571076, 8.2389934e-06, -3.5258047e-08, 1.5785762e-11],
        critical_temperature: 460.35,
        critical_pressure: 3378000.0,
        critical_volume: 3.057169e-04,
        acentric_factor: 0.2274,
        viscosity: 6.8520e-06,
        viscosity_exponent: 1.031,
        vapor_pressure: VaporPressure {
            wagner: [-7.12727, 1.38996, -2.54302, -2.45657],
            reduced_by: [460.43, 3385900.0],
        },
    },
    SpeciesData {
        species: Species::Ethylene,
        symbol: "C2H4",
        name: "ethylene",
        atoms: Atoms { carbon: 2, hydrogen: 4, oxygen: 0 },
        molar_mass: 28.05316,
        gross_molar: [1413.55, 1412.12, 1412.07, 1411.65, 1411.18],
        summation: [0.0868, 0.0799, 0.0797, 0.0778],
        heat_capacity: [3.95920148, -0.00757052247, 5.70990292e-05, -6.91588753e-08, 2.69884373e-11],
        critical_temperature: 282.35,
        critical_pressure: 5041800.0,
        critical_volume: 1.309455e-04,
        acentric_factor: 0.0866,
        viscosity: 1.0080e-05,
        viscosity_exponent: 0.930,
        vapor_pressure: VaporPressure {
            wagner: [-6.32055, 1.16819, -1.55935, -1.83552],
            reduced_by: [282.55, 5050880.0],
        },
    },
    SpeciesData {
        species: Species::Propylene,
        symbol: "C3H6",
        name: "propylene",
        atoms: Atoms { carbon: 3, hydrogen: 6, oxygen: 0 },
        molar_mass: 42.07974,
        gross_molar: [2061.57, 2059.43, 2059.35, 2058.73, 2058.02],
        summation: [0.1381, 0.1267, 0.1263, 0.1232],
        heat_capacity: [3.83464524, 0.00329078405, 5.05228184e-05, -6.66251418e-08, 2.63707585e-11],
        critical_temperature: 364.211,
        critical_pressure: 4555000.0,
        critical_volume: 1.832509e-04,
        acentric_factor: 0.146,
        viscosity: 8.4216e-06,
        viscosity_exponent: 1.019,
        vapor_pressure: VaporPressure {
            wagner: [-6.64231, 1.21857, -1.81005, -2.48212],
            reduced_by: [364.85, 4605230.0],
        },
    },
    SpeciesData {
        species: Species::Hydrogen,
        symbol: "H2",
        name: "hydrogen",
        atoms: Atoms { carbon: 0, hydrogen: 2, oxygen: 0 },
        molar_mass: 2.01588,
        gross_molar: [286.64, 286.15, 286.13, 285.99, 285.83],
        summation: [-0.01, -0.01, -0.01, -0.01],
        heat_capacity: [2.34433112, 0.00798052075, -1.9478151e-05, 2.01572094e-08, -7.37611761e-12],
        critical_temperature: 33.145,
        critical_pressure: 1296400.0,
        critical_volume: 6.448285e-05,
        acentric_factor: -0.219,
        viscosity: 8.7963e-06,
        viscosity_exponent: 0.692,
        vapor_pressure: VaporPressure {
            wagner: [-5.57929, 2.60012, -0.85506, 1.70503],
            reduced_by: [33.19, 1309600.0],
        },
    },
    SpeciesData {
        species: Species::CarbonMonoxide,
        symbol: "CO",
        name: "carbon monoxide",
        atoms: Atoms { carbon: 1, hydrogen: 0, oxygen: 1 },
        molar_mass: 28.0101,
        gross_molar: [282.8, 282.91, 282.91, 282.95, 282.98],
        summation: [0.0258, 0.0217, 0.0215, 0.0203],
        heat_capacity: [3.57953347, -0.00061035368, 1.01681433e-06, 9.07005884e-10, -9.04424499e-13],
        critical_temperature: 132.86,
        critical_pressure: 3494000.0,
        critical_volume: 9.216590e-05,
        acentric_factor: 0.0497,
        viscosity: 1.7420e-05,
        viscosity_exponent: 0.700,
        vapor_pressure: VaporPressure {
            wagner: [-6.20798, 1.27885, -1.34533, -2.56842],
            reduced_by: [132.91, 3501150.0],
        },
    },
    SpeciesData {
        species: Species::CarbonDioxide,
        symbol: "CO2",
        name: "carbon dioxide",
        atoms: Atoms { carbon: 1, hydrogen: 0, oxygen: 2 },
        molar_mass: 44.0095,
        gross_molar: [0.0, 0.0, 0.0, 0.0, 0.0],
        summation: [0.0821, 0.0752, 0.0749, 0.073],
        heat_capacity: [2.35677352, 0.00898459677, -7.12356269e-06, 2.45919022e-09, -1.43699548e-13],
        critical_temperature: 304.1282,
        critical_pressure: 7377300.0,
        critical_volume: 9.411848e-05,
        acentric_factor: 0.22394,
        viscosity: 1.4666e-05,
        viscosity_exponent: 0.958,
        vapor_pressure: VaporPressure {
            wagner: [-6.95626, 1.19695, -3.12614, 2.99448],
            reduced_by: [304.15, 7374990.0],
        },
    },
    SpeciesData {
        species: Species::Nitrogen,
        symbol: "N2",
        name: "nitrogen",
        atoms: Atoms { carbon: 0, hydrogen: 0, oxygen: 0 },
        molar_mass: 28.0134,
        gross_molar: [0.0, 0.0, 0.0, 0.0, 0.0],
        summation: [0.0214, 0.017, 0.0169, 0.0156],
        heat_capacity: [3.53100528, -0.000123660987, -5.02999437e-07, 2.43530612e-09, -1.40881235e-12],
        critical_temperature: 126.192,
        critical_pressure: 3395800.0,
        critical_volume: 8.941425e-05,
        acentric_factor: 0.0372,
        viscosity: 1.7560e-05,
        viscosity_exponent: 0.781,
        vapor_pressure: VaporPressure {
            wagner: [-6.09676, 1.1367, -1.04072, -1.93306],
            reduced_by: [126.2, 3399610.0],
        },
    },
    SpeciesData {
        species: Species::Oxygen,
        symbol: "O2",
        name: "oxygen",
        atoms: Atoms { carbon: 0, hydrogen: 0, oxygen: 2 },
        molar_mass: 31.9988,
        gross_molar: [0.0, 0.0, 0.0, 0.0, 0.0],
        summation: [0.0311, 0.0276, 0.0275, 0.0265],
        heat_capacity: [3.78245636, -0.00299673415, 9.847302e-06, -9.68129508e-09, 3.24372836e-12],
        critical_temperature: 154.581,
        critical_pressure: 5043000.0,
        critical_volume: 7.336757e-05,
        acentric_factor: 0.0222,
        viscosity: 2.0251e-05,
        viscosity_exponent: 0.810,
        vapor_pressure: VaporPressure {
            wagner: [-6.28275, 1.73619, -1.81349, -0.0253645],
            reduced_by: [154.7, 5089870.0],
        },
    },
    SpeciesData {
        species: Species::Water,
        symbol: "H2O",
        name: "water",
        atoms: Atoms { carbon: 0, hydrogen: 2, oxygen: 1 },
        molar_mass: 18.01528,
        gross_molar: [45.064, 44.431, 44.408, 44.222, 44.013],
        summation: [0.3093, 0.2562, 0.2546, 0.2419],
        heat_capacity: [4.19864056, -0.0020364341, 6.52040211e-06, -5.48797062e-09, 1.77197817e-12],
        critical_temperature: 647.096,
        critical_pressure: 22064000.0,
        critical_volume: 5.594804e-05,
        acentric_factor: 0.3443,
        viscosity: 9.5468e-06,
        viscosity_exponent: 0.928,
        vapor_pressure: VaporPressure {
            wagner: [-7.76451, 1.45838, -2.7758, -1.23303],
            reduced_by: [647.35, 22122300.0],
        },
    },
    SpeciesData {
        species: Species::Argon,
        symbol: "Ar",
        name: "argon",
        atoms: Atoms { carbon: 0, hydrogen: 0, oxygen: 0 },
        molar_mass: 39.948,
        gross_molar: [0.0, 0.0, 0.0, 0.0, 0.0],
        summation: [0.0307, 0.0273, 0.0272, 0.0262],
        heat_capacity: [2.5, 0.0, 0.0, 0.0, 0.0],
        critical_temperature: 150.687,
        critical_pressure: 4863000.0,
        critical_volume: 7.458551e-05,
        acentric_factor: -0.00219,
        viscosity: 2.2289e-05,
        viscosity_exponent: 0.842,
        vapor_pressure: VaporPressure {
            wagner: [-5.90501, 1.12627, -0.767869, -1.62721],
            reduced_by: [150.651, 4857990.0],
        },
    },
];

#[cfg(test)]
mod tests {
    use super::{Species, TABLE};

    #[test]
    fn the_table_stands_in_the_order_of_the_names() {
        for (index, data) in TABLE.iter().enumerate() {
            assert_eq!(data.species as usize, index);
            assert_eq!(Species::find(data.symbol), Some(data.species));
            assert_eq!(Species::find(data.name), Some(data.species));
        }
    }

    #[test]
    fn the_molar_masses_are_those_of_the_atoms() {
        // IUPAC standard atomic weights 2011, as ISO 6976:2016 uses them; nitrogen and argon have none of the three.
        for data in &TABLE {
            let [carbon, hydrogen, oxygen] = [data.atoms.carbon, data.atoms.hydrogen, data.atoms.oxygen].map(f64::from);
            let mass = 12.0107 * carbon + 1.00794 * hydrogen + 15.9994 * oxygen;
            if mass > 0.0 {
                assert!((mass - data.molar_mass).abs() < 1e-4, "{}: {mass}", data.name);
            }
        }
    }
}
