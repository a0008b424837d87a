/** Words as they begin a sentence. */
export function capitalised(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

/** A title or a sentence within another: "gyro filter". Abbreviations, names and files stay: "ESC", "DShot", "Mine.craft". */
export function uncapitalised(words: string): string {
  return words.replace(/^\p{Lu}\p{Ll}*(?=[\s,:;’'-]|$)/u, (first) => first.toLowerCase());
}
