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
