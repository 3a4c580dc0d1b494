### Machine-drafted, not yet reviewed by a speaker.

where = schräg { $oblique }, Kippung { $tilt }

## The learner’s own view beside the best one

compare-open = Mit der besten vergleichen
compare-close = Vergleich schließen
compare-closeShort = Schließen
compare-slider = Teiler zwischen Ihrer und der besten Einstellung
compare-own = Ihre Einstellung
compare-best = Beste Einstellung
compare-angles = { $oblique }, { $tilt }
compare-shareOwn = Ihre Einstellung auf den linken { $percent } % des Bildes, die beste auf dem Rest
compare-picture = Zwei Einstellungen in einem Bild. Links Ihre, { $own }; rechts die beste, { $best }.
compare-same = Ihre und die beste Einstellung stehen in denselben Winkeln.
compare-differs = { $side ->
    [left] { $way ->
        [cephalad] Die beste Einstellung ist { $oblique }° weiter zur linken Seite der Person und { $tilt }° weiter kranial als Ihre.
        [caudad] Die beste Einstellung ist { $oblique }° weiter zur linken Seite der Person und { $tilt }° weiter kaudal als Ihre.
       *[none] Die beste Einstellung ist { $oblique }° weiter zur linken Seite der Person als Ihre.
      }
    [right] { $way ->
        [cephalad] Die beste Einstellung ist { $oblique }° weiter zur rechten Seite der Person und { $tilt }° weiter kranial als Ihre.
        [caudad] Die beste Einstellung ist { $oblique }° weiter zur rechten Seite der Person und { $tilt }° weiter kaudal als Ihre.
       *[none] Die beste Einstellung ist { $oblique }° weiter zur rechten Seite der Person als Ihre.
      }
   *[none] { $way ->
        [cephalad] Die beste Einstellung ist { $tilt }° weiter kranial als Ihre.
       *[caudad] Die beste Einstellung ist { $tilt }° weiter kaudal als Ihre.
      }
  }

## The views so far

history-name = Einstellungen bisher
history-none = Jede Einstellung, bei der Sie anhalten, bleibt hier als kleines Bild, die letzten zwölf.
history-list = Einstellungen bisher, die älteste zuerst
history-now = jetzt
history-back = Zurück bei { $where }.
history-end-undo = Davor gibt es keine Einstellung.
history-end-redo = Danach gibt es keine Einstellung.

## Saved pictures and the printed result

picture-png = Bild speichern (PNG)
picture-svg = Umrisse speichern (SVG)
picture-print = Ergebnis drucken
picture-credit = Downbeam, Lehrmodell, nicht für den klinischen Gebrauch
picture-about = { $place }, Person „{ $patient }“, { $where }
picture-desc = Berechnete Umrisse eines Lehrmodells, mm auf dem Detektor: nicht zum Planen oder Führen eines Eingriffs.
picture-scale = { $n } mm auf dem Detektor
picture-noEngine = Es gibt kein Bild zu speichern: das Rechenwerk fehlt.
picture-noPicture = Es gibt noch kein Bild zu speichern: zuerst eine Aufnahme machen.
picture-hidden = Die Umrisse lassen sich nicht speichern, solange diese Lektion sie zurückhält oder nach ihnen fragt; zuerst abschließen.
picture-failed = Das Bild konnte nicht gespeichert werden: { $why }.
picture-notChecked = Diese Einstellung wurde nicht geprüft.
