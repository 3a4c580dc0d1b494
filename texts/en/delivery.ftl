### Where progress and results go.

notDone = not done
# Fallback score line of what is sent to a platform.
ofHundred = { $n } of 100
noLesson = The lesson of this package could not be read. Tell whoever set it up.
noLessonStatus = The lesson of this package could not be read (answer { $status }). Tell whoever set it up.
broken = The way to the learning platform has failed. Nothing is handed in from here by itself: save the receipt as a file.
notOpened = The learning platform did not open its record of this lesson ({ $standard }). It is tried again when you hand in; save the receipt as a file too.
alone = This lesson was opened outside a learning platform: nothing is handed in by itself. Save the receipt as a file.
notKept = Progress is not kept here: it is gone when the page is closed.
notRead = The learning platform could not give back what it keeps of this lesson. That is left as it is, so progress of this attempt is not kept there.
resumedNone = What the learning platform kept of your attempt cannot be read. You begin anew.
resumedPart = { $n ->
    [one] The learning platform kept only the beginning of your attempt: { $n } action. It goes on from there.
   *[other] The learning platform kept only the beginning of your attempt: { $n } actions. It goes on from there.
  }
resumedOf = { $missing ->
    [one] The learning platform has room for the first { $n } actions of your attempt only: the last one is missing. It goes on from action { $n }.
   *[other] The learning platform has room for the first { $n } actions of your attempt only: the last { $missing } are missing. It goes on from action { $n }.
  }
notTaken = The learning platform does not answer. Your work is held here and sent again by itself: leave this page open.
takenAgain = The learning platform has taken everything now.
handedInLate = Your earlier result, which the learning platform had not confirmed, has been handed in now.
resultUnread = The learning platform does not say what it keeps of this lesson, so this result is not written over it. Save the receipt as a file.
resultRefused = The learning platform has refused the result. Save the receipt as a file to be sure.
refusedValue = The learning platform refuses a value ({ $name }). Save the receipt as a file to be sure.
refusedValueWhy = The learning platform refuses a value ({ $name }; { $why }). Save the receipt as a file to be sure.
refusedStatement = The learning platform has refused a record (answer { $status }). Save the receipt as a file to be sure.
tooLong = The learning platform keeps { NUMBER($most, useGrouping: "always") } characters, too few for this attempt: closed now, it goes on from action { $kept } of { $all }. The result is not affected.
receiptTooLong = The receipt does not fit into the { NUMBER($most, useGrouping: "always") } characters that the learning platform keeps; the score does. Save the receipt as a file.
otherMark = { $passed ->
    [yes] The learning platform’s own pass mark is { $mark } percent: there this counts as passed.
   *[no] The learning platform’s own pass mark is { $mark } percent: there this counts as not passed.
  }
pending = The learning platform has not confirmed the result yet. It is sent again by itself as long as this page is open. Save the receipt as a file to be sure.
review = The learning platform has opened this lesson to look at only: the result is not recorded.
earlierBetter = The learning platform keeps your earlier result.
sessionOver = This visit has been closed with the learning platform: open the lesson there again. Save the receipt as a file to be sure.
launchIncomplete = The address of this launch is incomplete: open the lesson from the learning platform again.
noToken = The learning platform cannot be reached: open the lesson there again. Nothing is handed in from here by itself.
launchUsed = The learning platform does not admit this launch: open the lesson there again. Nothing is handed in from here by itself.
launchUsedWhy = The learning platform does not admit this launch ({ $why }): open the lesson there again. Nothing is handed in from here by itself.
noLaunchData = The learning platform did not say how this lesson was launched: open it there again. Nothing is handed in from here by itself.
noState = The learning platform keeps no attempt under way: closed now, this one is gone. Results are handed in all the same.
heldBack = Kept by the learning platform. It is handed in as not passed when you leave; until then you may do better.
heldHere = Not passed. It is handed in when you leave this page; until then you may do better. Save the receipt as a file to be sure.
update = There is a new version of this page. It is taken when all its windows have been closed and it is opened again.
notConfirmed = The page around this one has not confirmed the result. Save the receipt as a file to be sure.
badHost = The address names “{ $found }” as the page around this one; allowed is an origin such as https://course.example.org. Nothing is sent to it.
noMessage = The page around this one cannot be told. Save the receipt as a file to be sure.
