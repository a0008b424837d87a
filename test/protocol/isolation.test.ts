import assert from 'node:assert/strict';
import { execFile } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { CompletionRequest, HoverRequest } from 'vscode-languageserver-protocol/node';
import { boardTextRequest, readRequest } from '../../server/src/lsp/board-protocol';
import { benchCardRequest } from '../../server/src/lsp/flight-protocol';
import { meaningsRequest, sayMeaningsRequest } from '../../server/src/lsp/learn-protocol';
import { sheetRequest } from '../../server/src/lsp/protocol';
import { built } from '../support/built';
import { buzzer, textOf } from '../support/buzzer';
import { listings } from '../support/listings';
import { withScratch } from '../support/scratch';
import { withOwnServer } from '../support/server';

const watchman = join(__dirname, '../support/watchman.cjs');
const barring = ['--disallow-code-generation-from-strings', '--require', watchman];
const demo = (name: string) => readFileSync(join(__dirname, '../demo', name), 'utf8');
const files = {
  'sandmartin.craft': demo('sandmartin.craft'),
  'club-habits.craft': demo('club-habits.craft'),
  'boards/finch.jsonc': demo('boards/finch.jsonc').replace(
    '"$schema": "../../../schemas/board.schema.json",',
    '',
  ),
  'propsoff/buzzer.json': textOf(buzzer),
};

function reached(errors: string): readonly string[] {
  assert.match(errors, /the watchman stands/);
  return errors.split('\n').filter((line) => line.startsWith('reached:'));
}

describe('a program of ours', () => {
  it('opens no socket, starts no program, runs no text and writes no file while it serves an editor', () =>
    withScratch(files, (scratch) =>
      withOwnServer({ folders: [scratch.uri], nodeArguments: barring }, async (server) => {
        const uri = scratch.uriOf('sandmartin.craft');
        const about = { textDocument: { uri } };
        const { connection } = server;
        await server.open(uri, files['sandmartin.craft']);
        await server.pushedFor(uri, 1);
        const position = { line: 12, character: 4 };
        await connection.sendRequest(HoverRequest.type, { ...about, position });
        await connection.sendRequest(CompletionRequest.type, { ...about, position });
        assert.ok(await connection.sendRequest(sheetRequest, about));
        assert.ok(await connection.sendRequest(benchCardRequest, about));
        const wanted = { board: null, since: null, reason: 'a test', isPreview: true };
        const text = await connection.sendRequest(boardTextRequest, { ...about, ...wanted });
        assert.equal(text?.kind, 'text');
        await connection.sendRequest(readRequest, {
          uri: null,
          capture: text?.kind === 'text' ? text.pieces.join('') : '',
          board: null,
        });
        const [listing] = listings(20, false);
        const capture = listing?.text ?? '';
        const of = { text: capture, fileName: 'kestrel.txt', uri: null, board: null, profile: null };
        const meanings = await connection.sendRequest(meaningsRequest, { of });
        assert.equal(meanings.kind, 'meanings');
        const said = meanings.kind === 'meanings' ? meanings.rows.map(({ key }) => ({ key, row: '{}' })) : [];
        const answer = await connection.sendRequest(sayMeaningsRequest, { of, said, portRoles: null });
        assert.equal(answer.kind, 'said');
        assert.equal(await server.shutDown(), 0);
        assert.deepEqual(reached(Buffer.concat(server.errors).toString('utf8')), []);
        assert.deepEqual(server.log, []);
      }),
    ));

  it('does none of it on the command line either', () =>
    withScratch(files, async (scratch) => {
      const run = promisify(execFile);
      const given = [...barring, built('propsoff.js'), 'check', scratch.path];
      const { stderr, stdout } = await run(process.execPath, given).catch((error: unknown) => {
        // Findings are told by an exit code.
        const told = error as { stderr?: string; stdout?: string; code?: unknown };
        assert.equal(told.code, 1);
        return { stderr: told.stderr ?? '', stdout: told.stdout ?? '' };
      });
      assert.deepEqual(reached(stderr), []);
      assert.match(stdout, /sandmartin\.craft/);
    }));

  it('would be seen if it did', async () => {
    const run = promisify(execFile);
    const ways =
      "for (const way of [() => require('net').connect(1), () => require('child_process').spawn('x'), () => eval('1'), () => new Function('1'), () => require('fs').writeFileSync('x', '')]) try { way() } catch {}";
    const { stderr } = await run(process.execPath, ['--require', watchman, '-e', ways]);
    assert.equal(reached(stderr).length, 5);
  });

  it('asks Node for nothing but what it needs', () => {
    const needs = (...names: readonly string[]) =>
      [...new Set(names.flatMap((name) => neededBy(readFileSync(built(name), 'utf8'))))].sort();
    // Either has parts that it loads on demand.
    const folder = readdirSync(dirname(built('server.js')));
    const partsOf = (program: string) =>
      folder.filter((name) => name.startsWith(program) && name.endsWith('.js'));
    assert.ok(partsOf('server').length > 1 && partsOf('propsoff').length > 1);
    // Patterns and watching need more of the disk, and none of the network.
    assert.deepEqual(needs(...partsOf('propsoff')), [
      'events',
      'fs',
      'fs/promises',
      'module',
      'os',
      'path',
      'stream',
      'url',
      'util',
      // For one flag: how soon code is compiled for speed.
      'v8',
    ]);
    // The library of the protocol can also serve over a socket and start a server: ours is never told to.
    assert.deepEqual(needs(...partsOf('server')), [
      'child_process',
      'crypto',
      'fs',
      'fs/promises',
      'net',
      'os',
      'path',
      'url',
      'util',
      'v8',
    ]);
  });
});

/** The modules of Node's that a bundle asks for, by whatever name the bundler gave to `require`. */
function neededBy(text: string): readonly string[] {
  // A function's, whatever it is called by then; no method of something else.
  const asked = [...text.matchAll(/(?:(?<![.\w$])[\w$]+|\))\("(?:node:)?([a-z0-9_/]+)"\)/g)].map(
    ([, name]) => name ?? '',
  );
  return asked.filter((name) => builtinModules.includes(name));
}
