/**
 * The forms of what commands print with --json as types, for programs in TypeScript: made of the same models as the
 * published schemas, so that neither can say what the other does not.
 */
import * as z from 'zod';
import { outputForms } from './output-schemas';

type Schema = z.core.JSONSchema.JSONSchema;

const head = `/**
 * What the commands of propsoff print with --json.
 * Members may be added in a later version; what is described here stays, until \`version\` goes up.
 */
`;

/** The declarations of all commands, sorted as the commands are. */
export function outputTypes(): string {
  return [
    head,
    ...[...outputForms].map(([command, form]) => {
      const schema = z.toJSONSchema(form, { target: 'draft-7', reused: 'inline' });
      return `/** \`propsoff ${command} --json\` */\nexport type ${typeName(command)} = ${typeOf(schema, '')};\n`;
    }),
  ].join('\n');
}

/** "bench-card" gives "BenchCardOutput". */
function typeName(command: string): string {
  const words = command.split('-').map((word) => `${word.charAt(0).toUpperCase()}${word.slice(1)}`);
  return `${words.join('')}Output`;
}

/**
 * @throws {Error} for what no form has used so far: a type that says too little would be wrong without a word.
 */
function typeOf(schema: Schema | boolean, indent: string): string {
  if (typeof schema === 'boolean') return schema ? 'unknown' : 'never';
  const { const: constant, enum: words, anyOf, oneOf, allOf, type } = schema;
  if (constant !== undefined) return JSON.stringify(constant);
  if (words !== undefined) return words.map((word) => JSON.stringify(word)).join(' | ');
  const either = anyOf ?? oneOf;
  if (either !== undefined) return either.map((one) => typeOf(one, indent)).join(' | ');
  if (allOf !== undefined) return allOf.map((one) => `(${typeOf(one, indent)})`).join(' & ');
  if (Array.isArray(type)) return type.map((one) => typeOf({ ...schema, type: one }, indent)).join(' | ');
  switch (type) {
    case 'object':
      return objectType(schema, indent);
    case 'array':
      return arrayType(schema, indent);
    case 'integer':
      return 'number';
    case 'string':
    case 'number':
    case 'boolean':
    case 'null':
      return type;
    case undefined:
      // Anything may stand there: nothing is said of it, or only what it means.
      if (Object.keys(schema).every((key) => key === 'description')) return 'unknown';
      throw new Error(`no type is known for ${JSON.stringify(schema)}`);
    default:
      throw new Error(`no type is known for ${JSON.stringify(schema)}`);
  }
}

function objectType({ properties, required = [], additionalProperties }: Schema, indent: string): string {
  if (properties === undefined)
    return `{ readonly [name: string]: ${typeOf(additionalProperties ?? true, indent)} }`;
  const inner = `${indent}  `;
  const members = Object.entries(properties).flatMap(([name, member]) => {
    const description = typeof member === 'boolean' ? undefined : member.description;
    const key = /^[A-Za-z_]\w*$/.test(name) ? name : JSON.stringify(name);
    const mark = required.includes(name) ? '' : '?';
    return [
      ...(description === undefined ? [] : [`${inner}/** ${description.replaceAll('*/', '*\\/')} */`]),
      `${inner}readonly ${key}${mark}: ${typeOf(member, inner)};`,
    ];
  });
  return `{\n${members.join('\n')}\n${indent}}`;
}

/** A list, or a list of so many members of which each has a type of its own. */
function arrayType({ items, additionalItems }: Schema, indent: string): string {
  if (items === undefined) return 'readonly unknown[]';
  if (!Array.isArray(items)) return `ReadonlyArray<${typeOf(items as Schema | boolean, indent)}>`;
  const rest =
    additionalItems === undefined || additionalItems === false
      ? []
      : [`...ReadonlyArray<${typeOf(additionalItems as Schema | boolean, indent)}>`];
  return `readonly [${[...items.map((item) => typeOf(item, indent)), ...rest].join(', ')}]`;
}
