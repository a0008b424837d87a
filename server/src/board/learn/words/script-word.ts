const scriptWord = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;

/** A name of a board's own as a script can write it: `UART 3` is `uart-3`. Null for what is none, such as a number alone. */
export function scriptWordOf(text: string): string | null {
  const plain = text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return scriptWord.test(plain) ? plain : null;
}
