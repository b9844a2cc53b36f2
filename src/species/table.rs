//! The table of species: one row each, and the enumeration that is made of the rows.
//!
//! What each column is, its unit, its source and what may leave it out: [`columns`](super::columns). A value of another
//! source than its column's says so in its row.

use super::atoms::{Atoms, NONE};
use super::columns::{FlameKind, Limits, Liquid, SpeciesRow, Supply, Thermochemistry, VaporPressure};

macro_rules! species {
    ($($(#[$formula:meta])* $species:ident { $($column:ident: $value:expr),+ $(,)? })+) => {
        /// A pure gas the library knows.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[non_exhaustive]
        pub enum Species {
            $($(#[$formula])* $species,)+
        }

        /// Every species, in the order of the table.
        pub(super) const ALL: &[Species] = &[$(Species::$species),+];

        pub(super) static TABLE: [SpeciesRow; ALL.len()] = [$(SpeciesRow { $($column: $value),+ }),+];
    };
}

species! {
    /// CH4
    Methane {
        symbol: "CH4", name: "methane", atoms: Atoms { carbon: 1, hydrogen: 4, ..NONE },
        molar_mass: 16.04246, gross_molar: [892.92, 891.51, 891.46, 891.05, 890.58],
        summation: [0.04886, 0.04452, 0.04437, 0.04317],
        heat_capacity: [5.14987613, -0.0136709788, 4.91800599e-05, -4.84743026e-08, 1.66693956e-11],
        critical_temperature: 190.564, critical_pressure: 4599200.0, critical_volume: 9.862781e-05,
        acentric_factor: 0.01142, viscosity: 1.1025e-05, viscosity_exponent: 0.854,
        vapor_pressure: VaporPressure {
            wagner: [-6.00435, 1.1885, -0.834082, -1.22833],
            reduced_by: [190.53, 4596420.0] },
        thermochemistry: Some(Thermochemistry::new(
            [5.14987613, -0.0136709788, 4.91800599e-05, -4.84743026e-08, 1.66693956e-11, -10246.6476, -4.64130376],
            [0.074851495, 0.0133909467, -5.73285809e-06, 1.22292535e-09, -1.0181523e-13, -9468.34459, 18.437318],
        )),
        liquid: Some(Supply::Gaseous),
        limits: Some(Limits { nfpa: [0.05, 0.15], iec: [0.044, 0.17], least_oxygen: 0.12 }),
        autoignition: Some(600.0),
        flame: Some(FlameKind::Methane),
    }
    /// C2H6
    Ethane {
        symbol: "C2H6", name: "ethane", atoms: Atoms { carbon: 2, hydrogen: 6, ..NONE },
        molar_mass: 30.06904, gross_molar: [1564.35, 1562.14, 1562.06, 1561.42, 1560.69],
        summation: [0.0997, 0.0919, 0.0916, 0.0895],
        heat_capacity: [4.29142492, -0.0055015427, 5.99438288e-05, -7.08466285e-08, 2.68685771e-11],
        critical_temperature: 305.322, critical_pressure: 4872200.0, critical_volume: 1.458388e-04,
        acentric_factor: 0.0995, viscosity: 9.1853e-06, viscosity_exponent: 0.943,
        vapor_pressure: VaporPressure {
            wagner: [-6.34307, 1.0163, -1.19116, -2.03539],
            reduced_by: [305.42, 4869710.0] },
        thermochemistry: Some(Thermochemistry::new(
            [4.29142492, -0.0055015427, 5.99438288e-05, -7.08466285e-08, 2.68685771e-11, -11522.2055, 2.66682316],
            [1.0718815, 0.0216852677, -1.00256067e-05, 2.21412001e-09, -1.9000289e-13, -11426.3932, 15.1156107],
        )),
        liquid: Some(Supply::Liquefied(Liquid { latent_heat: 372_351.0, density: 448.05, heat_capacity: 2993.9 })),
        limits: Some(Limits { nfpa: [0.03, 0.125], iec: [0.024, 0.155], least_oxygen: 0.11 }),
        autoignition: Some(472.0),
        flame: Some(FlameKind::HeavierHydrocarbon),
    }
    /// C3H8
    Propane {
        symbol: "C3H8", name: "propane", atoms: Atoms { carbon: 3, hydrogen: 8, ..NONE },
        molar_mass: 44.09562, gross_molar: [2224.03, 2221.1, 2220.99, 2220.13, 2219.17],
        summation: [0.1465, 0.1344, 0.134, 0.1308],
        heat_capacity: [4.2110262, 0.00171599803, 7.06183472e-05, -9.19594116e-08, 3.64421372e-11],
        critical_temperature: 369.89, critical_pressure: 4251200.0, critical_volume: 2.000000e-04,
        acentric_factor: 0.1521, viscosity: 8.0217e-06, viscosity_exponent: 0.970,
        vapor_pressure: VaporPressure {
            wagner: [-6.67833, 1.15437, -1.64984, -2.70017],
            reduced_by: [369.82, 4255760.0] },
        thermochemistry: Some(Thermochemistry::new(
            [0.93355381, 0.026424579, 6.1059727e-06, -2.1977499e-08, 9.5149253e-12, -13958.52, 19.201691],
            [7.5341368, 0.018872239, -6.2718491e-06, 9.1475649e-10, -4.7838069e-14, -16467.516, -17.892349],
        )),
        liquid: Some(Supply::Liquefied(Liquid { latent_heat: 404_518.0, density: 558.34, heat_capacity: 2342.7 })),
        limits: Some(Limits { nfpa: [0.021, 0.095], iec: [0.017, 0.109], least_oxygen: 0.115 }),
        autoignition: Some(450.0),
        flame: Some(FlameKind::HeavierHydrocarbon),
    }
    /// n-C4H10
    NormalButane {
        symbol: "nC4", name: "n-butane", atoms: Atoms { carbon: 4, hydrogen: 10, ..NONE },
        molar_mass: 58.1222, gross_molar: [2883.35, 2879.76, 2879.63, 2878.58, 2877.4],
        summation: [0.2022, 0.184, 0.1834, 0.1785],
        heat_capacity: [6.14746806, 0.000155947389, 9.67913517e-05, -1.2548391e-07, 4.97816555e-11],
        critical_temperature: 425.125, critical_pressure: 3796000.0, critical_volume: 2.549219e-04,
        acentric_factor: 0.201, viscosity: 7.3048e-06, viscosity_exponent: 0.987,
        vapor_pressure: VaporPressure {
            wagner: [-6.88709, 1.15157, -1.99873, -3.13003],
            reduced_by: [425.18, 3790620.0] },
        // NASA: not of GRI-Mech 3.0.
        thermochemistry: Some(Thermochemistry::new(
            [6.14746806, 0.000155947389, 9.67913517e-05, -1.2548391e-07, 4.97816555e-11, -17599.4402, -1.09409879],
            [9.44535834, 0.0257858073, -9.23619122e-06, 1.48632755e-09, -8.87897158e-14, -20138.2165, -26.3470076],
        )),
        liquid: Some(Supply::Liquefied(Liquid { latent_heat: 404_967.0, density: 624.95, heat_capacity: 2213.3 })),
        limits: Some(Limits { nfpa: [0.019, 0.085], iec: [0.014, 0.093], least_oxygen: 0.12 }),
        autoignition: Some(288.0),
        flame: Some(FlameKind::HeavierHydrocarbon),
    }
    /// i-C4H10
    Isobutane {
        symbol: "iC4", name: "isobutane", atoms: Atoms { carbon: 4, hydrogen: 10, ..NONE },
        molar_mass: 58.1222, gross_molar: [2874.21, 2870.58, 2870.45, 2869.39, 2868.2],
        summation: [0.1885, 0.1722, 0.1717, 0.1673],
        heat_capacity: [4.45479276, 0.00826057985, 8.29886664e-05, -1.14647642e-07, 4.64570101e-11],
        critical_temperature: 407.81, critical_pressure: 3629000.0, critical_volume: 2.577481e-04,
        acentric_factor: 0.184, viscosity: 7.3979e-06, viscosity_exponent: 0.963,
        vapor_pressure: VaporPressure {
            wagner: [-6.95579, 1.5009, -2.52717, -1.49776],
            reduced_by: [408.14, 3658010.0] },
        // NASA: not of GRI-Mech 3.0.
        thermochemistry: Some(Thermochemistry::new(
            [4.45479276, 0.00826057985, 8.29886664e-05, -1.14647642e-07, 4.64570101e-11, -18459.3931, 4.92743175],
            [9.76991245, 0.025499721, -9.14142932e-06, 1.47328271e-09, -8.80800188e-14, -21405.2647, -30.0329101],
        )),
        liquid: Some(Supply::Liquefied(Liquid { latent_heat: 374_992.0, density: 606.28, heat_capacity: 2167.8 })),
        limits: Some(Limits { nfpa: [0.018, 0.084], iec: [0.013, 0.098], least_oxygen: 0.12 }),
        autoignition: Some(460.0),
        flame: Some(FlameKind::HeavierHydrocarbon),
    }
    /// n-C5H12
    NormalPentane {
        symbol: "nC5", name: "n-pentane", atoms: Atoms { carbon: 5, hydrogen: 12, ..NONE },
        molar_mass: 72.14878, gross_molar: [3542.91, 3538.6, 3538.45, 3537.19, 3535.77],
        summation: [0.2586, 0.2361, 0.2354, 0.2295],
        // Valid from 298 K; carried below it for traces.
        heat_capacity: [1.8983679, 0.041203037, 1.2312175e-05, -3.6589501e-08, 1.5042509e-11],
        critical_temperature: 469.7, critical_pressure: 3367500.0, critical_volume: 3.115265e-04,
        acentric_factor: 0.251, viscosity: 6.6651e-06, viscosity_exponent: 1.031,
        vapor_pressure: VaporPressure {
            wagner: [-7.28936, 1.53679, -3.08367, -1.02456],
            reduced_by: [469.74, 3378620.0] },
        // NASA: not of GRI-Mech 3.0.
        thermochemistry: Some(Thermochemistry::new(
            [1.8983679, 0.041203037, 1.2312175e-05, -3.6589501e-08, 1.5042509e-11, -20091.5, 18.679082],
            [13.546998, 0.028421786, -9.4174648e-06, 1.3893589e-09, -7.4212609e-14, -24577.68, -47.021175],
        )),
        liquid: Some(Supply::Liquefied(Liquid { latent_heat: 401_091.0, density: 667.23, heat_capacity: 2124.4 })),
        // Least oxygen as butane.
        limits: Some(Limits { nfpa: [0.015, 0.078], iec: [0.011, 0.087], least_oxygen: 0.12 }),
        autoignition: Some(243.0),
        flame: Some(FlameKind::HeavierHydrocarbon),
    }
    /// i-C5H12
    Isopentane {
        symbol: "iC5", name: "isopentane", atoms: Atoms { carbon: 5, hydrogen: 12, ..NONE },
        molar_mass: 72.14878, gross_molar: [3536.01, 3531.68, 3531.52, 3530.25, 3528.83],
        summation: [0.2458, 0.2251, 0.2244, 0.2189],
        // Valid from 298 K; carried below it for traces.
        heat_capacity: [1.0832882, 0.044571076, 8.2389934e-06, -3.5258047e-08, 1.5785762e-11],
        critical_temperature: 460.35, critical_pressure: 3378000.0, critical_volume: 3.057169e-04,
        acentric_factor: 0.2274, viscosity: 6.8520e-06, viscosity_exponent: 1.031,
        vapor_pressure: VaporPressure {
            wagner: [-7.12727, 1.38996, -2.54302, -2.45657],
            reduced_by: [460.43, 3385900.0] },
        // NASA: not of GRI-Mech 3.0.
        thermochemistry: Some(Thermochemistry::new(
            [1.0832882, 0.044571076, 8.2389934e-06, -3.5258047e-08, 1.5785762e-11, -20807.535, 21.795155],
            [12.327787, 0.030613087, -9.8415785e-06, 1.3919776e-09, -7.0337345e-14, -25037.492, -41.133494],
        )),
        liquid: Some(Supply::Liquefied(Liquid { latent_heat: 379_419.0, density: 661.66, heat_capacity: 2043.6 })),
        // Least oxygen as butane.
        limits: Some(Limits { nfpa: [0.014, 0.083], iec: [0.013, 0.083], least_oxygen: 0.12 }),
        autoignition: Some(420.0),
        flame: Some(FlameKind::HeavierHydrocarbon),
    }
    /// C2H4
    Ethylene {
        symbol: "C2H4", name: "ethylene", atoms: Atoms { carbon: 2, hydrogen: 4, ..NONE },
        molar_mass: 28.05316, gross_molar: [1413.55, 1412.12, 1412.07, 1411.65, 1411.18],
        summation: [0.0868, 0.0799, 0.0797, 0.0778],
        heat_capacity: [3.95920148, -0.00757052247, 5.70990292e-05, -6.91588753e-08, 2.69884373e-11],
        critical_temperature: 282.35, critical_pressure: 5041800.0, critical_volume: 1.309455e-04,
        // Viscosity from memory, 3 %.
        acentric_factor: 0.0866, viscosity: 1.0080e-05, viscosity_exponent: 0.930,
        vapor_pressure: VaporPressure {
            wagner: [-6.32055, 1.16819, -1.55935, -1.83552],
            reduced_by: [282.55, 5050880.0] },
        thermochemistry: Some(Thermochemistry::new(
            [3.95920148, -0.00757052247, 5.70990292e-05, -6.91588753e-08, 2.69884373e-11, 5089.77593, 4.09733096],
            [2.03611116, 0.0146454151, -6.71077915e-06, 1.47222923e-09, -1.25706061e-13, 4939.88614, 10.3053693],
        )),
        liquid: Some(Supply::Liquefied(Liquid { latent_heat: 304_297.0, density: 422.02, heat_capacity: 3362.9 })),
        limits: Some(Limits { nfpa: [0.027, 0.36], iec: [0.023, 0.36], least_oxygen: 0.10 }),
        autoignition: Some(440.0),
        flame: Some(FlameKind::Unmeasured),
    }
    /// C3H6
    Propylene {
        symbol: "C3H6", name: "propylene", atoms: Atoms { carbon: 3, hydrogen: 6, ..NONE },
        molar_mass: 42.07974, gross_molar: [2061.57, 2059.43, 2059.35, 2058.73, 2058.02],
        summation: [0.1381, 0.1267, 0.1263, 0.1232],
        heat_capacity: [3.83464524, 0.00329078405, 5.05228184e-05, -6.66251418e-08, 2.63707585e-11],
        critical_temperature: 364.211, critical_pressure: 4555000.0, critical_volume: 1.832509e-04,
        acentric_factor: 0.146, viscosity: 8.4216e-06, viscosity_exponent: 1.019,
        vapor_pressure: VaporPressure {
            wagner: [-6.64231, 1.21857, -1.81005, -2.48212],
            reduced_by: [364.85, 4605230.0] },
        // NASA: not of GRI-Mech 3.0.
        thermochemistry: Some(Thermochemistry::new(
            [3.83464524, 0.00329078405, 5.05228184e-05, -6.66251418e-08, 2.63707585e-11, 753.838295, 7.53410995],
            [6.03870499, 0.0162963895, -5.82130624e-06, 9.35936483e-10, -5.58602903e-14, -776.595092, -8.43824322],
        )),
        liquid: Some(Supply::Liquefied(Liquid { latent_heat: 409_811.0, density: 578.62, heat_capacity: 2297.6 })),
        limits: Some(Limits { nfpa: [0.024, 0.103], iec: [0.02, 0.111], least_oxygen: 0.115 }),
        autoignition: Some(455.0),
        flame: Some(FlameKind::Unmeasured),
    }
    /// H2
    Hydrogen {
        symbol: "H2", name: "hydrogen", atoms: Atoms { hydrogen: 2, ..NONE },
        molar_mass: 2.01588, gross_molar: [286.64, 286.15, 286.13, 285.99, 285.83],
        summation: [-0.01, -0.01, -0.01, -0.01],
        heat_capacity: [2.34433112, 0.00798052075, -1.9478151e-05, 2.01572094e-08, -7.37611761e-12],
        critical_temperature: 33.145, critical_pressure: 1296400.0, critical_volume: 6.448285e-05,
        acentric_factor: -0.219, viscosity: 8.7963e-06, viscosity_exponent: 0.692,
        vapor_pressure: VaporPressure {
            wagner: [-5.57929, 2.60012, -0.85506, 1.70503],
            reduced_by: [33.19, 1309600.0] },
        thermochemistry: Some(Thermochemistry::new(
            [2.34433112, 0.00798052075, -1.9478151e-05, 2.01572094e-08, -7.37611761e-12, -917.935173, 0.683010238],
            [3.3372792, -4.94024731e-05, 4.99456778e-07, -1.79566394e-10, 2.00255376e-14, -950.158922, -3.20502331],
        )),
        liquid: Some(Supply::Gaseous),
        limits: Some(Limits { nfpa: [0.04, 0.75], iec: [0.04, 0.77], least_oxygen: 0.05 }),
        autoignition: Some(500.0),
        flame: Some(FlameKind::Unmeasured),
    }
    /// CO
    CarbonMonoxide {
        symbol: "CO", name: "carbon monoxide", atoms: Atoms { carbon: 1, oxygen: 1, ..NONE },
        molar_mass: 28.0101, gross_molar: [282.8, 282.91, 282.91, 282.95, 282.98],
        summation: [0.0258, 0.0217, 0.0215, 0.0203],
        heat_capacity: [3.57953347, -0.00061035368, 1.01681433e-06, 9.07005884e-10, -9.04424499e-13],
        critical_temperature: 132.86, critical_pressure: 3494000.0, critical_volume: 9.216590e-05,
        // Viscosity from memory, 3 %.
        acentric_factor: 0.0497, viscosity: 1.7420e-05, viscosity_exponent: 0.700,
        vapor_pressure: VaporPressure {
            wagner: [-6.20798, 1.27885, -1.34533, -2.56842],
            reduced_by: [132.91, 3501150.0] },
        thermochemistry: Some(Thermochemistry::new(
            [3.57953347, -0.00061035368, 1.01681433e-06, 9.07005884e-10, -9.04424499e-13, -14344.086, 3.50840928],
            [2.71518561, 0.00206252743, -9.98825771e-07, 2.30053008e-10, -2.03647716e-14, -14151.8724, 7.81868772],
        )),
        liquid: Some(Supply::Gaseous),
        limits: Some(Limits { nfpa: [0.125, 0.74], iec: [0.109, 0.74], least_oxygen: 0.055 }),
        autoignition: Some(607.0),
        flame: Some(FlameKind::Unmeasured),
    }
    /// CO2
    CarbonDioxide {
        symbol: "CO2", name: "carbon dioxide", atoms: Atoms { carbon: 1, oxygen: 2, ..NONE },
        molar_mass: 44.0095, gross_molar: [0.0, 0.0, 0.0, 0.0, 0.0],
        summation: [0.0821, 0.0752, 0.0749, 0.073],
        heat_capacity: [2.35677352, 0.00898459677, -7.12356269e-06, 2.45919022e-09, -1.43699548e-13],
        critical_temperature: 304.1282, critical_pressure: 7377300.0, critical_volume: 9.411848e-05,
        acentric_factor: 0.22394, viscosity: 1.4666e-05, viscosity_exponent: 0.958,
        vapor_pressure: VaporPressure {
            wagner: [-6.95626, 1.19695, -3.12614, 2.99448],
            reduced_by: [304.15, 7374990.0] },
        thermochemistry: Some(Thermochemistry::new(
            [2.35677352, 0.00898459677, -7.12356269e-06, 2.45919022e-09, -1.43699548e-13, -48371.9697, 9.90105222],
            [3.85746029, 0.00441437026, -2.21481404e-06, 5.23490188e-10, -4.72084164e-14, -48759.166, 2.27163806],
        )),
        liquid: Some(Supply::Gaseous),
        limits: None, autoignition: None, flame: None,
    }
    /// N2
    Nitrogen {
        symbol: "N2", name: "nitrogen", atoms: Atoms { nitrogen: 2, ..NONE },
        molar_mass: 28.0134, gross_molar: [0.0, 0.0, 0.0, 0.0, 0.0],
        summation: [0.0214, 0.017, 0.0169, 0.0156],
        heat_capacity: [3.53100528, -0.000123660987, -5.02999437e-07, 2.43530612e-09, -1.40881235e-12],
        critical_temperature: 126.192, critical_pressure: 3395800.0, critical_volume: 8.941425e-05,
        acentric_factor: 0.0372, viscosity: 1.7560e-05, viscosity_exponent: 0.781,
        vapor_pressure: VaporPressure {
            wagner: [-6.09676, 1.1367, -1.04072, -1.93306],
            reduced_by: [126.2, 3399610.0] },
        thermochemistry: Some(Thermochemistry::new(
            [3.298677, 0.0014082404, -3.963222e-06, 5.641515e-09, -2.444854e-12, -1020.8999, 3.950372],
            [2.92664, 0.0014879768, -5.68476e-07, 1.0097038e-10, -6.753351e-15, -922.7977, 5.980528],
        )),
        liquid: Some(Supply::Gaseous),
        limits: None, autoignition: None, flame: None,
    }
    /// O2
    Oxygen {
        symbol: "O2", name: "oxygen", atoms: Atoms { oxygen: 2, ..NONE },
        molar_mass: 31.9988, gross_molar: [0.0, 0.0, 0.0, 0.0, 0.0],
        summation: [0.0311, 0.0276, 0.0275, 0.0265],
        heat_capacity: [3.78245636, -0.00299673415, 9.847302e-06, -9.68129508e-09, 3.24372836e-12],
        critical_temperature: 154.581, critical_pressure: 5043000.0, critical_volume: 7.336757e-05,
        acentric_factor: 0.0222, viscosity: 2.0251e-05, viscosity_exponent: 0.810,
        vapor_pressure: VaporPressure {
            wagner: [-6.28275, 1.73619, -1.81349, -0.0253645],
            reduced_by: [154.7, 5089870.0] },
        thermochemistry: Some(Thermochemistry::new(
            [3.78245636, -0.00299673416, 9.84730201e-06, -9.68129509e-09, 3.24372837e-12, -1063.94356, 3.65767573],
            [3.28253784, 0.00148308754, -7.57966669e-07, 2.09470555e-10, -2.16717794e-14, -1088.45772, 5.45323129],
        )),
        liquid: Some(Supply::Gaseous),
        limits: None, autoignition: None, flame: None,
    }
    /// H2O
    Water {
        symbol: "H2O", name: "water", atoms: Atoms { hydrogen: 2, oxygen: 1, ..NONE },
        molar_mass: 18.01528, gross_molar: [45.064, 44.431, 44.408, 44.222, 44.013],
        summation: [0.3093, 0.2562, 0.2546, 0.2419],
        heat_capacity: [4.19864056, -0.0020364341, 6.52040211e-06, -5.48797062e-09, 1.77197817e-12],
        critical_temperature: 647.096, critical_pressure: 22064000.0, critical_volume: 5.594804e-05,
        acentric_factor: 0.3443, viscosity: 9.5468e-06, viscosity_exponent: 0.928,
        vapor_pressure: VaporPressure {
            wagner: [-7.76451, 1.45838, -2.7758, -1.23303],
            reduced_by: [647.35, 22122300.0] },
        thermochemistry: Some(Thermochemistry::new(
            [4.19864056, -0.0020364341, 6.52040211e-06, -5.48797062e-09, 1.77197817e-12, -30293.7267, -0.849032208],
            [3.03399249, 0.00217691804, -1.64072518e-07, -9.7041987e-11, 1.68200992e-14, -30004.2971, 4.9667701],
        )),
        liquid: Some(Supply::Gaseous),
        limits: None, autoignition: None, flame: None,
    }
    /// Ar
    Argon {
        symbol: "Ar", name: "argon", atoms: Atoms { argon: 1, ..NONE },
        molar_mass: 39.948, gross_molar: [0.0, 0.0, 0.0, 0.0, 0.0],
        summation: [0.0307, 0.0273, 0.0272, 0.0262],
        heat_capacity: [2.5, 0.0, 0.0, 0.0, 0.0],
        critical_temperature: 150.687, critical_pressure: 4863000.0, critical_volume: 7.458551e-05,
        acentric_factor: -0.00219, viscosity: 2.2289e-05, viscosity_exponent: 0.842,
        vapor_pressure: VaporPressure {
            wagner: [-5.90501, 1.12627, -0.767869, -1.62721],
            reduced_by: [150.651, 4857990.0] },
        thermochemistry: Some(Thermochemistry::new(
            [2.5, 0.0, 0.0, 0.0, 0.0, -745.375, 4.366],
            [2.5, 0.0, 0.0, 0.0, 0.0, -745.375, 4.366],
        )),
        liquid: Some(Supply::Gaseous),
        limits: None, autoignition: None, flame: None,
    }
}
