/** The extension's own pages in one script: a frame has the markup of one of them, and that one starts. */
const starts = new Map<string, () => Promise<unknown>>([
  ['sheet', () => import('../sheet/main')],
  ['learn', () => import('../learn/main')],
  ['compare', () => import('../compare/main')],
  ['card', () => import('../card/main')],
  ['find', () => import('../find/main')],
  ['recording', () => import('../recording/main')],
]);

void starts.get(document.querySelector('main')?.id ?? '')?.();
