### The course element.

loading-otherIntegrity = The engine was not used: another element of this page has loaded it under another “integrity”, or none. Give all the same.

waiting = The picture is drawn when this comes into view.
turns = Turn the C-arm
checksHeading = How close
showingBest = The best view that this machine reaches here. It does not count as found.

problem-nothingChecked = view="free" has no best view: nothing is checked there.
problem-notHere = The element is not in a page, so there is no picture.
