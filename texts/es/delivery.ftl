### Machine-drafted, not yet reviewed by a speaker.

notDone = no realizado
ofHundred = { $n } de 100
noLesson = No se pudo leer la lección de este paquete. Avise a quien lo preparó.
noLessonStatus = No se pudo leer la lección de este paquete (respuesta { $status }). Avise a quien lo preparó.
broken = Ha fallado la conexión con la plataforma de aprendizaje. Desde aquí no se entrega nada por sí solo: guarde el recibo como archivo.
notOpened = La plataforma de aprendizaje no abrió su registro de esta lección ({ $standard }). Se intentará de nuevo cuando usted entregue; guarde además el recibo como archivo.
alone = Esta lección se abrió fuera de una plataforma de aprendizaje: nada se entrega por sí solo. Guarde el recibo como archivo.
notKept = Aquí no se conserva el progreso: se pierde al cerrar la página.
notRead = La plataforma de aprendizaje no pudo devolver lo que conserva de esta lección. Eso se deja como está, así que allí no se conserva el progreso de este intento.
resumedNone = No se puede leer lo que la plataforma de aprendizaje conservó de su intento. Empieza usted de nuevo.
resumedPart = { $n ->
    [one] La plataforma de aprendizaje solo conservó el principio de su intento: { $n } acción. Se continúa desde ahí.
   *[other] La plataforma de aprendizaje solo conservó el principio de su intento: { $n } acciones. Se continúa desde ahí.
  }
resumedOf = { $missing ->
    [one] La plataforma solo tiene espacio para las primeras { $n } acciones de su intento: falta la última. Continúa desde la acción { $n }.
   *[other] La plataforma solo tiene espacio para las primeras { $n } acciones de su intento: faltan las últimas { $missing }. Continúa desde la acción { $n }.
  }
notTaken = La plataforma de aprendizaje no responde. Su trabajo se conserva aquí y se reenvía por sí solo: deje abierta esta página.
takenAgain = La plataforma de aprendizaje ya lo ha recibido todo.
handedInLate = Su resultado anterior, que la plataforma aún no había confirmado, se ha entregado ahora.
resultUnread = La plataforma no dice qué conserva de esta lección, así que este resultado no se escribe encima. Guarde el recibo como archivo.
resultRefused = La plataforma de aprendizaje ha rechazado el resultado. Para estar seguro, guarde el recibo como archivo.
refusedValue = La plataforma de aprendizaje rechaza un valor ({ $name }). Para estar seguro, guarde el recibo como archivo.
refusedValueWhy = La plataforma de aprendizaje rechaza un valor ({ $name }; { $why }). Para estar seguro, guarde el recibo como archivo.
refusedStatement = La plataforma de aprendizaje ha rechazado un registro (respuesta { $status }). Para estar seguro, guarde el recibo como archivo.
tooLong = La plataforma de aprendizaje conserva { NUMBER($most, useGrouping: "always") } caracteres, demasiado pocos para este intento: si se cierra ahora, continúa desde la acción { $kept } de { $all }. El resultado no se ve afectado.
receiptTooLong = El recibo no cabe en los { NUMBER($most, useGrouping: "always") } caracteres que conserva la plataforma de aprendizaje; la puntuación sí. Guarde el recibo como archivo.
otherMark = { $passed ->
    [yes] El mínimo para aprobar de la propia plataforma de aprendizaje es el { $mark } por ciento: allí esto cuenta como aprobado.
   *[no] El mínimo para aprobar de la propia plataforma de aprendizaje es el { $mark } por ciento: allí esto cuenta como no aprobado.
  }
pending = La plataforma de aprendizaje todavía no ha confirmado el resultado. Se reenvía por sí solo mientras esta página esté abierta. Para estar seguro, guarde el recibo como archivo.
review = La plataforma de aprendizaje ha abierto esta lección solo para consulta: el resultado no se registra.
earlierBetter = La plataforma de aprendizaje conserva su resultado anterior.
sessionOver = Esta visita se ha cerrado en la plataforma de aprendizaje: abra allí la lección de nuevo. Para estar seguro, guarde el recibo como archivo.
launchIncomplete = La dirección de este acceso está incompleta: abra de nuevo la lección desde la plataforma de aprendizaje.
noToken = No se puede contactar con la plataforma de aprendizaje: abra allí la lección de nuevo. Desde aquí nada se entrega por sí solo.
launchUsed = La plataforma de aprendizaje no admite este acceso: abra allí la lección de nuevo. Desde aquí nada se entrega por sí solo.
launchUsedWhy = La plataforma de aprendizaje no admite este acceso ({ $why }): abra allí la lección de nuevo. Desde aquí nada se entrega por sí solo.
noLaunchData = La plataforma de aprendizaje no indicó cómo se accedió a esta lección: ábrala allí de nuevo. Desde aquí nada se entrega por sí solo.
noState = La plataforma de aprendizaje no conserva intentos en curso: si se cierra ahora, este se pierde. Los resultados se entregan de todos modos.
heldBack = La plataforma de aprendizaje lo conserva. Se entrega como no aprobado cuando usted salga; hasta entonces puede mejorarlo.
heldHere = No aprobado. Se entrega cuando usted salga de esta página; hasta entonces puede mejorarlo. Para estar seguro, guarde el recibo como archivo.
update = Hay una versión nueva de esta página. Se aplica cuando se hayan cerrado todas sus ventanas y se abra de nuevo.
notConfirmed = La página que contiene esta no ha confirmado el resultado. Para estar seguro, guarde el recibo como archivo.
badHost = La dirección indica «{ $found }» como la página que contiene esta; se admite un origen como https://course.example.org. No se le envía nada.
noMessage = No se puede comunicar con la página que contiene esta. Para estar seguro, guarde el recibo como archivo.
