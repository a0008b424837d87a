import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { DocumentEdit } from '../../../server/src/language/document';
import { Workspace } from '../../../server/src/workspace/workspace';
import { testCatalog } from '../../support/catalog';
import { craftAsData, findingAsData } from '../../support/craft-as-data';
import { craftScript, type LooseEdit, looseEdit } from '../../support/craft-scripts';
import { MemoryFiles } from '../../support/memory-files';
import { placed } from '../../support/placed';

const numRuns = Number(process.env.PROPSOFF_RUNS ?? 500);
const names = ['main.craft', 'one.craft', 'two.craft'] as const;
const uriOf = (name: string) => `test:///work/${name}`;

/** One thing that happens: edits of an open script in one go, or a script that is opened, closed or saved elsewhere. */
interface Step {
  readonly name: (typeof names)[number];
  readonly what: 'edit' | 'open' | 'close' | 'disk';
  readonly edits: readonly LooseEdit[];
  readonly text: string;
  /** Whether somebody looks at the result before the next step. */
  readonly isSeen: boolean;
}

const step: fc.Arbitrary<Step> = fc.record({
  name: fc.constantFrom(...names),
  what: fc.oneof(
    { weight: 10, arbitrary: fc.constant('edit' as const) },
    { weight: 1, arbitrary: fc.constantFrom('open' as const, 'close' as const, 'disk' as const) },
  ),
  edits: fc.array(looseEdit, { minLength: 1, maxLength: 3 }),
  text: craftScript,
  isSeen: fc.boolean(),
});

/** The editor's side: what is on the disk, and the texts that are open, kept by the protocol's own library. */
class Editor {
  readonly fileSystem: MemoryFiles;
  readonly open = new Map<string, TextDocument>();
  readonly workspace: Workspace;
  private version = 1;

  constructor(texts: readonly string[]) {
    this.fileSystem = new MemoryFiles(
      Object.fromEntries(names.map((name, index) => [name, texts[index] ?? ''])),
    );
    this.workspace = workspaceOver(this.fileSystem);
    this.openScript('main.craft');
  }

  do({ name, what, edits, text }: Step): void {
    const uri = uriOf(name);
    const document = this.open.get(uri);
    if (what === 'disk') {
      this.fileSystem.files.set(uri, text);
      this.workspace.diskChanged(uri);
    } else if (what === 'open' && document === undefined) this.openScript(name);
    else if (what === 'close' && document !== undefined && name !== 'main.craft') {
      this.open.delete(uri);
      this.workspace.close(uri);
    } else if (document !== undefined) this.edit(document, edits);
  }

  /** Puts one line in place of some, as an editor does. */
  replaceLines(name: string, at: number, over: number, text: string): void {
    const document = this.open.get(uriOf(name));
    if (document === undefined) throw new Error(`${name} is not open`);
    this.version += 1;
    const line = at % document.lineCount;
    const edit = {
      start: { line, character: 0 },
      end: { line: line + over, character: 0 },
      text: `${text}\n`,
    };
    TextDocument.update(
      document,
      [{ range: { start: edit.start, end: edit.end }, text: edit.text }],
      this.version,
    );
    this.workspace.change(document.uri, [edit], this.version);
  }

  private openScript(name: string): void {
    const uri = uriOf(name);
    const held = this.fileSystem.files.get(uri);
    const text = typeof held === 'string' ? held : '';
    this.open.set(uri, TextDocument.create(uri, 'craft-script', this.version, text));
    this.workspace.openScript(uri, text, this.version);
  }

  private edit(document: TextDocument, loose: readonly LooseEdit[]): void {
    this.version += 1;
    const edits: DocumentEdit[] = [];
    for (const one of loose) {
      const edit = placed(document, one);
      edits.push(edit);
      const { start, end, text } = edit;
      TextDocument.update(document, [{ range: { start, end }, text }], this.version);
    }
    this.workspace.change(document.uri, edits, this.version);
  }
}

function workspaceOver(fileSystem: MemoryFiles): Workspace {
  const onFault = (id: string, error: unknown) => {
    throw new Error(`${id} failed`, { cause: error });
  };
  return new Workspace({ catalog: testCatalog, fileSystem, onFault });
}

/** What everybody can see of a workspace. */
function seen(workspace: Workspace): unknown {
  return workspace
    .allOpen()
    .map(({ uri, script, craft }) => ({
      uri,
      text: script.document.text(),
      craft: craftAsData(craft),
      findings: workspace.findings(uri).map(findingAsData),
    }))
    .sort((one, other) => (one.uri < other.uri ? -1 : 1));
}

/** The same texts, opened by somebody who has just started. */
async function seenFresh(editor: Editor): Promise<unknown> {
  const workspace = workspaceOver(editor.fileSystem);
  for (const document of editor.open.values()) workspace.openScript(document.uri, document.getText(), 1);
  await workspace.settled();
  return seen(workspace);
}

describe('after any edits', () => {
  it('findings, settings and texts are those of scripts that were opened just now (D01)', async function () {
    this.timeout(numRuns * 1000);
    await fc.assert(
      fc.asyncProperty(
        fc.tuple(craftScript, craftScript, craftScript),
        fc.array(step, { minLength: 1, maxLength: 8 }),
        async (texts, steps) => {
          const editor = new Editor(texts);
          for (const one of steps) {
            editor.do(one);
            if (!one.isSeen) continue;
            await editor.workspace.settled();
            seen(editor.workspace);
          }
          await editor.workspace.settled();
          for (const document of editor.open.values()) {
            const mine = editor.workspace.get(document.uri)?.script.document;
            assert.equal(mine?.text(), document.getText());
            assert.equal(mine?.lineCount, document.lineCount);
          }
          assert.deepEqual(seen(editor.workspace), await seenFresh(editor));
        },
      ),
      { numRuns },
    );
  });

  it('a script that nobody looks at in between comes to the same', async function () {
    this.timeout(numRuns * 1000);
    await fc.assert(
      fc.asyncProperty(craftScript, fc.array(looseEdit, { maxLength: 30 }), async (text, edits) => {
        const editor = new Editor([text, 'let quiet = 80 Hz\n', '[gyro.filter.1]\ncutoff = quiet\n']);
        const all = { name: 'main.craft', what: 'edit', edits, text: '', isSeen: false } as const;
        editor.do(all);
        await editor.workspace.settled();
        assert.deepEqual(seen(editor.workspace), await seenFresh(editor));
      }),
      { numRuns: Math.ceil(numRuns / 5) },
    );
  });
});

describe('after any edits of a log with very many flights', () => {
  const log = Array.from({ length: 70 }, (_, index) => [
    `[flight.day-${index}]`,
    `date = 2026-05-${10 + (index % 20)}`,
    `pack = ${index % 3 === 0 ? 'sprint' : 'cruise'}`,
    `hover-throttle = ${20 + index} %`,
    `motor-temperature = ${30 + index} degC`,
    ...(index % 9 === 0 ? [`changed = "mount ${index}"`] : []),
  ]).flat();
  const packs = '[pack.sprint]\ncells = 4\ncapacity = 550 mAh\n[pack.cruise]\ncells = 6\ncapacity = 1800 mAh';
  const craft = `[craft]\nmass = 200 g\nlet warm = 40 degC\n[stick.throttle]\nhover-point = 30 %\n${packs}`;
  const newLine = fc.constantFrom(
    '',
    '[flight.day-7]',
    '[flight.day-71]',
    '[flight.day-8 @ sprint]',
    '[motor @ cruise]',
    'hover-throttle = 31 %',
    'motor-temperature = warm + 30 degC',
    'motor-temperature = flight.day-3.motor-temperature',
    'motor-temperatur = 90 degC',
    'temperature-limit = 60 degC',
    'pack = sprint',
    'pack = nobody',
    'date = 2026-06-01',
    'packs-flown = 3',
    'changed = "softer mount"',
  );
  const change = fc.record({ at: fc.nat(), over: fc.nat(14), text: newLine, isSeen: fc.boolean() });

  it('findings and settings are those of a script that was opened just now, also when there are few again', async function () {
    this.timeout(numRuns * 1000);
    await fc.assert(
      fc.asyncProperty(fc.boolean(), fc.array(change, { maxLength: 6 }), async (isIncluded, changes) => {
        const texts = isIncluded
          ? [`include "one.craft"\n${craft}`, log.join('\n')]
          : [`${craft}\n${log.join('\n')}`];
        const editor = new Editor(texts);
        await editor.workspace.settled();
        const name = isIncluded ? 'one.craft' : 'main.craft';
        editor.do({ name, what: 'open', edits: [], text: '', isSeen: false });
        for (const { at, over, text, isSeen } of changes) {
          editor.replaceLines(name, at, over, text);
          await editor.workspace.settled();
          if (isSeen) seen(editor.workspace);
        }
        assert.deepEqual(seen(editor.workspace), await seenFresh(editor));
      }),
      { numRuns: Math.ceil(numRuns / 25) },
    );
  });
});
