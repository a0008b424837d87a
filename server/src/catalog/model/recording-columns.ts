import { prose, source } from './common';
import * as z from './plain-zod';

/** A word or a few, in small letters, as they are left of a heading that is cut at marks, digits and capitals. */
const stem = z.string().check(z.regex(/^[a-z]+( [a-z]+)*$/));

/** How a logger may write a channel: how much one of its counts is, in a unit of scripts. */
const way = z.strictObject({
  unit: z.string(),
  scale: z._default(z.number().check(z.positive()), 1),
});

/** What a column may hold, and by what it is known. */
export const columnKind = z.strictObject({
  kind: z.enum([
    'time',
    'gyro',
    'unfiltered-gyro',
    'wanted',
    'motor',
    'speed',
    'throttle',
    'voltage',
    'current',
    'frames',
    'other',
  ]),
  /** As a sentence calls it. */
  title: z.string().check(z.minLength(2)),
  words: z.array(stem).check(z.minLength(1), z.describe('Each of them says it by itself.')),
  weak: z
    ._default(z.array(stem), [])
    .check(
      z.describe(
        'These say it too, and other things as well: what the numbers do has to fit, and it is asked.',
      ),
    ),
  with: z
    ._default(z.array(stem), [])
    .check(z.describe('One of these has to stand in the heading too; none: nothing else has to.')),
  without: z
    ._default(z.array(stem), [])
    .check(z.describe('A heading with one of these means something else.')),
  /** Ways of writing it, the usual one first. */
  ways: z._default(z.array(way), []),
  /** In the first way's unit: what the largest sizes of a flight lie between, and why. */
  sizes: z.optional(z.tuple([z.number(), z.number()])),
  because: z.optional(prose),
});

/** The words of something that a recording shows; an algorithm finds it. */
const recordingFinding = z.strictObject({
  /** `shake/tone-let-through` */
  id: z.string().check(z.regex(/^[a-z]+(-[a-z]+)*\/[a-z]+(-[a-z]+)*$/)),
  level: z.enum(['must-fix', 'risk', 'note']),
  title: z.string().check(z.minLength(5)),
  /** `{frequency}` puts a number in. */
  message: z.string().check(z.minLength(10)),
  advice: z.string().check(z.minLength(10)),
  rule: prose,
  source,
});

/** `schemas/recordings.json`: by what the columns of any logger are known. */
export const recordingColumnsFile = z.strictObject({
  kinds: z.array(columnKind),
  axes: z.strictObject({ roll: z.array(stem), pitch: z.array(stem), yaw: z.array(stem) }),
  /** What headings write for a unit of scripts. */
  units: z.array(z.strictObject({ unit: z.string(), said: z.array(z.string().check(z.minLength(1))) })),
  /** What outputs count up to when they are full. */
  fulls: z.array(
    z.strictObject({ full: z.number().check(z.positive()), idle: z.number(), what: z.string() }),
  ),
  findings: z.array(recordingFinding),
});

export type RecordingColumns = z.infer<typeof recordingColumnsFile>;
export type ColumnKind = z.infer<typeof columnKind>;
export type RecordingFindingWords = z.infer<typeof recordingFinding>;
