### Machine-drafted, not yet reviewed by a speaker.

skip = Ir al contenido
theme = Tema
dismiss = Cerrar este mensaje
caution = Modelo docente, no apto para uso clínico: nunca planifique ni guíe con él un procedimiento. Siga las normas locales, la formación supervisada y la práctica habilitada.

pages-name = Páginas
pages-room = Practicar
pages-author = Crear una lección
pages-check = Revisar una clase
pages-model = Sobre el modelo

noStorage = Este navegador no conserva los ajustes de esta página; duran hasta que la cierre.
percent = { $n } %
stopped = El motor se detuvo ({ $why }). Cargue la página de nuevo y vuelva a elegir los archivos.
noEngine = El motor no se cargó ({ $why }). Revise la conexión y cargue la página de nuevo.
loading = Cargando el motor.
again = Cargar de nuevo

## Counts, which stand in other sentences

receipts = { $n ->
    [one] { $n } recibo
   *[other] { $n } recibos
  }
files = { $n ->
    [one] { $n } archivo
   *[other] { $n } archivos
  }
learners = { $n ->
    [one] { $n } estudiante
   *[other] { $n } estudiantes
  }

shelf-noList = No se pudo cargar la lista de lecciones que vienen con Downbeam. Añada usted las lecciones de su clase.
shelf-missing = No se pudo cargar la lección «{ $name }» que viene con Downbeam.
shelf-tooLarge = { $name }: un archivo de lección tiene como máximo 32 kB.
shelf-notText = { $name }: no es texto UTF-8.
shelf-bad = { $name }: { $why }

check-title = Downbeam: revisar una clase
check-heading = Revisar una clase
check-lead = Aporte los recibos que han entregado sus estudiantes. Cada uno se reproduce aquí, en este navegador, y no se sube nada.
check-receipts = Recibos
check-drop = Suelte aquí archivos o una carpeta, o elíjalos.
check-files = Elegir archivos
check-folder = Elegir una carpeta
check-kinds = Un recibo por archivo (.json, .txt) o un recibo por línea (.ndjson, .jsonl, .txt). De una carpeta se busca en todo su contenido.
check-reading = Leyendo el archivo { $n } de { $all }
check-checking = Revisados: { $n } de { $receipts }
check-waiting = Esperando al motor
check-cancel = Detener
check-stopped = Detenido. Revisados: { $n }; pendientes: { $left }.
check-stoppedReading = Detenido durante la lectura. Leídos: { $n } de { $files }.
check-done = { $n ->
    [one] { $n } recibo revisado.
   *[other] { $n } recibos revisados.
  }
check-goOn = Seguir revisando
check-clear = Quitar los recibos
check-cleared = Se han quitado de esta página todos los recibos.
check-nothing = No hay ningún recibo entre estos archivos: de una carpeta se toman los archivos .json, .ndjson, .jsonl y .txt.
check-leftOut = { $n ->
    [one] { $n } archivo de otro tipo excluido:
   *[other] { $n } archivos de otro tipo excluidos:
  }
check-more = y { $n } más
check-notText = no es texto UTF-8
check-gone = ya no se puede leer.
check-lessons = Lecciones
check-lessonsWhy = Un recibo se revisa con la lección en la que se hizo. Si usted puso una lección propia, añádala aquí.
check-lessonsState = { $n ->
    [one] { $n } lección que vino con Downbeam.
   *[other] { $n } lecciones que vinieron con Downbeam.
  }
check-lessonsStateOwn = { $n ->
    [one] { $n } lección que vino con Downbeam; propias: { $own }.
   *[other] { $n } lecciones que vinieron con Downbeam; propias: { $own }.
  }
check-addLesson = Añadir archivo de lección
check-link = O el enlace de una lección
check-addLink = Añadir el enlace
check-added = Añadida: { $title }.
check-countsStopped = Revisados: { $receipts }; pendientes: { $left }
check-status-verified = Verificado
check-status-altered = Alterado
check-status-unknown_engine = Motor desconocido
check-status-unknown_lesson = Lección desconocida
check-status-unreadable = Ilegible
check-status-copies = Mismo registro
check-statusMeans-verified = el registro da la puntuación declarada
check-statusMeans-altered = el registro da otra cosa
check-statusMeans-unknown_engine = puntuado por otra versión: revíselo con esa
check-statusMeans-unknown_lesson = no está entre las lecciones de aquí
check-statusMeans-unreadable = no es un recibo; se nombra abajo
check-statusMeans-copies = que otro estudiante; se cuenta también en su estado
check-unread = No legibles como recibo
check-csv = Guardar CSV
check-ndjson = Guardar NDJSON
check-print = Imprimir
check-file-csv = clase.csv
check-file-ndjson = clase.ndjson
check-lesson-sums = { $receipts }; verificados: { $verified }. { $learners }; aprueban: { $passed }; media: { $mean }. De varios recibos de un estudiante cuenta el mejor.
check-lesson-nothing = { $receipts }, ninguno verificado: aún no se puede decir nada de la clase.
check-lesson-gates = Lo que suspendió, fueran cuales fueran los puntos
check-lesson-gate = { $gate }: { $names }
check-lesson-band-under25 = menos de 25 %
check-lesson-band-to49 = 25 a 49 %
check-lesson-band-to74 = 50 a 74 %
check-lesson-band-from75 = 75 % o más
check-lesson-bar = { $step }: { $bands }
check-lesson-bandCount = { $n } con { $band }
check-lesson-names = { $n }: { $names }
check-lesson-moreNames = { $n } más
check-lesson-caption = { $title }: estudiantes por paso y puntos
check-lesson-columns-step = Paso
check-lesson-columns-bands = Estudiantes por puntos
check-lesson-columns-mean = Media
check-lesson-columns-below = Bajo el mínimo para aprobar
check-lesson-key = Puntos en el paso
check-lesson-nobody = nadie
check-lesson-fewer = menos
check-lesson-numbers = Lo mismo en cifras
check-learners-list = Lista de la clase
check-learners-listWhy = Un CSV con un código y un nombre por línea. Se queda en esta página: los recibos solo llevan códigos. O dé solo nombres, uno por línea, y cada uno recibe un código.
check-learners-choose = Elegir la lista de la clase
check-learners-deal = Repartir códigos a los nombres
check-learners-dealt = Cada nombre tiene su código: la lista se ha guardado como archivo y se usa aquí.
check-learners-state = { $n ->
    [one] { $n } estudiante en la lista.
   *[other] { $n } estudiantes en la lista.
  }
check-learners-tooLarge = supera 1 MB, el máximo para una lista de clase
check-learners-notText = no es texto UTF-8: guárdelo en la hoja de cálculo como «CSV UTF-8»
check-learners-heading = Estudiante por estudiante
check-learners-separator = Para una hoja de cálculo con
check-learners-comma = punto decimal (comas entre celdas)
check-learners-semicolon = coma decimal (punto y coma entre celdas)
check-learners-tab = tabuladores entre celdas
check-learners-save = Guardar las calificaciones
check-learners-file = calificaciones.csv
check-learners-codesFile = lista-de-clase.csv
check-learners-named = { $name } ({ $code })
check-learners-notListed = { $code } (no está en la lista)
check-learners-missing = { $n ->
    [one] { $n } no ha entregado nada: { $names }
   *[other] { $n } no han entregado nada: { $names }
  }
check-learners-nothing = todavía nada
check-learners-noneVerified = { $n ->
    [one] { $n } intento, no verificado
   *[other] { $n } intentos, ninguno verificado
  }
check-learners-tries = intentos: { $totals }
check-learners-rows = { $n ->
    [one] Vea la fila { $rows }
   *[other] Vea las filas { $rows }
  }
check-learners-columns-learner = Estudiante
check-learners-columns-lookAt = A saber
check-rows-heading = Recibos uno a uno
check-rows-byStatus = Estado
check-rows-byLesson = Lección
check-rows-all = Todos
check-rows-shownAll = { $n ->
    [one] { $n } fila
   *[other] { $n } filas
  }
check-rows-shownOf = { $all ->
    [one] { $n } de { $all } fila
   *[other] { $n } de { $all } filas
  }
check-rows-more = Mostrar { $n } más
check-rows-sort = Ordenar por { $name }
check-rows-weakest = { $name }, { $percent }
check-rows-sameLog = Mismo registro que la fila { $n }, de otro estudiante.
check-rows-alike = { $percent } en común con la fila { $n }, de otro estudiante.
check-rows-repeat = La fila { $n } otra vez.
check-rows-gatesFailed = Suspende, sean cuales sean los puntos: { $names }.
check-rows-place = { $source }, línea { $line }
check-rows-columns-number = N.º
check-rows-columns-learner = Estudiante
check-rows-columns-lesson = Lección
check-rows-columns-status = Estado
check-rows-columns-total = Puntuación
check-rows-columns-weakest = Paso más débil
check-rows-columns-note = A saber
check-rows-columns-source = Archivo
check-rows-noCode = sin código
check-rows-noLearner = desconocido
check-rows-passed = aprobado
check-rows-notPassed = no aprobado
check-rows-incomplete = incompleto
check-rows-none = Ningún recibo se ajusta a esta selección.
check-proof-heading = Qué demuestra un recibo
check-proof-can = Demuestra que su registro, reproducido por este motor con el paciente de este estudiante, da su puntuación.
check-proof-cannot = No demuestra quién lo hizo, que lo hiciera una persona, ni cuándo: una página no puede guardar secretos, así que no lleva firma.
check-proof-identity = La identidad la da el lugar donde se entregó el archivo: su plataforma de aprendizaje o un correo. Si es importante, haga que el estudiante haga uno más delante de usted.
check-proof-privacy = Los recibos llevan un código y ningún nombre, salvo que un estudiante usara su nombre como código. Al cerrar esta página se olvidan.

author-title = Downbeam: crear una lección
author-heading = Crear una lección
author-lead = Rellene el formulario y reparta el enlace o el archivo. Lo que está mal se indica junto a su campo mientras escribe; no se sube nada.
author-start = Partir de
author-shipped = Una lección que viene con Downbeam
author-pick = Elija una lección
author-file = Abrir archivo de lección
author-fresh = Lección nueva
author-before = Recuperar lo anterior
author-link = O el enlace de una lección
author-openLink = Abrir el enlace
author-replaced = El formulario contiene ahora otra lección.
author-broughtBack = Se ha recuperado la lección anterior.
author-draft = Se ha recuperado su trabajo. Solo se conserva en este navegador.
author-noDraft = Este navegador no conserva su trabajo de esta página: guarde el archivo antes de cerrarla.
author-waits = En este momento no se puede leer el JSON, así que el formulario espera. Corríjalo allí o retome la última lección del formulario.
author-again = Retomar la última lección
author-sections-about = Nombre y textos
author-sections-task = Qué se pide
author-sections-who = Paciente y diana
author-sections-way = Aguja e imágenes
author-sections-marks = Puntos
author-id = Id
author-idHint = Letras minúsculas, cifras, guiones. Los recibos nombran la lección por él, así que no lo cambie mientras una clase esté trabajando.
author-language = Textos en «{ $tag }»
author-titleIn = Título ({ $tag })
author-introIn = Lo que el estudiante lee antes ({ $tag })
author-removeLanguage = Quitar { $tag }
author-newLanguage = Otro idioma (como de o pt-BR)
author-addLanguage = Añadir el idioma
author-twice = Este idioma ya está.
author-mode = Ayuda
author-modes-guided = Guiada
author-modes-practice = Práctica
author-modes-assessment = Examen
author-modeNotes-guided = Pistas en todo momento, y la imagen es en tiempo real.
author-modeNotes-practice = Pistas cuando se piden.
author-modeNotes-assessment = Sin pistas; no se ve nada sin una exposición.
author-steps = Pasos que se piden y se puntúan
author-parts = Estructuras que nombrar
author-partsHint = Se piden una tras otra, en un orden sorteado según el código del estudiante; solo con el paso «Partes nombradas».
author-part = Estructura
author-partNumber = Estructura { $n }
author-removePart = Quitar la estructura { $n }
author-bone = Hueso
author-bones-target = de este hueso
author-bones-below = del siguiente hacia abajo
author-partSide = Lado
author-partSides-needle = lado de la aguja
author-partSides-other = otro lado
author-addPart = Añadir estructura
author-patient = Paciente
author-level = Nivel
author-side = Lado de la aguja
author-sides-left = Izquierdo
author-sides-right = Derecho
author-one = Lo mismo para todos
author-several = Uno de varios, según el código del estudiante
author-which = { $name }, cuál
author-among = { $name }, entre estos
author-seed = Pequeñas diferencias entre pacientes de la misma complexión
author-seeds-none = Lo mismo para todos (0)
author-seeds-learner = Según el código del estudiante
author-seeds-number = Según un número
author-seedNumber = Número
author-approach = Vía de entrada al agujero
author-approaches-none = Bajo el pedículo, como es habitual
author-approaches-subpedicular = Bajo el pedículo
author-approaches-infraneural = Bajo la raíz
author-approaches-open = La elige el estudiante
author-medium = Medio en el que la aguja se curva
author-media-none = Músculo, como es habitual
author-media-muscle = Músculo
author-media-gel = Gel
author-exposures = Imágenes
author-exposuresChoice-none = Lo habitual para esa ayuda
author-exposuresChoice-true = Solo por exposición
author-exposuresChoice-false = En tiempo real y libres
author-exposuresNote = Lo habitual significa: solo por exposición en un examen; en tiempo real y libres en los demás casos.
author-pass = Mínimo para aprobar, en % de todos los puntos
author-par = Lo que necesita una buena mano
author-parHint = Solo con exposiciones. Todos los puntos hasta ahí, ninguno a partir del triple.
author-pars-exposures = Exposiciones
author-pars-beam_s = Tiempo de haz, segundos
author-tolerances = Límites distintos de los habituales
author-tolerancesHint = Todos los puntos hasta el primer número, ninguno a partir del segundo. Deje ambos vacíos para los habituales; son práctica común, no proceden de una fuente.
author-usual = habitual { $value }
author-fullOf = { $name }: todos los puntos hasta
author-noneOf = { $name }: ningún punto desde
author-unknown = { $value } (desconocido aquí)
author-full = todos los puntos hasta
author-none = ninguno desde
author-tolerance-squared_deg = Rayo respecto al platillo vertebral, grados
author-tolerance-spinous_percent = Apófisis espinosa fuera del centro, % de la distancia entre los pedículos
author-tolerance-facet_percent = Apófisis del nivel inferior fuera del centro del pedículo, % de su anchura
author-tolerance-lateral_mm = Separación entre los pedículos izquierdo y derecho en la lateral, mm
author-tolerance-mid_plate_percent = Apófisis del nivel inferior fuera del centro del platillo, % de medio platillo
author-tolerance-foramen_mm = Separación de los agujeros sacros, mm
author-tolerance-mark_mm = Marca fuera de la zona a la que se apunta, mm
author-tolerance-coaxial_deg = Vástago de la aguja respecto al haz, grados
author-tolerance-off_mark_mm = Punta fuera de la marca al final, mm
author-tolerance-medial_mm = Punta medial a la línea de las 6, mm
author-tolerance-depth_mm = Punta fuera de su parte del agujero, mm
author-hand = Repartirla
author-good = Esta lección se puede usar.
author-bad = { $n ->
    [one] Hay que corregir { $n } cosa:
   *[other] Hay que corregir { $n } cosas:
  }
author-atPlace = { $place }: { $problem }
author-linkName = Enlace que lleva la lección completa
author-linkNote = Lo que va detrás de # no se envía a ningún servidor.
author-handout = Texto para repartir
author-copyHandout = Copiar el texto
author-handoutCopied = Texto copiado.
author-checkLink = Revisar lo que vuelve
author-handoutOpen = Práctica: { $title }. Abra este enlace en un navegador; no se instala nada y no se envía nada:
author-handoutCode = Escriba el código que recibió: con él se elige su paciente.
author-handoutNoCode = Escriba su código, si recibió uno.
author-handoutMark = Se aprueba desde el { $mark } por ciento. Inténtelo las veces que quiera.
author-handoutEnd = Al final guarde el recibo y entregue ese archivo. Un modelo de enseñanza, no para uso clínico.
author-noLink = Habrá un enlace cuando todo esté bien.
author-copy = Copiar enlace
author-copied = Enlace copiado.
author-notCopied = El navegador no permite copiar a esta página: el enlace está seleccionado, cópielo a mano.
author-save = Guardar archivo
author-tryIt = Probarla
author-newTab = (abre una pestaña nueva)
author-hash = Huella (SHA-256 de lo que se pide; los títulos y textos no la cambian)
author-noHash = aún no hay
author-drawn = Qué recibe un estudiante
author-code = Código del estudiante
author-codeNote = El código decide lo que se sortea.
author-noCode = Todos los estudiantes reciben lo mismo.
author-patientLine = { $name }: { $sentence }
author-another = Otro código
author-sample = ejemplo { $n }
author-gets = { $patient }, { $place }, semilla { $seed }.
author-nothingDrawn = Se muestra cuando todo esté bien.
author-views-true_ap = AP verdadera
author-views-oblique = Oblicua
author-views-lateral = Lateral
author-view = Vista
author-picture-loading = Cargando la imagen
author-picture-shaping = Modelando el paciente
author-picture-failed = No hay imagen ({ $why }). La lección no se ve afectada.
author-picture-caption = { $view ->
    [true_ap] Mejor AP verdadera de { $place }: { $at }.
    [oblique] Mejor oblicua de { $place }: { $at }.
   *[lateral] Mejor lateral de { $place }: { $at }.
  }
author-picture-alternative = { $view ->
    [true_ap] Radiografía calculada, mejor AP verdadera de { $place }, con los contornos de la diana dibujados.
    [oblique] Radiografía calculada, mejor oblicua de { $place }, con los contornos de la diana dibujados.
   *[lateral] Radiografía calculada, mejor lateral de { $place }, con los contornos de la diana dibujados.
  }
author-picture-none = { $view ->
    [true_ap] En { $level } no hay una AP verdadera que puntuar.
    [oblique] En { $level } no hay una oblicua que puntuar.
   *[lateral] En { $level } no hay una lateral que puntuar.
  }
author-json = El archivo de la lección
author-jsonNote = Formulario y archivo son la misma lección: cambie cualquiera de los dos.
author-jsonName = Lección como JSON
check-lesson-histogram = { $title }: estudiantes por total
check-lesson-totals = Estudiantes por total
check-lesson-tenth = { $from }–{ $to } %
check-lesson-columns-learners = Estudiantes
check-lesson-columns-total = Total
check-lesson-columns-quartiles = Cuartiles
check-learners-pressName = Pulse un nombre para ver cada intento de esa persona.
check-learners-everyTry = { $name }: cada intento
check-learners-oneColumns-row = Fila
check-learners-oneColumns-lesson = Lección
check-learners-oneColumns-result = Resultado
check-learners-oneColumns-replay = Reproducir
check-learners-replay = Reproducir
check-learners-replayOf = Reproducir la fila { $n }
check-learners-replayNote = Una reproducción abre el intento en la página de práctica y lo muestra sobre una línea de tiempo, con los lugares donde se perdieron puntos; cerrada, deshacer vuelve paso a paso. Su dirección lleva el intento entero; ningún servidor lo recibe.
