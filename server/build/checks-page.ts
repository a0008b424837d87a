import { loadCatalog } from '../src/catalog/catalog';
import type { Bundle } from '../src/catalog/model/bundle';
import { checkParagraphs } from '../src/features/hover/check-text';

/** Every check with its whole story, for editors that follow a link to a file: `CHECKS.md#wire/port-shared`. */
export function checksPage(bundle: Bundle): string {
  const catalog = loadCatalog(bundle);
  const checks = [...catalog.checks.values()].map((check) => {
    // An anchor of its own: what becomes of the heading's slash is each reader's choice.
    const heading = `<a id="${check.id}"></a>\n\n## ${check.id}`;
    return [heading, ...checkParagraphs(check, catalog).map(lessEscaped)].join('\n\n');
  });
  const about = 'What Propsoff looks at, and why. Workspaces may add checks of their own.';
  return `${['# The checks', about, ...checks].join('\n\n')}\n`;
}

/** Many editors show the page as it is written: marks that are none within these paragraphs stand for themselves. */
function lessEscaped(paragraph: string): string {
  return paragraph.replace(/\\([.!()#+-])/g, '$1');
}
