### Machine-drafted, not yet reviewed by a speaker.

## Las líneas en la imagen, y la pregunta antes de girar

film-process = apófisis a { $mm } mm del centro
film-rims = bordes separados { $mm } mm
film-facetLateral = apófisis { $mm } mm lateral al pedículo
film-facetMedial = apófisis { $mm } mm medial al pedículo
film-openings = orificios separados { $mm } mm
film-sides = pedículos separados { $mm } mm
film-clock = punta a { $hour }
film-move = { $way ->
    [left] { $deg }° a la izquierda
    [right] { $deg }° a la derecha
    [cephalad] { $deg }° craneal
   *[caudad] { $deg }° caudal
  }
ask-question = ¿Hacia dónde debe ir el receptor?
ask-end = { $way ->
    [left] A la izquierda
    [right] A la derecha
    [cephalad] A la cabeza
   *[caudad] A los pies
  }
ask-yes = Sí. { $measured }. { $advice }
ask-no = Al otro lado. { $measured }. { $advice }

close = Cerrar

degrees = { $n ->
    [one] { $n } grado
   *[other] { $n } grados
  }
mm = { $n } mm

## The tour

tour-name = Recorrido
tour-count = { $n } de { $all }
tour-back = Atrás
tour-next = Siguiente
tour-done = Listo
tour-noticed-turned = Lo ha girado.
tour-noticed-full = Puntuación plena: una AP verdadera.
tour-stops-picture =
    .title = La imagen
    .text = Una persona en decúbito prono, como la ve el arco en C; en ámbar, el nivel en el que trabaja. Arrástrela o use las flechas: el arco en C gira.
tour-stops-oblique =
    .title = Oblicua
    .text = Gira el receptor a la izquierda o a la derecha del paciente. Gire hasta que la apófisis espinosa quede a medio camino entre los dos pedículos redondos.
tour-stops-tilt =
    .title = Inclinación
    .text = Lo inclina hacia la cabeza o los pies. Incline hasta que el platillo superior, una elipse plana, se cierre en una línea.
tour-stops-checks =
    .title = Lo que vale
    .text = Los puntos de esta vista. Debajo, cada medida dice cuánto falta, qué exige la puntuación plena y hacia dónde mover.
tour-stops-gantry =
    .title = El arco en C
    .text = El mismo giro desde fuera: mire el receptor mientras mueve un mando. El haz sube desde la fuente, abajo, hasta él.
tour-stops-activities =
    .title = Y después
    .text = Inyección: una aguja desde la piel hasta el contraste. Lecciones: un curso con puntos y un recibo para entregar. Este recorrido queda en el menú.

## The list of keys

keys-heading = Teclas
keys-use = Usar teclas sueltas
keys-useHint = Si no, solo responde a las teclas lo que tiene el foco.
keys-name = { $key ->
    [space] Espacio
    [pageup] Re Pág
    [pagedown] Av Pág
    [home] Inicio
    [end] Fin
    [enter] Intro
    [escape] Esc
   *[other] { $given }
  }
keys-command = Ctrl { $key }
keys-or = {" "}o{" "}
keys-places-page = En cualquier lugar
keys-places-sliders = En un mando
keys-places-picture = En la imagen
keys-places-views = Vistas
keys-places-needle = Inyección: aguja y arco en C
keys-places-hub = En el pabellón
keys-places-mark = En la imagen, al marcar
keys-places-naming = En la imagen, al nombrar partes
keys-places-beam = En Fluoroscopia
keys-places-menus = Menús y diálogos
keys-page-keys = esta lista de teclas
keys-page-read = se lee la imagen en voz alta
keys-page-zoom = la imagen más grande, más pequeña, entera
keys-page-through = mantenida: a través del haz, los huesos en 3D
keys-page-table = la mesa: izquierda, derecha, a la cabeza, a los pies, arriba, abajo
keys-sliders-step = { $deg ->
    [one] { $deg } grado, el tirador va hacia donde apunta la flecha
   *[other] { $deg } grados, el tirador va hacia donde apunta la flecha
  }
keys-sliders-ends = al extremo del recorrido
keys-picture-turn = girar el arco en C { $step }, con Mayús { $coarse }
keys-picture-hub = con aguja: mover el pabellón { $step }°, con Mayús { $fine }°
keys-views-pick = comprobar AP verdadera, oblicua, lateral
keys-views-check = comprobar mi vista (autoevaluación)
keys-needle-advance = avanzar 1 mm, con Mayús 5 mm
keys-needle-advanceHalf = avanzar 0,5 mm
keys-needle-withdraw = retirar 1 mm, con Mayús 5 mm
keys-needle-withdrawHalf = retirar 0,5 mm
keys-needle-roll = girar el pabellón 15° en sentido antihorario, horario; con Mayús 1°
keys-needle-half = girar el pabellón 180°
keys-needle-arm = arco en C a la AP, lateral, oblicua guardadas
keys-needle-mark = marcar en la imagen
keys-needle-hint = pista
keys-needle-undo = deshacer; con Mayús rehacer
keys-needle-redo = rehacer
keys-hub-turn = girarlo { $step }°, con Mayús { $fine }°
keys-hub-wheel = La rueda sobre el pabellón lo gira 5° por muesca; con Mayús avanza y retira 0,5 mm.
keys-mark-cross = mover la cruz { $step } mm, con Mayús { $fine } mm
keys-mark-set = marcar ahí
keys-mark-leave = salir
keys-naming-step = de contorno en contorno
keys-naming-answer = responder con el contorno iluminado
keys-beam-hold = haz encendido mientras se mantiene
keys-beam-stop = haz apagado, desde cualquier lugar
keys-menus-escape = cerrar lo que está abierto

## The picture in words

describe-heading = Descripción
describe-screen = En la pantalla
describe-picture = En la imagen
describe-needle = Aguja
describe-says = Decir lo que cambia
describe-saysHint = Por un lector de pantalla, cuando la imagen se detiene.
describe-activity-views = Vistas: la imagen, debajo los mandos Oblicua e Inclinación, después pasos, comprobación y un dibujo del arco en C.
describe-activity-injection = Inyección: la imagen, debajo los mandos Oblicua e Inclinación, después las etapas, y la aguja en la mano cuando la hay.
describe-activity-lessons = Lecciones: la lista del curso. La imagen y los mandos Oblicua e Inclinación también están.
describe-step = Ahora: { $title }.
describe-keys = El signo de interrogación muestra las teclas.
describe-none = Aún no hay imagen.
describe-nonePart = Lo que hay en la imagen se dice en cuanto la haya.
describe-judged = Dicho como lo ve el ojo, en milímetros enteros y vigésimos: lo que vale la vista lo juzga usted.
describe-naming = Aquí no se dice dónde están las partes: encontrarlas es lo que pide la lección.

## What stands where in the picture

describe-spinousMidway = { $level ->
    [S1] La cresta media del sacro queda a medio camino entre los pedículos.
   *[other] La apófisis espinosa de { $level } queda a medio camino entre los pedículos.
  }
describe-spinousOff = { $level ->
    [S1] { $way ->
        [left] La cresta media del sacro queda un { $percent } por ciento de la distancia entre pedículos a la izquierda del paciente del punto medio.
       *[right] La cresta media del sacro queda un { $percent } por ciento de la distancia entre pedículos a la derecha del paciente del punto medio.
      }
   *[other] { $way ->
        [left] La apófisis espinosa de { $level } queda un { $percent } por ciento de la distancia entre pedículos a la izquierda del paciente del punto medio.
       *[right] La apófisis espinosa de { $level } queda un { $percent } por ciento de la distancia entre pedículos a la derecha del paciente del punto medio.
      }
  }
describe-plateOne = { $which ->
    [upper] El platillo superior de { $level } es una sola línea.
   *[lower] El platillo inferior de { $level } es una sola línea.
  }
describe-plateTwo = { $which ->
    [upper] El platillo superior de { $level } se abre en dos líneas.
   *[lower] El platillo inferior de { $level } se abre en dos líneas.
  }
describe-plateApart = { $which ->
    [upper] El platillo superior de { $level } se abre en dos líneas, separadas { $apart }.
   *[lower] El platillo inferior de { $level } se abre en dos líneas, separadas { $apart }.
  }
describe-processBelow = { $stands ->
    [under_lateral] El borde lateral de la apófisis articular superior de { $below } queda bajo el tercio lateral del pedículo de { $level }, con la punta { $mm } mm por debajo.
    [under_middle] El borde lateral de la apófisis articular superior de { $below } queda bajo el tercio medio del pedículo de { $level }, con la punta { $mm } mm por debajo.
    [under_medial] El borde lateral de la apófisis articular superior de { $below } queda bajo el tercio medial del pedículo de { $level }, con la punta { $mm } mm por debajo.
    [beside_lateral] El borde lateral de la apófisis articular superior de { $below } queda { $widths } anchos de pedículo lateral al centro del pedículo de { $level }, con la punta { $mm } mm por debajo.
   *[beside_medial] El borde lateral de la apófisis articular superior de { $below } queda { $widths } anchos de pedículo medial al centro del pedículo de { $level }, con la punta { $mm } mm por debajo.
  }
describe-processOver = { $stands ->
    [under_lateral] El borde lateral de la apófisis articular superior de { $below } queda bajo el tercio lateral del pedículo de { $level }, con la punta superpuesta { $mm } mm al pedículo.
    [under_middle] El borde lateral de la apófisis articular superior de { $below } queda bajo el tercio medio del pedículo de { $level }, con la punta superpuesta { $mm } mm al pedículo.
    [under_medial] El borde lateral de la apófisis articular superior de { $below } queda bajo el tercio medial del pedículo de { $level }, con la punta superpuesta { $mm } mm al pedículo.
    [beside_lateral] El borde lateral de la apófisis articular superior de { $below } queda { $widths } anchos de pedículo lateral al centro del pedículo de { $level }, con la punta superpuesta { $mm } mm al pedículo.
   *[beside_medial] El borde lateral de la apófisis articular superior de { $below } queda { $widths } anchos de pedículo medial al centro del pedículo de { $level }, con la punta superpuesta { $mm } mm al pedículo.
  }
describe-off = { $across ->
    [left] { $along ->
        [up] { $x } mm a la izquierda y { $y } mm por encima
        [down] { $x } mm a la izquierda y { $y } mm por debajo
       *[none] { $x } mm a la izquierda
      }
    [right] { $along ->
        [up] { $x } mm a la derecha y { $y } mm por encima
        [down] { $x } mm a la derecha y { $y } mm por debajo
       *[none] { $x } mm a la derecha
      }
   *[none] { $along ->
        [up] { $y } mm por encima
        [down] { $y } mm por debajo
       *[none] { $x } mm
      }
  }
describe-middle = El cuerpo de { $level } está { $off } del centro de la imagen.
describe-joint = La articulación facetaria { $level }–{ $below } está { $off } del centro del pedículo.
describe-pedicle = { $side ->
    [left] El pedículo izquierdo de { $level } está { $off } del centro de la imagen.
   *[right] El pedículo derecho de { $level } está { $off } del centro de la imagen.
  }
describe-foramen = { $apart ->
    [0] Las dos aberturas del primer agujero sacro están superpuestas.
   *[other] Las dos aberturas del primer agujero sacro están separadas { $apart } mm.
  }
describe-lateral = { $apart ->
    [0] Los pedículos izquierdo y derecho de { $level } están superpuestos.
   *[other] Los pedículos izquierdo y derecho de { $level } están separados { $apart } mm, los bordes de la pared posterior { $wall } mm.
  }
describe-crestOutside = { $side ->
    [left] La cresta ilíaca izquierda queda fuera de la imagen.
   *[right] La cresta ilíaca derecha queda fuera de la imagen.
  }
describe-crestBody = { $side ->
    [left] La cresta ilíaca izquierda llega a la altura del cuerpo de { $level }.
   *[right] La cresta ilíaca derecha llega a la altura del cuerpo de { $level }.
  }
describe-crestDisc = { $side ->
    [left] La cresta ilíaca izquierda llega a la altura del disco entre { $above } y { $below }.
   *[right] La cresta ilíaca derecha llega a la altura del disco entre { $above } y { $below }.
  }

## The needle in the picture

describe-hubOver = El pabellón queda superpuesto a la punta.
describe-hubOff = El pabellón está { $off } de la punta.
describe-tip = La punta está { $off } del centro del pedículo.
describe-mark = La marca está { $off } del centro del pedículo.
describe-placed = Aguja { $gauge } G, { $depth } mm de profundidad.
describe-bone = La punta está en el hueso.
describe-last = Lo último que tocó: { $met }
