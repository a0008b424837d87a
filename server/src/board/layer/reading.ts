/** What reads boards' texts; loaded with the first of them. */
export function boardReading(): typeof import('./on-demand') {
  return require('./on-demand');
}
