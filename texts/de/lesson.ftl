### Machine-drafted, not yet reviewed by a speaker.

## The course

heading = Lektionen
intro = In der Reihenfolge des Kurses. Nichts verlässt diese Seite: am Ende gibt es einen Beleg zum Abgeben.
loading = Die Lektionen werden geladen.
none = Der Kurs ist hier leer. Öffnen Sie eine Lektionsdatei, die Sie bekommen oder geschrieben haben.
noList = Der Kurs ließ sich nicht zeigen: { $why }. Die Verbindung prüfen und noch einmal versuchen; Einstellungen und Injektion gehen weiter.
noEngine = Der Teil der Seite, der Lektionen liest, ließ sich nicht laden: { $why }. Einstellungen und Injektion gehen weiter.
noFile = { $name } ließ sich nicht laden
unreadable = Diese Lektion lässt sich nicht öffnen: { $why }. Die Seite ist wie zuvor.
unknown = Im Kurs gibt es keine Lektion „{ $id }“; die Liste zeigt, welche es gibt.
retry = Noch einmal versuchen
open = Lektionsdatei öffnen
tooLarge = die Datei ist größer als 32 kB, mehr darf eine Lektion nicht haben

mode-guided = geführt
mode-practice = Übung
mode-assessment = Prüfung

modeNote-guided = Geführt: was als Nächstes kommt, steht immer da.
modeNote-practice = Übung: ein Hinweis, wenn Sie danach fragen.
modeNote-assessment = Prüfung: keine Hinweise, keine Messwerte, keine Umrisse bis zum Abschluss, und ohne Aufnahme ist nichts zu sehen. Was abgeschlossen ist, bleibt abgeschlossen.

exposures = Bilder kommen nur aus Aufnahmen, und sie zählen.
standingNew = neu
standingBegun = begonnen
standingDone = { $passed ->
    [yes] bestanden, höchstens { $points } von 100
   *[no] noch nicht bestanden, höchstens { $points } von 100
  }

## One lesson

begin = Beginnen
goOn = { $n ->
    [one] Weitermachen ({ $n } Handlung)
   *[other] Weitermachen ({ $n } Handlungen)
  }
beginAnew = Neu beginnen
toList = Alle Lektionen
leave = Lektion verlassen
code = Ihr Code
codeHint = Ein Code von Ihrer Lehrperson oder ein eigener, nicht Ihr Name. Er lost Ihre Person aus: mit demselben Code begegnet Ihnen dieselbe. Höchstens 64 Zeichen.
codeWanted = Diese Lektion lost Ihre eigene Person aus: zuerst einen Code eingeben.
codeOptional = Steht im Beleg, damit Ihre Lehrperson weiß, von wem er ist. Er darf leer bleiben.
steps = Was verlangt wird
passMark = Bestanden ab { $n } von 100.
gates = Woran sie scheitert, wie viele Punkte es auch sind
drawn = Ihre Person: { $patient }, { $place }.
running = Lektion: { $title }
hintDone = Alles, was die Lektion verlangt, ist getan: abschließen.
hintOpen = Nicht jeder Schritt ist getan: zu einem offen gelassenen zurückgehen oder so abschließen.
done = { $passed ->
    [yes] { $points } von 100: bestanden.
   *[no] { $points } von 100: noch nicht bestanden.
  }
incomplete = Nicht jeder Schritt wurde getan; was fehlt, zählt nichts.
receipt = Beleg speichern
receiptNote = Geben Sie den Beleg ab, wo Ihre Lehrperson es verlangt. Er enthält Ihren Code, jede Handlung und die Punkte; vom selben Rechenwerk abgespielt ergibt er dieselben Punkte. Er beweist nicht, wer es getan hat.
again = Noch einmal
next = Weiter: { $title }
bad = Der Beleg ließ sich nicht ausstellen: { $why }.
notKept = Dieser Browser behält nichts für diese Seite: der Fortschritt gilt, bis sie geschlossen wird. Speichern Sie den Beleg, bevor Sie gehen.
notHeldHere = Hier wird kein Fortschritt gehalten: in einem Zug abschließen oder den Beleg speichern, bevor Sie gehen.
left = Sie haben die Lektion verlassen; sie bleibt, wie sie war.

## Progress, kept in a file

progress-save = Fortschritt speichern
progress-open = Fortschritt öffnen
progress-opened = { $n ->
    [one] Fortschritt von { $n } Lektion übernommen.
   *[other] Fortschritt von { $n } Lektionen übernommen.
  }
progress-bad = Diese Datei enthält keinen Fortschritt dieser Seite; nichts wurde geändert.

## Naming the parts of a bone in the picture

naming-part = { $side ->
    [left] { $part } von { $level } links
    [right] { $part } von { $level } rechts
   *[none] { $part } von { $level }
  }
naming-ask = Zeigen Sie: { $part }.
naming-allFound = Alle Teile sind gefunden.
# Where to look for a part, in words of the oblique picture, where a vertebra looks like a small dog.
naming-hint = { $part ->
    [transverse_process] Der Querfortsatz von { $level } ist die Nase des Hundes: er steht vom Pedikel seitlich ab, zur Seite der Nadel.
    [pedicle] Der Pedikel von { $level } ist das Auge des Hundes: ein Ring unter der oberen Deckplatte.
    [superior_articular_process] Der obere Gelenkfortsatz von { $level } ist das Ohr des Hundes: er zeigt vom Auge nach oben, zur Höhe darüber.
    [pars] Die Pars von { $level } ist der Hals des Hundes: die schmale Brücke zwischen Ohr und Vorderbein.
    [lamina] Die Lamina von { $level } ist der Leib des Hundes: die breite Platte zur Mitte hin.
    [inferior_articular_process] Der untere Gelenkfortsatz von { $level } ist das Vorderbein des Hundes: er zeigt nach unten, zur Höhe darunter.
    [spinous_process] Der Dornfortsatz von { $level } steht in der Mittellinie, hinter dem Leib des Hundes.
    [body] Der Körper von { $level } ist der große Block zwischen seinen beiden Deckplatten.
   *[other] Sehen Sie die Umrisse von { $level } durch; jeder leuchtet auf, wenn man ihn drückt.
  }
naming-count = { $found } von { $all } gefunden
naming-how = Einen Umriss im Bild drücken: er leuchtet auf. Noch einmal drücken, oder die Schaltfläche, um zu antworten. Mit der Tastatur auf dem Bild: Pfeiltasten gehen von Umriss zu Umriss, Eingabe antwortet. Der C-Bogen darf gedreht werden.
naming-answer = Dieser
naming-previous = Voriger Umriss
naming-following = Nächster Umriss
naming-none = Dort ist kein Umriss: näher an einer Linie drücken.
naming-chosenOf = Umriss { $i } von { $n } leuchtet.
naming-chosen = Ein Umriss leuchtet.
naming-first = Zuerst einen Umriss wählen.
naming-right = Richtig: { $part }.
naming-wrong = Nein: das ist { $part }.
naming-shown = Jetzt leuchtet: { $part }; danach wird noch einmal gefragt.
naming-later = Noch einmal gefragt wird: { $part }.

## Pages for teachers

teach-heading = Für Lehrende:
teach-check = Belege prüfen
teach-author = Lektion schreiben
completion-open = Eine Seite zum Drucken
completion-note = Für eine Mappe. Name und Datum stehen darauf, wie Sie sie angeben; sie werden weder behalten noch gesendet.
completion-name = Name
completion-day = Datum
completion-print = Drucken
completion-heading = { $passed ->
    [yes] Lektion bestanden
   *[no] Lektion gemacht, nicht bestanden
  }
completion-code = Kürzel
completion-lesson = Lektion
completion-patient = Patient
completion-dayGiven = Datum, wie angegeben
completion-engine = Bewertet von
completion-engineLine = Downbeam { $version }, Rechenkern { $scoring }, Lektion { $hash }
completion-caution = Übung an einem berechneten Modell. Sie sagt nichts über das Können an Patienten und erlaubt keine klinische Tätigkeit: Es gelten örtliche Vorgaben, Ausbildung unter Aufsicht und die Berufszulassung. Eine solche Seite kann jeder drucken; prüfen lässt sich der Beleg.
completion-patientLine = { $patient }, { $place }
