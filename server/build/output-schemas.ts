import * as z from 'zod';
import { benchCardForm } from './output-forms/bench-card';
import { learnForm, proveForm } from './output-forms/boards';
import { channelsForm } from './output-forms/channels';
import { checkForm } from './output-forms/check';
import { compareForm } from './output-forms/compare';
import { explainForm } from './output-forms/explain';
import { findForm } from './output-forms/find';
import { recordingForm } from './output-forms/recording';
import { sheetForm } from './output-forms/sheet';

/** What each command prints with --json. */
export const outputForms: ReadonlyMap<string, z.ZodType> = new Map<string, z.ZodType>([
  ['check', checkForm],
  ['sheet', sheetForm],
  ['compare', compareForm],
  ['find', findForm],
  ['recording', recordingForm],
  ['channels', channelsForm],
  ['explain', explainForm],
  ['bench-card', benchCardForm],
  ['prove', proveForm],
  ['learn', learnForm],
]);

/** The JSON Schema that holds for exactly what this version prints: for our own tests. */
export function exactSchema(form: z.ZodType): object {
  return z.toJSONSchema(form, { target: 'draft-7', reused: 'ref' });
}

/**
 * The JSON Schema that is published: open for members that a later version adds, so that who reads what is
 * described here goes on reading it.
 */
export function publishedSchema(command: string, form: z.ZodType): string {
  const schema = z.toJSONSchema(form, {
    target: 'draft-7',
    reused: 'ref',
    override: ({ jsonSchema }) => {
      if (jsonSchema.additionalProperties === false) delete jsonSchema.additionalProperties;
    },
  });
  const told = {
    title: `What propsoff ${command} --json prints`,
    description: 'Members may be added; read what is described here and leave the rest.',
  };
  return `${JSON.stringify({ ...schema, ...told }, null, 2)}\n`;
}
