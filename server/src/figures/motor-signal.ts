import { inBase } from '../catalog/known-parameter';
import type { Signal } from '../catalog/model/hardware';
import type { CraftView } from '../craft/view';
import {
  computingWait,
  type DigitalSignal,
  digitalSignalTime,
  frameSeconds,
  noLoadSpeed,
} from '../physics/motor-signal';
import type { Computed, FigureSource } from './figure';
import { kvFactor } from './motor-plate';
import { fullCell, packCount } from './pack-in-view';

/** Share of the ideal speed that real motors keep at least without a load. From memory. */
const leastOfIdealSpeed = 0.93;

export const motorSignalFigures: readonly FigureSource[] = [
  {
    id: 'motor-signal-time',
    title: 'Least time between two motor commands',
    unit: 'us',
    from: ['esc.signal', 'esc.speed-feedback'],
    hint: { at: ['esc.signal'], words: (figure) => `${figure} from command to command` },
    compute: signalTime,
  },
  {
    id: 'control-period',
    title: 'One round of the control loop',
    unit: 'us',
    from: ['control.rate'],
    compute: controlPeriod,
  },
  {
    id: 'no-load-speed',
    title: 'Motor speed without a load, full pack',
    unit: 'rpm',
    from: ['motor.kv', 'motor.output-limit'],
    compute: topSpeed,
  },
];

export function signalInUse(view: CraftView): Signal | undefined {
  const word = view.word('esc.signal');
  return word === null ? undefined : view.catalog.signal(word);
}

/** Seconds from the start of a command until the controller has the whole of it: nothing that follows delays it. */
export function commandSeconds(view: CraftView): number | null {
  const signal = signalInUse(view);
  if (signal === undefined) return null;
  if (signal.kind === 'pulse') return signal.longest === undefined ? null : inBase(signal.longest);
  const frame = frameOf(signal);
  return frame === null ? null : frameSeconds(frame);
}

/** Seconds from the start of one command to the earliest start of the next: with the answer where one is wanted. */
function commandSpacing(view: CraftView): number | null {
  const signal = signalInUse(view);
  if (signal === undefined || signal.kind === 'pulse') return commandSeconds(view);
  const frame = frameOf(signal);
  if (frame === null) return null;
  const answer = wantedAnswer(view, signal);
  const timed = answer === null ? null : { ...answer, turnAround: inBase(answer.turnAround) };
  return digitalSignalTime(frame, timed);
}

function frameOf({ frameBits, bitRate, gap }: Signal): DigitalSignal | null {
  if (frameBits === undefined || bitRate === undefined || gap === undefined) return null;
  return { frameBits, bitRate: inBase(bitRate), gap: inBase(gap) };
}

/**
 * Seconds between two commands: a round of the control loop, or longer where the script sends fewer, or the signal
 * lets no more through.
 */
function commandInterval(view: CraftView): number | null {
  const rate = view.quantity('control.rate');
  const spacing = commandSpacing(view);
  if (rate === null || rate <= 0 || spacing === null) return null;
  if (!view.isSet('esc.update-rate')) return Math.max(1 / rate, spacing);
  const updates = view.quantity('esc.update-rate');
  return updates === null || updates <= 0 ? null : Math.max(1 / rate, 1 / updates, spacing);
}

/**
 * Seconds that the control loop adds: a round in which it computes, and half of the interval for which each command
 * is held.
 */
export function controlWait(view: CraftView): number | null {
  const rate = view.quantity('control.rate');
  const interval = commandInterval(view);
  return rate === null || interval === null ? null : computingWait(rate, interval);
}

function wantedAnswer(view: CraftView, { answer }: Signal) {
  return view.isOn('esc.speed-feedback') && answer !== undefined ? answer : null;
}

function signalTime(view: CraftView): Computed | null {
  const signal = signalInUse(view);
  const seconds = commandSpacing(view);
  if (signal === undefined || seconds === null) return null;
  if (signal.kind === 'pulse') return { likely: seconds * 1e6, why: `${signal.longest}, the longest pulse` };
  const { frameBits, bitRate = '', gap } = signal;
  const answer = wantedAnswer(view, signal);
  const command = `${frameBits} bits / ${bitsText(view, inBase(bitRate))} + ${gap}`;
  const back = answer === null ? 0 : answer.rateRatio * inBase(bitRate);
  const reply =
    answer === null ? '' : ` + ${answer.turnAround} + ${answer.bits} bits / ${bitsText(view, back)}`;
  return { likely: seconds * 1e6, why: command + reply };
}

function bitsText(view: CraftView, rate: number): string {
  return `${view.short(rate / 1000, '')} kbit/s`;
}

function controlPeriod(view: CraftView): Computed | null {
  const rate = view.quantity('control.rate');
  if (rate === null || rate <= 0) return null;
  return { likely: 1e6 / rate, why: `1 / ${view.shown('control.rate')}` };
}

function topSpeed(view: CraftView): Computed | null {
  const constant = view.quantity('motor.kv');
  const cell = fullCell(view);
  const cells = packCount(view, 'cells');
  const limit = view.quantity('motor.output-limit');
  if (constant === null || cell === null || cells === null || limit === null) return null;
  const perMinute = noLoadSpeed(constant, cells * cell, limit) / ((2 * Math.PI) / 60);
  return {
    likely: perMinute,
    low: leastOfIdealSpeed * perMinute,
    high: kvFactor * perMinute,
    why: `${view.shown('motor.kv')} × ${view.short(cells * cell, 'V')} × ${view.shown('motor.output-limit')}`,
  };
}
