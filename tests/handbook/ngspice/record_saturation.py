"""
Writes netlists of a core that saturates, with what ngspice computes for them in time: `python -m tests.handbook.ngspice.record_saturation`.

The core here is a curve of flux and current, `i = a * flux + b * flux**9`, solved instant by instant, so that its current is no sine any more; the
plant knows rms values alone. Both are set to the same rms current at rated volts, and what is compared is how it rises above them.
"""

import json
import math
import subprocess
import tempfile
from itertools import product
from pathlib import Path

from tests.handbook.ngspice.record import BASE, HERE

W = 2 * math.pi * 60
POWER = 9
SINE_POWER_RMS = math.sqrt(math.prod(range(1, 2 * POWER, 2)) / math.prod(range(2, 2 * POWER + 1, 2)))
"""Rms of the ninth power of a sine of peak 1: Wallis, 17!!/18!! under the root."""
CIRCUITS = {
    f"saturated_{knee:.1f}_at_{percent}": {
        "knee": knee,
        "line_v": BASE["tap_v"] * percent / 100.0,
        "magnetising": 0.35,
        "leakage": 0.0,
        "load_ohm": 1e9,
    }
    for knee, percent in product((0.1, 0.3), (100, 110, 120, 130))
}
"""Share of the current at rated volts that is saturation already, and volts in percent of rated."""


def netlist(name: str, changes: dict[str, float]) -> str:
    """One unloaded transformer as ngspice takes it, from the moment of full volts and no flux on, so that nothing rushes in."""
    c = BASE | changes
    peak_flux = c["tap_v"] * math.sqrt(2) / W
    rated_a = c["magnetising"] * c["rated_va"] / c["tap_v"]
    linear = rated_a * (1 - c["knee"]) * math.sqrt(2)
    bent = rated_a * c["knee"] / SINE_POWER_RMS
    ratio = c["tap_v"] / (c["rated_secondary_v"] * c["open_ratio"])
    rows = [
        f"* {name}",
        f"V1 L 0 SIN(0 {c['line_v'] * math.sqrt(2)} 60 0 0 90)",
        f"R1 L E {c['line_ohm'] + c['primary_ohm'] * c['warm']}",
        f"RC E 0 {c['tap_v'] ** 2 / c['rated_va'] / c['core_loss']}",
        f"BI 0 FLUX I=V(E)/{peak_flux}",
        "CF FLUX 0 1 IC=0",
        "RF FLUX 0 1e6",
        f"BM E 0 I={linear}*V(FLUX)+{bent}*V(FLUX)*V(FLUX)^{POWER - 1}",
        f"ES X 0 E 0 {1 / ratio}",
        "RM X 0 1e7",
        ".options method=gear reltol=1e-5",
        ".tran 20u 0.4 0.3 20u UIC",
        ".meas tran secondary_v RMS V(X) from=0.3 to=0.4",
        ".meas tran primary_a RMS I(V1) from=0.3 to=0.4",
        ".end",
    ]
    return "\n".join(rows) + "\n"


def run(text: str) -> dict[str, float]:
    """What ngspice measures."""
    with tempfile.NamedTemporaryFile("w", suffix=".cir") as file:
        file.write(text)
        file.flush()
        out = subprocess.run(["ngspice", "-b", file.name], capture_output=True, text=True, check=False).stdout
    found = {}
    for line in out.splitlines():
        name, _, rest = line.partition("=")
        if name.strip() in {"secondary_v", "primary_a"} and rest:
            found[name.strip()] = float(rest.split()[0])
    return found


def main() -> None:
    """Write all."""
    values = {}
    for name, changes in CIRCUITS.items():
        text = netlist(name, changes)
        (HERE / f"{name}.cir").write_text(text)
        values[name] = run(text)
    (Path(HERE) / "saturation.json").write_text(json.dumps(values, indent=1) + "\n")


if __name__ == "__main__":
    main()
