import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { adviceOf, messageOf } from '../../../server/src/checks/report/render';
import { Workspace } from '../../../server/src/workspace/workspace';
import { testCatalog } from '../../support/catalog';
import { MemoryFiles } from '../../support/memory-files';

const uri = 'test:///work/main.craft';

/** Opens a text and looks at everything that is found: nothing fails, every mark lies in its line. */
async function isHeld(text: string, files: Readonly<Record<string, string>> = {}): Promise<number> {
  const workspace = new Workspace({
    catalog: testCatalog,
    fileSystem: new MemoryFiles(files),
    onFault: (id, error) => {
      throw new Error(`${id} failed`, { cause: error });
    },
  });
  const { script, craft } = workspace.openScript(uri, text, 1);
  await workspace.settled();
  const findings = workspace.findings(uri);
  for (const finding of findings) {
    const { line, start, end } = finding.place;
    assert.ok(script.lineNumber(line) >= 0, 'a finding stands on a line that is gone');
    assert.ok(start >= 0 && start <= end && end <= Math.max(1, line.text.length), finding.check.id);
    assert.ok(messageOf(finding).length + adviceOf(finding).length < 4000, finding.check.id);
  }
  for (const pack of craft.packsOrNone()) {
    for (const path of [...script.settingPaths()].slice(0, 200)) craft.setting(path, pack);
  }
  return findings.length;
}

const settings = Array.from(
  { length: 2500 },
  (_, index) => `# ${'note '.repeat(600)}\n[flight.f${index}]\nnote = "${'x'.repeat(900)}"\n`,
);

const texts: readonly (readonly [string, string])[] = [
  ['nothing', ''],
  ['one line end', '\n'],
  ['line ends only', '\r\n\n\r\r\n'.repeat(1000)],
  [
    'control characters',
    Array.from({ length: 32 }, (_, code) => `a = ${String.fromCharCode(code)}`).join('\n'),
  ],
  [
    'every character of a plane',
    Array.from({ length: 65_536 }, (_, code) => String.fromCharCode(code)).join(''),
  ],
  ['halves of characters', 'let a\ud83d = \udee0\n[\ud83d]\ninclude "\ud83d"\nname = "\udee0"\n'],
  ['the beginning of a picture', '\u0089PNG\r\n\u001a\n\u0000\u0000\u0000\rIHDR\u0000'.repeat(500)],
  ['prose', 'The quick brown fox jumps over the lazy dog. '.repeat(20).concat('\n').repeat(200)],
  ['data of another kind', '{ "a": [1, 2, { "b": null }] },\n'.repeat(1000)],
  ['a table', '1,2,3;4\t5 | "6"\n'.repeat(1000)],
  ['one line of ten million characters', `name = "${'x'.repeat(10_000_000)}"`],
  ['ten million characters in lines', settings.join('')],
  ['thousands of unknown names', Array.from({ length: 3000 }, (_, index) => `wobble${index} = 1`).join('\n')],
  ['thousands of sections', Array.from({ length: 5000 }, (_, index) => `[gyro.x${index}`).join('\n')],
  [
    'thousands of constants on each other',
    Array.from({ length: 3000 }, (_, index) => `let a${index} = a${index - 1} + a${index - 2}`).join('\n'),
  ],
  ['thousands of times the same', 'mass = 1 g # accept line/set-twice: no\n'.repeat(2000)],
  [
    'dozens of packs',
    Array.from(
      { length: 40 },
      (_, index) => `[pack.p${index}]\ncells = ${index}\n[gyro @ p${index}]\nrate = 1 kHz`,
    ).join('\n'),
  ],
  ['a path of thousands of words', `[${'a.'.repeat(20_000)}a]\n${'gyro.'.repeat(20_000)}rate = 1\n`],
];

describe('no script is too odd', () => {
  for (const [what, text] of texts) {
    it(`${what} is checked (F03, F06, F08)`, async () => void (await isHeld(text)));
  }

  it('any characters whatever are checked', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.string({ unit: 'binary', maxLength: 200 }),
        async (text) => void (await isHeld(text)),
      ),
    );
  });

  it('bytes of any kind, in the script and in what it includes, are checked', async () => {
    const bytes = fc.uint8Array({ maxLength: 200 }).map((list) => Buffer.from(list).toString('latin1'));
    await fc.assert(
      fc.asyncProperty(bytes, bytes, async (text, included) => {
        await isHeld(`include "a.craft"\n${text}`, { 'a.craft': included });
      }),
    );
  });

  it('every half-written state of a script is checked', async () => {
    const text =
      'include "a.craft"\nlet q = 2 * min(90 Hz, r)\n[pack.s]\ncells = 6\n[gyro.filter.1 @ s]\ncutoff = q # accept a/b: c\n[stick.roll]\ncurve = 0 % -> 0 deg/s, 100 % -> 9 deg/s\n';
    for (let end = 0; end <= text.length; end += 1)
      await isHeld(text.slice(0, end), { 'a.craft': 'let r = 1 kHz\n' });
  });

  it('leaves the objects of the process as they were (F04)', async () => {
    await isHeld(
      '[__proto__]\npolluted = 1\na.__proto__.x = 1\nlet __proto__ = 2\n[pack.__proto__]\ncells = 4\n# accept __proto__/a: b\n',
    );
    assert.equal(({} as Record<string, unknown>).polluted, undefined);
    assert.equal(({} as Record<string, unknown>).x, undefined);
    assert.equal(({} as Record<string, unknown>).cells, undefined);
  });
});
