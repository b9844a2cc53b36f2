"""orifice.csv: discharge coefficients of plates and bores, entry losses, the incompressible handbook flow.

Written with scipy 1.17.1.
"""

import math

import long_bore
import thin_plate
from table import FOUND, FOUND_IN_CODE, FROM_FORMULA, FROM_MEMORY, digits, half_digit, row, write

EXPONENTS = (1.4, 1.3, 1.13)
RATIOS = (0.98, 0.95, 0.9, 0.8, 0.7, 0.63, 0.6, 0.55, 0.5, 0.4, 0.3, 0.2, 0.1, 0.05)
rows = []


def add(*arguments):
    rows.append(row(*arguments))


# A thin sharp plate.
for contraction in (0.60, 0.61):
    for g in EXPONENTS:
        for r in RATIOS:
            add("thin_plate_discharge_coefficient",
                {"contraction_coefficient": contraction, "isentropic_exponent": g, "pressure_ratio": r},
                thin_plate.jobson(contraction, g, r), "", 2e-4,
                f"Jobson, Proc. IMechE 169 (1955) 767, momentum balance {FROM_FORMULA}")
for g in EXPONENTS:
    for r in RATIOS:
        if r >= 0.28:
            add("thin_plate_beside_cunningham",
                {"contraction_coefficient": 0.5959, "isentropic_exponent": g, "pressure_ratio": r},
                thin_plate.cunningham(0.5959, g, r), "", 1.6e-2,
                "Cunningham, Trans. ASME 73 (1951) 625, expansion factor as Parker & Kercher, ASME HTD-188 (1991); "
                f"another model, so a wide band {FROM_FORMULA}")
for up_over_down, coefficient in ((1.43, ".692"), (1.65, ".724"), (1.89, ".754"), (2.15, ".788")):
    add("thin_plate_beside_weisbach", {"contraction_coefficient": 0.61, "isentropic_exponent": 1.4,
                                       "pressure_ratio": digits(1 / up_over_down, 6)},
        "0" + coefficient, "", 3e-2,
        f"Weisbach's air experiments, sharp edge, after Encyclopaedia Britannica 11th ed., Hydraulics {FROM_MEMORY}")

# A long bore.
for entry_loss, length, g, r, printed in long_bore.cases():
    value, _ = long_bore.discharge_coefficient(entry_loss, length, g, r)
    add("long_bore_discharge_coefficient",
        {"entry_loss": entry_loss, "friction_length": length, "isentropic_exponent": g, "pressure_ratio": r},
        digits(value, 6), "", 1e-3,
        "Adiabatic friction flow behind an entry loss: Shapiro, Compressible Fluid Flow I (1953) chapter 6; choked at "
        f"the friction limit or at the peak of the mouth's flux {FROM_FORMULA}")

# A short tube, from low speed to choked.
for length in (1.5, 2, 5, 7):
    add("short_tube_choked", {"length_over_diameter": length, "isentropic_exponent": 1.4, "reynolds_number": 1e5}, "0.839",
        "", 1e-2 if length < 3 else 3e-2,
        "Ward-Smith, Int. J. Heat & Fluid Flow 1(3) (1979) 123: air, 1 to 7 diameters, no effect of length; "
        f"wall friction beyond 1.5 diameters makes the model read lower {FROM_MEMORY}")
add("short_tube_slow", {"length_over_diameter": 1.5, "isentropic_exponent": 1.4, "pressure_ratio": 0.99,
                        "reynolds_number": 1e5}, "0.81", "", 1e-2,
    f"Lichtarowicz, Duggins & Markland, J. Mech. Eng. Sci. 7(2) (1965) 210, L/d 1.5 to 2 {FOUND}")
# Weisbach's band 0.81 to 0.84 at effective pressures of 0.23 to 1.1 atmosphere: its middle, half its width and half a
# printed digit.
for atmospheres in (0.23, 0.6, 1.1):
    add("short_tube_beside_weisbach", {"length_over_diameter": 2, "isentropic_exponent": 1.4,
                                       "pressure_ratio": digits(1 / (1 + atmospheres), 6), "reynolds_number": 1e5},
        "0.825", "", "0.02 abs",
        "Weisbach's air experiments, short cylindrical mouthpiece 0.81 to 0.84: Encyclopaedia Britannica 11th ed. (1911) "
        f"vol. 14, Hydraulics, section 63 {FOUND}")

# Bores against measured liquid flow: smooth wall, low speed.
def band(length, reynolds):
    if reynolds < 1e4:
        return 3.5e-2
    return 3e-2 if length >= 8 and reynolds >= 2e4 else 2e-2


for length in (2, 3, 4, 6, 8, 10):
    for reynolds in (5e3, 1e4, 2e4):
        ultimate = 0.827 - 0.0085 * length
        inverse = (1 / ultimate + 20 / reynolds * (1 + 2.25 * length)
                   - 0.005 * length / (1 + 7.5 * math.log10(0.00015 * reynolds) ** 2))
        add("smooth_bore_beside_lichtarowicz", {"length_over_diameter": length, "reynolds_number": reynolds},
            1 / inverse, "", band(length, reynolds),
            "Lichtarowicz, Duggins & Markland, J. Mech. Eng. Sci. 7(2) (1965) 210, equations 7 and 12, themselves within "
            f"1.5 to 2 %; wall friction goes on falling with Reynolds number, equation 7 does not {FROM_FORMULA}")

# Between a thin plate and a bore: other authors' joints, wide bands.
for length, text in (("0.5", "0.6521 0.6758 0.7545 0.8282 0.8380"), ("0.75", "0.7147 0.7305 0.7826 0.8315 0.8380"),
                     ("1", "0.7680 0.7769 0.8065 0.8343 0.8380"), ("1.5", "0.8078 0.8116 0.8244 0.8364 0.8380")):
    for r, value in zip((0.98, 0.9, 0.7, 0.5, 0.3), text.split()):
        for g, band in ((1.4, 7e-2), (1.13, 4e-2)):
            add("thick_plate_beside_parker_kercher",
                {"length_over_diameter": length, "isentropic_exponent": g, "pressure_ratio": r, "reynolds_number": 1e5},
                value, "", band,
                "Parker & Kercher, ASME HTD-188 (1991), sharp inlet, Re 1e5, stated for any exponent; the zone scatters "
                f"by as much {FOUND_IN_CODE}")
for radius in (0.0, 0.05, 0.1, 0.2, 0.3):
    sharp = 0.5885 + 372 / 1e5
    rounded = 1 - (0.008 + 0.992 * math.exp(-5.5 * radius - 3.5 * radius**2)) * (1 - sharp)
    value = 1 - (1 - rounded) * (1 + 1.3 * math.exp(-1.606 * 2**2)) * (0.435 + 0.021 * 2)
    add("rounded_bore_beside_mcgreehan", {"length_over_diameter": 2, "radius_over_diameter": radius,
                                          "reynolds_number": 1e5}, value, "", 6e-2,
        f"McGreehan & Schotsch, ASME 87-GT-162 (1987), low speed; another model, so a wide band {FROM_FORMULA}")

# Entry losses, on the dynamic head in the bore, as printed: 0.50 for a square edge.
for radius, loss in (("0", ".50"), ("0.01", ".44"), ("0.02", ".37"), ("0.03", ".31"), ("0.04", ".26"), ("0.05", ".22"),
                     ("0.06", ".20"), ("0.08", ".15"), ("0.12", ".09"), ("0.16", ".06"), ("0.2", ".03")):
    add("entry_loss_rounded", {"radius_over_diameter": radius}, "0" + loss, "", half_digit(loss),
        f"Idelchik, Handbook of Hydraulic Resistance, rounded entry in a wall, as in fluids 1.3.1 {FOUND_IN_CODE}")
for radius, loss in (("0.01", ".422"), ("0.02", ".357"), ("0.05", ".209"), ("0.1", ".082")):
    add("entry_loss_rounded", {"radius_over_diameter": radius}, "0" + loss, "", "0.045 abs",
        f"Miller, Internal Flow Systems, as in fluids 1.3.1; another author, so a wide band {FOUND_IN_CODE}")
ANGLES = (10, 20, 30, 40, 60, 100, 140, 180)
for depth, text in (("0.025", ".47 .45 .43 .41 .40 .42 .45 .50"), ("0.05", ".45 .41 .36 .33 .30 .35 .42 .50"),
                    ("0.1", ".39 .32 .25 .22 .18 .27 .38 .50"), ("0.15", ".37 .27 .20 .16 .15 .25 .37 .50"),
                    ("0.6", ".27 .18 .13 .11 .12 .23 .36 .50")):
    for angle, loss in zip(ANGLES, text.split()):
        add("entry_loss_chamfered", {"depth_over_diameter": depth, "cone_angle_deg": angle}, "0" + loss, "",
            half_digit(loss), "Idelchik, Handbook of Hydraulic Resistance, diagram 3-7, conical entry in a wall, "
            f"Re above 1e4 {FOUND_IN_CODE}")

# The incompressible handbook formula against a printed table.
HEADS = ((0.60, "1.0"), (0.60, "3.0"), (0.60, "3.5"), (0.60, "4.0"), (0.60, "7.0"), (1.50, "10"), (1.50, "11"),
         (2.00, "10"), (2.00, "11"))
for drill, bore, text in (
    ("80", "0.0135", "0.276 0.478 0.516 0.552 0.730 0.552 0.579 0.478 0.501"),
    ("76", "0.0200", "0.605 1.049 1.133 1.211 1.602 1.211 1.270 1.049 1.100"),
    ("72", "0.0250", "0.946 1.638 1.770 1.892 2.503 1.892 1.984 1.638 1.718"),
    ("68", "0.0310", "1.454 2.519 2.721 2.909 3.848 2.909 3.051 2.519 2.642"),
    ("62", "0.0380", "2.185 3.785 4.089 4.371 5.782 4.371 4.584 3.785 3.970"),
):
    for (relative_density, head), flow in zip(HEADS, text.split()):
        add("handbook_flow_ft3_per_h",
            {"bore_in": bore, "head_inh2o": head, "relative_density": relative_density, "coefficient": 0.9},
            flow, "ft3/h", f"{1e-3 * float(flow) + 0.0005:.3g} abs",
            f"Plumbing 3E (opentextbc.ca), appendix 2, imperial orifice capacity table, drill {drill} {FOUND}")
add("handbook_flow_ft3_per_h", {"bore_in": "0.21875", "head_inh2o": 6, "relative_density": 0.6, "coefficient": 0.6},
    "118.6", "ft3/h", 4e-3,
    "Worked example of handbook engineering notes (7/32 in, 80.7 ft3/h at 1 in w.c. uncorrected, times 0.60 times "
    f"root 6); its 80.7 stands 0.25 % above its own formula {FOUND}")
for drill, bore, text in (("80", "0.0135", "0.48 0.55 0.69 0.88"), ("76", "0.0200", "1.05 1.21 1.52 1.92")):
    for head, flow in zip((3, 4, 6, 10), text.split()):
        add("handbook_flow_ft3_per_h",
            {"bore_in": bore, "head_inh2o": head, "relative_density": 0.6, "coefficient": 0.9}, flow, "ft3/h", 2.6e-2,
            f"NFPA 54 annex E, table E.1.1(a), drill {drill}; printed to two digits, up to 2.5 % over the formula {FOUND}")

write("orifice", rows)
