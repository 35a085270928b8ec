### Was an dem nicht stimmt, was getippt wurde: Stelle, Fehler und Abhilfe in einer Zeile.

problem = Bei Zeichen { $column }: { $wrong } { $remedy }

problem-unknown-word = „{ $found }“ ist kein Wort, das hier stehen kann.
problem-ambiguous = „{ $found }“ kann mehr als ein Wort abkürzen.
problem-missing-word = Der Schritt ist nicht vollständig.
problem-missing = Der Schritt ist nicht vollständig: Es fehlt { $what }.
problem-extra = Der Schritt war vor „{ $found }“ schon vollständig.
problem-bad-number = „{ $found }“ passt hier nicht; hierher gehört { $wanted }.
problem-no-such-place = „{ $found }“ gibt es an diesem Fahrzeug nicht; hierher gehört { $what }.
problem-other-kind = „{ $found }“ ist { $is }, hierher gehört aber { $what }.

remedy-nearest = Meintest du { $list }?
remedy-options = Schreib { $list }.
remedy-allowed = Du kannst hier schreiben: { $list }.
remedy-end = Lass den Rest weg, oder setz # vor einen Kommentar.
remedy-none = Dieses Fahrzeug hat keines.
remedy-text = Schreib ihn bis zum Zeilenende.
remedy-percent = Schreib eine ganze Zahl von 0 bis 100, zum Beispiel 60%.
remedy-seconds = Schreib ganze Sekunden von 1 bis 65535, zum Beispiel 2 s.
remedy-reading = Schreib Ziffern mit einem Punkt vor den Dezimalstellen, und V, mV, ohms, kohms, Mohms, A oder mA derselben Größe, wenn du willst, zum Beispiel 7.5 ohms.
remedy-not-below-least = Schreib den kleineren Wert zuerst.

expected-text = der Text
number-percent = eine Zuversicht in Prozent
number-seconds = eine Zeit in Sekunden
number-reading = ein Messwert
number-not-below-least = ein Wert, der nicht kleiner ist als der davor

kind-part = ein Teil, das sich ausbauen lässt
kind-connector = ein Stecker
kind-valve = ein Ventil
kind-test-point = ein Prüfpunkt
kind-in-view = etwas, das man ansehen kann
kind-mendable = eine Leitung oder ein Kontakt
kind-wiggled = ein Stecker, ein Kontakt oder eine Leitung daran
kind-wire = eine Leitung
kind-replaceable = eine Sicherung oder ein Relais
kind-route = eine Straße für eine Probefahrt
kind-part-number = eine Teilenummer
kind-fault-place = ein Ort für diesen Fehler

### Dateien, die sich gar nicht lesen lassen.

unreadable-not-found = Eine solche Datei gibt es nicht. Prüfe ihren Namen und ihren Ordner.
unreadable-not-a-file = Das ist ein Ordner oder ein Gerät. Nenne eine Datei, die auf .ron endet.
unreadable-not-allowed = Das System lässt dich sie nicht lesen. Bitte ihren Besitzer um Erlaubnis, oder nimm eine eigene Kopie.
unreadable-too-large = Sie ist größer als { $most } KiB, mehr, als ein Szenario braucht. Prüfe, ob es die richtige Datei ist.
unreadable-not-utf8 = Sie ist nicht in UTF-8 geschrieben. Speichere sie in dieser Kodierung.
unreadable-failed = Das System konnte sie nicht lesen. Prüfe die Platte, dann versuch es noch einmal.
unreadable-failed-number = Das System konnte sie nicht lesen, mit seinem Fehler { $number }. Prüfe die Platte, dann versuch es noch einmal.

### Was in einem Szenario oder einem Fahrzeug nicht stimmt: hinter der Stelle Ursache und Abhilfe.

flaw = { $file }:{ $line }:{ $column }: { $said }
flaw-in-file = { $file }: { $said }
flaws-left-off = { $count ->
    [one] Ein weiteres Problem wurde gefunden und ist nicht gezeigt.
   *[other] { $count } weitere Probleme wurden gefunden und sind nicht gezeigt.
} Behebe zuerst diese, dann prüfe noch einmal.

flaw-no-comma = Davor fehlt ein Komma. Setz eines hinter den Wert davor.
flaw-no-colon = Davor fehlt ein Doppelpunkt. Schreib einen Namen, einen Doppelpunkt und einen Wert, zum Beispiel weight: 2.
flaw-open-bracket = Diese Klammer { $found } wird nie geschlossen. Setz { $closing } dorthin, wo ihr Inhalt endet, oder such weiter unten nach einer anderen Klammer, die fehlt.
flaw-other-bracket = „{ $found }“ passt nicht zur zuletzt geöffneten Klammer. Schließ ( mit ), [ mit ] und { "{" } mit { "}" }.
flaw-open-text = Dieser Text wird nie geschlossen. Setz " an sein Ende.
flaw-open-comment = Dieser Kommentar wird nie geschlossen. Setz */ an sein Ende.
flaw-too-long = Die Datei ist vor dieser Stelle vollständig. Nimm den Rest heraus, oder such oberhalb nach einer Klammer, die zu früh schließt.
flaw-no-name = Hier ist ein Name oder ein Wert fällig. Schreib einen, oder nimm heraus, was hier steht.
flaw-bad-escape = Dieser umgekehrte Schrägstrich hat mit dem, was folgt, keine Bedeutung. Schreib \\ für einen umgekehrten Schrägstrich, \" für ein Anführungszeichen und \n für eine neue Zeile.
flaw-bad-number = Diese Zahl ist nicht richtig geschrieben. Schreib Ziffern, mit einem Punkt vor den Dezimalstellen, zum Beispiel 12 oder 0.25.
flaw-unknown-extension = Das verlangt eine Erweiterung, die RON nicht hat. Nimm das #![enable(…)] heraus.
flaw-other-syntax = Die Datei endet hier oder geht auf eine Weise weiter, die RON, die Schreibweise der Szenarien, nicht kennt. Vergleiche sie mit einem Szenario ohne Beanstandung.
flaw-too-many-values = Hier steht ein Wert mehr als die { $most }, die eine Datei haben darf. Such oberhalb nach einer Liste, die kein Ende nimmt.
flaw-too-deep = Klammern sind hier tiefer als { $most } ineinander geschachtelt. Such oberhalb nach Klammern, die geöffnet und nie geschlossen werden.
flaw-wrong-format = Die Datei sagt, ihr Format sei „{ $found }“, hier ist aber „{ $expected }“ fällig. Nenne eine Datei dieses Formats, oder berichtige diese Zeile.
flaw-newer-format = Version { $found } des Formats ist neuer als dieses Programm, das Version { $newest } liest. Aktualisiere das Programm.
flaw-unknown-format = Eine Version { $found } des Formats gibt es nicht. Schreib { $newest }.
flaw-newer-field = „{ $field }“ kam mit Version { $since } des Formats, und diese Datei nennt eine ältere. Gib { $since } als ihre Version an.
flaw-unknown-field = Ein Feld „{ $found }“ gibt es hier nicht.
flaw-missing-field = Hier fehlt das Feld „{ $field }“. Schreib { $field }: und seinen Wert zwischen diese Klammern.
flaw-repeated-field = Das Feld „{ $field }“ steht hier zum zweiten Mal. Nimm eines der beiden heraus.
flaw-number-does-not-fit = Diese ganze Zahl ist kleiner als null oder zu groß für ihr Feld. Schreib eine, die keines von beidem ist.
flaw-not-a-code = „{ $found }“ ist kein Fehlercode. Schreib P, C, B oder U, eine Ziffer von 0 bis 3, und drei Ziffern oder Buchstaben von A bis F, zum Beispiel P0010.
flaw-not-finite = „{ $found }“ ist keine Zahl, mit der sich rechnen lässt. Schreib eine endliche, zum Beispiel 0.25.

flaw-shape-text = Hier ist ein Text fällig. Schreib ihn in Anführungszeichen, zum Beispiel "Rough idle".
flaw-shape-whole-number = Hier ist eine ganze Zahl fällig. Schreib nur Ziffern, zum Beispiel 12.
flaw-shape-number = Hier ist eine Zahl fällig. Schreib Ziffern, mit einem Punkt vor den Dezimalstellen, zum Beispiel 0.25.
flaw-shape-word = Hier ist ein einfaches Wort fällig. Schreib es ohne Anführungszeichen, zum Beispiel Practice.
flaw-shape-fields = Hier sind Felder in runden Klammern fällig. Schreib sie so: (first: 1, second: 2).
flaw-shape-pair = Hier sind zwei Werte in runden Klammern fällig. Schreib sie so: (0.2, 0.8).
flaw-shape-list = Hier ist eine Liste in eckigen Klammern fällig. Schreib sie so: [1, 2], oder [], wenn sie leer ist.
flaw-shape-map = Hier ist eine Zuordnung in geschweiften Klammern fällig. Schreib sie so: { "{" }"first": 1, "second": 2{ "}" }.
flaw-shape-optional = Hier ist ein Wert fällig, der fehlen darf. Schreib None, wenn er fehlt, und Some(…) darum herum, wenn nicht.

flaw-out-of-range = { $found } liegt außerhalb des Erlaubten. Schreib eine Zahl von { $least } bis { $most }.
flaw-wrong-order = { $first } kommt zuerst und muss kleiner als { $second } sein. Berichtige eines der beiden: Ein kleinster Wert steht vor einem größten, und jeder Abschnitt einer Fahrt endet später als der davor.
flaw-too-many = Diese Liste hat { $found } Einträge, erlaubt sind { $most }. Nimm { $surplus } heraus.
flaw-empty = Hier steht nichts darin. Schreib etwas zwischen die Anführungszeichen oder Klammern.
flaw-all-weights-zero = Kein Gewicht ist hier größer als null. Gib mindestens einem eines, das es ist.
flaw-bad-name = „{ $found }“ kann kein Name sein. Schreib höchstens { $most } kleine Buchstaben a bis z und Ziffern, mit einzelnen Bindestrichen zwischen Wörtern, zum Beispiel intake-valve.
flaw-leaves-folder = „{ $found }“ führt aus dem Ordner „vehicles“ hinaus. Schreib den Namen einer Datei in diesem Ordner ohne ihre Endung, zum Beispiel harrowfen-dray.
flaw-unknown-name = Das gibt es nicht: { $thing } „{ $found }“.
flaw-no-such-place = „{ $found }“ kann den Fehler „{ $fault }“ nicht haben.
flaw-vehicle-unreadable = Die Datei { $file } des Fahrzeugs lässt sich nicht lesen: { $said }
flaw-repeated = { $thing } „{ $name }“ steht hier zum zweiten Mal. Gib jedem einen eigenen Namen, oder nimm einen der beiden heraus.
flaw-repeated-element = „{ $name }“ ist eines zu viel: Sein Name ist vergeben, oder es ist eine zweite Batterie oder eine zweite Versorgung des Steuergeräts. Gib ihm einen eigenen Namen, oder nimm es heraus.
flaw-repeated-camshaft = „{ $name }“ ist das zweite Ventil einer Nockenwelle, und eine Bank hat eine für den Einlass und eine für den Auslass. Wähle die andere Nockenwelle, schreib bank: Two, wenn es auf der anderen Bank eines V-Motors sitzt, oder nimm das Ventil heraus.
flaw-repeated-fault = Dieser Fehler an „{ $name }“ steht schon in der Liste. Nimm einen der beiden heraus, und zähle sein Gewicht zu dem des anderen.
flaw-repeated-entry = „{ $name }“ steht schon in dieser Zuordnung. Nimm eines der beiden heraus.
flaw-no-answer = Der Kunde hat keine Antwort zu „{ $topic }“. Schreib unter die Antworten { $topic }: und in Anführungszeichen, was der Kunde sagt.
flaw-no-price = Die Teilenummer „{ $part }“ hat keinen Preis. Schreib unter die Preise der Ventile "{ $part }": und den Preis in Hundertsteln.
flaw-nobodys-code = { $code } ist kein Fehlercode eines Ventils, ein falscher Fehlercode beschuldigt aber eines. Wähle den Fehlercode eines Ventils, oder lass `origin` weg.
flaw-own-code = { $code } ist ein Fehlercode von „{ $valve }“, hier ist aber einer fällig, der mit keinem Ventil zu tun hat. Wähle einen anderen.
flaw-repeated-code = { $code } ist vergeben. Wähle einen anderen Fehlercode, oder nimm diesen heraus.
flaw-same-place = An „{ $place }“ sitzt auch ein anderer Fehler dieses Eintrags, eine Reparatur würde also beide beseitigen. Verlege einen davon an einen anderen Ort, oder mach zwei Einträge daraus.
flaw-same-winding = „{ $part }“ baut das Werk dort ein, hier ist aber eine andere Wicklung fällig. Wähle eine andere Teilenummer, oder nimm other_winding heraus.
flaw-does-not-fit = Das Teil „{ $part }“ passt nicht an „{ $valve }“. Wähle eines, das passt, oder schreib "{ $valve }" zu dem, wohin es passt.
flaw-no-partner = „{ $valve }“ verstellt eine Nockenwelle der einen Bank, und kein Ventil dieselbe der anderen. Füge das andere Ventil hinzu, denn beide Bänke eines V-Motors sind gleich gebaut, oder berichtige `cam` oder `bank` bei diesem.
flaw-uneven-banks = { $cylinders } Zylinder lassen sich nicht gleich auf zwei Bänke verteilen. Schreib eine gerade Zahl.
flaw-narrow-window = Heile Wicklungen von „{ $part }“ unterscheiden sich um bis zu { $spread } %, und manche lägen außerhalb der gedruckten Grenzen. Rücke ohms_least und ohms_most weiter von ohms_at_20 weg.
flaw-valve-no-part = „{ $valve }“ ist nicht unter den Teilen und ließe sich also nicht ausbauen. Füge ein Teil mit dieser id und kind: Valve hinzu.
flaw-valve-no-connector = Der Stecker von „{ $valve }“ ist nicht unter den Teilen. Füge ihn dort mit kind: Connector hinzu, oder berichtige seinen Namen.
flaw-valve-no-pins = Die Wicklung von „{ $valve }“ endet nicht an Kontakten ihres Steckers. Füge an jedem Ende der Wicklung einen Pin dieses Steckers mit „to“ hinzu.
flaw-valve-no-coil = „{ $valve }“ hat im Stromlaufplan keine Wicklung. Füge einen Coil mit valve: "{ $valve }" hinzu.
flaw-valve-no-driver = „{ $valve }“ hat im Stromlaufplan keine Endstufe. Füge einen LowSideDriver mit valve: "{ $valve }" hinzu.
flaw-no-battery = Der Stromlaufplan hat keine Batterie. Füge eine Battery hinzu.
flaw-no-battery-minus = Der Stromlaufplan hat keinen Knoten „battery-minus“, gegen den jede Spannung zählt. Gib der Batterie minus: "battery-minus".
flaw-no-engine-ground = Der Stromlaufplan hat keinen Knoten „engine-ground“, den eine durchgescheuerte Leitung berührt. Füge einen Wire hinzu, der dort endet.
flaw-no-module-supply = Nichts im Stromlaufplan versorgt das Steuergerät. Füge eine ModuleSupply hinzu.
flaw-no-driver-ground = Keine ModuleSupply hat die Masse dieser Endstufe. Schreib in beide denselben Knoten.
flaw-hanging-node = Am Knoten „{ $node }“ endet nichts als dieses Element, dort kann also kein Strom fließen.
flaw-island-node = Vom Knoten „{ $node }“ führt kein Weg nach „battery-minus“. Füge hinzu, was dazwischen fehlt, oder berichtige einen Namen.
flaw-same-ends = Dieses Element endet zweimal am Knoten „{ $node }“. Gib jedem Ende einen eigenen Knoten.
flaw-blocked-in-a-circle = { $count ->
    [one] „{ $parts }“ liegt hinter sich selbst
   *[other] { $parts } liegen hintereinander im Kreis
}, nichts davon ginge also je heraus. Nimm einen Namen aus „behind“ heraus.
flaw-no-torque = „{ $part }“ verlangt ein Drehmoment und hat keines. Schreib torque_nm: und das Drehmoment in Newtonmetern, oder nimm Torque aus care heraus.

### Was an einem brauchbaren Szenario zweifelhaft ist: hinter der Stelle Ursache und Abhilfe.

doubt = { $file }:{ $line }:{ $column }: Warnung: { $said }
doubt-never-drawn = Kein Fall hat je diesen Fehler, denn sein Gewicht ist null. Gib ihm ein Gewicht über null, oder nimm den Eintrag heraus.
doubt-only-fault = Das ist der einzige Fehler, der gezogen werden kann, also gibt es nichts herauszufinden. Füge andere hinzu, die zur selben Beanstandung passen.
doubt-dominates = { $share } aller gezogenen Fälle haben diesen Fehler, sodass öfter recht hat als nicht, wer ihn rät. Senk sein Gewicht, oder heb andere.
doubt-mostly-sound = { $share } aller gezogenen Fälle haben gar keinen Fehler. Senk dieses Gewicht, oder heb die der Fehler.
doubt-free = Das kostet nichts, sodass niemand abwägen muss, ob er es braucht. Schreib einen Preis über null, in Hundertsteln.
doubt-cheap-comeback = Eine Reklamation kostet nicht mehr als das Teil „{ $part }“ ({ $price }), sodass es am billigsten sein kann, das Fahrzeug zurückzugeben, wie es ist. Heb sie über die Kosten einer Reparatur.
doubt-names-fault = „{ $found }“ nennt einen Fehler, der gezogen werden kann ({ $fault }), und der Auftrag wird gelesen, bevor etwas geprüft ist. Lass den Kunden stattdessen sagen, was zu merken ist.
doubt-names-place = „{ $found }“ nennt einen Ort, an dem manche der Fehler sind und andere nicht. Sag es anders, außer es soll dorthin oder in die Irre führen.
doubt-never-there = Die Wahrscheinlichkeit ist null, sodass das nie da ist. Gib ihr einen Wert über null, oder nimm es heraus.
doubt-always-passed = Eine Bestehensgrenze von 0 % kann niemand verfehlen. Schreib den Anteil der Punkte, der verlangt ist, zum Beispiel 60.
doubt-hardly-passed = Eine Bestehensgrenze von 100 % ist mit dem ersten verlorenen Punkt verfehlt. Schreib den Anteil der Punkte, der verlangt ist, zum Beispiel 60.
doubt-no-about = Das Szenario hat keinen Satz über sich für die Liste, aus der es gewählt wird. Schreib about: und einen, der nichts verrät.
doubt-no-teaching = Das Szenario hat keine Notiz für Lehrende. Schreib teaching: mit dem, was es lehrt, seinen Fallen und dem Weg eines Experten.
doubt-never-noticed = Der Kunde merkt nichts von „{ $faults }“, wie schwer auch immer, sodass nie ein Fall damit ausgegeben wird. Heb den Bereich der Schwere, ändere die Strecke des Kunden, oder nimm den Eintrag heraus.
doubt-not-told = Zu wenige bezahlbare Prüfungen unterscheiden „{ $faults }“ von „{ $rival }“, sodass Fälle damit abgelehnt werden können. Nimm einen der beiden heraus, oder ändere den Bereich der Schwere.

thing-vehicle = Fahrzeug
thing-route = Straße
thing-valve = Ventil
thing-part-number = Teilenummer
thing-part = Teil
thing-camshaft = Nockenwelle
thing-connector = Stecker
thing-fuse = Sicherung
thing-test-point = Prüfpunkt
thing-node = Knoten des Stromlaufplans
thing-element = Element des Stromlaufplans
thing-fault = Fehler
thing-entry = Eintrag

remedy-take-out = Nimm es heraus.
remedy-name-vehicle = Leg seine Datei in den Ordner „vehicles“ neben dem Szenario, oder nenne eines, das da ist.
remedy-name-route = Schreib den Namen einer Straße aus „routes“.
remedy-name-valve = Schreib die id eines Ventils aus „valves“.
remedy-name-part-number = Schreib eine Teilenummer aus „valve_parts“.
remedy-name-part = Schreib die id eines Teils aus „parts“.
remedy-name-camshaft = Schreib Intake oder Exhaust.
remedy-name-connector = Schreib die id eines Teils mit kind: Connector.
remedy-name-fuse = Schreib die id einer Fuse des Stromlaufplans.
remedy-name-test-point = Schreib die id eines Prüfpunkts aus „test_points“.
remedy-name-node = Schreib einen Knoten, an dem Elemente des Stromlaufplans enden.
remedy-name-element = Schreib die id eines Elements aus „elements“.
remedy-name-fault = Schreib Art und Ort eines Fehlers aus „faults“.
remedy-name-entry = Schreib den Namen eines Eintrags, der da ist.
remedy-valve-fault = Schreib die id eines Ventils.
remedy-pin-fault = Schreib die id eines Pin des Stromlaufplans.
remedy-wire-fault = Schreib die id eines Wire, der an einem Pin endet.
remedy-control-wire-fault = Schreib die id eines Wire, der am Pin eines LowSideDriver endet.
remedy-feed-wire-fault = Schreib die id eines Wire, der ein Ventil über eine Fuse versorgt.
remedy-fuse-fault = Schreib die id einer Fuse, die ein Ventil versorgt.
remedy-relay-fault = Schreib die id eines RelayContact, der ein Ventil versorgt.
remedy-sump-fault = Schreib "sump".
remedy-hanging-node = Lass dort etwas anderes enden, oder berichtige seinen Namen.

### Warum kein Fall ausgeteilt werden konnte.

draw-none-accepted = Es konnte kein Fall ausgeteilt werden: Keine von { $attempts } Ziehungen ergab einen, der sich lösen lässt.
draw-without-complaint = In { $count } zeigt der Fehler nichts, was den Kunden herbrächte. Erhöhe die Schweregrade, oder verlängere die Straße des Kunden.
draw-not-separable = In { $count } lässt sich der Fehler nicht von einem anderen unterscheiden. Füge Prüfpunkte hinzu, oder nimm Fehler heraus, die gleich aussehen.

### Was das System zu einer Datei sagt, und was dagegen zu tun ist.

io-not-found = eine solche Datei oder einen solchen Ordner gibt es nicht
io-not-allowed = das System erlaubt es nicht
io-full = die Platte ist voll
io-read-only = die Platte lässt sich nur lesen
io-is-folder = es ist ein Ordner
io-not-folder = etwas in ihrem Pfad ist kein Ordner

remedy-io-no-folder = Leg den Ordner zuerst an, oder wähle einen anderen.
remedy-io-not-found = Prüfe den Namen und den Ordner.
remedy-io-not-allowed = Wähle einen eigenen Ordner, oder bitte seinen Besitzer um Erlaubnis.
remedy-io-full = Mach Platz auf der Platte.
remedy-io-read-only = Wähle eine Platte, auf die geschrieben werden kann.
remedy-io-is-folder = Nenne eine Datei.
remedy-io-not-folder = Prüfe jeden Ordner im Pfad.
remedy-io-other = Versuch es noch einmal, oder wähle einen Ort auf einer anderen Platte.

### Was an einer Sitzungsdatei nicht stimmt: hinter der Stelle Ursache und Abhilfe.

session-file = { $path }: { $said }
session-file-line = { $path }:{ $line }: { $said }
session-torn = { $path }: Eintrag { $entry } wurde beim Schreiben abgeschnitten, und was aus ihm folgte, wurde nie gezeigt. Was von ihm da war, { $bytes ->
    [one] 1 Byte
   *[other] { $bytes } Bytes
}, liegt jetzt in { $aside }.

session-refused = { $action }: { $why }. { $remedy }
session-exists = Eine solche Datei gibt es schon, und sie blieb unberührt. Wähle einen anderen Namen, oder mach mit ihr weiter: faultwright bench --session { $typed }
session-not-a-file = Das ist ein Ordner, ein Gerät oder eine Pipe. Nenne eine Sitzungsdatei.
session-in-use = Ein anderes Programm arbeitet an dieser Sitzung. Schließ sie dort zuerst ab oder verlass sie.
session-too-large = Sie ist größer als { $limit } MiB, was keine Sitzung ist. Prüfe, ob es die richtige Datei ist.
session-old-version = Sie wurde in Version { $version } des Formats von einem älteren Programm begonnen und lässt sich nicht fortsetzen. Beginne eine neue Sitzung, oder bewerte diese, wie sie ist: faultwright mark { $typed }
session-cut-off = Die Datei endet mitten in Eintrag { $entry }, und was daraus folgte, wurde nie gezeigt. Mach mit den ganzen Einträgen weiter: faultwright bench --session { $typed }
session-not-begun = Die Sitzung wurde nicht begonnen: { $said }
session-left-behind = Der Anfang der Datei ist noch da; lösche ihn zuerst.
session-not-written = Eintrag { $entry } wurde nicht aufbewahrt: { $said }
session-kept = Die Einträge davor sind aufbewahrt.
session-rest-behind = Ein Teil von ihm steht vielleicht am Ende der Datei und kommt weg, wenn die Sitzung weitergeht.
session-go-on = Dann mach weiter: faultwright bench --session { $typed }

action-create = Die Datei lässt sich nicht anlegen
action-open = Die Datei lässt sich nicht öffnen
action-lock = Die Datei lässt sich nicht gegen andere Programme sperren
action-measure = Die Größe der Datei lässt sich nicht ermitteln
action-read = Die Datei lässt sich nicht lesen
action-write = Die Datei lässt sich nicht schreiben
action-sync = Die Datei lässt sich nicht auf die Platte bringen
action-sync-folder = Der Name der Datei lässt sich nicht auf die Platte bringen
action-cut-back = Das abgerissene Ende der Datei lässt sich nicht abschneiden
action-save-torn = Das abgerissene Ende der Sitzung lässt sich nicht darin aufbewahren

failure-short = Nur { $written } von { $expected } Bytes gingen hinein, wie auf einer Platte, die fast voll ist. Mach Platz auf der Platte.
failure-too-large = Die Datei würde größer als { $limit } MiB, mehr, als wieder gelesen wird. Beginne eine neue Sitzung in einer anderen Datei.
failure-changed-outside = Etwas anderes hat die Datei verändert, die { $got } Bytes hat und { $expected } haben sollte. Stell sie wieder her, wie sie war, und halte andere Programme von ihr fern.
failure-deleted = Die Datei wurde gelöscht oder ersetzt. Beginne eine neue Sitzung in einer anderen Datei.
failure-unwritable = { $part } ließe sich nicht unverändert wieder lesen, das ist ein Fehler des Programms. Melde ihn mit den Schritten, die hierher führten.
unwritable-case = Der Fall
unwritable-step = Der Schritt
unwritable-events = Was aus dem Schritt folgte,

-unchanged-copy = Nimm eine unveränderte Kopie der Datei.
-other-version = Öffne sie mit der Version, die sie geschrieben hat.
session-not-a-session = Das ist keine Sitzungsdatei. Nenne eine, die die Werkbank geschrieben hat; ihr Name endet meist auf .session.
session-header-cut = Die Datei endet in ihrer ersten Zeile, nach { $bytes ->
    [one] 1 Byte
   *[other] { $bytes } Bytes
}, enthält also keinen Schritt. Lösche sie und beginne neu.
session-newer = Eine neuere Version des Programms hat sie geschrieben, in Format { $got }; diese liest bis Format { $newest }. Öffne sie mit einer neueren Version.
session-older = Sie hat Format { $got }, und dieses Programm liest ab Format { $oldest }. { -other-version }
session-header-unreadable = Die erste Zeile ist bei Byte { $column } beschädigt: { $fault }. { -unchanged-copy }
session-case-unreadable = Der Fall ist, wie er geschrieben wurde, und diese Version kann ihn ab seinem Byte { $column } nicht lesen: { $fault }. { -other-version }
session-header-rewritten = Die erste Zeile ist nicht so geschrieben, wie das Programm sie schreibt: Sie wurde nachträglich verändert. { -unchanged-copy }
session-header-chain = Die Kette reißt in der ersten Zeile: Sie wurde nachträglich verändert. { -unchanged-copy }
session-not-utf8 = Diese Zeile ist nach { $valid } Bytes beschädigt: Was folgt, ist nicht UTF-8. { -unchanged-copy }
session-entry-unreadable = Eintrag { $entry } ist bei Byte { $column } beschädigt: { $fault }. { -unchanged-copy }
session-runs-on = Eintrag { $entry } ist ganz, aber dahinter steht bei Byte { $column } noch etwas. { -unchanged-copy }
session-out-of-order = Eintrag { $got } steht, wo Eintrag { $entry } hingehört: Einer wurde herausgenommen, verdoppelt oder verschoben. { -unchanged-copy }
session-entry-rewritten = Eintrag { $entry } ist nicht so geschrieben, wie das Programm ihn schreibt: Er wurde nachträglich verändert. { -unchanged-copy }
session-chain-broken = Die Kette reißt bei Eintrag { $entry }: Dieser oder einer davor wurde nachträglich verändert. { -unchanged-copy }
session-step-unknown = Eintrag { $entry } ist, wie er geschrieben wurde, und diese Version kennt seinen Schritt nicht, bei seinem Byte { $column }: { $fault }. { -other-version }
json-syntax = es ist kein wohlgeformtes JSON
json-shape = es enthält nicht, was dort hingehört
json-cut = es endet zu früh
