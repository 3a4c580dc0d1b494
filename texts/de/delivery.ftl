### Machine-drafted, not yet reviewed by a speaker.

notDone = nicht getan
ofHundred = { $n } von 100
noLesson = Die Lektion dieses Pakets ließ sich nicht lesen. Sagen Sie es der Person, die es eingerichtet hat.
noLessonStatus = Die Lektion dieses Pakets ließ sich nicht lesen (Antwort { $status }). Sagen Sie es der Person, die es eingerichtet hat.
broken = Der Weg zur Lernplattform ist gestört. Von hier wird nichts von selbst abgegeben: Speichern Sie den Beleg als Datei.
notOpened = Die Lernplattform hat ihren Eintrag zu dieser Lektion nicht geöffnet ({ $standard }). Bei der Abgabe wird es noch einmal versucht; speichern Sie den Beleg auch als Datei.
alone = Diese Lektion wurde außerhalb einer Lernplattform geöffnet: von selbst wird nichts abgegeben. Speichern Sie den Beleg als Datei.
notKept = Hier wird kein Fortschritt gehalten: er ist fort, wenn die Seite geschlossen wird.
notRead = Die Lernplattform konnte nicht zurückgeben, was sie von dieser Lektion hält. Das bleibt, wie es ist; der Fortschritt dieses Versuchs wird dort nicht gehalten.
resumedNone = Was die Lernplattform von Ihrem Versuch hielt, ist nicht lesbar. Sie beginnen neu.
resumedPart = { $n ->
    [one] Die Lernplattform hielt nur den Anfang Ihres Versuchs: { $n } Handlung. Es geht von dort weiter.
   *[other] Die Lernplattform hielt nur den Anfang Ihres Versuchs: { $n } Handlungen. Es geht von dort weiter.
  }
resumedOf = { $missing ->
    [one] Die Lernplattform hat nur Platz für die ersten { $n } Handlungen Ihres Versuchs: die letzte fehlt. Es geht bei Handlung { $n } weiter.
   *[other] Die Lernplattform hat nur Platz für die ersten { $n } Handlungen Ihres Versuchs: die letzten { $missing } fehlen. Es geht bei Handlung { $n } weiter.
  }
notTaken = Die Lernplattform antwortet nicht. Ihre Arbeit wird hier gehalten und von selbst wieder gesendet: lassen Sie diese Seite offen.
takenAgain = Die Lernplattform hat jetzt alles angenommen.
handedInLate = Ihr früheres Ergebnis, das die Lernplattform noch nicht bestätigt hatte, ist jetzt abgegeben.
resultUnread = Die Lernplattform sagt nicht, was sie zu dieser Lektion hält; dieses Ergebnis wird nicht darübergeschrieben. Speichern Sie den Beleg als Datei.
resultRefused = Die Lernplattform hat das Ergebnis abgelehnt. Speichern Sie zur Sicherheit den Beleg als Datei.
refusedValue = Die Lernplattform lehnt einen Wert ab ({ $name }). Speichern Sie zur Sicherheit den Beleg als Datei.
refusedValueWhy = Die Lernplattform lehnt einen Wert ab ({ $name }; { $why }). Speichern Sie zur Sicherheit den Beleg als Datei.
refusedStatement = Die Lernplattform hat einen Eintrag abgelehnt (Antwort { $status }). Speichern Sie zur Sicherheit den Beleg als Datei.
tooLong = Die Lernplattform hält { NUMBER($most, useGrouping: "always") } Zeichen, zu wenig für diesen Versuch: jetzt geschlossen, geht er ab Handlung { $kept } von { $all } weiter. Das Ergebnis ist davon nicht betroffen.
receiptTooLong = Der Beleg passt nicht in die { NUMBER($most, useGrouping: "always") } Zeichen, die die Lernplattform hält; die Punkte schon. Speichern Sie den Beleg als Datei.
otherMark = { $passed ->
    [yes] Die Bestehensgrenze der Lernplattform ist { $mark } Prozent: dort zählt das als bestanden.
   *[no] Die Bestehensgrenze der Lernplattform ist { $mark } Prozent: dort zählt das als nicht bestanden.
  }
pending = Die Lernplattform hat das Ergebnis noch nicht bestätigt. Es wird von selbst wieder gesendet, solange diese Seite offen ist. Speichern Sie zur Sicherheit den Beleg als Datei.
review = Die Lernplattform hat diese Lektion nur zum Ansehen geöffnet: das Ergebnis wird nicht festgehalten.
earlierBetter = Die Lernplattform behält Ihr früheres Ergebnis.
sessionOver = Dieser Besuch ist bei der Lernplattform beendet: öffnen Sie die Lektion dort wieder. Speichern Sie zur Sicherheit den Beleg als Datei.
launchIncomplete = Die Adresse dieses Aufrufs ist unvollständig: öffnen Sie die Lektion wieder aus der Lernplattform.
noToken = Die Lernplattform ist nicht erreichbar: öffnen Sie die Lektion dort wieder. Von hier wird nichts von selbst abgegeben.
launchUsed = Die Lernplattform lässt diesen Aufruf nicht zu: öffnen Sie die Lektion dort wieder. Von hier wird nichts von selbst abgegeben.
launchUsedWhy = Die Lernplattform lässt diesen Aufruf nicht zu ({ $why }): öffnen Sie die Lektion dort wieder. Von hier wird nichts von selbst abgegeben.
noLaunchData = Die Lernplattform hat nicht gesagt, wie diese Lektion aufgerufen wurde: öffnen Sie sie dort wieder. Von hier wird nichts von selbst abgegeben.
noState = Die Lernplattform hält keinen laufenden Versuch: jetzt geschlossen, ist dieser fort. Ergebnisse werden trotzdem abgegeben.
heldBack = Von der Lernplattform gehalten. Beim Verlassen wird es als nicht bestanden abgegeben; bis dahin können Sie es besser machen.
heldHere = Nicht bestanden. Es wird abgegeben, wenn Sie diese Seite verlassen; bis dahin können Sie es besser machen. Speichern Sie zur Sicherheit den Beleg als Datei.
update = Es gibt eine neue Fassung dieser Seite. Sie gilt, wenn alle ihre Fenster geschlossen wurden und sie wieder geöffnet wird.
notConfirmed = Die umgebende Seite hat das Ergebnis nicht bestätigt. Speichern Sie zur Sicherheit den Beleg als Datei.
badHost = Die Adresse nennt „{ $found }“ als umgebende Seite; erlaubt ist ein Ursprung wie https://course.example.org. Dorthin wird nichts gesendet.
noMessage = Der umgebenden Seite kann nichts gesagt werden. Speichern Sie zur Sicherheit den Beleg als Datei.
