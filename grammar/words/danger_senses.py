"""Words of danger in another sense: they are taken out of a text before danger is looked for in it."""

from typing import Final

SENSES: Final[tuple[str, ...]] = (
    # the device, the tool or the place, not the thing
    "smoke detector|detectors|alarm|alarms|test|tests|damper|dampers|head|heads|bomb|bombs|break|pencil|signal|stack|pipe !DISARM",
    "smoke . leak_test",
    "gas station|stations|pump|pumps|furnace|furnaces|furn|pack|packs|packs|heat|heater|heaters|bill|bills|company|grill|grills|boiler|boilers|unit|units|line|lines|meter|card|money|tank|mileage|cap !LEAKS",
    "stop|stopped|stopping . for gas !LEAKS", "out of gas !LEAKS", "get|getting|need|needed|grab* gas !LEAKS",
    "shock absorber|absorbers|collar", "sticker shock", "flash light|lights", "flash|flashes|flashing|flashed code|codes|light|led|{COUNT}",
    "flash drive|memory|point|flood|flood", "arc fault|faults",
    "jump box|pack|start|starts|drive|ring|seat", "jump* in & truck|van|car|attic|call|shower", "jump* on & call|phone|roof|ladder|zoom|computer|forklift|lift",
    "jump* in|into|on|onto|to|over_to|back_in|back_on|back_to|back_into & truck|van|car|next|other_job|other_call|another|job|call|calls|site|freeway|highway|bed|conclusion*|fence|curb|ladder|attic|roof|page|phone",
    "jump* from {ODDV}|{COUNT}|{BIGV}|10|20|24|25|26|27|28|30|0", "jumps|jumped|jumping up|down . to|from|around", "reading|readings|voltage|volts|needle|numbers|number|display|amps|price|prices|temp|temps jump*|jumps . up|down|around|to|all_over|from",
    "fires|fired|firing up|off", "to|will|wont|didnt|doesnt|cant|not|fire_it|fire_her fire up", "fire it|her|this|them up", "fire* & furnace|burner|burners|boiler|gas|ignitor", "fire|fired . me|him|her|away", "get|got|gets|getting fired", "fire code|marshal|inspector|chief|guy|wall|place|alarm_guy|station|rated|stick|works", "burner* firing|lights|lighting|lit",
    "burning|burn . daylight|gas|fuel|hours", "burning . thru|through . day|hour|week|heat|afternoon", "im|me|we|us burning up", "burning . daylight|time", "sun|heat|weather|sunburn* . burn*|kill*|cook*",
    "hot|roasting|scorching . out|outside|up_here|today|day|attic|roof|in_here", "heat is killing", "killing me", "dead . tired|on|end|battery|phone", "phone . dead|died|dying|burning",
    "on fire today|lately|this_week", "burns|burnt out & bulb", "burnt . coffee|toast|food|popcorn|lunch|dinner|tacos|pizza !LIKEBURNT", "burn* . my . lunch|toast|dinner|eggs|popcorn|tongue|mouth", "smell|smells|smelling . like . coffee|lunch|bbq|barbecue|food|bacon|pizza|tacos|new|perfume|feet|dog|cat|paint|cookies|weed",
    "barbecue|bbq|grill|pizza|smoker|brisket smoke|smoking|smells", "around & corner|compressor|condenser|house|building|duct|plenum|blower", "smok* . {MEATS}", "{MEATS} smok*|was_smok*|ahumad*|ahumando", "ahumad*|ahumando|ahume & {MEATS}",
    "{OHM} . out|outside . of . circuit|loop|holder|board", "out|outside of & circuit|loop|holder|board @OHM !LEAVE !JUMPWORD", "{OHM} . fuera . del circuito|portafusible", "fuera & circuito|portafusible @OHM !LEAVE !JUMPWORD",
    "wires|cables|conductors|circuits|cables|alambres|hilos . coiled|loomed|laced|routed|run|runs|running|ran|pulled|strapped|bundled|enrollados|amarrados|corren|van|metidos . together|side_by_side|juntos . all_the_way|the_whole|whole|in_the_same|in|for|down|back|in_conduit|por|en|todo|hasta !UNUSED",
    "smoke break|smokes|pot", "smoking . brisket|meat|ribs|area|section|gun|deal|hot", "out . for . smoke", "having|have|had|take|taking|took . smoke . {RESTS}", "quit smoking", "smoke a . cigarette|joint|cigar|pack",
    "shocked . at|that|how|by_how|by_the_price|when_she_saw|when_he_saw", "shocking . price|news|bad", "im|was|were|be shocked . {WORKS}",
    "bridge rectifier|street|road|tender|club", "bridge st", "short . staffed|handed|list|day|trip|run|version|answer|story|cycle*|cycling|on", "short and sweet", "short of time",
    "dead . battery|batteries|bird|mouse|rat|wasp|bug|phone|bulb", "ground|grounds . floor|keeper|level|source|hog|crew|beef", "ground . mounted|unit", "on . ground . floor|unit|level",
    "bypass humidifier|humidifiers|duct|ducts|damper|dampers|valve|valves|filter|line|highway", "highway bypass", "float . check|this_week|holiday|trip", "root beer float", "pressure . washer|wash|cooker|test|testing|from_the_boss|drop|gauge|gauges", "under pressure . today|from",
    "limit|speed . speed|limit . is|on", "credit limit", "time limit", "code . for . door|gate|lock|lockbox", "gate|door|lock|lockbox|area|zip|promo|discount|dress code",
    "inspect* . filter|filters|coil|ladder|truck|unit|wire|wires|wiring|it|them|everything|blower|belt", "permit . parking", "parking permit|permits",
    "meter . maid|reader|parking|running", "breaker . bar", "ice breaker", "jaw breaker", "deal breaker", "wind breaker",
    "shot down|out|at|gun", "little|lil|tiny|quite_a bit", "bit & dust|bullet", "drill bit|bits",
    "hit . road|traffic|store|supply_house|lunch|me_up|me_back|me_with|me_on", "got hit . with . {BILLS}", "zap . email|text", "tired . of|look*|wire|cap|unit|fan|old", "im tired of", "flat tire|tired", "tired . blower|compressor|motor|contactor",
    "{ODDV}|{BIGV}|{LOWTAP}|{HV}|{BIGAMPS} ft|feet|foot|psi|dollars|bucks|degrees|deg|uf|mfd|rpm|cfm|miles|lbs|pounds|ohms|pies|metros|pesos|grados|tons|ton|seer|btu|microns",
    "land|landing|run|put|which|where|wheres|find .. the hot . for|from|leg|wire|go|goes|on|and",
    "contactor call", "call for . contactor",
    "hot|cool|cold|warm|burning to & touch",
    "pan|drain|trap|charola|bandeja . full|has|with|holding|got|overflow* . of . water", "water in & pan|drain|float|trap", "charola|bandeja . llena|con|tiene . agua",
    # Spanish
    "detector|detectores|alarma|alarmas . humo !DISARM", "prueba|bomba de humo", "gasolina", "gasolinera", "gasolineras", "estacion de gas", "recibo|compania|calenton|boiler|calefaccion|horno|calentador|tanque . de|del gas !LEAKS",
    "brinco|brinque|salto|brincar|subo|subi . al|a & troca|camioneta|carro|siguiente|otro", "brinca de . {ODDV}|{COUNT}|{BIGV}|10|20|24|25|26|27|28|30|0", "brinca|brinco|salta|salto . {ODDV}|{COUNT}|{BIGV}|10|20|24|25|26|27|28|30|0|entre", "quemado . del|por_el sol", "quemado|quemando|asado . calor|sol", "hace . calor . quem*", "foco|bombilla quemado|quemada|fundido|fundida",
    "huele a . comida|cafe|tacos|carne|pollo|nuevo|perro|pintura|limpio|humedad", "carne|comida|tortillas|frijoles|cafe . quem*", "sin pila|bateria", "me muero de|del", "que toque", "toque & puerta|timbre", "me toca|toco & siguiente|otro|manana|ir", "puente . peatonal|vehicular|internacional", "dia de puente", "codigo . puerta|porton|candado|postal|falla|error|parpadeo", "calle|avenida|colonia . puente|del_puente",
    "cansado de . que|esperar|esta|este|manejar", "fumando|fumar|fumo", "chispa* . buena|gran",
)  # fmt: skip
"""Turns of phrase; see `grammar/dangers/phrases.py`."""
