"""German, signs and the flow as people tell them in turns of phrase: rows put together from alternatives.

Source: common practice; the signs are those of the reading contract. Nothing here diagnoses.
"""

from typing import Final

from core.read.glossary import GlossRow

# fmt: off
ROWS: Final[tuple[GlossRow, ...]] = (
    # chest
    ("chest tightness", "brust|brustkorb fühlt_sich|fühlte_sich|ist|war|wird an| wie| im|in_einem| schraubstock|korsett|panzer|eingeschnürt|eingequetscht|zusammengedrückt|zusammengepresst|zugeschnürt|eng|schwer, ring|gürtel|band|riemen|reifen um die|den|meine|meinen brust|brustkorb, es| drückt|drückte|brennt|brannte|zieht|zog|sticht|spannt es| so| komisch|richtig|ganz_schön| in|auf|hinter|hinterm|unterm|unter der|dem|meiner|| brust|brustkorb|brustbein|herz, druck|brennen|schmerz|schmerzen|ziehen|stechen|enge|klumpen|kloß hinterm|hinter_dem|unterm|am brustbein, herzstechen, stechen|stich|stiche|druck|ziehen|schmerzen|schmerz|krampf im|am|ums|in_der herz|herzgegend, brust krampft|verkrampft|schnürt sich| zu|zusammen|, presst|quetscht|drückt mir|mir_jemand den|die brustkorb|brust zusammen|ab|zu|"),
    ("weight on my chest", "klotz|ziegelstein|betonklotz|sack|zentner|elefant|stein|auto|amboss|pferd|lkw|tonne|kuh|schrank|zementsack|bleiplatte auf|| der|meiner|meinem|dem brust|brustkorb, jemand|einer sitzt|steht|kniet|säße|drückt|hockt auf|mir| auf|| meiner|meinem|der|dem brust|brustkorb"),
    # breath
    ("cant breathe", "komm|komme|kam nicht|nicht_mehr|kaum zu|an puste|luft, krieg|kriege|kriegte|bekomm|bekomme|hab|habe einfach|immer_noch|seitdem| keine|kaum|zu_wenig|nicht_genug|schlecht mehr| luft|sauerstoff, kann|konnte nicht|kaum|nicht_mehr tief|richtig|| durchatmen|einatmen|luft_holen|atmen, schnapp|schnappe|ringe|ring|japse|hechle nach luft, kurzatmig, atemlos, atme wie durch einen strohhalm, luft bleibt|blieb mir| weg, wie durch einen strohhalm, atmen fällt mir| schwer, es pfeift beim atmen, rasseln beim atmen"),
    # faint
    ("nearly fainted", "lichter|licht gingen|ging|war|waren aus|weg, beine|knie weggeklappt|eingeknickt|weggesackt, mir wurde|ist|war|wird kurz|ganz|plötzlich|auf_einmal| blümerant|flau|ganz_anders|komisch_im_kopf, musste mich festhalten|hinlegen|hinsetzen|stützen sonst|damit_ich_nicht umkippe|umfalle|falle, beinah|fast hingefallen|umgefallen|weggekippt|umgekippt|abgeklappt|zusammengesackt, bin|war| kurz|mal| weggekippt|abgeklappt, auf dem boden aufgewacht|zu_mir_gekommen, kreidebleich, kreislaufkollaps, kreislauf kollabiert|weggebrochen|abgesackt"),
    ("dizzy", "boden|raum|decke|wände|halle|studio|alles schwankt|schwankte|dreht_sich|drehte_sich|wackelt|wackelte|kippt|kippte, wie auf einem|einem| schiff|boot|karussell, schwankschwindel, wie betrunken beim aufstehen|laufen"),
    ("vision went black", "vor den| augen schwarz|dunkel|flimmern|flimmerts|sternchen|verschwommen, alles schwarz|dunkel|grau|verschwommen|unscharf geworden| vor_augen|vor_den_augen, bild|sicht|sehen war|wurde|ist|ging|wird weg|schwarz|dunkel|enger|eng|verschwommen|unscharf, seh|sehe|sah nur_noch|alles| sternchen|sterne|flecken|punkte|pünktchen|verschwommen|schwarz|grau"),
    # heart
    ("skipping beats", "macht|machte hüpfer|hopser|sprünge|purzelbäume|was_es_will|salto|saltos|stolperer|aussetzer|pausen|komische_sachen|extraschläge, stolpert|stottert|holpert|hoppelt|hüpft|zappelt|aussetzt, setzt|setzte immer| kurz| aus, bleibt|blieb kurz|immer_wieder|einen_moment stehen, schlägt dann weiter, außer takt|rhythmus, aus dem takt|tritt|rhythmus, überschlägt sich, spinnt rum"),
    ("racing", "galoppiert, klopft|pocht|schlägt|hämmert|rast|wummert|trommelt mir| bis_in_den|bis_zum|wie|wie_ein|bis_in_die|in_den hals|ohren|blöd|bescheuert|irre|verrückt|presslufthammer|maschinengewehr, auf 180, wie ein maschinengewehr|presslufthammer|specht, geht ab wie verrückt"),
    # nerve
    ("numb", "pelzig, wie in watte, wie watte, wie eingepackt, abgestorben, fremd an, gehört nicht zu mir, wie betäubt, betäubt, merke ich| nichts mehr| in|im, ohne gefühl, gefühl verloren|weg, kein gefühl in_den|in_der|im, weniger gefühl"),
    ("foot drags", "fuß klappt|klatscht|hängt|schleift|bleibt|knallt runter|auf|hängen|nach|herunter, fuß nicht| mehr heben|hochziehen|hochheben, zehen nicht mehr| heben|hochziehen|hoch|bewegen, stolpere|stolper|falle über den|meinen| eigenen|eignen fuß|zehen, fußheber|fußheberschwäche, bein nach|hinterher ziehe|ziehen|schleife, ziehe das bein nach"),
    ("keep dropping things with my hand", "fällt|fallen mir|| ständig|dauernd|alles|immer|sachen|die_tasse|was| aus der hand, lass|lasse ständig|immer sachen|alles fallen, kann die|eine|keine tasse|flasche|gabel nicht|mehr| halten, hand macht|tut nicht mehr| was ich will, hand gehorcht nicht"),
    ("electric shock down my leg", "strom|blitz|stromschlag|stromstoß|kribbeln durchs|durch_das|ganze|ins|in_den bein|po|hintern|fuß|zehen runter|bis_in_die_zehen|bis_in_den_fuß|, schießt|zieht|schoss|zuckt|fährt es| mir| wie_strom|wie_ein_blitz| durchs|ins|in_das|in_den bein|fuß|rücken"),
    ("lost strength", "keine|kaum|null|weniger kraft mehr| im|in_der|in_den, kraft weg|fehlt, gehorcht mir| nicht mehr|"),
    # bladder, urine
    ("wet myself", "ging|geht|gegangen|ist| mir| was|etwas|ein_tropfen|ein_paar_tropfen|bisschen|alles| in_die_hose, in die hose gegangen, urin|pipi|wasser nicht mehr| halten, kann's nicht halten, kann nicht einhalten|anhalten, nicht mehr dicht, tropfen verloren, blase macht was sie will"),
    ("no feeling between my legs", "merk|merke|spür|spüre|fühle nicht|nicht_mehr|nichts wenn|wann|ob ich muss|pinkle|pinkel|mache, merk|merke|spür|spüre|fühle da_unten|untenrum|unten_rum nichts|kaum_was mehr| beim_abwischen|beim_pinkeln|wenn_ich_muss|, beim abwischen nichts|kein_gefühl|taub, untenrum|unten_rum|da_unten ist|| alles| taub|gefühllos|pelzig|eingeschlafen, taubes gefühl|taubheit im|am schritt|damm|po|gesäß, po|hintern|gesäß|arsch|schritt taub"),
    ("down there", "untenrum, unten rum, da unten, unten herum"),
    ("cant pee", "kommt kein_tropfen|nichts beim_pinkeln|raus_obwohl, seit stunden nicht gepinkelt|pinkeln_können, blase voll aber, muss aber es kommt nichts, krieg|kriege die blase nicht leer"),
    ("like cola", "wie schwarzbier|malzbier|altbier|rotwein|rost|rostwasser|sojasoße|kakao|braune_brühe|whisky|rum|cognac, farbe von|wie schwarztee|cola|malzbier|rost|tee, rostfarben, rostrot, rostbraun, bierbraun, dunkelrot, weinrot, bernsteinfarben"),
    # head
    ("worst headache", "kopfschmerz|kopfschmerzen|schmerz im kopf wie ein| hammerschlag|blitz|blitzschlag|donnerschlag|explosion|messerstich|nie|nie_zuvor|noch_nie, hammerschlag|explosion|blitz|stich|knall im|durch_den kopf|schädel, kopf|schädel explodierte|platzte|zersprang|zerriss, mir zerreißt|zerriss|sprengt|sprengte|platzt es| den| kopf|schädel, heftigste|krasseste|brutalste|übelste kopfschmerzen, schlagartig kopfschmerzen"),
    ("hit my head", "kopf|stirn|schädel|birne|rübe gegen|an|am|unter die|das|den|der|dem| stange|hantel|rack|gestell|türrahmen|kabelzug|klimmzugstange geknallt|gestoßen|gehauen|gerammt|gedonnert|angeschlagen|, scheibe|hantel|stange|langhantel|kurzhantel|gewicht auf|gegen den|die kopf|birne|stirn|rübe bekommen|gefallen|geknallt|gekriegt, platzwunde, beule am kopf"),
    ("slurring my words", "lalle|nuschel|nuschle|rede|sprech|spreche wie|so betrunken|besoffen|komisch|undeutlich|verwaschen|wirr|durcheinander, wörter|worte kommen nicht|falsch mehr| richtig| raus, kriege|krieg|bekomme die|keine wörter|worte|sätze nicht| raus|zusammen|mehr"),
    ("seeing double", "seh|sehe|sah doppelt|doppelbilder, doppelbilder, alles doppelt"),
    ("im confused", "weiß|wusste nicht mehr| wo_ich_bin|wo_ich_war|welcher_tag, total verwirrt|neben_mir|benebelt"),
    # injury
    ("something popped", "im|in_der|am|in bizeps|oberschenkel|knie|rücken|ellbogen|arm|trizeps|nacken|fuß|wade|schulter|brust|leiste|hüfte|hand|muskel|gelenk richtig|laut|ordentlich| geknallt|gekracht|geschnalzt|gerissen|geploppt|peng_gemacht, knall|krachen|ploppen|reißen|schnalzen im|in_der bizeps|oberschenkel|knie|rücken|ellbogen|arm|trizeps|wade|schulter|brust|leiste|hüfte|muskel|gelenk, hats|hat_es laut|richtig| gekracht|geschnalzt|geploppt, irgendwas gerissen, was|etwas kaputt_gegangen|geplatzt, wie ein peitschenschlag|peitschenhieb|schuss|tritt in_die_wade|von_hinten, gummiband gerissen, muskel|sehne|bizeps|bänder|kreuzband durch|ab|gerissen|hochgerutscht|aufgerollt|durchgerissen"),
    ("arm is useless", "arm|hand|bein hängt|baumelt nur|so|schlaff noch|| schlaff| runter|rum|herunter|da|, arm|hand|bein unbrauchbar|nicht_mehr_zu_gebrauchen"),
    ("cant walk on it", "kein|keinen schritt|meter mehr laufen|gehen|machen, nicht mehr| drauf_stehen|draufstehen, kann nur| noch humpeln|hüpfen, humple|humpel nur|"),
    # swelling
    ("swollen", "dick|groß|rund wie ein|eine| fußball|tennisball|melone|orange|ballon|elefantenfuß|baumstamm|apfel|ei|pampelmuse|wurst, doppelt so dick|groß|breit|umfang, wasser im knie|gelenk|fuß, voller wasser, passt nicht mehr in den schuh, wird immer dicker"),
    ("every time", "jedes mal wenn|sobald, jedesmal wenn|sobald, immer wenn|sobald, immer dann wenn"),
    ("no pain", "heute mal keine|ohne schmerzen|beschwerden, heute keine|kein schmerzen|schmerz|beschwerden"),
    # pains of lay words
    ("hurts", "muckt|zickt|zwickt|meckert|motzt|jammert|streikt|nörgelt|mosert rum|herum, macht zicken|mucken|faxen|theater|sperenzchen, gibt keine ruhe, tut mir| leicht|bissl|immer_noch|wieder weh, ärgert mich, beschwert sich"),
    ("its fine now", "wieder völlig|komplett|ganz|alles|voll| in_ordnung|gut|fit|okay|wie_neu|heil|schmerzfrei|top, wieder wie neu, nichts mehr zu spüren|merken, merk|merke|spür|spüre nichts mehr davon|"),
    # oneself
    ("im", "ich bin, bin"),
    ("years old", "jahre alt, jahre jung"),
    ("tall", "groß, gross"),
    # small deeds of the day
    ("laundry", "wäsche, wäschekorb"),
    ("shopping", "einkauf, einkäufe, einkaufstüten, tüten"),
    ("washing up", "abwasch, geschirr"),
    ("bins", "müll, mülltonne"),
    ("carrying", "hochgetragen, raufgetragen, reingetragen"),
    # flow
    ("as planned", "alles|alles_genau|genau so| gemacht| wie es| im|auf_dem plan|zettel steht|stand|, wie es| im|auf_dem plan|zettel steht|stand|vorgesehen|gefordert|, genau so| wie du es| gesagt|geschrieben|aufgeschrieben|wolltest| hast|, plan abgearbeitet|erfüllt|durch|durchgezogen|komplett_gemacht, alle vorgaben geschafft|erfüllt, alles abgehakt"),
    ("im done", "das wars für_heute|dann|von_mir|, so das wars, mach|mache schluss für_heute|, hör|höre auf für heute, für heute ist schluss|gut|genug, schicht im schacht, feierabend, muss jetzt| los|weg|heim, ich muss jetzt| los|weg|heim, bin fertig für_heute|mit_allem|hier|, ich pack|packe zusammen, jetzt nach hause, auf nach hause, ich bin dann mal weg, sense für heute, reicht für heute"),
    ("starting now", "kann|kanns losgehen, ich leg|lege jetzt| los, leg|lege jetzt| los, gleich gehts los, dann mal los, auf gehts, ran an die gewichte|eisen|buletten, bin jetzt da|umgezogen, hab|habe angefangen|gerade_begonnen, wir können|können loslegen|anfangen|starten, bin startklar|bereit"),
    ("whats next", "was soll|muss|mach|mache ich jetzt|als_nächstes|danach|nun machen|dran|, was ist jetzt|als_nächstes|danach|nun dran|, was steht noch an|auf_dem_plan, was kommt noch|jetzt|danach|nun, womit gehts|geht_es weiter, und was jetzt|nun|dann, welche übung jetzt|als_nächstes|kommt, schick mir die nächste übung|, nächste bitte"),
    ("delete the last one", "lösch|lösche|löschen|streich|entfern|entferne|nimm bitte| mal| den|die|das letzten|letzte|letztes satz|eintrag|serie| bitte| wieder| raus|weg|, den| letzten satz|eintrag| bitte| wieder| löschen|streichen|entfernen|rausnehmen, der| letzte satz|eintrag| war falsch"),
    ("skipping", "lass|lasse ich| heute weg|aus|sein|bleiben|sausen, lass|lasse heute, spar|spare mir, streich|streiche heute, fällt heute aus|flach"),
)
# fmt: on
