### Machine-drafted, not yet reviewed by a speaker.

where = oblicua { $oblique }, inclinación { $tilt }

## The learner’s own view beside the best one

compare-open = Comparar con la mejor
compare-close = Cerrar la comparación
compare-closeShort = Cerrar
compare-slider = Divisor entre su vista y la mejor
compare-own = Su vista
compare-best = Mejor vista
compare-angles = { $oblique }, { $tilt }
compare-shareOwn = su vista en el { $percent } % izquierdo de la imagen, la mejor en el resto
compare-picture = Dos vistas en una imagen. A la izquierda la suya, { $own }; a la derecha la mejor, { $best }.
compare-same = Su vista y la mejor están en los mismos ángulos.
compare-differs = { $side ->
    [left] { $way ->
        [cephalad] La mejor vista está { $oblique }° más a la izquierda del paciente y { $tilt }° más craneal que la suya.
        [caudad] La mejor vista está { $oblique }° más a la izquierda del paciente y { $tilt }° más caudal que la suya.
       *[none] La mejor vista está { $oblique }° más a la izquierda del paciente que la suya.
      }
    [right] { $way ->
        [cephalad] La mejor vista está { $oblique }° más a la derecha del paciente y { $tilt }° más craneal que la suya.
        [caudad] La mejor vista está { $oblique }° más a la derecha del paciente y { $tilt }° más caudal que la suya.
       *[none] La mejor vista está { $oblique }° más a la derecha del paciente que la suya.
      }
   *[none] { $way ->
        [cephalad] La mejor vista está { $tilt }° más craneal que la suya.
       *[caudad] La mejor vista está { $tilt }° más caudal que la suya.
      }
  }

## The views so far

history-name = Vistas hasta ahora
history-none = Cada vista en la que se detiene queda aquí como imagen pequeña, las doce últimas.
history-list = Vistas hasta ahora, la más antigua primero
history-now = ahora
history-back = De vuelta en { $where }.
history-end-undo = No hay vista anterior.
history-end-redo = No hay vista posterior.

## Saved pictures and the printed result

picture-png = Guardar imagen (PNG)
picture-svg = Guardar contornos (SVG)
picture-print = Imprimir el resultado
picture-credit = Downbeam, modelo docente, no apto para uso clínico
picture-about = { $place }, paciente «{ $patient }», { $where }
picture-desc = Contornos calculados de un modelo docente, mm en el detector: no son para planificar ni guiar un procedimiento.
picture-scale = { $n } mm en el detector
picture-noEngine = No hay imagen que guardar: falta el motor de cálculo.
picture-noPicture = Aún no hay imagen que guardar: haga antes una exposición.
picture-hidden = No se pueden guardar los contornos mientras esta lección los reserva o pregunta por ellos; termínela antes.
picture-failed = No se pudo guardar la imagen: { $why }.
picture-notChecked = Esta vista no se ha comprobado.
