### Where progress and results go.

notDone = not done
alone = This lesson was opened outside a learning platform: nothing is handed in by itself. Save the receipt as a file.
notKept = Progress is not kept here: it is gone when the page is closed.
notRead = The learning platform could not give back what it keeps of this lesson. That is left as it is, so progress of this attempt is not kept there.
resumedNone = What the learning platform kept of your attempt cannot be read. You begin anew.
notTaken = The learning platform does not answer. Your work is held here and sent again by itself: leave this page open.
takenAgain = The learning platform has taken everything now.
resultRefused = The learning platform has refused the result. Save the receipt as a file to be sure.
pending = The learning platform has not confirmed the result yet. It is sent again by itself as long as this page is open. Save the receipt as a file to be sure.
review = The learning platform has opened this lesson to look at only: the result is not recorded.
earlierBetter = The learning platform keeps your earlier result.
sessionOver = This visit has been closed with the learning platform: open the lesson there again. Save the receipt as a file to be sure.
launchIncomplete = The address of this launch is incomplete: open the lesson from the learning platform again.
noToken = The learning platform cannot be reached: open the lesson there again. Nothing is handed in from here by itself.
noLaunchData = The learning platform did not say how this lesson was launched: open it there again. Nothing is handed in from here by itself.
noState = The learning platform keeps no attempt under way: closed now, this one is gone. Results are handed in all the same.
heldBack = Kept by the learning platform. It is handed in as not passed when you leave; until then you may do better.
heldHere = Not passed. It is handed in when you leave this page; until then you may do better. Save the receipt as a file to be sure.
update = There is a new version of this page. It is taken when all its windows have been closed and it is opened again.
notConfirmed = The page around this one has not confirmed the result. Save the receipt as a file to be sure.
