// English sentences about where progress and results go.

const SAVE = 'Save the receipt as a file to be sure.';

export const delivery = {
  ofHundred: (n) => `${n} of 100`,
  notDone: 'not done',

  alone: 'This lesson was opened outside a learning platform: nothing is handed in by itself. Save the receipt as a file.',
  noLesson: (why) => `The lesson of this package could not be read (${why}). Tell whoever set it up.`,
  notKept: 'Progress is not kept here: it is gone when the page is closed.',

  notOpened: (standard) => `The learning platform did not open its record of this lesson (${standard}). It is tried again when you hand in; save the receipt as a file too.`,
  notRead: 'The learning platform could not give back what it keeps of this lesson. That is left as it is, so progress of this attempt is not kept there.',
  resumedPart: (n) => `The learning platform kept only the beginning of your attempt: ${n} ${n === 1 ? 'action' : 'actions'}. It goes on from there.`,
  resumedNone: 'What the learning platform kept of your attempt cannot be read. You begin anew.',
  notTaken: 'The learning platform does not answer. Your work is held here and sent again by itself: leave this page open.',
  takenAgain: 'The learning platform has taken everything now.',
  refusedValue: (name, why) => `The learning platform refuses a value (${name}${why ? `; ${why}` : ''}). ${SAVE}`,
  resultRefused: `The learning platform has refused the result. ${SAVE}`,
  pending: `The learning platform has not confirmed the result yet. It is sent again by itself as long as this page is open. ${SAVE}`,
  tooLong: (most, kept, all) =>
    `The learning platform keeps ${most.toLocaleString('en')} characters, too few for this attempt: closed now, it goes on from action ${kept} of ${all}. The result is not affected.`,
  receiptTooLong: (most) => `The receipt does not fit into the ${most.toLocaleString('en')} characters that the learning platform keeps; the score does. Save the receipt as a file.`,
  review: 'The learning platform has opened this lesson to look at only: the result is not recorded.',
  earlierBetter: 'The learning platform keeps your earlier result.',
  otherMark: (mark, passed) => `The learning platform’s own pass mark is ${mark} percent: there this counts as ${passed ? 'passed' : 'not passed'}.`,
  sessionOver: `This visit has been closed with the learning platform: open the lesson there again. ${SAVE}`,

  launchIncomplete: 'The address of this launch is incomplete: open the lesson from the learning platform again.',
  launchUsed: (why) => `The learning platform does not admit this launch${why ? ` (${why})` : ''}: open the lesson there again. Nothing is handed in from here by itself.`,
  noToken: 'The learning platform cannot be reached: open the lesson there again. Nothing is handed in from here by itself.',
  noLaunchData: 'The learning platform did not say how this lesson was launched: open it there again. Nothing is handed in from here by itself.',
  refusedStatement: (status) => `The learning platform has refused a record (answer ${status}). ${SAVE}`,
  noState: 'The learning platform keeps no attempt under way: closed now, this one is gone. Results are handed in all the same.',
  heldBack: 'Kept by the learning platform. It is handed in as not passed when you leave; until then you may do better.',
  heldHere: `Not passed. It is handed in when you leave this page; until then you may do better. ${SAVE}`,

  update: 'There is a new version of this page. It is taken when all its windows have been closed and it is opened again.',

  badHost: (found) => `The address names “${found}” as the page around this one; allowed is an origin such as https://course.example.org. Nothing is sent to it.`,
  noMessage: (why) => `The page around this one cannot be told (${why}). ${SAVE}`,
  notConfirmed: `The page around this one has not confirmed the result. ${SAVE}`,
};
