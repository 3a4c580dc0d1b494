/** What a learner does to an element, in the words of Playwright's locators and pages: each opens first the sheet that it stands in (harness.mjs). */
export const DOINGS = ['click', 'check', 'uncheck', 'selectOption', 'fill', 'press', 'pressSequentially', 'focus', 'hover', 'tap', 'setChecked', 'scrollIntoViewIfNeeded'];
