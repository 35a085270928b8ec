### Die Ablage der Messgeräte im Fenster. Was ein Gerät in einem Protokoll zeigt, sagen die anderen Kataloge.

## Die Ablage

window-pane-tray = Messgeräte
tray-meter = Multimeter
tray-lamp = Prüflampe
tray-clamp = Stromzange
tray-power = Versorgungsleitung
tray-scope = Oszilloskop
tray-reader = Lesegerät
tray-gauge = Manometer
tray-dipstick = Ölmessstab
tray-drive = Straße
tray-takes = Dauert { $time }.
tray-takes-and-costs = Dauert { $time } und kostet { $money }.
tray-take = Messwert aufnehmen
tray-predict = Zuerst vorhersagen
tray-predicted = { $prediction }: wartet auf den Messwert.
tray-step = Schritt { $number }
tray-nothing-read = Hier wurde noch nichts gemessen.

## Enden, die irgendwo angelegt werden

tray-red = rote Messleitung
tray-black = schwarze Messleitung
tray-hand = rüttelnde Hand
tray-tip = Spitze der Lampe
tray-clip = Klemme der Lampe
tray-jaws = Backen der Zange
tray-power-plug = Versorgungsleitung
tray-scope-probe = Tastkopf
tray-red-letter = R
tray-black-letter = S
tray-hand-letter = H
tray-tip-letter = P
tray-clip-letter = K
tray-jaws-letter = Z
tray-power-plug-letter = V
tray-scope-probe-letter = T
tray-end-at = { $end }: { $place }
tray-end-nowhere = { $end }: noch nirgends
tray-end-hint = Zieh es auf ein Ding im Motorraum, oder wähle aus der Liste.
tray-choose = Wohin damit: { $end }?
tray-choose-on = Wohin an „{ $thing }“: { $end }?
tray-put = { $letter }: { $place }
tray-lift = Nirgends
tray-choose-none = Lassen, wo es ist
tray-put-here = Hier anlegen, { $end }: { $place }
tray-put-where = Zeig auf die Stelle und klick: { $end }. Esc lässt los.

## Multimeter

meter-volts = Gleichspannung
meter-ohms = Widerstand
meter-amps = Gleichstrom
meter-from-front = Messspitzen von vorn eingesteckt
meter-zero = Messleitungen nullen
meter-fuse = Neue Sicherung für das Multimeter
meter-shows = { $function }: { $display }
meter-blank = { $function }: nichts gemessen
meter-digit = Letzte Stelle { $step }
meter-settling = schwingt noch ein
meter-over-limit = Überlauf: jenseits des größten Messbereichs

## Prüflampe, Stromzange, Versorgungsleitung

lamp-take = Anlegen und hinsehen
clamp-zero = Stromzange nullen
power-take = Einschalten und hinhören
power-for = Für
power-seconds = { $seconds } s
power-reversed = Rot am Steuerpin

## Oszilloskop

scope-take = Aufzeichnen
scope-current = Spulenstrom
scope-pin = Pin der Endstufe
scope-trace = Aufgezeichneter Verlauf
scope-ms = ms
scope-point = { $time } ms, { $value }
scope-cursor = Messlinie { $number }: { $reading }
scope-between = Von 1 nach 2: { $time } ms, { $value }

## Lesegerät und Straße

reader-take = Auslesen
reader-clear = Fehlercodes löschen
reader-codes = Fehlercodes
reader-freeze-frame = Umgebungsdaten
reader-readiness = Prüfbereitschaft
reader-live-data = Istwerte
reader-test-results = Testergebnisse
reader-vehicle = Fahrzeug
reader-code = Code
reader-status = Stand
reader-meaning = Bedeutung
reader-stored = gespeichert
reader-pending = vorläufig
reader-permanent = permanent
reader-no-code = keiner
reader-none = keine
reader-lamp = Motorkontrollleuchte
reader-on = angefordert
reader-off = nicht angefordert
reader-run = Überwachungen mit Ergebnis
reader-waiting = Überwachungen ohne Ergebnis
reader-count = Gespeicherte Fehlercodes
reader-stored-by = Gespeichert durch
reader-identification = Kennung
reader-calibration = Kalibrierung
reader-camshaft = Nockenwelle nach Ventil
reader-wanted = Soll [°]
reader-actual = Ist [°]
reader-duty = Tastverh. [%]
reader-mean-error = Mittlere Abweichung [°]
reader-furthest = Am weitesten [°]
drive-which = Welche Straße?
drive-take = Fahren

## Manometer und Ölmessstab

gauge-take = Manometer ablesen
gauge-as-it-is = Leerlauf oder Stillstand
gauge-warm = Motor zuerst warmlaufen lassen
gauge-fit = Einschrauben
gauge-out = Ausbauen
stick-take = Ölmessstab ziehen
stick-lower = untere Marke
stick-upper = obere Marke

## Der Tresen

tray-counter = Reparatur, Nachweis
counter-customer = Kunde
counter-parts = Teile
counter-cleaning = Reinigen
counter-wiring = Leitungen
counter-fuses = Sicherungen, Relais
counter-oil = Öl
counter-proof = Nachweis
counter-papers = Bericht, Übergabe
counter-take = Ausführen
counter-nothing = Davon gibt es an diesem Fahrzeug nichts.
counter-customer-why = Was der Kunde nicht freigegeben hat, wird nicht bezahlt.
counter-pattern = { $what } (Nachbau)
counter-used = { $what } (gebraucht)
counter-wait = { $price } { $time } Wartezeit sind darin.
counter-write = Schreiben: { $section } …
