### Ereignisse: was aus einem Schritt folgte.

event-spent = { $time }, { $money }
event-refused = Nicht möglich: { $why }
event-caution = Vorsicht: { $hazard } Die Anleitung des Herstellers geht vor.
event-against-care = Gegen die gute Werkstattpraxis: { $breach }
event-answered = Der Kunde sagt: { $answer }
event-no-answer-from-customer = Dazu kann der Kunde nichts sagen.
event-seen = { $place }: { $sight }
event-oil-seen = Öl { $level }, { $look }
event-heard-on = { $place }, Strom ein: { $sound }.
event-heard-off = { $place }, Strom aus: { $sound }.
event-removed = { $place } ist ausgebaut.
event-refitted = { $place } ist wieder eingebaut.
event-seal-torn = { $place }: Der Dichtring ist gerissen. Er muss erneuert werden, bevor der Motor läuft.
event-seal-leaks = { $place }: Am Dichtring schwitzt Öl aus.
event-unplugged = { $place } ist abgesteckt.
event-plugged = { $place } ist aufgesteckt.
event-key-off = Zündung aus, Motor steht.
event-key-on = Zündung ein, Motor nicht gestartet. { $lamps }
event-key-crank = Der Starter dreht den Motor für jede Messung durch. { $lamps }
event-key-start = Schlüssel auf Start. { $lamps }
event-reading = { $red } gegen { $black }: { $display }
event-over-limit = { $red } gegen { $black }, { $function }: { $display }, mehr als das Multimeter anzeigen kann
event-watched-steady = { $place } gerüttelt, { $function }: von { $least } bis { $most }, ruhig
event-watched-jumped = { $place } gerüttelt, { $function }: von { $least } bis { $most }, die Anzeige sprang
event-lamp-glows = Prüflampe, Spitze an { $tip }, Klemme an { $clip }: { $glow }
event-clamped = { $place }, Stromzange: { $display }
event-clamp-zeroed = Stromzange genullt, die Backen geschlossen und leer.
event-captured-current = { $place }, Spulenstrom ab dem Einschalten
event-captured-pin = { $place }, Spannung am Pin des Steuergeräts
event-meter-fuse-replaced = Das Multimeter hat eine neue Sicherung und misst wieder Strom.
event-gauge-fitted = Das Öldruckmanometer sitzt in seinem Anschluss, der Schlauch liegt frei von Riemen und Auspuff.
event-gauge-removed = Das Öldruckmanometer ist ausgebaut, sein Anschluss verschlossen und trocken gewischt.
event-gauge-read = Öldruck { $speed }: { $bar } bar, { $needle }
gauge-idle = bei Motor, wie er läuft
gauge-held = bei { $rpm } 1/min
gauge-steady = Zeiger ruhig
gauge-swings = Zeiger schwankt um { $swing } bar
event-meter-fuse-blew = Die Sicherung des Multimeters ist durchgebrannt: Im Strombereich zeigt es null, bis sie ersetzt ist.
event-leads-zeroed = Messleitungen genullt: Ihr Widerstand ist jetzt aus der Anzeige heraus.
event-lead-fuse-blew = Die Sicherung der Versorgungsleitung ist durchgebrannt: Etwas zog viel zu viel Strom.
event-commanded-on = { $place }: vom Steuergerät eingeschaltet.
event-commanded-off = { $place }: vom Steuergerät freigegeben.
event-freeze-frame = Umgebungsdaten zu { $code }
event-freeze-frame-without-code = Umgebungsdaten
event-no-freeze-frame = Es sind keine Umgebungsdaten gespeichert.
event-live-data = Istwerte
event-readiness = Stand der Überwachungen. Gespeicherte Fehlercodes: { $stored }
event-test-results = Testergebnisse seit dem letzten Löschen
event-vehicle-information = Fahrzeugkennung
  Identifikation: { $identification }
  Softwarestand: { $calibration }
event-codes-cleared = Fehlercodes gelöscht. Umgebungsdaten und abgeschlossene Überwachungen sind mit ihnen weg; permanente Fehlercodes bleiben, bis ihre Überwachungen bestanden sind.
event-driven = Probefahrt, { $route }: { $quality } { $lamps }
event-suspected = Auf der Liste: { $fault }, { $percent } %
event-noted = Notiert.
event-predicted = Vorhersage für die nächste Messung notiert.
event-prediction-met = Der Messwert liegt in deiner Vorhersage.
event-prediction-missed = Der Messwert liegt außerhalb deiner Vorhersage: Was würde das erklären?
event-prediction-other = Gemessen ist eine andere Größe als vorhergesagt: Achte auf Messbereich und Einheit.
event-sign-met = Es ist, wie du vorhergesagt hast.
event-sign-missed = Es ist nicht, wie du vorhergesagt hast: Was würde das erklären?
event-committed = Deine Diagnose: { $fault }
event-approved-up-to = Der Kunde gibt die Reparatur frei, solange Arbeit und Teile dafür nicht mehr als { $money } kosten. Frag noch einmal, bevor es darüber hinausgeht.
event-more-declined = Der Kunde lehnt mehr ab, als vereinbart war. Für die Reparatur sind davon { $left } übrig. Was sich damit nicht machen lässt, wird als gefunden und abgelehnt aufgeschrieben.
event-approved = Der Kunde gibt die Reparatur frei.
event-fitted = { $place }: Neuteil { $number } eingebaut.
event-fitted-pattern = { $place }: Nachbauteil { $number } eingebaut.
event-fitted-used = { $place }: Gebrauchtteil { $number } eingebaut.
event-waited = { $time } vergehen, bis das Teil da ist; das Fahrzeug blockiert den Arbeitsplatz.
event-cleaned = { $place }: Filtersieb gereinigt, Steuerkolben gespült.
event-mended = { $place }: instand gesetzt.
event-replaced = { $place }: gegen ein Neuteil gleicher Stärke ersetzt.
event-oil-filled = { $litres } l Öl aufgefüllt, bis zur oberen Marke.
event-oil-changed = { $litres } l Altöl abgelassen; neuer Filter, mit { $grade } aufgefüllt.
event-oil-full-already = Kein Öl aufgefüllt: Der Stand ist schon an der oberen Marke oder darüber.
event-written-concern = Beanstandung aufgeschrieben.
event-written-cause = Ursache aufgeschrieben.
event-written-correction = Abhilfe aufgeschrieben.
event-code-reported = Der Kunde weiß jetzt von einem Fehlercode, der nicht zum Auftrag gehört: { $code }
event-handed-over-repaired = Als repariert übergeben. Der Auftrag ist abgeschlossen.
event-handed-over-no-fault = Übergeben: kein Fehler gefunden. Der Auftrag ist abgeschlossen.
event-handed-over-referred = An jemand anderen verwiesen. Der Auftrag ist abgeschlossen.
event-handed-over-unsafe = Als nicht verkehrssicher übergeben. Der Auftrag ist abgeschlossen.
event-handed-over-declined = Übergeben: Arbeit vom Kunden abgelehnt. Der Auftrag ist abgeschlossen.

## Ablehnungen, jede mit dem, was stattdessen zu tun ist

refusal-no-such-place = Dieses Fahrzeug hat kein „{ $place }“. Such den Namen im Stromlaufplan oder in der Arbeitsanleitung.
refusal-still-fitted = { $place } sitzt noch im Motor. Bau es zuerst aus.
refusal-does-not-fit = Teil { $number } passt dort nicht. Such die Nummer in der Ersatzteilliste.
refusal-engine-runs = Nicht bei laufendem Motor. Schalte zuerst die Zündung aus.
refusal-engine-stands = Der Motor steht. Starte ihn zuerst.
refusal-no-gauge = Das Öldruckmanometer sitzt nicht in seinem Anschluss. Schraub es zuerst ein.
refusal-gauge-fitted = Das Öldruckmanometer sitzt noch in seinem Anschluss. Bau es zuerst aus.
refusal-cannot-run = Der Motor kann nicht laufen ohne: { $places }. Bau das zuerst wieder ein.
refusal-cannot-run-at-all = So wie er ist, kann der Motor nicht laufen. Bau zuerst alles wieder ein.
refusal-key-off = Die Zündung ist aus. Schalte sie zuerst ein.
refusal-key-must-be-off = Die Zündung ist ein. Schalte sie zuerst aus.
refusal-power-forbidden = Das Datenblatt verbietet Fremdspannung an diesem Ventil. Lass es stattdessen vom Steuergerät schalten.
refusal-too-much-confidence = Deine Zuversicht ergäbe zusammen { $sum } %, und mehr als 100 % gibt es nicht zu verteilen. Senke zuerst einen anderen Verdacht.
refusal-code-not-read = Der Tester hat { $code } nicht gezeigt. Lies zuerst die Fehlercodes aus, und melde, was sie zeigen.
refusal-finished = Das Fahrzeug ist übergeben und der Auftrag abgeschlossen. Lies die Nachbesprechung.
refusal-no-such-tool = In diesem Fall fehlt: { $tool }. Das Auftragsblatt nennt, was da ist.
refusal-time-is-up = Die Zeit für diesen Fall ist um. Schließe das Fahrzeug, schreibe den Bericht und übergib es.
refusal-out-of-range = Eine Zahl in diesem Schritt liegt außerhalb des Sinnvollen. Gib sie neu an.

obstacle-behind = Da ist etwas im Weg. Zuerst ausbauen: { $places }.
obstacle-still-off = Dahinter fehlt noch etwas. Zuerst einbauen: { $places }.
obstacle-already-off = Es ist schon ausgebaut. Mach mit dem weiter, was es verdeckt hat.
obstacle-in-place = Es ist schon an seinem Platz. Mach mit dem nächsten Schritt weiter.
obstacle-plugged = Der aufgesteckte Stecker verdeckt diesen Punkt. Zuerst abstecken: { $place }.

no-answer-key-off = Das Steuergerät antwortet nicht: Die Zündung ist aus. Schalte sie ein und frag noch einmal.
no-answer-no-reply = Der Tester hat Strom, die Zündung ist ein, und nichts antwortet. Prüfe Versorgung, Sicherung und Masse des Steuergeräts und die Datenleitungen von der Diagnosebuchse dorthin.
no-answer-reader-dark = Der Tester bleibt dunkel: Die Diagnosebuchse gibt ihm keinen Strom. Prüfe Sicherung und Masse der Buchse und die Batterie.
no-answer-not-offered = Das Steuergerät antwortet und bietet das nicht an.
no-answer-engine-runs = Das Steuergerät lehnt ab, solange der Motor läuft. Stell ihn ab, schalte die Zündung ein und frag noch einmal.

## Warnungen

hazard-hot = An Motor, Öl und Kühlmittel verbrennst du dich. Lass sie abkühlen, schütze Hände und Augen, und öffne nie ein heißes Kühlsystem.
hazard-moving-parts = Riemen drehen sich, und Lüfter laufen von selbst an. Hände, Haare, Ärmel und Messleitungen weg; Leerlauf einlegen, Bremse fest.
hazard-battery-current = Eine kurzgeschlossene Batterie schmilzt Metall, und ihr Gas explodiert. Ringe und Uhr ab, keine Funken, nur abgesicherte Leitungen.
hazard-road = Fahr nur mit Führerschein, Versicherung, verkehrssicherem Fahrzeug und geprüften Flüssigkeitsständen, und lass einen Beifahrer die Daten ablesen.
hazard-fumes = Abgas tötet. Lass einen Motor in der Halle nur mit Absaugung laufen.
hazard-used-oil = Altöl schadet der Haut. Trag Handschuhe, wisch Verschüttetes auf und fang auf, was herausläuft.

## Verstöße gegen die Sorgfalt, jeder mit seinem Grund

breach-key-on = { $place } bei eingeschalteter Zündung getrennt. Das Steuergerät kann einen Fehlercode speichern, den du selbst gemacht hast, und Kontakte können funken. Zuerst Zündung aus.
breach-ohms-live = Widerstand an einem Stromkreis unter Spannung gemessen. Die Spannung im Kreis übertönt den kleinen Messstrom, der Wert bedeutet also nichts. Zuerst Zündung aus und abstecken.
breach-ohms-plugged = Widerstand gemessen, während { $place } noch aufgesteckt war. Der Rest des Stromkreises liegt parallel zum Teil, und das Multimeter misst beides. Zuerst abstecken.
breach-amps-across-source = Strombereich direkt an eine Spannungsquelle gelegt. Im Strombereich ist das Multimeter fast ein Kurzschluss, und nur seine Sicherung rettet es und dich. Schalte es in Reihe mit einem Verbraucher.
breach-front-probed = { $place }: eine Messspitze von vorn in den Kontakt gesteckt. Das weitet die Feder auf, und der Kontakt ist von da an schlecht. Taste stattdessen von hinten an der Dichtung vorbei ab.
breach-test-lamp-on-module = { $place }: eine Prüflampe dort, wo das Steuergerät angeschlossen ist. Sie zieht ein Drittel Ampere, schaltet selbst das Ventil und kann eine Endstufe zerstören. Nimm sie an Plusleitungen, hier das Multimeter.
breach-powered-too-long = { $place } länger bestromt, als das Datenblatt erlaubt. Ohne Öl wird die Wicklung heiß. Bleib bei kurzen Impulsen.
breach-reversed-polarity = { $place } verpolt bestromt. Wo das Datenblatt eine Polung vorgibt, kann die falsche eine Diode oder ein Steuergerät zerstören. Rot kommt an den Pluspin.
breach-run-without-oil = Motor laufen lassen mit leuchtender Öldrucklampe oder ohne Öl am Messstab. Lager sind in Augenblicken zerstört. Zuerst Öl prüfen und auffüllen.
breach-driven-unchecked = Gefahren ohne einen Blick auf das Öl. Ein Fahrzeug wird geprüft, bevor es auf die Straße geht. Zuerst den Ölmessstab ziehen.
breach-driven-incomplete = Gefahren, obwohl noch Teile fehlten. Was lose ist, kann fallen, an einen Riemen geraten oder Öl auslaufen lassen. Zuerst alles wieder einbauen.
breach-wrong-oil-grade = Öl einer anderen Sorte, als der Hersteller verlangt. Es ist kalt zu dick oder heiß zu dünn, und Nockenwellenversteller merken beides. Zuerst die Sorte nachschlagen.
breach-cleared-unread = Fehlercodes gelöscht, bevor sie ausgelesen waren. Fehlercodes und Umgebungsdaten waren Beweise, und jetzt sind sie weg. Zuerst auslesen und notieren.
breach-repair-before-diagnosis = Reparatur vor der Diagnose begonnen. Ein auf Verdacht getauschtes Teil kostet den Kunden Geld und beweist nichts. Leg dich zuerst auf eine Diagnose fest.
breach-repair-beyond-approval = Arbeit über das hinaus, was der Kunde freigegeben hat. Niemand wird sie bezahlen. Bitte zuerst noch einmal fragen; was abgelehnt ist, wird aufgeschrieben und bleibt, wie es ist.
breach-repair-without-approval = Reparatur ohne Freigabe des Kunden begonnen. Es ist sein Fahrzeug und sein Geld. Bitte zuerst um die Freigabe.
breach-care-key-off = { $place } bei eingeschalteter Zündung angefasst. Das Steuergerät kann Fehlercodes speichern, die du selbst gemacht hast, und Kontakte können funken. Zuerst Zündung aus.
breach-care-break-seal-loose = { $place } herausgezogen, ohne den Dichtring zu lösen. Ein Dichtring, der klebt, reißt, und seine Stücke landen im Öl. Dreh das Teil zuerst hin und her.
breach-care-new-seal = { $place } mit altem Dichtring eingebaut. Ein Dichtring, der einmal gequetscht war, kann heißes Öl ausschwitzen. Nimm jedes Mal einen neuen, geölten.
breach-care-torque = { $place } nicht mit dem Drehmoment des Herstellers angezogen. Zu lose leckt, zu fest reißt das Gewinde aus. Nimm einen Drehmomentschlüssel.
breach-care-hot = { $place } heiß angefasst. An Metall und Öl verbrennst du dich. Lass es abkühlen oder schütze deine Hände.

## Anblicke, Geräusche und Öl

sight-sound = nichts Auffälliges zu sehen
sight-corrosion = grüne Korrosion an einem Kontakt
sight-spread-terminal = ein Kontakt steht offen: Er ist aufgeweitet
sight-blown-fuse = der Schmelzleiter der Sicherung ist durchgebrannt
sight-rubbed-through = Isolierung durchgescheuert, blankes Kupfer ist zu sehen
sight-sludge = Ölschlamm auf dem Filtersieb
sight-torn-seal = der Dichtring ist gerissen
sight-used-seal = der Dichtring ist platt: Er war schon einmal verpresst
sight-spool-sticks = der Steuerkolben bewegt sich, klemmt aber, wenn man ihn von Hand drückt
sight-spool-seized = dicker Lackbelag am Steuerkolben, der sich kaum bewegt
sight-hidden = davon ist noch nichts zu sehen; bau ab, was es verdeckt

glow-dark = dunkel
glow-dim = schwach
glow-bright = hell

cursors-dip = Spitze { $peak } A, Einbruch { $depth } A, am tiefsten nach { $at } ms; am Ende { $end } A
cursors-no-dip = Kein Einbruch; am Ende { $end } A
cursors-plateau = Geschlossen { $closed } V, öffnet für { $lasts } ms auf { $plateau } V, dann { $open } V
cursors-no-plateau = Geschlossen { $closed } V, offen { $open } V, kein Plateau
plot-time = { $ms } ms Breite

click-clear = ein scharfes Klicken
click-dull = ein dumpfes, weiches Klicken
click-none = kein Klicken

oil-dry = Gar kein Öl am Messstab. Starte den Motor nicht.
oil-above-upper = über der oberen Marke
oil-at-upper = an der oberen Marke
oil-nearer-upper = zwischen den Marken, näher an der oberen
oil-half-way = etwa in der Mitte zwischen den Marken
oil-nearer-lower = zwischen den Marken, näher an der unteren
oil-at-lower = an der unteren Marke
oil-below-lower = unter der unteren Marke
oil-fresh = bernsteinfarben und klar
oil-dark = dunkel, wie gebrauchtes Öl ist
oil-sludge = schwarz, mit Klumpen und einem klebrigen Schlammfilm am Stab
oil-thin = dünn zwischen den Fingern
oil-thick = dick zwischen den Fingern
oil-smells-of-fuel = mit Kraftstoffgeruch

## Lampen, Leerlauf, Istwerte, Probefahrt

lamps-none = Motorkontrollleuchte aus, Öldruckleuchte aus.
lamps-engine = Motorkontrollleuchte an, Öldruckleuchte aus.
lamps-oil = Motorkontrollleuchte aus, Öldruckleuchte an.
lamps-both = Motorkontrollleuchte an, Öldruckleuchte an.

idle-smooth = Der Motor läuft im Leerlauf rund.
idle-rough = Der Motor läuft im Leerlauf unrund.
idle-does-not-start = Der Motor springt nicht an.
idle-stalls = Der Motor geht aus.

frame = { $rpm } 1/min, Last { $load } %, { $speed } km/h, Kühlmittel { $coolant } °C, Öl { $oil } °C, Versorgung { $supply } V
cam-live = { $place }: Nockenwelle Soll { $wanted }°, Ist { $actual }° Kurbelwinkel aus der Ruhelage, Tastverhältnis { $duty } %
cam-drive = { $place }: Nockenwelle im Mittel { $error }° Kurbelwinkel neben dem Sollwert, am weitesten { $furthest }° aus der Ruhelage

drive-smooth = Der Motor lief rund.
drive-rough = Der Motor lief unrund.
drive-does-not-start = Der Motor sprang nicht an.
drive-stalls = Der Motor ging aus.
drive-monitors = Überwachungen, die zu einem Ergebnis kamen: { $codes }
drive-no-monitor = Keine Überwachung kam zu einem Ergebnis.
drive-stopped = Nach { $seconds } s unterwegs angehalten und umgekehrt.
drive-no-reader = Kein Tester war angeschlossen, niemand sah also, was das Steuergerät überwachte.

## Fehlercodes, wie der Tester sie zeigt

code-with-meaning = { $code }: { $meaning }
codes-stored = Gespeicherte Fehlercodes:
codes-none-stored = Keine gespeicherten Fehlercodes.
codes-pending = Vorläufige Fehlercodes:
codes-none-pending = Keine vorläufigen Fehlercodes.
codes-permanent = Permanente Fehlercodes:
codes-none-permanent = Keine permanenten Fehlercodes.
lamp-asked = Das Steuergerät fordert die Motorkontrollleuchte an.
lamp-not-asked = Das Steuergerät fordert die Motorkontrollleuchte nicht an.
monitors-complete = Überwachungen, die seit dem letzten Löschen gelaufen sind: { $codes }
monitors-waiting = Überwachungen, die noch nicht gelaufen sind: { $codes }
monitors-none-waiting = Jede Überwachung der Ventile ist seit dem letzten Löschen gelaufen.

## Auftragsblatt

job-title = Auftragsblatt: { $title }
job-vehicle = { $name }, { $year }, { $engine }
job-distance = { $kilometres } km
job-concern = Beanstandung: { $concern }
job-history = Vorgeschichte:
till = { $minutes }, { $money } Material, zusammen { $total }
till-with-limit = { $till }, noch { $left }
job-tools = Werkzeug in diesem Fall: Augen und Hände, Ölmessstab, Codeleser{ $tools }
job-time = Zeit dafür: { $time } Arbeit; danach nur noch Schließen, Bericht und Übergabe.
tool-multimeter = Multimeter
tool-test-lamp = Prüflampe
tool-current-probe = Strommesszange
tool-scope = Oszilloskop
tool-pressure-gauge = Öldruckmesser
tool-power-lead = Stromkabel
job-no-history = Keine Vorgeschichte.

## Ausgewählte Istwerte, Prüfbereitschaft, Testergebnisse

reader-line = { $name }: { $value }
reader-not-offered = vom Steuergerät nicht angeboten
live-engine-speed = Motordrehzahl
live-load = Last
live-road-speed = Fahrgeschwindigkeit
live-coolant = Kühlmittel
live-oil = Öl
live-supply = Versorgung des Steuergeräts
live-run-time = Zeit seit dem Start
ready-misfire = Verbrennungsaussetzer
ready-fuel-system = Kraftstoffsystem
ready-components = Bauteile
ready-catalyst = Katalysator
ready-fuel-vapour = Tankentlüftung
ready-oxygen-sensors = Lambdasonden
ready-valve-timing = Abgasrückführung oder Ventilsteuerung
ready-complete = abgeschlossen
ready-waiting = nicht abgeschlossen
counter-warm-ups = Warmläufe seit dem Löschen
counter-distance = Strecke seit dem Löschen
counter-time = Laufzeit seit dem Löschen
counter-lamp-distance = Strecke mit leuchtender Lampe
counter-lamp-time = Laufzeit mit leuchtender Lampe
amount-rpm = { $value } 1/min
amount-percent = { $value } %
amount-km-h = { $value } km/h
amount-celsius = { $value } °C
amount-volts = { $value } V
amount-seconds = { $value } s
amount-km = { $value } km
amount-running-minutes = { $value } min
test-name = { $code }, { $measure }
test-waiting = noch nicht gelaufen
test-passed = { $value }, Grenzen { $least } bis { $most }, bestanden
test-failed = { $value }, Grenzen { $least } bis { $most }, nicht bestanden
measure-time-off-target = Zeit neben dem Sollwert
measure-hunting-share = Anteil der Zeit mit Pendeln
measure-response-time = Zeit, einer Änderung zu folgen
measure-time-wrong-at-rest = Zeit mit falscher Ruhelage
measure-time-of-circuit-fault = Zeit mit Fehler im Stromkreis
measure-time-of-supply-fault = Zeit mit Versorgung außerhalb der Grenzen
measure-time-of-oil-pressure-fault = Zeit mit falschem Öldruck
