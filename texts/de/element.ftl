### Machine-drafted, not yet reviewed by a speaker.

titleView = { $place }: { $view }
patient = Person „{ $patient }“
waiting = Das Bild wird gezeichnet, wenn dies in den Blick kommt.
turns = C-Bogen drehen
checksHeading = Wie genau
showingBest = Die beste Einstellung, die dieses Gerät hier erreicht. Sie zählt nicht als gefunden.
through = Durch den Strahl
throughFailed = Die Knochen ließen sich nicht laden ({ $why }); das Bild ist, wie es war.
allowedDigest = sha256-, sha384- oder sha512-, jeweils gefolgt von einer Prüfsumme in Base64
allowedPatient = der Name einer Person

## Loading the engine

loading-failedFetch = Das Rechenwerk wurde nicht geladen ({ $why }). Die Verbindung prüfen und noch einmal versuchen.
loading-failedStart = Das Rechenwerk ließ sich nicht starten ({ $why }). Nötig ist ein Browser mit WebAssembly, den die Inhaltsregeln der Seite zulassen.
loading-failedRun = Das Rechenwerk blieb stehen ({ $why }). Zum Weitermachen neu laden; Ihre Stellung bleibt erhalten.
loading-failedIntegrity = Das Rechenwerk wurde nicht gestartet: { $file } ist nicht die Datei, deren Prüfsumme diese Seite in „integrity“ nennt.
loading-otherIntegrity = Das Rechenwerk wurde nicht benutzt: ein anderes Element dieser Seite hat es unter einer anderen „integrity“ oder ohne geladen. Allen dieselbe geben.

## What is wrong with the element's attributes

problem-attribute = { $name }="{ $value }" passt nicht: erlaubt ist { $allowed }. Benutzt wird { $kept }.
problem-patient = { $why }. Benutzt wird „{ $kept }“.
problem-integrity = integrity="{ $value }" passt nicht: erlaubt ist { $allowed }. Ohne das wird das Rechenwerk nicht geladen.
problem-style = Die Gestaltung wurde nicht geladen ({ $why }); alles geht auch ohne sie.
problem-nothingChecked = view="free" hat keine beste Einstellung: dort wird nichts geprüft.
problem-notHere = Das Element steht in keiner Seite, darum gibt es kein Bild.
