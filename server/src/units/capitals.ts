/** Words as they begin a sentence. */
export function capitalised(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

/** A word in capitals, with one or with none, as another has it: `On` for `Yes`. */
export function inCaseOf(word: string, like: string): string {
  if (like === like.toUpperCase()) return word.toUpperCase();
  return /^\p{Lu}/u.test(like) ? capitalised(word) : word;
}

/** A title or a sentence within another: "gyro filter". Abbreviations, names and files stay: "ESC", "DShot", "Mine.craft". */
export function uncapitalised(words: string): string {
  const [first = ''] = words.split(/[\s,:;’'-]/, 1);
  const isPlain = first.slice(1) === first.slice(1).toLowerCase() && !/[./\d]/.test(first);
  return isPlain ? `${words.charAt(0).toLowerCase()}${words.slice(1)}` : words;
}
