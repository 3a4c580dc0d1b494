### Machine-drafted, not yet reviewed by a speaker.

## Why a step has its marks. Not done yet

name_parts = Nombre las partes que se piden.
centre_target = Lleve la diana al centro: a lo ancho y a lo largo en AP, la altura en lateral.
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

## The table

target_centred = La diana está en el centro: a lo ancho, a lo largo y en altura.
move_table = { $way ->
    [left] En AP, mueva la mesa { $mm } mm a la izquierda.
    [right] En AP, mueva la mesa { $mm } mm a la derecha.
    [head] En AP, mueva la mesa { $mm } mm a la cabeza.
    [feet] En AP, mueva la mesa { $mm } mm a los pies.
    [up] En lateral, suba la mesa { $mm } mm.
   *[down] En lateral, baje la mesa { $mm } mm.
  }

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
turned_blind = { $blind } de { $all } giros del pabellón no se decidieron por una desviación vista: mire, gire la muesca hacia el lado al que se desvía y déjela mientras siga en la línea.

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
sacral_upper = La punta está en la parte superior y lateral de la abertura, lejos de la raíz.
sacral_low = La punta está { $mm } mm demasiado baja o demasiado medial en la abertura: ahí la raíz baja hacia fuera.
sacral_deep = La punta está { $mm } mm demasiado profunda en el primer agujero sacro.
sacral_inside = La punta está a buena profundidad en el primer agujero sacro.
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
contrast_good = Aspirado, inyectado en tiempo real, a lo largo de la raíz buscada y nombrado como lo que es.
contrast_in_root = El contraste entró en la propia raíz: pare ante el dolor.
pattern-perineural = Permanece, rodea la raíz, que aparece como una banda más pálida, y sube por dentro del pedículo a lo largo del espacio epidural.
pattern-arterial = Se va rápido en una línea fina y desaparece enseguida, hacia la médula donde la arteria la irriga.
pattern-venous = Llena una vena más ancha mientras se inyecta, más lento, y se aclara al parar.
pattern-mixed = Una parte rodea la raíz y permanece, otra se va por una vena.
pattern-intrathecal = Se extiende fino y uniforme dentro del saco dural, se deposita en su parte anterior y permanece.
pattern-subdural = Se ve como una banda densa y estrecha de borde nítido por dentro del saco dural, y avanza despacio.
pattern-intraneural = Se ve como una línea fina y densa dentro de la raíz, con dolor.
pattern-intradiscal = Se ve como un bollo denso entre los platillos.
pattern-facet_joint = Se ve como un reborde denso y pequeño dentro de la articulación, lejos de la raíz.
pattern-peritoneal = Se ve como estrías finas muy por delante de la columna.
pattern-muscular = Se ve como estrías en forma de pluma a lo largo de las fibras del músculo, lejos de la raíz.

## Radiation

spent = { $pictures ->
    [one] { $pictures } exposición y { $beam_s } s de fluoroscopia; lo previsto es { $par_pictures } y { $par_beam_s } s.
   *[other] { $pictures } exposiciones y { $beam_s } s de fluoroscopia; lo previsto es { $par_pictures } y { $par_beam_s } s.
  }

economy_scaled = La poca radiación cuenta por lo que se logró con ella: { $percent } % de los demás puntos.

## Gates

gate-complete = Todos los pasos hechos
gate-views = Proyecciones logradas
gate-target = Nivel y lado correctos
gate-root = Ninguna raíz atravesada
gate-dura = Duramadre no atravesada
gate-paraesthesia = Parado ante la parestesia
gate-medial = No medial antes del contraste
gate-blood = Nada inyectado con sangre
gate-contrast_live = Contraste visto en tiempo real
gate-compartment = Contraste en el lugar correcto
gate-steering = Dirigida a la vista
gate-aspirated = Aspirado cada vez
gate-pattern_named = Patrones bien nombrados
gate-within_par = Dentro de lo previsto
gate-one_needle = Una sola aguja
gate_held = Cumplido.
steps_left = No se hicieron { $left } de { $all } pasos.
view_missed = { $view ->
    [true_ap] No se logró la AP verdadera.
    [oblique] No se logró la oblicua.
    [steep_oblique] No se logró la oblicua pronunciada.
   *[lateral] No se logró la lateral.
  }
other_target = { $side ->
    [left] Está en { $level } izquierda, y se pedía { $wanted }.
   *[right] Está en { $level } derecha, y se pedía { $wanted }.
  }
wanted-left = { $level } izquierda
wanted-right = { $level } derecha
pain_ignored = El paciente refirió dolor que baja por la pierna a { $mm } mm, y se siguió antes de retroceder.
medial_before_contrast = La punta pasó { $mm } mm más allá de las 6 antes de ver contraste.
injected_on_blood = Se inyectó con sangre en el pabellón: primero retroceda y recoloque.
needles_used = Se usaron { $needles } agujas.

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
advance = Avance un poco y compruebe la profundidad en AP y en lateral antes de que esté profunda.
advance_by = Faltan unos { $mm } mm: avance poco a poco y mire después de cada avance.
draw_back_by = Retroceda unos { $mm } mm.
look_in = { $view ->
    [true_ap] Mire en AP con la aguja ahí.
   *[lateral] Mire en lateral con la aguja ahí.
  }
aspirate_now = En su lugar y vista en ambas proyecciones: aspire.
inject_now = Ahora contraste en tiempo real: una aspiración seca no prueba nada.
blood_answer = Sangre en el pabellón: retroceda, recoloque y no inyecte nada aquí.
pain_answer = Dolor que baja por la pierna: pare, retroceda y solo después siga por otro camino.
clear_fluid_answer = Líquido claro: se ha atravesado la duramadre. Retroceda y no inyecte nada; la norma local decide si se continúa.
aspirate-nothing-worth = No sale nada. Eso no prueba nada: de las puntas dentro de un vaso, menos de la mitad (45 %) dan sangre. Decide el contraste en tiempo real.

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

caution-upper = En L3 y por encima, una arteria que va a la médula puede pasar por la parte superior del foramen, más a menudo a la izquierda: se discute si el lugar bajo el pedículo es ahí el correcto, y uno más bajo y algo posterior puede ser más seguro. Una aspiración seca no descarta un vaso. Siempre corticoide no particulado; deciden la norma local y la supervisión.
caution-lower = Nunca pase medial a las 6 del pedículo antes de ver contraste. Ha habido paraplejía tras aspiración seca hasta en L5-S1: primero contraste en tiempo real, siempre corticoide no particulado; pare ante parestesia o sangre. Deciden la norma local y la supervisión.
caution-sacral = La difusión vascular es más frecuente en S1 que en los niveles lumbares, y una arteria que va a la médula puede encontrarse en cualquier nivel: mire toda la inyección en tiempo real. Siempre corticoide no particulado; deciden la norma local y la supervisión.
caution-infraneural = El camino bajo la raíz pasa junto al disco: compruebe la profundidad en lateral antes de cada avance. Una arteria que va a la médula puede encontrarse en cualquier nivel. Siempre corticoide no particulado; deciden la norma local y la supervisión.
