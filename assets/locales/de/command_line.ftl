### Die Befehlszeile: Hilfe, Gespräch und Störungen.

cli-about = Übe, einen verborgenen Fehler an einem simulierten Fahrzeug zu finden: messen, entscheiden, reparieren und die Reparatur nachweisen.
cli-exit-codes = Rückgabewerte:
exit-done = erledigt
exit-wrong-arguments = falsche Argumente
exit-no-window = es ließ sich kein Fenster öffnen
exit-bad-input = ein Szenario, eine Sitzungsdatei oder ein Schritt ist nicht in Ordnung
exit-file-trouble = eine Datei oder ein Ordner ließ sich nicht lesen oder schreiben
exit-defect = die Simulation ist gescheitert; das ist ein Fehler des Programms
cli-safety = An einem echten Fahrzeug gehen die Anleitung des Herstellers, die örtlichen Vorschriften und das Urteil einer Fachkraft allem vor, was hier gezeigt wird.

cli-workshop-about = Das Fenster öffnen
cli-workshop-examples =
    Beispiele:
      faultwright workshop
      faultwright workshop --size 1920x1080
      faultwright workshop --screenshots bilder
cli-screenshots = Von jeder Seite ein Bild in diesen Ordner machen, indem getan wird, was ein Benutzer täte, und das Fenster schließen
cli-window-size = Wie groß das Fenster am Anfang ist; ohne Angabe 1280x680
cli-frame-times = Am Ende sagen, wie lange das erste Bild und die eigene Arbeit an jedem Bild gedauert haben
window-pictures-saved = { $count ->
    [one] Ein Bild
   *[other] { $count } Bilder
} in { $folder } gespeichert.
window-pictures-failed = weitere Bilder waren nicht möglich: { $why }
window-frame-times = Gezeichnet von { $adapter }. Erstes Bild nach { $first } s. Eigene Arbeit an { $frames } Bildern: in der Mitte { $middle } ms, bei 99 von 100 unter { $most } ms. Höchster Speicherbedarf: { $memory } MB.
cli-bench-about = Einen Fall im Terminal bearbeiten, oder Schritte aus einer Datei oder der Standardeingabe ausführen
cli-bench-examples =
    Beispiele:
      faultwright bench --seed 7
      faultwright bench --seed 7 --steps job.steps
      faultwright bench --session job.session       (beginnt sie oder macht mit ihr weiter)
      faultwright bench --case 03-anna.case         (ein versiegelter Fall, der ausgeteilt wurde)
      echo 'read codes' | faultwright bench --format json
cli-draw-about = Fälle nach Startzahl austeilen
cli-draw-examples =
    Beispiele:
      faultwright draw --seed 1 --count 10
      faultwright draw --seed 7 --reveal
      faultwright draw --seed 1 --count 6 --matched 90..120   (sechs, die gleich schwer sind)
      faultwright draw --class namen.txt --matched closest --seal sealed --passphrase geheim.txt
cli-open-about = Einen versiegelten Fall oder die Sitzung dazu öffnen: Startzahl und Fehler sagen
cli-open-examples =
    Beispiele:
      faultwright open sealed/03-anna.case --passphrase geheim.txt
      faultwright open anna.session --passphrase geheim.txt --into anna-offen.session
cli-open-file = Versiegelter Fall oder die Sitzung dazu
cli-into = Die Sitzung mit offenem Fall neu in diese Datei schreiben, damit die Nachbesprechung den Azubis offensteht
cli-passphrase = Datei mit der Passphrase des Siegels in der ersten Zeile; - für die Standardeingabe
cli-case = Versiegelter Fall, der ausgeteilt wurde
cli-class = Für jeden Namen in dieser Datei einen Fall austeilen, ein Name je Zeile
cli-same = Allen denselben Fall austeilen
cli-seal = Jeden Fall versiegelt in diesen Ordner schreiben und weder Startzahl noch Fehler sagen; für Prüfungen
cli-check-about = Szenariodateien prüfen und sagen, was wo nicht stimmt
cli-check-examples =
    Beispiele:
      faultwright check scenarios/market-hill.ron
      faultwright check mein-szenario.ron --facts --apprentices 3
      faultwright check *.ron --format json
cli-describe-about = Sagen, was in einer Szenario-, Fahrzeug- oder Streckendatei steht, Feld für Feld (auf Englisch)
cli-describe-examples =
    Beispiele:
      faultwright describe scenario
      faultwright describe vehicle | less
cli-kind = Art der Datei; ohne Angabe alle, mit einer Einführung
cli-replay-about = Die Schritte einer Sitzungsdatei noch einmal ausführen und zeigen, was folgte
cli-replay-examples =
    Beispiel:
      faultwright replay job.session
cli-mark-about = Eine abgeschlossene Sitzung bewerten
cli-mark-examples =
    Beispiele:
      faultwright mark job.session --html debrief.html
      faultwright mark job.session --format json
cli-what-if-about = Auf einen Augenblick einer abgeschlossenen Sitzung zurückblicken: was ein anderer Schritt gezeigt, verraten und gekostet hätte
cli-what-if-examples =
    Beispiele:
      faultwright whatif job.session --at 15                 (alles, was statt Schritt 15 möglich gewesen wäre)
      faultwright whatif job.session --at 15 --step 'measure ohms intake-valve-feed intake-valve-control'
      faultwright whatif job.session --at 9 --step 'command intake-valve on' --step 'scope current intake-valve'
cli-trial-about = Virtuelle Auszubildende ein Szenario bearbeiten lassen und sagen, was sie kosten, was sie erreichen und wie schwer es ist
cli-trial-examples =
    Beispiele:
      faultwright trial --seeds 1..20 --csv trial.csv        (weiter geht es mit demselben Befehl)
      faultwright trial --scenario my-scenario.ron --seeds 1..1000 --without-marks
      faultwright trial --seeds 1..500 --csv a.csv           (auf einem Rechner)
      faultwright trial --seeds 501..1000 --csv b.csv        (auf einem anderen)
      faultwright trial --join a.csv b.csv --parquet all.parquet

cli-scenario = Szenariodatei, oder der Name eines Szenarios, das im Programm enthalten ist, zum Beispiel coal-wharf; sonst Market Hill
cli-seed = Startzahl des Falls, eine ganze Zahl; sonst eine, die niemand ausgesucht hat
cli-steps = Schritte aus dieser Datei lesen, einer je Zeile
cli-session = Die Sitzung in dieser Datei aufbewahren; ist sie schon da, mit ihr weitermachen
cli-assessed = Den Fall als Prüfung bearbeiten: ohne Tipps
cli-format = Wie Ergebnisse ausgegeben werden
cli-count = Wie viele Fälle ausgeteilt werden, mit fortlaufenden Startzahlen
cli-matched = Nur Fälle austeilen, deren erwartete Kosten nach dem Plan des Experten, wenn der Auftrag aufgenommen ist, zwischen diesen Beträgen liegen; „closest“ für die, die am dichtesten beieinander liegen
cli-look-at = Für passende Fälle höchstens so viele Startzahlen ansehen; sonst 200, und mit „closest“ vier je Fall
cli-reveal = Sagen, was der Fehler ist
cli-files = Szenariodateien; sonst die erste von denen, die im Programm enthalten sind
cli-facts = Sagen, wie das Szenario ist: welche Prüfungen seine Fehler unterscheiden, was der Auftrag und ein Raten kosten; einige Sekunden bis eine halbe Minute
cli-apprentices = Virtuelle Azubis je N Fälle bearbeiten lassen und sagen, was sie erreichen, mit --facts; gut zehn Sekunden je Fall
cli-strict = Auch Warnungen lassen die Prüfung scheitern, mit Code 4
cli-seeds = Startzahlen der Fälle, erste und letzte
cli-policies = Wer sie bearbeitet
cli-without-marks = Nur Kosten und Ausgänge zählen; das Bewerten dauert viel länger als das Arbeiten
cli-by-case = Von jedem Fall sagen, wie schwer er ist
cli-keep-worlds = Ordner für das, was zu einem Szenario einmal ausgerechnet wurde, damit die nächste Nachbesprechung nicht darauf warten muss; none bewahrt nichts auf [üblich: { $folder }]
cli-threads = Zahl der Threads, ohne Angabe so viele, wie der Rechner hat; das Ergebnis hängt nicht davon ab
cli-csv = Von jeder Sitzung eine Zeile in dieser Datei aufbewahren, sobald sie fertig ist; ist die Datei schon da, mit ihr weitermachen
cli-parquet = Die Zeilen als Parquet in diese Datei schreiben
cli-join = Nichts ausführen; die Zeilen dieser Dateien zusammenlegen und die Tabelle des Ganzen zeigen
cli-html = Die Nachbesprechung auch in diese Datei schreiben, als Seite mit Zeichnungen, die keine andere Datei braucht
cli-session-file = Sitzungsdatei
cli-at = Nummer des Schritts, statt dessen etwas anderes getan wird
cli-step = Was stattdessen getan wird, wie an der Werkbank; mehrere nacheinander; ohne Angabe werden alle Prüfungen und Reparaturen aufgelistet
cli-all = Alle Prüfungen und Reparaturen auflisten, nicht nur die besten zehn

cli-trouble = faultwright: { $text }

bench-begun = Fall { $seed }. Die Sitzung wird in { $path } aufbewahrt.
bench-resumed = Weiter mit { $path } nach { $steps ->
    [one] einem Schritt
   *[other] { $steps } Schritten
}.
bench-hint = Tippe einen Schritt, zum Beispiel "read codes". "help" listet alle Schritte auf, "help measure" einen; eine Zeile, die mit ? endet, zeigt, was dort stehen kann; "quit" geht hinaus und bewahrt die Sitzung auf.
bench-look-back = Der Auftrag ist abgeschlossen. "whatif 12" zeigt, was statt Schritt 12 möglich gewesen wäre, "whatif 12 read codes", was das gezeigt und verraten hätte; Schritte, die ; trennt, werden nacheinander ausgeführt. "quit" geht hinaus.
bench-no-such-verb = Kein Schritt beginnt mit "{ $verb }". "help" listet alle Schritte auf.
bench-begun-sealed = Ein versiegelter Fall, für: { $name }. Die Sitzung wird in { $path } aufbewahrt.
bench-stays-sealed = Übergeben. Der Fall ist versiegelt: Gib { $path } deinem Prüfer, und notiere die Quittung { $receipt }.
bench-till = [{ $till }]
bench-left = Nicht abgeschlossen. Weiter geht es mit: faultwright bench --session { $path }

replay-agrees = { $steps ->
    [one] Ein Schritt
   *[other] { $steps } Schritte
} noch einmal ausgeführt: Alles, was folgte, ist wie aufgezeichnet. Zustand { $digest }.

mark-written = Die Nachbesprechung steht in { $path }.

check-fine = { $file }: nichts zu beanstanden.
check-doubtful = { $file }: brauchbar, mit { $warnings ->
    [one] einer Warnung
   *[other] { $warnings } Warnungen
}.
open-told = Für { $name }: „{ $title }“, Fall { $seed } von { $scenario }. Der Fehler: { $faults }.
open-receipt = Quittung der Sitzung: { $receipt }
open-written = Die Sitzung mit offenem Fall liegt in { $path }.
draw-for = { $name }:
draw-sealed = Versiegelt in { $path }.
draw-sealed-cost = Erwartete Kosten nach der Auftragsannahme: { $least } bis { $most }.
draw-dealt = Fall { $seed }: { $title }
draw-matched = Fall { $seed }: { $title }. Erwartete Kosten nach der Auftragsannahme: { $least } bis { $most }.
draw-matched-revealed = Fall { $seed }: { $title }. Erwartete Kosten nach der Auftragsannahme: { $least } bis { $most }. Der Fehler: { $faults }.
draw-revealed = Fall { $seed }: { $title }. Der Fehler: { $faults }.

facts-draws = Was gezogen wird:
facts-drawn = kann gezogen werden
facts-entries = { $count ->
    [one] ein Eintrag
   *[other] { $count } Einträge
}
facts-with-sound = { $count ->
    [one] ein Eintrag
   *[other] { $count } Einträge
} und das heile Fahrzeug
facts-uncertain = Ungewissheit
facts-bits = { $bits } Bit
facts-bits-as-many = { $bits } Bit, wie von { $equal } gleich wahrscheinlichen
facts-likeliest = am wahrscheinlichsten
facts-telling = Was als erste Prüfung am meisten sagt, und was sie kostet:
facts-all-apart = Alle { $pairs } Paare dessen, was fehlen kann, unterscheidet bei jeder Schwere eine bezahlbare Prüfung.
facts-some-apart = { $whole } von { $pairs } Paaren dessen, was fehlen kann, unterscheidet bei jeder Schwere eine bezahlbare Prüfung. Diese nicht:
facts-hardest = Von den wenigsten Prüfungen bei jeder Schwere unterschieden:
facts-tests = { $count ->
    [one] eine Prüfung
   *[other] { $count } Prüfungen
}
facts-best = am besten: { $step } ({ $cost })
facts-best-partly = am besten: { $step } ({ $cost }), unterscheidet { $told } der Schweregrade
facts-best-warm = am besten: { $step } bei warmem Motor ({ $cost } und die Fahrt)
facts-best-warm-partly = am besten: { $step } bei warmem Motor ({ $cost } und die Fahrt), unterscheidet { $told } der Schweregrade
facts-told = bei { $told }
facts-one-remedy = eine Reparatur behebt jedes davon
facts-own-remedies = keine Reparatur behebt alle davon
facts-costs = Was der Auftrag im Mittel kostet:
facts-plan = der Plan des Experten, ohne Pflichten
facts-guess = gleich die häufigste Reparatur
facts-guessed = { $cost }, richtig in { $chance } der Fälle: { $repair }
facts-comeback = eine Reklamation
facts-apprentices = Virtuelle Azubis, je { $cases ->
    [one] ein Fall
   *[other] { $cases } Fälle
} (Startzahlen ab 1):
facts-guesser = jene Reparatur

trial-title = { $scenario } ({ $fingerprint }): { $sessions } Sitzungen, { $cases ->
    [one] ein Fall
   *[other] { $cases } Fälle
}
trial-head-policy = Azubi
trial-head-sessions = Sitzungen
trial-head-cost = Kosten [{ $currency }]
trial-head-marks = Punkte
trial-head-regret = verschenkt [{ $currency }]
trial-head-right = richtig
trial-head-unproved = ohne Nachweis
trial-head-unfinished = nicht fertig
trial-head-steps = Schritte
trial-head-seed = Fall
trial-head-planner-steps = Schritte des Planers
trial-head-planner-cost = Kosten des Planers [{ $currency }]
trial-head-marks-apart = Abstand der Punkte
trial-head-cost-apart = Abstand der Kosten [{ $currency }]
trial-percent = { $share } %
trial-nothing = –
trial-unfinished-note = Wer nach 200 Schritten nicht fertig ist, gilt als gescheitert und bekommt keine Punkte.
trial-not-marked = Nicht bewertet: nur Kosten und Ausgänge.
trial-plot = Punkte (nach oben) über Kosten [{ $currency }]:
trial-difficulty = Wie schwer es ist:
trial-difficulty-value = erwartete Kosten nach dem Plan des Experten, bevor etwas bekannt ist, ohne die Pflichten des Handwerks: { $least } bis { $money }
trial-difficulty-planner = der Planer braucht { $steps } Schritte und { $money } samt seinen Pflichten
trial-difficulty-apart = zwischen dem besten und dem schlechtesten Azubi liegen { $marks } Punkte und { $money }
trial-torn = { $path }: Die letzte Zeile war abgeschnitten und bleibt weg.
trial-resumed = { $path }: { $rows ->
    [one] Eine Zeile ist
   *[other] { $rows } Zeilen sind
} schon da.

apprentice-random = wahllos prüfend
apprentice-parts-swapper = Teiletauscher
apprentice-by-the-book = nach Vorschrift
apprentice-near-first = Naheliegendes zuerst
apprentice-information-seeker = Informationssucher
apprentice-planner = Planer

rows-head = Zeile { $line } ist nicht die erste Zeile der Tabelle eines Versuchs.
rows-other-version = Zeile { $line } beginnt eine Tabelle in Version { $version } des Formats, die diese Version des Programms nicht liest. Führe den Versuch noch einmal aus, in eine andere Datei.
rows-fields = Zeile { $line } hat { $found } Felder, wo { $expected } hingehören.
rows-field = Zeile { $line }: "{ $found }" kann nicht unter "{ $column }" stehen.
rows-stranger = Zeile { $line } stammt aus einem anderen Szenario oder einer anderen Version des Programms als die Zeilen davor.
rows-contradiction = Zeile { $line } gibt für eine Sitzung von Fall { $seed } andere Zahlen an als eine Zeile davor.
rows-empty = Es steht keine Zeile darin.

progress-telling = Prüfen, was die Werkzeuge des Falls unterscheiden …
progress-guess = Die häufigste Reparatur versuchen: { $done } von { $of } …
progress-trial = Bearbeitet: { $done } von { $of } Sitzungen …
progress-closest = Angesehen: { $done } von { $of } Startzahlen …
progress-matching = Verglichen: { $done } von { $of } Fällen …
progress-dealing = Teile einen Fall aus …
worlds-not-kept = Was ausgerechnet wurde, lässt sich nicht in { $path } aufbewahren ({ $why }); nächstes Mal wird es neu ausgerechnet.
progress-worlds = Rechne aus, was jeder Fehler zeigen würde: { $done } von { $of } …
progress-hint = Überlege …
progress-what-if = Gehe zurück zu diesem Augenblick …
progress-review = Blicke auf jeden Schritt zurück: { $done } von { $of } …

window-not-built = diese Fassung hat kein Fenster; baue sie mit dem Feature "workshop"
window-bench-instead = Kein Fenster: { $why }. Die Werkbank öffnet sich im Terminal.
opening-no-display = keine Anzeige, auf der sich ein Fenster öffnen ließe (DISPLAY ist { $display }); starte aus einer Desktop-Sitzung, oder gib einen Befehl an, der ohne Fenster auskommt
opening-display-not-set = keine Anzeige, auf der sich ein Fenster öffnen ließe (DISPLAY ist nicht gesetzt); starte aus einer Desktop-Sitzung, oder gib einen Befehl an, der ohne Fenster auskommt
opening-no-library = die Anzeigebibliothek { $library } ist nicht installiert, daher kann sich kein Fenster öffnen
opening-no-graphics = kein Grafiktreiber antwortet: Installiere einen Vulkan-Treiber für diese Grafikkarte, oder den in Software (Paket mesa-vulkan-drivers bei Debian)
opening-graphics-lost = Der Grafiktreiber ging verloren, während das Fenster offen war ({ $why }); von der Sitzung ist nichts verloren: starte neu und mach auf der Eingangsseite weiter. Kommt es wieder vor, erneuere den Treiber oder lass den Prozessor zeichnen (Paket mesa-vulkan-drivers unter Debian)
opening-no-graphics-memory = Die Grafikkarte hat keinen Speicher mehr ({ $why }); von der Sitzung ist nichts verloren: schließe andere Programme oder mach das Fenster mit --size kleiner, starte neu und mach auf der Eingangsseite weiter
opening-drawing-failed = Das Zeichnen ist gescheitert, ein Mangel dieses Programms oder des Grafiktreibers ({ $why }); von der Sitzung ist nichts verloren: starte neu und mach auf der Eingangsseite weiter
opening-ended-badly = das Fenster endete mit Rückgabewert { $code }; seine Meldungen stehen oben

trouble-diverged = { $path }: Ab Eintrag { $entry } folgen andere Ereignisse als aufgezeichnet. Die Datei wurde verändert, oder eine andere Version des Programms hat sie geschrieben; bewerte sie mit jener Version.
trouble-step = Zeile { $line } der Schritte. { $problem } Die Schritte davor sind aufbewahrt.
trouble-wanted-step = Der Schritt hinter --step ist keiner. { $problem }
trouble-no-step = Der Schritt hinter --step ist leer. Schreib einen wie an der Werkbank, zum Beispiel --step 'read codes'.
trouble-no-moment = { $path } hat { $steps ->
    [one] einen Schritt, --at kann also nur 1 sein.
   *[other] { $steps } Schritte, --at kann also 1 bis { $steps } sein.
} Einen Schritt { $asked } gibt es nicht.
trouble-file = { $path }: { $why }
trouble-seeds = "{ $given }" ist kein Bereich von Startzahlen. Schreib die erste und die letzte, zum Beispiel 1..20, höchstens eine Million davon.
trouble-band = "{ $given }" ist keine Spanne von Kosten. Schreib die kleinsten und die größten in Einheiten der Währung, zum Beispiel 90..120.
trouble-too-few = { $found } von { $wanted } Fällen wurden unter { $seeds } Startzahlen gefunden, deren erwartete Kosten zwischen { $least } und { $most } liegen. Mach die Spanne weiter, oder sieh mit --look-at mehr Startzahlen an.
trouble-rows = { $path }: { $problem }
trouble-other-trial = { $path } enthält Zeilen eines anderen Szenarios oder einer anderen Version des Programms. Nenne eine andere Datei, oder räume diese weg.
trouble-other-seed = { $path } ist eine Sitzung mit Startzahl { $kept }, verlangt war Startzahl { $given }. Lass die Startzahl weg, um weiterzumachen, oder nenne eine andere Datei.
trouble-over-session = { $path } ist die Sitzung selbst, und eine Seite dorthin geschrieben würde sie zerstören. Nenne hinter --html eine andere Datei.
trouble-sealed = { $path } gehört zu einem versiegelten Fall, und das würde ihn verraten. Nenne mit --passphrase die Passphrase, wenn du ihn prüfst.
trouble-no-session-inside = { $path } ist ein ausgeteilter Fall und enthält keine Sitzung. Lass --into weg, oder nenne die Sitzung, die bearbeitet wurde.
trouble-class = { $path } hat { $found } Namen. Schreib 1 bis { $most }, jeden auf eine eigene Zeile.
seal-none = { $path } ist kein versiegelter Fall. Nenne eine Datei, die draw --seal geschrieben hat, oder die Sitzung dazu.
seal-other-version = { $path } ist ein versiegelter Fall in Version { $found } des Formats, die dieses Programm nicht liest. Aktualisiere das Programm.
seal-damaged = { $path } ist nicht, wie es geschrieben wurde. Lass dir die Datei noch einmal geben.
seal-not-opened = { $path } öffnet sich nicht: Die Passphrase ist eine andere, oder die Datei wurde nach dem Versiegeln verändert. Prüfe zuerst die Passphrase.
seal-short-passphrase = Die Passphrase ist zu kurz. Schreib eine mit mindestens { $least } Zeichen in die erste Zeile ihrer Datei.
trouble-practised = { $path } wurde als Übung begonnen und kann nicht als Prüfung gelten. Nenne eine Datei, die es noch nicht gibt.
trouble-unfinished = { $path }: Das Fahrzeug ist nach { $steps ->
    [one] einem Schritt
   *[other] { $steps } Schritten
} nicht zurückgegeben. Schließ die Sitzung zuerst ab: faultwright bench --session { $path }
trouble-window = kein Fenster: { $why }
trouble-simulation = Die Simulation ist gescheitert, das ist ein Fehler des Programms: { $why }
