### Machine-drafted, not yet reviewed by a speaker.

titleView = { $place }: { $view }
patient = Paciente «{ $patient }»
waiting = La imagen se dibuja cuando esto queda a la vista.
turns = Girar el arco en C
checksHeading = Qué tan cerca
showingBest = La mejor vista que este aparato alcanza aquí. No cuenta como encontrada.
through = A través del haz
throughFailed = No se pudieron traer los huesos ({ $why }); la imagen sigue como estaba.
allowedDigest = sha256-, sha384- o sha512-, cada uno seguido de un resumen en base64
allowedPatient = el nombre de un paciente

## Loading the engine

loading-failedFetch = No se cargó el motor de cálculo ({ $why }). Compruebe la conexión e inténtelo de nuevo.
loading-failedStart = No se pudo iniciar el motor de cálculo ({ $why }). Hace falta un navegador con WebAssembly que la política de contenido de la página permita ejecutar.
loading-failedRun = El motor de cálculo se detuvo ({ $why }). Cárguelo de nuevo para seguir; su posición se conserva.
loading-failedIntegrity = No se inició el motor de cálculo: { $file } no es el archivo cuyo resumen da esta página en «integrity».
loading-otherIntegrity = No se usó el motor de cálculo: otro elemento de esta página lo cargó con otra «integrity», o sin ella. Dé la misma a todos.

## What is wrong with the element's attributes

problem-attribute = { $name }="{ $value }" no vale: se admite { $allowed }. Se usa { $kept }.
problem-patient = { $why }. Se usa «{ $kept }».
problem-integrity = integrity="{ $value }" no vale: se admite { $allowed }. Sin ello no se carga el motor de cálculo.
problem-style = No se cargó el aspecto ({ $why }); todo funciona sin él.
problem-nothingChecked = view="free" no tiene mejor vista: ahí no se comprueba nada.
problem-notHere = El elemento no está en una página, así que no hay imagen.
