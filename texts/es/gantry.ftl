### Machine-drafted, not yet reviewed by a speaker.

show = Qué muestran los dibujos
whole = Arco en C
near = Huesos
hint = Arrastre un dibujo para girar el arco en C; teclado: los controles Oblicua e Inclinación. Toque el contorno de un hueso, aquí o en la imagen, para resaltarlo en ambos.
hintTurn = Arrastre un dibujo para girar el arco en C; teclado: los controles Oblicua e Inclinación.
find = Estructura a resaltar
none = ninguna
name = { $side ->
    [left] { $Part } de { $level }, lado izquierdo
    [right] { $Part } de { $level }, lado derecho
   *[none] { $Part } de { $level }
  }
lit = { $name }: resaltado en la imagen y en los dibujos.
notInPicture = { $name }: resaltado en los dibujos; ninguna de sus líneas está en la imagen.
noOutlines = { $name }: resaltado en los dibujos; active los contornos para verlo en la imagen.
litHere = { $side ->
    [left] Se resalta: { $part } de { $level }, lado izquierdo.
    [right] Se resalta: { $part } de { $level }, lado derecho.
   *[none] Se resalta: { $part } de { $level }.
  }
unlit = No se resalta ninguna estructura.
ray = Una línea va de la fuente, a través de la diana, al punto en que llega al receptor.
needle = La aguja está dibujada en su posición.
near_feet = Huesos de { $level }, desde los pies
near_side = Huesos de { $level }, desde la derecha
describeNear = Contornos de { $level } y de las vértebras vecinas, { $from }, 13 cm de ancho.
centralRay = El rayo central viene de la fuente, situada abajo; receptor: { $oblique } y { $tilt }.
fromFeet = vistos desde los pies, con la izquierda del paciente a la izquierda y el dorso arriba
fromSide = vistos desde la derecha del paciente, con la cabeza a la derecha y el dorso arriba
noPicture = No se dibuja ningún rayo: todavía no hay imagen desde aquí.

## The table, and what stops a turn.

table-name = Mover la mesa
table-left = Izquierda
table-right = Derecha
table-head = A la cabeza
table-feet = A los pies
table-by = Mover la mesa 5 mm:
table-isocentre = diana en el isocentro
table-across = { $way ->
    [left] { $mm } mm a la izquierda
   *[right] { $mm } mm a la derecha
  }
table-along = { $way ->
    [head] { $mm } mm hacia la cabeza
   *[feet] { $mm } mm hacia los pies
  }
table-up = Arriba
table-down = Abajo
table-height = { $way ->
    [up] { $mm } mm más alta
   *[down] { $mm } mm más baja
  }
table-asItStood = como al principio
table-putBack = Devolverla
table-stands = Mesa: { $where }.
table-to = { $way ->
    [down] Mesa { $mm } mm abajo
    [up] Mesa { $mm } mm arriba
    [left] Mesa { $mm } mm a la izquierda
    [right] Mesa { $mm } mm a la derecha
    [head] Mesa { $mm } mm a la cabeza
   *[feet] Mesa { $mm } mm a los pies
  }
hit-receptor-patient = Detenido: el receptor chocaría con el paciente; { $way }.
hit-receptor-table = Detenido: el receptor chocaría con la mesa; { $way }.
hit-source-patient = Detenido: el tubo chocaría con el paciente; { $way }.
hit-source-table = Detenido: el tubo chocaría con la mesa; { $way }.
hit-way = { $way ->
    [down] baje antes la mesa { $mm } mm
    [up] suba antes la mesa { $mm } mm
    [left] mueva antes la mesa { $mm } mm a la izquierda
    [right] mueva antes la mesa { $mm } mm a la derecha
    [head] mueva antes la mesa { $mm } mm a la cabeza
    [feet] mueva antes la mesa { $mm } mm a los pies
   *[none] gire por el otro lado
  }
