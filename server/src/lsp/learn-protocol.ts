import type { Hardware } from '../catalog/model/board-hardware';
import type { PortRoles } from '../catalog/model/board-profile';
import type { MeaningChoice, MeaningRow, MeaningSaid } from '../features/board/meaning-row';
import type { FamilyMeasured } from '../features/board/measured-counts';
import type { ParameterForm, SayableParameter } from '../features/board/parameter-form';
import type { NotSaid } from './board-protocol';
import { type AboutScript, OwnRequest } from './own-message';
import { about, count, list, object, oneOf, optional, text } from './requests/form';

export type { Hardware } from '../catalog/model/board-hardware';
export type { PartHeld, PortRoles, RowMeant } from '../catalog/model/board-profile';
export type { MeaningChoice, MeaningRow, MeaningSaid, MeaningWay } from '../features/board/meaning-row';
export type { FamilyMeasured, NumberFlown } from '../features/board/measured-counts';
export type { ParameterForm, SayableParameter } from '../features/board/parameter-form';

/** A board of which something is said: its text, and its profile as far as there is one. */
export interface BoardInHand {
  /** Empty: none is at hand, and the profile's rows stand in for it. */
  readonly text: string;
  readonly fileName: string;
  /** Of a text that is open or a file. */
  readonly uri: string | null;
  /** What the board is called; null: it is to be found. */
  readonly board: string | null;
  /** The text of its profile's file; null: there is none. */
  readonly profile: string | null;
}

const boardInHand = object<BoardInHand>({
  text,
  fileName: text,
  uri: optional(text),
  board: optional(text),
  profile: optional(text),
});

/** A line that was not understood. */
export interface LeftLineShown {
  /** From 0. */
  readonly line: number;
  readonly text: string;
  readonly reason: string;
}

/** What is known of a board whose settings' meanings are to be said. */
export interface BoardMeanings {
  readonly kind: 'meanings';
  readonly board: string;
  readonly title: string;
  /** Whether there was no profile before. */
  readonly isNew: boolean;
  /** Whether the file's name alone leads to that board. */
  readonly isByName: boolean;
  readonly rows: readonly MeaningRow[];
  readonly left: readonly LeftLineShown[];
  /** How many lines were not understood: of very many only the first are shown. */
  readonly leftCount: number;
  readonly hardware: Hardware;
  /** Names of ports that the text shows. */
  readonly ports: readonly string[];
  /** Parameters that name a port: what one may be for. */
  readonly portParameters: readonly SayableParameter[];
  /** What the profile says of the board's words for that. */
  readonly portRoles: PortRoles;
}

/** All settings of a board with what each may mean and what is said of it. */
export const meaningsRequest = new OwnRequest<{ readonly of: BoardInHand }, BoardMeanings | NotSaid>(
  'propsoff/meanings',
  object({ of: boardInHand }),
);

/** What is said of a setting: the key of its row, and what the row says as JSON; `{}` takes back what was said. */
export interface SaidOfRow {
  readonly key: string;
  readonly row: string;
}

export type SayMeaningsAnswer =
  | {
      readonly kind: 'said';
      /** The profile's file as it is to be. */
      readonly profile: string;
      /** Of the settings that were said. */
      readonly rows: readonly { readonly key: string; readonly said: MeaningSaid | null }[];
      /** What could not be said, and why, as the end of a sentence. */
      readonly left: readonly { readonly key: string; readonly why: string }[];
    }
  | NotSaid;

/** The profile with what is said of these settings; all else stays as it stands. */
export const sayMeaningsRequest = new OwnRequest<
  {
    readonly of: BoardInHand;
    readonly said: readonly SaidOfRow[];
    /** JSON: what the board calls the roles of ports from now on; null: as before. */
    readonly portRoles: string | null;
  },
  SayMeaningsAnswer
>(
  'propsoff/sayMeanings',
  object({ of: boardInHand, said: list(object({ key: text, row: text })), portRoles: optional(text) }),
);

/** How a person says that a setting is counted: `saying` is JSON, as a confirmation has it. */
export interface SayingOfRow {
  readonly key: string;
  readonly saying: string;
}

/** What settings would mean, said so; null for what can't be said. */
export const choicesRequest = new OwnRequest<
  { readonly of: BoardInHand; readonly sayings: readonly SayingOfRow[] },
  readonly { readonly key: string; readonly choice: MeaningChoice | null }[]
>('propsoff/choices', object({ of: boardInHand, sayings: list(object({ key: text, saying: text })) }));

/** A flight of a script, with the recording that it names. */
export interface FlightAsked {
  readonly script: string;
  /** The name of its section. */
  readonly flight: string;
  /** The file. */
  readonly recording: string;
}

/** What the numbers of gains come to, by a flight. */
export interface CountsMeasured {
  readonly kind: 'measured';
  /** Which text and which flight this rests on, a sentence: nothing of it is right if that text was not flown. */
  readonly rests: string;
  readonly families: readonly FamilyMeasured[];
}

/** What a recorded flight tells of how a board counts its gains. */
export const countsMeasuredRequest = new OwnRequest<
  { readonly of: BoardInHand; readonly flown: FlightAsked },
  CountsMeasured | NotSaid
>(
  'propsoff/countsMeasured',
  object({ of: boardInHand, flown: object({ script: text, flight: text, recording: text }) }),
);

/** What can be said of how a setting holds a parameter; null where there is no such parameter. */
export const parameterFormRequest = new OwnRequest<{ readonly means: string }, ParameterForm | null>(
  'propsoff/parameterForm',
  object({ means: text }),
);

/** Every parameter that a board's setting may be said to mean. */
export const sayableRequest = new OwnRequest<object, readonly SayableParameter[]>(
  'propsoff/sayable',
  object({}),
);

/** What is wrong with a field of the hardware. */
export interface HardwareFault {
  /** `ports.0.name` */
  readonly at: string;
  readonly message: string;
}

export type HardwareAnswer =
  | { readonly kind: 'said'; readonly profile: string }
  | { readonly kind: 'faults'; readonly faults: readonly HardwareFault[] }
  | NotSaid;

/** The profile with what a board has; `hardware` is JSON, as a profile has it. */
export const hardwareRequest = new OwnRequest<
  { readonly of: BoardInHand; readonly hardware: string },
  HardwareAnswer
>('propsoff/hardware', object({ of: boardInHand, hardware: text }));

/**
 * What a pilot says of a board that its text does not show. setting, comment, heading: what a line is, and in `part`
 * what it does not show by itself. command: in `part`, what would be typed to set one setting as it stands.
 * same-command: the board takes the lines that it lists. omits-defaults: it lists only what differs from its defaults.
 */
const lessonKinds = ['setting', 'comment', 'heading', 'command', 'same-command', 'omits-defaults'] as const;

export interface BoardLesson {
  readonly kind: (typeof lessonKinds)[number];
  /** From 0; null where it is about no line. */
  readonly line: number | null;
  /** Empty: nothing is said. */
  readonly part: string;
}

const lesson = object({ kind: oneOf(lessonKinds), line: optional(count), part: text });

/** `asks`: saying the part may help. */
export interface LessonRefused {
  readonly kind: 'refused';
  readonly message: string;
  readonly asks: boolean;
}

export interface TeachParams extends AboutScript {
  readonly lesson: BoardLesson;
}

export type TeachAnswer =
  | {
      readonly kind: 'taught';
      readonly board: string;
      /** The profile's file as it is to be. */
      readonly profile: string;
      /** Whether there was none before. */
      readonly isNew: boolean;
      /** Whether the file's name alone leads to that board. */
      readonly isByName: boolean;
      /** The board's text that the profile is for; null: the script includes none. */
      readonly text: string | null;
      /** A sentence. */
      readonly said: string;
    }
  | LessonRefused;

/** The profile of a board with more said of it. */
export const teachRequest = new OwnRequest<TeachParams, TeachAnswer | null>(
  'propsoff/teach',
  object({ ...about, lesson }),
);

/** The same of a board whose text need not be open. */
export const lessonRequest = new OwnRequest<
  { readonly of: BoardInHand; readonly lesson: BoardLesson },
  LessonAnswer
>('propsoff/lesson', object({ of: boardInHand, lesson }));

export type LessonAnswer =
  /** `profile`: its file as it is to be; `said`: a sentence. */
  { readonly kind: 'taught'; readonly profile: string; readonly said: string } | LessonRefused;
