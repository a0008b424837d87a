import { type ParseArgsConfig, parseArgs } from 'node:util';
import { UsageError } from './outcome';

type Options = NonNullable<ParseArgsConfig['options']>;

/** Reads a command's options and paths; an unknown option is a usage error in one line. */
export function readOptions<T extends Options>(args: readonly string[], options: T) {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
  } catch (error) {
    const told = error instanceof Error ? (error.message.split('. ')[0] ?? '') : String(error);
    throw new UsageError(`${told.replace(/\.$/, '')}; propsoff --help lists the options`);
  }
}
