### A través del haz: los huesos en 3D como los ve el tubo.

name = A través del haz
hint = Mantenga pulsado para ver los huesos en 3D desde el tubo, con rayos por el platillo, el pedículo y la punta. Sin soltar, arrastre o use las flechas para mirar desde un lado del haz. Una pulsación corta lo deja puesto; Escape lo quita.
front = borde anterior
back = borde posterior
pedicle = pedículo
tip = punta
sentence = Huesos de { $level } y sus vecinos en 3D, como los ve el tubo, con rayos por los dos bordes del platillo superior y el pedículo. { $squared }. { $tip }
apart = El rayo por la punta pasa a { $mm } mm del rayo por el centro del pedículo.
swung = El ojo está { $right }° a la { $side ->
    [left] izquierda
   *[right] derecha
  } del haz en la imagen y { $up }° por { $way ->
    [down] debajo
   *[up] encima
  }.
ended = Solo queda la imagen.
failed = No se pudieron dibujar los huesos ({ $why }); la imagen sigue como estaba.
