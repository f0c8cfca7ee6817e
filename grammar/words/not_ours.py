"""What belongs to another trade or to life: numbers near these words are none of ours."""

from grammar.words.row import Words

NOT_OURS = (
    Words(
        "notours", "pressure",
        en=(
            "suction", "head", "discharge", "head pressure", "suction pressure", "discharge pressure", "pressure", "pressures",
            "psi", "superheat", "sh", "subcool", "subcooling", "sc", "subcooled", "delta t", "delta", "td", "split", "static",
            "esp", "wc", "manifold", "manifold pressure", "charge", "refrigerant", "low side", "liquid line", "suction line", "line set", "lineset", "drain line", "condensate line", "primary drain", "secondary drain", "primary drain pan", "secondary drain pan", "secondary pan", "drain pan", "primary heat exchanger", "secondary heat exchanger", "heat exchanger", "gas line", "line cook", "line item",
            "vapor line", "gauges", "gas pressure", "inlet pressure", "evap", "vacuum", "micron", "microns", "leak rate",
        ),
        es=(
            "la alta", "la baja", "succion", "descarga", "presion", "presiones", "sobrecalentamiento", "subenfriamiento", "recalentamiento",
            "refrigerante", "alta y baja", "presion de gas", "manometros",
        ),
    ),
    Words(
        "notours", "temperature",
        en=(
            "outside", "outdoor", "outdoors", "outside air", "inside", "indoor", "ambient", "supply air", "return air",
            "return", "supply temp", "return temp", "setpoint", "set point", "temp", "temperature", "temps", "weather",
            "in the house", "in the attic", "in the shade", "attic", "in here", "up here", "heat index", "wet bulb", "dry bulb",
            "oat", "humidity", "rh", "thermometer", "feels like", "set at", "stat set", "in the store", "in the building",
            "in the office", "up on the roof", "roof", "on the roof", "degrees out", "upstairs", "downstairs", "discharge air",
            "leaving air", "entering air", "airflow",
        ),
        es=(
            "afuera", "adentro", "temp de salida", "temp de retorno", "temperatura de salida", "temperatura de retorno", "retorno", "aire de salida", "aire de retorno", "temps", "temperatura", "temp ambiente", "ambiente", "el atico", "en el atico", "en la casa",
            "en el techo", "techo", "retorno de aire", "aire de suministro", "humedad", "hace calor", "el clima",
        ),
    ),
    Words(
        "notours", "contact",
        en=(
            "call me", "text me", "phone", "cell", "call me at", "reach me", "my number", "phone number", "office number",
            "address", "gate", "fax", "call her", "call him", "call the office", "meet me", "call back", "their number",
            "his number", "her number", "customer's number", "call me back",
        ),
        es=(
            "llamame", "llamame al", "telefono", "celular", "mi numero", "direccion", "marcame", "marcame al",
            "mandame mensaje", "llama al", "su numero", "hablame al", "llame al",
        ),
    ),
    Words(
        "notours", "time",
        en=(
            "since", "o clock", "lunch", "tomorrow", "today", "tonight", "yesterday", "morning", "afternoon", "monday",
            "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", "overtime", "appointment", "eta", "arrive",
            "be there by", "there at", "until", "til", "till", "by noon", "left at", "got here at", "year old", "years old",
            "installed in", "built in", "old",
        ),
        es=(
            "desde las", "a las", "manana", "hoy", "ayer", "lunes", "martes", "miercoles", "jueves", "viernes", "sabado",
            "domingo", "llego a las", "las", "tarde", "almuerzo", "cita",
        ),
    ),
    Words(
        "notours", "part",
        en=(
            "part #", "model number", "model #", "serial number", "serial #", "sku", "catalog number", "warehouse",
            "supply house", "counter", "price", "costs", "cost", "quoted", "invoice #", "warranty", "sold", "list price",
            "their price", "charged", "bill", "paid", "stock",
        ),
        es=(
            "pieza #", "numero de modelo", "numero de serie", "precio", "cuesta", "costo", "cotice", "garantia", "almacen",
            "vale", "factura #", "mostrador", "cobre por",
        ),
    ),
    Words(
        "notours", "motor",
        en=(
            "compressor", "comp", "scroll", "compressors", "motor", "motors", "fan motor", "condenser fan", "cond fan", "blower",
            "blower motor", "fan", "ofm", "ifm", "indoor fan", "outdoor fan", "inducer", "inducer motor", "crankcase heater",
            "heat strip", "heat strips", "strip heat", "heater kit", "elements", "element", "igniter", "hsi", "flame",
            "flame signal", "flame sensor", "flame current", "flame rod", "inverter", "ecm", "condenser", "start winding",
            "run winding", "common winding", "defrost thermistor", "thermistor", "pump motor", "fla on the motor", "evaporator",
            "furnace", "combustion motor",
        ),
        es=(
            "compresor", "condensadora", "la condensadora", "manejadora", "compresores", "motor del abanico", "abanico", "ventilador", "motor del ventilador", "soplador",
            "motor del compresor", "condensador del abanico", "resistencia de calefaccion", "calentador", "ignitor",
            "sensor de flama", "flama", "termistor", "inductor", "turbina", "blower",
        ),
    ),
    Words(
        "notours", "capacitor",
        en=(
            "cap", "caps", "capacitor", "capacitors", "run cap", "start cap", "dual cap", "run capacitor", "start capacitor",
            "dual run cap", "herm", "herm side", "fan cap", "cap reads",
        ),
        es=("capacitores", "condensador", "capacitor de arranque", "capacitor de marcha"),
    ),
    Words(
        "notours", "signal",
        en=(
            "econ signal", "signal", "0-10v", "0-10", "0 to 10", "0 to 10v", "0 - 10 v", "2-10v", "2-10", "4-20", "4-20ma",
            "control signal", "analog", "analog output", "analog input", "modulating signal", "vfd", "drive", "rs485",
            "dc volts", "dc", "vdc bus", "battery", "batteries", "bms", "thermocouple", "thermopile", "pilot",
            "millivolt system", "dc bus", "doorbell button", "phantom", "stat batteries", "output signal", "hz drive",
            "comm bus", "data line", "speed signal",
        ),
        es=(
            "senal", "senal de control", "variador", "bateria", "baterias", "pila", "pilas", "piloto", "termopila",
            "senal analoga",
        ),
    ),
    Words(
        "notours", "person",
        en=(
            "tech", "boss", "helper", "customer", "lady", "guy", "years experience", "tip", "miles", "filters", "filter size",
            "filter", "foot ladder", "bags", "customers", "tickets", "stops", "calls", "coffee", "tacos", "beers", "burgers",
            "size filter",
        ),
        es=("cliente", "jefe", "ayudante", "senora", "senor", "filtro", "escalera", "comida", "propina", "cafecito"),
    ),
)  # fmt: skip
"""Places that are none of ours: a value bound to one of them is kept in the log as it was sent."""
