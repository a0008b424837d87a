/** What answers about a board's text; loaded when the first is asked about. */
export function boardAnswers(): typeof import('./on-demand') {
  return require('./on-demand');
}
