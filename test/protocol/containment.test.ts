import assert from 'node:assert/strict';
import { symlinkSync } from 'node:fs';
import { HoverRequest } from 'vscode-languageserver-protocol/node';
import { buzzer, textOf } from '../support/buzzer';
import { type Scratch, withScratch } from '../support/scratch';
import { type TestServer, withServer } from '../support/server';
import { shown } from '../support/shown';

const secret = 'let quiet = 90 Hz\n';
const uses = '[gyro.filter.1]\ncutoff = quiet\n';

interface Here {
  readonly server: TestServer;
  readonly scratch: Scratch;
  readonly outside: Scratch;
}

/** A workspace with a script, and a folder beside it that is none of its business. */
function besideSecrets(hasFolder: boolean, run: (here: Here) => Promise<void>) {
  return () =>
    withScratch({ 'secret.craft': secret, 'buzzer.json': textOf(buzzer) }, (outside) =>
      withScratch({ 'inner/kept.craft': '# here\n' }, (scratch) =>
        withServer({ folders: hasFolder ? [scratch.uri] : [] }, (server) =>
          run({ server, scratch, outside }),
        ),
      ),
    );
}

async function refused(server: TestServer, uri: string): Promise<readonly string[]> {
  const isDone = (ids: readonly string[]) => ids.some((id) => id.endsWith('line/include-refused'));
  const { diagnostics } = await server.pushed(uri, (one) => isDone(shown(one.diagnostics)));
  return diagnostics
    .filter(({ code }) => code === 'line/include-refused')
    .map(({ message }) => (typeof message === 'string' ? message : message.value));
}

describe('what lies outside the workspace', () => {
  const ways = [
    '../secret.craft',
    'inner/../../secret.craft',
    '%2e%2e/secret.craft',
    '/etc/hostname',
    'file:///etc/hostname',
    'https://nowhere.example/secret.craft',
    'inner/../../../../../../../../etc/hostname',
  ];
  for (const way of ways) {
    it(
      `is not included by ${way}`,
      besideSecrets(true, async ({ server, scratch }) => {
        const main = scratch.uriOf('main.craft');
        await server.open(main, `include "${way}"\n${uses}`);
        const { diagnostics } = await server.pushed(main, (one) =>
          shown(one.diagnostics).some((line) => line.startsWith('0:')),
        );
        assert.match(shown(diagnostics)[0] ?? '', /line\/include-(refused|missing)/);
        const hover = await server.connection.sendRequest(HoverRequest.type, {
          textDocument: { uri: main },
          position: { line: 2, character: 10 },
        });
        assert.ok(!JSON.stringify(hover).includes('90 Hz'), 'what it says is shown');
      }),
    );
  }

  for (const hasFolder of [true, false]) {
    it(
      `is not included through a link, ${hasFolder ? 'in a workspace' : 'for a script that is open alone'}`,
      besideSecrets(hasFolder, async ({ server, scratch, outside }) => {
        symlinkSync(outside.file('secret.craft'), scratch.file('inner/link.craft'));
        symlinkSync(outside.path, scratch.file('inner/folder'));
        const main = scratch.uriOf('inner/main.craft');
        await server.open(
          main,
          `include "link.craft"\ninclude "folder/secret.craft"\ninclude "kept.craft"\n${uses}`,
        );
        await server.pushed(main, ({ diagnostics }) =>
          ['0:8-20 line/include-refused', '1:8-29 line/include-refused'].every((line) =>
            shown(diagnostics).includes(line),
          ),
        );
        for (const message of await refused(server, main))
          assert.match(message, /leads out of the workspace/);
      }),
    );
  }

  it('is not what a link inside the workspace leads to: that is one script, told at the name that is open (E03)', () =>
    withScratch({ 'a/base.craft': secret, 'a/main.craft': `include "base.craft"\n${uses}` }, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        symlinkSync(scratch.file('a'), scratch.file('b'));
        const [one, other] = [scratch.uriOf('a/main.craft'), scratch.uriOf('b/main.craft')];
        const text = `include "base.craft"\n${uses}wobble = 1\n`;
        for (const uri of [one, other]) await server.open(uri, text);
        for (const uri of [one, other]) {
          const found = await server.pushed(uri, ({ diagnostics }) => diagnostics.length === 1);
          assert.deepEqual(shown(found.diagnostics), ['3:0-6 line/unknown-name']);
        }
      }),
    ));

  it('adds nothing to the catalogue through a link, and each link is told', () =>
    withScratch({ 'buzzer.json': textOf(buzzer) }, (outside) =>
      withScratch({ 'boards/x': '' }, async (scratch) => {
        symlinkSync(outside.path, scratch.file('propsoff'));
        symlinkSync(outside.file('buzzer.json'), scratch.file('boards/kestrel.json'));
        await withServer({ folders: [scratch.uri] }, async (server) => {
          // Of a board no more than its name is looked at until a script names it.
          await server.open(scratch.uriOf('other.craft'), 'board.profile = kestrel\n');
          for (const name of ['propsoff/buzzer.json', 'boards/kestrel.json']) {
            const { diagnostics } = await server.pushed(
              scratch.uriOf(name),
              (one) => one.diagnostics.length > 0,
            );
            assert.deepEqual(
              diagnostics.map(({ code }) => code),
              ['addition/unreadable'],
            );
          }
          const main = scratch.uriOf('main.craft');
          await server.open(main, '[buzzer]\ntune = 3.5 kHz\n');
          assert.deepEqual(shown((await server.pushedFor(main, 1)).diagnostics), [
            '0:1-7 line/unknown-section',
          ]);
        });
      }),
    ));
});
