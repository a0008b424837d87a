import { askText } from '../ask';

/** ms. What is read so soon after it was written is read back to see whether it is whole. */
const readingBack = 5000;
let written = Number.NEGATIVE_INFINITY;

/** A browser may refuse to have its clipboard read: a person then pastes into a field. */
export const clipboard = {
  async writeText(text: string): Promise<void> {
    written = performance.now();
    // From a host without encryption a page has no clipboard of its own, but may still copy what is selected.
    if (navigator.clipboard === undefined) copySelected(text);
    else await navigator.clipboard.writeText(text);
  },

  async readText(): Promise<string> {
    try {
      return await navigator.clipboard.readText();
    } catch {
      if (performance.now() - written < readingBack) return '';
      const prompt =
        'This browser does not let a page read its clipboard. Paste here what the board has printed.';
      return (await askText({ title: 'Paste the Text', prompt, isLong: true })) ?? '';
    }
  },
};

function copySelected(text: string): void {
  const field = document.createElement('textarea');
  field.value = text;
  document.body.append(field);
  field.select();
  const isCopied = document.execCommand('copy');
  field.remove();
  if (!isCopied) throw new Error('the browser did not copy it');
}
