import { type Catalog, loadCatalog } from '../../server/src/catalog/catalog';
import type { DataCheck } from '../../server/src/catalog/model/check';
import { Checker } from '../../server/src/checks/checker';
import type { Finding } from '../../server/src/checks/report/finding';
import { inScriptOrder } from '../../server/src/checks/report/order';
import { Craft } from '../../server/src/craft/craft';
import { Script } from '../../server/src/craft/script';
import { testBundle } from './catalog';

const lineChecks = testBundle.checks.filter(({ group }) => group === 'line');

/** A rule as data, filled up with what a test does not care about. */
export function ruleOf(told: Partial<DataCheck> & Pick<DataCheck, 'when' | 'at'>): DataCheck {
  return {
    id: 'own/rule',
    by: 'data',
    level: 'risk',
    scope: 'craft',
    title: 'A rule of a test',
    message: 'Something is wrong.',
    advice: 'Do something about it.',
    source: { text: 'common practice' },
    ...told,
  };
}

/** The real parameters with only the checks of lines and these. */
export function catalogWith(...checks: readonly DataCheck[]): Catalog {
  return loadCatalog({ ...testBundle, checks: [...lineChecks, { group: 'own', checks: [...checks] }] });
}

/** A craft under a catalogue of its own, and what is found in it. Faults are gathered, not thrown. */
export class OwnCraft {
  readonly faults: string[] = [];
  readonly craft: Craft;
  private readonly checker: Checker;

  constructor(catalog: Catalog, text: string, files: Readonly<Record<string, string>> = {}) {
    const scripts = new Map(
      Object.entries({ ...files, 'main.craft': text }).map(([name, content]) => {
        const script = new Script(`test:///work/${name}`, content, catalog);
        return [script.uri, script];
      }),
    );
    const root = scripts.get('test:///work/main.craft');
    if (root === undefined) throw new Error('the root is among its files');
    this.craft = new Craft(root, catalog, {
      isIncluded: () => true,
      open: (uri) => {
        const script = scripts.get(uri);
        return script === undefined ? { kind: 'missing' } : { kind: 'script', script };
      },
    });
    this.checker = new Checker(catalog, (id) => this.faults.push(id));
  }

  /** Findings of the test's own rules, and of the checks of lines only when asked for. */
  findings(group = 'own'): readonly Finding[] {
    const all = inScriptOrder(this.checker.findings(this.craft));
    return all.filter(({ check }) => check.id.startsWith(`${group}/`));
  }
}
