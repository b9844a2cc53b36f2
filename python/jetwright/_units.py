"""SI values of shop units, exact from exact definitions; the inch of water is the conventional one."""

mm: float = 1e-3
inch: float = 0.0254
foot: float = 0.3048
lb: float = 0.45359237
psi: float = 0.45359237 * 9.80665 / 0.0254**2
bar: float = 1e5
mbar: float = 1e2
inH2O: float = 1000 * 9.80665 * 0.0254
kW: float = 1e3
btu_per_hour: float = 4186.8 * 0.45359237 / 1.8 / 3600
cfm: float = 0.3048**3 / 60
deg: float = 3.141592653589793 / 180
minute: float = 60.0
hour: float = 3600.0
