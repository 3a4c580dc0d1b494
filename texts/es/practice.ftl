### Práctica: la ronda del día, la curva de aprendizaje, una ronda en clase.

title = Downbeam: ronda diaria
classTitle = Downbeam: una ronda para una clase
heading = Ronda diaria
lead = Nueve imágenes cortas al día, unos cinco minutos. Primero se responde; luego la imagen gira hacia lo que es cierto, con el motivo encima. Lo que falló vuelve mañana, lo que se sabe vuelve más tarde.
toClass = Para docentes: una ronda para la clase
toPractice = Ronda diaria
noPage = La página se ha detenido ({ $why }). Vuelva a cargarla; lo respondido se conserva.
noEngine = El módulo de práctica no se ha cargado ({ $why }). Compruebe la conexión y vuelva a cargar la página.
loading = Cargando las imágenes.
noKeep = Este navegador no guarda nada de esta página: las respuestas duran hasta que la cierre. Guárdelas abajo en un archivo.
badKeep = Lo que este navegador guardó de su práctica no se puede leer ({ $why }): se deja como está y no se escribe encima. Guarde las respuestas de hoy en un archivo.

## Antes de una ronda

due = { $n ->
    [0] Hoy no toca nada. Una ronda trae ahora lo nuevo.
    [one] Hoy vuelve a tocar { $n } decisión.
   *[other] Hoy vuelven a tocar { $n } decisiones.
  }
begun = { $begun } de { $all } decisiones empezadas, cada una en cinco o seis niveles y dos lados; { $n ->
    [one] { $n } respuesta
   *[other] { $n } respuestas
  } hasta ahora.
begin = Empezar la ronda de hoy
more = Otra ronda

## Una pregunta

progress = Pregunta { $n } de { $all }
placeStage = { $level } { $side ->
    [left] izquierda
   *[right] derecha
  }, etapa { $stage } de 6
shaping = Se está formando el paciente.
film = Imagen de un paciente calculado
filmAt = Oblicua { $oblique }°, inclinación { $tilt }°.
asked-way-true_ap = Esto debe llegar a ser una AP verdadera de { $level }. ¿Hacia dónde tiene que ir primero el receptor?
asked-way-oblique = Esto debe llegar a ser la oblicua { $side ->
    [left] izquierda
   *[right] derecha
  } de { $level }, con { $level ->
    [S1] la abertura anterior del primer agujero sacro sobre la posterior
   *[other] la apófisis articular del nivel inferior bajo el pedículo
  }. ¿Hacia dónde tiene que ir primero el receptor?
asked-way-steep_oblique = Esto debe llegar a ser la oblicua { $side ->
    [left] izquierda
   *[right] derecha
  } de { $level } para la vía bajo la raíz: la apófisis articular del nivel inferior en el centro de su propio platillo, y ese platillo de canto. ¿Hacia dónde tiene que ir primero el receptor?
asked-amount-true_ap = Para una AP verdadera de { $level } el receptor tiene que ir { $to ->
    [left] hacia la izquierda del paciente
    [right] hacia la derecha del paciente
    [cephalad] hacia la cabeza
   *[caudad] hacia los pies
  }. ¿Cuánto, más o menos?
asked-amount-oblique = Para la oblicua { $side ->
    [left] izquierda
   *[right] derecha
  } de { $level } el receptor tiene que ir { $to ->
    [left] hacia la izquierda del paciente
    [right] hacia la derecha del paciente
    [cephalad] hacia la cabeza
   *[caudad] hacia los pies
  }. ¿Cuánto, más o menos?
asked-amount-steep_oblique = Para la oblicua { $side ->
    [left] izquierda
   *[right] derecha
  } de { $level } para la vía bajo la raíz el receptor tiene que ir { $to ->
    [left] hacia la izquierda del paciente
    [right] hacia la derecha del paciente
    [cephalad] hacia la cabeza
   *[caudad] hacia los pies
  }. ¿Cuánto, más o menos?
asked-part = ¿Qué parte está bajo el punto?
asked-step = ¿Para qué proyección de { $level }, lado { $side ->
    [left] izquierdo
   *[right] derecho
  }, sirve esta imagen?
asked-true_ap = ¿Es esto una AP verdadera de { $level }? Si no, ¿por qué?
asked-clock = La aguja está en el lado { $side ->
    [left] izquierdo
   *[right] derecho
  } de { $level }. ¿A qué hora del reloj del pedículo está la punta?
asked-notch_ahead = Mira el cono a lo largo del haz; la línea muestra hacia dónde mira su muesca. ¿Hacia dónde va la punta al avanzar?
asked-notch_wanted = Mira el cono a lo largo del haz. La punta tiene que ir { $to ->
    [head] hacia la cabeza
    [feet] hacia los pies
    [patients_left] hacia la izquierda del paciente
   *[patients_right] hacia la derecha del paciente
  }. ¿Hacia dónde debe mirar la muesca?
asked-spread = Contraste en { $level }, { $side ->
    [left] izquierda
   *[right] derecha
  }. ¿Qué ha llenado?
asked-stop = AP, { $level } { $side ->
    [left] izquierda
   *[right] derecha
  }. Todavía no se ha dado contraste. ¿Parar o seguir?
asked-stop-contrast = AP, { $level } { $side ->
    [left] izquierda
   *[right] derecha
  }. Contraste con imagen en directo. ¿Parar o seguir?
during = Mientras se inyecta
later = Segundos después
invert = Hueso oscuro o blanco

## Respuestas

turn = { $to ->
    [left] Hacia la izquierda del paciente
    [right] Hacia la derecha del paciente
    [cephalad] Hacia la cabeza
   *[caudad] Hacia los pies
  }
degrees = Unos { $n }°
part = { $part ->
    [body] Cuerpo
    [pedicle] Pedículo
    [pars] Pars interarticularis
    [lamina] Lámina
    [superior_articular_process] Apófisis articular superior
    [inferior_articular_process] Apófisis articular inferior
    [transverse_process] Apófisis transversa
    [ala] Ala del sacro
    [median_crest] Cresta media del sacro
   *[spinous_process] Apófisis espinosa
  } de { $level }
view = { $view ->
    [true_ap] AP verdadera
    [oblique] Oblicua, para la inyección
    [lateral] Lateral
   *[none] Todavía para ninguna
  }
ap = { $ap ->
    [true_ap] Sí, es una AP verdadera
    [spinous_to_left] No: la apófisis espinosa está hacia la izquierda del paciente
    [spinous_to_right] No: la apófisis espinosa está hacia la derecha del paciente
   *[not_squared] No: el platillo no está alineado
  }
hour = Las { $n }
screen = { $to ->
    [head] Arriba, hacia la cabeza
    [feet] Abajo, hacia los pies
    [patients_left] Hacia la izquierda del paciente
   *[patients_right] Hacia la derecha del paciente
  }
pattern = { $pattern ->
    [perineural] A lo largo de la raíz y en el espacio epidural
    [arterial] Una arteria
    [venous] Una vena
    [mixed] Raíz y vena
    [intrathecal] El saco dural
    [subdural] Bajo la duramadre
    [intraneural] La propia raíz
    [intradiscal] El disco
    [facet_joint] La articulación facetaria
    [peritoneal] Delante de la columna
   *[muscular] Músculo
  }
decide = { $decision ->
    [go_on] Seguir
    [stop_medial] Parar: medial a las 6, y sin haber visto contraste
    [stop_vessel] Parar: corre por un vaso
   *[stop_sac] Parar: corre al saco dural
  }

## El motivo

right = Correcto.
wrong = No es así. Lo cierto es: { $answer }.
next = Siguiente
finish = Al resultado
back = Mostrar la imagen preguntada
fact-spinous = La apófisis espinosa está a un { $n } % de la distancia entre pedículos hacia la { $way ->
    [left] izquierda
   *[right] derecha
  } del paciente respecto a su centro.
fact-rims = El borde anterior del platillo superior está { $n } mm { $way ->
    [above] por encima
   *[below] por debajo
  } del posterior.
fact-process = El contorno de la apófisis del nivel inferior está a un { $n } % del ancho del pedículo hacia la { $way ->
    [left] izquierda
   *[right] derecha
  } del paciente respecto a su centro.
fact-midPlate = El contorno de la apófisis del nivel inferior está a un { $n } % de la mitad del ancho del platillo hacia la { $way ->
    [left] izquierda
   *[right] derecha
  } del paciente respecto al centro de ese platillo.
fact-rimsBelow = El borde anterior del platillo superior del nivel inferior está { $n } mm { $way ->
    [above] por encima
   *[below] por debajo
  } del posterior.
fact-openings = La abertura anterior del primer agujero sacro está a { $n } mm hacia la { $way ->
    [left] izquierda
   *[right] derecha
  } del paciente respecto a la posterior.
fact-lateral = Los dos pedículos están a { $n } mm uno del otro.
fact-tip = La punta está { $side } mm { $sideWay ->
    [lateral] lateral
   *[medial] medial
  } a la línea de las 6 del pedículo y { $down } mm { $downWay ->
    [below] por debajo
   *[above] por encima
  } de su centro.
fact-medial = La punta está { $n } mm { $way ->
    [medial] medial
   *[lateral] lateral
  } a la línea de las 6 del pedículo.
fact-hour = La punta está en las { $n } del reloj.
fact-notch = La muesca mira { $to ->
    [head] hacia la cabeza
    [feet] hacia los pies
    [patients_left] hacia la izquierda del paciente
   *[patients_right] hacia la derecha del paciente
  }.
fact-drifted = Al avanzar, la punta va { $n } mm { $to ->
    [head] hacia la cabeza
    [feet] hacia los pies
    [patients_left] hacia la izquierda del paciente
   *[patients_right] hacia la derecha del paciente
  }: lejos de la muesca.
fact-contrast = { $pattern ->
    [perineural] El contraste permanece, rodea la raíz como una banda más pálida y sube por dentro del pedículo.
    [arterial] El contraste corre rápido en una línea fina y desaparece enseguida.
    [venous] El contraste llena una línea más ancha mientras se inyecta y se aclara al parar.
    [intrathecal] El contraste se extiende fino y parejo en el centro y permanece.
    [intradiscal] El contraste es una mancha densa entre los platillos.
    [facet_joint] El contraste es un borde pequeño y denso lejos de la raíz.
   *[muscular] El contraste muestra estrías plumosas, lejos de la raíz.
  }
fact-needed = Hacen falta { $n }° { $to ->
    [left] hacia la izquierda del paciente
    [right] hacia la derecha del paciente
    [cephalad] hacia la cabeza
   *[caudad] hacia los pies
  }.
margin = Así de claro estaba: { $has }; por debajo de { $least } no se pregunta ({ $unit ->
    [degrees] grados hasta la siguiente respuesta
    [mm] mm
    [of-full-marks] de la nota completa
    [hours] horas
    [times-its-limit] veces el límite
   *[times] veces más cerca que la siguiente
  }).
caution-spread = Una aspiración seca no excluye nada; el contraste con imagen en directo va antes de cualquier fármaco. Deciden las normas locales y la supervisión.
caution-stop = Seguir significa aquí el paso siguiente, no el fármaco. Parar ante sangre, parestesia o duda. Deciden las normas locales y la supervisión.
described = La imagen en palabras
undescribed = Dónde está el punto solo se puede ver: esta pregunta no existe en palabras. Déjela; no se cuenta.
leaveOut = Dejar esta
keysHelp = Teclas: 1 a 4 responden, Intro sigue, B muestra de nuevo la imagen preguntada, C la imagen posterior del contraste.

## Después de una ronda

done = { $right } de { $all } correctas.
doneNext = Mañana vuelve lo que falló; lo demás vuelve cuando esté a punto de olvidarse.
list = Esta ronda
curves = Curvas de aprendizaje
skill = { $skill ->
    [views] Preparar las proyecciones
    [parts] Nombrar las partes
    [needle] Leer y dirigir la aguja
   *[contrast] Leer el contraste, parar a tiempo
  }
kind = { $kind ->
    [way] Hacia dónde girar o inclinar
    [amount] Cuánto
    [part] Qué parte es
    [step] Para qué proyección sirve
    [true_ap] Si es una AP verdadera
    [clock] A qué hora está la punta
    [notch] Hacia dónde con esta muesca
    [spread] Qué llenó el contraste
   *[stop] Parar o seguir
  }
stageOf = etapa { $n }
reached = Alcanzado en la respuesta { $n }.
notReached = { $n ->
    [0] Todavía sin respuestas.
    [one] { $n } respuesta: demasiado poco para decir.
   *[other] No alcanzado en { $n } respuestas.
  }
standing-acceptable = La última serie de respuestas habla de un { $p0 } % de fallos más que de un { $p1 } %.
standing-unacceptable = La última serie de respuestas habla de un { $p1 } % de fallos más que de un { $p0 } %.
standing-none = Demasiado pocas respuestas para distinguir un { $p0 } % de fallos de un { $p1 } %.
chart = { $skill }: suma acumulada de { $n ->
    [one] { $n } respuesta
   *[other] { $n } respuestas
  }, { $wrong } falladas. Una respuesta fallada sube, una correcta baja.
chartTable = La curva como tabla
col-answer = Respuesta
col-result = Resultado
col-sum = Suma
col-learning = Hacia «alcanzado»
isRight = correcta
isWrong = fallada
verdict-acceptable = aceptable
verdict-unacceptable = no aceptable
begins = empieza de nuevo en 0
what-heading = Qué pueden mostrar las curvas y qué no
what-sum = Cada respuesta fallada sube la línea { $up }, cada correcta la baja { $down }. Cuando ha bajado { $h0 }, las respuestas hablan de un { $p0 } % de fallos; cuando ha subido { $h1 }, de un { $p1 } %; ambas cosas con un error en uno de cada diez casos. Entonces empieza de nuevo.
what-reached = «Alcanzado» viene de una segunda suma que pide una prueba de competencia. A quien todavía falla un { $p1 } % se le dice en 60 respuestas con una probabilidad del { $chance } %; a quien adivina entre cuatro, prácticamente nunca.
what-not = No pueden mostrar si son las preguntas adecuadas, cómo se trabaja en la mesa ni que una destreza permanezca. Las dos tasas son elección nuestra. No se debería juzgar a nadie por ellas.

## Guardar

keep-heading = Sus respuestas
keep-where = Se quedan en este navegador y en ningún otro sitio.
keep-save = Guardar en un archivo
keep-load = Añadir un archivo
keep-added = { $n ->
    [0] El archivo no contiene nada que no estuviera aquí.
    [one] { $n } respuesta añadida.
   *[other] { $n } respuestas añadidas.
  }
keep-hand = Para entregar su práctica, escriba el código que recibió. El comprobante contiene sus respuestas y a qué imágenes corresponden; la página del docente vuelve a hacer cada pregunta.
keep-code = Su código
keep-receipt = Guardar un comprobante
keep-noCode = Escriba primero su código.
keep-noAnswers = Todavía no hay ninguna respuesta que un comprobante pueda contener.

## En clase: quien aprende

class-heading = Una ronda para su clase
class-lead = { $n } imágenes, las mismas para todos. No se dice nada hasta que su docente dé la vuelta a la ronda; no se envía nada.
class-begin = Empezar
class-code = Su código
class-codeWhy = Dé este código a su docente: léalo, péguelo o guárdelo en un archivo. Contiene sus respuestas y un número que distingue a los participantes, ningún nombre.
class-codeSoFar = Su código hasta aquí ({ $n } de { $all } respondidas)
class-copy = Copiar el código
class-copied = Copiado.
class-saveCode = Guardar en un archivo
class-badRound = Este enlace no nombra ninguna ronda: { $why }

## En clase: quien enseña

teacher-heading = Una ronda para una clase
teacher-lead = Elija una ronda, muestre el enlace o su imagen y recoja los códigos. Luego muestre pregunta por pregunta lo que se respondió y gire hacia lo cierto. Nada pasa por un servidor.
teacher-stage = Dificultad
teacher-stageName = { $n ->
    [0] 1: con contornos
    [1] 2: sin contornos
    [2] 3: paciente girado en la mesa
    [3] 4: girado, y con una curva
    [4] 5: grande, poco mineral óseo
   *[other] 6: todo junto, con ruido
  }
teacher-count = Imágenes
teacher-seed = Número de la ronda
teacher-new = Otro número
teacher-open = Abrir la ronda
teacher-link = El enlace para los participantes
teacher-copy = Copiar el enlace
teacher-picture = El enlace como código de imagen
teacher-codes = Códigos
teacher-codesWhy = Uno por línea, o con comas entre ellos. Quien entrega de nuevo sustituye su código anterior.
teacher-take = Recogerlos
teacher-file = De un archivo
teacher-taken = { $n ->
    [0] Todavía ningún código.
    [one] { $n } participante.
   *[other] { $n } participantes.
  }
teacher-refused = No recogidos:
teacher-show = En la pantalla
teacher-turn = Girar hacia lo cierto
teacher-previous = Anterior
teacher-nextQuestion = Siguiente
teacher-answered = { $n ->
    [one] { $n } respuesta
   *[other] { $n } respuestas
  }, { $none } sin responder.
teacher-count-of = { $n ->
    [one] { $n } respuesta
   *[other] { $n } respuestas
  }
teacher-true = cierto
teacher-figures = Cifras de las preguntas
teacher-figuresWhy = La dificultad es la proporción de respuestas correctas. La discriminación dice cuánto va una respuesta con las demás de la misma persona, de −1 a 1; con diez participantes el azar solo da ±0,6, así que léala sobre varias clases.
teacher-csv = Guardar como tabla (CSV)
teacher-col-question = Pregunta
teacher-col-kind = Tipo
teacher-col-place = Lugar
teacher-col-answered = Respuestas
teacher-col-right = Correctas
teacher-col-difficulty = Dificultad
teacher-col-discrimination = Discriminación
teacher-all = todas
teacher-nothing = –

## Curvas de una clase

group-heading = Curvas de aprendizaje de una clase
group-why = Añada los comprobantes de práctica que los participantes entregaron, o los archivos que guardaron. Una fila cada uno; cada imagen de un comprobante se vuelve a preguntar. Nada se guarda ni se envía.
group-add = Añadir archivos
group-file = Participante
group-cell = { $n ->
    [0] sin respuestas
    [one] { $n } respuesta, { $wrong } fallada
   *[other] { $n } respuestas, { $wrong } falladas
  }
group-reached = alcanzado en { $n }
group-bad = { $name }: { $why }
group-check = Comprobación
group-checking = Se vuelve a preguntar: { $n } de { $all } respuestas.
group-verified = comprobado
group-altered = modificado: { $why }
group-unknown_engine = dibujado con la versión { $why }, sin comprobar
group-plain = archivo guardado, sin comprobar
group-shares = comparte { $n ->
    [one] { $n } imagen
   *[other] { $n } imágenes
  } con { $other }
