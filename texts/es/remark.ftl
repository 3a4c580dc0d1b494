### Machine-drafted, not yet reviewed by a speaker.

## Why a step has its marks. Not done yet

name_parts = Nombre las partes que se piden.
keep_view = { $view ->
    [true_ap] Ajuste la AP verdadera y guárdela.
    [oblique] Ajuste la vista oblicua y guárdela.
    [steep_oblique] Ajuste la vista oblicua pronunciada y guárdela.
   *[lateral] Ajuste la vista lateral y guárdela.
  }
mark_on_oblique = Marque la diana en la imagen oblicua.
beam_not_yet = Ponga el pabellón sobre la punta hasta que la aguja sea un punto y después avance.
steer_not_yet = Dirija la punta hacia la marca.
depth_not_yet = Lleve la punta al agujero y compruébelo en AP y en lateral.
nothing_met_yet = Todavía no se ha encontrado nada.
contrast_not_yet = Inyecte contraste bajo imagen en tiempo real antes que ninguna otra cosa.
no_exposure = Todavía no hay ninguna exposición.
pictures_free = Aquí las imágenes no cuestan nada; con exposiciones activadas se cuentan.

## Kept views

view_right = { $view ->
    [true_ap] La AP verdadera es correcta: todos sus criterios están dentro de su tolerancia.
    [oblique] La vista oblicua es correcta: todos sus criterios están dentro de su tolerancia.
    [steep_oblique] La vista oblicua pronunciada es correcta: todos sus criterios están dentro de su tolerancia.
   *[lateral] La vista lateral es correcta: todos sus criterios están dentro de su tolerancia.
  }
view_off = { $criterion }: { $finding }
kept_late = Se guardó después de la oblicua: la AP verdadera va primero.

## The mark

mark_along_plane = La imagen corre a lo largo del plano de la diana: márquela en la vista oblicua.
mark_inside = { $area ->
    [sacral_foramen] La marca está en la abertura del primer agujero sacro.
    [under_pedicle] La marca está en el triángulo bajo el pedículo.
   *[under_root] La marca está en el triángulo bajo la raíz.
  }
mark_outside = { $area ->
    [sacral_foramen] La marca está { $mm } mm fuera de la abertura del primer agujero sacro; { $off }.
    [under_pedicle] La marca está { $mm } mm fuera del triángulo bajo el pedículo; { $off }.
   *[under_root] La marca está { $mm } mm fuera del triángulo bajo la raíz; { $off }.
  }
off-high-none = está demasiado alta
off-low-none = está demasiado baja
off-none-medial = está demasiado medial
off-none-lateral = está demasiado lateral
off-high-medial = está demasiado alta y demasiado medial
off-high-lateral = está demasiado alta y demasiado lateral
off-low-medial = está demasiado baja y demasiado medial
off-low-lateral = está demasiado baja y demasiado lateral
mark_medial = Está { $mm } mm medial a las 6 del pedículo.
mark_behind_bone = { $level ->
    [none] Hay hueso en el camino de una aguja que siga este haz.
   *[other] Hay hueso de { $level } en el camino de una aguja que siga este haz.
  }

## The needle’s way

beam_held = La aguja se mantuvo en el haz: { $deg } grados de desvío medio.
beam_off = La aguja se desvió del haz { $deg } grados de media: ponga el pabellón sobre la punta mientras esté poco profunda.
steered = La punta terminó a { $mm } mm de la marca.
strayed = La punta terminó a { $mm } mm de la marca: gire la muesca hacia el lado al que se ha desviado, porque la punta se desvía hacia el lado opuesto a la muesca.

## The depth

ap_medial = En AP la punta está { $mm } mm más medial de lo que puede estar antes del contraste.
ap_short = En AP a la punta le faltan { $mm } mm para llegar al agujero.
ap_at = En AP la punta está a { $hour }.
side_deep = En la vista lateral está { $mm } mm por delante de la línea vertebral posterior: demasiado profunda.
side_shallow = En la vista lateral le faltan { $mm } mm para llegar al agujero: no es bastante profunda.
side_off = { $along ->
    [high] En la vista lateral está { $mm } mm demasiado alta en el agujero.
   *[low] En la vista lateral está { $mm } mm demasiado baja en el agujero.
  }
side_inside = En la vista lateral está en su parte del agujero.
sacral_inside = La punta está en el primer agujero sacro.
sacral_outside = La punta no está en el primer agujero sacro.
unproven = { $view ->
    [true_ap] La profundidad no se comprobó en una vista AP con la aguja colocada.
   *[lateral] La profundidad no se comprobó en una vista lateral con la aguja colocada.
  }

## What was met

nothing_met = La aguja no encontró nada que no debiera.
harm = { $pushed ->
    [no] { $met }.
   *[yes] { $met }, y se avanzó { $pushed_mm } mm más.
  }
met = { $kind } a { $mm } mm: { $sign }
metOf = { $kind } de { $level } a { $mm } mm: { $sign }
kind-skin = Piel
kind-fascia = Fascia
kind-bone = Hueso
kind-disc = Disco
kind-dura = Duramadre
kind-root = Raíz
kind-ganglion = Ganglio
kind-vessel = Vaso
kind-peritoneum = Peritoneo
sign-skin = la piel cede
sign-fascia = cede levemente: la fascia
sign-bone = tope duro: hueso
sign-disc = resistencia firme, como de goma: el disco
sign-dura = cede, y sale líquido claro por el pabellón: se ha atravesado la duramadre
sign-root = el paciente refiere dolor que baja por la pierna: pare y retroceda
sign-ganglion = el paciente refiere dolor que baja por la pierna: pare y retroceda
sign-vessel = sangre en el pabellón
sign-peritoneum = pérdida de resistencia muy por delante: la aguja ha salido de la espalda

## Contrast

aspirate_first = Aspire antes de cada inyección.
inject_live = Inyecte bajo imagen en tiempo real: un vaso solo se ve mientras fluye.
wrong_place = El último contraste fue al lugar equivocado: recoloque antes de que entre cualquier otra cosa.
name_pattern = Nombre el patrón que ve.
named_wrongly = Un patrón se nombró mal.
contrast_good = Aspirado, inyectado en tiempo real, a lo largo de la raíz correcta y nombrado como lo que es.
contrast_in_root = El contraste entró en la propia raíz: pare ante el dolor.
pattern-perineural = Permanece, rodea la raíz, que aparece como una banda más pálida, y sube por dentro del pedículo a lo largo del espacio epidural.
pattern-intravascular = Se va por un vaso mientras se inyecta y desaparece al parar.
pattern-intrathecal = Se extiende fino y uniforme dentro del saco dural, se deposita en su parte anterior y permanece.
pattern-intraneural = Se ve como una línea fina y densa dentro de la raíz, con dolor.
pattern-intradiscal = Se ve como un bollo denso entre los platillos.
pattern-peritoneal = Se ve como estrías finas muy por delante de la columna.
pattern-muscular = Se ve como estrías en forma de pluma a lo largo de las fibras del músculo, lejos de la raíz.

## Radiation

spent = { $pictures ->
    [one] { $pictures } exposición y { $beam_s } s de fluoroscopia; lo previsto es { $par_pictures } y { $par_beam_s } s.
   *[other] { $pictures } exposiciones y { $beam_s } s de fluoroscopia; lo previsto es { $par_pictures } y { $par_beam_s } s.
  }

## Parts named

parts_found = { $all ->
    [one] La única parte se encontró a la primera.
   *[other] Las { $all } partes se encontraron a la primera.
  }
parts_missed = Encontradas, pero falladas al principio: { $missed }.
parts_left = Quedan por encontrar { $left } de { $all } partes.
parts_left_missed = Quedan por encontrar { $left } de { $all } partes; falladas hasta ahora: { $missed }.
part = { $side ->
    [left] { $part } de { $level } izquierda
    [right] { $part } de { $level } derecha
   *[none] { $part } de { $level }
  }

## The next thing to do

mark_area = { $area ->
    [sacral_foramen] Marque la diana: la abertura del primer agujero sacro.
    [under_pedicle] Marque la diana justo bajo el pedículo, lateral a sus 6, más allá de la apófisis articular.
   *[under_root] Marque la diana justo por encima del platillo superior del nivel inferior, junto a la apófisis articular.
  }
place_needle = Coloque una aguja en la piel sobre la marca.
hub_off = { $n ->
    [one] En la imagen oblicua el pabellón está { $of } de la punta: muévalo { $to }, alrededor de { $n } grado, hasta que la aguja sea un punto.
   *[other] En la imagen oblicua el pabellón está { $of } de la punta: muévalo { $to }, alrededor de { $n } grados, hasta que la aguja sea un punto.
  }
name_spread = Mire la distribución y nombre su patrón.
spread_good = Buena distribución a lo largo de la raíz: termine.
spread_wrong = Lugar equivocado: retroceda, recoloque y compruébelo de nuevo.
on_bone = Hueso: retroceda un poco, gire la muesca hacia el hueso para que el bisel lleve en sentido contrario y avance.
tip_strayed = La punta se ha desviado { $mm } mm { $to }: gire la muesca a { $hour }, hacia ese lado, y avance; la punta se desvía hacia el lado opuesto a la muesca.
tip_in_lateral = { $way ->
    [behind] La punta está { $mm } mm por detrás de la línea vertebral posterior.
   *[front] La punta está { $mm } mm por delante de la línea vertebral posterior.
  }
advance = Avance un poco y compruebe la profundidad en AP y en lateral antes de que esté profunda.

## Ways on the screen

to-up = hacia arriba
to-up_right = hacia arriba y a la derecha
to-right = a la derecha
to-down_right = hacia abajo y a la derecha
to-down = hacia abajo
to-down_left = hacia abajo y a la izquierda
to-left = a la izquierda
to-up_left = hacia arriba y a la izquierda
of-up = por encima
of-up_right = por encima y a la derecha
of-right = a la derecha
of-down_right = por debajo y a la derecha
of-down = por debajo
of-down_left = por debajo y a la izquierda
of-left = a la izquierda
of-up_left = por encima y a la izquierda

## Cautions

caution-upper = En L3 y por encima, una arteria que va a la médula espinal puede pasar por la parte superior del agujero, más a menudo en el lado izquierdo: se discute si el lugar bajo el pedículo es allí el correcto, y otro más bajo y algo posterior puede ser más seguro. Primero un corticoide no particulado; deciden el protocolo local y la supervisión.
caution-lower = Nunca pase medial a las 6 del pedículo antes de haber visto el contraste. Primero el contraste bajo imagen en tiempo real, primero un corticoide no particulado; pare ante parestesias o sangre. Deciden el protocolo local y la supervisión.
caution-sacral = La difusión vascular es más frecuente en S1 que en los niveles lumbares: observe en tiempo real toda la inyección. Deciden el protocolo local y la supervisión.
caution-infraneural = La vía bajo la raíz pasa junto al disco: compruebe la profundidad en la vista lateral antes de cada avance. Deciden el protocolo local y la supervisión.
