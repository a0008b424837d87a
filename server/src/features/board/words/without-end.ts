/** A text without the marks that it ends in. `mark`: what one of them looks like. */
export function withoutEnd(text: string, mark: RegExp): string {
  const characters = [...text];
  while (mark.test(characters.at(-1) ?? '')) characters.pop();
  return characters.join('');
}
