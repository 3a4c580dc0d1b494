### Machine-drafted, not yet reviewed by a speaker.

title = Downbeam: vistas de la columna lumbar con arco en C
subtitle = Vistas de la columna lumbar con arco en C
skip = Saltar a la imagen
noscript = Esta página calcula radiografías en su navegador y necesita JavaScript y WebAssembly.

activity-name = Actividad
activity-views = Vistas
activity-injection = Inyección
activity-lessons = Lecciones

case-heading = Caso
case-level = Nivel
case-side = Lado
case-left = Izquierda
case-right = Derecha
case-patient = Paciente
sheet-close = Cerrar
case-theme = Aspecto
case-dark = Sala oscura
case-light = Claro
case-device = Como el dispositivo

menu-name = Menú
menu-practice = Ronda diaria: cinco minutos
menu-check = Docentes: revisar recibos
menu-author = Docentes: preparar lección
menu-model = Sobre el modelo
menu-tour = Recorrido por la página
menu-keys = Teclas
menu-read = Leer la imagen
menu-language = Idioma
menu-draft = Traducción automática, aún no revisada por una persona del oficio.

welcome-what = Un arco en C sobre una columna lumbar.
welcome-first = Haga una AP verdadera: diga hacia dónde y siga después la flecha en la imagen.
welcome-tour = Recorrido
welcome-dismiss = Cerrar este aviso

picture-heading = Imagen
picture-keys = Imagen. Las flechas giran el arco en C.
picture-label = Vista fluoroscópica, { $place }
picture-description = Descripción
picture-hint = Arrastre la imagen para girar: el receptor va hacia donde arrastra. Los mandos hacen lo mismo. La rueda o dos dedos la amplían; un doble toque la muestra entera.
picture-zoomed = Imagen ampliada { $times } veces.
picture-whole = La imagen entera.

## Loading the engine

loading-failedFetch = No se cargó el motor de cálculo ({ $why }). Compruebe la conexión e inténtelo de nuevo; los pasos y el dibujo del arco siguen funcionando.
loading-failedStart = No se pudo iniciar el motor de cálculo ({ $why }). Hace falta un navegador con WebAssembly; los pasos y el dibujo del arco siguen funcionando.
loading-failedRun = El motor de cálculo se detuvo ({ $why }). Cárguelo de nuevo para seguir; su posición se conserva.

turn-heading = Girar el arco en C
turn-more = Mesa e imagen
turn-reset = Centrar la mesa
turn-straighten = Centrar y enderezar

rotation-name = Giro de la imagen
rotation-hint = horario +
rotation-high = horario
rotation-low = antihorario
rotation-zero = derecha
rotation-zeroSpoken = derecha, 0 grados
rotation-turned = { $way ->
    [clockwise] { $deg }° en sentido horario
   *[counter] { $deg }° en sentido antihorario
  }
rotation-turnedSpoken = { $way ->
    [clockwise] { $deg ->
        [one] { $deg } grado en sentido horario
       *[other] { $deg } grados en sentido horario
      }
   *[counter] { $deg ->
        [one] { $deg } grado en sentido antihorario
       *[other] { $deg } grados en sentido antihorario
      }
  }

window-contrast = Contraste
window-brightness = Brillo
window-percent = { $n } %
window-percentLess = −{ $n } %

exposure-heading = Exposición
exposure-source = De dónde viene la imagen
exposure-live = Imagen viva gratuita
exposure-exposures = Imagen solo al exponer
exposure-liveNote = Para practicar: la imagen sigue al arco en C y no cuesta nada.
exposure-exposuresNote = Girar el arco en C no muestra nada nuevo. La última imagen queda hasta la siguiente exposición, y cada una cuesta dosis. Otro paciente u otro comienzo inicia un registro nuevo.
exposure-beam = Haz
exposure-spot = Puntual
exposure-fluoroscopy = Fluoroscopia
exposure-hold = Mantenga pulsado el botón, o Espacio mientras tenga el foco. Esc detiene el haz. En Exposición puede dejarse encendida.
exposure-latch = La fluoroscopia sigue hasta pulsar de nuevo
exposure-settings = Ajustes del haz
exposure-pulseRate = Pulsos de fluoroscopia
exposure-rate = { $n } por segundo
exposure-magnification = Ampliación
exposure-magnified = { $times ->
    [1] campo entero
   *[other] { $times } veces
  }
exposure-lowDose = Dosis baja
exposure-width = Ancho del campo
exposure-height = Alto del campo
exposure-open = { $n } %
exposure-none = Aún no hay imagen. Pulse Puntual o mantenga Fluoroscopia.
exposure-noPicture = Aún no hay imagen.
exposure-kind-spot = puntual
exposure-kind-fluoroscopy = fluoroscopia
exposure-on = Haz encendido: { $where }.
exposure-last = Última imagen ({ $kind }): { $where }.
exposure-lastMoved = Última imagen ({ $kind }): { $where }. El arco se ha movido después.
exposure-onMoved = Haz encendido: { $where }. El arco se ha movido después.
exposure-whereOf = { $level }, { $oblique }, { $tilt }
exposure-where = { $oblique }, { $tilt }
exposure-alternative = Última radiografía, { $kind }, de { $level }, con el receptor { $oblique } y { $tilt }.
exposure-alternativeMoved = Última radiografía, { $kind }, de { $level }, con el receptor { $oblique } y { $tilt }. El arco en C se ha movido después.
exposure-said = { $kind ->
    [spot] Imagen puntual tomada: receptor { $oblique } y { $tilt }. Hasta ahora { $exposures }, producto kerma–área { $product } mGy·cm².
   *[fluoroscopy] Haz apagado, última imagen retenida: receptor { $oblique } y { $tilt }. Hasta ahora { $exposures }, producto kerma–área { $product } mGy·cm².
  }
exposure-count = { $n ->
    [one] { $n } exposición
   *[other] { $n } exposiciones
  }
exposure-spent = Dosis hasta ahora
exposure-figureName-exposures = Exposiciones
exposure-figureName-beam = Tiempo de haz
exposure-figureName-kerma = Kerma en aire de referencia
exposure-figureName-product = Producto kerma–área
exposure-figureName-technique = Última exposición
exposure-figure-beam = { $n } s
exposure-figure-kerma = { $n } mGy
exposure-figure-product = { $n } mGy·cm²
exposure-figure-technique = { $kvp } kVp, { $mas } mAs
exposure-nothing-exposures = 0
exposure-nothing-beam = 0 s
exposure-nothing-kerma = 0 mGy
exposure-nothing-product = 0 mGy·cm²
exposure-nothing-technique = ninguna
exposure-estimate = Estimación en el punto de referencia, en aire; no es dosis en la piel.
exposure-saving = { $habit ->
    [half_field] Cerrar ambos pares de colimadores a la mitad del campo habría ahorrado cerca del { $percent } %.
    [low_dose] La dosis baja habría ahorrado cerca del { $percent } %.
    [slow_pulses] Cuatro pulsos por segundo habrían ahorrado cerca del { $percent } %.
   *[fewer_exposures] La mitad de exposiciones habría ahorrado cerca del { $percent } %.
  }
exposure-reset = A cero
exposure-resetLong = Poner la dosis a cero
exposure-save = Guardar dose.json
exposure-saveLong = Guardar dose.json, la dosis en términos y unidades de DICOM
exposure-wasReset = El registro de dosis comienza de nuevo en cero.

checks-heading = Qué tan cerca
checks-view = Vista que se comprueba
checks-selfTest = Autoevaluación
checks-selfTestHint = Oculta valores y consejos hasta que los pida.
checks-none = La comprobación llega con la imagen.
checks-count = { $n ->
    [0] Aún sin comprobaciones
    [one] { $n } comprobación usada
   *[other] { $n } comprobaciones usadas
  }
checks-standsAtBest = El arco en C está en la mejor vista «{ $view }» que este aparato alcanza aquí; una exposición la muestra. No cuenta para los pasos.
checks-showingBest = Esta es la mejor vista «{ $view }» que este aparato alcanza aquí. No cuenta para los pasos.
checks-bestLocked = La mejor vista puede mostrarse tras una comprobación.
checks-allGood = No queda nada por corregir.

steps-heading = Pasos
steps-done = hecho
steps-current = ahora
steps-later = después
steps-doIt = Haga
steps-lookFor = Busque
steps-progress = { $done } de { $all }
steps-ticked = Paso hecho: { $title }.
steps-allDone = Los cuatro pasos hechos. Tome otro comienzo, lado o nivel e inténtelo en autoevaluación.
steps-testHint = En autoevaluación un paso se marca cuando comprueba su vista.
steps-keep = Guardar esta vista
steps-whichWay = ¿Hacia dónde?
steps-start = Nuevo comienzo
steps-startLong = Nuevo comienzo en una posición al azar
steps-again = Mismo comienzo
steps-againLong = Mismo comienzo: la misma posición otra vez

steps-true_ap-title = AP verdadera
steps-true_ap-act = Gire a la izquierda o a la derecha hasta que el haz atraviese { $level } recto de atrás adelante.
steps-true_ap-look = { $level ->
    [S1] La cresta media del sacro queda a medio camino entre los dos pedículos de S1, y ambos lados se ven iguales.
   *[other] La apófisis espinosa de { $level } queda a medio camino entre sus dos pedículos. Los dos se ven iguales y a la misma distancia del borde del cuerpo.
  }
steps-square-title = Ajustar el platillo
steps-square-act = No gire. Incline en sentido craneal o caudal.
steps-square-look = Los bordes anterior y posterior del platillo superior de { $level } se juntan: la elipse plana se cierra en una línea nítida y se abre el espacio discal.
steps-oblique-title = { $side ->
    [left] Oblicua izquierda
   *[right] Oblicua derecha
  }
steps-oblique-act = { $side ->
    [left] Mantenga la inclinación. Gire el receptor hacia la izquierda del paciente.
   *[right] Mantenga la inclinación. Gire el receptor hacia la derecha del paciente.
  }
steps-oblique-look = { $level ->
    [S1] Las aberturas posterior y anterior del primer agujero sacro se superponen hasta verse como un hueco claro bajo el pedículo de S1.
   *[other] Aparece el perro, con el pedículo de { $level } por ojo. Siga hasta que la oreja del perro siguiente, la apófisis articular superior de { $below }, quede bajo ese ojo, con su borde lateral bajo el centro del ojo.
  }
steps-square_again-title = Ajustar de nuevo
steps-square_again-act = Al girar, el platillo se ha inclinado un poco. Incline hasta que se cierre otra vez y corrija el giro si se ha movido.
steps-square_again-look = { $level ->
    [S1] Ambas cosas a la vez: el platillo de S1 es una línea y las aberturas del agujero siguen superpuestas.
   *[other] Ambas cosas a la vez: el platillo superior de { $level } es una línea y la apófisis de { $below } sigue bajo el pedículo.
  }

gantry-heading = Arco en C y paciente
gantry-short = Arco en C
gantry-feet = Desde los pies: { $oblique }
gantry-side = Desde la derecha del paciente: { $tilt }
gantry-describeFeet = Arco en C visto desde los pies, paciente en decúbito prono, su izquierda a la izquierda. El receptor, arriba, está { $oblique }; la fuente está enfrente, bajo la mesa.
gantry-describeSide = Arco en C visto desde la derecha del paciente, cabeza a la derecha. El receptor, arriba, está inclinado: { $tilt }; la fuente está enfrente, bajo la mesa.
gantry-receptor = receptor
gantry-source = fuente
gantry-left = izquierda
gantry-right = derecha
gantry-head = cabeza
gantry-feetEnd = pies

notice-dismiss = Cerrar este mensaje
notice-badFragment = La dirección pide { $key } «{ $value }»; se admite { $allowed }. Se usó el valor de partida.
notice-unknownFragment = La dirección tiene una entrada desconocida, «{ $key }»; no se tuvo en cuenta.
notice-noPart = No se pudo cargar «{ $name }» ({ $why }). Todo lo demás sigue funcionando; inténtelo de nuevo.
notice-noPartYet = No se pudo cargar «{ $name }» ({ $why }). Todo lo demás sigue funcionando; vuelva a cargar la página para tenerlo.
notice-tools = Vistas anteriores, comparar y guardar
notice-noLanguage = No se pudo cargar el idioma «{ $tag }» de la página; sigue en inglés.
notice-offlineKept = Sin red. Todo aquí sigue funcionando: la página está guardada en este dispositivo.
notice-offline = Sin red. Lo que está abierto sigue funcionando; lo que aún no se ha abierto necesita la red.
notice-online = La red ha vuelto.
notice-noStorage = Este navegador no guarda ajustes de esta página; duran hasta que la cierre.

bench-title = Downbeam: cuánto tarda una imagen
bench-done = { $n } imágenes en una vuelta, lienzo de 512 y 1024 píxeles
bench-running = Midiendo { $n } imágenes en una vuelta
bench-failed = No se cargó el motor de cálculo: { $why }
bench-median = mediana, ms
bench-slow = percentil 95, ms
bench-rows-radiograph = radiografía
bench-rows-outlines = contornos, dibujados
bench-rows-report = informe
bench-rows-frame = imagen entera
bench-rows-still = imagen en reposo, 1024 píxeles
bench-rows-patient = paciente nuevo
