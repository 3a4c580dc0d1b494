### Machine-drafted, not yet reviewed by a speaker.

## The course

heading = Lecciones
intro = En el orden del curso. Nada sale de esta página: al final recibe un recibo para entregar.
loading = Cargando las lecciones.
none = Aquí el curso está vacío. Abra un archivo de lección que le hayan dado o que haya escrito.
noList = No se pudo mostrar el curso: { $why }. Compruebe la conexión e inténtelo de nuevo; las vistas y la inyección siguen funcionando.
noEngine = No se pudo cargar la parte de la página que lee lecciones: { $why }. Las vistas y la inyección siguen funcionando.
noFile = no se pudo cargar { $name }
unreadable = No se puede abrir esta lección: { $why }. La página está como antes.
unknown = En el curso no hay ninguna lección «{ $id }»; la lista muestra las que hay.
retry = Intentar de nuevo
open = Abrir archivo de lección
tooLarge = el archivo pasa de 32 kB, lo máximo que puede tener una lección

mode-guided = guiada
mode-practice = práctica
mode-assessment = examen

modeNote-guided = Guiada: siempre se muestra lo que sigue.
modeNote-practice = Práctica: una pista cuando la pida.
modeNote-assessment = Examen: sin pistas, sin lecturas, sin contornos hasta terminar, y nada se ve sin exposición. Lo terminado queda terminado.

exposures = Las imágenes vienen solo de exposiciones, y estas cuentan.
standingNew = nueva
standingBegun = empezada
standingDone = { $passed ->
    [yes] aprobada, mejor { $points } de 100
   *[no] aún no aprobada, mejor { $points } de 100
  }

## One lesson

begin = Empezar
goOn = { $n ->
    [one] Seguir donde lo dejó ({ $n } acción)
   *[other] Seguir donde lo dejó ({ $n } acciones)
  }
beginAnew = Empezar de nuevo
toList = Todas las lecciones
leave = Dejar la lección
code = Su código
codeHint = Un código de su docente o suyo, no su nombre. De él sale su paciente: con el mismo código encuentra al mismo. Como mucho 64 caracteres.
codeWanted = Esta lección elige su propio paciente: escriba antes un código.
codeOptional = Figura en el recibo, para que su docente sepa de quién es. Puede quedar vacío.
steps = Lo que se pide
passMark = Se aprueba desde { $n } de 100.
gates = Lo que la suspende, sean cuales sean los puntos
drawn = Su paciente: { $patient }, { $place }.
running = Lección: { $title }
hintDone = Todo lo que pide la lección está hecho: termine.
hintOpen = No todos los pasos están hechos: vuelva a uno sin terminar o termine tal como está.
done = { $passed ->
    [yes] { $points } de 100: aprobado.
   *[no] { $points } de 100: aún no aprobado.
  }
incomplete = No se hicieron todos los pasos; lo que falta vale cero puntos.
receipt = Guardar el recibo
receiptNote = Entregue el recibo donde lo pida su docente. Contiene su código, cada acción y los puntos; reproducido por el mismo motor da los mismos puntos. No demuestra quién lo hizo.
again = Otra vez
next = Siguiente: { $title }
bad = No se pudo hacer el recibo: { $why }.
notKept = Este navegador no guarda nada de esta página: el progreso dura hasta que se cierre. Guarde el recibo antes de salir.
notHeldHere = En este lugar no se guarda el progreso: termine de una vez o guarde el recibo antes de salir.
left = Ha dejado la lección; queda como estaba.

## Progress, kept in a file

progress-save = Guardar progreso
progress-open = Abrir progreso
progress-opened = { $n ->
    [one] Progreso de { $n } lección incorporado.
   *[other] Progreso de { $n } lecciones incorporado.
  }
progress-bad = Ese archivo no contiene progreso de esta página; no se cambió nada.

## Naming the parts of a bone in the picture

naming-part = { $side ->
    [left] { $part } de { $level }, lado izquierdo
    [right] { $part } de { $level }, lado derecho
   *[none] { $part } de { $level }
  }
naming-ask = Señale: { $part }.
naming-allFound = Todas las partes están encontradas.
# Where to look for a part, in words of the oblique picture, where a vertebra looks like a small dog.
naming-hint = { $part ->
    [transverse_process] La apófisis transversa de { $level } es el hocico del perro: sobresale del pedículo hacia fuera, hacia el lado de la aguja.
    [pedicle] El pedículo de { $level } es el ojo del perro: un anillo bajo el platillo superior.
    [superior_articular_process] La apófisis articular superior de { $level } es la oreja del perro: sube desde el ojo, hacia el nivel superior.
    [pars] La pars de { $level } es el cuello del perro: el puente estrecho entre la oreja y la pata delantera.
    [lamina] La lámina de { $level } es el cuerpo del perro: la placa ancha hacia la línea media.
    [inferior_articular_process] La apófisis articular inferior de { $level } es la pata delantera del perro: baja hacia el nivel inferior.
    [spinous_process] La apófisis espinosa de { $level } está en la línea media, detrás del cuerpo del perro.
    [body] El cuerpo de { $level } es el bloque grande entre sus dos platillos.
   *[other] Recorra los contornos de { $level }; cada uno se ilumina al pulsarlo.
  }
naming-count = { $found } de { $all } encontradas
naming-how = Pulse un contorno en la imagen: se ilumina. Púlselo otra vez, o el botón, para responder. Con el teclado, sobre la imagen: las flechas van de contorno en contorno, Intro responde. El arco en C puede girarse.
naming-answer = Este
naming-previous = Contorno anterior
naming-following = Contorno siguiente
naming-none = Ahí no hay contorno: pulse más cerca de una línea.
naming-chosenOf = El contorno { $i } de { $n } está iluminado.
naming-chosen = Un contorno está iluminado.
naming-first = Elija antes un contorno.
naming-right = Correcto: { $part }.
naming-wrong = No: eso es { $part }.
naming-shown = Ahora se ilumina: { $part }; se preguntará de nuevo.
naming-later = Se preguntará de nuevo: { $part }.

## Pages for teachers

teach-heading = Para docentes:
teach-check = Revisar recibos
teach-author = Escribir una lección
completion-open = Una página para imprimir
completion-note = Para un portafolio. El nombre y la fecha figuran como usted los indique; no se guardan ni se envían.
completion-name = Nombre
completion-day = Fecha
completion-print = Imprimir
completion-heading = { $passed ->
    [yes] Lección aprobada
   *[no] Lección hecha, no aprobada
  }
completion-code = Código
completion-lesson = Lección
completion-patient = Paciente
completion-dayGiven = Fecha, según se indicó
completion-engine = Calificado por
completion-engineLine = Downbeam { $version }, motor { $scoring }, lección { $hash }
completion-caution = Práctica en un modelo calculado. No dice nada de la destreza con pacientes ni autoriza trabajo clínico: siga las normas locales, la formación supervisada y la práctica autorizada. Cualquiera puede imprimir una página así; lo que se puede comprobar es el recibo.
completion-patientLine = { $patient }, { $place }
