### The course element.

# Of a case, such as “L4 left”, and with the view that is practised, such as “L4 left: True AP”.
titleView = { $place }: { $view }
patient = Patient “{ $patient }”
waiting = The picture is drawn when this comes into view.
turns = Turn the C-arm
checksHeading = How close
showingBest = The best view that this machine reaches here. It does not count as found.
through = Through the beam
throughFailed = The bones could not be fetched ({ $why }); the film is as it was.
allowedDigest = sha256-, sha384- or sha512-, each followed by a digest in base64
allowedPatient = a patient’s name

## Loading the engine. $why is a short reason, $file the name of a file.

loading-failedFetch = The engine did not load ({ $why }). Check the connection and try again.
loading-failedStart = The engine could not be started ({ $why }). This needs a browser with WebAssembly that the page’s content policy lets run.
loading-failedRun = The engine stopped ({ $why }). Load it again to go on; your position is kept.
loading-failedIntegrity = The engine was not started: { $file } is not the file whose digest this page gives in “integrity”.
loading-otherIntegrity = The engine was not used: another element of this page has loaded it under another “integrity”, or none. Give all the same.

## What is wrong with the element's attributes; $kept is what is used instead

problem-attribute = { $name }="{ $value }" does not fit: allowed is { $allowed }. { $kept } is used.
problem-patient = { $why }. “{ $kept }” is used.
problem-integrity = integrity="{ $value }" does not fit: allowed is { $allowed }. The engine is not loaded without it.
problem-style = The look did not load ({ $why }); everything works without it.
problem-nothingChecked = view="free" has no best view: nothing is checked there.
problem-notHere = The element is not in a page, so there is no picture.
