### Das Fenster: seine eigenen wenigen Worte. Was am Auftrag geschieht, sagen die anderen Kataloge.

## Jede Seite

window-settings = Einstellungen
window-text-size = Schriftgröße
window-percent = { $percent } %
window-light = Hell
window-dark = Dunkel
window-motion = Teile und Kamera bewegen sich
window-no-motion = Keine Bewegung
window-close-notice = Meldung schließen
window-to-front = Startseite
window-picture = Das Fahrzeug in der Werkstatt

## Startseite

window-title = Faultwright
window-about = Ein Fahrzeug ist gekommen, mit einem Fehler, den niemand sehen kann. Frag, sieh hin, miss und fahr, bis du weißt, was es ist, reparier es, und weise nach, dass die Reparatur geholfen hat. Dann sieh, was jede Prüfung wert war, was sie gekostet hat, und was ein Experte getan hätte.
window-begin-heading = Einen Fall beginnen
window-seed = Startzahl
window-seed-any = beliebig
window-seed-hint = Dieselbe Startzahl gibt denselben Fall. Lass das Feld leer für einen Fall, den niemand ausgesucht hat.
window-no-seed = Eine Startzahl ist eine ganze Zahl von 0 bis 18446744073709551615. Berichtige sie, oder lass das Feld leer.
window-begin = Beginnen
window-kept-heading = Weitermachen mit
window-looking = Suche nach aufbewahrten Sitzungen …
window-none-kept = Noch keine Sitzung ist aufbewahrt. Jeder Fall, den du beginnst, wird vom ersten Schritt an aufbewahrt.
window-go-on = { $name }: weitermachen nach { $steps ->
    [0] keinem Schritt
    [one] einem Schritt
   *[other] { $steps } Schritten
}
window-see-receipt = { $name }: versiegelt zurückgegeben nach { $steps ->
    [one] einem Schritt
   *[other] { $steps } Schritten
}, zur Quittung
window-see-debrief = { $name }: zurückgegeben nach { $steps ->
    [one] einem Schritt
   *[other] { $steps } Schritten
}, zur Nachbesprechung
window-older = Ältere liegen im selben Ordner; der Befehl "faultwright bench --session FILE" öffnet jede davon.
window-look-again = Noch einmal suchen
window-leave = Programm verlassen

## Seite eines Falls

window-pane-sheet = Auftragsblatt
window-pane-bay = Motorraum
window-pane-log = Bisher getan
window-pane-log-and-sheet = Bisher getan, Auftragsblatt
window-pane-steps = Nächster Schritt
window-vehicle-heading = Das Fahrzeug
window-key-off = Zündung aus.
window-key-on = Zündung ein, Motor läuft nicht.
window-engine-runs = Der Motor läuft.
window-nothing-off = Alles ist an seinem Platz.
window-off = Ausgebaut: { $parts }.
window-suspects-heading = Verdacht
window-no-suspects = Noch keiner.
window-suspect = { $fault }: { $percent } %
window-suspect-hint = Gib ihm eine andere Zuversicht
window-notes-heading = Notizen
window-note-write = Eine Notiz schreiben
window-log-empty = Noch nichts. Lies das Auftragsblatt, dann wähle unter „Nächster Schritt“ die Wörter eines ersten Schritts, oder tippe ihn unten ein.
window-line-empty = Wähle ein erstes Wort.
window-line-whole = Der Schritt ist vollständig.
window-line-wrong = So geht kein Schritt weiter. Nimm das letzte Wort weg.
window-next-word = Nächstes Wort
window-number = Eine Zahl
window-text = Ein Text aus dem Auftrag; oder tippe unten deinen eigenen
window-take = Schritt ausführen
window-remove-word = Letztes Wort wegnehmen
window-step = Schritt
window-take-typed = Ausführen
window-offers = Als Nächstes möglich:
window-no-offers = Tippe hier einen Schritt ein, oder wähle seine Wörter unter „Nächster Schritt“.
window-more-offers = und { $count } weitere
window-hint-empty = Tab setzt das einzige oder das markierte Wort ein, die Pfeiltasten auf und ab markieren eines, Eingabe führt den Schritt aus. Esc verlässt das Feld, F2 kehrt zu ihm zurück, F3 geht zu den Wörtern, F4 zu den Messgeräten, Bild auf und Bild ab blättern im Protokoll.
window-hint-form = { $meaning }. Form: { $form }
window-taking = Läuft gerade: { $step } …

## Der Motorraum

bay-picture = Motorraum. Die Pfeiltasten drehen die Ansicht, Plus und Minus gehen näher heran und zurück, 1 bis 6 führen zu einem Standpunkt. Die Orte sind daneben aufgelistet.
bay-view-whole = Ganz
bay-view-intake = Einlass
bay-view-exhaust = Auslass
bay-view-battery = Batterie, Sicherungen
bay-view-module = Steuergerät
bay-view-bench = Werkbank
bay-hint = Zeigen nennt, Klick wählt. Ziehen dreht, rechts oder mit Umschalt verschiebt, das Rad holt heran.
bay-under-pointer = Unter dem Zeiger: { $place }
bay-parts = Teile und Stecker
bay-fixed = Fest eingebaut
bay-wires = Leitungen und Kontakte
bay-test-points = Prüfpunkte
bay-place-off = { $place } (ausgebaut)
bay-in-place = An seinem Platz.
bay-on-the-bench = Ausgebaut; liegt auf der Werkbank.
bay-plugged = Aufgesteckt.
bay-unplugged = Abgesteckt.
bay-seen = Gesehen: { $sight }.
bay-into-line = „{ $place }“ in die Zeile setzen
bay-let-go = Nichts wählen

## Nachbesprechung

window-judging = Stelle zusammen, was möglich gewesen wäre …
window-points = { $points } von { $most }
window-side-marks = Bewertung
window-side-steps = Schritt für Schritt
window-timeline = Die Schritte
window-timeline-hint = Ein voller Balken unter einem Schritt ist, was er nachweislich mehr gekostet hat als der beste, der Rahmen, was nicht ausgeschlossen ist; ein gestrichelter Rahmen zählt nicht.
window-replay-forwards = Abspielen
window-replay-back = Rückwärts
window-step-before = Einen zurück
window-step-after = Einen weiter
window-pace-slow = Langsam
window-pace-usual = Übliches Tempo
window-pace-quick = Zügig
window-pace-fast = Schnell
window-step-of = Schritt { $number } von { $count }
window-course-before = Vor dem ersten Schritt
window-course-after = Nach Schritt { $number }, { $step }
window-moment = Dieser Schritt
window-known-before = Vorher
window-cost-of-step = Kosten
window-rest-of-job = Noch offen
window-against-best = Vergleich
window-best-step = Am besten
window-could-tell = Wert
window-known-after = Nachher
window-others = Was hier sonst möglich gewesen wäre
window-ask-others = Ausrechnen
window-others-hint = Geordnet nach dem, was der ganze Rest im Mittel gekostet hätte. Zeige auf eine Zeile oder gehe mit Tab hin, um zu sehen, was sie hätte bedeuten können.
window-choice = { $total }, { $bits }; { $against }
window-choice-read = In Wahrheit: { $read }
window-choice-means = Was es hätte bedeuten können:
window-another-step = Irgendein anderer Schritt statt dessen
window-another-hint = measure ohms …
window-ask-another = Fragen
window-kept-at = Die Sitzung ist in { $path } aufbewahrt.

## Störungen

window-opening = Wiederhole die aufbewahrten Schritte …
window-no-folder = Sitzungen können nicht aufbewahrt werden: { $why } Sorge dafür, dass du in diesen Ordner schreiben darfst, dann beginne oder suche noch einmal.
window-broke-off = Die Arbeit ist abgebrochen, das ist ein Fehler des Programms. Die ausgeführten Schritte liegen auf der Platte: Mach mit der Sitzung unten weiter.

## Einstellungen

settings-title = Einstellungen
settings-close = Einstellungen schließen
settings-text-why = Alles wächst mit der Schrift. Bei 200 % zeigt ein kleiner Bildschirm einen Teil der Seite auf einmal.
settings-shade = Farben
settings-shade-why = Was eine Farbe sagt, sagt immer auch ein Wort oder ein Zeichen.
settings-contrast = Kontrast
settings-contrast-ordinary = Gewöhnlicher Kontrast
settings-contrast-high = Hoher Kontrast
settings-contrast-why = Hoher Kontrast ist Schwarz auf Weiß oder Weiß auf Schwarz, und jeder Rand ist gezeichnet.
settings-motion = Bewegung
settings-motion-why = Ohne Bewegung ist alles sofort an seinem Platz.
settings-language = Sprache
settings-language-why = Sie wechselt sofort. Was getippt wird, bleibt in jeder Sprache gleich.
settings-sound-why = Was zu hören ist, steht auch geschrieben und gezeichnet bei seinem Schritt.
settings-broken = Die Einstellungen in { $path } sind ab Zeile { $line }, Spalte { $column } nicht zu lesen.
settings-newer = Die Einstellungen in { $path } haben Version { $version } und stammen von einem neueren Programm; dieses kennt Version { $known }.
settings-unreadable = Die Einstellungen in { $path } sind nicht zu lesen: { $why }.
settings-usual-hold = Es gelten die üblichen Einstellungen. Nichts geht verloren: Sobald du eine Einstellung änderst, wird die Datei nach { $aside } verschoben und eine neue geschrieben.
settings-not-kept = Die Einstellungen können nicht in { $path } aufbewahrt werden: { $why }. Sie gelten, bis das Fenster geschlossen wird. Behebe das und ändere noch einmal eine Einstellung, um sie aufzubewahren.

## Szenario und Sitzungen

front-level-first = erste Lektion
front-level-middle = üblich
front-level-hard = schwer
front-of-file = { $about } Aus { $file }.
front-file = Szenariodatei
front-any-file = Szenario oder versiegelter Fall
front-file-empty = Pfad einer eigenen Datei
front-read-file = Datei lesen
front-reading = { $file } wird gelesen …
front-practise = Üben
front-practise-why = Tipps sind möglich; jeder kostet Punkte.
front-assessed = Bewertet
front-assessed-why = Tipps werden abgelehnt.
front-sealed = versiegelt
front-sealed-for = Für { $name }. Aus { $file }.
front-sealed-why = Ein versiegelter Fall wird immer bewertet: Tipps werden abgelehnt, und die Nachbesprechung bleibt bei dem, der das Siegel öffnet.
front-sealed-seed = Ein versiegelter Fall bringt seine Startzahl mit.
front-always-assessed-why = Dieses Szenario wird immer bewertet: Tipps werden abgelehnt.
front-none-open = Keine Sitzung wartet darauf, fortgesetzt zu werden.
front-past-heading = Übergeben
front-was-practice = Übung
front-was-assessed = Bewertet
front-mode-and-age = { $mode }, { $age }
front-age-now = gerade eben
front-age-minutes = { $count ->
    [one] vor einer Minute
   *[other] vor { $count } Minuten
}
front-age-hours = { $count ->
    [one] vor einer Stunde
   *[other] vor { $count } Stunden
}
front-age-days = { $count ->
    [one] vor einem Tag
   *[other] vor { $count } Tagen
}
window-till-assessed = Bewertet; { $till }
window-assessed-why = Diese Sitzung wird bewertet: Tipps werden abgelehnt.

## Die erste Runde

guide-offer = Neu hier? Eine Minute an einem kleinen Fall zeigt, wie es geht: ansehen, messen, verdächtigen, entscheiden, nachweisen.
guide-begin = Zeig mir, wie es geht
guide-not-now = Jetzt nicht
guide-skip = Runde überspringen
guide-close = Runde schließen
guide-done = { $task }: erledigt
guide-not-done = { $task }: noch offen
guide-sheet = Auftragsblatt
guide-sheet-says = Lies das Auftragsblatt: Tippe „read job-sheet“ unten in das Feld und drücke die Eingabetaste, oder wähle die Wörter unter „Nächster Schritt“.
guide-look = Ansehen
guide-look-says = Sieh dir etwas an: „dipstick“ zeigt das Öl, und ein Klick auf ein Ding im Motorraum sagt, wie man es ansieht.
guide-measure = Messen
guide-measure-says = Miss etwas: „measure volts battery-plus battery-minus“ legt das Messgerät an die Batterie.
guide-suspect = Verdacht
guide-suspect-says = Nenne einen Verdacht und wie sicher du bist: Beginne mit „suspect“, wähle dann Fehler, Ort und Zahl.
guide-decide = Entscheiden
guide-decide-says = Entscheide: „commit“ ist deine Diagnose, und unter „Reparieren“ steht, was etwas in Ordnung bringt.
guide-prove = Nachweisen
guide-prove-says = Weise es auf der Straße mit „drive“ nach, oder geh auf die Startseite: Die Sitzung ist vom ersten Schritt an aufbewahrt.
guide-over = Das war alles. „hand over“ beendet den Fall und zeigt, was jede Prüfung wert war; du kannst auch einfach weitermachen.

## Unterwegs

road-heading = Unterwegs: { $road }
road-clock = { $at } von { $of }
road-pull-in = Umkehren (Esc)
road-to-the-end = Bis zum Ende fahren
road-pace-slow = 5 ×
road-pace-usual = 20 ×
road-pace-fast = 60 ×
road-no-reader = Kein Lesegerät angeschlossen, deshalb ist nur die Instrumententafel zu sehen. Mit einem werden auch die Nockenwellen gezeichnet.
road-speed = Fahrgeschwindigkeit
road-engine = Motordrehzahl
road-cam = Nockenwelle: { $place }
road-wanted = Soll (gestrichelt)
road-actual = Ist
road-km-h = { " km/h" }
road-rpm = { " 1/min" }
road-degrees = °
road-no-figure = –
road-setting-off = Abfahrt …
