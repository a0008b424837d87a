import type { Range } from 'vscode-languageserver-protocol';
import type { ReadingFault } from '../features/flight/keep-readings';
import type { FlightAnswer, FlightForm } from '../features/flight/note-flight';
import type { CardField } from '../features/flight/reading-fault';
import type { BenchCard } from '../sheet/bench-card/card';
import type { CardTaken } from '../sheet/bench-card/taken';
import { type AboutScript, OwnRequest } from './own-message';
import { about, leftOutOr, list, object, optional, text } from './requests/form';

export type { ReadingFault } from '../features/flight/keep-readings';
export type { FlightAnswer, FlightForm } from '../features/flight/note-flight';

export interface LastFlight {
  /** What was kept at the last flight. */
  readonly record: string | null;
  /** 2026-05-14. */
  readonly today: string;
}

/** What is asked about a flight. */
export const flightFormRequest = new OwnRequest<AboutScript & LastFlight, FlightForm | null>(
  'propsoff/flightForm',
  object({ ...about, record: optional(text), today: text }),
);

const answer = { setting: text, typed: text };

/** Why an answer can't be written, in a sentence; null if it can. */
export const flightAnswerRequest = new OwnRequest<AboutScript & FlightAnswer, string | null>(
  'propsoff/flightAnswer',
  object({ ...about, ...answer }),
);

export interface FlightToNote {
  readonly name: string;
  readonly pack: string | null;
  readonly answers: readonly FlightAnswer[];
}

/** The edit that notes a flight, for the text of a version, and what is kept until the next one. */
export interface FlightNoted {
  readonly version: number;
  readonly range: Range;
  readonly newText: string;
  readonly record: string;
}

/** The edit that notes a flight. */
export const noteFlightRequest = new OwnRequest<AboutScript & FlightToNote, FlightNoted | null>(
  'propsoff/noteFlight',
  object({ ...about, name: text, pack: optional(text), answers: list(object(answer)) }),
);

/** The bench card of an open script with all its packs, and the same to print and as Markdown. */
export interface BenchCardAnswer {
  readonly card: BenchCard;
  readonly page: string;
  readonly markdown: string;
}

const taken = {
  ticked: list(object({ id: text, told: list(text) })),
  readings: list(object({ id: text, value: text })),
};

/** The bench card, to print with what was ticked and read off on it; null for a part that others include. */
export const benchCardRequest = new OwnRequest<
  AboutScript & { readonly taken?: CardTaken | undefined },
  BenchCardAnswer | null
>('propsoff/benchCard', object({ ...about, taken: leftOutOr(object(taken)) }));

/** A field of the card, and what was typed into it. */
export interface ReadingTyped extends CardField {
  readonly typed: string;
}

/** Why what was typed can't be what was read off, in a sentence; null if it can. */
export const checkReadingRequest = new OwnRequest<AboutScript & ReadingTyped, string | null>(
  'propsoff/checkReading',
  object({ ...about, unit: text, setting: optional(text), script: optional(text), typed: text }),
);

export interface ReadingsToKeep extends CardTaken {
  /** 2026-05-14. */
  readonly today: string;
}

/** What keeps what was read off, for the text of a version: one edit in several places. */
export interface ReadingsKept {
  readonly version: number;
  /** The sections of flights, and lines for what the script left open and what was found out. */
  readonly edits: readonly { readonly range: Range; readonly newText: string }[];
  /** What is kept until the next flight; null where none is noted. */
  readonly record: string | null;
}

/** The edit that keeps what was read off, or why it can't be kept; null where there is nothing to keep. */
export const keepReadingsRequest = new OwnRequest<
  AboutScript & ReadingsToKeep,
  ReadingsKept | { readonly faults: readonly ReadingFault[] } | null
>('propsoff/keepReadings', object({ ...about, ...taken, today: text }));
