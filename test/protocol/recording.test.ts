import assert from 'node:assert/strict';
import { writeFileSync } from 'node:fs';
import { CancellationTokenSource, LSPErrorCodes, ResponseError } from 'vscode-languageserver-protocol/node';
import { URI } from 'vscode-uri';
import {
  bytesOf,
  charactersOf,
  confirmColumnsRequest,
  grownRequest,
  type PieceAnswer,
  readPieceRequest,
  recordedFlightsRequest,
  recordingRequest,
  useMeasuredRequest,
} from '../../server/src/lsp/recording-protocol';
import { type Scratch, withScratch } from '../support/scratch';
import { ownClient, type TestServer, withServer } from '../support/server';
import { simulatedFile } from '../support/simulated-file';

const script = `[craft]
name = "Plover"
[flight.dusk]
date = 2026-06-12
recording = "flights/dusk.csv"
`;
const flown = simulatedFile({ tone: 180 });
const asked = { script: null, flight: 1, layout: null, confirmsAnew: false };

/** A workspace with a script and the recording that it names. */
async function withFlight(test: (server: TestServer, scratch: Scratch) => Promise<void>): Promise<void> {
  await withScratch({ 'plover.craft': script, 'flights/dusk.csv': '' }, async (scratch) => {
    writeFileSync(scratch.file('flights/dusk.csv'), flown);
    const folder = URI.file(scratch.path).toString();
    await withServer({ capabilities: ownClient, folders: [folder] }, (server) => test(server, scratch));
  });
}

/** What a pilot says who takes everything as it is proposed. */
async function confirmed(server: TestServer, uri: string): Promise<string> {
  const answer = await server.connection.sendRequest(recordingRequest, { ...asked, uri });
  assert.ok(answer.kind === 'columns');
  const layout = JSON.stringify({ version: 1, columns: answer.columns.map(({ means }) => means) });
  const said = await server.connection.sendRequest(confirmColumnsRequest, { uri, layout });
  assert.ok(said.kind === 'confirmed', JSON.stringify(said));
  return said.text;
}

describe('a recording over the protocol', () => {
  it('asks what its columns hold, each with why, and is told by what was confirmed', () =>
    withFlight(async (server, scratch) => {
      const uri = URI.file(scratch.file('flights/dusk.csv')).toString();
      const first = await server.connection.sendRequest(recordingRequest, { ...asked, uri });
      assert.ok(first.kind === 'columns');
      assert.equal(first.kept, null);
      const roll = first.columns.find(({ means }) => means.channel === 'gyro.roll');
      assert.match(roll?.why ?? '', /heading says gyro/);
      assert.ok(first.choices.some(({ channel }) => channel === 'motor.4'));
      const layout = await confirmed(server, uri);
      const told = await server.connection.sendRequest(recordingRequest, { ...asked, uri, layout });
      assert.ok(told.kind === 'told');
      assert.equal(told.report.name, 'dusk.csv');
      assert.equal(told.report.isSimulated, true);
      const [axis] = told.report.noise.told ?? [];
      assert.ok(axis?.peaks.some(({ frequency }) => Math.abs(frequency.likely - 180) < 2));
    }));

  it('knows the logger again by what is kept, and can be looked through once more', () =>
    withFlight(async (server, scratch) => {
      const uri = URI.file(scratch.file('flights/dusk.csv')).toString();
      scratch.write('recordings/tern.json', await confirmed(server, uri));
      scratch.write('recordings/broken.json', '{}');
      const told = await server.connection.sendRequest(recordingRequest, { ...asked, uri });
      assert.ok(told.kind === 'told');
      assert.match(told.report.leftOut[0] ?? '', /^recordings\/broken\.json is no layout of a recording/);
      const again = await server.connection.sendRequest(recordingRequest, {
        ...asked,
        uri,
        confirmsAnew: true,
      });
      assert.ok(again.kind === 'columns');
      assert.equal(again.kept, 'tern');
      assert.ok(again.columns.some(({ means }) => means.channel === 'voltage'));
    }));

  it('is told for the script that names it, with the filters of that one', () =>
    withFlight(async (server, scratch) => {
      const uri = URI.file(scratch.file('flights/dusk.csv')).toString();
      const flights = await server.connection.sendRequest(recordedFlightsRequest, {
        recording: uri,
        script: null,
      });
      assert.deepEqual(
        flights.map(({ flight, date, path }) => [flight, date, path]),
        [['dusk', '2026-06-12', 'flights/dusk.csv']],
      );
      const racer = `${script}[gyro]\nrate = 6.4 kHz\n[gyro.filter.1]\nkind = butterworth\ncutoff = 90 Hz\n`;
      const [named] = flights;
      assert.ok(named !== undefined);
      await server.open(named.script, racer);
      const layout = await confirmed(server, uri);
      const one = { ...asked, uri, layout, script: named.script };
      const told = await server.connection.sendRequest(recordingRequest, one);
      assert.ok(told.kind === 'told' && told.filters !== null);
      const bare = await server.connection.sendRequest(recordingRequest, { ...one, script: null });
      assert.ok(bare.kind === 'told' && bare.filters === null);
    }));

  it('says in a sentence why nothing can be told', () =>
    withFlight(async (server, scratch) => {
      const why = async (name: string, layout: string | null = null) => {
        const uri = URI.file(scratch.file(name)).toString();
        const answer = await server.connection.sendRequest(recordingRequest, { ...asked, uri, layout });
        return answer.kind === 'refused' ? answer.message : answer.kind;
      };
      scratch.write('empty.csv', '');
      scratch.write('head.csv', 'time [s],gyro roll [deg/s]\n');
      assert.match(await why('empty.csv'), /^The file is empty/);
      assert.match(await why('head.csv'), /no rows/);
      assert.match(await why('gone.csv'), /^There is no file gone\.csv there any more\.$/);
      assert.match(await why('flights'), /^flights could not be read: it is a folder\.$/);
      assert.match(await why('flights/dusk.csv', '{}'), /can’t be kept: line 1/);
      const timeless = JSON.stringify({
        version: 1,
        columns: [{ heading: 'gyro roll [deg/s]', channel: 'gyro.roll', unit: 'deg/s' }],
      });
      const uri = URI.file(scratch.file('flights/dusk.csv')).toString();
      const said = await server.connection.sendRequest(confirmColumnsRequest, { uri, layout: timeless });
      assert.ok(said.kind === 'refused');
      assert.match(said.message, /^No column is known to hold the time/);
    }));

  it('lets others in between, and ends when it is cancelled', () =>
    withFlight(async (server, scratch) => {
      const { connection } = server;
      const uri = URI.file(scratch.file('flights/dusk.csv')).toString();
      const layout = await confirmed(server, uri);
      const order: string[] = [];
      const done = connection
        .sendRequest(recordingRequest, { ...asked, uri, layout })
        .then(() => order.push('recording'));
      await connection.sendRequest(recordedFlightsRequest, { recording: null, script: null });
      order.push('flights');
      await done;
      assert.deepEqual(order, ['flights', 'recording']);
      const left = new CancellationTokenSource();
      const unwanted = connection.sendRequest(recordingRequest, { ...asked, uri, layout }, left.token);
      left.cancel();
      await assert.rejects(
        unwanted,
        (error) => error instanceof ResponseError && error.code === LSPErrorCodes.RequestCancelled,
      );
    }));

  it('of several flights is told of each by itself, of the longest where nobody says which, and refuses one that there is not', () =>
    withFlight(async (server, scratch) => {
      writeFileSync(
        scratch.file('flights/dusk.csv'),
        Buffer.concat([flown, simulatedFile({ tone: 240, seconds: 16 })]),
      );
      const uri = URI.file(scratch.file('flights/dusk.csv')).toString();
      const layout = await confirmed(server, uri);
      const loudest = async (flight: number | null) => {
        const told = await server.connection.sendRequest(recordingRequest, { ...asked, uri, layout, flight });
        assert.ok(told.kind === 'told', JSON.stringify(told));
        assert.deepEqual([told.report.flight, told.report.flights], [flight ?? 2, 2]);
        const peaks = told.report.noise.told?.find(({ axis }) => axis === 'roll')?.peaks ?? [];
        return [...peaks].sort((one, other) => other.aboveFloor.likely - one.aboveFloor.likely)[0]?.frequency
          .likely;
      };
      assert.deepEqual(
        [await loudest(1), await loudest(null)].map((one) => Math.round((one ?? 0) / 5) * 5),
        [180, 240],
      );
      const third = await server.connection.sendRequest(recordingRequest, {
        ...asked,
        uri,
        layout,
        flight: 3,
      });
      assert.ok(third.kind === 'refused', JSON.stringify(third).slice(0, 300));
    }));

  it('names itself in what is proposed for its flight, where no flight names it yet', () =>
    withFlight(async (server, scratch) => {
      const uri = URI.file(scratch.file('flights/dusk.csv')).toString();
      const plover = URI.file(scratch.file('plover.craft')).toString();
      const layout = await confirmed(server, uri);
      const proposed = async (text: string) => {
        await server.open(plover, text);
        const one = { ...asked, uri, layout, script: plover };
        const told = await server.connection.sendRequest(recordingRequest, one);
        assert.ok(told.kind === 'told');
        const hover = told.report.proposals.find(({ title }) => /hover-throttle/.test(title));
        return (hover ?? assert.fail('nothing about the hover')).sets.map(
          ({ path, value }) => `${path} = ${value}`,
        );
      };
      assert.equal(
        (await proposed('[craft]\nname = "Plover"\n'))[0],
        'flight.dusk.recording = "flights/dusk.csv"',
      );
    }));

  it('has grown from one flight to the next only where the spans don’t overlap', () =>
    withServer({ capabilities: ownClient }, async ({ connection }) => {
      const flight = (name: string, likely: number) => ({
        name,
        rate: 500,
        axes: [
          { axis: 'roll' as const, shaking: { likely, low: likely - 1, high: likely + 1, unit: 'deg/s' } },
        ],
      });
      const flights = [flight('a.csv', 4), flight('b.csv', 5), flight('c.csv', 9)];
      const grown = await connection.sendRequest(grownRequest, { flights });
      assert.deepEqual(
        grown.map(({ id }) => id),
        ['shake/grown'],
      );
      assert.match(grown[0]?.sentence ?? '', /b\.csv/);
    }));

  it('is written into the script as edits for its version, with the source', () =>
    withFlight(async (server, scratch) => {
      const uri = URI.file(scratch.file('plover.craft')).toString();
      await server.open(uri, script, 5);
      const comment = 'measured in flights/dusk.csv';
      const sets = [{ path: 'flight.dusk.hover-throttle', value: '38 %', comment }];
      const about = { textDocument: { uri } };
      const written = await server.connection.sendRequest(useMeasuredRequest, { ...about, sets });
      assert.equal(written?.version, 5);
      assert.deepEqual(
        written?.edits.map(({ newText }) => newText),
        [`\nhover-throttle = 38 %  # ${comment}`],
      );
    }));
});

describe('a recording that is not on this machine', () => {
  const uri = 'shelf://host/work/dusk.csv';

  /** The editor's file system, with how often it was asked. */
  function shelf(server: TestServer, answer: (from: number, length: number) => PieceAnswer): number[] {
    const from: number[] = [];
    server.connection.onRequest(readPieceRequest, (piece) => {
      from.push(piece.from);
      return answer(piece.from, piece.length);
    });
    return from;
  }

  it('is handed over by the editor piece by piece, byte for byte', () =>
    withServer({ capabilities: ownClient, folders: ['shelf://host/work'] }, async (server) => {
      const from = shelf(server, (at, length) => ({
        kind: 'piece',
        bytes: charactersOf(flown.subarray(at, at + length)),
        size: flown.length,
      }));
      const layout = await confirmed(server, uri);
      const told = await server.connection.sendRequest(recordingRequest, { ...asked, uri, layout });
      assert.ok(told.kind === 'told');
      assert.ok(
        from.some((at) => at > 0),
        `asked at ${from.join(', ')}`,
      );
    }));

  it('is told of where it is too long there, or changes meanwhile', () =>
    withServer({ capabilities: ownClient, folders: ['shelf://host/work'] }, async (server) => {
      let grown = 0;
      let state: 'long' | 'changing' = 'long';
      shelf(server, (at, length) =>
        state === 'long'
          ? { kind: 'unreadable', why: 'it has 130 MB' }
          : {
              kind: 'piece',
              bytes: charactersOf(flown.subarray(at, at + length)),
              size: flown.length + grown++,
            },
      );
      const why = async () => {
        const answer = await server.connection.sendRequest(recordingRequest, { ...asked, uri });
        return answer.kind === 'refused' ? answer.message : answer.kind;
      };
      assert.equal(await why(), 'dusk.csv could not be read: it has 130 MB.');
      state = 'changing';
      assert.equal(await why(), 'dusk.csv could not be read: it was changed while it was read.');
    }));

  it('keeps every byte on its way', () => {
    const all = Uint8Array.from({ length: 10_000 }, (_, at) => at % 256);
    assert.deepEqual(bytesOf(charactersOf(all)), all);
  });
});
