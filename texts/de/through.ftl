### Durch den Strahl: die Knochen in 3D, wie die Röntgenröhre sie sieht.

name = Durch den Strahl
hint = Gedrückt halten zeigt die Knochen in 3D von der Röhre aus, mit Strahlen durch Deckplatte, Pedikel und Spitze. Weiter halten und ziehen, oder Pfeiltasten: der Blick geht neben den Strahl. Ein kurzer Druck lässt es an; Escape beendet es.
front = Vorderrand
back = Hinterrand
pedicle = Pedikel
tip = Spitze
sentence = Knochen von { $level } und die Nachbarn in 3D, wie die Röhre sie sieht, mit Strahlen durch beide Ränder der oberen Deckplatte und den Pedikel. { $squared }. { $tip }
apart = Der Strahl durch die Spitze liegt { $mm } mm neben dem Strahl durch die Mitte des Pedikels.
swung = Das Auge steht im Bild { $right }° { $side ->
    [left] links
   *[right] rechts
  } vom Strahl und { $up }° { $way ->
    [down] darunter
   *[up] darüber
  }.
ended = Nur das Bild ist noch da.
failed = Die Knochen ließen sich nicht zeichnen ({ $why }); das Bild ist, wie es war.
