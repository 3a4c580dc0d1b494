### Machine-drafted, not yet reviewed by a speaker.

heading = Aguja
wait = Los pasos de la inyección llegan con la imagen: vistas que guardar, una diana que marcar, una aguja que colocar y dirigir, contraste.
steps = Paso a paso
progress = { $done } de { $all }

## Places: an hour of the clock, a way on the screen, off something else

hour = { $hour ->
    [1] la { $hour }
   *[other] las { $hour }
  }
hourHalf = { $hour ->
    [1] la { $hour } y media
   *[other] las { $hour } y media
  }
offset-across = { $way ->
    [right] { $mm } mm a la derecha
   *[left] { $mm } mm a la izquierda
  }
offset-along = { $way ->
    [up] { $mm } mm hacia arriba
   *[down] { $mm } mm hacia abajo
  }

help-name = Ayuda durante el trabajo
help-guided = Guiada
help-asked = A petición
help-test = Autoevaluación
help-note-guided = Siempre se muestra lo siguiente que hay que hacer.
help-note-asked = Se muestra una pista cuando usted la pide.
help-note-test = Sin pistas, lecturas ni marcas en la imagen hasta que termine.
help-ask = Pista
help-heading = Pista

more = Ayuda y archivo
undo = Deshacer
redo = Rehacer
again = De nuevo
againLong = Empezar de nuevo esta inyección
caution = Precaución

stage-later = pendiente
stage-current = ahora
stage-done = hecho
stage-left = sin terminar
stage-marks = { $points } de 100
stage-now = Ahora { $marks }.
stage-list-centre-title = Diana al centro
stage-list-centre-act = En AP mueva la mesa a lo ancho y a lo largo hasta que el cuerpo de { $level } quede en el centro de la imagen. Después mire en lateral y súbala o bájela.
stage-list-true_ap-title = AP verdadera
stage-list-true_ap-act = { $level ->
    [S1] Gire hasta que la cresta sacra quede a media distancia entre los pedículos de { $level }, ajuste el platillo vertebral superior con la inclinación y guarde la vista.
   *[other] Gire hasta que la apófisis espinosa quede a media distancia entre los pedículos de { $level }, ajuste el platillo vertebral superior con la inclinación y guarde la vista.
  }
stage-list-true_ap-kept = guardada
stage-list-oblique-title = Oblicua, ajustada
stage-list-oblique-actS1 = { $side ->
    [left] Gire a la izquierda e incline hasta que las dos aberturas del primer agujero sacro queden superpuestas, y guarde la vista.
   *[right] Gire a la derecha e incline hasta que las dos aberturas del primer agujero sacro queden superpuestas, y guarde la vista.
  }
stage-list-oblique-actLumbar = { $side ->
    [left] Gire a la izquierda hasta que la apófisis articular del nivel inferior quede bajo el pedículo, ajuste de nuevo y guarde la vista.
   *[right] Gire a la derecha hasta que la apófisis articular del nivel inferior quede bajo el pedículo, ajuste de nuevo y guarde la vista.
  }
stage-list-oblique-actRoot = { $side ->
    [left] La vía bajo la raíz pide una oblicua más acentuada: gire a la izquierda hasta que la apófisis articular del nivel inferior quede en la mitad del platillo, ajuste el platillo superior del nivel inferior y guarde la vista.
   *[right] La vía bajo la raíz pide una oblicua más acentuada: gire a la derecha hasta que la apófisis articular del nivel inferior quede en la mitad del platillo, ajuste el platillo superior del nivel inferior y guarde la vista.
  }
stage-list-oblique-kept = guardada
stage-list-parts-title = Nombrar las estructuras
stage-list-parts-act = Busque en la imagen lo que se le pide.
stage-list-lateral-title = Lateral
stage-list-lateral-act = { $side ->
    [left] Gire a la izquierda unos 90 grados hasta que los pedículos izquierdo y derecho queden superpuestos y los platillos vertebrales sean líneas únicas, y guarde la vista.
   *[right] Gire a la derecha unos 90 grados hasta que los pedículos izquierdo y derecho queden superpuestos y los platillos vertebrales sean líneas únicas, y guarde la vista.
  }
stage-list-lateral-kept = guardada
stage-list-mark-title = Marcar la diana
stage-list-mark-act = Pulse el botón y después pulse el lugar en la imagen oblicua. Con el teclado: las flechas mueven la cruz 1 mm (con Mayús 0,2 mm), Intro marca, Esc sale.
stage-list-mark-done = marcada
stage-list-place-title = Colocar una aguja
stage-list-place-act = Se coloca vertical sobre la piel, encima de la marca.
stage-list-place-caution = Antes de cualquier aguja: anticoagulantes (suspenderlos también tiene riesgo), alergia al contraste, embarazo. Qué se hace con cada uno lo dice el protocolo local.
stage-list-align-title = Pabellón sobre la punta
stage-list-align-act = En la imagen oblicua, mueva el pabellón hasta que la aguja sea un punto: arrastre el anillo en la imagen, use los cuatro botones o las flechas sobre la imagen. La aguja pivota en la piel, así que hágalo mientras esté superficial. Después avance hasta unos 15 mm de profundidad.
stage-list-align-done = a { $deg }° del haz
stage-list-steer-title = Avanzar y dirigir
stage-list-steer-act = Avances cortos. La punta se desvía hacia el lado opuesto a la muesca: gire la muesca hacia el lado al que se ha desviado la punta. Con media vuelta se curva hacia el otro lado; si se avanza rotándola, va recta.
stage-list-steer-caution = Dolor que baja por la pierna: pare y retroceda. La sedación puede ocultarlo: en un paciente adormilado, que no duela no demuestra nada.
stage-list-steer-done = a { $mm } mm de profundidad
stage-list-depth-title = Comprobar la profundidad
stage-list-depth-act = Gire a la lateral antes de que esté profunda, guarde también esa vista y alterne con la AP y la oblicua tantas veces como haga falta y ni una más.
stage-list-depth-done = en su sitio, vista en AP y lateral
stage-list-contrast-title = Contraste
stage-list-contrast-act = Aspire y después inyecte un poco bajo imagen en tiempo real. Observe por dónde corre y nómbrelo.
stage-list-contrast-exposures = En tiempo real significa que la fluoroscopia está activa mientras entra: marque «La fluoroscopia sigue hasta pulsar de nuevo» en Exposición, actívela y después inyecte.
stage-list-contrast-caution-live = Contraste en tiempo real antes que nada, y mírelo entero. Una arteria que va a la médula puede encontrarse en cualquier nivel.
stage-list-contrast-caution-aspirate = Aspire cada vez, y fíese solo de la sangre: de las puntas que están en un vaso, menos de la mitad la dan. En L5-S1 hubo una paraplejia sin que volviera nada y sin que la sustracción mostrara nada.
stage-list-contrast-caution-subtraction = La sustracción y una dosis de prueba de anestésico local encuentran más, y aun así algo se les escapa; la sustracción cuesta radiación.
stage-list-contrast-caution-fluid = Por una aguja fina el líquido claro llega tarde o nunca: un pabellón seco no descarta la duramadre.
stage-list-contrast-caution-steroid = Corticoide no particulado siempre; excepciones solo por protocolo local. Con alergia al contraste, el protocolo local dice qué se hace en su lugar.
stage-list-contrast-wrong = Lugar equivocado para inyectar: retroceda, recoloque y compruébelo de nuevo.
stage-list-contrast-right = Esta es la distribución que se busca.
stage-list-finish-title = Terminar y puntuar
stage-list-finish-act = Después no se puede hacer nada más, pero «Deshacer» lo anula.
stage-keep = { $view ->
    [true_ap] Guardar esta AP verdadera
    [oblique] Guardar esta oblicua
   *[lateral] Guardar esta lateral
  }
stage-keepAgain = { $view ->
    [true_ap] Cambiarla por esta AP verdadera
    [oblique] Cambiarla por esta oblicua
   *[lateral] Cambiarla por esta lateral
  }
# $title is the name of a step, $result what was reached in it.
stage-ended = { $title }: { $result }.
stage-next = A continuación: { $title }.
stage-goOn = Ir al paso siguiente
stage-keepAsked = Guardarla de todos modos
stage-keepNothing = Tal como está, esta vista vale 0 de 100. Ajústela mejor, o pulse otra vez para guardarla.
stage-mark = Marcar en la imagen
stage-marking = Marcando: pulse el lugar
stage-showArea = Mostrar la zona
stage-place = Colocar la aguja
stage-placeAgain = Tomar otra aguja
stage-remove = Retirar la aguja
stage-gauge = Calibre
stage-length = Longitud
stage-gaugeName = { $gauge } G
stage-lengthName = { $mm } mm
stage-hubColour = { $gauge ->
    [22] Pabellón negro.
    [25] Pabellón naranja. No se ha encontrado publicada la curvatura de una aguja de 25 G: se supone que se curva una cuarta parte más.
   *[other] {""}
  }
stage-placed = { $colour ->
    [black] { $gauge } G, { $mm } mm, pabellón negro
    [orange] { $gauge } G, { $mm } mm, pabellón naranja
   *[other] { $gauge } G, { $mm } mm, pabellón { $colour }
  }
stage-approach = Vía de entrada
stage-approachName-subpedicular = Bajo el pedículo
stage-approachName-infraneural = Bajo la raíz
stage-finish = Terminar
stage-none = Todavía no hay aguja.

# The next action as one button.
next-hub = Poner el cono sobre la punta
next-notch = Girar la muesca a { $hour }
next-look = { $view ->
    [true_ap] Mirar en AP
    [lateral] Mirar en lateral
   *[oblique] Mirar en oblicua
  }

hand-heading = Aguja en la mano
hand-hub = Pabellón desde arriba
hand-hubKeys = Las flechas lo giran 15 grados, con Mayús 1 grado.
hand-notch = Muesca a { $hour }
hand-notchFine = muesca a { $hour }, la punta se desvía hacia { $to }
hand-drift = Se desvía hacia { $to }
hand-half = Girar 180°
hand-depth = a { $mm } mm de profundidad
hand-left = { $mm } mm fuera
hand-advance = Avanzar, mm
hand-withdraw = Retroceder, mm
hand-advanceBy = Avanzar { $mm } mm
hand-withdrawBy = Retroceder { $mm } mm
hand-spin = Rotar al avanzar
hand-percent = { $n ->
    [0] nada
   *[other] { $n } %
  }
hand-pad = Mover el pabellón
hand-fine = Pasos de 0,1°
hand-way-left = izquierda
hand-way-up = arriba
hand-way-down = abajo
hand-way-right = derecha
hand-hubBy = { $way ->
    [left] Pabellón a la izquierda
    [right] Pabellón a la derecha
    [up] Pabellón hacia arriba
   *[down] Pabellón hacia abajo
  }
hand-views = Girar el arco en C a
hand-view-true_ap = AP
hand-view-lateral = Lateral
hand-view-oblique = Oblicua
hand-beam = a { $deg }° del haz
hand-hubOff = pabellón respecto a la punta: { $offset }
hand-hubOver = pabellón sobre la punta
hand-offMark = punta respecto a la marca: { $offset }
hand-onMark = punta en la marca
hand-ap = { $way ->
    [medial] AP: punta a { $hour } del pedículo, { $mm } mm medial a las 6
   *[lateral] AP: punta a { $hour } del pedículo, { $mm } mm lateral a las 6
  }
hand-lateral = { $way ->
    [behind] Lateral: { $mm } mm por detrás de la línea vertebral posterior, { $height }
   *[front] Lateral: { $mm } mm por delante de la línea vertebral posterior, { $height }
  }
hand-height-above = por encima del agujero
hand-height-upper = en el tercio superior del agujero
hand-height-middle = en el tercio medio del agujero
hand-height-lower = en el tercio inferior del agujero
hand-height-below = por debajo del agujero
hand-asOf = Según la última imagen
hand-met = Encontrado en el trayecto
hand-nothingMet = Nada todavía.

contrast-aspirate = Aspirar
contrast-inject = Inyectar { $ml } ml
contrast-in = { $ml } ml inyectados.
contrast-answer-blood = Refluye sangre: la punta está en un vaso. No inyecte; recoloque.
contrast-answer-clear_fluid = Refluye líquido claro: la punta está en el saco dural. No inyecte; recoloque.
contrast-hold = Mantener
contrast-holdMore = {" "}pulsado para inyectar
contrast-holdHint = Unos 0,4 ml por segundo mientras se mantiene pulsado, también con Espacio.
contrast-notAspirated = Se inyectó sin aspirar antes.
contrast-notLive = Se inyectó sin imagen en tiempo real: no se habría visto un vaso.
contrast-name = ¿Qué mostró el contraste?
contrast-pattern-perineural = A lo largo de la raíz y hacia el espacio epidural
contrast-pattern-arterial = Arterial
contrast-pattern-venous = Venoso
contrast-pattern-mixed = Mixto, raíz y vena
contrast-pattern-intrathecal = En el saco dural
contrast-pattern-subdural = Subdural
contrast-pattern-intraneural = En la propia raíz
contrast-pattern-intradiscal = En el disco
contrast-pattern-facet_joint = Articulación facetaria
contrast-pattern-peritoneal = Delante de la columna, más allá de la espalda
contrast-pattern-muscular = En el músculo
contrast-naming = Nombrarlo así
contrast-right = Bien nombrado: { $name }. { $sign }
contrast-wrong = No era: { $name }. Era: { $truth }. { $sign }
contrast-pick = Elija primero un patrón.

score-heading = Puntos por paso
score-columns-step = Paso
score-columns-weight = Peso
score-columns-marks = Puntos
score-total = Total
score-none = aún no hay
score-notCounted = no cuenta
score-said = Terminado: { $marks } en toda la inyección.
score-table = Puntos por paso, con motivos
gates-heading = Lo que hace falta para aprobar
gates-held = Se cumplió todo lo que hace falta para aprobar.
gates-failed = { $n ->
    [one] No se cumplió { $n } cosa que hace falta para aprobar, y ningún punto la compensa:
   *[other] No se cumplieron { $n } cosas que hacen falta para aprobar, y ningún punto las compensa:
  }
gates-isHeld = cumplido
gates-isFailed = no cumplido
signs-blood = Sangre en el pabellón.
signs-clear_fluid = Líquido claro en el pabellón.
signs-paraesthesia = El paciente refiere dolor que baja por la pierna.

file-save = Guardar attempt.json
file-open = Abrir un intento
file-opened = El intento está abierto tal como se dejó.
file-notResumed = No se pudo retomar el intento conservado ({ $why }); la lección empieza de nuevo.
file-bad = No se pudo abrir ese archivo: { $why }. Se conserva el intento de la página.
file-strange = tiene una entrada desconocida «{ $key }»; se admiten patient, seed, changed, case y log
file-noPatient = aquí no hay ningún paciente «{ $name }»
file-notJson = no es JSON
file-tooLarge = ocupa más de 2 MB
file-noAttempt = no contiene un intento con patient, case y log
file-back = Recuperar el último intento

picture-label = Imagen. Las flechas mueven el pabellón, o la cruz mientras se marca.
picture-key-mark = marca
picture-key-area = zona a la que apuntar
picture-key-hub = pabellón
picture-key-tip = punta
picture-cross = Cruz respecto al centro: { $offset }.
picture-crossMiddle = Cruz en el centro.
picture-words = Aguja de { $gauge } G, a { $mm } mm de profundidad.
picture-wordsOpen = Aguja de { $gauge } G, a { $mm } mm de profundidad, { $hub }.
picture-markWords = Hay una marca puesta.

did-mark = Diana marcada.
did-keep = { $view ->
    [true_ap] AP verdadera guardada.
    [oblique] Oblicua guardada.
   *[lateral] Lateral guardada.
  }
did-recall = { $view ->
    [true_ap] Arco en C en la AP verdadera guardada.
    [oblique] Arco en C en la oblicua guardada.
   *[lateral] Arco en C en la lateral guardada.
  }
did-orient = { $view ->
    [true_ap] Arco en C en una AP verdadera básica: ajústela y guárdela.
    [oblique] Arco en C en una oblicua básica: ajústela y guárdela.
   *[lateral] Arco en C en una lateral básica: ajústela y guárdela.
  }
did-choose = { $approach ->
    [subpedicular] Vía de entrada: bajo el pedículo.
   *[infraneural] Vía de entrada: bajo la raíz.
  }
did-place = Aguja sobre la piel: { $needle }.
did-remove = Aguja retirada.
did-undo = Deshecho.
did-redo = Rehecho.
did-no_undo = No hay nada que deshacer.
did-no_redo = No hay nada que rehacer.
did-again = Un intento nuevo de la misma inyección.
did-named = Patrón nombrado.

refuse-bestView = Esta es la mejor vista de la página, no la suya: vuelva a su vista, ajústela y guarde esa.
refuse-noPicture = No hay imagen de esta posición: haga primero una exposición y después marque en ella.
refuse-noOblique = Todavía no se ha guardado ninguna oblicua: ajústela y guárdela primero.
