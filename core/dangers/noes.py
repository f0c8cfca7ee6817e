"""What must not be done: refused with the word no, and the safe way to the same end."""

from typing import Final

from core.dangers.danger import Danger
from core.said import Said, say
from core.standards.electrical_safety import (
    CONTROLS_ARE_NO_LOCKOUT,
    DE_ENERGISE,
    FUSES_AS_DESIGNED,
    LIVE_WORK_TOOLS,
    QUALIFIED,
    RESET_AFTER_TRIP,
    STORED_ENERGY,
    TEST_INSTRUMENTS,
    VERIFY_DEAD,
    WET_HANDS,
)
from core.standards.insulation import WIRING
from core.standards.source import COMMON_PRACTICE, Source

CLASS_2_FUSE: Final = Source("NEC", "chapter 9, table 11(A)", "numbers from memory")
CLASS_2_APART: Final = Source("NEC", "725.121(B)")
GROUNDED: Final = Source("29 CFR 1926.404", "(f)(1)(iii); NEC 250.20(A)")
CLASS_2_WIRE: Final = Source("NEC", "725.136 and 725.154", "from memory")
FURNACE_LIMITS: Final = Source("NFPA 54, National Fuel Gas Code", "safety shutoff devices", "from memory")
ALARMS: Final = Source("NFPA 72", "impairments", "from memory")


def _no(name: str, says: Said, instead: Said, trigger: str, source: Source, *cautions: str) -> Danger:
    return Danger(name=name, kind="no", says=says, instead=instead, trigger=trigger, source=source, cautions=cautions)


NOES: Final = (
    _no(
        "ohms_live",
        say("No. No ohms on anything live: the meter can blow up in your hand"),
        say("Read volts, or lock out, prove dead, lift the leads, then read ohms"),
        "ohms or continuity on a part that is still powered",
        DE_ENERGISE,
        "prove_dead",
    ),
    _no(
        "tap_too_low",
        say("No. Power off: this tap is far below the supply, and its volts burn the controls"),
        say("Land the lead marked for this supply, cap the others singly"),
        "a supply of 1.4 times the tap in use or more, from words or readings",
        COMMON_PRACTICE,
        "double_volts",
    ),
    _no(
        "backfeed",
        say("No. 24 V into the secondary puts line voltage on the primary leads"),
        say("Power off. Feed a fused 24 V across the primary instead and read the few volts out, secondary free"),
        "24 V fed into a secondary; or readings: line dead and primary live, or primary dead and secondary live",
        VERIFY_DEAD,
        "backfeed",
    ),
    _no(
        "no_meter_for_it",
        say("No. That meter or those leads stay off line voltage"),
        say("Use sound leads and a meter marked CAT III 600 V, proved on a live source first"),
        "a meter without category or too low a one, damaged leads or case",
        TEST_INSTRUMENTS,
        "meter_category",
    ),
    _no(
        "proximity_only",
        say("No. A pen tester does not prove dead"),
        say("Use a contact meter: live source, these terminals, live source again"),
        "a proximity tester as the only proof of dead",
        VERIFY_DEAD,
        "prove_dead",
    ),
    _no(
        "control_as_lockout",
        say("No. A thermostat, switch or float is no lockout: the line side stays live"),
        say("Disconnect or breaker off, your lock and tag on it, then prove dead at the terminals"),
        "work with only the thermostat, a switch or the call off",
        CONTROLS_ARE_NO_LOCKOUT,
        "lock_out",
        "prove_dead",
    ),
    _no(
        "no_lockout",
        say("No. Not without a lock: somebody can switch it on while you are in it"),
        say("Disconnect off, your lock and tag on it, key in your pocket, then prove dead"),
        "no lockout, no tag, the breaker left unlocked",
        STORED_ENERGY,
        "lock_out",
        "prove_dead",
    ),
    _no(
        "skip_proving",
        say("No. Off is not dead until you have measured it"),
        say("Prove dead: live source, these terminals, live source again"),
        "dead taken on trust: not tested, not checked",
        VERIFY_DEAD,
        "prove_dead",
    ),
    _no(
        "work_live",
        say("No. Live is for measuring only, never for wiring or swapping"),
        say("Disconnect off, lock out, prove dead. It costs the customer five minutes"),
        "wiring or swapping with the power on",
        DE_ENERGISE,
        "lock_out",
        "prove_dead",
    ),
    _no(
        "wet",
        say("No. Nothing live in the wet"),
        say("Power off at the disconnect. Wait until roof, unit and hands are dry"),
        "rain, a wet roof, standing water, wet hands",
        WET_HANDS,
    ),
    _no(
        "metal_ladder",
        say("No. No metal ladder near live parts"),
        say("Fiberglass ladder, or power off and locked out first"),
        "a metal or aluminum ladder",
        LIVE_WORK_TOOLS,
    ),
    _no(
        "unqualified",
        say("No. Nobody without training puts a hand or a meter in there"),
        say("Power off, cover on. A qualified technician does it"),
        "a homeowner, child or untrained helper at it",
        QUALIFIED,
        "licensed_hand",
    ),
    _no(
        "bypass_gas_safety",
        say("No. That limit keeps fire and fumes out of the house: it stays in the circuit"),
        say("Find why it opens: airflow, filter, blocked flue, burners. Leave the gas off until then"),
        "a limit, rollout, flame or draft safety bypassed, or 24 V straight on the gas valve",
        FURNACE_LIMITS,
        "no_bypass",
    ),
    _no(
        "bypass_float",
        say("No. The float stays in: bypassed, the pan floods the ceiling"),
        say("Clear the drain and the pan. If the float is bad, fit a new one"),
        "a float or condensate switch bypassed",
        COMMON_PRACTICE,
        "no_bypass",
    ),
    _no(
        "bypass_pressure",
        say("No. The pressure switch stays in: it guards the compressor and you"),
        say("Put gauges on and find why it opens. If the switch is bad, fit a new one"),
        "a high, low or air pressure switch bypassed",
        COMMON_PRACTICE,
        "no_bypass",
    ),
    _no(
        "bypass_freeze",
        say("No. The freeze switch stays in: the coil bursts without it"),
        say("Find the cold: airflow, charge, water flow. If the switch is bad, fit a new one"),
        "a freeze switch or freezestat bypassed",
        COMMON_PRACTICE,
        "no_bypass",
    ),
    _no(
        "defeat_interlock",
        say("No. The door switch stays in when you leave, and no hands go in past it live"),
        say("Power off and locked out to work inside. A live reading: one hand, cover back at once"),
        "a door or panel interlock taped, tied or jumped",
        CONTROLS_ARE_NO_LOCKOUT,
        "no_bypass",
    ),
    _no(
        "disable_alarm",
        say("No. A smoke or CO alarm is never silenced for good"),
        say("Find what sets it off. The owner and the fire authority decide on any outage"),
        "a smoke or CO detector disabled",
        ALARMS,
        "local_code",
    ),
    _no(
        "bypass_fuse",
        say("No. A bridged fuse burns the transformer, the board or the house"),
        say("Put a 24 V lamp or a resettable 3 A breaker in its place until the short is found, then the same fuse"),
        "a fuse or breaker jumped, wired over, foil, penny or nail in it",
        FUSES_AS_DESIGNED,
        "find_the_short_first",
        "no_bypass",
    ),
    _no(
        "bigger_fuse",
        say("No. A bigger fuse lets the wire and the transformer burn first"),
        say("Same size back, 3 A at most on 24 V unless the board says otherwise. Find the short first"),
        "a bigger fuse, from words or from `fuse_amps`",
        CLASS_2_FUSE,
        "no_bigger_fuse",
        "find_the_short_first",
    ),
    _no(
        "bigger_breaker",
        say("No. A bigger breaker lets the wire burn in the wall"),
        say("Same size as the wire and the nameplate allow. Find what trips it"),
        "a bigger breaker",
        FUSES_AS_DESIGNED,
        "no_bigger_fuse",
    ),
    _no(
        "keep_resetting",
        say("No. No more resets: each one feeds the fault again"),
        say("Leave it off, lock out, prove dead, read ohms to ground and R to C, find the fault"),
        "a breaker or fuse reset or replaced again and again, or held in",
        RESET_AFTER_TRIP,
        "find_the_short_first",
    ),
    _no(
        "energise_into_short",
        say("No. Not before the short is found: it burns the new one too"),
        say("Power off, R lifted: read ohms R to C. Then split the circuit wire by wire"),
        "a new transformer or fuse powered up before the short is found",
        RESET_AFTER_TRIP,
        "find_the_short_first",
    ),
    _no(
        "leave_jumper",
        say("No. No jumper stays in when you leave"),
        say("Fit the part, or leave the unit off and tagged and tell the customer why"),
        "a jumper or bypass left in place",
        COMMON_PRACTICE,
        "no_bypass",
    ),
    _no(
        "parallel_class2",
        say("No. Two Class 2 outputs are not joined unless listed for it"),
        say("Split the load, each supply its own, or fit one that carries it all"),
        "two 24 V transformers or outputs paralleled or tied together",
        CLASS_2_APART,
        "class2_no_interconnect",
    ),
    _no(
        "remove_ground",
        say("No. The ground stays: without it a fault waits for a hand"),
        say("Leave every ground on. Lift a bond only dead and for a test, and land it again"),
        "an equipment ground, ground prong or required bond removed",
        GROUNDED,
        "local_code",
    ),
    _no(
        "megohm_on_boards",
        say("No. A megohm test on a connected board or thermostat kills it"),
        say("Power off, unplug board and thermostat, then test the bare winding or cable"),
        "a megohm tester on a circuit with boards",
        WIRING,
        "no_megohm_on_boards",
    ),
    _no(
        "short_capacitor",
        say("No. No screwdriver across a capacitor"),
        say("Power off, wait a minute, bleed it through a 20 kilohm, 2 W resistor or more, and measure under 50 V"),
        "a capacitor shorted with a tool, or touched charged",
        STORED_ENERGY,
        "discharge_capacitor",
    ),
    _no(
        "push_contactor",
        say("No. No hand or stick on a contactor: it closes on line voltage and past every safety"),
        say("Give it 24 V on the coil, covers on, you at the disconnect"),
        "a contactor pushed or held in by hand",
        LIVE_WORK_TOOLS,
    ),
    _no(
        "wrong_wire",
        say("No. Thermostat wire never carries line voltage"),
        say("Line voltage in wire rated for it, in its own conduit, apart from the 24 V"),
        "thermostat cable on line voltage, or both in one raceway",
        CLASS_2_WIRE,
        "local_code",
    ),
    _no(
        "outside_rating",
        say("No. Not outside its nameplate: volts, VA or place"),
        say("Fit one whose nameplate carries this supply and this load"),
        "a transformer on a supply or load that its nameplate does not carry",
        Source("NEC", "110.3(B)", "from memory"),
    ),
    _no(
        "bare_ends",
        say("No. Unused leads are live: none stays bare or bundled"),
        say("Power off, cap each one singly"),
        "unused primary leads left bare or joined",
        Source("NEC", "110.14(B)", "from memory"),
        "cap_unused_leads",
    ),
)
"""The worst first."""
