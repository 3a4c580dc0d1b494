### Üben: die Runde des Tages, die Lernkurve, eine Runde im Kurs.

title = Downbeam: Tagesrunde
classTitle = Downbeam: eine Runde für einen Kurs
heading = Tagesrunde
lead = Neun kurze Bilder am Tag, etwa fünf Minuten. Erst antworten; dann dreht sich das Bild zu dem, was stimmt, und der Grund steht darauf. Was falsch war, kommt morgen wieder, was sitzt, kommt später.
toClass = Für Lehrende: eine Runde für den Kurs
toPractice = Tagesrunde
noPage = Die Seite ist stehen geblieben ({ $why }). Laden Sie sie neu; was beantwortet ist, bleibt.
noEngine = Das Modul zum Üben wurde nicht geladen ({ $why }). Prüfen Sie die Verbindung und laden Sie die Seite neu.
loading = Die Bilder werden geladen.
noKeep = Dieser Browser behält für diese Seite nichts: Die Antworten gelten, bis sie geschlossen wird. Unten lassen sie sich als Datei sichern.
badKeep = Was dieser Browser vom Üben behalten hat, ist nicht lesbar ({ $why }). Es bleibt, wie es ist, und nichts wird darüber geschrieben. Sichern Sie die Antworten von heute als Datei.

## Vor einer Runde

due = { $n ->
    [0] Heute steht nichts an. Eine Runde bringt jetzt Neues.
    [one] { $n } Entscheidung steht heute wieder an.
   *[other] { $n } Entscheidungen stehen heute wieder an.
  }
begun = { $begun } von { $all } Entscheidungen begonnen, jede auf fünf oder sechs Höhen und zwei Seiten; bisher { $n ->
    [one] { $n } Antwort
   *[other] { $n } Antworten
  }.
begin = Die Runde von heute beginnen
more = Noch eine Runde

## Eine Frage

progress = Frage { $n } von { $all }
placeStage = { $level } { $side ->
    [left] links
   *[right] rechts
  }, Stufe { $stage } von 6
shaping = Der Patient wird geformt.
film = Bild eines berechneten Patienten
filmAt = Schräg { $oblique }°, Kippung { $tilt }°.
asked-way-true_ap = Das soll eine echte AP-Aufnahme von { $level } werden. Wohin muss der Empfänger zuerst?
asked-way-oblique = Das soll die { $side ->
    [left] linke
   *[right] rechte
  } Schrägaufnahme von { $level } werden, { $level ->
    [S1] mit der vorderen Öffnung des ersten Sakralforamens über der hinteren
   *[other] mit dem Gelenkfortsatz der Höhe darunter unter dem Pedikel
  }. Wohin muss der Empfänger zuerst?
asked-way-steep_oblique = Das soll die { $side ->
    [left] linke
   *[right] rechte
  } Schrägaufnahme von { $level } für den Weg unter der Wurzel werden: der Gelenkfortsatz der Höhe darunter in der Mitte seiner eigenen Deckplatte, und diese Platte als Linie. Wohin muss der Empfänger zuerst?
asked-amount-true_ap = Für eine echte AP-Aufnahme von { $level } muss der Empfänger { $to ->
    [left] zur linken Seite des Patienten
    [right] zur rechten Seite des Patienten
    [cephalad] kopfwärts
   *[caudad] fußwärts
  }. Etwa wie weit?
asked-amount-oblique = Für die { $side ->
    [left] linke
   *[right] rechte
  } Schrägaufnahme von { $level } muss der Empfänger { $to ->
    [left] zur linken Seite des Patienten
    [right] zur rechten Seite des Patienten
    [cephalad] kopfwärts
   *[caudad] fußwärts
  }. Etwa wie weit?
asked-amount-steep_oblique = Für die { $side ->
    [left] linke
   *[right] rechte
  } Schrägaufnahme von { $level } für den Weg unter der Wurzel muss der Empfänger { $to ->
    [left] zur linken Seite des Patienten
    [right] zur rechten Seite des Patienten
    [cephalad] kopfwärts
   *[caudad] fußwärts
  }. Etwa wie weit?
asked-part = Welcher Teil liegt unter dem Punkt?
asked-step = Für welche Aufnahme von { $level }, Seite { $side ->
    [left] links
   *[right] rechts
  }, taugt dieses Bild?
asked-true_ap = Ist das eine echte AP-Aufnahme von { $level }? Wenn nicht, warum?
asked-clock = Die Nadel liegt auf der { $side ->
    [left] linken
   *[right] rechten
  } Seite von { $level }. Wo steht ihre Spitze auf dem Zifferblatt des Pedikels?
asked-notch_ahead = Der Blick geht den Strahl entlang auf den Ansatz; der Strich zeigt, wohin seine Kerbe schaut. Wohin geht die Spitze beim Vorschieben?
asked-notch_wanted = Der Blick geht den Strahl entlang auf den Ansatz. Die Spitze muss { $to ->
    [head] zum Kopf
    [feet] zu den Füßen
    [patients_left] zur linken Seite des Patienten
   *[patients_right] zur rechten Seite des Patienten
  }. Wohin muss die Kerbe schauen?
asked-spread = Kontrastmittel auf { $level }, { $side ->
    [left] links
   *[right] rechts
  }. Was hat es gefüllt?
asked-stop = AP, { $level } { $side ->
    [left] links
   *[right] rechts
  }. Noch kein Kontrastmittel gegeben. Halt oder weiter?
asked-stop-contrast = AP, { $level } { $side ->
    [left] links
   *[right] rechts
  }. Kontrastmittel unter laufendem Bild. Halt oder weiter?
during = Während gespritzt wird
later = Sekunden später
invert = Knochen dunkel oder weiß

## Antworten

turn = { $to ->
    [left] Zur linken Seite des Patienten
    [right] Zur rechten Seite des Patienten
    [cephalad] Kopfwärts
   *[caudad] Fußwärts
  }
degrees = Etwa { $n }°
part = { $part ->
    [body] Wirbelkörper
    [pedicle] Pedikel
    [pars] Pars interarticularis
    [lamina] Lamina
    [superior_articular_process] Oberer Gelenkfortsatz
    [inferior_articular_process] Unterer Gelenkfortsatz
    [transverse_process] Querfortsatz
    [ala] Kreuzbeinflügel
    [median_crest] Mittlerer Kreuzbeinkamm
   *[spinous_process] Dornfortsatz
  } von { $level }
view = { $view ->
    [true_ap] Echte AP-Aufnahme
    [oblique] Schräg, für die Injektion
    [lateral] Seitlich
   *[none] Noch für keine davon
  }
ap = { $ap ->
    [true_ap] Ja, eine echte AP-Aufnahme
    [spinous_to_left] Nein: Der Dornfortsatz steht zur linken Seite des Patienten hin
    [spinous_to_right] Nein: Der Dornfortsatz steht zur rechten Seite des Patienten hin
   *[not_squared] Nein: Die Deckplatte ist nicht eingestellt
  }
hour = { $n } Uhr
screen = { $to ->
    [head] Nach oben, zum Kopf
    [feet] Nach unten, zu den Füßen
    [patients_left] Zur linken Seite des Patienten
   *[patients_right] Zur rechten Seite des Patienten
  }
pattern = { $pattern ->
    [perineural] Entlang der Wurzel und in den Epiduralraum
    [arterial] Eine Arterie
    [venous] Eine Vene
    [mixed] Wurzel und Vene
    [intrathecal] Den Duralsack
    [subdural] Unter die Dura
    [intraneural] Die Wurzel selbst
    [intradiscal] Die Bandscheibe
    [facet_joint] Das Facettengelenk
    [peritoneal] Vor die Wirbelsäule
   *[muscular] Muskel
  }
decide = { $decision ->
    [go_on] Weiter
    [stop_medial] Halt: medial von 6 Uhr, und noch kein Kontrastmittel gesehen
    [stop_vessel] Halt: Es läuft in ein Gefäß
   *[stop_sac] Halt: Es läuft in den Duralsack
  }

## Der Grund

right = Richtig.
wrong = Nicht so. Richtig ist: { $answer }.
next = Weiter
finish = Zum Ergebnis
back = Das gefragte Bild zeigen
fact-spinous = Der Dornfortsatz steht { $n } % des Pedikelabstands zur { $way ->
    [left] linken
   *[right] rechten
  } Seite des Patienten neben deren Mitte.
fact-rims = Der vordere Rand der oberen Deckplatte steht { $n } mm { $way ->
    [above] über
   *[below] unter
  } dem hinteren.
fact-process = Der Umriss des Fortsatzes darunter steht { $n } % der Pedikelbreite zur { $way ->
    [left] linken
   *[right] rechten
  } Seite des Patienten neben dessen Mitte.
fact-midPlate = Der Umriss des Fortsatzes darunter steht { $n } % der halben Plattenbreite zur { $way ->
    [left] linken
   *[right] rechten
  } Seite des Patienten neben der Mitte dieser Platte.
fact-rimsBelow = Der vordere Rand der oberen Deckplatte der Höhe darunter steht { $n } mm { $way ->
    [above] über
   *[below] unter
  } dem hinteren.
fact-openings = Die vordere Öffnung des ersten Sakralforamens steht { $n } mm zur { $way ->
    [left] linken
   *[right] rechten
  } Seite des Patienten neben der hinteren.
fact-lateral = Die beiden Pedikel stehen { $n } mm auseinander.
fact-tip = Die Spitze steht { $side } mm { $sideWay ->
    [lateral] lateral
   *[medial] medial
  } der 6-Uhr-Linie des Pedikels und { $down } mm { $downWay ->
    [below] unter
   *[above] über
  } seiner Mitte.
fact-medial = Die Spitze steht { $n } mm { $way ->
    [medial] medial
   *[lateral] lateral
  } der 6-Uhr-Linie des Pedikels.
fact-hour = Die Spitze steht auf dem Zifferblatt bei { $n }.
fact-notch = Die Kerbe schaut { $to ->
    [head] zum Kopf
    [feet] zu den Füßen
    [patients_left] zur linken Seite des Patienten
   *[patients_right] zur rechten Seite des Patienten
  }.
fact-drifted = Vorgeschoben geht die Spitze { $n } mm { $to ->
    [head] zum Kopf
    [feet] zu den Füßen
    [patients_left] zur linken Seite des Patienten
   *[patients_right] zur rechten Seite des Patienten
  }: von der Kerbe weg.
fact-contrast = { $pattern ->
    [perineural] Das Kontrastmittel bleibt, umfährt die Wurzel als blasseres Band und steigt innen am Pedikel auf.
    [arterial] Das Kontrastmittel läuft schnell in einer dünnen Linie ab und ist gleich weg.
    [venous] Das Kontrastmittel füllt eine breitere Linie, solange gespritzt wird, und wird danach ausgewaschen.
    [intrathecal] Das Kontrastmittel verteilt sich dünn und gleichmäßig in der Mitte und bleibt.
    [intradiscal] Das Kontrastmittel liegt als dichtes Kissen zwischen den Deckplatten.
    [facet_joint] Das Kontrastmittel ist ein kleiner dichter Rand abseits der Wurzel.
   *[muscular] Das Kontrastmittel zeigt gefiederte Streifen abseits der Wurzel.
  }
fact-needed = Es braucht { $n }° { $to ->
    [left] zur linken Seite des Patienten
    [right] zur rechten Seite des Patienten
    [cephalad] kopfwärts
   *[caudad] fußwärts
  }.
margin = So klar war es: { $has }; unter { $least } wird nicht gefragt ({ $unit ->
    [degrees] Grad bis zur nächsten Antwort
    [mm] mm
    [of-full-marks] der vollen Punkte
    [hours] Stunden
    [times-its-limit] mal die Grenze
   *[times] mal näher als die nächste
  }).
caution-spread = Eine trockene Aspiration schließt nichts aus; Kontrastmittel unter laufendem Bild kommt vor jedem Medikament. Örtliche Vorgaben und die Aufsicht entscheiden.
caution-stop = Weiter heißt hier: der nächste Schritt, nicht das Medikament. Halt bei Blut, Parästhesie oder Zweifel. Örtliche Vorgaben und die Aufsicht entscheiden.
described = Das Bild in Worten
undescribed = Wo der Punkt liegt, lässt sich nur sehen: Diese Frage gibt es nicht in Worten. Lassen Sie sie aus; sie wird nicht gezählt.
leaveOut = Diese auslassen
keysHelp = Tasten: 1 bis 4 antworten, Eingabe geht weiter, B zeigt das gefragte Bild wieder, C das spätere Bild des Kontrastmittels.

## Nach einer Runde

done = { $right } von { $all } richtig.
doneNext = Morgen kommt, was falsch war; das Übrige kommt, wenn es bald vergessen wäre.
list = Diese Runde
curves = Lernkurven
skill = { $skill ->
    [views] Die Aufnahmen einstellen
    [parts] Die Teile benennen
    [needle] Die Nadel lesen und steuern
   *[contrast] Kontrastmittel lesen, rechtzeitig halten
  }
kind = { $kind ->
    [way] Wohin drehen oder kippen
    [amount] Wie weit
    [part] Welcher Teil ist das
    [step] Für welche Aufnahme taugt das
    [true_ap] Ist das eine echte AP
    [clock] Wo steht die Spitze auf der Uhr
    [notch] Wohin mit dieser Kerbe
    [spread] Was hat das Kontrastmittel gefüllt
   *[stop] Halt oder weiter
  }
stageOf = Stufe { $n }
reached = Erreicht bei Antwort { $n }.
notReached = { $n ->
    [0] Noch nichts beantwortet.
    [one] { $n } Antwort: zu wenig für ein Urteil.
   *[other] In { $n } Antworten nicht erreicht.
  }
standing-acceptable = Die letzte Folge von Antworten spricht eher für { $p0 } % Fehler als für { $p1 } %.
standing-unacceptable = Die letzte Folge von Antworten spricht eher für { $p1 } % Fehler als für { $p0 } %.
standing-none = Zu wenig Antworten, um { $p0 } % Fehler von { $p1 } % zu unterscheiden.
chart = { $skill }: kumulative Summe aus { $n ->
    [one] { $n } Antwort
   *[other] { $n } Antworten
  }, { $wrong } falsch. Eine falsche Antwort geht nach oben, eine richtige nach unten.
chartTable = Die Kurve als Tabelle
col-answer = Antwort
col-result = Ergebnis
col-sum = Summe
col-learning = Zu „erreicht“
isRight = richtig
isWrong = falsch
verdict-acceptable = annehmbar
verdict-unacceptable = nicht annehmbar
begins = beginnt wieder bei 0
what-heading = Was die Kurven zeigen können und was nicht
what-sum = Jede falsche Antwort hebt die Linie um { $up }, jede richtige senkt sie um { $down }. Ist sie um { $h0 } gefallen, sprechen die Antworten für { $p0 } % Fehler, ist sie um { $h1 } gestiegen, für { $p1 } %; beides mit einem Irrtum in einem von zehn Fällen. Dann beginnt sie von vorn.
what-reached = „Erreicht“ kommt aus einer zweiten Summe, die einen Nachweis des Könnens verlangt. Wer noch { $p1 } % falsch macht, bekommt es in 60 Antworten mit einer Wahrscheinlichkeit von { $chance } % gesagt; wer unter vieren rät, praktisch nie.
what-not = Sie können nicht zeigen, ob es die richtigen Fragen sind, wie es am Tisch geht oder dass ein Können bleibt. Die beiden Raten sind unsere Wahl. Niemand sollte danach beurteilt werden.

## Behalten

keep-heading = Ihre Antworten
keep-where = Sie bleiben in diesem Browser und nirgends sonst.
keep-save = Als Datei sichern
keep-load = Eine Datei hinzunehmen
keep-added = { $n ->
    [0] In der Datei ist nichts, was nicht schon hier war.
    [one] { $n } Antwort hinzugenommen.
   *[other] { $n } Antworten hinzugenommen.
  }
keep-hand = Um Ihr Üben abzugeben, tragen Sie den Code ein, den Sie bekommen haben. Der Beleg enthält Ihre Antworten und zu welchen Bildern sie gehören; die Seite der Lehrenden stellt jede Frage noch einmal.
keep-code = Ihr Code
keep-receipt = Einen Beleg sichern
keep-noCode = Tragen Sie zuerst Ihren Code ein.
keep-noAnswers = Es gibt noch keine Antwort, die ein Beleg enthalten könnte.

## Im Kurs: wer lernt

class-heading = Eine Runde für Ihren Kurs
class-lead = { $n } Bilder, für alle dieselben. Gesagt wird nichts, bis die Runde vorn aufgelöst wird; gesendet wird nichts.
class-begin = Beginnen
class-code = Ihr Code
class-codeWhy = Geben Sie diesen Code vorn ab: vorlesen, einfügen oder als Datei sichern. Er enthält Ihre Antworten und eine Zahl, die Lernende auseinanderhält, keinen Namen.
class-codeSoFar = Ihr Code bis hierher ({ $n } von { $all } beantwortet)
class-copy = Code kopieren
class-copied = Kopiert.
class-saveCode = Als Datei sichern
class-badRound = Dieser Link nennt keine Runde: { $why }

## Im Kurs: wer lehrt

teacher-heading = Eine Runde für einen Kurs
teacher-lead = Wählen Sie eine Runde, zeigen Sie den Link oder sein Bild und nehmen Sie die Codes entgegen. Dann zeigen Sie Frage für Frage, was geantwortet wurde, und lösen auf. Nichts läuft über einen Server.
teacher-stage = Wie schwer
teacher-stageName = { $n ->
    [0] 1: mit Umrissen
    [1] 2: ohne Umrisse
    [2] 3: Patient gedreht auf dem Tisch
    [3] 4: gedreht, und eine Krümmung
    [4] 5: groß, wenig Knochenmineral
   *[other] 6: alles zusammen, mit Rauschen
  }
teacher-count = Bilder
teacher-seed = Nummer der Runde
teacher-new = Andere Nummer
teacher-open = Die Runde öffnen
teacher-link = Der Link für die Lernenden
teacher-copy = Link kopieren
teacher-picture = Der Link als Bildcode
teacher-codes = Codes
teacher-codesWhy = Einer je Zeile, oder mit Komma dazwischen. Wer noch einmal abgibt, ersetzt den eigenen früheren Code.
teacher-take = Entgegennehmen
teacher-file = Aus einer Datei
teacher-taken = { $n ->
    [0] Noch kein Code.
    [one] { $n } Person.
   *[other] { $n } Personen.
  }
teacher-refused = Nicht genommen:
teacher-show = Auf der Leinwand
teacher-turn = Auflösen
teacher-previous = Vorige
teacher-nextQuestion = Nächste
teacher-answered = { $n ->
    [one] { $n } Antwort
   *[other] { $n } Antworten
  }, { $none } ohne.
teacher-count-of = { $n ->
    [one] { $n } Antwort
   *[other] { $n } Antworten
  }
teacher-true = richtig
teacher-figures = Zahlen zu den Fragen
teacher-figuresWhy = Schwierigkeit ist der Anteil richtiger Antworten. Trennschärfe sagt, wie gut eine Antwort hier mit den übrigen Antworten derselben Person zusammengeht, von −1 bis 1; bei zehn Lernenden macht allein der Zufall ±0,6 davon aus, also über mehrere Kurse lesen.
teacher-csv = Als Tabelle sichern (CSV)
teacher-col-question = Frage
teacher-col-kind = Art
teacher-col-place = Ort
teacher-col-answered = Antworten
teacher-col-right = Richtig
teacher-col-difficulty = Schwierigkeit
teacher-col-discrimination = Trennschärfe
teacher-all = alle
teacher-nothing = –

## Kurven eines Kurses

group-heading = Lernkurven eines Kurses
group-why = Nehmen Sie die Belege dazu, die Lernende vom Üben abgegeben haben, oder Dateien, die sie gesichert haben. Je eine Zeile; jedes Bild eines Belegs wird noch einmal gefragt. Nichts wird behalten oder gesendet.
group-add = Dateien hinzunehmen
group-file = Lernende
group-cell = { $n ->
    [0] keine Antworten
    [one] { $n } Antwort, { $wrong } falsch
   *[other] { $n } Antworten, { $wrong } falsch
  }
group-reached = erreicht bei { $n }
group-bad = { $name }: { $why }
group-check = Prüfung
group-checking = Noch einmal gefragt: { $n } von { $all } Antworten.
group-verified = bestätigt
group-altered = geändert: { $why }
group-unknown_engine = mit Version { $why } gezeichnet, nicht geprüft
group-plain = gesicherte Datei, nicht geprüft
group-shares = hat { $n ->
    [one] { $n } Bild
   *[other] { $n } Bilder
  } mit { $other } gemeinsam
