### What the page and the course element both say: the picture, the angles, the checks, loading.

caution = Teaching model, not for clinical use: never plan or guide a procedure with it. Follow local policy, supervised training and licensed practice.

allowedNumber = a number from { $low } to { $high }
allowedWhole = a whole number from { $low } to { $high }

# A patient's name; one that is not in the list is said as it is given.
case-patientName = { $name ->
    [average] Average
    [curved] Curved
    [high-crest] High crest
    [large] Large
    [slipped] Slipped
    [small] Small
    [standing] Standing
    [thin-bones] Thin bones
    [transitional] Transitional
    [turned] Turned
    [worn] Worn
   *[other] { $given }
  }

# What is special about a patient.
case-patientSentence = { $name ->
    [average] Average adult, lying straight and prone
    [turned] Average adult, lying a little turned on the table
    [small] Small, slender adult
    [large] Large, heavy adult
    [thin-bones] Older adult with little bone mineral
    [worn] Low discs at the two lowest levels, thickened facet joints
    [curved] Column bent to the side and turned with the bend
    [slipped] L4 slipped forwards on L5 by a sixth of its depth, worn joints, arch whole
    [high-crest] Iliac crests that reach up to the middle of L4
    [transitional] L5 half joined to the sacrum: broad transverse processes that meet its wings, a low disc
    [standing] Average adult, upright, for comparison
   *[other] { $given }
  }

# A step of a lesson as its marks name it.
step = { $id ->
    [name_parts] Parts named
    [target_centred] Target in the middle
    [true_ap] True AP
    [oblique] Oblique, squared
    [lateral] Lateral
    [target] Target
    [down_the_beam] Down the beam
    [steering] Steering
    [depth] Depth
    [contacts] What the needle met
    [contrast] Contrast
    [radiation] Radiation
   *[other] { $given }
  }

# A level (L1 to L5, S1) and a side, such as “L4 left”.
place = { $side ->
    [left] { $level } left
   *[right] { $level } right
  }

## The picture

picture-caption = { $place }, patient “{ $patient }”. Receptor { $oblique }, { $tilt }.
picture-alternative = X-ray view of the lumbar spine, head up. Receptor { $oblique } and { $tilt }.
picture-polarity = Bone dark
picture-outlines = Outlines
picture-labels = Names
picture-keyPosterior = { $level ->
    [S1] sacrum
   *[other] { $level } posterior elements
  }
picture-keyBelow = { $below } superior articular process
picture-keyTarget = { $level } body
picture-dogHeading = The dog of { $level }, part by part
picture-dogPart = { $dog }: { $part } of { $level }
# The parts of the dog, and those of the dog one level down.
picture-dogName = { $name ->
    [nose] nose
    [eye] eye
    [ear] ear
    [neck] neck
    [body] body
    [foreleg] foreleg
   *[other] { $name }
  }
picture-dogNext = { $name ->
    [nose] next dog’s nose
    [eye] next dog’s eye
    [ear] next dog’s ear
    [neck] next dog’s neck
    [body] next dog’s body
    [foreleg] next dog’s foreleg
   *[other] next dog’s { $name }
  }
picture-part = { $name ->
    [body] body
    [upper_end_plate] upper end plate
    [lower_end_plate] lower end plate
    [pedicle] pedicle
    [pars] pars
    [lamina] lamina
    [superior_articular_process] superior articular process
    [inferior_articular_process] inferior articular process
    [transverse_process] transverse process
    [spinous_process] spinous process
    [ala] ala
    [median_crest] median crest
    [iliac_wing] iliac wing
    [iliac_crest] iliac crest
    [rib] rib
   *[other] { $given }
  }
# The letters at the edges of a picture: left, right, anterior, posterior, head.
picture-end-L = L
picture-end-R = R
picture-end-A = A
picture-end-P = P
picture-end-H = H

## Loading the engine

loading-engine = Loading the engine
loading-percent = Loading the engine: { $n } %
loading-patient = Shaping the patient “{ $patient }”
loading-failedHeading = The picture is not available
loading-retry = Try again
loading-status = the server answered { $code }
loading-noServer = no answer from the server
loading-noWasm = the file is not a WebAssembly module

## The angles. $name is Oblique, Tilt and the like.

turn-number = { $name }, degrees
turn-outOfRange = { $name } goes from { $low } to { $high } degrees here; the nearest allowed angle was taken.
turn-notNumber = { $name } needs a number of degrees; the last angle was kept.

oblique-name = Oblique
oblique-hint = left +, right −
oblique-high = left
oblique-low = right
oblique-zero = straight above
oblique-zeroSpoken = straight above, 0 degrees
oblique-turned = { $way ->
    [left] { $deg }° to the patient’s left
   *[right] { $deg }° to the patient’s right
  }
oblique-turnedSpoken = { $way ->
    [left] { $deg ->
        [one] { $deg } degree to the patient’s left
       *[other] { $deg } degrees to the patient’s left
      }
   *[right] { $deg ->
        [one] { $deg } degree to the patient’s right
       *[other] { $deg } degrees to the patient’s right
      }
  }

tilt-name = Tilt
tilt-hint = cephalad +, caudad −
tilt-high = cephalad
tilt-low = caudad
tilt-zero = no tilt
tilt-zeroSpoken = no tilt, 0 degrees
tilt-tilted = { $way ->
    [cephalad] { $deg }° cephalad
   *[caudad] { $deg }° caudad
  }
tilt-tiltedSpoken = { $way ->
    [cephalad] { $deg ->
        [one] { $deg } degree cephalad
       *[other] { $deg } degrees cephalad
      }
   *[caudad] { $deg ->
        [one] { $deg } degree caudad
       *[other] { $deg } degrees caudad
      }
  }

## The checks: what is measured of a view, how far off, what to move

checks-views-true_ap = True AP
checks-views-oblique = Oblique
checks-views-lateral = Lateral
# What is measured, in the engine's order.
checks-criterion = { $id ->
    [spinous_centred] Spinous process centred
    [squared] End plate squared
    [facet_under_pedicle] Articular process under the pedicle
    [lateral] Left and right superimposed
    [foramen_aligned] Sacral foramina over each other
    [process_at_mid_plate] Articular process at the middle of the end plate
    [squared_below] End plate below squared
   *[other] { $given }
  }
checks-good = Good: within the tolerance.
checks-overlap = The top of the process overlaps the pedicle; change the tilt until it stands below.
checks-stuck = No move of one control puts this right from here; go back to a true AP first.
# $amount is checks-less or checks-degrees.
checks-move-oblique = { $direction ->
    [left] Turn the receptor { $amount } towards the patient's left.
   *[right] Turn the receptor { $amount } towards the patient's right.
  }
checks-move-tilt = { $direction ->
    [cephalad] Tilt the receptor { $amount } cephalad.
   *[caudad] Tilt the receptor { $amount } caudad.
  }
checks-less = less than 1 degree
checks-degrees = { $n ->
    [one] { $n } degree
   *[other] { $n } degrees
  }
checks-measure = { $unit ->
    [degrees] { $n }°
    [mm] { $n } mm
   *[percent] { $n } %
  }
checks-undefined = not defined here
checks-within = { $of ->
    [degrees] full marks within { $n }°
    [mm] full marks within { $n } mm
    [pedicle_spacing] full marks within { $n } % of pedicle spacing
    [pedicle_width] full marks within { $n } % of pedicle width
    [half_plate] full marks within { $n } % of half the end plate
   *[percent] full marks within { $n } %
  }
checks-measured = { $criterion }: { $value }, { $tolerance }
checks-score = { $points } of 100
checks-scoreLabel = Score of this view
checks-word-full = full marks
checks-word-close = close
checks-word-part = part way
checks-word-far = far off
checks-word-none = no marks yet
checks-best = Show the best view
checks-back = Return to my view
checks-notReached = This machine’s range stops short of the best view; this is as near as it goes.
checks-said = { $view }: { $points } of 100. { $advice }
checks-ask = Check my view
checks-hidden = Set the view by eye first. Values and advice stay hidden until you ask.
checks-notHere = This view is not scored at this level.
