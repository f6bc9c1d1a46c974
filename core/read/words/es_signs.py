"""Spanish, signs and the flow as people tell them in turns of phrase: rows put together from alternatives.

Source: common practice; the signs are those of the reading contract. Nothing here diagnoses.
"""

from typing import Final

from core.read.glossary import GlossRow

# fmt: off
ROWS: Final[tuple[GlossRow, ...]] = (
    # chest
    ("squeezing", "apretara, apretaran, apretaba, apretaban, apretasen, apretón, apretones, estrujaran, oprimiera, oprimieran, exprimieran, aplastara, aplastaran, aplastan, aplasta, aplastando, comprime, comprimen, comprimiera, estrangula, estrangulan, agarrara, agarraran, retuerce, retorciera, pisara, pisaran"),
    ("belt", "cinturón, faja, cincha, tenaza, tenazas, torno, garra, mano gigante"),
    ("chest tightness", "pecho se_me|se|me encoge|encogía|cierra|cerraba|agarra|agarraba|comprime|pesa|pesaba|quema|quemaba|arde|ardía|tensa, me|se_me pesa|quema|arde|agarra|comprime|retuerce|encoge|cierra el|todo_el pecho|tórax|esternón, algo me aprieta|oprime|pesa|agarra en_el|el pecho|corazón|esternón|tórax, pecho encogido|cerrado, presión|opresión|quemazón|ardor|fuego|malestar|angustia|nudo|tirantez|rigidez detrás|debajo|encima|dentro del|el pecho|esternón|tórax, quemazón|ardor|dolor|molestia|pinchazo|pinchazos|punzada|punzadas detrás|debajo|encima|dentro|por del|el|medio|mitad esternón|tórax|corazón|pecho"),
    ("chest tightness", "apretara|apretaran|apretasen|apretaba|apretaban|aprieta|aprietan|apretando|oprime|oprimen|oprimiera|oprimieran|estruja|estrujara|estrujaran|aplasta|aplastara|aplastaran|pisa|pisara|comprime|comprimiera me| el|mi|todo_el pecho|tórax|esternón"),
    ("weight on my chest", "ladrillo|ladrillos|piedra|yunque|saco|coche|camión|armario|vaca|caballo|bloque|plomo en|encima|sobre del|el pecho, alguien|persona| se|está|estuviera|estuviese| sentado|sentada|subido|subida|pisando en|encima|sobre|| del|el pecho"),
    # breath
    ("cant breathe", "sin poder| respirar| hondo|bien|a fondo, no me entra|llega|pasa| el| aire, no lleno|llena los pulmones, me quedo|quedé|quedaba sin aire|respiración|resuello, no puedo|consigo|logro coger|tomar|meter|respirar aire|hondo|profundo|a_fondo, me ahogo|ahogué|asfixio|asfixié, ahogo que, sensación de ahogo|asfixia, me cuesta|costaba|cuesta mucho coger|tomar|respirar| aire|oxígeno, respiro|respiraba como_un_pez|por_una_pajita|a_medias|fatal|muy_mal|cortado|a_trompicones, se me corta|cortó|acaba|acabó el|la aire|respiración|aliento, falta de aire, falta el|la aire|respiración"),
    # faint
    ("nearly fainted", "me|casi_me da|dio|daba|ha_dado un|una vahído|yuyu|pájara|lipotimia|desmayo|patatús|soponcio|telele|síncope|bajón_de_tensión|bajón_de_azúcar|mareo, casi me quedo tieso|frito|en_el_sitio, se me va|fue|iba la_olla|el_conocimiento, se me apagaron|fueron|apagó las|la luces|luz, me puse|quedé|he_puesto blanco|blanca|pálido|pálida como, me agarré|sujeté|apoyé a|en la pared|máquina|barra para no caerme, casi me caigo al suelo|redondo|de bruces, se me doblaron las piernas y caí"),
    ("vision went black", "todo| se| me| puso|pone|ponía|volvió negro|oscuro|borroso|gris|a_negro|en_blanco, se me puso|pone|ponía todo negro|borroso|oscuro|gris, lo veía|veo|vi todo| borroso|negro|doble|oscuro|gris, vi|veo|veía|viendo|he_visto chiribitas|estrellas|estrellitas|lucecitas|puntitos|puntos|manchas|destellos|lucecillas, se me apaga|apagó|va|fue|nubla|cierra la vista|visión, visión de|en túnel, fundido a negro"),
    ("dizzy", "la_sala|la_habitación|el_gimnasio|el_suelo|el_techo|el_mundo|la_cabeza me|se|| da|daba|mueve|movía|mueven| vueltas, todo me|se da|daba|daban|movía|mueve vueltas, como en un barco, como borracho al levantarme, inestable al andar|levantarme, piernas de gelatina y mareo"),
    # heart
    ("racing", "va|iba|late|latía|como un|una loco|moto|tambor|caballo|locomotora, me va|iba como una|un| loco|loca|moto|tambor, como loco, a toda leche|pastilla|mecha|hostia|máquina, a todo trapo|gas, se me sale|salía del_pecho|por_la_boca, al galope, galopa, galopaba, pum pum, se me| dispara|disparó|disparaba, se pone|puso a mil|cien|doscientos, a doscientos, como una locomotora, retumba, retumba en los oídos"),
    ("skipping beats", "pega|pegó|hace|hizo|da|dio|dando|haciendo|pegando un|unos| vuelco|vuelcos|brinco|brincos|salto|saltos|saltitos|extraños|tumbos|parones|pausas|volteretas|vueltas_de_campana, se saltaba|come|pierde algún|un|el latido|latidos, late|latía raro|mal|descompasado|a_destiempo|irregular|cuando_quiere|como_quiere, va|iba a trompicones|saltos|destiempo|su_bola"),
    # nerve
    ("numb", "acorchamiento, acolchado, acolchada, como de corcho|madera|trapo|goma, no siento nada en|de, no noto nada en, sin sensibilidad, sin tacto, perdí|perdido|pierdo la| sensibilidad|tacto|sensación, se me quedó|queda|quedan|quedaron|ha_quedado|han_quedado dormid*|muert*|insensibles|tont*"),
    ("tingling", "hormigas, hormiguillo, alfileres, alfileretazos, agujitas, cosquillas raras, burbujeo"),
    ("lost strength", "flojea, flojean, flojera, se me va la pierna, se me dobla sola, se me afloja, no hace lo que quiero, no me obedece, no obedece, no me hace caso, como muert*, se queda sin fuerza, sin fuerza en, ha perdido fuerza, pierde fuerza, pierdo fuerza"),
    ("foot drags", "arrastro el pie, arrastrando el pie, se me cae el pie, me cuelga el pie, se me arrastra el pie, tropiezo con mi propio pie, no puedo levantar la punta del pie, me tropiezo con la punta del pie, arrastro la pierna"),
    ("keep dropping things with my hand", "se me caen|cae|cayó|resbalan las_llaves|la_taza|el_vaso de|, no puedo|consigo sostener|agarrar|sujetar|coger el|la|las|un|una vaso|taza|llaves|bolígrafo|tenedor"),
    ("electric shock down my leg", "calambre|corriente|rayo|latigazo|descarga|chispazo|dolor que|me| me| baja|bajó|recorre|corre|va|sube por|desde|hasta|del toda| la|el| pierna|glúteo|pie|culo|nalga|talón"),
    # bladder, urine
    ("wet myself", "no controlo el|la|mi|bien|cuando| cuando| pis|pipí|orina|vejiga|caca|hago_pis|hago_pipí|meo|orino, se me escapa|escapó|sale|salió|va|fue|escapan|ha_escapado el|un|algo|unas|la|de|poco|poquito|gotas|chorrito| de| pis|pipí|orina|meada, mojé|mojado|mojo el|los|las|la| pantalón|pantalones|bragas|mallas|calzoncillos|cama, no aguanto|aguanté|retengo|retuve el|la pis|pipí|orina, pérdidas de orina, incontinencia, incontinente, me meo|meé sin_darme_cuenta|sin_enterarme|al_levantar"),
    ("no feeling between my legs", "no siento|noto|me_siento nada|la|el|las|mi| ahí_abajo|entrepierna|ano|culo|periné|partes|genitales, no noto|siento cuando|si meo|orino|hago_pis|hago_caca|tengo_ganas, no me entero cuando meo|hago_pis|orino"),
    ("cant pee", "no me sale|salió ni| gota|nada al| mear|orinar|, no puedo vaciar la vejiga, horas|rato sin poder mear|orinar|hacer_pis, intento mear|orinar y nada|no_sale, ganas de mear|orinar y no sale"),
    ("numb down there", "zona de la silla de montar dormida|insensible, dormid* ahí abajo, ahí abajo dormido|dormida"),
    ("like cola", "color|colores de|del|a|como| coñac|ron|whisky|brandy|cerveza_negra|coca_cola|refresco_de_cola|óxido|ladrillo|teja|caramelo|chocolate|granate|sangre|vino_tinto|café_con_leche|café_solo|vino|ámbar, como|parece|parecía coñac|vino|ron|whisky|barro|óxido|refresco|caldo|salsa_de_soja"),
    # head
    ("worst headache", "dolor|dolores|pinchazo de|en_la cabeza tremendo|bestial|horroroso|terrible|espantoso|atroz|de_golpe|de_repente|súbito|repentino|como_un_trueno|como_un_martillazo|como_nunca, peor dolor, me revienta|revientaba|explota|explotó|estalló|estallaba|parte la|el cabeza|cráneo, martillazo|hachazo|bombazo|latigazo|trueno en la cabeza, como si me explotara|reventara|partieran la cabeza"),
    ("hit my head", "me| ha_caído|cayó|dio|caído un|una|el|la disco|barra|mancuerna|pesa|kettlebell en|sobre la cabeza|frente|coronilla, cabezazo contra|con|en, me abrí|he_abierto la cabeza|ceja|frente, me comí la barra, chichón, me di contra el|la rack|barra con la cabeza, con la cabeza contra|en la|el barra|rack"),
    ("slurring my words", "hablo|hablaba|hablando como| un| borracho, se me enreda|enredaba|lía la lengua, no me salían|salen las palabras|frases, no encuentro|encontraba las palabras, hablo|hablaba raro|fatal"),
    ("seeing double", "veo|veía|vi|viendo doble|dos_barras"),
    ("face is numb and hand is numb", "se me durmió|duerme|ha_dormido media|la cara y la|una mano"),
    ("face is numb", "se me durmió|duerme|ha_dormido|adormeció|entumeció media|la|un_lado_de_la cara|boca, media cara entumecida|acorchada"),
    # injury
    ("felt a pop", "me|que| hizo|hace|ha_hecho|hacía crac|crack|clac|clic|chas|plop|pop|ras|crec|clack|pum|plof, sonó|suena|sonido|ruido un|como_un|como|de| crac|crack|crujido|desgarro|rama|latigazo|disparo, oí|escuché|noté|sentí|he_notado un|como_un crac|crack|clac|latigazo|pop|tiro|estallido, crac en|del|, dio|pegó|ha_dado un crujido|chasquido|estallido|latigazo fuerte|"),
    ("something tore", "se me| ha| rasgó|rasgado|desgarró|reventó|reventado|soltó|soltado|salió|salido algo|el_bíceps|el_pectoral|el_músculo|el_tendón, se me subió|ha_subido el bíceps, bola en el bíceps|brazo|muslo, algo se soltó|rasgó|partió|desgarró|salió"),
    ("arm is useless", "brazo|hombro|mano cuelga|colgando|inútil, no puedo usar|levantar|mover el|la brazo|mano|pierna"),
    # swelling
    ("swollen", "se_me|se|está| ha|| puesto|pone|puso|poniendo gord*|enorm*|gigante|deforme|inmens*, se_me|se ha|| puesto|pone|puso como una|un bota|pelota|melón|porra|botijo|morcilla|salchicha|naranja|balón|globo|jamón|tronco de|| gord*|, como una|un bota|pelota|melón|porra|botijo|morcilla|salchicha|naranja|balón|globo|pelota de tenis|jamón|tronco, se|me|se me ha|está|| puesto|pone|puso|poniendo gord*|enorm*|gigante|deforme|inmens*, gord* como, el doble de| gord*|grande|ancho|ancha|tamaño, del|de tamaño|tamaño de| un|una, lleno|llena de líquido, con líquido, se me llenó de líquido"),
    ("every time", "cada vez que, siempre que, en cuanto, cada que"),
    ("no pain", "hoy sin dolor|dolores|molestias, hoy nada de dolor|dolores, hoy ningún dolor, hoy no hay|tengo dolor|dolores|molestias"),
    # pains of lay words
    ("hurts", "da|dando|dio guerra|lata|tormento|problemas|caña|por_saco, me está|tiene dando_guerra|matando|frito, se queja, protesta, protestando, se me queja, no está contento|contenta, toca las narices"),
    ("its fine now", "ya está bien|perfecto|perfecta|como_nuevo|como_nueva|mejor|curado|curada, como nuevo, como nueva, ya ni la|lo noto, perfecto ya, ha desaparecido, se me ha ido"),
    # oneself
    ("i weigh", "y|pues|ya peso"),
    ("i weigh in at", "peso unos|casi|sobre, peso ya"),
    ("im", "tengo"),
    ("years old", "años de edad, añitos"),
    ("tall", "de altura, de alto, de estatura"),
    ("and im", "y mido"),
    ("im", "mido"),
    # small deeds of the day
    ("laundry", "la lavadora, la colada, la ropa, tender la ropa"),
    ("shopping", "la compra, las bolsas, bolsas de la compra"),
    ("washing up", "los platos, fregar"),
    ("bins", "la basura"),
    ("making the bed", "la cama, hacer la cama"),
    # flow
    ("as planned", "todo|todo_lo| tal|exacto|exactamente|igual|justo cual|como|que|y_como ponía|pone|estaba|venía|viene|decía|dice|está|tocaba|mandaste|pusiste|escribiste en|| el|tu|| plan|programa|hoja|, hice|hecho|he_hecho todo|lo|todo_lo que tocaba|ponía|pone|mandaste|decía el plan, cumplido|cumplí el|con el plan"),
    ("im done", "lo dejo aquí|por_hoy|estar por_hoy|, aquí lo dejo, hasta aquí por_hoy, por hoy vale|ya_está|basta|suficiente, ya estoy por hoy, se acabó por_hoy, me piro, me voy yendo, me largo, me voy pa casa, ya he terminado|acabado por_hoy|todo|el_entreno|, hemos terminado"),
    ("starting now", "al lío, vamos al lío, empezamos, empezando, arrancamos, arranco, me pongo con_ello|a_ello|al_lío, ya en el box, recién llegado|llegada al gimnasio, listo|lista para empezar, ya he_llegado|llegué al| gym|gimnasio|"),
    ("whats next", "y ahora qué, ahora qué hago|toca, qué toca|viene|sigue ahora|después|luego, con qué sigo|continúo, siguiente ejercicio, qué más toca|queda, qué hago ahora|después|luego, pásame el siguiente, dime el siguiente"),
    ("delete the last one", "borra|quita|elimina|anula|tacha|cancela la_última|el_último|lo_último|eso_último|esa_última serie|registro|, quita lo_último, la última no cuenta|vale|fue, la última bórrala|quítala"),
    ("skipping", "me saltaré, hoy me salto, hoy paso de|del, hoy nada de, hoy no toco"),
)
# fmt: on
