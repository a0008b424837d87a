/** Whether a text has just these letters, in whichever order. */
export function isPermutation(text: string, letters: string): boolean {
  return sorted(text) === sorted(letters);
}

function sorted(letters: string): string {
  return [...letters].sort().join('');
}
