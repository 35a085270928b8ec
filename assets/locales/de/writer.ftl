### Wo im Fenster Fälle geschrieben werden.

## Wo das Schreiben beginnt

writer-heading = Einen Fall schreiben
writer-about-writing = Ein Fall ist eine Textdatei: eine Geschichte, die Fehler, die gezogen werden können, Preise, Straßen und Punkte. Beginne mit einem, den es schon gibt; Felder und Text ändern dieselbe Datei, und was nicht stimmt, wird beim Schreiben gesagt.
writer-begin-with = Einen neuen beginnen mit
writer-small-case = Ein kleiner Fall für: { $vehicle }
writer-small-case-why = Vier einfache Fehler, die üblichen Preise und Straßen: ändere, was du willst.
writer-last = Weiterschreiben
writer-last-unsaved = Mit Änderungen, die nicht gespeichert wurden. { $path }
writer-last-saved = Datei: { $path }
writer-kept-nowhere = Noch nirgends gespeichert.
writer-a-file = Eine eigene Datei öffnen
writer-open-file = Öffnen
writer-new-case = Neuer Fall

## Die Seite

writer-changed = Nicht gespeichert
writer-unchanged = Gespeichert
writer-save = Speichern
writer-save-as = Speichern unter …
writer-undo = Rückgängig
writer-redo = Wiederholen
writer-pane-forms = Felder
writer-pane-side = Text und mehr
writer-side-text = Der Text
writer-side-sheet = Wie der Lehrling es liest
writer-side-bay = Der Motorraum
writer-side-trial = Ausprobieren
writer-side-hardness = Wie schwer er ist
writer-section-story = Der Fall
writer-section-job = Auftrag
writer-section-faults = Fehler
writer-section-decoys = Irreführendes
writer-section-prices = Preise und Zeiten
writer-section-roads = Straßen
writer-section-marks = Punkte
writer-section-teaching = Für den Unterricht
writer-forms-rest = So, wie der Text dasteht, kann er nicht gelesen werden; die Felder zeigen ihn, wie er war, und ruhen. Behebe, was die Liste zuerst nennt, oder nimm die Änderung mit »Rückgängig« zurück.
writer-cursor = Zeile { $line }, Spalte { $column }
writer-problems-unknown = Was nicht stimmt
writer-problems = { $count ->
    [0] Alles stimmt
    [one] Eines stimmt nicht
   *[other] { $count } Dinge stimmen nicht
}
writer-no-problems = Es ist nichts auszusetzen: Der Fall kann gespeichert, ausprobiert und ausgegeben werden.
writer-checking = Wird durchgesehen …
writer-doubts = { $count ->
    [one] Ein Zweifel, der nichts aufhält:
   *[other] { $count } Zweifel, die nichts aufhalten:
}
writer-problem = Zeile { $line }, Spalte { $column }: { $said }
writer-draft-not-kept = Was du schreibst, kann nicht von selbst aufgehoben werden ({ $why }). Speichere es ab und zu.

## Fragen

writer-path-field = Speichern unter
writer-save-there = Dort speichern
writer-stay = Weiterschreiben
writer-leave-asks = Es gibt Änderungen, die nicht gespeichert sind.
writer-save-and-leave = Speichern und gehen
writer-discard = Ohne sie gehen
writer-over-asks = In { $path } steht etwas anderes, als hier geöffnet oder gespeichert wurde. Speichern überschreibt es.
writer-save-over = Überschreiben
writer-not-saved = { $path } kann nicht geschrieben werden: { $why }. Was du geschrieben hast, ist noch hier; behebe das oder speichere anderswo.

## Felder

writer-in-group = { $group } – { $label }
writer-not-offered = { $value } – wähle anderes
writer-no-number = Das ist keine Zahl, darum behält der Text die vorige. Schreibe eine wie 2 oder 0,5.
writer-no-whole-number = Das ist keine ganze Zahl ab 0, darum behält der Text die vorige.
writer-no-money = Das ist kein Betrag, darum behält der Text den vorigen. Schreibe einen wie 12,50.
writer-nowhere = Der Text hat keinen Platz dafür. Schreibe es in den Text selbst.
writer-add = Dazu: { $what }
writer-remove = Weg: { $what }
writer-remove-it = wegnehmen
writer-title = Titel
writer-about = Ein Satz für alle, die ihn auswählen
writer-level = Stufe
writer-vehicle = Fahrzeug
writer-mode = Zweck
writer-vehicle-why = Ein anderes Fahrzeug hat andere Stellen und Teilenummern: Die Liste sagt, welche Fehler und Preise nicht mehr passen.
writer-job-title = Titel des Auftrags
writer-job-concern = Beanstandung
writer-job-kilometres = Laufleistung [km]
writer-history = Vorgeschichte
writer-history-line = Vorgeschichte, Zeile { $number }
writer-answers = Was der Kunde antwortet
writer-answers-why = Was der Kunde sagt, wenn der Lehrling fragt.
writer-answer-symptom = Gefragt, was nicht stimmt
writer-answer-when = Gefragt, seit wann und wann
writer-answer-service = Gefragt nach Öl und Wartung
writer-answer-repairs = Gefragt nach früheren Reparaturen
writer-asked-symptom = Gefragt, was nicht stimmt, sagt der Kunde:
writer-asked-when = Gefragt, seit wann und wann:
writer-asked-service = Gefragt nach Öl und Wartung:
writer-asked-repairs = Gefragt nach früheren Reparaturen:
writer-faults-why = Für jeden Fall wird einer davon gezogen. Das Gewicht sagt, wie oft gegenüber den anderen; die Schwere liegt zwischen 0 (die mildeste ihrer Art) und 1 (die schlimmste).
writer-fault = { $number }: { $fault }, { $percent } % der Ziehungen
writer-fault-group = Fehler { $number }
writer-also-group = Fehler { $number }, dazu { $other }
writer-also = Kommt zusammen mit
writer-add-also = einen, der mit ihm kommt
writer-more-faults = Weiteres
writer-add-fault = Einen Fehler dazu
writer-no-fault = Gewicht eines Fahrzeugs ohne Fehler
writer-no-fault-why = Über 0 kommen manche Kunden mit einem Fahrzeug, das in Ordnung ist.
writer-kind = Art
writer-place = Stelle
writer-weight = Gewicht
writer-severity-from = Schwere von
writer-severity-to = Schwere bis
writer-decoys-why = Was seltsam aussieht und harmlos ist, jedes mit seiner Wahrscheinlichkeit zwischen 0 und 1.
writer-other-winding = Eine andere Wicklung
writer-add-winding = Ein gutes Ventil mit anderer Wicklung dazu
writer-one-winding = Auf dieses Fahrzeug passt nur eine Wicklung.
writer-no-vehicle = Das Fahrzeug kann nicht gelesen werden; die Liste sagt, warum.
writer-part-number = Teilenummer
writer-chance = Wahrscheinlichkeit
writer-old-codes = Codes, die nicht vom Fehler kommen
writer-old-code = Eintrag { $number }
writer-code = Fehlercode
writer-origin = Woher er kommt
writer-code-historical = vor langer Zeit behoben
writer-code-present = ein anderer Fehler, den es gibt
writer-code-false = falsch: jemand hat ein Ventil abgesteckt
writer-add-code = Einen Code dazu
writer-currency = Zeichen der Währung
writer-money-why = Preise in Einheiten der Währung, mit zwei Stellen für die Hundertstel.
writer-labour = Eine Stunde Arbeit
writer-seal = Dichtung eines Ventils
writer-mending = Material für Leitung oder Kontakt
writer-oil-litre = Ein Liter Öl
writer-oil-filter = Ölfilter
writer-cleaning = Reinigungsmittel
writer-fuel = Kraftstoff für eine Fahrt
writer-comeback = Wenn es wiederkommt
writer-valve-prices = Ventile
writer-valve-price = Ventil { $number }
writer-add-price = Einen Preis für Ventil { $number } dazu
writer-factory-part = { $place }: ab Werk { $number }.
writer-minutes = Minuten für einen Schritt
writer-min-ask = Den Kunden fragen
writer-min-consult = Etwas nachschlagen
writer-min-look = Eine Stelle ansehen
writer-min-dipstick = Ölmessstab
writer-min-key = Schlüssel drehen
writer-min-start = Motor anlassen
writer-min-measure = Eine Messung
writer-min-fetch-meter = Messgerät holen
writer-min-read-gauge = Öldruck ablesen
writer-min-power = Ein Ventil speisen
writer-min-connect-reader = Lesegerät anschließen
writer-min-request = Das Steuergerät fragen
writer-min-clean = Ein Ventil reinigen
writer-min-mend-pin = Einen Kontakt instand setzen
writer-min-mend-wire = Eine Leitung instand setzen
writer-min-top-up = Öl nachfüllen
writer-min-change-oil = Öl wechseln
writer-min-approval = Um Freigabe bitten
writer-min-write = Einen Teil des Berichts schreiben
writer-min-hand-over = Übergeben
writer-min-fetch-part = Ein Teil holen
writer-customers-road = Die Straße, auf der es dem Kunden aufgefallen ist
writer-customers-road-why = Dort zeigt sich die Beanstandung, bevor der Fall beginnt: Wähle eine Straße, auf der man den Fehler merkt.
writer-shared-roads = Straßen, die das Programm mitbringt
writer-own-roads = Straßen nur dieses Falls
writer-own-roads-why = Ihre Abschnitte stehen im Text unter »routes«.
writer-workshop = Werkstatt
writer-temperature = Temperatur in der Werkstatt [°C]
writer-marks-why = Ganze Zahlen: Nur ihr Verhältnis zählt, zusammen geben die Punkte hundert.
writer-weight-tests = Wahl der Prüfungen
writer-weight-order = Reihenfolge der Arbeit
writer-weight-reading = Messgeräte ablesen
writer-weight-confidence = Sicherheit der Vermutungen
writer-weight-repair = Reparatur
writer-weight-proof = Nachweis der Reparatur
writer-weight-care = Sorgfalt und Sicherheit
writer-weight-record = Bericht
writer-pass-line = Bestehensgrenze [von hundert]
writer-hint-prices = Hinweise
writer-hint-prices-why = Was ein Hinweis von den Punkten nimmt; keiner darf billiger sein als der vor ihm.
writer-hint-question = Welche Frage offen ist
writer-hint-area = Wohin man geht
writer-hint-kind = Welche Art von Prüfung
writer-hint-step = Der Schritt selbst
writer-teaching-why = Nur für Lehrende: Kein Lehrling bekommt sie zu sehen.
writer-teaching-begin = Noch zu schreiben.
writer-add-teaching = Eine Notiz für den Unterricht dazu
writer-remove-teaching = Die Notiz für den Unterricht wegnehmen
writer-teaches = Was er lehrt
writer-traps = Was in die Irre führt
writer-trap = Falle { $number }
writer-path = Wie ein Kenner vorgeht
writer-path-line = Schritt { $number } des Wegs

## Was daraus wird

writer-sheet-why = Der Auftrag, und was der Kunde auf Fragen sagt. Nichts davon verrät den Fehler, wenn der Text es nicht tut.
writer-bay-why = Das Fahrzeug, alles an seinem Platz.
writer-trial-why = Beginnt einen Übungsfall aus dem Text, wie er dasteht, und sagt, was verborgen ist. Danach geht es hier weiter; nichts geht verloren.
writer-trial-not-yet = Erst muss alles stimmen.
writer-try-fault = Mit einem Fehler nach Wahl
writer-try = Ausprobieren: { $fault }
writer-try-seed = Mit einer Startzahl
writer-try-it = Diese Startzahl ausprobieren
writer-try-never = Keine Startzahl bis { $seeds } zieht diesen Fehler: Sein Gewicht ist gegenüber den anderen zu klein.
writer-try-refused = Ein Fall mit diesem Fehler wird nie ausgegeben. { $why }
writer-tried = Ausprobiert beim Schreiben, Startzahl { $seed }. Verborgen: { $faults }.
writer-back = Zurück zum Schreiben
writer-hardness-why = Einige Fälle werden ausgegeben und nach dem Plan des Kenners und von virtuellen Lehrlingen bearbeitet. Das dauert ein, zwei Minuten; du kannst weiterschreiben.
writer-measure = Ausrechnen, wie schwer er ist
writer-stop = Aufhören
writer-hardness-old = Der Text hat sich geändert, seit das ausgerechnet wurde.
writer-column-what = Was
writer-column-saved = Wie zuletzt gespeichert
writer-column-now = Wie er dasteht
writer-measuring = Rechnet aus, wie schwer er ist …
writer-measuring-sessions = Bearbeitet die Fälle: { $done } von { $of } Sitzungen
writer-hard-unknown = nicht ausgerechnet
writer-hard-cost = Kosten des Auftrags, nach dem Plan des Kenners
writer-hard-entropy = Offen vor der ersten Frage
writer-hard-range = { $least } bis { $most }
writer-hard-bits = { $bits } bit
writer-hard-worked = { $cost }; { $steps } Schritte; { $right } von { $of } richtig

## Bedingungen des Auftrags

writer-tools = Werkzeug des Falls
writer-tools-why = Augen, Hände, Ölmessstab und Codeleser sind immer da. Ob sich noch jeder Fehler erkennen lässt, sagt `faultwright check DATEI --facts`.
writer-tool-leave-out = Ohne { $tool }
writer-tool-put-in = Wieder mit { $tool }
writer-time-limit = Zeit
writer-time-limit-set = Eine Zeitgrenze setzen
writer-time-limit-minutes = Arbeitszeit (min)
writer-time-limit-remove = Die Zeitgrenze wegnehmen
writer-time-limit-why = Ist die Zeit um, kann das Fahrzeug nur noch geschlossen, beschrieben und übergeben werden. Warten auf ein Teil zählt nicht.
writer-approval = Was der Kunde freigibt
writer-approval-limit = Der Kunde setzt eine Grenze
writer-approval-money = Grenze
writer-approval-everything = Der Kunde gibt alles frei
writer-approval-why = Die Grenze gilt für Arbeit und Teile der Reparatur. Der Lehrling hört sie, wenn er fragt, und nicht vorher.
writer-shelf = Andere Teile und Warten
writer-shelf-why = Ein Teil, das erst kommen muss, blockiert den Arbeitsplatz. Verschlissene Teile verhalten sich, wie sie sind: Ein sauberer Kolben hat 0,1 N Reibung, ab 3 N hängt er; ein Sieb lässt ab einem Anteil von 0,97 zu wenig durch.
writer-waiting-per-hour = Eine Stunde Warten
writer-wait = Warten auf { $number } (min)
writer-other = Teil { $number }
writer-add-pattern = Ein Nachbauteil dazu
writer-add-used = Ein Gebrauchtteil dazu
writer-pattern = Nachbau
writer-used = gebraucht
writer-grade = Güte
writer-stands-for = Anstelle von
writer-other-price = Preis
writer-other-wait = Warten (min)
writer-resistance = Wicklung gegen den Nennwert (1 ist gleich)
writer-screen-blocked = Verstopfter Anteil des Siebs
writer-stiction = Reibung des Kolbens (N)
