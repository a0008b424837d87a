/** From this width on the script and the views stand side by side, as the page's styles say. */
export const wide = matchMedia('(min-width: 900px)');

export function isWide(): boolean {
  return wide.matches;
}
