import { type ParseArgsConfig, parseArgs } from 'node:util';
import { suggestWord } from '../catalog/suggest';
import { UsageError } from './outcome';
import { colourWhen, type Terminal } from './terminal';

/** An option of a command, with what its help says. The command line is read by the same table. */
interface Option {
  readonly type: 'boolean' | 'string';
  readonly multiple?: true;
  /** What stands for the value in the help: `name`, `level`. Only of one that takes a value. */
  readonly value?: string;
  /** The words that it takes, where there are few. */
  readonly words?: readonly string[];
  /** What it does, in a line or two. */
  readonly about: string;
}

export type Options = Readonly<Record<string, Option>>;

/** What the help of a command says. */
export interface CommandHelp {
  readonly name: string;
  /** A few words, for the list of commands. */
  readonly summary: string;
  /** What can be typed after the name, a line each way of using it. */
  readonly usage: readonly string[];
  /** Paragraphs. */
  readonly about: readonly string[];
  readonly options: Options;
  /** Lines for a shell, with what each is good for. */
  readonly examples: readonly (readonly [line: string, what: string])[];
  /** What exit codes 0 and 1 say; null where the command never ends with 1. */
  readonly exit: { readonly fine: string; readonly findings: string | null };
}

/** A command of `propsoff`. */
export interface Command extends CommandHelp {
  run(args: readonly string[], terminal: Terminal): Promise<number>;
}

interface Spec<O extends Options> extends CommandHelp {
  readonly options: O;
  run(given: ParsedArguments<O>, terminal: Terminal): Promise<number>;
}

/** Options and paths as they were typed. */
type ParsedArguments<O extends Options> = ReturnType<typeof readArguments<O>>;

/** What every command takes. */
export const commonOptions = {
  color: {
    type: 'string',
    value: 'when',
    words: ['always', 'never', 'auto'],
    about: 'always, never or auto: in a terminal, unless NO_COLOR or FORCE_COLOR says otherwise',
  },
} as const satisfies Options;

/** A command that reads its arguments by its own table of options. */
export function command<const O extends Options>(spec: Spec<O>): Command {
  return {
    ...spec,
    run: async (args, terminal) => {
      const options: O = { ...spec.options, ...commonOptions };
      const given = readArguments({ name: spec.name, options }, args);
      const { values } = parseArgs({ args: [...args], options: commonOptions, strict: false });
      return spec.run(given, colourWhen(terminal, typeof values.color === 'string' ? values.color : 'auto'));
    },
  };
}

/** Reads a command's options and paths; an unknown option is a usage error in one line. */
function readArguments<O extends Options>(
  { name, options }: { readonly name: string; readonly options: O },
  args: readonly string[],
) {
  try {
    const config = { args: [...args], options, allowPositionals: true, strict: true, tokens: true } as const;
    const { tokens, ...given } = parseArgs(config satisfies ParseArgsConfig);
    const once = new Set<string>();
    for (const token of tokens) {
      if (token.kind === 'option-terminator') continue;
      const text = token.kind === 'option' ? `--${token.name}` : 'an argument';
      if (token.value === '') throw new UsageError(`${text} is empty`);
      if (token.kind === 'positional' || token.value === undefined) continue;
      if (options[token.name]?.multiple === true) continue;
      if (once.has(text)) throw new UsageError(`${text} is given more than once`);
      once.add(text);
    }
    return given;
  } catch (error) {
    if (error instanceof UsageError) throw error;
    const reason = error instanceof Error ? (error.message.split(/\.\s/)[0] ?? '') : String(error);
    const unknown = /^Unknown option '--([^']+)'/.exec(reason)?.[1];
    const near = unknown === undefined ? [] : suggestWord(Object.keys(options), unknown);
    const suggestion =
      near.length === 0 ? '' : `; did you mean ${near.map((one) => `--${one}`).join(' or ')}?`;
    throw new UsageError(
      `${reason.replace(/\.$/, '')}${suggestion || ';'} propsoff ${name} --help lists the options`,
    );
  }
}

/** The option with which standard input gets a name. */
export const nameOption = {
  type: 'string',
  value: 'path',
  about:
    'what standard input is called: its includes are looked for beside this path, and the report names it',
} as const;

export const packOption = {
  type: 'string',
  value: 'name',
  about: 'the pack that figures are shown for; without it the first one of the script',
} as const;

export const boardOption = {
  type: 'string',
  value: 'profile',
  about: "a board profile's name; without it the one that the script sets or the text shows",
} as const;

/** The option that a command with a published form of its own has. */
export function jsonOption(name: string, what: string) {
  return {
    type: 'boolean',
    about: `${what}; schemas/output/${name}.schema.json describes it`,
  } as const;
}
