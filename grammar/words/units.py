"""Units as they are spelled in the field. `grammar/units.py` knows what each means; those of other trades are only told apart."""

from grammar.words.row import Words

UNITS = (
    Words(
        "unit", "volt",
        en=("vlts", "vots", "volts ac", "volt ac", "v ac", "volts rms"),
        es=("voltios", "voltio", "volteos"),
        both=("volts", "volt", "vac", "vdc", "vca", "acv", "vrms"),
    ),
    Words("unit", "millivolt", en=("millivolts", "millivolt"), es=("milivoltios",), both=("mv", "mvac")),
    Words("unit", "kilovolt", en=("kilovolts",), both=("kv",)),
    Words(
        "unit", "amp",
        en=("ampere", "amperes", "amps ac", "amperage", "amp draw", "current draw", "current"),
        es=("amperios", "amperio", "amperes de corriente", "amperaje"),
        both=("amps", "amp", "aac", "amper"),
    ),
    Words(
        "unit", "milliamp",
        en=("milliamps", "milliamp", "mils", "milli amps"),
        es=("miliamperios", "miliamps", "miliamperes"),
        both=("ma", "mamps"),
    ),
    Words(
        "unit", "ohm",
        en=("omhs", "ohns", "ohems", "oms", "homs"),
        es=("ohmios", "ohmio", "omios"),
        both=("ohms", "ohm", "Ω", "Ωs", "ohmz", "ohms out at", "ohmed out at", "ohms out to", "ohmed at", "ohms out around"),
    ),
    Words(
        "unit", "kiloohm",
        en=("kilohms", "kilohm", "kilo ohms", "kilo ohm", "k ohms", "k ohm", "thousand ohms", "kohms", "kohm", "kay"),
        es=("kiloohmios", "kilo ohmios", "mil ohms", "k ohmios"),
        both=("kΩ", "k Ω"),
    ),
    Words(
        "unit", "megaohm",
        en=(
            "megohms", "megohm", "meg ohms", "meg ohm", "meg", "megs", "mega ohms", "mega ohm", "m ohms", "m ohm", "mohms",
            "mohm", "megaohms", "million ohms",
        ),
        es=("megaohmios", "megohmios", "mega", "megas"),
        both=("mΩ", "m Ω", "meg Ω"),
    ),
    Words("unit", "milliohm", en=("milliohms", "milliohm"), es=("miliohmios",)),
    Words(
        "unit", "volt_ampere",
        en=("va", "volt amps", "volt amp", "vas", "volt amperes", "vee ay"),
        es=("voltiamperios", "voltamperios"),
    ),
    Words("unit", "kilovolt_ampere", both=("kva", "kilovolt amps")),
    Words("unit", "watt", en=("watts", "watt"), es=("watios", "vatios")),
    Words(
        "unit", "foot",
        en=("feet", "foot", "ft", "footer", "foot of", "feet of", "fts"),
        es=("pies", "pie"),
        both=("'", "’"),
    ),
    Words("unit", "yard", en=("yards", "yard", "yds"), es=("yardas",)),
    Words("unit", "meter", en=("meters", "metres", "metre", "mtrs"), es=("metros", "mts", "metro"), both=("mtr",)),
    Words("unit", "inch", en=("inches", "inch"), es=("pulgadas", "pulgada"), both=('"',)),
    Words("unit", "gauge", en=("gauge", "ga", "guage", "gage", "awg")),
    Words("unit", "hertz", en=("hertz", "cycles", "cycle"), es=("hercios", "hertzios", "ciclos"), both=("hz",)),
    Words(
        "unit", "celsius",
        en=("celsius", "degrees celsius", "degrees c", "deg c"),
        es=("grados celsius", "grados c", "centigrados", "grados centigrados"),
        both=("°c", "° c"),
    ),
    Words(
        "unit", "square_mm",
        en=("square millimeters", "square mm"),
        es=("milimetros cuadrados",),
        both=("mm2", "mm²", "sq mm", "mm 2", "mm^2", "mm"),
    ),
    Words(
        "unit", "not_ours",
        en=(
            "psig", "pounds", "lbs", "lb", "degrees", "degree", "deg", "fahrenheit", "degrees f", "microfarads", "microfarad",
            "uf", "mfd", "farad", "farads", "mics", "micro farads", "bucks", "dollars", "tons", "ton", "btu", "btus", "hp",
            "horsepower", "rpm", "cfm", "kw", "kilowatts", "gallons", "minutes", "minute", "mins", "min",
            "hours", "hour", "hrs", "hr", "days", "day", "weeks", "years", "year", "yrs", "months", "percent",
            "inches of water", "inwc", "in wc", "iwc", "ounces", "oz", "seer", "stories", "floors", "times", "seconds", "am",
            "pm", "cents", "times today", "more calls", "more stops", "steps", "stages", "poles", "pole", "phase", "kids",
            "guys", "of us", "microamps", "micro amps", "inch filter", "turns", "hrs ago", "flashes", "blinks", "lra", "rla",
            "fla", "boxes", "milliseconds", "fpm", "gpm", "gph", "dollar", "tubes", "screws", "bulbs",
        ),
        es=(
            "libras", "grados", "grado", "grados f", "microfaradios", "dolares", "toneladas", "caballos",
            "minutos", "horas", "hora", "dias", "semanas", "anos", "meses", "por ciento", "onzas", "millas", "veces", "vueltas",
            "servicios", "llamadas", "pesos", "pisos", "microamperios",
        ),
        both=("µf", "μf", "°", "°f", "%", "µa", "μa", "ua", "khz", "mhz", "kwh"),
    ),
)  # fmt: skip
"""Spellings that stand behind a number."""
