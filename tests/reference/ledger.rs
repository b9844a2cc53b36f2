//! How every quantity is known, and why some are known by one line only.

use super::row::Row;

/// The two lines a quantity needs, each a source text of its own that is not from memory.
pub const LINES: usize = 2;

/// Quantities with fewer lines, and why that stands.
pub const REASONS: &[(&str, &str)] = &[
    (
        "ball_valve_loss_coefficient",
        "One fit to one book; Weisbach's plug cock, another shape, loses 1.8 to 3 times as much. So it is known to 70 % of the \
         loss, warned of, and calibrated by one setting seen.",
    ),
    ("shaft_power_hp", "An identity of units: flow times pressure over efficiency."),
    ("velocity_pressure_inh2o", "An identity of units: half the density times the speed squared."),
    (
        "gas_emissivity",
        "One set of weighted gray gases (Smith, Shen and Friedman 1982), by other hands. A later set, Bordbar's of 2014, has 0.104 \
         at 1500 K and 0.2 m of the products of propane at 83 kPa, and 0.082 at 1300 K and 0.1 m.",
    ),
    (
        "mass_per_heat_kg_per_mj",
        "Stoichiometry alone, by other hands: what air and gas weigh for each megajoule; their lines stand under combustion.",
    ),
    (
        "entering_g_per_s",
        "Bernoulli's law for openings, by other hands; the fire vent's 0.5 A sqrt(H) is from memory and checks its size.",
    ),
    (
        "reactor_carbon_monoxide_dry_ppm",
        "One mechanism, GRI-Mech 3.0, solved by its library; the table is drawn through other points of it. What a real chamber \
         makes differs by more than mechanisms do, and is measured.",
    ),
    ("reactor_blows_out", "The same reactor of the same mechanism, whether it stays lit."),
    (
        "iron_dioxide_ratio",
        "From memory. Lee, Gleeson and Young, Oxidation of Metals 63 (2005), support that carbon dioxide and water decide, \
         without numbers.",
    ),
    (
        "iron_water_ratio",
        "Emmett and Schultz alone measured it; the other line is the carbon dioxide ratio through the water gas.",
    ),
    ("passed_share", "The law's own integral equation, solved by another method; no measurement was found."),
    (
        "gross_ideal_btu_per_ft3",
        "The same heats of combustion as the other units of this topic, which have their lines.",
    ),
    (
        "flashback_gradient_per_s",
        "From memory: the reports that hold the tables could not be read. The constant is drawn through these very values, so \
         the rows prove nothing; a factor of three stands beside it.",
    ),
    (
        "ignition_delay_s",
        "One mechanism, AramcoMech 1.3, made for these gases. San Diego has propane and ethane half as long and methane 0.15 s, \
         USC II propane half as long and methane 0.47 s, at 1033 K: the longest is taken, as walls said to light gas must. \
         GRI-Mech was not made for propane and ethane.",
    ),
    ("additive_standard", "The root of four ones."),
    ("end_gauge_second_order_nm", "The guide's own products, summed."),
    (
        "mass_standard_deviation_mg",
        "Random draws of the supplement's own example; the analytic value stands beside it.",
    ),
    ("mass_standard_first_order_mg", "The guide's own formula for the same example."),
    (
        "entry_loss_chamfered",
        "Idelchik alone has a table. Rennels (2012), who finds little credible data, has coefficients 5 to 8 % lower (0.83 for \
         0.905 at 60 degrees and a tenth of the bore), so the spread of a chamfered inlet is 9 %.",
    ),
    ("short_tube_beside_weisbach", "A band of one author, there to show that our value lies within it."),
    ("short_tube_choked", "From memory (Ward-Smith); the short tube is held below choking by three authors."),
    ("thick_plate_beside_parker_kercher", "A band of one author, there to show that our value lies within it."),
    (
        "thin_plate_beside_weisbach",
        "From memory, a band: only 0.563 to 0.788 was found, and its low end is below every later author.",
    ),
];

/// What was found against a value and not taken, or taken otherwise, and why.
pub const DECISIONS: &str = "
## What was decided

- **Gate.** The measured chart 330-1 is the table over its whole range. Weisbach's gate, measured apart, is within 8 % from
  1/8 to 5/8 open and checks it; further up he has 0.26 and 0.07 where the chart has 0.385 and 0.175, so those two points
  are no rows. A fit to Miller's gate (17.3 at 18 % open) is of threaded gate valves and serves neither.
- **Disc.** One formula with the gap left when shut; the gaps of SMACNA (0.6 %) and ASHRAE (3.7 %) are fitted, and what is
  checked is the shape over the angles. ASHRAE at 30 degrees is 20 % above, which no gap gives. The contraction is
  Weisbach's, so his own disc checks the geometry only. Open discs have 0.1, 0.2 and 0.6, the last with a thick blade: 0.2.
- **Valves.** A threaded gate valve is the mean of three handbooks, known to 50 %.
- **Burning velocity.** Methane's exponent and both rich sides are drawn through mechanisms; rows that say so prove nothing
  but that. Lean, cold and stoichiometric rows are not drawn through. Blow-off by the low end, flashback by the high one.
- **Explosive range.** For what is safe because too lean or too rich: the wider of NFPA's and IEC's, by 0.12 % a kelvin. Propane and methane
  then lie 15 to 17 % below the measured and computed limits at 400 degC, on the safe side.
- **Autoignition.** The lowest published. Trade sheets up to 604 degC for propane are higher, and not taken.
- **Quenching, flashback, blow-off.** Constants drawn through published values near an air ratio of 1; those rows prove
  nothing. Williams' 40 thermal thicknesses are the line that is not drawn through. What a joint stops (0.28 to 1.12 mm)
  is under half of it and is never offered in its place.
- **Purge.** 5.25 changes from pure propane to a quarter of its limit, where NFPA 86 asks 4 and BS 5990 asks 5 in at least
  30 s: both leave more than a quarter of the limit when the chamber was full of gas.
- **Glow.** 760 degC (1400 degF, from memory) where EN 746-2 has 750 degC of the coldest wall: the higher stands.
- **Drying.** No faster in any stage than the slowest of three makers' sheets.
- **Rounded inlets.** Five authors have 0.866 to 0.901 at a twentieth of the bore: the spread is 4 %, not 3.
- **Ports.** Up to half open three laws agree within 13 %; beyond, ours loses 20 to 30 % more than (1 / (c a) - 1)^2. Open: no
  spread of its own yet beside the head's 5 % of its area.
- **Free convection.** Incropera's equation 9.24 is 18 to 21 % below ours on a plate of a meter. Open: ours stands, and the
  difference is not yet carried into any spread.
- **Viscosity.** Ours lies 1.6 to 3.9 % (propane) and 1 to 2 % (butanes) above DIPPR. Open: not corrected, and what it does to
  a jet's flow was not looked at apart from the model's spread.
- **Cylinder.** The trade chart found twice is one table, and the heat transfer is fitted to it: its rows prove the fit.
- **Carbon monoxide.** The European limit is 20 ppm over 8 h and 100 ppm over 15 min (Directive 2017/164), the strictest law
  found. Open: whether every warning goes by it.
";

/// The ways a row can be known, in the order of their weight.
const WAYS: &[(&str, &str)] = &[
    ("[found in code", "found in code"),
    ("[found", "found in print"),
    ("[computed with", "computed by a library"),
    ("[computed from the formula", "from the source's formula"),
    ("[computed", "computed"),
    ("[from memory", "from memory"),
];

/// How the rows of a quantity are known, in words.
pub fn ways(rows: &[&Row]) -> String {
    let mut found: Vec<&str> = Vec::new();
    for row in rows {
        let way = WAYS.iter().find(|(mark, _)| row.source.contains(mark)).map_or("computed", |(_, way)| way);
        let way = if is_band(row) { "a band" } else { way };
        if !found.contains(&way) {
            found.push(way);
        }
    }
    found.sort_unstable();
    found.join(", ")
}

fn is_band(row: &Row) -> bool {
    row.source.contains("a wide band") || row.source.contains("indicative")
}

/// How many independent lines a quantity has: source texts that differ before their first bracket or semicolon, those from
/// memory left out.
pub fn lines(rows: &[&Row]) -> usize {
    let weighs = rows.iter().filter(|row| !row.source.contains("from memory"));
    let mut texts: Vec<&str> = weighs.map(|row| row.source.split([';', '[']).next().unwrap_or("").trim()).collect();
    texts.sort_unstable();
    texts.dedup();
    texts.len()
}
