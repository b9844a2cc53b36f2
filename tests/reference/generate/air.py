"""air.csv: dampers, perforated plates, blower power, velocity pressure. Written with fluids 1.3.1."""

from fluids.filters import square_edge_screen

from table import FOUND_IN_CODE, FROM_FORMULA, FROM_MEMORY, computed_with, half_digit, row, write

rows = []

for angle, loss in ((5, ".24"), (10, ".52"), (20, "1.54"), (30, "3.91"), (40, "10.8"), (45, "18.7"), (50, "32.6"),
                    (60, "118"), (70, "751")):
    rows.append(row("butterfly_loss_coefficient", {"angle_deg": angle}, loss.replace(".24", "0.24").replace(".52", "0.52"),
                    "", half_digit(loss), "Weisbach's disc in a round pipe, angle from open, as reprinted in Idelchik, "
                    f"Handbook of Hydraulic Resistance {FROM_MEMORY}"))
for eighths, loss in ((7, "0.07"), (6, "0.26"), (5, "0.81"), (4, "2.06"), (3, "5.52"), (2, "17.0"), (1, "97.8")):
    rows.append(row("blast_gate_loss_coefficient", {"opening": eighths / 8}, loss, "", half_digit(loss),
                    "Weisbach's gate in a round pipe, open height over diameter, as reprinted in Idelchik, "
                    f"Handbook of Hydraulic Resistance {FROM_MEMORY}"))

for flow, head, efficiency in ((100, 4, 0.5), (250, 10, 0.4), (60, 6, 0.3)):
    rows.append(row("shaft_power_hp", {"flow_cfm": flow, "pressure_inh2o": head, "efficiency": efficiency},
                    flow * head / 6356 / efficiency, "hp", 2.5e-3,
                    "Fan trade: hp = cfm x in w.c. / 6356 / efficiency; its inch of water weighs 0.2 % less than the "
                    f"conventional one {FROM_MEMORY}"))
for speed in (1000, 2000, 4005):
    rows.append(row("velocity_pressure_inh2o", {"speed_fpm": speed, "density_lb_per_ft3": 0.075}, (speed / 4005) ** 2,
                    "inH2O", 2.5e-3, "Fan trade: (ft/min / 4005)^2 at 0.075 lb/ft3; the same inch of water "
                    f"{FROM_MEMORY}"))

# Idelchik's thick perforated plate, tau as tabulated in diagram 4-12 at the lengths of its own nodes.
TAU = {0.0: 1.35, 0.4: 1.10, 0.8: 0.42, 1.0: 0.24, 2.0: 0.02, 2.4: 0.0, 5.0: 0.0, 10.0: 0.0}
FRICTION = 0.02
for length, tau in TAU.items():
    for f in (0.05, 0.1, 0.2, 0.3, 0.5, 0.8):
        loss = (0.5 * (1 - f) ** 0.75 + tau * (1 - f) ** 1.375 + (1 - f) ** 2 + FRICTION * length) / f**2
        rows.append(row("head_loss_coefficient_on_duct",
                        {"open_fraction": f, "length_over_diameter": length, "friction_factor": FRICTION}, loss, "", 2e-3,
                        "Idelchik, Handbook of Hydraulic Resistance, thick perforated plate, tau as tabulated in "
                        f"diagram 4-12 {FROM_FORMULA}"))
for f in (0.1, 0.2, 0.3, 0.4, 0.5, 0.6):
    rows.append(row("head_loss_coefficient_on_duct",
                    {"open_fraction": f, "length_over_diameter": 0, "friction_factor": 0.02}, square_edge_screen(f), "",
                    0.13, "Blevins, Applied Fluid Dynamics Handbook, square-edged perforated plate; another author, so a "
                    f"wide band {computed_with('fluids')}"))

# A thick-walled hole in a large wall, on its own speed: printed beside the plate, and not quite the same.
for length, loss in ((0, "2.85"), (0.2, "2.72"), (0.4, "2.6"), (0.6, "2.34"), (0.8, "1.95"), (1, "1.76"), (1.2, "1.67"),
                     (1.6, "1.6"), (2, "1.55")):
    rows.append(row("port_loss_coefficient", {"open_fraction": 0, "length_over_diameter": length, "friction_factor": 0},
                    loss, "", 2.5e-2, "Idelchik, Handbook of Hydraulic Resistance, diagram 4-18A, Re above 1e5; beside "
                    f"diagram 4-12 it prints up to 0.03 more {FOUND_IN_CODE}"))

write("air", rows)
