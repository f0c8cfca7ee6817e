"""
Writes the netlists of the circuits below and what ngspice computes for them: `python -m tests.handbook.ngspice.record`, with ngspice installed.

The netlists know nothing of the plant: windings are ideal transformers made of controlled sources, reactances are inductors at 60 Hz, the core is
a resistor beside an inductor (no saturation: at the volts used here it is linear by choice, in both).
"""

import json
import math
import re
import subprocess
import tempfile
from pathlib import Path

HERE = Path(__file__).parent
OPEN = 1e9
BASE = {
    "line_v": 120.0, "line_ohm": 0.3, "tap_v": 120.0, "rated_va": 40.0, "rated_secondary_v": 24.0, "open_ratio": 1.13,
    "primary_ohm": 19.5, "secondary_ohm": 1.04, "warm": 1.1, "leakage": 0.35, "magnetising": 0.25, "core_loss": 0.06, "knee": 0.0,
    "primary_fault_ohm": 0.0, "secondary_fault_ohm": 0.0, "primary_shorted": 0.0, "secondary_shorted": 0.0, "contact": 0.0,
    "protection_ohm": 0.05, "wire_ohm": 0.3, "break_ohm": 0.0, "load_ohm": 20.0, "power_factor": 0.75, "short_ohm": OPEN,
}  # fmt: skip
V208 = {"line_v": 208.0, "tap_v": 208.0, "primary_ohm": 53.0}
V240 = {"line_v": 240.0, "tap_v": 240.0, "primary_ohm": 66.5}
V277 = {"line_v": 277.0, "tap_v": 277.0, "primary_ohm": 95.0}
V480 = {"line_v": 480.0, "tap_v": 480.0, "primary_ohm": 280.0}
VA75 = {"rated_va": 75.0, "primary_ohm": 8.1, "secondary_ohm": 0.43, "open_ratio": 1.09, "load_ohm": 9.0}
VA100 = {"rated_va": 100.0, "primary_ohm": 5.2, "secondary_ohm": 0.28, "open_ratio": 1.08, "load_ohm": 6.0}
VA20 = {"rated_va": 20.0, "primary_ohm": 53.0, "secondary_ohm": 2.8, "open_ratio": 1.18, "load_ohm": 36.0}
CIRCUITS: dict[str, dict[str, float]] = {
    "healthy_120": {}, "healthy_208": V208, "healthy_240": V240, "healthy_277": V277, "healthy_480": V480, "healthy_75va": VA75,
    "healthy_100va": VA100, "healthy_20va": VA20, "healthy_no_call": {"load_ohm": 600.0}, "no_supply": {"line_v": 0.0},
    "low_supply_85": {"line_v": 102.0}, "low_supply_89_on_240": V240 | {"line_v": 213.6}, "high_supply_111": {"line_v": 133.2},
    "loose_line_sag": {"line_ohm": 60.0}, "loose_line_open": {"line_ohm": OPEN}, "loose_line_sag_240": V240 | {"line_ohm": 300.0},
    "wrong_tap_208_on_240": V240 | {"line_v": 208.0}, "wrong_tap_240_on_208": V208 | {"line_v": 240.0}, "wrong_tap_120_on_240": V240 | {"line_v": 120.0},
    "primary_open": {"primary_fault_ohm": OPEN}, "primary_open_track": {"primary_fault_ohm": 2e5},
    "primary_shorted_2": {"primary_shorted": 0.02}, "primary_shorted_10": {"primary_shorted": 0.1}, "primary_shorted_40": {"primary_shorted": 0.4},
    "primary_shorted_10_contact_240": V240 | {"primary_shorted": 0.1, "contact": 0.5},
    "secondary_open": {"secondary_fault_ohm": OPEN}, "secondary_open_track": {"secondary_fault_ohm": 5e4},
    "secondary_shorted_2": {"secondary_shorted": 0.02}, "secondary_shorted_10": {"secondary_shorted": 0.1}, "secondary_shorted_40": VA75 | {"secondary_shorted": 0.4},
    "protection_open": {"protection_ohm": OPEN}, "protection_open_with_short": {"protection_ohm": OPEN, "short_ohm": 0.3},
    "load_short_dead": {"short_ohm": 0.1}, "load_short_soft": {"short_ohm": 2.5}, "load_short_100va": VA100 | {"short_ohm": 0.5},
    "overload_105": {"load_ohm": 13.7}, "overload_150": {"load_ohm": 9.6}, "overload_250": {"load_ohm": 5.76}, "overload_200_480": V480 | {"load_ohm": 7.2},
    "control_open": {"break_ohm": OPEN}, "control_joint_30_ohm": {"break_ohm": 30.0}, "control_joint_8_ohm_75va": VA75 | {"break_ohm": 8.0},
}  # fmt: skip
"""Insulation faults change no volts of an ungrounded circuit, so they have no circuit here."""


def netlist(name: str, changes: dict[str, float], *, lifted: bool) -> str:
    """One circuit as ngspice takes it."""
    c = BASE | changes
    w = 2 * math.pi * 60
    ratio = c["tap_v"] / (c["rated_secondary_v"] * c["open_ratio"])
    base = c["tap_v"] ** 2 / c["rated_va"]
    k1, k2 = c["primary_shorted"], c["secondary_shorted"]
    r1, r2 = c["primary_ohm"] * (1 - k1), c["secondary_ohm"] * (1 - k2)
    pf = c["power_factor"]
    rows = [
        f"* {name}{', one secondary lead lifted' if lifted else ''}",
        f"V1 L 0 AC {c['line_v']}",
        f"RL L P {c['line_ohm']}",
        f"R1 P A1 {r1 * c['warm'] + c['primary_fault_ohm']}",
        f"L1 A1 A {r1 * c['leakage'] / w}",
        "VS1 A AX 0",
        f"E1 AX 0 E 0 {1 - k1}",
        f"F1 0 E VS1 {1 - k1}",
        f"RC E 0 {base / c['core_loss']}",
        f"LM E 0 {base / c['magnetising'] / w}",
        f"E2 S0 0 E 0 {(1 - k2) / ratio}",
        "VS2 S0 S 0",
        f"F2 E 0 VS2 {(1 - k2) / ratio}",
        f"R2 S X1 {r2 * c['warm'] + c['secondary_fault_ohm']}",
        f"L2 X1 X {r2 * c['leakage'] / w}",
    ]
    for tag, k, ohm, turns in (("K", k1, c["primary_ohm"], 1.0), ("Q", k2, c["secondary_ohm"], 1 / ratio)):
        if k:
            rows += [f"E{tag} {tag}0 0 E 0 {k * turns}", f"V{tag} {tag}0 {tag}1 0", f"F{tag} E 0 V{tag} {k * turns}"]
            rows += [f"R{tag} {tag}1 0 {k * ohm * (c['warm'] + c['contact'])}"]
    rows += [
        f"RF X F {1e11 if lifted else max(c['protection_ohm'], 1e-6)}",
        f"RW F R {c['wire_ohm'] + c['break_ohm']}",
        f"RLD R LD {c['load_ohm'] * pf}",
        f"LLD LD 0 {c['load_ohm'] * math.sqrt(1 - pf**2) / w}",
        f"RSH R 0 {c['short_ohm']}",
        *(["RM X 0 1e7"] if lifted else []),
        ".control",
        "ac lin 1 60 60",
        "print vm(P) vm(X) vm(R) vm(X,F) mag(i(V1)) mag(i(VS2))",
        ".endc",
        ".end",
    ]
    return "\n".join(rows) + "\n"


def run(text: str) -> list[float]:
    """What ngspice prints."""
    with tempfile.NamedTemporaryFile("w", suffix=".cir") as file:
        file.write(text)
        file.flush()
        out = subprocess.run(["ngspice", "-b", file.name], capture_output=True, text=True, check=False).stdout
    return [float(v) for v in re.findall(r"^\S.* = (\S+)$", out, re.MULTILINE)][-6:]


def main() -> None:
    """Write all."""
    values = {}
    for name, changes in CIRCUITS.items():
        text = netlist(name, changes, lifted=False)
        (HERE / f"{name}.cir").write_text(text)
        primary, secondary, control, fuse, amps1, amps2 = run(text)
        lifted = run(netlist(name, changes, lifted=True))[1]
        values[name] = {
            "primary_v": primary, "secondary_v": secondary, "lifted_v": lifted, "control_v": control, "protection_v": fuse,
            "primary_a": amps1, "secondary_a": amps2,
        }  # fmt: skip
    (HERE / "recorded.json").write_text(json.dumps(values, indent=1) + "\n")


if __name__ == "__main__":
    main()
