import assert from 'node:assert/strict';
import { rmSync, symlinkSync } from 'node:fs';
import {
  type Diagnostic,
  DidChangeWorkspaceFoldersNotification,
  DidDeleteFilesNotification,
  DidRenameFilesNotification,
  FileChangeType,
} from 'vscode-languageserver-protocol/node';
import { type Scratch, withScratch } from '../support/scratch';
import { type TestServer, withOwnServer, withServer } from '../support/server';
import { shown } from '../support/shown';

type Files = Readonly<Record<string, string>>;

/** A server on a folder with files in it. */
function inFolder(files: Files, run: (here: { server: TestServer; scratch: Scratch }) => Promise<void>) {
  return () =>
    withScratch(files, (scratch) =>
      withServer({ folders: [scratch.uri] }, (server) => run({ server, scratch })),
    );
}

/** Waits until a script has just these findings. */
async function until(server: TestServer, uri: string, ...wanted: string[]): Promise<readonly Diagnostic[]> {
  const isThere = ({ diagnostics }: { diagnostics: Diagnostic[] }) =>
    JSON.stringify(shown(diagnostics)) === JSON.stringify(wanted);
  return (await server.pushed(uri, isThere)).diagnostics;
}

const includesBase = 'include "base.craft"\n';
const uses = `${includesBase}[gyro.filter.1]\ncutoff = 2 * quiet\n`;
const faultyBase = '0:8-20 line/include-faulty';
const missingBase = '0:8-20 line/include-missing';
const noQuiet = '2:13-18 line/unknown-constant';

describe('an included script on the disk', () => {
  it(
    'is looked for again as it appears, changes and goes, without a keystroke (E06)',
    inFolder({}, async ({ server, scratch }) => {
      const main = scratch.uriOf('main.craft');
      const base = scratch.uriOf('base.craft');
      await server.open(main, uses);
      await until(server, main, missingBase);
      scratch.write('base.craft', 'let quiet = 90 Hz\n');
      await server.filesChanged({ uri: base, type: FileChangeType.Created });
      await until(server, main);
      scratch.write('base.craft', 'let quiet = 90 Hz\nbadkey = 1\n');
      await server.filesChanged({ uri: base, type: FileChangeType.Changed });
      await until(server, main, faultyBase);
      scratch.write('base.craft', 'let quiet = 9000 Hz\n');
      await server.filesChanged({ uri: base, type: FileChangeType.Changed });
      await until(server, main, '2:9-18 line/outside-range');
      scratch.remove('base.craft');
      await server.filesChanged({ uri: base, type: FileChangeType.Deleted });
      await until(server, main, missingBase);
    }),
  );

  it(
    'counts for those that include it through another one',
    inFolder(
      { 'middle.craft': includesBase, 'base.craft': 'let quiet = 90 Hz\n' },
      async ({ server, scratch }) => {
        const main = scratch.uriOf('main.craft');
        await server.open(main, 'include "middle.craft"\n[gyro.filter.1]\ncutoff = 2 * quiet\n');
        await until(server, main);
        scratch.write('base.craft', '# nothing\n');
        await server.filesChanged({ uri: scratch.uriOf('base.craft'), type: FileChangeType.Changed });
        await until(server, main, noQuiet);
      },
    ),
  );

  it(
    'does not count while it is open in the editor, and counts again after that',
    inFolder({ 'base.craft': 'let quiet = 90 Hz\n' }, async ({ server, scratch }) => {
      const main = scratch.uriOf('main.craft');
      const base = scratch.uriOf('base.craft');
      await server.open(main, uses);
      await until(server, main);
      await server.open(base, '# not saved yet\n');
      await until(server, main, noQuiet);
      scratch.write('base.craft', 'badkey = 1\n');
      await server.filesChanged({ uri: base, type: FileChangeType.Changed });
      await server.change(base, 2, { text: 'let quiet = 9000 Hz\n' });
      await until(server, main, '2:9-18 line/outside-range');
      assert.ok(
        server.published.every(({ diagnostics }) => !shown(diagnostics).includes(faultyBase)),
        'what is on the disk was never believed',
      );
      await server.close(base);
      await until(server, main, faultyBase, noQuiet);
    }),
  );

  it(
    'is looked for again when its whole folder is renamed or deleted',
    inFolder({ 'parts/base.craft': 'let quiet = 90 Hz\n' }, async ({ server, scratch }) => {
      const main = scratch.uriOf('main.craft');
      await server.open(main, uses.replace('base', 'parts/base'));
      await until(server, main);
      scratch.remove('parts');
      await server.connection.sendNotification(DidDeleteFilesNotification.type, {
        files: [{ uri: scratch.uriOf('parts') }],
      });
      await until(server, main, '0:8-26 line/include-missing');
      scratch.write('parts/base.craft', 'let quiet = 80 Hz\n');
      await server.connection.sendNotification(DidRenameFilesNotification.type, {
        files: [{ oldUri: scratch.uriOf('old'), newUri: scratch.uriOf('parts') }],
      });
      await until(server, main);
    }),
  );

  it(
    'is refused where it leads out of the workspace, by its path or by a link',
    inFolder({ 'inner/base.craft': '# here\n' }, async ({ server, scratch }) => {
      await withScratch({ 'secret.craft': 'let quiet = 90 Hz\n' }, async (outside) => {
        symlinkSync(outside.path, scratch.file('linked'));
        const main = scratch.uriOf('main.craft');
        await server.open(main, 'include "../elsewhere.craft"\ninclude "linked/secret.craft"\n');
        const findings = await until(
          server,
          main,
          '0:8-28 line/include-refused',
          '1:8-29 line/include-refused',
        );
        assert.match(String(findings[1]?.message), /leads out of the workspace/);
        rmSync(scratch.file('linked'));
      });
    }),
  );

  it(
    'is refused where it is no text or a folder',
    inFolder({ 'base.craft': 'a\u0000b', 'folder.craft/x': '' }, async ({ server, scratch }) => {
      const main = scratch.uriOf('main.craft');
      await server.open(main, 'include "base.craft"\ninclude "folder.craft"\n');
      const findings = await until(
        server,
        main,
        '0:8-20 line/include-refused',
        '1:8-22 line/include-refused',
      );
      assert.match(String(findings[0]?.message), /not a text/);
      assert.match(String(findings[1]?.message), /a folder/);
    }),
  );

  it('is decided anew when a folder is added to the workspace (E08)', () =>
    withScratch({ 'inner/main.craft': '', 'base.craft': 'let quiet = 90 Hz\n' }, (scratch) =>
      withOwnServer({ folders: [scratch.uriOf('inner')] }, async (server) => {
        const main = scratch.uriOf('inner/main.craft');
        await server.open(main, 'include "../base.craft"\n');
        await until(server, main, '0:8-23 line/include-refused');
        await server.connection.sendNotification(DidChangeWorkspaceFoldersNotification.type, {
          event: { added: [{ uri: scratch.uri, name: 'all' }], removed: [] },
        });
        await until(server, main);
      }),
    ));
});

describe('scripts that include each other', () => {
  it(
    'in a circle are told so at the line that closes it (E05)',
    inFolder(
      {
        'self.craft': 'include "self.craft"\n',
        'b.craft': 'include "a.craft"\n',
        'c.craft': 'include "d.craft"\n',
        'd.craft': 'include "c.craft"\n',
      },
      async ({ server, scratch }) => {
        const self = scratch.uriOf('self.craft');
        await server.open(self, 'include "self.craft"\n');
        const [circle] = await until(server, self, '0:8-20 line/include-circle');
        assert.match(String(circle?.message), /self\.craft → self\.craft/);
        const one = scratch.uriOf('a.craft');
        await server.open(one, 'include "b.craft"\n');
        await server.pushed(one, ({ version }) => version === 1);
        const other = scratch.uriOf('b.craft');
        await server.open(other, 'include "a.craft"\n');
        const [closing] = await until(server, other, '0:8-17 line/include-circle');
        assert.match(String(closing?.message), /b\.craft → a\.craft → b\.craft/);
      },
    ),
  );

  it(
    'by two ways are no circle',
    inFolder(
      {
        'b.craft': 'include "d.craft"\n',
        'c.craft': 'include "d.craft"\n',
        'd.craft': 'let quiet = 90 Hz\n',
      },
      async ({ server, scratch }) => {
        const main = scratch.uriOf('a.craft');
        await server.open(main, 'include "b.craft"\ninclude "c.craft"\ngyro.filter.1.cutoff = quiet\n');
        await until(server, main);
      },
    ),
  );

  const chain = Object.fromEntries(
    Array.from({ length: 500 }, (_, index) => [`c${index}.craft`, `include "c${index + 1}.craft"\n`]),
  );

  it(
    'in a chain of 500 end in a finding about depth (E05)',
    inFolder(chain, async ({ server, scratch }) => {
      const first = scratch.uriOf('c0.craft');
      await server.open(first, 'include "c1.craft"\n');
      await server.pushedFor(first, 1);
      const deep = scratch.uriOf('c16.craft');
      await server.open(deep, 'include "c17.craft"\n');
      await server.pushedFor(deep, 1);
      assert.deepEqual(server.log, []);
    }),
  );
});

describe('one file with two spellings of its URI', () => {
  const opened = 'file:///c%3A/cfg/base.craft';

  it('is one script, and is answered in the spelling in which it was opened (E02)', () =>
    withServer({ folders: ['file:///C%3A/cfg'] }, async (server) => {
      const main = 'file:///C:/cfg/main.craft';
      await server.open(opened, 'let quiet = 90 Hz\nbadkey = 1\n');
      await server.open(main, uses);
      const [faulty] = await until(server, main, faultyBase);
      assert.equal(faulty?.relatedInformation?.[0]?.location.uri, opened);
      await server.filesChanged({ uri: 'file:///C:/cfg/base.craft', type: FileChangeType.Changed });
      await server.change('file:///C:/cfg/base.craft', 2, { text: 'let quiet = 80 Hz\n' });
      await until(server, main);
      assert.deepEqual((await server.pushedFor(opened, 2)).diagnostics, []);
      await server.close('file:///c:/cfg/base.craft');
      await server.pushed(opened, ({ version }) => version === undefined);
      assert.deepEqual([...new Set(server.published.map(({ uri }) => uri))].sort(), [main, opened].sort());
    }));

  it('keeps the case of its path', () =>
    withServer({}, async (server) => {
      await server.open('file:///c:/cfg/Base.craft', 'badkey = 1\n');
      await server.open('file:///c:/cfg/main.craft', includesBase);
      await until(server, 'file:///c:/cfg/main.craft', missingBase);
    }));
});
