import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { UnreadableRecording } from '../../../server/src/recording/read/source';
import type { Recording } from '../../../server/src/recording/recording';
import { readFrom, sourceOf, wholeReport } from '../../support/recorded';
import { recordingText } from '../inputs/recordings';
import { target } from '../target';

interface Logged {
  readonly text: string;
  /** Bytes that come at a time. */
  readonly piece: number;
}

/** What was read, or the sentence that says why nothing was. */
async function outcome(bytes: Uint8Array, piece: number): Promise<Recording | string> {
  try {
    return await readFrom(sourceOf('log.csv', bytes, piece));
  } catch (error) {
    if (error instanceof UnreadableRecording) return error.message;
    throw error;
  }
}

/** Sentences are finished, and nothing that only a program says is in them. */
function isSaid(sentence: string): void {
  assert.match(sentence, /^[\p{Lu}\d“].*[.?]$/su);
  assert.doesNotMatch(sentence.replace(/“[^”]*”/gsu, ''), /\b(?:undefined|NaN|null|Infinity|object)\b/);
}

function isWhole({ time, channels, flights, leftOut }: Recording): void {
  for (const [, values] of channels) assert.equal(values.length, time.length);
  for (const sentence of leftOut) isSaid(sentence);
  let last = 0;
  for (const { from, to, stretches } of flights) {
    assert.ok(last <= from && from < to && to <= time.length, 'flights follow each other');
    last = to;
    for (const stretch of stretches) {
      assert.ok(from <= stretch.from && stretch.from < stretch.to && stretch.to <= to);
      assert.ok(stretch.rate > 0 && Number.isFinite(stretch.rate));
    }
    for (let row = from + 1; row < to; row += 1)
      assert.ok((time[row] ?? 0) >= (time[row - 1] ?? 0), 'time never falls in a flight');
  }
}

/** Every number that is told is one, and lies in its span. */
function isSound(value: unknown, path: string): void {
  if (typeof value === 'number') assert.ok(Number.isFinite(value), `${path} is ${value}`);
  if (typeof value !== 'object' || value === null) return;
  if ('likely' in value && 'low' in value && 'high' in value) {
    const { likely, low, high } = value;
    assert.ok(
      Number(low) <= Number(likely) && Number(likely) <= Number(high),
      `${path}: ${low} ${likely} ${high}`,
    );
  }
  if ('reason' in value && 'advice' in value) {
    isSaid(String(value.reason));
    isSaid(String(value.advice));
  }
  for (const [key, inside] of Object.entries(value)) isSound(inside, `${path}.${key}`);
}

export const recordings = target<Logged>(
  {
    name: 'recordings',
    share: 3,
    holds: 'a file is read, or refused with a sentence, alike in any pieces; all that is told is a number',
  },
  fc.record({ text: recordingText, piece: fc.constantFrom(1, 3, 64, 4096) }),
  async ({ text, piece }) => {
    const bytes = new TextEncoder().encode(text);
    const whole = await outcome(bytes, bytes.length + 1);
    assert.deepEqual(await outcome(bytes, piece), whole);
    if (typeof whole === 'string') return isSaid(whole);
    isWhole(whole);
    for (const flight of whole.flights.keys()) isSound(wholeReport(whole, flight + 1, null), 'report');
  },
);
