### Un intento reproducido sobre una línea de tiempo.

open = Reproducir
heading = Reproducción
close = Cerrar
loading = Se forma el paciente …
reading = Se lee el intento: { $percent } %
play = Reproducir
pause = Pausa
earlier = Acción anterior
later = Acción siguiente
speed = Velocidad
times = { $n } ×
line = Línea de tiempo
lineKeys = Las flechas van de acción en acción, Re Pág y Av Pág diez segundos, Inicio y Fin a los extremos. Las pausas de más de dos segundos se acortan.
value = { $clock }, acción { $n } de { $all }: { $what }
begin = el comienzo
did-orient = arco a { $oblique }, { $tilt }
did-rotate_image = imagen girada a { $deg }°
did-move_table = mesa movida
did-spot = una imagen
did-fluoroscopy = fluoroscopia, { $n ->
    [one] { $n } pulso
   *[other] { $n } pulsos
  }
did-keep = { $view ->
    [true_ap] AP verdadera guardada
    [lateral] lateral guardada
   *[oblique] oblicua guardada
  }
did-recall = { $view ->
    [true_ap] vuelta a la AP verdadera
    [lateral] vuelta a la lateral
   *[oblique] vuelta a la oblicua
  }
did-mark = objetivo marcado
did-choose = otra vía elegida
did-place = aguja puesta en la piel
did-angle = pabellón movido
did-roll = pabellón girado { $deg }°
did-advance = aguja avanzada { $mm } mm
did-withdraw = aguja retirada { $mm } mm
did-remove = aguja sacada
did-aspirate = aspiración con la jeringa
did-inject = { $ml } ml de contraste
did-name = difusión nombrada
did-point = una parte señalada
did-finish = terminado
arm = Arco { $oblique }, { $tilt }.
needle = Aguja a { $mm } mm de profundidad.
noNeedle = Aún sin aguja.
film = La imagen se dibuja en cada momento, también donde no se hizo exposición.
lost = Dónde se perdieron puntos
lostNone = En los pasos hechos no se perdió nada.
lostStep = { $step }, { $marks }: { $why }
lostGate = No aprueba, { $gate }: { $why }
lostHere = Aquí: { $what }
notMarked = Los puntos no se calcularon: { $why }
undone = Sin hacer, así que sin lugar en la línea: { $steps }.
beside = Otro intento al lado
besideNote = Por ejemplo el de un docente: su aguja va a trazos, y los dos están a la vez en sus vistas, marca, aguja y contraste.
besideOff = Quitarlo
besideNow = El otro: arco { $oblique }, { $tilt }; { $depth }
besideDepth = aguja a { $mm } mm de profundidad.
besideNone = sin aguja.
besideOther = Ese intento es de otro paciente, nivel o lado; al lado cabe uno del mismo caso.
bad = No se puede reproducir ({ $why }).
tooLarge = el archivo es demasiado grande
notJson = el archivo no es JSON
