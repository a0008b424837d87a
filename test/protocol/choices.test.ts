import assert from 'node:assert/strict';
import { FileChangeType } from 'vscode-languageserver-protocol/node';
import { propsoff } from '../support/command-line';
import { type Scratch, withScratch } from '../support/scratch';
import { ableClient, withServer } from '../support/server';
import { shown } from '../support/shown';

/** A risk, and with a notch as narrow as that a note. */
const risky = '[gyro.filter.1]\nkind = butterworth\ncutoff = 3 kHz\n';
const narrow = '[gyro.filter.1]\nkind = notch\ncentre = 200 Hz\nwidth = 2 Hz\n';
const note = 'tune/notch-narrow';

function checked(scratch: Scratch, ...args: readonly string[]) {
  const { status, stdout, stderr } = propsoff(['check', ...args], { cwd: scratch.path });
  const found = stdout.split('\n').flatMap((line) => /^(\S+:\d+):\d+ (\S+ \S+)/.exec(line)?.slice(1) ?? []);
  return { status, stdout, stderr, found };
}

function choosing(choices: object): string {
  return `// As our club flies.\n${JSON.stringify(choices, null, 2)}\n`;
}

describe('what a folder chooses about checking, on the command line', () => {
  it('switches a note off, or makes a risk of it', () =>
    withScratch({ 'a.craft': narrow }, async (scratch) => {
      const levels = () => checked(scratch).found.filter((text) => text.includes(note));
      assert.deepEqual(levels(), [`note ${note}`]);
      scratch.write('propsoff.json', choosing({ levels: { [note]: 'risk' } }));
      assert.deepEqual(levels(), [`risk ${note}`]);
      scratch.write('propsoff.json', choosing({ levels: { [note]: 'off' } }));
      assert.deepEqual(levels(), []);
    }));

  it('says from which level on a check fails, where nobody says otherwise', () =>
    withScratch({ 'a.craft': risky, 'propsoff.json': choosing({ failOn: 'risk' }) }, async (scratch) => {
      assert.equal(checked(scratch).status, 1);
      assert.equal(checked(scratch, '--fail-on', 'must-fix').status, 0);
    }));

  it('says what is checked and what is left out, which is told; what is named is checked', () => {
    const files = {
      'race/a.craft': risky,
      'old/b.craft': risky,
      'race/old/c.craft': risky,
      'notes/d.craft': risky,
      'propsoff.json': choosing({ check: ['race', 'old'], leaveOut: ['old/**'] }),
    };
    return withScratch(files, async (scratch) => {
      const places = (...args: readonly string[]) =>
        checked(scratch, ...args).found.filter((text) => text.includes('.craft:'));
      assert.deepEqual(places(), ['race/a.craft:3', 'race/old/c.craft:3']);
      assert.match(
        checked(scratch).stderr,
        /^propsoff: 1 of the files here are left out, as propsoff\.json says$/m,
      );
      assert.deepEqual(places('old/b.craft'), ['old/b.craft:3']);
      assert.deepEqual(places('notes'), ['notes/d.craft:3']);
    });
  });

  for (const [what, choices, marked, told] of [
    [
      'a must-fix switched off',
      { levels: { 'wire/port-shared': 'off' } },
      '"off"',
      /is a must-fix, and stays one/,
    ],
    [
      'a must-fix as a risk',
      { levels: { 'wire/port-shared': 'risk' } },
      '"risk"',
      /is a must-fix, and stays one/,
    ],
    ['a risk as a note', { levels: { 'line/outside-usual': 'note' } }, '"note"', /accepted on its line/],
    [
      'a check that there is not',
      { levels: { 'tune/notch-narow': 'off' } },
      '"off"',
      /did you mean tune\/notch-narrow/,
    ],
    [
      'a check that never fails',
      { failOn: 'never' },
      '"never"',
      /FailOn is one of: must-fix, risk, note, tidy/,
    ],
    ['another name', { fails: 'risk' }, '"fails"', /"fails" is not known here/],
  ] as const) {
    it(`refuses ${what} at its place, and what it would choose is not in use`, () =>
      withScratch({ 'a.craft': risky, 'propsoff.json': choosing(choices) }, async (scratch) => {
        const { status, stdout, found } = checked(scratch);
        assert.equal(status, 1);
        assert.match(stdout, told);
        const [, line = '', mark = ''] = stdout.split('\n');
        assert.equal(line.slice(mark.indexOf('^'), mark.lastIndexOf('^') + 1), marked);
        assert.ok(found.includes('risk line/outside-usual'));
      }));
  }
});

describe('what a folder chooses about checking, in an editor', () => {
  it('counts as it is typed, and as it changes on the disk', () =>
    withScratch({}, (scratch) =>
      withServer({ folders: [scratch.uri], capabilities: ableClient }, async (server) => {
        const [script, choices] = [scratch.uriOf('a.craft'), scratch.uriOf('propsoff.json')];
        const severity = (wanted: number | undefined) =>
          server.pushed(
            script,
            ({ diagnostics }) => diagnostics.find(({ code }) => code === note)?.severity === wanted,
          );
        await server.open(script, narrow);
        await severity(3);
        scratch.write('propsoff.json', choosing({ levels: { [note]: 'risk' } }));
        await server.filesChanged({ uri: choices, type: FileChangeType.Created });
        await severity(2);
        await server.open(choices, choosing({ levels: { [note]: 'off' } }));
        await severity(undefined);
        await server.change(choices, 2, { text: choosing({ levels: { 'wire/port-shared': 'off' } }) });
        const { diagnostics } = await server.pushed(choices, ({ diagnostics: all }) => all.length > 0);
        assert.deepEqual(shown(diagnostics), ['3:24-29 addition/value']);
      }),
    ));
});
