import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import {
  CancellationTokenSource,
  LSPErrorCodes,
  RequestType,
  WorkDoneProgress,
} from 'vscode-languageserver-protocol/node';
import { URI } from 'vscode-uri';
import type { AboutScript } from '../../server/src/lsp/own-message';
import type {
  ChannelsAnswer,
  ChannelsAsked,
  FindAnswer,
  ValuesAsked,
} from '../../server/src/lsp/values-protocol';
import { propsoff } from '../support/command-line';
import { withScratch } from '../support/scratch';
import { ownClient, withOwnServer, withServer } from '../support/server';

const find = new RequestType<AboutScript & ValuesAsked, FindAnswer | null, void>('propsoff/find');
const channels = new RequestType<AboutScript & ChannelsAsked, ChannelsAnswer | null, void>(
  'propsoff/channels',
);

const uri = 'file:///bench/hall.craft';
const text = readFileSync('test/demo/wagtail.craft', 'utf8').replace(/^include .*$/m, '');
const usual = { toneLeft: null, phaseMargin: null, gainMargin: null, minutes: null };
const asked: AboutScript & ValuesAsked = {
  textDocument: { uri },
  packs: [],
  holds: usual,
  moves: ['filters', 'notches'],
};

const flown = {
  'my.craft': readFileSync('test/demo/sandmartin.craft', 'utf8'),
  'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8'),
  'flights/before-the-rain.csv': readFileSync('test/demo/flights/before-the-rain.csv', 'utf8'),
};

describe('finding values over the protocol', () => {
  it('answers with three proposals for the version that it looked at, each with its edits', () =>
    withServer({ capabilities: ownClient }, async (server) => {
      await server.open(uri, text, 3);
      const answer = await server.connection.sendRequest(find, asked);
      assert.ok(answer?.kind === 'found');
      assert.equal(answer.version, 3);
      assert.deepEqual(
        answer.proposals.map(({ id }) => id),
        ['least-delay', 'middle', 'quietest'],
      );
      for (const { edits, settings, moved } of answer.proposals) {
        assert.ok(edits.length > 0 && settings.length > 0 && moved.length > 0);
        for (const { range } of edits)
          assert.match(text.split('\n')[range.start.line] ?? '', /^(?:cutoff|width) /);
      }
    }));

  it('says what of the wish can’t be read, by what it is', () =>
    withServer({ capabilities: ownClient }, async (server) => {
      await server.open(uri, text);
      const answer = await server.connection.sendRequest(find, {
        ...asked,
        holds: { ...usual, toneLeft: 'quiet', minutes: '3 s' },
      });
      assert.ok(answer?.kind === 'faults');
      assert.deepEqual(
        answer.faults.map(({ hold }) => hold),
        ['toneLeft', 'minutes'],
      );
    }));

  it('lets others in between, and ends when it is cancelled', () =>
    withServer({ capabilities: ownClient }, async (server) => {
      const { connection } = server;
      await server.open(uri, text);
      let isFound = false;
      const work = connection.sendRequest(find, asked).then(() => {
        isFound = true;
      });
      const between = await connection.sendRequest(channels, {
        textDocument: { uri },
        pilots: 2,
        keepsOthers: false,
      });
      assert.ok(between !== null && !isFound, 'answered while the other still looks');
      await work;
      const end = new CancellationTokenSource();
      const left = connection.sendRequest(find, asked, end.token);
      end.cancel();
      await assert.rejects(left, (error: { code?: number }) => error.code === LSPErrorCodes.RequestCancelled);
    }));

  it('gives nothing for a script that is not open', () =>
    withServer({ capabilities: ownClient }, async ({ connection }) => {
      assert.equal(await connection.sendRequest(find, asked), null);
    }));

  it('weighs by the noise of the last flight that names a recording, or says what keeps it from that', () =>
    withScratch(flown, async (scratch) => {
      const place = URI.file(scratch.file('my.craft')).toString();
      const folder = URI.file(scratch.path).toString();
      // In a server of its own: one that has read recordings before is through with this one before it tells of it.
      await withOwnServer({ capabilities: ownClient, folders: [folder] }, async (server) => {
        const steps: string[] = [];
        server.connection.onProgress(WorkDoneProgress.type, 'find', (step) => {
          if (step.kind === 'report') steps.push(step.message ?? '');
        });
        const said = async () => {
          steps.length = 0;
          const answer = await server.connection.sendRequest(find, {
            ...asked,
            textDocument: { uri: place },
            packs: ['sprint'],
            workDoneToken: 'find',
          });
          assert.ok(answer?.kind === 'found' && answer.proposals.length > 0);
          return answer;
        };
        await server.open(place, flown['my.craft']);
        assert.match((await said()).measured ?? '', /not confirmed yet\. Open Recording asks for it/);
        scratch.write('recordings/heron.json', readFileSync('test/demo/recordings/heron.json', 'utf8'));
        const answer = await said();
        assert.match(
          answer.measured ?? '',
          /^Weighed with the noise that before-the-rain\.csv \(simulated\) has .* to 200 Hz/,
        );
        for (const { readings } of answer.proposals)
          assert.deepEqual(
            readings[0]?.measured?.axes.map(({ axis }) => axis),
            ['roll', 'pitch', 'yaw'],
          );
        assert.match(
          answer.measured ?? '',
          / Margins are looked for with what before-the-rain\.csv shows of the craft/,
        );
        const isRead = () => steps.some((step) => step.startsWith('reading before-the-rain.csv'));
        assert.ok(isRead());
        const again = await said();
        assert.ok(!isRead(), 'the file is as it was, and is not read again');
        assert.deepEqual(again.proposals, answer.proposals);
        // Only what takes a while is told of: it is read all over again, and again.
        scratch.write('flights/before-the-rain.csv', flown['flights/before-the-rain.csv'].repeat(8));
        await said();
        assert.ok(isRead());
        scratch.remove('flights/before-the-rain.csv');
        assert.match(
          (await said()).measured ?? '',
          /there is no file before-the-rain\.csv there any more\. Mend that, or the line recording of flight before-the-rain\./i,
        );
      });
    })).timeout(60_000);
});

describe('video channels over the protocol', () => {
  it('come with what writes each into the script', () =>
    withServer({ capabilities: ownClient }, async (server) => {
      await server.open(uri, `${text}\n[rules]\nregion = european-union\n`, 2);
      const plan = await server.connection.sendRequest(channels, {
        textDocument: { uri },
        pilots: 5,
        keepsOthers: false,
      });
      assert.equal(plan?.version, 2);
      assert.equal(plan?.channels.length, 5);
      for (const { edits, names } of plan?.channels ?? []) {
        const [name] = names;
        if (name?.band === 'f' && name.channel === 5) continue;
        assert.ok(edits.length > 0, JSON.stringify(name));
      }
    }));
});

describe('finding on the command line', () => {
  const files = { 'my.craft': text };

  it('answers how much filtering is needed, and writes what is taken', () =>
    withScratch(files, async (scratch) => {
      const { path } = scratch;
      const told = propsoff(['find', 'my.craft', '--pack', 'pair'], { cwd: path });
      assert.equal(told.status, 0);
      assert.match(
        told.stdout,
        /^Everything that is asked for holds from .* \(least delay\) to .* \(quietest\)/,
      );
      assert.match(told.stdout, /It needs filtering: without any filter/);
      assert.match(told.stdout, /a test hover decides/);
      const written = propsoff(['find', 'my.craft', '--write', 'middle'], { cwd: path });
      assert.equal(written.status, 0);
      assert.match(written.stderr, /my\.craft: gyro\.filter\.1\.cutoff: 240 Hz → \d+ Hz/);
      assert.notEqual(scratch.read('my.craft'), text);
      const heavy = (input: string) =>
        propsoff(['check', '-'], { cwd: path, input }).stdout.match(/ (?:must-fix|risk) /g)?.length ?? 0;
      assert.equal(heavy(scratch.read('my.craft')), heavy(text));
    }));

  it('weighs by the measured noise of a recording, and tells what is left of it now and then', () =>
    withScratch(flown, async ({ path }) => {
      const args = ['find', 'my.craft', '--pack', 'sprint'];
      const { stdout, status, stderr } = propsoff(
        [...args, '--recording', 'flights/before-the-rain.csv', '--json'],
        { cwd: path },
      );
      assert.equal(status, 0, stderr);
      const { measured, nowReadings, proposals } = JSON.parse(stdout);
      assert.match(measured, /above 200 Hz, half of the rate of its rows, nothing is known of it/);
      const commands = proposals.map(
        (one: { readings: readonly { measured: { command: number } }[] }) =>
          one.readings[0]?.measured.command,
      );
      assert.deepEqual(
        commands,
        [...commands].sort((one, other) => other - one),
      );
      const [roll] = nowReadings[0].measured.axes;
      assert.ok(roll.axis === 'roll' && roll.left > 0 && roll.left < roll.unfiltered);
      assert.ok(nowReadings[0].measured.tones.length > 0);
      const told = propsoff([...args, '--recording', 'flights/before-the-rain.csv'], { cwd: path }).stdout;
      assert.match(
        told.replace(/\s+/g, ' '),
        /Measured noise up to 200 Hz, rms behind the filters \(before them\): roll [\d.]+ → [\d.]+ \([\d.]+\) deg\/s; pitch /,
      );
      const plain = propsoff(args, { cwd: path }).stdout.replace(/\s+/g, ' ');
      assert.match(
        plain,
        /not by measured noise: no recording was given\. Flight before-the-rain names one: --recording flights\/before-the-rain\.csv weighs by it\./,
      );
    }));

  it('ends with 1 and says why where nothing can be had', () =>
    withScratch(files, async ({ path }) => {
      const { status, stdout } = propsoff(['find', 'my.craft', '--tones', '110'], { cwd: path });
      assert.equal(status, 1);
      assert.match(stdout, /What stands in the way/);
    }));

  it('says what it can’t take', () =>
    withScratch(files, async ({ path }) => {
      const refusals: readonly (readonly [readonly string[], RegExp])[] = [
        [['find'], /find takes one script/],
        [['find', 'my.craft', '--tones', 'much'], /--tones takes a number of dB, or any, not "much"/],
        [
          ['find', 'my.craft', '--move', 'wings'],
          /--move takes filters, notches, gains, voltages, not "wings"/,
        ],
        [['find', 'my.craft', '--write', 'best'], /--write takes least-delay, middle, quietest, not "best"/],
        [['find', 'my.craft', '--recording', 'no.csv'], /no\.csv: there is no such file or folder/],
        [['find', 'my.craft', '--pack', 'none'], /the script has no pack "none"; it has single, pair/],
        [['channels', 'my.craft'], /channels takes --pilots/],
        [['channels', '--pilots', '0'], /--pilots takes 1 to 12, not "0"/],
        [['channels', '--pilots', '3'], /whose rules hold is not known: --region takes /],
        [['channels', '--pilots', '3', '--region', 'moon'], /there is no region "moon"/],
        [
          ['channels', '--pilots', '3', '--region', 'european-union', '--plan', 'z'],
          /there is no channel plan "z"/,
        ],
        [
          ['channels', '--pilots', '3', '--region', 'european-union', '--keep', '5 V'],
          /--keep takes a frequency/,
        ],
      ];
      for (const [args, why] of refusals) {
        const { status, stderr } = propsoff(args, { cwd: path });
        assert.equal(status, 2, args.join(' '));
        assert.match(stderr, why);
      }
    }));

  it('answers which channels for five', () => {
    const { status, stdout } = propsoff(['channels', '--pilots', '5', 'test/demo/sandmartin.craft']);
    assert.equal(status, 0);
    assert.equal(stdout.match(/^ {2}channel \d of band [a-z]+ at 5\d{3} MHz/gm)?.length, 5);
    assert.match(stdout, /^At least \d+ MHz apart; [^:]*\.$/m);
  });
});
