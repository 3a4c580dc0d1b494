### Machine-drafted, not yet reviewed by a speaker.

caution = Modelo docente, no apto para uso clínico: nunca planifique ni guíe con él un procedimiento. Siga las normas locales, la formación supervisada y la práctica habilitada.

allowedNumber = un número de { $low } a { $high }
allowedWhole = un número entero de { $low } a { $high }

case-patientName = { $name ->
    [average] Medio
    [curved] Con curva
    [high-crest] Cresta alta
    [large] Grande
    [slipped] Con deslizamiento
    [small] Pequeño
    [standing] De pie
    [thin-bones] Huesos finos
    [transitional] Transicional
    [turned] Girado
    [worn] Con desgaste
   *[other] { $given }
  }

case-patientSentence = { $name ->
    [average] Persona adulta media, recta en decúbito prono
    [turned] Persona adulta media, algo girada sobre la mesa
    [small] Persona adulta pequeña y delgada
    [large] Persona adulta grande y pesada
    [thin-bones] Persona mayor con poco mineral óseo
    [worn] Discos bajos en los dos niveles inferiores, articulaciones facetarias engrosadas
    [curved] Columna curvada hacia un lado y girada con la curva
    [slipped] L4 deslizada hacia delante sobre L5 un sexto de su profundidad, articulaciones desgastadas, arco íntegro
    [high-crest] Crestas ilíacas que llegan hasta la mitad de L4
    [transitional] L5 unida a medias al sacro: apófisis transversas anchas que tocan sus alas, disco bajo
    [standing] Persona adulta media, de pie, para comparar
   *[other] { $given }
  }

step = { $id ->
    [name_parts] Partes nombradas
    [target_centred] Diana en el centro
    [true_ap] AP verdadera
    [oblique] Oblicua, ajustada
    [lateral] Lateral
    [target] Diana
    [down_the_beam] En el haz
    [steering] Dirección
    [depth] Profundidad
    [contacts] Lo que tocó la aguja
    [contrast] Contraste
    [radiation] Radiación
   *[other] { $given }
  }

place = { $side ->
    [left] { $level } izquierda
   *[right] { $level } derecha
  }

## The picture

picture-caption = { $place }, paciente «{ $patient }». Receptor { $oblique }, { $tilt }.
picture-alternative = Radiografía de la columna lumbar, cabeza arriba. Receptor { $oblique } y { $tilt }.
picture-polarity = Hueso oscuro
picture-outlines = Contornos
picture-labels = Nombres
picture-keyPosterior = { $level ->
    [S1] sacro
   *[other] { $level } elementos posteriores
  }
picture-keyBelow = { $below } apófisis articular superior
picture-keyTarget = { $level } cuerpo
picture-dogHeading = El perro de { $level }, parte por parte
picture-dogPart = { $dog }: { $part } de { $level }
picture-dogName = { $name ->
    [nose] hocico
    [eye] ojo
    [ear] oreja
    [neck] cuello
    [body] cuerpo
    [foreleg] pata delantera
   *[other] { $name }
  }
picture-dogNext = { $name ->
    [nose] hocico del perro siguiente
    [eye] ojo del perro siguiente
    [ear] oreja del perro siguiente
    [neck] cuello del perro siguiente
    [body] cuerpo del perro siguiente
    [foreleg] pata delantera del perro siguiente
   *[other] { $name } del perro siguiente
  }
picture-part = { $name ->
    [body] cuerpo
    [upper_end_plate] platillo superior
    [lower_end_plate] platillo inferior
    [pedicle] pedículo
    [pars] pars interarticular
    [lamina] lámina
    [superior_articular_process] apófisis articular superior
    [inferior_articular_process] apófisis articular inferior
    [transverse_process] apófisis transversa
    [spinous_process] apófisis espinosa
    [ala] ala del sacro
    [median_crest] cresta media
    [iliac_wing] ala ilíaca
    [iliac_crest] cresta ilíaca
    [rib] costilla
   *[other] { $given }
  }
# Izquierda, derecha, anterior, posterior, cabeza (the letters of DICOM, which stay as they are).
picture-end-L = L
picture-end-R = R
picture-end-A = A
picture-end-P = P
picture-end-H = H

## Loading the engine

loading-engine = Cargando el motor de cálculo
loading-percent = Cargando el motor de cálculo: { $n } %
loading-patient = Formando el paciente «{ $patient }»
loading-failedHeading = La imagen no está disponible
loading-retry = Intentar de nuevo
loading-status = el servidor respondió { $code }
loading-noServer = el servidor no responde
loading-noWasm = el archivo no es un módulo WebAssembly

## The angles

turn-number = { $name }, grados
turn-outOfRange = { $name } va aquí de { $low } a { $high } grados; se tomó el ángulo permitido más próximo.
turn-notNumber = { $name } necesita un número de grados; se mantuvo el último ángulo.

oblique-name = Oblicua
oblique-hint = izquierda +, derecha −
oblique-high = izquierda
oblique-low = derecha
oblique-zero = justo encima
oblique-zeroSpoken = justo encima, 0 grados
oblique-turned = { $way ->
    [left] { $deg }° a la izquierda del paciente
   *[right] { $deg }° a la derecha del paciente
  }
oblique-turnedSpoken = { $way ->
    [left] { $deg ->
        [one] { $deg } grado a la izquierda del paciente
       *[other] { $deg } grados a la izquierda del paciente
      }
   *[right] { $deg ->
        [one] { $deg } grado a la derecha del paciente
       *[other] { $deg } grados a la derecha del paciente
      }
  }

tilt-name = Inclinación
tilt-hint = craneal +, caudal −
tilt-high = craneal
tilt-low = caudal
tilt-zero = sin inclinación
tilt-zeroSpoken = sin inclinación, 0 grados
tilt-tilted = { $way ->
    [cephalad] { $deg }° craneal
   *[caudad] { $deg }° caudal
  }
tilt-tiltedSpoken = { $way ->
    [cephalad] { $deg ->
        [one] { $deg } grado craneal
       *[other] { $deg } grados craneal
      }
   *[caudad] { $deg ->
        [one] { $deg } grado caudal
       *[other] { $deg } grados caudal
      }
  }

## The checks

checks-views-true_ap = AP verdadera
checks-views-oblique = Oblicua
checks-views-lateral = Lateral
checks-criterion = { $id ->
    [spinous_centred] Apófisis espinosa centrada
    [squared] Platillo ajustado
    [facet_under_pedicle] Apófisis articular bajo el pedículo
    [lateral] Izquierda y derecha superpuestas
    [foramen_aligned] Agujeros sacros superpuestos
    [process_at_mid_plate] Apófisis articular en el centro del platillo
    [squared_below] Platillo inferior ajustado
   *[other] { $given }
  }
checks-good = Bien: dentro de la tolerancia.
checks-overlap = El extremo superior de la apófisis se superpone al pedículo; cambie la inclinación hasta que quede por debajo.
checks-stuck = Desde aquí no basta mover un solo ángulo; vuelva antes a una AP verdadera.
checks-move-oblique = { $direction ->
    [left] Gire el receptor { $amount } hacia la izquierda del paciente.
   *[right] Gire el receptor { $amount } hacia la derecha del paciente.
  }
checks-move-tilt = { $direction ->
    [cephalad] Incline el receptor { $amount } en sentido craneal.
   *[caudad] Incline el receptor { $amount } en sentido caudal.
  }
checks-less = menos de 1 grado
checks-degrees = { $n ->
    [one] { $n } grado
   *[other] { $n } grados
  }
checks-measure = { $unit ->
    [degrees] { $n }°
    [mm] { $n } mm
   *[percent] { $n } %
  }
checks-undefined = no definido aquí
checks-within = { $of ->
    [degrees] puntuación plena hasta { $n }°
    [mm] puntuación plena hasta { $n } mm
    [pedicle_spacing] puntuación plena hasta el { $n } % de la distancia entre pedículos
    [pedicle_width] puntuación plena hasta el { $n } % del ancho del pedículo
    [half_plate] puntuación plena hasta el { $n } % de medio platillo
   *[percent] puntuación plena hasta el { $n } %
  }
checks-measured = { $criterion }: { $value }, { $tolerance }
checks-score = { $points } de 100
checks-scoreLabel = Puntuación de esta vista
checks-word-full = puntuación plena
checks-word-close = cerca
checks-word-part = a medio camino
checks-word-far = lejos
checks-word-none = aún sin puntos
checks-best = Mostrar la mejor vista
checks-back = Volver a mi vista
checks-notReached = El recorrido de este aparato no alcanza la mejor vista; no llega más cerca.
checks-said = { $view }: { $points } de 100. { $advice }
checks-ask = Comprobar mi vista
checks-hidden = Ajuste primero la vista a ojo. Los valores y consejos quedan ocultos hasta que los pida.
checks-notHere = Esta vista no se puntúa en este nivel.
