/** What is asked about a board's text: a part of the bundle of its own, for most sessions open none. */
export { boardAction } from './action';
export { boardCompletion } from './completion';
export { boardEdits } from './edits';
export { boardFix } from './fix';
export { boardHover } from './hover';
export { boardFolding, boardOutline } from './outline';
export { boardProblems } from './problems';
export { settingToSay } from './setting-to-say';
export { boardTextReport, countsOfText } from './text-report';
export { boardWords } from './words/board-words';
