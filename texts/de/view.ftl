### Machine-drafted, not yet reviewed by a speaker.

caution = Lehrmodell, nicht für den klinischen Gebrauch: niemals einen Eingriff damit planen oder führen. Es gelten örtliche Vorgaben, Ausbildung unter Aufsicht und die eigene berufliche Befugnis.

allowedNumber = eine Zahl von { $low } bis { $high }
allowedWhole = eine ganze Zahl von { $low } bis { $high }

case-patientName = { $name ->
    [average] Durchschnitt
    [curved] Skoliose
    [high-crest] Hoher Beckenkamm
    [large] Groß
    [slipped] Gleitwirbel
    [small] Klein
    [standing] Stehend
    [thin-bones] Dünne Knochen
    [transitional] Übergangswirbel
    [turned] Gedreht
    [worn] Verschleiß
   *[other] { $given }
  }

case-patientSentence = { $name ->
    [average] Durchschnittliche erwachsene Person, gerade in Bauchlage
    [turned] Durchschnittliche erwachsene Person, auf dem Tisch etwas gedreht
    [small] Kleine, schlanke erwachsene Person
    [large] Große, schwere erwachsene Person
    [thin-bones] Ältere erwachsene Person mit wenig Knochenmineral
    [worn] Niedrige Bandscheiben auf den beiden untersten Höhen, verdickte Facettengelenke
    [curved] Wirbelsäule zur Seite gebogen und mit der Biegung gedreht
    [slipped] L4 gegen L5 um ein Sechstel der Tiefe nach vorn geglitten, abgenutzte Gelenke, Bogen erhalten
    [high-crest] Beckenkämme, die bis zur Mitte von L4 reichen
    [transitional] L5 halb mit dem Kreuzbein verbunden: breite Querfortsätze, die an dessen Flügel stoßen, niedrige Bandscheibe
    [standing] Durchschnittliche erwachsene Person, aufrecht, zum Vergleich
   *[other] { $given }
  }

step = { $id ->
    [name_parts] Teile benannt
    [target_centred] Ziel in der Mitte
    [true_ap] Echte AP
    [oblique] Schräg, eingestellt
    [lateral] Seitlich
    [target] Zielpunkt
    [down_the_beam] Im Strahl
    [steering] Steuern
    [depth] Tiefe
    [contacts] Was die Nadel traf
    [contrast] Kontrastmittel
    [radiation] Strahlung
   *[other] { $given }
  }

place = { $side ->
    [left] { $level } links
   *[right] { $level } rechts
  }

## The picture

picture-caption = { $place }, Person „{ $patient }“. Empfänger { $oblique }, { $tilt }.
picture-alternative = Röntgenbild der Lendenwirbelsäule, Kopf oben. Empfänger { $oblique } und { $tilt }.
picture-polarity = Knochen dunkel
picture-outlines = Umrisse
picture-labels = Namen
picture-keyPosterior = { $level ->
    [S1] Kreuzbein
   *[other] { $level } hintere Anteile
  }
picture-keyBelow = { $below } oberer Gelenkfortsatz
picture-keyTarget = { $level } Wirbelkörper
picture-dogHeading = Der Hund von { $level }, Teil für Teil
picture-dogPart = { $dog }: { $part } von { $level }
picture-dogName = { $name ->
    [nose] Nase
    [eye] Auge
    [ear] Ohr
    [neck] Hals
    [body] Rumpf
    [foreleg] Vorderbein
   *[other] { $name }
  }
picture-dogNext = { $name ->
    [nose] Nase des nächsten Hundes
    [eye] Auge des nächsten Hundes
    [ear] Ohr des nächsten Hundes
    [neck] Hals des nächsten Hundes
    [body] Rumpf des nächsten Hundes
    [foreleg] Vorderbein des nächsten Hundes
   *[other] { $name } des nächsten Hundes
  }
picture-part = { $name ->
    [body] Wirbelkörper
    [upper_end_plate] Deckplatte
    [lower_end_plate] Grundplatte
    [pedicle] Pedikel
    [pars] Pars interarticularis
    [lamina] Lamina
    [superior_articular_process] oberer Gelenkfortsatz
    [inferior_articular_process] unterer Gelenkfortsatz
    [transverse_process] Querfortsatz
    [spinous_process] Dornfortsatz
    [ala] Kreuzbeinflügel
    [median_crest] Mittelkamm
    [iliac_wing] Darmbeinschaufel
    [iliac_crest] Beckenkamm
    [rib] Rippe
   *[other] { $given }
  }
picture-end-L = L
picture-end-R = R
picture-end-A = A
picture-end-P = P
picture-end-H = H

## Loading the engine

loading-engine = Das Rechenwerk wird geladen
loading-percent = Das Rechenwerk wird geladen: { $n } %
loading-patient = Person „{ $patient }“ wird geformt
loading-failedHeading = Das Bild ist nicht verfügbar
loading-retry = Noch einmal versuchen
loading-status = der Server antwortete { $code }
loading-noServer = keine Antwort vom Server
loading-noWasm = die Datei ist kein WebAssembly-Modul

## The angles

turn-number = { $name }, Grad
turn-outOfRange = { $name } geht hier von { $low } bis { $high } Grad; der nächste erlaubte Winkel wurde genommen.
turn-notNumber = { $name } braucht eine Gradzahl; der letzte Winkel bleibt.

oblique-name = Schräg
oblique-hint = links +, rechts −
oblique-high = links
oblique-low = rechts
oblique-zero = gerade darüber
oblique-zeroSpoken = gerade darüber, 0 Grad
oblique-turned = { $way ->
    [left] { $deg }° zur linken Seite der Person
   *[right] { $deg }° zur rechten Seite der Person
  }
oblique-turnedSpoken = { $way ->
    [left] { $deg } Grad zur linken Seite der Person
   *[right] { $deg } Grad zur rechten Seite der Person
  }

tilt-name = Kippung
tilt-hint = kranial +, kaudal −
tilt-high = kranial
tilt-low = kaudal
tilt-zero = ohne Kippung
tilt-zeroSpoken = ohne Kippung, 0 Grad
tilt-tilted = { $way ->
    [cephalad] { $deg }° kranial
   *[caudad] { $deg }° kaudal
  }
tilt-tiltedSpoken = { $way ->
    [cephalad] { $deg } Grad kranial
   *[caudad] { $deg } Grad kaudal
  }

## The checks

checks-views-true_ap = Echte AP
checks-views-oblique = Schräg
checks-views-lateral = Seitlich
checks-criterion = { $id ->
    [spinous_centred] Dornfortsatz mittig
    [squared] Deckplatte eingestellt
    [facet_under_pedicle] Gelenkfortsatz unter dem Pedikel
    [lateral] Links und rechts zur Deckung gebracht
    [foramen_aligned] Kreuzbeinlöcher übereinander
    [process_at_mid_plate] Gelenkfortsatz in der Mitte der Endplatte
    [squared_below] Deckplatte darunter eingestellt
   *[other] { $given }
  }
checks-good = Gut: innerhalb der Toleranz.
checks-overlap = Das obere Ende des Fortsatzes überlagert den Pedikel; die Kippung ändern, bis sie darunter steht.
checks-stuck = Von hier aus bringt das keine Bewegung nur eines Winkels in Ordnung; zuerst zur echten AP zurückgehen.
checks-move-oblique = { $direction ->
    [left] Den Empfänger { $amount } zur linken Seite der Person drehen.
   *[right] Den Empfänger { $amount } zur rechten Seite der Person drehen.
  }
checks-move-tilt = { $direction ->
    [cephalad] Den Empfänger { $amount } nach kranial kippen.
   *[caudad] Den Empfänger { $amount } nach kaudal kippen.
  }
checks-less = um weniger als 1 Grad
checks-degrees = um { $n } Grad
checks-measure = { $unit ->
    [degrees] { $n }°
    [mm] { $n } mm
   *[percent] { $n } %
  }
checks-undefined = hier nicht bestimmt
checks-within = { $of ->
    [degrees] volle Punkte bis { $n }°
    [mm] volle Punkte bis { $n } mm
    [pedicle_spacing] volle Punkte bis { $n } % des Pedikelabstands
    [pedicle_width] volle Punkte bis { $n } % der Pedikelbreite
    [half_plate] volle Punkte bis { $n } % der halben Endplatte
   *[percent] volle Punkte bis { $n } %
  }
checks-measured = { $criterion }: { $value }, { $tolerance }
checks-score = { $points } von 100
checks-scoreLabel = Wertung dieser Einstellung
checks-word-full = volle Punkte
checks-word-close = nah dran
checks-word-part = auf dem Weg
checks-word-far = weit weg
checks-word-none = noch keine Punkte
checks-best = Beste Einstellung
checks-back = Zurück zu meiner
checks-notReached = Der Bereich des Geräts reicht nicht bis zur besten Einstellung; näher geht es nicht.
checks-said = { $view }: { $points } von 100. { $advice }
checks-ask = Einstellung prüfen
checks-hidden = Zuerst nach Augenmaß einstellen. Werte und Rat bleiben verborgen, bis Sie fragen.
checks-notHere = Diese Einstellung wird auf dieser Höhe nicht gewertet.
