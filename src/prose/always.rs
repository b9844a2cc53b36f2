//! What every page ends with.

/// What is true of every furnace, on the page that hangs beside it.
pub const IN_SHORT: [&str; 2] = [
    "Air on and the chamber purged before gas; gas off before air. Never leave gas on with the blower stopped. Never leave \
         a burning furnace alone. Fresh air, a flue or hood, and a carbon monoxide alarm that sounds.",
    "Estimates for setting a fire that someone watches; this is no flame safeguard. Local codes and a licensed gas \
         fitter decide.",
];

/// The usual cautions, the deadliest first; the full sheet and the README carry them. Common practice, no source.
pub const CAUTIONS: [(&str, &str); 12] = [
    ("Alarm", "a carbon monoxide alarm, tested, where you stand; it sounds: gas off, everyone out."),
    (
        "Venting",
        "a flue or hood that leads outdoors and an opening that lets fresh air in; never in a closed or a lived-in room.",
    ),
    (
        "Flame",
        "someone beside the fire as long as it burns; without someone, a listed flame safeguard holds the gas valve, \
         never this.",
    ),
    (
        "Gas",
        "soapy water on every joint after each change; hose and regulator listed for the gas and within their dates; an \
         excess-flow valve at the cylinder and a check valve at the burner, since a blower can push air into a gas line \
         that ran empty; the main shut-off within reach, and not behind the flame.",
    ),
    (
        "Supply",
        "a cylinder stands outdoors, upright, secured against falling, away from the fire; never heated by any means; piped gas is shut at its valve. Propane and butane \
         are heavier than air and pool in pits, cellars and drains.",
    ),
    (
        "Floor",
        "a fire extinguisher at hand, a floor that does not burn, nothing to trip over, nothing wet; bystanders, children \
         and animals well back.",
    ),
    (
        "Person",
        "glasses against infrared (shade 3 to 5) and a face shield, gloves and leather, clothing of wool or cotton, shoes \
         without laces or mesh; a way out.",
    ),
    (
        "Water",
        "a dry charge, dry molds and dry tools: damp bursts hot metal out of the crucible. A new lining is cured and \
         dried by its maker's schedule first.",
    ),
    (
        "Fume",
        "no galvanized, painted, leaded or unknown metal: zinc, lead, cadmium and other fume poisons; a respirator of \
         the class the fume or dust needs (P100 or P3 for refractory dust).",
    ),
    (
        "Dust",
        "silica and ceramic fiber harm the lungs: cut and sweep them wet, coat the fiber, keep them out of clothes.",
    ),
    ("Loads", "a full crucible or a lining is lifted by two or by a hoist, with tongs made for it, over sand."),
    (
        "Power",
        "blower and controls grounded (earthed), on a circuit with ground-fault (residual-current) protection; a blower that \
         stops is a gas valve to shut at once.",
    ),
];
