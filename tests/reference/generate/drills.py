"""drills.csv: number and letter drills of ASME B94.11M, fractions of an inch. Python standard library alone."""

from table import FOUND, row, write

NUMBERS = (
    "0135 0145 0160 0180 0200 0210 0225 0240 0250 0260 0280 0292 0310 0320 0330 0350 0360 0370 0380 0390 0400 0410 0420 "
    "0430 0465 0520 0550 0595 0635 0670 0700 0730 0760 0785 0810 0820 0860 0890 0935 0960 0980 0995 1015 1040 1065 1100 "
    "1110 1130 1160 1200 1285 1360 1405 1440 1470 1495 1520 1540 1570 1590 1610 1660 1695 1730 1770 1800 1820 1850 1890 "
    "1910 1935 1960 1990 2010 2040 2055 2090 2130 2210 2280"
).split()
LETTERS = ("234 238 242 246 250 257 261 266 272 277 281 290 295 302 316 323 332 339 348 358 368 377 386 397 404 "
           "413").split()
assert len(NUMBERS) == 80 and len(LETTERS) == 26

SOURCE = f"ASME B94.11M, twist drills, two public lists that agree {FOUND}"
rows = [row("drill_diameter_in", {"name": str(80 - i)}, f"0.{d}", "in", 1e-9, SOURCE) for i, d in enumerate(NUMBERS)]
rows += [row("drill_diameter_in", {"name": chr(65 + i)}, f"0.{d}", "in", 1e-9, SOURCE) for i, d in enumerate(LETTERS)]
for top, bottom in ((1, 64), (1, 32), (3, 64), (1, 16), (5, 64), (3, 32), (1, 8), (3, 16), (1, 4)):
    rows.append(row("drill_diameter_in", {"name": f"{top}/{bottom}"}, top / bottom, "in", 1e-9,
                    "A fraction of an inch is its own definition [computed from the formula]"))

write("drills", rows)
