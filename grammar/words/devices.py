"""Devices on a control circuit, by their English names in every language."""

from grammar.words.row import Words

DEVICES = (
    Words(
        "device", "contactor",
        en=(
            "contactor", "contactors", "contacter", "contacters", "condenser contactor", "compressor contactor",
            "2 pole contactor", "two pole contactor",
        ),
        es=("contactores", "contactor del compresor", "contactador"),
    ),
    Words(
        "device", "relay",
        en=(
            "relay", "relays", "control relay", "ice cube relay", "isolation relay", "general purpose relay", "lockout relay",
            "time delay relay",
        ),
        es=("relevador", "relevadores", "rele", "reles"),
    ),
    Words(
        "device", "fan relay",
        en=("fan relay", "fan relays", "blower relay", "indoor fan relay"),
        es=(
            "relay del abanico", "rele del ventilador", "relevador del ventilador", "relay del ventilador",
            "relevador del abanico",
        ),
    ),
    Words("device", "inducer relay", en=("inducer relay", "draft relay"), es=("relay del inductor",)),
    Words(
        "device", "heat relay",
        en=("heat relay", "heat relays", "electric heat relay", "aux heat relay"),
        es=("relay de calefaccion",),
    ),
    Words("device", "sequencer", en=("sequencer", "sequencers", "heat sequencer"), es=("secuenciador", "secuenciadores")),
    Words(
        "device", "thermostat",
        en=(
            "thermostat", "thermostats", "stat", "stats", "tstat", "t-stat", "tstats", "t stat", "smart stat",
            "smart thermostat", "wifi stat", "wifi thermostat", "wi-fi thermostat", "t'stat", "programmable stat",
        ),
        es=("termostato", "termostatos", "termo"),
    ),
    Words(
        "device", "gas valve",
        en=("gas valve", "gas valves", "gas vlv"),
        es=("valvula de gas", "valvulas de gas", "valvula del gas"),
    ),
    Words("device", "zone valve", en=("zone valve", "zone valves", "zone vlv"), es=("valvula de zona", "valvulas de zona")),
    Words(
        "device", "reversing valve",
        en=("reversing valve", "reversing valves", "rev valve", "rv coil", "rv solenoid", "reversing valve solenoid", "rv"),
        es=(
            "valvula reversible", "valvula reversa", "valvula de reversa", "valvulas de reversa", "valvula inversora", "valvula reversora",
            "valvulas inversoras", "valvulas reversibles",
        ),
    ),
    Words(
        "device", "solenoid valve",
        en=(
            "solenoid valve", "solenoid valves", "solenoid", "solenoids", "water valve", "water valves", "liquid line solenoid",
        ),
        es=("valvula solenoide", "solenoide", "valvulas solenoides", "valvula de agua"),
    ),
    Words(
        "device", "zone board",
        en=(
            "zone board", "zone boards", "zone panel", "zone control", "zone controller", "zoning board", "zone panels",
            "zoning panel",
        ),
        es=("tarjeta de zonas", "panel de zonas", "tarjeta de zona", "tablero de zonas", "tablilla de zonas"),
    ),
    Words(
        "device", "board",
        en=(
            "board", "boards", "control board", "furnace board", "circuit board", "bd", "brd", "pcb", "ifc", "control boards",
            "main board", "fan board", "air handler board", "ah board", "mainboard",
        ),
        es=(
            "tarjeta", "tarjetas", "tarjeta de control", "tablilla", "tarjeta electronica", "placa", "tarjeta madre",
            "tarjeta principal",
        ),
    ),
    Words(
        "device", "defrost board",
        en=("defrost board", "defrost control", "defrost boards"),
        es=("tarjeta de deshielo", "tarjeta de descongelamiento", "tablilla de deshielo", "tarjeta del deshielo"),
    ),
    Words(
        "device", "ignition control",
        en=("ignition control", "ignition module", "ignition controls", "igniter control", "hot surface igniter module"),
        es=("modulo de ignicion", "modulo de encendido", "control de ignicion", "control de encendido"),
    ),
    Words(
        "device", "humidifier",
        en=("humidifier", "humidifiers", "humidifer", "humidifier valve", "bypass humidifier", "humidifier solenoid"),
        es=("humidificador", "humidificadores"),
    ),
    Words(
        "device", "damper",
        en=(
            "damper", "dampers", "zone damper", "zone dampers", "damper motor", "damper actuator", "fresh air damper",
            "damper motors", "damper actuators", "bypass damper", "zone dampers motors",
        ),
        es=("compuerta", "compuertas", "damper de zona", "actuador de compuerta"),
    ),
    Words(
        "device", "economizer",
        en=("economizer", "economizers", "economiser", "econ", "econ actuator", "econ motor", "economizer actuator", "economizer board", "economizer module"),
        es=("economizador", "economizadores"),
    ),
    Words(
        "device", "condensate pump",
        en=("condensate pump", "condensate pumps"),
        es=("bomba de condensado", "bomba de condensados", "bombas de condensado"),
    ),
    Words(
        "device", "smoke detector",
        en=("smoke detector", "smoke detectors", "duct detector", "duct smoke detector", "duct detectors"),
        es=("detector de humo", "detectores de humo"),
    ),
    Words("device", "air cleaner", en=("air cleaner", "electronic air cleaner", "air cleaners", "air purifier"), es=("purificador", "filtro electronico", "limpiador de aire")),
    Words("device", "uv lamp", en=("uv lamp", "uv light", "uv lights"), es=("lampara uv", "luz uv")),
    Words("device", "doorbell", en=("doorbell", "door bell", "chime", "doorbells"), es=("timbre", "timbres")),
    Words("device", "sensor", en=("sensor", "sensors", "outdoor sensor", "temp sensor", "co2 sensor"), es=("sensores",)),
    Words("device", "actuator", en=("actuator", "actuators"), es=("actuador", "actuadores")),
    Words(
        "device", "float switch",
        en=("float switch", "float", "float switches", "wet switch", "safety float", "float sw", "floats"),
        es=("flotador", "interruptor de flotador", "switch del flotador", "flotadores"),
    ),
    Words(
        "device", "limit switch",
        en=(
            "limit", "limit switch", "high limit", "rollout", "rollout switch", "roll out switch", "limits", "limit sw",
            "high limit switch", "rollouts",
        ),
        es=("limite", "interruptor de limite", "limite de alta", "switch de limite"),
    ),
    Words(
        "device", "pressure switch",
        en=(
            "pressure switch", "high pressure switch", "low pressure switch", "hpc", "lpc", "pressure switches", "press switch",
            "hi pressure switch", "lp switch", "hp switch", "prs switch", "psw",
        ),
        es=(
            "presostato", "presostatos", "interruptor de presion", "switch de presion", "presostato de alta",
            "presostato de baja", "switch de alta", "switch de baja",
        ),
    ),
    Words(
        "device", "door switch",
        en=("door switch", "door interlock", "blower door switch"),
        es=("interruptor de la puerta", "switch de la puerta", "interruptor de puerta", "switch de puerta"),
    ),
    Words(
        "device", "switch",
        en=(
            "switch", "switches", "safety", "safeties", "safety switch", "toggle", "sail switch", "contacts", "contact",
            "safety switches", "humidistat",
        ),
        es=("interruptor", "interruptores", "seguridad", "seguro", "contactos", "platinos"),
    ),
)  # fmt: skip
"""The devices. Those that interrupt and draw nothing are in `SWITCHES`."""


SWITCHES = frozenset({"float switch", "limit switch", "pressure switch", "door switch", "switch"})
"""Volts across these are none of our measures, and they are no load."""

COILS = frozenset(
    {
        "contactor",
        "relay",
        "fan relay",
        "inducer relay",
        "heat relay",
        "sequencer",
        "gas valve",
        "zone valve",
        "reversing valve",
        "solenoid valve",
    }
)
"""Devices that are a coil: volts and ohms at them are the coil's."""

BOARDS = frozenset({"thermostat", "board", "zone board", "defrost board", "ignition control"})
"""Devices whose volts are those of R to C."""
