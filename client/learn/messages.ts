import type { NotSaid } from '../../server/src/lsp/board-protocol';
import type {
  BoardLesson,
  BoardMeanings,
  CountsMeasured,
  HardwareAnswer,
  LessonAnswer,
  MeaningChoice,
  ParameterForm,
  SaidOfRow,
  SayableParameter,
  SayingOfRow,
  SayMeaningsAnswer,
} from '../../server/src/lsp/learn-protocol';

/** What the page asks of the extension, each with what it is answered with. */
export interface LearnRequests {
  /** Kept in the profile at once. */
  readonly say: { readonly said: readonly SaidOfRow[]; readonly portRoles: string | null };
  readonly choices: { readonly sayings: readonly SayingOfRow[] };
  readonly form: { readonly means: string };
  /** JSON, kept in the profile at once. */
  readonly hardware: { readonly hardware: string };
  readonly lesson: { readonly lesson: BoardLesson };
  /** By a recorded flight that the pilot picks. */
  readonly measured: Readonly<Record<string, never>>;
}

export interface Answered {
  readonly say: SayMeaningsAnswer;
  readonly choices: readonly { readonly key: string; readonly choice: MeaningChoice | null }[];
  readonly form: ParameterForm | null;
  readonly hardware: HardwareAnswer;
  readonly lesson: LessonAnswer;
  /** null: no flight was picked. */
  readonly measured: CountsMeasured | NotSaid | null;
}

export type AskedKind = keyof LearnRequests;

/** Extension to page. */
export type ToLearn =
  | {
      readonly kind: 'meanings';
      readonly meanings: BoardMeanings;
      readonly sayable: readonly SayableParameter[];
      /** Where the profile is kept, for people: `boards/dipper.json`. */
      readonly place: string;
      /** The setting to go to. */
      readonly key: string | null;
    }
  | { readonly kind: 'go'; readonly key: string }
  | { readonly kind: 'refused'; readonly message: string }
  | {
      [K in AskedKind]: {
        readonly kind: 'answer';
        readonly to: K;
        readonly id: number;
        readonly answer: Answered[K];
      };
    }[AskedKind];

/** Page to extension. */
export type FromLearn =
  /** The page listens now. */
  | { readonly kind: 'ready' }
  /** The profile's file is wanted in an editor. */
  | { readonly kind: 'open' }
  | {
      [K in AskedKind]: {
        readonly kind: 'ask';
        readonly to: K;
        readonly id: number;
        readonly asked: LearnRequests[K];
      };
    }[AskedKind];
