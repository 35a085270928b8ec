### Schritte: Beschriftungen, Hilfe zu getippten Schritten und die kleinen Fugen der Sätze.

## Die Sprache selbst, wie die sie nennen, die sie sprechen

language-name = Deutsch

## Fugen

decimal-point = ,
list-comma = ,{" "}
list-and = { $most } und { $last }
list-or = { $most } oder { $last }
list-more = { $list } und { $more } weitere
amount-minutes = { $count } min
amount-money = { $sign }{ $number } { $currency }

## Beschriftungen der Schritte

step-read-job-sheet = Auftragsblatt lesen
step-ask-symptom = Kunden fragen, was nicht stimmt
step-ask-when = Kunden fragen, wann es auftritt
step-ask-service = Kunden nach Öl und Wartung fragen
step-ask-repairs = Kunden nach früheren Reparaturen fragen
step-consult-wiring = Stromlaufplan nachschlagen
step-consult-limits = Sollwerte nachschlagen
step-consult-procedure = Arbeitsanleitung nachschlagen
step-consult-parts = Ersatzteilliste nachschlagen
step-consult-codes = Liste der Fehlercodes nachschlagen
step-look = Ansehen: { $place }
step-dipstick = Ölmessstab ziehen
step-remove = Ausbauen: { $place }
step-pull = Gerade herausziehen: { $place }
step-refit = Einbauen: { $place }
step-refit-new-seal = Mit neuem, geöltem Dichtring einbauen: { $place }
step-unplug = Abstecken: { $place }
step-plug = Aufstecken: { $place }
step-key-off = Zündung aus
step-key-on = Zündung ein
step-key-start = Motor starten
step-key-crank = Für jede Messung den Motor mit dem Starter durchdrehen
step-measure-volts = Spannung messen: Rot an { $red }, Schwarz an { $black }
step-measure-ohms = Widerstand messen: Rot an { $red }, Schwarz an { $black }
step-measure-amps = Strom messen: Rot an { $red }, Schwarz an { $black }
step-from-front = { $measure }, von vorn eingesteckt
step-wiggle = Rütteln an { $place }, dabei { $function } beobachten: Rot an { $red }, Schwarz an { $black }
step-test-lamp = Prüflampe: Spitze an { $tip }, Klemme an { $clip }
step-clamp = Stromzange um: { $place }
step-zero-clamp = Stromzange nullen
step-scope-current = Oszilloskop, Spulenstrom: { $place }
step-scope-pin = Oszilloskop, Pin der Endstufe: { $place }
step-replace-meter-fuse = Neue Sicherung ins Multimeter einsetzen
step-zero-leads = Messleitungen nullen
step-fit-gauge = Öldruckmanometer einschrauben
step-remove-gauge = Öldruckmanometer ausbauen
step-read-gauge-idle = Öldruck im Leerlauf ablesen
step-read-gauge-idle-warm = Motor warmlaufen lassen und Öldruck im Leerlauf ablesen
step-read-gauge-held = Öldruck bei { $rpm } 1/min ablesen
step-read-gauge-held-warm = Motor warmlaufen lassen und Öldruck bei { $rpm } 1/min ablesen
step-power = Batteriespannung für { $seconds } s: { $place }
step-power-reversed = Batteriespannung für { $seconds } s, verpolt: { $place }
step-command-on = Vom Steuergerät einschalten lassen: { $place }
step-command-off = Vom Steuergerät ausschalten lassen: { $place }
step-read-codes = Fehlercodes auslesen
step-read-freeze-frame = Umgebungsdaten auslesen
step-read-live-data = Istwerte auslesen
step-read-live-items = Istwerte auslesen: { $items }
step-read-readiness = Prüfbereitschaft und Zähler auslesen
step-read-test-results = Testergebnisse der Überwachungen auslesen
step-read-vehicle-information = Kennung des Fahrzeugs auslesen
step-clear-codes = Fehlercodes löschen
step-drive = Probefahrt: { $place }
step-drive-part = Probefahrt: { $place }, { $seconds } s lang
step-suspect = Verdacht { $fault }: { $percent } %
step-predict-range = Vorhersage: von { $least } bis { $most } { $unit }
step-predict-above = Vorhersage: { $least } { $unit } oder mehr
step-predict-over-limit = Vorhersage: Überlauf { $unit }
step-predict-click-clear = Vorhersage: klares Klicken
step-predict-click-dull = Vorhersage: dumpfes Klopfen
step-predict-click-none = Vorhersage: kein Klicken
step-predict-glow-bright = Vorhersage: Lampe leuchtet hell
step-predict-glow-dim = Vorhersage: Lampe leuchtet schwach
step-predict-glow-dark = Vorhersage: Lampe bleibt dunkel
step-predict-code = Vorhersage: Der Tester zeigt { $code }
step-predict-no-codes = Vorhersage: Der Tester zeigt keinen Fehlercode
step-commit = Diagnose: { $fault }
step-ask-approval = Kunden um Freigabe der Reparatur bitten
step-fit = Teil { $number } einbauen: { $place }
step-clean = Filtersieb und Steuerkolben reinigen: { $place }
step-mend = Instand setzen: { $place }
step-replace = Ersetzen: { $place }
step-top-up = Öl auffüllen
step-change-oil = Öl und Filter wechseln: { $grade }
step-write-concern = Beanstandung aufschreiben
step-write-cause = Ursache aufschreiben
step-write-correction = Abhilfe aufschreiben
step-report-code = Dem Kunden einen Fehlercode nennen, der nicht zum Auftrag gehört: { $code }
step-hand-over-repaired = Fahrzeug als repariert übergeben
step-hand-over-no-fault = Fahrzeug übergeben: kein Fehler gefunden
step-hand-over-referred = Fahrzeug an jemand anderen verweisen
step-hand-over-unsafe = Fahrzeug als nicht verkehrssicher übergeben
step-hand-over-declined = Fahrzeug übergeben: Arbeit abgelehnt

## Hilfe zu getippten Schritten

help-intro = Ein Schritt ist ein Verb, meist ein Name, und Einzelheiten. Jedes Wort darf abgekürzt werden, solange es eindeutig bleibt; # beginnt einen Kommentar. Getippt wird in jeder Sprache dasselbe.
help-form = Form: { $form }
help-example = Beispiel: { $example }

group-look = Fragen und ansehen
group-open = Zerlegen und zusammenbauen
group-measure = Messen
group-module = Mit dem Steuergerät sprechen
group-run = Laufen lassen
group-reason = Überlegen
group-repair = Reparieren
group-finish = Abschließen

help-read-job-sheet = Das Auftragsblatt noch einmal lesen
help-ask = Den Kunden fragen: symptom (was), when (wann), service (Wartung) oder repairs (Reparaturen)
help-consult = Nachlesen: wiring (Stromlaufplan), limits (Sollwerte), procedure (Anleitung), parts (Teile) oder codes
help-look = Ein Teil, einen Stecker, eine Leitung oder engine-bay, den Motorraum, genau ansehen
help-dipstick = Den Ölmessstab ziehen: Stand und Aussehen des Öls
help-remove = Ein Teil nach Anleitung ausbauen
help-pull = Ein Teil gerade herausziehen: schneller, kann ihm aber schaden
help-refit = Ein Teil wieder einbauen, ein Ventil am besten mit new-seal, neuem Dichtring
help-unplug = Einen Stecker abziehen
help-plug = Einen Stecker aufstecken
help-measure = Volt, Ohm oder Ampere zwischen roter und schwarzer Messleitung ablesen
help-wiggle = An Stecker, Kontakt oder Leitung rütteln; kleinster und größter Messwert
help-lamp = Eine Prüflampe, eine kleine Last, zwischen zwei Punkte halten
help-clamp = Den mittleren Strom in einer Leitung ablesen, ob der Motor läuft oder nicht
help-scope = Den Spulenstrom eines Ventils beim Einschalten oder den Pin seiner Endstufe aufzeichnen
help-zero = Den Widerstand der Messleitungen oder den Nullpunkt der Stromzange aus der Anzeige nehmen
help-gauge = Öldruck: Manometer einschrauben, im Leerlauf oder bei Drehzahl ablesen, ausbauen
help-power = Abgesicherte Batteriespannung direkt an die Pins eines Ventils legen und horchen
help-read-module = Fehlercodes auslesen und was das Steuergerät sonst noch speichert
help-read-live-data = Istwerte auslesen, alle oder die genannten
help-command = Das Steuergerät ein Ventil ein- oder ausschalten lassen
help-clear = Fehlercodes löschen; vorher auslesen und notieren
help-key = Den Schlüssel drehen: off, on oder start mit einer Minute Leerlauf
help-drive = Mit dem Fahrzeug eine Probefahrt machen
help-suspect = Einen Fehler auf deine Liste setzen, mit deiner Zuversicht
help-predict = Sagen, was die nächste Messung zeigen wird, mit Einheit
help-predict-click = Sagen, wie das nächste Ventil klickt, das eingeschaltet wird
help-predict-glow = Sagen, wie die Prüflampe leuchten wird
help-predict-codes = Sagen, dass der Tester keinen Fehlercode zeigen wird, oder diesen
help-commit = Dich auf eine Diagnose festlegen, oder auf no-fault
help-approval = Den Kunden um Freigabe der Reparatur bitten
help-fit = Ein neues Ventil einbauen; das alte vorher ausbauen
help-clean = Filtersieb und Steuerkolben eines ausgebauten Ventils reinigen
help-mend = Eine Leitung oder einen Steckkontakt instand setzen
help-replace = Sicherung gleicher Stärke, Relais oder Sicherung des Multimeters einsetzen
help-top = Öl bis zur oberen Marke auffüllen
help-change-oil = Öl ablassen, neuen Filter einbauen und mit einer Sorte auffüllen
help-write = Beanstandung (concern), Ursache (cause) oder Abhilfe (correction) aufschreiben, bis zum Zeilenende
help-report = Dem Kunden einen Fehlercode nennen, der nicht zum Auftrag gehört
help-hand = Das Fahrzeug übergeben; mit no-fault, referred, unsafe oder declined dahinter
